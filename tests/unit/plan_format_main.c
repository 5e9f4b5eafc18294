/* plan_format schema|page: prints templates/plan.rng or routes/plan-format.md as the table has them. */
#include "plan_format.h"

#include <stdio.h>
#include <string.h>

enum { ORDER_MOST = 80, LINE = 116, BRANCH_MOST = 4 };

static void indent(int depth)
{
    printf("%*s", depth * 2, "");
}

/* ---- the schema ---- */

/* "run_end" as a definition's name is "run-end". */
static void print_symbol(const char *symbol)
{
    for (; *symbol != '\0'; symbol++) {
        putchar(*symbol == '_' ? '-' : *symbol);
    }
}

static int print_value(const char *value, int length, int used)
{
    const int wide = length + (int)strlen("<value></value>");
    if (used == 0 || used + wide > LINE) {
        printf("\n      ");
        used = 6;
    }
    printf("<value>%.*s</value>", length, value);
    return used + wide;
}

static void print_values(const struct FormatType *type)
{
    int used = 0;
    printf("\n    <choice>");
    for (const char *at = type->values; at != NULL && *at != '\0';) {
        const int length = (int)strcspn(at, " ");
        used = print_value(at, length, used);
        at += length + (at[length] == ' ');
    }
    for (int i = 0; type->values == NULL && i < survey_word_count(type->words); i++) {
        const char *word = survey_word(type->words, i);
        used = print_value(word, (int)strlen(word), used);
    }
    printf("\n    </choice>\n  ");
}

static void print_type(const struct FormatType *type)
{
    printf("  <define name=\"%s\">", type->name);
    if (type->schema != NULL) {
        printf("%s", type->schema);
    } else {
        print_values(type);
    }
    printf("</define>\n");
}

static void print_attribute(const struct FormatRow *row)
{
    const char *type = format_type(row->type)->name;
    const bool optional = row->kind != ROW_ALWAYS;
    printf("%s<attribute name=\"%s\"><ref name=\"%s\"/></attribute>%s\n", optional ? "<optional>" : "", row->name, type,
           optional ? "</optional>" : "");
}

static void print_child(const struct FormatRow *row)
{
    static const char *const how[] = {
        [ROW_ONE] = NULL,           [ROW_MAYBE] = "optional",       [ROW_EACH] = "zeroOrMore", [ROW_SOME] = "oneOrMore",
        [ROW_LINES] = "zeroOrMore", [ROW_SOME_LINES] = "oneOrMore", [ROW_PART] = NULL};
    const char *times = how[row->kind];
    if (times != NULL) {
        printf("<%s>", times);
    }
    if (row->symbol != NULL) {
        printf("<ref name=\"");
        print_symbol(row->symbol);
        printf("\"/>");
    } else {
        printf("<element name=\"%s\"><ref name=\"words\"/></element>", row->name);
    }
    if (times != NULL) {
        printf("</%s>", times);
    }
    printf("\n");
}

/* Returns the depth of the next row. */
static int print_branch(const struct FormatRow *row, int depth)
{
    switch (row->kind) {
    case ROW_WHERE: printf("<optional> <!-- %s -->\n", row->meaning); return depth + 1;
    case ROW_END_WHERE: printf("</optional>\n"); return depth;
    case ROW_EITHER:
        printf("<choice>\n");
        indent(depth + 1);
        printf("<group> <!-- %s -->\n", row->meaning);
        return depth + 2;
    case ROW_OR:
        printf("</group>\n");
        indent(depth);
        printf("<group> <!-- %s -->\n", row->meaning);
        return depth + 1;
    default:
        printf("</group>\n");
        indent(depth - 1);
        printf("</choice>\n");
        return depth - 1;
    }
}

static void print_row(const struct FormatRow *row, int *depth)
{
    *depth -= row->kind == ROW_END_WHERE || row->kind == ROW_OR || row->kind == ROW_END_EITHER;
    indent(*depth);
    if (format_is_attribute(row)) {
        print_attribute(row);
    } else if (row->kind == ROW_TEXT) {
        printf("<ref name=\"words\"/>\n");
    } else if (row->kind >= ROW_ONE && row->kind <= ROW_PART) {
        print_child(row);
    } else {
        *depth = print_branch(row, *depth);
    }
}

