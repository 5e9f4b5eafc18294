/* The drawing list: where things lie. No text over another, none off its sheet, none with a line through it, for ways
 * of 1 to 200 stretches; and all of the plan's decisions are on it. */
#include "document_suites.h"
#include "documents/diagram/layout_private.h"
#include "plan_fixture.h"
#include "sweep_depth.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Places are rounded when written; boxes may touch. */
static const double slack_mm = 0.02;

static struct DrawBox shrunk(struct DrawBox box)
{
    return (struct DrawBox){box.left_mm + slack_mm, box.top_mm + slack_mm, box.right_mm - slack_mm,
                            box.bottom_mm - slack_mm};
}

static bool overlap(struct DrawBox a, struct DrawBox b)
{
    return a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.top_mm < b.bottom_mm && b.top_mm < a.bottom_mm;
}

static bool inside(struct DrawBox inner, struct DrawBox outer)
{
    return inner.left_mm >= outer.left_mm && inner.right_mm <= outer.right_mm && inner.top_mm >= outer.top_mm &&
           inner.bottom_mm <= outer.bottom_mm;
}

/* Does the line from a to b pass through the box? Clips it against the four sides. */
static bool crosses(struct DrawPoint a, struct DrawPoint b, struct DrawBox box)
{
    double from = 0, to = 1, dx = b.x_mm - a.x_mm, dy = b.y_mm - a.y_mm;
    const double slopes[4] = {-dx, dx, -dy, dy};
    const double rooms[4] = {a.x_mm - box.left_mm, box.right_mm - a.x_mm, a.y_mm - box.top_mm, box.bottom_mm - a.y_mm};
    for (int i = 0; i < 4; i++) {
        if (fabs(slopes[i]) < 1e-12) {
            if (rooms[i] < 0) {
                return false;
            }
        } else if (slopes[i] < 0) {
            from = fmax(from, rooms[i] / slopes[i]);
        } else {
            to = fmin(to, rooms[i] / slopes[i]);
        }
    }
    return from < to;
}

static struct DrawBox path_box(const struct Drawing *drawing, const struct DrawItem *item)
{
    struct DrawBox box = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (size_t i = 0; i < item->point_count; i++) {
        const struct DrawPoint *point = &drawing->points[item->first_point + i];
        box.left_mm = fmin(box.left_mm, point->x_mm);
        box.right_mm = fmax(box.right_mm, point->x_mm);
        box.top_mm = fmin(box.top_mm, point->y_mm);
        box.bottom_mm = fmax(box.bottom_mm, point->y_mm);
    }
    return box;
}

static struct DrawBox circle_box(const struct DrawItem *item)
{
    return (struct DrawBox){item->x_mm - item->radius_mm, item->y_mm - item->radius_mm, item->x_mm + item->radius_mm,
                            item->y_mm + item->radius_mm};
}

/* What is painted behind a text hides what was drawn before. */
static size_t behind(const struct Drawing *drawing, size_t text, struct DrawBox box)
{
    for (size_t i = text; i > 0; i--) {
        const struct DrawItem *item = &drawing->items[i - 1];
        if ((item->fill == INK_WHITE || item->fill == INK_BLACK || item->fill == INK_SHADE || item->fill == INK_LOAD) &&
            ((item->kind == DRAW_PATH && item->closed && inside(box, path_box(drawing, item))) ||
             (item->kind == DRAW_CIRCLE && inside(box, circle_box(item))))) {
            return i - 1;
        }
    }
    return 0;
}

/* White letters are seen on black alone: on what was painted last behind them. */
static bool on_black(const struct Drawing *drawing, size_t text, struct DrawBox box)
{
    const struct DrawBox middle = {box.left_mm, (box.top_mm + box.bottom_mm) / 2, box.right_mm,
                                   (box.top_mm + box.bottom_mm) / 2};
    for (size_t i = text; i > 0; i--) {
        const struct DrawItem *item = &drawing->items[i - 1];
        if (item->fill != INK_NONE &&
            ((item->kind == DRAW_PATH && item->closed && inside(middle, path_box(drawing, item))) ||
             (item->kind == DRAW_CIRCLE && inside(middle, circle_box(item))))) {
            return item->fill == INK_BLACK;
        }
    }
    return false;
}

