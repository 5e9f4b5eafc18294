/* The sheet mark: a digest of all that plan.xml holds but the mark itself, by the same list, of all that the route file
 * says besides, and of the labour figures that papers go by. It is of the plan and not of a document's bytes, so that
 * what is written of it in any form or language has the same. */
#include "base/digest.h"
#include "documents/documents.h"
#include "plan_write_private.h"

#include <stdint.h>

/* What an element is handed on as: the sum when it was opened. */
struct Digest {
    struct Arena *arena;
    uint64_t sum;
};

static void mix(struct Digest *digest, const char *text)
{
    for (const char *at = text == NULL ? "" : text;; at++) {
        digest->sum = digest_one(digest->sum, (unsigned char)*at); /* the end counts too */
        if (*at == '\0') {
            return;
        }
    }
}

/* Whose child it is counts as much as what it is called. */
static void *open_element(void *document, void *parent, const char *name, const char *list)
{
    struct Digest *digest = document;
    (void)list;
    uint64_t *number = arena_alloc(digest->arena, sizeof *number);
    if (number == NULL) {
        return NULL;
    }
    const uint64_t *of = parent;
    mix(digest, name);
    digest->sum = digest_one(digest->sum, of == NULL ? 0 : *of);
    *number = digest->sum;
    return number;
}

static void *open_list(void *document, void *parent, const char *name)
{
    return open_element(document, parent, name, NULL);
}

static void attribute(void *document, void *element, const char *name, enum PlanForm form, const char *text)
{
    (void)form;
    (void)element; /* the one that was opened last: attributes come before children */
    mix(document, name);
    mix(document, text);
}

static void text(void *document, void *element, const char *text)
{
    (void)element;
    mix(document, text);
}

static void line(void *document, void *parent, const char *name, const char *list, const char *text)
{
    (void)list;
    open_element(document, parent, name, NULL);
    mix(document, text);
}

/* 0: there is none. */
static void mix_number(struct Digest *digest, uint64_t number)
{
    if (number != 0) {
        mix(digest, arena_print(digest->arena, "%llx", (unsigned long long)number));
    }
}

const char *document_mark(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts)
{
    static const struct PlanSink to_digest = {
        .open = open_element, .open_list = open_list, .attribute = attribute, .text = text, .line = line};
    static const struct Words files = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_PLAIN};
    struct Digest digest = {.arena = arena, .sum = DIGEST_BEGIN};
    void *root = open_element(&digest, NULL, "plan", NULL);
    if (root == NULL) {
        return NULL;
    }
    plan_write(arena, plan, parts, &files, "", &to_digest, &digest, root);
    mix_number(&digest, plan->survey->digest);
    mix_number(&digest, plan->labour_digest);
    const unsigned folded = (unsigned)((digest.sum >> 32) ^ (digest.sum & 0xFFFFFFFFu));
    return arena_failed(arena) ? NULL : arena_print(arena, "%04X-%04X", folded >> 16, folded & 0xFFFFu);
}
