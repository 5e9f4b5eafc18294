/** What parts_cut.c shows to its test: a plan that is not proved takes seconds to come by. */
#ifndef WEND_PARTS_CUT_PRIVATE_H
#define WEND_PARTS_CUT_PRIVATE_H

#include "buying.h"
#include "cutting/cutting.h"
#include "plan/say.h"

/** Whether the plan is the best there is, and if that is not known how far from it it can be at most. */
const struct Say *parts_cut_proof(struct Arena *arena, const struct CuttingPlan *plan, const struct PartsCut *asked);

#endif
