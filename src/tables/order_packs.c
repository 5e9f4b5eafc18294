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

void pack_size_cells(struct TextBuilder *out)
{
    static const struct {
        const char *article, *unit;
    } of[PACK_KIND_COUNT] = {
        [PACK_SINGLE] = {"", ""},
        [PACK_CLEATS] = {"cleats", "each"},
        [PACK_CLIPS] = {"clips", "each"},
        [PACK_SCREWS] = {"screws", "each"},
        [PACK_PLUGS] = {"plugs", "each"},
        [PACK_BOLTS] = {"bolts and anchors", "each"},
        [PACK_TIES] = {"ties", "each"},
        [PACK_SADDLES] = {"saddles", "each"},
        [PACK_GLANDS] = {"glands", "each"},
        [PACK_DUCT_COIL_25] = {"duct in short coils", "m"},
        [PACK_DUCT_COIL_50] = {"duct in long coils", "m"},
        [PACK_DUCT_STICK] = {"rigid duct", "m"},
        [PACK_WARNING_TAPE] = {"warning tape", "m"},
        [PACK_DRAW_ROPE] = {"draw rope", "m"},
        [PACK_SAND] = {"sand", "kg"},
        [PACK_CONDUIT] = {"conduit", "m"},
        [PACK_TRUNKING] = {"trunking", "m"},
        [PACK_TRAY] = {"tray and ladder", "m"},
        [PACK_LABELS] = {"labels", "each"},
    };
    text_add(out, "article,sold by,of,unit\n");
    for (int kind = PACK_SINGLE + 1; kind < PACK_KIND_COUNT; kind++) {
        cells_text(out, of[kind].article, false);
        cells_text(out, sizes[kind].word, false);
        cells_number(out, sizes[kind].pieces, false);
        cells_text(out, of[kind].unit, true);
    }
}

const struct TableRef *pack_size_ref(void)
{
    static const struct TableRef ref = {.standard = "common practice, no source",
                                        "packs",
                                        "how articles are sold",
                                        TRUST_COMMON_PRACTICE,
                                        "from memory; the counter's own pack governs",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
