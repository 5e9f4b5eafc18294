/* k of the adiabatic equation: steel armour as the protective conductor.
 *
 * Source: BS 7671:2018+A2:2022, Table 54.4. Starts at 60 or 80 degC, ends at 200 degC.
 * Trust:  seen (a pocket guide that reproduces the table), and each equals the formula of IEC 60364-5-54 Annex A.
 * Rows:   70 degC thermoplastic and 90 degC thermosetting; the print's other insulations are not held. */
#include "edition_private.h"

const struct KFigures k_values_54_4 = {
    .ref = {TABLES_BS7671, "54.4", "k of steel armour", TRUST_PUBLISHED, "seen"},
    .at_70_degc = 51,
    .at_90_degc = 46,
};
