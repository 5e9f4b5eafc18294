/* The pulling plan: where the drum stands. Each pull is worked out by itself, but a run is one piece of cable: where
 * two of its pulls want the drum at different ends the plan says so and leaves the choice to the leader. */
#include "papers_private.h"

#include "documents/shown_private.h"

/* Which end the pulls of a run want; both when they differ. */
struct Wanted {
    bool supply, far;
};

static struct Wanted wanted_by(const struct PlanRun *run)
{
    struct Wanted wanted = {false, false};
    for (int k = 0; k < run->pull_count; k++) {
        const struct PlanPull *pull = &run->pulls[k];
        wanted.supply = wanted.supply || (pull->worked && !pull->either && !pull->from_far);
        wanted.far = wanted.far || (pull->worked && !pull->either && pull->from_far);
    }
    return wanted;
}

static const char *advice(const struct PlanRun *run)
{
    const struct Wanted wanted = wanted_by(run);
    if (wanted.supply && wanted.far) {
        return "These pulls want the drum at different ends, but the cable is one piece. So either the drum stands at "
               "one end of the route and the cable is pulled through stretch after stretch from there, or it is fed "
               "both ways from the middle. The leader decides.";
    }
    if (run->pull_count > 1) {
        return "The cable is one piece: it is pulled through stretch after stretch from the drum.";
    }
    return "";
}

void papers_pulling(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *pulling = NULL;
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        for (int k = 0; k < run->pull_count; k++) {
            const struct PlanPull *pull = &run->pulls[k];
            const int first = run->surveyed->along[pull->first];
            pulling = pulling != NULL ? pulling : xml_child(out, papers, "pulling");
            papers_do(
                out, pulling, "pull",
                arena_print(arena, "Run %s, stretch %d (%s): %s", run->surveyed->name, first + 1,
                            plan->segments[first].surveyed->name,
                            pull->worked ? shown_said(arena, pull->because) : "not worked out: see the stretch."));
        }
        if (run->pull_count > 0) {
            papers_do(out, pulling, "mind", advice(run));
            papers_do(out, pulling, "main",
                      arena_print(arena, "Run %s: drum at ____, order of the stretches ____, decided by ____.",
                                  run->surveyed->name));
        }
    }
}
