/* The papers and their templates: what a firm may change, and what a template is never given. */
#include "document_suites.h"
#include "plan_fixture.h"

#include "documents/documents.h"
#include "documents/papers/papers_private.h"
#include "words/words_private.h"

#include <stdio.h>
#include <string.h>

#define HEAD "<xsl:stylesheet version=\"1.0\" xmlns:xsl=\"http://www.w3.org/1999/XSL/Transform\">\n"
#define TAIL "</xsl:stylesheet>\n"
/* In place of the brief's own template. */
#define BRIEF(inner) HEAD "<xsl:template match=\"plan\" mode=\"brief\">\n" inner "\n</xsl:template>\n" TAIL

static struct Template file(const char *name, const char *path, const char *text)
{
    return (struct Template){name, path, {text, strlen(text)}};
}

static const char *told_of(struct Arena *arena, struct PaperFault fault)
{
    return fault.diag == NULL ? "" : diag_print(fault.diag, arena, fault.file, fault.bytes);
}

static bool holds(struct Bytes page, const char *text)
{
    const size_t length = strlen(text);
    for (size_t at = 0; at + length <= page.length; at++) {
        if (memcmp(page.data + at, text, length) == 0) {
            return true;
        }
    }
    return false;
}

START_TEST(every_fixture_has_its_papers)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, (enum FixtureKind)_i);
    const struct PartsList *parts = fixture_parts(arena, plan);
    const char *mark = document_mark(arena, plan, parts);
    const struct Papers papers = document_papers(arena, plan, parts, LANGUAGE_ENGLISH, NULL, 0);
    ck_assert_str_eq(told_of(arena, papers.fault), "");
    ck_assert_uint_eq(strlen(mark), 9);
    for (int i = 0; i < PAPER_COUNT; i++) {
        if (!paper_is_due(plan, (enum Paper)i)) {
            ck_assert_ptr_null(papers.pages[i].data);
            continue;
        }
        ck_assert_ptr_nonnull(papers.pages[i].data);
        ck_assert(papers.pages[i].length > 5000);
        ck_assert(strncmp(papers.pages[i].data, "<!DOCTYPE html", 14) == 0);
        ck_assert_msg(holds(papers.pages[i], mark), "paper %d of %s lacks its mark", i,
                      fixture_name((enum FixtureKind)_i));
        ck_assert(holds(papers.pages[i], "</html>"));
        /* whatever a name holds, it is text */
        ck_assert(!holds(papers.pages[i], "<script") && !holds(papers.pages[i], "]]>alert"));
        ck_assert(!holds(papers.pages[i], "\xE2\x80\xAE")); /* right-to-left override */
    }
    ck_assert(holds(papers.pages[PAPER_TEST], "no certificate"));
    arena_free(arena);
}
END_TEST

static int times(struct Bytes bytes, const char *text)
{
    int count = 0;
    for (const char *at = strstr(bytes.data, text); at != NULL; at = strstr(at + 1, text)) {
        count++;
    }
    return count;
}

/* A sheet at a time, and one for a phone by segments: all of what the files hold is on the paper, and once. */
START_TEST(the_brief_holds_the_drawings_whole)
{
    static const char *const things[] = {"<text ", "<path ", "<circle ", "<g id=\"sheet-", "<g id=\"strip-"};
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, (enum FixtureKind)_i);
    const struct PartsList *parts = fixture_parts(arena, plan);
    const struct Papers papers = document_papers(arena, plan, parts, LANGUAGE_ENGLISH, NULL, 0);
    const struct Bytes diagram = document_diagram_svg(arena, plan, parts, LANGUAGE_ENGLISH);
    const struct Bytes narrow = document_narrow_svg(arena, plan, parts, LANGUAGE_ENGLISH);
    ck_assert(diagram.length == papers.diagram.length &&
              memcmp(diagram.data, papers.diagram.data, diagram.length) == 0);
    const struct Bytes narrow_drawn = paper_narrow(arena, &papers);
    ck_assert(narrow.length == narrow_drawn.length && memcmp(narrow.data, narrow_drawn.data, narrow.length) == 0);
    ck_assert_str_eq(papers.mark, document_mark(arena, plan, parts));
    for (size_t i = 0; i < sizeof things / sizeof things[0]; i++) {
        ck_assert_int_eq(times(papers.pages[PAPER_BRIEF], things[i]),
                         times(diagram, things[i]) + times(narrow, things[i]));
        ck_assert_int_ge(times(papers.pages[PAPER_PACK], things[i]), times(papers.pages[PAPER_BRIEF], things[i]));
    }
    ck_assert_int_eq(times(papers.pages[PAPER_BRIEF], " role=\"img\""), times(diagram, "<g id=\"sheet-") + 1);
    for (int i = 0; i < PAPER_COUNT; i++) {
        ck_assert(papers.pages[i].data == NULL ||
                  (!holds(papers.pages[i], "data-drawing") && !holds(papers.pages[i], "data-paper") &&
                   !holds(papers.pages[i], "<!--")));
    }
    arena_free(arena);
}
END_TEST

