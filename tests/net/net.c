/* A net: of many routes, some of files and some drawn by lot, and of every file that a reader may meet, what is
 * decided, counted and told, as a digest of each document; any that changes is named. It says that something differs
 * and never what is right: that is for the tests with figures.
 *
 *   test_net                    compares with net/net.tsv
 *   test_net first              ends at the first that differs
 *   test_net record             writes net/net.tsv anew
 *   test_net print ROW COLUMN   prints that document; net/net.sh shows so what differs between two builds
 */
#include "net_made.h"

#include "wend/wend.h"

#include <glob.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define KEPT TESTS_FOLDER "/net/net.tsv"

enum { ROWS_MOST = 4000, ROW_MOST = 200, MADE_COUNT = 300, REACH_EVERY = 4, PAPERS_EVERY = 8 };

enum Column { TOLD, PLAN, PARTS, SUMMARY, WORKING, OPTIONS, DECIDES, REACH, TESTS, BRIEF, COLUMNS };
static const char *const columns[COLUMNS] = {"told",    "plan",    "parts", "summary", "working",
                                             "options", "decides", "reach", "tests",   "brief"};

struct Row {
    char line[ROW_MOST];
    size_t length;
    int column;
};

static struct {
    char (*kept)[ROW_MOST];
    int kept_count, seen_count, differing, made_refused;
    FILE *record;
    const char *row, *column; /* to be printed; NULL: all are compared */
    bool printed, first_ends;
} net;

static void stop(const char *why, const char *what)
{
    fprintf(stderr, "%s: %s\n", what, why);
    exit(EXIT_FAILURE);
}

static bool row_due(const char *name)
{
    return net.row == NULL || strcmp(net.row, name) == 0;
}

static struct Row row_of(const char *name)
{
    struct Row row = {.length = (size_t)snprintf(row.line, ROW_MOST, "%s", name)};
    return row;
}

static void add_text(struct Row *row, const char *cell)
{
    row->length += (size_t)snprintf(row->line + row->length, ROW_MOST - row->length, "\t%s", cell);
    if (row->length >= ROW_MOST) {
        stop("is too long a row", row->line);
    }
}

/* FNV-1a, folded. */
static void add(struct Row *row, struct WendBytes bytes)
{
    if (net.row != NULL && strcmp(columns[row->column], net.column) == 0 && bytes.data != NULL) {
        fwrite(bytes.data, 1, bytes.length, stdout);
        net.printed = true;
    }
    row->column++;
    if (bytes.data == NULL) {
        add_text(row, "-");
        return;
    }
    uint64_t digest = 14695981039346656037U;
    for (size_t i = 0; i < bytes.length; i++) {
        digest = (digest ^ (unsigned char)bytes.data[i]) * 1099511628211U;
    }
    char cell[16];
    snprintf(cell, sizeof cell, "%08x", (unsigned)(digest ^ digest >> 32));
    add_text(row, cell);
}

static void add_string(struct Row *row, const char *text)
{
    add(row, (struct WendBytes){text, text == NULL ? 0 : strlen(text)});
}

static const char *cell_of(const char *line, int column)
{
    for (; column >= 0; column--) {
        line = strchr(line, '\t');
        if (line == NULL) {
            return "";
        }
        line++;
    }
    return line;
}

static void differs(const char *name, int name_length, const char *what)
{
    net.differing++;
    printf("%.*s\t%s\n", name_length, name, what);
    if (net.first_ends) {
        exit(EXIT_FAILURE);
    }
}

static void end_row(const struct Row *row)
{
    if (net.row != NULL) {
        return;
    }
    if (net.record != NULL) {
        fprintf(net.record, "%s\n", row->line);
        net.seen_count++;
        return;
    }
    const int name_length = (int)strcspn(row->line, "\t");
    for (int i = 0; i < net.kept_count; i++) { /* from the one that is due, so that this is its first */
        const char *kept = net.kept[(net.seen_count + i) % net.kept_count];
        if (strncmp(kept, row->line, (size_t)name_length + 1) == 0) {
            net.seen_count++;
            for (int c = 0; c < row->column && strcmp(kept, row->line) != 0; c++) {
                const char *is = cell_of(row->line, c);
                if (strncmp(is, cell_of(kept, c), strcspn(is, "\t") + 1) != 0) {
                    differs(row->line, name_length, columns[c]);
                }
            }
            return;
        }
    }
    differs(row->line, name_length, "is not recorded");
}

