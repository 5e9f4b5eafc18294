/* Does what the command line asks: read the file, plan it, write the documents. */
#include "cli_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static void put(FILE *stream, const char *text, size_t length)
{
    fwrite(text, 1, length, stream); /* main() asks ferror() at the end */
}

int report_not_made(void)
{
    const char *missing = wend_missing();
    if (*missing != '\0') {
        fprintf(stderr, "wend: error: what XML and papers are made with could not be loaded: %s\n", missing);
    } else {
        fputs("wend: error: there is not enough memory [out-of-memory]\n", stderr);
    }
    return EXIT_SYSTEM;
}

static bool wants_colour(void)
{
    const char *no_colour = getenv("NO_COLOR");
    const char *term = getenv("TERM");
    return isatty(STDOUT_FILENO) && (no_colour == NULL || no_colour[0] == '\0') && term != NULL &&
           strcmp(term, "dumb") != 0;
}

int with_strict(const struct Options *options, int status, bool passes)
{
    return options->strict && status == WEND_PASSES && !passes ? (int)WEND_CHECK_FAILS : status;
}

/* The papers of a changed route have names of their own, beside those of the file. */
static char *stem_of(const char *path, bool changed)
{
    static const char ending[] = ".changed";
    char *stem = source_file_stem(path);
    if (stem == NULL || !changed) {
        return stem;
    }
    const size_t size = strlen(stem) + sizeof ending;
    char *longer = malloc(size);
    if (longer != NULL) {
        snprintf(longer, size, "%s%s", stem, ending);
    }
    free(stem);
    return longer;
}

static enum WendWanted wanted_by(const struct Options *options)
{
    return options->command == COMMAND_ORDER                              ? WEND_WANT_ORDER
           : options->command == COMMAND_CHECK && options->papers == NULL ? WEND_WANT_VERDICT
                                                                          : WEND_WANT_DOCUMENTS;
}

struct Planned plan_file(const char *path, const struct Options *options)
{
    struct Planned planned = {.status = EXIT_SYSTEM, .since_s = progress_now()};
    struct Progress progress;
    progress_begin(&progress, "planning", path, planned.since_s);
    const bool read = source_file_read(path, WEND_TEXT_MOST_BYTES, &planned.source);
    const char *fault = read ? "" : source_file_why();
    planned.stem = read ? stem_of(path, options->set_count > 0) : NULL;
    if (planned.stem != NULL) {
        planned.wend = wend_plan_wanted(wanted_by(options), planned.stem, planned.source.data, planned.source.length,
                                        options->sets, options->set_count);
    }
    progress_end(&progress);
    if (!read) {
        print_shown(stderr, "wend: error: %s could not be read: %s\n", path, fault);
        return planned;
    }
    planned.status = (int)wend_status(planned.wend);
    const char *file = strcmp(path, "-") == 0 ? "standard input" : path;
    fputs(wend_diagnostics_printed(wend_diagnostics(planned.wend), file), stderr);
    if (planned.status == EXIT_SYSTEM) {
        fputs("wend: error: there is not enough memory [out-of-memory]\n", stderr);
    }
    return planned;
}

void planned_price(struct Planned *planned, const char *path)
{
    const char *name = planned->status <= WEND_CHECK_FAILS ? wend_prices_name(planned->wend) : "";
    if (*name == '\0') {
        return;
    }
    char *beside = source_file_beside(path, name);
    struct SourceFile list = {.data = NULL};
    if (beside == NULL) {
        planned->status = EXIT_SYSTEM;
    } else if (!source_file_read(beside, WEND_TEXT_MOST_BYTES, &list)) {
        print_shown(stderr, "wend: warning: the price list %s could not be read: %s; nothing is priced\n", beside,
                    source_file_why());
    } else {
        planned->prices = list.id;
        planned->status = (int)wend_price(planned->wend, list.data, list.length);
        fputs(wend_diagnostics_printed(wend_prices_diagnostics(planned->wend), beside), stderr);
    }
    if (planned->status == EXIT_SYSTEM) {
        fputs("wend: error: there is not enough memory [out-of-memory]\n", stderr);
    }
    free(list.data);
    free(beside);
}

