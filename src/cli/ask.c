/* wend new --ask FILE: asks what one asks on site, in the order in which one walks, and keeps each answer in the file
 * at once. What the engine says of an answer is said at once; one that it refuses is asked again. */
#include "ask_private.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum Reply { REPLY_GIVEN, REPLY_BACK, REPLY_STOP, REPLY_END };

struct Dialogue {
    struct Survey survey;
    const char *path;
    bool stopped, fresh; /* fresh: something was answered in this run since the last "so far" */
};

/* ---- what is kept ---- */

static bool keep(struct Dialogue *dialogue)
{
    char *text = ask_text(&dialogue->survey, false);
    const bool kept = text != NULL && ask_keep(dialogue->path, text);
    free(text);
    return kept;
}

/* ---- what the engine says ---- */

/* Of the line of the answer alone: what is missing elsewhere will be asked. False when the answer is refused. */
static bool engine_takes(struct Dialogue *dialogue, const struct Answer *answer)
{
    char *text = ask_text(&dialogue->survey, true);
    struct Wend *wend = text == NULL ? NULL : wend_plan_wanted(WEND_WANT_VERDICT, "route", text, strlen(text), NULL, 0);
    const struct WendDiagnostics *told = wend_diagnostics(wend);
    bool taken = wend != NULL;
    for (size_t i = 0; i < wend_diagnostics_count(told); i++) {
        const bool to_come = strcmp(wend_diagnostic_name(told, i), "key-missing") == 0;
        if (wend_diagnostic_line(told, i) == answer->line && !to_come) {
            printf("  ! %s\n", wend_diagnostic_text(told, i));
            taken = taken && wend_diagnostic_severity(told, i) != WEND_ERROR;
        }
    }
    wend_free(wend);
    free(text);
    return taken;
}

/* Never more than "so far": complete: no stands in the text. */
static void say_so_far(struct Dialogue *dialogue)
{
    char *text = ask_text(&dialogue->survey, true);
    struct Wend *wend = text == NULL ? NULL : wend_plan_wanted(WEND_WANT_VERDICT, "route", text, strlen(text), NULL, 0);
    if (wend_status(wend) <= WEND_CHECK_FAILS) {
        if (wend_verdict(wend) == WEND_FAIL) {
            printf("so far it FAILS: %s\n", wend_verdict_text(wend));
        } else {
            puts("so far no check fails; the far end is not reached");
        }
    }
    wend_free(wend);
    free(text);
}

/* ---- one question ---- */

static const char *way_of(const struct Dialogue *dialogue, int piece)
{
    for (int i = 0; i < dialogue->survey.count; i++) {
        const struct Answer *answer = &dialogue->survey.list[i];
        struct WendQuestion asked;
        if (answer->piece == piece && wend_question(answer->question, "", &asked) &&
            strcmp(asked.in, "segments[]") == 0 && strcmp(asked.key, "way") == 0) {
            return answer->text;
        }
    }
    return "";
}

/* "far-end=island", "insulation=one-side,surrounded", "power=-": whether the earlier answer is one of those. */
static bool is_due(const struct Dialogue *dialogue, const char *when, int question, int piece)
{
    const size_t key_length = strcspn(when, "=");
    for (int i = question - 1; *when != '\0' && i >= 0; i--) {
        struct WendQuestion earlier;
        if (!wend_question(i, "", &earlier) || strlen(earlier.key) != key_length ||
            strncmp(earlier.key, when, key_length) != 0) {
            continue;
        }
        const struct Answer *answer = ask_find(&dialogue->survey, i, piece);
        const bool open = answer == NULL || answer->open;
        for (const char *at = when + key_length; *at != '\0'; at += 1 + strcspn(at + 1, ",")) {
            const size_t length = strcspn(at + 1, ",");
            if (open ? length == 1 && at[1] == '-'
                     : strlen(answer->text) == length && strncmp(answer->text, at + 1, length) == 0) {
                return true;
            }
        }
        return false;
    }
    return *when == '\0';
}

