/* What the hands need to know of the cable itself: how tight it may be bent, held against things that are at hand, and
 * how it is drawn in. */
#include "papers_private.h"

#include <math.h>

/* Things to hold a bend against. Common practice, no source: the size stands beside each, so that it can be measured.
 */
static const struct {
    double across_mm;
    enum Saying what;
} household[] = {
    {80, SAY_THING_MUG},  {120, SAY_THING_DISC}, {180, SAY_THING_SIDE_PLATE}, {260, SAY_THING_DINNER_PLATE},
    {300, SAY_THING_RIM}, {450, SAY_THING_LID},  {600, SAY_THING_CAR_WHEEL},  {680, SAY_THING_BICYCLE_WHEEL},
};

/* A thing that is at least so wide, "a dinner plate, 260 mm"; NULL when none is so large. */
static const struct Say *thing(struct Arena *arena, double across_mm)
{
    for (size_t i = 0; i < sizeof household / sizeof household[0]; i++) {
        if (household[i].across_mm >= across_mm) {
            return say(arena, SAY_COMMA, say_term(household[i].what), say_fixed(household[i].across_mm, 0, UNIT_MM));
        }
    }
    return NULL;
}

/* Rounded up: a bend is never told tighter than it may be. */
static struct SayArg whole_mm(double radius_mm, int times)
{
    return say_fixed(times * ceil(radius_mm - 1e-6), 0, UNIT_MM);
}

/* The radius that every surveyed bend of the stretch has, mm; 0 when they differ or none was surveyed. */
static double surveyed_mm(const struct Segment *segment)
{
    const double first_mm = segment->bends[0].radius_m.given ? segment->bends[0].radius_m.value * 1000 : 0;
    for (int i = 1; i < segment->bend_count; i++) {
        if (!segment->bends[i].radius_m.given || fabs(segment->bends[i].radius_m.value * 1000 - first_mm) > 0.5) {
            return 0;
        }
    }
    return first_mm;
}

static const struct Say *bend_text(struct Arena *arena, const char *run, const struct Segment *segment, double least_mm)
{
    const double made_mm = surveyed_mm(segment);
    const bool made = made_mm >= least_mm;
    const struct Say *what = made ? NULL : thing(arena, 2 * ceil(least_mm - 1e-6));
    const double radius_mm = made ? made_mm : least_mm;
    return say(arena,
               made           ? SAY_BEND_TO
               : what == NULL ? SAY_BEND_LEAST
                              : SAY_BEND_LEAST_HELD,
               *run == '\0' ? say_term(SAY_IT) : say_name(run), whole_mm(radius_mm, 1), whole_mm(radius_mm, 2),
               made ? whole_mm(least_mm, 1) : say_part(what));
}

static const struct Say *surveyed_bends(struct Arena *arena, const struct Segment *segment)
{
    const struct Say *bends = NULL;
    for (int i = 0; i < segment->bend_count; i++) {
        const struct Bend *bend = &segment->bends[i];
        const struct SayArg angle = say_digits(bend->angle_deg, 4, UNIT_NONE);
        const struct Say *said = bend->radius_m.given
                                     ? say(arena, SAY_DEGREES_AT, angle, papers_millimetres(bend->radius_m.value))
                                     : say(arena, SAY_DEGREES, angle);
        bends = say_list(arena, SAY_COMMA, bends, say_part(said));
    }
    return bends;
}

void papers_bends(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, int index)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Segment *segment = plan->segments[index].surveyed;
    if (segment->bend_count == 0) {
        return;
    }
    papers_do(
        out, stretch, "bend",
        say(arena, SAY_BENDS_OF_STRETCH, say_count(segment->bend_count), say_part(surveyed_bends(arena, segment))));
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        for (int k = 0; k < run->bend_count; k++) {
            if (run->bends[k].segment == index && run->bends[k].least_mm > 0) {
                papers_do(
                    out, stretch, "bend",
                    bend_text(arena, plan->run_count > 1 ? run->settled->name : "", segment, run->bends[k].least_mm));
            }
        }
    }
}

/* What a spring balance shows: newtons, and kilograms up or down to a whole one. */
static struct SayArg force(struct Arena *arena, double force_n, double kg)
{
    return say_part(say(arena, SAY_BRACKETS, say_fixed(force_n, 0, UNIT_N), say_fixed(kg, 0, UNIT_KG)));
}

static void add_pull(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, const struct PlanRun *run,
                     const struct PlanPull *pull)
{
    struct Arena *arena = xml_out_arena(out);
    const int last = run->settled->along[pull->first + pull->count - 1];
    const struct Say *to =
        pull->count == 1 ? NULL : say(arena, SAY_TO_THE_END_OF, say_name(plan->segments[last].surveyed->name));
    const struct Say *text = say_then(arena, say(arena, SAY_ONE_PULL, papers_metres(pull->length_m), say_part(to)),
                                      pull->worked ? say(arena, SAY_SEE_PULLING_PLAN) : pull->text);
    papers_do(out, stretch, "aside",
              plan->run_count > 1 ? say(arena, SAY_RUN_COLON, say_name(run->settled->name), say_part(text)) : text);
    if (pull->worked) {
        const double tension_n = ceil(pull->tension_n - 1e-6), limit_n = floor(pull->limit_n + 1e-6);
        papers_do(out, stretch, "aside",
                  say(arena, pull->lubricant ? SAY_PULL_LUBRICATED : SAY_PULL_DRY,
                      force(arena, tension_n, ceil(tension_n / 9.81)), force(arena, limit_n, floor(limit_n / 9.81))));
    }
    if (pull->pit_at_m > 0) {
        papers_do(out, stretch, "aside", say(arena, SAY_DRAW_PIT_WOULD_DO, papers_metres(pull->pit_at_m)));
    }
}

void papers_pulls(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, int index)
{
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        for (int k = 0; k < run->pull_count; k++) {
            if (run->settled->along[run->pulls[k].first] == index) {
                add_pull(out, stretch, plan, run, &run->pulls[k]);
            }
        }
    }
}
