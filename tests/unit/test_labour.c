/* Labour figures as they are read and refused, the tasks that a plan comes to, the calendar line by line, and what a
 * quotation adds up to. */
#include "base/diag.h"
#include "labour/work.h"
#include "library/library_stages.h"
#include "read/read.h"
#include "wend/wend.h"

#include "run_suite.h"
#include "said.h"

#include <string.h>

#define TASK(name) "  " name ": {low: 1 min, likely: 2 min, high: 4 min}\n"
#define ALL_TASKS                                                                                                      \
    "tasks:\n" TASK("set-out") TASK("dig") TASK("duct") TASK("drill") TASK("fix") TASK("rods") TASK("draw")            \
        TASK("reinstate") TASK("gland") TASK("terminate") TASK("test") TASK("label")
#define HEAD "wend-labour: 1\n"

static const char route[] = "wend: 1\n"
                            "job: {title: Boathouse supply, site: 'Mill Lane; ground floor, left'}\n"
                            "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                            "runs:\n"
                            "  feeder:\n"
                            "    load: {current: 26 A}\n"
                            "    cable: {type: BS5467, cores: 3}\n"
                            "segments:\n"
                            "  - {name: gable, way: wall, length: 6.5 m, rise: 2.5 m}\n"
                            "  - {name: track, way: duct, length: 24 m, duct: {size: 63 mm}, depth: 600 mm}\n";

static struct Wend *planned(const char *labour)
{
    struct Wend *wend = wend_plan("boathouse", route, strlen(route));
    ck_assert_int_le(wend_status(wend), WEND_CHECK_FAILS);
    if (labour != NULL) {
        wend_labour(wend, labour, strlen(labour));
    }
    return wend;
}

static const char *text_of(struct Wend *wend, int hands, enum WendDayForm form)
{
    const struct WendDay asked = {hands, 1, "2028-02-28"};
    const struct WendBytes text = wend_day(wend, &asked, form);
    ck_assert_ptr_nonnull(text.data);
    ck_assert_uint_eq(strlen(text.data), text.length);
    return text.data;
}

static const struct {
    const char *text, *fault;
    int line;
} faults[] = {
    {"", "file-empty", 1},
    {"- 1\n", "labour-top-not-mapping", 1},
    {ALL_TASKS, "labour-version-missing", 1},
    {"wend-labour: 2\n" ALL_TASKS, "labour-version-unknown", 1},
    {ALL_TASKS HEAD, "labour-version-not-first", 14},
    {HEAD, "key-missing", 1},
    {HEAD "tasks:\n  dig: {low: -1 min, likely: 2 min, high: 3 min}\n", "number-out-of-range", 3},
    {HEAD "tasks:\n  dig: {low: 1 min, likely: 2 min, high: inf min}\n", "number-odd", 3},
    {HEAD "tasks:\n  dig: {low: 1 min, likely: 2 min, high: .inf}\n", "number-odd", 3},
    {HEAD "tasks:\n  dig: {low: 1 min, likely: nan min, high: 3 min}\n", "number-odd", 3},
    {HEAD "tasks:\n  dig: {low: 1 min, likely: 2 min, high: 1e9 min}\n", "number-odd", 3},
    {HEAD "tasks:\n  dig: {low: 1 min, likely: 2 min, high: 999999999 min}\n", "number-out-of-range", 3},
    {HEAD "tasks:\n  dig: {low: 1, likely: 2 min, high: 3 min}\n", "unit-missing", 3},
    {HEAD "tasks:\n  dig: {low: 1 m, likely: 2 min, high: 3 min}\n", "unit-wrong", 3},
    {HEAD "tasks:\n  dig: {low: 3 min, likely: 2 min, high: 4 min}\n", "labour-order", 3},
    {HEAD "tasks:\n  dig: {low: 1 min, likely: 5 min, high: 4 min}\n", "labour-order", 3},
    {HEAD "tasks:\n  dig: {low: 1 min, likely: 2 min}\n", "key-missing", 3},
    {HEAD "tasks:\n  digg: {low: 1 min, likely: 2 min, high: 4 min}\n", "key-misspelt", 3},
    {HEAD "tasks:\n  conjure: {low: 1 min, likely: 2 min, high: 4 min}\n", "key-unknown", 3},
    {HEAD "tasks:\n  dig: {low: 1 min, likely: 2 min, high: 4 min, hands: 5}\n", "number-out-of-range", 3},
    {HEAD "hands: 0\n" ALL_TASKS, "number-out-of-range", 2},
    {HEAD "hands: 2.5\n" ALL_TASKS, "number-not-whole", 2},
    {HEAD "hands: 1\nelectricians: 2\n" ALL_TASKS, "labour-electricians", 3},
    {HEAD "day: {starts: '8 am'}\n" ALL_TASKS, "labour-clock", 2},
    {HEAD "day: {starts: '24:00'}\n" ALL_TASKS, "labour-clock", 2},
    {HEAD "day: {length: 0 h}\n" ALL_TASKS, "number-out-of-range", 2},
    {HEAD "rates: {electrician: 40}\n" ALL_TASKS, "key-missing", 2},
    {HEAD "rates: {currency: XYZ, electrician: 40}\n" ALL_TASKS, "currency-unknown", 2},
    {HEAD "rates: {currency: gbp, electrician: 40}\n" ALL_TASKS, "word-misspelt", 2},
    {HEAD "rates: {currency: GBP, electrician: -40}\n" ALL_TASKS, "number-out-of-range", 2},
};

