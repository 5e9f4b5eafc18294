/* Where what the design tells of stands in the file: at the word that it speaks of, of which the whole or, for a figure
 * and what has no name, the first character is underlined. Of the reader's messages the same is in tests/bad. */
#include "run_suite.h"
#include "wend/wend.h"

#include <stdio.h>
#include <string.h>

#define TOP   "wend: 1\njob: {title: Told}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\n"
#define BOARD "earthing: {far-end: island, electrode: {measured: 40 ohm}, board-residual: 30 mA}\n"
#define RUN   "runs:\n  \u0142an:\n    load: {current: 9 A}\n"
#define ALONG "segments:\n  - {name: wall, way: wall, length: 3 m}\n"
#define CABLE "    cable: {type: BS5467, cores: 3}\n"

/* `at` is the first of its kind in the route. */
static const struct Told {
    const char *message, *route, *at, *underlined;
} rows[] = {
    {"leg-or-fall",
     TOP RUN CABLE ALONG "  - {name: b, way: duct, length: 9 m, rise: -0.6 m, depth: 600 mm, duct: {size: 63 mm}}\n",
     "-0.6 m", "-"},
    {"cover-shallow", TOP RUN CABLE "segments:\n  - {name: \u0142\u0105ka, way: buried, length: 9 m, depth: 60 mm}\n",
     "\u0142\u0105ka", "\u0142\u0105ka"},
    {"capacity-figure-open",
     TOP RUN "    cable: {type: BS6004-flat, cores: 3}\n" ALONG
             "  - {name: \u0142\u0105ka, way: buried, length: 9 m, depth: 600 mm}\n",
     "\u0142\u0105ka", "\u0142\u0105ka"},
    {"no-capacity-figure",
     TOP RUN "    cable: {type: BS6004-flat, cores: 3}\nsegments:\n"
             "  - {name: \u0142\u0105ka, way: buried, length: 9 m, depth: 600 mm}\n",
     "\u0142\u0105ka", "\u0142\u0105ka"},
    {"device-not-standard", TOP RUN "    device: {kind: MCB, rating: 34 A}\n" CABLE ALONG, "34 A", "3"},
    {"device-none-carries", TOP "runs:\n  \u0142an:\n    load: {current: 900 A}\n" CABLE ALONG, "\u0142an", "\u0142"},
    {"device-none-carries", TOP "runs:\n  \u0142an:\n    load: {current: 900 A}\n    device: {kind: MCB}\n" CABLE ALONG,
     "device", "d"},
    {"residual-series", TOP BOARD RUN "    feeds: board\n    device: {kind: RCBO, residual: 100 mA}\n" CABLE ALONG,
     "100 mA", "1"},
    {"island-earth-run",
     TOP BOARD RUN CABLE "  \u015blad: {kind: earth, cable: {type: BS6004-single, size: 10 mm2}}\n" ALONG, "\u015blad",
     "\u015blad"},
    {"no-such-size", TOP RUN "    cable: {type: BS6004-flat, cores: 3, size: 25 mm2}\n" ALONG, "25 mm2", "2"},
    {"end-tight", TOP RUN "    cable: {type: BS5467, cores: 3, size: 10 mm2}\n    start: {room: 120 mm}\n" ALONG,
     "start", "start"},
    {"end-tight", TOP RUN "    cable: {type: BS5467, cores: 3, size: 10 mm2}\n    finish: {room: 120 mm}\n" ALONG,
     "finish", "finish"},
};

static int characters(const char *text, size_t length)
{
    int count = 0;
    for (size_t i = 0; i < length; i++) {
        count += ((unsigned char)text[i] & 0xC0) != 0x80;
    }
    return count;
}

/* " ^~~~\n", as many signs as are underlined, below the line. */
static const char *underline_of(int column, int width)
{
    static char line[200];
    ck_assert_int_lt(column + width, 150);
    snprintf(line, sizeof line, "\n      | %*s^%.*s\n", column - 1, "", width - 1, "~~~~~~~~~~~~~~~~~~~~");
    return line;
}

START_TEST(each_stands_at_its_word)
{
    const struct Told *row = &rows[_i];
    struct Wend *wend = wend_plan("route", row->route, strlen(row->route));
    const struct WendDiagnostics *told = wend_diagnostics(wend);
    const char *at = strstr(row->route, row->at);
    const char *begin = row->route;
    int line = 1;
    for (const char *end = strchr(begin, '\n'); end < at; end = strchr(begin, '\n')) {
        begin = end + 1;
        line++;
    }
    const int column = characters(begin, (size_t)(at - begin)) + 1;
    int found = 0;
    for (size_t i = 0; i < wend_diagnostics_count(told); i++) {
        if (strcmp(wend_diagnostic_name(told, i), row->message) == 0) {
            ck_assert_int_eq(wend_diagnostic_line(told, i), line);
            ck_assert_int_eq(wend_diagnostic_column(told, i), column);
            found++;
        }
    }
    const char *printed = wend_diagnostics_printed(told, "r.yaml");
    ck_assert_msg(found == 1 && wend_diagnostics_count(told) == 1, "%s: %s", row->message, printed);
    ck_assert_msg(strstr(printed, underline_of(column, characters(row->underlined, strlen(row->underlined)))) != NULL,
                  "%s", printed);
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("told");
    TCase *tests = tcase_create("told");
    tcase_add_loop_test(tests, each_stands_at_its_word, 0, (int)(sizeof rows / sizeof rows[0]));
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
