#include "net_made.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct Made {
    uint32_t state;
    char *text;
    size_t length;
    bool three_phase, island, tt;
    int dug;    /* segments in the ground so far */
    int trench; /* the first of them */
};

static uint32_t next(struct Made *made)
{
    made->state ^= made->state << 13;
    made->state ^= made->state >> 17;
    made->state ^= made->state << 5;
    return made->state;
}

static int between(struct Made *made, int low, int high)
{
    return low + (int)(next(made) % (uint32_t)(high - low + 1));
}

static bool chance(struct Made *made, int percent)
{
    return between(made, 1, 100) <= percent;
}

static void put(struct Made *made, const char *form, ...) __attribute__((format(printf, 2, 3)));
static void put(struct Made *made, const char *form, ...)
{
    va_list rest;
    va_start(rest, form);
    /* NOLINTNEXTLINE(clang-analyzer-valist.Uninitialized): what it misses is the line before */
    const int added = vsnprintf(made->text + made->length, NET_MADE_MOST - made->length, form, rest);
    va_end(rest);
    made->length += (size_t)added;
    if (made->length >= NET_MADE_MOST) {
        fputs("a made route is too long\n", stderr);
        exit(EXIT_FAILURE);
    }
}

/* One of the words of a text, which are parted by blanks. */
static const char *word(struct Made *made, const char *words)
{
    static char picked[40];
    int count = 1;
    for (const char *c = words; *c != '\0'; c++) {
        count += *c == ' ';
    }
    const char *from = words;
    for (int skipped = between(made, 0, count - 1); skipped > 0; skipped--) {
        from = strchr(from, ' ') + 1;
    }
    snprintf(picked, sizeof picked, "%.*s", (int)strcspn(from, " "), from);
    return picked;
}

/* ", key: word" in so many of a hundred. */
static void maybe(struct Made *made, int percent, const char *key, const char *words)
{
    if (chance(made, percent)) {
        put(made, ", %s: %s", key, word(made, words));
    }
}

static void maybe_number(struct Made *made, int percent, const char *key, int low, int high, const char *unit)
{
    if (chance(made, percent)) {
        put(made, ", %s: %d%s", key, between(made, low, high), unit);
    }
}

static bool is_one_of(const char *one, const char *words)
{
    const char *found = strstr(words, one);
    const size_t length = strlen(one);
    return found != NULL && (found == words || found[-1] == ' ') && (found[length] == ' ' || found[length] == '\0');
}

static void write_supply(struct Made *made)
{
    static const int loops_mohm[] = {80, 150, 210, 350, 350, 500, 800};
    const char *system = word(made, "TN-S TN-S TN-C-S TN-C-S TT");
    made->tt = strcmp(system, "TT") == 0;
    made->three_phase = chance(made, 35);
    put(made, "supply: {system: %s, phases: %d", system, made->three_phase ? 3 : 1);
    if (!made->tt || chance(made, 30)) {
        put(made, ", loop-impedance: %d mohm",
            made->tt ? between(made, 10000, 90000) : loops_mohm[between(made, 0, 6)]);
    }
    if (made->tt) {
        maybe_number(made, 60, "electrode-resistance", 5, 190, " ohm");
    }
    maybe_number(made, 75, "fault-current", 600, 9000, " A");
    maybe(made, 30, "drop-before", "0.4% 0.8% 1.5%");
    maybe(made, 5, "voltage", "110V 220V 240V");
    maybe(made, 15, "neutral-size", "16mm2 25mm2 50mm2 95mm2 150mm2 185mm2");
    maybe(made, 25, "earthing-conductor", "6mm2 10mm2 25mm2 50mm2");
    maybe(made, 40, "surge-protection", "fitted planned");
    maybe(made, 30, "selectivity", "shown accepted");
    put(made, "}\n");
}

static void write_conditions(struct Made *made)
{
    put(made, "conditions: {air: %d degC", between(made, 20, 45));
    maybe_number(made, 40, "ground", 10, 30, " degC");
    maybe(made, 40, "soil-thermal", "0.8K.m/W 1.0K.m/W 1.2K.m/W 1.5K.m/W 2.0K.m/W 2.5K.m/W 3.0K.m/W");
    maybe_number(made, 40, "soil-electrical", 20, 600, " ohm.m");
    maybe(made, 50, "terminals", "70degC 90degC");
    put(made, "}\n");
}

