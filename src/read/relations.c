/* What keys of one mapping ask of each other, as rows; what takes figures of several mappings to tell is in
 * survey_relations.c. The schema is made from these rows too. */
#include "read_private.h"

#define BIT(word)      (1U << (word))
#define ALL_BUT(words) (~(words))
#define TN             (BIT(SYSTEM_TN_S) | BIT(SYSTEM_TN_C_S))
#define BREAKERS       (BIT(DEVICE_MCB) | BIT(DEVICE_RCBO))

/* clang-format off */
static const struct Relation relations[] = {
    {TABLE_SUPPLY, "system", TN, RELATION_NEEDS, SAYS_WORD, AT_MAP, MSG_LOOP_IMPEDANCE_MISSING, MSG_COUNT,
     {"loop-impedance"}},
    {TABLE_SUPPLY, "system", TN, RELATION_REFUSES, SAYS_WORD, AT_VALUE, MSG_ELECTRODE_RESISTANCE_IGNORED, MSG_COUNT,
     {"electrode-resistance"}},
    {TABLE_EARTHING, "far-end", BIT(FAR_END_ISLAND), RELATION_NEEDS, SAYS_NOTHING, AT_MAP,
     MSG_ISLAND_WITHOUT_ELECTRODE, MSG_COUNT, {"electrode"}},
    {TABLE_LOAD, NULL, 0, RELATION_ONE_OF, SAYS_NOTHING, AT_KEY, MSG_LOAD_BOTH, MSG_LOAD_NEITHER,
     {"current", "power"}},
    {TABLE_RUN, NULL, 0, RELATION_ONE_OF, SAYS_NOTHING, AT_VALUE, MSG_START_BOTH, MSG_COUNT,
     {"start-current", "start-multiple"}},
    {TABLE_DEVICE, "kind", ALL_BUT(BREAKERS), RELATION_REFUSES, SAYS_WORD, AT_KEY, MSG_CURVE_ON_FUSE, MSG_COUNT,
     {"curve"}},
    {TABLE_DEVICE, "kind", ALL_BUT(BIT(DEVICE_RCBO)), RELATION_REFUSES, SAYS_KEY_AND_WORD, AT_KEY,
     MSG_RESIDUAL_NEEDS_RCBO, MSG_COUNT, {"residual", "residual-type", "time-delayed"}},
    {TABLE_DEVICE, "kind", BIT(DEVICE_RCBO), RELATION_NEEDS, SAYS_NOTHING, AT_MAP, MSG_RCBO_WITHOUT_RESIDUAL,
     MSG_COUNT, {"residual"}},
    {TABLE_CABLE, "cpc", ALL_BUT(BIT(CPC_SEPARATE)), RELATION_REFUSES, SAYS_NOTHING, AT_KEY, MSG_CPC_RUN_NOT_DUE,
     MSG_COUNT, {"cpc-run"}},
    {TABLE_END, "into", BIT(INTO_FREE), RELATION_REFUSES, SAYS_NOTHING, AT_MAP, MSG_END_FREE, MSG_COUNT,
     {"room", "entry"}},
    {TABLE_STOCK, NULL, 0, RELATION_ONE_OF, SAYS_NOTHING, AT_KEY, MSG_STOCK_BOTH, MSG_STOCK_FOR_WHAT, {"run", "duct"}},
    {TABLE_BESIDE, "arrangement", BIT(ARRANGEMENT_DUCT_SPACED), RELATION_NEEDS, SAYS_NOTHING, AT_MAP, MSG_GAP_MISSING,
     MSG_COUNT, {"gap"}},
    {TABLE_BESIDE, "arrangement", ALL_BUT(BIT(ARRANGEMENT_DUCT_SPACED)), RELATION_REFUSES, SAYS_WORD, AT_VALUE,
     MSG_GAP_NOT_DUE, MSG_COUNT, {"gap"}},
};
/* clang-format on */
enum { RELATIONS = (int)(sizeof relations / sizeof relations[0]), KEYS_MOST = 4 };

