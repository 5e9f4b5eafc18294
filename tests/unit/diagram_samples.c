/* Draws many routes by lot, for the rendering test: diagram_samples FOLDER COUNT
 * The first has 1 stretch and the last 200. */
#include "plan_fixture.h"

#include "documents/documents.h"

#include <stdio.h>
#include <stdlib.h>

static bool draw_one(const char *folder, int index, int segments)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = arena == NULL ? NULL : fixture_random(arena, segments, (unsigned)index + 5000);
    struct Bytes bytes = {NULL, 0};
    if (plan != NULL) {
        bytes = document_diagram_svg(arena, plan, fixture_work(arena, plan), LANGUAGE_ENGLISH);
    }
    char path[512];
    int length = snprintf(path, sizeof path, "%s/by-lot-%03d.svg", folder, index);
    FILE *file = bytes.data != NULL && length > 0 && (size_t)length < sizeof path ? fopen(path, "wb") : NULL;
    bool written = file != NULL && fwrite(bytes.data, 1, bytes.length, file) == bytes.length;
    written = file != NULL && fclose(file) == 0 && written;
    arena_free(arena);
    return written;
}

int main(int argc, char **argv)
{
    enum { LONGEST = 200, COUNT_MOST = 1000 };
    long count = argc == 3 ? strtol(argv[2], NULL, 10) : 0;
    if (count < 2 || count > COUNT_MOST) {
        fprintf(stderr, "usage: diagram_samples FOLDER COUNT\n");
        return EXIT_FAILURE;
    }
    for (int i = 0; i < (int)count; i++) {
        /* most ways are short: the lengths grow with the square */
        int segments = 1 + i * i * (LONGEST - 1) / (((int)count - 1) * ((int)count - 1));
        if (!draw_one(argv[1], i, segments)) {
            fprintf(stderr, "no diagram of %d stretches\n", segments);
            return EXIT_FAILURE;
        }
    }
    return EXIT_SUCCESS;
}
