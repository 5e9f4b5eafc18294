/* Which assumptions decide: the same route with the other value written into it has to differ from the plan in just
 * what is said, and where nothing is said in nothing. */
#include "run_suite.h"
#include "said.h"

#include "library/library_private.h"

#include "design/design.h"
#include "tables/edition_private.h"

#include <math.h>
#include <stdlib.h>

enum { TEXT_MOST = 4096 };

/* The places where something may be written, and what. */
struct Written {
    enum AssumedWhat what;
    const char *conditions, *fence;
    const char *other; /* what it is called */
    bool in_air;       /* nothing of the route lies in the ground */
};
static const struct Written nothing = {.conditions = ""};
static const struct Written nothing_in_air = {.in_air = true};
static const struct Written rows[] = {
    {ASSUMED_AIR, .conditions = "air: 35 degC", .other = "35 degC", .in_air = true},
    {ASSUMED_SOIL_THERMAL, .conditions = "soil-thermal: 3 K.m/W", .other = "3 K.m/W"},
    {ASSUMED_GROUND, .conditions = "ground: 25 degC", .other = "25 degC"},
    {ASSUMED_TERMINALS, .conditions = "terminals: 90 degC", .other = "90 degC"},
    {ASSUMED_SHADED, .fence = ", sun: full", .other = "full", .in_air = true},
    {ASSUMED_TIMBER, .fence = ", fixed-to: brick", .other = "brick"},
};
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

static const char *given(const char *text)
{
    return text == NULL ? "" : text;
}

/* Sun and surface are those of a fence, a wall's surface being its own. */
static struct Wend *planned(const struct Written *written, int load_a, const char *loft)
{
    char text[TEXT_MOST];
    const int length = snprintf(text, sizeof text,
                                "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.2 ohm, "
                                "fault-current: 1.2 kA}\nearthing: {far-end: export, extraneous-parts: no}\n"
                                "conditions: {%s}\nruns:\n  byre:\n    load: {current: %d A, power-factor: 1}\n"
                                "    device: {kind: MCB, curve: B, rating: %d A, breaking-capacity: 6 kA}\n"
                                "    cable: {type: BS5467, cores: 3, cpc: core}\nsegments:\n"
                                "  - {name: fence, way: fence, length: 21 m%s}\n%s"
                                "%s",
                                given(written->conditions), load_a, load_a, given(written->fence), loft,
                                written->in_air ? "" : "  - {name: field, way: buried, length: 14 m, depth: 600 mm}\n");
    struct Wend *wend = wend_plan("byre", text, (size_t)length);
    ck_assert_msg(wend_status(wend) <= WEND_CHECK_FAILS, "%s",
                  wend_diagnostics_printed(wend_diagnostics(wend), "byre"));
    return wend;
}

static int assumption_of(const struct Plan *plan, enum AssumedWhat what)
{
    for (int i = 0; i < plan->assumption_count; i++) {
        const int assumed = plan->assumptions[i].assumed;
        if (assumed >= 0 && plan->survey->assumed[assumed].what == what) {
            return i;
        }
    }
    return -1;
}

static const struct Decisive *of(const struct Decisives *decisives, int assumption)
{
    for (int i = 0; i < decisives->count; i++) {
        if (decisives->list[i].assumption == assumption) {
            return &decisives->list[i];
        }
    }
    return NULL;
}

static int count_lines(const struct PartsList *now, const struct PartsList *then)
{
    int lines = 0;
    for (int side = 0; side < 2; side++) {
        const struct PartsList *one = side == 0 ? now : then;
        const struct PartsList *two = side == 0 ? then : now;
        for (int i = 0; i < one->count; i++) {
            const struct Part *match = NULL;
            for (int j = 0; j < two->count; j++) {
                match = text_same(one->parts[i].code, two->parts[j].code) ? &two->parts[j] : match;
            }
            const double bought = one->parts[i].pack > 0 ? one->parts[i].packs : one->parts[i].quantity;
            const double other = match == NULL ? 0 : match->pack > 0 ? match->packs : match->quantity;
            lines += match == NULL || (side == 0 && fabs(bought - other) > 1);
        }
    }
    return lines;
}

