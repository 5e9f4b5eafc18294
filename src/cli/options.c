/* The command line described once: commands, options and their help. */
#include "options_private.h"

#include <stdio.h>
#include <string.h>

static const struct CommandRow commands[] = {
    {"plan", COMMAND_PLAN, "FILE [--out DIR] ...", "decide and write the documents",
     "Reads the route file, decides, and writes into DIR (default: the folder you are\n"
     "in):\n"
     "  NAME.plan.xml      every figure, for other programs\n"
     "  NAME.diagram.svg   the run drawn to scale, for screen and A4\n"
     "  NAME.parts.csv     what to order, for the wholesaler's counter\n"
     "  NAME.brief.html    for the crew: what to do, segment by segment\n"
     "  NAME.card.html     for the crew, to keep: what is true of every job\n"
     "  NAME.parts.html    what to pick and load, by aisle\n"
     "  NAME.design.html   every figure with its source, for designer and inspector\n"
     "  NAME.test.html     what to measure and what to expect; no certificate\n"
     "  NAME.pack.html     all of these in one file\n"
     "  NAME.readings.html what was measured, where the file has readings\n"
     "  NAME.as-laid.html  where it lies, for owner and digger, where it has as-laid\n"
     "and prints the decision in about twenty lines, the verdict last; with --full all\n"
     "of it, segment by segment and check by check, with the parts, all that was\n"
     "assumed and the cautions; with --quiet only what does not pass. With --format\n"
     "json the figures of NAME.plan.xml are printed as JSON, and nothing is written.\n"
     "The list of a plan that fails is NAME.FAIL.parts.csv; one of the other name from\n"
     "before gets .old after it. NAME is the file's name without .yaml. When the file\n"
     "is wrong nothing is written, and what was written of it before gets .old after\n"
     "its name. Files that were there before stay\n"
     "whole when writing fails. A file of that name that wend did not write, or that\n"
     "it read for the plan, is never replaced: move it away, or write elsewhere; nor,\n"
     "but with --replace, are the papers of a job of another title or site.\n"
     "With --templates DIR the HTML papers are made with the templates in DIR, where\n"
     "it has any; without it with those in $XDG_CONFIG_HOME/wend/templates, or else\n"
     "in ~/.config/wend/templates. See wend help templates.\n"
     "--set KEY=VALUE, which may be given again, plans a route that differs from the\n"
     "file: --set 'segments.field.length=66 m' --set 'runs.feeder.cable.size=6 mm2'.\n"
     "Runs and segments go by their names, items without one by their number. All\n"
     "papers say so, and are named NAME.changed.\n"
     "With --language pl brief, card, diagram and what is for a built job are in\n"
     "Polish; all other papers, the pack among them, stay in English, and the English\n"
     "text governs.\n",
     1, 1, "give one, or - for standard input"},
    {"new", COMMAND_NEW, "[STARTER] FILE", "a route to begin with",
     "Writes a commented route into FILE, which must not be there yet; it passes as it\n"
     "stands, and every figure in it is an example to be put right. STARTER is\n"
     "  outbuilding    on the supply's earth (taken when none is named)\n"
     "  island         on an earth of its own (TT)\n"
     "  workshop       on three phases\n"
     "  path-lighting  a long thin cable, 3 % drop\n"
     "  pond-pump      a motor in a wet place\n"
     "  caravan-pitch  a socket pillar on a TT supply\n"
     "With --ask it asks instead, in the order in which one walks, and keeps each\n"
     "answer in FILE at once; the same command goes on where it was left. Until the\n"
     "far end is reached complete: no stands in FILE, and no plan of it passes. Where\n"
     "nothing is asked, - prints the route.\n",
     1, 2, "for example: wend new island shed.yaml"},
    {"form", COMMAND_FORM, "--out FILE | --paper ...", "the survey page, or one for a pencil",
     "Writes a page that asks for a survey as one walks and saves it as a route file:\n"
     "  wend form --out survey.html    one file, for a laptop; - prints it\n"
     "  wend form --host DIR           the same for a host of your own: phones install\n"
     "                                 it from there and then need no network\n"
     "Where the planner is built into it (cmake --preset phone) it says the verdict so\n"
     "far after each answer; else wend plan decides. It sends nothing anywhere.\n"
     "With --paper it prints a survey sheet as HTML for A4, to fill with a pencil:\n"
     "  wend form --paper > sheet.html\n",
     0, 0, ""},
    {"watch", COMMAND_WATCH, "FILE [--out DIR] ...", "plan again at each save",
     "Plans the file, and again whenever it, its price list or its labour figures\n"
     "are saved; prints what changed in the summary, with - before what is gone and +\n"
     "before what is new, and keeps the papers in DIR as wend plan does. While the\n"
     "file is wrong they end in .old. Ctrl-C ends it.\n",
     1, 1, "give one"},
    {"check", COMMAND_CHECK, "FILE...", "the same without writing anything",
     "Reads each route file and decides; prints one line for each, PASS, OPEN or FAIL\n"
     "and why, and what is wrong with it. Writes nothing. With --strict OPEN is exit\n"
     "status 1; with --quiet there is no line for a file that passes. With --papers\n"
     "DIR it also says whether the papers of FILE in DIR belong together and to the\n"
     "file as it is now, by the sheet mark that each carries (exit status 1 when they\n"
     "do not): a set that was mixed, is incomplete or is out of date; give it the\n"
     "--labour that the papers were planned with. With --format\n"
     "json it prints a list with an object for each file: status, verdict and every\n"
     "diagnostic with its place. With --jobs N as many files are checked at once, each\n"
     "in a process of its own; what is printed, its order and the exit status are the\n"
     "same.\n",
     1, ANY_NUMBER, "give one, or - for standard input"},
    {"options", COMMAND_OPTIONS, "FILE [RUN] [--growth 25 %]", "every size tried, side by side",
     "Prints every size that was tried for RUN (left out: for each power run): what it\n"
     "carries and where, voltage drop, earth fault loop, protective conductor, gland,\n"
     "weight, and which checks it fails; for armoured cable with every protective\n"
     "conductor that its cores allow, and with an earth run that goes the same way.\n"
     "Marks the size that is taken with > and says why the smaller ones fail. Behind\n"
     "them the least duct that each new one could be, for a size that fails by a duct\n"
     "alone the duct with which it does not, and, where the route names a price list,\n"
     "what the whole order comes to with each size. With --growth also the first size\n"
     "that would pass with every load that much larger. Writes nothing.\n",
     1, 2, "give one, or - for standard input"},
    {"explain", COMMAND_EXPLAIN, "FILE CHECK[:SEGMENT] [RUN]", "how a figure comes about, by steps",
     "Prints how the figure behind a check was found: formula, numbers, result and\n"
     "source of each step, to be followed with a pocket calculator. CHECK is a check\n"
     "of the summary: capacity, drop, bend, pull ... With :SEGMENT the part of that\n"
     "segment, for capacity and drop, or the check of that segment, as pull:path.\n"
     "RUN left out: for each run that has the check. Writes nothing.\n",
     2, 3, "for example: wend explain barn.yaml drop"},
    {"decides", COMMAND_DECIDES, "FILE", "what to measure again",
     "Plans the route once more for each thing that was assumed and has another\n"
     "plausible value, and lists those that change cable, device, verdict or a line of\n"
     "the order by more than a pack, what changes most first; the rest in one line.\n"
     "Writes nothing.\n",
     1, 1, "give one, or - for standard input"},
    {"diff", COMMAND_DIFF, "OLD NEW", "what changed between two plans",
     "Plans both route files and prints what NEW has otherwise than OLD: cable,\n"
     "device, length to order, drop, checks with another result, and what to fetch\n"
     "and what can be brought back where the parts of OLD were bought. A cable at\n"
     "hand serves where it is long enough; it is never pieced together. Writes\n"
     "nothing; --csv and --format json print all of it for a counter or a program.\n"
     "Exit status as of NEW.\n",
     2, 2, "for example: wend diff barn.yaml barn-2.yaml"},
    {"reach", COMMAND_REACH, "FILE", "how much more the plan would bear",
     "Keeps cable and devices as planned and asks how many metres more of each\n"
     "segment, and how many amperes more on each run, pass every check; and which\n"
     "check fails first beyond that. Each answer is found by planning the whole route\n"
     "again, step by step from what was surveyed: the first step that fails ends it,\n"
     "whatever may pass beyond. Of a plan that is open it says first what is. Writes\n"
     "nothing.\n",
     1, 1, "give one, or - for standard input"},
    {"day", COMMAND_DAY, "FILE [--hands 2] ...", "the work in order and how long",
     "Makes tasks of the plan with what the take-off counts, gives each its time by\n"
     "labour figures, and puts them in an order for one to four hands: who does what\n"
     "when, what must be settled before, what to do first. Beside its length stands\n"
     "what no order of work can beat, and the chance of being done within the day, by\n"
     "simulation with a fixed seed. The figures are those of --labour FILE, else of\n"
     "the file that the route names as parts: labour:, else the program's own, which\n"
     "are common practice without a source. Of a task without a figure the time is\n"
     "not known, and that of the whole neither; no lead time is made up. --format\n"
     "json prints all of it for a program, --ics with --date 2026-05-14 for a calendar\n"
     "(iCalendar, RFC 5545; what does not fit into a day goes on the next). Writes\n"
     "nothing. With labour figures of your own wend plan shows the day on the brief\n"
     "too, and where they have rates writes NAME.quotation.html.\n",
     1, 1, "give one, or - for standard input"},
    {"readings", COMMAND_READINGS, "FILE", "what was measured against the plan",
     "Holds what stands under readings in the route file against the plan: for each\n"
     "reading what was expected at the cable's temperature, its limit, and whether it\n"
     "fits, differs, is beyond its limit, or so far off that something else is wrong;\n"
     "and which causes fit its size and sign: wrong length, wrong size, a parallel\n"
     "path, a loose joint, cores swapped. The meter's error counts against the\n"
     "reading: what passes only within it is open. Writes nothing; --csv and --format\n"
     "json print it for a program. It is no certificate. Exit status as of wend check:\n"
     "1 where a reading or the plan fails, with --strict also where one is open.\n",
     1, 1, "give one, or - for standard input"},
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
     "NAME is the reference; where it is that of another one too, as A-1 is of A/1,\n"
     "the other's files are replaced with --replace alone. Without an order file there\n"
     "is just order.csv.\n"
     "--date 2026-05-14 overrides the file's date; no clock is read. A plan that\n"
     "fails a check is named at the top of both (exit status 1); when a file is\n"
     "wrong nothing is written, and the order from before gets .old after its name. A\n"
     "file named twice, and two of one name, are refused unless --twice says that it\n"
     "is meant: they are then told apart as barn and barn (2). wend manual tells every\n"
     "key of the order file.\n",
     1, ANY_NUMBER, "give one or more, or - for standard input"},
    {"manual", COMMAND_MANUAL, "", "every key and word of the route file",
     "Prints the reference of the route file: each key, what it takes, its range and\n"
     "default.\n",
     0, 0, ""},
    {"schema", COMMAND_SCHEMA, "", "a JSON Schema of it, for editors",
     "Prints a JSON Schema (2020-12) of the route file, by which an editor completes\n"
     "and checks while you type. It refuses no good file, and lets some wrong ones\n"
     "through that wend check refuses.\n",
     0, 0, ""},
    {"tables", COMMAND_TABLES, "", "the tables that figures come from",
     "Prints each published table held here, its edition, and how sure its figures\n"
     "are.\n",
     0, 0, ""},
    {"table", COMMAND_TABLE, "NAME [--csv]", "the figures of one of them",
     "Prints the figures of the published table NAME, as 4E4A, with its source, its\n"
     "edition and how sure they are.\n",
     1, 1, "for example: wend table 4E4A"},
    {"cable", COMMAND_CABLE, "KIND SIZE", "all that is known of one cable",
     "Prints what the tables hold of one cable: current-carrying capacity by reference\n"
     "method, voltage drop, resistance, armour, k, diameters, weight, gland, bend\n"
     "radius, fixings and pull, each with its source; what is not known, and what it\n"
     "is not for. KIND is a word of the route file, SIZE as 3x6.\n",
     2, 2, "for example: wend cable BS5467 3x6"},
    {"templates", COMMAND_TEMPLATES, "--out DIR [--force]", "the templates of the papers",
     "Writes the built-in templates (XSLT 1.0) and the style sheet into DIR. Change\n"
     "what you want, delete the rest, and give DIR to wend plan --templates DIR. A\n"
     "template sees plan.xml with the diagram and the style sheet added, and nothing\n"
     "else: it cannot read or write a file, reach a network or run anything, and how\n"
     "long it works and what memory it takes is bounded. One that is in DIR already\n"
     "and was changed is kept, unless --force is given.\n",
     0, 0, ""},
    {"man", COMMAND_MAN, "PAGE", "",
     "Prints a page of the manual as mdoc source: wend, wend-route, wend-order, wend-labour.\n", 1, 1,
     "for example: wend man wend"},
    {"complete", COMMAND_COMPLETE, "WORD...", "", "Prints what may come next, for the shells' completion.\n", 0,
     ANY_NUMBER, ""},
};
enum { COMMAND_ROWS = (int)(sizeof commands / sizeof commands[0]) };

