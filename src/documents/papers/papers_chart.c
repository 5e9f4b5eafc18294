/* Two small bar charts side by side in words and in places: what each size carries against the device, and what it
 * drops against what is allowed. All places are worked out here, in millimetres of a sheet 180 wide. */
#include "documents/xml/plan_xml_private.h"
#include "papers_private.h"

enum { SIZES_MOST = 9, BEFORE_CHOSEN = 4 };
static const double chart_width = 180, panel_height = 40, left = 24, right = 178, top = 9;
/* A bar of this part of the panel belongs to the limit, so that what fails has room to stand out. */
static const double limit_part = 0.55;

struct Window {
    int first, count;
};

/* The sizes around the one that is taken: larger ones would only press the rest flat. */
static struct Window window_of(const struct PlanRun *run)
{
    int chosen = 0;
    for (int i = 0; i < run->option_count; i++) {
        chosen = run->options[i].chosen ? i : chosen;
    }
    int first = chosen > BEFORE_CHOSEN ? chosen - BEFORE_CHOSEN : 0;
    if (first + SIZES_MOST > run->option_count) {
        first = run->option_count > SIZES_MOST ? run->option_count - SIZES_MOST : 0;
    }
    const int left_over = run->option_count - first;
    return (struct Window){first, left_over < SIZES_MOST ? left_over : SIZES_MOST};
}

static void place(struct XmlOut *out, struct XmlElement *element, const char *name, double value)
{
    xml_attribute(out, element, name, number_text(xml_out_arena(out), value, 2));
}

static void label(struct XmlOut *out, struct XmlElement *panel, const char *kind, double x, double y, const char *text)
{
    struct XmlElement *element = xml_child(out, panel, "label");
    xml_attribute(out, element, "kind", kind);
    place(out, element, "x", x);
    place(out, element, "y", y);
    xml_text(out, element, text);
}

static void add_bar(struct XmlOut *out, struct XmlElement *panel, const struct Option *option, double x, double width,
                    double part, const char *text)
{
    const double whole = panel_height - top;
    const double height = (part > 1 ? 1 : part) * whole;
    struct XmlElement *bar = xml_child(out, panel, "bar");
    xml_attribute(out, bar, "kind", option->chosen ? "taken" : plan_xml_verdict(option->verdict));
    place(out, bar, "x", x);
    place(out, bar, "y", panel_height - height);
    place(out, bar, "width", width);
    place(out, bar, "height", height);
    label(out, panel, part > 1 ? "beyond" : "value", x + width / 2, panel_height - height - 1.2, text);
}

/* One panel: `value_of` in parts of `limit`. */
static void add_panel(struct XmlOut *out, struct XmlElement *chart, const struct PlanRun *run, bool drop, double limit)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Window window = window_of(run);
    const double pitch = (right - left) / window.count, width = pitch * 0.62;
    struct XmlElement *panel = xml_child(out, chart, "panel");
    xml_say_attribute(out, panel, "title", say(arena, drop ? SAY_CHART_DROP : SAY_CHART_CARRIES));
    place(out, panel, "width", chart_width);
    place(out, panel, "height", panel_height + 7);
    place(out, panel, "base", panel_height);
    place(out, panel, "left", left);
    place(out, panel, "right", right);
    place(out, panel, "limit", panel_height - limit_part * (panel_height - top));
    label(out, panel, "limit", left - 2, panel_height - limit_part * (panel_height - top) + 1,
          xml_said(out, drop ? say(arena, SAY_CHART_ALLOWED, say_digits(limit, 3, UNIT_PERCENT))
                             : say(arena, SAY_CHART_DEVICE, say_digits(limit, 3, UNIT_A))));
    label(out, panel, "axis", left - 2, panel_height + 5, xml_said(out, say(arena, SAY_CHART_MM2)));
    for (int i = 0; i < window.count; i++) {
        const struct Option *option = &run->options[window.first + i];
        const double x = left + pitch * i + (pitch - width) / 2;
        const double value = drop ? option->drop_percent : option->capacity_a;
        label(out, panel, option->chosen ? "taken" : "size", x + width / 2, panel_height + 5,
              xml_said(out, say(arena, SAY_AS_IS, say_digits(option->size_mm2, 4, UNIT_NONE))));
        if (option->capacity_a > 0) {
            add_bar(out, panel, option, x, width, limit_part * value / limit,
                    xml_said(out, say(arena, SAY_AS_IS, say_fixed(value, drop ? 2 : 0, UNIT_NONE))));
        }
    }
}

void papers_chart(struct XmlOut *out, struct XmlElement *sheet, const struct PlanRun *run)
{
    if (run->option_count == 0 || !(run->rating_a > 0) || !(run->drop_limit_percent > 0)) {
        return;
    }
    struct XmlElement *chart = xml_child(out, sheet, "chart");
    add_panel(out, chart, run, false, run->rating_a);
    add_panel(out, chart, run, true, run->drop_limit_percent);
}
