/* What the checks of all runs come to: the verdict in words, and what could not be checked. */
#include "design/terms/design_private.h"
#include "plan/say.h"

#include <string.h>

/* Every check matters unless it is here: nobody may leave it open and still say that the plan passes. Those that are
 * here, left open, harm nobody and dig nothing up again; they are listed as not checked and no more. */
static const struct {
    const char *id;
    bool of_power; /* of a power run too */
} matters_not[] = {
    {"starting", true}, /* a device that trips when its motor starts is changed */
    {"bend",
     false}, /* of a data or earth cable: it is thin, and its maker has its bend and its pull; whether it goes */
    {"pull", false}, /* into the duct with the others matters */
};

static bool check_matters(const char *id, enum RunKind kind)
{
    const size_t length = strcspn(id, ":");
    for (size_t i = 0; i < sizeof matters_not / sizeof matters_not[0]; i++) {
        if (strlen(matters_not[i].id) == length && strncmp(matters_not[i].id, id, length) == 0) {
            return kind == RUN_POWER && !matters_not[i].of_power;
        }
    }
    return true;
}

void check_unknown(struct Check *out, const char *text)
{
    out->result = CHECK_NOT_DUE;
    out->unknown = true;
    out->text = text;
}

void check_unsettled(struct Check *out, const char *settles, const char *text)
{
    check_unknown(out, text);
    out->settles = settles;
}

void verdict_mark(struct Check *check, enum RunKind kind)
{
    check->open = check->unknown && check_matters(check->id, kind);
    if (check->open && check->settles == NULL) {
        check->settles = "what the check names";
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

static const char *words_of_failures(struct Arena *arena, const struct Plan *plan)
{
    struct TextBuilder text = text_builder(arena);
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            if (plan->runs[r].checks[i].result == CHECK_FAIL) {
                text_print(&text, "%s%s fails on %s", text.length > 0 ? ", " : "", plan->runs[r].checks[i].id,
                           plan->runs[r].surveyed->name);
            }
        }
    }
    return text_done(&text);
}

/* A long route may leave the same open on every stretch. */
enum { OPEN_NAMED = 3 };

static const char *words_of_open(struct Arena *arena, const struct Plan *plan)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < plan->open_count && i < OPEN_NAMED; i++) {
        text_print(&text, "%s%s", i > 0 ? "; " : "", plan->open[i].text);
    }
    if (plan->open_count > OPEN_NAMED) {
        text_print(&text, "; and %d more", plan->open_count - OPEN_NAMED);
    }
    return text_done(&text);
}

static const char *verdict_words(struct Arena *arena, const struct Plan *plan)
{
    switch (plan->verdict) {
    case VERDICT_FAIL: return words_of_failures(arena, plan);
    case VERDICT_OPEN: return words_of_open(arena, plan);
    case VERDICT_PASS: break;
    }
    return plan->not_checked_count == 0 ? "every check that is due was made and passes"
                                        : "every check that matters was made and passes";
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
        const char *run = plan->runs[r].surveyed->name;
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            const struct Check *check = &plan->runs[r].checks[i];
            if (check->unknown) {
                unmade[plan->not_checked_count++] =
                    (struct NotChecked){check->id, arena_print(arena, "%s: %s", run, check->text)};
            }
            if (check->open) {
                open[plan->open_count++] = (struct OpenQuestion){
                    check->id, run, check->settles,
                    arena_print(arena, "%s of %s could not be checked: give %s", check->id, run, check->settles)};
            }
        }
    }
    plan->not_checked = unmade;
    plan->open = open;
}

/* The one place that names the edition. */
#define EDITION "BS 7671:2018+A2:2022"

void give_edition(struct Arena *arena, struct Plan *plan)
{
    plan->rules_edition = EDITION;
    plan->rules_text = say(arena, SAY_RULES, say_name(EDITION));
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
    plan->verdict_text = verdict_words(arena, plan);
}
