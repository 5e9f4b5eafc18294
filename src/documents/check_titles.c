/* What checks are called on paper. Their ids are for machines: no paper shows them. */
#include "shown_private.h"

/* Of a list of them so many are named; the rest is counted. */
enum { TITLES_MOST = 4 };

const struct Say *check_titles(struct Arena *arena, const struct CheckList *checks)
{
    const struct Say *list = NULL;
    for (int i = 0; i < checks->count && i < TITLES_MOST; i++) {
        list = say_list(arena, SAY_SEMICOLON_SMALL, list, say_part(check_ref_said(arena, &checks->list[i])));
    }
    const int further = checks->count - TITLES_MOST;
    return further <= 0 ? list
                        : say_list(arena, SAY_SEMICOLON_SMALL, list,
                                   say_part(say(arena, SAY_CHECKS_OPEN_MORE, say_count(further))));
}
