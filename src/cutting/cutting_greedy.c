/* Quick plans: bin after bin, each filled as full as its length allows with what is left. They start the search with a
 * good plan and finish it when the linear programme, rounded down, leaves little to do. */
#include "cutting_private.h"

#include <math.h>
#include <string.h>

enum { FILL_STEPS_MOST = 3000 };

/* Fills one bin of the class from scratch_types: the longest piece first if `with_longest`, then as full as may be. */
static bool fill_bin(struct CuttingSearch *search, int class_index, bool with_longest)
{
    const struct CuttingCase *problem = search->problem;
    int *left = search->scratch_types;
    int *pattern = search->pattern;
    int room_mm = problem->classes[class_index].length_mm;
    memset(pattern, 0, (size_t)problem->type_count * sizeof *pattern);
    for (int type = 0; with_longest && type < problem->type_count; type++) {
        if (left[type] > 0) {
            pattern[type] = 1;
            left[type]--;
            room_mm -= problem->length_mm[type];
            break;
        }
    }
    for (int type = 0; type < problem->type_count; type++) {
        search->worth[type] = problem->length_mm[type];
    }
    bool found;
    cutting_knapsack_load(&search->knapsack, problem, left, search->worth);
    cutting_knapsack_most(&search->knapsack, room_mm, 0, FILL_STEPS_MOST, &found);
    for (int i = 0; found && i < search->knapsack.count; i++) {
        pattern[search->knapsack.items[i].type] += search->knapsack.items[i].best;
        left[search->knapsack.items[i].type] -= search->knapsack.items[i].best;
    }
    if (!found && !with_longest) {
        return false;
    }
    cutting_bins_open(&search->draft, class_index);
    for (int type = 0; type < problem->type_count; type++) {
        if (pattern[type] > 0) {
            cutting_bins_put(&search->draft, type, pattern[type]);
        }
    }
    search->scratch_classes[class_index]--;
    return true;
}

/* The class to open for a piece of that length: the main one, else the shortest that takes it; -1 when
 * none does. */
static int class_for(const struct CuttingSearch *search, int length_mm, int main_class)
{
    const struct CuttingCase *problem = search->problem;
    int chosen = -1;
    for (int c = 0; c < problem->class_count; c++) {
        if (search->scratch_classes[c] <= 0 || problem->classes[c].length_mm < length_mm) {
            continue;
        }
        if (c == main_class) {
            return c;
        }
        if (chosen < 0 || problem->classes[c].length_mm < problem->classes[chosen].length_mm) {
            chosen = c;
        }
    }
    return chosen;
}

bool cutting_greedy(struct CuttingSearch *search, int main_class)
{
    const struct CuttingCase *problem = search->problem;
    for (int c = problem->class_count - 1; c >= 0; c--) {
        while (!problem->classes[c].bought && search->scratch_classes[c] > 0 && fill_bin(search, c, false)) {
        }
    }
    for (int type = 0; type < problem->type_count; type++) {
        while (search->scratch_types[type] > 0) {
            const int c = class_for(search, problem->length_mm[type], main_class);
            if (c < 0) {
                return false;
            }
            fill_bin(search, c, true);
        }
    }
    return true;
}

/* Puts what each bin holds into the cheapest class that still takes it. */
static void shrink_bins(struct CuttingSearch *search)
{
    const struct CuttingCase *problem = search->problem;
    struct CuttingBins *bins = &search->draft;
    for (int bin = 0; bin < bins->count; bin++) {
        int64_t used_mm = 0;
        for (int e = bins->start[bin]; e < cutting_bins_end(bins, bin); e++) {
            used_mm += (int64_t)bins->copies[e] * problem->length_mm[bins->type[e]];
        }
        int best = bins->class_index[bin];
        for (int c = 0; c < problem->class_count; c++) {
            if (search->scratch_classes[c] > 0 && problem->classes[c].length_mm >= used_mm &&
                problem->classes[c].cost < problem->classes[best].cost) {
                best = c;
            }
        }
        search->scratch_classes[bins->class_index[bin]]++;
        search->scratch_classes[best]--;
        bins->class_index[bin] = best;
    }
}

