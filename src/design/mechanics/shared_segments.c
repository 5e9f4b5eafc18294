/* Runs that share the way: how far data keeps from power, and in which order cables are drawn in. */
#include "mechanics_private.h"
#include "tables/fault_tables.h"

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
    const int lines = run->currents.lines > 0 ? run->currents.lines : 1;
    return lines * (int)fmax(1, ceil(run->rating_a / design_practice()->separated_circuit_a - 1e-9));
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
        if (runs[r].settled->kind == RUN_POWER) {
            company.power = company.powers++ == 0 ? &runs[r] : company.power;
            company.circuits += circuits_of(&runs[r]);
        } else if (runs[r].settled->kind == RUN_DATA) {
            company.data = company.datas++ == 0 ? &runs[r] : company.data;
            company.kept_out += kept_out(design, runs[r].settled, segment);
        }
    }
    return company;
}

static struct SayArg name_of(struct Arena *arena, const struct PlanRun *first, int count)
{
    const struct SayArg name = say_name(first->settled->name);
    return count > 1 ? say_part(say(arena, SAY_AND_OTHERS, name)) : name;
}

static const struct Say *separate_in_ground(struct Arena *arena, struct SayArg data, struct SayArg power,
                                            struct PlanSegment *out)
{
    const struct SeparationInGround due = separation_in_ground();
    out->separation_mm = due.earth_mm;
    return say(arena, SAY_DATA_APART_IN_GROUND, data, power, say_fixed(due.earth_mm, 0, UNIT_MM),
               say_fixed(due.masonry_mm, 0, UNIT_MM), say_fixed(due.concrete_mm, 0, UNIT_MM));
}

static const struct Say *separate_in_air(struct Arena *arena, struct SayArg data, struct SayArg power, int circuits,
                                         bool hole, struct PlanSegment *out)
{
    if (!separation_in_air_mm(circuits, &out->separation_mm)) {
        return NULL;
    }
    return say(arena, hole ? SAY_DATA_APART_THROUGH_WALL : SAY_DATA_APART_IN_AIR, data, power,
               say_fixed(out->separation_mm, 0, UNIT_MM), say_count(circuits));
}

/* In one duct, conduit or trunking no distance can be kept: whether they may share is a check of its own, and what is
 * said here is what follows from it. */
static const struct Say *separation(const struct Design *design, const struct Company *company,
                                    const struct Segment *segment, struct PlanSegment *out)
{
    struct Arena *arena = design->extent == PLAN_WHOLE ? design->arena : NULL;
    const struct SayArg data = name_of(arena, company->data, company->datas);
    const struct SayArg power = name_of(arena, company->power, company->powers);
    if (survey_shut_in(segment->way)) {
        return say(arena, company->kept_out == 0 ? SAY_DATA_SHARES_WITH_POWER : SAY_DATA_KEPT_OUT, data, power);
    }
    return survey_in_ground(segment->way)
               ? separate_in_ground(arena, data, power, out)
               : separate_in_air(arena, data, power, company->circuits, survey_hole(segment->way), out);
}

/* ---- the order of drawing in ---- */

/* The heavier goes first; where a weight is not held, the thicker. */
static bool goes_before(const struct PlanRun *a, const struct PlanRun *b)
{
    const bool weights = a->cable_facts.weight_kg_per_m > 0 && b->cable_facts.weight_kg_per_m > 0;
    return weights ? a->cable_facts.weight_kg_per_m > b->cable_facts.weight_kg_per_m
                   : a->cable_facts.overall_mm > b->cable_facts.overall_mm;
}

static const struct Say *order_of(const struct Design *design, const struct PlanRun *runs, int count, int segment)
{
    int *order = arena_array(design->arena, (size_t)count, sizeof *order);
    int ordered = 0;
    for (int r = 0; order != NULL && r < count; r++) {
        if (!here(design, r, segment) || kept_out(design, runs[r].settled, segment)) {
            continue;
        }
        int at = ordered++;
        while (at > 0 && goes_before(&runs[r], &runs[order[at - 1]])) {
            order[at] = order[at - 1];
            at--;
        }
        order[at] = r;
    }
    const struct Say *names = NULL;
    for (int i = 0; i < ordered; i++) {
        names = say_list(design->arena, SAY_THEN, names, say_name(runs[order[i]].settled->name));
    }
    return say(design->arena, SAY_DRAW_IN_TOGETHER, say_part(names));
}

static void look_at(const struct Design *design, const struct PlanRun *runs, int count, int segment,
                    struct PlanSegment *out)
{
    const struct Segment *surveyed = &design->survey->segments[segment];
    const struct Company company = company_of(design, runs, count, segment);
    if (company.powers > 0 && company.datas > 0) {
        out->separation = separation(design, &company, surveyed, out);
    }
    if (company.runs - company.kept_out > 1 && survey_drawn(surveyed) && design->extent == PLAN_WHOLE) {
        out->drawing_in = order_of(design, runs, count, segment);
    }
}

bool list_together(const struct Design *design, const struct PlanRun *runs, int count, struct PlanSegment *segments)
{
    for (int i = 0; i < design->survey->segment_count; i++) {
        look_at(design, runs, count, i, &segments[i]);
    }
    return !arena_failed(design->arena);
}
