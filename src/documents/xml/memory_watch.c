/* libxml2 and libxslt go on after an allocation that failed, and leave a text out or crash. So while a document is made
 * an allocation that fails is taken from a reserve, and is remembered: the document is then not given out at all.
 *
 * What was taken from a reserve may outlive the document (the libraries keep names and errors), so a reserve that was
 * ever drawn on stays, and freeing finds out whose a piece of memory is. That happens once or twice in the life of a
 * process that is short of memory, if at all.
 *
 * What is given to a template is counted too: one that goes beyond its bounds is stopped long before the machine is. */
#include "memory_watch.h"

#include "documents/documents.h"
#include "late_xml.h"

#include <malloc.h>
#include <stdatomic.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum {
    RESERVE_BYTES = 4 * 1024 * 1024, /* the templates take a third of it; untouched until drawn on */
    RESERVES_MOST = 256,             /* threads that make documents at the same time */
    PIECE = 16                       /* alignment, and the room before each piece where its size is kept */
};

/* libxml2's hooks carry no context. The reserves are the process's, each in use by one thread at a time; what is
 * watched is the thread's. */
static struct Reserve {
    _Atomic(char *) memory;
    size_t used;
    atomic_flag taken;
} reserves[RESERVES_MOST];
static atomic_bool drawn_on; /* one of them was, ever */
static void (*give_up_hook)(void);
static _Thread_local struct Watch {
    struct Reserve *reserve;
    struct WatchedWork work; /* no stop: nothing is begun */
    uint64_t held_bytes, asked_bytes;
    enum WatchedEnd end;
    bool failed;
} watch;

static bool from_reserve(const void *piece)
{
    const uintptr_t at = (uintptr_t)piece;
    for (int i = 0; atomic_load(&drawn_on) && i < RESERVES_MOST; i++) {
        const uintptr_t from = (uintptr_t)atomic_load(&reserves[i].memory);
        if (from != 0 && at >= from && at < from + RESERVE_BYTES) {
            return true;
        }
    }
    return false;
}

static void *draw(size_t size)
{
    struct Reserve *reserve = watch.reserve;
    const size_t room = reserve == NULL ? 0 : RESERVE_BYTES - reserve->used;
    const size_t whole = PIECE + (size + PIECE - 1) / PIECE * PIECE;
    if (size > room || whole > room) {
        return NULL;
    }
    char *piece = atomic_load(&reserve->memory) + reserve->used + PIECE;
    memcpy(piece - PIECE, &size, sizeof size);
    reserve->used += whole;
    atomic_store(&drawn_on, true);
    return piece;
}

/* An allocation failed: a program that owns its process ends here, the library goes on for as long as the reserve
 * lasts. */
static void *lacking(size_t size)
{
    if (give_up_hook != NULL) {
        give_up_hook();
    }
    watch.failed = true;
    if (watch.work.stop != NULL) {
        watch.work.stop(watch.work.work);
    }
    return draw(size);
}

/* Whether what is begun may have so much more: it may, though it is stopped when that is beyond its bounds. */
static bool may_have(size_t size)
{
    if (watch.work.stop == NULL) {
        return true;
    }
    const uint64_t held_most = watch.work.held_most_bytes;
    watch.asked_bytes += size;
    const enum WatchedEnd end = size > held_most || watch.held_bytes > held_most - size ? WATCHED_HOLDS
                                : watch.asked_bytes > watch.work.asked_most_bytes       ? WATCHED_ASKS
                                                                                        : WATCHED_WITHIN;
    if (watch.end == WATCHED_WITHIN && end != WATCHED_WITHIN) {
        watch.end = end;
        watch.work.stop(watch.work.work);
    }
    return size <= held_most * 4 && watch.held_bytes <= held_most * 4 - size;
}

static void *taken(void *memory)
{
    watch.held_bytes += watch.work.stop == NULL || memory == NULL ? 0 : malloc_usable_size(memory);
    return memory;
}

/* What was had before the work began may be given back by it. */
static void given_back(size_t size)
{
    watch.held_bytes -= size < watch.held_bytes ? size : watch.held_bytes;
}

