/* The survey: the route as a tree, and what the page knows of it besides. Every change goes through change(). */
const TREE_VERSION = 1, UNDO_MOST = 100;
const FRESH = () => ({version: TREE_VERSION, doc: {m: [['wend', '1']]}, run: 'feeder', reached: false, skipped: {}, next: 1, rev: 0, changed: null, sent: null,
    at: {card: 'start', field: null, view: 'card'}, draft: '', photos: [], mode: 'day', left: false, again: {}, source: null});
let state = FRESH(), undoPile = [], redo = null, note = null;

/* ---- the tree ---- */
const entry = (node, key) => node?.m?.find(([one]) => one === key);

function nodeAt(path, root = state.doc) {
    let node = root;
    for (const step of path) {
        if (node?.l && typeof step === 'string') {
            node = node.l[0]; // the first of a list of loads
        }
        node = node?.l ? node.l[step] : entry(node, step)?.[1];
        if (node === undefined) {
            return undefined;
        }
    }
    return node;
}

/* Puts a key where the language has it among its neighbours; what the language does not know keeps its place. */
function setKey(map, key, value, place) {
    const there = entry(map, key);
    if (there) {
        there[1] = value;
        return;
    }
    const order = keyOrder(place), mine = order.indexOf(key);
    const before = mine < 0 ? -1 : map.m.findIndex(([one]) => order.indexOf(one) > mine);
    map.m.splice(before < 0 ? map.m.length : before, 0, [key, value]);
}

function setAt(path, value) {
    let node = state.doc;
    const trail = [];
    for (let i = 0; i < path.length - 1; i++) {
        if (node.l && typeof path[i] === 'string') {
            node = node.l[0];
        }
        trail.push([node, path[i]]);
        let inner = node.l ? node.l[path[i]] : entry(node, path[i])?.[1];
        if (inner === undefined || typeof inner === 'string') {
            if (value === undefined) {
                return;
            }
            inner = {m: []};
            setKey(node, path[i], inner, placeOfPath(path.slice(0, i)));
        }
        node = inner;
    }
    if (node.l && typeof path[path.length - 1] === 'string') {
        node = node.l[0];
    }
    const key = path[path.length - 1];
    if (value !== undefined) {
        setKey(node, key, value, placeOfPath(path.slice(0, -1)));
        return;
    }
    node.m = node.m.filter(([one]) => one !== key);
    for (let i = trail.length - 1; i >= 0 && node.m?.length === 0; i--) { // no empty mapping stays behind
        const [holder, step] = trail[i];
        if (!holder.m || typeof step !== 'string') {
            break;
        }
        holder.m = holder.m.filter(([one]) => one !== step);
        node = holder;
    }
}

/* ---- segments ---- */
const segments = () => nodeAt(['segments'])?.l ?? [];
const textAt = (node, ...path) => { const found = nodeAt(path, node); return typeof found === 'string' ? found : undefined; };
const segmentId = (card) => card.startsWith('s:') ? Number(card.slice(2)) : null;
const isSegment = (card) => card.startsWith('s:');
const segmentIndex = (card) => segments().findIndex((one) => one.id === segmentId(card));
const segmentOf = (card) => segments()[segmentIndex(card)];
const wayOf = (segment) => textAt(segment, 'way');
const cardsInOrder = () => CARDS.flatMap((card) => card === 'segment' ? segments().map((one) => `s:${one.id}`) : [card]).concat('review');

function freeName(way) {
    const taken = new Set(segments().map((one) => textAt(one, 'name')));
    for (let number = segments().length + 1; ; number++) {
        if (!taken.has(`${way}-${number}`)) {
            return `${way}-${number}`;
        }
    }
}

function addSegment(way, index) {
    if (!nodeAt(['segments'])) {
        setKey(state.doc, 'segments', {l: []}, '');
    }
    const segment = {m: [['name', freeName(way)], ['way', way]], id: state.next++, named: true};
    segments().splice(index, 0, segment);
    return segment;
}

/* What does not go with the new way is taken out; undo brings it back. */
function changeWay(segment, way) {
    if (segment.named) {
        segment.m.find(([key]) => key === 'name')[1] = freeName(way);
    }
    setKey(segment, 'way', way, SEGMENTS);
    const rows = tableAt(SEGMENTS).fields;
    segment.m = segment.m.filter(([key]) => {
        const own = rows.filter((row) => row.key === key);
        return own.length === 0 || own.some((row) => goesWith(row, way));
    });
}

