/* A route of which something was surveyed as a range. Its verdict is the worst of plans at every corner of the ranges
 * and at points between, all with one cable and one device: the largest that any corner asks for. What a check does
 * between two points can be told from them only while it rises or falls all the way; where one turns, nothing is
 * planned. */
#include "library_private.h"

#include "design/design.h"
#include "tables/tables.h"

#include <math.h>
#include <string.h>

enum { POINTS_MOST = 125 };

struct Point {
    double shares[SURVEY_RANGES_MOST];
    const struct Survey *survey;
    struct Staged staged; /* with the cable and device that hold for all */
};

struct Ranges {
    struct Wend *wend;
    const char *name;
    int count, levels, point_count;
    struct Point points[POINTS_MOST]; /* the first range's share changes fastest */
    struct Plan choice;               /* sizes and devices that hold for all */
};

static void set_points(struct Ranges *ranges)
{
    static const int levels[SURVEY_RANGES_MOST + 1] = {1, 9, 5, 5};
    ranges->levels = levels[ranges->count];
    ranges->point_count = 1;
    for (int i = 0; i < ranges->count; i++) {
        ranges->point_count *= ranges->levels;
    }
    for (int p = 0; p < ranges->point_count; p++) {
        for (int i = 0, rest = p; i < ranges->count; i++, rest /= ranges->levels) {
            ranges->points[p].shares[i] = (double)(rest % ranges->levels) / (ranges->levels - 1);
        }
    }
}

static bool is_corner(const struct Ranges *ranges, int point)
{
    for (int i = 0; i < ranges->count; i++) {
        const double share = ranges->points[point].shares[i];
        if (share > 0 && share < 1) {
            return false;
        }
    }
    return true;
}

static const struct Survey *read_at(const struct Ranges *ranges, const struct Point *point, struct Diag *diag)
{
    struct ReadChanges changes = ranges->wend->changes;
    changes.shares = point->shares;
    return read_survey_changed(ranges->wend->arena, diag, ranges->wend->told.source, &changes);
}

static struct Staged stage(const struct Ranges *ranges, enum PlanExtent extent, const struct Survey *survey,
                           struct Diag *diag)
{
    return survey == NULL || diag == NULL
               ? (struct Staged){NULL, NULL}
               : library_stages_of(extent, ranges->wend->arena, diag, edition_held(), survey, ranges->name);
}

/* What cannot be planned somewhere in the range is reported as for a route without one. */
static bool tell_why(struct Ranges *ranges, const struct Point *point)
{
    struct Diag *told = ranges->wend->told.diag;
    const struct Survey *survey = read_at(ranges, point, told);
    if (survey != NULL) {
        stage(ranges, PLAN_FOR_VERDICT, survey, told);
    }
    return false;
}

/* ---- the cable and the device for all of it ---- */

static bool larger_device(const struct PlanRun *a, const struct PlanRun *b)
{
    return a->rating_a > b->rating_a || (a->rating_a >= b->rating_a && a->has_curve && a->curve > b->curve);
}

static bool take_larger(struct Ranges *ranges, const struct Plan *plan)
{
    struct Arena *arena = ranges->wend->arena;
    const bool first = ranges->choice.runs == NULL;
    struct PlanRun *runs = arena_array(arena, (size_t)plan->run_count, sizeof *runs);
    if (runs == NULL) {
        return false;
    }
    memcpy(runs, first ? plan->runs : ranges->choice.runs, (size_t)plan->run_count * sizeof *runs);
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *planned = &plan->runs[r];
        runs[r].size_mm2 = fmax(runs[r].size_mm2, planned->size_mm2);
        if (planned->rated && larger_device(planned, &runs[r])) {
            runs[r].settled = planned->settled;
            runs[r].rating_a = planned->rating_a;
            runs[r].has_curve = planned->has_curve;
            runs[r].curve = planned->curve;
        }
    }
    ranges->choice.runs = runs;
    ranges->choice.run_count = plan->run_count;
    return true;
}

