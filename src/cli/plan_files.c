/* The files that a plan becomes: their names, what tells that they are ours, and how they come into their folder. */
#include "cli_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct {
    enum WendDocument document;
    const char *ending, *mark;
} written[] = {
    {WEND_PLAN_XML, ".plan.xml", "<plan format=\""}, {WEND_DIAGRAM_SVG, ".diagram.svg", "<title id=\"diagram-title\">"},
    {WEND_PARTS_CSV, ".parts.csv", MARK_CSV},        {WEND_BRIEF_HTML, ".brief.html", MARK_HTML},
    {WEND_PARTS_HTML, ".parts.html", MARK_HTML},     {WEND_DESIGN_HTML, ".design.html", MARK_HTML},
    {WEND_TEST_HTML, ".test.html", MARK_HTML},       {WEND_PACK_HTML, ".pack.html", MARK_HTML},
    {WEND_CARD_HTML, ".card.html", MARK_HTML},       {WEND_READINGS_HTML, ".readings.html", MARK_HTML},
    {WEND_AS_LAID_HTML, ".as-laid.html", MARK_HTML},
};
enum { WRITTEN = sizeof written / sizeof *written, FAILED_LIST = WRITTEN, QUOTATION, IN_SET };
static const char quotation_ending[] = ".quotation.html"; /* only where the user gave rates */
_Static_assert(WRITTEN + 4 == (int)WEND_DOCUMENT_COUNT,
               "a file for every document but the two summaries, the JSON and the drawing that the papers hold");

/* The counter sees the list alone: that of a plan that fails says so in its name. The papers say so on themselves, and
 * keep theirs. */
static const char *ending_of(int i, bool fails)
{
    return fails && written[i].document == WEND_PARTS_CSV ? ".FAIL.parts.csv" : written[i].ending;
}

bool plan_files_set(const char *stem, struct OutSet *set)
{
    bool good = strlen(stem) < sizeof set->stem;
    snprintf(set->stem, sizeof set->stem, "%s", stem);
    set->count = IN_SET;
    for (int i = 0; i < set->count; i++) {
        struct OutName *name = &set->names[i];
        const int length = snprintf(name->name, sizeof name->name, "%s%s", stem,
                                    i < FAILED_LIST    ? written[i].ending
                                    : i == FAILED_LIST ? ".FAIL.parts.csv"
                                                       : quotation_ending);
        name->mark = i < FAILED_LIST ? written[i].mark : i == FAILED_LIST ? MARK_CSV : MARK_HTML;
        good = good && length > 0 && (size_t)length < sizeof name->name;
    }
    if (!good) {
        print_shown(stderr, "wend: error: the name %s is too long\n", stem);
    }
    return good;
}

bool plan_files_due(const struct Planned *planned, int i)
{
    if (i == QUOTATION) {
        return wend_quotes(planned->wend);
    }
    const bool fails = planned->status == WEND_CHECK_FAILS;
    return i == FAILED_LIST ? fails
                            : wend_has_document(planned->wend, written[i].document) &&
                                  (!fails || written[i].document != WEND_PARTS_CSV);
}

/* What an earlier run wrote before the file became wrong must not be taken for its plan. */
static void set_stale_aside(const struct OutFolder *folder)
{
    int count = 0;
    for (int i = 0; i < folder->set->count; i++) {
        const struct OutName *name = &folder->set->names[i];
        count += outfile_set_stale_aside(folder->path, name->name, name->mark, folder->inputs);
    }
    if (count > 0) {
        print_shown(stderr, "wend: note: %d file%s in %s, of %s before it was wrong, now end%s in .old\n", count,
                    count == 1 ? "" : "s", folder->path, folder->set->stem, count == 1 ? "s" : "");
    }
}

/* `plan_xml` is the first of those written. */
static bool other_job_in_way(const struct Planned *planned, const struct Options *options, struct WendBytes plan_xml)
{
    char path[4096];
    const int length = snprintf(path, sizeof path, "%s/%s.plan.xml", options->out_folder, planned->stem);
    return !options->replace && length > 0 && (size_t)length < sizeof path && !other_job_absent(path, plan_xml);
}

/* The last is made first, for papers alone may be refused, and all are made at once; then from the first to the
 * largest. False: one could not be. */
