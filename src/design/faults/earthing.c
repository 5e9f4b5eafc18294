/* Earthing at the far end: the outbuilding's own electrode, or the bond that comes with the supply's earth. */
#include "fault_private.h"

#include <math.h>

static void not_due(struct Check *out, const struct Say *text)
{
    out->result = CHECK_NOT_DUE;
    out->text = text;
}

/* The residual device that the electrode has to work: the outbuilding board's where the run feeds it, else the run's.
 */
static double residual_at_far_end_a(const struct RunDesign *run)
{
    const double board_a = survey_board_residual_a(run->earthing, run->run);
    if (board_a > 0) {
        return board_a;
    }
    return run->run->device.residual_a.given ? run->run->device.residual_a.value : 0;
}

static const struct Say *what_electrode_leaves(struct Arena *arena, const struct RunDesign *run, double residual_a)
{
    const bool steady = run->electrode_ohm <= clause_figures()->electrode_steady_ohm;
    const struct Say *leaves =
        say(arena, run->earthing->measured_ohm.given ? SAY_ELECTRODE_MEASURED_LEAVES : SAY_ELECTRODE_ESTIMATED_LEAVES,
            say_fixed(run->electrode_ohm, 1, UNIT_OHM), residual_ma(residual_a),
            say_fixed(run->electrode_ohm * residual_a, 2, UNIT_V), say_fixed(touch_limit_v(run->edition), 0, UNIT_V));
    return say_then(
        arena, leaves,
        steady ? NULL
               : say(arena, SAY_ELECTRODE_MAY_CHANGE, say_fixed(clause_figures()->electrode_steady_ohm, 0, UNIT_OHM)));
}

void check_electrode(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    (void)trial;
    if (run->earthing->far_end != FAR_END_ISLAND) {
        not_due(out, say(arena, SAY_ELECTRODE_NOT_DUE));
        return;
    }
    const double residual_a = residual_at_far_end_a(run);
    if (residual_a <= 0 || run->electrode_ohm <= 0) {
        out->result = CHECK_FAIL;
        out->unit = UNIT_NONE;
        out->text = say(arena, residual_a <= 0 ? SAY_ELECTRODE_WITHOUT_RESIDUAL : SAY_ELECTRODE_NOT_KNOWN);
        return;
    }
    out->value = run->electrode_ohm * residual_a;
    out->limit = touch_limit_v(run->edition);
    out->result = within(out->value, out->limit) ? CHECK_PASS : CHECK_FAIL;
    out->text = what_electrode_leaves(arena, run, residual_a);
    work_electrode(arena, run, residual_a, out);
}

/* Between where the cable ends and the board's own residual device, an island has nothing but its electrode to carry a
 * fault, and no overcurrent device opens for that: either a residual device at the supply end sees it, or nothing there
 * is metal that can be touched (531.3.5.3.2, 412). */
void check_residual_position(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                             struct Check *out)
{
    (void)trial;
    const struct Device *device = &run->run->device;
    const struct End *board = &run->run->finish;
    out->unit = UNIT_NONE;
    if (run->earthing->far_end != FAR_END_ISLAND || survey_board_residual_a(run->earthing, run->run) <= 0) {
        not_due(out, say(arena, run->earthing->far_end == FAR_END_ISLAND ? SAY_RESIDUAL_AHEAD_NO_BOARD
                                                                         : SAY_RESIDUAL_AHEAD_ON_SUPPLY_EARTH));
        return;
    }
    if (device->residual_a.given) {
        out->unit = UNIT_V;
        out->value = run->electrode_ohm * device->residual_a.value;
        out->limit = touch_limit_v(run->edition);
        out->result = run->electrode_ohm > 0 && within(out->value, out->limit) ? CHECK_PASS : CHECK_FAIL;
        out->text = say(arena, SAY_RESIDUAL_AHEAD_IN_RUN, residual_ma(device->residual_a.value),
                        say_fixed(out->value, 2, UNIT_V), say_fixed(touch_limit_v(run->edition), 0, UNIT_V));
        work_electrode(arena, run, device->residual_a.value, out);
    } else if (!board->enclosure_given) {
        check_unsettled(out, settles_key("finish: enclosure"), say(arena, SAY_RESIDUAL_AHEAD_BOARD_OF_WHAT));
    } else if (board->enclosure == ENCLOSURE_PLASTIC) {
        out->result = CHECK_PASS;
        work_rule(arena, say_term(SAY_RULE_BOARD_OF), say_term(SAY_FOUND_PLASTIC), out);
        out->text = say(arena, SAY_RESIDUAL_AHEAD_PLASTIC_BOARD);
        out->assumes = say(arena, SAY_ASSUMES_BOARD_ALL_INSULATED);
    } else {
        out->result = CHECK_FAIL;
        work_rule(arena, say_term(SAY_RULE_BOARD_OF_AHEAD), say_term(SAY_FOUND_METAL), out);
        out->text = say(arena, SAY_RESIDUAL_AHEAD_METAL_BOARD);
    }
}

