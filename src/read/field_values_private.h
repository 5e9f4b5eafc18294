/** One value, one key of a mapping by its field: between fields.c, field_*.c and unknown_keys.c only. */
#ifndef WEND_FIELD_VALUES_PRIVATE_H
#define WEND_FIELD_VALUES_PRIVATE_H

#include "read_private.h"

/** Reads the entry's value into `out` (the table's struct); reports and marks it unknown when it is no good. */
void field_value_read(struct Reader *reader, const struct Field *field, const struct TreeEntry *entry, void *out);
/** A number with or without unit, or one of the words that may stand for it (field_numbers.c). */
void field_number_read(struct Reader *reader, const struct Field *field, const struct TreeNode *node, void *out);
/** Stores the field's default. */
void field_value_default(const struct Field *field, void *out);
/** Stores "not given": "" for texts, the list's count for words without default, else nothing. */
void field_value_absent(const struct Field *field, void *out);
void field_value_unknown(const struct Field *field, void *out);
/** True when the key may stand in a mapping of this context; also when the context is not known. */
bool field_applies(const struct Field *field, unsigned context);
/** Sets the bool that says it was written, if the field has one. */
void field_value_given(const struct Field *field, void *out);

/** A mapping in which a key is not known. */
struct UnknownKeys {
    struct Reader *reader;
    const struct FieldTable *table;
    const struct TreeNode *map;
    unsigned context;
};

/** Reports the entry's key. True when the entry from now on stands for the key that was meant. `before` is the entry
 * before it, NULL at the first. */
bool unknown_key_report(const struct UnknownKeys *keys, struct TreeEntry *before, struct TreeEntry *entry);

#endif