START_TEST(marks_tell_plans_apart)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_RUNS);
    const struct PartsList *parts = fixture_parts(arena, plan);
    const char *mark = document_mark(arena, plan, parts);
    ck_assert_str_eq(mark, document_mark(arena, plan, parts));
    /* one figure, one word, one price, the same word elsewhere */
    struct PlanRun *runs = arena_array(arena, (size_t)plan->run_count, sizeof *runs);
    memcpy(runs, plan->runs, (size_t)plan->run_count * sizeof *runs);
    struct Plan other = *plan;
    other.runs = runs;
    ck_assert_str_eq(mark, document_mark(arena, &other, parts));
    runs[0].size_mm2 += 0.5;
    ck_assert_str_ne(mark, document_mark(arena, &other, parts));
    other = *plan;
    other.rules_edition = "another edition";
    const char *edition = document_mark(arena, &other, parts);
    ck_assert_str_ne(mark, edition);
    other.rules_edition = plan->rules_edition;
    other.rules_text = say(arena, SAY_AS_IS, say_name("another edition"));
    ck_assert_str_ne(edition, document_mark(arena, &other, parts));
    ck_assert_str_ne(mark, document_mark(arena, plan, NULL));
    arena_free(arena);
}
END_TEST

START_TEST(a_firm_changes_what_it_likes)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_TWO);
    const struct Template own[] = {
        file("brief.xsl", "own/brief.xsl",
             BRIEF("<p class=\"ours\">Our brief: <xsl:value-of select=\"job/@title\"/></p>")),
        file("house.css", "own/house.css", "body { color: #123456; clip-path: url(#a); }\n")};
    ck_assert_str_eq(told_of(arena, templates_fault(arena, own, 2)), "");
    const struct Papers papers = document_papers(arena, plan, fixture_parts(arena, plan), LANGUAGE_ENGLISH, own, 2);
    ck_assert_str_eq(told_of(arena, papers.fault), "");
    ck_assert(holds(papers.pages[PAPER_BRIEF], "<p class=\"ours\">Our brief: "));
    ck_assert(holds(papers.pages[PAPER_BRIEF], "#123456"));
    ck_assert(!holds(papers.pages[PAPER_BRIEF], "The day in order"));
    ck_assert(holds(papers.pages[PAPER_PACK], "<p class=\"ours\">Our brief: "));
    ck_assert(holds(papers.pages[PAPER_TEST], "Insulation resistance"));
    arena_free(arena);
}
END_TEST

