/* What the box of an end says: what the runs terminate in, whether their armour is earthed there, what room they need,
 * what they serve. */
#include "layout_writing_private.h"

#include "documents/earth_ends_private.h"
#include "documents/shown_private.h"

#include <math.h>
#include <string.h>

enum { END_TEXT_LINES = 4, DEVICE_LINES = 7, ENTRY_LINES = 12, ENTRY_LINES_LEAST = 6 };

/* "BW-20": the gland that the parts list has for an end, without its size where that is not held; "" when it has none.
 */
static const char *gland_text(const struct RouteLayout *layout, const struct Run *run, bool finish)
{
    static const char code[] = "gland-";
    for (int i = 0; layout->parts != NULL && i < layout->parts->count; i++) {
        const struct Part *part = &layout->parts->parts[i];
        if (part->aisle == AISLE_TERMINATIONS && strncmp(part->code, code, sizeof code - 1) == 0 &&
            parts_used_at(part, run, finish ? PART_AT_FINISH : PART_AT_START)) {
            const char *kind = part->code + sizeof code - 1;
            size_t word = strcspn(kind, "-");
            bool sized = kind[word] == '-' && strspn(kind + word + 1, "0123456789S") == strlen(kind + word + 1);
            return arena_print(layout->arena, NO_BREAK "%.*s", (int)(sized ? strlen(kind) : word), kind);
        }
    }
    return "";
}

/* Whether what carries the supply's earth is joined at an end: a crew must be able to see it on one sheet. */
static const char *earth_text(const struct RouteLayout *layout, const struct PlanRun *planned, bool finish)
{
    const enum EarthEnd armour = earth_far_armour(layout->plan, planned);
    const enum EarthEnd conductor = earth_far_conductor(layout->plan, planned);
    if (armour == EARTH_ABSENT && conductor != EARTH_STOPS) {
        return "";
    }
    const enum EarthEnd far = armour != EARTH_ABSENT ? armour : conductor;
    const bool both = armour != EARTH_ABSENT && conductor != EARTH_ABSENT;
    const char *core = planned->settled->cable.cpc == CPC_SEPARATE ? "earth" NO_BREAK "cable" : "earth" NO_BREAK "core";
    const char *what =
        !both ? (armour != EARTH_ABSENT ? "armour" : core) : arena_print(layout->arena, "armour and %s", core);
    if (!finish || far == EARTH_CONNECTED) {
        return arena_print(layout->arena, "%s" NO_BREAK "earthed", what);
    }
    return far == EARTH_ASK
               ? arena_print(layout->arena, "%s: ASK" NO_BREAK "FIRST", what)
               : arena_print(layout->arena, "%s NOT" NO_BREAK "earthed%s", what,
                             conductor != EARTH_STOPS ? ""
                                                      : arena_print(layout->arena, ": cap" NO_BREAK "the %s", core));
}

/* An earth run that is the protective conductor of a run to an island ends there unjoined. */
static const char *earth_run_text(const struct Plan *plan, const struct Run *earth, bool finish)
{
    for (int i = 0; finish && i < plan->run_count; i++) {
        const struct Run *run = plan->runs[i].settled;
        if (survey_earth_stops(plan->survey, run) && run->cable.cpc == CPC_SEPARATE && run->cable.cpc_run >= 0 &&
            text_same(plan->survey->runs[run->cable.cpc_run].name, earth->name)) {
            return "NOT" NO_BREAK "earthed: cap" NO_BREAK "it";
        }
    }
    return "";
}

/* The cautions of every run that begins here. */
static const char *run_flags(const struct RouteLayout *layout, int boundary)
{
    struct TextBuilder text = text_builder(layout->arena);
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct Run *run = layout->plan->runs[i].settled;
        const char *numbers =
            layout_run_boundary(run, false) == boundary ? layout_flag_numbers(layout, run->name, -1) : "";
        if (*numbers != '\0') {
            text_print(&text, "%s%s", text.length > 0 ? ", " : "", numbers);
        }
    }
    return text_done(&text);
}

