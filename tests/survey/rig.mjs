// Opens the survey page in Chromium as on a phone: 360 px, touch, no network. Where the page has no engine built in, the
// program itself stands for it: the page asks it the same and cannot tell.
import {execFileSync, spawnSync} from 'node:child_process';
import {cpSync, existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import path from 'node:path';
import {fileURLToPath, pathToFileURL} from 'node:url';

export const SKIPPED = 77;
const here = path.dirname(fileURLToPath(import.meta.url));

export function onPath(name) {
    const found = spawnSync('sh', ['-c', `command -v ${name}`], {encoding: 'utf8'});
    return found.status === 0 ? found.stdout.trim() : null;
}

// The packages go beside what is written, not into the sources.
function packages(folder) {
    const place = process.env.WEND_NODE_PACKAGES || path.join(folder, 'packages');
    mkdirSync(place, {recursive: true});
    for (const file of ['package.json', 'package-lock.json']) {
        cpSync(path.join(here, '..', 'rendered', file), path.join(place, file));
    }
    if (!existsSync(path.join(place, 'node_modules', 'axe-core', 'axe.min.js'))) {
        execFileSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund'], {cwd: place, stdio: 'inherit'});
    }
    return createRequire(path.join(place, 'package.json'));
}

export class Rig {
    constructor(wend, folder, pageFile) {
        Object.assign(this, {wend, folder, complaints: [], faults: [], done: 0});
        this.file = pageFile ?? path.join(folder, 'survey.html');
        if (!pageFile) {
            execFileSync(wend, ['form', '--out', this.file], {stdio: 'inherit'});
        }
        this.engineBuiltIn = readFileSync(this.file, 'utf8').includes('const wendEngineBytes');
    }

    async begin() {
        const require = packages(this.folder);
        this.axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
        this.browser = await require('playwright-core').chromium.launch({
            executablePath: process.env.CHROMIUM || onPath('chromium') || onPath('chromium-browser'),
            args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
        });
    }

    // A fresh phone: nothing is kept there yet.
    async phone({slow = 1, engine = true} = {}) {
        const context = await this.browser.newContext({viewport: {width: 360, height: 740}, hasTouch: true, isMobile: true, offline: true, acceptDownloads: true});
        const page = await this.tab(context, engine);
        if (slow > 1) {
            const session = await context.newCDPSession(page);
            await session.send('Emulation.setCPUThrottlingRate', {rate: slow});
        }
        return {context, page};
    }

    async tab(context, engine = true) {
        const page = await context.newPage();
        page.on('pageerror', (error) => this.complaints.push(String(error.stack ?? error)));
        page.on('console', (message) => ['error', 'warning'].includes(message.type()) && this.complaints.push(message.text()));
        page.on('request', (request) => {
            if (!/^(blob|data):/.test(request.url()) && !(request.url().startsWith('file:') && request.isNavigationRequest())) {
                this.complaints.push(`asks for ${request.url()}`);
            }
        });
        if (engine && !this.engineBuiltIn) {
            await page.exposeFunction('nativePlan', (text) => this.native(text));
            await page.addInitScript(() => {
                globalThis.wendEngine = {plan: (yaml) => globalThis.nativePlan(yaml)};
            });
        }
        await page.goto(pathToFileURL(this.file).href);
        await page.waitForFunction(() => document.querySelector('h1'));
        return page;
    }

    native(text) {
        const file = path.join(this.folder, 'route.yaml');
        writeFileSync(file, text);
        const run = (...words) => spawnSync(this.wend, [...words, file], {encoding: 'utf8', maxBuffer: 1 << 28});
        const check = JSON.parse(run('check', '--format', 'json').stdout)[0];
        const plan = check.status < 2 ? JSON.parse(run('plan', '--format', 'json').stdout) : null;
        return {status: check.status, check, plan, documents: {}};
    }

    // All papers of a route, by the program: name -> bytes as text.
    papers(name, text) {
        const place = path.join(this.folder, 'planned', name);
        mkdirSync(place, {recursive: true});
        writeFileSync(path.join(place, 'run.yaml'), text);
        const made = spawnSync(this.wend, ['plan', path.join(place, 'run.yaml'), '--out', place], {encoding: 'utf8'});
        if (made.status > 1) {
            throw new Error(`${name} is not planned: ${made.stderr}`);
        }
        return readFileSync(path.join(place, 'run.plan.xml'), 'utf8') + readFileSync(path.join(place, 'run.parts.csv'), 'utf8') + readFileSync(path.join(place, 'run.diagram.svg'), 'utf8');
    }

    expect(what, holds, told = '') {
        this.done++;
        if (!holds) {
            this.faults.push(`${what}${told === '' ? '' : `: ${typeof told === 'string' ? told : JSON.stringify(told)}`}`);
        }
    }
}

// Where those that match stand, all looked at in one step: an answer of the engine may draw the page anew between two.
export function places(page, selector) {
    return page.evaluate((chosen) => [...document.querySelectorAll(chosen)].map((one) => {
        const {x, y, width, height} = one.getBoundingClientRect();
        return {x, y, width, height};
    }), selector);
}

// A thumb: it taps what is on the screen and counts. A second tap within 250 ms would be taken for the same one; here nobody
// waits for that to pass.
export class Thumb {
    constructor(page) {
        Object.assign(this, {page, taps: 0, typed: 0});
    }

    wait() {
        return this.page.evaluate(() => { guardFrom = -1e6; });
    }

    async tap(selector) {
        await this.wait();
        await this.page.locator(selector).first().tap({timeout: 8000});
        this.taps++;
    }

    async pick(...texts) {
        for (const text of texts) {
            await this.wait();
            const tile = this.page.locator('#panel .tile span').filter({hasText: new RegExp(`^${text.replace(/[.+]/g, '\\$&').replaceAll(' ', '[ \\u00a0]')}$`)}).first();
            try {
                await tile.tap({timeout: 8000});
            } catch {
                throw new Error(`there is no tile "${text}" at "${await this.page.locator('#asked').textContent()}"`);
            }
            this.taps++;
        }
    }

    async figure(digits, unit) {
        await this.wait();
        for (const key of [...digits, unit]) {
            await this.page.locator(`#panel .key[data-key="${key}"]`).tap({timeout: 8000});
            this.taps++;
        }
    }

    async type(text) {
        await this.page.fill('#typed', text);
        this.typed += text.length;
        await this.tap('[data-key=keep]');
    }

    skip() { return this.tap('#panel .skip'); }
    on() { return this.tap('[data-key=on]'); }
    rest() { return this.tap('#panel .rest-as'); }

    async begin() {
        await this.tap('[data-key=keep-yes]');
        await this.tap('[data-key=begin]');
    }
}

// What a stored archive holds, by its index: name -> bytes. Other readers are asked by texts.mjs.
export function archive(bytes) {
    const found = new Map(), end = bytes.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
    let at = bytes.readUInt32LE(end + 16);
    for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
        const size = bytes.readUInt32LE(at + 20), length = bytes.readUInt16LE(at + 28), local = bytes.readUInt32LE(at + 42);
        const from = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
        found.set(bytes.subarray(at + 46, at + 46 + length).toString(), bytes.subarray(from, from + size));
        at += 46 + length + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
    }
    return found;
}

