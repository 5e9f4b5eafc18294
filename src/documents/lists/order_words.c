/* Sentences that every form of an order holds. */
#include "order_words_private.h"

#include "documents/shown_private.h"

/* Those whose plan fails first, then those that are open. */
static const struct OrderJob *by_verdict(const struct OrderList *list, int index)
{
    for (enum Verdict verdict = VERDICT_FAIL; verdict <= VERDICT_PASS; verdict++) {
        for (int j = 0; j < list->job_count; j++) {
            if (list->jobs[j].verdict == verdict && index-- == 0) {
                return &list->jobs[j];
            }
        }
    }
    return &list->jobs[0];
}

const char *order_warning(struct Arena *arena, const struct OrderList *list, int index)
{
    const struct OrderJob *job = by_verdict(list, index);
    if (job->verdict == VERDICT_PASS) {
        return "";
    }
    return shown_said(arena, say(arena, job->verdict == VERDICT_FAIL ? SAY_DO_NOT_ORDER_YET : SAY_SETTLE_FIRST,
                                 say_name(job->name), say_part(job->verdict_text)));
}

const char *order_job_words(struct Arena *arena, const struct OrderJob *job)
{
    const bool reference = *job->reference != '\0';
    return shown_said(arena,
                      say(arena, SAY_ORDER_JOB, say_name(job->name), say_name(job->title), say_name(job->site),
                          say_part(reference ? say(arena, SAY_ORDER_JOB_REFERENCE, say_name(job->reference)) : NULL)));
}

const char *order_range_words(struct Arena *arena, const struct OrderJob *job)
{
    const struct Say *range = job->parts->range_note;
    return range == NULL ? "" : shown_said(arena, say(arena, SAY_COLON, say_name(job->name), say_part(range)));
}

const char *order_not_priced(struct Arena *arena, const struct OrderList *list)
{
    const struct Say *note = list->prices_note;
    return note == NULL ? "" : shown_said(arena, say(arena, SAY_NOT_PRICED, say_part(note)));
}

const char *bought_words(struct Arena *arena, const struct Bought *bought)
{
    if (bought->packs == 0) {
        return shown_said(arena, parts_amount_said(arena, bought->amount, 9, bought->unit));
    }
    const struct Say *packs =
        parts_packs_said(arena, (int)bought->packs, *bought->pack_word != '\0' ? bought->pack_word : "pack");
    return shown_said(arena, say(arena, SAY_SO_MANY_PACKS_OF, say_part(packs),
                                 say_part(parts_amount_said(arena, bought->pack, 9, bought->unit))));
}

const char *order_buy_words(struct Arena *arena, const struct OrderLine *line)
{
    const struct Bought bought = {line->packs, line->pack, line->pack_word, line->buy, line->unit};
    return line->buy_text != NULL ? shown_said(arena, line->buy_text) : bought_words(arena, &bought);
}
