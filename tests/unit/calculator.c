/* Reads an expression from left to right as it is printed; nothing of the program's own code is used. */
#include "calculator.h"

#include <ctype.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

struct Reading {
    const char *at;
    bool wrong;
};

static double sum(struct Reading *reading);

static bool next_is(struct Reading *reading, const char *sign)
{
    while (*reading->at == ' ') {
        reading->at++;
    }
    if (strncmp(reading->at, sign, strlen(sign)) != 0) {
        return false;
    }
    reading->at += strlen(sign);
    return true;
}

static double bracket(struct Reading *reading)
{
    const double value = sum(reading);
    reading->wrong = reading->wrong || !next_is(reading, ")");
    return value;
}

static double single(struct Reading *reading)
{
    if (next_is(reading, "sqrt(")) {
        return sqrt(bracket(reading));
    }
    if (next_is(reading, "ln(")) {
        return log(bracket(reading));
    }
    if (next_is(reading, "pi")) {
        return acos(-1);
    }
    if (next_is(reading, "(")) {
        return bracket(reading);
    }
    double value = 0;
    if (!calculator_figure(reading->at, &value)) {
        reading->wrong = true;
        return 0;
    }
    reading->at += *reading->at == '-' ? 1 : 0;
    reading->at += strspn(reading->at, "0123456789.");
    return value;
}

static double power(struct Reading *reading)
{
    const double base = single(reading);
    return next_is(reading, "^") ? pow(base, single(reading)) : base;
}

static double product(struct Reading *reading)
{
    double value = power(reading);
    for (;;) {
        if (next_is(reading, "x ")) {
            value *= power(reading);
        } else if (next_is(reading, "/ ")) {
            value /= power(reading);
        } else {
            return value;
        }
    }
}

static double sum(struct Reading *reading)
{
    double value = product(reading);
    for (;;) {
        if (next_is(reading, "+ ")) {
            value += product(reading);
        } else if (next_is(reading, "- ")) {
            value -= product(reading);
        } else {
            return value;
        }
    }
}

bool calculator_figure(const char *text, double *out)
{
    if (!isdigit((unsigned char)text[0]) && !(text[0] == '-' && isdigit((unsigned char)text[1]))) {
        return false;
    }
    *out = strtod(text, NULL);
    if (strncmp(text + strspn(text, "-0123456789."), " x 10^6", 7) == 0) {
        *out *= 1e6;
    }
    return true;
}

bool calculator_value(const char *text, double *out)
{
    struct Reading reading = {.at = text};
    *out = sum(&reading);
    while (*reading.at == ' ') {
        reading.at++;
    }
    return !reading.wrong && *reading.at == '\0' && isfinite(*out);
}

/* Seven digits leave half a part in a million to each figure; six of them may come together. */
bool calculator_agrees(const char *text, double figure)
{
    double value;
    return calculator_value(text, &value) && isfinite(figure) && fabs(value - figure) <= 3e-6 * fabs(figure) + 1e-9;
}