const struct Relation *relation_at(int index)
{
    return index >= 0 && index < RELATIONS ? &relations[index] : NULL;
}

struct RelationCheck {
    struct Reader *reader;
    const struct TreeNode *map;
    struct Spot place;
    const struct Relation *relation;
    int word; /* that the deciding key has */
    enum WordList words;
};

static void report(const struct RelationCheck *check, enum DiagCode code, enum RelationAt at, const char *key)
{
    const struct TreeEntry *entry = fields_find(check->map, key);
    const char *word = check->relation->when != NULL ? survey_word(check->words, check->word) : "";
    const char *const *words = check->relation->says == SAYS_WORD           ? DIAG_WORDS(word)
                               : check->relation->says == SAYS_KEY_AND_WORD ? DIAG_WORDS(key, word)
                                                                            : DIAG_NO_WORDS;
    if (at == AT_MAP || entry == NULL) {
        diag_report_of(check->reader->diag, check->reader->subject, code, check->place.mark, check->place.width, words);
    } else {
        reader_report(check->reader, code, at == AT_KEY ? entry->key : entry->value, words);
    }
}

/* False where the deciding key says something else, or nothing that can be read. */
static bool holds(struct RelationCheck *check)
{
    const char *when = check->relation->when;
    const struct FieldTable *table = survey_fields(check->relation->table);
    if (when == NULL) {
        return true;
    }
    const struct TreeEntry *entry = fields_find(check->map, when);
    for (int i = 0; i < table->count; i++) {
        const struct Field *field = &table->fields[i];
        if (!text_same(field->key, when)) {
            continue;
        }
        check->words = field->words;
        check->word = entry == NULL && field->has_default ? (int)field->fallback : -1;
        for (int w = 0; entry != NULL && entry->value->kind == TREE_SCALAR && w < survey_word_count(field->words);
             w++) {
            check->word = text_same(entry->value->text, survey_word(field->words, w)) ? w : check->word;
        }
    }
    return check->word >= 0 && (check->relation->words >> check->word & 1U) != 0;
}

static bool has(const struct RelationCheck *check, int key)
{
    return fields_find(check->map, check->relation->keys[key]) != NULL;
}

/* A value that was refused has been reported, and no more is said of it. */
static bool stands(const struct RelationCheck *check, int key)
{
    const struct TreeEntry *entry = fields_find(check->map, check->relation->keys[key]);
    return entry != NULL && entry->value->kind != TREE_REFUSED;
}

static void check_one(struct RelationCheck *check)
{
    const struct Relation *relation = check->relation;
    switch (relation->kind) {
    case RELATION_NEEDS:
        if (!has(check, 0)) {
            report(check, relation->code, AT_MAP, relation->keys[0]);
        }
        return;
    case RELATION_REFUSES:
        for (int i = 0; i < KEYS_MOST && relation->keys[i] != NULL; i++) {
            if (stands(check, i)) {
                report(check, relation->code, relation->at, relation->keys[i]);
                return; /* the other keys are the same mistake */
            }
        }
        return;
    case RELATION_ONE_OF:
        if (stands(check, 0) && stands(check, 1)) {
            report(check, relation->code, relation->at, relation->keys[1]);
        } else if (!has(check, 0) && !has(check, 1) && relation->code_none != MSG_COUNT) {
            report(check, relation->code_none, AT_MAP, relation->keys[0]);
        }
        return;
    }
}

void relations_check(struct Reader *reader, const struct FieldTable *table, const struct TreeNode *map,
                     struct Spot place)
{
    for (int i = 0; i < RELATIONS; i++) {
        struct RelationCheck check = {.reader = reader, .map = map, .place = place, .relation = &relations[i]};
        if (survey_fields(relations[i].table) == table && holds(&check)) {
            check_one(&check);
        }
    }
}
