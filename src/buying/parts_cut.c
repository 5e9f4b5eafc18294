/* How one article is cut: from what is wanted and what can be had to a plan in words. Lengths become whole millimetres,
 * pieces rounded up and stock rounded down; the deciding is done by cutting_plan(). */
#include "buying.h"
#include "cutting/cutting.h"

#include <math.h>

enum { LENGTH_DIGITS = 9 };
static const double hair_mm = 1e-6; /* 67.0000000001 m is 67 m */

static const char *metres(struct Arena *arena, double length_m)
{
    return arena_print(arena, "%s m", number_significant(arena, length_m, LENGTH_DIGITS));
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
        stock[i] = (struct CuttingStock){.name = asked->noun,
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

static const char *pieces_text(struct Arena *arena, const struct PartsCut *asked, int count, const int *pieces)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < count; i++) {
        const struct PartPiece *piece = &asked->pieces[pieces[i]];
        text_print(&text, "%s%s %s", i > 0 ? ", " : "", piece->name, metres(arena, piece->length_m));
    }
    return text_done(&text);
}

static bool tell_opened(struct Arena *arena, const struct CuttingPlan *plan, struct PartsCut *out)
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
            .what = arena_print(arena, "%s of %s", from->bought ? out->noun : "offcut", metres(arena, length_m)),
            .piece_text = pieces_text(arena, out, from->piece_count, from->pieces),
            .left_text = metres(arena, in_metres(from->left_mm)),
        };
        out->cut_m += opened[i].used_m;
    }
    out->opened = opened;
    out->opened_count = plan->opened_count;
    return opened != NULL;
}

/* "1 drum of 100 m, 2 drums of 50 m": what is opened stands longest first, so that like ones follow each other. */
static const char *buy_text(struct Arena *arena, const struct CuttingPlan *plan, const char *noun)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < plan->opened_count && plan->opened[i].bought;) {
        const int length_mm = plan->opened[i].length_mm;
        int alike = 0;
        while (i < plan->opened_count && plan->opened[i].bought && plan->opened[i].length_mm == length_mm) {
            alike++;
            i++;
        }
        text_print(&text, "%s%d %s%s of %s", text.length > 0 ? ", " : "", alike, noun, alike > 1 ? "s" : "",
                   metres(arena, in_metres(length_mm)));
    }
    return text.length > 0 ? text_done(&text) : "nothing to buy";
}

static const char *result_text(struct Arena *arena, const struct CuttingPlan *plan, const char *noun)
{
    struct TextBuilder text = text_builder(arena);
    text_print(&text, "%s bought, %s of it waste", metres(arena, in_metres(plan->bought_mm)),
               metres(arena, in_metres(plan->waste_mm)));
    if (plan->offcuts_used > 0) {
        text_print(&text, ", %d offcut%s used", plan->offcuts_used, plan->offcuts_used > 1 ? "s" : "");
    }
    if (plan->proved) {
        text_print(&text, "; proved: no plan buys less, or as much in fewer %ss", noun);
    } else if (plan->bound_mm >= plan->bought_mm) {
        text_print(&text, "; proved: no plan buys less; whether fewer %ss would do is not settled", noun);
    } else {
        text_print(&text, "; not proved to be the best: some plan may buy less, but none less than %s",
                   metres(arena, in_metres(plan->bound_mm)));
    }
    return text_done(&text);
}

/* Which whole lengths there are too few of, for the pieces that are left: "there are 2 of 100 m". */
static const char *limits_text(struct Arena *arena, const struct PartsCut *asked)
{
    struct TextBuilder text = text_builder(arena);
    for (int i = 0; i < asked->length_count; i++) {
        if (is_limited(asked, i)) {
            text_print(&text, "%s%d %s%s of %s", text.length > 0 ? ", " : "", asked->have[i], asked->noun,
                       asked->have[i] > 1 ? "s" : "", metres(arena, asked->lengths_m[i]));
        }
    }
    return text_done(&text);
}

static const char *uncut_text(struct Arena *arena, const struct CuttingPlan *plan, const struct PartsCut *out)
{
    const char *pieces = pieces_text(arena, out, plan->uncut_count, plan->uncut);
    const char *limits = limits_text(arena, out);
    return *limits == '\0'
               ? arena_print(arena, "what the offcuts do not reach for: %s; to be had by the metre", pieces)
               : arena_print(arena,
                             "NOT ENOUGH to be had (%s): left uncut are %s; to be had by the metre, or from more",
                             limits, pieces);
}

/* What is longer than anything named, then what offcuts alone, or the number to be had, did not reach for. */
static bool tell_by_metre(struct Arena *arena, const struct CuttingPlan *plan, struct PartsCut *out)
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
        out->note = arena_print(arena,
                                "longer than any %s or offcut named: %s; to be had in one length by the metre, because "
                                "no joint is planned",
                                out->noun, pieces_text(arena, out, plan->impossible_count, plan->impossible));
    }
    if (plan->uncut_count > 0) {
        out->note =
            arena_print(arena, "%s%s%s", out->note, *out->note != '\0' ? "; " : "", uncut_text(arena, plan, out));
    }
    return true;
}

static const char *fault_text(struct Arena *arena, const struct CuttingPlan *plan)
{
    return plan->fault == CUTTING_TOO_MANY
               ? arena_print(arena, "no cutting plan: more than %d pieces, %d lengths or %d offcuts",
                             CUTTING_PIECES_MOST, CUTTING_STOCK_MOST, CUTTING_OFFCUTS_MOST)
               : arena_print(arena, "no cutting plan: a length is not between 1 mm and %d m",
                             CUTTING_LENGTH_MOST_MM / 1000);
}

bool parts_cut(struct Arena *arena, const struct PartsCut *asked, struct PartsCut *out)
{
    *out = (struct PartsCut){.code = asked->code,
                             .description = asked->description,
                             .noun = asked->noun,
                             .piece_count = asked->piece_count,
                             .pieces = asked->pieces,
                             .length_count = asked->length_count,
                             .lengths_m = asked->lengths_m,
                             .have = asked->have,
                             .offcut_count = asked->offcut_count,
                             .offcuts_m = asked->offcuts_m,
                             .buy_text = "",
                             .result_text = "",
                             .note = ""};
    if (asked->length_count == 0 && asked->offcut_count == 0) {
        return !arena_failed(arena);
    }
    struct CuttingJob job;
    const struct CuttingPlan *plan = set_job(arena, asked, &job) ? cutting_plan(arena, &job) : NULL;
    if (plan == NULL) {
        return false;
    }
    if (plan->fault != CUTTING_GOOD) {
        out->note = fault_text(arena, plan);
        return !arena_failed(arena);
    }
    out->planned = true;
    out->bought_m = in_metres(plan->bought_mm);
    out->waste_m = in_metres(plan->waste_mm);
    out->bound_m = in_metres(plan->bound_mm);
    out->whole_lengths = plan->drums;
    out->offcuts_used = plan->offcuts_used;
    out->proved = plan->proved;
    out->buy_text = buy_text(arena, plan, out->noun);
    out->result_text = result_text(arena, plan, out->noun);
    return tell_opened(arena, plan, out) && tell_by_metre(arena, plan, out) && !arena_failed(arena);
}
