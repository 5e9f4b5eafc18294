/* Cautions: every one has words for the person on the job and a source, fit for any document. */
#include "table_suites.h"
#include "tables/tables.h"

#include <string.h>

START_TEST(every_caution_says_something_and_why)
{
    ck_assert_int_gt(CAUTION_COUNT, 30);
    ck_assert_int_eq(CAUTION_RULES, 0); /* first in every document */
    for (int id = 0; id < CAUTION_COUNT; id++) {
        const struct CautionText *text = caution_text((enum CautionId)id);
        ck_assert_ptr_nonnull(text);
        ck_assert_uint_ge(strlen(text->say), 40);
        ck_assert_uint_le(strlen(text->say), 400);
        ck_assert_uint_gt(strlen(text->source), 2);
        ck_assert_int_eq(text->say[strlen(text->say) - 1], '.'); /* whole sentences */
        for (const char *at = text->say; *at != '\0'; at++) {
            ck_assert_msg(*at >= ' ' && *at <= '~', "%s", text->say); /* no control character, no byte of UTF-8 */
        }
        for (int other = 0; other < id; other++) {
            ck_assert_str_ne(text->say, caution_text((enum CautionId)other)->say);
        }
    }
    ck_assert_ptr_null(caution_text(CAUTION_COUNT));
}
END_TEST

/* The program never calls anything safe or compliant, cautions included. */
START_TEST(no_caution_promises)
{
    for (int id = 0; id < CAUTION_COUNT; id++) {
        const char *say = caution_text((enum CautionId)id)->say;
        ck_assert_msg(strstr(say, "compliant") == NULL && strstr(say, "is safe") == NULL, "%s", say);
    }
}
END_TEST

START_TEST(a_caution_by_its_name)
{
    ck_assert_ptr_nonnull(strstr(caution_text(CAUTION_DIG_HAND)->say, "500 mm"));
    ck_assert_ptr_nonnull(strstr(caution_text(CAUTION_DIG_HAND)->source, "from memory"));
    ck_assert_ptr_nonnull(strstr(caution_text(CAUTION_METAL_FIXINGS)->source, "521.10.202"));
    ck_assert_ptr_nonnull(strstr(caution_text(CAUTION_NOTIFY)->source, "Part P"));
}
END_TEST

Suite *suite_table_cautions(void)
{
    Suite *suite = suite_create("cautions");
    TCase *tests = tcase_create("texts");
    tcase_add_test(tests, every_caution_says_something_and_why);
    tcase_add_test(tests, no_caution_promises);
    tcase_add_test(tests, a_caution_by_its_name);
    suite_add_tcase(suite, tests);
    return suite;
}
