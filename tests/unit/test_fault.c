/* Faults and earthing: loop impedance, disconnection, withstand, breaking capacity, electrodes, bonding, and what the
 * kind of load asks of its device. The program's own functions are put to
 *   - examples that others published (test_fault_published.c),
 *   - sums worked by hand from the rules (test_fault_worked.c),
 *   - every device at the edge of its limit, in every system (test_fault_limits.c),
 *   - the rules on residual devices, electrodes, charging, bonding, motors, harmonics (test_fault_rules.c),
 *   - electrodes and facts of the trade (test_fault_trade.c),
 *   - what must not be taken for granted (test_fault_cautious.c),
 *   - the energy that a device lets through (test_fault_energy.c),
 *   - routes that are told one value more (test_fault_known.c),
 *   - what is said of it (test_fault_said.c).
 * The tables behind them have tests of their own. */
#include "fault_rig.h"

#include "run_suite.h"

int main(void)
{
    Suite *suite = suite_create("faults and earthing");
    suite_add_tcase(suite, fault_published());
    suite_add_tcase(suite, fault_worked());
    suite_add_tcase(suite, fault_devices());
    suite_add_tcase(suite, fault_rules());
    suite_add_tcase(suite, fault_trade());
    suite_add_tcase(suite, fault_cautious());
    suite_add_tcase(suite, fault_energies());
    suite_add_tcase(suite, fault_known());
    suite_add_tcase(suite, fault_said());
    return run_suite(suite);
}
