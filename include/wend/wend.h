/** Wend as a library: plan a route that is held in memory.
 *
 * Nothing here opens a file, prints or ends the process (but see wend_guard_memory()). One struct Wend is one planned
 * route and owns everything that is handed out of it. Handles that share nothing may be used by different threads at
 * the same time; an order and its routes belong to one thread at a time.
 *
 *     struct Wend *wend = wend_plan("boathouse", text, length);
 *     fputs(wend_diagnostics_printed(wend_diagnostics(wend), "boathouse.yaml"), stderr);
 *     if (wend_status(wend) <= WEND_CHECK_FAILS) {
 *         struct WendBytes svg = wend_document(wend, WEND_DIAGRAM_SVG);
 *         ...
 *     }
 *     wend_free(wend);
 *
 * NULL is accepted everywhere. A handle that is NULL has nothing: its status is WEND_NO_MEMORY, its verdict WEND_FAIL,
 * a count of it 0, a text "", bytes and handles of it NULL, an answer of yes or no false; freeing it does nothing. An
 * index or an enum value out of range gives the same, and so does a handle that holds no such thing. A text that is
 * NULL counts as "". Texts that are handed out are UTF-8, end in NUL and are never NULL, unless said otherwise. */
#ifndef WEND_WEND_H
#define WEND_WEND_H

#include <stdbool.h>
#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

#if defined(__GNUC__)
#define WEND_PUBLIC __attribute__((visibility("default")))
#else
#define WEND_PUBLIC
#endif

#define WEND_VERSION_MAJOR 1
#define WEND_VERSION_MINOR 0
#define WEND_VERSION_PATCH 0
#define WEND_QUOTE_(text)  #text
#define WEND_QUOTE(text)   WEND_QUOTE_(text)
#define WEND_VERSION                                                                                                   \
    WEND_QUOTE(WEND_VERSION_MAJOR) "." WEND_QUOTE(WEND_VERSION_MINOR) "." WEND_QUOTE(WEND_VERSION_PATCH)
/** That of the library at hand; WEND_VERSION is that of this header. */
WEND_PUBLIC const char *wend_version(void);

/** Longer texts (routes, order files, price lists, templates) are refused by a diagnostic, and not a byte of them is
 * read: a reader of files may stop there. */
#define WEND_TEXT_MOST_BYTES ((size_t)4 * 1024 * 1024)

/** A length of bytes that need not end in NUL; they belong to the handle that they came from. */
struct WendBytes {
    const char *data;
    size_t length;
};

/** What became of a route; the values are the program's exit statuses. */
enum WendStatus {
    WEND_PASSES = 0, /**< planned, no check fails: see wend_verdict() for whether every one that matters was made */
    WEND_CHECK_FAILS = 1, /**< planned, a check fails */
    WEND_INPUT_WRONG = 2, /**< the route is wrong: see the diagnostics */
    WEND_NO_MEMORY = 3    /**< memory ran out on the way */
};

/** What the checks come to together. The worst is the least. */
enum WendVerdict {
    WEND_FAIL = 0, /**< a check fails, or there is no plan */
    WEND_OPEN = 1, /**< none fails, but one that matters could not be made from this survey */
    WEND_PASS = 2  /**< every check that applies and matters was made and passes */
};
/** "PASS", "OPEN", "FAIL". */
WEND_PUBLIC const char *wend_verdict_word(enum WendVerdict verdict);

/* ---- what is wrong ---- */

/** Errors and warnings on one text: a route, a price list, an order file, a template, or a question; sorted by place.
 * It belongs to the handle that it came from. */
struct WendDiagnostics;

enum WendSeverity { WEND_WARNING = 0, WEND_ERROR = 1 };

