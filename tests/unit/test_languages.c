/* The catalogues beside the English one: whole, with the same arguments, figures and units; and what a crew is handed
 * is in its own language, while machines, counter and inspector get the same bytes in any. */
#include "library/library_stages.h"
#include "run_suite.h"
#include "wend/wend.h"
#include "words/words_private.h"

#include <string.h>

#define ROWS(table) ((int)(sizeof(table) / sizeof(table)[0]))

static const char *const names[SAYINGS] = {
#define WORD(id, text) [id] = #id,
#include "words/en/catalogue.inc"
#undef WORD
};

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

static const char *english(int id)
{
    return words_wording(LANGUAGE_ENGLISH)->texts[id];
}

static const char *polish(int id)
{
    return words_wording(LANGUAGE_POLISH)->texts[id];
}

/* ---- the catalogue ---- */

START_TEST(no_entry_is_missing)
{
    struct TextBuilder missing = text_builder(arena);
    for (int id = SAY_NOTHING + 1; id < SAYINGS; id++) {
        if (words_lacks(LANGUAGE_POLISH, (enum Saying)id)) {
            text_print(&missing, " %s", names[id]);
        }
    }
    const char *list = text_done(&missing);
    ck_assert_msg(*list == '\0', "src/words/pl lacks%s", list);
}
END_TEST

/* The plain text of a template, without its holes; *units gets their units, in any order a bit each. */
static const char *bare(const char *text, unsigned long long *units)
{
    struct TextBuilder out = text_builder(arena);
    struct Hole hole;
    *units = 0;
    while (*text != '\0') {
        const size_t plain = strcspn(text, "{");
        text_add_bytes(&out, text, plain);
        text += plain;
        if (*text == '{') {
            ck_assert(hole_read(text, &hole));
            *units |= hole.kind == HOLE_UNIT ? 1ULL << hole.unit : 0;
            text_add_char(&out, '|');
            text += hole.length;
        }
    }
    return text_done(&out);
}
_Static_assert((int)UNITS <= 64, "a bit for each unit");

START_TEST(arguments_and_units_are_those_of_english)
{
    for (int id = SAY_NOTHING + 1; id < SAYINGS; id++) {
        unsigned asked = 0, used = 0;
        unsigned long long units = 0, own_units = 0;
        if (polish(id) == NULL) {
            continue;
        }
        template_fault(english(id), 2, &asked);
        const char *fault = template_fault(polish(id), 3, &used);
        ck_assert_msg(fault == NULL, "%s: \"%s\" %s", names[id], polish(id), fault);
        ck_assert_msg(asked == used, "%s takes arguments %x, the Polish %x", names[id], asked, used);
        bare(english(id), &units);
        bare(polish(id), &own_units);
        ck_assert_msg(units == own_units, "%s has other units in Polish", names[id]);
    }
}
END_TEST

/* Every figure of a text, smallest first: "2.5;30;". A comma between digits is a decimal sign in Polish. */
static const char *figures(const char *text)
{
    enum { MOST = 40, LONGEST = 16 };
    unsigned long long units;
    char found[MOST][LONGEST];
    int count = 0;
    for (const char *at = bare(text, &units); *at != '\0';) {
        size_t length = strspn(at, "0123456789");
        while (length > 0 && (at[length] == '.' || at[length] == ',') && at[length + 1] >= '0' &&
               at[length + 1] <= '9') {
            length += 1 + strspn(at + length + 1, "0123456789");
        }
        if (length > 0) {
            ck_assert(count < MOST && length < LONGEST);
            int place = count++;
            char figure[LONGEST] = {0};
            for (size_t i = 0; i < length; i++) {
                figure[i] = (char)(at[i] == ',' ? '.' : at[i]);
            }
            for (; place > 0 && strcmp(found[place - 1], figure) > 0; place--) {
                memcpy(found[place], found[place - 1], LONGEST);
            }
            memcpy(found[place], figure, LONGEST);
        }
        at += length > 0 ? length : 1;
    }
    struct TextBuilder out = text_builder(arena);
    for (int i = 0; i < count; i++) {
        text_print(&out, "%s;", found[i]);
    }
    return text_done(&out);
}

