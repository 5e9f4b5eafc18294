/* See location_rig.h. */
#include "location_rig.h"

#include <stdio.h>

struct Wend *plan_at(const char *location, const char *run, const char *device, const char *supply, const char *top,
                     const char *segment)
{
    char text[2048];
    char place[64] = "";
    if (location != NULL) {
        snprintf(place, sizeof place, ", location: %s", location);
    }
    const int length =
        snprintf(text, sizeof text,
                 "wend: 1\njob: {title: rig%s}\nsupply: {%s}\n%s\nruns:\n  feeder:\n    %s\n"
                 "    load: {current: 10 A}\n    device: {%s}\n    cable: {type: BS5467, cores: 3}\n"
                 "segments:\n  - {name: a, length: 20 m, %s}\n",
                 place, supply != NULL ? supply : "system: TN-S, loop-impedance: 0.3 ohm", top != NULL ? top : "", run,
                 device != NULL ? device : "kind: MCB, rating: 16 A", segment != NULL ? segment : "way: wall");
    ck_assert_int_lt(length, (int)sizeof text);
    struct Wend *wend = wend_plan("rig", text, (size_t)length);
    ck_assert_msg(wend_result(wend) != NULL, "%s", wend_diagnostics_printed(wend_diagnostics(wend), "rig"));
    return wend;
}
