/* What a plan is marked by: two files that say the same have one digest, and any that says something else has another.
 */
#include "read_route.h"
#include "test_read.h"

#include <stdio.h>

static uint64_t digest_of(const char *title, const char *segment)
{
    char text[512];
    snprintf(text, sizeof text,
             "wend: 1\njob: {title: %s}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
             "  r: {load: {current: 9 A}, cable: {type: BS5467, cores: 3}}\nsegments:\n  - %s\n",
             title, segment);
    struct ReadRoute route = read_route_text(text);
    ck_assert_msg(route.survey != NULL, "%s", read_route_reports(&route));
    const uint64_t digest = route.survey->digest;
    read_route_free(&route);
    return digest;
}

static uint64_t digest_of_length(const char *length)
{
    char segment[128];
    snprintf(segment, sizeof segment, "{name: a, way: wall, length: %s}", length);
    return digest_of("t", segment);
}

START_TEST(zeros_at_an_amount_s_end_say_nothing)
{
    static const char *const same[][2] = {{"30 m", "30.0 m"},      {"30 m", "30.00 m"},
                                          {"30.5 m", "30.50 m"},   {"0.5 m", "0.500 m"},
                                          {"30.05 m", "30.050 m"}, {"29 to 31 m", "29.0 to 31.0 m"}};
    static const char *const other[][2] = {
        {"30 m", "300 m"},    {"30 m", "3 m"},        {"30 m", "30.5 m"},
        {"30.5 m", "30.7 m"}, {"30.5 m", "30.05 m"},  {"30.5 m", "30.55 m"},
        {"30 m", "30 cm"},    {"31 m", "29 to 31 m"}, {"29 to 31.5 m", "29 to 31.7 m"}};
    for (size_t i = 0; i < sizeof same / sizeof same[0]; i++) {
        ck_assert_msg(digest_of_length(same[i][0]) == digest_of_length(same[i][1]), "%s, %s", same[i][0], same[i][1]);
    }
    for (size_t i = 0; i < sizeof other / sizeof other[0]; i++) {
        ck_assert_msg(digest_of_length(other[i][0]) != digest_of_length(other[i][1]), "%s, %s", other[i][0],
                      other[i][1]);
    }
}
END_TEST

START_TEST(what_is_no_amount_counts_to_the_letter)
{
    static const char wall[] = "{name: a, way: wall, length: 30 m}";
    ck_assert(digest_of("\"1.0\"", wall) != digest_of("\"1\"", wall));
    ck_assert(digest_of("Unit 1.0", wall) != digest_of("Unit 1", wall));
    ck_assert(digest_of("1.0x", wall) != digest_of("1x", wall));
    ck_assert(digest_of("Barn", wall) != digest_of("barn", wall));
    ck_assert(digest_of("\"Barn\"", wall) == digest_of("Barn", wall));
    ck_assert(digest_of("t", "{length: 30 m, name: a, way: wall} # the long one") == digest_of("t", wall));
    ck_assert(digest_of("t", "{name: a, way: beam, length: 30 m}") != digest_of("t", wall));
    ck_assert(digest_of("t", "{name: b, way: wall, length: 30 m}") != digest_of("t", wall));
}
END_TEST

TCase *read_digest_tests(void)
{
    TCase *tests = tcase_create("digest");
    tcase_add_test(tests, zeros_at_an_amount_s_end_say_nothing);
    tcase_add_test(tests, what_is_no_amount_counts_to_the_letter);
    return tests;
}
