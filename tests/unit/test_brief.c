/* The brief and the card: nothing that a route calls for is lost between them, both ends are drawn core by core, and
 * what the survey left open and can be seen on site is a hold. */
#include "fault_rig.h"
#include "printed.h"
#include "said.h"

#include "read_route.h"
#include "run_suite.h"

#include <stdlib.h>
#include <string.h>

/* What stands in a paper, whether it is printed in signs or in plain characters; of what HTML writes otherwise only the
 * quotation mark is in these texts. */
static bool printed_in(struct WendBytes page, const struct Say *said_of_it)
{
    static const struct Words words[] = {{.medium = MEDIUM_PLAIN},
                                         {.medium = MEDIUM_SIGNS},
                                         {.medium = MEDIUM_SIGNS, .thousands = true, .together = true}};
    struct Arena *arena = arena_new();
    bool found = false;
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        found = found || strstr(page.data, words_said(arena, &words[i], said_of_it)) != NULL;
    }
    arena_free(arena);
    return found;
}

static const char *const routes[] = {"bell-tower",   "cider-barn", "grain-auger", "joinery-shed",
                                     "lambing-shed", "pottery",    "well-pump"};
enum { ROUTES = (int)(sizeof routes / sizeof routes[0]) };

static struct Wend *planned(const char *name)
{
    char path[512];
    snprintf(path, sizeof path, ROUTES_FOLDER "/%s.yaml", name);
    struct Bytes source = read_route_file(path);
    struct Wend *wend = wend_plan(name, source.data, source.length);
    ck_assert_int_le((int)wend_status(wend), WEND_CHECK_FAILS);
    free(read_route_own(source));
    return wend;
}

static int count_of(const char *text, const char *part)
{
    int count = 0;
    for (const char *at = strstr(text, part); at != NULL; at = strstr(at + 1, part)) {
        count++;
    }
    return count;
}

