/* A zip archive whose files are stored as they are: what is in it is small, or packed already. Names are UTF-8 (bit 11). */
const zipTable = Uint32Array.from({length: 256}, (_, n) => {
    for (let bit = 0; bit < 8; bit++) {
        n = n & 1 ? 0xedb88320 ^ (n >>> 1) : n >>> 1;
    }
    return n >>> 0;
});

function zipSum(bytes) {
    let sum = 0xffffffff;
    for (const one of bytes) {
        sum = zipTable[(sum ^ one) & 255] ^ (sum >>> 8);
    }
    return (sum ^ 0xffffffff) >>> 0;
}

/* files: [{name, bytes: Uint8Array}], when: Date. Gives a list of parts for a Blob. */
function zipParts(files, when) {
    const time = when.getHours() << 11 | when.getMinutes() << 5 | when.getSeconds() >> 1;
    const day = Math.max(0, when.getFullYear() - 1980) << 9 | when.getMonth() + 1 << 5 | when.getDate();
    const record = (...pairs) => {
        const bytes = new Uint8Array(pairs.reduce((sum, [size]) => sum + size, 0));
        const view = new DataView(bytes.buffer);
        let at = 0;
        for (const [size, value] of pairs) {
            size === 4 ? view.setUint32(at, value, true) : view.setUint16(at, value, true);
            at += size;
        }
        return bytes;
    };
    const parts = [], index = [];
    let offset = 0;
    for (const file of files) {
        const name = new TextEncoder().encode(file.name), size = file.bytes.length;
        const common = [[2, 20], [2, 0x0800], [2, 0], [2, time], [2, day], [4, zipSum(file.bytes)], [4, size], [4, size], [2, name.length], [2, 0]];
        const local = record([4, 0x04034b50], ...common);
        parts.push(local, name, file.bytes);
        index.push(record([4, 0x02014b50], [2, 20], ...common, [2, 0], [2, 0], [2, 0], [4, 0], [4, offset]), name);
        offset += local.length + name.length + size;
    }
    const length = index.reduce((sum, part) => sum + part.length, 0);
    return [...parts, ...index, record([4, 0x06054b50], [2, 0], [2, 0], [2, files.length], [2, files.length], [4, length], [4, offset], [2, 0])];
}
