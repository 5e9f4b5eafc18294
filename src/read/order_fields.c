/* The order file's language: who buys, who sells, where to. Read by the same walk as a route file. */
#include "order_fields_private.h"
#include "survey_fields_private.h"

/* Buyer and seller differ only in what "account" means. */
#define NAME_ROW                                                                                                       \
    .key = "name", .kind = FIELD_NAME, AT(OrderParty, name), .longest = 100,                                           \
    .help = "the name of the firm or the person"
#define ADDRESS_ROWS                                                                                                   \
    {.key = "street", .kind = FIELD_NAME, AT(OrderParty, street), .longest = 100, .help = "house and street"},         \
        {.key = "town", .kind = FIELD_NAME, AT(OrderParty, town), .longest = 100, .help = "town or village"},          \
        {.key = "postcode", .kind = FIELD_NAME, AT(OrderParty, postcode), .longest = 20, .help = "its postcode"},      \
        {.key = "country",                                                                                             \
         .kind = FIELD_NAME,                                                                                           \
         AT(OrderParty, country),                                                                                      \
         .longest = 60,                                                                                                \
         .help = "two letters of ISO 3166-1, such as GB"},                                                             \
        {.key = "contact", .kind = FIELD_NAME, AT(OrderParty, contact), .longest = 100, .help = "whom to ask for"},    \
        {.key = "phone", .kind = FIELD_NAME, AT(OrderParty, phone), .longest = 40, .help = "telephone"},               \
    {                                                                                                                  \
        .key = "email", .kind = FIELD_NAME, AT(OrderParty, email), .longest = 100, .help = "where to write to"         \
    }

/* clang-format off */
static const struct Field details_fields[] = {
    {.key = "reference", .kind = FIELD_NAME, AT(Order, reference), .required = FIELD_ALWAYS, .longest = 60,
     .help = "your number for the order; the files are named by it"},
    {.key = "date", .kind = FIELD_DATE, AT(Order, date), .longest = 100,
     .default_text = "none; required unless --date is given",
     .help = "the day the order is placed, as 2026-05-14; no clock is read"},
    {.key = "delivery-date", .kind = FIELD_DATE, AT(Order, delivery_date), .longest = 100,
     .help = "wanted on this day at the latest"},
    {.key = "currency", .kind = FIELD_NAME, AT(Order, currency), .longest = 60,
     .help = "three letters of ISO 4217, such as GBP"},
    {.key = "prices", .kind = FIELD_FILE, AT(Order, prices), .longest = 100,
     .help = "your price list, a file beside this one; it overrides those of the routes"},
    {.key = "note", .kind = FIELD_TEXT, AT(Order, note), .longest = 4000, .help = "anything the seller should know"},
};
/* clang-format on */
static const struct FieldTable details_table = {
    .name = "order", .title = "order", TABLE(details_fields, .help = "number, dates, money")};

/* clang-format off */
static const struct Field buyer_fields[] = {
    {NAME_ROW, .required = FIELD_ALWAYS},
    ADDRESS_ROWS,
    {.key = "account", .kind = FIELD_NAME, AT(OrderParty, account), .longest = 60,
     .help = "your account number with the seller"},
};
/* clang-format on */
static const struct FieldTable buyer_table = {
    .name = "buyer", .title = "buyer", TABLE(buyer_fields, .help = "who orders")};

/* clang-format off */
static const struct Field seller_fields[] = {
    {NAME_ROW, .required = FIELD_ALWAYS},
    ADDRESS_ROWS,
    {.key = "account", .kind = FIELD_NAME, AT(OrderParty, account), .longest = 60,
     .help = "your own number for the seller"},
};
/* clang-format on */
static const struct FieldTable seller_table = {
    .name = "seller", .title = "seller", TABLE(seller_fields, .help = "who delivers")};

static const struct Field delivery_fields[] = {{NAME_ROW}, ADDRESS_ROWS};
static const struct FieldTable delivery_table = {
    .name = "delivery", .title = "delivery", TABLE(delivery_fields, .help = "where to, if not to the buyer's address")};

/* clang-format off */
static const struct Field top_fields[] = {
    {.key = "wend-order", .kind = FIELD_OWN, .default_text = "none; required, and the first key",
     .help = "version of this format: 1"},
    {.key = "order", INNER(details_table), .offset = 0, .required = FIELD_ALWAYS, .help = "number, dates, money"},
    {.key = "buyer", INNER(buyer_table), AT(Order, buyer), .required = FIELD_ALWAYS, .help = "who orders"},
    {.key = "seller", INNER(seller_table), AT(Order, seller), .required = FIELD_ALWAYS, .help = "who delivers"},
    {.key = "delivery", INNER(delivery_table), AT(Order, delivery), GIVEN(Order, has_delivery),
     .help = "where to, if not to the buyer's address"},
};
/* clang-format on */
static const struct FieldTable top_table = {
    .name = "the file", .title = "the order file", TABLE(top_fields, .help = "")};

const struct FieldTable *order_fields(enum OrderTable table)
{
    static const struct FieldTable *const tables[ORDER_TABLE_COUNT] = {
        [ORDER_TABLE_TOP] = &top_table,           [ORDER_TABLE_DETAILS] = &details_table,
        [ORDER_TABLE_BUYER] = &buyer_table,       [ORDER_TABLE_SELLER] = &seller_table,
        [ORDER_TABLE_DELIVERY] = &delivery_table,
    };
    return tables[table];
}