static void print_definition(const struct FormatRow *begin)
{
    const bool element = begin->kind != ROW_GROUP;
    int depth = element ? 3 : 2;
    if (element) {
        printf("\n  <!-- %s -->", begin->meaning);
    }
    printf("\n  <define name=\"");
    print_symbol(begin->symbol);
    printf("\">\n");
    if (element) {
        printf("    <element name=\"%s\">\n", begin->name);
    }
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END; row++) {
        print_row(row, &depth);
    }
    if (begin->kind == ROW_ROOT) {
        printf("      <ref name=\"for-templates\"/>\n");
    }
    printf("%s  </define>\n", element ? "    </element>\n" : "");
}

static void print_schema(const struct FormatRow *const *order, int count)
{
    printf(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        "<!-- The plan document, version 1; routes/plan-format.md says what it means. Made from the list that it is\n"
        "     written from (src/documents/xml/plan_elements.inc) by tests/plan_format.sh record: change it there. -->\n"
        "<grammar xmlns=\"http://relaxng.org/ns/structure/1.0\" "
        "datatypeLibrary=\"http://www.w3.org/2001/XMLSchema-datatypes\">\n"
        "  <start><ref name=\"plan\"/></start>\n"
        "  <!-- Templates find more behind it: papers.rng. -->\n"
        "  <define name=\"for-templates\"><empty/></define>\n\n");
    for (int i = 0; i < TYPES; i++) {
        print_type(format_type(i));
    }
    for (int i = 0; i < count; i++) {
        print_definition(order[i]);
    }
    printf("</grammar>\n");
}

/* ---- the page ---- */

static void print_type_row(const struct FormatType *type)
{
    printf("| %s | %s", type->name, type->meaning);
    const char *lead = ": ";
    for (const char *at = type->values; at != NULL && *at != '\0';) {
        const int length = (int)strcspn(at, " ");
        printf("%s`%.*s`", lead, length, at);
        at += length + (at[length] == ' ');
        lead = ", ";
    }
    for (int i = 0; type->words < WORDS_COUNT && i < survey_word_count(type->words); i++) {
        printf("%s`%s`", lead, survey_word(type->words, i));
        lead = ", ";
    }
    printf(" |\n");
}

struct Branches {
    int count;
    const char *words[BRANCH_MOST];
};

static void follow(struct Branches *branches, const struct FormatRow *row)
{
    if (row->kind == ROW_END_WHERE || row->kind == ROW_OR || row->kind == ROW_END_EITHER) {
        branches->count--;
    }
    if ((row->kind == ROW_WHERE || row->kind == ROW_EITHER || row->kind == ROW_OR) && branches->count < BRANCH_MOST) {
        branches->words[branches->count++] = row->meaning;
    }
}

static void print_when(const struct Branches *branches, const struct FormatRow *row)
{
    for (int i = 0; i < branches->count; i++) {
        printf("%s%s", i > 0 ? ", " : "", branches->words[i]);
    }
    if (row->kind == ROW_GIVEN) {
        printf("%sif there is one", branches->count > 0 ? ", " : "");
    } else if (row->kind == ROW_LATER) {
        printf("%snot yet", branches->count > 0 ? ", " : "");
    } else if (branches->count == 0) {
        printf("always");
    }
}

static void print_attribute_row(const struct Branches *branches, const struct FormatRow *row)
{
    const char *unit = row->name == NULL ? "" : format_unit(row->name);
    if (row->name == NULL) {
        printf("| its text |");
    } else {
        printf("| `%s` |", row->name);
    }
    printf(" %s%s%s | ", format_type(row->type)->name, *unit == '\0' ? "" : ", ", unit);
    print_when(branches, row);
    printf(" | %s |\n", row->meaning);
}

/* How often an element takes a group: what all its branches have is shown once and without them. */
static int times_taken(const struct FormatRow *begin, const char *group)
{
    int times = 0;
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END; row++) {
        times += row->kind == ROW_PART && strcmp(row->symbol, group) == 0;
    }
    return times;
}

