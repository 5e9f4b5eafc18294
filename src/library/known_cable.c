/* What is known of one cable, and of one table, gathered for the documents that show it. */
#include "library_private.h"

#include "tables/cable_kinds.h"
#include "tables/fault_tables.h"
#include "tables/takeoff_tables.h"

#include <math.h>
#include <string.h>
#include <strings.h>

enum { FIGURES_MOST = 64, CORES_MOST = 5, TABLES_MOST = 8, DIGITS = 6 };

static char *keep(struct Arena *arena, const char *text)
{
    char *kept = text == NULL || *text == '\0' ? NULL : library_keep(arena, text);
    arena_free(arena);
    return kept;
}

static struct KnownSource source_of(struct Arena *arena, const struct TableRef *ref)
{
    return (struct KnownSource){table_standard(arena, ref), ref->table, ref->seen};
}

/* ---- tables ---- */

static int gather_tables(struct Arena *arena, const char *name, struct KnownTable tables[TABLES_MOST])
{
    int count = 0;
    for (int i = 0; i < tables_count() && count < TABLES_MOST; i++) {
        const struct TableRef *ref = tables_at(i);
        if (strcasecmp(ref->table, library_text(name)) == 0) {
            struct TextBuilder cells = text_builder(arena);
            tables_cells(i, &cells);
            tables[count++] =
                (struct KnownTable){.source = source_of(arena, ref), .title = ref->title, .cells = text_done(&cells)};
        }
    }
    return count;
}

char *wend_table_text(const char *name, bool csv)
{
    struct Arena *arena = arena_new();
    if (arena == NULL) {
        return NULL;
    }
    struct KnownTable tables[TABLES_MOST];
    const int count = gather_tables(arena, name, tables);
    struct TextBuilder out = text_builder(arena);
    for (int i = 0; i < count; i++) {
        text_add(&out, i > 0 ? "\n" : "");
        text_add(&out, document_table_text(arena, &tables[i], csv));
    }
    return keep(arena, text_done(&out));
}

char *wend_table_json(const char *name)
{
    struct Arena *arena = arena_new();
    if (arena == NULL) {
        return NULL;
    }
    struct KnownTable tables[TABLES_MOST];
    const int count = gather_tables(arena, name, tables);
    const struct Bytes made = count > 0 ? document_tables_json(arena, tables, count) : (struct Bytes){.data = NULL};
    return keep(arena, made.data == NULL ? "" : arena_print(arena, "%.*s", (int)made.length, made.data));
}

/* ---- one cable ---- */

/* A cable that is asked for, and what was found so far. */
struct Sheet {
    struct Arena *arena;
    enum CableType type;
    int cores;
    double size_mm2;
    struct KnownFigure *figures; /* FIGURES_MOST */
    int count;
    const struct Say *unknown;
};

static void add(struct Sheet *sheet, const struct Say *what, double value, enum Unit unit, const struct TableRef *ref)
{
    if (sheet->count < FIGURES_MOST) {
        sheet->figures[sheet->count++] =
            (struct KnownFigure){.what = what, .value = value, .unit = unit, .source = source_of(sheet->arena, ref)};
    }
}

static void add_name(struct Sheet *sheet, enum Saying what, const char *name, const struct TableRef *ref)
{
    add(sheet, say(sheet->arena, what), 0, UNIT_NONE, ref);
    sheet->figures[sheet->count - 1].name = name;
}

static void lacks(struct Sheet *sheet, enum Saying what)
{
    sheet->unknown = say_list(sheet->arena, SAY_COMMA, sheet->unknown, say_term(what));
}

static void add_capacities(struct Sheet *sheet, enum CapacityTable table, double degc)
{
    for (int method = 0; table != CAPACITY_NONE && method < METHOD_COUNT; method++) {
        for (int loaded = 2; loaded <= 3 && loaded <= sheet->cores; loaded++) {
            double amperes = 0;
            if (capacity_amperes(edition_held(), table, sheet->size_mm2, (enum Method)method, loaded, &amperes)) {
                add(sheet,
                    say(sheet->arena, SAY_KNOWN_METHOD, say_name(method_name((enum Method)method)), say_count(loaded),
                        say_digits(degc, DIGITS, UNIT_DEGC)),
                    amperes, UNIT_A, capacity_ref(edition_held(), table));
            }
        }
    }
}

