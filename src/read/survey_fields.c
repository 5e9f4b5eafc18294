/* The route language itself: every mapping, key, unit, range and default, once; here what stands at the top of the
 * file. The reader, the suggestions and the manual are made from these tables. Ranges are generous: they catch slips
 * (mm for m), not unusual jobs; their figures are common practice, no source. */
#include "survey_fields_private.h"

static const double phase_counts[] = {1, 3};
static const double terminal_degc[] = {70, 90};
static const double versions[] = {1};
static const struct Field version = {.key = "wend", .kind = FIELD_WHOLE, ONE_OF(versions)};
static const struct Field own_name = {.key = "run", .kind = FIELD_NAME, .longest = 60};
/* As generous as other ranges: what is no drum is a slip. */
static const struct Field whole_length = {.key = "lengths", NUMBER(METRE, 1, 5000)};
static const struct Field offcut_length = {.key = "offcuts", NUMBER(METRE, 0.1, 5000)};

/* clang-format off */
static const struct Field job_fields[] = {
    {.key = "title", .kind = FIELD_TEXT, AT(Job, title), .required = FIELD_ALWAYS, .longest = 500,
     .help = "what the job is"},
    {.key = "site", .kind = FIELD_TEXT, AT(Job, site), .longest = 500, .help = "where it is"},
    {.key = "location", WORD(LOCATION), AT(Job, location), GIVEN(Job, location_given), DEFAULT(LOCATION_ORDINARY),
     .default_text = "an ordinary place, and the plan says which kinds would change it",
     .help = "what kind of place is fed; Part 7 of BS 7671 and the rules for dwellings go by it"},
    {.key = "reference", .kind = FIELD_TEXT, AT(Job, reference), .longest = 500, .help = "your number for it"},
    {.key = "customer", .kind = FIELD_TEXT, AT(Job, customer), .longest = 500, .help = "for whom"},
    {.key = "surveyor", .kind = FIELD_TEXT, AT(Job, surveyor), .longest = 500, .help = "who measured"},
    {.key = "surveyed", .kind = FIELD_DATE, AT(Job, surveyed), .longest = 100,
     .help = "the day it was measured, as 2026-05-14"},
    {.key = "laid-by", .kind = FIELD_TEXT, AT(Job, laid_by), .longest = 100, .help = "who laid the cable"},
    {.key = "laid", .kind = FIELD_DATE, AT(Job, laid), .longest = 100, .help = "the day it was laid, as 2026-05-14"},
    {.key = "notes", .kind = FIELD_TEXT, AT(Job, notes), .longest = 4000, .help = "anything else"},
};
/* clang-format on */
static const struct FieldTable job_table = {.name = "job", .title = "job", TABLE(job_fields, .help = "what it is for")};

