/* See order_rig.h. */
#include "order_rig.h"

#include "said.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Not an assertion: the samples' program, which is no test, uses the rig as well. */
static void must(bool good)
{
    if (!good) {
        fputs("no memory for a made-up order\n", stderr);
        exit(EXIT_FAILURE);
    }
}

unsigned order_draw(unsigned *state, unsigned below)
{
    *state = *state * 1664525U + 1013904223U;
    return (*state >> 8) % below;
}

static const struct Run feeder = {.name = "feeder"};
static const struct Segment gable = {.name = "gable"};
static const struct PartUse feeder_use = {.whom = PART_FOR_RUN, .run = &feeder};
static const struct PartUse gable_use = {
    .whom = PART_FOR_RUN, .run = &feeder, .place = PART_ON_SEGMENT, .segment = &gable};

const struct PartUse *order_use(struct Arena *arena, const char *run)
{
    struct Run *named = arena_alloc(arena, sizeof *named);
    struct PartUse *use = arena_alloc(arena, sizeof *use);
    must(named != NULL && use != NULL);
    *named = (struct Run){.name = run};
    *use = (struct PartUse){.whom = PART_FOR_RUN, .run = named};
    return use;
}

struct Part order_part(struct Arena *arena, enum Aisle aisle, const char *code, const char *description,
                       double quantity)
{
    return (struct Part){.aisle = aisle,
                         .code = code,
                         .description = as_is(arena, description),
                         .standard = "",
                         .quantity = quantity,
                         .unit = "each",
                         .needed = quantity,
                         .pack_word = "",
                         .use_count = 1,
                         .uses = &gable_use};
}

struct OrderJob order_job(struct Arena *arena, const char *name, const struct Part *parts, int count)
{
    const struct Say **notes =
        arena_array(arena, 2, sizeof *notes); /* NOLINT(bugprone-sizeof-expression): of pointers */
    struct PartsList *list = arena_alloc(arena, sizeof *list);
    must(list != NULL && notes != NULL);
    notes[0] = as_is(arena, "Boards are not counted in this list.");
    notes[1] = as_is(arena, "Screws are not counted.");
    *list = (struct PartsList){.count = count, .parts = parts, .note_count = 2, .notes = notes};
    return (struct OrderJob){.name = name,
                             .title = "Supply",
                             .site = "Far Meadow",
                             .reference = "R-1",
                             .verdict = VERDICT_PASS,
                             .pass = true,
                             .verdict_text = say(arena, SAY_EVERY_CHECK_PASSES),
                             .parts = list};
}

static void pack(struct Part *part, int size, const char *word)
{
    part->pack = size;
    part->pack_word = word;
    part->packs = (int)ceil(part->quantity / size - 1e-9);
}

/* One of a few articles, so that jobs meet in some and not in others. */
static struct Part random_part(struct Arena *arena, unsigned *state)
{
    const unsigned which = order_draw(state, 5);
    const double pieces = 1 + order_draw(state, 200);
    static const int sizes[] = {1, 2, 5, 10, 25, 50, 100};
    static const char *const words[] = {"pack", "bag", "tub", "roll", "length", "coil"};
    const unsigned kind = order_draw(state, 4);
    struct Part part;
    switch (kind) {
    case 0: /* cable, in one length */
        part = order_part(arena, AISLE_CABLE, arena_print(arena, "cable-%u-run%u", which, order_draw(state, 9)), "",
                          pieces);
        part.description = as_is(arena, arena_print(arena, "cable of %u cores", which));
        part.article = arena_print(arena, "cable-%u", which);
        part.unit = "m";
        part.length_m = pieces;
        part.uses = &feeder_use;
        return part;
    case 1: /* by the metre, some in coils */
        part = order_part(arena, AISLE_GROUNDWORK, arena_print(arena, "duct-%u", which), "duct", pieces / 2);
        part.unit = "m";
        if (which % 2 == 0) {
            pack(&part, sizes[which], words[5]);
        }
        break;
    case 2: /* counted, in packs */
        part = order_part(arena, AISLE_FIXINGS, arena_print(arena, "clip-%u", which), "clip", pieces);
        pack(&part, sizes[which + 2], words[which]);
        break;
    default: /* counted, singly */
        part = order_part(arena, AISLE_TERMINATIONS, arena_print(arena, "gland-%u", which), "gland", pieces);
        break;
    }
    part.needed = floor(part.quantity * 0.9);
    part.note = order_draw(state, 2) == 0 ? as_is(arena, "metal") : NULL;
    return part;
}

