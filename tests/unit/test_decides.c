/* Which assumptions decide: the same route with the other value written into it has to differ from the plan in just
 * what is said, and where nothing is said in nothing. */
#include "plan_routes.h"
#include "run_suite.h"
#include "said.h"
#include "sweep_depth.h"

#include "library/library_private.h"

#include "design/design.h"
#include "tables/edition_private.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { TEXT_MOST = 4096 };

/* The places where something may be written, and what. */
struct Written {
    enum AssumedWhat what;
    const char *conditions, *fence;
    const char *other; /* what it is called */
    bool in_air;       /* nothing of the route lies in the ground */
};
static const struct Written nothing = {.conditions = ""};
static const struct Written nothing_in_air = {.in_air = true};
static const struct Written rows[] = {
    {ASSUMED_AIR, .conditions = "air: 35 degC", .other = "35 degC", .in_air = true},
    {ASSUMED_SOIL_THERMAL, .conditions = "soil-thermal: 3 K.m/W", .other = "3 K.m/W"},
    {ASSUMED_GROUND, .conditions = "ground: 25 degC", .other = "25 degC"},
    {ASSUMED_TERMINALS, .conditions = "terminals: 90 degC", .other = "90 degC"},
    {ASSUMED_SHADED, .fence = ", sun: full", .other = "full", .in_air = true},
    {ASSUMED_TIMBER, .fence = ", fixed-to: brick", .other = "brick"},
};
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

static const char *given(const char *text)
{
    return text == NULL ? "" : text;
}

/* Sun and surface are those of a fence, a wall's surface being its own. */
static struct Wend *planned(const struct Written *written, int load_a, const char *loft)
{
    char text[TEXT_MOST];
    const int length = snprintf(text, sizeof text,
                                "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.2 ohm, "
                                "fault-current: 1.2 kA}\nearthing: {far-end: export, extraneous-parts: no}\n"
                                "conditions: {%s}\nruns:\n  byre:\n    load: {current: %d A, power-factor: 1}\n"
                                "    device: {kind: MCB, curve: B, rating: %d A, breaking-capacity: 6 kA}\n"
                                "    cable: {type: BS5467, cores: 3, cpc: core}\nsegments:\n"
                                "  - {name: fence, way: fence, length: 21 m%s}\n%s"
                                "%s",
                                given(written->conditions), load_a, load_a, given(written->fence), loft,
                                written->in_air ? "" : "  - {name: field, way: buried, length: 14 m, depth: 600 mm}\n");
    struct Wend *wend = wend_plan("byre", text, (size_t)length);
    ck_assert_msg(wend_status(wend) <= WEND_CHECK_FAILS, "%s",
                  wend_diagnostics_printed(wend_diagnostics(wend), "byre"));
    return wend;
}

static int assumption_of(const struct Plan *plan, enum AssumedWhat what)
{
    for (int i = 0; i < plan->assumption_count; i++) {
        const int assumed = plan->assumptions[i].assumed;
        if (assumed >= 0 && plan->survey->assumed[assumed].what == what) {
            return i;
        }
    }
    return -1;
}

static const struct Decisive *of(const struct Decisives *decisives, int assumption)
{
    for (int i = 0; i < decisives->count; i++) {
        if (decisives->list[i].assumption == assumption) {
            return &decisives->list[i];
        }
    }
    return NULL;
}

static int count_lines(const struct PartsList *now, const struct PartsList *then)
{
    int lines = 0;
    for (int side = 0; side < 2; side++) {
        const struct PartsList *one = side == 0 ? now : then;
        const struct PartsList *two = side == 0 ? then : now;
        for (int i = 0; i < one->count; i++) {
            const struct Part *match = NULL;
            for (int j = 0; j < two->count; j++) {
                match = text_same(one->parts[i].code, two->parts[j].code) ? &two->parts[j] : match;
            }
            const double bought = one->parts[i].pack > 0 ? one->parts[i].packs : one->parts[i].quantity;
            const double other = match == NULL ? 0 : match->pack > 0 ? match->packs : match->quantity;
            lines += match == NULL || (side == 0 && fabs(bought - other) > 1);
        }
    }
    return lines;
}

