/* The way so far: it grows with each segment and leads to every card. Pieces that have not changed are not drawn again. */
const stripKept = new Map();

function stripWidth(segment) {
    return Math.round(56 + 14 * Math.log2(1 + metres(textAt(segment, 'length'))));
}

/* Heights along the way, from rises as they are written. */
function heights() {
    let height = 0;
    return segments().map((segment) => {
        const rise = textAt(segment, 'rise') ?? '', sign = rise.startsWith('-') ? -1 : 1;
        const from = height;
        height += sign * metres(rise.replace(/^[-+]/, ''));
        return [from, height];
    });
}

function stripPiece(card, mark, draw, label, spokenText) {
    const current = state.at.card === card;
    return h('button', {type: 'button', class: 'piece', 'aria-current': current ? 'step' : null, 'aria-label': spokenText, 'data-card': card, onclick: () => go(card)},
        h('span', {class: 'mark'}, mark), draw, h('span', {class: 'under'}, label));
}

function drawStrip() {
    const heightList = heights(), all = heightList.flat();
    const low = Math.min(0, ...all), span = Math.max(0.8, Math.max(0, ...all) - low);
    const y = (height) => 30 - (height - low) / span * 18;
    const pieces = [];
    for (const card of cardsInOrder()) {
        if (!isSegment(card)) {
            const trouble = (verdict.faults ?? []).some((one) => one.card === card && one.severity === 'error' && !one.need) ? '!' : '';
            pieces.push(stripPiece(card, trouble, h('span', {class: 'box'}, icon({'far end': 'end', review: 'send'}[card] ?? card, 28)), say(card === 'review' && state.changed && state.sent?.rev !== state.rev ? 'short-unsent' : `short-${card}`), say(`card-${card}`)));
            continue;
        }
        const index = segmentIndex(card), segment = segments()[index], way = wayOf(segment), name = textAt(segment, 'name');
        const limits = verdict.limits === name, again = isAgain(segment), bad = (verdict.faults ?? []).some((one) => one.card === card && one.severity === 'error' && (!one.need || state.reached));
        const length = textAt(segment, 'length'), width = stripWidth(segment), [from, to] = heightList[index].map(y);
        const key = JSON.stringify([index, way, length, from, to, limits, again, bad, card === state.at.card, state.mode]);
        const known = stripKept.get(card);
        if (known?.key === key) {
            pieces.push(known.piece);
            continue;
        }
        const tilt = Math.atan2(to - from, width) * 180 / Math.PI, run = Math.hypot(width, to - from);
        const drawing = svg('svg', {width, height: 44, viewBox: `0 0 ${width} 44`, 'aria-hidden': 'true'}, svg('g', {transform: `translate(0 ${from}) rotate(${tilt})`}, waySign(way, run)));
        const words = say('segment-spoken', {n: index + 1, way: spoken(way), length: length ?? say('needed')}) + (limits ? say('spoken-limits') : '') + (bad ? say('spoken-needed') : '') + (again ? say('spoken-again') : '');
        const piece = stripPiece(card, [bad ? '! ' : '', again ? icon('recheck', 14) : null, String(index + 1)], drawing, h('span', {class: limits ? 'limits' : ''}, length ?? '?'), words);
        piece.style.width = `${width}px`;
        stripKept.set(card, {key, piece});
        pieces.push(piece);
    }
    put('strip', pieces);
    const current = document.querySelector('#strip [aria-current]');
    if (current) {
        const strip = document.getElementById('strip');
        strip.scrollLeft = current.offsetLeft - (strip.clientWidth - current.offsetWidth) / 2;
    }
}

function drawVerdict() {
    const {kind, first, second} = verdictLines();
    const signs = {pass: '✓', fail: '✕', open: '?', bad: '!', far: '…'};
    put('verdict', h('button', {type: 'button', class: `verdict ${kind}`, onclick: () => go('review')},
        h('span', {class: 'sign', 'aria-hidden': 'true'}, signs[kind]), h('span', {class: 'lines'}, h('b', {}, first), h('span', {}, second))));
}
