/* The fixed words of the route language, both ways. */
#include "survey.h"

struct Word {
    const char *word;
    const char *meaning;
};
/* clang-format off */
#define LIST(of, type) static const struct Word of##_words[] = {
#define KIND(symbol, word, meaning) {word, meaning},
#define END(of) };
#include "survey_kinds.inc"

static const struct {
    const struct Word *words;
    int count;
} lists[WORDS_COUNT] = {
#define LIST(of, type) {of##_words, of##_COUNT},
#include "survey_kinds.inc"
};
/* clang-format on */

int survey_word_count(enum WordList list)
{
    return lists[list].count;
}

const char *survey_word(enum WordList list, int value)
{
    return value >= 0 && value < lists[list].count ? lists[list].words[value].word : "";
}

const char *survey_meaning(enum WordList list, int value)
{
    return value >= 0 && value < lists[list].count ? lists[list].words[value].meaning : "";
}
