/* The device of a run and the board, isolator or box that it ends in. */
#include "said.h"
#include "takeoff_rig.h"

#include <stdio.h>
#include <string.h>

static const char wall[] = "- {name: a, way: wall, length: 4 m, fixed-to: brick}\n";

#define TEN "{type: BS5467, cores: 3, size: 10 mm2}"

/* A fuse's holder is the board's own: said, and only of fuses. */
START_TEST(holder_of_a_fuse_is_said)
{
    static const char *const kinds[] = {"gG", "BS88-3", "BS1361", "BS3036", "MCB"};
    for (int i = 0; i < 5; i++) {
        char run[300];
        snprintf(
            run, sizeof run,
            "    load: {current: 10 A}\n    device: {kind: %s%s}\n    cable: {type: BS5467, cores: 3, size: 10 mm2}\n",
            kinds[i], i == 4 ? ", curve: B" : "");
        struct TakeOff takeoff = takeoff_with(run, "- {name: a, way: wall, length: 10 m}\n", "");
        int stated = 0;
        for (int n = 0; n < takeoff.parts->note_count; n++) {
            stated += strstr(said(takeoff.arena, takeoff.parts->notes[n]),
                             "The holder or carrier that a fuse goes into is not counted") != NULL;
        }
        ck_assert_msg(stated == (i < 4), "%s: said %d times", kinds[i], stated);
        takeoff_free(&takeoff);
    }
}
END_TEST

START_TEST(device_and_what_it_ends_in)
{
    static const char device[] =
        "    load: {current: 10 A}\n    device: {kind: RCBO, curve: C, rating: 20 A, residual: 30 mA}\n"
        "    cable: {type: BS5467, cores: 3, size: 10 mm2}\n";
    static const struct {
        const char *more, *code;
    } rows[] = {{"", "board-20-2p-indoors-plastic"},
                {"    feeds: equipment\n", "isolator-2p-20-indoors-plastic"},
                {"    finish: {into: terminal-box}\n", "terminal-box-BS5467-3x10-indoors-plastic"},
                {"    finish: {into: accessory}\n", ""}};
    for (int i = 0; i < 4; i++) {
        char run[512];
        snprintf(run, sizeof run, "%s%s", device, rows[i].more);
        struct TakeOff takeoff = takeoff_with(run, wall, "");
        ck_assert_double_eq(takeoff_needed(&takeoff, "device-RCBO-C-20-A-30-mA-A-1pn-open"), 1);
        ck_assert_str_eq(takeoff_part(&takeoff, "device-RCBO-C-20-A-30-mA-A-1pn-open")->standard, "BS EN 61009-1");
        ck_assert_double_eq(takeoff_needed(&takeoff, "label-residual-test"), 1);
        if (rows[i].code[0] != '\0') {
            ck_assert_double_eq(takeoff_needed(&takeoff, rows[i].code), 1);
        } else {
            ck_assert(takeoff_notes(&takeoff, "accessories"));
        }
        takeoff_free(&takeoff);
    }
}
END_TEST

/* The article is called what the drawing and the sheets call the device. */
static void check_called_alike(const struct TakeOff *takeoff, const char *code)
{
    struct Arena *arena = arena_new();
    const struct Part *part = takeoff_part(takeoff, code);
    ck_assert_msg(part != NULL, "no %s", code);
    const char *device = said(arena, takeoff->plan->runs[0].device_full);
    ck_assert_str_eq(takeoff_described(takeoff, part), arena_print(arena, "Protective device %s", device));
    arena_free(arena);
}

/* What is surveyed of a device and what a rule asks for stands in the article and in its code: two devices that differ
 * in one of them are never one line of an order. BS EN 61009-1 and 60898-1, marking. */