/* A caution of every job is on the card and not on the brief; one that this route brings is on the brief. */
START_TEST(no_caution_is_lost)
{
    struct Wend *wend = planned(routes[_i]);
    const struct Plan *plan = wend_result(wend);
    const struct WendBytes brief = wend_document(wend, WEND_BRIEF_HTML), card = wend_document(wend, WEND_CARD_HTML);
    ck_assert_int_ge(plan->caution_count, 10);
    int on_card = 0;
    struct Arena *arena = arena_new();
    for (int i = 0; i < plan->caution_count; i++) {
        const struct Caution *caution = &plan->cautions[i];
        ck_assert_ptr_nonnull(caution->shortly);
        on_card += caution->every_job;
        ck_assert_msg(printed_in(card, caution->shortly) == caution->every_job, "%s: %s", routes[_i],
                      plainly(caution->shortly));
        /* behind a run's name it begins small */
        const struct Say *named = say(arena, SAY_COLON_SMALL, say_name(""), say_part(caution->shortly));
        ck_assert_msg((printed_in(brief, caution->shortly) || printed_in(brief, named)) == !caution->every_job,
                      "%s: %s", routes[_i], plainly(caution->shortly));
    }
    ck_assert_int_ge(on_card, 5);
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* What is for one run of several says for which; where there is one run nobody asks. */
START_TEST(a_caution_names_its_run)
{
    struct Wend *several = planned("joinery-shed"), *one = planned("cider-barn");
    ck_assert_ptr_nonnull(strstr(printed(several).data, "<mind>feeder: over 25 kg"));
    ck_assert_ptr_nonnull(strstr(printed(several).data, "<mind>Surge protection"));
    ck_assert_ptr_nonnull(strstr(printed(one).data, "<mind>Over 25 kg"));
    wend_free(several);
    wend_free(one);
}
END_TEST

/* What a reader sees of a page: neither its marks nor its style, and a blank where a mark stood. */
static char *seen(const char *page)
{
    char *text = malloc(strlen(page) + 1), *to = text;
    bool style = false;
    for (const char *at = page; *at != '\0'; at++) {
        if (*at == '<') {
            style = strncmp(at, "<style", 6) == 0;
            at += strcspn(at, ">");
            *to++ = ' ';
        } else if (!style) {
            *to++ = *at;
        }
        if (*at == '\0') {
            break;
        }
    }
    *to = '\0';
    return text;
}

/* Our own names for things: of a result, of a key with its way to it, of a check on a stretch. */
static void no_insides(const struct Plan *plan, const char *text, const char *of)
{
    static const char *const ours[] = {"not due", "(null)", "runs.",      "segments.",
                                       "SAY_",    "pull:",  "duct-fill:", "bend:"};
    for (size_t i = 0; i < sizeof ours / sizeof ours[0]; i++) {
        for (const char *at = strstr(text, ours[i]); at != NULL; at = strstr(at + 1, ours[i])) {
            const char after = at[strlen(ours[i])]; /* "bend: ask the maker" is plain words */
            ck_assert_msg(ours[i][strlen(ours[i]) - 1] == ':' && after == ' ', "%s: %.60s", of, at);
        }
    }
    for (int i = 0; i < plan->open_count; i++) {
        char words[200];
        snprintf(words, sizeof words, "%s of %s could not", plan->open[i].id, plan->open[i].run);
        ck_assert_msg(strstr(text, words) == NULL, "%s: %s", of, words);
    }
}

static const char *const all_routes[] = {
    "routes/bell-tower",   "routes/cider-barn",          "routes/grain-auger",
    "routes/joinery-shed", "routes/lambing-shed",        "routes/pottery",
    "routes/well-pump",    "tests/golden/failing-store", "tests/golden/open-store"};
enum { ALL_ROUTES = (int)(sizeof all_routes / sizeof all_routes[0]) };

START_TEST(no_paper_speaks_of_insides)
{
    static const enum WendDocument papers[] = {WEND_BRIEF_HTML,  WEND_CARD_HTML, WEND_PARTS_HTML,
                                               WEND_DESIGN_HTML, WEND_TEST_HTML, WEND_PACK_HTML};
    char path[512];
    snprintf(path, sizeof path, ROUTES_FOLDER "/../%s.yaml", all_routes[_i]);
    struct Bytes source = read_route_file(path);
    struct Wend *wend = wend_plan(all_routes[_i], source.data, source.length);
    for (size_t i = 0; i < sizeof papers / sizeof papers[0]; i++) {
        char *text = seen(wend_document(wend, papers[i]).data);
        ck_assert_int_gt((int)strlen(text), 500);
        no_insides(wend_result(wend), text, all_routes[_i]);
        free(text);
    }
    wend_free(wend);
    free(read_route_own(source));
}
END_TEST

/* It is kept from job to job, so it names none and is the same for all. */
START_TEST(the_card_is_of_every_job)
{
    struct Wend *one = planned("cider-barn"), *other = planned("well-pump");
    const struct WendBytes card = wend_document(one, WEND_CARD_HTML), same = wend_document(other, WEND_CARD_HTML);
    ck_assert_str_eq(strstr(card.data, "<main>"), strstr(same.data, "<main>"));
    ck_assert_int_eq(wend_result(one)->card_count, wend_result(other)->card_count);
    for (int i = 0; i < wend_result(one)->card_count; i++) {
        ck_assert(printed_in(card, wend_result(one)->card[i].text));
    }
    ck_assert_ptr_null(strstr(card.data, "Cider"));
    wend_free(one);
    wend_free(other);
}
END_TEST

/* Both ends with a plate for armour and earth core, and a line for every core. */
START_TEST(both_ends_core_by_core)
{
    struct Wend *wend = planned("cider-barn");
    const char *brief = wend_document(wend, WEND_BRIEF_HTML).data;
    ck_assert_int_eq(count_of(brief, "<strong class=\"joined-yes\">CONNECTED"), 2);
    ck_assert_int_eq(count_of(brief, "<strong class=\"joined-no\">NOT CONNECTED"), 2);
    ck_assert_int_eq(count_of(brief, "<span class=\"wire brown\""), 2);
    ck_assert_int_eq(count_of(brief, "<span class=\"wire grey\""), 2);
    ck_assert_int_eq(count_of(brief, "<span class=\"wire black\""), 2);
    ck_assert_int_eq(count_of(brief, "do NOT join it to the earth here"), 1); /* at the far end alone */
    wend_free(wend);
}
END_TEST

/* What the survey left open: settled on site where it can be seen there. */
static const struct {
    const char *supply, *device, *cable, *segments;
    const char *title; /* NULL: no hold comes of it */
    const char *reading;
} left_open[] = {
    {"system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1.6 kA", "kind: MCB, curve: B, rating: 16 A", NULL, NULL,
     "name=\"Breaking capacity\"", "reading=\"marked ____ kA, at least 1.60 kA\""},
    {"system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1.6 kA",
     "kind: MCB, curve: B, rating: 16 A, breaking-capacity: 6 kA", NULL, NULL, NULL, "reading=\"marked"},
    {"system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1.6 kA",
     "kind: MCB, curve: B, rating: 16 A, breaking-capacity: 6 kA", NULL,
     "{name: a, way: duct, length: 20 m, duct: {laid: existing}}", "name=\"", "reading=\"outside ____ mm\""},
};
enum { LEFT_OPEN = (int)(sizeof left_open / sizeof left_open[0]) };

START_TEST(open_on_site_is_a_hold)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.supply = left_open[_i].supply,
                                                    .device = left_open[_i].device,
                                                    .load = "current: 10 A",
                                                    .cable = left_open[_i].cable,
                                                    .segments = left_open[_i].segments});
    const struct Bytes xml = printed(wend);
    const char *holds = strstr(xml.data, "<holds>");
    ck_assert_ptr_nonnull(holds);
    ck_assert_ptr_nonnull(strstr(holds, "Far-end earthing said back"));
    ck_assert_ptr_nonnull(strstr(holds, "at least 1 M")); /* of the laid cable: BS 7671 Table 64 */
    ck_assert_int_eq(strstr(holds, left_open[_i].reading) != NULL, left_open[_i].title != NULL);
    ck_assert(left_open[_i].title == NULL || strstr(holds, left_open[_i].title) != NULL);
    wend_free(wend);
}
END_TEST

