/* See read_route.h. */
#include "read_route.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct ReadRoute read_route(struct Bytes source)
{
    struct ReadRoute route = {.arena = arena_new(), .source = source};
    ck_assert_ptr_nonnull(route.arena);
    route.diag = diag_new(route.arena);
    ck_assert_ptr_nonnull(route.diag);
    route.survey = read_survey(route.arena, route.diag, source);
    return route;
}

struct ReadRoute read_route_text(const char *text)
{
    return read_route((struct Bytes){text, strlen(text)});
}

void read_route_free(struct ReadRoute *route)
{
    arena_free(route->arena);
    *route = (struct ReadRoute){.arena = NULL};
}

const char *read_route_reports(struct ReadRoute *route)
{
    return diag_print(route->diag, route->arena, "route", route->source);
}

int read_route_told(struct ReadRoute *route, const char *name)
{
    int told = 0;
    for (size_t i = 0; i < diag_count(route->diag); i++) {
        told += text_same(diag_name(diag_at(route->diag, i)->code), name);
    }
    return told;
}

struct Bytes read_route_file(const char *path)
{
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "cannot open %s", path);
    size_t room = 1 << 16;
    size_t length = 0;
    char *data = malloc(room);
    ck_assert_ptr_nonnull(data);
    for (;;) {
        length += fread(data + length, 1, room - length, file);
        if (length < room) {
            break;
        }
        room *= 2;
        char *larger = realloc(data, room);
        ck_assert_ptr_nonnull(larger);
        data = larger;
    }
    ck_assert_int_eq(ferror(file), 0);
    fclose(file);
    return (struct Bytes){data, length};
}

char *read_route_own(struct Bytes bytes)
{
    const union {
        const char *read;
        char *own;
    } data = {bytes.data};
    return data.own;
}

char *read_route_with(enum ReadSlot slot, const char *text)
{
    const char *slots[SLOT_COUNT] = {"", "", "", "current: 10 A", "rating: 16 A", "", "", "", "way: wall", ""};
    if (slot != SLOT_COUNT) {
        slots[slot] = text;
    }
    size_t room = 1024 + strlen(text);
    char *route = malloc(room);
    ck_assert_ptr_nonnull(route);
    int length =
        snprintf(route, room,
                 "wend: 1\n%s\njob:\n  title: t\n  %s\nsupply:\n  system: TN-S\n  loop-impedance: 0.35 ohm\n  %s\n"
                 "runs:\n  feeder:\n    load: {%s}\n    device: {%s}\n    cable: {type: BS5467, cores: 5%s}\n"
                 "    %s\n  %s\nsegments:\n  - {name: a, length: 4 m, %s}\n  %s\n",
                 slots[SLOT_TOP], slots[SLOT_JOB], slots[SLOT_SUPPLY], slots[SLOT_LOAD], slots[SLOT_DEVICE],
                 slots[SLOT_CABLE], slots[SLOT_RUN], slots[SLOT_RUNS], slots[SLOT_SEGMENT], slots[SLOT_SEGMENTS]);
    ck_assert(length > 0 && (size_t)length < room);
    return route;
}