START_TEST(what_is_wrong_is_named_with_its_line)
{
    struct Wend *wend = planned(faults[_i].text);
    const struct WendDiagnostics *told = wend_labour_diagnostics(wend);
    ck_assert_int_eq(wend_status(wend), WEND_INPUT_WRONG);
    ck_assert_uint_ge(wend_diagnostics_count(told), 1);
    ck_assert_msg(strcmp(wend_diagnostic_name(told, 0), faults[_i].fault) == 0, "%s, not %s: %s",
                  wend_diagnostic_name(told, 0), faults[_i].fault, faults[_i].text);
    ck_assert_msg(wend_diagnostic_line(told, 0) == faults[_i].line, "%s: line %d", faults[_i].text,
                  wend_diagnostic_line(told, 0));
    const struct WendDay asked = {2, 1, ""};
    ck_assert_ptr_null(wend_day(wend, &asked, WEND_DAY_TEXT).data);
    wend_free(wend);
}
END_TEST

static const struct Work *work_with(struct Arena *arena, struct Wend *wend, const char *figures, int hands)
{
    struct Diag *diag = diag_new(arena);
    const struct Labour *labour = read_labour(arena, diag, (struct Bytes){figures, strlen(figures)});
    ck_assert_ptr_nonnull(labour);
    const struct WorkAsked asked = {labour, hands, 1};
    const struct Work *work = work_of(arena, wend_result(wend), wend_parts(wend), &asked);
    ck_assert_ptr_nonnull(work);
    return work;
}

static const struct WorkTask *task_of(const struct Work *work, enum TaskKind kind, int *index)
{
    for (int i = 0; i < work->count; i++) {
        if (work->tasks[i].kind == kind) {
            *index = i;
            return &work->tasks[i];
        }
    }
    return NULL;
}

/* By hand from the route: 24 m of duct, 30.5 m of way, one run whose three cores have two ends. */
START_TEST(tasks_have_the_quantities_of_the_take_off)
{
    struct Wend *wend = planned(NULL);
    struct Arena *arena = arena_new();
    const struct Work *work = work_with(arena, wend, HEAD ALL_TASKS, 1);
    int at = 0, duct = 0, dig = 0, draw = 0, test = 0;
    ck_assert_double_eq_tol(task_of(work, TASK_SET_OUT, &at)->quantity, 30.5, 1e-9);
    ck_assert_int_eq(work->job.tasks[at].span.likely_s, 61 * 60);
    ck_assert_double_eq_tol(task_of(work, TASK_DUCT, &duct)->quantity, 24, 1e-9);
    ck_assert_double_eq(task_of(work, TASK_TERMINATE, &at)->quantity, 3);
    ck_assert_ptr_null(task_of(work, TASK_RODS, &at));
    ck_assert_ptr_null(task_of(work, TASK_DRILL, &at));
    ck_assert_ptr_nonnull(task_of(work, TASK_DIG, &dig));
    ck_assert_ptr_nonnull(task_of(work, TASK_DRAW, &draw));
    ck_assert_ptr_nonnull(task_of(work, TASK_TEST, &test));
    const struct DayPlace *places = work->schedule.places;
    ck_assert_int_ge(places[duct].start_s, places[dig].end_s);
    ck_assert_int_ge(places[draw].start_s, places[duct].end_s);
    ck_assert_int_ge(places[test].start_s, places[draw].end_s);
    for (int i = 0; i < work->count; i++) { /* a hand that is no electrician does nothing of theirs */
        const struct DayTask *task = &work->job.tasks[i];
        const enum TaskKind kind = work->tasks[i].kind;
        ck_assert_int_eq(task->skilled, kind == TASK_GLAND || kind == TASK_TERMINATE || kind == TASK_TEST);
    }
    ck_assert_int_eq(work->untimed, 0);
    ck_assert_int_eq(work->chance.trials, WORK_TRIALS);
    arena_free(arena);
    wend_free(wend);
}
END_TEST

START_TEST(without_a_figure_the_whole_is_not_known)
{
    struct Wend *wend = planned(HEAD "tasks:\n" TASK("dig"));
    const char *text = text_of(wend, 2, WEND_DAY_TEXT);
    ck_assert_ptr_nonnull(strstr(text, "TIME     not known: "));
    ck_assert_ptr_nonnull(strstr(text, "CHANCE   not known"));
    ck_assert_ptr_null(strstr(text, " of being done within"));
    ck_assert_ptr_nonnull(strstr(text_of(wend, 2, WEND_DAY_JSON), "\"time-known\":\tfalse"));
    const struct WendDay asked = {2, 1, "2028-02-28"};
    ck_assert_ptr_null(wend_day(wend, &asked, WEND_DAY_ICALENDAR).data);
    wend_free(wend);
}
END_TEST

