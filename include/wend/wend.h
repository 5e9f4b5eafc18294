/** Wend as a library: plan a route that is held in memory.
 *
 * Nothing here opens a file, prints or ends the process. One struct Wend is one planned route and owns everything that
 * is handed out of it; different ones may be used by different threads at the same time.
 *
 *     struct Wend *wend = wend_plan("boathouse", text, length);
 *     if (wend_status(wend) <= WEND_CHECK_FAILS) {
 *         struct Bytes svg = wend_document(wend, WEND_DIAGRAM_SVG);
 *         ...
 *     }
 *     wend_free(wend);
 */
#ifndef WEND_WEND_H
#define WEND_WEND_H

#include "base/base.h"
#include "base/diag.h"
#include "buying/order_list.h"
#include "takeoff/parts.h"
#include "plan/plan.h"

#if defined(__GNUC__)
#define WEND_PUBLIC __attribute__((visibility("default")))
#else
#define WEND_PUBLIC
#endif

/** What became of a route; the values are the program's exit statuses. */
enum WendStatus {
    WEND_PASSES = 0, /**< planned, no check fails: see wend_verdict() for whether every one that matters was made */
    WEND_CHECK_FAILS = 1, /**< planned, a check fails */
    WEND_INPUT_WRONG = 2, /**< the route is wrong: see the diagnostics */
    WEND_NO_MEMORY = 3,   /**< memory ran out on the way */
};

enum WendDocument {
    WEND_PLAN_XML,
    WEND_DIAGRAM_SVG,
    WEND_PARTS_CSV,
    WEND_SUMMARY_TEXT,        /**< 80 columns */
    WEND_SUMMARY_TEXT_COLOUR, /**< the same with terminal colours */
    WEND_BRIEF_HTML,          /**< this and the next four are made by templates, see wend_use_templates() */
    WEND_PARTS_HTML,
    WEND_DESIGN_HTML,
    WEND_TEST_HTML,
    WEND_PACK_HTML,
    WEND_DOCUMENT_COUNT
};

struct Wend;

/** Plans the route in `text` (`length` bytes, UTF-8; not kept after the call). `name` is what the plan and the
 * diagnostics call it, without folder. Never NULL but when not even the handle can be had; free with wend_free(). */
WEND_PUBLIC struct Wend *wend_plan(const char *name, const char *text, size_t length);
WEND_PUBLIC void wend_free(struct Wend *wend);
/** WEND_NO_MEMORY for NULL. */
WEND_PUBLIC enum WendStatus wend_status(const struct Wend *wend);

/** PASS, OPEN or FAIL, in words plan->verdict_text; VERDICT_FAIL without a plan. */
WEND_PUBLIC enum Verdict wend_verdict(const struct Wend *wend);

/** Errors and warnings, sorted by place. */
WEND_PUBLIC size_t wend_diagnostic_count(const struct Wend *wend);
WEND_PUBLIC const struct Diagnostic *wend_diagnostic(const struct Wend *wend, size_t index);
/** The stable name of a diagnostic, "key-unknown". */
WEND_PUBLIC const char *wend_diagnostic_name(const struct Diagnostic *diagnostic);
/** All of them as printed by the program, with the offending lines; `file` is what they call the file. "" when none. */
WEND_PUBLIC const char *wend_diagnostics_text(struct Wend *wend, const char *file);

/** The plan and the parts; NULL unless the status is WEND_PASSES or WEND_CHECK_FAILS. */
WEND_PUBLIC const struct Plan *wend_result(const struct Wend *wend);
WEND_PUBLIC const struct PartsList *wend_parts(const struct Wend *wend);

/** The plain name of the price list that the route says lies beside it; "" when there is none, or no plan. */
WEND_PUBLIC const char *wend_prices_name(const struct Wend *wend);
/** Prices the parts by the price list in `text` (`length` bytes, UTF-8; not kept after the call); the parts and the
 * documents asked for from then on hold prices. What is wrong with the list is in wend_prices_text(); there is no plan
 * then any more and the status is WEND_INPUT_WRONG. Gives the status. Without this call the parts say that nothing is
 * priced. Does nothing without a plan. */
WEND_PUBLIC enum WendStatus wend_price(struct Wend *wend, const char *text, size_t length);
/** The faults of the price list as printed by the program; `file` is what they call it. "" when none. */
WEND_PUBLIC const char *wend_prices_text(struct Wend *wend, const char *file);

/** A document, made on demand; data is NULL when there is no plan or no memory. Belongs to `wend`. */
WEND_PUBLIC struct Bytes wend_document(struct Wend *wend, enum WendDocument document);

/** A file that the HTML papers are made with. */
struct WendTemplate {
    const char *name; /**< of one of the built-in files: "brief.xsl", "house.css" ... */
    const char *path; /**< what faults call it */
    const char *text; /**< UTF-8 */
    size_t length;
};
/** The built-in files, as a start for one's own; false out of range. */
WEND_PUBLIC bool wend_template(int index, struct WendTemplate *out);
/** What is wrong with files that are to stand in place of the built-in ones: as printed by the program, "" when nothing
 * is. Free with wend_text_free(); NULL without memory. */
