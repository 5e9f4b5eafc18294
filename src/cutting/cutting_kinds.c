/* Pieces of one length are one type and stock of one length is one class: the search counts, it does not name. Both are
 * sorted, so that the order in which a job lists them cannot bear on the plan's sums. */
#include "cutting_private.h"

#include <stdlib.h>

struct Entry {
    int length_mm, index;
    int64_t rank; /* the lower comes first among equal lengths */
};

static int longest_first(const void *left, const void *right)
{
    const struct Entry *a = left, *b = right;
    if (a->length_mm != b->length_mm) {
        return a->length_mm > b->length_mm ? -1 : 1;
    }
    if (a->rank != b->rank) {
        return a->rank < b->rank ? -1 : 1;
    }
    return a->index < b->index ? -1 : 1;
}

static int longest_there_is(const struct CuttingJob *job)
{
    int longest_mm = 0;
    for (int i = 0; i < job->stock_count; i++) {
        if (job->stock[i].available != 0 && job->stock[i].length_mm > longest_mm) {
            longest_mm = job->stock[i].length_mm;
        }
    }
    for (int i = 0; i < job->offcut_count; i++) {
        longest_mm = job->offcuts[i].length_mm > longest_mm ? job->offcuts[i].length_mm : longest_mm;
    }
    return longest_mm;
}

static void group_pieces(const struct CuttingJob *job, struct Entry *entries, struct CuttingKinds *kinds)
{
    const int longest_mm = longest_there_is(job);
    int count = 0;
    for (int i = 0; i < job->piece_count; i++) {
        if (job->pieces[i].length_mm > longest_mm) {
            kinds->impossible[kinds->impossible_count++] = i;
        } else {
            entries[count++] = (struct Entry){.length_mm = job->pieces[i].length_mm, .index = i};
        }
    }
    qsort(entries, (size_t)count, sizeof *entries, longest_first);
    for (int i = 0; i < count; i++) {
        if (i == 0 || entries[i].length_mm != entries[i - 1].length_mm) {
            kinds->length_mm[kinds->type_count] = entries[i].length_mm;
            kinds->first[kinds->type_count++] = i;
        }
        kinds->wanted[kinds->type_count - 1]++;
        kinds->order[i] = entries[i].index;
    }
    kinds->pieces = count;
}

/* One half of the classes from sorted entries. `available`: CUTTING_UNLIMITED or how many, for each source. */
static void group_stock(struct CuttingKinds *kinds, const struct Entry *entries, int count,
                        const struct CuttingStock *stock)
{
    for (int i = 0; i < count; i++) {
        if (i == 0 || entries[i].length_mm != entries[i - 1].length_mm) {
            kinds->source_first[kinds->class_count + 1] = kinds->source_first[kinds->class_count];
            kinds->classes[kinds->class_count++] =
                (struct CuttingClass){.length_mm = entries[i].length_mm, .bought = stock != NULL};
        }
        struct CuttingClass *class = &kinds->classes[kinds->class_count - 1];
        const int room = kinds->pieces - class->most;
        const int available = stock == NULL ? 1 : stock[entries[i].index].available;
        class->most += available == CUTTING_UNLIMITED || available > room ? room : available;
        kinds->source[kinds->source_first[kinds->class_count]++] = entries[i].index;
    }
}

bool cutting_kinds(struct Arena *arena, const struct CuttingJob *job, struct CuttingKinds *kinds)
{
    const size_t pieces = (size_t)job->piece_count + 1;
    const size_t sources = (size_t)job->stock_count + (size_t)job->offcut_count + 1;
    *kinds = (struct CuttingKinds){
        .length_mm = arena_array(arena, pieces, sizeof *kinds->length_mm),
        .wanted = arena_array(arena, pieces, sizeof *kinds->wanted),
        .first = arena_array(arena, pieces, sizeof *kinds->first),
        .order = arena_array(arena, pieces, sizeof *kinds->order),
        .impossible = arena_array(arena, pieces, sizeof *kinds->impossible),
        .classes = arena_array(arena, sources, sizeof *kinds->classes),
        .source_first = arena_array(arena, sources + 1, sizeof *kinds->source_first),
        .source = arena_array(arena, sources, sizeof *kinds->source),
    };
    struct Entry *entries = arena_array(arena, pieces > sources ? pieces : sources, sizeof *entries);
    if (arena_failed(arena)) {
        return false;
    }
    group_pieces(job, entries, kinds);
    int count = 0;
    for (int i = 0; i < job->stock_count; i++) {
        const struct CuttingStock *stock = &job->stock[i];
        if (stock->available != 0) {
            const int64_t rank = stock->price == CUTTING_PRICE_UNKNOWN ? INT64_MAX : stock->price;
            entries[count++] = (struct Entry){.length_mm = stock->length_mm, .index = i, .rank = rank};
        }
    }
    qsort(entries, (size_t)count, sizeof *entries, longest_first);
    group_stock(kinds, entries, count, job->stock);
    for (int i = 0; i < job->offcut_count; i++) {
        entries[i] = (struct Entry){.length_mm = job->offcuts[i].length_mm, .index = i};
    }
    qsort(entries, (size_t)job->offcut_count, sizeof *entries, longest_first);
    group_stock(kinds, entries, job->offcut_count, NULL);
    return true;
}