struct OrderJob order_random_job(struct Arena *arena, unsigned *state, const char *name)
{
    const int most = 1 + (int)order_draw(state, 15);
    struct Part *parts = arena_array(arena, (size_t)most, sizeof *parts);
    must(parts != NULL);
    int count = 0;
    for (int i = 0; i < most; i++) {
        const struct Part part = random_part(arena, state);
        bool there = false; /* a list holds an article once, as parts_count() makes it */
        for (int j = 0; j < count; j++) {
            there = there || text_same(parts[j].code, part.code);
        }
        if (!there) {
            parts[count++] = part;
        }
    }
    struct OrderJob job = order_job(arena, name, parts, count);
    job.pass = order_draw(state, 4) != 0;
    job.verdict = job.pass ? VERDICT_PASS : VERDICT_FAIL;
    return job;
}

static int by_code(const void *left, const void *right)
{
    return strcmp(((const struct Price *)left)->code, ((const struct Price *)right)->code);
}

const struct PriceList *order_random_prices(struct Arena *arena, unsigned *state, const struct OrderJob *jobs,
                                            int count, const char *currency, bool whole)
{
    struct PriceList *list = arena_alloc(arena, sizeof *list);
    struct PriceCurrency *currencies = arena_array(arena, 2, sizeof *currencies);
    struct Price *prices = arena_array(arena, 1000, sizeof *prices);
    must(list != NULL && currencies != NULL && prices != NULL);
    currencies[0] = (struct PriceCurrency){currency, 4, 2};
    currencies[1] = (struct PriceCurrency){"JPY", 1, 0};
    *list = (struct PriceList){.currency_count = 2, .currencies = currencies, .prices = prices};
    for (int j = 0; j < count; j++) {
        for (int i = 0; i < jobs[j].parts->count; i++) {
            const struct Part *part = &jobs[j].parts->parts[i];
            bool there = !whole && order_draw(state, 3) == 0;
            for (int k = 0; k < list->count; k++) {
                there = there || text_same(prices[k].code, parts_article(part));
            }
            if (!there) {
                const bool packed = part->pack > 0 && order_draw(state, 2) == 0;
                prices[list->count++] = (struct Price){.code = parts_article(part),
                                                       .unit = packed ? "pack" : part->unit,
                                                       .currency = whole ? 0 : (int)order_draw(state, 4) / 3,
                                                       .amount = order_draw(state, 1000000)};
            }
        }
    }
    qsort(prices, (size_t)list->count, sizeof *prices, by_code);
    return list;
}

struct OrderJob *order_random_jobs(struct Arena *arena, int count, unsigned seed)
{
    unsigned state = seed * 2654435761U + 17U;
    struct OrderJob *jobs = arena_array(arena, (size_t)count, sizeof *jobs);
    must(jobs != NULL);
    for (int i = 0; i < count; i++) {
        jobs[i] = order_random_job(arena, &state, arena_print(arena, "job%u", order_draw(&state, 6)));
    }
    return jobs;
}

struct Order order_details(const char *text)
{
    const struct OrderParty party = {text, text, text, text, "GB", text, text, text, text};
    return (struct Order){.reference = text,
                          .date = "2026-05-14",
                          .delivery_date = "2026-05-20",
                          .currency = "GBP",
                          .note = text,
                          .buyer = party,
                          .seller = party,
                          .has_delivery = true,
                          .delivery = party};
}

bool order_code_known(const char *unit_code)
{
    /* as in the revision 11e list; keyed here a second time */
    static const char *const codes[] = {"MTR", "C62", "XPK", "XBG", "XBX", "XRO", "KGM", "MTK", "MTQ", "LTR"};
    for (size_t i = 0; i < sizeof codes / sizeof codes[0]; i++) {
        if (text_same(codes[i], unit_code)) {
            return true;
        }
    }
    return false;
}

struct Arena *order_arena_short(size_t used_up, long blocks)
{
    struct Arena *arena = arena_new();
    must(arena != NULL);
    while (used_up > 0) { /* small pieces: a large one would get a block of its own */
        const size_t piece = used_up < 1024 ? used_up : 1024;
        must(arena_alloc(arena, piece) != NULL);
        used_up -= piece;
    }
    arena_fail_after(arena, blocks);
    return arena;
}
