/* Makes sentences of sayings. */
#include "words_private.h"

#include <math.h>
#include <string.h>

static const char *const english[SAYINGS] = {
    [SAY_NOTHING] = "",
#define WORD(id, text) [id] = (text),
#include "words/en/catalogue.inc"
#undef WORD
};

static const char *const polish[SAYINGS] = {
    [SAY_NOTHING] = "",
#define WORD(id, text) [id] = (text),
#include "words/pl/catalogue.inc"
#undef WORD
};

static const struct Kind polish_kinds[] = {
#define KIND(list, member, word, meaning) {WORDS_##list, (int)(member), (word), (meaning)},
#include "words/pl/kinds.inc"
#undef KIND
};

static const char *const units[UNITS][2] = {
#define UNIT(id, plain, sign) [id] = {[MEDIUM_PLAIN] = (plain), [MEDIUM_SIGNS] = (sign)},
#include "words/en/units.inc"
#undef UNIT
};

static int english_form(int count)
{
    return count == 1 ? 0 : 1;
}

/* 1 kabel, 2 kable, 5 kabli; 12 kabli, but 22 kable. */
static int polish_form(int count)
{
    const int last = count % 10, two = count % 100;
    return count == 1 ? 0 : last >= 2 && last <= 4 && (two < 12 || two > 14) ? 1 : 2;
}

static const struct Wording wordings[LANGUAGES] = {
    [LANGUAGE_ENGLISH] = {"en", 2, english_form, '.', "times", english, NULL, 0},
    [LANGUAGE_POLISH] = {"pl", 3, polish_form, ',', "razy", polish, polish_kinds,
                         sizeof polish_kinds / sizeof polish_kinds[0]},
};

const struct Wording *words_wording(enum Language language)
{
    return &wordings[language];
}

const char *words_code(enum Language language)
{
    return wordings[language].code;
}

bool words_lacks(enum Language language, enum Saying id)
{
    return wordings[language].texts[id] == NULL;
}

const char *words_unit(const struct Words *words, enum Unit unit)
{
    return units[unit][words->medium];
}

/* A sentence while it is made. */
struct Sentence {
    struct TextBuilder text;
    const struct Words *words;
    const struct Wording *wording;
    bool capital; /* due at the next letter, unless a name comes first */
    bool small;   /* the same */
};

/* Names and figures: as they are. */
static void put_as_is(struct Sentence *sentence, const char *text)
{
    sentence->capital = sentence->capital && *text == '\0';
    sentence->small = sentence->small && *text == '\0';
    text_add(&sentence->text, text);
}

/* Polish has letters beyond ASCII, of two bytes each: a small one and its capital. The other one of `text`'s first. */
static const char *other_case(struct Bytes text, bool small)
{
    static const char *const pairs[][2] = {{"ą", "Ą"}, {"ć", "Ć"}, {"ę", "Ę"}, {"ł", "Ł"}, {"ń", "Ń"},
                                           {"ó", "Ó"}, {"ś", "Ś"}, {"ź", "Ź"}, {"ż", "Ż"}};
    for (size_t i = 0; text.length >= 2 && i < sizeof pairs / sizeof *pairs; i++) {
        if (memcmp(text.data, pairs[i][small], 2) == 0) {
            return pairs[i][!small];
        }
    }
    return NULL;
}

/* The first letter of `text` as a small one: of a word or an article, not of RCBO, L1 or B 20 A. */
static struct Bytes put_small(struct Sentence *sentence, struct Bytes text)
{
    const char *beyond_ascii = other_case(text, true);
    const bool capital = text.data[0] >= 'A' && text.data[0] <= 'Z';
    const bool word = text.length > 1 && ((text.data[1] >= 'a' && text.data[1] <= 'z') || (text.data[1] & 0x80) != 0 ||
                                          strncmp(text.data, "A ", 2) == 0);
    size_t bytes = 0;
    if (beyond_ascii != NULL) {
        text_add(&sentence->text, beyond_ascii);
        bytes = 2;
    } else if (capital && word) {
        text_add_char(&sentence->text, (char)(text.data[0] - 'A' + 'a'));
        bytes = 1;
    }
    sentence->small = false;
    return (struct Bytes){text.data + bytes, text.length - bytes};
}

/* A hyphen between a figure and a letter, as in 2-pole, does not end a line. */
static void add_words(struct Sentence *sentence, struct Bytes text)
{
    const bool held = sentence->words->hyphens && sentence->words->medium == MEDIUM_SIGNS;
    size_t from = 0;
    for (size_t i = 0; held && i + 1 < text.length; i++) {
        const size_t length = sentence->text.length;
        char before = ' ';
        if (i > from) {
            before = text.data[i - 1];
        } else if (length > 0) {
            before = sentence->text.data[length - 1];
        }
        if (text.data[i] == '-' && before >= '0' && before <= '9' && text.data[i + 1] >= 'a' &&
            text.data[i + 1] <= 'z') {
            text_add_bytes(&sentence->text, text.data + from, i - from);
            text_add(&sentence->text, "\u2011");
            from = i + 1;
        }
    }
    text_add_bytes(&sentence->text, text.data + from, text.length - from);
}

