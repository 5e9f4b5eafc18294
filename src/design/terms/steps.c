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
    if (steps->arena == NULL || steps->count < steps->room) {
        return steps->arena != NULL;
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

void steps_add(struct Steps *steps, const char *what, const char *formula, const char *numbers, const char *result,
               const char *source)
{
    if (room_for_one(steps)) {
        steps->list[steps->count++] =
            (struct Step){.what = what, .formula = formula, .numbers = numbers, .result = result, .source = source};
    }
}

void steps_figure(struct Steps *steps, const char *what, const char *formula, const char *numbers, double value,
                  const char *unit, const char *source)
{
    if (steps->arena == NULL) {
        return;
    }
    const char *figure = steps_number(steps, value);
    steps_add(steps, what, formula, numbers, *unit == '\0' ? figure : arena_print(steps->arena, "%s %s", figure, unit),
              source);
}

void steps_end(struct Steps *steps, struct Check *out)
{
    out->steps = steps->list;
    out->step_count = steps->count;
}

/* number_text() ends at a thousand million, which what a large conductor withstands goes beyond. */
const char *steps_number(const struct Steps *steps, double value)
{
    if (steps->arena == NULL) {
        return "";
    }
    if (fabs(value) < 1e9) {
        return number_significant(steps->arena, value, DIGITS);
    }
    return arena_print(steps->arena, "%s x 10^6", number_significant(steps->arena, value / 1e6, DIGITS));
}

static const char *memory_of(const char *trust)
{
    static const char words[] = "from memory";
    const char *at = strstr(trust, words);
    return at == NULL ? "" : at == trust ? " (from memory)" : " (in part from memory)";
}

/* Editions are said once for the whole plan; that a figure was only remembered is said wherever it is used. */
const char *steps_source(const struct Steps *steps, const struct TableRef *ref)
{
    const bool numbered = ref->table[0] >= '0' && ref->table[0] <= '9';
    return steps->arena == NULL
               ? ""
               : arena_print(steps->arena, "%.*s%s%s%s", (int)strcspn(ref->standard, ":"), ref->standard,
                             numbered ? " Table " : ", ", ref->table, memory_of(ref->trust));
}
