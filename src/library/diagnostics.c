/* The one way to hear what is wrong, whatever it is wrong with. */
#include "library_private.h"

_Static_assert((int)WEND_WARNING == (int)DIAG_WARNING && (int)WEND_ERROR == (int)DIAG_ERROR, "two lists of one thing");

struct WendDiagnostics diagnostics_new(struct Arena *arena, struct Bytes source)
{
    return (struct WendDiagnostics){.diag = diag_new(arena), .arena = arena, .source = source};
}

const struct WendDiagnostics *diagnostics_shown(const struct WendDiagnostics *diagnostics)
{
    return diagnostics->diag == NULL ? NULL : diagnostics;
}

size_t wend_diagnostics_count(const struct WendDiagnostics *diagnostics)
{
    return diagnostics == NULL ? 0 : diag_count(diagnostics->diag);
}

/* NULL when there is none of that number. */
static const struct Diagnostic *at(const struct WendDiagnostics *diagnostics, size_t index)
{
    return index < wend_diagnostics_count(diagnostics) ? diag_at(diagnostics->diag, index) : NULL;
}

const char *wend_diagnostic_name(const struct WendDiagnostics *diagnostics, size_t index)
{
    const struct Diagnostic *one = at(diagnostics, index);
    return one == NULL ? "" : diag_name(one->code);
}

enum WendSeverity wend_diagnostic_severity(const struct WendDiagnostics *diagnostics, size_t index)
{
    const struct Diagnostic *one = at(diagnostics, index);
    return one == NULL ? WEND_WARNING : (enum WendSeverity)one->severity;
}

int wend_diagnostic_line(const struct WendDiagnostics *diagnostics, size_t index)
{
    const struct Diagnostic *one = at(diagnostics, index);
    return one == NULL || diag_word_at(diagnostics->diag, one->mark) != NULL ? 0 : one->mark.line;
}

int wend_diagnostic_column(const struct WendDiagnostics *diagnostics, size_t index)
{
    const struct Diagnostic *one = at(diagnostics, index);
    return one == NULL || diag_word_at(diagnostics->diag, one->mark) != NULL ? 0 : one->mark.column;
}

const char *wend_diagnostic_text(const struct WendDiagnostics *diagnostics, size_t index)
{
    const struct Diagnostic *one = at(diagnostics, index);
    return one == NULL ? "" : one->text;
}

const char *wend_diagnostics_printed(const struct WendDiagnostics *diagnostics, const char *file)
{
    if (diagnostics == NULL) {
        return "";
    }
    const char *name = diagnostics->file != NULL ? diagnostics->file : library_text(file);
    const char *text = diag_print(diagnostics->diag, diagnostics->arena, name, diagnostics->source);
    return diagnostics->after == NULL ? text : arena_print(diagnostics->arena, "%s%s", text, diagnostics->after);
}

/* An arena of its own, for a handle that is NULL or whose memory ran out. */
char *wend_check_json(const struct Wend *wend, const char *file)
{
    struct Arena *arena = arena_new();
    if (arena == NULL) {
        return NULL;
    }
    struct Told told[3];
    int count = 0;
    if (wend_diagnostics(wend) != NULL) {
        told[count++] =
            (struct Told){wend->told.diag, library_text(file), key_paths(arena, wend->told.diag, wend->told.source)};
    }
    if (wend_prices_diagnostics(wend) != NULL) {
        told[count++] = (struct Told){wend->prices_told.diag, library_text(wend->prices_name), NULL};
    }
    if (wend_labour_diagnostics(wend) != NULL) {
        told[count++] = (struct Told){wend->labour_told.diag, library_text(wend->labour_name), NULL};
    }
    const struct Bytes made =
        document_check_json(arena, library_text(file), (int)wend_status(wend), library_plan(wend), told, count);
    char *text = made.data == NULL ? NULL : library_keep(arena, made.data);
    arena_free(arena);
    return text;
}