static bool path_crosses(const struct Drawing *drawing, const struct DrawItem *item, struct DrawBox box)
{
    const struct DrawPoint *points = &drawing->points[item->first_point];
    struct DrawPoint start = {0};
    for (size_t i = 0; i < item->point_count; i++) {
        start = points[i].move ? points[i] : start;
        bool ends = i + 1 == item->point_count || points[i + 1].move;
        if (ends ? (item->closed && crosses(points[i], start, box)) : crosses(points[i], points[i + 1], box)) {
            return true;
        }
    }
    return false;
}

static bool circle_crosses(const struct DrawItem *item, struct DrawBox box)
{
    if (inside(box, circle_box(item))) {
        return false; /* its own number */
    }
    double dx = fmax(fmax(box.left_mm - item->x_mm, item->x_mm - box.right_mm), 0);
    double dy = fmax(fmax(box.top_mm - item->y_mm, item->y_mm - box.bottom_mm), 0);
    return hypot(dx, dy) < item->radius_mm;
}

static struct DrawBox item_box(const struct Drawing *drawing, const struct DrawItem *item)
{
    return item->kind == DRAW_PATH ? path_box(drawing, item) : circle_box(item);
}

/* `boxes`: of every item, so that most need no closer look. */
static void check_lines(const struct Drawing *drawing, const struct DrawBox *boxes, size_t text, struct DrawBox box)
{
    for (size_t i = behind(drawing, text, box); i < drawing->count; i++) {
        const struct DrawItem *item = &drawing->items[i];
        if (boxes[i].left_mm > box.right_mm || boxes[i].right_mm < box.left_mm || boxes[i].top_mm > box.bottom_mm ||
            boxes[i].bottom_mm < box.top_mm) {
            continue;
        }
        bool hit = item->pen.ink != INK_NONE && ((item->kind == DRAW_PATH && path_crosses(drawing, item, box)) ||
                                                 (item->kind == DRAW_CIRCLE && circle_crosses(item, box)));
        if (hit) { /* an assertion each time would tell Check of each success, which takes longer than the looking */
            ck_abort_msg("a %s at %d,%d goes through \"%s\" at %d,%d", item->cable ? "cable" : "line",
                         (int)boxes[i].left_mm, (int)boxes[i].top_mm, drawing->items[text].text, (int)box.left_mm,
                         (int)box.top_mm);
        }
    }
}

static int sheet_of(double y_mm)
{
    return (int)floor(y_mm / SHEET_HEIGHT);
}

/* Every text on its sheet, none over another, none with a line through it. */
static void check_texts(const struct Drawing *drawing)
{
    size_t *texts = calloc(drawing->count, sizeof *texts), count = 0;
    struct DrawBox *boxes = calloc(drawing->count, sizeof *boxes);
    ck_assert(texts != NULL && boxes != NULL);
    for (size_t i = 0; i < drawing->count; i++) {
        boxes[i] = item_box(drawing, &drawing->items[i]);
        if (drawing->items[i].kind == DRAW_TEXT) {
            texts[count++] = i;
        }
    }
    ck_assert_uint_gt(count, 10);
    for (size_t i = 0; i < count; i++) {
        const struct DrawItem *item = &drawing->items[texts[i]];
        struct DrawBox box = drawing_text_box(item);
        int sheet = sheet_of(item->y_mm);
        struct DrawBox frame = {FRAME_LEFT, sheet * SHEET_HEIGHT + SHEET_MARGIN, FRAME_RIGHT,
                                (sheet + 1) * SHEET_HEIGHT - SHEET_MARGIN};
        ck_assert_msg(inside(box, frame), "\"%s\" at %d,%d leaves sheet %d", item->text, (int)box.left_mm,
                      (int)box.top_mm, sheet + 1);
        ck_assert(item->style.size_mm >= 2.5);
        ck_assert(item->style.ink == INK_BLACK || item->style.ink == INK_GREY || item->style.ink == INK_ACCENT ||
                  (item->style.ink == INK_WHITE && on_black(drawing, texts[i], box)));
        for (size_t k = i + 1; k < count; k++) {
            const struct DrawItem *other = &drawing->items[texts[k]];
            if (overlap(shrunk(box), shrunk(drawing_text_box(other)))) {
                ck_abort_msg("\"%s\" lies over \"%s\"", item->text, other->text);
            }
        }
        check_lines(drawing, boxes, texts[i], shrunk(box));
    }
    free(boxes);
    free(texts);
}

