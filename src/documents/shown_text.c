/* Names are free text: they may hold right-to-left marks, joined pictures, combining accents. What a reader sees must
 * be what is there, and columns must line up. */
#include "documents.h"
#include "shown_private.h"
#include "words/words.h"

#include <math.h>
#include <string.h>

struct CodeRange {
    unsigned long first, last;
};

static bool in_ranges(unsigned long code, const struct CodeRange *ranges, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (code >= ranges[i].first && code <= ranges[i].last) {
            return true;
        }
    }
    return false;
}

/* Direction marks and other characters without a picture of their own. The two joiners stay: scripts need them. */
static bool is_hidden(unsigned long code)
{
    static const struct CodeRange hidden[] = {
        {0xAD, 0xAD},     {0x61C, 0x61C},   {0x180E, 0x180E}, {0x200B, 0x200B}, {0x200E, 0x200F},   {0x202A, 0x202E},
        {0x2060, 0x206F}, {0xFEFF, 0xFEFF}, {0xFFF9, 0xFFFB}, {0xFFFE, 0xFFFF}, {0xE0000, 0xE007F},
    };
    return in_ranges(code, hidden, sizeof hidden / sizeof hidden[0]);
}

/* Combining marks of the scripts met most; what is missing here costs alignment, not sense. */
static bool is_combining(unsigned long code)
{
    static const struct CodeRange combining[] = {
        {0x300, 0x36F},     {0x483, 0x489},     {0x591, 0x5BD},   {0x5BF, 0x5BF},   {0x5C1, 0x5C2},   {0x5C4, 0x5C5},
        {0x610, 0x61A},     {0x64B, 0x65F},     {0x670, 0x670},   {0x6D6, 0x6DC},   {0x6DF, 0x6E4},   {0x6E7, 0x6E8},
        {0x6EA, 0x6ED},     {0x730, 0x74A},     {0x900, 0x902},   {0x93C, 0x93C},   {0x941, 0x948},   {0x94D, 0x94D},
        {0x9BC, 0x9BC},     {0x9CD, 0x9CD},     {0xE31, 0xE31},   {0xE34, 0xE3A},   {0xE47, 0xE4E},   {0x1AB0, 0x1AFF},
        {0x1DC0, 0x1DFF},   {0x200C, 0x200D},   {0x20D0, 0x20FF}, {0x3099, 0x309A}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F},
        {0x1F3FB, 0x1F3FF}, {0xE0100, 0xE01EF},
    };
    return in_ranges(code, combining, sizeof combining / sizeof combining[0]);
}

static bool is_wide(unsigned long code)
{
    static const struct CodeRange wide[] = {
        {0x1100, 0x115F}, {0x231A, 0x231B},   {0x2329, 0x232A},   {0x23E9, 0x23EC},   {0x23F0, 0x23F3},
        {0x25FD, 0x25FE}, {0x2614, 0x2615},   {0x2648, 0x2653},   {0x267F, 0x267F},   {0x2693, 0x2693},
        {0x26A1, 0x26A1}, {0x26AA, 0x26AB},   {0x26BD, 0x26BE},   {0x26C4, 0x26C5},   {0x26D4, 0x26D4},
        {0x26EA, 0x26EA}, {0x26F2, 0x26F5},   {0x26FA, 0x26FD},   {0x2705, 0x2705},   {0x270A, 0x270B},
        {0x2728, 0x2728}, {0x274C, 0x274E},   {0x2753, 0x2757},   {0x2795, 0x2797},   {0x27B0, 0x27BF},
        {0x2B1B, 0x2B1C}, {0x2B50, 0x2B55},   {0x2E80, 0x303E},   {0x3041, 0x4DBF},   {0x4E00, 0xA4CF},
        {0xA960, 0xA97F}, {0xAC00, 0xD7A3},   {0xF900, 0xFAFF},   {0xFE30, 0xFE6F},   {0xFF00, 0xFF60},
        {0xFFE0, 0xFFE6}, {0x1F000, 0x1F3FA}, {0x1F400, 0x1FAFF}, {0x20000, 0x3FFFD},
    };
    return in_ranges(code, wide, sizeof wide / sizeof wide[0]);
}

const char *shown_text(struct Arena *arena, const char *text)
{
    struct TextBuilder shown = text_builder(arena);
    size_t length = text == NULL ? 0 : strlen(text);
    for (size_t at = 0; at < length;) {
        const size_t from = at;
        while (at < length && text[at] >= 0x20 && text[at] < 0x7F) {
            at++;
        }
        text_add_bytes(&shown, text + from, at - from);
        if (at == length) {
            break;
        }
        int bytes = utf8_length(text + at, length - at);
        unsigned long code = bytes == 0 ? 0xFFFD : utf8_code(text + at);
        if (bytes == 0) {
            text_add(&shown, "\xEF\xBF\xBD");
            bytes = 1;
        } else if (code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x2028 || code == 0x2029) {
            text_add_char(&shown, ' ');
        } else if (!is_hidden(code)) {
            text_add_bytes(&shown, text + at, (size_t)bytes);
        }
        at += (size_t)bytes;
    }
    return text_done(&shown);
}

int shown_code_columns(unsigned long code)
{
    return code < 0x300 ? 1 : is_combining(code) ? 0 : is_wide(code) ? 2 : 1;
}

/* Well formed text only, so a character's length may be asked without knowing what is left. */
static size_t bytes_at(const char *text)
{
    int bytes = utf8_length(text, strnlen(text, 4));
    return bytes == 0 ? 1 : (size_t)bytes;
}

