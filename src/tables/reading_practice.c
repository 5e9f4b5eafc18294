/* What a reading is held against besides its limit, and what may have made it other than expected.
 *
 * Source: none: common practice.
 * Trust:  from memory.
 * Rows:   one figure each. */
#include "fault_tables_private.h"

static const struct ReadingPractice practice = {
    .band = 0.10,
    .leads_ohm = 0.05,
    .coldest_degc = 5,
    .warmest_degc = 30,
    .new_cable_mohm = 100,
    .length_shortest = 0.5,
    .length_longest = 2,
    .joint_least_ohm = 0.05,
    .joint_most_ohm = 0.5,
    .unlike_from = 0.25,
};

const struct ReadingPractice *reading_practice(void)
{
    return &practice;
}

void reading_practice_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"a reading fits within", practice.band, "times"},
                      {"leads that were not nulled and terminals", practice.leads_ohm, "ohm"},
                      {"a cable whose temperature nobody read is no colder than", practice.coldest_degc, "degC"},
                      {"and no warmer than", practice.warmest_degc, "degC"},
                      {"a new dry cable shows more than", practice.new_cable_mohm, "megohm"},
                      {"a length written down wrongly is at least", practice.length_shortest, "times"},
                      {"and at most", practice.length_longest, "times"},
                      {"a loose joint adds at least", practice.joint_least_ohm, "ohm"},
                      {"and at most", practice.joint_most_ohm, "ohm"},
                      {"two resistances count as unlike from", practice.unlike_from, "times"},
                  },
                  10);
}

const struct TableRef *reading_practice_ref(void)
{
    static const struct TableRef ref = {.standard = "common practice, no source",
                                        "readings",
                                        "what readings are held against, and what makes them differ",
                                        TRUST_COMMON_PRACTICE,
                                        "from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
