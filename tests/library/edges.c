/* edges.c: every function of wend.h at the edges of what it may be given: NULL, empty, negative, the largest there is.
 * What comes of it is what wend.h says of "none"; nothing is read beyond what is there.
 *
 *   edges          tries all of them
 *   edges names    prints their names, which edges.sh holds against what the shared library shows */
#include <wend/wend.h>

#include <float.h>
#include <limits.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char route[] = "wend: 1\n"
                            "job: {title: Boathouse supply}\n"
                            "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                            "runs:\n"
                            "  feeder:\n"
                            "    load: {current: 26 A}\n"
                            "    cable: {type: BS5467, cores: 3}\n"
                            "segments:\n"
                            "  - {name: gable, way: wall, length: 6.5 m, rise: 2.5 m}\n";

/* What the rows are tried on. */
struct On {
    struct Wend *good, *wrong;
    struct WendOrder *order, *no_order;
    const char *name; /* of the row that is tried */
    int tried, failed;
};
typedef void (*AnyFunction)(void);
struct Row {
    const char *name;
    void (*drive)(struct On *on, AnyFunction function);
    AnyFunction function;
};

static void holds_at(struct On *on, int good, const char *what)
{
    on->tried++;
    if (!good) {
        on->failed++;
        printf("FAILED %s: %s\n", on->name, what);
    }
}
#define HOLDS(condition) holds_at(on, (condition), #condition)

static const int beyond[] = {-1, INT_MIN, INT_MAX, 100000};
enum { BEYOND = sizeof beyond / sizeof beyond[0] };

static int none(const char *text)
{
    return text != NULL && *text == '\0';
}

static int nothing(struct WendBytes bytes)
{
    return bytes.data == NULL && bytes.length == 0;
}

/* ---- by an index ---- */

static void text_at(struct On *on, AnyFunction function)
{
    const char *(*text)(int) = (const char *(*)(int))function;
    HOLDS(text(0) != NULL && !none(text(0)));
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(none(text(beyond[i])));
    }
}

static void text_of_wend(struct On *on, AnyFunction function)
{
    const char *(*text)(const struct Wend *, int) = (const char *(*)(const struct Wend *, int))function;
    HOLDS(none(text(NULL, 0)) && none(text(on->wrong, 0)) && text(on->good, 0) != NULL);
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(none(text(on->good, beyond[i])) && none(text(on->wrong, beyond[i])) && none(text(NULL, beyond[i])));
    }
}

static void text_of_checks(struct On *on, AnyFunction function)
{
    const char *(*text)(struct Wend *, int) = (const char *(*)(struct Wend *, int))function;
    HOLDS(none(text(NULL, 0)) && none(text(on->wrong, 0)) && !none(text(on->good, 0)));
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(none(text(on->good, beyond[i])) && none(text(on->wrong, beyond[i])));
    }
}

static void text_of_order(struct On *on, AnyFunction function)
{
    const char *(*text)(const struct WendOrder *, int) = (const char *(*)(const struct WendOrder *, int))function;
    HOLDS(none(text(NULL, 0)) && none(text(on->no_order, 0)) && text(on->order, 0) != NULL);
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(none(text(on->order, beyond[i])) && none(text(on->no_order, beyond[i])));
    }
}

static void number_of_order(struct On *on, AnyFunction function)
{
    int (*number)(const struct WendOrder *, int) = (int (*)(const struct WendOrder *, int))function;
    HOLDS(number(NULL, 0) == 0 && number(on->no_order, 0) == 0);
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(number(on->order, beyond[i]) == 0 && number(on->no_order, beyond[i]) == 0);
    }
}

static void verdict_of_job(struct On *on, AnyFunction function)
{
    enum WendVerdict (*verdict)(const struct WendOrder *, int) =
        (enum WendVerdict(*)(const struct WendOrder *, int))function;
    HOLDS(verdict(NULL, 0) == WEND_FAIL && verdict(on->no_order, 0) == WEND_FAIL);
    for (int i = 0; i < BEYOND; i++) { /* a job that is not there never passes */
        HOLDS(verdict(on->order, beyond[i]) == WEND_FAIL);
    }
}

static void warns(struct On *on, AnyFunction function)
{
    bool (*is_warning)(int) = (bool (*)(int))function;
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(!is_warning(beyond[i]));
    }
}

static void line_at(struct On *on, AnyFunction function)
{
    char *(*line)(int) = (char *(*)(int))function;
    char *first = line(0);
    HOLDS(first != NULL && !none(first));
    wend_text_free(first);
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(line(beyond[i]) == NULL);
    }
}

/* ---- counts and words of a whole ---- */

static void count_of_wend(struct On *on, AnyFunction function)
{
    int (*count)(const struct Wend *) = (int (*)(const struct Wend *))function;
    HOLDS(count(NULL) == 0 && count(on->wrong) == 0 && count(on->good) >= 0);
}