/* ---- fields of a card ---- */
function pathOf(field, card) {
    const steps = field.place.split('.');
    if (field.place.startsWith(SEGMENTS)) {
        return ['segments', segmentIndex(card), ...steps.slice(1), field.key];
    }
    if (steps[0] === 'runs') {
        return ['runs', state.run, ...steps.slice(2), field.key];
    }
    return [...steps, field.key];
}
const nodeOf = (field, card) => nodeAt(pathOf(field, card));
const skipKey = (field) => field.id;
const skippedOf = (card) => isSegment(card) ? segmentOf(card)?.skipped ?? {} : state.skipped;
const isSkipped = (field, card) => Boolean(skippedOf(card)[skipKey(field)]);

/* "far-end=island", "insulation=one-side,surrounded", "power=-": whether an earlier answer of that key is one of those. */
function isDue(field, card) {
    const when = field.asked?.when;
    if (!when) {
        return true;
    }
    const [key, words] = when.split('=');
    const earlier = FIELDS.filter((one) => one.key === key && one.card === field.card && one.rank < field.rank).pop();
    const node = earlier && nodeOf(earlier, card);
    return words.split(',').includes(node === undefined ? '-' : node);
}

/* What another key of the same mapping says against it, as a fuse has no curve. */
function isRefused(field, card) {
    return language.relations.some((one) => one.relation === 'refuses' && one.keys.includes(field.key) &&
        one.table.split(', ').includes(field.place) && one.is?.includes(wordBeside(field, card, one.when)));
}

function wordBeside(field, card, key) {
    const path = pathOf(field, card);
    path[path.length - 1] = key;
    const node = nodeAt(path);
    return typeof node === 'string' ? node : tableAt(field.place).fields.find((row) => row.key === key)?.default;
}

/* Recheck and Photo have keys of their own on the bar. */
/* Worth a look on every segment, and no question of its own. */
const ON_THE_CARD = [`${SEGMENTS}/how-measured`];
const ON_THE_BAR = [`${SEGMENTS}/measure-again`, `${SEGMENTS}/photo`];

/* {asked, more}: the fields that go with this card, and with the way of its segment. */
function fieldsOf(card) {
    const way = isSegment(card) ? wayOf(segmentOf(card)) : null;
    const context = (field) => field.place.startsWith(SEGMENTS) ? (field.place === SEGMENTS ? way : null) : field.place.startsWith('runs') ? 'power' : null;
    const mine = FIELDS.filter((field) => field.card === (way === null ? card : 'segment') && goesWith(field.row, context(field)) &&
        (field.place === SEGMENTS || !field.place.startsWith(SEGMENTS) || mappingGoes(field.place, way)));
    const atOnce = (field) => ON_THE_CARD.includes(field.id) || field.asked && (!field.asked.ways || field.asked.ways.includes(way));
    const answered = (field) => nodeOf(field, card) !== undefined;
    const asked = mine.filter((field) => atOnce(field) && (answered(field) || (isDue(field, card) && !isRefused(field, card) && !isPartnerAnswered(field, card))));
    const more = mine.filter((field) => !atOnce(field) && !ON_THE_BAR.includes(field.id) && (answered(field) || !isRefused(field, card)));
    return {asked, more};
}

function mappingGoes(place, way) {
    const key = place.slice(SEGMENTS.length + 1).split('.')[0];
    return tableAt(SEGMENTS).fields.some((row) => row.key === key && goesWith(row, way));
}

/* Of current and power one is asked; the pad has the units of both. */
function isPartnerAnswered(field, card) {
    const relation = partnerOf(field);
    return Boolean(relation) && field.asked?.when !== undefined && FIELDS.some((one) => one.place === field.place && one.key !== field.key &&
        relation.keys.includes(one.key));
}

const isText = (field) => ['text', 'name', 'file'].includes(field.row.kind);
/* Names come by themselves and a note is for who wants one: neither is asked on the way. */
const isAskedAloud = (field) => field.asked && (field.card === CARDS[CARDS.length - 1] || !isText(field));

