/* What a page on a phone asks of the library: a file as it is written, the keys that a report is about, a survey that
 * has not reached the far end, the narrow drawing. */
#include "phone/engine.h"
#include "run_suite.h"
#include "wend/wend.h"

#include <cjson/cJSON.h>

#include <string.h>

static const char route[] = "wend: 1\n"
                            "job: {title: Byre supply}\n"
                            "supply: {system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1 kA}\n"
                            "earthing: {far-end: export, extraneous-parts: no}\n"
                            "runs:\n"
                            "  feeder:\n"
                            "    load: {current: 26 A}\n"
                            "    device: {kind: MCB, curve: B, rating: 32 A, breaking-capacity: 10 kA}\n"
                            "    cable: {type: BS5467, cores: 3, size: 10 mm2}\n"
                            "segments:\n"
                            "  - {name: gable, way: wall, length: 6.5 m, rise: 2.5 m}\n";

/* "segments 1 length", the path of the first report of that name; "" when there is none. */
static void path_of(const char *text, const char *name, char *out, size_t room)
{
    struct Wend *wend = wend_plan("byre", text, strlen(text));
    char *told = wend_check_json(wend, "byre.yaml");
    cJSON *json = cJSON_Parse(told);
    out[0] = '\0';
    const cJSON *one = NULL;
    cJSON_ArrayForEach(one, cJSON_GetObjectItemCaseSensitive(json, "diagnostics"))
    {
        const cJSON *path = cJSON_GetObjectItemCaseSensitive(one, "path");
        if (strcmp(cJSON_GetObjectItemCaseSensitive(one, "name")->valuestring, name) != 0 || out[0] != '\0') {
            continue;
        }
        const cJSON *step = NULL;
        cJSON_ArrayForEach(step, path)
        {
            const size_t used = strlen(out);
            char number[16];
            snprintf(number, sizeof number, "%d", step->valueint);
            snprintf(out + used, room - used, "%s%s", used > 0 ? " " : "",
                     cJSON_IsString(step) ? step->valuestring : number);
        }
    }
    cJSON_Delete(json);
    wend_text_free(told);
    wend_free(wend);
}

START_TEST(a_report_names_its_keys)
{
    static const struct {
        const char *text, *name, *path;
    } rows[] = {
        {"wend: 1\njob: {titel: A}\n", "key-misspelt", "job titel"},
        {"wend: 1\nsupply: {system: TN-S}\n", "loop-impedance-missing", "supply loop-impedance"},
        {"wend: 1\nsupply: {system: TN-S}\n", "key-missing", "job"},
        {"wend: 1\nsegments:\n  - {name: a, way: wall, length: 1 m}\n  - {name: b, way: wall}\n", "key-missing", "job"},
        {"wend: 1\njob: {title: A}\nsupply: {system: TT}\nruns:\n  f: {load: {current: 9 A}}\nsegments:\n"
         "  - {name: a, way: wall, length: 1 m}\n  - {name: b, way: wall}\n",
         "key-missing", "runs f cable"},
        {"wend: 1\njob: {title: A}\nsupply: {system: TT}\nruns:\n  f: {load: {current: 9 A}, cable: {type: BS5467, "
         "cores: 3}}\nsegments:\n  - {name: a, way: wall, length: 1 m}\n  - {way: wall, name: b}\n",
         "key-missing", "segments 1 length"},
        {"wend: 1\nsegments:\n  - {name: a, way: wall, length: 1 m}\n  - {name: b, way: wall, length: 2 A}\n",
         "unit-wrong", "segments 1 length"},
        {"wend: 1\nruns:\n  a.b:\n    load: {current: 9 A, power: 2 kW}\n", "load-both", "runs a.b load power"},
    };
    char path[200];
    path_of(rows[_i].text, rows[_i].name, path, sizeof path);
    ck_assert_str_eq(path, rows[_i].path);
}
END_TEST
enum { PATHS = 8 };

START_TEST(a_file_is_read_as_it_is_written)
{
    static const char text[] = "# a note\nanything: [a, {b: '1'}]\n";
    char *told = wend_tree_json(text, strlen(text));
    cJSON *json = cJSON_Parse(told);
    const cJSON *key =
        cJSON_GetArrayItem(cJSON_GetObjectItemCaseSensitive(cJSON_GetObjectItemCaseSensitive(json, "tree"), "keys"), 0);
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(key, "key")->valuestring, "anything");
    ck_assert_int_eq(cJSON_GetObjectItemCaseSensitive(key, "line")->valueint, 2);
    const cJSON *items = cJSON_GetObjectItemCaseSensitive(cJSON_GetObjectItemCaseSensitive(key, "value"), "items");
    ck_assert_int_eq(cJSON_GetArraySize(items), 2);
    ck_assert_str_eq(cJSON_GetObjectItemCaseSensitive(cJSON_GetArrayItem(items, 0), "text")->valuestring, "a");
    ck_assert_int_eq(cJSON_GetArraySize(cJSON_GetObjectItemCaseSensitive(json, "diagnostics")), 0);
    cJSON_Delete(json);
    wend_text_free(told);
    static const char broken[] = "a: [";
    told = wend_tree_json(broken, strlen(broken));
    json = cJSON_Parse(told);
    ck_assert(!cJSON_HasObjectItem(json, "tree"));
    ck_assert_int_eq(cJSON_GetArraySize(cJSON_GetObjectItemCaseSensitive(json, "diagnostics")), 1);
    cJSON_Delete(json);
    wend_text_free(told);
}
END_TEST

