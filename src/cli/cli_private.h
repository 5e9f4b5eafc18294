/** What the files of the command line know of each other. */
#ifndef WEND_CLI_PRIVATE_H
#define WEND_CLI_PRIVATE_H

#include "wend/wend.h"

#include <pthread.h>
#include <signal.h>
#include <stdio.h>
#include <sys/types.h>

/** Exit statuses: 0 to 3 are those of enum WendStatus; 3 is also "could not be read or written". */
enum { EXIT_USAGE = 2, EXIT_SYSTEM = 3 };

enum Command {
    COMMAND_PLAN,
    COMMAND_CHECK,
    COMMAND_OPTIONS,
    COMMAND_EXPLAIN,
    COMMAND_DECIDES,
    COMMAND_DIFF,
    COMMAND_REACH,
    COMMAND_DAY,
    COMMAND_READINGS,
    COMMAND_ORDER,
    COMMAND_MANUAL,
    COMMAND_SCHEMA,
    COMMAND_TABLES,
    COMMAND_TEMPLATES,
    COMMAND_NEW,
    COMMAND_FORM,
    COMMAND_WATCH,
    COMMAND_TABLE,
    COMMAND_CABLE,
    COMMAND_MAN,
    COMMAND_COMPLETE,
    COMMAND_HELP,
    COMMAND_VERSION,
    COMMAND_NONE
};

enum { SETS_MOST = 64, JOBS_MOST = 64 };

struct Options {
    enum Command command;
    enum Command help_on;        /**< with COMMAND_HELP: which command, COMMAND_NONE for all */
    const char *out_folder;      /**< "." unless --out was given */
    const char *out_file;        /**< of form: NULL unless --out was given */
    const char *host;            /**< NULL unless --host was given */
    const char *order_file;      /**< NULL unless --order was given */
    const char *papers;          /**< NULL unless --papers was given */
    const char *date;            /**< "" unless --date was given */
    const char *language;        /**< "en" unless --language was given */
    const char *template_folder; /**< NULL unless --templates was given */
    bool strict;                 /**< a plan that is open is as good as one that fails */
    bool out_given;              /**< --out was */
    bool force;                  /**< --force was */
    bool twice;                  /**< --twice was */
    bool csv_bom;                /**< --csv-bom was */
    bool full;                   /**< --full was: all that was decided, not the short of it */
    bool quiet;                  /**< --quiet was: nothing but what is wrong */
    bool replace;                /**< --replace was */
    bool json;                   /**< --format json: one document, to standard output */
    int jobs;                    /**< 1 unless --jobs was given */
    double growth_percent;       /**< 0 unless --growth was given */
    const char *check;           /**< of explain: "capacity:loft" */
    const char *word;            /**< of help: what else is asked for; "" nothing */
    bool csv;                    /**< --csv was */
    bool ask;                    /**< --ask was */
    bool paper;                  /**< --paper was */
    int hands;                   /**< 0 unless --hands was given */
    const char *labour_file;     /**< NULL unless --labour was given */
    unsigned long seed;          /**< 1 unless --seed was given */
    bool ics;                    /**< --ics was */
    const char *run;             /**< of options and explain: "" for all power runs */
    int set_count;               /**< --set was given so often */
    const char *sets[SETS_MOST];
    int file_count;
    char *const *files;
};

/* ---- options.c, options_read.c ---- */
/** Reads the command line; false after telling on stderr what is wrong with it. */
bool options_read(int argc, char *argv[], struct Options *out);
/** Help for all or for one command, on stdout. */
void options_help(enum Command command);

/** Plans and writes as wend plan does; diagnostics go to stderr. The summary, malloc()ed, NULL when nothing was
 * planned; `beside` are the paths of the price list and the labour figures that the route names, malloc()ed, NULL
 * without one. */
enum { BESIDE_PRICES, BESIDE_LABOUR, BESIDE_COUNT };
char *plan_again(const struct Options *options, int *status, char *beside[BESIDE_COUNT]);

