/* Fixings along the ways where a cable is clipped: spacing of On-Site Guide Table D1 by diameter and direction.
 *
 * Counted over stretches of one way, surface and direction together, as if the survey had not been cut into segments:
 * each takes its length over the spacing, rounded up; where a clipped part of the run begins there is one more, and
 * where two clipped stretches meet they share one. A bend takes one more on either side. The count is then given out to
 * the segments by where the fixings fall. */
#include "parts_private.h"

#include <math.h>

/* How a run is held where it is clipped. A tray is tied through its holes, a ladder's rungs take cleats of their own.
 * Common practice, no source. */
enum { HELD_WAYS = HELD_LADDER + 1 };

/* Beside a way that holds no cable, near its termination, it is clipped. */
static enum WayHeld held_by(const struct Segment *segment)
{
    const enum WayHeld held = survey_way(segment->way)->held;
    return held == HELD_TRAY || held == HELD_LADDER ? held : HELD_CLIPPED;
}

struct Held {
    struct Article article;
    enum Saying some; /* so many of them, and their number */
    int number;       /* of a hook cleat */
    const struct Say *short_name;
};

/* One run on its way. */
struct Fixing {
    struct Counting *counting;
    int run;
    const struct Run *surveyed;
    bool armoured;
    double diameter_mm; /* by which it is spaced */
    struct Held held[HELD_WAYS];
};

/* An armoured cable on a ladder's rung; lighter ones are tied. */
static struct Article rung_article(struct Arena *arena, const struct PlanRun *run, double diameter_mm)
{
    const char *size = diameter_mm > 0 ? number_text(arena, diameter_mm, 1) : parts_cable_code(arena, run);
    return (struct Article){.aisle = AISLE_FIXINGS,
                            .code = arena_print(arena, "cleat-rung-%s", size),
                            .description = say(arena, SAY_PART_RUNG_CLEAT, say_part(parts_cable_thick(arena, run))),
                            .note = say(arena, SAY_NOTE_RUNG_CLEAT),
                            .sold = PACK_CLEATS,
                            .spare = SPARE_FIXINGS};
}

static struct Held hook_held(struct Arena *arena, int number)
{
    return (struct Held){.article = {.aisle = AISLE_FIXINGS,
                                     .code = arena_print(arena, "fixing-hook-%d", number),
                                     .description = say(arena, SAY_PART_HOOK_CLEAT, say_count(number),
                                                        say_fixed(number * 2.54, 1, UNIT_MM)),
                                     .note = say(arena, SAY_NOTE_METAL),
                                     .sold = PACK_CLEATS,
                                     .spare = SPARE_FIXINGS},
                         .some = SAY_HOOK_CLEATS,
                         .number = number,
                         .short_name = say(arena, SAY_HOOK_CLEAT_SHORT, say_count(number))};
}

static struct Held clip_held(struct Arena *arena, const struct PlanRun *run, double diameter_mm)
{
    const bool known = diameter_mm > 0;
    const char *size = known ? number_text(arena, diameter_mm, 1) : "";
    return (struct Held){.article = {.aisle = AISLE_FIXINGS,
                                     .code = known ? arena_print(arena, "fixing-clip-%s", size)
                                                   : arena_print(arena, "fixing-%s", parts_cable_code(arena, run)),
                                     .description = say(arena, known ? SAY_PART_CLIP : SAY_PART_CLEAT_OR_CLIP,
                                                        say_part(parts_cable_thick(arena, run))),
                                     .note = say(arena, known ? SAY_NOTE_METAL : SAY_NOTE_CLIP_OPEN),
                                     .sold = PACK_CLIPS,
                                     .spare = SPARE_FIXINGS},
                         .some = SAY_CLIPS_OR_CLEATS,
                         .short_name = say(arena, known ? SAY_CLIP_SHORT : SAY_CLEAT_OR_CLIP_SHORT)};
}

