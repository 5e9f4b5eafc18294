/* What the place of a feed demands of it: residual devices, whose earth it may use, how deep it lies. The rules are a
 * table (src/tables/location_rules.c); a place without a rule of its own goes by an ordinary one's. */
#include "fault_private.h"

/* 30 mA without delay is additional protection (415.1.1). */
static const double additional_a = 0.03;

static const struct LocationRule *rule_here(enum Location location, enum LocationTopic topic)
{
    const struct LocationRule *own = location_rule(location, topic);
    return own != NULL ? own : location_rule(LOCATION_ORDINARY, topic);
}

/* A feed to a lighting board is no final circuit; that it goes to a board has to be written. */
static bool final_lighting(const struct Run *run)
{
    return run->use == USE_LIGHTING && !(run->feeds == FEEDS_BOARD && run->feeds_given);
}

static const struct LocationRule *sockets_rule(enum Location location, double rating_a)
{
    const struct LocationRule *rule = rule_here(location, TOPIC_SOCKETS);
    if (rule != NULL && within(rating_a, rule->up_to_a)) {
        return rule;
    }
    rule = rule_here(location, TOPIC_SOCKETS_LARGE);
    return rule != NULL ? rule : rule_here(location, TOPIC_FINAL);
}

const struct LocationRule *location_residual_rule(enum Location location, const struct Run *run, double rating_a)
{
    if (run->use == USE_CHARGING) {
        return NULL; /* device-for-load asks for more */
    }
    if (run->feeds == FEEDS_SOCKETS) {
        return sockets_rule(location, rating_a);
    }
    if (final_lighting(run)) {
        const struct LocationRule *rule = rule_here(location, TOPIC_LIGHTING);
        return rule != NULL ? rule : rule_here(location, TOPIC_FINAL);
    }
    return rule_here(location, run->feeds == FEEDS_BOARD ? TOPIC_FEED : TOPIC_FINAL);
}

bool location_residual_met(const struct LocationRule *rule, const struct Device *device)
{
    return device->residual_a.given && within(device->residual_a.value, rule->value) &&
           !(device->time_delayed && within(rule->value, additional_a));
}

const char *location_clause(struct Arena *arena, const struct LocationRule *rule)
{
    const bool numbered = rule->clause[0] >= '0' && rule->clause[0] <= '9';
    return arena_print(arena, "%s%s%s", numbered ? "BS 7671 " : "", rule->clause,
                       text_same(rule->confidence, "two sources") ? "" : " (from memory)");
}

/* "Socket-outlets on a farm" */
static const char *what_where(struct Arena *arena, const struct RunDesign *run)
{
    static const char *const where[LOCATION_COUNT] = {
        [LOCATION_DWELLING] = " in a dwelling",
        [LOCATION_WORKSHOP] = " in a place of work",
        [LOCATION_FARM] = " on a farm",
        [LOCATION_BUILDING_SITE] = " on a building site",
        [LOCATION_CARAVAN_PARK] = " at pitches for caravans or tents",
        [LOCATION_MARINA] = " at berths",
        [LOCATION_POOL] = " at a pool",
        [LOCATION_OUTDOOR_LIGHTING] = " in the open",
        [LOCATION_EVENT] = " at a temporary event",
        [LOCATION_FUEL_POINT] = " at a fuel point",
        [LOCATION_MEDICAL] = " in medical rooms",
    };
    const struct Run *fed = run->run;
    const char *what = fed->feeds == FEEDS_SOCKETS ? "Socket-outlets"
                       : final_lighting(fed)       ? "Lighting"
                       : fed->feeds == FEEDS_BOARD ? "A feed to a board"
                                                   : "A circuit for equipment";
    return arena_print(arena, "%s%s", what, where[run->location] != NULL ? where[run->location] : "");
}

/* Dwellings and the places of Part 7 leave no way round the rule for sockets (411.3.3). */
static bool may_be_waived(const struct RunDesign *run)
{
    const bool ordinary = run->location == LOCATION_ORDINARY || location_rule(run->location, TOPIC_SOCKETS) == NULL;
    return run->run->feeds == FEEDS_SOCKETS && ordinary;
}

