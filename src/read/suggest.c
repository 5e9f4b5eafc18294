/* "Did you mean": the nearest allowed word, by the number of letters to change. Only when it is near enough that a slip
 * of the pen explains it; a wrong suggestion is worse than none. */
#include "read_private.h"

#include "read.h"
#include <string.h>

enum { LONGEST = 40 };

/* Letter case, and what people write for a hyphen, do not count as a difference. */
static char folded(char c)
{
    if (c >= 'A' && c <= 'Z') {
        return (char)(c - 'A' + 'a');
    }
    if (c == '_' || c == ' ') {
        return '-';
    }
    return c;
}

static size_t smaller(size_t a, size_t b)
{
    return a < b ? a : b;
}

/* Folded letters, one byte for each character; more than LONGEST when the text is longer than that. */
static size_t letters_of(const char *text, char letters[LONGEST])
{
    size_t count = 0;
    for (; *text != '\0' && count <= LONGEST; text++) {
        if (((unsigned char)*text & 0xC0) == 0x80) {
            continue; /* inside a character */
        }
        if (count < LONGEST) {
            letters[count] = folded(*text);
        }
        count++;
    }
    return count;
}

size_t suggest_distance(const char *left, const char *right, size_t most)
{
    char a[LONGEST];
    char b[LONGEST];
    size_t rows = letters_of(left, a);
    size_t columns = letters_of(right, b);
    if (rows > LONGEST || columns > LONGEST || rows > columns + most || columns > rows + most) {
        return most + 1;
    }
    size_t cost[3][LONGEST + 1]; /* the two rows above and this one, in turn */
    for (size_t j = 0; j <= columns; j++) {
        cost[0][j] = j;
    }
    for (size_t i = 1; i <= rows; i++) {
        size_t *row = cost[i % 3];
        const size_t *above = cost[(i - 1) % 3];
        const size_t *above2 = cost[(i + 1) % 3];
        row[0] = i;
        for (size_t j = 1; j <= columns; j++) {
            bool same = a[i - 1] == b[j - 1];
            row[j] = smaller(smaller(above[j], row[j - 1]) + 1, above[j - 1] + (same ? 0 : 1));
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = smaller(row[j], above2[j - 2] + 1);
            }
        }
    }
    size_t result = cost[rows % 3][columns];
    return result > most ? most + 1 : result;
}

/* Letter case, hyphens, underlines and spaces left out nothing differs: "tncs", "TNC-S". */
static bool same_but_for_hyphens(const char *written, const char *word)
{
    for (;;) {
        while (folded(*written) == '-') {
            written++;
        }
        while (folded(*word) == '-') {
            word++;
        }
        if (folded(*written) != folded(*word)) {
            return false;
        }
        if (*written == '\0') {
            return true;
        }
        written++;
        word++;
    }
}

static bool begins_with(const char *written, const char *word)
{
    size_t length = strlen(word);
    for (size_t i = 0; i < length; i++) {
        if (folded(written[i]) != folded(word[i])) {
            return false;
        }
    }
    return length > 2 && (written[length] == ' ' || written[length] == '(');
}

/* "surge" for surge-protection, "rod-length" for length: one is a part of the other between its hyphens. */
static bool is_part_of(const char *part, const char *whole)
{
    enum { TELLING = 5 }; /* letters; shorter parts are in many words */
    const size_t length = strlen(part);
    for (const char *at = whole; length >= TELLING && *at != '\0'; at++) {
        size_t same = 0;
        while (same < length && folded(at[same]) == folded(part[same])) {
            same++;
        }
        if (same == length && (at == whole || at[-1] == '-') && (at[length] == '\0' || at[length] == '-')) {
            return true;
        }
    }
    return false;
}

const char *suggest_near(const char *written, const void *list, size_t count, suggest_word *word)
{
    const char *starts = NULL; /* "BS5467 SWA", "length (m)": a word and more */
    const char *part = NULL;
    size_t length = utf8_count(written);
    size_t most = length < 3 ? 0 : length < 6 ? 1 : length < 9 ? 2 : 3;
    const char *nearest = NULL;
    size_t best = most + 1;
    for (size_t i = 0; i < count; i++) {
        const char *candidate = word(list, i);
        if (candidate != NULL && same_but_for_hyphens(written, candidate)) {
            return candidate;
        }
    }
    for (size_t i = 0; i < count; i++) {
        const char *candidate = word(list, i);
        size_t distance = candidate != NULL ? suggest_distance(written, candidate, most) : most + 1;
        if (distance < best) {
            best = distance;
            nearest = candidate;
        }
        if (candidate != NULL && begins_with(written, candidate)) {
            starts = candidate;
        }
        if (candidate != NULL && part == NULL && (is_part_of(written, candidate) || is_part_of(candidate, written))) {
            part = candidate;
        }
    }
    return nearest != NULL ? nearest : starts != NULL ? starts : part;
}

static const char *word_at(const void *list, size_t index)
{
    const char *const *words = list;
    return words[index];
}

const char *read_nearest(const char *written, const char *const *words, size_t count)
{
    const char *nearest = suggest_near(written, words, count, word_at);
    return nearest != NULL ? nearest : "";
}
