/* Lists of names. */
#include "design_private.h"
#include "plan/say.h"

enum { NAMES_SHOWN = 12 };

void name_said(struct Names *names, const struct Say *name)
{
    if (names->count++ < NAMES_SHOWN || names->all) {
        names->said = names->said == NULL ? name : say(names->arena, SAY_COMMA, say_part(names->said), say_part(name));
    }
}

void name_one(struct Names *names, const char *name)
{
    name_said(names, say(names->arena, SAY_ONE_NAME, say_name(name)));
}

struct SayArg names_done(const struct Names *names)
{
    const int left_out = names->all ? 0 : names->count - NAMES_SHOWN;
    return say_part(left_out > 0 ? say(names->arena, SAY_NAMES_AND_MORE, say_part(names->said), say_count(left_out))
                                 : names->said);
}
