/* How the files of the cutting plan speak to each other.
 *
 *   cutting.c           the job as given -> kinds and classes, one search after another -> the plan
 *   cutting_kinds.c     pieces of one length into types, stock of one length into classes
 *   cutting_result.c    the bins as found -> the plan as given back
 *   cutting_case.c      one sum to be made least, with what earlier sums allow
 *   cutting_search.c    the tree: whole numbers of bins, then bins one by one, under a rising bound
 *   cutting_filling.c   every way worth trying to fill the bin of the longest piece
 *   cutting_bound.c     the lower bound of a node: columns made as they are needed
 *   cutting_lp.c        the linear programme of that bound
 *   cutting_knapsack.c  the most that one bin can be worth
 *   cutting_greedy.c    quick plans, from nothing or from the linear programme rounded down
 *   cutting_bins.c      a plan in the making, and the store of patterns
 *
 * A bin is a drum, a coil or an offcut; a class is all bins of one length and cost; a type is all pieces of one length;
 * a pattern is what one bin of a class is cut into. */
#ifndef WEND_CUTTING_PRIVATE_H
#define WEND_CUTTING_PRIVATE_H

#include "cutting.h"

enum { CUTTING_SIDES = 2 };

/* Larger than any sum that can come up. */
static const int64_t cutting_none = INT64_MAX;

struct CuttingClass {
    int length_mm;
    int most;    /* how many there are; no more than there are pieces */
    bool bought; /* pays by length in the first sum; the others are free there */
    int64_t cost;
    int64_t side[CUTTING_SIDES]; /* what a bin takes of each side limit */
};

/* One sum to be made least: bins so that every piece is cut, within the side limits. */
struct CuttingCase {
    int type_count;
    const int *length_mm; /* of each type, strictly falling */
    const int *wanted;    /* of each type, at least 1 */
    int pieces;           /* sum of wanted */
    int class_count;
    const struct CuttingClass *classes;
    int side_count;
    int64_t side_most[CUTTING_SIDES];
    int64_t
        mm_in_unit; /* millimetres of bought length in a unit of the cost, or of the first side limit if there is one */
    bool no_quick_plans; /* with both of these the search has the tree alone: slower, for the tests */
    bool no_programme;
    bool fills_first; /* every plan within the first side limit takes all of it, and each bought bin costs one */
};

/* ---- cutting_bins.c ---- */

/* A plan in the making. Room for as many bins and entries as there are pieces. */
struct CuttingBins {
    int count;
    int *class_index; /* of each bin */
    int *start;       /* of each bin, where its entries begin */
    int entries;
    int *type; /* of each entry */
    int *copies;
};

bool cutting_bins_make(struct Arena *arena, struct CuttingBins *bins, int pieces);
void cutting_bins_open(struct CuttingBins *bins, int class_index);
/* Into the bin opened last. */
void cutting_bins_put(struct CuttingBins *bins, int type, int copies);
int cutting_bins_end(const struct CuttingBins *bins, int bin);
void cutting_bins_copy(struct CuttingBins *to, const struct CuttingBins *from);
/* The cost of a plan, or cutting_none when it breaks a limit, overfills a bin or misses a piece. */
int64_t cutting_bins_cost(const struct CuttingBins *bins, const struct CuttingCase *problem, int *scratch);

/* Patterns once seen, kept for every node of the search. */
struct CuttingPattern {
    int class_index;
    int start; /* first entry in the pool's arrays */
    int entries;
};
struct CuttingPool {
    struct Arena *arena;
    int count, room;
    struct CuttingPattern *patterns;
    int used, entry_room;
    int *type; /* rising */
    int *copies;
};
/* Takes on the pattern whose copies of each type are given; -1 when memory failed. */
int cutting_pool_add(struct CuttingPool *pool, int class_index, int type_count, const int *copies_of_type);
/* The same, unless it is there already. */
int cutting_pool_new(struct CuttingPool *pool, int class_index, int type_count, const int *copies_of_type);
bool cutting_pool_same(const struct CuttingPool *pool, int pattern, int class_index, int type_count,
                       const int *copies_of_type);

/* ---- cutting_knapsack.c ---- */
struct CuttingItem {
    int type, length_mm, most;
    int shortest_mm; /* of this item and all after it */
    double worth, rate;
    double before; /* worth taken before this item */
    int take, best;
};
struct CuttingKnapsack {
    int count;
    struct CuttingItem *items;
    int64_t steps; /* since the start */
};
/* Items of positive worth, the best rate first. `wanted` and `worth` run over the types. */
void cutting_knapsack_load(struct CuttingKnapsack *knapsack, const struct CuttingCase *problem, const int *wanted,
                           const double *worth);
/* The most that `capacity_mm` can hold. Gives an upper bound of it that is never too low (exact but for rounding unless
 * more than `most_steps` would be needed). *found: something worth more than `floor` was found and stands in items'
 * best. */
double cutting_knapsack_most(struct CuttingKnapsack *knapsack, int capacity_mm, double floor, int64_t most_steps,
                             bool *found);

