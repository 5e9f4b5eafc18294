/* The fixed words of the route language, both ways. */
#include "survey.h"

struct Word {
    const char *word;
    const char *meaning;
};
#define KIND(symbol, word, meaning) {word, meaning},

#define LIST_WAY
static const struct Word way_words[] = {
#include "survey_kinds.inc"
};
#define LIST_LOCATION
static const struct Word location_words[] = {
#include "survey_kinds.inc"
};
#define LIST_SYSTEM
static const struct Word system_words[] = {
#include "survey_kinds.inc"
};
#define LIST_FAR_END
static const struct Word far_end_words[] = {
#include "survey_kinds.inc"
};
#define LIST_EXISTING
static const struct Word existing_words[] = {
#include "survey_kinds.inc"
};
#define LIST_SURGE
static const struct Word surge_words[] = {
#include "survey_kinds.inc"
};
#define LIST_SELECTIVITY
static const struct Word selectivity_words[] = {
#include "survey_kinds.inc"
};
#define LIST_RUN_KIND
static const struct Word run_kind_words[] = {
#include "survey_kinds.inc"
};
#define LIST_FEEDS
static const struct Word feeds_words[] = {
#include "survey_kinds.inc"
};
#define LIST_USE
static const struct Word use_words[] = {
#include "survey_kinds.inc"
};
#define LIST_DEVICE
static const struct Word device_words[] = {
#include "survey_kinds.inc"
};
#define LIST_CURVE
static const struct Word curve_words[] = {
#include "survey_kinds.inc"
};
#define LIST_RESIDUAL_TYPE
static const struct Word residual_type_words[] = {
#include "survey_kinds.inc"
};
#define LIST_CABLE
static const struct Word cable_words[] = {
#include "survey_kinds.inc"
};
#define LIST_CPC
static const struct Word cpc_words[] = {
#include "survey_kinds.inc"
};
#define LIST_INTO
static const struct Word into_words[] = {
#include "survey_kinds.inc"
};
#define LIST_PLACE
static const struct Word place_words[] = {
#include "survey_kinds.inc"
};
#define LIST_SURFACE
static const struct Word surface_words[] = {
#include "survey_kinds.inc"
};
#define LIST_SUN
static const struct Word sun_words[] = {
#include "survey_kinds.inc"
};
#define LIST_INSULATION
static const struct Word insulation_words[] = {
#include "survey_kinds.inc"
};
#define LIST_ARRANGEMENT
static const struct Word arrangement_words[] = {
#include "survey_kinds.inc"
};
#define LIST_LIE
static const struct Word lie_words[] = {
#include "survey_kinds.inc"
};
#define LIST_WALL
static const struct Word wall_words[] = {
#include "survey_kinds.inc"
};
#define LIST_MATERIAL
static const struct Word material_words[] = {
#include "survey_kinds.inc"
};
#define LIST_LAID
static const struct Word laid_words[] = {
#include "survey_kinds.inc"
};
#define LIST_UNDER
static const struct Word under_words[] = {
#include "survey_kinds.inc"
};
#define LIST_HIDDEN
static const struct Word hidden_words[] = {
#include "survey_kinds.inc"
};
#define LIST_DIG
static const struct Word dig_words[] = {
#include "survey_kinds.inc"
};
#define LIST_DRUM
static const struct Word drum_words[] = {
#include "survey_kinds.inc"
};
#define LIST_WIRE
static const struct Word wire_words[] = {
#include "survey_kinds.inc"
};
#define LIST_LEGS
static const struct Word legs_words[] = {
#include "survey_kinds.inc"
};
#define LIST_PITS
static const struct Word pits_words[] = {
#include "survey_kinds.inc"
};
#define LIST_ENTRY
static const struct Word entry_words[] = {
#include "survey_kinds.inc"
};
#define LIST_FROM
static const struct Word from_words[] = {
#include "survey_kinds.inc"
};
#define LIST_ENCLOSURE
static const struct Word enclosure_words[] = {
#include "survey_kinds.inc"
};
#undef KIND

struct Words {
    const struct Word *words;
    int count;
};
#define WORDS(list)                                                                                                    \
    {                                                                                                                  \
        list, (int)(sizeof(list) / sizeof(list)[0])                                                                    \
    }

static const struct Words lists[WORDS_COUNT] = {
    [WORDS_WAY] = WORDS(way_words),
    [WORDS_LOCATION] = WORDS(location_words),
    [WORDS_SYSTEM] = WORDS(system_words),
    [WORDS_FAR_END] = WORDS(far_end_words),
    [WORDS_EXISTING] = WORDS(existing_words),
    [WORDS_SURGE] = WORDS(surge_words),
    [WORDS_SELECTIVITY] = WORDS(selectivity_words),
    [WORDS_RUN_KIND] = WORDS(run_kind_words),
    [WORDS_FEEDS] = WORDS(feeds_words),
    [WORDS_USE] = WORDS(use_words),
    [WORDS_DEVICE] = WORDS(device_words),
    [WORDS_CURVE] = WORDS(curve_words),
    [WORDS_RESIDUAL_TYPE] = WORDS(residual_type_words),
    [WORDS_CABLE] = WORDS(cable_words),
    [WORDS_CPC] = WORDS(cpc_words),
    [WORDS_INTO] = WORDS(into_words),
    [WORDS_PLACE] = WORDS(place_words),
    [WORDS_SURFACE] = WORDS(surface_words),
    [WORDS_SUN] = WORDS(sun_words),
    [WORDS_INSULATION] = WORDS(insulation_words),
    [WORDS_ARRANGEMENT] = WORDS(arrangement_words),
    [WORDS_LIE] = WORDS(lie_words),
    [WORDS_WALL] = WORDS(wall_words),
    [WORDS_MATERIAL] = WORDS(material_words),
    [WORDS_LAID] = WORDS(laid_words),
    [WORDS_UNDER] = WORDS(under_words),
    [WORDS_HIDDEN] = WORDS(hidden_words),
    [WORDS_DIG] = WORDS(dig_words),
    [WORDS_DRUM] = WORDS(drum_words),
    [WORDS_PITS] = WORDS(pits_words),
    [WORDS_LEGS] = WORDS(legs_words),
    [WORDS_WIRE] = WORDS(wire_words),
    [WORDS_ENTRY] = WORDS(entry_words),
    [WORDS_FROM] = WORDS(from_words),
    [WORDS_ENCLOSURE] = WORDS(enclosure_words),
};

int survey_word_count(enum WordList list)
{
    return lists[list].count;
}

const char *survey_word(enum WordList list, int value)
{
    return value >= 0 && value < lists[list].count ? lists[list].words[value].word : "";
}

const char *survey_meaning(enum WordList list, int value)
{
    return value >= 0 && value < lists[list].count ? lists[list].words[value].meaning : "";
}
