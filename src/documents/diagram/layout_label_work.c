/* What a stretch takes of work, in the box of the stretch: fixings and their distance, holes, the trench. The figures
 * are those that the parts list was counted from. */
#include "layout_writing_private.h"

#include "documents/shown_private.h"

#include <math.h>

static bool put_fixings(const struct RouteLayout *layout, const struct Writing *writing, const struct PartsWay *way)
{
    if (way->fixings + way->end_fixings == 0) {
        return false;
    }
    const struct PlanSegment *segment = &layout->plan->segments[way->segment];
    struct TextBuilder text = text_builder(layout->arena);
    if (layout->plan->run_count > 1 && way->run >= 0) {
        text_print(&text, "%s: ", layout->plan->runs[way->run].settled->name);
    }
    text_print(&text, "%d%s %s", way->fixings + way->end_fixings, NO_BREAK TIMES,
               way->fixing_short != NULL ? shown_said(layout->arena, way->fixing_short) : "fixing");
    if (segment->surveyed->fixed_to != SURFACE_COUNT) {
        text_print(&text, " on %s", survey_word(WORDS_SURFACE, (int)segment->surveyed->fixed_to));
    }
    if (way->pitch_m > 0) {
        text_print(&text, ", every %s", layout_millimetres(layout, way->pitch_m * 1000));
    }
    if (way->end_fixings > 0 && way->fixings > 0) {
        text_print(&text, ", %d of them at the end", way->end_fixings);
    } else if (way->end_fixings > 0) {
        text_add(&text, " at the end");
    }
    layout_put_line(writing, text_done(&text), LINES_FOR_LONG_TEXT);
    return true;
}

static void put_hole(const struct RouteLayout *layout, const struct Writing *writing, const struct PartsWay *way)
{
    if (way->hole_mm > 0) {
        struct TextBuilder text = text_builder(layout->arena);
        if (layout->plan->run_count > 1 && way->run >= 0) {
            text_print(&text, "%s: ", layout->plan->runs[way->run].settled->name);
        }
        text_print(&text, "hole %s", layout_millimetres(layout, way->hole_mm));
        if (way->drill_mm > 0) {
            text_print(&text, ", %s drill", layout_millimetres(layout, way->drill_mm));
        }
        layout_put_line(writing, text_done(&text), LINES_FOR_ONE_TEXT);
    }
}

/* To the next centimetre: nobody digs finer. */
static const char *metres_up(const struct RouteLayout *layout, double length_m)
{
    return arena_print(layout->arena, "%s" NO_BREAK "m",
                       number_significant(layout->arena, ceil(length_m * 100 - 1e-6) / 100, 4));
}

static void put_trench(const struct RouteLayout *layout, const struct Writing *writing, const struct PartsWay *way)
{
    if (way->trench_m > 0) {
        layout_put_line(writing,
                        arena_print(layout->arena, "trench %s wide, %s deep", metres_up(layout, way->trench_width_m),
                                    metres_up(layout, way->trench_depth_m)),
                        LINES_FOR_ONE_TEXT);
    }
}

bool layout_put_work(const struct RouteLayout *layout, const struct Writing *writing, int segment)
{
    bool fixed = false;
    for (int i = 0; layout->parts != NULL && i < layout->parts->way_count; i++) {
        const struct PartsWay *way = &layout->parts->ways[i];
        if (way->segment == segment) {
            fixed = put_fixings(layout, writing, way) || fixed;
            put_hole(layout, writing, way);
            put_trench(layout, writing, way);
        }
    }
    return fixed;
}
