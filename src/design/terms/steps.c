/* The working of a figure, line by line. */
#include "steps_private.h"

#include <math.h>
#include <string.h>

enum { STEPS_AT_FIRST = 8, DIGITS = 7 };

struct Steps steps_begin(struct Arena *arena)
{
    return (struct Steps){.arena = arena};
}

static bool room_for_one(struct Steps *steps)
{
    if (steps->count < steps->room) {
        return true;
    }
    const int room = steps->room == 0 ? STEPS_AT_FIRST : steps->room * 2;
    struct Step *list = arena_array(steps->arena, (size_t)room, sizeof *list);
    if (list == NULL) {
        return false;
    }
    if (steps->count > 0) {
        memcpy(list, steps->list, (size_t)steps->count * sizeof *list);
    }
    steps->list = list;
    steps->room = room;
    return true;
}

static void add(struct Steps *steps, struct SayArg what, struct SayArg formula, const char *numbers,
                struct SayArg result, struct SayArg source)
{
    if (room_for_one(steps)) {
        steps->list[steps->count++] = (struct Step){.what = say_alone(steps->arena, what),
                                                    .formula = say_alone(steps->arena, formula),
                                                    .numbers = numbers,
                                                    .result = result,
                                                    .source = say_alone(steps->arena, source)};
    }
}

void steps_add(struct Steps *steps, struct SayArg what, struct SayArg formula, struct SayArg result,
               struct SayArg source)
{
    add(steps, what, formula, "", result, source);
}

void steps_figure(struct Steps *steps, struct SayArg what, struct SayArg formula, const char *numbers, double value,
                  enum Unit unit, struct SayArg source)
{
    add(steps, what, formula, numbers, steps_value(value, unit), source);
}

void steps_end(struct Steps *steps, struct Check *out)
{
    out->steps = steps->list;
    out->step_count = steps->count;
}

/* number_text() ends at a thousand million, which what a large conductor withstands goes beyond. */
const char *steps_number(const struct Steps *steps, double value)
{
    if (fabs(value) < 1e9) {
        return number_significant(steps->arena, value, DIGITS);
    }
    return arena_print(steps->arena, "%s x 10^6", number_significant(steps->arena, value / 1e6, DIGITS));
}

struct SayArg steps_value(double value, enum Unit unit)
{
    return say_digits(value, DIGITS, unit);
}

/* Editions are said once for the whole plan; that a figure was only remembered is said wherever it is used. */
const struct Say *table_said(struct Arena *arena, const struct TableRef *ref)
{
    const bool numbered =
        (ref->table[0] >= '0' && ref->table[0] <= '9') || (ref->table[0] >= 'A' && ref->table[0] <= 'Z');
    const char *standard = arena_print(arena, "%.*s", (int)strcspn(ref->standard, ":"), ref->standard);
    const struct Say *table =
        say(arena, numbered ? SAY_TABLE_BY_NUMBER : SAY_COMMA, say_name(standard), say_name(ref->table));
    return source_said(arena, table, ref->trust);
}

struct SayArg steps_source(const struct Steps *steps, const struct TableRef *ref)
{
    return say_part(table_said(steps->arena, ref));
}
