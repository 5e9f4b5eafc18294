/* The command line described once: commands, their help, and reading them. */
#include "cli_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct CommandRow {
    const char *word;
    enum Command command;
    const char *arguments;
    const char *summary;
    const char *help;
    int least, most;  /* words besides options */
    const char *lack; /* what to say when there are fewer */
    bool takes_out, takes_growth, takes_order, takes_templates, takes_strict;
};

enum { ANY_NUMBER = 1 << 20 };

static const struct CommandRow commands[] = {
    {"plan", COMMAND_PLAN, "FILE [--out DIR] ...", "decide and write the documents",
     "Reads the route file, decides, and writes into DIR (default: the folder you are\n"
     "in):\n"
     "  NAME.plan.xml      every figure, for other programs\n"
     "  NAME.diagram.svg   the run drawn to scale, for screen and A4\n"
     "  NAME.parts.csv     what to order, for the wholesaler's counter\n"
     "  NAME.brief.html    for the crew: what to do, stretch by stretch\n"
     "  NAME.parts.html    what to pick and load, by aisle\n"
     "  NAME.design.html   every figure with its source, for designer and inspector\n"
     "  NAME.test.html     what to measure and what to expect; no certificate\n"
     "  NAME.pack.html     all of these in one file\n"
     "and prints a summary. The list of a plan that fails is NAME.FAIL.parts.csv;\n"
     "one of the other name from before gets .old after it. NAME is the file's\n"
     "name without .yaml. Nothing is written\n"
     "when the file is wrong, and files that were there before stay whole when\n"
     "writing fails. A file of that name that wend did not write, or that it read for\n"
     "the plan, is never replaced: move it away, or write elsewhere.\n"
     "With --templates DIR the HTML papers are made with the templates in DIR, where\n"
     "it has any; without it with those in $XDG_CONFIG_HOME/wend/templates, or else\n"
     "in ~/.config/wend/templates. See wend help templates.\n",
     1, 1, "give one, or - for standard input", true, false, false, true, true},
    {"check", COMMAND_CHECK, "FILE...", "the same without writing anything",
     "Reads each route file and decides; prints one line for each, PASS, OPEN or FAIL\n"
     "and why, and what is wrong with it. Writes nothing. With --strict OPEN is exit\n"
     "status 1.\n",
     1, ANY_NUMBER, "give one, or - for standard input", false, false, false, false, true},
    {"options", COMMAND_OPTIONS, "FILE [RUN] [--growth 25 %]", "every size tried, side by side",
     "Prints every size that was tried for RUN (left out: for each power run): what it\n"
     "carries and where, voltage drop, earth fault loop, protective conductor, gland,\n"
     "weight, and which checks it fails; for armoured cable with every protective\n"
     "conductor that its cores allow. Marks the size that is taken with > and says why\n"
     "the smaller ones fail. With --growth also the first size that would pass with\n"
     "every load that much larger. Writes nothing.\n",
     1, 2, "give one, or - for standard input", false, true, false, false, true},
    {"explain", COMMAND_EXPLAIN, "FILE CHECK[:SEGMENT] [RUN]", "how a figure comes about, by steps",
     "Prints how the figure behind a check was found: formula, numbers, result and\n"
     "source of each step, to be followed with a pocket calculator. CHECK is a check\n"
     "of the summary: capacity, drop, bend, pull ... With :SEGMENT the part of that\n"
     "stretch, for capacity and drop, or the check of that stretch, as pull:path.\n"
     "RUN left out: for each run that has the check. Writes nothing.\n",
     2, 3, "for example: wend explain barn.yaml drop", false, false, false, false, false},
    {"order", COMMAND_ORDER, "FILE... [--order FILE] ...", "several jobs' parts as one order",
     "Plans each route file and writes the parts of all of them as one order into DIR\n"
     "(--out, default: the folder you are in): one line an article, packs rounded up\n"
     "once for all jobs, each line split by job again so that bags can be labelled.\n"
     "Each job keeps its own spare; lengths of cable are listed one by one.\n"
     "  NAME.order.csv   for a counter or a spreadsheet\n"
     "  NAME.order.xml   OASIS UBL 2.1 Order, for a wholesaler's system\n"
     "The XML needs to know who orders, from whom and when:\n"
     "  wend-order: 1\n"
     "  order: {reference: PO 1042, date: 2026-05-14, currency: GBP}\n"
     "  buyer: {name: Alder Electrical, town: Millbrook, country: GB, account: A-77}\n"
     "  seller: {name: Fenway Supplies, town: Harrowby, country: GB}\n"
     "  delivery: {street: Mill Lane 4, town: Millbrook, country: GB}\n"
     "Save it as order.yaml and type:\n"
     "  wend order barn.yaml shed.yaml --order order.yaml\n"
     "NAME is the reference. Without an order file there is just order.csv.\n"
     "--date 2026-05-14 overrides the file's date; no clock is read. A plan that\n"
     "fails a check is named at the top of both (exit status 1); when a file is\n"
     "wrong nothing is written. A file named twice, and two of one name, are refused\n"
     "unless --twice says that it is meant: they are then told apart as barn and\n"
     "barn (2). wend manual tells every key of the order file.\n",
     1, ANY_NUMBER, "give one or more, or - for standard input", true, false, true, false, true},
    {"manual", COMMAND_MANUAL, "", "every key and word of the route file",
     "Prints the reference of the route file: each key, what it takes, its range and\n"
     "default.\n",
     0, 0, "", false, false, false, false, false},
    {"tables", COMMAND_TABLES, "", "the tables that figures come from",
     "Prints each published table held here, its edition, and how sure its figures\n"
     "are.\n",
     0, 0, "", false, false, false, false, false},
    {"templates", COMMAND_TEMPLATES, "--out DIR [--force]", "the templates of the papers",
     "Writes the built-in templates (XSLT 1.0) and the style sheet into DIR. Change\n"
     "what you want, delete the rest, and give DIR to wend plan --templates DIR. A\n"
     "template sees plan.xml with the diagram and the style sheet added, and nothing\n"
     "else: it cannot read or write a file, reach a network or run anything. One that\n"
     "is in DIR already and was changed is kept, unless --force is given.\n",
     0, 0, "", true, false, false, false, false},
};
enum { COMMAND_ROWS = (int)(sizeof commands / sizeof commands[0]) };

