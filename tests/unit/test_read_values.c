/* Single values: every spelling of every unit, every word of every list, forms of numbers, suggestions, texts. */
#include "read/read_private.h"
#include "read_route.h"
#include "test_read.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct UnitRow {
    enum Measure unit;
    const char *text;
    double value;
};

/* Typed from the contract of the route file, not from the reader's own table. */
static const struct UnitRow unit_rows[] = {
    {MEASURE_METRE, "12.4 m", 12.4},
    {MEASURE_METRE, "12.4m", 12.4},
    {MEASURE_METRE, "12.4    m", 12.4},
    {MEASURE_METRE, "45 cm", 0.45},
    {MEASURE_METRE, "450 mm", 0.45},
    {MEASURE_METRE, " 450 mm ", 0.45},
    {MEASURE_MILLIMETRE, "16 mm", 16},
    {MEASURE_MILLIMETRE, "1.6 cm", 16},
    {MEASURE_MILLIMETRE, "0.016 m", 16},
    {MEASURE_DEPTH, "600 mm", 0.6},
    {MEASURE_DEPTH, "60 cm", 0.6},
    {MEASURE_DEPTH, "0.6 m", 0.6},
    {MEASURE_MM2, "2.5 mm2", 2.5},
    {MEASURE_MM2, "2.5 mm\xC2\xB2", 2.5},
    {MEASURE_AMPERE, "32 A", 32},
    {MEASURE_AMPERE, "0.4 kA", 400},
    {MEASURE_AMPERE, "500 mA", 0.5},
    {MEASURE_FAULT_AMPERE, "1.6 kA", 1600},
    {MEASURE_FAULT_AMPERE, "950 A", 950},
    {MEASURE_FAULT_AMPERE, "950000 mA", 950},
    {MEASURE_RESIDUAL, "30 mA", 0.03},
    {MEASURE_RESIDUAL, "0.3 A", 0.3},
    {MEASURE_MEGOHM, "200 Mohm", 200},
    {MEASURE_MEGOHM, "0.8 M\xCE\xA9", 0.8},
    {MEASURE_MEGOHM, "1.2 Gohm", 1200},
    {MEASURE_MEGOHM, "850 kohm", 0.85},
    {MEASURE_TIME, "28 ms", 0.028},
    {MEASURE_TIME, "0.04 s", 0.04},
    {MEASURE_RESIDUAL, "0.0003 kA", 0.3},
    {MEASURE_VOLT, "230 V", 230},
    {MEASURE_WATT, "6 kW", 6000},
    {MEASURE_WATT, "750 W", 750},
    {MEASURE_WATT, "5 kVA", 5000},
    {MEASURE_OHM, "0.35 ohm", 0.35},
    {MEASURE_OHM, "0.35 \xCE\xA9", 0.35},
    {MEASURE_OHM, "0.35 \xE2\x84\xA6", 0.35},
    {MEASURE_OHM, "350 mohm", 0.35},
    {MEASURE_OHM, "350 m\xCE\xA9", 0.35},
    {MEASURE_OHM, "350 m\xE2\x84\xA6", 0.35},
    {MEASURE_OHM_METRE, "100 ohm.m", 100},
    {MEASURE_OHM_METRE, "100 \xCE\xA9\xC2\xB7m", 100},
    {MEASURE_OHM_METRE, "100 \xE2\x84\xA6\xC2\xB7m", 100},
    {MEASURE_K_M_PER_W, "2.5 K.m/W", 2.5},
    {MEASURE_K_M_PER_W, "2.5 K\xC2\xB7m/W", 2.5},
    {MEASURE_DEGC, "30 degC", 30},
    {MEASURE_DEGC, "-5 degC", -5},
    {MEASURE_DEGC,
     "30 \xC2\xB0"
     "C",
     30},
    {MEASURE_PERCENT, "3 %", 3},
    {MEASURE_PERCENT, "3%", 3},
    {MEASURE_RATIO, "80 %", 0.8},
    {MEASURE_DEGREE, "135 deg", 135},
    {MEASURE_NONE, "0.95", 0.95},
    {MEASURE_NONE, "3", 3},
};

