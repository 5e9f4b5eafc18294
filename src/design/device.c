/* The protective device's rating: the one given, or the smallest standard one that carries the load. */
#include "design/faults/fault_private.h"

double run_start_a(const struct Run *run, const struct Demand *demand)
{
    if (run->start_current_a.given) {
        /* Which of several loads is the motor is not said: all of them run while it starts. */
        return run->start_current_a.value + (run->load_count > 1 ? demand->design_a : 0);
    }
    return run->start_multiple.given ? run->start_multiple.value * demand->design_a : 0;
}

bool device_smallest(enum DeviceKind kind, double current_a, double *out_a)
{
    const double *ratings_a;
    const int count = device_ratings(kind, &ratings_a);
    for (int i = 0; i < count; i++) {
        if (within(current_a, ratings_a[i])) {
            *out_a = ratings_a[i];
            return true;
        }
    }
    return false;
}

const struct Say *device_said(struct Arena *arena, const struct Device *device, double rating_a, double residual_a)
{
    const bool breaker = device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO;
    const struct SayArg kind = say_word(WORDS_DEVICE, (int)device->kind);
    const struct SayArg rating = say_digits(rating_a, 4, UNIT_A);
    const struct SayArg residual = residual_a > 0 ? residual_ma(residual_a) : say_term(SAY_NOTHING);
    return breaker
               ? say(arena, SAY_DEVICE_BREAKER, kind, say_word(WORDS_CURVE, (int)device->curve), rating, residual)
               : say(arena, device->kind == DEVICE_GG ? SAY_DEVICE_FUSE_GG : SAY_DEVICE_FUSE, kind, rating, residual);
}

/* A run whose device is settled is a copy of the surveyed one; its name is its own. */
static struct DiagSubject subject_of(const struct Design *design, const struct Run *run)
{
    int index = 0;
    while (index + 1 < design->survey->run_count && !text_same(design->survey->runs[index].name, run->name)) {
        index++;
    }
    return DIAG_RUN(index);
}

static void warn_when_not_standard(const struct Design *design, const struct Run *run)
{
    const struct Device *device = &run->device;
    double up_a;
    const double rating_a = device->rating_a.value;
    if (device_smallest(device->kind, rating_a, &up_a) && within(up_a, rating_a)) {
        return;
    }
    const double *ratings_a;
    const int count = device_ratings(device->kind, &ratings_a);
    struct TextBuilder list = text_builder(design->arena);
    for (int i = 0; i < count; i++) {
        text_print(&list, "%s%s", i > 0 ? " " : "", number_significant(design->arena, ratings_a[i], 4));
    }
    diag_report_of(design->diag, subject_of(design, run), MSG_DEVICE_NOT_STANDARD, device->rating_a.mark, 1,
                   DIAG_WORDS(number_significant(design->arena, rating_a, 4),
                              survey_word(WORDS_DEVICE, (int)device->kind), text_done(&list)));
}

void warn_of_residual_series(const struct Design *design, const struct Run *run)
{
    const struct Device *device = &run->device;
    if (device->residual_a.given && !device->time_delayed &&
        survey_board_residual_a(&design->survey->earthing, run) > 0) {
        diag_report_of(design->diag, subject_of(design, run), MSG_RESIDUAL_SERIES, device->residual_a.mark, 1,
                       DIAG_WORDS(run->name));
    }
}

void warn_of_island_earth(const struct Design *design)
{
    const struct Survey *survey = design->survey;
    for (int r = 0; r < survey->run_count && survey->earthing.far_end == FAR_END_ISLAND; r++) {
        const struct Run *run = &survey->runs[r];
        if (run->kind == RUN_EARTH) {
            diag_report_of(design->diag, DIAG_RUN(r), MSG_ISLAND_EARTH_RUN, run->mark, (int)utf8_count(run->name),
                           DIAG_WORDS(run->name));
        }
    }
}

