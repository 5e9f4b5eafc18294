/* Cautions as numbers: each is the caution's place in the plan, the same on all papers. What it says stands under the
 * bands in a few words, and whole in the brief. */
#include "layout_private.h"

/* clang-format off */
static const struct {
    enum Saying caution, flag;
} shorter[] = {
    {SAY_CAUTION_RULES, SAY_FLAG_RULES},
    {SAY_CAUTION_DEAD_WORKING, SAY_FLAG_DEAD_WORKING},
    {SAY_CAUTION_CUT_OUT, SAY_FLAG_CUT_OUT},
    {SAY_CAUTION_TAILS_DEAD, SAY_FLAG_TAILS_DEAD},
    {SAY_CAUTION_TAILS_ASK, SAY_FLAG_TAILS_ASK},
    {SAY_CAUTION_TAILS_PROTECT, SAY_FLAG_TAILS_PROTECT},
    {SAY_CAUTION_SECOND_SOURCE, SAY_FLAG_SECOND_SOURCE},
    {SAY_CAUTION_GENERATION_NOTIFY, SAY_FLAG_GENERATION_NOTIFY},
    {SAY_CAUTION_GENERATION_APPLY, SAY_FLAG_GENERATION_APPLY},
    {SAY_CAUTION_SUPPLY_EARTH_OUTDOORS, SAY_FLAG_SUPPLY_EARTH_OUTDOORS},
    {SAY_CAUTION_EXPORT_NOT_FOR, SAY_FLAG_EXPORT_NOT_FOR},
    {SAY_CAUTION_ISLAND_ARMOUR, SAY_FLAG_ISLAND_ARMOUR},
    {SAY_CAUTION_ISLAND_DISTANCE, SAY_FLAG_ISLAND_DISTANCE},
    {SAY_CAUTION_EARTH_LABEL, SAY_FLAG_EARTH_LABEL},
    {SAY_CAUTION_CHARGING_EARTH, SAY_FLAG_CHARGING_EARTH},
    {SAY_CAUTION_OLD_SUPPLY_GOES, SAY_FLAG_OLD_SUPPLY_GOES},
    {SAY_CAUTION_OLD_SUPPLY_STAYS, SAY_FLAG_OLD_SUPPLY_STAYS},
    {SAY_CAUTION_SURGE_UNDECIDED, SAY_FLAG_SURGE_UNDECIDED},
    {SAY_CAUTION_SURGE_FIT, SAY_FLAG_SURGE_FIT},
    {SAY_CAUTION_SELECTIVITY_UNDECIDED, SAY_FLAG_SELECTIVITY_UNDECIDED},
    {SAY_CAUTION_FARM_ANIMALS, SAY_FLAG_FARM_ANIMALS},
    {SAY_CAUTION_FARM_DEPTH, SAY_FLAG_FARM_DEPTH},
    {SAY_CAUTION_FARM_HEIGHT, SAY_FLAG_FARM_HEIGHT},
    {SAY_CAUTION_FARM_PAPERS, SAY_FLAG_FARM_PAPERS},
    {SAY_CAUTION_SITE_CABLES, SAY_FLAG_SITE_CABLES},
    {SAY_CAUTION_PARK_CABLES, SAY_FLAG_PARK_CABLES},
    {SAY_CAUTION_MARINA_CABLES, SAY_FLAG_MARINA_CABLES},
    {SAY_CAUTION_POOL_ZONES, SAY_FLAG_POOL_ZONES},
    {SAY_CAUTION_OUTDOOR_LIGHTING, SAY_FLAG_OUTDOOR_LIGHTING},
    {SAY_CAUTION_EVENT_ORIGIN, SAY_FLAG_EVENT_ORIGIN},
    {SAY_CAUTION_DIG_PLANS, SAY_FLAG_DIG_PLANS},
    {SAY_CAUTION_DIG_HAND, SAY_FLAG_DIG_HAND},
    {SAY_CAUTION_DIG_FOUND, SAY_FLAG_DIG_FOUND},
    {SAY_CAUTION_DIG_GAS, SAY_FLAG_DIG_GAS},
    {SAY_CAUTION_DIG_DEEP, SAY_FLAG_DIG_DEEP},
    {SAY_CAUTION_LOFT_STAND, SAY_FLAG_LOFT_STAND},
    {SAY_CAUTION_LOFT_INSULATION, SAY_FLAG_LOFT_INSULATION},
    {SAY_CAUTION_ASBESTOS, SAY_FLAG_ASBESTOS},
    {SAY_CAUTION_LOFT_HOT, SAY_FLAG_LOFT_HOT},
    {SAY_CAUTION_LOFT_BATS, SAY_FLAG_LOFT_BATS},
    {SAY_CAUTION_HEIGHT, SAY_FLAG_HEIGHT},
    {SAY_CAUTION_OVERHEAD_LINES, SAY_FLAG_OVERHEAD_LINES},
    {SAY_CAUTION_SPAN_HEIGHT, SAY_FLAG_SPAN_HEIGHT},
    {SAY_CAUTION_DRILL_WALL, SAY_FLAG_DRILL_WALL},
    {SAY_CAUTION_WALL_SHALLOW, SAY_FLAG_WALL_SHALLOW},
    {SAY_CAUTION_CAVITY, SAY_FLAG_CAVITY},
    {SAY_CAUTION_FIRE_SEAL, SAY_FLAG_FIRE_SEAL},
    {SAY_CAUTION_METAL_FIXINGS, SAY_FLAG_METAL_FIXINGS},
    {SAY_CAUTION_LIFT, SAY_FLAG_LIFT},
    {SAY_CAUTION_PULLING, SAY_FLAG_PULLING},
    {SAY_CAUTION_ARMOUR_ENDS, SAY_FLAG_ARMOUR_ENDS},
    {SAY_CAUTION_GLAND_PLASTIC, SAY_FLAG_GLAND_PLASTIC},
    {SAY_CAUTION_DUCT_SEAL, SAY_FLAG_DUCT_SEAL},
    {SAY_CAUTION_COLD, SAY_FLAG_COLD},
    {SAY_CAUTION_SUN, SAY_FLAG_SUN},
    {SAY_CAUTION_TOOLS, SAY_FLAG_TOOLS},
    {SAY_CAUTION_FIRST_TEST, SAY_FLAG_FIRST_TEST},
    {SAY_CAUTION_NOTIFY, SAY_FLAG_NOTIFY},
    {SAY_CAUTION_DRIVE, SAY_FLAG_DRIVE},
    {SAY_DATA_SHARES_WITH_POWER, SAY_FLAG_DATA_SHARES},
    {SAY_DATA_KEPT_OUT, SAY_FLAG_DATA_OUT},
    {SAY_DATA_APART_IN_GROUND, SAY_FLAG_DATA_APART},
    {SAY_DATA_APART_IN_AIR, SAY_FLAG_DATA_APART},
    {SAY_DATA_APART_THROUGH_WALL, SAY_FLAG_DATA_APART},
};
/* clang-format on */

