/** What the files of the library know of each other. */
#ifndef WEND_LIBRARY_PRIVATE_H
#define WEND_LIBRARY_PRIVATE_H

#include "base/diag.h"
#include "documents/documents.h"
#include "library_stages.h"
#include "read/read.h"
#include "wend/wend.h"

struct WendDiagnostics {
    struct Diag *diag; /**< NULL: nothing was read yet */
    struct Arena *arena;
    struct Bytes source;
    const char *file;  /**< its own name; NULL: as whoever prints it calls it */
    const char *after; /**< what the printed form adds; NULL nothing */
};
/** Of a text that is about to be read. */
struct WendDiagnostics diagnostics_new(struct Arena *arena, struct Bytes source);
/** NULL where nothing was read. */
const struct WendDiagnostics *diagnostics_shown(const struct WendDiagnostics *diagnostics);

struct WendTemplates {
    struct Arena *arena;
    struct Template *files;
    int count;
    bool whole; /**< memory sufficed to look at them */
    struct WendDiagnostics told;
};

/** Names that may be asked for, each once. */
struct Names {
    const char **list; /**< NULL until they were gathered, or without memory */
    int count;
};

/** One route in memory. Everything but itself lives in `arena`. */
struct Wend {
    struct Arena *arena;
    struct WendDiagnostics told;
    struct ReadChanges changes;
    enum PlanExtent extent;          /**< how much of a plan it was asked for */
    const struct Plan *plan;         /**< NULL when the route is wrong or memory failed */
    const struct PartsList *parts;   /**< NULL also of PLAN_FOR_VERDICT */
    const struct WendTemplates *own; /**< the caller's; NULL none */
    enum Language language;          /**< of what the crew reads */
    const struct Decisives *decided; /**< NULL until it is asked for */
    bool papers_made;                /**< all at once, when the first is asked for */
    struct Papers papers;
    struct WendDiagnostics papers_told;
    struct WendDiagnostics prices_told;
    const char *prices_name;        /**< as the route names it; NULL until one was handed in */
    const struct PriceList *prices; /**< NULL until a good one was handed in */
    struct WendDiagnostics labour_told;
    const char *labour_name;     /**< as the route names them; NULL until some were handed in */
    const struct Labour *labour; /**< NULL until good figures were handed in */
    struct Names check_names;
    bool kept_for_order; /**< the plan has gone */
};

struct WendOrder {
    struct Arena *arena;
    struct WendDiagnostics told;
    const struct Order *order;    /**< NULL without a good order file */
    const struct OrderList *list; /**< NULL when something is wrong */
    const char *date;
    struct Wend *const *routes; /**< the caller's */
    int route_count;
    struct WendDiagnostics prices_told;
};

/** An empty list with room for `most` names. */
struct Names names_new(struct Wend *wend, int most);
/** Adds a name that is not there yet. */
void names_add(struct Names *names, const char *name);
/** The checks of all runs, counted one by one. */
int plan_checks_in_all(const struct Plan *plan);

/** The plan, however much of it there is; NULL unless the status is WEND_PASSES or WEND_CHECK_FAILS. */
const struct Plan *library_plan(const struct Wend *wend);

/** What is made of a survey; both NULL when nothing can be planned, and without memory. */
struct Staged {
    const struct Plan *plan;
    const struct PartsList *parts; /**< bought, not priced; NULL also of PLAN_FOR_VERDICT */
};
struct Staged library_stages(struct Arena *arena, struct Diag *diag, const struct Edition *edition,
                             const struct Survey *survey, const char *route);
/** As much of it as is asked for. */
struct Staged library_stages_of(enum PlanExtent extent, struct Arena *arena, struct Diag *diag,
                                const struct Edition *edition, const struct Survey *survey, const char *route);

/** The same of a route with ranges: it holds for all of them, or it is reported why there is no plan. */
struct Staged library_ranges(struct Wend *wend, const struct Survey *survey, const char *name);

/** The route with something changed, in memory of its own: of another plan nothing is kept but what is asked of it. */
struct Replanned {
    enum PlanExtent extent;
    struct Arena *arena;
    struct Diag *diag; /**< what it reports is not for the plan */
    struct Staged staged;
};
/** False without memory; replan_end() is due all the same. */
bool replan_begin(enum PlanExtent extent, struct Replanned *out);
/** `survey`, in replanned memory, by the edition that the plan was made by; NULL plans nothing. */
void replan_survey(const struct Wend *wend, const struct Survey *survey, struct Replanned *out);
/** The route of `wend` read with those changes in place of its own; false where it cannot be read so. */
bool replan_set(const struct Wend *wend, struct ReadChanges changes, struct Replanned *out);
/** Why nothing could be planned; "" when nothing is known of that. */
const char *replan_fault(struct Replanned *replanned);
/** Where memory lacked for it, it counts as lacking for the plan: what was asked must not read as answered. */
void replan_end(const struct Wend *wend, struct Replanned *replanned);

/** The day by labour figures that were handed in; NULL without those. */
const struct Work *library_own_day(struct Wend *wend);

/** Which assumptions decide, by planning each at its other value. */
struct Decisives library_decisives(struct Wend *wend);
/** The same, found once for all that asks; NULL without memory. */
const struct Decisives *library_decided(struct Wend *wend);

/** Other ducts and prices of the sizes of one run, of all power runs with -1. */
struct OptionsMore library_options_more(struct Wend *wend, int run);

/** How much more of each segment and load passes, by planning with more and more of it. */
struct Reaches library_reaches(struct Wend *wend);

/** One of the HTML papers. */
struct Bytes library_paper(struct Wend *wend, enum Paper paper);

/** A copy in `arena` of a caller's bytes; none for NULL. */
struct Bytes library_copy(struct Arena *arena, const char *text, size_t length);
/** The route language as JSON: what every key takes, what keys ask of each other, in which order one asks on site. */
struct Bytes language_json(struct Arena *arena);
/** A route file as it is written, whatever its keys, with what its YAML earns (all of that goes to `diag`). */
struct Bytes tree_json(struct Arena *arena, struct Diag *diag, struct Bytes source);
/** The way to what each report of a route file is about; NULL where its text is no YAML, or memory failed. */
const struct KeyPath *key_paths(struct Arena *arena, struct Diag *diag, struct Bytes source);
/** The same as a JSON Schema (2020-12). */
struct Bytes language_schema(struct Arena *arena);

/** A text that outlives its arena, malloc()ed; NULL without memory. */
char *library_keep(struct Arena *arena, const char *text);
/** What a caller may give as NULL. */
const char *library_text(const char *text);
struct WendBytes library_bytes(struct Bytes bytes);

#endif
