/* <rods>: the outbuilding's own electrode as something to build and to tick. What the survey does not say is a blank.
 */
#include "papers_private.h"

static void rods_do(struct XmlOut *out, struct XmlElement *rods, const char *text)
{
    papers_do(out, rods, "main", text);
}

static const char *drive_text(struct Arena *arena, const struct Earthing *earthing)
{
    if (!earthing->has_electrode || !earthing->rods.given) {
        return "Put in the electrode: what it is was not surveyed: ____ rods of ____ m.";
    }
    struct TextBuilder text = text_builder(arena);
    text_print(&text, "Drive %s rod%s", number_text(arena, earthing->rods.value, 0),
               earthing->rods.value > 1 ? "s" : "");
    if (earthing->rod_length_m.given) {
        text_print(&text, ", each %s long", papers_metres(arena, earthing->rod_length_m.value));
    }
    if (earthing->rod_diameter_mm.given) {
        text_print(&text, ", %s mm thick", number_significant(arena, earthing->rod_diameter_mm.value, 4));
    }
    if (earthing->rods.value > 1 && earthing->rod_spacing_m.value > 0) {
        text_print(&text, ", %s apart", papers_metres(arena, earthing->rod_spacing_m.value));
    }
    text_add(&text, ". Place: ____ m from ____. Scan for services first.");
    return text_done(&text);
}

void papers_rods(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    const struct PlanElectrode *electrode = &plan->electrode;
    if (!electrode->due) {
        return;
    }
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *rods = xml_child(out, papers, "rods");
    rods_do(out, rods, drive_text(arena, &plan->survey->earthing));
    rods_do(out, rods,
            "Keep at least 3.5 m from everything in the ground that is on the supply's earth: metal pipes, other "
            "cables, and this job's own armoured cable and its trench (distributors' figure, as the flags say).");
    rods_do(out, rods,
            electrode->earthing_conductor_mm2 > 0
                ? arena_print(arena,
                              "Earthing conductor from the rod to the outbuilding's earth bar: at least %s mm2, "
                              "sheathed, in one length of ____ m. Clamp, lid or pit, label.",
                              number_significant(arena, electrode->earthing_conductor_mm2, 4))
                : "Earthing conductor from the rod to the outbuilding's earth bar: ____ mm2, in one length of ____ m. "
                  "Clamp, lid or pit, label.");
    rods_do(out, rods,
            arena_print(arena,
                        "Measure the electrode before its conductor is joined: aim for %s ohm or less; read ____ ohm. "
                        "No switching on before this is written.",
                        number_text(arena, electrode->target_ohm, 0)));
}