static void count_of_checks(struct On *on, AnyFunction function)
{
    int (*count)(struct Wend *) = (int (*)(struct Wend *))function;
    HOLDS(count(NULL) == 0 && count(on->wrong) == 0 && count(on->good) > 0);
}

static void count_of_order(struct On *on, AnyFunction function)
{
    int (*count)(const struct WendOrder *) = (int (*)(const struct WendOrder *))function;
    HOLDS(count(NULL) == 0 && count(on->no_order) == 0 && count(on->order) >= 0);
}

static void packs_of_order(struct On *on, AnyFunction function)
{
    long (*packs)(const struct WendOrder *) = (long (*)(const struct WendOrder *))function;
    HOLDS(packs(NULL) == 0 && packs(on->no_order) == 0 && packs(on->order) > 0);
}

static void word_of_wend(struct On *on, AnyFunction function)
{
    const char *(*word)(const struct Wend *) = (const char *(*)(const struct Wend *))function;
    HOLDS(none(word(NULL)) && word(on->wrong) != NULL && word(on->good) != NULL);
}

static void word_of_order(struct On *on, AnyFunction function)
{
    const char *(*word)(const struct WendOrder *) = (const char *(*)(const struct WendOrder *))function;
    HOLDS(none(word(NULL)) && word(on->no_order) != NULL && word(on->order) != NULL);
}

static void how_many(struct On *on, AnyFunction function)
{
    int (*count)(void) = (int (*)(void))function;
    HOLDS(count() > 0);
}

static void made_text(struct On *on, AnyFunction function)
{
    char *(*make)(void) = (char *(*)(void))function;
    char *made = make();
    HOLDS(made != NULL && !none(made));
    wend_text_free(made);
}

static void fixed_text(struct On *on, AnyFunction function)
{
    const char *(*text)(void) = (const char *(*)(void))function;
    HOLDS(text() != NULL);
}

/* ---- diagnostics ---- */

static const size_t far[] = {SIZE_MAX, SIZE_MAX / 2, 100000};
enum { FAR = sizeof far / sizeof far[0] };

static void text_of_diagnostic(struct On *on, AnyFunction function)
{
    const char *(*text)(const struct WendDiagnostics *, size_t) =
        (const char *(*)(const struct WendDiagnostics *, size_t))function;
    HOLDS(none(text(NULL, 0)) && !none(text(wend_diagnostics(on->wrong), 0)));
    for (int i = 0; i < FAR; i++) {
        HOLDS(none(text(wend_diagnostics(on->wrong), far[i])) && none(text(NULL, far[i])));
    }
}

static void place_of_diagnostic(struct On *on, AnyFunction function)
{
    int (*place)(const struct WendDiagnostics *, size_t) = (int (*)(const struct WendDiagnostics *, size_t))function;
    HOLDS(place(NULL, 0) == 0);
    for (int i = 0; i < FAR; i++) {
        HOLDS(place(wend_diagnostics(on->wrong), far[i]) == 0);
    }
}

static void severity(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(wend_diagnostic_severity(NULL, 0) == WEND_WARNING);
    HOLDS(wend_diagnostic_severity(wend_diagnostics(on->wrong), 0) == WEND_ERROR);
    for (int i = 0; i < FAR; i++) {
        HOLDS(wend_diagnostic_severity(wend_diagnostics(on->wrong), far[i]) == WEND_WARNING);
    }
}

static void diagnostics_count(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(wend_diagnostics_count(NULL) == 0 && wend_diagnostics_count(wend_diagnostics(on->wrong)) > 0);
}

static void printed(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(none(wend_diagnostics_printed(NULL, "x")) && none(wend_diagnostics_printed(NULL, NULL)));
    HOLDS(!none(wend_diagnostics_printed(wend_diagnostics(on->wrong), "")));
    HOLDS(strchr(wend_diagnostics_printed(wend_diagnostics(on->wrong), "a\033[31m\nb"), '\033') == NULL);
}

static void told_of_wend(struct On *on, AnyFunction function)
{
    const struct WendDiagnostics *(*told)(const struct Wend *) =
        (const struct WendDiagnostics *(*)(const struct Wend *))function;
    HOLDS(told(NULL) == NULL && wend_diagnostics_count(told(on->good)) < SIZE_MAX);
}

static void told_of_order(struct On *on, AnyFunction function)
{
    const struct WendDiagnostics *(*told)(const struct WendOrder *) =
        (const struct WendDiagnostics *(*)(const struct WendOrder *))function;
    HOLDS(told(NULL) == NULL && wend_diagnostics_count(told(on->no_order)) < SIZE_MAX);
}

/* ---- texts that are handed in ---- */

