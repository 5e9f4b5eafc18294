/* The file that wend new --ask keeps: a route in block style, one answer a line, so that it can be read again. What was
 * left open is a comment. */
#include "ask_private.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define REACHED "# the far end is reached"

/* The mappings in the order of the file; those below another follow it. */
static const struct Place {
    const char *in;
    const char *heading; /* lines before its first key */
    int indent;          /* of its keys */
} places[] = {
    {"job", "job:\n", 2},
    {"supply", "supply:\n", 2},
    {"earthing", "earthing:\n", 2},
    {"earthing.electrode", "  electrode:\n", 4},
    {"runs.NAME", "runs:\n  feeder:\n", 4},
    {"runs.NAME.load", "    load:\n", 6},
    {"runs.NAME.device", "    device:\n", 6},
    {"runs.NAME.cable", "    cable:\n", 6},
    {"runs.NAME.start", "    start:\n", 6},
    {"runs.NAME.finish", "    finish:\n", 6},
    {"segments[]", "", 4},
    {"segments[].duct", "    duct:\n", 6},
};
enum { PLACES = (int)(sizeof places / sizeof places[0]), PLACE_SEGMENT = 10, PLACE_RUN = 4, PLACE_EARTHING = 2 };

const struct Answer *ask_find(const struct Survey *survey, int question, int piece)
{
    for (int i = 0; i < survey->count; i++) {
        if (survey->list[i].question == question && survey->list[i].piece == piece) {
            return &survey->list[i];
        }
    }
    return NULL;
}

struct Out {
    FILE *file;
    int line;
};

static void put(struct Out *out, const char *text)
{
    fputs(text, out->file);
    for (; *text != '\0'; text++) {
        out->line += *text == '\n';
    }
}

