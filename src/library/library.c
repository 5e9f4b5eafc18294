/* The public face: one route in memory, from text to documents. The order of the stages stands in wend_plan(). */
#include "library_private.h"

#include "buying/buying.h"
#include "read/read.h"
#include "tables/tables.h"

#include <stdlib.h>
#include <string.h>

/* NOLINTBEGIN(misc-redundant-expression): that they are the same is what is asserted */
_Static_assert(WEND_VERSION_MAJOR == WEND_BUILT_MAJOR && WEND_VERSION_MINOR == WEND_BUILT_MINOR &&
                   WEND_VERSION_PATCH == WEND_BUILT_PATCH,
               "wend.h and project(wend VERSION) name two versions");
_Static_assert(WEND_TEXT_MOST_BYTES == READ_LIMIT_BYTES, "wend.h names another limit than the reader's");
/* NOLINTEND(misc-redundant-expression) */
_Static_assert((int)WEND_FAIL == (int)VERDICT_FAIL && (int)WEND_OPEN == (int)VERDICT_OPEN &&
                   (int)WEND_PASS == (int)VERDICT_PASS,
               "two lists of one thing");

const char *wend_version(void)
{
    return WEND_VERSION;
}

const char *wend_verdict_word(enum WendVerdict verdict)
{
    return verdict >= WEND_FAIL && verdict <= WEND_PASS ? verdict_word((enum Verdict)verdict) : "";
}

const char *library_text(const char *text)
{
    return text == NULL ? "" : text;
}

/* One that is longer than any reader takes is refused by its length: not a byte of it is looked at. */
struct Bytes library_copy(struct Arena *arena, const char *text, size_t length)
{
    const size_t taken = text == NULL ? 0 : length;
    if (taken > WEND_TEXT_MOST_BYTES) {
        return (struct Bytes){NULL, taken};
    }
    return (struct Bytes){arena_text(arena, library_text(text), taken), taken};
}

struct WendBytes library_bytes(struct Bytes bytes)
{
    return (struct WendBytes){bytes.data, bytes.length};
}

/* Until a price list is handed in the list says that it was not. */
static const struct PartsList *not_priced(struct Arena *arena, const struct PartsList *parts, const char *file)
{
    if (parts == NULL || file == NULL || *file == '\0') {
        return parts;
    }
    struct PartsList *said = arena_alloc(arena, sizeof *said);
    if (said != NULL) {
        *said = *parts;
        said->prices_note = say(arena, SAY_PRICE_LIST_NOT_READ, say_name(file));
    }
    return said;
}

static void plan_route(struct Wend *wend, const char *name)
{
    const struct Survey *survey = read_survey_changed(wend->arena, wend->told.diag, wend->told.source, &wend->changes);
    if (survey == NULL) {
        return;
    }
    const struct Staged staged = survey->range_count > 0 ? library_ranges(wend, survey, name)
                                                         : library_stages_of(wend->extent, wend->arena, wend->told.diag,
                                                                             edition_held(), survey, name);
    wend->parts = not_priced(wend->arena, staged.parts, survey->parts.prices);
    wend->plan = wend->parts != NULL || wend->extent == PLAN_FOR_VERDICT ? staged.plan : NULL;
}

/* As is the rest of what the caller hands in. */
static struct ReadChanges changes_kept(struct Arena *arena, struct ReadChanges changes)
{
    const int count = changes.set_count > 0 ? changes.set_count : 0;
    const char **kept = arena_array(arena, count > 0 ? (size_t)count : 1, sizeof *kept);
    for (int i = 0; kept != NULL && i < count; i++) {
        kept[i] = arena_text(arena, library_text(changes.sets[i]), strlen(library_text(changes.sets[i])));
    }
    changes.set_count = kept != NULL ? count : 0;
    changes.sets = kept;
    return changes;
}

static struct Wend *planned(enum PlanExtent extent, const char *name, const char *text, size_t length,
                            struct ReadChanges changes)
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
    wend->extent = extent;
    wend->told = diagnostics_new(wend->arena, library_copy(wend->arena, text, length));
    wend->changes = changes_kept(wend->arena, changes);
    /* a plan keeps its name, and the caller's text may go */
    const char *kept = name == NULL ? "route" : arena_text(wend->arena, name, strlen(name));
    if (!arena_failed(wend->arena)) {
        plan_route(wend, kept);
    }
    return wend;
}

struct Wend *wend_plan(const char *name, const char *text, size_t length)
{
    return wend_plan_changed(name, text, length, NULL, 0);
}

