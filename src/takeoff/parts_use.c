/* What an article is for: run by run the places that it goes to. */
#include "parts_private.h"

#include <string.h>

struct PartUse parts_for_all(void)
{
    return (struct PartUse){.whom = PART_FOR_ALL};
}

struct PartUse parts_for_run(const struct Run *run)
{
    return (struct PartUse){.whom = PART_FOR_RUN, .run = run};
}

struct PartUse parts_for_end(const struct Run *run, enum PartPlace end)
{
    return (struct PartUse){.whom = PART_FOR_RUN, .run = run, .place = end};
}

struct PartUse parts_for_segment(const struct Run *run, const struct Segment *segment)
{
    return (struct PartUse){
        .whom = run != NULL ? PART_FOR_RUN : PART_FOR_ALL, .run = run, .place = PART_ON_SEGMENT, .segment = segment};
}

/* A run is known by its name: the plan may have made a copy of it. */
static bool same_user(const struct PartUse *a, const struct PartUse *b)
{
    return a->whom == b->whom && (a->whom != PART_FOR_RUN || text_same(a->run->name, b->run->name)) &&
           (a->whom != PART_FOR_PIECE || a->piece == b->piece);
}

bool parts_used_at(const struct Part *part, const struct Run *run, enum PartPlace end)
{
    const struct PartUse wanted = parts_for_end(run, end);
    for (int i = 0; i < part->use_count; i++) {
        if (part->uses[i].place == end && same_user(&part->uses[i], &wanted)) {
            return true;
        }
    }
    return false;
}

/* ---- while it is counted ---- */

static struct UseGroup *group_of(struct Arena *arena, struct UseGroups *groups, const struct PartUse *use)
{
    for (struct UseGroup *group = groups->first; group != NULL; group = group->next) {
        if (same_user(&group->whose, use)) {
            return group;
        }
    }
    struct UseGroup *group = arena_alloc(arena, sizeof *group);
    if (group == NULL) {
        return NULL;
    }
    *group = (struct UseGroup){.whose = {.whom = use->whom, .run = use->run, .piece = use->piece}};
    if (groups->last != NULL) {
        groups->last->next = group;
    } else {
        groups->first = group;
    }
    groups->last = group;
    return group;
}

static bool grow(struct Arena *arena, struct UseGroup *group)
{
    const int room = group->room > 0 ? 2 * group->room : 4;
    struct PartUse *places = arena_array(arena, (size_t)room, sizeof *places);
    if (places == NULL) {
        return false;
    }
    if (group->places != NULL && group->count > 0) {
        memcpy(places, group->places, (size_t)group->count * sizeof *places);
    }
    group->places = places;
    group->room = room;
    return true;
}

void parts_use_add(struct Arena *arena, struct UseGroups *groups, struct PartUse use)
{
    struct UseGroup *group = group_of(arena, groups, &use);
    if (group == NULL || use.place == PART_NOWHERE) {
        return;
    }
    const struct PartUse *last = group->places != NULL && group->count > 0 ? &group->places[group->count - 1] : NULL;
    if (last != NULL && last->place == use.place && last->segment == use.segment) {
        return;
    }
    if ((group->count < group->room || grow(arena, group)) && group->places != NULL) {
        group->places[group->count++] = use;
    }
}

/* What was seen of a group's places: by place, and of the stretches by number. */
struct Seen {
    const struct Segment *segments; /* the survey's */
    int *segment;                   /* the group that saw it last */
    int place[PART_ON_SEGMENT];
};

static bool seen_before(struct Seen *seen, const struct PartUse *use, int group)
{
    int *last =
        use->place == PART_ON_SEGMENT ? &seen->segment[use->segment - seen->segments] : &seen->place[use->place];
    const bool before = *last == group;
    *last = group;
    return before;
}

