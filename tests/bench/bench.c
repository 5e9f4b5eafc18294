/* Times the whole of `wend check` (read, decide, count) against libyaml's bare parse of the same bytes, in the same
 * run. The parse is the floor: nothing that reads the file with libyaml can be quicker. Prints, for 10 to 10,000
 * segments, both times, their ratio and the time a segment; where the last column stays level the work is linear. Not
 * a test: nothing here passes or fails by the clock. */
#include "library/library_stages.h"
#include "wend/wend.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <yaml.h>

static double seconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

static char *make_route(int segments, size_t *length)
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
        at += snprintf(text + at, room - (size_t)at, "  - {name: s%d, length: 0.2 m, air: %d degC, way: %s}\n", i,
                       25 + i % 15, ways[i % 8]);
    }
    *length = (size_t)at;
    return text;
}

static void parse_bare(const char *text, size_t length)
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
}

static void check_whole(const char *text, size_t length)
{
    struct Wend *wend = wend_plan("bench", text, length);
    if (wend_result(wend) == NULL) {
        fputs(wend_diagnostics_printed(wend_diagnostics(wend), "bench"), stderr);
        abort();
    }
    wend_free(wend);
}

/* The quickest of several rounds: what the machine can do when it is left alone. */
static double quickest_s(void (*work)(const char *, size_t), const char *text, size_t length, int rounds)
{
    double best = 1e9;
    for (int i = 0; i < rounds; i++) {
        const double start = seconds_now();
        work(text, length);
        const double took = seconds_now() - start;
        best = took < best ? took : best;
    }
    return best;
}

int main(void)
{
    printf("%10s %10s %14s %14s %8s %18s\n", "segments", "bytes", "parse, ms", "check, ms", "ratio",
           "check, us/segment");
    for (int segments = 10; segments <= 10000; segments *= 10) {
        size_t length = 0;
        char *text = make_route(segments, &length);
        if (text == NULL) {
            return EXIT_FAILURE;
        }
        const int rounds = segments >= 10000 ? 5 : 20;
        const double parse_s = quickest_s(parse_bare, text, length, rounds);
        const double check_s = quickest_s(check_whole, text, length, rounds);
        printf("%10d %10zu %14.3f %14.3f %8.2f %18.2f\n", segments, length, parse_s * 1e3, check_s * 1e3,
               check_s / parse_s, check_s * 1e6 / segments);
        free(text);
    }
    return EXIT_SUCCESS;
}