static struct Fixing fixing_of(struct Counting *counting, int run)
{
    struct Arena *arena = counting->arena;
    const struct PlanRun *planned = &counting->plan->runs[run];
    const double known_mm = parts_diameter_mm(planned);
    struct Fixing fixing = {.counting = counting,
                            .run = run,
                            .surveyed = planned->settled,
                            .armoured = survey_armoured(planned->settled->cable.type)};
    int number = 0;
    /* of an unknown diameter the closest spacing that the table gives: that of the thinnest cable in it */
    fixing.diameter_mm = known_mm > 0      ? known_mm
                         : fixing.armoured ? takeoff_practice()->thinnest_armoured_mm
                                           : takeoff_practice()->thinnest_mm;
    const bool hook = known_mm > 0 && fixing.armoured && hook_cleat(known_mm, &number);
    const struct Held tied = {.article = parts_tie(arena), .some = SAY_TIES, .short_name = say(arena, SAY_TIE_SHORT)};
    fixing.held[HELD_CLIPPED] = hook ? hook_held(arena, number) : clip_held(arena, planned, known_mm);
    fixing.held[HELD_TRAY] = tied;
    fixing.held[HELD_LADDER] = fixing.armoured ? (struct Held){.article = rung_article(arena, planned, known_mm),
                                                               .some = SAY_LADDER_CLEATS,
                                                               .short_name = say(arena, SAY_RUNG_CLEAT_SHORT)}
                                               : tied;
    return fixing;
}

static bool same_character(const struct Segment *a, const struct Segment *b)
{
    return a->way == b->way && a->fixed_to == b->fixed_to && parts_upright(a) == parts_upright(b);
}

/* ---- one stretch of one character ---- */

struct Reach {
    int from, to; /* steps of the run, `to` not in it */
    double length_m, spacing_m;
    bool begins; /* nothing clipped before it: its first fixing is its own */
    int fixings; /* once counted: all on it, those at ends and bends among them */
};

/* Fixings up to a distance along the reach, the one at its start not among them. */
static int fixings_to(double distance_m, double pitch_m)
{
    return (int)floor(distance_m / pitch_m + 1e-6);
}

/* What a tie or a ladder's cleat sits on takes no screw. */
static void count_grips(const struct Fixing *fixing, const struct Segment *segment, double fixings)
{
    if (held_by(segment) == HELD_CLIPPED) {
        parts_count_grips(fixing->counting, segment, segment->way, fixings, fixing->surveyed);
    }
}

static void share_out(const struct Fixing *fixing, const struct Reach *reach, double pitch_m)
{
    struct Counting *counting = fixing->counting;
    const enum WayHeld held = held_by(parts_segment(counting, fixing->run, reach->from));
    double from_m = 0;
    for (int step = reach->from; step < reach->to; step++) {
        const struct Segment *segment = parts_segment(counting, fixing->run, step);
        struct PartsWay *way = parts_way(counting, fixing->run, step);
        const double to_m = from_m + segment->length_m.value;
        const bool own_first = reach->begins && step == reach->from;
        const int before = fixings_to(from_m, pitch_m);
        way->bend_fixings = 2 * segment->bend_count;
        way->fixings = fixings_to(to_m, pitch_m) - before + own_first + way->bend_fixings;
        way->spacing_m = reach->spacing_m;
        way->near_m = containment_practice()->near_end_m;
        way->pitch_m = floor(pitch_m * 1000 + 1e-6) / 1000;
        way->first_m = own_first ? 0 : floor(((before + 1) * pitch_m - from_m) * 1000 + 1e-6) / 1000;
        if (way->fixings > 0) {
            parts_add(counting, &fixing->held[held].article, way->fixings,
                      parts_for_segment(fixing->surveyed, segment));
            count_grips(fixing, segment, way->fixings);
        }
        from_m = to_m;
    }
}

/* The reach that begins at `from`: every next stretch of the same character. */
static struct Reach reach_from(const struct Fixing *fixing, int from)
{
    const int steps = fixing->counting->plan->runs[fixing->run].settled->along_count;
    const struct Segment *first = parts_segment(fixing->counting, fixing->run, from);
    struct Reach reach = {.from = from, .to = from, .length_m = 0};
    while (reach.to < steps && same_character(first, parts_segment(fixing->counting, fixing->run, reach.to))) {
        reach.length_m += parts_segment(fixing->counting, fixing->run, reach.to)->length_m.value;
        reach.to++;
    }
    return reach;
}

/* ---- the ends ---- */

