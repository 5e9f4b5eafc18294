/* The defaults of the route language as the plan says them. */
#include "design/terms/design_private.h"

/* How one is said: a figure times `times` in a unit, or a word of a list; else by itself, with the stretches where
 * there are several. */
enum SaidWith { SAID_ALONE, SAID_FIGURE, SAID_WORD };
struct SaidAs {
    enum Saying saying;
    enum SaidWith with;
    enum Unit unit;
    double times;
    enum WordList list;
};
#define FIGURE(id, of, by)                                                                                             \
    [ASSUMED_##id] = {.saying = SAY_ASSUMED_##id, .with = SAID_FIGURE, .unit = UNIT_##of, .times = (by)}
#define CHOICE(id, of) [ASSUMED_##id] = {.saying = SAY_ASSUMED_##id, .with = SAID_WORD, .list = WORDS_##of}
#define ALONE(id)      [ASSUMED_##id] = {.saying = SAY_ASSUMED_##id}

static const struct SaidAs said_as[ASSUMED_COUNT] = {
    FIGURE(PHASES, NONE, 1),
    FIGURE(VOLTAGE, V, 1),
    FIGURE(DROP_BEFORE, PERCENT, 1),
    FIGURE(NEUTRAL_SIZE, MM2, 1),
    FIGURE(EARTHING_CONDUCTOR, MM2, 1),
    FIGURE(AIR, DEGC, 1),
    FIGURE(GROUND, DEGC, 1),
    FIGURE(SOIL_THERMAL, K_M_PER_W, 1),
    FIGURE(SOIL_ELECTRICAL, OHM_M, 1),
    FIGURE(TERMINALS, DEGC, 1),
    FIGURE(ELECTRODE_TARGET, OHM, 1),
    FIGURE(ROD_SPACING, M, 1),
    FIGURE(SPARE_CABLE, PERCENT, 1),
    FIGURE(SPARE_FIXINGS, PERCENT, 1),
    FIGURE(DIVERSITY, PERCENT, 100),
    FIGURE(POWER_FACTOR, NONE, 1),
    FIGURE(DROP_LIMIT, PERCENT, 1),
    FIGURE(DROP_LIMIT_LIGHTING, PERCENT, 1),
    FIGURE(CORES, NONE, 1),
    FIGURE(TAIL, M, 1),
    FIGURE(LOOP, M, 1),
    CHOICE(USE, USE),
    CHOICE(DEVICE_KIND, DEVICE),
    CHOICE(CURVE, CURVE),
    CHOICE(CPC, CPC),
    CHOICE(INTO, INTO),
    CHOICE(PLACE, PLACE),
    [ASSUMED_FEEDS] = {.saying = SAY_ASSUMED_FEEDS_BOARD},
    ALONE(START),
    ALONE(FINISH),
    ALONE(CPC_RUN),
    ALONE(EXPORT),
    ALONE(TIMBER),
    ALONE(SHADED),
    ALONE(NEW_DUCT),
    ALONE(BESIDE_BUNCHED),
    ALONE(BESIDE_ALIKE),
    ALONE(ONE_SIDE),
    ALONE(DEPTH),
};

static const struct Say *end_said(struct Arena *arena, enum Saying saying, const struct End *end)
{
    const int digits = 9; /* as many as the survey may have */
    return say(arena, saying, say_word(WORDS_INTO, (int)end->into), say_word(WORDS_PLACE, (int)end->place),
               say_digits(end->tail_m.value, digits, UNIT_M), say_digits(end->loop_m.value, digits, UNIT_M));
}

static const struct Say *stretches_said(struct Arena *arena, const struct Survey *survey, const struct Assumed *assumed)
{
    struct Names names = {.arena = arena};
    for (int i = 0; assumed->segment_count > 1 && i < assumed->segment_count; i++) {
        name_one(&names, say_name(survey->segments[assumed->segments[i]].name));
    }
    return say(arena, said_as[assumed->what].saying, names_done(&names));
}

const struct Say *assumed_said(struct Arena *arena, const struct Survey *survey, const struct Assumed *assumed)
{
    const struct SaidAs *said = &said_as[assumed->what];
    const struct Run *run = assumed->run >= 0 ? &survey->runs[assumed->run] : NULL;
    if (said->with == SAID_FIGURE) {
        return say(arena, said->saying, say_digits(assumed->value * said->times, 9, said->unit));
    }
    if (said->with == SAID_WORD) {
        return say(arena, said->saying, say_word(said->list, assumed->word));
    }
    if (assumed->what == ASSUMED_FEEDS) {
        static const enum Saying feeds[FEEDS_COUNT] = {[FEEDS_BOARD] = SAY_ASSUMED_FEEDS_BOARD,
                                                       [FEEDS_EQUIPMENT] = SAY_ASSUMED_FEEDS_EQUIPMENT,
                                                       [FEEDS_SOCKETS] = SAY_ASSUMED_FEEDS_SOCKETS};
        return say(arena, feeds[assumed->word]);
    }
    if (run == NULL) {
        return stretches_said(arena, survey, assumed);
    }
    switch (assumed->what) {
    case ASSUMED_START: return end_said(arena, said->saying, &run->start);
    case ASSUMED_FINISH: return end_said(arena, said->saying, &run->finish);
    case ASSUMED_CPC_RUN: return say(arena, said->saying, say_name(survey->runs[run->cable.cpc_run].name));
    default: return stretches_said(arena, survey, assumed);
    }
}

bool assumed_surveyable(enum AssumedWhat what)
{
    switch (what) {
    case ASSUMED_PHASES:
    case ASSUMED_VOLTAGE:
    case ASSUMED_DROP_BEFORE:
    case ASSUMED_NEUTRAL_SIZE:
    case ASSUMED_EARTHING_CONDUCTOR:
    case ASSUMED_AIR:
    case ASSUMED_GROUND:
    case ASSUMED_SOIL_THERMAL:
    case ASSUMED_SOIL_ELECTRICAL:
    case ASSUMED_TERMINALS:
    case ASSUMED_POWER_FACTOR:
    case ASSUMED_TAIL:
    case ASSUMED_LOOP:
    case ASSUMED_FEEDS:
    case ASSUMED_USE:
    case ASSUMED_INTO:
    case ASSUMED_PLACE:
    case ASSUMED_START:
    case ASSUMED_FINISH:
    case ASSUMED_TIMBER:
    case ASSUMED_SHADED:
    case ASSUMED_NEW_DUCT:
    case ASSUMED_BESIDE_BUNCHED:
    case ASSUMED_BESIDE_ALIKE:
    case ASSUMED_ONE_SIDE:
    case ASSUMED_DEPTH: return true;
    /* what is to be built, what it may cost, and rules */
    case ASSUMED_ELECTRODE_TARGET:
    case ASSUMED_ROD_SPACING:
    case ASSUMED_SPARE_CABLE:
    case ASSUMED_SPARE_FIXINGS:
    case ASSUMED_DIVERSITY:
    case ASSUMED_DROP_LIMIT:
    case ASSUMED_DROP_LIMIT_LIGHTING:
    case ASSUMED_CORES:
    case ASSUMED_DEVICE_KIND:
    case ASSUMED_CURVE:
    case ASSUMED_CPC:
    case ASSUMED_CPC_RUN:
    case ASSUMED_EXPORT:
    case ASSUMED_NOTHING:
    case ASSUMED_COUNT: break;
    }
    return false;
}

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
