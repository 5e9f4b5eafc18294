/* Bends, ducts, drawing in and sag. The program's own functions are put to the published tables
 * (test_mechanics_tables.c), to examples that others published (test_mechanics_cases.c), to sums worked by hand
 * (test_mechanics_worked.c), and the checks to made-up ways (test_mechanics_bends.c, _ducts.c, _pulls.c). */
#include "mechanics_rig.h"

#include "run_suite.h"

int main(void)
{
    Suite *const suites[] = {suite_mechanics_tables(), suite_mechanics_cases(), suite_mechanics_worked(),
                             suite_mechanics_bends(),  suite_mechanics_ducts(), suite_mechanics_pulls()};
    int failed = 0;
    for (size_t i = 0; i < sizeof suites / sizeof suites[0]; i++) {
        failed += run_suite(suites[i]) != EXIT_SUCCESS;
    }
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
