/* A plan in the making, and the store of patterns: flat arrays, since there may be thousands of either. */
#include "cutting_private.h"

#include <string.h>

bool cutting_bins_make(struct Arena *arena, struct CuttingBins *bins, int pieces)
{
    const size_t room = (size_t)pieces + 1;
    *bins = (struct CuttingBins){
        .class_index = arena_array(arena, room, sizeof *bins->class_index),
        .start = arena_array(arena, room, sizeof *bins->start),
        .type = arena_array(arena, room, sizeof *bins->type),
        .copies = arena_array(arena, room, sizeof *bins->copies),
    };
    return bins->class_index != NULL && bins->start != NULL && bins->type != NULL && bins->copies != NULL;
}

void cutting_bins_open(struct CuttingBins *bins, int class_index)
{
    bins->class_index[bins->count] = class_index;
    bins->start[bins->count] = bins->entries;
    bins->count++;
}

void cutting_bins_put(struct CuttingBins *bins, int type, int copies)
{
    bins->type[bins->entries] = type;
    bins->copies[bins->entries] = copies;
    bins->entries++;
}

int cutting_bins_end(const struct CuttingBins *bins, int bin)
{
    return bin + 1 < bins->count ? bins->start[bin + 1] : bins->entries;
}

void cutting_bins_copy(struct CuttingBins *to, const struct CuttingBins *from)
{
    to->count = from->count;
    to->entries = from->entries;
    memcpy(to->class_index, from->class_index, (size_t)from->count * sizeof *to->class_index);
    memcpy(to->start, from->start, (size_t)from->count * sizeof *to->start);
    memcpy(to->type, from->type, (size_t)from->entries * sizeof *to->type);
    memcpy(to->copies, from->copies, (size_t)from->entries * sizeof *to->copies);
}

/* Every bin holds what fits, and all that is wanted is there, no more and no less. */
static bool holds_all(const struct CuttingBins *bins, const struct CuttingCase *problem, int *left)
{
    memcpy(left, problem->wanted, (size_t)problem->type_count * sizeof *left);
    for (int bin = 0; bin < bins->count; bin++) {
        int64_t used_mm = 0;
        for (int e = bins->start[bin]; e < cutting_bins_end(bins, bin); e++) {
            used_mm += (int64_t)bins->copies[e] * problem->length_mm[bins->type[e]];
            left[bins->type[e]] -= bins->copies[e];
        }
        if (used_mm > problem->classes[bins->class_index[bin]].length_mm) {
            return false;
        }
    }
    for (int type = 0; type < problem->type_count; type++) {
        if (left[type] != 0) {
            return false;
        }
    }
    return true;
}

int64_t cutting_bins_cost(const struct CuttingBins *bins, const struct CuttingCase *problem, int *scratch)
{
    int64_t cost = 0;
    int64_t side[CUTTING_SIDES] = {0};
    if (!holds_all(bins, problem, scratch)) {
        return cutting_none;
    }
    for (int c = 0; c < problem->class_count; c++) {
        int opened = 0;
        for (int bin = 0; bin < bins->count; bin++) {
            opened += bins->class_index[bin] == c ? 1 : 0;
        }
        if (opened > problem->classes[c].most) {
            return cutting_none;
        }
        cost += opened * problem->classes[c].cost;
        for (int s = 0; s < problem->side_count; s++) {
            side[s] += opened * problem->classes[c].side[s];
        }
    }
    for (int s = 0; s < problem->side_count; s++) {
        if (side[s] > problem->side_most[s]) {
            return cutting_none;
        }
    }
    return cost;
}

/* Twice the room, the old content kept. */
static void *grown(struct Arena *arena, const void *old, int used, int room, size_t size)
{
    void *fresh = arena_array(arena, (size_t)room, size);
    if (fresh != NULL && used > 0) {
        memcpy(fresh, old, (size_t)used * size);
    }
    return fresh;
}

static bool make_room(struct CuttingPool *pool, int entries)
{
    if (pool->count == pool->room) {
        const int room = pool->room == 0 ? 256 : 2 * pool->room;
        struct CuttingPattern *patterns = grown(pool->arena, pool->patterns, pool->count, room, sizeof *patterns);
        if (patterns == NULL) {
            return false;
        }
        pool->patterns = patterns;
        pool->room = room;
    }
    if (pool->used + entries > pool->entry_room) {
        const int room = 2 * (pool->used + entries) + 1024;
        int *type = grown(pool->arena, pool->type, pool->used, room, sizeof *type);
        int *copies = grown(pool->arena, pool->copies, pool->used, room, sizeof *copies);
        if (type == NULL || copies == NULL) {
            return false;
        }
        pool->type = type;
        pool->copies = copies;
        pool->entry_room = room;
    }
    return true;
}

int cutting_pool_add(struct CuttingPool *pool, int class_index, int type_count, const int *copies_of_type)
{
    int entries = 0;
    for (int type = 0; type < type_count; type++) {
        entries += copies_of_type[type] > 0 ? 1 : 0;
    }
    if (!make_room(pool, entries)) {
        return -1;
    }
    pool->patterns[pool->count] = (struct CuttingPattern){class_index, pool->used, entries};
    for (int type = 0; type < type_count; type++) {
        if (copies_of_type[type] > 0) {
            pool->type[pool->used] = type;
            pool->copies[pool->used] = copies_of_type[type];
            pool->used++;
        }
    }
    return pool->count++;
}

bool cutting_pool_same(const struct CuttingPool *pool, int pattern, int class_index, int type_count,
                       const int *copies_of_type)
{
    const struct CuttingPattern *known = &pool->patterns[pattern];
    if (known->class_index != class_index) {
        return false;
    }
    int pieces = 0;
    for (int e = known->start; e < known->start + known->entries; e++) {
        if (copies_of_type[pool->type[e]] != pool->copies[e]) {
            return false;
        }
        pieces += pool->copies[e];
    }
    for (int type = 0; type < type_count; type++) {
        pieces -= copies_of_type[type];
    }
    return pieces == 0;
}

int cutting_pool_new(struct CuttingPool *pool, int class_index, int type_count, const int *copies_of_type)
{
    for (int p = 0; p < pool->count; p++) {
        if (cutting_pool_same(pool, p, class_index, type_count, copies_of_type)) {
            return p;
        }
    }
    return cutting_pool_add(pool, class_index, type_count, copies_of_type);
}
