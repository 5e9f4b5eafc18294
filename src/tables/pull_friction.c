/* Friction of a cable in a plastic duct.
 *
 * Source: a utility's engineering standard (bands for PVC and PE, dry and lubricated); a cable catalogue agrees, with
 * 0.52 for PVC and 0.34 for PE dry; makers' guides where the sheath is not known. Trust:  PVC and PE two sources; not
 * known: seen; low smoke sheaths from memory, no more than a guess. Rows:   by sheath. A cable that stands still in
 * mid-pull takes more to start again than these figures. */
#include "mechanics_tables.h"
#include "tables_private.h"

/* clang-format off */
static const struct PullFriction rows[PULL_SHEATH_COUNT][2] = {
    /*                          dry         lubricated */
    [PULL_SHEATH_PVC]       = {{0.5, 0.6}, {0.25, 0.35}},
    [PULL_SHEATH_PE]        = {{0.3, 0.4}, {0.15, 0.25}},
    [PULL_SHEATH_LOW_SMOKE] = {{0.5, 0.6}, {0.3, 0.3}},
    [PULL_SHEATH_UNKNOWN]   = {{0.5, 0.5}, {0.35, 0.35}},
};
/* clang-format on */

bool pull_friction(enum PullSheath sheath, bool lubricated, struct PullFriction *out)
{
    if ((unsigned)sheath >= PULL_SHEATH_COUNT) {
        return false;
    }
    *out = rows[sheath][lubricated ? 1 : 0];
    return true;
}

enum Trust pull_friction_trust(enum PullSheath sheath)
{
    return sheath == PULL_SHEATH_LOW_SMOKE ? TRUST_FROM_MEMORY : TRUST_PUBLISHED;
}

void pull_friction_cells(struct TextBuilder *out)
{
    static const char *const sheaths[PULL_SHEATH_COUNT] = {
        [PULL_SHEATH_PVC] = "PVC",
        [PULL_SHEATH_PE] = "PE",
        [PULL_SHEATH_LOW_SMOKE] = "low smoke",
        [PULL_SHEATH_UNKNOWN] = "not known",
    };
    text_add(out, "sheath,dry from,dry to,lubricated from,lubricated to\n");
    for (int row = 0; row < PULL_SHEATH_COUNT; row++) {
        cells_text(out, sheaths[row], false);
        cells_row(out, (const double[]){rows[row][0].low, rows[row][0].high, rows[row][1].low, rows[row][1].high}, 4);
    }
}

const struct TableRef *pull_friction_ref(void)
{
    static const struct TableRef ref = {.standard = "utility's engineering standard",
                                        "friction",
                                        "friction of a cable in a plastic duct",
                                        TRUST_PARTLY_FROM_MEMORY,
                                        "PVC and PE two sources; low smoke from memory",
                                        .words = TABLE_OF_FRICTION};
    return &ref;
}
