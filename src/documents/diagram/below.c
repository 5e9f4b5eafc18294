/* Under the bands of a strip: its ends, its cautions in a few words, the signs used on it with how often. */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <math.h>

static const double pad_mm = 0.5, gap_mm = 3, number_gap_mm = 1.6, sign_row_mm = 4.7, sign_scale = 0.6;
enum { END_COLUMNS_MOST = 4, FLAG_COLUMNS_MOST = 6 };

static const struct Pen rule_pen = {INK_BLACK, WIDTH_RULE, DASH_NONE};
static const struct TextStyle plain_style = {.size_mm = TYPE_PLAIN, .ink = INK_BLACK};
static const struct TextStyle bold_style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_BLACK};

/* ---- ends ---- */

static bool end_in_strip(const struct RouteLayout *layout, const struct Strip *strip, int end)
{
    const int boundary = layout->ends[end].boundary;
    return (boundary >= strip->first && boundary <= strip->last) ||
           (boundary == strip->last + 1 && boundary == layout->stretch_count);
}

static int ends_count(const struct RouteLayout *layout, const struct Strip *strip)
{
    int count = 0;
    for (int e = 0; e < layout->end_count; e++) {
        count += end_in_strip(layout, strip, e);
    }
    return count;
}

struct EndCell {
    const char *name;
    double name_mm;
    struct Cell cell;
};

static struct EndCell end_cell(const struct RouteLayout *layout, int end, double column_mm)
{
    const char *name = layout_said(layout, say(layout->arena, SAY_SPACE, say_name(layout->ends[end].letter),
                                               say_term(end_name(layout, layout->ends[end].boundary))));
    const double name_mm = type_width_mm(name, TYPE_PLAIN, true) + 2;
    struct EndCell made = {
        name,
        name_mm,
        {.layout = layout, .width_mm = column_mm - gap_mm - name_mm, .size_mm = TYPE_PLAIN, .pitch_mm = LINE_PITCH}};
    cells_end(&made.cell, end);
    return made;
}

/* How wide each column is: alike, and where all ends stand in one row the one with more to say is wider. */
static void end_widths(const struct RouteLayout *layout, const struct Strip *strip, int columns, double *widths_mm)
{
    const double alike_mm = CELLS_WIDTH / columns, least_mm = 0.75 * alike_mm;
    double lines[END_COLUMNS_MOST] = {0}, all = 0;
    int count = 0;
    for (int e = 0; e < layout->end_count && count < columns; e++) {
        if (end_in_strip(layout, strip, e)) {
            lines[count] = end_cell(layout, e, alike_mm).cell.count;
            all += lines[count++];
        }
    }
    const bool one_row = ends_count(layout, strip) == columns && all > 0;
    for (int i = 0; i < columns; i++) {
        widths_mm[i] = one_row ? least_mm + (CELLS_WIDTH - columns * least_mm) * lines[i] / all : alike_mm;
    }
}

/* So many columns, filled row by row; draws where `drawing` is not NULL. Returns the height. */
static double ends_in_columns(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                              double top_mm, int columns)
{
    double widths_mm[END_COLUMNS_MOST], y_mm = top_mm + pad_mm, row_mm = 0, left_mm = CELLS_LEFT + CELL_PAD;
    int column = 0;
    end_widths(layout, strip, columns, widths_mm);
    for (int e = 0; e < layout->end_count; e++) {
        if (!end_in_strip(layout, strip, e)) {
            continue;
        }
        y_mm += column == 0 && y_mm > top_mm + pad_mm ? pad_mm : 0; /* rows apart */
        const struct EndCell made = end_cell(layout, e, widths_mm[column]);
        if (drawing != NULL) {
            drawing_text(drawing, bold_style, left_mm, y_mm + 2.65, made.name);
            cell_draw(&made.cell, drawing, left_mm + made.name_mm, y_mm);
        }
        row_mm = fmax(row_mm, cell_height(&made.cell));
        left_mm += widths_mm[column];
        if (++column == columns) {
            y_mm += row_mm;
            row_mm = column = 0;
            left_mm = CELLS_LEFT + CELL_PAD;
        }
    }
    return y_mm + row_mm + pad_mm - top_mm;
}