static int hold(const struct Written *row, int load_a)
{
    struct Wend *wend = planned(row->in_air ? &nothing_in_air : &nothing, load_a, "");
    struct Wend *other = planned(row, load_a, "");
    const struct Plan *now = wend_result(wend);
    const struct Plan *then = wend_result(other);
    const int assumption = assumption_of(now, row->what);
    ck_assert_msg(assumption >= 0, "%s is not assumed", row->other);
    ck_assert_str_eq(plainly(now->assumptions[assumption].other), row->other);
    const struct Decisives decisives = library_decisives(wend);
    const struct Decisive *decisive = of(&decisives, assumption);
    const bool cable = fabs(now->runs[0].size_mm2 - then->runs[0].size_mm2) > 0.01;
    const int lines = count_lines(wend_parts(wend), wend_parts(other));
    ck_assert_msg((decisive != NULL) == (cable || lines > 0 || now->verdict != then->verdict), "%s at %d A", row->other,
                  load_a);
    if (decisive != NULL) {
        ck_assert(decisive->planned);
        ck_assert(decisive->cable_changes == cable);
        ck_assert(decisive->verdict_changes == (now->verdict != then->verdict) && decisive->verdict == then->verdict);
        ck_assert_int_eq(decisive->order_lines, lines);
        const char *words = said(wend->arena, decisive_said(wend->arena, now, decisive, false));
        ck_assert_msg(strstr(words, row->other) != NULL, "%s", words);
        ck_assert_msg((strstr(words, "another cable") != NULL) == cable, "%s", words);
    }
    for (int i = 1; i < decisives.count; i++) { /* what changes the cable before what changes the order alone */
        ck_assert(decisives.list[i - 1].cable_changes || !decisives.list[i].cable_changes ||
                  decisives.list[i - 1].verdict_changes);
    }
    wend_free(other);
    wend_free(wend);
    return (decisive != NULL) + 2 * (decisive != NULL && cable);
}

START_TEST(as_if_it_were_written)
{
    int changed = 0;
    for (int load_a = 6; load_a <= 80; load_a += 2) {
        changed |= hold(&rows[_i], load_a);
    }
    /* or nothing was seen: the surface changes the order alone, the others a cable somewhere */
    ck_assert_msg(rows[_i].what == ASSUMED_TIMBER ? changed == 1 : changed == 3, "%s: %d", rows[_i].other, changed);
}
END_TEST

/* Each end of a range is tried as if it were written in place of it. */
START_TEST(ends_of_ranges)
{
    int cables = 0;
    for (int high_m = 30; high_m <= 150; high_m += 10) {
        char text[600], at_low[600];
        static const char form[] =
            "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
            "  byre:\n    load: {current: 26 A}\n    cable: {type: BS5467, cores: 3}\nsegments:\n"
            "  - {name: hedge, way: buried, depth: 600 mm, length: %s}\n";
        char range[40];
        snprintf(range, sizeof range, "20 m to %d m", high_m);
        snprintf(text, sizeof text, form, range);
        snprintf(at_low, sizeof at_low, form, "20 m");
        struct Wend *wend = wend_plan("byre", text, strlen(text));
        struct Wend *other = wend_plan("byre", at_low, strlen(at_low));
        const struct Plan *now = wend_result(wend), *then = wend_result(other);
        ck_assert(now != NULL && then != NULL);
        const struct Decisives decisives = library_decisives(wend);
        const struct Decisive *low = NULL;
        for (int i = 0; i < decisives.count; i++) {
            const struct Decisive *one = &decisives.list[i];
            ck_assert(one->assumption >= 0 || strcmp(one->at, "20 m") == 0); /* the plan is at the larger end */
            low = one->assumption < 0 ? one : low;
        }
        ck_assert_int_eq(decisives.ends, 2);
        ck_assert_ptr_nonnull(low);
        ck_assert(low->planned);
        const bool cable = fabs(now->runs[0].size_mm2 - then->runs[0].size_mm2) > 0.01;
        ck_assert(low->cable_changes == cable);
        ck_assert(!cable || fabs(low->size_mm2 - then->runs[0].size_mm2) < 0.01);
        ck_assert(low->verdict_changes == (now->verdict != then->verdict));
        cables += cable;
        wend_free(other);
        wend_free(wend);
    }
    ck_assert_int_gt(cables, 3);
}
END_TEST

/* Roof voids in summer are the design's own assumption. */
START_TEST(lofts_in_summer)
{
    bool seen = false;
    for (int load_a = 6; load_a <= 80; load_a++) {
        struct Wend *wend = planned(&nothing_in_air, load_a, "  - {name: loft, way: loft-void, length: 4 m}\n");
        struct Wend *other =
            planned(&nothing_in_air, load_a, "  - {name: loft, way: loft-void, length: 4 m, air: 40 degC}\n");
        const struct Decisives decisives = library_decisives(wend);
        const bool cable = wend_result(wend)->runs[0].size_mm2 < wend_result(other)->runs[0].size_mm2;
        bool told = false;
        for (int i = 0; i < decisives.count; i++) {
            const struct Assumption *assumption = &wend_result(wend)->assumptions[decisives.list[i].assumption];
            told = told || (assumption->assumed < 0 && said_has(assumption->other, "40 degC") &&
                            decisives.list[i].cable_changes);
        }
        ck_assert_msg(told == cable, "%d A", load_a);
        seen = seen || cable;
        wend_free(other);
        wend_free(wend);
    }
    ck_assert(seen);
}
END_TEST

