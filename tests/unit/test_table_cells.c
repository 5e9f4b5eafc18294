/* What `wend table` prints of each table: at least one figure, and each of them what the look-up answers that the
 * design asks. */
#include "survey/survey.h"
#include "table_suites.h"
#include "tables/fault_tables.h"
#include "tables/mechanics_tables.h"
#include "tables/takeoff_tables.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { COLUMNS = 24, TEXT_MOST = 96, ROWS_MOST = 100 };

/* A printed table; `row` is the one that is looked at. */
struct Printed {
    const char *title;
    char heads[COLUMNS][TEXT_MOST], cells[ROWS_MOST][COLUMNS][TEXT_MOST];
    int columns, rows, row, held; /* figures that were held against a look-up */
};

static int split(const char *line, char cells[COLUMNS][TEXT_MOST])
{
    int count = 0;
    for (const char *at = line;; at++) {
        const size_t length = strcspn(at, ",\n");
        ck_assert_int_lt(count, COLUMNS);
        ck_assert_uint_lt(length, TEXT_MOST);
        memcpy(cells[count], at, length);
        cells[count++][length] = '\0';
        at += length;
        if (*at != ',') {
            return count;
        }
    }
}

static void read_cells(int index, struct Printed *out)
{
    struct Arena *arena = arena_new();
    struct TextBuilder shown = text_builder(arena);
    *out = (struct Printed){.title = tables_at(index)->title};
    ck_assert(tables_cells(index, &shown));
    const char *at = text_done(&shown);
    out->columns = split(at, out->heads);
    for (at = strchr(at, '\n') + 1; *at != '\0'; at = strchr(at, '\n') + 1) {
        ck_assert_int_lt(out->rows, ROWS_MOST);
        ck_assert_msg(split(at, out->cells[out->rows++]) == out->columns, "%s: a row of %s", out->title, at);
    }
    arena_free(arena);
}

static const char *text(const struct Printed *table, int column)
{
    return table->cells[table->row][column];
}
/* A figure of the row: endless for "beyond", -1 for a blank cell. */
static double figure(const struct Printed *table, int column)
{
    const char *cell = text(table, column);
    return strcmp(cell, "beyond") == 0 ? INFINITY : *cell == '\0' ? -1 : strtod(cell, NULL);
}
/* The same where a look-up has to be asked within a band without end. */
static double within(const struct Printed *table, int column)
{
    const double value = figure(table, column);
    return isinf(value) ? 900 : value;
}
static void holds(struct Printed *table, int column, bool found, double answer)
{
    const double printed = figure(table, column);
    if (!found) {
        ck_assert_msg(*text(table, column) == '\0', "%s: \"%s\", and the look-up has none", table->title,
                      text(table, column));
        return;
    }
    ck_assert_msg(isfinite(answer) && fabs(printed - answer) <= 1e-8 * fabs(answer),
                  "%s, row %d, %s: %s printed, %.10g answered", table->title, table->row + 1, table->heads[column],
                  text(table, column), answer);
    table->held++;
}
static void is_text(struct Printed *table, int column, const char *answer)
{
    ck_assert_msg(strcmp(text(table, column), answer) == 0, "%s: %s printed, %s answered", table->title,
                  text(table, column), answer);
    table->held++;
}

/* ---- families ---- */

static bool capacity(struct Printed *table, int index)
{
    for (int column = 1; column < table->columns; column++) {
        char method[8];
        int loaded = 0;
        double amperes = 0;
        ck_assert_int_eq(sscanf(table->heads[column], "%7s %d loaded A", method, &loaded), 2);
        int of = 0;
        while (strcmp(method_name((enum Method)of), method) != 0) {
            ck_assert_int_lt(++of, METHOD_COUNT);
        }
        const bool has = capacity_amperes(edition_held(), (enum CapacityTable)index, figure(table, 0), (enum Method)of,
                                          loaded, &amperes);
        holds(table, column, has, amperes);
    }
    return true;
}

static bool drop(struct Printed *table, int index)
{
    double dc = 0;
    const bool has_dc = drop_figure_dc(edition_held(), (enum DropTable)index, figure(table, 0), &dc);
    holds(table, 1, has_dc, dc);
    for (int phases = 1; phases <= 3; phases += 2) {
        struct DropFigure found = {.split = false};
        const int column = phases == 1 ? 2 : 5;
        const bool has = drop_figure(edition_held(), (enum DropTable)index, figure(table, 0), phases, &found);
        holds(table, column, has, found.r);
        holds(table, column + 1, has && found.split, found.x);
        holds(table, column + 2, has, found.z);
    }
    return true;
}

