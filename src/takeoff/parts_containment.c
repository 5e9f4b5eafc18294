/* Conduit, trunking, tray and ladder: each once, whoever lies in it. What holds other circuits already is there
 * already. Stretches of one kind that a cable passes one after the other are one. */
#include "parts_private.h"

#include <math.h>

/* Each is an article of its own with couplers, ends and spacings of its own, so this file asks which it is. */
struct Kind {
    enum Way way;
    enum PackKind sold;
    const char *code, *standard;
    enum Saying name, coupler, bend;
    bool steel; /* made of steel whatever the survey says */
    bool open;  /* the cables lie on it side by side */
    enum Saying support;
};
static const struct Kind kinds[] = {
    {WAY_CONDUIT, PACK_CONDUIT, "conduit", "BS EN 61386-21", SAY_PART_CONDUIT, SAY_PART_CONDUIT_COUPLER,
     SAY_PART_CONDUIT_BEND, .support = SAY_PART_SADDLE},
    {WAY_TRUNKING, PACK_TRUNKING, "trunking", "BS EN 50085-2-1", SAY_PART_TRUNKING, SAY_PART_TRUNKING_COUPLER,
     SAY_PART_TRUNKING_BEND, .steel = true},
    {WAY_TRAY, PACK_TRAY, "tray", "BS EN 61537", SAY_PART_TRAY, SAY_PART_TRAY_COUPLER, SAY_PART_TRAY_BEND, true, true,
     SAY_PART_TRAY_SUPPORT},
    {WAY_LADDER, PACK_TRAY, "ladder", "BS EN 61537", SAY_PART_LADDER, SAY_PART_LADDER_COUPLER, SAY_PART_LADDER_BEND,
     true, true, SAY_PART_LADDER_SUPPORT},
};

static bool same_thing(const struct Segment *a, const struct Segment *b)
{
    return fabs(a->size_mm.value - b->size_mm.value) < 0.1 && fabs(a->height_mm.value - b->height_mm.value) < 0.1 &&
           a->material == b->material && parts_there_already(a) == parts_there_already(b);
}

static bool same_support(const struct Segment *a, const struct Segment *b)
{
    return same_thing(a, b) && a->fixed_to == b->fixed_to && parts_upright(a) == parts_upright(b);
}

/* Steel or plastic, and how large: as a code has it. */
struct Codes {
    const char *size, *made_of;
};

static enum Material made_of(const struct Kind *kind, const struct Segment *segment)
{
    return kind->steel ? MATERIAL_STEEL : segment->material;
}

static struct Codes codes_of(struct Arena *arena, const struct Kind *kind, const struct Segment *segment)
{
    struct Codes codes = {.size = "", .made_of = ""};
    if (segment->size_mm.given && segment->height_mm.given) {
        codes.size = arena_print(arena, "%sx%s", number_significant(arena, segment->size_mm.value, 4),
                                 number_significant(arena, segment->height_mm.value, 4));
    } else if (segment->size_mm.given) {
        codes.size = number_significant(arena, segment->size_mm.value, 4);
    }
    const enum Material material = made_of(kind, segment);
    codes.made_of = material < MATERIAL_COUNT ? survey_word(WORDS_MATERIAL, (int)material) : "";
    return codes;
}

/* One chain of a kind. */
struct Held {
    struct Counting *counting;
    const struct Kind *kind;
    const struct Chain *chain;
    const int *member;
    int index;
    const struct Segment *first;
    struct Codes codes;
};

static struct SayArg size_said(const struct Held *held)
{
    const struct Quantity *size_mm = &held->first->size_mm, *height_mm = &held->first->height_mm;
    const struct SayArg high = say_digits(height_mm->value, 4, UNIT_MM);
    if (!size_mm->given) {
        return say_part(NULL);
    }
    return height_mm->given
               ? say_part(say(held->counting->arena, SAY_BY, say_digits(size_mm->value, 4, UNIT_NONE), high))
               : say_digits(size_mm->value, 4, UNIT_MM);
}

