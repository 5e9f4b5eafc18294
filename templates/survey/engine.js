/* The engine's part: it plans after each change, and what it says is shown at the field that it is about. The page decides
 * nothing. wendEngine may be there already, or is made of wendEngineFrom and wendEngineBytes (base64, gzipped or not). */
let engine = null, engineFault = null, verdict = {rev: -1}, planTimer = null, planCost = 0, planRunning = false;

/* The engine in a worker, so that a long plan holds up no tap; null where a page may have none. */
async function engineAside(bytes) {
    const asked = new Map();
    let count = 0, worker;
    const work = async (from) => {
        let planner = null;
        onmessage = async ({data}) => {
            try {
                if (data.bytes) {
                    planner = await from(data.bytes);
                }
                postMessage({number: data.number, answer: data.call ? planner[data.call](...data.words) : true});
            } catch (fault) {
                postMessage({number: data.number, fault: String(fault?.message ?? fault)});
            }
        };
    };
    const ask = (message) => new Promise((done, failed) => {
        asked.set(++count, {done, failed});
        worker.postMessage({...message, number: count});
    });
    try {
        const place = URL.createObjectURL(new Blob([`'use strict';\n(${work})(${wendEngineFrom});\n`], {type: 'text/javascript'}));
        worker = new Worker(place);
        worker.onmessage = ({data}) => {
            const {done, failed} = asked.get(data.number);
            asked.delete(data.number);
            data.fault === undefined ? done(data.answer) : failed(new Error(data.fault));
        };
        worker.onerror = (event) => {
            event.preventDefault();
            for (const {failed} of asked.values()) {
                failed(new Error(event.message || 'worker'));
            }
            asked.clear();
        };
        await ask({bytes});
    } catch {
        worker?.terminate();
        return null;
    }
    return {plan: (...words) => ask({call: 'plan', words}), tree: (...words) => ask({call: 'tree', words})};
}

async function beginEngine() {
    try {
        if (typeof wendEngine !== 'undefined') {
            engine = wendEngine;
        } else if (typeof wendEngineFrom === 'function' && typeof wendEngineBytes === 'string') {
            let bytes = Uint8Array.from(atob(wendEngineBytes), (one) => one.charCodeAt(0));
            if (bytes[0] === 0x1f && bytes[1] === 0x8b) {
                const unpacked = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
                bytes = new Uint8Array(await new Response(unpacked).arrayBuffer());
            }
            engine = await engineAside(bytes) ?? await wendEngineFrom(bytes);
        }
    } catch (fault) {
        engineFault = String(fault.message ?? fault);
    }
}

/* After the answer is on the screen; the longer a plan takes, the longer it waits for a pause. */
function planSoon() {
    clearTimeout(planTimer);
    if (engine) {
        planTimer = setTimeout(planNow, Math.min(1500, planCost));
    }
}

async function planNow() {
    if (planRunning) {
        return;
    }
    planRunning = true;
    const rev = state.rev, began = performance.now();
    try {
        const {text, places} = routeText(true);
        const made = await engine.plan(text, [], {soFar: !state.reached});
        planCost = (performance.now() - began) * 2;
        verdict = read(made, places, rev);
        engineFault = null;
    } catch (fault) {
        engineFault = String(fault.message ?? fault);
        verdict = {rev};
    }
    planRunning = false;
    if (state.rev !== rev) {
        planSoon();
    }
    heard();
}

const isNeedOf = (name) => /-missing$|^load-neither$|^island-without-electrode$|^rcbo-without-residual$|^key-empty$/.test(name);