/* In as many columns as make it lowest, the fewest of them. */
static double ends_block(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                         double top_mm)
{
    const int count = ends_count(layout, strip);
    int columns = count < 2 ? 1 : 2;
    double least_mm = count == 0 ? 0 : ends_in_columns(layout, NULL, strip, 0, columns);
    for (int tried = columns + 1; tried <= count && tried <= END_COLUMNS_MOST; tried++) {
        const double height_mm = ends_in_columns(layout, NULL, strip, 0, tried);
        if (height_mm < least_mm - 1e-9) {
            least_mm = height_mm;
            columns = tried;
        }
    }
    if (drawing != NULL && count > 0) {
        ends_in_columns(layout, drawing, strip, top_mm, columns);
    }
    return least_mm;
}

/* ---- short cautions ---- */

struct FlagColumns {
    int columns;
    double left_mm[FLAG_COLUMNS_MOST + 1];
};

/* As many columns as fit, each as wide as its longest entry; entries go from row to row. */
static struct FlagColumns flag_columns(const double *widths_mm, int count)
{
    struct FlagColumns best = {.columns = 1, .left_mm = {0, CELLS_WIDTH}};
    for (int columns = 2; columns <= FLAG_COLUMNS_MOST && columns <= count; columns++) {
        struct FlagColumns tried = {.columns = columns};
        for (int c = 0; c < columns; c++) {
            double widest_mm = 0;
            for (int i = c; i < count; i += columns) {
                widest_mm = fmax(widest_mm, widths_mm[i]);
            }
            tried.left_mm[c + 1] = tried.left_mm[c] + widest_mm + gap_mm;
        }
        best = tried.left_mm[columns] - gap_mm <= CELLS_WIDTH - CELL_PAD ? tried : best;
    }
    return best;
}

/* Draws where `drawing` is not NULL. Returns the height. */
static double flags_block(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                          double top_mm)
{
    struct Arena *arena = layout->arena;
    const size_t all = (size_t)layout->plan->caution_count + 1;
    int *numbers = arena_array(arena, all, sizeof *numbers), count = 0;
    const double number_mm =
        type_width_mm(arena_print(arena, "!%d", layout->plan->caution_count), TYPE_PLAIN, true) + number_gap_mm;
    double *widths_mm = arena_array(arena, all, sizeof *widths_mm);
    for (int i = 0; numbers != NULL && widths_mm != NULL && i < layout->plan->caution_count; i++) {
        if (flag_in_strip(layout, i, strip->first, strip->last)) {
            const char *text = shown_text(arena, layout_said(layout, flag_short(layout, i)));
            widths_mm[count] = type_width_mm(text, TYPE_PLAIN, false) + number_mm;
            numbers[count++] = i;
        }
    }
    if (count == 0) {
        return 0;
    }
    const struct FlagColumns flags = flag_columns(widths_mm, count);
    for (int i = 0; drawing != NULL && i < count; i++) {
        const int column = i % flags.columns;
        const double x_mm = CELLS_LEFT + CELL_PAD + flags.left_mm[column];
        const int row = i / flags.columns;
        const double base_mm = top_mm + pad_mm + 2.7 + row * LINE_PITCH;
        const char *text = shown_text(arena, layout_said(layout, flag_short(layout, numbers[i])));
        drawing_text(drawing, bold_style, x_mm, base_mm, arena_print(arena, "!%d", numbers[i] + 1));
        drawing_text(drawing, plain_style, x_mm + number_mm, base_mm,
                     type_cut(arena, text, plain_style, CELLS_WIDTH - number_mm - CELL_PAD));
    }
    const int rows = (count + flags.columns - 1) / flags.columns;
    return rows * LINE_PITCH + 2 * pad_mm;
}

/* ---- signs ---- */

struct SignUse {
    int count;
    double length_m; /* of what lies in the ground */
};

static void use_conditions(const struct RouteLayout *layout, int segment, struct SignUse *uses)
{
    const struct Rating *rating =
        layout->main_run < 0 ? NULL : layout_rating_at(&layout->plan->runs[layout->main_run], segment);
    for (int i = 0; rating != NULL && i < rating->factor_count && i < RATING_FACTORS_MOST; i++) {
        if (rating->factors[i].value < 1) {
            uses[condition_sign(&rating->factors[i])].count++;
        }
    }
}

static void use_runs(const struct RouteLayout *layout, int segment, struct SignUse *uses)
{
    for (int r = 0; r < layout->plan->run_count; r++) {
        const struct PlanRun *run = &layout->plan->runs[r];
        for (int k = 0; k < run->pull_count; k++) {
            uses[SIGN_PULL].count += run->settled->along[run->pulls[k].first] == segment;
        }
    }
}

