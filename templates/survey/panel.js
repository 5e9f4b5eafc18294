/* The one question that is open, and what answers it. */
const GUARD_MS = 250; // a second tap of a wet finger must not answer the next question unseen
let guardFrom = 0, pendingText = null;

const tapped = (act) => (event) => {
    if (event.detail > 0 && performance.now() - guardFrom < GUARD_MS) {
        return;
    }
    act(event);
};

function give(field, card, node) {
    guardFrom = performance.now();
    answer(field, card, node);
    lastAnswered = {field, card, rev: state.rev};
    advance(card, field);
}

function leaveOpen(field, card) {
    guardFrom = performance.now();
    skip(field, card);
    advance(card, field);
}

function advance(card, after) {
    const next = nextField(card, after);
    state.at = {card, field: next ? next.id : 'done', view: 'card'};
    keepNow();
    draw(true);
}

const tile = (kind, act, pressed, ...inside) => h('button', {type: 'button', class: `tile ${kind}`, 'aria-pressed': pressed === undefined ? null : String(pressed), onclick: tapped(act)}, inside);

function tilesOf(field, card, values, other) {
    const words = field.row.kind === 'word';
    const now = nodeOf(field, card);
    const isOf = (value) => now === value;
    return h('div', {class: `tiles ${values.some((one) => one.means) ? 'wide' : words ? 'words' : 'narrow'} of${Math.min(values.length, 9)}`, role: 'group', 'aria-label': field.label},
        values.map(({value, shown, means}) => tile(means || words ? 'word' : 'fig', () => give(field, card, value), isOf(value), h('span', {}, shown ?? valueShown(value)), means ? h('small', {}, means) : null)),
        other ? tile('fig', other, undefined, h('span', {class: 'word-other'}, say('other'))) : null);
}

/* Figures that are a tap away: used before on this survey, or sizes that such things come in. */
function nearFigures(field, card) {
    const way = isSegment(card) ? wayOf(segmentOf(card)) : '';
    const sizes = SIZES[`${way}/${field.key}`] ?? SIZES[field.id] ?? [];
    const others = isSegment(card) && sizes.length ? segments().map((one) => nodeAt(pathOf(field, card).slice(2), one)).filter((one) => typeof one === 'string') : [];
    const length = field.key === 'thickness' ? textAt(segmentOf(card), 'length') : undefined; // a hole is as long as its wall is thick
    return [...new Set([length, ...others.reverse().slice(0, 2), ...sizes].filter(Boolean))].slice(0, 6);
}

function quantityBody(field, card) {
    const {row} = field;
    const figures = row.allowed ? row.allowed.map((one) => `${one} ${unitsOf(row)[0] ?? ''}`.trim()) : nearFigures(field, card);
    const typed = row.allowed ? null : padOf(field, card);
    if (figures.length && !state.at.pad && !state.draft) {
        return {body: tilesOf(field, card, figures.map((value) => ({value})), row.allowed ? null : () => { state.at.pad = true; draw(); })};
    }
    return typed;
}

function padOf(field, card) {
    const {row} = field;
    const relation = partnerOf(field), partner = relation && FIELDS.find((one) => one.place === field.place && one.key !== field.key && relation.keys.includes(one.key));
    const main = unitsOf(row), readFirst = main.includes('kW') ? ['kW', ...main.filter((unit) => unit !== 'kW')] : main;
    const units = partner && partner.row.units ? [readFirst[0], unitsOf(partner.row)[0], ...readFirst.slice(1)] : readFirst;
    const whole = row.kind === 'whole' || row.shape === 'count-or-list';
    return numberPad({
        units: whole ? [] : units.slice(0, 4), whole, two: row.kind === 'two-sizes', range: !whole && row.kind === 'quantity' && units.length > 0, signed: row.least < 0,
        done: (value) => {
            const unit = value.split(' ').pop();
            const target = partner && !main.includes(unit) && unitsOf(partner.row).includes(unit) ? partner : field;
            give(target, card, value);
        }
    });
}

