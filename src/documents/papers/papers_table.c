/* <work>: the brief's table, a line a stretch in the order of the work, grouped by trade. What a group has in common
 * stands once, in its heading. */
#include "papers_private.h"

#include <math.h>

enum Group papers_group_of(const struct Segment *segment)
{
    return segment->way == WAY_THROUGH_WALL                 ? GROUP_DRILL
           : survey_dug(segment)                            ? GROUP_DIG
           : survey_in_ground(segment->way)                 ? GROUP_THERE
           : survey_way(segment->way)->held == HELD_CLIPPED ? GROUP_FIX
                                                            : GROUP_LAY_IN;
}

static int group_size(const struct Plan *plan, enum Group group)
{
    int size = 0;
    for (int i = 0; i < plan->segment_count; i++) {
        size += papers_group_of(plan->segments[i].surveyed) == group;
    }
    return size;
}

static int in_group(const struct Plan *plan, enum Group group, const struct Caution *caution)
{
    int there = 0;
    for (int i = 0; i < caution->stretch_count; i++) {
        there += papers_group_of(plan->segments[caution->stretches[i]].surveyed) == group;
    }
    return there;
}

/* Of the stretches of the group where the caution bites, their numbers; NULL where it does on all. */
static const struct Say *numbers_of(struct Arena *arena, const struct Plan *plan, enum Group group,
                                    const struct Caution *caution)
{
    const struct Say *numbers = NULL;
    for (int i = 0; i < caution->stretch_count; i++) {
        if (papers_group_of(plan->segments[caution->stretches[i]].surveyed) == group) {
            numbers = say_list(arena, SAY_COMMA, numbers, say_count(caution->stretches[i] + 1));
        }
    }
    return in_group(plan, group, caution) == group_size(plan, group) ? NULL : numbers;
}

/* A caution's groups in whose heading it stands, a bit each. */
static const unsigned *common_cautions(struct Arena *arena, const struct Plan *plan)
{
    unsigned *common = arena_array(arena, (size_t)plan->caution_count, sizeof *common);
    for (int i = 0; common != NULL && i < plan->caution_count; i++) {
        for (int group = 0; group < GROUPS; group++) {
            /* of several stretches, so that no line repeats another */
            const bool several = in_group(plan, (enum Group)group, &plan->cautions[i]) > 1;
            common[i] |= several && !plan->cautions[i].every_job ? 1u << group : 0;
        }
    }
    return common;
}

static bool in_heading(const struct PapersTable *table, enum Group group, int caution)
{
    return table->common != NULL && (table->common[caution] & 1u << group) != 0;
}

bool papers_said_above(const struct PapersTable *table, int index, int caution)
{
    return in_heading(table, papers_group_of(table->plan->segments[index].surveyed), caution);
}

/* What every fixing of a run in the group is; NULL when they differ or none is counted. */
static const struct Say *fixing_of_run(const struct Plan *plan, const struct PartsList *parts, int run)
{
    const struct Say *common = NULL;
    for (int i = 0; parts != NULL && i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        if (way->run != run || way->fixings == 0 ||
            papers_group_of(plan->segments[way->segment].surveyed) != GROUP_FIX) {
            continue;
        }
        if (common != NULL && !say_same(common, way->fixing_short)) {
            return NULL;
        }
        common = way->fixing_short;
    }
    return common;
}

static const struct Say **fixings_of_runs(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts)
{
    const struct Say **fixings = arena_array(arena, (size_t)plan->run_count,
                                             sizeof *fixings); /* NOLINT(bugprone-sizeof-expression): of pointers */
    for (int i = 0; fixings != NULL && i < plan->run_count; i++) {
        fixings[i] = fixing_of_run(plan, parts, i);
    }
    return fixings;
}

/* "hook cleat no. 8", or "hook cleat no. 8 (feeder), one-hole clip (camera)" where not all runs have the same. */
static const struct Say *fixings_named(struct Arena *arena, const struct PapersTable *table)
{
    const struct Plan *plan = table->plan;
    const struct Say *list = NULL;
    bool alike = table->fixings != NULL;
    for (int i = 1; alike && i < plan->run_count; i++) {
        alike =
            table->fixings[i] != NULL && table->fixings[0] != NULL && say_same(table->fixings[i], table->fixings[0]);
    }
    if (alike) {
        return plan->run_count > 0 ? table->fixings[0] : NULL;
    }
    for (int i = 0; table->fixings != NULL && i < plan->run_count; i++) {
        if (table->fixings[i] != NULL) {
            list = say_list(
                arena, SAY_COMMA, list,
                say_part(say(arena, SAY_BRACKETS, say_part(table->fixings[i]), say_name(plan->runs[i].settled->name))));
        }
    }
    return list;
}

