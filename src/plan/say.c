/* Sayings are made here and read in src/words. */
#include "say.h"

#include <string.h>

struct SayArg say_fixed(double value, int decimals, enum Unit unit)
{
    return (struct SayArg){.kind = SAY_ARG_FIXED, .unit = unit, .figures = decimals, .value = value};
}

struct SayArg say_digits(double value, int digits, enum Unit unit)
{
    return (struct SayArg){.kind = SAY_ARG_DIGITS, .unit = unit, .figures = digits, .value = value};
}

struct SayArg say_count(int count)
{
    return (struct SayArg){.kind = SAY_ARG_COUNT, .count = count};
}

struct SayArg say_name(const char *name)
{
    return (struct SayArg){.kind = SAY_ARG_NAME, .name = name};
}

struct SayArg say_calculation(const char *text)
{
    return (struct SayArg){.kind = SAY_ARG_CALCULATION, .name = text};
}

struct SayArg say_word(enum WordList list, int member)
{
    return (struct SayArg){.kind = SAY_ARG_WORD, .list = list, .member = member};
}

struct SayArg say_meaning(enum WordList list, int member)
{
    return (struct SayArg){.kind = SAY_ARG_MEANING, .list = list, .member = member};
}

struct SayArg say_term(enum Saying term)
{
    return (struct SayArg){.kind = SAY_ARG_TERM, .term = term};
}

struct SayArg say_part(const struct Say *part)
{
    return (struct SayArg){.kind = SAY_ARG_PART, .part = part};
}

const struct Say *say_made(struct Arena *arena, enum Saying id, const struct SayArg *args)
{
    if (arena == NULL) {
        return NULL;
    }
    int count = 0;
    while (args != NULL && args[count].kind != SAY_ARG_END) {
        count++;
    }
    struct Say *made = arena_alloc(arena, sizeof *made);
    struct SayArg *kept = count > 0 ? arena_array(arena, (size_t)count, sizeof *kept) : NULL;
    if (made == NULL || (count > 0 && kept == NULL)) {
        return NULL;
    }
    for (int i = 0; i < count; i++) {
        kept[i] = args[i];
    }
    *made = (struct Say){.id = id, .count = count, .args = kept};
    return made;
}

const struct Say *say_alone(struct Arena *arena, struct SayArg arg)
{
    switch (arg.kind) {
    case SAY_ARG_PART: return arg.part;
    case SAY_ARG_TERM: return arg.term == SAY_NOTHING ? NULL : say(arena, arg.term);
    case SAY_ARG_NAME:
    case SAY_ARG_CALCULATION: return arg.name == NULL || *arg.name == '\0' ? NULL : say(arena, SAY_AS_IS, arg);
    case SAY_ARG_END: return NULL;
    default: return say(arena, SAY_AS_IS, arg);
    }
}

const struct Say *say_list(struct Arena *arena, enum Saying joint, const struct Say *list, struct SayArg more)
{
    const struct Say *last = say_alone(arena, more);
    return list == NULL ? last : last == NULL ? list : say(arena, joint, say_part(list), say_part(last));
}

const struct Say *say_then(struct Arena *arena, const struct Say *first, const struct Say *second)
{
    if (arena == NULL || first == NULL || second == NULL) {
        return arena == NULL ? NULL : first == NULL ? second : first;
    }
    const struct Say *joined = second;
    const struct Say **place = &joined;
    for (const struct Say *from = first; from != NULL; from = from->next) {
        struct Say *copy = arena_alloc(arena, sizeof *copy);
        if (copy == NULL) {
            return NULL;
        }
        *copy = *from;
        copy->next = second;
        *place = copy;
        place = &copy->next;
    }
    return joined;
}

const char *text_kept(struct Arena *arena, const char *text)
{
    return text == NULL ? NULL : arena_text(arena, text, strlen(text));
}

static struct SayArg arg_kept(struct Arena *arena, struct SayArg arg)
{
    if (arg.kind == SAY_ARG_NAME || arg.kind == SAY_ARG_CALCULATION) {
        arg.name = text_kept(arena, arg.name);
    } else if (arg.kind == SAY_ARG_PART) {
        arg.part = say_kept(arena, arg.part);
    }
    return arg;
}

const struct Say *say_kept(struct Arena *arena, const struct Say *said)
{
    const struct Say *first = NULL;
    const struct Say **place = &first;
    for (; said != NULL; said = said->next) {
        struct Say *kept = arena_alloc(arena, sizeof *kept);
        struct SayArg *args = said->count > 0 ? arena_array(arena, (size_t)said->count, sizeof *args) : NULL;
        if (kept == NULL || (said->count > 0 && args == NULL)) {
            return NULL;
        }
        for (int i = 0; i < said->count; i++) {
            args[i] = arg_kept(arena, said->args[i]);
        }
        *kept = (struct Say){.id = said->id, .count = said->count, .args = args};
        *place = kept;
        place = &kept->next;
    }
    return first;
}

static bool same_arg(const struct SayArg *a, const struct SayArg *b)
{
    if (a->kind != b->kind) {
        return false;
    }
    switch (a->kind) {
    case SAY_ARG_FIXED:
    case SAY_ARG_DIGITS:
        return a->unit == b->unit && a->figures == b->figures && !(a->value < b->value) && !(a->value > b->value);
    case SAY_ARG_COUNT: return a->count == b->count;
    case SAY_ARG_NAME:
    case SAY_ARG_CALCULATION:
        return a->name == b->name || (a->name != NULL && b->name != NULL && text_same(a->name, b->name));
    case SAY_ARG_WORD:
    case SAY_ARG_MEANING: return a->list == b->list && a->member == b->member;
    case SAY_ARG_TERM: return a->term == b->term;
    case SAY_ARG_PART: return say_same(a->part, b->part);
    case SAY_ARG_END: break;
    }
    return true;
}

bool say_same(const struct Say *a, const struct Say *b)
{
    for (; a != NULL && b != NULL; a = a->next, b = b->next) {
        if (a->id != b->id || a->count != b->count) {
            return false;
        }
        for (int i = 0; i < a->count; i++) {
            if (!same_arg(&a->args[i], &b->args[i])) {
                return false;
            }
        }
    }
    return a == b;
}
