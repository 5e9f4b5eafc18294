/* What is asked around a plan, answered on standard output; nothing is written. */
#include "cli_private.h"

#include <stdio.h>

static void put(struct WendBytes text)
{
    fwrite(text.data, 1, text.length, stdout); /* main() asks ferror() at the end */
}

/* An answer to standard output; what is wrong with the question, to standard error. */
static int print_answer(struct Planned *planned, const struct WendAnswer *answer, const struct Options *options)
{
    int status = planned->status;
    if (status <= WEND_CHECK_FAILS) {
        const struct WendBytes text = wend_answer_text(answer);
        status = (int)wend_answer_status(answer);
        fputs(wend_diagnostics_printed(wend_answer_diagnostics(answer), "wend"), stderr);
        if (text.data != NULL) {
            put(text);
        } else if (status == WEND_NO_MEMORY) {
            fputs("wend: error: there is not enough memory [out-of-memory]\n", stderr);
        }
    }
    return with_strict(options, status, wend_verdict(planned->wend) == WEND_PASS);
}

int run_question(const struct Options *options)
{
    struct Planned planned = plan_file(options->files[0], options);
    const struct WendAnswer *answer = NULL;
    if (options->command == COMMAND_OPTIONS) {
        planned_price(&planned, options->files[0]);
    }
    switch (options->command) {
    case COMMAND_REACH: answer = wend_reach(planned.wend); break;
    case COMMAND_OPTIONS: answer = wend_options(planned.wend, options->run, options->growth_percent); break;
    case COMMAND_DECIDES: answer = wend_decides(planned.wend); break;
    default: answer = wend_explain(planned.wend, options->check, options->run); break;
    }
    const int status = print_answer(&planned, answer, options);
    planned_free(&planned);
    return status;
}

static enum WendDiffForm form_of(const struct Options *options)
{
    return options->json ? WEND_DIFF_JSON : options->csv ? WEND_DIFF_CSV : WEND_DIFF_TEXT;
}

int run_diff(const struct Options *options)
{
    struct Planned old = plan_file(options->files[0], options);
    struct Planned now = plan_file(options->files[1], options);
    int status = now.status > old.status ? now.status : old.status;
    if (status <= WEND_CHECK_FAILS) {
        const struct WendBytes text = wend_diff(old.wend, now.wend, form_of(options));
        status = text.data != NULL ? now.status : report_not_made();
        if (text.data != NULL) {
            put(text);
        }
    }
    planned_free(&old);
    planned_free(&now);
    return status;
}

int run_readings(const struct Options *options)
{
    struct Planned planned = plan_file(options->files[0], options);
    int status = planned.status;
    if (status <= WEND_CHECK_FAILS) {
        const struct WendBytes text = wend_readings(planned.wend, form_of(options));
        const enum WendVerdict verdict = wend_readings_verdict(planned.wend);
        status = text.data == NULL ? report_not_made() : verdict == WEND_FAIL ? WEND_CHECK_FAILS : WEND_PASSES;
        if (text.data != NULL) {
            put(text);
        }
        status = with_strict(options, status, verdict == WEND_PASS);
    }
    planned_free(&planned);
    return status;
}
