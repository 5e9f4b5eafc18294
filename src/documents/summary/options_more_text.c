/* Behind the sizes: what other ducts would do, and what the order comes to with each size. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"

enum { TEXT_AT = 2 };

static void add_duct(struct SummaryPage *page, const struct Plan *plan, const struct DuctTrial *trial)
{
    struct Arena *arena = page->arena;
    const struct Segment *segment = plan->segments[trial->segment].surveyed;
    const enum Saying id = trial->fails_now ? SAY_OPTION_DUCT_NEEDS : SAY_OPTION_DUCT_LEAST;
    summary_line(page, TEXT_AT, TEXT_AT + 2, SAY_NOTHING, TINT_NONE,
                 say(arena, id, say_name(plan->runs[trial->run].settled->name),
                     say_digits(trial->size_mm2, 4, UNIT_MM2), say_name(segment->name),
                     say_digits(trial->duct_mm, 4, UNIT_MM), say_digits(segment->duct_size_mm.value, 4, UNIT_MM)));
}

/* Whether the run's own cable has a price: a sum without it would say nothing of the size. */
static bool cable_priced(const struct Plan *plan, const struct SizeCost *cost)
{
    const char *name = plan->runs[cost->run].settled->name;
    for (int i = 0; cost->parts != NULL && cost->parts->prices != NULL && i < cost->parts->count; i++) {
        const struct Part *part = &cost->parts->parts[i];
        for (int k = 0; part->aisle == AISLE_CABLE && cost->parts->prices[i].known && k < part->use_count; k++) {
            const struct PartUse *use = &part->uses[k];
            if ((use->run != NULL && text_same(use->run->name, name)) ||
                (use->piece != NULL && text_same(use->piece->name, name))) {
                return true;
            }
        }
    }
    return false;
}

static void add_cost(struct SummaryPage *page, const struct Plan *plan, const struct SizeCost *cost)
{
    struct Arena *arena = page->arena;
    const struct SayArg run = say_name(plan->runs[cost->run].settled->name);
    const struct SayArg size = say_digits(cost->size_mm2, 4, UNIT_MM2);
    const struct Say *sum = NULL;
    for (int i = 0; cost->parts != NULL && i < cost->parts->total_count; i++) {
        sum = say_list(arena, SAY_SEMICOLON, sum, say_part(summary_total(arena, cost->parts, &cost->parts->totals[i])));
    }
    summary_line(page, TEXT_AT, TEXT_AT + 2, SAY_NOTHING, TINT_NONE,
                 say(arena, SAY_OPTION_COST_ONE, run, size, say_part(sum)));
}

struct Bytes document_options_more_text(struct Arena *arena, const struct Plan *plan, const struct OptionsMore *more)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    for (int i = 0; i < more->duct_count; i++) {
        if (i == 0) {
            summary_gap(&page);
            summary_head(&page, SAY_OPTION_DUCT_HEAD);
        }
        add_duct(&page, plan, &more->ducts[i]);
    }
    int unpriced = 0;
    for (int i = 0; i < more->cost_count; i++) {
        if (i == 0) {
            summary_gap(&page);
            summary_head(&page, SAY_OPTION_COST_HEAD);
        }
        if (cable_priced(plan, &more->costs[i])) {
            add_cost(&page, plan, &more->costs[i]);
        } else {
            unpriced++;
        }
    }
    if (unpriced > 0) {
        summary_line(&page, TEXT_AT, TEXT_AT + 2, SAY_NOTHING, TINT_NONE,
                     say(arena, SAY_OPTION_COST_NOTHING, say_count(unpriced)));
    }
    return summary_finish(&page);
}
