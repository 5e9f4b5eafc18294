/** The reader's own nouns: field tables, the reader that walks with them, what it passes between its files. */
#ifndef WEND_READ_PRIVATE_H
#define WEND_READ_PRIVATE_H

#include "language.h"
#include "read.h"
#include "survey/survey.h"
#include "tree_private.h"

/* ---- quantities.c: numbers with units ---- */

/** What is wrong with a written number; QUANTITY_GOOD when nothing. */
enum QuantityFault {
    QUANTITY_GOOD,
    QUANTITY_NOT_A_NUMBER, /**< does not begin with a number */
    QUANTITY_ODD,          /**< a number in a form that is not taken; `reason` says which */
    QUANTITY_COMMA,        /**< decimal comma; `advice` is what to write */
    QUANTITY_NO_UNIT,      /**< `advice` is what to write */
    QUANTITY_HORSEPOWER,
    QUANTITY_WRONG_UNIT,  /**< `reason` is the unit as written */
    QUANTITY_UNIT_NOT_DUE /**< a bare number is expected; `reason` is the unit as written */
};

struct QuantityRead {
    enum QuantityFault fault;
    double value;       /**< in the unit the kind is stored in */
    bool apparent;      /**< written in kVA */
    const char *reason; /**< see QuantityFault */
    const char *advice;
};

/** Reads "12.4 m" as `unit` (MEASURE_NONE: a bare number). A pure function of its text; words live in `arena`. */
struct QuantityRead quantity_read(struct Arena *arena, const char *text, enum Measure unit);
/** What to write for a number with a comma: "12.4 m" for "12,4 m", and both readings of "1,000 m". */
const char *quantity_without_comma(struct Arena *arena, const char *text);

/* ---- suggest.c ---- */

/** The nearest of `count` words (word(list, i) gives them), or NULL when none is near. Letter case, "_" and spaces for
 * "-" count as near. */
typedef const char *suggest_word(const void *list, size_t index);
const char *suggest_near(const char *written, const void *list, size_t count, suggest_word *word);
/** Changes of one letter (insert, delete, replace, swap of neighbours) between two texts, at most `most` + 1. */
size_t suggest_distance(const char *left, const char *right, size_t most);

/* Defaults that depend on something else, so that no field table can hold them. */
#define DEFAULT_DROP_LIMIT_PERCENT          5.0
#define DEFAULT_DROP_LIMIT_LIGHTING_PERCENT 3.0
#define DEFAULT_FLAT_CORES                  3

/* ---- spoken.c ---- */

/** What a word that people type is here, as the end of a sentence; NULL when it is not known. `of` is where it was
 * typed: a key whose word it was to be, or "device." for a key of that table. */
const char *spoken_means(const char *typed, const char *of);
/** A word of the list; NULL behind the last. */
const char *spoken_word(int index);

/* ---- the reader ---- */

struct Reader {
    struct Arena *arena;
    struct Diag *diag;
    struct Bytes source;
    struct DiagSubject subject;          /**< what is being read: what reports speak of */
    const struct TreeNode *readings;     /**< the mapping of that name; NULL none */
    const struct AsLaidWas *before_laid; /**< of each segment; NULL none */
    struct Assumed *assumed;
    int assumed_count, assumed_room;
};

/** Where a mapping stands: how messages and assumptions name it, and what to underline when a key is missing. */
struct Spot {
    const char *path; /**< "runs.feeder.start" */
    struct Mark mark;
    int width;
};

/** Reads `map` (NULL: it was left out, only defaults are filled in) by its table into `out`. `context` is one bit or 0
 * when not known. What could not be read is marked unknown: NAN, the word list's count, NULL for texts, -1 for whole
 * numbers; comparisons with it are then false, so that nothing derived from it is complained about. */
void fields_read(struct Reader *reader, const struct FieldTable *table, const struct TreeNode *map, struct Spot place,
                 unsigned context, void *out);
/** Reports what keys of a mapping ask of each other and do not get: the rows of relations.c. */
void relations_check(struct Reader *reader, const struct FieldTable *table, const struct TreeNode *map,
                     struct Spot place);
/** Marks everything of a table as not given. */
void fields_absent(const struct FieldTable *table, void *out);
/** Marks everything of a table unknown. */
void fields_unknown(const struct FieldTable *table, void *out);
/** Reads one word of a list; the list's count when it is not one of them (reported). */
int fields_word(struct Reader *reader, const char *key, const struct TreeNode *node, enum WordList words);
/** Reads one text; NULL when it was refused (reported). */
const char *fields_text(struct Reader *reader, const char *key, const struct TreeNode *node, size_t longest,
                        bool one_line);
