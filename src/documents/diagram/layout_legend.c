/* The legend: only what this drawing uses, each sign beside its words, and what is not to scale. */
#include "layout_private.h"

#include "documents/shown_private.h"

enum { COLUMNS = 7, ENTRIES_MOST = WAY_COUNT + CONDITION_COUNT + 15, NOTES_MOST = 12 };

static const double row_mm = 9.6, heading_mm = 5.4, sample_mm = 13, note_mm = 3.7, bottom_mm = 1.6;
static const struct TextStyle text_style = {.size_mm = TYPE_SMALL, .ink = INK_BLACK};
static const struct Pen cable_pen = {INK_BLACK, WIDTH_HEAVY, DASH_NONE};

enum LegendKind {
    LEGEND_WAY,
    LEGEND_INSULATION,
    LEGEND_KNOWN,
    LEGEND_LEVEL,
    LEGEND_DATUM,
    LEGEND_SCALE,
    LEGEND_BREAK,
    LEGEND_GOVERNS,
    LEGEND_END,
    LEGEND_GLAND,
    LEGEND_PULL,
    LEGEND_PIT,
    LEGEND_PIT_WANTED,
    LEGEND_FLAG,
    LEGEND_CONDITION
};

struct LegendEntry {
    enum LegendKind kind;
    enum Way way;
    enum Condition condition;
    const char *word;
};

struct Legend {
    int count, note_count;
    struct LegendEntry entries[ENTRIES_MOST];
    const char *notes[NOTES_MOST];
};

static void add(struct Legend *legend, enum LegendKind kind, enum Way way, const char *word)
{
    if (legend->count < ENTRIES_MOST) {
        legend->entries[legend->count++] = (struct LegendEntry){.kind = kind, .way = way, .word = word};
    }
}

static void note(struct Legend *legend, const char *text)
{
    if (legend->note_count < NOTES_MOST) {
        legend->notes[legend->note_count++] = text;
    }
}

static void add_ways(const struct RouteLayout *layout, struct Legend *legend, bool *insulated)
{
    for (int way = 0; way < WAY_COUNT; way++) {
        for (int i = 0; i < layout->stretch_count; i++) {
            if ((int)layout->stretches[i].segment->surveyed->way == way) {
                add(legend, LEGEND_WAY, (enum Way)way, survey_word(WORDS_WAY, way));
                break;
            }
        }
    }
    for (int i = 0; i < layout->stretch_count; i++) {
        const struct Segment *surveyed = layout->stretches[i].segment->surveyed;
        *insulated = *insulated || (surveyed->insulation != INSULATION_NONE && surveyed->way != WAY_THROUGH_WALL);
    }
}

static bool condition_used(const struct Plan *plan, enum Condition condition)
{
    for (int i = 0; i < plan->run_count; i++) {
        const struct PlanRun *run = &plan->runs[i];
        for (int k = 0; run->rated && k < run->rating_count; k++) {
            enum Condition conditions[CONDITION_COUNT];
            int count = layout_conditions(&run->ratings[k], conditions, CONDITION_COUNT);
            for (int c = 0; c < count; c++) {
                if (conditions[c] == condition) {
                    return true;
                }
            }
        }
    }
    return false;
}

static bool any_flag(const struct RouteLayout *layout)
{
    for (int i = 0; i < layout->plan->caution_count; i++) {
        if (*layout->plan->cautions[i].where != '\0') {
            return true;
        }
    }
    return false;
}

static bool any_gland(const struct Plan *plan)
{
    for (int i = 0; i < plan->run_count; i++) {
        const struct Run *run = plan->runs[i].settled;
        if (survey_armoured(run->cable.type) && (run->start.into != INTO_FREE || run->finish.into != INTO_FREE)) {
            return true;
        }
    }
    return false;
}

static void add_ribbon(const struct RouteLayout *layout, struct Legend *legend)
{
    const struct Plan *plan = layout->plan;
    if (layout->ribbon_run < 0) {
        return;
    }
    for (int c = 0; c < CONDITION_COUNT; c++) {
        if (condition_used(plan, (enum Condition)c)) {
            const struct Say *meaning = say(layout->arena, layout_condition_word((enum Condition)c));
            add(legend, LEGEND_CONDITION, WAY_WALL, layout_said(layout, meaning));
            legend->entries[legend->count - 1].condition = (enum Condition)c;
        }
    }
    const struct PlanRun *run = &plan->runs[layout->ribbon_run];
    double before = plan->survey->supply.drop_before_percent.value;
    note(
        legend,
        arena_print(layout->arena,
                    "Under the elevation: what each stretch of %s carries and what lowers it (the small "
                    "signs), boxed where it governs, as steps from 0 A against In, the device's rating, and "
                    "Ib, the load's current; then its voltage at full load, %s V%s at the start, against the "
                    "lowest allowed.",
                    shown_text(layout->arena, run->settled->name), number_significant(layout->arena, run->voltage_v, 4),
                    before > 0 ? arena_print(layout->arena, " less %s %%", number_significant(layout->arena, before, 3))
                               : ""));
}

