/* Where runs begin and end along the way. Ends carry letters, stretches carry numbers. */
#include "layout_private.h"

int layout_run_boundary(const struct Run *run, bool finish)
{
    if (run->along_count == 0) {
        return 0;
    }
    int last = run->along_count - 1;
    bool forward = run->along[0] <= run->along[last];
    int index = run->along[finish ? last : 0];
    return index + (finish == forward ? 1 : 0);
}

int layout_end_at(const struct RouteLayout *layout, int boundary)
{
    for (int i = 0; i < layout->end_count; i++) {
        if (layout->ends[i].boundary == boundary) {
            return i;
        }
    }
    return -1;
}

static bool any_end_at(const struct Plan *plan, int boundary)
{
    for (int i = 0; i < plan->run_count; i++) {
        const struct Run *run = plan->runs[i].settled;
        if (layout_run_boundary(run, false) == boundary || layout_run_boundary(run, true) == boundary) {
            return true;
        }
    }
    return false;
}

/* A to Z, then AA, AB ... */
static const char *letter_text(struct Arena *arena, int index)
{
    if (index < 26) {
        return arena_print(arena, "%c", 'A' + index);
    }
    return arena_print(arena, "%c%c", 'A' + index / 26 - 1, 'A' + index % 26);
}

void layout_ends(struct RouteLayout *layout)
{
    layout->ends = arena_array(layout->arena, (size_t)layout->stretch_count + 1, sizeof *layout->ends);
    if (layout->ends == NULL) {
        layout->failed = true;
        return;
    }
    for (int boundary = 0; boundary <= layout->stretch_count; boundary++) {
        if (any_end_at(layout->plan, boundary)) {
            layout->ends[layout->end_count] =
                (struct RouteEnd){boundary, letter_text(layout->arena, layout->end_count)};
            layout->end_count++;
        }
    }
}

bool layout_governs(const struct PlanRun *run, int segment)
{
    return run->rated && run->governing >= 0 && run->governing < run->rating_count &&
           run->ratings[run->governing].segment == segment;
}

bool layout_main_governs(const struct RouteLayout *layout, int segment)
{
    return layout->main_run >= 0 && layout_governs(&layout->plan->runs[layout->main_run], segment);
}
