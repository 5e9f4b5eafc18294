/* The plan as JSON holds what plan.xml holds, every attribute and every text, and nothing more. */
#include "plan_format.h"
#include "plan_routes.h"
#include "run_suite.h"
#include "schema_rig.h"
#include "sweep_depth.h"

#include <cjson/cJSON.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *text_of(const xmlNode *node)
{
    return node->children == NULL ? "" : (const char *)node->children->content;
}

/* The row of an attribute by its name, in an element and its groups. */
static const struct FormatRow *attribute_row(const struct FormatRow *begin, const char *name)
{
    const struct FormatRow *found = NULL;
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END && found == NULL; row++) {
        if (row->kind == ROW_PART) {
            found = attribute_row(format_begin(row->symbol), name);
        } else if (format_is_attribute(row) && strcmp(row->name, name) == 0) {
            found = row;
        }
    }
    return found;
}

static const char *child_name(const struct FormatRow *row)
{
    return format_is_child(row)                                    ? format_begin(row->symbol)->name
           : row->kind == ROW_LINES || row->kind == ROW_SOME_LINES ? row->name
                                                                   : "";
}

static const struct FormatRow *child_row(const struct FormatRow *begin, const char *name)
{
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END; row++) {
        if (strcmp(child_name(row), name) == 0) {
            return row;
        }
    }
    return NULL;
}

/* "drop bend" is the list of the two, "7 8" that of two numbers. */
static void same_list(const char *name, const char *text, const cJSON *list, bool numbers)
{
    ck_assert_msg(cJSON_IsArray(list), "%s", name);
    int at = 0;
    for (const char *word = text; *word != '\0'; at++) {
        const size_t length = strcspn(word, " ");
        const cJSON *item = cJSON_GetArrayItem(list, at);
        ck_assert_msg(numbers ? cJSON_IsNumber(item) && item->valueint == atoi(word)
                              : cJSON_IsString(item) && strlen(item->valuestring) == length &&
                                    strncmp(item->valuestring, word, length) == 0,
                      "%s: %s", name, word);
        word += length + (word[length] == ' ');
    }
    ck_assert_int_eq(at, cJSON_GetArraySize(list));
}

static void same_value(const struct FormatRow *row, const char *text, const cJSON *member, const char *json)
{
    const char *form = format_type(row->type)->form;
    ck_assert_msg(member != NULL, "%s is lacking", row->name);
    if (strcmp(form, "NUMBER") == 0) {
        char digits[128];
        snprintf(digits, sizeof digits, "\"%s\":\t%s", row->name, text);
        ck_assert_msg(cJSON_IsNumber(member) && member->valuedouble == strtod(text, NULL), "%s is no number",
                      row->name);
        ck_assert_msg(strstr(json, digits) != NULL, "%s is not written as %s", row->name, text);
    } else if (strcmp(form, "YES") == 0) {
        ck_assert_msg(strcmp(text, "yes") == 0 ? cJSON_IsTrue(member) : cJSON_IsFalse(member), "%s", row->name);
    } else if (strcmp(form, "TEXT") == 0) {
        ck_assert_msg(cJSON_IsString(member) && strcmp(member->valuestring, text) == 0, "%s", row->name);
    } else {
        same_list(row->name, text, member, strcmp(form, "NUMBERS") == 0);
    }
}

static void same_element(const struct FormatRow *begin, const xmlNode *element, const cJSON *object, const char *json);

/* How many children of that name come before this one. */
static int place_of(const xmlNode *child)
{
    int place = 0;
    for (const xmlNode *before = child->prev; before != NULL; before = before->prev) {
        place += before->type == XML_ELEMENT_NODE && xmlStrEqual(before->name, child->name);
    }
    return place;
}

