/** How far the long sweeps go. By themselves they take a sample that still meets every rule; with WEND_SWEEP=deep in
 * the environment, as the tests labelled `deep` have it, all that they were written for; with WEND_SWEEP=all every
 * point of those that leave some out even then. */
#ifndef WEND_SWEEP_DEPTH_H
#define WEND_SWEEP_DEPTH_H

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

static inline bool sweep_every_point(void)
{
    const char *const asked = getenv("WEND_SWEEP");
    return asked != NULL && strcmp(asked, "all") == 0;
}

/* A number of rounds, or a step, as the depth asks for. */
static inline int sweep_depth(int sample, int deep)
{
    const char *const asked = getenv("WEND_SWEEP");
    return asked == NULL || *asked == '\0' ? sample : deep;
}

#endif