/* ---- what is asked of a plan ---- */

static struct WendBytes answer(const struct WendAnswer *answered)
{
    const struct WendBytes text = wend_answer_text(answered);
    if (text.data != NULL) {
        return text;
    }
    const char *told = wend_diagnostics_printed(wend_answer_diagnostics(answered), "question");
    return (struct WendBytes){told, strlen(told)};
}

enum { TOLD_MOST = 1 << 18 };

/* Every report, the verdict and what is open. */
static void tell(char told[TOLD_MOST], struct Wend *wend, const char *text, size_t length)
{
    char *tree = text == NULL ? NULL : wend_tree_json(text, length);
    int at = snprintf(told, TOLD_MOST, "%d %s\n%s%s%s", (int)wend_status(wend), wend_verdict_text(wend),
                      wend_diagnostics_printed(wend_diagnostics(wend), "file"),
                      wend_diagnostics_printed(wend_prices_diagnostics(wend), "prices"),
                      wend_diagnostics_printed(wend_labour_diagnostics(wend), "labour"));
    for (int i = 0; i < wend_open_count(wend) && at < TOLD_MOST; i++) {
        at += snprintf(told + at, TOLD_MOST - (size_t)at, "%s\n", wend_open_text(wend, i));
    }
    for (int i = 0; i < wend_warning_count(wend) && at < TOLD_MOST; i++) {
        at += snprintf(told + at, TOLD_MOST - (size_t)at, "%s\n", wend_warning_text(wend, i));
    }
    char *json = wend_check_json(wend, "file");
    if (at < TOLD_MOST) {
        snprintf(told + at, TOLD_MOST - (size_t)at, "%s\n%s\n", json, tree == NULL ? "" : tree);
    }
    wend_text_free(json);
    wend_text_free(tree);
}

static void add_told(struct Row *row, struct Wend *wend, const char *text, size_t length)
{
    static char told[TOLD_MOST];
    tell(told, wend, text, length);
    add_string(row, told);
}

static bool orders_alike(struct Wend *one, struct Wend *other)
{
    struct WendOrder *a = wend_order(&one, 1, NULL, 0, "");
    struct WendOrder *b = wend_order(&other, 1, NULL, 0, "");
    const struct WendBytes in_a = wend_order_document(a, WEND_ORDER_CSV), in_b = wend_order_document(b, WEND_ORDER_CSV);
    const bool alike = wend_order_status(a) == wend_order_status(b) && in_a.length == in_b.length &&
                       (in_a.length == 0 || memcmp(in_a.data, in_b.data, in_a.length) == 0);
    wend_order_free(a);
    wend_order_free(b);
    return alike;
}

/* A plan of which less is wanted is told the same, word for word, and orders the same. */
static void look_wanted(const char *name, struct Wend *whole, struct WendBytes text, const char *const *changes,
                        int count)
{
    static char told[TOLD_MOST], again[TOLD_MOST];
    tell(told, whole, NULL, 0);
    for (int wanted = WEND_WANT_ORDER; wanted <= WEND_WANT_VERDICT; wanted++) {
        struct Wend *less = wend_plan_wanted((enum WendWanted)wanted, "route", text.data, text.length, changes, count);
        tell(again, less, NULL, 0);
        if (strcmp(told, again) != 0) {
            differs(name, (int)strlen(name), wanted == WEND_WANT_ORDER ? "told, for an order" : "told, for a verdict");
        }
        if (wanted == WEND_WANT_ORDER && !orders_alike(whole, less)) {
            differs(name, (int)strlen(name), "order");
        }
        wend_free(less);
    }
}

