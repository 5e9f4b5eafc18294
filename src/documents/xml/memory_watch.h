/** What libxml2 and libxslt do when memory runs out while a document is made. */
#ifndef WEND_MEMORY_WATCH_H
#define WEND_MEMORY_WATCH_H

#include <stdint.h>

/** Takes over the allocations of libxml2, unless the process has given it others; before anything else uses it. */
void memory_watch_set_up(void);
/** What this thread begins: how to stop it, should an allocation fail in it or it go beyond its bounds. Stopping takes
 * it a while, so it is given what it asks for until it holds four times as much. */
struct WatchedWork {
    void (*stop)(void *work);
    void *work;
    uint64_t held_most_bytes;  /**< at a time */
    uint64_t asked_most_bytes; /**< in all: copying them is what it spends its time with */
};
void memory_watch_begin(struct WatchedWork work);
enum WatchedEnd { WATCHED_WITHIN, WATCHED_HOLDS, WATCHED_ASKS /**< which bound it went beyond */ };
/** It is done. */
enum WatchedEnd memory_watch_end(void);
/** Frees the reserves; last of all. */
void memory_watch_drop(void);

/** Gives what is free back to the system. */
void memory_watch_trim(void);

#endif
