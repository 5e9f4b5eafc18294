/* The cable as a thing, and what lies in a duct with it. */
#include "mechanics_private.h"

#include <math.h>

enum { FOLLOWERS_MOST = 64 }; /* bits */

bool mechanics_body(const struct Cable *cable, double size_mm2, struct CableBody *out)
{
    struct CableDimensions dimensions;
    const bool held = cable_dimensions(cable->type, cable->cores, size_mm2, &dimensions);
    if (!held && !cable->diameter_mm.given) {
        return false;
    }
    *out = (struct CableBody){.source = SAY_STEP_AS_SURVEYED};
    if (held) {
        out->overall_mm = dimensions.overall_mm;
        out->under_armour_mm = dimensions.under_armour_mm;
        out->weight_kg_per_m = dimensions.weight_kg_per_km / 1000;
        out->source = cable->type == CABLE_BS6724 ? SAY_SOURCE_DIMENSIONS_6724 : SAY_SOURCE_DIMENSIONS;
    }
    if (cable->diameter_mm.given) {
        out->overall_mm = cable->diameter_mm.value;
        out->source = SAY_STEP_AS_SURVEYED;
    }
    return true;
}

double mechanics_least_mm(const struct Cable *cable, double size_mm2)
{
    static const double pi = 3.14159265358979323846;
    return fmax(sqrt(4 * cable->cores * size_mm2 / pi), cable_thickest_up_to(cable->type, cable->cores, size_mm2));
}

/* Circuits `beside` a duct are in it unless they are said to have ducts of their own; the grouping factor reads it so
 * too. */
static bool has_unknown_cables(const struct Segment *segment)
{
    return segment->has_beside && segment->beside.circuits > 0 &&
           segment->beside.arrangement != ARRANGEMENT_DUCT_TOUCHING &&
           segment->beside.arrangement != ARRANGEMENT_DUCT_SPACED && segment->beside.arrangement != ARRANGEMENT_SPACED;
}

struct SizedCable mechanics_sized(const struct Cable *cable, double size_mm2)
{
    struct SizedCable sized = {.known = false};
    sized.known = mechanics_body(cable, size_mm2, &sized.body);
    sized.least_mm = sized.known ? sized.body.overall_mm : mechanics_least_mm(cable, size_mm2);
    return sized;
}

struct SizedCable mechanics_own(const struct RunDesign *run, double size_mm2)
{
    return run->own != NULL ? *run->own : mechanics_sized(&run->run->cable, size_mm2);
}

static void share(struct Sharing *sharing, const struct Run *run, const struct SizedCable *cable)
{
    if (cable->least_mm > 0) {
        bunch_add(&sharing->least, cable->least_mm);
    }
    if (!cable->known) {
        sharing->lacking = sharing->lacking != NULL ? sharing->lacking : run;
        return;
    }
    bunch_add(&sharing->bunch, cable->body.overall_mm);
    if (cable->body.weight_kg_per_m > sharing->heaviest_kg_per_m) {
        sharing->heaviest_kg_per_m = cable->body.weight_kg_per_m;
    }
}

uint64_t *mechanics_followers(struct Arena *arena, const struct Survey *survey)
{
    uint64_t *followers = arena_array(arena, (size_t)survey->segment_count, sizeof *followers);
    for (int r = 0; followers != NULL && r < survey->run_count && r < FOLLOWERS_MOST; r++) {
        for (int i = 0; i < survey->runs[r].along_count; i++) {
            followers[survey->runs[r].along[i]] |= UINT64_C(1) << (unsigned)r;
        }
    }
    return followers;
}

static bool run_follows(const struct RunDesign *design, int r, int segment)
{
    return design->followers != NULL && r < FOLLOWERS_MOST ? (design->followers[segment] >> (unsigned)r & 1U) != 0
                                                           : survey_follows(&design->survey->runs[r], segment);
}

struct Sharing mechanics_sharing(const struct RunDesign *design, double size_mm2, int segment)
{
    const struct Run *run = design->run;
    const struct Survey *survey = design->survey;
    struct Sharing sharing = {.cables_unknown = has_unknown_cables(&survey->segments[segment])};
    const struct SizedCable own = mechanics_own(design, size_mm2);
    share(&sharing, run, &own);
    const struct Beside *beside = &survey->segments[segment].beside;
    for (int i = 0; sharing.cables_unknown && beside->diameter_mm.given && i < beside->circuits; i++) {
        bunch_add(&sharing.bunch, beside->diameter_mm.value);
        bunch_add(&sharing.least, beside->diameter_mm.value);
    }
    sharing.cables_unknown = sharing.cables_unknown && !beside->diameter_mm.given;
    for (int i = 0; i < survey->run_count; i++) {
        const struct Run *other = &survey->runs[i];
        /* by name: the run in hand may be a changed copy of the surveyed one */
        if (run_follows(design, i, segment) && !text_same(other->name, run->name)) {
            sharing.other = other;
            const struct SizedCable cable =
                mechanics_sized(&other->cable, other->cable.size_mm2.given ? other->cable.size_mm2.value : size_mm2);
            share(&sharing, other, &cable);
        }
    }
    return sharing;
}
