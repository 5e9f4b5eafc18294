/* What the boxes under a strip say: the name of a stretch, its way and length, what it carries and what costs it
 * capacity; for an end, what the runs terminate in and what they serve. */
#include "layout_private.h"

#include "shown_private.h"

#include <math.h>
#include <string.h>

enum {
    NAME_LINES = 2,
    LINES_FOR_ONE_TEXT = 2,
    END_TEXT_LINES = 4,
    WHOLE_MOST = 16,
    WAY_LINES = 3,
    CONDITION_LINES = 3,
    STRETCH_LINES_MOST = 11,
    END_LINES_MOST = 11,
    LINES_OF_A_RUN = 6
};

/* keeps a number and its unit on one line */
#define NO_BREAK "\xC2\xA0"
#define DEGREES  "\xC2\xB0\x43" /* the last byte is the C */
#define TIMES    "\xC3\x97"

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
    int kept_lines;        /* for what comes last */
};

static void put_name(const struct Writing *writing, const char *name)
{
    writing->label->name_count =
        type_wrap(writing->arena, shown_text(writing->arena, name), name_style,
                  writing->width_mm - writing->name_indent_mm, NAME_LINES, writing->label->names);
}

static void put_styled(const struct Writing *writing, struct TextStyle style, const char *text, int lines_most)
{
    struct Label *label = writing->label;
    int room = (label->is_end ? END_LINES_MOST : STRETCH_LINES_MOST - writing->kept_lines) - label->line_count;
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

static void put_flags(const struct Writing *writing, const char *numbers)
{
    writing->label->flag_count =
        type_wrap(writing->arena, numbers, strong_style, writing->width_mm - line_indent_mm - FLAG_INDENT,
                  FLAG_LINES_MOST, writing->label->flags);
}

/* ---- a stretch ---- */

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
        text_print(&text, ", %s" NO_BREAK "m" NO_BREAK "deep",
                   number_significant(layout->arena, stretch->segment->depth_m, 3));
    }
    double rise_m = surveyed->rise_m.value;
    if (rise_m > 0 || rise_m < 0) {
        text_print(&text, ", %s" NO_BREAK "%s" NO_BREAK "m", rise_m > 0 ? "up" : "down",
                   layout_metres(layout, rise_m > 0 ? rise_m : -rise_m));
    }
    put_line(writing, text_done(&text), WAY_LINES);
}

static const char *millimetres(const struct RouteLayout *layout, double length_m)
{
    return arena_print(layout->arena, "%s" NO_BREAK "mm", number_significant(layout->arena, length_m * 1000, 4));
}

/* What it lies in: the wall, the duct, the trunking, what the trench is under. */
static const char *surrounding_text(const struct RouteLayout *layout, const struct Segment *surveyed)
{
    struct TextBuilder text = text_builder(layout->arena);
    if (surveyed->way == WAY_THROUGH_WALL) {
        if (surveyed->wall != WALL_COUNT) {
            text_print(&text, "%s wall", survey_word(WORDS_WALL, (int)surveyed->wall));
        }
        if (surveyed->thickness_m.given) {
            text_print(&text, "%s%s thick", text.length > 0 ? NO_BREAK : "",
                       millimetres(layout, surveyed->thickness_m.value));
        }
        text_print(&text, "%s%s", text.length > 0 && surveyed->sleeve ? ", " : "", surveyed->sleeve ? "sleeve" : "");
        text_add(&text, surveyed->fire_barrier ? ", fire seal" : "");
    }
    if (surveyed->duct_size_mm.given) {
        text_print(&text, "duct" NO_BREAK "%s" NO_BREAK "mm, %s%s",
                   number_significant(layout->arena, surveyed->duct_size_mm.value, 4),
                   survey_word(WORDS_LAID, (int)surveyed->duct_laid), surveyed->duct_rope ? ", rope" : "");
    }
    if (surveyed->size_mm.given && surveyed->height_mm.given) {
        text_print(&text, "%s" NO_BREAK TIMES NO_BREAK "%s" NO_BREAK "mm",
                   number_significant(layout->arena, surveyed->size_mm.value, 4),
                   number_significant(layout->arena, surveyed->height_mm.value, 4));
    } else if (surveyed->size_mm.given) {
        text_print(&text, "size" NO_BREAK "%s" NO_BREAK "mm",
                   number_significant(layout->arena, surveyed->size_mm.value, 4));
    }
    if (surveyed->material != MATERIAL_COUNT && surveyed->size_mm.given) {
        text_print(&text, ", %s", survey_word(WORDS_MATERIAL, (int)surveyed->material));
    }
    if (surveyed->under != UNDER_COUNT) {
        text_print(&text, "%sunder" NO_BREAK "%s", text.length > 0 ? ", " : "",
                   survey_word(WORDS_UNDER, (int)surveyed->under));
    }
    if (surveyed->dig != DIG_COUNT) {
        text_print(&text, "%sdig by %s", text.length > 0 ? ", " : "", survey_word(WORDS_DIG, (int)surveyed->dig));
    }
    return text_done(&text);
}