static void write_earthing(struct Made *made, const char *location)
{
    made->island = made->tt ? chance(made, 70) : chance(made, 35);
    if (!made->island && chance(made, 25)) {
        return;
    }
    put(made, "earthing: {far-end: %s", made->island ? "island" : "export");
    if (made->island || chance(made, 15)) {
        put(made, ", electrode: {rods: %d", between(made, 1, 6));
        put(made, ", length: %d mm", between(made, 900, 3600));
        put(made, ", diameter: %s", word(made, "9mm 12.7mm 14.2mm 16mm 20mm"));
        maybe_number(made, 50, "spacing", 800, 5000, " mm");
        maybe_number(made, 25, "conductor-length", 1, 12, " m");
        maybe_number(made, 30, "measured", 8, 260, " ohm");
        maybe_number(made, 20, "target", 15, 200, " ohm");
        put(made, "}");
    }
    if (made->island || chance(made, 20)) {
        maybe(made, 85, "board-residual", "30mA 30mA 100mA 300mA");
    }
    maybe(made, 80, "extraneous-parts", "yes no");
    maybe(made, 15, "existing", "none replaced kept");
    if (strcmp(location, "farm") == 0) {
        maybe(made, 60, "floor-grid", "yes no");
    }
    put(made, "}\n");
}

static void write_load(struct Made *made)
{
    const int parts = chance(made, 25) ? between(made, 2, 4) : 1;
    put(made, "    load:\n");
    for (int i = 0; i < parts; i++) {
        const bool large = chance(made, 15);
        if (chance(made, 50)) {
            put(made, "      - {current: %d mA", between(made, 1000, large ? 120000 : 40000));
        } else if (chance(made, 70)) {
            put(made, "      - {power: %d W", between(made, 300, large ? 40000 : 9000));
        } else {
            put(made, "      - {power: %d kVA", between(made, 1, large ? 30 : 8));
        }
        maybe(made, 60, "power-factor", "0.7 0.75 0.8 0.85 0.9 0.95 1");
        if (made->three_phase) {
            maybe(made, parts > 1 ? 60 : 20, "phases", "1 3");
        }
        maybe(made, parts > 1 ? 30 : 0, "diversity", "40% 60% 80%");
        put(made, "}\n");
    }
}

static void write_device(struct Made *made)
{
    if (chance(made, 12)) {
        return;
    }
    char kind[16];
    snprintf(kind, sizeof kind, "%s",
             word(made, made->tt || made->island ? "RCBO RCBO RCBO MCB gG"
                                                 : "MCB MCB MCB RCBO RCBO gG gG BS88-3 BS1361 BS3036"));
    put(made, "    device: {kind: %s", kind);
    const bool breaker = is_one_of(kind, "MCB RCBO");
    if (breaker) {
        maybe(made, 80, "curve", "B B C C D");
        maybe(made, 35, "rating", "6A 10A 16A 20A 25A 32A 40A 50A 63A 80A 100A");
        maybe(made, 30, "trip-5-s", "100A 160A 250A 400A");
        maybe(made, 12, "let-through", "8000A2s 15000A2s 40000A2s 100000A2s");
    } else if (strcmp(kind, "gG") == 0) {
        maybe(made, 40, "rating", "10A 16A 20A 25A 32A 40A 50A 63A 80A 100A 125A");
    } else if (strcmp(kind, "BS3036") == 0) {
        maybe(made, 40, "rating", "5A 15A 20A 30A 45A 60A 100A");
    } else if (strcmp(kind, "BS88-3") == 0) {
        maybe(made, 40, "rating", "5A 16A 20A 32A 45A 63A 80A 100A");
    } else {
        maybe(made, 60, "rating", "60A 80A");
    }
    if (strcmp(kind, "RCBO") == 0) {
        put(made, ", residual: %s", word(made, "30mA 30mA 30mA 100mA 300mA"));
        maybe(made, 70, "residual-type", "AC A A F B");
        maybe(made, 15, "time-delayed", "yes no");
    }
    if (breaker) {
        maybe(made, 20, "senses-neutral", "yes no");
    }
    maybe(made, 55, "breaking-capacity", "3kA 4.5kA 6kA 10kA 16kA 33kA");
    put(made, "}\n");
}

