/* What must be settled before the day: what the plan leaves open, and the cautions that ask somebody else for
 * something. Lead times are those that a caution names; none is made up. */
#include "work_private.h"

const struct Say *const *work_before(struct Arena *arena, const struct Plan *plan, int *count)
{
    const struct Say **list =
        arena_array(arena, (size_t)plan->open_count + (size_t)plan->caution_count + 2, sizeof(struct Say *));
    *count = 0;
    if (list == NULL) {
        return NULL;
    }
    if (plan->verdict == VERDICT_FAIL) {
        list[(*count)++] = say(arena, SAY_WORK_FAILS, say_part(plan_verdict_said(plan)));
    }
    for (int i = 0; i < plan->open_count; i++) {
        list[(*count)++] = plan->open[i].text;
    }
    for (int i = 0; i < plan->caution_count; i++) {
        if (plan->cautions[i].text != NULL && plan->cautions[i].asks_before) {
            list[(*count)++] = plan->cautions[i].text;
        }
    }
    return list;
}
