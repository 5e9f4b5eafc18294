/* What the check of drawing in says: from which end, how hard, and what helps where it is too hard. */
#include "mechanics_private.h"

#include <math.h>

static const char *force(struct Arena *arena, double newton)
{
    return newton < 10000 ? arena_print(arena, "%s N", number_text(arena, newton, 0))
                          : arena_print(arena, "%s kN", number_text(arena, newton / 1000, 1));
}

static const struct Segment *segment_at(const struct RunDesign *run, int stretch)
{
    return &run->segments[run->run->along[stretch]];
}

static double rise_of(const struct RunDesign *run, const struct PullWork *work)
{
    double rise_m = 0;
    for (int i = 0; i < work->count; i++) {
        rise_m += segment_at(run, work->first + i)->rise_m.value;
    }
    return rise_m;
}

/* Why it takes more from the end that the drum does not go to. */
static const char *why_not(const struct RunDesign *run, const struct PullWork *work, const struct Pull *other,
                           bool from_far)
{
    const double uphill_m = from_far ? rise_of(run, work) : -rise_of(run, work);
    const bool climbs = uphill_m > 0;
    return other->bends_deg > 0 ? climbs ? "it climbs, or its bends come late" : "its bends come late" : "it climbs";
}

const char *word_pull_end(struct Arena *arena, const struct RunDesign *run, const struct PullWork *work)
{
    const struct Pull *other = work->from_far ? &work->forth : &work->back;
    const char *end = work->from_far ? "far" : "supply's";
    if (work->worse) {
        return arena_print(arena, "The drum stands at the %s end as surveyed; from the other one it would take %s.",
                           end, force(arena, other->tension));
    }
    if (work->bound) {
        return arena_print(arena, "The drum stands at the %s end as surveyed; from the other one it takes %s.", end,
                           force(arena, other->tension));
    }
    if (work->either) {
        return "The drum may stand at either end.";
    }
    return arena_print(arena, "Put the drum at the %s end: from the other one it takes %s, since %s that way.", end,
                       force(arena, other->tension), why_not(run, work, other, work->from_far));
}

static const char *stocking(struct Arena *arena, const struct PullLimit *limit)
{
    if (!(limit->armour_n > 0)) {
        return "";
    }
    return arena_print(arena, " (copper %s, stocking %s or, on the armour, %s by another rule: its maker decides)",
                       force(arena, limit->copper_n), force(arena, limit->stocking_n), force(arena, limit->armour_n));
}

/* Bends whose radius nobody surveyed: what they need for the cable not to be crushed. */
static const char *open_bends(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial,
                              const struct PullWork *work)
{
    const struct Pull *pull = pull_taken(work);
    double least_mm = 0;
    if (!(pull->open > 0)) {
        return "";
    }
    bend_least_radius_mm(run->run->cable.type, trial->size_mm2, work->body.overall_mm, &least_mm);
    const double radius_mm = fmax(least_mm, pull->open / work->strength.sidewall * 1000);
    return arena_print(arena, " Bends without a surveyed radius need %s mm to the inside.",
                       number_text(arena, ceil(radius_mm - 1e-9), 0));
}

/* Bends evenly spread over their stretch, as good a guess as any for where to dig a pit. */
bool pull_pit_for(struct Arena *arena, const struct Survey *survey, const struct RunDesign *run,
                  const struct Trial *trial, const struct PullWork *work, double *out_at_m, double *out_tension_n)
{
    int most = 0;
    int count = 0;
    for (int i = 0; i < work->count; i++) {
        most += segment_at(run, work->first + i)->bend_count + 1;
    }
    struct PullPiece *pieces = arena_array(arena, (size_t)most, sizeof *pieces);
    for (int i = 0; pieces != NULL && i < work->count; i++) {
        const struct Segment *segment = segment_at(run, work->first + i);
        struct PullPiece part = pull_piece(survey, run, trial, work->first + i);
        part.length /= segment->bend_count + 1;
        part.rise /= segment->bend_count + 1;
        part.anywhere = false;
        for (int b = 0; b <= segment->bend_count; b++) {
            part.bend_deg = b < segment->bend_count ? segment->bends[b].angle_deg : 0;
            pieces[count++] = part;
        }
    }
    return pieces != NULL && pull_pit(pieces, count, &work->load, &work->strength, out_at_m, out_tension_n);
}

