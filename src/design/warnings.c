/* The warnings that were told on the way, kept as a part of the plan: who holds a paper has seen no terminal. */
#include "design/terms/design_private.h"

static void place_warning(const struct Survey *survey, struct DiagSubject subject, struct PlanWarning *out)
{
    if (subject.of == DIAG_OF_SEGMENT) {
        out->segment = subject.index;
        out->where = survey->segments[subject.index].name;
    } else if (subject.of == DIAG_OF_RUN) {
        out->run = subject.index;
        out->where = survey->runs[subject.index].name;
    }
}

bool list_warnings(const struct Design *design, struct Plan *plan)
{
    const size_t count = diag_count(design->diag);
    struct PlanWarning *list = arena_array(design->arena, count + 1, sizeof *list);
    for (size_t i = 0; list != NULL && i < count; i++) {
        const struct Diagnostic *told = diag_at(design->diag, i);
        if (told->severity != DIAG_WARNING) {
            continue;
        }
        struct PlanWarning *warning = &list[plan->warning_count++];
        *warning =
            (struct PlanWarning){.code = told->code, .words = told->words, .where = "", .segment = -1, .run = -1};
        place_warning(plan->survey, told->subject, warning);
    }
    plan->warnings = list;
    return list != NULL;
}
