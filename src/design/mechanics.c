/* Every check on bends, ducts and drawing in of a run, one a segment. */
#include "mechanics_private.h"

static const struct Segment *segment_at(const struct RunDesign *run, int stretch)
{
    return &run->segments[run->run->along[stretch]];
}

int mechanics_count(const struct RunDesign *run)
{
    int count = 0;
    for (int i = 0; i < run->run->along_count; i++) {
        const struct Segment *segment = segment_at(run, i);
        count += (segment->bend_count > 0) + (segment->way == WAY_DUCT ? 2 : 0);
    }
    return count;
}

static struct Check begin(struct Arena *arena, const char *id, const struct Segment *segment, const char *unit,
                          const char *source)
{
    return (struct Check){.id = arena == NULL ? id : arena_print(arena, "%s:%s", id, segment->name),
                          .result = CHECK_NOT_DUE,
                          .unit = unit,
                          .source = source,
                          .text = ""};
}

int check_mechanics(struct Arena *arena, const struct Survey *survey, const struct RunDesign *run,
                    const struct Trial *trial, struct Check *out, int most)
{
    int count = 0;
    for (int i = 0; i < run->run->along_count; i++) {
        const struct Segment *segment = segment_at(run, i);
        if (segment->bend_count > 0 && count < most) {
            out[count] = begin(arena, "bend", segment, "mm", "On-Site Guide Table D5");
            check_bend(arena, run, trial, i, &out[count++]);
        }
        if (segment->way == WAY_DUCT && count < most) {
            out[count] = begin(arena, "duct-fill", segment, "%", "");
            check_duct_fill(arena, survey, run, trial, i, &out[count++]);
        }
        if (segment->way == WAY_DUCT && count < most) {
            out[count] = begin(arena, "pull", segment, "N", "makers' guides on drawing in");
            check_pull(arena, survey, run, trial, i, &out[count++]);
        }
    }
    return count;
}

const char *mechanics_assumption(struct Arena *arena, const struct Survey *survey, const struct Run *run)
{
    bool duct = false;
    struct PullFriction dry;
    for (int i = 0; i < run->along_count; i++) {
        duct = duct || survey->segments[run->along[i]].way == WAY_DUCT;
    }
    if (!duct || !pull_friction(mechanics_sheath(run->cable.type), false, &dry)) {
        return "";
    }
    return arena_print(
        arena,
        "drawn in dry through plastic duct, friction %s, the top of what is published; fed by hand; bends taken "
        "where in their stretch they are worst, and ducts one after the other as one pull",
        number_text(arena, dry.high, 2));
}
