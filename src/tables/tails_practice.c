/* Meter tails: their size, and how long they may be with nothing but the distributor's fuse before them.
 *
 * Source: two trade pages that name the On-Site Guide, section 2, for the size; a certification body's magazine (2017)
 * for 3 m, trade forums for 2 m: it is the distributor's condition and no rule of BS 7671. Trust:  from memory. The
 * size is that for a 100 A fuse, the largest of a house: 16 mm2 stands one up to 80 A, and what the fuse is was not
 * surveyed. Rows:   one figure each. */
#include "mechanics_tables.h"
#include "tables_private.h"

const struct TailsPractice *tails_practice(void)
{
    static const struct TailsPractice practice = {
        .line_mm2 = 25, .earth_mm2 = 16, .up_to_a = 100, .ask_over_m = 2, .protect_over_m = 3};
    return &practice;
}

void tails_practice_cells(struct TextBuilder *out)
{
    const struct TailsPractice *practice = tails_practice();
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"line and neutral", practice->line_mm2, "mm2"},
                      {"earthing conductor", practice->earth_mm2, "mm2"},
                      {"up to", practice->up_to_a, "A"},
                      {"ask the distributor above", practice->ask_over_m, "m"},
                      {"a device of their own above", practice->protect_over_m, "m"},
                  },
                  5);
}

const struct TableRef *tails_practice_ref(void)
{
    static const struct TableRef ref = {.standard = "On-Site Guide, section 2, and distributors' conditions",
                                        "tails",
                                        "meter tails",
                                        TRUST_FROM_MEMORY,
                                        "from memory; the distributor's own condition governs",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
