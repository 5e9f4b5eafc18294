/* What the checks of all runs come to: the verdict in words, and what could not be checked. */
#include "design/terms/design_private.h"

/* Every check matters but these, of a data or earth cable: it is thin, and its maker gives its bend and its pull. They
 * are listed as not checked and the plan can still pass; whether the cable fits the duct with the others does matter.
 */
static bool check_matters(const char *check, enum RunKind kind)
{
    return kind == RUN_POWER || !(text_same(check, "bend") || text_same(check, "pull"));
}

void check_unknown(struct Check *out, const struct Say *text)
{
    out->result = CHECK_NOT_DUE;
    out->unknown = true;
    out->text = text;
}

void check_unsettled(struct Check *out, struct Settles settles, const struct Say *text)
{
    check_unknown(out, text);
    out->settles = settles;
}

void verdict_mark(struct Check *check, enum RunKind kind)
{
    check->open = check->unknown && check_matters(check->kind, kind);
    if (check->open && !settles_something(&check->settles)) {
        check->settles = settles_reading(SAY_SETTLED_AS_THE_CHECK_NAMES);
    }
}

enum Verdict verdict_of_checks(const struct Check *checks, int count)
{
    enum Verdict verdict = VERDICT_PASS;
    for (int i = 0; i < count; i++) {
        const enum Verdict one = checks[i].result == CHECK_FAIL ? VERDICT_FAIL
                                 : checks[i].open               ? VERDICT_OPEN
                                                                : VERDICT_PASS;
        verdict = one < verdict ? one : verdict;
    }
    return verdict;
}

/* By its id, which `wend explain` takes, or by its title, which paper has. */
enum Naming { BY_ID, BY_TITLE };

static struct SayArg check_name(const char *id, const struct Say *title, enum Naming naming)
{
    return naming == BY_TITLE ? say_part(title) : say_name(id);
}

/* Within a sentence the segment stands in brackets. */
static const struct Say *title_within(struct Arena *arena, const struct Check *check)
{
    return check->segment == NULL ? say(arena, check->title)
                                  : say(arena, SAY_BRACKETS, say_term(check->title), say_name(check->segment));
}

/* Lists are made from their ends, so that none is copied for each member. */
static const struct Say *failures(struct Arena *arena, const struct Plan *plan, enum Naming naming)
{
    const struct Say *list = NULL;
    for (int r = plan->run_count - 1; r >= 0; r--) {
        const struct PlanRun *run = &plan->runs[r];
        for (int i = run->check_count - 1; i >= 0; i--) {
            const struct Check *check = &run->checks[i];
            if (check->result == CHECK_FAIL) {
                list = say_then(arena,
                                say(arena, list == NULL ? SAY_CHECK_FAILS : SAY_CHECK_FAILS_FURTHER,
                                    check_name(check->id, title_within(arena, check), naming),
                                    say_name(run->settled->name)),
                                list);
            }
        }
    }
    return list;
}

/* A long route may leave the same open on every stretch. */
enum { OPEN_NAMED = 3 };

static const struct Say *say_open(struct Arena *arena, const struct OpenQuestion *open, bool last, enum Naming naming)
{
    return say(arena, last ? SAY_CHECK_OPEN : SAY_CHECK_OPEN_FURTHER, check_name(open->id, open->title, naming),
               say_name(open->run), say_part(settles_said(arena, &open->settles)));
}

/* What is of the whole survey, not of one run, is one question whatever number of runs it leaves open. */
static bool asked_before(const struct Plan *plan, int at)
{
    for (int i = 0; i < at; i++) {
        if (text_same(plan->open[at].id, "survey-complete") && text_same(plan->open[i].id, plan->open[at].id)) {
            return true;
        }
    }
    return false;
}

static const struct Say *what_is_open(struct Arena *arena, const struct Plan *plan, enum Naming naming)
{
    int named[OPEN_NAMED], count = 0;
    for (int i = 0; i < plan->open_count; i++) {
        if (!asked_before(plan, i)) {
            if (count < OPEN_NAMED) {
                named[count] = i;
            }
            count++;
        }
    }
    const int more = count - OPEN_NAMED;
    const struct Say *list = more > 0 ? say(arena, SAY_CHECKS_OPEN_MORE, say_count(more)) : NULL;
    for (int i = (more > 0 ? OPEN_NAMED : count) - 1; i >= 0; i--) {
        list = say_then(arena, say_open(arena, &plan->open[named[i]], list == NULL, naming), list);
    }
    return list;
}

