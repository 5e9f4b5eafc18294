/* What holds of the take-off whatever the route, over routes made up at random with a fixed seed: doubling a straight
 * clipped stretch never lessens a part; cutting a stretch in two changes no quantity; one run more never lessens a
 * part. */
#include "made_route.h"
#include "run_suite.h"
#include "sweep_depth.h"
#include "takeoff_rig.h"

#include <math.h>
#include <string.h>

#define ROUTES sweep_depth(200, 400)

/* The routes of the other relations, with rises, bends and surfaces. */
static struct MadeRoute make(int seed)
{
    static const char *const surfaces[] = {"brick", "block", "concrete", "timber", "steel", "plasterboard"};
    struct MadeRoute made = made_route((uint32_t)seed);
    uint32_t state = (uint32_t)seed * 7919 + 3;
    made.size = 10;
    for (int i = 0; i < made.count; i++) {
        struct MadeStretch *stretch = &made.stretches[i];
        const char *way = stretch->way;
        const int steep = made_between(&state, 0, 3);
        stretch->rise_mm = steep == 0 ? stretch->length_mm : steep == 1 ? -stretch->length_mm / 2 : 0;
        stretch->bends = made_between(&state, 0, 2);
        if (strcmp(way, "through-wall") == 0) {
            stretch->bends = 0;
        }
        const bool clipped = strcmp(way, "wall") == 0 || strcmp(way, "fence") == 0 || strcmp(way, "beam") == 0 ||
                             strcmp(way, "loft-void") == 0 || strcmp(way, "tray") == 0;
        if (clipped && made_between(&state, 0, 3) > 0) {
            stretch->fixed_to = surfaces[made_between(&state, 0, 5)];
        }
    }
    return made;
}

static struct TakeOff count(const struct MadeRoute *made)
{
    char text[MADE_TEXT_MOST];
    made_write(made, text);
    return takeoff_text(text);
}

/* Every part of one list is in the other with as much at least. Codes of cables name their run's length, not here. */
static void none_lessened(const struct TakeOff *before, const struct TakeOff *after, int seed)
{
    for (int i = 0; i < before->parts->count; i++) {
        const struct Part *part = &before->parts->parts[i];
        const struct Part *now = takeoff_part(after, part->code);
        ck_assert_msg(now != NULL, "route %d: %s is gone", seed, part->code);
        ck_assert_msg(now->needed >= part->needed - 1e-6 && now->quantity >= part->quantity - 1e-6 &&
                          now->packs >= part->packs,
                      "route %d: %s: %g, then %g", seed, part->code, part->needed, now->needed);
    }
}

/* The work on the stretches adds up to what the list holds. */
static void ways_add_up(const struct TakeOff *takeoff, int seed)
{
    double listed = 0;
    for (int i = 0; i < takeoff->parts->count; i++) {
        const struct Part *part = &takeoff->parts->parts[i];
        const bool fixing = strncmp(part->code, "fixing-", 7) == 0 || strncmp(part->code, "tie-", 4) == 0 ||
                            strncmp(part->code, "cleat-", 6) == 0;
        listed += fixing ? part->needed : 0;
    }
    double worked = 0;
    for (int i = 0; i < takeoff->parts->way_count; i++) {
        const struct PartsWay *way = &takeoff->parts->ways[i];
        worked += way->fixings + way->end_fixings;
        ck_assert_msg(way->fixings == 0 || way->pitch_m <= way->spacing_m + 1e-9, "route %d", seed);
        ck_assert_int_gt(way->text_count, 0);
        if (i > 0) {
            ck_assert_int_ge(way->segment, takeoff->parts->ways[i - 1].segment);
        }
    }
    ck_assert_msg(fabs(listed - worked) < 1e-6, "route %d: %g listed, %g on the way", seed, listed, worked);
}

START_TEST(work_adds_up_to_the_list)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        const struct MadeRoute made = make(seed);
        struct TakeOff takeoff = count(&made);
        ways_add_up(&takeoff, seed);
        takeoff_free(&takeoff);
    }
}
END_TEST

START_TEST(doubling_a_clipped_stretch_lessens_nothing)
{
    int doubled = 0;
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = make(seed);
        struct TakeOff before = count(&made);
        for (int i = 0; i < made.count; i++) {
            struct MadeStretch *stretch = &made.stretches[i];
            const bool straight = stretch->bends == 0 && stretch->rise_mm == 0;
            if (!straight || (strcmp(stretch->way, "wall") != 0 && strcmp(stretch->way, "fence") != 0 &&
                              strcmp(stretch->way, "beam") != 0 && strcmp(stretch->way, "loft-void") != 0)) {
                continue;
            }
            stretch->length_mm *= 2;
            struct TakeOff after = count(&made);
            none_lessened(&before, &after, seed);
            const bool more =
                takeoff_needed(&after, takeoff_way(&after, before.plan->segments[i].surveyed->name, 0)->fixing_code) >
                takeoff_needed(&before, takeoff_way(&after, before.plan->segments[i].surveyed->name, 0)->fixing_code);
            ck_assert_msg(more || stretch->length_mm < 1000, "route %d: twice as long and no fixing more", seed);
            takeoff_free(&after);
            stretch->length_mm /= 2;
            doubled++;
        }
        takeoff_free(&before);
    }
    ck_assert_int_gt(doubled, ROUTES / 4);
}
END_TEST

