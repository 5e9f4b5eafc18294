/* What the place of a feed demands of it, by BS 7671:2018+A2:2022: the table against its published copy, then whole
 * routes with the clause named beside them. */
#include "csv_file.h"
#include "location_rig.h"
#include "run_suite.h"
#include "said.h"

#include <stdio.h>
#include <string.h>

#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

static const char *const topic_words[TOPIC_COUNT] = {
    [TOPIC_SOCKETS] = "sockets",
    [TOPIC_SOCKETS_LARGE] = "sockets-large",
    [TOPIC_LIGHTING] = "lighting",
    [TOPIC_FINAL] = "final",
    [TOPIC_FEED] = "feed",
    [TOPIC_EARTH] = "earth",
    [TOPIC_DEPTH] = "depth",
    [TOPIC_DEPTH_FIELD] = "depth-field",
    [TOPIC_HEIGHT_VEHICLES] = "height-vehicles",
    [TOPIC_HEIGHT] = "height",
    [TOPIC_REFUSED] = "refused",
};

static int location_of(const char *word)
{
    for (int i = 0; i < LOCATION_COUNT; i++) {
        if (text_same(survey_word(WORDS_LOCATION, i), word)) {
            return i;
        }
    }
    ck_abort_msg("no such place: %s", word);
    return -1;
}

static int topic_of(const char *word)
{
    for (int i = 0; i < TOPIC_COUNT; i++) {
        if (text_same(topic_words[i], word)) {
            return i;
        }
    }
    ck_abort_msg("no such topic: %s", word);
    return -1;
}

/* "705.415.2.1 note": of BS 7671, where it does not begin with letters. */
static bool clause_is(const struct LocationRule *rule, const char *keyed)
{
    char clause[64];
    snprintf(clause, sizeof clause, "%s%s", rule->clause, rule->by == RULE_BY_NOTE ? " note" : "");
    const enum RuleBy by = strstr(keyed, "guidance") != NULL ? RULE_BY_GUIDANCE
                           : keyed[0] > '9'                  ? RULE_BY_STANDARD
                           : strstr(keyed, " note") != NULL  ? RULE_BY_NOTE
                                                             : RULE_BY_CLAUSE;
    return rule->by == by && text_same(clause, keyed);
}

static enum Trust trust_of(const char *confidence)
{
    return text_same(confidence, "two sources")                           ? TRUST_PUBLISHED
           : text_same(confidence, "one source seen; clause from memory") ? TRUST_PARTLY_FROM_MEMORY
                                                                          : TRUST_FROM_MEMORY;
}

START_TEST(rules_equal_the_copy)
{
    struct CsvFile file = csv_open("location-rules.csv");
    bool seen[LOCATION_COUNT][TOPIC_COUNT] = {{false}};
    for (int row = 0; row < file.rows; row++) {
        const int location = location_of(csv_text(&file, row, 0));
        const int topic = topic_of(csv_text(&file, row, 1));
        const struct LocationRule *rule =
            location_rule(edition_held(), (enum Location)location, (enum LocationTopic)topic);
        ck_assert_msg(rule != NULL && !seen[location][topic], "row %d", row);
        seen[location][topic] = true;
        ck_assert_double_eq(rule->value, csv_number(&file, row, 2));
        ck_assert_double_eq(rule->up_to_a, csv_blank(&file, row, 3) ? 0 : csv_number(&file, row, 3));
        ck_assert_msg(clause_is(rule, csv_text(&file, row, 4)), "%s", csv_text(&file, row, 4));
        ck_assert_int_eq(rule->trust, trust_of(csv_text(&file, row, 5)));
    }
    ck_assert_int_eq(file.rows, location_rule_count(edition_held()));
    ck_assert_ptr_null(location_rule_at(edition_held(), location_rule_count(edition_held())));
    ck_assert_ptr_null(location_rule(edition_held(), LOCATION_WORKSHOP, TOPIC_SOCKETS)); /* goes by an ordinary place */
    csv_close(&file);
}
END_TEST

