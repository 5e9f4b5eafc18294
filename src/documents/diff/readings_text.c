/* Readings held against the plan, a line each, and under it what is wrong. Also as CSV and JSON. */
#include "documents/documents.h"

#include "documents/json/json_out.h"
#include "documents/lists/csv_private.h"
#include "documents/measured_said_private.h"
#include "documents/shown_private.h"
#include "documents/summary/summary_private.h"

#include <math.h>

enum { NAME_AT = 2, NAME_COLUMNS = 14, VALUE_COLUMNS = 21, EXPECTED_COLUMNS = 11, LIMIT_COLUMNS = 20, TEXT_AT = 11 };

static enum Tint tint_of(enum Fit fit)
{
    return fit <= FIT_BEYOND ? TINT_BAD : fit == FIT_FITS ? TINT_GOOD : TINT_STRONG;
}

static void add_one(struct SummaryPage *page, const struct Measured *reading)
{
    struct Arena *arena = page->arena;
    const struct MeasuredSaid said = measured_said(arena, reading);
    summary_cell(page, "", NAME_AT);
    summary_cell(page, shown_said(arena, said.name), NAME_COLUMNS);
    summary_cell(page, shown_said(arena, said.value), VALUE_COLUMNS);
    summary_cell(page, shown_said(arena, said.expected), EXPECTED_COLUMNS);
    summary_cell(page, shown_said(arena, said.limit), LIMIT_COLUMNS);
    summary_tint(page, tint_of(reading->fit));
    text_add(&page->text, shown_said(arena, said.fit));
    summary_tint(page, TINT_NONE);
    text_add_char(&page->text, '\n');
    if (said.remark != NULL) {
        summary_item(page, 0, NAME_AT + 2, "", TINT_NONE, shown_said(arena, said.remark));
    }
}

static void add_run(struct SummaryPage *page, const struct PlanRun *run)
{
    struct Arena *arena = page->arena;
    summary_gap(page);
    summary_heading(page, shown_said(arena, say(arena, SAY_COLON, say_name(run->settled->name),
                                                say_part(summary_cable(arena, run)))));
    summary_item(page, 0, NAME_AT, "", TINT_NONE, shown_said(arena, measured_run_said(arena, run)));
    if (run->readings.note != NULL) {
        summary_item(page, 0, NAME_AT, "", TINT_NONE, shown_said(arena, run->readings.note));
    }
    summary_cell(page, "", NAME_AT + NAME_COLUMNS);
    summary_cell(page, summary_term(page, SAY_LABEL_MEASURED), VALUE_COLUMNS);
    summary_cell(page, summary_term(page, SAY_LABEL_EXPECTED), EXPECTED_COLUMNS);
    text_print(&page->text, "%s\n", summary_term(page, SAY_LABEL_LIMIT));
    for (int i = 0; i < run->measured.count; i++) {
        add_one(page, &run->measured.list[i]);
    }
}

struct Bytes document_readings_text(struct Arena *arena, const struct Plan *plan)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    summary_changes(&page, plan);
    summary_heading(&page, shown_said(arena, say(arena, SAY_READINGS_OF, say_name(plan->route),
                                                 say_name(plan->survey->job.title))));
    summary_item(&page, 0, NAME_AT, "", TINT_NONE, shown_said(arena, say(arena, SAY_READINGS_NO_CERTIFICATE)));
    for (int i = 0; i < plan->run_count; i++) {
        if (plan->runs[i].rated && plan->runs[i].measured.list != NULL) {
            add_run(&page, &plan->runs[i]);
        }
    }
    const enum Verdict verdict = readings_verdict(plan);
    summary_gap(&page);
    summary_item(&page, 0, TEXT_AT, summary_term(&page, SAY_LEAD_VERDICT), summary_verdict_tint(verdict),
                 arena_print(arena, "%s: %s", verdict_word(verdict), shown_said(arena, measured_why(arena, plan))));
    return summary_finish(&page);
}

/* ---- for programs ---- */

