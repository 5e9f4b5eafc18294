// node bytes.cjs WEND ENGINE.wasm ROOT [PART]: what the engine gives, held against what the program writes and prints. With
// PART only files that have it in their path.
'use strict';
const fs = require('fs'), path = require('path'), os = require('os');
const {spawnSync} = require('child_process');
const [, , wend, wasm, root, part = ''] = process.argv;
const DOCUMENTS = ['plan.xml', 'diagram.svg', 'parts.csv', 'brief.html', 'card.html', 'parts.html', 'design.html', 'test.html', 'pack.html'];
const work = fs.mkdtempSync(path.join(os.tmpdir(), 'phone-'));
const environment = {...process.env, HOME: work, XDG_CONFIG_HOME: work};
let wrong = 0, planned = 0, refused = 0, documents = 0, bytes = 0;

const differs = (what, ...more) => {
    wrong++;
    console.log('FAILED', what, ...more);
};
const same = (what, got, due) => {
    documents++;
    bytes += due.length;
    if (!Buffer.from(got ?? '').equals(Buffer.from(due))) {
        differs(what, got?.length, due.length);
    }
};
const files = function* (folder) {
    for (const entry of fs.readdirSync(folder, {withFileTypes: true}).sort((a, b) => (a.name < b.name ? -1 : 1))) {
        const at = path.join(folder, entry.name);
        if (entry.isDirectory()) {
            yield* files(at);
        } else if (entry.name.endsWith('.yaml')) {
            yield at;
        }
    }
};

const hold = (engine, file) => {
    const name = path.basename(file, '.yaml'), folder = path.dirname(file), out = path.join(work, 'out');
    const text = fs.readFileSync(file);
    const native = spawnSync(wend, ['plan', path.basename(file), '--full', '--out', out], {cwd: folder, env: environment, maxBuffer: 1 << 28});
    const options = {name, file: path.basename(file)};
    if (native.status === 2) { // faults of a price list are the price list's, and stand behind
        refused++;
        const printed = engine.printed(text, options), due = native.stderr.toString();
        if (printed === '' ? engine.plan(text, [], options).prices === '' : !due.startsWith(printed)) {
            differs(file, 'is refused in other words');
        }
        return;
    }
    if (native.status > 2) {
        differs(file, 'is not planned by the program', native.stderr.toString());
        return;
    }
    planned++;
    const first = engine.plan(text, [], options), list = path.join(folder, first.prices);
    if (first.prices !== '' && fs.existsSync(list)) {
        options.prices = fs.readFileSync(list);
    }
    const made = engine.plan(text, [...DOCUMENTS, 'summary.txt'], options);
    if (made.status !== native.status) {
        differs(file, 'has another status', made.status, native.status);
    }
    if (!native.stderr.toString().startsWith(engine.printed(text, options))) {
        differs(file, 'is warned of in other words');
    }
    const summary = Buffer.from(made.documents['summary.txt'] ?? '');
    same(`${file} summary`, summary, native.stdout.subarray(0, summary.length));
    if (summary.length < 500) {
        differs(file, 'has no summary');
    }
    for (const document of DOCUMENTS) {
        const ending = document === 'parts.csv' && native.status === 1 ? 'FAIL.parts.csv' : document;
        same(`${file} ${document}`, made.documents[document], fs.readFileSync(path.join(out, `${name}.${ending}`)));
    }
    fs.rmSync(out, {recursive: true});
};

(async () => {
    const engine = await require(path.join(root, 'src/phone/engine.js'))(fs.readFileSync(wasm));
    // the text is looked at as bytes: some of those made to do harm are no UTF-8
    const routes = [...files(path.join(root, 'routes')), ...files(path.join(root, 'tests'))]
        .filter(file => file.slice(root.length).includes(part))
        .filter(file => file.includes('/tests/bad/') || /^wend:/m.test(fs.readFileSync(file, 'latin1')));
    for (const file of routes) {
        try {
            hold(engine, file);
        } catch (fault) {
            differs(file, String(fault));
        }
    }
    fs.rmSync(work, {recursive: true});
    const manual = spawnSync(wend, ['check', 'routes/cider-barn.yaml', '--format', 'json'], {cwd: root, env: environment});
    const [told] = JSON.parse(manual.stdout.toString());
    const check = engine.check(fs.readFileSync(path.join(root, 'routes/cider-barn.yaml')), {name: 'cider-barn', file: 'routes/cider-barn.yaml'});
    if (JSON.stringify(told) !== JSON.stringify(check)) {
        differs('check as JSON');
    }
    console.log(`${planned} routes planned, ${refused} refused, ${documents} documents of ${bytes} bytes, ${wrong} differ`);
    process.exit(wrong === 0 && (part !== '' || (planned > 60 && refused > 150)) ? 0 : 1);
})();
