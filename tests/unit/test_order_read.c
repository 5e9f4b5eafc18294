/* The order file read: good ones to the letter, one fault a file with its exact message, codes of countries and
 * currencies against second lists, and files made to do harm.
 *
 * tests/order/bad: NAME.yaml or NAME_variant.yaml holds the fault whose message has the stable name NAME; the .diag
 * beside it is all that is told of it. With WEND_RECORD set the .diag files are written anew and the test fails: look
 * at the difference, then run it without. */
#include "order_rig.h"
#include "read_route.h"

#include "read/order_fields_private.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define BAD  TESTS_FOLDER "/order/bad"
#define GOOD TESTS_FOLDER "/unit/order_good.yaml"

enum { FILES_MOST = 100, NAME_MOST = 100 };

struct ReadOrder {
    struct Arena *arena;
    struct Diag *diag;
    struct Bytes source;
    const struct Order *order;
};

static struct ReadOrder read_bytes(struct Bytes source, const char *date)
{
    struct ReadOrder read = {.arena = arena_new(), .source = source};
    read.diag = diag_new(read.arena);
    ck_assert_ptr_nonnull(read.diag);
    read.order = read_order(read.arena, read.diag, source, date);
    return read;
}

static struct ReadOrder read_text(const char *text, const char *date)
{
    return read_bytes((struct Bytes){text, strlen(text)}, date);
}

static void drop(struct Bytes bytes)
{
    free(read_route_own(bytes));
}

START_TEST(everything_is_read)
{
    struct Bytes source = read_route_file(GOOD);
    struct ReadOrder read = read_bytes(source, "");
    ck_assert_msg(read.order != NULL, "%s", diag_print(read.diag, read.arena, "order", source));
    const struct Order *order = read.order;
    const struct {
        const char *got, *due;
    } texts[] = {{order->reference, "PO 1042/7"},
                 {order->date, "2026-05-14"},
                 {order->delivery_date, "2026-05-20"},
                 {order->currency, "GBP"},
                 {order->prices, "my prices.csv"},
                 {order->note, "Leave it at the yard gate. Ring first."},
                 {order->buyer.name, "Alder Electrical"},
                 {order->buyer.street, "Mill Lane 4"},
                 {order->buyer.town, "Millbrook"},
                 {order->buyer.postcode, "QX1 1AB"},
                 {order->buyer.country, "GB"},
                 {order->buyer.contact, "Jo Alder"},
                 {order->buyer.phone, "00000 123456"},
                 {order->buyer.email, "yard@alder.example"},
                 {order->buyer.account, "0042"},
                 {order->seller.name, "Fenway & Sons"},
                 {order->seller.street, ""},
                 {order->seller.country, "IE"},
                 {order->seller.account, "S-9"},
                 {order->delivery.name, "Cider barn"},
                 {order->delivery.phone, "00000 7"},
                 {order->delivery.postcode, ""},
                 {order->delivery.account, ""}};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ck_assert_str_eq(texts[i].got, texts[i].due);
    }
    ck_assert(order->has_delivery);
    ck_assert_int_eq((int)diag_count(read.diag), 0);
    arena_free(read.arena);
    drop(source);
}
END_TEST

#define LEAST "wend-order: 1\norder: {reference: A}\nbuyer: {name: B}\nseller: {name: S}\n"

START_TEST(least_with_a_day_from_outside)
{
    struct ReadOrder read = read_text(LEAST, "2028-02-29");
    ck_assert_ptr_nonnull(read.order);
    ck_assert_str_eq(read.order->date, "2028-02-29");
    ck_assert_str_eq(read.order->currency, "");
    ck_assert_str_eq(read.order->delivery.street, "");
    ck_assert(!read.order->has_delivery);
    arena_free(read.arena);
    /* it goes before the one in the file, also for what must follow it */
    read = read_text("wend-order: 1\norder: {reference: A, date: 2026-01-01, delivery-date: 2026-01-05}\n"
                     "buyer: {name: B}\nseller: {name: S}\n",
                     "2026-02-01");
    ck_assert_ptr_null(read.order);
    ck_assert_int_eq((int)diag_at(read.diag, 0)->code, MSG_DELIVERY_BEFORE_ORDER);
    arena_free(read.arena);
}
END_TEST

