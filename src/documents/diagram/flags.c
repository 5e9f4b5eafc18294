/* Cautions as numbers behind a "!", so that none is read as a segment's: each is the caution's place in the plan, the
 * same on all sheets. What it says stands under the bands in fewest words; brief and card say more. */
#include "layout_private.h"

bool flag_of_run(const struct Caution *caution, const struct Run *run)
{
    return caution->drawn && caution->stretch_count == 0 && text_same(caution->where, run->name);
}

bool flag_at(const struct Caution *caution, int segment)
{
    return caution->drawn && plan_caution_at(caution, segment);
}

static bool bites(const struct Caution *caution, const struct Run *run, int segment)
{
    return run == NULL ? flag_at(caution, segment) : flag_of_run(caution, run);
}

int flag_count(const struct RouteLayout *layout, const struct Run *run, int segment)
{
    int count = 0;
    for (int i = 0; i < layout->plan->caution_count; i++) {
        count += bites(&layout->plan->cautions[i], run, segment);
    }
    return count;
}

const char *flag_numbers(const struct RouteLayout *layout, const struct Run *run, int segment)
{
    const struct Plan *plan = layout->plan;
    struct TextBuilder text = text_builder(layout->arena);
    for (int i = 0; i < plan->caution_count; i++) {
        int last = i;
        while (last < plan->caution_count && bites(&plan->cautions[last], run, segment)) {
            last++;
        }
        if (last == i) {
            continue;
        }
        text_print(&text, "%s!%d", text.length > 0 ? ", " : "", i + 1);
        if (last - i > 1) {
            text_print(&text, "%s!%d", last - i == 2 ? ", " : "\xE2\x80\x93", last);
        }
        i = last;
    }
    return text_done(&text);
}

void cells_flags(struct Cell *cell, int segment)
{
    const char *numbers = flag_numbers(cell->layout, NULL, segment);
    if (*numbers != '\0') {
        cell_put(cell, say_alone(cell->layout->arena, say_name(numbers)), true);
    }
}

bool flag_in_strip(const struct RouteLayout *layout, int index, int first, int last)
{
    const struct Caution *caution = &layout->plan->cautions[index];
    for (int i = 0; caution->drawn && i < caution->stretch_count; i++) {
        if (caution->stretches[i] >= first && caution->stretches[i] <= last) {
            return true;
        }
    }
    for (int i = 0; caution->stretch_count == 0 && *caution->where != '\0' && i < layout->plan->run_count; i++) {
        const struct Run *run = layout->plan->runs[i].settled;
        const int boundary = layout_run_boundary(run, false);
        if (flag_of_run(caution, run) && boundary >= first && boundary <= last + 1) {
            return true;
        }
    }
    return false;
}

const struct Say *flag_short(const struct RouteLayout *layout, int index)
{
    const struct Caution *caution = &layout->plan->cautions[index];
    return caution->flag != NULL ? caution->flag : plan_caution_shortly(caution);
}
