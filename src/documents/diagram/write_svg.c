/* The drawing list as SVG 1.1: plain elements with their own attributes, no script, no style sheet, nothing from
 * outside. One user unit is one millimetre. */
#include "write_svg_private.h"

#include "layout_private.h"

#include <string.h>

enum { PLACE_DECIMALS = 2, DEPTH_MOST = 8 };

static const char font_list[] = "'Liberation Sans', Arial, Helvetica, 'DejaVu Sans', sans-serif";

static const char *ink_text(enum Ink ink)
{
    switch (ink) {
    case INK_NONE: return "none";
    case INK_BLACK: return "#000000";
    case INK_GREY: return "#222222";
    case INK_PALE: return "#b8b8b8";
    case INK_SHADE: return "#ececec";
    case INK_LOAD: return "#dcdcdc";
    case INK_ACCENT: return "#8c2f00";
    case INK_WHITE: return "#ffffff";
    }
    return "none";
}

/* A dot of the screen is a quarter of a millimetre. */
static const char *dash_text(enum Dash dash, bool dots)
{
    switch (dash) {
    case DASH_NONE: return "";
    case DASH_SHORT: return dots ? "4 3" : "1 0.8";
    case DASH_LONG: return dots ? "7 4" : "2.4 1";
    case DASH_CHAIN: return dots ? "12 3 3 3" : "4 0.8 0.8 0.8";
    }
    return "";
}

struct SvgWriter {
    struct XmlOut *out;
    struct Arena *arena;
    const struct Drawing *drawing;
    const struct SvgShape *shape;
};

/* Before a thing that lies so deep; papers show the lines as they are broken here, so saving breaks none. */
static void break_line(const struct SvgWriter *writer, struct XmlElement *parent, int depth)
{
    static const char *const breaks[DEPTH_MOST + 3] = {
        "\n",
        "\n  ",
        "\n    ",
        "\n      ",
        "\n        ",
        "\n          ",
        "\n            ",
        "\n              ",
        "\n                ",
        "\n                  ",
        "\n                    ",
    };
    xml_text(writer->out, parent, breaks[depth]);
}

static void put_number(const struct SvgWriter *writer, struct XmlElement *element, const char *name, double value)
{
    xml_attribute(writer->out, element, name, number_text(writer->arena, value, PLACE_DECIMALS));
}

static void put_pen(const struct SvgWriter *writer, struct XmlElement *element, const struct DrawItem *item)
{
    xml_attribute(writer->out, element, "fill", ink_text(item->fill));
    if (item->pen.ink == INK_NONE) {
        return;
    }
    xml_attribute(writer->out, element, "stroke", ink_text(item->pen.ink));
    put_number(writer, element, "stroke-width", item->pen.width_mm);
    xml_attribute_if(writer->out, element, "stroke-dasharray", dash_text(item->pen.dash, writer->drawing->dots));
}

static void write_path(const struct SvgWriter *writer, struct XmlElement *parent, const struct DrawItem *item)
{
    struct XmlElement *path = xml_child(writer->out, parent, "path");
    put_pen(writer, path, item);
    struct TextBuilder way = text_builder(writer->arena);
    for (size_t i = 0; i < item->point_count; i++) {
        const struct DrawPoint *point = &writer->drawing->points[item->first_point + i];
        if (i > 0 && point->move && item->closed) {
            text_add_char(&way, 'z');
        }
        text_add_char(&way, point->move ? 'M' : 'L');
        number_add(&way, point->x_mm, PLACE_DECIMALS);
        text_add_char(&way, ' ');
        number_add(&way, point->y_mm, PLACE_DECIMALS);
    }
    if (item->closed) {
        text_add_char(&way, 'z');
    }
    xml_attribute(writer->out, path, "d", text_done(&way));
}

static void write_circle(const struct SvgWriter *writer, struct XmlElement *parent, const struct DrawItem *item)
{
    struct XmlElement *circle = xml_child(writer->out, parent, "circle");
    put_number(writer, circle, "cx", item->x_mm);
    put_number(writer, circle, "cy", item->y_mm);
    put_number(writer, circle, "r", item->radius_mm);
    put_pen(writer, circle, item);
}