/* ---- run_known.c ---- */
int run_manual(void);
int run_schema(void);
int run_tables(void);
int run_table(const struct Options *options);
int run_cable(const struct Options *options);

/* ---- new.c ---- */
/** A route to begin with. */
struct Starter {
    const char *name;
    const char *text;
    size_t length;
};
/** NULL behind the last; made when the program is built. */
const struct Starter *starter_at(int index);
int run_new(const struct Options *options);
/** Writes a file that was not there; the exit status, after telling on stderr what is wrong. */
int new_file_write(const char *path, const char *text, size_t length);

/* ---- ask.c ---- */
/** Asks for a route and keeps it in the file; the exit status. */
int run_new_asked(const char *path);

/* ---- form.c ---- */
int run_form(const struct Options *options);

/* ---- watch.c ---- */
int run_watch(const struct Options *options);

/* ---- help_word.c ---- */
/** What is known of a word that is no command; the exit status. */
int help_on_word(const char *word);

/* ---- complete.c ---- */
/** What may stand in place of the last of `words`, which follow the program's name, one a line. */
int complete_print(char *const *words, int count);

/* ---- man_page.c ---- */
/** A page of the manual as mdoc source: "wend", "wend-route", "wend-order"; the exit status. */
int man_page_print(const char *name);

/** Which file it is, by whatever name or link. */
struct FileId {
    bool known;
    dev_t device;
    ino_t inode;
};

struct SourceFile {
    char *data; /**< malloc()ed; the caller frees it */
    size_t length;
    struct FileId id;
};

/* ---- run.c ---- */
/** Does what was asked; the exit status. */
int run_command(const struct Options *options);

/** Tells that a document could not be made: what it needs is not there, or there is no memory. The exit status. */
int report_not_made(void);

/** With --strict the status of a plan that is open is that of one that fails. */
int with_strict(const struct Options *options, int status, bool passes);

/* ---- progress.c ---- */
/** What is done meanwhile, on a terminal; of no use to anyone else. */
struct Progress {
    const char *doing, *file;
    double since_s; /**< as progress_now() has it */
    bool runs, ended, shown;
    pthread_t thread;
    pthread_mutex_t lock;
    pthread_cond_t wake;
};
/** Seconds of a clock that only goes forward. */
double progress_now(void);
/** From a second after `since_s` on says on standard error what is done, if that is a terminal. Nothing else may print
 * until progress_end(). */
void progress_begin(struct Progress *progress, const char *doing, const char *file, double since_s);
void progress_end(struct Progress *progress);

/** One route file, planned. */
struct Planned {
    double since_s; /**< when it was begun, as progress_now() has it */
    struct SourceFile source;
    struct FileId prices; /**< the price list, once it was read */
    struct FileId labour; /**< the labour figures likewise */
    char *stem;
    struct Wend *wend;
    int status;
};
/** Reads and plans, with what --set changes; diagnostics go to stderr. Free with planned_free() whatever the status. */
struct Planned plan_file(const char *path, const struct Options *options);
/** Prices it by the list that the route names, beside `path`. A list that is not there is reported and the plan stands
 * without prices: it may be the crew's copy of the route. One that is wrong is a fault of the input. */
void planned_price(struct Planned *planned, const char *path);
/** Takes the labour figures in the file `given`, else those that the route names, beside `path`, as planned_price()
 * does; `given` (NULL: none) must be there. */
void planned_labour(struct Planned *planned, const char *path, const char *given);
void planned_free(struct Planned *planned);

/* ---- run_asked.c ---- */
/** Options, explain, decides, reach. */
int run_question(const struct Options *options);
int run_diff(const struct Options *options);
int run_readings(const struct Options *options);

/* ---- run_day.c ---- */
int run_day(const struct Options *options);

/* ---- run_json.c ---- */
int run_plan_json(const struct Options *options);
int run_check_json(const struct Options *options);
/** The order to standard output; EXIT_SYSTEM without memory, else its status. */
int print_order_json(struct WendOrder *order);

/* ---- run_order.c ---- */
int run_order(const struct Options *options);

