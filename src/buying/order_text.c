/* What an order says in words: names of jobs that cannot be mixed up, lengths to cut, remarks. */
#include "order_private.h"

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

const char *order_piece_name(const struct OrderPiece *piece)
{
    const struct PartUse *use = piece->use;
    return use == NULL                   ? ""
           : use->whom == PART_FOR_PIECE ? use->piece->name
           : use->whom == PART_FOR_RUN   ? use->run->name
                                         : "";
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
        text_print(&words, "%s%s m (%s: %s)", i > 0 ? ", " : "", number_significant(arena, piece->length_m, 9),
                   jobs[piece->job].name, order_piece_name(piece));
    }
    text_add(&words, line->piece_count > 1 ? ", each one length without a joint" : ", one length without a joint");
    return text_done(&words);
}

static bool same_note(const struct OrderSource *a, const struct OrderSource *b)
{
    return text_same(a->part->note, b->part->note);
}

/* Whether the remark of source `at` was made by one before it. */
static bool was_made(const struct OrderSource *from, int at)
{
    for (int i = 0; i < at; i++) {
        if (same_note(&from[i], &from[at])) {
            return true;
        }
    }
    return false;
}

static bool all_the_same(const struct OrderSource *from, int count)
{
    for (int i = 1; i < count; i++) {
        if (!same_note(&from[i], &from[0])) {
            return false;
        }
    }
    return true;
}

/* A remark that every job makes stands alone; else each is led by the jobs that make it. */
static const char *note_words(struct Arena *arena, const struct OrderJob *jobs, const struct OrderSource *from,
                              int count)
{
    if (all_the_same(from, count)) {
        return from[0].part->note;
    }
    struct TextBuilder words = text_builder(arena);
    for (int i = 0; i < count; i++) {
        if (*from[i].part->note == '\0' || was_made(from, i)) {
            continue;
        }
        text_add(&words, words.length > 0 ? "; " : "");
        int last = -1;
        for (int j = i; j < count; j++) {
            if (from[j].job != last && same_note(&from[j], &from[i])) {
                text_print(&words, "%s%s", last >= 0 ? ", " : "", jobs[from[j].job].name);
                last = from[j].job;
            }
        }
        text_print(&words, ": %s", from[i].part->note);
    }
    return text_done(&words);
}

void order_words(struct Arena *arena, const struct OrderJob *jobs, struct OrderLine *line,
                 const struct OrderSource *from, int count)
{
    line->cut = cut_words(arena, jobs, line);
    line->note = note_words(arena, jobs, from, count);
}

void order_collect_notes(struct Arena *arena, struct OrderList *list)
{
    int most = 0;
    for (int j = 0; j < list->job_count; j++) {
        most += list->jobs[j].parts->note_count;
    }
    const struct Say **notes =
        arena_array(arena, (size_t)most, sizeof *notes); /* NOLINT(bugprone-sizeof-expression): of pointers */
    for (int j = 0; notes != NULL && j < list->job_count; j++) {
        const struct PartsList *parts = list->jobs[j].parts;
        for (int i = 0; i < parts->note_count; i++) {
            int at = 0;
            while (at < list->note_count && !say_same(notes[at], parts->notes[i])) {
                at++;
            }
            if (at == list->note_count) {
                notes[list->note_count++] = parts->notes[i];
            }
        }
    }
    list->notes = notes;
}
