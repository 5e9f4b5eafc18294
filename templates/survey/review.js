/* Whole-page views: what the plan says, the order of the segments, what is rarely asked, the file as text, the start. */
const rowButton = (text, act, ...lead) => h('button', {type: 'button', class: 'go', onclick: act}, lead, h('span', {class: 'words'}, text));
const section = (title, ...body) => [h('h2', {}, title), body];
const listOf = (items) => h('ul', {class: 'rows'}, items.map((one) => h('li', {}, one)));

function drawPage() {
    const {card, view} = state.at;
    activePad = null;
    const page = document.getElementById('page');
    page.replaceChildren(...(view === 'again' ? againPage(card) : view === 'text' ? textPage() : view === 'more' ? morePage(card) : reviewPage()).flat(4).filter(Boolean));
}

const goTo = (one) => {
    if (one.field && one.card) {
        openField(one.field, one.card);
    } else if (one.card) {
        go(one.card);
    }
};

/* ---- review ---- */
function sentLine() {
    if (!state.changed) {
        return say('nothing-yet');
    }
    return !state.sent ? say('not-sent', {at: state.changed}) : state.sent.rev === state.rev ? say('sent-all', {sent: state.sent.at}) : say('not-sent-since', {sent: state.sent.at, at: state.changed});
}

function reviewPage() {
    const {kind, first, second} = verdictLines();
    const limiting = segments().find((one) => textAt(one, 'name') === verdict.limits);
    const items = (list, name) => listOf(list.map((one) => rowButton(one.text ?? one.message, () => goTo(one), icon(name, 18))));
    const where = (one) => ({...one, message: `${one.card ? cardTitle(one.card) : ''}${one.card ? ': ' : ''}${one.message}`});
    const unsure = cardsInOrder().filter((card) => card !== 'review').flatMap((card) => fieldsOf(card).asked.concat(fieldsOf(card).more).filter((field) => stateOf(field, card) === 'range').map((field) => ({card, field, text: `${cardTitle(card)}: ${field.label} ${shownValue(field, nodeOf(field, card))}`})));
    const again = segments().filter((one) => isAgain(one)).map((one) => ({card: `s:${one.id}`, text: `${textAt(one, 'name')}: ${againList(one).join(', ') || say('again-whole')}`}));
    const part = (title, list, sign) => list.length ? section(`${say(title)} (${list.length})`, items(list, sign)) : [];
    return [h('h1', {tabindex: '-1'}, first), h('p', {}, second), kind !== 'pass' && verdict.text && verdict.plan ? h('p', {}, verdict.text) : null,
        engine ? null : h('p', {}, say('no-engine-means')), engine && !state.reached ? h('p', {}, say('so-far-means')) : null,
        limiting ? h('button', {type: 'button', class: 'go', onclick: () => go(`s:${limiting.id}`)}, say('go-limits', {name: verdict.limits})) : null,
        part('list-refused', refusals().map(where), 'need'), part('list-needed', needs().map(where), 'need'), part('list-again', again, 'recheck'), part('list-unsure', unsure, 'range'),
        verdict.warned?.length ? section(`${say('list-warned')} (${verdict.warned.length})`, listOf(verdict.warned.map((one) => h('p', {}, one.text ?? String(one))))) : [],
        sendPart(),
        verdict.plan ? section(say('list-diagram'), h('div', {id: 'diagram', class: 'diagram'}, h('button', {type: 'button', class: 'go', onclick: drawDiagram}, say('make-diagram')))) : [],
        section(say('list-segments'), segmentList()),
        part('list-assumed', verdict.assumed ?? [], 'open'),
        verdict.open?.length ? section(`${say('list-open')} (${verdict.open.length})`, listOf(verdict.open.map((one) => h('p', {}, one.text)))) : [],
        verdict.fixed?.length ? section(`${say('list-rest')} (${verdict.fixed.length})`, listOf(verdict.fixed.map((one) => h('p', {}, one.text)))) : []];
}

function sendPart() {
    const canShare = typeof navigator.share === 'function' && typeof navigator.canShare === 'function';
    return section(say('send'), h('p', {id: 'sent', role: 'status'}, sentLine()), h('div', {class: 'two'},
        h('button', {type: 'button', class: 'main', id: 'save-yaml', onclick: saveRoute}, say('save-yaml')),
        h('button', {type: 'button', class: 'main', id: 'save-zip', onclick: saveZip}, say('save-zip')),
        canShare ? h('button', {type: 'button', id: 'share', onclick: shareAll}, say('share')) : null),
        h('p', {}, say(engine ? 'zip-holds' : 'zip-no-engine')));
}