static void add_drops(struct Sheet *sheet, enum DropTable table)
{
    for (int phases = 1; table != DROP_NONE && phases <= 3; phases += 2) {
        const int loaded = phases == 1 ? 2 : 3;
        struct DropFigure figure;
        if (loaded <= sheet->cores && drop_figure(edition_held(), table, sheet->size_mm2, phases, &figure)) {
            add(sheet, say(sheet->arena, phases == 1 ? SAY_KNOWN_DROP_SINGLE : SAY_KNOWN_DROP_THREE), figure.z,
                UNIT_MV_PER_A_M, drop_ref(edition_held(), table));
        }
    }
}

/* Of those that have no reference of their own to ask for. */
static const struct TableRef *table_named(const char *name)
{
    int index = 0;
    while (index + 1 < tables_count() && strcmp(tables_at(index)->table, name) != 0) {
        index++;
    }
    return tables_at(index);
}

static void add_k(struct Sheet *sheet, enum Saying what, double k, double degc, const char *table)
{
    add(sheet, say(sheet->arena, what, say_digits(degc, DIGITS, UNIT_DEGC)), k, UNIT_NONE, table_named(table));
}

static void add_ks(struct Sheet *sheet, double degc)
{
    const enum RunKind run = survey_cable_run(sheet->type);
    if (run == RUN_EARTH) {
        add_k(sheet, SAY_KNOWN_K_SEPARATE, k_value(edition_held(), K_SEPARATE, degc), degc, "54.2");
    } else if (run == RUN_POWER) {
        add_k(sheet, SAY_KNOWN_K_LIVE, k_value(edition_held(), K_LIVE, degc), degc, "43.1");
        add_k(sheet, SAY_KNOWN_K_CORE, k_value(edition_held(), K_CORE, degc), degc, "54.3");
    }
}

static void add_metal(struct Sheet *sheet)
{
    const double degc = cable_kind(sheet->type)->insulation_degc;
    struct Armour armour;
    double ohm_per_m = 0;
    const struct SayArg at_20 = say_digits(20, DIGITS, UNIT_DEGC);
    if (conductor_resistance(sheet->size_mm2, &ohm_per_m)) {
        add(sheet, say(sheet->arena, SAY_KNOWN_CONDUCTOR, at_20), ohm_per_m * 1000, UNIT_OHM_PER_KM,
            conductor_resistance_ref());
    }
    add_ks(sheet, degc);
    if (!survey_armoured(sheet->type)) {
        return;
    }
    add_k(sheet, SAY_KNOWN_K_ARMOUR, k_value(edition_held(), K_ARMOUR, degc), degc, "54.4");
    if (armour_figures(sheet->type, sheet->cores, sheet->size_mm2, &armour)) {
        add(sheet, say(sheet->arena, SAY_KNOWN_ARMOUR_AREA), armour.area_mm2, UNIT_MM2, armour_ref());
        add(sheet, say(sheet->arena, SAY_KNOWN_ARMOUR, at_20), armour.max_ohm_per_m * 1000, UNIT_OHM_PER_KM,
            armour_ref());
    } else {
        lacks(sheet, SAY_KNOWN_ARMOUR_AREA);
    }
}

static void add_gland(struct Sheet *sheet, const char *gland)
{
    const char *thread = "";
    if (*gland == '\0') {
        lacks(sheet, SAY_KNOWN_GLAND);
        return;
    }
    add_name(sheet, SAY_KNOWN_GLAND, gland, table_named("gland column"));
    if (gland_thread(gland, &thread)) {
        add_name(sheet, SAY_KNOWN_THREAD, thread, gland_ref());
    }
}

