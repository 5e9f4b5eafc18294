/* An order as OASIS UBL 2.1, for a wholesaler's system to read.
 *
 * The elements stand in the order of the schema's sequences, which is not free. What is not known is left out and never
 * written empty: no article number of the seller's. Prices are the user's own, for whole lengths and packs as they are
 * bought; the sum of the order only where it is the sum of all its lines in the order's currency. Quantities carry
 * codes of UN/ECE Recommendation 20. */
#include "documents/lists/order_words_private.h"
#include "documents/shown_private.h"
#include "xml_private.h"

static const char main_space[] = "urn:oasis:names:specification:ubl:schema:xsd:Order-2";
static const char aggregate_space[] = "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2";
static const char basic_space[] = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2";

/* A child that holds one text; none when the text is "". */
static void add_text(struct XmlOut *out, struct XmlElement *parent, const char *name, const char *text)
{
    if (*text != '\0') {
        xml_text(out, xml_child(out, parent, name), text);
    }
}

static void add_quantity(struct XmlOut *out, struct XmlElement *parent, const char *name, const char *number,
                         const char *unit_code)
{
    struct XmlElement *element = xml_child(out, parent, name);
    xml_attribute_if(out, element, "unitCode", unit_code);
    xml_text(out, element, number);
}

static void add_amount(struct XmlOut *out, struct XmlElement *parent, const char *name, const char *amount,
                       const char *currency)
{
    struct XmlElement *element = xml_child(out, parent, name);
    xml_attribute(out, element, "currencyID", currency);
    xml_text(out, element, amount);
}

static bool has_address(const struct OrderParty *party)
{
    return *party->street != '\0' || *party->town != '\0' || *party->postcode != '\0' || *party->country != '\0';
}

static void add_address(struct XmlOut *out, struct XmlElement *parent, const char *name, const struct OrderParty *party)
{
    if (!has_address(party)) {
        return;
    }
    struct XmlElement *address = xml_child(out, parent, name);
    add_text(out, address, "cbc:StreetName", party->street);
    add_text(out, address, "cbc:CityName", party->town);
    add_text(out, address, "cbc:PostalZone", party->postcode);
    if (*party->country != '\0') {
        add_text(out, xml_child(out, address, "cac:Country"), "cbc:IdentificationCode", party->country);
    }
}

static void add_contact(struct XmlOut *out, struct XmlElement *parent, const struct OrderParty *party)
{
    if (*party->contact == '\0' && *party->phone == '\0' && *party->email == '\0') {
        return;
    }
    struct XmlElement *contact = xml_child(out, parent, "cac:Contact");
    add_text(out, contact, "cbc:Name", party->contact);
    add_text(out, contact, "cbc:Telephone", party->phone);
    add_text(out, contact, "cbc:ElectronicMail", party->email);
}

static void add_party(struct XmlOut *out, struct XmlElement *parent, const char *name, const struct OrderParty *party,
                      const char *address)
{
    struct XmlElement *element = xml_child(out, parent, name);
    if (*party->name != '\0') {
        add_text(out, xml_child(out, element, "cac:PartyName"), "cbc:Name", party->name);
    }
    if (address != NULL) {
        add_address(out, element, address, party);
    }
    add_contact(out, element, party);
}

static void add_parties(struct XmlOut *out, struct XmlElement *root, const struct Order *order)
{
    struct XmlElement *buyer = xml_child(out, root, "cac:BuyerCustomerParty");
    add_text(out, buyer, "cbc:SupplierAssignedAccountID", order->buyer.account);
    add_party(out, buyer, "cac:Party", &order->buyer, "cac:PostalAddress");
    struct XmlElement *seller = xml_child(out, root, "cac:SellerSupplierParty");
    add_text(out, seller, "cbc:CustomerAssignedAccountID", order->seller.account);
    add_party(out, seller, "cac:Party", &order->seller, "cac:PostalAddress");
}

static void add_delivery(struct XmlOut *out, struct XmlElement *root, const struct Order *order)
{
    const struct OrderParty *to = &order->delivery;
    if (!order->has_delivery && *order->delivery_date == '\0') {
        return;
    }
    struct XmlElement *delivery = xml_child(out, root, "cac:Delivery");
    if (order->has_delivery) {
        add_address(out, delivery, "cac:DeliveryAddress", to);
    }
    if (*order->delivery_date != '\0') {
        add_text(out, xml_child(out, delivery, "cac:RequestedDeliveryPeriod"), "cbc:EndDate", order->delivery_date);
    }
    if (order->has_delivery &&
        (*to->name != '\0' || *to->contact != '\0' || *to->phone != '\0' || *to->email != '\0')) {
        add_party(out, delivery, "cac:DeliveryParty", to, NULL);
    }
}