async function drawDiagram() {
    const made = await engine.plan(routeText(true).text, ['narrow.svg', 'diagram.svg'], {soFar: !state.reached, name: fileStem()});
    const bytes = made.documents?.['narrow.svg'] ?? made.documents?.['diagram.svg'];
    const place = document.getElementById('diagram');
    if (bytes && place) {
        place.replaceChildren(h('img', {src: URL.createObjectURL(new Blob([bytes], {type: 'image/svg+xml'})), alt: say('diagram-of'), class: made.documents['narrow.svg'] ? '' : 'wide'}));
    }
}

/* ---- the order of the segments: by buttons, or by dragging the grip ---- */
function moveSegment(from, to) {
    const list = segments();
    if (to < 0 || to >= list.length || to === from) {
        return;
    }
    const name = textAt(list[from], 'name');
    change(() => { list.splice(to, 0, ...list.splice(from, 1)); }, say('moved', {name, n: to + 1}));
    const at = document.getElementById('page').scrollTop;
    draw();
    document.getElementById('page').scrollTop = at;
    document.querySelector(`[data-row="${list[to].id}"] .grip`)?.focus({preventScroll: true});
}

function segmentList() {
    return h('ol', {class: 'segments'}, segments().map((segment, index) => {
        const name = textAt(segment, 'name'), card = `s:${segment.id}`;
        return h('li', {class: 'row', 'data-row': segment.id},
            h('button', {type: 'button', class: 'grip', 'aria-label': say('drag', {name}), onpointerdown: (event) => drag(event, index)}, icon('grip', 22)),
            h('button', {type: 'button', class: 'name', onclick: () => go(card)}, `${index + 1} ${name}`, h('small', {}, `${spoken(wayOf(segment))}, ${textAt(segment, 'length') ?? say('needed')}`)),
            h('button', {type: 'button', 'aria-label': say('move-up', {name}), 'aria-disabled': index === 0 ? 'true' : null, onclick: () => moveSegment(index, index - 1)}, icon('up', 22)),
            h('button', {type: 'button', 'aria-label': say('move-down', {name}), 'aria-disabled': index === segments().length - 1 ? 'true' : null, onclick: () => moveSegment(index, index + 1)}, icon('down', 22)));
    }));
}

function drag(event, index) {
    const grip = event.currentTarget, row = grip.parentElement, list = row.parentElement, page = document.getElementById('page');
    const rows = [...list.children];
    let to = index;
    grip.setPointerCapture(event.pointerId);
    row.classList.add('dragged');
    const move = (at) => {
        const box = page.getBoundingClientRect();
        page.scrollTop += at.clientY < box.top + 48 ? -12 : at.clientY > box.bottom - 48 ? 12 : 0;
        const over = rows.findIndex((one) => { const place = one.getBoundingClientRect(); return at.clientY >= place.top && at.clientY <= place.bottom; });
        to = over >= 0 ? over : to;
        rows.forEach((one, i) => one.classList.toggle('target', i === to && i !== index));
    };
    const end = (at) => {
        grip.removeEventListener('pointermove', move);
        rows.forEach((one) => one.classList.remove('dragged', 'target'));
        if (at.type === 'pointerup') {
            moveSegment(index, to);
        }
    };
    grip.addEventListener('pointermove', move);
    grip.addEventListener('pointerup', end, {once: true});
    grip.addEventListener('pointercancel', end, {once: true});
}

