/* What each stretch takes of work, itself and for every run on it; those that were given a sentence are listed. */
#include "parts_private.h"

#include <string.h>

/* Fills `way_at`, where the ways of each run begin in it, and their number; false when memory failed. */
static bool find_places(struct Counting *counting)
{
    const struct Plan *plan = counting->plan;
    const int segments = plan->segment_count;
    int *first = arena_array(counting->arena, (size_t)plan->run_count + 1, sizeof *first);
    int *next = arena_array(counting->arena, (size_t)segments + 1, sizeof *next); /* of each stretch */
    if (first == NULL || next == NULL) {
        return false;
    }
    counting->way_count = segments;
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].settled;
        first[r] = counting->way_count;
        counting->way_count += run->along_count;
        for (int i = 0; i < run->along_count; i++) {
            next[run->along[i] + 1]++;
        }
    }
    int *at = arena_array(counting->arena, (size_t)counting->way_count + 1, sizeof *at);
    for (int i = 0; at != NULL && i < segments; i++) {
        next[i + 1] += next[i] + 1;
        at[i] = next[i]++;
    }
    for (int r = 0; at != NULL && r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].settled;
        for (int i = 0; i < run->along_count; i++) {
            at[first[r] + i] = next[run->along[i]]++;
        }
    }
    counting->way_at = at;
    counting->first_way = first;
    return at != NULL;
}

bool parts_ways_begin(struct Counting *counting)
{
    const struct Plan *plan = counting->plan;
    if (!find_places(counting)) {
        return false;
    }
    counting->ways = arena_array(counting->arena, (size_t)counting->way_count + 1, sizeof *counting->ways);
    if (counting->ways == NULL) {
        return false;
    }
    for (int i = 0; i < plan->segment_count; i++) {
        *parts_way(counting, -1, i) = (struct PartsWay){.segment = i, .run = -1, .fixing_code = ""};
    }
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].settled->along_count; i++) {
            *parts_way(counting, r, i) =
                (struct PartsWay){.segment = plan->runs[r].settled->along[i], .run = r, .fixing_code = ""};
        }
    }
    return true;
}

struct PartsWay *parts_way(struct Counting *counting, int run, int step)
{
    return &counting->ways[counting->way_at[run < 0 ? step : counting->first_way[run] + step]];
}

static void add(struct Counting *counting, struct PartsWay *way, struct PartsText text)
{
    struct PartsText *texts = arena_array(counting->arena, (size_t)way->text_count + 1, sizeof *texts);
    if (texts != NULL) {
        if (way->text_count > 0) {
            memcpy(texts, way->texts, (size_t)way->text_count * sizeof *texts);
        }
        texts[way->text_count++] = text;
        way->texts = texts;
    }
}

void parts_way_say(struct Counting *counting, struct PartsWay *way, const struct Say *said)
{
    add(counting, way, (struct PartsText){.said = said});
}

void parts_way_tell(struct Counting *counting, struct PartsWay *way, const struct Say *said)
{
    add(counting, way, (struct PartsText){.said = said, .aside = true});
}

void parts_ways_end(struct Counting *counting, struct PartsList *list)
{
    for (int i = 0; i < counting->way_count; i++) {
        if (counting->ways[i].text_count > 0) {
            counting->ways[list->way_count++] = counting->ways[i];
        }
    }
    list->ways = counting->ways;
}
