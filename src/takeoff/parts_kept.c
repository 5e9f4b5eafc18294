/* A list by itself: what an order asks of it, so that the plan that it was counted from can go. Of the runs and
 * segments that an article goes to an order knows the names, and of the places of a part the first. */
#include "parts.h"
#include "plan/say.h"

#include <string.h>

/* One run or segment that was kept already: many parts go to it. */
struct KeptOne {
    const void *from;
    void *to;
    struct KeptOne *next;
};

struct Keeping {
    struct Arena *arena;
    struct KeptOne *runs, *segments;
};

static void *kept_before(const struct KeptOne *list, const void *from)
{
    while (list != NULL && list->from != from) {
        list = list->next;
    }
    return list == NULL ? NULL : list->to;
}

static void remember(struct Arena *arena, struct KeptOne **list, const void *from, void *to)
{
    struct KeptOne *one = arena_alloc(arena, sizeof *one);
    if (one != NULL) {
        *one = (struct KeptOne){from, to, *list};
        *list = one;
    }
}

static const struct Run *run_kept(struct Keeping *keeping, const struct Run *run)
{
    struct Run *kept = run == NULL ? NULL : kept_before(keeping->runs, run);
    if (run != NULL && kept == NULL && (kept = arena_alloc(keeping->arena, sizeof *kept)) != NULL) {
        kept->name = text_kept(keeping->arena, run->name);
        remember(keeping->arena, &keeping->runs, run, kept);
    }
    return kept;
}

static const struct Segment *segment_kept(struct Keeping *keeping, const struct Segment *segment)
{
    struct Segment *kept = segment == NULL ? NULL : kept_before(keeping->segments, segment);
    if (segment != NULL && kept == NULL && (kept = arena_alloc(keeping->arena, sizeof *kept)) != NULL) {
        kept->name = text_kept(keeping->arena, segment->name);
        remember(keeping->arena, &keeping->segments, segment, kept);
    }
    return kept;
}

static const struct PartPiece *pieces_kept(struct Arena *arena, const struct PartPiece *pieces, int count)
{
    struct PartPiece *kept = arena_array(arena, (size_t)count, sizeof *kept);
    for (int i = 0; kept != NULL && i < count; i++) {
        kept[i] = pieces[i];
        kept[i].name = text_kept(arena, pieces[i].name);
    }
    return kept;
}

static const struct PartUse *use_kept(struct Keeping *keeping, const struct PartUse *use)
{
    struct PartUse *kept = arena_alloc(keeping->arena, sizeof *kept);
    if (kept != NULL) {
        *kept = (struct PartUse){.whom = use->whom,
                                 .run = run_kept(keeping, use->run),
                                 .place = use->place,
                                 .segment = segment_kept(keeping, use->segment)};
        kept->piece = use->piece == NULL ? NULL : pieces_kept(keeping->arena, use->piece, 1);
    }
    return kept;
}

static struct Part part_kept(struct Keeping *keeping, const struct Part *part)
{
    struct Arena *arena = keeping->arena;
    struct Part kept = *part;
    kept.code = text_kept(arena, part->code);
    kept.description = say_kept(arena, part->description);
    kept.standard = text_kept(arena, part->standard);
    kept.unit = text_kept(arena, part->unit);
    kept.pack_word = text_kept(arena, part->pack_word);
    kept.use_count = part->use_count > 0 ? 1 : 0;
    kept.uses = part->use_count > 0 ? use_kept(keeping, &part->uses[0]) : NULL;
    kept.note = say_kept(arena, part->note);
    kept.fitted = kept.gland = NULL; /* of the crew's papers */
    kept.article = text_kept(arena, part->article);
    return kept;
}

static void *copy(struct Arena *arena, const void *from, int count, size_t size)
{
    void *kept = from == NULL ? NULL : arena_array(arena, (size_t)count, size);
    if (kept != NULL && count > 0) {
        memcpy(kept, from, (size_t)count * size);
    }
    return kept;
}

/* What was asked, and that it was decided; an order cuts anew. */
static struct PartsCut cut_kept(struct Arena *arena, const struct PartsCut *cut)
{
    return (struct PartsCut){.code = text_kept(arena, cut->code),
                             .description = say_kept(arena, cut->description),
                             .whole = cut->whole,
                             .piece_count = cut->piece_count,
                             .pieces = pieces_kept(arena, cut->pieces, cut->piece_count),
                             .length_count = cut->length_count,
                             .lengths_m = copy(arena, cut->lengths_m, cut->length_count, sizeof *cut->lengths_m),
                             .have = copy(arena, cut->have, cut->length_count, sizeof *cut->have),
                             .offcut_count = cut->offcut_count,
                             .offcuts_m = copy(arena, cut->offcuts_m, cut->offcut_count, sizeof *cut->offcuts_m),
                             .planned = cut->planned,
                             .opened_count = cut->opened_count};
}

static const struct Say *const *notes_kept(struct Arena *arena, const struct PartsList *list)
{
    const struct Say **kept = arena_array(arena, (size_t)list->note_count,
                                          sizeof *kept); // NOLINT(bugprone-sizeof-expression): a list of pointers
    for (int i = 0; kept != NULL && i < list->note_count; i++) {
        kept[i] = say_kept(arena, list->notes[i]);
    }
    return kept;
}

const struct PartsList *parts_kept(struct Arena *arena, const struct PartsList *list)
{
    struct Keeping keeping = {.arena = arena};
    struct PartsList *kept = arena_alloc(arena, sizeof *kept);
    struct Part *parts = arena_array(arena, (size_t)list->count, sizeof *parts);
    struct PartsCut *cuts = arena_array(arena, (size_t)list->cut_count, sizeof *cuts);
    const struct Say *const *notes = notes_kept(arena, list);
    if (kept == NULL || parts == NULL || cuts == NULL || notes == NULL) {
        return NULL;
    }
    for (int i = 0; i < list->count; i++) {
        parts[i] = part_kept(&keeping, &list->parts[i]);
    }
    for (int i = 0; i < list->cut_count; i++) {
        cuts[i] = cut_kept(arena, &list->cuts[i]);
    }
    *kept = (struct PartsList){.count = list->count,
                               .parts = parts,
                               .note_count = list->note_count,
                               .notes = notes,
                               .cut_count = list->cut_count,
                               .cuts = cuts,
                               .prices_note = say_kept(arena, list->prices_note),
                               .range_note = say_kept(arena, list->range_note)};
    return arena_failed(arena) ? NULL : kept;
}