/* True when a risk assessment settles it. */
static bool waived(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    const char *assessment = run->run->risk_assessment;
    if (!may_be_waived(run) || assessment == NULL || *assessment == '\0') {
        return false;
    }
    if (!run->location_given) {
        check_unknown(
            out,
            say(arena, SAY_AS_IS,
                say_name("Not made: a risk assessment may leave out the 30 mA device of socket-outlets, but never in "
                         "a dwelling: say what place this is (job: location).")));
        out->settles = settles_key("job: location");
        return true;
    }
    out->result = CHECK_NOT_DUE;
    out->assumes = say(
        arena, SAY_AS_IS,
        say_name("no 30 mA device on the socket-outlets: only skilled or instructed persons reach them, and the risk "
                 "assessment named at the survey says so and stays with the papers (BS 7671 411.3.3)"));
    out->text =
        say(arena, SAY_AS_IS,
            say_name(arena == NULL
                         ? ""
                         : arena_print(arena, "Left out by the risk assessment named at the survey: %s.", assessment)));
    return true;
}

static const char *waiver_text(const struct RunDesign *run)
{
    return run->run->feeds != FEEDS_SOCKETS     ? ""
           : run->location == LOCATION_DWELLING ? " In a dwelling no risk assessment takes its place."
           : may_be_waived(run) ? " Only where skilled or instructed persons alone reach them, and never in a "
                                  "dwelling, may a documented risk assessment leave it out (risk-assessment)."
                                : "";
}

static struct SayArg residual_found(struct Arena *arena, const struct Device *device)
{
    const struct SayArg rated = say_digits(device->residual_a.value * 1000, 4, UNIT_MA);
    return !device->residual_a.given ? say_term(SAY_FOUND_NONE)
           : device->time_delayed    ? say_part(say(arena, SAY_FOUND_TIME_DELAYED, rated))
                                     : rated;
}

static void lacks_residual(struct Arena *arena, const struct RunDesign *run, const struct LocationRule *rule,
                           struct Check *out)
{
    const struct Device *device = &run->run->device;
    out->result = CHECK_FAIL;
    out->unit = "";
    out->value = out->limit = 0;
    if (arena == NULL) {
        return;
    }
    const char *has = device->residual_a.given
                          ? arena_print(arena, "%s mA%s", number_significant(arena, device->residual_a.value * 1000, 4),
                                        device->time_delayed ? ", time-delayed" : "")
                          : "none";
    out->text = say(arena, SAY_AS_IS,
                    say_name(arena_print(
                        arena, "%s: a residual device of %s mA or less%s is required, and the run's device has %s.%s",
                        what_where(arena, run), number_significant(arena, rule->value * 1000, 4),
                        within(rule->value, additional_a) ? ", not time-delayed," : "", has, waiver_text(run))));
    work_rule(arena, run, say_part(say(arena, SAY_RULE_RESIDUAL, say_digits(rule->value * 1000, 4, UNIT_MA))),
              residual_found(arena, device), out);
}

static void work_residual(struct Arena *arena, const struct RunDesign *run, const struct LocationRule *rule,
                          struct Check *out)
{
    if (arena == NULL || run->brief) {
        return;
    }
    struct Steps steps = steps_begin(arena);
    steps_figure(&steps, say_term(SAY_STEP_LARGEST_RESIDUAL), say_term(SAY_STEP_BY_WHAT_IS_FED), "", rule->value * 1000,
                 UNIT_MA, say_name(out->source));
    steps_figure(&steps, say_term(SAY_STEP_RESIDUAL_OF_DEVICE), say_term(SAY_STEP_AS_SURVEYED_OR_CHOSEN), "",
                 out->value, UNIT_MA, say_term(SAY_STEP_AS_SURVEYED));
    steps_end(&steps, out);
}

