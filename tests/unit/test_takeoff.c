/* What is counted for a route. The suites are in the files beside; here the list as a whole: one line an article, in
 * the order of picking, with its packs. */
#include "said.h"
#include "takeoff_rig.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const char every_way[] =
    "wend: 1\njob: {title: t}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
    "  feeder: {load: {current: 6 A}, cable: {type: BS5467, cores: 3, size: 10 mm2}, along: [hall, rafters, void, "
    "hole, shelf, "
    "rungs, span, hedge, pit, plot]}\n"
    "  inner: {load: {current: 6 A}, cable: {type: BS6004-multicore, cores: 3, size: 4 mm2, diameter: 11 mm}, along: "
    "[floor, "
    "pipe, box]}\nsegments:\n"
    "- {name: hall, way: wall, length: 4.3 m, rise: 1 m, fixed-to: brick, bends: 1}\n"
    "- {name: rafters, way: beam, length: 3 m}\n"
    "- {name: void, way: loft-void, length: 7.7 m}\n"
    "- {name: floor, way: under-floor, length: 2 m}\n"
    "- {name: hole, way: through-wall, length: 300 mm, sleeve: yes}\n"
    "- {name: pipe, way: conduit, length: 13 m, size: 32 mm, bends: 3, fixed-to: brick}\n"
    "- {name: box, way: trunking, length: 7 m, size: 50 x 50 mm, fixed-to: steel}\n"
    "- {name: shelf, way: tray, length: 5 m, fixed-to: concrete}\n"
    "- {name: rungs, way: ladder, length: 4 m, fixed-to: block}\n"
    "- {name: span, way: catenary, length: 9 m}\n"
    "- {name: hedge, way: fence, length: 11 m, fixed-to: concrete}\n"
    "- {name: pit, way: duct, length: 60 m, duct: {size: 63 mm}, depth: 600 mm, under: drive}\n"
    "- {name: plot, way: buried, length: 20 m, depth: 600 mm, under: bed, dig: machine}\n";

/* Each place once, and what goes to one run together. */
static void holds_uses(const struct Part *part)
{
    ck_assert_msg(part->use_count > 0, "%s", part->code);
    for (int i = 0; i < part->use_count; i++) {
        const struct PartUse *use = &part->uses[i];
        bool left = false;
        for (int k = i + 1; k < part->use_count; k++) {
            const struct PartUse *other = &part->uses[k];
            const bool same = use->whom == other->whom && use->run == other->run;
            ck_assert_msg(!same || use->place != other->place || use->segment != other->segment, "%s: %d and %d",
                          part->code, i, k);
            ck_assert_msg(!same || !left, "%s: %d and %d lie apart", part->code, i, k);
            left = left || !same;
        }
    }
}

START_TEST(one_line_an_article_in_order)
{
    struct TakeOff takeoff = takeoff_text(every_way);
    const struct PartsList *list = takeoff.parts;
    ck_assert_int_gt(list->count, 35);
    for (int i = 0; i < list->count; i++) {
        const struct Part *part = &list->parts[i];
        ck_assert_msg(part->code[0] != '\0' && takeoff_described(&takeoff, part)[0] != '\0' && part->standard != NULL,
                      "%s", part->code);
        ck_assert_msg(part->quantity >= part->needed - 1e-9 && part->needed > 0, "%s", part->code);
        holds_uses(part);
        const char *uses = takeoff_uses(&takeoff, part->code);
        ck_assert_msg(strlen(uses) < 200, "%s: %s", part->code, uses);
        for (int other = 0; other < i; other++) {
            ck_assert_str_ne(part->code, list->parts[other].code);
        }
        if (i > 0) {
            ck_assert_int_ge((int)part->aisle, (int)list->parts[i - 1].aisle);
        }
    }
    takeoff_free(&takeoff);
}
END_TEST

static int times_said(const struct TakeOff *takeoff, enum Saying id, bool aside)
{
    int met = 0;
    for (int i = 0; i < takeoff->parts->way_count; i++) {
        const struct PartsWay *way = &takeoff->parts->ways[i];
        for (int k = 0; k < way->text_count; k++) {
            met += way->texts[k].said->id == id && way->texts[k].aside == aside;
        }
    }
    return met;
}

