// What the survey page writes, without a browser: every text that may be typed comes back from the program as it was, the
// archive is read by others, each one-tap figure lies inside its range, and each text of the page is there and used.
//
//   node texts.mjs WEND FOLDER [PAGE]
import {execFileSync, spawnSync} from 'node:child_process';
import {mkdirSync, readFileSync, readdirSync, writeFileSync} from 'node:fs';
import path from 'node:path';
import vm from 'node:vm';
import {fileURLToPath} from 'node:url';

const [wend, folder, pageGiven] = process.argv.slice(2);
const sources = path.join(path.dirname(fileURLToPath(import.meta.url)), '..', '..', 'templates');
mkdirSync(folder, {recursive: true});
let faults = 0, done = 0;
function expect(what, holds, told = '') {
    done++;
    if (!holds) {
        faults++;
        console.log(`${what}: ${typeof told === 'string' ? told : JSON.stringify(told)}`);
    }
}

const pageFile = pageGiven ?? path.join(folder, 'survey.html');
if (!pageGiven) {
    execFileSync(wend, ['form', '--out', pageFile]);
}
const html = readFileSync(pageFile, 'utf8');
const languageText = html.match(/<script type="application\/json" id="language">([^]*?)<\/script>/)[1];
const language = JSON.parse(languageText);
const names = readFileSync(path.join(sources, 'survey', 'files.txt'), 'utf8').trim().split('\n');
const scripts = Object.fromEntries(names.map((name) => [name, readFileSync(path.join(sources, 'survey', name), 'utf8')]));
const page = vm.runInContext(['words.js', 'dom.js', 'yaml.js', 'zip.js', 'language.js', 'survey.js', 'engine.js'].map((name) => scripts[name]).join('\n') +
    '\n({WORDS, yamlWrite, yamlScalar, zipParts, SIZES, FIELDS, CARDS, tableAt, goesWith, isTextPath, setAt, nodeAt, addSegment, changeWay, segments, routeText, state, fieldsOf, defaultOf, locate, pathOfWhere})',
vm.createContext({addEventListener() {}, document: {getElementById: () => ({textContent: languageText})}, TextEncoder, Math, Date, JSON, console}));

// ---- texts, as they might be typed ----
const AWKWARD = ['yes', 'No', 'null', '~', '1e3', '0x1F', '12:30', '1_000', '.5', '-', '- a', '-1', 'a: b', 'a:', ': a', '#', 'a #b', 'a#b', '"quoted"', "it's", "'", '"', '\\', 'C:\\new\\t', '{a}', '[a]', '{', '}', ',', '&a', '*a', '!a', '|', '>', '%', '@', '`', '?', '? a', '<<', '=', 'a, b', 'kWh/m²', 'Ω µ °C',
    'Zażółć gęślą jaźń', 'ß ſ ﬁ', '日本語', '🔌 socket', 'e\u0301', '2026-05-14', '+44 (0) 1632', '50 %', '%d', 'a  b', '---', '...', '--- a', 'true', 'on', 'y', 'NaN', '.inf', '007', '1,5', 'x'.repeat(300), 'a\tb'];
const route = (texts) => ({m: [['wend', '1'], ['job', {m: [['title', texts[0]], ['site', texts[1]], ['reference', texts[2]], ['customer', texts[3]], ['surveyor', texts[4]], ['notes', texts[5]]]}],
    ['supply', {m: [['system', 'TN-S'], ['loop-impedance', '0.35 ohm']]}], ['runs', {m: [['feeder', {m: [['load', {m: [['current', '26 A']]}], ['cable', {m: [['type', 'BS5467'], ['cores', '3']]}]]}]]}],
    ['segments', {l: [{m: [['name', 'gable'], ['way', 'wall'], ['length', '6.5 m'], ['rise', '-2.5 m'], ['notes', 'two\nlines']]}]}]]});
