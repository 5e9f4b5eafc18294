/* Words that people type, and what they are here. Each says where the thing is written, or which of several it may be;
 * none names one value where the word leaves a choice. Letter case does not matter, nor do "-", "_" and blanks. */
#include "read_private.h"

#include "read.h"

struct Spoken {
    const char *word;
    const char
        *of; /* NULL: wherever it is typed; "far-end": as a word of that key; "device.": as a key of that table */
    const char *means;
};

#define ARMOURED   "is armoured cable: type: BS5467 or BS6724 (90 degC, the second low smoke), or BS6346 (70 degC)"
#define FAULT      "is fault-current: under supply, as read where the runs begin"
#define DATA_CABLE "is a run of its own with kind: data; its cable's type is EN50288"
#define RESIDUAL                                                                                                       \
    "is kind: RCBO with residual: 30 mA under device where it protects the run; one at the outbuilding's own board "   \
    "is "                                                                                                              \
    "board-residual under earthing"
#define WHICH_FUSE "names several, so write kind: gG, BS88-3, BS1361 or BS3036 under device; its carrier says which"
#define CLIPPED    "is way: wall, fence or beam, by what it is fixed to; fixed-to says of what that is made"
#define IN_GROUND  "is way: buried for a cable laid direct, way: duct for one in a duct"
#define LOFT       "is way: loft-void"
#define CHARGING   "is use: charging, of a run"
#define GENERATION "is use: generation, of a run; it is not designed here, so the plan stays open"
#define AIR        "is air, under conditions or of a segment: the warmest there"
#define OWN_EARTH  "is far-end: island under earthing, with its electrode"
#define PAVED      "is under: path where one walks, drive where one drives"
#define COMBINED   "is system: TN-C-S under supply"

