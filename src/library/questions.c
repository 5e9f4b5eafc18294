/* Questions about a plan: which sizes would do, and how a figure was found. Names are looked up here; the answers are made by
 * the design, once more and by the same code, and written by the documents. */
#include "library_private.h"

#include "wend/design.h"
#include "wend/documents.h"
#include "wend/read.h"

#include <string.h>

/* Names that may be asked for, gathered for a message. */
struct Names {
    const char **list;
    int count;
};

static struct Names names_new(struct Wend *wend, int most)
{
    return (struct Names){.list = arena_array(wend->arena, (size_t)most + 1, sizeof(const char *))};
}

static void names_add(struct Names *names, const char *name)
{
    bool there = names->list == NULL;
    for (int i = 0; !there && i < names->count; i++) {
        there = text_same(names->list[i], name);
    }
    if (!there) {
        names->list[names->count++] = name;
    }
}

static struct WendAnswer refuse(struct Wend *wend, struct Diag *diag, const char *lead, const struct Names *names)
{
    struct WendAnswer answer = {.status = arena_failed(wend->arena) ? WEND_NO_MEMORY : WEND_INPUT_WRONG, .fault = ""};
    if (diag != NULL) {
        const struct Bytes list = document_name_list(wend->arena, lead, names->list, names->count);
        answer.fault = arena_print(wend->arena, "%s%s", diag_print(diag, wend->arena, "wend", (struct Bytes){NULL, 0}),
                                   list.data != NULL ? list.data : "");
    }
    return answer;
}

/* "there is no ... named" and the nearest of those there are. */
static struct WendAnswer refuse_name(struct Wend *wend, enum DiagCode unknown, enum DiagCode misspelt, const char *written,
                                     const char *lead, const struct Names *names)
{
    struct Diag *diag = diag_new(wend->arena);
    const char *nearest = names->list == NULL ? "" : read_nearest(written, names->list, (size_t)names->count);
    if (diag != NULL && *nearest != '\0') {
        diag_report(diag, misspelt, (struct Mark){0, 0}, 0, DIAG_WORDS(written, nearest));
    } else if (diag != NULL) {
        diag_report(diag, unknown, (struct Mark){0, 0}, 0, DIAG_WORDS(written));
    }
    return refuse(wend, diag, lead, names);
}

/* The runs asked for: all power runs, or the one named. */
struct Asked {
    int run; /* -1: all */
    struct WendAnswer refusal; /* with run -2 */
};
enum { ALL_RUNS = -1, NO_RUN = -2 };

static struct Asked find_run(struct Wend *wend, const char *name)
{
    const struct Plan *plan = wend->plan;
    struct Names names = names_new(wend, plan->run_count);
    if (*name == '\0') {
        return (struct Asked){.run = ALL_RUNS};
    }
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].surveyed;
        if (text_same(run->name, name) && plan->runs[r].rated) {
            return (struct Asked){.run = r};
        }
        if (plan->runs[r].rated) {
            names_add(&names, run->name);
        }
    }
    static const char lead[] = "The power runs are";
    for (int r = 0; r < plan->run_count; r++) {
        if (text_same(plan->runs[r].surveyed->name, name)) {
            struct Diag *diag = diag_new(wend->arena);
            if (diag != NULL) {
                diag_report(diag, MSG_RUN_NOT_POWER, (struct Mark){0, 0}, 0,
                            DIAG_WORDS(name, survey_word(WORDS_RUN_KIND, (int)plan->runs[r].surveyed->kind)));
            }
            return (struct Asked){NO_RUN, refuse(wend, diag, lead, &names)};
        }
    }
    return (struct Asked){NO_RUN, refuse_name(wend, MSG_RUN_UNKNOWN, MSG_RUN_MISSPELT, name, lead, &names)};
}

static bool is_asked(const struct Asked *asked, const struct PlanRun *runs, int run)
{
    return runs[run].rated && (asked->run == ALL_RUNS || asked->run == run);
}

static struct WendAnswer answer_with(const struct Wend *wend, struct Bytes text)
{
    return (struct WendAnswer){.status = text.data != NULL ? wend_status(wend) : WEND_NO_MEMORY, .text = text, .fault = ""};
}

static struct WendAnswer no_plan(const struct Wend *wend)
{
    return (struct WendAnswer){.status = wend_status(wend), .fault = ""};
}

/* ---- options ---- */

/* The same route with larger loads; what it reports is not for this plan, but the first of it says why there is none. */
static const struct Plan *grow(struct Wend *wend, double percent, bool any_device, const char **fault)
{
    const struct Variant variant = {.load_ratio = 1 + percent / 100, .any_size = true, .any_device = any_device};
    const struct Survey *larger = design_variant(wend->arena, wend->plan->survey, &variant);
    struct Diag *aside = diag_new(wend->arena);
    if (larger == NULL || aside == NULL) {
        return NULL;
    }
    const struct Plan *plan = design_plan(wend->arena, aside, larger, wend->plan->route);
    for (size_t i = 0; plan == NULL && i < diag_count(aside); i++) {
        const struct Diagnostic *told = diag_at(aside, i);
        if (told->severity == DIAG_ERROR) {
            *fault = told->text;
            break;
        }
    }
    return plan;
}

