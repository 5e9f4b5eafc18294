/* Cutting across the jobs. A job's own list may be cut already; the order goes back to the lengths that were asked for,
 * puts those of all jobs together and cuts them anew, so that one drum serves two sheds.
 *
 * Whole lengths that any of the jobs names can be bought for all of them. Offcuts that two jobs name are taken for the
 * same ones, because they lie on the same shelf: of each length there are as many as the job says that names most. That
 * may buy a length too much and never one too few. Of whole lengths that are limited there are as many, over all jobs,
 * as the job says that names least: the counter is the same one. */
#include "order_private.h"

#include <math.h>

static bool is_planned(const struct PartsCut *cut)
{
    return cut->planned && cut->opened_count > 0;
}

static const struct PartsCut *cut_of(const struct PartsList *list, const char *code)
{
    for (int i = 0; i < list->cut_count; i++) {
        if (is_planned(&list->cuts[i]) && text_same(list->cuts[i].code, code)) {
            return &list->cuts[i];
        }
    }
    return NULL;
}

/* One line a length again, in place of the line that orders whole drums. */
static int add_pieces(struct Arena *arena, const struct Part *line, const struct PartsCut *cut, struct Part *out)
{
    struct PartUse *uses = arena_array(arena, (size_t)cut->piece_count, sizeof *uses);
    for (int i = 0; uses != NULL && i < cut->piece_count; i++) {
        const struct PartPiece *piece = &cut->pieces[i];
        uses[i] = (struct PartUse){.whom = PART_FOR_PIECE, .piece = piece};
        out[i] = *line;
        out[i].code = arena_print(arena, "%s-%s", cut->code, piece->name);
        out[i].article = cut->code;
        out[i].quantity = out[i].needed = out[i].length_m = piece->length_m;
        out[i].pack = out[i].packs = 0;
        out[i].pack_word = "";
        out[i].use_count = 1;
        out[i].uses = &uses[i];
        out[i].note = NULL;
    }
    return cut->piece_count;
}

const struct PartsList *order_uncut(struct Arena *arena, const struct PartsList *list)
{
    int most = list->count;
    for (int i = 0; i < list->cut_count; i++) {
        most += is_planned(&list->cuts[i]) ? list->cuts[i].piece_count : 0;
    }
    struct PartsList *out = arena_alloc(arena, sizeof *out);
    struct Part *parts = arena_array(arena, (size_t)most, sizeof *parts);
    bool *done = arena_array(arena, (size_t)list->cut_count, sizeof *done);
    if (out == NULL || parts == NULL || done == NULL) {
        return NULL;
    }
    *out = *list;
    out->parts = parts;
    out->count = 0;
    for (int i = 0; i < list->count; i++) {
        const struct PartsCut *cut = cut_of(list, parts_article(&list->parts[i]));
        if (cut == NULL) {
            parts[out->count++] = list->parts[i];
        } else if (!done[cut - list->cuts]) {
            done[cut - list->cuts] = true;
            out->count += add_pieces(arena, &list->parts[i], cut, &parts[out->count]);
        }
    }
    return arena_failed(arena) ? NULL : out;
}

/* A whole length: named by two jobs it is the same one, and of two numbers of it the least holds. */
static void add_length(const struct PartsCut *cut, int at, double *lengths_m, int *have, struct PartsCut *asked)
{
    const int number = cut->have != NULL ? cut->have[at] : 0;
    for (int i = 0; i < asked->length_count; i++) {
        if (fabs(lengths_m[i] - cut->lengths_m[at]) < 1e-9) {
            have[i] = parts_least_have(have[i], number);
            return;
        }
    }
    lengths_m[asked->length_count] = cut->lengths_m[at];
    have[asked->length_count++] = number;
}

static int times_in(const double *lengths_m, int count, double length_m)
{
    int times = 0;
    for (int i = 0; i < count; i++) {
        times += fabs(lengths_m[i] - length_m) < 1e-9;
    }
    return times;
}

/* Adds what a job names and the others have not: each whole length once, of offcuts as many as it names more. */
static void add_stock(const struct PartsCut *cut, double *lengths_m, int *have, double *offcuts_m,
                      struct PartsCut *asked)
{
    for (int i = 0; i < cut->length_count; i++) {
        add_length(cut, i, lengths_m, have, asked);
    }
    for (int i = 0; i < cut->offcut_count; i++) {
        const double offcut_m = cut->offcuts_m[i];
        if (times_in(cut->offcuts_m, i + 1, offcut_m) > times_in(offcuts_m, asked->offcut_count, offcut_m)) {
            offcuts_m[asked->offcut_count++] = offcut_m;
        }
    }
}

