/* Keeping: after each change in this browser's storage, if it may. A page opened from disk shares its storage with all
 * other pages opened from disk, so it asks first. Photos lie in a database beside it. */
const KEEP = 'wend-survey', KEEP_UNDO = 'wend-survey-undo', KEEP_ALLOWED = 'wend-survey-allowed', UNDO_ROOM = 400000;
const TAB = Math.random().toString(36).slice(2);
const fromDisk = location.protocol === 'file:';
let keepAllowed = !fromDisk, storageFull = false, storageNone = false, otherTab = null, kept = null, keepTimer = null;

function stored(key) {
    try {
        return localStorage.getItem(key);
    } catch {
        storageNone = true;
        return null;
    }
}

function loadKept() {
    keepAllowed = !fromDisk || stored(KEEP_ALLOWED) === 'yes';
    const text = keepAllowed ? stored(KEEP) : null;
    if (!text) {
        return;
    }
    try {
        const found = JSON.parse(text);
        if (found.state.version > TREE_VERSION) {
            kept = {newer: text};
            return;
        }
        state = {...FRESH(), ...found.state};
        undoPile = JSON.parse(stored(KEEP_UNDO) ?? '[]');
        kept = {};
    } catch { // what was kept cannot be read: it stays there, and is shown as text
        kept = {newer: text};
    }
}

function keepSoon() {
    keepNow();
}

function keepNow(force) {
    if (!keepAllowed || kept?.newer || state.at.card === 'start' || (otherTab && !force)) {
        return;
    }
    try {
        const there = force ? null : localStorage.getItem(KEEP);
        if (there) {
            const mark = /^\{"tab":"(\w+)","rev":(\d+)/.exec(there);
            if (mark && mark[1] !== TAB && Number(mark[2]) > state.rev) {
                otherTab = there;
                return;
            }
        }
        const text = JSON.stringify({tab: TAB, rev: state.rev, state});
        try {
            localStorage.setItem(KEEP, text);
        } catch {
            localStorage.removeItem(KEEP_UNDO); // the survey itself comes before what can be taken back
            localStorage.setItem(KEEP, text);
        }
        storageFull = false;
        keepUndo();
    } catch {
        storageFull = true;
    }
}

function keepUndo() {
    let room = UNDO_ROOM, from = undoPile.length;
    while (from > 0 && room > undoPile[from - 1].length) {
        room -= undoPile[--from].length;
    }
    try {
        localStorage.setItem(KEEP_UNDO, JSON.stringify(undoPile.slice(from)));
    } catch { /* without what can be taken back after a reload */ }
}

function allowKeeping(allowed) {
    keepAllowed = allowed;
    if (allowed) {
        try {
            localStorage.setItem(KEEP_ALLOWED, 'yes');
        } catch {
            storageNone = true;
        }
        keepNow();
    }
}

addEventListener('storage', (event) => {
    if (event.key === KEEP && event.newValue && !event.newValue.startsWith(`{"tab":"${TAB}"`) && state.at.card !== 'start' && keepAllowed) {
        otherTab = event.newValue;
        draw();
    }
});

function showOther() {
    state = {...FRESH(), ...JSON.parse(otherTab).state};
    undoPile = JSON.parse(stored(KEEP_UNDO) ?? '[]');
    otherTab = null;
    note = null;
    planSoon();
}

/* The other tab's survey goes on the undo pile, so that nothing is lost. */
function goOnHere() {
    const other = JSON.parse(otherTab);
    const {doc, reached, skipped, next, at, run, again} = other.state;
    undoPile.push(JSON.stringify({doc, reached, skipped, next, at, run, again}));
    state.rev = Math.max(state.rev, other.rev) + 1;
    otherTab = null;
    keepNow(true);
}

async function wipe() {
    for (const key of [KEEP, KEEP_UNDO]) {
        try {
            localStorage.removeItem(key);
        } catch { /* nothing is kept there then */ }
    }
    await photoStore.clear();
    const {mode, left} = state;
    state = {...FRESH(), mode, left};
    undoPile = [];
    redo = null;
    kept = null;
    storageFull = false;
    note = {text: say('wiped')};
    planSoon();
}

/* ---- photos: name -> Blob ---- */
const photoStore = {
    memory: new Map(),
    open() {
        return new Promise((done, failed) => {
            const asked = indexedDB.open('wend-survey', 1);
            asked.onupgradeneeded = () => asked.result.createObjectStore('photos');
            asked.onsuccess = () => done(asked.result);
            asked.onerror = () => failed(asked.error);
        });
    },
    async run(mode, make) {
        const base = await this.open();
        try {
            return await new Promise((done, failed) => {
                const step = base.transaction('photos', mode);
                const asked = make(step.objectStore('photos'));
                step.oncomplete = () => done(asked.result);
                step.onerror = step.onabort = () => failed(step.error);
            });
        } finally {
            base.close();
        }
    },
    /* False when it is held in memory only. */
    async put(name, blob) {
        this.memory.set(name, blob);
        if (!keepAllowed) {
            return true;
        }
        try {
            await this.run('readwrite', (photos) => photos.put(blob, name));
            return true;
        } catch {
            return false;
        }
    },
    async get(name) {
        if (!this.memory.has(name) && keepAllowed) {
            try {
                const blob = await this.run('readonly', (photos) => photos.get(name));
                if (blob) {
                    this.memory.set(name, blob);
                }
            } catch { /* it is missing then */ }
        }
        return this.memory.get(name);
    },
    async clear() {
        this.memory.clear();
        try {
            await this.run('readwrite', (photos) => photos.clear());
        } catch { /* nothing was there */ }
    }
};

const PHOTO_SIDE = 1600;
/* Drawn anew: smaller, and without the place where it was taken. */
async function photoShrunk(file) {
    const picture = await createImageBitmap(file, {imageOrientation: 'from-image'});
    const scale = Math.min(1, PHOTO_SIDE / Math.max(picture.width, picture.height));
    const canvas = h('canvas', {width: Math.max(1, Math.round(picture.width * scale)), height: Math.max(1, Math.round(picture.height * scale))});
    canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    return new Promise((done, failed) => canvas.toBlob((blob) => blob ? done(blob) : failed(new Error('no picture')), 'image/jpeg', 0.8));
}
