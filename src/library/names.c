/* Names: those within a plan that questions can be asked by, and lists of them. */
#include "library_private.h"

int wend_run_count(const struct Wend *wend)
{
    const struct Plan *plan = wend_result(wend);
    return plan == NULL ? 0 : plan->run_count;
}

const char *wend_run_name(const struct Wend *wend, int index)
{
    return index >= 0 && index < wend_run_count(wend) ? wend->plan->runs[index].settled->name : "";
}

struct Names names_new(struct Wend *wend, int most)
{
    return (struct Names){.list = arena_array(wend->arena, (size_t)most + 1, sizeof(const char *))};
}

void names_add(struct Names *names, const char *name)
{
    bool there = names->list == NULL;
    for (int i = 0; !there && i < names->count; i++) {
        there = text_same(names->list[i], name);
    }
    if (!there) {
        names->list[names->count++] = name;
    }
}

int plan_checks_in_all(const struct Plan *plan)
{
    int count = 0;
    for (int r = 0; r < plan->run_count; r++) {
        count += plan->runs[r].check_count;
    }
    return count;
}

/* The checks first, then those made segment by segment by their whole names. */
static struct Names gather(struct Wend *wend)
{
    struct Names names = names_new(wend, 2 * plan_checks_in_all(wend->plan));
    for (int whole = 0; whole < 2; whole++) {
        for (int r = 0; r < wend->plan->run_count; r++) {
            const struct PlanRun *run = &wend->plan->runs[r];
            for (int i = 0; i < run->check_count; i++) {
                names_add(&names, whole ? run->checks[i].id : run->checks[i].kind);
            }
        }
    }
    return names;
}

int wend_check_count(struct Wend *wend)
{
    if (wend_result(wend) == NULL) {
        return 0;
    }
    if (wend->check_names.list == NULL) {
        wend->check_names = gather(wend);
    }
    return wend->check_names.count;
}

const char *wend_check_name(struct Wend *wend, int index)
{
    return index >= 0 && index < wend_check_count(wend) ? wend->check_names.list[index] : "";
}
