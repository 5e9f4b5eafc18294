/* Facts in, sentences out: the catalogue itself, and how words are made of it, also in a language made up here. */
#include "run_suite.h"
#include "words/words_private.h"

#include <math.h>
#include <string.h>

static const struct Words plain = {.medium = MEDIUM_PLAIN};
static const struct Words signs = {.medium = MEDIUM_SIGNS};
static const struct Words spaced = {.medium = MEDIUM_SIGNS, .thousands = true, .together = true};

static struct Arena *arena;

static void begin(void)
{
    arena = arena_new();
    ck_assert_ptr_nonnull(arena);
}

static void end(void)
{
    arena_free(arena);
}

/* Sentences of the catalogue: what the design writes down, and what is read. */

static const struct Say *load(bool three)
{
    return say(arena, SAY_LOAD, say_fixed(14.35, 1, UNIT_A), say_term(three ? SAY_IN_THE_HEAVIEST_LINE : SAY_NOTHING),
               say_digits(16, 4, UNIT_A));
}

static const struct Say *capacity(void)
{
    return say(arena, SAY_CAPACITY, say_digits(32, 4, UNIT_A), say_digits(2.5, 4, UNIT_MM2),
               say_fixed(31.96, 1, UNIT_A));
}

/* Where papers say so, the hyphen of 2-pole is one that does not break; a word's own and that of a size stay. */
START_TEST(a_figure_and_its_word_hold_together)
{
    static const struct Words held = {.medium = MEDIUM_SIGNS, .hyphens = true};
    const struct Say *said = say(arena, SAY_POLES, say_count(2));
    ck_assert_str_eq(words_said(arena, &held, said), "2\u2011pole");
    ck_assert_str_eq(words_said(arena, &signs, said), "2-pole");
    ck_assert_str_eq(words_said(arena, &held, say_alone(arena, say_term(SAY_ONE_POLE_AND_NEUTRAL))),
                     "1\u2011pole and neutral");
    ck_assert_str_eq(words_said(arena, &held, say(arena, SAY_AS_IS, say_name("3-bay"))), "3-bay");
    ck_assert_ptr_null(strstr(words_said(arena, &held, say(arena, SAY_CABLE_BS6004_SINGLE)), "\u2011"));
}
END_TEST

/* Keys are for who has the file: in the terminal and in files, not on paper. */
START_TEST(keys_are_left_out_on_paper)
{
    const struct Say *open =
        say(arena, SAY_CHECK_OPEN, say_name("bend radius"), say_name("feeder"), say_name("bends: radius"));
    ck_assert_str_eq(words_said(arena, &plain, open), "bend radius of feeder could not be checked: give bends: radius");
    ck_assert_str_eq(words_said(arena, &signs, open), "bend radius of feeder could not be checked");
    const struct Say *decided = say(arena, SAY_ASSUMES_SURGE_DECIDED);
    ck_assert_ptr_nonnull(strstr(words_said(arena, &plain, decided), "(supply: surge-protection, BS 7671 443.4.1)"));
    ck_assert_ptr_nonnull(strstr(words_said(arena, &signs, decided), "declined it (BS 7671 443.4.1)"));
}
END_TEST

START_TEST(facts_become_sentences)
{
    ck_assert_str_eq(words_said(arena, &plain, load(false)), "The load draws 14.4 A; the device is rated 16 A.");
    ck_assert_str_eq(words_said(arena, &plain, load(true)),
                     "The load draws 14.4 A in the heaviest line; the device is rated 16 A.");
    ck_assert_str_eq(words_said(arena, &plain, capacity()),
                     "The device is rated 32 A; 2.5 mm2 carries 32.0 A at the worst place.");
    ck_assert_str_eq(words_said(arena, &signs, capacity()),
                     "The device is rated 32 A; 2.5 mm\u00b2 carries 32.0 A at the worst place.");
}
END_TEST

/* Whatever differs in what would be read, or in another unit or to another digit could be, is another saying. */
START_TEST(same_sayings_are_known)
{
    const struct Say *const different[] = {
        NULL,
        load(false),
        load(true),
        capacity(),
        say(arena, SAY_AS_IS, say_name("path")),
        say(arena, SAY_AS_IS, say_name("lawn")),
        say(arena, SAY_AS_IS, say_calculation("path")),
        say(arena, SAY_AS_IS, say_calculation("lawn")),
        say(arena, SAY_AS_IS, say_count(2)),
        say(arena, SAY_AS_IS, say_count(3)),
        say(arena, SAY_AS_IS, say_fixed(2, 0, UNIT_A)),
        say(arena, SAY_AS_IS, say_fixed(2, 1, UNIT_A)),
        say(arena, SAY_AS_IS, say_fixed(3, 0, UNIT_A)),
        say(arena, SAY_AS_IS, say_fixed(2, 0, UNIT_V)),
        say(arena, SAY_AS_IS, say_word(WORDS_WAY, WAY_DUCT)),
        say(arena, SAY_AS_IS, say_word(WORDS_WAY, WAY_TRAY)),
        say(arena, SAY_AS_IS, say_meaning(WORDS_WAY, WAY_DUCT)),
        say(arena, SAY_AS_IS, say_part(load(false))),
        say(arena, SAY_AS_IS, say_part(load(true))),
        say(arena, SAY_AS_IS, say_part(NULL)),
        say_then(arena, load(false), capacity()),
        say_then(arena, load(true), capacity()),
    };
    for (size_t i = 0; i < sizeof different / sizeof different[0]; i++) {
        for (size_t k = 0; k < sizeof different / sizeof different[0]; k++) {
            ck_assert_msg(say_same(different[i], different[k]) == (i == k), "%d and %d", (int)i, (int)k);
        }
    }
    ck_assert(say_same(load(true), load(true)));
    ck_assert(say_same(say_then(arena, load(true), capacity()), different[21]));
    ck_assert(say_same(say(arena, SAY_AS_IS, say_part(load(true))), different[18]));
}
END_TEST