START_TEST(each_spelling_is_read)
{
    struct Arena *arena = arena_new();
    const struct UnitRow *row = &unit_rows[_i];
    struct QuantityRead read = quantity_read(arena, row->text, row->unit);
    ck_assert_msg(read.fault == QUANTITY_GOOD, "\"%s\" was refused", row->text);
    ck_assert_msg(isfinite(read.value) && fabs(read.value - row->value) <= 1e-15 * fabs(row->value),
                  "\"%s\" is read wrong", row->text);
    ck_assert(read.apparent == (strstr(row->text, "kVA") != NULL));
    arena_free(arena);
}
END_TEST

struct FaultRow {
    enum Measure unit;
    const char *text;
    enum QuantityFault fault;
    const char *says; /* what reason or advice holds; "" when neither is told */
};

static const struct FaultRow fault_rows[] = {
    {MEASURE_METRE, "12.4", QUANTITY_NO_UNIT, "12.4 m"},
    {MEASURE_DEPTH, "0.6", QUANTITY_NO_UNIT, "0.6 m"},
    {MEASURE_DEPTH, "600", QUANTITY_NO_UNIT, "600 mm"},
    {MEASURE_FAULT_AMPERE, "1.6", QUANTITY_NO_UNIT, "1.6 kA"},
    {MEASURE_FAULT_AMPERE, "1600", QUANTITY_NO_UNIT, "1600 A"},
    {MEASURE_FAULT_AMPERE, "199.9", QUANTITY_NO_UNIT, "199.9 kA"}, /* the most that the key takes is 200 kA */
    {MEASURE_FAULT_AMPERE, "200", QUANTITY_NO_UNIT, "200 A"},
    {MEASURE_DEPTH, "19.9", QUANTITY_NO_UNIT, "19.9 m"},
    {MEASURE_DEPTH, "20", QUANTITY_NO_UNIT, "20 mm"},
    {MEASURE_RESIDUAL, "0.99", QUANTITY_NO_UNIT, "0.99 A"},
    {MEASURE_RESIDUAL, "1", QUANTITY_NO_UNIT, "1 mA"},
    {MEASURE_WATT, "99.9", QUANTITY_NO_UNIT, "99.9 kW"},
    {MEASURE_WATT, "100", QUANTITY_NO_UNIT, "100 W"},
    {MEASURE_RESIDUAL, "30", QUANTITY_NO_UNIT, "30 mA"},
    {MEASURE_RESIDUAL, "0.03", QUANTITY_NO_UNIT, "0.03 A"},
    {MEASURE_WATT, "6", QUANTITY_NO_UNIT, "6 kW"},
    {MEASURE_WATT, "6000", QUANTITY_NO_UNIT, "6000 W"},
    {MEASURE_MILLIMETRE, "16", QUANTITY_NO_UNIT, "16 mm"},
    {MEASURE_METRE, "12,4 m", QUANTITY_COMMA, "12.4 m"},
    {MEASURE_METRE, "12,4m", QUANTITY_COMMA, "12.4 m"},
    {MEASURE_METRE, "12,4", QUANTITY_COMMA, "12.4 m"},
    {MEASURE_METRE, "1,000 m", QUANTITY_COMMA, "1000 m or 1.000 m"},
    {MEASURE_METRE, "4 ft", QUANTITY_WRONG_UNIT, "ft"},
    {MEASURE_METRE, "4 M", QUANTITY_WRONG_UNIT, "M"},
    {MEASURE_METRE, "4 km", QUANTITY_WRONG_UNIT, "km"},
    {MEASURE_METRE, "4 m2", QUANTITY_WRONG_UNIT, "m2"},
    {MEASURE_METRE, "4 m 50", QUANTITY_WRONG_UNIT, "m 50"},
    {MEASURE_METRE, "4m50", QUANTITY_WRONG_UNIT, "m50"},
    {MEASURE_MM2, "6 sqmm", QUANTITY_WRONG_UNIT, "sqmm"},
    {MEASURE_VOLT, "0.23 kV", QUANTITY_WRONG_UNIT, "kV"},
    {MEASURE_WATT, "5 VA", QUANTITY_WRONG_UNIT, "VA"},
    {MEASURE_WATT, "5 hp", QUANTITY_HORSEPOWER, ""},
    {MEASURE_WATT, "5HP", QUANTITY_HORSEPOWER, ""},
    {MEASURE_METRE, "5 hp", QUANTITY_WRONG_UNIT, "hp"},
    {MEASURE_DEGC, "30 C", QUANTITY_WRONG_UNIT, "C"},
    {MEASURE_DEGC, "86 degF", QUANTITY_WRONG_UNIT, "degF"},
    {MEASURE_DEGREE, "90 \xC2\xB0", QUANTITY_WRONG_UNIT, "\xC2\xB0"},
    {MEASURE_NONE, "3 A", QUANTITY_UNIT_NOT_DUE, "A"},
    {MEASURE_NONE, "90 %", QUANTITY_UNIT_NOT_DUE, "%"},
    {MEASURE_METRE, "", QUANTITY_NOT_A_NUMBER, ""},
    {MEASURE_METRE, "m", QUANTITY_NOT_A_NUMBER, ""},
    {MEASURE_METRE, "-", QUANTITY_NOT_A_NUMBER, ""},
    {MEASURE_METRE, "- 4 m", QUANTITY_NOT_A_NUMBER, ""},
    {MEASURE_METRE, "about 4 m", QUANTITY_NOT_A_NUMBER, ""},
    {MEASURE_METRE, "+", QUANTITY_NOT_A_NUMBER, ""},
    {MEASURE_METRE, "\xC3\xA9", QUANTITY_NOT_A_NUMBER, ""},
    {MEASURE_METRE, "+4 m", QUANTITY_ODD, "plus"},
    {MEASURE_METRE,
     "\xE2\x88\x92"
     "4 m",
     QUANTITY_ODD, "minus"},
    {MEASURE_METRE,
     "\xE2\x80\x93"
     "4 m",
     QUANTITY_ODD, "minus"},
    {MEASURE_METRE,
     "\xE2\x80\x94"
     "4 m",
     QUANTITY_ODD, "minus"},
    {MEASURE_METRE, ".5 m", QUANTITY_ODD, "before the point"},
    {MEASURE_METRE, "-.5 m", QUANTITY_ODD, "before the point"},
    {MEASURE_METRE, "5. m", QUANTITY_ODD, "after the point"},
    {MEASURE_METRE, "1.2.3 m", QUANTITY_ODD, "two points"},
    {MEASURE_METRE, "inf", QUANTITY_ODD, "finite"},
    {MEASURE_METRE, "-Infinity m", QUANTITY_ODD, "finite"},
    {MEASURE_METRE, ".inf", QUANTITY_ODD, "finite"},
    {MEASURE_METRE, ".NaN", QUANTITY_ODD, "finite"},
    {MEASURE_METRE, "nan(123)", QUANTITY_ODD, "finite"},
    {MEASURE_METRE, "0x1F m", QUANTITY_ODD, "hexadecimal"},
    {MEASURE_METRE, "0X1F m", QUANTITY_ODD, "hexadecimal"},
    {MEASURE_METRE, "0o17 m", QUANTITY_ODD, "octal"},
    {MEASURE_METRE, "010 m", QUANTITY_ODD, "leading 0"},
    {MEASURE_METRE, "-00.5 m", QUANTITY_ODD, "leading 0"},
    {MEASURE_METRE, "1_000 m", QUANTITY_ODD, "underscore"},
    {MEASURE_METRE, "1:30 m", QUANTITY_ODD, "colon"},
    {MEASURE_METRE, "1e3 m", QUANTITY_ODD, "exponent"},
    {MEASURE_METRE, "1E+3 m", QUANTITY_ODD, "exponent"},
    {MEASURE_METRE, "1.5e-3 m", QUANTITY_ODD, "exponent"},
    {MEASURE_METRE, "1 000 m", QUANTITY_ODD, "space between digits"},
    {MEASURE_METRE, "4\xC2\xA0m", QUANTITY_ODD, "not a plain one"},
    {MEASURE_METRE, "4\xE2\x80\xAFm", QUANTITY_ODD, "not a plain one"},
    {MEASURE_METRE, "\xEF\xBC\x94 m", QUANTITY_ODD, "0 to 9"},
    {MEASURE_METRE, "\xD9\xA3 m", QUANTITY_ODD, "0 to 9"},
    {MEASURE_METRE, "\xDB\xB3 m", QUANTITY_ODD, "0 to 9"},
    {MEASURE_METRE, "\xE0\xA5\xA9 m", QUANTITY_ODD, "0 to 9"},
    {MEASURE_METRE, "1234567890123456 m", QUANTITY_ODD, "15 digits"},
    {MEASURE_METRE, "0.1234567890123456 m", QUANTITY_ODD, "15 digits"},
};

