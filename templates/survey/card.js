/* A card: its heading, all its questions as chips with what is known, the open one below, and the bar. */
function cardTitle(card) {
    return isSegment(card) ? say('segment-title', {n: segmentIndex(card) + 1, way: spoken(wayOf(segmentOf(card)))}) : say(`card-${card}`);
}

function shownValue(field, node) {
    if (typeof node !== 'string') {
        return node.l ? `${node.l.length}` : say('in-file');
    }
    if (isRise(field.row)) {
        return valueShown(riseShown(node));
    }
    return node === 'yes' || node === 'no' ? say(node) : field.row.kind === 'word' ? spoken(node) : valueShown(node);
}

/* What is taken for an open field: what the engine says it took, else what the language says. */
function assumedOf(field, card) {
    const way = isSegment(card) ? wayOf(segmentOf(card)) : undefined;
    const told = verdict.rev === state.rev && verdict.assumed?.find((one) => one.field === field && one.card === card);
    const said = told && / taken as (.*)$/.exec(told.said);
    return field.row['default-is-value'] ? defaultOf(field, way) : said ? said[1] : defaultOf(field, way);
}

function chip(field, card) {
    const node = nodeOf(field, card), kind = stateOf(field, card), taken = assumedOf(field, card);
    const bad = faultsAt(field, card).some((one) => one.severity === 'error' && !one.need);
    const again = isSegment(card) && isAgain(segmentOf(card), field.key), free = isText(field) || field.row.kind === 'date';
    const signs = {yes: 'yes', range: 'range', assumed: 'open', needed: 'need'};
    const label = kind === 'assumed' && !free ? say('is-assumed', {label: field.label}) : field.label;
    const value = node !== undefined ? shownValue(field, node) : kind === 'needed' ? say('needed') : taken ? say('assumed', {value: valueShown(taken)}) : say(free ? 'left-blank' : 'not-surveyed');
    return h('button', {type: 'button', class: `chip ${bad ? 'bad' : kind}`, 'aria-current': state.at.field === field.id ? 'true' : null, 'data-field': field.id, onclick: () => openField(field, card)},
        h('span', {class: 'label'}, label), h('span', {class: 'value'}, icon(bad ? 'need' : signs[kind], 15), again ? icon('recheck', 15) : null, ' ', value));
}

function openField(field, card) {
    keepTyped();
    state.at = {card, field: field.id, view: 'card'};
    note = null;
    draw(true);
}

function go(card, view = 'card') {
    keepTyped();
    note = null;
    const next = card === 'review' || card === 'start' ? null : nextField(card, null);
    state.at = {card, field: card === 'review' || card === 'start' ? null : next?.id ?? 'done', view, before: card === 'start' ? state.at.card : undefined};
    keepNow();
    draw(true);
}

/* Back never leaves the survey and changes nothing. */
function goBack() {
    keepTyped();
    if (state.at.part || state.at.pad) {
        state.at = {card: state.at.card, field: state.at.field, view: 'card'};
    } else if (state.at.view !== 'card') {
        state.at = {...state.at, view: 'card'};
    } else {
        const order = ['start', ...cardsInOrder()], index = order.indexOf(state.at.card);
        return index > 0 ? go(order[index - 1]) : undefined;
    }
    keepNow();
    draw(true);
}

function drawHead(card) {
    const {asked} = fieldsOf(card);
    const aloud = asked.filter(isAskedAloud);
    const toAsk = aloud.filter((field) => nodeOf(field, card) === undefined && !isSkipped(field, card)).length;
    const left = aloud.filter((field) => nodeOf(field, card) === undefined && isSkipped(field, card)).length;
    const told = [toAsk ? say('to-ask', {n: toAsk}) : say('all-asked'), left ? say('left-open', {n: left}) : ''].filter(Boolean).join(', ');
    put('head', h('h1', {}, cardTitle(card)), h('span', {}, told));
}

function wayChip(card) {
    const field = FIELDS.find((one) => one.place === SEGMENTS && one.key === 'way');
    return chip(field, card);
}

function drawCard() {
    const {card, field: open} = state.at;
    drawHead(card);
    drawSlate(card);
    drawPanel(card, open);
    document.getElementById('panel').dataset.asked = `${card} ${open}`;
}

function drawSlate(card) {
    const {asked} = fieldsOf(card);
    const loads = card === CARDS[1] ? nodeAt(['runs', state.run, 'load']) : undefined;
    const photos = isSegment(card) ? photosOf(segmentOf(card)) : [];
    const general = isSegment(card) ? [] : cardFaults(card);
    put('slate', loads?.l?.length > 1 ? h('p', {class: 'wide'}, say('first-load', {n: loads.l.length})) : null, general.map((one) => h('p', {class: 'fault wide'}, one.message)), asked.map((field) => chip(field, card)),
        photos.length ? h('div', {class: 'wide thumbs'}, photos.map((name) => thumb(name, card))) : null);
    document.querySelector('#slate [aria-current]')?.scrollIntoView({block: 'nearest'});
}

