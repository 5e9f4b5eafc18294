/* Lists of several jobs as one: what is the same article becomes one line, packs are rounded up over all jobs, and each
 * line remembers what it is for. */
#include "order_private.h"

#include <math.h>
#include <string.h>

enum { LINES_AT_FIRST = 64 }; /* a power of two, as all that follow are */

int order_pieces_of(const struct Part *part)
{
    if (!(part->length_m > 0)) {
        return 0;
    }
    const double pieces = round(part->quantity / part->length_m);
    return pieces < 1 ? 1 : pieces > 1e6 ? 1000000 : (int)pieces;
}

/* All that the counter picks by. Codes alone would not do: where a cable's size is not known they hold a run's name. */
static bool is_article(const struct OrderLine *line, const struct Part *part)
{
    return line->aisle == part->aisle && text_same(line->code, parts_article(part)) &&
           say_same(line->description, part->description) && text_same(line->standard, part->standard) &&
           text_same(line->unit, part->unit) && line->pack == part->pack &&
           text_same(line->pack_word, part->pack_word != NULL ? part->pack_word : "") &&
           (line->piece_count > 0) == (order_pieces_of(part) > 0);
}

static int source_count(const struct OrderJob *jobs, int count)
{
    int sources = 0;
    for (int j = 0; j < count; j++) {
        sources += jobs[j].parts->count;
    }
    return sources;
}

/* Every part of every job, aisle by aisle, within an aisle in the order of the jobs and their lists. */
static void gather(const struct OrderJob *jobs, int count, struct OrderSource *sources)
{
    int at = 0;
    for (int aisle = 0; aisle < AISLE_COUNT; aisle++) {
        for (int j = 0; j < count; j++) {
            for (int i = 0; i < jobs[j].parts->count; i++) {
                if ((int)jobs[j].parts->parts[i].aisle == aisle) {
                    sources[at++] = (struct OrderSource){.part = &jobs[j].parts->parts[i], .job = j};
                }
            }
        }
    }
}

static bool new_line(struct Arena *arena, struct OrderLine *line, const struct Part *part, int job_count)
{
    *line = (struct OrderLine){
        .aisle = part->aisle,
        .code = parts_article(part),
        .description = part->description,
        .standard = part->standard,
        .unit = part->unit,
        .pack = part->pack,
        .pack_word = part->pack_word != NULL ? part->pack_word : "",
        .by_job = arena_array(arena, (size_t)job_count, sizeof *line->by_job),
    };
    return line->by_job != NULL;
}

/* Room for one more: a thousand jobs have few articles. NULL without memory. */
static struct OrderLine *with_room(struct Arena *arena, struct OrderLine *lines, int made)
{
    const bool full = made == 0 || (made >= LINES_AT_FIRST && (made & (made - 1)) == 0);
    struct OrderLine *larger =
        full ? arena_array(arena, made == 0 ? LINES_AT_FIRST : 2 * (size_t)made, sizeof *larger) : lines;
    if (full && larger != NULL && made > 0) {
        memcpy(larger, lines, (size_t)made * sizeof *larger);
    }
    return larger;
}

/* Finds or makes the line of each source, and adds it up there. How many there are. */
static int add_up(struct Arena *arena, struct OrderSource *sources, int count, struct OrderLine **all, int job_count)
{
    int made = 0;
    for (int i = 0; i < count; i++) {
        const struct Part *part = sources[i].part;
        struct OrderLine *lines = *all;
        int at = 0;
        while (at < made && !is_article(&lines[at], part)) {
            at++;
        }
        if (at == made) {
            *all = lines = with_room(arena, lines, made);
            if (lines == NULL || !new_line(arena, &lines[made++], part, job_count)) {
                return 0;
            }
        }
        struct OrderLine *line = &lines[at];
        line->by_job[sources[i].job] += part->quantity;
        line->quantity += part->quantity;
        line->needed += part->needed;
        line->packs_apart += part->packs;
        line->piece_count += order_pieces_of(part);
        sources[i].line = at;
    }
    return made;
}

/* Lengths of cable are not interchangeable by the metre, so that their packs cannot be worked out from a sum: they stay
 * what the jobs would buy apart. So do those that a list already gives in packs. */