static const struct Say *described(const struct Held *held, enum Saying what)
{
    struct Arena *arena = held->counting->arena;
    const enum Material material = made_of(held->kind, held->first);
    const struct SayArg made = material < MATERIAL_COUNT ? say_word(WORDS_MATERIAL, (int)material) : say_part(NULL);
    return held->first->size_mm.given
               ? say(arena, SAY_PART_SIZED, say_term(what), size_said(held), made)
               : say(arena, held->kind->open ? SAY_PART_MADE_OF : SAY_PART_SIZE_UNKNOWN, say_term(what), made);
}

static const char *coded(const struct Held *held, const char *what)
{
    return arena_print(held->counting->arena, "%s%s%s%s%s%s", held->kind->code, what,
                       held->codes.made_of[0] != '\0' ? "-" : "", held->codes.made_of,
                       held->codes.size[0] != '\0' ? "-" : "", held->codes.size);
}

static void add(const struct Held *held, struct Article article, double pieces)
{
    article.aisle = AISLE_CONTAINMENT;
    parts_add(held->counting, &article, pieces, parts_for_segment(NULL, held->first));
}

/* Side by side, all the cables that follow one stretch; what is not known of them is said. */
static const struct Say *width_note(const struct Held *held)
{
    const struct Plan *plan = held->counting->plan;
    double width_mm = 0;
    bool unknown = false;
    for (int r = 0; r < plan->run_count; r++) {
        if (survey_follows(plan->runs[r].settled, held->chain->first)) {
            width_mm += parts_diameter_mm(&plan->runs[r]);
            unknown = unknown || parts_diameter_mm(&plan->runs[r]) <= 0;
        }
    }
    return say(held->counting->arena, unknown ? SAY_NOTE_WIDTH_OF_KNOWN : SAY_NOTE_WIDTH,
               say_fixed(width_mm, 0, UNIT_MM));
}

/* Steel conduit is sold in longer lengths as well: where that buys fewer lengths it is said. */
static const struct Say *longer_note(const struct Held *held)
{
    const double by_3 = parts_pieces(held->chain->length_m, pack_size(PACK_CONDUIT).pieces);
    const double by_longer = parts_pieces(held->chain->length_m, takeoff_practice()->longer_conduit_m);
    if (held->kind->way != WAY_CONDUIT || held->first->material != MATERIAL_STEEL || by_longer >= by_3) {
        return NULL;
    }
    return say(held->counting->arena, SAY_NOTE_LONGER_CONDUIT, say_fixed(by_longer, 0, UNIT_NONE));
}

/* Where a run ends in a board or box at an end of this chain: as many of the chain's two ends as that. */
static double boards_at(const struct Held *held)
{
    const struct Survey *survey = held->counting->plan->survey;
    bool start = false, finish = false;
    for (int r = 0; r < survey->run_count; r++) {
        const struct Run *run = &survey->runs[r];
        if (run->along_count == 0) {
            continue;
        }
        start = start || (held->member[run->along[0]] == held->index && run->start.into != INTO_FREE);
        finish =
            finish || (held->member[run->along[run->along_count - 1]] == held->index && run->finish.into != INTO_FREE);
    }
    return start + finish;
}

static void add_lengths(const struct Held *held)
{
    struct Arena *arena = held->counting->arena;
    const struct Kind *kind = held->kind;
    add(held,
        (struct Article){.code = coded(held, ""),
                         .description = described(held, kind->name),
                         .standard = kind->standard,
                         .unit = "m",
                         .note = kind->open    ? width_note(held)
                                 : kind->steel ? say(arena, SAY_NOTE_TRUNKING)
                                               : longer_note(held),
                         .sold = kind->sold},
        held->chain->length_m);
    parts_add_stretch(held->counting, coded(held, ""), held->chain->length_m);
    add(held,
        (struct Article){.code = coded(held, "-coupler"),
                         .description = described(held, kind->coupler),
                         .note = say(arena, SAY_NOTE_COUPLER)},
        parts_pieces(held->chain->length_m, pack_size(kind->sold).pieces) + held->chain->bends - 1);
    add(held,
        (struct Article){.code = coded(held, "-bend"),
                         .description = described(held, kind->bend),
                         .note = say(arena, SAY_NOTE_MADE_BEND)},
        held->chain->bends);
}

