/* Two plans of one job side by side: what changed, what to fetch and what to bring back. In ten lines or so: of a kind
 * that has many the first few, and how many more there are. */
#include "diff_private.h"

#include "documents/json/json_out.h"
#include "documents/lists/csv_private.h"
#include "documents/shown_private.h"
#include "documents/summary/summary_private.h"

enum { TEXT_AT = 11, SHOWN_MOST = 3 };

static const struct {
    enum Saying label;
    const char *key; /* in CSV and JSON */
} whats[DIFF_WHATS] = {
    [DIFF_VERDICT] = {SAY_LEAD_VERDICT, "verdict"}, [DIFF_CABLE] = {SAY_FACT_CABLE, "cable"},
    [DIFF_DEVICE] = {SAY_LEAD_DEVICE, "device"},    [DIFF_LENGTH] = {SAY_LEAD_LENGTHS, "order-length"},
    [DIFF_DROP] = {SAY_LEAD_DROP, "drop"},          [DIFF_CHECK] = {SAY_LABEL_CHECK, "check"},
    [DIFF_FETCH] = {SAY_DIFF_LEAD_FETCH, "fetch"},  [DIFF_BACK] = {SAY_DIFF_LEAD_BACK, "bring-back"},
};

static bool is_part(enum DiffWhat what)
{
    return what == DIFF_FETCH || what == DIFF_BACK;
}

static const struct Say *row_said(struct Arena *arena, const struct DiffRow *row)
{
    const struct SayArg name = say_name(row->name);
    if (is_part(row->what)) {
        return say(arena, SAY_AS_IS, say_name(row->now));
    }
    if (*row->old == '\0') {
        return say(arena, SAY_DIFF_NEW, say_name(row->now), name);
    }
    if (*row->now == '\0') {
        return say(arena, SAY_DIFF_GONE, say_name(row->old), name);
    }
    return text_same(row->old, row->now) ? say(arena, SAY_DIFF_STAYS, say_name(row->now), name)
                                         : say(arena, SAY_DIFF_WAS, say_name(row->now), say_name(row->old), name);
}

static void add_rows(struct SummaryPage *page, const struct DiffRows *rows, enum DiffWhat what)
{
    struct Arena *arena = page->arena;
    int count = 0;
    for (int i = 0; i < rows->count; i++) {
        if (rows->list[i].what == what && ++count <= SHOWN_MOST) {
            summary_line(page, 0, TEXT_AT, count == 1 ? whats[what].label : SAY_NOTHING,
                         count == 1 ? TINT_STRONG : TINT_NONE, row_said(arena, &rows->list[i]));
        }
    }
    if (count > SHOWN_MOST) {
        summary_line(page, 0, TEXT_AT, SAY_NOTHING, TINT_NONE,
                     say(arena, SAY_DIFF_MORE, say_count(count - SHOWN_MOST)));
    }
}

struct Bytes document_diff_text(struct Arena *arena, const struct DiffSide *old, const struct DiffSide *now)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    const struct DiffRows rows = diff_rows(arena, old, now);
    if (rows.list == NULL) {
        return (struct Bytes){NULL, 0};
    }
    const char *title = now->plan->survey->job.title;
    summary_changes(&page, now->plan);
    summary_heading(&page, shown_said(arena, say(arena, SAY_DIFF_OF, say_name(now->plan->route),
                                                 say_name(old->plan->route), say_name(title))));
    if (!text_same(title, old->plan->survey->job.title)) {
        summary_line(&page, 0, TEXT_AT, SAY_LEAD_MIND, TINT_STRONG,
                     say(arena, SAY_DIFF_OTHER_JOB, say_name(old->plan->survey->job.title)));
    }
    for (enum DiffWhat what = DIFF_CABLE; what < DIFF_WHATS; what++) {
        add_rows(&page, &rows, what);
    }
    if (rows.count == 1) {
        summary_item(&page, 0, TEXT_AT, "", TINT_NONE, shown_said(arena, say(arena, SAY_DIFF_NOTHING)));
    }
    add_rows(&page, &rows, DIFF_VERDICT);
    summary_line(&page, 0, TEXT_AT, SAY_NOTHING, TINT_NONE, now->plan->verdict_text);
    return summary_finish(&page);
}

struct Bytes document_diff_csv(struct Arena *arena, const struct DiffSide *old, const struct DiffSide *now)
{
    struct TextBuilder csv = text_builder(arena);
    const struct DiffRows rows = diff_rows(arena, old, now);
    text_add(&csv, "what,name,old,new\r\n");
    for (int i = 0; i < rows.count; i++) {
        const struct DiffRow *row = &rows.list[i];
        const char *const cells[] = {whats[row->what].key, row->name, row->old, row->now};
        for (int c = 0; c < 4; c++) {
            text_add(&csv, c > 0 ? "," : "");
            csv_out_text(&csv, cells[c]);
        }
        text_add(&csv, "\r\n");
    }
    const char *text = text_done(&csv);
    return rows.list == NULL || arena_failed(arena) ? (struct Bytes){NULL, 0} : (struct Bytes){text, csv.length};
}

struct Bytes document_diff_json(struct Arena *arena, const struct DiffSide *old, const struct DiffSide *now)
{
    const struct DiffRows rows = diff_rows(arena, old, now);
    struct JsonOut *out = json_out_new(arena);
    struct JsonNode *root = json_root(out);
    json_text(out, root, "old", old->plan->route);
    json_text(out, root, "new", now->plan->route);
    struct JsonNode *list = json_list(out, root, "differences");
    for (int i = 0; i < rows.count; i++) {
        struct JsonNode *node = json_object(out, list, "");
        json_text(out, node, "what", whats[rows.list[i].what].key);
        json_text_if(out, node, "name", rows.list[i].name);
        json_text_if(out, node, "old", rows.list[i].old);
        json_text_if(out, node, "new", rows.list[i].now);
    }
    return json_out_finish(out);
}
