/** What libxml2 and libxslt do when memory runs out while a document is made. */
#ifndef WEND_MEMORY_WATCH_H
#define WEND_MEMORY_WATCH_H

/** Takes over the allocations of libxml2, unless the process has given it others; before anything else uses it. */
void memory_watch_set_up(void);
/** The xsltTransformContext that is stopped when an allocation fails; NULL after it. */
void memory_watch_transform(void *context);
/** Frees the reserves; last of all. */
void memory_watch_drop(void);

#endif
