/* Every check on bends, ducts and drawing in of a run, one a segment. */
#include "mechanics_private.h"

#include <string.h>

const struct Segment *segment_at(const struct RunDesign *run, int stretch)
{
    return &run->segments[run->run->along[stretch]];
}

static bool bends_here(const struct RunDesign *run, int stretch)
{
    return segment_at(run, stretch)->bend_count > 0;
}

static bool in_duct(const struct RunDesign *run, int stretch)
{
    return survey_duct(segment_at(run, stretch)->way);
}

static bool in_pipe(const struct RunDesign *run, int stretch)
{
    return survey_shut_in(segment_at(run, stretch)->way) && !in_duct(run, stretch);
}

static bool beside_power(const struct RunDesign *run, int stretch)
{
    return segregation_due(run->survey, run->run, run->run->along[stretch]);
}

static bool drawn_in(const struct RunDesign *run, int stretch)
{
    return survey_drawn(segment_at(run, stretch));
}

/* Of one segment each: deciding knows figures alone, since many sizes are tried on thousands of segments; of the size
 * that was chosen, and of the first that decides against another, it is then said. */
#define NO_STANDARD                                                                                                    \
    {                                                                                                                  \
        .standard = NULL                                                                                               \
    }
static const struct {
    const char *id;
    enum Saying title;
    enum Unit unit;
    struct Cite cite;
    enum Saying rule;
    bool (*is_due)(const struct RunDesign *run, int stretch);
    void (*decide)(const struct RunDesign *run, const struct Trial *trial, int stretch, struct Check *out);
    void (*explain)(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                    struct Check *out);
} checks[] = {
    {"bend",
     SAY_TITLE_BEND,
     UNIT_MM,
     {.standard = "On-Site Guide", .table = "D5"},
     SAY_NOTHING,
     bends_here,
     decide_bend,
     say_bend},
    {"duct-fill", SAY_TITLE_DUCT_FILL, UNIT_PERCENT, NO_STANDARD, SAY_RULE_CONDUIT_FILL, in_duct, decide_duct_fill,
     say_duct_fill},
    {"duct-fill", SAY_TITLE_DUCT_FILL, UNIT_PERCENT, NO_STANDARD, SAY_RULE_CONDUIT_FILL, in_pipe, decide_enclosed_fill,
     say_enclosed_fill},
    {"segregation",
     SAY_TITLE_SEGREGATION,
     UNIT_V,
     {BS_7671, .clause = "528.1"},
     SAY_NOTHING,
     beside_power,
     decide_segregation,
     say_segregation},
    {"pull", SAY_TITLE_PULL, UNIT_N, NO_STANDARD, SAY_RULE_PULL, drawn_in, decide_pull, say_pull},
};
enum { KINDS = (int)(sizeof checks / sizeof checks[0]) };
_Static_assert((int)KINDS == (int)MECHANICS_KINDS, "a place for every kind");

static struct Check undecided(int kind)
{
    return (struct Check){.id = checks[kind].id,
                          .kind = checks[kind].id,
                          .title = checks[kind].title,
                          .result = CHECK_NOT_DUE,
                          .unit = checks[kind].unit,
                          .cite = checks[kind].cite,
                          .rule = checks[kind].rule};
}

bool mechanics_kind(int index, struct Check *out)
{
    int names = -1;
    for (int kind = 0; index >= 0 && kind < KINDS; kind++) {
        names += kind == 0 || !text_same(checks[kind].id, checks[kind - 1].id);
        if (names == index) {
            *out = undecided(kind);
            return true;
        }
    }
    return false;
}

static struct Check decided(int kind, const struct RunDesign *run, const struct Trial *trial, int stretch)
{
    struct Check check = undecided(kind);
    check.segment = segment_at(run, stretch)->name;
    checks[kind].decide(run, trial, stretch, &check);
    verdict_mark(&check, run->run->kind);
    return check;
}

int mechanics_count(const struct RunDesign *run)
{
    int count = 0;
    for (int i = 0; i < run->run->along_count; i++) {
        for (int kind = 0; kind < KINDS; kind++) {
            count += checks[kind].is_due(run, i);
        }
    }
    return count;
}

int check_mechanics(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out,
                    int most)
{
    int count = 0;
    const struct SizedCable own = mechanics_sized(&run->run->cable, trial->size_mm2);
    struct RunDesign sized = *run;
    sized.own = &own;
    for (int i = 0; i < run->run->along_count; i++) {
        for (int kind = 0; kind < KINDS && count < most; kind++) {
            struct Check *check = &out[count];
            if (checks[kind].is_due(run, i)) {
                *check = decided(kind, &sized, trial, i);
                check->id = arena_print(arena, "%s:%s", checks[kind].id, check->segment);
                if (!run->unsaid) {
                    checks[kind].explain(arena, &sized, trial, i, check);
                }
                count++;
            }
        }
    }
    return count;
}

