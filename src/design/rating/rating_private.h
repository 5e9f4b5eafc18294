/** What the files on ratings and drops know of each other, and their workings. */
#ifndef WEND_RATING_PRIVATE_H
#define WEND_RATING_PRIVATE_H

#include "design/terms/steps_private.h"
#include "tables/fault_tables.h"

/* ---- factor_because.c ---- */
/** What a factor was taken for, in words, from its cause and figures; NULL without an arena. */
const struct Say *factor_because(struct Arena *arena, const struct Edition *edition, const struct Factor *factor);

/* ---- working_load.c ---- */
void work_load(struct Arena *arena, const struct RunDesign *run, struct Check *out);

/* ---- working_drop_sums.c ---- */
/** What of some loads is in step with the voltage of their line, what a quarter turn behind it, and what may be either.
 */
struct LoadSums {
    int count;
    double active_a, reactive_a, unknown_a;
};
enum { LOADS_OF_ANY_LINE = -2 };
/** Adds up the loads of a line (or LOAD_ON_EVERY_LINE, or LOADS_OF_ANY_LINE) that count in `terms`; `of` names them,
 * NULL none.
 */
struct LoadSums steps_load_sums(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms,
                                int line, const struct Say *of);
/** What a metre drops, from r, x and z. */
void steps_drop_of_metre(struct Steps *steps, const struct DropTerms *terms, enum Saying what, struct SayArg source);
void steps_drop_of_length(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms,
                          enum Saying what, double volts);

/* ---- working_drop_lines.c ---- */
/** Says which line is looked at, and which loads are taken as off because they would lessen what is looked for. */
void steps_left_off(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms);
/** All loads that count, turned to the voltage of `terms` and added up. */
void steps_phasors(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms);
/** The drop of unequal lines by phasors. */
void work_drop_of_lines(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial);
/** The rise of the line that rises most. */
void work_rise(struct Steps *steps, const struct RunDesign *run, const struct Trial *trial);

/* ---- working_neutral.c ---- */
void work_neutral(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                  const struct Neutral *neutral, struct Check *out);

/* ---- working_drop.c ---- */
void work_drop(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);
/** The part that a stretch has in the drop of the run. */
void work_drop_part(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, int stretch,
                    struct Rating *out);

/* ---- working_rating.c ---- */
/** What a stretch carries and how warm the conductor gets there. */
void work_rating(struct Arena *arena, const struct RunDesign *run, const struct Situation *situation,
                 struct Rating *out);

/* ---- neutral.c ---- */
void check_neutral(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);

#endif
