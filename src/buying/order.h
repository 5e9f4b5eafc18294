/** What an order file says: who buys, who sells, where to and when. Read by read_order(); the goods come from the
 * plans.
 *
 * Every text is "" where the file says nothing. All of it lives in the arena it was read into. */
#ifndef WEND_ORDER_H
#define WEND_ORDER_H

#include "base/base.h"

/** A firm or a person, and where they are. */
struct OrderParty {
    const char *name;
    const char *street, *town, *postcode;
    const char *country; /**< ISO 3166-1 alpha-2: "GB" */
    const char *contact, *phone, *email;
    const char *account; /**< what the other side calls them; "" for a place of delivery */
};

struct Order {
    const char *reference;     /**< the buyer's number for the order */
    const char *date;          /**< the day it is placed, YYYY-MM-DD; "" only without an order file */
    const char *delivery_date; /**< wanted on that day at the latest */
    const char *currency;      /**< ISO 4217: "GBP" */
    const char *prices;        /**< a price list beside the order file */
    const char *note;
    struct OrderParty buyer, seller;
    bool has_delivery;
    struct OrderParty delivery; /**< where to, when it is not the buyer's own address */
};

#endif