/* The order of the day names each hold once, in their order. */
START_TEST(every_hold_is_met_in_the_day)
{
    struct Wend *wend = planned(routes[_i]);
    const struct Bytes xml = printed(wend);
    const char *day = strstr(xml.data, "<day>");
    const int holds = count_of(strstr(xml.data, "<holds>"), "<hold ");
    ck_assert_int_ge(holds, 5);
    ck_assert_ptr_nonnull(day);
    /* "1", or "1, 2" where what is open joins a step */
    int next = 1;
    for (const char *at = strstr(day, " hold=\""); at != NULL; at = strstr(at, " hold=\"")) {
        at += strlen(" hold=\"");
        for (char *end = NULL; *at >= '0' && *at <= '9'; at = *end == ',' ? end + 2 : end) {
            ck_assert_msg(strtol(at, &end, 10) == next, "%s: hold %d", routes[_i], next);
            next++;
        }
    }
    ck_assert_int_eq(next, holds + 1);
    wend_free(wend);
}
END_TEST

/* Every stretch has one line, in one group. */
START_TEST(a_line_a_stretch)
{
    struct Wend *wend = planned(routes[_i]);
    const struct Bytes xml = printed(wend);
    const char *work = strstr(xml.data, "<work>");
    const struct Plan *plan = wend_result(wend);
    for (int i = 0; i < plan->segment_count; i++) {
        char line[160];
        snprintf(line, sizeof line, "<line number=\"%d\" name=\"%s\" ", i + 1, plan->segments[i].surveyed->name);
        ck_assert_int_eq(count_of(work, line), 1);
    }
    ck_assert_int_eq(count_of(work, "<line number="), plan->segment_count);
    wend_free(wend);
}
END_TEST

