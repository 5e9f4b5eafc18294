/* A route file as one number: of all that it says, whatever became of it, so that papers tell of every change. Remarks,
 * quotes, breaks and the order of keys say nothing. */
#include "read_private.h"

#include "base/digest.h"

static uint64_t of_text(const struct TreeNode *node)
{
    uint64_t sum = DIGEST_BEGIN;
    for (size_t i = 0; i < node->length; i++) {
        sum = digest_one(sum, (unsigned char)node->text[i]);
    }
    return digest_number(sum, node->length);
}

uint64_t tree_digest(const struct TreeNode *node) /* NOLINT(misc-no-recursion): to TREE_DEPTH_MOST */
{
    uint64_t sum = of_text(node) + (uint64_t)node->kind;
    for (const struct TreeEntry *entry = node->first; entry != NULL; entry = entry->next) {
        const uint64_t value = tree_digest(entry->value);
        sum = entry->key == NULL ? digest_number(sum, value) : sum + digest_number(of_text(entry->key), value);
    }
    return sum;
}
