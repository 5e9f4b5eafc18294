/* The parts list read back by a reader of our own that follows RFC 4180 to the letter. */
#include "document_suites.h"
#include "plan_fixture.h"
#include "said.h"

#include <string.h>

enum { COLUMNS = 20, ROWS_MOST = 64, CELL_MOST = 4096 };

struct Sheet {
    int rows;
    char cells[ROWS_MOST][COLUMNS][CELL_MOST];
};

/* One cell from *at; leaves *at on the comma or the line end behind it. Refuses a quote inside an unquoted cell. */
static bool read_cell(const char **at, const char *end, char *cell)
{
    size_t length = 0;
    bool quoted = *at < end && **at == '"';
    *at += quoted;
    while (*at < end) {
        char c = **at;
        if (quoted && c == '"') {
            if (*at + 1 < end && (*at)[1] == '"') {
                (*at)++;
            } else {
                (*at)++;
                cell[length] = '\0';
                return *at < end && (**at == ',' || **at == '\r');
            }
        } else if (!quoted && (c == ',' || c == '\r')) {
            cell[length] = '\0';
            return true;
        } else if (!quoted && (c == '"' || c == '\n')) {
            return false;
        }
        if (length + 1 >= CELL_MOST) {
            return false;
        }
        cell[length++] = c;
        (*at)++;
    }
    return false;
}

static bool read_sheet(struct Bytes bytes, struct Sheet *sheet)
{
    const char *at = bytes.data, *end = bytes.data + bytes.length;
    for (sheet->rows = 0; at < end; sheet->rows++) {
        if (sheet->rows == ROWS_MOST) {
            return false;
        }
        for (int column = 0; column < COLUMNS; column++) {
            if (!read_cell(&at, end, sheet->cells[sheet->rows][column])) {
                return false;
            }
            bool last = column == COLUMNS - 1;
            if (last ? (end - at < 2 || at[0] != '\r' || at[1] != '\n') : *at != ',') {
                return false;
            }
            at += last ? 2 : 1;
        }
    }
    return true;
}

static struct Sheet *sheet_of(struct Arena *arena, enum FixtureKind kind, const struct PartsList **parts)
{
    *parts = fixture_parts(arena, fixture_plan(arena, kind));
    struct Sheet *sheet = arena_alloc(arena, sizeof *sheet);
    ck_assert_ptr_nonnull(sheet);
    ck_assert(read_sheet(document_parts_csv(arena, *parts, VERDICT_OPEN, "0B8D-48AD"), sheet));
    return sheet;
}

/* Articles, remarks, what is cut, totals. */
static int rows_due(const struct PartsList *parts)
{
    int rows = 1 + parts->count + parts->note_count + parts->total_count + (parts->unpriced_count > 0 ? 1 : 0);
    for (int i = 0; i < parts->cut_count; i++) {
        rows += 1 + parts->cuts[i].opened_count;
    }
    return rows + (parts->prices_note != NULL ? 1 : 0);
}

START_TEST(reads_back)
{
    struct Arena *arena = arena_new();
    const struct PartsList *parts = NULL;
    const struct Sheet *sheet = sheet_of(arena, FIXTURE_EIGHT, &parts);
    static const char *const head[COLUMNS] = {
        "line",     "quantity", "unit",  "description", "standard", "for",   "note", "needed", "pack", "packs",
        "length-m", "code",     "price", "price-unit",  "currency", "total", "buy",  "asked",  "plan", "sheet-mark"};
    for (int column = 0; column < COLUMNS; column++) {
        ck_assert_str_eq(sheet->cells[0][column], head[column]);
    }
    ck_assert_int_eq(sheet->rows, rows_due(parts));
    for (int i = 0; i < parts->count; i++) {
        double quantity = 0;
        const char *cell = sheet->cells[i + 1][1];
        ck_assert(number_read(cell, strlen(cell), &quantity));
        ck_assert_str_eq(sheet->cells[i + 1][0], arena_print(arena, "%d", i + 1));
        ck_assert_str_eq(sheet->cells[i + 1][2], parts->parts[i].unit);
        ck_assert_str_eq(sheet->cells[i + 1][3], said(arena, parts->parts[i].description));
        ck_assert_str_eq(sheet->cells[i + 1][4], parts->parts[i].standard);
        ck_assert_str_eq(sheet->cells[i + 1][5],
                         said(arena, parts_uses_said(arena, parts->parts[i].use_count, parts->parts[i].uses)));
        ck_assert_str_eq(sheet->cells[i + 1][8], parts->parts[i].pack > 0 ? "100" : "");
        ck_assert_str_eq(sheet->cells[i + 1][11], parts->parts[i].code);
        const struct Part *part = &parts->parts[i];
        const bool by_pack = part->packs > 0;
        const double bought = !by_pack                        ? part->quantity
                              : text_same(part->unit, "pack") ? part->packs
                                                              : part->pack * part->packs;
        bool cut = false;
        for (int k = 0; k < parts->cut_count; k++) {
            cut = cut || (text_same(parts->cuts[k].code, part->code) && parts->cuts[k].opened_count > 0);
        }
        ck_assert_double_eq_tol(quantity, bought, 1e-9);
        ck_assert_str_eq(sheet->cells[i + 1][17], number_significant(arena, cut ? part->needed : part->quantity, 9));
        ck_assert_msg((strstr(sheet->cells[i + 1][16], " of ") != NULL) == (by_pack || cut), "%s",
                      sheet->cells[i + 1][16]);
    }
    /* remarks have no line number and no quantity: they are not articles */
    for (int i = 0; i < parts->note_count; i++) {
        int row = 1 + parts->count + i;
        ck_assert_str_eq(sheet->cells[row][0], "");
        ck_assert_str_eq(sheet->cells[row][1], "");
        ck_assert_str_eq(sheet->cells[row][6], said(arena, parts->notes[i]));
    }
    arena_free(arena);
}
END_TEST

