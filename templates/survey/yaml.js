/* A route as a tree: a text, {m: [[key, node], ...]} or {l: [node, ...]}. Other names in a map or list are the page's own
 * and are not written. It is written in block style, one value a line, so that a line of a message tells its field. */

/* What a reader of YAML might take for something other than text. */
const YAML_NO_TEXT = /^(y|n|yes|no|on|off|true|false|null|~|[-+.]?[0-9][0-9a-fx_.:e+-]*|[-+]?\.(inf|nan))$/i;
const YAML_PLAIN = /^(?:[A-Za-z0-9]|-[0-9])[A-Za-z0-9 .+/%()=-]*$/;
const YAML_KEY = /^[A-Za-z][A-Za-z0-9_-]*$/;

function yamlQuoted(text) {
    const whole = text.toWellFormed ? text.toWellFormed() : text.replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd');
    return JSON.stringify(whole).replace(/[\u007f-\u009f\u00ad\u2028\u2029\ufeff]/g, (one) => '\\u' + one.charCodeAt(0).toString(16).padStart(4, '0'));
}

function yamlScalar(text, isText) {
    const plain = YAML_PLAIN.test(text) && !text.endsWith(' ') && !(isText && YAML_NO_TEXT.test(text));
    return plain ? text : yamlQuoted(text);
}

/* {text, places}: places[line - 1] is the path of what the line holds. isText(path) tells a text from a figure or a word. */
function yamlWrite(root, isText = () => true) {
    const lines = [], places = [];
    const add = (line, path) => { lines.push(line); places.push(path); };
    const inline = (node, path) => typeof node === 'string' ? ' ' + yamlScalar(node, isText(path))
        : node.m && node.m.length === 0 ? ' {}' : node.l && node.l.length === 0 ? ' []' : null;
    const write = (node, path, indent, lead) => {
        const pad = ' '.repeat(indent);
        if (node.m) {
            node.m.forEach(([key, value], i) => {
                const at = [...path, key];
                const before = (i === 0 && lead !== null ? lead : pad) + (YAML_KEY.test(key) && !YAML_NO_TEXT.test(key) ? key : yamlQuoted(key)) + ':';
                const short = inline(value, at);
                add(before + (short ?? ''), at);
                if (short === null) {
                    write(value, at, indent + 2, null);
                }
            });
            return;
        }
        node.l.forEach((value, i) => {
            const at = [...path, i];
            const short = inline(value, at);
            if (short !== null) {
                add(pad + '-' + short, at);
            } else if (value.l) {
                add(pad + '-', at);
                write(value, at, indent + 2, null);
            } else {
                write(value, at, indent + 2, pad + '- ');
            }
        });
    };
    write(root, [], 0, null);
    return {text: lines.join('\n') + '\n', places};
}
