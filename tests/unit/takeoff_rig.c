#include "takeoff_rig.h"

#include "said.h"

#include <stdio.h>
#include <string.h>

enum { TEXT_MOST = 16384 };

struct TakeOff takeoff_text(const char *text)
{
    struct TakeOff takeoff = {.wend = wend_plan("made", text, strlen(text)), .arena = arena_new()};
    takeoff.plan = wend_result(takeoff.wend);
    takeoff.parts = wend_parts(takeoff.wend);
    ck_assert_msg(takeoff.plan != NULL && takeoff.parts != NULL, "%s\n%s",
                  wend_diagnostics_printed(wend_diagnostics(takeoff.wend), "made.yaml"), text);
    return takeoff;
}

struct TakeOff takeoff_with(const char *run, const char *segments, const char *top)
{
    char text[TEXT_MOST];
    const int length = snprintf(text, sizeof text,
                                "wend: 1\njob: {title: made}\nsupply: {system: TN-S, loop-impedance: 0.3 ohm}\n%s"
                                "runs:\n  feeder:\n%ssegments:\n%s",
                                top, run, segments);
    ck_assert_int_lt(length, TEXT_MOST);
    return takeoff_text(text);
}

struct TakeOff takeoff_of(const char *segments)
{
    return takeoff_with("    load: {current: 10 A}\n    cable: {type: BS5467, cores: 3, size: 10 mm2}\n", segments, "");
}

void takeoff_free(struct TakeOff *takeoff)
{
    arena_free(takeoff->arena);
    wend_free(takeoff->wend);
}

const struct Part *takeoff_part(const struct TakeOff *takeoff, const char *code)
{
    for (int i = 0; i < takeoff->parts->count; i++) {
        if (strcmp(takeoff->parts->parts[i].code, code) == 0) {
            return &takeoff->parts->parts[i];
        }
    }
    return NULL;
}

double takeoff_needed(const struct TakeOff *takeoff, const char *code)
{
    const struct Part *part = takeoff_part(takeoff, code);
    return part != NULL ? part->needed : 0;
}

const struct PartsWay *takeoff_way(const struct TakeOff *takeoff, const char *segment, int run)
{
    for (int i = 0; i < takeoff->parts->way_count; i++) {
        const struct PartsWay *way = &takeoff->parts->ways[i];
        if (way->run == run && strcmp(takeoff->plan->segments[way->segment].surveyed->name, segment) == 0) {
            return way;
        }
    }
    ck_abort_msg("nothing is said of the work on %s", segment);
    return NULL;
}

bool takeoff_says(const struct PartsWay *way, const char *text)
{
    for (int i = 0; i < way->text_count; i++) {
        if (said_has(way->texts[i].said, text)) {
            return true;
        }
    }
    return false;
}

const char *takeoff_described(const struct TakeOff *takeoff, const struct Part *part)
{
    ck_assert_ptr_nonnull(part);
    return said(takeoff->arena, part->description);
}

const char *takeoff_note(const struct TakeOff *takeoff, const struct Part *part)
{
    ck_assert_ptr_nonnull(part);
    return said(takeoff->arena, part->note);
}

const char *takeoff_uses(const struct TakeOff *takeoff, const char *code)
{
    const struct Part *part = takeoff_part(takeoff, code);
    ck_assert_msg(part != NULL, "%s is not listed", code);
    return said(takeoff->arena, parts_uses_said(takeoff->arena, part->use_count, part->uses));
}

bool takeoff_notes(const struct TakeOff *takeoff, const char *text)
{
    for (int i = 0; i < takeoff->parts->note_count; i++) {
        if (strstr(said(takeoff->arena, takeoff->parts->notes[i]), text) != NULL) {
            return true;
        }
    }
    return false;
}