static bool bites(const struct Caution *caution, const struct Run *run, int segment)
{
    return run == NULL ? plan_caution_at(caution, segment)
                       : caution->stretch_count == 0 && text_same(caution->where, run->name);
}

const char *flag_numbers(const struct RouteLayout *layout, const struct Run *run, int segment)
{
    const struct Plan *plan = layout->plan;
    struct TextBuilder text = text_builder(layout->arena);
    for (int i = 0; i < plan->caution_count; i++) {
        int last = i;
        while (last < plan->caution_count && bites(&plan->cautions[last], run, segment)) {
            last++;
        }
        if (last == i) {
            continue;
        }
        text_print(&text, "%s%d", text.length > 0 ? ", " : "", i + 1);
        if (last - i > 1) {
            text_print(&text, "%s%d", last - i == 2 ? ", " : "\xE2\x80\x93", last);
        }
        i = last;
    }
    return text_done(&text);
}

void cells_flags(struct Cell *cell, int segment)
{
    const char *numbers = flag_numbers(cell->layout, NULL, segment);
    if (*numbers != '\0') {
        cell_put(cell, say_alone(cell->layout->arena, say_name(numbers)), true);
    }
}

bool flag_in_strip(const struct RouteLayout *layout, int index, int first, int last)
{
    const struct Caution *caution = &layout->plan->cautions[index];
    for (int i = 0; i < caution->stretch_count; i++) {
        if (caution->stretches[i] >= first && caution->stretches[i] <= last) {
            return true;
        }
    }
    for (int i = 0; caution->stretch_count == 0 && *caution->where != '\0' && i < layout->plan->run_count; i++) {
        const struct Run *run = layout->plan->runs[i].settled;
        const int boundary = layout_run_boundary(run, false);
        if (text_same(caution->where, run->name) && boundary >= first && boundary <= last + 1) {
            return true;
        }
    }
    return false;
}

const struct Say *flag_short(const struct RouteLayout *layout, int index)
{
    const struct Say *text = layout->plan->cautions[index].text;
    for (size_t i = 0; text != NULL && i < sizeof shorter / sizeof shorter[0]; i++) {
        if (shorter[i].caution == text->id) {
            return say(layout->arena, shorter[i].flag);
        }
    }
    return text;
}
