/* A value set beside the file: the plan is that of a file in which it was written, its faults are the reader's own at
 * their place in the word, and no document of it can be taken for one of the file. */
#include "run_suite.h"
#include "said.h"

#include "library/library_private.h"

#include <string.h>

enum { TEXT_MOST = 4096 };

struct Route {
    const char *load, *size, *device, *field, *duct, *conditions;
};
static const struct Route plain = {"current: 26 A", "choose", "", "14 m", "24 m", ""};

static int written(char text[TEXT_MOST], const struct Route *route)
{
    return snprintf(text, TEXT_MOST,
                    "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.2 ohm, fault-current: 1.2 "
                    "kA}\nconditions: {air: 30 degC%s}\nearthing: {far-end: export, extraneous-parts: no}\nruns:\n"
                    "  byre:\n    load: {%s}\n    cable: {type: BS5467, cores: 3, size: %s}\n%s"
                    "segments:\n  - {name: field, way: buried, length: %s, depth: 600 mm}\n"
                    "  - {name: field.gate, way: duct, length: %s, depth: 600 mm, duct: {size: 63 mm}}\n",
                    route->conditions, route->load, route->size, route->device, route->field, route->duct);
}

static struct Wend *planned(const struct Route *route, const char *const *sets, int count)
{
    char text[TEXT_MOST];
    const int length = written(text, route);
    return wend_plan_changed("byre", text, (size_t)length, sets, count);
}

static const struct {
    const char *word;
    struct Route route;
} rows[] = {
    {"segments.field.length=66 m", {"current: 26 A", "choose", "", "66 m", "24 m", ""}},
    {"segments.field.gate.length=3 m", {"current: 26 A", "choose", "", "14 m", "3 m", ""}},
    {"segments.2.length=30 m", {"current: 26 A", "choose", "", "14 m", "30 m", ""}},
    {"runs.byre.cable.size=16 mm2", {"current: 26 A", "16 mm2", "", "14 m", "24 m", ""}},
    {"runs.byre.load.current=51 A", {"current: 51 A", "choose", "", "14 m", "24 m", ""}},
    {"runs.byre.device.rating=40 A", {"current: 26 A", "choose", "    device: {rating: 40 A}\n", "14 m", "24 m", ""}},
    {"conditions.ground = 25 degC", {"current: 26 A", "choose", "", "14 m", "24 m", ", ground: 25 degC"}},
};
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

static const char *text_of(struct Wend *wend, enum WendDocument document)
{
    const struct WendBytes bytes = wend_document(wend, document);
    ck_assert_ptr_nonnull(bytes.data);
    return arena_text(wend->arena, bytes.data, bytes.length);
}

/* With the sheet mark blotted out. */
static const char *unmarked(struct Wend *wend, enum WendDocument document)
{
    const char *const told = text_of(wend, document);
    char *text = arena_alloc(wend->arena, strlen(told) + 1);
    ck_assert_ptr_nonnull(text);
    memcpy(text, told, strlen(told) + 1);
    const char *const mark = wend_sheet_mark(wend);
    int marks = 0;
    for (char *at = strstr(text, mark); at != NULL; at = strstr(at, mark), marks++) {
        memset(at, '-', strlen(mark));
    }
    ck_assert_int_gt(marks, 0);
    return text;
}

START_TEST(as_if_it_were_written)
{
    struct Wend *set = planned(&plain, &rows[_i].word, 1);
    struct Wend *edited = planned(&rows[_i].route, NULL, 0);
    struct Wend *file = planned(&plain, NULL, 0);
    ck_assert_msg(wend_status(set) <= WEND_CHECK_FAILS, "%s", wend_diagnostics_printed(wend_diagnostics(set), "f"));
    ck_assert_msg(wend_status(edited) <= WEND_CHECK_FAILS, "%s",
                  wend_diagnostics_printed(wend_diagnostics(edited), "f"));
    ck_assert_int_eq(wend_verdict(set), wend_verdict(edited));
    ck_assert_str_eq(wend_verdict_text(set), wend_verdict_text(edited));
    const struct PlanRun *one = &wend_result(set)->runs[0];
    const struct PlanRun *two = &wend_result(edited)->runs[0];
    ck_assert_int_eq(one->check_count, two->check_count);
    for (int i = 0; i < one->check_count; i++) {
        ck_assert_str_eq(one->checks[i].id, two->checks[i].id);
        ck_assert_double_eq_tol(one->checks[i].value, two->checks[i].value, 1e-12);
        ck_assert_double_eq_tol(one->checks[i].limit, two->checks[i].limit, 1e-12);
    }
    ck_assert_int_eq(wend_result(set)->assumption_count, wend_result(edited)->assumption_count);
    ck_assert_str_ne(wend_sheet_mark(set),
                     wend_sheet_mark(edited)); /* and no paper of the one is taken for the other's */
    ck_assert_str_eq(unmarked(set, WEND_PARTS_CSV), unmarked(edited, WEND_PARTS_CSV));
    const struct PlanRun *before = &wend_result(file)->runs[0]; /* or nothing was set */
    ck_assert(before->order_length_m != one->order_length_m || before->size_mm2 < one->size_mm2 ||
              before->rating_a < one->rating_a || before->capacity_a > one->capacity_a);
    wend_free(file);
    wend_free(edited);
    wend_free(set);
}
END_TEST

