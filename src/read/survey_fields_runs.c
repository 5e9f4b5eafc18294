/* The route language: a run with its loads, device, cable and ends. */
#include "survey_fields_private.h"

#define END_DEFAULT "in an enclosure, indoors, with a tail of 0.5 m and no loop"

static const double phase_counts[] = {1, 3};
static const struct Field own_name = {.key = "along", .kind = FIELD_NAME, .longest = 60};
/* IEC 60228 nominal cross-sections from 1 to 300 mm2. */
static const double conductor_mm2[] = {1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};

/* clang-format off */
static const struct Field load_fields[] = {
    {.key = "current", NUMBER(AMPERE, 0.01, 4000), AT(Load, current_a), .default_text = "none; this or power",
     .help = "design current in each line"},
    {.key = "power", NUMBER(WATT, 1, 3e6), AT(Load, power_w), .default_text = "none; this or current",
     .help = "electrical power taken, in kVA apparent power"},
    {.key = "power-factor", NUMBER(NONE, 0.3, 1), AT(Load, power_factor), .default_text = "1 for a power in W or kW",
     .help = "cosine of the phase angle"},
    {.key = "phases", .kind = FIELD_WHOLE, AT(Load, phases), ONE_OF(phase_counts), .default_text = "the supply's",
     .help = "line conductors it is on"},
    {.key = "diversity", NUMBER(RATIO, 0.01, 1), AT(Load, diversity), TAKEN(1, DIVERSITY),
     .help = "share of it that runs at the same time as the rest"},
};
/* clang-format on */
static const struct FieldTable load_table = {
    .name = "load", .title = "runs.NAME.load", TABLE(load_fields, .help = "one mapping or a list of them, added up")};

/* clang-format off */
static const struct Field device_fields[] = {
    {.key = "kind", WORD(DEVICE), AT(Device, kind), GIVEN(Device, kind_given), TAKEN(DEVICE_MCB, DEVICE_KIND),
     .help = "the protective device"},
    {.key = "curve", WORD(CURVE), AT(Device, curve), GIVEN(Device, curve_given), .default_text = "B for MCB and RCBO",
     .help = "of MCB and RCBO"},
    {.key = "rating", NUMBER(AMPERE, 0.5, 4000), AT(Device, rating_a),
     .default_text = "the smallest standard one that carries the load", .help = "rated current"},
    {.key = "residual", NUMBER(RESIDUAL, 0.006, 30), AT(Device, residual_a),
     .help = "rated residual operating current of an RCBO"},
    {.key = "residual-type", WORD(RESIDUAL_TYPE), AT(Device, residual_type), GIVEN(Device, residual_type_given),
     .help = "what residual currents it sees"},
    {.key = "time-delayed", .kind = FIELD_YES, AT(Device, time_delayed), .default_text = "no",
     .help = "selective to one further on"},
    {.key = "senses-neutral", .kind = FIELD_YES, AT(Device, senses_neutral), GIVEN(Device, senses_neutral_given),
     .help = "an overcurrent in the neutral opens it too"},
    {.key = "breaking-capacity", NUMBER(FAULT_AMPERE, 500, 200e3), AT(Device, breaking_capacity_a),
     .help = "largest fault current it breaks"},
    {.key = "trip-5-s", NUMBER(FAULT_AMPERE, 5, 20e3), AT(Device, trip_5_s_a),
     .help = "current that makes it cut off in 5 s, by its maker's curve"},
    {.key = "let-through", NUMBER(A2S, 100, 100e6), AT(Device, let_through_a2s),
     .help = "I2 t that it lets through at the fault current there, from its maker's curve"},
};
/* clang-format on */
static const struct FieldTable device_table = {
    .name = "device", .title = "runs.NAME.device", TABLE(device_fields, .help = "what protects the run")};