/* What the crew does is ticked off; what it only has to know is not. */
START_TEST(acts_and_asides)
{
    static const enum Saying acts[] = {SAY_FIT,      SAY_DIG,           SAY_DRILL,     SAY_SUPPORTS,
                                       SAY_LAY_DUCT, SAY_TAPE_AND_FILL, SAY_BUNG_ROUND};
    static const enum Saying asides[] = {SAY_EACH_HELD_BY, SAY_GRIP_REMARK, SAY_SPOIL};
    struct TakeOff takeoff = takeoff_text(every_way);
    for (size_t i = 0; i < sizeof acts / sizeof acts[0]; i++) {
        ck_assert_msg(times_said(&takeoff, acts[i], false) > 0 && times_said(&takeoff, acts[i], true) == 0, "%zu", i);
    }
    for (size_t i = 0; i < sizeof asides / sizeof asides[0]; i++) {
        ck_assert_msg(times_said(&takeoff, asides[i], true) > 0 && times_said(&takeoff, asides[i], false) == 0, "%zu",
                      i);
    }
    takeoff_free(&takeoff);
    struct TakeOff shallow = takeoff_of("- {name: a, way: wall, length: 4 m, fixed-to: brick}\n"
                                        "- {name: b, way: wall, length: 4 m, fixed-to: brick}\n"
                                        "- {name: c, way: buried, length: 5 m, depth: 300 mm, under: drive}\n");
    ck_assert_int_eq(times_said(&shallow, SAY_COVER_LESS, true), 1);
    ck_assert_int_eq(times_said(&shallow, SAY_GOES_ON_INTO, true), 1);
    ck_assert_int_eq(times_said(&shallow, SAY_GOES_ON_FROM, true), 1);
    takeoff_free(&shallow);
}
END_TEST

START_TEST(packs_hold_the_quantity)
{
    struct TakeOff takeoff = takeoff_text(every_way);
    int packed = 0;
    for (int i = 0; i < takeoff.parts->count; i++) {
        const struct Part *part = &takeoff.parts->parts[i];
        ck_assert_msg((part->pack > 0) == (part->packs > 0) && (part->pack > 0) == (part->pack_word[0] != '\0'), "%s",
                      part->code);
        if (part->pack > 0) {
            ck_assert_msg(part->pack * part->packs >= part->quantity - 1e-6, "%s", part->code);
            ck_assert_msg(part->pack * (part->packs - 1) < part->quantity, "%s: one pack too many", part->code);
            packed++;
        }
    }
    ck_assert_int_gt(packed, 10);
    takeoff_free(&takeoff);
}
END_TEST

/* The spare is the route file's own, 10 % when it says nothing; what must not be short is rounded up. */
START_TEST(spare_fixings)
{
    static const char segments[] = "- {name: a, way: wall, length: 10 m, fixed-to: brick}\n";
    static const char run[] = "    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3, size: 10 mm2}\n";
    static const struct {
        const char *top;
        double quantity; /* 10 m / 0.4 m + 1 = 26 cleats */
    } rows[] = {{"", 29}, {"parts: {spare-fixings: 0 %}\n", 26}, {"parts: {spare-fixings: 25 %}\n", 33}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct TakeOff takeoff = takeoff_with(run, segments, rows[i].top);
        static const char *const codes[] = {"fixing-hook-8", "screw-wood-10x50", "plug-7"};
        for (int k = 0; k < 3; k++) {
            ck_assert_double_eq(takeoff_needed(&takeoff, codes[k]), 26);
            ck_assert_double_eq(takeoff_part(&takeoff, codes[k])->quantity, rows[i].quantity);
        }
        takeoff_free(&takeoff);
    }
}
END_TEST

/* Each article has the spare of its kind and no other: fixings 10 %, duct, tape and covers 5 %, sand 15 %, a coupler
 * more (common practice, no source); all others are counted out, or come in whole lengths. */
START_TEST(spare_of_each_article)
{
    static const struct {
        const char *begins;
        double percent, pieces;
        int least;
    } kinds[] = {{"fixing-", 10, 0, 1},    {"screw-", 10, 0, 3},          {"plug-", 10, 0, 1},
                 {"tie-", 10, 0, 1},       {"cleat-", 10, 0, 1},          {"band-", 10, 0, 1},
                 {"clamp-", 10, 0, 1},     {"anchor-", 10, 0, 1},         {"sand", 15, 0, 1},
                 {"duct-63-", 5, 0, 1},    {"conduit-saddle-", 10, 0, 1}, {"warning-tape", 5, 0, 1},
                 {"cable-cover", 5, 0, 1}, {"duct-coupler-", 0, 1, 1},    {"", 0, 0, 30}};
    enum { KINDS = (int)(sizeof kinds / sizeof kinds[0]) };
    int met[KINDS] = {0};
    struct TakeOff takeoff = takeoff_text(every_way);
    for (int i = 0; i < takeoff.parts->count; i++) {
        const struct Part *part = &takeoff.parts->parts[i];
        int kind = 0;
        while (strncmp(part->code, kinds[kind].begins, strlen(kinds[kind].begins)) != 0) {
            kind++;
        }
        met[kind]++;
        const double due = ceil(part->needed * (1 + kinds[kind].percent / 100) + kinds[kind].pieces - 1e-6);
        const bool whole = part->note != NULL && strstr(takeoff_note(&takeoff, part), "cut for") != NULL;
        ck_assert_msg(whole ? part->quantity >= due : fabs(part->quantity - due) < 1e-6, "%s: %g, not %g", part->code,
                      part->quantity, due);
    }
    for (int i = 0; i < KINDS; i++) {
        ck_assert_msg(met[i] >= kinds[i].least, "\"%s\": %d", kinds[i].begins, met[i]);
    }
    takeoff_free(&takeoff);
}
END_TEST

