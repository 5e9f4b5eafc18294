/** What the reader does with a tree. */
#ifndef WEND_TREE_PRIVATE_H
#define WEND_TREE_PRIVATE_H

#include "tree.h"

/** Values, keys, lists and mappings together. */
#define TREE_NODES_MOST 400000

struct Reader;
/** The tree with a value set in it by the word "segments.field.length=66 m", the `number`th of its kind from 0 on; NULL
 * after it was reported, with its place in that word, what is wrong with it. */
const struct TreeNode *tree_set(struct Reader *reader, const struct TreeNode *root, const char *word, int number);

/** The ranges of the file, "18 m to 22 m", each put in the tree at one point of it: at that share of the way from its
 * lesser end, or with `shares` NULL at its larger end. At most SURVEY_RANGES_MOST; what is wrong is reported. */
struct SurveyRange;
const struct SurveyRange *tree_ranges(struct Reader *reader, const struct TreeNode *root, const double *shares,
                                      int *count);

/** What the survey had of a segment before it was laid: texts as written, "" where it had none; NULL, and -1 for the
 * way, where that still holds. */
struct AsLaidWas {
    const char *length, *depth;
    int way;
};
/** Puts what was laid in the place of what was surveyed, and says of which segments; one for each segment, NULL without
 * any. Comes before the ranges: what was laid has none. */
const struct AsLaidWas *tree_as_laid(struct Reader *reader, const struct TreeNode *root);

/** Bytes before parsing: size, encoding, characters and directives that are refused. False when any was reported. */
bool source_check(struct Diag *diag, struct Bytes source);
/** Byte offset of a mark, or source.length when it lies behind the end. */
size_t source_offset(struct Bytes source, struct Mark mark);

/** A fault of the YAML library, as it words it; texts may be NULL. */
struct PlainFault {
    const char *context;
    struct Mark context_mark;
    const char *problem;
    struct Mark problem_mark;
    struct Mark bracket_mark; /**< innermost bracket that is open; {0,0} when none */
};
/** Reports it in plain words. */
void plain_report(struct Diag *diag, struct Bytes source, const struct PlainFault *fault);

#endif