static void same_child(const struct FormatRow *begin, const xmlNode *child, const cJSON *object, const char *json)
{
    const struct FormatRow *row = child_row(begin, (const char *)child->name);
    ck_assert_msg(row != NULL, "%s in %s", child->name, begin->name);
    const cJSON *member = row->list == NULL    ? cJSON_GetObjectItemCaseSensitive(object, (const char *)child->name)
                          : *row->list == '\0' ? object
                                               : cJSON_GetObjectItemCaseSensitive(object, row->list);
    if (row->list != NULL) {
        ck_assert_msg(cJSON_IsArray(member), "%s in %s", row->list, begin->name);
        member = cJSON_GetArrayItem(member, place_of(child));
    }
    ck_assert_msg(member != NULL, "%s in %s is lacking", child->name, begin->name);
    if (row->symbol != NULL) {
        same_element(format_begin(row->symbol), child, member, json);
    } else {
        ck_assert_msg(cJSON_IsString(member) && strcmp(member->valuestring, text_of(child)) == 0, "%s", child->name);
    }
}

/* Of any name where it is empty. */
static int children_called(const xmlNode *element, const char *name)
{
    int count = 0;
    for (const xmlNode *child = element->children; child != NULL; child = child->next) {
        count += child->type == XML_ELEMENT_NODE && (*name == '\0' || strcmp((const char *)child->name, name) == 0);
    }
    return count;
}

/* A member is an attribute, the text, a child or a list of as many as there are. */
static void is_no_more(const struct FormatRow *begin, const xmlNode *element, const cJSON *member)
{
    if (xmlHasProp(element, (const xmlChar *)member->string) != NULL) {
        return;
    }
    if (strcmp(member->string, "text") == 0) {
        ck_assert_str_eq(member->valuestring, text_of(element));
        return;
    }
    int found = 0;
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END; row++) {
        const char *name = child_name(row);
        if (*name != '\0' && strcmp(row->list != NULL ? row->list : name, member->string) == 0) {
            const int count = children_called(element, name);
            ck_assert_int_eq(count, row->list != NULL ? cJSON_GetArraySize(member) : 1);
            found++;
        }
    }
    ck_assert_msg(found > 0, "%s in %s is more than the XML has", member->string, begin->name);
}

static void same_element(const struct FormatRow *begin, const xmlNode *element, const cJSON *object, const char *json)
{
    ck_assert_msg(begin->kind == ROW_LIST ? cJSON_IsArray(object) : cJSON_IsObject(object), "%s", begin->name);
    for (const xmlAttr *attribute = element->properties; attribute != NULL; attribute = attribute->next) {
        const char *name = (const char *)attribute->name;
        const struct FormatRow *row = attribute_row(begin, name);
        ck_assert_msg(row != NULL, "%s of %s", name, begin->name);
        same_value(row, text_of((const xmlNode *)(const void *)attribute),
                   cJSON_GetObjectItemCaseSensitive(object, name), json);
    }
    bool has_text = false;
    for (const xmlNode *child = element->children; child != NULL; child = child->next) {
        if (child->type == XML_ELEMENT_NODE) {
            same_child(begin, child, object, json);
        } else if (child->next == NULL && child->prev == NULL) {
            has_text = true;
        }
    }
    ck_assert_msg(begin->kind == ROW_LIST || has_text == cJSON_HasObjectItem(object, "text"), "%s", begin->name);
    const cJSON *member = NULL;
    cJSON_ArrayForEach(member, object)
    {
        if (begin->kind != ROW_LIST) {
            is_no_more(begin, element, member);
        }
    }
    if (begin->kind == ROW_LIST) {
        ck_assert_int_eq(cJSON_GetArraySize(object), children_called(element, ""));
    }
}

static void is_the_same(const char *path, struct Wend *wend)
{
    const struct WendBytes xml = wend_document(wend, WEND_PLAN_XML), bytes = wend_document(wend, WEND_PLAN_JSON);
    ck_assert_msg(bytes.data != NULL, "no JSON of %s", path);
    const struct WendBytes again = wend_document(wend, WEND_PLAN_JSON);
    ck_assert_uint_eq(again.length, bytes.length);
    ck_assert_mem_eq(again.data, bytes.data, bytes.length);
    xmlDocPtr document = schema_document(xml.data, xml.length);
    cJSON *json = cJSON_ParseWithLength(bytes.data, bytes.length);
    ck_assert_msg(json != NULL, "the JSON of %s cannot be read", path);
    same_element(format_begin("plan"), xmlDocGetRootElement(document), json, bytes.data);
    cJSON_Delete(json);
    xmlFreeDoc(document);
}

START_TEST(json_is_plan_xml)
{
    ck_assert_int_gt(for_plans(1, is_the_same), 60);
}
END_TEST

