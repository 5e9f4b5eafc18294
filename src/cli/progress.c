/* A line on the terminal while something takes longer than a second; it is gone when that is done. */
#include "cli_private.h"

#include <stdio.h>
#include <time.h>
#include <unistd.h>

double progress_now(void)
{
    struct timespec now = {0};
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

/* Wakes once a second until `ended`. */
static void *show(void *data)
{
    struct Progress *progress = data;
    pthread_mutex_lock(&progress->lock);
    while (!progress->ended) {
        const double passed_s = progress_now() - progress->since_s;
        const double due_s = progress->since_s + (passed_s < 1 ? 1 : (double)(long)passed_s + 1);
        if (passed_s >= 1) {
            print_shown(stderr, "\r\033[Kwend: %s %.40s, %ld s", progress->doing, progress->file, (long)passed_s);
            fflush(stderr);
            progress->shown = true;
        }
        const struct timespec due = {.tv_sec = (time_t)due_s, .tv_nsec = (long)((due_s - (double)(time_t)due_s) * 1e9)};
        pthread_cond_timedwait(&progress->wake, &progress->lock, &due);
    }
    pthread_mutex_unlock(&progress->lock);
    return NULL;
}

void progress_begin(struct Progress *progress, const char *doing, const char *file, double since_s)
{
    *progress = (struct Progress){.doing = doing, .file = file, .since_s = since_s};
    if (!isatty(STDERR_FILENO)) {
        return;
    }
    pthread_condattr_t clock;
    pthread_condattr_init(&clock);
    pthread_condattr_setclock(&clock, CLOCK_MONOTONIC);
    pthread_mutex_init(&progress->lock, NULL);
    pthread_cond_init(&progress->wake, &clock);
    pthread_condattr_destroy(&clock);
    progress->runs = pthread_create(&progress->thread, NULL, show, progress) == 0;
}

void progress_end(struct Progress *progress)
{
    if (!progress->runs) {
        return;
    }
    pthread_mutex_lock(&progress->lock);
    progress->ended = true;
    pthread_cond_signal(&progress->wake);
    pthread_mutex_unlock(&progress->lock);
    pthread_join(progress->thread, NULL);
    if (progress->shown) {
        fputs("\r\033[K", stderr);
    }
}