START_TEST(days_of_the_calendar)
{
    static const char *const good[] = {"2026-05-14", "2024-02-29", "2000-02-29",
                                       "0001-01-01", "0900-02-28", "9999-12-31"};
    static const char *const bad[] = {"",           "2026-5-14",  "2026-02-29", "1900-02-29",
                                      "0000-01-01", "2026-13-01", "2026-00-10", "2026-04-31",
                                      "26-05-14",   "2026/05/14", "2026-05-1a", "2026-05-140"};
    for (size_t i = 0; i < sizeof good / sizeof good[0]; i++) {
        ck_assert_msg(read_is_date(good[i]), "%s", good[i]);
    }
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        ck_assert_msg(!read_is_date(bad[i]), "%s", bad[i]);
    }
}
END_TEST

/* ---- codes ---- */

static bool is_sorted(const struct CodeList *list)
{
    const size_t step = (size_t)list->letters + 1;
    const size_t length = strlen(list->codes);
    for (size_t at = 0; at < length; at += step) {
        for (int i = 0; i < list->letters; i++) {
            if (list->codes[at + (size_t)i] < 'A' || list->codes[at + (size_t)i] > 'Z') {
                return false;
            }
        }
        if (at + step < length && (list->codes[at + step - 1] != ' ' ||
                                   strncmp(list->codes + at, list->codes + at + step, (size_t)list->letters) >= 0)) {
            return false;
        }
    }
    return (length + 1) % step == 0;
}

/* Every code of a file of tests/published, one a line after the source. */
static int count_listed(const char *name, const struct CodeList *list)
{
    char path[256];
    snprintf(path, sizeof path, "%s/published/%s", TESTS_FOLDER, name);
    FILE *file = fopen(path, "r");
    ck_assert_msg(file != NULL, "cannot open %s", path);
    int count = 0;
    char line[512];
    while (fgets(line, sizeof line, file) != NULL) {
        line[strcspn(line, "\n")] = '\0';
        if (*line != '#') {
            ck_assert_msg(code_listed(list, line), "%s of %s is not listed", line, name);
            count++;
        }
    }
    fclose(file);
    return count;
}

START_TEST(codes_agree_with_second_lists)
{
    ck_assert(is_sorted(country_codes()));
    ck_assert(is_sorted(currency_codes()));
    const int countries = count_listed("iso-3166-alpha-2.csv", country_codes());
    ck_assert_uint_eq(strlen(country_codes()->codes), (size_t)countries * 3 - 1); /* and no more than those */
    ck_assert_int_gt(count_listed("iso-4217.csv", currency_codes()), 100);
    static const char *const wrong[] = {"UK", "gb", "XX", "", "G", "GBR", "B ", "EN", " G"};
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        ck_assert_msg(!code_listed(country_codes(), wrong[i]), "\"%s\" is no country", wrong[i]);
        ck_assert_msg(!code_listed(currency_codes(), wrong[i]), "\"%s\" is no currency", wrong[i]);
    }
}
END_TEST

/* ---- routes/order-format.md ---- */

static const char *text_of(struct Arena *arena, const char *path)
{
    struct Bytes bytes = read_route_file(path);
    const char *text = arena_text(arena, bytes.data, bytes.length);
    drop(bytes);
    return text;
}

START_TEST(the_page_is_the_field_tables)
{
    struct Arena *arena = arena_new();
    const char *page = text_of(arena, ROUTES_FOLDER "/order-format.md");
    int keys = 0;
    for (int t = ORDER_TABLE_DETAILS; t < ORDER_TABLE_COUNT; t++) {
        const struct FieldTable *table = order_fields((enum OrderTable)t);
        for (int i = 0; i < table->count; i++) {
            const struct Field *field = &table->fields[i];
            const char *row = strstr(page, arena_print(arena, "\n| `%s` |", field->key));
            ck_assert_msg(row != NULL, "no row for %s", field->key);
            row = arena_text(arena, row + 1, strcspn(row + 1, "\n"));
            const bool required = field->required != 0;
            ck_assert_msg(!required || strstr(row, "required") != NULL, "%s is required: %s", field->key, row);
            const char *longest = arena_print(arena, "up to %zu characters", field->longest);
            const bool free =
                field->kind != FIELD_DATE && !text_same(field->key, "country") && !text_same(field->key, "currency");
            ck_assert_msg(!free || strstr(row, longest) != NULL, "%s: %s is lacking in %s", field->key, longest, row);
            keys++;
        }
    }
    ck_assert_int_gt(keys, 25);
    int rows = 0; /* and no key that is not read: 5 of the order, 9 of the parties */
    for (const char *at = strstr(page, "\n| `"); at != NULL; at = strstr(at + 1, "\n| `")) {
        rows++;
    }
    ck_assert_int_eq(rows, 15);
    const char *example = strstr(page, "```yaml\n") + strlen("```yaml\n");
    struct ReadOrder read = read_text(arena_text(arena, example, (size_t)(strstr(example, "```") - example)), "");
    ck_assert_msg(read.order != NULL, "%s", diag_print(read.diag, read.arena, "example", read.source));
    arena_free(read.arena);
    arena_free(arena);
}
END_TEST