/* What the run's protective conductor is: true when it is a run of its own. */
static bool write_cable(struct Made *made)
{
    char type[24];
    snprintf(
        type, sizeof type, "%s",
        word(made,
             made->three_phase
                 ? "BS5467 BS5467 BS5467 BS6724 BS6346 BS6004-multicore BS7211-multicore"
                 : "BS5467 BS5467 BS5467 BS6724 BS6346 BS6004-flat BS6004-flat BS6004-multicore BS7211-multicore"));
    put(made, "    cable: {type: %s", type);
    const int lines = made->three_phase ? 4 : 2; /* with the neutral */
    bool separate = false;
    if (strcmp(type, "BS6004-flat") != 0) {
        const bool armoured = is_one_of(type, "BS5467 BS6724 BS6346");
        const char *cpc = word(made, armoured ? "core core core armour armour core-and-armour separate"
                                              : "core core core core separate");
        separate = strcmp(cpc, "separate") == 0;
        const bool core = is_one_of(cpc, "core core-and-armour");
        const bool spare = !core && !made->three_phase && chance(made, 20); /* a core that nothing uses */
        put(made, ", cores: %d, cpc: %s", lines + (core || spare ? 1 : 0), cpc);
        maybe(made, 35, "size", "1.5mm2 2.5mm2 4mm2 6mm2 10mm2 16mm2 25mm2 35mm2 50mm2 70mm2 95mm2 120mm2 choose");
    } else {
        maybe(made, 40, "size", "1.5mm2 2.5mm2 4mm2 6mm2 10mm2 16mm2");
    }
    maybe_number(made, 4, "diameter", 10, 40, " mm");
    put(made, "}\n");
    return separate;
}

static void write_ends(struct Made *made)
{
    put(made, "    start: {into: %s", word(made, "enclosure enclosure terminal-box"));
    maybe(made, 20, "place", "indoors outdoors wet");
    maybe(made, 50, "enclosure", "plastic metal painted");
    if (chance(made, 30)) {
        const char *from = word(made, "existing-way meter-tails new-board");
        put(made, ", from: %s", from);
        if (strcmp(from, "existing-way") != 0) {
            maybe_number(made, 60, "tails", 300, 3600, " mm");
        }
    }
    maybe_number(made, 50, "tail", 0, 1500, " mm");
    maybe_number(made, 20, "loop", 0, 900, " mm");
    maybe_number(made, 30, "room", 80, 800, " mm");
    maybe(made, 40, "entry", "bottom top side back");
    const char *into = word(made, "enclosure enclosure terminal-box accessory free");
    const bool free_end = strcmp(into, "free") == 0;
    put(made, "}\n    finish: {into: %s", into);
    maybe(made, 50, "place", "indoors outdoors wet");
    maybe(made, 50, "enclosure", "plastic metal painted");
    maybe_number(made, 50, "tail", 0, 1500, " mm");
    maybe_number(made, 20, "loop", 0, 900, " mm");
    maybe_number(made, free_end ? 0 : 40, "room", 80, 800, " mm");
    maybe(made, free_end ? 0 : 40, "entry", "bottom top side back");
    put(made, "}\n");
    if (chance(made, 25)) {
        put(made, "    pull: {friction: 0.%d", between(made, 15, 60));
        maybe(made, 50, "from", "start finish");
        maybe(made, 40, "lubricant", "yes no");
        put(made, "}\n");
    }
}

static void write_power_run(struct Made *made, const char *name, bool *separate)
{
    put(made, "  %s:\n    serves: what stands there\n", name);
    put(made, "    feeds: %s\n", word(made, "board board board equipment sockets"));
    const char *use = word(made, "general general general lighting heating heat-pump motor generation");
    put(made, "    use: %s\n", use);
    if (strcmp(use, "motor") == 0 && chance(made, 60)) {
        put(made, "    start-multiple: %d\n", between(made, 2, 8));
        if (chance(made, 50)) {
            put(made, "    start-power-factor: 0.%d\n", between(made, 2, 6));
        }
    }
    if (chance(made, 15)) {
        put(made, "    third-harmonic: %d %%\n", between(made, 3, 50));
    }
    if (chance(made, 20)) {
        put(made, "    drop-limit: %d %%\n", between(made, 2, 8));
    }
    write_load(made);
    write_device(made);
    const bool own = write_cable(made);
    *separate = *separate || own;
    write_ends(made);
}

