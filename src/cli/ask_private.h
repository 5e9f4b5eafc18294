/** Between the dialogue of `wend new --ask` and the file that it keeps. */
#ifndef WEND_ASK_PRIVATE_H
#define WEND_ASK_PRIVATE_H

#include "cli_private.h"

#define ASK_MARK "# Asked by wend new --ask"

enum { PIECES_MOST = 200, ANSWER_MOST = 400, ANSWERS_MOST = 4096 };

/** One answer; `piece` counts segments from 0 and is 0 for all other cards. */
struct Answer {
    int question, piece;
    bool open; /**< asked and left open */
    int line;  /**< where it stands in the text that was made last */
    char text[ANSWER_MOST];
};

struct Survey {
    int count;
    struct Answer list[ANSWERS_MOST];
    bool reached;  /**< the far end */
    bool complete; /**< and all else was asked */
};

/** NULL when it was not asked yet. */
const struct Answer *ask_find(const struct Survey *survey, int question, int piece);
/** The route as YAML, malloc()ed, NULL without memory; says of each answer on which line it stands. With `probe` what
 * is not known yet is made up, so that the rest can be planned. */
char *ask_text(struct Survey *survey, bool probe);
/** Ends what an earlier run that died had begun to keep there, and with a `text` keeps that in its place; false after
 * telling why not. */
bool ask_keep(const char *path, const char *text);
/** Reads what ask_text() made; false with the line in *bad where something stands that no question asks. */
bool ask_read(const char *text, struct Survey *out, int *bad);

#endif
