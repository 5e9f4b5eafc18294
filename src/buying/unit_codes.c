/* Codes for units and packages, as a wholesaler's system reads them.
 *
 * Source: UN/ECE Recommendation 20, Codes for Units of Measure Used in International Trade, revision 11e, with the
 *         package codes of Recommendation 21 after an X.
 * Trust:  seen in one published list of revision 11e; MTR, C62, KGM, LTR and MTQ are in every edition since the first.
 * Rows:   a unit or a package that is not here has no code: the quantity then goes in its plain unit, in words.
 * Packages of which no code was seen (coil, length, tub) are ordered by what is in them.
 */
#include "order_private.h"

struct UnitCode {
    const char *word, *code;
};

static const char *code_of(const struct UnitCode *codes, size_t count, const char *word)
{
    for (size_t i = 0; i < count; i++) {
        if (text_same(codes[i].word, word)) {
            return codes[i].code;
        }
    }
    return "";
}

const char *order_unit_code(const char *unit)
{
    static const struct UnitCode codes[] = {
        {"m", "MTR"},    /* metre */
        {"each", "C62"}, /* one */
        {"pack", "XPK"}, /* package */
        {"m2", "MTK"},   /* square metre */
        {"m3", "MTQ"},   /* cubic metre */
        {"kg", "KGM"},   /* kilogram */
        {"l", "LTR"},    /* litre */
    };
    return code_of(codes, sizeof codes / sizeof codes[0], unit);
}

const char *order_package_code(const char *pack_word)
{
    static const struct UnitCode codes[] = {
        {"pack", "XPK"}, /* package */
        {"kit", "XPK"},  /* glands: in Recommendation 20 a kit is a tub or pail */
        {"bag", "XBG"},  /* bag */
        {"box", "XBX"},  /* box */
        {"roll", "XRO"}, /* roll */
    };
    return code_of(codes, sizeof codes / sizeof codes[0], pack_word);
}
