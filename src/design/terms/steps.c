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
    if (steps->arena != NULL && room_for_one(steps)) {
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
    if (steps->arena == NULL) {
        return "";
    }
    if (fabs(value) < 1e9) {
        return number_significant(steps->arena, value, DIGITS);
    }
    return arena_print(steps->arena, "%s x 10^6", number_significant(steps->arena, value / 1e6, DIGITS));
}

struct SayArg steps_value(double value, enum Unit unit)
{
    return say_digits(value, DIGITS, unit);
}

static enum Saying table_words(enum TableWords words)
{
    switch (words) {
    case TABLE_BY_NUMBER: return SAY_TABLE_BY_NUMBER;
    case TABLE_NOT_CITED: break;
    case TABLE_STANDARD_ALONE: return SAY_AS_IS;
    case TABLE_IN_APPENDIX_3: return SAY_SOURCE_APPENDIX_3;
    case TABLE_IN_APPENDIX_4: return SAY_SOURCE_APPENDIX_4_UNLIKE;
    case TABLE_IN_ANNEX_ZA: return SAY_SOURCE_ANNEX_ZA;
    case TABLE_B_52_17_ITEM_3: return SAY_SOURCE_TABLE_ITEM_3;
    case TABLE_OF_ARMOUR: return SAY_SOURCE_ARMOUR;
    case TABLE_OF_DATA_BENDS: return SAY_SOURCE_DATA_BENDS;
    case TABLE_OF_DIMENSIONS: return SAY_SOURCE_DIMENSIONS;
    case TABLE_OF_DUCT_FILL: return SAY_SOURCE_DUCT_FILL;
    case TABLE_OF_FRICTION: return SAY_SOURCE_FRICTION;
    case TABLE_OF_FUSE_TYPES: return SAY_SOURCE_FUSE_TYPES;
    case TABLE_OF_JAM: return SAY_SOURCE_JAM;
    case TABLE_OF_LEAST_BORES: return SAY_SOURCE_LEAST_BORES;
    case TABLE_OF_OPERATING_TIMES: return SAY_SOURCE_OPERATING_TIMES;
    case TABLE_OF_PREFERRED_RATINGS: return SAY_SOURCE_PREFERRED_RATINGS;
    case TABLE_OF_PULL_LIMITS: return SAY_SOURCE_PULL_LIMITS;
    case TABLE_OF_TRUNKING_FILL: return SAY_SOURCE_TRUNKING_FILL;
    }
    return SAY_COMMON_PRACTICE;
}

/* Editions are said once for the whole plan; that a figure was only remembered is said wherever it is used. */
const struct Say *table_row_said(struct Arena *arena, const struct TableRef *ref, enum Trust trust)
{
    return source_said(arena, say(arena, table_words(ref->words), say_name(ref->standard), say_name(ref->table)),
                       trust);
}

const struct Say *table_said(struct Arena *arena, const struct TableRef *ref)
{
    return table_row_said(arena, ref, ref->trust);
}

struct SayArg steps_source(const struct Steps *steps, const struct TableRef *ref)
{
    return say_part(table_said(steps->arena, ref));
}

struct SayArg steps_cite(const struct Steps *steps, struct Cite cite)
{
    return say_part(cite_said(steps->arena, &cite));
}

struct SayArg steps_clause(const struct Steps *steps, const char *clause)
{
    return steps_cite(steps, (struct Cite){BS_7671, .clause = clause});
}

struct SayArg steps_appendix_4(const struct Steps *steps, const char *clause)
{
    return steps_cite(steps, (struct Cite){BS_7671, .appendix = "4", .clause = clause});
}