static void check_places(const struct Drawing *drawing)
{
    struct DrawBox all = {0, 0, drawing->width_mm, drawing->height_mm};
    for (size_t i = 0; i < drawing->count; i++) {
        const struct DrawItem *item = &drawing->items[i];
        if (item->kind == DRAW_PATH) {
            ck_assert_uint_gt(item->point_count, 0);
            ck_assert(inside(path_box(drawing, item), all));
        } else if (item->kind == DRAW_CIRCLE) {
            ck_assert(inside(circle_box(item), all));
        }
    }
    ck_assert_double_eq_tol(drawing->width_mm, SHEET_WIDTH, 1e-9);
    ck_assert_double_eq_tol(fmod(drawing->height_mm, SHEET_HEIGHT), 0, 1e-9);
}

static const struct Drawing *drawing_of(struct Arena *arena, const struct Plan *plan)
{
    ck_assert_ptr_nonnull(plan);
    const struct Drawing *drawing =
        layout_drawing(arena, plan, fixture_work(arena, plan), LANGUAGE_ENGLISH, "0B8D-48AD");
    ck_assert_ptr_nonnull(drawing);
    return drawing;
}

static int count_texts(const struct Drawing *drawing, const char *text)
{
    int count = 0;
    for (size_t i = 0; i < drawing->count; i++) {
        count += drawing->items[i].kind == DRAW_TEXT && text_same(drawing->items[i].text, text);
    }
    return count;
}

static bool any_text_begins(const struct Drawing *drawing, const char *words)
{
    for (size_t i = 0; i < drawing->count; i++) {
        if (drawing->items[i].kind == DRAW_TEXT && strncmp(drawing->items[i].text, words, strlen(words)) == 0) {
            return true;
        }
    }
    return false;
}

/* Each number once at the head of its column, on every sheet that has it, and at most once on the profile. */
static void check_numbers(struct Arena *arena, const struct Drawing *drawing, const struct Plan *plan)
{
    for (int i = 0; i < plan->segment_count; i++) {
        const char *number = arena_print(arena, "%d", i + 1);
        int on_profile = 0, heads = 0, sheet_last = -1;
        bool seen_from_above = false;
        for (size_t k = 1; k < drawing->count; k++) {
            const struct DrawItem *item = &drawing->items[k];
            const bool group = item->kind == DRAW_GROUP;
            seen_from_above = (seen_from_above && !group) || (group && text_same(item->id, "view"));
            if (seen_from_above || item->kind != DRAW_TEXT || !text_same(item->text, number) ||
                drawing->items[k - 1].kind != DRAW_CIRCLE) {
                continue;
            }
            /* at a head the name of the segment stands beside it, at the same height, or under it */
            bool head = false;
            for (size_t n = k + 1; n < drawing->count && n < k + 12 && drawing->items[n].kind == DRAW_TEXT && !head;
                 n++) {
                head = drawing->items[n].x_mm > item->x_mm && drawing->items[n].x_mm < item->x_mm + 6 &&
                       fabs(drawing->items[n].y_mm - item->y_mm) < 12;
                head = head || (fabs(drawing->items[n].x_mm - item->x_mm) < 6 &&
                                drawing->items[n].y_mm > item->y_mm + 3 && drawing->items[n].y_mm < item->y_mm + 8);
            }
            if (head) {
                ck_assert_msg(sheet_of(item->y_mm) != sheet_last, "segment %s has two heads on a sheet", number);
                sheet_last = sheet_of(item->y_mm);
            }
            heads += head;
            on_profile += !head;
        }
        ck_assert_msg(heads >= 1 && on_profile <= 1, "segment %s has %d heads, %d numbers", number, heads, on_profile);
    }
}

/* Of the numbers most stand on the profile too; a sheet where none could would be ugly. */
static void check_profile_numbers(const struct Drawing *drawing)
{
    int circles = 0;
    for (size_t i = 0; i < drawing->count; i++) {
        circles += drawing->items[i].kind == DRAW_CIRCLE && drawing->items[i].radius_mm > 2;
    }
    ck_assert_int_ge(circles, 2);
}