START_TEST(each_fault_is_named)
{
    struct Arena *arena = arena_new();
    const struct FaultRow *row = &fault_rows[_i];
    struct QuantityRead read = quantity_read(arena, row->text, row->unit);
    ck_assert_msg(read.fault == row->fault, "\"%s\" gives fault %d", row->text, (int)read.fault);
    const char *told = arena_print(arena, "%s|%s", read.reason, read.advice);
    ck_assert_msg(strstr(told, row->says) != NULL, "\"%s\" is told as %s", row->text, told);
    if (row->fault == QUANTITY_WRONG_UNIT || row->fault == QUANTITY_UNIT_NOT_DUE) {
        ck_assert_str_eq(read.reason, row->says);
    }
    arena_free(arena);
}
END_TEST

START_TEST(what_messages_show_can_be_read)
{
    struct Arena *arena = arena_new();
    for (int unit = MEASURE_METRE; unit < MEASURE_COUNT; unit++) {
        const char *shown = quantity_show(arena, 0.35, (enum Measure)unit);
        struct QuantityRead read = quantity_read(arena, shown, (enum Measure)unit);
        ck_assert_msg(read.fault == QUANTITY_GOOD && fabs(read.value - 0.35) < 1e-12, "%s", shown);
        read = quantity_read(arena, quantity_example((enum Measure)unit), (enum Measure)unit);
        ck_assert_msg(read.fault == QUANTITY_GOOD, "%s", quantity_example((enum Measure)unit));
    }
    ck_assert_str_eq(quantity_units(arena, MEASURE_METRE), "m, cm or mm");
    ck_assert_str_eq(quantity_units(arena, MEASURE_VOLT), "V");
    ck_assert_str_eq(quantity_units(arena, MEASURE_OHM), "ohm, \xCE\xA9, mohm or m\xCE\xA9");
    ck_assert_str_eq(quantity_show(arena, 2.5, MEASURE_NONE), "2.5");
    ck_assert_str_eq(quantity_show(arena, 0.03, MEASURE_RESIDUAL), "30 mA");
    ck_assert_str_eq(quantity_show(arena, 0.8, MEASURE_RATIO), "80 %");
    arena_free(arena);
}
END_TEST