static const char introduction[] = "Wend plans one cable run to an outbuilding from a route file: what you surveyed,\n"
                                   "as YAML.\n"
                                   "\n";
static const char epilogue[] = "\n"
                               "A first route file:\n"
                               "  wend: 1\n"
                               "  job: {title: Boathouse supply}\n"
                               "  supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                               "  runs:\n"
                               "    feeder:\n"
                               "      load: {current: 26 A}\n"
                               "      cable: {type: BS5467, cores: 3}\n"
                               "  segments:\n"
                               "    - {name: gable, way: wall, length: 6.5 m, rise: 2.5 m}\n"
                               "    - {name: track, way: duct, length: 24 m, duct: {size: 63 mm}, depth: 600 mm}\n"
                               "Save it as boathouse.yaml and type: wend plan boathouse.yaml\n"
                               "\n"
                               "Verdicts: PASS, every check that matters was made and passes; OPEN, none fails\n"
                               "but one that matters could not be made, and what would settle it; FAIL.\n"
                               "Exit status: 0 PASS or OPEN, 1 FAIL (with --strict, for plan, check, options\n"
                               "and order, OPEN too); 2 the file or the command line is wrong; 3 something could\n"
                               "not be read or written. Colour is used on terminals only;\n"
                               "NO_COLOR turns it off. The wiring rules in force where you\n"
                               "work and a licensed electrician have the last word.\n";

void options_help(enum Command command)
{
    for (int i = 0; i < COMMAND_ROWS; i++) {
        if (commands[i].command == command) {
            printf("wend %s %s\n\n%s", commands[i].word, commands[i].arguments, commands[i].help);
            return;
        }
    }
    fputs(introduction, stdout);
    for (int i = 0; i < COMMAND_ROWS; i++) {
        printf("  wend %-10s%-27s%s\n", commands[i].word, commands[i].arguments, commands[i].summary);
    }
    printf("  wend %-10s%-27s%s\n", "help", "[COMMAND]", "this, or more on one command");
    printf("  wend %-37s%s\n", "--version", "which version this is");
    fputs(epilogue, stdout);
}

