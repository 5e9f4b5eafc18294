/** Text as people will see it: cleaned of what shows nothing but changes what is read, counted and cut by what shows.
 */
#ifndef WEND_SHOWN_PRIVATE_H
#define WEND_SHOWN_PRIVATE_H

#include "base/base.h"
#include "plan/plan.h"
#include "plan/say.h"
#include "takeoff/parts.h"

/** One line, without control characters, without marks that turn the reading direction and without invisible
 * characters; bytes that are not UTF-8 become U+FFFD. "" when memory fails or `text` is NULL. */
const char *shown_text(struct Arena *arena, const char *text);
/** Bytes of the first character with everything that combines with it; 0 at the end. `text` is well formed. */
size_t shown_step(const char *text);
/** Columns that a terminal gives to a code point: 0 for what combines, 2 for wide letters and pictures. */
int shown_code_columns(unsigned long code);
/** Columns of a whole text on a terminal. */
int shown_columns(const char *text);
/** Cut to `columns` with an ellipsis when it is longer; never within a character. */
const char *shown_cut(struct Arena *arena, const char *text, int columns);
/** How many bytes of `text` make a line of at most `columns`: up to a blank where there is one. *next is where the
 * following line begins. At least one character. */
size_t shown_line(const char *text, int columns, size_t *next);

/** What a plan says, in the words and signs of files and the terminal: words_said(), English, MEDIUM_PLAIN. ""
 * for a NULL arena: the document was lost already. */
const char *shown_said(struct Arena *arena, const struct Say *said);
/** "A2s": a unit as it is typed, in one word. */
const char *shown_unit(struct Arena *arena, enum Unit unit);
/** A text as documents for machines may hold it: what XML has no character for becomes U+FFFD. */
const char *shown_clean(struct Arena *arena, const char *text);
/** A number with nine significant digits at most, without trailing zeros: how documents for machines have it. */
const char *shown_figure(struct Arena *arena, double value);
/** "10 mm2": of a run's conductors; "" where it is not known. */
const char *shown_size(struct Arena *arena, const struct PlanRun *run);
/** "at 4 m, 1.5 m left": where a landmark is as one comes from the supply end. */
const struct Say *landmark_place_said(struct Arena *arena, const struct Landmark *landmark);
/** The result of a step: a figure with its unit, or words. */
const char *shown_result(struct Arena *arena, const struct Step *step);

/** The titles of the first few, and how many more; NULL for none. */
const struct Say *check_titles(struct Arena *arena, const struct CheckList *checks);

/** What an article is for, as parts_uses_said() shortens it. */
const char *shown_uses(struct Arena *arena, const struct Part *part);

/** "path, orchard and 2 more": the stretches of a caution; else its run's name, "" for the whole job. */
const char *caution_places(struct Arena *arena, const struct Plan *plan, const struct Caution *caution);

#endif