/* The figures at the edges of the columns are the plan's: distance from the start, behind each segment. */
static void check_breaks(struct Arena *arena, const struct Drawing *drawing, const struct Plan *plan)
{
    for (int i = 0; i < plan->segment_count; i++) {
        ck_assert_msg(count_texts(drawing, number_text(arena, plan->segments[i].to_m, 2)) >= 1, "no break at %d", i);
    }
}

START_TEST(fixtures_are_clear)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, (enum FixtureKind)_i);
    const struct Drawing *drawing = drawing_of(arena, plan);
    check_texts(drawing);
    check_places(drawing);
    check_numbers(arena, drawing, plan);
    check_profile_numbers(drawing);
    check_breaks(arena, drawing, plan);
    arena_free(arena);
}
END_TEST

/* Counts of stretches from 1 to 200. */
START_TEST(any_length_is_clear)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_random(arena, _i, 77);
    const struct Drawing *drawing = drawing_of(arena, plan);
    check_texts(drawing);
    check_places(drawing);
    check_numbers(arena, drawing, plan);
    check_profile_numbers(drawing);
    check_breaks(arena, drawing, plan);
    arena_free(arena);
}
END_TEST

/* Many different ways of a domestic size. */
START_TEST(many_ways_are_clear)
{
    for (unsigned seed = 0; seed < 25; seed++) {
        struct Arena *arena = arena_new();
        const struct Plan *plan =
            fixture_random(arena, 1 + (_i * 25 + (int)seed) % 24, 1000 + (unsigned)_i * 25 + seed);
        const struct Drawing *drawing = drawing_of(arena, plan);
        check_texts(drawing);
        check_places(drawing);
        check_breaks(arena, drawing, plan);
        arena_free(arena);
    }
}
END_TEST

START_TEST(says_the_decisions)
{
    struct Arena *arena = arena_new();
    const struct Drawing *drawing = drawing_of(arena, fixture_plan(arena, FIXTURE_RUNS));
    ck_assert_int_ge(count_texts(drawing, "Boathouse, four cables"), 1);
    ck_assert_int_eq(count_texts(drawing, "FAIL"), 1);
    ck_assert_int_eq(count_texts(drawing, "FAIL: voltage drop"), 1);
    ck_assert_int_eq(count_texts(drawing, "5-core 6\xC2\xA0mm\xC2\xB2 BS5467"), 2);
    ck_assert_int_ge(count_texts(drawing, "RCBO B 32 A 30 mA"), 2); /* a line of the ends may be that alone, too */
    ck_assert_int_ge(count_texts(drawing, "LOWEST") + count_texts(drawing, "TOO LOW"), 1);
    ck_assert(any_text_begins(drawing, "A plan, not a certificate"));
    ck_assert(any_text_begins(drawing, "FAIL: DO NOT BUILD YET"));
    int sheets = (int)(drawing->height_mm / SHEET_HEIGHT + 0.5);
    for (int sheet = 1; sheet <= sheets; sheet++) {
        ck_assert_int_eq(count_texts(drawing, arena_print(arena, "drawing %d of %d", sheet, sheets)), 1);
    }
    arena_free(arena);
}
END_TEST

/* The signs under a strip name what is on it, with its count: the ways that are used and no other, bends and risers. */
START_TEST(signs_are_counted)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, (enum FixtureKind)_i);
    const struct Drawing *drawing = drawing_of(arena, plan);
    const struct RouteLayout words = {.arena = arena, .plan = plan};
    int ways[WAY_COUNT] = {0}, counted[WAY_COUNT] = {0}, bends = 0, bends_counted = 0;
    for (int i = 0; i < plan->segment_count; i++) {
        ways[plan->segments[i].surveyed->way]++;
        bends += plan->segments[i].surveyed->bend_count;
    }
    bool within = false;
    for (size_t i = 0; i + 1 < drawing->count; i++) {
        const struct DrawItem *item = &drawing->items[i], *next = &drawing->items[i + 1];
        within =
            item->kind == DRAW_GROUP ? strncmp(item->id, "signs-", 6) == 0 : within && item->kind != DRAW_GROUP_END;
        if (!within || item->kind != DRAW_TEXT || next->kind != DRAW_TEXT || item->style.bold) {
            continue;
        }
        for (int way = 0; way < WAY_COUNT; way++) {
            if (text_same(item->text, layout_term(&words, sign_word(way_sign((enum Way)way))))) {
                counted[way] += (int)strtol(next->text, NULL, 10);
            }
        }
        bends_counted +=
            text_same(item->text, layout_term(&words, SAY_SIGN_BEND)) ? (int)strtol(next->text, NULL, 10) : 0;
    }
    for (int way = 0; way < WAY_COUNT; way++) {
        ck_assert_msg(counted[way] == ways[way], "%s: %d, not %d", survey_word(WORDS_WAY, way), counted[way],
                      ways[way]);
    }
    ck_assert_int_eq(bends_counted, bends);
    arena_free(arena);
}
END_TEST

