/* The check of a conduit and of trunking: whether its cables go in. A conduit's bore is not held: what overfills its
 * outside fails for certain, and for the rest the check is not made. */
#include "mechanics_private.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* One conduit or trunking and what lies in it. */
struct Enclosed {
    const struct Segment *segment;
    const struct Bunch *bunch; /**< what decides */
    struct Bunch fullest;      /**< of a conduit that, else not used */
    bool trunking;
    double filled_percent, allowed_percent;
};

static bool measure(struct Enclosed *enclosed)
{
    const struct Segment *segment = enclosed->segment;
    const double size_mm = segment->size_mm.value;
    if (!segment->size_mm.given || (enclosed->trunking && !segment->height_mm.given)) {
        return false;
    }
    if (enclosed->trunking) {
        enclosed->filled_percent = enclosed->bunch->squares_mm2 * pi / 4 / (size_mm * segment->height_mm.value) * 100;
        enclosed->allowed_percent = trunking_fill_percent();
        return true;
    }
    enclosed->fullest = duct_fullest(enclosed->bunch, size_mm);
    enclosed->bunch = &enclosed->fullest;
    enclosed->filled_percent = duct_fill_percent(enclosed->bunch, size_mm);
    return duct_fill_allowed(enclosed->bunch->count, &enclosed->allowed_percent);
}

/* Trunking may have room enough and be too flat for the thickest cable. */
static double narrow_mm(const struct Enclosed *enclosed)
{
    const struct Segment *segment = enclosed->segment;
    return enclosed->trunking ? fmin(segment->size_mm.value, segment->height_mm.value) : segment->size_mm.value;
}

static const struct Say *say_filled(struct Arena *arena, const struct Enclosed *enclosed)
{
    const struct Segment *segment = enclosed->segment;
    const struct SayArg count = say_count(enclosed->bunch->count);
    const struct SayArg thickest = say_fixed(enclosed->bunch->largest_mm, 1, UNIT_MM);
    const struct SayArg filled = say_fixed(enclosed->filled_percent, 1, UNIT_PERCENT);
    const struct SayArg size = say_digits(segment->size_mm.value, 4, UNIT_MM);
    const struct SayArg allowed = say_digits(enclosed->allowed_percent, 4, UNIT_PERCENT);
    return enclosed->trunking ? say(arena, SAY_FILL_OF_TRUNKING, count, thickest, filled, size,
                                    say_digits(segment->height_mm.value, 4, UNIT_MM), allowed)
                              : say(arena, SAY_FILL_OF_CONDUIT, count, thickest, filled, size, allowed);
}

static void work(struct Arena *arena, const struct Enclosed *enclosed, struct Check *out)
{
    const struct Segment *segment = enclosed->segment;
    struct Steps steps = steps_begin(arena);
    const char *squares = steps_number(&steps, enclosed->bunch->squares_mm2);
    const char *size = steps_number(&steps, segment->size_mm.value);
    steps_figure(&steps, say_term(SAY_STEP_SQUARES),
                 say_part(say(arena, SAY_STEP_IN_IT, say_count(enclosed->bunch->count))), "",
                 enclosed->bunch->squares_mm2, UNIT_MM2, say_term(SAY_STEP_DATASHEETS));
    steps_figure(&steps, say_term(SAY_STEP_SHARE_OF_IT),
                 say_term(enclosed->trunking ? SAY_STEP_SHARE_OF_RECTANGLE : SAY_STEP_SHARE_OF_ROUND),
                 enclosed->trunking ? arena_print(arena, "%s x 3.1416 / 4 / (%s x %s) x 100", squares, size,
                                                  steps_number(&steps, segment->height_mm.value))
                                    : arena_print(arena, "%s / %s ^ 2 x 100", squares, size),
                 enclosed->filled_percent, UNIT_PERCENT, say_term(SAY_STEP_AREAS_OF_CIRCLES));
    steps_figure(&steps, say_term(SAY_STEP_ALLOWED),
                 say_part(say(arena, SAY_STEP_FOR_SO_MANY, say_count(enclosed->bunch->count))), "",
                 enclosed->allowed_percent, UNIT_PERCENT,
                 steps_source(&steps, enclosed->trunking ? trunking_fill_ref() : duct_fill_ref()));
    steps_end(&steps, out);
}

