/* What the plan says of the cable as a thing, its bends, its pulls and its ends, for whoever carries and draws it. */
#include "mechanics_private.h"

static const struct Say *say_cable(struct Arena *arena, int order_length_m, const struct PlanCable *cable)
{
    if (!(cable->overall_mm > 0)) {
        return say(arena, SAY_THICKNESS_NOT_HELD);
    }
    const struct Say *armour = NULL, *radius = NULL, *weight = NULL, *heavy = NULL;
    if (cable->under_armour_mm > 0) {
        armour = say(arena, SAY_UNDER_THE_ARMOUR, say_digits(cable->under_armour_mm, 4, UNIT_MM));
    }
    if (cable->bend_radius_mm > 0) {
        radius = say(arena, SAY_BEND_NO_TIGHTER, say_needed_mm(cable->bend_radius_mm));
    }
    if (cable->weight_kg_per_m > 0) {
        weight = say(arena, SAY_WEIGHT_TO_ORDER, say_digits(cable->weight_kg_per_m, 3, UNIT_KG),
                     say_fixed(cable->order_weight_kg, 0, UNIT_KG), say_fixed(order_length_m, 0, UNIT_M));
    }
    if (cable->heavy) {
        heavy = say(arena, SAY_TOO_HEAVY_FOR_ONE);
    }
    return say_then(arena,
                    say(arena, SAY_CABLE_AS_A_THING, say_digits(cable->overall_mm, 4, UNIT_MM), say_part(armour),
                        say_part(radius), say_part(weight)),
                    heavy);
}

struct PlanCable plan_cable(struct Arena *arena, const struct RunDesign *run, double size_mm2, int order_length_m)
{
    struct PlanCable out = {.source = SAY_NOTHING};
    struct CableBody body;
    if (mechanics_body(&run->run->cable, size_mm2, &body)) {
        out.overall_mm = body.overall_mm;
        out.under_armour_mm = body.under_armour_mm;
        out.weight_kg_per_m = body.weight_kg_per_m;
        out.source = body.source;
        out.order_weight_kg = body.weight_kg_per_m * order_length_m;
        out.heavy = out.order_weight_kg > site_practice()->lift_kg;
        if (!bend_least_radius_mm(run->run->cable.type, size_mm2, body.overall_mm, &out.bend_radius_mm)) {
            out.bend_radius_mm = 0;
        }
    }
    out.text = say_cable(arena, order_length_m, &out);
    return out;
}

/* A right angle at the least radius, measured to the far side of the cable. */
struct PlanEnd plan_end(struct Arena *arena, const struct End *end, const struct PlanCable *cable, bool stiff)
{
    struct PlanEnd out = {0};
    if (end->into == INTO_FREE || !(cable->bend_radius_mm > 0) || !(cable->overall_mm > 0)) {
        return out;
    }
    out.needs_mm = cable->bend_radius_mm + cable->overall_mm;
    if (!end->room_m.given) {
        out.text = say_then(arena, stiff ? say(arena, SAY_CABLE_IS_STIFF) : NULL,
                            say(arena, SAY_KEEP_CLEAR_OF_THE_ENTRY, say_needed_mm(out.needs_mm)));
        return out;
    }
    out.room_mm = end->room_m.value * 1000;
    out.tight = !within(out.needs_mm, out.room_mm);
    out.text = say(arena, out.tight ? SAY_ENTRY_TOO_TIGHT : SAY_ENTRY_HAS_ROOM,
                   end->entry < ENTRY_COUNT ? say_word(WORDS_ENTRY, (int)end->entry) : say_term(SAY_NOTHING),
                   say_there_mm(out.room_mm), say_needed_mm(out.needs_mm));
    return out;
}
