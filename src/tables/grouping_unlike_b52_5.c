/* Grouping factor for cables of unlike size: 1 / sqrt(n), n circuits in the group.
 *
 * Source: BS 7671:2018+A2:2022, Appendix 4, 2.3.3; IEC 60364-5-52 B.52.5.2. The tables of grouping factors are for
 * cables of one temperature whose sizes lie within three neighbouring standard ones (B.52.5.1). The formula is given
 * for conduit, trunking and duct, and said to be on the safe side on trays (B.52.5.3). Trust:  formula seen in a guide
 * to the 17th edition; the span of three sizes from memory. Rows:   the standard sizes of IEC 60228 up to 300 mm2. */
#include "tables_private.h"

#include <math.h>

static const double sizes_mm2[] = {1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300};

/* Sizes such as 6, 10 and 16 mm2 are alike. */
enum { ALIKE_SIZES = 3 };

bool grouping_sizes_alike(double least_mm2, double most_mm2)
{
    int least = 0;
    int most = 0;
    return lookup_next_up(sizes_mm2, COUNT_OF(sizes_mm2), least_mm2, &least) &&
           lookup_next_up(sizes_mm2, COUNT_OF(sizes_mm2), most_mm2, &most) && most - least < ALIKE_SIZES;
}

double grouping_unlike(int circuits)
{
    return circuits > 1 ? 1 / sqrt(circuits) : 1;
}

void grouping_unlike_cells(struct TextBuilder *out)
{
    enum { MOST = 20 }; /* as far as the tables of like sizes go */
    text_add(out, "circuits,Cg\n");
    for (int circuits = 2; circuits <= MOST; circuits++) {
        cells_row(out, (const double[]){circuits, grouping_unlike(circuits)}, 2);
    }
}

const struct TableRef *grouping_unlike_ref(void)
{
    static const struct TableRef ref = {TABLES_BS7671,
                                        "appendix 4, 2.3.3",
                                        "grouping factor of cables of unlike size, 1 / sqrt(n)",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "formula seen, the span of three sizes from memory",
                                        .words = TABLE_IN_APPENDIX_4};
    return &ref;
}
