/* Fixings along the ways where a cable is clipped: spacing of On-Site Guide Table D1 by diameter and direction.
 *
 * Counted over stretches of one way, surface and direction together, as if the survey had not been cut into segments:
 * each takes its length over the spacing, rounded up; where a clipped part of the run begins there is one more, and
 * where two clipped stretches meet they share one. A bend takes one more on either side. The count is then given out to
 * the segments by where the fixings fall. */
#include "parts_private.h"

#include <math.h>

/* Where no diameter is known the closest spacing that the table gives is used: that of the thinnest cable in it. */
static const double thinnest_armoured_mm = 12;
static const double thinnest_mm = 5;
static const char metal[] = "metal: holds in a fire (BS 7671 521.10.202)";

/* What a fixing sits on. A tray is tied through its holes, a ladder's rungs take cleats of their own. Common practice,
 * no source. */
enum Holder { ON_SURFACE, ON_TRAY, ON_LADDER, HOLDER_COUNT };

static enum Holder holder_of(enum Way way)
{
    return way == WAY_TRAY ? ON_TRAY : way == WAY_LADDER ? ON_LADDER : ON_SURFACE;
}

/* How a run is held on one of them. */
struct Held {
    struct Article article;
    const char *one, *many; /* "metal hook cleat no. 8", "metal hook cleats no. 8" */
};

/* One run on its way. */
struct Fixing {
    struct Counting *counting;
    int run;
    const struct Run *surveyed;
    bool armoured;
    double diameter_mm; /* by which it is spaced */
    struct Held held[HOLDER_COUNT];
};

static struct Article tie_article(void)
{
    return (struct Article){.aisle = AISLE_FIXINGS,
                            .code = "tie-stainless",
                            .description = "Stainless steel cable tie, coated",
                            .standard = "",
                            .unit = "each",
                            .note = metal,
                            .sold = PACK_TIES,
                            .spare = SPARE_FIXINGS};
}

/* An armoured cable on a ladder's rung; lighter ones are tied. */
static struct Article rung_article(struct Arena *arena, const struct PlanRun *run, double diameter_mm)
{
    if (!survey_armoured(run->surveyed->cable.type)) {
        return tie_article();
    }
    const bool known = diameter_mm > 0;
    const char *size = known ? number_text(arena, diameter_mm, 1) : parts_cable_code(arena, run);
    return (struct Article){.aisle = AISLE_FIXINGS,
                            .code = arena_print(arena, "cleat-rung-%s", size),
                            .description =
                                known ? arena_print(arena,
                                                    "Metal ladder cleat with its bolt and channel nut, for "
                                                    "cable %s mm overall",
                                                    size)
                                      : arena_print(arena, "Metal ladder cleat with its bolt and channel nut, for %s",
                                                    parts_cable_name(arena, run)),
                            .standard = "",
                            .unit = "each",
                            .note = "by the make of the ladder; metal: holds in a fire (BS 7671 521.10.202)",
                            .sold = PACK_CLEATS,
                            .spare = SPARE_FIXINGS};
}

static struct Article fixing_article(struct Arena *arena, const struct PlanRun *run, double diameter_mm)
{
    struct Article article = {
        .aisle = AISLE_FIXINGS, .standard = "", .unit = "each", .note = metal, .spare = SPARE_FIXINGS};
    const char *size = number_text(arena, diameter_mm, 1);
    int number = 0;
    if (diameter_mm <= 0) {
        article.code = arena_print(arena, "fixing-%s", parts_cable_code(arena, run));
        article.description = arena_print(arena, "Metal cable cleat or clip for %s", parts_cable_name(arena, run));
        article.note =
            "metal: holds in a fire (BS 7671 521.10.202); overall diameter not known: closest spacing taken, "
            "size from the maker's sheet";
        article.sold = PACK_CLIPS;
    } else if (survey_armoured(run->surveyed->cable.type) && hook_cleat(diameter_mm, &number)) {
        article.code = arena_print(arena, "fixing-hook-%d", number);
        article.description =
            arena_print(arena, "Hook cleat no. %d, metal, bore %s mm", number, number_text(arena, number * 2.54, 1));
        article.sold = PACK_CLEATS;
    } else {
        article.code = arena_print(arena, "fixing-clip-%s", size);
        article.description = arena_print(arena, "Metal one-hole clip for cable %s mm overall", size);
        article.sold = PACK_CLIPS;
    }
    return article;
}