/* ---- one fault a file ---- */

struct Names {
    int count;
    char names[FILES_MOST][NAME_MOST];
};

static int compare_names(const void *a, const void *b)
{
    return strcmp(a, b);
}

static struct Names *find_files(void)
{
    struct Names *found = calloc(1, sizeof *found);
    DIR *folder = opendir(BAD);
    if (found == NULL || folder == NULL) {
        fputs("cannot list " BAD "\n", stderr);
        exit(EXIT_FAILURE);
    }
    for (struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
        const char *ending = strstr(entry->d_name, ".yaml");
        if (ending != NULL && ending - entry->d_name < NAME_MOST && found->count < FILES_MOST) {
            memcpy(found->names[found->count++], entry->d_name, (size_t)(ending - entry->d_name));
        }
    }
    closedir(folder);
    qsort(found->names, (size_t)found->count, NAME_MOST, compare_names);
    return found;
}

static void record(const char *path, const char *printed)
{
    FILE *file = fopen(path, "wb");
    ck_assert_ptr_nonnull(file);
    ck_assert_int_ge(fputs(printed, file), 0);
    ck_assert_int_eq(fclose(file), 0);
    ck_abort_msg("%s was recorded: look at the difference", path);
}

START_TEST(one_fault_is_told_once)
{
    struct Names *files = find_files();
    const char *name = files->names[_i];
    char path[512];
    char shown[NAME_MOST + 8];
    snprintf(path, sizeof path, "%s/%s.yaml", BAD, name);
    snprintf(shown, sizeof shown, "%s.yaml", name);
    struct Bytes source = read_route_file(path);
    struct ReadOrder read = read_bytes(source, "");
    const char *printed = diag_print(read.diag, read.arena, shown, source);
    ck_assert_msg(diag_count(read.diag) == 1 && read.order == NULL, "one fault, one report; got\n%s", printed);
    const char *told = diag_name(diag_at(read.diag, 0)->code);
    ck_assert_msg(strncmp(told, name, strcspn(name, "_")) == 0 && strlen(told) == strcspn(name, "_"), "%s: %s", name,
                  printed);
    snprintf(path, sizeof path, "%s/%s.diag", BAD, name);
    if (getenv("WEND_RECORD") != NULL) {
        record(path, printed);
    }
    struct Bytes expected = read_route_file(path);
    ck_assert_msg(strlen(printed) == expected.length && memcmp(printed, expected.data, expected.length) == 0,
                  "%s.diag differs; told is\n%s", name, printed);
    drop(expected);
    drop(source);
    arena_free(read.arena);
    free(files);
}
END_TEST

START_TEST(every_message_has_a_file)
{
    struct Names *files = find_files();
    for (int code = MSG_ORDER_TOP_NOT_MAPPING; code <= MSG_DELIVERY_BEFORE_ORDER; code++) {
        const char *name = diag_name((enum DiagCode)code);
        bool has = false;
        for (int i = 0; i < files->count; i++) {
            has = has || (strncmp(files->names[i], name, strlen(name)) == 0 &&
                          strchr("_", files->names[i][strlen(name)]) != NULL);
        }
        ck_assert_msg(has, "%s has no file", name);
    }
    free(files);
}
END_TEST

/* ---- harm ---- */