static void put_words(struct Sentence *sentence, struct Bytes text)
{
    const bool due = sentence->capital && text.length > 0;
    const char *beyond_ascii = due ? other_case(text, false) : NULL;
    if (sentence->small && text.length > 0) {
        text = put_small(sentence, text);
    }
    if (due) {
        const char first = text.data[0];
        const bool small = first >= 'a' && first <= 'z';
        const size_t bytes = beyond_ascii != NULL ? 2 : 1;
        if (beyond_ascii != NULL) {
            text_add(&sentence->text, beyond_ascii);
        } else {
            text_add_char(&sentence->text, (char)(small ? first - 'a' + 'A' : first));
        }
        sentence->capital = false;
        text.data += bytes;
        text.length -= bytes;
    }
    add_words(sentence, text);
}

static void put_text(struct Sentence *sentence, const char *text)
{
    put_words(sentence, (struct Bytes){text, strlen(text)});
}

static void put_number(struct Sentence *sentence, const struct SayArg *arg);
static void put_unit(struct Sentence *sentence, enum Unit unit);

/* number_text() ends at a thousand million, which what a large conductor withstands goes beyond. */
static bool put_millions(struct Sentence *sentence, const struct SayArg *arg)
{
    if (arg->kind != SAY_ARG_DIGITS || !isfinite(arg->value) || fabs(arg->value) < 1e9 || fabs(arg->value) >= 1e15) {
        return false;
    }
    put_number(sentence, &(struct SayArg){.kind = SAY_ARG_DIGITS, .figures = arg->figures, .value = arg->value / 1e6});
    put_unit(sentence, UNIT_TIMES_SIGN);
    put_unit(sentence, UNIT_MILLION);
    return true;
}

static void put_number(struct Sentence *sentence, const struct SayArg *arg)
{
    enum { SPACED_FROM = 5 };
    struct Arena *arena = sentence->text.arena;
    if (put_millions(sentence, arg)) {
        return;
    }
    const char *text = arg->kind == SAY_ARG_COUNT   ? arena_print(arena, "%d", arg->count)
                       : arg->kind == SAY_ARG_FIXED ? number_text(arena, arg->value, arg->figures)
                                                    : number_significant(arena, arg->value, arg->figures);
    if (*text == '-') {
        put_as_is(sentence, words_unit(sentence->words, UNIT_MINUS_SIGN));
        text++;
    }
    const size_t whole = strspn(text, "0123456789");
    const bool spaced = sentence->words->thousands && sentence->words->medium == MEDIUM_SIGNS && whole >= SPACED_FROM;
    for (size_t i = 0; text[i] != '\0'; i++) {
        if (spaced && i > 0 && i < whole && (whole - i) % 3 == 0) {
            text_add(&sentence->text, "\u202f");
        }
        text_add_char(&sentence->text, (char)(text[i] == '.' ? sentence->wording->decimal : text[i]));
    }
}

static void put_unit(struct Sentence *sentence, enum Unit unit)
{
    const bool signs = sentence->words->medium == MEDIUM_SIGNS;
    if (unit == UNIT_NONE) {
        return;
    }
    if (!signs || unit != UNIT_DEG) {
        put_as_is(sentence, signs && sentence->words->together ? "\u00a0" : " ");
    }
    put_as_is(sentence, unit == UNIT_TIMES ? sentence->wording->times : words_unit(sentence->words, unit));
}

static bool is_number(const struct SayArg *arg)
{
    return arg->kind == SAY_ARG_FIXED || arg->kind == SAY_ARG_DIGITS || arg->kind == SAY_ARG_COUNT;
}

static bool fits(const struct Hole *hole, const struct Say *said)
{
    if (hole->kind < HOLE_WHOLE) {
        return true;
    }
    if (hole->index >= said->count) {
        return false;
    }
    const struct SayArg *arg = &said->args[hole->index];
    return hole->kind == HOLE_FORMS ? arg->kind == SAY_ARG_COUNT : hole->kind != HOLE_FIGURE || is_number(arg);
}

static bool is_empty(const struct SayArg *arg)
{
    return arg->kind == SAY_ARG_PART   ? arg->part == NULL || (arg->part->id == SAY_NOTHING && arg->part->next == NULL)
           : arg->kind == SAY_ARG_TERM ? arg->term == SAY_NOTHING
           : arg->kind == SAY_ARG_NAME || arg->kind == SAY_ARG_CALCULATION ? arg->name == NULL || *arg->name == '\0'
                                                                           : false;
}

static void put_all(struct Sentence *sentence, const struct Say *said);

static const struct Kind *find_kind(const struct Wording *wording, const struct SayArg *arg)
{
    for (size_t i = 0; i < wording->kind_count; i++) {
        if (wording->kinds[i].list == arg->list && wording->kinds[i].member == arg->member) {
            return &wording->kinds[i];
        }
    }
    return NULL;
}

static const char *kind_word(const struct Wording *wording, const struct SayArg *arg)
{
    const struct Kind *kind = find_kind(wording, arg);
    return kind != NULL && kind->word != NULL ? kind->word : survey_word(arg->list, arg->member);
}

