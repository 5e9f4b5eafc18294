/* wend order: every route planned, one order written, or nothing when any file is wrong. */
#include "cli_private.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char no_memory[] = "wend: error: there is not enough memory [out-of-memory]\n";

/* All route files, planned; every one is read, so that all faults are told in one go. */
struct Routes {
    struct Planned *planned;
    struct Wend **wends;
    int count;
    int worst;
    bool refused; /* none is wrong, but they are not to be ordered together */
};

static bool routes_plan(struct Routes *routes, const struct Options *options)
{
    char *const *paths = options->files;
    const int count = options->file_count;
    routes->planned = calloc((size_t)count, sizeof *routes->planned);
    routes->wends = calloc((size_t)count, sizeof(struct Wend *));
    if (routes->planned == NULL || routes->wends == NULL) {
        fputs(no_memory, stderr);
        return false;
    }
    for (; routes->count < count; routes->count++) {
        struct Planned *planned = &routes->planned[routes->count];
        *planned = plan_file(paths[routes->count], options);
        planned_price(planned, paths[routes->count]);
        wend_keep_order(planned->wend);
        free(planned->source.data);
        planned->source.data = NULL;
        routes->wends[routes->count] = planned->wend;
        routes->worst = planned->status > routes->worst ? planned->status : routes->worst;
    }
    return true;
}

/* One job named twice would be bought twice, and two of one name are told apart on a bag by a number alone. */
static bool told_apart(const struct Routes *routes, char *const *paths)
{
    bool apart = true;
    for (int i = 1; i < routes->count; i++) {
        const struct Planned *later = &routes->planned[i];
        for (int j = 0; j < i; j++) {
            const struct Planned *earlier = &routes->planned[j];
            const bool one_file = file_id_same(&earlier->source.id, &later->source.id);
            if (one_file ||
                (later->stem != NULL && earlier->stem != NULL && wend_looks_same(later->stem, earlier->stem))) {
                print_shown(stderr,
                            one_file ? "wend: error: %s and %s are one file: the job would be ordered twice; "
                                     : "wend: error: %s and %s are jobs of one name; ",
                            paths[j], paths[i]);
                fputs("leave one out, or say --twice when it is meant\n", stderr);
                apart = false;
                break;
            }
        }
    }
    return apart;
}

static void routes_free(struct Routes *routes)
{
    for (int i = 0; i < routes->count; i++) {
        planned_free(&routes->planned[i]);
    }
    free(routes->planned);
    free(routes->wends);
}

enum { DOCUMENTS = 2 };
_Static_assert(DOCUMENTS + 1 == (int)WEND_ORDER_DOCUMENT_COUNT, "a file for every document but the JSON");
static const char *const endings[DOCUMENTS] = {[WEND_ORDER_CSV] = ".csv", [WEND_ORDER_XML] = ".xml"};
static const char *const marks[DOCUMENTS] = {
    [WEND_ORDER_CSV] = MARK_CSV, [WEND_ORDER_XML] = "<!-- Written by Wend -->"};

/* Every name that an order's files may have. */
static struct OutSet set_of(const struct WendOrder *order)
{
    struct OutSet set = {.count = 2 * DOCUMENTS};
    const char *const stem = wend_order_name(order);
    snprintf(set.stem, sizeof set.stem, "%s", stem);
    for (int i = 0; i < set.count; i++) {
        snprintf(set.names[i].name, sizeof set.names[i].name, "%s%s%s", stem, i < DOCUMENTS ? "" : ".FAIL",
                 endings[i % DOCUMENTS]);
        set.names[i].mark = marks[i % DOCUMENTS];
    }
    return set;
}

/* "A/1" and "A-1" are one name of files. */
static bool other_order_in_way(const struct OutFolder *folder, struct WendBytes order_xml)
{
    char path[OUT_PATH_BYTES];
    bool other = false;
    for (int i = (int)WEND_ORDER_XML; !other && i < folder->set->count; i += DOCUMENTS) {
        outfile_path(path, folder, "", folder->set->names[i].name);
        other = !other_order_absent(path, order_xml);
    }
    return other;
}

static bool write_files(const struct WendOrder *order, const struct Options *options, const struct OutFile *files,
                        int count, struct Inputs inputs)
{
    const struct OutSet set = set_of(order);
    struct OutFolder folder = {.path = options->out_folder, .set = &set, .inputs = inputs};
    if (!outfolder_enter(&folder, true)) {
        return false;
    }
    const bool in_way =
        count == DOCUMENTS && !options->replace && other_order_in_way(&folder, files[WEND_ORDER_XML].bytes);
    const bool done = !in_way && outfile_write_all(&folder, files, count);
    outfolder_leave(&folder);
    return done;
}

