/* What the owner or the network operator has a say in, and what an outbuilding brings with it: surge protection,
 * selectivity, a supply that is there already. */
#include "fault_private.h"

/* 443.4.1 after A2: where people, safety services or much money or data depend on it surge protection is required, else
 * fitted unless the owner declines it. A charging point is taken for the first. */
void check_surge_protection(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                            struct Check *out)
{
    (void)trial;
    const bool required = run->run->use == USE_CHARGING;
    const char *by = run->surge_declined_by != NULL ? run->surge_declined_by : "";
    out->result = CHECK_NOT_DUE;
    switch (run->surge) {
    case SURGE_FITTED:
        out->result = CHECK_PASS;
        work_rule(arena, say_term(SAY_RULE_SURGE), say_term(SAY_FOUND_FITTED), out);
        out->text = say(arena, SAY_SURGE_FITTED);
        return;
    case SURGE_PLANNED:
        out->result = CHECK_PASS;
        work_rule(arena, say_term(SAY_RULE_SURGE), say_term(SAY_FOUND_PLANNED), out);
        out->text = say(arena, SAY_SURGE_PLANNED);
        return;
    case SURGE_DECLINED:
        if (!required) {
            out->text = *by == '\0' ? say(arena, SAY_SURGE_DECLINED) : say(arena, SAY_SURGE_DECLINED_BY, say_name(by));
            return;
        }
        break;
    case SURGE_COUNT: break;
    }
    if (required) {
        check_unsettled(out, settles_key("supply: surge-protection"), say(arena, SAY_SURGE_OF_CHARGING));
        return;
    }
    out->text = say(arena, SAY_SURGE_NOT_DECIDED);
    out->assumes = say(arena, SAY_ASSUMES_SURGE_DECIDED);
}

void check_selectivity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)trial;
    out->result = CHECK_NOT_DUE;
    switch (run->selectivity) {
    case SELECTIVITY_SHOWN:
        out->result = CHECK_PASS;
        work_rule(arena, say_term(SAY_RULE_AHEAD_CLOSED), say_term(SAY_FOUND_SHOWN), out);
        out->text = say(arena, SAY_AHEAD_STAYS_CLOSED);
        return;
    case SELECTIVITY_ACCEPTED: out->text = say(arena, SAY_AHEAD_MAY_OPEN); return;
    case SELECTIVITY_COUNT: break;
    }
    out->text = say(arena, SAY_AHEAD_NOT_DECIDED);
    out->assumes = say(arena, SAY_ASSUMES_AHEAD_NOT_LOOKED_UP);
}

/* What has not been surveyed can be longer, hotter and buried deeper than what has. */
void check_survey_complete(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    (void)run;
    (void)trial;
    check_unsettled(out, settles_reading(SAY_SETTLED_BY_REST_OF_SURVEY), say(arena, SAY_SURVEY_GOES_ON));
}

/* 411.3.1.1: what can be touched together stands on one earth; 132.16: what is there has to suit what is added. */
void check_existing_supply(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    (void)trial;
    const struct Earthing *earthing = run->earthing;
    const bool island = earthing->far_end == FAR_END_ISLAND;
    out->result = CHECK_NOT_DUE;
    if (!earthing->existing_given || earthing->existing == EXISTING_NONE) {
        if (earthing->existing_given || run->run->feeds != FEEDS_BOARD) {
            out->text = say(arena, SAY_OLD_SUPPLY_NONE);
            return;
        }
        out->text = say(arena, SAY_OLD_SUPPLY_NOT_SURVEYED);
        out->assumes = say(arena, SAY_ASSUMES_NO_OLD_SUPPLY);
        return;
    }
    if (earthing->existing == EXISTING_REPLACED) {
        out->text = say(arena, island ? SAY_OLD_SUPPLY_GOES_TO_ELECTRODE : SAY_OLD_SUPPLY_GOES_TO_FEED);
        return;
    }
    if (!island) {
        out->text = say(arena, SAY_OLD_SUPPLY_STAYS);
        return;
    }
    check_unsettled(out, settles_key("earthing: existing"), say(arena, SAY_OLD_SUPPLY_STAYS_BESIDE_ELECTRODE));
}
