/** What the table files share: the shape of a table, the blank cell, and the named ways of searching. */
#ifndef WEND_TABLES_PRIVATE_H
#define WEND_TABLES_PRIVATE_H

#include "tables.h"

#include <math.h>

/** Edition of the wiring regulations that the tables are taken from, unless a file says otherwise. */
#define EDITION_BS7671 "2018+A2:2022"
#define TABLES_BS7671  .edition = EDITION_BS7671, .standard = "BS 7671"

/** A cell that the print leaves blank. Every published figure is above zero, so this can never be one. */
#define NOT_GIVEN (-1.0)

#define COUNT_OF(array) ((int)(sizeof(array) / sizeof((array)[0])))

/* ---- lookup.c: the searches, each by its own name ---- */

/** a == b but for the last digits that arithmetic leaves behind: far finer than any printed figure, far coarser than
 * the error of a few sums. Here, since every row of every table is compared by it. */
static inline bool lookup_same(double a, double b)
{
    const double apart = fabs(a - b);
    const double larger = fabs(a) > fabs(b) ? fabs(a) : fabs(b);
    return isfinite(apart) && apart <= 1e-9 * (larger > 1.0 ? larger : 1.0);
}
/** What stands before, 0 the same, of rows by cores and then by size, both rising: below 0 the first. */
static inline int lookup_order(int cores, double size_mm2, int other_cores, double other_mm2)
{
    return cores != other_cores               ? cores - other_cores
           : lookup_same(size_mm2, other_mm2) ? 0
                                              : (size_mm2 > other_mm2) - (size_mm2 < other_mm2);
}
/** The row whose key is `wanted`; false when the table has no such row. Keys rise. */
bool lookup_exact(const double *keys, int count, double wanted, int *out_row);
/** The first row whose key is `wanted` or more, so every value below the first row takes the first; false beyond
 * the last row. Only for tables in which a larger key is the safer one. */
bool lookup_next_up(const double *keys, int count, double wanted, int *out_row);
/** The figure of a cell; false for a blank one. */
bool lookup_cell(double cell, double *out);

/** A table of factors: one key a row, `columns` cells a row, row after row. */
struct FactorTable {
    struct TableRef ref;
    const double *keys;
    int rows;
    const double *cells;
    int columns;
};
/** Factor and row by lookup_next_up(); false for a blank cell, a column out of range or beyond the last row. */
bool lookup_factor(const struct FactorTable *table, double wanted, int column, struct Figure *out);

/* ---- capacity tables ---- */
struct CapacityColumn {
    enum Method method;
    int loaded;
};
struct CapacityData {
    struct TableRef ref;
    double degc; /**< of the conductor */
    const double *sizes_mm2;
    int sizes;
    const struct CapacityColumn *columns;
    int column_count;
    const double *cells_a; /**< `column_count` cells a size, size after size */
};

/* ---- voltage drop tables ---- */
/** One size; mV per ampere and metre. A size with one figure a column has it as r and as z, and x NOT_GIVEN. */
struct DropRow {
    double dc;
    double r1, x1, z1; /**< single-phase a.c. */
    double r3, x3, z3; /**< three-phase a.c., line to line */
};
/** The three members of a column for which the print gives a single figure, or none. */
#define ONE_FIGURE(mv) (mv), NOT_GIVEN, (mv)
#define NO_FIGURE      NOT_GIVEN, NOT_GIVEN, NOT_GIVEN
struct DropData {
    struct TableRef ref;
    double degc;
    const double *sizes_mm2;
    int sizes;
    const struct DropRow *rows; /**< one a size */
};

/* ---- standard ratings of devices, gathered by device_ratings.c ---- */
struct RatingList {
    struct TableRef ref;
    const double *ratings_a;
    int count;
};
extern const struct RatingList device_ratings_breaker, device_ratings_bs88_2, device_ratings_bs88_3,
    device_ratings_bs1361, device_ratings_bs3036;