/* ---- cutting_lp.c ---- */
enum LpKind { LP_SURPLUS, LP_MISSING, LP_ROOM, LP_EMPTY, LP_SIDE_ROOM, LP_PATTERN };
enum LpPlace { LP_LOW, LP_HIGH, LP_BASIC };
struct LpColumn {
    enum LpKind kind;
    int index; /* row, class or pattern */
    enum LpPlace place;
    double cost, most;
    double saved, weight; /* for the choice of a pivot */
};
struct CuttingLp {
    const struct CuttingPool *pool;
    int rows, rows_room, type_rows, class_count, side_count;
    double *row_length_mm; /* of the type in each row */
    int *row_of_type;      /* -1: no such piece is left */
    double *side_of_class; /* class by class, CUTTING_SIDES each; in side units */
    double *cost_of_class;
    double side_unit[CUTTING_SIDES];
    int columns, column_room;
    struct LpColumn *column;
    double *limit;   /* right-hand side */
    double *eased;   /* the same, each a hair easier to meet, so that no two rows stop a pivot at once */
    double *inverse; /* of the basis, row by row */
    double *work;    /* another matrix of that size */
    int *basis;      /* column in each row */
    double *value;   /* of the basis, by the eased limits */
    double *truth;   /* by the limits themselves; set when a solution ends */
    double *price, *entering;
    int64_t effort;   /* figures worked out, for the search to take account of */
    int pivots_since; /* the last inversion */
};
struct CuttingLevel;
bool cutting_lp_make(struct Arena *arena, struct CuttingLp *lp, const struct CuttingCase *problem,
                     const struct CuttingPool *pool);
/* Sets up rows and starting basis for what a level leaves to do. False when memory failed. */
bool cutting_lp_begin(struct Arena *arena, struct CuttingLp *lp, const struct CuttingCase *problem,
                      const struct CuttingLevel *level, double cost_unit, double missing_rate);
bool cutting_lp_add(struct Arena *arena, struct CuttingLp *lp, int pattern);
/* A missing piece costs the rate for each millimetre of it. */
void cutting_lp_missing_rate(struct CuttingLp *lp, double rate);
/* factors * column, where factors are one figure a row. */
double cutting_lp_times(const struct CuttingLp *lp, const double *factors, const struct LpColumn *column);
/* Inverts the basis afresh and finds its values; false, with the old inverse spoilt, when it cannot. */
bool cutting_lp_invert(struct CuttingLp *lp);
/* The values of the basis by some limits. */
void cutting_lp_values(struct CuttingLp *lp, const double *limits, double *values);
/* Eases by a hair each what stands at nothing; turns differ. */
void cutting_lp_ease(struct CuttingLp *lp, int turn);
/* ---- cutting_simplex.c ---- */
/* Pivots until no column improves the sum, or too long without gain: prices and values then still are usable. */
void cutting_lp_solve(struct CuttingLp *lp);
double cutting_lp_sum(const struct CuttingLp *lp);
double cutting_lp_missing(const struct CuttingLp *lp);
int cutting_lp_side_row(const struct CuttingLp *lp, int side);

/* ---- cutting_reach.c ---- */
/* The least cost of bins whose lengths together are as long as the pieces. */
int64_t cutting_reach_length(const struct CuttingCase *problem);
/* What bought lengths can come to, in units of `mm_in_unit`, as if there were no end of each. */
struct CuttingReach {
    int64_t most; /* -1: no table */
    int *fewest;  /* bins that make each sum; cutting_reach_never when none do */
};
static const int cutting_reach_never = 1000000000;
/* The table up to `most`; without one where it would be too large. False when memory failed. */
bool cutting_reach_make(struct Arena *arena, const struct CuttingCase *problem, int64_t most,
                        struct CuttingReach *reach);
/* The least sum not below `from` that bins can come to; `from` itself where the table does not say. */
int64_t cutting_reach_sum(const struct CuttingReach *reach, int64_t from);

/* ---- cutting_search.c ---- */