static bool factor_of(int table, double key, int column, struct Figure *out)
{
    const struct Edition *edition = edition_held();
    const double degc = column == 0 ? 70 : 90;
    switch ((enum FactorTables)table) {
    case FACTORS_AIR: return ambient_air(edition, degc, key, out);
    case FACTORS_GROUND: return ambient_ground(edition, degc, key, out);
    case FACTORS_SOIL: return soil_resistivity(edition, key, column == 0, out);
    case FACTORS_DEPTH: return laying_depth(edition, key, column == 1, out);
    case FACTORS_INSULATION: return insulation_length(edition, key, out);
    case FACTORS_GROUPED_AIR: {
        static const enum GroupAir columns[] = {GROUP_BUNCHED, GROUP_WALL_LAYER, GROUP_TRAY_LAYER, GROUP_LADDER_LAYER};
        return grouping_air(edition, columns[column], (int)key, out);
    }
    case FACTORS_GROUPED_CEILING: return grouping_air(edition, GROUP_CEILING_LAYER, (int)key, out);
    case FACTORS_GROUPED_BURIED: return grouping_buried(edition, (enum GroupBuried)column, (int)key, out);
    case FACTORS_GROUPED_DUCTS: return grouping_ducts(edition, (enum GroupDucts)column, (int)key, out);
    case FACTORS_COUNT: break;
    }
    return false;
}

static bool factors(struct Printed *table, int index)
{
    for (int column = 1; column < table->columns; column++) {
        struct Figure found = {.value = 0};
        const bool has = factor_of(index, figure(table, 0), column - 1, &found);
        holds(table, column, has, found.value);
    }
    return true;
}

static bool of_family(struct Printed *table, int index)
{
    if (index < CAPACITY_COUNT) {
        return capacity(table, index);
    }
    if (index < CAPACITY_COUNT + DROP_COUNT) {
        return drop(table, index - CAPACITY_COUNT);
    }
    index -= CAPACITY_COUNT + DROP_COUNT;
    return index < FACTORS_COUNT && factors(table, index);
}

/* ---- devices and faults ---- */

static bool of_device(struct Printed *table, const struct TableRef *ref)
{
    for (int kind = 0; kind < DEVICE_COUNT; kind++) {
        const double *ratings_a = NULL;
        if (ref == device_ratings_ref((enum DeviceKind)kind)) {
            ck_assert_int_eq(device_ratings((enum DeviceKind)kind, &ratings_a), table->rows);
            holds(table, 0, true, ratings_a[table->row]);
            return true;
        }
        if (ref == device_trip_ref(edition_held(), (enum DeviceKind)kind) && kind != DEVICE_MCB &&
            kind != DEVICE_RCBO) {
            for (int column = 1; column <= 2; column++) {
                double current_a = 0;
                const bool found = device_trip_current(edition_held(), (enum DeviceKind)kind, CURVE_B, figure(table, 0),
                                                       column == 1 ? 0.4 : 5, &current_a);
                holds(table, column, found, found ? 0.95 * 230 / current_a : INFINITY);
            }
            return true;
        }
    }
    return false;
}

static void breakers(struct Printed *table)
{
    const enum Curve curve = (enum Curve)(text(table, 0)[0] - 'B');
    const double rating_a = *text(table, 1) == '\0' ? 20 : within(table, 1);
    double current_a = 0;
    double late_s = 0;
    if (strcmp(text(table, 2), "at once") == 0) {
        const bool found = device_trip_current(edition_held(), DEVICE_MCB, curve, rating_a, 0.1, &current_a);
        holds(table, 3, found, current_a / rating_a);
        return;
    }
    ck_assert(device_trip_late(curve, rating_a, &current_a, &late_s));
    holds(table, 3, true, current_a / rating_a);
    ck_assert(late_s > 0 && fabs(strtod(text(table, 2) + strlen("within "), NULL) - late_s) < 1e-9);
}

static void disconnection(struct Printed *table)
{
    const bool final_circuit = strcmp(text(table, 0), "final") == 0;
    for (int tt = 0; tt < 2; tt++) {
        holds(table, 2 + tt, true,
              disconnection_time_s(edition_held(), tt == 1, final_circuit, final_circuit ? within(table, 1) : 230));
    }
}

