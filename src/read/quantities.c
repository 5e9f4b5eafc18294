/* Numbers as they are written in a route: a strict decimal and its unit. What a person or another program may write
 * instead (decimal comma, 0x10, 1e3, 1_000, full-width digits) is told apart, so that the message can say what it is.
 */
#include "read_private.h"

#include <string.h>

struct Spelling {
    enum Measure unit;
    bool listed; /* shown when the accepted units are named */
    const char *text;
    double times, over; /* stored = written * times / over; both exact, so the result is rounded once */
};

#define OMEGA    "\xCE\xA9"     /* Greek capital omega */
#define OHM_SIGN "\xE2\x84\xA6" /* the letter-like sign that looks the same */
#define DEGREE   "\xC2\xB0"
#define DOT      "\xC2\xB7"

static const struct Spelling spellings[] = {
    {MEASURE_METRE, true, "m", 1, 1},
    {MEASURE_METRE, true, "cm", 1, 100},
    {MEASURE_METRE, true, "mm", 1, 1000},
    {MEASURE_MILLIMETRE, true, "mm", 1, 1},
    {MEASURE_MILLIMETRE, true, "cm", 10, 1},
    {MEASURE_MILLIMETRE, true, "m", 1000, 1},
    {MEASURE_DEPTH, true, "mm", 1, 1000},
    {MEASURE_DEPTH, true, "cm", 1, 100},
    {MEASURE_DEPTH, true, "m", 1, 1},
    {MEASURE_MM2, true, "mm2", 1, 1},
    {MEASURE_MM2, true, "mm\xC2\xB2", 1, 1},
    {MEASURE_AMPERE, true, "A", 1, 1},
    {MEASURE_AMPERE, true, "kA", 1000, 1},
    {MEASURE_AMPERE, true, "mA", 1, 1000},
    {MEASURE_FAULT_AMPERE, true, "kA", 1000, 1},
    {MEASURE_FAULT_AMPERE, true, "A", 1, 1},
    {MEASURE_FAULT_AMPERE, false, "mA", 1, 1000},
    {MEASURE_RESIDUAL, true, "mA", 1, 1000},
    {MEASURE_RESIDUAL, true, "A", 1, 1},
    {MEASURE_RESIDUAL, false, "kA", 1000, 1},
    {MEASURE_VOLT, true, "V", 1, 1},
    {MEASURE_WATT, true, "W", 1, 1},
    {MEASURE_WATT, true, "kW", 1000, 1},
    {MEASURE_WATT, true, "kVA", 1000, 1},
    {MEASURE_OHM, true, "ohm", 1, 1},
    {MEASURE_OHM, true, OMEGA, 1, 1},
    {MEASURE_OHM, true, "mohm", 1, 1000},
    {MEASURE_OHM, true, "m" OMEGA, 1, 1000},
    {MEASURE_OHM, false, OHM_SIGN, 1, 1},
    {MEASURE_OHM, false, "m" OHM_SIGN, 1, 1000},
    {MEASURE_OHM_METRE, true, "ohm.m", 1, 1},
    {MEASURE_OHM_METRE, true, OMEGA DOT "m", 1, 1},
    {MEASURE_OHM_METRE, false, OHM_SIGN DOT "m", 1, 1},
    {MEASURE_K_M_PER_W, true, "K.m/W", 1, 1},
    {MEASURE_K_M_PER_W, true, "K" DOT "m/W", 1, 1},
    {MEASURE_DEGC, true, "degC", 1, 1},
    {MEASURE_DEGC, true, DEGREE "C", 1, 1},
    {MEASURE_PERCENT, true, "%", 1, 1},
    {MEASURE_RATIO, true, "%", 1, 100},
    {MEASURE_DEGREE, true, "deg", 1, 1},
    {MEASURE_A2S, true, "A2s", 1, 1},
    {MEASURE_A2S, true, "A\xC2\xB2s", 1, 1},
    {MEASURE_A2S, false, "A2 s", 1, 1},
    {MEASURE_MINUTE, true, "min", 1, 1},
    {MEASURE_MINUTE, true, "h", 60, 1},
    {MEASURE_MINUTE, true, "s", 1, 60},
    {MEASURE_MEGOHM, true, "Mohm", 1, 1},
    {MEASURE_MEGOHM, true, "M" OMEGA, 1, 1},
    {MEASURE_MEGOHM, true, "Gohm", 1000, 1},
    {MEASURE_MEGOHM, true, "kohm", 1, 1000},
    {MEASURE_MEGOHM, false, "G" OMEGA, 1000, 1},
    {MEASURE_MEGOHM, false, "k" OMEGA, 1, 1000},
    {MEASURE_MEGOHM, false, "M" OHM_SIGN, 1, 1},
    {MEASURE_TIME, true, "ms", 1, 1000},
    {MEASURE_TIME, true, "s", 1, 1},
};
enum { SPELLINGS = sizeof spellings / sizeof spellings[0] };