static void write_text(const struct SvgWriter *writer, struct XmlElement *parent, const struct DrawItem *item)
{
    struct XmlElement *text = xml_child(writer->out, parent, "text");
    put_number(writer, text, "x", item->x_mm);
    put_number(writer, text, "y", item->y_mm);
    put_number(writer, text, "font-size", item->style.size_mm);
    if (item->style.bold) {
        xml_attribute(writer->out, text, "font-weight", "bold");
    }
    if (item->style.ink != INK_BLACK) {
        xml_attribute(writer->out, text, "fill", ink_text(item->style.ink));
    }
    if (item->style.anchor != ANCHOR_LEFT) {
        xml_attribute(writer->out, text, "text-anchor", item->style.anchor == ANCHOR_MIDDLE ? "middle" : "end");
    }
    if (item->fitted) {
        put_number(writer, text, "textLength", item->width_mm);
        xml_attribute(writer->out, text, "lengthAdjust", "spacingAndGlyphs");
    }
    xml_text(writer->out, text, item->text);
}

enum { OF_ALL = 1 }; /* how deep the group lies that all things are in */

static void write_items(const struct SvgWriter *writer, struct XmlElement *all)
{
    struct XmlElement *parents[DEPTH_MOST] = {all};
    bool holds[DEPTH_MOST] = {false};
    int depth = 0;
    for (size_t i = 0; i < writer->drawing->count; i++) {
        const struct DrawItem *item = &writer->drawing->items[i];
        if (item->kind != DRAW_GROUP_END && (item->kind != DRAW_GROUP || depth + 1 < DEPTH_MOST)) {
            break_line(writer, parents[depth], OF_ALL + 1 + depth);
            holds[depth] = true;
        }
        switch (item->kind) {
        case DRAW_PATH: write_path(writer, parents[depth], item); break;
        case DRAW_CIRCLE: write_circle(writer, parents[depth], item); break;
        case DRAW_TEXT: write_text(writer, parents[depth], item); break;
        case DRAW_GROUP:
            if (depth + 1 < DEPTH_MOST) {
                parents[depth + 1] = xml_child(writer->out, parents[depth], "g");
                depth++;
                xml_attribute_if(writer->out, parents[depth], "id", item->id);
                holds[depth] = *item->text != '\0';
                if (holds[depth]) {
                    break_line(writer, parents[depth], OF_ALL + 1 + depth);
                    xml_text(writer->out, xml_child(writer->out, parents[depth], "title"), item->text);
                }
            }
            break;
        case DRAW_GROUP_END:
            if (depth > 0 && holds[depth]) {
                break_line(writer, parents[depth], OF_ALL + depth);
            }
            depth -= depth > 0;
            break;
        }
    }
}

/* Rendered size and user units agree, so that a print keeps the scale. */
static void write_view(const struct SvgWriter *writer, struct XmlElement *root)
{
    const struct Drawing *drawing = writer->drawing;
    struct Arena *arena = writer->arena;
    const char *width = number_text(arena, drawing->width_mm, 0);
    const char *height = number_text(arena, drawing->height_mm, 0), *from = "0";
    if (writer->shape->sheet > 0) {
        height = number_significant(arena, SHEET_HEIGHT, 8);
        from = number_significant(arena, SHEET_HEIGHT * (writer->shape->sheet - 1), 8);
    }
    const char *unit = drawing->dots ? "" : "mm";
    xml_attribute(writer->out, root, "width", arena_print(arena, "%s%s", width, unit));
    xml_attribute(writer->out, root, "height", arena_print(arena, "%s%s", height, unit));
    xml_attribute(writer->out, root, "viewBox", arena_print(arena, "0 %s %s %s", from, width, height));
}

