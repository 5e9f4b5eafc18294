/* Cautions: every one has words for the person on the job and a source, fit for any document. */
#include "said.h"
#include "table_suites.h"
#include "tables/tables.h"

#include <string.h>

static const enum Saying sayings[CAUTION_COUNT] = {
#define CAUTION(symbol, where, trust, source) [CAUTION_##symbol] = SAY_CAUTION_##symbol,
#include "tables/cautions.inc"
#undef CAUTION
};

static const char *say_caution(struct Arena *arena, int id)
{
    return said(arena, say(arena, sayings[id]));
}

START_TEST(every_caution_says_something_and_why)
{
    ck_assert_int_gt(CAUTION_COUNT, 30);
    ck_assert_int_eq(CAUTION_RULES, 0); /* first in every document */
    struct Arena *arena = arena_new();
    for (int id = 0; id < CAUTION_COUNT; id++) {
        const char *text = say_caution(arena, id);
        ck_assert_uint_ge(strlen(text), 40);
        ck_assert_uint_le(strlen(text), 400);
        ck_assert_int_eq(text[strlen(text) - 1], '.'); /* whole sentences */
        for (const char *at = text; *at != '\0'; at++) {
            ck_assert_msg(*at >= ' ' && *at <= '~', "%s", text); /* no control character, no byte of UTF-8 */
        }
        for (int other = 0; other < id; other++) {
            ck_assert_str_ne(text, say_caution(arena, other));
        }
        ck_assert_int_eq(strlen(caution_source((enum CautionId)id)) <= 2,
                         caution_trust((enum CautionId)id) == TRUST_COMMON_PRACTICE);
        ck_assert_ptr_null(strstr(caution_source((enum CautionId)id), "memory"));
    }
    ck_assert_ptr_null(caution_source(CAUTION_COUNT));
    arena_free(arena);
}
END_TEST

/* The program never calls anything safe or compliant, cautions included. */
START_TEST(no_caution_promises)
{
    for (int id = 0; id < CAUTION_COUNT; id++) {
        const struct Say caution = {.id = sayings[id]};
        ck_assert_msg(!said_has(&caution, "compliant") && !said_has(&caution, "is safe"), "caution %d promises", id);
    }
}
END_TEST

START_TEST(a_caution_by_its_name)
{
    ck_assert(said_has(&(struct Say){.id = SAY_CAUTION_DIG_HAND}, "500 mm"));
    ck_assert_int_eq(caution_trust(CAUTION_DIG_HAND), TRUST_PARTLY_FROM_MEMORY);
    ck_assert_int_eq(caution_trust(CAUTION_RULES), TRUST_COMMON_PRACTICE);
    ck_assert_int_eq(caution_trust(CAUTION_COUNT), TRUST_COMMON_PRACTICE);
    ck_assert_ptr_nonnull(strstr(caution_source(CAUTION_METAL_FIXINGS), "521.10.202"));
    ck_assert_ptr_nonnull(strstr(caution_source(CAUTION_NOTIFY), "Part P"));
}
END_TEST

/* What is drawn besides what a route brings, what is said at another place, and who must be asked first. */
START_TEST(what_else_a_row_says)
{
    ck_assert(caution_has(CAUTION_DIG_PLANS, DRAWN_TOO) && caution_has(CAUTION_DIG_PLANS, ASKS_BEFORE));
    ck_assert(!caution_has(CAUTION_DIG_HAND, DRAWN_TOO) && !caution_has(CAUTION_DIG_HAND, ASKS_BEFORE));
    ck_assert(caution_has(CAUTION_ISLAND_ARMOUR, AT_STOPPED_ARMOUR) && !caution_has(CAUTION_ISLAND_ARMOUR, AT_RODS));
    ck_assert(caution_has(CAUTION_ISLAND_DISTANCE, AT_RODS));
    ck_assert_int_eq(caution_place(CAUTION_ISLAND_DISTANCE), OF_ROUTE);
    ck_assert_int_eq(caution_place(CAUTION_DRILL_WALL), CARD_DRILL);
    ck_assert(!caution_has(CAUTION_COUNT, DRAWN_TOO));
    int drawn = 0, asked = 0;
    for (int id = 0; id < CAUTION_COUNT; id++) {
        ck_assert_int_lt(caution_place((enum CautionId)id), CAUTION_PLACES);
        drawn += caution_has((enum CautionId)id, DRAWN_TOO);
        asked += caution_has((enum CautionId)id, ASKS_BEFORE);
    }
    ck_assert_int_ge(drawn, 3);
    ck_assert_int_ge(asked, 14);
}
END_TEST

Suite *suite_table_cautions(void)
{
    Suite *suite = suite_create("cautions");
    TCase *tests = tcase_create("texts");
    tcase_add_test(tests, every_caution_says_something_and_why);
    tcase_add_test(tests, no_caution_promises);
    tcase_add_test(tests, a_caution_by_its_name);
    tcase_add_test(tests, what_else_a_row_says);
    suite_add_tcase(suite, tests);
    return suite;
}