/* Every argument alone, in both media. */
static const struct Shown {
    struct SayArg arg;
    const char *plain, *signs;
} shown[] = {
    {{.kind = SAY_ARG_FIXED, .unit = UNIT_OHM, .figures = 3, .value = 0.5604}, "0.560 ohm", "0.560 \u03a9"},
    {{.kind = SAY_ARG_DIGITS, .unit = UNIT_OHM, .figures = 3, .value = 0.5604}, "0.56 ohm", "0.56 \u03a9"},
    {{.kind = SAY_ARG_FIXED, .unit = UNIT_DEGC, .value = -4.6}, "-5 degC", "\u22125 \u00b0C"},
    {{.kind = SAY_ARG_FIXED, .unit = UNIT_DEG, .value = 90}, "90 deg", "90\u00b0"},
    {{.kind = SAY_ARG_DIGITS, .unit = UNIT_A2_S, .figures = 4, .value = 45000}, "45000 A2 s", "45000 A\u00b2s"},
    {{.kind = SAY_ARG_DIGITS, .unit = UNIT_A2_S, .figures = 7, .value = 999999500},
     "999999500 A2 s",
     "999999500 A\u00b2s"},
    {{.kind = SAY_ARG_DIGITS, .unit = UNIT_A2_S, .figures = 7, .value = 1840410000},
     "1840.41 x 10^6 A2 s",
     "1840.41 \u00d7 10\u2076 A\u00b2s"},
    {{.kind = SAY_ARG_DIGITS, .figures = 7, .value = 1e9}, "1000 x 10^6", "1000 \u00d7 10\u2076"},
    {{.kind = SAY_ARG_DIGITS, .figures = 7, .value = -1.05e9}, "-1050 x 10^6", "\u22121050 \u00d7 10\u2076"},
    {{.kind = SAY_ARG_DIGITS, .unit = UNIT_K_M_PER_W, .figures = 3, .value = 2.5}, "2.5 K.m/W", "2.5 K\u00b7m/W"},
    {{.kind = SAY_ARG_FIXED, .unit = UNIT_M3, .figures = 2, .value = 1.125}, "1.13 m3", "1.13 m\u00b3"},
    {{.kind = SAY_ARG_FIXED, .unit = UNIT_PERCENT, .figures = 2, .value = 2.675}, "2.68 %", "2.68 %"},
    {{.kind = SAY_ARG_FIXED, .figures = 2, .value = 0.77}, "0.77", "0.77"},
    {{.kind = SAY_ARG_FIXED, .unit = UNIT_V, .figures = 1, .value = -0.01}, "0.0 V", "0.0 V"},
    {{.kind = SAY_ARG_FIXED, .unit = UNIT_V, .figures = 1, .value = INFINITY}, "? V", "? V"},
    {{.kind = SAY_ARG_DIGITS, .unit = UNIT_V, .figures = 4, .value = INFINITY}, "? V", "? V"},
    {{.kind = SAY_ARG_DIGITS, .unit = UNIT_V, .figures = 4, .value = 1e15}, "? V", "? V"},
    {{.kind = SAY_ARG_FIXED, .unit = UNIT_V, .figures = 1, .value = 1e9}, "1000000000.0 V", "1000000000.0 V"},
    {{.kind = SAY_ARG_COUNT, .count = 12}, "12", "12"},
    {{.kind = SAY_ARG_WORD, .list = WORDS_WAY, .member = WAY_BURIED}, "buried", "buried"},
    {{.kind = SAY_ARG_WORD, .list = WORDS_WAY, .member = -1}, "", ""},
    {{.kind = SAY_ARG_TERM, .term = SAY_IN_THE_HEAVIEST_LINE}, "in the heaviest line", "in the heaviest line"},
    {{.kind = SAY_ARG_TERM, .term = SAY_NOTHING}, "", ""},
    {{.kind = SAY_ARG_PART, .part = NULL}, "", ""},
    {{.kind = SAY_ARG_NAME, .name = NULL}, "", ""},
    /* names are free text, and no template */
    {{.kind = SAY_ARG_NAME, .name = "{0} {{ {9?a|b} 100 %s %n mm2"},
     "{0} {{ {9?a|b} 100 %s %n mm2",
     "{0} {{ {9?a|b} 100 %s %n mm2"},
};

START_TEST(arguments_are_shown)
{
    const struct Shown *row = &shown[_i];
    const struct Say *said = say(arena, SAY_AS_IS, row->arg);
    ck_assert_str_eq(words_said(arena, &plain, said), row->plain);
    ck_assert_str_eq(words_said(arena, &signs, said), row->signs);
}
END_TEST

