/* main() of the orders' tests; the suites are in files of their own. */
#include "order_rig.h"

#include <stdlib.h>

int main(void)
{
    SRunner *runner = srunner_create(suite_order_merge());
    srunner_add_suite(runner, suite_order_cut());
    srunner_add_suite(runner, suite_order_prices());
    srunner_add_suite(runner, suite_order_read());
    srunner_add_suite(runner, suite_order_documents());
    srunner_add_suite(runner, suite_order_library());
    srunner_run_all(runner, CK_NORMAL);
    const int run = srunner_ntests_run(runner), failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return run > 0 && failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