static const char *word(long count, const char *one, const char *more)
{
    return count == 1 ? one : more;
}

static void tell_prices(const struct WendOrder *order)
{
    for (int i = 0; i < wend_order_total_count(order); i++) {
        const char *in_coin = wend_order_total_in_coin(order, i);
        printf("%s %s for %d of %d lines", wend_order_total_currency(order, i), wend_order_total_amount(order, i),
               wend_order_total_lines(order, i), wend_order_line_count(order));
        printf(*in_coin != '\0' ? "; in coin %s, rounded half up\n" : "%s\n", in_coin);
    }
    const int unpriced = wend_order_unpriced_count(order);
    if (unpriced > 0) {
        printf("%d %s without a price: in the remarks of the CSV\n", unpriced, word(unpriced, "article", "articles"));
    }
    if (*wend_order_prices_note(order) != '\0') {
        printf("not priced: %s\n", wend_order_prices_note(order));
    }
}

static void tell_order(const struct WendOrder *order)
{
    const int jobs = wend_order_job_count(order);
    for (int j = 0; j < jobs; j++) {
        print_shown(stdout, "%s: %s: %s\n", wend_order_job_name(order, j),
                    wend_verdict_word(wend_order_job_verdict(order, j)), wend_order_job_verdict_text(order, j));
    }
    const int lines = wend_order_line_count(order);
    const long packs = wend_order_packs(order);
    const long apart = wend_order_packs_apart(order);
    printf("%d %s, %d %s", jobs, word(jobs, "job", "jobs"), lines, word(lines, "line", "lines"));
    if (apart > 0) {
        printf("; %ld %s, ordered apart %ld", packs, word(packs, "pack", "packs"), apart);
    }
    puts("");
    tell_prices(order);
    if (wend_order_status(order) == WEND_CHECK_FAILS) {
        puts("A plan fails a check: do not order before it is mended.");
    } else if (wend_order_verdict(order) == WEND_OPEN) {
        puts("A plan is open: what could not be checked may change what is ordered.");
    }
}

/* Without a day there is no XML: the schema demands one, and no clock is read. */
static int write_order(struct WendOrder *order, const struct Options *options, struct Inputs inputs)
{
    struct OutFile files[DOCUMENTS];
    char names[DOCUMENTS][128];
    const bool fails = wend_order_status(order) == WEND_CHECK_FAILS;
    const bool dated = options->order_file != NULL || *options->date != '\0';
    const int count = dated ? DOCUMENTS : (int)WEND_ORDER_CSV + 1;
    for (int i = 0; i < count; i++) {
        snprintf(names[i], sizeof names[i], "%s%s%s", wend_order_name(order), fails ? ".FAIL" : "", endings[i]);
        files[i] = (struct OutFile){names[i], wend_order_document(order, (enum WendOrderDocument)i), marks[i],
                                    options->csv_bom && i == (int)WEND_ORDER_CSV ? CSV_BOM : NULL};
        if (files[i].bytes.data == NULL) {
            return report_not_made();
        }
    }
    const int status = (int)wend_order_status(order); /* before anything is written: memory may have run out */
    if (status > WEND_CHECK_FAILS || !write_files(order, options, files, count, inputs)) {
        return EXIT_SYSTEM;
    }
    tell_order(order);
    for (int i = 0; i < count; i++) {
        print_shown(stdout, "%s %s/%s\n", i == 0 ? "written:" : "        ", options->out_folder, names[i]);
    }
    if (!dated) {
        puts("not written: order.xml, which needs --order with buyer, seller and date; see wend order --help");
    }
    return with_strict(options, status, wend_order_verdict(order) == WEND_PASS);
}

/* As planned_price() does for a route. */
static int price_order(struct WendOrder *order, const char *path, int status, struct FileId *read)
{
    const char *name = status <= WEND_CHECK_FAILS ? wend_order_prices_name(order) : "";
    if (*name == '\0') {
        return status;
    }
    char *beside = source_file_beside(path, name);
    struct SourceFile list = {.data = NULL};
    if (beside == NULL) {
        status = WEND_NO_MEMORY;
    } else if (!source_file_read(beside, WEND_TEXT_MOST_BYTES, &list)) {
        print_shown(stderr, "wend: warning: the price list %s could not be read: %s; it prices nothing\n", beside,
                    source_file_why());
    } else {
        *read = list.id;
        status = (int)wend_order_price(order, list.data, list.length);
        fputs(wend_diagnostics_printed(wend_order_prices_diagnostics(order), beside), stderr);
    }
    free(list.data);
    free(beside);
    return status;
}

