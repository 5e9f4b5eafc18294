/** A route file as a small tree of our own, with nothing of the YAML library in it. */
#ifndef WEND_TREE_PRIVATE_H
#define WEND_TREE_PRIVATE_H

#include "base/base.h"
#include "base/diag.h"

/** Collections inside each other; a route needs 7. */
#define TREE_DEPTH_MOST 16
/** Values, keys, lists and mappings together. */
#define TREE_NODES_MOST 400000

/** TREE_REFUSED: an alias or a text with control characters; it was reported and everything else keeps quiet about it.
 */
enum TreeKind { TREE_SCALAR, TREE_LIST, TREE_MAP, TREE_REFUSED };

struct TreeNode {
    enum TreeKind kind;
    bool plain;       /**< scalar without quotes */
    bool flow;        /**< collection in brackets */
    struct Mark mark; /**< first character */
    int width;        /**< characters of a scalar on its first line, else 1 */
    const char *text; /**< scalar, NUL-terminated; "" for collections */
    size_t length;    /**< bytes of text */
    int count;        /**< entries of a collection */
    struct TreeEntry *first, *last;
};

struct TreeEntry {
    const struct TreeNode *key; /**< NULL in lists */
    const struct TreeNode *value;
    struct TreeEntry *next;
    bool dropped; /**< only while the tree is made: its key was given before */
};

/** The whole tree, or NULL when it could not be made (told to `diag`, or memory failed). The root may be of any kind.
 * Faults that leave the tree usable (duplicate keys, anchors, tags) are reported and left out of it. */
const struct TreeNode *tree_read(struct Arena *arena, struct Diag *diag, struct Bytes source);

struct Reader;
/** The tree with a value set in it by the word "segments.field.length=66 m", the `number`th of its kind from 0 on; NULL
 * after it was reported, with its place in that word, what is wrong with it. */
const struct TreeNode *tree_set(struct Reader *reader, const struct TreeNode *root, const char *word, int number);

/** The ranges of the file, "18 m to 22 m", each put in the tree at one point of it: at that share of the way from its
 * lesser end, or with `shares` NULL at its larger end. At most SURVEY_RANGES_MOST; what is wrong is reported. */
struct SurveyRange;
const struct SurveyRange *tree_ranges(struct Reader *reader, const struct TreeNode *root, const double *shares,
                                      int *count);

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