static const char route[] = "wend: 1\n"
                            "job: {title: \"Sh\\\"ed \\\\ \xC3\xA9\xE2\x84\xA6 </script>\"}\n"
                            "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                            "runs:\n"
                            "  feeder:\n"
                            "    load: {current: 26 A}\n"
                            "    cable: {type: BS5467, cores: 3}\n"
                            "segments:\n"
                            "  - {name: track, way: duct, length: 20 m, duct: {size: 50 mm}, depth: 300 mm}\n";

START_TEST(texts_come_back)
{
    struct Wend *wend = wend_plan("shed", route, strlen(route));
    const struct WendBytes bytes = wend_document(wend, WEND_PLAN_JSON);
    cJSON *json = cJSON_ParseWithLength(bytes.data, bytes.length);
    const cJSON *job = cJSON_GetObjectItemCaseSensitive(json, "job");
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(job, "title")->valuestring,
                     "Sh\"ed \\ \xC3\xA9\xE2\x84\xA6 </script>");
    ck_assert_int_eq(bytes.data[bytes.length - 1], '\n');
    cJSON_Delete(json);
    wend_free(wend);
}
END_TEST

/* What is reported of a route that can be planned. */
START_TEST(a_check_is_told)
{
    struct Wend *wend = wend_plan("shed", route, strlen(route));
    char *told = wend_check_json(wend, "shed.yaml");
    cJSON *json = cJSON_Parse(told);
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(json, "file")->valuestring, "shed.yaml");
    ck_assert_int_eq(cJSON_GetObjectItemCaseSensitive(json, "status")->valueint, (int)wend_status(wend));
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(json, "verdict")->valuestring, "open");
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(json, "verdict-text")->valuestring, wend_verdict_text(wend));
    ck_assert_int_eq(cJSON_GetArraySize(cJSON_GetObjectItemCaseSensitive(json, "open")), wend_open_count(wend));
    const struct WendDiagnostics *diagnostics = wend_diagnostics(wend);
    const cJSON *list = cJSON_GetObjectItemCaseSensitive(json, "diagnostics");
    ck_assert_int_gt((int)wend_diagnostics_count(diagnostics), 0);
    ck_assert_int_eq(cJSON_GetArraySize(list), (int)wend_diagnostics_count(diagnostics));
    const cJSON *first = cJSON_GetArrayItem(list, 0);
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(first, "name")->valuestring,
                     wend_diagnostic_name(diagnostics, 0));
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(first, "severity")->valuestring, "warning");
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(first, "message")->valuestring,
                     wend_diagnostic_text(diagnostics, 0));
    cJSON_Delete(json);
    wend_text_free(told);
    wend_free(wend);
}
END_TEST

START_TEST(a_wrong_file_is_told)
{
    static const char wrong[] = "wend: 1\njob: {titel: Shed}\n";
    struct Wend *wend = wend_plan("shed", wrong, strlen(wrong));
    char *told = wend_check_json(wend, "a\tb.yaml");
    cJSON *json = cJSON_Parse(told);
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(json, "file")->valuestring, "a\tb.yaml");
    ck_assert_int_eq(cJSON_GetObjectItemCaseSensitive(json, "status")->valueint, 2);
    ck_assert(!cJSON_HasObjectItem(json, "verdict"));
    int found = 0;
    const cJSON *one = NULL;
    cJSON_ArrayForEach(one, cJSON_GetObjectItemCaseSensitive(json, "diagnostics"))
    {
        if (strcmp(cJSON_GetObjectItemCaseSensitive(one, "name")->valuestring, "key-misspelt") == 0) {
            found++;
            ck_assert_int_eq(cJSON_GetObjectItemCaseSensitive(one, "line")->valueint, 2);
            ck_assert_int_eq(cJSON_GetObjectItemCaseSensitive(one, "column")->valueint, 7);
            ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(one, "severity")->valuestring, "error");
            ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(one, "suggestion")->valuestring, "title");
        }
    }
    ck_assert_int_eq(found, 1);
    cJSON_Delete(json);
    wend_text_free(told);
    wend_free(wend);
    told = wend_check_json(NULL, "gone.yaml");
    ck_assert_ptr_nonnull(strstr(told, "\"status\":\t3"));
    wend_text_free(told);
}
END_TEST