static const char *kind_meaning(const struct Wording *wording, const struct SayArg *arg)
{
    const struct Kind *kind = find_kind(wording, arg);
    return kind != NULL ? kind->meaning : survey_meaning(arg->list, arg->member);
}

static void put_arg(struct Sentence *sentence, const struct SayArg *arg)
{
    switch (arg->kind) {
    case SAY_ARG_FIXED:
    case SAY_ARG_DIGITS:
    case SAY_ARG_COUNT: put_number(sentence, arg); break;
    case SAY_ARG_NAME: put_as_is(sentence, arg->name); break;
    case SAY_ARG_CALCULATION:
        put_as_is(sentence, words_calculation(sentence->text.arena, sentence->words, arg->name));
        break;
    case SAY_ARG_WORD: put_text(sentence, kind_word(sentence->wording, arg)); break;
    case SAY_ARG_MEANING: put_text(sentence, kind_meaning(sentence->wording, arg)); break;
    case SAY_ARG_TERM: put_all(sentence, &(struct Say){.id = arg->term}); break;
    case SAY_ARG_PART: put_all(sentence, arg->part); break;
    case SAY_ARG_END: break;
    }
}

/* A figure that stands in the sentence itself stays on the line of its unit too. */
static void hold_figure(struct Sentence *sentence)
{
    const char *text = sentence->text.data;
    const size_t length = sentence->text.length;
    if (sentence->words->together && sentence->words->medium == MEDIUM_SIGNS && length > 1 && text[length - 1] == ' ' &&
        text[length - 2] >= '0' && text[length - 2] <= '9') {
        sentence->text.length--;
        text_add(&sentence->text, "\u00a0");
    }
}

static void put_hole(struct Sentence *sentence, const struct Hole *hole, const struct Say *said)
{
    if (hole->kind == HOLE_BRACE) {
        put_as_is(sentence, "{");
        return;
    }
    if (hole->kind == HOLE_UNIT) {
        hold_figure(sentence);
        put_as_is(sentence, words_unit(sentence->words, hole->unit));
        return;
    }
    const bool paper = sentence->words->medium == MEDIUM_SIGNS;
    if (hole->kind == HOLE_TYPED) {
        put_words(sentence, paper ? (struct Bytes){"", 0} : hole->lead);
        return;
    }
    const struct SayArg *arg = &said->args[hole->index];
    if (is_empty(arg) || (hole->typed && paper)) {
        return;
    }
    put_words(sentence, hole->lead);
    if (hole->kind == HOLE_FORMS) {
        const int form = sentence->wording->form(arg->count);
        put_words(sentence, hole->forms[form < hole->form_count ? form : hole->form_count - 1]);
        return;
    }
    const bool due = sentence->capital;
    const size_t before = sentence->text.length;
    const bool small = sentence->small;
    sentence->capital = due || (hole->kind == HOLE_CAPITAL && !small);
    sentence->small = small || (hole->kind == HOLE_SMALL && !due);
    put_arg(sentence, arg);
    sentence->small = small && sentence->text.length == before;
    sentence->capital = due && sentence->text.length == before;
    if (is_number(arg) && hole->kind != HOLE_FIGURE) {
        put_unit(sentence, arg->unit);
    }
}

static void put_template(struct Sentence *sentence, const char *text, const struct Say *said)
{
    struct Hole hole;
    while (*text != '\0') {
        const size_t plain = strcspn(text, "{");
        put_words(sentence, (struct Bytes){text, plain});
        text += plain;
        if (*text == '\0') {
            return;
        }
        const bool read = hole_read(text, &hole);
        if (read && fits(&hole, said)) {
            put_hole(sentence, &hole, said);
        } else {
            hole.length = read ? hole.length : 1;
            text_add_bytes(&sentence->text, text, hole.length);
        }
        text += hole.length;
    }
}

/* What a language lacks is said in English, with all that is in it: no sentence mixes two. */
static void put_all(struct Sentence *sentence, const struct Say *said)
{
    const struct Wording *wording = sentence->wording;
    const size_t start = sentence->text.length;
    for (; said != NULL; said = said->next) {
        if (said->id == SAY_NOTHING) {
            continue;
        }
        if (sentence->text.length > start) {
            text_add_char(&sentence->text, ' ');
        }
        const char *text = wording->texts[said->id];
        sentence->wording = text == NULL ? &wordings[LANGUAGE_ENGLISH] : wording;
        put_template(sentence, text == NULL ? english[said->id] : text, said);
        sentence->wording = wording;
    }
}

const char *words_in(struct Arena *arena, const struct Wording *wording, const struct Words *words,
                     const struct Say *said)
{
    struct Sentence sentence = {.text = text_builder(arena), .words = words, .wording = wording};
    put_all(&sentence, said);
    return arena_failed(arena) ? "" : text_done(&sentence.text);
}

const char *words_said(struct Arena *arena, const struct Words *words, const struct Say *said)
{
    return words_in(arena, words_wording(words->language), words, said);
}
