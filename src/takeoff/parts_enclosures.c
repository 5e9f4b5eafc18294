/* The device at the supply end and what the run ends in: by lines, place and material, so that a board for a dry hall
 * and one for a wet yard are two articles. */
#include "parts_private.h"

static const char *const standards[DEVICE_COUNT] = {
    [DEVICE_MCB] = "BS EN 60898-1", [DEVICE_RCBO] = "BS EN 61009-1", [DEVICE_GG] = "BS 88-2",
    [DEVICE_BS88_3] = "BS 88-3",    [DEVICE_BS1361] = "BS 1361",     [DEVICE_BS3036] = "BS 3036",
};

/* What keeps dust, fingers and water out. Indoors BS 7671 416.2; outdoors splashes from any side (AD4), washed down
 * jets (AD5): BS 7671 Appendix 5, from memory; that a box sold against jets is IP55: common practice, no source. */
static const struct PlaceWords places[PLACE_COUNT] = {
    [PLACE_INDOORS] = {SAY_INDOORS_IP, "indoors", SAY_INDOORS_IP_SOURCE},
    [PLACE_OUTDOORS] = {SAY_SPLASHED_IP, "IP44", SAY_OUTDOORS_IP_SOURCE},
    [PLACE_WET] = {SAY_WET_IP, "IP55", SAY_WET_IP_SOURCE},
};

const struct PlaceWords *parts_place_words(const struct Counting *counting, enum Place place)
{
    static const struct PlaceWords farm = {SAY_SPLASHED_IP, "IP44", SAY_FARM_IP_SOURCE};
    const bool dry = place == PLACE_INDOORS && counting->plan->survey->job.location == LOCATION_FARM;
    return dry ? &farm : &places[place < PLACE_COUNT ? place : PLACE_WET];
}

/* Every live conductor: BS 7671 462.1.201, 462.2; on an island the neutral too, from memory. */
int parts_isolating_poles(const struct PlanRun *run)
{
    return run->currents.lines + (survey_neutral(run->settled, run->currents.lines) ? 1 : 0);
}

const struct MadeOf *parts_made_of(const struct End *end)
{
    static const struct MadeOf plastic = {"plastic", SAY_OF_PLASTIC}, metal = {"metal", SAY_OF_METAL};
    return end->enclosure == ENCLOSURE_PLASTIC ? &plastic : &metal; /* painted metal is metal */
}

/* An island's is insulated all through, unless a metal one was surveyed. */
static bool is_insulated(const struct Counting *counting, const struct End *end)
{
    return counting->plan->electrode.due && end->enclosure == ENCLOSURE_PLASTIC;
}

static const struct MadeOf *made_of_far(const struct Counting *counting, const struct End *end)
{
    static const struct MadeOf insulated = {"insulated", SAY_INSULATED_ALL_THROUGH};
    return is_insulated(counting, end) ? &insulated : parts_made_of(end);
}

/* What is open about the enclosure at the far end, and why it is as it is. */
static const struct Say *enclosure_note(const struct Counting *counting, const struct End *end, enum Saying more)
{
    enum Saying why = SAY_NOTHING;
    if (is_insulated(counting, end)) {
        why = SAY_NO_METAL_THROUGH;
    } else if (counting->plan->electrode.due) {
        why = SAY_METAL_AS_SURVEYED;
    } else if (!end->enclosure_given) {
        why = SAY_ENCLOSURE_PLASTIC_ASSUMED;
    }
    return say(counting->arena, SAY_NOTE_ENCLOSURE, say_term(more), say_term(why),
               say_term(parts_place_words(counting, end->place)->source));
}

static void add(struct Counting *counting, const struct PlanRun *run, struct Article article, double pieces,
                enum PartPlace place)
{
    article.aisle = AISLE_ENCLOSURES;
    parts_add(counting, &article, pieces, parts_for_end(run->settled, place));
}

static void add_device(struct Counting *counting, const struct PlanRun *run)
{
    const bool fuse = run->device != DEVICE_MCB && run->device != DEVICE_RCBO;
    add(counting, run,
        (struct Article){.code = arena_print(counting->arena, "device-%s", run->device_code),
                         .description = say(counting->arena, SAY_PART_DEVICE, say_part(run->device_full)),
                         .standard = standards[run->device],
                         .note = run->device_note},
        fuse ? run->currents.lines : 1, PART_AT_START); /* each line has a fuse of its own */
    if (fuse) {
        parts_not_counted(counting, UNCOUNTED_FUSE_HOLDER, parts_for_run(run->settled));
    }
}

