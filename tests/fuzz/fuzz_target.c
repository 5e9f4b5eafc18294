/* The entry that libFuzzer calls; the kind of input is chosen when it is built. */
#include "fuzz_input.h"

#include <stdint.h>

#ifndef FUZZ_KIND
#define FUZZ_KIND FUZZ_ROUTES
#endif

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t length);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t length)
{
    fuzz_input(FUZZ_KIND, (const char *)data, length);
    return 0;
}
