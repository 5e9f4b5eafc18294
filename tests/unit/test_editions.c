/* Two editions of the wiring rules in one process. The second is made up: half of what the first one's Table 4E4A lets
 * a cable carry, half the time that its Table 41.1 gives a fault, its Table 4B3 under another number, and other figures
 * on faults and places. Each answers for itself, and a plan says whose it is. */
#include "buying/buying.h"
#include "design/design.h"
#include "documents/documents.h"
#include "read_route.h"
#include "run_suite.h"
#include "said.h"
#include "tables/edition_private.h"
#include "takeoff/parts.h"

#include <string.h>

#define MADE_UP "Made-up rules:2031"

enum { CELLS_MOST = 200, RULES_MOST = 80 };
struct MadeUp {
    double cells_a[CELLS_MOST];
    struct CapacityData capacity;
    struct DisconnectionTimes times;
    struct FactorTable soil;
    struct KFigures k[K_COUNT];
    struct ResidualLoop residual_loop;
    struct ProtectiveBands protective;
    struct BondingBands bonding;
    struct BuriedEarthing buried;
    struct LocationRule rules[RULES_MOST];
    struct LocationRules locations;
    struct VoltageFactors voltage;
    struct Edition edition;
};

/* Of what bears on faults and places: k four fifths, the touch voltage half, bonds and earthing conductors twice as
 * large, the same size up to 4 mm2 only, depths half as much again, residual devices a third, voltage factors apart. */
static void made_up_faults(struct MadeUp *out, const struct Edition *held)
{
    for (int table = 0; table < K_COUNT; table++) {
        out->k[table] = *held->k[table];
        out->k[table].at_70_degc *= 0.8;
        out->k[table].at_90_degc *= 0.8;
        out->edition.k[table] = &out->k[table];
    }
    out->residual_loop = *held->residual_loop;
    out->residual_loop.touch_v /= 2;
    out->edition.residual_loop = &out->residual_loop;
    out->protective = *held->protective;
    out->protective.same_up_to_mm2 = 4;
    out->edition.protective = &out->protective;
    out->bonding = *held->bonding;
    for (int band = 0; band < BONDING_BANDS; band++) {
        out->bonding.bonding_mm2[band] *= 2;
    }
    out->edition.bonding = &out->bonding;
    out->buried = *held->buried_earthing;
    out->buried.copper_mm2[1][0] *= 2;
    out->edition.buried_earthing = &out->buried;
    out->locations = *held->locations;
    ck_assert_int_le(out->locations.count, RULES_MOST);
    for (int i = 0; i < out->locations.count; i++) {
        out->rules[i] = held->locations->rows[i];
        out->rules[i].value *= out->rules[i].topic == TOPIC_DEPTH  ? 1.5
                               : out->rules[i].topic == TOPIC_FEED ? 1.0 / 3
                                                                   : 1;
    }
    out->locations.rows = out->rules;
    out->edition.locations = &out->locations;
    out->voltage = (struct VoltageFactors){.least = 0.9, .greatest = 1.2};
    out->edition.voltage = &out->voltage;
}

static const struct Edition *made_up(struct MadeUp *out)
{
    const struct Edition *held = edition_held();
    out->edition = *held;
    out->edition.name = MADE_UP;
    out->edition.beyond[0] = NULL;
    out->capacity = *held->capacity[CAPACITY_4E4A];
    const int cells = out->capacity.sizes * out->capacity.column_count;
    ck_assert_int_le(cells, CELLS_MOST);
    for (int i = 0; i < cells; i++) {
        out->cells_a[i] = out->capacity.cells_a[i] > 0 ? out->capacity.cells_a[i] / 2 : out->capacity.cells_a[i];
    }
    out->capacity.cells_a = out->cells_a;
    out->edition.capacity[CAPACITY_4E4A] = &out->capacity;
    out->times = *held->disconnection;
    for (int band = 0; band < DISCONNECTION_BANDS; band++) {
        out->times.final_s[band][0] /= 2;
        out->times.final_s[band][1] /= 2;
    }
    out->edition.disconnection = &out->times;
    out->soil = *held->factors[FACTORS_SOIL];
    out->soil.ref.table = "77Z";
    out->edition.factors[FACTORS_SOIL] = &out->soil;
    made_up_faults(out, held);
    return &out->edition;
}

static double carries(const struct Edition *edition, enum CapacityTable table)
{
    double amperes = 0;
    ck_assert(capacity_amperes(edition, table, 10, METHOD_C, 2, &amperes));
    return amperes;
}

