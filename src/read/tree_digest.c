/* A route file as one number: of all that it says, whatever became of it, so that papers tell of every change. Remarks,
 * quotes, breaks and the order of keys say nothing, nor do zeros at the end of an amount. */
#include "read_private.h"

#include "base/digest.h"

#include <string.h>

/* Of an amount at `text` the bytes that count, and in *length all of it: "30.0 m" is 30 m. */
static size_t amount(const char *text, size_t *length)
{
    static const char digits[] = "0123456789";
    const size_t whole = strspn(text, digits);
    const size_t fraction = whole > 0 && text[whole] == '.' ? strspn(text + whole + 1, digits) : 0;
    const size_t all = fraction > 0 ? whole + 1 + fraction : 0;
    size_t counts = all;
    if (all > 0 && (text[all] == ' ' || text[all] == '\0')) {
        while (text[counts - 1] == '0') {
            counts--;
        }
        counts -= text[counts - 1] == '.';
    }
    *length = all;
    return counts;
}

static bool may_be_amount(const struct TreeNode *node, size_t at)
{
    static const char joint[] = " to "; /* of a range */
    const size_t before = sizeof joint - 1;
    return node->plain && (at == 0 || (at >= before && memcmp(node->text + at - before, joint, before) == 0));
}

static uint64_t of_text(const struct TreeNode *node, bool value)
{
    uint64_t sum = DIGEST_BEGIN;
    size_t counted = 0;
    for (size_t at = 0; at < node->length;) {
        size_t length = 0;
        size_t counts = value && may_be_amount(node, at) ? amount(node->text + at, &length) : 0;
        if (length == 0) {
            counts = length = 1;
        }
        for (size_t i = 0; i < counts; i++) {
            sum = digest_one(sum, (unsigned char)node->text[at + i]);
        }
        counted += counts;
        at += length;
    }
    return digest_number(sum, counted);
}

uint64_t tree_digest(const struct TreeNode *node) /* NOLINT(misc-no-recursion): to TREE_DEPTH_MOST */
{
    uint64_t sum = of_text(node, true) + (uint64_t)node->kind;
    for (const struct TreeEntry *entry = node->first; entry != NULL; entry = entry->next) {
        const uint64_t value = tree_digest(entry->value);
        sum = entry->key == NULL ? digest_number(sum, value) : sum + digest_number(of_text(entry->key, false), value);
    }
    return sum;
}
