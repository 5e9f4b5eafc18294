/* Where a caution applies; a verdict in a word; what would settle a check. */
#include "plan.h"

const char *verdict_word(enum Verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL: return "FAIL";
    case VERDICT_OPEN: return "OPEN";
    case VERDICT_PASS: return "PASS";
    }
    return "";
}

bool plan_caution_at(const struct Caution *caution, int segment)
{
    for (int i = 0; i < caution->stretch_count; i++) {
        if (caution->stretches[i] == segment) {
            return true;
        }
    }
    return false;
}

struct Settles settles_key(const char *key)
{
    return (struct Settles){.key = key};
}

struct Settles settles_reading(enum Saying reading)
{
    return (struct Settles){.reading = reading};
}

bool settles_something(const struct Settles *settles)
{
    return settles->key != NULL || settles->reading != SAY_NOTHING;
}

const struct Say *settles_said(struct Arena *arena, const struct Settles *settles)
{
    const struct SayArg key =
        say_name(settles->value == NULL ? settles->key : arena_print(arena, "%s: %s", settles->key, settles->value));
    if (settles->key == NULL) {
        return settles->reading == SAY_NOTHING ? NULL : say(arena, settles->reading);
    }
    if (settles->or_key != NULL) {
        return say(arena, SAY_SETTLED_BY_EITHER, key, say_name(settles->or_key));
    }
    return settles->reading == SAY_NOTHING ? say_alone(arena, key)
                                           : say(arena, SAY_SETTLED_BY_EITHER, key, say_term(settles->reading));
}

const struct Say *check_ref_said(struct Arena *arena, const struct CheckRef *ref)
{
    return ref->segment == NULL ? say(arena, ref->title)
                                : say(arena, SAY_COMMA, say_term(ref->title), say_name(ref->segment));
}

const struct Say *check_title_said(struct Arena *arena, const struct Check *check)
{
    return check_ref_said(arena, &(struct CheckRef){.title = check->title, .segment = check->segment});
}

const char *check_list_ids(struct Arena *arena, const struct CheckList *list)
{
    struct TextBuilder ids = text_builder(arena);
    for (int i = 0; i < list->count; i++) {
        const struct CheckRef *ref = &list->list[i];
        text_print(&ids, "%s%s%s%s", i > 0 ? " " : "", ref->kind, ref->segment != NULL ? ":" : "",
                   ref->segment != NULL ? ref->segment : "");
    }
    return text_done(&ids);
}

const struct Say *plan_verdict_said(const struct Plan *plan)
{
    return plan->verdict_titled != NULL ? plan->verdict_titled : plan->verdict_text;
}

const struct Say *plan_caution_shortly(const struct Caution *caution)
{
    return caution->shortly != NULL ? caution->shortly : caution->text;
}
