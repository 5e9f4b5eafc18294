/* What to watch on a stretch: what its surroundings ask for, what no survey knows of it (a blank, so that somebody
 * decides it and writes it down), and the cautions that bite there. Common practice, no source. */
#include "documents/shown_private.h"
#include "papers_private.h"

#include <math.h>

static enum Saying how_beside(enum Arrangement arrangement)
{
    switch (arrangement) {
    case ARRANGEMENT_BUNCHED: return SAY_BESIDE_BUNCHED;
    case ARRANGEMENT_SINGLE_LAYER: return SAY_BESIDE_LAYER;
    case ARRANGEMENT_SPACED: return SAY_BESIDE_CLEAR;
    case ARRANGEMENT_DUCT_TOUCHING: return SAY_BESIDE_DUCT_TOUCHING;
    case ARRANGEMENT_DUCT_SPACED: return SAY_BESIDE_DUCT_SPACED;
    case ARRANGEMENT_COUNT: break;
    }
    return SAY_NOTHING;
}

static void add_surroundings(const struct PapersTable *table, struct XmlElement *line, const struct Segment *segment)
{
    struct Arena *arena = xml_out_arena(table->out);
    if (segment->insulation == INSULATION_SURROUNDED) {
        papers_do(table->out, line, "watch",
                  say(arena, SAY_ROW_INSULATION_LENGTH, papers_millimetres(segment->insulated_length_m.value)));
    } else if (segment->insulation == INSULATION_ONE_SIDE) {
        papers_do(table->out, line, "watch", say(arena, SAY_ROW_INSULATION_ONE_SIDE));
    }
    /* cables that lie there already, as an instruction: the rating counts on it */
    if (segment->has_beside && segment->beside.circuits > 0) {
        papers_do(table->out, line, "watch",
                  say(arena, SAY_ROW_BESIDE, say_count(segment->beside.circuits),
                      say_term(how_beside(segment->beside.arrangement))));
    }
    if (segment->lie == LIE_LAYER || segment->lie == LIE_SPACED) {
        papers_do(table->out, line, "watch", say(arena, segment->lie == LIE_LAYER ? SAY_ROW_LAYER : SAY_ROW_SPACED));
    }
}

/* The stretch before this one on the first run that follows it; NULL at its start. */
static const struct Segment *before(const struct Plan *plan, int index)
{
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].settled;
        for (int i = 0; i < run->along_count; i++) {
            if (run->along[i] == index) {
                return i == 0 ? NULL : plan->segments[run->along[i - 1]].surveyed;
            }
        }
    }
    return NULL;
}

/* Into or out of a roof void by no hole that was surveyed. */
static bool through_ceiling(const struct Segment *one, const struct Segment *other)
{
    return one != NULL && one->way != WAY_THROUGH_WALL && other->way != WAY_THROUGH_WALL &&
           (one->way == WAY_LOFT_VOID) != (other->way == WAY_LOFT_VOID);
}

/* The run whose legs are listed at a stretch: the first that follows it. */
static const struct PlanRun *follower(const struct Plan *plan, int index)
{
    for (int r = 0; r < plan->run_count; r++) {
        const struct Run *run = plan->runs[r].settled;
        for (int i = 0; i < run->along_count; i++) {
            if (run->along[i] == index) {
                return &plan->runs[r];
            }
        }
    }
    return NULL;
}

static void add_leg(const struct PapersTable *table, struct XmlElement *line, const struct PlanLeg *leg)
{
    struct Arena *arena = xml_out_arena(table->out);
    const struct Segment *ground = table->plan->segments[leg->segment].surveyed;
    const struct Segment *other = leg->other < 0 ? NULL : table->plan->segments[leg->other].surveyed;
    const bool surface = other == NULL || !survey_in_ground(other->way);
    const enum Saying where = other == NULL ? (leg->down ? SAY_LEG_AT_START : SAY_LEG_AT_END)
                              : !surface    ? (leg->down ? SAY_LEG_DEEPER : SAY_LEG_SHALLOWER)
                                            : (leg->down ? SAY_LEG_DOWN : SAY_LEG_UP);
    const struct Say *text =
        say(arena, surface ? SAY_ROW_LEG_GUARD : SAY_ROW_LEG,
            say_part(say(arena, where, say_name(other == NULL ? "" : other->name))), papers_metres(leg->length_m));
    if (!leg->down && other != NULL && other->way == WAY_THROUGH_WALL && ground->way == WAY_DUCT) {
        text = say_then(arena, text, say(arena, SAY_ROW_LEG_DUCT_ENDS));
    }
    papers_do(table->out, line, "watch", text);
}