function isRequired(field, card) {
    const {row} = field;
    const way = isSegment(card) ? wayOf(segmentOf(card)) : 'power';
    if (row.required || row['required-for']?.includes(way)) {
        return isMappingDue(field, card);
    }
    if (language.relations.some((one) => one.relation === 'one-of' && one.table === field.place && one.keys[0] !== field.key && one.keys.includes(field.key) && field.asked && !field.asked.when)) {
        return true;
    }
    return /\brequired\b/.test(row.default ?? '') && !row['default-is-value'] && !(verdict.plan && verdict.rev === state.rev) && isDue(field, card) && (field.asked?.when !== undefined || !/^none; required/.test(row.default) || language.relations.some((one) =>
        one.relation === 'needs' && one.keys.includes(field.key) && one.table === field.place && one.is?.includes(wordBeside(field, card, one.when))));
}

/* What must be in a mapping that may be left out is needed once the mapping is there. */
function isMappingDue(field, card) {
    const steps = field.place.split('.'), key = steps.pop();
    if (field.place === SEGMENTS || field.place === RUN || nodeAt(pathOf(field, card).slice(0, -1)) !== undefined) {
        return true;
    }
    const row = (steps.length ? tableAt(steps.join('.')) : tables.get('the file'))?.fields.find((one) => one.key === key);
    return !row || row.required || Boolean(row['required-for']?.includes('power'));
}

/* yes, range, assumed, needed */
function stateOf(field, card) {
    const node = nodeOf(field, card);
    if (node !== undefined) {
        return typeof node === 'string' && / to /.test(node) && field.row.kind === 'quantity' ? 'range' : 'yes';
    }
    return isRequired(field, card) ? 'needed' : 'assumed';
}

function nextField(card, after) {
    const open = fieldsOf(card).asked.filter((field) => isAskedAloud(field) && nodeOf(field, card) === undefined && !isSkipped(field, card));
    return open.find((field) => !after || field.rank > after.rank) ?? open[0] ?? null;
}

/* ---- changes ---- */
function snapshot() {
    return JSON.stringify({doc: state.doc, reached: state.reached, skipped: state.skipped, next: state.next, at: state.at, run: state.run, again: state.again});
}

function change(make, text) {
    const before = snapshot();
    make();
    undoPile.push(before);
    undoPile.splice(0, Math.max(0, undoPile.length - UNDO_MOST));
    redo = null;
    touched(text ? {text, undo: true} : null);
}

function touched(said) {
    state.rev++;
    state.changed = clockNow();
    state.draft = '';
    note = said;
    keepSoon();
    planSoon();
}

function takeBack(from, said) {
    Object.assign(state, JSON.parse(from));
    touched(said);
    if (isSegment(state.at.card) && !segmentOf(state.at.card)) {
        state.at = {card: 'review', field: null, view: 'card'};
    }
}

function undo() {
    if (undoPile.length === 0) {
        note = {text: say('undo-none')};
        return;
    }
    const now = snapshot();
    takeBack(undoPile.pop(), {text: say('undone'), redo: true});
    redo = now;
}

function putBack() {
    if (redo) {
        undoPile.push(snapshot());
        takeBack(redo, null);
        redo = null;
    }
}

function answer(field, card, node) {
    change(() => {
        setAt(pathOf(field, card), node);
        const relation = partnerOf(field);
        for (const key of relation && node !== undefined ? relation.keys : []) {
            if (key !== field.key) {
                setAt([...pathOf(field, card).slice(0, -1), key], undefined);
            }
        }
        delete skippedOf(card)[skipKey(field)];
    });
}

function skip(field, card) {
    change(() => {
        setAt(pathOf(field, card), undefined);
        const holder = isSegment(card) ? segmentOf(card) : state;
        holder.skipped = {...holder.skipped, [skipKey(field)]: 1};
    });
}

/* ---- what is written ---- */
function metres(text) {
    const parts = /(?:^| to )([\d.]+) (m|cm|mm)$/.exec(text ?? '');
    return parts ? Number(parts[1]) * {m: 1, cm: 0.01, mm: 0.001}[parts[2]] : 0;
}
const lengthSoFar = () => segments().reduce((sum, one) => sum + metres(textAt(one, 'length')), 0);
const shownLength = (sum) => `${Number(sum.toFixed(2))} m`;

/* The route as it is saved; asked of the engine with a title, since it may come last. */
function routeText(forEngine) {
    const keep = state.doc;
    state.doc = JSON.parse(JSON.stringify(keep));
    if (state.reached) {
        setAt(['complete'], undefined);
    } else {
        setAt(['complete'], 'no');
    }
    if (forEngine && !state.reached && nodeAt(['job', 'title']) === undefined) {
        setAt(['job', 'title'], 'not named yet');
    }
    const written = yamlWrite(state.doc, isTextPath);
    state.doc = keep;
    return written;
}
