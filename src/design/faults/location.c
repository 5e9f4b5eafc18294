/* What the place of a feed demands of it: residual devices, whose earth it may use, how deep it lies. The rules are a
 * table (src/tables/location_rules.c); a place without a rule of its own goes by an ordinary one's. */
#include "fault_private.h"

struct SayArg residual_ma(double residual_a)
{
    return say_digits(residual_a * 1000, 4, UNIT_MA);
}

static const struct LocationRule *rule_here(const struct Edition *edition, enum Location location,
                                            enum LocationTopic topic)
{
    const struct LocationRule *own = location_rule(edition, location, topic);
    return own != NULL ? own : location_rule(edition, LOCATION_ORDINARY, topic);
}

/* A feed to a lighting board is no final circuit; that it goes to a board has to be written. */
static bool final_lighting(const struct Run *run)
{
    return run->use == USE_LIGHTING && !(run->feeds == FEEDS_BOARD && run->feeds_given);
}

static const struct LocationRule *sockets_rule(const struct Edition *edition, enum Location location, double rating_a)
{
    const struct LocationRule *rule = rule_here(edition, location, TOPIC_SOCKETS);
    if (rule != NULL && within(rating_a, rule->up_to_a)) {
        return rule;
    }
    rule = rule_here(edition, location, TOPIC_SOCKETS_LARGE);
    return rule != NULL ? rule : rule_here(edition, location, TOPIC_FINAL);
}

const struct LocationRule *location_residual_rule(const struct Edition *edition, enum Location location,
                                                  const struct Run *run, double rating_a)
{
    if (run->use == USE_CHARGING) {
        return NULL; /* device-for-load asks for more */
    }
    if (run->feeds == FEEDS_SOCKETS) {
        return sockets_rule(edition, location, rating_a);
    }
    if (final_lighting(run)) {
        const struct LocationRule *rule = rule_here(edition, location, TOPIC_LIGHTING);
        return rule != NULL ? rule : rule_here(edition, location, TOPIC_FINAL);
    }
    return rule_here(edition, location, run->feeds == FEEDS_BOARD ? TOPIC_FEED : TOPIC_FINAL);
}

bool location_residual_met(const struct LocationRule *rule, const struct Device *device)
{
    return device->residual_a.given && within(device->residual_a.value, rule->value) &&
           !(device->time_delayed && within(rule->value, clause_figures()->additional_residual_a));
}

static void by_clause(const struct LocationRule *rule, struct Check *out)
{
    switch (rule->by) {
    case RULE_BY_CLAUSE: out->cite = (struct Cite){BS_7671, .clause = rule->clause}; break;
    case RULE_BY_NOTE: out->cite = (struct Cite){BS_7671, .clause = rule->clause, .note = true}; break;
    case RULE_BY_STANDARD: out->cite = (struct Cite){.standard = rule->clause}; break;
    case RULE_BY_GUIDANCE: out->cite = (struct Cite){.standard = NULL}; break;
    }
    out->rule = rule->by == RULE_BY_GUIDANCE ? SAY_RULE_FUEL_POINT : SAY_NOTHING;
    out->trust = rule->trust;
}

/* "Socket-outlets on a farm" */
static struct SayArg what_where(struct Arena *arena, const struct RunDesign *run)
{
    static const enum Saying where[LOCATION_COUNT] = {
        [LOCATION_DWELLING] = SAY_IN_A_DWELLING,   [LOCATION_WORKSHOP] = SAY_IN_A_PLACE_OF_WORK,
        [LOCATION_FARM] = SAY_ON_A_FARM,           [LOCATION_BUILDING_SITE] = SAY_ON_A_BUILDING_SITE,
        [LOCATION_CARAVAN_PARK] = SAY_AT_PITCHES,  [LOCATION_MARINA] = SAY_AT_BERTHS,
        [LOCATION_POOL] = SAY_AT_A_POOL,           [LOCATION_OUTDOOR_LIGHTING] = SAY_IN_THE_OPEN,
        [LOCATION_EVENT] = SAY_AT_AN_EVENT,        [LOCATION_FUEL_POINT] = SAY_AT_A_FUEL_POINT,
        [LOCATION_MEDICAL] = SAY_IN_MEDICAL_ROOMS,
    };
    const struct Run *fed = run->run;
    const enum Saying what = fed->feeds == FEEDS_SOCKETS ? SAY_SOCKETS_WHERE
                             : final_lighting(fed)       ? SAY_LIGHTING_WHERE
                             : fed->feeds == FEEDS_BOARD ? SAY_FEED_TO_BOARD_WHERE
                                                         : SAY_EQUIPMENT_WHERE;
    return say_part(say(arena, what, say_term(where[run->location])));
}

