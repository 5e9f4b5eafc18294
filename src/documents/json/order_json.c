/* An order of many jobs' parts as JSON: the facts of the CSV, under the names of its columns. */
#include "documents/documents.h"
#include "documents/lists/order_words_private.h"
#include "documents/shown_private.h"
#include "documents/xml/plan_write_private.h"

#include "json_out.h"

static void add_party(struct JsonOut *out, struct JsonNode *parent, const char *name, const struct OrderParty *party)
{
    struct JsonNode *node = json_object(out, parent, name);
    json_text_if(out, node, "name", party->name);
    json_text_if(out, node, "street", party->street);
    json_text_if(out, node, "town", party->town);
    json_text_if(out, node, "postcode", party->postcode);
    json_text_if(out, node, "country", party->country);
    json_text_if(out, node, "contact", party->contact);
    json_text_if(out, node, "phone", party->phone);
    json_text_if(out, node, "email", party->email);
    json_text_if(out, node, "account", party->account);
}

static void add_order(struct JsonOut *out, struct JsonNode *root, const struct Order *order)
{
    struct JsonNode *node = json_object(out, root, "order");
    json_text_if(out, node, "reference", order->reference);
    json_text_if(out, node, "date", order->date);
    json_text_if(out, node, "delivery-date", order->delivery_date);
    json_text_if(out, node, "currency", order->currency);
    json_text_if(out, node, "note", order->note);
    add_party(out, node, "buyer", &order->buyer);
    add_party(out, node, "seller", &order->seller);
    if (order->has_delivery) {
        add_party(out, node, "delivery", &order->delivery);
    }
}

static void add_jobs(struct JsonOut *out, struct Arena *arena, struct JsonNode *root, const struct OrderList *list)
{
    struct JsonNode *jobs = json_list(out, root, "jobs");
    for (int i = 0; i < list->job_count; i++) {
        const struct OrderJob *job = &list->jobs[i];
        struct JsonNode *node = json_object(out, jobs, "");
        json_text(out, node, "name", job->name);
        json_text_if(out, node, "title", job->title);
        json_text_if(out, node, "site", job->site);
        json_text_if(out, node, "reference", job->reference);
        json_text(out, node, "verdict", plan_xml_verdict(job->verdict));
        json_text_if(out, node, "verdict-text", shown_said(arena, job->verdict_text));
        json_text_if(out, node, "range", shown_said(arena, job->parts->range_note));
    }
}

static void add_price(struct JsonOut *out, struct JsonNode *node, const struct OrderList *list, int index)
{
    const struct PartPrice *price = list->prices == NULL ? NULL : &list->prices[index];
    if (price != NULL && price->known) {
        json_text(out, node, "price", price->each_text);
        json_text(out, node, "price-unit", price->unit);
        json_text(out, node, "currency", list->totals[price->currency].currency);
        json_text(out, node, "total", price->total_text);
    }
}

static void add_line(struct JsonOut *out, struct Arena *arena, struct JsonNode *lines, const struct OrderList *list,
                     int index)
{
    const struct OrderLine *line = &list->lines[index];
    struct JsonNode *node = json_object(out, lines, "");
    json_number(out, node, "line", index + 1);
    json_text(out, node, "code", line->code);
    json_text(out, node, "description", shown_said(arena, line->description));
    json_text_if(out, node, "standard", line->standard);
    json_text(out, node, "buy", order_buy_words(arena, line));
    json_number(out, node, "quantity", line->buy);
    json_text(out, node, "unit", line->unit);
    if (line->pack > 0) {
        json_number(out, node, "pack", line->pack);
        json_number(out, node, "packs", (double)line->packs);
    }
    json_number(out, node, "needed", line->needed);
    json_number(out, node, "asked", line->quantity);
    struct JsonNode *bags = json_list(out, node, "by-job");
    for (int j = 0; j < list->job_count; j++) {
        json_number(out, bags, "", line->by_job[j]);
    }
    json_number(out, node, "at-hand", line->at_hand);
    json_number(out, node, "over", line->over);
    json_text_if(out, node, "cut", shown_said(arena, line->cut));
    json_text_if(out, node, "note", shown_said(arena, line->note));
    add_price(out, node, list, index);
}

static void add_sums(struct JsonOut *out, struct Arena *arena, struct JsonNode *root, const struct OrderList *list)
{
    struct JsonNode *totals = json_list(out, root, "totals");
    for (int i = 0; i < list->total_count; i++) {
        if (list->totals[i].lines > 0) {
            struct JsonNode *node = json_object(out, totals, "");
            json_text(out, node, "currency", list->totals[i].currency);
            json_text(out, node, "amount", list->totals[i].text);
            json_text_if(out, node, "in-coin", list->totals[i].coin_text);
            json_number(out, node, "lines", list->totals[i].lines);
        }
    }
    json_text_if(out, root, "unpriced", shown_said(arena, list->unpriced_text));
    json_text_if(out, root, "not-priced", shown_said(arena, list->prices_note));
}

struct Bytes document_order_json(struct Arena *arena, const struct Order *order, const struct OrderList *list)
{
    struct JsonOut *out = json_out_new(arena);
    struct JsonNode *root = json_root(out);
    json_number(out, root, "format", 1);
    json_text(out, root, "verdict", plan_xml_verdict(list->verdict));
    if (order != NULL) {
        add_order(out, root, order);
    }
    add_jobs(out, arena, root, list);
    struct JsonNode *lines = json_list(out, root, "lines");
    for (int i = 0; i < list->count; i++) {
        add_line(out, arena, lines, list, i);
    }
    add_sums(out, arena, root, list);
    struct JsonNode *notes = json_list(out, root, "not-counted");
    for (int i = 0; i < list->note_count; i++) {
        json_text(out, notes, "", shown_said(arena, list->notes[i]));
    }
    return json_out_finish(out);
}
