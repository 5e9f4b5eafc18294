/* What differs between two plans, as rows that text, CSV and JSON are made of. */
#include "diff_private.h"

#include "documents/lists/order_words_private.h"
#include "documents/shown_private.h"
#include "documents/summary/summary_private.h"

#include <math.h>

struct Rows {
    struct Arena *arena;
    struct DiffRow *list;
    int count, room;
};

static void add(struct Rows *rows, enum DiffWhat what, const char *name, const struct Say *old, const struct Say *now)
{
    if (rows->count < rows->room) {
        rows->list[rows->count++] = (struct DiffRow){what, name, old != NULL ? shown_said(rows->arena, old) : "",
                                                     now != NULL ? shown_said(rows->arena, now) : ""};
    }
}

static void add_if(struct Rows *rows, enum DiffWhat what, const char *name, const struct Say *old,
                   const struct Say *now)
{
    if (!say_same(old, now)) {
        add(rows, what, name, old, now);
    }
}

static const struct PlanRun *run_of(const struct Plan *plan, const char *name)
{
    for (int i = 0; i < plan->run_count; i++) {
        if (text_same(plan->runs[i].settled->name, name)) {
            return &plan->runs[i];
        }
    }
    return NULL;
}

static const struct Check *check_of(const struct PlanRun *run, const char *id)
{
    for (int i = 0; run != NULL && i < run->check_count; i++) {
        if (text_same(run->checks[i].id, id)) {
            return &run->checks[i];
        }
    }
    return NULL;
}

static const struct Say *result_said(struct Arena *arena, const struct Check *check)
{
    return check == NULL                 ? NULL
           : check->result == CHECK_PASS ? say(arena, SAY_AS_IS, say_name(verdict_word(VERDICT_PASS)))
           : check->result == CHECK_FAIL ? say(arena, SAY_AS_IS, say_name(verdict_word(VERDICT_FAIL)))
           : check->open                 ? say(arena, SAY_AS_IS, say_name(verdict_word(VERDICT_OPEN)))
           : check->unknown              ? say(arena, SAY_RESULT_UNKNOWN)
                                         : say(arena, SAY_RESULT_NOT_DUE);
}

static const char *check_name(struct Arena *arena, const struct PlanRun *run, const struct Check *check)
{
    return arena_print(arena, "%s: %s", run->settled->name, check->id);
}

static void add_checks(struct Rows *rows, const struct PlanRun *old, const struct PlanRun *now)
{
    struct Arena *arena = rows->arena;
    for (int i = 0; now != NULL && i < now->check_count; i++) {
        const struct Check *check = &now->checks[i];
        add_if(rows, DIFF_CHECK, check_name(arena, now, check), result_said(arena, check_of(old, check->id)),
               result_said(arena, check));
    }
    for (int i = 0; old != NULL && i < old->check_count; i++) {
        const struct Check *check = &old->checks[i];
        if (check_of(now, check->id) == NULL) {
            add(rows, DIFF_CHECK, check_name(arena, old, check), result_said(arena, check), NULL);
        }
    }
}

/* NULL for a run that is not there, and for one that has no such thing. */
static const struct Say *length_said(struct Arena *arena, const struct PlanRun *run)
{
    return run == NULL ? NULL : say(arena, SAY_AS_IS, say_digits(run->order_length_m, 9, UNIT_M));
}

static const struct Say *drop_said(struct Arena *arena, const struct PlanRun *run)
{
    return run == NULL || !run->rated ? NULL : say(arena, SAY_AS_IS, say_fixed(run->drop_percent, 2, UNIT_PERCENT));
}

static void add_run(struct Rows *rows, const struct PlanRun *old, const struct PlanRun *now)
{
    struct Arena *arena = rows->arena;
    const char *name = (now != NULL ? now : old)->settled->name;
    add_if(rows, DIFF_CABLE, name, old != NULL ? summary_cable(arena, old) : NULL,
           now != NULL ? summary_cable(arena, now) : NULL);
    add_if(rows, DIFF_DEVICE, name, old != NULL ? old->device_text : NULL, now != NULL ? now->device_text : NULL);
    add_if(rows, DIFF_LENGTH, name, length_said(arena, old), length_said(arena, now));
    add_if(rows, DIFF_DROP, name, drop_said(arena, old), drop_said(arena, now));
}

static const char *amount(struct Arena *arena, const struct Part *part, double count)
{
    const struct Bought bought = {part->pack > 0 ? lround(count) : 0, part->pack, part->pack_word, count, part->unit};
    return bought_words(arena, &bought);
}

static void add_parts(struct Rows *rows, const struct PartsDifferences *parts, bool fetch)
{
    for (int i = 0; i < parts->count; i++) {
        const struct PartsDifference *one = &parts->list[i];
        const double count = fetch ? one->fetch : one->back;
        if (count > 0) {
            add(rows, fetch ? DIFF_FETCH : DIFF_BACK, one->part->code, NULL,
                say(rows->arena, SAY_COLON, say_name(amount(rows->arena, one->part, count)),
                    say_part(one->part->description)));
        }
    }
}

static int checks_in(const struct Plan *plan)
{
    int count = 0;
    for (int i = 0; i < plan->run_count; i++) {
        count += plan->runs[i].check_count;
    }
    return count;
}

static const struct Say *verdict_said(struct Arena *arena, const struct Plan *plan)
{
    return say(arena, SAY_AS_IS, say_name(verdict_word(plan->verdict)));
}

struct DiffRows diff_rows(struct Arena *arena, const struct DiffSide *old, const struct DiffSide *now)
{
    enum { OF_A_RUN = 4 };
    const struct PartsDifferences parts = parts_differ(arena, old->parts, now->parts);
    const int runs = old->plan->run_count + now->plan->run_count;
    struct Rows rows = {.arena = arena,
                        .room = 1 + OF_A_RUN * runs + checks_in(old->plan) + checks_in(now->plan) + parts.count};
    rows.list = arena_array(arena, (size_t)rows.room, sizeof *rows.list);
    if (rows.list == NULL || parts.list == NULL) {
        return (struct DiffRows){0, NULL};
    }
    add(&rows, DIFF_VERDICT, "", verdict_said(arena, old->plan), verdict_said(arena, now->plan));
    for (int i = 0; i < now->plan->run_count; i++) {
        const struct PlanRun *run = &now->plan->runs[i];
        add_run(&rows, run_of(old->plan, run->settled->name), run);
    }
    for (int i = 0; i < old->plan->run_count; i++) {
        const struct PlanRun *run = &old->plan->runs[i];
        if (run_of(now->plan, run->settled->name) == NULL) {
            add_run(&rows, run, NULL);
            add_checks(&rows, run, NULL);
        }
    }
    for (int i = 0; i < now->plan->run_count; i++) {
        const struct PlanRun *run = &now->plan->runs[i];
        add_checks(&rows, run_of(old->plan, run->settled->name), run);
    }
    add_parts(&rows, &parts, true);
    add_parts(&rows, &parts, false);
    return (struct DiffRows){rows.count, rows.list};
}
