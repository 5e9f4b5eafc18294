/* What is written once and stands in several papers is put where it is stood in for: the drawings, and in the pack the
 * papers' articles. All of it by bytes, of which trees would take ten times as much. In a page of our own templates
 * what anybody wrote has its < escaped, so each tag and comment there is theirs. */
#include "template_tree.h"

#include <stdio.h>
#include <string.h>

#define STAND_IN_BEGINS "<svg xmlns=\"" VET_SVG "\" data-drawing=\""
#define STAND_IN_ENDS   "\"></svg>"
#define ARTICLE_BEGINS  "<article data-paper=\""
#define ARTICLE_ENDS    "\"></article>"

static const xmlChar *to_xml(const char *text)
{
    return (const xmlChar *)text;
}

bool page_stand_in(xmlNodePtr place, int number)
{
    char digits[16];
    xmlNode *svg = xmlNewChild(place, NULL, to_xml("svg"), NULL);
    xmlNs *space = svg == NULL ? NULL : xmlNewNs(svg, to_xml(VET_SVG), NULL);
    if (space == NULL) {
        return false;
    }
    xmlSetNs(svg, space);
    snprintf(digits, sizeof digits, "%d", number);
    return xmlNewProp(svg, to_xml("data-drawing"), to_xml(digits)) != NULL;
}

/* A page while it is put together, or only measured. */
struct Whole {
    const struct PagePieces *pieces;
    char *to; /* NULL: measured */
    size_t length;
    bool in_pack; /* an article of it is put */
    bool failed;
};

static void put(struct Whole *whole, const char *bytes, size_t length)
{
    if (whole->to != NULL) {
        memcpy(whole->to + whole->length, bytes, length);
    }
    whole->length += length;
}

/* An element that ends where it begins has a tag for its end in HTML: "<path/>" is "<path></path>" there. No ">" stands
 * in the text or the values of a drawing but as an entity. */
static void put_drawing(struct Whole *whole, struct Bytes svg)
{
    const char *from = svg.data, *const end = svg.data + svg.length;
    for (const char *at = from; (at = memchr(at, '>', (size_t)(end - at))) != NULL; at++) {
        if (at == svg.data || at[-1] != '/') {
            continue;
        }
        const char *name = at;
        while (name > from && *name != '<') {
            name--;
        }
        put(whole, from, (size_t)(at - 1 - from));
        put(whole, "></", 3);
        put(whole, name + 1, strcspn(name + 1, " /"));
        from = at;
    }
    put(whole, from, (size_t)(end - from));
}

static const char *put_drawings(struct Whole *whole, const char *at)
{
    const struct PaperDrawings *drawn = whole->pieces->drawn;
    const char *number = at + strlen(STAND_IN_BEGINS);
    const struct Pieces pieces = *number - '0' == PRINT_DIAGRAM ? drawn->sheets : drawn->narrow.papers;
    whole->failed = whole->failed || pieces.count == 0;
    for (int i = 0; i < pieces.count; i++) {
        put_drawing(whole, pieces.pieces[i]);
    }
    return number + 1 + strlen(STAND_IN_ENDS);
}

static bool begins(const char *at, const char *with)
{
    return strncmp(at, with, strlen(with)) == 0;
}

static void put_page(struct Whole *whole, const char *from, const char *end);

/* The article of a paper in the pack. */
static const char *put_article(struct Whole *whole, const char *at)
{
    static const char ends[] = "</article>";
    const char *name = at + strlen(ARTICLE_BEGINS);
    const char *behind = strstr(name, ARTICLE_ENDS);
    const char *from = NULL, *end = NULL;
    for (int i = 0; behind != NULL && i < PAPER_COUNT; i++) {
        const char *page = whole->pieces->articles[i].data;
        if (page != NULL && strlen(whole->pieces->names[i]) == (size_t)(behind - name) &&
            begins(name, whole->pieces->names[i])) {
            from = strstr(page, "<article ");
            end = from == NULL ? NULL : strstr(from, ends);
        }
    }
    whole->failed = whole->failed || end == NULL || whole->in_pack;
    if (whole->failed) {
        return at + 1;
    }
    whole->in_pack = true;
    put_page(whole, from, end + strlen(ends));
    whole->in_pack = false;
    return behind + strlen(ARTICLE_ENDS);
}

/* What stands between marks is the pack's alone, or the paper's by itself. */
static const char *put_marked(struct Whole *whole, const char *at)
{
    static const char all[] = "<!--all-->", pack[] = "<!--pack-->", paper[] = "<!--paper-->";
    const char *left_out = whole->in_pack ? paper : pack;
    if (begins(at, left_out)) {
        const char *end = strstr(at, all);
        whole->failed = whole->failed || end == NULL;
        return end == NULL ? at + 1 : end + strlen(all);
    }
    return at + strcspn(at, ">") + 1;
}

/* "<h1" and "</h1": in the pack every heading stands one step lower. */
static const char *put_heading(struct Whole *whole, const char *at, const char *digit)
{
    const char lower = (char)(*digit + 1);
    put(whole, at, (size_t)(digit - at));
    put(whole, &lower, 1);
    return digit + 1;
}

static bool is_heading(const char *at)
{
    return at[0] == 'h' && at[1] >= '1' && at[1] <= '5' && (at[2] == '>' || at[2] == ' ');
}

static void put_page(struct Whole *whole, const char *from, const char *end)
{
    const char *at = from;
    while ((at = memchr(at, '<', (size_t)(end - at))) != NULL) {
        const char *name = at + 1 + (at[1] == '/');
        const char *(*special)(struct Whole *, const char *) = begins(at, STAND_IN_BEGINS)  ? put_drawings
                                                               : begins(at, ARTICLE_BEGINS) ? put_article
                                                               : begins(at, "<!--")         ? put_marked
                                                                                            : NULL;
        const bool heading = whole->in_pack && is_heading(name);
        if (special != NULL || heading) {
            put(whole, from, (size_t)(at - from));
            from = heading ? put_heading(whole, at, name + 1) : special(whole, at);
        }
        at = special != NULL || heading ? from : at + 1;
    }
    put(whole, from, (size_t)(end - from));
}

struct Bytes page_whole(struct Arena *arena, const struct PagePieces *pieces, struct Bytes page)
{
    struct Whole whole = {.pieces = pieces};
    put_page(&whole, page.data, page.data + page.length);
    char *bytes = whole.failed ? NULL : arena_alloc(arena, whole.length + 1);
    whole.to = bytes;
    whole.length = 0;
    if (bytes != NULL) {
        put_page(&whole, page.data, page.data + page.length);
    }
    return (struct Bytes){bytes, whole.length};
}
