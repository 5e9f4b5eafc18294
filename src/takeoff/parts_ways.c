/* What each stretch takes of work: a draft for every stretch and for every run on it, of which those that were given a
 * sentence are listed. */
#include "parts_private.h"

bool parts_ways_begin(struct Counting *counting)
{
    const struct Plan *plan = counting->plan;
    int *first = arena_array(counting->arena, (size_t)plan->run_count + 1, sizeof *first);
    if (first == NULL) {
        return false;
    }
    counting->way_count = plan->segment_count;
    for (int r = 0; r < plan->run_count; r++) {
        first[r] = counting->way_count;
        counting->way_count += plan->runs[r].settled->along_count;
    }
    counting->first_way = first;
    counting->ways = arena_array(counting->arena, (size_t)counting->way_count + 1, sizeof *counting->ways);
    if (counting->ways == NULL) {
        return false;
    }
    const struct PartsWay none = {.fixing_code = ""};
    for (int i = 0; i < plan->segment_count; i++) {
        counting->ways[i].way = none;
        counting->ways[i].way.segment = i;
        counting->ways[i].way.run = -1;
    }
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].settled->along_count; i++) {
            struct PartsWay *way = &counting->ways[first[r] + i].way;
            *way = none;
            way->segment = plan->runs[r].settled->along[i];
            way->run = r;
        }
    }
    return true;
}

struct WayDraft *parts_way(struct Counting *counting, int run, int step)
{
    return &counting->ways[run < 0 ? step : counting->first_way[run] + step];
}

static void add(struct WayDraft *draft, struct PartsText text)
{
    if (draft->way.text_count < WAY_TEXTS_MOST) {
        draft->texts[draft->way.text_count++] = text;
    }
}

void parts_way_say(struct WayDraft *draft, const struct Say *said)
{
    add(draft, (struct PartsText){.said = said});
}

void parts_way_tell(struct WayDraft *draft, const struct Say *said)
{
    add(draft, (struct PartsText){.said = said, .aside = true});
}

void parts_ways_end(struct Counting *counting, struct PartsList *list)
{
    const int segments = counting->plan->segment_count;
    struct PartsWay *ways = arena_array(counting->arena, (size_t)counting->way_count + 1, sizeof *ways);
    int *places = arena_array(counting->arena, (size_t)segments + 1, sizeof *places);
    if (ways == NULL || places == NULL) {
        return;
    }
    for (int i = 0; i < counting->way_count; i++) {
        places[counting->ways[i].way.segment + 1] += counting->ways[i].way.text_count > 0;
    }
    for (int i = 0; i < segments; i++) {
        places[i + 1] += places[i];
    }
    for (int i = 0; i < counting->way_count; i++) {
        struct WayDraft *draft = &counting->ways[i];
        if (draft->way.text_count > 0) {
            draft->way.texts = draft->texts;
            ways[places[draft->way.segment]++] = draft->way;
            list->way_count++;
        }
    }
    list->ways = ways;
}