/* Up, down or level, then how far: mostly it is all of the length. */
function riseBody(field, card) {
    const length = textAt(segmentOf(card), 'length'), part = state.at.part;
    if (part) {
        const pad = numberPad({units: unitsOf(field.row), whole: false, range: true, signed: false,
            done: (value) => give(field, card, part === 'down' ? negative(value) : value)});
        return {...pad, question: say(part === 'down' ? 'how-far-down' : 'how-far-up')};
    }
    const now = nodeOf(field, card);
    const one = (value, text) => tile('word', () => give(field, card, value), now === value, h('span', {}, text));
    const ask = (which) => tile('word', () => { state.at.part = which; draw(); }, undefined, h('span', {}, say(`${which}-part`)));
    return {question: say('rise-question'), body: h('div', {class: 'tiles narrow of5', role: 'group', 'aria-label': field.label}, one('0 m', say('level')),
        length ? [one(length, say('up-all', {value: valueShown(length)})), one(negative(length), say('down-all', {value: valueShown(length)}))] : null, ask('up'), ask('down'))};
}
const negative = (value) => value.split(' to ').map((one) => `-${one}`).reverse().join(' to ');
const isRise = (row) => row.kind === 'quantity' && row.least < 0 && row.least === -row.most;

function riseShown(text) {
    return metres(text.replace(/^[-+]/, '').replace(/ to .*/, '')) === 0 ? say('level') : text.startsWith('-') ? say('down', {value: text.split(' to ').map((one) => one.slice(1)).reverse().join(' to ')}) : say('up', {value: text});
}

function countBody(field, card) {
    const {row} = field, now = nodeOf(field, card);
    if (row.allowed) {
        return {body: tilesOf(field, card, row.allowed.map((one) => ({value: String(one)})))};
    }
    if (state.at.pad || state.draft) {
        return padOf(field, card);
    }
    const least = row.shape === 'count-or-list' ? 0 : row.least ?? 0;
    const counts = Array.from({length: 7}, (_, i) => ({value: String(least + i)}));
    return {body: [now?.l ? h('p', {}, say('bends-listed', {n: now.l.length})) : null, tilesOf(field, card, counts, () => { state.at.pad = true; draw(); })]};
}

function textBody(field, card) {
    const now = nodeOf(field, card), long = field.row.longest > 500 || field.key === 'notes';
    const input = h(long ? 'textarea' : 'input', {id: 'typed', class: 'typed', rows: long ? 3 : null, type: long ? null : 'text', maxlength: field.row.longest, autocomplete: 'off', 'aria-label': field.question,
        oninput: () => { pendingText = {field, card, value: input.value}; state.draft = input.value; keepDraft(); },
        onkeydown: (event) => { if (event.key === 'Enter' && !long) { event.preventDefault(); save(); } }});
    input.value = state.draft || (typeof now === 'string' ? now : '');
    if (state.draft) {
        pendingText = {field, card, value: state.draft};
    }
    const save = () => {
        pendingText = null;
        const value = input.value.trim();
        value === '' ? leaveOpen(field, card) : give(field, card, value);
    };
    return {body: [input, h('button', {type: 'button', class: 'go main', 'data-key': 'keep', onclick: tapped(save)}, say('keep'))]};
}

/* What was typed and not yet kept is kept when one goes elsewhere. */
function keepTyped() {
    const typed = pendingText;
    pendingText = null;
    if (typed && typed.value.trim() !== '' && typed.value !== nodeOf(typed.field, typed.card) && (!isSegment(typed.card) || segmentOf(typed.card))) {
        answer(typed.field, typed.card, typed.value.trim());
    }
    state.draft = '';
}

function dateBody(field, card) {
    const day = (ago) => dayOf(new Date(Date.now() - ago * 86400000));
    const input = h('input', {type: 'date', class: 'typed', 'aria-label': field.question, onchange: () => { if (input.value) { give(field, card, input.value); } }});
    input.value = typeof nodeOf(field, card) === 'string' ? nodeOf(field, card) : '';
    return {body: [tilesOf(field, card, [{value: day(0), shown: say('today'), means: day(0)}, {value: day(1), shown: say('yesterday'), means: day(1)}]), input]};
}

