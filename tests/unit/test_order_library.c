/* wend_order(): routes held in memory, merged; what each status means; names of files. */
#include "order_rig.h"

#include "library/library_stages.h"
#include "wend/wend.h"

#include <stdio.h>

#include <string.h>

static const char route_text[] = "wend: 1\n"
                                 "job: {title: Shed}\n"
                                 "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                                 "runs: {feeder: {load: {current: 20 A}, cable: {type: BS5467, cores: 3%s}}}\n"
                                 "segments:\n"
                                 "  - {name: wall, way: wall, length: %d m}\n";

static const char order_text[] = "wend-order: 1\n"
                                 "order: {reference: \"%s\", date: 2026-05-14}\n"
                                 "buyer: {name: Alder Electrical}\n"
                                 "seller: {name: Fenway Supplies}\n";

/* A route of one wall; `size` "" lets the program choose. */
static struct Wend *route(const char *name, const char *size, int length_m)
{
    char text[512];
    const int length = snprintf(text, sizeof text, route_text, size, length_m);
    return wend_plan(name, text, (size_t)length);
}

static struct WendOrder *order_with(struct Wend *const *routes, int count, const char *reference)
{
    char text[512];
    const int length = snprintf(text, sizeof text, order_text, reference);
    return wend_order(routes, count, text, (size_t)length, "");
}

/* A job that was surveyed as a range says so in every form of the order, with the route's plan at hand and without. */
START_TEST(says_what_was_a_range)
{
    static const char ranged[] = "wend: 1\n"
                                 "job: {title: Barn}\n"
                                 "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                                 "runs: {feeder: {load: {current: 20 A}, cable: {type: BS5467, cores: 3}}}\n"
                                 "segments:\n"
                                 "  - {name: wall, way: wall, length: 18 m to 22 m}\n";
    static const char due[] = "barn: A range was surveyed: wall length 18 m to 22 m.";
    for (int kept = 0; kept < 2; kept++) {
        struct Wend *routes[] = {wend_plan("barn", ranged, sizeof ranged - 1), route("shed", "", 31)};
        if (kept == 1) {
            wend_keep_order(routes[0]);
        }
        struct WendOrder *order = order_with(routes, 2, "PO 7");
        ck_assert_int_eq(wend_order_status(order), WEND_PASSES);
        ck_assert_ptr_nonnull(strstr(wend_order_document(order, WEND_ORDER_CSV).data, due));
        ck_assert_ptr_nonnull(strstr(wend_order_document(order, WEND_ORDER_XML).data, due));
        ck_assert_ptr_null(strstr(wend_order_document(order, WEND_ORDER_CSV).data, "shed: A range"));
        wend_order_free(order);
        wend_free(routes[0]);
        wend_free(routes[1]);
    }
}
END_TEST

/* The lines against the routes' own lists: everything is in them, once. */
START_TEST(merges_what_the_routes_list)
{
    struct Wend *routes[] = {route("barn", ", size: 4 mm2", 12), route("shed", ", size: 4 mm2", 31)};
    struct WendOrder *order = order_with(routes, 2, "PO 7");
    ck_assert_int_eq(wend_order_status(order), WEND_PASSES);
    const struct OrderList *list = wend_order_lines(order);
    for (int j = 0; j < 2; j++) {
        double listed = 0, split = 0;
        for (int i = 0; i < wend_parts(routes[j])->count; i++) {
            listed += wend_parts(routes[j])->parts[i].quantity;
        }
        for (int i = 0; i < list->count; i++) {
            split += list->lines[i].by_job[j];
        }
        ck_assert_double_eq_tol(listed, split, 1e-6);
        ck_assert_str_eq(list->jobs[j].name, j == 0 ? "barn" : "shed");
    }
    /* the same cable for both: one line, two lengths, though both runs have one name */
    ck_assert_int_eq(list->lines[0].piece_count, 2);
    ck_assert_int_lt(list->count, wend_parts(routes[0])->count + wend_parts(routes[1])->count);
    for (int i = 0; i < (int)WEND_ORDER_DOCUMENT_COUNT; i++) {
        ck_assert_uint_gt(wend_order_document(order, (enum WendOrderDocument)i).length, 200);
    }
    wend_order_free(order);
    wend_free(routes[0]);
    wend_free(routes[1]);
}
END_TEST