static const struct Say *verdict_said(struct Arena *arena, const struct Plan *plan, enum Naming naming)
{
    switch (plan->verdict) {
    case VERDICT_FAIL: return failures(arena, plan, naming);
    case VERDICT_OPEN: return what_is_open(arena, plan, naming);
    case VERDICT_PASS: break;
    }
    return say(arena, plan->not_checked_count == 0 ? SAY_EVERY_CHECK_PASSES : SAY_EVERY_CHECK_THAT_MATTERS_PASSES);
}

static int count_checks(const struct Plan *plan)
{
    int count = 0;
    for (int r = 0; r < plan->run_count; r++) {
        count += plan->runs[r].check_count;
    }
    return count;
}

/* Checks that this survey leaves without what they need, and those among them that matter. */
static void list_unmade(struct Arena *arena, struct Plan *plan)
{
    const size_t most = (size_t)count_checks(plan);
    struct NotChecked *unmade = arena_array(arena, most, sizeof *unmade);
    struct OpenQuestion *open = arena_array(arena, most, sizeof *open);
    if (unmade == NULL || open == NULL) {
        return;
    }
    for (int r = 0; r < plan->run_count; r++) {
        const char *run = plan->runs[r].settled->name;
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            const struct Check *check = &plan->runs[r].checks[i];
            if (check->unknown) {
                struct Arena *said = plan->extent == PLAN_WHOLE ? arena : NULL;
                unmade[plan->not_checked_count++] =
                    (struct NotChecked){check->id, run, say(said, SAY_COLON, say_name(run), say_part(check->text)),
                                        title_within(said, check)};
            }
            if (check->open) {
                struct OpenQuestion *one = &open[plan->open_count++];
                *one = (struct OpenQuestion){
                    .id = check->id, .run = run, .settles = check->settles, .title = title_within(arena, check)};
                one->text = say_open(arena, one, true, BY_ID);
            }
        }
    }
    plan->not_checked = unmade;
    plan->open = open;
}

void give_edition(struct Arena *arena, const struct Edition *edition, struct Plan *plan)
{
    plan->edition = edition;
    plan->rules_edition = edition_name(edition);
    const struct Say *beyond = NULL;
    for (int i = 0; edition_beyond(edition, i) != NULL; i++) {
        beyond = say_list(arena, SAY_AND, beyond, say_name(edition_beyond(edition, i)));
    }
    plan->rules_text = beyond != NULL ? say(arena, SAY_RULES, say_name(plan->rules_edition), say_part(beyond))
                                      : say(arena, SAY_AS_IS, say_name(plan->rules_edition));
}

void give_verdict(struct Arena *arena, struct Plan *plan)
{
    plan->verdict = VERDICT_PASS;
    plan->pass = true;
    for (int r = 0; r < plan->run_count; r++) {
        plan->pass = plan->pass && plan->runs[r].pass;
        plan->verdict = plan->runs[r].verdict < plan->verdict ? plan->runs[r].verdict : plan->verdict;
    }
    list_unmade(arena, plan);
    plan->verdict_text = verdict_said(arena, plan, BY_ID);
    plan->verdict_titled = verdict_said(arena, plan, BY_TITLE);
}

static void place_warning(const struct Survey *survey, struct DiagSubject subject, struct PlanWarning *out)
{
    if (subject.of == DIAG_OF_SEGMENT) {
        out->segment = subject.index;
        out->where = survey->segments[subject.index].name;
    } else if (subject.of == DIAG_OF_RUN) {
        out->run = subject.index;
        out->where = survey->runs[subject.index].name;
    }
}

bool list_warnings(const struct Design *design, struct Plan *plan)
{
    const size_t count = diag_count(design->diag);
    struct PlanWarning *list = arena_array(design->arena, count + 1, sizeof *list);
    for (size_t i = 0; list != NULL && i < count; i++) {
        const struct Diagnostic *reported = diag_at(design->diag, i);
        if (reported->severity != DIAG_WARNING) {
            continue;
        }
        struct PlanWarning *warning = &list[plan->warning_count++];
        *warning = (struct PlanWarning){
            .code = reported->code, .words = reported->words, .where = "", .segment = -1, .run = -1};
        place_warning(plan->survey, reported->subject, warning);
    }
    plan->warnings = list;
    return list != NULL;
}