/* A figure that is mistaken in one language is a wrong instruction. */
START_TEST(figures_are_those_of_english)
{
    ck_assert_str_eq(figures("under 50 mm, 2,5 m or 10.25 {mm2}, {0#} of L1"), "1;10.25;2.5;50;");
    for (int id = SAY_NOTHING + 1; id < SAYINGS; id++) {
        if (polish(id) != NULL) {
            const char *own = figures(polish(id));
            ck_assert_msg(strcmp(figures(english(id)), own) == 0, "%s has the figures %s, the Polish %s", names[id],
                          figures(english(id)), own);
        }
    }
}
END_TEST

/* Letters that follow one another outside the holes; what has none is put together the same in any language. */
static bool has_words(const char *text)
{
    unsigned long long units;
    int letters = 0;
    for (const char *at = bare(text, &units); *at != '\0'; at++) {
        const bool letter = (*at >= 'a' && *at <= 'z') || (*at >= 'A' && *at <= 'Z');
        letters = letter ? letters + 1 : 0;
        if (letters > 1) {
            return true;
        }
    }
    return false;
}

/* Names of standards, verdicts, signs and formulas, and words that Polish has too. */
static const enum Saying same_in_both[] = {
    SAY_BLANK_MS,
    SAY_STANDARD,
    SAY_INDOORS_IP_SOURCE,
    SAY_OF_METAL,
    SAY_FOUND_METAL,
    SAY_MM_OPEN,
    SAY_OPEN_MARKED,
    SAY_EXPLAINS_PASS,
    SAY_EXPLAINS_FAIL,
    SAY_COLUMN_LOOP,
    SAY_COLUMN_WEIGHT,
    SAY_STEP_FAULT_IN_RESIDUAL_FORMULA,
    SAY_STEP_ROD_FORMULA,
    SAY_STEP_RODS_TOGETHER_FORMULA,
    SAY_WORK_HOURS,
    SAY_WORK_HOURS_WHOLE,
    SAY_WORK_MINUTES,
    SAY_STEP_TOUCH_FORMULA,
    SAY_STEP_START_METRE_FORMULA,
    SAY_STEP_STRAIGHT_FORMULA,
};

START_TEST(nothing_is_left_in_english)
{
    bool met[SAYINGS] = {false};
    for (int i = 0; i < ROWS(same_in_both); i++) {
        const enum Saying id = same_in_both[i];
        ck_assert_msg(polish((int)id) == NULL || strcmp(english((int)id), polish((int)id)) == 0,
                      "%s is listed as the same and is not", names[id]);
        met[id] = true;
    }
    for (int id = SAY_NOTHING + 1; id < SAYINGS; id++) {
        if (polish(id) != NULL && !met[id] && has_words(english(id))) {
            ck_assert_msg(strcmp(english(id), polish(id)) != 0, "%s is English in Polish", names[id]);
        }
    }
}
END_TEST

/* ---- sentences ---- */

static const struct Words polish_plain = {.language = LANGUAGE_POLISH, .medium = MEDIUM_PLAIN};
static const struct Words english_plain = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};

static const struct Plural {
    int count;
    const char *text;
} plurals[] = {
    {0, "0 uwag"},   {1, "1 uwaga"},   {2, "2 uwagi"},  {4, "4 uwagi"},   {5, "5 uwag"},   {14, "14 uwag"},
    {21, "21 uwag"}, {24, "24 uwagi"}, {12, "12 uwag"}, {22, "22 uwagi"}, {25, "25 uwag"}, {112, "112 uwag"},
};

START_TEST(polish_counts_in_three_forms)
{
    const struct Say *said = say(arena, SAY_WARNINGS_COUNTED, say_count(plurals[_i].count));
    ck_assert_str_eq(words_said(arena, &polish_plain, said), plurals[_i].text);
}
END_TEST

