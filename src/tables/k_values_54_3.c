/* k of the adiabatic equation: copper protective conductors that are a core of the cable or bunched.
 *
 * Source: BS 7671:2018+A2:2022, Table 54.3. Up to 300 mm2; starts at 70 or 90
 *         degC, ends at 160 or 250 degC.
 * Trust:  seen (a pocket guide that reproduces the table), and each equals the formula of IEC 60364-5-54 Annex A.
 * Rows:   70 degC thermoplastic and 90 degC thermosetting; the print's other insulations are not held. */
#include "edition_private.h"

const struct KFigures k_values_54_3 = {
    .ref = {TABLES_BS7671, "54.3", "k of copper cores as protective conductors", TRUST_PUBLISHED, "seen"},
    .at_70_degc = 115,
    .at_90_degc = 143,
};
