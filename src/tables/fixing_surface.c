/* What holds a cleat, clip or saddle in the surface that it is fixed to. One of each to a fixing.
 *
 * Source: none; practice of the trade. That plasterboard alone does not hold a screw is seen in a craft textbook.
 * Trust:  from memory. The load sheet of a plug or an anchor goes before it.
 * Rows:   by surface; fence posts have rows of their own. On tray and ladder nothing is screwed. */
#include "tables_private.h"
#include "takeoff_tables.h"

/* clang-format off */
static const struct SurfaceGrip surfaces[SURFACE_COUNT] = {
    [SURFACE_BRICK] = {
        .words = "nylon plug 7 mm and woodscrew no. 10 x 50 mm",
        .screw_code = "screw-wood-10x50", .screw = "Woodscrew no. 10 x 50 mm, stainless steel", .screw_pack = PACK_SCREWS,
        .plug_code = "plug-7", .plug = "Nylon plug 7 mm for brick and block, no. 10 screw", .drill_mm = 7,
        .remark = "drill into the brick, not the joint, and brush out the dust"},
    [SURFACE_BLOCK] = {
        .words = "frame fixing 8 x 80 mm",
        .screw_code = "screw-frame-8x80", .screw = "Frame fixing 8 x 80 mm, long nylon plug with its screw", .screw_pack = PACK_SCREWS,
        .plug_code = "", .plug = "", .drill_mm = 8,
        .remark = "at least 50 mm into the block, hammer action off in aerated block"},
    [SURFACE_STONE] = {
        .words = "nylon plug 8 mm and woodscrew no. 12 x 60 mm",
        .screw_code = "screw-wood-12x60", .screw = "Woodscrew no. 12 x 60 mm, stainless steel", .screw_pack = PACK_SCREWS,
        .plug_code = "plug-8", .plug = "Nylon plug 8 mm for stone, no. 12 screw", .drill_mm = 8,
        .remark = "drill into sound stone, not the joint; in old soft stone without hammer, and try the first by hand"},
    [SURFACE_CONCRETE] = {
        .words = "through-bolt anchor M6 x 50 mm",
        .screw_code = "anchor-m6x50", .screw = "Through-bolt anchor M6 x 50 mm for concrete, with nut and washer", .screw_pack = PACK_BOLTS,
        .plug_code = "", .plug = "", .drill_mm = 6,
        .remark = "find the bars first and keep 50 mm from an edge"},
    [SURFACE_TIMBER] = {
        .words = "woodscrew no. 10 x 40 mm",
        .screw_code = "screw-wood-10x40-zinc", .screw = "Woodscrew no. 10 x 40 mm, zinc plated, indoors", .screw_pack = PACK_SCREWS,
        .plug_code = "", .plug = "", .drill_mm = 0,
        .remark = "at least 25 mm into sound timber"},
    [SURFACE_STEEL] = {
        .words = "girder clamp with M6 hole",
        .screw_code = "clamp-girder-m6", .screw = "Girder clamp, M6, with set screw", .screw_pack = PACK_SINGLE,
        .plug_code = "", .plug = "", .drill_mm = 0,
        .remark = "no hole in a main flange unasked"},
    [SURFACE_PLASTERBOARD] = {
        .words = "metal spring toggle M5, or a screw into the stud",
        .screw_code = "toggle-m5", .screw = "Metal spring toggle M5 for plasterboard", .screw_pack = PACK_BOLTS,
        .plug_code = "", .plug = "", .drill_mm = 0,
        .remark = "the board holds only very light cable: take the stud wherever there is one"},
};
static const struct SurfaceGrip fence_timber = {
    .words = "stainless woodscrew no. 10 x 40 mm",
    .screw_code = "screw-wood-10x40", .screw = "Woodscrew no. 10 x 40 mm, stainless steel, outdoors", .screw_pack = PACK_SCREWS,
    .plug_code = "", .plug = "", .drill_mm = 0,
    .remark = "to posts and rails, not to boards, which move"};
static const struct SurfaceGrip fence_concrete = {
    .words = "stainless band round the post, with buckle",
    .screw_code = "band-post", .screw = "Stainless steel band round a fence post, with buckle", .screw_pack = PACK_SINGLE,
    .plug_code = "", .plug = "", .drill_mm = 0,
    .remark = "a slim concrete post is not drilled"};
/* clang-format on */

bool surface_grip(enum Way way, enum Surface surface, const struct SurfaceGrip **out)
{
    if ((int)surface < 0 || surface >= SURFACE_COUNT) {
        return false;
    }
    *out = &surfaces[surface];
    if (way == WAY_FENCE && surface == SURFACE_TIMBER) {
        *out = &fence_timber;
    }
    if (way == WAY_FENCE && surface == SURFACE_CONCRETE) {
        *out = &fence_concrete;
    }
    return true;
}

const struct TableRef *surface_grip_ref(void)
{
    static const struct TableRef ref = {"common practice, no source", "grips", "what holds a fixing in a surface",
                                        "from memory"};
    return &ref;
}
