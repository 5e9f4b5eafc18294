/* Questions about a plan: which sizes would do, and how a figure was found. Names are looked up here; the answers are
 * made by the design, once more and by the same code, and written by the documents. */
#include "library_private.h"

#include "design/design.h"
#include "read/read.h"

#include <string.h>

struct WendAnswer {
    enum WendStatus status;
    struct Bytes text;
    struct WendDiagnostics told;
};

/* `diag` goes into the answer with the names that may be asked for. */
static struct WendAnswer refuse(struct Wend *wend, struct Diag *diag, enum Saying lead, const struct Names *names)
{
    const struct Bytes list =
        document_name_list(wend->arena, document_words(wend->arena, say(wend->arena, lead)), names->list, names->count);
    return (struct WendAnswer){.status = arena_failed(wend->arena) ? WEND_NO_MEMORY : WEND_INPUT_WRONG,
                               .told = {.diag = diag, .arena = wend->arena, .file = "wend", .after = list.data}};
}

/* "there is no ... named" and the nearest of those there are. */
static struct WendAnswer refuse_name(struct Wend *wend, enum DiagCode unknown, enum DiagCode misspelt,
                                     const char *written, enum Saying lead, const struct Names *names)
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
    int run;           /* -1: all */
    const char *check; /* that is asked for: runs without a choice of size count where they have it; NULL none */
    struct WendAnswer refusal; /* with run -2 */
};
enum { ALL_RUNS = -1, NO_RUN = -2 };

/* A check that is made stretch by stretch has a name such as "bend:gable"; "bend" asks for all of those. */
static bool is_asked_for(const struct Check *check, const char *asked)
{
    return text_same(check->id, asked) || text_same(check->kind, asked);
}

static bool run_has(const struct PlanRun *run, const char *asked)
{
    for (int i = 0; i < run->check_count; i++) {
        if (is_asked_for(&run->checks[i], asked)) {
            return true;
        }
    }
    return false;
}

/* Whether a run can be asked about: power runs, and for a check all that have it. */
static bool answers(const struct PlanRun *run, const char *check)
{
    return run->rated || (check != NULL && run_has(run, check));
}

static struct Asked find_run(struct Wend *wend, const char *name, const char *check)
{
    const struct Plan *plan = wend->plan;
    struct Names names = names_new(wend, plan->run_count);
    if (*name == '\0') {
        return (struct Asked){.run = ALL_RUNS, .check = check};
    }
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].settled;
        if (text_same(run->name, name) && answers(&plan->runs[r], check)) {
            return (struct Asked){.run = r, .check = check};
        }
        if (answers(&plan->runs[r], check)) {
            names_add(&names, run->name);
        }
    }
    const enum Saying lead = check != NULL ? SAY_RUNS_WITH_CHECK_ARE : SAY_POWER_RUNS_ARE;
    for (int r = 0; r < plan->run_count; r++) {
        if (text_same(plan->runs[r].settled->name, name)) {
            struct Diag *diag = diag_new(wend->arena);
            if (diag != NULL) {
                diag_report(diag, MSG_RUN_NOT_POWER, (struct Mark){0, 0}, 0,
                            DIAG_WORDS(name, survey_word(WORDS_RUN_KIND, (int)plan->runs[r].settled->kind)));
            }
            return (struct Asked){.run = NO_RUN, .refusal = refuse(wend, diag, lead, &names)};
        }
    }
    return (struct Asked){.run = NO_RUN,
                          .refusal = refuse_name(wend, MSG_RUN_UNKNOWN, MSG_RUN_MISSPELT, name, lead, &names)};
}

static bool is_asked(const struct Asked *asked, const struct PlanRun *runs, int run)
{
    return answers(&runs[run], asked->check) && (asked->run == ALL_RUNS || asked->run == run);
}

static struct WendAnswer answer_with(const struct Wend *wend, struct Bytes text)
{
    return (struct WendAnswer){.status = text.data != NULL ? wend_status(wend) : WEND_NO_MEMORY, .text = text};
}

/* NULL without memory, which has the same status. */
static const struct WendAnswer *keep(struct Wend *wend, struct WendAnswer answer)
{
    struct WendAnswer *kept = arena_alloc(wend->arena, sizeof *kept);
    if (kept != NULL) {
        *kept = answer;
    }
    return kept;
}

/* ---- options ---- */

enum { GROWTH_MOST_PERCENT = 1000 };

/* The same route with larger loads; what it reports is not for this plan, but the first of it says why there is none.
 */
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

