/* The pulling plan: where the drum stands. Each pull is worked out by itself, but a run is one piece of cable: where
 * two of its pulls want the drum at different ends the plan says so and leaves the choice to the leader. */
#include "papers_private.h"

#include <math.h>

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

static const struct Say *advice(struct Arena *arena, const struct PlanRun *run)
{
    const struct Wanted wanted = wanted_by(run);
    return wanted.supply && wanted.far ? say(arena, SAY_DRUM_AT_DIFFERENT_ENDS) : NULL;
}

static struct SayArg whole(double newtons)
{
    return say_fixed(newtons, 0, UNIT_N);
}

/* Rounded to the careful side: what it takes up, what it stands down. */
static const struct Say *one_pull(struct Arena *arena, const struct PlanPull *pull)
{
    const struct Say *said =
        pull->worked ? say_then(arena, pull->because,
                                say(arena, pull->lubricant ? SAY_PULL_LUBRICATED : SAY_PULL_DRY,
                                    whole(ceil(pull->tension_n - 1e-6)), whole(floor(pull->limit_n + 1e-6))))
                     : pull->text;
    return pull->pit_at_m > 0 ? say_then(arena, said, say(arena, SAY_DRAW_PIT_WOULD_DO, papers_metres(pull->pit_at_m)))
                              : said;
}

void papers_pulling(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *pulling = NULL;
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        const struct SayArg name = say_name(run->settled->name);
        for (int k = 0; k < run->pull_count; k++) {
            const struct PlanPull *pull = &run->pulls[k];
            const int first = run->settled->along[pull->first];
            pulling = pulling != NULL ? pulling : xml_child(out, papers, "pulling");
            papers_do(out, pulling, "pull",
                      say(arena, SAY_PULL_OF_STRETCH, say_count(first + 1),
                          say_name(plan->segments[first].surveyed->name), say_part(one_pull(arena, pull)),
                          plan->run_count > 1 ? name : say_part(NULL)));
        }
        if (run->pull_count > 0) {
            papers_do(out, pulling, "mind", advice(arena, run));
            papers_do(out, pulling, "main",
                      plan->run_count > 1 ? say(arena, SAY_COLON_SMALL, name, say_part(say(arena, SAY_DRUM_DECIDED)))
                                          : say(arena, SAY_DRUM_DECIDED));
        }
    }
}