static void k_values(struct Printed *table)
{
    static const char *const titles[] = {"k of copper live conductors", "k of separate copper protective conductors",
                                         "k of copper cores as protective conductors", "k of steel armour"};
    for (int i = 0; i < 4; i++) {
        if (strcmp(table->title, titles[i]) == 0) {
            holds(table, 1, true, k_value(edition_held(), (enum KTable)i, figure(table, 0)));
        }
    }
}

static void protective(struct Printed *table)
{
    static const double lines_mm2[] = {10, 25, 70};
    const double least_mm2 = protective_by_table_mm2(edition_held(), lines_mm2[table->row], 143, 143);
    const double printed_mm2 = strcmp(text(table, 1), "as the line") == 0     ? lines_mm2[table->row]
                               : strcmp(text(table, 1), "half the line") == 0 ? lines_mm2[table->row] / 2
                                                                              : figure(table, 1);
    ck_assert(fabs(least_mm2 - printed_mm2) < 1e-9);
    static const char *const bands[] = {"up to 16", "up to 35", "above"};
    is_text(table, 0, bands[table->row]);
}

static void bonding(struct Printed *table)
{
    double least_mm2 = 0;
    const bool found = bonding_tn_c_s(edition_held(), within(table, 0), &least_mm2);
    holds(table, 1, found, least_mm2);
}

static void buried_earthing(struct Printed *table)
{
    for (int protected = 0; protected < 2; protected ++) {
        holds(table, 1 + protected, true,
              buried_earthing_mm2(edition_held(), strcmp(text(table, 0), "sheathed") == 0, protected == 1));
    }
}

static void let_through(struct Printed *table)
{
    for (int column = 2; column < table->columns; column++) {
        double most_a2s = 0;
        const double capacity_a = strtod(table->heads[column] + strlen("A2 s at "), NULL);
        const bool found =
            let_through_class_3((enum Curve)(text(table, 0)[0] - 'B'), figure(table, 1), capacity_a, &most_a2s);
        holds(table, column, found, most_a2s);
    }
}

static void first_loop(struct Printed *table)
{
    holds(table, 1, true, first_loop_factor(isinf(figure(table, 0)) ? 20000 : figure(table, 0)));
}

static void residual_times(struct Printed *table)
{
    const int multiple = (int)figure(table, 0);
    for (int column = 1; column <= 3; column++) {
        double time_s = 0;
        const bool found =
            column == 3 ? residual_shortest_s(multiple, &time_s) : residual_time_s(column == 2, multiple, &time_s);
        holds(table, column, found, time_s);
    }
}

static void residual_limit(struct Printed *table)
{
    holds(table, 1, true, residual_loop_limit_ohm(edition_held(), figure(table, 0)));
}

static void singles(struct Printed *table, const double *answers, int count)
{
    if (table->row < count) {
        holds(table, 1, true, answers[table->row]);
    }
}

static void voltage(struct Printed *table)
{
    ck_assert_int_eq(table->rows, 2);
    singles(table, (const double[]){voltage_factor_least(edition_held()), voltage_factor_greatest(edition_held())}, 2);
}

static void locations(struct Printed *table)
{
    const struct LocationRule *rule = location_rule_at(edition_held(), table->row);
    ck_assert_int_eq(table->rows, location_rule_count(edition_held()));
    is_text(table, 0, survey_word(WORDS_LOCATION, (int)rule->location));
    if (rule->topic == TOPIC_EARTH) {
        is_text(table, 2, (int)rule->value == EARTH_REFUSED ? "refused" : "with a bonded grid");
    } else if (rule->topic == TOPIC_REFUSED) {
        is_text(table, 2, "not held");
    } else {
        holds(table, 2, true, rule->value);
    }
    holds(table, 3, rule->up_to_a > 0, rule->up_to_a);
    char clause[64];
    snprintf(clause, sizeof clause, "%s%s", rule->clause, rule->by == RULE_BY_NOTE ? " note" : "");
    is_text(table, 4, clause);
    static const char *const sure[] = {"two sources", "one seen", "from memory"};
    is_text(table, 5, sure[rule->trust]);
}

static void harmonic(struct Printed *table)
{
    bool on_neutral = false;
    holds(table, 1, true, harmonic_factor(within(table, 0), &on_neutral));
    is_text(table, 2, on_neutral ? "neutral" : "line");
}

/* ---- cables and what goes with them ---- */

static void unlike(struct Printed *table)
{
    holds(table, 1, true, grouping_unlike((int)figure(table, 0)));
}