#define ON(command) (1U << COMMAND_##command)
static const struct OptionRow option_rows[] = {
    {"--out", "-o", OPTION_OUT, VALUE_FOLDER, "DIR", ON(PLAN) | ON(WATCH) | ON(ORDER) | ON(TEMPLATES),
     "write into DIR, made when missing", "needs a folder", "for example --out drawings"},
    {"--out", "-o", OPTION_OUT_FILE, VALUE_FILE, "FILE", ON(FORM), "write the page as FILE", "needs a file",
     "for example --out survey.html"},
    {"--host", "", OPTION_HOST, VALUE_FOLDER, "DIR", ON(FORM), "write the page for a host into DIR", "needs a folder",
     "for example --host survey"},
    {"--templates", "", OPTION_TEMPLATES, VALUE_FOLDER, "DIR", ON(PLAN) | ON(WATCH),
     "make the papers with the templates in DIR", "needs a folder", "for example --templates house-style"},
    {"--language", "", OPTION_LANGUAGE, VALUE_LANGUAGE, "en|pl", ON(PLAN) | ON(WATCH),
     "brief, card, diagram, readings, as-laid in it", "needs a language", "for example --language pl"},
    {"--strict", "", OPTION_STRICT, VALUE_NONE, "",
     ON(PLAN) | ON(CHECK) | ON(OPTIONS) | ON(ORDER) | ON(DAY) | ON(READINGS), "exit status 1 for OPEN too", "", ""},
    {"--set", "", OPTION_SET, VALUE_KEY, "KEY=VALUE",
     ON(PLAN) | ON(CHECK) | ON(OPTIONS) | ON(DECIDES) | ON(REACH) | ON(DAY) | ON(READINGS),
     "plan with KEY otherwise than in the file", "needs a key and a value",
     "for example --set 'segments.field.length=66 m'"},
    {"--growth", "", OPTION_GROWTH, VALUE_PERCENT, "25 %", ON(OPTIONS),
     "ask what passes with every load that much larger", "needs a percentage", "for example --growth 25 %"},
    {"--order", "", OPTION_ORDER, VALUE_FILE, "FILE", ON(ORDER), "who buys, from whom, where to and when",
     "needs a file", "for example --order order.yaml"},
    {"--date", "", OPTION_DATE, VALUE_DATE, "2026-05-14", ON(ORDER) | ON(DAY),
     "day of the order, before the file's, or of the work", "takes a day of the calendar, not nothing",
     "write it like --date 2026-05-14"},
    {"--hands", "", OPTION_HANDS, VALUE_HANDS, "1..4", ON(DAY), "how many work", "needs a number",
     "for example --hands 2"},
    {"--labour", "", OPTION_LABOUR, VALUE_FILE, "FILE", ON(DAY) | ON(PLAN) | ON(CHECK), "how long work takes",
     "needs a file", "for example --labour labour.yaml"},
    {"--seed", "", OPTION_SEED, VALUE_WHOLE, "N", ON(DAY), "another lot of simulated days", "needs a number",
     "for example --seed 7"},
    {"--ics", "", OPTION_ICS, VALUE_NONE, "", ON(DAY), "print it for a calendar; needs --date", "", ""},
    {"--twice", "", OPTION_TWICE, VALUE_NONE, "", ON(ORDER), "a job named twice is to be ordered twice", "", ""},
    {"--force", "", OPTION_FORCE, VALUE_NONE, "", ON(TEMPLATES), "overwrite templates that were changed", "", ""},
    {"--csv-bom", "", OPTION_CSV_BOM, VALUE_NONE, "", ON(PLAN) | ON(WATCH) | ON(ORDER),
     "begin each CSV with a byte order mark", "", ""},
    {"--replace", "", OPTION_REPLACE, VALUE_NONE, "", ON(PLAN) | ON(WATCH) | ON(ORDER),
     "replace the papers of another job or order", "", ""},
    {"--papers", "", OPTION_PAPERS, VALUE_FOLDER, "DIR", ON(CHECK), "say whether the papers in DIR are this route's",
     "needs a folder", "for example --papers drawings"},
    {"--jobs", "", OPTION_JOBS, VALUE_NUMBER, "N", ON(CHECK), "check N files at once", "needs a number",
     "for example --jobs 4"},
    {"--csv", "", OPTION_CSV, VALUE_NONE, "", ON(TABLE) | ON(DIFF) | ON(READINGS), "as CSV", "", ""},
    {"--ask", "", OPTION_ASK, VALUE_NONE, "", ON(NEW), "ask for it, question by question", "", ""},
    {"--paper", "", OPTION_PAPER, VALUE_NONE, "", ON(FORM), "for a pencil", "", ""},
    {"--format", "", OPTION_FORMAT, VALUE_FORMAT, "json",
     ON(PLAN) | ON(CHECK) | ON(ORDER) | ON(DIFF) | ON(TABLE) | ON(CABLE) | ON(DAY) | ON(READINGS),
     "one JSON document to standard output, no files", "needs a format", "write --format json"},
    {"--full", "", OPTION_FULL, VALUE_NONE, "", ON(PLAN), "print all that was decided", "", ""},
    {"--quiet", "-q", OPTION_QUIET, VALUE_NONE, "", ON(PLAN) | ON(CHECK), "print only what does not pass", "", ""},
    {"--help", "-h", OPTION_HELP, VALUE_NONE, "", ~0U, "help on the command", "", ""},
};
enum { OPTION_ROWS = (int)(sizeof option_rows / sizeof option_rows[0]) };
_Static_assert((int)OPTION_ROWS == (int)OPTION_COUNT, "a row for every option");

