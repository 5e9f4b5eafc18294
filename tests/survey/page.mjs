// The survey page in a browser, as on a phone without a network: a whole survey by taps, and all that can go wrong on site.
//
//   node page.mjs WEND FOLDER [PAGE]
//
// PAGE is a page that was made before; without it the program makes one. Ends with 77 (skipped) only where there is no browser.
import {spawnSync} from 'node:child_process';
import {mkdirSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {createServer} from 'node:http';
import path from 'node:path';
import {Rig, SKIPPED, Thumb, archive, looked, onPath, places, route, settled} from './rig.mjs';

const [wendGiven, folderGiven, pageGiven] = process.argv.slice(2);
if (!folderGiven) {
    console.error('usage: node page.mjs WEND FOLDER [PAGE]');
    process.exit(2);
}
if (!process.env.CHROMIUM && !onPath('chromium') && !onPath('chromium-browser')) {
    console.log('skipped: there is no chromium on this machine');
    process.exit(SKIPPED);
}
const folder = path.resolve(folderGiven);
rmSync(path.join(folder, 'planned'), {recursive: true, force: true});
mkdirSync(folder, {recursive: true});
const rig = new Rig(path.resolve(wendGiven), folder, pageGiven && path.resolve(pageGiven));
await rig.begin();
const TAPS_MOST = 110;
let pictures = 0;

async function look(page, where) {
    for (const fault of await page.evaluate(looked)) {
        rig.expect(where, false, fault);
    }
    if (process.env.WEND_PICTURES) {
        await page.screenshot({path: path.join(folder, `${String(++pictures).padStart(2, '0')}-${where.replace(/\W+/g, '-')}.png`)});
    }
}

async function accessible(page, where) {
    await page.evaluate(rig.axe);
    const found = await page.evaluate(() => window.axe.run(document, {resultTypes: ['violations'], runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']}));
    for (const one of found.violations) {
        rig.expect(`${where}, axe`, false, `${one.id}: ${one.help}: ${one.nodes[0].html.slice(0, 140)}`);
    }
    rig.done++;
}

// What a person would have typed for the survey below.
const BY_HAND = `wend: 1
job: {title: Boathouse supply, customer: "Owner: the rowing club", site: 'Lower "north" yard', location: ordinary, surveyed: 2026-05-14}
supply: {system: TN-C-S, phases: 1, loop-impedance: 0.35 ohm, fault-current: 1.2 kA}
earthing:
  far-end: island
  electrode: {rods: 2, length: 1.2 m, diameter: 16 mm}
  board-residual: 30 mA
  extraneous-parts: no
  existing: none
runs:
  feeder:
    feeds: board
    use: general
    load: {power: 6 kW}
    device: {kind: RCBO, residual: 100 mA, residual-type: A, breaking-capacity: 6 kA}
    cable: {type: BS5467, cores: 3}
    start: {from: existing-way, enclosure: plastic, tail: 0.5 m}
    finish: {place: indoors, enclosure: plastic, tail: 0.5 m}
segments:
  - {name: wall-1, way: wall, length: 2.4 m, rise: 2.4 m, bends: 1, fixed-to: brick, insulation: none}
  - {name: through-wall-2, way: through-wall, length: 300 mm, rise: 0 m, thickness: 300 mm, wall: cavity}
  - {name: loft-void-3, way: loft-void, length: 8 m, rise: 0 m, bends: 0, insulation: surrounded, air: 40 degC}
  - {name: through-wall-4, way: through-wall, length: 300 mm, rise: 0 m, thickness: 300 mm, wall: cavity}
  - {name: wall-5, way: wall, length: 2.6 m, rise: -2.6 m, bends: 1, fixed-to: brick, insulation: none}
  - {name: duct-6, way: duct, length: 18 m to 22 m, rise: 0 m, bends: 2, duct: {size: 63 mm, laid: new}, depth: 600 mm, under: drive}
  - {name: buried-7, way: buried, length: 12 m, rise: 0 m, depth: 600 mm, under: lawn}
  - {name: wall-8, way: wall, length: 1.2 m, rise: 1.2 m, bends: 1, fixed-to: brick, insulation: none}
`;

async function supplyAndLoad(thumb) {
    await thumb.pick('TN-C-S', '1');
    await thumb.figure('0.35', 'Ω');
    await thumb.figure('1.2', 'kA');
    await thumb.pick('existing way', 'plastic', '0.5 m');
    await thumb.on();
    await thumb.figure('6', 'kW');
    await thumb.skip();
    await thumb.pick('general', 'board', 'RCBO', '100 mA', 'A', '6 kA', 'BS5467', '3');
}

async function eightSegments() {
    const {context, page} = await rig.phone({slow: 4});
    const thumb = new Thumb(page);
    await look(page, 'start');
    await accessible(page, 'start');
    await thumb.begin();
    await look(page, 'supply');
    await accessible(page, 'supply');
    await supplyAndLoad(thumb);
    await look(page, 'first way');
    await thumb.pick('wall');
    await look(page, 'length');
    await accessible(page, 'length');
    const strip = await page.evaluateHandle(() => document.querySelector('#strip').firstChild);
    await thumb.figure('2.4', '.'); // a second point is not taken
    rig.expect('a digit redraws nothing but the figure', await strip.evaluate((piece) => piece.isConnected));
    rig.expect('the figure is shown', await page.locator('.figure').textContent() === '2.4');
    await page.locator('#panel .key[data-key="m"]').tap();
    thumb.taps++;
    await look(page, 'rise');
    await thumb.pick('straight up, all 2.4 m', '1', 'brick', 'none');
    await settled(page);
    rig.expect('before the far end the verdict is so far', /^SO FAR 2\.4 m/.test(await page.locator('.verdict b').textContent()));
    await thumb.pick('through wall', '300 mm', 'level', '300 mm', 'cavity', 'loft void');
    await thumb.figure('8', 'm');
    await thumb.pick('level', '0', 'surrounded');
    await look(page, 'loft');
    await thumb.skip();
    await thumb.pick('40 °C', 'through wall');
    await thumb.rest();
    await thumb.pick('wall');
    await thumb.figure('2.6', 'm');
    await thumb.pick('straight down, all 2.6 m');
    await look(page, 'the rest as before');
    await thumb.rest();
    await thumb.pick('duct');
    await thumb.figure('18', 'to');
    await thumb.figure('22', 'm');
    await thumb.pick('level', '2');
    await look(page, 'duct');
    await thumb.pick('63 mm', 'new', '600 mm', 'drive', 'buried');
    await thumb.figure('12', 'm');
    await thumb.pick('level', '600 mm', 'lawn', 'wall');
    await thumb.figure('1.2', 'm');
    await thumb.pick('straight up, all 1.2 m');
    await thumb.rest();
    await settled(page);
    rig.expect('what limits is named', /limits: loft-void-3/.test(await page.locator('.verdict').textContent()));
    rig.expect('a survey so far never passes', !/PASS/.test(await page.locator('.verdict').textContent()));
    rig.expect('and its file says so', (await route(page)).includes('complete: no'));
    await look(page, 'what comes next');
    await accessible(page, 'what comes next');
    await thumb.pick('far end');
    rig.expect('the far end is reached', !(await route(page)).includes('complete'));
    await look(page, 'far end');
    await thumb.pick('indoors', 'plastic', '0.5 m', 'island', '2', '1.2 m', '16 mm', 'no', 'none', '30 mA');
    await thumb.on();
    await look(page, 'job');
    await thumb.type('Boathouse supply');
    await thumb.type('Owner: the rowing club');
    await thumb.type('Lower "north" yard');
    await thumb.pick('ordinary');
    await thumb.skip();
    await look(page, 'date');
    await thumb.pick('Today');
    await thumb.on();
    await settled(page);
    await look(page, 'review');
    await accessible(page, 'review');
    rig.expect('the whole is decided', /^PASS/.test(await page.locator('.verdict b').textContent()), await page.locator('.verdict').textContent());
    rig.expect('not sent yet', /^Not sent yet/.test(await page.locator('#sent').textContent()));
    const [saved] = await Promise.all([page.waitForEvent('download'), thumb.tap('#save-yaml')]);
    const text = readFileSync(await saved.path(), 'utf8');
    rig.expect('it was handed over', /^Handed over/.test(await page.locator('#sent').textContent()));
    console.log(`eight segments: ${thumb.taps} taps, ${thumb.typed} characters`);
    rig.expect(`no more than ${TAPS_MOST} taps`, thumb.taps <= TAPS_MOST, thumb.taps);
    const today = text.match(/surveyed: (\S+)/)[1];
    rig.expect('the saved file plans to the same bytes as the same survey typed by hand', rig.papers('page', text) === rig.papers('hand', BY_HAND.replace('2026-05-14', today)));
    if (rig.engineBuiltIn) {
        await zip(page, thumb);
    }
    await segmentsMoved(page);
    await context.close();
}

async function zip(page, thumb) {
    await page.evaluate(() => go('s:3'));
    await page.setInputFiles('#photo-input', {name: 'IMG 1.bmp', mimeType: 'image/bmp', buffer: picture()});
    await page.waitForFunction(() => document.querySelector('.thumbs img')?.naturalWidth > 0, null, {timeout: 30000});
    await look(page, 'a photo');
    await page.evaluate(() => go('review'));
    rig.expect('not sent since', /^Not sent since/.test(await page.locator('#sent').textContent()));
    const [saved] = await Promise.all([page.waitForEvent('download', {timeout: 60000}), thumb.tap('#save-zip')]);
    const file = path.join(folder, 'all.zip');
    await saved.saveAs(file);
    const held = archive(readFileSync(file));
    for (const name of ['boathouse-supply.yaml', 'boathouse-supply.pack.html', 'boathouse-supply.parts.csv', 'photos/loft-void-3-1.jpg']) {
        rig.expect(`the archive holds ${name}`, held.get(name)?.length > 0, [...held.keys()]);
    }
    writeFileSync(path.join(folder, 'boathouse-supply.yaml'), await route(page));
    spawnSync(rig.wend, ['plan', path.join(folder, 'boathouse-supply.yaml'), '--out', path.join(folder, 'planned')]);
    rig.expect('the plan in the archive is the program\'s', readFileSync(path.join(folder, 'planned', 'boathouse-supply.plan.xml')).equals(held.get('boathouse-supply.plan.xml')));
    rig.expect('the route in the archive', held.get('boathouse-supply.yaml').toString() === await route(page));
}

// 1600 x 1100 dots of three bytes: 5.3 MB.
function picture() {
    const [width, height] = [1600, 1100], size = 54 + width * height * 3, bytes = Buffer.alloc(size);
    bytes.write('BM', 0);
    bytes.writeUInt32LE(size, 2);
    bytes.writeUInt32LE(54, 10);
    bytes.writeUInt32LE(40, 14);
    bytes.writeInt32LE(width, 18);
    bytes.writeInt32LE(height, 22);
    bytes.writeUInt16LE(1, 26);
    bytes.writeUInt16LE(24, 28);
    for (let at = 54; at < size; at++) {
        bytes[at] = at * 2654435761 >>> 24;
    }
    return bytes;
}

// By its buttons and by dragging; what is taken back gives the same bytes.
async function segmentsMoved(page) {
    await page.evaluate(() => go('review'));
    const before = await route(page), names = () => page.evaluate(() => segments().map((one) => textAt(one, 'name')).join(' '));
    const order = await names();
    await page.locator('[data-row] button[aria-label^="Move wall-5"][aria-label$="earlier"]').tap();
    rig.expect('a segment moves one place', (await names()) === order.replace('through-wall-4 wall-5', 'wall-5 through-wall-4'), await names());
    await page.locator('[data-bar=undo]').tap();
    rig.expect('undo gives the same bytes', await route(page) === before);
    await settled(page);
    await page.evaluate(() => document.querySelector('[data-row] .grip').scrollIntoView({block: 'center'}));
    const [from] = await places(page, '[data-row] .grip');
    await page.mouse.move(from.x + 20, from.y + 20);
    await page.mouse.down(); // nothing is drawn anew under it from here on
    const [, , to] = await places(page, '[data-row] .grip');
    await page.mouse.move(to.x + 20, to.y + 20, {steps: 5});
    await page.mouse.up();
    rig.expect('a segment is dragged', (await names()).startsWith('through-wall-2 loft-void-3 wall-1 '), await names());
    await page.locator('#note button').first().tap();
    rig.expect('dragging is taken back too', await route(page) === before);
    await page.evaluate(() => { go('s:2'); state.at.view = 'more'; draw(); });
    await look(page, 'more');
    await accessible(page, 'more');
    await page.locator('text=Copy it behind itself').tap();
    await page.evaluate(() => { state.at.view = 'more'; draw(); });
    await page.locator('text=Take it out').tap();
    rig.expect('copied and taken out again', (await names()) === order, await names());
    await page.evaluate(() => { state.at.view = 'text'; draw(); });
    await look(page, 'as text');
    for (const mode of ['sun', 'night']) {
        await page.evaluate((name) => { state.mode = name; go('s:6'); }, mode);
        await look(page, mode);
        await accessible(page, mode);
    }
    const pile = await page.evaluate(() => undoPile.length);
    for (let i = 0; i < pile; i++) {
        await page.evaluate(() => { undo(); });
    }
    rig.expect('everything can be taken back', pile === 100 || (await route(page)).trim() === 'wend: 1\ncomplete: no', await route(page));
}

async function begun(options) {
    const {context, page} = await rig.phone(options);
    const thumb = new Thumb(page);
    await thumb.begin();
    return {context, page, thumb};
}

async function reloadAndRotate() {
    const {context, page, thumb} = await begun();
    await supplyAndLoad(thumb);
    await thumb.pick('wall');
    await thumb.figure('12', '.');
    await page.waitForTimeout(300);
    const before = await route(page);
    await page.reload();
    await page.waitForFunction(() => document.querySelector('#asked'));
    rig.expect('after a reload the same card and question', await page.locator('h1').textContent() === 'Segment 1: wall' && await page.locator('#asked').textContent() === 'How long is it?');
    rig.expect('and the half-typed figure', await page.locator('.figure').textContent() === '12.', await page.locator('.figure').textContent());
    rig.expect('and the same answers', await route(page) === before);
    await page.setViewportSize({width: 740, height: 360});
    await look(page, 'landscape');
    rig.expect('landscape keeps the question', await page.locator('#asked').textContent() === 'How long is it?' && await page.locator('.figure').textContent() === '12.');
    const [unit] = await places(page, '#panel .key[data-key="m"]');
    rig.expect('the unit is on the screen in landscape', unit.y + unit.height <= 360, unit);
    for (const [width, height] of [[320, 568], [412, 915], [360, 560]]) {
        await page.setViewportSize({width, height});
        await look(page, `${width} x ${height}`);
    }
    await page.setViewportSize({width: 360, height: 740});
    await thumb.figure('5', 'm');
    rig.expect('the figure goes on where it was', (await route(page)).includes('length: 12.5 m'));
    await page.locator('[data-bar=undo]').tap();
    rig.expect('undo after a reload', await route(page) === before);
    await page.goBack();
    rig.expect('the back key goes to the card before', await page.locator('h1').textContent() === 'Load and device');
    await page.goBack();
    rig.expect('and on', await page.locator('h1').textContent() === 'Supply');
    rig.expect('and changes nothing', await route(page) === before);
    await context.close();
}

async function doubleTap() {
    const {context, page} = await begun();
    const pass = (ms) => page.evaluate((more) => {
        window.stopped = (window.stopped ?? performance.now()) + more;
        performance.now = () => window.stopped;
    }, ms);
    await pass(300); // its clock stands still, so that no tap is late on a busy machine
    const tile = (await places(page, '#panel .tile')).at(-1); // the next question has a tile in the same place
    for (let i = 0; i < 3; i++) {
        await page.touchscreen.tap(tile.x + tile.width / 4, tile.y + tile.height / 2);
    }
    const text = await route(page);
    rig.expect('a double tap answers one question', text.includes('system:') && !text.includes('phases'), text);
    await pass(300);
    await page.touchscreen.tap(tile.x + tile.width / 4, tile.y + tile.height / 2);
    rig.expect('a tap in its time answers the next', (await route(page)).includes('phases'), await route(page));
    await context.close();
}

async function twoTabs() {
    const {context, page, thumb} = await begun();
    await thumb.pick('TN-S');
    const second = await rig.tab(context);
    await second.waitForFunction(() => state.rev > 0);
    await new Thumb(second).pick('3');
    await page.waitForFunction(() => document.querySelector('#note button'));
    rig.expect('the tab behind says so', /Another tab/.test(await page.locator('#note').textContent()));
    const kept = await page.evaluate(() => localStorage.getItem('wend-survey'));
    await page.evaluate(() => answer(FIELDS.find((one) => one.key === 'phases'), 'supply', '1'));
    rig.expect('and writes nothing', await page.evaluate(() => localStorage.getItem('wend-survey')) === kept);
    await page.locator('#note button', {hasText: 'Show it'}).tap();
    rig.expect('it shows what the other tab has', (await route(page)).includes('phases: 3'), await route(page));
    await context.close();
}

async function storageFull() {
    const {context, page, thumb} = await begun();
    await thumb.pick('TN-S');
    await page.evaluate(() => {
        localStorage.removeItem('wend-survey');
        for (let size = 1 << 22; size > 0; size >>= 1) {
            try {
                localStorage.setItem(`filler-${size}`, 'x'.repeat(size));
            } catch { /* that much does not go in */ }
        }
    });
    await thumb.pick('1');
    rig.expect('a full storage is told', /no room/.test(await page.locator('#note').textContent()));
    await look(page, 'storage full');
    const [saved] = await Promise.all([page.waitForEvent('download'), page.locator('#note button', {hasText: 'Save'}).tap()]);
    rig.expect('the file can be saved all the same', readFileSync(await saved.path(), 'utf8').includes('phases: 1'));
    await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('filler')).forEach((key) => localStorage.removeItem(key)));
    await thumb.figure('0.3', 'Ω');
    rig.expect('with room again it is kept', (await page.evaluate(() => localStorage.getItem('wend-survey'))).includes('0.3 ohm') && !/no room/.test(await page.locator('#note').textContent()));
    await context.close();
}

async function photos() {
    const {context, page, thumb} = await begun();
    await page.evaluate(() => { change(() => addSegment('wall', 0)); go('s:1'); });
    await page.setInputFiles('#photo-input', {name: 'IMG 1.bmp', mimeType: 'image/bmp', buffer: picture()});
    await page.waitForFunction(() => document.querySelector('.thumbs img')?.naturalWidth > 0, null, {timeout: 30000});
    const kept = await page.evaluate(async () => { const blob = await photoStore.get('wall-1-1.jpg'); return [blob.type, blob.size]; });
    rig.expect('a photo of 5 MB is kept small', kept[0] === 'image/jpeg' && kept[1] < 3000000, kept);
    await page.reload();
    await page.waitForFunction(() => document.querySelector('.thumbs img')?.naturalWidth > 0, null, {timeout: 30000});
    await page.setInputFiles('#photo-input', {name: 'holiday.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture at all')});
    await page.waitForFunction(() => /no picture/.test(document.querySelector('#note').textContent));
    rig.expect('what is no picture adds nothing', await page.locator('.thumbs img').count() === 1);
    await page.evaluate(() => go('start'));
    await thumb.tap('[data-key=wipe]');
    rig.expect('wiping what was not sent asks again', /Not sent/.test(await page.locator('[data-key=wipe]').textContent()));
    await thumb.tap('[data-key=wipe]');
    await page.waitForFunction(() => document.querySelector('[data-key=begin]'));
    rig.expect('wiped: nothing is left', await page.evaluate(async () => localStorage.getItem('wend-survey') === null && await photoStore.get('wall-1-1.jpg') === undefined));
    await context.close();
}

async function keptOnlyWhenAsked() {
    const {context, page} = await rig.phone();
    const thumb = new Thumb(page);
    await thumb.tap('[data-key=begin]');
    await thumb.pick('TN-S');
    rig.expect('a page from disk keeps nothing without asking', await page.evaluate(() => localStorage.length) === 0);
    await context.close();
}

async function newerPage() {
    const {context, page} = await rig.phone();
    const newer = JSON.stringify({tab: 'x', rev: 9, state: {version: 3, route: 'of a kind to come'}});
    await page.evaluate((text) => { localStorage.setItem('wend-survey-allowed', 'yes'); localStorage.setItem('wend-survey', text); }, newer);
    await page.reload();
    await page.waitForFunction(() => document.querySelector('#page h1'));
    rig.expect('what a newer page kept is shown', /newer page/.test(await page.locator('#page').textContent()) && /of a kind to come/.test(await page.locator('#page').textContent()));
    await new Thumb(page).tap('[data-key=begin]');
    await new Thumb(page).pick('TN-S');
    rig.expect('and stays as it is', await page.evaluate(() => localStorage.getItem('wend-survey')) === newer);
    await context.close();
}

// Words of markup stay words, and no script could have come in.
async function hostileTexts() {
    const {context, page} = await begun();
    const text = '<img src=x onerror="globalThis.hit=1"> & </script>';
    await page.evaluate((title) => { change(() => { setAt(['job', 'title'], title); addSegment('wall', 0); segments()[0].m[0][1] = title; }); go('s:1'); }, text);
    for (const view of ['card', 'more', 'text']) {
        await page.evaluate((name) => { state.at.view = name; draw(); }, view);
        rig.expect(`a text of markup is text (${view})`, await page.locator('#app img').count() === 0 && (await page.locator('#app').textContent()).includes('<img src=x'));
    }
    await page.evaluate(() => go('review'));
    rig.expect('nothing ran', await page.evaluate(() => globalThis.hit === undefined));
    await context.close();
}

async function withoutEngine() {
    const {context, page} = await rig.phone({engine: false});
    if (!rig.engineBuiltIn) {
        const thumb = new Thumb(page);
        await thumb.begin();
        await supplyAndLoad(thumb);
        rig.expect('without an engine the page says that the laptop plans', /the laptop plans/.test(await page.locator('.verdict').textContent()));
        rig.expect('and keeps the answers', (await route(page)).includes('type: BS5467'));
        await page.evaluate(() => go('review'));
        await look(page, 'review without engine');
        await accessible(page, 'review without engine');
    }
    await context.close();
}

async function landmarks() {
    const {context, page} = await begun();
    const found = await page.evaluate(() => ['nav[aria-label]', 'main', 'section#panel[aria-label]', 'section#bar[aria-label]', 'main h1', '[role=status][aria-live=polite]'].filter((one) => !document.querySelector(one)));
    rig.expect('landmarks', found.length === 0, found);
    rig.expect('the question has the focus after an answer', await (async () => { await new Thumb(page).pick('TN-S'); return page.evaluate(() => document.activeElement.id === 'asked'); })());
    await context.close();
}

async function twoHundredSegments() {
    const {context, page, thumb} = await begun({slow: 4});
    await supplyAndLoad(thumb);
    const drawnWith = async (least) => {
        await page.evaluate((count) => {
            change(() => {
                for (let i = segments().length; i < count; i++) {
                    const segment = addSegment(['wall', 'duct', 'buried', 'loft-void'][i % 4], i);
                    segment.m.push(['length', `${1 + i % 7} m`]);
                }
            });
            go(`s:${segments()[count / 2 - 1].id}`);
        }, least);
        await settled(page);
        return page.evaluate(() => Math.min(...[1, 2, 3, 4, 5].map(() => { const from = performance.now(); draw(true); return performance.now() - from; })));
    };
    const few = await drawnWith(20), many = await drawnWith(200);
    console.log(`200 segments: drawn anew in ${Math.round(many)} ms at a quarter of the speed, 20 in ${Math.round(few)} ms`);
    rig.expect('ten times the segments are drawn in no more than fifteen times the time', many < 15 * few, [few, many]);
    await thumb.pick('level');
    rig.expect('and answered', (await route(page)).includes('rise: 0 m'));
    await page.evaluate(() => go('review'));
    await look(page, '200 segments');
    await context.close();
}

async function openedFiles() {
    if (!rig.engineBuiltIn) {
        console.log('    this page has no engine: files are not opened in it');
        return;
    }
    const {context, page} = await begun();
    const open = async (name, bytes) => {
        await page.evaluate(() => go('start'));
        await page.setInputFiles('#open-input', {name, mimeType: 'text/plain', buffer: Buffer.from(bytes)});
        await page.waitForFunction(() => document.querySelector('#note').textContent !== '');
        return page.locator('#note').textContent();
    };
    const before = await route(page);
    for (const [name, bytes] of [['a picture.png', '\x89PNG\r\n\x1a\n\x00\x00'], ['broken.yaml', 'wend: 1\njob: {title: x\n'], ['latin.yaml', Buffer.from('wend: 1\njob: {title: caf\xe9}\n', 'latin1')], ['empty.yaml', ''], ['later.yaml', 'wend: 2\njob: {title: x}\n'], ['long.yaml', `# ${'x'.repeat(5 << 20)}`]]) {
        const told = await open(name, bytes);
        rig.expect(`${name} is refused by name`, told.includes(name) && /not a route file|opened/.test(told) && !/opened/.test(told), told);
        rig.expect(`${name} changes nothing`, await route(page) === before);
    }
    const other = BY_HAND.replace('job: {', 'my-own: {kept: [yes, "no", 1e3], empty: ""}\njob: {');
    for (const [name, text] of [['hand', BY_HAND], ['two-runs', BY_HAND.replace('segments:\n', '  lights:\n    load: [{current: 2 A}, {power: 100 W}]\n    cable: {type: BS5467, cores: 3}\n    along: [wall-1, through-wall-2]\nsegments:\n')], ['angles', BY_HAND.replace('bends: 2,', 'bends: [{angle: 90 deg, radius: 400 mm}, {angle: 45 deg}],')]]) {
        await open(`${name}.yaml`, text);
        rig.expect(`${name}: opened and saved, it plans to the same bytes`, rig.papers(`${name}-opened`, await route(page)) === rig.papers(`${name}-itself`, text));
    }
    await open('own.yaml', other);
    rig.expect('keys that the page does not know are kept', (await route(page)).includes('my-own:\n  kept:\n    - "yes"\n    - "no"\n    - "1e3"\n  empty: ""'), await route(page));
    await page.evaluate(() => go('review'));
    await settled(page);
    rig.expect('and what the engine says of them is shown', /my-own/.test(await page.locator('#page').textContent()));
    await context.close();
}

async function faultAtItsField() {
    const {context, page, thumb} = await begun();
    await supplyAndLoad(thumb);
    await thumb.pick('wall');
    await thumb.figure('9999', 'm');
    await settled(page);
    await page.waitForFunction(() => document.querySelector('#panel .fault'), null, {timeout: 8000}).catch(() => {});
    rig.expect('a figure that is refused is asked again, with the engine\'s words', await page.locator('#asked').textContent() === 'How long is it?' && /out of range/.test(await page.locator('#panel .fault').first().textContent().catch(() => '')), await page.locator('#panel').textContent());
    await look(page, 'refused');
    await accessible(page, 'refused');
    await page.evaluate(() => go('review'));
    rig.expect('and listed', /To put right/.test(await page.locator('#page').textContent()));
    await context.close();
}

// The share sheet, where there is one: what was shared has left the phone, what was not has not.
async function shared() {
    const {context, page, thumb} = await begun();
    await page.evaluate(() => {
        navigator.canShare = () => true;
        navigator.share = async (data) => {
            globalThis.given = data.files.map((file) => file.name);
            if (globalThis.unwilling) {
                throw new DOMException('not now', 'AbortError');
            }
        };
        globalThis.unwilling = true;
    });
    await supplyAndLoad(thumb);
    await page.evaluate(() => go('review'));
    await thumb.tap('#share');
    await page.waitForFunction(() => globalThis.given || /Press Share again/.test(document.querySelector('#note').textContent), null, {timeout: 60000});
    if (!await page.evaluate(() => globalThis.given)) {
        await thumb.tap('#share');
    }
    await page.waitForFunction(() => globalThis.given && /Nothing was shared/.test(document.querySelector('#note').textContent));
    rig.expect('what was not shared is not sent', /^Not sent yet/.test(await page.locator('#sent').textContent()));
    await page.evaluate(() => { globalThis.unwilling = false; });
    await thumb.tap('#share');
    await page.waitForFunction(() => /^Handed over/.test(document.querySelector('#sent').textContent));
    rig.expect('one archive is shared', (await page.evaluate(() => globalThis.given.join())) === 'survey.zip');
    await context.close();
}

// Served by a host, it is kept on the phone and opens without a network from then on; answers are kept without asking.
async function hosted() {
    const place = path.join(folder, 'site');
    if (spawnSync(rig.wend, ['form', '--host', place]).status !== 0) {
        console.log('    this program writes no page for a host');
        return;
    }
    const kinds = {html: 'text/html', js: 'text/javascript', svg: 'image/svg+xml', webmanifest: 'application/manifest+json'};
    const server = createServer((asked, answer) => {
        const name = asked.url === '/' ? 'index.html' : path.basename(asked.url);
        try {
            const bytes = readFileSync(path.join(place, name));
            answer.writeHead(200, {'Content-Type': kinds[name.split('.').pop()]}).end(bytes);
        } catch {
            answer.writeHead(404).end();
        }
    });
    await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
    const context = await rig.browser.newContext({viewport: {width: 360, height: 740}, hasTouch: true, isMobile: true});
    const page = await context.newPage();
    page.on('pageerror', (error) => rig.complaints.push(String(error)));
    await page.goto(`http://127.0.0.1:${server.address().port}/`);
    await page.evaluate(async () => { await navigator.serviceWorker.ready; });
    await page.waitForFunction(async () => (await caches.keys()).length > 0);
    const thumb = new Thumb(page);
    await thumb.tap('[data-key=begin]');
    await thumb.pick('TN-S');
    await new Promise((done) => { server.close(done); server.closeAllConnections(); });
    await context.setOffline(true);
    await page.reload();
    await page.waitForFunction(() => document.querySelector('h1'));
    rig.expect('without a network, and without its host, it goes on', (await route(page)).includes('system: TN-S'));
    await context.close();
}

// What is to be measured again is marked on the bar and stands in the file; a way without a figure says so before it is tapped.
async function marks() {
    const {context, page, thumb} = await begun();
    await supplyAndLoad(thumb);
    const rated = await page.evaluate(() => language.ways?.find((one) => one.way === 'conduit')?.rates.includes('BS5467'));
    if (rated !== undefined) {
        const dotted = await page.locator('#panel .tile.nofig span').allTextContents();
        rig.expect('tiles without a figure say so', dotted.includes('conduit') !== rated && !dotted.includes('wall') && !dotted.includes('through wall'), dotted);
        await look(page, 'no figure');
    }
    await thumb.pick('wall');
    await thumb.figure('9', 'm');
    await thumb.tap('[data-bar=recheck]');
    if (await page.evaluate(() => againRow()?.kind === 'yes-or-no')) {
        rig.expect('marked to be measured again', (await route(page)).includes('measure-again: yes') && await page.locator('#strip [aria-label*="measure again"]').count() === 1, await route(page));
        await look(page, 'measure again');
        await page.evaluate(() => go('review'));
        rig.expect('and listed', /Measure again \(1\)/.test(await page.locator('#page').textContent()));
        await page.evaluate(() => go('s:1'));
        await thumb.tap('[data-bar=recheck]');
        rig.expect('and no longer', !(await route(page)).includes('measure-again'));
    }
    await context.close();
}

const parts = {eightSegments, reloadAndRotate, doubleTap, twoTabs, storageFull, photos, keptOnlyWhenAsked, newerPage, hostileTexts, withoutEngine, landmarks, twoHundredSegments, openedFiles, faultAtItsField, shared, marks, hosted};
const wanted = process.env.WEND_PARTS?.split(',') ?? Object.keys(parts);
for (const name of wanted) {
    const before = rig.faults.length;
    try {
        await parts[name]();
    } catch (error) {
        rig.faults.push(`${name}: ${error.stack}`);
    }
    rig.faults.push(...rig.complaints.splice(0).map((one) => `${name}, the browser says: ${one}`));
    console.log(`${rig.faults.length === before ? 'clear ' : 'FAULTY'} ${name}`);
    for (const fault of rig.faults.slice(before, before + 12)) {
        console.log(`    ${fault}`);
    }
}
await rig.browser.close();
console.log(`${rig.done} things looked at, ${rig.faults.length} faulty`);
process.exit(rig.faults.length === 0 && rig.done > 20 ? 0 : 1);
