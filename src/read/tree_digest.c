/* A route file as one number: of all that it says, whatever became of it, so that papers tell of every change. Remarks,
 * quotes, breaks and the order of keys say nothing. */
#include "read_private.h"

static const uint64_t prime = 1099511628211U; /* FNV-1a, 64 bits */

static uint64_t mixed(uint64_t sum, uint64_t number)
{
    for (int shift = 0; shift < 64; shift += 8) {
        sum = (sum ^ (number >> shift & 0xFFU)) * prime;
    }
    return sum;
}

static uint64_t of_text(const struct TreeNode *node)
{
    uint64_t sum = 14695981039346656037U;
    for (size_t i = 0; i < node->length; i++) {
        sum = (sum ^ (unsigned char)node->text[i]) * prime;
    }
    return mixed(sum, node->length);
}

uint64_t tree_digest(const struct TreeNode *node) /* NOLINT(misc-no-recursion): to TREE_DEPTH_MOST */
{
    uint64_t sum = of_text(node) + (uint64_t)node->kind;
    for (const struct TreeEntry *entry = node->first; entry != NULL; entry = entry->next) {
        const uint64_t value = tree_digest(entry->value);
        sum = entry->key == NULL ? mixed(sum, value) : sum + mixed(of_text(entry->key), value);
    }
    return sum;
}
