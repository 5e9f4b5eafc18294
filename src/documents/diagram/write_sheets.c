/* The diagram by sheets and the drawing for a phone by segments: what each draws is written as soon as it is laid out,
 * and forgotten. */
#include "documents/documents.h"

#include "layout_private.h"
#include "svg_private.h"
#include "write_svg_private.h"

#include <string.h>

/* What is drawn part by part, and what stands around it. */
struct PartsWriter {
    struct Arena *arena;
    struct Drawing drawing; /* what it is called and how large it is; nothing is on it */
    int parts_most;         /* of more nothing is made; 0: as many as there are */
    bool sheets;            /* each part is a drawing of its own in the papers */
    int count, done;
    struct Bytes *file, *papers; /* the pieces */
};
enum { SHEET_PIECES = 3 };

static bool begin_parts(void *context, const struct Drawing *drawing, int count)
{
    struct PartsWriter *parts = context;
    parts->count = count;
    parts->drawing = *drawing;
    if (parts->parts_most > 0 && count > parts->parts_most) {
        return false;
    }
    parts->file = arena_array(parts->arena, (size_t)count + 2, sizeof *parts->file);
    parts->papers =
        parts->sheets ? arena_array(parts->arena, (size_t)count * SHEET_PIECES, sizeof *parts->papers) : parts->file;
    return parts->file != NULL && parts->papers != NULL;
}

static struct Bytes kept(struct Arena *arena, struct Bytes bytes)
{
    const char *data = bytes.data == NULL ? NULL : arena_text(arena, bytes.data, bytes.length);
    return (struct Bytes){arena_failed(arena) ? NULL : data, bytes.length};
}

static struct SvgAround kept_around(const struct PartsWriter *parts, const struct SvgShape *shape)
{
    struct Arena *aside = arena_apart(parts->arena);
    const struct SvgAround around = svg_around(aside, &parts->drawing, shape);
    const struct SvgAround result = {kept(parts->arena, around.before), kept(parts->arena, around.behind)};
    arena_free(aside);
    return result;
}

static void take_part(void *context, const struct Drawing *drawing, int number)
{
    (void)number;
    struct PartsWriter *parts = context;
    struct Arena *aside = arena_apart(parts->arena);
    parts->file[++parts->done] = kept(parts->arena, svg_items(aside, drawing));
    arena_free(aside);
}

/* Where the other sheets of the whole stand a line is broken too. */
static void take_sheet(void *context, const struct Drawing *drawing, int number)
{
    struct PartsWriter *sheets = context;
    take_part(sheets, drawing, number);
    const struct SvgAround around = kept_around(sheets, &(struct SvgShape){.sheet = sheets->count > 1 ? number : 0,
                                                                           .lines_before = number - 1,
                                                                           .lines_behind = sheets->count - number});
    struct Bytes *pieces = &sheets->papers[(sheets->done - 1) * SHEET_PIECES];
    pieces[0] = around.before;
    pieces[1] = sheets->file[sheets->done];
    pieces[2] = around.behind;
}

/* Of all its parts. */
static struct Pieces whole_of(struct PartsWriter *parts, const char *mark)
{
    if (parts->done != parts->count) {
        return (struct Pieces){0, NULL};
    }
    const struct SvgAround around = kept_around(parts, &(struct SvgShape){.mark = mark});
    parts->file[0] = around.before;
    parts->file[parts->count + 1] = around.behind;
    return arena_failed(parts->arena) ? (struct Pieces){0, NULL} : (struct Pieces){parts->count + 2, parts->file};
}

struct SvgSheets svg_sheets(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                            enum Language language, const char *mark, int sheets_most)
{
    struct PartsWriter sheets = {.arena = arena, .sheets = true, .parts_most = sheets_most};
    const struct SheetsTaken taken = {begin_parts, take_sheet, &sheets};
    struct Arena *aside = arena_apart(arena);
    struct SvgSheets made = {.count = 0};
    if (aside != NULL && mark != NULL) {
        const bool whole = layout_sheets(aside, plan, parts, language, mark, &taken);
        made.count = sheets.count;
        if (whole) {
            made.file = whole_of(&sheets, mark);
            made.papers = (struct Pieces){made.file.count == 0 ? 0 : sheets.count * SHEET_PIECES, sheets.papers};
        }
    }
    arena_free(aside);
    return made;
}

struct Pieces svg_sheet(const struct SvgSheets *sheets, int index)
{
    return (struct Pieces){SHEET_PIECES, &sheets->papers.pieces[index * SHEET_PIECES]};
}

struct Pieces svg_narrow(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                         enum Language language, const char *mark)
{
    struct PartsWriter narrow = {.arena = arena};
    const struct SheetsTaken taken = {begin_parts, take_part, &narrow};
    struct Arena *aside = arena_apart(arena);
    struct Pieces made = {0, NULL};
    if (aside != NULL && layout_narrow_parts(aside, plan, parts, language, &taken, &narrow.drawing.height_mm)) {
        made = whole_of(&narrow, mark);
    }
    arena_free(aside);
    return made;
}

static char *put(char *to, const char *bytes, size_t length)
{
    memcpy(to, bytes, length);
    return to + length;
}

size_t svg_length(struct Pieces pieces)
{
    size_t length = 0;
    for (int i = 0; i < pieces.count; i++) {
        length += pieces.pieces[i].length;
    }
    return length;
}

static struct Bytes joined(struct Arena *arena, const char *before, struct Pieces pieces, const char *behind)
{
    const size_t length = strlen(before) + svg_length(pieces) + strlen(behind);
    char *bytes = pieces.count == 0 ? NULL : arena_alloc(arena, length + 1);
    if (bytes == NULL) {
        return (struct Bytes){NULL, 0};
    }
    char *to = put(bytes, before, strlen(before));
    for (int i = 0; i < pieces.count; i++) {
        to = put(to, pieces.pieces[i].data, pieces.pieces[i].length);
    }
    put(to, behind, strlen(behind));
    return (struct Bytes){bytes, length};
}

struct Bytes svg_file(struct Arena *arena, struct Pieces pieces)
{
    return joined(arena, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n", pieces, "\n");
}

struct Bytes svg_joined(struct Arena *arena, struct Pieces pieces)
{
    return joined(arena, "", pieces, "");
}

/* Made apart, and kept as one. */
static struct Bytes only_file(struct Arena *arena, struct Arena *aside, struct Pieces pieces)
{
    const struct Bytes bytes = aside == NULL ? (struct Bytes){NULL, 0} : svg_file(arena, pieces);
    arena_free(aside);
    return bytes;
}

struct Bytes document_diagram_svg(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                  enum Language language)
{
    const char *mark = document_mark(arena, plan, parts);
    struct Arena *aside = arena_apart(arena);
    return only_file(arena, aside, svg_sheets(aside, plan, parts, language, mark, 0).file);
}

struct Bytes document_narrow_svg(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                 enum Language language)
{
    const char *mark = document_mark(arena, plan, parts);
    struct Arena *aside = arena_apart(arena);
    return only_file(arena, aside, mark == NULL ? (struct Pieces){0, NULL} : svg_narrow(aside, plan, parts, language, mark));
}
