/* wend_bench WORK SEGMENTS [ROUNDS]: does one of these with a made route of so many segments, and prints the CPU time
 * of the quickest round in nanoseconds, and the bytes that were read or written.
 *
 *   start  makes the route and nothing else
 *   parse  libyaml's bare parse of it: nothing that reads the file with libyaml can be quicker
 *   check  the whole of wend check: read, decide
 *   shared the same of a route in which every second segment lies in the trench of the one before it
 *   plan   read, decide, count, and every document
 *
 * bench.sh makes a table of it, of instructions where valgrind counts them. */
#include "wend/wend.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <yaml.h>

/* Of this process: what runs beside it on the machine is not counted. */
static double cpu_now_ns(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec * 1e9 + (double)now.tv_nsec;
}

static int add_shared(char *text, size_t room, int i)
{
    return i % 2 == 0
               ? snprintf(text, room,
                          "  - {name: s%d, way: buried, length: 0.2 m, depth: 600 mm, beside: {circuits: 1}}\n", i)
               : snprintf(
                     text, room,
                     "  - {name: s%d, way: buried, length: 0.2 m, depth: 600 mm, beside: {circuits: 1}, trench: s%d}\n",
                     i, i - 1);
}

static char *make_route(int segments, bool shared, size_t *length)
{
    static const char *const ways[] = {"wall, fixed-to: brick",
                                       "fence, sun: full",
                                       "beam",
                                       "loft-void, insulation: surrounded",
                                       "tray, beside: {circuits: 2, arrangement: single-layer}",
                                       "duct, duct: {size: 63 mm}",
                                       "buried, depth: 600 mm",
                                       "through-wall, wall: cavity"};
    const size_t room = 1024 + (size_t)segments * 160;
    char *text = malloc(room);
    if (text == NULL) {
        return NULL;
    }
    int at =
        snprintf(text, room,
                 "wend: 1\njob: {title: bench}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n  feeder:\n"
                 "    load: {current: 20 A}\n    cable: {type: BS5467, cores: 3}\nsegments:\n");
    for (int i = 0; i < segments; i++) {
        at += shared ? add_shared(text + at, room - (size_t)at, i)
                     : snprintf(text + at, room - (size_t)at, "  - {name: s%d, length: 0.2 m, air: %d degC, way: %s}\n",
                                i, 25 + i % 15, ways[i % 8]);
    }
    *length = (size_t)at;
    return text;
}

static size_t parse_bare(const char *text, size_t length)
{
    yaml_parser_t parser;
    yaml_event_t event;
    if (!yaml_parser_initialize(&parser)) {
        abort();
    }
    yaml_parser_set_input_string(&parser, (const unsigned char *)text, length);
    for (bool more = true; more;) {
        if (!yaml_parser_parse(&parser, &event)) {
            abort();
        }
        more = event.type != YAML_STREAM_END_EVENT;
        yaml_event_delete(&event);
    }
    yaml_parser_delete(&parser);
    return length;
}

static size_t nothing(const char *text, size_t length)
{
    (void)text;
    return length;
}

static struct Wend *planned(enum WendWanted wanted, const char *text, size_t length)
{
    struct Wend *wend = wend_plan_wanted(wanted, "bench", text, length, NULL, 0);
    if (wend_status(wend) > WEND_CHECK_FAILS) {
        fputs(wend_diagnostics_printed(wend_diagnostics(wend), "bench"), stderr);
        abort();
    }
    return wend;
}

static size_t check_whole(const char *text, size_t length)
{
    wend_free(planned(WEND_WANT_VERDICT, text, length));
    return length;
}

static size_t plan_whole(const char *text, size_t length)
{
    size_t written = 0;
    struct Wend *wend = planned(WEND_WANT_DOCUMENTS, text, length);
    for (int document = 0; document < WEND_DOCUMENT_COUNT; document++) {
        if (!wend_has_document(wend, (enum WendDocument)document)) {
            continue; /* nothing of this route was built or measured yet */
        }
        const struct WendBytes bytes = wend_document(wend, (enum WendDocument)document);
        if (bytes.data == NULL) {
            abort();
        }
        written += bytes.length;
    }
    wend_free(wend);
    return written;
}

static const struct {
    const char *word;
    size_t (*work)(const char *, size_t);
} works[] = {
    {"start", nothing}, {"parse", parse_bare}, {"check", check_whole}, {"shared", check_whole}, {"plan", plan_whole}};

int main(int argc, char *argv[])
{
    const int segments = argc > 2 ? (int)strtol(argv[2], NULL, 10) : 0;
    const int rounds = argc > 3 ? (int)strtol(argv[3], NULL, 10) : 1;
    size_t length = 0;
    char *text = segments > 0 ? make_route(segments, strcmp(argv[1], "shared") == 0, &length) : NULL;
    for (size_t i = 0; text != NULL && i < sizeof works / sizeof works[0]; i++) {
        if (strcmp(works[i].word, argv[1]) == 0) {
            size_t bytes = 0;
            double best_ns = 1e18;
            for (int round = 0; round < rounds; round++) {
                const double start_ns = cpu_now_ns();
                bytes = works[i].work(text, length);
                const double took_ns = cpu_now_ns() - start_ns;
                best_ns = took_ns < best_ns ? took_ns : best_ns;
            }
            printf("%.0f %zu\n", best_ns, bytes);
            free(text);
            return EXIT_SUCCESS;
        }
    }
    free(text);
    fputs("wend_bench start|parse|check|shared|plan SEGMENTS [ROUNDS]\n", stderr);
    return EXIT_FAILURE;
}
