/* Examples that others published, with the program's own functions. Each names its source; how exactly it must come out
 * is what the print shows. */
#include "csv_file.h"
#include "mechanics_rig.h"

#include <math.h>

static double cell(const struct CsvFile *file, int row, const char *head)
{
    return csv_number(file, row, csv_column(file, head));
}

/* Conduit construction manual of a cable maker, undated, appendix p.68: 340 lb, 0.144 lb/ft, 0.5: longest straight pull
 * 4722 ft; 500 ft take 36 lb. p.69: out of a right angle behind them 79 lb. */
START_TEST(straight_pull)
{
    const struct PullLoad load = {.weight = 0.144, .friction = 0.5};
    ck_assert_double_eq_tol(340 / pull_straight(0, &load, 1, 0, 1), 4722, 0.5);
    ck_assert_double_eq_tol(pull_straight(0, &load, 500, 0, 1), 36, 1e-9);
    ck_assert_double_eq_tol(pull_bend(pull_straight(0, &load, 500, 0, 1), 0.5, 90, 1), 79, 0.5);
    const struct PullPiece pieces[] = {{.length = 500, .crowd = 1}, {.bend_deg = 90, .crowd = 1}};
    ck_assert_double_eq_tol(pull_through(pieces, 2, &load).tension, 79, 0.5);
}
END_TEST

/* The same manual, p.69: 36 bend factors. */
START_TEST(bend_factors)
{
    struct CsvFile file = csv_open("cases/bend-factors.csv");
    for (int row = 0; row < file.rows; row++) {
        const double factor = pull_bend(1, cell(&file, row, "friction"), cell(&file, row, "bend_deg"), 1);
        ck_assert_double_eq_tol(factor, cell(&file, row, "printed"), cell(&file, row, "tolerance"));
    }
    ck_assert_int_eq(file.rows, 36);
    csv_close(&file);
}
END_TEST

/* "Vector Mechanics for Engineers: Statics", SI edition, sample problem 8.7: two turns round a bollard hold 7500 N with
 * 150 N, so the friction is 0.311; with that three turns hold 52.7 kN. */
START_TEST(hawser_on_a_bollard)
{
    ck_assert_double_lt(pull_bend(150, 0.3105, 720, 1), 7500);
    ck_assert_double_gt(pull_bend(150, 0.3115, 720, 1), 7500);
    ck_assert_double_eq_tol(pull_bend(150, 0.311, 1080, 1), 52700, 50);
}
END_TEST

/* "Engineering Mechanics", a university textbook, example 7.4: half a turn at 0.25 holds 1000 N with 455.98 N (e taken
 * as 2.718). */
START_TEST(rope_over_half_a_turn)
{
    ck_assert_double_eq_tol(1000 / pull_bend(1, 0.25, 180, 1), 455.98, 0.06);
    ck_assert_double_eq_tol(pull_bend(455.98, 0.25, 180, 1), 1000, 0.14);
}
END_TEST

/* Trade journal, "Simple calculations for cable pulling", November 2001: three cables of 1.60 in have 6.03 square
 * inches. */
START_TEST(area_of_three_cables)
{
    struct Bunch bunch = {0};
    for (int i = 0; i < 3; i++) {
        bunch_add(&bunch, 1.60);
    }
    const double pi = acos(-1);
    ck_assert_double_eq_tol(bunch.squares_mm2 * pi / 4, 6.03, 0.006);
    /* a bore of that very area would be full */
    ck_assert_double_eq_tol(duct_fill_percent(&bunch, sqrt(6.03 * 4 / pi)), 100, 0.1);
}
END_TEST

/* A cable maker's note: 300 lb/ft allow 600 lb out of a bend of 2 ft. */
START_TEST(sidewall_of_a_bend)
{
    const struct PullLoad load = {.friction = 0.5, .start = 600};
    const struct PullPiece bend = {.bend_deg = 1e-9, .radius = 2, .crowd = 1, .pressed = 1};
    ck_assert_double_eq_tol(pull_through(&bend, 1, &load).sidewall, 300, 1e-6);
    /* in kN/m the 4.4 of the table: 4.4482216 N/lb, 0.3048 m/ft */
    ck_assert_double_eq_tol(300 * 4.4482216 / 0.3048, pull_limits()->sidewall_n_per_m, 30);
}
END_TEST

