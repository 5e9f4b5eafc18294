/* Whether the runs of the file that share a stretch are alike in size, where some of those sizes are still to be
 * chosen.
 *
 * What a run may carry depends on the sizes of the runs beside it, and theirs on its own. So sizes are decided in
 * passes. In each pass every run is decided from what all of them came to in the pass before, so that their order in
 * the file says nothing. A stretch once found unlike stays so, also where the sizes that follow from it are alike
 * again: that is the safe side, and it ends. */
#include "design/mechanics/mechanics_private.h"

#include <string.h>

enum { PASSES_MOST = 8 };

static void widen(struct Sharers *sharers, int run, double size_mm2)
{
    if (sharers->least_run < 0 || size_mm2 < sharers->least_mm2) {
        sharers->next_least_mm2 = sharers->least_run < 0 ? 0 : sharers->least_mm2;
        sharers->least_mm2 = size_mm2;
        sharers->least_run = run;
    } else if (sharers->next_least_mm2 <= 0 || size_mm2 < sharers->next_least_mm2) {
        sharers->next_least_mm2 = size_mm2;
    }
    if (sharers->most_run < 0 || size_mm2 > sharers->most_mm2) {
        sharers->next_most_mm2 = sharers->most_run < 0 ? 0 : sharers->most_mm2;
        sharers->most_mm2 = size_mm2;
        sharers->most_run = run;
    } else if (size_mm2 > sharers->next_most_mm2) {
        sharers->next_most_mm2 = size_mm2;
    }
}

/* Writes down for every segment what is known of the sizes there, and which of them are unlike. */
static void spread(struct Design *design, const double *sizes_mm2)
{
    const struct Survey *survey = design->survey;
    for (int s = 0; s < survey->segment_count; s++) {
        const bool unlike = design->sharers[s].unlike;
        design->sharers[s] = (struct Sharers){.unlike = unlike, .least_run = -1, .most_run = -1};
    }
    for (int r = 0; r < survey->run_count; r++) {
        const struct Run *run = &survey->runs[r];
        for (int i = 0; run->kind == RUN_POWER && sizes_mm2[r] > 0 && i < run->along_count; i++) {
            widen(&design->sharers[run->along[i]], r, sizes_mm2[r]);
        }
    }
    for (int s = 0; s < survey->segment_count; s++) {
        struct Sharers *sharers = &design->sharers[s];
        sharers->unlike = sharers->unlike ||
                          (sharers->least_run >= 0 && !grouping_sizes_alike(sharers->least_mm2, sharers->most_mm2));
    }
}

struct Span likeness_of_others(const struct Design *design, const struct Run *run, int segment)
{
    const struct Sharers *sharers = &design->sharers[segment];
    if (sharers->least_run < 0) {
        return (struct Span){0};
    }
    const struct Run *runs = design->survey->runs;
    const bool own_least = text_same(runs[sharers->least_run].name, run->name);
    const bool own_most = text_same(runs[sharers->most_run].name, run->name);
    return (struct Span){.least_mm2 = own_least ? sharers->next_least_mm2 : sharers->least_mm2,
                         .most_mm2 = own_most ? sharers->next_most_mm2 : sharers->most_mm2};
}

/* Some run that shares a stretch with another is to be chosen a size. */
static bool open_sizes(const struct Design *design)
{
    const struct Survey *survey = design->survey;
    for (int r = 0; r < survey->run_count; r++) {
        const struct Run *run = &survey->runs[r];
        for (int i = 0; run->kind == RUN_POWER && !run->cable.size_mm2.given && i < run->along_count; i++) {
            if (design->loaded_runs[run->along[i]] > 1) {
                return true;
            }
        }
    }
    return false;
}

/* Decides every run's size and nothing else; what it would report is reported when the plan is made. */
static bool decide_sizes(const struct Design *design, double *sizes_mm2)
{
    struct Design aside = *design;
    aside.diag = diag_new(design->arena);
    if (aside.diag == NULL || !decided_begin(&aside)) {
        return false;
    }
    for (int r = 0; r < design->survey->run_count; r++) {
        const struct Run *run = &design->survey->runs[r];
        double size_mm2 = run->cable.size_mm2.given ? run->cable.size_mm2.value : 0;
        if (run->kind == RUN_POWER && !design_size_alone(&aside, run, &size_mm2)) {
            return false;
        }
        sizes_mm2[r] = size_mm2;
        decided_size(&aside, r, size_mm2);
    }
    return true;
}

static bool same_sizes(const struct Survey *survey, const double *a, const double *b)
{
    for (int r = 0; r < survey->run_count; r++) {
        if (a[r] < b[r] || a[r] > b[r]) {
            return false;
        }
    }
    return true;
}

static void all_unlike(struct Design *design)
{
    for (int s = 0; s < design->survey->segment_count; s++) {
        design->sharers[s].unlike = design->sharers[s].unlike || design->loaded_runs[s] > 1;
    }
}

bool likeness_settle(struct Design *design)
{
    const struct Survey *survey = design->survey;
    design->sharers = arena_array(design->arena, (size_t)survey->segment_count, sizeof *design->sharers);
    double *known = arena_array(design->arena, (size_t)survey->run_count, sizeof *known);
    double *found = arena_array(design->arena, (size_t)survey->run_count, sizeof *found);
    if (design->sharers == NULL || known == NULL || found == NULL) {
        return false;
    }
    for (int r = 0; r < survey->run_count; r++) {
        known[r] = survey->runs[r].cable.size_mm2.given ? survey->runs[r].cable.size_mm2.value : 0;
    }
    spread(design, known);
    for (int pass = 0; open_sizes(design) && pass < PASSES_MOST; pass++) {
        if (!decide_sizes(design, found)) {
            return !arena_failed(design->arena); /* the plan will say what is missing */
        }
        const bool settled = same_sizes(survey, known, found);
        memcpy(known, found, (size_t)survey->run_count * sizeof *known);
        if (settled) {
            return true;
        }
        spread(design, known);
    }
    if (open_sizes(design)) {
        all_unlike(design);
    }
    return true;
}

void likeness_as_planned(struct Design *design, const struct Plan *plan)
{
    double *sizes_mm2 = arena_array(design->arena, (size_t)plan->run_count, sizeof *sizes_mm2);
    design->sharers = arena_array(design->arena, (size_t)design->survey->segment_count, sizeof *design->sharers);
    if (sizes_mm2 == NULL || design->sharers == NULL) {
        return;
    }
    for (int r = 0; r < plan->run_count; r++) {
        sizes_mm2[r] = plan->runs[r].size_mm2;
    }
    for (int s = 0; s < plan->segment_count; s++) {
        design->sharers[s].unlike = plan->segments[s].unlike_sizes;
    }
    spread(design, sizes_mm2);
}
