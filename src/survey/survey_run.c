/* What follows from a run's own words alone. */
#include "survey.h"

int survey_live_cores(const struct Cable *cable)
{
    const bool core_is_cpc = cable->cpc == CPC_CORE || cable->cpc == CPC_CORE_AND_ARMOUR;
    return cable->cores - (core_is_cpc ? 1 : 0);
}

bool survey_neutral(const struct Run *run, int lines)
{
    return lines == 1 || survey_live_cores(&run->cable) > lines;
}

static bool to_island(const struct Survey *survey)
{
    return survey->earthing.far_end == FAR_END_ISLAND;
}

enum Cpc survey_fault_path(const struct Survey *survey, const struct Run *run)
{
    return to_island(survey) && survey_armoured(run->cable.type) ? CPC_ARMOUR : run->cable.cpc;
}

bool survey_earth_stops(const struct Survey *survey, const struct Run *run)
{
    switch (run->cable.cpc) {
    case CPC_CORE:
    case CPC_CORE_AND_ARMOUR:
    case CPC_SEPARATE: return to_island(survey);
    case CPC_ARMOUR:
    case CPC_NONE:
    case CPC_COUNT: break;
    }
    return false;
}

bool survey_far_earth_known(const struct Survey *survey, const struct Run *run)
{
    return survey->earthing.given || (run->feeds == FEEDS_EQUIPMENT && run->use != USE_CHARGING);
}

double survey_board_residual_a(const struct Earthing *earthing, const struct Run *run)
{
    return run->feeds == FEEDS_BOARD && earthing->board_residual_a.given ? earthing->board_residual_a.value : 0;
}

int survey_run_phases(const struct Supply *supply, const struct Run *run)
{
    if (supply->phases != 3) {
        return 1;
    }
    for (int i = 0; i < run->load_count; i++) {
        if (run->loads[i].phases == 3) {
            return 3;
        }
    }
    return survey_live_cores(&run->cable) >= 4 ? 3 : 1;
}

int survey_stretch(const struct Run *run, int segment)
{
    const int count = run->along != NULL ? run->along_count : 0;
    if (!run->along_rises) {
        for (int i = 0; i < count; i++) {
            if (run->along[i] == segment) {
                return i;
            }
        }
        return -1;
    }
    int low = 0;
    for (int high = count; low < high;) {
        const int middle = low + (high - low) / 2;
        if (run->along[middle] < segment) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low < count && run->along[low] == segment ? low : -1;
}

bool survey_follows(const struct Run *run, int segment)
{
    return survey_stretch(run, segment) >= 0;
}

bool survey_powered(const struct Survey *survey, int segment)
{
    for (int r = 0; r < survey->run_count; r++) {
        if (survey->runs[r].kind == RUN_POWER && survey_follows(&survey->runs[r], segment)) {
            return true;
        }
    }
    return false;
}