WEND_PUBLIC char *wend_templates_check(const struct WendTemplate *own, int count);
/** Takes them for the papers of this plan; before the first paper is asked for. They must live as long as `wend`. */
WEND_PUBLIC void wend_use_templates(struct Wend *wend, const struct WendTemplate *own, int count);
/** What a template did wrong when a paper could not be made, as printed by the program; "" otherwise. */
WEND_PUBLIC const char *wend_paper_fault(const struct Wend *wend);

/** The answer to a question about a plan. Texts belong to the struct Wend that was asked. */
struct WendAnswer {
    enum WendStatus
        status; /**< that of the plan; WEND_INPUT_WRONG when there is no plan or what was asked for is not in it */
    struct Bytes text; /**< the answer, 80 columns; data is NULL without one */
    const char *fault; /**< what is wrong with the question, and what may be asked; "" otherwise */
};
/** Every size tried for the power run named `run` (for all of them with ""), with each protective conductor that the
 * cable allows. `growth_percent` over 0 also asks which size would do with every load that much larger. */
WEND_PUBLIC struct WendAnswer wend_options_text(struct Wend *wend, const char *run, double growth_percent);
/** The working of the figure behind a check, such as "drop", or of one stretch of it, such as "capacity:loft", for the
 * run named `run` (for all that have it with ""). */
WEND_PUBLIC struct WendAnswer wend_explain_text(struct Wend *wend, const char *check, const char *run);

/** Many planned routes as one order: merged, rounded to whole packs once, split by job again. It borrows from the
 * routes, which must stay until it is freed, as must the array that names them. */
struct WendOrder;

enum WendOrderDocument {
    WEND_ORDER_CSV, /**< RFC 4180, for a counter or a spreadsheet */
    WEND_ORDER_XML, /**< OASIS UBL 2.1 Order */
    WEND_ORDER_DOCUMENT_COUNT
};

/** Merges `count` routes (at least one). `text` is an order file (`length` bytes, not kept), or NULL: no buyer and no
 * seller. `date`, unless "", is the day the order is placed, a day of the calendar as 2026-05-14; it goes before the
 * order file's own. No clock is read. Never NULL but when not even the handle can be had; free with wend_order_free().
 */
WEND_PUBLIC struct WendOrder *wend_order(struct Wend *const *routes, int count, const char *text, size_t length,
                                         const char *date);
WEND_PUBLIC void wend_order_free(struct WendOrder *order);
/** WEND_CHECK_FAILS when a plan fails a check, WEND_INPUT_WRONG when a route has no plan or the order file is wrong;
 * WEND_NO_MEMORY for NULL. */
WEND_PUBLIC enum WendStatus wend_order_status(const struct WendOrder *order);
/** The worst of its plans'; VERDICT_FAIL without an order. */
WEND_PUBLIC enum Verdict wend_order_verdict(const struct WendOrder *order);
/** The plain name of the price list that the order file says lies beside it; "" when there is none. */
WEND_PUBLIC const char *wend_order_prices_name(const struct WendOrder *order);
/** Prices the order by the price list in `text` (`length` bytes, UTF-8; not kept after the call), which goes before
 * those that the routes were priced by. What is wrong with it is in wend_order_prices_text(); there is no order then
 * any more and the status is WEND_INPUT_WRONG. Gives the status. Does nothing without an order. */
WEND_PUBLIC enum WendStatus wend_order_price(struct WendOrder *order, const char *text, size_t length);
/** The faults of that price list as printed by the program; `file` is what they call it. "" when none. */
WEND_PUBLIC const char *wend_order_prices_text(struct WendOrder *order, const char *file);
/** What is wrong with the order file, as wend_diagnostics_text() prints it. */
WEND_PUBLIC const char *wend_order_diagnostics_text(struct WendOrder *order, const char *file);
/** The lines of the order; NULL unless the status is WEND_PASSES or WEND_CHECK_FAILS. */
WEND_PUBLIC const struct OrderList *wend_order_lines(const struct WendOrder *order);
/** A name for its files, without ending: "PO-1042.order" for the reference "PO 1042", what a file name should not hold
 * being "-"; "order" without a reference. */
WEND_PUBLIC const char *wend_order_name(const struct WendOrder *order);
/** A document, made on demand; data is NULL when there is no order, no memory, or no date for the XML. Belongs to
 * `order`. */
WEND_PUBLIC struct Bytes wend_order_document(struct WendOrder *order, enum WendOrderDocument document);
/** True for a day of the calendar, written as 2026-05-14. */
WEND_PUBLIC bool wend_is_date(const char *text);

/** The reference manual of the route file as text; free with wend_text_free(). NULL without memory. */
WEND_PUBLIC char *wend_manual(void);
WEND_PUBLIC void wend_text_free(char *text);

/** The published tables that figures are taken from: how many, and a line on one of them, to be freed with
 * wend_text_free(). */
WEND_PUBLIC int wend_table_count(void);
WEND_PUBLIC char *wend_table_line(int index);

#endif
