/* Promises that hold of any bytes, through the public library alone: it ends; what is refused has an error that says
 * so; what is planned has every document; PASS is never said of a plan with a check that fails or is open; the same
 * bytes give the same verdict and the same documents. */
#include "fuzz_input.h"

#include "wend/wend.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char route[] = "wend: 1\n"
                            "job: {title: Shed}\n"
                            "supply: {system: TN-S, loop-impedance: 0.35 ohm}\n"
                            "runs:\n"
                            "  feeder: {load: {current: 26 A}, cable: {type: BS5467, cores: 3}}\n"
                            "segments:\n"
                            "  - {name: gable, way: wall, length: 6.5 m, rise: 2.5 m}\n"
                            "  - {name: track, way: duct, length: 24 m, duct: {size: 63 mm}, depth: 600 mm}\n"
                            "parts: {prices: prices.csv}\n";

static void due(bool holds, const char *what)
{
    if (!holds) {
        fprintf(stderr, "does not hold: %s\n", what);
        abort();
    }
}

static bool has_error(const struct WendDiagnostics *diagnostics)
{
    for (size_t i = 0; i < wend_diagnostics_count(diagnostics); i++) {
        if (wend_diagnostic_severity(diagnostics, i) == WEND_ERROR) {
            return wend_diagnostic_text(diagnostics, i)[0] != '\0';
        }
    }
    return false;
}

static void look_at_verdict(struct Wend *wend)
{
    const enum WendStatus status = wend_status(wend);
    const enum WendVerdict verdict = wend_verdict(wend);
    const bool planned = status == WEND_PASSES || status == WEND_CHECK_FAILS;
    due(status != WEND_NO_MEMORY, "memory is enough");
    due(planned || has_error(wend_diagnostics(wend)), "what is refused has an error");
    due(!planned || !has_error(wend_diagnostics(wend)), "what has an error is refused");
    due((verdict == WEND_FAIL) == (status != WEND_PASSES), "a plan fails when a check fails, and no plan is a failure");
    due(verdict != WEND_PASS || wend_open_count(wend) == 0, "PASS leaves nothing open");
    due(verdict != WEND_OPEN || wend_open_count(wend) > 0, "OPEN says what is open");
}

static void look_at_documents(struct Wend *one, struct Wend *other)
{
    const bool planned = wend_status(one) == WEND_PASSES || wend_status(one) == WEND_CHECK_FAILS;
    for (int i = 0; i < WEND_DOCUMENT_COUNT; i++) {
        const struct WendBytes bytes = wend_document(one, (enum WendDocument)i);
        due((bytes.data != NULL) == wend_has_document(one, (enum WendDocument)i) && (planned || bytes.data == NULL),
            "a plan has every document that is due, and nothing else has any");
        const struct WendBytes again = wend_document(other, (enum WendDocument)i);
        due(bytes.length == again.length &&
                (bytes.data == NULL || again.data == NULL || memcmp(bytes.data, again.data, bytes.length) == 0),
            "the same bytes give the same documents");
    }
}

static void try_route(const char *text, size_t length)
{
    struct Wend *one = wend_plan("fuzz", text, length);
    struct Wend *other = wend_plan("fuzz", text, length);
    due(one != NULL && other != NULL, "memory is enough");
    look_at_verdict(one);
    look_at_documents(one, other);
    wend_diagnostics_printed(wend_diagnostics(one), "fuzz.yaml");
    wend_free(one);
    wend_free(other);
}

static void try_prices(const char *text, size_t length)
{
    struct Wend *wend = wend_plan("fuzz", route, strlen(route));
    due(wend != NULL && strcmp(wend_prices_name(wend), "prices.csv") == 0, "the route names its price list");
    const enum WendVerdict verdict = wend_verdict(wend);
    const enum WendStatus status = wend_price(wend, text, length);
    due(status != WEND_NO_MEMORY, "memory is enough");
    due(status != WEND_INPUT_WRONG || has_error(wend_prices_diagnostics(wend)), "what is refused has an error");
    due(wend_verdict(wend) == verdict || status == WEND_INPUT_WRONG, "prices change no verdict");
    if (status != WEND_INPUT_WRONG) {
        due(wend_document(wend, WEND_PARTS_CSV).data != NULL, "a priced plan has its parts");
        due(wend_document(wend, WEND_PARTS_HTML).data != NULL, "a priced plan has its papers");
    }
    wend_free(wend);
}

static void try_order(const char *text, size_t length)
{
    struct Wend *wend = wend_plan("fuzz", route, strlen(route));
    struct WendOrder *order = wend_order(&wend, 1, text, length, "2026-05-14");
    due(order != NULL, "memory is enough");
    const enum WendStatus status = wend_order_status(order);
    due(status != WEND_NO_MEMORY, "memory is enough");
    due(status != WEND_INPUT_WRONG || has_error(wend_order_diagnostics(order)), "what is refused has an error");
    due(status != WEND_PASSES || wend_order_verdict(order) != WEND_FAIL, "an order of a plan that fails says so");
    for (int i = 0; i < WEND_ORDER_DOCUMENT_COUNT && status != WEND_INPUT_WRONG; i++) {
        due(wend_order_document(order, (enum WendOrderDocument)i).data != NULL, "an order has every document");
    }
    wend_order_free(order);
    wend_free(wend);
}

static void try_labour(const char *text, size_t length)
{
    static const struct WendDay day = {.hands = 0, .seed = 1, .date = "2026-05-14"};
    struct Wend *wend = wend_plan("fuzz", route, strlen(route));
    const enum WendVerdict verdict = wend_verdict(wend);
    const enum WendStatus status = wend_labour(wend, text, length);
    due(status != WEND_NO_MEMORY, "memory is enough");
    due(status != WEND_INPUT_WRONG || has_error(wend_labour_diagnostics(wend)), "what is refused has an error");
    due(wend_verdict(wend) == verdict || status == WEND_INPUT_WRONG, "labour figures change no verdict");
    for (int form = WEND_DAY_TEXT; form <= WEND_DAY_ICALENDAR; form++) {
        const struct WendBytes bytes = wend_day(wend, &day, (enum WendDayForm)form);
        due(status != WEND_INPUT_WRONG || bytes.data == NULL, "figures that are wrong give no day");
    }
    due((wend_quotation(wend).data != NULL) == wend_quotes(wend), "rates give a quotation, and nothing else does");
    due(!wend_quotes(wend) || status != WEND_INPUT_WRONG, "figures that are wrong give no quotation");
    due(status == WEND_INPUT_WRONG || wend_document(wend, WEND_BRIEF_HTML).data != NULL, "the plan has its papers");
    wend_free(wend);
}

void fuzz_input(enum FuzzKind kind, const char *text, size_t length)
{
    switch (kind) {
    case FUZZ_ROUTES: try_route(text, length); break;
    case FUZZ_PRICES: try_prices(text, length); break;
    case FUZZ_ORDERS: try_order(text, length); break;
    case FUZZ_LABOUR: try_labour(text, length); break;
    case FUZZ_KINDS: break;
    }
}
