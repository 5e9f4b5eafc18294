/* A route file as it is written: what a form opens one by. */
#include "library_private.h"

#include "documents/json/json_out.h"
#include "read/tree.h"

#include <string.h>

static void add_place(struct JsonOut *out, struct JsonNode *json, struct Mark mark)
{
    json_number(out, json, "line", mark.line);
    json_number(out, json, "column", mark.column);
}

/* NOLINTNEXTLINE(misc-no-recursion): the reader lets nothing be deeper than TREE_DEPTH_MOST */
static void add_node(struct JsonOut *out, struct JsonNode *json, const struct TreeNode *node)
{
    add_place(out, json, node->mark);
    if (node->kind == TREE_SCALAR) {
        json_text(out, json, "text", node->text);
    }
    if (node->kind != TREE_LIST && node->kind != TREE_MAP) {
        return;
    }
    struct JsonNode *list = json_list(out, json, node->kind == TREE_LIST ? "items" : "keys");
    for (const struct TreeEntry *entry = node->first; entry != NULL; entry = entry->next) {
        struct JsonNode *one = json_object(out, list, "");
        if (entry->key != NULL) {
            json_text(out, one, "key", entry->key->text);
            add_place(out, one, entry->key->mark);
            one = json_object(out, one, "value");
        }
        add_node(out, one, entry->value);
    }
}

const struct KeyPath *key_paths(struct Arena *arena, struct Diag *diag, struct Bytes source)
{
    const size_t count = diag == NULL ? 0 : diag_count(diag);
    const struct TreeNode *root = count > 0 ? tree_read(arena, diag_new(arena), source) : NULL;
    struct KeyPath *paths = root == NULL ? NULL : arena_array(arena, count, sizeof *paths);
    for (size_t i = 0; paths != NULL && i < count; i++) {
        struct KeyStep steps[TREE_STEPS_MOST];
        const int taken = tree_steps(root, diag_at(diag, i), steps);
        struct KeyStep *kept = taken == 0 ? NULL : arena_array(arena, (size_t)taken, sizeof *kept);
        if (kept != NULL) {
            memcpy(kept, steps, (size_t)taken * sizeof *kept);
            paths[i] = (struct KeyPath){kept, taken};
        }
    }
    return paths;
}

struct Bytes tree_json(struct Arena *arena, struct Diag *diag, struct Bytes source)
{
    const struct TreeNode *root = tree_read(arena, diag, source);
    struct JsonOut *out = json_out_new(arena);
    if (root != NULL) {
        add_node(out, json_object(out, json_root(out), "tree"), root);
    }
    json_told(out, json_list(out, json_root(out), "diagnostics"),
              &(struct Told){diag, "", key_paths(arena, diag, source)});
    return json_out_finish(out);
}
