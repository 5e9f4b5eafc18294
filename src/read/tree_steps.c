/* From the place of a report to the keys that lead there. */
#include "read_private.h"

static bool begins_by(struct Mark mark, struct Mark until)
{
    return mark.line < until.line || (mark.line == until.line && mark.column <= until.column);
}

static struct Mark start_of(const struct TreeEntry *entry)
{
    return entry->key != NULL ? entry->key->mark : entry->value->mark;
}

/* The last entry that begins at the mark or before it. A value set from outside has no place in the file. */
static const struct TreeEntry *entry_at(const struct TreeNode *node, struct Mark mark, int *index)
{
    const struct TreeEntry *found = NULL;
    int number = 0;
    for (const struct TreeEntry *entry = node->first; entry != NULL; entry = entry->next, number++) {
        if (begins_by(start_of(entry), mark)) {
            found = entry;
            *index = number;
        }
    }
    return found;
}

/* The relation that says so of a whole mapping; NULL for another report. */
static const struct Relation *of_mapping(enum DiagCode code)
{
    const struct Relation *relation = relation_at(0);
    for (int i = 1; relation != NULL && (relation->at != AT_MAP || relation->code != code); i++) {
        relation = relation_at(i);
    }
    return relation;
}

static const char *key_lacking(const struct Diagnostic *one, const struct Relation *relation)
{
    if (one->code == MSG_KEY_MISSING) {
        return one->words != NULL && one->words[0] != NULL ? one->words[1] : NULL;
    }
    return relation != NULL && relation->kind == RELATION_NEEDS ? relation->keys[0] : NULL;
}

int tree_steps(const struct TreeNode *root, const struct Diagnostic *one, struct KeyStep steps[TREE_STEPS_MOST])
{
    const struct Relation *relation = of_mapping(one->code);
    const char *lacking = key_lacking(one, relation);
    const struct TreeNode *node = root;
    int count = 0;
    while (one->mark.line > 0 && node != NULL && count < TREE_DEPTH_MOST &&
           (node->kind == TREE_MAP || node->kind == TREE_LIST)) {
        int index = 0;
        const struct TreeEntry *entry = entry_at(node, one->mark, &index);
        if (entry == NULL) {
            break;
        }
        steps[count++] = (struct KeyStep){entry->key != NULL ? entry->key->text : NULL, index};
        node = entry->value;
        if (entry->key != NULL && begins_by(one->mark, entry->key->mark)) {
            break; /* the report is about the key itself */
        }
    }
    /* a segment lacks a key where its name stands */
    if ((relation != NULL || lacking != NULL) && count > 0 && node != NULL && node->kind == TREE_SCALAR) {
        count--;
    }
    if (lacking != NULL) {
        steps[count++] = (struct KeyStep){lacking, 0};
    }
    return count;
}
