/** A way through ducts and round bends for one check, made in numbers. Every function fails the running test when it
 * cannot do what is asked. */
#ifndef WEND_MECHANICS_RIG_H
#define WEND_MECHANICS_RIG_H

#include "design/mechanics/mechanics_private.h"

#include <check.h>

enum { RIG_RUNS = 6, RIG_SEGMENTS = 4, RIG_BENDS = 8, RIG_CHECKS = 3 * RIG_SEGMENTS };

/** Change what the test is about, then ask. Must not be copied: parts point at it. */
struct MechanicsRig {
    struct Arena *arena;
    struct Survey survey;
    struct Run runs[RIG_RUNS];
    struct Segment segments[RIG_SEGMENTS];
    struct Bend bends[RIG_SEGMENTS][RIG_BENDS];
    int along[RIG_SEGMENTS];
    struct RunDesign design;
    struct Check checks[RIG_CHECKS];
    int count;
};
/** "feeder", 3-core BS 5467, size to be chosen, through "path": 20 m of new 63 mm duct, level, without bends. */
void mechanics_make(struct MechanicsRig *rig);
void mechanics_free(struct MechanicsRig *rig);
/** A length, or any quantity, as surveyed. */
struct Quantity surveyed(double value);
/** One run more that follows every segment; the cable is what it is about. */
struct Run *mechanics_add_run(struct MechanicsRig *rig, const char *name, enum RunKind kind, enum CableType type,
                              int cores);
/** One segment more, which every run follows; a duct is new and 63 mm. */
struct Segment *mechanics_add_segment(struct MechanicsRig *rig, const char *name, enum Way way, double length_m);
/** One bend more of a segment; a radius of 0 is not surveyed. */
void mechanics_bend(struct MechanicsRig *rig, int segment, double angle_deg, double radius_m);
/** Makes the checks with and without texts, which must agree; follows the working with a calculator; gives the one with
 * this id ("pull:path"). Its texts live as long as the rig. */
struct Check mechanics_check(struct MechanicsRig *rig, double size_mm2, const char *id);
void mechanics_passes(struct MechanicsRig *rig, double size_mm2, const char *id);
void mechanics_fails(struct MechanicsRig *rig, double size_mm2, const char *id);
/** Not made for want of something, which the text names. */
void mechanics_unknown(struct MechanicsRig *rig, double size_mm2, const char *id, const char *names);
void text_has(const char *text, const char *part);

Suite *suite_mechanics_tables(void);
Suite *suite_mechanics_cases(void);
Suite *suite_mechanics_worked(void);
Suite *suite_mechanics_bends(void);
Suite *suite_mechanics_ducts(void);
Suite *suite_mechanics_pulls(void);

#endif