static struct Fixing fixing_of(struct Counting *counting, int run)
{
    const struct PlanRun *planned = &counting->plan->runs[run];
    const double known_mm = parts_diameter_mm(planned);
    struct Fixing fixing = {.counting = counting,
                            .run = run,
                            .surveyed = planned->surveyed,
                            .armoured = survey_armoured(planned->surveyed->cable.type)};
    int number = 0;
    fixing.diameter_mm = known_mm > 0 ? known_mm : fixing.armoured ? thinnest_armoured_mm : thinnest_mm;
    const bool hook = known_mm > 0 && fixing.armoured && hook_cleat(known_mm, &number);
    struct Arena *arena = counting->arena;
    fixing.held[ON_SURFACE] =
        (struct Held){fixing_article(arena, planned, known_mm),
                      hook ? arena_print(arena, "metal hook cleat no. %d", number) : "metal clip or cleat",
                      hook ? arena_print(arena, "metal hook cleats no. %d", number) : "metal clips or cleats"};
    const struct Held tied = {tie_article(), "stainless steel tie", "stainless steel ties"};
    fixing.held[ON_TRAY] = tied;
    fixing.held[ON_LADDER] = fixing.armoured ? (struct Held){rung_article(arena, planned, known_mm),
                                                             "metal ladder cleat", "metal ladder cleats"}
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
};

/* Fixings up to a distance along the reach, the one at its start not among them. */
static int fixings_to(double distance_m, double pitch_m)
{
    return (int)floor(distance_m / pitch_m + 1e-6);
}

/* What a tie or a ladder's cleat sits on takes no screw. */
static void count_grips(const struct Fixing *fixing, const struct Segment *segment, double fixings)
{
    if (holder_of(segment->way) == ON_SURFACE) {
        parts_count_grips(fixing->counting, segment, segment->way, fixings, fixing->surveyed);
    }
}

static void share_out(const struct Fixing *fixing, const struct Reach *reach, double pitch_m)
{
    struct Counting *counting = fixing->counting;
    const enum Holder holder = holder_of(parts_segment(counting, fixing->run, reach->from)->way);
    double from_m = 0;
    for (int step = reach->from; step < reach->to; step++) {
        const struct Segment *segment = parts_segment(counting, fixing->run, step);
        struct PartsWay *way = &parts_way(counting, fixing->run, step)->way;
        const double to_m = from_m + segment->length_m.value;
        const bool own_first = reach->begins && step == reach->from;
        const int before = fixings_to(from_m, pitch_m);
        way->fixings = fixings_to(to_m, pitch_m) - before + own_first + 2 * segment->bend_count;
        way->spacing_m = reach->spacing_m;
        way->pitch_m = floor(pitch_m * 1000 + 1e-6) / 1000;
        way->first_m = own_first ? 0 : floor(((before + 1) * pitch_m - from_m) * 1000 + 1e-6) / 1000;
        if (way->fixings > 0) {
            parts_add(counting, &fixing->held[holder].article, way->fixings,
                      parts_for_segment(fixing->surveyed, segment));
            count_grips(fixing, segment, way->fixings);
        }
        from_m = to_m;
    }
}

/* The reach that begins at `from`: every next stretch of the same character. */
static struct Reach reach_from(const struct Fixing *fixing, int from)
{
    const int steps = fixing->counting->plan->runs[fixing->run].surveyed->along_count;
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
    parts_add(counting, &fixing->held[holder_of(segment->way)].article, 1,
              parts_for_segment(fixing->surveyed, segment));
    if (loops) {
        count_grips(fixing, segment, 1);
    } else {
        parts_not_counted(counting, UNCOUNTED_END_SURFACE, parts_for_segment(fixing->surveyed, segment));
    }
    parts_way(counting, fixing->run, step)->way.end_fixings++;
}

static void say_hidden(const struct Fixing *fixing, const struct Segment *segment)
{
    if (survey_way(segment->way)->held == HELD_HIDDEN) {
        parts_not_counted(fixing->counting, UNCOUNTED_HIDDEN, parts_for_segment(fixing->surveyed, segment));
    }
}

/* ---- what the crew is told, when everything is counted ---- */

static const char *near_mm(struct Arena *arena)
{
    return number_text(arena, containment_practice()->near_end_m * 1000, 0);
}

/* "8 at 371 mm, the first not more than 150 mm from the start": those that are spaced evenly. */
static void add_even(struct Arena *arena, struct TextBuilder *text, const struct PartsWay *way, int even)
{
    if (even > 1) {
        text_print(text, "%d at %s mm, the first ", even, number_text(arena, way->pitch_m * 1000, 0));
    } else {
        text_add(text, "1 ");
    }
    if (way->first_m <= 0) {
        text_print(text, "not more than %s mm from the start", near_mm(arena));
    } else {
        text_print(text, "%s mm from the start", number_text(arena, way->first_m * 1000, 0));
    }
}

