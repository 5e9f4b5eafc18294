/* A name in which nothing is seen is none: refused in every place that takes one, in routes, order files and labour
 * figures. Each place is tried with a name that is seen as well, so that the refusal is the name's own. */
#include "run_suite.h"
#include "wend/wend.h"

#include <stdio.h>
#include <string.h>

/* As they stand in the file; in double quotes YAML also takes the escapes. */
static const char *const unseen[] = {
    "",
    " ",
    "   ",
    "\\t",
    "\\n",
    "\\_" /* U+00A0 */,
    "\u00a0",
    "\u00a0 \u00a0",
    "\u1680",
    "\u2003",
    "\u200a",
    "\u200b",
    "\\u200b",
    "\u200c",
    "\u200d\u200d",
    "\u200e \u200f",
    "\u061c",
    "\u00ad",
    "\u202f",
    "\u205f",
    "\u2060",
    "\u2064",
    "\u2800",
    "\\u2800 \u2800",
    "\u3000",
    "\u3164",
    "\uffa0",
    "\u115f",
    "\u17b5",
    "\u180e",
    "\ufe0f",
    "\ufeff",
    "\\U0001d173",
    "\U0001bca0",
    "\U000e0020",
    "\U000e0200",
};
enum { UNSEEN = (int)(sizeof unseen / sizeof unseen[0]) };

/* @ and a letter stand for a name in double quotes. */
static const char route[] =
    "wend: 1\n"
    "job: {title: @a, site: @b, reference: @c, customer: @d, surveyor: @e, laid-by: @f, notes: @g}\n"
    "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
    "runs:\n"
    "  @h:\n"
    "    serves: @i\n"
    "    load: {current: 26 A}\n"
    "    cable: {type: BS5467, cores: 3}\n"
    "segments:\n"
    "  - {name: @j, way: wall, length: 6.5 m, rise: 2.5 m, notes: @k}\n"
    "  - name: @l\n"
    "    way: buried\n"
    "    length: 24 m\n"
    "    depth: 600 mm\n"
    "    photo: @m\n"
    "    marks: [{at: 3 m, what: other, note: @n}]\n"
    "    as-laid: {length: 25 m, found: @o, photo: @p}\n"
    "readings: {@h: {ze: 0.3 ohm, by: @q, instrument: @r}}\n";
static const char order_file[] = "wend-order: 1\n"
                                 "order: {reference: @a, date: 2026-05-14, note: @b}\n"
                                 "buyer: {name: @c, street: @d, town: @e, postcode: @f, contact: @g, phone: @h, "
                                 "email: @i, account: @j}\n"
                                 "seller: {name: @k, account: @l}\n";
static const char labour[] = "wend-labour: 1\n"
                             "source: @a\n"
                             "tasks: {fix: {low: 2 min, likely: 4 min, high: 8 min}}\n";
static const char plain_route[] = "wend: 1\n"
                                  "job: {title: Shed}\n"
                                  "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                                  "runs: {feeder: {load: {current: 26 A}, cable: {type: BS5467, cores: 3}}}\n"
                                  "segments: [{name: gable, way: wall, length: 6.5 m}]\n";

enum { FILE_MOST = 4000 };

/* The text with `name` in the place of that letter and a name of its own in every other. */
static const char *written(const char *text, char place, const char *name)
{
    static char out[FILE_MOST];
    size_t length = 0;
    for (const char *at = text; *at != '\0'; at++) {
        if (*at != '@') {
            out[length++] = *at;
            continue;
        }
        at++;
        const int added = *at == place ? snprintf(out + length, sizeof out - length, "\"%s\"", name)
                                       : snprintf(out + length, sizeof out - length, "\"name %c\"", *at);
        length += (size_t)added;
        ck_assert_uint_lt(length, sizeof out - 1);
    }
    out[length] = '\0';
    return out;
}

static char last_place(const char *text)
{
    char last = 'a';
    for (const char *at = strchr(text, '@'); at != NULL; at = strchr(at + 1, '@')) {
        if (at[1] > last) {
            last = at[1];
        }
    }
    return last;
}

static enum WendStatus planned(const char *text)
{
    struct Wend *wend = wend_plan("unseen", text, strlen(text));
    const enum WendStatus status = wend_status(wend);
    if (status == WEND_INPUT_WRONG) {
        ck_assert_int_gt((int)wend_diagnostics_count(wend_diagnostics(wend)), 0);
    }
    wend_free(wend);
    return status;
}

static enum WendStatus ordered(const char *text)
{
    struct Wend *wend = wend_plan("plain", plain_route, strlen(plain_route));
    struct WendOrder *order = wend_order(&wend, 1, text, strlen(text), "");
    const enum WendStatus status = wend_order_status(order);
    wend_order_free(order);
    wend_free(wend);
    return status;
}

static enum WendStatus timed(const char *text)
{
    struct Wend *wend = wend_plan("plain", plain_route, strlen(plain_route));
    const enum WendStatus status = wend_labour(wend, text, strlen(text));
    wend_free(wend);
    return status;
}

static void every_place_refuses(const char *text, enum WendStatus (*status_of)(const char *text))
{
    const char last = last_place(text);
    ck_assert_int_ne(status_of(written(text, '\0', "")), WEND_INPUT_WRONG);
    for (char place = 'a'; place <= last; place++) {
        for (int i = 0; i < UNSEEN; i++) {
            ck_assert_msg(status_of(written(text, place, unseen[i])) == WEND_INPUT_WRONG, "place %c takes name %d",
                          place, i);
        }
    }
    printf("%d names in %d places refused\n", UNSEEN, last - 'a' + 1);
}

START_TEST(a_route_refuses_them)
{
    every_place_refuses(route, planned);
}
END_TEST

START_TEST(an_order_file_refuses_them)
{
    every_place_refuses(order_file, ordered);
}
END_TEST

START_TEST(labour_figures_refuse_them)
{
    every_place_refuses(labour, timed);
}
END_TEST

/* Marks that letters need are no reason to refuse a name that is seen. */
START_TEST(names_that_are_seen_are_taken)
{
    static const char *const seen[] = {"x", "\u00a0x", "\u200f\u05d0", "\u0646\u200c\u0647", "\u2801", "\u00e9", "1"};
    for (size_t i = 0; i < sizeof seen / sizeof seen[0]; i++) {
        for (char place = 'a'; place <= last_place(route); place++) {
            ck_assert_msg(planned(written(route, place, seen[i])) != WEND_INPUT_WRONG, "place %c refuses name %zu",
                          place, i);
        }
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("names in which nothing is seen");
    TCase *tests = tcase_create("unseen names");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, a_route_refuses_them);
    tcase_add_test(tests, an_order_file_refuses_them);
    tcase_add_test(tests, labour_figures_refuse_them);
    tcase_add_test(tests, names_that_are_seen_are_taken);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
