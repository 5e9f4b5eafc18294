/* Faults between fields that are each good alone: supply and electrode, a segment's lengths, cores against phases.
 * Unknown values compare as false (NAN) or are the count of their list, and so pass in silence. */
#include "read_private.h"

#include <math.h>

static bool written(const struct Quantity *quantity)
{
    return quantity->given;
}

/* Neither written nor spoilt. */
static bool left_out(const struct Quantity *quantity)
{
    return !quantity->given && !isnan(quantity->value);
}

static void check_supply(struct Reader *reader, const struct Supply *supply)
{
    if (written(&supply->voltage_v) && supply->voltage_v.value >= 380 && supply->voltage_v.value <= 440) {
        reader_report_mark(reader, MSG_VOLTAGE_BETWEEN_LINES, supply->voltage_v.mark,
                           DIAG_WORDS(quantity_show(reader->arena, supply->voltage_v.value, MEASURE_VOLT)));
    }
    if (supply->system == SYSTEM_TT && supply->loop_ohm.given && supply->electrode_ohm.given &&
        supply->loop_ohm.value < supply->electrode_ohm.value) {
        reader_report_mark(reader, MSG_LOOP_BELOW_ELECTRODE, supply->loop_ohm.mark,
                           DIAG_WORDS(number_significant(reader->arena, supply->loop_ohm.value, 4),
                                      number_significant(reader->arena, supply->electrode_ohm.value, 4)));
    }
}

static void check_earthing(struct Reader *reader, const struct Earthing *earthing)
{
    if (!earthing->given) {
        return;
    }
    bool incomplete =
        left_out(&earthing->rods) || left_out(&earthing->rod_length_m) || left_out(&earthing->rod_diameter_mm);
    if (earthing->has_electrode && left_out(&earthing->measured_ohm) && incomplete) {
        reader_report_mark(reader, MSG_ELECTRODE_INCOMPLETE, earthing->mark, DIAG_NO_WORDS);
    }
    if (written(&earthing->rod_spacing_m) && earthing->rods.value > 1 &&
        earthing->rod_spacing_m.value < earthing->rod_length_m.value) {
        reader_report_mark(reader, MSG_RODS_CLOSE, earthing->rod_spacing_m.mark, DIAG_NO_WORDS);
    }
}

static const char *metres(struct Reader *reader, double value)
{
    return quantity_show(reader->arena, value, MEASURE_METRE);
}

static void check_insulation(struct Reader *reader, const struct Segment *segment)
{
    if (segment->way == WAY_CEILING && segment->insulation == INSULATION_NONE && written(&segment->thickness_m)) {
        reader_report_mark(reader, MSG_THICKNESS_WITHOUT_INSULATION, segment->thickness_m.mark, DIAG_NO_WORDS);
    }
    if (!written(&segment->insulated_length_m)) {
        return;
    }
    if (segment->insulation == INSULATION_NONE) {
        reader_report_mark(reader, MSG_INSULATED_LENGTH_ALONE, segment->insulated_length_m.mark, DIAG_NO_WORDS);
    } else if (segment->insulated_length_m.value > segment->length_m.value) {
        reader_report_mark(
            reader, MSG_INSULATED_LENGTH_LONG, segment->insulated_length_m.mark,
            DIAG_WORDS(metres(reader, segment->insulated_length_m.value), metres(reader, segment->length_m.value)));
    }
}

/* The arcs alone must fit into the segment. */
static void check_bends(struct Reader *reader, const struct Segment *segment)
{
    const double radians_per_degree = 3.14159265358979323846 / 180;
    double arcs_m = 0;
    for (int i = 0; i < segment->bend_count; i++) {
        if (segment->bends[i].radius_m.given) {
            arcs_m += segment->bends[i].angle_deg * radians_per_degree * segment->bends[i].radius_m.value;
        }
    }
    if (arcs_m > segment->length_m.value) {
        reader_report_mark(reader, MSG_BENDS_LONG, segment->bends[0].mark,
                           DIAG_WORDS(quantity_show(reader->arena, ceil(arcs_m * 100) / 100, MEASURE_METRE),
                                      metres(reader, segment->length_m.value)));
    }
}

