/* public_face.c: the library as somebody else's program sees it: linked with what was installed, knowing wend.h alone.
 * Every function takes NULL, and gives what wend.h says a handle that is NULL has. */
#include <wend/wend.h>

#include <stdio.h>
#include <string.h>

static int passed, failed;

static void holds(int good, const char *what)
{
    if (good) {
        passed++;
    } else {
        failed++;
        printf("FAILED %s\n", what);
    }
}
#define HOLDS(condition) holds((condition), #condition)

static int none(const char *text)
{
    return text != NULL && *text == '\0';
}

static int nothing(struct WendBytes bytes)
{
    return bytes.data == NULL && bytes.length == 0;
}

static const char route[] = "wend: 1\n"
                            "job: {title: Boathouse supply}\n"
                            "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                            "runs:\n"
                            "  feeder:\n"
                            "    load: {current: 26 A}\n"
                            "    cable: {type: BS5467, cores: 3}\n"
                            "segments:\n"
                            "  - {name: gable, way: wall, length: 6.5 m, rise: 2.5 m}\n"
                            "  - {name: track, way: duct, length: 24 m, duct: {size: 63 mm}, depth: 300 mm}\n";

static void no_diagnostics(const struct WendDiagnostics *diagnostics)
{
    HOLDS(wend_diagnostics_count(diagnostics) == 0);
    HOLDS(none(wend_diagnostic_name(diagnostics, 0)));
    HOLDS(wend_diagnostic_severity(diagnostics, 0) == WEND_WARNING);
    HOLDS(wend_diagnostic_line(diagnostics, 0) == 0);
    HOLDS(wend_diagnostic_column(diagnostics, 0) == 0);
    HOLDS(none(wend_diagnostic_text(diagnostics, 0)));
    HOLDS(none(wend_diagnostics_printed(diagnostics, NULL)));
}

static void no_route(void)
{
    int document;
    char *told;
    wend_free(NULL);
    wend_keep_order(NULL);
    wend_free(wend_plan_changed(NULL, NULL, 0, NULL, 3));
    wend_free(wend_plan_so_far(NULL, NULL, 0));
    wend_free(wend_plan_wanted(WEND_WANT_VERDICT, NULL, NULL, 0, NULL, 3));
    HOLDS(wend_status(NULL) == WEND_NO_MEMORY);
    HOLDS(wend_diagnostics(NULL) == NULL);
    HOLDS(wend_verdict(NULL) == WEND_FAIL);
    HOLDS(none(wend_verdict_text(NULL)));
    HOLDS(none(wend_sheet_mark(NULL)));
    HOLDS(wend_open_count(NULL) == 0);
    HOLDS(none(wend_open_text(NULL, 0)));
    HOLDS(wend_warning_count(NULL) == 0);
    HOLDS(none(wend_warning_text(NULL, 0)));
    HOLDS(none(wend_prices_name(NULL)));
    HOLDS(wend_price(NULL, NULL, 7) == WEND_NO_MEMORY);
    HOLDS(wend_prices_diagnostics(NULL) == NULL);
    for (document = 0; document <= WEND_DOCUMENT_COUNT; document++) {
        HOLDS(nothing(wend_document(NULL, (enum WendDocument)document)));
    }
    told = wend_tree_json(NULL, 7);
    HOLDS(told != NULL && strstr(told, "diagnostics") != NULL);
    wend_text_free(told);
    HOLDS(!wend_has_document(NULL, WEND_PLAN_XML));
    HOLDS(nothing(wend_readings(NULL, WEND_DIFF_TEXT)) && wend_readings_verdict(NULL) == WEND_FAIL);
    told = wend_check_json(NULL, NULL);
    HOLDS(told != NULL && strstr(told, "\"status\":\t3") != NULL);
    wend_text_free(told);
    HOLDS(nothing(wend_decision(NULL, NULL, false)));
    HOLDS(wend_papers_diagnostics(NULL) == NULL);
    HOLDS(!wend_use_language(NULL, "pl") && !wend_use_language(NULL, NULL));
    HOLDS(none(wend_language(-1)) && none(wend_language(1000)));
    HOLDS(wend_options(NULL, NULL, 0) == NULL);
    HOLDS(wend_decides(NULL) == NULL);
    HOLDS(wend_reach(NULL) == NULL);
    HOLDS(none(wend_labour_name(NULL)) && wend_labour(NULL, NULL, 0) == WEND_NO_MEMORY);
    HOLDS(wend_labour_diagnostics(NULL) == NULL && wend_labour_built_in().length > 100);
    HOLDS(nothing(wend_day(NULL, NULL, WEND_DAY_TEXT)));
    HOLDS(!wend_quotes(NULL) && nothing(wend_quotation(NULL)));
    HOLDS(nothing(wend_diff(NULL, NULL, WEND_DIFF_TEXT)));
    HOLDS(wend_run_count(NULL) == 0 && none(wend_run_name(NULL, 0)));
    HOLDS(wend_check_count(NULL) == 0 && none(wend_check_name(NULL, 0)));
    HOLDS(wend_explain(NULL, NULL, NULL) == NULL);
    HOLDS(wend_answer_status(NULL) == WEND_NO_MEMORY);
    HOLDS(nothing(wend_answer_text(NULL)));
    HOLDS(wend_answer_diagnostics(NULL) == NULL);
}

