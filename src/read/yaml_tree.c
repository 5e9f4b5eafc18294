/* Events of the YAML library -> a small tree. The only file that knows the library. What a route has no use for is
 * refused here, where its place is known: anchors, aliases, merge keys, tags, keys that are not texts, keys given
 * twice, further documents. Limits are kept event by event, so that a hostile file is dropped early. */
#include "tree_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <yaml.h>

#define YAML_TAGS "tag:yaml.org,2002:" /* what the library makes of !! */

struct Open {
    struct TreeNode *node;
    const struct TreeNode *key; /* of a mapping, once read and until its value comes */
    bool skip_value;            /* the key was refused: so is its value */
};

struct Builder {
    struct Arena *arena;
    struct Diag *diag;
    struct Bytes source;
    yaml_parser_t parser;
    struct Open open[TREE_DEPTH_MOST];
    int depth;
    int nodes;
    int documents;
    int anchor_line, alias_line, tag_line; /* told once a line */
    struct TreeNode *root;
    bool stopped; /* told why, or out of memory */
};

static struct Mark mark_of(yaml_mark_t mark)
{
    return (struct Mark){(int)mark.line + 1, (int)mark.column + 1};
}

static int width_of(yaml_mark_t start, yaml_mark_t end)
{
    return start.line == end.line && end.column > start.column ? (int)(end.column - start.column) : 1;
}

static void stop_at(struct Builder *builder, enum DiagCode code, struct Mark mark)
{
    builder->stopped = true;
    diag_report(builder->diag, code, mark, 1, DIAG_NO_WORDS);
}

static struct TreeNode *node_new(struct Builder *builder, enum TreeKind kind, const yaml_event_t *event)
{
    struct Mark mark = mark_of(event->start_mark);
    if (++builder->nodes > TREE_NODES_MOST) {
        stop_at(builder, MSG_TOO_MANY_VALUES, mark);
        return NULL;
    }
    struct TreeNode *node = arena_alloc(builder->arena, sizeof *node);
    if (node == NULL) {
        builder->stopped = true;
        return NULL;
    }
    *node = (struct TreeNode){.kind = kind, .mark = mark, .width = 1, .text = ""};
    return node;
}

static void refuse_extras(struct Builder *builder, const yaml_event_t *event, const yaml_char_t *anchor,
                          const yaml_char_t *tag)
{
    struct Mark mark = mark_of(event->start_mark);
    if (anchor != NULL && builder->anchor_line != mark.line) {
        builder->anchor_line = mark.line;
        diag_report(builder->diag, MSG_ANCHOR_REFUSED, mark, (int)strlen((const char *)anchor) + 1, DIAG_NO_WORDS);
    }
    if (tag != NULL && builder->tag_line != mark.line) {
        builder->tag_line = mark.line;
        const char *shown = (const char *)tag;
        if (strncmp(shown, YAML_TAGS, sizeof YAML_TAGS - 1) == 0) {
            shown = arena_print(builder->arena, "!!%s", shown + sizeof YAML_TAGS - 1);
        }
        diag_report(builder->diag, MSG_TAG_REFUSED, mark, 1, DIAG_WORDS(shown));
    }
}

/* Escapes in double quotes can make what the check of the bytes has refused. */
static bool text_is_clean(struct Builder *builder, const struct TreeNode *node)
{
    for (size_t at = 0; at < node->length;) {
        int bytes = utf8_length(node->text + at, node->length - at);
        unsigned long code = bytes > 0 ? utf8_code(node->text + at) : 0;
        if (bytes == 0 || text_code_refused(code)) {
            char name[16];
            snprintf(name, sizeof name, "U+%04lX", code);
            diag_report(builder->diag, MSG_TEXT_CONTROL, node->mark, node->width, DIAG_WORDS(name));
            return false;
        }
        at += (size_t)bytes;
    }
    return true;
}

static struct TreeNode *scalar_new(struct Builder *builder, const yaml_event_t *event)
{
    struct TreeNode *node = node_new(builder, TREE_SCALAR, event);
    if (node == NULL) {
        return NULL;
    }
    refuse_extras(builder, event, event->data.scalar.anchor, event->data.scalar.tag);
    node->plain = event->data.scalar.style == YAML_PLAIN_SCALAR_STYLE;
    node->width = width_of(event->start_mark, event->end_mark);
    node->length = event->data.scalar.length;
    node->text = arena_text(builder->arena, (const char *)event->data.scalar.value, node->length);
    if (arena_failed(builder->arena)) {
        builder->stopped = true;
        return NULL;
    }
    if (event->data.scalar.style == YAML_DOUBLE_QUOTED_SCALAR_STYLE && !text_is_clean(builder, node)) {
        node->kind = TREE_REFUSED;
    }
    return node;
}

