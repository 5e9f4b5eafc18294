/** Reads a route file's text into a Survey. */
#ifndef WEND_READ_H
#define WEND_READ_H

#include "base/base.h"
#include "base/diag.h"
#include "buying/order.h"
#include "buying/prices.h"
#include "labour/labour.h"
#include "survey/survey.h"

/** The largest route file that is read, bytes. */
#define READ_LIMIT_BYTES ((size_t)4 * 1024 * 1024)

/** Reads and checks the whole of `source`. All faults go to `diag`. The result lives in `arena`; NULL when there
 * were errors (also when memory failed: ask arena_failed()). */
const struct Survey *read_survey(struct Arena *arena, struct Diag *diag, struct Bytes source);

/** What is to be different from the file before it is read. */
struct ReadChanges {
    int set_count;
    const char *const *sets; /**< "segments.field.length=66 m"; they live as long as the survey */
    bool so_far;             /**< as if the file said that its survey is not complete */
    const double *shares;    /**< where in each range to read; NULL: at its larger end */
    bool undigested;         /**< nobody asks for Survey.digest, and it is 0 */
};
/** read_survey() of a route that is changed so; a warning says so for each of them. Faults of such a word have their
 * place in it. `changes` may be NULL. */
const struct Survey *read_survey_changed(struct Arena *arena, struct Diag *diag, struct Bytes source,
                                         const struct ReadChanges *changes);

/** What `sets` is to say for a key of a run or a segment: "runs.feeder.start.place"; a segment whose name would be
 * taken apart otherwise goes by its number. NULL where neither leads there, as of a run with "=" in its name. */
const char *read_key_of_run(struct Arena *arena, const struct Survey *survey, int run, const char *below);
const char *read_key_of_segment(struct Arena *arena, const struct Survey *survey, int segment, const char *below);
/** Whether one of `sets` is of that key. */
bool read_sets(const char *word, const char *key);

/** Reads and checks an order file as read_survey() does a route file. `date`, unless "", is the day the order is placed
 * (read_is_date() holds for it) and overrides the one in the file, which without it must give one. */
const struct Order *read_order(struct Arena *arena, struct Diag *diag, struct Bytes source, const char *date);
/** True for a day of the calendar, written as 2026-05-14. */
bool read_is_date(const char *text);

/** Reads and checks a price list: RFC 4180 in UTF-8, line ends of either kind. The first line names the columns: code,
 * unit, price and currency in any order; others are not read. A line without a price is left out. All faults go to
 * `diag`; the result and its texts live in `arena`. NULL when there were errors (also when memory failed). */
const struct PriceList *read_prices(struct Arena *arena, struct Diag *diag, struct Bytes source);

/** Reads and checks labour figures as read_order() does an order file. */
const struct Labour *read_labour(struct Arena *arena, struct Diag *diag, struct Bytes source);
/** The file of labour figures that the program has of its own: common practice, no source. */
struct Bytes read_labour_built_in(void);

/** The reference manual of the route and order languages and of labour figures as text, made from the field tables. */
const char *read_manual(struct Arena *arena);

/** What a word that people type is in the language: "is system: TN-C-S under supply"; "" where it is not known. */
const char *read_spoken(const char *word);

/** The nearest of `count` words to what was written, as messages suggest it; "" when none is near. */
const char *read_nearest(const char *written, const char *const *words, size_t count);

#endif