/* A made-up edition whose Table 4D4A lets a cable carry a third: what decides is decided by it, not by the edition
 * that is held. */
static void decide_by(const struct Edition *weaker, int load_a, bool *differs)
{
    struct Wend *wend = planned(&nothing_in_air, load_a, "");
    const struct Plan *held = wend->plan;
    const int air = assumption_of(held, ASSUMED_AIR);
    const struct Settings settings =
        design_settings(wend->arena, edition_held(), held->survey, &held->assumptions[air]);
    const char *const set = arena_print(wend->arena, "%s=%s", settings.list[0].below, settings.list[0].value);
    const struct ReadChanges changes = {.set_count = 1, .sets = &set};
    const struct Survey *warmer = read_survey_changed(wend->arena, wend->told.diag, wend->told.source, &changes);
    const struct Staged now = library_stages(wend->arena, wend->told.diag, weaker, held->survey, "byre");
    const struct Staged then = library_stages(wend->arena, wend->told.diag, weaker, warmer, "byre");
    const struct Staged by_held = library_stages(wend->arena, wend->told.diag, edition_held(), warmer, "byre");
    ck_assert(now.plan != NULL && then.plan != NULL && by_held.plan != NULL);
    wend->plan = now.plan;
    wend->parts = now.parts;
    const struct Decisives decisives = library_decisives(wend);
    const struct Decisive *decisive = of(&decisives, air);
    const bool cable = fabs(then.plan->runs[0].size_mm2 - now.plan->runs[0].size_mm2) > 0.01;
    ck_assert_msg(cable == (decisive != NULL && decisive->cable_changes), "%d A", load_a);
    if (cable) {
        ck_assert_double_eq_tol(decisive->size_mm2, then.plan->runs[0].size_mm2, 1e-9);
    }
    *differs = *differs || fabs(by_held.plan->runs[0].size_mm2 - then.plan->runs[0].size_mm2) > 0.01;
    wend_free(wend);
}

START_TEST(by_the_edition_of_the_plan)
{
    enum { CELLS_MOST = 200 };
    struct Edition weaker = *edition_held();
    struct CapacityData data = *weaker.capacity[CAPACITY_4D4A];
    double cells_a[CELLS_MOST];
    ck_assert_int_le(data.sizes * data.column_count, CELLS_MOST);
    for (int i = 0; i < data.sizes * data.column_count; i++) {
        cells_a[i] = data.cells_a[i] / 3;
    }
    data.cells_a = cells_a;
    weaker.capacity[CAPACITY_4D4A] = &data;
    bool differs = false;
    for (int load_a = 10; load_a <= 60; load_a += 5) {
        decide_by(&weaker, load_a, &differs);
    }
    ck_assert(differs); /* or it could not be told by which edition */
}
END_TEST

START_TEST(says_what_to_measure)
{
    struct Wend *wend = planned(&nothing_in_air, 80, "  - {name: loft, way: loft-void, length: 4 m}\n");
    const struct Decisives decisives = library_decisives(wend);
    const struct WendAnswer *answer = wend_decides(wend);
    const struct WendBytes text = wend_answer_text(answer);
    const char *words = arena_text(wend->arena, text.data, text.length);
    const char *before = words;
    ck_assert_int_gt(decisives.count, 0);
    for (int i = 0; i < decisives.count; i++) { /* each, in order, by its key */
        const char *at = strstr(before, arena_print(wend->arena, "\n-  %s", decisives.list[i].settings.list[0].key));
        ck_assert_msg(at != NULL, "%s", words);
        before = at;
    }
    char rest[32];
    snprintf(rest, sizeof rest, "%d more", decisives.tried - decisives.count);
    ck_assert_msg(strstr(words, rest) != NULL, "%s: %s", rest, words);
    wend_free(wend);
}
END_TEST

/* ---- what is printed, given back to the program ---- */

enum { SETS_MOST = 64, WORD_MOST = 400 };
struct Printed {
    int count;
    char words[SETS_MOST][WORD_MOST];
};