static void add_property(struct XmlOut *out, struct XmlElement *item, const char *name, const char *value)
{
    if (*value != '\0') {
        struct XmlElement *property = xml_child(out, item, "cac:AdditionalItemProperty");
        add_text(out, property, "cbc:Name", name);
        add_text(out, property, "cbc:Value", value);
    }
}

/* "for barn": "12 each", and the lengths of cable one by one, so that a system that drops remarks still has them. */
static void add_split(struct XmlOut *out, struct Arena *arena, struct XmlElement *item, const struct OrderList *list,
                      const struct OrderLine *line)
{
    for (int j = 0; j < list->job_count; j++) {
        if (line->by_job[j] > 0) {
            add_property(out, item, shown_said(arena, say(arena, SAY_FOR_JOB, say_name(list->jobs[j].name))),
                         arena_print(arena, "%s %s", number_significant(arena, line->by_job[j], 9), line->unit));
        }
    }
    for (int i = 0; i < line->piece_count; i++) {
        const struct OrderPiece *piece = &line->pieces[i];
        const struct SayArg use = say_part(piece->use != NULL ? parts_uses_said(arena, 1, piece->use) : NULL);
        add_property(out, item, shown_said(arena, say(arena, SAY_LENGTH_NUMBER, say_count(i + 1))),
                     shown_said(arena, say(arena, SAY_LENGTH_WITHOUT_JOINT, say_digits(piece->length_m, 9, UNIT_M),
                                           say_name(list->jobs[piece->job].name), use)));
    }
}

static void add_item(struct XmlOut *out, struct Arena *arena, struct XmlElement *parent, const struct OrderList *list,
                     const struct OrderLine *line)
{
    struct XmlElement *item = xml_child(out, parent, "cac:Item");
    if (line->by_package) {
        add_text(out, item, "cbc:PackSizeNumeric", arena_print(arena, "%d", line->pack));
    }
    add_text(out, item, "cbc:Name", shown_said(arena, line->description));
    add_text(out, xml_child(out, item, "cac:BuyersItemIdentification"), "cbc:ID", line->code);
    add_property(out, item, "standard", line->standard);
    add_split(out, arena, item, list, line);
}

/* What of unit_quantity the price is for: of a drum of 100 m 100 MTR, of a pack of 50 ordered by the pack one XPK.
 * Where the unit is not the one that the line is ordered in, the whole line is the base. */
static void add_line_price(struct XmlOut *out, struct Arena *arena, struct XmlElement *parent,
                           const struct OrderList *list, int number)
{
    const struct OrderLine *line = &list->lines[number];
    const struct PartPrice *price = list->prices != NULL ? &list->prices[number] : NULL;
    if (price == NULL || !price->known) {
        return;
    }
    const bool same_count = !line->by_package || price->base >= line->pack;
    const double base = line->by_package ? 1 : price->base;
    struct XmlElement *element = xml_child(out, parent, "cac:Price");
    add_amount(out, element, "cbc:PriceAmount", same_count ? price->each_text : price->total_text,
               list->totals[price->currency].currency);
    add_quantity(out, element, "cbc:BaseQuantity",
                 number_significant(arena, same_count ? base : line->unit_quantity, 9), line->unit_code);
}

static void add_line(struct XmlOut *out, struct Arena *arena, struct XmlElement *root, const struct OrderList *list,
                     int number)
{
    const struct OrderLine *line = &list->lines[number];
    struct XmlElement *element = xml_child(out, xml_child(out, root, "cac:OrderLine"), "cac:LineItem");
    add_text(out, element, "cbc:ID", arena_print(arena, "%d", number + 1));
    add_text(out, element, "cbc:Note", shown_said(arena, line->cut));
    if (line->packs > 0 || line->buy_text != NULL) {
        add_text(out, element, "cbc:Note",
                 shown_said(arena, say(arena, SAY_ORDERED_AS, say_name(order_buy_words(arena, line)))));
    }
    if (*line->unit_code == '\0') {
        add_text(out, element, "cbc:Note", shown_said(arena, say(arena, SAY_UNIT_OF_QUANTITY, say_name(line->unit))));
    }
    add_text(out, element, "cbc:Note", shown_said(arena, line->note));
    add_quantity(out, element, "cbc:Quantity", number_significant(arena, line->unit_quantity, 9), line->unit_code);
    if (list->prices != NULL && list->prices[number].known) {
        add_amount(out, element, "cbc:LineExtensionAmount", list->prices[number].total_text,
                   list->totals[list->prices[number].currency].currency);
    }
    add_line_price(out, arena, element, list, number);
    add_item(out, arena, element, list, line);
}