WEND_PUBLIC size_t wend_diagnostics_count(const struct WendDiagnostics *diagnostics);
/** The stable name of one, "key-unknown". */
WEND_PUBLIC const char *wend_diagnostic_name(const struct WendDiagnostics *diagnostics, size_t index);
WEND_PUBLIC enum WendSeverity wend_diagnostic_severity(const struct WendDiagnostics *diagnostics, size_t index);
/** Where, counted from 1, columns in characters; 0 when it has no place in the text. */
WEND_PUBLIC int wend_diagnostic_line(const struct WendDiagnostics *diagnostics, size_t index);
WEND_PUBLIC int wend_diagnostic_column(const struct WendDiagnostics *diagnostics, size_t index);
/** A finished sentence, without control characters. */
WEND_PUBLIC const char *wend_diagnostic_text(const struct WendDiagnostics *diagnostics, size_t index);
/** All of them as printed by the program, with the offending lines; "" when there are none. `file` is what they call
 * the text; it is not used for templates and questions, which have names of their own. */
WEND_PUBLIC const char *wend_diagnostics_printed(const struct WendDiagnostics *diagnostics, const char *file);

/* ---- a route ---- */

struct Wend;

/** Plans the route in `text` (`length` bytes, UTF-8; not kept after the call). `name` is what the plan and its
 * documents call it, without folder; "route" for NULL. NULL only when there is no memory for the handle. */
WEND_PUBLIC struct Wend *wend_plan(const char *name, const char *text, size_t length);
/** The same of a route that differs from the text in `count` words such as "segments.field.length=66 m" or
 * "runs.feeder.cable.size=6 mm2", set before it is read. Its documents say that they are not those of the text: each
 * has a warning, and the job's title begins with those words. NULL for `sets` is none. */
WEND_PUBLIC struct Wend *wend_plan_changed(const char *name, const char *text, size_t length, const char *const *sets,
                                           int count);
/** wend_plan() of a survey that has not reached the far end yet: as if the route said `complete: no`, so that its
 * verdict is never WEND_PASS. */
WEND_PUBLIC struct Wend *wend_plan_so_far(const char *name, const char *text, size_t length);
/** What a plan is wanted for. The less, the less work and memory it takes; what is decided and what is warned of is the
 * same. */
enum WendWanted {
    WEND_WANT_DOCUMENTS = 0, /**< all there is */
    WEND_WANT_ORDER = 1,     /**< the verdict, and parts for wend_order() */
    WEND_WANT_VERDICT = 2    /**< the verdict with its text, what is open, warnings, diagnostics, wend_check_json() */
};
/** wend_plan_changed() of as much. The rest is not there: such a plan has no sheet mark, no document, answer, day or
 * difference, no names to ask by, and for its verdict alone no order; a price list is read for what is wrong with it.
 * Plan again for those. */
WEND_PUBLIC struct Wend *wend_plan_wanted(enum WendWanted wanted, const char *name, const char *text, size_t length,
                                          const char *const *sets, int count);
WEND_PUBLIC void wend_free(struct Wend *wend);
WEND_PUBLIC enum WendStatus wend_status(const struct Wend *wend);
WEND_PUBLIC const struct WendDiagnostics *wend_diagnostics(const struct Wend *wend);

WEND_PUBLIC enum WendVerdict wend_verdict(const struct Wend *wend);
/** Why, in words: "every check that applies was made and passes", "capacity fails on feeder". */
WEND_PUBLIC const char *wend_verdict_text(const struct Wend *wend);
/** What every document that is made of this plan, with these prices and labour figures, carries: "1A2B-3C4D". */
WEND_PUBLIC const char *wend_sheet_mark(const struct Wend *wend);
/** The checks that matter and could not be made, each with what would settle it; also of a plan that fails. */
WEND_PUBLIC int wend_open_count(const struct Wend *wend);
WEND_PUBLIC const char *wend_open_text(const struct Wend *wend, int index);
/** What the plan warns of. */
WEND_PUBLIC int wend_warning_count(const struct Wend *wend);
WEND_PUBLIC const char *wend_warning_text(const struct Wend *wend, int index);

/** What became of the route, and every diagnostic on it, on its price list and on its labour figures, as one JSON
 * object: file, status, verdict, verdict-text, open, diagnostics. `file` is what it calls the route. Free with
 * wend_text_free(); NULL without memory for it. */
