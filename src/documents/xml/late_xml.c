/* Finds libxml2 and libxslt by the names that they were built against; a program finds them as it would at its start.
 * They are made ready once, before the first document that needs them, and let go at the end. */
#include "late_xml.h"

#include "documents/documents.h"
#include "memory_watch.h"

#include <pthread.h>

#ifdef WEND_LATE_XML
#include <dlfcn.h>
#include <stddef.h>

struct LateXml late_xml;

/* Each name, its place, and the library that it is in. POSIX lets what dlsym() gives be a function's address. */
enum Library { LIBRARY_XML, LIBRARY_XSLT, LIBRARY_COUNT };
struct Row {
    const char *name;
    size_t offset;
    enum Library library;
};
static const struct Row rows[] = {
#define LATE(library, name) {#name, offsetof(struct LateXml, late_##name), LIBRARY_##library},
#include "late_xml.inc"
#undef LATE
};

const char *late_xml_load(void)
{
    static const char *const files[LIBRARY_COUNT] = {WEND_XML_FILE, WEND_XSLT_FILE};
    void *loaded[LIBRARY_COUNT];
    for (int i = 0; i < LIBRARY_COUNT; i++) {
        loaded[i] = dlopen(files[i], RTLD_NOW | RTLD_LOCAL);
        if (loaded[i] == NULL) {
            return dlerror();
        }
    }
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        void *found = dlsym(loaded[rows[i].library], rows[i].name);
        if (found == NULL) {
            return dlerror();
        }
        *(void **)(void *)((char *)&late_xml + rows[i].offset) = found;
    }
    return NULL;
}

#else

const char *late_xml_load(void)
{
    return NULL;
}

#endif

/* What became of loading them: once for the whole process, as they are themselves. */
static struct {
    pthread_once_t once;
    bool begun;
    const char *missing;
} both = {.once = PTHREAD_ONCE_INIT};

/* Neither library sets itself up safely when two threads come first at the same time. */
static void set_up(void)
{
    both.missing = late_xml_load();
    if (both.missing == NULL) {
        memory_watch_set_up();
        xmlInitParser();
        xsltInit();
        both.begun = true;
    }
}

bool documents_begin(void)
{
    pthread_once(&both.once, set_up);
    return both.begun;
}

const char *documents_missing(void)
{
    return both.missing;
}

void documents_end(void)
{
    if (both.begun) {
        xsltCleanupGlobals();
        xmlCleanupParser();
        memory_watch_drop();
    }
}
