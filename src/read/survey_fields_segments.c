/* The route language: a segment with its bends, neighbours and duct. */
#include "survey_fields_private.h"

#define FIXED     (W(WALL) | W(FENCE) | W(BEAM) | W(LOFT_VOID) | W(TRAY) | W(LADDER) | W(CONDUIT) | W(TRUNKING))
#define SUNNY     (W(WALL) | W(FENCE) | W(BEAM) | W(CONDUIT) | W(TRUNKING) | W(TRAY) | W(LADDER) | W(CATENARY))
#define INSULATED (W(WALL) | W(BEAM) | W(LOFT_VOID) | W(UNDER_FLOOR) | W(STUD_WALL) | W(CEILING) | W(THROUGH_WALL))
#define HELD      (W(CONDUIT) | W(TRUNKING) | W(TRAY) | W(LADDER) | W(CATENARY))
#define GROUND    (W(DUCT) | W(BURIED))
#define LOOSE                                                                                                          \
    (W(WALL) | W(FENCE) | W(BEAM) | W(LOFT_VOID) | W(UNDER_FLOOR) | W(CEILING) | W(TRAY) | W(LADDER) | W(CATENARY) |   \
     W(BURIED))
#define DRAWABLE                                                                                                       \
    (W(WALL) | W(FENCE) | W(BEAM) | W(LOFT_VOID) | W(UNDER_FLOOR) | W(STUD_WALL) | W(CEILING) | W(TRUNKING) | W(TRAY))

/* clang-format off */
static const struct Field bend_fields[] = {
    {.key = "angle", NUMBER(DEGREE, 1, 180), AT(BendRead, angle_deg), .required = FIELD_ALWAYS,
     .help = "how far it turns"},
    {.key = "radius", NUMBER(DEPTH, 0.005, 20), AT(BendRead, radius_m), .default_text = "the cable's smallest",
     .help = "of the bend's inside"},
};
/* clang-format on */
static const struct FieldTable bend_table = {.name = "a bend",
                                             .title = "segments[].bends[]",
                                             TABLE(bend_fields, .help = "one bend; or bends: 2 for right angles")};

/* clang-format off */
static const struct Field landmark_fields[] = {
    {.key = "what", WORD(LANDMARK), AT(Landmark, what), .required = FIELD_ALWAYS, .help = "what it is"},
    {.key = "at", NUMBER(METRE, 0, 5000), AT(Landmark, at_m), .required = FIELD_ALWAYS,
     .help = "distance along the cable from the start of the segment"},
    {.key = "off", NUMBER(METRE, 0, 100), AT(Landmark, off_m), .default_text = "on the line",
     .help = "how far it is from the line of the cable"},
    {.key = "side", WORD(SIDE), AT(Landmark, side), GIVEN(Landmark, side_given),
     .help = "on which side, coming from the supply end; needed with off"},
    {.key = "note", .kind = FIELD_NAME, AT(Landmark, note), .longest = 60,
     .help = "what more there is to say; needed where it is other"},
};
/* clang-format on */
static const struct FieldTable landmark_table = {
    .name = "a mark",
    .title = "segments[].marks[]",
    TABLE(landmark_fields, .help = "what stands on or beside the way, for the drawing")};

/* clang-format off */
static const struct Field beside_fields[] = {
    {.key = "circuits", .kind = FIELD_WHOLE, AT(Beside, circuits), .least = 1, .most = 100, .required = FIELD_ALWAYS,
     .help = "other loaded circuits already there"},
    {.key = "arrangement", WORD(ARRANGEMENT), AT(Beside, arrangement), GIVEN(Beside, arrangement_given),
     DEFAULT(ARRANGEMENT_BUNCHED), .help = "how they lie"},
    {.key = "gap", NUMBER(DEPTH, 0.001, 10), AT(Beside, gap_m),
     .help = "clear distance between ducts, for duct-spaced"},
    {.key = "unlike", .kind = FIELD_YES, AT(Beside, unlike), GIVEN(Beside, unlike_given), .default_text = "no",
     .help = "whether their conductors and those of the runs here spread over more than three neighbouring sizes"},
    {.key = "diameter", NUMBER(MILLIMETRE, 1, 200), AT(Beside, diameter_mm),
     .help = "overall, of the thickest of their cables, one a circuit; whether all go into the duct is not known "
      "without it"},
};
/* clang-format on */
static const struct FieldTable beside_table = {
    .name = "beside", .title = "segments[].beside", TABLE(beside_fields, .help = "other circuits that warm the cable")};

