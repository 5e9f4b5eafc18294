/* Where a caution applies; a verdict in a word; what would settle a check. */
#include "plan.h"

const char *verdict_word(enum Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL: return "FAIL";
    case VERDICT_OPEN: return "OPEN";
    case VERDICT_PASS: return "PASS";
    }
    return "";
}

bool plan_caution_at(const struct Caution *caution, int segment)
{
    for (int i = 0; i < caution->stretch_count; i++) {
        if (caution->stretches[i] == segment) {
            return true;
        }
    }
    return false;
}

struct Settles settles_key(const char *key)
{
    return (struct Settles){.key = key};
}

struct Settles settles_reading(enum Saying reading)
{
    return (struct Settles){.reading = reading};
}

bool settles_something(const struct Settles *settles)
{
    return settles->key != NULL || settles->reading != SAY_NOTHING;
}

const struct Say *settles_said(struct Arena *arena, const struct Settles *settles)
{
    const struct SayArg key = say_name(settles->key);
    if (settles->key == NULL) {
        return settles->reading == SAY_NOTHING ? NULL : say(arena, settles->reading);
    }
    if (settles->or_key != NULL) {
        return say(arena, SAY_SETTLED_BY_EITHER, key, say_name(settles->or_key));
    }
    return settles->reading == SAY_NOTHING ? say_alone(arena, key)
                                           : say(arena, SAY_SETTLED_BY_EITHER, key, say_term(settles->reading));
}

const struct Say *check_title_said(struct Arena *arena, const struct Check *check)
{
    return check->segment == NULL ? say(arena, check->title)
                                  : say(arena, SAY_COMMA, say_term(check->title), say_name(check->segment));
}

const struct Say *check_source_said(struct Arena *arena, const struct Check *check)
{
    const struct SayArg clause = say_name(check->source);
    const struct Say *said = check->table != NULL
                                 ? say(arena, SAY_CLAUSE_AND_TABLE, clause, say_name(check->table))
                                 : say(arena, check->rule == SAY_NOTHING ? SAY_AS_IS : check->rule, clause);
    return source_said(arena, said, check->trust);
}

const struct Say *source_said(struct Arena *arena, const struct Say *source, enum Trust trust)
{
    switch (trust) {
    case TRUST_PUBLISHED: break;
    case TRUST_PARTLY_FROM_MEMORY: return say(arena, SAY_SOURCE_PARTLY_FROM_MEMORY, say_part(source));
    case TRUST_FROM_MEMORY: return say(arena, SAY_SOURCE_FROM_MEMORY, say_part(source));
    case TRUST_COMMON_PRACTICE: return say(arena, SAY_COMMON_PRACTICE);
    }
    return source;
}

const struct Say *factor_source_said(struct Arena *arena, const struct Factor *factor)
{
    return factor->cause == FACTOR_SUN ? say(arena, SAY_DERIVED_FROM_SOLAR_TERM, say_part(factor->source))
                                       : factor->source;
}

const struct Say *plan_caution_shortly(const struct Caution *caution)
{
    return caution->shortly != NULL ? caution->shortly : caution->text;
}