/* Where the profile has room the height of a riser stands beside its upright, with an arrow. */
START_TEST(risers_have_their_height)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_TOWER);
    struct RouteLayout layout;
    ck_assert(layout_begin(&layout, arena, plan, NULL, LANGUAGE_ENGLISH));
    layout_strips(&layout);
    struct Drawing drawing = drawing_new(arena);
    profile_draw(&layout, &drawing, &layout.strips[0], 0);
    int risers = 0, heights = 0;
    for (int i = layout.strips[0].first; i <= layout.strips[0].last; i++) {
        const struct Stretch *stretch = &layout.stretches[i];
        if (layout_is_riser(stretch) && layout_up_mm(&layout, fabs(stretch->to_m - stretch->from_m)) > 5) {
            const double rise_m = fabs(stretch->to_m - stretch->from_m);
            risers++;
            heights += count_texts(&drawing, layout_said(&layout, say_alone(arena, layout_metres(rise_m)))) > 0;
        }
    }
    ck_assert_int_gt(risers, 0);
    ck_assert_int_eq(heights, risers);
    arena_free(arena);
}
END_TEST

/* The white paper behind a sign in the view from above: where the sign stands. */
static int signs_in_view(const struct Drawing *drawing, double *x_mm, int most)
{
    int count = 0;
    bool view = false;
    for (size_t i = 0; i < drawing->count; i++) {
        const struct DrawItem *item = &drawing->items[i];
        view = item->kind == DRAW_GROUP ? text_same(item->id, "view") : view;
        if (view && item->kind == DRAW_PATH && item->closed && item->fill == INK_WHITE && item->pen.ink == INK_NONE) {
            const struct DrawBox box = path_box(drawing, item);
            if (fabs(box.right_mm - box.left_mm - 4.4) < 0.01 && count < most) {
                x_mm[count++] = (box.left_mm + box.right_mm) / 2;
            }
        }
    }
    return count;
}

static double cable_in_view(const struct Drawing *drawing)
{
    bool view = false;
    for (size_t i = 0; i < drawing->count; i++) {
        const struct DrawItem *item = &drawing->items[i];
        view = item->kind == DRAW_GROUP ? text_same(item->id, "view") : view;
        if (view && item->kind == DRAW_PATH && item->cable) {
            return path_box(drawing, item).left_mm;
        }
    }
    return NAN;
}

/* Coming from the supply end and going north, what is on the left is west of the cable; each is told in words too, on
 * the sheet and on a phone, and counted among the signs. */
START_TEST(marks_stand_on_their_side)
{
    struct Arena *arena = arena_new();
    const struct Plan *plan = fixture_plan(arena, FIXTURE_TWO);
    struct Segment *first = arena_alloc(arena, sizeof *first);
    struct PlanSegment *segments = arena_array(arena, (size_t)plan->segment_count, sizeof *segments);
    struct Plan *marked = arena_alloc(arena, sizeof *marked);
    ck_assert(first != NULL && segments != NULL && marked != NULL);
    const struct Landmark landmarks[] = {{.what = LANDMARK_TREE,
                                          .at_m = {1, true, {0, 0}},
                                          .off_m = {3, true, {0, 0}},
                                          .side = SIDE_LEFT,
                                          .side_given = true,
                                          .note = ""},
                                         {.what = LANDMARK_COVER,
                                          .at_m = {1, true, {0, 0}},
                                          .off_m = {3, true, {0, 0}},
                                          .side = SIDE_RIGHT,
                                          .side_given = true,
                                          .note = "lid"}};
    memcpy(segments, plan->segments, (size_t)plan->segment_count * sizeof *segments);
    *marked = *plan;
    *first = *segments[0].surveyed;
    first->heading_deg = (struct Quantity){.value = 0, .given = true};
    first->rise_m.value = 0;
    first->landmarks = landmarks;
    first->landmark_count = 2;
    segments[0].surveyed = first;
    marked->segments = segments;
    const struct Drawing *drawing = drawing_of(arena, marked);
    double x_mm[3] = {0};
    ck_assert_int_eq(signs_in_view(drawing, x_mm, 3), 2);
    ck_assert(x_mm[0] < cable_in_view(drawing) - 2);
    ck_assert(x_mm[1] > cable_in_view(drawing) + 2);
    ck_assert_int_eq(count_texts(drawing, "tree"), 2); /* among the signs, and beside its own on the view */
    ck_assert_int_eq(count_texts(drawing, "cover"), 1);
    ck_assert(any_text_begins(drawing, "tree at 1"));
    ck_assert_int_eq(count_texts(drawing, "lid"), 1);
    const struct Drawing *narrow = layout_narrow(arena, marked, fixture_work(arena, marked), LANGUAGE_ENGLISH);
    ck_assert(narrow != NULL && any_text_begins(narrow, "cover at 1"));
    arena_free(arena);
}
END_TEST

