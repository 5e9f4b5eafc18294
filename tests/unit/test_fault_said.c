/* What the checks on faults and earthing say, as data and in words: what a loop lacks, where an energy is from, what an
 * electrode takes to come to its target. */
#include "fault_rig.h"
#include "said.h"

#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

/* The cable and the size that have no figure, and what is then said to be missing. */
START_TEST(a_loop_names_what_it_lacks)
{
    static const struct {
        enum CableType type;
        enum Cpc cpc;
        double size_mm2, separate_mm2;
        enum Saying lacks;
    } rows[] = {
        {CABLE_BS5467, CPC_CORE, 10, 0, SAY_NOTHING},
        {CABLE_BS5467, CPC_ARMOUR, 10, 0, SAY_NOTHING},
        {CABLE_BS5467, CPC_CORE, 11, 0, SAY_LACKS_RESISTANCE_OF_SIZE},
        {CABLE_BS6004_FLAT, CPC_CORE, 16, 0, SAY_NOTHING},
        {CABLE_BS6004_FLAT, CPC_CORE, 25, 0, SAY_LACKS_RESISTANCE_OF_CORE}, /* flat cable ends at 16 mm2 */
        {CABLE_BS6004_FLAT, CPC_ARMOUR, 10, 0, SAY_LACKS_RESISTANCE_OF_ARMOUR},
        {CABLE_BS6004_FLAT, CPC_CORE_AND_ARMOUR, 10, 0, SAY_NOTHING}, /* the core alone is the higher loop */
        {CABLE_BS5467, CPC_SEPARATE, 10, 6, SAY_NOTHING},
        {CABLE_BS5467, CPC_SEPARATE, 10, 0, SAY_LACKS_SIZE_OF_SEPARATE},
        {CABLE_BS5467, CPC_NONE, 10, 0, SAY_LACKS_PROTECTIVE_CONDUCTOR},
    };
    struct Rig rig;
    rig_make(&rig);
    for (int i = 0; i < COUNT_OF(rows); i++) {
        rig_cable(&rig, rows[i].type, 3, rows[i].cpc, 70);
        rig.design.separate_mm2 = rows[i].separate_mm2;
        ck_assert_msg(loop_of_run(&rig.design, rows[i].size_mm2).lacks == rows[i].lacks, "row %d", i);
        if (rows[i].lacks != SAY_NOTHING) {
            const struct Check check = rig_check(&rig, check_disconnection, rows[i].size_mm2);
            ck_assert(check.result == CHECK_FAIL && !check.unknown);
            ck_assert_int_eq(check.text->id, SAY_CUT_OFF_NOT_SHOWN);
            ck_assert_int_eq(check.text->args[0].term, rows[i].lacks);
        }
    }
    rig_cable(&rig, CABLE_BS5467, 3, CPC_CORE, 90);
    rig.design.before_ohm = 0;
    ck_assert_str_eq(plainly(rig_check(&rig, check_disconnection, 10).text),
                     "It cannot be shown that a fault is cut off: the electrode's resistance is not known (supply: "
                     "electrode-resistance).");
    rig_free(&rig);
}
END_TEST

/* A breaker of type B opens at once at 5 In, of type D at 20 In and late from 10 In on; a gG fuse of 32 A takes 5 s at
 * 119 A and 0.4 s at 210 A (0.95 x 230 V over the loops of Tables 41.2 and 41.4, 1.84 and 1.04 ohm). */
