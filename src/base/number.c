/* Numbers to and from text, the same in every locale. */
#include "base.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

enum { DECIMALS_MOST = 9, DIGITS_MOST = 15 };

static const double power_of_ten[] = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

/* A number as text: ten digits, a sign, a point, and nine more at most. */
struct NumberText {
    char bytes[32];
    size_t length;
};

static void put_digits(struct NumberText *text, uint64_t whole, int least)
{
    char digits[24];
    int at = (int)sizeof digits;
    do {
        digits[--at] = (char)('0' + whole % 10);
        whole /= 10;
        least--;
    } while (whole > 0 || least > 0);
    memcpy(text->bytes + text->length, digits + at, sizeof digits - (size_t)at);
    text->length += sizeof digits - (size_t)at;
}

static struct NumberText written(double value, int decimals)
{
    struct NumberText text = {.length = 0};
    if (!isfinite(value) || fabs(value) > 1e9) {
        text.bytes[text.length++] = '?'; /* plan_check() refuses such a plan before a document is made */
        return text;
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
        text.bytes[text.length++] = '-';
    }
    uint64_t scale = (uint64_t)power_of_ten[decimals];
    put_digits(&text, units / scale, 1);
    if (decimals > 0) {
        text.bytes[text.length++] = '.';
        put_digits(&text, units % scale, decimals);
    }
    return text;
}

void number_add(struct TextBuilder *builder, double value, int decimals)
{
    const struct NumberText text = written(value, decimals);
    text_add_bytes(builder, text.bytes, text.length);
}

const char *number_text(struct Arena *arena, double value, int decimals)
{
    if (arena == NULL) {
        return "";
    }
    const struct NumberText text = written(value, decimals);
    return arena_text(arena, text.bytes, text.length);
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
    struct NumberText text = written(value, decimals);
    while (decimals > 0 && text.bytes[text.length - 1] == '0') {
        text.length--;
    }
    if (decimals > 0 && text.bytes[text.length - 1] == '.') {
        text.length--;
    }
    return arena_text(arena, text.bytes, text.length);
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
