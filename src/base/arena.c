/* Block arena: many small things that live exactly as long as one plan. */
#include "base.h"

#include <stdalign.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCK_BYTES = 64 * 1024 };

struct Block {
    struct Block *next;
    size_t used, room;
    alignas(max_align_t) unsigned char bytes[];
};

struct Arena {
    struct Block *blocks;
    bool failed;
    long allocations_left; /* -1: no limit */
};

static struct Block *block_new(struct Arena *arena, size_t room)
{
    if (arena->allocations_left == 0) {
        return NULL;
    }
    if (arena->allocations_left > 0) {
        arena->allocations_left--;
    }
    struct Block *block = malloc(sizeof *block + room);
    if (block != NULL) {
        block->used = 0;
        block->room = room;
    }
    return block;
}

struct Arena *arena_new(void)
{
    struct Arena *arena = calloc(1, sizeof *arena);
    if (arena != NULL) {
        arena->allocations_left = -1;
    }
    return arena;
}

void arena_free(struct Arena *arena)
{
    if (arena == NULL) {
        return;
    }
    for (struct Block *block = arena->blocks; block != NULL;) {
        struct Block *next = block->next;
        free(block);
        block = next;
    }
    free(arena);
}

bool arena_failed(const struct Arena *arena)
{
    return arena->failed;
}

void arena_lacks(struct Arena *arena)
{
    arena->failed = true;
}

void arena_fail_after(struct Arena *arena, long allocations)
{
    arena->allocations_left = allocations;
}

void *arena_alloc(struct Arena *arena, size_t size)
{
    const size_t align = alignof(max_align_t);
    if (arena == NULL) {
        return NULL;
    }
    if (size > SIZE_MAX - BLOCK_BYTES) {
        arena->failed = true;
        return NULL;
    }
    size = (size + align - 1) / align * align;
    struct Block *block = arena->blocks;
    if (block == NULL || block->room - block->used < size) {
        struct Block *fresh = block_new(arena, size > BLOCK_BYTES / 4 ? size : BLOCK_BYTES);
        if (fresh == NULL) {
            arena->failed = true;
            return NULL;
        }
        if (block != NULL && size > BLOCK_BYTES / 4) {
            /* A large thing gets a block of its own behind the current one, whose room is not lost. */
            fresh->next = block->next;
            block->next = fresh;
        } else {
            fresh->next = block;
            arena->blocks = fresh;
        }
        block = fresh;
    }
    void *memory = block->bytes + block->used;
    block->used += size;
    return memset(memory, 0, size);
}

void *arena_array(struct Arena *arena, size_t count, size_t size)
{
    if (size != 0 && count > SIZE_MAX / size) {
        arena->failed = true;
        return NULL;
    }
    return arena_alloc(arena, count * size);
}