/* Refused before any route is read, with the file, the line and the reason. */
static const struct {
    const char *name, *text, *told;
} refused[] = {
    {"brief.xsl", "<xsl:stylesheet", "brief.xsl:1:1: error: this template is not XML: "},
    {"brief.xsl", "<html/>", "error: a template begins with <xsl:stylesheet"},
    {"brief.xsl", BRIEF("<xsl:value-of select=\"document('/etc/passwd')\"/>"),
     "brief.xsl:3:1: error: document() is not taken in a template"},
    {"brief.xsl", BRIEF("<p title=\"{ document (&#39;/etc/passwd&#39;)}\"/>"),
     "brief.xsl:3:1: error: document() is not"},
    {"brief.xsl", BRIEF("<xsl:for-each select=\"d&#x6f;cument('http://192.0.2.1/')\"/>"), "document() is not taken"},
    {"brief.xsl", HEAD "<xsl:import href=\"/etc/passwd\"/>\n" TAIL, "brief.xsl:2:1: error: xsl:import is not taken"},
    {"papers.xsl", HEAD "<xsl:include href=\"/etc/passwd\"/>\n" TAIL,
     "papers.xsl:2:1: error: \"/etc/passwd\" is not one of the templates"},
    {"papers.xsl", HEAD "<xsl:include href=\"http://192.0.2.1/a.xsl\"/>\n" TAIL, "is not one of the templates"},
    {"brief.xsl", "<!DOCTYPE x [<!ENTITY e SYSTEM \"/etc/passwd\">]>\n" BRIEF("<p>&e;</p>"),
     "brief.xsl: error: a template takes no DOCTYPE"},
    {"brief.xsl", "<!DOCTYPE x SYSTEM \"/etc/passwd\">\n" BRIEF("<p/>"), "a template takes no DOCTYPE"},
    {"brief.xsl", BRIEF("<exsl:document xmlns:exsl=\"http://exslt.org/common\" href=\"/tmp/out\"/>"),
     "brief.xsl:3:1: error: <exsl:document> is not taken"},
    {"brief.xsl", BRIEF("<xsl:document href=\"/tmp/out\"/>"), "xsl:document is not taken"},
    {"brief.xsl", BRIEF("<x:write xmlns:x=\"http://xml.apache.org/xalan/redirect\" file=\"/tmp/out\"/>"),
     "<x:write> is not taken"},
    {"brief.xsl",
     "<xsl:stylesheet version=\"1.0\" xmlns:xsl=\"http://www.w3.org/1999/XSL/Transform\" "
     "xmlns:s=\"http://icl.com/saxon\" "
     "extension-element-prefixes=\"s\"/>",
     "extension-element-prefixes is not taken"},
    {"brief.xsl", BRIEF("<script>1</script>"), "brief.xsl:3:1: error: <script> is not taken"},
    {"brief.xsl", BRIEF("<iframe/>"), "<iframe> is not taken"},
    {"brief.xsl", BRIEF("<form action=\"http://192.0.2.1/\"><button>x</button></form>"), "<form> is not taken"},
    {"brief.xsl", BRIEF("<LINK rel=\"dns-prefetch\" href=\"//192.0.2.1\"/>"), "<LINK> is not taken"},
    {"brief.xsl", BRIEF("<xsl:value-of disable-output-escaping=\"yes\" select=\"job/@title\"/>"),
     "disable-output-escaping is not taken"},
    {"brief.xsl", BRIEF("\n<xsl:for-each select=\"job[\"><p/></xsl:for-each>"),
     "brief.xsl:4:1: error: this is not XSLT 1.0: "},
    {"brief.xsl", BRIEF("<xsl:no-such/>"), "this is not XSLT 1.0: "},
    {"house.css", "</style><p>", "house.css:1:1: error: < is not accepted"},
    {"other.xsl", BRIEF("<p/>"), "\"other.xsl\" is not one of the templates"},
};
enum { REFUSED = (int)(sizeof refused / sizeof refused[0]) };

START_TEST(what_reads_or_runs_is_refused)
{
    struct Arena *arena = arena_new();
    const struct Template own = file(refused[_i].name, refused[_i].name, refused[_i].text);
    const char *told = told_of(arena, templates_fault(arena, &own, 1));
    ck_assert_msg(strstr(told, refused[_i].told) != NULL, "told is \"%s\"\nnot \"%s\"", told, refused[_i].told);
    const struct Plan *plan = fixture_plan(arena, FIXTURE_TWO);
    const struct Papers papers = document_papers(arena, plan, fixture_parts(arena, plan), LANGUAGE_ENGLISH, &own, 1);
    ck_assert(strcmp(refused[_i].name, "other.xsl") == 0 || papers.pages[PAPER_BRIEF].data == NULL);
    arena_free(arena);
}
END_TEST