static void same_text(const char *a, const char *b)
{
    ck_assert_msg((a == NULL) == (b == NULL) && (a == NULL || (a != b && strcmp(a, b) == 0)), "%s, not %s", b, a);
}

/* What an order asks of a list outlives its plan: every text is a copy, and every name is there. */
START_TEST(a_kept_list_is_as_it_was)
{
    struct TakeOff takeoff = takeoff_text(every_way);
    const struct PartsList *list = takeoff.parts;
    const struct PartsList *kept = parts_kept(takeoff.arena, list);
    ck_assert_ptr_nonnull(kept);
    ck_assert_int_eq(kept->count, list->count);
    ck_assert_int_eq(kept->note_count, list->note_count);
    for (int i = 0; i < list->count; i++) {
        const struct Part *from = &list->parts[i], *to = &kept->parts[i];
        same_text(from->code, to->code);
        same_text(from->standard, to->standard);
        same_text(from->unit, to->unit);
        same_text(from->pack_word, to->pack_word);
        same_text(from->article, to->article);
        ck_assert(say_same(from->description, to->description) && say_same(from->note, to->note));
        ck_assert_ptr_ne(from->description, to->description);
        ck_assert(from->aisle == to->aisle && from->pack == to->pack && from->packs == to->packs);
        ck_assert_double_eq(to->quantity, from->quantity);
        ck_assert_double_eq(to->needed, from->needed);
        ck_assert_double_eq(to->length_m, from->length_m);
        const struct PartUse *use = &from->uses[0], *kept_use = &to->uses[0];
        ck_assert_int_eq(to->use_count, 1);
        ck_assert(kept_use->whom == use->whom && kept_use->place == use->place);
        ck_assert((use->run == NULL) == (kept_use->run == NULL) &&
                  (use->segment == NULL) == (kept_use->segment == NULL));
        if (use->run != NULL) {
            same_text(use->run->name, kept_use->run->name);
        }
        if (use->segment != NULL) {
            same_text(use->segment->name, kept_use->segment->name);
        }
    }
    for (int i = 0; i < list->note_count; i++) {
        ck_assert(say_same(list->notes[i], kept->notes[i]) && list->notes[i] != kept->notes[i]);
    }
    takeoff_free(&takeoff);
}
END_TEST

/* Long routes: the uses stay short and say how many more there are. */
START_TEST(uses_stay_short)
{
    struct TakeOff takeoff = takeoff_of("- {name: a, way: wall, length: 2 m}\n- {name: b, way: beam, length: 2 m}\n- "
                                        "{name: c, way: wall, length: 2 m}\n"
                                        "- {name: d, way: beam, length: 2 m}\n- {name: e, way: wall, length: 2 m}\n- "
                                        "{name: f, way: beam, length: 2 m}\n"
                                        "- {name: g, way: wall, length: 2 m}\n- {name: h, way: beam, length: 2 m}\n");
    ck_assert_str_eq(takeoff_uses(&takeoff, "fixing-hook-8"), "feeder: a, b, c, d, e, f and 2 more");
    ck_assert_str_eq(takeoff_uses(&takeoff, "screw-wood-10x40-zinc"), "feeder: b, d, f, h");
    ck_assert(takeoff_notes(&takeoff, "what the fixings go into: feeder: a, c, e, g."));
    takeoff_free(&takeoff);
    struct TakeOff looped =
        takeoff_with("    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3, size: 10 mm2}\n"
                     "    start: {loop: 300 mm}\n",
                     "- {name: a, way: wall, length: 4 m}\n- {name: b, way: beam, length: 4 m}\n", "");
    ck_assert_int_eq(takeoff_way(&looped, "a", 0)->end_fixings, 1); /* so that a is met again, after b */
    ck_assert_str_eq(takeoff_uses(&looped, "fixing-hook-8"), "feeder: a, b");
    takeoff_free(&looped);
}
END_TEST

static Suite *suite_list(void)
{
    Suite *suite = suite_create("the list");
    TCase *tests = tcase_create("list");
    tcase_add_test(tests, one_line_an_article_in_order);
    tcase_add_test(tests, packs_hold_the_quantity);
    tcase_add_test(tests, acts_and_asides);
    tcase_add_test(tests, spare_fixings);
    tcase_add_test(tests, spare_of_each_article);
    tcase_add_test(tests, a_kept_list_is_as_it_was);
    tcase_add_test(tests, uses_stay_short);
    suite_add_tcase(suite, tests);
    return suite;
}

int main(void)
{
    SRunner *runner = srunner_create(suite_list());
    srunner_add_suite(runner, suite_takeoff_tables());
    srunner_add_suite(runner, suite_takeoff_fixings());
    srunner_add_suite(runner, suite_takeoff_ends());
    srunner_add_suite(runner, suite_takeoff_devices());
    srunner_add_suite(runner, suite_takeoff_supply());
    srunner_add_suite(runner, suite_takeoff_ground());
    srunner_add_suite(runner, suite_takeoff_held());
    srunner_run_all(runner, CK_NORMAL);
    const int ran = srunner_ntests_run(runner);
    const int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return ran > 0 && failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
