#include "plan_routes.h"

#include <check.h>
#include <glob.h>
#include <stdio.h>
#include <stdlib.h>

/* A route of a file as the program plans it, without prices. */
static struct Wend *plan_of(const char *path)
{
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "no %s", path);
    static char text[WEND_TEXT_MOST_BYTES];
    const size_t length = fread(text, 1, sizeof text, file);
    fclose(file);
    return wend_plan("route", text, length);
}

int for_plans(size_t step, void (*look)(const char *path, struct Wend *wend))
{
    static const char *const folders[] = {TESTS_FOLDER "/found/*.yaml", ROUTES_FOLDER "/*.yaml",
                                          ROUTES_FOLDER "/starters/*.yaml", TESTS_FOLDER "/golden/*.yaml",
                                          TESTS_FOLDER "/unit/read_good.yaml"};
    int planned = 0;
    for (size_t i = 0; i < sizeof folders / sizeof folders[0]; i++) {
        glob_t found;
        ck_assert_int_eq(glob(folders[i], 0, NULL, &found), 0);
        for (size_t k = 0; k < found.gl_pathc; k += i == 0 ? step : 1) {
            struct Wend *wend = plan_of(found.gl_pathv[k]);
            if (wend_status(wend) <= WEND_CHECK_FAILS) {
                look(found.gl_pathv[k], wend);
                planned++;
            }
            wend_free(wend);
        }
        globfree(&found);
    }
    return planned;
}
