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

/* ---- the route set otherwise ---- */

static bool is_among(const struct Settings *settings, const char *word)
{
    bool found = false;
    for (int i = 0; i < settings->count; i++) {
        found = found || read_sets(word, settings->list[i].key);
    }
    return found;
}

/* What was set beside the file stays so, but where that is what is tried. */
static struct ReadChanges changed(struct Arena *arena, const struct Wend *wend, const struct Settings *settings)
{
    struct ReadChanges changes = wend->changes;
    changes.undigested = true;
    const char **sets = arena_array(arena, (size_t)changes.set_count + (size_t)settings->count, sizeof *sets);
    changes.sets = sets;
    changes.set_count = 0;
    for (int i = 0; sets != NULL && i < wend->changes.set_count; i++) {
        if (!is_among(settings, wend->changes.sets[i])) {
            sets[changes.set_count++] = wend->changes.sets[i];
        }
    }
    for (int i = 0; sets != NULL && i < settings->count; i++) {
        const struct Setting *setting = &settings->list[i];
        sets[changes.set_count++] = arena_print(arena, "%s=%s", setting->key, setting->value);
    }
    return changes;
}

/* Read and planned from the beginning, as a file in which that is written. False where it cannot be read. */
static bool try(const struct Wend *wend, const struct Settings *settings, struct Decisive *out)
{
    struct Replanned other;
    bool read = false;
    if (replan_begin(PLAN_FOR_PARTS, &other)) {
        read = replan_set(wend, changed(other.arena, wend, settings), &other);
    }
    if (other.staged.plan != NULL) {
        compare(wend->plan, other.staged.plan, out);
        out->order_lines = lines_that_differ(wend->parts, other.staged.parts);
    }
    out->settings = *settings;
    replan_end(wend, &other);
    return read;
}

/* False where a name does not let it be typed. */
static bool give_keys(const struct Wend *wend, const struct Settings *settings)
{
    const struct Survey *survey = wend->plan->survey;
    bool all = true;
    for (int i = 0; i < settings->count; i++) {
        struct Setting *setting = &settings->list[i];
        setting->key = setting->run >= 0 ? read_key_of_run(wend->arena, survey, setting->run, setting->below)
                       : setting->segment >= 0
                           ? read_key_of_segment(wend->arena, survey, setting->segment, setting->below)
                           : setting->below;
        all = all && setting->key != NULL;
    }
    return all;
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

static void add(struct Decisive *list, struct Decisives *decisives, const struct Decisive *tried)
{
    decisives->tried++;
    if (weight(tried) > 0) {
        insert(list, &decisives->count, tried);
    }
}

struct Decisives library_decisives(struct Wend *wend)
{
    const struct Plan *plan = wend->plan;
    struct Decisive *list =
        arena_array(wend->arena, (size_t)plan->assumption_count + (size_t)2 * SURVEY_RANGES_MOST, sizeof *list);
    int *nameless = arena_array(wend->arena, (size_t)plan->assumption_count + 1, sizeof *nameless);
    struct Decisives decisives = {.list = list, .nameless = nameless};
    for (int i = 0; list != NULL && nameless != NULL && i < plan->assumption_count; i++) {
        struct Decisive tried = {.assumption = i};
        const struct Settings settings =
            design_settings(wend->arena, plan->edition, plan->survey, &plan->assumptions[i]);
        if (!give_keys(wend, &settings)) {
            nameless[decisives.nameless_count++] = i;
        } else if (settings.count > 0 && try(wend, &settings, &tried)) {
            add(list, &decisives, &tried);
        }
    }
    for (int i = 0; list != NULL && i < 2 * plan->survey->range_count; i++) {
        const struct SurveyRange *range = &plan->survey->ranges[i / 2];
        struct Decisive tried = {.assumption = -1, .range = i / 2, .at = i % 2 == 0 ? range->low : range->high};
        struct Setting *setting = arena_alloc(wend->arena, sizeof *setting);
        if (setting == NULL) {
            break;
        }
        *setting = (struct Setting){.key = range->where, .value = tried.at};
        if (try(wend, &(struct Settings){1, setting}, &tried)) {
            decisives.ends++;
            add(list, &decisives, &tried);
        }
    }
    return decisives;
}

const struct Decisives *library_decided(struct Wend *wend)
{
    struct Decisives *decided = wend->decided == NULL ? arena_alloc(wend->arena, sizeof *decided) : NULL;
    if (decided != NULL) {
        *decided = library_decisives(wend);
        wend->decided = decided;
    }
    return wend->decided;
}
