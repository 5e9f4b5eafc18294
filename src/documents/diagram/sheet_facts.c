/* What was chosen: of an only run as a few facts in the heading, of several as a table. */
#include "layout_private.h"

#include "documents/shown_private.h"

#include <string.h>

enum { COLUMNS = 8 };

static const double row_mm = 4.4, sample_mm = 11;
static const struct Pen rule_pen = {INK_BLACK, WIDTH_RULE, DASH_NONE};

static const struct Say *cable_said(struct Arena *arena, const struct PlanRun *run)
{
    const struct Cable *cable = &run->settled->cable;
    const struct SayArg cores = say_count(cable->cores), size = say_digits(run->size_mm2, 4, UNIT_MM2);
    const struct SayArg type = say_word(WORDS_CABLE, (int)cable->type);
    return cable->cores > 0 && run->size_mm2 > 0 ? say(arena, SAY_CABLE_OF_CORES_AND_SIZE, cores, size, type)
           : cable->cores > 0                    ? say(arena, SAY_CABLE_UNSIZED, cores, type)
           : run->size_mm2 > 0                   ? say(arena, SAY_SPACE, size, type)
                                                 : say_alone(arena, type);
}

/* The next size down, and what it lacks. */
static const struct Say *smaller_said(struct Arena *arena, const struct PlanRun *run)
{
    for (int i = 1; i < run->option_count; i++) {
        const struct Option *option = &run->options[i - 1];
        const bool fails = option->fails.count > 0;
        const struct Say *lacks = check_titles(arena, fails ? &option->fails : &option->open);
        if (run->options[i].chosen && lacks != NULL) {
            return say(arena, fails ? SAY_SMALLER_FAILS : SAY_SMALLER_OPEN, say_digits(option->size_mm2, 4, UNIT_MM2),
                       say_part(lacks));
        }
    }
    return NULL;
}

int sheet_facts(const struct RouteLayout *layout, struct Fact *facts)
{
    struct Arena *arena = layout->arena;
    const struct PlanRun *run = &layout->plan->runs[0];
    int count = 0;
    if (layout->plan->run_count != 1) {
        return 0;
    }
    const struct Say *said[] = {say(arena, SAY_CABLE_IN_ONE_LENGTH, say_part(cable_said(arena, run)),
                                    say_fixed(run->order_length_m, 0, UNIT_M)),
                                run->device_text,
                                run->rated ? say(arena, SAY_LOAD_AND_DROP, say_fixed(run->design_current_a, 1, UNIT_A),
                                                 say_fixed(run->drop_percent, 2, UNIT_PERCENT),
                                                 say_digits(run->drop_limit_percent, 4, UNIT_PERCENT))
                                           : NULL,
                                smaller_said(arena, run)};
    static const enum Saying names[] = {SAY_FACT_CABLE, SAY_LEAD_DEVICE, SAY_SHEET_LOAD, SAY_LEAD_SMALLER};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (said[i] != NULL) {
            facts[count++] = (struct Fact){names[i], shown_text(arena, layout_said(layout, said[i])), i == 0};
        }
    }
    return count;
}

/* ---- the table of runs ---- */

static const struct Say *ends_said(const struct RouteLayout *layout, const struct Run *run)
{
    const int start = layout_end_at(layout, layout_run_boundary(run, false));
    const int finish = layout_end_at(layout, layout_run_boundary(run, true));
    return start < 0 || finish < 0
               ? NULL
               : say_alone(layout->arena,
                           say_name(arena_print(layout->arena, "%s\xE2\x80\x93%s", layout->ends[start].letter,
                                                layout->ends[finish].letter)));
}

static const struct Say *result_said(struct Arena *arena, const struct PlanRun *run)
{
    if (!run->rated) {
        return say(arena, SAY_RUN_NOT_RATED);
    }
    struct CheckRef *list = arena_array(arena, (size_t)run->check_count + 1, sizeof *list);
    int count = 0;
    for (int i = 0; list != NULL && i < run->check_count; i++) {
        const struct Check *check = &run->checks[i];
        if (run->verdict == VERDICT_FAIL ? check->result == CHECK_FAIL : check->open) {
            list[count++] = (struct CheckRef){.kind = check->kind, .title = check->title, .segment = check->segment};
        }
    }
    const struct SayArg word = say_name(verdict_word(run->verdict));
    const struct Say *titles = check_titles(arena, &(struct CheckList){list, count});
    return titles != NULL ? say(arena, SAY_COLON_SMALL, word, say_part(titles)) : say_alone(arena, word);
}