START_TEST(polish_has_a_decimal_comma)
{
    const struct Say *said = say(arena, SAY_AS_IS, say_fixed(2.5, 2, UNIT_MM2));
    ck_assert_str_eq(words_said(arena, &polish_plain, said), "2,50 mm2");
    ck_assert_str_eq(words_said(arena, &english_plain, said), "2.50 mm2");
    ck_assert_str_eq(words_code(LANGUAGE_POLISH), "pl");
}
END_TEST

/* A line that begins with one of Polish's own letters begins with its capital. */
START_TEST(polish_letters_have_capitals)
{
    const struct Say *said = say(arena, SAY_ROW_TOP, say_meaning(WORDS_UNDER, UNDER_PATH));
    ck_assert_str_eq(words_said(arena, &polish_plain, said), "Ścieżka: odtworzyć, czym: ____.");
}
END_TEST

/* Behind a colon a sentence begins small; a name and what is no word keep their own letters. */
START_TEST(sentences_begin_small_behind_a_colon)
{
    const struct SayArg run = say_name("feeder");
    const struct Say *heavy = say(arena, SAY_COLON_SMALL, run, say_term(SAY_SHORT_LIFT));
    ck_assert_str_eq(words_said(arena, &english_plain, heavy),
                     "feeder: over 25 kg: two people or a trolley; never cut it to lift it.");
    ck_assert_ptr_nonnull(strstr(words_said(arena, &polish_plain, heavy), "feeder: ponad 25 kg"));
    const struct Say *drive = say(arena, SAY_ROW_TOP, say_meaning(WORDS_UNDER, UNDER_PATH));
    const struct Say *path = say(arena, SAY_COLON_SMALL, run, say_part(drive));
    ck_assert_str_eq(words_said(arena, &polish_plain, path), "feeder: ścieżka: odtworzyć, czym: ____.");
    const struct Say *name = say(arena, SAY_COLON_SMALL, run, say_name("Yard camera"));
    ck_assert_str_eq(words_said(arena, &english_plain, name), "feeder: Yard camera");
    const struct Say *loud = say(arena, SAY_COLON_SMALL, run, say_term(SAY_FAILS_AGAIN));
    ck_assert_str_eq(words_said(arena, &english_plain, loud), "feeder: FAIL: DO NOT BUILD YET");
}
END_TEST

START_TEST(one_caution_is_no_plural)
{
    const struct Say *one = say(arena, SAY_END_FLAGS, say_name("11"), say_count(1));
    ck_assert_str_eq(words_said(arena, &english_plain, one), "caution 11");
    ck_assert_str_eq(words_said(arena, &polish_plain, one), "ostrzeżenie 11");
    const struct Say *some = say(arena, SAY_END_FLAGS, say_name("7, 9"), say_count(2));
    ck_assert_str_eq(words_said(arena, &english_plain, some), "cautions 7, 9");
    ck_assert_str_eq(words_said(arena, &polish_plain, some), "ostrzeżenia 7, 9");
}
END_TEST

/* The lists of the route language whose words stand in sentences. */
static const enum WordList spoken[] = {
    WORDS_WAY,      WORDS_CPC,   WORDS_INTO, WORDS_PLACE, WORDS_SURFACE, WORDS_WALL,
    WORDS_MATERIAL, WORDS_UNDER, WORDS_WIRE, WORDS_ENTRY, WORDS_FROM,    WORDS_LOCATION,
};

START_TEST(words_of_the_route_language_are_explained_in_polish)
{
    const enum WordList list = spoken[_i];
    ck_assert_int_gt(survey_word_count(list), 1);
    for (int i = 0; i < survey_word_count(list); i++) {
        const struct Say *meaning = say(arena, SAY_AS_IS, say_meaning(list, i));
        ck_assert_msg(strcmp(words_said(arena, &polish_plain, meaning), survey_meaning(list, i)) != 0,
                      "list %d: \"%s\" is not explained in Polish", (int)list, survey_word(list, i));
        ck_assert_str_eq(words_said(arena, &english_plain, meaning), survey_meaning(list, i));
    }
    const struct Say *out_of_list = say(arena, SAY_AS_IS, say_meaning(list, -1));
    ck_assert_str_eq(words_said(arena, &polish_plain, out_of_list), "");
}
END_TEST

