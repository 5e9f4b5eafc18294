/* The cable as a thing, and what lies in a duct with it. */
#include "mechanics_private.h"

static enum CableType built_like(enum CableType type)
{
    return type == CABLE_BS6724 ? CABLE_BS5467 : type;
}

bool mechanics_body(const struct Cable *cable, double size_mm2, struct CableBody *out)
{
    struct CableDimensions dimensions;
    const bool held = cable_dimensions(built_like(cable->type), cable->cores, size_mm2, &dimensions);
    if (!held && !cable->diameter_mm.given) {
        return false;
    }
    *out = (struct CableBody){.source = "as surveyed"};
    if (held) {
        out->overall_mm = dimensions.overall_mm;
        out->weight_kg_per_m = dimensions.weight_kg_per_km / 1000;
        out->source = cable->type == CABLE_BS6724
                          ? "makers' datasheets for BS 5467, to whose dimensions BS 6724 is built"
                          : cable_dimensions_ref()->standard;
    }
    if (cable->diameter_mm.given) {
        out->overall_mm = cable->diameter_mm.value;
        out->source = "as surveyed";
    }
    return true;
}

enum PullSheath mechanics_sheath(enum CableType type)
{
    switch (type) {
    case CABLE_BS5467:
    case CABLE_BS6346:
    case CABLE_BS6004_FLAT:
    case CABLE_BS6004_MULTICORE:
    case CABLE_BS6004_SINGLE: return PULL_SHEATH_PVC;
    case CABLE_BS6724:
    case CABLE_BS7211_MULTICORE:
    case CABLE_BS8436: return PULL_SHEATH_LOW_SMOKE;
    case CABLE_EN50288:
    case CABLE_COUNT: break;
    }
    return PULL_SHEATH_UNKNOWN;
}

static bool follows(const struct Run *run, int segment)
{
    for (int i = 0; i < run->along_count; i++) {
        if (run->along[i] == segment) {
            return true;
        }
    }
    return false;
}

/* Circuits `beside` a duct are in it unless they are said to have ducts of their own; the grouping factor reads it so
 * too. */
static bool has_unknown_cables(const struct Segment *segment)
{
    return segment->has_beside && segment->beside.circuits > 0 &&
           segment->beside.arrangement != ARRANGEMENT_DUCT_TOUCHING &&
           segment->beside.arrangement != ARRANGEMENT_DUCT_SPACED && segment->beside.arrangement != ARRANGEMENT_SPACED;
}

static void share(struct Sharing *sharing, const struct Run *run, double size_mm2)
{
    struct CableBody body;
    const double own_mm2 = run->cable.size_mm2.given ? run->cable.size_mm2.value : size_mm2;
    if (!mechanics_body(&run->cable, own_mm2, &body)) {
        sharing->lacking = sharing->lacking != NULL ? sharing->lacking : run;
        return;
    }
    bunch_add(&sharing->bunch, body.overall_mm);
    if (body.weight_kg_per_m > sharing->heaviest_kg_per_m) {
        sharing->heaviest_kg_per_m = body.weight_kg_per_m;
    }
}

struct Sharing mechanics_sharing(const struct Survey *survey, const struct Run *run, double size_mm2, int segment)
{
    struct Sharing sharing = {.cables_unknown = has_unknown_cables(&survey->segments[segment])};
    struct Run own = *run;
    own.cable.size_mm2 = (struct Quantity){.value = size_mm2, .given = true};
    share(&sharing, &own, size_mm2);
    sharing.lacking = sharing.lacking != NULL ? run : NULL;
    for (int i = 0; i < survey->run_count; i++) {
        const struct Run *other = &survey->runs[i];
        /* by name: the run in hand may be a changed copy of the surveyed one */
        if (!text_same(other->name, run->name) && follows(other, segment)) {
            sharing.other = other;
            share(&sharing, other, size_mm2);
        }
    }
    return sharing;
}