static void check_drawing(struct Reader *reader, const struct Segment *segment)
{
    const struct Quantity *bore = &segment->duct_bore_mm;
    if (written(bore) && written(&segment->duct_size_mm) && bore->value >= segment->duct_size_mm.value) {
        reader_report_mark(reader, MSG_BORE_LARGE, bore->mark,
                           DIAG_WORDS(quantity_show(reader->arena, segment->duct_size_mm.value, MEASURE_MILLIMETRE),
                                      quantity_show(reader->arena, bore->value, MEASURE_MILLIMETRE)));
    }
    const bool pits = segment->pits != PITS_NONE && segment->pits != PITS_COUNT;
    if (pits && segment->way != WAY_COUNT && !survey_drawn(segment)) {
        reader_report_mark(reader, MSG_PITS_NOT_DRAWN, segment->mark, DIAG_NO_WORDS);
    }
}

static void check_segment(struct Reader *reader, const struct Segment *segment)
{
    check_drawing(reader, segment);
    if (fabs(segment->rise_m.value) > segment->length_m.value) {
        reader_report_mark(reader, MSG_RISE_LONG, segment->rise_m.mark,
                           DIAG_WORDS(metres(reader, segment->rise_m.value), metres(reader, segment->length_m.value)));
    }
    check_insulation(reader, segment);
    check_bends(reader, segment);
}

struct Phases {
    bool known;
    bool three;  /* any load on three lines */
    bool single; /* any load between one line and neutral */
};

/* Neither its capacity nor the size of its protective conductor is held, so no run of it could be decided. */
static void check_cable(struct Reader *reader, const struct Run *run)
{
    if (run->kind == RUN_POWER && run->cable.type == CABLE_BS8436) {
        reader_report_mark(reader, MSG_NO_TABLE_FOR_CABLE, run->cable.mark,
                           DIAG_WORDS(survey_word(WORDS_CABLE, (int)run->cable.type)));
    }
}

static struct Phases phases_of(const struct Run *run)
{
    struct Phases phases = {.known = run->load_count > 0};
    for (int i = 0; i < run->load_count; i++) {
        phases.known = phases.known && (run->loads[i].phases == 1 || run->loads[i].phases == 3);
        phases.three = phases.three || run->loads[i].phases == 3;
        phases.single = phases.single || run->loads[i].phases == 1;
    }
    return phases;
}

static void check_cores(struct Reader *reader, const struct Run *run)
{
    const struct Cable *cable = &run->cable;
    struct Phases phases = phases_of(run);
    if (run->kind != RUN_POWER || !phases.known || cable->type == CABLE_COUNT || cable->cpc == CPC_COUNT) {
        return;
    }
    if (cable->type == CABLE_BS6004_FLAT && phases.three) {
        reader_report_mark(reader, MSG_FLAT_SINGLE_PHASE, cable->mark, DIAG_NO_WORDS);
        return;
    }
    bool protective = cable->cpc == CPC_CORE || cable->cpc == CPC_CORE_AND_ARMOUR;
    int loaded = !phases.three ? 2 : phases.single ? 4 : 3;
    int need = loaded + (protective ? 1 : 0);
    if (cable->cores < 1 || cable->cores >= need) {
        return;
    }
    static const char *const uses[][2] = {
        {"line and neutral", "line, neutral and the protective conductor"},
        {"three lines", "three lines and the protective conductor"},
        {"three lines and neutral", "three lines, neutral and the protective conductor"},
    };
    const char *needed = arena_print(reader->arena, "%d", need);
    const char *has = arena_print(reader->arena, "%d", cable->cores);
    reader_report_mark(reader, MSG_CORES_TOO_FEW, cable->mark,
                       DIAG_WORDS(needed, uses[loaded - 2][protective ? 1 : 0], has));
}

static void check_pull(struct Reader *reader, const struct Survey *survey, const struct Run *run)
{
    bool drawn = run->along == NULL || survey->segments == NULL;
    for (int i = 0; i < run->along_count && !drawn; i++) {
        drawn = survey_drawn(&survey->segments[run->along[i]]) || survey->segments[run->along[i]].way == WAY_COUNT;
    }
    if (run->pull.given && !drawn && run->name != NULL) {
        reader_report_mark(reader, MSG_PULL_UNUSED, run->mark, DIAG_WORDS(fields_quote(reader, run->name)));
    }
}