static bool same_grip(const struct PapersTable *table, const struct PartsWay *one, const struct PartsWay *other)
{
    const struct PlanSegment *segments = table->plan->segments;
    return other->run >= 0 && say_same(one->grip, other->grip) &&
           segments[one->segment].surveyed->fixed_to == segments[other->segment].surveyed->fixed_to &&
           papers_group_of(segments[other->segment].surveyed) == GROUP_FIX;
}

bool papers_grip_above(const struct PapersTable *table, const struct PartsWay *way)
{
    bool again = false;
    for (int i = 0; table->parts != NULL && way->grip != NULL && i < table->parts->way_count; i++) {
        const struct PartsWay *other = &table->parts->ways[i];
        again = again || (other->segment != way->segment && same_grip(table, way, other));
    }
    return again && papers_group_of(table->plan->segments[way->segment].surveyed) == GROUP_FIX;
}

/* Each grip of several stretches once: "brick: nylon plug 7 mm and woodscrew". */
static void add_grips(const struct PapersTable *table, struct XmlElement *group)
{
    struct Arena *arena = xml_out_arena(table->out);
    for (int i = 0; table->parts != NULL && i < table->parts->way_count; i++) {
        const struct PartsWay *way = &table->parts->ways[i];
        bool due = way->run >= 0 && papers_grip_above(table, way);
        for (int k = 0; due && k < i; k++) {
            due = !same_grip(table, way, &table->parts->ways[k]);
        }
        if (due) {
            const int surface = (int)table->plan->segments[way->segment].surveyed->fixed_to;
            papers_do(table->out, group, "with",
                      say(arena, SAY_GROUP_GRIP, say_word(WORDS_SURFACE, surface), say_part(way->grip)));
        }
    }
}

/* The trench of the list, from `from` on; NULL when there is no other. */
static const struct PartsWay *next_trench(const struct PartsList *parts, int from)
{
    for (int i = from; parts != NULL && i < parts->way_count; i++) {
        if (parts->ways[i].run < 0 && parts->ways[i].trench_m > 0) {
            return &parts->ways[i];
        }
    }
    return NULL;
}

bool papers_tape_above(const struct PapersTable *table)
{
    const struct PartsWay *first = next_trench(table->parts, 0);
    const struct PartsWay *way = first;
    while (way != NULL && fabs(way->tape_m - first->tape_m) < 0.0005) {
        way = next_trench(table->parts, (int)(way - table->parts->ways) + 1);
    }
    return first != NULL && way == NULL;
}

/* What all trenches together are. */
static void add_trenches(const struct PapersTable *table, struct XmlElement *group)
{
    struct Arena *arena = xml_out_arena(table->out);
    double spoil_m3 = 0;
    for (const struct PartsWay *way = next_trench(table->parts, 0); way != NULL;
         way = next_trench(table->parts, (int)(way - table->parts->ways) + 1)) {
        spoil_m3 += way->spoil_m3;
    }
    if (papers_tape_above(table)) {
        papers_do(table->out, group, "with",
                  say(arena, SAY_GROUP_TAPE, papers_millimetres(next_trench(table->parts, 0)->tape_m)));
    }
    if (spoil_m3 >= 0.005) {
        papers_do(table->out, group, "with", say(arena, SAY_GROUP_SPOIL, say_fixed(spoil_m3, 2, UNIT_M3)));
    }
}

/* Between ground and surface, in no surveyed length. */
static bool any_leg_unmeasured(const struct PapersTable *table, enum Group group)
{
    const struct PlanSegment *segments = table->plan->segments;
    bool any = false;
    for (int r = 0; r < table->plan->run_count; r++) {
        const struct PlanRun *run = &table->plan->runs[r];
        for (int i = 0; i < run->leg_count; i++) {
            const struct PlanLeg *leg = &run->legs[i];
            const bool surface = leg->other < 0 || !survey_in_ground(segments[leg->other].surveyed->way);
            any = any || (!leg->included && surface && papers_group_of(segments[leg->segment].surveyed) == group);
        }
    }
    return any;
}

/* The cautions of a heading: first those of the whole group, then the others behind the numbers of their stretches,
 * which cautions of the same stretches share. */
