/* The templates as words.c reads them, open to tests with a language of their own. */
#ifndef WEND_WORDS_PRIVATE_H
#define WEND_WORDS_PRIVATE_H

#include "words.h"

enum { WORDS_FORMS_MOST = 6 };

/* What a word of the route language is called in a sentence, and what it means. */
struct Kind {
    enum WordList list;
    int member;
    const char *word, *meaning; /* word NULL: as in the file */
};

struct Wording {
    const char *code; /* ISO 639-1 */
    int forms;        /* of a noun with a number */
    int (*form)(int count);
    char decimal;
    const char *times;        /* "2.5 times" */
    const char *const *texts; /* by enum Saying; NULL entries are said in English */
    const struct Kind *kinds; /* words of the route language; those that are missing are English */
    size_t kind_count;
};

const struct Wording *words_wording(enum Language language);
/* The text of a warning, with {} holes; NULL where a language has none. */
const char *words_warning_text(enum Language language, enum DiagCode code);
const char *words_in(struct Arena *arena, const struct Wording *wording, const struct Words *words,
                     const struct Say *said);

/* A stretch of template that begins with a brace. */
enum HoleKind { HOLE_BRACE, HOLE_UNIT, HOLE_TYPED, HOLE_WHOLE, HOLE_FIGURE, HOLE_CAPITAL, HOLE_SMALL, HOLE_FORMS };
struct Hole {
    enum HoleKind kind;
    struct Bytes lead; /* of HOLE_TYPED all that it holds */
    bool typed;        /* an argument for MEDIUM_PLAIN alone */
    int index;
    enum Unit unit;
    int form_count;
    struct Bytes forms[WORDS_FORMS_MOST];
    size_t length; /* of it all, braces too */
};
/* False where it is not well formed. */
bool hole_read(const char *at, struct Hole *out);
/* What is wrong with a template, NULL nothing; `used` gets a bit for each argument that it prints or counts by. */
const char *template_fault(const char *text, int forms, unsigned *used);

#endif
