/* A run's device and cable: what their keys demand of each other, told at the key that is at fault. */
#include "read_private.h"

#include <math.h>

static bool is_breaker(enum DeviceKind kind)
{
    return kind == DEVICE_MCB || kind == DEVICE_RCBO;
}

void read_device(struct Reader *reader, const struct TreeNode *map, struct Spot place, struct Device *device)
{
    fields_read(reader, survey_fields(TABLE_DEVICE), map, place, 0, device);
    device->given = map != NULL;
    device->mark = place.mark;
    if (map != NULL && map->kind != TREE_MAP) {
        return;
    }
    const struct TreeEntry *curve = fields_find(map, "curve");
    if (curve == NULL && is_breaker(device->kind)) {
        device->curve = CURVE_B;
        reader_assume(reader, (struct Assumed){.where = reader_path(reader, place.path, "curve"),
                                               .what = ASSUMED_CURVE,
                                               .word = CURVE_B});
    }
}

static void check_type(struct Reader *reader, const struct TreeNode *map, struct Run *run)
{
    struct Cable *cable = &run->cable;
    const struct TreeEntry *type = fields_find(map, "type");
    if (type == NULL || cable->type == CABLE_COUNT || survey_cable_run(cable->type) == run->kind) {
        return;
    }
    reader_report(reader, MSG_CABLE_FOR_OTHER_KIND, type->value,
                  DIAG_WORDS(survey_word(WORDS_CABLE, (int)cable->type),
                             survey_word(WORDS_RUN_KIND, (int)survey_cable_run(cable->type)),
                             survey_word(WORDS_RUN_KIND, (int)run->kind)));
    cable->type = CABLE_COUNT; /* what depends on it is not reported */
}

static void fill_cores(struct Reader *reader, const struct TreeNode *map, struct Spot place, struct Cable *cable)
{
    if (fields_find(map, "cores") != NULL || cable->type == CABLE_COUNT) {
        return;
    }
    if (cable->type == CABLE_BS6004_FLAT) { /* the one kind that is sold with one number of cores */
        cable->cores = DEFAULT_FLAT_CORES;
        reader_assume(reader, (struct Assumed){.where = reader_path(reader, place.path, "cores"),
                                               .what = ASSUMED_CORES,
                                               .value = DEFAULT_FLAT_CORES});
        return;
    }
    diag_report(reader->diag, MSG_KEY_MISSING, place.mark, place.width,
                DIAG_WORDS(fields_quote(reader, place.path), "cores", "cores in total"));
    cable->cores = -1;
}

static void check_armour(struct Reader *reader, const struct TreeNode *map, const struct Cable *cable)
{
    const struct TreeEntry *cpc = fields_find(map, "cpc");
    bool needs_armour = cable->cpc == CPC_ARMOUR || cable->cpc == CPC_CORE_AND_ARMOUR;
    if (cpc != NULL && needs_armour && cable->type != CABLE_COUNT && !survey_armoured(cable->type)) {
        reader_report(reader, MSG_CPC_WITHOUT_ARMOUR, cpc->value,
                      DIAG_WORDS(survey_word(WORDS_CABLE, (int)cable->type)));
    }
}

static void check_earth_size(struct Reader *reader, const struct TreeNode *map, const struct Run *run)
{
    const struct TreeEntry *size = fields_find(map, "size");
    if (run->kind == RUN_EARTH && size != NULL && !run->cable.size_mm2.given && !isnan(run->cable.size_mm2.value)) {
        reader_report(reader, MSG_EARTH_SIZE, size->value, DIAG_NO_WORDS);
    }
}

void read_cable(struct Reader *reader, const struct TreeNode *map, struct Spot place, struct Run *run)
{
    struct Cable *cable = &run->cable;
    if (map == NULL) {
        fields_unknown(survey_fields(TABLE_CABLE), cable); /* that it is missing was told with the run */
        return;
    }
    fields_read(reader, survey_fields(TABLE_CABLE), map, place, 1U << run->kind, cable);
    cable->mark = place.mark;
    if (map->kind != TREE_MAP) {
        return;
    }
    check_type(reader, map, run);
    if (run->kind == RUN_POWER) {
        fill_cores(reader, map, place, cable);
        check_armour(reader, map, cable);
    } else {
        cable->cpc = CPC_NONE;
    }
    check_earth_size(reader, map, run);
    const struct TreeEntry *diameter = fields_find(map, "diameter");
    if (diameter != NULL && cable->type == CABLE_BS5467 && cable->diameter_mm.given) {
        reader_report(reader, MSG_DIAMETER_IGNORED, diameter->key, DIAG_NO_WORDS);
    }
}

static const char *run_name(const void *list, size_t index)
{
    const struct Run *runs = list;
    return runs[index].name;
}

static void find_named(struct Reader *reader, const struct TreeNode *node, struct Run *run, const struct Run *runs,
                       int count)
{
    const char *name = fields_text(reader, "cpc-run", node, 60, true);
    if (name == NULL) {
        return;
    }
    for (int i = 0; i < count; i++) {
        if (runs[i].name == NULL || !text_same(runs[i].name, name)) {
            continue;
        }
        if (runs[i].kind != RUN_EARTH && runs[i].kind != RUN_KIND_COUNT) {
            reader_report(reader, MSG_CPC_RUN_NOT_EARTH, node, DIAG_WORDS(fields_quote(reader, name)));
        }
        run->cable.cpc_run = i;
        return;
    }
    const char *near = suggest_near(name, runs, (size_t)count, run_name);
    if (near != NULL) {
        reader_report(reader, MSG_CPC_RUN_MISSPELT, node, DIAG_WORDS(fields_quote(reader, name), near));
    } else {
        reader_report(reader, MSG_CPC_RUN_UNKNOWN, node, DIAG_WORDS(fields_quote(reader, name)));
    }
}

void read_cpc_run(struct Reader *reader, const struct TreeNode *cable, const char *path, struct Run *run,
                  const struct Run *runs, int count)
{
    const struct TreeEntry *named = fields_find(cable, "cpc-run");
    if (run->cable.cpc != CPC_SEPARATE) {
        return;
    }
    if (named != NULL) {
        find_named(reader, named->value, run, runs, count);
        return;
    }
    int only = -1;
    int earths = 0;
    for (int i = 0; i < count; i++) {
        if (runs[i].kind == RUN_EARTH || runs[i].kind == RUN_KIND_COUNT) {
            only = i;
            earths++;
        }
    }
    if (earths == 1 && runs[only].kind == RUN_EARTH && runs[only].name != NULL) {
        run->cable.cpc_run = only;
        reader_assume(reader, (struct Assumed){.where = reader_path(reader, path, "cpc-run"), .what = ASSUMED_CPC_RUN});
    } else if (earths != 1) {
        reader_report(reader, MSG_CPC_RUN_MISSING, fields_find(cable, "cpc")->value, DIAG_NO_WORDS);
    }
}