void cutting_greedy_start(struct CuttingSearch *search)
{
    const struct CuttingCase *problem = search->problem;
    for (int main_class = CUTTING_SHORTEST; main_class < problem->class_count; main_class++) {
        if (main_class >= 0 && !problem->classes[main_class].bought) {
            continue;
        }
        search->draft.count = search->draft.entries = 0;
        memcpy(search->scratch_types, problem->wanted, (size_t)problem->type_count * sizeof *search->scratch_types);
        for (int c = 0; c < problem->class_count; c++) {
            search->scratch_classes[c] = problem->classes[c].most;
        }
        if (cutting_greedy(search, main_class)) {
            shrink_bins(search);
            cutting_record(search);
        }
    }
}

/* The draft takes the whole part of every share; the scratch keeps what is then left. */
static void round_down(struct CuttingSearch *search, const struct CuttingLevel *level, int depth)
{
    const struct CuttingCase *problem = search->problem;
    const struct CuttingPool *pool = search->pool;
    cutting_draft_path(search, depth);
    memcpy(search->scratch_types, level->wanted, (size_t)problem->type_count * sizeof *search->scratch_types);
    for (int i = 0; i < level->share_count; i++) {
        if (level->share_pattern[i] < 0) {
            continue;
        }
        const struct CuttingPattern *pattern = &pool->patterns[level->share_pattern[i]];
        int times = (int)floor(level->share[i] + 1e-6);
        for (int e = pattern->start; e < pattern->start + pattern->entries; e++) {
            const int fit = search->scratch_types[pool->type[e]] / pool->copies[e];
            times = fit < times ? fit : times;
        }
        for (int copy = 0; copy < times; copy++) {
            cutting_bins_open(&search->draft, pattern->class_index);
            for (int e = pattern->start; e < pattern->start + pattern->entries; e++) {
                cutting_bins_put(&search->draft, pool->type[e], pool->copies[e]);
                search->scratch_types[pool->type[e]] -= pool->copies[e];
            }
        }
    }
}

/* How many bins of each class are left once the draft is taken off: `sparing`, only as many as the programme opens. */
static void set_room(struct CuttingSearch *search, const struct CuttingLevel *level, int from_bin, bool sparing)
{
    const struct CuttingCase *problem = search->problem;
    for (int c = 0; c < problem->class_count; c++) {
        double opened = 0;
        for (int i = 0; sparing && i < level->share_count; i++) {
            const int pattern = level->share_pattern[i];
            const int class_index = pattern < 0 ? -1 - pattern : search->pool->patterns[pattern].class_index;
            opened += class_index == c ? level->share[i] : 0;
        }
        const int most = level->high[c];
        const bool counted = problem->classes[c].cost > 0 || problem->classes[c].bought;
        const int enough = (int)ceil(opened - 1e-6);
        search->scratch_classes[c] = sparing && counted && enough < most ? enough : most;
    }
    for (int bin = from_bin; bin < search->draft.count; bin++) {
        search->scratch_classes[search->draft.class_index[bin]]--;
    }
}

void cutting_greedy_round(struct CuttingSearch *search, int depth)
{
    const struct CuttingLevel *level = search->levels[depth];
    for (int sparing = 1; sparing >= 0; sparing--) {
        cutting_draft_path(search, depth);
        const int from_bin = search->draft.count;
        round_down(search, level, depth);
        set_room(search, level, from_bin, sparing == 1);
        if (cutting_greedy(search, CUTTING_SHORTEST)) {
            if (sparing == 0) {
                shrink_bins(search);
            }
            cutting_record(search);
            break;
        }
    }
}