/* What is typed, and what is printed of it. Letters within a word or a name of a quantity are no signs. */
static const struct Calculation {
    const char *plain, *signs;
} calculations[] = {
    {"0.35 + 0.141 + 0.141", "0.35 + 0.141 + 0.141"},
    {"38 x 1.03 x 0.7", "38 \u00d7 1.03 \u00d7 0.7"},
    {"70 - ((1.03 x 0.7)^2 - (20 / 38)^2) x (70 - 30)",
     "70 \u2212 ((1.03 \u00d7 0.7)\u00b2 \u2212 (20 / 38)\u00b2) \u00d7 (70 \u2212 30)"},
    {"sqrt(1 - (0.6 / 12.5) ^ 2)", "\u221a(1 \u2212 (0.6 / 12.5)\u00b2)"},
    {"100 / (2 x pi x 2.4)", "100 / (2 \u00d7 \u03c0 \u00d7 2.4)"},
    {"1840.41 x 10^6", "1840.41 \u00d7 10\u2076"},
    {"2 ^ 20 + 2^2.5 + 10^60", "2 ^ 20 + 2^2.5 + 10^60"},
    {"R1 x (1 + 0.004 x (t - 20))", "R1 \u00d7 (1 + 0.004 \u00d7 (t \u2212 20))"},
    {"kg/m x g / max", "kg/m \u00d7 g / max"},
    {"L1^2 + pip", "L1\u00b2 + pip"},
    {"a-a z-z A-A Z-Z ax xa zx xz Ax xA Zx xZ", "a-a z-z A-A Z-Z ax xa zx xz Ax xA Zx xZ"},
    {"2^20 + 2^29 + 10^60 + 10^69 + 10^6.5", "2^20 + 2^29 + 10^60 + 10^69 + 10^6.5"},
    {"-2^2-1", "\u22122\u00b2\u22121"},
    {"", ""},
};

START_TEST(calculations_are_set_in_signs)
{
    const struct Calculation *row = &calculations[_i];
    const struct Say *said = say(arena, SAY_AS_IS, say_calculation(row->plain));
    ck_assert_str_eq(words_said(arena, &plain, said), row->plain);
    ck_assert_str_eq(words_said(arena, &signs, said), row->signs);
}
END_TEST

static const struct Thousands {
    double value;
    int decimals;
    const char *text;
} thousands[] = {
    {999, 0, "999\u00a0mm"},
    {1234, 0, "1234\u00a0mm"},
    {12345, 0, "12\u202f345\u00a0mm"},
    {123456, 0, "123\u202f456\u00a0mm"},
    {-12345.678, 1, "\u221212\u202f345.7\u00a0mm"},
    {1234567, 0, "1\u202f234\u202f567\u00a0mm"},
    {0.1234567, 7, "0.1234567\u00a0mm"},
};

START_TEST(thousands_are_spaced_only_where_asked)
{
    const struct Thousands *row = &thousands[_i];
    const struct Say *said = say(arena, SAY_AS_IS, say_fixed(row->value, row->decimals, UNIT_MM));
    ck_assert_str_eq(words_said(arena, &spaced, said), row->text);
    const struct Words plain_asked = {.medium = MEDIUM_PLAIN, .thousands = true, .together = true};
    ck_assert_str_eq(words_said(arena, &plain_asked, said), words_said(arena, &plain, said));
    ck_assert_ptr_null(strstr(words_said(arena, &signs, said), "\u202f"));
    const struct Say *hot = say(arena, SAY_SHORT_LOFT_HOT); /* a figure of the sentence itself */
    ck_assert_ptr_nonnull(strstr(words_said(arena, &spaced, hot), "over 35\u00a0°C"));
    ck_assert_ptr_nonnull(strstr(words_said(arena, &signs, hot), "over 35 °C"));
}
END_TEST

START_TEST(sayings_follow_and_nest)
{
    const struct Say *pair = say(arena, SAY_AND, say_name("feeder"), say_name("pump"));
    const struct Say *three = say(arena, SAY_COMMA, say_name("attic"), say_part(pair));
    ck_assert_str_eq(words_said(arena, &plain, three), "attic, feeder and pump");
    ck_assert_str_eq(words_said(arena, &plain, NULL), "");
    ck_assert_str_eq(words_said(arena, &plain, say(arena, SAY_NOTHING)), "");

    const struct Say *twice = say_then(arena, pair, capacity());
    const struct Say *thrice = say_then(arena, twice, load(false));
    ck_assert_str_eq(words_said(arena, &plain, twice),
                     "feeder and pump The device is rated 32 A; 2.5 mm2 carries 32.0 A at the worst place.");
    ck_assert_str_eq(words_said(arena, &plain, thrice),
                     "feeder and pump The device is rated 32 A; 2.5 mm2 carries 32.0 A at the worst place. "
                     "The load draws 14.4 A; the device is rated 16 A.");
    ck_assert_str_eq(words_said(arena, &plain, pair), "feeder and pump"); /* as it was */
    ck_assert_ptr_null(pair->next);
    ck_assert_ptr_eq(say_then(arena, NULL, pair), pair);
    ck_assert_ptr_eq(say_then(arena, pair, NULL), pair);
    ck_assert_ptr_null(say_then(arena, NULL, NULL));

    const struct Say *silent = say_then(arena, say(arena, SAY_NOTHING), say_then(arena, pair, say(arena, SAY_NOTHING)));
    ck_assert_str_eq(words_said(arena, &plain, silent), "feeder and pump");
}
END_TEST

