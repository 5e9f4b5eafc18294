/* A route that uses every key: each value arrives in its place and unit, with its mark; line ends change nothing. */
#include "read_route.h"
#include "test_read.h"

#include <stdlib.h>
#include <string.h>

#define GOOD TESTS_FOLDER "/unit/read_good.yaml"

static bool near(double a, double b)
{
    return a - b < 1e-9 && b - a < 1e-9;
}

/* A written quantity: its value and its line. */
#define IS(quantity, expected, on_line)                                                                                \
    do {                                                                                                               \
        ck_assert((quantity).given);                                                                                   \
        ck_assert_msg(near((quantity).value, expected), #quantity " is not " #expected);                               \
        ck_assert_int_eq((quantity).mark.line, on_line);                                                               \
        ck_assert_int_gt((quantity).mark.column, 1);                                                                   \
    } while (false)

struct Good {
    struct Bytes source;
    struct ReadRoute route;
    const struct Survey *survey;
};

static struct Good open_good(void)
{
    struct Good good = {.source = read_route_file(GOOD)};
    good.route = read_route(good.source);
    good.survey = good.route.survey;
    ck_assert_msg(good.survey != NULL, "%s", read_route_reports(&good.route));
    ck_assert_uint_eq(diag_count(good.route.diag), 0);
    return good;
}

static void close_good(struct Good *good)
{
    read_route_free(&good->route);
    free(read_route_own(good->source));
}

START_TEST(job_supply_conditions)
{
    struct Good good = open_good();
    const struct Job *job = &good.survey->job;
    ck_assert_str_eq(job->title, "Weir hut pump and lights");
    ck_assert_str_eq(job->site, "Sluice Lane, Fennybrook");
    ck_assert_str_eq(job->reference, "R-0208");
    ck_assert_str_eq(job->customer, "Fennybrook Mill Trust");
    ck_assert_str_eq(job->surveyor, "J. Alder");
    ck_assert_str_eq(job->surveyed, "2026-02-28");
    ck_assert_str_eq(job->notes, "Key from the mill. Mind the step.");
    const struct Supply *supply = &good.survey->supply;
    ck_assert_int_eq(supply->mark.line, 13);
    ck_assert_int_eq(supply->system, SYSTEM_TN_S);
    ck_assert_int_eq(supply->phases, 3);
    IS(supply->voltage_v, 230, 16);
    IS(supply->loop_ohm, 0.28, 17);
    IS(supply->fault_current_a, 2400, 18);
    IS(supply->drop_before_percent, 0.5, 19);
    IS(supply->neutral_mm2, 25, 20);
    IS(supply->earthing_conductor_mm2, 10, 21);
    ck_assert(!supply->electrode_ohm.given);
    const struct Conditions *conditions = &good.survey->conditions;
    IS(conditions->air_degc, 35, 23);
    IS(conditions->ground_degc, 15, 24);
    IS(conditions->soil_thermal_k_m_per_w, 1.8, 25);
    IS(conditions->soil_electrical_ohm_m, 60, 26);
    IS(conditions->terminals_degc, 70, 27);
    ck_assert_int_eq(conditions->terminals_degc.mark.column, 14);
    close_good(&good);
}
END_TEST

START_TEST(earthing_and_parts)
{
    struct Good good = open_good();
    const struct Earthing *earthing = &good.survey->earthing;
    ck_assert(earthing->given);
    ck_assert_int_eq(earthing->far_end, FAR_END_ISLAND);
    ck_assert(earthing->has_electrode);
    IS(earthing->rods, 2, 30);
    IS(earthing->rod_length_m, 2.4, 30);
    IS(earthing->rod_diameter_mm, 16, 30);
    IS(earthing->rod_spacing_m, 3, 30);
    IS(earthing->measured_ohm, 41, 30);
    IS(earthing->board_residual_a, 0.03, 31);
    ck_assert(earthing->extraneous_parts && earthing->extraneous_parts_given);
    IS(good.survey->parts.spare_cable_percent, 8, 99);
    IS(good.survey->parts.spare_fixings_percent, 15, 100);
    ck_assert_str_eq(good.survey->parts.prices, "list 2026.csv");
    ck_assert_str_eq(good.survey->parts.labour, "labour 2026.yaml");
    ck_assert_int_eq(good.survey->parts.stock_count, 1);
    const struct Stock *stock = &good.survey->parts.stock[0];
    ck_assert_str_eq(good.survey->runs[stock->run].name, "feeder");
    ck_assert(!stock->duct_size_mm.given);
    ck_assert_int_eq(stock->mark.line, 104);
    ck_assert_int_eq(stock->length_count, 2);
    ck_assert_double_eq(stock->lengths[0].length_m.value, 100);
    ck_assert_double_eq(stock->lengths[0].have.value, 2);
    ck_assert_double_eq(stock->lengths[1].length_m.value, 50);
    ck_assert(!stock->lengths[1].have.given);
    ck_assert_int_eq(stock->offcut_count, 1); /* a single one needs no brackets */
    ck_assert_double_eq(stock->offcuts_m[0], 12.5);
    ck_assert(!good.survey->has_readings);
    ck_assert(good.survey->complete && good.survey->complete_given);
    close_good(&good);
}
END_TEST

static void check_feeder(const struct Run *run)
{
    ck_assert_str_eq(run->name, "feeder");
    ck_assert_int_eq(run->kind, RUN_POWER);
    ck_assert_str_eq(run->serves, "Weir hut board");
    ck_assert_int_eq(run->feeds, FEEDS_BOARD);
    ck_assert_int_eq(run->use, USE_MOTOR);
    ck_assert_int_eq(run->load_count, 2);
    IS(run->loads[0].power_w, 4000, 40);
    IS(run->loads[0].power_factor, 0.8, 40);
    IS(run->loads[0].diversity, 0.9, 40);
    ck_assert_int_eq(run->loads[0].phases, 3);
    ck_assert(!run->loads[0].current_a.given && !run->loads[0].power_is_apparent);
    IS(run->loads[1].current_a, 6, 41);
    ck_assert_int_eq(run->loads[1].phases, 1);
    ck_assert(!run->loads[1].power_factor.given);
    const struct Device *device = &run->device;
    ck_assert(device->given && device->kind_given && device->curve_given && device->residual_type_given);
    ck_assert_int_eq(device->kind, DEVICE_RCBO);
    ck_assert_int_eq(device->curve, CURVE_C);
    IS(device->rating_a, 32, 42);
    IS(device->residual_a, 0.1, 42);
    ck_assert_int_eq(device->residual_type, RESIDUAL_A);
    ck_assert(device->time_delayed);
    ck_assert(device->senses_neutral && device->senses_neutral_given);
    IS(device->breaking_capacity_a, 10000, 42);
    IS(device->trip_5_s_a, 250, 42);
}

START_TEST(a_power_run)
{
    struct Good good = open_good();
    ck_assert_int_eq(good.survey->run_count, 4);
    const struct Run *run = &good.survey->runs[0];
    check_feeder(run);
    ck_assert_int_eq(run->cable.type, CABLE_BS5467);
    ck_assert_int_eq(run->cable.cores, 4);
    ck_assert(!run->cable.size_mm2.given && !run->cable.diameter_mm.given);
    ck_assert_int_eq(run->cable.cpc, CPC_SEPARATE);
    ck_assert_int_eq(run->cable.cpc_run, 2);
    IS(run->drop_limit_percent, 4, 44);
    IS(run->third_harmonic_percent, 12, 45);
    IS(run->start_multiple, 6, 46);
    ck_assert(!run->start_current_a.given);
    ck_assert_int_eq(run->start.into, INTO_ENCLOSURE);
    IS(run->start.tail_m, 0.6, 47);
    IS(run->start.loop_m, 0, 47);
    ck_assert_int_eq(run->finish.into, INTO_TERMINAL_BOX);
    ck_assert_int_eq(run->finish.place, PLACE_WET);
    IS(run->finish.tail_m, 0.8, 48);
    IS(run->finish.loop_m, 0.5, 48);
    IS(run->finish.room_m, 0.25, 48);
    ck_assert_int_eq(run->start.from, FROM_METER_TAILS);
    ck_assert(run->start.from_given && !run->finish.from_given);
    IS(run->start.tails_m, 1.8, 47);
    ck_assert_int_eq(run->finish.entry, ENTRY_BOTTOM);
    ck_assert(!run->start.room_m.given);
    ck_assert_int_eq(run->start.entry, ENTRY_COUNT);
    ck_assert(run->pull.given && run->pull.lubricant && run->pull.lubricant_given);
    ck_assert_int_eq(run->pull.from, DRUM_FINISH);
    IS(run->pull.friction, 0.4, 49);
    ck_assert_int_eq(run->along_count, 15); /* left out: all of them, in order */
    for (int i = 0; i < 15; i++) {
        ck_assert_int_eq(run->along[i], i);
    }
    close_good(&good);
}
END_TEST

START_TEST(the_other_runs)
{
    struct Good good = open_good();
    const struct Run *lights = &good.survey->runs[1];
    ck_assert_int_eq(lights->use, USE_LIGHTING);
    IS(lights->cable.size_mm2, 2.5, 53);
    ck_assert(!lights->pull.given && !lights->pull.friction.given && !lights->pull.lubricant);
    ck_assert_int_eq(lights->pull.from, DRUM_COUNT);
    ck_assert_int_eq(lights->along_count, 3);
    ck_assert_int_eq(lights->along[0], 0);
    ck_assert_int_eq(lights->along[1], 1);
    ck_assert_int_eq(lights->along[2], 2);
    ck_assert_int_eq(lights->cable.cpc_run, -1);
    const struct Run *bond = &good.survey->runs[2];
    ck_assert_int_eq(bond->kind, RUN_EARTH);
    ck_assert_int_eq(bond->cable.type, CABLE_BS6004_SINGLE);
    IS(bond->cable.size_mm2, 10, 57);
    IS(bond->cable.diameter_mm, 6.5, 57);
    ck_assert_int_eq(bond->cable.cpc, CPC_NONE);
    ck_assert_int_eq(bond->load_count, 0);
    const struct Run *link = &good.survey->runs[3];
    ck_assert_int_eq(link->kind, RUN_DATA);
    ck_assert_int_eq(link->cable.cores, 8);
    IS(link->cable.diameter_mm, 8.1, 60);
    ck_assert_int_eq(link->mark.line, 58);
    close_good(&good);
}
END_TEST

START_TEST(segments_in_air)
{
    struct Good good = open_good();
    ck_assert_int_eq(good.survey->segment_count, 15);
    const struct Segment *at = good.survey->segments;
    for (int way = 0; way < WAY_COUNT; way++) {
        int with = 0;
        for (int i = 0; i < 15; i++) {
            with += (int)at[i].way == way;
        }
        ck_assert_int_eq(with, 1); /* each way once */
    }
    ck_assert_str_eq(at[0].name, "intake");
    IS(at[0].size_mm, 50, 65);
    IS(at[0].height_mm, 75, 65);
    ck_assert(at[0].has_beside && at[0].beside.arrangement_given);
    ck_assert_int_eq(at[0].beside.circuits, 3);
    IS(at[0].heading_deg, 67.5, 67);
    ck_assert(!at[0].air_degc.given && near(at[0].air_degc.value, 35)); /* taken over */
    IS(at[1].rise_m, -1.5, 71);
    ck_assert_int_eq(at[1].fixed_to, SURFACE_BRICK);
    ck_assert_int_eq(at[1].sun, SUN_FULL);
    ck_assert_int_eq(at[1].insulation, INSULATION_ONE_SIDE);
    IS(at[1].insulated_length_m, 0.4, 75);
    ck_assert_int_eq(at[1].bend_count, 2);
    ck_assert(near(at[1].bends[0].angle_deg, 90) && !at[1].bends[1].radius_m.given);
    ck_assert_str_eq(at[1].notes, "behind the downpipe");
    IS(at[2].air_degc, 40, 78);
    IS(at[2].heading_deg, 90, 78);
    ck_assert(at[2].measured == MEASURED_LASER && at[1].measured == MEASURED_COUNT && !at[2].measure_again);
    ck_assert(at[2].photo_count == 1 && at[1].photo_count == 0);
    ck_assert_str_eq(at[2].photos[0], "rail.jpg");
    ck_assert(at[6].photo_count == 2);
    ck_assert_str_eq(at[6].photos[1], "lath-2.jpg");
    ck_assert(!at[4].insulated_length_m.given && near(at[4].insulated_length_m.value, 5)); /* all of it */
    ck_assert(at[4].drawn && !at[3].drawn);
    ck_assert_int_eq(at[4].pits, PITS_END);
    ck_assert_int_eq(at[3].pits, PITS_NONE);
    IS(at[7].thickness_m, 0.1, 83);
    ck_assert_int_eq(at[7].fixed_to, SURFACE_COUNT);
    IS(at[8].length_m, 0.4, 84);
    IS(at[8].thickness_m, 0.35, 84);
    ck_assert_int_eq(at[8].wall, WALL_INSULATED_CAVITY);
    ck_assert(at[8].fire_barrier && at[8].sleeve);
    IS(at[9].size_mm, 25, 85);
    ck_assert_int_eq(at[9].material, MATERIAL_STEEL);
    ck_assert_int_eq(at[10].bend_count, 1);
    IS(at[10].bends[0].radius_m, 0.25, 86);
    close_good(&good);
}
END_TEST

START_TEST(segments_in_the_ground)
{
    struct Good good = open_good();
    const struct Segment *yard = &good.survey->segments[13];
    ck_assert_int_eq(yard->way, WAY_DUCT);
    ck_assert_int_eq(yard->mark.line, 89);
    ck_assert_int_eq(yard->mark.column, 11);
    IS(yard->duct_size_mm, 63, 92);
    IS(yard->duct_bore_mm, 50, 92);
    ck_assert_int_eq(yard->duct_laid, LAID_EXISTING);
    ck_assert(yard->duct_rope);
    IS(yard->depth_m, 0.6, 93);
    ck_assert_int_eq(yard->under, UNDER_DRIVE);
    ck_assert_int_eq(yard->dig, DIG_MACHINE);
    ck_assert_int_eq(yard->beside.arrangement, ARRANGEMENT_DUCT_SPACED);
    IS(yard->beside.gap_m, 0.25, 96);
    ck_assert_int_eq(yard->beside.mark.line, 96);
    const struct Segment *bank = &good.survey->segments[14];
    IS(bank->depth_m, 0.75, 97);
    IS(bank->ground_degc, 20, 97);
    IS(bank->soil_thermal_k_m_per_w, 2.5, 97);
    ck_assert(!yard->soil_thermal_k_m_per_w.given && near(yard->soil_thermal_k_m_per_w.value, 1.8));
    ck_assert_int_eq(bank->dig, DIG_HAND);
    ck_assert_int_eq(bank->material, MATERIAL_COUNT);
    ck_assert(!bank->has_beside && bank->bend_count == 0);
    ck_assert_str_eq(bank->notes, "");
    close_good(&good);
}
END_TEST

/* The good route with other line ends, a byte order mark, or none at its end. */
static struct Bytes with_line_ends(struct Bytes source, const char *line_end, bool bom)
{
    char *data = malloc(source.length * 2 + 4);
    ck_assert_ptr_nonnull(data);
    size_t length = 0;
    for (const char *mark = bom ? "\xEF\xBB\xBF" : ""; *mark != '\0'; mark++) {
        data[length++] = *mark;
    }
    for (size_t i = 0; i < source.length; i++) {
        if (source.data[i] == '\n') {
            for (const char *end = line_end; *end != '\0'; end++) {
                data[length++] = *end;
            }
        } else {
            data[length++] = source.data[i];
        }
    }
    return (struct Bytes){data, length};
}

static const char *const line_ends[] = {"\n", "\r\n", "\r"};

START_TEST(line_ends_change_nothing)
{
    struct Good good = open_good();
    struct Bytes other = with_line_ends(good.source, line_ends[_i / 2], _i % 2 == 1);
    struct ReadRoute route = read_route(other);
    ck_assert_msg(route.survey != NULL, "%s", read_route_reports(&route));
    ck_assert_uint_eq(diag_count(route.diag), 0);
    ck_assert_str_eq(route.survey->job.notes, good.survey->job.notes);
    ck_assert_int_eq(route.survey->assumed_count, good.survey->assumed_count);
    for (int i = 0; i < good.survey->segment_count; i++) {
        ck_assert_str_eq(route.survey->segments[i].name, good.survey->segments[i].name);
        ck_assert_int_eq(route.survey->segments[i].mark.line, good.survey->segments[i].mark.line);
        ck_assert_int_eq(route.survey->segments[i].mark.column, good.survey->segments[i].mark.column);
    }
    read_route_free(&route);
    free(read_route_own(other));
    close_good(&good);
}
END_TEST

/* Key order, brackets, quotes and comments are not the survey. */
START_TEST(another_hand_writes_the_same)
{
    struct ReadRoute block = read_route_text("wend: 1\njob:\n  title: t\nsupply:\n  system: TT\n  voltage: 240 V\n"
                                             "runs:\n  feeder:\n    load:\n      - power: 3 kW\n    cable:\n"
                                             "      type: BS5467\n      cores: 3\nsegments:\n- name: a\n  way: wall\n"
                                             "  length: 4.5 m\n");
    struct ReadRoute flow =
        read_route_text("# first\n---\n{'wend': '1', \"segments\": [{length: \"4.5m\", way: 'wall', "
                        "name: a}],\n runs: {feeder: {cable: {cores: '3', type: BS5467}, load: "
                        "{power: 3kW}}}, # second\n supply: {voltage: 240V, system: TT}, job: "
                        "{title: 't'}}\n...\n");
    ck_assert_msg(block.survey != NULL, "%s", read_route_reports(&block));
    ck_assert_msg(flow.survey != NULL, "%s", read_route_reports(&flow));
    ck_assert(near(block.survey->supply.voltage_v.value, 240) && near(flow.survey->supply.voltage_v.value, 240));
    ck_assert(near(block.survey->segments[0].length_m.value, 4.5));
    ck_assert(near(flow.survey->segments[0].length_m.value, 4.5));
    ck_assert(near(flow.survey->runs[0].loads[0].power_w.value, 3000));
    ck_assert_int_eq(flow.survey->runs[0].cable.cores, 3);
    ck_assert_int_eq(block.survey->runs[0].load_count, flow.survey->runs[0].load_count);
    read_route_free(&block);
    read_route_free(&flow);
}
END_TEST

static void check_manual_names(const char *manual, enum WordList list)
{
    for (int i = 0; i < survey_word_count(list); i++) {
        ck_assert_msg(strstr(manual, survey_word(list, i)) != NULL, "the manual lacks %s", survey_word(list, i));
    }
}

START_TEST(the_manual_names_every_word)
{
    struct Arena *arena = arena_new();
    const char *manual = read_manual(arena);
    for (int list = 0; list < WORDS_COUNT; list++) {
        check_manual_names(manual, (enum WordList)list);
    }
    static const char *const keys[] = {"wend",          "loop-impedance",    "soil-electrical", "board-residual",
                                       "power-factor",  "breaking-capacity", "cpc-run",         "insulated-length",
                                       "spare-fixings", "readings"};
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++) {
        ck_assert_msg(strstr(manual, keys[i]) != NULL, "the manual lacks %s", keys[i]);
    }
    size_t column = 0;
    for (const char *at = manual; *at != '\0'; at++) {
        column = *at == '\n' ? 0 : column + (((unsigned char)*at & 0xC0) != 0x80);
        ck_assert_uint_le(column, 80);
    }
    ck_assert_uint_eq(column, 0);
    arena_free(arena);
    arena = arena_new();
    arena_fail_after(arena, 0);
    ck_assert_str_eq(read_manual(arena), "");
    arena_free(arena);
}
END_TEST

TCase *read_good_tests(void)
{
    TCase *tests = tcase_create("good");
    tcase_add_test(tests, job_supply_conditions);
    tcase_add_test(tests, earthing_and_parts);
    tcase_add_test(tests, a_power_run);
    tcase_add_test(tests, the_other_runs);
    tcase_add_test(tests, segments_in_air);
    tcase_add_test(tests, segments_in_the_ground);
    tcase_add_loop_test(tests, line_ends_change_nothing, 0, 6);
    tcase_add_test(tests, another_hand_writes_the_same);
    tcase_add_test(tests, the_manual_names_every_word);
    return tests;
}