/* A year of 366 days has 8784 h. */
START_TEST(what_is_longer_than_a_year_is_refused_in_words)
{
    static const char hundred_hours[] = HEAD "tasks:\n  duct: {low: 100 h, likely: 100 h, high: 100 h}\n";
    for (int length_m = 87; length_m <= 88; length_m++) {
        char longer[sizeof route];
        memcpy(longer, route, sizeof route);
        strstr(longer, "24 m")[0] = '8';
        strstr(longer, "84 m")[1] = length_m == 87 ? '7' : '8';
        struct Wend *wend = wend_plan("boathouse", longer, strlen(longer));
        ck_assert_int_le(wend_status(wend), WEND_CHECK_FAILS);
        wend_labour(wend, hundred_hours, strlen(hundred_hours));
        const char *text = text_of(wend, 1, WEND_DAY_TEXT);
        ck_assert_ptr_nonnull(strstr(text, "Lay duct"));
        ck_assert_int_eq(strstr(text, "takes more than a year") != NULL, length_m == 88);
        wend_free(wend);
    }
}
END_TEST

START_TEST(too_few_hands_are_refused_in_words)
{
    static const char two[] = HEAD "tasks:\n  draw: {low: 1 min, likely: 1 min, high: 1 min, hands: 2}\n";
    struct Wend *wend = planned(two);
    ck_assert_ptr_nonnull(strstr(text_of(wend, 1, WEND_DAY_TEXT), "takes 2 hands at once"));
    ck_assert_ptr_nonnull(strstr(text_of(wend, 1, WEND_DAY_JSON), "\"no-order\""));
    wend_free(wend);
}
END_TEST

/* One hand does with as much work what two would: draw takes twice as long. */
START_TEST(fewer_hands_take_longer)
{
    struct Wend *wend = planned(NULL);
    struct Arena *arena = arena_new();
    int at = 0;
    const struct Work *one = work_with(arena, wend, HEAD ALL_TASKS, 1);
    ck_assert(task_of(one, TASK_DRAW, &at)->fewer);
    const int64_t alone_s = one->job.tasks[at].span.likely_s;
    const struct Work *two = work_with(arena, wend, HEAD ALL_TASKS, 2);
    ck_assert(!task_of(two, TASK_DRAW, &at)->fewer);
    ck_assert_int_eq(two->job.tasks[at].hands, 2);
    ck_assert_int_le(2 * two->job.tasks[at].span.likely_s - alone_s, 60); /* each is rounded up to a minute */
    ck_assert_int_ge(2 * two->job.tasks[at].span.likely_s, alone_s);
    ck_assert_int_le(two->schedule.end_s, one->schedule.end_s);
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* ---- routes of the house ---- */

static struct Wend *planned_route(const char *name)
{
    char path[512], text[16384];
    snprintf(path, sizeof path, ROUTES_FOLDER "/%s.yaml", name);
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "%s", path);
    const size_t length = fread(text, 1, sizeof text, file);
    fclose(file);
    ck_assert_uint_lt(length, sizeof text);
    struct Wend *wend = wend_plan(name, text, length);
    ck_assert_int_le(wend_status(wend), WEND_CHECK_FAILS);
    return wend;
}

/* As the file has them: its lengths added up, a hole of each cable in each wall, its rods, its ends; of the camera's
 * cable the cores are not surveyed. To one hand, so that nothing is shared out. */
static const struct {
    enum TaskKind kind;
    const char *amount; /* of each task of that kind in turn, "" where it is not counted */
} lambing[] = {
    {TASK_SET_OUT, "50.1 m"}, {TASK_DUCT, "12.5 m"},       {TASK_DRILL, "3 holes"},     {TASK_RODS, "2 rods"},
    {TASK_GLAND, "1 gland"},  {TASK_TERMINATE, "3 cores"}, {TASK_TERMINATE, "3 cores"}, {TASK_TERMINATE, ""},
    {TASK_TERMINATE, ""},     {TASK_TEST, "1 run"},        {TASK_TEST, "1 run"},
};

