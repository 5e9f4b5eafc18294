/* What must be measured again: each assumption that decides, what the plan would be with its other value, and how many
 * of them change nothing. */
#include "documents/documents.h"

#include "documents/shown_private.h"
#include "summary_private.h"

#include <math.h>

enum { TEXT_AT = 3, SETTINGS_MOST = 32 }; /* the command line takes twice as many */

/* The size or rating then, beside the one now: the run is named where there are several. */
static const struct Say *instead(struct Arena *arena, const struct Plan *plan, int run, double then, double now,
                                 enum Unit unit)
{
    const char *name = plan->run_count > 1 ? plan->runs[run].settled->name : "";
    return say(arena, SAY_DECIDES_INSTEAD, say_name(name), say_digits(then, 4, unit), say_digits(now, 4, unit));
}

/* Nothing else in it, a shell takes a word as it stands. */
static bool is_plain(char letter)
{
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9') ||
           letter == '.' || letter == '_' || letter == '/' || letter == '=' || letter == '-';
}

static const char *quoted(struct Arena *arena, const char *word)
{
    struct TextBuilder text = text_builder(arena);
    bool plain = true;
    text_add_char(&text, '\'');
    for (const char *at = word; *at != '\0'; at++) {
        plain = plain && is_plain(*at);
        text_add(&text, *at == '\'' ? "'\\'" : "");
        text_add_char(&text, *at);
    }
    text_add_char(&text, '\'');
    return plain ? word : text_done(&text);
}

/* To be copied, so no line of it is broken. */
static void add_settings(struct SummaryPage *page, const struct Settings *settings)
{
    if (settings->count > SETTINGS_MOST) {
        summary_line(page, 0, TEXT_AT, SAY_NOTHING, TINT_NONE,
                     say(page->arena, SAY_DECIDES_SETTINGS_MANY, say_count(settings->count)));
        return;
    }
    for (int i = 0; i < settings->count; i++) {
        const struct Setting *setting = &settings->list[i];
        const char *word = arena_print(page->arena, "%s=%s", setting->key, setting->value);
        text_print(&page->text, "%*s--set %s\n", TEXT_AT, "", quoted(page->arena, shown_text(page->arena, word)));
    }
}

static void add_one(struct SummaryPage *page, const struct Plan *plan, const struct Decisive *one)
{
    struct Arena *arena = page->arena;
    const struct SurveyRange *range = one->assumption < 0 ? &plan->survey->ranges[one->range] : NULL;
    summary_item(page, 0, TEXT_AT, "-", TINT_STRONG, shown_said(arena, decisive_said(arena, plan, one, true)));
    if (one->cable_changes) {
        const double now_mm2 = plan->runs[one->cable_run].size_mm2;
        summary_line(page, 0, TEXT_AT, SAY_NOTHING, TINT_NONE,
                     instead(arena, plan, one->cable_run, one->size_mm2, now_mm2, UNIT_MM2));
    }
    const double now_a = one->device_changes ? plan->runs[one->device_run].rating_a : 0;
    if (one->device_changes &&
        fabs(one->rating_a - now_a) > 1e-9) { /* else it is of another kind, as the line above says */
        summary_line(page, 0, TEXT_AT, SAY_NOTHING, TINT_NONE,
                     instead(arena, plan, one->device_run, one->rating_a, now_a, UNIT_A));
    }
    summary_line(page, 0, TEXT_AT, SAY_NOTHING, TINT_NONE,
                 range == NULL
                     ? plan->assumptions[one->assumption].text
                     : say(arena, SAY_RANGE_AT, say_name(range->where), say_name(range->text), say_name(range->at)));
    add_settings(page, &one->settings);
}

struct Bytes document_decides_text(struct Arena *arena, const struct Plan *plan, const struct Decisives *decisives)
{
    struct SummaryPage page = {.arena = arena, .text = text_builder(arena)};
    const int idle = decisives->tried - decisives->count;
    summary_changes(&page, plan);
    summary_head(&page, decisives->count > 0 ? SAY_DECIDES_MEASURE_AGAIN : SAY_DECIDES_NOTHING);
    for (int i = 0; i < decisives->count; i++) {
        add_one(&page, plan, &decisives->list[i]);
    }
    for (int i = 0; i < decisives->nameless_count; i++) {
        const struct Assumption *nameless = &plan->assumptions[decisives->nameless[i]];
        summary_item(
            &page, 0, TEXT_AT, "-", TINT_NONE,
            shown_said(arena, say(arena, SAY_DECIDES_NO_KEY, say_name(nameless->where), say_part(nameless->other))));
    }
    const int no_other = plan->assumption_count - (decisives->tried - decisives->ends) - decisives->nameless_count;
    summary_item(&page, 0, TEXT_AT, "", TINT_NONE,
                 shown_said(arena, say(arena, SAY_DECIDES_REST, say_count(idle), say_count(no_other))));
    summary_verdict(&page, plan, TEXT_AT + 8);
    return summary_finish(&page);
}
