/* What the work and its parts cost, by the user's own rates and prices, in the currency of the rates. All sums are
 * whole numbers: a rate in ten-thousandths, time in minutes, so that the longest work at the highest rate fits. */
#include "work_private.h"

#include "buying/buying.h"

#include <math.h>

enum { RATE_PARTS = 10000, RATE_DECIMALS = 4, HOUR_MIN = 60, LINES_MOST = 6 };

struct Quoting {
    struct Arena *arena;
    const struct Labour *labour;
    struct WorkQuotation *out;
    struct WorkCost *lines;
    const struct Say **left_out;
    int64_t total; /* in coins */
};

static void leave_out(struct Quoting *quoting, const struct Say *said)
{
    quoting->left_out[quoting->out->left_out_count++] = said;
}

static const char *coins_text(const struct Quoting *quoting, int64_t coins)
{
    const int decimals = quoting->labour->rates.coin_decimals;
    return parts_money_text(quoting->arena, coins, decimals, decimals);
}

static void add_line(struct Quoting *quoting, const struct Say *what, const struct Say *amount, const char *each,
                     int64_t coins)
{
    quoting->lines[quoting->out->count++] = (struct WorkCost){what, amount, each, coins_text(quoting, coins)};
    quoting->total += coins;
}

/* So many units, of which one that the rate is for has `in_one`. */
static void add_rated(struct Quoting *quoting, const struct Say *what, const struct Say *amount,
                      const struct Quantity *rate, int64_t units, int64_t in_one)
{
    const int64_t parts = (int64_t)llround(rate->value * RATE_PARTS);
    const int64_t fine = (parts * units + in_one / 2) / in_one;
    add_line(quoting, what, amount,
             parts_money_text(quoting->arena, parts, RATE_DECIMALS, quoting->labour->rates.coin_decimals),
             parts_money_in_coin(fine, RATE_DECIMALS, quoting->labour->rates.coin_decimals));
}

/* Each hand is paid from the first to the last of the work. */
static void add_people(struct Quoting *quoting, const struct Work *work, int people, const struct Quantity *rate,
                       enum Saying what)
{
    struct Arena *arena = quoting->arena;
    if (people == 0) {
        return;
    }
    const struct Say *said = say(arena, what, say_count(people));
    if (work->untimed > 0 || work->schedule.fault != DAY_GOOD) {
        leave_out(quoting, say(arena, SAY_QUOTE_NO_TIME, say_part(said)));
    } else if (!rate->given) {
        leave_out(quoting, say(arena, SAY_QUOTE_NO_RATE, say_part(said)));
    } else {
        const int64_t seconds = work->schedule.end_s * people;
        add_rated(quoting, said, work_time_said(arena, seconds), rate, seconds / 60, HOUR_MIN);
    }
}

/* A digger digs where the survey says so: its part of all that is dug. */
static void add_digger(struct Quoting *quoting, const struct Plan *plan, const struct PartsList *parts,
                       const struct Work *work)
{
    struct Arena *arena = quoting->arena;
    double all_m3 = 0, machine_m3 = 0, seconds = 0;
    for (int i = 0; i < parts->way_count; i++) {
        const struct PartsWay *way = &parts->ways[i];
        const double dug_m3 = way->trench_m * way->trench_width_m * way->trench_depth_m;
        all_m3 += dug_m3;
        machine_m3 += plan->segments[way->segment].surveyed->dig == DIG_MACHINE ? dug_m3 : 0;
    }
    for (int i = 0; i < work->count; i++) {
        seconds += work->tasks[i].kind == TASK_DIG ? (double)work->job.tasks[i].span.likely_s : 0;
    }
    if (!(machine_m3 > 0)) {
        return;
    }
    const struct Say *said = say(arena, SAY_QUOTE_DIGGER);
    if (!(seconds > 0)) {
        leave_out(quoting, say(arena, SAY_QUOTE_NO_TIME, say_part(said)));
    } else if (!quoting->labour->rates.digger.given) {
        leave_out(quoting, say(arena, SAY_QUOTE_NO_RATE, say_part(said)));
    } else {
        const int64_t minutes = (int64_t)ceil(seconds * machine_m3 / all_m3 / 60 - 1e-9);
        add_rated(quoting, said, work_time_said(arena, minutes * 60), &quoting->labour->rates.digger, minutes,
                  HOUR_MIN);
    }
}

