/* Where a caution bites. */
#include "wend/plan.h"

bool plan_caution_at(const struct Caution *caution, int segment)
{
    for (int i = 0; i < caution->stretch_count; i++) {
        if (caution->stretches[i] == segment) {
            return true;
        }
    }
    return false;
}
