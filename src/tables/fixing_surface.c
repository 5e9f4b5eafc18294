/* What holds a cleat, clip or saddle in the surface that it is fixed to. One of each to a fixing.
 *
 * Source: none; practice of the trade. That plasterboard alone does not hold a screw is seen in a craft textbook.
 * Trust:  from memory. The load sheet of a plug or an anchor overrides it.
 * Rows:   by surface: the screw, how it is sold, the plug, the hole in mm; fence posts have rows of their own. On tray
 *         and ladder nothing is screwed. */
#include "tables_private.h"
#include "takeoff_tables.h"

/* clang-format off */
static const struct SurfaceGrip surfaces[SURFACE_COUNT] = {
    [SURFACE_BRICK] = {GRIP_BRICK, "screw-wood-10x50", PACK_SCREWS, "plug-7", 7},
    [SURFACE_BLOCK] = {GRIP_BLOCK, "screw-frame-8x80", PACK_SCREWS, "", 8},
    [SURFACE_STONE] = {GRIP_STONE, "screw-wood-12x60", PACK_SCREWS, "plug-8", 8},
    [SURFACE_CONCRETE] = {GRIP_CONCRETE, "anchor-m6x50", PACK_BOLTS, "", 6},
    [SURFACE_TIMBER] = {GRIP_TIMBER, "screw-wood-10x40-zinc", PACK_SCREWS, "", 0},
    [SURFACE_STEEL] = {GRIP_STEEL, "clamp-girder-m6", PACK_SINGLE, "", 0},
    [SURFACE_PLASTERBOARD] = {GRIP_PLASTERBOARD, "toggle-m5", PACK_BOLTS, "", 0},
};
static const struct SurfaceGrip fence_timber = {GRIP_FENCE_TIMBER, "screw-wood-10x40", PACK_SCREWS, "", 0};
static const struct SurfaceGrip fence_concrete = {GRIP_FENCE_CONCRETE, "band-post", PACK_SINGLE, "", 0};
/* clang-format on */

bool surface_grip(enum Way way, enum Surface surface, const struct SurfaceGrip **out)
{
    if ((int)surface < 0 || surface >= SURFACE_COUNT) {
        return false;
    }
    *out = &surfaces[surface];
    /* of all that a cable is clipped to, a fence alone is held by its posts */
    if (way == WAY_FENCE && surface == SURFACE_TIMBER) {
        *out = &fence_timber;
    }
    if (way == WAY_FENCE && surface == SURFACE_CONCRETE) {
        *out = &fence_concrete;
    }
    return true;
}

void surface_grip_cells(struct TextBuilder *out)
{
    const struct SurfaceGrip *const posts[] = {&fence_timber, &fence_concrete};
    text_add(out, "surface,screw,plug,hole mm\n");
    for (int row = 0; row < SURFACE_COUNT + COUNT_OF(posts); row++) {
        const struct SurfaceGrip *grip = row < SURFACE_COUNT ? &surfaces[row] : posts[row - SURFACE_COUNT];
        const int surface = row < SURFACE_COUNT ? row : grip == &fence_timber ? SURFACE_TIMBER : SURFACE_CONCRETE;
        text_print(out, "%s%s,", row < SURFACE_COUNT ? "" : "fence post ", survey_word(WORDS_SURFACE, surface));
        cells_text(out, grip->screw_code, false);
        cells_text(out, grip->plug_code, false);
        cells_number(out, grip->drill_mm > 0 ? grip->drill_mm : NOT_GIVEN, true);
    }
}

const struct TableRef *surface_grip_ref(void)
{
    static const struct TableRef ref = {.standard = "common practice, no source",
                                        "grips",
                                        "what holds a fixing in a surface",
                                        TRUST_COMMON_PRACTICE,
                                        "from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
