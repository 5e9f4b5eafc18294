/* Jobs to cut for the tests. The check of a plan uses nothing of the planner but the job and the plan. */
#include "cutting_rig.h"

#include <check.h>
#include <string.h>

void rig_clear(struct Rig *rig)
{
    memset(rig, 0, sizeof *rig);
    rig->job.pieces = rig->pieces;
    rig->job.stock = rig->stock;
    rig->job.offcuts = rig->offcuts;
}

void rig_copy(struct Rig *to, const struct Rig *from)
{
    memcpy(to, from, sizeof *to);
    to->job.pieces = to->pieces;
    to->job.stock = to->stock;
    to->job.offcuts = to->offcuts;
}

void rig_piece(struct Rig *rig, int length_mm, int count)
{
    for (int i = 0; i < count; i++) {
        ck_assert_int_lt(rig->job.piece_count, RIG_PIECES);
        rig->pieces[rig->job.piece_count++] = (struct CuttingPiece){.name = "piece", .length_mm = length_mm};
    }
}

void rig_stock(struct Rig *rig, int length_mm, int available)
{
    ck_assert_int_lt(rig->job.stock_count, RIG_STOCK);
    rig->stock[rig->job.stock_count++] = (struct CuttingStock){
        .name = "drum", .length_mm = length_mm, .available = available, .price = CUTTING_PRICE_UNKNOWN};
}

void rig_offcut(struct Rig *rig, int length_mm)
{
    ck_assert_int_lt(rig->job.offcut_count, RIG_OFFCUTS);
    rig->offcuts[rig->job.offcut_count++] = (struct CuttingOffcut){.name = "offcut", .length_mm = length_mm};
}

/* Each piece once: cut, impossible or uncut. */
static void check_pieces(const struct Rig *rig, const struct CuttingPlan *plan)
{
    int seen[RIG_PIECES] = {0};
    int longest_mm = 0;
    int64_t uncut_mm = 0;
    for (int o = 0; o < plan->opened_count; o++) {
        const struct CuttingOpened *opened = &plan->opened[o];
        int used_mm = 0;
        ck_assert_int_ge(opened->piece_count, 1);
        for (int i = 0; i < opened->piece_count; i++) {
            ck_assert(opened->pieces[i] >= 0 && opened->pieces[i] < rig->job.piece_count);
            seen[opened->pieces[i]]++;
            used_mm += rig->pieces[opened->pieces[i]].length_mm;
        }
        ck_assert_int_eq(used_mm, opened->used_mm);
        ck_assert_int_le(used_mm, opened->length_mm);
        ck_assert_int_eq(opened->left_mm, opened->length_mm - used_mm);
    }
    for (int i = 0; i < rig->job.stock_count; i++) {
        const bool longer = rig->stock[i].available != 0 && rig->stock[i].length_mm > longest_mm;
        longest_mm = longer ? rig->stock[i].length_mm : longest_mm;
    }
    for (int i = 0; i < rig->job.offcut_count; i++) {
        longest_mm = rig->offcuts[i].length_mm > longest_mm ? rig->offcuts[i].length_mm : longest_mm;
    }
    int impossible = 0;
    for (int i = 0; i < rig->job.piece_count; i++) {
        impossible += rig->pieces[i].length_mm > longest_mm ? 1 : 0;
    }
    ck_assert_int_eq(plan->impossible_count, impossible);
    for (int i = 0; i < plan->impossible_count; i++) {
        seen[plan->impossible[i]]++;
        ck_assert_int_gt(rig->pieces[plan->impossible[i]].length_mm, longest_mm);
    }
    for (int i = 0; i < plan->uncut_count; i++) {
        seen[plan->uncut[i]]++;
        uncut_mm += rig->pieces[plan->uncut[i]].length_mm;
    }
    ck_assert_int_eq(uncut_mm, plan->uncut_mm);
    for (int i = 0; i < rig->job.piece_count; i++) {
        ck_assert_msg(seen[i] == 1, "piece %d stands %d times in the plan", i, seen[i]);
    }
}

