/* memory_sweep ROUTE PERCENT: makes plan, papers and order of a route again and again, each time with one allocation
 * that fails, or with all from one on, in whatever library; PERCENT of all places are tried. Whatever is given out must
 * be byte for byte what is given out when nothing fails, and nothing may crash. Prints how often what came of it. Of
 * the decision, which plans again and again, every place is tried, of the day, which simulates, too
 * from a tenth of a percent on. */
#include "wend/wend.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* NOLINTBEGIN(bugprone-reserved-identifier, readability-inconsistent-declaration-parameter-name): the C library's names
 */
extern void *__libc_malloc(size_t size);
extern void *__libc_calloc(size_t count, size_t size);
extern void *__libc_realloc(void *memory, size_t size);

static long asked, fail_at; /* 0: none fails */
static int and_after;

static int fails(void)
{
    asked++;
    const int so = fail_at > 0 && (asked == fail_at || (and_after && asked > fail_at));
    errno = so ? ENOMEM : errno;
    return so;
}

void *malloc(size_t size)
{
    return fails() ? NULL : __libc_malloc(size);
}

void *calloc(size_t count, size_t size)
{
    return fails() ? NULL : __libc_calloc(count, size);
}

void *realloc(void *memory, size_t size)
{
    return fails() ? NULL : __libc_realloc(memory, size);
}
/* NOLINTEND(bugprone-reserved-identifier, readability-inconsistent-declaration-parameter-name) */

enum { PIECES = 5, WRONG = -1, NOTHING, SOME, ALL };
static const enum WendDocument documents[] = {WEND_PLAN_XML, WEND_BRIEF_HTML, WEND_SUMMARY_TEXT};

struct Made {
    char *text[PIECES];
    size_t length[PIECES];
};

static void keep(struct Made *made, int piece, struct WendBytes bytes)
{
    const long before = fail_at; /* what this program keeps for itself does not fail */
    fail_at = 0;
    made->text[piece] = NULL;
    if (bytes.data != NULL) {
        made->text[piece] = __libc_malloc(bytes.length + 1);
        memcpy(made->text[piece], bytes.data, bytes.length);
        made->length[piece] = bytes.length;
    }
    fail_at = before;
}

static struct Made make(const char *text, size_t length)
{
    struct Made made = {.text = {NULL}};
    struct Wend *wend = wend_plan("route", text, length);
    for (int i = 0; i < 3; i++) {
        keep(&made, i, wend_document(wend, documents[i]));
    }
    struct Wend *routes[] = {wend};
    struct WendOrder *order = wend == NULL ? NULL : wend_order(routes, 1, NULL, 0, "2026-05-14");
    for (int i = 0; i < 2; i++) {
        keep(&made, 3 + i, wend_order_document(order, i == 0 ? WEND_ORDER_CSV : WEND_ORDER_XML));
    }
    wend_order_free(order);
    wend_free(wend);
    return made;
}

static int judge(struct Made *made, const struct Made *right)
{
    int there = 0, wrong = 0;
    for (int i = 0; i < PIECES; i++) {
        if (made->text[i] != NULL) {
            there++;
            wrong += made->length[i] != right->length[i] || memcmp(made->text[i], right->text[i], made->length[i]) != 0;
            free(made->text[i]);
        }
    }
    return wrong > 0 ? WRONG : there == 0 ? NOTHING : there < PIECES ? SOME : ALL;
}

enum Answer { DECISION, DAY, CALENDAR, ANSWERS };
static const char *const answers[ANSWERS] = {"decision", "day", "calendar"};

static struct WendBytes answered(struct Wend *wend, enum Answer answer)
{
    static const struct WendDay day = {2, 1, "2026-05-14"};
    const struct WendBytes figures = wend_labour_built_in();
    if (answer == DECISION) {
        return wend_decision(wend, "", false);
    }
    wend_labour(wend, figures.data, figures.length);
    return wend_day(wend, &day, answer == DAY ? WEND_DAY_TEXT : WEND_DAY_ICALENDAR);
}

/* One answer alone, with memory that fails from `at` on or once; 0: never. */
static struct Made ask(const char *text, size_t length, enum Answer answer, long at)
{
    struct Made made = {.text = {NULL}};
    struct Wend *wend = wend_plan("route", text, length);
    asked = 0;
    fail_at = at;
    keep(&made, 0, answered(wend, answer));
    fail_at = 0;
    wend_free(wend);
    return made;
}

/* How many places, `step` apart, give out another answer than the right one, or one without memory for it. */
static long wrong_answers(const char *text, size_t length, enum Answer answer, long step)
{
    const struct Made right = ask(text, length, answer, 0);
    const long all = asked;
    long wrong = right.text[0] == NULL || all < 1;
    for (long at = 1; right.text[0] != NULL && at <= all; at += step) {
        for (and_after = 0; and_after < 2; and_after++) {
            struct Made made = ask(text, length, answer, at);
            const int what = judge(&made, &right);
            if (what == WRONG || (and_after && what != NOTHING)) {
                printf("wrong %s with allocation %ld of %ld %s\n", answers[answer], at, all,
                       and_after ? "and all after it" : "");
                wrong++;
            }
        }
    }
    printf("%ld allocations of a %s: wrong %ld\n", all, answers[answer], wrong);
    return wrong;
}

int main(int argc, char *argv[])
{
    static char text[1 << 20];
    FILE *file = argc == 3 ? fopen(argv[1], "r") : NULL;
    if (file == NULL) {
        return 2;
    }
    const size_t length = fread(text, 1, sizeof text, file);
    fclose(file);
    asked = 0;
    const struct Made first = make(text, length);
    asked = 0;
    const struct Made right = make(text, length); /* what is set up once is set up by now */
    const long all = asked;
    const long tries = (long)((double)all * strtod(argv[2], NULL) / 100);
    long came[4] = {0};
    for (long i = 0; i < tries; i++) {
        for (and_after = 0; and_after < 2; and_after++) {
            asked = 0;
            fail_at = 1 + (long)((double)i * (double)all / (double)tries);
            struct Made made = make(text, length);
            const long at = fail_at;
            fail_at = 0;
            const int what = judge(&made, &right);
            came[what == WRONG ? 3 : what]++;
            if (what == WRONG) {
                printf("wrong with allocation %ld %s\n", at, and_after ? "and all after it" : "");
            }
            if (and_after && what == ALL) {
                printf("all made without memory from allocation %ld on\n", at);
                came[3]++;
            }
        }
    }
    for (int i = 0; i < PIECES; i++) {
        if (right.text[i] == NULL || first.text[i] == NULL || first.length[i] != right.length[i]) {
            printf("piece %d is not there when all is well\n", i);
            came[3]++;
        }
    }
    for (int i = 0; i < ANSWERS; i++) {
        came[3] += wrong_answers(text, length, (enum Answer)i, i == DECISION || strtod(argv[2], NULL) >= 0.1 ? 1 : 29);
    }
    printf("%ld allocations, %ld places tried twice: nothing made %ld, some %ld, all %ld, wrong %ld\n", all, tries,
           came[NOTHING], came[SOME], came[ALL], came[3]);
    return came[3] == 0 && tries > 0 && came[SOME] > 0 ? 0 : 1;
}