/* ---- more ---- */
function morePage(card) {
    const parts = [h('h1', {tabindex: '-1'}, card === 'review' ? say('settings') : say('more-of', {card: cardTitle(card)}))];
    if (card !== 'review') {
        const {more} = fieldsOf(card);
        parts.push(h('div', {class: 'two'}, h('button', {type: 'button', class: 'main', onclick: () => go('review')}, say('go-review')),
            h('button', {type: 'button', onclick: () => { state.at = {...state.at, view: 'text'}; draw(true); }}, say('as-text'))));
        parts.push(more.length ? section(say('all-fields'), h('div', {class: 'slate'}, more.map((field) => chip(field, card)))) : []);
    } else {
        parts.push(h('button', {type: 'button', onclick: () => { state.at = {...state.at, view: 'text'}; draw(true); }, class: 'go'}, say('as-text')));
    }
    if (isSegment(card)) {
        parts.push(section(say('this-segment'), h('div', {class: 'two'}, segmentActions(card))));
    }
    const runs = (nodeAt(['runs'])?.m ?? []).filter(([, run]) => (textAt(run, 'kind') ?? 'power') === 'power');
    if (runs.length > 1) {
        parts.push(section(say('which-run'), h('div', {class: 'two'}, runs.map(([name]) => h('button', {type: 'button', 'aria-pressed': String(name === state.run), onclick: () => { state.run = name; keepNow(); draw(true); }}, name)))));
    }
    const mode = (name) => h('button', {type: 'button', 'aria-pressed': String(state.mode === name), onclick: () => { state.mode = name; keepNow(); draw(); }}, say(name));
    const thumb = (left) => h('button', {type: 'button', 'aria-pressed': String(state.left === left), onclick: () => { state.left = left; keepNow(); draw(); }}, say(left ? 'left' : 'right'));
    parts.push(section(say('settings'), h('div', {class: 'two'}, mode('day'), mode('sun'), mode('night'), thumb(true), thumb(false)),
        fromDisk && !keepAllowed ? h('button', {type: 'button', class: 'go', onclick: () => { allowKeeping(true); draw(); }}, say('keep-yes')) : null,
        h('button', {type: 'button', class: 'go', onclick: () => go('start')}, say('card-start'))));
    return parts;
}

function segmentActions(card) {
    const index = segmentIndex(card), segment = segments()[index], name = textAt(segment, 'name');
    const act = (text, make) => h('button', {type: 'button', onclick: make}, text);
    const copied = () => {
        const twin = JSON.parse(JSON.stringify(segment));
        twin.id = state.next++;
        twin.named = true;
        twin.m.find(([key]) => key === 'name')[1] = freeName(wayOf(segment));
        return twin;
    };
    return [act(say('insert'), () => {
        let made;
        change(() => { made = addSegment(wayOf(segment), index); }, say('inserted'));
        state.at = {card: `s:${made.id}`, field: `${SEGMENTS}/way`, view: 'card'};
        draw(true);
    }), act(say('copy'), () => {
        let twin;
        change(() => { twin = copied(); segments().splice(index + 1, 0, twin); }, say('copied', {name}));
        go(`s:${twin.id}`);
    }), act(say('move-it'), () => {
        go('review');
        document.querySelector(`[data-row="${segment.id}"]`)?.scrollIntoView({block: 'center'});
        document.querySelector(`[data-row="${segment.id}"] .grip`)?.focus({preventScroll: true});
    }), act(say('remove'), () => {
        const order = cardsInOrder(), before = order[order.indexOf(card) - 1];
        change(() => {
            segments().splice(index, 1);
            if (segments().length === 0) {
                setAt(['segments'], undefined);
                state.reached = false;
            }
        }, say('removed', {name}));
        const said = note;
        go(before);
        note = said;
        drawNote();
    })];
}

/* ---- measure again ---- */
/* Where the language has one mark for the whole segment, it is set at once. */
function recheck(card, view) {
    keepTyped();
    if (againRow()?.kind !== 'yes-or-no') {
        state.at = {...state.at, view: view === 'again' ? 'card' : 'again'};
        draw(true);
        return;
    }
    const segment = segmentOf(card), name = textAt(segment, 'name');
    change(() => toggleAgain(segment), say(isAgain(segment) ? 'again-off' : 'again-set', {name}));
    draw();
}

const segmentRow = (...keys) => tableAt(SEGMENTS).fields.find((row) => keys.includes(row.key));
const againRow = () => segmentRow('measure-again');

function againList(segment) {
    const node = entry(segment, 'measure-again')?.[1];
    return node?.l ? node.l.filter((one) => typeof one === 'string') : Object.keys(segment.again ?? {});
}

function isAgain(segment, key) {
    const node = entry(segment, 'measure-again')?.[1], list = againList(segment);
    return key === undefined ? node === 'yes' || list.length > 0 : list.includes(key);
}