static const struct {
    const char *text;
    size_t length;
} texts[] = {{NULL, 0},
             {NULL, 1},
             {NULL, SIZE_MAX},
             {"", 0},
             {route, 0},
             {route, SIZE_MAX},
             {route, SIZE_MAX - 1},
             {route, (size_t)1 << 31},
             {route, (size_t)WEND_TEXT_MOST_BYTES + 1}};
enum { TEXTS = sizeof texts / sizeof texts[0] };

static void plan(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        struct Wend *wend = wend_plan(i % 2 == 0 ? NULL : "", texts[i].text, texts[i].length);
        HOLDS(wend_status(wend) == WEND_INPUT_WRONG && wend_verdict(wend) == WEND_FAIL);
        HOLDS(wend_diagnostics_count(wend_diagnostics(wend)) == 1);
        wend_free(wend);
    }
}

static void plan_changed(struct On *on, AnyFunction function)
{
    static const char *const odd[] = {
        NULL, "", "=", "a=", "=a", "segments.gable.length", "segments.gable.length=1e999 m"};
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        struct Wend *wend = wend_plan_changed(NULL, texts[i].text, texts[i].length, NULL, INT_MAX);
        HOLDS(wend_status(wend) == WEND_INPUT_WRONG);
        wend_free(wend);
    }
    for (size_t i = 0; i < sizeof odd / sizeof odd[0]; i++) {
        struct Wend *wend = wend_plan_changed("x", route, sizeof route - 1, &odd[i], 1);
        HOLDS(wend_status(wend) == WEND_INPUT_WRONG && wend_verdict(wend) == WEND_FAIL);
        wend_free(wend);
    }
    static const int few[] = {0, -1, INT_MIN};
    for (int i = 0; i < 3; i++) {
        struct Wend *wend = wend_plan_changed("x", route, sizeof route - 1, odd, few[i]);
        HOLDS(wend_status(wend) == wend_status(on->good));
        wend_free(wend);
    }
}

/* As much as is wanted and no more; of no such wish everything. */
static void plan_wanted(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        struct Wend *wend = wend_plan_wanted(WEND_WANT_VERDICT, NULL, texts[i].text, texts[i].length, NULL, INT_MAX);
        HOLDS(wend_status(wend) == WEND_INPUT_WRONG);
        wend_free(wend);
    }
    for (int i = 0; i < BEYOND; i++) {
        struct Wend *wend = wend_plan_wanted((enum WendWanted)beyond[i], "x", route, sizeof route - 1, NULL, 0);
        HOLDS(!nothing(wend_document(wend, WEND_PLAN_XML)));
        wend_free(wend);
    }
    for (int wanted = WEND_WANT_ORDER; wanted <= WEND_WANT_VERDICT; wanted++) {
        struct Wend *wend = wend_plan_wanted((enum WendWanted)wanted, "x", route, sizeof route - 1, NULL, 0);
        struct WendOrder *order = wend_order(&wend, 1, NULL, 0, "");
        HOLDS(wend_status(wend) == wend_status(on->good) && wend_verdict(wend) == wend_verdict(on->good));
        for (int document = 0; document <= WEND_DOCUMENT_COUNT; document++) {
            HOLDS(!wend_has_document(wend, (enum WendDocument)document));
            HOLDS(nothing(wend_document(wend, (enum WendDocument)document)));
        }
        HOLDS(nothing(wend_decision(wend, "", false)) && none(wend_sheet_mark(wend)) && wend_check_count(wend) == 0);
        HOLDS(wend_answer_status(wend_options(wend, "", 0)) == WEND_INPUT_WRONG);
        HOLDS(wend_answer_status(wend_explain(wend, "drop", "")) == WEND_INPUT_WRONG);
        HOLDS(wend_answer_status(wend_decides(wend)) == WEND_INPUT_WRONG);
        HOLDS(wend_answer_status(wend_reach(wend)) == WEND_INPUT_WRONG);
        HOLDS(nothing(wend_diff(on->good, wend, WEND_DIFF_TEXT)) && nothing(wend_diff(wend, on->good, WEND_DIFF_TEXT)));
        HOLDS(nothing(wend_readings(wend, WEND_DIFF_TEXT)) && nothing(wend_quotation(wend)));
        HOLDS((wend_order_status(order) <= WEND_CHECK_FAILS) == (wanted == WEND_WANT_ORDER));
        wend_order_free(order);
        wend_keep_order(wend);
        HOLDS(wend_status(wend) == wend_status(on->good));
        HOLDS(wend_price(wend, "x", 1) == WEND_INPUT_WRONG || wanted == WEND_WANT_ORDER);
        wend_free(wend);
    }
}

