/** Published figures. One look-up function a table; a file a table in src/tables/, its source at its head.
 *
 * Between rows the safer row is taken and given back as `row`, so that documents can say which; nothing is
 * interpolated or extrapolated. `false` means: the table has no such figure, and *out is untouched. */
#ifndef WEND_TABLES_H
#define WEND_TABLES_H

#include "base/base.h"
#include "survey/survey.h"

/** How a paper names a table: by standard and number, or in words, since it has no number. `table_said()` says them. */
enum TableWords {
    TABLE_BY_NUMBER,
    TABLE_NOT_CITED, /**< no paper names it; cautions and notes say what they rest on */
    TABLE_STANDARD_ALONE,
    TABLE_IN_APPENDIX_3,
    TABLE_IN_APPENDIX_4,
    TABLE_IN_ANNEX_ZA,
    TABLE_B_52_17_ITEM_3,
    TABLE_OF_ARMOUR,
    TABLE_OF_DATA_BENDS,
    TABLE_OF_DIMENSIONS,
    TABLE_OF_DUCT_FILL,
    TABLE_OF_FRICTION,
    TABLE_OF_FUSE_TYPES,
    TABLE_OF_JAM,
    TABLE_OF_LEAST_BORES,
    TABLE_OF_OPERATING_TIMES,
    TABLE_OF_PREFERRED_RATINGS,
    TABLE_OF_PULL_LIMITS,
    TABLE_OF_TRUNKING_FILL
};

/** Where a figure is from. */
struct TableRef {
    const char *standard; /**< "BS 7671" */
    const char *table;    /**< "4E4A", "operating times": what `wend table` calls it */
    const char *title;    /**< what it holds, in plain words */
    enum Trust trust;
    const char *seen;      /**< who has seen what of it: "two sources", "from memory, 32 A seen" */
    const char *edition;   /**< of the standard: "2018+A2:2022"; NULL not named */
    enum TableWords words; /**< what papers call it */
};
/** "BS 7671:2018+A2:2022". */
const char *table_standard(struct Arena *arena, const struct TableRef *ref);

/** A figure and the row of the table that it stands in. */
struct Figure {
    double value;
    double row;
};

/** An edition of the wiring rules. Look-ups of figures that the next edition may change take it. */
struct Edition;
/** The one that plans are made by. */
const struct Edition *edition_held(void);
/** "BS 7671:2018+A2:2022". */
const char *edition_name(const struct Edition *edition);
/** The years of later ones that are not covered; NULL: no more that are known of. */
const char *edition_beyond(const struct Edition *edition, int index);

/** Reference methods of IEC 60364-5-52. */
enum Method {
    METHOD_A,
    METHOD_B,
    METHOD_C,
    METHOD_D,
    METHOD_E,
    METHOD_100,
    METHOD_101,
    METHOD_102,
    METHOD_103,
    METHOD_COUNT
};
/** "A" ... "103". */
const char *method_name(enum Method method);

/* ---- current-carrying capacity: capacity_*.c ---- */
#define CAPACITY_TABLES(TABLE)                                                                                         \
    TABLE(4D2A, capacity_4d2a)                                                                                         \
    TABLE(4D4A, capacity_4d4a)                                                                                         \
    TABLE(4D5, capacity_4d5)                                                                                           \
    TABLE(4E2A, capacity_4e2a)                                                                                         \
    TABLE(4E4A, capacity_4e4a)
#define TABLE(name, figures) CAPACITY_##name,
enum CapacityTable { CAPACITY_TABLES(TABLE) CAPACITY_COUNT, CAPACITY_NONE = CAPACITY_COUNT };
#undef TABLE
const struct TableRef *capacity_ref(const struct Edition *edition, enum CapacityTable table);
/** Conductor temperature of the table, degC (70 or 90). */
double capacity_degc(const struct Edition *edition, enum CapacityTable table);
/** The sizes of the table, mm2, rising; returns how many. */
int capacity_sizes(const struct Edition *edition, enum CapacityTable table, const double **sizes_mm2);
/** Tabulated capacity It, ampere, of one cable with `loaded` (2 or 3) loaded conductors; false for an empty cell,
 * an unknown size or a column that the table does not have. */
bool capacity_amperes(const struct Edition *edition, enum CapacityTable table, double size_mm2, enum Method method,
                      int loaded, double *out_a);
/** True when the table has the column at all, whatever the size. */
bool capacity_has_method(const struct Edition *edition, enum CapacityTable table, enum Method method, int loaded);