/* clang-format off */
static const struct Field supply_fields[] = {
    {.key = "system", WORD(SYSTEM), AT(Supply, system), .required = FIELD_ALWAYS, .help = "the earthing system"},
    {.key = "phases", .kind = FIELD_WHOLE, AT(Supply, phases), ONE_OF(phase_counts), TAKEN(1, PHASES),
     .help = "line conductors"},
    {.key = "voltage", NUMBER(VOLT, 100, 1000), AT(Supply, voltage_v), TAKEN(230, VOLTAGE),
     .help = "U0, line to neutral"},
    {.key = "loop-impedance", NUMBER(OHM, 0.001, 2000), AT(Supply, loop_ohm),
     .default_text = "none; required unless the system is TT", .help = "Ze where these runs begin"},
    {.key = "fault-current", NUMBER(FAULT_AMPERE, 10, 200e3), AT(Supply, fault_current_a),
     .help = "prospective fault current where these runs begin"},
    {.key = "drop-before", NUMBER(PERCENT, 0, 15), AT(Supply, drop_before_percent), TAKEN(0, DROP_BEFORE),
     .help = "voltage drop already used between the installation's origin and this one"},
    {.key = "electrode-resistance", NUMBER(OHM, 0.1, 5000), AT(Supply, electrode_ohm),
     .help = "TT: RA of the installation's own electrode"},
    {.key = "neutral-size", NUMBER(MM2, 4, 1000), AT(Supply, neutral_mm2), TAKEN(35, NEUTRAL_SIZE),
     .help = "TN-C-S: of the supply's neutral, for the size of the main bond"},
    {.key = "earthing-conductor", NUMBER(MM2, 2.5, 300), AT(Supply, earthing_conductor_mm2),
     TAKEN(16, EARTHING_CONDUCTOR), .help = "its size, for the size of the main bond"},
    {.key = "surge-protection", WORD(SURGE), AT(Supply, surge),
     .help = "surge protection of the installation, as the owner decided (443.4)"},
    {.key = "surge-declined-by", .kind = FIELD_TEXT, AT(Supply, surge_declined_by), .longest = 100,
     .help = "surge-protection: declined: who declined it, and when"},
    {.key = "selectivity", WORD(SELECTIVITY), AT(Supply, selectivity),
     .help = "whether only the device nearest a fault opens (536.4)"},
};
/* clang-format on */
static const struct FieldTable supply_table = {
    .name = "supply", .title = "supply", TABLE(supply_fields, .help = "what there is where the runs begin")};

/* clang-format off */
static const struct Field conditions_fields[] = {
    {.key = "air", NUMBER(DEGC, -40, 90), AT(Conditions, air_degc), TAKEN(30, AIR),
     .help = "hottest air around the cable"},
    {.key = "ground", NUMBER(DEGC, -20, 80), AT(Conditions, ground_degc), TAKEN(20, GROUND),
     .help = "hottest ground around the cable"},
    {.key = "soil-thermal", NUMBER(K_M_PER_W, 0.3, 10), AT(Conditions, soil_thermal_k_m_per_w),
     TAKEN(2.5, SOIL_THERMAL), .help = "thermal resistivity of the soil"},
    {.key = "soil-electrical", NUMBER(OHM_METRE, 1, 100e3), AT(Conditions, soil_electrical_ohm_m),
     TAKEN(100, SOIL_ELECTRICAL), .help = "electrical resistivity of the soil, for electrodes"},
    {.key = "terminals", NUMBER(DEGC, 0, 0), AT(Conditions, terminals_degc), ONE_OF(terminal_degc),
     TAKEN(70, TERMINALS), .help = "what the terminals at either end stand"},
};
/* clang-format on */
static const struct FieldTable conditions_table = {
    .name = "conditions",
    .title = "conditions",
    TABLE(conditions_fields, .help = "hold for every segment that says nothing else")};

/* clang-format off */
static const struct Field electrode_fields[] = {
    {.key = "rods", .kind = FIELD_WHOLE_QUANTITY, AT(Earthing, rods), .least = 1, .most = 100,
     .default_text = "none; required unless measured is given", .help = "how many rods"},
    {.key = "length", NUMBER(METRE, 0.3, 60), AT(Earthing, rod_length_m),
     .default_text = "none; required unless measured is given", .help = "driven length of one rod"},
    {.key = "diameter", NUMBER(MILLIMETRE, 5, 100), AT(Earthing, rod_diameter_mm),
     .default_text = "none; required unless measured is given", .help = "of a rod"},
    {.key = "spacing", NUMBER(METRE, 0.1, 100), AT(Earthing, rod_spacing_m), .default_text = "one rod's length",
     .help = "between rods"},
    {.key = "conductor-length", NUMBER(METRE, 0.1, 200), AT(Earthing, conductor_m),
     .default_text = "5 m: an allowance",
     .help = "earthing conductor from the nearest rod to the outbuilding's earthing bar"},
    {.key = "measured", NUMBER(OHM, 0.1, 5000), AT(Earthing, measured_ohm),
     .help = "resistance once driven and measured; overrides the estimate"},
    {.key = "target", NUMBER(OHM, 0.5, 1667), AT(Earthing, electrode_target_ohm), TAKEN(200, ELECTRODE_TARGET),
     .help = "resistance to come to: the plan says how many rods, and how deep one, that takes"},
};
/* clang-format on */
static const struct FieldTable electrode_table = {.name = "electrode",
                                                  .title = "earthing.electrode",
                                                  TABLE(electrode_fields, .help = "the outbuilding's own electrode")};

