/* Each assumption at another plausible value: the next row of the table that the figure is read from, the other
 * temperature that terminals are made for, another word of the language. Where none of these is held there is no other
 * value: no figure is invented. */
#include "design.h"
#include "design/terms/design_private.h"

/* A figure in a unit, or a word of a list; and how a route file says so. */
struct Other {
    enum { OTHER_NONE, OTHER_FIGURE, OTHER_WORD, OTHER_SAID } is;
    double figure;
    enum Unit unit;
    const char *measure; /* that unit as it is typed */
    enum WordList list;
    int word;
    enum Saying said;
    const char *below; /* key within the segment or run; NULL: it is of the file, by the key that is assumed */
};
#define FIGURE(id, of, by, typed)                                                                                      \
    [ASSUMED_##id] = {.is = OTHER_FIGURE, .figure = (by), .unit = UNIT_##of, .measure = (typed)}
#define WORD_OF(id, of, by, at) [ASSUMED_##id] = {.is = OTHER_WORD, .list = WORDS_##of, .word = (by), .below = (at)}

static const struct Other others[ASSUMED_COUNT] = {
    FIGURE(AIR, DEGC, 35, "degC"),               /* Table 4B1, the row after 30 */
    FIGURE(GROUND, DEGC, 25, "degC"),            /* Table 4B2, the row after 20 */
    FIGURE(SOIL_THERMAL, K_M_PER_W, 3, "K.m/W"), /* Table 4B3, the row after 2.5 */
    FIGURE(TERMINALS, DEGC, 90, "degC"),         /* BS 7671 512.1.5: the other that they are made for */
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

/* ---- what says so in a route file ---- */

static const char *typed(struct Arena *arena, const struct Other *other)
{
    return other->is == OTHER_FIGURE
               ? arena_print(arena, "%s %s", number_significant(arena, other->figure, 4), other->measure)
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

struct Settings design_settings(struct Arena *arena, const struct Survey *survey, const struct Assumption *assumption)
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
    struct Setting setting = {.run = assumed->run, .segment = -1, .below = other->below, .value = typed(arena, other)};
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
