/* Holes through walls: the drill for a cable, its length, the seal.
 *
 * Source: none; the cable's diameter and a fifth more, by a survey form's advice. Fall of 1 in 40 to the outside: duct
 *         practice.
 * Trust:  from memory. What seals against fire has a tested sheet of its own, which overrides the depth here.
 * Rows:   the next larger of the drills usually sold, masonry drills to 40 mm, core drills above. */
#include "tables_private.h"
#include "takeoff_tables.h"

#include <math.h>

static const double clearance = 1.2;
static const double drill_margin_mm = 50; /* of the drill's length, beyond the wall */
static const double drills_mm[] = {8,  10, 12, 14, 16, 18, 20, 22,  25,  28,  30,  32,
                                   35, 38, 40, 52, 65, 78, 91, 102, 107, 117, 127, 152};
static const struct WallSeal seal = {
    .depth_mm = 25, .tube_ml = 310, .fall = 40, .sleeve_play_mm = 2, .core_above_mm = 40};

double wall_hole_mm(double cable_mm)
{
    return cable_mm * clearance;
}

bool wall_drill(double least_mm, double *out_mm)
{
    int row = 0;
    if (!(least_mm > 0) || !lookup_next_up(drills_mm, COUNT_OF(drills_mm), least_mm, &row)) {
        return false;
    }
    *out_mm = drills_mm[row];
    return true;
}

double wall_drill_mm(double thickness_mm)
{
    return thickness_mm * sqrt(1 + 1 / (seal.fall * seal.fall)) + drill_margin_mm;
}

const struct WallSeal *wall_seal(void)
{
    return &seal;
}

void wall_hole_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"hole", clearance, "times the diameter"},
                      {"drill longer than the wall", drill_margin_mm, "mm"},
                      {"depth of the seal", seal.depth_mm, "mm"},
                      {"a tube of it", seal.tube_ml, "ml"},
                      {"fall to the outside 1 in", seal.fall, ""},
                      {"play of a sleeve in its hole", seal.sleeve_play_mm, "mm"},
                      {"core drills above", seal.core_above_mm, "mm"},
                  },
                  7);
    for (int row = 0; row < COUNT_OF(drills_mm); row++) {
        cells_text(out, "drill", false);
        cells_number(out, drills_mm[row], false);
        cells_text(out, "mm", true);
    }
}

const struct TableRef *wall_hole_ref(void)
{
    static const struct TableRef ref = {.standard = "common practice, no source",
                                        "wall holes",
                                        "drill and seal for a cable",
                                        TRUST_COMMON_PRACTICE,
                                        "from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
