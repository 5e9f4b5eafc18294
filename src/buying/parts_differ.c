/* What has to be fetched, and what can be brought back, when one list takes the place of another that was bought. */
#include "buying.h"

#include <math.h>

/* A cable in one length cannot be pieced together: what is at hand serves where it is long enough, else a whole new
 * length is due. */
static bool in_one_length(const struct Part *part)
{
    return part->pack == 0 && part->length_m > 0 && text_same(part->unit, "m");
}

static double bought_of(const struct Part *part)
{
    return part->pack > 0 ? part->packs : part->quantity;
}

struct Taken {
    const struct PartsList *old, *now;
    bool *old_used, *now_met; /* lines that are dealt with */
};

/* The shortest length at hand that suffices; of other lines the one of that article. -1: none. */
static int at_hand(const struct Taken *taken, const struct Part *part)
{
    int best = -1;
    for (int i = 0; i < taken->old->count; i++) {
        const struct Part *old = &taken->old->parts[i];
        if (taken->old_used[i] || !text_same(old->code, part->code) || old->pack != part->pack ||
            in_one_length(old) != in_one_length(part)) {
            continue;
        }
        if (!in_one_length(part)) {
            return i;
        }
        if (old->quantity >= part->quantity && (best < 0 || old->quantity < taken->old->parts[best].quantity)) {
            best = i;
        }
    }
    return best;
}

/* The longest line first, or a long one at hand would be taken for a short one. */
static int next_line(const struct Taken *taken)
{
    int next = -1;
    for (int i = 0; i < taken->now->count; i++) {
        const struct Part *part = &taken->now->parts[i];
        if (!taken->now_met[i] && (next < 0 || (in_one_length(part) && in_one_length(&taken->now->parts[next]) &&
                                                part->quantity > taken->now->parts[next].quantity))) {
            next = i;
        }
    }
    return next;
}

static void add(struct PartsDifferences *out, struct PartsDifference *list, const struct Part *old,
                const struct Part *now)
{
    const double before = old != NULL ? bought_of(old) : 0;
    const double after = now != NULL ? bought_of(now) : 0;
    const bool serves = old != NULL && now != NULL && in_one_length(now); /* the rest of it is an offcut */
    const double more = serves ? 0 : after - before;
    if (fabs(more) > 1e-9) {
        list[out->count++] =
            (struct PartsDifference){.part = now != NULL ? now : old, .fetch = fmax(more, 0), .back = fmax(-more, 0)};
    }
}

struct PartsDifferences parts_differ(struct Arena *arena, const struct PartsList *old, const struct PartsList *now)
{
    struct PartsDifferences out = {0};
    struct PartsDifference *list = arena_array(arena, (size_t)(old->count + now->count) + 1, sizeof *list);
    const struct Taken taken = {old, now, arena_array(arena, (size_t)old->count + 1, sizeof(bool)),
                                arena_array(arena, (size_t)now->count + 1, sizeof(bool))};
    if (list == NULL || taken.old_used == NULL || taken.now_met == NULL) {
        return out;
    }
    out.list = list;
    for (int i = next_line(&taken); i >= 0; i = next_line(&taken)) {
        const int match = at_hand(&taken, &now->parts[i]);
        taken.now_met[i] = true;
        if (match >= 0) {
            taken.old_used[match] = true;
        }
        add(&out, list, match >= 0 ? &old->parts[match] : NULL, &now->parts[i]);
    }
    for (int i = 0; i < old->count; i++) {
        if (!taken.old_used[i]) {
            add(&out, list, &old->parts[i], NULL);
        }
    }
    return out;
}