static void resistance(struct Printed *table)
{
    double ohm_per_m = 0;
    ck_assert_int_eq(table->rows, 20); /* every size of the print, the small ones too */
    const bool found = conductor_resistance(figure(table, 0), &ohm_per_m);
    holds(table, 1, found, ohm_per_m * 1000);
}

static struct CableDimensions dimensions_of(struct Printed *table)
{
    struct CableDimensions cable;
    ck_assert(cable_dimensions(CABLE_BS5467, (int)figure(table, 0), figure(table, 1), &cable));
    return cable;
}

static void dimensions(struct Printed *table)
{
    const struct CableDimensions cable = dimensions_of(table);
    const double answers[] = {cable.under_armour_mm, cable.overall_mm, cable.wire_mm, cable.weight_kg_per_km};
    for (int i = 0; i < 4; i++) {
        holds(table, 2 + i, true, answers[i]);
    }
}

static void usual_glands(struct Printed *table)
{
    is_text(table, 2, dimensions_of(table).usual_gland);
}

static void gland_threads(struct Printed *table)
{
    const char *thread = "";
    ck_assert(gland_thread(text(table, 0), &thread));
    is_text(table, 1, thread);
}

static void gland_ranges(struct Printed *table)
{
    struct GlandRange range;
    ck_assert(gland_range(text(table, 0), &range));
    const double answers[] = {range.inner_min_mm, range.inner_max_mm, range.outer_min_mm, range.outer_max_mm};
    for (int i = 0; i < 4; i++) {
        holds(table, 1 + i, true, answers[i]);
    }
}

static void supports(struct Printed *table)
{
    for (int column = 1; column <= 4; column++) {
        double spacing_m = 0;
        const bool found = support_spacing(column <= 2, figure(table, 0), column % 2 == 0, &spacing_m);
        holds(table, column, found, spacing_m * 1000);
    }
}

static void hook_cleats(struct Printed *table)
{
    int number = 0;
    const bool found = hook_cleat(figure(table, 1), &number);
    holds(table, 0, found, number);
}

static void armour(struct Printed *table)
{
    struct Armour found;
    ck_assert(armour_figures(CABLE_BS5467, (int)figure(table, 0), figure(table, 1), &found));
    holds(table, 2, true, found.area_mm2);
    holds(table, 3, true, found.max_ohm_per_m * 1000);
    holds(table, 4, true, found.min_ohm_per_m * 1000);
}

static void bends(struct Printed *table)
{
    double factor = 0;
    const bool found = strcmp(text(table, 0), "armoured") == 0
                           ? bend_radius_factor(CABLE_BS5467, within(table, 1), 20, &factor)
                           : bend_radius_factor(CABLE_BS6004_FLAT, 2.5, within(table, 2), &factor);
    holds(table, 3, found, factor);
}

static void bends_data(struct Printed *table)
{
    holds(table, 1, true, bend_radius_data_factor(strcmp(text(table, 0), "screened") == 0));
}

static void bends_drawn(struct Printed *table)
{
    double factor = 0;
    const bool data = strcmp(text(table, 0), "data") == 0;
    const bool found = bend_radius_drawn_factor(data ? CABLE_EN50288 : CABLE_BS5467, &factor);
    holds(table, 1, found, factor);
}

/* ---- ducts, drawing in, fixings ---- */

static void duct_bores(struct Printed *table)
{
    struct Figure bore = {.value = 0};
    const bool found = duct_bore(figure(table, 0), &bore);
    holds(table, 1, found, bore.value);
}

static void duct_fill(struct Printed *table)
{
    double percent = 0;
    const bool found = duct_fill_allowed((int)figure(table, 0), &percent);
    holds(table, 1, found, percent);
    holds(table, 2, found, percent * duct_fill_bent());
}

/* Tables of single figures, in their order. */
static void trunking_share(struct Printed *table)
{
    singles(table, (const double[]){trunking_fill_percent()}, table->rows);
}

static void armour_loops(struct Printed *table)
{
    const struct ArmourLoop *found = armour_loop();
    ck_assert_int_eq(table->rows, 3);
    singles(table, (const double[]){found->per_k, found->lay, found->reactance_ohm_per_m}, 3);
}

static void flat_cores(struct Printed *table)
{
    double core_mm2 = 0;
    const bool found = flat_protective_core_mm2(figure(table, 0), &core_mm2);
    holds(table, 1, found, core_mm2);
}

static void jam(struct Printed *table)
{
    const struct DuctJam found = duct_jam();
    ck_assert_int_eq(table->rows, 4);
    singles(table, (const double[]){found.low, found.high, found.bent, found.cables}, 4);
}

