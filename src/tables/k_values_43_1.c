/* k of the adiabatic equation: copper live conductors.
 *
 * Source: BS 7671:2018+A2:2022, Table 43.1. Up to 300 mm2, cut off within 5 s; starts at 70 or 90 degC,
 *         ends at 160 or 250 degC. (90 degC thermoplastic has 100, which is not the figure of thermosetting.)
 * Trust:  seen (a pocket guide that reproduces the table), and each equals the formula of IEC 60364-5-54 Annex A.
 * Rows:   70 degC thermoplastic and 90 degC thermosetting; the print's other insulations are not held. */
#include "edition_private.h"

const struct KFigures k_values_43_1 = {
    .ref = {TABLES_BS7671, "43.1", "k of copper live conductors", TRUST_PUBLISHED, "seen"},
    .at_70_degc = 115,
    .at_90_degc = 143,
};
