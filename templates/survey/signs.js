/* Signs of the ways, drawn along a line of `length` at height 0: the strip, the tiles and the list use the same. A stroke is
 * [path, width, dashes]; shape and pattern carry the meaning, colour none. */
function along(length, pitch, one) {
    const count = Math.max(1, Math.floor((length - 4) / pitch)), first = (length - (count - 1) * pitch) / 2;
    return Array.from({length: count}, (_, i) => one(first + i * pitch, i)).join('');
}
const level = (length, y) => `M1 ${y}H${length - 1}`;
const waySigns = {
    wall: (l) => [[along(l, 11, (x) => `M${x} -4V4`), 1.4]],
    fence: (l) => [[along(l, 18, (x) => `M${x} -5V13`), 2.4], [level(l, 7), 1]],
    beam: (l) => [[level(l, 4) + level(l, 10), 1], [along(l, 14, (x) => `M${x} 0V4`), 1]],
    'loft-void': (l) => [[along(l, 20, (x) => `M${x - 7} -4L${x} -12L${x + 7} -4`), 1.2]],
    'under-floor': (l) => [[level(l, -6) + level(l, -10), 1], [along(l, 15, (x) => `M${x} -10V-6`), 1]],
    'stud-wall': (l) => [[level(l, -7) + level(l, 7), 1, '5 3'], [along(l, 17, (x) => `M${x} -7V7`), 2]],
    ceiling: (l) => [[level(l, 7), 2], [along(l, 9, (x) => `M${x} 7V11`), 1]],
    'through-wall': (l) => {
        const m = l / 2, w = Math.min(m - 1, 11);
        const block = (a, b) => `M${m - w} ${a}H${m + w}V${b}H${m - w}Z` + [-2, -1, 0, 1].map((i) => `M${m + i * w / 2} ${b}L${m + (i + 1) * w / 2} ${a}`).join('');
        return [[block(-13, -3) + block(3, 13), 1]];
    },
    conduit: (l) => [[level(l, -4) + level(l, 4), 1.2]],
    trunking: (l) => [[`M1 -6H${l - 1}V6H1Z`, 1.3], [level(l, -3.5), 0.8]],
    tray: (l) => [[along(l, 13, (x) => `M${x - 4.500} 3h9v4h-9z`), 1.1]],
    ladder: (l) => [[level(l, 3) + level(l, 10), 1.1], [along(l, 8, (x) => `M${x} 3V10`), 1]],
    catenary: (l) => [[`M2 -11Q${l / 2} -1 ${l - 2} -11`, 1.2], [along(l, 13, (x) => `M${x} 0V${-11 + 20 * (x / l) * (1 - x / l)}`), 0.8]],
    duct: (l) => [[level(l, -4) + level(l, 4), 1.8], [level(l, -10), 1.2, '6 4']],
    buried: (l) => [[level(l, -10), 1.2, '6 4'], [along(l, 8, (x, i) => `M${x} ${i % 2 ? 6 : 3.500}h2`), 1.6]]
};

function waySign(way, length) {
    const strokes = [[`M0 0H${length}`, 2.4], ...(waySigns[way] ?? (() => []))(length)];
    return strokes.map(([d, width, dashes]) => svg('path', {d, 'stroke-width': width, 'stroke-dasharray': dashes, fill: 'none', stroke: 'currentColor'}));
}
const wayTile = (way) => svg('svg', {viewBox: '-1 -15 58 30', class: 'sign', 'aria-hidden': 'true'}, waySign(way, 56));

const ICONS = {
    back: 'M15 4L7 12L15 20', undo: 'M4 9H15a5 5 0 0 1 0 10H8M8 5L4 9L8 13', recheck: 'M6 22V3L19 7L6 11', photo: 'M3 7H8L10 4H14L16 7H21V19H3ZM12 9.500a3.500 3.500 0 1 0 .01 0', more: 'M4 6H20M4 12H20M4 18H20',
    close: 'M5 5L19 19M19 5L5 19', yes: 'M4 13L10 19L20 5', open: 'M12 4a8 8 0 1 0 .01 0', need: 'M12 3V14M12 18V21', range: 'M3 12H21M8 7L3 12L8 17M16 7L21 12L16 17', up: 'M12 20V4M5 11L12 4L19 11', down: 'M12 4V20M5 13L12 20L19 13',
    grip: 'M5 8H19M5 12H19M5 16H19', supply: 'M13 2L6 13H12L10 22L18 10H12Z', load: 'M4 4H20V20H4ZM8 8H16M8 12H16M8 16H12', end: 'M2 12H8M8 5H22V19H8ZM12 9H18V15H12Z', job: 'M12 4a4 4 0 1 0 .01 0M4 21Q4 13 12 13Q20 13 20 21Z',
    send: 'M12 16V3M6 9L12 3L18 9M4 15V21H20V15'
};
const icon = (name, size = 24) => svg('svg', {viewBox: '0 0 24 24', width: size, height: size, class: 'icon', 'aria-hidden': 'true'},
    svg('path', {d: ICONS[name], fill: 'none', stroke: 'currentColor', 'stroke-width': 2.4}));
