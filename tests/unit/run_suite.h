/** Runs a Check suite; fails also when nothing was run, which a mistyped filter would otherwise hide. */
#ifndef WEND_RUN_SUITE_H
#define WEND_RUN_SUITE_H

#include <check.h>
#include <stdio.h>
#include <stdlib.h>

static inline int run_suite(Suite *suite)
{
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    const int run = srunner_ntests_run(runner);
    const int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    if (run == 0) {
        fputs("no test was run\n", stderr);
    }
    return failed == 0 && run > 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

#endif