WEND_PUBLIC char *wend_check_json(const struct Wend *wend, const char *file);

/** The plain name of the price list that the route says lies beside it; "" when there is none. */
WEND_PUBLIC const char *wend_prices_name(const struct Wend *wend);
/** Prices the parts by the price list in `text` (`length` bytes, UTF-8; not kept after the call): documents asked for
 * from then on hold prices. A list that is wrong leaves no plan, and the status is WEND_INPUT_WRONG. Gives the status.
 * Without this call the parts say that nothing is priced. Does nothing without a plan. */
WEND_PUBLIC enum WendStatus wend_price(struct Wend *wend, const char *text, size_t length);
/** Of the price list that was handed in. */
WEND_PUBLIC const struct WendDiagnostics *wend_prices_diagnostics(const struct Wend *wend);

/** The plain name of the labour figures that the route says lie beside it; "" when there are none. */
WEND_PUBLIC const char *wend_labour_name(const struct Wend *wend);
/** Takes labour figures (`length` bytes, UTF-8; not kept after the call): wend_day() and papers go by them from then
 * on. Figures that are wrong leave no plan, and the status is WEND_INPUT_WRONG. Gives the status. */
WEND_PUBLIC enum WendStatus wend_labour(struct Wend *wend, const char *text, size_t length);
/** Of the labour figures that were handed in. */
WEND_PUBLIC const struct WendDiagnostics *wend_labour_diagnostics(const struct Wend *wend);
/** The file of labour figures that the program has of its own, as a start: common practice, no source. */
WEND_PUBLIC struct WendBytes wend_labour_built_in(void);

enum WendDocument {
    WEND_PLAN_XML = 0,
    WEND_DIAGRAM_SVG = 1,
    WEND_PARTS_CSV = 2,
    WEND_SUMMARY_TEXT = 3,        /**< all that was decided, 80 columns */
    WEND_SUMMARY_TEXT_COLOUR = 4, /**< the same with terminal colours */
    WEND_BRIEF_HTML = 5,          /**< this and those after it are made by templates, see wend_use_templates() */
    WEND_PARTS_HTML = 6,
    WEND_DESIGN_HTML = 7,
    WEND_TEST_HTML = 8,
    WEND_PACK_HTML = 9,
    WEND_PLAN_JSON = 10,     /**< the figures of the plan.xml under the same names, see routes/plan-format.md */
    WEND_CARD_HTML = 11,     /**< what is true of every job */
    WEND_NARROW_SVG = 12,    /**< the diagram for a phone, 360 dots wide, a segment under the other */
    WEND_READINGS_HTML = 13, /**< what was measured against the plan; only of a route with `readings` */
    WEND_AS_LAID_HTML = 14,  /**< where it lies; only of a route with an `as-laid` */
    WEND_DOCUMENT_COUNT
};
/** A document, made on demand; data is NULL when there is no plan, when a paper could not be made, and when any
 * allocation failed while it was made, in libxml2 and libxslt too: a document is whole or not there. */
WEND_PUBLIC struct WendBytes wend_document(struct Wend *wend, enum WendDocument document);
/** Whether the plan has it: the last two are made only of a route that says what was measured, or laid. */
WEND_PUBLIC bool wend_has_document(const struct Wend *wend, enum WendDocument document);
/** The decision in about twenty lines of 80 columns, the verdict last. `papers` is what the caller has to say of the
 * files that it wrote; `colour` adds terminal colours. */
WEND_PUBLIC struct WendBytes wend_decision(struct Wend *wend, const char *papers, bool colour);
/** Why a paper could not be made, once one was asked for. */
WEND_PUBLIC const struct WendDiagnostics *wend_papers_diagnostics(const struct Wend *wend);

/** The languages that the crew's papers can be in, by code (ISO 639-1): "en", "pl"; "" out of range. */
WEND_PUBLIC const char *wend_language(int index);
/** Makes the crew's papers, WEND_DIAGRAM_SVG, WEND_NARROW_SVG, WEND_BRIEF_HTML, WEND_CARD_HTML, and those of a built
 * job, in that language from then on; until then they are in English. All other documents, the pack among them, stay
 * English, which governs. False, with nothing changed, for a code that wend_language() does not give. */