/* Scales are round ratios, and every segment is drawn to its strip's; strips follow each other without a gap. */
START_TEST(drawn_to_scale)
{
    static const double leads[] = {1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5};
    struct Arena *arena = arena_new();
    struct RouteLayout layout;
    ck_assert(layout_begin(&layout, arena, fixture_plan(arena, (enum FixtureKind)_i), NULL, LANGUAGE_ENGLISH));
    layout_strips(&layout);
    ck_assert_int_gt(layout.strip_count, 0);
    int next = 0;
    for (int s = 0; s < layout.strip_count; s++) {
        const struct Strip *strip = &layout.strips[s];
        double lead = strip->across;
        while (lead >= 9.999) {
            lead /= 10;
        }
        bool round = false;
        for (size_t i = 0; i < sizeof leads / sizeof leads[0]; i++) {
            round = round || fabs(lead - leads[i]) < 1e-9;
        }
        ck_assert_msg(round, "1:%d", (int)strip->across);
        ck_assert_int_eq(strip->first, next);
        double at_mm = AXIS_LEFT;
        for (int i = strip->first; i <= strip->last; i++) {
            const struct Stretch *stretch = &layout.stretches[i];
            const double length_m = stretch->segment->to_m - stretch->segment->from_m;
            ck_assert_double_eq_tol(stretch->width_mm, length_m * 1000 / strip->across, 1e-9);
            ck_assert_double_eq_tol(stretch->x_mm, at_mm, 1e-6);
            at_mm += stretch->width_mm;
        }
        ck_assert(at_mm <= AXIS_LEFT + AXIS_WIDTH + 1e-6);
        next = strip->last + 1;
    }
    ck_assert_int_eq(next, layout.stretch_count);
    arena_free(arena);
}
END_TEST

/* What the drawing says of a caution is short. */
START_TEST(cautions_are_short)
{
    static const enum Saying flags[] = {
#define CAUTION(symbol, where, trust, source) SAY_FLAG_##symbol,
#include "tables/cautions.inc"
#undef CAUTION
    };
    struct Arena *arena = arena_new();
    const struct RouteLayout layout = {.arena = arena};
    for (size_t i = 0; i < sizeof flags / sizeof flags[0]; i++) {
        ck_assert_uint_le(strlen(layout_said(&layout, say(arena, flags[i]))), 32);
    }
    arena_free(arena);
}
END_TEST

/* The cable is one line: where one stretch ends the next begins, or a step joins them. */
START_TEST(ground_lies_above_what_is_buried)
{
    struct Arena *arena = arena_new();
    struct RouteLayout layout = {.arena = arena, .plan = fixture_plan(arena, (enum FixtureKind)_i), .up = 1};
    layout.stretch_count = layout.plan->segment_count;
    layout.stretches = arena_array(arena, (size_t)layout.stretch_count, sizeof *layout.stretches);
    ck_assert_ptr_nonnull(layout.stretches);
    for (int i = 0; i < layout.stretch_count; i++) {
        layout.stretches[i].segment = &layout.plan->segments[i];
        layout.stretches[i].length_m = layout.plan->segments[i].to_m - layout.plan->segments[i].from_m;
    }
    layout_heights(&layout);
    bool any = false;
    for (int i = 0; i < layout.stretch_count; i++) {
        const struct Stretch *stretch = &layout.stretches[i];
        bool in_ground = survey_in_ground(stretch->segment->surveyed->way);
        any = any || in_ground;
        ck_assert_int_eq(in_ground, stretch->ground == GROUND_KNOWN);
        if (in_ground) {
            ck_assert_double_eq_tol(stretch->ground_from_m - stretch->from_m, stretch->segment->depth_m, 1e-9);
            ck_assert_double_eq_tol(stretch->ground_to_m - stretch->to_m, stretch->segment->depth_m, 1e-9);
        }
        /* the rise of every stretch is drawn as surveyed */
        ck_assert_double_eq_tol(stretch->to_m - stretch->from_m,
                                stretch->segment->height_to_m - stretch->segment->height_from_m, 1e-9);
    }
    ck_assert_int_eq(any, layout.known_ground);
    arena_free(arena);
}
END_TEST