static void price(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        struct Wend *wend = wend_plan("x", route, sizeof route - 1);
        HOLDS(wend_price(wend, texts[i].text, texts[i].length) == WEND_INPUT_WRONG);
        HOLDS(nothing(wend_document(wend, WEND_PARTS_CSV)));
        HOLDS(wend_price(NULL, texts[i].text, texts[i].length) == WEND_NO_MEMORY);
        HOLDS(wend_price(on->wrong, texts[i].text, texts[i].length) == WEND_INPUT_WRONG);
        wend_free(wend);
    }
}

static void order(struct On *on, AnyFunction function)
{
    static const int counts[] = {0, -1, INT_MIN};
    (void)function;
    for (int i = 0; i < 3; i++) {
        struct WendOrder *made = wend_order(&on->good, counts[i], NULL, 0, NULL);
        HOLDS(wend_order_status(made) == WEND_INPUT_WRONG && wend_order_verdict(made) == WEND_FAIL);
        wend_order_free(made);
        made = wend_order(NULL, i == 0 ? INT_MAX : counts[i], NULL, SIZE_MAX, "");
        HOLDS(wend_order_status(made) == WEND_INPUT_WRONG);
        wend_order_free(made);
    }
    for (int i = 3; i < TEXTS; i++) {
        struct WendOrder *made = wend_order(&on->good, 1, texts[i].text, texts[i].length, NULL);
        HOLDS(wend_order_status(made) == WEND_INPUT_WRONG && nothing(wend_order_document(made, WEND_ORDER_CSV)));
        wend_order_free(made);
    }
    struct WendOrder *made = wend_order(&on->wrong, 1, NULL, 0, NULL);
    HOLDS(wend_order_status(made) == WEND_INPUT_WRONG);
    wend_order_free(made);
}

static void order_price(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        struct WendOrder *made = wend_order(&on->good, 1, NULL, 0, NULL);
        HOLDS(wend_order_price(made, texts[i].text, texts[i].length) == WEND_INPUT_WRONG);
        HOLDS(nothing(wend_order_document(made, WEND_ORDER_CSV)));
        HOLDS(wend_order_price(NULL, texts[i].text, texts[i].length) == WEND_NO_MEMORY);
        wend_order_free(made);
    }
}

static void templates(struct On *on, AnyFunction function)
{
    static const int counts[] = {0, -1, INT_MIN};
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        const struct WendTemplate file = {"brief.xsl", NULL, texts[i].text, texts[i].length};
        struct WendTemplates *made = wend_templates(&file, 1);
        HOLDS(wend_templates_status(made) == WEND_INPUT_WRONG);
        if (texts[i].text != NULL && texts[i].length > WEND_TEXT_MOST_BYTES) {
            const char *name = wend_diagnostic_name(wend_templates_diagnostics(made), 0);
            HOLDS(strcmp(name, "template-too-large") == 0);
        }
        wend_templates_free(made);
    }
    for (int i = 0; i < 3; i++) {
        const struct WendTemplate file = {NULL, NULL, NULL, SIZE_MAX};
        struct WendTemplates *made = wend_templates(&file, counts[i]);
        HOLDS(wend_templates_status(made) == WEND_PASSES);
        wend_templates_free(made);
    }
    struct WendTemplates *made = wend_templates(NULL, INT_MAX);
    HOLDS(wend_templates_status(made) == WEND_PASSES);
    wend_templates_free(made);
}

static void nearest(struct On *on, AnyFunction function)
{
    static const char *const words[] = {NULL, "", "check"};
    (void)function;
    HOLDS(none(wend_nearest(NULL, NULL, SIZE_MAX)) && none(wend_nearest("chekc", NULL, SIZE_MAX)));
    HOLDS(none(wend_nearest("chekc", words, 0)) && none(wend_nearest("", words, 3)));
    HOLDS(strcmp(wend_nearest("chekc", words, 3), "check") == 0);
}

static void looks_same(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(wend_looks_same(NULL, NULL) && wend_looks_same("", "\u200b") && !wend_looks_same("barn", NULL));
    HOLDS(wend_looks_same("ba\u200brn", "barn") && wend_looks_same("a\u00a0b", "a b") && !wend_looks_same("ab", "a b"));
    HOLDS(!wend_looks_same("\xff", "") && wend_looks_same("\xe2\x80", "\xe2\x80") && !wend_looks_same("\xe2\x80", ""));
}

/* ---- what is asked for ---- */

static void document(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(nothing(wend_document(on->good, (enum WendDocument)beyond[i])));
    }
    HOLDS(nothing(wend_document(on->wrong, WEND_PLAN_XML)) && nothing(wend_document(NULL, WEND_PLAN_XML)));
    HOLDS(wend_document(on->good, WEND_PLAN_XML).length > 0);
}

static void order_document(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(nothing(wend_order_document(on->order, (enum WendOrderDocument)beyond[i])));
    }
    HOLDS(nothing(wend_order_document(on->no_order, WEND_ORDER_CSV)) &&
          nothing(wend_order_document(NULL, WEND_ORDER_CSV)));
}

