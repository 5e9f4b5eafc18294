/* What is known of one cable, and the figures of one table, as text for a terminal or as CSV. */
#include "library_private.h"

#include "tables/cable_kinds.h"
#include "tables/fault_tables.h"
#include "tables/takeoff_tables.h"

#include <string.h>
#include <strings.h>

enum { CELLS_MOST = 16, DIGITS = 6, REFS_MOST = 16, INDENT = 6, LINE_MOST = 78, CORES_MOST = 5 };

/* ---- tables ---- */

struct Column {
    size_t width;
    bool words; /* to the left; figures stand to the right */
};

static bool is_figure(const char *cell, size_t length)
{
    return length == 0 || strspn(cell, "0123456789.") >= length ||
           (length == strlen("beyond") && memcmp(cell, "beyond", length) == 0);
}

/* How wide each column is, and whether what stands under its head is all figures. */
static void measure(const char *csv, struct Column columns[CELLS_MOST])
{
    bool head = true;
    for (const char *at = csv; *at != '\0'; head = false) {
        for (int c = 0; c < CELLS_MOST; c++) {
            const size_t length = strcspn(at, ",\n");
            columns[c].width = length > columns[c].width ? length : columns[c].width;
            columns[c].words = columns[c].words || (!head && !is_figure(at, length));
            at += length;
            if (*at++ == '\n') {
                break;
            }
        }
    }
}

/* Cells of CSV, none of which holds a comma, in columns. */
static void align(struct TextBuilder *out, const char *csv)
{
    struct Column columns[CELLS_MOST] = {{.width = 0}};
    measure(csv, columns);
    for (const char *at = csv; *at != '\0';) {
        for (int c = 0; c < CELLS_MOST; c++) {
            const size_t length = strcspn(at, ",\n");
            const bool last = at[length] == '\n';
            const int pad = last && columns[c].words ? 0 : (int)(columns[c].width - length);
            text_print(out, "%s%*s%.*s%*s", c > 0 ? "  " : "", columns[c].words ? 0 : pad, "", (int)length, at,
                       columns[c].words ? pad : 0, "");
            at += length + 1;
            if (last) {
                break;
            }
        }
        text_add_char(out, '\n');
    }
}

static void quote(struct TextBuilder *out, const char *text)
{
    text_add_char(out, '"');
    for (; *text != '\0'; text++) {
        text_add(out, *text == '"' ? "\"" : "");
        text_add_char(out, *text);
    }
    text_add_char(out, '"');
}

/* Each row says where it is from: a CSV has no head. */
static void add_csv(struct TextBuilder *out, const char *csv, const struct TableRef *ref)
{
    bool head = true;
    for (const char *at = csv; *at != '\0'; head = false) {
        const size_t length = strcspn(at, "\n");
        text_add_bytes(out, at, length);
        text_add(out, head ? ",source,table,trust" : ",");
        if (!head) {
            quote(out, ref->standard);
            text_add_char(out, ',');
            quote(out, ref->table);
            text_add_char(out, ',');
            quote(out, ref->seen);
        }
        text_add(out, "\r\n");
        at += length + 1;
    }
}

static void add_table(struct TextBuilder *out, int index, bool csv)
{
    const struct TableRef *ref = tables_at(index);
    struct TextBuilder cells = text_builder(out->arena);
    tables_cells(index, &cells);
    if (csv) {
        add_csv(out, text_done(&cells), ref);
    } else {
        text_print(out, "%s, Table %s: %s [%s]\n\n", ref->standard, ref->table, ref->title, ref->seen);
        align(out, text_done(&cells));
    }
}

static char *keep(struct Arena *arena, struct TextBuilder *out)
{
    const char *text = text_done(out);
    char *kept = *text == '\0' ? NULL : library_keep(arena, text);
    arena_free(arena);
    return kept;
}

char *wend_table_text(const char *name, bool csv)
{
    struct Arena *arena = arena_new();
    if (arena == NULL) {
        return NULL;
    }
    struct TextBuilder out = text_builder(arena);
    for (int i = 0; i < tables_count(); i++) {
        if (strcasecmp(tables_at(i)->table, library_text(name)) == 0) {
            text_add(&out, out.length > 0 ? "\n" : "");
            add_table(&out, i, csv);
        }
    }
    return keep(arena, &out);
}

/* ---- one cable ---- */

/* Figures, and the tables that they are from, each once. */
struct Sheet {
    struct TextBuilder out;
    const struct TableRef *refs[REFS_MOST];
    int ref_count;
};

static void add_line(struct Sheet *sheet, const char *what, const char *figure, const struct TableRef *ref)
{
    int at = 0;
    while (at < sheet->ref_count && sheet->refs[at] != ref) {
        at++;
    }
    if (at == sheet->ref_count && at < REFS_MOST) {
        sheet->refs[sheet->ref_count++] = ref;
    }
    text_print(&sheet->out, "  %-30s%-18s[%d]\n", what, figure, at + 1);
}

/* Words from a column on, wrapped. */
static void add_wrapped(struct TextBuilder *out, size_t indent, const char *text)
{
    size_t column = indent;
    while (*text != '\0') {
        const size_t length = strcspn(text, " ");
        if (column > indent && column + 1 + length > LINE_MOST) {
            text_print(out, "\n%*s", (int)indent, "");
            column = indent;
        } else if (column > indent) {
            text_add_char(out, ' ');
            column++;
        }
        text_add_bytes(out, text, length);
        column += length;
        text += length + (text[length] == ' ');
    }
    text_add_char(out, '\n');
}

