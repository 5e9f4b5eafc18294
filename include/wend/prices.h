/** A price list of the user's own, as read: no price is built in anywhere. Amounts are whole numbers of the smallest
 * part that a currency's prices are written in, so that sums are exact; no floating point comes near them. */
#ifndef WEND_PRICES_H
#define WEND_PRICES_H

#include "wend/base.h"

#include <stdint.h>

enum {
    PRICES_CURRENCIES_MOST = 20,
    PRICES_DECIMALS_MOST = 4, /**< a metre of thin wire may cost a part of the smallest coin */
    PRICES_DIGITS_MOST = 9,   /**< before the decimal point */
};

struct PriceCurrency {
    const char *code; /**< three capital letters */
    int decimals;     /**< the most that a price in it is written with, 1 counts as 2; its amounts count such parts */
};

struct Price {
    const char *code; /**< of the article, as in the parts list */
    const char *unit; /**< what the amount is for: "m", "each", "pack", or another word that the file uses */
    int currency;     /**< index into PriceList.currencies */
    int64_t amount;   /**< 10^-decimals of the currency, 0 or more */
    struct Mark mark; /**< of the code in the file */
};

struct PriceList {
    int currency_count;
    const struct PriceCurrency *currencies; /**< in the order in which they first appear */
    int count;
    const struct Price *prices; /**< by code, rising bytes; each code once */
};

#endif