function planned(name, tree) {
    const {text, places} = page.yamlWrite(tree, page.isTextPath);
    expect(`${name}: a place for every line`, places.length === text.trimEnd().split('\n').length);
    const file = path.join(folder, `${name}.yaml`);
    writeFileSync(file, text);
    const made = spawnSync(wend, ['plan', '--format', 'json', file], {encoding: 'utf8', maxBuffer: 1 << 26});
    return made.status > 1 ? {refused: made.stderr, text} : JSON.parse(made.stdout);
}
const KEYS = ['title', 'site', 'reference', 'customer', 'surveyor', 'notes'];
for (let at = 0; at < AWKWARD.length; at += KEYS.length) {
    const texts = KEYS.map((_, i) => AWKWARD[(at + i) % AWKWARD.length]);
    const plan = planned(`texts-${at / KEYS.length}`, route(texts));
    KEYS.forEach((key, i) => expect(`the text ${JSON.stringify(texts[i])} comes back`, plan.job?.[key] === texts[i].replace(/\t/g, ' '), plan.refused ?? plan.job));
}
expect('a plain word is not quoted', page.yamlScalar('Boathouse supply', true) === 'Boathouse supply');
expect('a word that other readers take for a truth value is', page.yamlScalar('yes', true) === '"yes"' && page.yamlScalar('yes', false) === 'yes');
const nested = page.yamlWrite({m: [['a', {l: ['x', {m: [['b', '1'], ['c', {m: []}]]}, {l: ['y', {l: []}]}]}]]}, () => false).text;
expect('lists in lists, empty ones', nested === 'a:\n  - x\n  - b: 1\n    c: {}\n  -\n    - y\n    - []\n', nested);

// ---- the archive ----
const files = [{name: 'route.yaml', bytes: new TextEncoder().encode('wend: 1\n')}, {name: 'photos/Zażółć-1.jpg', bytes: Uint8Array.from({length: 70000}, (_, i) => i * 7 % 256)}, {name: 'empty', bytes: new Uint8Array(0)}];
const archive = path.join(folder, 'made.zip');
writeFileSync(archive, Buffer.concat(page.zipParts(files, new Date(2026, 4, 14, 10, 30)).map((part) => Buffer.from(part))));
const unzip = spawnSync('unzip', ['-t', archive], {encoding: 'utf8'});
const python = spawnSync('python3', ['-c', 'import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); print(z.testzip(), [(i.filename, i.file_size, i.date_time) for i in z.infolist()], z.read("route.yaml"))', archive], {encoding: 'utf8', env: {...process.env, PYTHONIOENCODING: 'utf-8'}});
if (unzip.error && (python.error || python.status !== 0)) {
    console.log('neither unzip nor python3 on this machine: the archive is not read');
    expect('nothing is skipped', !process.env.WEND_SKIP_NOTHING);
}
expect('unzip reads the archive', Boolean(unzip.error) || unzip.status === 0, unzip.stdout);
expect('Python reads the archive', Boolean(python.error) || python.status === 127 || python.stdout.trim() === `None [('route.yaml', 8, (2026, 5, 14, 10, 30, 0)), ('photos/Zażółć-1.jpg', 70000, (2026, 5, 14, 10, 30, 0)), ('empty', 0, (2026, 5, 14, 10, 30, 0))] b'wend: 1\\n'`, python.stdout + python.stderr);

