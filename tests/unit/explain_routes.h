/** Routes whose checks between them use every kind of working. */
#ifndef WEND_TESTS_EXPLAIN_ROUTES_H
#define WEND_TESTS_EXPLAIN_ROUTES_H

struct ExplainRoute {
    const char *name;
    const char *text;
};
enum { EXPLAIN_ROUTES = 12 };
extern const struct ExplainRoute explain_routes[EXPLAIN_ROUTES];

#endif
