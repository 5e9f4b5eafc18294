/* Bends, ducts and drawing in on whole routes: main() only. */
#include "mechanics_route.h"
#include "run_suite.h"

int main(void)
{
    Suite *suite = suite_create("mechanics of routes");
    suite_add_tcase(suite, mechanics_choice_tests());
    suite_add_tcase(suite, mechanics_keys_tests());
    suite_add_tcase(suite, mechanics_legs_tests());
    suite_add_tcase(suite, mechanics_together_tests());
    return run_suite(suite);
}