/* Dwellings and the places of Part 7 leave no way round the rule for sockets (411.3.3). */
static bool may_be_waived(const struct RunDesign *run)
{
    const bool ordinary =
        run->location == LOCATION_ORDINARY || location_rule(run->edition, run->location, TOPIC_SOCKETS) == NULL;
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
        check_unsettled(out, settles_key("job: location"),
                        say(arena, SAY_RESIDUAL_WAIVED_WHERE, residual_ma(clause_figures()->additional_residual_a)));
        return true;
    }
    out->result = CHECK_NOT_DUE;
    out->assumes = say(arena, SAY_ASSUMES_RESIDUAL_WAIVED, residual_ma(clause_figures()->additional_residual_a));
    out->text = say(arena, SAY_RESIDUAL_WAIVED, say_name(assessment));
    return true;
}

/* Whether a risk assessment may take the place of a residual device of sockets. */
static const struct Say *on_waiver(struct Arena *arena, const struct RunDesign *run)
{
    if (run->run->feeds == FEEDS_SOCKETS && run->location == LOCATION_DWELLING) {
        return say(arena, SAY_RESIDUAL_NEVER_WAIVED);
    }
    return may_be_waived(run) ? say(arena, SAY_RESIDUAL_MAY_BE_WAIVED) : NULL;
}

static struct SayArg residual_found(struct Arena *arena, const struct Device *device)
{
    const struct SayArg rated = residual_ma(device->residual_a.value);
    return !device->residual_a.given ? say_term(SAY_FOUND_NONE)
           : device->time_delayed    ? say_part(say(arena, SAY_FOUND_TIME_DELAYED, rated))
                                     : rated;
}

static const struct Say *what_is_required(struct Arena *arena, const struct RunDesign *run,
                                          const struct LocationRule *rule)
{
    const struct Device *device = &run->run->device;
    const struct SayArg what = what_where(arena, run);
    const struct SayArg most = residual_ma(rule->value);
    const struct SayArg rated = residual_ma(device->residual_a.value);
    const bool prompt = within(rule->value, clause_figures()->additional_residual_a);
    if (!device->residual_a.given) {
        return say(arena, prompt ? SAY_RESIDUAL_PROMPT_MISSING : SAY_RESIDUAL_MISSING, what, most);
    }
    if (device->time_delayed) {
        return say(arena, prompt ? SAY_RESIDUAL_PROMPT_DELAYED : SAY_RESIDUAL_TOO_LARGE_DELAYED, what, most, rated);
    }
    return say(arena, prompt ? SAY_RESIDUAL_PROMPT_TOO_LARGE : SAY_RESIDUAL_TOO_LARGE, what, most, rated);
}

static void lacks_residual(struct Arena *arena, const struct RunDesign *run, const struct LocationRule *rule,
                           struct Check *out)
{
    out->result = CHECK_FAIL;
    out->unit = UNIT_NONE;
    out->value = out->limit = 0;
    out->text = say_then(arena, what_is_required(arena, run, rule), on_waiver(arena, run));
    work_rule(arena, say_part(say(arena, SAY_RULE_RESIDUAL, residual_ma(rule->value))),
              residual_found(arena, &run->run->device), out);
}

static void work_residual(struct Arena *arena, const struct LocationRule *rule, struct Check *out)
{
    struct Steps steps = steps_begin(arena);
    steps_figure(&steps, say_term(SAY_STEP_LARGEST_RESIDUAL), say_term(SAY_STEP_BY_WHAT_IS_FED), "", rule->value * 1000,
                 UNIT_MA, say_part(check_source_said(arena, out)));
    steps_figure(&steps, say_term(SAY_STEP_RESIDUAL_OF_DEVICE), say_term(SAY_STEP_AS_SURVEYED_OR_CHOSEN), "",
                 out->value, UNIT_MA, say_term(SAY_STEP_AS_SURVEYED));
    steps_end(&steps, out);
}

/* No rule bears on it, or none that is held; but what place it is may change that. */
static void no_residual_rule(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    out->result = CHECK_NOT_DUE;
    out->unit = UNIT_NONE;
    out->cite.clause = "411.3.3, 411.3.4";
    const struct LocationRule *home = location_rule(run->edition, LOCATION_DWELLING, TOPIC_LIGHTING);
    const struct LocationRule *refused = location_rule(run->edition, run->location, TOPIC_REFUSED);
    if (refused != NULL) {
        out->result = CHECK_FAIL;
        by_clause(refused, out);
        work_rule(arena, say_term(SAY_RULE_PLACE), say_term(SAY_FOUND_MEDICAL), out);
        out->text = say(arena, SAY_MEDICAL_NOT_HELD);
    } else if (run->run->use == USE_CHARGING) {
        out->cite.clause = "722.531.3";
        out->text = say(arena, SAY_RESIDUAL_BY_LOAD);
    } else if (final_lighting(run->run) && !run->location_given && !location_residual_met(home, &run->run->device)) {
        check_unsettled(out, settles_key("job: location"),
                        say(arena, SAY_RESIDUAL_OF_LIGHTING_WHERE, residual_ma(home->value)));
    } else {
        out->text = say(arena, run->run->feeds == FEEDS_BOARD ? SAY_RESIDUAL_BY_ITS_BOARD : SAY_RESIDUAL_NOT_ASKED);
    }
}