/* Every caution of a segment or of a run stands on a phone in words, not as a number alone. */
static void check_flags_said(struct Arena *arena, const struct Drawing *drawing, const struct Plan *plan)
{
    const struct RouteLayout layout = {.arena = arena, .plan = plan};
    for (int i = 0; i < plan->caution_count; i++) {
        const struct Caution *caution = &plan->cautions[i];
        if (caution->stretch_count > 0 || *caution->where != '\0') {
            const char *words = layout_said(&layout, flag_short(&layout, i));
            const char *lines[4];
            const struct TextStyle style = {.size_mm = 13};
            ck_assert_int_gt(type_wrap(arena, words, style, 360 - 8 - 138, 4, lines), 0);
            ck_assert_msg((count_texts(drawing, lines[0]) > 0) == caution->drawn, "caution %d: \"%s\"", i + 1, words);
        }
    }
    ck_assert(!any_text_begins(drawing, "cautions "));
}

/* The narrow one: within 360 dots, no type under 12, no text over another nor with a line through it, and every segment
 * with its number, its distance from the start and what it carries. */
static void check_narrow(struct Arena *arena, const struct Plan *plan)
{
    const struct Drawing *drawing = layout_narrow(arena, plan, fixture_work(arena, plan), LANGUAGE_ENGLISH);
    ck_assert_ptr_nonnull(drawing);
    struct DrawBox *boxes = calloc(drawing->count, sizeof *boxes);
    ck_assert_ptr_nonnull(boxes);
    for (size_t i = 0; i < drawing->count; i++) {
        boxes[i] = item_box(drawing, &drawing->items[i]);
    }
    const struct DrawBox page = {0, 0, 360, drawing->height_mm};
    for (size_t i = 0; i < drawing->count; i++) {
        const struct DrawItem *item = &drawing->items[i];
        if (item->kind != DRAW_TEXT) {
            continue;
        }
        const struct DrawBox box = drawing_text_box(item);
        ck_assert_msg(inside(box, page), "\"%s\" leaves the page", item->text);
        ck_assert(item->style.size_mm >= 12);
        for (size_t k = i + 1; k < drawing->count; k++) {
            if (drawing->items[k].kind == DRAW_TEXT &&
                overlap(shrunk(box), shrunk(drawing_text_box(&drawing->items[k])))) {
                ck_abort_msg("\"%s\" lies over \"%s\"", item->text, drawing->items[k].text);
            }
        }
        check_lines(drawing, boxes, i, shrunk(box));
    }
    free(boxes);
    for (int i = 0; i < plan->segment_count; i++) {
        const char *number = arena_print(arena, "%d", i + 1);
        int circles = 0;
        for (size_t k = 1; k < drawing->count; k++) {
            circles += drawing->items[k].kind == DRAW_TEXT && drawing->items[k - 1].kind == DRAW_CIRCLE &&
                       text_same(drawing->items[k].text, number);
        }
        ck_assert_msg(circles == 1, "segment %s has %d circles", number, circles);
    }
    check_breaks(arena, drawing, plan);
    check_flags_said(arena, drawing, plan);
}

START_TEST(narrow_is_clear)
{
    struct Arena *arena = arena_new();
    check_narrow(arena, fixture_plan(arena, (enum FixtureKind)_i));
    check_narrow(arena, fixture_random(arena, 1 + 3 * _i, 300U + (unsigned)_i));
    arena_free(arena);
}
END_TEST