enum Depth { DECIDED, ASKED, WHAT_IF, REACHED, WITH_PAPERS };

static void add_plan(struct Row *row, struct Wend *wend, enum Depth depth)
{
    if (wend_status(wend) > WEND_CHECK_FAILS) {
        return;
    }
    add(row, wend_document(wend, WEND_PLAN_XML));
    add(row, wend_document(wend, WEND_PARTS_CSV));
    if (depth == DECIDED) {
        return;
    }
    add(row, wend_document(wend, WEND_SUMMARY_TEXT));
    char *working = NULL;
    size_t length = 0;
    FILE *out = open_memstream(&working, &length);
    for (int i = 0; i < wend_check_count(wend); i++) {
        const struct WendBytes bytes = answer(wend_explain(wend, wend_check_name(wend, i), ""));
        fwrite(bytes.data, 1, bytes.length, out);
    }
    fclose(out);
    add(row, (struct WendBytes){working, length});
    free(working);
    add(row, answer(wend_options(wend, "", 25)));
    if (depth == ASKED) {
        return;
    }
    add(row, answer(wend_decides(wend)));
    if (depth == WHAT_IF) {
        return;
    }
    add(row, answer(wend_reach(wend)));
    if (depth == REACHED) {
        return;
    }
    add(row, wend_document(wend, WEND_TEST_HTML));
    wend_use_language(wend, "pl");
    add(row, wend_document(wend, WEND_BRIEF_HTML));
}

/* ---- files ---- */

static struct WendBytes file_bytes(const char *path)
{
    static char text[1 << 20];
    FILE *file = fopen(path, "rb");
    if (file == NULL) {
        return (struct WendBytes){NULL, 0};
    }
    const size_t length = fread(text, 1, sizeof text, file);
    fclose(file);
    return (struct WendBytes){text, length};
}

/* "found/two-rods" of ".../found/two-rods.yaml"; names that are digests are cut. */
static const char *name_of(const char *path, char name[ROW_MOST])
{
    const char *from = strrchr(path, '/');
    while (from > path && from[-1] != '/') {
        from--;
    }
    snprintf(name, ROW_MOST, "%s", from);
    char *own = strchr(name, '/') + 1;
    if (strlen(own) == 40 && strspn(own, "0123456789abcdef") == 40) {
        own[12] = '\0';
    }
    char *ending = strstr(own, ".yaml");
    if (ending != NULL) {
        *ending = '\0';
    }
    return name;
}

static void for_files(const char *pattern, void (*look)(const char *path, const char *name, struct WendBytes bytes))
{
    glob_t found;
    if (glob(pattern, 0, NULL, &found) != 0) {
        stop("no such file", pattern);
    }
    for (size_t i = 0; i < found.gl_pathc; i++) {
        char name[ROW_MOST];
        if (row_due(name_of(found.gl_pathv[i], name))) {
            look(found.gl_pathv[i], name, file_bytes(found.gl_pathv[i]));
        }
    }
    globfree(&found);
}

/* The papers of one route take as long as all the rest of several. */
static enum Depth depth_of_next(void)
{
    static int asked = 0;
    const int at = asked++;
    return net.row != NULL || at % PAPERS_EVERY == 0 ? WITH_PAPERS : at % REACH_EVERY == 0 ? REACHED : WHAT_IF;
}

static void look_whole(const char *path, const char *name, struct WendBytes bytes)
{
    struct Row row = row_of(name);
    struct Wend *wend = wend_plan("route", bytes.data, bytes.length);
    look_wanted(name, wend, bytes, NULL, 0);
    if (wend_prices_name(wend)[0] != '\0') {
        char beside[512];
        snprintf(beside, sizeof beside, "%.*s%s", (int)(strrchr(path, '/') + 1 - path), path, wend_prices_name(wend));
        const struct WendBytes prices = file_bytes(beside);
        if (prices.data != NULL) {
            (void)wend_price(wend, prices.data, prices.length);
        }
    }
    add_told(&row, wend, NULL, 0);
    add_plan(&row, wend, depth_of_next());
    wend_free(wend);
    end_row(&row);
}