static void print_words(int question)
{
    for (int i = 0; *wend_question_word(question, i) != '\0'; i++) {
        printf("    %-16s %s\n", wend_question_word(question, i), wend_question_meaning(question, i));
    }
}

/* One that must be there, and what stands for it when nothing is typed; "" nothing. */
static void own_default(const struct Dialogue *dialogue, const struct WendQuestion *asked, int piece, char *out,
                        size_t room)
{
    *out = '\0';
    if (strcmp(asked->in, "segments[]") == 0 && strcmp(asked->key, "name") == 0) {
        snprintf(out, room, "%s-%d", way_of(dialogue, piece), piece + 1);
    }
}

static void print_question(int question, const char *way, const struct WendQuestion *asked, const char *own,
                           bool first_time)
{
    const bool way_itself = strcmp(asked->in, "segments[]") == 0 && strcmp(asked->key, "way") == 0;
    char *taken = wend_question_default(question, way);
    printf("%s", asked->question);
    printf(*asked->example != '\0' ? " (%s)" : "%s", asked->example);
    if (*own != '\0') {
        printf(" [%s]", own);
    } else if (asked->required) {
        printf("%s", way_itself ? " [end: the far end is reached]" : "");
    } else {
        printf(" [%s]", taken != NULL ? taken : "left open");
    }
    puts("");
    if (first_time) {
        print_words(question);
    }
    wend_text_free(taken);
}

static void print_help(int question, const struct WendQuestion *asked)
{
    printf("    %s: %s%s\n", asked->key, asked->help, asked->required ? "; it must be there" : "");
    print_words(question);
    puts("    nothing typed: what stands in square brackets; back: the last answer again; stop: go on another day");
}

static enum Reply read_reply(char *out, size_t room)
{
    printf("> ");
    fflush(stdout);
    if (fgets(out, (int)room, stdin) == NULL) {
        puts("");
        return REPLY_STOP;
    }
    if (strchr(out, '\n') == NULL) { /* longer than any answer: the rest is no answer to the next question */
        for (int c = getchar(); c != '\n' && c != EOF;) {
            c = getchar();
        }
    }
    size_t length = strcspn(out, "\r\n");
    while (length > 0 && (out[length - 1] == ' ' || out[length - 1] == '\t')) {
        length--;
    }
    out[length] = '\0';
    memmove(out, out + strspn(out, " \t"), strlen(out + strspn(out, " \t")) + 1);
    return strcmp(out, "back") == 0   ? REPLY_BACK
           : strcmp(out, "stop") == 0 ? REPLY_STOP
           : strcmp(out, "end") == 0  ? REPLY_END
                                      : REPLY_GIVEN;
}

/* Keeps what was typed, if the engine takes it. */
static bool answer_is_kept(struct Dialogue *dialogue, int question, int piece, const char *typed)
{
    struct Survey *survey = &dialogue->survey;
    if (survey->count == ANSWERS_MOST) {
        return false;
    }
    struct Answer *answer = &survey->list[survey->count++];
    *answer = (struct Answer){.question = question, .piece = piece, .open = *typed == '\0'};
    snprintf(answer->text, sizeof answer->text, "%s", typed);
    if (!answer->open && !engine_takes(dialogue, answer)) {
        survey->count--;
        return false;
    }
    return true;
}

