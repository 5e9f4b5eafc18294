/* Trenches for cable and duct: width, sand, cover, and what is left over.
 *
 * Source: cover from one network operator's cable manual and another's customer note (450 mm unmade ground and paths,
 *         600 mm roads and dug ground), 1 m in fields from another's manual that asks 0.91 to 1.0 m; 75 mm of sand or
 * stone dust round the cable, 300 mm of width and tape 200 mm above it from the same. Trust:  those seen; machine
 * width, each further cable, bulking, density and the depth that needs support from memory. BS 7671 gives no depth:
 * 522.8.10 asks for enough. Rows:   one figure each; by what lies above for the cover. A trench that nobody says how to
 * dig is dug by hand. */
#include "mechanics_tables.h"
#include "tables_private.h"

static const struct TrenchPractice practice = {
    .hand_width_m = 0.3,
    .machine_width_m = 0.15,
    .more_width_m = 0.15,
    .bed_m = 0.075,
    .top_m = 0.075,
    .bulking = 1.3,
    .sand_kg_per_m3 = 1650,
    .tape_above_m = 0.2,
    .brace_m = 1.2,
};

static const double cover_m[UNDER_COUNT + 1] = {[UNDER_LAWN] = 0.45, [UNDER_PATH] = 0.45, [UNDER_DRIVE] = 0.6,
                                                [UNDER_BED] = 0.6,   [UNDER_FIELD] = 1.0, [UNDER_COUNT] = 0.6};

const struct TrenchPractice *trench_practice(void)
{
    return &practice;
}

double trench_cover(enum Under under)
{
    return (int)under >= 0 && under < UNDER_COUNT ? cover_m[under] : cover_m[UNDER_COUNT];
}

void trench_practice_cells(struct TextBuilder *out)
{
    cells_figures(out,
                  (const struct OneFigure[]){
                      {"width dug by hand", practice.hand_width_m, "m"},
                      {"width dug by machine", practice.machine_width_m, "m"},
                      {"width for each further cable", practice.more_width_m, "m"},
                      {"sand under", practice.bed_m, "m"},
                      {"sand over", practice.top_m, "m"},
                      {"loose over firm", practice.bulking, "times"},
                      {"sand", practice.sand_kg_per_m3, "kg/m3"},
                      {"tape above the cable", practice.tape_above_m, "m"},
                      {"sides supported deeper than", practice.brace_m, "m"},
                  },
                  9);
    for (int under = 0; under < UNDER_COUNT; under++) {
        text_print(out, "cover under %s,", survey_word(WORDS_UNDER, under));
        cells_number(out, cover_m[under], false);
        text_add(out, "m\n");
    }
}

const struct TableRef *trench_practice_ref(void)
{
    static const struct TableRef ref = {.standard = "network operators' notes",
                                        "trench",
                                        "width, sand and cover of cable trenches",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "cover, sand and width seen, the rest from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
