/* What cables and ducts are cut from: parts.stock, a list with an item for each. It is read last, because an item names
 * a run or the size of a duct. */
#include "read_private.h"

#include "field_values_private.h"

enum { ITEMS_MOST = 50, LENGTHS_MOST = 20, OFFCUTS_MOST = 100 };

/* One of the lengths below a key. */
static const struct Field *length_of(const char *key)
{
    const struct FieldTable *table = survey_fields(TABLE_STOCK);
    const struct Field *found = NULL;
    for (int i = 0; i < table->count; i++) {
        found = text_same(table->fields[i].key, key) ? table->fields[i].item : found;
    }
    return found;
}

static const char *run_name(const void *list, size_t index)
{
    const char *name = ((const struct Survey *)list)->runs[index].name;
    return name != NULL ? name : "";
}

/* Which run is named, or -1. A run whose own name could not be read may be the one, so no fault is reported then. */
static int find_run(struct Reader *reader, const struct TreeNode *node, const struct Survey *survey)
{
    const char *name = fields_text(reader, "run", node, 60, true);
    bool complete = survey->run_count > 0;
    for (int i = 0; i < survey->run_count && name != NULL; i++) {
        if (survey->runs[i].name != NULL && text_same(survey->runs[i].name, name)) {
            return i;
        }
        complete = complete && survey->runs[i].name != NULL;
    }
    if (name == NULL || !complete) {
        return -1;
    }
    const char *near = suggest_near(name, survey, (size_t)survey->run_count, run_name);
    const char *quoted = fields_quote(reader, name);
    if (near != NULL) {
        reader_report(reader, MSG_STOCK_RUN_MISSPELT, node, DIAG_WORDS(quoted, near));
    } else {
        reader_report(reader, MSG_STOCK_RUN_UNKNOWN, node, DIAG_WORDS(quoted));
    }
    return -1;
}

/* Where the lengths of a list go. */
struct Lengths {
    const struct Field *field;
    const char *path;
    int most;
    int count;
    struct StockLength *read; /* room for all */
};

/* A length alone, or a mapping that says how many of it there are; of offcuts there is one each. */
static void read_length(struct Reader *reader, const struct TreeEntry *item, int number, bool counted,
                        struct Lengths *out)
{
    struct StockLength length = {.length_m = {.given = false}};
    if (counted && item->value->kind == TREE_MAP) {
        const struct Spot place = {arena_print(reader->arena, "%s[%d]", out->path, number), item->value->mark,
                                   item->value->width};
        fields_read(reader, survey_fields(TABLE_STOCK_LENGTH), item->value, place, 0, &length);
    } else {
        field_value_read(reader, out->field, item, &length.length_m);
    }
    if (length.length_m.given && length.length_m.value > 0) { /* NAN when it could not be read */
        out->read[out->count++] = length;
    }
}

/* A list of lengths; a single one may stand without brackets. False when it is no good. */
static bool read_lengths(struct Reader *reader, const struct TreeEntry *entry, bool counted, struct Lengths *out)
{
    const struct TreeNode *node = entry->value;
    const bool list = node->kind == TREE_LIST;
    if (node->kind == TREE_REFUSED) {
        return false;
    }
    if ((node->kind == TREE_MAP && !counted) || (list && node->count == 0)) {
        reader_report(reader, MSG_STOCK_LIST, entry->key, DIAG_WORDS(counted ? "lengths" : "offcuts"));
        return false;
    }
    if (list && node->count > out->most) {
        reader_report_long(reader, entry->key, out->most);
        return false;
    }
    out->read = arena_array(reader->arena, list ? (size_t)node->count : 1, sizeof *out->read);
    const struct TreeEntry alone = {.key = entry->key, .value = node};
    int number = 1;
    for (const struct TreeEntry *item = list ? node->first : &alone; out->read != NULL && item != NULL;
         item = item->next) {
        read_length(reader, item, number++, counted, out);
    }
    return out->read != NULL;
}

static void read_whole_lengths(struct Reader *reader, const struct TreeEntry *entry, struct Spot place,
                               struct Stock *stock)
{
    struct Lengths whole = {.field = length_of("lengths"),
                            .path = arena_print(reader->arena, "%s.lengths", place.path),
                            .most = LENGTHS_MOST};
    if (read_lengths(reader, entry, true, &whole)) {
        stock->lengths = whole.read;
        stock->length_count = whole.count;
    }
}

