/* What an end is and has: what the runs terminate in, whether what carries the supply's earth is joined there, what
 * room they need, what they serve. Ends of several runs that have the same said of them are one entry. */
#include "layout_private.h"

#include "documents/earth_ends_private.h"
#include "documents/shown_private.h"

#include <math.h>

/* The gland that the parts list has for an end; NULL when it has none. */
static const struct Say *gland_said(const struct RouteLayout *layout, const struct Run *run, bool finish)
{
    for (int i = 0; layout->parts != NULL && i < layout->parts->count; i++) {
        const struct Part *part = &layout->parts->parts[i];
        if (part->gland != NULL && parts_used_at(part, run, finish ? PART_AT_FINISH : PART_AT_START)) {
            return part->gland;
        }
    }
    return NULL;
}

/* An earth run that is the protective conductor of a run to an island ends there unjoined. */
static bool earth_run_stops(const struct Plan *plan, const struct Run *earth)
{
    for (int i = 0; i < plan->run_count; i++) {
        const struct Run *run = plan->runs[i].settled;
        if (survey_earth_stops(plan->survey, run) && run->cable.cpc == CPC_SEPARATE && run->cable.cpc_run >= 0 &&
            text_same(plan->survey->runs[run->cable.cpc_run].name, earth->name)) {
            return true;
        }
    }
    return false;
}

/* "Armour NOT CONNECTED, earth core NOT CONNECTED" */
static const struct Say *earth_said(const struct RouteLayout *layout, const struct PlanRun *run, bool finish)
{
    struct Arena *arena = layout->arena;
    const enum EarthEnd ends[] = {earth_far_armour(layout->plan, run), earth_far_conductor(layout->plan, run)};
    const enum Saying names[] = {SAY_ARMOUR, earth_conductor(run)};
    const struct Say *list = NULL;
    if (!run->rated) {
        return finish && earth_run_stops(layout->plan, run->settled)
                   ? say(arena, SAY_END_CAP, say_term(SAY_EARTH_CABLE_ALONGSIDE))
                   : NULL;
    }
    for (int i = 0; i < 2; i++) {
        const enum EarthEnd end = ends[i] == EARTH_ABSENT || finish ? ends[i] : EARTH_CONNECTED;
        const struct SayArg name = say_term(names[i]);
        if (end == EARTH_STOPS && i == 1) {
            list = say_list(arena, SAY_COMMA, list, say_part(say(arena, SAY_END_CAP, name)));
        } else if (end != EARTH_ABSENT) {
            list =
                say_list(arena, SAY_COMMA, list, say_part(say(arena, SAY_SPACE, name, say_term(earth_end_state(end)))));
        }
    }
    return list;
}

static const struct Say *termination_said(const struct RouteLayout *layout, const struct Run *run, bool finish)
{
    struct Arena *arena = layout->arena;
    const struct End *end = finish ? &run->finish : &run->start;
    const struct Say *said = say_alone(arena, say_word(WORDS_INTO, (int)end->into));
    if (survey_armoured(run->cable.type) && end->into != INTO_FREE) {
        const struct Say *gland = gland_said(layout, run, finish);
        said = gland != NULL ? say(arena, SAY_END_GLAND, say_part(said), say_part(gland))
                             : say(arena, SAY_END_GLAND_ASK, say_part(said));
    }
    said = say(arena, SAY_END_TAIL, say_part(said), say_digits(end->tail_m.value, 3, UNIT_M));
    return end->loop_m.given && end->loop_m.value > 0
               ? say(arena, SAY_END_LOOP, say_part(said), say_digits(end->loop_m.value, 3, UNIT_M))
               : said;
}

/* The device stands in the heading, or in the table of runs; on a phone, which has no table, here. */
static const struct Say *fed_said(const struct RouteLayout *layout, const struct PlanRun *run)
{
    struct Arena *arena = layout->arena;
    const struct SayArg from = say_meaning(WORDS_FROM, (int)run->settled->start.from);
    if (layout->plan->run_count == 1 || !layout->narrow) {
        return run->settled->start.from_given ? say(arena, SAY_END_FROM, from) : NULL;
    }
    return run->device_text == NULL         ? NULL
           : run->settled->start.from_given ? say(arena, SAY_END_FED_BY_FROM, say_part(run->device_text), from)
                                            : say(arena, SAY_END_FED_BY, say_part(run->device_text));
}

