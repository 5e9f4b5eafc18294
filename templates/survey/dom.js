/* Elements without markup in texts: whatever a text holds, it stays text. */
const SVG = 'http://www.w3.org/2000/svg';

function fill(element, attributes, children) {
    for (const [name, value] of Object.entries(attributes || {})) {
        if (value === undefined || value === null || value === false) {
            continue;
        }
        if (name.startsWith('on')) {
            element.addEventListener(name.slice(2), value);
        } else {
            element.setAttribute(name, value === true ? '' : value);
        }
    }
    for (const child of children.flat(3)) {
        if (child !== null && child !== undefined && child !== false && child !== '') {
            element.append(child); // a string becomes a text node
        }
    }
    return element;
}
const h = (tag, attributes, ...children) => fill(document.createElement(tag), attributes, children);
const svg = (tag, attributes, ...children) => fill(document.createElementNS(SVG, tag), attributes, children);

function put(id, ...children) {
    document.getElementById(id).replaceChildren(...children.flat(2).filter(Boolean));
}

/* loft-void -> loft void; TN-C-S and BS6004-flat stay. */
const spoken = (word) => /^[a-z]+(-[a-z]+)+$/.test(word) ? word.replace(/-/g, ' ') : word;
const clockNow = () => new Date().toTimeString().slice(0, 5);
const dayOf = (date) => `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;
