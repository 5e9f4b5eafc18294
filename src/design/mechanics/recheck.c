/* Once every size is decided: what depends on the sizes of several runs together, and the checks of runs that have no
 * size to choose. */
#include "mechanics_private.h"

#include <math.h>
#include <string.h>

bool decided_begin(struct Design *design)
{
    struct Survey *decided = arena_alloc(design->arena, sizeof *decided);
    const size_t count = (size_t)design->survey->run_count;
    struct Run *runs = arena_array(design->arena, count, sizeof *runs);
    if (decided == NULL || runs == NULL) {
        return false;
    }
    memcpy(runs, design->survey->runs, count * sizeof *runs);
    *decided = *design->survey;
    decided->runs = runs;
    design->decided = decided;
    design->decided_runs = runs;
    return true;
}

void decided_size(struct Design *design, int run, double size_mm2)
{
    if (size_mm2 > 0) {
        design->decided_runs[run].cable.size_mm2 = (struct Quantity){.value = size_mm2, .given = true};
    }
}

/* As much of a design as the checks on bends, ducts and drawing in ask for. */
static struct RunDesign bare(const struct Design *design, const struct PlanRun *planned)
{
    return (struct RunDesign){.unsaid = design->extent != PLAN_WHOLE,
                              .run = planned->settled,
                              .segments = design->survey->segments,
                              .survey = design->decided,
                              .followers = design->followers};
}

static void take_against(struct Against *against, const struct Check *check)
{
    against_add(against, check->kind, check->title);
    against->why = against->why == NULL ? check->text : against->why;
}

/* The chosen size stands as it did when it was tried; what the other runs turned out to be may have changed that. */
static void describe_chosen(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            const struct PlanRun *planned, struct Option *out)
{
    struct Against fails = {.count = 0};
    struct Against open = {.count = 0};
    out->pass = planned->pass;
    out->verdict = planned->verdict;
    if (run->unsaid) {
        return;
    }
    for (int c = 0; c < planned->check_count; c++) {
        const struct Check *check = &planned->checks[c];
        if (check->segment == NULL && (check->result == CHECK_FAIL || check->open)) {
            take_against(check->result == CHECK_FAIL ? &fails : &open, check);
        }
    }
    const struct MechanicsCount count = mechanics_failures(run, trial, mechanics_due(arena, run));
    mechanics_against(arena, run, trial, &count, &fails, &open);
    out->fails = against_list(arena, &fails);
    out->open = against_list(arena, &open);
    out->why = fails.why != NULL ? fails.why : open.why;
}

static bool change_chosen(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct PlanRun *out)
{
    struct Option *options = arena_array(arena, (size_t)out->option_count, sizeof *options);
    for (int i = 0; options != NULL && i < out->option_count; i++) {
        options[i] = out->options[i];
        if (options[i].chosen) {
            describe_chosen(arena, run, trial, out, &options[i]);
        }
    }
    out->options = options;
    return options != NULL;
}

/* Makes the checks on single stretches anew, all sizes being known now; for a run without a choice, for the first time.
 */
static bool check_again(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                        struct PlanRun *out)
{
    const int stretches = mechanics_count(run);
    const int kept = out->rated ? out->check_count - stretches : 0;
    struct Check *checks = arena_array(arena, (size_t)(kept + stretches) + 1, sizeof *checks);
    if (checks == NULL) {
        return false;
    }
    for (int i = 0; i < kept; i++) {
        checks[i] = out->checks[i];
    }
    const int before = out->rated ? kept : check_unrated(arena, run, trial, checks);
    out->check_count = before + check_mechanics(arena, run, trial, checks + before, stretches);
    out->checks = checks;
    const enum Verdict before_this = out->verdict;
    out->verdict = verdict_of_checks(checks, out->check_count);
    out->pass = out->verdict != VERDICT_FAIL;
    return !out->rated || before_this == out->verdict || change_chosen(arena, run, trial, out);
}

/* Whether a run that was decided after this one chose its own size. */
static bool later_chose(const struct Design *design, int r)
{
    for (int i = r + 1; i < design->survey->run_count; i++) {
        const struct Run *later = &design->survey->runs[i];
        if (later->kind == RUN_POWER && !later->cable.size_mm2.given) {
            return true;
        }
    }
    return false;
}

static void warn_of_end(const struct Design *design, int r, const struct PlanRun *run, bool start)
{
    const char *which = start ? "start" : "finish";
    const struct End *end = start ? &run->settled->start : &run->settled->finish;
    const struct PlanEnd *planned = start ? &run->start_end : &run->finish_end;
    if (planned->tight) {
        diag_report_of(design->diag, DIAG_RUN(r), MSG_END_TIGHT, end->mark, (int)strlen(which),
                       DIAG_WORDS(run->settled->name, which,
                                  number_text(design->arena, floor(planned->room_mm + 1e-9), 0),
                                  number_text(design->arena, ceil(planned->needs_mm - 1e-9), 0)));
    }
}

/* Of every stretch in the ground that a run follows, dug for it or there already. */
static void warn_of_cover(const struct Design *design)
{
    static const enum DiagPhrase where[UNDER_COUNT + 1] = {
        [UNDER_LAWN] = PHRASE_UNDER_LAWN, [UNDER_PATH] = PHRASE_UNDER_PATH,   [UNDER_DRIVE] = PHRASE_UNDER_DRIVE,
        [UNDER_BED] = PHRASE_UNDER_BED,   [UNDER_FIELD] = PHRASE_UNDER_FIELD, [UNDER_COUNT] = PHRASE_UNDER_UNKNOWN,
    };
    const struct Survey *survey = design->survey;
    for (int i = 0; i < survey->segment_count; i++) {
        const struct Segment *segment = &survey->segments[i];
        const double usual_m = trench_cover(segment->under);
        if (!survey_in_ground(segment->way) || design->followers[i] == 0 || within(usual_m, segment->depth_m.value)) {
            continue;
        }
        diag_report_of(design->diag, DIAG_SEGMENT(i), MSG_COVER_SHALLOW, segment->mark, (int)utf8_count(segment->name),
                       DIAG_WORDS(segment->name, number_text(design->arena, segment->depth_m.value * 1000, 0),
                                  number_text(design->arena, usual_m * 1000, 0), diag_phrase(where[segment->under])));
    }
}

bool recheck_mechanics(const struct Design *design, struct PlanRun *runs, int count)
{
    struct Arena *arena = design->arena;
    warn_of_cover(design);
    for (int r = 0; r < count; r++) {
        struct PlanRun *out = &runs[r];
        const struct RunDesign run = bare(design, out);
        const struct Trial trial = {.size_mm2 = out->size_mm2};
        if ((!out->rated || later_chose(design, r)) && !check_again(arena, &run, &trial, out)) {
            return false;
        }
        out->cable_facts = plan_cable(arena, &run, out->size_mm2, out->order_length_m);
        if (design->extent != PLAN_FOR_VERDICT) {
            out->bends = plan_bends(arena, &run, out, &out->bend_count);
            out->pulls = plan_pulls(arena, &run, out, &out->pull_count);
        }
        const bool stiff = survey_armoured(out->settled->cable.type);
        out->start_end = plan_end(arena, &out->settled->start, &out->cable_facts, stiff);
        out->finish_end = plan_end(arena, &out->settled->finish, &out->cable_facts, stiff);
        warn_of_end(design, r, out, true);
        warn_of_end(design, r, out, false);
    }
    return !arena_failed(arena);
}