/* True when the node was a key; then nothing is to be added. */
static bool accept_as_key(struct Builder *builder, struct Open *top, const struct TreeNode *node)
{
    if (top->node->kind != TREE_MAP || top->key != NULL || top->skip_value) {
        return false;
    }
    if (node->kind == TREE_LIST || node->kind == TREE_MAP) {
        diag_report(builder->diag, MSG_KEY_NOT_TEXT, node->mark, 1, DIAG_NO_WORDS);
    } else if (node->kind == TREE_SCALAR && node->length == 0) {
        diag_report(builder->diag, MSG_KEY_EMPTY, node->mark, 1, DIAG_NO_WORDS);
    } else if (node->kind == TREE_SCALAR && node->plain && text_same(node->text, "<<")) {
        diag_report(builder->diag, MSG_MERGE_REFUSED, node->mark, 2, DIAG_NO_WORDS);
    } else if (node->kind == TREE_SCALAR) {
        top->key = node;
        return true;
    }
    top->skip_value = true;
    return true;
}

static void add_node(struct Builder *builder, struct TreeNode *node)
{
    if (builder->depth == 0) {
        builder->root = node;
        return;
    }
    struct Open *top = &builder->open[builder->depth - 1];
    if (accept_as_key(builder, top, node)) {
        return;
    }
    if (top->skip_value) {
        top->skip_value = false;
        return;
    }
    struct TreeEntry *entry = arena_alloc(builder->arena, sizeof *entry);
    if (entry == NULL) {
        builder->stopped = true;
        return;
    }
    entry->key = top->key;
    entry->value = node;
    if (top->node->last != NULL) {
        top->node->last->next = entry;
    } else {
        top->node->first = entry;
    }
    top->node->last = entry;
    top->node->count++;
    top->key = NULL;
}

static void open_collection(struct Builder *builder, enum TreeKind kind, const yaml_event_t *event)
{
    struct TreeNode *node = node_new(builder, kind, event);
    if (node == NULL) {
        return;
    }
    bool list = kind == TREE_LIST;
    refuse_extras(builder, event, list ? event->data.sequence_start.anchor : event->data.mapping_start.anchor,
                  list ? event->data.sequence_start.tag : event->data.mapping_start.tag);
    node->flow = list ? event->data.sequence_start.style == YAML_FLOW_SEQUENCE_STYLE
                      : event->data.mapping_start.style == YAML_FLOW_MAPPING_STYLE;
    if (builder->depth == TREE_DEPTH_MOST) {
        stop_at(builder, MSG_TOO_DEEP, node->mark);
        return;
    }
    builder->open[builder->depth++] = (struct Open){.node = node};
}

struct Sorted {
    struct TreeEntry *entry;
};

static int compare_entries(const void *left, const void *right)
{
    const struct TreeEntry *a = ((const struct Sorted *)left)->entry;
    const struct TreeEntry *b = ((const struct Sorted *)right)->entry;
    int order = text_order_seen(a->key->text, b->key->text);
    if (order != 0) {
        return order;
    }
    if (a->key->mark.line != b->key->mark.line) {
        return a->key->mark.line < b->key->mark.line ? -1 : 1;
    }
    return a->key->mark.column < b->key->mark.column ? -1 : a->key->mark.column > b->key->mark.column;
}

/* Through a sorted list, so that many keys cost little more than few. The first of a pair stays, later ones go. */
static void drop_twice_given(struct Builder *builder, struct TreeNode *map)
{
    struct Sorted *sorted = arena_array(builder->arena, (size_t)map->count + 1, sizeof *sorted);
    if (sorted == NULL) {
        builder->stopped = true;
        return;
    }
    size_t count = 0;
    for (struct TreeEntry *entry = map->first; entry != NULL; entry = entry->next) {
        sorted[count++].entry = entry;
    }
    qsort(sorted, count, sizeof *sorted, compare_entries);
    size_t first = 0;
    for (size_t i = 1; i < count; i++) {
        const struct TreeNode *key = sorted[i].entry->key;
        if (text_order_seen(key->text, sorted[first].entry->key->text) != 0) {
            first = i;
            continue;
        }
        char line[16];
        snprintf(line, sizeof line, "%d", sorted[first].entry->key->mark.line);
        diag_report(builder->diag, MSG_KEY_TWICE, key->mark, key->width, DIAG_WORDS(key->text, line));
        sorted[i].entry->dropped = true;
    }
    struct TreeEntry **link = &map->first;
    map->last = NULL;
    map->count = 0;
    for (struct TreeEntry *entry = map->first; entry != NULL; entry = entry->next) {
        if (entry->dropped) {
            continue;
        }
        *link = entry;
        link = &entry->next;
        map->last = entry;
        map->count++;
    }
    *link = NULL;
}

