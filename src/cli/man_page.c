/* The pages of the manual as mdoc source, made from what the program prints itself: help, and the manual of the route
 * and order files, whose columns become lists. */
#include "options_private.h"

#include <ctype.h>
#include <stdio.h>
#include <string.h>

enum { TEXT_COLUMN = 22, LINE_MOST = 400 };
static const char price_heading[] = "THE PRICE LIST", order_heading[] = "THE ORDER FILE, VERSION 1",
                  labour_heading[] = "LABOUR FIGURES";

/* One line of source. A point or a quote at its beginning, and a backslash anywhere, would be read as an instruction.
 */
static void put_line(const char *text, size_t length)
{
    if (length > 0 && (text[0] == '.' || text[0] == '\'')) {
        fputs("\\&", stdout);
    }
    for (size_t i = 0; i < length; i++) {
        if (text[i] == '\\') {
            fputs("\\e", stdout);
        } else {
            putchar(text[i]);
        }
    }
    putchar('\n');
}

/* A sentence begins a line, so that the blank behind it is of the right width. */
static void put_sentences(const char *text, size_t length)
{
    size_t from = 0;
    for (size_t i = 0; i + 2 < length; i++) {
        if (strchr(".?!", text[i]) != NULL && text[i + 1] == ' ' && isupper((unsigned char)text[i + 2])) {
            put_line(text + from, i + 1 - from);
            from = i + 2;
        }
    }
    put_line(text + from, length - from);
}

static size_t line_length(const char *text)
{
    return strcspn(text, "\n");
}

static bool indented(const char *line)
{
    return strncmp(line, "  ", 2) == 0;
}

/* Lines that are indented stand as they are; an empty one parts paragraphs. */
static void put_prose(const char *text, const char *end)
{
    bool as_it_stands = false, apart = false;
    text += strspn(text, "\n");
    for (; text < end; text = next_line(text)) {
        const size_t length = line_length(text);
        if (indented(text) != as_it_stands && length > 0) {
            puts(as_it_stands ? ".Ed" : ".Bd -literal -offset indent");
            as_it_stands = !as_it_stands;
            apart = apart && !as_it_stands;
        }
        if (length == 0) {
            apart = !as_it_stands;
        } else if (as_it_stands) {
            put_line(text + 2, length - 2);
        } else {
            fputs(apart ? ".Pp\n" : "", stdout);
            apart = false;
            put_sentences(text, length);
        }
    }
    fputs(as_it_stands ? ".Ed\n" : "", stdout);
}

/* ---- the route file and the order file ---- */

/* "segments[]: a segment of the way", and below it the keys */
static bool begins_table(const char *line)
{
    const char *below = next_line(line);
    return line_length(line) > 0 && !indented(line) && indented(below) && below[2] != ' ';
}

/* A key in the second column, what is said of it from TEXT_COLUMN on: those lines stand as they are. */
static const char *put_table(const char *line)
{
    const size_t length = line_length(line);
    const char *colon = memchr(line, ':', length);
    const size_t title = colon != NULL ? (size_t)(colon - line) : length;
    printf(".Ss %.*s\\&\n", (int)title, line); /* a bracket at its end is no bracket of a sentence */
    if (colon != NULL) {
        put_sentences(colon + 2, length - title - 2);
    }
    puts(".Bl -tag -width 14n");
    bool open = false;
    for (line = next_line(line); line_length(line) > 0; line = next_line(line)) {
        const size_t key = line[2] != ' ' ? strcspn(line + 2, " \n") : 0;
        if (key > 0) {
            printf("%s.It Cm %.*s\n.Bd -literal -compact\n", open ? ".Ed\n" : "", (int)key, line + 2);
            open = true;
        }
        if (line_length(line) > TEXT_COLUMN) {
            put_line(line + TEXT_COLUMN, line_length(line) - TEXT_COLUMN);
        }
    }
    printf("%s.El\n", open ? ".Ed\n" : "");
    return line;
}

/* What the manual prints between two of its headings. */
static void put_manual(const char *text, const char *end)
{
    while (text < end) {
        if (begins_table(text)) {
            text = put_table(text);
            continue;
        }
        const char *prose = text;
        while (text < end && !begins_table(text)) {
            text = next_line(text);
        }
        put_prose(prose, text);
    }
}

static const char *after_heading(const char *manual, const char *heading)
{
    const char *found = strstr(manual, heading);
    return found == NULL ? manual + strlen(manual) : next_line(next_line(found));
}

enum FilePage { ROUTE_PAGE = 1, ORDER_PAGE, LABOUR_PAGE };

