/* Lists of names. */
#include "design_private.h"

enum { NAMES_SHOWN = 12 };

void name_one(struct Names *names, struct SayArg name)
{
    if (names->count++ < NAMES_SHOWN || names->all) {
        names->said = say_list(names->arena, SAY_COMMA, names->said, name);
    }
}

struct SayArg names_done(const struct Names *names)
{
    const int left_out = names->all ? 0 : names->count - NAMES_SHOWN;
    return say_part(left_out > 0 ? say(names->arena, SAY_NAMES_AND_MORE, say_part(names->said), say_count(left_out))
                                 : names->said);
}
