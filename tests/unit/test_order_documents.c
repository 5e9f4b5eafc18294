/* Orders as documents, read back: the CSV by RFC 4180, the XML by libxml2; the split adds up in both, nothing hostile
 * gets out, and memory that ends leaves a whole document or none. */
#include "order_rig.h"
#include "said.h"
#include "sweep_depth.h"

#include "documents/documents.h"

#include <libxml/parser.h>
#include <libxml/xpath.h>
#include <libxml/xpathInternals.h>

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* ---- CSV ---- */

enum { COLUMNS_MOST = 40, ROWS_MOST = 200 };

struct Sheet {
    int rows, columns;
    const char *cells[ROWS_MOST][COLUMNS_MOST];
};

/* One cell; leaves *at on the comma or the line end behind it. NULL for what RFC 4180 does not allow. */
static const char *read_cell(struct Arena *arena, const char **at, const char *end)
{
    struct TextBuilder cell = text_builder(arena);
    const bool quoted = *at < end && **at == '"';
    for (*at += quoted; *at < end; (*at)++) {
        const char c = **at;
        if (quoted && c == '"' && !(*at + 1 < end && (*at)[1] == '"')) {
            (*at)++;
            return *at < end && (**at == ',' || **at == '\r') ? text_done(&cell) : NULL;
        }
        if (!quoted && (c == ',' || c == '\r')) {
            return text_done(&cell);
        }
        if (!quoted && (c == '"' || c == '\n')) {
            return NULL;
        }
        *at += quoted && c == '"';
        text_add_char(&cell, c);
    }
    return NULL;
}

static const struct Sheet *read_sheet(struct Arena *arena, struct Bytes bytes, int columns)
{
    struct Sheet *sheet = arena_alloc(arena, sizeof *sheet);
    ck_assert_ptr_nonnull(sheet);
    ck_assert_ptr_nonnull(bytes.data);
    sheet->columns = columns;
    const char *at = bytes.data, *end = bytes.data + bytes.length;
    for (; at < end; sheet->rows++) {
        ck_assert_int_lt(sheet->rows, ROWS_MOST);
        for (int column = 0; column < columns; column++) {
            sheet->cells[sheet->rows][column] = read_cell(arena, &at, end);
            ck_assert_msg(sheet->cells[sheet->rows][column] != NULL, "row %d, column %d", sheet->rows, column);
            const bool last = column == columns - 1;
            ck_assert_msg(last ? end - at >= 2 && at[0] == '\r' && at[1] == '\n' : *at == ',', "row %d has %d columns",
                          sheet->rows, column + 1);
            at += last ? 2 : 1;
        }
    }
    return sheet;
}

static int column_of(const struct Sheet *sheet, const char *head)
{
    for (int column = 0; column < sheet->columns; column++) {
        if (text_same(sheet->cells[0][column], head)) {
            return column;
        }
    }
    ck_abort_msg("no column %s", head);
}

static double number_at(const struct Sheet *sheet, int row, int column)
{
    double number = 0;
    const char *cell = sheet->cells[row][column];
    ck_assert_msg(number_read(cell, strlen(cell), &number), "row %d, column %d: %s", row, column, cell);
    return number;
}

/* 9 fixed columns, one a job, 10 more. */
static const struct Sheet *order_sheet(struct Arena *arena, const struct Order *order, const struct OrderList *list)
{
    return read_sheet(arena, document_order_csv(arena, order, list), 20 + list->job_count);
}

/* Where the articles begin: the first row with a line number. */
static int first_line(const struct Sheet *sheet)
{
    int row = 1;
    while (row < sheet->rows && *sheet->cells[row][0] == '\0') {
        row++;
    }
    return row;
}

