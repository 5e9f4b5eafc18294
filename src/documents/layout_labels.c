/* What the boxes under a strip say: the name of a stretch, its way and length, what it carries and what costs it
 * capacity; for an end, what the runs terminate in and what they serve. */
#include "layout_private.h"

#include "shown_private.h"

#include <math.h>

enum { NAME_LINES = 2, LINES_FOR_ONE_TEXT = 2, END_TEXT_LINES = 3, CONDITION_LINES = 3, STRETCH_LINES_MOST = 9, END_LINES_MOST = 7 };

/* keeps a number and its unit on one line */
#define NO_BREAK "\xC2\xA0"

static const double line_indent_mm = 4;

static const struct TextStyle name_style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_BLACK};
static const struct TextStyle strong_style = {.size_mm = TYPE_SMALL, .bold = true, .ink = INK_BLACK};
static const struct TextStyle line_style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK};

/* ---- collecting lines ---- */

struct Writing {
    struct Arena *arena;
    struct Label *label;
    double width_mm;
    double name_indent_mm; /* room for the number */
};

static void put_name(const struct Writing *writing, const char *name)
{
    writing->label->name_count = type_wrap(writing->arena, shown_text(writing->arena, name), name_style,
                                           writing->width_mm - writing->name_indent_mm, NAME_LINES, writing->label->names);
}

static void put_styled(const struct Writing *writing, struct TextStyle style, const char *text, int lines_most)
{
    struct Label *label = writing->label;
    int room = (label->is_end ? END_LINES_MOST : STRETCH_LINES_MOST) - label->line_count;
    if (room <= 0) {
        return;
    }
    label->line_count +=
        type_wrap(writing->arena, shown_text(writing->arena, text), style, writing->width_mm - line_indent_mm,
                  room < lines_most ? room : lines_most, &label->lines[label->line_count]);
}

static void put_line(const struct Writing *writing, const char *text, int lines_most)
{
    put_styled(writing, line_style, text, lines_most);
}

/* ---- a stretch ---- */

static const struct Rating *rating_at(const struct PlanRun *run, int segment)
{
    for (int i = 0; run->rated && i < run->rating_count; i++) {
        if (run->ratings[i].segment == segment) {
            return &run->ratings[i];
        }
    }
    return NULL;
}

static int segment_index(const struct Label *label)
{
    return label->stretch->number - 1;
}

static void put_way(const struct RouteLayout *layout, const struct Writing *writing)
{
    const struct Stretch *stretch = writing->label->stretch;
    const struct Segment *surveyed = stretch->segment->surveyed;
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "%s, %s" NO_BREAK "m", survey_word(WORDS_WAY, (int)surveyed->way),
               layout_metres(layout, stretch->length_m));
    if (survey_in_ground(surveyed->way)) {
        text_print(&text, ", %s" NO_BREAK "m deep", number_significant(layout->arena, stretch->segment->depth_m, 3));
    }
    double rise_m = surveyed->rise_m.value;
    if (rise_m > 0 || rise_m < 0) {
        text_print(&text, ", %s" NO_BREAK "%s" NO_BREAK "m", rise_m > 0 ? "up" : "down",
                   layout_metres(layout, rise_m > 0 ? rise_m : -rise_m));
    }
    put_line(writing, text_done(&text), LINES_FOR_ONE_TEXT);
}

/* The rating with the least room over its device, of all power runs in a stretch; NULL when there is none. */
static const struct Rating *worst_rating(const struct Plan *plan, int segment, bool *all_same)
{
    const struct Rating *worst = NULL;
    double worst_device_a = 0;
    *all_same = true;
    for (int i = 0; i < plan->run_count; i++) {
        const struct Rating *rating = rating_at(&plan->runs[i], segment);
        if (rating == NULL) {
            continue;
        }
        *all_same = *all_same && (worst == NULL || fabs(rating->capacity_a - worst->capacity_a) < 0.05);
        if (worst == NULL || rating->capacity_a * worst_device_a < worst->capacity_a * plan->runs[i].rating_a) {
            worst = rating;
            worst_device_a = plan->runs[i].rating_a;
        }
    }
    return worst;
}