/* What only shows when a template is carried out. */
static const struct {
    const char *text, *told;
} stopped[] = {
    {BRIEF("<xsl:call-template name=\"t\"/>") /* no such template */, "cannot be carried out: "},
    {HEAD "<xsl:template name=\"t\"><xsl:call-template name=\"t\"/></xsl:template>"
          "<xsl:template match=\"plan\" mode=\"brief\"><xsl:call-template name=\"t\"/></xsl:template>" TAIL,
     "brief.xsl:2:1: error: this template cannot be carried out: "},
    {BRIEF("<xsl:for-each select=\"//@*\"><xsl:for-each select=\"//@*\"><xsl:for-each select=\"//@*\"><xsl:for-each "
           "select=\"//@*\"><xsl:if test=\"count(//@*) = "
           "0\"/></xsl:for-each></xsl:for-each></xsl:for-each></xsl:for-each>"),
     "does not come to an end"},
    {HEAD "<xsl:template name=\"t\"><xsl:param name=\"n\"/><xsl:if test=\"$n &gt; 0\">\n"
          "<xsl:call-template name=\"t\"><xsl:with-param name=\"n\" select=\"$n - 1\"/></xsl:call-template>\n"
          "<xsl:call-template name=\"t\"><xsl:with-param name=\"n\" select=\"$n - 1\"/></xsl:call-template>\n"
          "</xsl:if></xsl:template>\n<xsl:template match=\"plan\" mode=\"brief\"><xsl:call-template name=\"t\">"
          "<xsl:with-param name=\"n\" select=\"60\"/></xsl:call-template></xsl:template>" TAIL,
     "does not come to an end"},
    /* a text twice as long at each turn; a page of three loops; trees within trees; one long text looked at for ever */
    {HEAD "<xsl:template name=\"t\"><xsl:param name=\"s\"/><xsl:param name=\"n\"/>\n"
          "<xsl:if test=\"$n &gt; 0\"><xsl:call-template name=\"t\">\n"
          "<xsl:with-param name=\"s\" select=\"concat($s, $s)\"/>\n"
          "<xsl:with-param name=\"n\" select=\"$n - 1\"/></xsl:call-template></xsl:if></xsl:template>\n"
          "<xsl:template match=\"plan\" mode=\"brief\"><xsl:call-template name=\"t\"><xsl:with-param name=\"s\" "
          "select=\"'0123456789abcdef'\"/><xsl:with-param name=\"n\" select=\"60\"/></xsl:call-template>"
          "</xsl:template>" TAIL,
     "error: this template takes more than the "},
    {BRIEF("<xsl:for-each select=\"//*\"><xsl:for-each select=\"//*\"><xsl:for-each select=\"//*\">\n"
           "<p>x</p></xsl:for-each></xsl:for-each></xsl:for-each>"),
     "error: this template takes more than the "},
    {BRIEF("<xsl:for-each select=\"//*\"><xsl:for-each select=\"//*\">\n<xsl:copy-of select=\"/\"/>"
           "</xsl:for-each></xsl:for-each>"),
     "error: this template takes more than the "},
    {BRIEF("<xsl:variable name=\"all\"><xsl:for-each select=\"//*\"><xsl:value-of select=\"/\"/></xsl:for-each>"
           "</xsl:variable><xsl:variable name=\"long\" select=\"string($all)\"/><xsl:for-each select=\"//*\">"
           "<xsl:for-each select=\"//*\"><xsl:if test=\"contains($long, '+++')\"/></xsl:for-each></xsl:for-each>"),
     "does not come to an end"},
    {BRIEF("<xsl:message terminate=\"yes\">enough</xsl:message>"), "cannot be carried out: enough"},
    {BRIEF("<xsl:value-of select=\"no-such-function()\"/>"), "cannot be carried out: "},
    {BRIEF("<xsl:element name=\"script\">1</xsl:element>"), "the page would hold <script>"},
    {BRIEF("<xsl:element name=\"{'iframe'}\"/>"), "the page would hold <iframe>"},
    {BRIEF("<xsl:element name=\"FORM\"/>"), "the page would hold <FORM>"},
    {BRIEF("<p><xsl:attribute name=\"onclick\">1</xsl:attribute></p>"), "the page would hold <p onclick"},
    {BRIEF("<p OnClick=\"1\">x</p>"), "the page would hold <p OnClick"},
    {BRIEF("<meta http-equiv=\"refresh\" content=\"0;url=http://192.0.2.1/\"/>"),
     "the page would hold <meta http-equiv"},
    {BRIEF("<meta HTTP-EQUIV=\"refresh\" content=\"0;url=http://192.0.2.1/\"/>"),
     "the page would hold <meta HTTP-EQUIV"},
    {BRIEF("<style>p { } &lt;/style&gt;&lt;p&gt;</style>"), "< is not accepted"},
};
enum { STOPPED = (int)(sizeof stopped / sizeof stopped[0]) };

