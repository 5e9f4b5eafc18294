/** The order file's field tables and code lists, for read_order.c and the manual. */
#ifndef WEND_ORDER_PRIVATE_H
#define WEND_ORDER_PRIVATE_H

#include "buying/order.h"
#include "read_private.h"

/** Every mapping of the order file, in the order of the manual. */
enum OrderTable {
    ORDER_TABLE_TOP,
    ORDER_TABLE_DETAILS,
    ORDER_TABLE_BUYER,
    ORDER_TABLE_SELLER,
    ORDER_TABLE_DELIVERY,
    ORDER_TABLE_COUNT
};
const struct FieldTable *order_fields(enum OrderTable table);

/** A list of codes, sorted, each of the same number of letters, one blank between two. */
struct CodeList {
    const char *codes;
    int letters;
};
/** country_codes.c: ISO 3166-1 alpha-2. */
const struct CodeList *country_codes(void);
/** currency_codes.c: ISO 4217. */
const struct CodeList *currency_codes(void);
/** Digits behind the decimal point of the smallest coin of a currency of that list: 2 for "EUR", 0 for "JPY". */
int currency_coin_decimals(const char *code);
/** True when `code` is one of the list, in capital letters. */
bool code_listed(const struct CodeList *list, const char *code);
/** The code in capital letters, in the arena, when only the size of its letters is wrong; NULL otherwise. */
const char *code_in_capitals(struct Arena *arena, const struct CodeList *list, const char *written);

#endif
