/* Block arena: many small things that live exactly as long as one plan. */
#include "arena_private.h"

#include <stdalign.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCK_BYTES = 64 * 1024 };

struct Block {
    struct Block *next;
    size_t used, room;
    size_t zeroed; /* up to there what is free is zeroed */
    alignas(max_align_t) unsigned char bytes[];
};

struct Arena {
    struct Block *blocks;
    struct Arena *scratch; /* NULL: not asked for yet */
    struct Arena *of;      /* of a scratch arena, and of one apart, the one that it belongs to, else NULL */
    size_t block_bytes;
    bool failed;
    long allocations_left; /* -1: no limit; where there is an owner, its own counts */
};

static void fail(struct Arena *arena)
{
    arena->failed = true;
    if (arena->of != NULL) {
        arena->of->failed = true;
    }
}

/* One for a single large thing comes zeroed, which fresh pages are. */
static struct Block *block_new(struct Arena *arena, size_t room, bool large)
{
    long *left = arena->of != NULL ? &arena->of->allocations_left : &arena->allocations_left;
    if (*left == 0) {
        return NULL;
    }
    if (*left > 0) {
        (*left)--;
    }
    struct Block *block = large ? calloc(1, sizeof *block + room) : malloc(sizeof *block + room);
    if (block != NULL) {
        block->used = 0;
        block->room = room;
        block->zeroed = large ? room : 0;
    }
    return block;
}

struct Arena *arena_new_of(size_t block_bytes)
{
    struct Arena *arena = calloc(1, sizeof *arena);
    if (arena != NULL) {
        arena->block_bytes = block_bytes;
        arena->allocations_left = -1;
    }
    return arena;
}

struct Arena *arena_new(void)
{
    return arena_new_of(BLOCK_BYTES);
}

struct Arena *arena_apart(struct Arena *of)
{
    struct Arena *arena = of == NULL ? NULL : arena_new_of(of->block_bytes);
    if (arena != NULL) {
        arena->of = of->of != NULL ? of->of : of;
    } else if (of != NULL) {
        fail(of);
    }
    return arena;
}

static void free_blocks(struct Block *block)
{
    while (block != NULL) {
        struct Block *next = block->next;
        free(block);
        block = next;
    }
}

void arena_free(struct Arena *arena)
{
    if (arena == NULL) {
        return;
    }
    if (arena->scratch != NULL) {
        free_blocks(arena->scratch->blocks);
    }
    free_blocks(arena->blocks);
    free(arena);
}

/* Keeps one block for the next time; what was in it is overwritten, so that a test sees who still reads it. */
static void clear(struct Arena *scratch)
{
    struct Block *block = scratch->blocks;
    if (block != NULL) {
        free_blocks(block->next);
        block->next = NULL;
#ifndef NDEBUG
        memset(block->bytes, 0xA5, block->used);
#endif
        block->used = 0;
        block->zeroed = 0;
    }
}

struct Arena *arena_scratch(struct Arena *arena)
{
    if (arena->scratch == NULL) {
        arena->scratch = arena_alloc(arena, sizeof *arena);
        if (arena->scratch != NULL) {
            arena->scratch->of = arena;
            arena->scratch->block_bytes = arena->block_bytes;
        }
        return arena->scratch;
    }
    clear(arena->scratch);
    return arena->scratch;
}

bool arena_failed(const struct Arena *arena)
{
    return arena->failed;
}

void arena_lacks(struct Arena *arena)
{
    fail(arena);
}

void arena_fail_after(struct Arena *arena, long allocations)
{
    arena->allocations_left = allocations;
}

/* In steps: most things are small. */
enum { ZEROED_AT_ONCE = 1024 };

static void *take(struct Block *block, size_t size)
{
    void *memory = block->bytes + block->used;
    block->used += size;
    if (block->zeroed < block->used) {
        const size_t wanted = block->used + ZEROED_AT_ONCE;
        const size_t end = wanted < block->room ? wanted : block->room;
        memset(block->bytes + block->zeroed, 0, end - block->zeroed);
        block->zeroed = end;
    }
    return memory;
}

void *arena_alloc(struct Arena *arena, size_t size)
{
    const size_t align = alignof(max_align_t);
    if (arena == NULL) {
        return NULL;
    }
    if (size > SIZE_MAX - BLOCK_BYTES) {
        fail(arena);
        return NULL;
    }
    size = (size + align - 1) / align * align;
    struct Block *block = arena->blocks;
    if (block == NULL || block->room - block->used < size) {
        const bool large = size > arena->block_bytes / 4;
        struct Block *fresh = block_new(arena, large ? size : arena->block_bytes, large);
        if (fresh == NULL) {
            fail(arena);
            return NULL;
        }
        if (block != NULL && large) {
            /* A large thing gets a block of its own behind the current one, whose room is not lost. */
            fresh->next = block->next;
            block->next = fresh;
        } else {
            fresh->next = block;
            arena->blocks = fresh;
        }
        block = fresh;
    }
    return take(block, size);
}

static size_t aligned(size_t size)
{
    const size_t align = alignof(max_align_t);
    return (size + align - 1) / align * align;
}

bool arena_resize(struct Arena *arena, const void *last, size_t size, size_t wanted)
{
    struct Block *block = arena->blocks;
    const size_t old = aligned(size);
    if (block == NULL || wanted > SIZE_MAX - BLOCK_BYTES || block->used < old ||
        block->bytes + (block->used - old) != last || block->room - (block->used - old) < aligned(wanted)) {
        return false;
    }
    block->used = block->used - old + aligned(wanted);
    block->zeroed = block->used; /* what is given back was written to */
    return true;
}

void *arena_array(struct Arena *arena, size_t count, size_t size)
{
    if (size != 0 && count > SIZE_MAX / size) {
        fail(arena);
        return NULL;
    }
    return arena_alloc(arena, count * size);
}
