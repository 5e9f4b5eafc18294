/* The parts list: every counter adds to it, then spares and packs, then the order of picking. */
#include "parts_private.h"

#include <math.h>
#include <string.h>

static bool grow(struct Counting *counting)
{
    const int room = counting->room == 0 ? 32 : counting->room * 2;
    struct Tally *tallies = arena_array(counting->arena, (size_t)room, sizeof *tallies);
    if (tallies == NULL) {
        return false;
    }
    if (counting->count > 0) {
        memcpy(tallies, counting->tallies, (size_t)counting->count * sizeof *tallies);
    }
    counting->tallies = tallies;
    counting->room = room;
    return true;
}

/* The line of this article, a new one when there is none. NULL when memory failed. */
static struct Tally *tally_of(struct Counting *counting, const struct Article *article)
{
    for (int i = 0; i < counting->count; i++) {
        if (text_same(counting->tallies[i].article.code, article->code)) {
            return &counting->tallies[i];
        }
    }
    if (counting->count == counting->room && !grow(counting)) {
        return NULL;
    }
    struct Tally *tally = &counting->tallies[counting->count++];
    *tally = (struct Tally){.article = *article};
    return tally;
}

void parts_add(struct Counting *counting, const struct Article *article, double pieces, struct PartUse use)
{
    if (!(pieces > 0)) {
        return;
    }
    struct Tally *tally = tally_of(counting, article);
    if (tally != NULL) {
        tally->needed += pieces;
        parts_use_add(counting->arena, &tally->uses, use);
    }
}

/* Pieces to get: what is needed and the spare on it. */
static double with_spare(const struct Counting *counting, const struct Tally *tally)
{
    const struct OrderAllowances *more = order_allowances();
    double percent = 0;
    double pieces = 0;
    switch (tally->article.spare) {
    case SPARE_NONE: return tally->needed;
    case SPARE_FIXINGS: percent = counting->plan->survey->parts.spare_fixings_percent.value; break;
    case SPARE_DUCT: percent = more->duct_percent; break;
    case SPARE_TAPE: percent = more->tape_percent; break;
    case SPARE_SAND: percent = more->sand_percent; break;
    case SPARE_COUPLERS: pieces = more->couplers; break;
    case SPARE_WHOLE: break;
    case SPARE_GLANDS: pieces = tally->needed > more->gland_top ? more->glands : 0; break;
    }
    return ceil(tally->needed * (1 + percent / 100) + pieces - 1e-9);
}

static struct Part finish(struct Counting *counting, const struct Tally *tally)
{
    const struct Article *article = &tally->article;
    const struct PackSize pack = pack_size(article->sold);
    struct Part part = {.aisle = article->aisle,
                        .code = article->code,
                        .description = article->description,
                        .fitted = article->fitted,
                        .standard = article->standard != NULL ? article->standard : "",
                        .quantity = with_spare(counting, tally),
                        .unit = article->unit != NULL ? article->unit : "each",
                        .needed = round(tally->needed * 1000) / 1000,
                        .pack = pack.pieces,
                        .pack_word = pack.word,
                        .length_m = article->length_m,
                        .note = article->note,
                        .article = article->article,
                        .gland = article->gland,
                        .sleeves_cores = article->sleeves_cores};
    part.use_count = parts_uses(counting, &tally->uses, &part.uses);
    if (part.pack > 0) {
        const double more = article->spare == SPARE_DUCT ? 1 + order_allowances()->duct_percent / 100 : 1;
        const int cut_from = parts_lengths(counting->arena, tally, part.pack, more);
        part.packs = (int)parts_pieces(part.quantity, part.pack);
        if (cut_from > part.packs) {
            /* Whole ones, so that an order of many jobs does not share out what nobody can use. */
            part.packs = cut_from;
            part.quantity = (double)cut_from * part.pack;
            const struct Say *cut =
                say(counting->arena, SAY_CUT_FOR_STRETCHES, say_count(tally->stretch_count), say_name(part.pack_word));
            part.note = say_list(counting->arena, SAY_SEMICOLON, part.note, say_part(cut));
        }
    }
    return part;
}

/* Aisle by aisle; within one in the order in which the articles were met. */
static void list_parts(struct Counting *counting, struct PartsList *list)
{
    struct Part *parts = arena_array(counting->arena, (size_t)counting->count + 1, sizeof *parts);
    if (parts == NULL) {
        return;
    }
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        for (int i = 0; i < counting->count; i++) {
            if ((int)counting->tallies[i].article.aisle == aisle) {
                parts[list->count++] = finish(counting, &counting->tallies[i]);
            }
        }
    }
    list->parts = parts;
}

static void count_all(struct Counting *counting)
{
    const struct Plan *plan = counting->plan;
    for (int r = 0; r < plan->run_count; r++) {
        parts_count_cable(counting, &plan->runs[r]);
        parts_count_glands(counting, &plan->runs[r]);
        parts_count_fixings(counting, r);
    }
    parts_count_containment(counting);
    parts_count_catenary(counting);
    parts_count_trenches(counting);
    parts_count_ducts(counting);
    parts_close_trenches(counting);
    for (int r = 0; r < plan->run_count; r++) {
        parts_count_holes(counting, r);
        parts_count_enclosures(counting, &plan->runs[r]);
    }
    parts_count_supply(counting);
    parts_count_earthing(counting);
}

const struct PartsList *parts_count(struct Arena *arena, const struct Plan *plan)
{
    struct Counting counting = {.arena = arena, .plan = plan};
    struct PartsList *list = arena_alloc(arena, sizeof *list);
    if (list == NULL || !parts_ways_begin(&counting)) {
        return NULL;
    }
    count_all(&counting);
    list_parts(&counting, list);
    parts_ways_end(&counting, list);
    parts_notes(&counting, list);
    return parts_ask_cuts(&counting, list) ? list : NULL;
}