START_TEST(device_is_named_whole)
{
    static const struct {
        const char *run, *code, *words;
    } rows[] = {
        {"    device: {kind: RCBO, curve: B, rating: 20 A, residual: 100 mA, residual-type: A, time-delayed: yes}\n",
         "device-RCBO-B-20-A-100-mA-A-S-1pn-open",
         "type A, time-delayed (S), 1-pole and neutral, breaking capacity: ask"},
        {"    device: {kind: RCBO, curve: B, rating: 20 A, residual: 100 mA, residual-type: AC}\n",
         "device-RCBO-B-20-A-100-mA-AC-1pn-open", "type AC, 1-pole and neutral"},
        /* 531.3.3: a type that was not surveyed is A */
        {"    device: {kind: RCBO, curve: B, rating: 20 A, residual: 30 mA, breaking-capacity: 6 kA}\n",
         "device-RCBO-B-20-A-30-mA-A-1pn-6kA", "type A, 1-pole and neutral, breaking capacity 6 kA"},
        {"    device: {kind: RCBO, curve: B, rating: 20 A}\n", "device-RCBO-B-20-A-residual-open-A-1pn-open",
         "residual current: ask"},
        /* 722.531.3: 30 mA of its own, and the neutral is broken */
        {"    use: charging\n    feeds: equipment\n    device: {kind: RCBO, curve: B, rating: 20 A}\n",
         "device-RCBO-B-20-A-30-mA-A-2p-open", "30 mA, type A, 2-pole, breaks the neutral"},
        /* 411.3.3: socket-outlets */
        {"    feeds: sockets\n    device: {kind: RCBO, curve: B, rating: 20 A}\n",
         "device-RCBO-B-20-A-30-mA-A-1pn-open", "30 mA, type A, 1-pole and neutral"},
        {"    device: {kind: MCB, curve: C, rating: 20 A, breaking-capacity: 10 kA}\n", "device-MCB-C-20-A-1p-10kA",
         "MCB C 20 A, 1-pole, breaking capacity 10 kA"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char run[512];
        snprintf(run, sizeof run, "    load: {current: 10 A}\n    cable: %s\n%s", TEN, rows[i].run);
        struct TakeOff takeoff = takeoff_with(run, wall, "");
        check_called_alike(&takeoff, rows[i].code);
        ck_assert_msg(takeoff_part(&takeoff, rows[i].code) != NULL, "no %s", rows[i].code);
        ck_assert_msg(strstr(takeoff_described(&takeoff, takeoff_part(&takeoff, rows[i].code)), rows[i].words) != NULL,
                      "%s", takeoff_described(&takeoff, takeoff_part(&takeoff, rows[i].code)));
        takeoff_free(&takeoff);
    }
}
END_TEST

/* A delayed RCBO is hardly stocked (common practice): the line says what stands in for it. */
START_TEST(delayed_device_has_a_stand_in)
{
    static const char *const delays[] = {"no", "yes"};
    for (int i = 0; i < 2; i++) {
        char run[512];
        snprintf(run, sizeof run,
                 "    load: {current: 10 A}\n    cable: %s\n    device: {kind: RCBO, curve: B, rating: 20 A, residual: "
                 "100 mA, residual-type: A, time-delayed: %s}\n",
                 TEN, delays[i]);
        struct TakeOff takeoff = takeoff_with(run, wall, "");
        const struct Part *device = takeoff_part(&takeoff, i == 0 ? "device-RCBO-B-20-A-100-mA-A-1pn-open"
                                                                  : "device-RCBO-B-20-A-100-mA-A-S-1pn-open");
        ck_assert_ptr_nonnull(device);
        ck_assert_int_eq(strstr(takeoff_note(&takeoff, device), "or a delayed RCCB") != NULL, i == 1);
        ck_assert_int_eq(strstr(takeoff_note(&takeoff, device), "S in a box") != NULL, i == 1);
        takeoff_free(&takeoff);
    }
}
END_TEST

#define THREE_LINES                                                                                                    \
    "wend: 1\njob: {title: t}\nsupply: {system: %s, phases: 3, loop-impedance: 0.3 ohm, fault-current: 1.43 kA}\n"     \
    "runs:\n  r:\n    load: {current: 10 A}\n%s"                                                                       \
    "segments:\n- {name: a, way: wall, length: 4 m, fixed-to: timber}\n"

/* Three lines without a neutral take three poles, with one four where the device sees residual currents; a fuse each
 * line. Isolation breaks every live conductor (462.2). A fault current that was surveyed bounds what is to be asked
 * for. */
START_TEST(poles_by_the_cores)
{
    static const struct {
        const char *run, *device, *finish;
        double devices;
    } rows[] = {
        {"    feeds: equipment\n    device: {kind: MCB, curve: C, rating: 16 A}\n    cable: {type: BS5467, cores: 4, "
         "size: 10 mm2}\n",
         "device-MCB-C-16-A-3p-open1.5kA", "isolator-3p-16-indoors-plastic", 1},
        {"    feeds: equipment\n    device: {kind: MCB, curve: C, rating: 16 A}\n    cable: {type: BS5467, cores: 5, "
         "size: 10 mm2}\n",
         "device-MCB-C-16-A-3p-open1.5kA", "isolator-4p-16-indoors-plastic", 1},
        {"    device: {kind: RCBO, curve: C, rating: 16 A, residual: 30 mA}\n    cable: {type: BS5467, cores: 5, "
         "size: 10 mm2}\n",
         "device-RCBO-C-16-A-30-mA-A-4p-open1.5kA", "board-16-4p-indoors-plastic", 1},
        {"    device: {kind: RCBO, curve: C, rating: 16 A, residual: 30 mA}\n    cable: {type: BS5467, cores: 4, "
         "size: 10 mm2}\n",
         "device-RCBO-C-16-A-30-mA-A-3p-open1.5kA", "board-16-3p-indoors-plastic", 1},
        {"    device: {kind: gG, rating: 16 A, breaking-capacity: 80 kA}\n    cable: {type: BS5467, cores: 5, size: 10 "
         "mm2}\n",
         "device-gG-fuse-BS-88-2-16-A-80kA", "board-16-4p-indoors-plastic", 3},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char text[1024];
        snprintf(text, sizeof text, THREE_LINES, "TN-S", rows[i].run);
        struct TakeOff takeoff = takeoff_text(text);
        check_called_alike(&takeoff, rows[i].device);
        ck_assert_double_eq(takeoff_needed(&takeoff, rows[i].device), rows[i].devices);
        ck_assert_msg(takeoff_needed(&takeoff, rows[i].finish) > 0, "%s", rows[i].finish);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* A run of 6 A with that far end, and a piece for the top of the file. */
static struct TakeOff ended(const char *finish, const char *top)
{
    char run[512];
    snprintf(run, sizeof run, "    load: {current: 6 A}\n    cable: " TEN "\n    finish: %s\n", finish);
    return takeoff_with(run, wall, top);
}

/* Indoors 416.2, outdoors AD4, washed down AD5 (Appendix 5): another article each, and by what it is made of. An
 * island's is insulated all through unless a metal one was surveyed. */
START_TEST(board_by_place_and_material)
{
    static const char island[] = "earthing: {far-end: island, electrode: {measured: 20 ohm}, board-residual: 30 mA}\n";
    static const struct {
        const char *finish, *top, *code, *words, *note; /* "": none of the three remarks on what it is made of */
    } rows[] = {
        {"{place: indoors, enclosure: metal}", "", "board-6-2p-indoors-metal", "metal, IP2X, its top IP4X", ""},
        {"{place: outdoors, enclosure: plastic}", "", "board-6-2p-IP44-plastic", "plastic, not below IP44", ""},
        {"{place: wet}", "", "board-6-2p-IP55-plastic", "plastic, not below IP55", "plastic assumed: not surveyed"},
        {"{place: outdoors}", island, "board-6-2p-30mA-IP44-insulated", "insulated all through",
         "no metal part may reach through it"},
        {"{place: outdoors, enclosure: painted}", island, "board-6-2p-30mA-IP44-metal", "metal, not below IP44",
         "METAL, as surveyed"},
        {"{place: outdoors, enclosure: metal}", island, "board-6-2p-30mA-IP44-metal", "metal, not below IP44",
         "METAL, as surveyed"},
    };
    static const char *const remarks[] = {"plastic assumed: not surveyed", "no metal part may reach through it",
                                          "METAL, as surveyed"};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct TakeOff takeoff = ended(rows[i].finish, rows[i].top);
        ck_assert_msg(takeoff_needed(&takeoff, rows[i].code) == 1, "no %s", rows[i].code);
        ck_assert_ptr_nonnull(strstr(takeoff_described(&takeoff, takeoff_part(&takeoff, rows[i].code)), rows[i].words));
        for (size_t k = 0; k < sizeof remarks / sizeof remarks[0]; k++) {
            const char *note = takeoff_note(&takeoff, takeoff_part(&takeoff, rows[i].code));
            ck_assert_msg((strstr(note, remarks[k]) != NULL) == (strcmp(rows[i].note, remarks[k]) == 0), "%s: %s",
                          rows[i].code, note);
        }
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Where nobody gave a residual current, what the kind of place asks: on a farm 300 mA for equipment, 30 mA for sockets
 * (705.411.1), and IP44 though it is indoors (705.512.2). Pitches break the neutral too (708.415.1). */
START_TEST(device_by_the_kind_of_place)
{
    static const struct {
        const char *location, *feeds, *code, *finish;
    } rows[] = {
        {"farm", "equipment", "device-RCBO-B-20-A-300-mA-A-1pn-open", "isolator-2p-20-IP44-plastic"},
        {"farm", "sockets", "device-RCBO-B-20-A-30-mA-A-1pn-open", ""},
        {"ordinary", "equipment", "device-RCBO-B-20-A-residual-open-A-1pn-open", "isolator-2p-20-indoors-plastic"},
        {"caravan-park", "sockets", "device-RCBO-B-20-A-30-mA-A-2p-open", ""},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char text[1024];
        snprintf(text, sizeof text,
                 "wend: 1\njob: {title: t, location: %s}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
                 "  r: {feeds: %s, load: {current: 10 A}, device: {kind: RCBO, curve: B, rating: 20 A}, cable: " TEN
                 "}\n"
                 "segments:\n- {name: a, way: wall, length: 4 m, fixed-to: brick}\n",
                 rows[i].location, rows[i].feeds);
        struct TakeOff takeoff = takeoff_text(text);
        check_called_alike(&takeoff, rows[i].code);
        ck_assert_msg(takeoff_needed(&takeoff, rows[i].code) == 1, "%s: no %s", rows[i].location, rows[i].code);
        if (rows[i].finish[0] != '\0') {
            ck_assert_msg(takeoff_needed(&takeoff, rows[i].finish) == 1, "%s: no %s", rows[i].location, rows[i].finish);
        }
        takeoff_free(&takeoff);
    }
}
END_TEST

Suite *suite_takeoff_devices(void)
{
    Suite *suite = suite_create("devices");
    TCase *tests = tcase_create("devices");
    tcase_add_test(tests, holder_of_a_fuse_is_said);
    tcase_add_test(tests, device_and_what_it_ends_in);
    tcase_add_test(tests, device_is_named_whole);
    tcase_add_test(tests, delayed_device_has_a_stand_in);
    tcase_add_test(tests, poles_by_the_cores);
    tcase_add_test(tests, board_by_place_and_material);
    tcase_add_test(tests, device_by_the_kind_of_place);
    suite_add_tcase(suite, tests);
    return suite;
}