START_TEST(names_of_the_route_language_stay)
{
    const struct Say *cable = say(arena, SAY_CABLE, say_word(WORDS_CABLE, (int)CABLE_BS5467));
    ck_assert_str_eq(words_said(arena, &polish_plain, cable), "kabel BS5467");
    const struct Say *way = say(arena, SAY_AS_IS, say_word(WORDS_WAY, (int)WAY_DUCT));
    ck_assert_str_eq(words_said(arena, &polish_plain, way), "rura os\u0142onowa");
    ck_assert_str_eq(words_said(arena, &english_plain, way), "duct");
}
END_TEST

/* ---- warnings ---- */

static int holes_in(const char *text)
{
    int count = 0;
    for (const char *at = strstr(text, "{}"); at != NULL; at = strstr(at + 2, "{}")) {
        count++;
    }
    return count;
}

/* "[{angle: {} deg}]" is no template of ours: the braces go, the figures stay. */
static const char *warning_figures(const char *text)
{
    struct TextBuilder out = text_builder(arena);
    for (; *text != '\0'; text++) {
        text_add_char(&out, (char)(*text == '{' || *text == '}' ? ' ' : *text));
    }
    return figures(text_done(&out));
}

START_TEST(warnings_are_said_in_polish)
{
    int count = 0;
    for (int code = 0; code < MSG_COUNT; code++) {
        if (diag_severity((enum DiagCode)code) != DIAG_WARNING) {
            continue;
        }
        const char *from = diag_template((enum DiagCode)code);
        const char *own = words_warning_text(LANGUAGE_POLISH, (enum DiagCode)code);
        ck_assert_msg(own != NULL, "%s is not said in Polish", diag_name((enum DiagCode)code));
        ck_assert_str_ne(own, from);
        ck_assert_msg(holes_in(own) == holes_in(from), "%s has other holes", diag_name((enum DiagCode)code));
        ck_assert_str_eq(warning_figures(own), warning_figures(from));
        ck_assert_ptr_eq(words_warning_text(LANGUAGE_ENGLISH, (enum DiagCode)code), from);
        count++;
    }
    ck_assert_int_gt(count, 10);
}
END_TEST

START_TEST(what_goes_into_a_warning_is_polish_too)
{
    const char *const cover[] = {"lawn", "450", "600", diag_phrase(PHRASE_UNDER_LAWN), NULL};
    const char *said = words_warning(arena, &polish_plain, MSG_COVER_SHALLOW, cover);
    ck_assert_ptr_nonnull(strstr(said, "odcinek \"lawn\": przykrycie 450 mm, a zwykle jest 600 mm pod traw\u0105"));
    ck_assert_str_eq(words_warning(arena, &english_plain, MSG_COVER_SHALLOW, cover),
                     diag_sentence(arena, MSG_COVER_SHALLOW, cover));
    const char *const loop[] = {"0.35", "42", NULL};
    ck_assert_ptr_nonnull(strstr(words_warning(arena, &polish_plain, MSG_LOOP_BELOW_ELECTRODE, loop), " 0,35 ohm "));
    const char *const names_with_points[] = {"1.2.3", NULL};
    ck_assert_ptr_nonnull(
        strstr(words_warning(arena, &polish_plain, MSG_SEGMENT_UNUSED, names_with_points), "\"1.2.3\""));
    ck_assert_str_eq(words_warning(arena, &polish_plain, MSG_SEGMENT_UNUSED, NULL), "");
}
END_TEST

/* A decimal number gets the comma, and nothing else that has figures and points; the first phrase is one too. */
static const struct WarningWord {
    const char *word, *polish;
} warning_words[] = {
    {"0.35", "0,35"}, {"12.5", "12,5"},   {"12.75", "12,75"}, {"12", "12"},     {"", ""},
    {".5", ".5"},     {"1.2.3", "1.2.3"}, {"2.x", "2.x"},     {"L1.5", "L1.5"}, {"2x.5", "2x.5"},
};

