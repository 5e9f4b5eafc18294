/* Values set from outside the file: what "segments.field.length=66 m" names gets that value before anything is read of
 * it, so that every rule and message of the reader holds for it. What such a word brings in has its place in that word.
 */
#include "read_private.h"

#include <string.h>

struct Setting {
    struct Reader *reader;
    const char *word; /* all of it, as typed */
    struct Mark mark; /* of its beginning */
    const char *key;  /* with a point before it */
    const char *value;
    bool good;
};

/* A text that begins at that byte of the word. */
static struct TreeNode *node_at(struct Setting *setting, enum TreeKind kind, const char *text, size_t at)
{
    struct TreeNode *node = arena_alloc(setting->reader->arena, sizeof *node);
    if (node == NULL) {
        setting->good = false;
        return NULL;
    }
    const char *before = arena_text(setting->reader->arena, setting->word, at);
    const struct Mark mark = {setting->mark.line, 1 + (int)utf8_count(before)};
    const int width = (int)utf8_count(text);
    *node = (struct TreeNode){.kind = kind,
                              .plain = true,
                              .mark = mark,
                              .width = width > 0 ? width : 1,
                              .text = text,
                              .length = strlen(text)};
    return node;
}

/* Letters of `rest` up to the next point, or to its end. */
static size_t part_length(const char *rest)
{
    return strcspn(rest, ".");
}

/* Where a part of the key begins in the word. */
static size_t place_of(const struct Setting *setting, const char *rest)
{
    return (size_t)(rest - setting->key - 1);
}

static const struct TreeNode *refuse(struct Setting *setting, enum DiagCode code, const char *rest,
                                     const char *const *words)
{
    const char *part = arena_text(setting->reader->arena, rest, part_length(rest));
    const struct TreeNode *node = node_at(setting, TREE_SCALAR, part, place_of(setting, rest));
    if (node != NULL) {
        reader_report(setting->reader, code, node, words);
    }
    setting->good = false;
    return node;
}

/* A name may hold points of its own: how much of `rest` it is, 0 when it is not what `rest` begins with. */
static size_t begins(const char *rest, const char *name)
{
    const size_t length = strlen(name);
    return length > 0 && strncmp(rest, name, length) == 0 && (rest[length] == '\0' || rest[length] == '.') ? length : 0;
}

static const char *name_of(const struct TreeEntry *entry)
{
    const struct TreeEntry *name = entry->key == NULL ? fields_find(entry->value, "name") : NULL;
    const struct TreeNode *node = entry->key != NULL ? entry->key : name != NULL ? name->value : NULL;
    return node != NULL && node->kind == TREE_SCALAR ? node->text : "";
}

/* The longest name that fits: of "gable" and "gable.top" the second. */
static struct TreeEntry *find_named(const struct TreeNode *node, const char *rest, size_t *length)
{
    struct TreeEntry *found = NULL;
    *length = 0;
    for (struct TreeEntry *entry = node->first; entry != NULL; entry = entry->next) {
        const size_t fits = begins(rest, name_of(entry));
        if (fits > *length) {
            *length = fits;
            found = entry;
        }
    }
    return found;
}

/* "2" of a list without names. */
static struct TreeEntry *find_numbered(const struct TreeNode *list, const char *rest, size_t *length)
{
    enum { DIGITS_MOST = 5 };
    const size_t digits = strspn(rest, "0123456789");
    int number = 0;
    for (size_t i = 0; i < digits && i < DIGITS_MOST; i++) {
        number = number * 10 + (rest[i] - '0');
    }
    struct TreeEntry *entry = digits > 0 && digits <= DIGITS_MOST && number > 0 ? list->first : NULL;
    for (; entry != NULL && number > 1; number--) {
        entry = entry->next;
    }
    *length = digits;
    return digits == part_length(rest) ? entry : NULL;
}