/* ---- voltage drop: voltdrop_*.c ---- */
#define DROP_TABLES(TABLE)                                                                                             \
    TABLE(4D2B, voltdrop_4d2b)                                                                                         \
    TABLE(4D4B, voltdrop_4d4b)                                                                                         \
    TABLE(4D5, voltdrop_4d5)                                                                                           \
    TABLE(4E2B, voltdrop_4e2b)                                                                                         \
    TABLE(4E4B, voltdrop_4e4b)
#define TABLE(name, figures) DROP_##name,
enum DropTable { DROP_TABLES(TABLE) DROP_COUNT, DROP_NONE = DROP_COUNT };
#undef TABLE
struct DropFigure {
    double r, x, z; /**< mV per ampere and metre; three-phase figures are line to line */
    bool split;     /**< false up to 16 mm2, where the table gives one figure: then r == z and x == 0 */
};
const struct TableRef *drop_ref(const struct Edition *edition, enum DropTable table);
double drop_degc(const struct Edition *edition, enum DropTable table);
/** a.c. figures for 1 or 3 phases. */
bool drop_figure(const struct Edition *edition, enum DropTable table, double size_mm2, int phases,
                 struct DropFigure *out);
/** The d.c. column, mV per ampere and metre. */
bool drop_figure_dc(const struct Edition *edition, enum DropTable table, double size_mm2, double *out);

/* ---- rating factors ---- */
#define FACTOR_TABLES(TABLE)                                                                                           \
    TABLE(AIR, ambient_air_4b1)                                                                                        \
    TABLE(GROUND, ambient_ground_4b2)                                                                                  \
    TABLE(SOIL, soil_resistivity_4b3)                                                                                  \
    TABLE(DEPTH, laying_depth_4b4)                                                                                     \
    TABLE(INSULATION, insulation_length_52_2)                                                                          \
    TABLE(GROUPED_AIR, grouping_air_4c1)                                                                               \
    TABLE(GROUPED_CEILING, grouping_ceiling_b52_17)                                                                    \
    TABLE(GROUPED_BURIED, grouping_buried_4c2)                                                                         \
    TABLE(GROUPED_DUCTS, grouping_ducts_4c3)
#define TABLE(name, figures) FACTORS_##name,
enum FactorTables { FACTOR_TABLES(TABLE) FACTORS_COUNT };
#undef TABLE
/** NULL for FACTORS_COUNT. */
const struct TableRef *factors_ref(const struct Edition *edition, enum FactorTables table);
/** Ca in air, Table 4B1, base 30 degC; next hotter row, the coolest row below it. `insulation_degc` 70 or 90. */
bool ambient_air(const struct Edition *edition, double insulation_degc, double air_degc, struct Figure *out);
/** Ca in ground, Table 4B2, base 20 degC; next hotter row. */
bool ambient_ground(const struct Edition *edition, double insulation_degc, double ground_degc, struct Figure *out);
/** Cs, Table 4B3, base 2.5 K.m/W; next drier row. */
bool soil_resistivity(const struct Edition *edition, double k_m_per_w, bool in_duct, struct Figure *out);
/** Cd, Table 4B4, base 0.7 m; next deeper row; shallower than the first row takes the first row. The caller caps it. */
bool laying_depth(const struct Edition *edition, double depth_m, bool in_duct, struct Figure *out);
/** Ci, Table 52.2, for conductors up to 10 mm2; next longer row, 500 mm and over 0.50. */
bool insulation_length(const struct Edition *edition, double length_mm, struct Figure *out);
/** The largest conductor that Table 52.2 speaks of, mm2. */
double insulation_length_largest_mm2(void);
/** Columns of Table 4C1 (and IEC 60364-5-52 Table B.52.17 item 3 for the ceiling). */
enum GroupAir {
    GROUP_BUNCHED,
    GROUP_WALL_LAYER,
    GROUP_CEILING_LAYER,
    GROUP_TRAY_LAYER,
    GROUP_LADDER_LAYER,
    GROUP_AIR_COUNT
};
/** Cg in air; next larger number of circuits; false beyond 20. */
bool grouping_air(const struct Edition *edition, enum GroupAir column, int circuits, struct Figure *out);
const struct TableRef *grouping_air_ref(const struct Edition *edition, enum GroupAir column);
/** Columns of Table 4C2, cables direct in the ground, by clear distance. */
enum GroupBuried {
    BURIED_TOUCHING,
    BURIED_ONE_DIAMETER,
    BURIED_125_MM,
    BURIED_250_MM,
    BURIED_500_MM,
    GROUP_BURIED_COUNT
};
bool grouping_buried(const struct Edition *edition, enum GroupBuried column, int circuits, struct Figure *out);
/** Columns of Table 4C3, one multicore cable in each duct, by clear distance between ducts. */
enum GroupDucts { DUCTS_TOUCHING, DUCTS_250_MM, DUCTS_500_MM, DUCTS_1000_MM, GROUP_DUCTS_COUNT };
bool grouping_ducts(const struct Edition *edition, enum GroupDucts column, int circuits, struct Figure *out);
/** Whether conductors from `least_mm2` to `most_mm2` lie within three neighbouring standard sizes, as those tables
 * presume. */