static void no_templates(void)
{
    struct WendTemplate built_in;
    struct WendTemplates *templates = wend_templates(NULL, 3);
    HOLDS(!wend_template(0, NULL));
    HOLDS(!wend_template(-1, &built_in) && !wend_template(1000, &built_in));
    HOLDS(wend_template(0, &built_in) && built_in.length > 100);
    HOLDS(wend_templates_status(templates) == WEND_PASSES);
    wend_templates_free(templates);
    memset(&built_in, 0, sizeof built_in);
    templates = wend_templates(&built_in, 1);
    HOLDS(wend_templates_status(templates) == WEND_INPUT_WRONG);
    HOLDS(wend_diagnostics_count(wend_templates_diagnostics(templates)) == 1);
    wend_templates_free(templates);
    wend_templates_free(NULL);
    HOLDS(wend_templates_status(NULL) == WEND_NO_MEMORY);
    HOLDS(wend_templates_diagnostics(NULL) == NULL);
    wend_use_templates(NULL, NULL);
}

static void no_order(const struct WendOrder *order)
{
    HOLDS(wend_order_verdict(order) == WEND_FAIL);
    HOLDS(wend_order_job_count(order) == 0);
    HOLDS(none(wend_order_job_name(order, 0)));
    HOLDS(wend_order_job_verdict(order, 0) == WEND_FAIL);
    HOLDS(none(wend_order_job_verdict_text(order, 0)));
    HOLDS(wend_order_line_count(order) == 0);
    HOLDS(wend_order_packs(order) == 0);
    HOLDS(wend_order_packs_apart(order) == 0);
    HOLDS(wend_order_total_count(order) == 0);
    HOLDS(wend_order_total_lines(order, 0) == 0);
    HOLDS(none(wend_order_total_currency(order, 0)));
    HOLDS(none(wend_order_total_amount(order, 0)));
    HOLDS(none(wend_order_total_in_coin(order, 0)));
    HOLDS(wend_order_unpriced_count(order) == 0);
    HOLDS(none(wend_order_prices_note(order)));
    HOLDS(none(wend_order_prices_name(order)));
    HOLDS(wend_order_prices_diagnostics(order) == NULL);
}

static void orders(void)
{
    struct Wend *no_routes[1] = {NULL};
    struct WendOrder *order = wend_order(NULL, 4, NULL, 9, NULL);
    HOLDS(wend_order_status(order) == WEND_INPUT_WRONG);
    no_order(order);
    wend_order_free(order);
    order = wend_order(no_routes, 1, NULL, 0, NULL);
    HOLDS(wend_order_status(order) == WEND_INPUT_WRONG);
    wend_order_free(order);
    order = wend_order(no_routes, 1, NULL, 0, "2026-02-30");
    HOLDS(strcmp(wend_diagnostic_name(wend_order_diagnostics(order), 0), "date-wrong") == 0);
    wend_order_free(order);
    no_order(NULL);
    wend_order_free(NULL);
    HOLDS(wend_order_status(NULL) == WEND_NO_MEMORY);
    HOLDS(wend_order_diagnostics(NULL) == NULL);
    HOLDS(wend_order_price(NULL, NULL, 3) == WEND_NO_MEMORY);
    HOLDS(none(wend_order_name(NULL)));
    HOLDS(nothing(wend_order_document(NULL, WEND_ORDER_CSV)));
    HOLDS(!wend_is_date(NULL) && !wend_is_date("2026-02-30") && wend_is_date("2026-02-28"));
}

