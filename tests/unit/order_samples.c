/* order_samples FOLDER COUNT: writes made-up orders as UBL into a folder, for the published schema to look at: lists
 * drawn by lot, parties with any of their fields left out, and every text hostile in some. */
#include "order_rig.h"
#include "said.h"

#include "documents/documents.h"

#include <stdio.h>
#include <stdlib.h>

/* Texts that a schema or a parser might stumble over. */
static const char *const texts[] = {
    "Mill Lane 4",
    "a & b < c > d \" e ' f ]]> g",
    "</cbc:ID><x/>",
    "&amp;&#0;&lol;",
    "<!ENTITY x SYSTEM \"file:///dev/null\">",
    "\xF0\x9F\x94\xA5 \xE6\xBC\xA2\xC3\xA9",
    " blanks  around ",
    "=1+1",
};
enum { TEXTS = (int)(sizeof texts / sizeof texts[0]) };

/* A text of them, or none. */
static const char *some(unsigned *state)
{
    return order_draw(state, 3) == 0 ? "" : texts[order_draw(state, TEXTS)];
}

static struct OrderParty random_party(unsigned *state, bool named)
{
    static const char *const countries[] = {"", "GB", "IE", "ZW"};
    return (struct OrderParty){.name = named ? texts[order_draw(state, TEXTS)] : some(state),
                               .street = some(state),
                               .town = some(state),
                               .postcode = some(state),
                               .country = countries[order_draw(state, 4)],
                               .contact = some(state),
                               .phone = some(state),
                               .email = some(state),
                               .account = some(state)};
}

static struct Order random_order(unsigned *state)
{
    static const char *const days[] = {"", "2026-05-20", "2028-02-29", "9999-12-31"};
    static const char *const currencies[] = {"", "GBP", "EUR"};
    return (struct Order){.reference = texts[order_draw(state, TEXTS)],
                          .date = "2026-05-14",
                          .delivery_date = days[order_draw(state, 4)],
                          .currency = currencies[order_draw(state, 3)],
                          .note = some(state),
                          .buyer = random_party(state, true),
                          .seller = random_party(state, true),
                          .has_delivery = order_draw(state, 2) == 0,
                          .delivery = random_party(state, false)};
}

static bool write_sample(const char *folder, int number)
{
    struct Arena *arena = arena_new();
    unsigned state = (unsigned)number * 2654435761U + 3U;
    const int count = 1 + (int)order_draw(&state, 6);
    struct OrderJob *jobs = order_random_jobs(arena, count, (unsigned)number);
    for (int i = 0; i < count; i++) {
        jobs[i].name = texts[order_draw(&state, TEXTS)];
        jobs[i].title = some(&state);
        jobs[i].site = some(&state);
        jobs[i].reference = some(&state);
        jobs[i].verdict_text = as_is(arena, texts[order_draw(&state, TEXTS)]);
    }
    const struct Order order = random_order(&state);
    /* a third without prices, a third with some, a third with all */
    const bool whole = number % 3 == 2;
    const char *currency = whole && *order.currency != '\0' ? order.currency : "EUR";
    const char *note = some(&state);
    const struct OrderPrices prices = {number % 3 > 0 ? order_random_prices(arena, &state, jobs, count, currency, whole)
                                                      : NULL,
                                       *note == '\0' ? NULL : as_is(arena, note)};
    const struct Bytes bytes = document_order_ubl(arena, &order, order_merge(arena, jobs, count, &prices));
    FILE *file = fopen(arena_print(arena, "%s/%03d.xml", folder, number), "wb");
    bool done = file != NULL && bytes.data != NULL && fwrite(bytes.data, 1, bytes.length, file) == bytes.length;
    done = file != NULL && fclose(file) == 0 && done;
    arena_free(arena);
    return done;
}

int main(int argc, char *argv[])
{
    const int count = argc == 3 ? atoi(argv[2]) : 0;
    for (int i = 0; i < count; i++) {
        if (!write_sample(argv[1], i)) {
            fprintf(stderr, "order %d could not be written\n", i);
            return EXIT_FAILURE;
        }
    }
    return count > 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
