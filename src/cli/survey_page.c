/* wend form --out: the survey page in one file. Its template has a place for the language, which comes from the
 * library, so that page and program are never of two minds; for the engine, where one was built in; and for its
 * scripts. */
#include "survey_page.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct Page {
    char *data;
    size_t length, room;
    bool failed;
};

static void put(struct Page *page, const char *bytes, size_t length)
{
    if (!page->failed && page->room - page->length < length) {
        const size_t room = (page->length + length) * 2;
        char *larger = realloc(page->data, room);
        page->failed = larger == NULL;
        page->data = larger != NULL ? larger : page->data;
        page->room = larger != NULL ? room : page->room;
    }
    if (!page->failed && page->data != NULL) {
        memcpy(page->data + page->length, bytes, length);
        page->length += length;
    }
}

static void put_text(struct Page *page, const char *text)
{
    put(page, text, strlen(text));
}

const struct SurveyFile *survey_file(const char *name)
{
    for (int i = 0; survey_file_at(i) != NULL; i++) {
        if (strcmp(survey_file_at(i)->name, name) == 0) {
            return survey_file_at(i);
        }
    }
    return NULL;
}

bool survey_page_plans(void)
{
    return survey_file("phone/engine.wasm.gz") != NULL;
}

/* Within a script no text may end it or begin a comment of HTML: in JSON a less-than sign may be written by its number.
 * What the writer put between its members only makes the page longer. */
static void put_language(struct Page *page)
{
    char *json = wend_language_json();
    page->failed = page->failed || json == NULL;
    bool quoted = false;
    for (const char *at = json; at != NULL && *at != '\0'; at++) {
        if (*at == '<') {
            put_text(page, "\\u003c");
            continue;
        }
        if (quoted && *at == '\\') {
            put(page, at++, 1);
        } else if (*at == '"') {
            quoted = !quoted;
        }
        if (quoted || strchr(" \t\n", *at) == NULL) {
            put(page, at, 1);
        }
    }
    wend_text_free(json);
}

static void put_base64(struct Page *page, struct WendBytes bytes)
{
    static const char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for (size_t at = 0; at < bytes.length; at += 3) {
        const size_t left = bytes.length - at < 3 ? bytes.length - at : 3;
        unsigned long three = 0;
        for (size_t i = 0; i < 3; i++) {
            three = three << 8 | (i < left ? (unsigned char)bytes.data[at + i] : 0UL);
        }
        char four[4];
        for (size_t i = 0; i < 4; i++) {
            four[i] = '=';
            if (i <= left) {
                four[i] = letters[three >> (18 - 6 * i) & 63];
            }
        }
        put(page, four, sizeof four);
    }
}

static void put_engine(struct Page *page, bool hosted)
{
    const struct SurveyFile *glue = survey_file("phone/engine.js"), *engine = survey_file("phone/engine.wasm.gz");
    if (glue != NULL && engine != NULL) {
        put(page, glue->bytes.data, glue->bytes.length);
        put_text(page, "const wendEngineBytes = '");
        put_base64(page, engine->bytes);
        put_text(page, "';\n");
    }
    if (hosted) { /* where there are no such workers the page works as long as there is a network */
        put_text(page, "navigator.serviceWorker?.register('survey-worker.js');\n");
    }
}

static void put_scripts(struct Page *page)
{
    static const char folder[] = "survey/";
    for (int i = 0; survey_file_at(i) != NULL; i++) {
        const struct SurveyFile *file = survey_file_at(i);
        if (strncmp(file->name, folder, sizeof folder - 1) == 0) {
            put(page, file->bytes.data, file->bytes.length);
            put_text(page, "\n");
        }
    }
}

static void put_host(struct Page *page)
{
    put_text(
        page,
        "<link rel=\"manifest\" href=\"survey.webmanifest\">\n<link rel=\"icon\" href=\"survey-icon.svg\">\n</head>");
}

struct SurveyPage survey_page(bool hosted)
{
    static const char *const places[] = {"/*WEND-LANGUAGE*/", "/*WEND-ENGINE*/", "/*WEND-SCRIPT*/", "</head>"};
    enum { LANGUAGE, ENGINE, SCRIPT, HEAD_END, PLACES };
    const struct WendBytes page_file = survey_file("templates/survey.html")->bytes;
    struct Page page = {.data = NULL};
    for (size_t at = 0; at < page_file.length; at++) {
        int place = 0;
        while (place < PLACES && (page_file.length - at < strlen(places[place]) ||
                                  memcmp(page_file.data + at, places[place], strlen(places[place])) != 0)) {
            place++;
        }
        switch (place) {
        case LANGUAGE: put_language(&page); break;
        case ENGINE: put_engine(&page, hosted); break;
        case SCRIPT: put_scripts(&page); break;
        case HEAD_END: hosted ? put_host(&page) : put_text(&page, places[place]); break;
        default: put(&page, page_file.data + at, 1);
        }
        at += place < PLACES ? strlen(places[place]) - 1 : 0;
    }
    if (page.failed) {
        free(page.data);
        return (struct SurveyPage){NULL, 0};
    }
    return (struct SurveyPage){page.data, page.length};
}
