/* Ducts: each once, however many cables go through it. Ducts of one size that a cable passes one after the other are
 * one duct. */
#include "parts_private.h"

#include <math.h>

static bool same_duct(const struct Segment *a, const struct Segment *b)
{
    return a->duct_laid == b->duct_laid && fabs(a->duct_size_mm.value - b->duct_size_mm.value) < 0.1;
}

struct Duct {
    struct Counting *counting;
    const struct Chain *chain;
    const int *member;
    int index;        /* of the chain */
    double size_mm;   /* outside */
    const char *size; /* as a code has it */
    bool sized, rigid;
    double whole_m; /* the longest length in which the survey says it is sold; 0: not said */
};

int parts_ducts(struct Counting *counting, struct Chain **out, int **member)
{
    return parts_chains(counting, WAY_DUCT, same_duct, out, member);
}

bool parts_stock_of_duct(const struct Stock *stock, const struct Segment *segment)
{
    return stock->duct_size_mm.given && segment->duct_size_mm.given &&
           fabs(stock->duct_size_mm.value - segment->duct_size_mm.value) < 0.1;
}

double parts_duct_whole_m(const struct Plan *plan, const struct Segment *segment)
{
    double longest = 0;
    for (int i = 0; i < plan->survey->parts.stock_count; i++) {
        const struct Stock *stock = &plan->survey->parts.stock[i];
        for (int j = 0; parts_stock_of_duct(stock, segment) && j < stock->length_count; j++) {
            longest = fmax(longest, stock->lengths[j].length_m.value);
        }
    }
    return longest;
}

static void add(const struct Duct *duct, const struct Article *article, double pieces)
{
    for (int i = duct->chain->first; i <= duct->chain->last; i++) {
        if (duct->member[i] == duct->index) {
            /* Counted once; the other stretches of the duct are only named. */
            parts_add(duct->counting, article, pieces,
                      parts_for_segment(NULL, duct->counting->plan->segments[i].surveyed));
            return;
        }
    }
}

/* Outside; nothing where it was not surveyed. */
static struct SayArg outside(const struct Duct *duct)
{
    return duct->sized ? say_digits(duct->size_mm, 4, UNIT_MM) : say_part(NULL);
}

/* The same where its place cannot be left empty: "63 mm", "? mm". */
static struct SayArg outside_or_open(const struct Duct *duct)
{
    return duct->sized ? outside(duct) : say_term(SAY_MM_OPEN);
}

static const struct Say *duct_said(const struct Duct *duct, bool cut, const struct PackSize *pack)
{
    struct Arena *arena = duct->counting->arena;
    if (cut) {
        return say(arena, SAY_PART_DUCT, outside(duct));
    }
    return duct->sized ? say(arena, SAY_PART_DUCT_IN_PACKS, outside(duct), say_name(pack->word),
                             say_fixed(pack->pieces, 0, UNIT_M))
                       : say(arena, SAY_PART_DUCT_OPEN, say_name(pack->word), say_fixed(pack->pieces, 0, UNIT_M));
}

static void add_duct(const struct Duct *duct, enum PackKind sold)
{
    struct Arena *arena = duct->counting->arena;
    const struct PackSize pack = pack_size(sold);
    const bool cut = duct->whole_m > 0; /* the cutting plan says what to buy */
    const struct Article article = {
        .aisle = AISLE_GROUNDWORK,
        .code =
            cut ? arena_print(arena, "duct-%s", duct->size)
                : arena_print(arena, "duct-%s-%s-%d", duct->sized ? duct->size : "size-open", pack.word, pack.pieces),
        .description = duct_said(duct, cut, &pack),
        .standard = "BS EN 61386-24",
        .unit = "m",
        .note = say(arena, duct->sized ? SAY_NOTE_DUCT : SAY_SIZE_NOT_SURVEYED),
        .sold = cut ? PACK_SINGLE : sold,
        .spare = SPARE_DUCT};
    for (int i = duct->chain->first; i <= duct->chain->last; i++) {
        if (duct->member[i] == duct->index) {
            const struct Segment *segment = duct->counting->plan->segments[i].surveyed;
            parts_add(duct->counting, &article, segment->length_m.value, parts_for_segment(NULL, segment));
        }
    }
    parts_add_stretch(duct->counting, article.code, duct->chain->length_m);
}