/* ---- words ---- */

struct WordReader {
    struct Reader reader;
    struct TreeNode node;
};

static struct WordReader word_reader(struct Arena *arena, const char *text)
{
    struct WordReader with = {.reader = {.arena = arena, .diag = diag_new(arena)}};
    with.node = (struct TreeNode){
        .kind = TREE_SCALAR, .plain = true, .mark = {1, 1}, .width = 1, .text = text, .length = strlen(text)};
    return with;
}

START_TEST(every_word_is_known_and_nothing_near_it)
{
    struct Arena *arena = arena_new();
    enum WordList list = (enum WordList)_i;
    int count = survey_word_count(list);
    ck_assert_int_gt(count, 1);
    for (int i = 0; i < count; i++) {
        const char *word = survey_word(list, i);
        struct WordReader with = word_reader(arena, word);
        ck_assert_int_eq(fields_word(&with.reader, "k", &with.node, list), i);
        ck_assert_uint_eq(diag_count(with.reader.diag), 0);
        const char *longer = arena_print(arena, "%sq", word);
        with = word_reader(arena, longer);
        ck_assert_int_eq(fields_word(&with.reader, "k", &with.node, list), count);
        ck_assert_uint_eq(diag_errors(with.reader.diag), 1);
    }
    ck_assert_str_eq(survey_word(list, count), "");
    arena_free(arena);
}
END_TEST

struct WordRow {
    enum WordList list;
    const char *written;
    const char *near; /* NULL: no suggestion */
};

