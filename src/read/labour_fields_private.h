/** The field tables of the labour figures, for read_labour.c and the manual. */
#ifndef WEND_LABOUR_FIELDS_PRIVATE_H
#define WEND_LABOUR_FIELDS_PRIVATE_H

#include "labour/labour.h"
#include "read_private.h"

/** Every mapping of the file, in the order of the manual. */
enum LabourTable {
    LABOUR_TABLE_TOP,
    LABOUR_TABLE_DAY,
    LABOUR_TABLE_RATES,
    LABOUR_TABLE_TASKS,
    LABOUR_TABLE_TASK,
    LABOUR_TABLE_COUNT
};
const struct FieldTable *labour_fields(enum LabourTable table);

#endif
