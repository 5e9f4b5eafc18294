/** The routes of the project, planned one after the other. */
#ifndef WEND_PLAN_ROUTES_H
#define WEND_PLAN_ROUTES_H

#include "wend/wend.h"

/** Calls `look` for every route that is planned, of the found ones for one in `step`; their number. */
int for_plans(size_t step, void (*look)(const char *path, struct Wend *wend));

#endif
