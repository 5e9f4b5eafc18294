/** The route language as rows: every mapping, key, unit, range and default, what keys ask of each other, and in which
 * order one asks for them on site. The reader, its messages, the manual, the schema and all forms are made from these.
 */
#ifndef WEND_LANGUAGE_H
#define WEND_LANGUAGE_H

#include "base/base.h"
#include "base/diag.h"
#include "survey/survey.h"

/** Kinds of quantity. Two kinds may share spellings and differ in what they are stored in or shown as. */
enum Measure {
    MEASURE_NONE,
    MEASURE_METRE,      /**< m */
    MEASURE_MILLIMETRE, /**< stored in mm */
    MEASURE_DEPTH,      /**< stored in m, shown in mm */
    MEASURE_MM2,
    MEASURE_AMPERE,
    MEASURE_FAULT_AMPERE, /**< stored in A, shown in kA */
    MEASURE_RESIDUAL,     /**< stored in A, shown in mA */
    MEASURE_VOLT,
    MEASURE_WATT, /**< W; kVA too, told apart by quantity_is_apparent() */
    MEASURE_OHM,
    MEASURE_OHM_METRE,
    MEASURE_K_M_PER_W,
    MEASURE_DEGC,
    MEASURE_PERCENT,
    MEASURE_RATIO,  /**< written in %, stored as 0..1 */
    MEASURE_DEGREE, /**< of angle */
    MEASURE_A2S,    /**< of let-through energy */
    MEASURE_MINUTE, /**< of work */
    MEASURE_MEGOHM, /**< stored in Mohm */
    MEASURE_TIME,   /**< stored in s, shown in ms */
    MEASURE_COUNT
};

/** "12.4 m": a stored value as a surveyor would write it. */
const char *quantity_show(struct Arena *arena, double value, enum Measure unit);
/** "m, cm or mm". */
const char *quantity_units(struct Arena *arena, enum Measure unit);
/** How such a quantity is written: "12.4 m"; "" for MEASURE_NONE. */
const char *quantity_example(enum Measure unit);
/** The unit that messages show: "m"; "" for MEASURE_NONE. */
const char *quantity_unit(enum Measure unit);
/** A spelling of a unit that is taken, listed in messages or not; NULL behind the last. */
const char *quantity_spelling(enum Measure unit, int index);
/** What one of the unit's `index`th spelling is, in the unit that is stored. */
double quantity_spelling_worth(enum Measure unit, int index);

/* ---- the field tables: survey_fields*.c ---- */

/** Every mapping of the language, in the order of the manual. */
enum SurveyTable {
    TABLE_TOP,
    TABLE_JOB,
    TABLE_SUPPLY,
    TABLE_CONDITIONS,
    TABLE_EARTHING,
    TABLE_ELECTRODE,
    TABLE_RUN,
    TABLE_LOAD,
    TABLE_DEVICE,
    TABLE_CABLE,
    TABLE_END,
    TABLE_PULL,
    TABLE_SEGMENT,
    TABLE_BEND,
    TABLE_LANDMARK,
    TABLE_BESIDE,
    TABLE_DUCT,
    TABLE_PARTS,
    TABLE_STOCK,
    TABLE_STOCK_LENGTH,
    TABLE_READINGS,
    TABLE_METER,
    TABLE_AS_LAID,
    TABLE_COUNT
};

enum FieldKind {
    FIELD_TEXT,           /**< const char * */
    FIELD_NAME,           /**< const char *, one line */
    FIELD_FILE,           /**< const char *, a plain file name */
    FIELD_DATE,           /**< const char *, YYYY-MM-DD */
    FIELD_QUANTITY,       /**< struct Quantity */
    FIELD_WHOLE,          /**< int, a bare whole number */
    FIELD_WHOLE_QUANTITY, /**< struct Quantity, a bare whole number */
    FIELD_WORD,           /**< an enum, stored as int */
    FIELD_YES,            /**< bool */
    FIELD_MAP,            /**< `inner` at the same or its own place */
    FIELD_HEADING,        /**< struct Quantity, a compass point or degrees */
    FIELD_SIZE,           /**< struct Quantity, mm2 of a conductor or the word choose */
    FIELD_TWO_SIZES,      /**< two struct Quantity (offset, given_offset), "50 x 50 mm" */
    FIELD_OWN             /**< the walk reads it */
};

