/* How one article is cut: from what is wanted and what can be had to a plan in words. Lengths become whole millimetres,
 * pieces rounded up and stock rounded down; the deciding is done by cutting_plan(). */
#include "parts_cut_private.h"

#include <math.h>

enum { LENGTH_DIGITS = 9 };
static const double hair_mm = 1e-6; /* 67.0000000001 m is 67 m */

static struct SayArg metres(double length_m)
{
    return say_digits(length_m, LENGTH_DIGITS, UNIT_M);
}

static double in_metres(int64_t length_mm)
{
    return (double)length_mm / 1000;
}

/* Too long for the planner's own limit becomes just more than that, and the planner tells. */
static int in_millimetres(double length_m, bool up)
{
    const double length_mm = up ? ceil(length_m * 1000 - hair_mm) : floor(length_m * 1000 + hair_mm);
    return length_mm < CUTTING_LENGTH_MOST_MM ? (int)length_mm : CUTTING_LENGTH_MOST_MM + 1;
}

static bool is_limited(const struct PartsCut *asked, int length)
{
    return asked->have != NULL && asked->have[length] > 0;
}

static bool set_job(struct Arena *arena, const struct PartsCut *asked, struct CuttingJob *job)
{
    struct CuttingPiece *pieces = arena_array(arena, (size_t)asked->piece_count + 1, sizeof *pieces);
    struct CuttingStock *stock = arena_array(arena, (size_t)asked->length_count + 1, sizeof *stock);
    struct CuttingOffcut *offcuts = arena_array(arena, (size_t)asked->offcut_count + 1, sizeof *offcuts);
    if (pieces == NULL || stock == NULL || offcuts == NULL) {
        return false;
    }
    for (int i = 0; i < asked->piece_count; i++) {
        pieces[i] = (struct CuttingPiece){asked->pieces[i].name, in_millimetres(asked->pieces[i].length_m, true)};
    }
    for (int i = 0; i < asked->length_count; i++) {
        stock[i] = (struct CuttingStock){.name = "whole",
                                         .length_mm = in_millimetres(asked->lengths_m[i], false),
                                         .available = is_limited(asked, i) ? asked->have[i] : CUTTING_UNLIMITED,
                                         .price = CUTTING_PRICE_UNKNOWN};
    }
    for (int i = 0; i < asked->offcut_count; i++) {
        offcuts[i] = (struct CuttingOffcut){"offcut", in_millimetres(asked->offcuts_m[i], false)};
    }
    *job = (struct CuttingJob){asked->piece_count, pieces, asked->length_count, stock, asked->offcut_count, offcuts, 0};
    return true;
}

/* "feeder 67 m, kiln 30 m": sayings that follow each other, because they may be many. */
static const struct Say *pieces_said(struct Arena *arena, const struct PartsCut *asked, int count, const int *pieces)
{
    const struct Say *all = NULL;
    for (int i = count - 1; i >= 0; i--) {
        const struct PartPiece *piece = &asked->pieces[pieces[i]];
        all = say_then(arena,
                       say(arena, i + 1 < count ? SAY_PIECE_AND_MORE : SAY_PIECE,
                           say_part(parts_piece_said(arena, piece)), metres(piece->length_m)),
                       all);
    }
    return all;
}

/* "1 drum of 100 m" */
static const struct Say *wholes_said(struct Arena *arena, const struct PartsCut *asked, int count, double length_m)
{
    return say(arena, asked->whole == PART_DRUMS ? SAY_DRUMS_OF : SAY_LENGTHS_OF, say_count(count), metres(length_m));
}

static const struct Say *what_said(struct Arena *arena, const struct PartsCut *asked, bool bought, double length_m)
{
    const enum Saying whole = asked->whole == PART_DRUMS ? SAY_DRUM_OF : SAY_LENGTH_OF;
    return say(arena, bought ? whole : SAY_OFFCUT_OF, metres(length_m));
}