function toggleAgain(segment, key) {
    const row = againRow(), list = againList(segment);
    const next = list.includes(key) ? list.filter((one) => one !== key) : [...list, key];
    if (!row) {
        segment.again = Object.fromEntries(next.map((one) => [one, 1]));
    } else if (row.kind === 'yes-or-no') {
        setOrDrop(segment, 'measure-again', isAgain(segment) ? undefined : 'yes');
    } else {
        setOrDrop(segment, 'measure-again', next.length ? {l: next} : undefined);
    }
}

function setOrDrop(map, key, node) {
    if (node === undefined) {
        map.m = map.m.filter(([one]) => one !== key);
    } else {
        setKey(map, key, node, SEGMENTS);
    }
}

function againPage(card) {
    const segment = segmentOf(card);
    const fields = fieldsOf(card).asked.filter((field) => field.place === SEGMENTS && !isText(field) && field.key !== 'way' && nodeOf(field, card) !== undefined);
    const one = (key, text) => h('button', {type: 'button', class: 'go', 'aria-pressed': String(isAgain(segment, key)), onclick: () => {
        const name = textAt(segment, 'name');
        change(() => toggleAgain(segment, key));
        note = {text: say(isAgain(segment, key) ? 'again-set' : 'again-off', {name}), undo: true};
        draw();
    }}, icon('recheck', 18), h('span', {class: 'words'}, text));
    return [h('h1', {tabindex: '-1'}, say('again-title')), listOf(fields.map((field) => one(field.key, `${field.label}: ${shownValue(field, nodeOf(field, card))}`))),
        fields.length ? null : h('p', {}, say('again-none'))];
}

/* ---- the file as text ---- */
function textPage() {
    const {text, places} = routeText(false);
    return [h('h1', {tabindex: '-1'}, say('text-title')), h('div', {class: 'listing'}, text.trimEnd().split('\n').map((line, i) => {
        const at = locate(places[i] ?? [], '');
        const bad = (verdict.faults ?? []).filter((one) => one.severity === 'error' && !one.need && one.field && one.field === at.field && one.card === at.card);
        return [h('button', {type: 'button', class: bad.length ? 'bad' : '', onclick: () => goTo(at)}, line), bad.map((one) => h('p', {class: 'fault'}, one.message))];
    }))];
}

/* ---- the start ---- */
let wipeAsked = false;
function drawStart() {
    const any = segments().length > 0 || state.rev > 0;
    const title = nodeAt(['job', 'title']) ?? say('unnamed');
    const input = h('input', {type: 'file', accept: '.yaml,.yml,text/plain,application/yaml', class: 'unseen', id: 'open-input', tabindex: '-1', 'aria-hidden': 'true', onchange: () => openFile(input)});
    const parts = [h('h1', {tabindex: '-1'}, say('card-start')), h('p', {}, say('start-text'))];
    if (kept?.newer) {
        parts.push(h('p', {class: 'fault'}, say('newer-kept')), h('div', {class: 'listing'}, h('p', {}, kept.newer)));
    }
    if (fromDisk && !keepAllowed) {
        parts.push(h('p', {class: 'fault'}, say('ask-keep')), h('div', {class: 'two'}, h('button', {type: 'button', 'data-key': 'keep-yes', onclick: () => { allowKeeping(true); loadKept(); draw(true); }}, say('keep-yes'))));
        parts.push(h('p', {}, say('kept-not')));
    }
    if (engineFault) {
        parts.push(h('p', {class: 'fault'}, say('engine-broke', {what: engineFault})));
    } else if (!engine) {
        parts.push(h('p', {}, say('no-engine-means')));
    }
    parts.push(h('div', {class: 'two start'},
        any ? h('button', {type: 'button', class: 'main', 'data-key': 'resume', onclick: () => go(state.at.before ?? CARDS[0])}, say('resume', {title})) : h('button', {type: 'button', class: 'main', 'data-key': 'begin', onclick: () => go(CARDS[0])}, say('start')),
        h('button', {type: 'button', 'data-key': 'open', onclick: () => input.click()}, say('open-file')), input,
        any ? h('button', {type: 'button', 'data-key': 'wipe', onclick: async () => {
            if (!wipeAsked) {
                wipeAsked = true;
                draw();
                return;
            }
            wipeAsked = false;
            await wipe();
            draw(true);
        }}, wipeAsked ? say(state.sent?.rev === state.rev ? 'wipe-sure' : 'wipe-again') : say('wipe')) : null));
    if (any) {
        parts.push(h('p', {role: 'status'}, sentLine()));
    }
    document.getElementById('page').replaceChildren(...parts);
}
