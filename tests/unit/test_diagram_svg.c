/* The diagram as SVG: well formed, only known elements and attributes, nothing that acts or reaches out, text that can
 * be read. */
#include "document_suites.h"
#include "plan_fixture.h"

#include <libxml/parser.h>
#include <libxml/tree.h>

#include <math.h>
#include <stdlib.h>
#include <string.h>

static xmlDocPtr svg_of(struct Arena *arena, const struct Plan *plan)
{
    struct Bytes bytes = document_diagram_svg(arena, plan, NULL, LANGUAGE_ENGLISH);
    ck_assert_ptr_nonnull(bytes.data);
    xmlDocPtr document = xmlReadMemory(bytes.data, (int)bytes.length, "diagram.svg", NULL,
                                       XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING);
    ck_assert_ptr_nonnull(document);
    return document;
}

static bool listed(const xmlChar *name, const char *const *list)
{
    for (; *list != NULL; list++) {
        if (xmlStrEqual(name, (const xmlChar *)*list)) {
            return true;
        }
    }
    return false;
}

/* Relative luminance of "#rrggbb", WCAG 2. */
static double luminance(const char *colour)
{
    const double weights[3] = {0.2126, 0.7152, 0.0722};
    double sum = 0;
    ck_assert_uint_eq(strlen(colour), 7);
    for (int i = 0; i < 3; i++) {
        char pair[3] = {colour[1 + 2 * i], colour[2 + 2 * i], '\0'};
        double part = (double)strtol(pair, NULL, 16) / 255;
        sum += weights[i] * (part <= 0.04045 ? part / 12.92 : pow((part + 0.055) / 1.055, 2.4));
    }
    return sum;
}

static void check_text(xmlNodePtr node)
{
    xmlChar *fill = xmlGetProp(node, (const xmlChar *)"fill");
    if (fill != NULL && strcmp((const char *)fill, "#ffffff") == 0) { /* on black: the drawing's own test looks */
        xmlFree(fill);
    } else if (fill != NULL) {
        double contrast = 1.05 / (luminance((const char *)fill) + 0.05);
        ck_assert_msg(contrast >= 4.5, "text in %s", (const char *)fill);
        xmlFree(fill);
    }
    xmlChar *size = xmlGetProp(node, (const xmlChar *)"font-size");
    ck_assert_ptr_nonnull(size);
    ck_assert(strtod((const char *)size, NULL) >= 2.5);
    xmlFree(size);
}

static void check_node(xmlNodePtr node, int *texts)
{
    static const char *const elements[] = {"svg", "title", "metadata", "desc", "g", "path", "circle", "text", NULL};
    static const char *const attributes[] = {"width",
                                             "height",
                                             "viewBox",
                                             "version",
                                             "role",
                                             "aria-labelledby",
                                             "lang",
                                             "id",
                                             "font-family",
                                             "font-size",
                                             "font-weight",
                                             "fill",
                                             "stroke",
                                             "stroke-width",
                                             "stroke-dasharray",
                                             "stroke-linejoin",
                                             "text-anchor",
                                             "textLength",
                                             "lengthAdjust",
                                             "d",
                                             "cx",
                                             "cy",
                                             "r",
                                             "x",
                                             "y",
                                             NULL};
    for (; node != NULL; node = node->next) {
        ck_assert(node->type == XML_ELEMENT_NODE || node->type == XML_TEXT_NODE);
        if (node->type != XML_ELEMENT_NODE) {
            continue;
        }
        ck_assert_msg(listed(node->name, elements), "element %s", (const char *)node->name);
        for (xmlAttrPtr attribute = node->properties; attribute != NULL; attribute = attribute->next) {
            ck_assert_msg(listed(attribute->name, attributes), "attribute %s", (const char *)attribute->name);
        }
        if (xmlStrEqual(node->name, (const xmlChar *)"text")) {
            check_text(node);
            (*texts)++;
        }
        check_node(node->children, texts);
    }
}

START_TEST(only_plain_elements)
{
    struct Arena *arena = arena_new();
    xmlDocPtr document = svg_of(arena, fixture_plan(arena, (enum FixtureKind)_i));
    int texts = 0;
    check_node(xmlDocGetRootElement(document), &texts);
    ck_assert_int_gt(texts, 10);
    xmlFreeDoc(document);
    arena_free(arena);
}
END_TEST

static bool has(struct Bytes bytes, const char *words)
{
    return strstr(bytes.data, words) != NULL;
}

START_TEST(hostile_texts_are_inert)
{
    struct Arena *arena = arena_new();
    struct Bytes bytes = document_diagram_svg(arena, fixture_plan(arena, FIXTURE_HOSTILE), NULL, LANGUAGE_ENGLISH);
    ck_assert_ptr_nonnull(bytes.data);
    ck_assert(!has(bytes, "<script"));
    ck_assert(has(bytes, "&lt;script&gt;"));
    ck_assert(!has(bytes, "href"));
    ck_assert(!has(bytes, "<!"));
    ck_assert(!has(bytes, "url("));
    ck_assert(!has(bytes, "\xE2\x80\xAE")); /* what turns the reading direction is not shown */
    arena_free(arena);
}
END_TEST

START_TEST(has_name_and_description)
{
    struct Arena *arena = arena_new();
    struct Bytes bytes = document_diagram_svg(arena, fixture_plan(arena, FIXTURE_EIGHT), NULL, LANGUAGE_ENGLISH);
    ck_assert_ptr_nonnull(bytes.data);
    ck_assert(has(bytes, "width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\""));
    ck_assert(has(bytes, "xml:lang=\"en\" role=\"img\" aria-labelledby=\"diagram-title diagram-description\""));
    ck_assert(has(bytes, "<title id=\"diagram-title\">Run diagram: Boathouse winch supply</title>"));
    ck_assert(has(bytes, "<desc id=\"diagram-description\">A cable way of 8 segments, 73.33\xC2\xA0m long"));
    ck_assert(!has(bytes, "safe"));
    ck_assert(!has(bytes, "complian"));
    arena_free(arena);
}
END_TEST

Suite *suite_diagram_svg(void)
{
    Suite *suite = suite_create("diagram.svg");
    TCase *tests = tcase_create("svg");
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, only_plain_elements, 0, FIXTURE_COUNT);
    tcase_add_test(tests, hostile_texts_are_inert);
    tcase_add_test(tests, has_name_and_description);
    suite_add_tcase(suite, tests);
    return suite;
}
