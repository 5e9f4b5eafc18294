/* Where a rule or a figure is published, and how sure that is, as something to say. */
#include "plan.h"

static const struct Say *place_said(struct Arena *arena, const struct Cite *cite)
{
    const struct SayArg standard = say_name(cite->standard);
    const struct SayArg clause = say_name(cite->clause);
    const struct Say *part = cite->appendix != NULL ? say(arena, SAY_CITE_APPENDIX, standard, say_name(cite->appendix))
                             : cite->annex != NULL  ? say(arena, SAY_CITE_ANNEX, standard, say_name(cite->annex))
                                                    : NULL;
    if (cite->clause == NULL) {
        return part != NULL ? part : say_alone(arena, standard);
    }
    return part != NULL ? say(arena, SAY_COMMA, say_part(part), clause) : say(arena, SAY_SPACE, standard, clause);
}

const struct Say *cite_said(struct Arena *arena, const struct Cite *cite)
{
    if (cite->standard == NULL) {
        return NULL;
    }
    const struct Say *place = place_said(arena, cite);
    if (cite->note) {
        place = say(arena, SAY_CITE_NOTE, say_part(place));
    }
    if (cite->table == NULL) {
        return place;
    }
    const bool alone = cite->clause == NULL && cite->appendix == NULL && cite->annex == NULL;
    return say(arena, alone ? SAY_TABLE_BY_NUMBER : SAY_CLAUSE_AND_TABLE, say_part(place), say_name(cite->table));
}

const struct Say *check_source_said(struct Arena *arena, const struct Check *check)
{
    const struct Say *cited = cite_said(arena, &check->cite);
    return source_said(arena, check->rule == SAY_NOTHING ? cited : say(arena, check->rule, say_part(cited)),
                       check->trust);
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

enum Trust trust_of_both(enum Trust a, enum Trust b)
{
    return a == b ? a : TRUST_PARTLY_FROM_MEMORY;
}

const struct Say *factor_source_said(struct Arena *arena, const struct Factor *factor)
{
    return factor->cause == FACTOR_SUN ? say(arena, SAY_DERIVED_FROM_SOLAR_TERM, say_part(factor->source))
                                       : factor->source;
}
