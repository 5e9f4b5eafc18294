/* Quantities that were surveyed as a range, "18 m to 22 m": which there are, and the tree with each of them at one
 * point of its range, so that all that is read of it is read as ever. */
#include "read_private.h"

#include <string.h>

static const char joint[] = " to ";

struct Walk {
    struct Reader *reader;
    const double *shares; /* NULL: all at their larger end */
    struct SurveyRange *list;
    int count;
};

struct RangeEnd {
    const char *text;
    struct QuantityRead read;
};

/* "18 to 22 m": the first end may leave its unit to the second. */
static struct RangeEnd read_low(struct Arena *arena, const char *text, size_t length, const char *high,
                                enum Measure unit)
{
    struct RangeEnd end = {.text = arena_text(arena, text, length)};
    end.read = quantity_read(arena, end.text, unit);
    if (end.read.fault == QUANTITY_NO_UNIT) {
        end.text = arena_print(arena, "%s%s", end.text, high + strspn(high, " 0123456789."));
        end.read = quantity_read(arena, end.text, unit);
    }
    return end;
}

static const struct TreeNode *with_text(struct Walk *walk, const struct TreeNode *node, const char *text)
{
    struct TreeNode *changed = arena_alloc(walk->reader->arena, sizeof *changed);
    if (changed == NULL) {
        return node;
    }
    *changed = *node;
    changed->text = text;
    changed->length = strlen(text);
    return changed;
}

/* In the unit of the larger end, so that kVA stays kVA. */
static const char *point_text(struct Arena *arena, double low, const struct RangeEnd *high, double share)
{
    const size_t digits = strspn(high->text, "0123456789.");
    const char *unit = high->text + digits + strspn(high->text + digits, " ");
    double written = 0;
    if (!number_read(high->text, digits, &written) || written <= 0) {
        return high->text;
    }
    const double value = low + share * (high->read.value - low);
    return arena_print(arena, "%s %s", number_significant(arena, value * written / high->read.value, 9), unit);
}

/* Where the two ends of a range meet; NULL: it is none. */
static const char *joint_in(const struct TreeNode *node)
{
    return node->kind == TREE_SCALAR ? strstr(node->text, joint) : NULL;
}

/* "field length" of "segments.field.length": paper knows no keys. */
static const char *on_paper(struct Arena *arena, const char *where)
{
    struct TextBuilder text = text_builder(arena);
    const char *dot = strchr(where, '.');
    for (const char *word = dot != NULL ? dot + 1 : where; word != NULL; word = dot != NULL ? dot + 1 : NULL) {
        dot = strchr(word, '.');
        text_print(&text, "%.*s%s", dot != NULL ? (int)(dot - word) : (int)strlen(word), word, dot != NULL ? " " : "");
    }
    return text_done(&text);
}

/* The tree goes. */
static const char *kept(struct Arena *arena, const char *text)
{
    return arena_text(arena, text, strlen(text));
}

static void take(struct Walk *walk, struct TreeEntry *entry, const char *path, enum Measure unit)
{
    struct Arena *arena = walk->reader->arena;
    const struct TreeNode *node = entry->value;
    const char *at = joint_in(node);
    if (at == NULL) {
        return;
    }
    const char *where = reader_path(walk->reader, path, entry->key->text);
    struct RangeEnd high = {.text = at + sizeof joint - 1};
    high.text += strspn(high.text, " ");
    high.read = quantity_read(arena, high.text, unit);
    const struct RangeEnd low = read_low(arena, node->text, (size_t)(at - node->text), high.text, unit);
    if (low.read.fault != QUANTITY_GOOD || high.read.fault != QUANTITY_GOOD) {
        entry->value =
            with_text(walk, node, low.read.fault != QUANTITY_GOOD ? low.text : high.text); /* which is reported */
        return;
    }
    if (!(low.read.value < high.read.value) || low.read.apparent != high.read.apparent) {
        reader_report(walk->reader, MSG_RANGE_ORDER, node, DIAG_WORDS(where, fields_quote(walk->reader, node->text)));
        entry->value = with_text(walk, node, high.text);
        return;
    }
    if (walk->count >= SURVEY_RANGES_MOST) {
        reader_report(walk->reader, MSG_RANGES_MANY, node,
                      DIAG_WORDS(where, arena_print(arena, "%d", SURVEY_RANGES_MOST)));
        entry->value = with_text(walk, node, high.text);
        return;
    }
    const double share = walk->shares != NULL ? walk->shares[walk->count] : 1;
    const char *text = share <= 0 ? low.text : share >= 1 ? high.text : point_text(arena, low.read.value, &high, share);
    walk->list[walk->count++] = (struct SurveyRange){
        where, on_paper(arena, where), kept(arena, node->text), kept(arena, text), low.text, kept(arena, high.text)};
    entry->value = with_text(walk, node, text);
}

static void take_key(struct Walk *walk, const struct TreeNode *map, const char *key, const char *path,
                     enum Measure unit)
{
    for (struct TreeEntry *entry = map->kind == TREE_MAP ? map->first : NULL; entry != NULL; entry = entry->next) {
        if (text_same(entry->key->text, key)) {
            take(walk, entry, path, unit);
        }
    }
}

static void take_load(struct Walk *walk, const struct TreeNode *map, const char *path)
{
    take_key(walk, map, "current", path, MEASURE_AMPERE);
    take_key(walk, map, "power", path, MEASURE_WATT);
}

static void take_loads(struct Walk *walk, const struct TreeNode *run, const char *name)
{
    const struct TreeEntry *load = fields_find(run, "load");
    const char *path = arena_print(walk->reader->arena, "runs.%s.load", name);
    if (load == NULL) {
        return;
    }
    if (load->value->kind == TREE_MAP) {
        take_load(walk, load->value, path);
    }
    int number = 1;
    for (const struct TreeEntry *item = load->value->kind == TREE_LIST ? load->value->first : NULL; item != NULL;
         item = item->next) {
        take_load(walk, item->value, arena_print(walk->reader->arena, "%s.%d", path, number++));
    }
}

const struct SurveyRange *tree_ranges(struct Reader *reader, const struct TreeNode *root, const double *shares,
                                      int *count)
{
    struct Walk walk = {.reader = reader, .shares = shares};
    walk.list = arena_array(reader->arena, SURVEY_RANGES_MOST, sizeof *walk.list);
    const struct TreeEntry *runs = fields_find(root, "runs");
    const struct TreeEntry *segments = fields_find(root, "segments");
    for (const struct TreeEntry *run =
             walk.list != NULL && runs != NULL && runs->value->kind == TREE_MAP ? runs->value->first : NULL;
         run != NULL; run = run->next) {
        take_loads(&walk, run->value, run->key->text);
    }
    for (const struct TreeEntry *item = walk.list != NULL && segments != NULL && segments->value->kind == TREE_LIST
                                            ? segments->value->first
                                            : NULL;
         item != NULL; item = item->next) {
        const struct TreeEntry *length = fields_find(item->value, "length");
        if (length == NULL || joint_in(length->value) == NULL) {
            continue;
        }
        const struct TreeEntry *name = fields_find(item->value, "name");
        const bool named = name != NULL && name->value->kind == TREE_SCALAR;
        take_key(&walk, item->value, "length", reader_path(reader, "segments", named ? name->value->text : ""),
                 MEASURE_METRE);
    }
    *count = walk.count;
    return walk.list;
}