struct ResidualRow {
    const char *location, *run, *device;
    enum CheckResult result;
    bool unknown;
    const char *source;
};
static const struct ResidualRow residual_rows[] = {
    /* sockets up to 32 A, anywhere: 30 mA, not delayed (411.3.3, 415.1.1) */
    {NULL, "feeds: sockets", NULL, CHECK_FAIL, false, "411.3.3"},
    {NULL, "feeds: sockets", RESIDUAL(30, ""), CHECK_PASS, false, "411.3.3"},
    {NULL, "feeds: sockets", RESIDUAL(100, ""), CHECK_FAIL, false, "411.3.3"},
    {NULL, "feeds: sockets", RESIDUAL(30, ", time-delayed: yes"), CHECK_FAIL, false, "411.3.3"},
    /* over 32 A nothing in an ordinary place, 100 mA on a farm (705.411.1 (ii)), 30 mA up to 63 A at a berth
     * (709.531.2)
     */
    {NULL, "feeds: sockets", "kind: MCB, rating: 40 A", CHECK_NOT_DUE, false, "411.3.3"},
    {"farm", "feeds: sockets", "kind: MCB, rating: 40 A", CHECK_FAIL, false, "705.411.1 (ii)"},
    {"farm", "feeds: sockets", "kind: RCBO, rating: 40 A, residual: 100 mA", CHECK_PASS, false, "705.411.1 (ii)"},
    {"marina", "feeds: sockets", "kind: RCBO, rating: 63 A, residual: 100 mA", CHECK_FAIL, false, "709.531.2"},
    {"marina", "feeds: sockets", "kind: RCBO, rating: 80 A, residual: 300 mA", CHECK_PASS, false, "709.531.2"},
    /* a risk assessment settles it at work, never in a dwelling or a place of Part 7; where nobody said: open */
    {"workshop", "feeds: sockets\n    risk-assessment: RA 12", NULL, CHECK_NOT_DUE, false, "411.3.3"},
    {NULL, "feeds: sockets\n    risk-assessment: RA 12", NULL, CHECK_NOT_DUE, true, "411.3.3"},
    {"dwelling", "feeds: sockets\n    risk-assessment: RA 12", NULL, CHECK_FAIL, false, "411.3.3"},
    {"farm", "feeds: sockets\n    risk-assessment: RA 12", NULL, CHECK_FAIL, false, "705.411.1 (i)"},
    /* lighting in a dwelling 411.3.4; a feed to a lighting board is no final circuit */
    {"dwelling", "use: lighting\n    feeds: equipment", NULL, CHECK_FAIL, false, "411.3.4"},
    {"dwelling", "use: lighting\n    feeds: equipment", RESIDUAL(30, ""), CHECK_PASS, false, "411.3.4"},
    {"dwelling", "use: lighting", NULL, CHECK_FAIL, false, "411.3.4"},
    {"dwelling", "use: lighting\n    feeds: board", NULL, CHECK_NOT_DUE, false, "411.3.4"},
    {"workshop", "use: lighting\n    feeds: equipment", NULL, CHECK_NOT_DUE, false, "411.3.4"},
    {NULL, "use: lighting\n    feeds: equipment", NULL, CHECK_NOT_DUE, true, "411.3.4"},
    {"outdoor-lighting", "use: lighting\n    feeds: equipment", NULL, CHECK_FAIL, false, "714.411.3.4"},
    /* all other circuits of a farm 300 mA, the feed to a board too (705.411.1 (iii)) */
    {"farm", "feeds: board", NULL, CHECK_FAIL, false, "705.411.1 (iii)"},
    {"farm", "feeds: board", RESIDUAL(300, ", time-delayed: yes"), CHECK_PASS, false, "705.411.1 (iii)"},
    {"farm", "feeds: board", RESIDUAL(500, ""), CHECK_FAIL, false, "705.411.1 (iii)"},
    {"farm", "feeds: equipment\n    use: motor", NULL, CHECK_FAIL, false, "705.411.1 (iii)"},
    /* an ordinary feed to a board and a circuit for equipment: none */
    {NULL, "feeds: board", NULL, CHECK_NOT_DUE, false, "411.3.3"},
    {"dwelling", "feeds: board", NULL, CHECK_NOT_DUE, false, "411.3.3"},
    {NULL, "feeds: equipment", NULL, CHECK_NOT_DUE, false, "411.3.3"},
    /* the charging point's rule is named where it belongs */
    {"dwelling", "use: charging\n    feeds: equipment", RESIDUAL(30, ", residual-type: A"), CHECK_NOT_DUE, false,
     "722.531.3"},
    /* medical rooms are refused whatever is fed there, a charging point too: no rule of theirs is held */
    {"medical", "feeds: board", RESIDUAL(30, ""), CHECK_FAIL, false, "BS 7671 710 (from memory)"},
    {"medical", "use: charging\n    feeds: equipment", RESIDUAL(30, ", residual-type: A"), CHECK_FAIL, false, "710"},
};

