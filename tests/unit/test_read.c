/* The reader's tests: main() only. */
#include "test_read.h"

#include "run_suite.h"

int main(void)
{
    Suite *suite = suite_create("read");
    suite_add_tcase(suite, read_good_tests());
    suite_add_tcase(suite, read_defaults_tests());
    suite_add_tcase(suite, read_values_tests());
    suite_add_tcase(suite, read_ranges_tests());
    suite_add_tcase(suite, read_faults_tests());
    suite_add_tcase(suite, read_bulk_tests());
    suite_add_tcase(suite, read_format_tests());
    suite_add_tcase(suite, read_digest_tests());
    return run_suite(suite);
}
