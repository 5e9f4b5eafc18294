/** What the two files of fixtures share: a scene is a way with its runs, from which a plan is built. */
#ifndef FIXTURE_SCENE_H
#define FIXTURE_SCENE_H

#include "plan_fixture.h"

/* One stretch of a made-up way. */
struct Stretch {
    const char *name;
    enum Way way;
    double length_m, rise_m, depth_m;
    enum Insulation insulation;
    int beside;
    enum Sun sun;
};

/* A run over stretches first..last. */
struct Course {
    const char *name, *serves;
    enum RunKind kind;
    int first, last;
    bool fails;
};

struct Scene {
    const char *title;
    int stretch_count;
    const struct Stretch *stretches;
    int course_count;
    const struct Course *courses;
    int lines;
};

/** NULL when memory fails. */
struct Plan *fixture_build(struct Arena *arena, const struct Scene *scene);
/** Gives the list a cutting plan and prices; false when memory fails. */
bool fixture_money(struct Arena *arena, struct PartsList *list, bool hostile);
/** Adds what a thorough survey holds, by lot. */
void fixture_enrich(struct Arena *arena, struct Plan *plan, unsigned seed);
/** The scenes made by hand; NULL for the kinds that are drawn by lot or hostile. */
const struct Scene *fixture_scene(enum FixtureKind kind);

#endif
