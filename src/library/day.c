/* The work of a plan, by the user's labour figures or by those that the program has. */
#include "library_private.h"

#include "labour/work.h"

enum { SEED = 1 }; /* of what stands on paper */
static const unsigned long seed_most = 4294967295UL;

const char *wend_labour_name(const struct Wend *wend)
{
    const struct Plan *plan = library_plan(wend);
    return plan == NULL ? "" : library_text(plan->survey->parts.labour);
}

/* The papers of it are others, so the mark is too. */
static const struct Plan *with_labour(struct Arena *arena, const struct Plan *plan, const struct Labour *labour)
{
    struct Plan *other = arena_alloc(arena, sizeof *other);
    if (other != NULL) {
        *other = *plan;
        other->labour_digest = labour_digest(labour);
    }
    return other;
}

enum WendStatus wend_labour(struct Wend *wend, const char *text, size_t length)
{
    if (wend_status(wend) > WEND_CHECK_FAILS) {
        return wend_status(wend);
    }
    wend->labour_name = wend_labour_name(wend); /* of figures that are wrong too, which leave no plan */
    wend->labour_told = diagnostics_new(wend->arena, library_copy(wend->arena, text, length));
    wend->labour =
        arena_failed(wend->arena) ? NULL : read_labour(wend->arena, wend->labour_told.diag, wend->labour_told.source);
    wend->plan = wend->labour != NULL ? with_labour(wend->arena, wend->plan, wend->labour) : NULL;
    wend->papers_made = false; /* they show the day */
    return wend_status(wend);
}

const struct WendDiagnostics *wend_labour_diagnostics(const struct Wend *wend)
{
    return wend == NULL ? NULL : diagnostics_shown(&wend->labour_told);
}

struct WendBytes wend_labour_built_in(void)
{
    return library_bytes(read_labour_built_in());
}

/* Those handed in, else the program's own, which are good. */
static const struct Labour *figures(struct Wend *wend)
{
    struct Diag *aside = wend->labour != NULL ? NULL : diag_new(wend->arena);
    struct Labour *own = aside == NULL ? NULL : arena_alloc(wend->arena, sizeof *own);
    const struct Labour *read = own == NULL ? NULL : read_labour(wend->arena, aside, read_labour_built_in());
    if (wend->labour != NULL || read == NULL) {
        return wend->labour;
    }
    *own = *read;
    own->built_in = true;
    return own;
}

struct WendBytes wend_day(struct Wend *wend, const struct WendDay *day, enum WendDayForm form)
{
    struct Bytes out = {NULL, 0};
    if (wend_result(wend) == NULL || day == NULL || day->hands < 0 || day->hands > DAY_HANDS_MOST ||
        day->seed > seed_most) {
        return library_bytes(out);
    }
    const struct WorkAsked asked = {figures(wend), day->hands, day->seed};
    const struct Work *work = asked.labour == NULL ? NULL : work_of(wend->arena, wend->plan, wend->parts, &asked);
    if (work == NULL) {
        return library_bytes(out);
    }
    switch (form) {
    case WEND_DAY_TEXT: out = document_day_text(wend->arena, wend->plan, work); break;
    case WEND_DAY_JSON: out = document_day_json(wend->arena, wend->plan, work); break;
    case WEND_DAY_ICALENDAR:
        if (read_is_date(library_text(day->date))) {
            out = document_day_ics(wend->arena, wend->plan, work, day->date);
        }
        break;
    }
    return library_bytes(out);
}

const struct Work *library_own_day(struct Wend *wend)
{
    const struct WorkAsked asked = {wend->labour, 0, SEED};
    return wend->labour == NULL ? NULL : work_of(wend->arena, wend->plan, wend->parts, &asked);
}

bool wend_quotes(const struct Wend *wend)
{
    return wend_result(wend) != NULL && wend->labour != NULL && wend->labour->rates.given;
}

struct WendBytes wend_quotation(struct Wend *wend)
{
    struct Bytes bytes = {NULL, 0};
    if (wend_quotes(wend) && documents_memory_begin()) {
        library_paper(wend, PAPER_BRIEF); /* all are made at once */
        bytes = wend->papers.quotation;
        if (!documents_memory_end()) {
            bytes = (struct Bytes){NULL, 0};
            wend->papers_made = false;
        }
    }
    return library_bytes(bytes);
}