static bool note_opened(struct Arena *arena, const struct CuttingPlan *plan, struct PartsCut *out)
{
    struct PartOpened *opened = arena_array(arena, (size_t)plan->opened_count + 1, sizeof *opened);
    for (int i = 0; i < plan->opened_count && opened != NULL; i++) {
        const struct CuttingOpened *from = &plan->opened[i];
        const double length_m = in_metres(from->length_mm);
        opened[i] = (struct PartOpened){
            .bought = from->bought,
            .length_m = length_m,
            .used_m = in_metres(from->used_mm),
            .left_m = in_metres(from->left_mm),
            .piece_count = from->piece_count,
            .pieces = from->pieces,
            .what = what_said(arena, out, from->bought, length_m),
            .piece_text = pieces_said(arena, out, from->piece_count, from->pieces),
            .left_text = say(arena, SAY_AS_IS, metres(in_metres(from->left_mm))),
        };
        out->cut_m += opened[i].used_m;
    }
    out->opened = opened;
    out->opened_count = plan->opened_count;
    return opened != NULL;
}

/* "1 drum of 100 m, 2 drums of 50 m": what is opened stands longest first, so that like ones follow each other. */
static const struct Say *buy_said(struct Arena *arena, const struct CuttingPlan *plan, const struct PartsCut *asked)
{
    const struct Say *all = NULL;
    for (int i = 0; i < plan->opened_count && plan->opened[i].bought;) {
        const int length_mm = plan->opened[i].length_mm;
        int alike = 0;
        while (i < plan->opened_count && plan->opened[i].bought && plan->opened[i].length_mm == length_mm) {
            alike++;
            i++;
        }
        all = say_list(arena, SAY_COMMA, all, say_part(wholes_said(arena, asked, alike, in_metres(length_mm))));
    }
    return all != NULL ? all : say(arena, SAY_NOTHING_TO_BUY);
}

/* How far from the best it can be at most: whole lengths where all are of one length, else metres. */
static const struct Say *above_best_said(struct Arena *arena, const struct CuttingPlan *plan,
                                         const struct PartsCut *asked)
{
    if (asked->length_count != 1) {
        return say(arena, SAY_ABOVE_BEST, metres(in_metres(plan->bought_mm - plan->bound_mm)));
    }
    const int64_t length_mm = in_millimetres(asked->lengths_m[0], false);
    const int64_t best = (plan->bound_mm + length_mm - 1) / length_mm;
    return say(arena, asked->whole == PART_DRUMS ? SAY_ABOVE_BEST_DRUMS : SAY_ABOVE_BEST_LENGTHS,
               say_count((int)(plan->bought_mm / length_mm - best)));
}

const struct Say *parts_cut_proof(struct Arena *arena, const struct CuttingPlan *plan, const struct PartsCut *asked)
{
    const bool drums = asked->whole == PART_DRUMS;
    if (plan->proved) {
        return say(arena, drums ? SAY_PROVED_DRUMS : SAY_PROVED_LENGTHS);
    }
    if (plan->bound_mm >= plan->bought_mm) {
        return say(arena, drums ? SAY_PROVED_BUT_FOR_DRUMS : SAY_PROVED_BUT_FOR_LENGTHS);
    }
    return say_list(arena, SAY_SEMICOLON, say(arena, SAY_NOT_PROVED, metres(in_metres(plan->bound_mm))),
                    say_part(above_best_said(arena, plan, asked)));
}

static const struct Say *result_said(struct Arena *arena, const struct CuttingPlan *plan, const struct PartsCut *asked)
{
    const struct Say *offcuts =
        plan->offcuts_used > 0 ? say(arena, SAY_OFFCUTS_USED, say_count(plan->offcuts_used)) : NULL;
    return say(arena, SAY_CUT_RESULT, metres(in_metres(plan->bought_mm)), metres(in_metres(plan->waste_mm)),
               say_part(offcuts), say_part(parts_cut_proof(arena, plan, asked)));
}