/* Boxes so that no pull is longer, nor turns more, than one hand draws in; where they fall is settled on the wall, so
 * one is counted for each limit that is passed. */
static double conduit_boxes(const struct Chain *chain)
{
    const struct ContainmentPractice *practice = containment_practice();
    const double by_length = parts_pieces(chain->length_m, practice->draw_length_m) - 1;
    const double by_bends = fmax(0, parts_pieces(chain->bend_deg, practice->draw_bends_deg) - 1);
    return by_length + by_bends;
}

static struct Article support_of(const struct Held *held)
{
    struct Arena *arena = held->counting->arena;
    struct Article article = {.aisle = AISLE_CONTAINMENT, .spare = SPARE_FIXINGS};
    if (held->kind->way == WAY_CONDUIT) {
        article.code = arena_print(arena, "conduit-saddle-%s", held->codes.size);
        article.description = say(arena, held->kind->support, size_said(held));
        article.note = say(arena, SAY_NOTE_METAL);
        article.sold = PACK_SADDLES;
    } else if (held->kind->open) {
        article.code = arena_print(arena, "%s-support", held->kind->code);
        article.description = say(arena, held->kind->support);
        article.note = say(arena, SAY_NOTE_SUPPORT);
        article.spare = SPARE_NONE;
    }
    return article;
}

static void add_conduit_ends(const struct Held *held)
{
    const struct ContainmentPractice *practice = containment_practice();
    struct Arena *arena = held->counting->arena;
    const double boxes = conduit_boxes(held->chain);
    add(held,
        (struct Article){.code = coded(held, "-box"),
                         .description = described(held, SAY_PART_CONDUIT_BOX),
                         .note = say(arena, SAY_NOTE_CONDUIT_BOX)},
        boxes);
    add(held,
        (struct Article){.code = coded(held, "-adaptor"),
                         .description = described(held, SAY_PART_CONDUIT_ADAPTOR),
                         .note = say(arena, SAY_NOTE_CONDUIT_ADAPTOR)},
        boards_at(held) + 2 * boxes);
    add(held,
        (struct Article){.code = coded(held, "-bush"),
                         .description = described(held, SAY_PART_CONDUIT_BUSH),
                         .note = say(arena, SAY_NOTE_CONDUIT_BUSH)},
        2 - boards_at(held));
    /* a conduit maker's page: a saddle on either side of a box */
    const struct Article saddle = support_of(held);
    if (held->first->size_mm.given) {
        parts_add(held->counting, &saddle, 2 * boxes, parts_for_segment(NULL, held->first));
        parts_count_grips(held->counting, held->first, WAY_WALL, 2 * boxes, NULL);
    }
    if (held->first->material != MATERIAL_STEEL) {
        add(held,
            (struct Article){.code = coded(held, "-expansion"),
                             .description = described(held, SAY_PART_CONDUIT_EXPANSION),
                             .note = say(arena, SAY_NOTE_CONDUIT_EXPANSION)},
            floor(held->chain->length_m / practice->expansion_m - 1e-9));
    }
}

static void count_thing(const struct Held *held)
{
    struct Arena *arena = held->counting->arena;
    add_lengths(held);
    if (held->kind->way == WAY_CONDUIT) {
        add_conduit_ends(held);
    }
    if (held->kind->way == WAY_TRUNKING) {
        add(held,
            (struct Article){.code = coded(held, "-flange"), .description = described(held, SAY_PART_TRUNKING_FLANGE)},
            boards_at(held));
        add(held,
            (struct Article){.code = coded(held, "-end"),
                             .description = described(held, SAY_PART_TRUNKING_END),
                             .note = say(arena, SAY_NOTE_TRUNKING_END)},
            2 - boards_at(held));
    }
}

/* ---- supports ---- */

static bool spacing_of(const struct Held *held, double *spacing_m)
{
    const struct Segment *segment = held->first;
    const bool upright = parts_upright(segment);
    switch (held->kind->way) {
    case WAY_CONDUIT:
        return segment->size_mm.given && conduit_spacing(segment->material, segment->size_mm.value, upright, spacing_m);
    case WAY_TRUNKING:
        return segment->height_mm.given &&
               trunking_spacing(segment->size_mm.value * segment->height_mm.value, upright, spacing_m);
    default: *spacing_m = containment_practice()->tray_support_m; return true;
    }
}