/* The first spelling of a kind is the one that messages show. */
static const struct Spelling *shown_spelling(enum Measure unit)
{
    for (size_t i = 0; i < SPELLINGS; i++) {
        if (spellings[i].unit == unit) {
            return &spellings[i];
        }
    }
    return NULL;
}

static const struct Spelling *find_spelling(enum Measure unit, const char *text)
{
    for (size_t i = 0; i < SPELLINGS; i++) {
        if (spellings[i].unit == unit && text_same(spellings[i].text, text)) {
            return &spellings[i];
        }
    }
    return NULL;
}

static const struct Spelling *spelling_at(enum Measure unit, int index)
{
    for (size_t i = 0; i < SPELLINGS; i++) {
        if (spellings[i].unit == unit && index-- == 0) {
            return &spellings[i];
        }
    }
    return NULL;
}

const char *quantity_spelling(enum Measure unit, int index)
{
    const struct Spelling *spelling = spelling_at(unit, index);
    return spelling != NULL ? spelling->text : NULL;
}

double quantity_spelling_worth(enum Measure unit, int index)
{
    const struct Spelling *spelling = spelling_at(unit, index);
    return spelling != NULL ? spelling->times / spelling->over : 1;
}

const char *quantity_unit(enum Measure unit)
{
    const struct Spelling *spelling = shown_spelling(unit);
    return spelling != NULL ? spelling->text : "";
}

const char *quantity_show(struct Arena *arena, double value, enum Measure unit)
{
    const struct Spelling *spelling = shown_spelling(unit == MEASURE_DEPTH && value >= 1 ? MEASURE_METRE : unit);
    if (spelling == NULL) {
        return number_significant(arena, value, 9);
    }
    const char *number = number_significant(arena, value * spelling->over / spelling->times, 9);
    return arena_print(arena, "%s %s", number, spelling->text);
}

const char *quantity_units(struct Arena *arena, enum Measure unit)
{
    size_t left = 0;
    for (size_t i = 0; i < SPELLINGS; i++) {
        left += spellings[i].unit == unit && spellings[i].listed;
    }
    struct TextBuilder list = text_builder(arena);
    for (size_t i = 0; i < SPELLINGS; i++) {
        if (spellings[i].unit != unit || !spellings[i].listed) {
            continue;
        }
        text_add(&list, spellings[i].text);
        left--;
        text_add(&list, left > 1 ? ", " : left == 1 ? " or " : "");
    }
    return text_done(&list);
}

