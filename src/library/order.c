/* Many planned routes as one order: the order file read, the lists merged, the documents made. */
#include "library_private.h"

#include "read/read.h"

#include <stdlib.h>
#include <string.h>

bool wend_is_date(const char *text)
{
    return text != NULL && read_is_date(text);
}

static struct OrderJob job_of(const struct Wend *route)
{
    const struct Plan *plan = route->plan;
    const struct Job *job = &plan->survey->job;
    return (struct OrderJob){.name = plan->route,
                             .title = job->title,
                             .site = job->site,
                             .reference = job->reference,
                             .verdict = plan->verdict,
                             .pass = plan->pass,
                             .verdict_text = plan_verdict_said(plan),
                             .parts = route->parts,
                             .prices = route->prices};
}

static const struct OrderList *merge(struct WendOrder *order, const struct OrderPrices *prices)
{
    struct OrderJob *jobs = arena_array(order->arena, (size_t)order->route_count, sizeof *jobs);
    for (int i = 0; jobs != NULL && i < order->route_count; i++) {
        if (wend_status(order->routes[i]) > WEND_CHECK_FAILS || order->routes[i]->parts == NULL) {
            return NULL;
        }
        jobs[i] = job_of(order->routes[i]);
    }
    return jobs != NULL ? order_merge(order->arena, jobs, order->route_count, prices) : NULL;
}

/* Until the price list is handed in the order says that it was not. */
static const struct OrderList *merge_unpriced(struct WendOrder *order)
{
    const char *name = wend_order_prices_name(order);
    struct OrderPrices prices = {.list = NULL, .note = NULL};
    if (*name != '\0') {
        prices.note = say(order->arena, SAY_ORDER_PRICES_NOT_READ, say_name(name));
    }
    return merge(order, &prices);
}

/* A date that is none is not left to the documents, which print it as it is. */
static void read_and_merge(struct WendOrder *order, bool has_file)
{
    if (*order->date != '\0' && !read_is_date(order->date)) {
        diag_report(order->told.diag, MSG_DATE_WRONG, (struct Mark){0, 0}, 0, DIAG_WORDS("date", order->date));
        return;
    }
    if (has_file) {
        order->order = read_order(order->arena, order->told.diag, order->told.source, order->date);
    }
    if (order->route_count > 0 && (!has_file || order->order != NULL)) {
        order->list = merge_unpriced(order);
    }
}

struct WendOrder *wend_order(struct Wend *const *routes, int count, const char *text, size_t length, const char *date)
{
    struct WendOrder *made = calloc(1, sizeof *made);
    if (made == NULL) {
        return NULL;
    }
    made->arena = arena_new();
    if (made->arena == NULL) {
        free(made);
        return NULL;
    }
    const char *day = library_text(date);
    made->routes = routes;
    made->route_count = routes == NULL || count < 0 ? 0 : count;
    made->date = arena_text(made->arena, day, strlen(day));
    made->told = diagnostics_new(made->arena, library_copy(made->arena, text, length));
    if (!arena_failed(made->arena)) {
        read_and_merge(made, text != NULL);
    }
    return made;
}

void wend_order_free(struct WendOrder *order)
{
    if (order != NULL) {
        arena_free(order->arena);
        free(order);
    }
}

enum WendStatus wend_order_status(const struct WendOrder *order)
{
    if (order == NULL || arena_failed(order->arena)) {
        return WEND_NO_MEMORY;
    }
    if (order->list == NULL) {
        return WEND_INPUT_WRONG;
    }
    return order->list->pass ? WEND_PASSES : WEND_CHECK_FAILS;
}

const struct WendDiagnostics *wend_order_diagnostics(const struct WendOrder *order)
{
    return order == NULL ? NULL : diagnostics_shown(&order->told);
}

const char *wend_order_prices_name(const struct WendOrder *order)
{
    return order == NULL || order->order == NULL ? "" : order->order->prices;
}