START_TEST(an_energy_says_where_it_is_from)
{
    static const struct {
        enum DeviceKind kind;
        enum Curve curve;
        double rating_a, breaks_a, let_through_a2s, trip_5_s_a;
        bool delayed;
        struct FaultRange fault;
        enum Saying from;
    } rows[] = {
        {DEVICE_MCB, CURVE_B, 20, 6000, 0, 0, false, {1000, 0, true}, SAY_ENERGY_OF_FIRST_LOOP},
        {DEVICE_MCB, CURVE_B, 20, 6000, 0, 0, false, {5000, 0, true}, SAY_ENERGY_BY_CLASS_3},
        {DEVICE_MCB, CURVE_B, 20, 0, 0, 0, false, {5000, 0, true}, SAY_ENERGY_BY_CLASS_3_TO_10_KA},
        {DEVICE_MCB, CURVE_B, 20, 6000, 60000, 0, false, {5000, 0, true}, SAY_ENERGY_BY_MAKER},
        {DEVICE_MCB, CURVE_B, 32, 6000, 0, 0, false, {200, 180, true}, SAY_ENERGY_OF_BREAKER_AT_ONCE},
        {DEVICE_RCBO, CURVE_B, 32, 6000, 0, 0, true, {200, 180, false}, SAY_ENERGY_FOR_RESIDUAL_DELAY},
        {DEVICE_MCB, CURVE_D, 32, 6000, 0, 0, false, {500, 330, false}, SAY_ENERGY_TYPE_D_TO_5_S},
        {DEVICE_MCB, CURVE_D, 40, 6000, 0, 0, false, {600, 500, false}, SAY_ENERGY_TYPE_D_TO_8_S},
        {DEVICE_MCB, CURVE_D, 40, 6000, 0, 300, false, {600, 350, false}, SAY_ENERGY_BY_MAKERS_CURVE},
        {DEVICE_GG, CURVE_B, 32, 0, 0, 0, false, {1000, 400, true}, SAY_ENERGY_OF_FUSE_IN_0_4_S},
        {DEVICE_GG, CURVE_B, 32, 0, 0, 0, false, {1000, 150, true}, SAY_ENERGY_OF_FUSE_IN_5_S},
        {DEVICE_GG, CURVE_B, 32, 0, 0, 120, false, {1000, 150, true}, SAY_ENERGY_BY_MAKERS_CURVE},
    };
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Rig rig;
        rig_make(&rig);
        struct Device *device = &rig.run.device;
        rig_device(&rig, rows[i].kind, rows[i].curve, rows[i].rating_a);
        device->breaking_capacity_a = (struct Quantity){.value = rows[i].breaks_a, .given = rows[i].breaks_a > 0};
        device->let_through_a2s =
            (struct Quantity){.value = rows[i].let_through_a2s, .given = rows[i].let_through_a2s > 0};
        device->trip_5_s_a = (struct Quantity){.value = rows[i].trip_5_s_a, .given = rows[i].trip_5_s_a > 0};
        if (rows[i].delayed) {
            rig_residual(&rig, 0.1, true);
        }
        const struct Energy energy = fault_energy(&rig.design, &rows[i].fault);
        ck_assert_int_eq(energy.lacks, SAY_NOTHING);
        ck_assert_msg(energy.from == rows[i].from, "row %d: %s", i, plainly(say(rig.arena, energy.from)));
        rig_free(&rig);
    }
}
END_TEST

/* A figure of more than nine digits is told in millions, with its unit or without. */
START_TEST(large_energies_in_millions)
{
    struct Arena *arena = arena_new();
    static const struct {
        double a2s;
        const char *with_unit, *bare;
    } rows[] = {{25600, "25600 A2 s", "25600"},
                {999999999, "999999999 A2 s", "999999999"},
                {1e9, "1000 million A2 s", "1000 million"},
                {1178421056, "1178 million A2 s", "1178 million"}};
    for (int i = 0; i < COUNT_OF(rows); i++) {
        ck_assert_str_eq(said(arena, say(arena, SAY_AS_IS, say_energy(arena, rows[i].a2s))), rows[i].with_unit);
        ck_assert_str_eq(said(arena, say(arena, SAY_AS_IS, say_energy_bare(arena, rows[i].a2s))), rows[i].bare);
    }
    arena_free(arena);
}
END_TEST

/* Too weak a short circuit at the far end: what it would take is told by what the device is. */
START_TEST(a_weak_short_circuit_is_told_by_the_device)
{
    static const struct {
        enum DeviceKind kind;
        enum Curve curve;
        enum Saying id;
        const char *words;
    } rows[] = {{DEVICE_GG, CURVE_B, SAY_SHORT_CIRCUIT_UNDER_FUSE, "A that melt the fuse in 5 s: the overload part"},
                {DEVICE_MCB, CURVE_B, SAY_SHORT_CIRCUIT_UNDER_TRIP, "under the 160 A that trip at once: the overload"},
                {DEVICE_MCB, CURVE_D, SAY_SHORT_CIRCUIT_UNDER_TYPE_D,
                 "under the 320 A that its energy is taken from: the overload part"}};
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Rig rig;
        rig_make(&rig);
        rig_device(&rig, rows[i].kind, rows[i].curve, 32);
        rig.design.fault_current_a = 1000;
        rig.design.electrical_length_m = 400;
        const struct Check check = rig_check(&rig, check_live_conductors, 6);
        ck_assert_int_eq(check.text->id, SAY_LET_THROUGH);
        ck_assert_ptr_nonnull(check.text->next);
        ck_assert_int_eq(check.text->next->id, rows[i].id);
        ck_assert_msg(said_has(check.text, rows[i].words), "%s", plainly(check.text));
        rig.design.electrical_length_m = 10;
        ck_assert_ptr_null(rig_check(&rig, check_live_conductors, 6).text->next);
        rig_free(&rig);
    }
}
END_TEST

/* BS 7430. 30 m of depth come to 142 ohm in soil of 3000 ohm.m and to 46 ohm in 1000; 20 rods of 2.4 m, as far apart,
 * to 112 ohm in the first, and 20 of 5 m, half a metre apart, to 94 in the second. */