/* What feeds a run is said where it begins, and of a power run. */
static void check_feed(struct Reader *reader, const struct Run *run)
{
    const struct End *const others[] = {&run->finish,
                                        run->kind == RUN_POWER || run->kind == RUN_KIND_COUNT ? NULL : &run->start};
    for (int i = 0; i < 2; i++) {
        if (others[i] != NULL && (others[i]->from_given || written(&others[i]->tails_m))) {
            reader_report_mark(reader, MSG_FROM_NOT_START, others[i]->mark,
                               DIAG_WORDS(others[i]->from_given ? "from" : "tails"));
        }
    }
    const bool tails_due = run->start.from == FROM_METER_TAILS || run->start.from == FROM_NEW_BOARD;
    if (others[1] == NULL && written(&run->start.tails_m) && !tails_due && run->start.from != FROM_COUNT) {
        reader_report_mark(reader, MSG_TAILS_NOT_DUE, run->start.tails_m.mark, DIAG_NO_WORDS);
    }
}

static void check_followed(struct Reader *reader, const struct Survey *survey)
{
    if (survey->run_count == 0) {
        return;
    }
    bool *followed = arena_array(reader->arena, (size_t)survey->segment_count + 1, sizeof *followed);
    for (int i = 0; i < survey->run_count && followed != NULL; i++) {
        const struct Run *run = &survey->runs[i];
        if (run->along == NULL) {
            return; /* what it follows is not known */
        }
        for (int j = 0; j < run->along_count; j++) {
            followed[run->along[j]] = true;
        }
    }
    for (int i = 0; i < survey->segment_count && followed != NULL; i++) {
        const struct Segment *segment = &survey->segments[i];
        if (!followed[i] && segment->name != NULL) {
            reader->subject = DIAG_SEGMENT(i);
            reader_report_mark(reader, MSG_SEGMENT_UNUSED, segment->mark,
                               DIAG_WORDS(fields_quote(reader, segment->name)));
        }
    }
}

static bool names_trench(const struct Segment *segment)
{
    return segment->trench != NULL && segment->trench[0] != '\0';
}

/* The segment whose trench this one names; -1: nothing that can be shared. */
static int trench_named(const struct Survey *survey, int index)
{
    const int host = survey->segments[index].shares_trench - 1;
    return host >= 0 && survey_dug(&survey->segments[host]) && !names_trench(&survey->segments[host]) ? host : -1;
}

static void check_trench(struct Reader *reader, const struct Survey *survey, int index)
{
    const struct Segment *segment = &survey->segments[index];
    if (!names_trench(segment) || segment->name == NULL) {
        return;
    }
    const int host = trench_named(survey, index);
    if (host < 0) {
        reader_report_mark(reader, MSG_TRENCH_NOT_THERE, segment->mark, DIAG_WORDS(segment->trench));
    } else if (survey_powered(survey, host) && survey_powered(survey, index) &&
               !(segment->has_beside && survey->segments[host].has_beside)) {
        reader_report_mark(reader, MSG_TRENCH_NOT_BESIDE, segment->mark, DIAG_WORDS(segment->name, segment->trench));
    }
}

void survey_relations(struct Reader *reader, const struct Survey *survey)
{
    check_supply(reader, &survey->supply);
    check_earthing(reader, &survey->earthing);
    for (int i = 0; i < survey->segment_count; i++) {
        reader->subject = DIAG_SEGMENT(i);
        check_segment(reader, &survey->segments[i]);
        check_trench(reader, survey, i);
    }
    for (int i = 0; i < survey->run_count; i++) {
        reader->subject = DIAG_RUN(i);
        check_cable(reader, &survey->runs[i]);
        check_cores(reader, &survey->runs[i]);
        check_pull(reader, survey, &survey->runs[i]);
        check_feed(reader, &survey->runs[i]);
    }
    check_followed(reader, survey);
}