/* No rule bears on it; but what place it is may change that. */
static void no_residual_rule(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    out->result = CHECK_NOT_DUE;
    out->unit = "";
    out->source = "BS 7671 411.3.3, 411.3.4";
    const struct LocationRule *home = location_rule(LOCATION_DWELLING, TOPIC_LIGHTING);
    if (run->run->use == USE_CHARGING) {
        out->source = "BS 7671 722.531.3";
        out->text = say(arena, SAY_AS_IS, say_name("A charging point has a rule of its own: see device-for-load."));
    } else if (run->location == LOCATION_MEDICAL) {
        out->result = CHECK_FAIL;
        out->source = "BS 7671 710 (from memory)";
        work_rule(arena, run, say_term(SAY_RULE_PLACE), say_term(SAY_FOUND_MEDICAL), out);
        out->text =
            say(arena, SAY_AS_IS,
                say_name("The rules of medical rooms are not held here: this feed is no work for this program."));
    } else if (final_lighting(run->run) && !run->location_given && !location_residual_met(home, &run->run->device)) {
        check_unknown(
            out,
            say(arena, SAY_AS_IS,
                say_name("Not made: a lighting circuit of a dwelling requires a residual device of 30 mA; say what "
                         "place this is (job: location), and feeds: board if it feeds one.")));
        out->settles = settles_key("job: location");
    } else {
        out->text =
            say(arena, SAY_AS_IS,
                say_name(run->run->feeds == FEEDS_BOARD
                             ? "A feed to a board needs no residual device for what it feeds here: its board has them."
                             : "No rule asks for a residual device on this circuit here."));
    }
}

void check_residual_protection(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                               struct Check *out)
{
    (void)trial;
    const struct Device *device = &run->run->device;
    const struct LocationRule *rule = location_residual_rule(run->location, run->run, run->rating_a);
    if (rule == NULL || run->location == LOCATION_MEDICAL) {
        no_residual_rule(arena, run, out);
        return;
    }
    if (arena != NULL) {
        out->source = location_clause(arena, rule);
    }
    out->value = device->residual_a.value * 1000;
    out->limit = rule->value * 1000;
    if (!location_residual_met(rule, device)) {
        if (!waived(arena, run, out)) {
            lacks_residual(arena, run, rule, out);
        }
        return;
    }
    out->result = CHECK_PASS;
    if (arena != NULL) {
        out->text = say(arena, SAY_AS_IS,
                        say_name(arena_print(
                            arena, "%s: a residual device of %s mA or less is required; the run's device has %s mA.",
                            what_where(arena, run), number_significant(arena, out->limit, 4),
                            number_significant(arena, out->value, 4))));
        work_residual(arena, run, rule, out);
    }
}

bool location_takes_earth(const struct LocationRule *rule, const struct Earthing *earthing)
{
    return rule == NULL || (rule->value >= EARTH_WITH_GRID && earthing->floor_grid_given && earthing->floor_grid);
}