/* What goes by the diameter. */
static void add_fixing(struct Sheet *sheet, double overall_mm)
{
    const bool armoured = survey_armoured(sheet->type);
    double factor = 0;
    int cleat = 0;
    if (bend_radius_factor(sheet->type, sheet->size_mm2, overall_mm, &factor)) {
        add(sheet, say(sheet->arena, SAY_KNOWN_BEND), factor * overall_mm, UNIT_MM, bend_radius_ref());
    }
    if (bend_radius_drawn_factor(sheet->type, &factor)) {
        add(sheet, say(sheet->arena, SAY_KNOWN_BEND_DRAWN), factor * overall_mm, UNIT_MM, bend_radius_drawn_ref());
    }
    for (int vertical = 0; vertical < 2; vertical++) {
        const enum Saying what = vertical == 1 ? SAY_KNOWN_FIXED_VERTICAL : SAY_KNOWN_FIXED_HORIZONTAL;
        double spacing_m = 0;
        if (support_spacing(armoured, overall_mm, vertical == 1, &spacing_m)) {
            add(sheet, say(sheet->arena, what), spacing_m, UNIT_M, support_spacing_ref());
        } else {
            lacks(sheet, what);
        }
    }
    if (armoured && hook_cleat(overall_mm, &cleat)) {
        add(sheet, say(sheet->arena, SAY_KNOWN_CLEAT), cleat, UNIT_NONE, hook_cleat_ref());
    }
}

/* As the check of pulls has it: a stocking may not ask more of the copper than an eye does. */
static void add_pull(struct Sheet *sheet, double overall_mm)
{
    const struct PullLimits *limits = pull_limits();
    if (survey_cable_run(sheet->type) == RUN_DATA) {
        lacks(sheet, SAY_KNOWN_PULL_EYE);
        return;
    }
    const double copper_n = limits->copper_n_per_mm2 * sheet->cores * sheet->size_mm2;
    add(sheet, say(sheet->arena, SAY_KNOWN_PULL_EYE), copper_n, UNIT_N, pull_limits_ref());
    if (!(overall_mm > 0)) {
        lacks(sheet, SAY_KNOWN_PULL_STOCKING);
        return;
    }
    double most_n = fmin(copper_n, limits->stocking_n_per_mm * overall_mm);
    if (survey_armoured(sheet->type)) {
        most_n = fmin(most_n, limits->stocking_armour_n_per_mm2 * overall_mm * overall_mm);
    }
    add(sheet, say(sheet->arena, SAY_KNOWN_PULL_STOCKING), most_n, UNIT_N, pull_limits_ref());
}

static void add_body(struct Sheet *sheet)
{
    static const enum Saying by_diameter[] = {SAY_KNOWN_BEND, SAY_KNOWN_FIXED_HORIZONTAL, SAY_KNOWN_FIXED_VERTICAL};
    struct CableDimensions body = {.overall_mm = 0};
    if (!cable_dimensions(sheet->type, sheet->cores, sheet->size_mm2, &body)) {
        lacks(sheet, SAY_KNOWN_OVERALL);
        lacks(sheet, SAY_KNOWN_WEIGHT);
        if (survey_armoured(sheet->type)) {
            lacks(sheet, SAY_KNOWN_GLAND);
        }
        for (size_t i = 0; i < sizeof by_diameter / sizeof by_diameter[0]; i++) {
            lacks(sheet, by_diameter[i]);
        }
        add_pull(sheet, 0);
        return;
    }
    add(sheet, say(sheet->arena, SAY_KNOWN_OVERALL), body.overall_mm, UNIT_MM, cable_dimensions_ref());
    add(sheet, say(sheet->arena, SAY_KNOWN_UNDER_ARMOUR), body.under_armour_mm, UNIT_MM, cable_dimensions_ref());
    if (body.weight_kg_per_km > 0) {
        add(sheet, say(sheet->arena, SAY_KNOWN_WEIGHT), body.weight_kg_per_km, UNIT_KG_PER_KM, cable_dimensions_ref());
    } else {
        lacks(sheet, SAY_KNOWN_WEIGHT);
    }
    add_gland(sheet, body.usual_gland);
    add_fixing(sheet, body.overall_mm);
    add_pull(sheet, body.overall_mm);
}

static const struct Say *not_for(const struct Sheet *sheet)
{
    const struct CableKind *kind = cable_kind(sheet->type);
    struct Arena *arena = sheet->arena;
    const struct SayArg cool = say_digits(70, DIGITS, UNIT_DEGC);
    const struct Say *said = NULL;
    switch (survey_cable_run(sheet->type)) {
    case RUN_DATA: return say(arena, SAY_KNOWN_DATA_ONLY);
    case RUN_EARTH: return say(arena, SAY_KNOWN_EARTH_ONLY);
    default: break;
    }
    if (kind->family == FAMILY_NONE) {
        return say(arena, SAY_KNOWN_NO_POWER);
    }
    if (!capacity_has_method(edition_held(), kind->at_70, METHOD_D, 2)) {
        said = say(arena, SAY_KNOWN_NOT_IN_GROUND, say_term(SAY_NOT_FOR_GROUND));
    }
    return say_then(arena, said,
                    kind->at_90 == CAPACITY_NONE
                        ? say(arena, SAY_KNOWN_NO_90, cool)
                        : say(arena, SAY_KNOWN_TERMINALS, say_digits(90, DIGITS, UNIT_DEGC), cool));
}