static const struct CommandRow *find_command(const char *word)
{
    for (int i = 0; i < COMMAND_ROWS; i++) {
        if (strcmp(commands[i].word, word) == 0) {
            return &commands[i];
        }
    }
    return NULL;
}

static bool complain(const char *what, const char *word, const char *advice)
{
    fprintf(stderr, "wend: error: %s%s%s; %s\n", what, word[0] != '\0' ? " " : "", word, advice);
    return false;
}

static bool is_help(const char *word)
{
    return strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0;
}

/* Digits, and a point with digits after it where there is one: nothing else that strtod() takes. */
static bool read_number(const char *text, size_t length, double *out)
{
    enum { DIGITS_MOST = 15 };
    const size_t whole = strspn(text, "0123456789");
    const size_t part = text[whole] == '.' ? strspn(text + whole + 1, "0123456789") : 0;
    const bool leading_zero = whole > 1 && text[0] == '0';
    if (whole == 0 || leading_zero || whole + part > DIGITS_MOST || length != whole + (part > 0 ? part + 1 : 0)) {
        return false;
    }
    *out = strtod(text, NULL); /* the sign for decimals is a point: nobody calls setlocale() */
    return true;
}

/* "25 %", "25%": a number and its unit, as in the route file. */
static bool read_percent(const char *text, double *out)
{
    size_t length = strlen(text);
    if (length == 0 || text[length - 1] != '%') {
        return complain("--growth needs a unit: not", text, "write it like --growth 25 %");
    }
    length--;
    while (length > 0 && text[length - 1] == ' ') {
        length--;
    }
    if (!read_number(text, length, out) || *out > 1000) {
        return complain("--growth takes 0 to 1000 %, not", text, "write it like --growth 25 %");
    }
    return true;
}

/* The shell makes two words of 25 %; they belong together. */
static bool read_growth(int argc, char *argv[], int *at, struct Options *out)
{
    static const char example[] = "for example --growth 25 %";
    char text[32];
    const char *given = strncmp(argv[*at], "--growth=", 9) == 0 ? argv[*at] + 9 : NULL;
    if (given == NULL) {
        if (*at + 1 >= argc) {
            return complain("--growth needs a percentage", "", example);
        }
        given = argv[++*at];
    }
    const bool unit_apart = strchr(given, '%') == NULL && *at + 1 < argc && strcmp(argv[*at + 1], "%") == 0;
    const int length = snprintf(text, sizeof text, "%s%s", given, unit_apart ? "%" : "");
    if (length < 0 || (size_t)length >= sizeof text) {
        return complain("--growth takes 0 to 1000 %, not", given, example);
    }
    *at += unit_apart ? 1 : 0;
    return read_percent(text, &out->growth_percent);
}

/* "--date X" or "--date=X" */
static bool is_option(const char *word, const char *option)
{
    const size_t length = strlen(option);
    return strncmp(word, option, length) == 0 && (word[length] == '\0' || word[length] == '=');
}

static bool read_order_option(int argc, char *argv[], int *at, struct Options *out)
{
    const char *word = argv[*at];
    const bool is_date = is_option(word, "--date");
    const char *equals = strchr(word, '=');
    const char *value = equals != NULL ? equals + 1 : *at + 1 < argc ? argv[++*at] : "";
    if (is_date && !wend_is_date(value)) {
        return complain("--date takes a day of the calendar, not", *value != '\0' ? value : "nothing",
                        "write it like --date 2026-05-14");
    }
    if (!is_date && *value == '\0') {
        return complain("--order needs a file", "", "for example --order order.yaml");
    }
    *(is_date ? &out->date : &out->order_file) = value;
    return true;
}