/* clang-format off */
static const struct Field earthing_fields[] = {
    {.key = "far-end", WORD(FAR_END), AT(Earthing, far_end), .required = FIELD_ALWAYS,
     .default_text = "export when earthing is left out", .help = "what is done with the supply's earth"},
    {.key = "electrode", INNER(electrode_table), GIVEN(Earthing, has_electrode),
     .default_text = "none; required for an island", .help = "the outbuilding's own electrode"},
    {.key = "board-residual", NUMBER(RESIDUAL, 0.01, 10), AT(Earthing, board_residual_a),
     .help = "the residual device at the outbuilding's own board"},
    {.key = "extraneous-parts", .kind = FIELD_YES, AT(Earthing, extraneous_parts),
     GIVEN(Earthing, extraneous_parts_given), .help = "whether metal services or structure enter the outbuilding"},
    {.key = "existing", WORD(EXISTING), AT(Earthing, existing), GIVEN(Earthing, existing_given),
     DEFAULT(EXISTING_NONE), .help = "whether the outbuilding already has a supply, whose earth has to come off"},
    {.key = "floor-grid", .kind = FIELD_YES, AT(Earthing, floor_grid), GIVEN(Earthing, floor_grid_given),
     .help = "farm: whether a metal grid lies in the floor where livestock stand, and is bonded"},
};
/* clang-format on */
static const struct FieldTable earthing_table = {
    .name = "earthing", .title = "earthing", TABLE(earthing_fields, .help = "the outbuilding's earth")};

/* clang-format off */
static const struct Field parts_fields[] = {
    {.key = "spare-cable", NUMBER(PERCENT, 0, 100), AT(PartsRules, spare_cable_percent), TAKEN(5, SPARE_CABLE),
     .help = "added to a cable's length before it is rounded up"},
    {.key = "spare-fixings", NUMBER(PERCENT, 0, 100), AT(PartsRules, spare_fixings_percent), TAKEN(10, SPARE_FIXINGS),
     .help = "added to the number of fixings"},
    {.key = "prices", .kind = FIELD_FILE, AT(PartsRules, prices), .longest = 100,
     .help = "your price list, a file beside this one; see THE PRICE LIST below"},
    {.key = "labour", .kind = FIELD_FILE, AT(PartsRules, labour), .longest = 100,
     .help = "your labour figures, a file beside this one; see LABOUR FIGURES below"},
    {.key = "stock", OWN(LIST, TABLE_STOCK, 50), .default_text = "none: cable is cut by the metre",
     .help = "what cables and ducts are cut from: a list, an item for each; asks for a cutting plan"},
};
/* clang-format on */
static const struct FieldTable parts_table = {
    .name = "parts", .title = "parts", TABLE(parts_fields, .help = "how the take-off rounds")};

/* clang-format off */
static const struct Field stock_fields[] = {
    {.key = "run", OWN_VALUE(MAP, own_name, 0), .default_text = "none; either run or duct is required",
     .help = "a run: the item is for its cable, and for every run with the same cable"},
    {.key = "duct", NUMBER(MILLIMETRE, 10, 1000), AT(Stock, duct_size_mm),
     .default_text = "none; either run or duct is required",
     .help = "size of a duct: the item is for new duct of that size"},
    {.key = "lengths", OWN(ONE_OR_LIST, TABLE_STOCK_LENGTH, 20), .item = &whole_length, .default_text = "none; lengths, offcuts or both are required",
     .help = "whole drums, coils or lengths in stock: a list such as [100 m, 50 m], 1 m to 5000 m each; a mapping "
      "says how many there are"},
    {.key = "offcuts", OWN_VALUE(ONE_OR_LIST, offcut_length, 100), .default_text = "none",
     .help = "what is at hand already, one of each: a list such as [12 m, 8.5 m], 0.1 m to 5000 m each"},
};
/* clang-format on */
static const struct FieldTable stock_table = {
    .name = "an item of stock",
    .title = "parts.stock[]",
    TABLE(stock_fields, .help = "lengths that one cable, or one size of duct, is cut from")};

