/* What is ordered on top of what was counted, where the route file does not say.
 *
 * Source: none; habits of the trade. The draw rope's 3 m is seen in a duct maker's advice.
 * Trust:  from memory. Cable and fixings are not here: their spares are keys of the route file.
 * Rows:   one figure each. */
#include "tables_private.h"
#include "takeoff_tables.h"

static const struct OrderAllowances allowances = {
    .duct_percent = 5,
    .tape_percent = 5,
    .sand_percent = 15, /* it settles when it is trodden in */
    .rope_m = 3,
    .couplers = 1,
    .glands = 2,
    .gland_top = 8, /* one pair more when there are more than four */
};

const struct OrderAllowances *order_allowances(void)
{
    return &allowances;
}

void order_allowances_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"duct", allowances.duct_percent, "%"},
                      {"warning tape", allowances.tape_percent, "%"},
                      {"sand", allowances.sand_percent, "%"},
                      {"draw rope beyond each duct", allowances.rope_m, "m"},
                      {"couplers", allowances.couplers, "each"},
                      {"glands where more are used than the next figure", allowances.glands, "each"},
                      {"glands without spare", allowances.gland_top, "each"},
                  },
                  7);
}

const struct TableRef *order_allowances_ref(void)
{
    static const struct TableRef ref = {.standard = "common practice, no source",
                                        "allowances",
                                        "what is ordered beyond the count",
                                        TRUST_COMMON_PRACTICE,
                                        "from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