static const struct {
    const char *word, *name, *place, *says;
} faults[] = {
    {"segments.field.length=66", "unit-missing", "--set:23:", "66 m"},
    {"segments.field.lenght=66 m", "key-misspelt", "--set:16:", "length"},
    {"segments.fild.length=66 m", "set-name-misspelt", "--set:10:", "\"field\""},
    {"segmnts.field.length=66 m", "key-misspelt", "--set:1:", "segments"},
    {"runs.byer.cable.size=6 mm2", "set-name-misspelt", "--set:6:", "\"byre\""},
    {"runs.house.cable.size=6 mm2", "set-name-unknown", "--set:6:", "house"},
    {"segments.9.length=6 m", "set-name-unknown", "--set:10:", "9"},
    {"runs.byre.cable.size=7 mm2", "size-not-standard", "--set:22:", "6"},
    {"runs.byre.cable=6 mm2", "value-not-mapping", "--set:17:", "cable"},
    {"field.length=6 m", "set-name-alone", "--set:1:", "segments.field"},
    {"byre.load.current=6 A", "set-name-alone", "--set:1:", "runs.byre"},
    {"segments.field.length.more=6 m", "set-no-keys", "--set:23:", "more"},
    {"segments.field.length 66 m", "set-form", "--set:1:", "segments.field.length=66 m"},
    {".length=6 m", "set-form", "--set:1:", "length"},
    {"segments..length=6 m", "set-form", "--set:1:", "length"},
    {"=6 m", "set-form", "--set:1:", "=6 m"},
    {"wend=7", "version-unknown", "--set:6:", "7"},
};
enum { FAULTS = (int)(sizeof faults / sizeof faults[0]) };

/* The second word is at fault, the first is good. */
START_TEST(faults_lie_in_the_word)
{
    const char *const sets[] = {"conditions.air=25 degC", faults[_i].word};
    struct Wend *wend = planned(&plain, sets, 2);
    const struct WendDiagnostics *told = wend_diagnostics(wend);
    const char *printed = wend_diagnostics_printed(told, "byre.yaml");
    bool named = false;
    ck_assert_int_eq(wend_status(wend), WEND_INPUT_WRONG);
    for (size_t i = 0; i < wend_diagnostics_count(told); i++) {
        named = named ||
                (strcmp(wend_diagnostic_name(told, i), faults[_i].name) == 0 &&
                 strstr(wend_diagnostic_text(told, i), faults[_i].says) != NULL && wend_diagnostic_line(told, i) == 0);
    }
    ck_assert_msg(named, "%s: %s", faults[_i].name, printed);
    ck_assert_msg(strstr(printed, faults[_i].place) != NULL, "%s: %s", faults[_i].place, printed);
    ck_assert_msg(strstr(printed, arena_print(wend->arena, "| %s\n", faults[_i].word)) != NULL, "%s", printed);
    wend_free(wend);
}
END_TEST

START_TEST(not_twice)
{
    const char *const sets[] = {"segments.field.length=66 m", "segments.field.length=60 m"};
    struct Wend *wend = planned(&plain, sets, 2);
    ck_assert_int_eq(wend_status(wend), WEND_INPUT_WRONG);
    ck_assert_ptr_nonnull(strstr(wend_diagnostics_printed(wend_diagnostics(wend), "f"), "[set-twice]"));
    wend_free(wend);
}
END_TEST

/* In every document that says anything of the route, and in the mark of the papers. The rows of the list name articles
 * alone, and the card says what is true of every job. */
START_TEST(every_document_says_so)
{
    static const char word[] = "segments.field.length=66 m";
    const char *const sets[] = {word};
    struct Wend *wend = planned(&plain, sets, 1);
    struct Wend *same = planned(&rows[0].route, NULL, 0);
    for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) {
        if (!wend_has_document(wend, (enum WendDocument)i)) {
            continue;
        }
        const char *text = text_of(wend, (enum WendDocument)i);
        ck_assert_msg(i == WEND_PARTS_CSV || i == WEND_CARD_HTML || strstr(text, word) != NULL, "document %d", i);
        ck_assert_msg(strstr(text_of(same, (enum WendDocument)i), "changed route") == NULL, "document %d", i);
    }
    const char *const papers[] = {text_of(wend, WEND_BRIEF_HTML), text_of(wend, WEND_PARTS_HTML),
                                  text_of(wend, WEND_DESIGN_HTML), text_of(wend, WEND_TEST_HTML),
                                  text_of(wend, WEND_CARD_HTML)};
    for (size_t i = 0; i < sizeof papers / sizeof papers[0]; i++) {
        ck_assert_msg(strstr(papers[i], ", changed route") != NULL, "paper %zu", i);
    }
    const struct WendBytes decision = wend_decision(wend, "", false);
    ck_assert_ptr_nonnull(strstr(arena_text(wend->arena, decision.data, decision.length), "NOT the plan of the file"));
    const struct WendBytes options = wend_answer_text(wend_options(wend, "", 0));
    ck_assert_ptr_nonnull(strstr(arena_text(wend->arena, options.data, options.length), word));
    const struct WendBytes decides = wend_answer_text(wend_decides(wend));
    ck_assert_ptr_nonnull(strstr(arena_text(wend->arena, decides.data, decides.length), word));
    wend_free(same);
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("changed");
    TCase *cases = tcase_create("changed");
    tcase_set_timeout(cases, 120);
    tcase_add_loop_test(cases, as_if_it_were_written, 0, ROWS);
    tcase_add_loop_test(cases, faults_lie_in_the_word, 0, FAULTS);
    tcase_add_test(cases, not_twice);
    tcase_add_test(cases, every_document_says_so);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