/* An empty one more is none, and the first stands alone. */
START_TEST(lists_grow_at_their_end)
{
    const struct Say *list = say_list(arena, SAY_COMMA, NULL, say_name(""));
    ck_assert_ptr_null(list);
    const struct Say *first = say(arena, SAY_IN_THE_HEAVIEST_LINE);
    list = say_list(arena, SAY_COMMA, list, say_part(first));
    ck_assert_ptr_eq(list, first);
    ck_assert_ptr_eq(say_list(arena, SAY_COMMA, list, say_part(NULL)), first);
    ck_assert_ptr_eq(say_list(arena, SAY_COMMA, list, say_term(SAY_NOTHING)), first);
    list = say_list(arena, SAY_COMMA, list, say_digits(16, 4, UNIT_A));
    list = say_list(arena, SAY_SEMICOLON, list, say_word(WORDS_WAY, WAY_DUCT));
    ck_assert_str_eq(words_said(arena, &plain, list), "in the heaviest line, 16 A; duct");
    ck_assert_ptr_null(say_list(NULL, SAY_COMMA, NULL, say_name("shed")));
}
END_TEST

START_TEST(arguments_are_copied)
{
    struct SayArg args[] = {say_count(1), say_count(2), {.kind = SAY_ARG_END}};
    const struct Say *said = say_made(arena, SAY_AND, args);
    args[0] = say_count(8);
    ck_assert_int_eq(said->count, 2);
    ck_assert_str_eq(words_said(arena, &plain, said), "1 and 2");
    const struct SayArg c = say_count(7);
    ck_assert_int_eq(say(arena, SAY_AS_IS, c, c, c, c, c, c, c, c, c, c)->count, SAY_ARGS_MOST);
    ck_assert_int_eq(say(arena, SAY_NOTHING)->count, 0);
}
END_TEST

START_TEST(nothing_is_made_without_an_arena)
{
    const struct Say *said = say(arena, SAY_IN_THE_HEAVIEST_LINE);
    ck_assert_ptr_null(say(NULL, SAY_AS_IS, say_count(1)));
    ck_assert_ptr_null(say(NULL, SAY_NOTHING));
    ck_assert_ptr_null(say_then(NULL, said, said));
    ck_assert_ptr_null(say_then(NULL, said, NULL));
}
END_TEST

static const struct Say *said_long(int sentences)
{
    const struct Say *all = NULL;
    for (int i = 0; i < sentences; i++) {
        all = say_then(arena, say(arena, SAY_AND, say_count(i), say_name("more")), all);
    }
    return all;
}

/* At whichever block memory ends, of the sayings, of the sentence or of a figure in it: nothing is half said. */
START_TEST(memory_may_end_anywhere)
{
    bool made = false, whole = false;
    for (long blocks = 0; !whole; blocks++) {
        struct Arena *kept = arena;
        arena = arena_new();
        arena_fail_after(arena, blocks);
        const struct Say *said = said_long(500 + 250 * _i);
        ck_assert(said != NULL || arena_failed(arena));
        made = made || !arena_failed(arena);
        const char *text = words_said(arena, &plain, said);
        whole = !arena_failed(arena);
        ck_assert_int_eq(*text != '\0', whole);
        if (blocks == 0) {
            ck_assert_ptr_null(said);
            ck_assert(arena_failed(arena));
        }
        arena_free(arena);
        arena = kept;
        ck_assert_int_lt(blocks, 1000);
    }
    ck_assert(made);
}
END_TEST

/* A language made up here, with the plural rule of Polish. */

static int three_forms(int count)
{
    const int last = count % 10, two = count % 100;
    return count == 1 ? 0 : last >= 2 && last <= 4 && (two < 12 || two > 14) ? 1 : 2;
}

static const char *const made_up[SAYINGS] = {
    [SAY_AS_IS] = "{0} {0?kabel|kable|kabli}{ 1}",
    [SAY_AND] = "{0^}{, 1} {x} {mm2} {{0}",
    [SAY_COMMA] = "({1}; {0#})",
    [SAY_SEMICOLON] = "{0?a|b|c} {1#} {2} {0^",
    [SAY_COLON] = "{0?one} {0}",
    [SAY_BRACKETS] = "{0^}kabel",
};
static const struct Wording language = {"xx", 3, three_forms, ',', "mal", made_up, NULL, 0};

static const struct Plural {
    int count;
    const char *text;
} plurals[] = {
    {0, "0 kabli"},   {1, "1 kabel"},   {2, "2 kable"},   {4, "4 kable"},     {5, "5 kabli"},     {11, "11 kabli"},
    {12, "12 kabli"}, {14, "14 kabli"}, {22, "22 kable"}, {112, "112 kabli"}, {124, "124 kable"},
};

START_TEST(plurals_go_by_the_language)
{
    const struct Say *said = say(arena, SAY_AS_IS, say_count(plurals[_i].count), say_part(NULL));
    ck_assert_str_eq(words_in(arena, &language, &plain, said), plurals[_i].text);
}
END_TEST

START_TEST(english_has_two_forms)
{
    const struct Wording *english = words_wording(LANGUAGE_ENGLISH);
    ck_assert_int_eq(english->forms, 2);
    ck_assert_int_eq(english->form(0), 1);
    ck_assert_int_eq(english->form(1), 0);
    ck_assert_int_eq(english->form(2), 1);
    ck_assert_int_eq(english->form(21), 1);
}
END_TEST

