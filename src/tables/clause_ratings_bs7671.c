/* Figures that stand alone in a clause on ratings, or under the title of a table: what a capacity is printed for,
 * and the two factors that are not about heat.
 *
 * Source: BS 7671:2018+A2:2022: 433.1.202 (semi-enclosed fuses), 433.1.203 (buried cables), 523.9 (surrounded by
 *         insulation), Table 4A2 methods 100 and 101 (insulation over a ceiling), Tables 4B3 and 4B4 (the depth
 *         that each holds for), Tables 4C2 and 4C3 (clearances of their columns), Table 4C1, notes (spaced cables need
 * no factor), 512.1.5 (terminals of 70 or 90 degC), Appendix 4, 2.1 and 6.1 (the surroundings of the capacity tables;
 * the resistance of copper). IEC 60364-5-52: thick insulation over a longer length, where half is too much. Trust:
 * 433.1.202 seen; the others from memory. Rows:   one figure each. */
#include "fault_tables_private.h"

static const struct ClauseRatings figures = {
    .overload_semi_enclosed = 0.725,
    .overload_buried = 0.9,
    .surrounded = 0.5,
    .surrounded_from_mm = 500,
    .surrounded_enough_mm = 1000,
    .ceiling_thin_m = 0.1,
    .soil_deepest_m = 0.8,
    .laying_base_m = 0.7,
    .air_degc = 30,
    .ground_degc = 20,
    .buried_gap_m = {0.125, 0.25, 0.5},
    .ducts_gap_m = {0.25, 0.5, 1},
    .copper_inverse_degc = 230,
    .spaced_diameters = 2,
    .terminals_more_degc = 90,
};

const struct ClauseRatings *clause_ratings(void)
{
    return &figures;
}

void clause_ratings_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"433.1.202: Cf of a semi-enclosed fuse", figures.overload_semi_enclosed, "times"},
                      {"433.1.203: Cc of a buried cable", figures.overload_buried, "times"},
                      {"523.9: surrounded by insulation", figures.surrounded, "times"},
                      {"523.9: from a length of", figures.surrounded_from_mm, "mm"},
                      {"IEC 60364-5-52: half is too much beyond", figures.surrounded_enough_mm, "mm"},
                      {"Table 4A2: insulation over a ceiling is thin to", figures.ceiling_thin_m, "m"},
                      {"Table 4B3: holds for depths to", figures.soil_deepest_m, "m"},
                      {"Table 4B4: 1 at a depth of", figures.laying_base_m, "m"},
                      {"Appendix 4: capacities in air are printed for", figures.air_degc, "degC"},
                      {"Appendix 4: capacities in ground are printed for", figures.ground_degc, "degC"},
                      {"Table 4C2: first column of a clearance", figures.buried_gap_m[0], "m"},
                      {"Table 4C2: the next", figures.buried_gap_m[1], "m"},
                      {"Table 4C2: the last", figures.buried_gap_m[2], "m"},
                      {"Table 4C3: first column of a clearance", figures.ducts_gap_m[0], "m"},
                      {"Table 4C3: the next", figures.ducts_gap_m[1], "m"},
                      {"Table 4C3: the last", figures.ducts_gap_m[2], "m"},
                      {"Appendix 4 6.1: copper would have no resistance at minus", figures.copper_inverse_degc, "degC"},
                      {"Table 4C1: cables in air are spaced beyond", figures.spaced_diameters, "times the diameter"},
                      {"512.1.5: terminals that stand more than 70 degC", figures.terminals_more_degc, "degC"},
                  },
                  19);
}

const struct TableRef *clause_ratings_ref(void)
{
    static const struct TableRef ref = {TABLES_BS7671,
                                        "clauses on ratings",
                                        "figures of single clauses on ratings",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "433.1.202 seen, the others from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
