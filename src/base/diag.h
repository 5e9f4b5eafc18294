/** The one place that faults are reported to. Every message text lives in diag_messages.inc. */
#ifndef WEND_DIAG_H
#define WEND_DIAG_H

#include "base.h"

enum DiagSeverity { DIAG_WARNING, DIAG_ERROR };

/** One entry a message; the list is made from diag_messages.inc: MSG(SYMBOL, "stable-name", SEVERITY, "text with {}
 * holes") */
enum DiagCode {
#define MSG(symbol, name, severity, text) MSG_##symbol,
#include "diag_messages.inc"
#undef MSG
    MSG_COUNT
};

/** What a report speaks of, where that is one run or one segment: whoever looks for it there need not read the text. */
enum DiagOf { DIAG_OF_FILE, DIAG_OF_RUN, DIAG_OF_SEGMENT };
struct DiagSubject {
    enum DiagOf of;
    int index; /**< of the run or segment in its file */
};
#define DIAG_RUN(number)     ((struct DiagSubject){DIAG_OF_RUN, number})
#define DIAG_SEGMENT(number) ((struct DiagSubject){DIAG_OF_SEGMENT, number})

/** Parts of messages that are chosen from: PHRASE(SYMBOL, "text") in diag_phrases.inc. */
enum DiagPhrase {
#define PHRASE(symbol, text) PHRASE_##symbol,
#include "diag_phrases.inc"
#undef PHRASE
    PHRASE_COUNT
};
const char *diag_phrase(enum DiagPhrase phrase);

/** One step on the way to what a report is about: a key, or with NULL a place in a list, from 0 on. */
struct KeyStep {
    const char *key;
    int index;
};
struct KeyPath {
    const struct KeyStep *steps;
    int count; /**< 0: the whole file */
};

struct Diagnostic {
    enum DiagCode code;
    enum DiagSeverity severity;
    struct DiagSubject subject;
    struct Mark mark;         /**< where; {0,0} when it has no place in the file */
    int width;                /**< characters to underline, at least 1 */
    const char *const *words; /**< what goes into its holes, made printable, and NULL; NULL when memory failed */
    const char *text;         /**< finished sentence, UTF-8, no control characters */
};

struct Diag;

/** A sink for one route file; its memory comes from `arena`. NULL when memory fails. */
struct Diag *diag_new(struct Arena *arena);

/** Arguments of a message, one for each {} of its text, in order. */
#define DIAG_WORDS(...) ((const char *const[]){__VA_ARGS__, NULL})
#define DIAG_NO_WORDS   NULL

/** Reports one fault. `width` 0 counts as 1. Words are copied and made printable: control characters
 * become \xNN, texts over 240 characters are cut with an ellipsis at a character boundary. */
void diag_report(struct Diag *diag, enum DiagCode code, struct Mark mark, int width, const char *const *words);
/** The same of one run or segment. */
void diag_report_of(struct Diag *diag, struct DiagSubject subject, enum DiagCode code, struct Mark mark, int width,
                    const char *const *words);

/** The finished sentence of a message with printable words in its holes; "" for NULL. */
const char *diag_sentence(struct Arena *arena, enum DiagCode code, const char *const *words);

/** The words in the {} holes of any text of the same holes. */
const char *diag_filled(struct Arena *arena, const char *text, const char *const *words);

/** Words beside the file that may be at fault too, such as those of a command: a mark of line DIAG_WORD_LINE + i lies
 * in the one of index i. They live as long as the sink. */
#define DIAG_WORD_LINE (1 << 28)
void diag_set_words(struct Diag *diag, const char *const *words, int count);
/** The one that a mark lies in; NULL: it lies in the file, or nowhere. */
const char *diag_word_at(const struct Diag *diag, struct Mark mark);

/** Reports kept, sorted by place (those without a place first), same place in order of arrival. At most
 * DIAG_LIMIT are kept; when more arrive a last one (too-many-faults) says how many were left out. */
#define DIAG_LIMIT 100
size_t diag_count(const struct Diag *diag);
const struct Diagnostic *diag_at(struct Diag *diag, size_t index);
/** Errors reported, counting those beyond the limit. */
size_t diag_errors(const struct Diag *diag);

/** Stable name of a message ("key-unknown"), its severity and its text with {} holes. */
const char *diag_name(enum DiagCode code);
enum DiagSeverity diag_severity(enum DiagCode code);
const char *diag_template(enum DiagCode code);

/** All reports as text: "file:line:column: error: text [name]", then the line itself and a caret under it.
 * `source` is the route file's bytes (for the lines shown); data may be NULL. */
const char *diag_print(struct Diag *diag, struct Arena *arena, const char *file, struct Bytes source);

#endif