static const struct Say *room_said(struct Arena *arena, const struct PlanEnd *end)
{
    const struct SayArg needs = say_digits(ceil(end->needs_mm - 1e-6), 4, UNIT_MM);
    return end->tight ? say(arena, SAY_END_ROOM_TIGHT, say_digits(end->room_mm, 4, UNIT_MM), needs) : NULL;
}

static const struct Say *further(struct Arena *arena, const struct Say *list, const struct Say *more)
{
    return more == NULL ? list : say_list(arena, SAY_SEMICOLON, list, say_part(more));
}

/* All there is to say of one end of a run, but for its name. How much room an entry wants is on the brief, unless there
 * is too little. */
static const struct Say *end_said(const struct RouteLayout *layout, const struct PlanRun *run, bool finish)
{
    struct Arena *arena = layout->arena;
    const bool alone = layout->plan->run_count == 1;
    /* What must not be joined there comes first; of an only run it stands on plates. */
    const struct Say *said = alone && run->rated ? NULL : earth_said(layout, run, finish);
    said = further(arena, said, termination_said(layout, run->settled, finish));
    said = further(arena, said, finish ? NULL : fed_said(layout, run));
    said = further(arena, said, room_said(arena, finish ? &run->finish_end : &run->start_end));
    if (finish && run->settled->serves != NULL && *run->settled->serves != '\0') {
        said = further(arena, said, say(arena, SAY_END_SERVES, say_name(run->settled->serves)));
    }
    const char *numbers = finish || layout->narrow ? "" : flag_numbers(layout, run->settled, -1);
    return *numbers == '\0'
               ? said
               : further(arena, said,
                         say(arena, SAY_END_FLAGS, say_name(numbers), say_count(flag_count(layout, run->settled, -1))));
}

/* The end of the `half`th half run at a boundary: what is said of it; NULL when it is elsewhere. */
static const struct Say *half_said(const struct RouteLayout *layout, int half, int boundary)
{
    const struct PlanRun *run = &layout->plan->runs[half / 2];
    return layout_run_boundary(run->settled, half % 2 == 1) == boundary ? end_said(layout, run, half % 2 == 1) : NULL;
}

/* "feeder, pump: enclosure, ..." of the half run and of all later ones like it; NULL when an earlier entry has it. */
static const struct Say *shared_entry(const struct RouteLayout *layout, const struct Say *const *halves, int half)
{
    struct Arena *arena = layout->arena;
    const struct Say *names = NULL;
    for (int i = half % 2; i < layout->plan->run_count * 2; i += 2) {
        if (halves[i] != NULL && say_same(halves[i], halves[half])) {
            if (i < half) {
                return NULL;
            }
            names = say_list(arena, SAY_COMMA, names, say_name(layout->plan->runs[i / 2].settled->name));
        }
    }
    return say(arena, SAY_COLON, say_part(names), say_part(halves[half]));
}

enum Saying end_name(const struct RouteLayout *layout, int boundary)
{
    int starts = 0, finishes = 0;
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct Run *run = layout->plan->runs[i].settled;
        starts += layout_run_boundary(run, false) == boundary;
        finishes += layout_run_boundary(run, true) == boundary;
    }
    return boundary == 0                       ? SAY_END_SUPPLY
           : boundary == layout->stretch_count ? SAY_END_FAR
           : starts == 0                       ? SAY_END_FINISHES
           : finishes == 0                     ? SAY_END_STARTS
                                               : SAY_END_BOTH;
}

void cells_end(struct Cell *cell, int end)
{
    const struct RouteLayout *layout = cell->layout;
    struct Arena *arena = layout->arena;
    const int boundary = layout->ends[end].boundary, halves_count = layout->plan->run_count * 2;
    const struct Say **halves = arena_array(arena, (size_t)halves_count, sizeof(struct Say *));
    for (int i = 0; halves != NULL && i < halves_count; i++) {
        halves[i] = half_said(layout, i, boundary);
    }
    for (int i = 0; halves != NULL && i < halves_count; i++) {
        if (halves[i] != NULL) {
            cell_put(cell, layout->plan->run_count == 1 ? halves[i] : shared_entry(layout, halves, i), false);
        }
    }
}
