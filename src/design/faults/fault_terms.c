/* What the checks on faults and earthing ask of the survey: the loop before the run, the way back, who shares it. */
#include "fault_private.h"

/* A charging point has a circuit of its own and no diversity (722.311). */
static bool charging_shares(const struct Run *run)
{
    bool shares = run->load_count > 1;
    for (int i = 0; i < run->load_count; i++) {
        shares = shares || run->loads[i].diversity.value < 1;
    }
    return shares;
}

/* The loop before the run. On TT it goes through two electrodes: ours and the supply's. Where only the whole loop was
 * measured it stands for ours too (Table 41.5); where only ours was, the supply's planning value is added; and so where
 * both were and the loop is said to be less than the electrode that is a part of it. */
static void loop_before(const struct Supply *supply, struct RunDesign *work)
{
    work->before_ohm = supply->loop_ohm.value;
    if (!work->tt) {
        return;
    }
    work->electrode_here_ohm = supply->electrode_ohm.given ? supply->electrode_ohm.value : supply->loop_ohm.value;
    if (supply->electrode_ohm.given &&
        (!supply->loop_ohm.given || supply->loop_ohm.value < supply->electrode_ohm.value)) {
        work->before_ohm = supply->electrode_ohm.value + design_practice()->supply_electrode_ohm;
    }
}

/* True when two runs have a stretch in common. */
static bool runs_meet(const struct Run *a, const struct Run *b)
{
    for (int i = 0; i < a->along_count; i++) {
        for (int j = 0; j < b->along_count; j++) {
            if (a->along[i] == b->along[j]) {
                return true;
            }
        }
    }
    return false;
}

/* True when nothing can knock against the run: it lies in conduit, trunking or duct wherever it does not pass through a
 * wall. */
static bool run_enclosed(const struct Survey *survey, const struct Run *run)
{
    int enclosed = 0;
    int holes = 0;
    for (int i = 0; i < run->along_count; i++) {
        const enum Way way = survey->segments[run->along[i]].way;
        enclosed += survey_shut_in(way);
        holes += survey_hole(way);
    }
    return enclosed > 0 && enclosed + holes == run->along_count;
}

void design_fault_terms(const struct Survey *survey, struct RunDesign *work)
{
    const struct Run *run = work->run;
    const struct Supply *supply = &survey->supply;
    work->u0_v = supply->voltage_v.value;
    work->tt = supply->system == SYSTEM_TT;
    work->tn_c_s = supply->system == SYSTEM_TN_C_S;
    loop_before(supply, work);
    work->fault_current_a = supply->fault_current_a.given ? supply->fault_current_a.value : 0;
    work->fault_cpc = survey_fault_path(survey, run);
    work->earthing = &survey->earthing;
    work->electrode_ohm = electrode_figures(work->edition, survey).used_ohm;
    work->soil_ohm_m = survey->conditions.soil_electrical_ohm_m.value;
    work->supply_neutral_mm2 = supply->neutral_mm2.value;
    work->earthing_conductor_mm2 = supply->earthing_conductor_mm2.value;
    work->location = survey->job.location;
    work->location_given = survey->job.location_given;
    work->surge = supply->surge;
    work->surge_declined_by = supply->surge_declined_by;
    work->selectivity = supply->selectivity;
    work->charging_shares = charging_shares(run);
    work->start_a = run_start_a(run, &work->demand);
    if (run->cable.cpc == CPC_SEPARATE && run->cable.cpc_run >= 0) {
        const struct Run *separate = &survey->runs[run->cable.cpc_run];
        work->separate_mm2 = separate->cable.size_mm2.value;
        work->separate_m = survey_electrical_m(survey, separate);
        work->separate_bunched = runs_meet(run, separate);
        work->separate_enclosed = run_enclosed(survey, separate);
    }
}
