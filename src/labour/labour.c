/* What each task is called in the file, and who does it where the file does not say. */
#include "labour.h"

/* Hands and skill: common practice, no source. */
static const struct {
    const char *word;
    int hands;
    bool electrician;
} rows[TASK_KINDS] = {
    [TASK_SET_OUT] = {"set-out", 1, false}, [TASK_DIG] = {"dig", 1, false},
    [TASK_DUCT] = {"duct", 1, false},       [TASK_DRILL] = {"drill", 1, false},
    [TASK_FIX] = {"fix", 1, false},         [TASK_RODS] = {"rods", 1, false},
    [TASK_DRAW] = {"draw", 2, false},       [TASK_REINSTATE] = {"reinstate", 1, false},
    [TASK_GLAND] = {"gland", 1, true},      [TASK_TERMINATE] = {"terminate", 1, true},
    [TASK_TEST] = {"test", 1, true},        [TASK_LABEL] = {"label", 1, false},
};

const char *labour_task_word(enum TaskKind kind)
{
    return (unsigned)kind < TASK_KINDS ? rows[kind].word : "";
}

int labour_hands(const struct Labour *labour, enum TaskKind kind)
{
    return labour->tasks[kind].hands > 0 ? labour->tasks[kind].hands : rows[kind].hands;
}

bool labour_electrician(const struct Labour *labour, enum TaskKind kind)
{
    const struct LabourFigure *figure = &labour->tasks[kind];
    return figure->electrician_given ? figure->electrician : rows[kind].electrician;
}
