/* Amounts of an article, and how it is sold, in words: units and packs are known to lists by codes that are typed. */
#include "parts.h"

static const struct {
    const char *code;
    enum Saying packs;
} packs_of[] = {{"pack", SAY_PACKS}, {"kit", SAY_KITS}, {"coil", SAY_COILS}, {"length", SAY_WHOLE_LENGTHS},
                {"roll", SAY_ROLLS}, {"bag", SAY_BAGS}, {"box", SAY_BOXES},  {"tub", SAY_TUBS}};

const struct Say *parts_amount_said(struct Arena *arena, double amount, int digits, const char *unit)
{
    if (text_same(unit, "m") || text_same(unit, "kg")) {
        return say(arena, SAY_AS_IS, say_digits(amount, digits, text_same(unit, "m") ? UNIT_M : UNIT_KG));
    }
    const struct SayArg number = say_digits(amount, digits, UNIT_NONE);
    return text_same(unit, "each") ? say(arena, SAY_AS_IS, number)
                                   : say(arena, SAY_AMOUNT_BY_CODE, number, say_name(unit));
}

const struct Say *parts_packs_said(struct Arena *arena, int packs, const char *pack_word)
{
    for (size_t i = 0; i < sizeof packs_of / sizeof packs_of[0]; i++) {
        if (text_same(packs_of[i].code, pack_word)) {
            return say(arena, packs_of[i].packs, say_count(packs));
        }
    }
    return say(arena, SAY_AMOUNT_BY_CODE, say_count(packs), say_name(pack_word));
}