/* "2 bends, tightest 250 mm": a bend without a radius is drawn no tighter than the cable allows, which the plan's check
 * of bends gives. */
static const char *bends_text(const struct RouteLayout *layout, const struct Segment *surveyed)
{
    if (surveyed->bend_count == 0) {
        return "";
    }
    double tightest_m = 0;
    for (int i = 0; i < surveyed->bend_count; i++) {
        const struct Quantity *radius = &surveyed->bends[i].radius_m;
        tightest_m = radius->given && (tightest_m <= 0 || radius->value < tightest_m) ? radius->value : tightest_m;
    }
    struct TextBuilder text = text_builder(layout->arena);
    text_print(&text, "%d" NO_BREAK "bend%s", surveyed->bend_count, surveyed->bend_count > 1 ? "s" : "");
    if (tightest_m > 0) {
        text_print(&text, ", %sradius" NO_BREAK "%s", surveyed->bend_count > 1 ? "least " : "",
                   millimetres(layout, tightest_m));
    }
    return text_done(&text);
}

static void put_work(const struct RouteLayout *layout, const struct Writing *writing)
{
    const struct Segment *surveyed = writing->label->stretch->segment->surveyed;
    if (surveyed->fixed_to != SURFACE_COUNT) {
        put_line(writing, arena_print(layout->arena, "fix to %s", survey_word(WORDS_SURFACE, (int)surveyed->fixed_to)),
                 LINES_FOR_ONE_TEXT);
    }
    put_line(writing, surrounding_text(layout, surveyed), WAY_LINES);
    put_line(writing, bends_text(layout, surveyed), LINES_FOR_ONE_TEXT);
}

/* The rating with the least room over its device, of all power runs in a stretch; NULL when there is none. */
static const struct Rating *worst_rating(const struct Plan *plan, int segment, bool *all_same)
{
    const struct Rating *worst = NULL;
    double worst_device_a = 0;
    *all_same = true;
    for (int i = 0; i < plan->run_count; i++) {
        const struct Rating *rating = layout_rating_at(&plan->runs[i], segment);
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
        const struct Rating *rating = layout_rating_at(&plan->runs[i], segment_index(writing->label));
        if (rating != NULL) {
            text_print(&text, "%s%s" NO_BREAK "A (%s)", text.length == 0 ? "carries " : ", ",
                       number_text(layout->arena, rating->capacity_a, 1), plan->runs[i].surveyed->name);
        }
    }
    put_line(writing, text_done(&text), LINES_FOR_ONE_TEXT);
    return worst;
}

/* What costs capacity, shortly: the plan's own words up to their first explanation, and shorter still for what has a
 * word of its own. The whole reason stands in the plan and the summary. */
static const char *condition_text(struct Arena *arena, const struct Factor *factor)
{
    if (text_same(factor->symbol, "Ci")) {
        return "insulation";
    }
    if (text_same(factor->symbol, "Sun")) {
        return "full" NO_BREAK "sun";
    }
    size_t digits = strspn(factor->because, "0123456789");
    if (text_same(factor->symbol, "Cg") && digits > 0) { /* "4 loaded circuits in one layer" */
        return arena_print(arena, "%.*s" NO_BREAK "%s", (int)digits, factor->because,
                           strstr(factor->because, "circuits") != NULL ? "circuits" : "ducts");
    }
    size_t words = strcspn(factor->because, ":;,(");
    while (words > 0 && factor->because[words - 1] == ' ') {
        words--;
    }
    struct TextBuilder text = text_builder(arena);
    for (size_t i = 0; i < words; i++) {
        const char *at = &factor->because[i];
        if (*at == ' ' && words <= WHOLE_MOST) { /* "air at 40 degC" stays on one line */
            text_add(&text, NO_BREAK);
        } else if (strncmp(at, "degC", 4) == 0 && i + 4 <= words) { /* room is dear here */
            text_add(&text, DEGREES);
            i += 3;
        } else {
            text_add_char(&text, *at);
        }
    }
    return text_done(&text);
}

/* "insulation x0.78, 3 circuits x0.80" */
static void put_conditions(const struct RouteLayout *layout, const struct Writing *writing, const struct Rating *rating)
{
    struct TextBuilder text = text_builder(layout->arena);
    for (int i = 0; i < rating->factor_count && i < RATING_FACTORS_MOST; i++) {
        const struct Factor *factor = &rating->factors[i];
        if (factor->value < 1) {
            text_print(&text, "%s%s" NO_BREAK TIMES "%s", text.length == 0 ? "" : ", ",
                       condition_text(layout->arena, factor), number_text(layout->arena, factor->value, 2));
        }
    }
    put_line(writing, text_done(&text), CONDITION_LINES);
}

