/* plan.xml: valid against its schema, nothing lost on the way, and a schema that refuses what is wrong. */
#include "document_suites.h"
#include "documents/papers/papers_private.h"
#include "plan_fixture.h"
#include "said.h"
#include "schema_rig.h"

#include <libxml/xpath.h>

#include <string.h>

static int schema_says(xmlDocPtr document)
{
    return schema_file_says(TEMPLATES_FOLDER "/plan.rng", document);
}

static xmlDocPtr read_back(struct Bytes bytes)
{
    return schema_document(bytes.data, bytes.length);
}

static xmlDocPtr plan_document(struct Arena *arena, const struct Plan *plan)
{
    return read_back(document_plan_xml(arena, plan, fixture_parts(arena, plan)));
}

/* The text of an XPath expression; the caller has xmlFree() it. */
static char *ask(xmlDocPtr document, const char *expression)
{
    xmlXPathContextPtr context = xmlXPathNewContext(document);
    xmlXPathObjectPtr found = xmlXPathEvalExpression((const xmlChar *)expression, context);
    ck_assert_ptr_nonnull(found);
    char *text = (char *)xmlXPathCastToString(found);
    xmlXPathFreeObject(found);
    xmlXPathFreeContext(context);
    return text;
}

static void answers(xmlDocPtr document, const char *expression, const char *expected)
{
    char *text = ask(document, expression);
    ck_assert_msg(strcmp(text, expected) == 0, "%s is \"%s\", not \"%s\"", expression, text, expected);
    xmlFree(text);
}

START_TEST(every_fixture_is_valid)
{
    struct Arena *arena = arena_new();
    xmlDocPtr document = plan_document(arena, fixture_plan(arena, (enum FixtureKind)_i));
    ck_assert_msg(schema_says(document) == 0, "plan.xml of %s is not valid", fixture_name((enum FixtureKind)_i));
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

static const struct Words in_signs = {
    .language = LANGUAGE_ENGLISH, .medium = MEDIUM_SIGNS, .thousands = true, .together = true};

/* What only papers need is not in the file, and templates find it in its own form. */
START_TEST(every_fixture_is_valid_for_templates)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, (enum FixtureKind)_i);
    xmlDocPtr document = read_back(papers_xml(arena, plan, fixture_parts(arena, plan), &in_signs));
    ck_assert_int_eq(schema_file_says(TEMPLATES_FOLDER "/papers.rng", document), 0);
    ck_assert_int_ne(schema_says(document), 0);
    answers(document, "count(/plan/papers/work/group/line) > 0", "true");
    if (_i != FIXTURE_HOSTILE) { /* a hole that its figure did not fit is left as it is */
        answers(document, "count(//@*[contains(., '{')]) + count(//text()[contains(., '{')])", "0");
    }
    xmlFreeDoc(document);
    document = plan_document(arena, plan);
    answers(document, "count(//papers)", "0");
    ck_assert_int_ne(schema_file_says(TEMPLATES_FOLDER "/papers.rng", document), 0);
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