static void decision(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(nothing(wend_decision(NULL, "", false)) && nothing(wend_decision(on->wrong, NULL, true)));
    HOLDS(wend_decision(on->good, NULL, false).length > 0);
}

static void diff(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(nothing(wend_diff(on->wrong, on->good, WEND_DIFF_TEXT)) && nothing(wend_diff(on->good, NULL, WEND_DIFF_CSV)));
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(nothing(wend_diff(on->good, on->good, (enum WendDiffForm)beyond[i])));
    }
    HOLDS(wend_diff(on->good, on->good, WEND_DIFF_TEXT).length > 0); /* with itself */
}

static void options(struct On *on, AnyFunction function)
{
    const double growths[] = {-1, -0.0001, 1000.1, DBL_MAX, -DBL_MAX, HUGE_VAL, -HUGE_VAL, (double)NAN};
    (void)function;
    for (size_t i = 0; i < sizeof growths / sizeof growths[0]; i++) {
        const struct WendAnswer *answer = wend_options(on->good, "", growths[i]);
        HOLDS(wend_answer_status(answer) == WEND_INPUT_WRONG && nothing(wend_answer_text(answer)));
    }
    HOLDS(wend_answer_status(wend_options(on->good, "no such run", 0)) == WEND_INPUT_WRONG);
    HOLDS(wend_answer_status(wend_options(on->wrong, NULL, 0)) == WEND_INPUT_WRONG &&
          wend_options(NULL, "", 1) == NULL);
}

static void explain(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(wend_explain(NULL, "drop", "") == NULL);
    HOLDS(wend_answer_status(wend_explain(on->good, "", "")) == WEND_INPUT_WRONG);
    HOLDS(wend_answer_status(wend_explain(on->good, "drop", "no such run")) == WEND_INPUT_WRONG);
    HOLDS(wend_answer_status(wend_explain(on->good, "drop:no such stretch", NULL)) == WEND_INPUT_WRONG);
    HOLDS(wend_answer_status(wend_explain(on->wrong, "drop", NULL)) == WEND_INPUT_WRONG);
}

static void asks_all(struct On *on, AnyFunction function)
{
    const struct WendAnswer *(*ask)(struct Wend *) = (const struct WendAnswer *(*)(struct Wend *))function;
    HOLDS(ask(NULL) == NULL && wend_answer_status(ask(on->wrong)) == WEND_INPUT_WRONG);
    HOLDS(wend_answer_text(ask(on->good)).length > 0);
}

static void answer(struct On *on, AnyFunction function)
{
    const struct WendAnswer *asked = wend_options(on->wrong, "", 0);
    (void)function;
    HOLDS(wend_answer_status(NULL) == WEND_NO_MEMORY && nothing(wend_answer_text(NULL)));
    HOLDS(wend_answer_diagnostics(NULL) == NULL && nothing(wend_answer_text(asked)));
}

static void use_language(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(!wend_use_language(on->good, NULL) && !wend_use_language(on->good, "") && !wend_use_language(on->good, "EN"));
    HOLDS(!wend_use_language(on->good, "english") && !wend_use_language(NULL, "en") &&
          wend_use_language(on->good, "en"));
}

static void use_templates(struct On *on, AnyFunction function)
{
    (void)function;
    wend_use_templates(on->wrong, NULL);
    wend_use_templates(on->good, NULL);
    wend_use_templates(NULL, NULL);
    HOLDS(nothing(wend_document(on->wrong, WEND_BRIEF_HTML)));
}

static void template_at(struct On *on, AnyFunction function)
{
    struct WendTemplate file;
    (void)function;
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(!wend_template(beyond[i], &file) && !wend_template(beyond[i], NULL));
    }
    HOLDS(!wend_template(0, NULL) && wend_template(0, &file) && file.length > 0);
}

static void templates_told(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(wend_templates_status(NULL) == WEND_NO_MEMORY && wend_templates_diagnostics(NULL) == NULL);
}

static void frees(struct On *on, AnyFunction function)
{
    (void)on;
    (void)function;
    wend_free(NULL);
    wend_order_free(NULL);
    wend_templates_free(NULL);
    wend_text_free(NULL);
}

static void status(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(wend_status(NULL) == WEND_NO_MEMORY && wend_status(on->wrong) == WEND_INPUT_WRONG);
    HOLDS(wend_verdict(NULL) == WEND_FAIL && wend_verdict(on->wrong) == WEND_FAIL);
    HOLDS(wend_order_status(NULL) == WEND_NO_MEMORY && wend_order_verdict(NULL) == WEND_FAIL);
    HOLDS(wend_order_verdict(on->no_order) == WEND_FAIL);
}

static void verdict_word(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(none(wend_verdict_word((enum WendVerdict)beyond[i])));
    }
}