/* The word behind "--set " on a line, as a shell would hand it on. */
static void unquote(const char *line, char out[WORD_MOST])
{
    const size_t length = strcspn(line, "\n");
    ck_assert_uint_lt(length, WORD_MOST);
    bool within = false;
    int at = 0;
    for (size_t i = 0; i < length; i++) {
        if (!within && line[i] == '\\') {
            out[at++] = line[++i];
        } else if (line[i] == '\'') {
            within = !within;
        } else {
            ck_assert_msg(within || strchr(" $`\"*?&;|<>()#~!{}[]", line[i]) == NULL, "a shell reads more into %s",
                          line);
            out[at++] = line[i];
        }
    }
    ck_assert(!within);
    out[at] = '\0';
}

/* What the item that begins at `*text` is set by; `*text` goes on to the next. */
static void read_item(const char **text, struct Printed *out)
{
    static const char item[] = "\n-  ", set[] = "\n   --set ";
    const char *next = strstr(*text, item);
    out->count = 0;
    for (const char *at = strstr(*text, set); at != NULL && (next == NULL || at < next); at = strstr(at + 1, set)) {
        ck_assert_int_lt(out->count, SETS_MOST);
        unquote(at + sizeof set - 1, out->words[out->count++]);
    }
    *text = next != NULL ? next + 1 : *text + strlen(*text);
}

/* The plan with those words beside what was set before, held against what is told of it; NULL: nothing is. */
static void hold_set(struct Wend *wend, const struct Printed *set, const struct Decisive *told, const char *where)
{
    const char *words[SETS_MOST];
    for (int i = 0; i < set->count; i++) {
        words[i] = set->words[i];
    }
    const struct WendBytes source = {wend->told.source.data, wend->told.source.length};
    struct Wend *other = wend_plan_changed("route", source.data, source.length, words, set->count);
    const struct Plan *now = wend_result(wend), *then = wend_result(other);
    ck_assert_msg(other->plan != NULL || (told != NULL && !told->planned), "%s: %s: %s", where, words[0],
                  wend_diagnostics_printed(wend_diagnostics(other), where));
    if (then != NULL) {
        bool cable = false;
        for (int r = 0; r < now->run_count; r++) {
            cable = cable || fabs(now->runs[r].size_mm2 - then->runs[r].size_mm2) > 0.01;
        }
        const int lines = count_lines(wend_parts(wend), wend_parts(other));
        const char *word = words[0];
        ck_assert_int_eq(then->survey->change_count, set->count);
        ck_assert_msg(cable == (told != NULL && told->cable_changes), "%s: %s: cable", where, word);
        ck_assert_msg(lines == (told != NULL ? told->order_lines : 0), "%s: %s: %d lines", where, word, lines);
        ck_assert_msg(then->verdict == (told != NULL ? told->verdict : now->verdict), "%s: %s: verdict", where, word);
    }
    wend_free(other);
}

static void write_down(struct Wend *wend, const struct Settings *settings, struct Printed *out)
{
    const struct Survey *survey = wend_result(wend)->survey;
    out->count = settings->count;
    for (int i = 0; i < settings->count; i++) {
        const struct Setting *one = &settings->list[i];
        snprintf(out->words[i], WORD_MOST, "%s%s%s%s=%s",
                 one->run >= 0       ? "runs."
                 : one->segment >= 0 ? "segments."
                                     : "",
                 one->run >= 0       ? survey->runs[one->run].name
                 : one->segment >= 0 ? survey->segments[one->segment].name
                                     : "",
                 one->run >= 0 || one->segment >= 0 ? "." : "", one->below, one->value);
    }
}

static int items, several;
static void hold_printed(const char *path, struct Wend *wend)
{
    const struct Decisives decisives = library_decisives(wend);
    const struct WendBytes bytes = wend_answer_text(wend_decides(wend));
    const char *text = strstr(arena_text(wend->arena, bytes.data, bytes.length), "\n-  ");
    text = text != NULL ? text + 1 : "";
    ck_assert_int_eq(decisives.nameless_count, 0);
    static struct Printed printed;
    for (int i = 0; i < decisives.count; i++) {
        const char *const head = text;
        read_item(&text, &printed);
        ck_assert_msg(printed.count > 0, "%s: no key: %s", path, head);
        hold_set(wend, &printed, &decisives.list[i], path);
        const size_t key = strcspn(printed.words[0], "=");
        ck_assert_msg(strncmp(head + 3, printed.words[0], key) == 0, "%s: %s is called %s", path, printed.words[0],
                      head);
        items++;
        several += printed.count > 1;
    }
    const struct Plan *plan = wend_result(wend);
    for (int i = 0; i < plan->assumption_count; i++) { /* those that change nothing */
        const struct Settings settings =
            design_settings(wend->arena, plan->edition, plan->survey, &plan->assumptions[i]);
        if (settings.count > 0 && of(&decisives, i) == NULL) {
            write_down(wend, &settings, &printed);
            hold_set(wend, &printed, NULL, path);
        }
    }
}