START_TEST(residual_protection)
{
    const struct ResidualRow *row = &residual_rows[_i];
    struct Wend *wend = plan_at(row->location, row->run, row->device, NULL, NULL, NULL);
    const struct Check *check = rig_found(wend, "residual-protection");
    ck_assert_msg(check->result == row->result && check->unknown == row->unknown, "result %d: %s", (int)check->result,
                  plainly(check->text));
    const char *source = plain_source(check);
    ck_assert_msg(strstr(source, row->source) != NULL, "source %s", source);
    ck_assert_int_eq(check->unknown, settles_something(&check->settles));
    ck_assert_int_eq(wend_status(wend) == WEND_CHECK_FAILS, row->result == CHECK_FAIL);
    wend_free(wend);
}
END_TEST

/* What is said of it, word for word: what is fed and where, what is asked, what is there. */
static const struct {
    const char *location, *run, *device, *says;
} said_rows[] = {
    {"farm", "feeds: board", NULL,
     "A feed to a board on a farm: a residual device of 300 mA or less is required, and the run's device has none."},
    {"farm", "feeds: equipment\n    use: motor", RESIDUAL(500, ""),
     "A circuit for equipment on a farm: a residual device of 300 mA or less is required, and the run's device has 500 "
     "mA."},
    {"farm", "feeds: board", RESIDUAL(500, ", time-delayed: yes"),
     "A feed to a board on a farm: a residual device of 300 mA or less is required, and the run's device has 500 mA, "
     "time-delayed."},
    {NULL, "feeds: sockets", NULL,
     "Socket-outlets: a residual device of 30 mA or less, not time-delayed, is required, and the run's device has "
     "none. Only where skilled or instructed persons alone reach them, and never in a dwelling, may a documented risk "
     "assessment leave it out (risk-assessment)."},
    {"dwelling", "feeds: sockets", RESIDUAL(100, ""),
     "Socket-outlets in a dwelling: a residual device of 30 mA or less, not time-delayed, is required, and the run's "
     "device has 100 mA. In a dwelling no risk assessment takes its place."},
    {"marina", "feeds: sockets", RESIDUAL(100, ""),
     "Socket-outlets at berths: a residual device of 30 mA or less, not time-delayed, is required, and the run's "
     "device has 100 mA."},
    {"outdoor-lighting", "use: lighting\n    feeds: equipment", RESIDUAL(30, ", time-delayed: yes"),
     "Lighting in the open: a residual device of 30 mA or less, not time-delayed, is required, and the run's device "
     "has 30 mA, time-delayed."},
    {"dwelling", "use: lighting\n    feeds: equipment", RESIDUAL(10, ""),
     "Lighting in a dwelling: a residual device of 30 mA or less is required; the run's device has 10 mA."},
    {"workshop", "feeds: sockets\n    risk-assessment: RA 12", NULL,
     "Left out by the risk assessment named at the survey: RA 12."},
    {NULL, "feeds: sockets\n    risk-assessment: RA 12", NULL,
     "Not made: a risk assessment may leave out the 30 mA device of socket-outlets, but never in a dwelling: say what "
     "place this is (job: location)."},
    {NULL, "use: lighting\n    feeds: equipment", NULL,
     "Not made: a lighting circuit of a dwelling requires a residual device of 30 mA; say what place this is (job: "
     "location), and whether it feeds a board (feeds: board)."},
};

START_TEST(said_of_residual_protection)
{
    struct Wend *wend = plan_at(said_rows[_i].location, said_rows[_i].run, said_rows[_i].device, NULL, NULL, NULL);
    ck_assert_str_eq(plainly(rig_found(wend, "residual-protection")->text), said_rows[_i].says);
    wend_free(wend);
}
END_TEST