/* ---- source_file.c ---- */
/** Reads a whole file ("-" is standard input). Stops soon after `most` bytes: what is longer is refused by its reader.
 * Folders, pipes and devices are refused. False with errno set. */
bool source_file_read(const char *path, size_t most, struct SourceFile *out);
/** Why a file was not read, after source_file_read() gave false. */
const char *source_file_why(void);
/** The file's name without folder and without .yaml or .yml, malloc()ed; NULL without memory. "-" gives "route". */
char *source_file_stem(const char *path);
/** The path of the file `name` in the folder that the file `path` is in, malloc()ed; NULL without memory. Beside "-" is
 * the folder that the program was started in. */
char *source_file_beside(const char *path, const char *name);

/* ---- own_templates.c ---- */
enum { TEMPLATES_MOST = 32 };
/** Templates of a firm's own. */
struct OwnTemplates {
    int count;
    char folder[4096];                 /**< that they are from; "" without any */
    struct FileId ids[TEMPLATES_MOST]; /**< `count` of them */
    struct WendTemplates *templates;   /**< NULL without any; own_templates_free() */
};
/** Reads them from `folder`, or when that is NULL from the user's folder for configuration where there is one, and
 * checks them. An exit status: 0 when they are good (there may be none); else after telling on stderr what is wrong. */
int own_templates_read(const char *folder, struct OwnTemplates *out);
void own_templates_free(struct OwnTemplates *own);
/** Writes the built-in ones into a folder; the exit status. Those that are there and were changed are kept, unless
 * `force`. */
int own_templates_write(const char *folder, bool force);

/* ---- outfolder.c ---- */
#define MARK_CSV  ",quantity,unit,description,standard,"
#define CSV_BOM   "\xEF\xBB\xBF"
#define MARK_HTML "<meta name=\"generator\" content=\"Wend\">"
enum {
    OUT_FOLDER_MOST = 4096,
    OUT_STEM_MOST = 512,
    OUT_NAME_MOST = 560,
    OUT_SET_MOST = 32,
    OUT_PATH_BYTES = OUT_FOLDER_MOST + OUT_STEM_MOST + OUT_NAME_MOST + 32
};
/** A file of a set. `mark` stands near the beginning of every file of its kind; NULL: it may replace any plain file. */
struct OutName {
    char name[OUT_NAME_MOST];
    const char *mark;
};
/** All that belongs together, whichever of it is written this time. */
struct OutSet {
    char stem[OUT_STEM_MOST]; /**< what is being written is kept in ".STEM.wend" meanwhile */
    int count;
    struct OutName names[OUT_SET_MOST];
};
struct OutFile {
    const char *name; /**< of those of the set */
    struct WendBytes bytes;
    const char *mark;   /**< as in OutName */
    const char *before; /**< what is written before the bytes; NULL nothing */
};
/** The files that were read for what is written. */
struct Inputs {
    const struct FileId *ids;
    int count;
};
/** A folder that this run has for itself. Its caller sets the first three members. */
struct OutFolder {
    const char *path;
    const struct OutSet *set;
    struct Inputs inputs;
    int descriptor; /**< -1: it is not there */
    bool held;
    sigset_t signals;
    bool is_new[OUT_SET_MOST]; /**< those of the set that are written this time */
};
/** Makes the folder if `make`, waits until no other run is writing into it, and ends what an earlier one that died left
 * of the set. False after telling why not; else outfolder_leave() it, also where it is not there and was not made. */
bool outfolder_enter(struct OutFolder *folder, bool make);
void outfolder_leave(struct OutFolder *folder);
void outfolder_sync(const char *path);
/** "PATH could not be WHAT: ..." by errno, on stderr; false. */
bool outfile_tell(const char *path, const char *what);

/* ---- outfile.c ---- */
/** False with errno set. */
bool outfile_write_whole(int descriptor, struct WendBytes bytes);
/** The same; true also where the file system has nothing to force. */
bool outfile_forced(int descriptor);
/** Puts all files into the folder or none, and takes what the set had before out of sight first, so that files of two
 * plans are never seen together. What the set has no file for now gets ".old" after its name. None when one would
 * replace an input, or what is not ours. False after telling on stderr which file and why. */
