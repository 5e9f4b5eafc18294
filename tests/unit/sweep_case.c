/* The points of the sweep: which cables and devices there are, and a point's route as text. See sweep_case.h. */
#include "sweep_case.h"

#include "design/terms/design_private.h"

#include <stdio.h>

#define ARMOURED(type)                                                                                                 \
    {type, 2, CPC_ARMOUR, 1}, {type, 3, CPC_CORE, 1}, {type, 3, CPC_CORE_AND_ARMOUR, 1}, {type, 2, CPC_NONE, 1},       \
        {type, 2, CPC_SEPARATE, 1}, {type, 3, CPC_ARMOUR, 3}, {type, 4, CPC_ARMOUR, 3}, {type, 4, CPC_CORE, 3},        \
        {type, 5, CPC_CORE, 3}, {type, 5, CPC_CORE_AND_ARMOUR, 3},                                                     \
    {                                                                                                                  \
        type, 5, CPC_ARMOUR, 1                                                                                         \
    }

int sweep_cables(const struct SweepCable **out)
{
    static const struct SweepCable cables[] = {
        ARMOURED(CABLE_BS5467),
        ARMOURED(CABLE_BS6724),
        ARMOURED(CABLE_BS6346),
        {CABLE_BS6004_FLAT, 3, CPC_CORE, 1},
        {CABLE_BS6004_MULTICORE, 3, CPC_CORE, 1},
        {CABLE_BS6004_MULTICORE, 2, CPC_NONE, 1},
        {CABLE_BS6004_MULTICORE, 5, CPC_CORE, 3},
        {CABLE_BS7211_MULTICORE, 3, CPC_CORE, 1},
        {CABLE_BS7211_MULTICORE, 5, CPC_CORE, 3},
        {CABLE_BS7211_MULTICORE, 2, CPC_SEPARATE, 1},
    };
    *out = cables;
    return (int)(sizeof cables / sizeof cables[0]);
}

#define BREAKERS(kind, curve)                                                                                          \
    {kind, curve, 6}, {kind, curve, 10}, {kind, curve, 16}, {kind, curve, 20}, {kind, curve, 25}, {kind, curve, 32},   \
        {kind, curve, 40}, {kind, curve, 50}, {kind, curve, 63}, {kind, curve, 80}, {kind, curve, 100},                \
    {                                                                                                                  \
        kind, curve, 125                                                                                               \
    }

int sweep_devices(const struct SweepDevice **out)
{
    static const struct SweepDevice devices[] = {
        BREAKERS(DEVICE_MCB, CURVE_B),  BREAKERS(DEVICE_MCB, CURVE_C),  BREAKERS(DEVICE_MCB, CURVE_D),
        BREAKERS(DEVICE_RCBO, CURVE_B), BREAKERS(DEVICE_RCBO, CURVE_C), BREAKERS(DEVICE_RCBO, CURVE_D),
        {DEVICE_GG, CURVE_B, 2},        {DEVICE_GG, CURVE_B, 4},        {DEVICE_GG, CURVE_B, 6},
        {DEVICE_GG, CURVE_B, 10},       {DEVICE_GG, CURVE_B, 16},       {DEVICE_GG, CURVE_B, 20},
        {DEVICE_GG, CURVE_B, 25},       {DEVICE_GG, CURVE_B, 32},       {DEVICE_GG, CURVE_B, 40},
        {DEVICE_GG, CURVE_B, 50},       {DEVICE_GG, CURVE_B, 63},       {DEVICE_GG, CURVE_B, 80},
        {DEVICE_GG, CURVE_B, 100},      {DEVICE_GG, CURVE_B, 125},      {DEVICE_GG, CURVE_B, 160},
        {DEVICE_GG, CURVE_B, 200},      {DEVICE_BS88_3, CURVE_B, 5},    {DEVICE_BS88_3, CURVE_B, 16},
        {DEVICE_BS88_3, CURVE_B, 20},   {DEVICE_BS88_3, CURVE_B, 32},   {DEVICE_BS88_3, CURVE_B, 45},
        {DEVICE_BS88_3, CURVE_B, 63},   {DEVICE_BS88_3, CURVE_B, 80},   {DEVICE_BS88_3, CURVE_B, 100},
        {DEVICE_BS3036, CURVE_B, 5},    {DEVICE_BS3036, CURVE_B, 15},   {DEVICE_BS3036, CURVE_B, 20},
        {DEVICE_BS3036, CURVE_B, 30},   {DEVICE_BS3036, CURVE_B, 45},   {DEVICE_BS3036, CURVE_B, 60},
        {DEVICE_BS3036, CURVE_B, 100},  {DEVICE_BS1361, CURVE_B, 60},   {DEVICE_BS1361, CURVE_B, 80},
    };
    *out = devices;
    return (int)(sizeof devices / sizeof devices[0]);
}