static const struct TreeNode *unknown_name(struct Setting *setting, const struct TreeNode *node, const char *rest)
{
    struct Arena *arena = setting->reader->arena;
    const char **names = arena_array(arena, (size_t)node->count + 1, sizeof *names);
    size_t count = 0;
    for (const struct TreeEntry *entry = node->first; names != NULL && entry != NULL; entry = entry->next) {
        if (*name_of(entry) != '\0') {
            names[count++] = name_of(entry);
        }
    }
    const char *written = arena_text(arena, rest, part_length(rest));
    const char *near = names != NULL ? read_nearest(written, names, count) : "";
    if (count == 0 && node->kind == TREE_LIST) {
        return refuse(setting, MSG_SET_NUMBER, rest, DIAG_WORDS(written));
    }
    if (*near == '\0') {
        return refuse(setting, MSG_SET_NAME_UNKNOWN, rest, DIAG_WORDS(written));
    }
    return refuse(setting, MSG_SET_NAME_MISSPELT, rest, DIAG_WORDS(written, near));
}

static const struct TreeNode *set_in(struct Setting *setting, const struct TreeNode *node, const char *rest);

/* A copy of a mapping with a key more. */
static const struct TreeNode *with_key(struct Setting *setting, const struct TreeNode *map, const char *rest)
{
    struct Arena *arena = setting->reader->arena;
    const size_t length = part_length(rest);
    const struct TreeNode *key =
        node_at(setting, TREE_SCALAR, arena_text(arena, rest, length), place_of(setting, rest));
    struct TreeNode *grown = node_at(setting, TREE_MAP, "", place_of(setting, rest));
    struct TreeEntry *entry = arena_alloc(arena, sizeof *entry);
    if (key == NULL || grown == NULL || entry == NULL) {
        return map;
    }
    if (map != NULL) {
        *grown = *map;
    }
    *entry = (struct TreeEntry){.key = key, .value = set_in(setting, NULL, rest + length)};
    if (grown->last != NULL) {
        grown->last->next = entry;
    } else {
        grown->first = entry;
    }
    grown->last = entry;
    grown->count++;
    return grown;
}

static bool is_set(const struct TreeNode *node)
{
    return node->mark.line >= DIAG_WORD_LINE;
}

/* Runs and segments are named by the file: no word from outside adds one. */
static bool holds_names(const struct Setting *setting, const struct TreeNode *node, const char *rest)
{
    return node->kind == TREE_LIST ||
           (rest == setting->key + sizeof ".runs" && strncmp(setting->key, ".runs.", sizeof ".runs") == 0);
}

/* What `node` becomes with the value at `rest` below it, which begins with a point or is empty. */
static const struct TreeNode *set_in(struct Setting *setting, const struct TreeNode *node, const char *rest)
{
    if (*rest == '\0') {
        if (node != NULL && is_set(node)) {
            return refuse(setting, MSG_SET_TWICE, setting->key + 1, DIAG_WORDS(setting->key + 1));
        }
        const char *equals = strchr(setting->word, '=') + 1;
        return node_at(setting, TREE_SCALAR, setting->value, (size_t)(equals - setting->word) + strspn(equals, " "));
    }
    rest++; /* the point */
    if (node == NULL) {
        return with_key(setting, NULL, rest);
    }
    if (node->kind == TREE_REFUSED) {
        return node;
    }
    if (node->kind == TREE_SCALAR) {
        return refuse(setting, MSG_SET_NO_KEYS, rest, DIAG_WORDS(rest));
    }
    size_t length = 0;
    struct TreeEntry *entry = find_named(node, rest, &length);
    if (entry == NULL && node->kind == TREE_LIST) {
        entry = find_numbered(node, rest, &length);
    }
    if (entry == NULL && node->kind == TREE_LIST && node->count == 1 && *name_of(node->first) == '\0') {
        node->first->value = set_in(setting, node->first->value, rest - 1); /* the only load need not be numbered */
        return node;
    }
    if (entry != NULL) {
        entry->value = set_in(setting, entry->value, rest + length);
        return node;
    }
    return holds_names(setting, node, rest) ? unknown_name(setting, node, rest) : with_key(setting, node, rest);
}

/* The list that a key goes into which begins with a name of a segment or run; NULL: it begins with a key of the file,
 * or with neither. */
static const char *left_out(const struct TreeNode *root, const char *rest)
{
    static const char *const lists[] = {"segments", "runs"};
    size_t length = 0;
    for (size_t i = 0; root->kind == TREE_MAP && i < sizeof lists / sizeof lists[0]; i++) {
        const struct TreeEntry *list = fields_find(root, lists[i]);
        if (list != NULL && find_named(root, rest, &length) == NULL && find_named(list->value, rest, &length) != NULL) {
            return lists[i];
        }
    }
    return NULL;
}

