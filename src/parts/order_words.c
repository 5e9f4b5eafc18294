/* What an order says in words: names of jobs that cannot be mixed up, lengths to cut, remarks. */
#include "order_private.h"

#include <string.h>

static bool is_taken(const struct OrderJob *jobs, int count, const char *name)
{
    for (int i = 0; i < count; i++) {
        if (text_same(jobs[i].name, name)) {
            return true;
        }
    }
    return false;
}

struct OrderJob *order_name_jobs(struct Arena *arena, const struct OrderJob *jobs, int count)
{
    struct OrderJob *named = arena_array(arena, (size_t)count, sizeof *named);
    for (int i = 0; named != NULL && i < count; i++) {
        named[i] = jobs[i];
        for (int again = 2; !arena_failed(arena) && is_taken(named, i, named[i].name); again++) {
            named[i].name = arena_print(arena, "%s (%d)", jobs[i].name, again);
        }
    }
    return named;
}

/* The runs of a piece's use: "feeder" of "feeder: gable, loft". */
static int run_length(const char *use)
{
    return (int)strcspn(use, ":;");
}

static const char *cut_words(struct Arena *arena, const struct OrderJob *jobs, const struct OrderLine *line)
{
    if (line->piece_count == 0) {
        return "";
    }
    struct TextBuilder words = text_builder(arena);
    text_add(&words, "cut ");
    for (int i = 0; i < line->piece_count; i++) {
        const struct OrderPiece *piece = &line->pieces[i];
        text_print(&words, "%s%s m (%s: %.*s)", i > 0 ? ", " : "", number_significant(arena, piece->length_m, 9),
                   jobs[piece->job].name, run_length(piece->use), piece->use);
    }
    text_add(&words, line->piece_count > 1 ? ", each one length without a joint" : ", one length without a joint");
    return text_done(&words);
}

/* The part before it among the sources with the same remark, or its own place. */
static int first_with(const struct Part *const *parts, int at)
{
    int first = 0;
    while (!text_same(parts[first]->note, parts[at]->note)) {
        first++;
    }
    return first;
}

static bool all_the_same(const struct Part *const *parts, int count)
{
    for (int i = 1; i < count; i++) {
        if (!text_same(parts[i]->note, parts[0]->note)) {
            return false;
        }
    }
    return true;
}

/* A remark that every job makes stands alone; else each is led by the jobs that make it. */
static const char *note_words(struct Arena *arena, const struct OrderJob *jobs, const struct Part *const *parts,
                              const int *of_job, int count)
{
    if (all_the_same(parts, count)) {
        return parts[0]->note;
    }
    struct TextBuilder words = text_builder(arena);
    for (int i = 0; i < count; i++) {
        if (*parts[i]->note == '\0' || first_with(parts, i) != i) {
            continue;
        }
        text_add(&words, words.length > 0 ? "; " : "");
        int last = -1;
        for (int j = i; j < count; j++) {
            if (of_job[j] != last && text_same(parts[j]->note, parts[i]->note)) {
                text_print(&words, "%s%s", last >= 0 ? ", " : "", jobs[of_job[j]].name);
                last = of_job[j];
            }
        }
        text_print(&words, ": %s", parts[i]->note);
    }
    return text_done(&words);
}

void order_words(struct Arena *arena, const struct OrderJob *jobs, struct OrderLine *line,
                 const struct Part *const *parts, const int *of_job, int count)
{
    line->cut = cut_words(arena, jobs, line);
    line->note = note_words(arena, jobs, parts, of_job, count);
}

void order_collect_notes(struct Arena *arena, struct OrderList *list)
{
    int most = 0;
    for (int j = 0; j < list->job_count; j++) {
        most += list->jobs[j].parts->note_count;
    }
    const char **notes = arena_array(arena, (size_t)most, sizeof *notes);
    for (int j = 0; notes != NULL && j < list->job_count; j++) {
        const struct PartsList *parts = list->jobs[j].parts;
        for (int i = 0; i < parts->note_count; i++) {
            int at = 0;
            while (at < list->note_count && !text_same(notes[at], parts->notes[i])) {
                at++;
            }
            if (at == list->note_count) {
                notes[list->note_count++] = parts->notes[i];
            }
        }
    }
    list->notes = notes;
}