int parts_uses(struct Counting *counting, const struct UseGroups *groups, const struct PartUse **out)
{
    const struct Survey *survey = counting->plan->survey;
    size_t room = 0;
    for (const struct UseGroup *group = groups->first; group != NULL; group = group->next) {
        room += (size_t)group->count + 1;
    }
    struct Seen seen = {.segments = survey->segments,
                        .segment =
                            arena_array(counting->arena, (size_t)survey->segment_count + 1, sizeof *seen.segment)};
    struct PartUse *uses = arena_array(counting->arena, room, sizeof *uses);
    if (uses == NULL || seen.segment == NULL) {
        return 0;
    }
    int count = 0;
    int number = 0;
    for (const struct UseGroup *group = groups->first; group != NULL; group = group->next) {
        number++;
        if (group->count == 0) {
            uses[count++] = group->whose;
        }
        for (int i = 0; i < group->count; i++) {
            if (!seen_before(&seen, &group->places[i], number)) {
                uses[count++] = group->places[i];
            }
        }
    }
    *out = uses;
    return count;
}

/* ---- said short ---- */

enum { PLACES_SHOWN = 6, USERS_SHOWN = 4 };

const struct Say *parts_piece_said(struct Arena *arena, const struct PartPiece *piece)
{
    const struct SayArg name = say_name(piece->name);
    return piece->parts > 0 ? say(arena, SAY_COUPLED_PART, name, say_count(piece->part), say_count(piece->parts))
                            : say(arena, SAY_AS_IS, name);
}

const struct Say *parts_user_said(struct Arena *arena, const struct PartUse *use)
{
    switch (use->whom) {
    case PART_FOR_ALL: break;
    case PART_FOR_RUN: return say(arena, SAY_AS_IS, say_name(use->run->name));
    case PART_FOR_ELECTRODE: return say(arena, SAY_FOR_ELECTRODE);
    case PART_FOR_BONDING: return say(arena, SAY_FOR_BONDING);
    case PART_FOR_PIECE: return parts_piece_said(arena, use->piece);
    }
    return NULL;
}

static struct SayArg place_said(const struct PartUse *use)
{
    switch (use->place) {
    case PART_AT_START: return say_term(SAY_AT_START);
    case PART_AT_FINISH: return say_term(SAY_AT_FINISH);
    case PART_ON_SEGMENT: return say_name(use->segment->name);
    case PART_NOWHERE: break;
    }
    return say_part(NULL);
}

/* "feeder: gable, roof-void and 2 more": of `count` places of one run. */
static const struct Say *run_said(struct Arena *arena, int count, const struct PartUse *uses)
{
    const struct Say *places = NULL;
    int shown = 0;
    int left = 0;
    for (int i = 0; i < count; i++) {
        if (uses[i].place == PART_NOWHERE) {
            continue;
        }
        if (shown == PLACES_SHOWN) {
            left++;
            continue;
        }
        shown++;
        places = say_list(arena, SAY_COMMA, places, place_said(&uses[i]));
    }
    const struct Say *said = say_list(arena, SAY_COLON, parts_user_said(arena, uses), say_part(places));
    return left > 0 ? say(arena, SAY_AND_MORE, say_part(said), say_count(left)) : said;
}

const struct Say *parts_runs_said(struct Arena *arena, int count, const struct PartUse *uses)
{
    const struct Say *said = NULL;
    int runs = 0;
    for (int i = 0; i < count; i++) {
        if (uses[i].whom == PART_FOR_RUN && (i == 0 || !same_user(&uses[i], &uses[i - 1]))) {
            said = runs++ < USERS_SHOWN ? say_list(arena, SAY_COMMA, said, say_part(parts_user_said(arena, &uses[i])))
                                        : said;
        }
    }
    return runs > USERS_SHOWN ? say(arena, SAY_AND_MORE_RUNS, say_part(said), say_count(runs - USERS_SHOWN)) : said;
}

const struct Say *parts_uses_said(struct Arena *arena, int count, const struct PartUse *uses)
{
    const struct Say *said = NULL;
    int runs = 0;
    for (int from = 0; from < count; runs++) {
        int to = from + 1;
        while (to < count && same_user(&uses[to], &uses[from])) {
            to++;
        }
        if (runs < USERS_SHOWN) {
            said = say_list(arena, SAY_SEMICOLON, said, say_part(run_said(arena, to - from, &uses[from])));
        }
        from = to;
    }
    return runs > USERS_SHOWN ? say(arena, SAY_AND_MORE_RUNS, say_part(said), say_count(runs - USERS_SHOWN)) : said;
}