static struct Bytes joined(struct Arena *arena, struct Bytes first, struct Bytes second)
{
    if (first.data == NULL || second.data == NULL) {
        return (struct Bytes){NULL, 0};
    }
    struct TextBuilder text = text_builder(arena);
    text_add_bytes(&text, first.data, first.length);
    text_add_bytes(&text, second.data, second.length);
    const char *both = text_done(&text);
    return text.failed ? (struct Bytes){NULL, 0} : (struct Bytes){both, text.length};
}

static struct WendAnswer refuse_growth(struct Wend *wend)
{
    struct Diag *diag = diag_new(wend->arena);
    if (diag != NULL) {
        diag_report(diag, MSG_GROWTH_RANGE, (struct Mark){0, 0}, 0, DIAG_NO_WORDS);
    }
    return (struct WendAnswer){.status = WEND_INPUT_WRONG,
                               .told = {.diag = diag, .arena = wend->arena, .file = "wend"}};
}

static struct WendAnswer options(struct Wend *wend, const char *run, double growth_percent)
{
    if (!(growth_percent >= 0 && growth_percent <= GROWTH_MOST_PERCENT)) {
        return refuse_growth(wend);
    }
    const struct Asked asked = find_run(wend, run, NULL);
    if (asked.run == NO_RUN) {
        return asked.refusal;
    }
    struct Growth growth = {.percent = growth_percent, .fault = ""};
    if (growth_percent > 0) {
        const char *unused = "";
        growth.plan = grow(wend, growth_percent, false, &unused);
        growth.any_device = grow(wend, growth_percent, true, &growth.fault);
    }
    const struct Bytes sizes =
        document_options_text(wend->arena, wend->plan, asked.run, growth_percent > 0 ? &growth : NULL);
    const struct OptionsMore more = library_options_more(wend, asked.run);
    return answer_with(wend, joined(wend->arena, sizes, document_options_more_text(wend->arena, wend->plan, &more)));
}

/* ---- explain ---- */

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

/* Checks that are made of ratings and drops, which every stretch has. */
static bool by_stretches(const char *id)
{
    return text_same(id, "capacity") || text_same(id, "drop");
}

static bool exists(const struct Wend *wend, const struct Asked *asked, const char *check)
{
    for (int r = 0; r < wend->plan->run_count; r++) {
        if (is_asked(asked, wend->plan->runs, r) && run_has(&wend->plan->runs[r], check)) {
            return true;
        }
    }
    return false;
}

/* Checks by name; of those that are made stretch by stretch the part before the colon. */
static struct Names check_names(struct Wend *wend, const struct Asked *asked)
{
    const struct Plan *plan = wend->plan;
    struct Names names = names_new(wend, plan_checks_in_all(plan));
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; is_asked(asked, plan->runs, r) && i < plan->runs[r].check_count; i++) {
            names_add(&names, plan->runs[r].checks[i].kind);
        }
    }
    return names;
}

/* Segments that a check can be asked for by: those the runs follow, or those that have a check of that name. */
static struct Names segment_names(struct Wend *wend, const struct Asked *asked, const char *check, bool rated)
{
    const struct Plan *plan = wend->plan;
    struct Names names = names_new(wend, plan->segment_count + plan_checks_in_all(plan));
    for (int r = 0; r < plan->run_count; r++) {
        const struct PlanRun *run = &plan->runs[r];
        for (int i = 0; rated && is_asked(asked, plan->runs, r) && i < run->rating_count; i++) {
            names_add(&names, plan->segments[run->ratings[i].segment].surveyed->name);
        }
        for (int i = 0; !rated && is_asked(asked, plan->runs, r) && i < run->check_count; i++) {
            if (run->checks[i].segment != NULL && is_asked_for(&run->checks[i], check)) {
                names_add(&names, run->checks[i].segment);
            }
        }
    }
    return names;
}

static struct WendAnswer refuse_check(struct Wend *wend, const struct Asked *asked, const char *check)
{
    const enum Saying lead = SAY_CHECKS_ARE;
    const char *colon = strchr(check, ':');
    const char *id = colon == NULL ? check : arena_text(wend->arena, check, (size_t)(colon - check));
    const struct Names names = check_names(wend, asked);
    if (!exists(wend, asked, id)) {
        return refuse_name(wend, MSG_CHECK_UNKNOWN, MSG_CHECK_MISSPELT, id, lead, &names);
    }
    const bool rated = by_stretches(id);
    const struct Names segments = segment_names(wend, asked, id, rated);
    if (segments.count > 0) {
        return refuse_name(wend, MSG_STRETCH_UNKNOWN, MSG_STRETCH_MISSPELT, colon == NULL ? "" : colon + 1,
                           SAY_SEGMENTS_ARE, &segments);
    }
    struct Diag *diag = diag_new(wend->arena);
    if (diag != NULL) {
        diag_report(diag, MSG_CHECK_NOT_BY_STRETCH, (struct Mark){0, 0}, 0, DIAG_WORDS(id));
    }
    return refuse(wend, diag, lead, &names);
}

