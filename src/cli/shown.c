/* Names and words as a terminal may show them. */
#include "cli_private.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The bytes of the character of UTF-8 that begins here; 0: none does. */
static size_t character(const unsigned char *at, unsigned long *code)
{
    static const unsigned long least[] = {0, 0x80, 0x800, 0x10000};
    const size_t more = *at >= 0xF0 ? 3 : *at >= 0xE0 ? 2 : *at >= 0xC0 ? 1 : 0;
    *code = more == 0 ? *at : *at & (0x3Fu >> more);
    for (size_t i = 1; i <= more; i++) {
        if ((at[i] & 0xC0) != 0x80) {
            return 0;
        }
        *code = *code << 6 | (at[i] & 0x3F);
    }
    const bool good = *code >= least[more] && *code <= 0x10FFFF && !(*code >= 0xD800 && *code <= 0xDFFF);
    return good && (more > 0 || *at < 0x80) ? more + 1 : 0;
}

/* What a terminal acts on, or what turns the text round: an answer that repeats it could show what is not so. A byte
 * that belongs to no character is one too where it is a control in the sets of eight bits. */
bool may_be_shown(const char *text)
{
    unsigned long code = 0;
    for (const unsigned char *at = (const unsigned char *)text; *at != '\0';) {
        const size_t bytes = character(at, &code);
        code = bytes == 0 ? *at : code;
        if (code < 0x20 || (code >= 0x7F && code <= 0x9F) || (code >= 0x2028 && code <= 0x202E) ||
            (code >= 0x2066 && code <= 0x2069)) {
            return false;
        }
        at += bytes == 0 ? 1 : bytes;
    }
    return true;
}

static void put_shown(FILE *stream, const char *text)
{
    static const char no_character[] = "\xEF\xBF\xBD"; /* U+FFFD, as in what the library makes */
    unsigned long code = 0;
    for (const unsigned char *at = (const unsigned char *)text; *at != '\0';) {
        const size_t bytes = character(at, &code);
        fwrite(bytes == 0 ? (const void *)no_character : at, 1, bytes == 0 ? strlen(no_character) : bytes, stream);
        at += bytes == 0 ? 1 : bytes;
    }
}

void print_shown(FILE *stream, const char *format, ...)
{
    char line[1024];
    va_list words;
    va_start(words, format);
    /* NOLINTNEXTLINE(clang-analyzer-valist.Uninitialized): what it misses is the line before */
    const int length = vsnprintf(line, sizeof line, format, words);
    va_end(words);
    char *longer = length >= (int)sizeof line ? malloc((size_t)length + 1) : NULL;
    if (longer != NULL) {
        va_start(words, format);
        vsnprintf(longer, (size_t)length + 1, format, words);
        va_end(words);
    }
    put_shown(stream, longer != NULL ? longer : line); /* without memory its beginning */
    free(longer);
}