START_TEST(a_page_runs_and_fetches_nothing)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_EIGHT);
    const struct Template own = file("brief.xsl", "brief.xsl", stopped[_i].text);
    const struct Papers papers = document_papers(arena, plan, fixture_parts(arena, plan), LANGUAGE_ENGLISH, &own, 1);
    ck_assert_ptr_null(papers.pages[PAPER_BRIEF].data);
    ck_assert_msg(strstr(told_of(arena, papers.fault), stopped[_i].told) != NULL, "told is \"%s\"\nnot \"%s\"",
                  told_of(arena, papers.fault), stopped[_i].told);
    arena_free(arena);
}
END_TEST

/* Ways round the serialiser: the page is written by the program, whatever the template asks for. */
static const struct {
    const char *text, *not_held;
} written_plainly[] = {
    {BRIEF("<xsl:comment>&gt;&lt;script&gt;1&lt;/script&gt;</xsl:comment>"), "script"},
    {HEAD
     "<xsl:output method=\"text\"/><xsl:template match=\"plan\" mode=\"brief\">&lt;script&gt;1</xsl:template>" TAIL,
     "<script"},
    {HEAD "<xsl:output method=\"xml\" cdata-section-elements=\"p\"/><xsl:template match=\"plan\" "
          "mode=\"brief\"><p>&gt;&lt;script&gt;1</p></xsl:template>" TAIL,
     "CDATA"},
    {HEAD "<xsl:output doctype-public='\"&gt;&lt;script&gt;1'/><xsl:template match=\"plan\" mode=\"brief\"><p/>"
          "</xsl:template>" TAIL,
     "<script"},
    {HEAD "<xsl:output encoding=\"UTF-16BE\"/><xsl:template match=\"plan\" mode=\"brief\"><p/></xsl:template>" TAIL,
     "UTF-16"},
};
enum { WRITTEN_PLAINLY = (int)(sizeof written_plainly / sizeof written_plainly[0]) };

START_TEST(the_program_writes_the_page)
{
    static const char begins[] =
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"UTF-8\">\n<meta "
        "http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src "
        "data:; base-uri 'none'; form-action 'none'\">";
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_TWO);
    const struct Template own = file("brief.xsl", "brief.xsl", written_plainly[_i].text);
    const struct Papers papers = document_papers(arena, plan, fixture_parts(arena, plan), LANGUAGE_ENGLISH, &own, 1);
    ck_assert_str_eq(told_of(arena, papers.fault), "");
    const struct Bytes page = papers.pages[PAPER_BRIEF];
    ck_assert_uint_gt(page.length, sizeof begins);
    ck_assert_msg(memcmp(page.data, begins, sizeof begins - 1) == 0, "begins \"%.300s\"", page.data);
    ck_assert(!holds(page, written_plainly[_i].not_held));
    arena_free(arena);
}
END_TEST

START_TEST(what_a_reader_follows_is_allowed)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_TWO);
    const struct Template own =
        file("brief.xsl", "brief.xsl", BRIEF("<a href=\"https://example.org/\">us</a><a href=\"tel:0\">ring</a>"));
    const struct Papers papers = document_papers(arena, plan, fixture_parts(arena, plan), LANGUAGE_ENGLISH, &own, 1);
    ck_assert_str_eq(told_of(arena, papers.fault), "");
    ck_assert(holds(papers.pages[PAPER_BRIEF], "<a href=\"https://example.org/\">us</a>"));
    arena_free(arena);
}
END_TEST