struct Wend *wend_plan_so_far(const char *name, const char *text, size_t length)
{
    return planned(PLAN_WHOLE, name, text, length, (struct ReadChanges){.so_far = true});
}

struct Wend *wend_plan_changed(const char *name, const char *text, size_t length, const char *const *sets, int count)
{
    return wend_plan_wanted(WEND_WANT_DOCUMENTS, name, text, length, sets, count);
}

struct Wend *wend_plan_wanted(enum WendWanted wanted, const char *name, const char *text, size_t length,
                              const char *const *sets, int count)
{
    const enum PlanExtent extent = wanted == WEND_WANT_VERDICT ? PLAN_FOR_VERDICT
                                   : wanted == WEND_WANT_ORDER ? PLAN_FOR_PARTS
                                                               : PLAN_WHOLE;
    const struct ReadChanges changes = {
        .set_count = sets != NULL ? count : 0, .sets = sets, .undigested = extent != PLAN_WHOLE};
    return planned(extent, name, text, length, changes);
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

const struct WendDiagnostics *wend_diagnostics(const struct Wend *wend)
{
    return wend == NULL ? NULL : diagnostics_shown(&wend->told);
}

const struct Plan *library_plan(const struct Wend *wend)
{
    return wend_status(wend) > WEND_CHECK_FAILS || wend->kept_for_order ? NULL : wend->plan;
}

const struct Plan *wend_result(const struct Wend *wend)
{
    const struct Plan *plan = library_plan(wend);
    return plan != NULL && plan->extent == PLAN_WHOLE ? plan : NULL;
}

const struct PartsList *wend_parts(const struct Wend *wend)
{
    return wend_status(wend) > WEND_CHECK_FAILS || wend->kept_for_order ? NULL : wend->parts;
}

enum WendVerdict wend_verdict(const struct Wend *wend)
{
    const struct Plan *plan = library_plan(wend);
    return plan == NULL ? WEND_FAIL : (enum WendVerdict)plan->verdict;
}

const char *wend_verdict_text(const struct Wend *wend)
{
    const struct Plan *plan = library_plan(wend);
    return plan == NULL ? "" : document_words(wend->arena, plan->verdict_text);
}

const char *wend_sheet_mark(const struct Wend *wend)
{
    return wend_result(wend) == NULL ? "" : library_text(document_mark(wend->arena, wend->plan, wend->parts));
}

int wend_open_count(const struct Wend *wend)
{
    const struct Plan *plan = library_plan(wend);
    return plan == NULL ? 0 : plan->open_count;
}

const char *wend_open_text(const struct Wend *wend, int index)
{
    return index >= 0 && index < wend_open_count(wend) ? document_words(wend->arena, wend->plan->open[index].text) : "";
}

int wend_warning_count(const struct Wend *wend)
{
    const struct Plan *plan = library_plan(wend);
    return plan == NULL ? 0 : plan->warning_count;
}

const char *wend_warning_text(const struct Wend *wend, int index)
{
    if (index < 0 || index >= wend_warning_count(wend)) {
        return "";
    }
    const struct PlanWarning *warning = &wend->plan->warnings[index];
    return diag_sentence(wend->arena, warning->code, warning->words);
}

const char *wend_prices_name(const struct Wend *wend)
{
    const struct Plan *plan = library_plan(wend);
    return plan == NULL ? "" : library_text(plan->survey->parts.prices);
}

enum WendStatus wend_price(struct Wend *wend, const char *text, size_t length)
{
    if (wend_status(wend) > WEND_CHECK_FAILS || wend->kept_for_order) {
        return wend_status(wend);
    }
    wend->prices_name = wend_prices_name(wend); /* of a list that is wrong too, which leaves no plan */
    wend->prices_told = diagnostics_new(wend->arena, library_copy(wend->arena, text, length));
    const struct PriceList *prices =
        arena_failed(wend->arena) ? NULL : read_prices(wend->arena, wend->prices_told.diag, wend->prices_told.source);
    const bool counted = wend->parts != NULL;
    wend->parts = counted && prices != NULL ? parts_priced(wend->arena, wend->parts, prices) : NULL;
    wend->plan = wend->parts != NULL || (prices != NULL && !counted) ? wend->plan : NULL;
    wend->prices = prices;
    wend->papers_made = false; /* they say what is priced */
    return wend_status(wend);
}

const struct WendDiagnostics *wend_prices_diagnostics(const struct Wend *wend)
{
    return wend == NULL ? NULL : diagnostics_shown(&wend->prices_told);
}

/* Where papers were made mark and diagram are there. */
static const char *mark(const struct Wend *wend)
{
    return wend->papers_made && wend->papers.mark != NULL ? wend->papers.mark
                                                          : document_mark(wend->arena, wend->plan, wend->parts);
}

/* What is wanted only while it is made goes again at once. */
static struct Bytes plan_xml(const struct Wend *wend)
{
    struct Bytes bytes = {NULL, 0};
    struct Arena *aside = arena_apart(wend->arena);
    if (aside != NULL) {
        const struct Bytes made = document_plan_xml_marked(aside, wend->plan, wend->parts, mark(wend));
        bytes = made.data == NULL ? made : (struct Bytes){arena_text(wend->arena, made.data, made.length), made.length};
    }
    arena_free(aside);
    return arena_failed(wend->arena) ? (struct Bytes){NULL, 0} : bytes;
}

static struct Bytes diagram(const struct Wend *wend)
{
    return wend->papers_made && wend->papers.diagram.data != NULL
               ? wend->papers.diagram
               : document_diagram_svg(wend->arena, wend->plan, wend->parts, wend->language);
}

static struct Bytes narrow(const struct Wend *wend)
{
    return wend->papers_made && wend->papers.drawn[0].narrow.papers.count > 0
               ? paper_narrow(wend->arena, &wend->papers)
               : document_narrow_svg(wend->arena, wend->plan, wend->parts, wend->language);
}

static struct Bytes make(struct Wend *wend, enum WendDocument document)
{
    switch (document) {
    case WEND_PLAN_XML: return plan_xml(wend);
    case WEND_DIAGRAM_SVG: return diagram(wend);
    case WEND_PARTS_CSV: return document_parts_csv(wend->arena, wend->parts, wend->plan->verdict, mark(wend));
    case WEND_SUMMARY_TEXT: return document_summary_text(wend->arena, wend->plan, wend->parts, false);
    case WEND_SUMMARY_TEXT_COLOUR: return document_summary_text(wend->arena, wend->plan, wend->parts, true);
    case WEND_BRIEF_HTML: return library_paper(wend, PAPER_BRIEF);
    case WEND_PARTS_HTML: return library_paper(wend, PAPER_PARTS);
    case WEND_DESIGN_HTML: return library_paper(wend, PAPER_DESIGN);
    case WEND_TEST_HTML: return library_paper(wend, PAPER_TEST);
    case WEND_PACK_HTML: return library_paper(wend, PAPER_PACK);
    case WEND_PLAN_JSON: return document_plan_json(wend->arena, wend->plan, wend->parts);
    case WEND_CARD_HTML: return library_paper(wend, PAPER_CARD);
    case WEND_NARROW_SVG: return narrow(wend);
    case WEND_READINGS_HTML: return library_paper(wend, PAPER_READINGS);
    case WEND_AS_LAID_HTML: return library_paper(wend, PAPER_AS_LAID);
    case WEND_DOCUMENT_COUNT: break;
    }
    return (struct Bytes){NULL, 0};
}

bool wend_has_document(const struct Wend *wend, enum WendDocument document)
{
    /* what is due stays due when memory ends while it is made */
    const struct Plan *plan = wend == NULL ? NULL : wend->plan;
    if (plan == NULL || plan->extent != PLAN_WHOLE || (int)document < 0 || document >= WEND_DOCUMENT_COUNT) {
        return false;
    }
    return document == WEND_READINGS_HTML  ? paper_is_due(plan, PAPER_READINGS)
           : document == WEND_AS_LAID_HTML ? paper_is_due(plan, PAPER_AS_LAID)
                                           : true;
}

struct WendBytes wend_document(struct Wend *wend, enum WendDocument document)
{
    struct Bytes bytes = {NULL, 0};
    if (wend_result(wend) != NULL && documents_memory_begin()) {
        bytes = make(wend, document);
        if (!documents_memory_end()) {
            bytes = (struct Bytes){NULL, 0};
            wend->papers_made = false;
        }
    }
    return library_bytes(bytes);
}

struct WendBytes wend_decision(struct Wend *wend, const char *papers, bool colour)
{
    if (wend_result(wend) == NULL) {
        return (struct WendBytes){NULL, 0};
    }
    const struct Decisives *decided = library_decided(wend);
    return library_bytes(decided == NULL ? (struct Bytes){NULL, 0}
                                         : document_decision_text(wend->arena, wend->plan, wend->parts, decided,
                                                                  library_text(papers), colour));
}

void wend_guard_memory(void (*give_up)(void))
{
    if (give_up != NULL) {
        documents_guard_memory(give_up);
    }
}

const char *wend_missing(void)
{
    return library_text(documents_missing());
}

void wend_end(void)
{
    documents_end();
}
