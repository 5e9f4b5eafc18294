/* The supply end where it is new: split meter tails with a small board for the runs' devices, or a new main board. Of a
 * spare way of a board that is there nothing is counted but the device. */
#include "parts_private.h"

#include "tables/mechanics_tables.h"

static const double main_switch_a = 100; /* as the largest cut-out of a house has it; supply-end rules, from memory */

/* What all runs that are fed in one way ask of it together. */
struct Feed {
    struct Counting *counting;
    const struct Run *run; /* the first of them: what is counted goes to its start */
    const struct End *end; /* that one's */
    int ways, poles;
    double tails_m; /* 0 not known */
    double rating_a;
};

static struct Feed feed_of(struct Counting *counting, enum FedFrom from)
{
    struct Feed feed = {.counting = counting};
    for (int r = 0; r < counting->plan->run_count; r++) {
        const struct PlanRun *run = &counting->plan->runs[r];
        const struct End *start = &run->surveyed->start;
        if (!run->rated || start->from != from) {
            continue;
        }
        const int poles = parts_isolating_poles(run);
        feed.run = feed.ways == 0 ? run->surveyed : feed.run;
        feed.end = feed.ways == 0 ? start : feed.end;
        feed.ways++;
        feed.poles = poles > feed.poles ? poles : feed.poles;
        feed.tails_m =
            start->tails_m.given && start->tails_m.value > feed.tails_m ? start->tails_m.value : feed.tails_m;
        feed.rating_a += run->rating_a;
    }
    return feed;
}

static void add(const struct Feed *feed, enum Aisle aisle, struct Article article, double pieces)
{
    article.aisle = aisle;
    article.unit = article.unit != NULL ? article.unit : "each";
    parts_add(feed->counting, &article, pieces, parts_for_end(feed->run, PART_AT_START));
}

/* Line and neutral by their colours (BS 7671 Table 51). */
static void add_tails(const struct Feed *feed)
{
    static const char *const colours[3][4] = {
        {"brown", "blue"}, {"brown", "black", "grey"}, {"brown", "black", "grey", "blue"}};
    struct Arena *arena = feed->counting->arena;
    const struct TailsPractice *practice = tails_practice();
    if (!(feed->tails_m > 0)) {
        parts_not_counted(feed->counting, UNCOUNTED_TAILS, parts_for_end(feed->run, PART_AT_START));
        return;
    }
    const bool held = feed->rating_a <= practice->up_to_a;
    const char *line = held ? number_significant(arena, practice->line_mm2, 3) : "open";
    const char *earth = held ? number_significant(arena, practice->earth_mm2, 3) : "open";
    for (int i = 0; i < feed->poles && feed->poles >= 2 && feed->poles <= 4; i++) {
        const char *colour = colours[feed->poles - 2][i];
        add(feed, AISLE_ENCLOSURES,
            (struct Article){.code = arena_print(arena, "tail-%s-%s", line, colour),
                             .description = arena_print(arena, "Meter tail, %s%s, insulated and sheathed, copper, %s",
                                                        held ? line : "size: ask", held ? " mm2" : "", colour),
                             .standard = "BS 6004",
                             .unit = "m",
                             .note =
                                 "as long as the tails were surveyed; size for a 100 A cut-out (On-Site Guide, from "
                                 "memory): 16 mm2 stands one up to 80 A; the distributor may ask for more",
                             .spare = SPARE_WHOLE},
            feed->tails_m);
    }
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = arena_print(arena, "tail-earth-%s", earth),
                         .description =
                             arena_print(arena, "Earthing conductor beside the tails, %s%s, green and yellow",
                                         held ? earth : "size: ask", held ? " mm2" : ""),
                         .standard = "BS 6004",
                         .unit = "m",
                         .note = "as long as the tails taken: how far the earth terminal is was not surveyed",
                         .spare = SPARE_WHOLE},
        feed->tails_m);
}

