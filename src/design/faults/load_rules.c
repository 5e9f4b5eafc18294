/* What the kind of load asks of its device: charging points, generation. */
#include "fault_private.h"

static void rule_fails(struct Check *out, const struct Say *text)
{
    out->result = CHECK_FAIL;
    out->unit = "";
    out->value = out->limit = 0;
    out->text = text;
}

void check_device_for_load(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                           struct Check *out)
{
    (void)trial;
    const struct Device *device = &run->run->device;
    if (run->run->use != USE_CHARGING) {
        out->result = CHECK_NOT_DUE;
        out->source = "BS 7671 722.531.3";
        out->text = say(arena, SAY_AS_IS, say_name("The run feeds no charging point."));
        return;
    }
    out->value = device->residual_a.given ? device->residual_a.value * 1000 : 0;
    out->limit = 30;
    work_device_for_load(arena, run, out);
    if (!device->residual_a.given || !within(device->residual_a.value, 0.030)) {
        rule_fails(out,
                   say(arena, SAY_AS_IS,
                       say_name("Each charging point needs a residual device of its own, 30 mA or less (722.531.3).")));
    } else if (device->time_delayed) {
        rule_fails(
            out,
            say(arena, SAY_AS_IS,
                say_name("The residual device of a charging point must not be time-delayed (415.1.1, 722.531.3).")));
    } else if (!device->residual_type_given) {
        check_unsettled(out, settles_key("device: residual-type"),
                        say(arena, SAY_AS_IS,
                            say_name("Not made: the type of the residual device was not given (device: residual-type); "
                                     "type AC is ruled out for "
                                     "charging (722.531.3.101).")));
        out->step_count = 0;
    } else if (device->residual_type == RESIDUAL_AC) {
        rule_fails(
            out,
            say(arena, SAY_AS_IS,
                say_name("A charging point needs a residual device of type A at least, with protection against smooth "
                         "direct current, or type B; "
                         "type AC is ruled out (722.531.3.101).")));
    } else if (run->charging_shares) {
        rule_fails(out, say(arena, SAY_AS_IS,
                            say_name("A charging point has a circuit of its own, without diversity (722.311): the "
                                     "loads of this run do not.")));
    } else {
        out->result = CHECK_PASS;
        out->text = say(
            arena, SAY_AS_IS,
            say_name(device->residual_type == RESIDUAL_B
                         ? "A residual device of its own, type B, 30 mA or less; it must break the neutral too."
                         : "A residual device of its own, 30 mA or less; it must break the neutral too, and the unit "
                           "must bring its own 6 mA "
                           "direct-current detection (BS IEC 62955): ask its maker."));
    }
}

/* A table of who may use which earth would say more than is known: the plan names the ways and leaves them open. */
void check_charging_earth(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out)
{
    (void)arena;
    (void)trial;
    out->result = CHECK_NOT_DUE;
    if (run->run->use != USE_CHARGING) {
        out->text = say(arena, SAY_AS_IS, say_name("The run feeds no charging point."));
    } else if (run->earthing->far_end == FAR_END_ISLAND || run->tt) {
        out->text = say(arena, SAY_AS_IS,
                        say_name("The charging point stands on an electrode of its own, not on the supply's earth."));
    } else if (run->tn_c_s) {
        check_unsettled(
            out, (struct Settles){.key = "earthing: far-end: island", .reading = SAY_SETTLED_BY_ANOTHER_CHARGING_EARTH},
            say(arena, SAY_AS_IS,
                say_name(
                    "Not made: a charging point that can be used outdoors may have a TN-C-S earth in these ways only: "
                    "with "
                    "an added electrode so low that a lost neutral leaves 70 V at most; with a device that measures "
                    "the "
                    "protective conductor against true earth; or, on a single-phase supply, with one that watches the "
                    "supply's voltage; such a device opens all conductors, the protective one too. Say which, or give "
                    "it "
                    "an electrode of its own (722.411.4.1, in part from memory).")));
    } else {
        check_unsettled(
            out, settles_reading(SAY_SETTLED_BY_DISTRIBUTOR),
            say(arena, SAY_AS_IS,
                say_name("Not made: whether this supply is TN-S all the way back. Ask the distributor: where it is "
                         "combined further up, 722.411.4.1 holds as for TN-C-S.")));
    }
}

/* Whatever else is right, nothing here knows of a current that comes from the far end. */
void check_generation(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)run;
    (void)trial;
    check_unsettled(
        out, settles_reading(SAY_SETTLED_BY_DESIGN_OF_GENERATION),
        say_then(arena, say(arena, SAY_GENERATION_NOT_DESIGNED), say(arena, SAY_GENERATION_LEFT_TO_OTHERS)));
}
