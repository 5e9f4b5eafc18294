/* The scenes made by hand. */
#include "fixture_scene.h"

static const struct Stretch two[] = {
    {"meter-wall", WAY_WALL, 2.4, -1.2, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"under-lawn", WAY_DUCT, 18.5, 0, 0.6, INSULATION_NONE, 0, SUN_SHADED},
};

static const struct Stretch eight[] = {
    {"plant-room", WAY_WALL, 1.8, 1.8, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"gable", WAY_THROUGH_WALL, 0.3, 0, 0, INSULATION_SURROUNDED, 0, SUN_SHADED},
    {"roof-void over the sail store", WAY_LOFT_VOID, 9.2, 0, 0, INSULATION_SURROUNDED, 2, SUN_SHADED},
    {"back gable", WAY_THROUGH_WALL, 0.33, 0, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"south-wall", WAY_WALL, 2.6, -1.8, 0, INSULATION_NONE, 0, SUN_FULL},
    {"path-duct", WAY_DUCT, 24.5, 0, 0.6, INSULATION_NONE, 0, SUN_SHADED},
    {"orchard-fence", WAY_FENCE, 30.2, 0.8, 0, INSULATION_NONE, 0, SUN_FULL},
    {"boathouse", WAY_CONDUIT, 4.4, 1.2, 0, INSULATION_NONE, 1, SUN_SHADED},
};

static const struct Stretch underground[] = {
    {"forecourt", WAY_DUCT, 12, 0, 0.75, INSULATION_NONE, 1, SUN_SHADED},
    {"field", WAY_BURIED, 46.5, -1.5, 0.6, INSULATION_NONE, 0, SUN_SHADED},
    {"stream-bank", WAY_DUCT, 8.2, 0.4, 0.9, INSULATION_NONE, 0, SUN_SHADED},
};

static const struct Stretch tower[] = {
    {"base-room", WAY_TRAY, 3.1, 1.1, 0, INSULATION_NONE, 2, SUN_SHADED},
    {"clock-shaft", WAY_LADDER, 19, 19, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"bell-floor", WAY_UNDER_FLOOR, 4.4, 0, 0, INSULATION_ONE_SIDE, 0, SUN_SHADED},
    {"parapet", WAY_WALL, 2.5, 1.3, 0, INSULATION_NONE, 0, SUN_FULL},
};

static const struct Stretch long_dull[] = {
    {"switch-room", WAY_TRUNKING, 2.2, 0.5, 0, INSULATION_NONE, 4, SUN_SHADED},
    {"outer-wall", WAY_THROUGH_WALL, 0.4, 0, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"wall-drop", WAY_WALL, 1.3, -1.1, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"long-paddock", WAY_BURIED, 412, 0, 0.6, INSULATION_NONE, 0, SUN_SHADED},
    {"pump-house", WAY_WALL, 1.7, 1.4, 0, INSULATION_NONE, 0, SUN_SHADED},
};

static const struct Stretch hill[] = {
    {"upper-yard", WAY_WALL, 3.4, -2.6, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"terrace", WAY_DUCT, 22, -3.2, 0.6, INSULATION_NONE, 0, SUN_SHADED},
    {"retaining-wall", WAY_WALL, 2.9, 1.2, 0, INSULATION_NONE, 0, SUN_FULL},
    {"boundary-fence", WAY_FENCE, 41, -9.5, 0, INSULATION_NONE, 0, SUN_FULL},
    {"lower-meadow", WAY_BURIED, 28, -1, 0.75, INSULATION_NONE, 0, SUN_SHADED},
    {"landing-stage", WAY_BEAM, 6.5, 0.9, 0, INSULATION_NONE, 0, SUN_FULL},
};