/* What a spreadsheet would run, wherever it might look for the beginning of a cell. */
static bool runs_as_formula(const char *cell)
{
    while (*cell == ' ' || strncmp(cell, "\xC2\xA0", 2) == 0 || strncmp(cell, "\xE3\x80\x80", 3) == 0) {
        cell += *cell == ' ' ? 1 : *cell == '\xC2' ? 2 : 3;
    }
    static const char *const leads[] = {
        "=", "+", "-", "@", "\t", "\r", "\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"};
    for (size_t i = 0; i < sizeof leads / sizeof leads[0]; i++) {
        if (strncmp(cell, leads[i], strlen(leads[i])) == 0) {
            return true;
        }
    }
    return false;
}

START_TEST(no_cell_is_a_formula)
{
    struct Arena *arena = arena_new();
    const struct PartsList *parts = NULL;
    const struct Sheet *sheet = sheet_of(arena, FIXTURE_HOSTILE, &parts);
    ck_assert_int_eq(sheet->rows, rows_due(parts));
    for (int row = 0; row < sheet->rows; row++) {
        for (int column = 0; column < COLUMNS; column++) {
            const char *cell = sheet->cells[row][column];
            ck_assert_msg(!runs_as_formula(cell), "row %d: %s", row, cell);
            for (const char *piece = strchr(cell, ';'); piece != NULL; piece = strchr(piece + 1, ';')) {
                ck_assert_msg(!runs_as_formula(piece + 1), "row %d: %s", row, cell);
            }
            for (const char *at = cell; *at != '\0'; at++) {
                if ((unsigned char)*at < 0x20) {
                    ck_abort_msg("row %d: control character", row);
                }
            }
        }
    }
    arena_free(arena);
}
END_TEST

static const struct {
    const char *text, *cell;
} cells[] = {
    {"plain", "plain"},
    {"=1+1", "'=1+1"},
    {"  +44", "  '+44"},
    {"\t-2", " '-2"},
    {"@x", "'@x"},
    {"\xC2\xA0=x", "\xC2\xA0'=x"},
    {"\xEF\xBC\x9Dx", "'\xEF\xBC\x9Dx"},
    {"\xE2\x80\xAE=x", "'=x"}, /* a direction mark hides nothing */
    {"a=b", "a=b"},
    {"20 mm; =x", "20 mm; '=x"},
    {"one\r\ntwo", "one  two"},
    {"\"quoted\", yes", "\"quoted\", yes"},
    {"bad\xFF"
     "byte",
     "bad\xEF\xBF\xBD"
     "byte"},
};

START_TEST(defuses)
{
    struct Arena *arena = arena_new();
    const struct Part part = {
        .code = "c", .description = as_is(arena, cells[_i].text), .standard = "", .quantity = 1, .unit = "each"};
    const struct PartsList list = {.count = 1, .parts = &part};
    struct Sheet *sheet = arena_alloc(arena, sizeof *sheet);
    ck_assert_ptr_nonnull(sheet);
    ck_assert(read_sheet(document_parts_csv(arena, &list, VERDICT_PASS, "0B8D-48AD"), sheet));
    ck_assert_str_eq(sheet->cells[1][3], cells[_i].cell);
    arena_free(arena);
}
END_TEST

#define MADE_UP(text)                                                                                                  \
    &(const struct Say)                                                                                                \
    {                                                                                                                  \
        .id = SAY_AS_IS, .count = 1, .args = (const struct SayArg[])                                                   \
        {                                                                                                              \
            {                                                                                                          \
                .kind = SAY_ARG_NAME, .name = (text)                                                                   \
            }                                                                                                          \
        }                                                                                                              \
    }
static const int hostile_pieces[] = {0, 1};
static const struct PartPiece hostile_piece[] = {{.name = "=run", .length_m = 40},
                                                 {.name = "@two;=3", .length_m = 12.5}};
static const struct PartOpened hostile_opened[] = {{.bought = true,
                                                    .length_m = 100,
                                                    .used_m = 52.5,
                                                    .left_m = 47.5,
                                                    .piece_count = 2,
                                                    .pieces = hostile_pieces,
                                                    .what = MADE_UP("drum of 100 m"),
                                                    .piece_text = MADE_UP("=run 40 m, @two;=3 12.5 m"),
                                                    .left_text = MADE_UP("47.5 m")}};