// ---- what can be asked ----
for (const asked of language.asked) {
    const found = page.FIELDS.filter((field) => field.place === asked.in && field.key === asked.key);
    expect(`${asked.in} ${asked.key} is on one card`, found.length > 0 && new Set(found.map((field) => field.card)).size === 1 && found[0].card === asked.card);
}
for (const table of language.tables) {
    for (const row of table.fields) {
        const nested = row.kind === 'keys';
        // readings are taken once it is built, and written into the file that was planned from
        const skipped = ['wend', 'complete'].includes(row.key) || table.title.startsWith('readings.NAME') || table.title.endsWith('[]') && table.title !== 'segments[]' || (table.title === 'runs.NAME' && row.key === 'kind') || table.title === 'the file';
        expect(`${table.title} ${row.key} can be reached`, nested || skipped || page.FIELDS.some((field) => field.row === row || field.key === row.key && table.title.split(', ').includes(field.place)));
    }
}
for (const [id, values] of Object.entries(page.SIZES)) {
    const [place, key] = id.split('/');
    const field = page.FIELDS.find((one) => one.id === id) ?? page.FIELDS.find((one) => one.place === 'segments[]' && one.key === key && page.goesWith(one.row, place));
    expect(`${id} is a field`, field !== undefined);
    for (const value of field ? values : []) {
        const unit = value.replace(/^[\d.x ]+/, ''), worth = unit === '' ? 1 : field.row.units?.find((one) => one.unit === unit)?.worth;
        for (const figure of value.replace(unit, '').split('x')) {
            expect(`${id}: ${value} is inside the range`, worth !== undefined && Number(figure) * worth >= field.row.least - 1e-9 && Number(figure) * worth <= field.row.most + 1e-9);
        }
    }
}
const fence = page.FIELDS.find((field) => field.id === 'segments[]/fixed-to');
expect('a default holds for the ways that it names', page.defaultOf(fence, 'fence') === 'timber' && page.defaultOf(fence, 'wall') === null);

// ---- the tree ----
page.setAt(['segments'], {l: []});
const first = page.addSegment('duct', 0);
page.setAt(['segments', 0, 'duct', 'size'], '63 mm');
page.setAt(['segments', 0, 'notes'], 'wet');
page.setAt(['segments', 0, 'length'], '12 m');
expect('keys are written in the order of the language', first.m.map(([key]) => key).join(' ') === 'name way length notes duct', first.m.map(([key]) => key).join(' '));
page.changeWay(first, 'wall');
expect('what does not go with another way goes', page.nodeAt(['segments', 0, 'duct']) === undefined && page.nodeAt(['segments', 0, 'length']) === '12 m' && page.nodeAt(['segments', 0, 'name']) === 'wall-2');
page.setAt(['supply', 'phases'], '3');
page.setAt(['supply', 'phases'], undefined);
expect('no empty mapping stays behind', page.nodeAt(['supply']) === undefined);
expect('an assumption finds its field', page.locate(page.pathOfWhere('segments.wall-2.sun'), null).field?.id === 'segments[]/sun' && page.locate(page.pathOfWhere('runs.feeder.start, finish'), null).field === null);
expect('before the far end the file says that it is not complete', page.routeText(false).text.startsWith('wend: 1\ncomplete: no\n'));

// ---- the page's own texts, and what no script of it may do ----
const all = Object.values(scripts).join('\n');
const used = new Set([...all.matchAll(/say\('([\w-]+)'/g)].map((one) => one[1]));
const there = Object.keys(page.WORDS.en);
for (const key of used) {
    expect(`the text ${key} is there`, there.includes(key));
}
for (const key of there) {
    expect(`the text ${key} is used`, used.has(key) || new RegExp(`['"\`(]${key}['"\`]`).test(all.replace(scripts['words.js'], '')) || /^(card|short)-/.test(key) || ['up-part', 'down-part', 'day', 'sun', 'night'].includes(key));
}
for (const card of page.CARDS) {
    expect(`the card ${card} has its texts`, card === 'segment' || [`card-${card}`, `short-${card}`].every((key) => there.includes(key)));
}
for (const banned of ['innerHTML', 'outerHTML', 'insertAdjacentHTML', 'document.write', 'eval(', 'new Function', 'fetch(', 'XMLHttpRequest', 'WebSocket', 'sendBeacon', 'http:', 'https:']) {
    expect(`no script says ${banned}`, !all.replaceAll('http://www.w3.org/2000/svg', '').includes(banned));
}
expect('the page fetches nothing', /default-src 'none'/.test(html) && !/<(link|iframe|img|script src)/.test(html));
expect('every script is in the list', readdirSync(path.join(sources, 'survey')).filter((name) => name.endsWith('.js')).every((name) => names.includes(name)));
console.log(`${done} things looked at, ${faults} faulty`);
process.exit(faults === 0 && done > 200 ? 0 : 1);