/* ESQCR 9(4) and Part 7: where the earth of a TN-C-S supply must not be taken. */
void check_location_earth(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out)
{
    (void)trial;
    const struct LocationRule *rule = location_rule(run->location, TOPIC_EARTH);
    out->result = CHECK_NOT_DUE;
    out->unit = "";
    if (rule == NULL) {
        out->text =
            say(arena, SAY_AS_IS, say_name("No rule of Part 7 bars the supply's earth from this kind of place."));
        return;
    }
    if (arena != NULL) {
        out->source = location_clause(arena, rule);
    }
    if (run->earthing->far_end == FAR_END_ISLAND || run->tt) {
        out->text = say(arena, SAY_AS_IS,
                        say_name("The supply's earth does not reach this place: it has an electrode of its own."));
    } else if (!run->tn_c_s) {
        out->text = say(arena, SAY_AS_IS, say_name("Only the earth of a TN-C-S supply is barred here."));
        out->assumes = say(
            arena, SAY_AS_IS,
            say_name("the supply is TN-S all the way back: where the distributor combines earth and neutral further "
                     "up, its earth must not come here; ask"));
    } else if (location_takes_earth(rule, run->earthing)) {
        out->result = CHECK_PASS;
        work_rule(arena, run, say_term(SAY_RULE_GRID), say_term(SAY_FOUND_YES), out);
        out->text =
            say(arena, SAY_AS_IS,
                say_name("The earth of a TN-C-S supply: a metal grid lies in the floor and is bonded, as surveyed."));
    } else if (rule->value >= EARTH_WITH_GRID && !run->earthing->floor_grid_given) {
        check_unknown(
            out,
            say(arena, SAY_AS_IS,
                say_name("Not made: where livestock stand the earth of a TN-C-S supply is not recommended without a "
                         "bonded metal grid in the floor (earthing: floor-grid), or give the place an electrode of "
                         "its own (earthing: far-end: island).")));
        out->settles = settles_key("earthing: floor-grid");
    } else {
        out->result = CHECK_FAIL;
        work_rule(arena, run, say_term(SAY_RULE_WHOSE_EARTH), say_term(SAY_FOUND_TN_C_S), out);
        out->text = say(
            arena, SAY_AS_IS,
            say_name(rule->value >= EARTH_WITH_GRID
                         ? "No metal grid is bonded in the floor: give this place an electrode of its own "
                           "(earthing: far-end: island), not the earth of a TN-C-S supply."
                         : "The earth of a TN-C-S supply must not come to this kind of place: give it an electrode of "
                           "its own (earthing: far-end: island)."));
    }
}

const struct LocationRule *location_depth_rule(enum Location location, const struct Segment *segment)
{
    const struct LocationRule *field =
        segment->under == UNDER_FIELD ? location_rule(location, TOPIC_DEPTH_FIELD) : NULL;
    return field != NULL ? field : location_rule(location, TOPIC_DEPTH);
}

/* What is not written to lie above, or a bed that a machine may work, could be ploughed ground. */
static bool may_be_field(enum Location location, const struct Segment *segment)
{
    const struct LocationRule *field = location_rule(location, TOPIC_DEPTH_FIELD);
    return field != NULL && !within(field->value, segment->depth_m.value) &&
           (segment->under == UNDER_COUNT || segment->under == UNDER_BED);
}

/* The stretch in the ground that lies furthest above what the place asks. */
static void worst_depth(const struct RunDesign *run, const struct Segment **worst, const struct LocationRule **out,
                        bool *unsaid, bool *bed)
{
    for (int i = 0; i < run->count; i++) {
        const struct Segment *segment = &run->segments[run->run->along[i]];
        const struct LocationRule *rule = location_depth_rule(run->location, segment);
        if (!survey_in_ground(segment->way) || rule == NULL) {
            continue;
        }
        *unsaid = *unsaid || (may_be_field(run->location, segment) && segment->under == UNDER_COUNT);
        *bed = *bed || (may_be_field(run->location, segment) && segment->under == UNDER_BED);
        if (*worst == NULL || segment->depth_m.value - rule->value < (*worst)->depth_m.value - (*out)->value) {
            *worst = segment;
            *out = rule;
        }
    }
}

static void word_depth(struct Arena *arena, const struct RunDesign *run, const struct Segment *worst,
                       const struct LocationRule *rule, struct Check *out)
{
    out->source = location_clause(arena, rule);
    out->text = say(arena, SAY_AS_IS,
                    say_name(arena_print(arena, "%s lies %s mm deep; at least %s mm is required in this kind of place.",
                                         worst->name, number_text(arena, out->value * 1000, 0),
                                         number_text(arena, out->limit * 1000, 0))));
    if (!run->brief) {
        struct Steps steps = steps_begin(arena);
        steps_figure(&steps, say_term(SAY_STEP_LEAST_DEPTH),
                     say_term(worst->under == UNDER_FIELD ? SAY_STEP_PLOUGHED_GROUND : SAY_STEP_ANY_GROUND), "",
                     out->limit, UNIT_M, say_name(out->source));
        steps_figure(&steps, say_term(SAY_STEP_DEPTH_OF_NEAREST), say_name(worst->name), "", out->value, UNIT_M,
                     say_term(SAY_STEP_AS_SURVEYED));
        steps_end(&steps, out);
    }
}

