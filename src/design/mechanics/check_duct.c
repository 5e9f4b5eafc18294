/* The check of a duct: fill of the bore, wedging, and the smallest duct that would do. */
#include "mechanics_private.h"

#include <math.h>

static const char source_of_fill[] = "distributor's guide to duct fill, no British limit is known";
static const char source_of_bore[] =
    "BS EN 61386-24 least bore; fill by a distributor's guide, no British limit is known";

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
static const char *size_advice(struct Arena *arena, const struct Bunch *bunch, bool bent, double nominal_mm,
                               bool passes)
{
    double smallest_mm;
    if (!passes && bunch->count > 0 &&
        (!(nominal_mm > 0) || (duct_smallest(bunch, bent, &smallest_mm) && within(smallest_mm, nominal_mm)))) {
        return arena_print(arena, " Take a bore of %s mm or more, or give them a duct each.",
                           number_text(arena, bore_for(bunch), 0));
    }
    if (!(nominal_mm > 0)) {
        return "";
    }
    if (!duct_smallest(bunch, bent, &smallest_mm)) {
        return " No duct of the list takes them; give them a duct each.";
    }
    const char *size = number_significant(arena, smallest_mm, 4);
    if (within(smallest_mm, nominal_mm)) {
        return within(nominal_mm, smallest_mm) ? " No smaller one would do."
                                               : arena_print(arena, " A %s mm duct would do.", size);
    }
    /* by its least bore this size might not do; as surveyed it does */
    return passes ? "" : arena_print(arena, " Take %s mm or larger.", size);
}

static const char *bent_warning(double fill_percent, double allowed_percent, bool bent)
{
    return bent && within(fill_percent, allowed_percent) && !within(fill_percent, allowed_percent * duct_fill_bent())
               ? " Where a duct bends a distributor advises 15 % less than that, which this is over."
               : "";
}

static const char *bore_words(struct Arena *arena, const struct Segment *segment, const struct DuctBore *bore)
{
    const char *mm = number_significant(arena, bore->mm, 4);
    return bore->row_mm > 0 ? arena_print(arena, "%s mm bore that a %s mm duct has at least", mm,
                                          number_significant(arena, segment->duct_size_mm.value, 4))
                            : arena_print(arena, "%s mm bore of the duct", mm);
}

/* "3 cables fill ", "The two thickest of 3 cables alone fill ". */
static const char *fill_words(struct Arena *arena, const struct Bunch *bunch, const struct Bunch *fullest)
{
    if (fullest->count < bunch->count) {
        return arena_print(arena, "The two thickest of %d cables alone fill", bunch->count);
    }
    return arena_print(arena, "%d cable%s fill%s", bunch->count, bunch->count > 1 ? "s" : "",
                       bunch->count > 1 ? "" : "s");
}

static void word_fill(struct Arena *arena, const struct Bunch *bunch, const struct Segment *segment,
                      const struct DuctBore *bore, struct Check *out)
{
    const double bore_mm = bore->mm;
    const bool bent = segment->bend_count > 0;
    const struct Bunch fullest = duct_fullest(bunch, bore_mm);
    const struct Bunch three = bunch_thickest(bunch, duct_jam().cables);
    double allowed_percent = 0;
    duct_fill_allowed(fullest.count, &allowed_percent);
    const double fill_percent = duct_fill_percent(&fullest, bore_mm);
    const char *advice = size_advice(arena, bunch, bent, segment->duct_size_mm.value, out->result == CHECK_PASS);
    const char *filled = arena_print(arena, "%s %s %% of the %s; %s %% is allowed.", fill_words(arena, bunch, &fullest),
                                     number_text(arena, fill_percent, 1), bore_words(arena, segment, bore),
                                     number_significant(arena, allowed_percent, 4));
    if (duct_jams(bunch, bore_mm, bent)) {
        const struct DuctJam jam = duct_jam();
        out->text = say(
            arena, SAY_AS_IS,
            say_name(arena_print(
                arena,
                "%s But three cables wedge side by side where the bore is %s to %s times as wide as one of them%s: "
                "here it is %s times.%s",
                filled, number_text(arena, jam.low, 1), number_text(arena, jam.high, 1),
                bent ? ", 5 % wider in a bend" : "", number_text(arena, duct_jam_ratio(bunch, bore_mm), 2), advice)));
        return;
    }
    if (out->unknown && bunch->count > three.count) {
        out->text = say(arena, SAY_AS_IS,
                        say_name(arena_print(
                            arena,
                            "Not made: three alone, as thick as the thickest of these, may wedge side by side, and "
                            "that one more keeps them from it is not held. %s%s",
                            filled, advice)));
        return;
    }
    if (out->unknown) {
        out->text =
            say(arena, SAY_AS_IS,
                say_name(arena_print(
                    arena,
                    "Not made: in a bore of %s to %s mm the three would wedge side by side, and ducts as "
                    "sold are wider than the least bore: measure it (duct: bore). %s%s",
                    number_text(arena, floor(duct_jam().low * bunch->sum_mm / bunch->count), 0),
                    number_text(arena, ceil(duct_jam().high * bunch->sum_mm / bunch->count), 0), filled, advice)));
        return;
    }
    out->text =
        say(arena, SAY_AS_IS,
            say_name(arena_print(arena, "%s%s%s", filled, bent_warning(fill_percent, allowed_percent, bent), advice)));
}

