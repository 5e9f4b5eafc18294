/* --format json: one document to standard output and nothing else written. What is wrong is printed on stderr as ever.
 */
#include "cli_private.h"

#include <stdio.h>
#include <string.h>

static int put(struct WendBytes bytes, int status)
{
    if (bytes.data == NULL) {
        fputs("wend: error: there is not enough memory [out-of-memory]\n", stderr);
        return EXIT_SYSTEM;
    }
    fwrite(bytes.data, 1, bytes.length, stdout); /* main() asks ferror() at the end */
    return status;
}

int run_plan_json(const struct Options *options)
{
    struct Planned planned = plan_file(options->files[0], options);
    planned_price(&planned, options->files[0]);
    planned_labour(&planned, options->files[0], options->labour_file); /* the sheet mark is of them too */
    int status = planned.status;
    if (status <= WEND_CHECK_FAILS) {
        status = put(wend_document(planned.wend, WEND_PLAN_JSON), status);
    }
    status = with_strict(options, status, wend_verdict(planned.wend) == WEND_PASS);
    planned_free(&planned);
    return status;
}

static int check_file(const struct Options *options, int index)
{
    struct Planned planned = plan_file(options->files[index], options);
    planned_price(&planned, options->files[index]);
    planned_labour(&planned, options->files[index], options->labour_file);
    char *checked = wend_check_json(planned.wend, options->files[index]);
    int status = with_strict(options, planned.status, wend_verdict(planned.wend) == WEND_PASS);
    const size_t length = checked == NULL ? 0 : strlen(checked) - 1; /* without its line break */
    status = put((struct WendBytes){checked, length}, status);
    puts(index + 1 < options->file_count ? "," : "");
    wend_text_free(checked);
    planned_free(&planned);
    return status;
}

/* A list of an object a file. */
int run_check_json(const struct Options *options)
{
    puts("[");
    const int worst = check_each_file(options, check_file);
    puts("]");
    return worst;
}

int print_order_json(struct WendOrder *order)
{
    return put(wend_order_document(order, WEND_ORDER_JSON), (int)wend_order_status(order));
}