START_TEST(holes_are_filled)
{
    const struct Say *term = say(arena, SAY_AND, say_term(SAY_IN_THE_HEAVIEST_LINE), say_name("shed"));
    ck_assert_str_eq(words_in(arena, &language, &plain, term), "In the heaviest line, shed x mm2 {0}");
    ck_assert_str_eq(words_in(arena, &language, &signs, term), "In the heaviest line, shed \u00d7 mm\u00b2 {0}");
    const struct Say *name = say(arena, SAY_AND, say_name("attic"), say_name(""));
    ck_assert_str_eq(words_in(arena, &language, &plain, name), "attic x mm2 {0}"); /* names are left alone */
    const struct Say *inner =
        say(arena, SAY_AND, say_part(say(arena, SAY_COMMA, say_count(1), say_name("it"))), say_term(SAY_NOTHING));
    ck_assert_str_eq(words_in(arena, &language, &plain, inner), "(it; 1) x mm2 {0}");
    const struct Say *first = say(arena, SAY_COMMA, say_fixed(0.56, 2, UNIT_OHM), say_digits(1.5, 3, UNIT_V));
    ck_assert_str_eq(words_in(arena, &language, &plain, first), "(1,5 V; 0,56)");
    /* a capital is due of what stands in the hole, and of nothing behind it where that is no text */
    const struct Say *silent = say_then(arena, say(arena, SAY_NOTHING), say(arena, SAY_NOTHING));
    ck_assert_str_eq(words_in(arena, &language, &plain, say(arena, SAY_BRACKETS, say_part(silent))), "kabel");
}
END_TEST

/* A template of that language, with a saying in its hole that is made here too. */
static const char *filled(const struct Words *words, const char *outer, const char *inner, struct SayArg arg)
{
    const char *texts[SAYINGS] = {[SAY_NOTHING] = "",
                                  [SAY_AS_IS] = outer,
                                  [SAY_BRACKETS] = inner,
                                  [SAY_COLON] = "apex",
                                  [SAY_SEMICOLON] = "Zone"};
    const struct Wording own = {"xx", 3, three_forms, ',', "mal", texts, NULL, 0};
    return words_in(arena, &own, words, say(arena, SAY_AS_IS, say_part(say(arena, SAY_BRACKETS, arg)), arg));
}

/* The first letter as a capital or as a small one, from the first letter of the alphabet to the last, until something
 * is said; what is no word keeps its own. */
static const struct Cased {
    const char *outer, *inner;
    struct SayArg arg;
    const char *text;
} cased[] = {
    {"{0^}", "apex", {.kind = SAY_ARG_END}, "Apex"},
    {"{0^}", "zone", {.kind = SAY_ARG_END}, "Zone"},
    {"{0^}", "Apex", {.kind = SAY_ARG_END}, "Apex"},
    {"{0^}", "a", {.kind = SAY_ARG_END}, "A"},
    {"{0^}", "ą", {.kind = SAY_ARG_END}, "Ą"},
    {"{0^}", "ąb", {.kind = SAY_ARG_END}, "Ąb"},
    {"{0^}", "żab", {.kind = SAY_ARG_END}, "Żab"},
    {"{0_}", "Apex", {.kind = SAY_ARG_END}, "apex"},
    {"{0_}", "Zone", {.kind = SAY_ARG_END}, "zone"},
    {"{0_}", "zone", {.kind = SAY_ARG_END}, "zone"},
    {"{0_}", "Zap", {.kind = SAY_ARG_END}, "zap"},
    {"{0_}", "Azimuth", {.kind = SAY_ARG_END}, "azimuth"},
    {"{0_}", "It", {.kind = SAY_ARG_END}, "it"},
    {"{0_}", "Bób", {.kind = SAY_ARG_END}, "bób"},
    {"{0_}", "Ą", {.kind = SAY_ARG_END}, "ą"},
    {"{0_}", "Ąb", {.kind = SAY_ARG_END}, "ąb"},
    {"{0_}", "BAś", {.kind = SAY_ARG_END}, "BAś"},
    {"{0_}", "B~c", {.kind = SAY_ARG_END}, "B~c"},
    {"{0_}", "Żab", {.kind = SAY_ARG_END}, "żab"},
    {"{0_}", "A rod", {.kind = SAY_ARG_END}, "a rod"},
    {"{0_}", "A", {.kind = SAY_ARG_END}, "A"},
    {"{0_}", "B 20 A", {.kind = SAY_ARG_END}, "B 20 A"},
    {"{0_}", "L1", {.kind = SAY_ARG_END}, "L1"},
    {"{0_}", "RCBO", {.kind = SAY_ARG_END}, "RCBO"},
    {"{0^}", "{0}kabel", {.kind = SAY_ARG_NAME, .name = "shed"}, "shedkabel"},
    {"{0_}", "{0}Kabel", {.kind = SAY_ARG_NAME, .name = "Shed"}, "ShedKabel"},
    {"{0^}", "{0}kabel", {.kind = SAY_ARG_COUNT, .count = 3}, "3kabel"},
    {"{0_}", "{0}Kabel", {.kind = SAY_ARG_COUNT, .count = 3}, "3Kabel"},
    {"{0^}", "{0}kabel", {.kind = SAY_ARG_TERM, .term = SAY_COLON}, "Apexkabel"},
    {"{0_}", "{0}Kabel", {.kind = SAY_ARG_TERM, .term = SAY_SEMICOLON}, "zoneKabel"},
    {"{0} kabel", "{0}", {.kind = SAY_ARG_TERM, .term = SAY_COLON}, "apex kabel"},
    {"{0^} kabel", "{0}", {.kind = SAY_ARG_TERM, .term = SAY_COLON}, "Apex kabel"},
    {"{0_} Kabel", "{0}", {.kind = SAY_ARG_TERM, .term = SAY_SEMICOLON}, "zone Kabel"},
    {"{0^}", "zone{0?kabel|b|c}", {.kind = SAY_ARG_COUNT, .count = 1}, "Zonekabel"},
    {"{0_}", "Zone{0?Kabel|b|c}", {.kind = SAY_ARG_COUNT, .count = 1}, "zoneKabel"},
    {"{0_}", "A{0?Kabel|b|c}", {.kind = SAY_ARG_COUNT, .count = 1}, "AKabel"},
    /* the outer one decides, and is due until something is said */
    {"{0^}", "{0_}", {.kind = SAY_ARG_TERM, .term = SAY_COLON}, "Apex"},
    {"{0_}", "{0^}", {.kind = SAY_ARG_TERM, .term = SAY_SEMICOLON}, "zone"},
    {"{0^}", "{0}kabel", {.kind = SAY_ARG_TERM, .term = SAY_NOTHING}, "Kabel"},
    {"{0_}", "{0}Kabel", {.kind = SAY_ARG_TERM, .term = SAY_NOTHING}, "kabel"},
    {"{0^}", "{{kabel", {.kind = SAY_ARG_END}, "{kabel"},
};

