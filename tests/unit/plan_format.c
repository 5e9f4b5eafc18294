/* The table that plan.xml is written from, as data, and what follows from it. */
#include "plan_format.h"

#include <string.h>

static const struct FormatType types[] = {
#define TYPE(symbol, name, form, schema, meaning)   {name, #form, schema, NULL, WORDS_COUNT, meaning},
#define VALUES(symbol, name, form, values, meaning) {name, #form, NULL, values, WORDS_COUNT, meaning},
#define WORDS_OF(symbol, name, list, meaning)       {name, "TEXT", NULL, NULL, list, meaning},
#include "documents/xml/plan_types.inc"
};

const struct FormatType *format_type(int type)
{
    return &types[type];
}

#define ROOT(symbol, name, type, meaning)          {ROW_ROOT, #symbol, name, 0, NULL, meaning},
#define ELEMENT(symbol, name, type, meaning)       {ROW_ELEMENT, #symbol, name, 0, NULL, meaning},
#define LIST(symbol, name, type, meaning)          {ROW_LIST, #symbol, name, 0, NULL, meaning},
#define GROUP(symbol, type)                        {ROW_GROUP, #symbol, NULL, 0, NULL, NULL},
#define END                                        {ROW_END, NULL, NULL, 0, NULL, NULL},
#define ALWAYS(name, type, value, meaning)         {ROW_ALWAYS, NULL, name, TYPE_##type, NULL, meaning},
#define GIVEN(name, type, value, meaning)          {ROW_GIVEN, NULL, name, TYPE_##type, NULL, meaning},
#define LATER(name, type, meaning)                 {ROW_LATER, NULL, name, TYPE_##type, NULL, meaning},
#define TEXT(value, meaning)                       {ROW_TEXT, NULL, NULL, TYPE_WORDS, NULL, meaning},
#define ONE(symbol, item)                          {ROW_ONE, #symbol, NULL, 0, NULL, NULL},
#define MAYBE(symbol, item)                        {ROW_MAYBE, #symbol, NULL, 0, NULL, NULL},
#define EACH(symbol, list, count, item)            {ROW_EACH, #symbol, NULL, 0, list, NULL},
#define SOME(symbol, list, count, item)            {ROW_SOME, #symbol, NULL, 0, list, NULL},
#define LINES(name, list, count, value, meaning)   {ROW_LINES, NULL, name, TYPE_WORDS, list, meaning},
#define SOME_LINES(name, list, count, value, what) {ROW_SOME_LINES, NULL, name, TYPE_WORDS, list, what},
#define PART(symbol, item)                         {ROW_PART, #symbol, NULL, 0, NULL, NULL},
#define WHERE(condition, meaning)                  {ROW_WHERE, NULL, NULL, 0, NULL, meaning},
#define END_WHERE                                  {ROW_END_WHERE, NULL, NULL, 0, NULL, NULL},
#define EITHER(condition, meaning)                 {ROW_EITHER, NULL, NULL, 0, NULL, meaning},
#define OR(meaning)                                {ROW_OR, NULL, NULL, 0, NULL, meaning},
#define END_EITHER                                 {ROW_END_EITHER, NULL, NULL, 0, NULL, NULL},
const struct FormatRow format_rows[] = {
#include "documents/xml/plan_elements.inc"
};
const int format_row_count = (int)(sizeof format_rows / sizeof format_rows[0]);

bool format_is_attribute(const struct FormatRow *row)
{
    return row->kind == ROW_ALWAYS || row->kind == ROW_GIVEN || row->kind == ROW_LATER;
}

bool format_is_child(const struct FormatRow *row)
{
    return row->kind == ROW_ONE || row->kind == ROW_MAYBE || row->kind == ROW_EACH || row->kind == ROW_SOME;
}

const struct FormatRow *format_begin(const char *symbol)
{
    for (int i = 0; i < format_row_count; i++) {
        if (format_rows[i].kind <= ROW_GROUP && strcmp(format_rows[i].symbol, symbol) == 0) {
            return &format_rows[i];
        }
    }
    return NULL;
}

static int add_with_children(const struct FormatRow *begin, const struct FormatRow *order[], int count, int most)
{
    for (int i = 0; i < count; i++) {
        if (order[i] == begin) {
            return count;
        }
    }
    if (count == most) {
        return count;
    }
    order[count++] = begin;
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END; row++) {
        if (format_is_child(row) || row->kind == ROW_PART) {
            count = add_with_children(format_begin(row->symbol), order, count, most);
        }
    }
    return count;
}

int format_order(const struct FormatRow *order[], int most)
{
    for (int i = 0; i < format_row_count; i++) {
        if (format_rows[i].kind == ROW_ROOT) {
            return add_with_children(&format_rows[i], order, 0, most);
        }
    }
    return 0;
}

const char *format_unit(const char *name)
{
    static const char *const units[] = {"kg-per-m", "kg-per-km", "N-per-m", "K-m-per-W", "ohm-m", "A",   "mA",
                                        "V",        "ohm",       "Mohm",    "m",         "mm",    "mm2", "m3",
                                        "percent",  "degC",      "deg",     "N",         "kg",    "ms"};
    for (size_t i = 0; i < sizeof units / sizeof units[0]; i++) {
        const size_t length = strlen(name), tail = strlen(units[i]);
        if (length > tail && name[length - tail - 1] == '-' && strcmp(name + length - tail, units[i]) == 0) {
            return units[i];
        }
    }
    return "";
}
