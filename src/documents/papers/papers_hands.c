/* What the hands need to know of the cable itself: how tight it may be bent, held against things that are at hand, and
 * how it is drawn in. */
#include "documents/shown_private.h"
#include "papers_private.h"

#include "documents/shown_private.h"

#include <math.h>

/* Things to hold a bend against. Common practice, no source: the size stands beside each, so that it can be measured.
 */
static const struct {
    double across_mm;
    const char *what;
} household[] = {
    {80, "a mug"},           {120, "a compact disc"}, {180, "a side plate"},  {260, "a dinner plate"},
    {300, "a bucket's rim"}, {450, "a dustbin lid"},  {600, "a car's wheel"}, {680, "a bicycle wheel"},
};

const char *papers_household(struct Arena *arena, double across_mm)
{
    for (size_t i = 0; i < sizeof household / sizeof household[0]; i++) {
        if (household[i].across_mm >= across_mm) {
            return arena_print(arena, "%s, %s mm", household[i].what, number_text(arena, household[i].across_mm, 0));
        }
    }
    return "";
}

/* Rounded up: a bend is never told tighter than it may be. */
static double whole_mm(double radius_mm)
{
    return ceil(radius_mm - 1e-6);
}

/* "no tighter than a radius of 117 mm: a circle 234 mm across; a dinner plate, 260 mm, is wide enough" */
static const char *held(struct Arena *arena, double radius_mm)
{
    const double across_mm = 2 * whole_mm(radius_mm);
    const char *what = papers_household(arena, across_mm);
    return arena_print(arena, "no tighter than a radius of %s mm: a circle %s mm across%s%s%s",
                       number_text(arena, whole_mm(radius_mm), 0), number_text(arena, across_mm, 0),
                       *what == '\0' ? "" : "; ", what, *what == '\0' ? "" : ", is wide enough");
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

static const char *bend_text(struct Arena *arena, const struct Segment *segment, double least_mm)
{
    const double made_mm = surveyed_mm(segment);
    if (made_mm < least_mm) {
        return held(arena, least_mm);
    }
    return arena_print(arena, "to a radius of %s mm (a circle %s mm across); never below %s mm",
                       number_text(arena, whole_mm(made_mm), 0), number_text(arena, 2 * whole_mm(made_mm), 0),
                       number_text(arena, whole_mm(least_mm), 0));
}

static const char *surveyed_bends(struct Arena *arena, const struct Segment *segment)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < segment->bend_count; i++) {
        const struct Bend *bend = &segment->bends[i];
        text_print(&text, "%s%s degrees", i == 0 ? "" : ", ", number_significant(arena, bend->angle_deg, 4));
        if (bend->radius_m.given) {
            text_print(&text, " at %s", papers_millimetres(arena, bend->radius_m.value));
        }
    }
    return text_done(&text);
}

void papers_bends(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, int index)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Segment *segment = plan->segments[index].surveyed;
    if (segment->bend_count == 0) {
        return;
    }
    papers_do(out, stretch, "bend",
              arena_print(arena, "%d bend%s: %s.", segment->bend_count, segment->bend_count == 1 ? "" : "s",
                          surveyed_bends(arena, segment)));
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        for (int k = 0; k < run->bend_count; k++) {
            if (run->bends[k].segment == index && run->bends[k].least_mm > 0) {
                papers_do(out, stretch, "bend",
                          arena_print(arena, "Bend %s %s.", plan->run_count > 1 ? run->surveyed->name : "it",
                                      bend_text(arena, segment, run->bends[k].least_mm)));
            }
        }
    }
}

const char *papers_force(struct Arena *arena, double force_n, bool up)
{
    const double kg = force_n / 9.81;
    return arena_print(arena, "%s N (%s kg)", number_text(arena, force_n, 0),
                       number_text(arena, up ? ceil(kg) : floor(kg), 0));
}

void papers_pulls(struct XmlOut *out, struct XmlElement *stretch, const struct Plan *plan, int index)
{
    struct Arena *arena = xml_out_arena(out);
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        for (int k = 0; k < run->pull_count; k++) {
            const struct PlanPull *pull = &run->pulls[k];
            if (run->surveyed->along[pull->first] != index) {
                continue;
            }
            const char *whose = plan->run_count > 1 ? arena_print(arena, "Run %s: ", run->surveyed->name) : "";
            const int last = run->surveyed->along[pull->first + pull->count - 1];
            papers_do(
                out, stretch, "aside",
                arena_print(
                    arena, "%sOne pull of %s%s. %s", whose, papers_metres(arena, pull->length_m),
                    last == index ? "" : arena_print(arena, ", to the end of %s", plan->segments[last].surveyed->name),
                    pull->worked ? "Where the drum stands: the pulling plan." : shown_said(arena, pull->text)));
            if (pull->worked) {
                papers_do(
                    out, stretch, "aside",
                    arena_print(arena,
                                "%s: about %s at the rope. If it takes several times that, something has caught: stop "
                                "and look. Never over %s.",
                                pull->lubricant ? "With lubricant" : "Dry",
                                papers_force(arena, ceil(pull->tension_n - 1e-6), true),
                                papers_force(arena, floor(pull->limit_n + 1e-6), false)));
            }
            if (pull->pit_at_m > 0) {
                papers_do(out, stretch, "aside",
                          arena_print(arena, "A draw pit %s from the start of the pull would do.",
                                      papers_metres(arena, pull->pit_at_m)));
            }
        }
    }
}
