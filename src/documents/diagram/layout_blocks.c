/* What the sheets hold, from top to bottom, as a list of blocks: one place decides the order, for counting sheets while
 * scales are tried and for drawing. */
#include "layout_private.h"

enum BlockKind {
    BLOCK_RUN_HEAD,
    BLOCK_RUN,
    BLOCK_RUN_GAP,
    BLOCK_STRIP,
    BLOCK_VIEW,
    BLOCK_LEGEND,
    BLOCK_RIBBON,
    BLOCK_CAUTION_HEAD,
    BLOCK_CAUTION_ROW
};

struct Block {
    enum BlockKind kind;
    int strip, run, row;
    double height_mm;
};

/* Called with each block in turn. */
typedef void TakeBlock(void *taker, const struct Block *block);

static void strips_and_ribbons(const struct RouteLayout *layout, TakeBlock *take, void *taker)
{
    for (int s = 0; s < layout->strip_count; s++) {
        take(taker, &(struct Block){BLOCK_STRIP, s, 0, 0, layout_strip_places(layout, &layout->strips[s]).end_mm});
        if (layout->ribbon_apart && layout->ribbon_run >= 0) {
            take(taker, &(struct Block){BLOCK_RIBBON, s, layout->ribbon_run, 0,
                                        layout_ribbon_block_height(layout, &layout->strips[s], layout->ribbon_run)});
        }
    }
}

static void other_ribbons(const struct RouteLayout *layout, TakeBlock *take, void *taker)
{
    for (int run = 0; run < layout->plan->run_count; run++) {
        for (int s = 0; s < layout->strip_count && run != layout->ribbon_run; s++) {
            take(taker,
                 &(struct Block){BLOCK_RIBBON, s, run, 0, layout_ribbon_block_height(layout, &layout->strips[s], run)});
        }
    }
}

static void each_block(const struct RouteLayout *layout, TakeBlock *take, void *taker)
{
    take(taker, &(struct Block){BLOCK_RUN_HEAD, 0, 0, 0, RUN_ROW});
    for (int i = 0; i < layout->plan->run_count; i++) {
        take(taker, &(struct Block){BLOCK_RUN, 0, i, 0, RUN_ROW});
    }
    take(taker, &(struct Block){BLOCK_RUN_GAP, 0, 0, 0, RUN_GAP});
    strips_and_ribbons(layout, take, taker);
    take(taker, &(struct Block){BLOCK_VIEW, 0, 0, 0, layout_view_height(layout)});
    take(taker, &(struct Block){BLOCK_LEGEND, 0, 0, 0, layout_legend_height(layout)});
    other_ribbons(layout, take, taker);
    int rows = layout_caution_rows(layout);
    for (int row = 0; row < rows; row++) {
        double row_mm = layout->caution_row_mm[row];
        if (row == 0) { /* never alone at the foot of a sheet */
            take(taker, &(struct Block){BLOCK_CAUTION_HEAD, 0, 0, 0, CAUTION_HEAD + row_mm});
        }
        take(taker, &(struct Block){BLOCK_CAUTION_ROW, 0, 0, row, row == 0 ? 0 : row_mm});
    }
}

/* ---- counting ---- */

struct Counter {
    const struct RouteLayout *layout;
    int sheets;
    double left_mm;
};

static void count_block(void *taker, const struct Block *block)
{
    struct Counter *counter = taker;
    if (block->height_mm > counter->left_mm && block->kind != BLOCK_RUN_GAP) {
        counter->sheets++;
        counter->left_mm = layout_sheet_room(counter->layout, false) -
                           (block->kind == BLOCK_RUN ? RUN_ROW : 0); /* the table's head again */
    }
    counter->left_mm -= block->height_mm;
}

int layout_sheet_count(const struct RouteLayout *layout)
{
    struct Counter counter = {layout, 1, layout_sheet_room(layout, true)};
    each_block(layout, count_block, &counter);
    return counter.sheets;
}

/* ---- drawing ---- */

static void draw_block(void *taker, const struct Block *block)
{
    struct SheetFlow *flow = taker;
    struct RouteLayout *layout = flow->layout;
    switch (block->kind) {
    case BLOCK_RUN_HEAD: layout_draw_run_head(flow); break;
    case BLOCK_RUN: layout_draw_run(flow, block->run); break;
    case BLOCK_RUN_GAP: flow->y_mm += block->height_mm; break;
    case BLOCK_STRIP:
        layout_draw_strip(layout, flow->drawing, block->strip, layout_place(flow, block->height_mm));
        break;
    case BLOCK_VIEW:
        if (block->height_mm > 0) {
            layout_draw_view(layout, flow->drawing, layout_place(flow, block->height_mm));
        }
        break;
    case BLOCK_LEGEND: layout_draw_legend(layout, flow->drawing, layout_place(flow, block->height_mm)); break;
    case BLOCK_RIBBON:
        if (block->height_mm > 0) {
            layout_draw_ribbon_block(layout, flow->drawing, block->strip, block->run,
                                     layout_place(flow, block->height_mm));
        }
        break;
    case BLOCK_CAUTION_HEAD: {
        double top_mm = layout_place(flow, block->height_mm);
        layout_draw_caution_head(flow->drawing, top_mm);
        layout_draw_caution_row(layout, flow->drawing, 0, top_mm + CAUTION_HEAD);
        break;
    }
    case BLOCK_CAUTION_ROW:
        if (block->row > 0) {
            double top_mm = layout_place(flow, block->height_mm);
            layout_draw_caution_row(layout, flow->drawing, block->row, top_mm);
        }
        break;
    }
}

void layout_fill_sheets(struct SheetFlow *flow)
{
    layout_next_sheet(flow);
    each_block(flow->layout, draw_block, flow);
    layout_end_sheet(flow);
}
