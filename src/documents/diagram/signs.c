/* Draws the signs from the strokes in signs.inc. */
#include "layout_private.h"

static const struct {
    enum Saying word;
    const char *strokes;
} signs[SIGN_COUNT] = {
#define SIGN(id, word, strokes) [id] = {word, strokes},
#include "signs.inc"
#undef SIGN
};

struct Stroke {
    struct Drawing *drawing;
    double x_mm, y_mm, scale;
};

/* "26,16" and on: the next whole number, in tenths. */
static double read_tenths(const char **at)
{
    int value = 0;
    while (**at >= '0' && **at <= '9') {
        value = value * 10 + (*(*at)++ - '0');
    }
    *at += **at == ',';
    return value / 10.0;
}

static struct Pen stroke_pen(char kind, double scale)
{
    switch (kind) {
    case 'c': return (struct Pen){INK_BLACK, 1.1 * scale, DASH_NONE};
    case 'd': return (struct Pen){INK_BLACK, WIDTH_THING * scale, DASH_SHORT};
    case 't': return (struct Pen){INK_BLACK, WIDTH_RULE, DASH_NONE};
    case 'f':
    case 'O': return (struct Pen){INK_NONE, 0, DASH_NONE};
    default: return (struct Pen){INK_BLACK, WIDTH_THING * scale, DASH_NONE};
    }
}

static const char *draw_stroke(const struct Stroke *stroke, const char *at)
{
    const char kind = *at++;
    const struct Pen pen = stroke_pen(kind, stroke->scale);
    const enum Ink fill = kind == 'f' || kind == 'O' ? INK_BLACK : kind == 'w' ? INK_WHITE : INK_NONE;
    const bool circle = kind == 'o' || kind == 'O';
    if (!circle) {
        drawing_path(stroke->drawing, pen, fill);
    }
    for (bool move = true; *at != ';' && *at != '\0';) {
        const double x = stroke->x_mm + read_tenths(&at) * stroke->scale;
        const double y = stroke->y_mm + read_tenths(&at) * stroke->scale;
        if (circle) {
            drawing_circle(stroke->drawing, pen, fill, x, y, read_tenths(&at) * stroke->scale);
            break;
        }
        (move ? drawing_move : drawing_to)(stroke->drawing, x, y);
        move = *at == '/';
        at += *at == '/' || *at == ' ';
    }
    if (kind == 'f' || kind == 'w') {
        drawing_close(stroke->drawing);
    }
    return *at == ';' ? at + 1 : at;
}

void sign_draw(struct Drawing *drawing, enum Sign sign, double x_mm, double y_mm, double scale)
{
    const struct Stroke stroke = {drawing, x_mm, y_mm, scale};
    for (const char *at = sign > SIGN_NONE && sign < SIGN_COUNT ? signs[sign].strokes : ""; *at != '\0';) {
        at = draw_stroke(&stroke, at);
    }
}

enum Saying sign_word(enum Sign sign)
{
    return sign > SIGN_NONE && sign < SIGN_COUNT ? signs[sign].word : SAY_NOTHING;
}

enum Sign way_sign(enum Way way)
{
    static const enum Sign of_way[WAY_COUNT] = {
        [WAY_WALL] = SIGN_WALL,
        [WAY_FENCE] = SIGN_FENCE,
        [WAY_BEAM] = SIGN_BEAM,
        [WAY_LOFT_VOID] = SIGN_LOFT_VOID,
        [WAY_UNDER_FLOOR] = SIGN_UNDER_FLOOR,
        [WAY_STUD_WALL] = SIGN_STUD_WALL,
        [WAY_CEILING] = SIGN_CEILING,
        [WAY_THROUGH_WALL] = SIGN_THROUGH_WALL,
        [WAY_CONDUIT] = SIGN_CONDUIT,
        [WAY_TRUNKING] = SIGN_TRUNKING,
        [WAY_TRAY] = SIGN_TRAY,
        [WAY_LADDER] = SIGN_LADDER,
        [WAY_CATENARY] = SIGN_CATENARY,
        [WAY_DUCT] = SIGN_DUCT,
        [WAY_BURIED] = SIGN_BURIED,
    };
    return way >= 0 && way < WAY_COUNT ? of_way[way] : SIGN_NONE;
}

enum Sign landmark_sign(enum LandmarkKind what)
{
    static const enum Sign of[LANDMARK_COUNT] = {
        [LANDMARK_ROD] = SIGN_ROD,   [LANDMARK_SERVICE] = SIGN_SERVICE, [LANDMARK_DRAIN] = SIGN_DRAIN,
        [LANDMARK_TREE] = SIGN_TREE, [LANDMARK_COVER] = SIGN_COVER,     [LANDMARK_JOINT] = SIGN_JOINT,
        [LANDMARK_POST] = SIGN_POST, [LANDMARK_OTHER] = SIGN_OTHER_MARK};
    return (unsigned)what < LANDMARK_COUNT ? of[what] : SIGN_NONE;
}

enum Sign condition_sign(const struct Factor *factor)
{
    switch (factor->cause) {
    case FACTOR_AIR:
    case FACTOR_GROUND: return SIGN_HOT;
    case FACTOR_SUN: return SIGN_SUN;
    case FACTOR_GROUPING: return SIGN_OTHERS;
    case FACTOR_INSULATION: return SIGN_INSULATED;
    case FACTOR_SOIL: return SIGN_SOIL;
    case FACTOR_DEPTH: return SIGN_DEEP;
    case FACTOR_OVERLOAD_BURIED: return SIGN_GROUND;
    case FACTOR_BS3036: return SIGN_FUSE;
    case FACTOR_HARMONICS: return SIGN_HARMONICS;
    case FACTOR_CAUSES: break;
    }
    return SIGN_NONE;
}
