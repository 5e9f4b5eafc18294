/** Documents made from a plan. Each writer builds one whole document in memory and touches no file.
 * The bytes live in `arena`; data is NULL when memory failed. Same plan, same bytes. */
#ifndef WEND_DOCUMENTS_H
#define WEND_DOCUMENTS_H

#include "base/base.h"
#include "base/diag.h"
#include "buying/buying.h"
#include "buying/order.h"
#include "buying/order_list.h"
#include "labour/work.h"
#include "plan/plan.h"
#include "takeoff/parts.h"
#include "words/words.h"

/** plan.xml as plan-format.md says; valid against templates/plan.rng. */
struct Bytes document_plan_xml(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts);
/** The same; `mark` is its document_mark(). */
struct Bytes document_plan_xml_marked(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                      const char *mark);
/** The same as JSON: numbers as they are in plan.xml. */
struct Bytes document_plan_json(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts);
/** Reports, and the file that they are of. */
struct Told {
    struct Diag *diag; /**< NULL: none */
    const char *file;
    const struct KeyPath *paths; /**< of each report; NULL: none are known */
};
/** What became of a route file (`plan` NULL: no plan) and what was told of it, as JSON. */
struct Bytes document_check_json(struct Arena *arena, const char *file, int status, const struct Plan *plan,
                                 const struct Told *told, int count);
/** The run diagram, SVG 1.1. `parts` may be NULL: the fixings are then not counted on it. */
struct Bytes document_diagram_svg(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                  enum Language language);
/** The same for a phone: 360 dots wide, a segment under the other. */
struct Bytes document_narrow_svg(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                 enum Language language);
/** The parts list, RFC 4180, UTF-8; `mark` is that of its plan. */
struct Bytes document_parts_csv(struct Arena *arena, const struct PartsList *parts, enum Verdict verdict,
                                const char *mark);
/** An order of many jobs' parts, RFC 4180, UTF-8. `order` may be NULL: no order file. */
struct Bytes document_order_csv(struct Arena *arena, const struct Order *order, const struct OrderList *list);
/** The same as JSON. */
struct Bytes document_order_json(struct Arena *arena, const struct Order *order, const struct OrderList *list);
/** The same as an OASIS UBL 2.1 Order. The schema wants at least one line, a reference and a date. */
struct Bytes document_order_ubl(struct Arena *arena, const struct Order *order, const struct OrderList *list);
/** The summary for a terminal, 80 columns; `colour` adds escape sequences. */
struct Bytes document_summary_text(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                   bool colour);

/** What of a plan changes with one of its assumptions at the other value that it may well have. */
struct Decisive {
    int assumption;       /**< index into Plan.assumptions; -1: one end of a range is meant */
    int range;            /**< then index into Survey.ranges */
    const char *at;       /**< and that end: "18 m" */
    bool planned;         /**< false: nothing can be planned then, and the rest is not set */
    enum Verdict verdict; /**< of the plan then */
    bool verdict_changes, cable_changes, device_changes;
    int cable_run, device_run; /**< of those changes the first run, and what it has then */
    double size_mm2, rating_a;
    int order_lines;          /**< of the order that come, go or change by more than one pack */
    struct Settings settings; /**< that it was tried with */
};
/** Those that change something, what changes most first; `tried` had another value. */
struct Decisives {
    int tried, count;
    int ends; /**< of those tried: ends of ranges */
    const struct Decisive *list;
    int nameless_count;
    const int *nameless; /**< indexes into Plan.assumptions: no key can name them, so they were not tried */
};
/** Which assumption, its other value, and what that changes; by its key for who may survey it, else in words. */
const struct Say *decisive_said(struct Arena *arena, const struct Plan *plan, const struct Decisive *decisive,
                                bool by_key);

/** What must be measured again: those that decide, what changes most first, and in a line how many do not. */
struct Bytes document_decides_text(struct Arena *arena, const struct Plan *plan, const struct Decisives *decisives);

/** How much more of one thing a plan bears, its cables and devices as they are. */
struct Reach {
    int segment; /**< whose length is meant; -1: the load of `run` */
    int run;
    double now, more;        /**< metres, or amperes of design current; `more` rounded down and planned with */
    bool ends;               /**< false: no check fails up to `more`, and nothing is known beyond */
    const struct Say *check; /**< title of the check that ends it; NULL: nothing could be planned there */
};
struct Reaches {
    int count;
    const struct Reach *list;
    int left_out; /**< segments that were not looked at, there being too many */
};
struct Bytes document_reach_text(struct Arena *arena, const struct Plan *plan, const struct Reaches *reaches);

/** The day: how long, how likely, what to settle before, who does what when; in 80 columns, as JSON, and for a calendar
 * on and from that date (RFC 5545). Of the last data is NULL too where there is no order of work or a time is not
 * known.
 */
