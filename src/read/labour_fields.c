/* The language of the labour figures: how long work takes, who does it, what it costs. */
#include "labour_fields_private.h"
#include "survey_fields_private.h"

enum { MINUTES_MOST = 100 * 60, DAY_MOST_MIN = 24 * 60 };
#define RATE_MOST 1000000

static const struct Field day_fields[] = {
    {.key = "length",
     NUMBER(MINUTE, 1, DAY_MOST_MIN),
     AT(Labour, day_min),
     DEFAULT(480),
     .help = "working time of a day, breaks not counted"},
    {.key = "starts",
     .kind = FIELD_NAME,
     AT(Labour, starts),
     .longest = 5,
     .default_text = "08:00",
     .help = "when work begins, as \"08:00\"; for the calendar"},
};
static const struct FieldTable day_table = {
    .name = "day", .title = "day", TABLE(day_fields, .help = "the working day")};

/* clang-format off */
static const struct Field rates_fields[] = {
    {.key = "currency", .kind = FIELD_NAME, AT(LabourRates, currency), .required = FIELD_ALWAYS, .longest = 60,
     .help = "three letters of ISO 4217, such as GBP"},
    {.key = "electrician", NUMBER(NONE, 0, RATE_MOST), AT(LabourRates, electrician), .help = "an electrician's hour"},
    {.key = "hand", NUMBER(NONE, 0, RATE_MOST), AT(LabourRates, hand), .help = "another hand's hour"},
    {.key = "digger", NUMBER(NONE, 0, RATE_MOST), AT(LabourRates, digger), .help = "a digger's hour, while it digs"},
    {.key = "spoil", NUMBER(NONE, 0, RATE_MOST), AT(LabourRates, spoil), .help = "a cubic metre of loose spoil taken away"},
};
/* clang-format on */
static const struct FieldTable rates_table = {
    .name = "rates", .title = "rates", TABLE(rates_fields, .help = "what is charged, for the quotation sheet")};

/* clang-format off */
static const struct Field task_fields[] = {
    {.key = "low", NUMBER(MINUTE, 0, MINUTES_MOST), AT(LabourFigure, low_min), .required = FIELD_ALWAYS,
     .help = "time of one when all goes well"},
    {.key = "likely", NUMBER(MINUTE, 0, MINUTES_MOST), AT(LabourFigure, likely_min), .required = FIELD_ALWAYS,
     .help = "the most likely time of one"},
    {.key = "high", NUMBER(MINUTE, 0, MINUTES_MOST), AT(LabourFigure, high_min), .required = FIELD_ALWAYS,
     .help = "time of one when it goes badly"},
    {.key = "hands", .kind = FIELD_WHOLE_QUANTITY, AT(LabourFigure, hands_q), .least = 1, .most = LABOUR_HANDS_MOST,
     .default_text = "2 to draw, else 1", .help = "how many it takes at once"},
    {.key = "electrician", .kind = FIELD_YES, AT(LabourFigure, electrician), GIVEN(LabourFigure, electrician_given),
     .default_text = "yes for gland, terminate and test, else no", .help = "whether one of them must be an electrician"},
};
/* clang-format on */
static const struct FieldTable task_table = {
    .name = "a task",
    .title = "tasks.NAME",
    TABLE(task_fields, .help = "the time of one, however many hands it takes")};

#define TASK_ROW(symbol, word, of)                                                                                     \
    {                                                                                                                  \
        .key = (word), INNER(task_table), .offset = offsetof(struct Labour, tasks[TASK_##symbol]),                     \
        .given_offset = offsetof(struct Labour, tasks[TASK_##symbol].given), .help = (of)                              \
    }
static const struct Field tasks_fields[] = {
    TASK_ROW(SET_OUT, "set-out", "set out a metre of the way"),
    TASK_ROW(DIG, "dig", "dig a cubic metre of trench"),
    TASK_ROW(DUCT, "duct", "lay a metre of duct"),
    TASK_ROW(DRILL, "drill", "drill a hole through a wall"),
    TASK_ROW(FIX, "fix", "put up a fixing"),
    TASK_ROW(RODS, "rods", "drive an earth rod"),
    TASK_ROW(DRAW, "draw", "draw in or lay a metre of cable"),
    TASK_ROW(REINSTATE, "reinstate", "fill in a cubic metre of trench and make good"),
    TASK_ROW(GLAND, "gland", "make off a gland"),
    TASK_ROW(TERMINATE, "terminate", "terminate a core at one end"),
    TASK_ROW(TEST, "test", "test a run"),
    TASK_ROW(LABEL, "label", "put up a label"),
};
_Static_assert(COUNT_OF(tasks_fields) == TASK_KINDS, "a row for every task");
static const struct FieldTable tasks_table = {
    .name = "tasks",
    .title = "tasks",
    TABLE(tasks_fields, .help = "the time of a task left out is not known, nor is that of the whole")};

/* clang-format off */
static const struct Field top_fields[] = {
    {.key = "wend-labour", .kind = FIELD_OWN, .default_text = "none; required, and the first key",
     .help = "version of this format: 1"},
    {.key = "source", .kind = FIELD_NAME, AT(Labour, source), .longest = 100, .help = "where the figures are from"},
    {.key = "day", INNER(day_table), .offset = 0, .has_default = true, .help = "the working day"},
    {.key = "hands", .kind = FIELD_WHOLE_QUANTITY, AT(Labour, hands), .least = 1, .most = LABOUR_HANDS_MOST, DEFAULT(2),
     .help = "how many work"},
    {.key = "electricians", .kind = FIELD_WHOLE_QUANTITY, AT(Labour, electricians), .least = 0,
     .most = LABOUR_HANDS_MOST, DEFAULT(1), .help = "how many of them are electricians"},
    {.key = "rates", INNER(rates_table), AT(Labour, rates), GIVEN(Labour, rates.given),
     .help = "what is charged, for the quotation sheet"},
    {.key = "tasks", INNER(tasks_table), .offset = 0, .required = FIELD_ALWAYS, .help = "how long each task takes"},
};
/* clang-format on */
static const struct FieldTable top_table = {
    .name = "the file", .title = "the labour figures", TABLE(top_fields, .help = "")};

const struct FieldTable *labour_fields(enum LabourTable table)
{
    static const struct FieldTable *const tables[LABOUR_TABLE_COUNT] = {
        [LABOUR_TABLE_TOP] = &top_table,     [LABOUR_TABLE_DAY] = &day_table,   [LABOUR_TABLE_RATES] = &rates_table,
        [LABOUR_TABLE_TASKS] = &tasks_table, [LABOUR_TABLE_TASK] = &task_table,
    };
    return tables[table];
}
