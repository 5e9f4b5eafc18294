/* The warnings of a plan: they come from the sink of faults as a code and its words, and are said here in a language.
 */
#include "words_private.h"

#include <string.h>

static const char *const polish_warnings[MSG_COUNT] = {
#define WARNING(symbol, text) [MSG_##symbol] = (text),
#define PHRASE(symbol, text)
#include "words/pl/warnings.inc"
#undef WARNING
#undef PHRASE
};

static const char *const polish_phrases[PHRASE_COUNT] = {
#define WARNING(symbol, text)
#define PHRASE(symbol, text) [PHRASE_##symbol] = (text),
#include "words/pl/warnings.inc"
#undef WARNING
#undef PHRASE
};

static const char *const on_paper[LANGUAGES][MSG_COUNT] = {
#define ON_PAPER(symbol, english, polish) [LANGUAGE_ENGLISH][MSG_##symbol] = (english),
#include "warnings_on_paper.inc"
#undef ON_PAPER
#define ON_PAPER(symbol, english, polish) [LANGUAGE_POLISH][MSG_##symbol] = (polish),
#include "warnings_on_paper.inc"
#undef ON_PAPER
};

/* By language; in English the sink has them itself. */
static const struct Warnings {
    const char *const *texts, *const *phrases;
} languages[LANGUAGES] = {[LANGUAGE_POLISH] = {polish_warnings, polish_phrases}};

const char *words_warning_text(enum Language language, enum DiagCode code)
{
    return languages[language].texts == NULL ? diag_template(code) : languages[language].texts[code];
}

/* A phrase, a number, or a name as it is. */
static const char *own_word(struct Arena *arena, enum Language language, const char *word)
{
    for (int i = 0; i < PHRASE_COUNT; i++) {
        if (languages[language].phrases[i] != NULL && strcmp(word, diag_phrase((enum DiagPhrase)i)) == 0) {
            return languages[language].phrases[i];
        }
    }
    const size_t whole = strspn(word, "0123456789");
    if (whole > 0 && word[whole] == '.' && strspn(word + whole + 1, "0123456789") == strlen(word + whole + 1)) {
        return arena_print(arena, "%.*s%c%s", (int)whole, word, words_wording(language)->decimal, word + whole + 1);
    }
    return word;
}

/* Units behind a figure in the signs of paper: "10 mm2" becomes "10 mm²". A name that reads like a unit stays. */
static const char *with_signs(struct Arena *arena, const char *text)
{
    static const struct Words plain = {.medium = MEDIUM_PLAIN}, signs = {.medium = MEDIUM_SIGNS};
    struct TextBuilder out = text_builder(arena);
    for (const char *at = text; *at != '\0'; at++) {
        text_add_char(&out, *at);
        const size_t letters = strspn(at + 1, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789/");
        for (int unit = UNIT_NONE + 1; at > text && *at == ' ' && at[-1] >= '0' && at[-1] <= '9' && unit < UNITS;
             unit++) {
            const char *name = words_unit(&plain, (enum Unit)unit);
            if (letters > 0 && strlen(name) == letters && strncmp(at + 1, name, letters) == 0) {
                text_add(&out, words_unit(&signs, (enum Unit)unit));
                at += letters;
                break;
            }
        }
    }
    return text_done(&out);
}

const char *words_warning(struct Arena *arena, const struct Words *words, enum DiagCode code, const char *const *holes)
{
    enum { HOLES_MOST = 12 };
    const char *own[HOLES_MOST + 1] = {NULL};
    const char *paper = words->medium == MEDIUM_SIGNS ? on_paper[words->language][code] : NULL;
    const char *text = paper != NULL ? paper : words_warning_text(words->language, code);
    if ((paper == NULL && languages[words->language].texts == NULL) || text == NULL || holes == NULL) {
        const char *sentence = diag_sentence(arena, code, holes);
        return words->medium == MEDIUM_SIGNS ? with_signs(arena, sentence) : sentence;
    }
    const char *hole = strstr(text, "{}");
    for (int i = 0; i < HOLES_MOST && holes[i] != NULL && hole != NULL; i++, hole = strstr(hole + 2, "{}")) {
        own[i] = languages[words->language].phrases == NULL ? holes[i] : own_word(arena, words->language, holes[i]);
    }
    const char *sentence = diag_filled(arena, text, own);
    return words->medium == MEDIUM_SIGNS ? with_signs(arena, sentence) : sentence;
}
