/* The papers and the templates that they are made with, for whoever uses the library. */
#include "library_private.h"

#include <stdlib.h>
#include <string.h>

bool wend_template(int index, struct WendTemplate *out)
{
    const struct Template *file = out == NULL ? NULL : template_at(index);
    if (file != NULL) {
        *out = (struct WendTemplate){file->name, file->path, file->bytes.data, file->bytes.length};
    }
    return file != NULL;
}

static void take_file(struct Arena *arena, const struct WendTemplate *file, struct Template *out)
{
    const char *name = library_text(file->name);
    const char *path = file->path == NULL ? name : file->path;
    *out = (struct Template){.name = arena_text(arena, name, strlen(name)),
                             .path = arena_text(arena, path, strlen(path)),
                             .bytes = library_copy(arena, file->text, file->length)};
}

static struct WendDiagnostics told(struct Arena *arena, const struct PaperFault *fault)
{
    return (struct WendDiagnostics){
        .diag = fault->diag, .arena = arena, .source = fault->bytes, .file = library_text(fault->file)};
}

struct WendTemplates *wend_templates(const struct WendTemplate *files, int count)
{
    struct WendTemplates *made = calloc(1, sizeof *made);
    struct Arena *arena = made == NULL ? NULL : arena_new();
    if (arena == NULL) {
        free(made);
        return NULL;
    }
    made->arena = arena;
    made->count = files == NULL || count < 0 ? 0 : count;
    made->files = arena_array(arena, (size_t)made->count + 1, sizeof *made->files);
    for (int i = 0; made->files != NULL && i < made->count; i++) {
        take_file(arena, &files[i], &made->files[i]);
    }
    if (!arena_failed(arena) && documents_memory_begin()) {
        const struct PaperFault fault = templates_fault(arena, made->files, made->count);
        made->told = told(arena, &fault);
        made->whole = documents_memory_end();
    }
    return made;
}

void wend_templates_free(struct WendTemplates *templates)
{
    if (templates != NULL) {
        arena_free(templates->arena);
        free(templates);
    }
}

enum WendStatus wend_templates_status(const struct WendTemplates *templates)
{
    if (templates == NULL || arena_failed(templates->arena) || !templates->whole) {
        return WEND_NO_MEMORY;
    }
    return templates->told.diag == NULL ? WEND_PASSES : WEND_INPUT_WRONG;
}

const struct WendDiagnostics *wend_templates_diagnostics(const struct WendTemplates *templates)
{
    return templates == NULL ? NULL : diagnostics_shown(&templates->told);
}

void wend_use_templates(struct Wend *wend, const struct WendTemplates *templates)
{
    if (wend != NULL) {
        wend->own = templates;
        wend->papers_made = false;
    }
}

const char *wend_language(int index)
{
    return index >= 0 && index < LANGUAGES ? words_code((enum Language)index) : "";
}

bool wend_use_language(struct Wend *wend, const char *code)
{
    for (int i = 0; wend != NULL && code != NULL && i < LANGUAGES; i++) {
        if (text_same(code, words_code((enum Language)i))) {
            wend->language = (enum Language)i;
            wend->papers_made = false;
            return true;
        }
    }
    return false;
}

struct Bytes library_paper(struct Wend *wend, enum Paper paper)
{
    const struct WendTemplates *own = wend->own;
    if (!wend->papers_made) {
        wend->papers =
            own != NULL && wend_templates_status(own) != WEND_PASSES
                ? (struct Papers){.fault = {.diag = own->told.diag, .bytes = own->told.source, .file = own->told.file}}
                : document_papers_with(wend->arena, wend->plan, wend->parts,
                                       (struct PapersWith){library_own_day(wend), library_decided(wend)},
                                       wend->language, own == NULL ? NULL : own->files, own == NULL ? 0 : own->count);
        wend->papers_told = told(wend->arena, &wend->papers.fault);
        wend->papers_made = true;
    }
    return paper_whole(wend->arena, &wend->papers, paper);
}

const struct WendDiagnostics *wend_papers_diagnostics(const struct Wend *wend)
{
    return wend == NULL || !wend->papers_made ? NULL : diagnostics_shown(&wend->papers_told);
}
