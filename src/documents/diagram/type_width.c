/* How wide text is. The reader's machine chooses the typeface, so the widest of the common sans-serif faces is taken
 * for each letter: text then never needs more room than was kept for it.
 * Widths were read from the font files of two free faces, regular and bold, in hundredths of the type's size. */
#include "drawing_private.h"

#include "documents/shown_private.h"

#include <math.h>
#include <string.h>

enum { FIRST_LETTER = 0x20, LAST_LETTER = 0x7E, LATIN_END = 0x17F };

/* From the blank to the tilde. */
static const unsigned char plain_width[] = {
    32, 41, 46, 84, 64, 96, 78, 28, 40,  40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64,
    64, 64, 34, 34, 84, 84, 84, 56, 102, 69, 69, 73, 78, 67, 62, 78, 76, 30, 50, 67, 56, 87, 75, 79,
    67, 79, 73, 67, 62, 74, 69, 99, 69,  67, 69, 40, 34, 40, 84, 56, 50, 62, 64, 55, 64, 62, 36, 64,
    64, 28, 28, 58, 28, 98, 64, 62, 64,  64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84};
static const unsigned char bold_width[] = {
    35, 46, 53, 84, 70, 101, 88, 31,  46,  46, 53, 84, 38, 42, 38, 37, 70, 70, 70, 70, 70, 70,  70, 70,
    70, 70, 40, 40, 84, 84,  84, 62,  100, 78, 77, 74, 84, 69, 69, 83, 84, 38, 56, 78, 64, 100, 84, 86,
    74, 86, 78, 73, 69, 82,  78, 111, 78,  73, 73, 46, 37, 46, 84, 56, 50, 68, 72, 60, 72, 68,  44, 72,
    72, 35, 35, 67, 35, 105, 72, 69,  72,  72, 50, 60, 48, 72, 66, 93, 65, 66, 59, 72, 37, 72,  84};

_Static_assert(sizeof plain_width == LAST_LETTER - FIRST_LETTER + 1, "one width a letter");
_Static_assert(sizeof bold_width == LAST_LETTER - FIRST_LETTER + 1, "one width a letter");

/* Polish letters, of the same fonts. */
static const struct AccentWidth {
    unsigned short code;
    unsigned char plain, bold;
} polish_width[] = {
    {0xD3, 79, 86},  {0xF3, 62, 69},  {0x104, 69, 78}, {0x105, 62, 68}, {0x106, 73, 74}, {0x107, 55, 60},
    {0x118, 67, 69}, {0x119, 62, 68}, {0x141, 57, 65}, {0x142, 29, 38}, {0x143, 75, 84}, {0x144, 64, 72},
    {0x15A, 67, 73}, {0x15B, 53, 60}, {0x179, 69, 73}, {0x17A, 53, 59}, {0x17B, 69, 73}, {0x17C, 53, 59},
};

static const struct AccentWidth *accent_width(unsigned long code)
{
    for (size_t i = 0; i < sizeof polish_width / sizeof polish_width[0]; i++) {
        if (polish_width[i].code == code) {
            return &polish_width[i];
        }
    }
    return NULL;
}

/* Signs beyond Latin letters that both faces have and the program itself writes. */
static bool is_common_sign(unsigned long code)
{
    return (code >= 0x2012 && code <= 0x2014) || (code >= 0x2018 && code <= 0x201E) || code == 0x2022 ||
           code == 0x2026 || code == 0x2212 || code == 0x03A9;
}

static bool letter_known(unsigned long code)
{
    return (code >= FIRST_LETTER && code <= LAST_LETTER) || (code >= 0xA0 && code <= LATIN_END) || is_common_sign(code);
}

static double letter_width(unsigned long code, bool bold)
{
    if (code >= FIRST_LETTER && code <= LAST_LETTER) {
        int hundredths = bold ? bold_width[code - FIRST_LETTER] : plain_width[code - FIRST_LETTER];
        return hundredths / 100.0;
    }
    const struct AccentWidth *accent = accent_width(code);
    if (accent != NULL) {
        return (bold ? accent->bold : accent->plain) / 100.0;
    }
    switch (code) {
    case 0xA0: return bold ? 0.35 : 0.32; /* the blank that does not break */
    case 0xB7: return bold ? 0.38 : 0.34; /* middle dot */
    case 0xB2:                            /* superscript two */
    case 0xB0: return 0.5;                /* degree */
    default: break;
    }
    if (code <= LATIN_END || is_common_sign(code)) {
        return bold ? 1.17 : 1.07;
    }
    /* Unknown scripts are forced into the room that is kept, so this only has to look right. */
    return shown_code_columns(code) == 0 ? 0 : shown_code_columns(code) == 2 ? 1.2 : 0.9;
}

