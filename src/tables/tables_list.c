/* Every table that the program holds, for `wend tables` and the self-check. A new table is added here once. */
#include "edition_private.h"
#include "mechanics_tables.h"
#include "takeoff_tables.h"

/* Those of an edition, in their order here; then those that have no look-up of their own, and the others. */
static const struct TableRef *of_edition(const struct Edition *edition, int index)
{
    const struct TableRef *const by_device[] = {&edition->disconnection->ref, &edition->breakers->ref,
                                                &edition->bs88_2->ref,        &edition->bs88_3->ref,
                                                &edition->bs1361->ref,        &edition->bs3036->ref};
    if (index < CAPACITY_COUNT) {
        return capacity_ref(edition, (enum CapacityTable)index);
    }
    if (index < CAPACITY_COUNT + DROP_COUNT) {
        return drop_ref(edition, (enum DropTable)(index - CAPACITY_COUNT));
    }
    index -= CAPACITY_COUNT + DROP_COUNT;
    return index < FACTORS_COUNT ? factors_ref(edition, (enum FactorTables)index) : by_device[index - FACTORS_COUNT];
}
enum { DEVICE_TABLES = 6, OF_EDITION = CAPACITY_COUNT + DROP_COUNT + FACTORS_COUNT + DEVICE_TABLES };

static const struct RatingList *const ratings[] = {&device_ratings_breaker, &device_ratings_bs88_2,
                                                   &device_ratings_bs88_3, &device_ratings_bs1361,
                                                   &device_ratings_bs3036};

#define TABLE(name) {name##_ref, name##_cells},
static const struct {
    const struct TableRef *(*ref)(const struct Edition *edition);
    void (*cells)(const struct Edition *edition, struct TextBuilder *out);
} by_edition[] = {EDITION_TABLES(TABLE)};
static const struct {
    const struct TableRef *(*ref)(void);
    void (*cells)(struct TextBuilder *out);
} others[] = {OTHER_TABLES(TABLE)};
#undef TABLE
enum { RATINGS = COUNT_OF(ratings), KS = RATINGS + K_COUNT, BY_EDITION = KS + COUNT_OF(by_edition) };

int tables_count(void)
{
    return OF_EDITION + BY_EDITION + COUNT_OF(others);
}

const struct TableRef *tables_at(int index)
{
    const struct Edition *edition = edition_held();
    if (index < 0 || index >= tables_count()) {
        return NULL;
    }
    if (index < OF_EDITION) {
        return of_edition(edition, index);
    }
    index -= OF_EDITION;
    return index < RATINGS      ? &ratings[index]->ref
           : index < KS         ? k_value_ref(edition, (enum KTable)(index - RATINGS))
           : index < BY_EDITION ? by_edition[index - KS].ref(edition)
                                : others[index - BY_EDITION].ref();
}

const char *table_standard(struct Arena *arena, const struct TableRef *ref)
{
    return ref->edition == NULL ? ref->standard : arena_print(arena, "%s:%s", ref->standard, ref->edition);
}

bool tables_cells(int index, struct TextBuilder *out)
{
    const struct Edition *edition = edition_held();
    if (index < 0 || index >= tables_count()) {
        return false;
    }
    if (index < OF_EDITION) {
        cells_of_edition(edition, index, out);
        return true;
    }
    index -= OF_EDITION;
    if (index < RATINGS) {
        cells_of_ratings(ratings[index], out);
    } else if (index < KS) {
        cells_of_k(edition->k[index - RATINGS], out);
    } else if (index < BY_EDITION) {
        by_edition[index - KS].cells(edition, out);
    } else {
        others[index - BY_EDITION].cells(out);
    }
    return true;
}
