/* The plans of whole routes, and the table that they are written from. */
#include "plan_format.h"
#include "plan_routes.h"
#include "run_suite.h"
#include "schema_rig.h"
#include "sweep_depth.h"

#include <string.h>

static void is_valid(const char *path, struct Wend *wend)
{
    const struct WendBytes bytes = wend_document(wend, WEND_PLAN_XML);
    xmlDocPtr document = schema_document(bytes.data, bytes.length);
    ck_assert_msg(schema_file_says(TEMPLATES_FOLDER "/plan.rng", document) == 0, "the plan of %s is not valid", path);
    xmlFreeDoc(document);
}

START_TEST(every_plan_is_valid)
{
    /* the validator takes half a second a plan */
    ck_assert_int_gt(for_plans((size_t)sweep_depth(8, 1), is_valid), sweep_depth(14, 60));
}
END_TEST

/* What is measured has its unit in its name; but for ratios and what a unit stands beside. */
START_TEST(names_end_in_their_unit)
{
    static const char *const bare[] = {"factor",   "friction", "value",       "limit",   "margin",
                                       "quantity", "needed",   "meter-error", "expected"};
    int measured = 0;
    for (int i = 0; i < format_row_count; i++) {
        const struct FormatRow *row = &format_rows[i];
        if (!format_is_attribute(row) ||
            (row->type != TYPE_NUMBER && row->type != TYPE_NOT_NEGATIVE && row->type != TYPE_POSITIVE)) {
            continue;
        }
        bool excused = false;
        for (size_t k = 0; k < sizeof bare / sizeof bare[0]; k++) {
            excused = excused || strcmp(bare[k], row->name) == 0;
        }
        ck_assert_msg(excused != (*format_unit(row->name) != '\0'), "%s", row->name);
        measured++;
    }
    ck_assert_int_gt(measured, 100);
}
END_TEST

/* An attribute has one name in its element; in JSON a child has none that is taken. */
static void names_are_apart(const struct FormatRow *begin)
{
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END; row++) {
        const bool child = format_is_child(row) || row->kind == ROW_LINES || row->kind == ROW_SOME_LINES;
        const char *list = row->list != NULL ? row->list : format_is_child(row) ? format_begin(row->symbol)->name : "";
        for (const struct FormatRow *other = begin + 1; child && other->kind != ROW_END; other++) {
            ck_assert_msg(!format_is_attribute(other) || strcmp(other->name, list) != 0, "%s of %s", list, begin->name);
            ck_assert_msg(strcmp(list, "text") != 0, "text of %s", begin->name);
        }
        ck_assert_msg((begin->kind == ROW_LIST) == (child && *list == '\0'), "%s", begin->symbol);
    }
}

START_TEST(every_row_is_reached_and_means_something)
{
    const struct FormatRow *order[100];
    const int reached = format_order(order, 100);
    int there = 0;
    for (int i = 0; i < format_row_count; i++) {
        there += format_rows[i].kind <= ROW_GROUP;
        ck_assert_msg(format_rows[i].meaning == NULL || *format_rows[i].meaning != '\0', "row %d", i);
    }
    ck_assert_int_eq(reached, there);
    ck_assert_int_gt(reached, 40);
    for (int i = 0; i < reached; i++) {
        names_are_apart(order[i]);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("plan of routes");
    TCase *table = tcase_create("table");
    tcase_add_test(table, names_end_in_their_unit);
    tcase_add_test(table, every_row_is_reached_and_means_something);
    suite_add_tcase(suite, table);
    TCase *routes = tcase_create("routes");
    tcase_set_timeout(routes, 300);
    tcase_add_test(routes, every_plan_is_valid);
    suite_add_tcase(suite, routes);
    return run_suite(suite);
}
