/* What an order says in words: names of jobs that cannot be mixed up, lengths to cut, remarks. */
#include "order_private.h"

static bool is_taken(const struct OrderJob *jobs, int count, const char *name)
{
    for (int i = 0; i < count; i++) {
        if (text_order_seen(jobs[i].name, name) == 0) { /* on a bag */
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

static const struct Say *cut_said(struct Arena *arena, const struct OrderJob *jobs, const struct OrderLine *line)
{
    const struct Say *all = NULL;
    for (int i = line->piece_count - 1; i >= 0; i--) {
        const struct OrderPiece *piece = &line->pieces[i];
        all = say_then(arena,
                       say(arena, i + 1 < line->piece_count ? SAY_CUT_FOR_AND_MORE : SAY_CUT_FOR,
                           say_digits(piece->length_m, 9, UNIT_M), say_name(jobs[piece->job].name),
                           say_part(piece->use != NULL ? parts_user_said(arena, piece->use) : NULL)),
                       all);
    }
    return all == NULL ? NULL : say(arena, line->piece_count > 1 ? SAY_CUT_LENGTHS : SAY_CUT_LENGTH, say_part(all));
}

static bool same_note(const struct OrderSource *a, const struct OrderSource *b)
{
    return say_same(a->part->note, b->part->note);
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

/* "barn, shed": the jobs that make the remark of source `at`, which none before it made. Sayings that follow each
 * other, because they may be many; so are the remarks. */
static const struct Say *who_says(struct Arena *arena, const struct OrderJob *jobs, const struct OrderSource *from,
                                  int count, int at)
{
    const struct Say *names = NULL;
    int next = -1;
    for (int i = count - 1; i >= at; i--) {
        if (from[i].job != next && same_note(&from[i], &from[at])) {
            const struct SayArg job = say_name(jobs[from[i].job].name);
            names = say_then(arena, next >= 0 ? say(arena, SAY_NAME_AND_MORE, job) : say_alone(arena, job), names);
            next = from[i].job;
        }
    }
    return names;
}

/* A remark that every job makes stands alone; else each is led by the jobs that make it. */
static const struct Say *note_of(struct Arena *arena, const struct OrderJob *jobs, const struct OrderSource *from,
                                 int count)
{
    if (all_the_same(from, count)) {
        return from[0].part->note;
    }
    const struct Say *notes = NULL;
    for (int i = count - 1; i >= 0; i--) {
        if (from[i].part->note == NULL || was_made(from, i)) {
            continue;
        }
        const struct Say *note =
            say(arena, SAY_COLON, say_part(who_says(arena, jobs, from, count, i)), say_part(from[i].part->note));
        notes = notes == NULL ? note : say_then(arena, say(arena, SAY_AND_THEN, say_part(note)), notes);
    }
    return notes;
}

void order_words(struct Arena *arena, const struct OrderJob *jobs, struct OrderLine *line,
                 const struct OrderSource *from, int count)
{
    line->cut = cut_said(arena, jobs, line);
    line->note = note_of(arena, jobs, from, count);
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
