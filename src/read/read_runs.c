/* The runs of a route: each by its table, its loads, and the segments that it follows. */
#include "read_private.h"

#include <math.h>
#include <string.h>

enum { LOADS_MOST = 100, NAME_LONGEST = 60, RUNS_MOST = 50 };

static const char *name_of(const void *list, size_t index)
{
    const struct SegmentNames *names = list;
    return names->segments[names->sorted[index]].name;
}

int read_segment_named(const struct SegmentNames *names, const char *name)
{
    int low = 0;
    int high = names->count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (text_order_seen(name_of(names, (size_t)middle), name) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    bool found = low < names->count && text_order_seen(name_of(names, (size_t)low), name) == 0;
    return found ? names->sorted[low] : -1;
}

static void report_no_segment(struct Reader *reader, const struct SegmentNames *names, const struct TreeNode *node)
{
    if (!names->complete) {
        return; /* it may be the one whose name could not be read */
    }
    const char *near =
        diag_errors(reader->diag) > DIAG_LIMIT ? NULL : suggest_near(node->text, names, (size_t)names->count, name_of);
    const char *quoted = fields_quote(reader, node->text);
    if (near != NULL) {
        reader_report(reader, MSG_ALONG_MISSPELT, node, DIAG_WORDS(quoted, near));
    } else {
        reader_report(reader, MSG_ALONG_UNKNOWN, node, DIAG_WORDS(quoted));
    }
}

struct AlongWalk {
    struct Reader *reader;
    const struct SegmentNames *names;
    bool *followed;
    int *along;
    int count;
    bool order_told;
    bool spoilt; /* a name in it was no good */
};

static void follow(struct AlongWalk *walk, const struct TreeNode *node)
{
    const char *name = fields_text(walk->reader, "along", node, NAME_LONGEST, true);
    if (name == NULL) {
        walk->spoilt = true;
        return;
    }
    int index = read_segment_named(walk->names, name);
    if (index < 0) {
        walk->spoilt = true;
        report_no_segment(walk->reader, walk->names, node);
        return;
    }
    if (walk->followed[index]) {
        reader_report(walk->reader, MSG_ALONG_TWICE, node, DIAG_WORDS(fields_quote(walk->reader, name)));
        return;
    }
    if (walk->count > 0 && walk->along[walk->count - 1] > index && !walk->order_told) {
        walk->order_told = true;
        reader_report(walk->reader, MSG_ALONG_ORDER, node, DIAG_WORDS(fields_quote(walk->reader, name)));
    }
    walk->followed[index] = true;
    walk->along[walk->count++] = index;
}

static void follow_all(struct Reader *reader, int count, struct Run *run)
{
    int *along = arena_array(reader->arena, (size_t)count + 1, sizeof *along);
    for (int i = 0; i < count && along != NULL; i++) {
        along[i] = i;
    }
    run->along = along;
    run->along_count = along != NULL ? count : 0;
    run->along_rises = true;
}

void read_along(struct Reader *reader, const struct TreeEntry *entry, const struct SegmentNames *names,
                int segment_count, struct Run *run)
{
    if (entry == NULL) {
        follow_all(reader, segment_count, run);
        return;
    }
    if (entry->value->kind == TREE_REFUSED) {
        return;
    }
    if (entry->value->kind != TREE_LIST || entry->value->count == 0) {
        reader_report(reader, MSG_ALONG_NOT_LIST, entry->key, DIAG_NO_WORDS);
        return;
    }
    struct AlongWalk walk = {.reader = reader, .names = names};
    walk.followed = arena_array(reader->arena, (size_t)segment_count + 1, sizeof *walk.followed);
    walk.along = arena_array(reader->arena, (size_t)entry->value->count, sizeof *walk.along);
    if (walk.followed == NULL || walk.along == NULL) {
        return;
    }
    for (const struct TreeEntry *item = entry->value->first; item != NULL; item = item->next) {
        follow(&walk, item->value);
    }
    run->along = walk.spoilt ? NULL : walk.along;
    run->along_count = walk.spoilt ? 0 : walk.count;
    run->along_rises = !walk.order_told;
}

static void check_load(struct Reader *reader, const struct TreeNode *map, struct Spot place, struct Load *load)
{
    const struct TreeEntry *power = fields_find(map, "power");
    if (power != NULL && load->power_w.given) {
        load->power_is_apparent = quantity_read(reader->arena, power->value->text, MEASURE_WATT).apparent;
    }
    if (load->power_w.given && !load->power_is_apparent && fields_find(map, "power-factor") == NULL) {
        load->power_factor.value = 1;
        reader_assume(reader, (struct Assumed){.where = reader_path(reader, place.path, "power-factor"),
                                               .what = ASSUMED_POWER_FACTOR,
                                               .value = 1});
    }
}

static void read_load(struct Reader *reader, const struct TreeNode *map, struct Spot place, int supply_phases,
                      struct Load *load)
{
    fields_read(reader, survey_fields(TABLE_LOAD), map, place, 0, load);
    load->mark = place.mark;
    if (map->kind != TREE_MAP) {
        return;
    }
    check_load(reader, map, place, load);
    const struct TreeEntry *phases = fields_find(map, "phases");
    if (phases == NULL) {
        load->phases = supply_phases;
    } else if (load->phases == 3 && supply_phases == 1) {
        reader_report(reader, MSG_LOAD_PHASES, phases->value, DIAG_NO_WORDS);
        load->phases = -1; /* what depends on it is not reported */
    }
}

static void read_loads(struct Reader *reader, const struct TreeEntry *entry, const char *path, int supply_phases,
                       struct Run *run)
{
    const struct TreeNode *node = entry->value;
    bool list = node->kind == TREE_LIST;
    int count = list ? node->count : 1;
    if (list && (count == 0 || count > LOADS_MOST)) {
        if (count == 0) {
            reader_report(reader, MSG_VALUE_EMPTY, entry->key, DIAG_WORDS("load"));
        } else {
            reader_report_long(reader, entry->key, LOADS_MOST);
        }
        return;
    }
    struct Load *loads = arena_array(reader->arena, (size_t)count, sizeof *loads);
    if (loads == NULL) {
        return;
    }
    const char *load_path = reader_path(reader, path, "load");
    if (!list) {
        struct Spot place = {load_path, entry->key->mark, entry->key->width};
        read_load(reader, node, place, supply_phases, &loads[0]);
    }
    int number = 0;
    for (const struct TreeEntry *item = list ? node->first : NULL; item != NULL; item = item->next) {
        struct Spot place = {arena_print(reader->arena, "%s[%d]", load_path, number + 1), item->value->mark,
                             item->value->width};
        read_load(reader, item->value, place, supply_phases, &loads[number++]);
    }
    run->loads = loads;
    run->load_count = count;
}

static void read_drop_limit(struct Reader *reader, const struct TreeNode *map, const char *path, struct Run *run)
{
    if (run->use == USE_COUNT || fields_find(map, "drop-limit") != NULL) {
        return;
    }
    bool lighting = run->use == USE_LIGHTING;
    run->drop_limit_percent.value = lighting ? DEFAULT_DROP_LIMIT_LIGHTING_PERCENT : DEFAULT_DROP_LIMIT_PERCENT;
    reader_assume(reader, (struct Assumed){.where = reader_path(reader, path, "drop-limit"),
                                           .what = lighting ? ASSUMED_DROP_LIMIT_LIGHTING : ASSUMED_DROP_LIMIT,
                                           .value = run->drop_limit_percent.value});
}

static struct Spot place_of(struct Reader *reader, const char *path, const struct TreeEntry *entry,
                            const struct TreeNode *key)
{
    const struct TreeNode *at = entry != NULL ? entry->key : key;
    const char *name = entry != NULL ? reader_path(reader, path, entry->key->text) : path;
    return (struct Spot){name, at->mark, at->width};
}

static void read_power(struct Reader *reader, const struct TreeEntry *item, const char *path, int supply_phases,
                       struct Run *run)
{
    const struct TreeEntry *load = fields_find(item->value, "load");
    if (load != NULL) {
        read_loads(reader, load, path, supply_phases, run);
    }
    const struct TreeEntry *device = fields_find(item->value, "device");
    struct Spot place = place_of(reader, path, device, item->key);
    place.path = reader_path(reader, path, "device");
    read_device(reader, device != NULL ? device->value : NULL, place, &run->device);
}

/* Left out, an end makes one assumption, not four. */
static void read_end(struct Reader *reader, const struct TreeEntry *item, const char *path, bool start, struct End *end)
{
    const char *key = start ? "start" : "finish";
    const struct TreeEntry *entry = fields_find(item->value, key);
    struct Spot place = place_of(reader, path, entry, item->key);
    place.path = reader_path(reader, path, key);
    end->mark = place.mark;
    int assumed_before = reader->assumed_count;
    fields_read(reader, survey_fields(TABLE_END), entry != NULL ? entry->value : NULL, place, 0, end);
    if (entry == NULL) {
        reader->assumed_count = assumed_before;
        reader_assume(reader, (struct Assumed){.where = place.path, .what = start ? ASSUMED_START : ASSUMED_FINISH});
    }
}

static void read_run(struct Reader *reader, const struct TreeEntry *item, const struct SegmentNames *names,
                     const struct Survey *survey, struct Run *run)
{
    const char *path = arena_print(reader->arena, "runs.%s", item->key->text);
    unsigned context = fields_context(item->value, "kind", WORDS_RUN_KIND, 1U << RUN_POWER);
    struct Spot place = {path, item->key->mark, item->key->width};
    run->name = fields_text(reader, "a run's name", item->key, NAME_LONGEST, true);
    run->mark = item->key->mark;
    run->cable.cpc_run = -1;
    fields_read(reader, survey_fields(TABLE_RUN), item->value, place, context, run);
    if (item->value->kind != TREE_MAP || run->kind == RUN_KIND_COUNT) {
        fields_unknown(survey_fields(TABLE_CABLE), &run->cable);
        return;
    }
    if (run->kind == RUN_POWER) {
        read_power(reader, item, path, survey->supply.phases, run);
    }
    const struct TreeEntry *cable = fields_find(item->value, "cable");
    struct Spot cable_place = place_of(reader, path, cable, item->key);
    read_cable(reader, cable != NULL ? cable->value : NULL, cable_place, run);
    if (run->kind == RUN_POWER) {
        read_drop_limit(reader, item->value, path, run);
    }
    read_along(reader, fields_find(item->value, "along"), names, survey->segment_count, run);
    read_end(reader, item, path, true, &run->start);
    read_end(reader, item, path, false, &run->finish);
    read_measurements(reader, item, run);
}

static bool have_power(const struct Run *runs, int count)
{
    for (int i = 0; i < count; i++) {
        if (runs[i].kind == RUN_POWER || runs[i].kind == RUN_KIND_COUNT) {
            return true;
        }
    }
    return false;
}

static void read_all(struct Reader *reader, const struct TreeEntry *entry, const struct SegmentNames *names,
                     struct Survey *survey, struct Run *runs)
{
    int count = 0;
    for (const struct TreeEntry *item = entry->value->first; item != NULL; item = item->next) {
        reader->subject = DIAG_RUN(count);
        read_run(reader, item, names, survey, &runs[count++]);
    }
    count = 0;
    for (const struct TreeEntry *item = entry->value->first; item != NULL; item = item->next, count++) {
        const struct TreeEntry *cable = fields_find(item->value, "cable");
        reader->subject = DIAG_RUN(count);
        if (cable != NULL && runs[count].kind == RUN_POWER) {
            read_cpc_run(reader, cable->value, arena_print(reader->arena, "runs.%s.cable", item->key->text),
                         &runs[count], runs, entry->value->count);
        }
    }
    reader->subject = (struct DiagSubject){DIAG_OF_FILE, 0};
    if (!have_power(runs, count)) {
        reader_report(reader, MSG_NO_POWER_RUN, entry->key, DIAG_NO_WORDS);
    }
    survey->runs = runs;
    survey->run_count = count;
}

void read_runs(struct Reader *reader, const struct TreeEntry *entry, const struct SegmentNames *names,
               struct Survey *survey)
{
    if (entry == NULL || entry->value->kind == TREE_REFUSED) {
        return;
    }
    if (entry->value->kind != TREE_MAP || entry->value->count == 0) {
        reader_report(reader, MSG_RUNS_NOT_MAPPING, entry->key, DIAG_NO_WORDS);
        return;
    }
    if (entry->value->count > RUNS_MOST) {
        reader_report_long(reader, entry->key, RUNS_MOST);
        return;
    }
    struct Run *runs = arena_array(reader->arena, (size_t)entry->value->count, sizeof *runs);
    if (runs != NULL) {
        read_all(reader, entry, names, survey, runs);
    }
}
