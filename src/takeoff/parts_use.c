/* What an article is for, said short: run by run the first stretches it goes to, the rest by number. */
#include "parts_private.h"

#include <limits.h>
#include <string.h>

static struct PartUse *use_of(struct Arena *arena, struct PartUses *uses, const char *run)
{
    for (struct PartUse *use = uses->first; use != NULL; use = use->next) {
        if (text_same(use->run, run)) {
            return use;
        }
    }
    struct PartUse *use = arena_alloc(arena, sizeof *use);
    if (use == NULL) {
        return NULL;
    }
    *use = (struct PartUse){.run = run, .last_place = ""};
    if (uses->last != NULL) {
        uses->last->next = use;
    } else {
        uses->first = use;
    }
    uses->last = use;
    return use;
}

void parts_use_add(struct Arena *arena, struct PartUses *uses, const char *run, const char *place)
{
    struct PartUse *use = use_of(arena, uses, run);
    if (use == NULL || place[0] == '\0' || text_same(use->last_place, place)) {
        return;
    }
    for (int i = 0; i < use->count && i < USE_PLACES_SHOWN; i++) {
        if (text_same(use->places[i], place)) {
            return;
        }
    }
    if (use->count < USE_PLACES_SHOWN) {
        use->places[use->count] = place;
    }
    use->last_place = place;
    use->count++;
}

static void add_run(struct TextBuilder *text, const struct PartUse *use)
{
    text_add(text, use->run);
    for (int i = 0; i < use->count && i < USE_PLACES_SHOWN; i++) {
        text_print(text, "%s%s", i > 0 ? ", " : use->run[0] != '\0' ? ": " : "", use->places[i]);
    }
    if (use->count > USE_PLACES_SHOWN) {
        text_print(text, " and %d more", use->count - USE_PLACES_SHOWN);
    }
}

static const char *use_text(struct Arena *arena, const struct PartUse *first, int most)
{
    struct TextBuilder text = text_builder(arena);
    int runs = 0;
    for (const struct PartUse *use = first; use != NULL; use = use->next, runs++) {
        if (runs < most) {
            text_add(&text, runs > 0 ? "; " : "");
            add_run(&text, use);
        }
    }
    if (runs > most) {
        text_print(&text, " and %d more runs", runs - most);
    }
    return text_done(&text);
}

const char *parts_use_text(struct Arena *arena, const struct PartUse *first)
{
    return use_text(arena, first, USE_RUNS_SHOWN);
}

const char *parts_every_use(struct Arena *arena, const struct PartUse *first)
{
    int runs = 0;
    for (const struct PartUse *use = first; use != NULL; use = use->next) {
        runs++;
    }
    return runs > USE_RUNS_SHOWN ? use_text(arena, first, INT_MAX) : NULL;
}

/* Where `word` stands whole in a list divided by ", ", up to `end`. */
static bool listed(const char *at, const char *end, const char *word)
{
    const size_t length = strlen(word);
    while (at + length <= end) {
        const char *after = at + length;
        if (strncmp(at, word, length) == 0 &&
            (after == end || *after == ',' || strncmp(after, " and ", sizeof " and " - 1) == 0)) {
            return true;
        }
        while (at < end && *at != ',') {
            at++;
        }
        at += at < end ? 2 : 1;
    }
    return false;
}

bool parts_used_at(const struct Part *part, const char *run, const char *place)
{
    const size_t length = strlen(run);
    const char *uses = part->every_use != NULL ? part->every_use : part->use;
    for (const char *at = uses == NULL ? "" : uses; *at != '\0';) {
        const char *end = strstr(at, "; ");
        end = end == NULL ? at + strlen(at) : end;
        if (strncmp(at, run, length) == 0 && strncmp(at + length, ": ", 2) == 0 &&
            listed(at + length + 2, end, place)) {
            return true;
        }
        at = *end == '\0' ? end : end + 2;
    }
    return false;
}
