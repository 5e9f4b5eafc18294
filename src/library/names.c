/* The names within a plan that questions can be asked by. */
#include "library_private.h"

#include <string.h>

int wend_run_count(const struct Wend *wend)
{
    const struct Plan *plan = wend_result(wend);
    return plan == NULL ? 0 : plan->run_count;
}

const char *wend_run_name(const struct Wend *wend, int index)
{
    return index >= 0 && index < wend_run_count(wend) ? wend->plan->runs[index].settled->name : "";
}

/* Each once; `list` has room for all. */
static void add(struct CheckNames *names, const char *name)
{
    for (int i = 0; i < names->count; i++) {
        if (text_same(names->list[i], name)) {
            return;
        }
    }
    names->list[names->count++] = name;
}

/* The checks first, then those made segment by segment by their whole names. */
static void gather(struct Wend *wend, struct CheckNames *names)
{
    int most = 1;
    for (int r = 0; r < wend->plan->run_count; r++) {
        most += 2 * wend->plan->runs[r].check_count;
    }
    names->list = arena_array(wend->arena, (size_t)most, sizeof *names->list);
    for (int whole = 0; names->list != NULL && whole < 2; whole++) {
        for (int r = 0; r < wend->plan->run_count; r++) {
            const struct PlanRun *run = &wend->plan->runs[r];
            for (int i = 0; i < run->check_count; i++) {
                const char *id = run->checks[i].id;
                add(names, whole ? id : arena_text(wend->arena, id, strcspn(id, ":")));
            }
        }
    }
}

int wend_check_count(struct Wend *wend)
{
    if (wend_result(wend) == NULL) {
        return 0;
    }
    if (wend->names.list == NULL) {
        gather(wend, &wend->names);
    }
    return wend->names.count;
}

const char *wend_check_name(struct Wend *wend, int index)
{
    return index >= 0 && index < wend_check_count(wend) ? wend->names.list[index] : "";
}
