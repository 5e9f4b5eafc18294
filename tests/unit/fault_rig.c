/* See fault_rig.h. */
#include "fault_rig.h"
#include "said.h"

#include <stdio.h>
#include <string.h>

enum { TEXT_MOST = 4096 };

void rig_make(struct Rig *rig)
{
    *rig = (struct Rig){.arena = arena_new()};
    ck_assert_ptr_nonnull(rig->arena);
    rig->run.name = "feeder";
    rig->run.feeds = FEEDS_BOARD;
    rig->design = (struct RunDesign){.edition = edition_held(),
                                     .run = &rig->run,
                                     .phases = 1,
                                     .u0_v = 230,
                                     .before_ohm = 0.35,
                                     .earthing = &rig->earthing,
                                     .supply_neutral_mm2 = 35,
                                     .earthing_conductor_mm2 = 16,
                                     .electrical_length_m = 40};
    rig_device(rig, DEVICE_MCB, CURVE_B, 32);
    rig_cable(rig, CABLE_BS5467, 3, CPC_CORE, 90);
}

void rig_free(struct Rig *rig)
{
    arena_free(rig->arena);
    rig->arena = NULL;
}

void rig_device(struct Rig *rig, enum DeviceKind kind, enum Curve curve, double rating_a)
{
    rig->run.device.kind = kind;
    rig->run.device.curve = curve;
    rig->run.device.rating_a = (struct Quantity){.value = rating_a, .given = true};
    rig->design.rating_a = rating_a;
}

void rig_residual(struct Rig *rig, double residual_a, bool time_delayed)
{
    rig->run.device.residual_a = (struct Quantity){.value = residual_a, .given = true};
    rig->run.device.time_delayed = time_delayed;
}

void rig_cable(struct Rig *rig, enum CableType type, int cores, enum Cpc cpc, double degc)
{
    rig->run.cable = (struct Cable){.type = type, .cores = cores, .cpc = cpc, .cpc_run = -1};
    rig->design.kind = cable_kind(type);
    rig->design.drop_table = cable_kind(type)->drop;
    rig->design.fault_cpc = cpc;
    rig->design.terms = (struct RunTerms){.conductor_degc = degc, .type = type, .cores = cores};
}

void rig_electrode(struct Rig *rig, double measured_ohm)
{
    rig->earthing.far_end = FAR_END_ISLAND;
    rig->earthing.has_electrode = true;
    rig->earthing.measured_ohm = (struct Quantity){.value = measured_ohm, .given = true};
    rig->design.electrode_ohm = measured_ohm;
}

struct Check rig_check(const struct Rig *rig, rig_check_function *check, double size_mm2)
{
    const struct Trial trial = {.size_mm2 = size_mm2, .drop.voltage_v = 230};
    struct Check bare = {.id = ""};
    struct Check worded = bare;
    struct Arena *no_memory = arena_new();
    arena_fail_after(no_memory, 0);
    check(no_memory, &rig->design, &trial, &bare);
    check(rig->arena, &rig->design, &trial, &worded);
    /* what decides must not hang on whether there is memory for what is said */
    ck_assert_int_eq(bare.result, worded.result);
    ck_assert_double_eq(bare.value, worded.value);
    ck_assert_double_eq(bare.limit, worded.limit);
    ck_assert(plainly(worded.text)[0] != '\0');
    ck_assert_int_eq(settles_something(&bare.settles), settles_something(&worded.settles));
    arena_free(no_memory);
    return worded;
}

static void result_is(const struct Rig *rig, rig_check_function *check, double size_mm2, enum CheckResult result,
                      const char *what)
{
    const struct Check made = rig_check(rig, check, size_mm2);
    ck_assert_msg(made.result == result, "%s: result %d, value %.9g, limit %.9g: %s", what, (int)made.result,
                  made.value, made.limit, plainly(made.text));
}

void rig_passes(const struct Rig *rig, rig_check_function *check, double size_mm2, const char *what)
{
    result_is(rig, check, size_mm2, CHECK_PASS, what);
}

void rig_fails(const struct Rig *rig, rig_check_function *check, double size_mm2, const char *what)
{
    result_is(rig, check, size_mm2, CHECK_FAIL, what);
}

static const char *else_take(const char *given, const char *fallback)
{
    return given != NULL ? given : fallback;
}

struct Wend *rig_plan_any(const struct RigRoute *route)
{
    char text[TEXT_MOST];
    const int length = snprintf(
        text, sizeof text,
        "wend: 1\njob: {title: rig}\nsupply: {%s}\n%s\nruns:\n  feeder:\n    %s\n    load: {%s}\n    device: {%s}\n"
        "    cable: {%s}\n    start: {tail: 0 m}\n    finish: {tail: 0 m}\n%s\nsegments:\n  - %s\n",
        else_take(route->supply, "system: TN-S, loop-impedance: 350 mohm"), else_take(route->top, ""),
        else_take(route->run, "feeds: board"), else_take(route->load, "current: 20 A"),
        else_take(route->device, "kind: MCB, curve: B, rating: 32 A"),
        else_take(route->cable, "type: BS5467, cores: 3"), else_take(route->runs, ""),
        else_take(route->segments, "{name: a, way: wall, length: 40 m}"));
    ck_assert(length > 0 && length < TEXT_MOST);
    struct Wend *wend = wend_plan("rig", text, (size_t)length);
    ck_assert_ptr_nonnull(wend);
    ck_assert_int_ne(wend_status(wend), WEND_NO_MEMORY);
    return wend;
}

struct Wend *rig_plan(const struct RigRoute *route)
{
    struct Wend *wend = rig_plan_any(route);
    ck_assert_msg(wend_result(wend) != NULL, "%s", wend_diagnostics_printed(wend_diagnostics(wend), "rig"));
    const char *fault = plan_check(wend_result(wend));
    ck_assert_msg(fault == NULL, "%s", fault);
    return wend;
}

const struct Check *rig_found(const struct Wend *wend, const char *id)
{
    const struct PlanRun *run = &wend_result(wend)->runs[0];
    for (int i = 0; i < run->check_count; i++) {
        if (text_same(run->checks[i].id, id)) {
            return &run->checks[i];
        }
    }
    ck_abort_msg("no check %s", id);
    return NULL;
}

void rig_result(const struct Wend *wend, const char *id, enum CheckResult result)
{
    const struct Check *check = rig_found(wend, id);
    ck_assert_msg(check->result == result, "%s: result %d: %s", id, (int)check->result, plainly(check->text));
}

void rig_route_result(const struct RigRoute *route, const char *id, enum CheckResult result)
{
    struct Wend *wend = rig_plan(route);
    rig_result(wend, id, result);
    wend_free(wend);
}

bool rig_says(const char *text, const char *part)
{
    return strstr(text, part) != NULL;
}