function read(made, places, rev) {
    const told = made.check?.diagnostics ?? [];
    const faults = told.map((one) => ({...one, ...locate(one.path ?? places[(one.line ?? 0) - 1] ?? [], one.message), need: isNeedOf(one.name)}));
    const plan = made.plan, run = plan?.runs?.find((one) => one.name === state.run) ?? plan?.runs?.[0];
    const assumed = (plan?.assumptions ?? []).map((one) => {
        const at = locate(pathOfWhere(one.where), null);
        return {text: `${at.card ? cardTitle(at.card) : one.where}: ${one.text}`, said: one.text, can: one['can-be-surveyed'] !== false && one['can-be-surveyed'] !== 'no', ...at};
    }).sort((a, b) => Number(Boolean(b.field?.asked)) - Number(Boolean(a.field?.asked)));
    return {rev, status: made.status ?? made.check?.status, word: plan?.verdict ?? made.check?.verdict, text: plan?.['verdict-text'] ?? made.check?.['verdict-text'] ?? '', faults, plan, run,
        assumed: assumed.filter((one) => one.field && one.can), fixed: assumed.filter((one) => !one.field || !one.can),
        open: plan?.['not-checked-list']?.['not-checked'] ?? [], warned: plan?.warnings ?? [], limits: run?.governing};
}

/* "runs.feeder.load[1].diversity", "segments.loft.fixed-to" -> a path of the tree. */
function pathOfWhere(where) {
    const names = where.startsWith('segments.') ? segments().map((one) => textAt(one, 'name')) : where.startsWith('runs.') ? (nodeAt(['runs'])?.m ?? []).map(([name]) => name) : [];
    const [top] = where.split('.');
    const name = names.filter((one) => where === `${top}.${one}` || where.startsWith(`${top}.${one}.`)).sort((a, b) => b.length - a.length)[0];
    const rest = (name === undefined ? where.slice(top.length + 1) : where.slice(top.length + name.length + 2)).split('.').filter(Boolean).map((step) => step.replace(/\[\d+\]$/, ''));
    return [top, ...name === undefined ? [] : [top === 'segments' ? segments().findIndex((one) => textAt(one, 'name') === name) : name], ...rest];
}

/* A path of the tree -> {card, field}; of a mapping the field in it that the message names, or the first; without a message
 * nothing but the field itself. */
function locate(path, message) {
    const segment = path[0] === 'segments' && typeof path[1] === 'number' ? segments()[path[1]] : null;
    const way = segment && wayOf(segment);
    const fits = (field) => field.place !== SEGMENTS || goesWith(field.row, way);
    const words = (message ?? '').split(/[^\w-]+/);
    for (let length = path.length; length > 0; length--) {
        const place = placeOfPath(path.slice(0, length - 1)), key = path[length - 1];
        const exact = FIELDS.find((field) => field.place === place && field.key === key && fits(field));
        const inside = exact ?? FIELDS.find((field) => field.place === placeOfPath(path.slice(0, length)) && words.includes(field.key) && fits(field));
        const field = inside ?? FIELDS.find((one) => one.place === placeOfPath(path.slice(0, length)) && one.asked && fits(one) && one.key !== 'way' && one.key !== 'name');
        if (field && (message !== null || (field === exact && length === path.length))) {
            return {card: segment ? `s:${segment.id}` : field.card === 'segment' ? null : field.card, field};
        }
    }
    const place = path[0] === 'runs' ? RUN : path[0];
    return {card: segment ? `s:${segment.id}` : cardOfPlace.get(place) === 'segment' ? null : cardOfPlace.get(place) ?? null, field: null};
}

const faultsAt = (field, card) => (verdict.faults ?? []).filter((one) => one.field === field && one.card === card);
/* Errors that more answers would not cure, and answers that are needed. */
const refusals = () => (verdict.faults ?? []).filter((one) => one.severity === 'error' && !one.need);
const needs = () => (verdict.faults ?? []).filter((one) => one.need && one.severity === 'error');

/* An answer that the engine refuses is asked again, unless another was given meanwhile. */
let lastAnswered = null;
function heard() {
    if (lastAnswered && verdict.rev === lastAnswered.rev) {
        const {field, card} = lastAnswered;
        if (state.at.card === card && faultsAt(field, card).some((one) => one.severity === 'error' && !one.need)) {
            state.at = {card, field: field.id, view: 'card'};
            lastAnswered = null;
            draw(true);
            return;
        }
    }
    told();
}