START_TEST(what_a_waiver_takes_for_granted)
{
    struct Wend *wend = plan_at("workshop", "feeds: sockets\n    risk-assessment: RA 12", NULL, NULL, NULL, NULL);
    ck_assert(said_has(rig_found(wend, "residual-protection")->assumes, "no 30 mA device on the socket-outlets: only"));
    wend_free(wend);
}
END_TEST

START_TEST(remembered_clauses_say_so)
{
    struct Wend *wend = plan_at("pool", "feeds: equipment", RESIDUAL(30, ""), NULL, NULL, NULL);
    ck_assert_str_eq(plain_source(rig_found(wend, "residual-protection")), "BS 7671 702.410.3.4 (from memory)");
    ck_assert_int_eq(rig_found(wend, "residual-protection")->trust, TRUST_FROM_MEMORY);
    wend_free(wend);
    wend = plan_at("farm", "feeds: board", RESIDUAL(300, ""), NULL, NULL, NULL);
    ck_assert_str_eq(plain_source(rig_found(wend, "residual-protection")), "BS 7671 705.411.1 (iii)");
    ck_assert_int_eq(rig_found(wend, "residual-protection")->trust, TRUST_PUBLISHED);
    wend_free(wend);
}
END_TEST

static const struct {
    const char *location, *supply, *top;
    enum CheckResult result;
    bool unknown;
} earth_rows[] = {
    /* ESQCR 9(4), 708.411.4, 709.411.4, 704.411.3.1, 702.410.3.4.3 note: no TN-C-S earth */
    {"caravan-park", TN_C_S, EXPORT "}", CHECK_FAIL, false},
    {"marina", TN_C_S, EXPORT "}", CHECK_FAIL, false},
    {"building-site", TN_C_S, EXPORT "}", CHECK_FAIL, false},
    {"pool", TN_C_S, EXPORT "}", CHECK_FAIL, false},
    {"event", TN_C_S, EXPORT "}", CHECK_FAIL, false},
    {"fuel-point", TN_C_S, EXPORT "}", CHECK_FAIL, false},
    {"caravan-park", TN_C_S, ISLAND "}", CHECK_NOT_DUE, false},
    {"caravan-park", "system: TN-S, loop-impedance: 0.3 ohm", EXPORT "}", CHECK_NOT_DUE, false},
    {"caravan-park", "system: TT, electrode-resistance: 40 ohm", EXPORT "}", CHECK_NOT_DUE, false},
    /* 705.415.2.1, note: only with a metal grid in the floor */
    {"farm", TN_C_S, EXPORT "}", CHECK_NOT_DUE, true},
    {"farm", TN_C_S, EXPORT ", floor-grid: no}", CHECK_FAIL, false},
    {"farm", TN_C_S, EXPORT ", floor-grid: yes}", CHECK_PASS, false},
    {"farm", TN_C_S, ISLAND "}", CHECK_NOT_DUE, false},
    {"dwelling", TN_C_S, EXPORT "}", CHECK_NOT_DUE, false},
    {NULL, TN_C_S, EXPORT "}", CHECK_NOT_DUE, false},
};

START_TEST(whose_earth)
{
    struct Wend *wend = plan_at(earth_rows[_i].location, "feeds: board", RESIDUAL(30, ""), earth_rows[_i].supply,
                                earth_rows[_i].top, NULL);
    const struct Check *check = rig_found(wend, "location-earth");
    ck_assert_msg(check->result == earth_rows[_i].result && check->unknown == earth_rows[_i].unknown, "result %d: %s",
                  (int)check->result, plainly(check->text));
    ck_assert_int_eq(check->unknown, settles_something(&check->settles));
    wend_free(wend);
}
END_TEST

