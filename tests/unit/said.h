/** What a plan says, in the words that a file has for it. */
#ifndef WEND_SAID_H
#define WEND_SAID_H

#include "plan/plan.h"
#include "words/words.h"

#include <stdio.h>
#include <string.h>

static inline const char *said(struct Arena *arena, const struct Say *say)
{
    static const struct Words plain = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};
    return words_said(arena, &plain, say);
}

/** The result of a step, as it is printed. */
static inline const char *said_result(struct Arena *arena, const struct Step *step)
{
    return said(arena, say_alone(arena, step->result));
}

/** True when these words are part of it. */
static inline bool said_has(const struct Say *say, const char *part)
{
    struct Arena *arena = arena_new();
    const bool has = arena != NULL && strstr(said(arena, say), part) != NULL;
    arena_free(arena);
    return has;
}

/** The same without an arena to keep it in: good until the fourth call after this one. */
static inline const char *plainly(const struct Say *say)
{
    enum { KEPT = 4, LONGEST = 8192 };
    static char kept[KEPT][LONGEST];
    static unsigned last = 0;
    struct Arena *arena = arena_new();
    char *here = kept[++last % KEPT];
    snprintf(here, LONGEST, "%s", said(arena, say));
    arena_free(arena);
    return here;
}

static inline const char *settled_by(struct Settles settles)
{
    struct Arena *arena = arena_new();
    const char *words = plainly(settles_said(arena, &settles));
    arena_free(arena);
    return words;
}

/** A text of a test's own, to stand where a plan says something. */
static inline const struct Say *as_is(struct Arena *arena, const char *text)
{
    return say(arena, SAY_AS_IS, say_name(text));
}

/** "drop bend", good for as long. */
static inline const char *plain_ids(const struct CheckList *list)
{
    struct Arena *arena = arena_new();
    const char *text = plainly(as_is(arena, check_list_ids(arena, list)));
    arena_free(arena);
    return text;
}

/** Where the rule of a check is from, good for as long. */
static inline const char *plain_source(const struct Check *check)
{
    struct Arena *arena = arena_new();
    const char *text = plainly(check_source_said(arena, check));
    arena_free(arena);
    return text;
}

#endif