const struct CommandRow *command_row(int index)
{
    return index >= 0 && index < COMMAND_ROWS ? &commands[index] : NULL;
}

const struct CommandRow *command_find(const char *word)
{
    for (int i = 0; i < COMMAND_ROWS; i++) {
        if (strcmp(commands[i].word, word) == 0) {
            return &commands[i];
        }
    }
    return NULL;
}

bool command_takes_file(const struct CommandRow *row)
{
    return row->least > 0 && row->command != COMMAND_NEW && row->command != COMMAND_TABLE &&
           row->command != COMMAND_CABLE && row->command != COMMAND_MAN;
}

const struct OptionRow *option_row(int index)
{
    return index >= 0 && index < OPTION_ROWS ? &option_rows[index] : NULL;
}

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
                               "Exit status: 0 PASS or OPEN, 1 FAIL (OPEN too with --strict, where it is taken);\n"
                               "2 the file or the command line is wrong; 3 something could not be read or\n"
                               "written. Colour is used on terminals only; NO_COLOR turns it off. The wiring\n"
                               "rules in force where you work and a licensed electrician have the last word.\n";

const char *options_introduction(void)
{
    return introduction;
}

const char *options_epilogue(void)
{
    return epilogue;
}

static void print_options(enum Command command)
{
    bool any = false;
    for (int i = 0; i < OPTION_ROWS; i++) {
        const struct OptionRow *row = &option_rows[i];
        if ((row->commands >> command & 1U) != 0) {
            char words[48];
            snprintf(words, sizeof words, "%s%s%s %s", row->letter, *row->letter != '\0' ? ", " : "", row->word,
                     row->takes);
            printf("%s  %-22s%s\n", any ? "" : "\nOptions:\n", words, row->summary);
            any = true;
        }
    }
}

static void print_commands(void)
{
    fputs(introduction, stdout);
    for (int i = 0; i < COMMAND_ROWS; i++) {
        if (*commands[i].summary == '\0') {
            continue;
        }
        printf("  wend %-10s%-27s%s\n", commands[i].word, commands[i].arguments, commands[i].summary);
    }
    printf("  wend %-10s%-27s%s\n", "help", "[WORD]", "this, or more on one command or word");
    printf("  wend %-37s%s\n", "--version", "which version this is");
    fputs(epilogue, stdout);
}

void options_help(enum Command command)
{
    for (int i = 0; i < COMMAND_ROWS; i++) {
        if (commands[i].command == command) {
            printf("wend %s %s\n\n%s", commands[i].word, commands[i].arguments, commands[i].help);
            print_options(command);
            return;
        }
    }
    print_commands();
}
