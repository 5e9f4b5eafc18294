/* wend form --paper: a survey sheet for a pencil, A4: one page for both ends and the job, one for eight pieces of the
 * way, a column each. Made from the questions that wend new --ask asks, in their order. */
#include "survey_page.h"

#include <stdio.h>
#include <string.h>

enum { COLUMNS = 8, WORDS_SHORT = 60 };

static const char head[] =
    "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
    "<meta name=\"generator\" content=\"Wend\">\n"
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>Survey sheet</title>\n<style>\n"
    "@page { size: A4 portrait; margin: 10mm }\n"
    "body { font: 9pt/1.25 \"DejaVu Sans\", Arial, sans-serif; color: #000; background: #fff; margin: 0 auto; "
    "max-width: 190mm }\n"
    "h1 { font-size: 13pt; margin: 0 0 1mm } h2 { font-size: 10.5pt; margin: 2mm 0 0; break-after: avoid }\n"
    "p { margin: 0 0 1.5mm } small { font-size: 7pt }\n"
    ".cards { columns: 2; column-gap: 6mm }\n"
    ".ask { break-inside: avoid; border-bottom: 0.3mm solid #000; min-height: 8mm; padding: 0.5mm 0 }\n"
    ".ask b { font-weight: 600 } .ask .write { display: block; min-height: 5.5mm; text-align: right }\n"
    ".ask .tick { white-space: nowrap; margin-right: 2mm } .must { border-left: 1mm solid #000; padding-left: 1.5mm }\n"
    "table { border-collapse: collapse; width: calc(100% - 1px); table-layout: fixed }\n"
    "th, td { border: 0.3mm solid #000; padding: 0.3mm 0.8mm; vertical-align: top; height: 8mm; overflow-wrap: "
    "anywhere }\n"
    "th { text-align: left; font-weight: 600 } th small { font-weight: 400 } col.what { width: 54mm }\n"
    "thead th { height: 5mm; text-align: center } .way { break-before: page }\n"
    ".ways { columns: 2; font-size: 7.5pt; margin: 1.5mm 0 0; padding: 0; list-style: none } .ways b { font-weight: "
    "600 }\n"
    "@media screen { body { padding: 4mm } small, .ways { font-size: 9pt } }\n"
    "@media screen and (max-width: 480px) { .cards, .ways { columns: 1 } col.what { width: 36mm } }\n"
    "</style>\n</head>\n<body>\n<main>\n";

static void put(const char *text)
{
    for (; *text != '\0'; text++) {
        switch (*text) {
        case '&': fputs("&amp;", stdout); break;
        case '<': fputs("&lt;", stdout); break;
        default: putchar(*text); break;
        }
    }
}

static size_t length_of_words(int question)
{
    size_t length = 0;
    for (int i = 0; *wend_question_word(question, i) != '\0'; i++) {
        length += strlen(wend_question_word(question, i)) + 3;
    }
    return length;
}

static void put_default(int question, const char *before)
{
    char *taken = wend_question_default(question, "");
    if (taken != NULL && strncmp(taken, "none", 4) != 0) {
        printf(" <small>%s", before);
        put(taken);
        fputs("</small>", stdout);
    }
    wend_text_free(taken);
}

static void put_question(int question, const struct WendQuestion *asked)
{
    printf("<div class=\"ask%s\"><b>", asked->required ? " must" : "");
    put(asked->label);
    fputs("</b> ", stdout);
    put(asked->question);
    put_default(question, "left open: ");
    fputs("<span class=\"write\">", stdout);
    for (int i = 0; i < asked->word_count; i++) {
        printf("<span class=\"tick\">\xE2\x98\x90 %s</span> ", wend_question_word(question, i));
    }
    if (asked->word_count == 0 && strcmp(asked->example, "yes/no") == 0) {
        fputs("<span class=\"tick\">\xE2\x98\x90 yes</span> <span class=\"tick\">\xE2\x98\x90 no</span>", stdout);
    }
    put(asked->unit);
    puts("</span></div>");
}

