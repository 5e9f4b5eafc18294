/* Other ducts, and what the order comes to with each size. Every answer is a whole plan of its own. */
#include "library_private.h"

#include "buying/buying.h"
#include "design/design.h"

enum { DUCTS_MOST = 12, COSTS_MOST = 40 };

struct Gathering {
    struct Wend *wend;
    struct SizeCost *costs;
    struct DuctTrial *ducts;
    struct OptionsMore out;
};

/* Whether the run passes with that size in that duct, and the whole is no worse than it was. */
static bool passes(const struct Gathering *all, int run, double size_mm2, int segment, double duct_mm)
{
    const struct Plan *plan = all->wend->plan;
    struct Replanned other;
    bool good = false;
    if (replan_begin(PLAN_FOR_VERDICT, &other)) {
        const struct Survey *fixed = design_fixed(other.arena, plan->survey, plan);
        const struct Survey *sized = fixed == NULL ? NULL : design_sized(other.arena, fixed, run, size_mm2);
        replan_survey(all->wend, sized == NULL ? NULL : design_ducted(other.arena, sized, segment, duct_mm), &other);
    }
    if (other.staged.plan != NULL) {
        good = other.staged.plan->runs[run].pass && other.staged.plan->verdict >= plan->verdict;
    }
    replan_end(all->wend, &other);
    return good;
}

static double least_duct(const struct Gathering *all, int run, double size_mm2, int segment)
{
    for (int i = 0; design_duct_size(i) > 0; i++) {
        if (passes(all, run, size_mm2, segment, design_duct_size(i))) {
            return design_duct_size(i);
        }
    }
    return 0;
}

static void add_duct(struct Gathering *all, int run, double size_mm2, int segment, bool fails_now)
{
    const double duct_mm = all->out.duct_count < DUCTS_MOST ? least_duct(all, run, size_mm2, segment) : 0;
    if (duct_mm > 0) {
        all->ducts[all->out.duct_count++] = (struct DuctTrial){run, segment, size_mm2, fails_now, duct_mm};
    }
}

/* The smallest sizes that fail by their ducts alone, in each duct that is the only one in the way; and the size that is
 * taken, in each duct that is laid for it. */
static void add_ducts(struct Gathering *all, int run)
{
    enum { SIZES_MOST = 2 };
    const struct Plan *plan = all->wend->plan;
    const struct PlanRun *planned = &plan->runs[run];
    int sizes = 0;
    for (int i = 0; i < planned->settled->along_count; i++) {
        const struct Segment *segment = plan->segments[planned->settled->along[i]].surveyed;
        if (planned->pass && survey_duct(segment->way) && survey_dug(segment)) {
            add_duct(all, run, planned->size_mm2, planned->settled->along[i], false);
        }
    }
    for (int i = 0; i < planned->option_count && sizes < SIZES_MOST; i++) {
        const struct CheckList *fails = &planned->options[i].fails;
        if (fails->count != 1 || !text_same(fails->list[0].kind, "duct-fill")) {
            continue;
        }
        sizes++;
        for (int k = 0; k < planned->settled->along_count; k++) {
            if (survey_duct(plan->segments[planned->settled->along[k]].surveyed->way)) {
                add_duct(all, run, planned->options[i].size_mm2, planned->settled->along[k], true);
            }
        }
    }
}

static const struct PartsList *priced_with(const struct Gathering *all, int run, double size_mm2)
{
    struct Wend *wend = all->wend;
    const struct Survey *fixed = design_fixed(wend->arena, wend->plan->survey, wend->plan);
    const struct Survey *sized = fixed == NULL ? NULL : design_sized(wend->arena, fixed, run, size_mm2);
    struct Diag *aside = diag_new(wend->arena);
    const struct Staged staged =
        sized == NULL || aside == NULL
            ? (struct Staged){NULL, NULL}
            : library_stages_of(PLAN_FOR_PARTS, wend->arena, aside, wend->plan->edition, sized, wend->plan->route);
    return staged.parts == NULL ? NULL : parts_priced(wend->arena, staged.parts, wend->prices);
}

static void add_costs(struct Gathering *all, int run)
{
    const struct PlanRun *planned = &all->wend->plan->runs[run];
    for (int i = 0; i < planned->option_count && all->out.cost_count < COSTS_MOST; i++) {
        const double size_mm2 = planned->options[i].size_mm2;
        all->costs[all->out.cost_count++] = (struct SizeCost){run, size_mm2, priced_with(all, run, size_mm2)};
    }
}

struct OptionsMore library_options_more(struct Wend *wend, int run)
{
    struct Gathering all = {.wend = wend,
                            .costs = arena_array(wend->arena, COSTS_MOST, sizeof *all.costs),
                            .ducts = arena_array(wend->arena, DUCTS_MOST, sizeof *all.ducts)};
    for (int r = 0; all.costs != NULL && all.ducts != NULL && r < wend->plan->run_count; r++) {
        if (wend->plan->runs[r].rated && (run < 0 || run == r)) {
            add_ducts(&all, r);
            if (wend->prices != NULL) {
                add_costs(&all, r);
            }
        }
    }
    all.out.costs = all.costs;
    all.out.ducts = all.ducts;
    return all.out;
}
