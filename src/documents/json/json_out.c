/* The only file that knows cJSON. Numbers are handed to it as they are written, so that it rounds none. */
#include "json_out.h"

#include "documents/shown_private.h"

#include <cjson/cJSON.h>

#include <string.h>

struct JsonOut {
    struct Arena *arena;
    cJSON *tree;
    bool failed;
};

static cJSON *as_json(struct JsonNode *node)
{
    return (cJSON *)(void *)node;
}

static struct JsonNode *as_node(cJSON *json)
{
    return (struct JsonNode *)(void *)json;
}

struct JsonOut *json_out_new(struct Arena *arena)
{
    struct JsonOut *out = arena_alloc(arena, sizeof *out);
    if (out != NULL) {
        cJSON *tree = cJSON_CreateObject();
        *out = (struct JsonOut){.arena = arena, .tree = tree, .failed = tree == NULL};
    }
    return out;
}

struct JsonNode *json_root(struct JsonOut *out)
{
    return out == NULL ? NULL : as_node(out->tree);
}

/* Takes `item` over, whatever becomes of it. */
static struct JsonNode *add(struct JsonOut *out, struct JsonNode *parent, const char *name, cJSON *item)
{
    cJSON *to = as_json(parent);
    const bool added = out != NULL && !out->failed && to != NULL && item != NULL &&
                       (cJSON_IsArray(to) ? cJSON_AddItemToArray(to, item) : cJSON_AddItemToObject(to, name, item));
    if (!added) {
        cJSON_Delete(item);
        if (out != NULL) {
            out->failed = true;
        }
        return NULL;
    }
    return as_node(item);
}

struct JsonNode *json_object(struct JsonOut *out, struct JsonNode *parent, const char *name)
{
    return add(out, parent, name, cJSON_CreateObject());
}

struct JsonNode *json_list(struct JsonOut *out, struct JsonNode *parent, const char *name)
{
    return add(out, parent, name, cJSON_CreateArray());
}

struct JsonNode *json_list_of(struct JsonOut *out, struct JsonNode *parent, const char *name)
{
    if (parent == NULL || cJSON_IsArray(as_json(parent))) {
        return parent;
    }
    cJSON *there = cJSON_GetObjectItemCaseSensitive(as_json(parent), name);
    return there != NULL ? as_node(there) : json_list(out, parent, name);
}

void json_text(struct JsonOut *out, struct JsonNode *parent, const char *name, const char *text)
{
    const bool lost = out == NULL || text == NULL;
    add(out, parent, name, lost ? NULL : cJSON_CreateString(shown_clean(out->arena, text)));
}

void json_text_if(struct JsonOut *out, struct JsonNode *parent, const char *name, const char *text)
{
    if (text != NULL && *text != '\0') {
        json_text(out, parent, name, text);
    }
}

void json_digits(struct JsonOut *out, struct JsonNode *parent, const char *name, const char *digits)
{
    add(out, parent, name, digits == NULL || *digits == '\0' ? NULL : cJSON_CreateRaw(digits));
}

void json_number(struct JsonOut *out, struct JsonNode *parent, const char *name, double value)
{
    json_digits(out, parent, name, out == NULL ? NULL : shown_figure(out->arena, value));
}

void json_yes(struct JsonOut *out, struct JsonNode *parent, const char *name, bool yes)
{
    add(out, parent, name, cJSON_CreateBool(yes));
}

void json_words(struct JsonOut *out, struct JsonNode *parent, const char *name, const char *text, bool numbers)
{
    struct JsonNode *list = json_list(out, parent, name);
    for (const char *at = text; list != NULL && at != NULL && *at != '\0';) {
        const size_t length = strcspn(at, " ");
        const char *word = arena_text(out->arena, at, length);
        if (numbers) {
            json_digits(out, list, "", word);
        } else {
            json_text(out, list, "", word);
        }
        at += length + strspn(at + length, " ");
    }
}

struct Bytes json_out_finish(struct JsonOut *out)
{
    struct Bytes result = {NULL, 0};
    if (out == NULL) {
        return result;
    }
    char *printed = out->failed || arena_failed(out->arena) ? NULL : cJSON_Print(out->tree);
    const char *text = printed == NULL ? NULL : arena_print(out->arena, "%s\n", printed);
    if (text != NULL && !arena_failed(out->arena)) {
        result = (struct Bytes){text, strlen(text)};
    }
    cJSON_free(printed);
    cJSON_Delete(out->tree);
    out->tree = NULL;
    return result;
}