START_TEST(numbers_in_a_warning_have_a_decimal_comma)
{
    const char *const words[] = {warning_words[_i].word, NULL};
    ck_assert_str_eq(
        words_warning(arena, &polish_plain, MSG_ROUTE_CHANGED, words),
        arena_print(arena, "to NIE jest plan z pliku, lecz zmienionej trasy: %s", warning_words[_i].polish));
    ck_assert_str_eq(words_warning(arena, &english_plain, MSG_ROUTE_CHANGED, words),
                     arena_print(arena, "this is NOT the plan of the file, but of a changed route: %s", *words));
}
END_TEST

START_TEST(every_hole_of_a_warning_is_filled)
{
    const char *const costs[] = {"feed", "16", "63", "41.5", "10", "50", "40", NULL};
    ck_assert_str_eq(words_warning(arena, &polish_plain, MSG_RANGE_COSTS, costs),
                     "dla ca\u0142ych zakres\u00f3w \"feed\" potrzebuje 16 mm2, 63 A i 41,5 m do zam\u00f3wienia; "
                     "przy mniejszych ko\u0144cach wystarczy\u0142oby 10 mm2, 50 A i 40 m");
    const char *const warm[] = {"lawn", diag_phrase((enum DiagPhrase)0), diag_phrase(PHRASE_LAY_ELSEWHERE), NULL};
    ck_assert_int_eq(PHRASE_GROUND_TOO_WARM, 0);
    ck_assert_str_eq(
        words_warning(arena, &polish_plain, MSG_CAPACITY_FIGURE_OPEN, warm),
        "odcinek \"lawn\": tabela 4B2 nie dopuszcza kabla w tak ciep\u0142ym gruncie, wi\u0119c nie wiadomo, "
        "ile kabel tam przewodzi, i plan pozostaje otwarty; u\u0142o\u017cy\u0107 go gdzie indziej albo "
        "zastosowa\u0107 zaciski na 90 degC");
}
END_TEST

/* Paper has signs: a unit behind a figure becomes its own, whole words alone and the longer of two; what only reads
 * like a unit stays. */
START_TEST(warnings_have_the_signs_of_paper)
{
    static const struct Words on_paper = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_SIGNS},
                              na_papierze = {.language = LANGUAGE_POLISH, .medium = MEDIUM_SIGNS};
    const char *const set[] = {"cable: 10 mm2 for 0.35 ohm, 9 mm2, 5 mm2x, 5mm2, 6-mm2, ohm, x ohm and 7 m", NULL};
    const char *said = words_warning(arena, &on_paper, MSG_ROUTE_CHANGED, set);
    ck_assert_ptr_nonnull(
        strstr(said, ": cable: 10 mm\u00b2 for 0.35 \u03a9, 9 mm\u00b2, 5 mm2x, 5mm2, 6-mm2, ohm, x ohm and 7 m"));
    said = words_warning(arena, &english_plain, MSG_ROUTE_CHANGED, set);
    ck_assert_ptr_nonnull(strstr(said, ": cable: 10 mm2 for 0.35 ohm, 9 mm2, 5 mm2x, 5mm2, 6-mm2, ohm, x ohm and 7 m"));
    const char *const loop[] = {"0.35", "42", NULL};
    said = words_warning(arena, &on_paper, MSG_LOOP_BELOW_ELECTRODE, loop);
    ck_assert_ptr_nonnull(strstr(said, " 0.35 \u03a9 "));
    said = words_warning(arena, &na_papierze, MSG_LOOP_BELOW_ELECTRODE, loop);
    ck_assert_ptr_nonnull(strstr(said, " 0,35 \u03a9 "));
}
END_TEST