static bool choose(struct Ranges *ranges)
{
    struct Wend *wend = ranges->wend;
    for (int p = 0; p < ranges->point_count; p++) {
        struct Point *point = &ranges->points[p];
        point->survey = read_at(ranges, point, diag_new(wend->arena));
        if (point->survey == NULL) {
            return tell_why(ranges, point);
        }
        if (is_corner(ranges, p)) {
            const struct Staged staged = stage(ranges, PLAN_FOR_VERDICT, point->survey, diag_new(wend->arena));
            if (staged.plan == NULL || !take_larger(ranges, staged.plan)) {
                return arena_failed(wend->arena) ? false : tell_why(ranges, point);
            }
        }
    }
    return true;
}

/* ---- each check over all of it ---- */

/* How much of what is allowed is used; less than 0 where nothing is compared. */
static double used(const struct Check *check)
{
    if (check->unit == UNIT_NONE || check->unknown || !(check->limit > 0) || !(check->value > 0)) {
        return -1;
    }
    return check->at_least ? check->limit / check->value : check->value / check->limit;
}

/* Along each line of points beside one another a check only rises or only falls. The check that does not; NULL none. */
static const struct Check *turns(const struct Ranges *ranges, int start, int step, int run, int check)
{
    bool rises = false, falls = false;
    double before = 0;
    for (int i = 0; i < ranges->levels; i++) {
        const struct Check *one = &ranges->points[start + i * step].staged.plan->runs[run].checks[check];
        const double now = used(one);
        rises = rises || (i > 0 && now - before > 1e-9);
        falls = falls || (i > 0 && before - now > 1e-9);
        before = now;
        if (rises && falls) {
            return one;
        }
    }
    return NULL;
}

static bool same_checks(const struct Plan *a, const struct Plan *b)
{
    for (int r = 0; r < a->run_count; r++) {
        if (a->runs[r].check_count != b->runs[r].check_count) {
            return false;
        }
        for (int i = 0; i < a->runs[r].check_count; i++) {
            if (!text_same(a->runs[r].checks[i].id, b->runs[r].checks[i].id)) {
                return false;
            }
        }
    }
    return true;
}

static bool refuse(const struct Ranges *ranges, const char *run, const char *check)
{
    diag_report(ranges->wend->told.diag, MSG_RANGE_TURNS, (struct Mark){0, 0}, 0, DIAG_WORDS(check, run));
    return false;
}

static bool none_turns(const struct Ranges *ranges)
{
    const struct Plan *first = ranges->points[0].staged.plan;
    for (int p = 1; p < ranges->point_count; p++) {
        if (!same_checks(first, ranges->points[p].staged.plan)) {
            return refuse(ranges, first->runs[0].settled->name, "");
        }
    }
    for (int axis = 0, step = 1; axis < ranges->count; axis++, step *= ranges->levels) {
        for (int start = 0; start < ranges->point_count; start++) {
            if (ranges->points[start].shares[axis] > 0) {
                continue;
            }
            for (int r = 0; r < first->run_count; r++) {
                for (int i = 0; i < first->runs[r].check_count; i++) {
                    const struct Check *turning = turns(ranges, start, step, r, i);
                    if (turning != NULL) {
                        return refuse(ranges, first->runs[r].settled->name, turning->id);
                    }
                }
            }
        }
    }
    return true;
}

static bool plan_all(struct Ranges *ranges)
{
    struct Wend *wend = ranges->wend;
    const enum PlanExtent extent = wend->extent == PLAN_WHOLE ? PLAN_FOR_PARTS : wend->extent;
    for (int p = 0; p < ranges->point_count; p++) {
        struct Point *point = &ranges->points[p];
        point->survey = design_fixed(wend->arena, point->survey, &ranges->choice);
        point->staged = stage(ranges, extent, point->survey, diag_new(wend->arena));
        if (point->staged.plan == NULL) {
            return arena_failed(wend->arena) ? false : tell_why(ranges, point);
        }
    }
    return none_turns(ranges);
}

/* The worst; of equals the last, where everything is at its larger end. */
static int worst_point(const struct Ranges *ranges)
{
    int worst = ranges->point_count - 1;
    for (int p = ranges->point_count - 1; p >= 0; p--) {
        worst = ranges->points[p].staged.plan->verdict < ranges->points[worst].staged.plan->verdict ? p : worst;
    }
    return worst;
}

/* ---- what is said of it ---- */

