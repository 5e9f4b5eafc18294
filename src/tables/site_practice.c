/* What makes a place on site ask for care: height, weight, a roof void in summer, how deep a trench gets.
 *
 * Source: HSE INDG143 for a lift of two people; the others are common practice, no source (the Work at Height
 *         Regulations 2005 name no height).
 * Trust:  from memory.
 * Rows:   one figure each. */
#include "mechanics_tables.h"
#include "tables_private.h"

static const struct SitePractice practice = {
    .high_m = 2,
    .lift_kg = 25,
    .roof_summer_degc = 40,
    .thickest_cable_m = 0.05,
    .rise_alike_m = 0.05,
};

const struct SitePractice *site_practice(void)
{
    return &practice;
}

void site_practice_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"work is high above", practice.high_m, "m"},
                      {"two lift above", practice.lift_kg, "kg"},
                      {"air in a roof void in summer", practice.roof_summer_degc, "degC"},
                      {"a cable in a trench is no thicker than", practice.thickest_cable_m, "m"},
                      {"a rise may be the step into the trench within", practice.rise_alike_m, "m"},
                  },
                  5);
}

const struct TableRef *site_practice_ref(void)
{
    static const struct TableRef ref = {.standard = "HSE INDG143; common practice, no source",
                                        "site",
                                        "height, weight, roof voids and trenches",
                                        TRUST_COMMON_PRACTICE,
                                        "from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