START_TEST(what_the_target_takes)
{
    static const struct {
        double soil_ohm_m, length_m, spacing_m, target_ohm;
        enum Saying estimated, as_read;
        const char *words;
    } rows[] = {
        {100, 2.4, 2.4, 200, SAY_TARGET_BY_EITHER_ESTIMATED, SAY_TARGET_BY_EITHER_AS_READ,
         "To come to 200 ohm takes 1 such rod in line, or one driven to 2.4 m, by this estimate."},
        {100, 2.4, 2.4, 30, SAY_TARGET_BY_EITHER_ESTIMATED, SAY_TARGET_BY_EITHER_AS_READ,
         "To come to 30 ohm takes 2 such rods in line, or one driven to 4.8 m, by this estimate."},
        {3000, 2.4, 2.4, 120, SAY_TARGET_BY_RODS_ESTIMATED, SAY_TARGET_BY_RODS_AS_READ, "such rods in line, by this"},
        {1000, 5, 0.5, 50, SAY_TARGET_BY_DEPTH_ESTIMATED, SAY_TARGET_BY_DEPTH_AS_READ,
         "To come to 50 ohm takes one driven to 30 m, by this estimate."},
        {3000, 2.4, 2.4, 100, SAY_TARGET_BY_NEITHER, SAY_TARGET_BY_NEITHER,
         "To come to 100 ohm takes more than 20 such rods and more than 30 m of depth: ask for another kind of"},
    };
    struct Arena *arena = arena_new();
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Survey survey = {.earthing = {.far_end = FAR_END_ISLAND,
                                             .rods = {.value = 1, .given = true},
                                             .rod_length_m = {.value = rows[i].length_m, .given = true},
                                             .rod_diameter_mm = {.value = 16, .given = true},
                                             .rod_spacing_m = {.value = rows[i].spacing_m, .given = true},
                                             .electrode_target_ohm = {.value = rows[i].target_ohm, .given = true}},
                                .conditions = {.soil_electrical_ohm_m = {.value = rows[i].soil_ohm_m, .given = true}}};
        const struct PlanElectrode guess = electrode_of(arena, edition_held(), &survey);
        const struct Say *last = guess.text;
        ck_assert_int_eq(last->id, SAY_RODS_ESTIMATE);
        ck_assert_int_eq(last->next->id, SAY_RODS_TO_BE_MEASURED);
        while (last->next != NULL) {
            last = last->next;
        }
        ck_assert_msg(last->id == rows[i].estimated, "row %d: %s", i, said(arena, last));
        ck_assert_msg(said_has(last, rows[i].words), "row %d: %s", i, said(arena, last));
        survey.earthing.measured_ohm = (struct Quantity){.value = guess.estimate_ohm, .given = true};
        const struct PlanElectrode read = electrode_of(arena, edition_held(), &survey);
        ck_assert_int_eq(read.text->next->id, SAY_RODS_MEASURED);
        for (last = read.text; last->next != NULL;) {
            last = last->next;
        }
        ck_assert_msg(last->id == rows[i].as_read, "row %d: %s", i, said(arena, last));
        ck_assert_ptr_null(electrode_figures(edition_held(), &survey).text);
        ck_assert_double_eq(electrode_figures(edition_held(), &survey).used_ohm, read.used_ohm);
    }
    arena_free(arena);
}
END_TEST

/* Whose earth the armour is on, and whether a figure of it is held, is what a meter may show besides. */
START_TEST(a_reading_says_why_it_may_be_another)
{
    static const struct {
        enum CableType type;
        enum Cpc cpc;
        enum FarEnd far_end;
        enum Saying note;
    } rows[] = {
        {CABLE_BS5467, CPC_CORE, FAR_END_EXPORT, SAY_READ_LOWER_BY_ARMOUR},
        {CABLE_BS5467, CPC_CORE, FAR_END_ISLAND, SAY_NOTHING},
        {CABLE_BS5467, CPC_ARMOUR, FAR_END_EXPORT, SAY_NOTHING},
        {CABLE_BS5467, CPC_SEPARATE, FAR_END_EXPORT, SAY_READ_LOWER_BY_ARMOUR},
        {CABLE_BS6004_FLAT, CPC_CORE, FAR_END_EXPORT, SAY_NOTHING},
        {CABLE_BS5467, CPC_CORE_AND_ARMOUR, FAR_END_EXPORT, SAY_READ_SIDE_BY_SIDE},
        {CABLE_BS6346, CPC_CORE_AND_ARMOUR, FAR_END_EXPORT, SAY_READ_LOWER_BY_ARMOUR_NOT_HELD},
    };
    for (int i = 0; i < COUNT_OF(rows); i++) {
        struct Rig rig;
        rig_make(&rig);
        rig_cable(&rig, rows[i].type, 3, rows[i].cpc, 70);
        rig.earthing.far_end = rows[i].far_end;
        const struct Say *note = readings_of(rig.arena, &rig.design, 10).note;
        ck_assert_msg((note == NULL ? SAY_NOTHING : note->id) == rows[i].note, "row %d: %s", i, plainly(note));
        rig_free(&rig);
    }
}
END_TEST

TCase *fault_said(void)
{
    TCase *tests = tcase_create("said");
    tcase_add_test(tests, a_loop_names_what_it_lacks);
    tcase_add_test(tests, an_energy_says_where_it_is_from);
    tcase_add_test(tests, large_energies_in_millions);
    tcase_add_test(tests, a_weak_short_circuit_is_told_by_the_device);
    tcase_add_test(tests, what_the_target_takes);
    tcase_add_test(tests, a_reading_says_why_it_may_be_another);
    return tests;
}
