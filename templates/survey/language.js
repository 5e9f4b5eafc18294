/* What can be asked, from the description of the route language that the program put into the page: which card a key is on,
 * in which order the cards ask, with which way it goes, what is assumed without it. */
const language = JSON.parse(document.getElementById('language').textContent);
const tables = new Map(language.tables.flatMap((table) => table.title.split(', ').map((name) => [name, table])));
const CARDS = [...new Set(language.asked.map((one) => one.card))];
const SEGMENTS = 'segments[]', RUN = 'runs.NAME';
const LIST_SHAPES = ['list', 'by-name'];

const tableAt = (place) => tables.get(place) ?? tables.get(place.split('.').slice(-1)[0]);
const isNested = (row) => row.kind === 'keys' && !LIST_SHAPES.includes(row.shape) && row.shape !== 'count-or-list';

/* Place of a mapping in the file -> its card. A mapping that nobody asks about is on the card of the one that holds it. */
const cardOfPlace = (() => {
    const found = new Map(language.asked.map((one) => [one.in, one.card]));
    const extend = (place) => {
        for (const row of tableAt(place)?.fields ?? []) {
            const inner = `${place}.${row.key}`;
            if (isNested(row) && row['keys-of']) {
                found.set(inner, found.get(inner) ?? found.get(place));
            }
        }
    };
    for (const row of tables.get('the file').fields) {
        if (isNested(row) && !found.has(row.key)) {
            found.set(row.key, CARDS[CARDS.length - 1]);
        }
    }
    [...found.keys()].forEach(extend);
    return found;
})();

const FIELDS = (() => {
    const all = [];
    for (const [place, card] of cardOfPlace) {
        const table = tableAt(place);
        (table?.fields ?? []).forEach((row, order) => {
            const asked = language.asked.find((one) => one.in === place && one.key === row.key);
            if (isNested(row) || (row.key === table['goes-by'] && !asked) || (place === 'runs.NAME' && row.key === 'kind')) {
                return;
            }
            all.push({
                id: `${place}/${row.key}`, place, key: row.key, card, row, order, asked,
                rank: asked ? asked.rank : 1000 + all.length,
                label: asked?.label ?? spoken(row.key), question: asked?.question ?? row.help[0].toUpperCase() + row.help.slice(1)
            });
        });
    }
    return all.sort((a, b) => a.rank - b.rank);
})();

/* In which order the keys of a mapping are written. */
function keyOrder(place) {
    const rows = (place === '' ? tables.get('the file') : tableAt(place))?.fields ?? [];
    return [...new Set(rows.map((row) => row.key))];
}

/* A text is quoted where it could be taken for something else; a figure or a word is written as it is. */
function isTextPath(path) {
    const key = path[path.length - 1];
    const place = placeOfPath(path.slice(0, -1));
    const row = tableAt(place)?.fields.find((one) => one.key === key);
    return row ? row.kind === 'text' || row.kind === 'name' || row.kind === 'file' : true;
}

/* ['segments', 3, 'duct'] -> "segments[].duct"; ['runs', 'feeder', 'load', 0] -> "runs.NAME.load" */
function placeOfPath(path) {
    const words = path.filter((one) => typeof one === 'string');
    if (words[0] === 'segments') {
        return [SEGMENTS, ...words.slice(1)].join('.');
    }
    if (words[0] === 'runs') {
        return words.length === 1 ? 'runs' : [RUN, ...words.slice(2)].join('.');
    }
    return words.length === 0 ? 'the file' : words.join('.');
}

const goesWith = (row, context) => !row['goes-with'] || !context || row['goes-with'].includes(context);
/* The relation by which two keys stand for each other, as current and power do. */
const partnerOf = (field) => language.relations.find((one) => one.relation === 'one-of' && one.table === tableAt(field.place).title.split(', ').find((name) => name === field.place) && one.keys.includes(field.key));

/* "600 mm", "as in conditions"; null where nothing is taken. "timber for fence and beam" holds for those ways alone. */
function defaultOf(field, way) {
    const {row} = field;
    if (row.default === undefined || row['default-is-value']) {
        return row.default ?? null;
    }
    const isWay = (word) => tableAt(SEGMENTS).fields.find((one) => one.key === 'way').words.some((one) => one.word === word);
    const parts = row.default.split(/; |, (?=\S+ for )/).map((part) => /^(\S+) for (.*)$/.exec(part)).filter((part) => part && part[2].split(/[^\w-]+/).some(isWay));
    if (parts.length) {
        return parts.find((part) => part[2].split(/[^\w-]+/).includes(way))?.[1] ?? null;
    }
    return /^none\b|\brequired\b/.test(row.default) ? null : row.default;
}

/* Units that differ in worth, the one that such things are read in first. */
function unitsOf(row) {
    const seen = new Map();
    for (const one of row.units ?? []) {
        if (!seen.has(one.worth)) {
            seen.set(one.worth, one.unit);
        }
    }
    const units = [...seen.values()];
    return (units.includes('m') && units.includes('mm') ? units.filter((unit) => unit !== 'cm') : units).slice(0, 2);
}
const unitShown = (unit) => unit.replace(/ohm/, 'Ω').replace('mm2', 'mm²').replace('degC', '°C').replace('A2s', 'A²s').replace('K.m/W', 'K·m/W').replace('Ω.m', 'Ω·m').replace(/^deg$/, '°');
const valueShown = (text) => text.replace(/ (m?ohm(?:\.m)?|mm2|degC|K\.m\/W|A2s)$/, (all, unit) => ' ' + unitShown(unit)).replace(/(\d) (?=\D)(?!to |x )/g, '$1\u00a0');

/* One-tap figures of what comes in sizes: no default and no advice, keys on the pad only. Common practice, no source. */
const SIZES = {
    'segments[].duct/size': ['32 mm', '50 mm', '63 mm', '90 mm', '110 mm'], 'segments[]/depth': ['450 mm', '600 mm', '750 mm', '1 m'],
    'segments[]/thickness': ['110 mm', '230 mm', '300 mm', '350 mm', '500 mm'], 'segments[]/air': ['30 degC', '40 degC', '45 degC', '50 degC'],
    'runs.NAME.start/tail': ['0.3 m', '0.5 m', '0.8 m', '1 m'], 'runs.NAME.finish/tail': ['0.3 m', '0.5 m', '0.8 m', '1 m'],
    'runs.NAME.device/residual': ['30 mA', '100 mA', '300 mA'], 'earthing/board-residual': ['30 mA', '100 mA', '300 mA'],
    'runs.NAME.device/breaking-capacity': ['6 kA', '10 kA', '16 kA'], 'runs.NAME.load/power-factor': ['1', '0.95', '0.9', '0.8'],
    'earthing.electrode/length': ['1.2 m', '2.4 m', '3 m'], 'earthing.electrode/diameter': ['9 mm', '14 mm', '16 mm'],
    'through-wall/length': ['110 mm', '230 mm', '300 mm', '350 mm', '500 mm'], 'conduit/size': ['20 mm', '25 mm', '32 mm'], 'trunking/size': ['50 x 50 mm', '75 x 50 mm', '100 x 50 mm'], 'tray/size': ['75 mm', '100 mm', '150 mm', '225 mm'],
    'ladder/size': ['150 mm', '300 mm', '450 mm']
};
