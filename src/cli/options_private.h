/** The rows that the command line is read by; help, completion and the manual page are made from them too. */
#ifndef WEND_OPTIONS_PRIVATE_H
#define WEND_OPTIONS_PRIVATE_H

#include "cli_private.h"

enum { ANY_NUMBER = 1 << 20 };

struct CommandRow {
    const char *word;
    enum Command command;
    const char *arguments;
    const char *summary; /**< "" for one that help does not list */
    const char *help;
    int least, most;  /**< words besides options */
    const char *lack; /**< what to say when there are fewer */
};
/** NULL behind the last. */
const struct CommandRow *command_row(int index);
/** NULL when there is none of that name. */
const struct CommandRow *command_find(const char *word);
/** Whether the first of its words is a route file. */
bool command_takes_file(const struct CommandRow *row);

enum OptionId {
    OPTION_OUT,
    OPTION_OUT_FILE,
    OPTION_HOST,
    OPTION_TEMPLATES,
    OPTION_LANGUAGE,
    OPTION_STRICT,
    OPTION_SET,
    OPTION_GROWTH,
    OPTION_ORDER,
    OPTION_DATE,
    OPTION_TWICE,
    OPTION_FORCE,
    OPTION_CSV_BOM,
    OPTION_REPLACE,
    OPTION_FORMAT,
    OPTION_FULL,
    OPTION_QUIET,
    OPTION_PAPERS,
    OPTION_JOBS,
    OPTION_CSV,
    OPTION_ASK,
    OPTION_PAPER,
    OPTION_HANDS,
    OPTION_LABOUR,
    OPTION_SEED,
    OPTION_ICS,
    OPTION_HELP,
    OPTION_COUNT
};
enum OptionValue {
    VALUE_NONE,
    VALUE_FOLDER,
    VALUE_FILE,
    VALUE_DATE,
    VALUE_PERCENT,
    VALUE_NUMBER,
    VALUE_LANGUAGE,
    VALUE_FORMAT,
    VALUE_KEY,
    VALUE_HANDS,
    VALUE_WHOLE
};
struct OptionRow {
    const char *word, *letter; /**< "--out", "-o"; letter "" when it has none */
    enum OptionId id;
    enum OptionValue value;
    const char *takes; /**< what help calls the value; "" without one */
    unsigned commands; /**< a bit for each that has it */
    const char *summary;
    const char *lack, *example; /**< what to say without a value */
};
/** NULL behind the last. */
const struct OptionRow *option_row(int index);
/** What help on all commands begins and ends with. */
const char *options_introduction(void);
const char *options_epilogue(void);
/** Of the manual: where the line behind this one begins, or the end. */
const char *next_line(const char *line);

#endif