/* Least main bond, mm2 copper: Table 54.8 on TN-C-S; else half the earthing conductor, 6 to 25 mm2 (544.1.1), next size
 * up. */
static double bond_needed_mm2(const struct RunDesign *run)
{
    if (run->tn_c_s) {
        double needed_mm2 = INFINITY; /* where no row answered nothing would be enough */
        bonding_tn_c_s(run->edition, run->supply_neutral_mm2, &needed_mm2);
        return needed_mm2;
    }
    const double half_mm2 = run->earthing_conductor_mm2 / 2;
    const double *sizes_mm2 = clause_figures()->bond_mm2;
    for (int i = 0; i < CLAUSE_BONDS; i++) {
        if (within(half_mm2, sizes_mm2[i])) {
            return sizes_mm2[i];
        }
    }
    return sizes_mm2[CLAUSE_BONDS - 1];
}

/* Copper that would conduct as well as the run's protective conductor, mm2. */
static double bond_there_mm2(const struct RunDesign *run, double size_mm2)
{
    double core_mm2 = 0;
    double armour_mm2 = 0;
    double ten_ohm_per_m;
    struct Armour armour;
    const enum Cpc cpc = run->run->cable.cpc;
    if (cpc == CPC_SEPARATE) {
        return run->separate_mm2;
    }
    if (cpc == CPC_CORE || cpc == CPC_CORE_AND_ARMOUR) {
        protective_core_mm2(run->terms.type, size_mm2, &core_mm2);
    }
    if (cpc == CPC_ARMOUR && armour_figures(run->terms.type, run->terms.cores, size_mm2, &armour) &&
        conductor_resistance(10, &ten_ohm_per_m)) {
        armour_mm2 = 10 * ten_ohm_per_m / armour.max_ohm_per_m;
    }
    return core_mm2 + armour_mm2;
}

/* A pipe or frame that nobody bonds is what this check is for: what was not looked at is open (544.1). A piece of
 * equipment within one installation is no building of its own. */
static void bonding_not_surveyed(struct Arena *arena, const struct RunDesign *run, struct Check *out)
{
    if (run->run->feeds == FEEDS_EQUIPMENT && run->run->use != USE_CHARGING && !run->earthing->given) {
        not_due(out, say(arena, SAY_BOND_OF_ONE_INSTALLATION));
        return;
    }
    check_unsettled(out, settles_key("earthing: extraneous-parts"), say(arena, SAY_BOND_NOT_SURVEYED));
}

void check_bonding(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)
{
    if (run->earthing->far_end == FAR_END_ISLAND) {
        not_due(out, say(arena, SAY_BOND_TO_ELECTRODE));
        return;
    }
    if (!run->earthing->extraneous_parts_given) {
        bonding_not_surveyed(arena, run, out);
        return;
    }
    if (!run->earthing->extraneous_parts) {
        not_due(out, say(arena, SAY_BOND_OF_NOTHING));
        return;
    }
    out->at_least = true;
    out->value = bond_there_mm2(run, trial->size_mm2);
    out->limit = bond_needed_mm2(run);
    if (run->tn_c_s) {
        out->cite.table = bonding_tn_c_s_ref(run->edition)->table;
        out->trust = bonding_tn_c_s_ref(run->edition)->trust;
    }
    out->result = within(out->limit, out->value) ? CHECK_PASS : CHECK_FAIL;
    out->text =
        say(arena, SAY_BOND_BY_CONDUCTOR, say_fixed(out->value, 1, UNIT_MM2), say_digits(out->limit, 4, UNIT_MM2));
    work_bonding(arena, run, trial, out);
}
