/* What every part of the reader does with the run's sink: reports with an underline of the right width, assumptions. */
#include "read_private.h"

#include <string.h>

void reader_report(struct Reader *reader, enum DiagCode code, const struct TreeNode *node, const char *const *words)
{
    diag_report_of(reader->diag, reader->subject, code, node->mark, node->width, words);
}

void reader_report_long(struct Reader *reader, const struct TreeNode *key, int most)
{
    reader_report(reader, MSG_LIST_TOO_LONG, key, DIAG_WORDS(key->text, arena_print(reader->arena, "%d", most)));
}

/* Characters of the value that begins at a mark: to its closing quote, or to what ends a plain value. */
static int width_at(struct Bytes source, struct Mark mark)
{
    size_t at = source_offset(source, mark);
    size_t start = at;
    if (at < source.length && (source.data[at] == '"' || source.data[at] == '\'')) {
        char quote = source.data[at++];
        while (at < source.length && source.data[at] != quote && source.data[at] != '\n' && source.data[at] != '\r') {
            at++;
        }
        at++;
    } else {
        while (at < source.length && strchr(",]}#\n\r", source.data[at]) == NULL &&
               !(source.data[at] == ':' && at + 1 < source.length && strchr(" \n\r", source.data[at + 1]) != NULL)) {
            at++;
        }
        while (at > start && source.data[at - 1] == ' ') {
            at--;
        }
    }
    int width = 0;
    for (size_t i = start; i < at && i < source.length; i++) {
        width += ((unsigned char)source.data[i] & 0xC0) != 0x80;
    }
    return width;
}

void reader_report_mark(struct Reader *reader, enum DiagCode code, struct Mark mark, const char *const *words)
{
    bool shown = diag_count(reader->diag) < DIAG_LIMIT; /* finding the place takes a walk through the file */
    const int width = shown && mark.line > 0 ? width_at(reader->source, mark) : 1;
    diag_report_of(reader->diag, reader->subject, code, mark, width, words);
}

void reader_assume(struct Reader *reader, struct Assumed assumed)
{
    assumed.run = reader->subject.of == DIAG_OF_RUN ? reader->subject.index : -1;
    if (reader->assumed_count == reader->assumed_room) {
        int room = reader->assumed_room > 0 ? reader->assumed_room * 2 : 64;
        struct Assumed *larger = arena_array(reader->arena, (size_t)room, sizeof *larger);
        if (larger == NULL) {
            return;
        }
        if (reader->assumed_count > 0) {
            memcpy(larger, reader->assumed, (size_t)reader->assumed_count * sizeof *larger);
        }
        reader->assumed = larger;
        reader->assumed_room = room;
    }
    reader->assumed[reader->assumed_count++] = assumed;
}

/* Three reversals make a rotation. */
static void reverse(struct Assumed *list, int from, int to)
{
    for (to--; from < to; from++, to--) {
        struct Assumed swapped = list[from];
        list[from] = list[to];
        list[to] = swapped;
    }
}

void reader_assumed_last(struct Reader *reader, int from, int to)
{
    int end = reader->assumed_count;
    reverse(reader->assumed, from, to);
    reverse(reader->assumed, to, end);
    reverse(reader->assumed, from, end);
}

const char *reader_path(struct Reader *reader, const char *path, const char *key)
{
    const size_t first = strlen(path), second = strlen(key);
    char *joined = first > 0 ? arena_alloc(reader->arena, first + second + 2) : NULL;
    if (joined == NULL) {
        return first > 0 ? "" : key;
    }
    memcpy(joined, path, first + 1);
    joined[first] = '.';
    memcpy(joined + first + 1, key, second + 1);
    return joined;
}

enum Version reader_version(struct Reader *reader, const struct TreeNode *root, const struct VersionKey *version)
{
    const struct TreeEntry *entry = fields_find(root, version->key);
    if (entry == NULL && unknown_key_near(root, version->key)) {
        return VERSION_HOLDS;
    }
    if (entry == NULL) {
        diag_report(reader->diag, version->missing, root->mark, 1, DIAG_NO_WORDS);
        return VERSION_MISSING;
    }
    if (entry->value->kind != TREE_SCALAR || !text_same(entry->value->text, "1")) {
        const char *written = entry->value->kind == TREE_SCALAR ? entry->value->text : "...";
        if (entry->value->kind != TREE_REFUSED) {
            reader_report(reader, version->unknown, entry->value, DIAG_WORDS(fields_quote(reader, written)));
        }
        return VERSION_OTHER;
    }
    if (root->first != entry) {
        reader_report(reader, version->not_first, entry->key, DIAG_NO_WORDS);
    }
    return VERSION_HOLDS;
}
