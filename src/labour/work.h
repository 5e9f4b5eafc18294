/** A plan as work: its tasks with their quantities from the take-off, their times by the labour figures, an order of
 * work, and what it costs. */
#ifndef WEND_WORK_H
#define WEND_WORK_H

#include "base/base.h"
#include "day/day.h"
#include "labour.h"
#include "plan/plan.h"
#include "takeoff/parts.h"

struct WorkTask {
    enum TaskKind kind;
    int run;                  /**< index into Plan.runs; -1: of the whole job */
    enum PartPlace end;       /**< PART_AT_START, PART_AT_FINISH or PART_NOWHERE */
    int share;                /**< of a task that hands share: which, from 1 on; 0 of others */
    bool counted;             /**< the take-off knows how much; false: `quantity` is 0 */
    bool timed;               /**< counted, and there is a figure */
    bool fewer;               /**< done by fewer hands than is usual, and longer */
    double quantity;          /**< in the unit of its kind */
    const struct Say *title;  /**< "Draw in feeder" */
    const struct Say *amount; /**< "76 m"; NULL where it is not known */
    const struct Say *hold;   /**< what must hold before it begins; NULL nothing */
};

/** What was asked. */
struct WorkAsked {
    const struct Labour *labour;
    int hands; /**< 0: as the labour figures say */
    uint64_t seed;
};

enum { WORK_TRIALS = 10000 };

struct Work {
    const struct Labour *labour;
    int count;
    const struct WorkTask *tasks;
    struct DayJob job; /**< a task for each of them; one that is not timed takes none */
    struct DaySchedule schedule;
    struct DayChance chance; /**< of trials 0 where a time is not known */
    uint64_t seed;
    int untimed;   /**< tasks whose time is not known */
    int64_t day_s; /**< that a day has */
    int before_count;
    const struct Say *const *before; /**< what must be settled before the day */
    int chain_count;
    const int *chain; /**< the tasks that the end waits for, in their order */
};

/** Tasks that would come to nothing are left out. NULL when memory failed. */
const struct Work *work_of(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                           const struct WorkAsked *asked);
/** Why there is no order of work; NULL where there is one. */
const struct Say *work_fault_said(struct Arena *arena, const struct Work *work);
/** "62 %" of being done within the day, rounded down. */
const struct Say *work_chance_said(struct Arena *arena, const struct Work *work);
/** "7 h 40 min". */
const struct Say *work_time_said(struct Arena *arena, int64_t seconds);
/** "7:05", from the beginning of the work. */
const char *work_clock_text(struct Arena *arena, int64_t seconds);
/** "Set out". */
enum Saying work_kind_said(enum TaskKind kind);

/** A line of a quotation. */
struct WorkCost {
    const struct Say *what, *amount;
    const char *each_text, *total_text; /**< "45.00", "344.70" */
};
struct WorkQuotation {
    const char *currency;
    int count;
    const struct WorkCost *lines;
    const char *total_text;
    int left_out_count;
    const struct Say *const *left_out; /**< what is not in the total, and why */
};
/** NULL without rates, and when memory failed. */
const struct WorkQuotation *work_quotation(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                           const struct Work *work);

#endif