static void write_segment(struct Made *made, int index)
{
    char way[16];
    snprintf(way, sizeof way, "%s",
             word(made,
                  "wall wall fence beam loft-void under-floor stud-wall ceiling through-wall through-wall conduit "
                  "trunking tray ladder catenary duct duct buried buried"));
    const bool in_ground = is_one_of(way, "duct buried");
    const bool hole = strcmp(way, "through-wall") == 0;
    put(made, "  - {name: s%d, way: %s, length: ", index, way);
    if (hole) {
        put(made, "%d mm", between(made, 100, 900));
    } else {
        const int length_mm = between(made, 400, chance(made, 20) ? 60000 : 16000);
        put(made, "%d mm", length_mm);
        if (chance(made, 2)) {
            put(made, " to %d mm", length_mm + between(made, 500, 4000));
        }
    }
    maybe_number(made, 25, "rise", hole ? -100 : -400, hole ? 100 : 400, " mm");
    maybe(made, 20, "heading", "N NE ESE S WSW NW 75deg 200deg");
    if (chance(made, 25) && !hole) {
        if (chance(made, 50)) {
            put(made, ", bends: %d", between(made, 1, 4));
        } else {
            put(made, ", bends: [{angle: %d deg", between(made, 15, 120));
            put(made, ", radius: %d mm}]", between(made, 60, 900));
        }
    }
    if (is_one_of(way, "wall fence beam loft-void conduit trunking tray ladder")) {
        maybe(made, 60, "fixed-to", "brick block stone concrete timber steel plasterboard");
    }
    if (!in_ground) {
        maybe_number(made, 25, "air", 15, 55, " degC");
    } else {
        maybe_number(made, 20, "ground", 5, 30, " degC");
        maybe(made, 20, "soil-thermal", "0.7K.m/W 1.1K.m/W 1.8K.m/W 2.5K.m/W");
        put(made, ", depth: %d mm", between(made, 300, 1300));
        maybe(made, 40, "under", "lawn path drive bed field");
        maybe(made, 40, "dig", "hand machine");
        maybe_number(made, 15, "trench-width", 150, 600, " mm");
        maybe(made, 25, "bedding", "yes no");
        maybe(made, 30, "legs", "added included");
        made->trench = made->dug++ == 0 ? index : made->trench;
        if (made->trench != index && chance(made, 30)) {
            put(made, ", trench: s%d", made->trench);
        }
    }
    if (is_one_of(way, "wall fence beam conduit trunking tray ladder catenary") && chance(made, 40)) {
        if (chance(made, 50)) {
            put(made, ", where: outside");
            maybe(made, 60, "sun", "shaded full");
        } else if (!is_one_of(way, "fence catenary")) {
            put(made, ", where: inside");
        }
    }
    if (is_one_of(way, "wall beam loft-void under-floor stud-wall ceiling through-wall") && chance(made, 35)) {
        put(made, ", insulation: %s", word(made, "one-side surrounded"));
        maybe_number(made, 40, "insulated-length", 40, hole ? 100 : 700, " mm");
    }
    if (!hole && chance(made, 30)) {
        put(made, ", beside: {circuits: %d", between(made, 1, 6));
        if (strcmp(way, "duct") == 0) {
            maybe(made, 60, "arrangement", "bunched duct-touching");
        } else if (is_one_of(way, "wall fence beam tray ladder catenary")) {
            maybe(made, 70, "arrangement", "bunched single-layer spaced");
        } else if (strcmp(way, "buried") == 0) {
            maybe(made, 70, "arrangement", "bunched spaced");
        }
        maybe(made, 20, "unlike", "yes no");
        maybe_number(made, 30, "diameter", 6, 25, " mm");
        put(made, "}");
    }
    if (is_one_of(way, "wall fence beam tray ladder catenary buried")) {
        maybe(made, 20, "arrangement", "bunched single-layer spaced");
    }
    if (hole) {
        put(made, ", wall: %s", word(made, "brick cavity insulated-cavity timber stone"));
        put(made, ", thickness: %d mm", between(made, 90, 600));
        maybe(made, 30, "fire-barrier", "yes no");
        maybe(made, 30, "sleeve", "yes no");
    } else if (strcmp(way, "ceiling") == 0) {
        maybe_number(made, 50, "thickness", 50, 300, " mm");
    } else if (strcmp(way, "stud-wall") == 0) {
        maybe(made, 60, "hidden", "shallow deep covered");
    } else if (strcmp(way, "conduit") == 0) {
        maybe(made, 70, "size", "20mm 25mm 32mm");
        maybe(made, 50, "material", "plastic steel");
    } else if (strcmp(way, "trunking") == 0) {
        if (chance(made, 70)) {
            const int width_mm = between(made, 1, 4) * 25;
            put(made, ", size: %d x %d mm", width_mm, between(made, 1, 4) * 25);
        }
    } else if (is_one_of(way, "tray ladder")) {
        maybe(made, 60, "size", "75mm 100mm 150mm 300mm");
    } else if (strcmp(way, "catenary") == 0) {
        maybe(made, 50, "wire-size", "3mm 4mm 6mm");
        maybe(made, 50, "wire", "rope strand");
    } else if (strcmp(way, "duct") == 0) {
        put(made, ", duct: {size: %s", word(made, "50mm 63mm 63mm 90mm 110mm"));
        maybe(made, 30, "laid", "new existing");
        maybe(made, 30, "rope", "yes no");
        put(made, "}");
    }
    if (is_one_of(way, "conduit trunking tray ladder catenary")) {
        maybe(made, 30, "laid", "new existing");
    }
    if (is_one_of(way, "wall fence beam loft-void under-floor stud-wall ceiling trunking tray")) {
        maybe(made, 12, "drawn", "yes no");
    }
    if (is_one_of(way, "conduit duct")) {
        maybe(made, 25, "draw-pits", "none start end both");
    }
    maybe(made, 10, "how-measured", "tape wheel laser drawing paced guessed");
    maybe(made, 6, "measure-again", "yes");
    if (chance(made, 8)) {
        put(made, ", marks: [{what: %s", word(made, "rod service drain tree cover joint post"));
        put(made, ", at: 200 mm, off: %d mm", between(made, 100, 3000));
        put(made, ", side: %s}]", word(made, "left right"));
    }
    put(made, "}\n");
}

