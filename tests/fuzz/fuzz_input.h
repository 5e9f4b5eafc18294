/** What one input of a kind is put through; ends the process by abort() where a promise of the library does not hold.
 */
#ifndef WEND_FUZZ_INPUT_H
#define WEND_FUZZ_INPUT_H

#include <stddef.h>

enum FuzzKind { FUZZ_ROUTES, FUZZ_PRICES, FUZZ_ORDERS, FUZZ_LABOUR, FUZZ_KINDS };

void fuzz_input(enum FuzzKind kind, const char *text, size_t length);

#endif