static void check_json(struct On *on, AnyFunction function)
{
    (void)function;
    const struct Wend *const asked[] = {NULL, on->wrong, on->good};
    for (int i = 0; i < 3; i++) {
        char *told = wend_check_json(asked[i], i == 0 ? "" : NULL);
        HOLDS(told != NULL && *told == '{');
        wend_text_free(told);
    }
}

static void question(struct On *on, AnyFunction function)
{
    struct WendQuestion asked;
    (void)function;
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(!wend_question(beyond[i], NULL, &asked) && !wend_question(beyond[i], "no such way", NULL));
        HOLDS(none(wend_question_word(beyond[i], 0)) && none(wend_question_word(0, beyond[i])));
        HOLDS(none(wend_question_meaning(beyond[i], 0)) && none(wend_question_meaning(0, beyond[i])));
        HOLDS(wend_question_default(beyond[i], NULL) == NULL && wend_question_default(beyond[i], "duct") == NULL);
    }
}

static void by_name(struct On *on, AnyFunction function)
{
    char *(*make)(const char *) = (char *(*)(const char *))function;
    HOLDS(make(NULL) == NULL && make("") == NULL && make("no such table") == NULL && make("\xff") == NULL);
}

static void by_table(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(wend_table_text(NULL, true) == NULL && wend_table_text("", false) == NULL &&
          wend_table_text("\xff", true) == NULL);
}

static void by_cable(struct On *on, AnyFunction function)
{
    char *(*make)(const char *, const char *) = (char *(*)(const char *, const char *))function;
    static const char *const sizes[] = {NULL, "", "0x0", "-3x6", "3x", "x6", "999999999999x6", "3x1e999", "3x6x"};
    HOLDS(make(NULL, "3x6") == NULL && make("", "3x6") == NULL);
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        HOLDS(make("BS5467", sizes[i]) == NULL);
    }
}

static void by_word(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(none(wend_spoken(NULL)) && none(wend_spoken("")) && none(wend_spoken("\xff\xfe")));
}

static void date(struct On *on, AnyFunction function)
{
    static const char *const no_dates[] = {NULL,          "",           "2026",        "2026-00-10",
                                           "2026-13-10",  "2026-01-00", "2026-01-32",  "2025-02-29",
                                           "99999-01-01", "-026-01-01", "2026-01-01 ", "2026-1-1"};
    (void)function;
    for (size_t i = 0; i < sizeof no_dates / sizeof no_dates[0]; i++) {
        HOLDS(!wend_is_date(no_dates[i]));
    }
    HOLDS(wend_is_date("2028-02-29"));
}

static void plan_so_far(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        struct Wend *wend = wend_plan_so_far(i % 2 == 0 ? NULL : "", texts[i].text, texts[i].length);
        HOLDS(wend_status(wend) == WEND_INPUT_WRONG && wend_verdict(wend) == WEND_FAIL);
        wend_free(wend);
    }
    struct Wend *wend = wend_plan_so_far("x", route, sizeof route - 1);
    HOLDS(wend_status(wend) == wend_status(on->good) && wend_verdict(wend) == WEND_OPEN); /* never a pass */
    wend_free(wend);
}

static void tree(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        char *made = wend_tree_json(texts[i].text, texts[i].length);
        HOLDS(made != NULL && strstr(made, "\"error\"") != NULL && strstr(made, "\"tree\"") == NULL);
        wend_text_free(made);
    }
}

static void labour(struct On *on, AnyFunction function)
{
    (void)function;
    for (int i = 0; i < TEXTS; i++) {
        struct Wend *wend = wend_plan("x", route, sizeof route - 1);
        HOLDS(wend_labour(wend, texts[i].text, texts[i].length) == WEND_INPUT_WRONG);
        HOLDS(wend_diagnostics_count(wend_labour_diagnostics(wend)) > 0);
        HOLDS(nothing(wend_document(wend, WEND_BRIEF_HTML)) && nothing(wend_day(wend, NULL, WEND_DAY_TEXT)));
        HOLDS(wend_labour(NULL, texts[i].text, texts[i].length) == WEND_NO_MEMORY);
        HOLDS(wend_labour(on->wrong, texts[i].text, texts[i].length) == WEND_INPUT_WRONG);
        wend_free(wend);
    }
    HOLDS(wend_labour_built_in().length > 0);
}