/* What a distribution circuit ends in. The residual device that the survey puts there comes with it. */
static void add_board(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    const struct End *end = &run->settled->finish;
    const struct Quantity *residual = &counting->plan->survey->earthing.board_residual_a;
    const char *rating = number_significant(arena, run->rating_a, 4);
    const char *milliamps = number_significant(arena, residual->value * 1000, 4);
    const struct MadeOf *made_of = made_of_far(counting, end);
    const struct PlaceWords *place = parts_place_words(counting, end->place);
    const int poles = parts_isolating_poles(run);
    add(counting, run,
        (struct Article){
            .code =
                arena_print(arena, "board-%s-%dp%s%s%s-%s-%s", rating, poles, residual->given ? "-" : "",
                            residual->given ? milliamps : "", residual->given ? "mA" : "", place->code, made_of->code),
            .description =
                say(arena, SAY_PART_BOARD, say_term(made_of->words), say_term(place->words),
                    say_term(run->currents.lines == 3 ? SAY_THREE_PHASE : SAY_SINGLE_PHASE), say_count(poles),
                    say_digits(run->rating_a, 4, UNIT_A),
                    say_part(residual->given ? say(arena, SAY_RESIDUAL_OF_BOARD,
                                                   say_digits(residual->value * 1000, 4, UNIT_MA), say_count(poles))
                                             : NULL)),
            .standard = "BS EN 61439-3",
            .note = enclosure_note(counting, end, SAY_MAY_HAVE_TO_WITHSTAND_FIRE)},
        1, PART_AT_FINISH);
}

static void add_isolator(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    const struct End *end = &run->settled->finish;
    const char *rating = number_significant(arena, run->rating_a, 4);
    const struct MadeOf *made_of = made_of_far(counting, end);
    const struct PlaceWords *place = parts_place_words(counting, end->place);
    const int poles = parts_isolating_poles(run);
    add(counting, run,
        (struct Article){.code = arena_print(arena, "isolator-%dp-%s-%s-%s", poles, rating, place->code, made_of->code),
                         .description =
                             say(arena, SAY_PART_ISOLATOR, say_count(poles), say_digits(run->rating_a, 4, UNIT_A),
                                 say_term(made_of->words), say_term(place->words)),
                         .standard = "BS EN 60947-3",
                         .note = enclosure_note(counting, end, SAY_NOTE_ISOLATOR)},
        1, PART_AT_FINISH);
}

static void add_terminal_box(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    const struct End *end = &run->settled->finish;
    const struct MadeOf *made_of = made_of_far(counting, end);
    const struct PlaceWords *place = parts_place_words(counting, end->place);
    add(counting, run,
        (struct Article){.code = arena_print(arena, "terminal-box-%s-%s-%s", parts_cable_code(arena, run), place->code,
                                             made_of->code),
                         .description = say(arena, SAY_PART_TERMINAL_BOX, say_part(parts_cable_name(arena, run)),
                                            say_term(made_of->words), say_term(place->words)),
                         .note = enclosure_note(counting, end, SAY_NOTE_TERMINAL_BOX)},
        1, PART_AT_FINISH);
}

static void add_finish(struct Counting *counting, const struct PlanRun *run)
{
    const struct Run *surveyed = run->settled;
    if (surveyed->finish.into == INTO_TERMINAL_BOX) {
        add_terminal_box(counting, run);
    } else if (surveyed->finish.into == INTO_ENCLOSURE && surveyed->feeds == FEEDS_BOARD) {
        add_board(counting, run);
    } else if (surveyed->finish.into == INTO_ENCLOSURE && surveyed->feeds == FEEDS_EQUIPMENT) {
        add_isolator(counting, run);
    }
}

void parts_count_enclosures(struct Counting *counting, const struct PlanRun *run)
{
    if (!run->rated) {
        if (run->settled->finish.into != INTO_FREE || run->settled->start.into != INTO_FREE) {
            parts_not_counted(counting, UNCOUNTED_OTHER_ENDS, parts_for_run(run->settled));
        }
        return;
    }
    add_device(counting, run);
    add_finish(counting, run);
    parts_count_marking(counting, run);
    parts_not_counted(counting, run->settled->start.from == FROM_EXISTING_WAY ? UNCOUNTED_BOARD : UNCOUNTED_LUGS,
                      parts_for_run(run->settled));
    if (run->settled->finish.into == INTO_ACCESSORY || run->settled->feeds == FEEDS_SOCKETS) {
        parts_not_counted(counting, UNCOUNTED_ACCESSORY, parts_for_run(run->settled));
    }
}
