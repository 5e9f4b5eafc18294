/* The route language as data. */
#include "library_private.h"

static char *kept(struct Bytes (*document)(struct Arena *))
{
    struct Arena *arena = arena_new();
    if (arena == NULL) {
        return NULL;
    }
    const struct Bytes bytes = document(arena);
    char *text = bytes.data == NULL ? NULL : library_keep(arena, bytes.data);
    arena_free(arena);
    return text;
}

char *wend_tree_json(const char *text, size_t length)
{
    struct Arena *arena = arena_new();
    struct Diag *diag = diag_new(arena);
    const struct Bytes source = {library_text(text), text == NULL ? 0 : length};
    const struct Bytes bytes = diag == NULL ? (struct Bytes){NULL, 0} : tree_json(arena, diag, source);
    char *kept_text = bytes.data == NULL ? NULL : library_keep(arena, bytes.data);
    arena_free(arena);
    return kept_text;
}

char *wend_language_json(void)
{
    return kept(language_json);
}

char *wend_schema(void)
{
    return kept(language_schema);
}