static void print_attributes(const struct FormatRow *begin, struct Branches branches, bool *any)
{
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END; row++) {
        follow(&branches, row);
        if (row->kind == ROW_PART) {
            const bool shared = times_taken(begin, row->symbol) > 1;
            if (!shared || times_taken(row, row->symbol) > 0) {
                print_attributes(format_begin(row->symbol), shared ? (struct Branches){0} : branches, any);
            }
        } else if (format_is_attribute(row) || row->kind == ROW_TEXT) {
            printf("%s", *any ? "" : "\n| attribute | value | when | meaning |\n|---|---|---|---|\n");
            *any = true;
            print_attribute_row(&branches, row);
        }
    }
}

static const char *how_many(enum FormatKind kind)
{
    switch (kind) {
    case ROW_ONE: return "one";
    case ROW_MAYBE: return "one or none";
    case ROW_SOME:
    case ROW_SOME_LINES: return "at least one";
    default: return "any number"; /* ROW_EACH, ROW_LINES */
    }
}

static void print_child_entry(const struct Branches *branches, const struct FormatRow *row)
{
    const char *name = row->symbol != NULL ? format_begin(row->symbol)->name : row->name;
    printf("| `%s` | ", name);
    for (int i = 0; i < branches->count; i++) {
        printf("%s, ", branches->words[i]);
    }
    printf("%s | ", how_many(row->kind));
    if (row->list != NULL && *row->list != '\0') {
        printf("`%s`", row->list);
    } else {
        printf("%s", row->list != NULL ? "the list itself" : "the same name");
    }
    printf(" | %s |\n", row->symbol != NULL ? format_begin(row->symbol)->meaning : row->meaning);
}

static void print_children(const struct FormatRow *begin)
{
    struct Branches branches = {0};
    bool any = false;
    for (const struct FormatRow *row = begin + 1; row->kind != ROW_END; row++) {
        follow(&branches, row);
        if (format_is_child(row) || row->kind == ROW_LINES || row->kind == ROW_SOME_LINES) {
            printf("%s", any ? "" : "\n| in it, in this order | how many | in JSON | meaning |\n|---|---|---|---|\n");
            any = true;
            print_child_entry(&branches, row);
        }
    }
}

static void print_page(const struct FormatRow *const *order, int count)
{
    printf(
        "# The plan document, version 1\n\n"
        "`wend plan` writes `NAME.plan.xml`, for other programs. Every figure on a paper is in it first. This page "
        "and\n"
        "the schema, `templates/plan.rng`, are made from the list that the document is written from. Elements and\n"
        "attributes may be added, never renamed. A number carries no unit: the unit ends the attribute's name\n"
        "(`-mm2`, `-degC`, `-ohm`). What was not surveyed or is not known is left out, never written as 0.\n\n"
        "`wend plan FILE --format json` prints the same as one JSON object, the content of `plan`: an element is an\n"
        "object, its attributes are members, its text is the member `text`. Children of which there may be several "
        "are\n"
        "a list under the name that the tables give, which is there also when it is empty; those that are text alone\n"
        "are strings. Numbers are numbers, digit by digit as in the XML; yes and no are true and false; the kinds "
        "counts\n"
        "and check-ids are lists; all else, amounts of money too, is a string.\n\n"
        "## Kinds of value\n\n| kind | what it may be |\n|---|---|\n");
    for (int i = 0; i < TYPES; i++) {
        print_type_row(format_type(i));
    }
    printf("\n## Elements\n");
    for (int i = 0; i < count; i++) {
        if (order[i]->kind != ROW_GROUP) {
            bool any = false;
            printf("\n### `%s`\n\n%s\n", order[i]->name, order[i]->meaning);
            print_attributes(order[i], (struct Branches){0}, &any);
            print_children(order[i]);
        }
    }
}

int main(int argc, char *argv[])
{
    const struct FormatRow *order[ORDER_MOST];
    const int count = format_order(order, ORDER_MOST);
    if (argc == 2 && strcmp(argv[1], "schema") == 0) {
        print_schema(order, count);
    } else if (argc == 2 && strcmp(argv[1], "page") == 0) {
        print_page(order, count);
    } else {
        fputs("plan_format schema|page\n", stderr);
        return 2;
    }
    return ferror(stdout) != 0;
}