function drawPanel(card, open) {
    const field = FIELDS.find((one) => one.id === open && (one.place !== SEGMENTS || goesWith(one.row, wayOf(segmentOf(card)))) && (one.key !== 'cores' || goesWith(one.row, 'power')));
    if (field && field.place === SEGMENTS && field.key === 'way') {
        wayPanel(say('change-way'), wayOf(segmentOf(card)), (way) => {
            guardFrom = performance.now();
            change(() => changeWay(segmentOf(card), way));
            advance(card, null);
        }, null);
    } else if (field) {
        drawQuestion(field, card);
    } else {
        drawDone(card);
    }
}

/* What the engine says of a card and of no field on it. */
const cardFaults = (card) => (verdict.faults ?? []).filter((one) => one.card === card && !one.field && state.reached);

function drawBar() {
    const {card, view} = state.at;
    const inSegment = isSegment(card);
    const button = (name, act, off, pressed, shown = name) => h('button', {type: 'button', 'data-bar': name, 'aria-disabled': off ? 'true' : null, 'aria-pressed': pressed === undefined ? null : String(pressed), onclick: off ? undefined : act}, icon(shown), say(shown));
    const input = h('input', {type: 'file', accept: 'image/*', capture: 'environment', class: 'unseen', id: 'photo-input', tabindex: '-1', 'aria-hidden': 'true', onchange: () => addPhoto(input)});
    put('bar', button('back', goBack), button('undo', () => { keepTyped(); undo(); draw(true); }, undoPile.length === 0),
        button('recheck', () => recheck(card, view), !inSegment, inSegment && (view === 'again' || isAgain(segmentOf(card)))),
        button('photo', () => input.click(), !inSegment), button('more', () => { keepTyped(); state.at = {...state.at, view: view === 'card' ? 'more' : 'card'}; draw(true); }, card === 'review' && view === 'card' ? false : false, undefined, view === 'card' ? 'more' : 'close'), input);
}

function drawNote() {
    const button = (text, act) => h('button', {type: 'button', onclick: () => { act(); draw(true); }}, text);
    const lines = [];
    if (otherTab) {
        lines.push(h('p', {}, h('span', {}, say('other-tab')), button(say('show-it'), showOther), button(say('go-on-here'), goOnHere)));
    }
    if (storageFull || (storageNone && keepAllowed)) {
        lines.push(h('p', {}, h('span', {}, say(storageNone ? 'storage-none' : 'storage-full')), button(say('save-yaml'), saveRoute)));
    }
    if (note) {
        lines.push(h('p', {}, h('span', {}, note.text), note.undo ? button(say('undo'), undo) : null, note.redo && redo ? button(say('put-back'), putBack) : null));
    }
    put('note', lines);
}

function draw(moved) {
    const {card, view} = state.at;
    const active = document.activeElement, label = active?.getAttribute('aria-label') ?? active?.textContent;
    if (active?.matches('#panel input, #panel textarea') && !moved) {
        drawVerdict(); // a redraw would shut the keyboard
        return;
    }
    if (isSegment(card) && !segmentOf(card)) {
        state.at = {card: 'review', field: null, view: 'card'};
        return draw(moved);
    }
    document.documentElement.dataset.mode = state.mode;
    document.documentElement.dataset.thumb = state.left ? 'left' : 'right';
    const app = document.getElementById('app');
    const whole = card === 'start' || card === 'review' || view !== 'card';
    app.dataset.view = card === 'start' ? 'start' : whole ? 'page' : 'card';
    for (const id of ['strip', 'verdict', 'bar']) {
        document.getElementById(id).hidden = card === 'start';
    }
    for (const id of ['head', 'slate', 'panel']) {
        document.getElementById(id).hidden = whole;
    }
    document.getElementById('page').hidden = !whole;
    drawNote();
    if (card === 'start') {
        drawStart();
    } else {
        drawStrip();
        drawVerdict();
        drawBar();
        whole ? drawPage() : drawCard();
    }
    if (moved) {
        const heading = document.querySelector(whole ? '#page h1' : '#asked');
        heading?.focus({preventScroll: true});
        if (whole) {
            document.getElementById('page').scrollTop = 0;
        } else {
            document.getElementById('panel').scrollTop = 0;
        }
    } else if (active?.matches('main *') && !active.isConnected) { // the same thing, drawn anew, has the focus again
        [...document.querySelectorAll('main button, main h1, main h2')].find((one) => (one.getAttribute('aria-label') ?? one.textContent) === label)?.focus({preventScroll: true});
    }
}
