/* Writes jobs by chance and the planner's answers, one file a job, for compare.sh to hold against a general solver:
 *
 *   piece LENGTH WANTED CUT     how many are wanted, and how many the plan cuts
 *   bin LENGTH MOST BOUGHT      what there is to cut from; MOST -1: no end; BOUGHT 1 or 0
 *   answer UNCUT_MM BOUGHT_MM DRUMS OFFCUTS
 *
 * Use: cutting_jobs FOLDER. It fails when an answer is not proved. */
#include "cutting/cutting.h"

#include <stdio.h>
#include <stdlib.h>

enum { PIECES_MOST = 64, SEEDS = 30 };

/* Lengths are multiples of step_mm; few enough pieces to a bin that a solver can be given every pattern. */
struct Family {
    int pieces_most, kinds, least_mm, most_mm, step_mm;
    int stock_count, stock_mm[3];
    int limited; /* how many of the stocks have an end to them, from the first */
    int available_most, offcuts_most;
};
static const struct Family families[] = {
    {12, 12, 800, 5000, 1, 1, {6000}, 0, 0, 0},
    {16, 16, 5000, 40000, 500, 2, {50000, 100000}, 0, 0, 3},
    {40, 7, 1500, 4500, 10, 2, {6000, 7300}, 0, 0, 2},
    {18, 10, 20, 70, 1, 3, {100, 131, 157}, 2, 3, 3},
    {14, 14, 12000, 48000, 1000, 2, {50000, 75000}, 1, 2, 4},
    {12, 8, 20, 70, 1, 2, {80, 113}, 2, 3, 3},
    {60, 5, 1100, 4000, 100, 1, {5800}, 0, 0, 4},
};
enum { FAMILIES = (int)(sizeof families / sizeof families[0]) };

struct Chance {
    uint64_t state;
};

static int between(struct Chance *chance, int least, int most)
{
    chance->state = chance->state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return least + (int)((chance->state >> 33) % (uint64_t)(most - least + 1));
}

static int length_by_chance(struct Chance *chance, const struct Family *family)
{
    return family->least_mm +
           family->step_mm * between(chance, 0, (family->most_mm - family->least_mm) / family->step_mm);
}

/* One job; the arrays are the caller's. */
static struct CuttingJob job_by_chance(const struct Family *family, int seed, struct CuttingPiece *pieces,
                                       struct CuttingStock *stock, struct CuttingOffcut *offcuts)
{
    struct Chance chance = {(uint64_t)seed};
    int kinds[PIECES_MOST];
    struct CuttingJob job = {.pieces = pieces, .stock = stock, .offcuts = offcuts, .stock_count = family->stock_count};
    for (int i = 0; i < family->kinds; i++) {
        kinds[i] = length_by_chance(&chance, family);
    }
    job.piece_count = between(&chance, 2, family->pieces_most);
    for (int i = 0; i < job.piece_count; i++) {
        pieces[i] = (struct CuttingPiece){"piece", kinds[between(&chance, 0, family->kinds - 1)]};
    }
    for (int i = 0; i < family->stock_count; i++) {
        const bool limited = i < family->limited;
        stock[i] = (struct CuttingStock){.name = "stock",
                                         .length_mm = family->stock_mm[i],
                                         .available =
                                             limited ? between(&chance, 1, family->available_most) : CUTTING_UNLIMITED,
                                         .price = CUTTING_PRICE_UNKNOWN};
    }
    job.offcut_count = between(&chance, 0, family->offcuts_most);
    for (int i = 0; i < job.offcut_count; i++) {
        offcuts[i] = (struct CuttingOffcut){"offcut", length_by_chance(&chance, family)};
    }
    return job;
}

/* How many pieces of that length stand in a list of pieces. */
static int count_of(const struct CuttingJob *job, int length_mm, const int *list, int count)
{
    int found = 0;
    for (int i = 0; i < count; i++) {
        found += job->pieces[list == NULL ? i : list[i]].length_mm == length_mm ? 1 : 0;
    }
    return found;
}

static void write_job(FILE *out, const struct CuttingJob *job, const struct CuttingPlan *plan)
{
    for (int i = 0; i < job->piece_count; i++) {
        const int length_mm = job->pieces[i].length_mm;
        if (count_of(job, length_mm, NULL, i) > 0) {
            continue; /* its length has been written */
        }
        int cut = 0;
        for (int o = 0; o < plan->opened_count; o++) {
            cut += count_of(job, length_mm, plan->opened[o].pieces, plan->opened[o].piece_count);
        }
        fprintf(out, "piece %d %d %d\n", length_mm, count_of(job, length_mm, NULL, job->piece_count), cut);
    }
    for (int i = 0; i < job->stock_count; i++) {
        fprintf(out, "bin %d %d 1\n", job->stock[i].length_mm, job->stock[i].available);
    }
    for (int i = 0; i < job->offcut_count; i++) {
        fprintf(out, "bin %d 1 0\n", job->offcuts[i].length_mm);
    }
    int64_t uncut_mm = plan->uncut_mm;
    for (int i = 0; i < plan->impossible_count; i++) {
        uncut_mm += job->pieces[plan->impossible[i]].length_mm;
    }
    fprintf(out, "answer %lld %lld %d %d\n", (long long)uncut_mm, (long long)plan->bought_mm, plan->drums,
            plan->offcuts_used);
}

int main(int argc, char **argv)
{
    if (argc != 2) {
        fputs("use: cutting_jobs FOLDER\n", stderr);
        return EXIT_FAILURE;
    }
    for (int number = 0; number < FAMILIES * SEEDS; number++) {
        struct CuttingPiece pieces[PIECES_MOST];
        struct CuttingStock stock[3];
        struct CuttingOffcut offcuts[8];
        const struct CuttingJob job = job_by_chance(&families[number % FAMILIES], number, pieces, stock, offcuts);
        struct Arena *arena = arena_new();
        const struct CuttingPlan *plan = arena == NULL ? NULL : cutting_plan(arena, &job);
        const char *path = plan == NULL ? "" : arena_print(arena, "%s/job-%03d.txt", argv[1], number);
        FILE *out = plan == NULL || !plan->proved ? NULL : fopen(path, "w");
        if (out == NULL) {
            fprintf(stderr, "job %d: no proved plan, or it cannot be written\n", number);
            return EXIT_FAILURE;
        }
        write_job(out, &job, plan);
        if (fclose(out) != 0) {
            return EXIT_FAILURE;
        }
        arena_free(arena);
    }
    return EXIT_SUCCESS;
}