/* The cable as a thing to carry and to bend, where it starts. */
static const char *cable_text(const struct RouteLayout *layout, const struct PlanCable *cable)
{
    if (cable->overall_mm <= 0) {
        return "";
    }
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "cable" NO_BREAK "%s" NO_BREAK "mm thick",
               number_significant(layout->arena, cable->overall_mm, 3));
    if (cable->order_weight_kg > 0) {
        text_print(&text, ", %s" NO_BREAK "kg%s", number_text(layout->arena, ceil(cable->order_weight_kg), 0),
                   cable->heavy ? ":" NO_BREAK "roll" NO_BREAK "it" : "");
    }
    return text_done(&text);
}

static void put_room(const struct RouteLayout *layout, const struct Writing *writing, const struct PlanEnd *end)
{
    if (end->tight) {
        layout_put_line(writing,
                        arena_print(layout->arena, "room %s, needs %s: TOO TIGHT",
                                    layout_millimetres(layout, end->room_mm),
                                    layout_millimetres(layout, end->needs_mm)),
                        LINES_FOR_ONE_TEXT);
    } else if (end->needs_mm > 0) {
        layout_put_line(
            writing,
            arena_print(layout->arena, "%s clear at the entry", layout_millimetres(layout, ceil(end->needs_mm))),
            LINES_FOR_ONE_TEXT);
    }
}

/* What there is to say of one end of a run, but for its name. */
static const char *end_text(const struct RouteLayout *layout, const struct PlanRun *planned, bool finish)
{
    const struct Run *run = planned->settled;
    const struct End *end = finish ? &run->finish : &run->start;
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "%s, %s", survey_word(WORDS_INTO, (int)end->into), survey_word(WORDS_PLACE, (int)end->place));
    if (survey_armoured(run->cable.type) && end->into != INTO_FREE) {
        text_print(&text, ", gland%s", gland_text(layout, run, finish));
    }
    return text_done(&text);
}

static const char *end_earth_text(const struct RouteLayout *layout, const struct PlanRun *planned, bool finish)
{
    return planned->rated ? earth_text(layout, planned, finish)
                          : earth_run_text(layout->plan, planned->settled, finish);
}

/* ", from the meter's tails, ...", where the survey says. */
static const char *from_text(const struct RouteLayout *layout, const struct Run *run)
{
    return run->start.from_given
               ? arena_print(layout->arena, "; from %s", survey_meaning(WORDS_FROM, (int)run->start.from))
               : "";
}

/* Of a run alone on the drawing there is room for all of it. */
static void put_only_end(const struct RouteLayout *layout, const struct Writing *writing, const struct PlanRun *planned,
                         bool finish)
{
    const struct Run *run = planned->settled;
    const struct End *end = finish ? &run->finish : &run->start;
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "%s, tail" NO_BREAK "%s" NO_BREAK "m", end_text(layout, planned, finish),
               number_significant(layout->arena, end->tail_m.value, 3));
    if (end->loop_m.given && end->loop_m.value > 0) {
        text_print(&text, ", loop" NO_BREAK "%s" NO_BREAK "m", number_significant(layout->arena, end->loop_m.value, 3));
    }
    layout_put_line(writing, text_done(&text), END_TEXT_LINES);
    layout_put_line(writing, end_earth_text(layout, planned, finish), LINES_FOR_ONE_TEXT);
    if (!finish && planned->device_full != NULL) {
        layout_put_line(writing,
                        arena_print(layout->arena, "fed by %s%s", shown_said(layout->arena, planned->device_full),
                                    from_text(layout, run)),
                        DEVICE_LINES);
    }
    put_room(layout, writing, finish ? &planned->finish_end : &planned->start_end);
    layout_put_line(writing, finish ? "" : cable_text(layout, &planned->cable_facts), LINES_FOR_ONE_TEXT);
    if (finish && run->serves != NULL && *run->serves != '\0') {
        layout_put_line(writing, arena_print(layout->arena, "serves %s", run->serves), LINES_FOR_ONE_TEXT);
    }
}

