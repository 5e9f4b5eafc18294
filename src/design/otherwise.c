/* Each assumption at another plausible value: the next row of the table that the figure is read from, the other
 * temperature that terminals are made for, another word of the language. Where none of these is held there is no other
 * value: no figure is invented. */
#include "design.h"
#include "design/terms/design_private.h"

#include <string.h>

/* A figure, or a word of a list. */
struct Other {
    enum { OTHER_NONE, OTHER_FIGURE, OTHER_WORD, OTHER_SAID } is;
    double figure;
    enum Unit unit;
    enum WordList list;
    int word;
    enum Saying said;
};
#define FIGURE(id, of, by)  [ASSUMED_##id] = {.is = OTHER_FIGURE, .figure = (by), .unit = UNIT_##of}
#define WORD_OF(id, of, by) [ASSUMED_##id] = {.is = OTHER_WORD, .list = WORDS_##of, .word = (by)}

static const struct Other others[ASSUMED_COUNT] = {
    FIGURE(AIR, DEGC, 35),              /* Table 4B1, the row after 30 */
    FIGURE(GROUND, DEGC, 25),           /* Table 4B2, the row after 20 */
    FIGURE(SOIL_THERMAL, K_M_PER_W, 3), /* Table 4B3, the row after 2.5 */
    FIGURE(TERMINALS, DEGC, 90),        /* BS 7671 512.1.5: the other that they are made for */
    WORD_OF(FEEDS, FEEDS, FEEDS_SOCKETS),
    WORD_OF(CPC, CPC, CPC_ARMOUR),
    WORD_OF(START, PLACE, PLACE_OUTDOORS),
    WORD_OF(FINISH, PLACE, PLACE_OUTDOORS),
    WORD_OF(TIMBER, SURFACE, SURFACE_BRICK),
    WORD_OF(SHADED, SUN, SUN_FULL),
    WORD_OF(NEW_DUCT, LAID, LAID_EXISTING),
    [ASSUMED_BESIDE_ALIKE] = {.is = OTHER_SAID, .said = SAY_UNLIKE_IN_SIZE},
    WORD_OF(ONE_SIDE, INSULATION, INSULATION_SURROUNDED),
};

/* Without armour no part of the cable but its core can be the protective conductor. */
static bool may_be_other(const struct Survey *survey, const struct Assumed *assumed)
{
    return assumed->what != ASSUMED_CPC ||
           (assumed->run >= 0 && survey_armoured(survey->runs[assumed->run].cable.type));
}

const struct Say *other_said(struct Arena *arena, const struct Survey *survey, const struct Assumed *assumed)
{
    const struct Other *other = &others[assumed->what];
    if (!may_be_other(survey, assumed)) {
        return NULL;
    }
    switch (other->is) {
    case OTHER_FIGURE: return say(arena, SAY_AS_IS, say_digits(other->figure, 4, other->unit));
    case OTHER_WORD: return say(arena, SAY_AS_IS, say_word(other->list, other->word));
    case OTHER_SAID: return say(arena, other->said);
    case OTHER_NONE: break;
    }
    return NULL;
}

/* ---- the survey that says so ---- */

struct Changed {
    struct Survey *survey;
    struct Run *runs;
    struct Segment *segments;
};

static bool copy(struct Arena *arena, const struct Survey *survey, struct Changed *out)
{
    *out = (struct Changed){arena_alloc(arena, sizeof *out->survey),
                            arena_array(arena, (size_t)survey->run_count, sizeof *out->runs),
                            arena_array(arena, (size_t)survey->segment_count, sizeof *out->segments)};
    if (out->survey == NULL || out->runs == NULL || out->segments == NULL) {
        return false;
    }
    memcpy(out->runs, survey->runs, (size_t)survey->run_count * sizeof *out->runs);
    memcpy(out->segments, survey->segments, (size_t)survey->segment_count * sizeof *out->segments);
    *out->survey = *survey;
    out->survey->runs = out->runs;
    out->survey->segments = out->segments;
    return true;
}

/* Segments without a figure of their own take that of the conditions. */
static void change_conditions(const struct Changed *changed, enum AssumedWhat what, double value)
{
    struct Conditions *conditions = &changed->survey->conditions;
    for (int i = 0; i < changed->survey->segment_count; i++) {
        struct Segment *segment = &changed->segments[i];
        struct Quantity *here = what == ASSUMED_AIR      ? &segment->air_degc
                                : what == ASSUMED_GROUND ? &segment->ground_degc
                                                         : &segment->soil_thermal_k_m_per_w;
        here->value = here->given ? here->value : value;
    }
    *(what == ASSUMED_AIR      ? &conditions->air_degc.value
      : what == ASSUMED_GROUND ? &conditions->ground_degc.value
                               : &conditions->soil_thermal_k_m_per_w.value) = value;
}

static void change_segment(enum AssumedWhat what, struct Segment *segment)
{
    const int word = others[what].word;
    switch (what) {
    case ASSUMED_TIMBER: segment->fixed_to = (enum Surface)word; break;
    case ASSUMED_SHADED: segment->sun = (enum Sun)word; break;
    case ASSUMED_NEW_DUCT: segment->duct_laid = (enum Laid)word; break;
    case ASSUMED_ONE_SIDE: segment->insulation = (enum Insulation)word; break;
    case ASSUMED_BESIDE_ALIKE: segment->beside.unlike = true; break;
    default: break;
    }
}

static void change_run(enum AssumedWhat what, struct Run *run)
{
    const int word = others[what].word;
    switch (what) {
    case ASSUMED_FEEDS: run->feeds = (enum Feeds)word; break;
    case ASSUMED_CPC: run->cable.cpc = (enum Cpc)word; break;
    case ASSUMED_START: run->start.place = (enum Place)word; break;
    case ASSUMED_FINISH: run->finish.place = (enum Place)word; break;
    default: break;
    }
}

/* Lofts without a figure of their own, in summer. */
static void change_lofts(const struct Changed *changed)
{
    for (int i = 0; i < changed->survey->segment_count; i++) {
        struct Segment *segment = &changed->segments[i];
        if (segment->way == WAY_LOFT_VOID && !segment->air_degc.given) {
            segment->air_degc.value = site_practice()->roof_summer_degc;
        }
    }
}

const struct Survey *design_otherwise(struct Arena *arena, const struct Survey *survey,
                                      const struct Assumption *assumption)
{
    struct Changed changed;
    if (assumption->other == NULL || !copy(arena, survey, &changed)) {
        return NULL;
    }
    if (assumption->assumed < 0) {
        change_lofts(&changed);
        return changed.survey;
    }
    const struct Assumed *assumed = &survey->assumed[assumption->assumed];
    switch (assumed->what) {
    case ASSUMED_AIR:
    case ASSUMED_GROUND:
    case ASSUMED_SOIL_THERMAL: change_conditions(&changed, assumed->what, others[assumed->what].figure); break;
    case ASSUMED_TERMINALS: changed.survey->conditions.terminals_degc.value = others[assumed->what].figure; break;
    default:
        for (int i = 0; i < assumed->segment_count; i++) {
            change_segment(assumed->what, &changed.segments[assumed->segments[i]]);
        }
        if (assumed->run >= 0) {
            change_run(assumed->what, &changed.runs[assumed->run]);
        }
        break;
    }
    return changed.survey;
}
