/* Each assumption at another plausible value: the next row of the table that the figure is read from, the other
 * temperature that terminals are made for, another word of the language. Where none of these is held there is no other
 * value: no figure is invented. */
#include "design.h"
#include "design/terms/design_private.h"
#include "tables/fault_tables.h"

/* A figure of a table in a unit, or a word of a list; and how a route file says so. */
struct Other {
    enum { OTHER_NONE, OTHER_FIGURE, OTHER_WORD, OTHER_SAID } is;
    enum Unit unit;
    const char *measure; /* that unit as it is typed */
    enum WordList list;
    int word;
    enum Saying said;
    const char *below; /* key within the segment or run; NULL: it is of the file, by the key that is assumed */
};
#define FIGURE(id, of, typed)   [ASSUMED_##id] = {.is = OTHER_FIGURE, .unit = UNIT_##of, .measure = (typed)}
#define WORD_OF(id, of, by, at) [ASSUMED_##id] = {.is = OTHER_WORD, .list = WORDS_##of, .word = (by), .below = (at)}

static const struct Other others[ASSUMED_COUNT] = {
    FIGURE(AIR, DEGC, "degC"),
    FIGURE(GROUND, DEGC, "degC"),
    FIGURE(SOIL_THERMAL, K_M_PER_W, "K.m/W"),
    FIGURE(TERMINALS, DEGC, "degC"),
    WORD_OF(FEEDS, FEEDS, FEEDS_SOCKETS, "feeds"),
    WORD_OF(CPC, CPC, CPC_ARMOUR, "cable.cpc"),
    WORD_OF(START, PLACE, PLACE_OUTDOORS, "start.place"),
    WORD_OF(FINISH, PLACE, PLACE_OUTDOORS, "finish.place"),
    WORD_OF(TIMBER, SURFACE, SURFACE_BRICK, "fixed-to"),
    WORD_OF(SHADED, SUN, SUN_FULL, "sun"),
    WORD_OF(NEW_DUCT, LAID, LAID_EXISTING, "duct.laid"),
    [ASSUMED_BESIDE_ALIKE] = {.is = OTHER_SAID, .said = SAY_UNLIKE_IN_SIZE, .below = "beside.unlike"},
    WORD_OF(ONE_SIDE, INSULATION, INSULATION_SURROUNDED, "insulation"),
};

/* Of the surroundings the row behind that of what is assumed. 0: there is none. */
static double other_figure(const struct Edition *edition, const struct Conditions *assumed, enum AssumedWhat what)
{
    static const double a_hair_more = 1.001;
    struct Figure next = {.row = 0};
    switch (what) {
    case ASSUMED_AIR: ambient_air(edition, 90, a_hair_more * assumed->air_degc.value, &next); break;
    case ASSUMED_GROUND: ambient_ground(edition, 90, a_hair_more * assumed->ground_degc.value, &next); break;
    case ASSUMED_SOIL_THERMAL:
        soil_resistivity(edition, a_hair_more * assumed->soil_thermal_k_m_per_w.value, false, &next);
        break;
    case ASSUMED_TERMINALS: return clause_ratings()->terminals_more_degc;
    default: break;
    }
    return next.row;
}

/* Without armour no part of the cable but its core can be the protective conductor. */
static bool may_be_other(const struct Survey *survey, const struct Assumed *assumed)
{
    return assumed->what != ASSUMED_CPC ||
           (assumed->run >= 0 && survey_armoured(survey->runs[assumed->run].cable.type));
}

const struct Say *other_said(struct Arena *arena, const struct Edition *edition, const struct Survey *survey,
                             const struct Assumed *assumed)
{
    const struct Other *other = &others[assumed->what];
    if (!may_be_other(survey, assumed)) {
        return NULL;
    }
    switch (other->is) {
    case OTHER_FIGURE: {
        const double figure = other_figure(edition, &survey->conditions, assumed->what);
        return figure > 0 ? say(arena, SAY_AS_IS, say_digits(figure, 4, other->unit)) : NULL;
    }
    case OTHER_WORD: return say(arena, SAY_AS_IS, say_word(other->list, other->word));
    case OTHER_SAID: return say(arena, other->said);
    case OTHER_NONE: break;
    }
    return NULL;
}

/* ---- what says so in a route file ---- */

static const char *typed(struct Arena *arena, const struct Other *other, double figure)
{
    return other->is == OTHER_FIGURE ? arena_print(arena, "%s %s", number_significant(arena, figure, 4), other->measure)
           : other->is == OTHER_WORD ? survey_word(other->list, other->word)
                                     : "yes";
}

/* Lofts without a figure of their own, in summer. */
static void set_lofts(struct Arena *arena, const struct Survey *survey, struct Settings *settings)
{
    const char *summer = arena_print(arena, "%s degC", number_significant(arena, site_practice()->roof_summer_degc, 4));
    for (int i = 0; i < survey->segment_count; i++) {
        if (survey->segments[i].way == WAY_LOFT_VOID && !survey->segments[i].air_degc.given) {
            settings->list[settings->count++] =
                (struct Setting){.run = -1, .segment = i, .below = "air", .value = summer};
        }
    }
}

struct Settings design_settings(struct Arena *arena, const struct Edition *edition, const struct Survey *survey,
                                const struct Assumption *assumption)
{
    struct Settings settings = {.list = arena_array(arena, (size_t)survey->segment_count + 1, sizeof *settings.list)};
    if (settings.list == NULL || assumption->other == NULL) {
        return settings;
    }
    if (assumption->assumed < 0) {
        set_lofts(arena, survey, &settings);
        return settings;
    }
    const struct Assumed *assumed = &survey->assumed[assumption->assumed];
    const struct Other *other = &others[assumed->what];
    const double figure = other_figure(edition, &survey->conditions, assumed->what);
    struct Setting setting = {
        .run = assumed->run, .segment = -1, .below = other->below, .value = typed(arena, other, figure)};
    if (other->below == NULL) {
        setting.run = -1;
        setting.below = assumed->where;
    }
    if (assumed->segment_count == 0) {
        settings.list[settings.count++] = setting;
    }
    for (int i = 0; i < assumed->segment_count; i++) {
        setting.run = -1;
        setting.segment = assumed->segments[i];
        settings.list[settings.count++] = setting;
    }
    return settings;
}
