/* A cutting plan and prices for a made-up list of parts: not decided, but in every form that a document has to take. */
#include "fixture_scene.h"
#include "said.h"

static const struct PartsCut *make_cut(struct Arena *arena, bool hostile)
{
    static const double lengths_m[] = {100, 50}, offcuts_m[] = {12.5};
    static const int first[] = {1, 0}, second[] = {2}, by_metre[] = {3};
    struct PartPiece *pieces = arena_array(arena, 4, sizeof *pieces);
    struct PartOpened *opened = arena_array(arena, 2, sizeof *opened);
    struct PartsCut *cut = arena_alloc(arena, sizeof *cut);
    if (pieces == NULL || opened == NULL || cut == NULL) {
        return NULL;
    }
    for (unsigned i = 0; i < 4; i++) {
        pieces[i] = (struct PartPiece){.name = hostile ? fixture_hostile_text(arena, i) : "feeder",
                                       .length_m = i == 3 ? 130 : 10 + 20 * i};
    }
    opened[0] = (struct PartOpened){
        .bought = true,
        .length_m = 100,
        .used_m = 40,
        .left_m = 60,
        .piece_count = 2,
        .pieces = first,
        .what = as_is(arena, "drum of 100 m"),
        .piece_text = as_is(arena, arena_print(arena, "%s 30 m, %s 10 m", pieces[1].name, pieces[0].name)),
        .left_text = as_is(arena, "60 m")};
    opened[1] = (struct PartOpened){.length_m = 12.5,
                                    .used_m = 12,
                                    .left_m = 0.5,
                                    .piece_count = 1,
                                    .pieces = second,
                                    .what = as_is(arena, "offcut of 12.5 m"),
                                    .piece_text = as_is(arena, arena_print(arena, "%s 12 m", pieces[2].name)),
                                    .left_text = as_is(arena, "0.5 m")};
    *cut = (struct PartsCut){
        .code = "part-1",
        .description = as_is(arena, hostile ? fixture_hostile_text(arena, 3) : "cable 3-core 6 mm2, armoured"),
        .whole = PART_DRUMS,
        .piece_count = 4,
        .pieces = pieces,
        .length_count = 2,
        .lengths_m = lengths_m,
        .offcut_count = 1,
        .offcuts_m = offcuts_m,
        .planned = true,
        .opened_count = 2,
        .opened = opened,
        .by_metre_count = 1,
        .by_metre = by_metre,
        .cut_m = 52,
        .bought_m = 100,
        .waste_m = 60,
        .bound_m = 100,
        .whole_lengths = 1,
        .offcuts_used = 1,
        .proved = true,
        .buy_text = as_is(arena, "1 drum of 100 m"),
        .result_text = as_is(arena, "100 m bought, 60 m of it waste, 1 offcut used; proved"),
        .note = as_is(arena, arena_print(arena, "longer than any drum: %s 130 m", pieces[3].name))};
    return cut;
}

/* Every second line has a price, in one of two currencies. */
static bool make_prices(struct Arena *arena, struct PartsList *list)
{
    static const struct PartsTotal totals[] = {{"EUR", 2, 2, 4, 123456789, "1234567.89", "", ""},
                                               {"JPY", 1, 0, 3, 3005, "300.5", "301", "0.5"}};
    struct PartPrice *prices = arena_array(arena, (size_t)list->count, sizeof *prices);
    const struct Say **unpriced =
        arena_array(arena, (size_t)list->count, sizeof *unpriced); /* NOLINT(bugprone-sizeof-expression): of pointers */
    if (prices == NULL || unpriced == NULL) {
        return false;
    }
    for (int i = 0; i < list->count; i++) {
        prices[i] = i % 2 == 0 ? (struct PartPrice){.known = true,
                                                    .currency = i / 2 % 2,
                                                    .each = 100,
                                                    .total = 100,
                                                    .unit = "m",
                                                    .each_text = "1.00",
                                                    .total_text = "12.50"}
                               : (struct PartPrice){.why = say(arena, SAY_NO_PRICE)};
        if (i % 2 == 1) {
            unpriced[list->unpriced_count++] = as_is(arena, list->parts[i].code);
        }
    }
    list->prices = prices;
    list->totals = totals;
    list->total_count = 2;
    list->unpriced = unpriced;
    list->unpriced_text = as_is(arena, "not in any total: part-2, part-4, part-6, part-8, part-10, part-12, part-14");
    return true;
}

bool fixture_money(struct Arena *arena, struct PartsList *list, bool hostile)
{
    list->cuts = make_cut(arena, hostile);
    list->cut_count = list->cuts != NULL ? 1 : 0;
    list->prices_note = as_is(arena, hostile ? fixture_hostile_text(arena, 5) : "an older list");
    return list->cuts != NULL && make_prices(arena, list);
}
