/* Reads what was typed, by the rows of options.c. */
#include "options_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { WORDS_MOST = 64 };

static bool complain(const char *what, const char *word, const char *advice)
{
    print_shown(stderr, "wend: error: %s%s%s; %s\n", what, word[0] != '\0' ? " " : "", word, advice);
    return false;
}

/* The nearest of `words`, or what else to say. */
static bool complain_near(const char *what, const char *word, const char *const *words, int count, const char *advice)
{
    const char *nearest = wend_nearest(word, words, (size_t)count);
    if (*nearest == '\0') {
        return complain(what, word, advice);
    }
    print_shown(stderr, "wend: error: %s %s; did you mean %s?\n", what, word, nearest);
    return false;
}

/* ---- commands ---- */

static bool unknown_command(const char *word)
{
    const char *words[WORDS_MOST] = {"help", "--help", "--version"};
    int count = 3;
    for (int i = 0; command_row(i) != NULL && count < WORDS_MOST; i++) {
        if (*command_row(i)->summary != '\0') {
            words[count++] = command_row(i)->word;
        }
    }
    return complain_near(word[0] == '-' ? "unknown option" : "unknown command", word, words, count,
                         "wend --help lists the commands");
}

/* ---- options ---- */

static bool has(const struct OptionRow *row, enum Command command)
{
    return (row->commands >> command & 1U) != 0;
}

/* "--date X", "--date=X", "-o X" */
static bool is_option(const char *word, const struct OptionRow *row)
{
    const size_t length = strlen(row->word);
    return (*row->letter != '\0' && strcmp(word, row->letter) == 0) ||
           (strncmp(word, row->word, length) == 0 &&
            (word[length] == '\0' || (word[length] == '=' && row->value != VALUE_NONE)));
}

static const struct OptionRow *find_option(enum Command command, const char *word)
{
    for (int i = 0; option_row(i) != NULL; i++) {
        if (has(option_row(i), command) && is_option(word, option_row(i))) {
            return option_row(i);
        }
    }
    return NULL;
}