static bool put_file_page(enum FilePage page)
{
    char *manual = wend_manual();
    if (manual == NULL) {
        return false;
    }
    const char *route = next_line(next_line(manual));
    const char *orders = strstr(manual, order_heading);
    const char *prices = strstr(manual, price_heading);
    const char *end = manual + strlen(manual);
    orders = orders != NULL ? orders : end;
    prices = prices != NULL ? prices : end;
    const char *labour = strstr(prices, labour_heading);
    labour = labour != NULL ? labour : end;
    puts(".Sh DESCRIPTION");
    if (page == LABOUR_PAGE) {
        put_manual(after_heading(labour, labour_heading), end);
    } else if (page == ORDER_PAGE) {
        put_manual(after_heading(manual, order_heading), prices);
    } else {
        put_manual(route, orders);
        printf(".Sh %s\n", price_heading);
        put_prose(after_heading(manual, price_heading), labour);
    }
    wend_text_free(manual);
    return true;
}

/* ---- the program ---- */

static void put_option(const struct OptionRow *row)
{
    printf(".It %s%s%sFl Fl %s%s%s\n", *row->letter != '\0' ? "Fl " : "", *row->letter != '\0' ? row->letter + 1 : "",
           *row->letter != '\0' ? " , " : "", row->word + 2, *row->takes != '\0' ? " Ar " : "", row->takes);
    put_sentences(row->summary, strlen(row->summary));
}

static void put_command(const struct CommandRow *row)
{
    printf(".Ss %s\n", row->word);
    put_prose(row->help, row->help + strlen(row->help));
    puts(".Bl -tag -width Ds");
    for (int i = 0; option_row(i) != NULL; i++) {
        if ((option_row(i)->commands >> row->command & 1U) != 0) {
            put_option(option_row(i));
        }
    }
    puts(".El");
}

static void put_program_page(void)
{
    puts(".Sh SYNOPSIS");
    for (int i = 0; command_row(i) != NULL; i++) {
        if (*command_row(i)->summary == '\0') {
            continue;
        }
        printf(".Nm wend\n.Cm %s\n", command_row(i)->word);
        if (*command_row(i)->arguments != '\0') {
            put_line(command_row(i)->arguments, strlen(command_row(i)->arguments));
        }
    }
    puts(".Nm wend\n.Cm help\n.Op Ar WORD\n.Nm wend\n.Fl Fl version\n.Sh DESCRIPTION");
    put_prose(options_introduction(), options_introduction() + strlen(options_introduction()));
    puts(".Sh COMMANDS");
    for (int i = 0; command_row(i) != NULL; i++) {
        if (*command_row(i)->summary != '\0')
            put_command(command_row(i));
    }
    puts(".Sh NOTES");
    put_prose(options_epilogue(), options_epilogue() + strlen(options_epilogue()));
}

static const struct {
    const char *name, *about, *others;
    int section;
} pages[] = {
    {"wend", "plan electrical cable runs from a surveyed route",
     ".Xr wend-labour 5 ,\n.Xr wend-order 5 ,\n.Xr wend-route 5", 1},
    {"wend-route", "route file of wend: what was surveyed, as YAML",
     ".Xr wend 1 ,\n.Xr wend-labour 5 ,\n.Xr wend-order 5", 5},
    {"wend-order", "order file of wend: who buys, from whom, where to and when", ".Xr wend 1 ,\n.Xr wend-route 5", 5},
    {"wend-labour", "labour figures of wend: how long work takes and what it costs", ".Xr wend 1 ,\n.Xr wend-route 5",
     5},
};
enum { PAGES = (int)(sizeof pages / sizeof pages[0]) };

int man_page_print(const char *name)
{
    int page = 0;
    while (page < PAGES && strcmp(pages[page].name, name) != 0) {
        page++;
    }
    if (page == PAGES) {
        fprintf(stderr,
                "wend: error: there is no page %s; the pages are wend, wend-route, wend-order and wend-labour\n", name);
        return EXIT_USAGE;
    }
    printf(".Dd %s\n.Dt ", WEND_RELEASE_DATE);
    for (const char *at = name; *at != '\0'; at++) {
        putchar(toupper((unsigned char)*at));
    }
    printf(" %d\n.Os\n.Sh NAME\n.Nm %s\n.Nd %s\n", pages[page].section, name, pages[page].about);
    if (page == 0) {
        put_program_page();
    } else if (!put_file_page((enum FilePage)page)) {
        return report_not_made();
    }
    printf(".Sh SEE ALSO\n%s\n", pages[page].others);
    return 0;
}
