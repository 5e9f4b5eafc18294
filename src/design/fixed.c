/* A survey whose sizes and devices are settled, and one that is made longer or more heavily loaded: what a plan would
 * bear is asked of plans of these. What is not changed is shared. */
#include "design.h"

#include "tables/mechanics_tables.h"

#include <string.h>

static struct Run *copy_runs(struct Arena *arena, const struct Survey *survey, struct Survey **changed)
{
    struct Run *runs = arena_array(arena, (size_t)survey->run_count, sizeof *runs);
    *changed = arena_alloc(arena, sizeof **changed);
    if (runs == NULL || *changed == NULL) {
        return NULL;
    }
    memcpy(runs, survey->runs, (size_t)survey->run_count * sizeof *runs);
    **changed = *survey;
    (*changed)->runs = runs;
    return runs;
}

const struct Survey *design_fixed(struct Arena *arena, const struct Survey *survey, const struct Plan *plan)
{
    struct Survey *changed;
    struct Run *runs = copy_runs(arena, survey, &changed);
    for (int r = 0; runs != NULL && r < survey->run_count; r++) {
        const struct PlanRun *planned = &plan->runs[r];
        if (!planned->rated) {
            continue;
        }
        const struct Mark mark = runs[r].device.given ? runs[r].device.mark : runs[r].mark;
        runs[r].cable.size_mm2 = (struct Quantity){planned->size_mm2, true, runs[r].cable.mark};
        runs[r].device = planned->settled->device;
        runs[r].device.rating_a = (struct Quantity){planned->rating_a, true, mark};
        runs[r].device.curve_given = planned->has_curve;
    }
    return runs != NULL ? changed : NULL;
}

const struct Survey *design_longer(struct Arena *arena, const struct Survey *survey, int segment, double more_m)
{
    struct Survey *changed = arena_alloc(arena, sizeof *changed);
    struct Segment *segments = arena_array(arena, (size_t)survey->segment_count, sizeof *segments);
    if (changed == NULL || segments == NULL) {
        return NULL;
    }
    memcpy(segments, survey->segments, (size_t)survey->segment_count * sizeof *segments);
    segments[segment].length_m.value += more_m;
    if (!segments[segment].insulated_length_m.given) { /* all of it, as the reader has it */
        segments[segment].insulated_length_m.value += more_m;
    }
    *changed = *survey;
    changed->segments = segments;
    return changed;
}

const struct Survey *design_heavier(struct Arena *arena, const struct Survey *survey, int run, double times)
{
    struct Survey *changed;
    struct Run *runs = copy_runs(arena, survey, &changed);
    if (runs == NULL) {
        return NULL;
    }
    const int count = runs[run].load_count;
    struct Load *loads = arena_array(arena, (size_t)count + 1, sizeof *loads);
    for (int i = 0; loads != NULL && i < count; i++) {
        loads[i] = runs[run].loads[i];
        loads[i].current_a.value *= times;
        loads[i].power_w.value *= times;
    }
    runs[run].loads = loads;
    runs[run].start_current_a.value *= times;
    return loads != NULL ? changed : NULL;
}

const struct Survey *design_sized(struct Arena *arena, const struct Survey *survey, int run, double size_mm2)
{
    struct Survey *changed;
    struct Run *runs = copy_runs(arena, survey, &changed);
    if (runs == NULL) {
        return NULL;
    }
    runs[run].cable.size_mm2 = (struct Quantity){size_mm2, true, runs[run].cable.mark};
    return changed;
}

const struct Survey *design_ducted(struct Arena *arena, const struct Survey *survey, int segment, double nominal_mm)
{
    struct Survey *changed = arena_alloc(arena, sizeof *changed);
    struct Segment *segments = arena_array(arena, (size_t)survey->segment_count, sizeof *segments);
    if (changed == NULL || segments == NULL) {
        return NULL;
    }
    memcpy(segments, survey->segments, (size_t)survey->segment_count * sizeof *segments);
    segments[segment].duct_size_mm = (struct Quantity){nominal_mm, true, segments[segment].duct_size_mm.mark};
    segments[segment].duct_bore_mm = (struct Quantity){0, false, segments[segment].duct_bore_mm.mark};
    *changed = *survey;
    changed->segments = segments;
    return changed;
}

double design_duct_size(int index)
{
    const double *sizes = NULL;
    const int count = duct_sizes(&sizes);
    return index >= 0 && index < count ? sizes[index] : 0;
}
