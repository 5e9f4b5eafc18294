/* Texts of a route that a browser, a spreadsheet or a terminal would take for more than text: each route of
 * tests/hostile that expected.tsv calls accept-inert is planned, and every document that is made of it is looked at. */
#include "run_suite.h"

#include "wend/wend.h"

#include <libxml/HTMLparser.h>
#include <libxml/parser.h>
#include <string.h>

#define HOSTILE TESTS_FOLDER "/hostile"

enum { ROUTES_MOST = 100, TEXT_MOST = 8192 };

struct Routes {
    int count;
    char file[ROUTES_MOST][80];
};

static struct Routes inert_routes(void)
{
    struct Routes routes = {0};
    char line[512];
    char answer[80];
    FILE *file = fopen(HOSTILE "/expected.tsv", "r");
    if (file == NULL) {
        fprintf(stderr, "cannot read " HOSTILE "/expected.tsv\n");
        exit(EXIT_FAILURE);
    }
    while (fgets(line, sizeof line, file) != NULL && routes.count < ROUTES_MOST) {
        if (sscanf(line, "%79[^\t]\t%79[^\t]", routes.file[routes.count], answer) == 2 &&
            strcmp(answer, "accept-inert") == 0) {
            routes.count++;
        }
    }
    fclose(file);
    return routes;
}

static struct Wend *plan_of(const char *name, char text[TEXT_MOST])
{
    char path[512];
    snprintf(path, sizeof path, "%s/route/%s", HOSTILE, name);
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "%s", path);
    const size_t length = fread(text, 1, TEXT_MOST, file);
    fclose(file);
    ck_assert_uint_lt(length, TEXT_MOST);
    return wend_plan("inert", text, length);
}

static bool one_of(const xmlChar *name, const char *const *list)
{
    for (; *list != NULL; list++) {
        if (xmlStrcasecmp(name, (const xmlChar *)*list) == 0) {
            return true;
        }
    }
    return false;
}

/* What an attribute may lead to: a place on the same page, or a picture that stands in it. NULL, or what is wrong. */
static const char *fault_of_attribute(xmlNode *element, const xmlAttr *attribute)
{
    static const char *const leads[] = {"href", "src", "action", "data", "poster", "srcset", "background", NULL};
    if (xmlStrncasecmp(attribute->name, (const xmlChar *)"on", 2) == 0) {
        return "a handler";
    }
    if (!one_of(attribute->name, leads)) {
        return NULL;
    }
    xmlChar *value = xmlGetProp(element, attribute->name);
    const bool stays = value[0] == '#' || strncmp((const char *)value, "data:image/", 11) == 0;
    xmlFree(value);
    return stays ? NULL : "a way out of the page";
}

/* No element that acts, fetches or restyles but the page's own styles, which are counted. */
static const char *fault_of_tree(xmlNode *first, int *styles)
{
    static const char *const never[] = {"script",        "iframe", "frame",   "object",  "embed", "applet",
                                        "base",          "link",   "form",    "input",   "audio", "video",
                                        "foreignObject", "set",    "animate", "marquee", NULL};
    const char *fault = NULL;
    for (xmlNode *node = first; node != NULL && fault == NULL; node = node->next) {
        if (node->type != XML_ELEMENT_NODE) {
            fault = node->type == XML_PI_NODE ? "an instruction" : NULL;
            continue;
        }
        *styles += xmlStrcasecmp(node->name, (const xmlChar *)"style") == 0;
        fault = one_of(node->name, never) ? "an element that acts" : fault_of_tree(node->children, styles);
        for (const xmlAttr *at = node->properties; at != NULL && fault == NULL; at = at->next) {
            fault = fault_of_attribute(node, at);
        }
    }
    return fault;
}

static const char *fault_of_page(struct WendBytes bytes, bool html, int *styles)
{
    xmlDoc *document = html ? htmlReadMemory(bytes.data, (int)bytes.length, NULL, "UTF-8",
                                             HTML_PARSE_NONET | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING)
                            : xmlReadMemory(bytes.data, (int)bytes.length, NULL, "UTF-8",
                                            XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING);
    if (document == NULL) {
        return "not well formed";
    }
    *styles = 0;
    const char *fault = fault_of_tree(xmlDocGetRootElement(document), styles);
    xmlFreeDoc(document);
    return fault;
}

/* No cell may begin as a formula does: a spreadsheet would work it out. A number may have its minus. */
static const char *fault_of_cells(struct WendBytes bytes)
{
    bool quoted = false;
    bool begins = true;
    for (size_t at = 0; at < bytes.length; at++) {
        const char c = bytes.data[at];
        char next = '\0';
        if (at + 1 < bytes.length) {
            next = bytes.data[at + 1];
        }
        if (c == '"') {
            quoted = !quoted;
            continue;
        }
        if (begins &&
            (strchr("=+@\t", c) != NULL || (c == '\r' && next != '\n') || (c == '-' && (next < '0' || next > '9')))) {
            return "a formula";
        }
        begins = !quoted && (c == ',' || c == '\n');
    }
    return quoted ? "an open quote" : NULL;
}

/* No control character but the line's end and one more: what begins a colour, or the tab that JSON is indented with. */
static const char *fault_of_controls(struct WendBytes bytes, char too)
{
    for (size_t at = 0; at < bytes.length; at++) {
        const unsigned char c = (unsigned char)bytes.data[at];
        if ((c < ' ' || c == 0x7F) && c != '\n' && c != (unsigned char)too) {
            return "a control character";
        }
    }
    return NULL;
}