static const struct PartsCut hostile_cut = {.code = "cable",
                                            .description = MADE_UP("=cable"),
                                            .whole = PART_DRUMS,
                                            .piece_count = 2,
                                            .pieces = hostile_piece,
                                            .planned = true,
                                            .opened_count = 1,
                                            .opened = hostile_opened,
                                            .buy_text = MADE_UP("1 drum of 100 m"),
                                            .result_text = MADE_UP("100 m bought"),
                                            .note = MADE_UP("-note")};

/* What is cut and what it costs stand in rows without a line number, in the columns that are there; names stay inert.
 */
START_TEST(cutting_and_prices_are_rows_of_the_same_columns)
{
    struct Arena *arena = arena_new();
    const struct Part part = {.code = "cable",
                              .description = as_is(arena, "cable"),
                              .standard = "",
                              .quantity = 100,
                              .needed = 52.5,
                              .unit = "m"};
    const struct PartPrice price = {
        .known = true, .each = 635, .total = 63500, .unit = "m", .each_text = "6.35", .total_text = "635.00"};
    const struct PartsTotal total = {"EUR", 2, 2, 1, 63500, "635.00", "", ""};
    const struct Say *const unpriced[] = {as_is(arena, "gland")};
    const struct PartsList list = {.count = 1,
                                   .parts = &part,
                                   .cut_count = 1,
                                   .cuts = &hostile_cut,
                                   .prices = &price,
                                   .total_count = 1,
                                   .totals = &total,
                                   .unpriced_count = 1,
                                   .unpriced = unpriced,
                                   .unpriced_text = as_is(arena, "not in any total: gland")};
    struct Sheet *sheet = arena_alloc(arena, sizeof *sheet);
    ck_assert_ptr_nonnull(sheet);
    ck_assert(read_sheet(document_parts_csv(arena, &list, VERDICT_PASS, "0B8D-48AD"), sheet));
    ck_assert_int_eq(sheet->rows, 6);
    ck_assert_str_eq(sheet->cells[1][1], "100"); /* what is bought, and what it is asked for */
    ck_assert_str_eq(sheet->cells[1][16], "1 drum of 100 m");
    ck_assert_str_eq(sheet->cells[1][17], "52.5");
    ck_assert_str_eq(sheet->cells[1][12], "6.35");
    ck_assert_str_eq(sheet->cells[1][13], "m");
    ck_assert_str_eq(sheet->cells[1][14], "EUR");
    ck_assert_str_eq(sheet->cells[1][15], "635.00");
    for (int row = 2; row < sheet->rows; row++) {
        ck_assert_str_eq(sheet->cells[row][0], "");
        ck_assert_str_eq(sheet->cells[row][1], "");
        for (int column = 0; column < COLUMNS; column++) {
            ck_assert(!runs_as_formula(sheet->cells[row][column]));
        }
    }
    ck_assert_str_eq(sheet->cells[2][3], "Cutting plan: =cable");
    ck_assert_str_eq(sheet->cells[2][6], "100 m bought; '-note");
    ck_assert_str_eq(sheet->cells[3][3], "Cut from a drum of 100 m");
    ck_assert_str_eq(sheet->cells[3][5], "'=run 40 m, @two;'=3 12.5 m");
    ck_assert_str_eq(sheet->cells[3][6], "47.5 m left over");
    ck_assert_str_eq(sheet->cells[4][14], "EUR");
    ck_assert_str_eq(sheet->cells[4][15], "635.00");
    ck_assert_str_eq(sheet->cells[5][6], "not in any total: gland");
    arena_free(arena);
}
END_TEST

/* The reader itself refuses what is not RFC 4180, or the tests above would say nothing. */
START_TEST(reader_refuses)
{
    static const char *const wrong[] = {
        "a,b\r\n", "a,b,c,d,e,f,g,h,i,j,k,l,m,n,o,p,q,r,s,t\n", "a\"x,b,c,d,e,f,g,h,i,j,k,l,m,n,o,p,q,r,s,t\r\n",
        "\"a,b,c,d,e,f,g,h,i,j,k,l,m,n,o,p,q,r,s,t\r\n", "a,b,c,d,e,f,g,h,i,j,k,l,m,n,o,p,q,r,s,t,u\r\n"};
    struct Arena *arena = arena_new();
    struct Sheet *sheet = arena_alloc(arena, sizeof *sheet);
    ck_assert_ptr_nonnull(sheet);
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        ck_assert(!read_sheet((struct Bytes){wrong[i], strlen(wrong[i])}, sheet));
    }
    arena_free(arena);
}
END_TEST

Suite *suite_parts_csv(void)
{
    Suite *suite = suite_create("parts.csv");
    TCase *tests = tcase_create("csv");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, reads_back);
    tcase_add_test(tests, no_cell_is_a_formula);
    tcase_add_loop_test(tests, defuses, 0, (int)(sizeof cells / sizeof cells[0]));
    tcase_add_test(tests, cutting_and_prices_are_rows_of_the_same_columns);
    tcase_add_test(tests, reader_refuses);
    suite_add_tcase(suite, tests);
    return suite;
}