START_TEST(each_answers_for_itself)
{
    struct MadeUp made;
    const struct Edition *second = made_up(&made);
    const struct Edition *first = edition_held();
    ck_assert_double_eq_tol(carries(second, CAPACITY_4E4A), carries(first, CAPACITY_4E4A) / 2, 1e-12);
    ck_assert_double_eq_tol(carries(second, CAPACITY_4D4A), carries(first, CAPACITY_4D4A), 1e-12);
    ck_assert_double_eq_tol(disconnection_time_s(first, false, true, 230), 0.4, 1e-12);
    ck_assert_double_eq_tol(disconnection_time_s(second, false, true, 230), 0.2, 1e-12);
    ck_assert_double_eq_tol(disconnection_time_s(second, false, false, 230), 5, 1e-12);
}
END_TEST

static double bond_mm2(const struct Edition *edition)
{
    double mm2 = 0;
    ck_assert(bonding_tn_c_s(edition, 25, &mm2));
    return mm2;
}

START_TEST(each_answers_of_faults_for_itself)
{
    struct MadeUp made;
    const struct Edition *second = made_up(&made);
    const struct Edition *first = edition_held();
    static const double printed[K_COUNT] = {[K_LIVE] = 115, [K_SEPARATE] = 143, [K_CORE] = 115, [K_ARMOUR] = 51};
    for (int table = 0; table < K_COUNT; table++) {
        ck_assert_double_eq_tol(k_value(first, (enum KTable)table, 70), printed[table], 1e-9);
        ck_assert_double_eq_tol(k_value(second, (enum KTable)table, 70), printed[table] * 0.8, 1e-9);
        ck_assert_ptr_eq(k_value_ref(second, (enum KTable)table), &made.k[table].ref);
    }
    ck_assert_double_eq_tol(residual_loop_limit_ohm(first, 0.1), 500, 1e-9);
    ck_assert_double_eq_tol(residual_loop_limit_ohm(second, 0.1), 250, 1e-9);
    ck_assert_double_eq_tol(touch_limit_v(first), 50, 1e-9);
    ck_assert_double_eq_tol(touch_limit_v(second), 25, 1e-9);
    ck_assert_double_eq_tol(protective_by_table_mm2(first, 10, 143, 143), 10, 1e-9);
    ck_assert_double_eq_tol(protective_by_table_mm2(second, 10, 143, 143), 4, 1e-9);
    ck_assert_double_eq_tol(bond_mm2(first), 10, 1e-9);
    ck_assert_double_eq_tol(bond_mm2(second), 20, 1e-9);
    ck_assert_double_eq_tol(buried_earthing_mm2(first, true, false), 16, 1e-9);
    ck_assert_double_eq_tol(buried_earthing_mm2(second, true, false), 32, 1e-9);
    ck_assert_double_eq_tol(location_rule(first, LOCATION_FARM, TOPIC_DEPTH)->value, 0.6, 1e-9);
    ck_assert_double_eq_tol(location_rule(second, LOCATION_FARM, TOPIC_DEPTH)->value, 0.9, 1e-9);
    ck_assert_double_eq_tol(voltage_factor_least(first), 0.95, 1e-9);
    ck_assert_double_eq_tol(voltage_factor_greatest(first), 1.1, 1e-9);
    ck_assert_double_eq_tol(voltage_factor_least(second), 0.9, 1e-9);
    ck_assert_double_eq_tol(voltage_factor_greatest(second), 1.2, 1e-9);
}
END_TEST

static const char route[] = "wend: 1\n"
                            "job: {title: Pump house, location: workshop}\n"
                            "supply: {system: TN-S, loop-impedance: 0.2 ohm, fault-current: 1.5 kA}\n"
                            "conditions: {terminals: 90 degC}\n"
                            "runs:\n"
                            "  feeder:\n"
                            "    feeds: equipment\n"
                            "    load: {current: 30 A}\n"
                            "    device: {kind: gG, rating: 32 A}\n"
                            "    cable: {type: BS5467, cores: 3}\n"
                            "segments:\n"
                            "  - {name: gable, way: wall, length: 6 m, fixed-to: brick}\n"
                            "  - {name: cellar, way: tray, length: 4 m}\n";

static bool holds(struct Bytes document, const char *text)
{
    const size_t length = strlen(text);
    for (size_t at = 0; at + length <= document.length; at++) {
        if (memcmp(document.data + at, text, length) == 0) {
            return true;
        }
    }
    return false;
}