static const struct WordRow word_rows[] = {
    {WORDS_WAY, "wal", "wall"},
    {WORDS_WAY, "Wall", "wall"},
    {WORDS_WAY, "loft_void", "loft-void"},
    {WORDS_WAY, "loft void", "loft-void"},
    {WORDS_WAY, "cielign", "ceiling"},
    {WORDS_WAY, "truncking", "trunking"},
    {WORDS_WAY, "bridge", NULL},
    {WORDS_WAY, "waterway", NULL},
    {WORDS_SYSTEM, "tn-c-s", "TN-C-S"},
    {WORDS_SYSTEM, "TNS", "TN-S"},
    {WORDS_SYSTEM, "IT", NULL},
    {WORDS_CURVE, "b", "B"},
    {WORDS_CURVE, "E", NULL},
    {WORDS_DEVICE, "mcb", "MCB"},
    {WORDS_DEVICE, "RCB0", "RCBO"},
    {WORDS_DEVICE, "gg", "gG"},
    {WORDS_CABLE, "BS5476", "BS5467"},
    {WORDS_CABLE, "bs5467", "BS5467"},
    {WORDS_CABLE, "rope", NULL},
    {WORDS_CABLE, "BS5467 SWA", "BS5467"},
    {WORDS_CABLE, "BS5467SWA", "BS5467"},
    {WORDS_WAY, "wall (outside)", "wall"},
    {WORDS_WAY, "wallpaper", NULL},
    {WORDS_LAID, "nwe", "new"},
    {WORDS_UNDER, "law\xC3\xB1", "lawn"},
};

START_TEST(words_are_suggested_only_when_near)
{
    struct Arena *arena = arena_new();
    const struct WordRow *row = &word_rows[_i];
    struct WordReader with = word_reader(arena, row->written);
    fields_word(&with.reader, "k", &with.node, row->list);
    ck_assert_uint_eq(diag_count(with.reader.diag), 1);
    const struct Diagnostic *told = diag_at(with.reader.diag, 0);
    if (row->near == NULL) {
        ck_assert_int_eq(told->code, MSG_WORD_UNKNOWN);
        ck_assert_ptr_nonnull(strstr(told->text, survey_word(row->list, 0)));
    } else {
        ck_assert_int_eq(told->code, MSG_WORD_MISSPELT);
        const char *end = arena_print(arena, "did you mean \"%s\"?", row->near);
        ck_assert_msg(strstr(told->text, end) != NULL, "%s", told->text);
    }
    arena_free(arena);
}
END_TEST

/* What the trade calls it is told before what is spelt alike. */
static const struct WordRow spoken_rows[] = {
    {WORDS_WAY, "roof", "way: loft-void"},
    {WORDS_WAY, "Under-ground", "way: buried for a cable laid direct, way: duct"},
    {WORDS_CABLE, "SWA", "BS5467 or BS6724"},
    {WORDS_DEVICE, "RCD", "kind: RCBO"},
    {WORDS_DEVICE, "fuse", "gG, BS88-3, BS1361 or BS3036"},
};

START_TEST(words_of_the_trade_are_understood)
{
    struct Arena *arena = arena_new();
    const struct WordRow *row = &spoken_rows[_i];
    struct WordReader with = word_reader(arena, row->written);
    ck_assert_int_eq(fields_word(&with.reader, "k", &with.node, row->list), survey_word_count(row->list));
    ck_assert_uint_eq(diag_errors(with.reader.diag), 1);
    const struct Diagnostic *told = diag_at(with.reader.diag, 0);
    ck_assert_int_eq(told->code, MSG_WORD_SPOKEN);
    ck_assert_msg(strstr(told->text, row->near) != NULL, "%s", told->text);
    arena_free(arena);
}
END_TEST

struct DistanceRow {
    const char *a, *b;
    size_t distance;
};
static const struct DistanceRow distances[] = {
    {"wall", "wall", 0},  {"wall", "walls", 1},    {"wall", "wal", 1},   {"wall", "wxll", 1},
    {"wall", "awll", 1},  {"wall", "WALL", 0},     {"a_b", "a-b", 0},    {"", "", 0},
    {"", "ab", 2},        {"ab", "", 2},           {"abc", "cba", 2},    {"duct", "dcut", 1},
    {"kitten", "sit", 4}, {"abcdef", "ghijkl", 4}, {"\xC3\xA9", "e", 1}, {"s\xD1\x96te", "site", 1},
};

START_TEST(distance_counts_changes)
{
    const struct DistanceRow *row = &distances[_i];
    ck_assert_uint_eq(suggest_distance(row->a, row->b, 3), row->distance);
    ck_assert_uint_eq(suggest_distance(row->b, row->a, 3), row->distance);
}
END_TEST