const char *quantity_example(enum Measure unit)
{
    static const char *const examples[MEASURE_COUNT] = {
        [MEASURE_NONE] = "",
        [MEASURE_METRE] = "12.4 m",
        [MEASURE_MILLIMETRE] = "50 mm",
        [MEASURE_DEPTH] = "450 mm",
        [MEASURE_MM2] = "6 mm2",
        [MEASURE_AMPERE] = "26 A",
        [MEASURE_FAULT_AMPERE] = "1.6 kA",
        [MEASURE_RESIDUAL] = "30 mA",
        [MEASURE_VOLT] = "230 V",
        [MEASURE_WATT] = "6 kW",
        [MEASURE_OHM] = "0.35 ohm",
        [MEASURE_OHM_METRE] = "100 ohm.m",
        [MEASURE_K_M_PER_W] = "2.5 K.m/W",
        [MEASURE_DEGC] = "30 degC",
        [MEASURE_PERCENT] = "3 %",
        [MEASURE_RATIO] = "80 %",
        [MEASURE_DEGREE] = "90 deg",
        [MEASURE_A2S] = "54000 A2s",
        [MEASURE_MINUTE] = "25 min",
        [MEASURE_MEGOHM] = "200 Mohm",
        [MEASURE_TIME] = "28 ms",
    };
    return examples[unit];
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool starts_with(const char *text, const char *start)
{
    return strncmp(text, start, strlen(start)) == 0;
}

static bool is_letter(char c, char lower)
{
    return c == lower || c == lower - 'a' + 'A';
}

static bool same_letters(const char *text, const char *lower)
{
    size_t i = 0;
    while (lower[i] != '\0') {
        if (!is_letter(text[i], lower[i])) {
            return false;
        }
        i++;
    }
    return true;
}

/* Not a plain number from its first character on: why. NULL when it is no kind of number at all. */
static const char *odd_start(const char *text)
{
    const char *bare = *text == '-' || *text == '+' ? text + 1 : text;
    if (starts_with(bare, "\xE2\x88\x92") || starts_with(bare, "\xE2\x80\x93") || starts_with(bare, "\xE2\x80\x94")) {
        return "its minus is not a plain hyphen";
    }
    if (*bare == '.' && is_digit(bare[1])) {
        return "write a 0 before the point";
    }
    if (same_letters(*bare == '.' ? bare + 1 : bare, "inf") || same_letters(*bare == '.' ? bare + 1 : bare, "nan")) {
        return "it is not a finite number";
    }
    if ((unsigned char)*bare >= 0x80) {
        unsigned long code = utf8_code(bare);
        bool full_width = code >= 0xFF10 && code <= 0xFF19;
        bool arabic = (code >= 0x660 && code <= 0x669) || (code >= 0x6F0 && code <= 0x6F9);
        if (full_width || arabic || (code >= 0x966 && code <= 0x96F)) {
            return "its digits are not plain 0 to 9";
        }
    }
    return *text == '+' && is_digit(*bare) ? "leave out the plus sign" : NULL;
}

/* What follows the digits of a number that went well so far; NULL when it may be a unit. */
static const char *odd_rest(const char *text, size_t digits_end)
{
    const char *rest = text + digits_end;
    const char *first = *text == '-' ? text + 1 : text;
    if (*first == '0' && digits_end == (size_t)(first - text) + 1 && (is_letter(*rest, 'x') || is_letter(*rest, 'o'))) {
        return is_letter(*rest, 'x') ? "it is hexadecimal" : "it is octal";
    }
    if (*rest == '_') {
        return "leave out the underscore";
    }
    if (*rest == ':' && is_digit(rest[1])) {
        return "a colon does not belong in a number";
    }
    bool sign = rest[0] != '\0' && (rest[1] == '-' || rest[1] == '+');
    if (is_letter(*rest, 'e') && (is_digit(rest[1]) || (sign && is_digit(rest[2])))) {
        return "write it without an exponent";
    }
    if (*rest == '.') {
        return is_digit(rest[1]) ? "it has two points" : "a digit is missing after the point";
    }
    if (*rest == ' ' && is_digit(rest[strspn(rest, " ")])) {
        return "leave out the space between digits";
    }
    if (starts_with(rest, "\xC2\xA0") || starts_with(rest, "\xE2\x80\xAF")) {
        return "the space in it is not a plain one";
    }
    return NULL;
}

/* "12,4 m" -> "12.4 m"; with three digits behind the comma it may as well part thousands. */
static const char *comma_advice(struct Arena *arena, const char *text, size_t comma, enum Measure kind)
{
    size_t end = comma + 1;
    while (is_digit(text[end])) {
        end++;
    }
    const char *before = arena_text(arena, text, comma);
    const char *after = arena_text(arena, text + comma + 1, end - comma - 1);
    const char *unit = text + end + strspn(text + end, " ");
    unit = *unit != '\0' ? unit : quantity_unit(kind);
    const char *space = *unit != '\0' ? " " : "";
    if (end - comma - 1 == 3) {
        return arena_print(arena, "%s%s%s%s or %s.%s%s%s", before, after, space, unit, before, after, space, unit);
    }
    return arena_print(arena, "%s.%s%s%s", before, after, space, unit);
}

const char *quantity_without_comma(struct Arena *arena, const char *text)
{
    const size_t comma = strcspn(text, ",");
    return text[comma] == '\0' ? text : comma_advice(arena, text, comma, MEASURE_NONE);
}

/* The unit that was most likely meant where none was written: the advice must not turn 0.6 m into 0.6 mm. */
static const char *likely_unit(enum Measure unit, double number)
{
    if (unit == MEASURE_DEPTH) {
        return number < 20 ? "m" : "mm";
    }
    if (unit == MEASURE_FAULT_AMPERE) {
        return number < 200 ? "kA" : "A";
    }
    if (unit == MEASURE_RESIDUAL) {
        return number < 1 ? "A" : "mA";
    }
    if (unit == MEASURE_WATT) {
        return number < 100 ? "kW" : "W";
    }
    return quantity_unit(unit);
}

static struct QuantityRead fault_of(enum QuantityFault fault, const char *reason, const char *advice)
{
    return (struct QuantityRead){.fault = fault, .reason = reason, .advice = advice};
}

static struct QuantityRead read_unit(struct Arena *arena, const char *number, const char *rest, double value,
                                     enum Measure unit)
{
    const char *written = rest + strspn(rest, " ");
    if (unit == MEASURE_NONE) {
        return *written == '\0' ? (struct QuantityRead){.fault = QUANTITY_GOOD, .value = value}
                                : fault_of(QUANTITY_UNIT_NOT_DUE, written, number);
    }
    if (*written == '\0' && unit == MEASURE_RATIO && value > 0 && value <= 1) {
        return fault_of(QUANTITY_NO_UNIT, "",
                        arena_print(arena, "%s %%, or %s %% if so little is meant",
                                    number_significant(arena, 100 * value, 9), number));
    }
    if (*written == '\0') {
        return fault_of(QUANTITY_NO_UNIT, "", arena_print(arena, "%s %s", number, likely_unit(unit, value)));
    }
    const struct Spelling *spelling = find_spelling(unit, written);
    if (spelling != NULL) {
        return (struct QuantityRead){.fault = QUANTITY_GOOD,
                                     .value = value * spelling->times / spelling->over,
                                     .apparent = unit == MEASURE_WATT && text_same(written, "kVA")};
    }
    bool horses = same_letters(written, "hp") || same_letters(written, "bhp");
    return fault_of(horses && unit == MEASURE_WATT ? QUANTITY_HORSEPOWER : QUANTITY_WRONG_UNIT, written, "");
}

const char *read_trimmed(struct Arena *arena, const char *text)
{
    text += strspn(text, " ");
    size_t length = strlen(text);
    while (length > 0 && text[length - 1] == ' ') {
        length--;
    }
    return arena_text(arena, text, length);
}

struct QuantityRead quantity_read(struct Arena *arena, const char *text, enum Measure unit)
{
    text = read_trimmed(arena, text);
    const char *odd = odd_start(text);
    if (odd != NULL) {
        return fault_of(QUANTITY_ODD, odd, "");
    }
    size_t at = *text == '-' ? 1 : 0;
    size_t digits_start = at;
    while (is_digit(text[at])) {
        at++;
    }
    if (at == digits_start) {
        return fault_of(QUANTITY_NOT_A_NUMBER, "", "");
    }
    bool leading_zero = text[digits_start] == '0' && at > digits_start + 1;
    if (text[at] == '.' && is_digit(text[at + 1])) {
        at++;
        while (is_digit(text[at])) {
            at++;
        }
    }
    if (text[at] == ',' && is_digit(text[at + 1])) {
        return fault_of(QUANTITY_COMMA, "", comma_advice(arena, text, at, unit));
    }
    odd = odd_rest(text, at);
    if (odd == NULL && leading_zero) {
        odd = "leave out the leading 0";
    }
    double value = 0;
    if (odd == NULL && !number_read(text, at, &value)) {
        odd = "it has more than 15 digits";
    }
    if (odd != NULL) {
        return fault_of(QUANTITY_ODD, odd, "");
    }
    return read_unit(arena, arena_text(arena, text, at), text + at, value, unit);
}
