/* In and out: route files opened by the engine, the route saved, everything as one zip, the share sheet, photos. */
const TEXT_MOST = 4 * 1024 * 1024;

const fileStem = () => (nodeAt(['job', 'title']) ?? 'survey').toString().normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-').replace(/^-+|-+$/g, '').toLowerCase().slice(0, 40) || 'survey';

function sent() {
    state.sent = {rev: state.rev, at: clockNow()};
    note = {text: say('handed-over')};
    keepNow();
    draw();
}

function download(name, blob) {
    const link = h('a', {href: URL.createObjectURL(blob), download: name});
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

function saveRoute() {
    keepTyped();
    download(`${fileStem()}.yaml`, new Blob([routeText(false).text], {type: 'application/yaml'}));
    sent();
}

/* The route, the papers if there is a plan, the photos. */
async function everything() {
    keepTyped();
    const stem = fileStem(), text = routeText(false).text, bytes = (value) => typeof value === 'string' ? new TextEncoder().encode(value) : value;
    const files = [{name: `${stem}.yaml`, bytes: bytes(text)}];
    if (engine) {
        try {
            const wanted = ['pack.html', 'parts.csv', 'diagram.svg', 'plan.xml'];
            const made = await engine.plan(text, wanted, {name: stem, soFar: !state.reached});
            const failing = made.plan?.verdict === 'fail';
            for (const name of wanted.filter((one) => made.documents?.[one])) {
                files.push({name: `${stem}.${failing && name === 'parts.csv' ? 'FAIL.' : ''}${name}`, bytes: bytes(made.documents[name])});
            }
        } catch (fault) {
            note = {text: say('papers-failed', {what: String(fault.message ?? fault)})};
        }
    }
    for (const name of segments().flatMap(photosOf)) {
        const blob = await photoStore.get(name);
        if (blob) {
            files.push({name: `photos/${name}`, bytes: new Uint8Array(await blob.arrayBuffer())});
        }
    }
    return files;
}

async function saveZip() {
    const button = document.getElementById('save-zip');
    if (engine && button) {
        button.textContent = say('papers-wait');
        await new Promise((done) => setTimeout(done, 30));
    }
    const files = await everything();
    download(`${fileStem()}.zip`, new Blob(zipParts(files, new Date()), {type: 'application/zip'}));
    sent();
}

/* A browser shares only just after a tap: where the papers took longer, a second tap shares what the first made. */
let shareReady = null;
async function shareAll() {
    keepTyped();
    if (shareReady?.rev !== state.rev) {
        shareReady = {rev: state.rev, zip: new File(zipParts(await everything(), new Date()), `${fileStem()}.zip`, {type: 'application/zip'})};
        if (navigator.userActivation && !navigator.userActivation.isActive) {
            note = {text: say('share-ready')};
            draw();
            return;
        }
    }
    const {zip} = shareReady;
    const route = new File([routeText(false).text], `${fileStem()}.yaml`, {type: 'text/plain'});
    const files = navigator.canShare({files: [zip]}) ? [zip] : [route];
    try {
        await navigator.share({files, title: String(nodeAt(['job', 'title']) ?? say('title'))});
        sent();
    } catch {
        note = {text: say('share-failed')};
        draw();
    }
}

/* ---- opening ---- */
function treeOf(json) {
    if (json.keys) {
        return {m: json.keys.map(({key, value}) => [key, treeOf(value)])};
    }
    return json.items ? {l: json.items.map(treeOf)} : json.text ?? '';
}

async function openFile(input) {
    const file = input.files[0];
    input.value = '';
    if (!file) {
        return;
    }
    const refuse = (what) => {
        note = {text: say('open-refused', {name: file.name, what})};
        draw();
    };
    if (!engine) {
        note = {text: say('open-no-engine')};
        draw();
        return;
    }
    if (file.size > TEXT_MOST) {
        refuse(say('open-too-large'));
        return;
    }
    const bytes = new Uint8Array(await file.arrayBuffer());
    try {
        const made = await engine.tree(bytes);
        const fault = made.diagnostics?.find((one) => one.severity === 'error');
        if (fault || !made.tree?.keys) {
            refuse(fault?.message ?? say('open-not-text'));
            return;
        }
        const doc = treeOf(made.tree), version = entry(doc, 'wend')?.[1];
        if (version !== undefined && version !== '1') {
            refuse(say('open-newer', {n: version}));
            return;
        }
        takeRoute(doc, file.name, new TextDecoder().decode(bytes));
    } catch (fault) {
        refuse(String(fault.message ?? fault));
    }
}

function takeRoute(doc, name, text) {
    change(() => {
        const list = entry(doc, 'segments')?.[1]?.l ?? [];
        for (const segment of list) {
            segment.id = state.next++;
        }
        const runs = (entry(doc, 'runs')?.[1]?.m ?? []).filter(([, run]) => run.m);
        const power = runs.find(([, run]) => (textAt(run, 'kind') ?? 'power') === 'power') ?? runs[0];
        state.doc = doc;
        state.run = power?.[0] ?? 'feeder';
        state.reached = entry(doc, 'complete')?.[1] !== 'no';
        state.skipped = {};
    });
    state.sent = null;
    state.at = {card: 'review', field: null, view: 'card'};
    note = {text: say(/(^|\s)#/m.test(text) ? 'opened-comments' : 'opened', {name, n: segments().length}), undo: true};
    keepNow();
    draw(true);
}

/* ---- photos of a segment ---- */
const photoRow = () => segmentRow('photo', 'photos');

function photosOf(segment) {
    const row = photoRow(), node = row ? entry(segment, row.key)?.[1] : undefined;
    return row ? (node?.l ?? (typeof node === 'string' ? [node] : [])).filter((one) => typeof one === 'string') : segment.photos ?? [];
}

function setPhotos(segment, names) {
    const row = photoRow();
    if (!row) {
        segment.photos = names;
    } else {
        setOrDrop(segment, row.key, names.length === 0 ? undefined : row.shape === 'list' || names.length > 1 ? {l: names} : names[0]);
    }
}

async function addPhoto(input) {
    const file = input.files[0], segment = segmentOf(state.at.card);
    input.value = '';
    if (!file || !segment) {
        return;
    }
    let blob;
    try {
        blob = await photoShrunk(file);
    } catch {
        note = {text: say('photo-bad')};
        draw();
        return;
    }
    const stem = textAt(segment, 'name').normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-').replace(/^-+|-+$/g, '') || 'segment';
    const taken = new Set(segments().flatMap(photosOf));
    let number = 1;
    while (taken.has(`${stem}-${number}.jpg`)) {
        number++;
    }
    const name = `${stem}-${number}.jpg`;
    const isKept = await photoStore.put(name, blob);
    change(() => setPhotos(segment, [...photosOf(segment), name]), isKept ? say('photo-added', {name, segment: textAt(segment, 'name')}) : say('photo-memory'));
    draw();
}

function thumb(name, card) {
    const image = h('img', {alt: name});
    photoStore.get(name).then((blob) => {
        if (blob) {
            image.src = URL.createObjectURL(blob);
        }
    });
    return h('figure', {}, image, h('figcaption', {}, name), h('button', {type: 'button', onclick: () => {
        change(() => setPhotos(segmentOf(card), photosOf(segmentOf(card)).filter((one) => one !== name)), say('photo-removed', {name}));
        draw();
    }}, say('photo-remove')));
}
