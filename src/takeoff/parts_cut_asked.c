/* What has to be cut to length on a route: cables, a run a piece, and duct, a stretch a piece; and what the survey
 * names to cut them from. Runs with the same cable are cut from the same drums.
 *
 * A cable is never jointed. A duct is coupled where a stretch is longer than the longest length sold: whole
 * lengths first, then what is left, so that there is no more than one coupler a whole length (common practice, no
 * source). */
#include "parts_private.h"

#include <math.h>
#include <string.h>

/* More parts of one stretch than this are refused by the planner as too many pieces, in words. */
enum { PARTS_OF_STRETCH_MOST = 5000 };

/* An article while its pieces are gathered. */
struct Asked {
    struct PartsCut cut;
    struct PartPiece *pieces;
    int piece_room;
    double *lengths_m, *offcuts_m;
    int *have;
};

struct Gathering {
    struct Arena *arena;
    const struct Plan *plan;
    struct Counting *counting;
    struct Asked *asked;
    int count;
};

static struct Asked *article(struct Gathering *gathering, const char *code)
{
    for (int i = 0; i < gathering->count; i++) {
        if (text_same(gathering->asked[i].cut.code, code)) {
            return &gathering->asked[i];
        }
    }
    struct Asked *asked = &gathering->asked[gathering->count++];
    asked->cut.code = code;
    return asked;
}

static void add_piece(struct Arena *arena, struct Asked *asked, struct PartPiece piece)
{
    if (asked->cut.piece_count == asked->piece_room) {
        const int room = asked->piece_room > 0 ? 2 * asked->piece_room : 8;
        struct PartPiece *pieces = arena_array(arena, (size_t)room, sizeof *pieces);
        if (pieces == NULL) {
            return;
        }
        if (asked->cut.piece_count > 0) {
            memcpy(pieces, asked->pieces, (size_t)asked->cut.piece_count * sizeof *pieces);
        }
        asked->pieces = pieces;
        asked->piece_room = room;
    }
    asked->pieces[asked->cut.piece_count++] = piece;
}

int parts_least_have(int one, int other)
{
    return one == 0 ? other : other == 0 || one < other ? one : other;
}

/* One whole length more. Named twice it is the same one, and of two numbers of it the least holds. */
static void add_length(struct Asked *asked, double length_m, int have)
{
    for (int i = 0; i < asked->cut.length_count; i++) {
        if (fabs(asked->lengths_m[i] - length_m) < 1e-9) {
            asked->have[i] = parts_least_have(asked->have[i], have);
            return;
        }
    }
    asked->lengths_m[asked->cut.length_count] = length_m;
    asked->have[asked->cut.length_count++] = have;
}

/* Two like offcuts are two. */
static void add_stock(struct Arena *arena, struct Asked *asked, const struct Stock *stock)
{
    struct PartsCut *cut = &asked->cut;
    const size_t lengths = (size_t)(cut->length_count + stock->length_count) + 1;
    double *lengths_m = arena_array(arena, lengths, sizeof *lengths_m);
    int *have = arena_array(arena, lengths, sizeof *have);
    double *offcuts_m = arena_array(arena, (size_t)(cut->offcut_count + stock->offcut_count) + 1, sizeof *offcuts_m);
    if (lengths_m == NULL || have == NULL || offcuts_m == NULL) {
        return;
    }
    for (int i = 0; i < cut->length_count; i++) {
        lengths_m[i] = asked->lengths_m[i];
        have[i] = asked->have[i];
    }
    for (int i = 0; i < cut->offcut_count; i++) {
        offcuts_m[i] = asked->offcuts_m[i];
    }
    asked->lengths_m = lengths_m;
    asked->have = have;
    asked->offcuts_m = offcuts_m;
    for (int i = 0; i < stock->length_count; i++) {
        const struct StockLength *length = &stock->lengths[i];
        add_length(asked, length->length_m.value, length->have.given ? (int)length->have.value : 0);
    }
    for (int i = 0; i < stock->offcut_count; i++) {
        offcuts_m[cut->offcut_count++] = stock->offcuts_m[i];
    }
}

