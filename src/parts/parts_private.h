/** What the counters of parts know of each other. */
#ifndef WEND_PARTS_PRIVATE_H
#define WEND_PARTS_PRIVATE_H

#include "wend/parts.h"
#include "wend/tables.h"

/** The list while it grows: articles of the same code are one line. */
struct Counting {
    struct Arena *arena;
    const struct Plan *plan;
    struct Part *parts;
    struct TextBuilder *uses; /**< one a part */
    int count, room;
};

/** Adds `pieces` of an article for `use`; a new line when the code is new. The article's texts are copied by reference.
 */
void parts_add(struct Counting *counting, const struct Part *article, double pieces, const char *use);

/** Overall diameter of a run's cable, mm; 0 when no table and no surveyor says. */
double parts_diameter_mm(const struct PlanRun *run);
/** "3-core 10 mm2 BS 5467" */
const char *parts_cable_name(struct Arena *arena, const struct PlanRun *run);

/* one counter a file */
void parts_count_cable(struct Counting *counting, const struct PlanRun *run);
void parts_count_glands(struct Counting *counting, const struct PlanRun *run);
void parts_count_fixings(struct Counting *counting, const struct PlanRun *run);
void parts_count_ducts(struct Counting *counting);

#endif
