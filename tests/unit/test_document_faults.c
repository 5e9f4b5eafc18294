/* Memory that runs out at any point: a whole document or none, never half of one; and the same plan twice gives the
 * same bytes. */
#include "document_suites.h"
#include "plan_fixture.h"
#include "sweep_depth.h"

#include "documents/papers/papers_private.h"

#include <cjson/cJSON.h>
#include <libxml/tree.h>
#include <libxml/xmlmemory.h>

#include <stdlib.h>
#include <string.h>

enum { WRITERS = 6, JSON = 4, TRIES_MOST = 200000 };

static struct Bytes write_one(int writer, struct Arena *arena, const struct Plan *plan, const struct PartsList *parts)
{
    switch (writer) {
    case 0: return document_plan_xml(arena, plan, parts);
    case 1: return document_diagram_svg(arena, plan, parts, LANGUAGE_ENGLISH);
    case 2: return document_parts_csv(arena, parts, VERDICT_FAIL, "0B8D-48AD");
    case 3: return document_summary_text(arena, plan, parts, true);
    case JSON: return document_plan_json(arena, plan, parts);
    default: return document_papers(arena, plan, parts, LANGUAGE_ENGLISH, NULL, 0).pages[PAPER_PACK];
    }
}

static bool same(struct Bytes a, struct Bytes b)
{
    return a.data != NULL && b.data != NULL && a.length == b.length && memcmp(a.data, b.data, a.length) == 0;
}

START_TEST(same_plan_same_bytes)
{
    struct Arena *first = arena_new(), *second = arena_new();
    const int step = _i == WRITERS - 1 ? sweep_depth(4, 1) : 1; /* the papers take the longest */
    for (int kind = 0; kind < FIXTURE_COUNT; kind += step) {
        const struct Plan *a = fixture_plan(first, (enum FixtureKind)kind),
                          *b = fixture_plan(second, (enum FixtureKind)kind);
        ck_assert(
            same(write_one(_i, first, a, fixture_parts(first, a)), write_one(_i, second, b, fixture_parts(second, b))));
    }
    arena_free(first);
    arena_free(second);
}
END_TEST

/* Every block of the arena refused in turn. */
START_TEST(arena_runs_out)
{
    struct Arena *plans = arena_new();
    const struct Plan *plan = fixture_plan(plans, FIXTURE_RUNS);
    const struct PartsList *parts = fixture_parts(plans, plan);
    struct Bytes whole = write_one(_i, plans, plan, parts);
    bool failed = false, succeeded = false;
    for (long blocks = 0; blocks < TRIES_MOST && !succeeded; blocks++) {
        struct Arena *arena = arena_new();
        ck_assert_ptr_nonnull(arena);
        arena_fail_after(arena, blocks);
        struct Bytes bytes = write_one(_i, arena, plan, parts);
        succeeded = bytes.data != NULL;
        failed = failed || !succeeded;
        ck_assert(!succeeded || same(bytes, whole));
        arena_free(arena);
    }
    ck_assert(failed && succeeded);
    arena_free(plans);
}
END_TEST

/* libxml2's own memory: its hooks carry no context. */
static long allocations_left = -1;
static bool fail_all_later;
static bool was_refused; /* one of them was, ever: that none is left to give does not say so */

static bool refused(void)
{
    if (allocations_left < 0) {
        return false;
    }
    if (allocations_left == 0) {
        if (!fail_all_later) {
            allocations_left = -1;
        }
        was_refused = true;
        return true;
    }
    allocations_left--;
    return false;
}

static void *failing_malloc(size_t size)
{
    return refused() ? NULL : malloc(size);
}

static void *failing_realloc(void *memory, size_t size)
{
    return refused() ? NULL : realloc(memory, size);
}

static char *failing_strdup(const char *text)
{
    size_t size = strlen(text) + 1;
    char *copy = failing_malloc(size);
    return copy == NULL ? NULL : memcpy(copy, text, size);
}

/* The plan as templates read it, as bytes. */
static struct Bytes tree_saved(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts)
{
    const struct Words words = {.language = LANGUAGE_ENGLISH, .medium = MEDIUM_SIGNS};
    struct XmlOut *out = papers_tree(arena, plan, parts, (struct PapersWith){NULL, NULL}, &words, "0B8D-48AD", true);
    xmlDocPtr tree = xml_out_tree(out);
    xmlChar *bytes = NULL;
    int length = 0;
    allocations_left = -1; /* saving is the test's own */
    if (tree != NULL) {
        xmlDocDumpMemory(tree, &bytes, &length);
    }
    const char *text = bytes == NULL ? NULL : arena_text(arena, (const char *)bytes, (size_t)length);
    xmlFree(bytes);
    xmlFreeDoc(tree);
    return (struct Bytes){text, (size_t)length};
}

