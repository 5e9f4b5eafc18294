/* Text in an arena: copies, printf, a builder, and what is needed of UTF-8. */
#include "arena_private.h"

#include <stdint.h>
#include <stdio.h>
#include <string.h>

const char *arena_text(struct Arena *arena, const char *bytes, size_t length)
{
    char *copy = arena_alloc(arena, length + 1);
    if (copy == NULL) {
        return "";
    }
    if (length > 0) {
        memcpy(copy, bytes, length);
    }
    return copy;
}

enum { PRINTED_AT_FIRST = 512 };

WEND_PRINTF(2, 0)
static const char *print_list(struct Arena *arena, const char *format, va_list list)
{
    if (arena == NULL) {
        return "";
    }
    /* most of what is printed is short: printed once, then kept */
    char first[PRINTED_AT_FIRST];
    va_list again;
    va_copy(again, list);
    /* the analyser of clang 14 takes every va_list argument for an uninitialized one */
    const int length = vsnprintf(first, sizeof first, format, list); /* NOLINT(clang-analyzer-valist.Uninitialized) */
    char *text = length < 0 ? NULL : arena_alloc(arena, (size_t)length + 1);
    if (text != NULL && (size_t)length < sizeof first) {
        memcpy(text, first, (size_t)length + 1);
    } else if (text != NULL) {
        vsnprintf(text, (size_t)length + 1, format, again);
    }
    va_end(again);
    return text != NULL ? text : "";
}

const char *arena_print(struct Arena *arena, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    const char *text = print_list(arena, format, list);
    va_end(list);
    return text;
}

struct TextBuilder text_builder(struct Arena *arena)
{
    return (struct TextBuilder){.arena = arena, .failed = arena == NULL};
}

void text_add_bytes(struct TextBuilder *builder, const char *bytes, size_t length)
{
    if (builder->failed || length == 0) {
        return;
    }
    if (length >= builder->room - builder->length) {
        size_t room = builder->room < 128 ? 128 : builder->room;
        while (room - builder->length <= length) {
            if (room > SIZE_MAX / 2) {
                builder->failed = true;
                return;
            }
            room *= 2;
        }
        char *larger = builder->data;
        if (builder->data == NULL || !arena_resize(builder->arena, builder->data, builder->room, room)) {
            larger = arena_alloc(builder->arena, room);
            if (larger == NULL) {
                builder->failed = true;
                return;
            }
            if (builder->data != NULL) {
                memcpy(larger, builder->data, builder->length);
            }
        }
        builder->data = larger;
        builder->room = room;
    }
    memcpy(builder->data + builder->length, bytes, length);
    builder->length += length;
    builder->data[builder->length] = '\0';
}

void text_add(struct TextBuilder *builder, const char *text)
{
    text_add_bytes(builder, text, strlen(text));
}

void text_add_char(struct TextBuilder *builder, char character)
{
    text_add_bytes(builder, &character, 1);
}

void text_print(struct TextBuilder *builder, const char *format, ...)
{
    if (builder->failed) {
        return;
    }
    va_list list;
    va_start(list, format);
    const char *text = print_list(builder->arena, format, list);
    va_end(list);
    if (builder->arena == NULL || arena_failed(builder->arena)) {
        builder->failed = true;
    }
    text_add(builder, text);
}

const char *text_done(struct TextBuilder *builder)
{
    if (builder->failed || builder->data == NULL) {
        return "";
    }
    if (arena_resize(builder->arena, builder->data, builder->room, builder->length + 1)) {
        builder->room = builder->length + 1; /* what was kept for more is given back */
    }
    return builder->data;
}

int utf8_length(const char *bytes, size_t length)
{
    const unsigned char *b = (const unsigned char *)bytes;
    if (length == 0) {
        return 0;
    }
    if (b[0] < 0x80) {
        return 1;
    }
    int need = b[0] >= 0xC2 && b[0] <= 0xDF   ? 2
               : b[0] >= 0xE0 && b[0] <= 0xEF ? 3
               : b[0] >= 0xF0 && b[0] <= 0xF4 ? 4
                                              : 0;
    if (need == 0 || length < (size_t)need) {
        return 0;
    }
    for (int i = 1; i < need; i++) {
        if ((b[i] & 0xC0) != 0x80) {
            return 0;
        }
    }
    /* overlong forms, surrogate halves, beyond U+10FFFF */
    if ((b[0] == 0xE0 && b[1] < 0xA0) || (b[0] == 0xED && b[1] > 0x9F) || (b[0] == 0xF0 && b[1] < 0x90) ||
        (b[0] == 0xF4 && b[1] > 0x8F)) {
        return 0;
    }
    return need;
}