static void day(struct On *on, AnyFunction function)
{
    const struct WendDay plain = {0, 1, NULL};
    (void)function;
    HOLDS(wend_day(on->good, &plain, WEND_DAY_TEXT).length > 0);
    HOLDS(nothing(wend_day(NULL, &plain, WEND_DAY_TEXT)) && nothing(wend_day(on->wrong, &plain, WEND_DAY_JSON)));
    HOLDS(nothing(wend_day(on->good, &plain, WEND_DAY_ICALENDAR))); /* without a date */
    for (int i = 0; i < BEYOND; i++) {
        const struct WendDay hands = {beyond[i], 1, NULL};
        HOLDS(nothing(wend_day(on->good, &plain, (enum WendDayForm)beyond[i])));
        HOLDS(nothing(wend_day(on->good, &hands, WEND_DAY_TEXT)));
    }
    HOLDS(!wend_quotes(NULL) && !wend_quotes(on->wrong) && !wend_quotes(on->good));
    HOLDS(nothing(wend_quotation(NULL)) && nothing(wend_quotation(on->wrong)) && nothing(wend_quotation(on->good)));
}

static void readings(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(nothing(wend_readings(NULL, WEND_DIFF_TEXT)) && nothing(wend_readings(on->wrong, WEND_DIFF_JSON)));
    for (int i = 0; i < BEYOND; i++) {
        HOLDS(nothing(wend_readings(on->good, (enum WendDiffForm)beyond[i])));
        HOLDS(!wend_has_document(on->good, (enum WendDocument)beyond[i]));
    }
    HOLDS(wend_readings_verdict(NULL) == WEND_FAIL && wend_readings_verdict(on->wrong) == WEND_FAIL);
    HOLDS(wend_readings_verdict(on->good) != WEND_PASS); /* nothing was measured */
    HOLDS(!wend_has_document(NULL, WEND_PLAN_XML) && !wend_has_document(on->wrong, WEND_PLAN_XML));
    HOLDS(wend_has_document(on->good, WEND_PLAN_XML) && !wend_has_document(on->good, WEND_READINGS_HTML));
}

static void keep_order(struct On *on, AnyFunction function)
{
    (void)function;
    wend_keep_order(NULL);
    wend_keep_order(on->wrong);
    struct Wend *wend = wend_plan("x", route, sizeof route - 1);
    const enum WendStatus before = wend_status(wend);
    wend_keep_order(wend);
    wend_keep_order(wend);
    HOLDS(wend_status(wend) == before && nothing(wend_document(wend, WEND_PLAN_XML)));
    struct WendOrder *made = wend_order(&wend, 1, NULL, 0, NULL);
    HOLDS(wend_order_line_count(made) == wend_order_line_count(on->order) &&
          wend_order_verdict(made) == wend_order_verdict(on->order));
    wend_order_free(made);
    wend_free(wend);
}

static void check_kind_text(struct On *on, AnyFunction function)
{
    (void)function;
    HOLDS(wend_check_kind_text(NULL) == NULL && wend_check_kind_text("") == NULL &&
          wend_check_kind_text("\xff") == NULL);
    char *made = wend_check_kind_text("drop");
    HOLDS(made != NULL && !none(made));
    wend_text_free(made);
}

/* Called before and after all others, in main(). */
static void whole_process(struct On *on, AnyFunction function)
{
    (void)on;
    (void)function;
}

#define ROW(drive, function)                                                                                           \
    {                                                                                                                  \
#function, drive, (AnyFunction)(function)                                                                      \
    }
