/* The engine (engine.wasm) for a page, a worker or node; engine.h says what it offers. No import does anything: the engine
 * opens no file, reads no clock and asks nothing of the network. */
'use strict';
const wendEngineFrom = async bytes => {
    const compiled = await WebAssembly.compile(bytes);
    const MEMORY_MOST = 96 * 1024 * 1024; // a large plan leaves its memory behind; beyond this the next begins afresh
    const into = new TextEncoder(), from = new TextDecoder();
    let running = null;

    const begin = () => {
        const imports = {};
        let memory = null;
        const answers = {
            proc_exit: code => { throw new Error('the engine ended with ' + code); },
            environ_sizes_get: (count, size) => {
                const view = new DataView(memory.buffer);
                view.setUint32(count, 0, true);
                view.setUint32(size, 0, true);
                return 0;
            },
            environ_get: () => 0,
            sched_yield: () => 0,
            fd_prestat_get: () => 8, // EBADF: there are no folders
        };
        for (const {module, name} of WebAssembly.Module.imports(compiled)) {
            (imports[module] ??= {})[name] = answers[name] ?? (() => 52); // ENOSYS
        }
        const engine = new WebAssembly.Instance(compiled, imports).exports;
        memory = engine.memory;
        engine._initialize();
        return engine;
    };

    // what is handed in lies in the engine's memory for as long as the call takes
    const using = work => {
        if (running !== null && running.memory.buffer.byteLength > MEMORY_MOST) {
            running = null;
        }
        running ??= begin();
        const engine = running, rooms = [];
        const put = (data, ends) => {
            const given = typeof data === 'string' ? into.encode(data) : new Uint8Array(data);
            const at = engine.engine_room(given.length + 1);
            if (at === 0) {
                throw new Error('the engine has no memory for that');
            }
            rooms.push(at);
            const memory = new Uint8Array(engine.memory.buffer);
            memory.set(given, at);
            memory[at + given.length] = 0;
            return ends ? [at] : [at, given.length];
        };
        const text = at => {
            const memory = new Uint8Array(engine.memory.buffer);
            return from.decode(memory.subarray(at, memory.indexOf(0, at)));
        };
        const out = at => { // a copy of what a struct EngineBytes says, null for none
            const view = new DataView(engine.memory.buffer);
            const data = view.getUint32(at, true), length = view.getUint32(at + 4, true);
            return data === 0 ? null : new Uint8Array(engine.memory.buffer.slice(data, data + length));
        };
        const read = at => {
            const made = out(at);
            if (made === null) {
                throw new Error('the engine has no memory for that');
            }
            return JSON.parse(from.decode(made));
        };
        const parsed = at => {
            if (at === 0) {
                throw new Error('the engine has no memory for that');
            }
            rooms.push(at);
            return JSON.parse(text(at));
        };
        try {
            const result = work({engine, put, text, out, read, parsed});
            rooms.forEach(engine.engine_room_end);
            return result;
        } catch (error) {
            running = null; // whatever stopped it may have left the memory in any state
            throw error;
        }
    };
    const planned = (yaml, options, work) => using(door => {
        const {engine, put} = door;
        const [name] = put(options.name ?? 'route', true);
        const route = engine.engine_plan(name, ...put(yaml), options.soFar ? 1 : 0);
        if (route === 0 || engine.engine_status(route) > 2) {
            throw new Error('the engine has no memory for that');
        }
        const result = work(route, door);
        engine.engine_plan_end(route);
        return result;
    });
    const checked = (route, {engine, put, read}, options) =>
        read(engine.engine_check(route, put(options.file ?? (options.name ?? 'route') + '.yaml', true)[0]));

    return Object.freeze({
        version: using(({engine, text}) => text(engine.engine_version())),
        language: () => using(({engine, parsed}) => parsed(engine.engine_language())),
        tree: yaml => using(({engine, put, parsed}) => parsed(engine.engine_tree(...put(yaml)))),
        check: (yaml, options = {}) => planned(yaml, options, (route, door) => checked(route, door, options)),
        printed: (yaml, options = {}) => planned(yaml, options, (route, {engine, put, out}) =>
            from.decode(out(engine.engine_printed(route, put(options.file ?? (options.name ?? 'route') + '.yaml', true)[0])))),
        plan: (yaml, wanted = [], options = {}) => planned(yaml, options, (route, door) => {
            const {engine, put, text, out} = door;
            const prices = text(engine.engine_prices_name(route));
            if (options.prices !== undefined && prices !== '') {
                engine.engine_price(route, ...put(options.prices));
            }
            if (options.language !== undefined && !engine.engine_use_language(route, put(options.language, true)[0])) {
                throw new Error('no such language: ' + options.language);
            }
            const made = name => out(engine.engine_document(route, put(name, true)[0]));
            const check = checked(route, door, options), documents = {};
            const plan = made('plan.json');
            for (const name of wanted) {
                const bytes = made(name);
                if (bytes !== null) {
                    documents[name] = bytes;
                }
            }
            return {status: check.status, check, plan: plan === null ? null : JSON.parse(from.decode(plan)), documents, prices};
        }),
    });
};
if (typeof module !== 'undefined') {
    module.exports = wendEngineFrom;
}