/* Joints: between pieces, and both ends of each preformed bend. */
static void add_joints(const struct Duct *duct, enum PackKind sold)
{
    struct Arena *arena = duct->counting->arena;
    const double length_m = duct->chain->length_m * (1 + order_allowances()->duct_percent / 100);
    const double pieces = parts_pieces(length_m, duct->whole_m > 0 ? duct->whole_m : pack_size(sold).pieces);
    const struct Article coupler = {.aisle = AISLE_GROUNDWORK,
                                    .code =
                                        arena_print(arena, "duct-coupler-%s", duct->sized ? duct->size : "size-open"),
                                    .description = say(arena, SAY_PART_DUCT_COUPLER, outside_or_open(duct)),
                                    .standard = "BS EN 61386-24",
                                    .note = say(arena, duct->rigid ? SAY_NOTE_RIGID_COUPLER : SAY_NOTE_ONE_SPARE),
                                    .spare = SPARE_COUPLERS};
    add(duct, &coupler, pieces - 1 + 2 * duct->chain->bends);
}

static void add_bends(const struct Duct *duct)
{
    struct Arena *arena = duct->counting->arena;
    for (int i = duct->chain->first; i <= duct->chain->last; i++) {
        const struct Segment *segment = duct->counting->plan->segments[i].surveyed;
        for (int k = 0; duct->member[i] == duct->index && k < segment->bend_count; k++) {
            const char *angle = number_significant(arena, segment->bends[k].angle_deg, 3);
            const struct Article bend = {
                .aisle = AISLE_GROUNDWORK,
                .code = arena_print(arena, "duct-bend-%s-%s", duct->sized ? duct->size : "size-open", angle),
                .description = say(arena, SAY_PART_DUCT_BEND, say_digits(segment->bends[k].angle_deg, 3, UNIT_DEG),
                                   outside_or_open(duct)),
                .standard = "BS EN 61386-24",
                .note = say(arena, SAY_NOTE_DUCT_BEND)};
            parts_add(duct->counting, &bend, 1, parts_for_segment(NULL, segment));
        }
    }
}

/* The rope that draws this job's cable in; a new one goes in with the cable for the next. */
static void add_rope(const struct Duct *duct, bool roped)
{
    struct Arena *arena = duct->counting->arena;
    const struct Article rope = {.aisle = AISLE_GROUNDWORK,
                                 .code = "draw-rope",
                                 .description = say(arena, SAY_PART_DRAW_ROPE),
                                 .unit = "m",
                                 .note = say(arena, SAY_NOTE_DRAW_ROPE),
                                 .sold = PACK_DRAW_ROPE,
                                 .spare = SPARE_WHOLE};
    if (!roped) {
        add(duct, &rope, duct->chain->length_m + order_allowances()->rope_m);
    }
}

/* Draw pits along the duct; one where two stretches of it meet is one pit, whichever of them says so. At either end of
 * the whole duct a pit opens no more ends, but is dug all the same. */
struct PitsOf {
    int all, within;
};

static struct PitsOf pits_of(const struct Duct *duct)
{
    struct PitsOf pits = {0};
    bool behind = false; /* there is one where the stretch before ends */
    int stretches = 0;
    for (int i = duct->chain->first; i <= duct->chain->last; i++) {
        if (duct->member[i] != duct->index) {
            continue;
        }
        const enum Pits has = duct->counting->plan->segments[i].surveyed->pits;
        const bool here = behind || has == PITS_START || has == PITS_BOTH;
        pits.all += here;
        pits.within += here && stretches > 0;
        behind = has == PITS_END || has == PITS_BOTH;
        stretches++;
    }
    pits.all += behind;
    return pits;
}

static void add_pits(const struct Duct *duct)
{
    struct Arena *arena = duct->counting->arena;
    const struct Article pit = {.aisle = AISLE_GROUNDWORK,
                                .code = "draw-pit",
                                .description = say(arena, SAY_PART_DRAW_PIT),
                                .note = say(arena, SAY_NOTE_DRAW_PIT)};
    add(duct, &pit, pits_of(duct).all);
}

static void add_bungs(const struct Duct *duct)
{
    struct Arena *arena = duct->counting->arena;
    const struct Article bung = {.aisle = AISLE_GROUNDWORK,
                                 .code = arena_print(arena, "duct-bung-%s", duct->sized ? duct->size : "size-open"),
                                 .description = say(arena, SAY_PART_DUCT_BUNG, outside_or_open(duct)),
                                 .note = say(arena, SAY_NOTE_DUCT_BUNG)};
    add(duct, &bung, 2 + 2 * pits_of(duct).within);
}