WEND_PUBLIC bool wend_use_language(struct Wend *wend, const char *code);

/* ---- templates of one's own ---- */

/** A file that the HTML papers are made with. */
struct WendTemplate {
    const char *name; /**< of one of the built-in files: "brief.xsl", "house.css" ... */
    const char *path; /**< what diagnostics call it; `name` for NULL */
    const char *text; /**< UTF-8 */
    size_t length;
};
/** The built-in files, as a start for one's own; false out of range. */
WEND_PUBLIC bool wend_template(int index, struct WendTemplate *out);

/** Files that stand in place of the built-in ones. */
struct WendTemplates;
/** Takes `count` files, which are not kept after the call, and checks them. */
WEND_PUBLIC struct WendTemplates *wend_templates(const struct WendTemplate *files, int count);
WEND_PUBLIC void wend_templates_free(struct WendTemplates *templates);
/** WEND_PASSES, or WEND_INPUT_WRONG when a file is wrong. */
WEND_PUBLIC enum WendStatus wend_templates_status(const struct WendTemplates *templates);
WEND_PUBLIC const struct WendDiagnostics *wend_templates_diagnostics(const struct WendTemplates *templates);
/** Makes the papers of this plan with them (NULL: with the built-in ones). They must stay until `wend` is freed. With
 * files that are wrong no paper is made. */
WEND_PUBLIC void wend_use_templates(struct Wend *wend, const struct WendTemplates *templates);

/* ---- questions ---- */

/** The answer to a question about a plan; it belongs to the struct Wend that was asked. */
struct WendAnswer;
/** Every size tried for the power run named `run` (for all of them with ""), with each protective conductor that the
 * cable allows. `growth_percent` over 0, to 1000, also asks which size would do with every load that much larger. */
WEND_PUBLIC const struct WendAnswer *wend_options(struct Wend *wend, const char *run, double growth_percent);
/** The working of the figure behind a check, such as "drop", or of one stretch of it, such as "capacity:loft", for the
 * run named `run` (for all that have it with ""). */
WEND_PUBLIC const struct WendAnswer *wend_explain(struct Wend *wend, const char *check, const char *run);
/** What to measure again: every assumption that has another plausible value, planned with it, by what that changes. */
WEND_PUBLIC const struct WendAnswer *wend_decides(struct Wend *wend);
/** How many metres more of each segment, and how many amperes more on each run, the plan's cables and devices bear
 * before a check fails, and which. */
WEND_PUBLIC const struct WendAnswer *wend_reach(struct Wend *wend);
/** That of the plan; WEND_INPUT_WRONG when there is no plan or what was asked for is not in it. */
WEND_PUBLIC enum WendStatus wend_answer_status(const struct WendAnswer *answer);
/** The answer, 80 columns; data is NULL without one. */
WEND_PUBLIC struct WendBytes wend_answer_text(const struct WendAnswer *answer);
/** What is wrong with the question; the printed form also says what may be asked. */
WEND_PUBLIC const struct WendDiagnostics *wend_answer_diagnostics(const struct WendAnswer *answer);

enum WendDiffForm { WEND_DIFF_TEXT = 0, WEND_DIFF_CSV = 1, WEND_DIFF_JSON = 2 };
/** What changed from the plan `old` to the plan `wend`: cable, device, lengths, drop, checks that have another result,
 * parts to fetch and to bring back. As text in about ten lines of 80 columns. It belongs to `wend`; data is NULL unless
 * both have a plan. */
WEND_PUBLIC struct WendBytes wend_diff(const struct Wend *old, struct Wend *wend, enum WendDiffForm form);