/* To the segments by where they fall; the chain's first to the first of them, two to each bend. */
static void share_supports(const struct Held *held, double spacing_m)
{
    struct Counting *counting = held->counting;
    const struct Article support = support_of(held);
    const double pitch_m = held->chain->length_m / parts_pieces(held->chain->length_m, spacing_m);
    double from_m = 0;
    for (int i = held->chain->first; i <= held->chain->last; i++) {
        if (held->member[i] != held->index) {
            continue;
        }
        const struct Segment *segment = counting->plan->segments[i].surveyed;
        const double to_m = from_m + segment->length_m.value;
        const double pieces =
            floor(to_m / pitch_m + 1e-6) - floor(from_m / pitch_m + 1e-6) + (from_m <= 0) + 2 * segment->bend_count;
        if (support.code != NULL) {
            parts_add(counting, &support, pieces, parts_for_segment(NULL, segment));
        }
        parts_count_grips(counting, segment, WAY_WALL,
                          pieces * (held->kind->open ? containment_practice()->tray_fixings : 1), NULL);
        struct PartsWay *way = parts_way(counting, -1, i);
        way->grip = pieces > 0 ? parts_grip_said(counting->arena, WAY_WALL, segment->fixed_to) : NULL;
        parts_way_say(counting, way,
                      say(counting->arena, SAY_SUPPORTS, say_word(WORDS_WAY, (int)segment->way),
                          say_fixed(pieces, 0, UNIT_NONE), say_fixed(spacing_m * 1000, 0, UNIT_MM)));
        from_m = to_m;
    }
}

static void count_supports(const struct Held *held)
{
    struct Counting *counting = held->counting;
    double spacing_m = 0;
    if (!spacing_of(held, &spacing_m)) {
        parts_not_counted(counting, UNCOUNTED_HELD_SIZE, parts_for_segment(NULL, held->first));
        return;
    }
    share_supports(held, spacing_m);
}

static void count_chains(struct Counting *counting, const struct Kind *kind, ChainSame same,
                         void (*count)(const struct Held *))
{
    struct Chain *chains = NULL;
    int *member = NULL;
    const int chain_count = parts_chains(counting, kind->way, same, &chains, &member);
    for (int i = 0; i < chain_count; i++) {
        const struct Segment *first = counting->plan->segments[chains[i].first].surveyed;
        const struct Held held = {.counting = counting,
                                  .kind = kind,
                                  .chain = &chains[i],
                                  .member = member,
                                  .index = i,
                                  .first = first,
                                  .codes = codes_of(counting->arena, kind, first)};
        if (parts_there_already(first)) {
            parts_not_counted(counting, UNCOUNTED_THERE_ALREADY, parts_for_segment(NULL, first));
        } else if (chains[i].cables > 0) {
            count(&held);
        }
    }
}

/* One tin to a job: its joints are few. Common practice, no source. */
static void count_cement(struct Counting *counting)
{
    const struct Article cement = {.aisle = AISLE_SUNDRIES,
                                   .code = "solvent-cement",
                                   .description = say(counting->arena, SAY_PART_CEMENT),
                                   .note = say(counting->arena, SAY_NOTE_CEMENT)};
    bool plastic = false;
    for (int i = 0; i < counting->plan->segment_count; i++) {
        const struct PlanSegment *planned = &counting->plan->segments[i];
        plastic =
            plastic || (planned->surveyed->way == WAY_CONDUIT && planned->surveyed->material == MATERIAL_PLASTIC &&
                        planned->run_count > 0 && !parts_there_already(planned->surveyed));
    }
    parts_add(counting, &cement, plastic, parts_for_all());
}

void parts_count_containment(struct Counting *counting)
{
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        count_chains(counting, &kinds[i], same_thing, count_thing);
        count_chains(counting, &kinds[i], same_support, count_supports);
    }
    count_cement(counting);
}
