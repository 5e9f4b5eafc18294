/** Everything of the tables that goes with a kind of cable: the rows of survey/cable_kinds.inc. */
#ifndef WEND_CABLE_KINDS_H
#define WEND_CABLE_KINDS_H

#include "mechanics_tables.h"
#include "survey/survey.h"
#include "tables.h"

/** By which rules a cable is placed where no table speaks of it. */
enum Family { FAMILY_ARMOURED, FAMILY_MULTICORE, FAMILY_FLAT, FAMILY_NONE };
/** Whose dimensions and armour are held. */
enum CableFigures { FIGURES_NONE, FIGURES_BS5467 };
/** How its least bend radius is found. */
enum BendRule { BEND_NONE, BEND_PLAIN, BEND_ARMOURED, BEND_DATA };

struct CableKind {
    enum Family family; /**< FAMILY_NONE: no table rates it */
    double insulation_degc;
    enum CapacityTable at_70, at_90;                   /**< CAPACITY_NONE: none */
    enum CapacityTable enclosed_at_70, enclosed_at_90; /**< in conduit, trunking or a void */
    enum DropTable drop;
    enum CableFigures figures;
    enum BendRule bend;
    enum PullSheath sheath;
    const char *standard; /**< "BS 5467" */
};
/** The row of a kind; the row of a kind that nothing is held of when out of range. */
const struct CableKind *cable_kind(enum CableType type);
/** The capacity table for a conductor temperature, 70 or 90 degC. */
enum CapacityTable cable_capacity(const struct CableKind *kind, double conductor_degc);
enum CapacityTable cable_capacity_enclosed(const struct CableKind *kind, double conductor_degc);

#endif
