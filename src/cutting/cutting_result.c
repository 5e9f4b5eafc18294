/* The bins as found -> the plan as given back: bins sorted, each given its drum or offcut, each piece named. */
#include "cutting_private.h"

#include <stdlib.h>
#include <string.h>

/* A bin with what decides its place in the plan. */
struct Sorted {
    const struct CuttingBins *bins;
    int bin, class_index;
};

static int in_order(const void *left, const void *right)
{
    const struct Sorted *a = left, *b = right;
    if (a->class_index != b->class_index) {
        return a->class_index < b->class_index ? -1 : 1;
    }
    const struct CuttingBins *bins = a->bins;
    int at_a = bins->start[a->bin], at_b = bins->start[b->bin];
    while (at_a < cutting_bins_end(bins, a->bin) && at_b < cutting_bins_end(bins, b->bin)) {
        if (bins->type[at_a] != bins->type[at_b]) {
            return bins->type[at_a] < bins->type[at_b] ? -1 : 1;
        }
        if (bins->copies[at_a] != bins->copies[at_b]) {
            return bins->copies[at_a] > bins->copies[at_b] ? -1 : 1;
        }
        at_a++;
        at_b++;
    }
    if ((at_a < cutting_bins_end(bins, a->bin)) != (at_b < cutting_bins_end(bins, b->bin))) {
        return at_a < cutting_bins_end(bins, a->bin) ? -1 : 1;
    }
    return a->bin < b->bin ? -1 : 1;
}

/* Which stock or offcut the n-th bin of a class is, from 0. */
static int source_of(const struct CuttingJob *job, const struct CuttingKinds *kinds, int class_index, int number)
{
    int at = kinds->source_first[class_index];
    if (!kinds->classes[class_index].bought) {
        return kinds->source[at + number];
    }
    while (job->stock[kinds->source[at]].available != CUTTING_UNLIMITED &&
           job->stock[kinds->source[at]].available <= number) {
        number -= job->stock[kinds->source[at]].available;
        at++;
    }
    return kinds->source[at];
}

/* Cuts the bin's pieces off the front of each type. */
static bool cut_bin(struct Arena *arena, const struct CuttingKinds *kinds, const struct CuttingBins *bins, int bin,
                    int *taken, struct CuttingOpened *opened)
{
    int count = 0;
    for (int e = bins->start[bin]; e < cutting_bins_end(bins, bin); e++) {
        count += bins->copies[e];
    }
    int *pieces = arena_array(arena, (size_t)count, sizeof *pieces);
    if (pieces == NULL) {
        return false;
    }
    for (int e = bins->start[bin]; e < cutting_bins_end(bins, bin); e++) {
        const int type = bins->type[e];
        for (int copy = 0; copy < bins->copies[e]; copy++) {
            pieces[opened->piece_count++] = kinds->order[kinds->first[type] + taken[type]++];
        }
        opened->used_mm += bins->copies[e] * kinds->length_mm[type];
    }
    opened->pieces = pieces;
    opened->left_mm = opened->length_mm - opened->used_mm;
    return true;
}

/* What stays uncut is the last of each type. */
static bool list_uncut(struct Arena *arena, const struct CuttingKinds *kinds, const int *uncut,
                       struct CuttingPlan *plan)
{
    int *list = arena_array(arena, (size_t)kinds->pieces + 1, sizeof *list);
    if (list == NULL) {
        return false;
    }
    for (int type = 0; type < kinds->type_count; type++) {
        for (int i = kinds->wanted[type] - uncut[type]; i < kinds->wanted[type]; i++) {
            list[plan->uncut_count++] = kinds->order[kinds->first[type] + i];
            plan->uncut_mm += kinds->length_mm[type];
        }
    }
    plan->uncut = list;
    return true;
}

static void add_up(const struct CuttingJob *job, const struct CuttingOpened *opened, int *buy, struct CuttingPlan *plan)
{
    if (!opened->bought) {
        plan->offcuts_used++;
        return;
    }
    const int64_t price = job->stock[opened->source].price;
    plan->price_known = plan->price_known && price != CUTTING_PRICE_UNKNOWN;
    plan->price += plan->price_known ? price : 0;
    plan->bought_mm += opened->length_mm;
    plan->waste_mm += opened->left_mm;
    plan->drums++;
    buy[opened->source]++;
}

bool cutting_result(struct Arena *arena, const struct CuttingJob *job, const struct CuttingKinds *kinds,
                    const struct CuttingBins *bins, const int *uncut, struct CuttingPlan *plan)
{
    struct Sorted *sorted = arena_array(arena, (size_t)bins->count + 1, sizeof *sorted);
    struct CuttingOpened *opened = arena_array(arena, (size_t)bins->count + 1, sizeof *opened);
    int *taken = arena_array(arena, (size_t)kinds->type_count + 1, sizeof *taken);
    int *buy = arena_array(arena, (size_t)job->stock_count + 1, sizeof *buy);
    if (arena_failed(arena) || !list_uncut(arena, kinds, uncut, plan)) {
        return false;
    }
    for (int bin = 0; bin < bins->count; bin++) {
        sorted[bin] = (struct Sorted){bins, bin, bins->class_index[bin]};
    }
    qsort(sorted, (size_t)bins->count, sizeof *sorted, in_order);
    plan->price_known = true;
    int number = 0;
    for (int i = 0; i < bins->count; i++) {
        const int c = sorted[i].class_index;
        number = i > 0 && sorted[i - 1].class_index == c ? number + 1 : 0;
        opened[i].bought = kinds->classes[c].bought;
        opened[i].source = source_of(job, kinds, c, number);
        opened[i].length_mm = kinds->classes[c].length_mm;
        if (!cut_bin(arena, kinds, bins, sorted[i].bin, taken, &opened[i])) {
            return false;
        }
        add_up(job, &opened[i], buy, plan);
    }
    plan->price = plan->price_known ? plan->price : 0;
    plan->opened = opened;
    plan->opened_count = bins->count;
    plan->buy = buy;
    return true;
}