/* What all jobs name for the article; false when none names anything. */
static bool gather_stock(struct Arena *arena, const struct OrderList *list, struct PartsCut *asked)
{
    int lengths = 0;
    int offcuts = 0;
    for (int j = 0; j < list->job_count; j++) {
        const struct PartsCut *cut = cut_of(list->jobs[j].parts, asked->code);
        lengths += cut != NULL ? cut->length_count : 0;
        offcuts += cut != NULL ? cut->offcut_count : 0;
    }
    double *lengths_m = arena_array(arena, (size_t)lengths, sizeof *lengths_m);
    double *offcuts_m = arena_array(arena, (size_t)offcuts, sizeof *offcuts_m);
    int *have = arena_array(arena, (size_t)lengths, sizeof *have);
    if (lengths_m == NULL || offcuts_m == NULL || have == NULL || lengths + offcuts == 0) {
        return false;
    }
    for (int j = 0; j < list->job_count; j++) {
        const struct PartsCut *cut = cut_of(list->jobs[j].parts, asked->code);
        if (cut != NULL) {
            asked->whole = cut->whole;
            add_stock(cut, lengths_m, have, offcuts_m, asked);
        }
    }
    asked->lengths_m = lengths_m;
    asked->have = have;
    asked->offcuts_m = offcuts_m;
    return true;
}

/* "drum of 100 m: barn: feeder 67 m, shed: feeder 30 m, 3 m over; ..." */
static const struct Say *opened_said(struct Arena *arena, const struct PartsCut *cut)
{
    const struct Say *all = cut->result_text;
    if (cut->note != NULL) {
        all = say_then(arena, say(arena, SAY_AND_THEN, say_part(cut->note)), all);
    }
    for (int i = cut->opened_count - 1; i >= 0; i--) {
        const struct PartOpened *opened = &cut->opened[i];
        all = say_then(
            arena,
            say(arena, SAY_OPENED, say_part(opened->what), say_part(opened->piece_text), say_part(opened->left_text)),
            all);
    }
    return all;
}

static void take_plan(struct Arena *arena, const struct PartsCut *cut, struct OrderLine *line)
{
    double by_metre_m = 0;
    line->plan = cut;
    for (int i = 0; i < cut->by_metre_count; i++) {
        by_metre_m += cut->pieces[cut->by_metre[i]].length_m;
    }
    for (int i = 0; i < cut->opened_count; i++) {
        line->at_hand += cut->opened[i].bought ? 0 : cut->opened[i].used_m;
    }
    line->buy = cut->bought_m + by_metre_m;
    line->over = line->buy + line->at_hand - line->quantity;
    line->over = line->over > 0 ? line->over : 0;
    line->whole_lengths = cut->whole_lengths;
    line->cut = opened_said(arena, cut);
    const struct SayArg metres = say_digits(by_metre_m, 9, UNIT_M);
    if (cut->whole_lengths == 0 && by_metre_m > 0) {
        line->buy_text = say(arena, SAY_AS_IS, metres);
    } else if (by_metre_m > 0) {
        line->buy_text = say(arena, SAY_AND_BY_THE_METRE, say_part(cut->buy_text), metres);
    } else {
        line->buy_text = cut->buy_text;
    }
}

void order_cut(struct Arena *arena, const struct OrderList *list, struct OrderLine *line)
{
    struct PartsCut asked = {.code = line->code, .description = line->description};
    if (line->piece_count == 0 || !gather_stock(arena, list, &asked)) {
        return;
    }
    struct PartPiece *pieces = arena_array(arena, (size_t)line->piece_count, sizeof *pieces);
    struct PartsCut *cut = arena_alloc(arena, sizeof *cut);
    for (int i = 0; pieces != NULL && i < line->piece_count; i++) {
        const struct OrderPiece *piece = &line->pieces[i];
        pieces[i].name = arena_print(arena, "%s: %s", list->jobs[piece->job].name, order_piece_name(piece));
        pieces[i].length_m = piece->length_m;
        if (piece->use != NULL && piece->use->whom == PART_FOR_PIECE) {
            pieces[i].part = piece->use->piece->part;
            pieces[i].parts = piece->use->piece->parts;
        }
    }
    asked.pieces = pieces;
    asked.piece_count = line->piece_count;
    if (pieces == NULL || cut == NULL || !parts_cut(arena, &asked, cut)) {
        return;
    }
    if (is_planned(cut)) {
        take_plan(arena, cut, line);
    } else if (cut->note != NULL) {
        line->cut = say(arena, SAY_SEMICOLON, say_part(line->cut), say_part(cut->note));
    }
}