/* clang-format off */
static const struct Field duct_fields[] = {
    {.key = "size", NUMBER(MILLIMETRE, 10, 1000), AT(Segment, duct_size_mm),
     .help = "nominal outside size of the duct"},
    {.key = "bore", NUMBER(MILLIMETRE, 5, 1000), AT(Segment, duct_bore_mm),
     .default_text = "the least that the standard asks of its size",
     .help = "its bore, where it is known; ducts as sold are wider than the standard asks"},
    {.key = "laid", WORD(LAID), AT(Segment, duct_laid), DEFAULT(LAID_NEW), .help = "whether it is there already"},
    {.key = "rope", .kind = FIELD_YES, AT(Segment, duct_rope), .default_text = "no",
     .help = "whether a draw rope lies in it"},
};
/* clang-format on */
static const struct FieldTable duct_table = {
    .name = "duct", .title = "segments[].duct", TABLE(duct_fields, .help = "the duct itself")};

/* clang-format off */
static const struct Field as_laid_fields[] = {
    {.key = "length", NUMBER(METRE, 0.01, 5000), AT(AsLaid, length_m), .default_text = "as surveyed",
     .help = "along the cable, as laid; it takes the place of the surveyed one"},
    {.key = "way", WORD(WAY), AT(AsLaid, way), GIVEN(AsLaid, way_given), .default_text = "as surveyed",
     .help = "how it was run instead; surveyed keys that the new way does not take no longer count"},
    {.key = "depth", NUMBER(DEPTH, 0.05, 10), AT(AsLaid, depth_m), .default_text = "as surveyed",
     .help = "from the surface to the top of cable or duct, as laid"},
    {.key = "metre-start", NUMBER(METRE, 0, 100e3), AT(AsLaid, metre_start_m),
     .help = "metre mark printed on the cable where the segment starts"},
    {.key = "metre-end", NUMBER(METRE, 0, 100e3), AT(AsLaid, metre_end_m),
     .help = "metre mark printed on the cable where the segment ends"},
    {.key = "found", .kind = FIELD_TEXT, AT(AsLaid, found), .longest = 500,
     .help = "what was found otherwise than surveyed"},
    {.key = "photo", .kind = FIELD_NAME, AT(AsLaid, photo), .longest = 100, .help = "name of a photo, to be found by"},
};
/* clang-format on */
static const struct FieldTable as_laid_table = {
    .name = "as-laid",
    .title = "segments[].as-laid",
    TABLE(as_laid_fields, .help = "what it became; the plan takes it in place of the survey")};