static const struct Stretch every_way[] = {
    {"a wall", WAY_WALL, 4, 1.5, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"a fence", WAY_FENCE, 9, 0, 0, INSULATION_NONE, 0, SUN_FULL},
    {"a beam", WAY_BEAM, 5, 0.6, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"a loft", WAY_LOFT_VOID, 8, 0, 0, INSULATION_SURROUNDED, 0, SUN_SHADED},
    {"a floor", WAY_UNDER_FLOOR, 6, 0, 0, INSULATION_ONE_SIDE, 0, SUN_SHADED},
    {"a stud wall", WAY_STUD_WALL, 5, -0.4, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"a ceiling", WAY_CEILING, 7, 0, 0, INSULATION_ONE_SIDE, 0, SUN_SHADED},
    {"a hole", WAY_THROUGH_WALL, 0.3, 0, 0, INSULATION_NONE, 0, SUN_SHADED},
    {"a conduit", WAY_CONDUIT, 6, 0.7, 0, INSULATION_NONE, 2, SUN_SHADED},
    {"a trunking", WAY_TRUNKING, 8, 0, 0, INSULATION_NONE, 5, SUN_SHADED},
    {"a tray", WAY_TRAY, 10, 0, 0, INSULATION_NONE, 3, SUN_SHADED},
    {"a ladder", WAY_LADDER, 6, 2, 0, INSULATION_NONE, 3, SUN_SHADED},
    {"a catenary", WAY_CATENARY, 14, -1, 0, INSULATION_NONE, 0, SUN_FULL},
    {"a duct", WAY_DUCT, 12, -3.4, 0.6, INSULATION_NONE, 1, SUN_SHADED},
    {"a trench", WAY_BURIED, 20, 0, 0.75, INSULATION_NONE, 0, SUN_SHADED},
};

static const struct Course whole_two[] = {{"feeder", "Summerhouse board", RUN_POWER, 0, 1, false}};
static const struct Course whole_eight[] = {{"feeder", "Boathouse distribution board", RUN_POWER, 0, 7, false}};
static const struct Course whole_three[] = {{"pump", "Bore pump", RUN_POWER, 0, 2, false}};
static const struct Course whole_tower[] = {{"clock", "Clock-room board", RUN_POWER, 0, 3, true}};
static const struct Course whole_five[] = {{"paddock", "Pump-house board", RUN_POWER, 0, 4, true}};
static const struct Course whole_hill[] = {{"landing", "Landing-stage winch", RUN_POWER, 0, 5, false}};
static const struct Course whole_fifteen[] = {{"demo", "Far board", RUN_POWER, 0, 14, false}};
static const struct Course four_courses[] = {
    {"feeder", "Boathouse distribution board", RUN_POWER, 0, 7, false},
    {"yard-light", "Yard lights", RUN_POWER, 0, 4, true},
    {"bonding", "Boathouse earth bar", RUN_EARTH, 0, 7, false},
    {"data", "Boathouse desk", RUN_DATA, 2, 7, false},
};

#define STRETCHES(array) (int)(sizeof(array) / sizeof(array)[0]), array

static const struct Scene scenes[FIXTURE_COUNT] = {
    [FIXTURE_TWO] = {"Summerhouse supply", STRETCHES(two), STRETCHES(whole_two), 1},
    [FIXTURE_EIGHT] = {"Boathouse winch supply", STRETCHES(eight), STRETCHES(whole_eight), 1},
    [FIXTURE_UNDERGROUND] = {"Bore pump", STRETCHES(underground), STRETCHES(whole_three), 1},
    [FIXTURE_TOWER] = {"Clock tower", STRETCHES(tower), STRETCHES(whole_tower), 1},
    [FIXTURE_LONG_DULL] = {"Paddock pump-house", STRETCHES(long_dull), STRETCHES(whole_five), 1},
    [FIXTURE_HILL] = {"Landing stage below the terrace", STRETCHES(hill), STRETCHES(whole_hill), 1},
    [FIXTURE_EVERY_WAY] = {"Every way once", STRETCHES(every_way), STRETCHES(whole_fifteen), 1},
    [FIXTURE_RUNS] = {"Boathouse, four cables", STRETCHES(eight), STRETCHES(four_courses), 3},
};

const struct Scene *fixture_scene(enum FixtureKind kind)
{
    return kind < FIXTURE_COUNT && scenes[kind].stretch_count > 0 ? &scenes[kind] : NULL;
}
