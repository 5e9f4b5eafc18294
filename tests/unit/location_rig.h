/** A short route whose job names the place that it feeds, for the tests of what places and outbuildings demand. */
#ifndef WEND_LOCATION_RIG_H
#define WEND_LOCATION_RIG_H

#include "fault_rig.h"

#define RESIDUAL(ma, more) "kind: RCBO, rating: 16 A, residual: " #ma " mA" more
#define TN_C_S             "system: TN-C-S, loop-impedance: 0.3 ohm"
#define EXPORT             "earthing: {far-end: export, extraneous-parts: no"
#define ISLAND             "earthing: {far-end: island, electrode: {measured: 40 ohm}, board-residual: 30 mA"

/** 20 m of armoured cable at 10 A behind an MCB of 16 A on TN-S. NULL takes that default; `location` NULL: not said. */
struct Wend *plan_at(const char *location, const char *run, const char *device, const char *supply, const char *top,
                     const char *segment);

#endif
