/* What stands between the meter and the device, by how the run is fed. */
#include "printed.h"
#include "said.h"
#include "takeoff_rig.h"

#include <stdio.h>
#include <string.h>

/* A run of its own device on that start; `lines` 3: three lines and a neutral. */
static struct TakeOff fed(const char *start, int lines)
{
    char text[1024];
    snprintf(
        text, sizeof text,
        "wend: 1\njob: {title: t}\nsupply: {system: TN-S, phases: %d, loop-impedance: 0.3 ohm}\n"
        "earthing: {far-end: export, extraneous-parts: no}\nruns:\n"
        "  r: {load: {current: 20 A}, device: {kind: MCB, rating: 32 A}, cable: {type: BS5467, cores: %d, size: 10 "
        "mm2}, start: %s}\nsegments:\n- {name: a, way: wall, length: 4 m, fixed-to: brick}\n",
        lines, lines == 3 ? 5 : 3, start);
    return takeoff_text(text);
}

static bool cautioned(const struct TakeOff *takeoff, const char *text)
{
    for (int i = 0; i < takeoff->plan->caution_count; i++) {
        if (said_has(takeoff->plan->cautions[i].text, text)) {
            return true;
        }
    }
    return false;
}

static bool assumed_way(const struct TakeOff *takeoff)
{
    for (int i = 0; i < takeoff->plan->assumption_count; i++) {
        if (strcmp(takeoff->plan->assumptions[i].where, "runs.r.start.from") == 0) {
            return said_has(takeoff->plan->assumptions[i].text, "existing-way");
        }
    }
    return false;
}

/* Split tails: a block to each live conductor, 25 mm2 tails and 16 mm2 earth (On-Site Guide, section 2, from memory),
 * an isolator, a board for the device. A single-phase supply of 1.8 m: 2 blocks and 1.8 m each of brown, blue and
 * earth. */
START_TEST(tails_are_split)
{
    struct TakeOff takeoff = fed("{from: meter-tails, tails: 1.8 m}", 1);
    static const char *const codes[] = {"connector-enclosure-2-indoors", "isolator-tails-2p-100",
                                        "feeder-board-1w-2p-indoors-plastic", "device-MCB-B-32-A-1p-open"};
    for (int i = 0; i < 4; i++) {
        ck_assert_msg(takeoff_needed(&takeoff, codes[i]) == 1, "%s", codes[i]);
    }
    ck_assert_double_eq(takeoff_needed(&takeoff, "connector-block-100"), 2);
    static const char *const tails[] = {"tail-25-brown", "tail-25-blue", "tail-earth-16"};
    for (int i = 0; i < 3; i++) {
        ck_assert_double_eq(takeoff_needed(&takeoff, tails[i]), 1.8);
        ck_assert_double_eq(takeoff_part(&takeoff, tails[i])->quantity, 2);
    }
    ck_assert_ptr_null(takeoff_part(&takeoff, "tail-25-grey"));
    ck_assert(!takeoff_notes(&takeoff, "The board or enclosure at the supply end"));
    ck_assert(takeoff_notes(&takeoff, "Lugs, ferrules"));
    takeoff_free(&takeoff);
    takeoff = fed("{from: meter-tails, tails: 1.8 m, place: outdoors, enclosure: metal}", 3);
    ck_assert_double_eq(takeoff_needed(&takeoff, "connector-block-100"), 4);
    ck_assert_double_eq(takeoff_needed(&takeoff, "tail-25-grey"), 1.8);
    ck_assert_double_eq(takeoff_needed(&takeoff, "isolator-tails-4p-100"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "feeder-board-1w-4p-IP44-metal"), 1);
    takeoff_free(&takeoff);
}
END_TEST

/* Over 2 m the distributor is asked, over 3 m the tails get a device of their own; a length that nobody measured is
 * asked about, and not counted. */
START_TEST(long_tails_are_asked_about)
{
    static const struct {
        const char *start;
        bool ask, protect, counted;
    } rows[] = {
        {"{from: meter-tails, tails: 2 m}", false, false, true},
        {"{from: meter-tails, tails: 2.1 m}", true, false, true},
        {"{from: new-board, tails: 3 m}", true, false, true},
        {"{from: new-board, tails: 3.1 m}", true, true, true},
        {"{from: meter-tails}", true, false, false},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct TakeOff takeoff = fed(rows[i].start, 1);
        ck_assert_int_eq(cautioned(&takeoff, "ask the distributor whether"), rows[i].ask);
        ck_assert_int_eq(cautioned(&takeoff, "a switch-fuse within 3 m"), rows[i].protect);
        ck_assert(cautioned(&takeoff, "Never draw it yourself"));
        ck_assert_int_eq(takeoff_part(&takeoff, "switch-fuse-2p-100") != NULL, rows[i].protect);
        ck_assert_int_eq(takeoff_part(&takeoff, "tail-25-brown") != NULL, rows[i].counted);
        ck_assert_int_eq(takeoff_notes(&takeoff, "Meter tails are not counted"), !rows[i].counted);
        takeoff_free(&takeoff);
    }
}
END_TEST