static void gather_cables(struct Gathering *gathering)
{
    struct Arena *arena = gathering->arena;
    const struct Plan *plan = gathering->plan;
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        struct Asked *asked = article(gathering, arena_print(arena, "cable-%s", parts_cable_code(arena, run)));
        asked->cut.description = parts_cable_name(arena, run);
        asked->cut.whole = PART_DRUMS;
        add_piece(arena, asked, (struct PartPiece){.name = run->settled->name, .length_m = run->order_length_m});
        for (int s = 0; s < plan->survey->parts.stock_count; s++) {
            const struct Stock *stock = &plan->survey->parts.stock[s];
            if (stock->run >= 0 && text_same(plan->survey->runs[stock->run].name, run->settled->name)) {
                add_stock(arena, asked, stock);
            }
        }
    }
}

static void add_stretch(struct Arena *arena, struct Asked *asked, const char *name, double whole_m, double length_m)
{
    if (length_m <= whole_m || length_m > whole_m * PARTS_OF_STRETCH_MOST) {
        add_piece(arena, asked, (struct PartPiece){.name = name, .length_m = length_m});
        return;
    }
    const int parts = (int)ceil(length_m / whole_m - 1e-9);
    for (int i = 0; i < parts; i++) {
        add_piece(arena, asked,
                  (struct PartPiece){.name = name,
                                     .length_m = i + 1 < parts ? whole_m : length_m - (parts - 1) * whole_m,
                                     .part = i + 1,
                                     .parts = parts});
    }
}

/* "path + barn-foot": stretches that are one duct. */
static const char *chain_name(const struct Gathering *gathering, const int *member, int chain)
{
    struct TextBuilder name = text_builder(gathering->arena);
    for (int i = 0; i < gathering->plan->segment_count; i++) {
        if (member[i] == chain) {
            text_print(&name, "%s%s", name.length > 0 ? " + " : "", gathering->plan->segments[i].surveyed->name);
        }
    }
    return text_done(&name);
}

/* New ducts of a size for which lengths are named, each with the spare that the list gives it. */
static void gather_ducts(struct Gathering *gathering)
{
    struct Arena *arena = gathering->arena;
    struct Chain *chains = NULL;
    int *member = NULL;
    const int count = parts_ducts(gathering->counting, &chains, &member);
    for (int i = 0; i < count; i++) {
        const struct Segment *segment = gathering->plan->segments[chains[i].first].surveyed;
        const double whole_m = parts_duct_whole_m(gathering->plan, segment);
        if (!(whole_m > 0) || segment->duct_laid != LAID_NEW || chains[i].cables == 0) {
            continue;
        }
        const char *size = number_significant(arena, segment->duct_size_mm.value, 4);
        const int before = gathering->count;
        struct Asked *asked = article(gathering, arena_print(arena, "duct-%s", size));
        asked->cut.description = say(arena, SAY_PART_DUCT, say_digits(segment->duct_size_mm.value, 4, UNIT_MM));
        asked->cut.whole = PART_LENGTHS;
        for (int s = 0; gathering->count > before && s < gathering->plan->survey->parts.stock_count; s++) {
            if (parts_stock_of_duct(&gathering->plan->survey->parts.stock[s], segment)) {
                add_stock(arena, asked, &gathering->plan->survey->parts.stock[s]);
            }
        }
        const double with_spare_m = chains[i].length_m * (1 + order_allowances()->duct_percent / 100);
        add_stretch(arena, asked, chain_name(gathering, member, i), whole_m, ceil(with_spare_m - 1e-9));
    }
}

bool parts_ask_cuts(struct Counting *counting, struct PartsList *list)
{
    struct Arena *arena = counting->arena;
    const struct Plan *plan = counting->plan;
    const size_t most = (size_t)plan->run_count + (size_t)plan->segment_count + 1;
    struct Gathering gathering = {.arena = arena, .plan = plan, .counting = counting};
    gathering.asked = arena_array(arena, most, sizeof *gathering.asked);
    if (gathering.asked == NULL) {
        return false;
    }
    gather_cables(&gathering);
    gather_ducts(&gathering);
    struct PartsCut *cuts = arena_array(arena, (size_t)gathering.count, sizeof *cuts);
    if (cuts == NULL) {
        return false;
    }
    for (int i = 0; i < gathering.count; i++) {
        struct Asked *asked = &gathering.asked[i];
        asked->cut.pieces = asked->pieces;
        asked->cut.lengths_m = asked->lengths_m;
        asked->cut.offcuts_m = asked->offcuts_m;
        asked->cut.have = asked->have;
        cuts[i] = asked->cut;
    }
    list->cuts = cuts;
    list->cut_count = gathering.count;
    return !arena_failed(arena);
}
