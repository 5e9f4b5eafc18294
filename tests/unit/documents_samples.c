/* Writes the documents of every fixture into a folder, for looking at and for the rendering tests:
 * documents_samples FOLDER */
#include "plan_fixture.h"

#include "documents/documents.h"

#include <stdio.h>
#include <stdlib.h>

static bool write_file(const char *folder, const char *name, const char *ending, struct Bytes bytes)
{
    char path[512];
    int length = snprintf(path, sizeof path, "%s/%s%s", folder, name, ending);
    if (bytes.data == NULL || length < 0 || (size_t)length >= sizeof path) {
        fprintf(stderr, "no document %s%s\n", name, ending);
        return false;
    }
    FILE *file = fopen(path, "wb");
    if (file == NULL) {
        perror(path);
        return false;
    }
    bool written = fwrite(bytes.data, 1, bytes.length, file) == bytes.length;
    return fclose(file) == 0 && written;
}

static bool write_papers(const char *folder, const char *name, struct Arena *arena, const struct Plan *plan,
                         const struct PartsList *parts)
{
    static const char *const endings[PAPER_COUNT] = {".brief.html", ".parts.html", ".design.html",   ".test.html",
                                                     ".pack.html",  ".card.html",  ".readings.html", ".as-laid.html"};
    const struct Papers papers = document_papers(arena, plan, parts, LANGUAGE_ENGLISH, NULL, 0);
    bool good = true;
    for (int i = 0; i < PAPER_COUNT; i++) {
        good = (!paper_is_due(plan, (enum Paper)i) || write_file(folder, name, endings[i], papers.pages[i])) && good;
    }
    if (papers.fault.diag != NULL) {
        fputs(diag_print(papers.fault.diag, arena, papers.fault.file, papers.fault.bytes), stderr);
    }
    return good;
}

static bool write_plan(const char *folder, const char *name, struct Arena *arena, const struct Plan *plan)
{
    const struct PartsList *parts = plan == NULL ? NULL : fixture_parts(arena, plan);
    if (parts == NULL) {
        return false;
    }
    return write_file(folder, name, ".svg", document_diagram_svg(arena, plan, parts, LANGUAGE_ENGLISH)) &&
           write_file(folder, name, ".xml", document_plan_xml(arena, plan, parts)) &&
           write_file(folder, name, ".csv", document_parts_csv(arena, parts, VERDICT_FAIL, "0B8D-48AD")) &&
           write_file(folder, name, ".txt", document_summary_text(arena, plan, parts, false)) &&
           write_papers(folder, name, arena, plan, parts);
}

int main(int argc, char **argv)
{
    if (argc != 2) {
        fprintf(stderr, "usage: documents_samples FOLDER\n");
        return EXIT_FAILURE;
    }
    bool good = true;
    for (int kind = 0; kind < FIXTURE_COUNT; kind++) {
        struct Arena *arena = arena_new();
        if (arena == NULL) {
            return EXIT_FAILURE;
        }
        good = write_plan(argv[1], fixture_name((enum FixtureKind)kind), arena,
                          fixture_plan(arena, (enum FixtureKind)kind)) &&
               good;
        arena_free(arena);
    }
    static const int counts[] = {1, 3, 6, 10, 17, 40};
    for (size_t i = 0; i < sizeof counts / sizeof counts[0]; i++) {
        struct Arena *arena = arena_new();
        if (arena == NULL) {
            return EXIT_FAILURE;
        }
        char name[32];
        snprintf(name, sizeof name, "lot-%d", counts[i]);
        good = write_plan(argv[1], name, arena, fixture_random(arena, counts[i], (unsigned)i + 11)) && good;
        arena_free(arena);
    }
    return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