START_TEST(every_way_has_its_tasks)
{
    struct Wend *wend = planned_route("lambing-shed");
    struct Arena *arena = arena_new();
    const struct Work *work = work_with(arena, wend, HEAD ALL_TASKS, 1);
    for (size_t i = 0, from = 0; i < sizeof lambing / sizeof lambing[0]; i++) {
        from = i > 0 && lambing[i].kind == lambing[i - 1].kind ? from + 1 : 0;
        while (from < (size_t)work->count && work->tasks[from].kind != lambing[i].kind) {
            from++;
        }
        ck_assert_msg(from < (size_t)work->count, "%s", labour_task_word(lambing[i].kind));
        const struct WorkTask *task = &work->tasks[from];
        ck_assert_str_eq(task->counted ? said(arena, task->amount) : "", lambing[i].amount);
        ck_assert(task->counted || !task->timed);
    }
    ck_assert_int_eq(work->untimed, 2);
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* A cable laid in the earth is seen before it is covered; holes, fixings and rods come before what needs them. */
START_TEST(what_must_be_done_first_is)
{
    static const struct {
        enum TaskKind first, then;
    } orders[] = {{TASK_DRILL, TASK_DRAW},     {TASK_FIX, TASK_DRAW},   {TASK_DIG, TASK_DRAW},
                  {TASK_DRAW, TASK_REINSTATE}, {TASK_RODS, TASK_TEST},  {TASK_TERMINATE, TASK_TEST},
                  {TASK_DUCT, TASK_REINSTATE}, {TASK_SET_OUT, TASK_DIG}};
    struct Wend *wend = planned_route("cider-barn");
    struct Arena *arena = arena_new();
    const struct Work *work = work_with(arena, wend, HEAD ALL_TASKS, 2);
    ck_assert_int_eq((int)work->schedule.fault, DAY_GOOD);
    ck_assert_int_eq(work->untimed, 0);
    int pairs[sizeof orders / sizeof orders[0]] = {0};
    for (size_t o = 0; o < sizeof orders / sizeof orders[0]; o++) {
        for (int i = 0; i < work->count; i++) {
            for (int k = 0; k < work->count; k++) {
                if (work->tasks[i].kind == orders[o].first && work->tasks[k].kind == orders[o].then) {
                    ck_assert_msg(work->schedule.places[i].end_s <= work->schedule.places[k].start_s, "%s before %s",
                                  labour_task_word(orders[o].first), labour_task_word(orders[o].then));
                    pairs[o]++;
                }
            }
        }
        ck_assert_int_gt(pairs[o], 0);
    }
    for (int i = 0; i < work->count; i++) {
        if (work->tasks[i].kind == TASK_REINSTATE) {
            ck_assert_int_eq((int)work->tasks[i].hold->id, (int)SAY_HOLD_LAID_CABLE);
        }
    }
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* Whoever would only read the day must not build by a plan that fails: it is said before anything else. */
START_TEST(a_plan_that_fails_is_told_before_the_work)
{
    struct Arena *arena = arena_new();
    const char *load = strstr(route, "26 A"), *cores = strstr(route, "cores: 3");
    const char *small = arena_print(arena, "%.*s99 A%.*scores: 3, size: 6 mm2%s", (int)(load - route), route,
                                    (int)(cores - load) - 4, load + 4, cores + 8);
    struct Wend *wend = wend_plan("boathouse", small, strlen(small));
    ck_assert_int_eq(wend_status(wend), WEND_CHECK_FAILS);
    const struct Work *work = work_with(arena, wend, HEAD ALL_TASKS, 2);
    ck_assert_int_ge(work->before_count, 1);
    ck_assert_int_eq((int)work->before[0]->id, (int)SAY_WORK_FAILS);
    ck_assert_ptr_nonnull(strstr(said(arena, work->before[0]), "Nothing is to be built by it."));
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* Each reason why there is no order of work has its own sentence. */
START_TEST(why_there_is_no_order_is_said)
{
    struct Wend *wend = planned(NULL);
    struct Arena *arena = arena_new();
    const struct Work *good = work_with(arena, wend, HEAD ALL_TASKS, 2);
    ck_assert_ptr_null(work_fault_said(arena, good));
    const struct Work *nobody = work_with(arena, wend, HEAD "electricians: 0\n" ALL_TASKS, 2);
    const char *text = said(arena, work_fault_said(arena, nobody));
    ck_assert_msg(strstr(text, "takes an electrician; the labour figures have none") != NULL, "%s", text);
    struct Work many = *good; /* more than any route that is read comes to */
    many.count = DAY_TASKS_MOST + 1;
    many.job.task_count = many.count;
    many.schedule = day_schedule(arena, &many.job);
    ck_assert_str_eq(said(arena, work_fault_said(arena, &many)), "There are 401 tasks, too many for an order of work.");
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* A share of the trials in whole percent, rounded down, never as good or as bad as certain. */
START_TEST(a_chance_is_never_certain)
{
    static const struct {
        int in_time, trials;
        const char *text;
    } chances[] = {{2000, 2000, "over 99 %"}, {1999, 2000, "99 %"},    {1010, 2000, "50 %"},
                   {20, 2000, "1 %"},         {19, 2000, "under 1 %"}, {0, 2000, "under 1 %"}};
    struct Arena *arena = arena_new();
    for (size_t i = 0; i < sizeof chances / sizeof chances[0]; i++) {
        const struct Work work = {.chance = {.in_time = chances[i].in_time, .trials = chances[i].trials}};
        ck_assert_str_eq(said(arena, work_chance_said(arena, &work)), chances[i].text);
    }
    arena_free(arena);
}
END_TEST

/* ---- the calendar ---- */

struct Event {
    int stamps, starts, ends, uids, summaries;
    char uid[80], start[20], end[20];
};

/* A content line with its folds undone; what is left of the text. */
static const char *unfold(const char *at, char *line, size_t room)
{
    size_t length = 0;
    for (;;) {
        const char *end = strstr(at, "\r\n");
        ck_assert_ptr_nonnull(end);
        ck_assert_msg((size_t)(end - at) <= 75, "a line of %d octets", (int)(end - at));
        ck_assert_ptr_null(memchr(at, '\n', (size_t)(end - at)));
        ck_assert_uint_lt(length + (size_t)(end - at), room);
        ck_assert_msg(utf8_length(at, 4) > 0, "a fold within a character");
        memcpy(line + length, at, (size_t)(end - at));
        length += (size_t)(end - at);
        at = end + 2;
        if (*at != ' ') {
            break;
        }
        at++;
    }
    line[length] = '\0';
    return at;
}

static bool is_stamp(const char *text, bool utc)
{
    return strspn(text, "0123456789") == 8 && text[8] == 'T' && strspn(text + 9, "0123456789") == 6 &&
           strcmp(text + 15, utc ? "Z" : "") == 0;
}

static void take_line(struct Event *event, const char *line)
{
    const char *value = strchr(line, ':') + 1;
    if (strncmp(line, "UID:", 4) == 0) {
        event->uids++;
        snprintf(event->uid, sizeof event->uid, "%s", value);
    } else if (strncmp(line, "DTSTAMP:", 8) == 0) {
        event->stamps += is_stamp(value, true);
    } else if (strncmp(line, "DTSTART:", 8) == 0) {
        event->starts += is_stamp(value, false);
        snprintf(event->start, sizeof event->start, "%.15s", value);
    } else if (strncmp(line, "DTEND:", 6) == 0) {
        event->ends += is_stamp(value, false);
        snprintf(event->end, sizeof event->end, "%.15s", value);
    } else if (strncmp(line, "SUMMARY:", 8) == 0) {
        event->summaries++;
    } else if (strncmp(line, "LOCATION:", 9) == 0) {
        ck_assert_str_eq(value, "Mill Lane\\; ground floor\\, left");
    } else {
        ck_assert_int_eq(strncmp(line, "DESCRIPTION:", 12), 0);
    }
}

START_TEST(the_calendar_is_read_line_by_line)
{
    enum { EVENTS_MOST = 60 };
    struct Wend *wend = planned(HEAD "day: {length: 2 h, starts: '23:00'}\n" ALL_TASKS);
    const char *at = text_of(wend, 2, WEND_DAY_ICALENDAR);
    char line[600];
    char uids[EVENTS_MOST][80];
    int events = 0, leap = 0;
    at = unfold(at, line, sizeof line);
    ck_assert_str_eq(line, "BEGIN:VCALENDAR");
    at = unfold(at, line, sizeof line);
    ck_assert_str_eq(line, "VERSION:2.0");
    at = unfold(at, line, sizeof line);
    ck_assert_int_eq(strncmp(line, "PRODID:-//", 10), 0);
    for (at = unfold(at, line, sizeof line); strcmp(line, "END:VCALENDAR") != 0; at = unfold(at, line, sizeof line)) {
        struct Event event = {0};
        ck_assert_str_eq(line, "BEGIN:VEVENT");
        for (at = unfold(at, line, sizeof line); strcmp(line, "END:VEVENT") != 0; at = unfold(at, line, sizeof line)) {
            take_line(&event, line);
        }
        ck_assert(event.uids == 1 && event.stamps == 1 && event.starts == 1 && event.ends == 1 && event.summaries == 1);
        ck_assert_str_lt(event.start, event.end);
        leap += strncmp(event.start, "20280229", 8) == 0; /* the day after the 28th in a leap year */
        for (int i = 0; i < events; i++) {
            ck_assert_str_ne(uids[i], event.uid);
        }
        ck_assert_int_lt(events, EVENTS_MOST);
        snprintf(uids[events++], sizeof uids[0], "%s", event.uid);
    }
    ck_assert_str_eq(at, "");
    ck_assert_int_ge(events, 9);
    ck_assert_int_ge(leap, 1);
    struct Wend *again = planned(HEAD "day: {length: 2 h, starts: '23:00'}\n" ALL_TASKS);
    ck_assert_str_eq(text_of(wend, 2, WEND_DAY_ICALENDAR), text_of(again, 2, WEND_DAY_ICALENDAR));
    wend_free(again);
    wend_free(wend);
}
END_TEST

/* ---- the quotation ---- */

/* Both hands from the first task to the last: the work takes T for two hands, so T/60 x (45.50 + 30), in pence. */
START_TEST(the_quotation_adds_up)
{
    struct Wend *wend = planned(NULL);
    struct Arena *arena = arena_new();
    const struct Work *work =
        work_with(arena, wend, HEAD "rates: {currency: GBP, electrician: 45.50, hand: 30}\n" ALL_TASKS, 2);
    const struct WorkQuotation *quotation = work_quotation(arena, wend_result(wend), wend_parts(wend), work);
    ck_assert_ptr_nonnull(quotation);
    ck_assert_int_eq(quotation->count, 2);
    const int64_t minutes = work->schedule.end_s / 60;
    const int64_t electrician = (minutes * 4550 + 30) / 60, hand = (minutes * 3000 + 30) / 60;
    const int64_t total = electrician + hand;
    ck_assert_str_eq(quotation->lines[0].each_text, "45.50");
    ck_assert_str_eq(quotation->lines[0].total_text,
                     arena_print(arena, "%d.%02d", (int)(electrician / 100), (int)(electrician % 100)));
    ck_assert_str_eq(quotation->lines[1].total_text,
                     arena_print(arena, "%d.%02d", (int)(hand / 100), (int)(hand % 100)));
    ck_assert_str_eq(quotation->total_text, arena_print(arena, "%d.%02d", (int)(total / 100), (int)(total % 100)));
    ck_assert_int_ge(quotation->left_out_count, 2); /* spoil, parts */
    ck_assert_ptr_null(
        work_quotation(arena, wend_result(wend), wend_parts(wend), work_with(arena, wend, HEAD ALL_TASKS, 2)));
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* As long as a schedule can be, by the highest rate: 400 tasks of 366 days each, 3 513 600 hours. */
START_TEST(the_dearest_quotation_is_no_smaller)
{
    struct Wend *wend = planned(NULL);
    struct Arena *arena = arena_new();
    struct Work work =
        *work_with(arena, wend, HEAD "rates: {currency: GBP, electrician: 1000000, hand: 1000000}\n" ALL_TASKS, 2);
    work.schedule.end_s = (int64_t)DAY_TASKS_MOST * DAY_SECONDS_MOST;
    const struct WorkQuotation *quotation = work_quotation(arena, wend_result(wend), wend_parts(wend), &work);
    ck_assert_ptr_nonnull(quotation);
    ck_assert_str_eq(quotation->lines[0].total_text, "3513600000000.00");
    ck_assert_str_eq(quotation->total_text, "7027200000000.00");
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* All of the trench by machine: its hours are those of digging. */
START_TEST(a_digger_is_charged_where_it_digs)
{
    static const char figures[] = HEAD "rates: {currency: GBP, digger: 60, spoil: 10}\n" ALL_TASKS;
    char by_machine[sizeof route + 40];
    snprintf(by_machine, sizeof by_machine, "%.*s, dig: machine}\n", (int)(strrchr(route, '}') - route), route);
    struct Wend *wend = wend_plan("boathouse", by_machine, strlen(by_machine));
    struct Arena *arena = arena_new();
    const struct Work *work = work_with(arena, wend, figures, 2);
    const struct WorkQuotation *quotation = work_quotation(arena, wend_result(wend), wend_parts(wend), work);
    int dig = 0;
    ck_assert_ptr_nonnull(task_of(work, TASK_DIG, &dig));
    ck_assert_int_eq(work->tasks[dig].share, 0);
    const int minutes = (int)(work->job.tasks[dig].span.likely_s / 60); /* at a pound a minute */
    ck_assert_int_eq(quotation->count, 2);
    ck_assert_str_eq(quotation->lines[0].total_text, arena_print(arena, "%d.00", minutes));
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* Each key of the file, said otherwise than in the one before; what is not said is another file than its default said.
 */
static const char *const otherwise[] = {
    "",
    "source: mine\n",
    "source: ours\n",
    "day: {length: 7 h}\n",
    "day: {starts: '07:00'}\n",
    "hands: 3\n",
    "electricians: 2\n",
    "electricians: 0\n",
    "rates: {currency: GBP}\n",
    "rates: {currency: EUR}\n",
    "rates: {currency: GBP, electrician: 40}\n",
    "rates: {currency: GBP, electrician: 40.01}\n",
    "rates: {currency: GBP, hand: 40}\n",
    "rates: {currency: GBP, digger: 40}\n",
    "rates: {currency: GBP, spoil: 40}\n",
};
static const char *const figures_otherwise[] = {
    "{low: 0.5 min, likely: 2 min, high: 4 min}",
    "{low: 1 min, likely: 2.5 min, high: 4 min}",
    "{low: 1 min, likely: 2 min, high: 5 min}",
    "{low: 1 min, likely: 2 min, high: 4 min, hands: 1}",
    "{low: 1 min, likely: 2 min, high: 4 min, hands: 2}",
    "{low: 1 min, likely: 2 min, high: 4 min, electrician: yes}",
    "{low: 1 min, likely: 2 min, high: 4 min, electrician: no}",
};

static const char *mark_by(struct Arena *arena, const char *figures)
{
    struct Wend *wend = planned(figures);
    ck_assert_msg(*wend_sheet_mark(wend) != '\0', "%s", figures);
    const char *mark = arena_print(arena, "%s", wend_sheet_mark(wend));
    wend_free(wend);
    return mark;
}

/* Brief and quotation go by the figures: papers by others have another sheet mark, all the documents of one plan the
 * same. */
START_TEST(other_figures_are_another_sheet_mark)
{
    enum {
        HEADS = sizeof otherwise / sizeof *otherwise,
        FIGURES = sizeof figures_otherwise / sizeof *figures_otherwise
    };
    struct Arena *arena = arena_new();
    const char *marks[1 + HEADS + FIGURES * TASK_KINDS] = {mark_by(arena, NULL)};
    int count = 1;
    for (int i = 0; i < HEADS; i++) {
        marks[count++] = mark_by(arena, arena_print(arena, HEAD "%s" ALL_TASKS, otherwise[i]));
    }
    for (int k = 0; k < TASK_KINDS; k++) {
        const char *row = arena_print(arena, "  %s: ", labour_task_word((enum TaskKind)k));
        const char *at = strstr(ALL_TASKS, row);
        ck_assert_ptr_nonnull(at);
        for (int i = 0; i < FIGURES; i++) {
            marks[count++] = mark_by(arena, arena_print(arena, HEAD "%.*s%s%s%s", (int)(at - ALL_TASKS), ALL_TASKS, row,
                                                        figures_otherwise[i], strchr(at, '\n')));
        }
    }
    for (int i = 0; i < count; i++) {
        for (int k = 0; k < i; k++) {
            ck_assert_msg(strcmp(marks[i], marks[k]) != 0, "%d and %d", i, k);
        }
    }
    ck_assert_str_eq(marks[1], mark_by(arena, "# a remark\n" HEAD ALL_TASKS "# and another\n"));
    arena_free(arena);
}
END_TEST

START_TEST(all_documents_by_figures_have_one_sheet_mark)
{
    struct Wend *wend = planned(HEAD "rates: {currency: GBP, hand: 40}\n" ALL_TASKS);
    for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) {
        const bool marked = i != WEND_SUMMARY_TEXT && i != WEND_SUMMARY_TEXT_COLOUR;
        const struct WendBytes made = wend_document(wend, (enum WendDocument)i);
        ck_assert_msg((made.data != NULL) == wend_has_document(wend, (enum WendDocument)i), "%d", i);
        ck_assert_msg(!marked || made.data == NULL || strstr(made.data, wend_sheet_mark(wend)) != NULL, "%d", i);
    }
    ck_assert_ptr_nonnull(strstr(wend_quotation(wend).data, wend_sheet_mark(wend)));
    wend_free(wend);
}
END_TEST

/* What stands in the price list is charged, what is priced in other money or not at all is named: two bolts at 1.25 and
 * two bungs at 3.00 are 8.50, two leads at 4.00 are 8.00 of the other. */
START_TEST(parts_are_charged_or_named)
{
    static const char prices[] = "code,unit,price,currency\nbanjo-bolt,each,1.25,GBP\nduct-bung-63,each,3.00,GBP\n"
                                 "earth-lead-4,each,4.00,EUR\n";
    char priced[sizeof route + 40];
    snprintf(priced, sizeof priced, "%sparts: {prices: list.csv}\n", route);
    struct Wend *wend = wend_plan("boathouse", priced, strlen(priced));
    ck_assert_int_le(wend_price(wend, prices, strlen(prices)), WEND_CHECK_FAILS);
    struct Arena *arena = arena_new();
    const struct Work *work = work_with(arena, wend, HEAD "rates: {currency: GBP, hand: 30}\n" ALL_TASKS, 2);
    const struct WorkQuotation *quotation = work_quotation(arena, wend_result(wend), wend_parts(wend), work);
    ck_assert_ptr_nonnull(quotation);
    const struct WorkCost *parts = &quotation->lines[quotation->count - 1];
    ck_assert_int_eq((int)parts->what->id, (int)SAY_QUOTE_PARTS);
    ck_assert_str_eq(parts->total_text, "8.50");
    int other = 0, unpriced = 0;
    for (int i = 0; i < quotation->left_out_count; i++) {
        const struct Say *said = quotation->left_out[i];
        other += said->id == SAY_QUOTE_OTHER_CURRENCY && said_has(said, "EUR") && said_has(said, "8.00");
        unpriced += said->id == SAY_QUOTE_UNPRICED && said_has(said, "Warning tape") && said_has(said, "Draw rope") &&
                    !said_has(said, "Duct bung");
    }
    ck_assert_int_eq(other, 1);
    ck_assert_int_eq(unpriced, 1);
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* Of a machine's hours nothing is charged where it has no rate, and that is named. */
START_TEST(a_digger_without_a_rate_is_named)
{
    static const char figures[] = HEAD "rates: {currency: GBP, hand: 30, spoil: 10}\n" ALL_TASKS;
    char by_machine[sizeof route + 40];
    snprintf(by_machine, sizeof by_machine, "%.*s, dig: machine}\n", (int)(strrchr(route, '}') - route), route);
    struct Wend *wend = wend_plan("boathouse", by_machine, strlen(by_machine));
    struct Arena *arena = arena_new();
    const struct WorkQuotation *quotation =
        work_quotation(arena, wend_result(wend), wend_parts(wend), work_with(arena, wend, figures, 2));
    bool named = false;
    for (int i = 0; i < quotation->left_out_count; i++) {
        named =
            named || (quotation->left_out[i]->id == SAY_QUOTE_NO_RATE && said_has(quotation->left_out[i], "Digger"));
    }
    ck_assert(named);
    for (int i = 0; i < quotation->count; i++) {
        ck_assert_int_ne((int)quotation->lines[i].what->id, (int)SAY_QUOTE_DIGGER);
    }
    arena_free(arena);
    wend_free(wend);
}
END_TEST

/* What cannot be charged is named with its reason: hands whose time is not known, a digger that no figure is for,
 * nobody who is not there, nothing taken away where nothing is dug. */
START_TEST(what_is_not_charged_is_named)
{
#define RATES "rates: {currency: GBP, electrician: 45, hand: 30, digger: 60, spoil: 10}\n"
    static const char gable_only[] = "wend: 1\n"
                                     "job: {title: Boathouse supply}\n"
                                     "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                                     "runs: {feeder: {load: {current: 26 A}, cable: {type: BS5467, cores: 3}}}\n"
                                     "segments:\n"
                                     "  - {name: gable, way: wall, length: 6.5 m}\n";
    static const struct {
        bool dug;
        const char *figures;
        int hands, electricians, others, diggers, spoil;
        const char *untimed[3]; /* named because their time is not known */
    } rows[] = {
        {true, HEAD RATES ALL_TASKS, 2, 1, 1, 1, 1, {NULL}},
        {true, HEAD RATES ALL_TASKS, 1, 1, 0, 1, 1, {NULL}},
        {true, HEAD RATES "tasks:\n" TASK("dig"), 2, 0, 0, 1, 1, {"1 electrician", "1 hand"}},
        {true, HEAD RATES "tasks:\n" TASK("duct"), 2, 0, 0, 0, 1, {"1 electrician", "1 hand", "Digger"}},
        {false, HEAD RATES ALL_TASKS, 2, 1, 1, 0, 0, {NULL}},
    };
    char by_machine[sizeof route + 40];
    snprintf(by_machine, sizeof by_machine, "%.*s, dig: machine}\n", (int)(strrchr(route, '}') - route), route);
    struct Arena *arena = arena_new();
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        const char *text = rows[r].dug ? by_machine : gable_only;
        struct Wend *wend = wend_plan("boathouse", text, strlen(text));
        ck_assert_int_le(wend_status(wend), WEND_CHECK_FAILS);
        const struct WorkQuotation *quotation = work_quotation(arena, wend_result(wend), wend_parts(wend),
                                                               work_with(arena, wend, rows[r].figures, rows[r].hands));
        int electricians = 0, others = 0, diggers = 0, spoil = 0, untimed = 0, named = 0;
        for (int i = 0; i < quotation->count; i++) {
            electricians += quotation->lines[i].what->id == SAY_QUOTE_ELECTRICIANS;
            others += quotation->lines[i].what->id == SAY_QUOTE_HANDS;
            diggers += quotation->lines[i].what->id == SAY_QUOTE_DIGGER;
            spoil += quotation->lines[i].what->id == SAY_QUOTE_SPOIL;
        }
        for (int i = 0; i < quotation->left_out_count; i++) {
            untimed += quotation->left_out[i]->id == SAY_QUOTE_NO_TIME;
            for (int k = 0; k < 3 && rows[r].untimed[k] != NULL; k++) {
                named +=
                    quotation->left_out[i]->id == SAY_QUOTE_NO_TIME &&
                    strncmp(said(arena, quotation->left_out[i]), rows[r].untimed[k], strlen(rows[r].untimed[k])) == 0;
            }
        }
        const int due = (rows[r].untimed[0] != NULL) + (rows[r].untimed[1] != NULL) + (rows[r].untimed[2] != NULL);
        ck_assert_msg(electricians == rows[r].electricians && others == rows[r].others && diggers == rows[r].diggers &&
                          spoil == rows[r].spoil,
                      "row %d: %d, %d, %d, %d", (int)r, electricians, others, diggers, spoil);
        ck_assert_msg(untimed == due && named == due, "row %d: %d, %d of %d", (int)r, untimed, named, due);
        wend_free(wend);
    }
    arena_free(arena);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("labour");
    TCase *tests = tcase_create("labour");
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, what_is_wrong_is_named_with_its_line, 0, (int)(sizeof faults / sizeof faults[0]));
    tcase_add_test(tests, tasks_have_the_quantities_of_the_take_off);
    tcase_add_test(tests, without_a_figure_the_whole_is_not_known);
    tcase_add_test(tests, what_is_longer_than_a_year_is_refused_in_words);
    tcase_add_test(tests, too_few_hands_are_refused_in_words);
    tcase_add_test(tests, fewer_hands_take_longer);
    tcase_add_test(tests, every_way_has_its_tasks);
    tcase_add_test(tests, what_must_be_done_first_is);
    tcase_add_test(tests, a_plan_that_fails_is_told_before_the_work);
    tcase_add_test(tests, why_there_is_no_order_is_said);
    tcase_add_test(tests, a_chance_is_never_certain);
    tcase_add_test(tests, the_calendar_is_read_line_by_line);
    tcase_add_test(tests, the_quotation_adds_up);
    tcase_add_test(tests, the_dearest_quotation_is_no_smaller);
    tcase_add_test(tests, a_digger_is_charged_where_it_digs);
    tcase_add_test(tests, parts_are_charged_or_named);
    tcase_add_test(tests, a_digger_without_a_rate_is_named);
    tcase_add_test(tests, what_is_not_charged_is_named);
    tcase_add_test(tests, other_figures_are_another_sheet_mark);
    tcase_add_test(tests, all_documents_by_figures_have_one_sheet_mark);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