static enum Reply ask(struct Dialogue *dialogue, int question, int piece, const struct WendQuestion *asked)
{
    const bool way_itself = strcmp(asked->in, "segments[]") == 0 && strcmp(asked->key, "way") == 0;
    const char *way = piece >= 0 ? way_of(dialogue, piece) : "";
    char own[64];
    own_default(dialogue, asked, piece, own, sizeof own);
    for (bool first = true;; first = false) {
        char typed[ANSWER_MOST - 2];
        print_question(question, way, asked, own, first && (!way_itself || piece == 0));
        const enum Reply reply = read_reply(typed, sizeof typed);
        if (reply == REPLY_BACK || reply == REPLY_STOP || (reply == REPLY_END && way_itself && piece > 0)) {
            return reply;
        }
        if (strcmp(typed, "?") == 0) {
            print_help(question, asked);
            continue;
        }
        if (*typed == '\0' && *own != '\0') {
            snprintf(typed, sizeof typed, "%s", own);
        }
        if (*typed == '\0' && asked->required) {
            puts("  ! this one must be there; ? says more, stop leaves it for another day");
            continue;
        }
        if (answer_is_kept(dialogue, question, piece, typed)) {
            return REPLY_GIVEN;
        }
    }
}

/* ---- all questions ---- */

/* Takes the last answer back, one that was left open too, and says where to go on. */
static void step_back(struct Dialogue *dialogue, int *question, int *piece)
{
    struct Survey *survey = &dialogue->survey;
    if (survey->count > 0) {
        survey->count--;
        *question = survey->list[survey->count].question;
        *piece = survey->list[survey->count].piece;
        survey->reached = false;
    }
}

static bool is_segment(int question)
{
    struct WendQuestion asked;
    return wend_question(question, "", &asked) && strcmp(asked.card, "segment") == 0;
}

static int first_of_segment(void)
{
    int question = 0;
    while (question < wend_question_count() && !is_segment(question)) {
        question++;
    }
    return question;
}

/* Where to go on: behind the last question of a segment its next piece begins, until the far end is reached. */
static void step_on(struct Dialogue *dialogue, int *question, int *piece)
{
    const bool of_segment = is_segment(*question);
    (*question)++;
    if (of_segment && !is_segment(*question) && !dialogue->survey.reached) {
        if (dialogue->fresh) {
            say_so_far(dialogue);
            dialogue->fresh = false;
        }
        (*piece)++;
        *question = first_of_segment();
        printf("\npiece %d of the way\n", *piece + 1);
    }
}

/* False when what was answered could not be kept. */
static bool ask_all(struct Dialogue *dialogue)
{
    int question = 0, piece = 0;
    while (question < wend_question_count() && piece < PIECES_MOST) {
        struct WendQuestion asked;
        const bool segment = is_segment(question);
        const int at = segment ? piece : 0;
        const bool over =
            segment && dialogue->survey.reached && ask_find(&dialogue->survey, first_of_segment(), piece) == NULL;
        const char *way = segment ? way_of(dialogue, piece) : "";
        if (over || !wend_question(question, way, &asked) || ask_find(&dialogue->survey, question, at) != NULL ||
            !is_due(dialogue, asked.when, question, at)) {
            if (over) {
                question++;
            } else if (segment && dialogue->survey.reached && !is_segment(question + 1) &&
                       ask_find(&dialogue->survey, first_of_segment(), piece + 1) != NULL) {
                piece++;
                question = first_of_segment();
            } else {
                step_on(dialogue, &question, &piece);
            }
            continue;
        }
        switch (ask(dialogue, question, at, &asked)) {
        case REPLY_GIVEN:
            dialogue->fresh = true;
            step_on(dialogue, &question, &piece);
            break;
        case REPLY_BACK: step_back(dialogue, &question, &piece); break;
        case REPLY_END:
            dialogue->survey.reached = true;
            while (is_segment(question)) {
                question++;
            }
            break;
        case REPLY_STOP: dialogue->stopped = true; return true;
        }
        if (!keep(dialogue)) {
            return false;
        }
    }
    if (piece == PIECES_MOST) { /* the far end was not reached: nobody may take this for the whole way */
        print_shown(stderr, "wend: error: the questions end at %d pieces; go on with %s in an editor\n", PIECES_MOST,
                    dialogue->path);
    }
    return piece < PIECES_MOST;
}

