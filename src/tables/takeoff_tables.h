/** Figures of the trade by which parts are counted. The same rules as in tables.h: `false` where the table has no such
 * figure, and *out is then untouched. Most of it is from memory and says so: the counter's own packs and a maker's
 * sheet go before it. */
#ifndef WEND_TAKEOFF_TABLES_H
#define WEND_TAKEOFF_TABLES_H

#include "base/base.h"
#include "survey/survey.h"
#include "tables.h"

/* ---- how articles are sold: order_packs.c, order_allowances.c ---- */
enum PackKind {
    PACK_SINGLE, /**< sold one by one, or by the metre cut */
    PACK_CLEATS,
    PACK_CLIPS,
    PACK_SCREWS,
    PACK_PLUGS,
    PACK_BOLTS,
    PACK_TIES,
    PACK_SADDLES,
    PACK_GLANDS,
    PACK_DUCT_COIL_25,
    PACK_DUCT_COIL_50,
    PACK_DUCT_STICK,
    PACK_WARNING_TAPE,
    PACK_DRAW_ROPE,
    PACK_SAND,
    PACK_CONDUIT,
    PACK_TRUNKING,
    PACK_TRAY,
    PACK_LABELS,
    PACK_KIND_COUNT
};
struct PackSize {
    int pieces;       /**< each, metre or kilogram in one; 0 for PACK_SINGLE */
    const char *word; /**< "bag"; "" for PACK_SINGLE */
};
struct PackSize pack_size(enum PackKind kind);
const struct TableRef *pack_size_ref(void);

/** What is ordered on top of what is counted. */
struct OrderAllowances {
    double duct_percent, tape_percent, sand_percent;
    double rope_m;         /**< of each draw rope beyond its duct */
    int couplers;          /**< spare, where any are used */
    int glands, gland_top; /**< spare glands where more than gland_top are used */
};
const struct OrderAllowances *order_allowances(void);
const struct TableRef *order_allowances_ref(void);

/* ---- what a fixing holds in: fixing_surface.c ---- */
enum Grip {
    GRIP_BRICK,
    GRIP_BLOCK,
    GRIP_STONE,
    GRIP_CONCRETE,
    GRIP_TIMBER,
    GRIP_STEEL,
    GRIP_PLASTERBOARD,
    GRIP_FENCE_TIMBER,
    GRIP_FENCE_CONCRETE,
    GRIP_COUNT
};
struct SurfaceGrip {
    enum Grip kind;
    const char *screw_code; /**< "screw-wood-10x50" */
    enum PackKind screw_pack;
    const char *plug_code; /**< "" where it takes none */
    double drill_mm;       /**< hole for the plug or the anchor; 0 none */
};
/** What one fixing takes on this way and surface; false where the surface was not surveyed. */
bool surface_grip(enum Way way, enum Surface surface, const struct SurfaceGrip **out);
const struct TableRef *surface_grip_ref(void);

/* ---- containment: conduit_spacing_d3.c, trunking_spacing_d4.c, containment_practice.c ---- */
/** Spacing of saddles of rigid conduit, metre, by its size; On-Site Guide Table D3. MATERIAL_COUNT: not known, the
 * closer of the two. */
bool conduit_spacing(enum Material material, double size_mm, bool vertical, double *out_m);
const struct TableRef *conduit_spacing_ref(void);
/** Spacing of fixings of trunking, metre, by its cross-section; On-Site Guide Table D4, the closer of metal and
 * insulating. False below 300 mm2. */
bool trunking_spacing(double section_mm2, bool vertical, double *out_m);
const struct TableRef *trunking_spacing_ref(void);
struct ContainmentPractice {
    double draw_length_m;  /**< longest between two points of drawing in */
    double draw_bends_deg; /**< most bends between them */
    double expansion_m;    /**< plastic conduit: an expansion coupler every */
    double tray_support_m; /**< greatest spacing of supports under tray and ladder */
    int tray_fixings;      /**< of each support to what carries it */
    double catenary_end_m; /**< wire for the turn and grips at each end */
    int catenary_grips;    /**< wire rope grips at each end */
    double near_end_m;     /**< first fixing from a gland or a bend, at most */
};
const struct ContainmentPractice *containment_practice(void);
const struct TableRef *containment_practice_ref(void);

/* ---- catenaries: wire_grips_en13411.c ---- */
struct WireGrips {
    int count;        /**< of an eye */
    double torque_nm; /**< of the nuts, threads greased */
};
/** False beyond the largest. */
bool wire_grips(double wire_mm, struct WireGrips *out);
const struct TableRef *wire_grips_ref(void);

/* ---- glands: gland_range_bs6121.c ---- */
struct GlandRange {
    double inner_min_mm, inner_max_mm, outer_min_mm, outer_max_mm;
};
bool gland_range(const char *size, struct GlandRange *out);
const struct TableRef *gland_range_ref(void);

/* ---- walls: wall_hole.c ---- */
/** Least hole for a cable of this diameter, mm. */
double wall_hole_mm(double cable_mm);
/** The drill for a hole of at least this; false beyond the largest. */
bool wall_drill(double least_mm, double *out_mm);
/** Least length of the drill for a wall of this thickness, mm. */
double wall_drill_mm(double thickness_mm);
/** Depth of the seal at each face, mm; what a tube of it holds, ml; fall to the outside, one in ...; how much wider
 * than a sleeve its hole is; holes above this are cored. */
struct WallSeal {
    double depth_mm, tube_ml, fall, sleeve_play_mm, core_above_mm;
};
const struct WallSeal *wall_seal(void);
const struct TableRef *wall_hole_ref(void);

/* ---- what no other table has: takeoff_practice.c ---- */
struct TakeoffPractice {
    double rigid_duct_from_mm;   /**< duct comes in rigid lengths, below it in coils */
    double compound_m_per_litre; /**< of cable drawn in */
    double rod_section_m;        /**< extensible rods are sold in */
    double earth_lead_m;         /**< from the nearest rod to the bar where nobody measured it */
    double main_switch_a;
    double longer_conduit_m;                  /**< of steel */
    double upright_slope;                     /**< rise over length from which a cable counts as upright */
    double thinnest_armoured_mm, thinnest_mm; /**< that the spacings of fixings are held for */
    double makes_differ;                      /**< share of the diameter of cables of one size */
    double shaped_first_mm2, shaped_last_mm2; /**< where some makes have shaped conductors and some round ones */
};
const struct TakeoffPractice *takeoff_practice(void);
const struct TableRef *takeoff_practice_ref(void);

#endif
