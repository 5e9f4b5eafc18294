/* The route language as data. */
#include "library_private.h"

#include "documents/documents.h"

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

char *wend_language_json(void)
{
    return kept(document_language_json);
}

char *wend_schema(void)
{
    return kept(document_schema_json);
}