void planned_labour(struct Planned *planned, const char *path, const char *given)
{
    const char *name = planned->status <= WEND_CHECK_FAILS ? wend_labour_name(planned->wend) : "";
    if (planned->status > WEND_CHECK_FAILS || (given == NULL && *name == '\0')) {
        return;
    }
    char *beside = given != NULL ? strdup(given) : source_file_beside(path, name);
    struct SourceFile file = {.data = NULL};
    if (beside == NULL) {
        planned->status = report_not_made();
    } else if (!source_file_read(beside, WEND_TEXT_MOST_BYTES, &file)) {
        print_shown(stderr, "wend: %s: the labour figures %s could not be read: %s%s\n",
                    given != NULL ? "error" : "warning", beside, source_file_why(),
                    given != NULL ? "" : "; those of the program are taken");
        planned->status = given != NULL ? EXIT_SYSTEM : planned->status;
    } else {
        planned->labour = file.id;
        planned->status = (int)wend_labour(planned->wend, file.data, file.length);
        fputs(wend_diagnostics_printed(wend_labour_diagnostics(planned->wend),
                                       strcmp(beside, "-") == 0 ? "standard input" : beside),
              stderr);
        if (planned->status == EXIT_SYSTEM) {
            report_not_made();
        }
    }
    free(file.data);
    free(beside);
}

void planned_free(struct Planned *planned)
{
    wend_free(planned->wend);
    free(planned->stem);
    free(planned->source.data);
}

/* One line; of a plan that is open with all that could not be checked, however much that is. */
static void print_verdict(const char *file, const struct Wend *wend, const struct Options *options)
{
    const bool open = wend_verdict(wend) == WEND_OPEN;
    print_shown(stdout, "%s", file);
    for (int i = 0; i < options->set_count; i++) {
        print_shown(stdout, " --set %s", options->sets[i]);
    }
    printf(": %s: ", wend_verdict_word(wend_verdict(wend)));
    for (int i = 0; open && i < wend_open_count(wend); i++) {
        printf("%s%s", i > 0 ? "; " : "", wend_open_text(wend, i));
    }
    printf("%s", open ? "" : wend_verdict_text(wend));
    const int warnings = wend_warning_count(wend);
    if (warnings > 0) {
        printf("; %d warning%s", warnings, warnings == 1 ? "" : "s");
    }
    puts("");
}

static struct WendBytes decision(const struct Planned *planned, const struct OwnTemplates *own,
                                 const struct Options *options)
{
    char *where = plan_files_where(planned, options->out_folder, own);
    const struct WendBytes text =
        where != NULL ? wend_decision(planned->wend, where, wants_colour()) : (struct WendBytes){NULL, 0};
    free(where);
    return text;
}

/* What `wend plan` prints, before anything is written: data is NULL without memory. */
static struct WendBytes told_of(const struct Planned *planned, const struct OwnTemplates *own,
                                const struct Options *options)
{
    if (options->quiet) {
        return (struct WendBytes){"", 0};
    }
    return options->full ? wend_document(planned->wend, wants_colour() ? WEND_SUMMARY_TEXT_COLOUR : WEND_SUMMARY_TEXT)
                         : decision(planned, own, options);
}

static void print_plan(const struct Planned *planned, const struct OwnTemplates *own, const struct Options *options,
                       struct WendBytes told)
{
    put(stdout, told.data, told.length);
    if (options->quiet && wend_verdict(planned->wend) != WEND_PASS) {
        print_verdict(options->files[0], planned->wend, options);
    }
    if (options->full && !options->quiet) {
        plan_files_list(planned, options->out_folder, own);
    }
}

/* Also what is printed stands in memory before the first byte goes to disk: a run that ends with 3 has left the folder
 * as it was. */
static void write_and_print(struct Planned *planned, const struct OwnTemplates *own, const struct Options *options)
{
    wend_use_templates(planned->wend, own->templates);
    wend_use_language(planned->wend, options->language);
    const struct WendBytes told = told_of(planned, own, options);
    if (told.data == NULL) {
        planned->status = report_not_made();
    } else if (!plan_files_write(planned, own, options)) {
        planned->status = EXIT_SYSTEM;
    } else {
        print_plan(planned, own, options, told);
    }
}

