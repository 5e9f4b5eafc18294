/** What libxml2 and libxslt do when memory runs out while a document is made. */
#ifndef WEND_MEMORY_WATCH_H
#define WEND_MEMORY_WATCH_H

/** Takes over the allocations of libxml2, unless the process has given it others; before anything else uses it. */
void memory_watch_set_up(void);
/** How to stop what this thread begins, should an allocation fail in it; NULL once it is done. */
void memory_watch_work(void (*stop)(void *work), void *work);
/** Frees the reserves; last of all. */
void memory_watch_drop(void);

#endif