/* ---- figures as cells: table_cells.c, and of each of these in its own file ---- */
/** Tables that no edition has of its own, in the order of their list; then those that it has. */
#define OTHER_TABLES(TABLE)                                                                                            \
    TABLE(grouping_unlike)                                                                                             \
    TABLE(conductor_resistance)                                                                                        \
    TABLE(cable_dimensions)                                                                                            \
    TABLE(gland_usual)                                                                                                 \
    TABLE(gland)                                                                                                       \
    TABLE(support_spacing)                                                                                             \
    TABLE(hook_cleat)                                                                                                  \
    TABLE(armour_loop)                                                                                                 \
    TABLE(flat_protective_core)                                                                                        \
    TABLE(armour)                                                                                                      \
    TABLE(let_through)                                                                                                 \
    TABLE(first_loop)                                                                                                  \
    TABLE(residual_time)                                                                                               \
    TABLE(clause_figures)                                                                                              \
    TABLE(design_practice)                                                                                             \
    TABLE(breaker_holds)                                                                                               \
    TABLE(residual_rating)                                                                                             \
    TABLE(clause_ratings)                                                                                              \
    TABLE(meter_errors)                                                                                                \
    TABLE(reading_practice)                                                                                            \
    TABLE(harmonic)                                                                                                    \
    TABLE(bend_radius)                                                                                                 \
    TABLE(bend_radius_data)                                                                                            \
    TABLE(bend_radius_drawn)                                                                                           \
    TABLE(duct_bore)                                                                                                   \
    TABLE(duct_fill)                                                                                                   \
    TABLE(trunking_fill)                                                                                               \
    TABLE(duct_jam)                                                                                                    \
    TABLE(pull_limits)                                                                                                 \
    TABLE(pull_friction)                                                                                               \
    TABLE(separation)                                                                                                  \
    TABLE(pack_size)                                                                                                   \
    TABLE(order_allowances)                                                                                            \
    TABLE(surface_grip)                                                                                                \
    TABLE(conduit_spacing)                                                                                             \
    TABLE(trunking_spacing)                                                                                            \
    TABLE(containment_practice)                                                                                        \
    TABLE(wire_grips)                                                                                                  \
    TABLE(gland_range)                                                                                                 \
    TABLE(trench_practice)                                                                                             \
    TABLE(tails_practice)                                                                                              \
    TABLE(wall_hole)                                                                                                   \
    TABLE(site_practice)                                                                                               \
    TABLE(takeoff_practice)
#define TABLE(name) void name##_cells(struct TextBuilder *out);
OTHER_TABLES(TABLE)
#undef TABLE
#define EDITION_TABLES(TABLE)                                                                                          \
    TABLE(protective_by_table)                                                                                         \
    TABLE(bonding_tn_c_s)                                                                                              \
    TABLE(buried_earthing)                                                                                             \
    TABLE(residual_loop_limit)                                                                                         \
    TABLE(voltage_factor)                                                                                              \
    TABLE(location_rule)
#define TABLE(name) void name##_cells(const struct Edition *edition, struct TextBuilder *out);
EDITION_TABLES(TABLE)
#undef TABLE
/** A cell without a comma in it, and what parts it from the next. */
void cells_text(struct TextBuilder *out, const char *text, bool last);
/** The same of a number: none for NOT_GIVEN, "beyond" for one without end. */
void cells_number(struct TextBuilder *out, double value, bool last);
/** Numbers to the end of a line. */
void cells_row(struct TextBuilder *out, const double *cells, int count);
struct OneFigure {
    const char *what;
    double value;
    const char *unit;
};
/** Figures that stand alone, with their heads. */
void cells_figures(struct TextBuilder *out, const struct OneFigure *figures, int count);

/* ---- glands ---- */
/** The gland size that usually fits a BS 5467 cable; "" when no list gives one. */
const char *gland_usual(int cores, double size_mm2);
const struct TableRef *gland_usual_ref(void);

#endif