void check_residual_protection(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                               struct Check *out)
{
    (void)trial;
    const struct Device *device = &run->run->device;
    const struct LocationRule *rule = location_residual_rule(run->edition, run->location, run->run, run->rating_a);
    if (rule == NULL || location_rule(run->edition, run->location, TOPIC_REFUSED) != NULL) {
        no_residual_rule(arena, run, out);
        return;
    }
    by_clause(rule, out);
    out->value = device->residual_a.value * 1000;
    out->limit = rule->value * 1000;
    if (!location_residual_met(rule, device)) {
        if (!waived(arena, run, out)) {
            lacks_residual(arena, run, rule, out);
        }
        return;
    }
    out->result = CHECK_PASS;
    out->text = say(arena, SAY_RESIDUAL_MET, what_where(arena, run), residual_ma(rule->value),
                    residual_ma(device->residual_a.value));
    work_residual(arena, rule, out);
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
    const struct LocationRule *rule = location_rule(run->edition, run->location, TOPIC_EARTH);
    out->result = CHECK_NOT_DUE;
    out->unit = UNIT_NONE;
    if (rule == NULL) {
        out->text = say(arena, SAY_EARTH_NOT_BARRED);
        return;
    }
    by_clause(rule, out);
    if (run->earthing->far_end == FAR_END_ISLAND || run->tt) {
        out->text = say(arena, SAY_EARTH_OF_ELECTRODE);
    } else if (!run->tn_c_s) {
        out->text = say(arena, SAY_EARTH_OTHER_THAN_BARRED);
        out->assumes = say(arena, SAY_ASSUMES_TN_S_ALL_THE_WAY);
    } else if (location_takes_earth(rule, run->earthing)) {
        out->result = CHECK_PASS;
        work_rule(arena, say_term(SAY_RULE_GRID), say_term(SAY_FOUND_YES), out);
        out->text = say(arena, SAY_EARTH_OVER_GRID);
    } else if (rule->value >= EARTH_WITH_GRID && !run->earthing->floor_grid_given) {
        check_unsettled(out, settles_key("earthing: floor-grid"), say(arena, SAY_EARTH_GRID_NOT_SURVEYED));
    } else {
        out->result = CHECK_FAIL;
        work_rule(arena, say_term(SAY_RULE_WHOSE_EARTH), say_term(SAY_FOUND_TN_C_S), out);
        out->text = say(arena, rule->value >= EARTH_WITH_GRID ? SAY_EARTH_WITHOUT_GRID : SAY_EARTH_BARRED);
    }
}

bool location_asks_depth(const struct Edition *edition, enum Location location)
{
    return location_rule(edition, location, TOPIC_DEPTH) != NULL ||
           location_rule(edition, location, TOPIC_DEPTH_FIELD) != NULL;
}

const struct LocationRule *location_depth_rule(const struct Edition *edition, enum Location location,
                                               const struct Segment *segment)
{
    const struct LocationRule *field =
        segment->under == UNDER_FIELD ? location_rule(edition, location, TOPIC_DEPTH_FIELD) : NULL;
    return field != NULL ? field : location_rule(edition, location, TOPIC_DEPTH);
}

/* What is not written to lie above, or a bed that a machine may work, could be ploughed ground: the rule that would
 * hold then and is not met, NULL none. */
static const struct LocationRule *rule_if_field(const struct Edition *edition, enum Location location,
                                                const struct Segment *segment)
{
    const struct LocationRule *field = location_rule(edition, location, TOPIC_DEPTH_FIELD);
    const bool may_be = segment->under == UNDER_COUNT || segment->under == UNDER_BED;
    return may_be && field != NULL && !within(field->value, segment->depth_m.value) ? field : NULL;
}

/* The stretch in the ground that lies furthest above what the place asks, NULL none, and what ploughed ground would ask
 * of one that may be it, NULL none. */
struct Depths {
    const struct Segment *worst;
    const struct LocationRule *rule;
    const struct LocationRule *unsaid, *bed; /* nothing was written; a bed was */
};