const struct Check *mechanics_next(const struct PlanRun *run, const char *kind, int *at)
{
    while (*at < run->check_count) {
        const struct Check *check = &run->checks[(*at)++];
        if (check->segment != NULL && text_same(check->kind, kind)) {
            return check;
        }
    }
    return NULL;
}

static void went(struct MechanicsWent *went, int kind, int stretch)
{
    if (went->count++ == 0) {
        went->first_kind = kind;
        went->first_stretch = stretch;
    }
    went->of_kind[kind] = true;
}

struct MechanicsDue mechanics_due(struct Arena *arena, const struct RunDesign *run)
{
    const int count = mechanics_count(run);
    struct CheckDue *list = arena_array(arena, (size_t)count, sizeof *list);
    struct MechanicsDue due = {list, 0};
    for (int i = 0; list != NULL && i < run->run->along_count; i++) {
        for (int kind = 0; kind < KINDS; kind++) {
            if (checks[kind].is_due(run, i)) {
                list[due.count++] = (struct CheckDue){kind, i};
            }
        }
    }
    return due;
}

struct MechanicsCount mechanics_failures(const struct RunDesign *run, const struct Trial *trial,
                                         struct MechanicsDue due)
{
    struct MechanicsCount count = {.failed = {.count = 0}};
    const struct SizedCable own = mechanics_sized(&run->run->cable, trial->size_mm2);
    struct RunDesign sized = *run;
    sized.own = &own;
    for (int i = 0; i < due.count; i++) {
        const struct CheckDue *at = &due.list[i];
        const struct Check check = decided(at->kind, &sized, trial, at->stretch);
        if (check.result == CHECK_FAIL) {
            went(&count.failed, at->kind, at->stretch);
        }
        if (check.open) {
            went(&count.open, at->kind, at->stretch);
        }
    }
    return count;
}

_Static_assert((int)KINDS <= (int)STRETCH_CHECKS_MOST, "room for every kind");

void against_add(struct Against *against, const char *kind, enum Saying title)
{
    if (against->count < AGAINST_MOST) {
        against->list[against->count++] = (struct CheckRef){.kind = kind, .title = title};
    }
}

struct CheckList against_list(struct Arena *arena, const struct Against *against)
{
    struct CheckRef *list = against->count > 0 ? arena_array(arena, (size_t)against->count, sizeof *list) : NULL;
    if (list == NULL) {
        return (struct CheckList){.list = NULL};
    }
    memcpy(list, against->list, (size_t)against->count * sizeof *list);
    return (struct CheckList){list, against->count};
}

/* Each id once, however many kinds of check bear it. */
static void add_kinds(struct Against *against, const bool kinds[KINDS])
{
    for (int kind = 0; kind < KINDS; kind++) {
        const bool before = kind > 0 && kinds[kind - 1] && text_same(checks[kind - 1].id, checks[kind].id);
        if (kinds[kind] && !before) {
            against_add(against, checks[kind].id, checks[kind].title);
        }
    }
}

static void add_went(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                     const struct MechanicsWent *went, struct Against *against)
{
    if (went->count > 0 && against->why == NULL) {
        struct Check check = decided(went->first_kind, run, trial, went->first_stretch);
        checks[went->first_kind].explain(arena, run, trial, went->first_stretch, &check);
        against->why = check.text;
    }
    add_kinds(against, went->of_kind);
}

void mechanics_against(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                       const struct MechanicsCount *count, struct Against *fails, struct Against *open)
{
    add_went(arena, run, trial, &count->failed, fails);
    add_went(arena, run, trial, &count->open, open);
}

const struct Say *mechanics_assumption(struct Arena *arena, const struct Survey *survey, const struct Run *run)
{
    bool drawn = false;
    struct PullFriction friction;
    for (int i = 0; i < run->along_count; i++) {
        drawn = drawn || survey_drawn(&survey->segments[run->along[i]]);
    }
    if (!drawn || !pull_friction(cable_kind(run->cable.type)->sheath, run->pull.lubricant, &friction)) {
        return NULL;
    }
    const struct Say *by_hand = say(arena, SAY_FED_BY_HAND);
    return run->pull.friction.given ? by_hand
                                    : say(arena, run->pull.lubricant ? SAY_DRAWN_LUBRICATED : SAY_DRAWN_DRY,
                                          say_fixed(friction.high, 2, UNIT_NONE), say_part(by_hand));
}