struct WendAnswer wend_options_text(struct Wend *wend, const char *run, double growth_percent)
{
    if (wend == NULL || wend->plan == NULL) {
        return no_plan(wend);
    }
    const struct Asked asked = find_run(wend, run);
    if (asked.run == NO_RUN) {
        return asked.refusal;
    }
    struct Growth growth = {.percent = growth_percent, .fault = ""};
    if (growth_percent > 0) {
        const char *unused = "";
        growth.plan = grow(wend, growth_percent, false, &growth.fault);
        growth.any_device = grow(wend, growth_percent, true, &unused);
    }
    return answer_with(wend, document_options_text(wend->arena, wend->plan, asked.run, growth_percent > 0 ? &growth : NULL));
}

/* ---- explain ---- */

static int find_check(const struct PlanRun *run, const char *id)
{
    for (int i = 0; i < run->check_count; i++) {
        if (text_same(run->checks[i].id, id)) {
            return i;
        }
    }
    return -1;
}

/* Index into the run's ratings, -1 when it does not follow such a segment. */
static int find_stretch(const struct Plan *plan, const struct PlanRun *run, const char *segment)
{
    for (int i = 0; i < run->rating_count; i++) {
        if (text_same(plan->segments[run->ratings[i].segment].surveyed->name, segment)) {
            return i;
        }
    }
    return -1;
}

static bool by_stretches(const char *id)
{
    return text_same(id, "capacity") || text_same(id, "drop");
}

static int checks_in_all(const struct Plan *plan)
{
    int count = 0;
    for (int r = 0; r < plan->run_count; r++) {
        count += plan->runs[r].check_count;
    }
    return count;
}

static struct WendAnswer refuse_check(struct Wend *wend, const struct Asked *asked, const char *id, bool exists)
{
    const struct Plan *plan = wend->plan;
    struct Names names = names_new(wend, checks_in_all(plan));
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; is_asked(asked, plan->runs, r) && i < plan->runs[r].check_count; i++) {
            names_add(&names, plan->runs[r].checks[i].id);
        }
    }
    static const char lead[] = "The checks are";
    if (!exists) {
        return refuse_name(wend, MSG_CHECK_UNKNOWN, MSG_CHECK_MISSPELT, id, lead, &names);
    }
    struct Diag *diag = diag_new(wend->arena);
    if (diag != NULL) {
        diag_report(diag, MSG_CHECK_NOT_BY_STRETCH, (struct Mark){0, 0}, 0, DIAG_WORDS(id));
    }
    return refuse(wend, diag, lead, &names);
}

static struct WendAnswer refuse_stretch(struct Wend *wend, const struct Asked *asked, const char *segment)
{
    const struct Plan *plan = wend->plan;
    struct Names names = names_new(wend, plan->segment_count);
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; is_asked(asked, plan->runs, r) && i < plan->runs[r].rating_count; i++) {
            names_add(&names, plan->segments[plan->runs[r].ratings[i].segment].surveyed->name);
        }
    }
    return refuse_name(wend, MSG_STRETCH_UNKNOWN, MSG_STRETCH_MISSPELT, segment, "The segments are", &names);
}

/* What was asked for of one run; false when it has no such check or stretch. */
static bool question_of(struct Wend *wend, int r, const char *id, const char *segment, struct Question *out)
{
    const struct PlanRun *run = &wend->plan->runs[r];
    const int check = find_check(run, id);
    int stretch = -1;
    if (check < 0) {
        return false;
    }
    if (*segment != '\0') {
        stretch = find_stretch(wend->plan, run, segment);
        if (stretch < 0) {
            return false;
        }
    } else if (text_same(id, "capacity")) {
        stretch = run->governing;
    }
    *out = (struct Question){.run = r, .check = check};
    if (stretch >= 0) {
        out->stretch = design_working(wend->arena, wend->plan->survey, run, stretch);
        return out->stretch != NULL;
    }
    return true;
}

struct WendAnswer wend_explain_text(struct Wend *wend, const char *check, const char *run)
{
    if (wend == NULL || wend->plan == NULL) {
        return no_plan(wend);
    }
    const struct Plan *plan = wend->plan;
    const struct Asked asked = find_run(wend, run);
    if (asked.run == NO_RUN) {
        return asked.refusal;
    }
    bool exists = false; /* a check whose own name holds a colon is asked for whole */
    for (int r = 0; r < plan->run_count; r++) {
        exists = exists || (is_asked(&asked, plan->runs, r) && find_check(&plan->runs[r], check) >= 0);
    }
    const char *colon = exists ? NULL : strchr(check, ':');
    const char *id = colon == NULL ? check : arena_text(wend->arena, check, (size_t)(colon - check));
    const char *segment = colon == NULL ? "" : colon + 1;
    struct Question *questions = arena_array(wend->arena, (size_t)plan->run_count, sizeof *questions);
    int count = 0;
    bool known = false;
    for (int r = 0; questions != NULL && r < plan->run_count; r++) {
        if (is_asked(&asked, plan->runs, r)) {
            known = known || find_check(&plan->runs[r], id) >= 0;
            count += question_of(wend, r, id, segment, &questions[count]);
        }
    }
    if (!known || (colon != NULL && !by_stretches(id))) {
        return refuse_check(wend, &asked, id, known);
    }
    if (count == 0 && !arena_failed(wend->arena)) {
        return refuse_stretch(wend, &asked, segment);
    }
    return answer_with(wend, document_explain_text(wend->arena, plan, questions, count));
}
