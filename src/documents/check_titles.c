/* What a check is called on paper. Its id is for machines: no paper shows it. */
#include "shown_private.h"

#include <string.h>

/* Of a list of them so many are named; the rest is counted. */
enum { TITLES_MOST = 4 };

const struct Say *check_title(struct Arena *arena, const struct Check *check)
{
    return check->segment == NULL ? say(arena, check->title)
                                  : say(arena, SAY_COMMA, say_term(check->title), say_name(check->segment));
}

const struct Say *check_title_of(struct Arena *arena, const struct PlanRun *run, const char *id)
{
    const size_t kind = strcspn(id, ":");      /* it alone is asked for where the segment is said otherwise */
    for (int exact = 1; exact >= 0; exact--) { /* a size that was not taken may have been checked where this was not */
        for (int i = 0; i < run->check_count; i++) {
            const struct Check *check = &run->checks[i];
            if (exact == 1 && text_same(check->id, id)) {
                return check_title(arena, check);
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

/* ---- the verdict ---- */

/* Within a sentence the segment stands in brackets. */
static struct SayArg within(struct Arena *arena, const struct Plan *plan, const char *run, const char *id)
{
    const size_t kind = strcspn(id, ":");
    const char *const name = id[kind] == '\0' ? id : arena_text(arena, id, kind);
    for (int i = 0; i < plan->run_count; i++) {
        if (text_same(plan->runs[i].settled->name, run)) {
            const struct Say *title = check_title_of(arena, &plan->runs[i], name);
            return say_part(id[kind] == '\0' ? title
                                             : say(arena, SAY_BRACKETS, say_part(title), say_name(id + kind + 1)));
        }
    }
    return say_name(id);
}

static const struct Say *failures(struct Arena *arena, const struct Plan *plan)
{
    int count = 0;
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            count += plan->runs[r].checks[i].result == CHECK_FAIL;
        }
    }
    const struct Say *list = NULL;
    int named = 0;
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        for (int i = 0; i < run->check_count && named < TITLES_MOST; i++) {
            if (run->checks[i].result == CHECK_FAIL) {
                named++;
                list = say_then(arena, list,
                                say(arena, named == count ? SAY_CHECK_FAILS : SAY_CHECK_FAILS_FURTHER,
                                    within(arena, plan, run->settled->name, run->checks[i].id),
                                    say_name(run->settled->name)));
            }
        }
    }
    return named == count ? list : say_then(arena, list, say(arena, SAY_CHECKS_OPEN_MORE, say_count(count - named)));
}

static const struct Say *open_questions(struct Arena *arena, const struct Plan *plan)
{
    enum { NAMED_MOST = 3 };
    const int named = plan->open_count < NAMED_MOST ? plan->open_count : NAMED_MOST;
    const struct Say *list = NULL;
    for (int i = 0; i < named; i++) {
        const struct OpenQuestion *open = &plan->open[i];
        list = say_then(arena, list,
                        say(arena, i + 1 == plan->open_count ? SAY_CHECK_OPEN : SAY_CHECK_OPEN_FURTHER,
                            within(arena, plan, open->run, open->id), say_name(open->run),
                            say_part(settles_said(arena, &open->settles))));
    }
    return named == plan->open_count
               ? list
               : say_then(arena, list, say(arena, SAY_CHECKS_OPEN_MORE, say_count(plan->open_count - named)));
}

const struct Say *verdict_titled(struct Arena *arena, const struct Plan *plan)
{
    switch (plan->verdict) {
    case VERDICT_FAIL: return failures(arena, plan);
    case VERDICT_OPEN: return open_questions(arena, plan);
    case VERDICT_PASS: break;
    }
    return plan->verdict_text;
}
