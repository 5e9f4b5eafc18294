/* What a check is called on paper. Its id is for machines: no paper shows it. */
#include "shown_private.h"

#include <string.h>

/* Of a list of them so many are named; the rest is counted. */
enum { TITLES_MOST = 4 };

/* That of the check of a run with this id, also where the id is another size's. */
static const struct Say *check_title_of(struct Arena *arena, const struct PlanRun *run, const char *id)
{
    const size_t kind = strcspn(id, ":");      /* it alone is asked for where the segment is said otherwise */
    for (int exact = 1; exact >= 0; exact--) { /* a size that was not taken may have been checked where this was not */
        for (int i = 0; i < run->check_count; i++) {
            const struct Check *check = &run->checks[i];
            if (exact == 1 && text_same(check->id, id)) {
                return check_title_said(arena, check);
            }
            if (exact == 0 && strcspn(check->id, ":") == kind && strncmp(check->id, id, kind) == 0) {
                return id[kind] == '\0' ? say(arena, check->title)
                                        : say(arena, SAY_COMMA, say_term(check->title), say_name(id + kind + 1));
            }
        }
    }
    return say_alone(arena, say_name(id));
}

const struct Say *check_titles(struct Arena *arena, const struct PlanRun *run, const char *ids)
{
    const struct Say *list = NULL;
    int named = 0, further = 0;
    while (*ids != '\0') {
        const size_t length = strcspn(ids, " ");
        if (length > 0 && named < TITLES_MOST) {
            const struct Say *title = check_title_of(arena, run, arena_text(arena, ids, length));
            list = say_list(arena, SAY_SEMICOLON, list, say_part(title));
            named++;
        } else {
            further += length > 0;
        }
        ids += length + strspn(ids + length, " ");
    }
    return further == 0
               ? list
               : say_list(arena, SAY_SEMICOLON, list, say_part(say(arena, SAY_CHECKS_OPEN_MORE, say_count(further))));
}
