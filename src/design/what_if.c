/* A survey with something changed, for "what if". The survey itself stays as it is; what is not changed is shared. */
#include "design.h"

#include <string.h>

static const struct Load *grown(struct Arena *arena, const struct Run *run, double load_ratio)
{
    struct Load *loads = arena_array(arena, (size_t)run->load_count, sizeof *loads);
    for (int i = 0; loads != NULL && i < run->load_count; i++) {
        loads[i] = run->loads[i];
        loads[i].current_a.value *= load_ratio;
        loads[i].power_w.value *= load_ratio;
    }
    return loads;
}

const struct Survey *design_variant(struct Arena *arena, const struct Survey *survey, const struct Variant *variant)
{
    struct Survey *changed = arena_alloc(arena, sizeof *changed);
    struct Run *runs = arena_array(arena, (size_t)survey->run_count, sizeof *runs);
    if (changed == NULL || runs == NULL) {
        return NULL;
    }
    memcpy(runs, survey->runs, (size_t)survey->run_count * sizeof *runs);
    for (int r = 0; r < survey->run_count; r++) {
        if (runs[r].load_count > 0) {
            runs[r].loads = grown(arena, &survey->runs[r], variant->load_ratio);
        }
        runs[r].start_current_a.value *= variant->load_ratio;
        if (variant->any_size) {
            runs[r].cable.size_mm2 = runs[r].kind == RUN_POWER ? (struct Quantity){0} : runs[r].cable.size_mm2;
        }
        if (variant->any_device) {
            runs[r].device.rating_a = (struct Quantity){0};
        }
    }
    *changed = *survey;
    changed->runs = runs;
    return arena_failed(arena) ? NULL : changed;
}