/* One more near a termination that the cable reaches off a fixing: out of the ground, off a wire, or by a loop. */
static void count_end(const struct Fixing *fixing, const struct End *end, int step)
{
    const struct Segment *segment = parts_segment(fixing->counting, fixing->run, step);
    const bool hangs = survey_in_ground(segment->way) || survey_way(segment->way)->held == HELD_HUNG;
    const bool loops = parts_clipped(segment->way) && end->loop_m.value > 0;
    if (end->into == INTO_FREE || !(hangs || loops)) {
        return;
    }
    struct Counting *counting = fixing->counting;
    parts_add(counting, &fixing->held[held_by(segment)].article, 1, parts_for_segment(fixing->surveyed, segment));
    if (loops) {
        count_grips(fixing, segment, 1);
    } else {
        parts_not_counted(counting, UNCOUNTED_END_SURFACE, parts_for_segment(fixing->surveyed, segment));
    }
    struct PartsWay *way = parts_way(counting, fixing->run, step);
    way->end_fixings++;
    way->near_m = containment_practice()->near_end_m;
}

static void say_hidden(const struct Fixing *fixing, const struct Segment *segment)
{
    if (survey_way(segment->way)->held == HELD_HIDDEN) {
        parts_not_counted(fixing->counting, UNCOUNTED_HIDDEN, parts_for_segment(fixing->surveyed, segment));
    }
}

/* ---- the sentences for the crew, when everything is counted ---- */

static struct SayArg near_said(void)
{
    return say_fixed(containment_practice()->near_end_m * 1000, 0, UNIT_MM);
}

/* One more of what is said, after a semicolon. */
static void more(struct Arena *arena, const struct Say **all, const struct Say *said)
{
    *all = say_list(arena, SAY_SEMICOLON, *all, say_part(said));
}

/* "8 at 371 mm, the first not more than 150 mm from the start": those that are spaced evenly. */
static const struct Say *even_said(struct Arena *arena, const struct PartsWay *way, int even)
{
    const struct Say *first = way->first_m <= 0
                                  ? say(arena, SAY_NEAR_START, near_said())
                                  : say(arena, SAY_FROM_START, say_fixed(way->first_m * 1000, 0, UNIT_MM));
    return even > 1 ? say(arena, SAY_EVEN, say_count(even), say_fixed(way->pitch_m * 1000, 0, UNIT_MM), say_part(first))
                    : say(arena, SAY_EVEN_ONE, say_part(first));
}

/* "Fit metal hook cleats no. 8: 8 at 371 mm, the first ...; 2 at the bend, ...: 10 in all." */
static const struct Say *all_said(const struct Fixing *fixing, const struct PartsWay *way, enum WayHeld by, int bends)
{
    struct Arena *arena = fixing->counting->arena;
    const struct Held *held = &fixing->held[by];
    const int even = way->fixings - way->bend_fixings;
    const int all = way->fixings + way->end_fixings;
    const struct Say *where = NULL;
    if (even > 0) {
        more(arena, &where, even_said(arena, way, even));
    }
    if (bends == 1) {
        more(arena, &where, say(arena, SAY_AT_THE_BEND, say_count(2), near_said()));
    } else if (bends > 1) {
        more(arena, &where, say(arena, SAY_AT_THE_BENDS, say_count(way->bend_fixings), say_count(bends), near_said()));
    }
    if (way->end_fixings > 0) {
        more(arena, &where, say(arena, SAY_AT_TERMINATION, say_count(way->end_fixings), near_said()));
    }
    const bool several = bends > 0 || way->end_fixings > 0;
    return say(arena, SAY_FIT, say_part(say(arena, held->some, say_count(all), say_count(held->number))),
               say_part(where), say_part(several ? say(arena, SAY_IN_ALL, say_count(all)) : NULL),
               say_fixed(way->spacing_m * 1000, 0, UNIT_MM));
}

