/* Every entry of every catalogue, said in both media with what its holes take: no template leaves a trace of itself,
 * and whoever adds one need not say it to see how it reads. */
#include "run_suite.h"
#include "words/words_private.h"

#include <string.h>

static const struct Words media[] = {
    {.medium = MEDIUM_PLAIN}, {.medium = MEDIUM_SIGNS}, {.medium = MEDIUM_SIGNS, .thousands = true, .together = true}};

/* How an entry is filled: with everything, by counts of every plural form, and with what may be left out left out. */
struct Filling {
    int count;
    bool bare;
};
static const struct Filling fillings[] = {{1, false}, {2, false}, {5, false}, {22, false}, {1, true}, {5, true}};

/* What a hole takes: a count where a form or a bare figure hangs on it, nothing where its place may be empty. */
static struct SayArg argument(const char *text, int index, const struct Filling *filling)
{
    struct SayArg arg = say_name("name");
    struct Hole hole;
    for (const char *at = strchr(text, '{'); at != NULL; at = strchr(at + hole.length, '{')) {
        ck_assert_msg(hole_read(at, &hole), "%s", text);
        if (hole.kind < HOLE_WHOLE || hole.index != index) {
            continue;
        }
        if (hole.kind == HOLE_FORMS || hole.kind == HOLE_FIGURE) {
            return say_count(filling->count);
        }
        if (hole.lead.length > 0 && filling->bare) {
            arg = say_part(NULL);
        }
    }
    return arg;
}

static const char *filled(struct Arena *arena, const struct Wording *wording, const struct Words *words, int id,
                          const struct Filling *filling)
{
    struct SayArg args[SAY_ARGS_MOST + 1];
    unsigned used;
    int count = 0;
    template_fault(wording->texts[id], wording->forms, &used);
    for (; (used >> count) != 0; count++) {
        args[count] = argument(wording->texts[id], count, filling);
    }
    args[count] = (struct SayArg){.kind = SAY_ARG_END};
    return words_in(arena, wording, words, say_made(arena, (enum Saying)id, args));
}

/* What no sentence has: blanks astray, and braces but for one that a template means. */
static const char *trace_in(const char *text)
{
    static const char *const traces[] = {"  ", " .", " ,", " ;", " :", " )", "( ", "{", "}", "()", ",,", "..."};
    for (size_t i = 0; i < sizeof traces / sizeof traces[0]; i++) {
        if (strstr(text, traces[i]) != NULL) {
            return traces[i];
        }
    }
    const size_t length = strlen(text);
    return length == 0 ? "nothing" : text[0] == ' ' || text[length - 1] == ' ' ? "a blank at an end" : NULL;
}

/* Units and signs are holes, and so are keys of the route file: on paper none may stand as it is typed. */
static const char *typed_in(const char *text)
{
    static const char *const typed[] = {"mm2", "degC", " ohm", "Mohm", "K.m", "A2 s", "^2", "10^6", "sqrt"};
    for (size_t i = 0; i < sizeof typed / sizeof typed[0]; i++) {
        const char *at = strstr(text, typed[i]);
        const char after = at == NULL ? '\0' : at[strlen(typed[i])];
        if (at != NULL && (after < 'a' || after > 'z')) { /* "ohms" is a word */
            return typed[i];
        }
    }
    static const char *const keys[] = {
        "(beside", "(bends: ", "(cable: ",  "(device: ", "(duct: ",     "(earthing: ", "(feeds: ", "(finish: ",
        "(job: ",  "(load: ",  "(material", "(pull: ",   "(segments: ", "(size)",      "(start: ", "(supply: "};
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++) {
        if (strstr(text, keys[i]) != NULL) {
            return keys[i];
        }
    }
    for (const char *at = strstr(text, " x "); at != NULL; at = strstr(at + 1, " x ")) {
        if (at > text && at[-1] >= '0' && at[-1] <= '9') {
            return " x ";
        }
    }
    return NULL;
}

static void check_entry(const struct Wording *wording, int id)
{
    struct Arena *arena = arena_new();
    for (size_t f = 0; f < sizeof fillings / sizeof fillings[0]; f++) {
        for (size_t m = 0; m < sizeof media / sizeof media[0]; m++) {
            const char *text = filled(arena, wording, &media[m], id, &fillings[f]);
            const char *trace = trace_in(text);
            ck_assert_msg(trace == NULL, "%s: \"%s\" comes out with \"%s\" in it: %s", wording->code,
                          wording->texts[id], trace, text);
            const char *typed = media[m].medium == MEDIUM_SIGNS ? typed_in(text) : NULL;
            ck_assert_msg(typed == NULL, "%s: on paper \"%s\" has \"%s\", which is a hole: %s", wording->code,
                          wording->texts[id], typed, text);
        }
    }
    arena_free(arena);
}

START_TEST(no_template_leaves_a_trace)
{
    const struct Wording *wording = words_wording((enum Language)_i);
    for (int id = SAY_NOTHING + 1; id < SAYINGS; id++) {
        if (!words_lacks((enum Language)_i, (enum Saying)id)) {
            check_entry(wording, id);
        }
    }
}
END_TEST

