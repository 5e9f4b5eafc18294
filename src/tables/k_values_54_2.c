/* k of the adiabatic equation: copper protective conductors that are neither in a cable nor bunched.
 *
 * Source: BS 7671:2018+A2:2022, Table 54.2. Up to 300 mm2; starts at 30 degC,
 *         ends at 160 or 250 degC.
 * Trust:  seen (a pocket guide that reproduces the table), and each equals the formula of IEC 60364-5-54 Annex A.
 * Rows:   70 degC thermoplastic and 90 degC thermosetting; the print's other insulations are not held. */
#include "edition_private.h"

const struct KFigures k_values_54_2 = {
    .ref = {TABLES_BS7671, "54.2", "k of separate copper protective conductors", TRUST_PUBLISHED, "seen"},
    .at_70_degc = 143,
    .at_90_degc = 176,
};