static const struct Row rows[] = {
    ROW(answer, wend_answer_diagnostics),
    ROW(answer, wend_answer_status),
    ROW(answer, wend_answer_text),
    ROW(by_cable, wend_cable_json),
    ROW(text_at, wend_cable_kind),
    ROW(by_cable, wend_cable_text),
    ROW(count_of_checks, wend_check_count),
    ROW(check_json, wend_check_json),
    ROW(text_at, wend_check_kind),
    ROW(check_kind_text, wend_check_kind_text),
    ROW(text_of_checks, wend_check_name),
    ROW(day, wend_day),
    ROW(asks_all, wend_decides),
    ROW(decision, wend_decision),
    ROW(place_of_diagnostic, wend_diagnostic_column),
    ROW(place_of_diagnostic, wend_diagnostic_line),
    ROW(text_of_diagnostic, wend_diagnostic_name),
    ROW(severity, wend_diagnostic_severity),
    ROW(text_of_diagnostic, wend_diagnostic_text),
    ROW(told_of_wend, wend_diagnostics),
    ROW(diagnostics_count, wend_diagnostics_count),
    ROW(printed, wend_diagnostics_printed),
    ROW(diff, wend_diff),
    ROW(document, wend_document),
    ROW(whole_process, wend_end),
    ROW(explain, wend_explain),
    ROW(frees, wend_free),
    ROW(whole_process, wend_guard_memory),
    ROW(readings, wend_has_document),
    ROW(date, wend_is_date),
    ROW(keep_order, wend_keep_order),
    ROW(labour, wend_labour),
    ROW(labour, wend_labour_built_in),
    ROW(told_of_wend, wend_labour_diagnostics),
    ROW(word_of_wend, wend_labour_name),
    ROW(text_at, wend_language),
    ROW(made_text, wend_language_json),
    ROW(looks_same, wend_looks_same),
    ROW(made_text, wend_manual),
    ROW(text_at, wend_message_name),
    ROW(text_at, wend_message_text),
    ROW(warns, wend_message_warns),
    ROW(fixed_text, wend_missing),
    ROW(nearest, wend_nearest),
    ROW(count_of_wend, wend_open_count),
    ROW(text_of_wend, wend_open_text),
    ROW(options, wend_options),
    ROW(order, wend_order),
    ROW(told_of_order, wend_order_diagnostics),
    ROW(order_document, wend_order_document),
    ROW(frees, wend_order_free),
    ROW(count_of_order, wend_order_job_count),
    ROW(text_of_order, wend_order_job_name),
    ROW(verdict_of_job, wend_order_job_verdict),
    ROW(text_of_order, wend_order_job_verdict_text),
    ROW(count_of_order, wend_order_line_count),
    ROW(word_of_order, wend_order_name),
    ROW(packs_of_order, wend_order_packs),
    ROW(packs_of_order, wend_order_packs_apart),
    ROW(order_price, wend_order_price),
    ROW(told_of_order, wend_order_prices_diagnostics),
    ROW(word_of_order, wend_order_prices_name),
    ROW(word_of_order, wend_order_prices_note),
    ROW(status, wend_order_status),
    ROW(text_of_order, wend_order_total_amount),
    ROW(count_of_order, wend_order_total_count),
    ROW(text_of_order, wend_order_total_currency),
    ROW(text_of_order, wend_order_total_in_coin),
    ROW(number_of_order, wend_order_total_lines),
    ROW(count_of_order, wend_order_unpriced_count),
    ROW(status, wend_order_verdict),
    ROW(told_of_wend, wend_papers_diagnostics),
    ROW(plan, wend_plan),
    ROW(plan_changed, wend_plan_changed),
    ROW(plan_so_far, wend_plan_so_far),
    ROW(plan_wanted, wend_plan_wanted),
    ROW(price, wend_price),
    ROW(told_of_wend, wend_prices_diagnostics),
    ROW(word_of_wend, wend_prices_name),
    ROW(question, wend_question),
    ROW(how_many, wend_question_count),
    ROW(question, wend_question_default),
    ROW(question, wend_question_meaning),
    ROW(question, wend_question_word),
    ROW(day, wend_quotation),
    ROW(day, wend_quotes),
    ROW(asks_all, wend_reach),
    ROW(readings, wend_readings),
    ROW(readings, wend_readings_verdict),
    ROW(count_of_wend, wend_run_count),
    ROW(text_of_wend, wend_run_name),
    ROW(made_text, wend_schema),
    ROW(word_of_wend, wend_sheet_mark),
    ROW(by_word, wend_spoken),
    ROW(status, wend_status),
    ROW(how_many, wend_table_count),
    ROW(by_name, wend_table_json),
    ROW(line_at, wend_table_line),
    ROW(text_at, wend_table_name),
    ROW(by_table, wend_table_text),
    ROW(template_at, wend_template),
    ROW(templates, wend_templates),
    ROW(templates_told, wend_templates_diagnostics),
    ROW(frees, wend_templates_free),
    ROW(templates_told, wend_templates_status),
    ROW(frees, wend_text_free),
    ROW(tree, wend_tree_json),
    ROW(use_language, wend_use_language),
    ROW(use_templates, wend_use_templates),
    ROW(status, wend_verdict),
    ROW(word_of_wend, wend_verdict_text),
    ROW(verdict_word, wend_verdict_word),
    ROW(fixed_text, wend_version),
    ROW(count_of_wend, wend_warning_count),
    ROW(text_of_wend, wend_warning_text),
};
enum { ROWS = sizeof rows / sizeof rows[0] };

int main(int count, char **arguments)
{
    if (count > 1 && strcmp(arguments[1], "names") == 0) {
        for (int i = 0; i < ROWS; i++) {
            puts(rows[i].name);
        }
        return 0;
    }
    wend_guard_memory(NULL);
    struct On on = {.good = wend_plan("good", route, sizeof route - 1), .wrong = wend_plan("wrong", "wend: 2\n", 8)};
    on.order = wend_order(&on.good, 1, NULL, 0, NULL);
    on.no_order = wend_order(&on.wrong, 1, NULL, 0, NULL);
    for (int i = 0; i < ROWS; i++) {
        on.name = rows[i].name;
        printf("%s\n", on.name); /* the last one is where it ended */
        fflush(stdout);
        rows[i].drive(&on, rows[i].function);
    }
    wend_order_free(on.order);
    wend_order_free(on.no_order);
    wend_free(on.good);
    wend_free(on.wrong);
    wend_end();
    printf("%d functions, %d answers, %d of them wrong\n", ROWS, on.tried, on.failed);
    return on.failed == 0 ? 0 : 1;
}
