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
    const struct SayArg key = say_name(settles->key);
    if (settles->key == NULL) {
        return settles->reading == SAY_NOTHING ? NULL : say(arena, settles->reading);
    }
    if (settles->or_key != NULL) {
        return say(arena, SAY_SETTLED_BY_EITHER, key, say_name(settles->or_key));
    }
    return settles->reading == SAY_NOTHING ? say_alone(arena, key)
                                           : say(arena, SAY_SETTLED_BY_EITHER, key, say_term(settles->reading));
}

const struct Say *check_title_said(struct Arena *arena, const struct Check *check)
{
    return check->segment == NULL ? say(arena, check->title)
                                  : say(arena, SAY_COMMA, say_term(check->title), say_name(check->segment));
}

const struct Say *plan_caution_shortly(const struct Caution *caution)
{
    return caution->shortly != NULL ? caution->shortly : caution->text;
}