enum WendDayForm { WEND_DAY_TEXT = 0, WEND_DAY_JSON = 1, WEND_DAY_ICALENDAR = 2 };
struct WendDay {
    int hands;          /**< 1 to 4; 0: as the labour figures say */
    unsigned long seed; /**< of the simulation, to 4294967295 */
    const char *date;   /**< of the first day, as 2026-05-14; for a calendar alone */
};
/** The work of the plan by the labour figures that were handed in, else by the program's own: an order of work, a bound
 * that no order beats, how likely it ends within the day. It belongs to `wend`. Data is NULL without a plan and where
 * what is asked for cannot be: other hands than those, a calendar without a date, an order of work or the times. */
WEND_PUBLIC struct WendBytes wend_day(struct Wend *wend, const struct WendDay *day, enum WendDayForm form);

/** Whether the labour figures that were handed in have rates, so that there is a quotation. */
WEND_PUBLIC bool wend_quotes(const struct Wend *wend);
/** The quotation sheet as HTML: labour, digger, spoil and parts by the user's own rates and prices; what is not in its
 * total is named. Data is NULL without rates, and where a paper could not be made. */
WEND_PUBLIC struct WendBytes wend_quotation(struct Wend *wend);

/** What was measured, the route's `readings`, held against the plan: for each reading what was expected at the cable's
 * temperature, its limit, what is to be thought of it with the meter's error counted against it, and what may have made
 * it so. In the same forms. */
WEND_PUBLIC struct WendBytes wend_readings(struct Wend *wend, enum WendDiffForm form);
/** WEND_PASS: all that are due were taken and fit, and so does the plan; WEND_OPEN: none is past a limit, but one is
 * missing, not as planned, or passes within the meter's error only; WEND_FAIL. */
WEND_PUBLIC enum WendVerdict wend_readings_verdict(const struct Wend *wend);

/** What may be asked for by name: the runs, and the checks, "bend" for all of its kind and "bend:gable" for one. */
WEND_PUBLIC int wend_run_count(const struct Wend *wend);
WEND_PUBLIC const char *wend_run_name(const struct Wend *wend, int index);
WEND_PUBLIC int wend_check_count(struct Wend *wend);
WEND_PUBLIC const char *wend_check_name(struct Wend *wend, int index);

/* ---- many routes as one order ---- */

/** Lets go of all of a route that an order does not ask for, once it was priced: a thousand of them fit where a hundred
 * plans do. Its status stays, and nothing else is to be asked of it: there is no plan, no document and no diagnostics
 * any more. Does nothing for a route that is wrong. */
WEND_PUBLIC void wend_keep_order(struct Wend *wend);

/** Merged, rounded to whole packs once, split by job again. It borrows from the routes, which must stay until it is
 * freed, as must the array that names them. */
struct WendOrder;

/** Merges `count` routes (at least one). `text` is an order file (`length` bytes, not kept), or NULL: no buyer and no
 * seller. `date`, unless "", is the day the order is placed, a day of the calendar as 2026-05-14; it overrides the
 * order file's own. No clock is read. NULL only when there is no memory for the handle. */
WEND_PUBLIC struct WendOrder *wend_order(struct Wend *const *routes, int count, const char *text, size_t length,
                                         const char *date);
WEND_PUBLIC void wend_order_free(struct WendOrder *order);
/** WEND_CHECK_FAILS when a plan fails a check, WEND_INPUT_WRONG when a route has no plan, or none that may be ordered
 * (WEND_WANT_VERDICT), or the order file is wrong. */
WEND_PUBLIC enum WendStatus wend_order_status(const struct WendOrder *order);
/** The worst of its plans'. */
WEND_PUBLIC enum WendVerdict wend_order_verdict(const struct WendOrder *order);
/** Of the order file and the date. */
WEND_PUBLIC const struct WendDiagnostics *wend_order_diagnostics(const struct WendOrder *order);
/** True for a day of the calendar, written as 2026-05-14. */
WEND_PUBLIC bool wend_is_date(const char *text);

/** As wend_prices_name(), wend_price() and wend_prices_diagnostics() of a route, for the price list that the order file
 * names. Where it prices an article, the lists that the routes were priced by do not count. */
