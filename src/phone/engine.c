#include "engine.h"

#include "wend/wend.h"

#include <stdlib.h>
#include <string.h>

struct EngineRoute {
    struct Wend *wend;
    char *json;
    struct EngineBytes out;
};

void *engine_room(size_t length)
{
    return malloc(length > 0 ? length : 1);
}

void engine_room_end(void *room)
{
    free(room);
}

const char *engine_version(void)
{
    return wend_version();
}

char *engine_language(void)
{
    return wend_language_json();
}

char *engine_tree(const char *text, size_t length)
{
    return wend_tree_json(text, length);
}

struct EngineRoute *engine_plan(const char *name, const char *text, size_t length, int so_far)
{
    struct EngineRoute *route = calloc(1, sizeof *route);
    if (route == NULL) {
        return NULL;
    }
    route->wend = so_far != 0 ? wend_plan_so_far(name, text, length) : wend_plan(name, text, length);
    return route;
}

void engine_plan_end(struct EngineRoute *route)
{
    if (route != NULL) {
        wend_text_free(route->json);
        wend_free(route->wend);
        free(route);
    }
}

int engine_status(const struct EngineRoute *route)
{
    return (int)wend_status(route->wend);
}

const struct EngineBytes *engine_check(struct EngineRoute *route, const char *file)
{
    wend_text_free(route->json);
    route->json = wend_check_json(route->wend, file);
    route->out = (struct EngineBytes){route->json, route->json == NULL ? 0 : strlen(route->json)};
    return &route->out;
}

const struct EngineBytes *engine_printed(struct EngineRoute *route, const char *file)
{
    const char *text = wend_diagnostics_printed(wend_diagnostics(route->wend), file);
    route->out = (struct EngineBytes){text, strlen(text)};
    return &route->out;
}

const char *engine_prices_name(const struct EngineRoute *route)
{
    return wend_prices_name(route->wend);
}

int engine_price(struct EngineRoute *route, const char *text, size_t length)
{
    return (int)wend_price(route->wend, text, length);
}

int engine_use_language(struct EngineRoute *route, const char *code)
{
    return wend_use_language(route->wend, code);
}

static enum WendDocument document_of(const char *name)
{
    static const struct {
        const char *name;
        enum WendDocument document;
    } names[] = {
        {"diagram.svg", WEND_DIAGRAM_SVG},     {"narrow.svg", WEND_NARROW_SVG},     {"plan.xml", WEND_PLAN_XML},
        {"plan.json", WEND_PLAN_JSON},         {"parts.csv", WEND_PARTS_CSV},       {"summary.txt", WEND_SUMMARY_TEXT},
        {"brief.html", WEND_BRIEF_HTML},       {"card.html", WEND_CARD_HTML},       {"parts.html", WEND_PARTS_HTML},
        {"design.html", WEND_DESIGN_HTML},     {"test.html", WEND_TEST_HTML},       {"pack.html", WEND_PACK_HTML},
        {"readings.html", WEND_READINGS_HTML}, {"as-laid.html", WEND_AS_LAID_HTML},
    };
    _Static_assert(sizeof names / sizeof *names + 1 == (size_t)WEND_DOCUMENT_COUNT, "all but the coloured summary");
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        if (strcmp(names[i].name, name) == 0) {
            return names[i].document;
        }
    }
    return WEND_DOCUMENT_COUNT;
}

const struct EngineBytes *engine_document(struct EngineRoute *route, const char *name)
{
    const struct WendBytes bytes = wend_document(route->wend, document_of(name));
    route->out = (struct EngineBytes){bytes.data, bytes.length};
    return &route->out;
}