START_TEST(csv_adds_up)
{
    struct Arena *arena = arena_new();
    const int count = 1 + _i % 6;
    const struct OrderJob *jobs = order_random_jobs(arena, count, (unsigned)_i + 900U);
    const struct OrderList *list = order_merge(arena, jobs, count, NULL);
    const struct Order order = order_details("plain");
    const struct Sheet *sheet = order_sheet(arena, _i % 2 == 0 ? &order : NULL, list);
    const int quantity = column_of(sheet, "quantity"), over = column_of(sheet, "over"), code = column_of(sheet, "code");
    const int from = first_line(sheet);
    for (int i = 0; i < list->count; i++) {
        double sum = 0;
        for (int j = 0; j < count; j++) {
            sum += number_at(sheet, from + i, column_of(sheet, arena_print(arena, "for %s", list->jobs[j].name)));
        }
        ck_assert_double_eq_tol(sum, number_at(sheet, from + i, column_of(sheet, "asked")), 1e-6);
        ck_assert_double_eq_tol(sum, list->lines[i].quantity, 1e-6);
        const double bought = number_at(sheet, from + i, quantity);
        ck_assert_double_eq_tol(sum + number_at(sheet, from + i, over), bought, 1e-6);
        ck_assert_double_eq_tol(bought, list->lines[i].buy, 1e-6);
        ck_assert_double_eq(number_at(sheet, from + i, 0), i + 1);
        ck_assert_str_eq(sheet->cells[from + i][code], list->lines[i].code);
        ck_assert_str_eq(sheet->cells[from + i][column_of(sheet, "cut")], said(arena, list->lines[i].cut));
    }
    ck_assert_int_eq(sheet->rows, from + list->count + count + list->note_count);
    arena_free(arena);
}
END_TEST

/* What to buy in words, as a counter reads it. */
START_TEST(csv_says_what_to_buy)
{
    struct Arena *arena = arena_new();
    struct Part parts[4] = {order_part(arena, AISLE_TERMINATIONS, "gland", "Gland kit, two glands", 1),
                            order_part(arena, AISLE_FIXINGS, "cleat", "Cleat", 121),
                            order_part(arena, AISLE_GROUNDWORK, "duct", "Duct", 61.5),
                            order_part(arena, AISLE_GROUNDWORK, "tape", "Tape", 8)};
    parts[0].pack = 2;
    parts[0].packs = 1;
    parts[2].unit = parts[3].unit = "m";
    parts[2].pack = 50;
    parts[2].packs = 2;
    parts[2].pack_word = "coil";
    const struct OrderJob job = order_job(arena, "barn", parts, 4);
    const struct Sheet *sheet = order_sheet(arena, NULL, order_merge(arena, &job, 1, NULL));
    static const char *const buy[] = {"1 pack of 2", "121", "2 coils of 50 m", "8 m"};
    for (int i = 0; i < 4; i++) {
        ck_assert_str_eq(sheet->cells[1 + i][1], buy[i]);
    }
    ck_assert_double_eq(number_at(sheet, 3, column_of(sheet, "over")), 38.5);
    ck_assert_str_eq(sheet->cells[5][column_of(sheet, "note")], "barn: Supply; Far Meadow; job R-1");
    arena_free(arena);
}
END_TEST

/* ---- XML ---- */

static xmlDocPtr read_back(struct Bytes bytes)
{
    ck_assert_ptr_nonnull(bytes.data);
    xmlDocPtr document = xmlReadMemory(bytes.data, (int)bytes.length, "order.xml", NULL,
                                       XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING);
    ck_assert_ptr_nonnull(document);
    return document;
}

/* The text of an XPath expression, in the arena. */
static const char *ask(struct Arena *arena, xmlDocPtr document, const char *expression)
{
    static const char *const spaces[][2] = {
        {"o", "urn:oasis:names:specification:ubl:schema:xsd:Order-2"},
        {"a", "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2"},
        {"b", "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2"}};
    xmlXPathContextPtr context = xmlXPathNewContext(document);
    for (size_t i = 0; i < sizeof spaces / sizeof spaces[0]; i++) {
        ck_assert_int_eq(xmlXPathRegisterNs(context, (const xmlChar *)spaces[i][0], (const xmlChar *)spaces[i][1]), 0);
    }
    xmlXPathObjectPtr found = xmlXPathEvalExpression((const xmlChar *)expression, context);
    ck_assert_msg(found != NULL, "%s", expression);
    xmlChar *text = xmlXPathCastToString(found);
    const char *copy = arena_text(arena, (const char *)text, strlen((const char *)text));
    xmlFree(text);
    xmlXPathFreeObject(found);
    xmlXPathFreeContext(context);
    return copy;
}

