// Templates made to do harm, carried out by the program and opened in a browser: nothing of theirs may run, nothing may be
// fetched, and the page may not lead away. A server on this machine counts what is asked of it, connections too.
//
//   node templates.mjs WEND ROUTE FOLDER
//
// Ends with 77 (skipped) only when there is no browser.
import {execFileSync, spawnSync} from 'node:child_process';
import {cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import http from 'node:http';
import {createRequire} from 'node:module';
import path from 'node:path';
import {fileURLToPath, pathToFileURL} from 'node:url';

const SKIPPED = 77;
const SETTLED_MS = 400; // what a page does by itself it does at once
const here = path.dirname(fileURLToPath(import.meta.url));
const [wend, route, folderGiven] = process.argv.slice(2);
if (!folderGiven) {
    console.error('usage: node templates.mjs WEND ROUTE FOLDER');
    process.exit(2);
}
const folder = path.resolve(folderGiven);

function browserDriver() {
    const place = path.join(folder, 'packages');
    mkdirSync(place, {recursive: true});
    for (const file of ['package.json', 'package-lock.json']) {
        cpSync(path.join(here, file), path.join(place, file));
    }
    if (!existsSync(path.join(place, 'node_modules', 'playwright-core', 'package.json'))) {
        execFileSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund'], {cwd: place, stdio: 'inherit'});
    }
    return createRequire(path.join(place, 'package.json'))('playwright-core').chromium;
}

const found = spawnSync('sh', ['-c', 'command -v "${CHROMIUM:-chromium}" || command -v chromium-browser'], {encoding: 'utf8'});
if (found.status !== 0) {
    console.log('skipped: there is no chromium on this machine');
    process.exit(SKIPPED);
}

// THERE is a server that nobody may ask, one for each page: what is asked of it, and how often it was connected to, which
// tells as much.
const THERE = 'http://there.invalid';
async function listening() {
    const seen = {asked: new Set(), connections: 0};
    const server = http.createServer((request, response) => {
        seen.asked.add(request.url);
        response.writeHead(200, {'Content-Type': 'text/html'});
        response.end('<title>elsewhere</title>');
    });
    server.on('connection', () => seen.connections++);
    await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
    return {seen, server, there: `http://127.0.0.1:${server.address().port}`};
}

const RUN = 'document.title=&quot;it ran&quot;';
const SCRIPT = `&lt;script&gt;${RUN}&lt;/script&gt;`;
// characters whose bytes in UTF-16BE are a script
const BYTES = [...'<script>document.title="it ran"</script >'].map((one) => one.charCodeAt(0));
const WIDE = BYTES.flatMap((byte, i) => i % 2 === 0 ? [String.fromCharCode(byte * 256 + (BYTES[i + 1] ?? 32))] : []).join('');
const XSL = 'xmlns:xsl="http://www.w3.org/1999/XSL/Transform" xmlns:svg="http://www.w3.org/2000/svg" ' +
    'xmlns:xlink="http://www.w3.org/1999/xlink" exclude-result-prefixes="xlink"';
const template = (body, output = '<xsl:output method="html"/>', head = '') =>
    `<xsl:stylesheet version="1.0" ${XSL}>${output}<xsl:template match="/"><html><head><title>t</title>${head}</head>` +
    `<body><p>A page.</p>${body}</body></html></xsl:template></xsl:stylesheet>`;

// Written by the program, and harmless: name, template.
const harmless = {
    'a comment that ends early': template(`<xsl:comment>&gt;${SCRIPT}</xsl:comment><xsl:comment>-&gt;${SCRIPT}</xsl:comment>`),
    'text as the output method': template(`<p>${SCRIPT}</p>`, '<xsl:output method="text"/>'),
    'a section of CDATA': template(`<p>&gt;${SCRIPT}</p>`, '<xsl:output method="xml" cdata-section-elements="p"/>'),
    'a doctype of its own': template('', `<xsl:output method="html" doctype-public='"&gt;${SCRIPT}'/>`),
    'a system identifier': template('', `<xsl:output method="html" doctype-system='"&gt;${SCRIPT}'/>`),
    'another encoding': template(`<p>${WIDE}</p>`, '<xsl:output method="html" encoding="UTF-16BE"/>'),
    'UTF-7': template('<p>+ADw-script+AD4-document.title=+ACI-it ran+ACIAPA-/script+AD4-</p>',
        '<xsl:output method="html" encoding="UTF-7"/>', '<meta charset="UTF-7"/>'),
    'a link that is a script': template(`<a id="go" HREF="javascript:${RUN}">x</a>`),
    'a picture': template(`<img SRC="${THERE}/img"/><img src="${THERE}/img-small" srcset="${THERE}/img-set 2x"/>`),
    'other pictures': template(`<table BACKGROUND="${THERE}/background"><tr><td>x</td></tr></table><input type="image" src="${THERE}/input"/>` +
        `<video poster="${THERE}/poster" src="${THERE}/video" autoplay="autoplay"/><audio src="${THERE}/audio" autoplay="autoplay"/>`),
    'a drawing elsewhere': template(`<svg:svg><svg:use xlink:HREF="${THERE}/use.svg#a"/><svg:use href="${THERE}/use2.svg#a"/>` +
        `<svg:image href="${THERE}/image"/><svg:animate attributeName="href" values="javascript:${RUN}"/></svg:svg>`),
    'a style that fetches': template(`<p style="background: url(${THERE}/style)">x</p>`, undefined,
        `<style>@import "${THERE}/import"; @font-face { font-family: x; src: url(${THERE}/font) } body { font-family: x; background: url(${THERE}/css) }</style>`),
    'a beacon on a link': template(`<a id="go" href="#x" ping="${THERE}/ping">x</a>`),
    'a frame set': template(`<frameset><frame src="${THERE}/frame"/></frameset>`),
    'objects': template(`<object data="${THERE}/object"/><embed src="${THERE}/embed"/><applet code="${THERE}/applet"/>`),
    'a base': template('<img src="base"/>', undefined, `<base href="${THERE}/"/>`),
    'a manifest': template('').replace('<html>', `<html manifest="${THERE}/manifest">`),
};
// Refused: the policy cannot say it, or its author is told.
const refused = {
    'meta refresh': template('', undefined, `<meta http-equiv="refresh" content="0;url=${THERE}/refresh"/>`),
    'META REFRESH': template('', undefined, `<META HTTP-EQUIV="refresh" content="0;url=${THERE}/refresh2"/>`),
    'a script': template(`<script>${RUN}</script>`),
    'a script elsewhere': template(`<SCRIPT SRC="${THERE}/script"/>`),
    'a handler': template(`<img src="x" OnError="${RUN}"/>`),
    'a style sheet elsewhere': template('', undefined, `<link rel="stylesheet" href="${THERE}/link"/>`),
    'prefetch': template('', undefined, `<link rel="prefetch" href="${THERE}/prefetch"/>`),
    'a frame': template(`<iframe src="${THERE}/iframe"/>`),
    'a form': template(`<form action="${THERE}/form"><button id="go">x</button></form>`),
    'preconnect': template('', undefined, `<LINK rel="preconnect" href="${THERE}"/>`),
};
// What the policy holds by itself, put by hand into a page that the program wrote.
const held = {
    'a script': `<script>document.title="it ran"</script><script src="${THERE}/raw-script"></script>`,
    'a handler': '<img src="x" onerror="document.title=\'it ran\'">',
    'a frame of a script': '<iframe srcdoc="<script>parent.document.title=\'it ran\'</script>"></iframe>',
    'an object': `<object data="${THERE}/raw-object"></object>`,
    'an embedded one': `<embed src="${THERE}/raw-embed">`,
    'an applet': `<applet code="${THERE}/raw-applet"></applet>`,
    'a base': `<base href="${THERE}/"><img src="raw-base">`,
    'a style sheet': `<link rel="stylesheet" href="${THERE}/raw-link">`,
    'an icon': `<link rel="icon" href="${THERE}/raw-icon">`,
    'prefetch': `<link rel="prefetch" href="${THERE}/raw-prefetch">`,
    'preload': `<link rel="preload" as="image" href="${THERE}/raw-preload">`,
    'modulepreload': `<link rel="modulepreload" href="${THERE}/raw-module">`,
};

const browser = await browserDriver().launch({
    executablePath: found.stdout.trim(),
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-component-update', '--disable-sync'],
});

// What a page does when it is opened, and when its link is followed.
async function done(file) {
    const {seen, server, there} = await listening();
    writeFileSync(file, readFileSync(file, 'utf8').replaceAll(THERE, there));
    const page = await browser.newPage();
    const url = pathToFileURL(file).href;
    await page.goto(url);
    if (await page.locator('#go').count() > 0) {
        await page.locator('#go').click({noWaitAfter: true});
    }
    await page.waitForTimeout(SETTLED_MS);
    const faults = [...seen.asked].map((one) => `asks for ${one}`);
    if (seen.connections > 0) {
        faults.push(`connects ${seen.connections} times`);
    }
    if ((await page.title()).includes('it ran')) {
        faults.push('runs a script');
    }
    if (page.url().replace(/[#?].*/, '') !== url) {
        faults.push(`leads to ${page.url()}`);
    }
    await page.close();
    server.closeAllConnections?.();
    server.close();
    return faults;
}

let wrong = 0, tried = 0;
function hold(name, faults) {
    tried++;
    wrong += faults.length > 0;
    console.log(`${faults.length === 0 ? 'held  ' : 'FAULTY'} ${name}`);
    faults.forEach((fault) => console.log(`    ${fault}`));
}

// The server and the looking must be able to see all of it: the same without a policy.
const open = path.join(folder, 'open.html');
mkdirSync(folder, {recursive: true});
async function seen(name, html, expected) {
    writeFileSync(open, `<!DOCTYPE html><html><head><meta charset="UTF-8"><title>t</title>${html}</html>`);
    const faults = await done(open);
    const blind = expected.filter((one) => !faults.some((fault) => fault.includes(one)));
    hold(`seen without a policy: ${name}`, blind.map((one) => `not seen: ${one}; only ${JSON.stringify(faults)}`));
}
await seen('what runs', '<script>document.title="it ran"</script>', ['runs a script']);
await seen('what fetches', `<link rel="stylesheet" href="${THERE}/link"><style>body { background: url(${THERE}/css) }</style>` +
    `<img src="${THERE}/img"><script src="${THERE}/script"></script><iframe src="${THERE}/iframe"></iframe>` +
    `<object data="${THERE}/object"></object><a id="go" href="#x" ping="${THERE}/ping">x</a><link rel="prefetch" href="${THERE}/prefetch">`,
    ['/link', '/css', '/img', '/script', '/iframe', '/object', '/ping', '/prefetch', 'connects']);
await seen('what leads away', `<meta http-equiv="refresh" content="0;url=${THERE}/refresh">`, ['/refresh', 'leads to']);

function plan(name, text) {
    const own = path.join(folder, 'own'), out = path.join(folder, 'out');
    [own, out].forEach((place) => rmSync(place, {recursive: true, force: true}));
    mkdirSync(own, {recursive: true});
    writeFileSync(path.join(own, 'papers.xsl'), text);
    const made = spawnSync(wend, ['plan', route, '--templates', own, '--out', out], {encoding: 'utf8'});
    return {...made, out, brief: path.join(out, `${path.basename(route, '.yaml')}.brief.html`)};
}
for (const [name, text] of Object.entries(harmless)) {
    const made = plan(name, text);
    hold(name, existsSync(made.brief) ? await done(made.brief) : [`is not written: ${made.stderr}`]);
}
for (const [name, text] of Object.entries(refused)) {
    const made = plan(name, text);
    const faults = /\[template-(page|refused)\]/.test(made.stderr) && made.status > 1 ? [] : [`ends with ${made.status}: ${made.stderr}`];
    hold(`refused: ${name}`, existsSync(made.out) ? [...faults, 'a page is written'] : faults);
}
const plain = readFileSync(plan('plain', template('')).brief, 'utf8');
for (const [name, html] of Object.entries(held)) {
    writeFileSync(open, plain.replace('<body>', `<body>${html}`));
    hold(`held by the policy: ${name}`, await done(open));
}
await browser.close();
console.log(`${tried} ways tried, ${wrong} faulty`);
process.exit(wrong === 0 && tried >= 30 ? 0 : 1);
