/* Routes made up so that each way of working a figure is met: one and three phases, unequal lines, r and x, z,
 * tabulated and calculated factors, every protective conductor, rods, breakers and fuses, motors and charging points.
 */
#include "explain_routes.h"

const struct ExplainRoute explain_routes[EXPLAIN_ROUTES] = {
    {"large-single", "wend: 1\njob: {title: Kiln}\n"
                     "supply: {system: TN-S, loop-impedance: 0.11 ohm, fault-current: 4.2 kA, drop-before: 0.4 %, "
                     "earthing-conductor: 25 mm2}\n"
                     "earthing: {far-end: export, extraneous-parts: yes}\n"
                     "runs:\n  kiln:\n    load:\n      - {power: 11.3 kW, power-factor: 0.83}\n      - {power: 3.7 "
                     "kVA, power-factor: 0.91, diversity: 70 %}\n"
                     "    device: {kind: gG, rating: 80 A}\n    cable: {type: BS5467, cores: 3, cpc: armour}\n"
                     "segments:\n  - {name: yard, way: wall, length: 37.3 m, sun: full, air: 33 degC}\n"
                     "  - {name: field, way: buried, length: 61.7 m, depth: 900 mm, soil-thermal: 3 K.m/W}\n"},
    {"unequal-lines",
     "wend: 1\njob: {title: Mill}\nsupply: {system: TN-C-S, phases: 3, loop-impedance: 0.21 ohm}\n"
     "earthing: {far-end: export, extraneous-parts: yes}\n"
     "runs:\n  mill:\n    load:\n      - {power: 21 kW, power-factor: 0.81}\n      - {current: 13.7 A, power-factor: "
     "0.93, phases: 1}\n"
     "      - {current: 5.3 A, power-factor: 1, phases: 1}\n      - {power: 2.2 kVA, power-factor: 0.7, phases: 1, "
     "diversity: 40 %}\n"
     "    device: {kind: MCB, curve: C, breaking-capacity: 10 kA}\n    third-harmonic: 21 %\n"
     "    cable: {type: BS5467, cores: 5}\n"
     "segments:\n  - {name: tray, way: tray, length: 88.4 m, beside: {circuits: 2, arrangement: single-layer}}\n"},
    {"unequal-large", "wend: 1\njob: {title: Sawmill}\nsupply: {system: TN-S, phases: 3, loop-impedance: 0.07 ohm}\n"
                      "conditions: {terminals: 90 degC}\n"
                      "runs:\n  saws:\n    load:\n      - {current: 88 A, power-factor: 0.71, phases: 1}\n"
                      "      - {current: 61 A, power-factor: 0.97, phases: 1}\n      - {current: 23 A, phases: 1}\n"
                      "    device: {kind: gG, rating: 125 A}\n    cable: {type: BS5467, cores: 5, size: 70 mm2}\n"
                      "segments:\n  - {name: shed, way: ladder, length: 117 m}\n"},
    {"motor-and-lights", "wend: 1\njob: {title: Dairy}\nsupply: {system: TN-S, phases: 3, loop-impedance: 0.09 ohm}\n"
                         "conditions: {terminals: 90 degC}\n"
                         "runs:\n  dairy:\n    load:\n      - {current: 41 A, power-factor: 0.79}\n"
                         "      - {current: 19 A, power-factor: 0.3, phases: 1}\n"
                         "    device: {kind: gG, rating: 63 A}\n    cable: {type: BS5467, cores: 5, size: 16 mm2}\n"
                         "segments:\n  - {name: wall, way: wall, length: 83 m}\n"},
    {"three-phase-large",
     "wend: 1\njob: {title: Press}\nsupply: {system: TN-S, phases: 3, loop-impedance: 0.06 ohm, fault-current: 9.1 "
     "kA}\n"
     "conditions: {terminals: 90 degC}\n"
     "runs:\n  press:\n    load: {power: 58 kW, power-factor: 0.87}\n    device: {kind: gG}\n"
     "    cable: {type: BS5467, cores: 4, cpc: core-and-armour}\n"
     "segments:\n  - {name: duct, way: duct, length: 143 m, duct: {size: 110 mm}, depth: 700 mm}\n"},
    {"earthed-by-rods",
     "wend: 1\njob: {title: Hen house}\nsupply: {system: TN-C-S, loop-impedance: 0.29 ohm, fault-current: 0.5 kA}\n"
     "conditions: {soil-electrical: 170 ohm.m}\n"
     "earthing: {far-end: island, electrode: {rods: 4, length: 1.8 m, diameter: 14.2 mm, spacing: 2.6 m}, "
     "board-residual: 100 mA}\n"
     "runs:\n  hens:\n    load: {current: 9.7 A}\n    device: {kind: RCBO, curve: B, rating: 16 A, residual: 300 mA, "
     "time-delayed: yes, breaking-capacity: 6 kA}\n"
     "    cable: {type: BS5467, cores: 3}\n"
     "segments:\n  - {name: eaves, way: loft-void, length: 7.9 m, air: 41 degC, insulation: surrounded, "
     "insulated-length: 320 mm}\n"
     "  - {name: hole, way: through-wall, length: 0.4 m, wall: insulated-cavity}\n  - {name: run, way: buried, length: "
     "33 m, depth: 450 mm}\n"},
    {"measured-tt",
     "wend: 1\njob: {title: Dairy}\nsupply: {system: TT, electrode-resistance: 37 ohm, fault-current: 0.9 kA}\n"
     "earthing: {far-end: island, electrode: {measured: 83 ohm}, board-residual: 30 mA}\n"
     "runs:\n  dairy:\n    use: motor\n    feeds: equipment\n    load: {power: 2.3 kW, power-factor: 0.77}\n    "
     "start-multiple: 5.7\n"
     "    device: {kind: RCBO, curve: D, rating: 20 A, residual: 100 mA}\n    cable: {type: BS5467, cores: 3, cpc: "
     "armour}\n"
     "segments:\n  - {name: wall, way: wall, length: 41 m}\n"},
    {"charging",
     "wend: 1\njob: {title: Landing stage}\nsupply: {system: TN-S, loop-impedance: 0.31 ohm, fault-current: 2.2 kA}\n"
     "runs:\n  boat:\n    use: charging\n    feeds: equipment\n    load: {current: 31 A, power-factor: 1}\n"
     "    device: {kind: RCBO, curve: B, residual: 30 mA, residual-type: B, breaking-capacity: 6 kA}\n"
     "    cable: {type: BS6004-flat, cores: 3, cpc: core}\n"
     "segments:\n  - {name: joists, way: beam, length: 13.6 m}\n"},
    {"separate-conductor",
     "wend: 1\njob: {title: Store}\nsupply: {system: TN-S, loop-impedance: 0.33 ohm, fault-current: 6.5 kA}\n"
     "earthing: {far-end: export, extraneous-parts: yes}\n"
     "runs:\n  store:\n    load: {power: 5.1 kW, power-factor: 0.95}\n    device: {kind: BS88-3, rating: 32 A}\n"
     "    cable: {type: BS5467, cores: 2, cpc: separate, cpc-run: strap}\n"
     "  strap:\n    kind: earth\n    cable: {type: BS6004-single, size: 6 mm2}\n"
     "segments:\n  - {name: wall, way: wall, length: 17 m}\n"},
    {"harmonics",
     "wend: 1\njob: {title: Lamps}\nsupply: {system: TN-S, phases: 3, loop-impedance: 0.2 ohm}\n"
     "runs:\n  lamps:\n    use: lighting\n    load: {power: 9 kW, power-factor: 0.9}\n    third-harmonic: 47 %\n"
     "    device: {kind: MCB, curve: B}\n    cable: {type: BS6346, cores: 4, cpc: armour}\n"
     "segments:\n  - {name: ladder, way: ladder, length: 29 m}\n"},
    {"fused-and-fails",
     "wend: 1\njob: {title: Pottery}\nsupply: {system: TN-S, loop-impedance: 0.8 ohm, fault-current: 12 kA}\n"
     "runs:\n  wheel:\n    load: {current: 27 A}\n    device: {kind: MCB, curve: C, rating: 25 A, breaking-capacity: 6 "
     "kA}\n"
     "    cable: {type: BS6004-multicore, cores: 3, size: 2.5 mm2, diameter: 12 mm}\n"
     "segments:\n  - {name: trunking, way: trunking, length: 55 m, size: 50 x 50 mm}\n"},
    {"largest",
     "wend: 1\njob: {title: Foundry}\nsupply: {system: TN-S, loop-impedance: 0.05 ohm, fault-current: 8.8 kA}\n"
     "runs:\n  foundry:\n    load: {current: 140 A, power-factor: 0.88}\n    device: {kind: gG, rating: 160 A}\n"
     "    cable: {type: BS5467, cores: 3, size: 300 mm2}\n"
     "segments:\n  - {name: wall, way: wall, length: 210 m}\n"},
};