/* clang-format off */
static const struct Field cable_fields[] = {
    {.key = "type", WORD(CABLE), AT(Cable, type), .required = FIELD_ALWAYS, .help = "the cable's standard"},
    {.key = "cores", .kind = FIELD_WHOLE, AT(Cable, cores), .least = 1, .most = 5, .applies = K(POWER) | K(EARTH),
     .default_text = "3 for BS6004-flat, else required for power", .help = "cores in total"},
    {.key = "cores", .kind = FIELD_WHOLE, AT(Cable, cores), .least = 1, .most = 200, .applies = K(DATA),
     .help = "cores in total"},
    {.key = "size", .kind = FIELD_SIZE, AT(Cable, size_mm2), .unit = MEASURE_MM2, ONE_OF(conductor_mm2),
     .applies = K(POWER) | K(EARTH), .required = K(EARTH),
     .default_text = "choose, the smallest that passes every check", .help = "of a conductor"},
    {.key = "cpc", WORD(CPC), AT(Cable, cpc), .applies = K(POWER), TAKEN(CPC_CORE, CPC),
     .help = "the protective conductor"},
    {.key = "cpc-run", OWN_VALUE(MAP, own_name, 0), .applies = K(POWER), .default_text = "the only earth run",
     .help = "with cpc: separate, the run of kind earth that it is"},
    {.key = "diameter", NUMBER(MILLIMETRE, 1, 150), AT(Cable, diameter_mm),
     .help = "over all; for cables that the tables do not hold"},
    {.key = "insulated-for", NUMBER(VOLT, 10, 5000), AT(Cable, insulated_for_v), .applies = K(DATA),
     .help = "highest voltage that the maker gives for its insulation"},
};
/* clang-format on */
static const struct FieldTable cable_table = {.name = "cable",
                                              .title = "runs.NAME.cable",
                                              .fields = cable_fields,
                                              .count = COUNT_OF(cable_fields),
                                              .contexts = WORDS_RUN_KIND,
                                              .help = "the cable"};

/* clang-format off */
static const struct Field end_fields[] = {
    {.key = "into", WORD(INTO), AT(End, into), TAKEN(INTO_ENCLOSURE, INTO), .help = "what the cable ends in"},
    {.key = "place", WORD(PLACE), AT(End, place), TAKEN(PLACE_INDOORS, PLACE), .help = "where that is"},
    {.key = "enclosure", WORD(ENCLOSURE), AT(End, enclosure), GIVEN(End, enclosure_given), DEFAULT(ENCLOSURE_PLASTIC),
     .help = "what it is made of, which decides how the armour is earthed"},
    {.key = "from", WORD(FROM), AT(End, from), GIVEN(End, from_given), DEFAULT(FROM_EXISTING_WAY),
     .help = "start of a power run: what feeds it"},
    {.key = "tails", NUMBER(METRE, 0.05, 50), AT(End, tails_m),
     .help = "start from meter-tails or new-board: length of the meter tails, from the meter to the first device"},
    {.key = "tail", NUMBER(METRE, 0, 20), AT(End, tail_m), TAKEN(0.5, TAIL), .help = "cable inside it"},
    {.key = "loop", NUMBER(METRE, 0, 50), AT(End, loop_m), TAKEN(0, LOOP), .help = "spare loop left there"},
    {.key = "room", NUMBER(DEPTH, 0.01, 20), AT(End, room_m),
     .help = "clear straight space in front of the entry, for the cable to come round in"},
    {.key = "entry", WORD(ENTRY), AT(End, entry), .help = "the face that the cable goes in by"},
};
/* clang-format on */
static const struct FieldTable end_table = {
    .name = "start or finish", .title = "runs.NAME.start, runs.NAME.finish", TABLE(end_fields, .help = "the two ends")};

/* clang-format off */
static const struct Field pull_fields[] = {
    {.key = "from", WORD(DRUM), AT(PullRules, from), .default_text = "the end from which it takes least",
     .help = "where the drum stands; the rope is pulled at the other end"},
    {.key = "friction", NUMBER(NONE, 0.02, 2), AT(PullRules, friction),
     .default_text = "as published for plastic duct, the top of the band",
     .help = "coefficient of friction, where it is known"},
    {.key = "lubricant", .kind = FIELD_YES, AT(PullRules, lubricant), GIVEN(PullRules, lubricant_given),
     .default_text = "no", .help = "whether the cable is drawn in with lubricant"},
};
/* clang-format on */
static const struct FieldTable pull_table = {
    .name = "pull", .title = "runs.NAME.pull", TABLE(pull_fields, .help = "how the cable is drawn in")};

