/** Route files drawn by lot over the keys of the language, the same on every machine. */
#ifndef WEND_NET_MADE_H
#define WEND_NET_MADE_H

#include <stddef.h>
#include <stdint.h>

enum { NET_MADE_MOST = 16384 };

/** The route of a number, as a surveyor might write it; its length. Few of them are refused. */
size_t net_made(uint32_t number, char text[NET_MADE_MOST]);

#endif
