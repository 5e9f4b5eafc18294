/* Which assumptions decide: each that has another plausible value is planned with it, by the same code from the
 * beginning, and what comes of it is held against the plan. */
#include "library_private.h"

#include "design/design.h"

#include <math.h>

static const struct Part *part_of(const struct PartsList *parts, const char *code)
{
    for (int i = 0; i < parts->count; i++) {
        if (text_same(parts->parts[i].code, code)) {
            return &parts->parts[i];
        }
    }
    return NULL;
}

/* By more than one pack; of what is sold singly, by more than one. */
static bool differs(const struct Part *part, const struct Part *then)
{
    if (then == NULL || part->pack != then->pack) {
        return true;
    }
    return part->pack > 0 ? part->packs - then->packs > 1 || then->packs - part->packs > 1
                          : fabs(part->quantity - then->quantity) > 1;
}

static int lines_that_differ(const struct PartsList *now, const struct PartsList *then)
{
    int lines = 0;
    for (int i = 0; i < now->count; i++) {
        lines += differs(&now->parts[i], part_of(then, now->parts[i].code));
    }
    for (int i = 0; i < then->count; i++) {
        lines += part_of(now, then->parts[i].code) == NULL;
    }
    return lines;
}

static bool same(double a, double b)
{
    return fabs(a - b) <= 1e-9 * fmax(fabs(a), fabs(b));
}

static bool same_device(const struct PlanRun *a, const struct PlanRun *b)
{
    return a->device == b->device && a->has_curve == b->has_curve && (!a->has_curve || a->curve == b->curve) &&
           same(a->rating_a, b->rating_a) && say_same(a->device_text, b->device_text);
}

static void compare(const struct Plan *now, const struct Plan *then, struct Decisive *out)
{
    out->planned = true;
    out->verdict = then->verdict;
    out->verdict_changes = then->verdict != now->verdict;
    for (int r = 0; r < now->run_count; r++) {
        if (!out->cable_changes && !same(now->runs[r].size_mm2, then->runs[r].size_mm2)) {
            out->cable_changes = true;
            out->cable_run = r;
            out->size_mm2 = then->runs[r].size_mm2;
        }
        if (!out->device_changes && !same_device(&now->runs[r], &then->runs[r])) {
            out->device_changes = true;
            out->device_run = r;
            out->rating_a = then->runs[r].rating_a;
        }
    }
}

static struct Decisive try(const struct Wend *wend, int assumption)
{
    struct Decisive tried = {.assumption = assumption};
    struct Replanned other;
    if (replan_begin(&other)) {
        const struct Plan *plan = wend->plan;
        replan_survey(wend, design_otherwise(other.arena, plan->survey, &plan->assumptions[assumption]), &other);
    }
    if (other.staged.plan != NULL) {
        compare(wend->plan, other.staged.plan, &tried);
        tried.order_lines = lines_that_differ(wend->parts, other.staged.parts);
    }
    replan_end(wend, &other);
    return tried;
}

/* The route with every range at one point: this one at an end, the others where the plan is shown. NULL where it cannot
 * be read so, as of a segment that has no name to be set by. */
static const struct Survey *at_end(const struct Wend *wend, int range, const char *end, struct Replanned *other)
{
    const struct Survey *survey = wend->plan->survey;
    const int given = wend->changes.set_count;
    const char **sets = arena_array(other->arena, (size_t)given + SURVEY_RANGES_MOST, sizeof *sets);
    for (int i = 0; sets != NULL && i < given; i++) {
        sets[i] = wend->changes.sets[i];
    }
    for (int i = 0; sets != NULL && i < survey->range_count; i++) {
        sets[given + i] =
            arena_print(other->arena, "%s=%s", survey->ranges[i].where, i == range ? end : survey->ranges[i].at);
    }
    const struct ReadChanges changes = {.set_count = given + survey->range_count, .sets = sets};
    const struct Bytes source = {arena_text(other->arena, wend->told.source.data, wend->told.source.length),
                                 wend->told.source.length};
    return sets == NULL ? NULL : read_survey_changed(other->arena, other->diag, source, &changes);
}

/* False where that end could not be tried. */
static bool try_end(const struct Wend *wend, int range, const char *end, struct Decisive *out)
{
    struct Replanned other;
    bool read = false;
    *out = (struct Decisive){.assumption = -1, .range = range, .at = end};
    if (replan_begin(&other)) {
        const struct Survey *survey = at_end(wend, range, end, &other);
        read = survey != NULL && survey->range_count == 0;
        replan_survey(wend, read ? survey : NULL, &other);
    }
    if (other.staged.plan != NULL) {
        compare(wend->plan, other.staged.plan, out);
        out->order_lines = lines_that_differ(wend->parts, other.staged.parts);
    }
    replan_end(wend, &other);
    return read;
}

static int weight(const struct Decisive *decisive)
{
    enum { LINES_MOST = 1 << 20 };
    const int heavy = !decisive->planned          ? 4
                      : decisive->verdict_changes ? 3
                      : decisive->cable_changes   ? 2
                      : decisive->device_changes  ? 1
                                                  : 0;
    return heavy * LINES_MOST + (decisive->order_lines < LINES_MOST ? decisive->order_lines : LINES_MOST - 1);
}

/* What changes most first; of equals as they are listed. */
static void insert(struct Decisive *list, int *count, const struct Decisive *one)
{
    int at = (*count)++;
    for (; at > 0 && weight(&list[at - 1]) < weight(one); at--) {
        list[at] = list[at - 1];
    }
    list[at] = *one;
}

struct Decisives library_decisives(struct Wend *wend)
{
    const struct Plan *plan = wend->plan;
    struct Decisive *list =
        arena_array(wend->arena, (size_t)plan->assumption_count + (size_t)2 * SURVEY_RANGES_MOST, sizeof *list);
    struct Decisives decisives = {.list = list};
    for (int i = 0; list != NULL && i < plan->assumption_count; i++) {
        if (plan->assumptions[i].other != NULL) {
            const struct Decisive tried = try(wend, i);
            decisives.tried++;
            if (weight(&tried) > 0) {
                insert(list, &decisives.count, &tried);
            }
        }
    }
    for (int i = 0; list != NULL && i < 2 * plan->survey->range_count; i++) {
        const struct SurveyRange *range = &plan->survey->ranges[i / 2];
        struct Decisive tried;
        if (try_end(wend, i / 2, i % 2 == 0 ? range->low : range->high, &tried)) {
            decisives.tried++;
            decisives.ends++;
            if (weight(&tried) > 0) {
                insert(list, &decisives.count, &tried);
            }
        }
    }
    return decisives;
}
