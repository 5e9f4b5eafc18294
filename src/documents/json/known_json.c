/* What is known of one cable, and the figures of tables, as JSON. */
#include "documents/documents.h"
#include "documents/shown_private.h"

#include "json_out.h"

#include <string.h>

static void add_source(struct JsonOut *out, struct JsonNode *node, const struct KnownSource *source)
{
    json_text(out, node, "source", source->standard);
    json_text(out, node, "table", source->table);
    json_text(out, node, "trust", source->trust);
}

/* A figure as digits, anything else as text; a blank cell is "". */
static void add_cell(struct JsonOut *out, struct JsonNode *row, const char *cell)
{
    if (*cell != '\0' && strspn(cell, "0123456789.") == strlen(cell)) {
        json_digits(out, row, "", cell);
    } else {
        json_text(out, row, "", cell);
    }
}

static const char *add_line(struct Arena *arena, struct JsonOut *out, struct JsonNode *list, const char *at)
{
    for (;;) {
        const size_t length = strcspn(at, ",\n");
        add_cell(out, list, arena_print(arena, "%.*s", (int)length, at));
        at += length;
        if (*at != ',') {
            return *at == '\n' ? at + 1 : at;
        }
        at++;
    }
}

struct Bytes document_tables_json(struct Arena *arena, const struct KnownTable *tables, int count)
{
    struct JsonOut *out = json_out_new(arena);
    struct JsonNode *all = json_list(out, json_root(out), "tables");
    for (int i = 0; i < count; i++) {
        struct JsonNode *node = json_object(out, all, "");
        add_source(out, node, &tables[i].source);
        json_text(out, node, "title", tables[i].title);
        const char *at = add_line(arena, out, json_list(out, node, "columns"), tables[i].cells);
        struct JsonNode *rows = json_list(out, node, "rows");
        while (*at != '\0') {
            at = add_line(arena, out, json_list(out, rows, ""), at);
        }
    }
    return json_out_finish(out);
}

struct Bytes document_cable_json(struct Arena *arena, const struct KnownCable *cable)
{
    struct JsonOut *out = json_out_new(arena);
    struct JsonNode *root = json_root(out);
    json_text(out, root, "cable", shown_said(arena, cable->heading));
    struct JsonNode *figures = json_list(out, root, "figures");
    for (int i = 0; i < cable->count; i++) {
        const struct KnownFigure *figure = &cable->figures[i];
        struct JsonNode *node = json_object(out, figures, "");
        json_text(out, node, "what", shown_said(arena, figure->what));
        if (figure->name != NULL) {
            json_text(out, node, "figure", figure->name);
        } else {
            json_number(out, node, "figure", figure->value);
            json_text_if(out, node, "unit", shown_unit(arena, figure->unit));
        }
        add_source(out, node, &figure->source);
    }
    json_text_if(out, root, "not-known", shown_said(arena, cable->unknown));
    json_text_if(out, root, "not-for", shown_said(arena, cable->not_for));
    json_text(out, root, "remark", shown_said(arena, cable->remark));
    return json_out_finish(out);
}