/* "Fit metal hook cleats no. 8: 8 at 371 mm, the first ...; 2 at the bend, ...: 10 in all." */
static const char *all_text(const struct Fixing *fixing, const struct PartsWay *way, enum Holder holder, int bends)
{
    struct Arena *arena = fixing->counting->arena;
    const int even = way->fixings - 2 * bends;
    const int all = way->fixings + way->end_fixings;
    const char *what = all == 1 ? fixing->held[holder].one : fixing->held[holder].many;
    struct TextBuilder text = text_builder(arena);
    text_print(&text, "Fit %s: ", what);
    if (even > 0) {
        add_even(arena, &text, way, even);
    }
    if (bends > 0) {
        text_print(&text, "%s%d at the %s, one on either side%s and not more than %s mm from it", even > 0 ? "; " : "",
                   2 * bends, bends == 1 ? "bend" : arena_print(arena, "%d bends", bends), bends == 1 ? "" : " of each",
                   near_mm(arena));
    }
    if (way->end_fixings > 0) {
        text_print(&text, "%s%d near the termination, not more than %s mm from it", even > 0 || bends > 0 ? "; " : "",
                   way->end_fixings, near_mm(arena));
    }
    if (bends > 0 || way->end_fixings > 0) {
        text_print(&text, ": %d in all", all);
    }
    text_print(&text, "; nowhere further apart than %s mm.", number_text(arena, way->spacing_m * 1000, 0));
    return text_done(&text);
}

/* Stretches that are spaced together: each holds what falls on it. */
static void say_reach(const struct Fixing *fixing, const struct Reach *reach, int step, struct WayDraft *draft)
{
    struct Counting *counting = fixing->counting;
    const int *along = counting->plan->runs[fixing->run].surveyed->along;
    int all = 0;
    for (int i = reach->from; i < reach->to; i++) {
        const struct PartsWay *way = &parts_way(counting, fixing->run, i)->way;
        all += way->fixings + way->end_fixings;
    }
    if (reach->to - reach->from > 1) {
        parts_way_say(draft,
                      arena_print(counting->arena, "Goes on %s stretch %d and is spaced as one with it: %d over %s.",
                                  step > reach->from ? "from" : "into",
                                  along[step > reach->from ? step - 1 : step + 1] + 1, all,
                                  reach->to - reach->from == 2
                                      ? "both"
                                      : arena_print(counting->arena, "all %d of them", reach->to - reach->from)));
    }
}

static void say_fixings(const struct Fixing *fixing, const struct Reach *reach, int step)
{
    struct Arena *arena = fixing->counting->arena;
    const struct Segment *segment = parts_segment(fixing->counting, fixing->run, step);
    struct WayDraft *draft = parts_way(fixing->counting, fixing->run, step);
    struct PartsWay *way = &draft->way;
    if (way->fixings == 0) {
        if (way->end_fixings > 0) {
            parts_way_say(draft,
                          arena_print(arena, "%d metal fixing near the termination, not more than %s mm from it.",
                                      way->end_fixings, near_mm(arena)));
        }
        return;
    }
    const enum Holder holder = holder_of(segment->way);
    const struct SurfaceGrip *grip = NULL;
    const bool known = holder == ON_SURFACE && surface_grip(segment->way, segment->fixed_to, &grip);
    way->fixing_code = fixing->held[holder].article.code;
    way->fixing = fixing->held[holder].article.description;
    way->grip = known ? grip->words : "";
    parts_way_say(draft, all_text(fixing, way, holder, segment->bend_count));
    say_reach(fixing, reach, step, draft);
    if (holder != ON_SURFACE) {
        return;
    }
    parts_way_say(draft, known ? arena_print(arena, "Each held by a %s.", grip->words)
                               : "What it is fixed to was not surveyed: take what holds in it.");
    if (known && grip->remark[0] != '\0') {
        parts_way_say(draft, arena_print(arena, "Note: %s.", grip->remark));
    }
}

static void say_run(const struct Fixing *fixing)
{
    const int steps = fixing->counting->plan->runs[fixing->run].surveyed->along_count;
    struct Reach reach = {0};
    for (int step = 0; step < steps; step++) {
        if (step >= reach.to) {
            reach = reach_from(fixing, step);
        }
        say_fixings(fixing, &reach, step);
    }
}

void parts_count_fixings(struct Counting *counting, int run)
{
    const struct Run *surveyed = counting->plan->runs[run].surveyed;
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