static void *watched_malloc(size_t size)
{
    void *memory = may_have(size) ? taken(malloc(size == 0 ? 1 : size)) : NULL;
    return memory == NULL ? lacking(size) : memory;
}

static void watched_free(void *memory)
{
    if (from_reserve(memory)) {
        return;
    }
    if (watch.work.stop != NULL && memory != NULL) {
        given_back(malloc_usable_size(memory));
    }
    free(memory);
}

static void *watched_realloc(void *memory, size_t size)
{
    const bool ours = from_reserve(memory);
    size_t before = 0;
    if (ours) {
        memcpy(&before, (char *)memory - PIECE, sizeof before);
    } else if (memory != NULL) {
        before = malloc_usable_size(memory);
    }
    void *larger = ours || !may_have(size) ? NULL : realloc(memory, size == 0 ? 1 : size);
    if (larger != NULL) {
        given_back(before);
        return taken(larger);
    }
    larger = ours ? watched_malloc(size) : lacking(size);
    if (larger != NULL && memory != NULL) {
        memcpy(larger, memory, before < size ? before : size);
        watched_free(memory);
    }
    return larger;
}

static char *watched_strdup(const char *text)
{
    const size_t size = strlen(text) + 1;
    char *copy = watched_malloc(size);
    return copy == NULL ? NULL : memcpy(copy, text, size);
}

void memory_watch_set_up(void)
{
    xmlFreeFunc release = NULL;
    xmlMallocFunc allocate = NULL;
    xmlReallocFunc resize = NULL;
    xmlStrdupFunc copy = NULL;
    xmlMemGet(&release, &allocate, &resize, &copy);
    if (release == free && allocate == malloc &&
        resize == realloc) { /* whoever else uses libxml2 in this process has not chosen otherwise */
        xmlMemSetup(watched_free, watched_malloc, watched_realloc, watched_strdup);
    }
}

void documents_guard_memory(void (*give_up)(void))
{
    give_up_hook = give_up;
}

bool documents_memory_begin(void)
{
    watch = (struct Watch){.reserve = NULL};
    for (int i = 0; give_up_hook == NULL && i < RESERVES_MOST; i++) {
        struct Reserve *reserve = &reserves[i];
        if (atomic_flag_test_and_set(&reserve->taken) || reserve->used > RESERVE_BYTES / 2) {
            continue; /* of another thread, or spent: that stays taken */
        }
        if (atomic_load(&reserve->memory) == NULL) {
            atomic_store(&reserve->memory, malloc(RESERVE_BYTES));
        }
        if (atomic_load(&reserve->memory) == NULL) {
            atomic_flag_clear(&reserve->taken);
            return false;
        }
        watch.reserve = reserve;
        return true;
    }
    return give_up_hook != NULL;
}

bool documents_memory_end(void)
{
    struct Reserve *reserve = watch.reserve;
    if (reserve != NULL) {
        if (reserve->used == 0) {
            free(atomic_exchange(&reserve->memory, NULL));
        }
        atomic_flag_clear(&reserve->taken);
    }
    const bool whole = !watch.failed;
    watch = (struct Watch){.reserve = NULL};
    return whole;
}

void memory_watch_begin(struct WatchedWork work)
{
    watch.work = work;
    watch.held_bytes = watch.asked_bytes = 0;
    watch.end = WATCHED_WITHIN;
    if (watch.failed) {
        work.stop(work.work);
    }
}

enum WatchedEnd memory_watch_end(void)
{
    watch.work.stop = NULL;
    return watch.end;
}

void memory_watch_trim(void)
{
#ifdef __GLIBC__
    malloc_trim(0);
#endif
}

void memory_watch_drop(void)
{
    for (int i = 0; i < RESERVES_MOST; i++) {
        free(atomic_exchange(&reserves[i].memory, NULL));
        reserves[i].used = 0;
        atomic_flag_clear(&reserves[i].taken);
    }
    atomic_store(&drawn_on, false);
}