static double number_of(const cJSON *object, const char *name)
{
    const cJSON *member = cJSON_GetObjectItemCaseSensitive(object, name);
    ck_assert_msg(cJSON_IsNumber(member), "%s", name);
    return member->valuedouble;
}

/* What the library tells of an order one by one is in its JSON, and each line is shared out whole. */
START_TEST(an_order_adds_up)
{
    struct Wend *jobs[] = {wend_plan("barn", route, strlen(route)), wend_plan("shed", route, strlen(route))};
    struct WendOrder *order = wend_order(jobs, 2, NULL, 0, "2026-05-14");
    const struct WendBytes bytes = wend_order_document(order, WEND_ORDER_JSON);
    cJSON *json = cJSON_ParseWithLength(bytes.data, bytes.length);
    ck_assert_ptr_nonnull(json);
    const cJSON *names = cJSON_GetObjectItemCaseSensitive(json, "jobs");
    ck_assert_int_eq(cJSON_GetArraySize(names), 2);
    for (int i = 0; i < 2; i++) {
        const cJSON *job = cJSON_GetArrayItem(names, i);
        ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(job, "name")->valuestring, wend_order_job_name(order, i));
        ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(job, "verdict")->valuestring, "open");
    }
    const cJSON *lines = cJSON_GetObjectItemCaseSensitive(json, "lines");
    ck_assert_int_eq(cJSON_GetArraySize(lines), wend_order_line_count(order));
    long packs = 0;
    const cJSON *line = NULL;
    cJSON_ArrayForEach(line, lines)
    {
        const cJSON *shares = cJSON_GetObjectItemCaseSensitive(line, "by-job");
        ck_assert_int_eq(cJSON_GetArraySize(shares), 2);
        const double shared = cJSON_GetArrayItem(shares, 0)->valuedouble + cJSON_GetArrayItem(shares, 1)->valuedouble;
        ck_assert_double_eq_tol(number_of(line, "asked"), shared, 1e-6);
        ck_assert_double_eq_tol(number_of(line, "quantity") + number_of(line, "at-hand"),
                                shared + number_of(line, "over"), 1e-6);
        packs += cJSON_HasObjectItem(line, "packs") ? (long)number_of(line, "packs") : 0;
    }
    ck_assert_int_gt(packs, 0);
    ck_assert_int_eq(packs, wend_order_packs(order));
    cJSON_Delete(json);
    wend_order_free(order);
    wend_free(jobs[0]);
    wend_free(jobs[1]);
}
END_TEST

/* A price list that is wrong leaves no plan, and what is wrong is reported under that file's name. */
START_TEST(a_wrong_price_list_is_told)
{
    static const char list[] = "code;price\n";
    char priced[sizeof route + 64];
    snprintf(priced, sizeof priced, "%sparts: {prices: shed.prices.csv}\n", route);
    struct Wend *wend = wend_plan("shed", priced, strlen(priced));
    ck_assert_int_eq(wend_price(wend, list, strlen(list)), WEND_INPUT_WRONG);
    char *told = wend_check_json(wend, "shed.yaml");
    cJSON *json = cJSON_Parse(told);
    ck_assert_int_eq((int)number_of(json, "status"), 2);
    int of_list = 0;
    const cJSON *one = NULL;
    cJSON_ArrayForEach(one, cJSON_GetObjectItemCaseSensitive(json, "diagnostics"))
    {
        of_list += strcmp(cJSON_GetObjectItemCaseSensitive(one, "file")->valuestring, "shed.prices.csv") == 0;
    }
    ck_assert_int_gt(of_list, 0);
    ck_assert_int_eq(of_list, (int)wend_diagnostics_count(wend_prices_diagnostics(wend)));
    cJSON_Delete(json);
    wend_text_free(told);
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("JSON");
    TCase *tests = tcase_create("JSON");
    tcase_set_timeout(tests, 300);
    tcase_add_test(tests, json_is_plan_xml);
    tcase_add_test(tests, texts_come_back);
    tcase_add_test(tests, a_check_is_told);
    tcase_add_test(tests, a_wrong_file_is_told);
    tcase_add_test(tests, a_wrong_price_list_is_told);
    tcase_add_test(tests, an_order_adds_up);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