/* "3x6", with as many cores as a route takes; also with mm2 behind it or a multiplication sign within. */
static bool read_size(const char *text, int *cores, double *size_mm2)
{
    const size_t digits = strspn(text, "0123456789");
    double count = 0;
    const char *size = text + digits;
    size += strncmp(size, "\xC3\x97", 2) == 0 ? 2 : *size == 'x' || *size == 'X' ? 1 : 0;
    const size_t length = strspn(size, "0123456789.");
    const bool ends = size[length] == '\0' || strcmp(size + length, "mm2") == 0 || strcmp(size + length, " mm2") == 0;
    if (digits == 0 || size == text + digits || !ends || !number_read(text, digits, &count) ||
        !number_read(size, length, size_mm2) || count < 1 || count > CORES_MOST) {
        return false;
    }
    *cores = (int)count;
    return true;
}

/* False where no table speaks of the size at all. */
static bool gather_cable(struct Sheet *sheet, struct KnownCable *out)
{
    const struct CableKind *kind = cable_kind(sheet->type);
    add_capacities(sheet, kind->at_70, 70);
    add_capacities(sheet, kind->at_90, 90);
    add_drops(sheet, kind->drop);
    struct CableDimensions body;
    double ohm_per_m = 0;
    const bool rated = sheet->count > 0;
    const bool bodied = cable_dimensions(sheet->type, sheet->cores, sheet->size_mm2, &body);
    const bool unrated = (kind->family == FAMILY_NONE || kind->figures != FIGURES_NONE) &&
                         conductor_resistance(sheet->size_mm2, &ohm_per_m);
    if (!rated && !bodied && !unrated) {
        return false;
    }
    if (!rated) {
        lacks(sheet, SAY_KNOWN_CAPACITY);
        lacks(sheet, SAY_KNOWN_DROP);
    }
    add_metal(sheet);
    add_body(sheet);
    struct Arena *arena = sheet->arena;
    *out = (struct KnownCable){
        .heading = say(arena, SAY_KNOWN_CABLE, say_name(kind->standard), say_count(sheet->cores),
                       say_digits(sheet->size_mm2, DIGITS, UNIT_MM2), say_meaning(WORDS_CABLE, (int)sheet->type)),
        .figures = sheet->figures,
        .count = sheet->count,
        .unknown = sheet->unknown == NULL ? NULL : say(arena, SAY_KNOWN_UNKNOWN, say_part(sheet->unknown)),
        .not_for = not_for(sheet),
        .remark = rated ? say(arena, SAY_CAPACITY_BEFORE_FACTORS) : NULL,
    };
    return true;
}

static char *tell_cable(const char *kind, const char *size, bool json)
{
    int type = 0;
    struct Arena *arena = arena_new();
    struct Sheet sheet = {.arena = arena,
                          .figures = arena == NULL ? NULL : arena_array(arena, FIGURES_MOST, sizeof *sheet.figures)};
    while (type < survey_word_count(WORDS_CABLE) && strcmp(survey_word(WORDS_CABLE, type), library_text(kind)) != 0) {
        type++;
    }
    sheet.type = (enum CableType)type;
    struct KnownCable cable;
    if (sheet.figures == NULL || type == survey_word_count(WORDS_CABLE) ||
        !read_size(library_text(size), &sheet.cores, &sheet.size_mm2) || !gather_cable(&sheet, &cable)) {
        arena_free(arena);
        return NULL;
    }
    if (!json) {
        return keep(arena, document_cable_text(arena, &cable));
    }
    const struct Bytes made = document_cable_json(arena, &cable);
    return keep(arena, made.data == NULL ? "" : arena_print(arena, "%.*s", (int)made.length, made.data));
}

char *wend_cable_text(const char *kind, const char *size)
{
    return tell_cable(kind, size, false);
}

char *wend_cable_json(const char *kind, const char *size)
{
    return tell_cable(kind, size, true);
}
