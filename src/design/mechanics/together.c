/* Runs that share the way: how far data keeps from power, and in which order cables are drawn in. */
#include "mechanics_private.h"

#include <math.h>

/* What follows one segment. */
struct Company {
    const struct PlanRun *power, *data; /**< the first of each, NULL none */
    int powers, datas, runs;
    int kept_out; /* data runs that may not lie with that power */
    int circuits; /**< of 20 A between line and neutral that the power comes to */
};

/* A circuit as BS EN 50174-2 counts them is one of 20 A at most. */
static int circuits_of(const struct PlanRun *run)
{
    static const double counted_a = 20;
    const int lines = run->currents.lines > 0 ? run->currents.lines : 1;
    return lines * (int)fmax(1, ceil(run->rating_a / counted_a - 1e-9));
}

static bool here(const struct Design *design, int run, int segment)
{
    return (design->followers[segment] >> (unsigned)run & 1U) != 0;
}

static bool kept_out(const struct Design *design, const struct Run *run, int segment)
{
    return segregation_due(design->survey, run, segment) && !segregation_passes(design->survey, run);
}

static struct Company company_of(const struct Design *design, const struct PlanRun *runs, int count, int segment)
{
    struct Company company = {.circuits = design->survey->segments[segment].has_beside
                                              ? design->survey->segments[segment].beside.circuits
                                              : 0};
    for (int r = 0; r < count; r++) {
        if (!here(design, r, segment)) {
            continue;
        }
        company.runs++;
        if (runs[r].surveyed->kind == RUN_POWER) {
            company.power = company.powers++ == 0 ? &runs[r] : company.power;
            company.circuits += circuits_of(&runs[r]);
        } else if (runs[r].surveyed->kind == RUN_DATA) {
            company.data = company.datas++ == 0 ? &runs[r] : company.data;
            company.kept_out += kept_out(design, runs[r].surveyed, segment);
        }
    }
    return company;
}

static const char *name_of(struct Arena *arena, const struct PlanRun *first, int count)
{
    return count > 1 ? arena_print(arena, "%s and others", first->surveyed->name) : first->surveyed->name;
}

/* In one duct, conduit or trunking no distance can be kept: whether they may share is a check of its own, and what is
 * said here is what follows from it. */
static void separate_enclosed(const struct Design *design, const struct Company *company, const char *data,
                              const char *power, struct PlanSegment *out)
{
    out->separation = arena_print(design->arena,
                                  company->kept_out == 0 ? "Data (%s) lies with power (%s) in one duct, conduit or "
                                                           "trunking: it is surveyed as insulated for that voltage. "
                                                           "Leave its sheath whole all the way (BS 7671 528.1)."
                                                         : "Data (%s) is not known to be insulated for the power (%s) "
                                                           "here: do not put it in with it. It takes a duct, "
                                                           "conduit or compartment of its own (BS 7671 528.1).",
                                  data, power);
}

static void separate_in_ground(struct Arena *arena, const char *data, const char *power, struct PlanSegment *out)
{
    const struct SeparationInGround due = separation_in_ground();
    out->separation_mm = due.earth_mm;
    out->separation = arena_print(arena,
                                  "Data (%s) lies with power (%s): keep %s mm of tamped earth between data and power, "
                                  "or %s mm of masonry, or %s mm of "
                                  "concrete (a trade forum's note of BS EN 50174 practice).",
                                  data, power, number_text(arena, due.earth_mm, 0),
                                  number_text(arena, due.masonry_mm, 0), number_text(arena, due.concrete_mm, 0));
}

static void separate_in_air(struct Arena *arena, const char *data, const char *power, int circuits, bool hole,
                            struct PlanSegment *out)
{
    if (!separation_in_air_mm(circuits, &out->separation_mm)) {
        return;
    }
    out->separation =
        arena_print(arena,
                    "Data (%s) runs with power (%s): %s %s mm %s. Where that cannot be kept, stop "
                    "and ask (BS EN 50174-2, widest class, power as %d circuit%s of 20 A; from memory).",
                    data, power, hole ? "drill a hole for each," : "keep", number_text(arena, out->separation_mm, 0),
                    hole ? "apart from edge to edge" : "clear between them", circuits, circuits == 1 ? "" : "s");
}

/* ---- the order of drawing in ---- */

/* The heavier goes first; where a weight is not held, the thicker. */
static bool goes_before(const struct PlanRun *a, const struct PlanRun *b)
{
    const bool weights = a->cable_facts.weight_kg_per_m > 0 && b->cable_facts.weight_kg_per_m > 0;
    return weights ? a->cable_facts.weight_kg_per_m > b->cable_facts.weight_kg_per_m
                   : a->cable_facts.overall_mm > b->cable_facts.overall_mm;
}

static const char *order_of(const struct Design *design, const struct PlanRun *runs, int count, int segment)
{
    int *order = arena_array(design->arena, (size_t)count, sizeof *order);
    struct TextBuilder text = text_builder(design->arena);
    int ordered = 0;
    for (int r = 0; order != NULL && r < count; r++) {
        if (!here(design, r, segment) || kept_out(design, runs[r].surveyed, segment)) {
            continue;
        }
        int at = ordered++;
        while (at > 0 && goes_before(&runs[r], &runs[order[at - 1]])) {
            order[at] = order[at - 1];
            at--;
        }
        order[at] = r;
    }
    text_add(&text, "Draw in together, on one rope, their heads one behind the other: ");
    for (int i = 0; i < ordered; i++) {
        text_print(&text, "%s%s", i > 0 ? ", then " : "", runs[order[i]].surveyed->name);
    }
    text_add(&text, ". A cable drawn in later saws at those that lie there (common practice, no source).");
    return text_done(&text);
}

static void look_at(const struct Design *design, const struct PlanRun *runs, int count, int segment,
                    struct PlanSegment *out)
{
    const struct Segment *surveyed = &design->survey->segments[segment];
    const struct Company company = company_of(design, runs, count, segment);
    if (company.powers > 0 && company.datas > 0) {
        const char *data = name_of(design->arena, company.data, company.datas);
        const char *power = name_of(design->arena, company.power, company.powers);
        if (surveyed->way == WAY_DUCT || mechanics_encloses(surveyed->way)) {
            separate_enclosed(design, &company, data, power, out);
        } else if (survey_in_ground(surveyed->way)) {
            separate_in_ground(design->arena, data, power, out);
        } else {
            separate_in_air(design->arena, data, power, company.circuits, surveyed->way == WAY_THROUGH_WALL, out);
        }
    }
    if (company.runs - company.kept_out > 1 && survey_drawn(surveyed)) {
        out->drawing_in = order_of(design, runs, count, segment);
    }
}

bool list_together(const struct Design *design, const struct PlanRun *runs, int count, struct PlanSegment *segments)
{
    for (int i = 0; i < design->survey->segment_count; i++) {
        segments[i].separation = segments[i].drawing_in = "";
        look_at(design, runs, count, i, &segments[i]);
    }
    return !arena_failed(design->arena);
}