int sweep_sizes(const struct SweepCable *cable, const double **out)
{
    return capacity_sizes(edition_held(), cable_capacity(cable_kind(cable->type), 70), out);
}

struct SweepCase sweep_ordinary(void)
{
    return (struct SweepCase){.cable = {CABLE_BS5467, 3, CPC_CORE, 1},
                              .device = {DEVICE_MCB, CURVE_B, 32},
                              .system = SYSTEM_TN_S,
                              .before_mohm = 350,
                              .electrode_ohm = 40,
                              .feeds = FEEDS_BOARD,
                              .use = USE_GENERAL,
                              .load_ma = 5000,
                              .length_mm = 20000};
}

/* Text that grows in a buffer of its own. */
struct Page {
    char *text;
    int at;
};

static void put(struct Page *page, const char *format, ...) WEND_PRINTF(2, 3);

static void put(struct Page *page, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    page->at += vsnprintf(page->text + page->at, (size_t)(SWEEP_TEXT_MOST - page->at), format, values);
    va_end(values);
    ck_assert_int_lt(page->at, SWEEP_TEXT_MOST);
}

static void put_supply(struct Page *page, const struct SweepCase *point)
{
    put(page, "wend: 1\njob: {title: sweep}\nsupply: {system: %s, phases: %d",
        survey_word(WORDS_SYSTEM, (int)point->system), point->cable.phases);
    if (point->before_mohm > 0) {
        put(page, ", %s: %d mohm", point->system == SYSTEM_TT ? "electrode-resistance" : "loop-impedance",
            point->before_mohm);
    }
    if (point->fault_a > 0) {
        put(page, ", fault-current: %d A", point->fault_a);
    }
    put(page, "}\nearthing: {far-end: %s, extraneous-parts: %s", point->island ? "island" : "export",
        point->extraneous ? "yes" : "no");
    if (point->island) {
        put(page, ", electrode: {measured: %d ohm}", point->electrode_ohm);
    }
    if (point->board_residual_ma > 0) {
        put(page, ", board-residual: %d mA", point->board_residual_ma);
    }
    put(page, "}\n");
}

static void put_device(struct Page *page, const struct SweepCase *point)
{
    const struct SweepDevice *device = &point->device;
    put(page, "    device: {kind: %s, rating: %d A", survey_word(WORDS_DEVICE, (int)device->kind), device->rating_a);
    if (device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO) {
        put(page, ", curve: %s", survey_word(WORDS_CURVE, (int)device->curve));
    }
    if (point->residual_ma > 0) {
        put(page, ", residual: %d mA, time-delayed: %s", point->residual_ma, point->time_delayed ? "yes" : "no");
    }
    if (point->residual_ma > 0 && point->residual_type != NULL) {
        put(page, ", residual-type: %s", point->residual_type);
    }
    if (point->breaking_a > 0) {
        put(page, ", breaking-capacity: %d A", point->breaking_a);
    }
    put(page, "}\n");
}

int sweep_write(const struct SweepCase *point, char text[SWEEP_TEXT_MOST])
{
    struct Page page = {.text = text};
    put_supply(&page, point);
    put(&page, "runs:\n  feeder:\n    feeds: %s\n    use: %s\n    load: {current: %d.%03d A}\n",
        survey_word(WORDS_FEEDS, (int)point->feeds), survey_word(WORDS_USE, (int)point->use), point->load_ma / 1000,
        point->load_ma % 1000);
    put_device(&page, point);
    put(&page, "    cable: {type: %s, cores: %d, cpc: %s", survey_word(WORDS_CABLE, (int)point->cable.type),
        point->cable.cores, survey_word(WORDS_CPC, (int)point->cable.cpc));
    if (point->size_mm2 > 0) {
        const int tenths = (int)(point->size_mm2 * 10 + 0.5);
        put(&page, ", size: %d.%d mm2", tenths / 10, tenths % 10);
    }
    put(&page, "}\n");
    if (point->cable.cpc == CPC_SEPARATE) {
        put(&page, "  bond:\n    kind: earth\n    cable: {type: BS6004-single, size: 10 mm2}\n");
    }
    put(&page, "segments:\n  - {name: a, way: wall, length: %d mm}\n", point->length_mm);
    return page.at;
}