START_TEST(long_words_are_not_compared)
{
    char longest[200];
    memset(longest, 'k', sizeof longest);
    longest[199] = '\0';
    ck_assert_uint_eq(suggest_distance(longest, longest, 3), 4);
    longest[40] = '\0';
    ck_assert_uint_eq(suggest_distance(longest, longest, 3), 0);
}
END_TEST

/* ---- texts, dates, headings, sizes of two numbers: through a route ---- */

struct ValueRow {
    enum ReadSlot slot;
    const char *text;
    const char *told; /* NULL: accepted */
};

static const struct ValueRow value_rows[] = {
    {SLOT_JOB, "surveyed: 2024-02-29", NULL},
    {SLOT_JOB, "surveyed: '2026-12-31'", NULL},
    {SLOT_JOB, "surveyed: 2000-02-29", NULL},
    {SLOT_JOB, "surveyed: 1900-02-29", "date-wrong"},
    {SLOT_JOB, "surveyed: 2026-02-29", "date-wrong"},
    {SLOT_JOB, "surveyed: 2026-04-31", "date-wrong"},
    {SLOT_JOB, "surveyed: 2026-13-01", "date-wrong"},
    {SLOT_JOB, "surveyed: 2026-00-10", "date-wrong"},
    {SLOT_JOB, "surveyed: 2026-01-00", "date-wrong"},
    {SLOT_JOB, "surveyed: 14 May 2026", "date-wrong"},
    {SLOT_JOB, "surveyed: 2026-5-14", "date-wrong"},
    {SLOT_JOB, "surveyed: 2026/05/14", "date-wrong"},
    {SLOT_JOB, "site: 'yes'", NULL},
    {SLOT_JOB, "site: no", NULL},
    {SLOT_JOB, "site: null", NULL},
    {SLOT_JOB, "site: ~", "value-empty"},
    {SLOT_JOB, "site: '~'", NULL},
    {SLOT_JOB, "site: ''", "value-empty"},
    {SLOT_JOB, "site: '   '", "value-empty"},
    {SLOT_JOB, "site: {a: b}", "value-not-single"},
    {SLOT_TOP, "earthing: {far-end: export, extraneous-parts: yes}", NULL},
    {SLOT_TOP, "earthing: {far-end: export, extraneous-parts: 'no'}", NULL},
    {SLOT_TOP, "earthing: {far-end: export, extraneous-parts: Yes}", "yes-or-no"},
    {SLOT_TOP, "earthing: {far-end: export, extraneous-parts: on}", "yes-or-no"},
    {SLOT_TOP, "earthing: {far-end: export, extraneous-parts: 1}", "yes-or-no"},
    {SLOT_TOP, "earthing: {far-end: export, extraneous-parts: }", "value-empty"},
    {SLOT_TOP, "parts: {prices: .prices}", "file-name-plain"},
    {SLOT_TOP, "parts: {prices: 'a\\b'}", "file-name-plain"},
    {SLOT_TOP, "parts: {prices: 'c:b'}", "file-name-plain"},
    {SLOT_SEGMENT, "way: wall, heading: N", NULL},
    {SLOT_SEGMENT, "way: wall, heading: NNW", NULL},
    {SLOT_SEGMENT, "way: wall, heading: n", "heading-unknown"},
    {SLOT_SEGMENT, "way: wall, heading: 135 deg", NULL},
    {SLOT_SEGMENT, "way: wall, heading: 135", "unit-missing"},
    {SLOT_SEGMENT, "way: wall, heading: 361 deg", "number-out-of-range"},
    {SLOT_SEGMENT, "way: wall, heading: -1 deg", "number-out-of-range"},
    {SLOT_SEGMENT, "way: wall, rise: +1.8 m", NULL},
    {SLOT_SEGMENT, "way: wall, rise: -4 m", NULL},
    {SLOT_SEGMENT, "way: trunking, size: 50 x 50 mm", NULL},
    {SLOT_SEGMENT, "way: trunking, size: 50x75mm", NULL},
    {SLOT_SEGMENT, "way: trunking, size: 50 mm x 5 cm", NULL},
    {SLOT_SEGMENT, "way: trunking, size: 50 \xC3\x97 50 mm", NULL},
    {SLOT_SEGMENT, "way: trunking, size: 50 x 50", "size-needs-two"},
    {SLOT_SEGMENT, "way: trunking, size: 50 x", "size-needs-two"},
    {SLOT_SEGMENT, "way: trunking, size: 50 x 50 x 50 mm", "size-needs-two"},
    {SLOT_SEGMENT, "way: trunking, size: 50 x 50 ft", "unit-wrong"},
    {SLOT_SEGMENT, "way: trunking, size: 50 x 2 mm", "number-out-of-range"},
    {SLOT_SEGMENT, "way: trunking, size: wide x 50 mm", "number-due"},
    {SLOT_SEGMENT, "way: trunking, size: 50 mm", "size-needs-two"},
    {SLOT_SEGMENT, "way: conduit, size: 25 mm", NULL},
    {SLOT_SEGMENT, "way: conduit, size: 25 x 25 mm", "unit-wrong"},
    {SLOT_SEGMENT, "way: wall, bends: 0", NULL},
    {SLOT_SEGMENT, "way: wall, bends: 100", "bends-many"},
    {SLOT_SEGMENT, "way: wall, bends: 9", "bends-many"}, /* in 4 m */
    {SLOT_SEGMENT, "way: wall, bends: 8", NULL},
    {SLOT_SEGMENT, "way: wall, bends: 101", "bends-form"},
    {SLOT_SEGMENT, "way: wall, bends: 1.5", "bends-form"},
    {SLOT_SEGMENT, "way: wall, bends: -1", "bends-form"},
    {SLOT_SEGMENT, "way: wall, bends: {angle: 90 deg}", "bends-form"},
    {SLOT_SEGMENT, "way: wall, bends: ", "value-empty"},
    {SLOT_SEGMENT, "way: wall, bends: []", NULL},
    {SLOT_SEGMENT, "way: wall, bends: [{radius: 100 mm}]", "key-missing"},
    {SLOT_SEGMENT, "way: wall, marks: [{what: tree, at: 0 m}]", NULL},
    {SLOT_SEGMENT, "way: wall, marks: [{what: tree, at: 4 m, off: 2 m, side: left, note: old}]", NULL},
    {SLOT_SEGMENT, "way: wall, marks: [{what: tree, at: 4.01 m}]", "mark-beyond"},
    {SLOT_SEGMENT, "way: wall, marks: [{what: tree, at: 1 m, off: 2 m}]", "mark-side-missing"},
    {SLOT_SEGMENT, "way: wall, marks: [{what: tree, at: 1 m, side: right}]", "mark-off-missing"},
    {SLOT_SEGMENT, "way: wall, marks: [{what: other, at: 1 m}]", "mark-note-missing"},
    {SLOT_SEGMENT, "way: wall, marks: [{what: other, at: 1 m, note: trough}]", NULL},
    {SLOT_SEGMENT, "way: wall, marks: [{at: 1 m}]", "key-missing"},
    {SLOT_SEGMENT, "way: wall, marks: [{what: tree}]", "key-missing"},
    {SLOT_SEGMENT, "way: wall, marks: [{what: bush, at: 1 m}]", "word-unknown"},
    {SLOT_SEGMENT, "way: wall, marks: 3", "marks-form"},
    {SLOT_SEGMENT, "way: wall, marks: []", "marks-form"},
    {SLOT_SEGMENT, "way: wall, marks: {what: tree, at: 1 m}", "marks-form"},
    {SLOT_SEGMENT, "way: wall, where: inside", NULL},
    {SLOT_SEGMENT, "way: wall, where: outside, sun: full", NULL},
    {SLOT_SEGMENT, "way: wall, where: inside, sun: full", "sun-inside"},
    {SLOT_SEGMENT, "way: buried, depth: 1 m, where: outside", "key-of-other-way"},
    {SLOT_CABLE, ", size: choose", NULL},
    {SLOT_CABLE, ", size: 300 mm2", NULL},
    {SLOT_CABLE, ", size: 400 mm2", "size-not-standard"},
    {SLOT_CABLE, ", size: 0.75 mm2", "size-not-standard"},
    {SLOT_CABLE, ", size: 6", "unit-missing"},
    {SLOT_CABLE, ", size: -6 mm2", "size-not-standard"},
    {SLOT_CABLE, ", size: Choose", "size-or-choose"},
    {SLOT_RUN, "along: [a]", NULL},
    {SLOT_RUN, "along: []", "along-not-list"},
    {SLOT_RUN, "along: [{a: b}]", "value-not-single"},
    {SLOT_RUN, "along: [ ~ ]", "value-empty"},
    {SLOT_RUN, "along: ['a']", NULL},
    {SLOT_TOP, "earthing: export", "value-not-mapping"},
    {SLOT_TOP, "earthing:", "value-empty"},
    {SLOT_TOP, "readings: {}", NULL},
    {SLOT_LOAD, "power: 3 kW, power-factor: 1.1", "number-out-of-range"},
    {SLOT_LOAD, "power: 3 kW, power-factor: 90 %", "unit-not-due"},
    {SLOT_RUNS, "link: {kind: data, cable: {type: EN50288, size: 1 mm2}}", "key-of-other-kind"},
    {SLOT_RUNS, "bond: {kind: earth, cable: {type: BS5467, size: 1 mm2}}", "cable-for-other-kind"},
    {SLOT_RUNS, "more: {load: [], cable: {type: BS5467, cores: 3}}", "value-empty"},
    {SLOT_RUNS, "link: {kind: dta, load: {nonsense: 1}, cable: {}}", "word-misspelt"},
};

