/* How many pieces, metres or kilograms of an article are sold together.
 *
 * Source: none; how electrical counters in the United Kingdom usually sell. Rigid duct in 6 m lengths and glands in
 * pairs are seen on sellers' pages. Trust:  from memory but for those two. Packs differ from counter to counter: the
 * counter's own pack governs. Rows:   one a kind of article. */
#include "tables_private.h"
#include "takeoff_tables.h"

/* clang-format off */
static const struct PackSize sizes[PACK_KIND_COUNT] = {
    [PACK_SINGLE]       = {0, ""},
    [PACK_CLEATS]       = {50, "bag"},     /* also 25 and 100 */
    [PACK_CLIPS]        = {50, "bag"},     /* also 100 */
    [PACK_SCREWS]       = {100, "pack"},   /* also 200 */
    [PACK_PLUGS]        = {100, "pack"},
    [PACK_BOLTS]        = {50, "pack"},
    [PACK_TIES]         = {100, "bag"},
    [PACK_SADDLES]      = {50, "pack"},    /* also 100 */
    [PACK_GLANDS]       = {2, "kit"},
    [PACK_DUCT_COIL_25] = {25, "coil"},
    [PACK_DUCT_COIL_50] = {50, "coil"},
    [PACK_DUCT_STICK]   = {6, "length"},   /* also 2 and 3 m */
    [PACK_WARNING_TAPE] = {100, "roll"},   /* also 365 m */
    [PACK_DRAW_ROPE]    = {220, "roll"},   /* also 500 m */
    [PACK_SAND]         = {850, "bag"},    /* kilogram, bulk bag; also 25 kg */
    [PACK_CONDUIT]      = {3, "length"},
    [PACK_TRUNKING]     = {3, "length"},
    [PACK_TRAY]         = {3, "length"},
    [PACK_LABELS]       = {5, "pack"},     /* also 10 */
};
/* clang-format on */

struct PackSize pack_size(enum PackKind kind)
{
    return (int)kind >= 0 && kind < PACK_KIND_COUNT ? sizes[kind] : sizes[PACK_SINGLE];
}

const struct TableRef *pack_size_ref(void)
{
    static const struct TableRef ref = {"common practice, no source", "packs", "how articles are sold",
                                        TRUST_COMMON_PRACTICE, "from memory; the counter's own pack governs"};
    return &ref;
}