/* The same manual as above, a run of seven sections both ways. */
static struct PullPiece section(const struct CsvFile *file, int row)
{
    return (struct PullPiece){.length = cell(file, row, "length_ft"),
                              .bend_deg = cell(file, row, "bend_deg"),
                              .radius = 10,
                              .crowd = 1,
                              .pressed = 1};
}

START_TEST(seven_sections_without_rounding)
{
    const struct PullLoad load = {.weight = 0.144, .friction = 0.5};
    struct CsvFile file = csv_open("cases/pull-seven-sections.csv");
    struct PullPiece pieces[7];
    ck_assert_int_eq(file.rows, 7);
    struct Pull forth = pull_begin(&load);
    struct Pull back = pull_begin(&load);
    for (int row = 0; row < 7; row++) {
        pieces[row] = section(&file, row);
        pull_over(&forth, &load, &pieces[row]);
        ck_assert_double_eq_tol(forth.tension, cell(&file, row, "forth_exact_lb"), 0.0051);
    }
    for (int row = 6; row >= 0; row--) {
        pull_back_over(&back, &load, &pieces[row]);
        ck_assert_double_eq_tol(back.tension, cell(&file, row, "back_exact_lb"), 0.0051);
    }
    ck_assert_double_eq(pull_through(pieces, 7, &load).tension, forth.tension);
    ck_assert_double_eq(pull_back_through(pieces, 7, &load).tension, back.tension);
    ck_assert_double_eq_tol(forth.bends_deg, 180, 1e-9);
    csv_close(&file);
}
END_TEST

/* As the manual does it: whole pounds at every step, bend factors of two places. Every printed figure comes out. */
static double rounded(double before, const struct PullLoad *load, const struct PullPiece *piece)
{
    if (piece->bend_deg > 0) {
        return round(before * round(100 * pull_bend(1, load->friction, piece->bend_deg, 1)) / 100);
    }
    return round(pull_straight(before, load, piece->length, 0, 1));
}

START_TEST(seven_sections_as_printed)
{
    static const struct {
        const char *tension, *sidewall;
        int from, step;
    } ways[] = {{"forth_printed_lb", "forth_sidewall_lb_ft", 0, 1}, {"back_printed_lb", "back_sidewall_lb_ft", 6, -1}};
    const struct PullLoad load = {.weight = 0.144, .friction = 0.5};
    struct CsvFile file = csv_open("cases/pull-seven-sections.csv");
    int bends = 0;
    for (int way = 0; way < 2; way++) {
        double tension = 0;
        for (int i = 0, row = ways[way].from; i < 7; i++, row += ways[way].step) {
            const struct PullPiece piece = section(&file, row);
            tension = rounded(tension, &load, &piece);
            ck_assert(csv_same(tension, cell(&file, row, ways[way].tension)));
            if (piece.bend_deg > 0) {
                ck_assert_double_eq_tol(tension / piece.radius, cell(&file, row, ways[way].sidewall), 1e-9);
                bends++;
            }
        }
    }
    ck_assert_int_eq(bends, 6);
    csv_close(&file);
}
END_TEST

Suite *suite_mechanics_cases(void)
{
    Suite *suite = suite_create("published examples of drawing in and filling");
    TCase *tests = tcase_create("cases");
    tcase_add_test(tests, straight_pull);
    tcase_add_test(tests, bend_factors);
    tcase_add_test(tests, hawser_on_a_bollard);
    tcase_add_test(tests, rope_over_half_a_turn);
    tcase_add_test(tests, area_of_three_cables);
    tcase_add_test(tests, sidewall_of_a_bend);
    tcase_add_test(tests, seven_sections_without_rounding);
    tcase_add_test(tests, seven_sections_as_printed);
    suite_add_tcase(suite, tests);
    return suite;
}
