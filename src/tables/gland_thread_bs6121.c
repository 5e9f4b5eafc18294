/* Entry thread of a gland size.
 *
 * Source: the size marks of brass glands to BS 6121 (now BS EN 62444), as on a gland maker's fitting sheet.
 * Trust:  20S16 to 32 seen, 40 and larger from memory.
 * Rows:   exact marks only. S marks the smaller gland of two that share a thread. */
#include "tables_private.h"

struct ThreadRow {
    const char *gland, *thread;
};

static const struct ThreadRow rows[] = {
    {"20S16", "M20"}, {"20S", "M20"}, {"20", "M20"},  {"25", "M25"}, {"32", "M32"},  {"40", "M40"},
    {"50S", "M50"},   {"50", "M50"},  {"63S", "M63"}, {"63", "M63"}, {"75S", "M75"}, {"75", "M75"},
};

bool gland_thread(const char *size, const char **out_thread)
{
    for (int index = 0; index < COUNT_OF(rows); index++) {
        if (text_same(rows[index].gland, size)) {
            *out_thread = rows[index].thread;
            return true;
        }
    }
    return false;
}

void gland_cells(struct TextBuilder *out)
{
    text_add(out, "gland,thread\n");
    for (int index = 0; index < COUNT_OF(rows); index++) {
        cells_text(out, rows[index].gland, false);
        cells_text(out, rows[index].thread, true);
    }
}

const struct TableRef *gland_ref(void)
{
    static const struct TableRef ref = {.standard = "BS 6121",
                                        "size marks",
                                        "entry thread of a gland size",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "seen to size 32, larger from memory",
                                        .words = TABLE_NOT_CITED};
    return &ref;
}