START_TEST(the_first_letter_goes_by_its_hole)
{
    const struct Cased *row = &cased[_i];
    ck_assert_str_eq(filled(&plain, row->outer, row->inner, row->arg), row->text);
}
END_TEST

START_TEST(a_letter_is_due_until_something_is_said)
{
    const struct Say nothing = {.id = SAY_NOTHING}, silent = {.id = SAY_NOTHING, .next = &nothing};
    ck_assert_str_eq(filled(&plain, "{0^}", "{0}kabel", say_part(&silent)), "Kabel");
    ck_assert_str_eq(filled(&plain, "{0_}", "{0}Kabel", say_part(&silent)), "kabel");
    ck_assert_str_eq(filled(&plain, "{1_}Kabel", "", say_part(&silent)), "Kabel");
}
END_TEST

/* A hyphen of a template is held between any digit and any small letter, and no other; a figure before its unit. */
static const struct Held {
    const char *template, *text;
} held_together[] = {
    {"0-axis", "0\u2011axis"},
    {"9-zone", "9\u2011zone"},
    {"a 2-pole and 3-bay", "a 2\u2011pole and 3\u2011bay"},
    {"-pole", "-pole"},
    {"a-b", "a-b"},
    {"2-p", "2\u2011p"},
    {"2-pole of {1}", "2\u2011pole of 7"},
    {"2-B", "2-B"},
    {"2-Ab", "2-Ab"},
    {"2-~a", "2-~a"},
    {"2-", "2-"},
    {"2+b 2-{{b", "2+b 2-{b"},
    {"{1}-pole", "7\u2011pole"},
    {"3 {mm2}", "3\u00a0mm\u00b2"},
    {"10 {mm2}", "10\u00a0mm\u00b2"},
    {"9 {mm2}", "9\u00a0mm\u00b2"},
    {"a {mm2}", "a mm\u00b2"},
    {"10{mm2}", "10mm\u00b2"},
};

START_TEST(what_is_one_in_a_template_stays_on_one_line)
{
    static const struct Words held = {.medium = MEDIUM_SIGNS, .hyphens = true, .together = true};
    static const struct Words held_plain = {.hyphens = true, .together = true};
    ck_assert_str_eq(filled(&held, held_together[_i].template, "", say_count(7)), held_together[_i].text);
    ck_assert_ptr_null(strstr(filled(&held_plain, held_together[_i].template, "", say_count(7)), "\u2011"));
    ck_assert_ptr_null(strstr(filled(&held_plain, held_together[_i].template, "", say_count(7)), "\u00a0"));
    ck_assert_ptr_null(strstr(filled(&signs, held_together[_i].template, "", say_count(7)), "\u2011"));
    ck_assert_ptr_null(strstr(filled(&signs, held_together[_i].template, "", say_count(7)), "\u00a0"));
}
END_TEST

/* What stands before an argument goes where that is empty, whatever it is. */
START_TEST(nothing_stands_before_nothing)
{
    static const struct Say nothing = {.id = SAY_NOTHING};
    const struct SayArg empty[] = {say_part(NULL), say_part(&nothing),    say_term(SAY_NOTHING), say_name(NULL),
                                   say_name(""),   say_calculation(NULL), say_calculation("")};
    for (size_t i = 0; i < sizeof empty / sizeof empty[0]; i++) {
        ck_assert_str_eq(filled(&plain, "a{, 1}", "", empty[i]), "a");
    }
    const struct Say followed = {.id = SAY_NOTHING, .next = &(struct Say){.id = SAY_COLON}};
    ck_assert_str_eq(filled(&plain, "a{, 1}", "", say_part(&followed)), "a, apex");
    ck_assert_str_eq(filled(&plain, "a{, 1}", "", say_term(SAY_COLON)), "a, apex");
    ck_assert_str_eq(filled(&plain, "a{, 1}", "", say_name("b")), "a, b");
    ck_assert_str_eq(filled(&plain, "a{, 1}", "", say_calculation("2")), "a, 2");
    ck_assert_str_eq(filled(&plain, "a{, 1}", "", say_count(0)), "a, 0");
}
END_TEST

