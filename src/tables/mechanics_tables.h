/** Published figures on bending, ducts and drawing in. The same rules as in tables.h: the safer row, nothing
 * interpolated, `false` where the table has no such figure, and *out is then untouched. */
#ifndef WEND_MECHANICS_TABLES_H
#define WEND_MECHANICS_TABLES_H

#include "base/base.h"
#include "survey/survey.h"
#include "tables.h"

/* ---- bending: bend_radius_*.c ---- */
/** Least inside radius of a bend as a multiple of the overall diameter (of a flat cable: its wide side); On-Site Guide
 * Table D5. Armoured: by the conductor, circular up to 16 mm2, shaped from 25 mm2; without armour by diameter. False
 * for a data cable, for the screened wall cable BS 8436, which no column is for, and for a size or diameter that is
 * none. */
bool bend_radius_factor(enum CableType type, double size_mm2, double overall_mm, double *out);
const struct TableRef *bend_radius_ref(void);
/** How sure the row of that cable is. */
enum Trust bend_radius_trust(enum CableType type);
/** The same for a four-pair data cable, lying in place. */
double bend_radius_data_factor(bool screened);
const struct TableRef *bend_radius_data_ref(void);
/** The same while the cable is drawn in. For armoured cable one overseas maker's figure: to warn by, no limit of its
 * own. False for cables that no source speaks of. */
bool bend_radius_drawn_factor(enum CableType type, double *out);
const struct TableRef *bend_radius_drawn_ref(void);

/* ---- ducts: duct_*.c ---- */
/** Least bore of a duct by its nominal outside size, mm; BS EN 61386-24. Between two sizes the smaller one's bore,
 * beyond the last the last one's; false below the first. `row` is the size that was taken. */
bool duct_bore(double nominal_mm, struct Figure *out);
/** The nominal sizes, mm, rising; returns how many. */
int duct_sizes(const double **nominal_mm);
const struct TableRef *duct_bore_ref(void);
/** How much of the bore's area the cables may take up, percent, by their number. False for no cable. */
bool duct_fill_allowed(int cables, double *out_percent);
/** What is left of that where the duct bends, by one distributor's advice; a part, 0..1. To warn by. */
double duct_fill_bent(void);
const struct TableRef *duct_fill_ref(void);
/** How much of a trunking's width times height the cables may take up, percent. */
double trunking_fill_percent(void);
const struct TableRef *trunking_fill_ref(void);
/** Bore over diameter of three equal cables at which they wedge beside each other, and what a bend adds to the bore. */
struct DuctJam {
    double low, high; /**< ratios; low jams, high does not */
    double bent;      /**< the bore of a bend over that of a straight duct */
    int cables;       /**< how many it takes */
};
struct DuctJam duct_jam(void);
const struct TableRef *duct_jam_ref(void);

/* ---- drawing in: pull_*.c ---- */
/** What a cable stands while it is drawn in. */
struct PullLimits {
    double copper_n_per_mm2;          /**< of all its copper, by an eye or a stocking */
    double stocking_n_per_mm;         /**< stocking, any cable: times the overall diameter, mm */
    double stocking_armour_n_per_mm2; /**< stocking on wire armour: times the diameter's square, mm2 */
    double sidewall_n_per_m;          /**< armoured cable pressed to the inside of a bend */
    double many;                      /**< part that is left when more than `many_over` cables are drawn in together */
    int many_over;
    double bends_deg; /**< most degrees of bend in one pull */
};
const struct PullLimits *pull_limits(void);
const struct TableRef *pull_limits_ref(void);
/** What the cable is covered with. */
enum PullSheath { PULL_SHEATH_PVC, PULL_SHEATH_PE, PULL_SHEATH_LOW_SMOKE, PULL_SHEATH_UNKNOWN, PULL_SHEATH_COUNT };
struct PullFriction {
    double low, high; /**< the band that sources give; equal where they give one figure */
};
/** Friction of a sheath in a plastic duct. */
bool pull_friction(enum PullSheath sheath, bool lubricated, struct PullFriction *out);
const struct TableRef *pull_friction_ref(void);
/** How sure the row of that sheath is. */
enum Trust pull_friction_trust(enum PullSheath sheath);

/* ---- trenches: trench_practice.c ---- */
/** How a trench for cable and duct is dug and filled. */
struct TrenchPractice {
    double hand_width_m, machine_width_m, more_width_m; /**< for one cable or duct; for each one more */
    double bed_m, top_m;                                /**< sand under and over */
    double bulking;                                     /**< loose over firm volume */
    double sand_kg_per_m3;
    double tape_above_m;
    double brace_m; /**< deeper than this the sides are supported before anyone goes in */
};
const struct TrenchPractice *trench_practice(void);
/** Usual least cover by what lies above, metre; UNDER_COUNT: that of a drive. */
double trench_cover(enum Under under);
const struct TableRef *trench_practice_ref(void);

/* ---- data beside power: separation_en50174.c ---- */
/** Clear distance between data and power cable in air without metal between them, mm, by the number of power circuits
 * of 20 A between line and neutral that the power comes to. False for none. */
bool separation_in_air_mm(int circuits, double *out);
/** In the ground, by what lies between them, mm. */
struct SeparationInGround {
    double earth_mm, masonry_mm, concrete_mm;
};
struct SeparationInGround separation_in_ground(void);
const struct TableRef *separation_ref(void);

/* ---- meter tails: tails_practice.c ---- */
struct TailsPractice {
    double line_mm2, earth_mm2; /**< of line and neutral, and of the earthing conductor that goes with them */
    double up_to_a;             /**< that this size carries; for more nothing is held */
    double ask_over_m;          /**< longer ones want a word with the distributor */
    double protect_over_m;      /**< longer ones a device of their own at the meter's end */
};
const struct TailsPractice *tails_practice(void);
/** Where it is from. */
const struct TableRef *tails_practice_ref(void);

/* ---- what asks for care on site: site_practice.c ---- */
struct SitePractice {
    double high_m;           /**< above it work is high */
    double lift_kg;          /**< above it two lift */
    double roof_summer_degc; /**< air in a roof void */
    double thickest_cable_m; /**< thicker than any that the tables hold */
    double rise_alike_m; /**< a rise this near to the depth may be the step into the trench; slips of a tape are less */
};
const struct SitePractice *site_practice(void);
const struct TableRef *site_practice_ref(void);

#endif