/* Title, mark and description, by which the whole and a first sheet are known. */
static void write_names(const struct SvgWriter *writer, struct XmlElement *root)
{
    const struct Drawing *drawing = writer->drawing;
    /* both drawings may stand in one page */
    const char *title_id = drawing->dots ? "narrow-title" : "diagram-title";
    const char *description_id = drawing->dots ? "narrow-description" : "diagram-description";
    xml_attribute(writer->out, root, "aria-labelledby", arena_print(writer->arena, "%s %s", title_id, description_id));
    break_line(writer, root, OF_ALL);
    struct XmlElement *title = xml_child(writer->out, root, "title");
    xml_attribute(writer->out, title, "id", title_id);
    xml_text(writer->out, title, drawing->title);
    if (writer->shape->mark != NULL) { /* for programs; whoever looks at it finds it at the foot */
        break_line(writer, root, OF_ALL);
        struct XmlElement *metadata = xml_child(writer->out, root, "metadata");
        xml_attribute(writer->out, metadata, "id", "sheet-mark");
        xml_text(writer->out, metadata, writer->shape->mark);
    }
    break_line(writer, root, OF_ALL);
    struct XmlElement *description = xml_child(writer->out, root, "desc");
    xml_attribute(writer->out, description, "id", description_id);
    xml_text(writer->out, description, drawing->description);
}

/* A later sheet has a name of its own. */
static void write_sheet_name(const struct SvgWriter *writer, struct XmlElement *root)
{
    const struct Words words = {.language = writer->drawing->language, .medium = MEDIUM_SIGNS};
    xml_attribute(
        writer->out, root, "aria-label",
        words_said(writer->arena, &words, say(writer->arena, SAY_DIAGRAM_SHEET, say_count(writer->shape->sheet))));
    break_line(writer, root, OF_ALL); /* where the names of the first stand */
    break_line(writer, root, OF_ALL);
}

/* The group that all things are in. */
static struct XmlElement *write_root(const struct SvgWriter *writer)
{
    struct XmlElement *root = xml_root(writer->out);
    xml_space(writer->out, root, "http://www.w3.org/2000/svg");
    xml_attribute(writer->out, root, "version", "1.1");
    write_view(writer, root);
    xml_attribute(writer->out, root, "xml:lang", words_code(writer->drawing->language));
    xml_attribute(writer->out, root, "role", "img");
    if (writer->shape->sheet > 1) {
        write_sheet_name(writer, root);
    } else {
        write_names(writer, root);
    }
    break_line(writer, root, OF_ALL);
    struct XmlElement *all = xml_child(writer->out, root, "g");
    xml_attribute(writer->out, all, "font-family", font_list);
    xml_attribute(writer->out, all, "fill", "#000000");
    xml_attribute(writer->out, all, "stroke", "none");
    xml_attribute(writer->out, all, "stroke-linejoin", "round");
    return all;
}

/* In an element that stands for those around it: what it holds is kept. */
struct Bytes svg_items(struct Arena *arena, const struct Drawing *drawing)
{
    static const char begins[] = "<g>", ends[] = "</g>", holds_nothing[] = "<g/>";
    const struct SvgWriter writer = {.out = xml_out_new_piece(arena, "g"), .arena = arena, .drawing = drawing};
    write_items(&writer, xml_root(writer.out));
    const struct Bytes saved = xml_out_finish(writer.out);
    if (saved.data == NULL || text_same(saved.data, holds_nothing)) {
        return (struct Bytes){saved.data, 0};
    }
    return (struct Bytes){saved.data + strlen(begins), saved.length - strlen(begins) - strlen(ends)};
}

/* Written without anything in it, and parted where that would stand. */
struct SvgAround svg_around(struct Arena *arena, const struct Drawing *drawing, const struct SvgShape *shape)
{
    static const char line[] = "\n    ", ends[] = "\n  </g>\n</svg>"; /* as break_line() begins them */
    const struct SvgWriter writer = {xml_out_new_piece(arena, "svg"), arena, drawing, shape};
    struct XmlElement *all = write_root(&writer);
    for (int i = 0; i < shape->lines_before + shape->lines_behind; i++) {
        break_line(&writer, all, OF_ALL + 1);
    }
    break_line(&writer, all, OF_ALL);
    break_line(&writer, xml_root(writer.out), 0);
    const struct Bytes saved = xml_out_finish(writer.out);
    const size_t behind = (size_t)shape->lines_behind * strlen(line) + strlen(ends);
    if (saved.data == NULL || saved.length < behind || !text_same(saved.data + (saved.length - strlen(ends)), ends)) {
        return (struct SvgAround){{NULL, 0}, {NULL, 0}};
    }
    const size_t before = saved.length - behind;
    return (struct SvgAround){{saved.data, before}, {saved.data + before, behind}};
}