/* clang-format off */
static const struct Field run_fields[] = {
    {.key = "kind", WORD(RUN_KIND), AT(Run, kind), DEFAULT(RUN_POWER), .help = "what it carries"},
    {.key = "serves", .kind = FIELD_TEXT, AT(Run, serves), .longest = 500, .help = "what is at its end"},
    {.key = "feeds", WORD(FEEDS), AT(Run, feeds), GIVEN(Run, feeds_given), .applies = K(POWER),
     TAKEN(FEEDS_BOARD, FEEDS), .help = "what kind of circuit it is"},
    {.key = "use", WORD(USE), AT(Run, use), .applies = K(POWER), TAKEN(USE_GENERAL, USE),
     .help = "what it is used for"},
    {.key = "risk-assessment", .kind = FIELD_TEXT, AT(Run, risk_assessment), .applies = K(POWER), .longest = 500,
     .help = "feeds: sockets without a residual device: the documented risk assessment that says why; never in a "
      "dwelling"},
    {.key = "load", OWN(ONE_OR_LIST, TABLE_LOAD, 100), .inner = &load_table, .applies = K(POWER), .required = K(POWER),
     .help = "what it has to carry"},
    {.key = "device", OWN(MAP, TABLE_DEVICE, 0), .inner = &device_table, .applies = K(POWER), .help = "what protects it"},
    {.key = "cable", OWN(MAP, TABLE_CABLE, 0), .inner = &cable_table, .required = FIELD_ALWAYS,
     .help = "its type, cores and size"},
    {.key = "drop-limit", NUMBER(PERCENT, 0.1, 15), AT(Run, drop_limit_percent), .applies = K(POWER),
     .default_text = "5 %, with use: lighting 3 %", .help = "largest voltage drop from the installation's origin"},
    {.key = "third-harmonic", NUMBER(PERCENT, 0, 100), AT(Run, third_harmonic_percent), .applies = K(POWER),
     .help = "third-harmonic current, in % of the line current"},
    {.key = "start-current", NUMBER(AMPERE, 0.1, 5000), AT(Run, start_current_a), .applies = K(POWER),
     .help = "use: motor: what it draws while starting"},
    {.key = "start-multiple", NUMBER(NONE, 1, 20), AT(Run, start_multiple), .applies = K(POWER),
     .help = "use: motor: the same, as a multiple of the design current"},
    {.key = "start-power-factor", NUMBER(NONE, 0.1, 1), AT(Run, start_power_factor), .applies = K(POWER),
     .default_text = "0.3 to 0.4, whichever drops more", .help = "use: motor: its power factor while starting"},
    {.key = "along", OWN_VALUE(LIST, own_name, 0), .default_text = "all, in the order of the file",
     .help = "the segments it follows, in order"},
    {.key = "start", OWN(MAP, TABLE_END, 0), .inner = &end_table, .default_text = END_DEFAULT, .help = "its supply end"},
    {.key = "finish", OWN(MAP, TABLE_END, 0), .inner = &end_table, .default_text = END_DEFAULT, .help = "its far end"},
    {.key = "pull", INNER(pull_table), AT(Run, pull), GIVEN(Run, pull.given), .has_default = true,
     .help = "how it is drawn through ducts, conduits and what is drawn"},
};
/* clang-format on */
static const struct FieldTable run_table = {.name = "a run",
                                            .title = "runs.NAME",
                                            .fields = run_fields,
                                            .count = COUNT_OF(run_fields),
                                            .contexts = WORDS_RUN_KIND,
                                            .help = "one cable; its name is the key"};

