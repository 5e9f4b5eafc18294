/** What a plan says, in the words that a file has for it. */
#ifndef WEND_SAID_H
#define WEND_SAID_H

#include "words/words.h"

static inline const char *said(struct Arena *arena, const struct Say *say)
{
    static const struct Words plain = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};
    return words_said(arena, &plain, say);
}

#endif
