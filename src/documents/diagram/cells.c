/* A cell is filled with sayings, broken into lines of its width, and drawn. Nothing is cut while there are lines left.
 */
#include "layout_private.h"

#include "documents/shown_private.h"

/* A sign in a cell is this high beside its line. */
static const double sign_scale = 0.55, sign_gap_mm = 0.9;

static double sign_width(const struct Cell *cell, enum Sign sign)
{
    return sign == SIGN_NONE ? 0 : (8 * sign_scale + sign_gap_mm) * cell->size_mm / TYPE_PLAIN;
}

static void put(struct Cell *cell, enum Sign sign, const char *text, bool bold)
{
    const struct TextStyle style = {.size_mm = cell->size_mm, .bold = bold};
    const char *lines[CELL_LINES_MOST];
    const double indent_mm = sign_width(cell, sign);
    const int room = CELL_LINES_MOST - cell->count;
    const int count = room <= 0 ? 0
                                : type_wrap(cell->layout->arena, shown_text(cell->layout->arena, text), style,
                                            cell->width_mm - indent_mm, room, lines);
    for (int i = 0; i < count; i++) {
        cell->lines[cell->count++] = (struct CellLine){lines[i], bold, i == 0 ? sign : SIGN_COUNT};
    }
    for (int i = 1; i < count && sign == SIGN_NONE; i++) {
        cell->lines[cell->count - i].sign = SIGN_NONE;
    }
}

void cell_put(struct Cell *cell, const struct Say *said, bool bold)
{
    if (said != NULL) {
        put(cell, SIGN_NONE, layout_said(cell->layout, said), bold);
    }
}

void cell_put_fitting(struct Cell *cell, enum Sign sign, const struct Say *longer, const struct Say *shorter, bool bold)
{
    const char *words = layout_said(cell->layout, longer);
    const double room_mm = cell->width_mm - sign_width(cell, sign);
    put(cell, sign, type_width_mm(words, cell->size_mm, bold) <= room_mm ? words : layout_said(cell->layout, shorter),
        bold);
}

double cell_height(const struct Cell *cell)
{
    return cell->count * cell->pitch_mm;
}

void cell_draw(const struct Cell *cell, struct Drawing *drawing, double left_mm, double top_mm)
{
    const double grown = cell->size_mm / TYPE_PLAIN;
    for (int i = 0; i < cell->count; i++) {
        const struct CellLine *line = &cell->lines[i];
        const double base_mm = top_mm + i * cell->pitch_mm + 2.75 * grown;
        const struct TextStyle style = {.size_mm = cell->size_mm, .bold = line->bold, .ink = INK_BLACK};
        if (line->sign != SIGN_COUNT) { /* a further line of one that has a sign stands under its text */
            sign_draw(drawing, line->sign, left_mm, base_mm - 2.6 * grown, sign_scale * grown);
        }
        drawing_text(drawing, style, left_mm + sign_width(cell, line->sign), base_mm, line->text);
    }
}