static void put_card(const char *card, const char *title)
{
    printf("<h2>%s</h2>\n", title);
    for (int i = 0; i < wend_question_count(); i++) {
        struct WendQuestion asked;
        if (wend_question(i, "", &asked) && strcmp(asked.card, card) == 0) {
            put_question(i, &asked);
        }
    }
}

static int way_question(void)
{
    struct WendQuestion asked;
    int i = 0;
    while (i < wend_question_count() && !(wend_question(i, "", &asked) && strcmp(asked.key, "way") == 0)) {
        i++;
    }
    return i;
}

/* "at duct, buried", unless it is asked everywhere. */
static void put_ways(int question)
{
    const int way = way_question();
    struct WendQuestion asked;
    int asked_at = 0, ways = 0;
    for (; *wend_question_word(way, ways) != '\0'; ways++) {
        asked_at += wend_question(question, wend_question_word(way, ways), &asked);
    }
    if (asked_at == ways) {
        return;
    }
    const bool fewer = asked_at * 2 > ways;
    fputs(fewer ? "<br><small>not at " : "<br><small>at ", stdout);
    bool first = true;
    for (int i = 0; i < ways; i++) {
        if (wend_question(question, wend_question_word(way, i), &asked) != fewer) {
            printf("%s%s", first ? "" : ", ", wend_question_word(way, i));
            first = false;
        }
    }
    fputs("</small>", stdout);
}

static void put_row(int question, const struct WendQuestion *asked)
{
    fputs("<tr><th scope=\"row\">", stdout);
    put(asked->label);
    if (*asked->unit != '\0') {
        printf(", %s", asked->unit);
    }
    if (asked->word_count > 0 && length_of_words(question) <= WORDS_SHORT) {
        fputs("<br><small>", stdout);
        for (int i = 0; i < asked->word_count; i++) {
            printf("%s%s", i == 0 ? "" : " / ", wend_question_word(question, i));
        }
        fputs("</small>", stdout);
    }
    put_ways(question);
    fputs("</th>", stdout);
    for (int i = 0; i < COLUMNS; i++) {
        fputs("<td></td>", stdout);
    }
    puts("</tr>");
}

static void put_segments(void)
{
    puts("<section class=\"way\">\n<h2>3 The way, piece by piece, from the supply</h2>\n<table>\n<colgroup><col "
         "class=\"what\">"
         "</colgroup>\n<thead><tr><th scope=\"col\">piece</th>");
    for (int i = 1; i <= COLUMNS; i++) {
        printf("<th scope=\"col\">%d</th>", i);
    }
    puts("</tr></thead>\n<tbody>");
    for (int i = 0; i < wend_question_count(); i++) {
        struct WendQuestion asked;
        if (wend_question(i, "", &asked) && strcmp(asked.card, "segment") == 0) {
            put_row(i, &asked);
        }
    }
    puts("</tbody>\n</table>\n<ul class=\"ways\">");
    const int way = way_question();
    for (int i = 0; *wend_question_word(way, i) != '\0'; i++) {
        printf("<li><b>%s</b> ", wend_question_word(way, i));
        put(wend_question_meaning(way, i));
        puts("</li>");
    }
    puts("</ul>\n</section>");
}

int run_form(const struct Options *options)
{
    if (!options->paper) {
        return options->host != NULL ? survey_page_write_host(options->host) : survey_page_write(options->out_file);
    }
    fputs(head, stdout);
    puts("<h1>Survey sheet</h1>\n<p>Measure, do not guess: what you could not see stays empty, and the plan says what "
         "it took for "
         "it. A bar at the left: the plan needs it. Between the load and the far end comes the way, overleaf; more "
         "than eight pieces: print that page again.</p>\n<div "
         "class=\"cards\">");
    put_card("supply", "1 The supply, meter in hand");
    put_card("load", "2 The load, its device and cable");
    put_card("far end", "4 The far end");
    put_card("job", "5 The job");
    puts("</div>");
    put_segments();
    puts("</main>\n</body>\n</html>");
    return 0;
}
