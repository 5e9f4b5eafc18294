/** A route file as it is written, whatever its keys: a small tree of our own, with nothing of the YAML library in it.
 */
#ifndef WEND_TREE_H
#define WEND_TREE_H

#include "base/base.h"
#include "base/diag.h"

#include <stdint.h>

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

/** Of all that it says; remarks, quotes, the order of keys and zeros at the end of an amount say nothing. */
uint64_t tree_digest(const struct TreeNode *node);

/** Collections inside each other; a route needs 7. */
#define TREE_DEPTH_MOST 16
/** A key that is not there yet comes last. */
#define TREE_STEPS_MOST (TREE_DEPTH_MOST + 1)
/** The way from the root to what a report is about: the value at its mark, the mapping that lacks a key, or the key
 * that lacks. Gives the number of steps; 0 for the whole file. */
int tree_steps(const struct TreeNode *root, const struct Diagnostic *one, struct KeyStep steps[TREE_STEPS_MOST]);

#endif