static bool unknown_option(const struct CommandRow *command, const char *word)
{
    const char *words[WORDS_MOST];
    int count = 0;
    char plain[64], advice[64];
    snprintf(plain, sizeof plain, "%.*s", (int)strcspn(word, "="), word);
    snprintf(advice, sizeof advice, "see wend help %s", command->word);
    for (int i = 0; option_row(i) != NULL && count < WORDS_MOST; i++) {
        if (has(option_row(i), command->command)) {
            words[count++] = option_row(i)->word;
        }
    }
    return complain_near("unknown option", plain, words, count, advice);
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
static bool read_growth(const char *given, int argc, char *argv[], int *at, struct Options *out)
{
    char text[32];
    const bool unit_apart = strchr(given, '%') == NULL && *at + 1 < argc && strcmp(argv[*at + 1], "%") == 0;
    const int length = snprintf(text, sizeof text, "%s%s", given, unit_apart ? "%" : "");
    if (length < 0 || (size_t)length >= sizeof text) {
        return complain("--growth takes 0 to 1000 %, not", given, "for example --growth 25 %");
    }
    *at += unit_apart ? 1 : 0;
    return read_percent(text, &out->growth_percent);
}

static bool read_date(const char *given, struct Options *out)
{
    out->date = given;
    return wend_is_date(given) ||
           complain("--date takes a day of the calendar, not", given, "write it like --date 2026-05-14");
}

/* A bare whole number from `least` to `most`. */
static bool read_whole(const struct OptionRow *row, const char *given, double least, double most, double *out)
{
    char what[64];
    snprintf(what, sizeof what, "%s takes a whole number from %.0f to %.0f, not", row->word, least, most);
    return (strchr(given, '.') == NULL && read_number(given, strlen(given), out) && *out >= least && *out <= most) ||
           complain(what, given, row->example);
}

static bool read_jobs(const struct OptionRow *row, const char *given, struct Options *out)
{
    double jobs = 0;
    const bool good = read_whole(row, given, 1, JOBS_MOST, &jobs);
    out->jobs = (int)jobs;
    return good;
}

static bool read_hands(const struct OptionRow *row, const char *given, struct Options *out)
{
    double hands = 0;
    const bool good = read_whole(row, given, 1, 4, &hands);
    out->hands = (int)hands;
    return good;
}

static bool read_seed(const struct OptionRow *row, const char *given, struct Options *out)
{
    double seed = 0;
    const bool good = read_whole(row, given, 0, 4294967295.0, &seed);
    out->seed = (unsigned long)seed;
    return good;
}

static bool read_language(const char *given, struct Options *out)
{
    const char *codes[WORDS_MOST];
    int count = 0;
    out->language = given;
    for (; *wend_language(count) != '\0' && count < WORDS_MOST; count++) {
        codes[count] = wend_language(count);
        if (strcmp(codes[count], given) == 0) {
            return true;
        }
    }
    return complain_near("unknown language", given, codes, count, "write --language en or --language pl");
}

static bool read_set(const char *given, struct Options *out)
{
    if (out->set_count == SETS_MOST) {
        return complain("--set is given too often at", given, "write the rest into a copy of the file");
    }
    out->sets[out->set_count++] = given;
    return true;
}

/* What the option at argv[*at] is given, in the same word or the next. */
static bool read_option(const struct OptionRow *row, int argc, char *argv[], int *at, struct Options *out)
{
    const char *equals = argv[*at][1] == '-' ? strchr(argv[*at], '=') : NULL;
    const char *value = "";
    if (row->value != VALUE_NONE) {
        value = equals != NULL ? equals + 1 : *at + 1 < argc ? argv[++*at] : "";
        if (*value == '\0') {
            char what[64];
            snprintf(what, sizeof what, "%s %s", row->word, row->lack);
            return complain(what, "", row->example);
        }
    }
    if (row->value == VALUE_FOLDER && strcmp(value, "-") == 0) {
        char what[64];
        snprintf(what, sizeof what, "%s takes a folder, not standard input or output:", row->word);
        return complain(what, value, "a folder of that name is ./-");
    }
    switch (row->id) {
    case OPTION_OUT:
        out->out_folder = value;
        out->out_given = true;
        return true;
    case OPTION_OUT_FILE: out->out_file = value; return true;
    case OPTION_HOST: out->host = value; return true;
    case OPTION_TEMPLATES: out->template_folder = value; return true;
    case OPTION_PAPERS: out->papers = value; return true;
    case OPTION_LANGUAGE: return read_language(value, out);
    case OPTION_STRICT: out->strict = true; return true;
    case OPTION_SET: return read_set(value, out);
    case OPTION_JOBS: return read_jobs(row, value, out);
    case OPTION_GROWTH: return read_growth(value, argc, argv, at, out);
    case OPTION_ORDER: out->order_file = value; return true;
    case OPTION_DATE: return read_date(value, out);
    case OPTION_TWICE: out->twice = true; return true;
    case OPTION_FORCE: out->force = true; return true;
    case OPTION_CSV_BOM: out->csv_bom = true; return true;
    case OPTION_REPLACE: out->replace = true; return true;
    case OPTION_ASK: out->ask = true; return true;
    case OPTION_PAPER: out->paper = true; return true;
    case OPTION_HANDS: return read_hands(row, value, out);
    case OPTION_LABOUR: out->labour_file = value; return true;
    case OPTION_SEED: return read_seed(row, value, out);
    case OPTION_ICS: out->ics = true; return true;
    case OPTION_CSV: out->csv = true; return true;
    case OPTION_FORMAT:
        out->json = strcmp(value, "json") == 0;
        return out->json || complain("--format takes json, not", value, "leave it out for the usual output");
    case OPTION_FULL: out->full = true; return true;
    case OPTION_QUIET: out->quiet = true; return true;
    case OPTION_HELP:
        out->help_on = out->command;
        out->command = COMMAND_HELP;
        return true;
    case OPTION_COUNT: break;
    }
    return false;
}

/* The words that are left are a file or files; with options and explain a check and a run follow it. */
static bool take_words(const struct CommandRow *row, char *argv[], int count, struct Options *out)
{
    out->files = argv;
    out->file_count = count;
    if (count < row->least && !command_takes_file(row)) {
        return complain("too few words for", row->word, row->lack);
    }
    if (count < row->least) {
        return count == 0                        ? complain("no route file given to", row->word, row->lack)
               : row->command == COMMAND_EXPLAIN ? complain("no check named to", row->word, row->lack)
                                                 : complain("one more route file is due for", row->word, row->lack);
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
    return complain("one word too many:", argv[row->most],
                    command_takes_file(row) ? "one route file and one run at a time" : row->lack);
}

/* Standard input can be read once. */
static bool piped_once(const struct Options *out)
{
    int piped = (out->order_file != NULL && strcmp(out->order_file, "-") == 0) +
                (out->labour_file != NULL && strcmp(out->labour_file, "-") == 0) * out->file_count;
    for (int i = 0; i < out->file_count; i++) {
        piped += strcmp(out->files[i], "-") == 0;
    }
    return piped <= 1 ||
           complain("standard input can be read once, but is named more than once:", "-", "save it as a file");
}

/* Options are taken out of argv; what is left stays in order. */
static bool read_rest(const struct CommandRow *row, int argc, char *argv[], struct Options *out)
{
    int words = 0;
    bool only_words = false;
    for (int i = 2; i < argc && out->command != COMMAND_HELP; i++) {
        char *word = argv[i];
        const struct OptionRow *option = only_words ? NULL : find_option(row->command, word);
        if (only_words || word[0] != '-' || word[1] == '\0') {
            argv[2 + words++] = word;
        } else if (strcmp(word, "--") == 0) {
            only_words = true;
        } else if (option == NULL) {
            return unknown_option(row, word);
        } else if (!read_option(option, argc, argv, &i, out)) {
            return false;
        }
    }
    if (out->command == COMMAND_HELP) {
        return true;
    }
    if (row->command == COMMAND_TEMPLATES && !out->out_given) {
        return complain("--out needs a folder", "", "for example --out drawings");
    }
    if (row->command == COMMAND_FORM && out->paper + (out->out_file != NULL) + (out->host != NULL) != 1) {
        return complain("form takes one of --out, --host and --paper", "", "for example wend form --out survey.html");
    }
    if (row->command == COMMAND_DAY && out->ics != (*out->date != '\0')) {
        return complain(out->ics ? "--ics needs --date" : "--date goes with --ics", "",
                        "for example --ics --date 2026-05-14");
    }
    const char *unused = out->out_given                     ? "--out"
                         : out->template_folder != NULL     ? "--templates"
                         : strcmp(out->language, "en") != 0 ? "--language"
                         : out->csv_bom                     ? "--csv-bom"
                         : out->papers != NULL              ? "--papers"
                         : out->full                        ? "--full"
                         : out->quiet                       ? "--quiet"
                         : out->replace                     ? "--replace"
                         : out->csv                         ? "--csv"
                         : out->ics                         ? "--ics"
                                                            : NULL;
    if (out->json && unused != NULL) {
        return complain("--format json has no use for", unused, "leave it out");
    }
    return take_words(row, argv + 2, words, out) && piped_once(out);
}

bool options_read(int argc, char *argv[], struct Options *out)
{
    *out = (struct Options){.command = COMMAND_HELP,
                            .help_on = COMMAND_NONE,
                            .out_folder = ".",
                            .date = "",
                            .language = "en",
                            .seed = 1,
                            .jobs = 1,
                            .check = "",
                            .run = "",
                            .word = ""};
    if (argc < 2) {
        return complain("no command given", "", "try: wend plan FILE, or wend --help");
    }
    const char *word = argv[1];
    if (strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0) {
        return true;
    }
    if (strcmp(word, "help") == 0) {
        const struct CommandRow *row = argc > 2 ? command_find(argv[2]) : NULL;
        out->word = argc > 2 && row == NULL ? argv[2] : "";
        out->help_on = row != NULL ? row->command : COMMAND_NONE;
        return true;
    }
    if (strcmp(word, "--version") == 0) {
        out->command = COMMAND_VERSION;
        return true;
    }
    const struct CommandRow *row = command_find(word);
    if (row == NULL) {
        return unknown_command(word);
    }
    out->command = row->command;
    if (row->command == COMMAND_COMPLETE) { /* its words are those of another command line */
        out->files = argv + 2;
        out->file_count = argc - 2;
        return true;
    }
    return read_rest(row, argc, argv, out);
}