START_TEST(a_figure_alone_is_any_number)
{
    ck_assert_str_eq(filled(&plain, "{1#} mm", "", say_count(7)), "7 mm");
    ck_assert_str_eq(filled(&plain, "{1#} mm", "", say_fixed(7, 1, UNIT_MM)), "7,0 mm");
    ck_assert_str_eq(filled(&plain, "{1#} mm", "", say_digits(7.5, 3, UNIT_MM)), "7,5 mm");
    ck_assert_str_eq(filled(&plain, "{1#} mm", "", say_term(SAY_COLON)), "{1#} mm");
    ck_assert_str_eq(filled(&plain, "{1?a|b|c}", "", say_digits(7, 3, UNIT_MM)), "{1?a|b|c}");
    ck_assert_str_eq(filled(&plain, "{1?a|b}", "", say_count(5)), "b"); /* the last of too few */
    ck_assert_str_eq(filled(&plain, "{2}", "", say_count(5)), "{2}");
    ck_assert_str_eq(filled(&plain, "{1} {", "", say_count(5)), "5 {");
}
END_TEST

/* What is read of a hole. */
START_TEST(holes_are_read_whole)
{
    struct Hole hole;
    ck_assert(hole_read("{, 7?one|two|three|four|five|six} and", &hole));
    ck_assert_int_eq(hole.kind, HOLE_FORMS);
    ck_assert_uint_eq(hole.length, strlen("{, 7?one|two|three|four|five|six}"));
    ck_assert_int_eq(hole.index, 7);
    ck_assert_uint_eq(hole.lead.length, 2);
    ck_assert_int_eq(strncmp(hole.lead.data, ", ", 2), 0);
    static const char *const forms[] = {"one", "two", "three", "four", "five", "six"};
    ck_assert_int_eq(hole.form_count, 6);
    for (int i = 0; i < 6; i++) {
        ck_assert_uint_eq(hole.forms[i].length, strlen(forms[i]));
        ck_assert_int_eq(strncmp(hole.forms[i].data, forms[i], strlen(forms[i])), 0);
    }
    ck_assert(!hole_read("{0?1|2|3|4|5|6|7}", &hole));
    ck_assert(hole_read("{mm2}2", &hole));
    ck_assert_int_eq(hole.kind, HOLE_UNIT);
    ck_assert_int_eq(hole.unit, UNIT_MM2);
    ck_assert_uint_eq(hole.length, 5);
    ck_assert(hole_read("{x}", &hole)); /* the first of all units, and the last */
    ck_assert_int_eq(hole.unit, UNIT_TIMES_SIGN);
    ck_assert(hole_read("{%}", &hole));
    ck_assert_int_eq(hole.unit, UNIT_PERCENT);
    ck_assert(hole_read("{0_}", &hole));
    ck_assert_int_eq(hole.kind, HOLE_SMALL);
    ck_assert(!hole_read("{0__}", &hole));
    ck_assert(!hole_read("{0#_}", &hole));
    ck_assert(hole_read("{9^}", &hole));
    ck_assert_int_eq(hole.kind, HOLE_CAPITAL);
    ck_assert_int_eq(hole.index, 9);
    ck_assert(hole_read("{{0}", &hole));
    ck_assert_int_eq(hole.kind, HOLE_BRACE);
    ck_assert_uint_eq(hole.length, 2);
    ck_assert(!hole_read("{0{}", &hole));
}
END_TEST

START_TEST(what_does_not_fit_is_seen)
{
    const struct Say *said = say(arena, SAY_SEMICOLON, say_name("n"), say_name("m"));
    ck_assert_str_eq(words_in(arena, &language, &plain, said), "{0?a|b|c} {1#} {2} {0^");
    ck_assert_str_eq(words_said(arena, &plain, say(arena, SAY_AND, say_count(1))), "1 and {1}");
    const struct Say *single = say(arena, SAY_COLON, say_count(1)); /* one form is no choice */
    ck_assert_str_eq(words_in(arena, &language, &plain, single), "{0?one} 1");
}
END_TEST

START_TEST(what_is_lacking_is_said_in_english)
{
    ck_assert(!words_lacks(LANGUAGE_ENGLISH, SAY_CAPACITY));
    ck_assert_ptr_null(made_up[SAY_CAPACITY]);
    const struct Say *said = say(arena, SAY_COMMA, say_count(3), say_part(capacity()));
    ck_assert_str_eq(words_in(arena, &language, &plain, said),
                     "(The device is rated 32 A; 2.5 mm2 carries 32.0 A at the worst place.; 3)");
}
END_TEST

/* The whole catalogue. */

