/** What the files of the room know of each other. */
#ifndef WEND_DAY_PRIVATE_H
#define WEND_DAY_PRIVATE_H

#include "day.h"

/** What must come before each task and what after it, by the longest chain of likely times. */
struct DayChains {
    int64_t *head_s; /**< before it begins */
    int64_t *tail_s; /**< from its beginning to the end of all, itself among it */
    int *sorted;     /**< every task behind those that it waits for */
    int *followers;  /**< how many wait for it */
};
/** DAY_GOOD, or what is wrong with the job and where. */
enum DayFault day_chains(struct Arena *arena, const struct DayJob *job, struct DayChains *out, int *at);

/** True when the hands of a job can do a task. */
bool day_able(const struct DayJob *job, const struct DayTask *task);

#endif
