/** What the text builder asks of an arena besides. */
#ifndef WEND_ARENA_PRIVATE_H
#define WEND_ARENA_PRIVATE_H

#include "base.h"

/** Makes the thing that was allocated last, of `size` bytes, larger or smaller where it lies. False, with nothing
 * changed, when something came after it or there is no room. What is added is not zeroed. */
bool arena_resize(struct Arena *arena, const void *last, size_t size, size_t wanted);

#endif