/* On the design sheet what decides stands before all that was assumed else, and says so. */
START_TEST(sheet_has_them_first)
{
    struct Wend *wend = planned(&nothing_in_air, 80, "  - {name: loft, way: loft-void, length: 4 m}\n");
    const struct Decisives decisives = library_decisives(wend);
    const struct WendBytes sheet = wend_document(wend, WEND_DESIGN_HTML);
    const char *list = strstr(arena_text(wend->arena, sheet.data, sheet.length), "<section class=\"assumed\">");
    ck_assert_ptr_nonnull(list);
    int items_seen = 0;
    for (const char *at = strstr(list, "<li>"); at != NULL && at < strstr(list, "</ul>"); at = strstr(at + 1, "<li>")) {
        const char *decides = strstr(at, "; were it ");
        const bool here = decides != NULL && decides < strstr(at, "</li>");
        ck_assert_msg(here == (items_seen < decisives.count), "item %d of %s", items_seen, list);
        items_seen++;
    }
    ck_assert_int_gt(decisives.count, 2);
    ck_assert_int_gt(items_seen, decisives.count);
    wend_free(wend);
}
END_TEST

START_TEST(every_name_sets_it)
{
    items = several = 0;
    ck_assert_int_gt(for_plans((size_t)sweep_depth(6, 1), hold_printed), sweep_depth(20, 80));
    ck_assert_int_gt(items, sweep_depth(40, 120));
    ck_assert_int_gt(several, 0);
}
END_TEST

/* Names that a key cannot be made of, or only by the segment's number. */
START_TEST(names_that_look_like_keys)
{
    static const char text[] =
        "wend: 1\njob: {title: Byre}\nsupply: {system: TN-S, loop-impedance: 0.2 ohm, fault-current: 1.2 kA}\n"
        "earthing: {far-end: export, extraneous-parts: no}\nruns:\n  by=re:\n    load: {current: 20 A}\n"
        "    cable: {type: BS5467, cores: 3, cpc: core}\nsegments:\n  - {name: a=b, way: fence, length: 21 m}\n"
        "  - {name: it's here, way: beam, length: 9 m}\n  - {name: shed, way: beam, length: 7 m}\n"
        "  - {name: shed.fixed-to, way: fence, length: 8 m}\n  - {name: .up., way: fence, length: 8 m}\n";
    struct Wend *wend = wend_plan("byre", text, strlen(text));
    ck_assert_msg(wend_result(wend) != NULL, "%s", wend_diagnostics_printed(wend_diagnostics(wend), "byre"));
    const struct Decisives decisives = library_decisives(wend);
    const struct WendBytes bytes = wend_answer_text(wend_decides(wend));
    const char *words = arena_text(wend->arena, bytes.data, bytes.length);
    ck_assert_ptr_nonnull(strstr(words, "   --set segments.1.fixed-to=brick\n"
                                        "   --set 'segments.it'\\''s here.fixed-to=brick'\n"
                                        "   --set segments.3.fixed-to=brick\n"
                                        "   --set segments.shed.fixed-to.fixed-to=brick\n"
                                        "   --set segments.5.fixed-to=brick\n"));
    ck_assert_ptr_nonnull(strstr(words, "runs.by=re.start: not tried at outdoors; no key sets it"));
    ck_assert_int_gt(decisives.nameless_count, 1);
    static struct Printed printed;
    const char *at = strstr(words, "\n-  ") + 1;
    bool seen = false;
    for (int i = 0; i < decisives.count; i++) {
        read_item(&at, &printed);
        hold_set(wend, &printed, &decisives.list[i], "byre");
        seen = seen || printed.count == 5;
    }
    ck_assert(seen);
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("decides");
    TCase *cases = tcase_create("decides");
    tcase_set_timeout(cases, 600);
    tcase_add_loop_test(cases, as_if_it_were_written, 0, ROWS);
    tcase_add_test(cases, ends_of_ranges);
    tcase_add_test(cases, lofts_in_summer);
    tcase_add_test(cases, by_the_edition_of_the_plan);
    tcase_add_test(cases, says_what_to_measure);
    tcase_add_test(cases, sheet_has_them_first);
    tcase_add_test(cases, every_name_sets_it);
    tcase_add_test(cases, names_that_look_like_keys);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
