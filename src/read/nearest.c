/* "Did you mean", for those who ask after a plan by name: the same rule as for the words of a route file. */
#include "read.h"
#include "read_private.h"

static const char *word_at(const void *list, size_t index)
{
    const char *const *words = list;
    return words[index];
}

const char *read_nearest(const char *written, const char *const *words, size_t count)
{
    const char *nearest = suggest_near(written, words, count, word_at);
    return nearest != NULL ? nearest : "";
}