/* Questions while they are gathered. */
struct Questions {
    struct Question *list;
    int count;
};

static void ask(struct Wend *wend, struct Questions *questions, int r, int check, int stretch)
{
    const struct PlanRun *run = &wend->plan->runs[r];
    const struct Rating *rating = stretch >= 0 ? design_working(wend->arena, wend->plan, run, stretch) : NULL;
    questions->list[questions->count++] = (struct Question){.run = r, .check = check, .stretch = rating};
}

/* Everything that was asked for of one run: checks by name, or the part of a stretch in one of them. */
static void ask_run(struct Wend *wend, struct Questions *questions, int r, const char *asked)
{
    const struct PlanRun *run = &wend->plan->runs[r];
    const char *colon = strchr(asked, ':');
    const int stretch = colon == NULL ? -1 : find_stretch(wend->plan, run, colon + 1);
    const char *kind = colon == NULL ? asked : arena_text(wend->arena, asked, (size_t)(colon - asked));
    for (int i = 0; i < run->check_count; i++) {
        const struct Check *check = &run->checks[i];
        if (is_asked_for(check, asked)) {
            ask(wend, questions, r, i, text_same(check->kind, "capacity") ? run->governing : -1);
        } else if (stretch >= 0 && by_stretches(check->kind) && text_same(check->kind, kind)) {
            ask(wend, questions, r, i, stretch);
        }
    }
}

static struct WendAnswer explain(struct Wend *wend, const char *check, const char *run)
{
    const struct Plan *plan = wend->plan;
    const struct Asked asked = find_run(wend, run, check);
    if (asked.run == NO_RUN) {
        return asked.refusal;
    }
    struct Questions questions = {
        .list = arena_array(wend->arena, (size_t)plan_checks_in_all(plan), sizeof *questions.list)};
    for (int r = 0; questions.list != NULL && r < plan->run_count; r++) {
        if (is_asked(&asked, plan->runs, r)) {
            ask_run(wend, &questions, r, check);
        }
    }
    if (questions.count == 0 && !arena_failed(wend->arena)) {
        return refuse_check(wend, &asked, check);
    }
    return answer_with(wend, document_explain_text(wend->arena, plan, questions.list, questions.count));
}

/* ---- the answers ---- */

/* Also of a plan of which less was wanted, however well it passes. */
static const struct WendAnswer *no_answer(struct Wend *wend)
{
    const enum WendStatus status = wend_status(wend) == WEND_NO_MEMORY ? WEND_NO_MEMORY : WEND_INPUT_WRONG;
    return wend == NULL ? NULL : keep(wend, (struct WendAnswer){.status = status});
}

const struct WendAnswer *wend_options(struct Wend *wend, const char *run, double growth_percent)
{
    if (wend_result(wend) == NULL) {
        return no_answer(wend);
    }
    return keep(wend, options(wend, library_text(run), growth_percent));
}

const struct WendAnswer *wend_explain(struct Wend *wend, const char *check, const char *run)
{
    if (wend_result(wend) == NULL) {
        return no_answer(wend);
    }
    return keep(wend, explain(wend, library_text(check), library_text(run)));
}

const struct WendAnswer *wend_decides(struct Wend *wend)
{
    if (wend_result(wend) == NULL) {
        return no_answer(wend);
    }
    const struct Decisives *decided = library_decided(wend);
    const struct Bytes none = {NULL, 0};
    return keep(wend,
                answer_with(wend, decided == NULL ? none : document_decides_text(wend->arena, wend->plan, decided)));
}

const struct WendAnswer *wend_reach(struct Wend *wend)
{
    if (wend_result(wend) == NULL) {
        return no_answer(wend);
    }
    const struct Reaches reaches = library_reaches(wend);
    return keep(wend, answer_with(wend, document_reach_text(wend->arena, wend->plan, &reaches)));
}

enum WendStatus wend_answer_status(const struct WendAnswer *answer)
{
    return answer == NULL ? WEND_NO_MEMORY : answer->status;
}

struct WendBytes wend_answer_text(const struct WendAnswer *answer)
{
    return library_bytes(answer == NULL ? (struct Bytes){NULL, 0} : answer->text);
}

const struct WendDiagnostics *wend_answer_diagnostics(const struct WendAnswer *answer)
{
    return answer == NULL ? NULL : diagnostics_shown(&answer->told);
}