/* Nobody who reads a paper has the file: no key of it, and no more holes than the message fills. */
START_TEST(warnings_on_paper_name_no_key)
{
    static const struct {
        enum DiagCode code;
        const char *keys[3];
    } rows[] = {{MSG_ALONG_ORDER, {"along\""}},
                {MSG_RCBO_WITHOUT_RESIDUAL, {"residual:"}},
                {MSG_BENDS_MANY, {"bends:", "angle:"}},
                {MSG_ELECTRODE_RESISTANCE_IGNORED, {"electrode-resistance"}},
                {MSG_PULL_UNUSED, {"drawn:", "pull "}},
                {MSG_RESIDUAL_SERIES, {"time-delayed:"}},
                {MSG_LEG_OR_FALL, {"legs:"}}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const char *words[8] = {NULL};
        for (int hole = 0; hole < holes_in(diag_template(rows[i].code)); hole++) {
            words[hole] = "a word";
        }
        for (int medium = MEDIUM_PLAIN; medium <= MEDIUM_SIGNS; medium++) {
            for (int language = 0; language < LANGUAGES; language++) {
                const struct Words as = {.language = (enum Language)language, .medium = (enum Medium)medium};
                const char *said = words_warning(arena, &as, rows[i].code, words);
                ck_assert_ptr_nonnull(strstr(said, words[0] == NULL ? "RCBO" : words[0]));
                for (int key = 0; key < 3 && rows[i].keys[key] != NULL; key++) {
                    ck_assert_msg((strstr(said, rows[i].keys[key]) != NULL) == (medium == MEDIUM_PLAIN), "%s", said);
                }
            }
        }
    }
}
END_TEST

/* ---- documents ---- */

static const char *const routes[] = {"bell-tower",   "cider-barn", "grain-auger", "joinery-shed",
                                     "lambing-shed", "pottery",    "well-pump"};

static struct Bytes read_all(const char *name)
{
    enum { MOST = 1 << 20 };
    FILE *file = fopen(arena_print(arena, "%s/%s.yaml", ROUTES_FOLDER, name), "rb");
    ck_assert_ptr_nonnull(file);
    char *data = arena_alloc(arena, MOST);
    const size_t length = fread(data, 1, MOST, file);
    fclose(file);
    ck_assert(length > 0 && length < MOST);
    return (struct Bytes){data, length};
}

static struct Wend *planned(const char *name)
{
    const struct Bytes text = read_all(name);
    struct Wend *wend = wend_plan(name, text.data, text.length);
    ck_assert_int_le((int)wend_status(wend), (int)WEND_CHECK_FAILS);
    return wend;
}

/* Without the style sheet, whose remarks are for whoever changes it. */
static const char *text_of(struct WendBytes page)
{
    ck_assert_ptr_nonnull(page.data);
    const char *text = arena_text(arena, page.data, page.length);
    const char *style = strstr(text, "</style>");
    return style != NULL ? style : text;
}

/* A page or a drawing says of itself in which language it is. */
static bool is_polish(struct WendBytes page)
{
    ck_assert_ptr_nonnull(page.data);
    const char *text = arena_text(arena, page.data, page.length);
    return strstr(text, "<html lang=\"pl\">") != NULL || strstr(text, "xml:lang=\"pl\"") != NULL;
}

/* Some labels are written in English on the job, whoever writes them. */
static bool polish_says_it_too(const char *words)
{
    for (int id = SAY_NOTHING + 1; id < SAYINGS; id++) {
        if (polish(id) != NULL && strstr(polish(id), words) != NULL) {
            return true;
        }
    }
    return false;
}

static bool three_words(const char *text)
{
    int words = 0, letters = 0;
    for (; *text != '\0'; text++) {
        letters = *text == ' ' ? 0 : letters + 1;
        words += letters == 2;
    }
    return words >= 3;
}

