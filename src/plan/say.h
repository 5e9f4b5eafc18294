/** Something to say, as data: which saying, and what goes into it. The design writes these down; only `src/words` makes
 * words of them, in a language and for a medium. Const once made.
 *
 *     check->text = say(arena, SAY_CHECK_LOAD, say_digits(rating_a, 4, UNIT_A));
 *
 * A saying is a line of `src/words/en/TOPIC.inc`: its id, and its English text, which nobody reads but `src/words`. */
#ifndef WEND_PLAN_SAY_H
#define WEND_PLAN_SAY_H

#include "base/base.h"
#include "survey/survey.h"

enum Saying {
    SAY_NOTHING,
#define WORD(id, english) id,
#include "words/en/catalogue.inc"
#undef WORD
    SAYINGS
};

enum Unit {
#define UNIT(id, plain, sign) id,
#include "words/en/units.inc"
#undef UNIT
    UNITS
};

/* FIXED .. WORD are what a maker below is for; END ends a list while it is made. */
enum SayKind {
    SAY_ARG_END,
    SAY_ARG_FIXED,
    SAY_ARG_DIGITS,
    SAY_ARG_COUNT,
    SAY_ARG_NAME,
    SAY_ARG_CALCULATION,
    SAY_ARG_WORD,
    SAY_ARG_MEANING,
    SAY_ARG_TERM,
    SAY_ARG_PART
};

struct Say;

/** Made by say_fixed() and the like only. */
struct SayArg {
    enum SayKind kind;
    enum Unit unit; /**< of a number */
    int figures;    /**< decimals of SAY_ARG_FIXED, significant digits of SAY_ARG_DIGITS */
    union {
        double value;
        int count;
        const char *name;
        struct {
            enum WordList list;
            int member;
        };
        enum Saying term;
        const struct Say *part;
    };
};
enum { SAY_ARGS_MOST = 10 };

struct Say {
    enum Saying id;
    int count;
    const struct SayArg *args;
    const struct Say *next; /**< a further sentence, NULL none */
};

/** A number as number_text() writes it. */
struct SayArg say_fixed(double value, int decimals, enum Unit unit);
/** A number as number_significant() writes it. */
struct SayArg say_digits(double value, int digits, enum Unit unit);
/** A whole number of things; what a plural goes by. */
struct SayArg say_count(int count);
/** Text that is of no language and lives as long as the plan: a name of the survey, a code, a standard's clause. */
struct SayArg say_name(const char *name);
/** What is typed into a calculator, or a formula of the same signs: figures, letters for quantities, + - x / ^ ( ) sqrt
 * ln pi, each sign of two sides between blanks. Lives as long as the plan. */
struct SayArg say_calculation(const char *text);
/** A word of the route language, as survey_word() gives it. */
struct SayArg say_word(enum WordList list, int member);
/** What that word means, as survey_meaning() gives it. */
struct SayArg say_meaning(enum WordList list, int member);
/** A saying that nothing goes into; SAY_NOTHING leaves its place empty. */
struct SayArg say_term(enum Saying term);
/** Another saying; NULL leaves its place empty. */
struct SayArg say_part(const struct Say *part);

/** say(arena, SAY_X) or say(arena, SAY_X, say_count(3), ...), with SAY_ARGS_MOST arguments at most.
 * NULL where `arena` is NULL (while sizes are tried nobody reads), and when memory fails (arena_failed() is true then).
 */
#define say(...)                                                                                                       \
    SAY_PICK(__VA_ARGS__, SAY_FULL, SAY_FULL, SAY_FULL, SAY_FULL, SAY_FULL, SAY_FULL, SAY_FULL, SAY_FULL, SAY_FULL,    \
             SAY_FULL, SAY_BARE, )                                                                                     \
    (__VA_ARGS__)
#define SAY_PICK(arena, id, a0, a1, a2, a3, a4, a5, a6, a7, a8, a9, made, ...) made
#define SAY_BARE(arena, id)                                                    say_made(arena, id, NULL)
#define SAY_FULL(arena, id, ...)                                               say_made(arena, id, SAY_ARGS(__VA_ARGS__))
#define SAY_ARGS(...)                                                          ((const struct SayArg[]){__VA_ARGS__, {.kind = SAY_ARG_END}})
/** What say() calls: `args` end with SAY_ARG_END and are copied; NULL for none. */
const struct Say *say_made(struct Arena *arena, enum Saying id, const struct SayArg *args);

/** A copy in memory of its own. NULL for NULL, and when memory failed. */
const char *text_kept(struct Arena *arena, const char *text);
/** The same, names and all. */
const struct Say *say_kept(struct Arena *arena, const struct Say *said);

/** True when both say the same, word for word in any language; NULL is the same as NULL. */
bool say_same(const struct Say *a, const struct Say *b);

/** An argument as a saying of its own; NULL for an empty one. */
const struct Say *say_alone(struct Arena *arena, struct SayArg arg);

/** A list with one more at its end, behind `joint` (SAY_COMMA, SAY_SEMICOLON ...). Each of them may be empty. */
const struct Say *say_list(struct Arena *arena, enum Saying joint, const struct Say *list, struct SayArg more);

/** The one and then the other, each of which may be NULL; neither is changed. NULL where `arena` is. */
const struct Say *say_then(struct Arena *arena, const struct Say *first, const struct Say *second);

#endif