static void look_read(const char *path, const char *name, struct WendBytes bytes)
{
    (void)path;
    struct Row row = row_of(name);
    struct Wend *wend = wend_plan("route", bytes.data, bytes.length);
    look_wanted(name, wend, bytes, NULL, 0);
    add_told(&row, wend, bytes.data, bytes.length);
    add_plan(&row, wend, DECIDED);
    wend_free(wend);
    end_row(&row);
}

static const char small[] = "wend: 1\njob: {title: Shed}\nsupply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                            "runs:\n  feeder: {load: {current: 26 A}, cable: {type: BS5467, cores: 3}}\n"
                            "segments:\n  - {name: gable, way: wall, length: 6.5 m, rise: 2.5 m}\n"
                            "  - {name: track, way: duct, length: 24 m, duct: {size: 63 mm}, depth: 600 mm}\n";

static void look_prices(const char *path, const char *name, struct WendBytes bytes)
{
    (void)path;
    struct Row row = row_of(name);
    struct Wend *wend = wend_plan("route", small, strlen(small));
    (void)wend_price(wend, bytes.data, bytes.length);
    add_told(&row, wend, NULL, 0);
    add(&row, (struct WendBytes){NULL, 0});
    add(&row, wend_document(wend, WEND_PARTS_CSV));
    wend_free(wend);
    end_row(&row);
}

static void look_labour(const char *path, const char *name, struct WendBytes bytes)
{
    static const struct WendDay day = {.hands = 0, .seed = 1, .date = "2026-05-14"};
    (void)path;
    struct Row row = row_of(name);
    struct Wend *wend = wend_plan("route", small, strlen(small));
    (void)wend_labour(wend, bytes.data, bytes.length);
    add_told(&row, wend, NULL, 0);
    add(&row, wend_day(wend, &day, WEND_DAY_JSON));
    wend_free(wend);
    end_row(&row);
}

static void look_order(const char *path, const char *name, struct WendBytes bytes)
{
    (void)path;
    struct Row row = row_of(name);
    struct Wend *wend = wend_plan("route", small, strlen(small));
    struct WendOrder *order = wend_order(&wend, 1, bytes.data, bytes.length, "2026-05-14");
    add_string(&row, wend_diagnostics_printed(wend_order_diagnostics(order), "order"));
    add(&row, wend_order_document(order, WEND_ORDER_XML));
    add(&row, wend_order_document(order, WEND_ORDER_CSV));
    wend_order_free(order);
    wend_free(wend);
    end_row(&row);
}

/* ---- good files with each value in turn made another ---- */

static const char *const others[] = {
    "",        "0",      "-1 m",    "0.05 m",     "5000 m",     "5000.1 m",   "1,5 m",      "12 A",       "3 %",
    "90 degC", "no",     "TT",      "[a, b]",     "{a: 1}",     "1900-02-29", "0900-02-28", "2024-02-29", "~",
    "1.2.3 m", "a/b: c", "'it''s'", "5 m to 7 m", "7 m to 5 m", "none",       "armour",     "2"};

static struct Wend *bent_route(const char *text, size_t length)
{
    return wend_plan("route", text, length);
}

static struct Wend *bent_labour(const char *text, size_t length)
{
    struct Wend *wend = wend_plan("route", small, strlen(small));
    (void)wend_labour(wend, text, length);
    return wend;
}

static void write_bent_order(FILE *out, const char *text, size_t length)
{
    struct Wend *wend = wend_plan("route", small, strlen(small));
    struct WendOrder *order = wend_order(&wend, 1, text, length, "");
    fprintf(out, "%s", wend_diagnostics_printed(wend_order_diagnostics(order), "order"));
    wend_order_free(order);
    wend_free(wend);
}