let fingerDown = false, toldLate = false;
addEventListener('pointerdown', () => { fingerDown = true; }, true);
for (const end of ['pointerup', 'pointercancel']) {
    addEventListener(end, () => {
        fingerDown = false;
        setTimeout(() => { // after the click that follows
            if (toldLate && !fingerDown) {
                toldLate = false;
                told();
            }
        }, 50);
    }, true);
}

/* What has come from the engine is shown; the question stays as it is under the thumb, unless there is a fault to show at it. */
function told() {
    if (fingerDown) { // what is under it must not be drawn anew
        toldLate = true;
        return;
    }
    const {card, view} = state.at, whole = card === 'start' || card === 'review' || view !== 'card';
    const open = FIELDS.find((one) => one.id === state.at.field);
    const asked = document.getElementById('panel').dataset.asked === `${card} ${state.at.field}` && !document.querySelector('#panel .fault');
    if (whole || !asked || (open && faultsAt(open, card).length > 0)) {
        draw();
        return;
    }
    drawStrip();
    drawVerdict();
    drawNote();
    drawHead(card);
    drawSlate(card);
}

function verdictLines() {
    const length = shownLength(lengthSoFar()), size = verdict.run?.['size-mm2'] ? `${verdict.run['size-mm2']} mm²` : '';
    const sign = (kind, first, second) => ({kind, first, second});
    if (engineFault) {
        return sign('far', say('no-engine', {length}), say('engine-broke', {what: engineFault}));
    }
    if (!engine) {
        return sign('far', say(state.reached ? 'no-engine-end' : 'no-engine', {length}), say('no-engine-2'));
    }
    if (verdict.rev !== state.rev && segments().length > 0) { // what was said holds for what was entered before
        return sign('far', state.reached ? say('planning') : say('so-far-planning', {length}), say('planning'));
    }
    const wrong = refusals().length, need = needs().length;
    const about = [verdict.limits && say('limits', {name: verdict.limits}), verdict.plan && say('assumed-count', {n: verdict.assumed.length}), verdict.plan && verdict.open.length > 0 && say('open-count', {n: verdict.open.length}), verdict.warned?.length > 0 && say('warned-count', {n: verdict.warned.length})].filter(Boolean).join(' · ');
    const second = verdict.rev < 0 ? say('planning') : about || refusals()[0]?.message || (needs().length ? say('still-needed', {what: neededNames()}) : '');
    if (!state.reached) {
        if (segments().length === 0 && !verdict.plan && wrong === 0) {
            return sign('far', say('so-far-nothing'), second);
        }
        return wrong ? sign('bad', say('so-far-refused', {length, n: wrong}), second) : !verdict.plan ? sign('far', say('so-far-needs', {length, n: need}), second)
            : verdict.word === 'fail' ? sign('fail', say('so-far-fails', {length, what: failing()}), second) : sign('far', say('so-far-size', {length, size}), second);
    }
    return wrong ? sign('bad', say('refused', {n: wrong}), second) : !verdict.plan ? sign('bad', say('not-complete', {n: need}), second)
        : verdict.word === 'fail' ? sign('fail', say('fails', {what: failing()}), second)
        : verdict.word === 'pass' ? sign('pass', say('passes', {size}), second) : sign('open', say('open', {size, n: verdict.open.length}), second);
}

function neededNames() {
    return needs().slice(0, 3).map((one) => one.field?.label ?? (one.card ? cardTitle(one.card) : say('segment', {n: 1}))).join(', ');
}

function failing() {
    const names = (verdict.plan?.runs ?? []).flatMap((run) => (run.checks ?? []).filter((one) => one.result === 'fail').map((one) => one.id));
    return names.length ? [...new Set(names)].slice(0, 3).join(', ') : verdict.text;
}
