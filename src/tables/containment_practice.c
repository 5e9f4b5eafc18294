/* Conduit, tray, ladder and catenary: how far between boxes, supports and grips.
 *
 * Source: none but for expansion couplers, which a conduit maker's page puts every 6 m of straight plastic conduit, and
 *         for the 150 mm from a termination and a bend, which is the Hong Kong code of practice for wiring's.
 * Trust:  two right angles between draw points and the rest from memory. The load sheet of a tray overrides it.
 * Rows:   one figure each. */
#include "tables_private.h"
#include "takeoff_tables.h"

static const struct ContainmentPractice practice = {
    .draw_length_m = 10,
    .draw_bends_deg = 180,
    .expansion_m = 6,
    .tray_support_m = 1.2,
    .tray_fixings = 2,
    .catenary_end_m = 0.5,
    .catenary_grips = 4, /* EN 13411-5 for 8 to 19 mm: wire_grips_en13411.c */
    .near_end_m = 0.15,
};

const struct ContainmentPractice *containment_practice(void)
{
    return &practice;
}

void containment_practice_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"longest between points of drawing in", practice.draw_length_m, "m"},
                      {"most bends between them", practice.draw_bends_deg, "deg"},
                      {"expansion coupler every", practice.expansion_m, "m"},
                      {"support of tray and ladder every", practice.tray_support_m, "m"},
                      {"fixings of each support", practice.tray_fixings, "each"},
                      {"wire for an end", practice.catenary_end_m, "m"},
                      {"grips of an end", practice.catenary_grips, "each"},
                      {"first fixing from a gland or bend", practice.near_end_m, "m"},
                  },
                  8);
}

const struct TableRef *containment_practice_ref(void)
{
    static const struct TableRef ref = {.standard = "common practice, no source",
                                        "containment",
                                        "boxes, supports and grips of conduit, tray and catenary",
                                        TRUST_COMMON_PRACTICE,
                                        "from memory, two figures seen",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