static void pull(struct Printed *table)
{
    const struct PullLimits *found = pull_limits();
    ck_assert_int_eq(table->rows, 7);
    singles(table,
            (const double[]){found->copper_n_per_mm2, found->stocking_n_per_mm, found->stocking_armour_n_per_mm2,
                             found->sidewall_n_per_m, found->many, found->many_over, found->bends_deg},
            7);
}

static void friction(struct Printed *table)
{
    static const char *const sheaths[] = {"PVC", "PE", "low smoke", "not known"};
    is_text(table, 0, sheaths[table->row]);
    for (int wet = 0; wet < 2; wet++) {
        struct PullFriction found = {.low = 0};
        ck_assert(pull_friction((enum PullSheath)table->row, wet == 1, &found));
        holds(table, 1 + 2 * wet, true, found.low);
        holds(table, 2 + 2 * wet, true, found.high);
    }
}

static void separation(struct Printed *table)
{
    const struct SeparationInGround ground = separation_in_ground();
    double air_mm = 0;
    if (strcmp(text(table, 0), "in air") == 0) {
        const bool found = separation_in_air_mm((int)within(table, 1), &air_mm);
        holds(table, 2, found, air_mm);
    } else {
        holds(table, 2, true,
              strstr(text(table, 0), "earth")     ? ground.earth_mm
              : strstr(text(table, 0), "masonry") ? ground.masonry_mm
                                                  : ground.concrete_mm);
    }
}

static void packs(struct Printed *table)
{
    const struct PackSize found = pack_size((enum PackKind)(PACK_SINGLE + 1 + table->row));
    ck_assert_int_eq(table->rows, PACK_KIND_COUNT - 1);
    is_text(table, 1, found.word);
    holds(table, 2, true, found.pieces);
    ck_assert(*text(table, 0) != '\0' && *text(table, 3) != '\0');
}

static void allowances(struct Printed *table)
{
    const struct OrderAllowances *found = order_allowances();
    ck_assert_int_eq(table->rows, 7);
    singles(table,
            (const double[]){found->duct_percent, found->tape_percent, found->sand_percent, found->rope_m,
                             found->couplers, found->glands, found->gland_top},
            7);
}

static void grips(struct Printed *table)
{
    const bool post = strncmp(text(table, 0), "fence post ", 11) == 0;
    const char *word = text(table, 0) + (post ? 11 : 0);
    int surface = 0;
    while (strcmp(survey_word(WORDS_SURFACE, surface), word) != 0) {
        ck_assert_int_lt(++surface, SURFACE_COUNT);
    }
    const struct SurfaceGrip *found = NULL;
    ck_assert(surface_grip(post ? WAY_FENCE : WAY_WALL, (enum Surface)surface, &found));
    is_text(table, 1, found->screw_code);
    is_text(table, 2, found->plug_code);
    holds(table, 3, found->drill_mm > 0, found->drill_mm);
}

static void conduit(struct Printed *table)
{
    for (int column = 1; column <= 4; column++) {
        double spacing_m = 0;
        const bool found = conduit_spacing(column <= 2 ? MATERIAL_STEEL : MATERIAL_PLASTIC, within(table, 0),
                                           column % 2 == 0, &spacing_m);
        holds(table, column, found, spacing_m);
    }
}

/* The look-up gives the closer of metal and insulating. */
static void trunking(struct Printed *table)
{
    for (int vertical = 0; vertical < 2; vertical++) {
        double spacing_m = 0;
        const double section_mm2 = isinf(figure(table, 0)) ? 9000 : figure(table, 0);
        const bool found = trunking_spacing(section_mm2, vertical == 1, &spacing_m);
        ck_assert(figure(table, 3 + vertical) <= figure(table, 1 + vertical));
        holds(table, 3 + vertical, found, spacing_m);
    }
}

static void containment(struct Printed *table)
{
    const struct ContainmentPractice *found = containment_practice();
    ck_assert_int_eq(table->rows, 8);
    singles(table,
            (const double[]){found->draw_length_m, found->draw_bends_deg, found->expansion_m, found->tray_support_m,
                             found->tray_fixings, found->catenary_end_m, found->catenary_grips, found->near_end_m},
            8);
}

static void wire(struct Printed *table)
{
    struct WireGrips found = {.count = 0};
    ck_assert(wire_grips(figure(table, 0), &found));
    holds(table, 1, true, found.count);
    holds(table, 2, true, found.torque_nm);
}

