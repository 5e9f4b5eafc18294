// Renders every HTML paper in a browser: on a phone, on a desk and on A4 paper. Nothing may overflow, be complained of or
// be fetched; axe-core must find nothing; the Nu checker must accept every page. Routes are planned by the program itself
// and the fixtures, hostile ones among them, by documents_samples.
//
//   node papers.mjs WEND ROUTES DOCUMENTS_SAMPLES FOLDER
//
// Ends with 77 (skipped) only when there is no browser to render with.
import {execFileSync, spawnSync} from 'node:child_process';
import {cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import path from 'node:path';
import {fileURLToPath, pathToFileURL} from 'node:url';

const SKIPPED = 77;
const here = path.dirname(fileURLToPath(import.meta.url));
const [wend, routes, samples, folderGiven] = process.argv.slice(2);
if (!folderGiven) {
    console.error('usage: node papers.mjs WEND ROUTES DOCUMENTS_SAMPLES FOLDER');
    process.exit(2);
}
const folder = path.resolve(folderGiven);

function onPath(name) {
    const found = spawnSync('sh', ['-c', `command -v ${name}`], {encoding: 'utf8'});
    return found.status === 0 ? found.stdout.trim() : null;
}

// The packages go beside the documents, not into the sources.
function packages() {
    const place = path.join(folder, 'packages');
    mkdirSync(place, {recursive: true});
    for (const file of ['package.json', 'package-lock.json']) {
        cpSync(path.join(here, file), path.join(place, file));
    }
    if (!existsSync(path.join(place, 'node_modules', 'axe-core', 'axe.min.js'))) {
        execFileSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund'], {cwd: place, stdio: 'inherit'});
    }
    return place;
}

// Runs in the page: what is wider than the window, but for what may be moved sideways on purpose.
function overflowing() {
    const wide = document.documentElement.clientWidth;
    const found = [];
    if (document.documentElement.scrollWidth > wide) {
        found.push(`the page is ${document.documentElement.scrollWidth} wide in ${wide}`);
    }
    for (const element of document.querySelectorAll('body *')) {
        if (element.closest('svg') && element.tagName !== 'svg') {
            continue;
        }
        const box = element.getBoundingClientRect();
        const scroller = element.closest('.scroll, .diagram');
        const moved = scroller && scroller !== element && getComputedStyle(scroller).overflowX === 'auto';
        if (!moved && box.width > 0 && (box.right > wide + 0.5 || box.left < -0.5)) {
            found.push(`<${element.tagName.toLowerCase()} class="${element.getAttribute('class') ?? ''}"> ${element.textContent.slice(0, 40)}`);
        }
    }
    return found.slice(0, 5);
}

// Text that is cut or lies over its neighbour: a block's own content must fit into it.
function clipped() {
    return [...document.querySelectorAll('main *, header *')].filter((element) =>
        !element.closest('svg') && !element.matches('.scroll, .diagram') && element.scrollWidth > element.clientWidth + 1 &&
        getComputedStyle(element).display !== 'inline' && element.clientWidth > 0)
        .map((element) => `cut: <${element.tagName.toLowerCase()}> ${element.textContent.slice(0, 40)}`).slice(0, 5);
}

// Type that a hand's length does not read, in a drawing at the size that it is shown at.
function small() {
    const found = [];
    for (const element of document.querySelectorAll('svg text, p, li, th, td, dt, dd, span')) {
        if (element.getBoundingClientRect().width === 0 || element.textContent.trim() === '') {
            continue;
        }
        const svg = element.closest('svg');
        const shown = svg === null ? 1 : svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
        const size = parseFloat(getComputedStyle(element).fontSize) * shown;
        if (size < 11.9) {
            found.push(`${size.toFixed(1)} px: ${element.textContent.trim().slice(0, 40)}`);
        }
    }
    return found.slice(0, 5);
}

// Words of letters that go on on a further line, since their column is narrower than they are. What a hostile survey
// writes without a blank is its own fault.
function torn() {
    const found = [], range = document.createRange();
    for (const element of document.querySelectorAll('th, td, dt, dd, h1, h2, h3, p, strong, span')) {
        for (const node of element.closest('svg') ? [] : element.childNodes) {
            for (const word of node.nodeType === Node.TEXT_NODE ? node.data.matchAll(/[A-Za-z]{2,16}/g) : []) {
                range.setStart(node, word.index);
                range.setEnd(node, word.index + word[0].length);
                const boxes = [...range.getClientRects()].filter((box) => box.width > 0);
                if (boxes.length > 1 && boxes[1].top - boxes[0].top > 4) {
                    found.push(`torn: ${word[0]}`);
                }
            }
        }
    }
    return found.slice(0, 5);
}

const WIDTHS = [['360 px', 360, 740], ['768 px', 768, 1000], ['1280 px', 1280, 900]];

async function look(page, file, axe, complaints) {
    const faults = [];
    const note = (where, list) => faults.push(...list.map((fault) => `${where}: ${fault}`));
    complaints.length = 0;
    await page.emulateMedia({media: 'screen', colorScheme: 'light'});
    await page.goto(pathToFileURL(file).href);
    for (const [name, width, height] of WIDTHS) {
        await page.setViewportSize({width, height});
        note(name, await page.evaluate(overflowing));
        note(name, await page.evaluate(clipped));
        note(name, width === 360 ? await page.evaluate(small) : []);
        note(name, /hostile|lot-|eight|hill/.test(file) ? [] : await page.evaluate(torn));
        if (process.env.WEND_PICTURES) {
            await page.screenshot({path: file.replace(/\.html$/, `.${width}.png`), fullPage: true});
        }
    }
    for (const colorScheme of ['light', 'dark']) {
        await page.emulateMedia({media: 'screen', colorScheme});
        await page.evaluate(axe);
        const found = await page.evaluate(() => window.axe.run(document, {resultTypes: ['violations']}));
        note(`axe, ${colorScheme}`, found.violations.map((one) => `${one.id}: ${one.help}: ${one.nodes[0].html.slice(0, 120)}`));
    }
    // as wide as what A4 portrait leaves between the margins; wide sheets have a page of their own
    await page.emulateMedia({media: 'print', colorScheme: 'light'});
    await page.setViewportSize({width: 703, height: 1026});
    const printed = await page.evaluate(overflowing);
    note('A4', printed.filter((fault) => !/class="diagram/.test(fault) && !/<svg/.test(fault) && !/^the page/.test(fault)));
    const pdf = await page.pdf({path: file.replace(/\.html$/, '.pdf'), preferCSSPageSize: true});
    if (pdf.length < 5000) {
        faults.push('an empty print');
    }
    const inert = await page.evaluate(() => document.querySelectorAll('script, iframe, object, embed, link, base, form').length);
    if (inert !== 0) {
        faults.push(`${inert} elements that run or fetch`);
    }
    note('the browser says', complaints);
    return faults;
}

// The looking must be able to fail.
async function checkTheCheck(page) {
    await page.setViewportSize({width: 360, height: 740});
    await page.setContent('<!DOCTYPE html><title>x</title><body><main><div class="a" style="width:500px">wide</div></main>');
    const found = await page.evaluate(overflowing);
    await page.setContent('<!DOCTYPE html><title>x</title><body><main><p style="width:3em;overflow-wrap:anywhere">distribution</p>' +
        '<svg viewBox="0 0 720 20" width="360"><text y="10" font-size="13">small</text></svg></main>');
    found.push(...await page.evaluate(torn), ...await page.evaluate(small));
    if (found.length < 4) {
        throw new Error(`the check does not see what is wrong: ${JSON.stringify(found)}`);
    }
}

function nuChecker(place, files) {
    const jar = path.join(place, 'node_modules', 'vnu-jar', 'build', 'dist', 'vnu.jar');
    if (!onPath('java') || !existsSync(jar)) {
        return null;
    }
    const run = (list) => spawnSync('java', ['-jar', jar, '--format', 'json', '--stdout', ...list], {encoding: 'utf8', maxBuffer: 1 << 28});
    const result = run(files);
    // what a name is written in is its owner's business
    const theirs = /Unicode Normalization Form C|appears to be written in/;
    return JSON.parse(result.stdout).messages.filter((one) => !theirs.test(one.message)).map((one) =>
        `${path.basename(one.url ?? '')}:${one.lastLine}: ${one.subType ?? one.type}: ${one.message}: ${(one.extract ?? '').slice(0, 100)}`);
}

function makeAll() {
    mkdirSync(folder, {recursive: true});
    for (const name of readdirSync(routes).filter((file) => file.endsWith('.yaml'))) {
        const made = spawnSync(wend, ['plan', path.join(routes, name), '--out', folder], {encoding: 'utf8'});
        if (made.status > 1) {
            throw new Error(`${name}: ${made.stderr}`);
        }
    }
    // one job with labour figures that have rates, so that there is a quotation and a day in lanes
    const labour = readFileSync(path.join(routes, 'labour', 'labour.yaml'), 'utf8').replace('# rates:', 'rates:');
    writeFileSync(path.join(folder, 'labour.yaml'), labour);
    const priced = path.join(folder, 'priced.yaml');
    writeFileSync(priced, `${readFileSync(path.join(routes, 'pottery.yaml'), 'utf8')}\nparts: {labour: labour.yaml}\n`);
    if (spawnSync(wend, ['plan', priced, '--out', folder]).status !== 0) {
        throw new Error('the route with labour figures does not plan');
    }
    execFileSync(path.resolve(samples), [folder], {stdio: 'inherit'});
    // the pack holds every paper, so alone they are looked at for one route and for the hostile texts
    const wanted = (name) => name.endsWith('.pack.html') && !/^(eight|hill|lot-(3|6|10|17))\./.test(name) ||
        /^(cider-barn|hostile)\..*\.html$|^priced\.(brief|quotation)\.html$/.test(name);
    return readdirSync(folder).filter(wanted).map((name) => path.join(folder, name));
}

const chromium = process.env.CHROMIUM || onPath('chromium') || onPath('chromium-browser');
if (!chromium) {
    console.log('skipped: there is no chromium on this machine');
    process.exit(SKIPPED);
}
const files = makeAll();
const place = packages();
const require = createRequire(path.join(place, 'package.json'));
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const browser = await require('playwright-core').chromium.launch({
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
let wrong = 0;
for (const file of files) {
    const faults = await look(page, file, axe, complaints);
    wrong += faults.length > 0;
    console.log(`${faults.length === 0 ? 'clear ' : 'FAULTY'} ${path.basename(file)}`);
    for (const fault of faults.slice(0, 10)) {
        console.log(`    ${fault}`);
    }
}
await browser.close();
const messages = nuChecker(place, files);
for (const message of (messages ?? []).slice(0, 20)) {
    console.log(`    Nu checker: ${message}`);
}
console.log(`${files.length} papers looked at three ways, ${wrong} faulty; ` +
    (messages === null ? 'no Nu checker here' : `the Nu checker says ${messages.length} things`));
if (files.length < 20) {
    console.log('too few papers were there');
}
const unasked = messages === null && process.env.WEND_SKIP_NOTHING;
process.exit(!unasked && wrong === 0 && files.length >= 20 && (messages ?? []).length === 0 ? 0 : 1);