static const char *causes_words(struct Arena *arena, const struct Measured *reading)
{
    struct TextBuilder words = text_builder(arena);
    for (int i = 0; i < CAUSES; i++) {
        if ((reading->causes >> i & 1U) != 0) {
            text_print(&words, "%s%s", words.length > 0 ? " " : "", measured_cause_word((enum Cause)i));
        }
    }
    return text_done(&words);
}

static const char *number(struct Arena *arena, bool there, double value)
{
    return there && isfinite(value) ? shown_figure(arena, value) : "";
}

struct Cells {
    const char *run, *reading, *unit, *measured, *error, *expected, *limit, *fit, *causes, *text;
};

static struct Cells cells_of(struct Arena *arena, const struct PlanRun *run, const struct Measured *reading)
{
    const bool compared = reading->unit != UNIT_NONE;
    const struct MeasuredSaid said = measured_said(arena, reading);
    return (struct Cells){.run = run->settled->name,
                          .reading = measured_key(reading->what),
                          .unit = compared ? shown_unit(arena, reading->unit) : "",
                          .measured =
                              compared ? number(arena, reading->given, reading->value) : shown_said(arena, said.value),
                          .error = number(arena, compared && reading->given, reading->error),
                          .expected = number(arena, reading->expected > 0, reading->expected),
                          .limit = number(arena, reading->limit > 0, reading->limit),
                          .fit = measured_fit_word(reading->fit),
                          .causes = causes_words(arena, reading),
                          .text = shown_said(arena, said.remark)};
}

struct Bytes document_readings_csv(struct Arena *arena, const struct Plan *plan)
{
    struct TextBuilder csv = text_builder(arena);
    text_add(&csv, "run,reading,unit,measured,meter-error,expected,limit,verdict,causes,text\r\n");
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].measured.count; i++) {
            const struct Cells cells = cells_of(arena, &plan->runs[r], &plan->runs[r].measured.list[i]);
            const char *const row[] = {cells.run,      cells.reading, cells.unit, cells.measured, cells.error,
                                       cells.expected, cells.limit,   cells.fit,  cells.causes,   cells.text};
            for (size_t c = 0; c < sizeof row / sizeof *row; c++) {
                text_add(&csv, c > 0 ? "," : "");
                csv_out_text(&csv, row[c]);
            }
            text_add(&csv, "\r\n");
        }
    }
    const char *text = text_done(&csv);
    return arena_failed(arena) ? (struct Bytes){NULL, 0} : (struct Bytes){text, csv.length};
}

static void add_digits(struct JsonOut *out, struct JsonNode *node, const char *name, const char *digits)
{
    if (*digits != '\0') {
        json_digits(out, node, name, digits);
    }
}

struct Bytes document_readings_json(struct Arena *arena, const struct Plan *plan)
{
    struct JsonOut *out = json_out_new(arena);
    struct JsonNode *root = json_root(out);
    json_text(out, root, "route", plan->route);
    json_changes(out, root, plan->survey);
    json_text(out, root, "verdict", verdict_word(readings_verdict(plan)));
    json_text(out, root, "verdict-text", shown_said(arena, measured_why(arena, plan)));
    struct JsonNode *list = json_list(out, root, "readings");
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].measured.count; i++) {
            const struct Cells cells = cells_of(arena, &plan->runs[r], &plan->runs[r].measured.list[i]);
            struct JsonNode *node = json_object(out, list, "");
            json_text(out, node, "run", cells.run);
            json_text(out, node, "reading", cells.reading);
            json_text_if(out, node, "unit", cells.unit);
            if (*cells.unit == '\0') {
                json_text_if(out, node, "measured", cells.measured);
            } else {
                add_digits(out, node, "measured", cells.measured);
            }
            add_digits(out, node, "meter-error", cells.error);
            add_digits(out, node, "expected", cells.expected);
            add_digits(out, node, "limit", cells.limit);
            json_text(out, node, "verdict", cells.fit);
            json_words(out, node, "causes", cells.causes, false);
            json_text_if(out, node, "text", cells.text);
        }
    }
    return json_out_finish(out);
}
