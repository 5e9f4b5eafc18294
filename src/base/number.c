/* Numbers to and from text, the same in every locale. */
#include "base.h"

#include <math.h>
#include <stdint.h>

enum { DECIMALS_MOST = 9, DIGITS_MOST = 15 };

static const double power_of_ten[] = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

static void add_digits(struct TextBuilder *builder, uint64_t whole, int least)
{
    char digits[24];
    int at = (int)sizeof digits;
    do {
        digits[--at] = (char)('0' + whole % 10);
        whole /= 10;
        least--;
    } while (whole > 0 || least > 0);
    text_add_bytes(builder, digits + at, sizeof digits - (size_t)at);
}

void number_add(struct TextBuilder *builder, double value, int decimals)
{
    if (!isfinite(value) || fabs(value) > 1e9) {
        text_add(builder, "?"); /* plan_check() refuses such a plan before a document is made */
        return;
    }
    if (decimals < 0) {
        decimals = 0;
    }
    if (decimals > DECIMALS_MOST) {
        decimals = DECIMALS_MOST;
    }
    double scaled = fabs(value) * power_of_ten[decimals];
    /* 2.675 is stored as 2.67499..: a nudge of a few ulps makes halves round as they read. It stays below the last
     * digit of a number of 15 digits; from 2^52 on there is no half. */
    double half = scaled < 4503599627370496.0 ? 0.5 + fmin(scaled * 1e-15, 0.25) : 0;
    uint64_t units = (uint64_t)floor(scaled + half);
    if (value < 0 && units > 0) {
        text_add_char(builder, '-');
    }
    uint64_t scale = (uint64_t)power_of_ten[decimals];
    add_digits(builder, units / scale, 1);
    if (decimals > 0) {
        text_add_char(builder, '.');
        add_digits(builder, units % scale, decimals);
    }
}

const char *number_text(struct Arena *arena, double value, int decimals)
{
    if (arena == NULL) {
        return "";
    }
    struct TextBuilder builder = text_builder(arena);
    number_add(&builder, value, decimals);
    return text_done(&builder);
}

const char *number_significant(struct Arena *arena, double value, int digits)
{
    if (arena == NULL) {
        return "";
    }
    int decimals = digits - 1;
    for (double size = fabs(value); size >= 10 && decimals > 0; size /= 10) {
        decimals--;
    }
    for (double size = fabs(value); size > 0 && size < 1 && decimals < DECIMALS_MOST; size *= 10) {
        decimals++;
    }
    struct TextBuilder builder = text_builder(arena);
    number_add(&builder, value, decimals);
    if (builder.failed || decimals <= 0 || builder.data == NULL) {
        return text_done(&builder);
    }
    while (builder.data[builder.length - 1] == '0') {
        builder.data[--builder.length] = '\0';
    }
    if (builder.data[builder.length - 1] == '.') {
        builder.data[--builder.length] = '\0';
    }
    return text_done(&builder);
}

bool number_read(const char *bytes, size_t length, double *out)
{
    size_t at = 0;
    bool negative = false;
    if (at < length && bytes[at] == '-') {
        negative = true;
        at++;
    }
    size_t whole_start = at;
    uint64_t value = 0;
    int digits = 0;
    int decimals = 0;
    while (at < length && bytes[at] >= '0' && bytes[at] <= '9') {
        value = value * 10 + (uint64_t)(bytes[at++] - '0');
        if (++digits > DIGITS_MOST) {
            return false;
        }
    }
    size_t whole = at - whole_start;
    if (whole == 0 || (whole > 1 && bytes[whole_start] == '0')) {
        return false;
    }
    if (at < length && bytes[at] == '.') {
        at++;
        while (at < length && bytes[at] >= '0' && bytes[at] <= '9') {
            value = value * 10 + (uint64_t)(bytes[at++] - '0');
            decimals++;
            if (++digits > DIGITS_MOST) {
                return false;
            }
        }
        if (decimals == 0) {
            return false;
        }
    }
    if (at != length) {
        return false;
    }
    double result = (double)value;
    while (decimals > 0) { /* both operands exact up to 1e15: one correctly rounded division */
        int step = decimals > DECIMALS_MOST ? DECIMALS_MOST : decimals;
        result /= power_of_ten[step];
        decimals -= step;
    }
    *out = negative ? -result : result;
    return true;
}