static const struct {
    const char *location, *segment;
    enum CheckResult result;
    bool unknown;
    const char *says; /* NULL: any */
} depth_rows[] = {
    /* 705.522: 0.6 m, in ploughed ground 1.0 m */
    {"farm", "way: buried, depth: 600 mm, under: lawn", CHECK_PASS, false,
     "a lies 600 mm deep; at least 600 mm is required"},
    {"farm", "way: buried, depth: 590 mm, under: lawn", CHECK_FAIL, false, NULL},
    {"farm", "way: buried, depth: 600 mm, under: field", CHECK_FAIL, false,
     "a lies 600 mm deep; at least 1000 mm is required"},
    {"farm", "way: duct, depth: 1 m, under: field", CHECK_PASS, false, NULL},
    {"farm", "way: buried, depth: 600 mm", CHECK_NOT_DUE, true, /* what lies above was not surveyed */
     "ploughed ground requires 1.0 m on a farm."},
    {"farm", "way: buried, depth: 1 m", CHECK_PASS, false, NULL},
    {"farm", "way: buried, depth: 500 mm", CHECK_FAIL, false, NULL},
    {"farm", "way: wall", CHECK_NOT_DUE, false, NULL},
    /* 708.521.7.2: 0.6 m; 709.521.1.7: 0.5 m */
    {"caravan-park", "way: duct, depth: 590 mm", CHECK_FAIL, false, NULL},
    {"marina", "way: buried, depth: 500 mm", CHECK_PASS, false, NULL},
    {"marina", "way: buried, depth: 490 mm", CHECK_FAIL, false, NULL},
    {"dwelling", "way: buried, depth: 300 mm", CHECK_NOT_DUE, false, NULL}, /* 522.8.10 names no figure */
};

START_TEST(how_deep)
{
    struct Wend *wend =
        plan_at(depth_rows[_i].location, "feeds: board", RESIDUAL(30, ""), NULL, NULL, depth_rows[_i].segment);
    const struct Check *check = rig_found(wend, "location-depth");
    ck_assert_msg(check->result == depth_rows[_i].result && check->unknown == depth_rows[_i].unknown, "result %d: %s",
                  (int)check->result, plainly(check->text));
    ck_assert(depth_rows[_i].says == NULL || said_has(check->text, depth_rows[_i].says));
    wend_free(wend);
}
END_TEST

/* 522.6.202, 522.6.203: a bare sheath under 50 mm deep in a wall wants 30 mA; armour, a screen or earthed metal do too.
 */
static const struct {
    const char *cable, *device, *hidden;
    enum CheckResult result;
    bool unknown;
    const char *says;
} hidden_rows[] = {
    {"type: BS6004-flat", "kind: MCB, rating: 10 A", "", CHECK_NOT_DUE, true,
     "50 mm, or between metal studs, it needs a residual device of 30 mA, not time-delayed."},
    {"type: BS6004-flat", "kind: MCB, rating: 10 A", ", hidden: shallow", CHECK_FAIL, false,
     "needs a residual device of 30 mA, not time-delayed, or an armoured or screened cable"},
    {"type: BS6004-flat", "kind: MCB, rating: 10 A", ", hidden: deep", CHECK_NOT_DUE, false,
     "No bare sheath lies shallow in a wall."},
    {"type: BS6004-flat", "kind: MCB, rating: 10 A", ", hidden: covered", CHECK_NOT_DUE, false,
     "No bare sheath lies shallow in a wall."},
    {"type: BS6004-flat", "kind: RCBO, rating: 10 A, residual: 30 mA", ", hidden: shallow", CHECK_PASS, false,
     "A cable in a wall behind a residual device of 30 mA or less."},
    {"type: BS6004-flat", "kind: RCBO, rating: 10 A, residual: 100 mA", ", hidden: shallow", CHECK_FAIL, false,
     "needs a residual device of 30 mA, not time-delayed, or"},
    {"type: BS6004-flat", "kind: RCBO, rating: 10 A, residual: 30 mA, time-delayed: yes", ", hidden: shallow",
     CHECK_FAIL, false, "needs a residual device of 30 mA, not time-delayed, or"},
    {"type: BS5467, cores: 3", "kind: MCB, rating: 10 A", ", hidden: shallow, insulation: surrounded", CHECK_NOT_DUE,
     false, "No bare sheath lies shallow in a wall."},
};

START_TEST(hidden_in_a_wall)
{
    char segment[128];
    snprintf(segment, sizeof segment, "{name: a, way: stud-wall, length: 8 m%s}", hidden_rows[_i].hidden);
    struct RigRoute route = {.run = "feeds: equipment",
                             .load = "current: 6 A",
                             .cable = hidden_rows[_i].cable,
                             .device = hidden_rows[_i].device,
                             .segments = segment};
    struct Wend *wend = rig_plan(&route);
    const struct Check *check = rig_found(wend, "hidden-cable");
    ck_assert_msg(check->result == hidden_rows[_i].result && check->unknown == hidden_rows[_i].unknown, "result %d: %s",
                  (int)check->result, plainly(check->text));
    ck_assert(said_has(check->text, hidden_rows[_i].says));
    ck_assert_int_eq(settles_something(&check->settles), hidden_rows[_i].unknown);
    wend_free(wend);
}
END_TEST

