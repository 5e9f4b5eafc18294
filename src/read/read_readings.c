/* What was measured on each run once it was built, and what of that its run cannot have. */
#include "read_private.h"

void read_measurements(struct Reader *reader, const struct TreeEntry *run_item, struct Run *run)
{
    const struct TreeEntry *entry = fields_find(reader->readings, run_item->key->text);
    if (entry == NULL || entry->value->kind == TREE_REFUSED) {
        fields_absent(survey_fields(TABLE_READINGS), &run->measured);
        return;
    }
    const struct Spot place = {arena_print(reader->arena, "readings.%s", run_item->key->text), entry->key->mark,
                               entry->key->width};
    fields_read(reader, survey_fields(TABLE_READINGS), entry->value, place, 0, &run->measured);
    run->measured.given = true;
    run->measured.mark = place.mark;
    if (run->kind == RUN_EARTH || run->kind == RUN_DATA) {
        reader_report(reader, MSG_READINGS_NOT_POWER, entry->key,
                      DIAG_WORDS(fields_quote(reader, run_item->key->text)));
    }
}

static const struct Run *find_run(const struct Survey *survey, const char *name)
{
    for (int i = 0; i < survey->run_count; i++) {
        if (survey->runs[i].name != NULL && text_same(survey->runs[i].name, name)) {
            return &survey->runs[i];
        }
    }
    return NULL;
}

static void report_no_run(struct Reader *reader, const struct TreeNode *key, const struct Survey *survey)
{
    const char **names = arena_array(reader->arena, (size_t)survey->run_count + 1, sizeof *names);
    size_t count = 0;
    for (int i = 0; names != NULL && i < survey->run_count; i++) {
        if (survey->runs[i].name == NULL) {
            return; /* it may be that one */
        }
        names[count++] = survey->runs[i].name;
    }
    const char *near = names != NULL ? read_nearest(key->text, names, count) : "";
    const char *quoted = fields_quote(reader, key->text);
    if (*near != '\0') {
        reader_report(reader, MSG_READINGS_RUN_MISSPELT, key, DIAG_WORDS(quoted, near));
    } else {
        reader_report(reader, MSG_READINGS_RUN_UNKNOWN, key, DIAG_WORDS(quoted));
    }
}

/* A time without a device that could have had it. */
static void check_trip(struct Reader *reader, const struct TreeNode *map, const struct Survey *survey,
                       const struct Run *run)
{
    static const char *const keys[] = {"trip-time", "trip-time-5x"};
    const bool residual = run->device.residual_a.given || survey_board_residual_a(&survey->earthing, run) > 0;
    for (int i = 0; !residual && run->kind == RUN_POWER && i < 2; i++) {
        const struct TreeEntry *entry = fields_find(map, keys[i]);
        if (entry != NULL) {
            reader_report(reader, MSG_READINGS_NO_RESIDUAL, entry->key, DIAG_WORDS(keys[i]));
        }
    }
}

void read_readings(struct Reader *reader, struct Survey *survey)
{
    const struct TreeNode *readings = reader->readings;
    for (const struct TreeEntry *item = readings != NULL ? readings->first : NULL; item != NULL; item = item->next) {
        const struct Run *run = find_run(survey, item->key->text);
        survey->has_readings = true;
        if (run != NULL) {
            check_trip(reader, item->value, survey, run);
        } else if (survey->run_count > 0) {
            report_no_run(reader, item->key, survey);
        }
    }
}