START_TEST(a_survey_so_far_never_passes)
{
    struct Wend *whole = wend_plan("byre", route, strlen(route));
    struct Wend *so_far = wend_plan_so_far("byre", route, strlen(route));
    ck_assert_int_eq(wend_verdict(whole), WEND_PASS);
    ck_assert_int_eq(wend_verdict(so_far), WEND_OPEN);
    ck_assert_int_eq(wend_open_count(so_far), 1);
    ck_assert_int_eq(wend_warning_count(so_far), wend_warning_count(whole));
    wend_free(whole);
    wend_free(so_far);
}
END_TEST

START_TEST(the_engine_gives_what_the_library_gives)
{
    static const char *const names[] = {"diagram.svg", "narrow.svg",  "plan.xml",   "plan.json",
                                        "parts.csv",   "summary.txt", "brief.html", "card.html",
                                        "parts.html",  "design.html", "test.html",  "pack.html"};
    static const enum WendDocument documents[] = {WEND_DIAGRAM_SVG, WEND_NARROW_SVG,   WEND_PLAN_XML,   WEND_PLAN_JSON,
                                                  WEND_PARTS_CSV,   WEND_SUMMARY_TEXT, WEND_BRIEF_HTML, WEND_CARD_HTML,
                                                  WEND_PARTS_HTML,  WEND_DESIGN_HTML,  WEND_TEST_HTML,  WEND_PACK_HTML};
    struct Wend *wend = wend_plan("byre", route, strlen(route));
    struct EngineRoute *asked = engine_plan("byre", route, strlen(route), 0);
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        const struct WendBytes due = wend_document(wend, documents[i]);
        const struct EngineBytes *got = engine_document(asked, names[i]);
        ck_assert_msg(due.length > 100 && got->length == due.length && memcmp(got->data, due.data, due.length) == 0,
                      "%s", names[i]);
    }
    ck_assert_ptr_null(engine_document(asked, "brief")->data);
    ck_assert_int_eq(engine_status(asked), 0);
    ck_assert_int_eq((int)engine_printed(asked, "byre.yaml")->length, 0);
    engine_plan_end(asked);
    wend_free(wend);
    asked = engine_plan("byre", route, strlen(route), 1);
    ck_assert_ptr_nonnull(strstr(engine_check(asked, "byre.yaml")->data, "\"verdict\":\t\"open\""));
    engine_plan_end(asked);
}
END_TEST

/* "rates" of a way: whether the kind is in it. */
static bool rates(const cJSON *language, const char *way, const char *cable)
{
    const cJSON *one = NULL;
    cJSON_ArrayForEach(one, cJSON_GetObjectItemCaseSensitive(language, "ways"))
    {
        const cJSON *kind = NULL;
        cJSON_ArrayForEach(kind, cJSON_GetObjectItemCaseSensitive(one, "rates"))
        {
            if (strcmp(cJSON_GetObjectItemCaseSensitive(one, "way")->valuestring, way) == 0 &&
                strcmp(kind->valuestring, cable) == 0) {
                return true;
            }
        }
    }
    return false;
}

/* Method D stands in the tables of armoured cable alone; nothing is held of screened cable. */
START_TEST(a_tile_knows_which_cable_goes_there)
{
    char *text = wend_language_json();
    cJSON *language = cJSON_Parse(text);
    ck_assert(rates(language, "buried", "BS5467") && rates(language, "duct", "BS6724"));
    ck_assert(!rates(language, "buried", "BS6004-multicore") && !rates(language, "duct", "BS6004-flat"));
    ck_assert(rates(language, "wall", "BS6004-flat") && rates(language, "through-wall", "BS7211-multicore"));
    ck_assert(!rates(language, "wall", "BS8436"));
    cJSON_Delete(language);
    wend_text_free(text);
}
END_TEST

static const cJSON *assumption_at(const cJSON *plan, const char *where)
{
    const cJSON *one = NULL;
    cJSON_ArrayForEach(one, cJSON_GetObjectItemCaseSensitive(plan, "assumptions"))
    {
        if (strcmp(cJSON_GetObjectItemCaseSensitive(one, "where")->valuestring, where) == 0) {
            return one;
        }
    }
    return NULL;
}

START_TEST(an_assumption_says_whether_it_can_be_surveyed)
{
    struct Wend *wend = wend_plan("byre", route, strlen(route));
    const struct WendBytes bytes = wend_document(wend, WEND_PLAN_JSON);
    cJSON *plan = cJSON_ParseWithLength(bytes.data, bytes.length);
    const cJSON *air = assumption_at(plan, "conditions.air"), *spare = assumption_at(plan, "parts.spare-cable");
    ck_assert_ptr_nonnull(air);
    ck_assert_ptr_nonnull(spare);
    ck_assert(cJSON_IsTrue(cJSON_GetObjectItemCaseSensitive(air, "can-be-surveyed")));
    ck_assert(cJSON_IsFalse(cJSON_GetObjectItemCaseSensitive(spare, "can-be-surveyed")));
    cJSON_Delete(plan);
    wend_free(wend);
}
END_TEST

int main(void)
{
    TCase *tests = tcase_create("phone");
    tcase_add_loop_test(tests, a_report_names_its_keys, 0, PATHS);
    tcase_add_test(tests, a_file_is_read_as_it_is_written);
    tcase_add_test(tests, a_survey_so_far_never_passes);
    tcase_add_test(tests, the_engine_gives_what_the_library_gives);
    tcase_add_test(tests, a_tile_knows_which_cable_goes_there);
    tcase_add_test(tests, an_assumption_says_whether_it_can_be_surveyed);
    Suite *suite = suite_create("phone");
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