/* What the hand reads off one line: never a sum that reads as one figure more. */
START_TEST(cells_of_a_line)
{
    struct Wend *wend = planned("cider-barn");
    const char *work = strstr(printed(wend).data, "<work>");
    ck_assert_ptr_nonnull(strstr(work, ">8 at 371 + 2 at the bend<"));
    ck_assert_ptr_nonnull(strstr(work, ">bend 250, never below 117<"));
    ck_assert_ptr_nonnull(strstr(work, ">bend 117 or more<"));
    ck_assert_ptr_nonnull(strstr(work, ">35, bit 360 or longer<"));
    ck_assert_ptr_nonnull(strstr(work, ">cavity 300<"));
    ck_assert_ptr_nonnull(strstr(work, ">sand 75 under, 75 over: 0.45 m3<"));
    ck_assert_ptr_nonnull(strstr(work, ">7 at 366 + 1 within 150 of the end<"));
    /* figures without a unit are said to be millimetres */
    ck_assert_ptr_nonnull(strstr(wend_document(wend, WEND_BRIEF_HTML).data, "Millimetres unless it says m."));
    wend_free(wend);
}
END_TEST

/* What many lines would repeat stands once, in the heading, with the run or the stretches that it is for. */
START_TEST(repeated_once_in_the_heading)
{
    struct Wend *wend = planned("lambing-shed");
    const char *work = strstr(printed(wend).data, "<work>");
    ck_assert_int_eq(count_of(work, "name=\"Fix with hook cleat no. 7 (feeder), metal one-hole clip (camera), metal"),
                     1);
    ck_assert_int_eq(count_of(work, "hook cleat no. 7"), 1);
    ck_assert_int_eq(count_of(work, ">\u27e81, 2, 3, 5\u27e9: data at least 60 mm clear of power.<"), 1);
    ck_assert_int_eq(count_of(work, ">Data at least 60 mm clear of power.<"), 0);
    /* what the same two stretches have in common shares their numbers */
    ck_assert_int_eq(
        count_of(work, ">\u27e82, 3\u27e9: on top of the insulation, off polystyrene. Before 2000: asbestos?"), 1);
    ck_assert_int_eq(count_of(work, "n top of the insulation"), 1);
    ck_assert_int_eq(count_of(work, ">Data through a hole of its own, 60 mm from power, edge to edge.<"), 1);
    /* what only one of two holes has is not said of both */
    ck_assert_int_eq(count_of(work, "name=\"Drill: scan first, from the safer side, down to the outside; seal"), 1);
    ck_assert_int_eq(count_of(work, "sleeve 32"), 1);
    ck_assert_int_eq(count_of(work, "Brick: nylon plug 7 mm and woodscrew no. 10 x 50 mm."), 1);
    ck_assert_int_eq(count_of(work, ">brick<"), 2); /* the stretches that it is for */
    wend_free(wend);
}
END_TEST

/* Two runs that end alike, and what their tray takes, are said once; a longer tail parts them again. */
START_TEST(runs_alike_are_said_together)
{
    static const char *const tails[] = {"", ", finish: {tail: 700 mm}"};
    char text[1024];
    snprintf(text, sizeof text,
             "wend: 1\n"
             "job: {title: Kiln yard supply}\n"
             "supply: {system: TN-S, loop-impedance: 0.25 ohm}\n"
             "runs:\n"
             "  north: {load: {current: 18 A}, cable: {type: BS5467, cores: 3}}\n"
             "  south: {load: {current: 18 A}, cable: {type: BS5467, cores: 3}%s}\n"
             "segments:\n"
             "  - {name: gable, way: wall, length: 6.5 m, rise: 2.5 m, fixed-to: brick}\n"
             "  - {name: gantry, way: tray, length: 11 m}\n",
             tails[_i]);
    struct Wend *wend = wend_plan("kiln", text, strlen(text));
    ck_assert_int_le((int)wend_status(wend), WEND_CHECK_FAILS);
    const char *ends = strstr(printed(wend).data, "<ends>"), *work = strstr(ends, "<work>");
    ck_assert_int_eq(count_of(ends, "<run name=\"north, south\""), _i == 0);
    ck_assert_int_eq(count_of(ends, "tail=\"0.7 m\""), _i);
    ck_assert_int_eq(count_of(ends, "Gland, earth tag, lead to the earth bar."), _i == 0 ? 1 : 2);
    ck_assert_int_eq(count_of(work, ">Fit stainless steel ties"), 1);
    ck_assert_int_eq(count_of(work, "fit stainless steel ties"), 0);
    wend_free(wend);
}
END_TEST

/* Of the trenches together: how deep the tape lies where all have it alike, what is left over, and that the steps
 * between ground and surface are in no surveyed length. What only one stretch is fixed by stays with it. */