size_t shown_step(const char *text)
{
    if (*text == '\0') {
        return 0;
    }
    size_t at = bytes_at(text);
    bool joined = utf8_code(text) == 0x200D;
    while (text[at] != '\0') {
        unsigned long code = utf8_code(text + at);
        if (!joined && shown_code_columns(code) != 0) {
            break;
        }
        joined = code == 0x200D; /* what follows a joiner belongs to the same picture */
        at += bytes_at(text + at);
    }
    return at;
}

static int step_columns(const char *text, size_t bytes)
{
    int columns = 0;
    for (size_t at = 0; at < bytes; at += bytes_at(text + at)) {
        columns += shown_code_columns(utf8_code(text + at));
    }
    return columns;
}

int shown_columns(const char *text)
{
    return step_columns(text, strlen(text));
}

const char *shown_cut(struct Arena *arena, const char *text, int columns)
{
    if (shown_columns(text) <= columns) {
        return text;
    }
    size_t kept = 0;
    int used = 1; /* the ellipsis */
    for (size_t step = shown_step(text); step > 0; step = shown_step(text + kept)) {
        used += step_columns(text + kept, step);
        if (used > columns) {
            break;
        }
        kept += step;
    }
    while (kept > 0 && text[kept - 1] == ' ') {
        kept--;
    }
    return arena_print(arena, "%.*s\xE2\x80\xA6", (int)kept, text);
}

size_t shown_line(const char *text, int columns, size_t *next)
{
    size_t at = 0, blank = 0;
    int used = 0;
    for (size_t step = shown_step(text); step > 0; step = shown_step(text + at)) {
        int wide = step_columns(text + at, step);
        if (text[at] == ' ') {
            blank = at;
        }
        if (used + wide > columns && at > 0) {
            size_t end = text[at] == ' ' ? at : blank > 0 ? blank : at;
            *next = end;
            while (text[*next] == ' ') {
                (*next)++;
            }
            return end;
        }
        used += wide;
        at += step;
    }
    *next = at;
    return at;
}

static const struct Words plain = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};

static bool allowed_in_xml(unsigned long code)
{
    return code == '\t' || code == '\n' || (code >= 0x20 && code != 0x7F && code < 0xFFFE) || code >= 0x10000;
}

/* As far as it can stay as it is. */
static size_t clean_length(const char *text, size_t length)
{
    size_t at = 0;
    while (at < length) {
        if (text[at] >= 0x20 && text[at] < 0x7F) {
            at++;
            continue;
        }
        const int bytes = utf8_length(text + at, length - at);
        if (bytes == 0 || !allowed_in_xml(utf8_code(text + at))) {
            break;
        }
        at += (size_t)bytes;
    }
    return at;
}

/* The reader lets only clean text in; a plan built by other means may not be as clean. */
const char *shown_clean(struct Arena *arena, const char *text)
{
    const size_t length = strlen(text);
    size_t at = clean_length(text, length);
    if (at == length) {
        return text;
    }
    struct TextBuilder clean = text_builder(arena);
    text_add_bytes(&clean, text, at);
    while (at < length) {
        const int bytes = utf8_length(text + at, length - at);
        text_add(&clean, "\xEF\xBF\xBD");
        at += bytes == 0 ? 1 : (size_t)bytes;
        const size_t good = clean_length(text + at, length - at);
        text_add_bytes(&clean, text + at, good);
        at += good;
    }
    return text_done(&clean);
}

const char *shown_said(struct Arena *arena, const struct Say *said)
{
    return arena == NULL ? "" : words_said(arena, &plain, said);
}

const char *shown_unit(struct Arena *arena, enum Unit unit)
{
    if (arena == NULL) { /* the document was lost already */
        return "";
    }
    struct TextBuilder text = text_builder(arena);
    for (const char *at = words_unit(&plain, unit); *at != '\0'; at++) {
        text_add(&text, *at == ' ' ? "" : (const char[]){*at, '\0'});
    }
    return text_done(&text);
}

const char *shown_figure(struct Arena *arena, double value)
{
    enum { DIGITS = 9 };
    static const double large = 1e9;
    if (fabs(value) >= large && fabs(value) < 1e15) { /* what a conductor withstands in A2s goes beyond number_text() */
        return arena_print(arena, "%lld", llround(value));
    }
    return number_significant(arena, value, DIGITS);
}

const char *shown_size(struct Arena *arena, const struct PlanRun *run)
{
    return run->size_mm2 > 0 ? shown_said(arena, say(arena, SAY_AS_IS, say_digits(run->size_mm2, 4, UNIT_MM2))) : "";
}

const char *shown_uses(struct Arena *arena, const struct Part *part)
{
    return shown_said(arena, parts_uses_said(arena, part->use_count, part->uses));
}

const char *shown_result(struct Arena *arena, const struct Step *step)
{
    return shown_said(arena, say_alone(arena, step->result));
}

const char *document_words(struct Arena *arena, const struct Say *said)
{
    return shown_said(arena, said);
}

static struct SayArg whole_centimetres(double length_m)
{
    return say_digits(floor(length_m * 100 + 0.5) / 100, 9, UNIT_M);
}

const struct Say *landmark_place_said(struct Arena *arena, const struct Landmark *landmark)
{
    const struct SayArg at = whole_centimetres(landmark->at_m.value), off = whole_centimetres(landmark->off_m.value);
    return !landmark->side_given || landmark->off_m.value <= 0
               ? say(arena, SAY_MARK_ON, at)
               : say(arena, landmark->side == SIDE_LEFT ? SAY_MARK_LEFT : SAY_MARK_RIGHT, at, off);
}