static void add_unknowns(const struct PapersTable *table, struct XmlElement *line, int index)
{
    struct Arena *arena = xml_out_arena(table->out);
    const struct Segment *segment = table->plan->segments[index].surveyed;
    const struct Segment *from = before(table->plan, index);
    if (segment->way == WAY_FENCE) {
        papers_do(table->out, line, "watch", say(arena, SAY_ROW_HEIGHT));
    }
    if (segment->way == WAY_BEAM || segment->way == WAY_LOFT_VOID) {
        papers_do(table->out, line, "watch", say(arena, SAY_ROW_TIMBER_ACROSS));
    }
    if (through_ceiling(from, segment)) {
        papers_do(table->out, line, "watch",
                  say(arena, segment->way == WAY_LOFT_VOID ? SAY_ROW_INTO_ROOF_VOID : SAY_ROW_OUT_OF_ROOF_VOID,
                      say_name(from->name)));
    }
    const struct PlanRun *run = follower(table->plan, index);
    for (int i = 0; run != NULL && i < run->leg_count; i++) {
        if (run->legs[i].segment == index) {
            add_leg(table, line, &run->legs[i]);
        }
    }
}

/* What stands beside the way, and where as one comes from the supply end; a note that names it, or says more. */
static void add_landmarks(const struct PapersTable *table, struct XmlElement *line, const struct Segment *segment)
{
    static const enum Saying words[LANDMARK_COUNT] = {
        [LANDMARK_ROD] = SAY_SIGN_ROD,   [LANDMARK_SERVICE] = SAY_SIGN_SERVICE,  [LANDMARK_DRAIN] = SAY_SIGN_DRAIN,
        [LANDMARK_TREE] = SAY_SIGN_TREE, [LANDMARK_COVER] = SAY_SIGN_COVER,      [LANDMARK_JOINT] = SAY_SIGN_JOINT,
        [LANDMARK_POST] = SAY_SIGN_POST, [LANDMARK_OTHER] = SAY_SIGN_OTHER_MARK,
    };
    struct Arena *arena = xml_out_arena(table->out);
    for (int i = 0; i < segment->landmark_count; i++) {
        const struct Landmark *landmark = &segment->landmarks[i];
        const bool noted = landmark->note != NULL && *landmark->note != '\0';
        const struct Say *place = landmark_place_said(arena, landmark);
        const struct Say *more = noted ? say(arena, SAY_AS_IS, say_name(landmark->note)) : NULL;
        papers_do(table->out, line, "watch",
                  say(arena, SAY_ROW_MARK, say_term(words[landmark->what]), say_part(place), say_part(more)));
    }
}

static void add_warnings(const struct PapersTable *table, struct XmlElement *line, int index)
{
    struct Arena *arena = xml_out_arena(table->out);
    for (int i = 0; arena != NULL && i < table->plan->warning_count; i++) {
        const struct PlanWarning *warning = &table->plan->warnings[i];
        if (warning->segment == index) {
            papers_do(table->out, line, "warning",
                      say(arena, SAY_AS_IS,
                          say_name(words_warning(arena, xml_out_words(table->out), warning->code, warning->words))));
        }
    }
}

void papers_watch(const struct PapersTable *table, struct XmlElement *line, int index)
{
    const struct Plan *plan = table->plan;
    const struct PlanSegment *place = &plan->segments[index];
    add_warnings(table, line, index);
    add_landmarks(table, line, place->surveyed);
    add_unknowns(table, line, index);
    add_surroundings(table, line, place->surveyed);
    papers_do(table->out, line, "watch", place->drawing_in);
    for (int i = 0; i < plan->caution_count; i++) {
        const struct Caution *caution = &plan->cautions[i];
        if (!caution->every_job && plan_caution_at(caution, index) && !papers_said_above(table, index, i)) {
            papers_do(table->out, line, "watch", plan_caution_shortly(caution));
        }
    }
    if (*place->surveyed->notes != '\0') {
        papers_do(table->out, line, "note",
                  say(xml_out_arena(table->out), SAY_AS_IS, say_name(place->surveyed->notes)));
    }
}