/* No more opened than there is, and the sums. */
static void check_stock(const struct Rig *rig, const struct CuttingPlan *plan)
{
    int bought[RIG_STOCK] = {0}, used[RIG_OFFCUTS] = {0}, drums = 0, offcuts = 0;
    int64_t bought_mm = 0, waste_mm = 0;
    for (int o = 0; o < plan->opened_count; o++) {
        const struct CuttingOpened *opened = &plan->opened[o];
        if (opened->bought) {
            bought[opened->source]++;
            bought_mm += opened->length_mm;
            waste_mm += opened->left_mm;
            drums++;
            ck_assert_int_eq(opened->length_mm, rig->stock[opened->source].length_mm);
        } else {
            used[opened->source]++;
            offcuts++;
            ck_assert_int_eq(opened->length_mm, rig->offcuts[opened->source].length_mm);
        }
    }
    for (int i = 0; i < rig->job.stock_count; i++) {
        ck_assert_int_eq(plan->buy[i], bought[i]);
        ck_assert(rig->stock[i].available == CUTTING_UNLIMITED || bought[i] <= rig->stock[i].available);
    }
    for (int i = 0; i < rig->job.offcut_count; i++) {
        ck_assert_int_le(used[i], 1);
    }
    ck_assert_int_eq(plan->bought_mm, bought_mm);
    ck_assert_int_eq(plan->waste_mm, waste_mm);
    ck_assert_int_eq(plan->drums, drums);
    ck_assert_int_eq(plan->offcuts_used, offcuts);
}

const struct CuttingPlan *rig_plan(struct Arena *arena, const struct Rig *rig)
{
    const struct CuttingPlan *plan = cutting_plan(arena, &rig->job);
    ck_assert_ptr_nonnull(plan);
    ck_assert_int_eq(plan->fault, CUTTING_GOOD);
    check_pieces(rig, plan);
    check_stock(rig, plan);
    ck_assert_int_le(plan->bound_uncut_mm, plan->uncut_mm);
    ck_assert_int_le(plan->bound_mm, plan->bought_mm);
    ck_assert_int_le(plan->bound_drums, plan->drums);
    ck_assert_int_le(plan->bound_offcuts, plan->offcuts_used);
    if (plan->proved) {
        ck_assert_int_eq(plan->bound_uncut_mm, plan->uncut_mm);
        ck_assert_int_eq(plan->bound_mm, plan->bought_mm);
        ck_assert_int_eq(plan->bound_drums, plan->drums);
        ck_assert_int_eq(plan->bound_offcuts, plan->offcuts_used);
    }
    return plan;
}

struct Chance chance_start(int seed)
{
    struct Chance chance = {UINT64_C(0x9E3779B97F4A7C15) * (uint64_t)(seed + 1)};
    for (int i = 0; i < 8; i++) {
        chance_between(&chance, 0, 1);
    }
    return chance;
}

int chance_between(struct Chance *chance, int least, int most)
{
    chance->state ^= chance->state << 13;
    chance->state ^= chance->state >> 7;
    chance->state ^= chance->state << 17;
    return least + (int)((chance->state >> 16) % (uint64_t)(most - least + 1));
}

static int chance_length(struct Chance *chance, const struct RigFamily *family)
{
    const int steps = (family->length_most_mm - family->length_least_mm) / family->step_mm;
    return family->length_least_mm + family->step_mm * chance_between(chance, 0, steps);
}

void rig_chance(struct Rig *rig, const struct RigFamily *family, int seed)
{
    struct Chance chance = chance_start(seed);
    rig_clear(rig);
    int kinds[64];
    ck_assert_int_le(family->kinds_most, 64);
    for (int i = 0; i < family->kinds_most; i++) {
        kinds[i] = chance_length(&chance, family);
    }
    const int pieces = chance_between(&chance, family->pieces_least, family->pieces_most);
    for (int i = 0; i < pieces; i++) {
        const bool any = family->kinds_most == 0;
        rig_piece(rig, any ? chance_length(&chance, family) : kinds[chance_between(&chance, 0, family->kinds_most - 1)],
                  1);
    }
    for (int i = 0; i < family->stock_count; i++) {
        const bool may = family->available_most > 0 && (family->last_limited || i + 1 < family->stock_count);
        const bool limited = may && chance_between(&chance, 0, 1) == 1;
        rig_stock(rig, family->stock_mm[i],
                  limited ? chance_between(&chance, 0, family->available_most) : CUTTING_UNLIMITED);
    }
    const int offcuts = chance_between(&chance, 0, family->offcuts_most);
    for (int i = 0; i < offcuts; i++) {
        rig_offcut(rig, chance_length(&chance, family));
    }
}
