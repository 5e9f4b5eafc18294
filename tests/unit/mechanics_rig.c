/* See mechanics_rig.h. */
#include "mechanics_rig.h"

#include "calculator.h"
#include "said.h"

#include <math.h>
#include <string.h>

struct Quantity surveyed(double value)
{
    return (struct Quantity){.value = value, .given = true};
}

void mechanics_make(struct MechanicsRig *rig)
{
    *rig = (struct MechanicsRig){.arena = arena_new()};
    ck_assert_ptr_nonnull(rig->arena);
    rig->survey.runs = rig->runs;
    rig->survey.segments = rig->segments;
    mechanics_add_run(rig, "feeder", RUN_POWER, CABLE_BS5467, 3);
    rig->design.run = &rig->runs[0];
    rig->design.segments = rig->segments;
    rig->design.survey = &rig->survey;
    mechanics_add_segment(rig, "path", WAY_DUCT, 20);
}

void mechanics_free(struct MechanicsRig *rig)
{
    arena_free(rig->arena);
    rig->arena = NULL;
}

struct Run *mechanics_add_run(struct MechanicsRig *rig, const char *name, enum RunKind kind, enum CableType type,
                              int cores)
{
    ck_assert_int_lt(rig->survey.run_count, RIG_RUNS);
    struct Run *run = &rig->runs[rig->survey.run_count++];
    *run = (struct Run){.name = name,
                        .kind = kind,
                        .cable = {.type = type, .cores = cores},
                        .along_count = rig->survey.segment_count,
                        .along = rig->along};
    return run;
}

struct Segment *mechanics_add_segment(struct MechanicsRig *rig, const char *name, enum Way way, double length_m)
{
    const int index = rig->survey.segment_count;
    ck_assert_int_lt(index, RIG_SEGMENTS);
    rig->survey.segment_count++;
    rig->segments[index] = (struct Segment){
        .name = name, .way = way, .length_m = surveyed(length_m), .bends = rig->bends[index], .duct_laid = LAID_NEW};
    if (way == WAY_DUCT) {
        rig->segments[index].duct_size_mm = surveyed(63);
    }
    rig->along[index] = index;
    for (int i = 0; i < rig->survey.run_count; i++) {
        rig->runs[i].along_count++;
    }
    return &rig->segments[index];
}

void mechanics_bend(struct MechanicsRig *rig, int segment, double angle_deg, double radius_m)
{
    struct Segment *bent = &rig->segments[segment];
    ck_assert_int_lt(bent->bend_count, RIG_BENDS);
    rig->bends[segment][bent->bend_count++] =
        (struct Bend){.angle_deg = angle_deg, .radius_m = {.value = radius_m, .given = radius_m > 0}};
}

static bool printed(struct Arena *arena, const struct Check *check, double figure)
{
    double result;
    for (int i = 0; i < check->step_count; i++) {
        if (calculator_figure(said_result(arena, &check->steps[i]), &result) && isfinite(result) && isfinite(figure) &&
            fabs(result - figure) <= 1e-6 * fabs(figure) + 1e-9) {
            return true;
        }
    }
    return false;
}

/* Every line comes to the figure that it says, and what is compared is among them. */
static void follow(struct Arena *arena, const struct Check *check)
{
    if (check->result == CHECK_NOT_DUE) {
        ck_assert_int_eq(check->step_count, 0);
        return;
    }
    ck_assert_int_gt(check->step_count, 0);
    for (int i = 0; i < check->step_count; i++) {
        const struct Step *step = &check->steps[i];
        double figure;
        const char *what = said(arena, step->what);
        const char *result = said_result(arena, step);
        ck_assert_msg(what[0] != '\0' && said(arena, step->source)[0] != '\0', "%s: %s", check->id, what);
        ck_assert_msg(step->result.kind == SAY_ARG_DIGITS && calculator_figure(result, &figure), "%s: %s = %s",
                      check->id, what, result);
        ck_assert_msg(step->numbers[0] == '\0' || calculator_agrees(step->numbers, figure), "%s: %s: %s is not %s",
                      check->id, what, step->numbers, result);
    }
    ck_assert_msg(printed(arena, check, check->value), "%s: %.9g is not in the working", check->id, check->value);
    ck_assert_msg(printed(arena, check, check->limit), "%s: %.9g is not in the working", check->id, check->limit);
}

