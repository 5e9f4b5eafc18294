/* Where a caution bites; a verdict in a word. */
#include "plan.h"

const char *verdict_word(enum Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL: return "FAIL";
    case VERDICT_OPEN: return "OPEN";
    case VERDICT_PASS: return "PASS";
    }
    return "";
}

bool plan_caution_at(const struct Caution *caution, int segment)
{
    for (int i = 0; i < caution->stretch_count; i++) {
        if (caution->stretches[i] == segment) {
            return true;
        }
    }
    return false;
}