static int hold(const struct Written *row, int load_a)
{
    struct Wend *wend = planned(row->in_air ? &nothing_in_air : &nothing, load_a, "");
    struct Wend *other = planned(row, load_a, "");
    const struct Plan *now = wend_result(wend);
    const struct Plan *then = wend_result(other);
    const int assumption = assumption_of(now, row->what);
    ck_assert_msg(assumption >= 0, "%s is not assumed", row->other);
    ck_assert_str_eq(plainly(now->assumptions[assumption].other), row->other);
    const struct Decisives decisives = library_decisives(wend);
    const struct Decisive *decisive = of(&decisives, assumption);
    const bool cable = fabs(now->runs[0].size_mm2 - then->runs[0].size_mm2) > 0.01;
    const int lines = count_lines(wend_parts(wend), wend_parts(other));
    ck_assert_msg((decisive != NULL) == (cable || lines > 0 || now->verdict != then->verdict), "%s at %d A", row->other,
                  load_a);
    if (decisive != NULL) {
        ck_assert(decisive->planned);
        ck_assert(decisive->cable_changes == cable);
        ck_assert(decisive->verdict_changes == (now->verdict != then->verdict) && decisive->verdict == then->verdict);
        ck_assert_int_eq(decisive->order_lines, lines);
        const char *words = said(wend->arena, decisive_said(wend->arena, now, decisive, false));
        ck_assert_msg(strstr(words, row->other) != NULL, "%s", words);
        ck_assert_msg((strstr(words, "another cable") != NULL) == cable, "%s", words);
    }
    for (int i = 1; i < decisives.count; i++) { /* what changes the cable before what changes the order alone */
        ck_assert(decisives.list[i - 1].cable_changes || !decisives.list[i].cable_changes ||
                  decisives.list[i - 1].verdict_changes);
    }
    wend_free(other);
    wend_free(wend);
    return (decisive != NULL) + 2 * (decisive != NULL && cable);
}

START_TEST(as_if_it_were_written)
{
    int changed = 0;
    for (int load_a = 6; load_a <= 80; load_a += 2) {
        changed |= hold(&rows[_i], load_a);
    }
    /* or nothing was seen: the surface changes the order alone, the others a cable somewhere */
    ck_assert_msg(rows[_i].what == ASSUMED_TIMBER ? changed == 1 : changed == 3, "%s: %d", rows[_i].other, changed);
}
END_TEST

/* Each end of a range is tried as if it were written in place of it. */
START_TEST(ends_of_ranges)
{
    int cables = 0;
    for (int high_m = 30; high_m <= 150; high_m += 10) {
        char text[600], at_low[600];
        static const char form[] =
            "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
            "  byre:\n    load: {current: 26 A}\n    cable: {type: BS5467, cores: 3}\nsegments:\n"
            "  - {name: hedge, way: buried, depth: 600 mm, length: %s}\n";
        char range[40];
        snprintf(range, sizeof range, "20 m to %d m", high_m);
        snprintf(text, sizeof text, form, range);
        snprintf(at_low, sizeof at_low, form, "20 m");
        struct Wend *wend = wend_plan("byre", text, strlen(text));
        struct Wend *other = wend_plan("byre", at_low, strlen(at_low));
        const struct Plan *now = wend_result(wend), *then = wend_result(other);
        ck_assert(now != NULL && then != NULL);
        const struct Decisives decisives = library_decisives(wend);
        const struct Decisive *low = NULL;
        for (int i = 0; i < decisives.count; i++) {
            const struct Decisive *one = &decisives.list[i];
            ck_assert(one->assumption >= 0 || strcmp(one->at, "20 m") == 0); /* the plan is at the larger end */
            low = one->assumption < 0 ? one : low;
        }
        ck_assert_int_eq(decisives.ends, 2);
        ck_assert_ptr_nonnull(low);
        ck_assert(low->planned);
        const bool cable = fabs(now->runs[0].size_mm2 - then->runs[0].size_mm2) > 0.01;
        ck_assert(low->cable_changes == cable);
        ck_assert(!cable || fabs(low->size_mm2 - then->runs[0].size_mm2) < 0.01);
        ck_assert(low->verdict_changes == (now->verdict != then->verdict));
        cables += cable;
        wend_free(other);
        wend_free(wend);
    }
    ck_assert_int_gt(cables, 3);
}
END_TEST

