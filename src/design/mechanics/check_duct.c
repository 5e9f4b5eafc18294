/* The check of a duct: fill of the bore, wedging, and the smallest duct that would do. */
#include "mechanics_private.h"

#include <math.h>

/* The bore from which neither the fill nor wedging is in the way, in whole millimetres. */
static double bore_for(const struct Bunch *bunch)
{
    const struct DuctJam jam = duct_jam();
    const struct Bunch parts[2] = {*bunch, bunch_thickest(bunch, 2)};
    const struct Bunch three = bunch_thickest(bunch, jam.cables);
    double bore_mm = three.count == jam.cables ? jam.high * three.sum_mm / three.count : 0;
    for (int i = 0; i < 2; i++) {
        double allowed_percent;
        if (duct_fill_allowed(parts[i].count, &allowed_percent)) {
            bore_mm = fmax(bore_mm, sqrt(parts[i].squares_mm2 / allowed_percent * 100));
        }
    }
    return ceil(bore_mm - 1e-9);
}

/* `passes`: this duct does. One that does not, as its bore was surveyed, may be of a size that does by the least bore.
 */
static const struct Say *size_advice(struct Arena *arena, const struct Bunch *bunch, bool bent, double nominal_mm,
                                     bool passes)
{
    double smallest_mm;
    if (!passes && bunch->count > 0 &&
        (!(nominal_mm > 0) || (duct_smallest(bunch, bent, &smallest_mm) && within(smallest_mm, nominal_mm)))) {
        return say(arena, SAY_DUCT_TAKE_BORE, say_fixed(bore_for(bunch), 0, UNIT_MM));
    }
    if (!(nominal_mm > 0)) {
        return NULL;
    }
    if (!duct_smallest(bunch, bent, &smallest_mm)) {
        return say(arena, SAY_DUCT_NONE_TAKES_THEM);
    }
    const struct SayArg size = say_digits(smallest_mm, 4, UNIT_MM);
    if (within(smallest_mm, nominal_mm)) {
        return within(nominal_mm, smallest_mm) ? say(arena, SAY_DUCT_NO_SMALLER)
                                               : say(arena, SAY_DUCT_SMALLER_WOULD_DO, size);
    }
    /* by its least bore this size might not do; as surveyed it does */
    return passes ? NULL : say(arena, SAY_DUCT_TAKE_SIZE, size);
}

static const struct Say *bent_warning(struct Arena *arena, double fill_percent, double allowed_percent, bool bent)
{
    return bent && within(fill_percent, allowed_percent) && !within(fill_percent, allowed_percent * duct_fill_bent())
               ? say(arena, SAY_FILL_OVER_BENT, say_fixed((1 - duct_fill_bent()) * 100, 0, UNIT_PERCENT))
               : NULL;
}

/* Who fills it: all of them, what is known of them at least, or the two thickest alone. */
enum Filling { FILLING_ALL, FILLING_AT_LEAST, FILLING_TWO_OF };

/* `count` is of all of them, `fullest` what decides. */
static const struct Say *say_filled(struct Arena *arena, enum Filling filling, int count, const struct Bunch *fullest,
                                    const struct Segment *segment, const struct DuctBore *bore)
{
    static const struct {
        enum Saying bore, least_bore;
    } ids[] = {
        [FILLING_ALL] = {SAY_FILL_OF_BORE, SAY_FILL_OF_LEAST_BORE},
        [FILLING_AT_LEAST] = {SAY_FILL_AT_LEAST_OF_BORE, SAY_FILL_AT_LEAST_OF_LEAST_BORE},
        [FILLING_TWO_OF] = {SAY_FILL_TWO_OF_BORE, SAY_FILL_TWO_OF_LEAST_BORE},
    };
    double allowed_percent = 0;
    duct_fill_allowed(fullest->count, &allowed_percent);
    const struct SayArg filled = say_fixed(duct_fill_percent(fullest, bore->mm), 1, UNIT_PERCENT);
    const struct SayArg allowed = say_digits(allowed_percent, 4, UNIT_PERCENT);
    const struct SayArg mm = say_digits(bore->mm, 4, UNIT_MM);
    return bore->row_mm > 0 ? say(arena, ids[filling].least_bore, say_count(count), filled, mm,
                                  say_digits(segment->duct_size_mm.value, 4, UNIT_MM), allowed)
                            : say(arena, ids[filling].bore, say_count(count), filled, mm, allowed);
}