static void write_bent(FILE *out, const char *text, size_t length, struct Wend *(*read)(const char *, size_t))
{
    if (read == NULL) {
        write_bent_order(out, text, length);
        return;
    }
    struct Wend *wend = read(text, length);
    fprintf(out, "%s%s%s\n", wend_verdict_text(wend), wend_diagnostics_printed(wend_diagnostics(wend), "file"),
            wend_diagnostics_printed(wend_labour_diagnostics(wend), "labour"));
    wend_free(wend);
}

/* A row for each ": value" of the file, of the reports on every other of those words written there instead. */
static void look_bent(const char *path, const char *called, struct Wend *(*read)(const char *, size_t))
{
    static char good[1 << 16], bent[(1 << 16) + 64];
    const struct WendBytes bytes = file_bytes(path);
    if (bytes.data == NULL || bytes.length >= sizeof good) {
        stop("cannot be read", path);
    }
    memcpy(good, bytes.data, bytes.length);
    good[bytes.length] = '\0';
    int at = 0;
    for (const char *value = strstr(good, ": "); value != NULL; value = strstr(value, ": ")) {
        value += 2;
        const size_t before = (size_t)(value - good);
        const size_t length = strcspn(value, ",{}[]\n");
        char name[ROW_MOST];
        snprintf(name, sizeof name, "%s/%d", called, at++);
        if (!row_due(name)) {
            continue;
        }
        char *told = NULL;
        size_t told_length = 0;
        FILE *out = open_memstream(&told, &told_length);
        for (size_t i = (size_t)at % 2; i < sizeof others / sizeof others[0]; i += 2) {
            const int bent_length =
                snprintf(bent, sizeof bent, "%.*s%s%s", (int)before, good, others[i], value + length);
            write_bent(out, bent, (size_t)bent_length, read);
        }
        fclose(out);
        struct Row row = row_of(name);
        add(&row, (struct WendBytes){told, told_length});
        free(told);
        end_row(&row);
    }
}

/* ---- routes drawn by lot ---- */

static void look_made(void)
{
    for (int number = 0; number < MADE_COUNT; number++) {
        static char text[NET_MADE_MOST];
        char name[ROW_MOST];
        snprintf(name, sizeof name, "made/%d", number);
        if (!row_due(name)) {
            continue;
        }
        struct Row row = row_of(name);
        const size_t length = net_made((uint32_t)number, text);
        struct Wend *wend = wend_plan("route", text, length);
        look_wanted(name, wend, (struct WendBytes){text, length}, NULL, 0);
        add_told(&row, wend, NULL, 0);
        add_plan(&row, wend, ASKED);
        net.made_refused += wend_status(wend) > WEND_CHECK_FAILS;
        wend_free(wend);
        end_row(&row);
    }
}

/* ---- changes ---- */

static const char *const sets[] = {"segments.track.length=66 m",
                                   "segments.gable.length=6500 mm",
                                   "segments.track.length=20 m to 26 m",
                                   "segments.track.depth=0.9 m",
                                   "segments.track.duct.size=90 mm",
                                   "segments.track.duct={size: 50 mm, rope: yes}",
                                   "segments.gable.air=40 degC",
                                   "segments.gable.way=beam",
                                   "segments.gable.bends=3",
                                   "segments.gable.bends=[{angle: 45 deg, radius: 200 mm}]",
                                   "segments.nowhere.length=5 m",
                                   "segments.length=5 m",
                                   "segments=5 m",
                                   "segments.gable",
                                   "segments.gable.lenght=5 m",
                                   "segments.gable.length=",
                                   "segments.gable.length=5",
                                   "segments.gable.length=5 m # more",
                                   "segments.gable.length.unit=m",
                                   "segments.gable.name=track",
                                   "runs.feeder.load.current=32 A",
                                   "runs.feeder.load.power=9 kW",
                                   "runs.feeder.load={power: 6 kW}",
                                   "runs.feeder.cable.size=6 mm2",
                                   "runs.feeder.cable.type=BS6724",
                                   "runs.feeder.cable.cpc=armour",
                                   "runs.feeder.device.kind=RCBO",
                                   "runs.feeder.device={kind: gG, rating: 32 A}",
                                   "runs.feder.cable.size=6 mm2",
                                   "runs.feeder.along=[track]",
                                   "runs.other.load.current=3 A",
                                   "supply.loop-impedance=0.8 ohm",
                                   "supply.system=TT",
                                   "supply.fault-current=1.6 kA",
                                   "conditions.air=45 degC",
                                   "conditions.soil-thermal=1 K.m/W",
                                   "conditions={air: 20 degC}",
                                   "earthing.far-end=island",
                                   "earthing={far-end: export, extraneous-parts: yes}",
                                   "parts.spare-cable=12 %",
                                   "job.title=Another",
                                   "job.title=",
                                   "wend=2",
                                   "=",
                                   "",
                                   ".",
                                   "a.b=c",
                                   "segments.0.length=3 m",
                                   "complete=no"};