static void answers(struct Arena *arena, xmlDocPtr document, const char *expression, const char *due)
{
    const char *text = ask(arena, document, expression);
    ck_assert_msg(text_same(text, due), "%s is %s, not %s", expression, text, due);
}

START_TEST(ubl_says_the_same)
{
    struct Arena *arena = arena_new();
    const int count = 1 + _i % 6;
    const struct OrderList *list =
        order_merge(arena, order_random_jobs(arena, count, (unsigned)_i + 900U), count, NULL);
    const struct Order order = order_details("plain");
    xmlDocPtr document = read_back(document_order_ubl(arena, &order, list));
    answers(arena, document, "/o:Order/b:LineCountNumeric", arena_print(arena, "%d", list->count));
    answers(arena, document, "count(//a:OrderLine)", arena_print(arena, "%d", list->count));
    answers(arena, document, "count(//*[not(node())])", "0"); /* nothing written empty */
    answers(arena, document, "count(//a:SellersItemIdentification | //a:Price | //a:AnticipatedMonetaryTotal)", "0");
    for (int i = 0; i < list->count; i++) {
        const struct OrderLine *line = &list->lines[i];
        const char *at = arena_print(arena, "//a:LineItem[b:ID = %d]", i + 1);
        const struct {
            const char *path, *due;
        } rows[] = {{"/b:Quantity", number_significant(arena, line->unit_quantity, 9)},
                    {"/b:Quantity/@unitCode", line->unit_code},
                    {"/a:Item/b:Name", said(arena, line->description)},
                    {"/a:Item/a:BuyersItemIdentification/b:ID", line->code},
                    {"/b:Note[starts-with(., 'cut ')]", said(arena, line->cut)},
                    {"/a:Item/b:PackSizeNumeric", line->by_package ? arena_print(arena, "%d", line->pack) : ""}};
        for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
            answers(arena, document, arena_print(arena, "string(%s%s)", at, rows[r].path), rows[r].due);
        }
        for (int j = 0; j < count; j++) {
            const char *path = arena_print(arena, "string(%s//a:AdditionalItemProperty[b:Name = 'for %s']/b:Value)", at,
                                           list->jobs[j].name);
            const char *due = arena_print(arena, "%s %s", number_significant(arena, line->by_job[j], 9), line->unit);
            answers(arena, document, path, line->by_job[j] > 0 ? due : "");
        }
        const char *lengths = arena_print(arena, "count(%s//b:Value[contains(., 'without a joint')])", at);
        answers(arena, document, lengths, arena_print(arena, "%d", line->piece_count));
    }
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

