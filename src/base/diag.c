/* The single sink for faults: collects, limits, sorts by place. Texts come from diag_messages.inc alone, so that tests,
 * manual and users can rely on the stable names. */
#include "diag.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

enum { WORD_CHARACTERS_MOST = 240 };

struct Template {
    const char *name;
    enum DiagSeverity severity;
    const char *text;
};

static const struct Template templates[MSG_COUNT] = {
#define MSG(symbol, name, severity, text) [MSG_##symbol] = {name, severity, text},
#include "diag_messages.inc"
#undef MSG
};

static const char *const phrases[PHRASE_COUNT] = {
#define PHRASE(symbol, text) [PHRASE_##symbol] = (text),
#include "diag_phrases.inc"
#undef PHRASE
};

const char *diag_phrase(enum DiagPhrase phrase)
{
    return phrases[phrase];
}

struct Kept {
    struct Diagnostic diagnostic;
    size_t order;
};

struct Diag {
    struct Arena *arena;
    struct Kept kept[DIAG_LIMIT + 1]; /* one more for too-many-faults */
    size_t count;
    size_t arrived;
    size_t errors;
    size_t left_out;
    size_t warnings_kept;
    bool sorted;
    const char *const *words;
    int word_count;
};

struct Diag *diag_new(struct Arena *arena)
{
    struct Diag *diag = arena_alloc(arena, sizeof *diag);
    if (diag != NULL) {
        diag->arena = arena;
    }
    return diag;
}

const char *diag_name(enum DiagCode code)
{
    return templates[code].name;
}

enum DiagSeverity diag_severity(enum DiagCode code)
{
    return templates[code].severity;
}

const char *diag_template(enum DiagCode code)
{
    return templates[code].text;
}

/* Whatever a terminal may act on, or that turns the order of letters round. */
static bool must_be_escaped(unsigned long code)
{
    return code < 0x20 || (code >= 0x7F && code <= 0x9F) || code == 0x2028 || code == 0x2029 ||
           (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069) || code == 0xFEFF ||
           code == 0xFFFE || code == 0xFFFF;
}

/* What could harm a terminal or mislead is escaped, what is long is cut. */
static void add_word(struct TextBuilder *builder, const char *word)
{
    size_t length = strlen(word);
    int characters = 0;
    for (size_t at = 0; at < length; characters++) {
        if (characters == WORD_CHARACTERS_MOST) {
            text_add(builder, "...");
            return;
        }
        int bytes = utf8_length(word + at, length - at);
        if (bytes == 0) {
            text_print(builder, "\\x%02X", (unsigned)(unsigned char)word[at]);
            at++;
            continue;
        }
        unsigned long code = utf8_code(word + at);
        if (!must_be_escaped(code)) {
            text_add_bytes(builder, word + at, (size_t)bytes);
        } else if (code <= 0xFF) {
            text_print(builder, "\\x%02lX", code);
        } else {
            text_print(builder, "\\u%04lX", code);
        }
        at += (size_t)bytes;
    }
}

/* Copies that can be printed, one for each hole of the message and NULL; NULL when memory fails. */
static const char *const *printable(struct Arena *arena, const char *const *words)
{
    size_t count = 0;
    while (words != NULL && words[count] != NULL) {
        count++;
    }
    const char **copies = arena_array(arena, count + 1, sizeof *copies);
    for (size_t i = 0; i < count && copies != NULL; i++) {
        struct TextBuilder word = text_builder(arena);
        add_word(&word, words[i]);
        copies[i] = text_done(&word);
    }
    return copies;
}

const char *diag_filled(struct Arena *arena, const char *text, const char *const *words)
{
    struct TextBuilder builder = text_builder(arena);
    size_t used = 0;
    if (words == NULL) {
        return "";
    }
    while (*text != '\0') {
        const char *hole = strstr(text, "{}");
        if (hole == NULL) {
            text_add(&builder, text);
            break;
        }
        text_add_bytes(&builder, text, (size_t)(hole - text));
        assert(words[used] != NULL && "fewer words than holes");
        text_add(&builder, words[used] != NULL ? words[used++] : "?");
        text = hole + 2;
    }
    assert(words[used] == NULL && "more words than holes");
    return text_done(&builder);
}

