/* A calculation in signs: "(1.03 x 0.7)^2" as "(1.03 × 0.7)²". */
#include "words_private.h"

#include <string.h>

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* The sign that stands at a place, and how many characters it takes; UNIT_NONE where none does. "sqrt" is one before
 * its bracket, a letter or a stroke alone between blanks, and only the square has a raised figure: "10^6" is one sign.
 */
static enum Unit sign_at(const char *text, const char *at, size_t *length)
{
    static const struct {
        const char *typed;
        enum Unit sign;
    } signs[] = {{" ^ 2", UNIT_SQUARED}, {"^2", UNIT_SQUARED}, {"10^6", UNIT_MILLION}, {"sqrt", UNIT_ROOT},
                 {"x", UNIT_TIMES_SIGN}, {"pi", UNIT_PI},      {"-", UNIT_MINUS_SIGN}};
    for (size_t i = 0; i < sizeof signs / sizeof signs[0]; i++) {
        *length = strlen(signs[i].typed);
        if (strncmp(at, signs[i].typed, *length) != 0) {
            continue;
        }
        const char after = at[*length];
        const bool raised = signs[i].sign == UNIT_SQUARED || signs[i].sign == UNIT_MILLION;
        const bool apart = at == text || !is_letter(at[-1]);
        if (raised ? (after < '0' || after > '9') && after != '.' : apart && !is_letter(after)) {
            return signs[i].sign;
        }
    }
    return UNIT_NONE;
}

const char *words_calculation(struct Arena *arena, const struct Words *words, const char *text)
{
    struct TextBuilder shown = text_builder(arena);
    for (const char *at = text; words->medium == MEDIUM_SIGNS && *at != '\0';) {
        size_t length;
        const enum Unit sign = sign_at(text, at, &length);
        if (sign != UNIT_NONE) {
            text_add(&shown, words_unit(words, sign));
            at += length;
        } else {
            text_add_char(&shown, *at++);
        }
    }
    return words->medium == MEDIUM_SIGNS ? text_done(&shown) : text;
}