static const char *trimmed(struct Arena *arena, const char *from, size_t length)
{
    while (length > 0 && *from == ' ') {
        from++;
        length--;
    }
    while (length > 0 && from[length - 1] == ' ') {
        length--;
    }
    return arena_text(arena, from, length);
}

/* Every part of a key has letters, and what may not stand in a file may not come from outside it. */
static bool well_formed(const char *word)
{
    const char *equals = strchr(word, '=');
    if (equals == NULL || equals == word || word[0] == '.' || equals[-1] == '.' || strspn(word, " ") > 0) {
        return false;
    }
    for (const char *at = word; at < equals; at++) {
        if (at[0] == '.' && at[1] == '.') {
            return false;
        }
    }
    for (size_t at = 0, length = strlen(word); at < length;) {
        const int bytes = utf8_length(word + at, length - at);
        if (bytes == 0 || utf8_code(word + at) < 0x20 || text_code_refused(utf8_code(word + at))) {
            return false;
        }
        at += (size_t)bytes;
    }
    return true;
}

const struct TreeNode *tree_set(struct Reader *reader, const struct TreeNode *root, const char *word, int number)
{
    struct Setting setting = {.reader = reader, .word = word, .mark = {DIAG_WORD_LINE + number, 1}, .good = true};
    if (!well_formed(word)) {
        reader_report(reader, MSG_SET_FORM, &(struct TreeNode){.mark = setting.mark, .width = 1, .text = ""},
                      DIAG_WORDS(fields_quote(reader, word)));
        return NULL;
    }
    const char *equals = strchr(word, '=');
    setting.key = arena_print(reader->arena, ".%s", trimmed(reader->arena, word, (size_t)(equals - word)));
    setting.value = trimmed(reader->arena, equals + 1, strlen(equals + 1));
    const char *list = arena_failed(reader->arena) ? NULL : left_out(root, setting.key + 1);
    if (list != NULL) {
        const char *name = arena_text(reader->arena, setting.key + 1, part_length(setting.key + 1));
        refuse(&setting, MSG_SET_NAME_ALONE, setting.key + 1, DIAG_WORDS(name, list, list, name));
        return NULL;
    }
    const struct TreeNode *changed = arena_failed(reader->arena) ? NULL : set_in(&setting, root, setting.key);
    return setting.good ? changed : NULL;
}

/* ---- keys that are made here ---- */

/* Whether `path`, a name and what is below it, would be taken for something of another name. */
static bool taken_for(const char *path, const char *name, const char *other)
{
    return other != name && strlen(other) >= strlen(name) && begins(path, other) > 0;
}

static bool can_be_typed(struct Arena *arena, const char *path)
{
    return well_formed(arena_print(arena, "%s=", path)) && strchr(path, '=') == NULL;
}

const char *read_key_of_run(struct Arena *arena, const struct Survey *survey, int run, const char *below)
{
    const char *name = survey->runs[run].name;
    const char *path = arena_print(arena, "%s.%s", name, below);
    for (int i = 0; i < survey->run_count; i++) {
        if (taken_for(path, name, survey->runs[i].name)) {
            return NULL;
        }
    }
    return can_be_typed(arena, path) ? arena_print(arena, "runs.%s", path) : NULL;
}

static const char *segment_key(struct Arena *arena, const struct Survey *survey, const char *name, const char *below)
{
    const char *path = arena_print(arena, "%s.%s", name, below);
    for (int i = 0; i < survey->segment_count; i++) {
        if (taken_for(path, name, survey->segments[i].name)) {
            return NULL;
        }
    }
    return can_be_typed(arena, path) ? arena_print(arena, "segments.%s", path) : NULL;
}

const char *read_key_of_segment(struct Arena *arena, const struct Survey *survey, int segment, const char *below)
{
    const char *by_name = segment_key(arena, survey, survey->segments[segment].name, below);
    return by_name != NULL ? by_name : segment_key(arena, survey, arena_print(arena, "%d", segment + 1), below);
}

bool read_sets(const char *word, const char *key)
{
    const size_t length = strlen(key);
    return strncmp(word, key, length) == 0 && word[length + strspn(word + length, " ")] == '=';
}
