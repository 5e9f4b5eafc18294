/* What was laid takes the place of what was surveyed before anything is read of it, so that every rule and message of
 * the reader holds for it, and every figure of the plan follows. What was set from outside the file stays. */
#include "read_private.h"

#include <string.h>

struct Laying {
    struct Reader *reader;
    struct TreeNode *segment;       /* that is changed */
    const struct TreeNode *as_laid; /* its own mapping */
    struct AsLaidWas *was;
};

static struct TreeEntry *find(struct TreeNode *map, const char *key)
{
    for (struct TreeEntry *entry = map->first; entry != NULL; entry = entry->next) {
        if (text_same(entry->key->text, key)) {
            return entry;
        }
    }
    return NULL;
}

static bool is_set(const struct TreeEntry *entry)
{
    return entry != NULL && entry->value->mark.line >= DIAG_WORD_LINE;
}

static void add(struct Laying *laying, const struct TreeEntry *laid)
{
    struct TreeEntry *entry = arena_alloc(laying->reader->arena, sizeof *entry);
    if (entry == NULL) {
        return;
    }
    *entry = (struct TreeEntry){.key = laid->key, .value = laid->value};
    if (laying->segment->last != NULL) {
        laying->segment->last->next = entry;
    } else {
        laying->segment->first = entry;
    }
    laying->segment->last = entry;
    laying->segment->count++;
}

/* A quantity; one that is no good is left, and reported where it stands. What the survey had, "" for nothing; NULL
 * where that holds. */
static const char *lay(struct Laying *laying, const char *key, enum Measure unit)
{
    const struct TreeEntry *laid = fields_find(laying->as_laid, key);
    struct TreeEntry *surveyed = find(laying->segment, key);
    if (laid == NULL || laid->value->kind != TREE_SCALAR || is_set(surveyed) ||
        quantity_read(laying->reader->arena, laid->value->text, unit).fault != QUANTITY_GOOD) {
        return NULL;
    }
    if (surveyed == NULL) {
        add(laying, laid);
        return "";
    }
    const char *was = surveyed->value->kind == TREE_SCALAR ? surveyed->value->text : "";
    surveyed->value = laid->value;
    return arena_text(laying->reader->arena, was, strlen(was));
}

static int way_of(const struct TreeEntry *entry)
{
    for (int i = 0; entry != NULL && entry->value->kind == TREE_SCALAR && i < survey_word_count(WORDS_WAY); i++) {
        if (text_same(entry->value->text, survey_word(WORDS_WAY, i))) {
            return i;
        }
    }
    return -1;
}

/* Whether a way takes a key; one that no way takes is a fault of its own. */
static bool takes(const char *key, int way)
{
    const struct FieldTable *table = survey_fields(TABLE_SEGMENT);
    for (int i = 0; i < table->count; i++) {
        const struct Field *field = &table->fields[i];
        if (text_same(field->key, key) && (field->applies == 0 || (field->applies >> way & 1U) != 0)) {
            return true;
        }
    }
    return false;
}

static void drop_what_went_with(struct Laying *laying, int was, int now)
{
    struct TreeEntry **link = &laying->segment->first;
    struct TreeEntry *last = NULL;
    while (*link != NULL) {
        struct TreeEntry *entry = *link;
        if (takes(entry->key->text, was) && !takes(entry->key->text, now) && !is_set(entry)) {
            *link = entry->next;
            laying->segment->count--;
        } else {
            last = entry;
            link = &entry->next;
        }
    }
    laying->segment->last = last;
}

static void lay_way(struct Laying *laying)
{
    const struct TreeEntry *laid = fields_find(laying->as_laid, "way");
    struct TreeEntry *surveyed = find(laying->segment, "way");
    const int was = way_of(surveyed), now = way_of(laid);
    if (was < 0 || now < 0 || was == now || is_set(surveyed)) {
        return;
    }
    drop_what_went_with(laying, was, now);
    surveyed->value = laid->value;
    laying->was->way = was;
}

/* Two kinds of key may share a name, and so may two ways: what the new way does not take is gone before it is laid. */
static void lay_segment(struct Laying *laying)
{
    lay_way(laying);
    laying->was->length = lay(laying, "length", MEASURE_METRE);
    laying->was->depth = lay(laying, "depth", MEASURE_DEPTH);
}

static bool differs(const struct AsLaidWas *was)
{
    return was->length != NULL || was->depth != NULL || was->way >= 0;
}

static void report(struct Reader *reader, const struct TreeNode *list, const struct AsLaidWas *was)
{
    struct TextBuilder names = text_builder(reader->arena);
    int index = 0;
    for (const struct TreeEntry *item = list->first; item != NULL; item = item->next, index++) {
        const struct TreeEntry *name = fields_find(item->value, "name");
        if (differs(&was[index]) && name != NULL && name->value->kind == TREE_SCALAR) {
            text_print(&names, "%s%s", names.length > 0 ? ", " : "", name->value->text);
        }
    }
    if (names.length > 0) {
        diag_report(reader->diag, MSG_AS_LAID, (struct Mark){0, 0}, 0, DIAG_WORDS(text_done(&names)));
    }
}

/* Copies of the changed segments stand in the list. */
const struct AsLaidWas *tree_as_laid(struct Reader *reader, const struct TreeNode *root)
{
    const struct TreeEntry *segments = fields_find(root, "segments");
    if (segments == NULL || segments->value->kind != TREE_LIST || segments->value->count == 0) {
        return NULL;
    }
    const size_t count = (size_t)segments->value->count;
    struct AsLaidWas *was = arena_array(reader->arena, count, sizeof *was);
    int index = 0;
    for (struct TreeEntry *item = was != NULL ? segments->value->first : NULL; item != NULL;
         item = item->next, index++) {
        const struct TreeEntry *as_laid = fields_find(item->value, "as-laid");
        was[index] = (struct AsLaidWas){.way = -1};
        if (as_laid == NULL || as_laid->value->kind != TREE_MAP) {
            continue;
        }
        struct TreeNode *copy = arena_alloc(reader->arena, sizeof *copy);
        if (copy == NULL) {
            continue;
        }
        *copy = *item->value;
        struct Laying laying = {reader, copy, as_laid->value, &was[index]};
        lay_segment(&laying);
        item->value = copy;
    }
    if (was != NULL) {
        report(reader, segments->value, was);
    }
    return was;
}
