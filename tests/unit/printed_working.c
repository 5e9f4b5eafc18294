/* A step is "  3. what", lines below it at the eighth column, and lines that begin with "=" at the sixth: the last of
 * those is the result, one before it the numbers. What is wrapped goes on at the eighth column. */
#include "printed_working.h"

#include <ctype.h>
#include <stdbool.h>
#include <string.h>

static void append(char *text, const char *line, size_t length)
{
    const size_t have = strlen(text);
    if (have + length + 2 > PRINTED_TEXT_MOST) {
        return;
    }
    if (have > 0) {
        strcat(text, " ");
    }
    strncat(text, line, length);
}

/* "  3. what": where `what` begins, 0 when the line is no such. */
static size_t step_begins(const char *line)
{
    size_t at = 2;
    if (strncmp(line, "  ", 2) != 0 || !isdigit((unsigned char)line[at])) {
        return 0;
    }
    at += strspn(line + at, "0123456789");
    return line[at] == '.' ? at + 1 + strspn(line + at + 1, " ") : 0;
}

static void cut_source(char *result)
{
    char *source = strstr(result, " [");
    if (source != NULL) {
        while (source > result && source[-1] == ' ') {
            source--;
        }
        *source = '\0';
    }
}

/* One line of a step; `into` is the text that a line without a sign goes on with. */
static char *take_line(struct PrintedStep *step, char *into, const char *line, size_t length)
{
    if (length > 8 && strncmp(line, "      = ", 8) == 0) {
        if (step->result[0] != '\0') {
            strcpy(step->numbers, step->result);
            step->result[0] = '\0';
        }
        append(step->result, line + 8, length - 8);
        return step->result;
    }
    if (length > 8 && strncmp(line, "        ", 8) == 0) {
        append(into, line + 8, length - 8);
    }
    return into;
}

int printed_steps(const char *text, struct PrintedStep steps[PRINTED_STEPS_MOST])
{
    int count = 0;
    char *into = NULL;
    for (const char *line = text; *line != '\0';) {
        const size_t length = strcspn(line, "\n");
        const size_t begins = step_begins(line);
        if (begins > 0 && count < PRINTED_STEPS_MOST) {
            steps[count] = (struct PrintedStep){0};
            append(steps[count].what, line + begins, length - begins);
            into = steps[count++].formula;
        } else if (length > 2 && line[2] != ' ') {
            into = NULL; /* "  Compared" and the like */
        } else if (into != NULL) {
            into = take_line(&steps[count - 1], into, line, length);
        }
        line += length + (line[length] == '\n' ? 1 : 0);
    }
    for (int i = 0; i < count; i++) {
        cut_source(steps[i].result);
    }
    return count;
}

size_t printed_columns(const char *text)
{
    size_t widest = 0;
    size_t here = 0;
    for (; *text != '\0'; text++) {
        const bool inside = ((unsigned char)*text & 0xC0) == 0x80; /* of a character of several bytes */
        here = *text == '\n' ? 0 : here + (inside ? 0 : 1);
        widest = here > widest ? here : widest;
    }
    return widest;
}