static void count_uses(const struct RouteLayout *layout, const struct Strip *strip, struct SignUse *uses)
{
    for (int i = strip->first; i <= strip->last; i++) {
        const struct Stretch *stretch = &layout->stretches[i];
        const struct Segment *surveyed = stretch->segment->surveyed;
        struct SignUse *way = &uses[way_sign(surveyed->way)];
        way->count++;
        way->length_m += survey_in_ground(surveyed->way) ? stretch->length_m : 0;
        uses[SIGN_BEND].count += surveyed->bend_count;
        uses[SIGN_RISER].count += layout_is_riser(stretch);
        uses[SIGN_STEP].count += i > strip->first && survey_before(layout->plan->survey, i) == i - 1 &&
                                 fabs(layout->stretches[i - 1].to_m - stretch->from_m) > 1e-6;
        uses[SIGN_LEVEL].count += stretch->ground == GROUND_LEVEL;
        for (int k = 0; k < surveyed->landmark_count; k++) {
            uses[landmark_sign(surveyed->landmarks[k].what)].count++;
        }
        uses[SIGN_PIT].count += surveyed->pits == PITS_BOTH ? 2 : surveyed->pits != PITS_NONE;
        use_conditions(layout, i, uses);
        use_runs(layout, i, uses);
    }
}

static double signs_block(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                          double top_mm)
{
    struct Arena *arena = layout->arena;
    struct SignUse uses[SIGN_COUNT] = {{0, 0}};
    count_uses(layout, strip, uses);
    double x_mm = CELLS_LEFT + CELL_PAD, y_mm = top_mm + pad_mm;
    for (int sign = SIGN_NONE + 1; sign < SIGN_COUNT; sign++) {
        if (uses[sign].count == 0) {
            continue;
        }
        const char *word = layout_term(layout, sign_word((enum Sign)sign));
        const struct SayArg count = say_count(uses[sign].count);
        const char *counted = layout_said(layout, uses[sign].length_m > 0
                                                      ? say(arena, SAY_COMMA, count, layout_metres(uses[sign].length_m))
                                                      : say(arena, SAY_AS_IS, count));
        const double text_mm = 8 * sign_scale + 1.2, count_mm = text_mm + type_width_mm(word, TYPE_PLAIN, false) + 1.4;
        const double width_mm = count_mm + type_width_mm(counted, TYPE_PLAIN, true);
        if (x_mm + width_mm > FRAME_RIGHT) {
            x_mm = CELLS_LEFT + CELL_PAD;
            y_mm += sign_row_mm;
        }
        if (drawing != NULL) {
            sign_draw(drawing, (enum Sign)sign, x_mm, y_mm + 0.2, sign_scale);
            drawing_text(drawing, plain_style, x_mm + text_mm, y_mm + 3, word);
            drawing_text(drawing, bold_style, x_mm + count_mm, y_mm + 3, counted);
        }
        x_mm += width_mm + gap_mm;
    }
    return y_mm + sign_row_mm - top_mm;
}

static double block(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip,
                    enum Below below, double top_mm)
{
    switch (below) {
    case BELOW_ENDS: return ends_block(layout, drawing, strip, top_mm);
    case BELOW_FLAGS: return flags_block(layout, drawing, strip, top_mm);
    case BELOW_SIGNS: return signs_block(layout, drawing, strip, top_mm);
    case BELOW_COUNT: break;
    }
    return 0;
}

double below_height(const struct RouteLayout *layout, const struct Strip *strip, enum Below below)
{
    return block(layout, NULL, strip, below, 0);
}

void below_draw(const struct RouteLayout *layout, struct Drawing *drawing, const struct Strip *strip, enum Below below,
                double top_mm)
{
    static const enum Saying names[BELOW_COUNT] = {SAY_RUNS_ENDS, SAY_BAND_CAUTIONS, SAY_BAND_SIGNS};
    drawing_group(drawing,
                  below == BELOW_SIGNS ? arena_print(layout->arena, "signs-%d", (int)(strip - layout->strips) + 1) : "",
                  "");
    drawing_line(drawing, rule_pen, FRAME_LEFT, top_mm, FRAME_RIGHT, top_mm);
    drawing_text(drawing, bold_style, FRAME_LEFT, top_mm + pad_mm + 2.75, layout_term(layout, names[below]));
    block(layout, drawing, strip, below, top_mm);
    drawing_group_end(drawing);
}