static int run_plan(const struct Options *options)
{
    struct OwnTemplates own;
    const int templates = own_templates_read(options->template_folder, &own);
    if (templates != 0) {
        return templates;
    }
    struct Planned planned = plan_file(options->files[0], options);
    planned_price(&planned, options->files[0]);
    planned_labour(&planned, options->files[0], options->labour_file);
    if (planned.status <= WEND_CHECK_FAILS) {
        write_and_print(&planned, &own, options);
    } else if (planned.status == WEND_INPUT_WRONG) {
        plan_files_write(&planned, &own, options);
    }
    const int status = with_strict(options, planned.status, wend_verdict(planned.wend) == WEND_PASS);
    planned_free(&planned);
    own_templates_free(&own);
    return status;
}

char *plan_again(const struct Options *options, int *status, char *beside[BESIDE_COUNT])
{
    struct OwnTemplates own;
    char *summary = NULL;
    beside[BESIDE_PRICES] = beside[BESIDE_LABOUR] = NULL;
    *status = own_templates_read(options->template_folder, &own);
    if (*status != 0) {
        return NULL;
    }
    struct Planned planned = plan_file(options->files[0], options);
    planned_price(&planned, options->files[0]);
    planned_labour(&planned, options->files[0], options->labour_file);
    const char *names[BESIDE_COUNT] = {wend_prices_name(planned.wend), wend_labour_name(planned.wend)};
    for (int i = 0; i < BESIDE_COUNT; i++) {
        beside[i] = *names[i] != '\0' ? source_file_beside(options->files[0], names[i]) : NULL;
    }
    wend_use_templates(planned.wend, own.templates);
    wend_use_language(planned.wend, options->language);
    const struct WendBytes text = wend_document(planned.wend, WEND_SUMMARY_TEXT);
    *status = planned.status;
    if (planned.status <= EXIT_USAGE && !plan_files_write(&planned, &own, options)) {
        *status = EXIT_SYSTEM;
    } else if (text.data != NULL) {
        summary = strndup(text.data, text.length);
    }
    planned_free(&planned);
    own_templates_free(&own);
    return summary;
}

static int check_file(const struct Options *options, int index)
{
    const char *file = options->files[index];
    struct Planned planned = plan_file(file, options);
    planned_price(&planned, file);
    planned_labour(&planned, file, options->labour_file);
    if (planned.status <= WEND_CHECK_FAILS) {
        if (!options->quiet || wend_verdict(planned.wend) != WEND_PASS) {
            print_verdict(file, planned.wend, options);
        }
        const bool papers = options->papers == NULL || check_papers(&planned, options->papers, options->quiet);
        planned.status = with_strict(options, planned.status, wend_verdict(planned.wend) == WEND_PASS);
        planned.status = !papers && planned.status == WEND_PASSES ? (int)WEND_CHECK_FAILS : planned.status;
    } else if (planned.status == WEND_INPUT_WRONG) {
        print_shown(stdout, "%s: WRONG: nothing was planned\n", file);
    }
    const int status = planned.status;
    planned_free(&planned);
    return status;
}

int run_command(const struct Options *options)
{
    switch (options->command) {
    case COMMAND_PLAN: return options->json ? run_plan_json(options) : run_plan(options);
    case COMMAND_CHECK: return options->json ? run_check_json(options) : check_each_file(options, check_file);
    case COMMAND_OPTIONS:
    case COMMAND_DECIDES:
    case COMMAND_REACH:
    case COMMAND_EXPLAIN: return run_question(options);
    case COMMAND_DIFF: return run_diff(options);
    case COMMAND_DAY: return run_day(options);
    case COMMAND_READINGS: return run_readings(options);
    case COMMAND_ORDER: return run_order(options);
    case COMMAND_MANUAL: return run_manual();
    case COMMAND_NEW: return run_new(options);
    case COMMAND_FORM: return run_form(options);
    case COMMAND_SCHEMA: return run_schema();
    case COMMAND_TABLES: return run_tables();
    case COMMAND_TEMPLATES: return own_templates_write(options->out_folder, options->force);
    case COMMAND_MAN: return man_page_print(options->files[0]);
    case COMMAND_COMPLETE: return complete_print(options->files, options->file_count);
    case COMMAND_WATCH: return run_watch(options);
    case COMMAND_TABLE: return run_table(options);
    case COMMAND_CABLE: return run_cable(options);
    case COMMAND_VERSION: puts("wend " WEND_VERSION); return 0;
    case COMMAND_HELP:
    case COMMAND_NONE:
        if (*options->word != '\0') {
            return help_on_word(options->word);
        }
        options_help(options->help_on);
        return 0;
    }
    return EXIT_USAGE;
}