static const struct Spoken rows[] = {
    /* the supply */
    {"PME", NULL, COMBINED},
    {"MEN", NULL, COMBINED},
    {"PNB", NULL, "is a form of system: TN-C-S or TN-S: ask the distributor which"},
    {"TN-C", "system",
     "has neutral and earth as one in the building too, and is not planned here; TN-C-S parts them at the origin"},
    {"IT", "system", "has no earthed point, and is not planned here"},
    {"Ze", NULL, "is loop-impedance: under supply, as read where the runs begin"},
    {"Zdb", NULL, "is loop-impedance under supply where the runs begin at that board"},
    {"Zs", NULL, "is worked out: the loop at the far end; wend explain FILE disconnection shows it"},
    {"PSCC", NULL, FAULT},
    {"PFC", NULL, FAULT},
    {"PEFC", NULL, FAULT},
    {"Ipf", NULL, FAULT},
    {"Isc", NULL, FAULT},
    {"Ik", NULL, FAULT},
    {"RA", NULL,
     "is electrode-resistance under supply for the electrode there, measured under earthing: electrode for the "
     "outbuilding's own"},
    {"Uo", NULL, "is voltage: under supply, line to neutral"},
    {"meter", NULL, "is from: meter-tails under the run's start, where the tails are split there"},
    {"DNO", NULL, "is the distributor; which earth it gives is system under supply"},
    /* the outbuilding's earth */
    {"TT", "far-end", "is far-end: island for an outbuilding, with its electrode"},
    {"own electrode", NULL, OWN_EARTH},
    {"own earth", NULL, OWN_EARTH},
    {"isolated", "far-end", OWN_EARTH},
    {"PME", "far-end", "is the supply's earth: far-end: export takes it along, far-end: island does not"},
    {"earth rod", NULL, "is rods, length and diameter under earthing: electrode"},
    {"rod", NULL, "is rods, length and diameter under earthing: electrode"},
    {"bond", NULL, "is worked out; extraneous-parts under earthing says whether one is needed"},
    {"bonding", NULL, "is worked out; extraneous-parts under earthing says whether it is needed"},
    /* cables */
    {"SWA", NULL, ARMOURED},
    {"armoured", NULL, ARMOURED},
    {"XLPE", NULL, "is insulation for 90 degC, armoured in type: BS5467 or BS6724"},
    {"LSF", NULL, "is low smoke, in type: BS6724 armoured, BS7211-multicore without armour"},
    {"LSZH", NULL, "is low smoke, in type: BS6724 armoured, BS7211-multicore without armour"},
    {"T&E", NULL, "is flat twin with protective conductor: type: BS6004-flat"},
    {"TE", "type", "is flat twin with protective conductor: type: BS6004-flat"},
    {"twin and earth", NULL, "is flat twin with protective conductor: type: BS6004-flat"},
    {"cat5", NULL, DATA_CABLE},
    {"cat5e", NULL, DATA_CABLE},
    {"cat6", NULL, DATA_CABLE},
    {"cat6a", NULL, DATA_CABLE},
    {"cat7", NULL, DATA_CABLE},
    {"ethernet", NULL, DATA_CABLE},
    {"data", "type", DATA_CABLE},
    {"CPC", NULL, "is the protective conductor: cpc under cable says whether it is a core, the armour or separate"},
    {"gland", NULL, "is counted from the cable and from where it ends (start and finish of a run)"},
    /* devices */
    {"RCD", NULL, RESIDUAL},
    {"RCCB", NULL, RESIDUAL},
    {"ELCB", NULL, RESIDUAL},
    {"MCCB", NULL, "is a moulded-case circuit-breaker: no figures of any are held, so none can be the device here"},
    {"ACB", NULL, "is an air circuit-breaker: no figures of any are held, so none can be the device here"},
    {"AFDD", NULL, "is not planned here; one that holds an MCB or RCBO is that kind under device"},
    {"fuse", NULL, WHICH_FUSE},
    {"HRC", NULL, WHICH_FUSE},
    {"HBC", NULL, WHICH_FUSE},
    {"rewirable", NULL, "is a semi-enclosed fuse: kind: BS3036 under device"},
    {"type", "device.",
     "is curve: B, C or D for a breaker; residual-type: AC, A, F or B is what residual currents it sees"},
    {"SPD", NULL, "is surge-protection under supply: fitted, planned or declined"},
    {"In", NULL, "is rating: under device"},
    {"Ib", NULL, "is worked out from load"},
    {"Iz", NULL, "is worked out: what the cable carries; wend explain FILE capacity shows it"},
    {"kA", NULL, "is a unit: of fault-current under supply, of breaking-capacity under device"},
    /* loads */
    {"amps", NULL, "is current under load, with its unit: 20 A"},
    {"watts", NULL, "is power under load, with its unit: 4.6 kW"},
    {"kW", NULL, "is a unit: power: 4.6 kW under load"},
    {"PF", NULL, "is power-factor: under load"},
    {"cos phi", NULL, "is power-factor: under load"},
    {"kind", "load.", "is use, a key of the run itself, such as lighting, heating or motor"},
    {"use", "load.", "is use, a key of the run itself, such as lighting, heating or motor"},
    {"EV", NULL, CHARGING},
    {"EVSE", NULL, CHARGING},
    {"car charger", NULL, CHARGING},
    {"PV", NULL, GENERATION},
    {"solar", NULL, GENERATION},
    {"battery", NULL, GENERATION},
    {"generator", NULL, GENERATION},
    {"ASHP", NULL, "is use: heat-pump, of a run"},
    /* the way */
    {"loft", NULL, LOFT},
    {"attic", NULL, LOFT},
    {"roof", NULL, LOFT ", where it goes through the roof void"},
    {"eaves", NULL, LOFT},
    {"trench", "way", IN_GROUND},
    {"underground", NULL, IN_GROUND},
    {"ground", "way", IN_GROUND},
    {"hole", NULL, "is way: through-wall"},
    {"wall hole", NULL, "is way: through-wall"},
    {"solid", "wall", "is wall: brick or stone"},
    {"masonry", "wall", "is wall: brick or stone, cavity where it has one"},
    {"block", "wall", "is wall: brick, cavity where it has one"},
    {"concrete", "under", PAVED},
    {"tarmac", "under", PAVED},
    {"paving", "under", PAVED},
    {"grass", "under", "is under: lawn, or field where it is ploughed or driven over"},
    {"garden", "under", "is under: lawn or bed"},
    {"outbuilding", "place", "is what the run serves (a key of the run itself); place is indoors, outdoors or wet"},
    {"shed", "place", "is what the run serves (a key of the run itself); place is indoors, outdoors or wet"},
    {"clipped", NULL, CLIPPED},
    {"cleated", NULL, CLIPPED},
    {"surface", "way", CLIPPED},
    {"joist", NULL, "is way: beam"},
    {"rafter", NULL, "is way: beam"},
    {"pipe", "way", "is way: duct in the ground, way: conduit on a wall"},
    {"overhead", NULL, "is way: catenary, where the cable hangs from a wire"},
    {"pole", NULL, "is way: catenary, where the cable hangs from a wire"},
    {"basket", NULL, "is wire basket, for which no figures are held; way: tray is perforated tray"},
    {"floor", "way", "is way: under-floor, in the void"},
    {"partition", "way", "is way: stud-wall where it is insulated"},
    {"distance", NULL, "is length of a segment"},
    {"height", NULL, "is rise of a segment, + up and - down; below the surface it is depth"},
    {"ambient", NULL, AIR},
    {"ambient temperature", NULL, AIR},
    {"air temperature", NULL, AIR},
    {"ground temperature", NULL, "is ground, under conditions or of a segment"},
    {"clay", NULL, "is given in figures, as soil-thermal and soil-electrical under conditions"},
    /* the job */
    {"client", NULL, "is customer: under job"},
    {"address", NULL, "is site: under job"},
    {"date", NULL, "is surveyed: under job, as 2026-05-14"},
    {"DB", NULL, "is a board: serves names the one that is fed, from under start says what feeds the run"},
    {"consumer unit", NULL, "is a board: serves names the one that is fed, from under start says what feeds the run"},
};
enum { ROWS = (int)(sizeof rows / sizeof rows[0]) };

static char folded(char c)
{
    return (char)(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
}

static bool is_blank(char c)
{
    return c == ' ' || c == '-' || c == '_';
}

static bool same_spoken(const char *typed, const char *word)
{
    for (;; typed++, word++) {
        while (is_blank(*typed)) {
            typed++;
        }
        while (is_blank(*word)) {
            word++;
        }
        if (folded(*typed) != folded(*word)) {
            return false;
        }
        if (*typed == '\0') {
            return true;
        }
    }
}

/* The row for just this place is better than the one for all. */
const char *spoken_means(const char *typed, const char *of)
{
    const char *means = NULL;
    for (int i = 0; i < ROWS; i++) {
        if (!same_spoken(typed, rows[i].word)) {
            continue;
        }
        if (rows[i].of != NULL && of != NULL && text_same(rows[i].of, of)) {
            return rows[i].means;
        }
        means = rows[i].of == NULL ? rows[i].means : means;
    }
    return means;
}

const char *read_spoken(const char *word)
{
    const char *means = spoken_means(word, NULL);
    for (int i = 0; means == NULL && i < ROWS; i++) {
        means = same_spoken(word, rows[i].word) ? rows[i].means : NULL;
    }
    return means != NULL ? means : "";
}

const char *spoken_word(int index)
{
    return index >= 0 && index < ROWS ? rows[index].word : NULL;
}
