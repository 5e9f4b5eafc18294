#include "made_route.h"

#include <check.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

static uint32_t random_next(uint32_t *state)
{
    *state ^= *state << 13;
    *state ^= *state >> 17;
    *state ^= *state << 5;
    return *state;
}

int made_between(uint32_t *state, int low, int high)
{
    return low + (int)(random_next(state) % (uint32_t)(high - low + 1));
}

struct MadeStretch made_stretch(uint32_t *state)
{
    static const char *const ways[] = {"wall",   "fence",    "beam", "loft-void", "tray",
                                       "ladder", "catenary", "duct", "buried",    "through-wall"};
    static const char *const walls[] = {"brick", "cavity", "insulated-cavity", "stone"};
    struct MadeStretch made = {.way = ways[made_between(state, 0, 9)],
                               .length_mm = made_between(state, 200, 40000),
                               .air_degc = made_between(state, 20, 40),
                               .wall = walls[made_between(state, 0, 3)]};
    const bool in_ground = strcmp(made.way, "duct") == 0 || strcmp(made.way, "buried") == 0;
    if (strcmp(made.way, "through-wall") == 0) {
        made.length_mm = made_between(state, 100, 900);
    }
    if (in_ground) {
        made.depth_mm = made_between(state, 450, 1500);
    } else {
        made.sun = strcmp(made.way, "fence") == 0 && made_between(state, 0, 2) == 0;
    }
    /* At half a metre and over the factor no longer depends on the length, so the order of stretches cannot matter. */
    made.insulated = strcmp(made.way, "loft-void") == 0 && made.length_mm >= 1000 && made_between(state, 0, 1) == 0;
    made.beside = strcmp(made.way, "through-wall") == 0 ? 0 : made_between(state, 0, 3);
    return made;
}

struct MadeRoute made_route(uint32_t seed)
{
    uint32_t state = seed * 2654435761U + 1;
    struct MadeRoute made = {.count = made_between(&state, 1, MADE_STRETCHES_MOST)};
    for (int i = 0; i < made.count; i++) {
        made.stretches[i] = made_stretch(&state);
    }
    made.current_a = made_between(&state, 1, 60);
    made.phases = made_between(&state, 0, 2) == 0 ? 3 : 1;
    made.cores = made.phases == 3 ? 4 : 3;
    made.power_factor_percent = made_between(&state, 0, 1) == 0 ? 0 : made_between(&state, 60, 100);
    made.terminals = made_between(&state, 0, 1) == 0 ? 70 : 90;
    return made;
}

void made_write(const struct MadeRoute *made, char text[MADE_TEXT_MOST])
{
    int at = snprintf(text, MADE_TEXT_MOST,
                      "wend: 1\njob: {title: made}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm, phases: %d}\n"
                      "conditions: {terminals: %d degC}\nruns:\n  feeder:\n    load: ",
                      made->phases, made->terminals);
    if (made->loads != NULL) {
        at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), "%s", made->loads);
    } else {
        at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), "{current: %d A", made->current_a);
    }
    if (made->loads == NULL && made->power_factor_percent > 0) {
        at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), ", power-factor: %d.%02d",
                       made->power_factor_percent / 100, made->power_factor_percent % 100);
    }
    at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), "%s\n", made->loads == NULL ? "}" : "");
    if (made->cable != NULL) {
        at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), "    cable: {%s", made->cable);
    } else {
        at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), "    cable: {type: BS5467, cores: %d", made->cores);
    }
    if (made->size > 0) {
        at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), ", size: %d mm2", made->size);
    }
    at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at),
                   "}\n    start: {tail: 0 m}\n    finish: {tail: 0 m}\n%ssegments:\n",
                   made->more_runs != NULL ? made->more_runs : "");
    for (int i = 0; i < made->count; i++) {
        const struct MadeStretch *stretch = &made->stretches[i];
        at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at),
                       "  - {name: s%d, way: %s, length: %d mm, air: %d degC%s%s", i, stretch->way, stretch->length_mm,
                       stretch->air_degc, stretch->insulated ? ", insulation: surrounded" : "",
                       stretch->sun ? ", sun: full" : "");
        if (stretch->depth_mm > 0) {
            at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), ", depth: %d mm", stretch->depth_mm);
        }
        if (strcmp(stretch->way, "duct") == 0) {
            at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), ", duct: {size: 63 mm}");
        }
        if (strcmp(stretch->way, "through-wall") == 0) {
            at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), ", wall: %s", stretch->wall);
        }
        if (stretch->beside > 0) {
            at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), ", beside: {circuits: %d}", stretch->beside);
        }
        if (stretch->rise_mm != 0 || stretch->bends > 0) {
            at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), ", rise: %d mm, bends: %d", stretch->rise_mm,
                           stretch->bends);
        }
        if (stretch->fixed_to != NULL) {
            at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), ", fixed-to: %s", stretch->fixed_to);
        }
        at += snprintf(text + at, (size_t)(MADE_TEXT_MOST - at), "%s}\n", stretch->more != NULL ? stretch->more : "");
    }
    ck_assert_int_lt(at, MADE_TEXT_MOST);
}