/* Plain where that is beyond doubt, else in quotes, where nothing has a meaning but the quote itself. */
static void put_value(struct Out *out, const char *text)
{
    const size_t plain = strspn(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 .+-/%");
    if (text[plain] == '\0' && *text != '-' && *text != '%' && *text != ' ') {
        put(out, text);
        return;
    }
    put(out, "'");
    for (; *text != '\0'; text++) {
        const char one[] = {*text, *text == '\'' ? '\'' : '\0', '\0'};
        put(out, one);
    }
    put(out, "'");
}

static bool is_in(int question, const char *in)
{
    struct WendQuestion asked;
    return wend_question(question, "", &asked) && strcmp(asked.in, in) == 0;
}

/* True when the place or one below it has something to hold. */
static bool is_filled(const struct Survey *survey, int place, int piece)
{
    const size_t length = strlen(places[place].in);
    for (int i = 0; i < survey->count; i++) {
        struct WendQuestion asked;
        if (survey->list[i].piece == piece && !survey->list[i].open &&
            wend_question(survey->list[i].question, "", &asked) && strncmp(asked.in, places[place].in, length) == 0) {
            return true;
        }
    }
    return false;
}

/* All answers of a place; what was left open stands before its heading if nothing else does. */
static void put_place(struct Out *out, struct Survey *survey, int place, int piece)
{
    bool first = place == PLACE_SEGMENT;
    for (int i = 0; i < survey->count; i++) {
        struct Answer *answer = &survey->list[i];
        struct WendQuestion asked;
        if (answer->piece != piece || !is_in(answer->question, places[place].in) ||
            !wend_question(answer->question, "", &asked)) {
            continue;
        }
        char line[128];
        answer->line = out->line;
        if (answer->open) {
            snprintf(line, sizeof line, "# %s %s: left open\n", places[place].in, asked.key);
            put(out, line);
            continue;
        }
        snprintf(line, sizeof line, "%*s%s: ", places[place].indent, first ? "  - " : "", asked.key);
        put(out, line);
        put_value(out, answer->text);
        put(out, "\n");
        first = false;
    }
}

static void put_places(struct Out *out, struct Survey *survey, bool probe)
{
    for (int place = 0; place < PLACE_SEGMENT; place++) {
        const bool filled = is_filled(survey, place, 0);
        put(out, filled || (probe && place == 0) ? places[place].heading : "");
        if (probe && place == 0) {
            bool titled = false;
            for (int i = 0; i < survey->count; i++) {
                struct WendQuestion asked;
                titled = titled || (wend_question(survey->list[i].question, "", &asked) &&
                                    strcmp(asked.key, "title") == 0 && !survey->list[i].open);
            }
            put(out, titled ? "" : "  title: not named yet\n");
        }
        put_place(out, survey, place, 0);
    }
}

static void put_pieces(struct Out *out, struct Survey *survey)
{
    int pieces = 0;
    for (int i = 0; i < survey->count; i++) {
        const bool segment = is_in(survey->list[i].question, "segments[]");
        pieces = segment && survey->list[i].piece >= pieces ? survey->list[i].piece + 1 : pieces;
    }
    put(out, pieces > 0 ? "segments:\n" : "");
    for (int piece = 0; piece < pieces; piece++) {
        put_place(out, survey, PLACE_SEGMENT, piece);
        for (int i = 0; i < survey->count; i++) {
            if (survey->list[i].piece == piece && !survey->list[i].open &&
                is_in(survey->list[i].question, "segments[].duct")) {
                put(out, places[PLACE_SEGMENT + 1].heading);
                break;
            }
        }
        put_place(out, survey, PLACE_SEGMENT + 1, piece);
    }
    put(out, survey->reached ? REACHED "\n" : "");
}

char *ask_text(struct Survey *survey, bool probe)
{
    char *text = NULL;
    size_t length = 0;
    struct Out out = {open_memstream(&text, &length), 1};
    if (out.file == NULL) {
        return NULL;
    }
    put(&out, ASK_MARK "; the same command goes on with it.\nwend: 1\n");
    put(&out, survey->complete ? "" : "complete: no # the survey goes on: no plan of it passes\n");
    put_places(&out, survey, probe);
    put_pieces(&out, survey);
    const bool failed = ferror(out.file) != 0;
    if (fclose(out.file) != 0 || failed) {
        free(text);
        return NULL;
    }
    return text;
}

/* ---- keeping it ---- */

static bool keep_in(const char *path, const char *name, const char *text)
{
    struct OutSet set = {.count = 1, .names = {{.mark = ASK_MARK}}};
    snprintf(set.stem, sizeof set.stem, "%s", name);
    snprintf(set.names[0].name, sizeof set.names[0].name, "%s", name);
    struct OutFolder folder = {.path = path, .set = &set};
    if (!outfolder_enter(&folder, false)) {
        return false;
    }
    const struct OutFile file = {
        .name = set.names[0].name, .bytes = {text, text == NULL ? 0 : strlen(text)}, .mark = ASK_MARK};
    const bool kept = text == NULL || outfile_write_all(&folder, &file, 1);
    outfolder_leave(&folder);
    return kept;
}

bool ask_keep(const char *path, const char *text)
{
    const char *slash = strrchr(path, '/');
    char *folder = slash == NULL ? strdup(".") : strndup(path, (size_t)(slash - path) + 1);
    const bool kept = folder != NULL && keep_in(folder, slash == NULL ? path : slash + 1, text);
    free(folder);
    return kept;
}

/* ---- reading it again ---- */

struct In {
    struct Survey *out;
    int place, piece;
};

static bool take(struct In *in, const char *where, const char *key, size_t key_length, const char *value, bool open)
{
    struct WendQuestion asked;
    for (int i = 0; i < wend_question_count(); i++) {
        if (!wend_question(i, "", &asked) || strcmp(asked.in, where) != 0 || strlen(asked.key) != key_length ||
            strncmp(asked.key, key, key_length) != 0) {
            continue;
        }
        if (in->out->count == ANSWERS_MOST || strlen(value) >= ANSWER_MOST) {
            return false;
        }
        const bool segment = strncmp(where, "segments[]", 10) == 0;
        struct Answer *answer = &in->out->list[in->out->count++];
        *answer = (struct Answer){.question = i, .piece = segment ? in->piece : 0, .open = open};
        snprintf(answer->text, sizeof answer->text, "%s", value);
        return true;
    }
    return false;
}

/* "'it''s'" -> "it's"; in place. */
static bool unquote(char *value)
{
    const size_t length = strlen(value);
    if (*value != '\'') {
        return strpbrk(value, "#{}[]&*!|>\"'") == NULL;
    }
    char *to = value;
    for (size_t i = 1; i + 1 < length; i++) {
        i += value[i] == '\'' && value[i + 1] == '\'' ? 1 : 0;
        *to++ = value[i];
    }
    *to = '\0';
    return length > 1;
}

/* "# supply phases: left open" */
static bool read_open(struct In *in, char *line)
{
    for (int place = 0; place < PLACES; place++) {
        const size_t length = strlen(places[place].in);
        if (strncmp(line + 2, places[place].in, length) == 0 && line[2 + length] == ' ') {
            const char *key = line + 3 + length;
            const size_t key_length = strcspn(key, ":");
            return strcmp(key + key_length, ": left open") == 0 &&
                   take(in, places[place].in, key, key_length, "", true);
        }
    }
    return false;
}

static bool is_heading(struct In *in, const char *line)
{
    static const char *const others[] = {"runs:", "  feeder:", "segments:"};
    for (int i = 0; i < 3; i++) {
        if (strcmp(line, others[i]) == 0) {
            in->place = i < 2 ? PLACE_RUN : PLACE_SEGMENT;
            return true;
        }
    }
    for (int place = 0; place < PLACES; place++) {
        const size_t length = strlen(line);
        if (strlen(places[place].heading) == length + 1 && strncmp(places[place].heading, line, length) == 0) {
            in->place = place;
            return true;
        }
    }
    return false;
}

static bool read_line(struct In *in, char *line)
{
    static const char complete_no[] = "complete: no";
    if (strncmp(line, ASK_MARK, strlen(ASK_MARK)) == 0 || strcmp(line, "wend: 1") == 0 || *line == '\0' ||
        strncmp(line, complete_no, strlen(complete_no)) == 0) {
        return true;
    }
    if (strcmp(line, REACHED) == 0) {
        in->out->reached = true;
        return true;
    }
    if (*line == '#') {
        return read_open(in, line);
    }
    if (is_heading(in, line)) {
        return true;
    }
    if (strncmp(line, "  - ", 4) == 0) {
        in->piece++;
        in->place = PLACE_SEGMENT;
        line[2] = ' ';
    }
    const size_t indent = strspn(line, " ");
    if ((int)indent == 4 && in->place == PLACE_SEGMENT + 1) {
        in->place = PLACE_SEGMENT;
    }
    const size_t key_length = strcspn(line + indent, ":");
    char *value = line + indent + key_length;
    if ((int)indent != places[in->place].indent || strncmp(value, ": ", 2) != 0 || !unquote(value + 2)) {
        return false;
    }
    return take(in, places[in->place].in, line + indent, key_length, value + 2, false);
}

bool ask_read(const char *text, struct Survey *out, int *bad)
{
    *out = (struct Survey){.complete = strstr(text, "\ncomplete: no") == NULL};
    struct In in = {out, 0, -1};
    *bad = 1;
    for (; *text != '\0'; (*bad)++) {
        char line[ANSWER_MOST * 2];
        const size_t length = strcspn(text, "\n");
        if (length >= sizeof line) {
            return false;
        }
        memcpy(line, text, length);
        line[length] = '\0';
        if (!read_line(&in, line)) {
            return false;
        }
        text += length + (text[length] == '\n');
    }
    return true;
}
