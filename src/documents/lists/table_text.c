/* The figures of a published table in columns for a terminal, or as CSV. */
#include "documents/documents.h"

#include <string.h>

enum { CELLS_MOST = 16 };

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
static void add_csv(struct TextBuilder *out, const struct KnownTable *table)
{
    bool head = true;
    for (const char *at = table->cells; *at != '\0'; head = false) {
        const size_t length = strcspn(at, "\n");
        text_add_bytes(out, at, length);
        text_add(out, head ? ",source,table,trust" : ",");
        if (!head) {
            quote(out, table->source.standard);
            text_add_char(out, ',');
            quote(out, table->source.table);
            text_add_char(out, ',');
            quote(out, table->source.trust);
        }
        text_add(out, "\r\n");
        at += length + 1;
    }
}

const char *document_table_text(struct Arena *arena, const struct KnownTable *table, bool csv)
{
    struct TextBuilder out = text_builder(arena);
    if (csv) {
        add_csv(&out, table);
    } else {
        text_print(&out, "%s, Table %s: %s [%s]\n\n", table->source.standard, table->source.table, table->title,
                   table->source.trust);
        align(&out, table->cells);
    }
    return text_done(&out);
}