/* "carries 29.3 A (feeder), 24.1 A (pump)"; one figure when it is the same for all. */
static const struct Rating *put_capacity(const struct RouteLayout *layout, const struct Writing *writing)
{
    const struct Plan *plan = layout->plan;
    bool all_same = false;
    const struct Rating *worst = worst_rating(plan, segment_index(writing->label), &all_same);
    if (worst == NULL) {
        return NULL;
    }
    struct TextBuilder text = text_builder(layout->arena);
    if (all_same) {
        text_print(&text, "carries %s" NO_BREAK "A", number_text(layout->arena, worst->capacity_a, 1));
    }
    for (int i = 0; i < plan->run_count && !all_same; i++) {
        const struct Rating *rating = rating_at(&plan->runs[i], segment_index(writing->label));
        if (rating != NULL) {
            text_print(&text, "%s%s" NO_BREAK "A (%s)", text.length == 0 ? "carries " : ", ",
                       number_text(layout->arena, rating->capacity_a, 1), plan->runs[i].surveyed->name);
        }
    }
    put_line(writing, text_done(&text), LINES_FOR_ONE_TEXT);
    return worst;
}

/* Loaded circuits that lie together in a stretch: its power runs and what was there before. */
static int circuit_count(const struct Plan *plan, int segment)
{
    const struct Segment *surveyed = plan->segments[segment].surveyed;
    int count = surveyed->has_beside ? surveyed->beside.circuits : 0;
    for (int i = 0; i < plan->run_count; i++) {
        count += rating_at(&plan->runs[i], segment) != NULL;
    }
    return count;
}

struct ShortWord {
    const char *symbol, *word;
};

/* What costs capacity, in a word or two; the whole reason stands in the plan and the summary. */
static const char *condition_text(const struct RouteLayout *layout, const struct Label *label, const char *symbol)
{
    static const struct ShortWord words[] = {
        {"Ci", "insulation"}, {"Sun", "full" NO_BREAK "sun"}, {"Cc", "in the ground"}, {"Cf", "semi-enclosed fuse"}, {"Cs", "soil"}};
    const struct Segment *surveyed = label->stretch->segment->surveyed;
    struct Arena *arena = layout->arena;
    if (text_same(symbol, "Cg")) {
        return arena_print(arena, "%d" NO_BREAK "circuits", circuit_count(layout->plan, segment_index(label)));
    }
    if (text_same(symbol, "Cd")) {
        return arena_print(arena, "depth" NO_BREAK "%s" NO_BREAK "m",
                           number_significant(arena, label->stretch->segment->depth_m, 3));
    }
    if (text_same(symbol, "Ca")) {
        bool ground = survey_in_ground(surveyed->way);
        return arena_print(arena, "%s" NO_BREAK "%s" NO_BREAK "degC", ground ? "ground" : "air",
                           number_significant(arena, ground ? surveyed->ground_degc.value : surveyed->air_degc.value, 3));
    }
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        if (text_same(symbol, words[i].symbol)) {
            return words[i].word;
        }
    }
    return symbol;
}

/* "insulation 0.78, 3 circuits 0.80" */
static void put_conditions(const struct RouteLayout *layout, const struct Writing *writing, const struct Rating *rating)
{
    struct TextBuilder text = text_builder(layout->arena);
    for (int i = 0; rating != NULL && i < rating->factor_count && i < RATING_FACTORS_MOST; i++) {
        const struct Factor *factor = &rating->factors[i];
        if (factor->value < 1) {
            text_print(&text, "%s%s" NO_BREAK "%s", text.length == 0 ? "" : ", ",
                       condition_text(layout, writing->label, factor->symbol), number_text(layout->arena, factor->value, 2));
        }
    }
    put_line(writing, text_done(&text), CONDITION_LINES);
}

static void write_stretch(const struct RouteLayout *layout, const struct Writing *writing)
{
    put_name(writing, writing->label->stretch->segment->surveyed->name);
    put_way(layout, writing);
    put_conditions(layout, writing, put_capacity(layout, writing));
    if (!writing->label->governs) {
        return;
    }
    struct TextBuilder text = text_builder(layout->arena);
    int governed = 0, rated = 0;
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct PlanRun *run = &layout->plan->runs[i];
        rated += run->rated;
        if (run->rated && run->governing >= 0 && run->governing < run->rating_count &&
            run->ratings[run->governing].segment == segment_index(writing->label)) {
            text_print(&text, "%s%s", governed++ > 0 ? ", " : "governs ", run->surveyed->name);
        }
    }
    int before = writing->label->line_count;
    put_styled(writing, strong_style, rated == 1 ? "governs" : text_done(&text), LINES_FOR_ONE_TEXT);
    writing->label->strong_count = writing->label->line_count - before;
}

/* ---- an end ---- */

