/* The boxes under a strip: which there are, how their texts become lines, and how high they grow. */
#include "layout_writing_private.h"

#include "documents/shown_private.h"

#include <math.h>

enum { NAME_LINES = 2 };

static const double line_indent_mm = 4;

static const struct TextStyle name_style = {.size_mm = TYPE_PLAIN, .bold = true, .ink = INK_BLACK};
static const struct TextStyle strong_style = {.size_mm = TYPE_SMALL, .bold = true, .ink = INK_BLACK};
static const struct TextStyle line_style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK};

/* ---- collecting lines ---- */

void layout_put_name(const struct Writing *writing, const char *name)
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
        label->cut = label->cut || *text != '\0';
        return;
    }
    label->line_count +=
        type_wrap(writing->arena, shown_text(writing->arena, text), style, writing->width_mm - line_indent_mm,
                  room < lines_most ? room : lines_most, &label->lines[label->line_count]);
}

void layout_put_line(const struct Writing *writing, const char *text, int lines_most)
{
    put_styled(writing, line_style, text, lines_most);
}

void layout_put_strong(const struct Writing *writing, const char *text, int lines_most)
{
    int before = writing->label->line_count;
    put_styled(writing, strong_style, text, lines_most);
    writing->label->strong_count = writing->label->line_count - before;
}

const char *layout_millimetres(const struct RouteLayout *layout, double length_mm)
{
    return arena_print(layout->arena, "%s" NO_BREAK "mm", number_significant(layout->arena, length_mm, 4));
}

void layout_put_flags(const struct Writing *writing, const char *numbers)
{
    writing->label->flag_count =
        type_wrap(writing->arena, numbers, strong_style, writing->width_mm - line_indent_mm - FLAG_INDENT,
                  FLAG_LINES_MOST, writing->label->flags);
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
            layout_write_end(layout, &writing);
        } else {
            layout_write_stretch(layout, &writing);
        }
        if (label->cut) { /* nothing is left out in silence */
            label->lines[label->line_count++] = "more: see the brief";
            label->strong_count += label->strong_count > 0;
        }
        double height_mm = box_height(layout, label);
        if (height_mm > strip->row_height_mm[label->row]) {
            strip->row_height_mm[label->row] = height_mm;
        }
    }
}
