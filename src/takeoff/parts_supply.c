/* The supply end where it is new: split meter tails with a small board for the runs' devices, or a new main board. Of a
 * spare way of a board that is there nothing is counted but the device. */
#include "parts_private.h"

#include "tables/mechanics_tables.h"

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
        const struct End *start = &run->settled->start;
        if (!run->rated || start->from != from) {
            continue;
        }
        const int poles = parts_isolating_poles(run);
        feed.run = feed.ways == 0 ? run->settled : feed.run;
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
    parts_add(feed->counting, &article, pieces, parts_for_end(feed->run, PART_AT_START));
}

/* Line and neutral by their colours (BS 7671 Table 51). */
static void add_tails(const struct Feed *feed)
{
    static const struct {
        const char *code;
        enum Saying words;
    } colours[] = {
        {"brown", SAY_CORE_BROWN}, {"black", SAY_CORE_BLACK}, {"grey", SAY_CORE_GREY}, {"blue", SAY_CORE_BLUE}};
    static const int by_poles[3][4] = {{0, 3}, {0, 1, 2}, {0, 1, 2, 3}};
    struct Arena *arena = feed->counting->arena;
    const struct TailsPractice *practice = tails_practice();
    if (!(feed->tails_m > 0)) {
        parts_not_counted(feed->counting, UNCOUNTED_TAILS, parts_for_end(feed->run, PART_AT_START));
        return;
    }
    const bool held = feed->rating_a <= practice->up_to_a;
    const char *line = held ? number_significant(arena, practice->line_mm2, 3) : "open";
    const struct SayArg line_size = held ? say_digits(practice->line_mm2, 3, UNIT_MM2) : say_term(SAY_SIZE_ASK);
    const struct SayArg earth_size = held ? say_digits(practice->earth_mm2, 3, UNIT_MM2) : say_term(SAY_SIZE_ASK);
    const char *earth = held ? number_significant(arena, practice->earth_mm2, 3) : "open";
    for (int i = 0; i < feed->poles && feed->poles >= 2 && feed->poles <= 4; i++) {
        const int colour = by_poles[feed->poles - 2][i];
        add(feed, AISLE_ENCLOSURES,
            (struct Article){.code = arena_print(arena, "tail-%s-%s", line, colours[colour].code),
                             .description = say(arena, SAY_PART_TAIL, line_size, say_term(colours[colour].words)),
                             .standard = "BS 6004",
                             .unit = "m",
                             .note = say(arena, SAY_NOTE_TAIL),
                             .spare = SPARE_WHOLE},
            feed->tails_m);
    }
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = arena_print(arena, "tail-earth-%s", earth),
                         .description = say(arena, SAY_PART_TAIL_EARTH, earth_size),
                         .standard = "BS 6004",
                         .unit = "m",
                         .note = say(arena, SAY_NOTE_TAIL_EARTH),
                         .spare = SPARE_WHOLE},
        feed->tails_m);
}

/* The distributor's fuse is not relied on over that length. */
static void add_switch_fuse(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    if (feed->tails_m > tails_practice()->protect_over_m + 1e-9) {
        add(feed, AISLE_ENCLOSURES,
            (struct Article){.code = arena_print(arena, "switch-fuse-%dp-100", feed->poles),
                             .description = say(arena, SAY_PART_SWITCH_FUSE, say_count(feed->poles)),
                             .standard = "BS EN 60947-3",
                             .note = say(arena, SAY_NOTE_SWITCH_FUSE)},
            1);
    }
}

static void add_isolator(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = arena_print(arena, "isolator-tails-%dp-100", feed->poles),
                         .description = say(arena, SAY_PART_TAILS_ISOLATOR, say_count(feed->poles)),
                         .standard = "BS EN 60947-3",
                         .note = say(arena, SAY_NOTE_TAILS_ISOLATOR)},
        1);
}

static void add_blocks(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = "connector-block-100",
                         .description = say(arena, SAY_PART_CONNECTOR_BLOCK),
                         .standard = "BS 7657, BS EN 60947-7-1",
                         .note = say(arena, SAY_NOTE_CONNECTOR_BLOCK)},
        feed->poles);
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = arena_print(arena, "connector-enclosure-%d-%s", feed->poles,
                                             parts_place_words(feed->counting, feed->end->place)->code),
                         .description = say(arena, SAY_PART_CONNECTOR_BOX, say_count(feed->poles),
                                            say_term(parts_place_words(feed->counting, feed->end->place)->words)),
                         .standard = "BS 7671 416.2",
                         .note = say(arena, SAY_MAY_HAVE_TO_WITHSTAND_FIRE)},
        1);
}

static void add_small_board(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    const struct PlaceWords *place = parts_place_words(feed->counting, feed->end->place);
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = arena_print(arena, "feeder-board-%dw-%dp-%s-%s", feed->ways, feed->poles, place->code,
                                             parts_made_of(feed->end)->code),
                         .description =
                             say(arena, SAY_PART_SMALL_BOARD, say_count(feed->ways),
                                 say_term(parts_made_of(feed->end)->words), say_term(place->words),
                                 say_count(feed->poles), say_digits(takeoff_practice()->main_switch_a, 4, UNIT_A)),
                         .standard = "BS EN 61439-3",
                         .note = say(arena, SAY_NOTE_SMALL_BOARD, say_term(place->source))},
        1);
}

static void add_main_board(const struct Feed *feed)
{
    struct Arena *arena = feed->counting->arena;
    const struct PlaceWords *place = parts_place_words(feed->counting, feed->end->place);
    add(feed, AISLE_ENCLOSURES,
        (struct Article){.code = arena_print(arena, "main-board-%dp-%s-%s", feed->poles, place->code,
                                             parts_made_of(feed->end)->code),
                         .description = say(arena, SAY_PART_MAIN_BOARD, say_term(parts_made_of(feed->end)->words),
                                            say_term(place->words), say_count(feed->poles),
                                            say_digits(takeoff_practice()->main_switch_a, 4, UNIT_A)),
                         .standard = "BS EN 61439-3",
                         .note = say(arena, SAY_NOTE_MAIN_BOARD, say_term(place->source))},
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