/* What was left open and must be there after all is asked the next time. */
static void forget_what_is_needed(struct Survey *survey)
{
    int kept = 0;
    for (int i = 0; i < survey->count; i++) {
        struct WendQuestion asked;
        const struct Answer answer = survey->list[i];
        char *taken = wend_question_default(answer.question, "");
        const bool known = wend_question(answer.question, "", &asked);
        const bool needed = (taken == NULL ? known && *asked.when != '\0'
                                           : strncmp(taken, "none", 4) == 0 || strstr(taken, "required") != NULL);
        if (!(answer.open && needed)) {
            survey->list[kept++] = answer;
        }
        wend_text_free(taken);
    }
    survey->count = kept;
}

/* All was asked: the file is a whole route, if the engine takes it. */
static int finish(struct Dialogue *dialogue)
{
    dialogue->survey.complete = true;
    char *text = ask_text(&dialogue->survey, false);
    struct Wend *wend = text == NULL ? NULL : wend_plan_wanted(WEND_WANT_VERDICT, "route", text, strlen(text), NULL, 0);
    const int status = (int)wend_status(wend);
    fputs(wend_diagnostics_printed(wend_diagnostics(wend), dialogue->path), stdout);
    dialogue->survey.complete = status <= WEND_CHECK_FAILS;
    if (!dialogue->survey.complete) {
        forget_what_is_needed(&dialogue->survey);
        print_shown(stdout, "kept in %s; wend new --ask %s asks again for what is still needed\n", dialogue->path,
                    dialogue->path);
    }
    const bool kept = keep(dialogue);
    if (kept && dialogue->survey.complete) {
        print_shown(stdout, "\n%s: %s: %s\n", dialogue->path, wend_verdict_word(wend_verdict(wend)),
                    wend_verdict_text(wend));
        print_shown(stdout, "wend plan %s writes the papers\n", dialogue->path);
    }
    wend_free(wend);
    free(text);
    return kept ? status : EXIT_SYSTEM;
}

/* What was answered before; true also where nothing is there. */
static bool resume(struct Dialogue *dialogue, int *status)
{
    struct SourceFile file = {.data = NULL};
    int bad = 0;
    *status = EXIT_SYSTEM;
    if (!ask_keep(dialogue->path, NULL)) {
        return false; /* told */
    }
    if (!source_file_read(dialogue->path, WEND_TEXT_MOST_BYTES, &file)) {
        return errno == ENOENT || outfile_tell(dialogue->path, "read");
    }
    *status = EXIT_USAGE;
    char *text = strndup(file.data, file.length);
    free(file.data);
    if (text == NULL || strncmp(text, ASK_MARK, strlen(ASK_MARK)) != 0) {
        print_shown(stderr, "wend: error: %s is there already and stays as it is; give another name\n", dialogue->path);
        *status = EXIT_SYSTEM;
        free(text);
        return false;
    }
    const bool known = ask_read(text, &dialogue->survey, &bad);
    free(text);
    if (!known) {
        print_shown(stderr,
                    "wend: error: line %d of %s is none that the questions write; go on in an editor, or take it out\n",
                    bad, dialogue->path);
    }
    return known;
}

int run_new_asked(const char *path)
{
    struct Dialogue *dialogue = calloc(1, sizeof *dialogue);
    int status = EXIT_SYSTEM;
    if (dialogue == NULL) {
        return report_not_made();
    }
    dialogue->path = path;
    if (resume(dialogue, &status)) {
        dialogue->survey.complete = false;
        puts("? says more on a question, back asks the last one again, stop leaves the rest for another day.");
        status = EXIT_SYSTEM;
        if (ask_all(dialogue)) {
            status = 0;
            if (dialogue->stopped) {
                print_shown(stdout, "kept in %s; wend new --ask %s goes on\n", path, path);
            } else {
                status = finish(dialogue);
            }
        }
    }
    free(dialogue);
    return status;
}
