/* Every check on bends, ducts and drawing in of a run, one a segment. */
#include "mechanics_private.h"

#include <string.h>

const struct Segment *segment_at(const struct RunDesign *run, int stretch)
{
    return &run->segments[run->run->along[stretch]];
}

int mechanics_count(const struct RunDesign *run)
{
    int count = 0;
    for (int i = 0; i < run->run->along_count; i++) {
        const struct Segment *segment = segment_at(run, i);
        count += (segment->bend_count > 0) + survey_shut_in(segment->way) + survey_drawn(segment) +
                 segregation_due(run->survey, run->run, run->run->along[i]);
    }
    return count;
}

static struct Check begin(struct Arena *arena, const char *id, enum Saying title, const struct Segment *segment,
                          enum Unit unit, const char *source)
{
    return (struct Check){.id = arena == NULL ? id : arena_print(arena, "%s:%s", id, segment->name),
                          .title = title,
                          .segment = segment->name,
                          .result = CHECK_NOT_DUE,
                          .unit = unit,
                          .source = source};
}

static const char *const kinds_of_check[] = {"bend", "duct-fill", "segregation", "pull"};
enum { KINDS = (int)(sizeof kinds_of_check / sizeof kinds_of_check[0]) };

/* Of a bare id or one with the segment's name. */
static int kind_of(const char *id)
{
    int kind = 0;
    while (kind < KINDS - 1 && strncmp(id, kinds_of_check[kind], strlen(kinds_of_check[kind])) != 0) {
        kind++;
    }
    return kind;
}

/* The checks of one stretch: of its bends, of its duct, of who shares that, of drawing in. */
enum { STRETCH_CHECKS = 4 };

static int check_stretch(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                         struct Check out[STRETCH_CHECKS])
{
    const struct Segment *segment = segment_at(run, stretch);
    int count = 0;
    if (segment->bend_count > 0) {
        out[count] = begin(arena, "bend", SAY_TITLE_BEND, segment, UNIT_MM, bend_check_source(false));
        check_bend(arena, run, trial, stretch, &out[count++]);
    }
    if (survey_shut_in(segment->way)) {
        out[count] = begin(arena, "duct-fill", SAY_TITLE_DUCT_FILL, segment, UNIT_PERCENT, conduit_check_source());
        (survey_duct(segment->way) ? check_duct_fill : check_enclosed_fill)(arena, run, trial, stretch, &out[count++]);
    }
    if (segregation_due(run->survey, run->run, run->run->along[stretch])) {
        out[count] = begin(arena, "segregation", SAY_TITLE_SEGREGATION, segment, UNIT_V, "BS 7671 528.1");
        check_segregation(arena, run, stretch, &out[count++]);
    }
    if (survey_drawn(segment)) {
        out[count] = begin(arena, "pull", SAY_TITLE_PULL, segment, UNIT_N, pull_check_source());
        check_pull(arena, run, trial, stretch, &out[count++]);
    }
    for (int i = 0; i < count; i++) {
        verdict_mark(&out[i], run->run->kind);
    }
    return count;
}

int check_mechanics(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out,
                    int most)
{
    int count = 0;
    for (int i = 0; i < run->run->along_count; i++) {
        struct Check made[STRETCH_CHECKS];
        const int here = check_stretch(arena, run, trial, i, made);
        for (int c = 0; c < here && count < most; c++) {
            out[count++] = made[c];
        }
    }
    return count;
}

const struct Check *mechanics_next(const struct PlanRun *run, const char *kind, int *at)
{
    const size_t length = strlen(kind);
    while (*at < run->check_count) {
        const struct Check *check = &run->checks[(*at)++];
        if (strncmp(check->id, kind, length) == 0 && check->id[length] == ':') {
            return check;
        }
    }
    return NULL;
}

struct MechanicsCount mechanics_failures(const struct RunDesign *run, const struct Trial *trial)
{
    struct MechanicsCount count = {0};
    for (int i = 0; i < run->run->along_count; i++) {
        struct Check made[STRETCH_CHECKS];
        const int here = check_stretch(NULL, run, trial, i, made);
        for (int c = 0; c < here; c++) {
            count.failed += made[c].result == CHECK_FAIL;
            count.open += made[c].open;
        }
    }
    return count;
}

void against_add(struct Against *against, const char *id)
{
    text_print(&against->ids, "%s%s", against->ids.length > 0 ? " " : "", id);
}

/* Numbers for every stretch, texts only for the first one: a long route has many stretches, and many sizes are tried.
 */
void mechanics_against(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                       struct Against *fails, struct Against *open)
{
    struct Against *const all[] = {fails, open};
    unsigned kinds[] = {0, 0};
    for (int i = 0; i < run->run->along_count; i++) {
        struct Check made[STRETCH_CHECKS];
        const int here = check_stretch(NULL, run, trial, i, made);
        for (int c = 0; c < here; c++) {
            const bool decides[] = {made[c].result == CHECK_FAIL, made[c].open};
            for (int a = 0; a < 2; a++) {
                kinds[a] |= decides[a] ? 1U << (unsigned)kind_of(made[c].id) : 0;
                if (decides[a] && all[a]->why == NULL) {
                    struct Check worded[STRETCH_CHECKS] = {{0}};
                    check_stretch(arena, run, trial, i, worded);
                    all[a]->why = worded[c].text;
                }
            }
        }
    }
    for (int kind = 0; kind < KINDS; kind++) {
        for (int a = 0; a < 2; a++) {
            if ((kinds[a] >> (unsigned)kind & 1U) != 0) {
                against_add(all[a], kinds_of_check[kind]);
            }
        }
    }
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
