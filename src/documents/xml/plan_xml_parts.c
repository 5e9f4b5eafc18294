/* The end of <parts> in plan.xml: the cutting plan and the sums of the prices. Amounts are written as they are printed,
 * digit by digit: a price is no measured number. */
#include "documents/documents.h"
#include "plan_xml_private.h"

void plan_xml_part_price(struct XmlOut *out, struct XmlElement *part, const struct PartsList *list, int index)
{
    if (list->parts[index].article != NULL && *list->parts[index].article != '\0') {
        xml_attribute(out, part, "article", list->parts[index].article);
    }
    if (list->prices == NULL || !list->prices[index].known) {
        return;
    }
    const struct PartPrice *price = &list->prices[index];
    xml_attribute(out, part, "price", price->each_text);
    xml_attribute(out, part, "price-unit", price->unit);
    xml_attribute(out, part, "currency", list->totals[price->currency].currency);
    xml_attribute(out, part, "total", price->total_text);
}

static void add_piece(struct XmlOut *out, struct XmlElement *parent, const struct PartPiece *piece)
{
    struct XmlElement *element = xml_child(out, parent, "piece");
    xml_say_attribute(out, element, "name", parts_piece_said(xml_out_arena(out), piece));
    xml_number(out, element, "length-m", piece->length_m);
}

static void add_opened(struct XmlOut *out, struct XmlElement *parent, const struct PartsCut *cut,
                       const struct PartOpened *opened)
{
    struct XmlElement *element = xml_child(out, parent, "opened");
    xml_say_attribute(out, element, "what", opened->what);
    xml_attribute(out, element, "bought", opened->bought ? "yes" : "no");
    xml_number(out, element, "length-m", opened->length_m);
    xml_number(out, element, "used-m", opened->used_m);
    xml_number(out, element, "left-m", opened->left_m);
    xml_say_attribute(out, element, "pieces-text", opened->piece_text);
    xml_say_attribute(out, element, "left-text", opened->left_text);
    for (int i = 0; i < opened->piece_count; i++) {
        add_piece(out, element, &cut->pieces[opened->pieces[i]]);
    }
}

static void add_cutting(struct XmlOut *out, struct XmlElement *parts, const struct PartsCut *cut)
{
    struct XmlElement *element = xml_child(out, parts, "cutting");
    xml_attribute(out, element, "code", cut->code);
    xml_say_attribute(out, element, "description", cut->description);
    xml_attribute(out, element, "proved", cut->proved ? "yes" : "no");
    xml_number(out, element, "bought-m", cut->bought_m);
    xml_number(out, element, "waste-m", cut->waste_m);
    xml_number(out, element, "bound-m", cut->bound_m);
    xml_integer(out, element, "whole-lengths", cut->whole_lengths);
    xml_integer(out, element, "offcuts-used", cut->offcuts_used);
    xml_say_attribute(out, element, "buy-text", cut->buy_text);
    xml_say_attribute(out, element, "result-text", cut->result_text);
    xml_attribute_if(out, element, "note", xml_said(out, cut->note));
    for (int i = 0; i < cut->opened_count; i++) {
        add_opened(out, element, cut, &cut->opened[i]);
    }
    for (int i = 0; i < cut->by_metre_count; i++) {
        add_piece(out, xml_child(out, element, "by-metre"), &cut->pieces[cut->by_metre[i]]);
    }
}

static void add_prices(struct XmlOut *out, struct XmlElement *parts, const struct PartsList *list)
{
    struct XmlElement *element = xml_child(out, parts, "prices");
    if (list->prices_note != NULL) {
        xml_attribute(out, element, "note", list->prices_note);
    }
    for (int i = 0; i < list->total_count; i++) {
        if (list->totals[i].lines == 0) {
            continue;
        }
        struct XmlElement *total = xml_child(out, element, "total");
        xml_attribute(out, total, "currency", list->totals[i].currency);
        xml_attribute(out, total, "amount", list->totals[i].text);
        xml_attribute_if(out, total, "in-coin", list->totals[i].coin_text);
        xml_integer(out, total, "lines", list->totals[i].lines);
    }
    for (int i = 0; i < list->unpriced_count; i++) {
        xml_text(out, xml_child(out, element, "unpriced"), list->unpriced[i]);
    }
}

void plan_xml_cutting_and_prices(struct XmlOut *out, struct XmlElement *parts, const struct PartsList *list)
{
    for (int i = 0; i < list->cut_count; i++) {
        if (list->cuts[i].planned || list->cuts[i].note != NULL) {
            add_cutting(out, parts, &list->cuts[i]);
        }
    }
    if (list->prices != NULL || list->prices_note != NULL) {
        add_prices(out, parts, list);
    }
}