static void work_narrow(struct Arena *arena, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    steps_figure(&steps, say_term(SAY_STEP_THICKEST), say_term(SAY_STEP_OF_THE_CABLE), "", out->value, UNIT_MM,
                 say_term(SAY_STEP_DATASHEETS));
    steps_figure(&steps, say_term(SAY_STEP_NARROW_SIDE), say_term(SAY_STEP_AS_SURVEYED), "", out->limit, UNIT_MM,
                 say_term(SAY_STEP_AS_SURVEYED));
    steps_end(&steps, out);
}

/* What lies in it, and what that comes to: false where the way or a cable was not surveyed. */
static bool look(const struct Sharing *sharing, const struct Segment *segment, struct Enclosed *out)
{
    *out = (struct Enclosed){
        .segment = segment, .bunch = &sharing->least, .trunking = survey_way(segment->way)->round == ROUND_TRUNKING};
    return sharing->least.count > 0 && measure(out);
}

static bool others_unknown(const struct Sharing *sharing)
{
    return sharing->lacking != NULL || sharing->cables_unknown;
}

void decide_enclosed_fill(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out)
{
    const struct Sharing sharing = mechanics_sharing(run, trial->size_mm2, run->run->along[stretch]);
    struct Enclosed enclosed;
    const bool measured = look(&sharing, segment_at(run, stretch), &enclosed);
    out->rule = enclosed.trunking ? SAY_RULE_TRUNKING_FILL : SAY_RULE_CONDUIT_FILL;
    if (measured) {
        out->value = enclosed.filled_percent;
        out->limit = enclosed.allowed_percent;
    }
    if (measured && !within(enclosed.filled_percent, enclosed.allowed_percent)) {
        out->result = CHECK_FAIL;
    } else if (measured && !within(sharing.least.largest_mm, narrow_mm(&enclosed))) {
        out->result = CHECK_FAIL;
        out->value = sharing.least.largest_mm;
        out->limit = narrow_mm(&enclosed);
        out->unit = UNIT_MM;
    } else if (others_unknown(&sharing)) {
        check_unsettled(out, settles_key(sharing.lacking != NULL ? "cable: diameter" : "beside: diameter"), NULL);
    } else if (!measured) {
        check_unsettled(out, settles_key("size"), NULL);
    } else if (enclosed.trunking) {
        out->result = CHECK_PASS;
    } else {
        check_unsettled(out, settles_reading(SAY_SETTLED_BY_CONDUIT_BORE), NULL);
    }
}

void say_enclosed_fill(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                       struct Check *out)
{
    const struct Sharing sharing = mechanics_sharing(run, trial->size_mm2, run->run->along[stretch]);
    struct Enclosed enclosed;
    const bool measured = look(&sharing, segment_at(run, stretch), &enclosed);
    if (out->unknown && others_unknown(&sharing)) {
        out->text = say(arena, sharing.lacking != NULL ? SAY_FILL_A_DIAMETER_IN_IT : SAY_FILL_CABLES_IN_IT);
    } else if (!measured) {
        out->text = say(arena, SAY_FILL_SIZE_NOT_SURVEYED);
    } else if (out->unknown) {
        out->text = say_then(arena, say(arena, SAY_FILL_CONDUIT_BORE_NOT_HELD), say_filled(arena, &enclosed));
    } else if (out->unit == UNIT_MM) {
        out->text = say(arena, SAY_FILL_TOO_THICK_FOR_TRUNKING, say_fixed(out->value, 1, UNIT_MM),
                        say_digits(out->limit, 4, UNIT_MM));
        work_narrow(arena, out);
    } else {
        out->text = say_then(arena, say_filled(arena, &enclosed),
                             others_unknown(&sharing) ? say(arena, SAY_FILL_LEAST_TAKEN) : NULL);
        work(arena, &enclosed, out);
    }
}
