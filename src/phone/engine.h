/** The planner for a browser: the library behind a few functions that take bytes and give bytes, built by clang and
 * wasi-libc (preset `phone`). engine.js is its other half; a page uses that alone.
 *
 * What a page sees of it, all of it synchronous, the same in a page, a worker and node 18 or later:
 *
 *     const wendEngine = await wendEngineFrom(bytes);   // of engine.wasm: a Uint8Array or an ArrayBuffer
 *     wendEngine.version                                // "1.0.0"
 *     wendEngine.language()                             // the object of wend_language_json()
 *     wendEngine.tree(yaml)                             // the object of wend_tree_json()
 *     wendEngine.check(yaml, {name, soFar})             // the object of wend_check_json()
 *     wendEngine.plan(yaml, wanted, {name, soFar, prices, language})
 *     wendEngine.printed(yaml, {name, file, soFar})     // its faults as the program prints them
 *
 * `yaml` is the file's bytes (a Uint8Array, which is not changed) or a string. Hand over the bytes of a file that
 * somebody opened, never its text: a browser puts other letters in place of bytes that are no UTF-8, and the engine
 * would not see what is wrong. `name` is what the plan calls the route, "route" without one. `soFar: true` plans as if
 * the file said `complete: no`: the verdict is then never PASS. `prices` is the text or the bytes of a price list,
 * `language` "en" or "pl", of what the crew reads.
 *
 * check() gives {file, status, verdict, "verdict-text", open, diagnostics}; verdict is "pass", "open" or "fail". Status
 * 0: planned, no check fails; 1: a check fails; 2: the file is wrong, and there is no verdict. Each of the diagnostics
 * has file, line, column, severity
 * ("error", "warning"), name, message, suggestion where there is one, and path: the way from the top of the file to the
 * key that it is about, ["segments", 2, "length"], numbers from 0 on; a key that is missing is its last step. Show it
 * at that field. The language says the same places as "in": "segments[]", "key": "length".
 *
 * plan() gives {status, check, plan, documents, prices}: check as above; plan the object of plan.json (verdict, runs,
 * limiting segments, assumptions ...: routes/plan-format.md), null without one; prices the name of the price list that
 * the route asks for, "" for none; documents, by name, the bytes (Uint8Array) of each that `wanted` names and that
 * could be made:
 *
 *     "diagram.svg" "narrow.svg" (for a phone) "plan.xml" "plan.json" "parts.csv" "summary.txt"
 *     "brief.html" "card.html" "parts.html" "design.html" "test.html" "pack.html" (papers: slow, ask when wanted)
 *
 * Each plans anew: ask once after a change, plan(yaml, ["narrow.svg"]) being enough for a screen. A call throws an
 * Error where memory ran out; the next one begins in a fresh memory, so that nothing is lost but that answer. */
#ifndef WEND_ENGINE_H
#define WEND_ENGINE_H

#include <stddef.h>
#include <stdint.h>

#ifdef __wasm__
#define ENGINE_EXPORT(name) __attribute__((export_name(#name)))
#else
#define ENGINE_EXPORT(name)
#endif

/** What came out; it stays until something else is asked of the route. `data` is NULL when it could not be made. */
struct EngineBytes {
    const char *data;
    size_t length;
};

/** Room in the engine's memory for bytes to hand in; NULL without memory. */
ENGINE_EXPORT(engine_room) void *engine_room(size_t length);
ENGINE_EXPORT(engine_room_end) void engine_room_end(void *room);

ENGINE_EXPORT(engine_version) const char *engine_version(void);
/** These two give a text that ends in NUL, to be ended as room is; NULL without memory. */
ENGINE_EXPORT(engine_language) char *engine_language(void);
ENGINE_EXPORT(engine_tree) char *engine_tree(const char *text, size_t length);

struct EngineRoute;
/** NULL only without memory. `name` and `language` end in NUL. */
ENGINE_EXPORT(engine_plan)
struct EngineRoute *engine_plan(const char *name, const char *text, size_t length, int so_far);
ENGINE_EXPORT(engine_plan_end) void engine_plan_end(struct EngineRoute *route);
/** enum WendStatus */
ENGINE_EXPORT(engine_status) int engine_status(const struct EngineRoute *route);
ENGINE_EXPORT(engine_check) const struct EngineBytes *engine_check(struct EngineRoute *route, const char *file);
ENGINE_EXPORT(engine_printed) const struct EngineBytes *engine_printed(struct EngineRoute *route, const char *file);
ENGINE_EXPORT(engine_prices_name) const char *engine_prices_name(const struct EngineRoute *route);
ENGINE_EXPORT(engine_price) int engine_price(struct EngineRoute *route, const char *text, size_t length);
/** 1 when the language is known. */
ENGINE_EXPORT(engine_use_language) int engine_use_language(struct EngineRoute *route, const char *code);
/** By one of the names above; data is NULL for another. */
ENGINE_EXPORT(engine_document)
const struct EngineBytes *engine_document(struct EngineRoute *route, const char *name);

#endif
