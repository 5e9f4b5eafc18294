/* The papers and the templates that they are made with, for whoever uses the library. */
#include "library_private.h"

#include <stdlib.h>
#include <string.h>

bool wend_template(int index, struct WendTemplate *out)
{
    const struct Template *file = template_at(index);
    if (file != NULL) {
        *out = (struct WendTemplate){file->name, file->path, file->bytes.data, file->bytes.length};
    }
    return file != NULL;
}

static const struct Template *templates_of(struct Arena *arena, const struct WendTemplate *own, int count)
{
    struct Template *files = arena_array(arena, (size_t)count + 1, sizeof *files);
    for (int i = 0; files != NULL && i < count; i++) {
        files[i] = (struct Template){own[i].name, own[i].path, {own[i].text, own[i].length}};
    }
    return files;
}

char *wend_templates_check(const struct WendTemplate *own, int count)
{
    struct Arena *arena = arena_new();
    const struct Template *files = arena == NULL ? NULL : templates_of(arena, own, count);
    const char *faults = files == NULL ? NULL : templates_faults(arena, files, count);
    const size_t size = faults == NULL ? 0 : strlen(faults) + 1;
    char *copy = size == 0 || arena_failed(arena) ? NULL : malloc(size);
    if (copy != NULL) {
        memcpy(copy, faults, size);
    }
    arena_free(arena);
    return copy;
}

void wend_use_templates(struct Wend *wend, const struct WendTemplate *own, int count)
{
    wend->own = own;
    wend->own_count = count;
}

struct Bytes library_paper(struct Wend *wend, enum Paper paper)
{
    if (!wend->papers_made) {
        wend->papers = (struct Papers){.fault = ""};
        const struct Template *files = templates_of(wend->arena, wend->own, wend->own_count);
        if (files != NULL) {
            wend->papers = document_papers(wend->arena, wend->plan, wend->parts, files, wend->own_count);
        }
        wend->papers_made = true;
    }
    return wend->papers.pages[paper];
}

const char *wend_paper_fault(const struct Wend *wend)
{
    return wend->papers_made ? wend->papers.fault : "";
}