static const char *pit(struct Arena *arena, const struct Survey *survey, const struct RunDesign *run,
                       const struct Trial *trial, const struct PullWork *work)
{
    double at_m = 0;
    double tension_n = 0;
    if (!pull_pit_for(arena, survey, run, trial, work, &at_m, &tension_n)) {
        return " One draw pit is not enough.";
    }
    return arena_print(arena, " A draw pit about %s m from the start of %s would bring it to %s.",
                       number_text(arena, at_m, 0),
                       work->count == 1 && segment_at(run, work->first)->way == WAY_DUCT ? "the duct" : "the pull",
                       force(arena, tension_n));
}

static bool wet_stands(const struct PullWork *work)
{
    return within(pull_strain(&work->wet_pull, &work->strength), 1) &&
           within(work->wet_pull.bends_deg, work->strength.bends_deg);
}

static const char *lubricated(struct Arena *arena, const struct PullWork *work)
{
    if (work->friction_surveyed || work->lubricated) {
        return "";
    }
    return arena_print(arena, " With lubricant (friction %s) it takes %s, which %s.",
                       number_text(arena, work->wet.high, 2), force(arena, work->wet_pull.tension),
                       wet_stands(work) ? "the cable stands" : "is too much in tension or in the bends as well");
}

static const char *with_others(struct Arena *arena, const struct RunDesign *run, const struct PullWork *work)
{
    struct TextBuilder text = text_builder(arena);
    if (work->count > 1) {
        text_print(&text, " as far as %s", segment_at(run, work->first + work->count - 1)->name);
    }
    if (work->other != NULL) {
        text_print(&text, "%s with %s%s", work->count > 1 ? "," : "", work->other->name,
                   work->cables > 2 ? " and others" : "");
    }
    return text_done(&text);
}

void word_pull(struct Arena *arena, const struct Survey *survey, const struct RunDesign *run, const struct Trial *trial,
               const struct PullWork *work, struct Check *out)
{
    const struct Pull *pull = pull_taken(work);
    struct TextBuilder text = text_builder(arena);
    if (!within(pull->bends_deg, work->strength.bends_deg)) {
        text_print(&text, "The bends add up to %s degrees in one pull; %s is the rule of thumb.%s",
                   number_text(arena, pull->bends_deg, 0), number_text(arena, work->strength.bends_deg, 0),
                   pit(arena, survey, run, trial, work));
        out->text = say(arena, SAY_AS_IS, say_name(text_done(&text)));
        return;
    }
    text_print(&text, "Drawn in%s, %s (friction %s%s), it takes %s; it stands %s%s.", with_others(arena, run, work),
               work->lubricated ? "with lubricant" : "dry", number_text(arena, work->load.friction, 2),
               work->friction_surveyed ? " as surveyed" : "", force(arena, pull->tension),
               force(arena, work->strength.tension), stocking(arena, &work->limit));
    if (pull->sidewall > 0) {
        text_print(&text, " In the bends it is pressed with %s/m; %s/m is allowed.", force(arena, pull->sidewall),
                   force(arena, work->strength.sidewall));
    }
    text_add(&text, open_bends(arena, run, trial, work));
    text_print(&text, " %s", word_pull_end(arena, run, work));
    if (out->result == CHECK_FAIL) {
        text_add(&text, lubricated(arena, work));
        text_add(&text, pit(arena, survey, run, trial, work));
    }
    out->text = say(arena, SAY_AS_IS, say_name(text_done(&text)));
}