static void add_pulls(const struct RouteLayout *layout, struct Legend *legend)
{
    if (!layout_any_pull(layout->plan)) {
        return;
    }
    bool wanted = false, surveyed = false;
    for (int i = 0; i < layout->plan->run_count; i++) {
        for (int k = 0; k < layout->plan->runs[i].pull_count; k++) {
            wanted = wanted || layout->plan->runs[i].pulls[k].pit_at_m > 0;
        }
    }
    for (int i = 0; i < layout->stretch_count; i++) {
        surveyed = surveyed || layout->stretches[i].segment->surveyed->pits != PITS_NONE;
    }
    add(legend, LEGEND_PULL, WAY_WALL, "drawn in, from the drum");
    note(legend, "An arrow with two heads: the drum may stand at either end.");
    if (surveyed) {
        add(legend, LEGEND_PIT, WAY_WALL, "draw pit");
    }
    if (wanted) {
        add(legend, LEGEND_PIT_WANTED, WAY_WALL, "a pit here would do");
    }
}

static struct Legend collect(const struct RouteLayout *layout)
{
    struct Legend legend = {.count = 0};
    bool insulated = false;
    note(&legend, "Across: metres along the cable, so a rise shows as a slope. Up: metres above the level of the "
                  "start, as surveyed.");
    add_ways(layout, &legend, &insulated);
    if (insulated) {
        add(&legend, LEGEND_INSULATION, WAY_WALL, "insulation");
        note(&legend, "Insulation on both sides of the cable: all round.");
    }
    if (layout->known_ground) {
        add(&legend, LEGEND_KNOWN, WAY_DUCT, "ground");
        if (layout->stepped) {
            note(&legend,
                 "The surveyed rises leave out the steps into the ground and out of it: drawn as high as the cover.");
        }
        if (layout->deepened) {
            note(&legend, "Cover too thin to see is drawn deeper.");
        }
    } else {
        add(&legend, LEGEND_DATUM, WAY_WALL, "level of the start");
    }
    if (layout->level_ground) {
        add(&legend, LEGEND_LEVEL, WAY_WALL, "ground, level assumed");
    }
    if (layout->widened || layout->shortened) {
        add(&legend, LEGEND_SCALE, WAY_WALL, "not to scale");
        note(&legend, layout->widened && layout->shortened
                          ? "Broken line of metres: drawn wider or shorter than the scale."
                      : layout->widened ? "Broken line of metres: drawn wider than the scale."
                                        : "Broken line of metres: drawn shorter than the scale.");
    }
    if (layout->shortened) {
        add(&legend, LEGEND_BREAK, WAY_WALL, "break");
    }
    add(&legend, LEGEND_GOVERNS, WAY_WALL, "governs");
    add(&legend, LEGEND_END, WAY_WALL, "end of a run");
    if (any_gland(layout->plan)) {
        add(&legend, LEGEND_GLAND, WAY_WALL, "gland");
    }
    add_pulls(layout, &legend);
    if (any_flag(layout)) {
        add(&legend, LEGEND_FLAG, WAY_WALL, "caution, listed by number");
    }
    add_ribbon(layout, &legend);
    return legend;
}

/* The notes as one running text. */
static int note_lines(const struct RouteLayout *layout, const struct Legend *legend, const char **lines)
{
    struct TextBuilder text = text_builder(layout->arena);
    for (int i = 0; i < legend->note_count; i++) {
        text_print(&text, "%s%s", i > 0 ? " " : "", legend->notes[i]);
    }
    return type_wrap(layout->arena, text_done(&text), text_style, INNER_RIGHT - INNER_LEFT, NOTES_MOST, lines);
}

static int entry_rows(const struct Legend *legend)
{
    return (legend->count + COLUMNS - 1) / COLUMNS;
}

double layout_legend_height(const struct RouteLayout *layout)
{
    struct Legend legend = collect(layout);
    const char *lines[NOTES_MOST];
    int count = note_lines(layout, &legend, lines);
    return heading_mm + entry_rows(&legend) * row_mm + count * note_mm + bottom_mm;
}

