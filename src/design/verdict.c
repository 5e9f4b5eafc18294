/* What the checks of all runs come to: the verdict in words, and what could not be checked. */
#include "design_private.h"

const char *verdict_of(struct Arena *arena, const struct Plan *plan)
{
    struct TextBuilder text = text_builder(arena);
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            if (plan->runs[r].checks[i].result == CHECK_FAIL) {
                text_print(&text, "%s%s fails on %s", text.length > 0 ? ", " : "", plan->runs[r].checks[i].id,
                           plan->runs[r].surveyed->name);
            }
        }
    }
    return text.length == 0 ? "every check made passes" : text_done(&text);
}

/* Checks that this survey leaves without what they need. */
void list_not_checked(struct Arena *arena, struct Plan *plan)
{
    size_t most = 0;
    for (int r = 0; r < plan->run_count; r++) {
        most += (size_t)plan->runs[r].check_count;
    }
    struct NotChecked *list = arena_array(arena, most, sizeof *list);
    if (list == NULL) {
        return;
    }
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            const struct Check *check = &plan->runs[r].checks[i];
            if (check->unknown) {
                list[plan->not_checked_count++] = (struct NotChecked){
                    check->id, arena_print(arena, "%s: %s", plan->runs[r].surveyed->name, check->text)};
            }
        }
    }
    plan->not_checked = list;
}