static void say_duct(const struct Duct *duct, bool existing)
{
    struct Arena *arena = duct->counting->arena;
    for (int i = duct->chain->first; i <= duct->chain->last; i++) {
        if (duct->member[i] != duct->index) {
            continue;
        }
        struct PartsWay *way = parts_way(duct->counting, -1, i);
        parts_way_say(duct->counting, way,
                      existing      ? say(arena, SAY_DUCT_THERE)
                      : duct->sized ? say(arena, SAY_LAY_DUCT, outside(duct))
                                    : say(arena, SAY_LAY_DUCT_OPEN));
    }
}

static enum PackKind sold_as(const struct Duct *duct)
{
    const double length_m = duct->chain->length_m * (1 + order_allowances()->duct_percent / 100);
    if (duct->rigid) {
        return PACK_DUCT_STICK;
    }
    return length_m > pack_size(PACK_DUCT_COIL_25).pieces + 1e-9 ? PACK_DUCT_COIL_50 : PACK_DUCT_COIL_25;
}

/* Whether lubricant is wanted for the pull through a stretch: it is worked with it, what it is worked with was surveyed
 * and not why, it does not pass dry, or a power cable's is not worked at all. A pull that passes dry needs none, and a
 * light cable whose weight nobody knows asks for none. */
static bool pull_wants_lubricant(const struct PlanRun *run, int segment)
{
    const struct PullRules *rules = &run->settled->pull;
    for (int p = 0; p < run->pull_count; p++) {
        const struct PlanPull *pull = &run->pulls[p];
        for (int i = pull->first; i < pull->first + pull->count; i++) {
            if (run->settled->along[i] == segment) {
                const bool open = rules->friction.given && !rules->lubricant_given;
                return pull->worked ? open || pull->lubricant || pull->result == CHECK_FAIL
                                    : rules->lubricant || run->rated;
            }
        }
    }
    return false;
}

static bool wants_lubricant(const struct Duct *duct)
{
    const struct Plan *plan = duct->counting->plan;
    for (int i = duct->chain->first; i <= duct->chain->last; i++) {
        for (int r = 0; r < plan->run_count && duct->member[i] == duct->index; r++) {
            if (survey_follows(plan->runs[r].settled, i) && pull_wants_lubricant(&plan->runs[r], i)) {
                return true;
            }
        }
    }
    return false;
}

static void count_duct(const struct Duct *duct, double *pulled_m)
{
    const struct Segment *first = duct->counting->plan->segments[duct->chain->first].surveyed;
    bool roped = true;
    for (int i = duct->chain->first; i <= duct->chain->last; i++) {
        roped = roped && (duct->member[i] != duct->index || duct->counting->plan->segments[i].surveyed->duct_rope);
    }
    const bool existing = first->duct_laid == LAID_EXISTING;
    if (!existing) {
        add_duct(duct, sold_as(duct));
        add_joints(duct, sold_as(duct));
        add_bends(duct);
        add_pits(duct);
    }
    add_rope(duct, existing && roped);
    add_bungs(duct);
    *pulled_m += wants_lubricant(duct) ? duct->chain->length_m : 0;
    say_duct(duct, existing);
}

void parts_count_ducts(struct Counting *counting)
{
    struct Chain *chains = NULL;
    int *member = NULL;
    const int count = parts_ducts(counting, &chains, &member);
    double pulled_m = 0;
    for (int i = 0; i < count; i++) {
        const struct Segment *first = counting->plan->segments[chains[i].first].surveyed;
        const struct Duct duct = {.counting = counting,
                                  .chain = &chains[i],
                                  .member = member,
                                  .index = i,
                                  .size_mm = first->duct_size_mm.value,
                                  .size = number_significant(counting->arena, first->duct_size_mm.value, 4),
                                  .sized = first->duct_size_mm.given,
                                  .rigid = first->duct_size_mm.value >= takeoff_practice()->rigid_duct_from_mm,
                                  .whole_m = parts_duct_whole_m(counting->plan, first)};
        if (chains[i].cables > 0) {
            count_duct(&duct, &pulled_m);
        }
    }
    const struct Article compound = {.aisle = AISLE_SUNDRIES,
                                     .code = "pulling-compound",
                                     .description = say(counting->arena, SAY_PART_COMPOUND),
                                     .note = say(counting->arena, SAY_NOTE_COMPOUND)};
    if (pulled_m > 0) {
        parts_add(counting, &compound, parts_pieces(pulled_m, takeoff_practice()->compound_m_per_litre),
                  parts_for_all());
    }
}
