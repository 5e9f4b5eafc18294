/* The parts list: every counter in picking order, then spares and packs. */
#include "parts_private.h"

#include <math.h>
#include <string.h>

void parts_add(struct Counting *counting, const struct Part *article, double pieces, const char *use)
{
    int at = 0;
    while (at < counting->count && !text_same(counting->parts[at].code, article->code)) {
        at++;
    }
    if (at == counting->count) {
        if (counting->count == counting->room) {
            const int room = counting->room == 0 ? 16 : counting->room * 2;
            struct Part *parts = arena_array(counting->arena, (size_t)room, sizeof *parts);
            struct TextBuilder *uses = arena_array(counting->arena, (size_t)room, sizeof *uses);
            if (parts == NULL || uses == NULL) {
                return;
            }
            if (counting->count > 0) {
                memcpy(parts, counting->parts, (size_t)counting->count * sizeof *parts);
                memcpy(uses, counting->uses, (size_t)counting->count * sizeof *uses);
            }
            counting->parts = parts;
            counting->uses = uses;
            counting->room = room;
        }
        counting->parts[at] = *article;
        counting->uses[at] = text_builder(counting->arena);
        counting->count++;
    }
    counting->parts[at].needed += pieces;
    text_print(&counting->uses[at], "%s%s", counting->uses[at].length > 0 ? "; " : "", use);
}

double parts_diameter_mm(const struct PlanRun *run)
{
    const struct Cable *cable = &run->surveyed->cable;
    struct CableDimensions dimensions;
    if (cable_dimensions(cable->type, cable->cores, run->size_mm2, &dimensions)) {
        return dimensions.overall_mm;
    }
    return cable->diameter_mm.given ? cable->diameter_mm.value : 0;
}

/* Pieces to get: what is needed, the spare on it, whole packs. */
static void round_up(const struct Counting *counting, struct Part *part)
{
    const bool fixing = strncmp(part->code, "fixing-", 7) == 0;
    part->quantity = part->needed;
    if (fixing) {
        const double spare = counting->plan->survey->parts.spare_fixings_percent.value;
        part->quantity = ceil(part->needed * (1 + spare / 100) - 1e-9);
    }
    if (part->pack > 0) {
        part->packs = (int)ceil(part->quantity / part->pack - 1e-9);
    }
}

/* What the ways of this route need and this list does not hold. */
static const char *const way_not_counted[WAY_COUNT] = {
    [WAY_CONDUIT] = "Conduit, its boxes and saddles are not counted in this list.",
    [WAY_TRUNKING] = "Trunking and its fixings are not counted in this list.",
    [WAY_TRAY] = "Tray and its supports are not counted in this list; the fixings of the cable to it are.",
    [WAY_LADDER] = "Ladder and its supports are not counted in this list; the fixings of the cable to it are.",
    [WAY_CATENARY] = "The catenary wire, its ends and hangers are not counted in this list.",
    [WAY_DUCT] = "Draw rope, couplers, seals, sand and warning tape are not counted in this list.",
    [WAY_BURIED] = "Sand, cover tiles and warning tape are not counted in this list.",
    [WAY_THROUGH_WALL] = "Sleeves, seals and fire stopping are not counted in this list.",
};
static const char *const never_counted[] = {
    "Boards, enclosures and protective devices are not counted in this list.",
    "Screws, plugs and anchors are not counted: take what holds in the surface named, one to each fixing.",
};

static void add_notes(struct Arena *arena, const struct Plan *plan, struct PartsList *list)
{
    enum { FIXED = (int)(sizeof never_counted / sizeof never_counted[0]) };
    const char **notes = arena_array(arena, WAY_COUNT + FIXED, sizeof *notes);
    if (notes == NULL) {
        return;
    }
    bool used[WAY_COUNT] = {false};
    for (int i = 0; i < plan->segment_count; i++) {
        used[plan->segments[i].surveyed->way] = true;
    }
    for (int way = 0; way < WAY_COUNT; way++) {
        if (used[way] && way_not_counted[way] != NULL) {
            notes[list->note_count++] = way_not_counted[way];
        }
    }
    for (int i = 0; i < FIXED; i++) {
        notes[list->note_count++] = never_counted[i];
    }
    list->notes = notes;
}

const struct PartsList *parts_count(struct Arena *arena, const struct Plan *plan)
{
    struct Counting counting = {.arena = arena, .plan = plan};
    struct PartsList *list = arena_alloc(arena, sizeof *list);
    if (list == NULL) {
        return NULL;
    }
    for (int r = 0; r < plan->run_count; r++) {
        parts_count_cable(&counting, &plan->runs[r]);
    }
    for (int r = 0; r < plan->run_count; r++) {
        parts_count_glands(&counting, &plan->runs[r]);
    }
    for (int r = 0; r < plan->run_count; r++) {
        parts_count_fixings(&counting, &plan->runs[r]);
    }
    parts_count_ducts(&counting);
    for (int i = 0; i < counting.count; i++) {
        counting.parts[i].use = text_done(&counting.uses[i]);
        round_up(&counting, &counting.parts[i]);
    }
    list->parts = counting.parts;
    list->count = counting.count;
    add_notes(arena, plan, list);
    return arena_failed(arena) ? NULL : list;
}