/* The rows of the test sheet once more, with the names of their figures as text. */
struct Cell {
    enum Saying says;
    const char *figures;
};
static const struct {
    const char *group, *where, *unless;
    struct Cell cells[5];
    enum Saying blanks, bad;
} test_rows[] = {
#define T(saying)                                                                                                      \
    {                                                                                                                  \
        saying, ""                                                                                                     \
    }
#define W(saying, ...)                                                                                                 \
    {                                                                                                                  \
        saying, #__VA_ARGS__                                                                                           \
    }
#define S(saying, clause, table)                                                                                       \
    {                                                                                                                  \
        saying, clause table                                                                                           \
    }
#define TEST(group, where, unless, a, b, c, d, e, ...) {#group, #where, #unless, {a, b, c, d, e}, __VA_ARGS__},
#include "documents/papers/test_rows.inc"
#undef TEST
#undef S
#undef W
#undef T
};
enum { TEST_ROWS = sizeof test_rows / sizeof test_rows[0], SOURCE = 4 };

/* How many arguments a text has room for. */
static int room_in(enum Saying says)
{
    unsigned used = 0;
    ck_assert_ptr_null(template_fault(words_wording(LANGUAGE_ENGLISH)->texts[says], 2, &used));
    int room = 0;
    for (; used != 0; used >>= 1) {
        room++;
    }
    return room;
}

static int count_of(const char *figures)
{
    int count = *figures != '\0';
    for (; *figures != '\0'; figures++) {
        count += *figures == ',';
    }
    return count;
}

/* Every figure of a row has a place in its text, and no place is left empty. */
START_TEST(test_rows_fit_their_words)
{
    for (int i = 0; i <= SOURCE; i++) {
        const struct Cell *cell = &test_rows[_i].cells[i];
        ck_assert_int_ne(cell->says, SAY_NOTHING);
        ck_assert_int_eq(room_in(cell->says), i == SOURCE ? *cell->figures != '\0' : count_of(cell->figures));
    }
    ck_assert_int_eq(room_in(test_rows[_i].blanks), 0);
    ck_assert_int_eq(room_in(test_rows[_i].bad), 0);
}
END_TEST

/* Papers are said in the words that they are given, and the file beside them is not. */
START_TEST(papers_speak_as_they_are_told)
{
    static const struct Words signs = {.medium = MEDIUM_SIGNS}, plain = {.medium = MEDIUM_PLAIN};
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_RUNS);
    const struct PartsList *parts = fixture_parts(arena, plan);
    const struct Bytes in_signs = papers_xml(arena, plan, parts, &signs);
    const struct Bytes in_plain = papers_xml(arena, plan, parts, &plain);
    ck_assert(holds(in_signs, "blanks=\"\u03a9|cable \u00b0C\"") && !holds(in_signs, "blanks=\"ohm"));
    ck_assert(holds(in_plain, "blanks=\"ohm|cable degC\"") && !holds(in_plain, "\u03a9"));
    ck_assert(!holds(document_plan_xml(arena, plan, parts), "\u03a9"));
    arena_free(arena);
}
END_TEST

Suite *suite_papers(void)
{
    Suite *suite = suite_create("papers");
    TCase *tests = tcase_create("papers");
    tcase_set_timeout(tests, 120);
    tcase_add_loop_test(tests, the_program_writes_the_page, 0, WRITTEN_PLAINLY);
    tcase_add_loop_test(tests, every_fixture_has_its_papers, 0, FIXTURE_COUNT);
    tcase_add_loop_test(tests, the_brief_holds_the_drawings_whole, 0, FIXTURE_COUNT);
    tcase_add_test(tests, marks_tell_plans_apart);
    tcase_add_test(tests, a_firm_changes_what_it_likes);
    tcase_add_loop_test(tests, what_reads_or_runs_is_refused, 0, REFUSED);
    tcase_add_loop_test(tests, a_page_runs_and_fetches_nothing, 0, STOPPED);
    tcase_add_test(tests, what_a_reader_follows_is_allowed);
    tcase_add_loop_test(tests, test_rows_fit_their_words, 0, TEST_ROWS);
    tcase_add_test(tests, papers_speak_as_they_are_told);
    suite_add_tcase(suite, tests);
    return suite;
}
