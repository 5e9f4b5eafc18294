/* <rods>: the outbuilding's own electrode as something to build and to tick. What the survey does not say is a blank.
 */
#include "papers_private.h"

#include <math.h>

static const struct Say *drive_text(struct Arena *arena, const struct Earthing *earthing)
{
    if (!earthing->has_electrode || !earthing->rods.given) {
        return say(arena, SAY_RODS_NOT_SURVEYED);
    }
    const bool several = earthing->rods.value > 1;
    const bool length = earthing->rod_length_m.given, thick = earthing->rod_diameter_mm.given;
    const bool apart = several && earthing->rod_spacing_m.value > 0;
    return say(arena, SAY_RODS_DRIVE, say_count((int)lround(earthing->rods.value)),
               say_part(length ? say(arena, SAY_RODS_LONG, papers_metres(earthing->rod_length_m.value)) : NULL),
               say_part(thick ? say(arena, SAY_THICK, say_digits(earthing->rod_diameter_mm.value, 4, UNIT_MM)) : NULL),
               say_part(apart ? say(arena, SAY_RODS_APART, papers_metres(earthing->rod_spacing_m.value)) : NULL));
}

void papers_rods(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    const struct PlanElectrode *electrode = &plan->electrode;
    if (!electrode->due) {
        return;
    }
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *rods = xml_child(out, papers, "rods");
    papers_do(out, rods, "main", drive_text(arena, &plan->survey->earthing));
    for (int i = 0; i < plan->caution_count; i++) {
        if (plan->cautions[i].at_rods) {
            papers_do(out, rods, "main", plan_caution_shortly(&plan->cautions[i]));
        }
    }
    papers_do(out, rods, "main",
              electrode->earthing_conductor_mm2 > 0
                  ? say(arena, SAY_RODS_CONDUCTOR, say_digits(electrode->earthing_conductor_mm2, 4, UNIT_MM2))
                  : say(arena, SAY_RODS_CONDUCTOR_OPEN));
    papers_do(out, rods, "main", say(arena, SAY_RODS_MEASURE, say_digits(electrode->target_ohm, 4, UNIT_OHM)));
}