static void draw_sample(struct Drawing *drawing, const struct LegendEntry *entry, double x, double y)
{
    double end = x + sample_mm;
    y -= entry->kind == LEGEND_INSULATION ? 2 : 0; /* it hangs below the cable */
    bool on_cable = entry->kind == LEGEND_WAY || entry->kind == LEGEND_INSULATION || entry->kind == LEGEND_BREAK;
    if (on_cable) {
        layout_draw_sign(
            drawing, entry->kind == LEGEND_WAY ? entry->way : WAY_COUNT,
            entry->kind == LEGEND_INSULATION ? INSULATION_ONE_SIDE : INSULATION_NONE,
            (struct SignPlace){x, y, end, y, entry->kind == LEGEND_WAY && survey_in_ground(entry->way) ? 2.8 : 0, 0});
        drawing_line(drawing, cable_pen, x, y, end, y);
        drawing_is_cable(drawing);
    }
    switch (entry->kind) {
    case LEGEND_WAY:
    case LEGEND_INSULATION: break;
    case LEGEND_KNOWN: layout_draw_ground(drawing, GROUND_KNOWN, x, y, end, y, 1.8); break;
    case LEGEND_LEVEL: layout_draw_ground(drawing, GROUND_LEVEL, x, y, end, y, 0); break;
    case LEGEND_DATUM: drawing_line(drawing, (struct Pen){INK_GROUND, WIDTH_THIN, DASH_CHAIN}, x, y, end, y); break;
    case LEGEND_SCALE: drawing_line(drawing, (struct Pen){INK_BLACK, WIDTH_PLAIN, DASH_SHORT}, x, y, end, y); break;
    case LEGEND_BREAK: layout_draw_break(drawing, x + sample_mm / 2, y); break;
    case LEGEND_GOVERNS:
        drawing_path(drawing, cable_pen, INK_NONE);
        drawing_move(drawing, x + 1, y + 1.4);
        drawing_to(drawing, x + 1, y - 0.8);
        drawing_to(drawing, end - 1, y - 0.8);
        drawing_to(drawing, end - 1, y + 1.4);
        break;
    case LEGEND_END: layout_draw_end(drawing, "A", x + sample_mm / 2, y); break;
    case LEGEND_GLAND:
        drawing_line(drawing, cable_pen, x + 2, y, x + sample_mm / 2, y);
        layout_draw_gland(drawing, x + sample_mm / 2 + 2, y, 1);
        break;
    case LEGEND_PULL:
        layout_draw_arrow(drawing, (struct Pen){INK_BLACK, WIDTH_PLAIN, DASH_NONE}, x + 1, end - 1, y);
        break;
    case LEGEND_PIT: layout_draw_pit(drawing, x + sample_mm / 2, y, true); break;
    case LEGEND_PIT_WANTED: layout_draw_pit(drawing, x + sample_mm / 2, y, false); break;
    case LEGEND_FLAG: layout_draw_flag(drawing, x + sample_mm / 2 - 1, y + FLAG_HEIGHT / 2, FLAG_HEIGHT); break;
    case LEGEND_CONDITION: layout_draw_condition(drawing, entry->condition, x + sample_mm / 2, y); break;
    }
}

void layout_draw_legend(struct RouteLayout *layout, struct Drawing *drawing, double top_mm)
{
    static const struct TextStyle heading_style = {.size_mm = 3.4, .bold = true, .ink = INK_BLACK};
    struct Legend legend = collect(layout);
    double column_mm = (INNER_RIGHT - INNER_LEFT) / COLUMNS;
    drawing_group(drawing, "legend", "Legend");
    drawing_text(drawing, heading_style, INNER_LEFT, top_mm + 3.2, "Signs");
    for (int i = 0; i < legend.count; i++) {
        int row = i / COLUMNS;
        double x = INNER_LEFT + i % COLUMNS * column_mm, middle = top_mm + heading_mm + (row + 0.5) * row_mm;
        draw_sample(drawing, &legend.entries[i], x, middle);
        const char *lines[2];
        int count = type_wrap(layout->arena, legend.entries[i].word, text_style, column_mm - sample_mm - 4, 2, lines);
        for (int k = 0; k < count; k++) {
            drawing_text(drawing, text_style, x + sample_mm + 2, middle + (count == 1 ? 1 : -0.8) + k * 3.6, lines[k]);
        }
    }
    double notes_mm = top_mm + heading_mm + entry_rows(&legend) * row_mm;
    const char *lines[NOTES_MOST];
    int count = note_lines(layout, &legend, lines);
    for (int i = 0; i < count; i++) {
        drawing_text(drawing, text_style, INNER_LEFT, notes_mm + 3 + i * note_mm, lines[i]);
    }
    drawing_group_end(drawing);
}