struct Bytes document_day_text(struct Arena *arena, const struct Plan *plan, const struct Work *work);
struct Bytes document_day_json(struct Arena *arena, const struct Plan *plan, const struct Work *work);
struct Bytes document_day_ics(struct Arena *arena, const struct Plan *plan, const struct Work *work, const char *date);
/** The readings of the file held against the plan: measured, expected, limit, what is thought of it and what may have
 * made it so; and all of it as CSV and JSON. */
struct Bytes document_readings_text(struct Arena *arena, const struct Plan *plan);
struct Bytes document_readings_csv(struct Arena *arena, const struct Plan *plan);
struct Bytes document_readings_json(struct Arena *arena, const struct Plan *plan);

/** A plan and what it orders. */
struct DiffSide {
    const struct Plan *plan;
    const struct PartsList *parts;
};
/** What changed from one plan to another of the same job, what to fetch for it and what can be brought back: in few
 * lines, and all of it as CSV and JSON. */
struct Bytes document_diff_text(struct Arena *arena, const struct DiffSide *old, const struct DiffSide *now);
struct Bytes document_diff_csv(struct Arena *arena, const struct DiffSide *old, const struct DiffSide *now);
struct Bytes document_diff_json(struct Arena *arena, const struct DiffSide *old, const struct DiffSide *now);

/** The decision in about twenty lines, the verdict last; `papers` says what was written and where, "" nothing. */
struct Bytes document_decision_text(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                    const struct Decisives *decisives, const char *papers, bool colour);

/** What a plan says, in words and plain characters. */
const char *document_words(struct Arena *arena, const struct Say *said);

/** Where a figure is from, and how sure it is. */
struct KnownSource {
    const char *standard, *table, *trust;
};
/** A published table; its cells as CSV without a comma in any of them, a line of heads first. */
struct KnownTable {
    struct KnownSource source;
    const char *title, *cells;
};
/** In columns with its source above, or as CSV with it in each row. */
const char *document_table_text(struct Arena *arena, const struct KnownTable *table, bool csv);
struct Bytes document_tables_json(struct Arena *arena, const struct KnownTable *tables, int count);
/** One thing known of a cable: a number with its unit, or where there is a `name`, that. */
struct KnownFigure {
    const struct Say *what;
    double value;
    enum Unit unit;
    const char *name; /**< "20S"; NULL for a number */
    struct KnownSource source;
};
struct KnownCable {
    const struct Say *heading;
    const struct KnownFigure *figures;
    int count;
    const struct Say *unknown; /**< what no table here says of it; NULL nothing */
    const struct Say *not_for; /**< what it cannot be planned for; NULL nothing */
    const struct Say *remark;
};
const char *document_cable_text(struct Arena *arena, const struct KnownCable *cable);
struct Bytes document_cable_json(struct Arena *arena, const struct KnownCable *cable);

/** What would become of a plan if every load were larger. */
struct Growth {
    double percent;
    const struct Plan *plan; /**< with the devices as surveyed; NULL when none can be designed */
    /** With the smallest standard devices that carry it; NULL when none can be designed. */
    const struct Plan *any_device;
    const char *fault; /**< why not; "" otherwise */
};
/** The sizes that were tried for a power run, side by side, in 80 columns; for all power runs with `run` -1. `growth`
 * may be NULL: not asked. */
struct Bytes document_options_text(struct Arena *arena, const struct Plan *plan, int run, const struct Growth *growth);

/** What the order comes to with one size of a run. */
struct SizeCost {
    int run;
    double size_mm2;
    const struct PartsList *parts; /**< priced; NULL: nothing could be planned */
};
/** A size that fails by ducts alone, and the least duct with which no check fails; or the least duct for the size at
 * hand. */
struct DuctTrial {
    int run, segment;
    double size_mm2;
    bool fails_now; /**< the size fails in the duct as surveyed */
    double duct_mm;
};
struct OptionsMore {
    int cost_count;
    const struct SizeCost *costs;
    int duct_count;
    const struct DuctTrial *ducts;
};
/** What follows the sizes: other ducts, and what the order comes to with each size by the user's prices; "" for
 * neither. */
struct Bytes document_options_more_text(struct Arena *arena, const struct Plan *plan, const struct OptionsMore *more);

/** One figure to be explained: a check of a run, and a stretch where it is worked by stretches. */
struct Question {
    int run, check;               /**< indexes */
    const struct Rating *stretch; /**< with its working; NULL none */
};
/** The working of figures, step by step, in 80 columns. */
struct Bytes document_explain_text(struct Arena *arena, const struct Plan *plan, const struct Question *questions,
                                   int count);

/** "The checks are: load, capacity, ..." wrapped to 80 columns, each name made fit for a terminal. */
struct Bytes document_name_list(struct Arena *arena, const char *lead, const char *const *names, int count);