/* clang-format off */
static const struct Field meter_fields[] = {
    {.key = "percent", NUMBER(PERCENT, 0, 50), AT(MeterError, percent),
     .default_text = "30 %, for times 10 %: the most that EN 61557 allows",
     .help = "how far it may be out, in % of the reading, by its data sheet"},
    {.key = "ohm", NUMBER(OHM, 0, 10), AT(MeterError, ohm), .default_text = "0 ohm beside percent",
     .help = "its digits, in ohms, on top of that; for readings in ohms"},
    {.key = "leads-nulled", .kind = FIELD_YES, AT(MeterError, leads_nulled), .default_text = "no",
     .help = "whether the leads were nulled; else 0.05 ohm is allowed for leads and terminals"},
};
/* clang-format on */
static const struct FieldTable meter_table = {
    .name = "meter", .title = "readings.NAME.meter", TABLE(meter_fields, .help = "what the readings were taken with")};

/* clang-format off */
static const struct Field readings_fields[] = {
    {.key = "by", .kind = FIELD_TEXT, AT(Measurements, by), .longest = 100, .help = "who measured"},
    {.key = "date", .kind = FIELD_DATE, AT(Measurements, date), .longest = 100, .help = "on which day, as 2026-05-14"},
    {.key = "instrument", .kind = FIELD_TEXT, AT(Measurements, meter_name), .longest = 100,
     .help = "which meter, by your own number for it"},
    {.key = "ze", NUMBER(OHM, 0, 5000), AT(Measurements, ze_ohm),
     .help = "earth loop where the run begins, the main earthing conductor off"},
    {.key = "fault-current", NUMBER(FAULT_AMPERE, 1, 200e3), AT(Measurements, fault_current_a),
     .help = "prospective fault current where the run begins, the largest"},
    {.key = "r1r2", NUMBER(OHM, 0, 5000), AT(Measurements, r1r2_ohm),
     .help = "R1 + R2: line and protective conductor joined at the far end"},
    {.key = "r2", NUMBER(OHM, 0, 5000), AT(Measurements, r2_ohm), .help = "R2: protective conductor, end to end"},
    {.key = "insulation", NUMBER(MEGOHM, 0, 1e6), AT(Measurements, insulation_mohm),
     .help = "the least insulation resistance; of a meter that shows over its range, that range"},
    {.key = "polarity", WORD(POLARITY), AT(Measurements, polarity), GIVEN(Measurements, polarity_given),
     .help = "what the test of polarity showed"},
    {.key = "zs", NUMBER(OHM, 0, 5000), AT(Measurements, zs_ohm), .help = "earth loop at the far end"},
    {.key = "trip-time", NUMBER(TIME, 0.001, 10), AT(Measurements, trip_s),
     .help = "of the residual device at its rated residual current"},
    {.key = "trip-time-5x", NUMBER(TIME, 0.001, 10), AT(Measurements, trip_5_s), .help = "at five times that"},
    {.key = "cable-temperature", NUMBER(DEGC, -40, 90), AT(Measurements, cable_degc),
     .help = "of the cable while it was measured; of one in the ground the ground's; 20 degC is not assumed"},
    {.key = "meter", INNER(meter_table), AT(Measurements, meter), .help = "how far the meter may be out"},
};
/* clang-format on */
static const struct FieldTable readings_table = {
    .name = "readings",
    .title = "readings.NAME",
    TABLE(readings_fields, .help = "what was measured on a power run once it was built")};

const struct FieldTable *survey_fields_of_runs(enum SurveyTable table)
{
    static const struct FieldTable *const tables[TABLE_COUNT] = {
        [TABLE_RUN] = &run_table,           [TABLE_LOAD] = &load_table,   [TABLE_DEVICE] = &device_table,
        [TABLE_CABLE] = &cable_table,       [TABLE_END] = &end_table,     [TABLE_PULL] = &pull_table,
        [TABLE_READINGS] = &readings_table, [TABLE_METER] = &meter_table,
    };
    return tables[table];
}