/* Lines break at blanks, behind hyphens, at last resort where a blank asks not to; no line begins with a comma. */
START_TEST(wraps_where_one_may)
{
    static const struct TextStyle style = {.size_mm = 2.8, .ink = INK_BLACK};
    static const struct {
        double width_mm; /* 0: just too short for the whole */
        const char *text, *first, *second;
    } cases[] = {
        {13, "one two three", "one two", "three"},
        {14, "path-and-duct-way", "path-and-", "duct-way"},
        {15, "gland BW-25", "gland", "BW-25"}, /* a size is no two words */
        {0, "the one 2-pole", "the one", "2-pole"},
        {0, "1 tower-wall", "1", "tower-wall"}, /* there is room for the name */
        {12.4,
         "air\xC2\xA0"
         "at\xC2\xA0"
         "40, next",
         "air\xC2\xA0"
         "at",
         "40, next"},
        {13.3, "abcdefghijklmno", "abcdefgh", "ijklmno"},
    };
    struct Arena *arena = arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const char *lines[2] = {"", ""};
        const double width_mm =
            cases[i].width_mm > 0 ? cases[i].width_mm : type_width_mm(cases[i].text, style.size_mm, false) - 0.1;
        int count = type_wrap(arena, cases[i].text, style, width_mm, 2, lines);
        ck_assert_int_eq(count, 2);
        ck_assert_str_eq(lines[0], cases[i].first);
        ck_assert_str_eq(lines[1], cases[i].second);
        ck_assert(type_width_mm(lines[0], style.size_mm, false) <= width_mm);
    }
    arena_free(arena);
}
END_TEST

/* The check itself must be able to fail. */
START_TEST(check_sees_faults)
{
    struct DrawBox box = {10, 10, 20, 14};
    ck_assert(crosses((struct DrawPoint){0, 12, true}, (struct DrawPoint){30, 12, false}, box));
    ck_assert(crosses((struct DrawPoint){15, 0, true}, (struct DrawPoint){15, 12, false}, box));
    ck_assert(crosses((struct DrawPoint){12, 11, true}, (struct DrawPoint){13, 12, false}, box));
    ck_assert(!crosses((struct DrawPoint){0, 15, true}, (struct DrawPoint){30, 15, false}, box));
    ck_assert(!crosses((struct DrawPoint){0, 0, true}, (struct DrawPoint){9, 12, false}, box));
    ck_assert(overlap(box, (struct DrawBox){19, 13, 25, 20}));
    ck_assert(!overlap(box, (struct DrawBox){20.1, 10, 25, 14}));
    struct DrawItem circle = {.x_mm = 8, .y_mm = 12, .radius_mm = 2.5};
    ck_assert(circle_crosses(&circle, box));
    circle.radius_mm = 1.9;
    ck_assert(!circle_crosses(&circle, box));
}
END_TEST

Suite *suite_diagram(void)
{
    Suite *suite = suite_create("diagram");
    TCase *tests = tcase_create("layout");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, check_sees_faults);
    tcase_add_test(tests, wraps_where_one_may);
    tcase_add_loop_test(tests, fixtures_are_clear, 0, FIXTURE_COUNT);
    /* every count that a job has; of the long ones, which only a surveyor of estates has, every seventeenth will do */
    for (int count = 1; count <= 200; count += count < 20 ? 1 : sweep_depth(17, 1)) {
        tcase_add_loop_test(tests, any_length_is_clear, count, count + 1);
    }
    tcase_add_loop_test(tests, any_length_is_clear, 144, 145); /* an end next to the last one */
    tcase_add_loop_test(tests, many_ways_are_clear, 0, sweep_depth(4, 24));
    tcase_add_loop_test(tests, narrow_is_clear, 0, FIXTURE_COUNT);
    tcase_add_test(tests, says_the_decisions);
    tcase_add_loop_test(tests, signs_are_counted, 0, FIXTURE_COUNT);
    tcase_add_test(tests, risers_have_their_height);
    tcase_add_test(tests, marks_stand_on_their_side);
    tcase_add_test(tests, cautions_are_short);
    tcase_add_loop_test(tests, drawn_to_scale, 0, FIXTURE_COUNT);
    tcase_add_loop_test(tests, ground_lies_above_what_is_buried, 0, FIXTURE_COUNT);
    suite_add_tcase(suite, tests);
    return suite;
}