static const char *point_words(const struct Ranges *ranges, const struct Survey *survey)
{
    struct TextBuilder text = text_builder(ranges->wend->arena);
    for (int i = 0; i < ranges->count; i++) {
        text_print(&text, "%s%s %s", i > 0 ? ", " : "", survey->ranges[i].named, survey->ranges[i].at);
    }
    return text_done(&text);
}

static void say_ranges(const struct Ranges *ranges, const struct Point *shown)
{
    struct Wend *wend = ranges->wend;
    const char *points = arena_print(wend->arena, "%d", ranges->point_count);
    for (int i = 0; i < ranges->count; i++) {
        const struct SurveyRange *range = &shown->staged.plan->survey->ranges[i];
        diag_report(wend->told.diag, MSG_RANGE_HELD, (struct Mark){0, 0}, 0,
                    DIAG_WORDS(range->named, range->text, points, range->at));
    }
}

/* Checks that another point brings nearer to their limit than what is shown. */
static void say_worst_ends(const struct Ranges *ranges, int shown)
{
    struct Wend *wend = ranges->wend;
    const struct Plan *plan = ranges->points[shown].staged.plan;
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            int worst = shown;
            for (int p = 0; p < ranges->point_count; p++) {
                const double there = used(&ranges->points[p].staged.plan->runs[r].checks[i]);
                worst = there > used(&ranges->points[worst].staged.plan->runs[r].checks[i]) + 1e-9 ? p : worst;
            }
            if (worst != shown) {
                diag_report_of(wend->told.diag, DIAG_RUN(r), MSG_RANGE_WORST, (struct Mark){0, 0}, 0,
                               DIAG_WORDS(plan->runs[r].checks[i].id, plan->runs[r].settled->name,
                                          point_words(ranges, ranges->points[worst].staged.plan->survey)));
            }
        }
    }
}

/* Against everything at its lesser end, where the smallest would have done. What fails is not what it takes. */
static void say_cost(const struct Ranges *ranges, const struct Plan *all)
{
    struct Wend *wend = ranges->wend;
    struct Arena *arena = wend->arena;
    const struct Survey *least = read_at(ranges, &ranges->points[0], diag_new(arena));
    const struct Plan *least_plan = stage(ranges, PLAN_FOR_VERDICT, least, diag_new(arena)).plan;
    const bool pass = least_plan != NULL && least_plan->verdict != VERDICT_FAIL && all->verdict != VERDICT_FAIL;
    for (int r = 0; pass && r < all->run_count; r++) {
        const struct PlanRun *one = &least_plan->runs[r];
        const struct PlanRun *two = &all->runs[r];
        if (two->rated) {
            diag_report_of(wend->told.diag, DIAG_RUN(r), MSG_RANGE_COSTS, (struct Mark){0, 0}, 0,
                           DIAG_WORDS(two->settled->name, number_significant(arena, two->size_mm2, 4),
                                      number_significant(arena, two->rating_a, 4),
                                      number_significant(arena, two->order_length_m, 9),
                                      number_significant(arena, one->size_mm2, 4),
                                      number_significant(arena, one->rating_a, 4),
                                      number_significant(arena, one->order_length_m, 9)));
        }
    }
}

/* ---- the order for all of it ---- */

static double bought_of(const struct Part *part)
{
    return part->pack > 0 ? part->packs : part->quantity;
}

static int find_part(const struct Part *parts, int count, const char *code)
{
    int at = count - 1;
    while (at >= 0 && !text_same(parts[at].code, code)) {
        at--;
    }
    return at;
}

static bool is_cut(const struct PartsList *list, const struct Part *part)
{
    int at = list->cut_count - 1;
    while (at >= 0 && !text_same(list->cuts[at].code, parts_article(part))) {
        at--;
    }
    return at >= 0;
}

/* "A range was surveyed: field length 18 m to 22 m. Each line is as much as any of it asks for." */
static const struct Say *counted_for(const struct Ranges *ranges)
{
    struct Arena *arena = ranges->wend->arena;
    const struct Survey *survey = ranges->points[0].staged.plan->survey;
    const struct Say *list = NULL;
    for (int i = 0; i < survey->range_count; i++) {
        list = say_list(
            arena, SAY_COMMA, list,
            say_part(say(arena, SAY_SPACE, say_name(survey->ranges[i].named), say_name(survey->ranges[i].text))));
    }
    return say(arena, SAY_COUNTED_FOR_RANGE, say_part(list));
}