export const route = (page) => page.evaluate('routeText(false).text');
export const settled = async (page) => {
    await page.waitForFunction(() => !planRunning && !toldLate && (!engine || verdict.rev === state.rev), null, {timeout: 60000});
};

// Runs in the page: targets that are too small, text that is too small, what is wider than the screen.
export function looked() {
    const found = [];
    const wide = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth > wide) {
        found.push(`the page is ${document.documentElement.scrollWidth} px wide on ${wide}`);
    }
    for (const element of document.querySelectorAll('button, input:not(.unseen), textarea')) {
        const box = element.getBoundingClientRect();
        if (box.width > 0 && (box.width < 47.5 || box.height < 47.5) && !element.closest('.listing')) {
            found.push(`a target of ${Math.round(box.width)} x ${Math.round(box.height)} px: ${element.textContent || element.getAttribute('aria-label')}`);
        }
        if (box.width > 0 && element.scrollWidth > element.clientWidth + 1 && !element.closest('#strip')) {
            found.push(`cut: ${element.textContent.slice(0, 40)}`);
        }
    }
    for (const element of document.querySelectorAll('#app *')) {
        const own = [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim());
        if (own && element.getBoundingClientRect().width > 0 && parseFloat(getComputedStyle(element).fontSize) < 14) {
            found.push(`text of ${getComputedStyle(element).fontSize}: ${element.textContent.slice(0, 40)}`);
        }
    }
    return [...new Set(found)].slice(0, 6);
}