/* clang-format off */
static const struct Field photo_file = {.key = "photo", .kind = FIELD_FILE, .longest = 100};
static const struct Field segment_fields[] = {
    {.key = "name", .kind = FIELD_NAME, AT(Segment, name), .required = FIELD_ALWAYS, .longest = 60,
     .help = "its name, used in along and on paper"},
    {.key = "way", WORD(WAY), AT(Segment, way), .required = FIELD_ALWAYS, .help = "how the cable is run"},
    {.key = "length", NUMBER(METRE, 0.01, 5000), AT(Segment, length_m), .required = FIELD_ALWAYS,
     .help = "along the cable"},
    {.key = "rise", NUMBER(METRE, -5000, 5000), AT(Segment, rise_m), .signed_number = true, .default_text = "0",
     .help = "change of height along it, + up, - down"},
    {.key = "heading", .kind = FIELD_HEADING, .unit = MEASURE_DEGREE, .most = 360, AT(Segment, heading_deg),
     .help = "N, NNE, NE ... or degrees clockwise from north; only for the plan view"},
    {.key = "bends", OWN(COUNT_LIST, TABLE_BEND, 100), .inner = &bend_table, .help = "a number of right angles, or a list of bends"},
    {.key = "marks", OWN(LIST, TABLE_LANDMARK, 20), .inner = &landmark_table, .help = "a list of what stands on or beside it"},
    {.key = "fixed-to", WORD(SURFACE), AT(Segment, fixed_to), .applies = FIXED,
     .default_text = "timber for fence, beam and loft-void", .help = "what it is fixed to"},
    {.key = "air", NUMBER(DEGC, -40, 90), AT(Segment, air_degc), .default_text = "as in conditions",
     .help = "hottest air around the cable here"},
    {.key = "ground", NUMBER(DEGC, -20, 80), AT(Segment, ground_degc), .default_text = "as in conditions",
     .help = "hottest ground around the cable here"},
    {.key = "soil-thermal", NUMBER(K_M_PER_W, 0.3, 10), AT(Segment, soil_thermal_k_m_per_w),
     .default_text = "as in conditions", .help = "thermal resistivity of the soil here"},
    {.key = "where", WORD(SHELTER), AT(Segment, shelter), .applies = SUNNY,
     .default_text = "outside for fence and catenary; for the rest nothing is taken from it",
     .help = "inside or outside a building; outside, the sun is asked for"},
    {.key = "sun", WORD(SUN), AT(Segment, sun), .applies = SUNNY, DEFAULT(SUN_SHADED),
     .help = "whether the sun shines on it"},
    {.key = "insulation", WORD(INSULATION), AT(Segment, insulation), GIVEN(Segment, insulation_given),
     .applies = INSULATED, DEFAULT(INSULATION_NONE), .help = "thermal insulation that touches it"},
    {.key = "insulated-length", NUMBER(DEPTH, 0.001, 5000), AT(Segment, insulated_length_m), .applies = INSULATED,
     .default_text = "all of the segment", .help = "how much of the length that holds for"},
    {.key = "beside", INNER(beside_table), AT(Segment, beside), GIVEN(Segment, has_beside),
     .help = "other loaded circuits already there"},
    {.key = "arrangement", WORD(LIE), AT(Segment, lie), GIVEN(Segment, lie_given), .applies = LOOSE,
     DEFAULT(LIE_BUNCHED), .help = "how the runs of this file that share it lie to each other"},
    {.key = "notes", .kind = FIELD_TEXT, AT(Segment, notes), .longest = 2000, .help = "for the brief"},
    {.key = "as-laid", INNER(as_laid_table), AT(Segment, as_laid), GIVEN(Segment, as_laid.given),
     .default_text = "none: the plan is for what was surveyed", .help = "what it became once it was built"},
    {.key = "measure-again", .kind = FIELD_YES, AT(Segment, measure_again), .default_text = "no",
     .help = "whether its length is to be measured again before anything is ordered"},
    {.key = "how-measured", WORD(MEASURED), AT(Segment, measured),
     .help = "how its length was; what was paced or guessed is warned of"},
    {.key = "photo", OWN_VALUE(ONE_OR_LIST, photo_file, 20), .default_text = "none",
     .help = "a photograph of it, or a list of them, by their file names"},
    {.key = "thickness", NUMBER(DEPTH, 0.001, 5), AT(Segment, thickness_m), .applies = W(CEILING) | W(THROUGH_WALL),
     .help = "of the wall, or of the insulation on a ceiling"},
    {.key = "wall", WORD(WALL), AT(Segment, wall), .applies = W(THROUGH_WALL), .help = "what the wall is made of"},
    {.key = "fire-barrier", .kind = FIELD_YES, AT(Segment, fire_barrier), .applies = W(THROUGH_WALL),
     .default_text = "no", .help = "whether the hole must be sealed against fire"},
    {.key = "sleeve", .kind = FIELD_YES, AT(Segment, sleeve), .applies = W(THROUGH_WALL), .default_text = "no",
     .help = "whether the hole is sleeved"},
    {.key = "size", NUMBER(MILLIMETRE, 5, 200), AT(Segment, size_mm), .applies = W(CONDUIT),
     .help = "diameter of the conduit, as 25 mm"},
    {.key = "size", .kind = FIELD_TWO_SIZES, .unit = MEASURE_MILLIMETRE, .least = 5, .most = 1000,
     AT(Segment, size_mm), GIVEN(Segment, height_mm), .applies = W(TRUNKING),
     .help = "width and height of the trunking, as 50 x 50 mm"},
    {.key = "size", NUMBER(MILLIMETRE, 20, 1500), AT(Segment, size_mm), .applies = W(TRAY) | W(LADDER),
     .help = "width of the tray or ladder, as 150 mm"},
    {.key = "laid", WORD(LAID), AT(Segment, laid), GIVEN(Segment, laid_given), .applies = HELD,
     .default_text = "existing where others lie beside in it, else new",
     .help = "whether what holds the cable is there already"},
    {.key = "wire-size", NUMBER(MILLIMETRE, 1, 40), AT(Segment, wire_mm), .applies = W(CATENARY),
     .help = "diameter of the wire that carries the cable"},
    {.key = "wire", WORD(WIRE), AT(Segment, wire), .applies = W(CATENARY), .help = "how that wire is made"},
    {.key = "material", WORD(MATERIAL), AT(Segment, material), .applies = W(CONDUIT), .help = "of the conduit"},
    {.key = "duct", INNER(duct_table), .applies = W(DUCT), .has_default = true, .help = "the duct itself"},
    {.key = "depth", NUMBER(DEPTH, 0.05, 10), AT(Segment, depth_m), .applies = GROUND, DEFAULT(0.6),
     .help = "from the surface to the top of cable or duct"},
    {.key = "hidden", WORD(HIDDEN), AT(Segment, hidden), .applies = W(STUD_WALL),
     .help = "how it lies in the wall, where nails and screws come"},
    {.key = "under", WORD(UNDER), AT(Segment, under), .applies = GROUND, .help = "what lies above it"},
    {.key = "dig", WORD(DIG), AT(Segment, dig), .applies = GROUND, .help = "how the trench is dug"},
    {.key = "trench", .kind = FIELD_NAME, AT(Segment, trench), .applies = GROUND, .longest = 60,
     .default_text = "one of its own", .help = "segment whose trench it lies in, which is then dug once"},
    {.key = "trench-width", NUMBER(DEPTH, 0.05, 3), AT(Segment, trench_width_m), .applies = GROUND,
     .default_text = "150 mm by machine, else 300 mm, and 150 mm more for each further cable laid direct",
     .help = "width of the trench as it will be dug, such as that of the bucket"},
    {.key = "bedding", .kind = FIELD_YES, AT(Segment, bedding), GIVEN(Segment, bedding_given), .applies = GROUND,
     .default_text = "yes for buried, no for duct", .help = "whether cable or duct is bedded in sand"},
    {.key = "legs", WORD(LEGS), AT(Segment, legs), GIVEN(Segment, legs_given), .applies = GROUND, DEFAULT(LEGS_ADDED),
     .help = "the cable's way into the ground and out of it at the ends of this segment"},
    {.key = "drawn", .kind = FIELD_YES, AT(Segment, drawn), .applies = DRAWABLE, .default_text = "no",
     .help = "whether the cable is drawn through it instead of laid; a duct and a conduit always are"},
    {.key = "draw-pits", WORD(PITS), AT(Segment, pits), .applies = DRAWABLE | W(DUCT) | W(CONDUIT),
     DEFAULT(PITS_NONE), .help = "where on it a draw pit or draw-in box stands, so that a pull ends there"},
};
/* clang-format on */
static const struct FieldTable segment_table = {.name = "a segment",
                                                .title = "segments[]",
                                                .fields = segment_fields,
                                                .count = COUNT_OF(segment_fields),
                                                .contexts = WORDS_WAY,
                                                .help = "a piece of the way, in order from the supply end"};

const struct FieldTable *survey_fields_of_segments(enum SurveyTable table)
{
    static const struct FieldTable *const tables[TABLE_COUNT] = {
        [TABLE_SEGMENT] = &segment_table, [TABLE_BEND] = &bend_table, [TABLE_LANDMARK] = &landmark_table,
        [TABLE_BESIDE] = &beside_table,   [TABLE_DUCT] = &duct_table, [TABLE_AS_LAID] = &as_laid_table,
    };
    return tables[table];
}