static size_t code_bytes(const char *text)
{
    int bytes = utf8_length(text, strnlen(text, 4));
    return bytes == 0 ? 1 : (size_t)bytes;
}

static double bytes_width(const char *text, size_t length, bool bold)
{
    double width = 0;
    for (size_t at = 0; at < length && text[at] != '\0'; at += code_bytes(text + at)) {
        width += letter_width(utf8_code(text + at), bold);
    }
    return width;
}

double type_width_mm(const char *text, double size_mm, bool bold)
{
    return size_mm * bytes_width(text, strlen(text), bold);
}

bool type_known(const char *text)
{
    for (; *text != '\0'; text += code_bytes(text)) {
        if (!letter_known(utf8_code(text))) {
            return false;
        }
    }
    return true;
}

/* Bytes of `text` that fit into `width_mm`, in whole characters. */
static size_t fitting(const char *text, struct TextStyle style, double width_mm)
{
    size_t at = 0;
    double used = 0;
    for (size_t step = shown_step(text); step > 0; step = shown_step(text + at)) {
        used += style.size_mm * bytes_width(text + at, step, style.bold);
        if (used > width_mm) {
            break;
        }
        at += step;
    }
    return at;
}

const char *type_cut(struct Arena *arena, const char *text, struct TextStyle style, double width_mm)
{
    if (type_width_mm(text, style.size_mm, style.bold) <= width_mm) {
        return text;
    }
    double ellipsis_mm = style.size_mm * letter_width(0x2026, style.bold);
    size_t kept = fitting(text, style, width_mm - ellipsis_mm);
    size_t whole = kept; /* words, where one ends in the second half of what fits */
    while (whole > kept / 2 && text[whole] != ' ') {
        whole--;
    }
    kept = text[whole] == ' ' ? whole : kept;
    while (kept > 0 && text[kept - 1] == ' ') {
        kept--;
    }
    return arena_print(arena, "%.*s\xE2\x80\xA6", (int)kept, text);
}

static size_t blank_bytes(const char *text)
{
    return *text == ' ' ? 1 : strncmp(text, "\xC2\xA0", 2) == 0 ? 2 : 0;
}

static bool is_digit(char character)
{
    return character >= '0' && character <= '9';
}

/* Where a line may end: at the last blank that fits, else at the last blank that is meant not to break, else anywhere;
 * behind the last hyphen only of a word that is wider than a line, and not that of BW-25 or 2-pole. */
static size_t line_end(const char *text, size_t fit, struct TextStyle style, double width_mm)
{
    if (text[fit] == '\0' || text[fit] == ' ') {
        return fit;
    }
    size_t word = fit;
    while (word > 0 && text[word - 1] != ' ') {
        word--;
    }
    if (word > 0 && style.size_mm * bytes_width(text + word, strcspn(text + word, " "), style.bold) <= width_mm) {
        return word - 1;
    }
    for (size_t at = fit; at > word; at--) {
        if (text[at - 1] == '-' && at > 1 && !is_digit(text[at]) && !is_digit(text[at - 2])) {
            return at;
        }
    }
    if (word > 0) {
        return word - 1;
    }
    for (size_t at = fit; at > 2; at--) {
        if (blank_bytes(text + at - 2) == 2) {
            return at - 2;
        }
    }
    return fit;
}

double type_widest_piece_mm(struct Arena *arena, const char *text, double size_mm, bool bold)
{
    double widest_mm = 0;
    while (*text != '\0') {
        size_t length = strcspn(text, " -");
        length += text[length] == '-' ? 1 : 0;
        widest_mm = fmax(widest_mm, type_width_mm(arena_text(arena, text, length), size_mm, bold));
        text += length + strspn(text + length, " ");
    }
    return widest_mm;
}

int type_wrap(struct Arena *arena, const char *text, struct TextStyle style, double width_mm, int most,
              const char **lines)
{
    int count = 0;
    while (*text == ' ') {
        text++;
    }
    while (*text != '\0' && count < most) {
        size_t fit = fitting(text, style, width_mm);
        if (text[fit] == '\0' || count == most - 1) {
            lines[count++] = type_cut(arena, text, style, width_mm);
            break;
        }
        size_t end = line_end(text, fit, style, width_mm);
        if (end == 0) { /* a first character wider than the line */
            end = fit > 0 ? fit : shown_step(text);
        }
        lines[count++] = type_cut(arena, arena_text(arena, text, end), style, width_mm);
        text += end;
        while (blank_bytes(text) > 0) {
            text += blank_bytes(text);
        }
    }
    return count;
}
