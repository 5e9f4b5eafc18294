/* What became of one route file, and what was reported of it, as JSON. */
#include "documents/documents.h"
#include "documents/shown_private.h"
#include "documents/xml/plan_write_private.h"

#include "json_out.h"

/* What can stand in place of what was written; "" where the message names no such thing, or two of them. It is the last
 * of its words. */
static const char *suggestion_of(const struct Diagnostic *one)
{
    const char *last = "";
    switch (one->code) {
    case MSG_KEY_MISSPELT:
    case MSG_KEY_ODD_LETTER:
    case MSG_SET_NAME_MISSPELT:
    case MSG_WORD_MISSPELT:
    case MSG_ALONG_MISSPELT:
    case MSG_CPC_RUN_MISSPELT:
    case MSG_STOCK_RUN_MISSPELT:
    case MSG_PRICES_CURRENCY_CAPITALS:
        for (int i = 0; one->words != NULL && one->words[i] != NULL; i++) {
            last = one->words[i];
        }
        return last;
    default: return "";
    }
}

/* Keys, and numbers of a list from 0 on. */
static void add_path(struct JsonOut *out, struct JsonNode *node, const struct KeyPath *path)
{
    struct JsonNode *list = json_list(out, node, "path");
    for (int i = 0; i < path->count; i++) {
        if (path->steps[i].key != NULL) {
            json_text(out, list, "", path->steps[i].key);
        } else {
            json_number(out, list, "", path->steps[i].index);
        }
    }
}

void json_told(struct JsonOut *out, struct JsonNode *list, const struct Told *told)
{
    for (size_t i = 0; told->diag != NULL && i < diag_count(told->diag); i++) {
        const struct Diagnostic *one = diag_at(told->diag, i);
        struct JsonNode *node = json_object(out, list, "");
        const char *word = diag_word_at(told->diag, one->mark);
        json_text(out, node, "file", told->file);
        json_text_if(out, node, "set", word != NULL ? word : "");
        if (word == NULL && one->mark.line > 0) {
            json_number(out, node, "line", one->mark.line);
            json_number(out, node, "column", one->mark.column);
            if (told->paths != NULL) {
                add_path(out, node, &told->paths[i]);
            }
        }
        json_text(out, node, "severity", one->severity == DIAG_ERROR ? "error" : "warning");
        json_text(out, node, "name", diag_name(one->code));
        json_text(out, node, "message", one->text);
        json_text_if(out, node, "suggestion", suggestion_of(one));
    }
}

void json_changes(struct JsonOut *out, struct JsonNode *root, const struct Survey *survey)
{
    struct JsonNode *set = survey->change_count > 0 ? json_list(out, root, "set") : NULL;
    for (int i = 0; i < survey->change_count; i++) {
        json_text(out, set, "", survey->changes[i]);
    }
    struct JsonNode *ranges = survey->range_count > 0 ? json_list(out, root, "ranges") : NULL;
    for (int i = 0; i < survey->range_count; i++) {
        struct JsonNode *node = json_object(out, ranges, "");
        json_text(out, node, "where", survey->ranges[i].where);
        json_text(out, node, "range", survey->ranges[i].text);
        json_text(out, node, "planned", survey->ranges[i].at);
    }
}

struct Bytes document_check_json(struct Arena *arena, const char *file, int status, const struct Plan *plan,
                                 const struct Told *told, int count)
{
    struct JsonOut *out = json_out_new(arena);
    struct JsonNode *root = json_root(out);
    json_text(out, root, "file", file);
    json_number(out, root, "status", status);
    if (plan != NULL) {
        json_text(out, root, "verdict", plan_xml_verdict(plan->verdict));
        json_text(out, root, "verdict-text", shown_said(arena, plan->verdict_text));
        struct JsonNode *open = json_list(out, root, "open");
        for (int i = 0; i < plan->open_count; i++) {
            json_text(out, open, "", shown_said(arena, plan->open[i].text));
        }
    }
    struct JsonNode *list = json_list(out, root, "diagnostics");
    for (int i = 0; i < count; i++) {
        json_told(out, list, &told[i]);
    }
    return json_out_finish(out);
}