static const struct Say *say_wedges(struct Arena *arena, const struct Bunch *bunch, double bore_mm, bool bent)
{
    const struct DuctJam jam = duct_jam();
    const struct SayArg low = say_fixed(jam.low, 1, UNIT_TIMES);
    const struct SayArg high = say_fixed(jam.high, 1, UNIT_TIMES);
    const struct SayArg ratio = say_fixed(duct_jam_ratio(bunch, bore_mm), 2, UNIT_TIMES);
    return bent
               ? say(arena, SAY_FILL_WEDGES_IN_BEND, low, high, ratio, say_fixed((jam.bent - 1) * 100, 0, UNIT_PERCENT))
               : say(arena, SAY_FILL_WEDGES, low, high, ratio);
}

/* Why it is not made though all that is asked for is known. */
static const struct Say *say_may_wedge(struct Arena *arena, const struct Bunch *bunch)
{
    const struct DuctJam jam = duct_jam();
    if (bunch->count > jam.cables) {
        return say(arena, SAY_FILL_THREE_AMONG_MORE);
    }
    const double mean_mm = bunch->sum_mm / bunch->count;
    return say(arena, SAY_FILL_WOULD_WEDGE, say_fixed(floor(jam.low * mean_mm), 0, UNIT_MM),
               say_fixed(ceil(jam.high * mean_mm), 0, UNIT_MM));
}

static const struct Say *word_fill(struct Arena *arena, const struct Bunch *bunch, const struct Segment *segment,
                                   const struct DuctBore *bore, const struct Check *check)
{
    const bool bent = segment->bend_count > 0;
    const struct Bunch fullest = duct_fullest(bunch, bore->mm);
    const struct Say *advice =
        size_advice(arena, bunch, bent, segment->duct_size_mm.value, check->result == CHECK_PASS);
    const struct Say *text = say_filled(arena, fullest.count < bunch->count ? FILLING_TWO_OF : FILLING_ALL,
                                        bunch->count, &fullest, segment, bore);
    if (duct_jams(bunch, bore->mm, bent)) {
        text = say_then(arena, text, say_wedges(arena, bunch, bore->mm, bent));
    } else if (check->unknown) {
        text = say_then(arena, say_may_wedge(arena, bunch), text);
    } else {
        double allowed_percent = 0;
        duct_fill_allowed(fullest.count, &allowed_percent);
        text = say_then(arena, text, bent_warning(arena, duct_fill_percent(&fullest, bore->mm), allowed_percent, bent));
    }
    return say_then(arena, text, advice);
}

static void work_fill(struct Arena *arena, const struct Sharing *sharing, const struct Segment *segment,
                      const struct DuctBore *bore, struct Check *out)
{
    const struct Bunch fullest = duct_fullest(&sharing->bunch, bore->mm);
    const struct Bunch *bunch = &fullest;
    struct Steps steps = steps_begin(arena);
    const double bore_mm = bore->mm;
    double allowed_percent = 0;
    duct_fill_allowed(bunch->count, &allowed_percent);
    if (bore->row_mm > 0) {
        steps_figure(&steps, say_term(SAY_STEP_LEAST_BORE),
                     say_part(say(arena, SAY_STEP_ROW_OF_DUCT, steps_value(bore->row_mm, UNIT_MM),
                                  steps_value(segment->duct_size_mm.value, UNIT_MM))),
                     "", bore_mm, UNIT_MM, steps_source(&steps, duct_bore_ref()));
    } else {
        steps_figure(&steps, say_term(SAY_STEP_BORE), say_term(SAY_STEP_AS_SURVEYED), "", bore_mm, UNIT_MM,
                     say_term(SAY_STEP_AS_SURVEYED));
    }
    const bool two = bunch->count < sharing->bunch.count;
    steps_figure(&steps, say_term(SAY_STEP_SQUARES),
                 two ? say_term(SAY_STEP_TWO_THICKEST)
                     : say_part(say(arena, SAY_STEP_IN_THE_DUCT, say_count(bunch->count))),
                 "", bunch->squares_mm2, UNIT_MM2, say_term(SAY_STEP_DATASHEETS));
    steps_figure(&steps, say_term(SAY_STEP_SHARE_OF_BORE), say_term(SAY_STEP_SHARE_OF_ROUND),
                 arena_print(arena, "%s / %s ^ 2 x 100", steps_number(&steps, bunch->squares_mm2),
                             steps_number(&steps, bore_mm)),
                 duct_fill_percent(bunch, bore_mm), UNIT_PERCENT, say_term(SAY_STEP_AREAS_OF_CIRCLES));
    steps_figure(&steps, say_term(SAY_STEP_ALLOWED),
                 say_part(say(arena, SAY_STEP_FOR_SO_MANY, say_count(bunch->count))), "", allowed_percent, UNIT_PERCENT,
                 steps_source(&steps, duct_fill_ref()));
    if (bunch->count == duct_jam().cables) {
        steps_figure(&steps, say_term(SAY_STEP_BORE_OVER_MEAN), say_term(SAY_STEP_BORE_OVER_MEAN_FORMULA),
                     arena_print(arena, "%s x %d / %s", steps_number(&steps, bore_mm), bunch->count,
                                 steps_number(&steps, bunch->sum_mm)),
                     duct_jam_ratio(bunch, bore_mm), UNIT_NONE, steps_source(&steps, duct_jam_ref()));
        steps_figure(&steps, say_term(SAY_STEP_NO_WEDGING_FROM), say_term(SAY_STEP_UPPER_END), "", duct_jam().high,
                     UNIT_NONE, steps_source(&steps, duct_jam_ref()));
    }
    steps_end(&steps, out);
}