static void look_set(const char *after, size_t number, const char *const *changes, int count)
{
    char name[ROW_MOST];
    snprintf(name, sizeof name, "set/%zu%s", number, after);
    if (row_due(name)) {
        struct Row row = row_of(name);
        struct Wend *wend = wend_plan_changed("route", small, strlen(small), changes, count);
        look_wanted(name, wend, (struct WendBytes){small, strlen(small)}, changes, count);
        add_told(&row, wend, NULL, 0);
        add_plan(&row, wend, DECIDED);
        wend_free(wend);
        end_row(&row);
    }
}

/* Each by itself, and with one more, which some of them clash with. */
static void look_changed(void)
{
    const size_t count = sizeof sets / sizeof sets[0];
    for (size_t i = 0; i < count; i++) {
        look_set("", i, (const char *const[]){sets[i]}, 1);
        look_set("-and", i, (const char *const[]){sets[i], sets[(i + 20) % count]}, 2);
    }
}

/* ---- what the program knows ---- */

static void look_text(const char *name, char *text)
{
    if (row_due(name)) {
        struct Row row = row_of(name);
        add_string(&row, text);
        end_row(&row);
    }
    wend_text_free(text);
}

static void look_questions(void)
{
    char *text = NULL;
    size_t length = 0;
    FILE *out = open_memstream(&text, &length);
    struct WendQuestion q;
    for (int i = 0; wend_question(i, "", &q); i++) {
        char *taken = wend_question_default(i, "");
        fprintf(out, "%s %s %s %s %s %s %s %s %s %d %s\n", q.card, q.in, q.key, q.label, q.question, q.help, q.example,
                q.unit, q.when, q.required, taken == NULL ? "" : taken);
        wend_text_free(taken);
    }
    fclose(out);
    look_text("known/questions", text);
}

static void look_spoken(void)
{
    static const char *const words[] = {"SWA",       "PME",    "Ze",   "loft",    "T&E",     "twin and earth",
                                        "TNS",       "TNCS",   "RCD",  "fuse",    "breaker", "main bond",
                                        "earth rod", "garage", "XLPE", "conduit", "pipe",    "underground",
                                        "dug in",    "shed"};
    char *text = NULL;
    size_t length = 0;
    FILE *out = open_memstream(&text, &length);
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        fprintf(out, "%s: %s\n", words[i], wend_spoken(words[i]));
    }
    fclose(out);
    look_text("known/spoken", text);
}

static void look_messages(void)
{
    char *text = NULL;
    size_t length = 0;
    FILE *out = open_memstream(&text, &length);
    for (int i = 0; wend_message_name(i)[0] != '\0'; i++) {
        fprintf(out, "%s %s %d\n", wend_message_name(i), wend_message_text(i), wend_message_warns(i));
    }
    fclose(out);
    look_text("known/messages", text);
}