START_TEST(trenches_in_the_heading)
{
    struct Wend *wend = planned("cider-barn");
    const char *work = strstr(printed(wend).data, "<work>");
    ck_assert_int_eq(count_of(work, ">Tape 400 down.<"), 1);
    ck_assert_int_eq(count_of(work, ">tape 400 down<"), 0);
    ck_assert_int_eq(count_of(work, ">Spoil 0.62 m3.<"), 1); /* 0.02 + 0.59 + 0.01 of the three */
    ck_assert_int_eq(count_of(work, ">Steps in and out not measured: cut the cable last.<"), 1);
    ck_assert_int_eq(count_of(work, ">timber: stainless woodscrew no. 10 x 40 mm<"), 1);
    wend_free(wend);
}
END_TEST

/* What an island asks of armour and rods stands where it bites, once: at the end, beside the rods. */
START_TEST(island_is_said_where_it_bites)
{
    struct Wend *wend = planned("cider-barn");
    const char *xml = printed(wend).data, *ends = strstr(xml, "<ends>"), *rods = strstr(xml, "<rods>");
    const char *brief = wend_document(wend, WEND_BRIEF_HTML).data;
    ck_assert_int_eq(count_of(brief, "No earth tag, no bare armour within reach of the outbuilding's earth."), 1);
    ck_assert_ptr_nonnull(strstr(ends, "no bare armour within reach"));
    ck_assert_int_eq(count_of(brief, "3.5 m or more (distributors' figure) from the trench"), 1);
    ck_assert_ptr_nonnull(strstr(rods, "3.5 m or more"));
    wend_free(wend);
}
END_TEST

/* Marks of the survey: what, where from the supply end, how far off, and what the note adds. */
START_TEST(marks_are_told)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){
        .supply = "system: TN-S, loop-impedance: 0.35 ohm",
        .device = "kind: MCB, curve: B, rating: 16 A, breaking-capacity: 6 kA",
        .load = "current: 10 A",
        .segments = "{name: a, way: buried, length: 20 m, marks: [{what: tree, at: 4 m, side: left, off: 1.5 m}, "
                    "{what: service, at: 7 m, note: water to the trough}]}"});
    const char *work = strstr(printed(wend).data, "<work>");
    ck_assert_ptr_nonnull(strstr(work, ">Tree at 4 m, 1.5 m left.<"));
    ck_assert_ptr_nonnull(strstr(work, ">Service at 7 m: water to the trough.<"));
    wend_free(wend);
}
END_TEST

/* An aim below an ohm is not rounded away. */
START_TEST(aim_of_the_electrode)
{
    struct Wend *wend =
        rig_plan(&(struct RigRoute){.supply = "system: TN-C-S, loop-impedance: 0.35 ohm, fault-current: 1.6 kA",
                                    .top = "earthing: {far-end: island, extraneous-parts: no, electrode: {rods: 2, "
                                           "length: 2.4 m, diameter: 16 mm, target: 0.6 ohm}}",
                                    .device = "kind: RCBO, curve: B, rating: 16 A, residual: 30 mA",
                                    .load = "current: 10 A"});
    const struct Bytes xml = printed(wend);
    ck_assert_ptr_nonnull(strstr(xml.data, "wanted: 0.6 ohm or less"));
    ck_assert_ptr_nonnull(strstr(strstr(xml.data, "<rods>"), "0.6 ohm"));
    wend_free(wend);
}
END_TEST

/* What the network operator must hear of before the work says "before" wherever it is printed: brief, and cover too. */
START_TEST(notice_is_whole_on_the_cover)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.supply = "system: TN-S, loop-impedance: 0.35 ohm",
                                                    .run = "use: heat-pump",
                                                    .device = "kind: MCB, curve: C, rating: 16 A",
                                                    .load = "current: 10 A"});
    static const char before[] = "new maximum demand <strong>before</strong>";
    ck_assert_int_eq(count_of(wend_document(wend, WEND_BRIEF_HTML).data, before), 1);
    ck_assert_int_eq(count_of(wend_document(wend, WEND_PACK_HTML).data, before), 2);
    wend_free(wend);
}
END_TEST