/* clang-format off */
static const struct Field stock_length_fields[] = {
    {.key = "length", NUMBER(METRE, 1, 5000), AT(StockLength, length_m), .required = FIELD_ALWAYS,
     .help = "of one whole drum, coil or length"},
    {.key = "have", .kind = FIELD_WHOLE_QUANTITY, AT(StockLength, have), .least = 1, .most = 1000,
     .default_text = "none: as many as are wanted",
     .help = "how many of it are in stock; where it is named twice the least holds"},
};
/* clang-format on */
static const struct FieldTable stock_length_table = {
    .name = "a length of stock",
    .title = "parts.stock[].lengths[]",
    TABLE(stock_length_fields, .help = "a length and how many of it are in stock")};

/* clang-format off */
static const struct Field top_fields[] = {
    {.key = "wend", OWN_VALUE(MAP, version, 0), .default_text = "none; required, and the first key",
     .help = "version of this format: 1"},
    {.key = "complete", .kind = FIELD_YES, AT(Survey, complete), GIVEN(Survey, complete_given), .default_text = "yes",
     .help = "no: the survey has not reached the far end yet, so that the plan stays open"},
    {.key = "job", INNER(job_table), AT(Survey, job), .required = FIELD_ALWAYS, .help = "what it is for"},
    {.key = "supply", INNER(supply_table), AT(Survey, supply), .required = FIELD_ALWAYS,
     .help = "what there is where the runs begin"},
    {.key = "conditions", INNER(conditions_table), AT(Survey, conditions), .has_default = true,
     .help = "hold for every segment that says nothing else"},
    {.key = "earthing", INNER(earthing_table), AT(Survey, earthing), GIVEN(Survey, earthing.given),
     .help = "the outbuilding's earth"},
    {.key = "runs", OWN(BY_NAME, TABLE_RUN, 50), .required = FIELD_ALWAYS,
     .help = "the cables, by name; at least one of kind power"},
    {.key = "segments", OWN(LIST, TABLE_SEGMENT, 0), .required = FIELD_ALWAYS, .help = "the way, segment by segment"},
    {.key = "parts", OWN(MAP, TABLE_PARTS, 0), .inner = &parts_table, .help = "how the take-off rounds"},
    {.key = "readings", OWN(BY_NAME, TABLE_READINGS, 50),
     .help = "what was measured once built, by the name of the run; wend readings holds it against the plan"},
};
/* clang-format on */
static const struct FieldTable top_table = {.name = "the file", .title = "the file", TABLE(top_fields, .help = "")};

const struct FieldTable *survey_fields(enum SurveyTable table)
{
    static const struct FieldTable *const tables[TABLE_COUNT] = {
        [TABLE_TOP] = &top_table,
        [TABLE_JOB] = &job_table,
        [TABLE_SUPPLY] = &supply_table,
        [TABLE_CONDITIONS] = &conditions_table,
        [TABLE_EARTHING] = &earthing_table,
        [TABLE_ELECTRODE] = &electrode_table,
        [TABLE_PARTS] = &parts_table,
        [TABLE_STOCK] = &stock_table,
        [TABLE_STOCK_LENGTH] = &stock_length_table,
    };
    const struct FieldTable *found = tables[table];
    found = found != NULL ? found : survey_fields_of_runs(table);
    return found != NULL ? found : survey_fields_of_segments(table);
}