WEND_PUBLIC const char *wend_order_prices_name(const struct WendOrder *order);
WEND_PUBLIC enum WendStatus wend_order_price(struct WendOrder *order, const char *text, size_t length);
WEND_PUBLIC const struct WendDiagnostics *wend_order_prices_diagnostics(const struct WendOrder *order);

/** A name for its files, without ending: "PO-1042.order" for the reference "PO 1042", what a file name should not hold
 * being "-"; "order" without a reference. */
WEND_PUBLIC const char *wend_order_name(const struct WendOrder *order);
/** The jobs in order, each by the name that it has in the documents. */
WEND_PUBLIC int wend_order_job_count(const struct WendOrder *order);
WEND_PUBLIC const char *wend_order_job_name(const struct WendOrder *order, int index);
WEND_PUBLIC enum WendVerdict wend_order_job_verdict(const struct WendOrder *order, int index);
WEND_PUBLIC const char *wend_order_job_verdict_text(const struct WendOrder *order, int index);
/** Articles; the packs of all of them, and the packs that the jobs would buy each for itself. */
WEND_PUBLIC int wend_order_line_count(const struct WendOrder *order);
WEND_PUBLIC long wend_order_packs(const struct WendOrder *order);
WEND_PUBLIC long wend_order_packs_apart(const struct WendOrder *order);
/** Sums, one a currency: how many lines are in it, the amount, and the amount in coin where that differs, else "". */
WEND_PUBLIC int wend_order_total_count(const struct WendOrder *order);
WEND_PUBLIC int wend_order_total_lines(const struct WendOrder *order, int index);
WEND_PUBLIC const char *wend_order_total_currency(const struct WendOrder *order, int index);
WEND_PUBLIC const char *wend_order_total_amount(const struct WendOrder *order, int index);
WEND_PUBLIC const char *wend_order_total_in_coin(const struct WendOrder *order, int index);
/** Articles that are in no sum though there is a price list, and which lists were not read; "" when all were. */
WEND_PUBLIC int wend_order_unpriced_count(const struct WendOrder *order);
WEND_PUBLIC const char *wend_order_prices_note(const struct WendOrder *order);

enum WendOrderDocument {
    WEND_ORDER_CSV = 0, /**< RFC 4180, for a counter or a spreadsheet */
    WEND_ORDER_XML = 1, /**< OASIS UBL 2.1 Order */
    WEND_ORDER_JSON = 2,
    WEND_ORDER_DOCUMENT_COUNT
};
/** A document, made on demand; data is NULL when there is no order, no memory, or no date for the XML. */
WEND_PUBLIC struct WendBytes wend_order_document(struct WendOrder *order, enum WendOrderDocument document);

/* ---- what the program knows ---- */

/** The reference manual of the route file as text; free with wend_text_free(). NULL without memory. */
WEND_PUBLIC char *wend_manual(void);
/** The route language as JSON: what each key takes, what keys ask of each other, in which order one asks on site
 * (routes/route-format.md says what is in it); and as a JSON Schema (2020-12), which refuses no good route. Free with
 * wend_text_free(); NULL without memory. */
WEND_PUBLIC char *wend_language_json(void);
WEND_PUBLIC char *wend_schema(void);

/** A route file as it is written, whatever its keys, as one JSON object: "tree", a node, left out where the text is no
 * YAML that a route may be, and "diagnostics" as wend_check_json() has them. A node has "line" and "column", and one of
 * "text", "items" (a list of nodes) and "keys" (a list of objects, each with "key", "line", "column" and "value", a
 * node); a node that was refused has none of them. As before. */
WEND_PUBLIC char *wend_tree_json(const char *text, size_t length);