/* The parts of every English entry between its holes, where they are three words and more, that stand in `page`. */
static int english_in(const char *page, bool told)
{
    int found = 0;
    for (int id = SAY_NOTHING + 1; id < SAYINGS; id++) {
        unsigned long long units;
        const char *text = bare(english(id), &units);
        while (*text != '\0') {
            const size_t length = strcspn(text, "|");
            const char *words = arena_text(arena, text, length);
            if (id != SAY_LABEL_ENGLISH_GOVERNS && three_words(words) && strstr(page, words) != NULL &&
                !polish_says_it_too(words)) {
                found++;
                if (told) {
                    printf("English: \"%s\" of %s\n", words, names[id]);
                }
            }
            text += length + (text[length] == '|');
        }
    }
    return found;
}

START_TEST(what_a_crew_reads_is_polish)
{
    struct Wend *wend = planned(routes[_i]);
    int polish_ones = 0;
    ck_assert_int_gt(english_in(text_of(wend_document(wend, WEND_BRIEF_HTML)), false), 20);
    ck_assert(wend_use_language(wend, "pl"));
    for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) {
        const struct WendBytes page = wend_document(wend, (enum WendDocument)i);
        if (page.data != NULL && is_polish(page)) {
            ck_assert_int_eq(english_in(text_of(page), true), 0);
            polish_ones++;
        }
    }
    ck_assert_int_ge(polish_ones, 2);
    ck_assert(is_polish(wend_document(wend, WEND_DIAGRAM_SVG)) && is_polish(wend_document(wend, WEND_BRIEF_HTML)));
    wend_free(wend);
}
END_TEST

START_TEST(all_others_get_the_same_bytes)
{
    struct Wend *one = planned(routes[_i]), *other = planned(routes[_i]);
    ck_assert(wend_use_language(other, "pl"));
    ck_assert(!wend_use_language(other, "polski") && !wend_use_language(other, "") && !wend_use_language(other, NULL));
    for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) {
        const struct WendBytes a = wend_document(one, (enum WendDocument)i);
        const struct WendBytes b = wend_document(other, (enum WendDocument)i);
        if (!wend_has_document(one, (enum WendDocument)i)) {
            continue;
        }
        const bool same = a.length == b.length && memcmp(a.data, b.data, a.length) == 0;
        ck_assert_msg(same != is_polish(b), "document %d is %s", i, same ? "the same" : "another");
    }
    ck_assert(wend_use_language(other, "en"));
    for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) { /* and back again */
        const struct WendBytes a = wend_document(one, (enum WendDocument)i);
        const struct WendBytes b = wend_document(other, (enum WendDocument)i);
        ck_assert(a.length == b.length && (a.length == 0 || memcmp(a.data, b.data, a.length) == 0));
    }
    wend_free(one);
    wend_free(other);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("languages");
    TCase *tests = tcase_create("languages");
    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, no_entry_is_missing);
    tcase_add_test(tests, arguments_and_units_are_those_of_english);
    tcase_add_test(tests, figures_are_those_of_english);
    tcase_add_test(tests, nothing_is_left_in_english);
    tcase_add_loop_test(tests, polish_counts_in_three_forms, 0, ROWS(plurals));
    tcase_add_test(tests, polish_has_a_decimal_comma);
    tcase_add_test(tests, polish_letters_have_capitals);
    tcase_add_test(tests, sentences_begin_small_behind_a_colon);
    tcase_add_test(tests, one_caution_is_no_plural);
    tcase_add_loop_test(tests, words_of_the_route_language_are_explained_in_polish, 0, ROWS(spoken));
    tcase_add_test(tests, names_of_the_route_language_stay);
    tcase_add_test(tests, warnings_are_said_in_polish);
    tcase_add_test(tests, what_goes_into_a_warning_is_polish_too);
    tcase_add_loop_test(tests, numbers_in_a_warning_have_a_decimal_comma, 0,
                        (int)(sizeof warning_words / sizeof warning_words[0]));
    tcase_add_test(tests, every_hole_of_a_warning_is_filled);
    tcase_add_test(tests, warnings_have_the_signs_of_paper);
    tcase_add_test(tests, warnings_on_paper_name_no_key);
    tcase_add_loop_test(tests, what_a_crew_reads_is_polish, 0, ROWS(routes));
    tcase_add_loop_test(tests, all_others_get_the_same_bytes, 0, ROWS(routes));
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