START_TEST(plans_by_lot_are_valid)
{
    struct Arena *arena = arena_new();
    xmlDocPtr document = plan_document(arena, fixture_random(arena, 1 + _i * 7 % 60, (unsigned)_i));
    ck_assert_int_eq(schema_says(document), 0);
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

START_TEST(figures_come_back)
{
    struct Arena *arena = arena_new();
    xmlDocPtr document = plan_document(arena, fixture_plan(arena, FIXTURE_RUNS));
    answers(document, "string(/plan/@verdict)", "fail");
    answers(document, "count(/plan/way-along/segment)", "8");
    answers(document, "string(//segment[@name='path-duct']/@depth-m)", "0.6");
    answers(document, "string(//segment[@name='path-duct']/@from-m)", "14.23");
    answers(document, "count(//segment[@name='gable']/@rise-m)", "0"); /* not surveyed: left out, not 0 */
    answers(document, "count(//segment[@name='gable']/@depth-m)", "0");
    answers(document, "string(//run[@name='feeder']/@governing)", "roof-void over the sail store");
    answers(document, "string(//run[@name='feeder']/@capacity-A)", "29.328");
    answers(document, "string(//run[@name='feeder']/@drop-V)", "9.95925");
    answers(document, "string(//run[@name='feeder']/@residual-mA)", "30");
    answers(document, "count(//run[@name='feeder']/line)", "3");
    answers(document, "string(//run[@name='feeder']/@zs-ohm)", "0.93");
    answers(document, "string(//run[@name='feeder']/@expected-r1r2-at-20degC-ohm)", "0.4512");
    answers(document, "string(//run[@name='yard-light']/@verdict)", "fail");
    answers(document, "string(//run[@name='yard-light']/check[@id='drop']/@result)", "fail");
    answers(document, "string(//run[@name='feeder']/check[@id='capacity']/@at-least)", "yes");
    answers(document, "count(//check[@id='drop']/@at-least)", "0");
    answers(document, "count(//check[@result='not-due']/@value)", "0");
    answers(document, "string(//run[@name='feeder']/check[@id='live-conductors']/@limit)", "2044900000");
    /* these two the schema leaves to this test */
    answers(document, "count(//run[@kind='data']/rating)", "0");
    answers(document, "count(//run[@kind='power'][not(rating and check and option)])", "0");
    answers(document, "count(//run[@kind='data']/@size-mm2)", "0");
    answers(document, "string(//run[@name='data']/along/through[1])", "roof-void over the sail store");
    answers(document, "count(//run[@name='feeder']/option)", "3");
    answers(document, "string(//run[@name='feeder']/option[@chosen='yes']/@size-mm2)", "6");
    answers(document, "count(//run[@name='feeder']/option[1]/@capacity-A)", "0"); /* a table lacks it */
    answers(document, "string(//run[@name='feeder']/working/step[1]/@result)", "0.632 ohm");
    answers(document, "string(/plan/electrode/@estimate-ohm)", "41.5");
    answers(document, "count(/plan/parts/part)", "14");
    answers(document, "string(/plan/parts/part[2]/@packs)", "2");
    answers(document, "count(/plan/parts/part[1]/@packs)", "0");
    answers(document, "count(/plan/parts/not-counted)", "2");
    answers(document, "string(/plan/parts/cutting/opened[2]/piece/@length-m)", "50");
    answers(document, "string(/plan/parts/cutting/by-metre/piece/@length-m)", "130");
    answers(document, "string(/plan/parts/part[1]/@total)", "12.50");
    answers(document, "count(/plan/parts/part[2]/@total)", "0");
    answers(document, "string(/plan/parts/prices/total[1]/@amount)", "1234567.89");
    answers(document, "count(/plan/parts/prices/unpriced)", "7");
    answers(document, "count(/plan/assumptions/assumption)", "2");
    answers(document, "string(/plan/not-checked-list/not-checked/@id)", "disconnection");
    answers(document, "count(/plan/cautions/caution[@where])", "1");
    answers(document, "string(/plan/cautions/caution[2]/@number)", "2");
    answers(document, "count(/plan/supply/@drop-before-percent)", "0");
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

/* Whatever a surveyor writes is text: it comes back as it was and makes no element. */
START_TEST(hostile_texts_stay_text)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_HOSTILE);
    xmlDocPtr document = plan_document(arena, plan);
    answers(document, "count(//script)", "0");
    answers(document, "count(//comment()) + count(//processing-instruction())", "0");
    answers(document, "string(/plan/job/@title)", plan->survey->job.title);
    answers(document, "string(/plan/job/@reference)", plan->survey->job.reference);
    answers(document, "string(/plan/cautions/caution[1])", said(arena, plan->cautions[0].text));
    for (int i = 0; i < plan->segment_count; i++) {
        answers(document, arena_print(arena, "string(/plan/way-along/segment[%d]/@name)", i + 1),
                plan->segments[i].surveyed->name);
    }
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

/* Bytes that XML cannot hold do not make the document unreadable. */
START_TEST(broken_bytes_are_replaced)
{
    struct Arena *arena = arena_new();
    struct Plan plan = *fixture_plan(arena, FIXTURE_TWO);
    plan.verdict_text = as_is(arena, "a\x01"
                                     "b\xFF"
                                     "c\xED\xA0\x80"
                                     "d\xEF\xBF\xBE");
    xmlDocPtr document = plan_document(arena, &plan);
    answers(document, "string(/plan/@verdict-text)",
            "a\xEF\xBF\xBD"
            "b\xEF\xBF\xBD"
            "c\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD"
            "d\xEF\xBF\xBD");
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

static xmlNodePtr first_found(xmlDocPtr document, const char *where)
{
    xmlXPathContextPtr context = xmlXPathNewContext(document);
    xmlXPathObjectPtr found = xmlXPathEvalExpression((const xmlChar *)where, context);
    ck_assert_msg(found != NULL && found->nodesetval != NULL && found->nodesetval->nodeNr > 0, "no %s", where);
    xmlNodePtr node = found->nodesetval->nodeTab[0];
    xmlXPathFreeObject(found);
    xmlXPathFreeContext(context);
    return node;
}

/* One thing wrong in each: the place, the attribute and what it is set to; NULL takes it away. */
static const struct {
    const char *where, *attribute, *value;
} wrongs[] = {
    {"/plan", "verdict", "safe"},       {"/plan", "format", "2"},
    {"/plan/job", "colour", "green"},   {"/plan/job", "title", NULL},
    {"/plan/supply", "system", "TN-X"}, {"/plan/supply", "voltage-V", "two hundred"},
    {"/plan/supply", "phases", "2"},    {"//segment", "way", "balloon"},
    {"//segment", "to-m", "1e3"},       {"//segment", "from-m", "-1"},
    {"//segment", "from-m", NULL},      {"//run", "device", "XYZ"},
    {"//run", "capacity-A", "?"},       {"//run", "capacity-A", "0"},
    {"//run", "kind", "data"},          {"//rating", "method", "Q"},
    {"//rating", "factor", NULL},       {"//factor", "symbol", "Cx"},
    {"//check", "result", "maybe"},     {"//check", "id", "colour"},
    {"//check", "unit", "furlong"},     {"//check", "value", NULL},
    {"//option", "fails", "colour"},    {"//part", "unit", "box"},
    {"//part", "quantity", "-2"},       {"//caution", "source", NULL},
    {"//readings", "ze-ohm", "n/a"},    {"//step", "what", ""},
    {"//caution", "number", "0"},       {"//caution", "number", NULL},
    {"//cutting", "proved", "likely"},  {"//opened", "left-m", "-1"},
    {"//total", "currency", "euro"},    {"//part[1]", "total", "1e3"},
    {"//part[1]", "price-unit", NULL},  {"/plan", "colour", "green"},
    {"//run", "colour", "green"},       {"//segment", "depth-mm", "600"},
    {"//run", "size-given", "perhaps"}, {"//run", "order-length-m", "79.5"},
    {"//option", "chosen", NULL},       {"//option", "drop-percent", "-1"},
    {"//check[@unit]", "unit", NULL},   {"//check[@unit]", "at-least", "no"},
    {"//check", "open", "yes"},         {"//part[@pack]", "pack", NULL},
    {"//part[@pack]", "packs", "1.5"},  {"//line", "number", "4"},
    {"//along", "colour", "green"},     {"//start", "into", "bag"},
};

START_TEST(schema_refuses)
{
    struct Arena *arena = arena_new();
    xmlDocPtr document = plan_document(arena, fixture_plan(arena, FIXTURE_EIGHT));
    ck_assert_int_eq(schema_says(document), 0);
    xmlNodePtr node = first_found(document, wrongs[_i].where);
    if (wrongs[_i].value == NULL) {
        ck_assert_int_eq(xmlUnsetProp(node, (const xmlChar *)wrongs[_i].attribute), 0);
    } else {
        xmlSetProp(node, (const xmlChar *)wrongs[_i].attribute, (const xmlChar *)wrongs[_i].value);
    }
    ck_assert_msg(schema_says(document) != 0, "%s of %s is not refused", wrongs[_i].attribute, wrongs[_i].where);
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

/* What stands behind all else of its parent, is there twice, or is gone. */
static const struct {
    const char *where;
    enum { LAST, TWICE, GONE } fault;
} misplaced[] = {{"/plan/job", LAST},         {"/plan/supply", TWICE}, {"/plan/parts", LAST},
                 {"/plan/way-along", GONE},   {"/plan/run[1]", LAST},  {"/plan/cautions", GONE},
                 {"/plan/way-works", TWICE},  {"//run/along", LAST},   {"//run/along", GONE},
                 {"//run/start", LAST},       {"//run/finish", TWICE}, {"//run/line", LAST},
                 {"//run/check", LAST},       {"//run/along", TWICE},  {"//working", LAST},
                 {"//prices", TWICE},         {"//parts/part", LAST},  {"//cutting/opened[1]", LAST},
                 {"//prices/total[1]", LAST}, {"//readings", TWICE},   {"//check[1]/text()", GONE}};

START_TEST(schema_refuses_what_is_misplaced)
{
    struct Arena *arena = arena_new();
    xmlDocPtr document = plan_document(arena, fixture_plan(arena, FIXTURE_EIGHT));
    xmlNodePtr node = first_found(document, misplaced[_i].where);
    xmlNodePtr parent = node->parent;
    if (misplaced[_i].fault == TWICE) {
        ck_assert_ptr_nonnull(xmlAddNextSibling(node, xmlCopyNode(node, 1)));
    } else {
        xmlUnlinkNode(node);
        if (misplaced[_i].fault == LAST) {
            ck_assert_ptr_nonnull(xmlAddChild(parent, node));
        } else {
            xmlFreeNode(node);
        }
    }
    ck_assert_msg(schema_says(document) != 0, "%s is not refused", misplaced[_i].where);
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

/* What later work fills in is allowed already. */
START_TEST(schema_allows_later_results)
{
    static const char *const names[] = {"r1r2-ohm", "zs-ohm", "fault-current-far-A", "expected-r1r2-at-20degC-ohm"};
    struct Arena *arena = arena_new();
    xmlDocPtr document = plan_document(arena, fixture_plan(arena, FIXTURE_EIGHT));
    xmlNodePtr run = xmlDocGetRootElement(document)->children;
    while (run != NULL && !xmlStrEqual(run->name, (const xmlChar *)"run")) {
        run = run->next;
    }
    ck_assert_ptr_nonnull(run);
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        xmlSetProp(run, (const xmlChar *)names[i], (const xmlChar *)"0.5");
    }
    ck_assert_int_eq(schema_says(document), 0);
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

Suite *suite_plan_xml(void)
{
    Suite *suite = suite_create("plan.xml");
    TCase *documents = tcase_create("documents");
    tcase_set_timeout(documents, 60);
    tcase_add_loop_test(documents, every_fixture_is_valid, 0, FIXTURE_COUNT);
    tcase_add_loop_test(documents, every_fixture_is_valid_for_templates, 0, FIXTURE_COUNT);
    tcase_add_loop_test(documents, plans_by_lot_are_valid, 0, 20);
    tcase_add_test(documents, figures_come_back);
    tcase_add_test(documents, hostile_texts_stay_text);
    tcase_add_test(documents, broken_bytes_are_replaced);
    suite_add_tcase(suite, documents);
    TCase *schema = tcase_create("schema");
    tcase_set_timeout(schema, 60);
    tcase_add_loop_test(schema, schema_refuses, 0, (int)(sizeof wrongs / sizeof wrongs[0]));
    tcase_add_loop_test(schema, schema_refuses_what_is_misplaced, 0, (int)(sizeof misplaced / sizeof misplaced[0]));
    tcase_add_test(schema, schema_allows_later_results);
    suite_add_tcase(suite, schema);
    return suite;
}