/* Its own name, and not the other's. */
static void says_whose(struct Bytes document, const char *own, const char *other, const char *which)
{
    ck_assert_ptr_nonnull(document.data);
    ck_assert_msg(holds(document, own), "the %s does not say %s", which, own);
    ck_assert_msg(!holds(document, other), "the %s says %s", which, other);
}

static void all_say(struct Arena *arena, const struct Plan *plan, const char *own, const char *other)
{
    static const char *const names[PAPER_COUNT] = {"brief", "parts", "design",   "test",
                                                   "pack",  "card",  "readings", "as-laid"};
    const struct PartsList *parts = parts_bought(arena, parts_count(arena, plan));
    ck_assert_ptr_nonnull(parts);
    ck_assert_str_eq(plan->rules_edition, own);
    ck_assert_ptr_nonnull(strstr(said(arena, plan->rules_text), own));
    says_whose(document_plan_xml(arena, plan, parts), own, other, "plan");
    says_whose(document_summary_text(arena, plan, parts, false), own, other, "summary");
    says_whose(document_diagram_svg(arena, plan, parts, LANGUAGE_ENGLISH), own, other, "diagram");
    const struct Papers papers = document_papers(arena, plan, parts, LANGUAGE_ENGLISH, NULL, 0);
    for (int paper = 0; paper < PAPER_COUNT; paper++) {
        if (paper_is_due(plan, (enum Paper)paper)) {
            says_whose(papers.pages[paper], own, other, names[paper]);
        }
    }
}

static const struct Check *check_of(const struct Plan *plan, const char *id)
{
    for (int i = 0; i < plan->runs[0].check_count; i++) {
        if (strcmp(plan->runs[0].checks[i].id, id) == 0) {
            return &plan->runs[0].checks[i];
        }
    }
    ck_abort_msg("no check %s", id);
    return NULL;
}

START_TEST(plans_side_by_side)
{
    struct MadeUp made;
    const struct Edition *second = made_up(&made);
    struct ReadRoute read = read_route_text(route);
    ck_assert_msg(read.survey != NULL, "%s", read_route_reports(&read));
    const struct Plan *one = design_plan(read.arena, read.diag, read.survey, "one");
    const struct Plan *two = design_plan_by(second, PLAN_WHOLE, read.arena, read.diag, read.survey, "two");
    const struct Plan *again = design_plan(read.arena, read.diag, read.survey, "one");
    ck_assert(one != NULL && two != NULL && again != NULL);
    /* 32 A on method C at 90 degC: a size that carries 64 A by the first print */
    ck_assert_double_ge(two->runs[0].size_mm2, 2 * one->runs[0].size_mm2);
    ck_assert_double_eq(again->runs[0].size_mm2, one->runs[0].size_mm2);
    ck_assert_ptr_nonnull(strstr(said(read.arena, check_of(one, "disconnection")->text), "0.4 s"));
    ck_assert_ptr_nonnull(strstr(said(read.arena, check_of(two, "disconnection")->text), "0.2 s"));
    /* the working of a figure is by the edition of its plan */
    const struct Rating *rating = design_working(read.arena, two, &two->runs[0], 0);
    ck_assert_ptr_nonnull(rating);
    ck_assert_double_eq_tol(rating->capacity_a, two->runs[0].ratings[0].capacity_a, 1e-9);
    all_say(read.arena, one, edition_name(edition_held()), MADE_UP);
    all_say(read.arena, two, MADE_UP, edition_name(edition_held()));
    read_route_free(&read);
}
END_TEST

/* Wet soil below 0.8 m: Table 4B3 would give more than 1, which is not taken. */
static const char deep_route[] = "wend: 1\n"
                                 "job: {title: Pump house, location: workshop}\n"
                                 "supply: {system: TN-S, loop-impedance: 0.2 ohm, fault-current: 1.5 kA}\n"
                                 "conditions: {soil-thermal: 1 K.m/W}\n"
                                 "runs:\n"
                                 "  feeder:\n"
                                 "    feeds: equipment\n"
                                 "    load: {current: 30 A}\n"
                                 "    device: {kind: gG, rating: 32 A}\n"
                                 "    cable: {type: BS5467, cores: 3}\n"
                                 "segments:\n"
                                 "  - {name: yard, way: buried, length: 6 m, depth: 1 m, under: path}\n";

static const char *soil_said(struct Arena *arena, const struct Plan *plan)
{
    const struct Rating *rating = &plan->runs[0].ratings[0];
    for (int i = 0; i < rating->factor_count; i++) {
        if (rating->factors[i].cause == FACTOR_SOIL) {
            return said(arena, rating->factors[i].because);
        }
    }
    ck_abort_msg("no factor of the soil");
    return NULL;
}

