/* An order as RFC 4180: a row an article, a column a job, so that what comes can be shared out into bags.
 *
 * Every row has every column. A row with a line number is an article; a row without one is a remark in the note column:
 * before the articles what the order file says, which job was surveyed as a range and, in the column `buy`, that a plan
 * fails a check, after them which job each name is and what is not counted. `quantity` is what is bought, in whole
 * packs and lengths, as in a parts list; `buy` says that in words, so that two of a kit of two cannot be picked as two
 * kits. `asked` is what the jobs ask for, spare included: their columns add up to it, and with `over` to `quantity` and
 * `at-hand`. The last column of every row is the worst verdict of the plans. */
#include "documents/shown_private.h"

#include "csv_private.h"
#include "order_words_private.h"

static void add_head(struct TextBuilder *csv, const struct OrderList *list)
{
    text_add(csv, "line,buy,quantity,unit,description,standard,pack,packs,needed,");
    for (int j = 0; j < list->job_count; j++) {
        csv_out_text(csv, shown_said(csv->arena, say(csv->arena, SAY_FOR_JOB, say_name(list->jobs[j].name))));
        text_add_char(csv, ',');
    }
    text_add(csv, "at-hand,over,cut,note,code,price,price-unit,currency,total,asked\r\n");
}

static void add_remark(struct TextBuilder *csv, const struct OrderList *list, const char *text)
{
    if (*text == '\0') {
        return;
    }
    text_add(csv, ",,,,,,,,,");
    for (int j = 0; j < list->job_count; j++) {
        text_add_char(csv, ',');
    }
    text_add(csv, ",,,");
    csv_out_text(csv, text);
    text_add(csv, ",,,,,,\r\n");
}

/* Where nobody has to scroll for it: in the column of what to buy. */
static void add_warning(struct TextBuilder *csv, const struct OrderList *list, const char *text)
{
    if (*text == '\0') {
        return;
    }
    text_add_char(csv, ',');
    csv_out_text(csv, text);
    text_add(csv, ",,,,,,,,");
    for (int j = 0; j < list->job_count; j++) {
        text_add_char(csv, ',');
    }
    text_add(csv, ",,,,,,,,,\r\n");
}

/* A total stands in the columns of the lines' totals, in a row without a line number. */
static void add_totals(struct TextBuilder *csv, const struct OrderList *list)
{
    for (int i = 0; i < list->total_count; i++) {
        const struct PartsTotal *total = &list->totals[i];
        if (total->lines == 0) {
            continue;
        }
        text_print(csv, ",,,,%s,,,,,", csv_out_total_words(csv->arena, total, list->count));
        for (int j = 0; j < list->job_count; j++) {
            text_add_char(csv, ',');
        }
        text_print(csv, ",,,,,,,%s,%s,\r\n", total->currency, total->text);
    }
    add_remark(csv, list, shown_said(csv->arena, list->unpriced_text));
    add_remark(csv, list, order_not_priced(csv->arena, list));
}

static void add_line(struct TextBuilder *csv, const struct OrderList *list, int number)
{
    const struct OrderLine *line = &list->lines[number];
    text_print(csv, "%d,", number + 1);
    csv_out_text(csv, order_buy_words(csv->arena, line));
    text_add_char(csv, ',');
    csv_out_number(csv, line->buy);
    const char *const before[] = {line->unit, shown_said(csv->arena, line->description), line->standard};
    for (size_t i = 0; i < sizeof before / sizeof before[0]; i++) {
        text_add_char(csv, ',');
        csv_out_text(csv, before[i]);
    }
    text_add_char(csv, ',');
    if (line->pack > 0) {
        text_print(csv, "%d,%ld,", line->pack, line->packs);
    } else {
        text_add(csv, ",,");
    }
    csv_out_number(csv, line->needed);
    for (int j = 0; j < list->job_count; j++) {
        text_add_char(csv, ',');
        csv_out_number(csv, line->by_job[j]);
    }
    text_add_char(csv, ',');
    csv_out_number(csv, line->at_hand);
    text_add_char(csv, ',');
    csv_out_number(csv, line->over);
    const char *const after[] = {shown_said(csv->arena, line->cut), shown_said(csv->arena, line->note), line->code};
    for (size_t i = 0; i < sizeof after / sizeof after[0]; i++) {
        text_add_char(csv, ',');
        csv_out_text(csv, after[i]);
    }
    csv_out_price(csv, list->prices != NULL ? &list->prices[number] : NULL, list->totals);
    text_add_char(csv, ',');
    csv_out_number(csv, line->quantity);
    text_add(csv, "\r\n");
}

static void add_order(struct TextBuilder *csv, const struct OrderList *list, const struct Order *order)
{
    struct Arena *arena = csv->arena;
    const bool wanted = *order->delivery_date != '\0';
    add_remark(csv, list,
               shown_said(arena, say(arena, SAY_ORDER_OF, say_name(order->reference), say_name(order->date),
                                     say_name(order->buyer.name), say_name(order->seller.name),
                                     say_part(wanted ? say(arena, SAY_ORDER_WANTED_BY, say_name(order->delivery_date))
                                                     : NULL))));
    add_remark(csv, list, order->note);
}

struct Bytes document_order_csv(struct Arena *arena, const struct Order *order, const struct OrderList *list)
{
    struct TextBuilder csv = text_builder(arena);
    add_head(&csv, list);
    for (int i = 0; i < list->job_count; i++) {
        add_warning(&csv, list, order_warning(arena, list, i));
    }
    if (order != NULL) {
        add_order(&csv, list, order);
    }
    for (int j = 0; j < list->job_count; j++) {
        add_remark(&csv, list, order_range_words(arena, &list->jobs[j]));
    }
    for (int i = 0; i < list->count; i++) {
        add_line(&csv, list, i);
    }
    add_totals(&csv, list);
    for (int j = 0; j < list->job_count; j++) {
        add_remark(&csv, list, order_job_words(arena, &list->jobs[j]));
    }
    for (int i = 0; i < list->note_count; i++) {
        add_remark(&csv, list, shown_said(arena, list->notes[i]));
    }
    return csv_out_column(arena, &csv, "plan", verdict_word(list->verdict));
}
