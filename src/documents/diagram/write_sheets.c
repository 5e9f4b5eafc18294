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
    int parts_most;         /* of more nothing is made; 0: as many as there are */
    int count, done;
    struct Bytes *pieces;     /* before, the items of each part, behind */
    struct SvgAround *around; /* of each sheet; NULL: parts are no drawings of their own */
    bool sheets, failed;
};

static bool begin_parts(void *context, const struct Drawing *drawing, int count)
{
    struct PartsWriter *parts = context;
    parts->count = count;
    parts->drawing = *drawing;
    if (parts->parts_most > 0 && count > parts->parts_most) {
        return false;
    }
    parts->pieces = arena_array(parts->arena, (size_t)count + 2, sizeof *parts->pieces);
    parts->around = parts->sheets ? arena_array(parts->arena, (size_t)count, sizeof *parts->around) : NULL;
    return parts->pieces != NULL && (!parts->sheets || parts->around != NULL);
}

static struct Bytes kept(struct PartsWriter *parts, struct Bytes bytes)
{
    const char *data = bytes.data == NULL ? NULL : arena_text(parts->arena, bytes.data, bytes.length);
    parts->failed = parts->failed || data == NULL || arena_failed(parts->arena);
    return (struct Bytes){data, bytes.length};
}

static struct SvgAround kept_around(struct PartsWriter *parts, const struct SvgShape *shape)
{
    struct Arena *aside = arena_apart(parts->arena);
    const struct SvgAround around = svg_around(aside, &parts->drawing, shape);
    const struct SvgAround result = {kept(parts, around.before), kept(parts, around.behind)};
    arena_free(aside);
    return result;
}

static void take_part(void *context, const struct Drawing *drawing, int number)
{
    (void)number;
    struct PartsWriter *parts = context;
    struct Arena *aside = arena_apart(parts->arena);
    parts->pieces[++parts->done] = kept(parts, svg_items(aside, drawing));
    arena_free(aside);
}

/* Where the other sheets of the whole stand a line is broken too. */
static void take_sheet(void *context, const struct Drawing *drawing, int number)
{
    struct PartsWriter *sheets = context;
    take_part(sheets, drawing, number);
    sheets->around[sheets->done - 1] = kept_around(sheets, &(struct SvgShape){.sheet = sheets->count > 1 ? number : 0,
                                                                              .lines_before = number - 1,
                                                                              .lines_behind = sheets->count - number});
}

/* Of all its parts. */
static struct Pieces whole_of(struct PartsWriter *parts, const char *mark)
{
    if (parts->done != parts->count || parts->failed) {
        return (struct Pieces){0, NULL};
    }
    const struct SvgAround around = kept_around(parts, &(struct SvgShape){.mark = mark});
    parts->pieces[0] = around.before;
    parts->pieces[parts->count + 1] = around.behind;
    return parts->failed ? (struct Pieces){0, NULL} : (struct Pieces){parts->count + 2, parts->pieces};
}

static char *put(char *to, struct Bytes bytes)
{
    memcpy(to, bytes.data, bytes.length);
    return to + bytes.length;
}

static struct Bytes joined(struct Arena *arena, const char *before, struct Pieces pieces, const char *behind)
{
    const struct Bytes first = {before, strlen(before)}, last = {behind, strlen(behind)};
    size_t length = first.length + last.length;
    for (int i = 0; i < pieces.count; i++) {
        length += pieces.pieces[i].length;
    }
    char *bytes = pieces.count == 0 ? NULL : arena_alloc(arena, length + 1);
    if (bytes == NULL) {
        return (struct Bytes){NULL, 0};
    }
    char *to = put(bytes, first);
    for (int i = 0; i < pieces.count; i++) {
        to = put(to, pieces.pieces[i]);
    }
    put(to, last);
    return (struct Bytes){bytes, length};
}

struct Bytes svg_joined(struct Arena *arena, struct Pieces pieces)
{
    return joined(arena, "", pieces, "");
}

/* The items are there once, in the file. */
static struct Pieces for_papers(struct Arena *arena, const struct PartsWriter *sheets, struct Bytes file)
{
    struct Bytes *papers = arena_array(arena, (size_t)sheets->count * SVG_SHEET_PIECES, sizeof *papers);
    struct Bytes *to = papers;
    const char *at = file.data + strlen(prolog) + sheets->pieces[0].length;
    for (int i = 0; papers != NULL && i < sheets->count; i++) {
        const struct SvgAround *around = &sheets->around[i];
        const size_t length = sheets->pieces[i + 1].length;
        *to++ = (struct Bytes){arena_text(arena, around->before.data, around->before.length), around->before.length};
        *to++ = (struct Bytes){at, length};
        *to++ = (struct Bytes){arena_text(arena, around->behind.data, around->behind.length), around->behind.length};
        at += length;
    }
    return arena_failed(arena) ? (struct Pieces){0, NULL} : (struct Pieces){sheets->count * SVG_SHEET_PIECES, papers};
}

struct SvgSheets svg_sheets(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                            enum Language language, const char *mark, int sheets_most)
{
    struct PartsWriter sheets = {.arena = arena_apart(arena), .sheets = true, .parts_most = sheets_most};
    const struct SheetsTaken taken = {begin_parts, take_sheet, &sheets};
    struct SvgSheets made = {.count = 0};
    if (sheets.arena != NULL && mark != NULL) {
        const bool whole = layout_sheets(sheets.arena, plan, parts, language, mark, &taken);
        made.count = sheets.count;
        made.file = joined(arena, prolog, whole ? whole_of(&sheets, mark) : (struct Pieces){0, NULL}, line_end);
    }
    if (made.file.data != NULL) {
        made.papers = for_papers(arena, &sheets, made.file);
    }
    arena_free(sheets.arena);
    return made;
}

int svg_sheets_wanted(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                      enum Language language, const char *mark)
{
    return svg_sheets(arena, plan, parts, language, mark, 1).count;
}

struct SvgNarrow svg_narrow(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                            enum Language language, const char *mark)
{
    struct PartsWriter narrow = {.arena = arena};
    const struct SheetsTaken taken = {begin_parts, take_part, &narrow};
    struct Arena *aside = arena_apart(arena);
    struct SvgNarrow made = {.papers = {0, NULL}};
    if (aside != NULL && mark != NULL &&
        layout_narrow_parts(aside, plan, parts, language, &taken, &narrow.drawing.height_mm)) {
        made.begins = kept_around(&narrow, &(struct SvgShape){.mark = mark}).before;
        made.papers = whole_of(&narrow, NULL);
    }
    arena_free(aside);
    return made;
}

struct Bytes svg_narrow_file(struct Arena *arena, const struct SvgNarrow *narrow)
{
    if (narrow->papers.count == 0) {
        return (struct Bytes){NULL, 0};
    }
    return joined(arena, arena_print(arena, "%s%s", prolog, narrow->begins.data),
                  (struct Pieces){narrow->papers.count - 1, narrow->papers.pieces + 1}, line_end);
}

struct Bytes document_diagram_svg(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                  enum Language language)
{
    return svg_sheets(arena, plan, parts, language, document_mark(arena, plan, parts), 0).file;
}

struct Bytes document_narrow_svg(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                 enum Language language)
{
    const char *mark = document_mark(arena, plan, parts);
    struct Arena *aside = arena_apart(arena);
    const struct SvgNarrow narrow = svg_narrow(aside, plan, parts, language, mark);
    const struct Bytes file = svg_narrow_file(arena, &narrow);
    arena_free(aside);
    return file;
}