/* Two of each route, and two more; NULL without memory. */
static struct FileId *inputs_of(const struct Routes *routes, const struct FileId *order, const struct FileId *prices,
                                int *count)
{
    struct FileId *ids = calloc(2 * (size_t)routes->count + 2, sizeof *ids);
    *count = 0;
    for (int i = 0; ids != NULL && i < routes->count; i++) {
        ids[(*count)++] = routes->planned[i].source.id;
        ids[(*count)++] = routes->planned[i].prices;
    }
    if (ids != NULL) {
        ids[(*count)++] = *order;
        ids[(*count)++] = *prices;
    }
    return ids;
}

static bool is_wrong(const struct WendDiagnostics *told)
{
    bool wrong = false;
    for (size_t i = 0; i < wend_diagnostics_count(told); i++) {
        wrong = wrong || wend_diagnostic_severity(told, i) == WEND_ERROR;
    }
    return wrong;
}

/* What an earlier run ordered before a route became wrong must not be taken for this order. Of an order file that is
 * wrong itself the name is not known. */
static void set_stale_order_aside(const struct WendOrder *order, const struct Options *options, struct Inputs inputs)
{
    bool any = false;
    if (order == NULL || options->json || is_wrong(wend_order_diagnostics(order))) {
        return;
    }
    const struct OutSet set = set_of(order);
    struct OutFolder folder = {.path = options->out_folder, .set = &set, .inputs = inputs};
    if (!outfolder_enter(&folder, false)) {
        return;
    }
    for (int i = 0; i < set.count; i++) {
        any = outfile_set_stale_aside(folder.path, set.names[i].name, set.names[i].mark, inputs) || any;
    }
    outfolder_leave(&folder);
    if (any) {
        print_shown(stderr, "wend: note: the order in %s, from before a file was wrong, now ends in .old\n",
                    options->out_folder);
    }
}

/* `wrong`: there is no order to write. */
static int write_beside(const struct Routes *routes, const struct FileId *file, const struct FileId *prices,
                        struct WendOrder *order, const struct Options *options, bool wrong)
{
    int count = 0;
    int status = WEND_NO_MEMORY;
    struct FileId *ids = inputs_of(routes, file, prices, &count);
    if (ids == NULL) {
        fputs(no_memory, stderr);
    } else if (wrong) {
        set_stale_order_aside(order, options, (struct Inputs){ids, count});
        status = EXIT_USAGE;
    } else if (options->json) {
        status = with_strict(options, print_order_json(order), wend_order_verdict(order) == WEND_PASS);
    } else {
        status = write_order(order, options, (struct Inputs){ids, count});
    }
    free(ids);
    return status;
}

static int make_order(const struct Routes *routes, const struct SourceFile *file, const struct Options *options)
{
    struct FileId prices = {.known = false};
    struct WendOrder *order = NULL;
    order = wend_order(routes->wends, routes->count, file->data, file->length, options->date);
    int status = (int)wend_order_status(order);
    if (order != NULL && options->order_file != NULL) {
        const bool piped = strcmp(options->order_file, "-") == 0;
        fputs(wend_diagnostics_printed(wend_order_diagnostics(order), piped ? "standard input" : options->order_file),
              stderr);
        status = price_order(order, options->order_file, status, &prices);
    }
    if (status == WEND_NO_MEMORY) {
        fputs(no_memory, stderr);
    }
    status = status > routes->worst ? status : routes->worst;
    if (status <= EXIT_USAGE && !routes->refused) {
        status = write_beside(routes, &file->id, &prices, order, options, status == EXIT_USAGE);
    }
    wend_order_free(order);
    return status > routes->worst ? status : routes->worst;
}

int run_order(const struct Options *options)
{
    struct Routes routes = {.worst = WEND_PASSES};
    struct SourceFile file = {.data = NULL};
    int status = EXIT_SYSTEM;
    if (options->order_file != NULL && !source_file_read(options->order_file, WEND_TEXT_MOST_BYTES, &file)) {
        print_shown(stderr, "wend: error: %s could not be read: %s\n", options->order_file, source_file_why());
    } else if (routes_plan(&routes, options)) {
        routes.refused = !options->twice && !told_apart(&routes, options->files);
        routes.worst = routes.refused && routes.worst < EXIT_USAGE ? EXIT_USAGE : routes.worst;
        status = make_order(&routes, &file, options);
    }
    routes_free(&routes);
    free(file.data);
    return status;
}
