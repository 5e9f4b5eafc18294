/* main() of the documents' tests; the suites are in files of their own. */
#include "document_suites.h"

#include <stdlib.h>

int main(void)
{
    SRunner *runner = srunner_create(suite_plan_xml());
    srunner_add_suite(runner, suite_parts_csv());
    srunner_add_suite(runner, suite_summary());
    srunner_add_suite(runner, suite_diagram());
    srunner_add_suite(runner, suite_diagram_svg());
    srunner_add_suite(runner, suite_document_faults());
    srunner_add_suite(runner, suite_papers());
    srunner_run_all(runner, CK_NORMAL);
    const int run = srunner_ntests_run(runner), failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return run > 0 && failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