/** How the values of a FIELD_OWN stand in the file. */
enum FieldShape {
    SHAPE_MAP,         /**< `inner`, or what `kind` says */
    SHAPE_LIST,        /**< a list of it */
    SHAPE_ONE_OR_LIST, /**< one, or a list of them */
    SHAPE_COUNT_LIST,  /**< a whole number of them, or a list */
    SHAPE_BY_NAME      /**< a mapping from names of one's own */
};

/** In Field.required and Field.applies: the contexts (1 << way, 1 << run kind) that it holds for. */
#define FIELD_ALWAYS (~0U)

struct FieldTable;

struct Field {
    const char *key;
    enum FieldKind kind;
    unsigned required;        /**< contexts that must have it; 0: may be left out */
    unsigned applies;         /**< contexts that may have it; 0 means all */
    size_t offset;            /**< of the value in the table's struct */
    size_t given_offset;      /**< of a bool that says it was written; 0: none */
    double least, most;       /**< allowed range, both ends, in the stored unit */
    double fallback;          /**< default, in the stored unit or as an enum value */
    const char *default_text; /**< for the manual, where the walk works the default out */
    const double *allowed;    /**< the only values taken, or NULL */
    size_t longest;           /**< characters of a text */
    enum Measure unit;
    enum WordList words;
    int allowed_count;
    bool signed_number;       /**< a plus sign may be written */
    bool has_default;         /**< for FIELD_MAP: its own defaults hold when it is left out */
    enum AssumedWhat assumed; /**< what is listed when the default is used; ASSUMED_NOTHING: the walk lists it, or there
                                 is nothing worth telling */
    const struct FieldTable *inner;
    enum FieldShape shape;
    enum SurveyTable of;      /**< of FIELD_OWN: the table of what stands in it; TABLE_TOP: none */
    const struct Field *item; /**< of FIELD_OWN: one value of it, or NULL */
    int list_most;            /**< what a list of it may hold */
    const char *help;
};

struct FieldTable {
    const char *name;  /**< "a segment", as it stands in messages */
    const char *title; /**< for the manual: "segments[]" */
    const struct Field *fields;
    int count;
    /** What a context bit stands for: WORDS_WAY, WORDS_RUN_KIND, or WORDS_COUNT for tables without contexts. */
    enum WordList contexts;
    const char *help;
};

#define FIELDS_MOST 48

const struct FieldTable *survey_fields(enum SurveyTable table);

/* ---- what keys ask of each other: relations.c ---- */

enum RelationKind {
    RELATION_NEEDS,   /**< the first of `keys` must be there */
    RELATION_REFUSES, /**< none of `keys` may be there */
    RELATION_ONE_OF,  /**< just one of two `keys`; `code` for both, `code_none` for none, MSG_COUNT: that is allowed */
};
/** Which words of the message stand for what. */
enum RelationSays { SAYS_NOTHING, SAYS_WORD, SAYS_KEY_AND_WORD };
enum RelationAt { AT_KEY, AT_VALUE, AT_MAP };

struct Relation {
    enum SurveyTable table;
    const char *when; /**< the key whose word decides; NULL: it holds always */
    unsigned words;   /**< a bit for each word of it with which the relation holds */
    enum RelationKind kind;
    enum RelationSays says;
    enum RelationAt at;
    enum DiagCode code, code_none;
    const char *keys[4];
};
/** NULL behind the last. */
const struct Relation *relation_at(int index);

/* ---- in which order one asks: asked.c ---- */

/** The cards of a survey, in the order in which one walks. */
enum AskedCard { CARD_SUPPLY, CARD_LOAD, CARD_SEGMENT, CARD_FAR_END, CARD_JOB, CARD_COUNT };
/** "supply" */
const char *asked_card(enum AskedCard card);

struct Asked {
    enum AskedCard card;
    enum SurveyTable table; /**< that the key is in */
    const char *path;       /**< of the mapping in the file: "runs.NAME.load"; "" the top */
    const char *key;
    const char *label;    /**< at most 18 characters, for a form */
    const char *question; /**< at most 38 characters, as one asks aloud */
    unsigned contexts;    /**< ways at which it is asked at once; 0: all that take the key */
    const char *when;     /**< "far-end=island": another answer that it is asked after; NULL always */
};
/** NULL behind the last. */
const struct Asked *asked_at(int index);
/** The row of its key; with `context` (a bit, or 0) that of a key which stands twice. */
const struct Field *asked_field(const struct Asked *asked, unsigned context);

/** "N", "NNE" ... clockwise; NULL behind the last. */
const char *field_compass_point(int index);
/** What is taken where the key is left out, "600 mm", or where that depends in words; NULL without a default. */
const char *field_default(struct Arena *arena, const struct Field *field);

#endif