START_TEST(catalogue_is_well_formed)
{
    for (int l = 0; l < LANGUAGES; l++) {
        const struct Wording *wording = words_wording((enum Language)l);
        for (int id = SAY_NOTHING + 1; id < SAYINGS; id++) {
            unsigned used, expected;
            if (words_lacks((enum Language)l, (enum Saying)id)) {
                ck_assert_int_ne(l, LANGUAGE_ENGLISH);
                continue;
            }
            const char *fault = template_fault(wording->texts[id], wording->forms, &used);
            ck_assert_msg(fault == NULL, "%s: \"%s\" %s", wording->code, wording->texts[id], fault);
            const struct Wording *english = words_wording(LANGUAGE_ENGLISH);
            template_fault(english->texts[id], english->forms, &expected);
            ck_assert_msg(used == expected, "%s: \"%s\" has other arguments than English", wording->code,
                          wording->texts[id]);
        }
    }
}
END_TEST

static const struct Template {
    const char *text;
    bool good;
    unsigned used;
} templates[] = {
    {"plain, 100 % } of it", true, 0},
    {"{0} of {1#}", true, 3},
    {"{1} cable{1?|s} in {0}", true, 3},
    {"{0^}{, 1} {x} {mm2} {K.m/W} {%} {{", true, 3},
    {"{9}{8}{7}{6}{5}{4}{3}{2}{1}{0}", true, 1023},
    {"a{= (duct: bore)}{=: give }{0=}", true, 1},
    {"", false, 0},
    {"a{=}", false, 0},
    {"{0=x}", false, 0},
    {"two  blanks", false, 0},
    {" before", false, 0},
    {"after ", false, 0},
    {"open {0", false, 0},
    {"open {", false, 0},
    {"{}", false, 0},
    {"{ }", false, 0},
    {"{a}", false, 0},
    {"{ mm2}", false, 0},
    {"{0 }", false, 0},
    {"{10}", false, 0},
    {"{0!}", false, 0},
    {"{0##}", false, 0},
    {"{0?}", false, 0},
    {"{0?one}", false, 0},
    {"{0?one|two|three}", false, 1},
    {"{0?one|{1}}", false, 0},
    {"{0?1|2|3|4|5|6|7}", false, 0},
    {"{1}", false, 2}, /* and where is the first? */
    {"{0} and {2}", false, 5},
};

START_TEST(faults_of_templates_are_found)
{
    const struct Template *row = &templates[_i];
    unsigned used = 0;
    const char *fault = template_fault(row->text, 2, &used);
    ck_assert_msg((fault == NULL) == row->good, "\"%s\": %s", row->text, fault == NULL ? "taken" : fault);
    ck_assert_msg(!row->good || used == row->used, "\"%s\" uses %u", row->text, used);
}
END_TEST

START_TEST(units_have_both_texts)
{
    for (int i = UNIT_NONE + 1; i < UNITS; i++) {
        ck_assert_str_ne(words_unit(&plain, (enum Unit)i), "");
        ck_assert_str_ne(words_unit(&signs, (enum Unit)i), "");
        for (const char *at = words_unit(&plain, (enum Unit)i); *at != '\0'; at++) {
            ck_assert_msg((unsigned char)*at < 0x80, "%s", words_unit(&plain, (enum Unit)i));
        }
        for (int other = i + 1; other < UNITS; other++) { /* a hole names one of them */
            ck_assert_str_ne(words_unit(&plain, (enum Unit)i), words_unit(&plain, (enum Unit)other));
        }
    }
}
END_TEST

#define ROWS(table) ((int)(sizeof(table) / sizeof(table)[0]))

int main(void)
{
    Suite *suite = suite_create("words");
    TCase *tests = tcase_create("words");
    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, a_figure_and_its_word_hold_together);
    tcase_add_test(tests, keys_are_left_out_on_paper);
    tcase_add_test(tests, facts_become_sentences);
    tcase_add_loop_test(tests, arguments_are_shown, 0, ROWS(shown));
    tcase_add_loop_test(tests, calculations_are_set_in_signs, 0, ROWS(calculations));
    tcase_add_loop_test(tests, thousands_are_spaced_only_where_asked, 0, ROWS(thousands));
    tcase_add_test(tests, sayings_follow_and_nest);
    tcase_add_test(tests, lists_grow_at_their_end);
    tcase_add_test(tests, arguments_are_copied);
    tcase_add_test(tests, same_sayings_are_known);
    tcase_add_test(tests, nothing_is_made_without_an_arena);
    tcase_add_loop_test(tests, memory_may_end_anywhere, 0, 10);
    tcase_add_loop_test(tests, plurals_go_by_the_language, 0, ROWS(plurals));
    tcase_add_test(tests, english_has_two_forms);
    tcase_add_test(tests, holes_are_filled);
    tcase_add_loop_test(tests, the_first_letter_goes_by_its_hole, 0, ROWS(cased));
    tcase_add_test(tests, a_letter_is_due_until_something_is_said);
    tcase_add_loop_test(tests, what_is_one_in_a_template_stays_on_one_line, 0, ROWS(held_together));
    tcase_add_test(tests, nothing_stands_before_nothing);
    tcase_add_test(tests, a_figure_alone_is_any_number);
    tcase_add_test(tests, holes_are_read_whole);
    tcase_add_test(tests, what_does_not_fit_is_seen);
    tcase_add_test(tests, what_is_lacking_is_said_in_english);
    tcase_add_test(tests, catalogue_is_well_formed);
    tcase_add_loop_test(tests, faults_of_templates_are_found, 0, ROWS(templates));
    tcase_add_test(tests, units_have_both_texts);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
