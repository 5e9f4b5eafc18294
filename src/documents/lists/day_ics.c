/* The day for a calendar: iCalendar, RFC 5545. Times are local and of no zone; no clock is read, so the stamps are
 * those of the day that was asked for. What does not fit into a day goes on the next. */
#include "documents/documents.h"
#include "documents/shown_private.h"

#include <stdint.h>
#include <stdlib.h>

enum { LINE_OCTETS = 75, DAY_S = 24 * 3600, CALENDAR_DAYS_MOST = 366, YEAR_MOST = 9999 }; /* of four digits */

struct Date {
    int year, month, day;
};

struct Calendar {
    struct Arena *arena;
    struct TextBuilder text;
    const struct Plan *plan;
    const struct Work *work;
    struct Date first;
    unsigned long job; /* tells jobs of one file name apart */
};

/* A content line: after 75 octets it goes on behind a break and a blank, never within a character. */
static void add_line(struct Calendar *calendar, const char *line)
{
    size_t room = LINE_OCTETS;
    while (*line != '\0') {
        size_t taken = 0;
        while (line[taken] != '\0') {
            const int step = utf8_length(line + taken, 4);
            const size_t octets = step > 0 ? (size_t)step : 1;
            if (taken + octets > room) {
                break;
            }
            taken += octets;
        }
        text_add_bytes(&calendar->text, line, taken);
        line += taken;
        text_add(&calendar->text, *line != '\0' ? "\r\n " : "\r\n");
        room = LINE_OCTETS - 1; /* the blank counts */
    }
}

/* TEXT of RFC 5545 3.3.11. */
static const char *escaped(struct Arena *arena, const char *text)
{
    struct TextBuilder out = text_builder(arena);
    for (const char *at = shown_text(arena, text); *at != '\0'; at++) {
        if (*at == '\\' || *at == ';' || *at == ',') {
            text_add_char(&out, '\\');
        }
        text_add_char(&out, *at);
    }
    return text_done(&out);
}

static void add_text(struct Calendar *calendar, const char *name, const char *text)
{
    add_line(calendar, arena_print(calendar->arena, "%s:%s", name, escaped(calendar->arena, text)));
}

static int days_in(int year, int month)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return days[month - 1] + (month == 2 && leap);
}

static struct Date date_after(struct Date date, int days)
{
    date.day += days;
    while (date.day > days_in(date.year, date.month)) {
        date.day -= days_in(date.year, date.month);
        date.year += date.month == 12;
        date.month = date.month == 12 ? 1 : date.month + 1;
    }
    return date;
}

/* "20260514T080000": so many days behind the first, at that second of the day. */
static const char *stamp(const struct Calendar *calendar, int days, int seconds)
{
    const struct Date date = date_after(calendar->first, days + seconds / DAY_S);
    const int within = seconds % DAY_S;
    return arena_print(calendar->arena, "%04d%02d%02dT%02d%02d%02d", date.year, date.month, date.day, within / 3600,
                       within / 60 % 60, within % 60);
}

/* The end of the last piece, on the day on which it ends. */
static bool ends_in_calendar(const struct Calendar *calendar)
{
    const struct Work *work = calendar->work;
    const int64_t end_s = work->schedule.end_s, last = end_s > 0 ? (end_s - 1) / work->day_s : 0;
    const int64_t of_day_s = (int64_t)work->labour->starts_min * 60 + end_s - last * work->day_s;
    return date_after(calendar->first, (int)(last + of_day_s / DAY_S)).year <= YEAR_MOST;
}

/* An entry is read by itself: it says what the plan came to unless it passes, and what was changed by --set. */
static void add_words(struct Calendar *calendar, const struct WorkTask *row)
{
    struct Arena *arena = calendar->arena;
    const struct Plan *plan = calendar->plan;
    const struct Say *title = row->title;
    const struct Say *more = row->amount == NULL ? NULL : say(arena, SAY_AS_IS, say_part(row->amount));
    if (row->hold != NULL) {
        more = say_list(arena, SAY_SEMICOLON, more, say_part(say(arena, SAY_DAY_AFTER_HOLD, say_part(row->hold))));
    }
    if (plan->verdict != VERDICT_PASS) {
        const struct SayArg verdict = say_name(verdict_word(plan->verdict));
        title = say(arena, SAY_COLON, verdict, say_part(title));
        more = say_list(arena, SAY_SEMICOLON, more,
                        say_part(say(arena, SAY_COLON, verdict, say_part(plan_verdict_said(plan)))));
    }
    for (int i = 0; i < plan->survey->change_count; i++) {
        more = say_list(arena, SAY_SEMICOLON, more,
                        say_part(say(arena, SAY_CHANGED_ROUTE, say_name(plan->survey->changes[i]))));
    }
    add_text(calendar, "SUMMARY", shown_said(arena, title));
    add_text(calendar, "DESCRIPTION", shown_said(arena, more));
}