bool grouping_sizes_alike(double least_mm2, double most_mm2);
/** Cg where they do not: 1 / sqrt(circuits). */
double grouping_unlike(int circuits);
const struct TableRef *grouping_unlike_ref(void);

/* ---- conductors, devices, things ---- */
/** Greatest d.c. resistance at 20 degC of plain copper class 2, ohm per metre; IEC 60228 Table 2. */
bool conductor_resistance(double size_mm2, double *ohm_per_m);
const struct TableRef *conductor_resistance_ref(void);
/** Standard rated currents of a kind of device, ampere, rising; returns how many. */
int device_ratings(enum DeviceKind kind, const double **ratings_a);
const struct TableRef *device_ratings_ref(enum DeviceKind kind);

/** BS 5467 armoured cable as a thing, and BS 6724, which is built to its dimensions. Where two makes differ, the larger
 * diameters are given. */
struct CableDimensions {
    double under_armour_mm, overall_mm, wire_mm;
    double weight_kg_per_km; /**< 0 when the datasheets do not say */
    const char *usual_gland; /**< "20S"; "" when no list gives one */
};
bool cable_dimensions(enum CableType type, int cores, double size_mm2, struct CableDimensions *out);
/** Overall diameter of the thickest of its kind with no more copper, mm; 0 when none is held. */
double cable_thickest_up_to(enum CableType type, int cores, double size_mm2);
const struct TableRef *cable_dimensions_ref(void);
/** Spacing of fixings, metre; On-Site Guide Table D1. False for a diameter that the table does not give. */
bool support_spacing(bool armoured, double overall_mm, bool vertical, double *out_m);
const struct TableRef *support_spacing_ref(void);
/** Hook cleat number (bore in tenths of an inch) for an overall diameter; false beyond the largest. */
bool hook_cleat(double overall_mm, int *out_number);
const struct TableRef *hook_cleat_ref(void);
/** Entry thread of a gland size ("20S" -> "M20"); false when unknown. */
bool gland_thread(const char *size, const char **out_thread);
const struct TableRef *gland_ref(void);

/** A caution of the trade; what it says is SAY_CAUTION_ and its name. */
enum CautionId {
#define CAUTION(symbol, where, trust, source) CAUTION_##symbol,
#include "cautions.inc"
#undef CAUTION
    CAUTION_COUNT
};
/** Where the crew reads it: on the brief, or under a heading of the card that holds for every job. */
enum CautionPlace { OF_ROUTE, CARD_DEAD, CARD_DIG, CARD_HIGH, CARD_DRILL, CARD_CABLE, CARD_FINISH, CAUTION_PLACES };
/** What else is true of a caution: it bites at a place, so it is on the drawing though it is on the card; it is said
 * where the armour is not connected, or beside the rods, instead of with the job's others; somebody else must answer
 * before the day. */
enum CautionTrait { DRAWN_TOO = 0x100, AT_STOPPED_ARMOUR = 0x200, AT_RODS = 0x400, ASKS_BEFORE = 0x800 };
/** OF_ROUTE out of range. */
enum CautionPlace caution_place(enum CautionId id);
/** False out of range. */
bool caution_has(enum CautionId id, enum CautionTrait trait);
/** Its source, "" where that is common practice, NULL for CAUTION_COUNT. */
const char *caution_source(enum CautionId id);
/** TRUST_COMMON_PRACTICE out of range. */
enum Trust caution_trust(enum CautionId id);

/** Every table that the program holds, for `wend tables` and the self-check. */
int tables_count(void);
const struct TableRef *tables_at(int index);
/** Adds its figures as CSV, a line of heads first, blank cells empty, no comma within a cell; false out of range. */
bool tables_cells(int index, struct TextBuilder *out);

#endif
