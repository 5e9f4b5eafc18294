/* The work of a plan, on standard output; nothing is written. */
#include "cli_private.h"

#include <stdio.h>

int run_day(const struct Options *options)
{
    struct Planned planned = plan_file(options->files[0], options);
    planned_labour(&planned, options->files[0], options->labour_file);
    int status = planned.status;
    if (status <= WEND_CHECK_FAILS) {
        const struct WendDay day = {options->hands, options->seed, options->date};
        const enum WendDayForm form = options->json ? WEND_DAY_JSON : options->ics ? WEND_DAY_ICALENDAR : WEND_DAY_TEXT;
        const struct WendBytes text = wend_day(planned.wend, &day, form);
        if (text.data != NULL) {
            fwrite(text.data, 1, text.length, stdout); /* main() asks ferror() at the end */
            status = with_strict(options, status, wend_verdict(planned.wend) == WEND_PASS);
        } else if (options->ics && wend_status(planned.wend) <= WEND_CHECK_FAILS) {
            fprintf(stderr, "wend: error: no calendar is made without an order of work and the time of every task, nor "
                            "of more than 366 days or beyond the year 9999; see wend day FILE\n");
            status = EXIT_USAGE;
        } else {
            status = report_not_made();
        }
    }
    planned_free(&planned);
    return status;
}