static void close_collection(struct Builder *builder)
{
    struct TreeNode *node = builder->open[--builder->depth].node;
    if (node->kind == TREE_MAP && node->count > 1) {
        drop_twice_given(builder, node);
    }
    if (!builder->stopped) {
        add_node(builder, node);
    }
}

static void take_alias(struct Builder *builder, const yaml_event_t *event)
{
    struct TreeNode *node = node_new(builder, TREE_REFUSED, event);
    if (node == NULL) {
        return;
    }
    if (builder->alias_line != node->mark.line) {
        builder->alias_line = node->mark.line;
        diag_report(builder->diag, MSG_ALIAS_REFUSED, node->mark, width_of(event->start_mark, event->end_mark),
                    DIAG_NO_WORDS);
    }
    add_node(builder, node);
}

static void take_event(struct Builder *builder, const yaml_event_t *event)
{
    struct TreeNode *node;
    switch (event->type) {
    case YAML_DOCUMENT_START_EVENT:
        if (++builder->documents > 1) {
            stop_at(builder, MSG_SECOND_DOCUMENT, mark_of(event->start_mark));
        }
        break;
    case YAML_ALIAS_EVENT: take_alias(builder, event); break;
    case YAML_SCALAR_EVENT:
        node = scalar_new(builder, event);
        if (node != NULL) {
            add_node(builder, node);
        }
        break;
    case YAML_SEQUENCE_START_EVENT: open_collection(builder, TREE_LIST, event); break;
    case YAML_MAPPING_START_EVENT: open_collection(builder, TREE_MAP, event); break;
    case YAML_SEQUENCE_END_EVENT:
    case YAML_MAPPING_END_EVENT: close_collection(builder); break;
    case YAML_NO_EVENT:
    case YAML_STREAM_START_EVENT:
    case YAML_STREAM_END_EVENT:
    case YAML_DOCUMENT_END_EVENT: break;
    }
}

static struct Mark open_bracket(const struct Builder *builder)
{
    const struct TreeNode *top = builder->depth > 0 ? builder->open[builder->depth - 1].node : NULL;
    return top != NULL && top->flow ? top->mark : (struct Mark){0, 0};
}

static void report_fault(struct Builder *builder)
{
    const yaml_parser_t *parser = &builder->parser;
    builder->stopped = true;
    if (parser->error == YAML_MEMORY_ERROR) {
        arena_lacks(builder->arena);
        return;
    }
    struct PlainFault fault = {.context = parser->context,
                               .context_mark = mark_of(parser->context_mark),
                               .problem = parser->problem,
                               .problem_mark = mark_of(parser->problem_mark),
                               .bracket_mark = open_bracket(builder)};
    plain_report(builder->diag, builder->source, &fault);
}

static void run_parser(struct Builder *builder)
{
    bool end = false;
    while (!end && !builder->stopped) {
        yaml_event_t event;
        if (yaml_parser_parse(&builder->parser, &event) == 0) {
            report_fault(builder);
            return;
        }
        end = event.type == YAML_STREAM_END_EVENT;
        take_event(builder, &event);
        yaml_event_delete(&event);
    }
}

const struct TreeNode *tree_read(struct Arena *arena, struct Diag *diag, struct Bytes source)
{
    if (!source_check(diag, source)) {
        return NULL;
    }
    struct Builder *builder = arena_alloc(arena, sizeof *builder);
    if (builder == NULL) {
        return NULL;
    }
    *builder = (struct Builder){.arena = arena, .diag = diag, .source = source};
    if (yaml_parser_initialize(&builder->parser) == 0) {
        arena_lacks(arena);
        return NULL;
    }
    yaml_parser_set_encoding(&builder->parser, YAML_UTF8_ENCODING);
    /* With the encoding set the library would take a byte order mark for a character. */
    size_t mark = source.length >= 3 && memcmp(source.data, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    yaml_parser_set_input_string(&builder->parser, (const unsigned char *)source.data + mark, source.length - mark);
    run_parser(builder);
    yaml_parser_delete(&builder->parser);
    if (builder->stopped) {
        return NULL;
    }
    if (builder->root == NULL) {
        diag_report(diag, MSG_FILE_EMPTY, (struct Mark){1, 1}, 0, DIAG_NO_WORDS);
    }
    return builder->root;
}