/* Either an order without errors, or errors with places; nothing raw in what is told. */
static void check_answer(struct Bytes source, const char *what, long number)
{
    struct ReadOrder read = read_bytes(source, "");
    ck_assert_msg((read.order != NULL) == (diag_errors(read.diag) == 0), "%s %ld", what, number);
    for (size_t i = 0; i < diag_count(read.diag); i++) {
        const struct Diagnostic *told = diag_at(read.diag, i);
        ck_assert_msg(told->mark.line >= 1 || told->code == MSG_TOO_MANY_FAULTS, "%s %ld: [%s] has no place", what,
                      number, diag_name(told->code));
    }
    for (const char *at = diag_print(read.diag, read.arena, "order", source); *at != '\0'; at++) {
        ck_assert_msg(((unsigned char)*at >= ' ' || *at == '\n') && *at != 0x7F, "%s %ld: raw control", what, number);
    }
    arena_free(read.arena);
}

START_TEST(cut_and_spoilt)
{
    struct Bytes good = read_route_file(GOOD);
    unsigned state = 3;
    for (size_t length = 0; length <= good.length; length++) {
        char *copy = malloc(length + 1); /* its own block: overreads show */
        ck_assert_ptr_nonnull(copy);
        memcpy(copy, good.data, length);
        check_answer((struct Bytes){copy, length}, "cut at", (long)length);
        if (length > 0) {
            static const char letters[] = "\n-:,[]{}'\"#&*!|>%@\t\0\x80\xFF";
            copy[order_draw(&state, (unsigned)length)] = letters[order_draw(&state, sizeof letters - 1)];
            check_answer((struct Bytes){copy, length}, "spoilt at", (long)length);
        }
        free(copy);
    }
    drop(good);
}
END_TEST

/* Files of other formats with every trick of YAML, and routes: none is an order. */
START_TEST(other_files_are_refused)
{
    static const char *const folders[] = {TESTS_FOLDER "/hostile/other", TESTS_FOLDER "/hostile/route", ROUTES_FOLDER};
    DIR *folder = opendir(folders[_i]);
    ck_assert_ptr_nonnull(folder);
    int count = 0;
    for (struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
        if (strstr(entry->d_name, ".yaml") == NULL) {
            continue;
        }
        char path[1024];
        snprintf(path, sizeof path, "%s/%s", folders[_i], entry->d_name);
        struct Bytes source = read_route_file(path);
        struct ReadOrder read = read_bytes(source, "2026-05-14");
        ck_assert_msg(read.order == NULL && diag_errors(read.diag) > 0, "%s was read as an order", path);
        arena_free(read.arena);
        drop(source);
        count++;
    }
    closedir(folder);
    ck_assert_int_gt(count, 3);
}
END_TEST

START_TEST(memory_runs_out)
{
    struct Bytes good = read_route_file(GOOD);
    int failed = 0, done = 0;
    for (size_t used_up = ORDER_USED_UP_LEAST; used_up < ORDER_USED_UP_MOST; used_up += 16) {
        struct Arena *reports = arena_new();
        struct Diag *diag = diag_new(reports);
        struct Arena *arena = order_arena_short(used_up, 0);
        const struct Order *order = read_order(arena, diag, good, "");
        ck_assert((order != NULL) != arena_failed(arena));
        done += order != NULL;
        failed += order == NULL;
        arena_free(arena);
        arena_free(reports);
    }
    ck_assert_int_gt(failed, 100);
    ck_assert_int_gt(done, 100);
    drop(good);
}
END_TEST

Suite *suite_order_read(void)
{
    struct Names *files = find_files();
    Suite *suite = suite_create("order: reading");
    TCase *tests = tcase_create("reading");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, everything_is_read);
    tcase_add_test(tests, least_with_a_day_from_outside);
    tcase_add_test(tests, days_of_the_calendar);
    tcase_add_test(tests, codes_agree_with_second_lists);
    tcase_add_test(tests, the_page_is_the_field_tables);
    tcase_add_loop_test(tests, one_fault_is_told_once, 0, files->count);
    tcase_add_test(tests, every_message_has_a_file);
    tcase_add_test(tests, cut_and_spoilt);
    tcase_add_loop_test(tests, other_files_are_refused, 0, 3);
    tcase_add_test(tests, memory_runs_out);
    suite_add_tcase(suite, tests);
    free(files);
    return suite;
}
