/* What must be settled before the day: what the plan leaves open, and the cautions that ask somebody else for
 * something. Lead times are those that a caution names; none is made up. */
#include "work_private.h"

static bool asks_before(const struct Caution *caution)
{
    switch (caution->text->id) {
    case SAY_CAUTION_CUT_OUT:
    case SAY_CAUTION_TAILS_ASK:
    case SAY_CAUTION_GENERATION_NOTIFY:
    case SAY_CAUTION_GENERATION_APPLY:
    case SAY_CAUTION_SUPPLY_EARTH_OUTDOORS:
    case SAY_CAUTION_ISLAND_DISTANCE:
    case SAY_CAUTION_SURGE_UNDECIDED:
    case SAY_CAUTION_SELECTIVITY_UNDECIDED:
    case SAY_CAUTION_DIG_PLANS:
    case SAY_CAUTION_ASBESTOS:
    case SAY_CAUTION_LOFT_BATS:
    case SAY_CAUTION_OVERHEAD_LINES:
    case SAY_CAUTION_DRIVE:
    case SAY_CAUTION_NOTIFY: return true;
    default: return false;
    }
}

const struct Say *const *work_before(struct Arena *arena, const struct Plan *plan, int *count)
{
    const struct Say **list =
        arena_array(arena, (size_t)plan->open_count + (size_t)plan->caution_count + 2, sizeof(struct Say *));
    *count = 0;
    if (list == NULL) {
        return NULL;
    }
    if (plan->verdict == VERDICT_FAIL) {
        list[(*count)++] = say(arena, SAY_WORK_FAILS, say_part(plan->verdict_text));
    }
    for (int i = 0; i < plan->open_count; i++) {
        list[(*count)++] = plan->open[i].text;
    }
    for (int i = 0; i < plan->caution_count; i++) {
        if (plan->cautions[i].text != NULL && asks_before(&plan->cautions[i])) {
            list[(*count)++] = plan->cautions[i].text;
        }
    }
    return list;
}