size_t net_made(uint32_t number, char text[NET_MADE_MOST])
{
    struct Made made = {.state = number * 2654435761U + 97};
    made.text = text;
    for (int i = 0; i < 8; i++) {
        (void)next(&made);
    }
    char location[24];
    snprintf(location, sizeof location, "%s",
             word(&made, "ordinary ordinary dwelling dwelling workshop farm building-site caravan-park marina"));
    put(&made, "wend: 1\njob: {title: made %u, location: %s}\n", (unsigned)number, location);
    write_supply(&made);
    write_conditions(&made);
    write_earthing(&made, location);
    put(&made, "runs:\n");
    bool separate = false;
    write_power_run(&made, "feeder", &separate);
    if (chance(&made, 25)) {
        write_power_run(&made, "second", &separate);
    }
    if (separate) {
        put(&made, "  bond: {kind: earth, cable: {type: BS6004-single, cores: 1, size: %s}}\n",
            word(&made, "2.5mm2 4mm2 6mm2 10mm2 16mm2 25mm2"));
    }
    if (chance(&made, 20)) {
        put(&made, "  link: {kind: data, cable: {type: EN50288, cores: 8, diameter: %d mm}}\n", between(&made, 5, 12));
    }
    put(&made, "segments:\n");
    const int count = between(&made, 1, 7);
    for (int i = 0; i < count; i++) {
        write_segment(&made, i);
    }
    if (chance(&made, 30)) {
        put(&made, "parts: {spare-cable: %d %%", between(&made, 0, 15));
        maybe_number(&made, 50, "spare-fixings", 0, 25, " %");
        if (chance(&made, 50)) {
            put(&made, ", stock: [{run: feeder, lengths: [25 m, {length: 100 m, have: %d}]}]", between(&made, 1, 3));
        }
        put(&made, "}\n");
    }
    return made.length;
}
