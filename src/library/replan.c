/* The stages behind reading, and the same route planned once more with something changed: by the same code, and by the
 * edition of the rules that planned it first. */
#include "library_private.h"

#include "buying/buying.h"
#include "design/design.h"

#include <assert.h>

struct Staged library_stages(struct Arena *arena, struct Diag *diag, const struct Edition *edition,
                             const struct Survey *survey, const char *route)
{
    return library_stages_of(PLAN_WHOLE, arena, diag, edition, survey, route);
}

struct Staged library_stages_of(enum PlanExtent extent, struct Arena *arena, struct Diag *diag,
                                const struct Edition *edition, const struct Survey *survey, const char *route)
{
    struct Staged staged = {.plan = design_plan_by(edition, extent, arena, diag, survey, route)};
    const char *broken = staged.plan != NULL ? plan_check(staged.plan) : NULL;
    if (broken != NULL) { /* a fault of this program; debug builds stop where it is */
        assert(false);
        diag_report(diag, MSG_PLAN_BROKEN, (struct Mark){0, 0}, 0, DIAG_WORDS(broken));
        return (struct Staged){NULL, NULL};
    }
    if (extent == PLAN_FOR_VERDICT) {
        return arena_failed(arena) ? (struct Staged){NULL, NULL} : staged;
    }
    const struct PartsList *counted = staged.plan != NULL ? parts_count(arena, staged.plan) : NULL;
    staged.parts = counted != NULL ? parts_bought(arena, counted) : NULL;
    return staged.parts != NULL && !arena_failed(arena) ? staged : (struct Staged){NULL, NULL};
}

bool replan_begin(enum PlanExtent extent, struct Replanned *out)
{
    *out = (struct Replanned){.extent = extent, .arena = arena_new()};
    out->diag = out->arena != NULL ? diag_new(out->arena) : NULL;
    return out->diag != NULL;
}

void replan_survey(const struct Wend *wend, const struct Survey *survey, struct Replanned *out)
{
    out->staged = survey != NULL ? library_stages_of(out->extent, out->arena, out->diag, wend->plan->edition, survey,
                                                     wend->plan->route)
                                 : (struct Staged){NULL, NULL};
}

bool replan_set(const struct Wend *wend, struct ReadChanges changes, struct Replanned *out)
{
    const struct Bytes source = {arena_text(out->arena, wend->told.source.data, wend->told.source.length),
                                 wend->told.source.length};
    struct Wend aside = {
        .extent = out->extent, .arena = out->arena, .told = {.diag = out->diag, .source = source}, .changes = changes};
    const struct Survey *survey = read_survey_changed(out->arena, out->diag, source, &changes);
    if (survey != NULL && survey->range_count > 0) {
        out->staged = library_ranges(&aside, survey, wend->plan->route);
    } else {
        replan_survey(wend, survey, out);
    }
    return survey != NULL;
}

const char *replan_fault(struct Replanned *replanned)
{
    for (size_t i = 0; replanned->diag != NULL && i < diag_count(replanned->diag); i++) {
        const struct Diagnostic *told = diag_at(replanned->diag, i);
        if (told->severity == DIAG_ERROR) {
            return told->text;
        }
    }
    return "";
}

void replan_end(const struct Wend *wend, struct Replanned *replanned)
{
    if (replanned->arena == NULL || arena_failed(replanned->arena)) {
        arena_lacks(wend->arena);
    }
    arena_free(replanned->arena);
    replanned->arena = NULL;
}
