/** A price list of the user's own, as read: no price is built in anywhere. Amounts are whole numbers of the smallest
 * part that a currency's prices are written in, so that sums are exact; no floating point comes near them. */
#ifndef WEND_PRICES_H
#define WEND_PRICES_H

#include "base/base.h"

#include <stdint.h>

enum {
    PRICES_CURRENCIES_MOST = 20,
    PRICES_DECIMALS_MOST = 4, /**< a metre of thin wire may cost a part of the smallest coin */
    PRICES_DIGITS_MOST = 9,   /**< before the decimal point */
};

struct PriceCurrency {
    const char *code; /**< of ISO 4217 */
    int decimals; /**< the most that a price in it is written with, at least coin_decimals; amounts count such parts */
    int coin_decimals; /**< of the smallest coin by ISO 4217: 2 of EUR, 0 of JPY, 3 of KWD */
};

struct Price {
    const char *code; /**< of the article, as in the parts list */
    const char *unit; /**< what the amount is for: "m", "each", "pack", "drum-100", or another word of the file's */
    int whole_m;      /**< 100 of "drum-100", "coil-100" and "length-100": one whole length; 0 of every other unit */
    int currency;     /**< index into PriceList.currencies */
    int64_t amount;   /**< 10^-decimals of the currency, 0 or more */
    struct Mark mark; /**< of the code in the file */
    bool disputed;    /**< not to be used: lists that were put together disagree */
};

struct PriceList {
    int currency_count;
    const struct PriceCurrency *currencies; /**< in the order in which they first appear */
    int count;
    const struct Price *prices; /**< by code, rising bytes, then by whole_m; no two with the same of both */
};

#endif