/* A new main board takes the whole supply: four poles on three phases, though the run has but one line. */
START_TEST(new_board_takes_the_whole_supply)
{
    struct TakeOff takeoff = fed("{from: new-board, tails: 1 m}", 3);
    ck_assert_double_eq(takeoff_needed(&takeoff, "main-board-4p-indoors-plastic"), 1);
    ck_assert_double_eq(takeoff_needed(&takeoff, "connector-block-100"), 0);
    ck_assert_double_eq(takeoff_needed(&takeoff, "tail-25-black"), 1);
    takeoff_free(&takeoff);
}
END_TEST

/* Of a spare way nothing is counted but the device; where nobody said so, that it was taken is said. */
START_TEST(a_way_is_taken_for_granted)
{
    static const char *const starts[] = {"{}", "{from: existing-way}"};
    for (int i = 0; i < 2; i++) {
        struct TakeOff takeoff = fed(starts[i], 1);
        ck_assert_int_eq(assumed_way(&takeoff), i == 0);
        ck_assert(takeoff_notes(&takeoff, "The board or enclosure at the supply end"));
        ck_assert(!takeoff_notes(&takeoff, "Lugs, ferrules and what"));
        ck_assert_ptr_null(takeoff_part(&takeoff, "connector-block-100"));
        ck_assert_double_eq(takeoff_needed(&takeoff, "device-MCB-B-32-A-1p-open"), 1);
        ck_assert(!cautioned(&takeoff, "Meter tails"));
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Two runs off the same tails share them: one set of blocks, one isolator, one board with two ways. */
START_TEST(runs_share_the_tails)
{
    struct TakeOff takeoff =
        takeoff_text("wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
                     "  one: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}, start: {from: "
                     "meter-tails, tails: 1 m}}\n"
                     "  two: {load: {current: 9 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}, start: {from: "
                     "meter-tails, tails: 1.5 "
                     "m}}\n"
                     "segments:\n- {name: a, way: wall, length: 4 m, fixed-to: timber}\n");
    ck_assert_double_eq(takeoff_needed(&takeoff, "connector-block-100"), 2);
    ck_assert_double_eq(takeoff_needed(&takeoff, "tail-25-brown"), 1.5);
    ck_assert_double_eq(takeoff_needed(&takeoff, "feeder-board-2w-2p-indoors-plastic"), 1);
    takeoff_free(&takeoff);
}
END_TEST

/* The crew reads in which order it is done, and what never is. */
START_TEST(the_brief_gives_the_order)
{
    static const struct {
        const char *start, *says;
    } rows[] = {{"{from: meter-tails, tails: 1 m}", "Split the tails at the blocks"},
                {"{from: new-board, tails: 1 m}", "Move the circuits over one at a time"},
                {"{from: existing-way}", "own make and range"}};
    for (int i = 0; i < 3; i++) {
        struct TakeOff takeoff = fed(rows[i].start, 1);
        const struct Bytes xml = printed(takeoff.wend);
        const char *ends = strstr(xml.data, "<ends>");
        ck_assert_ptr_nonnull(ends);
        ck_assert_msg(strstr(ends, rows[i].says) != NULL, "%s", rows[i].says);
        ck_assert_int_eq(strstr(ends, "Never draw it yourself") != NULL, i < 2);
        takeoff_free(&takeoff);
    }
}
END_TEST

Suite *suite_takeoff_supply(void)
{
    Suite *suite = suite_create("supply end");
    TCase *tests = tcase_create("supply end");
    tcase_add_test(tests, tails_are_split);
    tcase_add_test(tests, long_tails_are_asked_about);
    tcase_add_test(tests, new_board_takes_the_whole_supply);
    tcase_add_test(tests, a_way_is_taken_for_granted);
    tcase_add_test(tests, runs_share_the_tails);
    tcase_add_test(tests, the_brief_gives_the_order);
    suite_add_tcase(suite, tests);
    return suite;
}