const char *diag_sentence(struct Arena *arena, enum DiagCode code, const char *const *words)
{
    return diag_filled(arena, templates[code].text, words);
}

/* An error must not be lost because warnings came first: the last warning makes room. */
static struct Kept *make_room(struct Diag *diag, enum DiagSeverity severity)
{
    if (diag->count < DIAG_LIMIT) {
        diag->warnings_kept += severity == DIAG_WARNING;
        return &diag->kept[diag->count++];
    }
    diag->left_out++;
    if (severity == DIAG_ERROR && diag->warnings_kept > 0) {
        size_t latest = DIAG_LIMIT;
        for (size_t i = 0; i < DIAG_LIMIT; i++) {
            if (diag->kept[i].diagnostic.severity == DIAG_WARNING &&
                (latest == DIAG_LIMIT || diag->kept[i].order > diag->kept[latest].order)) {
                latest = i;
            }
        }
        if (latest < DIAG_LIMIT) {
            diag->warnings_kept--;
            return &diag->kept[latest];
        }
    }
    return NULL;
}

void diag_report(struct Diag *diag, enum DiagCode code, struct Mark mark, int width, const char *const *words)
{
    diag_report_of(diag, (struct DiagSubject){DIAG_OF_FILE, 0}, code, mark, width, words);
}

void diag_report_of(struct Diag *diag, struct DiagSubject subject, enum DiagCode code, struct Mark mark, int width,
                    const char *const *words)
{
    enum DiagSeverity severity = templates[code].severity;
    size_t order = diag->arrived++;
    if (severity == DIAG_ERROR) {
        diag->errors++;
    }
    struct Kept *kept = make_room(diag, severity);
    if (kept == NULL) {
        return;
    }
    const char *const *copies = printable(diag->arena, words);
    *kept = (struct Kept){
        .diagnostic = {.code = code,
                       .severity = severity,
                       .subject = subject,
                       .mark = mark,
                       .width = width > 0 ? width : 1,
                       .words = copies,
                       .text = diag_sentence(diag->arena, code, copies)},
        .order = order,
    };
    diag->sorted = false;
}

size_t diag_count(const struct Diag *diag)
{
    return diag->count + (diag->left_out > 0 ? 1 : 0);
}

size_t diag_errors(const struct Diag *diag)
{
    return diag->errors;
}

void diag_set_words(struct Diag *diag, const char *const *words, int count)
{
    diag->words = words;
    diag->word_count = count;
}

const char *diag_word_at(const struct Diag *diag, struct Mark mark)
{
    const int index = mark.line - DIAG_WORD_LINE;
    return index >= 0 && index < diag->word_count ? diag->words[index] : NULL;
}

static bool comes_before(const struct Kept *a, const struct Kept *b)
{
    const struct Mark *x = &a->diagnostic.mark;
    const struct Mark *y = &b->diagnostic.mark;
    if (x->line != y->line) {
        return x->line < y->line;
    }
    if (x->column != y->column) {
        return x->column < y->column;
    }
    return a->order < b->order;
}

static void sort_kept(struct Diag *diag)
{
    for (size_t i = 1; i < diag->count; i++) {
        struct Kept moving = diag->kept[i];
        size_t at = i;
        while (at > 0 && comes_before(&moving, &diag->kept[at - 1])) {
            diag->kept[at] = diag->kept[at - 1];
            at--;
        }
        diag->kept[at] = moving;
    }
    if (diag->left_out > 0) {
        char number[24];
        snprintf(number, sizeof number, "%zu", diag->left_out);
        const char *const *copies = printable(diag->arena, DIAG_WORDS(number));
        diag->kept[diag->count].diagnostic = (struct Diagnostic){
            .code = MSG_TOO_MANY_FAULTS,
            .severity = diag->errors > 0 ? DIAG_ERROR : DIAG_WARNING,
            .width = 1,
            .words = copies,
            .text = diag_sentence(diag->arena, MSG_TOO_MANY_FAULTS, copies),
        };
    }
    diag->sorted = true;
}

const struct Diagnostic *diag_at(struct Diag *diag, size_t index)
{
    if (index >= diag_count(diag)) {
        return NULL;
    }
    if (!diag->sorted) {
        sort_kept(diag);
    }
    return &diag->kept[index].diagnostic;
}
