/* What the place of a feed demands of it: BS 7671 Part 7, and 411.3.3 and 411.3.4, as far as they bear on a feed.
 *
 * Source: BS 7671:2018+A2:2022, sections 702 to 740; ESQCR 2002 reg 9(4); read from regulations bodies' articles,
 *         institution magazines and forums, not from the print. Amendments after A2 are not in it.
 * Trust:  by row, in its last column: two sources, one seen, or from memory.
 * Rows:   a kind of place has only the rules named here; what it has no row for goes by the row of an ordinary place.
 */
#include "edition_private.h"

#define MEMORY TRUST_FROM_MEMORY
#define SEEN   TRUST_PARTLY_FROM_MEMORY /* one source seen; clause from memory */
#define TWO    TRUST_PUBLISHED

/* clang-format off */
static const struct LocationRule rows[] = {
    {LOCATION_ORDINARY, TOPIC_SOCKETS, 0.03, 32, "411.3.3", TWO, RULE_BY_CLAUSE},

    {LOCATION_DWELLING, TOPIC_SOCKETS, 0.03, 32, "411.3.3", TWO, RULE_BY_CLAUSE},
    {LOCATION_DWELLING, TOPIC_LIGHTING, 0.03, 0, "411.3.4", TWO, RULE_BY_CLAUSE},

    {LOCATION_FARM, TOPIC_SOCKETS, 0.03, 32, "705.411.1 (i)", TWO, RULE_BY_CLAUSE},
    {LOCATION_FARM, TOPIC_SOCKETS_LARGE, 0.1, 0, "705.411.1 (ii)", TWO, RULE_BY_CLAUSE},
    {LOCATION_FARM, TOPIC_FINAL, 0.3, 0, "705.411.1 (iii)", TWO, RULE_BY_CLAUSE},
    {LOCATION_FARM, TOPIC_FEED, 0.3, 0, "705.411.1 (iii)", TWO, RULE_BY_CLAUSE},
    {LOCATION_FARM, TOPIC_EARTH, EARTH_WITH_GRID, 0, "705.415.2.1", SEEN, RULE_BY_NOTE},
    {LOCATION_FARM, TOPIC_DEPTH, 0.6, 0, "705.522", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_FARM, TOPIC_DEPTH_FIELD, 1.0, 0, "705.522", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_FARM, TOPIC_HEIGHT_VEHICLES, 6.0, 0, "705.522", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_FARM, TOPIC_HEIGHT, 6.0, 0, "705.522", MEMORY, RULE_BY_CLAUSE},

    {LOCATION_BUILDING_SITE, TOPIC_SOCKETS, 0.03, 32, "704.411.3.2.1", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_BUILDING_SITE, TOPIC_SOCKETS_LARGE, 0.5, 0, "704.411.3.2.2", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_BUILDING_SITE, TOPIC_EARTH, EARTH_REFUSED, 0, "704.411.3.1", TWO, RULE_BY_CLAUSE},
    {LOCATION_BUILDING_SITE, TOPIC_HEIGHT_VEHICLES, 5.8, 0, "BS 7375", MEMORY, RULE_BY_STANDARD},
    {LOCATION_BUILDING_SITE, TOPIC_HEIGHT, 5.2, 0, "BS 7375", MEMORY, RULE_BY_STANDARD},

    {LOCATION_CARAVAN_PARK, TOPIC_SOCKETS, 0.03, 32, "708.415.1", SEEN, RULE_BY_CLAUSE},
    {LOCATION_CARAVAN_PARK, TOPIC_FINAL, 0.03, 0, "708.415.1", SEEN, RULE_BY_CLAUSE},
    {LOCATION_CARAVAN_PARK, TOPIC_EARTH, EARTH_REFUSED, 0, "708.411.4; ESQCR 9(4)", TWO, RULE_BY_CLAUSE},
    {LOCATION_CARAVAN_PARK, TOPIC_DEPTH, 0.6, 0, "708.521.7.2", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_CARAVAN_PARK, TOPIC_HEIGHT_VEHICLES, 6.0, 0, "708.521.7.3", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_CARAVAN_PARK, TOPIC_HEIGHT, 3.5, 0, "708.521.7.3", MEMORY, RULE_BY_CLAUSE},

    {LOCATION_MARINA, TOPIC_SOCKETS, 0.03, 63, "709.531.2", SEEN, RULE_BY_CLAUSE},
    {LOCATION_MARINA, TOPIC_SOCKETS_LARGE, 0.3, 0, "709.531.2", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_MARINA, TOPIC_FINAL, 0.03, 0, "709.531.2", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_MARINA, TOPIC_EARTH, EARTH_REFUSED, 0, "709.411.4; ESQCR 9(4)", TWO, RULE_BY_CLAUSE},
    {LOCATION_MARINA, TOPIC_DEPTH, 0.5, 0, "709.521.1.7", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_MARINA, TOPIC_HEIGHT_VEHICLES, 6.0, 0, "709.521.1.8", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_MARINA, TOPIC_HEIGHT, 3.5, 0, "709.521.1.8", MEMORY, RULE_BY_CLAUSE},

    {LOCATION_POOL, TOPIC_SOCKETS, 0.03, 32, "702.410.3.4", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_POOL, TOPIC_FINAL, 0.03, 0, "702.410.3.4", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_POOL, TOPIC_EARTH, EARTH_REFUSED, 0, "702.410.3.4.3", SEEN, RULE_BY_NOTE},

    {LOCATION_OUTDOOR_LIGHTING, TOPIC_LIGHTING, 0.03, 0, "714.411.3.4", SEEN, RULE_BY_CLAUSE},

    {LOCATION_EVENT, TOPIC_SOCKETS, 0.03, 32, "711.411.3.3; 740.415.1", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_EVENT, TOPIC_FINAL, 0.03, 0, "711.411.3.3; 740.415.1", MEMORY, RULE_BY_CLAUSE},
    {LOCATION_EVENT, TOPIC_FEED, 0.3, 0, "711.410.3.4; 740.410.3", SEEN, RULE_BY_CLAUSE},
    {LOCATION_EVENT, TOPIC_EARTH, EARTH_REFUSED, 0, "711.411.4; 740.411.4", MEMORY, RULE_BY_CLAUSE},

    {LOCATION_FUEL_POINT, TOPIC_EARTH, EARTH_REFUSED, 0, "ESQCR guidance; ENA G12", MEMORY, RULE_BY_GUIDANCE},

    {LOCATION_MEDICAL, TOPIC_REFUSED, 0, 0, "710", MEMORY, RULE_BY_CLAUSE},
};
/* clang-format on */