static void trench(struct Printed *table)
{
    enum { SINGLES = 9 };
    const struct TrenchPractice *found = trench_practice();
    ck_assert_int_eq(table->rows, SINGLES + UNDER_COUNT);
    singles(table,
            (const double[]){found->hand_width_m, found->machine_width_m, found->more_width_m, found->bed_m,
                             found->top_m, found->bulking, found->sand_kg_per_m3, found->tape_above_m, found->brace_m},
            SINGLES);
    if (table->row >= SINGLES) {
        holds(table, 1, true, trench_cover((enum Under)(table->row - SINGLES)));
    }
}

static void tails(struct Printed *table)
{
    const struct TailsPractice *found = tails_practice();
    ck_assert_int_eq(table->rows, 5);
    singles(
        table,
        (const double[]){found->line_mm2, found->earth_mm2, found->up_to_a, found->ask_over_m, found->protect_over_m},
        5);
}

static void holes(struct Printed *table)
{
    enum { SINGLES = 7 };
    const struct WallSeal *seal = wall_seal();
    const double slant = sqrt(1 + 1 / (seal->fall * seal->fall));
    singles(table,
            (const double[]){wall_hole_mm(1), wall_drill_mm(100) - 100 * slant, seal->depth_mm, seal->tube_ml,
                             seal->fall, seal->sleeve_play_mm, seal->core_above_mm},
            SINGLES);
    if (table->row >= SINGLES) {
        double drill_mm = 0;
        const bool found = wall_drill(figure(table, 1) - 0.5, &drill_mm);
        holds(table, 1, found, drill_mm);
    }
}

static void clauses(struct Printed *table)
{
    const struct ClauseFigures *clause = clause_figures();
    const double answers[] = {clause->adiabatic_from_s,      clause->adiabatic_to_s,
                              clause->fuse_short_s,          clause->separate_bare_mm2,
                              clause->separate_enclosed_mm2, clause->separate_bunched_degc,
                              clause->separate_apart_degc,   clause->bond_mm2[0],
                              clause->bond_mm2[1],           clause->bond_mm2[2],
                              clause->bond_mm2[3],           clause->additional_residual_a,
                              clause->charging_residual_a,   clause->insulation_least_mohm,
                              clause->insulation_test_v,     clause->fuse_long_s,
                              clause->final_sockets_a,       clause->final_equipment_a,
                              clause->electrode_steady_ohm,  clause->copper_per_k,
                              clause->armour_cooler_k,       clause->cold_part};
    singles(table, answers, (int)(sizeof answers / sizeof answers[0]));
}

static void practices(struct Printed *table)
{
    const struct DesignPractice *practice = design_practice();
    const double answers[] = {
        practice->thick_wall_m,      practice->supply_electrode_ohm, practice->reactance_above_mm2,
        practice->clear_margin,      practice->half_cycle_s,         practice->start_low_factor,
        practice->start_high_factor, practice->selective_residual_a, practice->rod_deepest_m,
        practice->notify_up_to_a,    practice->supply_most,          practice->separated_circuit_a,
        practice->sun_rise_k,        practice->sun_hottest_degc};
    singles(table, answers, (int)(sizeof answers / sizeof answers[0]));
}

static void clauses_on_ratings(struct Printed *table)
{
    const struct ClauseRatings *found = clause_ratings();
    const double answers[] = {found->overload_semi_enclosed,
                              found->overload_buried,
                              found->surrounded,
                              found->surrounded_from_mm,
                              found->surrounded_enough_mm,
                              found->ceiling_thin_m,
                              found->soil_deepest_m,
                              found->laying_base_m,
                              found->air_degc,
                              found->ground_degc,
                              found->buried_gap_m[0],
                              found->buried_gap_m[1],
                              found->buried_gap_m[2],
                              found->ducts_gap_m[0],
                              found->ducts_gap_m[1],
                              found->ducts_gap_m[2],
                              found->copper_inverse_degc,
                              found->spaced_diameters,
                              found->terminals_more_degc};
    singles(table, answers, (int)(sizeof answers / sizeof answers[0]));
}

static void breakers_hold(struct Printed *table)
{
    holds(table, 1, true, breaker_holds((enum Curve)table->row));
}

static void residual_rated(struct Printed *table)
{
    const double *ratings_a = NULL;
    ck_assert_int_eq(residual_ratings(&ratings_a), table->rows);
    holds(table, 0, true, ratings_a[table->row]);
}