START_TEST(ubl_names_everybody)
{
    struct Arena *arena = arena_new();
    const struct OrderList *list = order_merge(arena, order_random_jobs(arena, 1, 4), 1, NULL);
    struct Order order = order_details("x");
    order.reference = "PO 1042";
    order.buyer.name = "Alder Electrical";
    order.buyer.account = "A-77";
    order.seller.name = "Fenway & Sons";
    order.seller.account = "S-9";
    order.delivery.town = "Millbrook";
    xmlDocPtr document = read_back(document_order_ubl(arena, &order, list));
    static const char *const rows[][2] = {
        {"/o:Order/b:UBLVersionID", "2.1"},
        {"/o:Order/b:ID", "PO 1042"},
        {"/o:Order/b:IssueDate", "2026-05-14"},
        {"/o:Order/b:DocumentCurrencyCode", "GBP"},
        {"/o:Order/a:BuyerCustomerParty/b:SupplierAssignedAccountID", "A-77"},
        {"/o:Order/a:BuyerCustomerParty/a:Party/a:PartyName/b:Name", "Alder Electrical"},
        {"/o:Order/a:SellerSupplierParty/b:CustomerAssignedAccountID", "S-9"},
        {"/o:Order/a:SellerSupplierParty/a:Party/a:PartyName/b:Name", "Fenway & Sons"},
        {"/o:Order/a:Delivery/a:DeliveryAddress/b:CityName", "Millbrook"},
        {"/o:Order/a:Delivery/a:DeliveryAddress/a:Country/b:IdentificationCode", "GB"},
        {"/o:Order/a:Delivery/a:RequestedDeliveryPeriod/b:EndDate", "2026-05-20"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        answers(arena, document, arena_print(arena, "string(%s)", rows[i][0]), rows[i][1]);
    }
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

/* ---- a plan that fails ---- */

START_TEST(a_failing_plan_stands_at_the_top)
{
    struct Arena *arena = arena_new();
    struct OrderJob *jobs = order_random_jobs(arena, 3, 8);
    jobs[0].pass = jobs[2].pass = true;
    jobs[0].verdict = jobs[2].verdict = VERDICT_PASS;
    jobs[1].pass = false;
    jobs[1].verdict = VERDICT_FAIL;
    jobs[1].name = "shed";
    jobs[1].verdict_text = as_is(arena, "drop fails");
    const struct OrderList *list = order_merge(arena, jobs, 3, NULL);
    const struct Order order = order_details("x");
    const char *due = "DO NOT ORDER YET: the plan of shed fails a check: drop fails";
    const struct Sheet *sheet = order_sheet(arena, &order, list);
    ck_assert_str_eq(sheet->cells[1][column_of(sheet, "buy")], due);
    for (int row = 1; row < sheet->rows; row++) { /* a job that passes is no better in an order with one that fails */
        ck_assert_str_eq(sheet->cells[row][column_of(sheet, "plan")], "FAIL");
    }
    xmlDocPtr document = read_back(document_order_ubl(arena, &order, list));
    answers(arena, document, "string(/o:Order/b:Note[1])", due);
    answers(arena, document, "count(/o:Order/b:Note[starts-with(., 'DO NOT')])", "1");
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

/* ---- hostile texts ---- */

static const char *const hostile[] = {
    "=1+1",
    "+cmd|' /C calc'!A0",
    "-2",
    "@SUM(A1)",
    ("\xEF\xBC\x9D"
     "1"),
    "</cbc:ID><x>",
    "a & b < c > d \" e ' f ]]> g",
    "&amp;&#0;&lol;",
    "<!ENTITY x SYSTEM \"file:///etc/passwd\">",
    "\"quoted\", \"twice\"",
    ";=1",
    " =1",
    "\xC2\xA0=1",
    "\xF0\x9F\x94\xA5 wide \xE6\xBC\xA2",
    "%s%n{}",
};

static bool runs_as_formula(const char *cell)
{
    while (*cell == ' ' || strncmp(cell, "\xC2\xA0", 2) == 0) {
        cell += *cell == ' ' ? 1 : 2;
    }
    return *cell != '\0' && (strchr("=+-@", *cell) != NULL || strncmp(cell, "\xEF\xBC\x9D", 3) == 0);
}

START_TEST(hostile_texts_stay_texts)
{
    struct Arena *arena = arena_new();
    const char *text = hostile[_i];
    struct Part parts[2] = {order_part(arena, AISLE_CABLE, text, text, 5),
                            order_part(arena, AISLE_FIXINGS, text, text, 5)};
    parts[0].unit = "m";
    parts[0].length_m = 5;
    for (int i = 0; i < 2; i++) {
        parts[i].standard = text;
        parts[i].note = as_is(arena, text);
        parts[i].uses = order_use(arena, text);
    }
    struct OrderJob job = order_job(arena, text, parts, 2);
    job.title = job.site = job.reference = text;
    job.verdict_text = as_is(arena, text);
    job.pass = false;
    job.verdict = VERDICT_FAIL;
    const struct OrderList *list = order_merge(arena, &job, 1, NULL);
    const struct Order order = order_details(text);
    const struct Sheet *sheet = order_sheet(arena, &order, list);
    for (int row = 0; row < sheet->rows; row++) {
        for (int column = 0; column < sheet->columns; column++) {
            ck_assert_msg(!runs_as_formula(sheet->cells[row][column]), "row %d: %s", row, sheet->cells[row][column]);
        }
    }
    xmlDocPtr document = read_back(document_order_ubl(arena, &order, list));
    answers(arena, document, "string(/o:Order/b:ID)", text);
    answers(arena, document, "string(//a:BuyerCustomerParty//a:PartyName/b:Name)", text);
    answers(arena, document, "string(//a:LineItem[b:ID = 2]/a:Item/b:Name)", text);
    answers(arena, document, "count(//*[local-name() = 'x'])", "0");
    /* the free texts of all three parties: name, street, town, postcode, contact, phone, email, account */
    answers(arena, document, "count(//a:BuyerCustomerParty//*[not(*)])", "9");
    answers(arena, document, "count(//a:SellerSupplierParty//*[not(*)])", "9");
    answers(arena, document, "count(//a:Delivery//*[not(*)])", "9");
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

/* ---- faults ---- */

static struct Bytes write_one(int writer, struct Arena *arena, const struct Order *order, const struct OrderList *list)
{
    return writer == 0 ? document_order_csv(arena, order, list) : document_order_ubl(arena, order, list);
}

static bool same(struct Bytes a, struct Bytes b)
{
    return a.data != NULL && b.data != NULL && a.length == b.length && memcmp(a.data, b.data, a.length) == 0;
}

enum { BLOCKS_MOST = 4 };

START_TEST(arena_runs_out)
{
    struct Arena *made = arena_new();
    const struct Order order = order_details("plain");
    const struct OrderList *list = order_merge(made, order_random_jobs(made, 2, 5), 2, NULL);
    const struct Bytes whole = write_one(_i, made, &order, list);
    ck_assert(same(whole, write_one(_i, made, &order, list)));
    const size_t step = (size_t)sweep_depth(176, 48);
    int failed = 0, done = 0;
    for (long blocks = 0; blocks < BLOCKS_MOST; blocks++) {
        for (size_t used_up = ORDER_USED_UP_LEAST; used_up < ORDER_USED_UP_MOST; used_up += step) {
            struct Arena *arena = order_arena_short(used_up, blocks);
            const struct Bytes bytes = write_one(_i, arena, &order, list);
            ck_assert(bytes.data == NULL || same(bytes, whole));
            ck_assert((bytes.data == NULL) == arena_failed(arena));
            failed += bytes.data == NULL;
            done += bytes.data != NULL;
            arena_free(arena);
        }
    }
    ck_assert_int_gt(failed, 50);
    ck_assert_int_gt(done, 50);
    arena_free(made);
}
END_TEST

Suite *suite_order_documents(void)
{
    Suite *suite = suite_create("order: documents");
    TCase *tests = tcase_create("documents");
    tcase_set_timeout(tests, 300);
    tcase_add_loop_test(tests, csv_adds_up, 0, 60);
    tcase_add_test(tests, csv_says_what_to_buy);
    tcase_add_loop_test(tests, ubl_says_the_same, 0, 60);
    tcase_add_test(tests, ubl_names_everybody);
    tcase_add_test(tests, a_failing_plan_stands_at_the_top);
    tcase_add_loop_test(tests, hostile_texts_stay_texts, 0, (int)(sizeof hostile / sizeof hostile[0]));
    tcase_add_loop_test(tests, arena_runs_out, 0, 2);
    suite_add_tcase(suite, tests);
    return suite;
}
