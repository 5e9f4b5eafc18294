/** A digest, FNV-1a of 64 bits: a byte at a time, so that it is the same on every machine. */
#ifndef BASE_DIGEST_H
#define BASE_DIGEST_H

#include <stdint.h>

#define DIGEST_BEGIN 14695981039346656037U

/** `sum` with one thing more in it, of up to 64 bits. */
static inline uint64_t digest_one(uint64_t sum, uint64_t more)
{
    return (sum ^ more) * 1099511628211U;
}

/** The same with all eight bytes of a number, one after the other. */
static inline uint64_t digest_number(uint64_t sum, uint64_t number)
{
    for (int shift = 0; shift < 64; shift += 8) {
        sum = digest_one(sum, number >> shift & 0xFFU);
    }
    return sum;
}

#endif