void check_location_depth(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out)
{
    (void)trial;
    const struct Segment *worst = NULL;
    const struct LocationRule *rule = NULL;
    bool unsaid = false;
    bool bed = false;
    worst_depth(run, &worst, &rule, &unsaid, &bed);
    if (worst == NULL) {
        out->result = CHECK_NOT_DUE;
        out->unit = "";
        out->text =
            say(arena, SAY_AS_IS, say_name("No rule of Part 7 names a depth here; deep enough not to be disturbed."));
        return;
    }
    out->at_least = true;
    out->value = worst->depth_m.value;
    out->limit = rule->value;
    out->result = within(out->limit, out->value) ? CHECK_PASS : CHECK_FAIL;
    if (out->result == CHECK_PASS && unsaid) {
        check_unknown(
            out, say(arena, SAY_AS_IS,
                     say_name("Not made: what lies above a stretch in the ground was not surveyed (segments: under); "
                              "ploughed ground requires 1.0 m on a farm.")));
        out->settles = settles_key("segments: under");
        return;
    }
    if (bed) {
        out->assumes =
            say(arena, SAY_AS_IS,
                say_name("beds on the way are dug by hand: ground that a machine works requires 1.0 m on a farm"));
    }
    if (arena != NULL) {
        word_depth(arena, run, worst, rule, out);
    }
}

/* An armour or an earthed screen trips the overcurrent device when a nail goes in; a bare sheath does not. */
static bool bare_sheath(enum CableType type)
{
    return survey_cable_cover(type) == COVER_PLAIN;
}

static struct SayArg prompt_residual(struct Arena *arena)
{
    return say_part(say(arena, SAY_RULE_RESIDUAL_PROMPT, say_digits(additional_a * 1000, 4, UNIT_MA)));
}

void check_hidden_cable(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)trial;
    const struct Device *device = &run->run->device;
    const struct Segment *unsaid = NULL;
    const struct Segment *shallow = NULL;
    for (int i = 0; i < run->count && bare_sheath(run->terms.type); i++) {
        const struct Segment *segment = &run->segments[run->run->along[i]];
        if (segment->way == WAY_STUD_WALL) {
            shallow = segment->hidden == HIDDEN_SHALLOW ? segment : shallow;
            unsaid = segment->hidden == HIDDEN_COUNT ? segment : unsaid;
        }
    }
    out->result = CHECK_NOT_DUE;
    out->unit = "";
    if (shallow == NULL && unsaid == NULL) {
        out->text = say(arena, SAY_AS_IS, say_name("No bare sheath lies shallow in a wall."));
    } else if (device->residual_a.given && within(device->residual_a.value, additional_a) && !device->time_delayed) {
        out->result = CHECK_PASS;
        out->text = say(arena, SAY_AS_IS, say_name("A cable in a wall behind a residual device of 30 mA or less."));
        work_rule(arena, run, prompt_residual(arena), say_term(SAY_FOUND_YES), out);
    } else if (shallow != NULL) {
        out->result = CHECK_FAIL;
        out->text =
            say(arena, SAY_AS_IS,
                say_name(
                    "A cable under 50 mm deep in a wall, or between metal studs, needs a residual device of 30 mA, not "
                    "time-delayed, or an armoured or screened cable, or earthed metal over it."));
        work_rule(arena, run, prompt_residual(arena), say_term(SAY_FOUND_NO), out);
    } else {
        check_unknown(
            out,
            say(arena, SAY_AS_IS,
                say_name("Not made: how deep the cable lies in the wall was not surveyed (segments: hidden); under "
                         "50 mm, or between metal studs, it needs a residual device of 30 mA, not time-delayed.")));
        out->settles = settles_key("segments: hidden");
    }
}
