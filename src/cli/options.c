/* The command line described once: commands, their help, and reading them. */
#include "cli_private.h"

#include <stdio.h>
#include <string.h>

struct CommandRow {
    const char *word;
    enum Command command;
    const char *arguments;
    const char *summary;
    const char *help;
    bool takes_files, takes_out;
};

static const struct CommandRow commands[] = {
    {"plan", COMMAND_PLAN, "FILE [--out DIR]", "decide and write the documents",
     "Reads the route file, decides, and writes into DIR (default: the folder you are in):\n"
     "  NAME.plan.xml      every figure, for other programs\n"
     "  NAME.diagram.svg   the run drawn to scale, for screen and A4\n"
     "  NAME.parts.csv     what to order, for the wholesaler's counter\n"
     "and prints a summary. NAME is the file's name without .yaml. Nothing is written when the\n"
     "file is wrong, and files that were there before stay whole when writing fails.\n",
     true, true},
    {"check", COMMAND_CHECK, "FILE...", "the same without writing anything",
     "Reads each route file and decides; prints one line for each and what is wrong with it.\n"
     "Writes nothing.\n",
     true, false},
    {"manual", COMMAND_MANUAL, "", "every key and word of the route file",
     "Prints the reference of the route file: each key, what it takes, its range and default.\n", false, false},
    {"tables", COMMAND_TABLES, "", "the published tables that figures come from",
     "Prints each published table held here, its edition, and how sure its figures are.\n", false, false},
};
enum { COMMAND_ROWS = (int)(sizeof commands / sizeof commands[0]) };

static const char introduction[] =
    "Wend plans one cable run to an outbuilding from a route file: what you surveyed, as YAML.\n"
    "\n";
static const char epilogue[] =
    "\n"
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
    "Exit status: 0 every check made passes; 1 a check fails; 2 the file or the command line is wrong;\n"
    "3 something could not be read or written. Colour is used on terminals only; NO_COLOR turns it off.\n"
    "The wiring rules in force where you work and a licensed electrician have the last word.\n";

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
        printf("  wend %-7s%-18s %s\n", commands[i].word, commands[i].arguments, commands[i].summary);
    }
    printf("  wend %-7s%-18s %s\n", "help", "[COMMAND]", "this, or more on one command");
    printf("  wend %-25s %s\n", "--version", "which version this is");
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

/* Options are taken out of argv; what is left, in order, are the files. */
static bool read_rest(const struct CommandRow *row, int argc, char *argv[], struct Options *out)
{
    int files = 0;
    bool only_files = false;
    for (int i = 2; i < argc; i++) {
        char *word = argv[i];
        if (only_files || word[0] != '-' || word[1] == '\0') {
            argv[2 + files++] = word;
        } else if (strcmp(word, "--") == 0) {
            only_files = true;
        } else if (is_help(word)) {
            *out = (struct Options){.command = COMMAND_HELP, .help_on = row->command};
            return true;
        } else if (row->takes_out && (strcmp(word, "--out") == 0 || strcmp(word, "-o") == 0)) {
            if (i + 1 >= argc) {
                return complain("--out needs a folder", "", "for example --out drawings");
            }
            out->out_folder = argv[++i];
        } else if (row->takes_out && strncmp(word, "--out=", 6) == 0) {
            out->out_folder = word + 6;
        } else {
            return complain("unknown option", word, "see wend --help");
        }
    }
    out->files = argv + 2;
    out->file_count = files;
    if (row->takes_files && files == 0) {
        return complain("no route file given to", row->word, "give one, or - for standard input");
    }
    if (!row->takes_files && files > 0) {
        return complain("nothing is to be given to", row->word, "see wend --help");
    }
    if (row->command == COMMAND_PLAN && files > 1) {
        return complain("plan takes one route file, not also", argv[3], "plan them one after the other");
    }
    if (out->out_folder[0] == '\0') {
        return complain("--out needs a folder", "", "for example --out drawings");
    }
    return true;
}

bool options_read(int argc, char *argv[], struct Options *out)
{
    *out = (struct Options){.command = COMMAND_HELP, .help_on = COMMAND_NONE, .out_folder = "."};
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
                        "the commands are plan, check, manual, tables and help");
    }
    out->command = row->command;
    return read_rest(row, argc, argv, out);
}
