/** The page that the terminal summary is written on: lines of at most 80 columns, wrapped with hanging indents. */
#ifndef WEND_SUMMARY_PRIVATE_H
#define WEND_SUMMARY_PRIVATE_H

#include "base/base.h"
#include "plan/plan.h"
#include "takeoff/parts.h"

enum { SUMMARY_COLUMNS = 80 };

enum Tint { TINT_NONE, TINT_STRONG, TINT_GOOD, TINT_BAD };

struct SummaryPage {
    struct Arena *arena;
    struct TextBuilder text;
    bool colour;
};

/** An empty line. */
void summary_gap(struct SummaryPage *page);
/** A heading in strong type, cut to the page. */
void summary_heading(struct SummaryPage *page, const char *text);
/** `lead` at column `indent`, `text` wrapped from column `hang` on; `lead` must be shorter than hang - indent. */
void summary_item(struct SummaryPage *page, int indent, int hang, const char *lead, enum Tint tint, const char *text);
/** Text padded or cut to exactly `columns`; a negative count sets it to the right. No line end. */
void summary_cell(struct SummaryPage *page, const char *text, int columns);
/** Begins and ends a tint; nothing without colour. */
void summary_tint(struct SummaryPage *page, enum Tint tint);

/** A saying that nothing goes into, in words. */
const char *summary_term(struct SummaryPage *page, enum Saying term);
/** summary_heading() of one. */
void summary_head(struct SummaryPage *page, enum Saying head);
/** summary_item() with a label, SAY_NOTHING none, and what is said. */
void summary_line(struct SummaryPage *page, int indent, int hang, enum Saying label, enum Tint tint,
                  const struct Say *said);

/** What was set otherwise than in the file, and where in its ranges the plan stands; nothing where there is neither. */
void summary_changes(struct SummaryPage *page, const struct Plan *plan);
/** The verdict's own. */
enum Tint summary_verdict_tint(enum Verdict verdict);
/** The plan's verdict, how many warnings there are, and why. */
void summary_verdict(struct SummaryPage *page, const struct Plan *plan, int hang);

/** The finished page; data is NULL when memory failed. */
struct Bytes summary_finish(struct SummaryPage *page);

/** What is cut from which drum; nothing without a cutting plan. */
void summary_cutting(struct SummaryPage *page, const struct PartsList *parts);
/** Totals and what has no price; nothing without a price list. */
void summary_prices(struct SummaryPage *page, const struct PartsList *parts);
/** "GBP 112.40 for 12 of 13 lines"; NULL where nothing is in it. */
const struct Say *summary_total(struct Arena *arena, const struct PartsList *parts, const struct PartsTotal *total);
/** Everything about one run. */
void summary_run(struct SummaryPage *page, const struct Plan *plan, const struct PlanRun *run);
/** "3-core 10 mm2 BS5467". */
const struct Say *summary_cable(struct Arena *arena, const struct PlanRun *run);

#endif
