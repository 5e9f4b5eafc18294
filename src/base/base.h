/** The ground floor: memory, text and numbers. Knows nothing of cables.
 *
 * One Arena holds everything that a plan needs and is freed once. When memory
 * cannot be had the arena remembers it; text functions then give "" and struct
 * allocations give NULL, and the caller that owns the arena asks arena_failed()
 * before anything is believed. */
#ifndef WEND_BASE_H
#define WEND_BASE_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#if defined(__GNUC__)
#define WEND_UNUSED_WARNS        __attribute__((warn_unused_result))
#define WEND_PRINTF(text, first) __attribute__((format(printf, text, first)))
#else
#define WEND_UNUSED_WARNS
#define WEND_PRINTF(text, first)
#endif

/** A place in the route file. Both count from 1; columns count characters. 0 means "no place". */
struct Mark {
    int line;
    int column;
};

/** How sure a figure or a clause is. What rests on common practice has no source at all. */
enum Trust { TRUST_PUBLISHED, TRUST_PARTLY_FROM_MEMORY, TRUST_FROM_MEMORY, TRUST_COMMON_PRACTICE };

/** A length of bytes that need not end in NUL; the bytes belong to whoever made it. */
struct Bytes {
    const char *data;
    size_t length;
};

struct Arena;

/** A new, empty arena, or NULL when there is no memory. The caller frees it. */
struct Arena *arena_new(void);
/** The same for little: it takes memory by blocks of so many bytes. */
struct Arena *arena_new_of(size_t block_bytes);
/** Apart from `of`, for what is wanted only while something is made: the caller frees it. `of` remembers its failures
 * too. NULL when there is no memory. */
struct Arena *arena_apart(struct Arena *of);
/** Frees everything ever allocated from it. NULL is allowed. */
void arena_free(struct Arena *arena);
/** True once an allocation has failed; it stays true. */
bool arena_failed(const struct Arena *arena);
/** Somebody else lacked memory for what was to go into the arena: arena_failed() turns true. */
void arena_lacks(struct Arena *arena);
/** After `allocations` more blocks every further one fails; for failure tests. -1: never (the default). */
void arena_fail_after(struct Arena *arena, long allocations);
/** An arena within this one, for what is wanted for a moment only: each call empties it, so what was made in it before
 * the call is gone. It is freed with `arena`, which remembers its failures too. NULL when there is no memory. */
struct Arena *arena_scratch(struct Arena *arena) WEND_UNUSED_WARNS;
/** Zeroed memory aligned for any type, or NULL (and arena_failed() turns true). Without an arena nothing is kept: NULL,
 * and "" of text. */
void *arena_alloc(struct Arena *arena, size_t size);
/** Zeroed array of `count` times `size` bytes; NULL also when the product overflows. */
void *arena_array(struct Arena *arena, size_t count, size_t size);
/** A NUL-terminated copy; "" when memory fails. */
const char *arena_text(struct Arena *arena, const char *bytes, size_t length);
/** printf into the arena; "" when memory fails. No %f: numbers go through number_text(). */
const char *arena_print(struct Arena *arena, const char *format, ...) WEND_PRINTF(2, 3);

/** Text that grows, kept in an arena. Zero `arena` never; start with text_builder(). */
struct TextBuilder {
    struct Arena *arena;
    char *data;
    size_t length;
    size_t room;
    bool failed;
};
struct TextBuilder text_builder(struct Arena *arena);
void text_add(struct TextBuilder *builder, const char *text);
void text_add_bytes(struct TextBuilder *builder, const char *bytes, size_t length);
void text_add_char(struct TextBuilder *builder, char character);
/** Appends printf output; no %f (see number_add()). */
void text_print(struct TextBuilder *builder, const char *format, ...) WEND_PRINTF(2, 3);
/** The text so far, NUL-terminated; "" when memory failed. Valid until the next addition. */
const char *text_done(struct TextBuilder *builder);

/** Fixed decimals, half away from zero, point as decimal sign whatever the locale, never "-0".
 * decimals 0..9. Values that are not finite print as "?" (plan_check refuses them before that). */
void number_add(struct TextBuilder *builder, double value, int decimals);
const char *number_text(struct Arena *arena, double value, int decimals);
/** As many decimals as are needed to keep `digits` significant digits (1..12), trailing zeros cut. */
const char *number_significant(struct Arena *arena, double value, int digits);
/** Reads a whole strict decimal number: optional minus, digits, optional point and digits. No sign +, no
 * exponent, no hex, no "inf", no leading zeros before a digit ("08"), at most 15 digits in all.
 * True only when all of `length` bytes were used; `*out` is then finite. */
bool number_read(const char *bytes, size_t length, double *out) WEND_UNUSED_WARNS;

/** Number of bytes of the UTF-8 character at `bytes` (1..4), 0 when it is not well formed UTF-8. */
int utf8_length(const char *bytes, size_t length);
/** The code point at `bytes`; only call where utf8_length() gave non-zero. */
unsigned long utf8_code(const char *bytes);
/** Characters (code points) in a NUL-terminated well formed text. */
size_t utf8_count(const char *text);

/** a == b for NUL-terminated texts. */
static inline bool text_same(const char *a, const char *b)
{
    return *a == *b && strcmp(a, b) == 0; /* most differ at once */
}
/** Reverses the direction of text. */
bool text_code_turns(unsigned long code);
/** Cannot be seen, and no script needs it. */
bool text_code_invisible(unsigned long code);
/** No text of a route may hold it: the two above and controls, but line breaks and tabs. */
bool text_code_refused(unsigned long code);
/** Orders two texts by their bytes, less what a reader does not see (U+061C, U+200C to U+200F and all that is refused
 * as invisible), blanks of any width as one, and none at the end: 0 where both look the same. */
int text_order_seen(const char *a, const char *b);

#endif