/* Where nobody chose the device it is one that the place asks for: ahead of a board delayed, so that the board's own
 * can act first; for a light or a motor without delay. */
START_TEST(a_device_that_the_place_asks_for)
{
    static const struct {
        const char *location, *run;
        double residual_a;
        bool delayed;
    } rows[] = {{"farm", "feeds: board", 0.1, true},        {"farm", "feeds: equipment", 0.03, false},
                {"dwelling", "use: lighting", 0.03, false}, {"event", "feeds: board", 0.1, true},
                {"dwelling", "feeds: board", 0, false},     {"workshop", "feeds: equipment", 0, false}};
    for (int i = 0; i < COUNT_OF(rows); i++) {
        char text[512];
        const int length =
            snprintf(text, sizeof text,
                     "wend: 1\njob: {title: t, location: %s}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\nruns:\n"
                     "  f:\n    %s\n    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3}\nsegments:\n"
                     "  - {name: a, length: 20 m, way: wall}\n",
                     rows[i].location, rows[i].run);
        struct Wend *wend = wend_plan("t", text, (size_t)length);
        ck_assert_ptr_nonnull(wend_result(wend));
        const struct Device *device = &wend_result(wend)->runs[0].settled->device;
        ck_assert_double_eq(device->residual_a.given ? device->residual_a.value : 0, rows[i].residual_a);
        ck_assert_int_eq(device->time_delayed, rows[i].delayed);
        ck_assert_int_ne(rig_found(wend, "residual-protection")->result, CHECK_FAIL);
        wend_free(wend);
    }
}
END_TEST

static const struct Say *assumed(const struct Wend *wend, const char *where)
{
    const struct Plan *plan = wend_result(wend);
    for (int i = 0; i < plan->assumption_count; i++) {
        if (text_same(plan->assumptions[i].where, where)) {
            return plan->assumptions[i].text;
        }
    }
    return NULL;
}

/* Where nobody said what place it is the plan says which kinds would ask for more, and no others. */
START_TEST(places_that_would_change_it)
{
    struct Wend *wend =
        plan_at(NULL, "feeds: board", NULL, TN_C_S, EXPORT "}", "way: buried, depth: 550 mm, under: lawn");
    const struct Say *text = assumed(wend, "job.location");
    ck_assert(said_has(text, "a residual device of 300 mA for farm, event;"));
    ck_assert(said_has(text, "another earth for farm, building-site, caravan-park, marina, pool, event, fuel-point;"));
    ck_assert(said_has(text, "more depth for farm, caravan-park"));
    ck_assert(!said_has(text, "dwelling"));
    ck_assert(!said_has(text, "workshop"));
    wend_free(wend);
    wend = plan_at("dwelling", "feeds: board", NULL, TN_C_S, EXPORT "}", NULL);
    ck_assert_ptr_null(assumed(wend, "job.location"));
    wend_free(wend);
    wend = plan_at(NULL, "feeds: sockets", RESIDUAL(30, ""), NULL, NULL, NULL);
    ck_assert(said_has(assumed(wend, "job.location"), "no other kind of place"));
    wend_free(wend);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("what the place demands");
    TCase *tests = tcase_create("places");
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, rules_equal_the_copy);
    tcase_add_loop_test(tests, residual_protection, 0, COUNT_OF(residual_rows));
    tcase_add_loop_test(tests, said_of_residual_protection, 0, COUNT_OF(said_rows));
    tcase_add_test(tests, what_a_waiver_takes_for_granted);
    tcase_add_test(tests, remembered_clauses_say_so);
    tcase_add_loop_test(tests, whose_earth, 0, COUNT_OF(earth_rows));
    tcase_add_loop_test(tests, how_deep, 0, COUNT_OF(depth_rows));
    tcase_add_loop_test(tests, hidden_in_a_wall, 0, COUNT_OF(hidden_rows));
    tcase_add_test(tests, a_device_that_the_place_asks_for);
    tcase_add_test(tests, places_that_would_change_it);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