unsigned long utf8_code(const char *bytes)
{
    const unsigned char *b = (const unsigned char *)bytes;
    if (b[0] < 0x80) {
        return b[0];
    }
    if (b[0] < 0xE0) {
        return (unsigned long)(b[0] & 0x1F) << 6 | (b[1] & 0x3FU);
    }
    if (b[0] < 0xF0) {
        return (unsigned long)(b[0] & 0x0F) << 12 | (unsigned long)(b[1] & 0x3F) << 6 | (b[2] & 0x3FU);
    }
    return (unsigned long)(b[0] & 0x07) << 18 | (unsigned long)(b[1] & 0x3F) << 12 | (unsigned long)(b[2] & 0x3F) << 6 |
           (b[3] & 0x3FU);
}

size_t utf8_count(const char *text)
{
    size_t count = 0;
    for (; *text != '\0'; text++) {
        if (((unsigned char)*text & 0xC0) != 0x80) {
            count++;
        }
    }
    return count;
}

bool text_code_turns(unsigned long code)
{
    return (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

/* What takes no room, or has no shape that all agree on: two names that differ in it look the same. Marks that letters
 * of some scripts need (U+061C, U+200C to U+200F) are not among them. */
bool text_code_invisible(unsigned long code)
{
    return code == 0xAD || code == 0x34F || code == 0x115F || code == 0x1160 || code == 0x200B ||
           (code >= 0x2060 && code <= 0x2065) || (code >= 0x206A && code <= 0x206F) || code == 0x3164 ||
           code == 0xFFA0 || (code >= 0xFFF9 && code <= 0xFFFB) || (code >= 0xE000 && code <= 0xF8FF) ||
           (code >= 0x180B && code <= 0x180F) || (code >= 0xFE00 && code <= 0xFE0F) || code == 0x17B4 ||
           code == 0x17B5 || (code >= 0xFFF0 && code <= 0xFFF8) || (code >= 0x1BCA0 && code <= 0x1BCA3) ||
           (code >= 0x1D173 && code <= 0x1D17A) || (code >= 0xFDD0 && code <= 0xFDEF) ||
           (code > 0xFFFF && (code & 0xFFFE) == 0xFFFE) || code >= 0xE0000;
}

bool text_code_refused(unsigned long code)
{
    bool line_end = code == '\n' || code == '\r' || code == '\t';
    return (code < 0x20 && !line_end) || (code >= 0x7F && code <= 0x9F) || code == 0x2028 || code == 0x2029 ||
           code == 0xFEFF || code == 0xFFFE || code == 0xFFFF || text_code_turns(code) || text_code_invisible(code);
}

/* Past what is not seen itself: marks that join, part or turn letters round, and what no text of a route may hold. */
static const char *seen_from(const char *text)
{
    while ((unsigned char)*text >= 0x80) {
        const int bytes = utf8_length(text, strnlen(text, 4));
        const unsigned long code = bytes > 0 ? utf8_code(text) : 0;
        if (code != 0x61C && !(code >= 0x200C && code <= 0x200F) && !text_code_invisible(code)) {
            break;
        }
        text += bytes;
    }
    return text;
}

/* How long the blank is that stands there, of whatever width; 0 for none. */
static size_t blank_at(const char *text)
{
    static const char *const blanks[] = {
        "\xC2\xA0" /* that does not break */,    "\xE1\x9A\x80", "\xE2\x80\xAF", "\xE2\x81\x9F",
        "\xE2\xA0\x80" /* braille of no dots */, "\xE3\x80\x80"};
    if ((unsigned char)*text < 0x80) { /* nearly every one */
        return *text == ' ' || *text == '\t';
    }
    for (size_t i = 0; i < sizeof blanks / sizeof blanks[0]; i++) {
        if (strncmp(text, blanks[i], strlen(blanks[i])) == 0) {
            return strlen(blanks[i]);
        }
    }
    /* U+2000 to U+200A */
    return strncmp(text, "\xE2\x80", 2) == 0 && (unsigned char)text[2] >= 0x80 && (unsigned char)text[2] <= 0x8A ? 3
                                                                                                                 : 0;
}

/* The next byte that is seen, blanks as one plain one, at the end as none: papers show no more of them. */
static unsigned char seen_next(const char **text)
{
    bool blank = false;
    const char *at = seen_from(*text);
    for (size_t length = blank_at(at); length > 0; length = blank_at(at)) {
        blank = true;
        at = seen_from(at + length);
    }
    *text = at;
    if (blank && *at != '\0') {
        return ' ';
    }
    *text += *at != '\0';
    return (unsigned char)*at;
}

/* Neither a blank nor unseen, as nearly every one. */
static bool seen_plainly(char byte)
{
    return (byte > ' ' && byte < 0x7F) || byte == '\0';
}

int text_order_seen(const char *a, const char *b)
{
    for (;;) {
        for (; seen_plainly(*a) && seen_plainly(*b); a++, b++) {
            if (*a != *b || *a == '\0') {
                return *a - *b;
            }
        }
        const unsigned char one = seen_next(&a), other = seen_next(&b);
        if (one != other || one == '\0') {
            return one - other;
        }
    }
}
