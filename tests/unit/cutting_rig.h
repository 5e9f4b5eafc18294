/** Jobs to cut for the tests: built piece by piece or by chance, and a check that a plan is one at all. */
#ifndef WEND_CUTTING_RIG_H
#define WEND_CUTTING_RIG_H

#include "cutting/cutting.h"

enum { RIG_PIECES = 1400, RIG_STOCK = 8, RIG_OFFCUTS = 30 };

/** A job with its own arrays; `job` points into them, so a rig is never copied (see rig_copy()). */
struct Rig {
    struct CuttingPiece pieces[RIG_PIECES];
    struct CuttingStock stock[RIG_STOCK];
    struct CuttingOffcut offcuts[RIG_OFFCUTS];
    struct CuttingJob job;
};

void rig_clear(struct Rig *rig);
void rig_copy(struct Rig *to, const struct Rig *from);
void rig_piece(struct Rig *rig, int length_mm, int count);
void rig_stock(struct Rig *rig, int length_mm, int available);
void rig_offcut(struct Rig *rig, int length_mm);

/** The plan of the job, checked: each piece is cut once, or is impossible or uncut; nothing is overfilled; no more is
 * opened than there is; sums add up; bounds do not exceed them, and meet them where all is proved. */
const struct CuttingPlan *rig_plan(struct Arena *arena, const struct Rig *rig);

/** Chance that is the same in every run. */
struct Chance {
    uint64_t state;
};
struct Chance chance_start(int seed);
int chance_between(struct Chance *chance, int least, int most);

/** What a family of jobs by chance may hold; lengths are multiples of `step_mm`. */
struct RigFamily {
    int pieces_least, pieces_most;
    int length_least_mm, length_most_mm, step_mm;
    int kinds_most; /**< at most so many different lengths of pieces; 0: no end */
    int stock_count;
    int stock_mm[RIG_STOCK];
    int available_most; /**< 0: no end of any stock; else each but the last is limited to 0..this with an even chance */
    bool last_limited;  /**< the last too, so that pieces may stay uncut */
    int offcuts_most;
};
void rig_chance(struct Rig *rig, const struct RigFamily *family, int seed);

#endif
