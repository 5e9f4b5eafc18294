/** The user's own labour figures, as read: how long work takes and what it costs. */
#ifndef WEND_LABOUR_H
#define WEND_LABOUR_H

#include "survey/survey.h"

#include <stdint.h>

/** In the order in which a job usually meets them. */
enum TaskKind {
    TASK_SET_OUT,
    TASK_DIG,
    TASK_DUCT,
    TASK_DRILL,
    TASK_FIX,
    TASK_RODS,
    TASK_DRAW,
    TASK_REINSTATE,
    TASK_GLAND,
    TASK_TERMINATE,
    TASK_TEST,
    TASK_LABEL,
    TASK_KINDS
};
/** "set-out": its key in the file; "" out of range. */
const char *labour_task_word(enum TaskKind kind);

/** The time of one unit of a task. */
struct LabourFigure {
    bool given;
    struct Mark mark;
    struct Quantity low_min, likely_min, high_min;
    int hands;               /**< that it takes at once; 0: not given, labour_hands() */
    struct Quantity hands_q; /**< as read */
    bool electrician, electrician_given;
};

/** What is charged, in one currency; an hour, but `spoil` a loose cubic metre. */
struct LabourRates {
    bool given;
    const char *currency;
    int coin_decimals;
    struct Quantity electrician, hand, digger, spoil;
};

enum { LABOUR_HANDS_MOST = 4 };

struct Labour {
    const char *source; /**< where the figures are from, in the user's words; "" not said */
    struct Quantity day_min;
    const char *starts; /**< "08:00" */
    int starts_min;     /**< after midnight */
    struct Quantity hands, electricians;
    struct LabourRates rates;
    struct LabourFigure tasks[TASK_KINDS];
    bool built_in; /**< the program's own, which nobody gave */
};

/** Hands that a task takes, and whether it is an electrician's: as the file says, else as is common. */
int labour_hands(const struct Labour *labour, enum TaskKind kind);
bool labour_electrician(const struct Labour *labour, enum TaskKind kind);
/** Of all that they say, never 0: other figures, another digest. */
uint64_t labour_digest(const struct Labour *labour);

#endif
