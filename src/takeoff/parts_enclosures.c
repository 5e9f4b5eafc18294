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
    [PLACE_INDOORS] = {"IP2X, its top IP4X", "indoors", "IP: BS 7671 416.2"},
    [PLACE_OUTDOORS] = {"not below IP44", "IP44", "IP: outdoors, AD4 in BS 7671 Appendix 5, from memory"},
    [PLACE_WET] = {"not below IP55", "IP55",
                   "IP: jets of water, AD5 in BS 7671 Appendix 5, from memory; IP55 common practice, no source"},
};

const struct PlaceWords *parts_place_words(const struct Counting *counting, enum Place place)
{
    static const struct PlaceWords farm = {"not below IP44", "IP44", "IP: on a farm 705.512.2, from memory"};
    const bool dry = place == PLACE_INDOORS && counting->plan->survey->job.location == LOCATION_FARM;
    return dry ? &farm : &places[place < PLACE_COUNT ? place : PLACE_WET];
}

/* Every live conductor: BS 7671 462.1.201, 462.2; on an island the neutral too, from memory. */
int parts_isolating_poles(const struct PlanRun *run)
{
    return run->currents.lines + (survey_neutral(run->surveyed, run->currents.lines) ? 1 : 0);
}

/* "plastic"; an island's is insulated all through, unless a metal one was surveyed. */
static const char *material(const struct Counting *counting, const struct End *end, bool far)
{
    if (end->enclosure != ENCLOSURE_PLASTIC) { /* painted metal is metal */
        return "metal";
    }
    return far && counting->plan->electrode.due ? "insulated" : "plastic";
}

static const char *material_words(const char *material)
{
    return text_same(material, "insulated") ? "plastic, insulated all through (Class II)" : material;
}

/* What is open about an enclosure, and why it is as it is. */
static const char *enclosure_note(const struct Counting *counting, const struct End *end, bool far, const char *more)
{
    const char *made_of = material(counting, end, far);
    const char *why = "";
    if (text_same(made_of, "insulated")) {
        why = "; no metal part may reach through it";
    } else if (far && counting->plan->electrode.due) {
        why = "; METAL, as surveyed: keep it off the armour, and see the checks before it is bought";
    } else if (!end->enclosure_given) {
        why = "; what it is made of was not surveyed: plastic taken";
    }
    return arena_print(counting->arena, "%s%s; %s", more, why, parts_place_words(counting, end->place)->source);
}

static void add(struct Counting *counting, const struct PlanRun *run, struct Article article, double pieces,
                enum PartPlace place)
{
    article.unit = "each";
    article.aisle = AISLE_ENCLOSURES;
    parts_add(counting, &article, pieces, parts_for_end(run->surveyed, place));
}

static void add_device(struct Counting *counting, const struct PlanRun *run)
{
    const bool fuse = run->device != DEVICE_MCB && run->device != DEVICE_RCBO;
    add(counting, run,
        (struct Article){.code = arena_print(counting->arena, "device-%s", run->device_code),
                         .description = arena_print(counting->arena, "Protective device %s", run->device_full_text),
                         .standard = standards[run->device],
                         .note = run->device_note},
        fuse ? run->currents.lines : 1, PART_AT_START); /* each line has a fuse of its own */
    if (fuse) {
        parts_not_counted(counting, UNCOUNTED_FUSE_HOLDER, parts_for_run(run->surveyed));
    }
}

/* What a distribution circuit ends in. The residual device that the survey puts there comes with it. */
static void add_board(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    const struct End *end = &run->surveyed->finish;
    const struct Quantity *residual = &counting->plan->survey->earthing.board_residual_a;
    const char *rating = number_significant(arena, run->rating_a, 4);
    const char *milliamps = number_significant(arena, residual->value * 1000, 4);
    const char *made_of = material(counting, end, true);
    const struct PlaceWords *place = parts_place_words(counting, end->place);
    const int poles = parts_isolating_poles(run);
    add(counting, run,
        (struct Article){
            .code = arena_print(arena, "board-%s-%dp%s%s%s-%s-%s", rating, poles, residual->given ? "-" : "",
                                residual->given ? milliamps : "", residual->given ? "mA" : "", place->code, made_of),
            .description = arena_print(
                arena, "Distribution board, %s, %s, %s, main switch %d-pole not below %s A%s%s%s, ways: ask",
                material_words(made_of), place->words, run->currents.lines == 3 ? "three-phase" : "single-phase", poles,
                rating, residual->given ? ", residual device " : "", residual->given ? milliamps : "",
                residual->given ? arena_print(arena, " mA type A %d-pole", poles) : ""),
            .standard = "BS EN 61439-3",
            .note = enclosure_note(counting, end, true,
                                   "its ways and their devices by what it feeds: not in the survey; in a household "
                                   "421.1.201 may ask for one that does not burn")},
        1, PART_AT_FINISH);
}

static void add_isolator(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    const struct End *end = &run->surveyed->finish;
    const char *rating = number_significant(arena, run->rating_a, 4);
    const char *made_of = material(counting, end, true);
    const struct PlaceWords *place = parts_place_words(counting, end->place);
    const int poles = parts_isolating_poles(run);
    add(counting, run,
        (struct Article){.code = arena_print(arena, "isolator-%dp-%s-%s-%s", poles, rating, place->code, made_of),
                         .description = arena_print(
                             arena, "Isolator, %d-pole, not below %s A, in an enclosure: %s, %s; can be locked off",
                             poles, rating, material_words(made_of), place->words),
                         .standard = "BS EN 60947-3",
                         .note = enclosure_note(counting, end, true, "unless the equipment has its own")},
        1, PART_AT_FINISH);
}

static void add_terminal_box(struct Counting *counting, const struct PlanRun *run)
{
    struct Arena *arena = counting->arena;
    const struct End *end = &run->surveyed->finish;
    const char *made_of = material(counting, end, true);
    const struct PlaceWords *place = parts_place_words(counting, end->place);
    add(counting, run,
        (struct Article){
            .code = arena_print(arena, "terminal-box-%s-%s-%s", parts_cable_code(arena, run), place->code, made_of),
            .description = arena_print(arena, "Terminal box for %s: %s, %s", parts_cable_name(arena, run),
                                       material_words(made_of), place->words),
            .standard = "",
            .note = enclosure_note(counting, end, true, "room for the cable's bend")},
        1, PART_AT_FINISH);
}

static void add_finish(struct Counting *counting, const struct PlanRun *run)
{
    const struct Run *surveyed = run->surveyed;
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
        if (run->surveyed->finish.into != INTO_FREE || run->surveyed->start.into != INTO_FREE) {
            parts_not_counted(counting, UNCOUNTED_OTHER_ENDS, parts_for_run(run->surveyed));
        }
        return;
    }
    add_device(counting, run);
    add_finish(counting, run);
    parts_count_marking(counting, run);
    parts_not_counted(counting, run->surveyed->start.from == FROM_EXISTING_WAY ? UNCOUNTED_BOARD : UNCOUNTED_LUGS,
                      parts_for_run(run->surveyed));
    if (run->surveyed->finish.into == INTO_ACCESSORY || run->surveyed->feeds == FEEDS_SOCKETS) {
        parts_not_counted(counting, UNCOUNTED_ACCESSORY, parts_for_run(run->surveyed));
    }
}
