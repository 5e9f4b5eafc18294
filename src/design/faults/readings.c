/* What a meter should show once the run is built, for the test sheet. */
#include "fault_private.h"

#include <math.h>

/* An earth run that goes all the way beside the run and is not its protective conductor; NULL none. */
static const struct Run *earth_beside(const struct RunDesign *run)
{
    const struct Survey *survey = run->survey;
    for (int r = 0; survey != NULL && r < survey->run_count; r++) {
        const bool own = run->fault_cpc == CPC_SEPARATE && run->run->cable.cpc_run == r;
        bool beside = survey->runs[r].kind == RUN_EARTH && !own && run->run->along_count > 0;
        for (int i = 0; beside && i < run->run->along_count; i++) {
            beside = survey_follows(&survey->runs[r], run->run->along[i]);
        }
        if (beside) {
            return &survey->runs[r];
        }
    }
    return NULL;
}

/* Why a meter may show other than what is worked here: of paths side by side the plan takes only those that the route
 * names as the protective conductor, because another may be taken away. */
static const struct Say *note_of(struct Arena *arena, const struct RunDesign *run, const struct Loop *loop)
{
    const bool both_ends = run->earthing->far_end != FAR_END_ISLAND;
    const bool beside = run->fault_cpc == CPC_CORE || run->fault_cpc == CPC_SEPARATE;
    const struct Run *earth = both_ends ? earth_beside(run) : NULL;
    const struct Say *note = NULL;
    if (run->fault_cpc == CPC_CORE_AND_ARMOUR) {
        note = say(arena, loop->armour_ohm_per_m > 0 ? SAY_READ_SIDE_BY_SIDE : SAY_READ_LOWER_BY_ARMOUR_NOT_HELD);
    } else if (survey_armoured(run->terms.type) && beside && both_ends) {
        note = say(arena, SAY_READ_LOWER_BY_ARMOUR);
    }
    return earth == NULL ? note : say_then(arena, note, say(arena, SAY_READ_LOWER_BY_EARTH_RUN, say_name(earth->name)));
}

struct Readings readings_of(struct Arena *arena, const struct RunDesign *run, double size_mm2)
{
    struct Readings readings = {.made = true,
                                .r1_per_k = clause_figures()->copper_per_k,
                                .touch_v = touch_limit_v(run->edition),
                                .cold_part = clause_figures()->cold_part,
                                .insulation_least_mohm = clause_figures()->insulation_least_mohm,
                                .insulation_test_v = clause_figures()->insulation_test_v,
                                .ze_ohm = run->before_ohm,
                                .fault_origin_a = fault_current_any_a(run)};
    const struct Device *device = &run->run->device;
    if (device->residual_a.given) {
        readings.residual_a = device->residual_a.value;
        residual_time_s(device->time_delayed, 1, &readings.residual_longest_s);
        residual_time_s(device->time_delayed, 5, &readings.residual_longest_5_s);
        if (device->time_delayed) {
            residual_shortest_s(1, &readings.residual_shortest_s);
            residual_shortest_s(5, &readings.residual_shortest_5_s);
        }
    }
    readings.board_residual_a = survey_board_residual_a(run->earthing, run->run);
    if (readings.board_residual_a > 0) {
        residual_time_s(false, 1, &readings.board_residual_longest_s); /* whether it is delayed was not surveyed */
        residual_time_s(false, 5, &readings.board_residual_longest_5_s);
    }
    const struct Loop loop = loop_of_run(run, size_mm2);
    readings.note = note_of(arena, run, &loop);
    readings.r1_20_ohm = loop.line_20_ohm;
    if (loop.lacks != SAY_NOTHING) {
        return readings;
    }
    readings.r2_20_ohm = loop.protective_20_ohm;
    readings.r2_per_k = run->fault_cpc == CPC_ARMOUR ? armour_loop()->per_k : clause_figures()->copper_per_k;
    readings.reactance_ohm = loop.reactance_ohm;
    readings.r1r2_20_ohm = readings_at(&readings, 20).r1r2_ohm;
    if (run->before_ohm > 0) {
        readings.zs_20_ohm = readings_at(&readings, 20).zs_ohm;
        readings.zs_hot_ohm = loop_far_ohm(run->before_ohm, &loop);
        readings.fault_far_a = voltage_factor_least(run->edition) * run->u0_v / readings.zs_hot_ohm;
    }
    return readings;
}
