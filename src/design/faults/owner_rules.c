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
        work_rule(arena, run, say_term(SAY_RULE_SURGE), say_term(SAY_FOUND_FITTED), out);
        out->text = say(
            arena, SAY_AS_IS,
            say_name("Surge protection is there at the origin, as surveyed; more than 10 m of cable away it protects "
                     "little: repeat it at the far board (534.4.9, from memory)."));
        return;
    case SURGE_PLANNED:
        out->result = CHECK_PASS;
        work_rule(arena, run, say_term(SAY_RULE_SURGE), say_term(SAY_FOUND_PLANNED), out);
        out->text = say(
            arena, SAY_AS_IS,
            say_name("Surge protection comes with this job, at the board and again at a far board more than 10 m of "
                     "cable away (534.4.9, from memory); it is not in the parts list."));
        return;
    case SURGE_DECLINED:
        if (!required) {
            out->text =
                say(arena, SAY_AS_IS,
                    say_name(arena == NULL ? ""
                                           : arena_print(arena, "Declined by the owner%s%s%s, who accepts the risk.",
                                                         *by != '\0' ? " (" : "", by, *by != '\0' ? ")" : "")));
            return;
        }
        break;
    case SURGE_COUNT: break;
    }
    if (required) {
        check_unknown(
            out,
            say(arena, SAY_AS_IS,
                say_name("Not made: for a charging point surge protection is taken as required, and the survey has "
                         "none (supply: surge-protection).")));
        out->settles = settles_key("supply: surge-protection");
        return;
    }
    out->text =
        say(arena, SAY_AS_IS,
            say_name("Not decided at the survey: fit it unless the owner declines (supply: surge-protection)."));
    out->assumes = say(arena, SAY_AS_IS,
                       say_name("surge protection was not decided: fit it, or write down who declined it "
                                "(supply: surge-protection, BS 7671 443.4.1)"));
}

void check_selectivity(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)trial;
    out->result = CHECK_NOT_DUE;
    switch (run->selectivity) {
    case SELECTIVITY_SHOWN:
        out->result = CHECK_PASS;
        work_rule(arena, run, say_term(SAY_RULE_AHEAD_CLOSED), say_term(SAY_FOUND_SHOWN), out);
        out->text = say(arena, SAY_AS_IS,
                        say_name("By the makers' tables the device ahead of the run's stays closed, as surveyed."));
        return;
    case SELECTIVITY_ACCEPTED:
        out->text = say(arena, SAY_AS_IS, say_name("The owner accepts that the device ahead may open with the run's."));
        return;
    case SELECTIVITY_COUNT: break;
    }
    out->text =
        say(arena, SAY_AS_IS,
            say_name("Not decided at the survey: the makers' tables say whether the device ahead stays closed (supply: "
                     "selectivity). As a rule of thumb a fuse ahead of a fuse is 1.6 times its "
                     "rating (IEC 60269, from memory)."));
    out->assumes = say(arena, SAY_AS_IS,
                       say_name("whether the device ahead stays closed in a fault on this run was not looked up "
                                "(supply: selectivity, BS 7671 536.4)"));
}

/* 411.3.1.1: what can be touched together stands on one earth; 132.16: what is there has to suit what is added. */
void check_existing_supply(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    (void)arena;
    (void)trial;
    const struct Earthing *earthing = run->earthing;
    const bool island = earthing->far_end == FAR_END_ISLAND;
    out->result = CHECK_NOT_DUE;
    if (!earthing->existing_given || earthing->existing == EXISTING_NONE) {
        if (earthing->existing_given || run->run->feeds != FEEDS_BOARD) {
            out->text = say(arena, SAY_AS_IS, say_name("No supply is there already."));
            return;
        }
        out->text =
            say(arena, SAY_AS_IS, say_name("Not surveyed: taken as having no supply yet (earthing: existing)."));
        out->assumes = say(arena, SAY_AS_IS,
                           say_name("what is fed has no supply yet: the earth of an old one would have to come off "
                                    "(earthing: existing)"));
        return;
    }
    if (earthing->existing == EXISTING_REPLACED) {
        out->text = say(
            arena, SAY_AS_IS,
            say_name(island ? "The outbuilding's old supply goes: its earth comes off, and its circuits move to the "
                              "electrode and are tested again."
                            : "The outbuilding's old supply goes: its earth comes off, and its circuits move to this "
                              "feed and are tested again."));
        return;
    }
    if (!island) {
        out->text =
            say(arena, SAY_AS_IS,
                say_name("The outbuilding keeps its old supply: two feeds to isolate, both labelled at both boards."));
        return;
    }
    check_unknown(
        out,
        say(arena, SAY_AS_IS,
            say_name("Not made: the old supply stays and this feed stands on an electrode of its own: two earths in "
                     "one building, where nothing on one may be touched together with anything on the other. Take "
                     "the old one out (earthing: existing: replaced), or export the supply's earth.")));
    out->settles = settles_key("earthing: existing");
}