static void add_sources(struct Sheet *sheet)
{
    text_add(&sheet->out, "\n");
    for (int i = 0; i < sheet->ref_count; i++) {
        const struct TableRef *ref = sheet->refs[i];
        text_print(&sheet->out, " %*s ", INDENT - 2, arena_print(sheet->out.arena, "[%d]", i + 1));
        add_wrapped(&sheet->out, INDENT,
                    arena_print(sheet->out.arena, "%s, %s: %s", ref->standard, ref->table, ref->seen));
    }
}

static void add_figure(struct Sheet *sheet, const char *what, double value, const char *unit,
                       const struct TableRef *ref)
{
    add_line(sheet, what,
             arena_print(sheet->out.arena, "%s %s", number_significant(sheet->out.arena, value, DIGITS), unit), ref);
}

static void add_capacities(struct Sheet *sheet, enum CapacityTable table, int degc, int cores, double size_mm2)
{
    for (int method = 0; table != CAPACITY_NONE && method < METHOD_COUNT; method++) {
        for (int loaded = 2; loaded <= 3 && loaded <= cores; loaded++) {
            double amperes = 0;
            if (capacity_amperes(edition_held(), table, size_mm2, (enum Method)method, loaded, &amperes)) {
                const char *column =
                    arena_print(sheet->out.arena, "method %s, %d loaded", method_name((enum Method)method), loaded);
                add_figure(sheet, arena_print(sheet->out.arena, "%s, %d degC", column, degc), amperes, "A",
                           capacity_ref(edition_held(), table));
            }
        }
    }
}

static void add_drops(struct Sheet *sheet, enum DropTable table, int cores, double size_mm2)
{
    for (int phases = 1; table != DROP_NONE && phases <= 3; phases += 2) {
        const int loaded = phases == 1 ? 2 : 3;
        struct DropFigure figure;
        if (loaded <= cores && drop_figure(edition_held(), table, size_mm2, phases, &figure)) {
            add_figure(sheet, phases == 1 ? "drop, single-phase" : "drop, three-phase", figure.z, "mV/A/m",
                       drop_ref(edition_held(), table));
        }
    }
}

static void add_body(struct Sheet *sheet, enum CableType type, int cores, double size_mm2)
{
    struct CableDimensions body;
    struct Armour armour;
    double factor = 0, spacing_m = 0, ohm_per_m = 0;
    if (conductor_resistance(size_mm2, &ohm_per_m)) {
        add_figure(sheet, "conductor, 20 degC", ohm_per_m * 1000, "ohm/km", conductor_resistance_ref());
    }
    if (armour_figures(type, cores, size_mm2, &armour)) {
        add_figure(sheet, "armour area", armour.area_mm2, "mm2", armour_ref());
        add_figure(sheet, "armour, 20 degC", armour.max_ohm_per_m * 1000, "ohm/km", armour_ref());
    }
    if (!cable_dimensions(type, cores, size_mm2, &body)) {
        return;
    }
    add_figure(sheet, "overall diameter", body.overall_mm, "mm", cable_dimensions_ref());
    add_figure(sheet, "under armour", body.under_armour_mm, "mm", cable_dimensions_ref());
    if (body.weight_kg_per_km > 0) {
        add_figure(sheet, "weight", body.weight_kg_per_km, "kg/km", cable_dimensions_ref());
    }
    if (*body.usual_gland != '\0') {
        add_line(sheet, "usual gland", body.usual_gland, cable_dimensions_ref());
    }
    if (bend_radius_factor(type, size_mm2, body.overall_mm, &factor)) {
        add_figure(sheet, "bend radius", factor * body.overall_mm, "mm", bend_radius_ref());
    }
    for (int vertical = 0; vertical < 2; vertical++) {
        if (support_spacing(survey_armoured(type), body.overall_mm, vertical == 1, &spacing_m)) {
            add_figure(sheet, vertical == 1 ? "fixings, vertical" : "fixings, horizontal", spacing_m, "m",
                       support_spacing_ref());
        }
    }
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

char *wend_cable_text(const char *kind, const char *size)
{
    int type = 0, cores = 0;
    double size_mm2 = 0;
    while (type < survey_word_count(WORDS_CABLE) && strcmp(survey_word(WORDS_CABLE, type), library_text(kind)) != 0) {
        type++;
    }
    if (type == survey_word_count(WORDS_CABLE) || !read_size(library_text(size), &cores, &size_mm2)) {
        return NULL;
    }
    struct Arena *arena = arena_new();
    if (arena == NULL) {
        return NULL;
    }
    const struct CableKind *row = cable_kind((enum CableType)type);
    struct Sheet sheet = {.out = text_builder(arena)};
    add_capacities(&sheet, row->at_70, 70, cores, size_mm2);
    add_capacities(&sheet, row->at_90, 90, cores, size_mm2);
    add_drops(&sheet, row->drop, cores, size_mm2);
    struct TextBuilder out = text_builder(arena);
    if (sheet.out.length > 0 || row->figures != FIGURES_NONE) {
        add_body(&sheet, (enum CableType)type, cores, size_mm2);
    }
    if (sheet.out.length > 0) {
        add_sources(&sheet);
        text_print(&out, "%s %d x %s mm2: %s\n\n%s\n", row->standard, cores,
                   number_significant(arena, size_mm2, DIGITS), survey_meaning(WORDS_CABLE, type),
                   text_done(&sheet.out));
        add_wrapped(&out, 0, document_words(arena, say(arena, SAY_CAPACITY_BEFORE_FACTORS)));
    }
    return keep(arena, &out);
}
