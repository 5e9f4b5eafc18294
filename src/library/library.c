/* The public face: one route in memory, from text to documents. The order of the stages stands in wend_plan(). */
#include "library_private.h"

#include "buying/buying.h"
#include "design/design.h"
#include "read/read.h"
#include "tables/tables.h"

#include <stdlib.h>
#include <string.h>

/* Until a price list is handed in the list says that it was not. */
static const struct PartsList *not_priced(struct Arena *arena, const struct PartsList *parts, const char *file)
{
    if (parts == NULL || file == NULL || *file == '\0') {
        return parts;
    }
    struct PartsList *said = arena_alloc(arena, sizeof *said);
    if (said != NULL) {
        *said = *parts;
        said->prices_note = arena_print(arena, "the price list %s was not read: nothing is priced", file);
    }
    return said;
}

static void plan_route(struct Wend *wend, const char *name)
{
    const struct Survey *survey = read_survey(wend->arena, wend->diag, wend->source);
    if (survey == NULL) {
        return;
    }
    const struct Plan *plan = design_plan(wend->arena, wend->diag, survey, name);
    if (plan == NULL) {
        return;
    }
#ifndef NDEBUG
    if (plan_check(plan) != NULL) {
        abort(); /* a fault of this program; debug builds stop where it is */
    }
#endif
    const struct PartsList *counted = parts_count(wend->arena, plan);
    const struct PartsList *bought = counted != NULL ? parts_bought(wend->arena, counted) : NULL;
    wend->parts = not_priced(wend->arena, bought, survey->parts.prices);
    wend->plan = wend->parts != NULL ? plan : NULL;
}

struct Wend *wend_plan(const char *name, const char *text, size_t length)
{
    struct Wend *wend = calloc(1, sizeof *wend);
    if (wend == NULL) {
        return NULL;
    }
    wend->arena = arena_new();
    if (wend->arena == NULL) {
        free(wend);
        return NULL;
    }
    wend->diag = diag_new(wend->arena);
    wend->source = (struct Bytes){arena_text(wend->arena, text, length), length};
    if (!arena_failed(wend->arena)) {
        plan_route(wend, name);
    }
    return wend;
}

void wend_free(struct Wend *wend)
{
    if (wend != NULL) {
        arena_free(wend->arena);
        free(wend);
    }
}

enum WendStatus wend_status(const struct Wend *wend)
{
    if (wend == NULL || arena_failed(wend->arena)) {
        return WEND_NO_MEMORY;
    }
    if (wend->plan == NULL) {
        return WEND_INPUT_WRONG;
    }
    return wend->plan->pass ? WEND_PASSES : WEND_CHECK_FAILS;
}

enum Verdict wend_verdict(const struct Wend *wend)
{
    return wend_status(wend) > WEND_CHECK_FAILS ? VERDICT_FAIL : wend->plan->verdict;
}

size_t wend_diagnostic_count(const struct Wend *wend)
{
    return wend->diag == NULL ? 0 : diag_count(wend->diag);
}

const struct Diagnostic *wend_diagnostic(const struct Wend *wend, size_t index)
{
    return diag_at(wend->diag, index);
}

const char *wend_diagnostic_name(const struct Diagnostic *diagnostic)
{
    return diag_name(diagnostic->code);
}

const char *wend_diagnostics_text(struct Wend *wend, const char *file)
{
    return wend->diag == NULL ? "" : diag_print(wend->diag, wend->arena, file, wend->source);
}

const struct Plan *wend_result(const struct Wend *wend)
{
    return wend->plan;
}

const struct PartsList *wend_parts(const struct Wend *wend)
{
    return wend->parts;
}

const char *wend_prices_name(const struct Wend *wend)
{
    return wend->plan == NULL || wend->plan->survey->parts.prices == NULL ? "" : wend->plan->survey->parts.prices;
}

enum WendStatus wend_price(struct Wend *wend, const char *text, size_t length)
{
    if (wend_status(wend) > WEND_CHECK_FAILS) {
        return wend_status(wend);
    }
    wend->prices_diag = diag_new(wend->arena);
    wend->prices_source = (struct Bytes){arena_text(wend->arena, text, length), length};
    const struct PriceList *prices =
        arena_failed(wend->arena) ? NULL : read_prices(wend->arena, wend->prices_diag, wend->prices_source);
    wend->parts = prices != NULL ? parts_priced(wend->arena, wend->parts, prices) : NULL;
    wend->plan = wend->parts != NULL ? wend->plan : NULL;
    wend->prices = prices;
    wend->papers_made = false; /* they say what is priced */
    return wend_status(wend);
}

const char *wend_prices_text(struct Wend *wend, const char *file)
{
    return wend->prices_diag == NULL ? "" : diag_print(wend->prices_diag, wend->arena, file, wend->prices_source);
}

struct Bytes wend_document(struct Wend *wend, enum WendDocument document)
{
    if (wend->plan == NULL) {
        return (struct Bytes){NULL, 0};
    }
    switch (document) {
    case WEND_PLAN_XML: return document_plan_xml(wend->arena, wend->plan, wend->parts);
    case WEND_DIAGRAM_SVG: return document_diagram_svg(wend->arena, wend->plan, wend->parts);
    case WEND_PARTS_CSV: return document_parts_csv(wend->arena, wend->parts, wend->plan->verdict);
    case WEND_SUMMARY_TEXT: return document_summary_text(wend->arena, wend->plan, wend->parts, false);
    case WEND_SUMMARY_TEXT_COLOUR: return document_summary_text(wend->arena, wend->plan, wend->parts, true);
    case WEND_BRIEF_HTML: return library_paper(wend, PAPER_BRIEF);
    case WEND_PARTS_HTML: return library_paper(wend, PAPER_PARTS);
    case WEND_DESIGN_HTML: return library_paper(wend, PAPER_DESIGN);
    case WEND_TEST_HTML: return library_paper(wend, PAPER_TEST);
    case WEND_PACK_HTML: return library_paper(wend, PAPER_PACK);
    case WEND_DOCUMENT_COUNT: break;
    }
    return (struct Bytes){NULL, 0};
}

/* A text that outlives its arena. */
static char *keep(struct Arena *arena, const char *text)
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
    char *manual = keep(arena, read_manual(arena));
    arena_free(arena);
    return manual;
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
    struct Arena *arena = arena_new();
    if (arena == NULL) {
        return NULL;
    }
    const struct TableRef *ref = tables_at(index);
    char *line =
        keep(arena, arena_print(arena, "%s  Table %s  %s  [%s]", ref->standard, ref->table, ref->title, ref->trust));
    arena_free(arena);
    return line;
}
