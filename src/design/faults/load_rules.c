/* What the kind of load asks of its device: charging points, generation. */
#include "fault_private.h"

/* Most that the residual device of a charging point may have. */
static double charging_ma(void)
{
    return clause_figures()->charging_residual_a * 1000;
}

static struct SayArg charging_most(void)
{
    return say_digits(charging_ma(), 4, UNIT_MA);
}

static void rule_fails(struct Check *out, const struct Say *text)
{
    out->result = CHECK_FAIL;
    out->unit = UNIT_NONE;
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
        out->text = say(arena, SAY_CHARGING_NONE);
        return;
    }
    out->value = device->residual_a.given ? device->residual_a.value * 1000 : 0;
    out->limit = charging_ma();
    work_device_for_load(arena, run, out);
    if (!device->residual_a.given || !within(device->residual_a.value, charging_ma() / 1000)) {
        rule_fails(out, say(arena, SAY_CHARGING_NEEDS_RESIDUAL, charging_most()));
    } else if (device->time_delayed) {
        rule_fails(out, say(arena, SAY_CHARGING_RESIDUAL_DELAYED));
    } else if (!device->residual_type_given) {
        check_unsettled(out, settles_key("device: residual-type"), say(arena, SAY_CHARGING_TYPE_NOT_GIVEN));
        out->step_count = 0;
    } else if (device->residual_type == RESIDUAL_AC) {
        rule_fails(out, say(arena, SAY_CHARGING_TYPE_AC));
    } else if (run->charging_shares) {
        rule_fails(out, say(arena, SAY_CHARGING_SHARES));
    } else {
        out->result = CHECK_PASS;
        out->text = say(arena, device->residual_type == RESIDUAL_B ? SAY_CHARGING_TYPE_B : SAY_CHARGING_OWN_DETECTION,
                        charging_most());
    }
}

/* A table of who may use which earth would say more than is known: the plan names the ways and leaves them open. */
void check_charging_earth(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          struct Check *out)
{
    (void)trial;
    out->result = CHECK_NOT_DUE;
    if (run->run->use != USE_CHARGING) {
        out->text = say(arena, SAY_CHARGING_NONE);
    } else if (run->earthing->far_end == FAR_END_ISLAND || run->tt) {
        out->text = say(arena, SAY_CHARGING_ON_ELECTRODE);
    } else if (run->tn_c_s) {
        check_unsettled(out,
                        (struct Settles){.key = "earthing: far-end",
                                         .value = "island",
                                         .reading = SAY_SETTLED_BY_ANOTHER_CHARGING_EARTH},
                        say(arena, SAY_CHARGING_ON_TN_C_S));
    } else {
        check_unsettled(out, settles_reading(SAY_SETTLED_BY_DISTRIBUTOR), say(arena, SAY_CHARGING_ON_TN_S));
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