static void put_end(const struct RouteLayout *layout, const struct Writing *writing, const struct Run *run, bool finish,
                    bool named)
{
    const struct End *end = finish ? &run->finish : &run->start;
    struct TextBuilder text = text_builder(layout->arena);
    if (named) {
        text_print(&text, "%s: ", run->name);
    }
    text_print(&text, "%s, %s", survey_word(WORDS_INTO, (int)end->into), survey_word(WORDS_PLACE, (int)end->place));
    if (survey_armoured(run->cable.type) && end->into != INTO_FREE) {
        text_add(&text, ", gland");
    }
    if (!named) { /* with several runs there is no room for it */
        text_print(&text, ", tail" NO_BREAK "%s" NO_BREAK "m", number_significant(layout->arena, end->tail_m.value, 3));
    }
    if (!named && end->loop_m.given && end->loop_m.value > 0) {
        text_print(&text, ", loop" NO_BREAK "%s" NO_BREAK "m", number_significant(layout->arena, end->loop_m.value, 3));
    }
    put_line(writing, text_done(&text), named ? LINES_FOR_ONE_TEXT : END_TEXT_LINES);
    if (finish && run->serves != NULL && *run->serves != '\0') {
        put_line(writing, arena_print(layout->arena, "serves %s", run->serves), LINES_FOR_ONE_TEXT);
    }
}

static void write_end(const struct RouteLayout *layout, const struct Writing *writing)
{
    int boundary = writing->label->end->boundary;
    int starts = 0, finishes = 0;
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct Run *run = layout->plan->runs[i].surveyed;
        starts += layout_run_boundary(run, false) == boundary;
        finishes += layout_run_boundary(run, true) == boundary;
    }
    put_name(writing, boundary == 0                        ? "supply end"
                      : boundary == layout->stretch_count ? "far end"
                      : starts == 0                        ? "a run ends here"
                      : finishes == 0                      ? "a run begins here"
                                                           : "runs end and begin");
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct Run *run = layout->plan->runs[i].surveyed;
        for (int finish = 0; finish < 2; finish++) {
            if (layout_run_boundary(run, finish == 1) == boundary) {
                put_end(layout, writing, run, finish == 1, layout->plan->run_count > 1);
            }
        }
    }
}

/* ---- all boxes of a strip ---- */

static struct Label stretch_label(const struct RouteLayout *layout, int index)
{
    const struct Stretch *stretch = &layout->stretches[index];
    return (struct Label){.stretch = stretch,
                          .sign = arena_print(layout->arena, "%d", stretch->number),
                          .governs = layout_governs(layout->plan, index),
                          .at_mm = stretch->x_mm + stretch->width_mm / 2};
}

static struct Label end_label(const struct RouteLayout *layout, int end)
{
    int boundary = layout->ends[end].boundary;
    double at_mm = WAY_LEFT - END_REACH;
    if (boundary > 0) {
        const struct Stretch *before = &layout->stretches[boundary - 1];
        at_mm = before->x_mm + before->width_mm + (boundary == layout->stretch_count ? END_REACH : 0);
    }
    return (struct Label){
        .is_end = true, .end = &layout->ends[end], .sign = layout->ends[end].letter, .at_mm = at_mm};
}

double layout_box_head(const struct RouteLayout *layout, const struct Label *label)
{
    return fmax(label->name_count * LINE_PITCH, 2 * layout->sign_radius_mm - 1.5);
}

static double box_height(const struct RouteLayout *layout, const struct Label *label)
{
    return BOX_PAD_TOP + layout_box_head(layout, label) + label->line_count * LINE_PITCH + BOX_PAD_BOTTOM;
}

void layout_labels(struct RouteLayout *layout, struct Strip *strip)
{
    strip->labels = arena_array(layout->arena, (size_t)strip->label_count, sizeof *strip->labels);
    if (strip->labels == NULL) {
        layout->failed = true;
        return;
    }
    int count = 0;
    if (strip->first == 0 && layout_end_at(layout, 0) >= 0) {
        strip->labels[count++] = end_label(layout, layout_end_at(layout, 0));
    }
    for (int i = strip->first; i <= strip->last; i++) {
        strip->labels[count++] = stretch_label(layout, i);
        if (layout_end_at(layout, i + 1) >= 0) {
            strip->labels[count++] = end_label(layout, layout_end_at(layout, i + 1));
        }
    }
    layout_slots(strip);
    for (int i = 0; i < count; i++) {
        struct Label *label = &strip->labels[i];
        struct Writing writing = {layout->arena, label, strip->box_width_mm, 2 * layout->sign_radius_mm + 4.4};
        if (label->is_end) {
            write_end(layout, &writing);
        } else {
            write_stretch(layout, &writing);
        }
        double height_mm = box_height(layout, label);
        if (height_mm > strip->row_height_mm[label->row]) {
            strip->row_height_mm[label->row] = height_mm;
        }
    }
}
