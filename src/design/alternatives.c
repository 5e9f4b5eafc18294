/* The sizes as they would stand with another protective conductor, so that the choice can be seen side by side.
 *
 * Each alternative is the surveyed run with one key changed, designed by the same code from the beginning: a core that
 * is set free may change how the loads lie on the lines. What it would report is not for this plan and is thrown away.
 */
#include "design/terms/design_private.h"

static const enum Cpc choices[] = {CPC_CORE, CPC_ARMOUR, CPC_CORE_AND_ARMOUR};
enum { CHOICES = (int)(sizeof choices / sizeof choices[0]) };

/* Conductors that the loads need: line and neutral, three lines, or three lines and neutral. */
static int loaded_cores(const struct Run *run)
{
    bool three = false;
    bool single = false;
    for (int i = 0; i < run->load_count; i++) {
        three = three || run->loads[i].phases == 3;
        single = single || run->loads[i].phases == 1;
    }
    return !three ? 2 : single ? 4 : 3;
}

/* With two cores there is no choice but the armour. */
static bool cable_allows(const struct Run *run, enum Cpc cpc)
{
    const int spare = run->cable.cores - loaded_cores(run);
    return survey_armoured(run->cable.type) && run->cable.cores >= 3 && spare >= (cpc == CPC_ARMOUR ? 0 : 1);
}

/* An earth run that goes all the way beside the run and is not its own already; -1 none. */
static int earth_beside(const struct Survey *survey, const struct Run *run)
{
    if (run->cable.cpc == CPC_SEPARATE || run->cable.cores < loaded_cores(run)) {
        return -1;
    }
    for (int r = 0; r < survey->run_count; r++) {
        bool beside = survey->runs[r].kind == RUN_EARTH;
        for (int i = 0; beside && i < run->along_count; i++) {
            beside = survey_follows(&survey->runs[r], run->along[i]);
        }
        if (beside) {
            return r;
        }
    }
    return -1;
}

static bool try_choice(const struct Design *design, const struct RunDesign *run, struct RatedSizes rated, enum Cpc cpc,
                       int cpc_run, struct Alternative *out)
{
    struct Run changed = *run->run;
    changed.cable.cpc = cpc;
    changed.cable.cpc_run = cpc_run;
    changed.cable.size_mm2 = (struct Quantity){0}; /* every size, also where one was given */
    struct Design aside = *design;
    aside.diag = diag_new(design->arena);
    struct RunDesign work;
    if (aside.diag == NULL || !design_run_terms(&aside, &changed, run, &work)) {
        return false;
    }
    if (work.phases != run->phases) {
        rated.count = 0; /* other lines, other drops and capacities */
    }
    if (!choose_alternative(&aside, &work, rated, out)) {
        return false;
    }
    out->cpc = cpc;
    out->lines = work.phases;
    return true;
}

bool list_alternatives(const struct Design *design, const struct RunDesign *run, struct RatedSizes rated,
                       struct PlanRun *out)
{
    const struct Run *surveyed = run->run;
    const enum Cpc own = surveyed->cable.cpc;
    struct Alternative *list = arena_array(design->arena, CHOICES + 2, sizeof *list);
    if (list == NULL) {
        return false;
    }
    if (surveyed->cable.size_mm2.given && try_choice(design, run, rated, own, surveyed->cable.cpc_run, &list[0])) {
        out->alternative_count = 1;
    }
    for (int i = 0; i < CHOICES; i++) {
        const enum Cpc cpc = choices[i];
        if (cpc != own && cable_allows(surveyed, cpc) &&
            try_choice(design, run, rated, cpc, -1, &list[out->alternative_count])) {
            out->alternative_count++;
        }
    }
    const int earth = earth_beside(design->survey, surveyed);
    if (earth >= 0 && try_choice(design, run, rated, CPC_SEPARATE, earth, &list[out->alternative_count])) {
        out->alternative_count++;
    }
    out->alternatives = list;
    return !arena_failed(design->arena);
}