/* As a survey would cut it: the same slope on both sides, the bends on one. */
static void cut(struct MadeRoute *made, int at, int first_mm)
{
    memmove(&made->stretches[at + 1], &made->stretches[at], (size_t)(made->count - at) * sizeof made->stretches[0]);
    struct MadeStretch *a = &made->stretches[at];
    struct MadeStretch *b = &made->stretches[at + 1];
    a->rise_mm = a->rise_mm == 0 ? 0 : a->rise_mm > 0 ? first_mm : -first_mm / 2;
    a->length_mm = first_mm;
    b->length_mm -= first_mm;
    b->rise_mm -= a->rise_mm;
    a->bends = 0;
    made->count++;
}

/* What holds a cable and what it lies in: nothing else of its own there already, so that all of it is counted. Armoured
 * cable is not drawn into conduit or trunking. */
static const struct Held {
    const char *way, *more;
    bool armoured;
    const char *part; /* the start of a code that such a stretch must put on the list */
} held[] = {
    {"conduit", ", size: 25 mm, material: plastic", false, "conduit-plastic-25"},
    {"conduit", ", size: 32 mm, material: steel", false, "conduit-steel-32"},
    {"trunking", ", size: 50 x 50 mm", false, "trunking-"},
    {"tray", "", true, "tray"},
    {"ladder", "", true, "ladder"},
    {"catenary", "", true, "catenary"},
    {"duct", "", true, "duct-63"},
    {"buried", ", depth: 600 mm", true, "sand"},
};
enum { HELD = (int)(sizeof held / sizeof held[0]) };

/* Two walls, and between them one to four stretches of one way, of equal character. */
static struct MadeRoute make_held(const struct Held *what, int seed)
{
    static const char *const cables[] = {"type: BS6004-multicore, cores: 3, diameter: 11 mm",
                                         "type: BS5467, cores: 3, diameter: 18 mm"};
    uint32_t state = (uint32_t)seed * 2654435761U + 5;
    struct MadeRoute made = {.count = 2 + made_between(&state, 1, 4),
                             .current_a = 6,
                             .phases = 1,
                             .size = 4,
                             .terminals = 70,
                             .cable = cables[what->armoured]};
    const int bends = made_between(&state, 0, 1);
    for (int i = 0; i < made.count; i++) {
        struct MadeStretch *stretch = &made.stretches[i];
        const bool inside = i > 0 && i < made.count - 1;
        *stretch = (struct MadeStretch){.way = inside ? what->way : "wall",
                                        .length_mm = made_between(&state, 500, 20000),
                                        .air_degc = 30,
                                        .bends = inside ? bends : 0,
                                        .more = inside ? what->more : NULL};
        const bool overhead = strcmp(stretch->way, "catenary") == 0 || strcmp(stretch->way, "buried") == 0;
        stretch->fixed_to = overhead || strcmp(stretch->way, "duct") == 0 ? NULL : "brick";
    }
    return made;
}

START_TEST(cutting_what_is_held_changes_no_quantity)
{
    int counted = 0;
    for (int seed = 1; seed <= ROUTES / 4; seed++) {
        struct MadeRoute made = make_held(&held[_i], seed);
        struct TakeOff before = count(&made);
        for (int i = 0; i < before.parts->count; i++) {
            counted += strncmp(before.parts->parts[i].code, held[_i].part, strlen(held[_i].part)) == 0;
        }
        const int at = 1 + seed % (made.count - 2);
        cut(&made, at, 10 + seed * 131 % (made.stretches[at].length_mm - 20));
        struct TakeOff after = count(&made);
        none_lessened(&before, &after, seed);
        none_lessened(&after, &before, seed);
        takeoff_free(&after);
        takeoff_free(&before);
    }
    ck_assert_msg(counted >= ROUTES / 4, "%s: %s is counted %d times", held[_i].way, held[_i].part, counted);
}
END_TEST

START_TEST(cutting_a_stretch_changes_no_quantity)
{
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = make(seed);
        struct TakeOff before = count(&made);
        const int at = seed % made.count;
        cut(&made, at, 10 + seed * 131 % (made.stretches[at].length_mm - 20));
        struct TakeOff after = count(&made);
        none_lessened(&before, &after, seed);
        none_lessened(&after, &before, seed);
        takeoff_free(&after);
        takeoff_free(&before);
    }
}
END_TEST

/* A cable and a data cable along the whole way, and one along its first stretch. */
START_TEST(one_run_more_lessens_nothing)
{
    static const char *const more[] = {
        "  second:\n    load: {current: 4 A, phases: 1}\n    cable: {type: BS5467, cores: 3, size: 10 mm2}\n",
        "  link:\n    kind: data\n    cable: {type: EN50288, diameter: 7 mm}\n",
        "  stub:\n    load: {current: 4 A, phases: 1}\n    cable: {type: BS5467, cores: 2, size: 4 mm2, cpc: armour}\n "
        "   along: "
        "[s0]\n",
    };
    for (int seed = 1; seed <= ROUTES; seed++) {
        struct MadeRoute made = make(seed);
        struct TakeOff before = count(&made);
        made.more_runs = more[seed % 3];
        struct TakeOff after = count(&made);
        none_lessened(&before, &after, seed);
        ck_assert_int_gt(after.parts->count, before.parts->count);
        ways_add_up(&after, seed);
        takeoff_free(&after);
        takeoff_free(&before);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("relations of the take-off");
    TCase *relations = tcase_create("relations");
    tcase_set_timeout(relations, 120);
    tcase_add_test(relations, work_adds_up_to_the_list);
    tcase_add_test(relations, doubling_a_clipped_stretch_lessens_nothing);
    tcase_add_test(relations, cutting_a_stretch_changes_no_quantity);
    tcase_add_loop_test(relations, cutting_what_is_held_changes_no_quantity, 0, HELD);
    tcase_add_test(relations, one_run_more_lessens_nothing);
    suite_add_tcase(suite, relations);
    return run_suite(suite);
}
