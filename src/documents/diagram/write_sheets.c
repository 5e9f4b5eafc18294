/* The diagram by sheets and the drawing for a phone by segments: what each draws is written as soon as it is laid out,
 * and forgotten. */
#include "documents/documents.h"

#include "layout_private.h"
#include "svg_private.h"
#include "write_svg_private.h"

#include <string.h>

static const char prolog[] = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n", line_end[] = "\n";

/* What is drawn part by part, and what stands around it. */
struct PartsWriter {
    struct Arena *arena;
    struct Drawing drawing; /* what it is called and how large it is; nothing is on it */
    const struct SvgTaker *taker;
    int count, done;
    struct Bytes *items; /* of each part */
};

static bool begin_parts(void *context, const struct Drawing *drawing, int count)
{
    struct PartsWriter *parts = context;
    parts->count = count;
    parts->drawing = *drawing;
    parts->items = parts->taker != NULL && count > parts->taker->sheets_most
                       ? NULL
                       : arena_array(parts->arena, (size_t)count, sizeof *parts->items);
    return parts->items != NULL;
}

static struct Bytes kept(struct Arena *arena, struct Bytes bytes)
{
    const char *data = bytes.data == NULL ? NULL : arena_text(arena, bytes.data, bytes.length);
    return (struct Bytes){arena_failed(arena) ? NULL : data, bytes.length};
}

static char *put(char *to, const char *bytes, size_t length)
{
    memcpy(to, bytes, length);
    return to + length;
}

/* One after the other, in a file or as they stand in a paper. */
static struct Bytes put_together(struct Arena *arena, const struct SvgAround *around, const struct Bytes *items,
                                 int count, bool file)
{
    bool whole = around->before.data != NULL;
    size_t length = around->before.length + around->behind.length + (file ? strlen(prolog) + strlen(line_end) : 0);
    for (int i = 0; whole && i < count; i++) {
        whole = items[i].data != NULL;
        length += items[i].length;
    }
    char *bytes = whole ? arena_alloc(arena, length + 1) : NULL;
    if (bytes == NULL) {
        return (struct Bytes){NULL, 0};
    }
    char *to = put(bytes, prolog, file ? strlen(prolog) : 0);
    to = put(to, around->before.data, around->before.length);
    for (int i = 0; i < count; i++) {
        to = put(to, items[i].data, items[i].length);
    }
    to = put(to, around->behind.data, around->behind.length);
    put(to, line_end, file ? strlen(line_end) : 0);
    return (struct Bytes){bytes, length};
}

static struct Bytes all_parts(struct Arena *arena, const struct PartsWriter *parts, const char *mark, bool file)
{
    const struct SvgAround around = svg_around(parts->arena, &parts->drawing, &(struct SvgShape){.mark = mark});
    return put_together(arena, &around, parts->items, parts->done, file);
}

static void take_part(void *context, const struct Drawing *drawing, int number)
{
    (void)number;
    struct PartsWriter *parts = context;
    struct Arena *aside = arena_apart(parts->arena);
    parts->items[parts->done++] = kept(parts->arena, svg_items(aside, drawing));
    arena_free(aside);
}

/* Where the other sheets of the whole stand a line is broken too. */
static void take_sheet(void *context, const struct Drawing *drawing, int number)
{
    struct PartsWriter *sheets = context;
    take_part(sheets, drawing, number);
    if (sheets->taker != NULL) {
        struct Arena *aside = arena_apart(sheets->arena);
        const struct SvgShape shape = {.sheet = sheets->count > 1 ? number : 0,
                                       .lines_before = number - 1,
                                       .lines_behind = sheets->count - number};
        const struct SvgAround around = svg_around(aside, &sheets->drawing, &shape);
        sheets->taker->take(sheets->taker->context,
                            put_together(aside, &around, &sheets->items[sheets->done - 1], 1, false));
        arena_free(aside);
    }
}

struct SvgSheets svg_sheets(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                            enum Language language, const char *mark, const struct SvgTaker *taker)
{
    struct PartsWriter sheets = {.arena = arena_apart(arena), .taker = taker};
    const struct SheetsTaken taken = {begin_parts, take_sheet, &sheets};
    struct SvgSheets made = {.count = 0};
    if (sheets.arena != NULL && mark != NULL) {
        const bool whole = layout_sheets(sheets.arena, plan, parts, language, mark, &taken);
        made.count = sheets.count;
        made.file = whole && sheets.done == sheets.count ? all_parts(arena, &sheets, mark, true) : made.file;
    }
    arena_free(sheets.arena);
    return made;
}

struct Bytes document_diagram_svg(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                  enum Language language)
{
    return svg_sheets(arena, plan, parts, language, document_mark(arena, plan, parts), NULL).file;
}

static struct Bytes narrow(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                           enum Language language, const char *mark, bool file)
{
    struct PartsWriter narrow = {.arena = arena_apart(arena)};
    const struct SheetsTaken taken = {begin_parts, take_part, &narrow};
    struct Bytes bytes = {NULL, 0};
    if (narrow.arena != NULL &&
        layout_narrow_parts(narrow.arena, plan, parts, language, &taken, &narrow.drawing.height_mm)) {
        bytes = all_parts(arena, &narrow, mark, file);
    }
    arena_free(narrow.arena);
    return bytes;
}

struct Bytes document_narrow_svg(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                 enum Language language)
{
    const char *mark = document_mark(arena, plan, parts);
    return mark == NULL ? (struct Bytes){NULL, 0} : narrow(arena, plan, parts, language, mark, true);
}

struct Bytes svg_narrow(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                        enum Language language)
{
    return narrow(arena, plan, parts, language, NULL, false);
}
