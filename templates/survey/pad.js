/* The number pad: the unit's key enters the figure. A digit changes the readout alone; the half-typed figure is kept. */
function padParts(text) {
    const parts = /^(-?[\d.]*)(?:( to )([\d.]*))?$/.exec(text);
    return parts ? {low: parts[1], to: parts[2], high: parts[3] ?? ''} : {low: '', to: undefined, high: ''};
}

/* options: {units, whole, signed, range, two, done(value)} */
function numberPad(options) {
    const {units, done} = options;
    const figure = h('output', {class: 'figure', 'aria-live': 'polite', 'aria-label': say('figure')}, state.draft || '…');
    const told = h('p', {class: 'told', role: 'status'});
    const show = () => {
        figure.textContent = state.draft || '…';
        told.textContent = '';
        keepDraft();
    };
    const press = (key) => {
        const last = state.draft.split(/ to | x /).pop();
        if (key === 'delete') {
            state.draft = state.draft.replace(/( to | x |.)$/, '');
        } else if (key === 'to' || key === 'x') {
            state.draft = last && !/ (to|x) /.test(state.draft) ? `${state.draft} ${key} ` : state.draft;
        } else if (key === '-') {
            state.draft = state.draft.startsWith('-') ? state.draft.slice(1) : `-${state.draft}`;
        } else if (!(key === '.' && last.includes('.')) && last.length < 8) {
            state.draft += key === '.' && !/\d$/.test(last) ? '0.' : key;
        }
        show();
    };
    const enter = (unit) => {
        const parts = state.draft.split(/ (?:to|x) /), joint = / x /.test(state.draft) ? ' x ' : ' to ';
        if (!parts.every((one) => /^-?\d+\.?\d*$/.test(one))) {
            told.textContent = say('type-first');
            return;
        }
        const tidy = parts.map((one) => one.replace(/\.$/, ''));
        done(joint === ' to ' && tidy.length === 2 && unit ? `${tidy[0]} ${unit} to ${tidy[1]} ${unit}` : tidy.join(joint) + (unit ? ` ${unit}` : ''));
    };
    const key = (text, action, place, label) => h('button', {type: 'button', class: `key ${place}`, 'aria-label': label, 'data-key': label ?? text, onclick: action}, text);
    const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((one, i) => key(one, () => press(one), `c${i % 3 + 1} r${Math.floor(i / 3) + 1}`));
    const side = units.length ? units : [''];
    const unitKey = (unit, place) => key(unit ? unitShown(unit) : say('enter'), () => enter(unit), `${place} unit`, unit ? `${unitShown(unit)}` : say('enter'));
    const third = options.two ? key('x', () => press('x'), 'c4 r2 small', say('times')) : options.range ? key(say('to'), () => press('to'), 'c4 r2 small') : null;
    const keys = [...digits,
        options.signed ? key('−', () => press('-'), 'c1 r4', say('minus')) : options.whole ? null : key('.', () => press('.'), 'c1 r4'),
        key('0', () => press('0'), options.whole && !options.signed ? 'c1 r4 wide' : 'c2 r4'), options.signed && !options.whole ? key('.', () => press('.'), 'c3 r4') : null,
        key('⌫', () => press('delete'), options.signed && !options.whole ? 'c4 r1' : 'c3 r4', say('delete'))].filter(Boolean);
    const top = third ? null : 'c4 r12';
    const column = side.length === 1 ? [unitKey(side[0], third ? 'c4 r34' : 'c4 r24')] : [unitKey(side[1], third ? 'c4 r3' : top), unitKey(side[0], third ? 'c4 r4' : 'c4 r34')];
    if (third && !(options.signed && !options.whole)) {
        third.className = 'key c4 r12 small';
    }
    const rest = side.slice(2);
    return {
        readout: figure,
        body: h('div', {class: 'pad'}, told, h('div', {class: 'keys'}, keys, third, column), rest.length ? h('div', {class: 'rest'}, rest.map((unit) => unitKey(unit, 'flat'))) : null),
        press, enter: () => enter(side[0])
    };
}

let draftTimer = null;
function keepDraft() {
    clearTimeout(draftTimer);
    draftTimer = setTimeout(() => keepNow(), 150);
}
addEventListener('pagehide', () => keepNow());