/* Why the check cannot be made, SAY_NOTHING when it can, and what would settle it. */
static enum Saying fill_lacks(const struct Sharing *sharing, const struct RunDesign *run, const struct Segment *segment,
                              struct Settles *settles)
{
    struct DuctBore bore;
    if (sharing->lacking != NULL) {
        *settles = settles_key("cable: diameter");
        return sharing->lacking == run->run ? SAY_THIS_DIAMETER_NOT_HELD : SAY_FILL_ANOTHER_DIAMETER;
    }
    if (sharing->cables_unknown) {
        *settles = settles_key("beside: diameter");
        return SAY_FILL_CABLES_THERE;
    }
    if (!segment->duct_size_mm.given && !segment->duct_bore_mm.given) {
        *settles = settles_key("duct: size");
        return SAY_FILL_NO_SIZE;
    }
    *settles = settles_key("duct: bore");
    return mechanics_bore(segment, &bore) ? SAY_NOTHING : SAY_FILL_NO_BORE_SO_SMALL;
}

enum Saying duct_fill_lacks(const struct RunDesign *run, const struct Sharing *sharing, int stretch)
{
    struct Settles settles;
    const enum Saying lacks = fill_lacks(sharing, run, segment_at(run, stretch), &settles);
    return lacks != SAY_NOTHING                       ? lacks
           : sharing->bunch.count > duct_jam().cables ? SAY_FILL_THREE_MAY_WEDGE
                                                      : SAY_FILL_MAY_WEDGE;
}

static void duct_fill_source(const struct DuctBore *bore, struct Check *out)
{
    if (bore->row_mm > 0) {
        out->cite.standard = duct_bore_ref()->standard;
        out->rule = SAY_RULE_LEAST_BORE;
        out->trust = trust_of_both(duct_bore_ref()->trust, duct_fill_ref()->trust);
    } else {
        out->rule = SAY_RULE_DUCT_FILL;
    }
}

/* What cannot be measured may still be too thick for certain: what of it is known does not go in by itself, and one
 * more makes no room. */
static bool overfills_at_least(const struct Sharing *sharing, const struct Segment *segment, struct Check *out)
{
    struct DuctBore bore;
    double allowed_percent = 0;
    if (sharing->least.count == 0 || !mechanics_bore(segment, &bore)) {
        return false;
    }
    const struct Bunch least = duct_fullest(&sharing->least, bore.mm);
    if (!duct_fill_allowed(least.count, &allowed_percent) ||
        within(duct_fill_percent(&least, bore.mm), allowed_percent)) {
        return false;
    }
    out->result = CHECK_FAIL;
    duct_fill_source(&bore, out);
    out->value = duct_fill_percent(&least, bore.mm);
    out->limit = allowed_percent;
    return true;
}

static void say_overfills_at_least(struct Arena *arena, const struct Sharing *sharing, const struct Segment *segment,
                                   struct Check *out)
{
    struct DuctBore bore;
    mechanics_bore(segment, &bore);
    const struct Bunch fullest = duct_fullest(&sharing->least, bore.mm);
    const struct Bunch *least = &fullest;
    out->text = say_then(arena, say_filled(arena, FILLING_AT_LEAST, least->count, least, segment, &bore),
                         say(arena, SAY_FILL_LEAST_DIAMETER));
    struct Steps steps = steps_begin(arena);
    steps_figure(&steps, say_term(SAY_STEP_BORE),
                 say_term(bore.row_mm > 0 ? SAY_STEP_LEAST_OF_ITS_SIZE : SAY_STEP_AS_SURVEYED), "", bore.mm, UNIT_MM,
                 bore.row_mm > 0 ? steps_source(&steps, duct_bore_ref()) : say_term(SAY_STEP_AS_SURVEYED));
    steps_figure(&steps, say_term(SAY_STEP_LEAST_SQUARES),
                 say_part(say(arena, SAY_STEP_IN_THE_DUCT, say_count(least->count))), "", least->squares_mm2, UNIT_MM2,
                 say_term(SAY_STEP_SMALLER_OR_COPPER));
    steps_figure(&steps, say_term(SAY_STEP_SHARE_AT_LEAST), say_term(SAY_STEP_SHARE_OF_ROUND),
                 arena_print(arena, "%s / %s ^ 2 x 100", steps_number(&steps, least->squares_mm2),
                             steps_number(&steps, bore.mm)),
                 out->value, UNIT_PERCENT, say_term(SAY_STEP_AREAS_OF_CIRCLES));
    steps_figure(&steps, say_term(SAY_STEP_ALLOWED),
                 say_part(say(arena, SAY_STEP_FOR_SO_MANY, say_count(least->count))), "", out->limit, UNIT_PERCENT,
                 steps_source(&steps, duct_fill_ref()));
    steps_end(&steps, out);
}

