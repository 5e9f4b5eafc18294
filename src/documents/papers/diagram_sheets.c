/* The diagram comes as one drawing, its sheets one under the other. On paper each sheet is a page, so it is taken
 * apart: each sheet becomes a drawing of its own that shows its part of the whole. */
#include "documents/diagram/drawing_private.h"
#include "documents/shown_private.h"
#include "template_tree.h"

#include <stdlib.h>
#include <string.h>

static const xmlChar *to_xml(const char *text)
{
    return (const xmlChar *)text;
}

static bool named(const xmlNode *node, const char *name)
{
    return node->type == XML_ELEMENT_NODE && strcmp((const char *)node->name, name) == 0;
}

/* "sheet-3" gives 3; 0 for what is no sheet. */
static int sheet_number(xmlNodePtr node)
{
    xmlChar *id = named(node, "g") ? xmlGetNoNsProp(node, to_xml("id")) : NULL;
    const char *text = id == NULL ? "" : (const char *)id;
    const int number = strncmp(text, "sheet-", 6) == 0 ? (int)strtol(text + 6, NULL, 10) : 0;
    xmlFree(id);
    return number;
}

static bool is_group(const xmlNode *node)
{
    return named(node, "g");
}

static int count_sheets(xmlNodePtr svg)
{
    int count = 0;
    for (xmlNodePtr group = svg->children; group != NULL; group = group->next) {
        for (xmlNodePtr sheet = is_group(group) ? group->children : NULL; sheet != NULL; sheet = sheet->next) {
            count += sheet_number(sheet) > 0;
        }
    }
    return count;
}

static bool add_copy(xmlNodePtr from, xmlNodePtr place)
{
    xmlNodePtr copy = xmlDocCopyNode(from, place->doc, 1);
    return copy != NULL && xmlAddChild(place, copy) != NULL;
}

enum { WITHOUT_CHILDREN = 2 }; /* of xmlDocCopyNode(): the node with its attributes */

/* The drawing without its other sheets, under `place`. They are left out, not taken out again: a long way has hundreds,
 * and to copy all of them for each is what would take the time. */
static xmlNodePtr copy_sheet(xmlNodePtr drawing, xmlNodePtr place, int keep)
{
    xmlNodePtr svg = xmlDocCopyNode(drawing, place->doc, WITHOUT_CHILDREN);
    bool good = svg != NULL && xmlAddChild(place, svg) != NULL;
    for (xmlNodePtr part = drawing->children; good && part != NULL; part = part->next) {
        if (!is_group(part)) {
            good = add_copy(part, svg);
            continue;
        }
        xmlNodePtr group = xmlDocCopyNode(part, place->doc, WITHOUT_CHILDREN);
        good = group != NULL && xmlAddChild(svg, group) != NULL;
        for (xmlNodePtr sheet = part->children; good && sheet != NULL; sheet = sheet->next) {
            const int number = sheet_number(sheet);
            good = (number > 0 && number != keep) || add_copy(sheet, group);
        }
    }
    return good ? svg : NULL;
}

/* Later sheets carry a name of their own: the title and description stand in the first. */
static bool name_sheet(struct Arena *arena, xmlNodePtr svg, int number, enum Language language)
{
    const struct Words words = {.language = language, .medium = MEDIUM_SIGNS};
    xmlNodePtr next = NULL;
    for (xmlNodePtr node = svg->children; node != NULL; node = next) {
        next = node->next;
        if (named(node, "title") || named(node, "desc")) {
            xmlUnlinkNode(node);
            xmlFreeNode(node);
        }
    }
    xmlUnsetProp(svg, to_xml("aria-labelledby"));
    return xmlSetProp(svg, to_xml("aria-label"),
                      to_xml(words_said(arena, &words, say(arena, SAY_DIAGRAM_SHEET, say_count(number))))) != NULL;
}

/* Width and height of the whole, from viewBox="0 0 297 420". */
static bool measure(xmlNodePtr svg, double *width, double *height)
{
    xmlChar *box = xmlGetNoNsProp(svg, to_xml("viewBox"));
    const char *text = box == NULL ? "" : (const char *)box;
    const char *last = strrchr(text, ' ');
    bool good = false;
    if (last != NULL && strncmp(text, "0 0 ", 4) == 0 && last > text + 4) {
        good =
            number_read(text + 4, (size_t)(last - text) - 4, width) && number_read(last + 1, strlen(last + 1), height);
    }
    xmlFree(box);
    return good && *width > 0 && *height > 0;
}

static bool frame_sheet(struct Arena *arena, xmlNodePtr svg, int number, int count, enum Language language)
{
    double width = 0, height = 0;
    if (svg == NULL || !measure(svg, &width, &height)) {
        return false;
    }
    if (count <= 1) {
        return true;
    }
    const double part = height / count;
    const char *box = arena_print(arena, "0 %s %s %s", number_significant(arena, part * (number - 1), 8),
                                  number_significant(arena, width, 8), number_significant(arena, part, 8));
    const char *tall = arena_print(arena, "%smm", number_significant(arena, part, 8));
    return xmlSetProp(svg, to_xml("viewBox"), to_xml(box)) != NULL &&
           xmlSetProp(svg, to_xml("height"), to_xml(tall)) != NULL &&
           (number == 1 || name_sheet(arena, svg, number, language));
}

bool diagram_sheets(struct Arena *arena, xmlDoc *diagram, xmlNodePtr place, enum Language language, sheet_made *made,
                    void *context)
{
    xmlNodePtr drawing = xmlDocGetRootElement(diagram);
    const int count = drawing == NULL ? 0 : count_sheets(drawing);
    for (int i = 1; i <= (count > 0 ? count : 1); i++) {
        if (drawing == NULL || count > DIAGRAM_SHEETS_MOST) {
            return false;
        }
        xmlNodePtr svg = copy_sheet(drawing, place, i);
        if (!frame_sheet(arena, svg, i, count, language) || !made(context, svg)) {
            return false;
        }
    }
    return true;
}