static void round_up(struct OrderLine *line)
{
    if (line->pack <= 0) {
        line->packs_apart = 0;
        line->buy = line->quantity;
    } else if (line->piece_count > 0 || text_same(line->unit, "pack")) {
        line->packs = line->packs_apart;
        line->buy = text_same(line->unit, "pack") ? line->quantity : (double)line->packs * line->pack;
    } else {
        line->packs = (long)ceil(line->quantity / line->pack - 1e-9);
        line->buy = (double)line->packs * line->pack;
    }
    line->over = line->buy > line->quantity ? line->buy - line->quantity : 0;
}

/* What is counted goes by the package where the package has a code, what is measured always by its own unit. */
static void add_code(struct OrderLine *line)
{
    const char *package = line->pack > 0 && text_same(line->unit, "each") ? order_package_code(line->pack_word) : "";
    line->by_package = *package != '\0';
    line->unit_code = line->by_package ? package : order_unit_code(line->unit);
    line->unit_quantity = line->by_package ? (double)line->packs : line->buy;
}

/* The jobs by names of their own, their lists by what was asked for. */
static struct OrderJob *take_jobs(struct Arena *arena, const struct OrderJob *jobs, int count)
{
    struct OrderJob *taken = order_name_jobs(arena, jobs, count);
    for (int j = 0; taken != NULL && j < count; j++) {
        taken[j].parts = order_uncut(arena, jobs[j].parts);
        if (taken[j].parts == NULL) {
            return NULL;
        }
    }
    return taken;
}

/* Pieces and words of one line, from its sources in their order. `room` holds as many as `from`, for one line after the
 * other. */
static void finish(struct Arena *arena, const struct OrderJob *jobs, struct OrderLine *line,
                   const struct OrderSource *from, int count, struct OrderSource *room, int at)
{
    struct OrderPiece *pieces = arena_array(arena, (size_t)line->piece_count, sizeof *pieces);
    int found = 0;
    int cut = 0;
    for (int i = 0; pieces != NULL && i < count; i++) {
        if (from[i].line != at) {
            continue;
        }
        room[found++] = from[i];
        for (int p = order_pieces_of(from[i].part); p > 0; p--) {
            pieces[cut++] = (struct OrderPiece){from[i].job, from[i].part->length_m,
                                                from[i].part->use_count > 0 ? from[i].part->uses : NULL};
        }
    }
    line->pieces = pieces;
    round_up(line);
    if (found > 0) {
        order_words(arena, jobs, line, room, found);
    }
}

static void make_lines(struct Arena *arena, struct OrderList *list, struct OrderSource *from, int sources)
{
    struct OrderLine *lines = NULL;
    struct OrderSource *room = arena_array(arena, (size_t)sources, sizeof *room);
    if (room == NULL) {
        return;
    }
    gather(list->jobs, list->job_count, from);
    list->count = add_up(arena, from, sources, &lines, list->job_count);
    list->lines = lines;
    for (int at = 0; at < list->count; at++) {
        finish(arena, list->jobs, &lines[at], from, sources, room, at);
        order_cut(arena, list, &lines[at]);
        add_code(&lines[at]);
    }
}

const struct OrderList *order_merge(struct Arena *arena, const struct OrderJob *jobs, int count,
                                    const struct OrderPrices *prices)
{
    struct OrderList *list = arena_alloc(arena, sizeof *list);
    struct OrderJob *taken = take_jobs(arena, jobs, count);
    if (list == NULL || taken == NULL) {
        return NULL;
    }
    const int sources = source_count(taken, count);
    struct OrderSource *from = arena_array(arena, (size_t)sources, sizeof *from);
    if (from == NULL) {
        return NULL;
    }
    *list = (struct OrderList){.job_count = count, .jobs = taken, .verdict = VERDICT_PASS, .pass = true};
    for (int j = 0; j < count; j++) {
        list->pass = list->pass && jobs[j].pass;
        list->verdict = jobs[j].verdict < list->verdict ? jobs[j].verdict : list->verdict;
    }
    make_lines(arena, list, from, sources);
    order_collect_notes(arena, list);
    order_price(arena, list, prices != NULL ? prices->list : NULL, prices != NULL ? prices->note : NULL);
    return arena_failed(arena) ? NULL : list;
}