/* Of several runs an end has no plates: what must not be joined there comes before glands and tails. */
START_TEST(drawing_of_several_runs_begins_with_the_earth)
{
    struct Wend *wend = planned("lambing-shed");
    const char *svg = wend_document(wend, WEND_DIAGRAM_SVG).data;
    ck_assert_int_eq(count_of(svg, ">feeder: Armour NOT CONNECTED, Earth core NOT CONNECTED: cap\u00a0it;"), 1);
    ck_assert_int_eq(count_of(svg, ">feeder: Armour CONNECTED, Earth core CONNECTED;"), 1);
    /* nor is one caution said twice */
    ck_assert_int_eq(count_of(svg, ">data hole 60\u00a0mm from power<"), 1);
    wend_free(wend);
}
END_TEST

/* A run that leaves the way of another begins where it leaves: 30 m north of the start, 10 m to the west and no higher
 * than that, whatever the other one does in between. By hand: the root of 10 and 30 squared is 31.6. */
START_TEST(a_branch_begins_where_it_leaves)
{
    static const char route[] =
        "wend: 1\njob: {title: Fork}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm}\nruns:\n"
        "  east: {load: {current: 10 A}, cable: {type: BS5467, cores: 3}, along: [lane, rise]}\n"
        "  west: {load: {current: 10 A}, cable: {type: BS5467, cores: 3}, along: [lane, hedge]}\n"
        "segments:\n"
        "  - {name: lane, way: fence, length: 30 m, heading: N}\n"
        "  - {name: rise, way: fence, length: 20 m, rise: 2 m, heading: E}\n"
        "  - {name: hedge, way: fence, length: 10 m, heading: W, marks: [{what: tree, at: 5 m, note: old pear}]}\n";
    struct Wend *wend = wend_plan("fork", route, strlen(route));
    ck_assert_int_le((int)wend_status(wend), WEND_CHECK_FAILS);
    const char *svg = wend_document(wend, WEND_DIAGRAM_SVG).data;
    ck_assert_int_eq(count_of(svg, "C lies 10.0\u00a0m west, 30.0\u00a0m north of A; straight distance 31.6\u00a0m."),
                     1);
    ck_assert_int_eq(count_of(svg, ">from the end of 1 lane<"), 1);
    ck_assert_int_eq(count_of(svg, ">old pear<"), 1); /* beside its sign; its column has it with the place */
    const char *hedge = strstr(wend_document(wend, WEND_PLAN_XML).data, "<segment name=\"hedge\"");
    ck_assert_ptr_nonnull(hedge);
    const char *height = strstr(hedge, "height-from-m=\"");
    ck_assert(height != NULL && strncmp(height, "height-from-m=\"0\"", 17) == 0);
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("brief");
    TCase *tests = tcase_create("brief");
    tcase_set_timeout(tests, 120);
    tcase_add_loop_test(tests, no_caution_is_lost, 0, ROUTES);
    tcase_add_test(tests, a_caution_names_its_run);
    tcase_add_loop_test(tests, no_paper_speaks_of_insides, 0, ALL_ROUTES);
    tcase_add_test(tests, the_card_is_of_every_job);
    tcase_add_test(tests, both_ends_core_by_core);
    tcase_add_loop_test(tests, open_on_site_is_a_hold, 0, LEFT_OPEN);
    tcase_add_loop_test(tests, every_hold_is_met_in_the_day, 0, ROUTES);
    tcase_add_loop_test(tests, a_line_a_stretch, 0, ROUTES);
    tcase_add_test(tests, cells_of_a_line);
    tcase_add_test(tests, repeated_once_in_the_heading);
    tcase_add_loop_test(tests, runs_alike_are_said_together, 0, 2);
    tcase_add_test(tests, trenches_in_the_heading);
    tcase_add_test(tests, island_is_said_where_it_bites);
    tcase_add_test(tests, drawing_of_several_runs_begins_with_the_earth);
    tcase_add_test(tests, a_branch_begins_where_it_leaves);
    tcase_add_test(tests, marks_are_told);
    tcase_add_test(tests, aim_of_the_electrode);
    tcase_add_test(tests, notice_is_whole_on_the_cover);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