const struct LocationRules location_rules_part_7 = {
    .ref = {TABLES_BS7671, "Part 7, 411.3.3, 411.3.4", "what a kind of place demands of a feed",
            TRUST_PARTLY_FROM_MEMORY, "by row: two sources, one seen, or from memory", .words = TABLE_NOT_CITED},
    .rows = rows,
    .count = COUNT_OF(rows),
};

int location_rule_count(const struct Edition *edition)
{
    return edition->locations->count;
}

const struct LocationRule *location_rule_at(const struct Edition *edition, int index)
{
    const struct LocationRules *rules = edition->locations;
    return index >= 0 && index < rules->count ? &rules->rows[index] : NULL;
}

const struct LocationRule *location_rule(const struct Edition *edition, enum Location location,
                                         enum LocationTopic topic)
{
    const struct LocationRules *rules = edition->locations;
    for (int i = 0; i < rules->count; i++) {
        if (rules->rows[i].location == location && rules->rows[i].topic == topic) {
            return &rules->rows[i];
        }
    }
    return NULL;
}

void location_rule_cells(const struct Edition *edition, struct TextBuilder *out)
{
    static const char *const topics[TOPIC_COUNT] = {
        [TOPIC_SOCKETS] = "residual device of sockets A",
        [TOPIC_SOCKETS_LARGE] = "residual device of larger sockets A",
        [TOPIC_LIGHTING] = "residual device of lighting A",
        [TOPIC_FINAL] = "residual device of other final circuits A",
        [TOPIC_FEED] = "residual device of a feed A",
        [TOPIC_EARTH] = "earth of a TN-C-S supply",
        [TOPIC_DEPTH] = "depth m",
        [TOPIC_DEPTH_FIELD] = "depth in tilled ground m",
        [TOPIC_HEIGHT_VEHICLES] = "height where vehicles go m",
        [TOPIC_HEIGHT] = "height elsewhere m",
        [TOPIC_REFUSED] = "rules",
    };
    static const char *const sure[] = {[TRUST_PUBLISHED] = "two sources",
                                       [TRUST_PARTLY_FROM_MEMORY] = "one seen",
                                       [TRUST_FROM_MEMORY] = "from memory",
                                       [TRUST_COMMON_PRACTICE] = "common practice"};
    text_add(out, "place,of,figure,rating to A,clause,how sure\n");
    for (int index = 0; index < edition->locations->count; index++) {
        const struct LocationRule *row = &edition->locations->rows[index];
        cells_text(out, survey_word(WORDS_LOCATION, (int)row->location), false);
        cells_text(out, topics[row->topic], false);
        if (row->topic == TOPIC_EARTH) {
            cells_text(out, row->value > EARTH_REFUSED ? "with a bonded grid" : "refused", false);
        } else if (row->topic == TOPIC_REFUSED) {
            cells_text(out, "not held", false);
        } else {
            cells_number(out, row->value, false);
        }
        cells_number(out, row->up_to_a > 0 ? row->up_to_a : NOT_GIVEN, false);
        text_add(out, row->clause);
        cells_text(out, row->by == RULE_BY_NOTE ? " note" : "", false);
        cells_text(out, sure[row->trust], true);
    }
}

const struct TableRef *location_rule_ref(const struct Edition *edition)
{
    return &edition->locations->ref;
}