static void add_event(struct Calendar *calendar, int task, int piece, int64_t from_s, int64_t to_s)
{
    struct Arena *arena = calendar->arena;
    const struct WorkTask *row = &calendar->work->tasks[task];
    const int64_t day_s = calendar->work->day_s;
    const int days = (int)(from_s / day_s), starts_s = calendar->work->labour->starts_min * 60;
    add_line(calendar, "BEGIN:VEVENT");
    add_line(calendar, arena_print(arena, "UID:%08lx-%s-%d-%d-%d-%d@wend", calendar->job, labour_task_word(row->kind),
                                   row->run + 1, (int)row->end, row->share, piece));
    add_line(calendar, arena_print(arena, "DTSTAMP:%sZ", stamp(calendar, 0, 0)));
    add_line(calendar, arena_print(arena, "DTSTART:%s", stamp(calendar, days, starts_s + (int)(from_s % day_s))));
    add_line(calendar,
             arena_print(arena, "DTEND:%s", stamp(calendar, days, starts_s + (int)(to_s - (int64_t)days * day_s))));
    add_words(calendar, row);
    if (*calendar->plan->survey->job.site != '\0') {
        add_text(calendar, "LOCATION", calendar->plan->survey->job.site);
    }
    add_line(calendar, "END:VEVENT");
}

static unsigned long digest(const char *text, unsigned long sum)
{
    for (; *text != '\0'; text++) {
        sum = ((sum ^ (unsigned char)*text) * 16777619UL) & 0xFFFFFFFFUL;
    }
    return ((sum ^ 255UL) * 16777619UL) & 0xFFFFFFFFUL;
}

struct Bytes document_day_ics(struct Arena *arena, const struct Plan *plan, const struct Work *work, const char *date)
{
    const struct Job *job = &plan->survey->job;
    struct Calendar calendar = {.arena = arena, .text = text_builder(arena), .plan = plan, .work = work};
    if (work->schedule.fault != DAY_GOOD || work->untimed > 0 || work->day_s <= 0 ||
        work->schedule.end_s > CALENDAR_DAYS_MOST * work->day_s) {
        return (struct Bytes){NULL, 0};
    }
    calendar.first = (struct Date){.year = (int)strtol(date, NULL, 10),
                                   .month = (int)strtol(date + 5, NULL, 10),
                                   .day = (int)strtol(date + 8, NULL, 10)};
    if (!ends_in_calendar(&calendar)) {
        return (struct Bytes){NULL, 0};
    }
    calendar.job = digest(job->site, digest(job->title, digest(plan->route, 2166136261UL)));
    add_line(&calendar, "BEGIN:VCALENDAR");
    add_line(&calendar, "VERSION:2.0");
    add_line(&calendar, "PRODID:-//Wend//the day//EN");
    for (int i = 0; i < work->count; i++) {
        const int task = work->schedule.order[i];
        const struct DayPlace *place = &work->schedule.places[task];
        int64_t from_s = place->start_s;
        for (int piece = 0; from_s < place->end_s; piece++) {
            const int64_t day_ends_s = (from_s / work->day_s + 1) * work->day_s;
            const int64_t to_s = place->end_s < day_ends_s ? place->end_s : day_ends_s;
            add_event(&calendar, task, piece, from_s, to_s);
            from_s = to_s;
        }
    }
    add_line(&calendar, "END:VCALENDAR");
    const char *text = text_done(&calendar.text);
    return calendar.text.failed || arena_failed(arena) ? (struct Bytes){NULL, 0}
                                                       : (struct Bytes){text, calendar.text.length};
}