static void meters(struct Printed *table)
{
    singles(table, (const double[]){meter_errors()->of_resistance, meter_errors()->of_time}, 2);
}

static void readings(struct Printed *table)
{
    const struct ReadingPractice *found = reading_practice();
    const double answers[] = {found->band,           found->leads_ohm,       found->coldest_degc,
                              found->warmest_degc,   found->new_cable_mohm,  found->length_shortest,
                              found->length_longest, found->joint_least_ohm, found->joint_most_ohm,
                              found->unlike_from};
    singles(table, answers, (int)(sizeof answers / sizeof answers[0]));
}

static void site(struct Printed *table)
{
    const struct SitePractice *found = site_practice();
    singles(table,
            (const double[]){found->high_m, found->lift_kg, found->roof_summer_degc, found->thickest_cable_m,
                             found->rise_alike_m},
            5);
}

static void counting(struct Printed *table)
{
    const struct TakeoffPractice *found = takeoff_practice();
    const double answers[] = {found->rigid_duct_from_mm, found->compound_m_per_litre, found->rod_section_m,
                              found->earth_lead_m,       found->main_switch_a,        found->longer_conduit_m,
                              found->upright_slope,      found->thinnest_armoured_mm, found->thinnest_mm,
                              found->makes_differ,       found->shaped_first_mm2,     found->shaped_last_mm2};
    singles(table, answers, (int)(sizeof answers / sizeof answers[0]));
}

static void (*reader_of(const struct TableRef *ref))(struct Printed *)
{
    const struct {
        const struct TableRef *ref;
        void (*read)(struct Printed *);
    } readers[] = {
        {device_trip_ref(edition_held(), DEVICE_MCB), breakers},
        {disconnection_time_ref(edition_held()), disconnection},
        {protective_by_table_ref(edition_held()), protective},
        {bonding_tn_c_s_ref(edition_held()), bonding},
        {buried_earthing_ref(edition_held()), buried_earthing},
        {let_through_ref(), let_through},
        {first_loop_ref(), first_loop},
        {residual_time_ref(), residual_times},
        {clause_figures_ref(), clauses},
        {design_practice_ref(), practices},
        {clause_ratings_ref(), clauses_on_ratings},
        {breaker_holds_ref(), breakers_hold},
        {residual_rating_ref(), residual_rated},
        {meter_errors_ref(), meters},
        {reading_practice_ref(), readings},
        {site_practice_ref(), site},
        {takeoff_practice_ref(), counting},
        {residual_loop_limit_ref(edition_held()), residual_limit},
        {location_rule_ref(edition_held()), locations},
        {voltage_factor_ref(edition_held()), voltage},
        {harmonic_ref(), harmonic},
        {grouping_unlike_ref(), unlike},
        {conductor_resistance_ref(), resistance},
        {cable_dimensions_ref(), dimensions},
        {gland_ref(), gland_threads},
        {gland_range_ref(), gland_ranges},
        {support_spacing_ref(), supports},
        {hook_cleat_ref(), hook_cleats},
        {armour_ref(), armour},
        {armour_loop_ref(), armour_loops},
        {flat_protective_core_ref(), flat_cores},
        {bend_radius_ref(), bends},
        {bend_radius_data_ref(), bends_data},
        {bend_radius_drawn_ref(), bends_drawn},
        {duct_bore_ref(), duct_bores},
        {duct_fill_ref(), duct_fill},
        {trunking_fill_ref(), trunking_share},
        {duct_jam_ref(), jam},
        {pull_limits_ref(), pull},
        {pull_friction_ref(), friction},
        {separation_ref(), separation},
        {pack_size_ref(), packs},
        {order_allowances_ref(), allowances},
        {surface_grip_ref(), grips},
        {conduit_spacing_ref(), conduit},
        {trunking_spacing_ref(), trunking},
        {containment_practice_ref(), containment},
        {wire_grips_ref(), wire},
        {trench_practice_ref(), trench},
        {tails_practice_ref(), tails},
        {wall_hole_ref(), holes},
    };
    for (size_t i = 0; i < sizeof readers / sizeof readers[0]; i++) {
        if (readers[i].ref == ref) {
            return readers[i].read;
        }
    }
    if (strcmp(ref->table, "gland column") == 0) {
        return usual_glands;
    }
    return strncmp(ref->title, "k of ", 5) == 0 ? k_values : NULL;
}