/* What every stretch carries stands in the ribbon; the one that governs says it here too, and why. */
static void write_stretch(const struct RouteLayout *layout, const struct Writing *writing)
{
    const char *name = writing->label->stretch->segment->surveyed->name;
    put_name(writing, name);
    put_way(layout, writing);
    put_work(layout, writing);
    put_flags(writing, layout_flag_numbers(layout, name));
    if (!writing->label->governs) {
        return;
    }
    const struct Rating *worst = put_capacity(layout, writing);
    if (worst != NULL) {
        put_conditions(layout, writing, worst);
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
    struct Writing last = *writing;
    last.kept_lines = 0;
    put_styled(&last, strong_style, rated == 1 ? "governs" : text_done(&text), LINES_FOR_ONE_TEXT);
    writing->label->strong_count = writing->label->line_count - before;
}

/* ---- an end ---- */

/* Whether the armour is earthed at an end: a crew must be able to see it on one sheet. */
static const char *armour_text(const struct RouteLayout *layout, const struct Run *run, bool finish)
{
    const struct Earthing *earthing = &layout->plan->survey->earthing;
    if (!survey_armoured(run->cable.type) || !earthing->given) {
        return "";
    }
    return finish && earthing->far_end == FAR_END_ISLAND ? "armour" NO_BREAK "NOT earthed"
                                                         : "armour" NO_BREAK "earthed";
}

/* The cautions of every run that begins here. */
static const char *run_flags(const struct RouteLayout *layout, int boundary)
{
    struct TextBuilder text = text_builder(layout->arena);
    for (int i = 0; i < layout->plan->run_count; i++) {
        const struct Run *run = layout->plan->runs[i].surveyed;
        const char *numbers = layout_run_boundary(run, false) == boundary ? layout_flag_numbers(layout, run->name) : "";
        if (*numbers != '\0') {
            text_print(&text, "%s%s", text.length > 0 ? ", " : "", numbers);
        }
    }
    return text_done(&text);
}

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
        const char *armour = armour_text(layout, run, finish);
        text_print(&text, ", gland%s%s", named && *armour != '\0' ? ", " : "", named ? armour : "");
    }
    if (!named) { /* with several runs there is no room for it */
        text_print(&text, ", tail" NO_BREAK "%s" NO_BREAK "m", number_significant(layout->arena, end->tail_m.value, 3));
    }
    if (!named && end->loop_m.given && end->loop_m.value > 0) {
        text_print(&text, ", loop" NO_BREAK "%s" NO_BREAK "m", number_significant(layout->arena, end->loop_m.value, 3));
    }
    put_line(writing, text_done(&text), END_TEXT_LINES);
    if (!named) {
        put_line(writing, armour_text(layout, run, finish), LINES_FOR_ONE_TEXT);
    }
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
    put_name(writing, boundary == 0                       ? "supply end"
                      : boundary == layout->stretch_count ? "far end"
                      : starts == 0                       ? "a run ends here"
                      : finishes == 0                     ? "a run begins here"
                                                          : "runs end and begin");
    put_flags(writing, run_flags(layout, boundary));
    int left = starts + finishes;
    for (int i = 0; i < layout->plan->run_count * 2; i++) {
        const struct Run *run = layout->plan->runs[i / 2].surveyed;
        bool finish = i % 2 == 1;
        if (layout_run_boundary(run, finish) != boundary) {
            continue;
        }
        int room = END_LINES_MOST - writing->label->line_count;
        if (room < LINES_OF_A_RUN + (left > 1)) { /* what has no room is at least counted */
            put_line(writing, arena_print(layout->arena, "and %d more: see table", left), 1);
            return;
        }
        put_end(layout, writing, run, finish, layout->plan->run_count > 1);
        left--;
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
    return (struct Label){.is_end = true, .end = &layout->ends[end], .sign = layout->ends[end].letter, .at_mm = at_mm};
}

double layout_box_head(const struct RouteLayout *layout, const struct Label *label)
{
    return fmax(label->name_count * NAME_PITCH, 2 * layout->sign_radius_mm - 1.5);
}

static double box_height(const struct RouteLayout *layout, const struct Label *label)
{
    return BOX_PAD_TOP + layout_box_head(layout, label) + (label->line_count + label->flag_count) * LINE_PITCH +
           BOX_PAD_BOTTOM;
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
        struct Writing writing = {layout->arena, label, strip->box_width_mm, 2 * layout->sign_radius_mm + 4.4,
                                  label->governs ? LINES_FOR_ONE_TEXT : 0};
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
