/* How much more the plan would bear: the whole route is planned again, with the cables and devices that it has, with
 * more and more of one thing. A scan finds the first step that fails, so that nothing is claimed beyond a gap that
 * passes again; between that step and the one before, the place is found by halving. */
#include "library_private.h"

#include "design/design.h"

#include <math.h>

enum { SEGMENTS_MOST = 40, STEPS = 16, TENTHS = 10, DOUBLINGS = 12 };

struct Asked {
    struct Wend *wend;
    int segment, run;
    double now;
};

/* What came of it. Only what the caller keeps is copied out of its memory. */
struct Outcome {
    bool passes;
    int run, check; /* that ends it; check -1: nothing could be planned */
};

static const struct Survey *grown(struct Arena *arena, const struct Asked *asked, double more)
{
    const struct Plan *plan = asked->wend->plan;
    const struct Survey *fixed = design_fixed(arena, plan->survey, plan);
    return fixed == NULL        ? NULL
           : asked->segment < 0 ? design_heavier(arena, fixed, asked->run, 1 + more / asked->now)
                                : design_longer(arena, fixed, asked->segment, more);
}

/* The first check that fails; where none does the first that cannot be made any more. */
static void find_check(const struct Plan *now, const struct Plan *then, struct Outcome *out)
{
    for (int pass = 0; pass < 2 && out->check < 0; pass++) {
        for (int r = 0; r < then->run_count && out->check < 0; r++) {
            const struct PlanRun *run = &then->runs[r];
            for (int i = 0; i < run->check_count && i < now->runs[r].check_count && out->check < 0; i++) {
                const bool found = pass == 0 ? run->checks[i].result == CHECK_FAIL
                                             : run->checks[i].open && !now->runs[r].checks[i].open;
                if (found && text_same(run->checks[i].id, now->runs[r].checks[i].id)) {
                    out->run = r;
                    out->check = i;
                }
            }
        }
    }
}

static struct Outcome plan_with(const struct Asked *asked, double more)
{
    const struct Plan *now = asked->wend->plan;
    struct Outcome out = {.passes = false, .check = -1};
    struct Replanned other;
    if (replan_begin(PLAN_FOR_VERDICT, &other)) {
        replan_survey(asked->wend, grown(other.arena, asked, more), &other);
    }
    const struct Plan *then = other.staged.plan;
    if (then != NULL) {
        out.passes = then->verdict >= now->verdict;
        find_check(now, then, &out);
    }
    replan_end(asked->wend, &other);
    return out;
}

/* The first width of scan that holds a failing end, doubling from a tenth of what there is; 0 when none does. */
static double find_width(const struct Asked *asked)
{
    double width = fmax(asked->now / TENTHS, 1);
    for (int i = 0; i < DOUBLINGS; i++, width *= 2) {
        if (!plan_with(asked, width).passes) {
            return width;
        }
        if (width > 8 * asked->now && width > 100) {
            break;
        }
    }
    return 0;
}

/* In whole tenths: the last that passes before `bad`, from `good` on, which passes. */
static int halve(const struct Asked *asked, int good, int bad, struct Outcome *end)
{
    while (bad - good > 1) {
        const int middle = good + (bad - good) / 2;
        const struct Outcome outcome = plan_with(asked, (double)middle / TENTHS);
        if (outcome.passes) {
            good = middle;
        } else {
            bad = middle;
            *end = outcome;
        }
    }
    return good;
}

static struct Reach reach_of(const struct Asked *asked)
{
    const struct Plan *plan = asked->wend->plan;
    struct Reach reach = {.segment = asked->segment, .run = asked->run, .now = asked->now};
    double width = find_width(asked);
    reach.ends = width > 0;
    width = width > 0 ? width : fmax(8 * asked->now, 100);
    const int last = (int)ceil(width * TENTHS);
    struct Outcome end = {.passes = true, .check = -1};
    int good = 0;
    int next = 0;
    for (int i = 1; i <= STEPS && end.passes; i++) {
        good = next;
        next = (int)((double)last * i / STEPS);
        end = next > good ? plan_with(asked, (double)next / TENTHS) : end;
    }
    reach.ends = !end.passes;
    reach.more = (double)(end.passes ? next : halve(asked, good, next, &end)) / TENTHS;
    if (!end.passes && end.check >= 0) {
        reach.check = say(asked->wend->arena, plan->runs[end.run].checks[end.check].title);
    }
    return reach;
}

struct Reaches library_reaches(struct Wend *wend)
{
    const struct Plan *plan = wend->plan;
    struct Reach *list = arena_array(wend->arena, (size_t)plan->run_count + (size_t)plan->segment_count, sizeof *list);
    struct Reaches out = {.list = list};
    for (int r = 0; list != NULL && plan->verdict != VERDICT_FAIL && r < plan->run_count; r++) {
        if (plan->runs[r].rated && plan->runs[r].design_current_a > 0) {
            const struct Asked asked = {wend, -1, r, plan->runs[r].design_current_a};
            list[out.count++] = reach_of(&asked);
        }
    }
    int looked_at = 0;
    for (int i = 0; list != NULL && plan->verdict != VERDICT_FAIL && i < plan->segment_count; i++) {
        const struct Asked asked = {wend, i, -1, plan->segments[i].surveyed->length_m.value};
        if (plan->segments[i].run_count == 0 || survey_hole(plan->segments[i].surveyed->way)) {
            continue; /* nothing goes there; a hole is as long as its wall is thick */
        }
        if (++looked_at > SEGMENTS_MOST) {
            out.left_out++;
            continue;
        }
        list[out.count++] = reach_of(&asked);
    }
    return out;
}
