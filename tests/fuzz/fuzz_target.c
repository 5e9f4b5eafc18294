/* The entry that libFuzzer calls; the kind of input is chosen when it is built. */
#include "fuzz_input.h"

#include <stdint.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t length);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t length)
{
    fuzz_input(FUZZ_KIND, (const char *)data, length);
    return 0;
}