/* Which whole lengths there are too few of, for the pieces that are left: "there are 2 of 100 m". */
static const struct Say *limits_said(struct Arena *arena, const struct PartsCut *asked)
{
    const struct Say *all = NULL;
    for (int i = 0; i < asked->length_count; i++) {
        if (is_limited(asked, i)) {
            all = say_list(arena, SAY_COMMA, all,
                           say_part(wholes_said(arena, asked, asked->have[i], asked->lengths_m[i])));
        }
    }
    return all;
}

static const struct Say *uncut_said(struct Arena *arena, const struct CuttingPlan *plan, const struct PartsCut *out)
{
    const struct SayArg pieces = say_part(pieces_said(arena, out, plan->uncut_count, plan->uncut));
    const struct Say *limits = limits_said(arena, out);
    return limits == NULL ? say(arena, SAY_OFFCUTS_LEAVE, pieces)
                          : say(arena, SAY_NOT_ENOUGH, say_part(limits), pieces);
}

/* What is longer than anything named, then what is left uncut by offcuts alone or by too few whole lengths. */
static bool note_by_metre(struct Arena *arena, const struct CuttingPlan *plan, struct PartsCut *out)
{
    int *list = arena_array(arena, (size_t)(plan->impossible_count + plan->uncut_count) + 1, sizeof *list);
    if (list == NULL) {
        return false;
    }
    for (int i = 0; i < plan->impossible_count; i++) {
        list[out->by_metre_count++] = plan->impossible[i];
    }
    for (int i = 0; i < plan->uncut_count; i++) {
        list[out->by_metre_count++] = plan->uncut[i];
    }
    out->by_metre = list;
    if (plan->impossible_count > 0) {
        out->note = say(arena, out->whole == PART_DRUMS ? SAY_LONGER_THAN_DRUMS : SAY_LONGER_THAN_LENGTHS,
                        say_part(pieces_said(arena, out, plan->impossible_count, plan->impossible)));
    }
    if (plan->uncut_count > 0) {
        const struct Say *uncut = uncut_said(arena, plan, out);
        out->note = say_list(arena, SAY_SEMICOLON, out->note, say_part(uncut));
    }
    return true;
}

static const struct Say *fault_said(struct Arena *arena, const struct CuttingPlan *plan)
{
    return plan->fault == CUTTING_TOO_MANY
               ? say(arena, SAY_CUT_TOO_MANY, say_count(CUTTING_PIECES_MOST), say_count(CUTTING_STOCK_MOST),
                     say_count(CUTTING_OFFCUTS_MOST))
               : say(arena, SAY_CUT_TOO_LONG, say_fixed(CUTTING_LENGTH_MOST_MM / 1000.0, 0, UNIT_M));
}

bool parts_cut(struct Arena *arena, const struct PartsCut *asked, struct PartsCut *out)
{
    *out = (struct PartsCut){.code = asked->code,
                             .description = asked->description,
                             .whole = asked->whole,
                             .piece_count = asked->piece_count,
                             .pieces = asked->pieces,
                             .length_count = asked->length_count,
                             .lengths_m = asked->lengths_m,
                             .have = asked->have,
                             .offcut_count = asked->offcut_count,
                             .offcuts_m = asked->offcuts_m};
    if (asked->length_count == 0 && asked->offcut_count == 0) {
        return !arena_failed(arena);
    }
    struct CuttingJob job;
    const struct CuttingPlan *plan = set_job(arena, asked, &job) ? cutting_plan(arena, &job) : NULL;
    if (plan == NULL) {
        return false;
    }
    if (plan->fault != CUTTING_GOOD) {
        out->note = fault_said(arena, plan);
        return !arena_failed(arena);
    }
    out->planned = true;
    out->bought_m = in_metres(plan->bought_mm);
    out->waste_m = in_metres(plan->waste_mm);
    out->bound_m = in_metres(plan->bound_mm);
    out->whole_lengths = plan->drums;
    out->offcuts_used = plan->offcuts_used;
    out->proved = plan->proved;
    out->buy_text = buy_said(arena, plan, out);
    out->result_text = result_said(arena, plan, out);
    return note_opened(arena, plan, out) && note_by_metre(arena, plan, out) && !arena_failed(arena);
}