START_TEST(a_factor_names_the_table_of_its_edition)
{
    struct MadeUp made;
    const struct Edition *second = made_up(&made);
    struct ReadRoute read = read_route_text(deep_route);
    ck_assert_msg(read.survey != NULL, "%s", read_route_reports(&read));
    const struct Plan *one = design_plan(read.arena, read.diag, read.survey, "one");
    const struct Plan *two = design_plan_by(second, PLAN_WHOLE, read.arena, read.diag, read.survey, "two");
    ck_assert(one != NULL && two != NULL);
    ck_assert_ptr_nonnull(strstr(soil_said(read.arena, one), "Table 4B3"));
    ck_assert_ptr_nonnull(strstr(soil_said(read.arena, two), "Table 77Z"));
    read_route_free(&read);
}
END_TEST

/* A farm's board on a buried cable, with what its rules ask for in the ground and of a residual device. */
static const char farm_route[] =
    "wend: 1\n"
    "job: {title: Milking parlour, location: farm}\n"
    "supply: {system: TN-C-S, loop-impedance: 0.2 ohm, fault-current: 1 kA, neutral-size: 25 mm2}\n"
    "earthing: {far-end: export, extraneous-parts: yes}\n"
    "runs:\n"
    "  feeder:\n"
    "    load: {current: 30 A}\n"
    "    device: {kind: MCB, curve: C, rating: 32 A, breaking-capacity: 6 kA}\n"
    "    cable: {type: BS5467, cores: 3, size: 10 mm2}\n"
    "segments:\n"
    "  - {name: yard, way: buried, length: 40 m, depth: 700 mm, under: path}\n";

/* Each check takes its figure from the edition of the plan that it is made for, not from the one that is held. */
START_TEST(checks_go_by_the_edition_of_their_plan)
{
    struct MadeUp made;
    const struct Edition *second = made_up(&made);
    struct ReadRoute read = read_route_text(farm_route);
    ck_assert_msg(read.survey != NULL, "%s", read_route_reports(&read));
    const struct Plan *one = design_plan(read.arena, read.diag, read.survey, "one");
    const struct Plan *two = design_plan_by(second, PLAN_WHOLE, read.arena, read.diag, read.survey, "two");
    ck_assert(one != NULL && two != NULL);
    ck_assert_double_eq_tol(check_of(one, "location-depth")->limit, 0.6, 1e-9);
    ck_assert_int_eq(check_of(one, "location-depth")->result, CHECK_PASS);
    ck_assert_double_eq_tol(check_of(two, "location-depth")->limit, 0.9, 1e-9);
    ck_assert_int_eq(check_of(two, "location-depth")->result, CHECK_FAIL);
    ck_assert_double_eq_tol(check_of(one, "bonding")->limit, 10, 1e-9);
    ck_assert_double_eq_tol(check_of(two, "bonding")->limit, 20, 1e-9);
    /* 230 V x (1.2 and 1.1) / 0.2 ohm */
    ck_assert_double_eq_tol(check_of(one, "breaking-capacity")->limit, 1.265, 1e-9);
    ck_assert_double_eq_tol(check_of(two, "breaking-capacity")->limit, 1.38, 1e-9);
    /* 230 V x (0.95 and 0.9) / 320 A */
    ck_assert_double_eq_tol(check_of(one, "disconnection")->limit, 0.6828125, 1e-9);
    ck_assert_double_eq_tol(check_of(two, "disconnection")->limit, 0.646875, 1e-9);
    ck_assert_double_gt(check_of(two, "live-conductors")->value, 0);
    ck_assert_double_eq_tol(check_of(two, "live-conductors")->limit, check_of(one, "live-conductors")->limit * 0.64,
                            1e-3);
    read_route_free(&read);
}
END_TEST

static Suite *editions(void)
{
    Suite *suite = suite_create("two editions of the rules");
    TCase *tests = tcase_create("side by side");
    tcase_add_test(tests, each_answers_for_itself);
    tcase_add_test(tests, each_answers_of_faults_for_itself);
    tcase_add_test(tests, plans_side_by_side);
    tcase_add_test(tests, checks_go_by_the_edition_of_their_plan);
    tcase_add_test(tests, a_factor_names_the_table_of_its_edition);
    suite_add_tcase(suite, tests);
    return suite;
}

int main(void)
{
    return run_suite(editions());
}