/** The papers that people work with: HTML, each one self-contained file that runs and fetches nothing. */
enum Paper {
    PAPER_BRIEF,    /**< for the crew leader and the second hand */
    PAPER_PARTS,    /**< for the counter and the van, by aisle */
    PAPER_DESIGN,   /**< for the designer and the inspector */
    PAPER_TEST,     /**< for the tester; no certificate */
    PAPER_PACK,     /**< all of those, with a list of contents */
    PAPER_CARD,     /**< for the crew to keep: what is true of every job */
    PAPER_READINGS, /**< for whoever writes the certificate's schedules; only where something was measured */
    PAPER_AS_LAID,  /**< for the owner and the next digger; only where something was laid */
    PAPER_COUNT
};

/** Whether a plan has it at all. */
bool paper_is_due(const struct Plan *plan, enum Paper paper);

/** A file that the papers are made with: a template (XSLT 1.0 over plan.xml) or the style sheet. */
struct Template {
    const char *name; /**< "brief.xsl" */
    const char *path; /**< what a fault calls it */
    struct Bytes bytes;
};
/** The built-in files. */
int template_count(void);
/** NULL out of range. */
const struct Template *template_at(int index);

/** Why a paper cannot be made: one report, and the file that it is of. */
struct PaperFault {
    struct Diag *diag;  /**< NULL: nothing is wrong */
    const char *file;   /**< what its printed form calls it */
    struct Bytes bytes; /**< of that file, for the lines shown */
};
/** What is wrong with templates that are to stand in place of built-in ones of the same name. Other names are an error.
 */
struct PaperFault templates_fault(struct Arena *arena, const struct Template *own, int count);

/** Bytes that stand in several documents, and are kept once. */
struct Pieces {
    int count; /**< 0 where something failed */
    const struct Bytes *pieces;
};
/** The drawing for a phone: its pieces, and with what its file begins in place of the first of them. */
struct SvgNarrow {
    struct Pieces papers;
    struct Bytes begins;
};
/** The drawings that stand in a page. */
struct PaperDrawings {
    struct Pieces sheets;
    struct SvgNarrow narrow;
};
struct Papers {
    struct Bytes pages[PAPER_COUNT];    /**< data is NULL where something failed */
    bool whole[PAPER_COUNT];            /**< else paper_whole() puts in what the page lacks */
    struct Bytes articles[PAPER_COUNT]; /**< pages in English whose articles the pack is put together from */
    struct PaperDrawings drawn[2];      /**< the crew's, and those in English */
    struct Bytes quotation;             /**< whole; data is NULL likewise, and without a day that has rates */
    struct Bytes diagram;               /**< document_diagram_svg(), which was drawn for them */
    const char *mark;                   /**< document_mark() */
    struct PaperFault fault;
};
/** All papers of a plan: the crew's in `language`, the others in English. Templates see plan.xml, what the papers print
 * under <papers> (templates/papers.rng), and the diagram and the style sheet under <print>; they reach no file and no
 * network, and a page that would run or fetch something is refused. Made between documents_memory_begin() and
 * documents_memory_end(). */
struct Papers document_papers(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                              enum Language language, const struct Template *own, int count);
/** What else papers show: the day on the brief, and a quotation where its labour figures have rates; what decides
 * before all that was assumed. Either may be NULL. */
struct PapersWith {
    const struct Work *work;
    const struct Decisives *decisives;
};
/** The same with those; paper_whole() gives each. */
struct Papers document_papers_with(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                   struct PapersWith with, enum Language language, const struct Template *own,
                                   int count);
/** A page with its drawings, and the pack with its papers, which are put in when it is asked for: they are most of it,
 * and stand in several. */
struct Bytes paper_whole(struct Arena *arena, struct Papers *papers, enum Paper paper);
/** document_narrow_svg(), which was drawn for them. */
struct Bytes paper_narrow(struct Arena *arena, const struct Papers *papers);
/** Eight hexadecimal digits in two groups that stand in every document made from the same plan: a digest of all that
 * plan.xml holds. NULL when memory failed. */
const char *document_mark(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts);

/** Loads libxml2 and libxslt and sets them up, once for the whole process; whatever writes XML or a paper begins with
 * it. False when they cannot be loaded. */
bool documents_begin(void);
/** Why they cannot; NULL unless it was tried in vain. */
const char *documents_missing(void);
/** Makes libxml2 call `give_up` (which must not return) instead of going on without memory. Call once, first, from a
 * program that owns the process; a library user leaves it and gets data == NULL instead. */
void documents_guard_memory(void (*give_up)(void));
/** Around the making of a document: libxml2 and libxslt survive a lack of memory in between. The first is false when
 * nothing can be made; the second tells whether no allocation of theirs failed: only then is the document whole. */
bool documents_memory_begin(void);
bool documents_memory_end(void);
/** Gives back what libxslt and libxml2 keep for the whole process. Call once, last, from a program that owns it. */
void documents_end(void);

#endif
