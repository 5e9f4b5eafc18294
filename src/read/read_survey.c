/* The walk from a tree to a Survey: what stands at the top of the file, then segments, runs and what they demand of
 * each other. All errors are reported together; what could not be read is unknown, and no fault is reported that
 * depends on it. */
#include "read_private.h"

#include <string.h>

static bool says_nothing(const struct TreeNode *root)
{
    return fields_node_empty(root) || (root->kind == TREE_SCALAR && root->plain && text_same(root->text, "null"));
}

static bool has_known_key(const struct TreeNode *root)
{
    const struct FieldTable *top = survey_fields(TABLE_TOP);
    for (int i = 0; i < top->count; i++) {
        if (fields_find(root, top->fields[i].key) != NULL) {
            return true;
        }
    }
    return false;
}

/* False when the keys of the file are not those known here: another version, or no route file at all. */
static bool check_version(struct Reader *reader, const struct TreeNode *root)
{
    static const struct VersionKey version = {"wend", MSG_VERSION_MISSING, MSG_VERSION_UNKNOWN, MSG_VERSION_NOT_FIRST};
    const enum Version found = reader_version(reader, root, &version);
    return found == VERSION_HOLDS || (found == VERSION_MISSING && has_known_key(root));
}

static void read_earthing(struct Reader *reader, const struct TreeNode *root, struct Survey *survey)
{
    struct Earthing *earthing = &survey->earthing;
    const struct TreeEntry *entry = fields_find(root, "earthing");
    if (entry == NULL) {
        earthing->far_end = FAR_END_EXPORT;
        reader_assume(reader, (struct Assumed){.where = "earthing.far-end", .what = ASSUMED_EXPORT});
        return;
    }
    earthing->mark = entry->key->mark;
    const struct TreeEntry *electrode = fields_find(entry->value, "electrode");
    if (electrode == NULL || earthing->rod_spacing_m.given || fields_find(electrode->value, "spacing") != NULL) {
        return;
    }
    earthing->rod_spacing_m.value = earthing->rod_length_m.value;
    if (earthing->rods.value > 1 && earthing->rod_length_m.given) {
        reader_assume(reader, (struct Assumed){.where = "earthing.electrode.spacing",
                                               .what = ASSUMED_ROD_SPACING,
                                               .value = earthing->rod_spacing_m.value});
    }
}

static const struct TreeNode *find_readings(struct Reader *reader, const struct TreeNode *root)
{
    const struct TreeEntry *entry = fields_find(root, "readings");
    if (entry != NULL && entry->value->kind != TREE_REFUSED && entry->value->kind != TREE_MAP) {
        reader_report(reader, MSG_READINGS_NOT_MAPPING, entry->key, DIAG_NO_WORDS);
    }
    return entry != NULL && entry->value->kind == TREE_MAP ? entry->value : NULL;
}

static void read_parts(struct Reader *reader, const struct TreeNode *root, struct Survey *survey)
{
    const struct TreeEntry *parts = fields_find(root, "parts");
    struct Spot spot = {"parts", parts != NULL ? parts->key->mark : root->mark, 5};
    fields_read(reader, survey_fields(TABLE_PARTS), parts != NULL ? parts->value : NULL, spot, 0, &survey->parts);
    if (parts != NULL) {
        read_stock(reader, fields_find(parts->value, "stock"), survey);
    }
}

static void read_top(struct Reader *reader, const struct TreeNode *root, struct Survey *survey)
{
    struct Spot top = {"", root->mark, 1};
    fields_read(reader, survey_fields(TABLE_TOP), root, top, 0, survey);
    const struct TreeEntry *supply = fields_find(root, "supply");
    survey->supply.mark = supply != NULL ? supply->key->mark : root->mark;
    read_earthing(reader, root, survey);
    struct SegmentNames names = {.complete = false};
    int segments_from = reader->assumed_count;
    read_segments(reader, fields_find(root, "segments"), survey, &names); /* first, because runs name them */
    int segments_to = reader->assumed_count;
    read_runs(reader, fields_find(root, "runs"), &names, survey);
    reader_assumed_last(reader, segments_from, segments_to);
    read_parts(reader, root, survey);
    read_readings(reader, survey);
}