/* A route that is there, asked for what it does not have. */
static void a_route(void)
{
    struct Wend *wend = wend_plan(NULL, route, sizeof route - 1);
    struct WendOrder *order = wend_order(&wend, 1, NULL, 0, NULL);
    const struct WendDiagnostics *told = wend_diagnostics(wend);
    const struct WendAnswer *answer = wend_explain(wend, NULL, NULL);
    HOLDS(wend_status(wend) <= WEND_CHECK_FAILS);
    HOLDS(wend_diagnostics_count(told) > 0 && wend_diagnostic_line(told, 0) == 10 &&
          wend_diagnostic_column(told, 0) > 1);
    HOLDS(!none(wend_diagnostic_text(told, 0)) && none(wend_diagnostic_text(told, (size_t)-1)));
    HOLDS(strstr(wend_diagnostics_printed(told, "b.yaml"), "b.yaml:10:") != NULL);
    HOLDS(wend_diagnostics_printed(told, NULL)[0] == ':');
    HOLDS(strcmp(wend_verdict_word(wend_verdict(wend)), "OPEN") == 0 && wend_open_count(wend) > 0);
    HOLDS(!none(wend_open_text(wend, 0)) && none(wend_open_text(wend, -1)) && none(wend_open_text(wend, 1000)));
    HOLDS(!none(wend_warning_text(wend, 0)) && none(wend_warning_text(wend, wend_warning_count(wend))));
    HOLDS(wend_answer_status(answer) == WEND_INPUT_WRONG && nothing(wend_answer_text(answer)));
    HOLDS(wend_diagnostics_count(wend_answer_diagnostics(answer)) == 1);
    HOLDS(wend_answer_text(wend_options(wend, NULL, 0)).length > 100);
    HOLDS(strcmp(wend_diagnostic_name(wend_answer_diagnostics(wend_options(wend, NULL, -1)), 0), "growth-range") == 0);
    HOLDS(nothing(wend_document(wend, WEND_DOCUMENT_COUNT)) && nothing(wend_document(wend, (enum WendDocument) - 1)));
    HOLDS(wend_run_count(wend) == 1 && strcmp(wend_run_name(wend, 0), "feeder") == 0 && none(wend_run_name(wend, 1)));
    HOLDS(wend_check_count(wend) > 5 && !none(wend_check_name(wend, 0)) && none(wend_check_name(wend, -1)));
    HOLDS(wend_order_line_count(order) > 5 && wend_order_job_count(order) == 1);
    HOLDS(strcmp(wend_order_job_name(order, 0), "route") == 0 && none(wend_order_job_name(order, 1)));
    HOLDS(nothing(wend_order_document(order, WEND_ORDER_DOCUMENT_COUNT)));
    HOLDS(nothing(wend_order_document(order, WEND_ORDER_XML))); /* without a date */
    wend_order_free(order);
    HOLDS(wend_price(wend, NULL, 0) == WEND_INPUT_WRONG);
    HOLDS(wend_diagnostics_count(wend_prices_diagnostics(wend)) > 0);
    HOLDS(wend_verdict(wend) == WEND_FAIL && wend_open_count(wend) == 0 && nothing(wend_document(wend, WEND_PLAN_XML)));
    wend_free(wend);
    wend = wend_plan("empty", NULL, 5);
    HOLDS(wend_status(wend) == WEND_INPUT_WRONG && wend_diagnostics_count(wend_diagnostics(wend)) > 0);
    HOLDS(wend_answer_status(wend_options(wend, NULL, 0)) == WEND_INPUT_WRONG);
    wend_free(wend);
}

/* A paper that its template fails: by which name it is told, and that a good one then does. */
static void a_paper(void)
{
    const struct WendTemplate wrong = {"brief.xsl", NULL, "<no/>", 5};
    struct WendTemplates *templates = wend_templates(&wrong, 1);
    struct Wend *wend = wend_plan("boathouse", route, sizeof route - 1);
    wend_use_templates(wend, templates);
    HOLDS(wend_papers_diagnostics(wend) == NULL);
    HOLDS(nothing(wend_document(wend, WEND_BRIEF_HTML)));
    HOLDS(strcmp(wend_diagnostic_name(wend_papers_diagnostics(wend), 0), "template-not-xslt") == 0);
    HOLDS(strncmp(wend_diagnostics_printed(wend_papers_diagnostics(wend), "not read"), "brief.xsl:1:", 12) == 0);
    wend_use_templates(wend, NULL);
    HOLDS(wend_document(wend, WEND_BRIEF_HTML).length > 1000);
    HOLDS(wend_papers_diagnostics(wend) == NULL);
    wend_free(wend);
    wend_templates_free(templates);
}