/* The distributor's fuse is not relied on over that length. */
static void add_switch_fuse(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    if (feed->tails_m > tails_practice()->protect_over_m + 1e-9) {
        add(feed, AISLE_ENCLOSURES,
            (struct Article){
                .code = arena_print(arena, "switch-fuse-%dp-100", feed->poles),
                .description =
                    arena_print(arena, "Switch-fuse, %d-pole, 100 A; its fuse: ask the distributor", feed->poles),
                .standard = "BS EN 60947-3",
                .note = "within 3 m of the meter, the tails being longer; behind it protected cable in place of tails "
                        "(from memory)"},
            1);
    }
}

static void add_isolator(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    add(feed, AISLE_ENCLOSURES,
        (struct Article){
            .code = arena_print(arena, "isolator-tails-%dp-100", feed->poles),
            .description = arena_print(
                arena, "Isolator for meter tails, %d-pole, 100 A, in an enclosure, can be locked off", feed->poles),
            .standard = "BS EN 60947-3",
            .note = "so that later work needs no link drawn (a certification body's magazine, 2017)"},
        1);
}

static void add_blocks(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = "connector-block-100",
                         .description = "Service connector block, 100 A, insulated, one pole",
                         .standard = "BS 7657, BS EN 60947-7-1",
                         .note = "one to each live tail; standards from memory"},
        feed->poles);
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = arena_print(arena, "connector-enclosure-%d-%s", feed->poles,
                                             parts_place_words(feed->counting, feed->end->place)->code),
                         .description =
                             arena_print(arena, "Enclosure for %d connector blocks, opened by a tool only, %s",
                                         feed->poles, parts_place_words(feed->counting, feed->end->place)->words),
                         .standard = "BS 7671 416.2",
                         .note = "in a household 421.1.201 may ask for one that does not burn"},
        1);
}

static const char *made_of(const struct End *end)
{
    return end->enclosure == ENCLOSURE_PLASTIC ? "plastic" : "metal";
}

static void add_small_board(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    const struct PlaceWords *place = parts_place_words(feed->counting, feed->end->place);
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = arena_print(arena, "feeder-board-%dw-%dp-%s-%s", feed->ways, feed->poles, place->code,
                                             made_of(feed->end)),
                         .description = arena_print(
                             arena, "Small board for %d protective device%s, %s, %s, main switch %d-pole %s A",
                             feed->ways, feed->ways == 1 ? "" : "s", made_of(feed->end), place->words, feed->poles,
                             number_significant(arena, main_switch_a, 4)),
                         .standard = "BS EN 61439-3",
                         .note = arena_print(
                             arena,
                             "of one make with the device (536.4.203); in a household 421.1.201 may ask for one that "
                             "does not burn; %s",
                             place->source)},
        1);
}

static void add_main_board(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    const struct PlaceWords *place = parts_place_words(feed->counting, feed->end->place);
    add(feed, AISLE_ENCLOSURES,
        (struct Article){
            .code = arena_print(arena, "main-board-%dp-%s-%s", feed->poles, place->code, made_of(feed->end)),
            .description =
                arena_print(arena, "New main board, %s, %s, main switch %d-pole %s A, ways: ask", made_of(feed->end),
                            place->words, feed->poles, number_significant(arena, main_switch_a, 4)),
            .standard = "BS EN 61439-3",
            .note = arena_print(arena,
                                "ways for what is on the old board too: not in the survey; of one make with the device "
                                "(536.4.203); %s",
                                place->source)},
        1);
}

void parts_count_supply(struct Counting *counting)
{
    const struct Feed split = feed_of(counting, FROM_METER_TAILS);
    if (split.ways > 0) {
        add_blocks(&split);
        add_tails(&split);
        add_isolator(&split);
        add_switch_fuse(&split);
        add_small_board(&split);
    }
    struct Feed board = feed_of(counting, FROM_NEW_BOARD);
    if (board.ways > 0) {
        board.poles = counting->plan->survey->supply.phases == 3 ? 4 : 2; /* the whole supply goes through it */
        add_tails(&board);
        add_isolator(&board);
        add_switch_fuse(&board);
        add_main_board(&board);
    }
}