/* With several runs: the ends that have the same said of them are one entry. */
static const char *shared_text(const struct RouteLayout *layout, const struct PlanRun *planned, bool finish)
{
    const struct Run *run = planned->settled;
    const char *earth = end_earth_text(layout, planned, finish);
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "%s%s%s", end_text(layout, planned, finish), *earth != '\0' ? ", " : "", earth);
    if (!finish && planned->device_full != NULL) {
        text_print(&text, ", fed by %s%s", shown_said(layout->arena, planned->device_full), from_text(layout, run));
    }
    if (finish && run->serves != NULL && *run->serves != '\0') {
        text_print(&text, ", serves %s", run->serves);
    }
    return text_done(&text);
}

/* The end of the `index`th half run at a boundary; NULL when it is elsewhere. */
static const struct PlanRun *half_run_at(const struct RouteLayout *layout, int index, int boundary)
{
    const struct PlanRun *planned = &layout->plan->runs[index / 2];
    return layout_run_boundary(planned->settled, index % 2 == 1) == boundary ? planned : NULL;
}

/* "feeder, pump: enclosure, indoors, ..." of the half run and of all later ones like it; how many ends it tells of, 0
 * when an earlier entry has told it. `texts`: what is said of each half run at the boundary, NULL elsewhere. */
static int shared_entry(const struct RouteLayout *layout, const char *const *texts, int index,
                        struct TextBuilder *entry)
{
    int told = 0;
    for (int i = index % 2; i < layout->plan->run_count * 2; i += 2) {
        if (texts[i] == NULL || !text_same(texts[i], texts[index])) {
            continue;
        }
        if (i < index) {
            return 0;
        }
        text_print(entry, "%s%s", told > 0 ? ", " : "", layout->plan->runs[i / 2].settled->name);
        told++;
    }
    text_print(entry, ": %s", texts[index]);
    return told;
}

/* What has no room is at least counted. */
static void put_shared_ends(const struct RouteLayout *layout, const struct Writing *writing, int boundary, int left)
{
    const int halves = layout->plan->run_count * 2;
    const char **texts = arena_array(layout->arena, (size_t)halves, sizeof *texts);
    for (int i = 0; texts != NULL && i < halves; i++) {
        const struct PlanRun *planned = half_run_at(layout, i, boundary);
        texts[i] = planned == NULL ? NULL : shared_text(layout, planned, i % 2 == 1);
    }
    for (int i = 0; texts != NULL && i < halves; i++) {
        struct TextBuilder entry = text_builder(layout->arena);
        const int told = texts[i] == NULL ? 0 : shared_entry(layout, texts, i, &entry);
        if (told == 0) {
            continue;
        }
        if (END_LINES_MOST - writing->label->line_count < ENTRY_LINES_LEAST + (left > told)) {
            layout_put_line(writing, arena_print(layout->arena, "and %d more: see the brief", left), 1);
            return;
        }
        layout_put_line(writing, text_done(&entry), ENTRY_LINES);
        left -= told;
    }
}

void layout_write_end(const struct RouteLayout *layout, const struct Writing *writing)
{
    int boundary = writing->label->end->boundary;
    int starts = 0, finishes = 0;
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct Run *run = layout->plan->runs[i].settled;
        starts += layout_run_boundary(run, false) == boundary;
        finishes += layout_run_boundary(run, true) == boundary;
    }
    layout_put_name(writing, boundary == 0                       ? "supply end"
                             : boundary == layout->stretch_count ? "far end"
                             : starts == 0                       ? "a run ends here"
                             : finishes == 0                     ? "a run begins here"
                                                                 : "runs end and begin");
    layout_put_flags(writing, run_flags(layout, boundary));
    if (layout->plan->run_count > 1) {
        put_shared_ends(layout, writing, boundary, starts + finishes);
        return;
    }
    for (int i = 0; i < 2; i++) {
        if (half_run_at(layout, i, boundary) != NULL) {
            put_only_end(layout, writing, &layout->plan->runs[0], i == 1);
        }
    }
}
