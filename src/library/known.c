/* What the program knows without a route: its language, its tables, the nearest of some words. */
#include "library_private.h"

#include "design/design.h"
#include "read/read.h"
#include "tables/tables.h"

#include <stdlib.h>
#include <string.h>

char *library_keep(struct Arena *arena, const char *text)
{
    const size_t size = strlen(text) + 1;
    char *copy = arena_failed(arena) ? NULL : malloc(size);
    if (copy != NULL) {
        memcpy(copy, text, size);
    }
    return copy;
}

char *wend_manual(void)
{
    struct Arena *arena = arena_new();
    if (arena == NULL) {
        return NULL;
    }
    char *manual = library_keep(arena, read_manual(arena));
    arena_free(arena);
    return manual;
}

const char *wend_message_name(int index)
{
    return index >= 0 && index < MSG_COUNT ? diag_name((enum DiagCode)index) : "";
}

const char *wend_message_text(int index)
{
    return index >= 0 && index < MSG_COUNT ? diag_template((enum DiagCode)index) : "";
}

bool wend_message_warns(int index)
{
    return index >= 0 && index < MSG_COUNT && diag_severity((enum DiagCode)index) == DIAG_WARNING;
}

const char *wend_check_kind(int index)
{
    struct Check check;
    return design_check_kind(index, &check) ? check.kind : "";
}

char *wend_check_kind_text(const char *name)
{
    struct Check check;
    int index = 0;
    bool found = false;
    while (!found && design_check_kind(index, &check)) {
        found = text_same(check.kind, library_text(name));
        index++;
    }
    struct Arena *arena = found ? arena_new() : NULL;
    if (arena == NULL) {
        return NULL;
    }
    char *text = library_keep(
        arena, document_words(arena, say(arena, SAY_KNOWN_CHECK, say_name(check.kind), say_term(check.title),
                                         say_part(check_source_said(arena, &check)))));
    arena_free(arena);
    return text;
}

const char *wend_table_name(int index)
{
    const struct TableRef *ref = tables_at(index);
    return ref == NULL ? "" : ref->table;
}

const char *wend_cable_kind(int index)
{
    return index >= 0 && index < survey_word_count(WORDS_CABLE) ? survey_word(WORDS_CABLE, index) : "";
}

void wend_text_free(char *text)
{
    free(text);
}

int wend_table_count(void)
{
    return tables_count();
}

char *wend_table_line(int index)
{
    const struct TableRef *ref = tables_at(index);
    struct Arena *arena = ref == NULL ? NULL : arena_new();
    if (arena == NULL) {
        return NULL;
    }
    char *line = library_keep(arena, arena_print(arena, "%s  Table %s  %s  [%s]", table_standard(arena, ref),
                                                 ref->table, ref->title, ref->seen));
    arena_free(arena);
    return line;
}

const char *wend_spoken(const char *word)
{
    return read_spoken(library_text(word));
}

bool wend_looks_same(const char *a, const char *b)
{
    return text_order_seen(library_text(a), library_text(b)) == 0;
}

const char *wend_nearest(const char *written, const char *const *words, size_t count)
{
    return words == NULL ? "" : read_nearest(library_text(written), words, count);
}