bool outfile_write_all(struct OutFolder *folder, const struct OutFile *files, int count);

/* ---- outfile_commit.c ---- */
/** Where `name` is: in the folder itself where `part` is "", else in a part of ".STEM.wend", which itself is ".". */
void outfile_path(char path[OUT_PATH_BYTES], const struct OutFolder *folder, const char *part, const char *name);
/** Moves what stands in "new" to its place; when that fails all is as it was before. */
bool outfile_commit(struct OutFolder *folder);
/** Removes what is in "new". */
void outfile_discard(const struct OutFolder *folder);
/** Ends what a run that died had begun. False after telling why that cannot be. */
bool outfile_recover(const struct OutFolder *folder);

/* ---- outfile_guard.c ---- */
struct FileId file_id_of(int descriptor);
bool file_id_same(const struct FileId *a, const struct FileId *b);
/** False after telling on stderr why `path` may not be replaced; true also when nothing is there. */
bool outfile_may_replace(const char *path, const char *mark, struct Inputs inputs);
/** True when `path` is a plain file with the mark that is none of the inputs; tells nothing. */
bool outfile_is_ours(const char *path, const char *mark, struct Inputs inputs);

/* ---- outfile_aside.c ---- */
/** The file at `path`, which was `name` in the folder and has none to take its place, becomes "NAME.old" there (".old2"
 * ... where that is taken, nothing is lost); stderr says so. */
void outfile_keep_aside(const char *folder, const char *name, const char *path);
/** A file that was written before the route became wrong: it gets ".old" after its name, in the place of an older one.
 * True when it did. */
bool outfile_set_stale_aside(const char *folder, const char *name, const char *mark, struct Inputs inputs);

/* ---- plan_files.c ---- */
/** Writes the documents of a plan; of a file that is wrong sets aside what was written of it before. False after
 * telling why not. */
bool plan_files_write(struct Planned *planned, const struct OwnTemplates *own, const struct Options *options);
/** Every name that a plan's files may have, that of plan.xml first; false after telling that one would be too long. */
bool plan_files_set(const char *stem, struct OutSet *set);
/** Whether a plan must have the file at this place of its set: only one that fails has the list that says so, only one
 * of a built job what was measured and laid, only one by labour figures with rates the quotation. */
bool plan_files_due(const struct Planned *planned, int i);
/** "out/barn.plan.xml, .diagram.svg ...", and which templates they are made with where those are not built in;
 * malloc()ed, NULL without memory. */
char *plan_files_where(const struct Planned *planned, const char *folder, const struct OwnTemplates *own);
/** The same on stdout, one a line. */
void plan_files_list(const struct Planned *planned, const char *folder, const struct OwnTemplates *own);

/* ---- check_jobs.c ---- */
/** Checks the file of that index and prints what it comes to; its exit status. */
typedef int check_one_file(const struct Options *options, int index);
/** All files of the command line, options->jobs at a time: what is printed and the worst status are those of one after
 * the other. */
int check_each_file(const struct Options *options, check_one_file *check);

/* ---- check_papers.c ---- */
/** Says on stdout whether the papers of the plan that lie in a folder belong together and to the plan; true when they
 * do. Changes nothing. */
bool check_papers(struct Planned *planned, const char *path, bool quiet);

/* ---- shown.c ---- */
/** Whether it holds nothing that a terminal acts on and nothing that turns the text round. */
bool may_be_shown(const char *text);
/** Prints as fprintf() does, U+FFFD for each byte that is no UTF-8: a name of a file may hold any. */
void print_shown(FILE *stream, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* ---- other_job.c ---- */
/** False after telling on stderr that the plan.xml at `path` is of another job than `plan_xml`, which was to be written
 * in its place. */
bool other_job_absent(const char *path, struct WendBytes plan_xml);
/** The same of the order.xml at `path`, which is of another reference than `order_xml`. */
bool other_order_absent(const char *path, struct WendBytes order_xml);

#endif
