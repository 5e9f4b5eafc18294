/* The most that a meter may be out by, where nobody says what its own sheet says.
 *
 * Source: BS EN 61557, operating uncertainty: parts 2 to 5 on resistances, part 6 on residual devices.
 * Trust:  from memory.
 * Rows:   one figure each. */
#include "fault_tables_private.h"

static const struct MeterErrors errors = {
    .of_resistance = 0.30,
    .of_time = 0.10,
};

const struct MeterErrors *meter_errors(void)
{
    return &errors;
}

void meter_errors_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"of a resistance", errors.of_resistance, "times"},
                      {"of a time", errors.of_time, "times"},
                  },
                  2);
}

const struct TableRef *meter_errors_ref(void)
{
    static const struct TableRef ref = {.standard = "BS EN 61557",
                                        "meters",
                                        "what a meter may be out by",
                                        TRUST_FROM_MEMORY,
                                        "from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