START_TEST(each_status)
{
    struct Wend *good = route("good", "", 12), *fails = route("fails", ", size: 1.5 mm2", 120),
                *wrong = route("wrong", ", sise: 4 mm2", 12);
    ck_assert_int_eq(wend_status(fails), WEND_CHECK_FAILS);
    ck_assert_int_eq(wend_status(wrong), WEND_INPUT_WRONG);
    struct Wend *const failing[] = {good, fails};
    struct WendOrder *order = order_with(failing, 2, "PO 7");
    ck_assert_int_eq(wend_order_status(order), WEND_CHECK_FAILS);
    ck_assert_ptr_nonnull(
        strstr(wend_order_document(order, WEND_ORDER_CSV).data, "DO NOT ORDER YET: the plan of fails"));
    wend_order_free(order);
    struct Wend *const broken[] = {good, wrong};
    order = order_with(broken, 2, "PO 7");
    ck_assert_int_eq(wend_order_status(order), WEND_INPUT_WRONG);
    ck_assert_ptr_null(wend_order_lines(order));
    ck_assert_ptr_null(wend_order_document(order, WEND_ORDER_CSV).data);
    wend_order_free(order);
    order = wend_order(&good, 1, "wend-order: 1\n", 14, "");
    ck_assert_int_eq(wend_order_status(order), WEND_INPUT_WRONG);
    ck_assert_ptr_nonnull(
        strstr(wend_diagnostics_printed(wend_order_diagnostics(order), "o.yaml"), "o.yaml:1:1: error: "));
    wend_order_free(order);
    order = wend_order(&good, 0, NULL, 0, "");
    ck_assert_int_eq(wend_order_status(order), WEND_INPUT_WRONG);
    wend_order_free(order);
    struct Wend *const none[] = {good, NULL};
    order = wend_order(none, 2, NULL, 0, "");
    ck_assert_int_eq(wend_order_status(order), WEND_INPUT_WRONG);
    wend_order_free(order);
    wend_order_free(NULL);
    ck_assert_int_eq(wend_order_status(NULL), WEND_NO_MEMORY);
    wend_free(good);
    wend_free(fails);
    wend_free(wrong);
}
END_TEST

START_TEST(without_an_order_file)
{
    struct Wend *good = route("good", "", 12);
    struct WendOrder *order = wend_order(&good, 1, NULL, 0, "");
    ck_assert_int_eq(wend_order_status(order), WEND_PASSES);
    ck_assert_str_eq(wend_order_name(order), "order");
    ck_assert_ptr_nonnull(wend_order_document(order, WEND_ORDER_CSV).data);
    ck_assert_ptr_null(wend_order_document(order, WEND_ORDER_XML).data); /* no day, and no clock is read */
    wend_order_free(order);
    order = wend_order(&good, 1, NULL, 0, "2026-05-14");
    ck_assert_ptr_nonnull(strstr(wend_order_document(order, WEND_ORDER_XML).data, "<cbc:IssueDate>2026-05-14<"));
    wend_order_free(order);
    wend_free(good);
}
END_TEST

START_TEST(names_of_files)
{
    static const char *const rows[][2] = {
        {"PO 1042", "PO-1042.order"}, {"PO/../7", "PO-..-7.order"}, {"../../etc/x", "_.-..-etc-x.order"},
        {"-rf", "_rf.order"},         {".hidden", "_hidden.order"}, {"///", "order"},
        {"a  b", "a-b.order"}};
    struct Wend *good = route("good", "", 12);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct WendOrder *order = order_with(&good, 1, rows[i][0]);
        ck_assert_int_eq(wend_order_status(order), WEND_PASSES);
        ck_assert_str_eq(wend_order_name(order), rows[i][1]);
        wend_order_free(order);
    }
    wend_free(good);
}
END_TEST

/* What the name cannot hold tells two references apart all the same. */
START_TEST(letters_beyond_ascii_keep_orders_apart)
{
    static const char *const references[] = {"\xC3\xA9t\xC3\xA9 5", "\xC3\xA8t\xC3\xA8 5", "t 5"};
    char names[3][64];
    struct Wend *good = route("good", "", 12);
    for (int i = 0; i < 3; i++) {
        struct WendOrder *order = order_with(&good, 1, references[i]);
        ck_assert_int_eq(wend_order_status(order), WEND_PASSES);
        snprintf(names[i], sizeof names[i], "%s", wend_order_name(order));
        wend_order_free(order);
    }
    ck_assert(strncmp(names[0], "t-5-", 4) == 0 && strncmp(names[1], "t-5-", 4) == 0);
    ck_assert_str_ne(names[0], names[1]);
    ck_assert_str_eq(names[2], "t-5.order");
    wend_free(good);
}
END_TEST

Suite *suite_order_library(void)
{
    Suite *suite = suite_create("order: library");
    TCase *tests = tcase_create("library");
    tcase_add_test(tests, merges_what_the_routes_list);
    tcase_add_test(tests, says_what_was_a_range);
    tcase_add_test(tests, each_status);
    tcase_add_test(tests, without_an_order_file);
    tcase_add_test(tests, names_of_files);
    tcase_add_test(tests, letters_beyond_ascii_keep_orders_apart);
    suite_add_tcase(suite, tests);
    return suite;
}