/** The entry of a key, or NULL; NULL also when `map` is no mapping. */
const struct TreeEntry *fields_find(const struct TreeNode *map, const char *key);
/** True for an empty value and "~". */
bool fields_node_empty(const struct TreeNode *node);
/** True for a day of the calendar, written as 2026-05-14; the year 0000 is none. */
bool fields_is_date(const char *text);
/** Text quoted from the file, cut to 60 characters. */
const char *fields_quote(struct Reader *reader, const char *text);
/** A copy without the blanks before and behind it. */
const char *read_trimmed(struct Arena *arena, const char *text);

void reader_report(struct Reader *reader, enum DiagCode code, const struct TreeNode *node, const char *const *words);
/** That the list below a key holds more than `most`. */
void reader_report_long(struct Reader *reader, const struct TreeNode *key, int most);
/** The key that each kind of file begins with, its value 1, and what is reported where it does not. */
struct VersionKey {
    const char *key;
    enum DiagCode missing, unknown, not_first;
};
enum Version { VERSION_HOLDS, VERSION_MISSING, VERSION_OTHER };
/** VERSION_HOLDS also where the key is there misspelt, which is reported as that, or is not the first. */
enum Version reader_version(struct Reader *reader, const struct TreeNode *root, const struct VersionKey *version);
/** At a mark of which no node is at hand: the width is that of the plain value there. */
void reader_report_mark(struct Reader *reader, enum DiagCode code, struct Mark mark, const char *const *words);
/** Of the run that is being read, if one is. */
void reader_assume(struct Reader *reader, struct Assumed assumed);
/** Moves the assumptions `from` up to but not including `to` behind all others, for the order of the file. */
void reader_assumed_last(struct Reader *reader, int from, int to);

/** The context bit that a mapping's own word gives ("way", "kind"); `absent` when it is left out, 0 when it is no good.
 * Reports nothing: the field table does. */
unsigned fields_context(const struct TreeNode *map, const char *key, enum WordList words, unsigned absent);
/** True when a mapping that lacks `key` has one that looks like it. */
bool unknown_key_near(const struct TreeNode *map, const char *key);
/** "path.key", or the key alone at the top. */
const char *reader_path(struct Reader *reader, const char *path, const char *key);

/** A bend before it is stored. */
struct BendRead {
    struct Quantity angle_deg, radius_m;
};

/** Segments by name, for `along`. */
struct SegmentNames {
    const struct Segment *segments;
    const int *sorted; /**< indexes in order of name; unnamed ones left out */
    int count;
    bool complete; /**< every segment has a known name */
};

/** Index of a segment by its name, as papers show it; -1 when there is none, of several of one name the first. */
int read_segment_named(const struct SegmentNames *names, const char *name);

/* ---- the long walks ---- */

/** The marks of a segment, whose length is read already. */
void read_landmarks(struct Reader *reader, const struct TreeEntry *entry, const char *path, struct Segment *segment);
/** Segments into survey->segments; their names, sorted, into `names`. */
void read_segments(struct Reader *reader, const struct TreeEntry *entry, struct Survey *survey,
                   struct SegmentNames *names);
/** Runs into survey->runs. */
void read_runs(struct Reader *reader, const struct TreeEntry *entry, const struct SegmentNames *names,
               struct Survey *survey);
/** A run's device and what its keys demand of each other. `map` NULL when left out. */
void read_device(struct Reader *reader, const struct TreeNode *map, struct Spot place, struct Device *device);
/** A run's cable. `path` is the run's. */
void read_cable(struct Reader *reader, const struct TreeNode *map, struct Spot place, struct Run *run);
/** Once all runs are known: which run of kind earth a separate cpc is. */
void read_cpc_run(struct Reader *reader, const struct TreeNode *cable, const char *path, struct Run *run,
                  const struct Run *runs, int count);
/** The segments a run follows. */
void read_along(struct Reader *reader, const struct TreeEntry *entry, const struct SegmentNames *names,
                int segment_count, struct Run *run);

/** What was measured on a run, by the entry of the run. */
void read_measurements(struct Reader *reader, const struct TreeEntry *run_item, struct Run *run);
/** Once all runs are known: readings of others, and such as their run cannot have. */
void read_readings(struct Reader *reader, struct Survey *survey);

/** What cables and ducts are cut from; `entry` is the key "stock". Once runs and segments are known. */
void read_stock(struct Reader *reader, const struct TreeEntry *entry, struct Survey *survey);

/** Faults between fields. Only reports; the survey is complete by then, unknown where it could not be read. */
void survey_relations(struct Reader *reader, const struct Survey *survey);

#endif
