/* All that is known of one cable, for a terminal: figures with the tables that they are from, each once below. */
#include "documents/documents.h"
#include "documents/shown_private.h"

#include <string.h>

enum { SOURCES_MOST = 32, INDENT = 6, LINE_MOST = 78 };

struct Sources {
    const struct KnownSource *list[SOURCES_MOST];
    int count;
};

/* The number that a source has below. */
static int number_of(struct Sources *sources, const struct KnownSource *source)
{
    int at = 0;
    while (at < sources->count && (!text_same(sources->list[at]->standard, source->standard) ||
                                   !text_same(sources->list[at]->table, source->table))) {
        at++;
    }
    if (at == sources->count && at < SOURCES_MOST) {
        sources->list[sources->count++] = source;
    }
    return at + 1;
}

static const char *figure_shown(struct Arena *arena, const struct KnownFigure *figure)
{
    enum { DIGITS = 6 };
    return figure->name != NULL ? figure->name
                                : shown_said(arena, say_alone(arena, say_digits(figure->value, DIGITS, figure->unit)));
}

/* Words from a column on, wrapped. */
static void add_wrapped(struct TextBuilder *out, size_t indent, const char *text)
{
    size_t column = indent;
    while (*text != '\0') {
        const size_t length = strcspn(text, " ");
        if (column > indent && column + 1 + length > LINE_MOST) {
            text_print(out, "\n%*s", (int)indent, "");
            column = indent;
        } else if (column > indent) {
            text_add_char(out, ' ');
            column++;
        }
        text_add_bytes(out, text, length);
        column += length;
        text += length + (text[length] == ' ');
    }
    text_add_char(out, '\n');
}

static void add_said(struct TextBuilder *out, const struct Say *said)
{
    if (said != NULL) {
        text_add_char(out, '\n');
        add_wrapped(out, 0, shown_said(out->arena, said));
    }
}

const char *document_cable_text(struct Arena *arena, const struct KnownCable *cable)
{
    struct Sources sources = {.count = 0};
    struct TextBuilder out = text_builder(arena);
    add_wrapped(&out, 0, shown_said(arena, cable->heading));
    text_add_char(&out, '\n');
    for (int i = 0; i < cable->count; i++) {
        const struct KnownFigure *figure = &cable->figures[i];
        text_print(&out, "  %-36s%-14s[%d]\n", shown_said(arena, figure->what), figure_shown(arena, figure),
                   number_of(&sources, &figure->source));
    }
    text_add(&out, "\n");
    for (int i = 0; i < sources.count; i++) {
        const struct KnownSource *source = sources.list[i];
        text_print(&out, " %*s ", INDENT - 2, arena_print(arena, "[%d]", i + 1));
        add_wrapped(&out, INDENT, arena_print(arena, "%s, %s: %s", source->standard, source->table, source->trust));
    }
    add_said(&out, cable->unknown);
    add_said(&out, cable->not_for);
    add_said(&out, cable->remark);
    return text_done(&out);
}