/* What is known is said all the same: which duct would do. */
static const struct Say *say_no_duct(struct Arena *arena, const struct Bunch *bunch, bool bent)
{
    double smallest_mm;
    const struct Say *lacks = say(arena, SAY_FILL_NO_SIZE);
    return duct_smallest(bunch, bent, &smallest_mm)
               ? say_then(arena, lacks, say(arena, SAY_FILL_DUCT_THAT_WOULD_DO, say_digits(smallest_mm, 4, UNIT_MM)))
               : lacks;
}

/* Of a bunch and a bore that are known. */
static void decide(const struct Bunch *bunch, const struct DuctBore *bore, const struct Segment *segment,
                   struct Check *out)
{
    const bool bent = segment->bend_count > 0;
    const struct Bunch fullest = duct_fullest(bunch, bore->mm);
    const struct Bunch three = bunch_thickest(bunch, duct_jam().cables);
    const bool more = bunch->count > three.count;
    duct_fill_source(bore, out);
    out->value = duct_fill_percent(&fullest, bore->mm);
    duct_fill_allowed(fullest.count, &out->limit);
    out->result = within(out->value, out->limit) ? CHECK_PASS : CHECK_FAIL;
    if (out->result == CHECK_PASS && duct_jams(bunch, bore->mm, bent)) {
        out->result = CHECK_FAIL;
        out->at_least = true;
        out->value = duct_jam_ratio(bunch, bore->mm);
        out->limit = duct_jam().high;
        out->unit = UNIT_TIMES;
        out->cite.standard = NULL;
        out->rule = SAY_RULE_JAM;
    } else if (out->result == CHECK_PASS && bore->row_mm > 0 &&
               duct_may_jam(bunch, bore->mm, segment->duct_size_mm.value, bent)) {
        check_unsettled(out, settles_key("duct: bore"), NULL);
    } else if (out->result == CHECK_PASS && more &&
               (duct_jams(&three, bore->mm, bent) ||
                (bore->row_mm > 0 && duct_may_jam(&three, bore->mm, segment->duct_size_mm.value, bent)))) {
        check_unsettled(out, settles_reading(SAY_SETTLED_BY_DUCT_OF_ANOTHER_SIZE), NULL);
    }
}

void decide_fill_of(const struct RunDesign *run, const struct Sharing *sharing, int stretch, struct Check *out)
{
    const struct Segment *segment = segment_at(run, stretch);
    struct Settles settles;
    struct DuctBore bore;
    if (fill_lacks(sharing, run, segment, &settles) == SAY_NOTHING) {
        mechanics_bore(segment, &bore);
        decide(&sharing->bunch, &bore, segment, out);
    } else if (!overfills_at_least(sharing, segment, out)) {
        check_unsettled(out, settles, NULL);
    }
}

void decide_duct_fill(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out)
{
    const struct Sharing sharing = mechanics_sharing(run, trial->size_mm2, run->run->along[stretch]);
    decide_fill_of(run, &sharing, stretch, out);
}

void say_duct_fill(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                   struct Check *out)
{
    const struct Segment *segment = segment_at(run, stretch);
    const struct Sharing sharing = mechanics_sharing(run, trial->size_mm2, run->run->along[stretch]);
    struct Settles settles;
    const enum Saying lacks = fill_lacks(&sharing, run, segment, &settles);
    if (lacks == SAY_FILL_NO_SIZE) {
        out->text = say_no_duct(arena, &sharing.bunch, segment->bend_count > 0);
    } else if (lacks != SAY_NOTHING && out->result == CHECK_FAIL) {
        say_overfills_at_least(arena, &sharing, segment, out);
    } else if (lacks != SAY_NOTHING) {
        out->text = say(arena, lacks);
    } else {
        struct DuctBore bore;
        mechanics_bore(segment, &bore);
        out->text = word_fill(arena, &sharing.bunch, segment, &bore, out);
        if (!out->unknown) {
            work_fill(arena, &sharing, segment, &bore, out);
        }
    }
}