START_TEST(traces_are_seen)
{
    static const char *const bad[] = {"", " a", "a ", "a  b", "a .", "a ,b", "a {0}", "a )", "( a", "a ()", "so..."};
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        ck_assert_msg(trace_in(bad[i]) != NULL, "\"%s\"", bad[i]);
    }
    ck_assert_ptr_null(trace_in("Fit it (16 A), then look: yes / no."));
    ck_assert_ptr_nonnull(typed_in("4 mm2"));
    ck_assert_ptr_nonnull(typed_in("no. 10 x 50 mm"));
    ck_assert_ptr_nonnull(typed_in("not surveyed (job: location)."));
    ck_assert_ptr_null(typed_in("r cos + x sin, no. 10 \u00d7 50 mm"));
}
END_TEST

/* Sayings whose English is another's as well, and why they are two. Of any that read alike all but one stand here. */
static const struct Twice {
    enum Saying id;
    const char *why;
} twice[] = {
    {SAY_NAMES_AND_MORE, "stretches, where the other has runs: of another gender elsewhere"},
    {SAY_END_OF_RUN, "a run with its end: in another order elsewhere"},
    {SAY_PIECE, "a piece with its length"},
    {SAY_CABLE_OF_SIZE, "a size before its cable"},
    {SAY_AMOUNT_BY_CODE, "a number before a code"},
    {SAY_STEP_FOR_SO_MANY, "for how many, where the other has for whom"},
    {SAY_CORE_UNSLEEVED, "no sleeve"},
    {SAY_NO_FACTORS, "no factor"},
    {SAY_LEAD_NO_LIST, "no price list"},
    {SAY_COSTS_HARMONICS, "what costs capacity, where the other is a fact of a load"},
    {SAY_PATH_ARMOUR, "what a fault returns through: another case elsewhere"},
    {SAY_PATH_CORE, "the same"},
    {SAY_LABEL_RULES, "a label of a template, which takes all of its topic"},
    {SAY_LABEL_ALLOWED, "the same"},
    {SAY_LABEL_WARNING, "the same"},
    {SAY_PULL_FRICTION_AS_SURVEYED, "a friction, where the other is a figure"},
    {SAY_AISLE_CABLE, "of many, where the other is a run's"},
    {SAY_FACT_DROP, "a fact of a run, where the other is a check"},
    {SAY_PRACTICE, "where a caution is from, and not a step"},
    {SAY_CABLE_OF_KIND, "a kind"},
    {SAY_PART_MADE_OF, "a material"},
    {SAY_FOUND_METAL, "metal that is found, where the other is made of it"},
    {SAY_SHEET_LOAD, "a heading of the drawing, where the other leads a line"},
    {SAY_LABEL_RESULT, "a label of a template, which takes all of its topic"},
    {SAY_BAND_DEVICE, "a line across the drawing, where the other is one of a chart"},
    {SAY_BAND_LOAD, "the same, where the other is a step of a calculation"},
    {SAY_BAND_CAUTIONS, "a band of the drawing"},
    {SAY_LEAD_RULES, "leads a line of the terminal"},
    {SAY_LABEL_STRETCH, "a label of a template, which takes all of its topic"},
    {SAY_LABEL_LIMIT, "the same"},
    {SAY_LABEL_MIND, "the same"},
    {SAY_ARTICLE_WITH_STANDARD, "an article with its standard"},
    {SAY_COLUMN_RESULT, "over a column, where the other leads a line"},
};

static bool is_listed(enum Saying id)
{
    for (size_t i = 0; i < sizeof twice / sizeof twice[0]; i++) {
        if (twice[i].id == id) {
            return true;
        }
    }
    return false;
}

START_TEST(nothing_is_in_the_catalogue_twice)
{
    const char *const *texts = words_wording(LANGUAGE_ENGLISH)->texts;
    bool used[SAYINGS] = {false};
    for (int a = SAY_NOTHING + 1; a < SAYINGS; a++) {
        for (int b = SAY_NOTHING + 1; b < a; b++) {
            if (strcmp(texts[a], texts[b]) == 0) {
                ck_assert_msg(is_listed((enum Saying)a) || is_listed((enum Saying)b), "\"%s\" is in it twice",
                              texts[a]);
                used[a] = used[b] = true;
            }
        }
    }
    for (size_t i = 0; i < sizeof twice / sizeof twice[0]; i++) {
        ck_assert_msg(used[twice[i].id], "no other reads \"%s\"", texts[twice[i].id]);
        ck_assert_str_ne(twice[i].why, "");
    }
}
END_TEST

/* The reader's word for a piece of the way is segment. */
START_TEST(a_stretch_is_a_segment)
{
    static const char *const texts[] = {
#define WORD(id, english) english,
#include "words/en/catalogue.inc"
#undef WORD
    };
    ck_assert_uint_gt(sizeof texts / sizeof texts[0], 500);
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ck_assert_msg(strstr(texts[i], "stretch") == NULL, "%s", texts[i]);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sayings");
    TCase *tests = tcase_create("sayings");
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, no_template_leaves_a_trace, 0, LANGUAGES);
    tcase_add_test(tests, traces_are_seen);
    tcase_add_test(tests, a_stretch_is_a_segment);
    tcase_add_test(tests, nothing_is_in_the_catalogue_twice);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