static void add_notes(struct XmlOut *out, struct Arena *arena, struct XmlElement *root, const struct Order *order,
                      const struct OrderList *list)
{
    for (int i = 0; i < list->job_count; i++) {
        add_text(out, root, "cbc:Note", order_warning(arena, list, i));
    }
    add_text(out, root, "cbc:Note", order->note);
    for (int j = 0; j < list->job_count; j++) {
        add_text(out, root, "cbc:Note", order_job_words(arena, &list->jobs[j]));
        add_text(out, root, "cbc:Note", order_range_words(arena, &list->jobs[j]));
    }
    for (int i = 0; i < list->note_count; i++) {
        add_text(out, root, "cbc:Note", shown_said(arena, list->notes[i]));
    }
}

/* The one total that is the order's: all lines priced, in its currency. NULL when there is none. */
static const struct PartsTotal *whole_total(const struct Order *order, const struct OrderList *list)
{
    const struct PartsTotal *whole = NULL;
    for (int i = 0; i < list->total_count; i++) {
        if (list->totals[i].lines > 0 && (whole != NULL || !text_same(list->totals[i].currency, order->currency))) {
            return NULL;
        }
        whole = list->totals[i].lines > 0 ? &list->totals[i] : whole;
    }
    return list->unpriced_count == 0 ? whole : NULL;
}

static void add_price_notes(struct XmlOut *out, struct Arena *arena, struct XmlElement *root, const struct Order *order,
                            const struct OrderList *list)
{
    if (list->prices != NULL && whole_total(order, list) == NULL) {
        const struct Say *why = *order->currency == '\0'
                                    ? say(arena, SAY_NO_SUM_WITHOUT_CURRENCY)
                                    : say(arena, SAY_NO_SUM_OF_ALL_LINES, say_name(order->currency));
        add_text(out, root, "cbc:Note", shown_said(arena, why));
    }
    if (list->prices != NULL) {
        add_text(out, root, "cbc:Note", shown_said(arena, say(arena, SAY_BUYERS_OWN_PRICES)));
    }
    add_text(out, root, "cbc:Note", order_not_priced(arena, list));
}

/* What is paid is in whole coins; the difference to the sum of the lines stands beside it. */
static void add_total(struct XmlOut *out, struct XmlElement *root, const struct Order *order,
                      const struct OrderList *list)
{
    const struct PartsTotal *total = whole_total(order, list);
    if (total == NULL) {
        return;
    }
    struct XmlElement *element = xml_child(out, root, "cac:AnticipatedMonetaryTotal");
    add_amount(out, element, "cbc:LineExtensionAmount", total->text, total->currency);
    if (*total->rounding_text != '\0') {
        add_amount(out, element, "cbc:PayableRoundingAmount", total->rounding_text, total->currency);
    }
    add_amount(out, element, "cbc:PayableAmount", *total->coin_text != '\0' ? total->coin_text : total->text,
               total->currency);
}

/* What is all cut from offcuts at hand is not ordered; but an order without a line is none. */
static bool is_ordered(const struct OrderList *list, const struct OrderLine *line)
{
    for (int i = 0; i < list->count; i++) {
        if (list->lines[i].buy > 0) {
            return line->buy > 0;
        }
    }
    return true;
}

static int count_ordered(const struct OrderList *list)
{
    int count = 0;
    for (int i = 0; i < list->count; i++) {
        count += is_ordered(list, &list->lines[i]);
    }
    return count;
}

struct Bytes document_order_ubl(struct Arena *arena, const struct Order *order, const struct OrderList *list)
{
    /* any program writes orders; this one is ours to replace */
    struct XmlOut *out = xml_out_new(arena, "Order", " Written by Wend ");
    struct XmlElement *root = xml_root(out);
    xml_attribute(out, root, "xmlns", main_space);
    xml_attribute(out, root, "xmlns:cac", aggregate_space);
    xml_attribute(out, root, "xmlns:cbc", basic_space);
    add_text(out, root, "cbc:UBLVersionID", "2.1");
    add_text(out, root, "cbc:ID", order->reference);
    add_text(out, root, "cbc:IssueDate", order->date);
    add_notes(out, arena, root, order, list);
    add_price_notes(out, arena, root, order, list);
    add_text(out, root, "cbc:DocumentCurrencyCode", order->currency);
    add_text(out, root, "cbc:LineCountNumeric", arena_print(arena, "%d", count_ordered(list)));
    add_parties(out, root, order);
    add_delivery(out, root, order);
    add_total(out, root, order, list);
    for (int i = 0; i < list->count; i++) {
        if (is_ordered(list, &list->lines[i])) {
            add_line(out, arena, root, list, i);
        }
    }
    return xml_out_finish(out);
}