static void work_fill(struct Arena *arena, const struct RunDesign *run, const struct Sharing *sharing,
                      const struct Segment *segment, const struct DuctBore *bore, struct Check *out)
{
    if (run->brief) {
        return;
    }
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
                     "", bore_mm, UNIT_MM, say_name(table_source(arena, duct_bore_ref())));
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
                 say_name(table_source(arena, duct_fill_ref())));
    if (bunch->count == duct_jam().cables) {
        steps_figure(&steps, say_term(SAY_STEP_BORE_OVER_MEAN), say_term(SAY_STEP_BORE_OVER_MEAN_FORMULA),
                     arena_print(arena, "%s x %d / %s", steps_number(&steps, bore_mm), bunch->count,
                                 steps_number(&steps, bunch->sum_mm)),
                     duct_jam_ratio(bunch, bore_mm), UNIT_NONE, say_name(table_source(arena, duct_jam_ref())));
        steps_figure(&steps, say_term(SAY_STEP_NO_WEDGING_FROM), say_term(SAY_STEP_UPPER_END), "", duct_jam().high,
                     UNIT_NONE, say_name(table_source(arena, duct_jam_ref())));
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
        return sharing->lacking == run->run ? SAY_FILL_THIS_DIAMETER : SAY_FILL_ANOTHER_DIAMETER;
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

enum Saying duct_fill_lacks(const struct Survey *survey, const struct RunDesign *run, const struct Trial *trial,
                            int stretch)
{
    const int index = run->run->along[stretch];
    const struct Sharing sharing = mechanics_sharing(survey, run, trial->size_mm2, index);
    struct Settles settles;
    const enum Saying lacks = fill_lacks(&sharing, run, &survey->segments[index], &settles);
    return lacks != SAY_NOTHING                      ? lacks
           : sharing.bunch.count > duct_jam().cables ? SAY_FILL_THREE_MAY_WEDGE
                                                     : SAY_FILL_MAY_WEDGE;
}

/* What cannot be measured may still be too thick for certain: what of it is known does not go in by itself, and one
 * more makes no room. */
static bool overfills_at_least(struct Arena *arena, const struct RunDesign *run, const struct Sharing *sharing,
                               const struct Segment *segment, struct Check *out)
{
    struct DuctBore bore;
    double allowed_percent = 0;
    if (sharing->least.count == 0 || !mechanics_bore(segment, &bore)) {
        return false;
    }
    const struct Bunch fullest = duct_fullest(&sharing->least, bore.mm);
    const struct Bunch *least = &fullest;
    if (!duct_fill_allowed(least->count, &allowed_percent) ||
        within(duct_fill_percent(least, bore.mm), allowed_percent)) {
        return false;
    }
    out->result = CHECK_FAIL;
    out->source = bore.row_mm > 0 ? source_of_bore : source_of_fill;
    out->value = duct_fill_percent(least, bore.mm);
    out->limit = allowed_percent;
    if (arena == NULL) {
        return true;
    }
    out->text = say(arena, SAY_AS_IS,
                    say_name(arena_print(arena,
                                         "%d cable%s fill%s at least %s %% of the %s; %s %% is allowed. A diameter is "
                                         "not held: it is taken as that of "
                                         "the next smaller size of its kind, or of its copper alone.",
                                         least->count, least->count > 1 ? "s" : "", least->count > 1 ? "" : "s",
                                         number_text(arena, out->value, 1), bore_words(arena, segment, &bore),
                                         number_significant(arena, allowed_percent, 4))));
    if (run->brief) {
        return true;
    }
    struct Steps steps = steps_begin(arena);
    steps_figure(&steps, say_term(SAY_STEP_BORE),
                 say_term(bore.row_mm > 0 ? SAY_STEP_LEAST_OF_ITS_SIZE : SAY_STEP_AS_SURVEYED), "", bore.mm, UNIT_MM,
                 bore.row_mm > 0 ? say_name(table_source(arena, duct_bore_ref())) : say_term(SAY_STEP_AS_SURVEYED));
    steps_figure(&steps, say_term(SAY_STEP_LEAST_SQUARES),
                 say_part(say(arena, SAY_STEP_IN_THE_DUCT, say_count(least->count))), "", least->squares_mm2, UNIT_MM2,
                 say_term(SAY_STEP_SMALLER_OR_COPPER));
    steps_figure(&steps, say_term(SAY_STEP_SHARE_AT_LEAST), say_term(SAY_STEP_SHARE_OF_ROUND),
                 arena_print(arena, "%s / %s ^ 2 x 100", steps_number(&steps, least->squares_mm2),
                             steps_number(&steps, bore.mm)),
                 out->value, UNIT_PERCENT, say_term(SAY_STEP_AREAS_OF_CIRCLES));
    steps_figure(&steps, say_term(SAY_STEP_ALLOWED),
                 say_part(say(arena, SAY_STEP_FOR_SO_MANY, say_count(least->count))), "", allowed_percent, UNIT_PERCENT,
                 say_name(table_source(arena, duct_fill_ref())));
    steps_end(&steps, out);
    return true;
}

/* What is known is said all the same: which duct would do. */
static void no_duct(struct Arena *arena, const struct Bunch *bunch, bool bent, struct Check *out)
{
    double smallest_mm;
    check_unsettled(out, settles_key("duct: size"), say(arena, SAY_FILL_NO_SIZE));
    if (arena != NULL && duct_smallest(bunch, bent, &smallest_mm)) {
        out->text =
            say_then(arena, out->text, say(arena, SAY_FILL_DUCT_THAT_WOULD_DO, say_digits(smallest_mm, 4, UNIT_MM)));
    }
}

void check_duct_fill(struct Arena *arena, const struct Survey *survey, const struct RunDesign *run,
                     const struct Trial *trial, int stretch, struct Check *out)
{
    const int index = run->run->along[stretch];
    const struct Segment *segment = &survey->segments[index];
    const struct Sharing sharing = mechanics_sharing(survey, run, trial->size_mm2, index);
    struct Settles settles;
    const enum Saying lacks = fill_lacks(&sharing, run, segment, &settles);
    struct DuctBore bore;
    if (lacks == SAY_FILL_NO_SIZE) {
        no_duct(arena, &sharing.bunch, segment->bend_count > 0, out);
        return;
    }
    if (lacks != SAY_NOTHING) {
        if (!overfills_at_least(arena, run, &sharing, segment, out)) {
            check_unsettled(out, settles, say(arena, lacks));
        }
        return;
    }
    mechanics_bore(segment, &bore);
    const struct Bunch *bunch = &sharing.bunch;
    const bool bent = segment->bend_count > 0;
    out->source = bore.row_mm > 0 ? source_of_bore : source_of_fill;
    const struct Bunch fullest = duct_fullest(bunch, bore.mm);
    const struct Bunch three = bunch_thickest(bunch, duct_jam().cables);
    const bool more = bunch->count > three.count;
    out->value = duct_fill_percent(&fullest, bore.mm);
    duct_fill_allowed(fullest.count, &out->limit);
    out->result = within(out->value, out->limit) ? CHECK_PASS : CHECK_FAIL;
    if (out->result == CHECK_PASS && duct_jams(bunch, bore.mm, bent)) {
        out->result = CHECK_FAIL;
        out->at_least = true;
        out->value = duct_jam_ratio(bunch, bore.mm);
        out->limit = duct_jam().high;
        out->unit = "times";
        out->source = "makers' guides on the jam ratio of three cables";
    } else if (out->result == CHECK_PASS && bore.row_mm > 0 &&
               duct_may_jam(bunch, bore.mm, segment->duct_size_mm.value, bent)) {
        check_unsettled(out, settles, say(arena, SAY_FILL_MAY_WEDGE));
    } else if (out->result == CHECK_PASS && more &&
               (duct_jams(&three, bore.mm, bent) ||
                (bore.row_mm > 0 && duct_may_jam(&three, bore.mm, segment->duct_size_mm.value, bent)))) {
        check_unsettled(out, settles_reading(SAY_SETTLED_BY_DUCT_OF_ANOTHER_SIZE),
                        say(arena, SAY_FILL_THREE_MAY_WEDGE));
    }
    if (arena != NULL) {
        word_fill(arena, bunch, segment, &bore, out);
        if (!out->unknown) {
            work_fill(arena, run, &sharing, segment, &bore, out);
        }
    }
}