static void read_offcuts(struct Reader *reader, const struct TreeEntry *entry, struct Stock *stock)
{
    struct Lengths offcuts = {.field = length_of("offcuts"), .path = "", .most = OFFCUTS_MOST};
    if (!read_lengths(reader, entry, false, &offcuts)) {
        return;
    }
    double *offcuts_m = arena_array(reader->arena, (size_t)offcuts.count + 1, sizeof *offcuts_m);
    for (int i = 0; offcuts_m != NULL && i < offcuts.count; i++) {
        offcuts_m[i] = offcuts.read[i].length_m.value;
    }
    stock->offcuts_m = offcuts_m;
    stock->offcut_count = offcuts_m != NULL ? offcuts.count : 0;
}

/* New duct of that size on the way; also when a size could not be read. */
static bool duct_is_laid(const struct Survey *survey, double size_mm)
{
    for (int i = 0; i < survey->segment_count; i++) {
        const struct Segment *segment = &survey->segments[i];
        const double here_mm = segment->duct_size_mm.value;
        if (segment->way == WAY_COUNT || (survey_duct(segment->way) && segment->duct_laid != LAID_EXISTING &&
                                          !(here_mm < size_mm) && !(here_mm > size_mm))) {
            return true;
        }
    }
    return survey->segment_count == 0;
}

static void read_for_what(struct Reader *reader, const struct TreeNode *map, const struct Survey *survey,
                          struct Stock *stock)
{
    const struct TreeEntry *run = fields_find(map, "run");
    const struct TreeEntry *duct = fields_find(map, "duct");
    if (run != NULL && duct == NULL) {
        stock->run = find_run(reader, run->value, survey);
    } else if (run == NULL && duct != NULL && stock->duct_size_mm.given &&
               !duct_is_laid(survey, stock->duct_size_mm.value)) {
        reader_report(reader, MSG_STOCK_DUCT_UNUSED, duct->value,
                      DIAG_WORDS(quantity_show(reader->arena, stock->duct_size_mm.value, MEASURE_MILLIMETRE)));
    }
}

static void read_item(struct Reader *reader, const struct TreeNode *map, struct Spot place, const struct Survey *survey,
                      struct Stock *stock)
{
    stock->mark = place.mark;
    stock->run = -1;
    fields_read(reader, survey_fields(TABLE_STOCK), map, place, 0, stock);
    if (map->kind != TREE_MAP) {
        return;
    }
    read_for_what(reader, map, survey, stock);
    const struct TreeEntry *lengths = fields_find(map, "lengths");
    const struct TreeEntry *offcuts = fields_find(map, "offcuts");
    if (lengths != NULL) {
        read_whole_lengths(reader, lengths, place, stock);
    }
    if (offcuts != NULL) {
        read_offcuts(reader, offcuts, stock);
    }
    if (lengths == NULL && offcuts == NULL && !unknown_key_near(map, "lengths") && !unknown_key_near(map, "offcuts")) {
        diag_report(reader->diag, MSG_STOCK_EMPTY, place.mark, place.width, DIAG_NO_WORDS);
    }
    if (lengths == NULL && offcuts != NULL && fields_find(map, "duct") != NULL && !unknown_key_near(map, "lengths")) {
        reader_report(reader, MSG_STOCK_DUCT_LENGTHS, fields_find(map, "duct")->key, DIAG_NO_WORDS);
    }
}

void read_stock(struct Reader *reader, const struct TreeEntry *entry, struct Survey *survey)
{
    if (entry == NULL || entry->value->kind == TREE_REFUSED) {
        return;
    }
    const struct TreeNode *node = entry->value;
    if (node->kind != TREE_LIST || node->count == 0) {
        reader_report(reader, MSG_STOCK_FORM, entry->key, DIAG_NO_WORDS);
        return;
    }
    if (node->count > ITEMS_MOST) {
        reader_report_long(reader, entry->key, ITEMS_MOST);
        return;
    }
    struct Stock *stock = arena_array(reader->arena, (size_t)node->count, sizeof *stock);
    if (stock == NULL) {
        return;
    }
    int number = 0;
    for (const struct TreeEntry *item = node->first; item != NULL; item = item->next, number++) {
        struct Spot place = {arena_print(reader->arena, "parts.stock[%d]", number + 1), item->value->mark,
                             item->value->width};
        read_item(reader, item->value, place, survey, &stock[number]);
    }
    survey->parts.stock = stock;
    survey->parts.stock_count = number;
}