static void same(const struct Check *bare, const struct Check *worded)
{
    ck_assert_ptr_nonnull(strchr(worded->id, ':'));
    ck_assert_int_eq(bare->title, worded->title);
    ck_assert_str_eq(bare->segment, worded->segment);
    ck_assert_int_eq(bare->result, worded->result);
    ck_assert_int_eq(bare->unknown, worded->unknown);
    ck_assert_int_eq(bare->at_least, worded->at_least);
    ck_assert_double_eq(bare->value, worded->value);
    ck_assert_double_eq(bare->limit, worded->limit);
    ck_assert_int_eq(bare->unit, worded->unit);
    ck_assert_int_eq(bare->step_count, 0);
    ck_assert(isfinite(worded->value) && isfinite(worded->limit));
    ck_assert(plainly(worded->text)[0] != '\0');
    ck_assert_int_eq(bare->unknown, settles_something(&bare->settles));
    ck_assert_int_eq(bare->unknown, settles_something(&worded->settles));
}

struct Check mechanics_check(struct MechanicsRig *rig, double size_mm2, const char *id)
{
    struct Check bare[RIG_CHECKS];
    const struct Trial trial = {.size_mm2 = size_mm2};
    rig->count = check_mechanics(rig->arena, &rig->design, &trial, rig->checks, RIG_CHECKS);
    /* what decides must not hang on whether there is memory for what is said */
    struct Arena *no_memory = arena_new();
    arena_fail_after(no_memory, 0);
    ck_assert_int_eq(check_mechanics(no_memory, &rig->design, &trial, bare, RIG_CHECKS), rig->count);
    const struct MechanicsCount counted =
        mechanics_failures(&rig->design, &trial, mechanics_due(rig->arena, &rig->design));
    int failed = 0;
    ck_assert_int_eq(mechanics_count(&rig->design), rig->count);
    ck_assert(!arena_failed(rig->arena));
    const struct Check *found = NULL;
    for (int i = 0; i < rig->count; i++) {
        same(&bare[i], &rig->checks[i]);
        failed += rig->checks[i].result == CHECK_FAIL;
        follow(rig->arena, &rig->checks[i]);
        found = text_same(rig->checks[i].id, id) ? &rig->checks[i] : found;
    }
    arena_free(no_memory);
    ck_assert_int_eq(counted.failed.count, failed);
    ck_assert_msg(found != NULL, "no check %s", id);
    return *found;
}

static void result_is(struct MechanicsRig *rig, double size_mm2, const char *id, enum CheckResult result)
{
    const struct Check check = mechanics_check(rig, size_mm2, id);
    ck_assert_msg(check.result == result, "%s: result %d, value %.9g, limit %.9g: %s", id, (int)check.result,
                  check.value, check.limit, plainly(check.text));
    ck_assert_msg(!check.unknown, "%s: %s", id, plainly(check.text));
    const bool holds = check.at_least ? within(check.limit, check.value) : within(check.value, check.limit);
    ck_assert_int_eq(holds, result == CHECK_PASS);
}

void mechanics_passes(struct MechanicsRig *rig, double size_mm2, const char *id)
{
    result_is(rig, size_mm2, id, CHECK_PASS);
}

void mechanics_fails(struct MechanicsRig *rig, double size_mm2, const char *id)
{
    result_is(rig, size_mm2, id, CHECK_FAIL);
}

void mechanics_unknown(struct MechanicsRig *rig, double size_mm2, const char *id, const char *names)
{
    const struct Check check = mechanics_check(rig, size_mm2, id);
    ck_assert_int_eq(check.result, CHECK_NOT_DUE);
    ck_assert_msg(check.unknown, "%s: %s", id, plainly(check.text));
    text_has(plainly(check.text), "Not made: ");
    text_has(plainly(check.text), names);
}

void text_has(const char *text, const char *part)
{
    ck_assert_msg(strstr(text, part) != NULL, "\"%s\" does not say \"%s\"", text, part);
}
