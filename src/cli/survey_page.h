/** The survey page: its files, which are part of the program, made into one. */
#ifndef WEND_SURVEY_PAGE_H
#define WEND_SURVEY_PAGE_H

#include "cli_private.h"

struct SurveyFile {
    const char *name; /**< with the folder that it is from: "templates/survey.html", "phone/engine.wasm.gz" */
    struct WendBytes bytes;
};
/** NULL behind the last; made when the program is built. Scripts are in the order in which the page has them. */
const struct SurveyFile *survey_file_at(int index);
/** NULL when it is not built in. */
const struct SurveyFile *survey_file(const char *name);

struct SurveyPage {
    char *data; /**< malloc()ed; NULL without memory */
    size_t length;
};
/** The page in one file. `hosted`: with what binds it to the files beside it. */
struct SurveyPage survey_page(bool hosted);
/** Whether the planner is in it. */
bool survey_page_plans(void);

/** Writes the page as one file; for a host with what it needs beside it. The exit status. */
int survey_page_write(const char *path);
int survey_page_write_host(const char *folder);

#endif