const struct Say *run_said(const struct RouteLayout *layout, const struct PlanRun *run)
{
    struct Arena *arena = layout->arena;
    const struct Say *said = cable_said(arena, run);
    if (run->device_text != NULL) {
        said = say_list(arena, SAY_COMMA, said, say_part(run->device_text));
    }
    said = say_list(arena, SAY_COMMA, said, say_part(result_said(arena, run)));
    return say(arena, SAY_COLON, say_name(run->settled->name), say_part(said));
}

static const struct Say *lowest_said(const struct RouteLayout *layout, const struct PlanRun *run)
{
    if (!run->rated || run->governing < 0 || run->governing >= run->rating_count) {
        return NULL;
    }
    const int segment = run->ratings[run->governing].segment;
    return say_alone(layout->arena, say_name(arena_print(layout->arena, "%d %s", segment + 1,
                                                         layout->plan->segments[segment].surveyed->name)));
}

static const struct {
    enum Saying head;
    double width_mm;
} columns[COLUMNS] = {{SAY_LEAD_RUN, 36},     {SAY_RUNS_ENDS, 11}, {SAY_FACT_CABLE, 40},  {SAY_LEAD_DEVICE, 40},
                      {SAY_RUNS_LENGTHS, 48}, {SAY_LEAD_DROP, 14}, {SAY_RUNS_LOWEST, 30}, {SAY_LEAD_OUTCOME, 64}};

/* One row, or the heads for NULL: as high as its longest cell. Draws where `drawing` is not NULL. */
static double run_row(const struct RouteLayout *layout, struct Drawing *drawing, const struct PlanRun *run,
                      double top_mm)
{
    struct Arena *arena = layout->arena;
    const struct Say *said[COLUMNS] = {NULL};
    if (run != NULL) {
        const struct SayArg lengths[] = {layout_metres(run->route_length_m), layout_metres(run->electrical_length_m),
                                         layout_metres(run->order_length_m)};
        const struct Say *const filled[COLUMNS] = {
            say_alone(arena, say_name(run->settled->name)),
            ends_said(layout, run->settled),
            cable_said(arena, run),
            run->device_text,
            say(arena, SAY_RUN_LENGTHS, lengths[0], lengths[1], lengths[2]),
            run->rated ? say_alone(arena, say_fixed(run->drop_percent, 2, UNIT_PERCENT)) : NULL,
            lowest_said(layout, run),
            result_said(arena, run)};
        memcpy(said, filled, sizeof said);
    }
    double x_mm = FRAME_LEFT, height_mm = row_mm;
    for (int i = 0; i < COLUMNS; i++) {
        const double indent_mm = i == 0 && run != NULL ? sample_mm : 0;
        struct Cell cell = {.layout = layout,
                            .width_mm = columns[i].width_mm - 1.5 - indent_mm,
                            .size_mm = TYPE_PLAIN,
                            .pitch_mm = LINE_PITCH};
        cell_put(&cell, run == NULL ? say(arena, columns[i].head) : said[i], run == NULL || i == 0 || i == COLUMNS - 1);
        if (drawing != NULL) {
            cell_draw(&cell, drawing, x_mm + indent_mm, top_mm + 0.4);
        }
        height_mm = cell_height(&cell) + 0.8 > height_mm ? cell_height(&cell) + 0.8 : height_mm;
        x_mm += columns[i].width_mm;
    }
    if (drawing != NULL && run != NULL) {
        drawing_line(drawing, layout_cable_pen(layout, (int)(run - layout->plan->runs)), FRAME_LEFT, top_mm + 2.2,
                     FRAME_LEFT + sample_mm - 1.8, top_mm + 2.2);
    }
    if (drawing != NULL) {
        drawing_line(drawing, rule_pen, FRAME_LEFT, top_mm + height_mm, FRAME_RIGHT, top_mm + height_mm);
    }
    return height_mm;
}

static double table(const struct RouteLayout *layout, struct Drawing *drawing, double top_mm)
{
    double y_mm = top_mm;
    for (int i = -1; layout->plan->run_count > 1 && i < layout->plan->run_count; i++) {
        y_mm += run_row(layout, drawing, i < 0 ? NULL : &layout->plan->runs[i], y_mm);
    }
    return y_mm - top_mm;
}

double runs_table_height(const struct RouteLayout *layout)
{
    return table(layout, NULL, 0);
}

void runs_table_draw(const struct RouteLayout *layout, struct Drawing *drawing, double top_mm)
{
    table(layout, drawing, top_mm);
}