function headingBody(field, card) {
    if (state.at.pad || state.draft) {
        return padOf(field, card);
    }
    return {body: tilesOf(field, card, ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'].map((value) => ({value})), () => { state.at.pad = true; draw(); })};
}

function bodyOf(field, card) {
    const {row} = field;
    if (row.shape === 'count-or-list') {
        return countBody(field, card);
    }
    if (LIST_SHAPES.includes(row.shape) || row.kind === 'keys') {
        return {body: h('p', {}, say('listed-here'))};
    }
    switch (row.kind) {
    case 'word': return {body: tilesOf(field, card, row.words.map((one) => ({value: one.word, shown: spoken(one.word), means: one.meaning !== spoken(one.word) ? one.meaning : ''})))};
    case 'yes-or-no': return {body: tilesOf(field, card, ['yes', 'no'].map((value) => ({value, shown: say(value)})))};
    case 'whole': return countBody(field, card);
    case 'size-or-choose': return {body: tilesOf(field, card, [{value: 'choose', shown: say('choose')}, ...row.allowed.map((one) => ({value: `${one} mm2`}))])};
    case 'date': return dateBody(field, card);
    case 'heading': return headingBody(field, card);
    case 'quantity': return isRise(row) ? riseBody(field, card) : quantityBody(field, card);
    case 'two-sizes': return quantityBody(field, card);
    default: return textBody(field, card);
    }
}

function skipKeyText(field, card) {
    const {row} = field, taken = assumedOf(field, card);
    if (nodeOf(field, card) !== undefined) {
        return say('take-out');
    }
    return isRequired(field, card) ? say('skip-needed') : taken ? say('skip-assumed', {value: valueShown(taken)}) : say('skip');
}

/* An earlier segment of the same way whose other answers stand for these too. */
function restAs(card) {
    const segment = segmentOf(card), way = wayOf(segment);
    const open = fieldsOf(card).asked.filter((field) => isAskedAloud(field) && nodeOf(field, card) === undefined && !isSkipped(field, card));
    if (open.length < 2 || (way !== 'through-wall' && open.some((field) => field.key === 'length' || field.key === 'rise'))) {
        return null;
    }
    const index = segmentIndex(card);
    const like = segments().filter((one) => one !== segment && wayOf(one) === way).sort((a, b) => Math.abs(segments().indexOf(a) - index) - Math.abs(segments().indexOf(b) - index))
        .find((one) => open.some((field) => nodeAt(pathOf(field, card).slice(2), one) !== undefined));
    if (!like) {
        return null;
    }
    const values = open.map((field) => [field, nodeAt(pathOf(field, card).slice(2), like)]).filter(([, node]) => node !== undefined);
    const shown = values.map(([field, node]) => shownValue(field, node)).join(', ');
    return h('button', {type: 'button', class: 'rest-as', 'data-key': 'rest', onclick: tapped(() => {
        guardFrom = performance.now();
        change(() => {
            for (const [field, node] of values) {
                setAt(pathOf(field, card), JSON.parse(JSON.stringify(node)));
            }
            const {skipped} = like;
            segment.skipped = {...skipped, ...segment.skipped};
        }, `${say('rest-as', {name: textAt(like, 'name')})}: ${shown}`);
        advance(card, null);
    })}, h('b', {}, say('rest-as', {name: textAt(like, 'name')})), ` ${shown}`);
}

function drawQuestion(field, card) {
    const made = bodyOf(field, card);
    const faults = faultsAt(field, card).filter((one) => !one.need || nodeOf(field, card) !== undefined || isSkipped(field, card));
    activePad = made.press ? made : null;
    put('panel',
        h('div', {class: 'ask'}, h('h2', {id: 'asked', tabindex: '-1'}, made.question ?? field.question), made.readout ?? null),
        faults.map((one) => h('p', {class: 'fault', role: 'alert'}, one.message, one.suggestion ? ` (${one.suggestion})` : '')),
        isSegment(card) ? restAs(card) : null,
        made.body,
        h('button', {type: 'button', class: 'skip', 'data-key': 'skip', onclick: tapped(() => { pendingText = null; leaveOpen(field, card); })}, skipKeyText(field, card)));
}

/* The ways, always in the same places; the usual next ones have a thicker border. */
function wayPanel(title, chosen, act, withEnd) {
    const row = tableAt(SEGMENTS).fields.find((one) => one.key === 'way');
    const taken = waysOfCable();
    activePad = null;
    put('panel', h('div', {class: 'ask'}, h('h2', {id: 'asked', tabindex: '-1'}, title)),
        h('div', {class: 'tiles ways', role: 'group', 'aria-label': title},
            row.words.map(({word, meaning}) => tile(`way${taken && !taken.has(word) ? ' nofig' : ''}`, () => act(word), chosen === undefined ? undefined : chosen === word, wayTile(word), h('span', {title: meaning}, spoken(word)), taken && !taken.has(word) ? h('small', {}, say('no-figure')) : null)),
            withEnd ? tile('way end', withEnd, undefined, icon('end', 30), h('span', {}, say('far-end')), h('small', {}, say('far-end-means'))) : null));
}

/* Which ways hold a figure for the chosen cable, where the language says so; null where it does not. */
function waysOfCable() {
    const type = nodeAt(['runs', state.run, 'cable', 'type']);
    return type && language.ways ? new Set(language.ways.filter((one) => one.rates.includes(type)).map((one) => one.way).concat('through-wall')) : null; // a hole is rated by what it lies between
}

function drawDone(card) {
    activePad = null;
    if (isSegment(card) || segments().length === 0 && card === 'load') {
        const number = isSegment(card) ? segmentIndex(card) + 1 : 0;
        const last = number === segments().length;
        if (!last && state.at.part !== 'behind') {
            put('panel', h('div', {class: 'ask'}, h('h2', {id: 'asked', tabindex: '-1'}, say('card-done', {card: cardTitle(card)}))),
                h('button', {type: 'button', class: 'go', onclick: tapped(() => { state.at.part = 'behind'; draw(true); })}, say('put-behind')));
            addOn(cardsInOrder()[cardsInOrder().indexOf(card) + 1]);
            return;
        }
        wayPanel(!number ? say('first-way') : last ? say('next-way', {n: number}) : say('behind-way'), undefined, (way) => {
            guardFrom = performance.now();
            let segment;
            change(() => {
                segment = addSegment(way, number);
                state.reached = state.reached && !last; // the way goes on beyond what was its end
            });
            advance(`s:${segment.id}`, null);
        }, number && last ? () => {
            guardFrom = performance.now();
            change(() => { state.reached = true; });
            go('far end');
        } : null);
        return;
    }
    const order = cardsInOrder(), next = order[order.indexOf(card) + 1];
    put('panel', h('div', {class: 'ask'}, h('h2', {id: 'asked', tabindex: '-1'}, say('card-done', {card: say(`card-${card}`)}))));
    addOn(next);
}

function addOn(next) {
    document.getElementById('panel').append(h('button', {type: 'button', class: 'go main on', 'data-key': 'on', onclick: tapped(() => go(next))}, say('on-to', {card: cardTitle(next)})));
}
let activePad = null;
addEventListener('keydown', (event) => {
    if (!activePad || event.target.matches?.('input, textarea') || event.ctrlKey || event.metaKey || event.altKey) {
        return;
    }
    if (/^[0-9.]$/.test(event.key)) {
        activePad.press(event.key);
    } else if (event.key === 'Backspace') {
        activePad.press('delete');
    } else if (event.key === 'Enter' && !event.target.matches?.('button')) {
        activePad.enter();
    } else {
        return;
    }
    event.preventDefault();
});