/** A question of a survey, in the order in which one walks. Every text is "" where there is none. */
struct WendQuestion {
    const char *card;     /**< "supply", "load", "segment", "far end", "job" */
    const char *in;       /**< mapping that the answer stands in: "runs.NAME.load", "segments[].duct" */
    const char *key;      /**< "power" */
    const char *label;    /**< in few words, for a form */
    const char *question; /**< as one asks aloud */
    const char *help;     /**< what the key is */
    const char *example;  /**< how it is written: "12.4 m" */
    const char *unit;     /**< that one reads it in: "m" */
    const char *when;     /**< "far-end=island": another answer, or one of several, that it is asked after; "=-": when
                             that was left out */
    bool required;
    int word_count; /**< words that it takes, see wend_question_word() */
};
/** False behind the last, and where it is not asked of segments run that way ("" for all ways). */
WEND_PUBLIC bool wend_question(int index, const char *way, struct WendQuestion *out);
WEND_PUBLIC int wend_question_count(void);
WEND_PUBLIC const char *wend_question_word(int index, int word);
WEND_PUBLIC const char *wend_question_meaning(int index, int word);
/** What is taken where it is left open, as "600 mm" or in words; free with wend_text_free(). NULL when nothing is. */
WEND_PUBLIC char *wend_question_default(int index, const char *way);

/** What a diagnostic may be: its name ("" behind the last), its text with {} for each word that goes into it, and
 * whether it is a warning. */
WEND_PUBLIC const char *wend_message_name(int index);
WEND_PUBLIC const char *wend_message_text(int index);
WEND_PUBLIC bool wend_message_warns(int index);

/** The checks that are made, by name: "capacity"; "" out of range. */
WEND_PUBLIC const char *wend_check_kind(int index);
/** What a check of that name is called on paper and which rule it goes by; free with wend_text_free(). NULL when there
 * is none, and without memory. */
WEND_PUBLIC char *wend_check_kind_text(const char *name);

/** The published tables that figures are taken from: how many, and a line on one of them, to be freed with
 * wend_text_free(); NULL without memory. */
WEND_PUBLIC int wend_table_count(void);
WEND_PUBLIC char *wend_table_line(int index);
/** What the table is called: "4E4A". */
WEND_PUBLIC const char *wend_table_name(int index);
/** The figures of the tables of that name with their source, as text or as CSV; free with wend_text_free(). NULL when
 * there is none, and without memory. */
WEND_PUBLIC char *wend_table_text(const char *name, bool csv);
/** What is known of one cable, "BS5467" and "3x6"; as before. */
WEND_PUBLIC char *wend_cable_text(const char *kind, const char *size);
/** The same two as one JSON object each. */
WEND_PUBLIC char *wend_table_json(const char *name);
WEND_PUBLIC char *wend_cable_json(const char *kind, const char *size);
/** A kind of cable by its word of the route file: "BS5467"; "" behind the last. */
WEND_PUBLIC const char *wend_cable_kind(int index);
WEND_PUBLIC void wend_text_free(char *text);
/** Whether a reader takes two names for one: they differ in nothing but blanks or characters that are not seen. */
WEND_PUBLIC bool wend_looks_same(const char *a, const char *b);
/** The one of `count` words that a slip of the pen could have made into `written`; "" when none is near. */
WEND_PUBLIC const char *wend_nearest(const char *written, const char *const *words, size_t count);

/** What a word that people type (SWA, PME, Ze, loft) is in the language: "is system: TN-C-S under supply"; "" where it
 * is not known. */
WEND_PUBLIC const char *wend_spoken(const char *word);

/** What kept a document from being made though there was memory: libxml2 or libxslt, which XML and papers are made with
 * and which are loaded for the first of those, is not there. "" when nothing did. */
WEND_PUBLIC const char *wend_missing(void);

/* ---- for a program that owns its process ---- */

/** For a program that would rather end where libxml2 and libxslt find no memory than have no document: called once,
 * before anything else; `give_up` must not return. Without it a document is made to its end from a reserve of 4 MiB
 * and not given out. */
WEND_PUBLIC void wend_guard_memory(void (*give_up)(void));
/** Frees what libxml2 and libxslt keep for the whole process. Call it last of all, and only where nothing else in the
 * process uses them. */
WEND_PUBLIC void wend_end(void);

#ifdef __cplusplus
}
#endif

#endif
