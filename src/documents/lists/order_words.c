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
    switch (job->verdict) {
    case VERDICT_FAIL:
        return arena_print(arena, "DO NOT ORDER YET: the plan of %s fails a check: %s", job->name, job->verdict_text);
    case VERDICT_OPEN:
        return arena_print(arena, "SETTLE FIRST: the plan of %s is open: %s", job->name, job->verdict_text);
    case VERDICT_PASS: break;
    }
    return "";
}

const char *order_job_words(struct Arena *arena, const struct OrderJob *job)
{
    struct TextBuilder words = text_builder(arena);
    text_print(&words, "%s: %s", job->name, job->title);
    if (*job->site != '\0') {
        text_print(&words, "; %s", job->site);
    }
    if (*job->reference != '\0') {
        text_print(&words, "; job %s", job->reference);
    }
    return text_done(&words);
}

const char *order_buy_words(struct Arena *arena, const struct OrderLine *line)
{
    if (line->buy_text != NULL) {
        return shown_said(arena, line->buy_text);
    }
    if (line->packs == 0) {
        const char *number = number_significant(arena, line->buy, 9);
        return text_same(line->unit, "each") ? number : arena_print(arena, "%s %s", number, line->unit);
    }
    const char *word = *line->pack_word != '\0' ? line->pack_word : "pack";
    return arena_print(arena, "%ld %s%s of %d%s%s", line->packs, word, line->packs == 1 ? "" : "s", line->pack,
                       text_same(line->unit, "each") ? "" : " ", text_same(line->unit, "each") ? "" : line->unit);
}
