/* What is joined to earth at the two ends, as the papers say it, for every protective conductor, armoured and not, on
 * an island, on exported earth and where nobody surveyed it. Whole routes are planned and the papers' words looked for:
 * an island's earth core that is told to be joined at both ends would carry the supply's earth into the outbuilding. */
#include "fault_rig.h"

#include "run_suite.h"
#include "wend/documents.h"

#include <string.h>

#define ISLAND                                                                                                         \
    "earthing: {far-end: island, electrode: {rods: 2, length: 2.4 m, diameter: 16 mm, spacing: 3 m}, "                 \
    "board-residual: 30 mA}"
#define SEPARATE_RUN "  cpc: {kind: earth, cable: {type: BS6004-single, size: 10 mm2}}"

static const char not_here[] = "do NOT join it to the earth here";
static const char two_earths[] = "The two earths apart";

/* Each row: the cable, further runs, how the far end is earthed; what plan.xml says and what it must not. */
static const struct {
    const char *cable, *runs, *top;
    const char *says[4], *never[3];
} rows[] = {
    {"type: BS5467, cores: 3, cpc: core",
     NULL,
     ISLAND,
     {"what=\"Armour\" state=\"NOT CONNECTED\"", "what=\"Earth core\" state=\"NOT CONNECTED\"", not_here, two_earths},
     {"colour=\"black\" sleeve=\"green-and-yellow\" supply=\"earth bar\" far=\"earth bar\"",
      "between=\"the protective core, end to end"}},
    {"type: BS5467, cores: 3, cpc: core-and-armour",
     NULL,
     ISLAND,
     {"what=\"Earth core\" state=\"NOT CONNECTED\"", not_here, "between=\"the armour, gland to gland", two_earths},
     {"far=\"earth bar\"", "core and armour share a fault"}},
    {"type: BS5467, cores: 2, cpc: armour",
     NULL,
     ISLAND,
     {"what=\"Armour\" state=\"NOT CONNECTED\"", two_earths, "between=\"the armour, gland to gland"},
     {"what=\"Earth core\"", "far=\"earth bar\"", not_here}},
    {"type: BS5467, cores: 3, cpc: armour",
     NULL,
     ISLAND,
     {"supply=\"spare: earth bar\"", not_here, two_earths},
     {"far=\"earth bar\"", "far=\"spare"}},
    {"type: BS5467, cores: 2, cpc: separate",
     SEPARATE_RUN,
     ISLAND,
     {"what=\"Earth cable alongside\" state=\"NOT CONNECTED\"", "Do NOT join it to the earth here", two_earths,
      "the separate protective conductor is taken to be joined"},
     {"far=\"earth bar\""}},
    {"type: BS5467, cores: 2, cpc: none",
     NULL,
     ISLAND,
     {"what=\"Armour\" state=\"NOT CONNECTED\"", two_earths},
     {"what=\"Earth core\"", "far=\"earth bar\""}},
    {"type: BS7211-multicore, cores: 3, cpc: core",
     NULL,
     ISLAND,
     {"what=\"Earth core\" state=\"NOT CONNECTED\"", not_here, two_earths, "colour=\"the earth core\""},
     {"what=\"Armour\"", "far=\"earth bar\""}},
    {"type: BS5467, cores: 3, cpc: core",
     NULL,
     "earthing: {far-end: export}",
     {"what=\"Armour\" state=\"CONNECTED\"", "what=\"Earth core\" state=\"CONNECTED\"", "far=\"earth bar\""},
     {"NOT CONNECTED", not_here, two_earths}},
    {"type: BS5467, cores: 3, cpc: core",
     NULL,
     NULL,
     {"what=\"Armour\" state=\"ASK FIRST\"", "what=\"Earth core\" state=\"ASK FIRST\"", "far=\"ASK FIRST",
      "ASK FIRST before this gland is bought"},
     {"far=\"earth bar\""}},
};
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

START_TEST(each_end_is_said)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.cable = rows[_i].cable,
                                                    .runs = rows[_i].runs,
                                                    .top = rows[_i].top,
                                                    .device = "kind: RCBO, curve: B, rating: 32 A, residual: 100 mA"});
    const struct Bytes xml = wend_document(wend, WEND_PLAN_XML);
    ck_assert_ptr_nonnull(xml.data);
    for (int k = 0; k < 4 && rows[_i].says[k] != NULL; k++) {
        ck_assert_msg(strstr(xml.data, rows[_i].says[k]) != NULL, "%s: lacks %s", rows[_i].cable, rows[_i].says[k]);
    }
    for (int k = 0; k < 3 && rows[_i].never[k] != NULL; k++) {
        ck_assert_msg(strstr(xml.data, rows[_i].never[k]) == NULL, "%s: has %s", rows[_i].cable, rows[_i].never[k]);
    }
    wend_free(wend);
}
END_TEST

/* The drawing says it too. */
START_TEST(the_drawing_says_it)
{
    struct Wend *wend = rig_plan(&(struct RigRoute){.cable = "type: BS5467, cores: 3, cpc: core",
                                                    .top = ISLAND,
                                                    .device = "kind: RCBO, curve: B, rating: 32 A, residual: 100 mA"});
    const struct Bytes svg = wend_document(wend, WEND_DIAGRAM_SVG);
    ck_assert_ptr_nonnull(svg.data);
    ck_assert_ptr_nonnull(strstr(svg.data, "armour and"));
    ck_assert_ptr_nonnull(strstr(svg.data, "NOT"));
    ck_assert_ptr_nonnull(strstr(svg.data, "cap"));
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("earth at the ends");
    TCase *tests = tcase_create("ends");
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, each_end_is_said, 0, ROWS);
    tcase_add_test(tests, the_drawing_says_it);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