static const char *fault_of_document(enum WendDocument document, struct WendBytes bytes, int *styles)
{
    *styles = 0;
    if (bytes.data == NULL || bytes.length == 0) {
        return "it was not made";
    }
    switch (document) {
    case WEND_PLAN_XML:
    case WEND_DIAGRAM_SVG:
    case WEND_NARROW_SVG: return fault_of_page(bytes, false, styles);
    case WEND_PARTS_CSV: return fault_of_cells(bytes);
    case WEND_SUMMARY_TEXT: return fault_of_controls(bytes, '\n');
    case WEND_SUMMARY_TEXT_COLOUR: return fault_of_controls(bytes, '\033');
    case WEND_PLAN_JSON: return fault_of_controls(bytes, '\t');
    case WEND_BRIEF_HTML:
    case WEND_PARTS_HTML:
    case WEND_DESIGN_HTML:
    case WEND_TEST_HTML:
    case WEND_PACK_HTML:
    case WEND_READINGS_HTML:
    case WEND_AS_LAID_HTML:
    case WEND_CARD_HTML: return fault_of_page(bytes, true, styles);
    case WEND_DOCUMENT_COUNT: break;
    }
    return "no such document";
}

/* The pages of the same route with a title that means nothing. */
static const char plain_route[] = "wend: 1\n"
                                  "job: {title: \"plain\"}\n"
                                  "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                                  "runs:\n"
                                  "  feeder: {load: {current: 10 A}, cable: {type: BS5467, cores: 3}}\n"
                                  "segments:\n"
                                  "- {name: \"plain\", way: wall, length: 1 m}\n";

START_TEST(documents_stay_as_they_are)
{
    const struct Routes routes = inert_routes();
    static char text[TEXT_MOST];
    struct Wend *wend = plan_of(routes.file[_i], text);
    struct Wend *plain = wend_plan("plain", plain_route, strlen(plain_route));
    ck_assert_int_ne(wend_status(wend), WEND_INPUT_WRONG);
    for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) {
        const enum WendDocument document = (enum WendDocument)i;
        int styles = 0;
        int plain_styles = 0;
        if (!wend_has_document(wend, document)) {
            continue;
        }
        const char *fault = fault_of_document(document, wend_document(wend, document), &styles);
        ck_assert_msg(fault == NULL, "%s, document %d: %s", routes.file[_i], i, fault);
        ck_assert_ptr_null(fault_of_document(document, wend_document(plain, document), &plain_styles));
        ck_assert_msg(styles == plain_styles, "%s, document %d: a style of its own", routes.file[_i], i);
    }
    wend_free(plain);
    wend_free(wend);
}
END_TEST

/* The eye sees what it is there for. */
static const struct {
    enum WendDocument document;
    const char *bytes;
    const char *fault;
} eye_rows[] = {
    {WEND_BRIEF_HTML, "<html><body><p>1<script>1</script></p></body></html>", "an element that acts"},
    {WEND_BRIEF_HTML, "<html><body><p><a href='javascript:a'>1</a></p></body></html>", "a way out of the page"},
    {WEND_BRIEF_HTML, "<html><body><img src='//a.example/b'></body></html>", "a way out of the page"},
    {WEND_DIAGRAM_SVG, "<svg><rect ONLOAD='x'/></svg>", "a handler"},
    {WEND_DIAGRAM_SVG, "<svg><?x y?></svg>", "an instruction"},
    {WEND_PLAN_XML, "<plan title=\"a\"b\"/>", "not well formed"},
    {WEND_PARTS_CSV, "a,b\n1,\"=1+1\"\n", "a formula"},
    {WEND_PARTS_CSV, "a,b\n@x,1\n", "a formula"},
    {WEND_PARTS_CSV, "a,b\n1,\"x\n", "an open quote"},
    {WEND_SUMMARY_TEXT, "a\033[2Jb\n", "a control character"},
    {WEND_PLAN_JSON, "{\"a\": \"\b\"}", "a control character"},
};
enum { EYE_ROWS = (int)(sizeof eye_rows / sizeof eye_rows[0]) };

START_TEST(the_eye_sees)
{
    int styles;
    const struct WendBytes bytes = {eye_rows[_i].bytes, strlen(eye_rows[_i].bytes)};
    ck_assert_pstr_eq(fault_of_document(eye_rows[_i].document, bytes, &styles), eye_rows[_i].fault);
}
END_TEST

START_TEST(there_are_routes_and_styles_are_counted)
{
    static const char page[] = "<html><head><style>a{}</style></head><body><p>1</p><style>b{}</style></body></html>";
    int styles = 0;
    ck_assert_ptr_null(fault_of_page((struct WendBytes){page, sizeof page - 1}, true, &styles));
    ck_assert_int_eq(styles, 2);
    ck_assert_int_ge(inert_routes().count, 20);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("inert");
    TCase *tests = tcase_create("documents");
    tcase_add_loop_test(tests, documents_stay_as_they_are, 0, inert_routes().count);
    tcase_add_loop_test(tests, the_eye_sees, 0, EYE_ROWS);
    tcase_add_test(tests, there_are_routes_and_styles_are_counted);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
