/** Of threads what the documents ask for, where there is one alone: wasi-libc has no such header. */
#ifndef WEND_ONE_THREAD_PTHREAD_H
#define WEND_ONE_THREAD_PTHREAD_H

typedef int pthread_mutex_t;
#define PTHREAD_MUTEX_INITIALIZER 0
static inline int pthread_mutex_lock(pthread_mutex_t *mutex)
{
    *mutex = 1;
    return 0;
}
static inline int pthread_mutex_unlock(pthread_mutex_t *mutex)
{
    *mutex = 0;
    return 0;
}

typedef int pthread_once_t;
#define PTHREAD_ONCE_INIT 0
static inline int pthread_once(pthread_once_t *once, void (*work)(void))
{
    if (*once == 0) {
        *once = 1;
        work();
    }
    return 0;
}

#endif
