/* The warnings that were told on the way, kept as a part of the plan: who holds a paper has seen no terminal. */
#include "design/terms/design_private.h"

#include <string.h>

/* Messages name what they speak of in quotes, after its kind. */
static bool speaks_of(struct Arena *arena, const struct Diagnostic *told, const char *kind, const char *name)
{
    return strstr(told->text, arena_print(arena, "%s \"%s\"", kind, name)) != NULL;
}

static void place_warning(struct Arena *arena, const struct Survey *survey, const struct Diagnostic *told,
                          struct PlanWarning *out)
{
    for (int i = 0; i < survey->segment_count; i++) {
        const struct Segment *segment = &survey->segments[i];
        if (speaks_of(arena, told, "segment", segment->name) || told->mark.line == segment->mark.line) {
            out->where = segment->name;
            out->segment = i;
            return;
        }
    }
    for (int r = 0; r < survey->run_count; r++) {
        if (speaks_of(arena, told, "run", survey->runs[r].name) || told->mark.line == survey->runs[r].mark.line) {
            out->where = survey->runs[r].name;
            return;
        }
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
        *warning = (struct PlanWarning){.name = diag_name(told->code), .where = "", .segment = -1, .text = told->text};
        place_warning(design->arena, plan->survey, told, warning);
    }
    plan->warnings = list;
    return list != NULL;
}