static void add_spoil(struct Quoting *quoting, const struct PartsList *parts)
{
    struct Arena *arena = quoting->arena;
    double spoil_m3 = 0;
    for (int i = 0; i < parts->way_count; i++) {
        spoil_m3 += parts->ways[i].spoil_m3;
    }
    const int64_t hundredths = (int64_t)ceil(spoil_m3 * 100 - 1e-6);
    if (hundredths <= 0) {
        return;
    }
    const struct Say *said = say(arena, SAY_QUOTE_SPOIL);
    if (quoting->labour->rates.spoil.given) {
        add_rated(quoting, said, say(arena, SAY_AS_IS, say_fixed((double)hundredths / 100, 2, UNIT_M3)),
                  &quoting->labour->rates.spoil, hundredths, 100);
    } else {
        leave_out(quoting, say(arena, SAY_QUOTE_NO_RATE, say_part(said)));
    }
}

/* By their names, not by the codes of the price list: a customer reads this. */
static void leave_out_unpriced(struct Quoting *quoting, const struct PartsList *parts)
{
    const struct Say *names = NULL;
    int lines = 0;
    for (int i = 0; i < parts->count; i++) {
        if (!parts->prices[i].known && parts->prices[i].why != NULL) {
            names = say_list(quoting->arena, SAY_SEMICOLON, names, say_part(parts->parts[i].description));
            lines++;
        }
    }
    if (lines > 0) {
        leave_out(quoting, say(quoting->arena, SAY_QUOTE_UNPRICED, say_count(lines), say_part(names)));
    }
}

static void add_parts(struct Quoting *quoting, const struct PartsList *parts)
{
    struct Arena *arena = quoting->arena;
    if (parts->prices == NULL) {
        leave_out(quoting, parts->prices_note != NULL ? parts->prices_note : say(arena, SAY_QUOTE_NO_PRICES));
        return;
    }
    for (int i = 0; i < parts->total_count; i++) {
        const struct PartsTotal *total = &parts->totals[i];
        const struct Say *lines = say(arena, SAY_QUOTE_PART_LINES, say_count(total->lines));
        if (total->lines == 0) {
            continue;
        }
        if (text_same(total->currency, quoting->labour->rates.currency)) {
            add_line(quoting, say(arena, SAY_QUOTE_PARTS), lines, "",
                     parts_money_in_coin(total->amount, total->decimals, total->coin_decimals));
        } else {
            leave_out(quoting, say(arena, SAY_QUOTE_OTHER_CURRENCY, say_part(lines), say_name(total->currency),
                                   say_name(total->text)));
        }
    }
    leave_out_unpriced(quoting, parts);
}

const struct WorkQuotation *work_quotation(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                           const struct Work *work)
{
    const struct LabourRates *rates = &work->labour->rates;
    if (!rates->given) {
        return NULL;
    }
    const size_t room = LINES_MOST + (size_t)parts->total_count + (size_t)parts->note_count;
    struct WorkQuotation *out = arena_alloc(arena, sizeof *out);
    struct Quoting quoting = {.arena = arena,
                              .labour = work->labour,
                              .out = out,
                              .lines = arena_array(arena, room, sizeof *quoting.lines),
                              .left_out = arena_array(arena, room, sizeof(struct Say *))};
    if (out == NULL || quoting.lines == NULL || quoting.left_out == NULL) {
        return NULL;
    }
    out->currency = rates->currency;
    out->lines = quoting.lines;
    out->left_out = quoting.left_out;
    add_people(&quoting, work, work->job.skilled, &rates->electrician, SAY_QUOTE_ELECTRICIANS);
    add_people(&quoting, work, work->job.hands - work->job.skilled, &rates->hand, SAY_QUOTE_HANDS);
    add_digger(&quoting, plan, parts, work);
    add_spoil(&quoting, parts);
    add_parts(&quoting, parts);
    for (int i = 0; i < parts->note_count; i++) {
        leave_out(&quoting, parts->notes[i]);
    }
    out->total_text = coins_text(&quoting, quoting.total);
    return arena_failed(arena) ? NULL : out;
}