/* Stretches that are spaced together: each holds what falls on it. */
static void say_reach(const struct Fixing *fixing, const struct Reach *reach, int step, struct PartsWay *way)
{
    struct Counting *counting = fixing->counting;
    const int *along = counting->plan->runs[fixing->run].settled->along;
    if (reach->to - reach->from > 1) {
        const bool behind = step > reach->from;
        const int steps = reach->to - reach->from;
        const struct Say *over =
            steps == 2 ? say(counting->arena, SAY_OVER_BOTH) : say(counting->arena, SAY_OVER_ALL, say_count(steps));
        parts_way_tell(counting, way,
                       say(counting->arena, behind ? SAY_GOES_ON_FROM : SAY_GOES_ON_INTO,
                           say_count(along[behind ? step - 1 : step + 1] + 1), say_count(reach->fixings),
                           say_part(over)));
    }
}

static void say_fixings(const struct Fixing *fixing, const struct Reach *reach, int step)
{
    struct Arena *arena = fixing->counting->arena;
    const struct Segment *segment = parts_segment(fixing->counting, fixing->run, step);
    struct PartsWay *way = parts_way(fixing->counting, fixing->run, step);
    if (way->fixings == 0) {
        if (way->end_fixings > 0) {
            parts_way_say(fixing->counting, way,
                          say(arena, SAY_FIXING_AT_TERMINATION, say_count(way->end_fixings), near_said()));
        }
        return;
    }
    const enum WayHeld held = held_by(segment);
    const struct SurfaceGrip *grip = NULL;
    const bool known = held == HELD_CLIPPED && surface_grip(segment->way, segment->fixed_to, &grip);
    way->fixing_code = fixing->held[held].article.code;
    way->fixing = fixing->held[held].article.description;
    way->fixing_short = fixing->held[held].short_name;
    way->grip = known ? parts_grip_said(arena, segment->way, segment->fixed_to) : NULL;
    parts_way_say(fixing->counting, way, all_said(fixing, way, held, segment->bend_count));
    say_reach(fixing, reach, step, way);
    if (held == HELD_CLIPPED && known) {
        parts_way_tell(fixing->counting, way, say(arena, SAY_EACH_HELD_BY, say_part(way->grip)));
        parts_way_tell(fixing->counting, way, say(arena, SAY_GRIP_REMARK, say_part(parts_grip_remark(arena, grip))));
    } else if (held == HELD_CLIPPED) {
        parts_way_say(fixing->counting, way, say(arena, SAY_FIXED_TO_NOT_SURVEYED));
    }
}

static int fixings_of(const struct Fixing *fixing, const struct Reach *reach)
{
    int all = 0;
    for (int i = reach->from; i < reach->to; i++) {
        const struct PartsWay *way = parts_way(fixing->counting, fixing->run, i);
        all += way->fixings + way->end_fixings;
    }
    return all;
}

static void say_run(const struct Fixing *fixing)
{
    const int steps = fixing->counting->plan->runs[fixing->run].settled->along_count;
    struct Reach reach = {0};
    for (int step = 0; step < steps; step++) {
        if (step >= reach.to) {
            reach = reach_from(fixing, step);
            reach.fixings = fixings_of(fixing, &reach);
        }
        say_fixings(fixing, &reach, step);
    }
}

void parts_count_fixings(struct Counting *counting, int run)
{
    const struct Run *surveyed = counting->plan->runs[run].settled;
    const struct Fixing fixing = fixing_of(counting, run);
    bool clipped_before = false;
    for (int step = 0; step < surveyed->along_count;) {
        const struct Segment *segment = parts_segment(counting, run, step);
        struct Reach reach = reach_from(&fixing, step);
        reach.begins = !clipped_before;
        clipped_before = parts_clipped(segment->way);
        step = reach.to;
        if (!clipped_before) {
            say_hidden(&fixing, segment);
            continue;
        }
        if (!support_spacing(fixing.armoured, fixing.diameter_mm, parts_upright(segment), &reach.spacing_m)) {
            parts_not_counted(counting, UNCOUNTED_SPACING, parts_for_run(surveyed));
            say_run(&fixing);
            return;
        }
        share_out(&fixing, &reach, reach.length_m / parts_pieces(reach.length_m, reach.spacing_m));
    }
    if (surveyed->along_count > 0) {
        count_end(&fixing, &surveyed->start, 0);
        count_end(&fixing, &surveyed->finish, surveyed->along_count - 1);
    }
    say_run(&fixing);
}