/* The words that are left are a file or files; with options and explain a check and a run follow it. */
static bool take_words(const struct CommandRow *row, char *argv[], int count, struct Options *out)
{
    out->files = argv;
    out->file_count = count;
    if (count < row->least) {
        return count == 0 ? complain("no route file given to", row->word, row->lack)
                          : complain("no check named to", row->word, row->lack);
    }
    if (count <= row->most) {
        const int run_at = row->command == COMMAND_EXPLAIN ? 2 : 1;
        out->check = row->command == COMMAND_EXPLAIN ? argv[1] : "";
        out->run = row->most != ANY_NUMBER && count > run_at ? argv[run_at] : "";
        return true;
    }
    if (row->most == 0) {
        return complain("nothing is to be given to", row->word, "see wend --help");
    }
    if (row->command == COMMAND_PLAN) {
        return complain("plan takes one route file, not also", argv[1], "plan them one after the other");
    }
    return complain("one word too many:", argv[row->most], "one route file and one run at a time");
}

/* Options are taken out of argv; what is left stays in order. */
static bool read_rest(const struct CommandRow *row, int argc, char *argv[], struct Options *out)
{
    int words = 0;
    bool only_words = false;
    for (int i = 2; i < argc; i++) {
        char *word = argv[i];
        if (only_words || word[0] != '-' || word[1] == '\0') {
            argv[2 + words++] = word;
        } else if (strcmp(word, "--") == 0) {
            only_words = true;
        } else if (is_help(word)) {
            *out = (struct Options){.command = COMMAND_HELP, .help_on = row->command};
            return true;
        } else if (row->takes_out && (strcmp(word, "--out") == 0 || strcmp(word, "-o") == 0)) {
            if (i + 1 >= argc) {
                return complain("--out needs a folder", "", "for example --out drawings");
            }
            out->out_folder = argv[++i];
            out->out_given = true;
        } else if (row->takes_out && strncmp(word, "--out=", 6) == 0) {
            out->out_folder = word + 6;
            out->out_given = true;
        } else if (row->command == COMMAND_TEMPLATES && strcmp(word, "--force") == 0) {
            out->force = true;
        } else if (row->takes_order && strcmp(word, "--twice") == 0) {
            out->twice = true;
        } else if (row->takes_order && (is_option(word, "--order") || is_option(word, "--date"))) {
            if (!read_order_option(argc, argv, &i, out)) {
                return false;
            }
        } else if (row->takes_templates && strcmp(word, "--templates") == 0) {
            if (i + 1 >= argc) {
                return complain("--templates needs a folder", "", "for example --templates house-style");
            }
            out->template_folder = argv[++i];
        } else if (row->takes_templates && strncmp(word, "--templates=", 12) == 0) {
            out->template_folder = word + 12;
        } else if (row->takes_strict && strcmp(word, "--strict") == 0) {
            out->strict = true;
        } else if (row->takes_growth && (strcmp(word, "--growth") == 0 || strncmp(word, "--growth=", 9) == 0)) {
            if (!read_growth(argc, argv, &i, out)) {
                return false;
            }
        } else {
            return complain("unknown option", word, "see wend --help");
        }
    }
    if (!take_words(row, argv + 2, words, out)) {
        return false;
    }
    if (out->out_folder[0] == '\0' || (row->command == COMMAND_TEMPLATES && !out->out_given)) {
        return complain("--out needs a folder", "", "for example --out drawings");
    }
    return true;
}

bool options_read(int argc, char *argv[], struct Options *out)
{
    *out = (struct Options){
        .command = COMMAND_HELP, .help_on = COMMAND_NONE, .out_folder = ".", .date = "", .check = "", .run = ""};
    if (argc < 2) {
        return complain("no command given", "", "try: wend plan FILE, or wend --help");
    }
    const char *word = argv[1];
    if (is_help(word)) {
        return true;
    }
    if (strcmp(word, "help") == 0) {
        const struct CommandRow *row = argc > 2 ? find_command(argv[2]) : NULL;
        if (argc > 2 && row == NULL) {
            return complain("unknown command", argv[2], "see wend --help");
        }
        out->help_on = row != NULL ? row->command : COMMAND_NONE;
        return true;
    }
    if (strcmp(word, "--version") == 0) {
        out->command = COMMAND_VERSION;
        return true;
    }
    const struct CommandRow *row = find_command(word);
    if (row == NULL) {
        return complain(word[0] == '-' ? "unknown option" : "unknown command", word,
                        "the commands are plan, check, options, explain, order, manual, tables, templates and help");
    }
    out->command = row->command;
    return read_rest(row, argc, argv, out);
}