/* What one node of the tree leaves to do. */
struct CuttingLevel {
    int *wanted;     /* of each type */
    int *low, *high; /* bins of each class still to be opened, at least and at most */
    int64_t side_left[CUTTING_SIDES];
    int64_t spent;
    int left;        /* pieces */
    int64_t left_mm; /* their sum */
    bool fixed;      /* the step to this level filled a bin, with: */
    int class_index, entries;
    int *type, *copies;
    bool known; /* the linear programme's answer stands below */
    int share_count, share_room;
    int *share_pattern; /* -1 - class: an empty bin of that class */
    double *share;
    int *filling;     /* of each type: the bin being filled */
    int64_t *rest_mm; /* of each type: the sum of what is left of it and all shorter ones */
    int tried_from;   /* first of the patterns that need not be tried again for this longest piece */
    int longest;      /* type */
};
struct CuttingSearch {
    struct Arena *arena;
    const struct CuttingCase *problem;
    struct CuttingPool *pool; /* kept from case to case: the classes are the same */
    struct CuttingPool tried;
    struct CuttingLp lp;
    struct CuttingKnapsack knapsack;
    struct CuttingLevel **levels;
    int level_room;
    struct CuttingReach reach;
    double cost_unit;
    int64_t steps, most_steps;
    int64_t effort; /* of the step begun, in figures worked out */
    int64_t target; /* plans that cost no more are looked for */
    int64_t next;   /* the least bound above the target that was met */
    bool found, ended;
    struct CuttingBins best, draft;
    int64_t best_cost;
    int *scratch_types, *scratch_classes, *pattern;
    double *worth;
};
/* A level's arrays, made when first needed; NULL when memory failed. */
struct CuttingLevel *cutting_level(struct CuttingSearch *search, int depth);
/* Counts effort into steps, the linear programme's too; sets `ended` when there are no more. */
enum { CUTTING_EFFORT_IN_STEP = 1000000 };
void cutting_spend(struct CuttingSearch *search, int64_t effort);
/* Takes the draft on as the best plan when it is. */
void cutting_record(struct CuttingSearch *search);
/* Copies what is left at `from` to the level below and takes a bin of the pattern off it; NULL when that breaks a
 * limit. */
struct CuttingLevel *cutting_descend(struct CuttingSearch *search, int depth, int class_index,
                                     const int *copies_of_type);
void cutting_search_node(struct CuttingSearch *search, int depth);
/* Draft = the bins that the levels down to `depth` have fixed. */
void cutting_draft_path(struct CuttingSearch *search, int depth);

/* ---- cutting_filling.c ---- */
/* Explores below `depth` every pattern worth trying for a bin with the longest piece left. */
void cutting_try_fillings(struct CuttingSearch *search, int depth);
/* Notes that a branch was dropped that needs at least `short_mm` more of bought length than the target pays for. */
void cutting_miss(struct CuttingSearch *search, int64_t short_mm);
/* Most millimetres that may still go to waste below a level if the target is to be met. Negative: it cannot be. */
int64_t cutting_slack_mm(const struct CuttingSearch *search, const struct CuttingLevel *level);

/* ---- cutting_bound.c ---- */
/* The least that any plan through this level can cost, never too high, rounded up to a whole unit. It stops as
 * soon as the target is seen not to be excluded (the level's shares then are set) or, unless `thorough`, to be out of
 * reach. */
int64_t cutting_bound(struct CuttingSearch *search, struct CuttingLevel *level, bool thorough);

/* ---- cutting_greedy.c ---- */
/* Adds bins to the draft for all of scratch_types (what is wanted) within scratch_classes (how many bins there are);
 * drums of class `main_class` first, else the shortest that take the longest piece. False when some
 * piece finds no bin.
 */
enum { CUTTING_SHORTEST = -1 };
bool cutting_greedy(struct CuttingSearch *search, int main_class);
/* Quick plans before the search. */
void cutting_greedy_start(struct CuttingSearch *search);
/* Quick plans from a level's linear programme. */
void cutting_greedy_round(struct CuttingSearch *search, int depth);

/* ---- cutting_case.c ---- */
struct CuttingAnswer {
    bool solved;   /* there is a plan at all */
    int64_t cost;  /* of the plan in `bins` */
    int64_t bound; /* none costs less */
    struct CuttingBins bins;
    int64_t steps;
};
/* Makes the sum of one case least. `start`, if not NULL, is a plan to begin from; patterns that come up go
 * into the pool. False when memory failed. */
bool cutting_solve(struct Arena *arena, const struct CuttingCase *problem, const struct CuttingBins *start,
                   struct CuttingPool *pool, int64_t most_steps, struct CuttingAnswer *answer);

/* A plan by the quick rules alone; false when they find none or memory failed. */
bool cutting_quick(struct Arena *arena, const struct CuttingCase *problem, struct CuttingBins *bins);

/* ---- cutting_kinds.c ---- */

/* The job in types and classes. A class has its sources: indices into job->stock, cheapest first, or job->offcuts. */
struct CuttingKinds {
    int type_count;
    int *length_mm, *wanted; /* of each type */
    int *first;              /* of each type, its first place in `order` */
    int *order;              /* indices of pieces: longest first, then as listed; impossible ones are not in it */
    int pieces;
    int class_count;
    struct CuttingClass *classes; /* bought first, longest first in each half; cost and sides not set */
    int *source_first;            /* of each class, its first place in `source`; one more at the end */
    int *source;
    int impossible_count;
    int *impossible;
};
bool cutting_kinds(struct Arena *arena, const struct CuttingJob *job, struct CuttingKinds *kinds);

/* ---- cutting_result.c ---- */
/* Fills in what the bins say: opened lengths, sums, what to buy. `uncut` is how many of each type are not in the bins.
 */
bool cutting_result(struct Arena *arena, const struct CuttingJob *job, const struct CuttingKinds *kinds,
                    const struct CuttingBins *bins, const int *uncut, struct CuttingPlan *plan);

#endif