static void look_known(void)
{
    static const char *const sizes[] = {"2x1.5", "2x2.5", "2x16", "3x1.5", "3x6",  "3x25", "3x95",
                                        "4x10",  "4x120", "5x16", "5x70",  "1x10", "3x0.5"};
    look_text("known/manual", wend_manual());
    look_text("known/language", wend_language_json());
    look_text("known/schema", wend_schema());
    look_questions();
    look_spoken();
    look_messages();
    for (int i = 0; i < wend_table_count(); i++) {
        char name[ROW_MOST];
        snprintf(name, sizeof name, "table/%s", wend_table_name(i));
        look_text(name, wend_table_json(wend_table_name(i)));
    }
    for (int i = 0; wend_cable_kind(i)[0] != '\0'; i++) {
        for (size_t k = 0; k < sizeof sizes / sizeof sizes[0]; k++) {
            char name[ROW_MOST];
            snprintf(name, sizeof name, "cable/%s-%s", wend_cable_kind(i), sizes[k]);
            look_text(name, wend_cable_text(wend_cable_kind(i), sizes[k]));
        }
    }
}

static void look_all(void)
{
    look_known();
    for_files(TESTS_FOLDER "/bad/*.yaml", look_read);
    look_changed();
    look_made();
    look_bent(TESTS_FOLDER "/unit/read_good.yaml", "bent-route", bent_route);
    look_bent(TESTS_FOLDER "/unit/order_good.yaml", "bent-order", NULL);
    look_bent(ROUTES_FOLDER "/labour/labour.yaml", "bent-labour", bent_labour);
    for_files(TESTS_FOLDER "/unit/read_good.yaml", look_whole);
    for_files(ROUTES_FOLDER "/*.yaml", look_whole);
    for_files(ROUTES_FOLDER "/starters/*.yaml", look_whole);
    for_files(TESTS_FOLDER "/golden/*.yaml", look_whole);
    for_files(TESTS_FOLDER "/found/*.yaml", look_whole);
    for_files(TESTS_FOLDER "/hostile/route/*.yaml", look_read);
    for_files(TESTS_FOLDER "/hostile/other/*.yaml", look_read);
    for_files(TESTS_FOLDER "/fuzz/routes/*", look_read);
    for_files(TESTS_FOLDER "/fuzz/prices/*", look_prices);
    for_files(TESTS_FOLDER "/order/bad/*.yaml", look_order);
    for_files(TESTS_FOLDER "/fuzz/orders/*", look_order);
    for_files(ROUTES_FOLDER "/labour/*.yaml", look_labour);
    for_files(TESTS_FOLDER "/fuzz/labour/*", look_labour);
}

static void read_kept(void)
{
    FILE *file = fopen(KEPT, "rb");
    if (file == NULL) {
        stop("cannot be read", KEPT);
    }
    net.kept = calloc(ROWS_MOST, sizeof *net.kept);
    while (net.kept != NULL && net.kept_count < ROWS_MOST && fgets(net.kept[net.kept_count], ROW_MOST, file) != NULL) {
        char *end = strchr(net.kept[net.kept_count], '\n');
        if (end == NULL) {
            stop("has a row that is too long", KEPT);
        }
        *end = '\0';
        net.kept_count += net.kept[net.kept_count][0] != '#';
    }
    fclose(file);
}

int main(int count, char **words)
{
    if (count == 4 && strcmp(words[1], "print") == 0) {
        net.row = words[2];
        net.column = words[3];
        look_all();
        return net.printed ? EXIT_SUCCESS : EXIT_FAILURE;
    }
    if (count == 2 && strcmp(words[1], "record") == 0) {
        net.record = fopen(KEPT, "wb");
        if (net.record == NULL) {
            stop("cannot be written", KEPT);
        }
        fputs("# Made by test_net record: a row a route or file, a digest a document. See net.sh.\n", net.record);
    } else {
        read_kept();
        net.first_ends = count == 2 && strcmp(words[1], "first") == 0;
    }
    look_all();
    if (net.record != NULL) {
        fclose(net.record);
    } else if (net.seen_count < net.kept_count) {
        differs("rows", 4, "fewer than recorded");
    }
    printf("%d rows, %d documents differ; of %d made routes %d are refused\n", net.seen_count, net.differing,
           MADE_COUNT, net.made_refused);
    return net.differing == 0 && net.seen_count > 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