static struct Depths depths_of(const struct RunDesign *run)
{
    struct Depths found = {0};
    const bool asked = location_asks_depth(run->edition, run->location);
    for (int i = 0; asked && i < run->count; i++) {
        const struct Segment *segment = &run->segments[run->run->along[i]];
        const struct LocationRule *rule =
            survey_in_ground(segment->way) ? location_depth_rule(run->edition, run->location, segment) : NULL;
        if (rule == NULL) {
            continue;
        }
        const struct LocationRule *field = rule_if_field(run->edition, run->location, segment);
        if (field != NULL && segment->under == UNDER_BED) {
            found.bed = field;
        } else if (field != NULL) {
            found.unsaid = field;
        }
        if (found.worst == NULL ||
            segment->depth_m.value - rule->value < found.worst->depth_m.value - found.rule->value) {
            found.worst = segment;
            found.rule = rule;
        }
    }
    return found;
}

static void word_depth(struct Arena *arena, const struct Segment *worst, const struct LocationRule *rule,
                       struct Check *out)
{
    by_clause(rule, out);
    out->text = say(arena, SAY_DEPTH_OF_STRETCH, say_name(worst->name), say_fixed(out->value * 1000, 0, UNIT_MM),
                    say_fixed(out->limit * 1000, 0, UNIT_MM));
    struct Steps steps = steps_begin(arena);
    steps_figure(&steps, say_term(SAY_STEP_LEAST_DEPTH),
                 say_term(worst->under == UNDER_FIELD ? SAY_STEP_PLOUGHED_GROUND : SAY_STEP_ANY_GROUND), "", out->limit,
                 UNIT_M, say_part(check_source_said(arena, out)));
    steps_figure(&steps, say_term(SAY_STEP_DEPTH_OF_NEAREST), say_name(worst->name), "", out->value, UNIT_M,
                 say_term(SAY_STEP_AS_SURVEYED));
    steps_end(&steps, out);
}

void check_location_depth(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out)
{
    (void)trial;
    const struct Depths depths = depths_of(run);
    if (depths.worst == NULL) {
        out->result = CHECK_NOT_DUE;
        out->unit = UNIT_NONE;
        out->text = say(arena, SAY_DEPTH_NOT_NAMED);
        return;
    }
    out->at_least = true;
    out->value = depths.worst->depth_m.value;
    out->limit = depths.rule->value;
    out->result = within(out->limit, out->value) ? CHECK_PASS : CHECK_FAIL;
    if (out->result == CHECK_PASS && depths.unsaid != NULL) {
        check_unsettled(out, settles_key("segments: under"),
                        say(arena, SAY_DEPTH_UNDER_WHAT, say_fixed(depths.unsaid->value, 1, UNIT_M)));
        return;
    }
    if (depths.bed != NULL) {
        out->assumes = say(arena, SAY_ASSUMES_BEDS_DUG_BY_HAND, say_fixed(depths.bed->value, 1, UNIT_M));
    }
    word_depth(arena, depths.worst, depths.rule, out);
}

/* An armour or an earthed screen trips the overcurrent device when a nail goes in; a bare sheath does not. */
static bool bare_sheath(enum CableType type)
{
    return survey_cable_cover(type) == COVER_PLAIN;
}

static struct SayArg prompt_residual(struct Arena *arena)
{
    return say_part(say(arena, SAY_RULE_RESIDUAL_PROMPT, residual_ma(clause_figures()->additional_residual_a)));
}

void check_hidden_cable(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)trial;
    const struct Device *device = &run->run->device;
    const struct Segment *unsaid = NULL;
    const struct Segment *shallow = NULL;
    for (int i = 0; i < run->count && bare_sheath(run->terms.type); i++) {
        const struct Segment *segment = &run->segments[run->run->along[i]];
        if (survey_way(segment->way)->round == ROUND_STUDS) {
            shallow = segment->hidden == HIDDEN_SHALLOW ? segment : shallow;
            unsaid = segment->hidden == HIDDEN_COUNT ? segment : unsaid;
        }
    }
    out->result = CHECK_NOT_DUE;
    out->unit = UNIT_NONE;
    if (shallow == NULL && unsaid == NULL) {
        out->text = say(arena, SAY_HIDDEN_NOWHERE);
    } else if (device->residual_a.given && within(device->residual_a.value, clause_figures()->additional_residual_a) &&
               !device->time_delayed) {
        out->result = CHECK_PASS;
        out->text = say(arena, SAY_HIDDEN_BEHIND_RESIDUAL, residual_ma(clause_figures()->additional_residual_a));
        work_rule(arena, prompt_residual(arena), say_term(SAY_FOUND_YES), out);
    } else if (shallow != NULL) {
        out->result = CHECK_FAIL;
        out->text = say(arena, SAY_HIDDEN_WITHOUT_RESIDUAL, residual_ma(clause_figures()->additional_residual_a));
        work_rule(arena, prompt_residual(arena), say_term(SAY_FOUND_NO), out);
    } else {
        check_unsettled(out, settles_key("segments: hidden"),
                        say(arena, SAY_HIDDEN_HOW_DEEP, residual_ma(clause_figures()->additional_residual_a)));
    }
}