static bool make_documents(struct Planned *planned, struct WendBytes made[WRITTEN + 1])
{
    struct Progress progress;
    bool whole = true;
    const bool quotes = wend_quotes(planned->wend); /* asked before memory may end */
    progress_begin(&progress, "making the papers of", planned->stem, planned->since_s);
    for (int made_so_far = 0; whole && made_so_far < WRITTEN; made_so_far++) {
        const int i = (WRITTEN - 1 + made_so_far) % WRITTEN;
        made[i] = wend_document(planned->wend, written[i].document);
        whole = made[i].data != NULL || !wend_has_document(planned->wend, written[i].document);
    }
    made[WRITTEN] = whole && quotes ? wend_quotation(planned->wend) : (struct WendBytes){NULL, 0};
    progress_end(&progress);
    return whole && (made[WRITTEN].data != NULL || !quotes);
}

/* Every document stands complete in memory before the first byte goes to disk. */
static bool write_documents(struct Planned *planned, const struct Options *options, struct OutFolder *folder)
{
    struct OutFile files[WRITTEN + 1];
    struct WendBytes made[WRITTEN + 1];
    if (!make_documents(planned, made)) {
        const char *fault = wend_diagnostics_printed(wend_papers_diagnostics(planned->wend), "wend");
        if (*fault != '\0') {
            fputs(fault, stderr);
        } else {
            report_not_made();
        }
        return false;
    }
    const bool fails = planned->status == WEND_CHECK_FAILS;
    int count = 0;
    for (int i = 0; i < WRITTEN; i++) {
        const bool list = written[i].document == WEND_PARTS_CSV;
        if (made[i].data == NULL) {
            continue;
        }
        files[count++] = (struct OutFile){folder->set->names[fails && list ? FAILED_LIST : i].name, made[i],
                                          written[i].mark, options->csv_bom && list ? CSV_BOM : NULL};
    }
    if (made[WRITTEN].data != NULL) {
        files[count++] = (struct OutFile){folder->set->names[QUOTATION].name, made[WRITTEN], MARK_HTML, NULL};
    }
    if (!outfolder_enter(folder, true)) {
        return false;
    }
    const bool done = !other_job_in_way(planned, options, files[0].bytes) && outfile_write_all(folder, files, count);
    outfolder_leave(folder);
    return done;
}

bool plan_files_write(struct Planned *planned, const struct OwnTemplates *own, const struct Options *options)
{
    struct FileId ids[3 + TEMPLATES_MOST] = {planned->source.id, planned->prices, planned->labour};
    memcpy(ids + 3, own->ids, sizeof own->ids);
    struct OutSet set;
    struct OutFolder folder = {.path = options->out_folder, .set = &set, .inputs = {ids, 3 + own->count}};
    if (!plan_files_set(planned->stem, &set)) {
        return false;
    }
    if (planned->status <= WEND_CHECK_FAILS) {
        return write_documents(planned, options, &folder);
    }
    if (!outfolder_enter(&folder, false)) {
        return false;
    }
    set_stale_aside(&folder);
    outfolder_leave(&folder);
    return true;
}

char *plan_files_where(const struct Planned *planned, const char *folder, const struct OwnTemplates *own)
{
    enum { ENDING_MOST = 24 };
    const size_t size = strlen(folder) + strlen(planned->stem) + (size_t)IN_SET * ENDING_MOST + sizeof own->folder;
    char *text = malloc(size);
    int at = text != NULL ? snprintf(text, size, "%s/%s", folder, planned->stem) : 0;
    for (int i = 0; text != NULL && i < WRITTEN; i++) {
        if (!wend_has_document(planned->wend, written[i].document)) {
            continue;
        }
        at += snprintf(text + at, size - (size_t)at, "%s%s", i > 0 ? ", " : "",
                       ending_of(i, planned->status == WEND_CHECK_FAILS));
    }
    if (text != NULL && wend_quotes(planned->wend)) {
        at += snprintf(text + at, size - (size_t)at, ", %s", quotation_ending);
    }
    if (text != NULL && own->count > 0) {
        snprintf(text + at, size - (size_t)at, "; templates: %s", own->folder);
    }
    return text;
}

void plan_files_list(const struct Planned *planned, const char *folder, const struct OwnTemplates *own)
{
    for (int i = 0; i < WRITTEN; i++) {
        if (!wend_has_document(planned->wend, written[i].document)) {
            continue;
        }
        print_shown(stdout, "%s %s/%s%s\n", i == 0 ? "written:" : "        ", folder, planned->stem,
                    ending_of(i, planned->status == WEND_CHECK_FAILS));
    }
    if (wend_quotes(planned->wend)) {
        print_shown(stdout, "         %s/%s%s\n", folder, planned->stem, quotation_ending);
    }
    if (own->count > 0) {
        print_shown(stdout, "templates: %s\n", own->folder);
    }
}
