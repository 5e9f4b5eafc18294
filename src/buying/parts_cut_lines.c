/* The lines of an article that is cut from whole lengths: one line that orders what the plan opens, and where a piece
 * is longer than all of that, one by the metre. Without a plan the lines stay as they were counted. */
#include "buying.h"
#include "plan/say.h"

const char *parts_article(const struct Part *part)
{
    return part->article != NULL && *part->article != '\0' ? part->article : part->code;
}

static const struct PartsCut *cut_of(const struct Part *part, int cut_count, const struct PartsCut *cuts)
{
    for (int i = 0; i < cut_count; i++) {
        if (cuts[i].planned && cuts[i].opened_count > 0 && text_same(cuts[i].code, parts_article(part))) {
            return &cuts[i];
        }
    }
    return NULL;
}

/* The uses of every line of the article. */
static void take_uses(struct Arena *arena, const struct PartsList *list, struct Part *part)
{
    int most = 0;
    for (int i = 0; i < list->count; i++) {
        most += list->parts[i].use_count;
    }
    struct PartUse *uses = arena_array(arena, (size_t)most, sizeof *uses);
    part->use_count = 0;
    part->uses = uses;
    for (int i = 0; uses != NULL && i < list->count; i++) {
        const struct Part *line = &list->parts[i];
        for (int k = 0; text_same(parts_article(line), part->article) && k < line->use_count; k++) {
            uses[part->use_count++] = line->uses[k];
        }
    }
}

static struct Part whole_line(struct Arena *arena, const struct PartsList *list, const struct Part *first,
                              const struct PartsCut *cut)
{
    struct Part part = *first;
    part.code = part.article = cut->code;
    part.quantity = cut->bought_m;
    part.needed = cut->cut_m;
    part.pack = part.packs = 0;
    part.length_m = 0;
    take_uses(arena, list, &part);
    part.note = cut->whole_lengths > 0
                    ? say(arena, cut->offcuts_used > 0 ? SAY_NOTE_WHOLE_AND_OFFCUTS : SAY_NOTE_WHOLE_LENGTHS,
                          say_part(cut->buy_text))
                    : say(arena, SAY_NOTE_FROM_OFFCUTS);
    return part;
}

static struct Part metre_line(struct Arena *arena, const struct Part *first, const struct PartsCut *cut)
{
    struct Part part = *first;
    struct PartUse *uses = arena_array(arena, (size_t)cut->by_metre_count, sizeof *uses);
    part.code = arena_print(arena, "%s-metre", cut->code);
    part.article = cut->code;
    part.quantity = part.length_m = 0;
    part.pack = part.packs = 0;
    for (int i = 0; uses != NULL && i < cut->by_metre_count; i++) {
        const struct PartPiece *piece = &cut->pieces[cut->by_metre[i]];
        part.quantity += piece->length_m;
        uses[i] = (struct PartUse){.whom = PART_FOR_PIECE, .piece = piece};
    }
    part.needed = part.quantity;
    part.length_m = cut->by_metre_count == 1 ? part.quantity : 0;
    part.use_count = cut->by_metre_count;
    part.uses = uses;
    part.note = cut->note;
    return part;
}

const struct PartsList *parts_with_cuts(struct Arena *arena, const struct PartsList *list, int cut_count,
                                        const struct PartsCut *cuts)
{
    struct PartsList *out = arena_alloc(arena, sizeof *out);
    struct Part *parts = arena_array(arena, (size_t)list->count + (size_t)cut_count + 1, sizeof *parts);
    bool *done = arena_array(arena, (size_t)cut_count + 1, sizeof *done);
    if (out == NULL || parts == NULL || done == NULL) {
        return NULL;
    }
    *out = *list;
    out->parts = parts;
    out->count = 0;
    out->cuts = cuts;
    out->cut_count = cut_count;
    for (int i = 0; i < list->count; i++) {
        const struct PartsCut *cut = cut_of(&list->parts[i], cut_count, cuts);
        if (cut == NULL) {
            parts[out->count++] = list->parts[i];
        } else if (!done[cut - cuts]) {
            done[cut - cuts] = true;
            parts[out->count++] = whole_line(arena, list, &list->parts[i], cut);
            if (cut->by_metre_count > 0) {
                parts[out->count++] = metre_line(arena, &list->parts[i], cut);
            }
        }
    }
    return arena_failed(arena) ? NULL : out;
}

const struct PartsList *parts_bought(struct Arena *arena, const struct PartsList *counted)
{
    struct PartsCut *cuts = arena_array(arena, (size_t)counted->cut_count + 1, sizeof *cuts);
    for (int i = 0; cuts != NULL && i < counted->cut_count; i++) {
        if (!parts_cut(arena, &counted->cuts[i], &cuts[i])) {
            return NULL;
        }
    }
    return cuts != NULL ? parts_with_cuts(arena, counted, counted->cut_count, cuts) : NULL;
}
