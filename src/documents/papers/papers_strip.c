/* <strip>: the day as lanes, one a hand, with every place worked out in millimetres of a sheet 180 wide; and
 * <quotation>: what it costs. Both are there for labour figures of the user's own alone. */
#include "papers_private.h"

enum { TICKS_MOST = 12 };
static const double strip_width = 180, left = 24, right = 178, top = 6, lane_height = 8, lane_gap = 2;

static void place(struct XmlOut *out, struct XmlElement *element, const char *name, double value)
{
    xml_attribute(out, element, name, number_text(xml_out_arena(out), value, 2));
}

static double x_of(const struct Work *work, int64_t seconds)
{
    return left + (right - left) * (double)seconds / (double)work->schedule.end_s;
}

static double y_of(int lane)
{
    return top + lane * (lane_height + lane_gap);
}

/* A mark an hour, or so many hours that they stand clear of each other. */
static void add_ticks(struct XmlOut *out, struct XmlElement *strip, const struct Work *work)
{
    const int hours = (int)(work->schedule.end_s / 3600);
    const int step = hours / TICKS_MOST + 1;
    for (int hour = 0; hour <= hours; hour += step) {
        struct XmlElement *tick = xml_child(out, strip, "tick");
        place(out, tick, "x", x_of(work, (int64_t)hour * 3600));
        xml_say(out, tick, say(xml_out_arena(out), SAY_WORK_HOURS_WHOLE, say_count(hour)));
    }
}

static void add_bars(struct XmlOut *out, struct XmlElement *strip, const struct Work *work, int number, int task)
{
    const struct DayPlace *at = &work->schedule.places[task];
    for (int h = 0; h < work->job.hands; h++) {
        if ((at->who >> h & 1U) == 0) {
            continue;
        }
        const double width = x_of(work, at->end_s) - x_of(work, at->start_s);
        struct XmlElement *bar = xml_child(out, strip, "bar");
        xml_attribute(out, bar, "kind", work->tasks[task].hold != NULL ? "held" : "free");
        place(out, bar, "x", x_of(work, at->start_s));
        place(out, bar, "y", y_of(h));
        place(out, bar, "width", width);
        place(out, bar, "height", lane_height);
        place(out, bar, "text-x", x_of(work, at->start_s) + width / 2);
        place(out, bar, "text-y", y_of(h) + lane_height / 2 + 1.4);
        xml_text(out, bar, width < (number < 10 ? 3 : 6) ? "" : arena_print(xml_out_arena(out), "%d", number));
    }
}

static void add_task(struct XmlOut *out, struct XmlElement *strip, const struct Work *work, int number, int task)
{
    struct Arena *arena = xml_out_arena(out);
    const struct DayPlace *at = &work->schedule.places[task];
    struct XmlElement *element = xml_child(out, strip, "task");
    xml_integer(out, element, "number", number);
    xml_attribute(out, element, "from", work_clock_text(arena, at->start_s));
    xml_say(out, element, work->tasks[task].title);
}

void papers_strip(struct XmlOut *out, struct XmlElement *papers, const struct Work *work)
{
    struct Arena *arena = xml_out_arena(out);
    if (work == NULL || work->schedule.fault != DAY_GOOD || work->untimed > 0 || work->count == 0) {
        return;
    }
    const double height = y_of(work->job.hands);
    struct XmlElement *strip = xml_child(out, papers, "strip");
    place(out, strip, "width", strip_width);
    place(out, strip, "height", height);
    place(out, strip, "left", left);
    place(out, strip, "right", right);
    place(out, strip, "top", top - 1);
    place(out, strip, "label-x", left - 2);
    xml_say_attribute(out, strip, "time",
                      say(arena, SAY_DAY_TIME, say_part(work_time_said(arena, work->schedule.end_s)),
                          say_part(work_time_said(arena, work->schedule.bound_s))));
    xml_say_attribute(out, strip, "chance",
                      say(arena, SAY_DAY_CHANCE_SHORT, say_part(work_chance_said(arena, work)),
                          say_part(work_time_said(arena, work->day_s))));
    add_ticks(out, strip, work);
    for (int h = 0; h < work->job.hands; h++) {
        const bool skilled = h < work->job.skilled;
        struct XmlElement *lane = xml_child(out, strip, "lane");
        place(out, lane, "y", y_of(h) + lane_height / 2 + 1.4);
        xml_say(out, lane,
                say(arena, skilled ? SAY_DAY_ELECTRICIAN : SAY_DAY_HAND,
                    say_count(skilled ? h + 1 : h + 1 - work->job.skilled)));
    }
    for (int i = 0; i < work->count; i++) {
        add_bars(out, strip, work, i + 1, work->schedule.order[i]);
    }
    for (int i = 0; i < work->count; i++) {
        add_task(out, strip, work, i + 1, work->schedule.order[i]);
    }
}

void papers_quotation(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan,
                      const struct PartsList *parts, const struct Work *work)
{
    struct Arena *arena = xml_out_arena(out);
    const struct WorkQuotation *quotation =
        work == NULL || arena == NULL ? NULL : work_quotation(arena, plan, parts, work);
    if (quotation == NULL) {
        return;
    }
    struct XmlElement *element = xml_child(out, papers, "quotation");
    xml_attribute(out, element, "currency", quotation->currency);
    xml_attribute(out, element, "total", quotation->total_text);
    for (int i = 0; i < quotation->count; i++) {
        struct XmlElement *line = xml_child(out, element, "cost");
        xml_say_attribute(out, line, "amount", quotation->lines[i].amount);
        xml_attribute_if(out, line, "each", quotation->lines[i].each_text);
        xml_attribute(out, line, "total", quotation->lines[i].total_text);
        xml_say(out, line, quotation->lines[i].what);
    }
    for (int i = 0; i < quotation->left_out_count; i++) {
        xml_say(out, xml_child(out, element, "left-out"), quotation->left_out[i]);
    }
}