/* Roof voids in summer are the design's own assumption. */
START_TEST(lofts_in_summer)
{
    bool seen = false;
    for (int load_a = 6; load_a <= 80; load_a++) {
        struct Wend *wend = planned(&nothing_in_air, load_a, "  - {name: loft, way: loft-void, length: 4 m}\n");
        struct Wend *other =
            planned(&nothing_in_air, load_a, "  - {name: loft, way: loft-void, length: 4 m, air: 40 degC}\n");
        const struct Decisives decisives = library_decisives(wend);
        const bool cable = wend_result(wend)->runs[0].size_mm2 < wend_result(other)->runs[0].size_mm2;
        bool told = false;
        for (int i = 0; i < decisives.count; i++) {
            const struct Assumption *assumption = &wend_result(wend)->assumptions[decisives.list[i].assumption];
            told = told || (assumption->assumed < 0 && said_has(assumption->other, "40 degC") &&
                            decisives.list[i].cable_changes);
        }
        ck_assert_msg(told == cable, "%d A", load_a);
        seen = seen || cable;
        wend_free(other);
        wend_free(wend);
    }
    ck_assert(seen);
}
END_TEST

/* A made-up edition whose Table 4D4A lets a cable carry a third: what decides is decided by it, not by the edition
 * that is held. */
static void decide_by(const struct Edition *weaker, int load_a, bool *differs)
{
    struct Wend *wend = planned(&nothing_in_air, load_a, "");
    const struct Plan *held = wend->plan;
    const int air = assumption_of(held, ASSUMED_AIR);
    const struct Survey *warmer = design_otherwise(wend->arena, held->survey, &held->assumptions[air]);
    const struct Staged now = library_stages(wend->arena, wend->told.diag, weaker, held->survey, "byre");
    const struct Staged then = library_stages(wend->arena, wend->told.diag, weaker, warmer, "byre");
    const struct Staged by_held = library_stages(wend->arena, wend->told.diag, edition_held(), warmer, "byre");
    ck_assert(now.plan != NULL && then.plan != NULL && by_held.plan != NULL);
    wend->plan = now.plan;
    wend->parts = now.parts;
    const struct Decisives decisives = library_decisives(wend);
    const struct Decisive *decisive = of(&decisives, air);
    const bool cable = fabs(then.plan->runs[0].size_mm2 - now.plan->runs[0].size_mm2) > 0.01;
    ck_assert_msg(cable == (decisive != NULL && decisive->cable_changes), "%d A", load_a);
    if (cable) {
        ck_assert_double_eq_tol(decisive->size_mm2, then.plan->runs[0].size_mm2, 1e-9);
    }
    *differs = *differs || fabs(by_held.plan->runs[0].size_mm2 - then.plan->runs[0].size_mm2) > 0.01;
    wend_free(wend);
}

START_TEST(by_the_edition_of_the_plan)
{
    enum { CELLS_MOST = 200 };
    struct Edition weaker = *edition_held();
    struct CapacityData data = *weaker.capacity[CAPACITY_4D4A];
    double cells_a[CELLS_MOST];
    ck_assert_int_le(data.sizes * data.column_count, CELLS_MOST);
    for (int i = 0; i < data.sizes * data.column_count; i++) {
        cells_a[i] = data.cells_a[i] / 3;
    }
    data.cells_a = cells_a;
    weaker.capacity[CAPACITY_4D4A] = &data;
    bool differs = false;
    for (int load_a = 10; load_a <= 60; load_a += 5) {
        decide_by(&weaker, load_a, &differs);
    }
    ck_assert(differs); /* or it could not be told by which edition */
}
END_TEST

START_TEST(says_what_to_measure)
{
    struct Wend *wend = planned(&nothing_in_air, 80, "  - {name: loft, way: loft-void, length: 4 m}\n");
    const struct Decisives decisives = library_decisives(wend);
    const struct WendAnswer *answer = wend_decides(wend);
    const struct WendBytes text = wend_answer_text(answer);
    const char *words = arena_text(wend->arena, text.data, text.length);
    const char *before = words;
    ck_assert_int_gt(decisives.count, 0);
    for (int i = 0; i < decisives.count; i++) { /* each, in order, by its key */
        const char *at = strstr(before, wend->plan->assumptions[decisives.list[i].assumption].where);
        ck_assert_msg(at != NULL, "%s", words);
        before = at;
    }
    char rest[32];
    snprintf(rest, sizeof rest, "%d more", decisives.tried - decisives.count);
    ck_assert_msg(strstr(words, rest) != NULL, "%s: %s", rest, words);
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("decides");
    TCase *cases = tcase_create("decides");
    tcase_set_timeout(cases, 120);
    tcase_add_loop_test(cases, as_if_it_were_written, 0, ROWS);
    tcase_add_test(cases, ends_of_ranges);
    tcase_add_test(cases, lofts_in_summer);
    tcase_add_test(cases, by_the_edition_of_the_plan);
    tcase_add_test(cases, says_what_to_measure);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