START_TEST(values_are_taken_or_told_once)
{
    const struct ValueRow *row = &value_rows[_i];
    char *text = read_route_with(row->slot, row->text);
    struct ReadRoute route = read_route_text(text);
    if (row->told == NULL) {
        ck_assert_msg(route.survey != NULL && diag_count(route.diag) == 0, "%s", read_route_reports(&route));
    } else {
        ck_assert_msg(diag_count(route.diag) == 1 && read_route_told(&route, row->told) == 1, "%s: wanted %s, got\n%s",
                      row->text, row->told, read_route_reports(&route));
        ck_assert((route.survey == NULL) == (diag_errors(route.diag) > 0));
    }
    read_route_free(&route);
    free(text);
}
END_TEST

START_TEST(line_breaks_in_texts_become_spaces)
{
    char *text = read_route_with(SLOT_JOB, "notes: \"a\\n\\n  b\\tc \\r d\\n\"");
    struct ReadRoute route = read_route_text(text);
    ck_assert_msg(route.survey != NULL, "%s", read_route_reports(&route));
    ck_assert_str_eq(route.survey->job.notes, "a  b c  d");
    read_route_free(&route);
    free(text);
}
END_TEST

START_TEST(heading_goes_round)
{
    static const char *const written[] = {"360 deg", "0 deg", "S", "WNW", "22.5 deg"};
    static const double degrees[] = {0, 0, 180, 292.5, 22.5};
    for (size_t i = 0; i < sizeof written / sizeof written[0]; i++) {
        char segment[64];
        snprintf(segment, sizeof segment, "way: wall, heading: %s", written[i]);
        char *text = read_route_with(SLOT_SEGMENT, segment);
        struct ReadRoute route = read_route_text(text);
        ck_assert_msg(route.survey != NULL, "%s", read_route_reports(&route));
        ck_assert(fabs(route.survey->segments[0].heading_deg.value - degrees[i]) < 1e-9);
        read_route_free(&route);
        free(text);
    }
}
END_TEST

#define LOOP(tests, name, rows) tcase_add_loop_test(tests, name, 0, (int)(sizeof(rows) / sizeof(rows)[0]))

TCase *read_values_tests(void)
{
    TCase *tests = tcase_create("values");
    LOOP(tests, each_spelling_is_read, unit_rows);
    LOOP(tests, each_fault_is_named, fault_rows);
    tcase_add_test(tests, what_messages_show_can_be_read);
    tcase_add_loop_test(tests, every_word_is_known_and_nothing_near_it, 0, WORDS_COUNT);
    LOOP(tests, words_are_suggested_only_when_near, word_rows);
    LOOP(tests, words_of_the_trade_are_understood, spoken_rows);
    LOOP(tests, distance_counts_changes, distances);
    tcase_add_test(tests, long_words_are_not_compared);
    LOOP(tests, values_are_taken_or_told_once, value_rows);
    tcase_add_test(tests, line_breaks_in_texts_become_spaces);
    tcase_add_test(tests, heading_goes_round);
    return tests;
}