START_TEST(every_figure_is_what_the_look_up_answers)
{
    struct Printed *table = malloc(sizeof *table);
    int held = 0;
    ck_assert_ptr_nonnull(table);
    for (int index = 0; index < tables_count(); index++) {
        const struct TableRef *ref = tables_at(index);
        void (*read)(struct Printed *) = reader_of(ref);
        read_cells(index, table);
        for (table->row = 0; table->row < table->rows; table->row++) {
            if (!of_family(table, index) && !of_device(table, ref)) {
                ck_assert_msg(read != NULL, "nobody looks at %s", ref->title);
                read(table);
            }
        }
        ck_assert_msg(table->held >= 1, "%s prints no figure that was looked up", ref->title);
        held += table->held;
    }
    ck_assert_int_gt(held, 1500);
    printf("%d figures of %d tables are what the look-ups answer\n", held, tables_count());
    free(table);
}
END_TEST

/* A second count of the rows that each table has, in the order in which they are listed: none is lost in print. */
START_TEST(every_row_is_printed)
{
    struct Printed *table = malloc(sizeof *table);
    FILE *copy = fopen(TESTS_FOLDER "/published/printed-rows.csv", "r");
    char line[300], row[300];
    ck_assert(table != NULL && copy != NULL && fgets(line, sizeof line, copy) != NULL && *line == '#');
    for (int index = 0; index < tables_count(); index++) {
        read_cells(index, table);
        ck_assert_ptr_nonnull(fgets(line, sizeof line, copy));
        snprintf(row, sizeof row, "%d,%s,%s\n", table->rows, tables_at(index)->table, table->title);
        ck_assert_str_eq(row, line);
    }
    ck_assert_ptr_null(fgets(line, sizeof line, copy));
    fclose(copy);
    free(table);
}
END_TEST

/* A row as it stands in the copy, the name of its table before it. */
static void write_row(const struct Printed *table, const char *name, char *out, size_t room)
{
    int length = snprintf(out, room, "%s", name);
    for (int column = 0; column < table->columns; column++) {
        length += snprintf(out + length, room - (size_t)length, ",%s", text(table, column));
        ck_assert_uint_lt((size_t)length, room);
    }
}

/* Where there is no print to copy, the figures stand a second time all the same: none changes unseen. */
START_TEST(what_is_practice_equals_its_copy)
{
    static const char *const names[] = {"tails",
                                        "trench",
                                        "containment",
                                        "grips",
                                        "wall holes",
                                        "packs",
                                        "allowances",
                                        "jam ratio",
                                        "trunking fill",
                                        "practice",
                                        "ranges",
                                        "gland column",
                                        "clauses on ratings",
                                        "7",
                                        "residual currents",
                                        "meters",
                                        "readings",
                                        "site",
                                        "parts"};
    struct Printed *table = malloc(sizeof *table);
    FILE *copy = fopen(TESTS_FOLDER "/published/practice.csv", "r");
    char line[200], row[200];
    ck_assert(table != NULL && copy != NULL && fgets(line, sizeof line, copy) != NULL && *line == '#');
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        int index = 0;
        while (index < tables_count() && strcmp(tables_at(index)->table, names[i]) != 0) {
            index++;
        }
        ck_assert_msg(index < tables_count(), "%s", names[i]);
        read_cells(index, table);
        for (table->row = 0; table->row < table->rows; table->row++) {
            ck_assert_ptr_nonnull(fgets(line, sizeof line, copy));
            line[strcspn(line, "\n")] = '\0';
            write_row(table, names[i], row, sizeof row);
            ck_assert_str_eq(row, line);
        }
    }
    ck_assert_ptr_null(fgets(line, sizeof line, copy));
    fclose(copy);
    free(table);
}
END_TEST

START_TEST(there_is_none_beyond_the_list)
{
    struct Arena *arena = arena_new();
    struct TextBuilder out = text_builder(arena);
    ck_assert(!tables_cells(-1, &out) && !tables_cells(tables_count(), &out));
    ck_assert_uint_eq(out.length, 0);
    arena_free(arena);
}
END_TEST

Suite *suite_table_cells(void)
{
    Suite *suite = suite_create("figures as they are printed");
    TCase *tests = tcase_create("cells");
    tcase_add_test(tests, every_figure_is_what_the_look_up_answers);
    tcase_add_test(tests, every_row_is_printed);
    tcase_add_test(tests, there_is_none_beyond_the_list);
    tcase_add_test(tests, what_is_practice_equals_its_copy);
    suite_add_tcase(suite, tests);
    return suite;
}