enum WendStatus wend_order_price(struct WendOrder *order, const char *text, size_t length)
{
    if (wend_order_status(order) > WEND_CHECK_FAILS) {
        return wend_order_status(order);
    }
    order->prices_told = diagnostics_new(order->arena, library_copy(order->arena, text, length));
    const struct WendDiagnostics *told = &order->prices_told;
    const struct PriceList *prices =
        arena_failed(order->arena) ? NULL : read_prices(order->arena, told->diag, told->source);
    order->list = prices != NULL ? merge(order, &(struct OrderPrices){.list = prices, .note = NULL}) : NULL;
    return wend_order_status(order);
}

const struct WendDiagnostics *wend_order_prices_diagnostics(const struct WendOrder *order)
{
    return order == NULL ? NULL : diagnostics_shown(&order->prices_told);
}

static bool fits_file_name(char letter)
{
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9') ||
           letter == '.' || letter == '_' || letter == '-';
}

/* A digest of the reference where it has letters that no file name takes over; else 0. */
static unsigned letters_beyond_ascii(const char *reference)
{
    unsigned digest = 2166136261u; /* FNV-1a, 32 bits */
    bool any = false;
    for (const char *at = reference; *at != '\0'; at++) {
        digest = (digest ^ (unsigned char)*at) * 16777619u;
        any = any || (unsigned char)*at > 0x7F;
    }
    return any ? digest | 1u : 0;
}

const char *wend_order_name(const struct WendOrder *order)
{
    if (order == NULL) {
        return "";
    }
    if (order->order == NULL) {
        return "order";
    }
    const unsigned others = letters_beyond_ascii(order->order->reference);
    struct TextBuilder name = text_builder(order->arena);
    for (const char *at = order->order->reference; *at != '\0'; at++) {
        if (fits_file_name(*at)) {
            const bool leads = name.length == 0 && (*at == '.' || *at == '-'); /* a hidden file, an option */
            text_add_bytes(&name, leads ? "_" : at, 1);
        } else if (name.length > 0 && !name.failed && name.data[name.length - 1] != '-') {
            text_add_char(&name, '-'); /* one for all of a row of them */
        }
    }
    if (others != 0) { /* two that differ in such letters alone are two orders */
        text_print(&name, "%s%08x", name.length == 0 || name.data[name.length - 1] == '-' ? "" : "-", others);
    }
    text_add(&name, name.length > 0 ? ".order" : "order");
    return text_done(&name);
}

/* Parties that nobody named, so that the lines at least can be read by a machine. */
static struct Order nameless(const char *date)
{
    static const struct OrderParty nobody = {"", "", "", "", "", "", "", "", ""};
    return (struct Order){.reference = "order",
                          .date = date,
                          .delivery_date = "",
                          .currency = "",
                          .prices = "",
                          .note = "",
                          .buyer = nobody,
                          .seller = nobody,
                          .delivery = nobody};
}

static struct Bytes make(struct WendOrder *order, enum WendOrderDocument document)
{
    const struct Order plain = nameless(order->date);
    const struct Order *details = order->order != NULL ? order->order : &plain;
    switch (document) {
    case WEND_ORDER_CSV: return document_order_csv(order->arena, order->order, order->list);
    case WEND_ORDER_XML:
        if (*details->date != '\0' && order->list->count > 0) {
            return document_order_ubl(order->arena, details, order->list);
        }
        break;
    case WEND_ORDER_JSON: return document_order_json(order->arena, order->order, order->list);
    case WEND_ORDER_DOCUMENT_COUNT: break;
    }
    return (struct Bytes){NULL, 0};
}

struct WendBytes wend_order_document(struct WendOrder *order, enum WendOrderDocument document)
{
    struct Bytes bytes = {NULL, 0};
    if (wend_order_lines(order) != NULL && documents_memory_begin()) {
        bytes = make(order, document);
        bytes = documents_memory_end() ? bytes : (struct Bytes){NULL, 0};
    }
    return library_bytes(bytes);
}