/* One allocation refused, or it and all after it: nothing, or the whole tree. The sample tries the first ones and
 * then one in nineteen: a number that the writers' own rhythm does not share. */
START_TEST(library_runs_out)
{
    ck_assert_int_eq(xmlMemSetup(free, failing_malloc, failing_realloc, failing_strdup), 0);
    struct Arena *plans = arena_new();
    const struct Plan *plan = fixture_plan(plans, FIXTURE_TWO);
    const struct PartsList *parts = fixture_parts(plans, plan);
    struct Bytes whole = tree_saved(plans, plan, parts);
    ck_assert_ptr_nonnull(whole.data);
    fail_all_later = _i > 0;
    bool reached = true;
    long at = 0, tried = 0, lost = 0;
    for (; reached && at < TRIES_MOST; at += at < 60 ? 1 : sweep_depth(19, 1)) {
        struct Arena *arena = arena_new();
        ck_assert_ptr_nonnull(arena);
        allocations_left = at;
        was_refused = false;
        struct Bytes bytes = tree_saved(arena, plan, parts);
        reached = was_refused;
        allocations_left = -1;
        lost += bytes.data == NULL;
        tried++;
        ck_assert_msg(bytes.data == NULL || same(bytes, whole), "allocation %ld: a wrong tree", at);
        arena_free(arena);
    }
    ck_assert_int_gt(tried, 100);
    ck_assert_int_gt(lost, 100);
    arena_free(plans);
}
END_TEST

/* The same of cJSON's, which has hooks as bare. */
START_TEST(json_library_runs_out)
{
    struct Arena *plans = arena_new();
    const struct Plan *plan = fixture_plan(plans, FIXTURE_TWO);
    const struct PartsList *parts = fixture_parts(plans, plan);
    const struct Bytes whole = write_one(JSON, plans, plan, parts);
    ck_assert_ptr_nonnull(whole.data);
    cJSON_InitHooks(&(cJSON_Hooks){failing_malloc, free});
    fail_all_later = _i > 0;
    long lost = 0;
    bool reached = true;
    for (long at = 0; reached && at < TRIES_MOST; at += at < 60 ? 1 : sweep_depth(19, 1)) {
        struct Arena *arena = arena_new();
        allocations_left = at;
        was_refused = false;
        const struct Bytes bytes = write_one(JSON, arena, plan, parts);
        reached = was_refused;
        allocations_left = -1;
        lost += bytes.data == NULL;
        ck_assert_msg(bytes.data == NULL ? reached : !reached && same(bytes, whole), "allocation %ld", at);
        arena_free(arena);
    }
    cJSON_InitHooks(NULL);
    ck_assert_int_gt(lost, 60);
    arena_free(plans);
}
END_TEST

/* The address sanitizer ends the program itself when so much is asked for. */
#if defined(__has_feature)
#if __has_feature(address_sanitizer)
#define ASKS_TOO_MUCH 0
#endif
#endif
#if defined(__SANITIZE_ADDRESS__)
#define ASKS_TOO_MUCH 0
#endif
#ifndef ASKS_TOO_MUCH
#define ASKS_TOO_MUCH 1
#endif

/* A stand-in for a program's exit, so that the test goes on. */
static void give_up(void)
{
    exit(7);
}

START_TEST(guard_gives_up)
{
    documents_guard_memory(give_up);
    documents_begin();
    void *refuses = xmlMalloc((size_t)-1 / 2);
    ck_assert_msg(refuses == NULL && refuses != NULL, "the guard let it through");
}
END_TEST

Suite *suite_document_faults(void)
{
    Suite *suite = suite_create("document faults");
    TCase *tests = tcase_create("memory");
    tcase_set_timeout(tests, 300);
    tcase_add_loop_test(tests, same_plan_same_bytes, 0, WRITERS);
    tcase_add_loop_test(tests, arena_runs_out, 0, WRITERS);
    tcase_add_loop_test(tests, library_runs_out, 0, 2);
    tcase_add_loop_test(tests, json_library_runs_out, 0, 2);
    suite_add_tcase(suite, tests);
    TCase *guard = tcase_create("guard");
    if (ASKS_TOO_MUCH && (getenv("CK_FORK") == NULL || strcmp(getenv("CK_FORK"), "no") != 0)) {
        tcase_add_exit_test(guard, guard_gives_up, 7);
    }
    suite_add_tcase(suite, guard);
    return suite;
}
