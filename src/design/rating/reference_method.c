/* From where a cable lies to the table and reference method that rate it there.
 *
 * The rules are those of IEC 60364-5-52 Table A.52.3 and BS 7671 Table 4A2 in the words of the route file. What no
 * table covers is said to be missing, never filled in. */
#include "rating_private.h"

/* The method of a way where no thermal insulation touches the cable. */
static const struct {
    enum Method method;
    enum Saying because;
} way_methods[] = {
#define WAY_KIND(symbol, word, meaning, place, round, held, on_timber, of_building, calls, method, because, ...)       \
    {METHOD_##method, SAY_##because},
#include "survey/way_kinds.inc"
#undef WAY_KIND
};

static const struct Lack not_for_ground = {PHRASE_NOT_FOR_GROUND, PHRASE_TAKE_ARMOURED, SAY_NOT_FOR_GROUND};
static const struct Lack not_this_way = {PHRASE_NOT_THIS_WAY, PHRASE_TAKE_ANOTHER_WAY, SAY_NOT_THIS_WAY};

static bool between_studs(const struct Segment *segment)
{
    return survey_way(segment->way)->round == ROUND_STUDS;
}

/* Surrounded: Ci on method C. Flat cable held for half a metre or more has a column of its own. */
static void surrounded(struct Situation *situation, enum Family family, double length_m)
{
    if (family == FAMILY_FLAT && length_m >= clause_ratings()->surrounded_from_mm / 1000) {
        situation->method = METHOD_103;
        situation->because = SAY_INSULATION_ALL_ROUND_LONG;
        return;
    }
    situation->method = METHOD_C;
    situation->because = SAY_INSULATION_ALL_ROUND;
    situation->insulated_mm = length_m * 1000;
}

/* One side: a column of its own where a table has one, else the worse that a table does give. Only Table 4D5, of flat
 * cable, has columns for one way alone: the ceiling's and the stud wall's. */
static void one_side(struct Situation *situation, enum Family family, const struct Segment *segment, double length_m)
{
    switch (family) {
    case FAMILY_FLAT:
        if (between_studs(segment)) {
            situation->method = METHOD_102;
            situation->because = SAY_TOUCHING_INNER_BOARD;
        } else if (segment->way == WAY_WALL) {
            situation->method = METHOD_A;
            situation->because = SAY_INSULATION_AND_WALL;
            situation->judgement = SAY_JUDGED_ONE_SIDE_AS_A;
        } else if (segment->way == WAY_CEILING && segment->thickness_m.given &&
                   segment->thickness_m.value <= clause_ratings()->ceiling_thin_m) {
            situation->method = METHOD_100;
            situation->because = SAY_CEILING_THIN_INSULATION;
        } else {
            situation->method = METHOD_101;
            situation->because = SAY_CEILING_THICK_INSULATION;
        }
        break;
    case FAMILY_MULTICORE:
        situation->method = METHOD_A;
        situation->because = SAY_INSULATION_ONE_SIDE;
        situation->judgement = SAY_JUDGED_ONE_SIDE_AS_A;
        break;
    case FAMILY_ARMOURED:
    case FAMILY_NONE:
        surrounded(situation, family, length_m);
        situation->because = SAY_INSULATION_ONE_SIDE;
        situation->judgement = SAY_JUDGED_ONE_SIDE_AS_ALL_ROUND;
        break;
    }
}

static void insulation_applies(struct Situation *situation, enum Family family, const struct Segment *segment,
                               double length_m)
{
    switch (segment->insulation) {
    case INSULATION_SURROUNDED: surrounded(situation, family, length_m); break;
    case INSULATION_ONE_SIDE: one_side(situation, family, segment, length_m); break;
    case INSULATION_NONE:
    case INSULATION_COUNT: break;
    }
    if (between_studs(segment) && family == FAMILY_FLAT && segment->insulation != INSULATION_ONE_SIDE) {
        situation->method = METHOD_103;
        situation->insulated_mm = 0;
        situation->because = SAY_NOT_KNOWN_TO_TOUCH;
    }
    if (between_studs(segment) && family == FAMILY_ARMOURED && segment->insulation == INSULATION_NONE) {
        surrounded(situation, family, length_m);
        situation->because = way_methods[segment->way].because;
        situation->judgement = SAY_JUDGED_STUD_WALL_AS_ALL_ROUND;
    }
}

/* The table of the family, or why there is none. */
static void table_applies(struct Situation *situation, const struct CableKind *kind, double conductor_degc)
{
    const enum Family family = kind->family;
    situation->table = cable_capacity(kind, conductor_degc);
    if (family == FAMILY_FLAT && situation->method == METHOD_E) {
        situation->method = METHOD_C; /* Table 4D5 has no E column; C is the lower */
        situation->because = SAY_AIR_ALL_ROUND;
        situation->judgement = SAY_JUDGED_FLAT_AS_C;
    }
    if (situation->method == METHOD_B) { /* 4D5 has no B column, and the book's own answer is 4D2A */
        situation->table = cable_capacity_enclosed(kind, conductor_degc);
        situation->judgement = family == FAMILY_ARMOURED ? SAY_JUDGED_ENCLOSED_AS_UNARMOURED : situation->judgement;
    }
    if (capacity_has_method(situation->edition, situation->table, situation->method, 2)) {
        return;
    }
    situation->covered = false;
    situation->lacks = situation->method == METHOD_D ? &not_for_ground : &not_this_way;
}

static struct Situation surroundings(const struct Edition *edition, const struct Segment *segment,
                                     const struct Extent *extent, double conductor_degc)
{
    const bool in_ground = survey_in_ground(segment->way);
    const struct Beside *beside = &segment->beside;
    return (struct Situation){
        .edition = edition,
        .covered = true,
        .conductor_degc = conductor_degc,
        .insulated_here_mm = extent->insulated_m * 1000,
        .way = segment->way,
        .in_ground = in_ground,
        .in_duct = survey_duct(segment->way),
        .ambient_degc = in_ground ? segment->ground_degc.value : segment->air_degc.value,
        .full_sun = segment->sun == SUN_FULL && !in_ground,
        .depth_m = in_ground ? segment->depth_m.value : 0,
        .soil_k_m_per_w = in_ground ? segment->soil_thermal_k_m_per_w.value : 0,
        .beside = segment->has_beside ? beside->circuits : 0,
        .beside_unlike = segment->has_beside && beside->unlike,
        .arrangement = segment->has_beside ? beside->arrangement : ARRANGEMENT_BUNCHED,
        .other_runs = extent->other_runs,
        .own_lie = segment->lie,
        .gap_m = segment->has_beside && beside->gap_m.given ? beside->gap_m.value : 0,
    };
}

struct Situation place_segment(const struct Edition *edition, const struct Segment *segment,
                               const struct CableKind *kind, double conductor_degc, const struct Extent *extent)
{
    const enum Family family = kind->family;
    struct Situation situation = surroundings(edition, segment, extent, conductor_degc);
    situation.method = way_methods[segment->way].method;
    situation.because = way_methods[segment->way].because;
    if (family == FAMILY_ARMOURED && survey_enclosed(segment->way) &&
        !within(design_practice()->thick_wall_m, extent->pipe_m)) {
        situation.method = METHOD_C;
        situation.judgement = SAY_JUDGED_SHORT_GUARD_AS_CLIPPED;
    }
    insulation_applies(&situation, family, segment, extent->surrounded_m);
    table_applies(&situation, kind, conductor_degc);
    return situation;
}

bool place_wall(const struct Edition *edition, const struct Segment *segment, const struct CableKind *kind,
                double conductor_degc, const struct Extent *extent, struct Situation *out)
{
    const enum Family family = kind->family;
    struct Situation situation = surroundings(edition, segment, extent, conductor_degc);
    const bool thick = within(design_practice()->thick_wall_m, extent->wall_m);
    if (!segment->air_degc.given) {
        situation.ambient_degc = extent->warmest_degc;
        situation.air_as = extent->air_as;
    }
    situation.method = METHOD_C;
    if (extent->surrounded_m > 0) {
        surrounded(&situation, family, extent->surrounded_m);
        situation.because = SAY_INSULATION_IN_WALL;
    } else if (thick && segment->wall == WALL_TIMBER && family == FAMILY_ARMOURED) {
        surrounded(&situation, family, extent->wall_m);
        situation.because = SAY_THICK_TIMBER;
        situation.judgement = SAY_JUDGED_STUD_WALL_AS_ALL_ROUND;
        situation.insulated_here_mm = extent->wall_m * 1000;
    } else if (thick && segment->wall == WALL_TIMBER) {
        situation.method = METHOD_A;
        situation.because = SAY_THICK_TIMBER;
        situation.judgement = SAY_JUDGED_TIMBER_AS_A;
    } else if (thick) {
        situation.because = SAY_THICK_MASONRY;
    } else {
        return false;
    }
    table_applies(&situation, kind, conductor_degc);
    *out = situation;
    return true;
}
