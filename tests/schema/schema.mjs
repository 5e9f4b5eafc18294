// schema.mjs WEND FOLDER WORK: the JSON Schema that `wend schema` prints, by a validator of its own, over every route
// below FOLDER. It must take each one that the reader takes, and refuse at least four in five of those that it refuses; a
// file that is no YAML at all an editor refuses without a schema, and those are counted apart.
import {execFileSync, spawnSync} from 'node:child_process';
import {cpSync, existsSync, mkdirSync, readdirSync, readFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import path from 'node:path';
import {fileURLToPath} from 'node:url';

const [wend, folder, work] = process.argv.slice(2).map((one) => path.resolve(one));
const LEAST_SHARE = 0.8;
const LEAST_FILES = 250;
const here = path.dirname(fileURLToPath(import.meta.url));
mkdirSync(work, {recursive: true});
for (const name of ['package.json', 'package-lock.json']) {
    cpSync(path.join(here, name), path.join(work, name));
}
if (!existsSync(path.join(work, 'node_modules', 'ajv'))) {
    execFileSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund'], {cwd: work, stdio: 'inherit'});
}
const require = createRequire(path.join(work, 'package.json'));
const Ajv = require('ajv/dist/2020').default;
const {parseDocument} = require('yaml');
const ajv = new Ajv({strict: true, strictRequired: false, strictTypes: false, allErrors: false, allowUnionTypes: true});
ajv.addKeyword('enumDescriptions');
const takes = ajv.compile(JSON.parse(execFileSync(wend, ['schema'], {encoding: 'utf8'})));

const routes = (at) => readdirSync(at, {withFileTypes: true}).flatMap((one) =>
    one.isDirectory() ? (one.name === 'build' ? [] : routes(path.join(at, one.name))) : /\.ya?ml$/.test(one.name) ? [path.join(at, one.name)] : []);
const ORDER_FILE = /^wend-order:/m; // another language

function looked_at(bytes) {
    try {
        const text = new TextDecoder('utf-8', {fatal: true}).decode(bytes);
        // a bare CR is a line break of YAML that this parser does not know
        const document = parseDocument(text.replace(/\r(?!\n)/g, '\n'), {version: '1.2', uniqueKeys: true});
        if (document.errors.length > 0) {
            return {yaml: document.errors[0].message};
        }
        return takes(document.toJS()) ? {} : {schema: ajv.errorsText(takes.errors)};
    } catch (fault) {
        return {yaml: String(fault)};
    }
}

const wrong = [];
const missed = [];
let good = 0, bad = 0, noYaml = 0, caught = 0;
for (const file of routes(folder)) {
    const bytes = readFileSync(file);
    if (ORDER_FILE.test(bytes.toString('latin1'))) {
        continue;
    }
    const status = spawnSync(wend, ['check', file], {stdio: 'pipe'});
    const refused = status.status === 2 && /^error:|: error: /m.test(status.stderr.toString());
    const design = /no-capacity-figure|no-such-size|no-device/.test(status.stderr.toString()); // read, and not planned
    const found = looked_at(bytes);
    const name = path.relative(folder, file);
    if (!refused || design) {
        good++;
        if (found.yaml || found.schema) {
            wrong.push(`${name}: ${found.yaml ?? found.schema}`);
        }
        continue;
    }
    bad++;
    if (found.yaml) {
        noYaml++;
    } else if (found.schema) {
        caught++;
    } else {
        missed.push(name);
    }
}
for (const one of missed) {
    console.log(`not seen: ${one}`);
}
for (const one of wrong) {
    console.log(`REFUSED though it is good: ${one}`);
}
const share = caught / Math.max(1, bad - noYaml);
console.log(`${good} good files, ${wrong.length} of them refused; ${bad} wrong files, ${noYaml} of them no YAML; of the other ` +
            `${bad - noYaml} the schema refuses ${caught}, ${(100 * share).toFixed(1)} %, and misses ${missed.length}`);
if (wrong.length > 0 || share < LEAST_SHARE || good + bad < LEAST_FILES) {
    process.exit(1);
}