static void what_it_asks(void)
{
    struct WendQuestion asked;
    char *language = wend_language_json();
    char *schema = wend_schema();
    char *depth = NULL;
    bool of_duct = false, of_wall = false;
    HOLDS(language != NULL && strstr(language, "\"asked\"") != NULL && schema != NULL &&
          strstr(schema, "2020-12") != NULL);
    HOLDS(!wend_question(-1, "", &asked) && !wend_question(wend_question_count(), "", &asked));
    HOLDS(!wend_question(0, "", NULL) && wend_question(0, NULL, &asked) && strcmp(asked.key, "system") == 0);
    HOLDS(strcmp(wend_question_word(0, 0), "TN-S") == 0 && none(wend_question_word(0, 99)) &&
          none(wend_question_word(-1, 0)));
    HOLDS(!none(wend_question_meaning(0, 0)) && none(wend_question_meaning(999, 0)));
    HOLDS(wend_question_default(-1, NULL) == NULL);
    for (int i = 0; i < wend_question_count(); i++) {
        if (wend_question(i, "duct", &asked) && strcmp(asked.key, "depth") == 0) {
            of_duct = true;
            of_wall = wend_question(i, "wall", &asked);
            depth = wend_question_default(i, "duct");
        }
    }
    HOLDS(of_duct && !of_wall && depth != NULL && strcmp(depth, "600 mm") == 0);
    wend_text_free(depth);
    wend_text_free(schema);
    wend_text_free(language);
}

static void what_it_knows(void)
{
    char *manual = wend_manual();
    char *line = wend_table_line(0);
    static const char *const words[] = {"plan", "check"};
    HOLDS(strcmp(wend_version(), WEND_VERSION) == 0);
    HOLDS(none(wend_verdict_word((enum WendVerdict)7)) && strcmp(wend_verdict_word(WEND_PASS), "PASS") == 0);
    HOLDS(manual != NULL && line != NULL && wend_table_count() > 20);
    char *table = wend_table_text("4e4a", true);
    char *cable = wend_cable_text("BS5467", "3x6");
    HOLDS(table != NULL && cable != NULL);
    wend_text_free(table);
    wend_text_free(cable);
    table = wend_table_json("4e4a");
    cable = wend_cable_json("BS5467", "3x6");
    HOLDS(table != NULL && cable != NULL && *table == '{' && *cable == '{');
    wend_text_free(table);
    wend_text_free(cable);
    HOLDS(wend_table_json(NULL) == NULL && wend_cable_json(NULL, NULL) == NULL);
    HOLDS(wend_table_text(NULL, false) == NULL && wend_cable_text(NULL, NULL) == NULL);
    HOLDS(none(wend_spoken(NULL)) && none(wend_spoken("weather")) && strstr(wend_spoken("pme"), "TN-C-S") != NULL);
    HOLDS(none(wend_missing()));
    HOLDS(!none(wend_message_name(0)) && !none(wend_message_text(0)) && !wend_message_warns(0) &&
          none(wend_message_name(-1)) && none(wend_message_text(99999)) && !wend_message_warns(-1));
    HOLDS(!none(wend_table_name(0)) && none(wend_table_name(-1)) && !none(wend_cable_kind(0)) &&
          none(wend_cable_kind(99)));
    HOLDS(!none(wend_check_kind(0)) && none(wend_check_kind(-1)) && none(wend_check_kind(999)));
    HOLDS(wend_check_kind_text(NULL) == NULL && wend_check_kind_text("weather") == NULL);
    char *check = wend_check_kind_text("drop");
    HOLDS(check != NULL && strstr(check, "525") != NULL);
    wend_text_free(check);
    HOLDS(wend_table_line(-1) == NULL && wend_table_line(wend_table_count()) == NULL);
    HOLDS(wend_looks_same(NULL, NULL) && wend_looks_same("", NULL) && !wend_looks_same(NULL, "barn"));
    HOLDS(none(wend_nearest("plan", NULL, 2)) && none(wend_nearest(NULL, words, 2)));
    HOLDS(strcmp(wend_nearest("chekc", words, 2), "check") == 0 && none(wend_nearest("weather", words, 2)));
    wend_text_free(manual);
    wend_text_free(line);
    wend_text_free(NULL);
}

int main(void)
{
    wend_guard_memory(NULL);
    no_diagnostics(NULL);
    no_route();
    no_templates();
    orders();
    a_route();
    a_paper();
    what_it_asks();
    what_it_knows();
    wend_end();
    printf("%d passed, %d failed\n", passed, failed);
    return failed == 0 && passed > 100 ? 0 : 1;
}
