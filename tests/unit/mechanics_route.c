/* See mechanics_route.h. */
#include "mechanics_route.h"
#include "said.h"

#include <string.h>

static const char *or_else(const char *text, const char *usual)
{
    return text != NULL ? text : usual;
}

struct Wend *mechanics_try(const struct MechanicsRoute *route)
{
    struct Arena *arena = arena_new();
    ck_assert_ptr_nonnull(arena);
    const char *text = arena_print(
        arena,
        "wend: 1\njob: {title: Shed}\nsupply: {system: TN-S, loop-impedance: 0.2 ohm}\nruns:\n  feeder:\n    load: %s\n"
        "    device: {kind: MCB, curve: B}\n    cable: %s\n%s%ssegments:\n%s",
        or_else(route->load, "{current: 16 A}"), or_else(route->cable, "{type: BS5467, cores: 3}"),
        or_else(route->run, ""), or_else(route->runs, ""),
        or_else(route->segments, "  - {name: path, way: duct, length: 20 m, duct: {size: 63 mm}}\n"));
    struct Wend *wend = wend_plan("shed", text, strlen(text));
    ck_assert_ptr_nonnull(wend);
    arena_free(arena);
    return wend;
}

struct Wend *mechanics_plan(const struct MechanicsRoute *route)
{
    struct Wend *wend = mechanics_try(route);
    ck_assert_msg(wend_result(wend) != NULL, "%s", wend_diagnostics_printed(wend_diagnostics(wend), "shed"));
    const char *fault = plan_check(wend_result(wend));
    ck_assert_msg(fault == NULL, "%s", fault);
    return wend;
}

const struct Check *route_check(const struct Wend *wend, int run, const char *id)
{
    const struct PlanRun *planned = &wend_result(wend)->runs[run];
    for (int i = 0; i < planned->check_count; i++) {
        if (text_same(planned->checks[i].id, id)) {
            return &planned->checks[i];
        }
    }
    ck_abort_msg("no check %s", id);
    return NULL;
}

bool route_told(const struct Wend *wend, const char *name)
{
    for (size_t i = 0; i < wend_diagnostics_count(wend_diagnostics(wend)); i++) {
        if (text_same(wend_diagnostic_name(wend_diagnostics(wend), i), name)) {
            return true;
        }
    }
    return false;
}

void route_says(const char *text, const char *part)
{
    ck_assert_msg(strstr(text, part) != NULL, "\"%s\" does not say \"%s\"", text, part);
}

bool route_not_checked(const struct Wend *wend, const char *id, const char *run)
{
    const struct Plan *plan = wend_result(wend);
    for (int i = 0; i < plan->not_checked_count; i++) {
        const struct NotChecked *listed = &plan->not_checked[i];
        if (text_same(listed->id, id) && text_same(listed->run, run)) {
            return true;
        }
    }
    return false;
}
