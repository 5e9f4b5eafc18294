/** What the files of the room know of each other. */
#ifndef WEND_WORK_PRIVATE_H
#define WEND_WORK_PRIVATE_H

#include "work.h"

/** Tasks while they are gathered, and what each waits for. */
struct Gathering {
    struct Arena *arena;
    const struct Plan *plan;
    const struct PartsList *parts;
    const struct Labour *labour;
    int hands;
    int count, room;
    struct WorkTask *tasks;
    bool *waits; /**< waits[i * room + k]: task i waits for task k */
};
/** Every task of the plan, with its quantity. False without memory. */
bool work_gather(struct Gathering *gathering);

/** What must be settled before the day. */
const struct Say *const *work_before(struct Arena *arena, const struct Plan *plan, int *count);

#endif