/* The changes one after the other; NULL when one of them is wrong. */
static const struct TreeNode *change(struct Reader *reader, const struct TreeNode *root,
                                     const struct ReadChanges *changes)
{
    bool good = true;
    diag_set_words(reader->diag, changes->sets, changes->set_count);
    for (int i = 0; i < changes->set_count; i++) {
        const struct TreeNode *changed = tree_set(reader, root, changes->sets[i], i);
        good = good && changed != NULL;
        root = changed != NULL ? changed : root;
        diag_report(reader->diag, MSG_ROUTE_CHANGED, (struct Mark){0, 0}, 0, DIAG_WORDS(changes->sets[i]));
    }
    return good ? root : NULL;
}

/* A change may have brought in another version. */
static bool version_holds(struct Reader *reader, const struct TreeNode *root)
{
    const struct TreeEntry *entry = fields_find(root, "wend");
    return entry == NULL || entry->value->mark.line < DIAG_WORD_LINE || check_version(reader, root);
}

/* No paper of it can be taken for one of the file: they all bear the title. It stays short; each change stands on the
 * papers as a warning. */
static void mark_changed(struct Reader *reader, const struct ReadChanges *changes, struct Survey *survey)
{
    enum { CHANGE_LONGEST = 40 };
    if (changes->so_far) {
        survey->complete = false;
        survey->complete_given = true;
    }
    survey->changes = changes->sets;
    survey->change_count = changes->set_count;
    if (survey->job.title == NULL || changes->set_count == 0) {
        return;
    }
    const char *change = changes->sets[0];
    const char *mark = changes->set_count > 1            ? arena_print(reader->arena, "%d changes", changes->set_count)
                       : strlen(change) > CHANGE_LONGEST ? "changed"
                                                         : change;
    survey->job.title = arena_print(reader->arena, "%s [%s]", survey->job.title, mark);
}

const struct Survey *read_survey(struct Arena *arena, struct Diag *diag, struct Bytes source)
{
    return read_survey_changed(arena, diag, source, NULL);
}

static const struct Survey *read_tree(struct Reader *reader, const struct TreeNode *root,
                                      const struct ReadChanges *changes)
{
    struct Survey *survey = arena_alloc(reader->arena, sizeof *survey);
    if (survey == NULL || root->kind == TREE_REFUSED) {
        return NULL;
    }
    if (says_nothing(root)) {
        diag_report(reader->diag, MSG_FILE_EMPTY, (struct Mark){1, 1}, 0, DIAG_NO_WORDS);
        return NULL;
    }
    if (root->kind != TREE_MAP) {
        reader_report(reader, MSG_TOP_NOT_MAPPING, root, DIAG_NO_WORDS);
        return NULL;
    }
    if (!check_version(reader, root)) {
        return NULL;
    }
    root = changes != NULL && changes->set_count > 0 ? change(reader, root, changes) : root;
    if (root == NULL || !version_holds(reader, root)) {
        return NULL;
    }
    survey->digest = changes != NULL && changes->undigested ? 0 : tree_digest(root);
    reader->readings = find_readings(reader, root);
    reader->before_laid = tree_as_laid(reader, root);
    survey->ranges = tree_ranges(reader, root, changes != NULL ? changes->shares : NULL, &survey->range_count);
    read_top(reader, root, survey);
    if (changes != NULL) {
        mark_changed(reader, changes, survey);
    }
    if (!arena_failed(reader->arena)) {
        survey_relations(reader, survey);
    }
    survey->assumed = reader->assumed;
    survey->assumed_count = reader->assumed_count;
    return arena_failed(reader->arena) ? NULL : survey;
}

const struct Survey *read_survey_changed(struct Arena *arena, struct Diag *diag, struct Bytes source,
                                         const struct ReadChanges *changes)
{
    const size_t errors_before = diag_errors(diag);
    struct Arena *apart = arena_apart(arena); /* the tree goes with it */
    const struct TreeNode *root = apart != NULL ? tree_read(apart, diag, source) : NULL;
    struct Reader reader = {.arena = arena, .diag = diag, .source = source};
    const struct Survey *survey = root != NULL ? read_tree(&reader, root, changes) : NULL;
    arena_free(apart);
    return diag_errors(diag) > errors_before ? NULL : survey;
}
