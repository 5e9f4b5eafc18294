/* Cautions as numbered flags: the number is the caution's place in the plan. A flag stands on the run where one bites,
 * the box below it says which, and the list at the end says what each means. */
#include "layout_private.h"

#include "documents/shown_private.h"

enum { COLUMNS = 2, LINES_MOST = 10 };

#define EN_DASH "\xE2\x80\x93"

static const struct TextStyle text_style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK};
static const struct TextStyle number_style = {
    .size_mm = TYPE_SMALL, .bold = true, .ink = INK_BLACK, .anchor = ANCHOR_RIGHT};
static const double line_mm = 3.7, row_gap_mm = 1.6, number_mm = 10.5;

static bool bites(const struct Caution *caution, const char *run, int stretch)
{
    return stretch >= 0 ? plan_caution_at(caution, stretch)
                        : caution->stretch_count == 0 && text_same(caution->where, run);
}

const char *layout_flag_numbers(const struct RouteLayout *layout, const char *run, int stretch)
{
    const struct Plan *plan = layout->plan;
    struct TextBuilder text = text_builder(layout->arena);
    for (int i = 0; i < plan->caution_count; i++) {
        int last = i;
        while (last < plan->caution_count && bites(&plan->cautions[last], run, stretch)) {
            last++;
        }
        if (last == i) {
            continue;
        }
        text_print(&text, "%s%d", text.length > 0 ? ", " : "", i + 1);
        if (last - i > 1) {
            text_print(&text, "%s%d", last - i == 2 ? ", " : EN_DASH, last);
        }
        i = last;
    }
    return text_done(&text);
}

void layout_draw_flag(struct Drawing *drawing, double x_mm, double y_mm, double height_mm)
{
    static const struct Pen pen = {INK_BLACK, WIDTH_THIN, DASH_NONE};
    static const struct Pen halo = {INK_WHITE, 1, DASH_NONE}; /* to be seen before a hatched wall */
    for (int layer = 0; layer < 2; layer++) {
        drawing_path(drawing, layer == 0 ? halo : pen, layer == 0 ? INK_WHITE : INK_BLACK);
        drawing_move(drawing, x_mm, y_mm - height_mm);
        drawing_to(drawing, x_mm + 2.6, y_mm - height_mm + 0.9);
        drawing_to(drawing, x_mm, y_mm - height_mm + 1.8);
        drawing_close(drawing);
    }
    drawing_line(drawing, pen, x_mm, y_mm, x_mm, y_mm - height_mm);
}

/* ---- the list ---- */

static double column_width(void)
{
    return (INNER_RIGHT - INNER_LEFT) / COLUMNS;
}

static int caution_lines(const struct RouteLayout *layout, int index, const char **lines)
{
    const struct Caution *caution = &layout->plan->cautions[index];
    const char *places = caution_places(layout->arena, layout->plan, caution);
    const char *words = shown_said(layout->arena, caution->text);
    const char *text = *places != '\0' ? arena_print(layout->arena, "%s: %s", places, words) : words;
    return type_wrap(layout->arena, shown_text(layout->arena, text), text_style, column_width() - number_mm - 4,
                     LINES_MOST, lines);
}

int layout_caution_rows(const struct RouteLayout *layout)
{
    return (layout->plan->caution_count + COLUMNS - 1) / COLUMNS;
}

void layout_cautions(struct RouteLayout *layout)
{
    int rows = layout_caution_rows(layout);
    layout->caution_row_mm = arena_array(layout->arena, (size_t)rows + 1, sizeof *layout->caution_row_mm);
    if (layout->caution_row_mm == NULL) {
        layout->failed = true;
        return;
    }
    for (int i = 0; i < layout->plan->caution_count; i++) {
        const char *lines[LINES_MOST];
        double height_mm = caution_lines(layout, i, lines) * line_mm + row_gap_mm;
        double *row_mm = &layout->caution_row_mm[i / COLUMNS];
        *row_mm = height_mm > *row_mm ? height_mm : *row_mm;
    }
}

void layout_draw_caution_head(struct Drawing *drawing, double top_mm)
{
    static const struct TextStyle heading_style = {.size_mm = 3.4, .bold = true, .ink = INK_BLACK};
    layout_draw_flag(drawing, INNER_LEFT + 0.6, top_mm + 4.4, FLAG_HEIGHT);
    drawing_text(drawing, heading_style, INNER_LEFT + 4.6, top_mm + 4.2, "Cautions by the number of their flag");
}

void layout_draw_caution_row(const struct RouteLayout *layout, struct Drawing *drawing, int row, double top_mm)
{
    for (int i = row * COLUMNS; i < (row + 1) * COLUMNS && i < layout->plan->caution_count; i++) {
        const char *lines[LINES_MOST];
        int count = caution_lines(layout, i, lines);
        double left_mm = INNER_LEFT + i % COLUMNS * column_width();
        drawing_text(drawing, number_style, left_mm + number_mm - 2, top_mm + 3,
                     arena_print(layout->arena, "%d", i + 1));
        for (int k = 0; k < count; k++) {
            drawing_text(drawing, text_style, left_mm + number_mm, top_mm + 3 + k * line_mm, lines[k]);
        }
    }
}