/* Of each line as much as any point asks for. What is cut from lengths is ordered and cut as at the larger ends, whose
 * pieces are the longest: drums that a shorter piece would come from are not bought beside it. */
static const struct PartsList *order_for_all(const struct Ranges *ranges, const struct PartsList *shown,
                                             const struct PartsList *longest)
{
    struct Arena *arena = ranges->wend->arena;
    size_t room = (size_t)longest->count;
    for (int p = 0; p < ranges->point_count; p++) {
        room += (size_t)ranges->points[p].staged.parts->count;
    }
    struct PartsList *list = arena_alloc(arena, sizeof *list);
    struct Part *parts = arena_array(arena, room + 1, sizeof *parts);
    if (list == NULL || parts == NULL) {
        return NULL;
    }
    *list = *shown;
    list->range_note = counted_for(ranges);
    list->count = longest->count;
    list->cut_count = longest->cut_count;
    list->cuts = longest->cuts;
    memcpy(parts, longest->parts, (size_t)longest->count * sizeof *parts);
    for (int p = 0; p < ranges->point_count; p++) {
        const struct PartsList *other = ranges->points[p].staged.parts;
        for (int i = 0; i < other->count; i++) {
            const struct Part *part = &other->parts[i];
            const int at = find_part(parts, list->count, part->code);
            if (is_cut(longest, part)) {
                continue;
            }
            if (at < 0) {
                parts[list->count++] = *part;
            } else if (bought_of(part) > bought_of(&parts[at])) {
                parts[at].quantity = part->quantity;
                parts[at].needed = part->needed;
                parts[at].packs = part->packs;
                parts[at].length_m = part->length_m;
            }
        }
    }
    list->parts = parts;
    return list;
}

static bool same_plan(const struct Plan *a, const struct Plan *b)
{
    for (int r = 0; r < a->run_count; r++) {
        const struct PlanRun *one = &a->runs[r];
        const struct PlanRun *two = &b->runs[r];
        if (fabs(one->size_mm2 - two->size_mm2) > 1e-9 || !say_same(one->device_text, two->device_text)) {
            return false;
        }
        for (int i = 0; i < one->check_count; i++) {
            if (one->checks[i].result != two->checks[i].result || one->checks[i].open != two->checks[i].open) {
                return false;
            }
        }
    }
    return a->verdict == b->verdict;
}

/* Where the route itself comes to that cable and device there, its own plan is shown, which says why they were chosen.
 */
static const struct Survey *shown_survey(const struct Ranges *ranges, const struct Point *shown)
{
    struct Arena *arena = ranges->wend->arena;
    const struct Survey *free_choice = read_at(ranges, shown, diag_new(arena));
    const struct Plan *plan = stage(ranges, PLAN_FOR_VERDICT, free_choice, diag_new(arena)).plan;
    return plan != NULL && same_checks(plan, shown->staged.plan) && same_plan(plan, shown->staged.plan) ? free_choice
                                                                                                        : shown->survey;
}

struct Staged library_ranges(struct Wend *wend, const struct Survey *survey, const char *name)
{
    struct Ranges *ranges = arena_alloc(wend->arena, sizeof *ranges);
    if (ranges == NULL) {
        return (struct Staged){NULL, NULL};
    }
    *ranges = (struct Ranges){.wend = wend, .name = name, .count = survey->range_count};
    set_points(ranges);
    if (!choose(ranges) || !plan_all(ranges)) {
        return (struct Staged){NULL, NULL};
    }
    const int worst = worst_point(ranges);
    const struct Point *shown = &ranges->points[worst];
    if (shown->staged.plan == NULL) {
        return (struct Staged){NULL, NULL};
    }
    say_ranges(ranges, shown);
    say_cost(ranges, ranges->points[ranges->point_count - 1].staged.plan);
    say_worst_ends(ranges, worst);
    struct Staged staged = stage(ranges, wend->extent, shown_survey(ranges, shown), wend->told.diag);
    if (wend->extent == PLAN_FOR_VERDICT) {
        return staged;
    }
    const int last = ranges->point_count - 1;
    const struct PartsList *longest = worst == last ? staged.parts : ranges->points[last].staged.parts;
    staged.parts = staged.plan != NULL ? order_for_all(ranges, staged.parts, longest) : NULL;
    return staged;
}
