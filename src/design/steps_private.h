/** The working of a figure, written down while it is worked. Without an arena nothing is kept.
 *
 * A step whose `numbers` are not "" is meant to be typed into a calculator: it holds figures and signs only, and gives
 * the figure in `result`. What is looked up or surveyed has "" there and says in `formula` where from. */
#ifndef WEND_STEPS_PRIVATE_H
#define WEND_STEPS_PRIVATE_H

#include "fault_private.h"

struct Steps {
    struct Arena *arena;
    struct Step *list;
    int count, room;
};

/* ---- steps.c ---- */
struct Steps steps_begin(struct Arena *arena);
/** One line more; texts are kept, not copied. */
void steps_add(struct Steps *steps, const char *what, const char *formula, const char *numbers, const char *result,
               const char *source);
/** The same, with a figure and its unit for a result; `unit` may be "". */
void steps_figure(struct Steps *steps, const char *what, const char *formula, const char *numbers, double value,
                  const char *unit, const char *source);
/** Hands the steps to the check. */
void steps_end(struct Steps *steps, struct Check *out);
/** A figure as a working shows it: seven significant digits, which for what was surveyed or printed is the figure
 * itself. */
const char *steps_number(const struct Steps *steps, double value);

/** Where a printed figure is from, and whether it was only remembered. */
const char *steps_source(const struct Steps *steps, const struct TableRef *ref);

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
/** Adds up the loads of a line (or LOAD_ON_EVERY_LINE, or LOADS_OF_ANY_LINE) that count in `terms`; `of` says which. */
struct LoadSums steps_load_sums(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms,
                                int line, const char *of);
/** What a metre drops, from r, x and z. */
void steps_drop_of_metre(struct Steps *steps, const struct DropTerms *terms, const char *what, const char *source);
void steps_drop_of_length(struct Steps *steps, const struct RunDesign *run, const struct DropTerms *terms,
                          const char *what, double volts);

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

/* ---- working_loop.c ---- */
/** How a fault at the far end is cut off, in figures. */
struct CutOff {
    double time_s; /**< allowed */
    double zs_ohm;
    double trip_a, limit_ohm; /**< of the overcurrent part; 0 none held */
    double path_ohm;          /**< that the residual current flows through */
    double multiple, acts_s;  /**< of the rated residual current at this fault, and the time of the device there; 0 no
                                 residual part */
};
void work_disconnection(struct Arena *arena, const struct RunDesign *run, const struct Loop *loop,
                        const struct CutOff *cut, struct Check *out);

/* ---- working_fault.c ---- */
/** A part of the protective conductor: a core, the armour, a separate conductor. */
struct Part54 {
    const char *name;
    double area_mm2;
    double k;
    const struct TableRef *area_ref; /**< NULL: as surveyed */
    const char *k_source;
};
void work_protective_by_table(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                              const struct Part54 *part, double needed_mm2, struct Check *out);
void work_protective_by_energy(struct Arena *arena, const struct RunDesign *run, const struct Part54 *part,
                               const struct Energy *energy, double needed_mm2, struct Check *out);
void work_live_conductors(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                          const struct Energy *energy, double k, struct Check *out);
void work_breaking_capacity(struct Arena *arena, const struct RunDesign *run, struct Check *out);

/* ---- working_earthing.c ---- */
void work_electrode(struct Arena *arena, const struct RunDesign *run, double residual_a, struct Check *out);
void work_bonding(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out);

/* ---- working_rules.c ---- */
void work_starting(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                   const struct Starting *starting, double multiple, struct Check *out);
/** One line of working for a rule that is met or not: what it looks at, and what was found. */
void work_rule(struct Arena *arena, const struct RunDesign *run, const char *what, const char *found,
               struct Check *out);
void work_device_for_load(struct Arena *arena, const struct RunDesign *run, struct Check *out);

#endif
