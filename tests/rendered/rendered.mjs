// Renders the run diagram of every fixture in a browser: at its own size, with the widest common typeface, and 360 pixels
// wide. No text may lie over another, leave the sheet or have gone missing; nothing may be fetched or complained of. Then
// every diagram is held against the document type of SVG 1.1 and the Nu checker, and its first sheet is compared with what
// rsvg-convert draws of it. A hundred more, drawn by lot from 1 to 200 stretches, are measured in the widest typeface.
//
//   node rendered.mjs DOCUMENTS_SAMPLES DIAGRAM_SAMPLES FOLDER [MORE.svg ...]
//
// Ends with 77 (skipped) only when there is no browser to render with.
import {execFileSync, spawnSync} from 'node:child_process';
import {cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import path from 'node:path';
import {fileURLToPath, pathToFileURL} from 'node:url';

const SKIPPED = 77;
const here = path.dirname(fileURLToPath(import.meta.url));
const [samples, lots, folderGiven, ...more] = process.argv.slice(2);
if (!samples || !lots || !folderGiven) {
    console.error('usage: node rendered.mjs DOCUMENTS_SAMPLES DIAGRAM_SAMPLES FOLDER [MORE.svg ...]');
    process.exit(2);
}
const folder = path.resolve(folderGiven);

function onPath(names) {
    for (const name of names) {
        const found = spawnSync('sh', ['-c', `command -v ${name}`], {encoding: 'utf8'});
        if (found.status === 0) {
            return found.stdout.trim();
        }
    }
    return null;
}

// The package goes beside the documents, not into the sources.
function browserDriver() {
    const packages = path.join(folder, 'packages');
    mkdirSync(packages, {recursive: true});
    for (const file of ['package.json', 'package-lock.json']) {
        cpSync(path.join(here, file), path.join(packages, file));
    }
    if (!existsSync(path.join(packages, 'node_modules', 'playwright-core', 'package.json'))) {
        execFileSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund'], {cwd: packages, stdio: 'inherit'});
    }
    return createRequire(path.join(packages, 'package.json'))('playwright-core');
}

// Runs in the page: every text with its box in millimetres and on the screen.
function measure() {
    const svg = document.querySelector('svg');
    const view = svg.viewBox.baseVal;
    return {
        view: {width: view.width, height: view.height},
        texts: [...svg.querySelectorAll('text')].map((text) => {
            const box = text.getBBox();
            const screen = text.getBoundingClientRect();
            return {
                words: text.textContent,
                left: box.x, top: box.y, right: box.x + box.width, bottom: box.y + box.height,
                screen: {left: screen.left, top: screen.top, right: screen.right, bottom: screen.bottom},
            };
        }),
        scripts: document.querySelectorAll('script').length,
    };
}

const SHEET_WIDTH = 297, SHEET_HEIGHT = 210, MARGIN = 4; // what printers reach; the frame stands at 5
const SLACK = 0.05; // mm

function over(a, b, slack) {
    return a.left + slack < b.right && b.left + slack < a.right && a.top + slack < b.bottom && b.top + slack < a.bottom;
}

function findFaults(found, screenSlack) {
    const faults = [];
    const {view, texts} = found;
    if (view.width !== SHEET_WIDTH || view.height % SHEET_HEIGHT !== 0 || view.height === 0) {
        faults.push(`view box ${view.width} x ${view.height}`);
    }
    if (texts.length < 10) {
        faults.push(`only ${texts.length} texts`);
    }
    if (found.scripts !== 0) {
        faults.push('a script element');
    }
    for (const text of texts) {
        const sheet = Math.floor((text.top + text.bottom) / 2 / SHEET_HEIGHT) * SHEET_HEIGHT;
        if (!(text.right - text.left > 0 && text.bottom - text.top > 0)) {
            faults.push(`"${text.words}" has no size`);
        }
        if (text.left < MARGIN || text.right > SHEET_WIDTH - MARGIN || text.top < sheet + MARGIN ||
            text.bottom > sheet + SHEET_HEIGHT - MARGIN) {
            faults.push(`"${text.words}" leaves its sheet`);
        }
    }
    // neighbours in reading order only: sorted by top, until the next begins below
    const sorted = [...texts].sort((a, b) => a.top - b.top);
    for (let i = 0; i < sorted.length; i++) {
        for (let k = i + 1; k < sorted.length && sorted[k].top < sorted[i].bottom; k++) {
            if (over(sorted[i], sorted[k], SLACK)) {
                faults.push(`"${sorted[i].words}" lies over "${sorted[k].words}"`);
            }
            if (over(sorted[i].screen, sorted[k].screen, screenSlack)) {
                faults.push(`on the screen "${sorted[i].words}" lies over "${sorted[k].words}"`);
            }
        }
    }
    return faults;
}

// The measuring must be able to fail: two texts put over each other and one beyond the edge are found.
async function checkTheCheck(page) {
    await page.setContent(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 297 210" width="297mm"><g font-size="3">
        ${Array.from({length: 10}, (_, i) => `<text x="20" y="${40 + 8 * i}">${i}</text>`).join('')}
        <text x="100" y="50">one</text><text x="102" y="51">two</text><text x="285" y="100">far beyond</text></g></svg>`);
    const faults = findFaults(await page.evaluate(measure), 0.5);
    const expected = ['"far beyond" leaves its sheet', '"one" lies over "two"', 'on the screen "one" lies over "two"'];
    if (JSON.stringify(faults) !== JSON.stringify(expected)) {
        throw new Error(`the check does not see what is wrong: ${JSON.stringify(faults)}`);
    }
}

async function render(page, file, complaints) {
    const faults = [];
    const note = (where, list) => faults.push(...list.map((fault) => `${where}: ${fault}`));
    complaints.length = 0;
    await page.setViewportSize({width: 1123, height: 794});
    await page.goto(pathToFileURL(file).href);
    note('as it is', findFaults(await page.evaluate(measure), 0.5));
    await page.screenshot({path: file.replace(/\.svg$/, '.png'), clip: {x: 0, y: 0, width: 1123, height: 794}});
    await page.evaluate(() => document.querySelector('svg > g').setAttribute('font-family', 'DejaVu Sans, Verdana, sans-serif'));
    note('in the widest typeface', findFaults(await page.evaluate(measure), 0.5));
    const source = readFileSync(file, 'utf8').replace(/^<\?xml[^>]*>/, '');
    await page.setViewportSize({width: 360, height: 640});
    await page.goto('about:blank');
    await page.setContent(`<!DOCTYPE html><meta charset="utf-8"><style>body{margin:0}svg{width:100%;height:auto;display:block}</style>${source}`);
    note('360 pixels wide', findFaults(await page.evaluate(measure), 0.2));
    note('the browser says', complaints);
    return faults;
}

// role and aria-labelledby are not in the document type of 2003; everything else must be.
function checkDocumentType(file) {
    const dtd = '/usr/share/xml/w3c-sgml-lib/schema/dtd/REC-SVG11-20110816/svg11.dtd';
    if (!onPath(['xmllint']) || !existsSync(dtd)) {
        return null;
    }
    const plain = file.replace(/\.svg$/, '.dtd.svg');
    const source = readFileSync(file, 'utf8');
    const stripped = source.replace(/ role="img" aria-labelledby="[^"]*"/, '');
    if (stripped === source) {
        return ['no role to strip'];
    }
    writeFileSync(plain, stripped.replace(/^(<\?xml[^>]*>)/,
        '$1\n<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">'));
    const result = spawnSync('xmllint', ['--nonet', '--noout', '--dtdvalid', dtd, plain], {encoding: 'utf8'});
    return result.status === 0 ? [] : [`document type: ${result.stderr.split('\n')[0]}`];
}

// ---- by lot: many routes, each measured once, where text is widest ----

const LOTS = 100;

async function renderLot(page, file, complaints) {
    complaints.length = 0;
    const source = readFileSync(file, 'utf8').replace(/^<\?xml[^>]*>/, '')
        .replace(/font-family="[^"]*"/, 'font-family="DejaVu Sans, Verdana, sans-serif"');
    await page.setContent(`<!DOCTYPE html><meta charset="utf-8"><style>body{margin:0}svg{display:block}</style>${source}`);
    return findFaults(await page.evaluate(measure), 0.5).concat(complaints);
}

// ---- the same picture by another program ----

// Runs in a page: mean darkness of squares of 8 dots, as the share of squares that differ by more than a fifth.
async function differing([one, other]) {
    const squares = async (data) => {
        const image = new Image();
        image.src = `data:image/png;base64,${data}`;
        await image.decode();
        const canvas = document.createElement('canvas');
        canvas.width = 1120;
        canvas.height = 792;
        const context = canvas.getContext('2d');
        context.fillStyle = 'white';
        context.fillRect(0, 0, canvas.width, canvas.height);
        context.drawImage(image, 0, 0);
        const dots = context.getImageData(0, 0, canvas.width, canvas.height).data;
        const sums = new Float64Array((canvas.width / 8) * (canvas.height / 8));
        for (let y = 0; y < canvas.height; y++) {
            for (let x = 0; x < canvas.width; x++) {
                const at = 4 * (y * canvas.width + x);
                sums[Math.floor(y / 8) * (canvas.width / 8) + Math.floor(x / 8)] +=
                    (765 - dots[at] - dots[at + 1] - dots[at + 2]) / 765 / 64;
            }
        }
        return sums;
    };
    const a = await squares(one), b = await squares(other);
    let apart = 0, inked = 0;
    for (let i = 0; i < a.length; i++) {
        apart += Math.abs(a[i] - b[i]) > 0.2;
        inked += a[i] > 0.02;
    }
    return {apart: apart / inked, inked};
}

const SAME_MOST = 0.01; // of the squares with ink; letters that neither program has a typeface for differ most

// The first sheet alone: it is what the screenshot shows, and many sheets are more dots than one picture may have.
function rsvgPicture(file) {
    const sheet = readFileSync(file, 'utf8').replace(/height="\d+mm" viewBox="0 0 297 \d+"/,
        'height="210mm" viewBox="0 0 297 210"');
    const result = spawnSync('rsvg-convert', ['--dpi-x', '96', '--dpi-y', '96'], {input: sheet, maxBuffer: 1 << 28});
    return result.status === 0 ? result.stdout.toString('base64') : null;
}

async function comparePictures(bench, file) {
    if (!onPath(['rsvg-convert'])) {
        return null;
    }
    const picture = rsvgPicture(file);
    if (picture === null) {
        return ['rsvg-convert does not draw it'];
    }
    const ours = readFileSync(file.replace(/\.svg$/, '.png')).toString('base64');
    const {apart, inked} = await bench.evaluate(differing, [ours, picture]);
    return inked > 500 && apart <= SAME_MOST ? [] : [`rsvg-convert draws ${(100 * apart).toFixed(1)} % of it otherwise`];
}

// The comparing must be able to fail: two different diagrams are not the same picture.
async function checkTheComparing(bench, [one, other]) {
    if (onPath(['rsvg-convert'])) {
        const ours = readFileSync(one.replace(/\.svg$/, '.png')).toString('base64');
        const {apart} = await bench.evaluate(differing, [ours, rsvgPicture(other)]);
        if (apart <= SAME_MOST * 10) {
            throw new Error(`the comparing sees no difference between ${one} and ${other}: ${apart}`);
        }
    }
}

// ---- the Nu checker ----

function nuChecker(files) {
    const jar = path.join(folder, 'packages', 'node_modules', 'vnu-jar', 'build', 'dist', 'vnu.jar');
    if (!onPath(['java']) || !existsSync(jar)) {
        return null;
    }
    const check = (list) => spawnSync('java', ['-Xss8m', '-jar', jar, '--svg', '--format', 'gnu', ...list],
        {encoding: 'utf8', maxBuffer: 1 << 28});
    const wrong = path.join(folder, 'wrong.svg.txt');
    writeFileSync(wrong, '<svg xmlns="http://www.w3.org/2000/svg"><rect width="wide" colour="red"/></svg>');
    if (check([wrong]).status === 0) {
        throw new Error('the Nu checker finds nothing wrong with what is');
    }
    const result = check(files);
    // What a surveyor wrote is shown as written: the hostile texts are not in normal form C, and that is their point.
    const meant = /hostile\.svg".*Unicode Normalization Form C/;
    return result.stderr.split('\n').filter((line) => line !== '' && !meant.test(line));
}

const chromium = process.env.CHROMIUM || onPath(['chromium', 'chromium-browser']);
if (!chromium) {
    console.log('skipped: there is no chromium on this machine');
    process.exit(SKIPPED);
}
mkdirSync(folder, {recursive: true});
execFileSync(path.resolve(samples), [folder], {stdio: 'inherit'});
const lotFolder = path.join(folder, 'by-lot');
mkdirSync(lotFolder, {recursive: true});
execFileSync(path.resolve(lots), [lotFolder, String(LOTS)], {stdio: 'inherit'});
const {chromium: driver} = browserDriver();
const browser = await driver.launch({
    executablePath: chromium,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
        '--disable-component-update', '--disable-sync'],
});
const complaints = [];
const page = await browser.newPage();
page.on('console', (message) => complaints.push(message.text()));
page.on('pageerror', (error) => complaints.push(String(error)));
page.on('request', (request) => {
    if (!/^(file|about):/.test(request.url()) || !request.isNavigationRequest()) {
        complaints.push(`asks for ${request.url()}`);
    }
});
await checkTheCheck(page);
const bench = await browser.newPage();
const files = readdirSync(folder).filter((name) => name.endsWith('.svg') && !name.endsWith('.dtd.svg'))
    .map((name) => path.join(folder, name)).concat(more.map((name) => path.resolve(name)));
let wrong = 0, typed = 0;
for (const file of files) {
    const faults = await render(page, file, complaints);
    const types = checkDocumentType(file);
    typed += types !== null;
    faults.push(...(types ?? []));
    faults.push(...(await comparePictures(bench, file) ?? []));
    wrong += faults.length > 0;
    console.log(`${faults.length === 0 ? 'clear ' : 'FAULTY'} ${path.basename(file)}`);
    for (const fault of faults.slice(0, 10)) {
        console.log(`    ${fault}`);
    }
}
await checkTheComparing(bench, files);
const lotFiles = readdirSync(lotFolder).filter((name) => name.endsWith('.svg')).map((name) => path.join(lotFolder, name));
let wrongLots = 0;
await page.goto('about:blank');
for (const file of lotFiles) {
    const faults = await renderLot(page, file, complaints);
    wrongLots += faults.length > 0;
    for (const fault of faults.slice(0, 5)) {
        console.log(`FAULTY ${path.basename(file)}: ${fault}`);
    }
}
await browser.close();
const nu = nuChecker(files.concat(lotFiles));
for (const line of (nu ?? []).slice(0, 10)) {
    console.log(`FAULTY ${line}`);
}
console.log(nu === null ? 'the Nu checker was not asked: no java or no vnu.jar' : `the Nu checker: ${nu.length} complaints`);
console.log(`${lotFiles.length} diagrams drawn by lot, ${wrongLots} faulty`);
console.log(`${files.length} diagrams rendered three times each, ${wrong} faulty; ${typed} held against the document type`);
if (files.length < 10) {
    console.log('too few diagrams were there');
}
const unasked = (nu === null || typed < files.length || !onPath(['rsvg-convert'])) && process.env.WEND_SKIP_NOTHING;
process.exit(!unasked && wrong === 0 && files.length >= 10 && wrongLots === 0 && lotFiles.length === LOTS && (nu ?? []).length === 0 ? 0 : 1);
