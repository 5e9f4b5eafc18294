/** One point of the sweep over everything a route can be: its text, its plan, and what must hold of any plan. */
#ifndef WEND_SWEEP_CASE_H
#define WEND_SWEEP_CASE_H

#include "library/library_stages.h"
#include "wend/wend.h"

#include <check.h>

/** A cable with its cores, protective conductor and number of lines. */
struct SweepCable {
    enum CableType type;
    int cores;
    enum Cpc cpc;
    int phases;
};
/** A device of standard rating. */
struct SweepDevice {
    enum DeviceKind kind;
    enum Curve curve;
    int rating_a;
};
struct SweepCase {
    struct SweepCable cable;
    double size_mm2; /**< 0: choose */
    struct SweepDevice device;
    int residual_ma; /**< 0: none; else the device must be an RCBO */
    bool time_delayed;
    const char *residual_type; /**< NULL: not told */
    int breaking_a;            /**< 0: not told */
    enum System system;
    int before_mohm; /**< loop before the run, on TT the electrode; 0: not told (TT only) */
    int fault_a;     /**< 0: not told */
    bool island, extraneous;
    int board_residual_ma; /**< 0: none */
    int electrode_ohm;     /**< measured, for an island */
    enum Feeds feeds;
    enum Use use;
    int load_ma;
    int length_mm;
};
/** An ordinary one: 3-core BS 5467, choose, MCB B 32 A, TN-S 0.35 ohm, board, 20 m, 5 A. */
struct SweepCase sweep_ordinary(void);

/** The cables of the sweep, all of them that a table rates. */
int sweep_cables(const struct SweepCable **out);
/** Every standard device: kinds, curves and ratings; ratings rise within one kind and curve. */
int sweep_devices(const struct SweepDevice **out);
/** The sizes that the table of a cable rates. */
int sweep_sizes(const struct SweepCable *cable, const double **out);

enum { SWEEP_OPTIONS_MOST = 20 };
/** What the relations between plans look at. */
struct SweepFacts {
    bool planned, pass;
    double size_mm2, capacity_a, drop_percent;
    enum CheckResult disconnection;
    struct Readings readings;
    int option_count;
    struct {
        double size_mm2, capacity_a, drop_percent, zs_ohm;
        bool pass;
    } options[SWEEP_OPTIONS_MOST];
};
/** Plans made, and how many of them passed, failed a check, or were refused with an error. */
struct SweepCounts {
    long passed, failed, refused;
};
/** Plans the point and holds the plan against everything that must hold of any; the facts are copies. */
struct SweepFacts sweep_plan(struct SweepCounts *counts, const struct SweepCase *point);
/** Fails the running test, with the point's route, when `holds` is false. */
void sweep_hold(bool holds, const struct SweepCase *point, const char *what);

enum { SWEEP_TEXT_MOST = 2048 };
/** The point as a surveyor would write it. */
int sweep_write(const struct SweepCase *point, char text[SWEEP_TEXT_MOST]);
/** The invariants of one plan (sweep_holds.c). */
void sweep_holds(const struct SweepCase *point, struct Wend *wend);

#endif