static void add_cautions(const struct PapersTable *table, struct XmlElement *element, enum Group group)
{
    struct Arena *arena = xml_out_arena(table->out);
    const struct Plan *plan = table->plan;
    for (int i = 0; i < plan->caution_count; i++) {
        if (in_heading(table, group, i) && numbers_of(arena, plan, group, &plan->cautions[i]) == NULL) {
            papers_do(table->out, element, "watch", plan_caution_shortly(&plan->cautions[i]));
        }
    }
    for (int i = 0; i < plan->caution_count; i++) {
        const struct Say *numbers =
            in_heading(table, group, i) ? numbers_of(arena, plan, group, &plan->cautions[i]) : NULL;
        const struct Say *text = NULL;
        bool told = numbers == NULL;
        for (int k = 0; k < plan->caution_count && !told; k++) {
            if (in_heading(table, group, k) && say_same(numbers_of(arena, plan, group, &plan->cautions[k]), numbers)) {
                told = k < i;
                const struct Say *more = plan_caution_shortly(&plan->cautions[k]);
                text = text == NULL ? more : say_then(arena, text, more);
            }
        }
        if (!told) {
            papers_do(table->out, element, "watch", say(arena, SAY_AT_SEGMENTS, say_part(numbers), say_part(text)));
        }
    }
}

static void add_line(const struct PapersTable *table, struct XmlElement *group, int index)
{
    struct XmlOut *out = table->out;
    const struct PlanSegment *place = &table->plan->segments[index];
    struct XmlElement *line = xml_child(out, group, "line");
    xml_integer(out, line, "number", index + 1);
    xml_attribute(out, line, "name", place->surveyed->name);
    papers_attribute(out, line, "length", papers_metres(place->surveyed->length_m.value));
    papers_cells(table, line, index);
    papers_watch(table, line, index);
}

static void add_group(const struct PapersTable *table, struct XmlElement *work, enum Group group)
{
    static const enum Saying headings[GROUPS] = {[GROUP_DRILL] = SAY_GROUP_DRILL,
                                                 [GROUP_FIX] = SAY_GROUP_FIX,
                                                 [GROUP_LAY_IN] = SAY_GROUP_LAY_IN,
                                                 [GROUP_DIG] = SAY_GROUP_DIG,
                                                 [GROUP_THERE] = SAY_GROUP_THERE};
    struct XmlOut *out = table->out;
    struct Arena *arena = xml_out_arena(out);
    const struct Plan *plan = table->plan;
    if (group_size(plan, group) == 0) {
        return;
    }
    struct XmlElement *element = xml_child(out, work, "group");
    const struct Say *fixings = group == GROUP_FIX ? fixings_named(arena, table) : NULL;
    xml_say_attribute(out, element, "name",
                      fixings != NULL ? say(arena, SAY_GROUP_FIX_WITH, say_part(fixings))
                                      : say(arena, headings[group]));
    if (group == GROUP_FIX) {
        add_grips(table, element);
    }
    if (group == GROUP_DIG) {
        add_trenches(table, element);
    }
    if (group == GROUP_DIG || group == GROUP_THERE) {
        papers_do(out, element, "with", any_leg_unmeasured(table, group) ? say(arena, SAY_GROUP_LEGS) : NULL);
    }
    add_cautions(table, element, group);
    for (int i = 0; i < plan->segment_count; i++) {
        if (papers_group_of(plan->segments[i].surveyed) == group) {
            add_line(table, element, i);
        }
    }
}

/* ---- what the leader decides on site, with a box to draw it in ---- */

static void add_box(const struct PapersTable *table, struct XmlElement *work, enum Way way, enum Saying what)
{
    struct Arena *arena = xml_out_arena(table->out);
    const struct Say *numbers = NULL;
    int count = 0;
    for (int i = 0; i < table->plan->segment_count; i++) {
        if (table->plan->segments[i].surveyed->way == way) {
            numbers = say_list(arena, SAY_COMMA, numbers, say_count(i + 1));
            count++;
        }
    }
    if (count > 0) {
        xml_say(table->out, xml_child(table->out, work, "draw"), say(arena, what, say_count(count), say_part(numbers)));
    }
}

void papers_work(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts)
{
    const struct PapersTable table = {out, plan, parts, fixings_of_runs(xml_out_arena(out), plan, parts),
                                      common_cautions(xml_out_arena(out), plan)};
    struct XmlElement *work = xml_child(out, papers, "work");
    for (int group = 0; group < GROUPS; group++) {
        add_group(&table, work, (enum Group)group);
    }
    add_box(&table, work, WAY_THROUGH_WALL, SAY_DRAW_HOLES);
    add_box(&table, work, WAY_FENCE, SAY_DRAW_FENCE);
}
