/* What each task is called in the file, and who does it where the file does not say. */
#include "labour.h"

#include "base/digest.h"

#include <string.h>

/* Hands and skill: common practice, no source. */
static const struct {
    const char *word;
    int hands;
    bool electrician;
} rows[TASK_KINDS] = {
    [TASK_SET_OUT] = {"set-out", 1, false}, [TASK_DIG] = {"dig", 1, false},
    [TASK_DUCT] = {"duct", 1, false},       [TASK_DRILL] = {"drill", 1, false},
    [TASK_FIX] = {"fix", 1, false},         [TASK_RODS] = {"rods", 1, false},
    [TASK_DRAW] = {"draw", 2, false},       [TASK_REINSTATE] = {"reinstate", 1, false},
    [TASK_GLAND] = {"gland", 1, true},      [TASK_TERMINATE] = {"terminate", 1, true},
    [TASK_TEST] = {"test", 1, true},        [TASK_LABEL] = {"label", 1, false},
};

const char *labour_task_word(enum TaskKind kind)
{
    return (unsigned)kind < TASK_KINDS ? rows[kind].word : "";
}

int labour_hands(const struct Labour *labour, enum TaskKind kind)
{
    return labour->tasks[kind].hands > 0 ? labour->tasks[kind].hands : rows[kind].hands;
}

bool labour_electrician(const struct Labour *labour, enum TaskKind kind)
{
    const struct LabourFigure *figure = &labour->tasks[kind];
    return figure->electrician_given ? figure->electrician : rows[kind].electrician;
}

/* ---- the digest ---- */

static uint64_t mix_text(uint64_t sum, const char *text)
{
    size_t length = 0;
    for (; text != NULL && text[length] != '\0'; length++) {
        sum = digest_one(sum, (unsigned char)text[length]);
    }
    return digest_number(sum, length); /* so that two texts do not run together */
}

static uint64_t mix_quantity(uint64_t sum, const struct Quantity *quantity)
{
    uint64_t bits = 0;
    _Static_assert(sizeof bits == sizeof quantity->value, "a double is of 64 bits");
    memcpy(&bits, &quantity->value, sizeof bits);
    return digest_number(digest_number(sum, quantity->given), bits);
}

static uint64_t mix_figure(uint64_t sum, const struct LabourFigure *figure)
{
    sum = digest_number(sum, figure->given);
    sum = mix_quantity(sum, &figure->low_min);
    sum = mix_quantity(sum, &figure->likely_min);
    sum = mix_quantity(sum, &figure->high_min);
    sum = mix_quantity(sum, &figure->hands_q);
    sum = digest_number(sum, figure->electrician_given);
    return digest_number(sum, figure->electrician);
}

uint64_t labour_digest(const struct Labour *labour)
{
    const struct LabourRates *rates = &labour->rates;
    const struct Quantity *const said[] = {&labour->day_min, &labour->hands, &labour->electricians, &rates->electrician,
                                           &rates->hand,     &rates->digger, &rates->spoil};
    uint64_t sum = mix_text(DIGEST_BEGIN, labour->source);
    sum = mix_text(sum, labour->starts);
    sum = mix_text(digest_number(sum, rates->given), rates->currency);
    for (size_t i = 0; i < sizeof said / sizeof said[0]; i++) {
        sum = mix_quantity(sum, said[i]);
    }
    for (int i = 0; i < TASK_KINDS; i++) {
        sum = mix_figure(sum, &labour->tasks[i]);
    }
    return sum != 0 ? sum : 1;
}