/* Why a residual part is required where nobody chose the device; SAY_NOTHING when none is. */
static enum Saying residual_due(const struct Design *design, const struct Run *run)
{
    const struct Survey *survey = design->survey;
    const bool far_end_has_one = survey_board_residual_a(&survey->earthing, run) > 0;
    if (run->use == USE_CHARGING) {
        return SAY_RESIDUAL_FOR_CHARGING;
    }
    if (survey->supply.system == SYSTEM_TT) {
        return SAY_RESIDUAL_ON_TT;
    }
    if (survey->earthing.far_end == FAR_END_ISLAND && !far_end_has_one) {
        return SAY_RESIDUAL_FOR_ELECTRODE;
    }
    if (run->feeds == FEEDS_SOCKETS) {
        return SAY_RESIDUAL_FOR_SOCKETS;
    }
    return location_residual_rule(design->edition, survey->job.location, run, 0) != NULL ? SAY_RESIDUAL_FOR_PLACE
                                                                                         : SAY_NOTHING;
}

/* Selective where another one follows at the outbuilding's board or may, else 30 mA. */
static void add_residual(const struct Design *design, const struct Run *run, struct Device *device)
{
    const struct Survey *survey = design->survey;
    const struct LocationRule *rule = location_residual_rule(design->edition, survey->job.location, run, 0);
    const bool board = run->feeds == FEEDS_BOARD && rule != NULL &&
                       rule->value >= design_practice()->selective_residual_a && run->use != USE_CHARGING;
    const bool another_follows =
        (survey_board_residual_a(&survey->earthing, run) > 0 && run->use != USE_CHARGING) || board;
    device->kind = DEVICE_RCBO;
    device->residual_a = (struct Quantity){.value = another_follows ? design_practice()->selective_residual_a
                                                                    : clause_figures()->additional_residual_a,
                                           .given = true,
                                           .mark = run->mark};
    device->time_delayed = another_follows;
    device->residual_type = RESIDUAL_A;
    device->residual_type_given = true;
}

/* The first curve that lets the motor start: its least tripping current is not under the starting current. */
static void settle_curve(double rating_a, double start_a, struct Device *device)
{
    device->curve = CURVE_B;
    while (device->curve < CURVE_D && !within(start_a, breaker_holds(device->curve) * rating_a)) {
        device->curve++;
    }
}

const struct Run *device_settle(const struct Design *design, const struct Run *run, const struct Say **because)
{
    const struct Survey *survey = design->survey;
    const struct Device *given = &run->device;
    struct Run *settled = arena_alloc(design->arena, sizeof *settled);
    *because = NULL;
    if (settled == NULL) {
        return NULL;
    }
    *settled = *run;
    const enum Saying residual = given->given ? SAY_NOTHING : residual_due(design, run);
    if (residual != SAY_NOTHING) {
        add_residual(design, run, &settled->device);
        *because = say(design->arena, residual);
    }
    const bool breaker = settled->device.kind == DEVICE_MCB || settled->device.kind == DEVICE_RCBO;
    const int phases = survey_run_phases(&survey->supply, run);
    const struct Demand demand = load_demand(run, phases, survey->supply.voltage_v.value);
    double rating_a = given->rating_a.value;
    if (!breaker || given->curve_given ||
        (!given->rating_a.given && !device_smallest(settled->device.kind, demand.design_a, &rating_a))) {
        return settled;
    }
    const double start_a = run_start_a(run, &demand);
    settle_curve(rating_a, start_a, &settled->device);
    if (settled->device.curve != CURVE_B) {
        const struct Say *starting =
            say(design->arena, SAY_CURVE_FOR_STARTING, say_word(WORDS_CURVE, (int)settled->device.curve),
                say_fixed(start_a, 0, UNIT_A));
        *because = say_list(design->arena, SAY_SEMICOLON, *because, say_part(starting));
    }
    return settled;
}

bool device_rating(const struct Design *design, const struct Run *run, double design_a, double *out_a)
{
    const struct Device *device = &run->device;
    if (device->rating_a.given) {
        warn_when_not_standard(design, run);
        *out_a = device->rating_a.value;
        return true;
    }
    if (device_smallest(device->kind, design_a, out_a)) {
        return true;
    }
    diag_report(design->diag, MSG_DEVICE_NONE_CARRIES, device->given ? device->mark : run->mark, 1,
                DIAG_WORDS(survey_word(WORDS_DEVICE, (int)device->kind), number_text(design->arena, design_a, 1)));
    return false;
}
