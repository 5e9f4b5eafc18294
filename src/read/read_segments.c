/* The segments of a route: each by its table, bends, conditions taken over, and the assumptions that would be the same
 * line for many segments, grouped. */
#include "field_values_private.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { BENDS_MOST = 100 };

/* An assumption that many segments may share. */
enum Shared {
    SHARED_TIMBER,
    SHARED_SHADED,
    SHARED_LAID_NEW,
    SHARED_BUNCHED,
    SHARED_ALIKE,
    SHARED_CEILING,
    SHARED_DEPTH,
    SHARED_COUNT
};

static const struct {
    const char *key;
    enum AssumedWhat what;
} shared_kinds[SHARED_COUNT] = {
    [SHARED_TIMBER] = {"fixed-to", ASSUMED_TIMBER},
    [SHARED_SHADED] = {"sun", ASSUMED_SHADED},
    [SHARED_LAID_NEW] = {"duct.laid", ASSUMED_NEW_DUCT},
    [SHARED_BUNCHED] = {"beside.arrangement", ASSUMED_BESIDE_BUNCHED},
    [SHARED_ALIKE] = {"beside.unlike", ASSUMED_BESIDE_ALIKE},
    [SHARED_CEILING] = {"insulation", ASSUMED_ONE_SIDE},
    [SHARED_DEPTH] = {"depth", ASSUMED_DEPTH},
};

struct SegmentsWalk {
    struct Reader *reader;
    struct Survey *survey;
    struct Segment *segments;
    int count;
    unsigned char *shared; /* a bit for each Shared, a byte for each segment */
};

static void note_shared(struct SegmentsWalk *walk, int index, enum Shared shared)
{
    walk->shared[index] = (unsigned char)(walk->shared[index] | 1U << (unsigned)shared);
}

static void assume_shared(struct SegmentsWalk *walk, enum Shared shared)
{
    struct Arena *arena = walk->reader->arena;
    int *segments = arena_array(arena, (size_t)walk->count + 1, sizeof *segments);
    int count = 0;
    for (int i = 0; i < walk->count && segments != NULL; i++) {
        if ((walk->shared[i] & 1U << (unsigned)shared) != 0 && walk->segments[i].name != NULL) {
            segments[count++] = i;
        }
    }
    if (count > 0) {
        const char *key = shared_kinds[shared].key;
        reader_assume(walk->reader,
                      (struct Assumed){.where = count > 1 ? arena_print(arena, "segments.%s", key)
                                                          : arena_print(arena, "segments.%s.%s",
                                                                        walk->segments[segments[0]].name, key),
                                       .what = shared_kinds[shared].what,
                                       .segment_count = count,
                                       .segments = segments});
    }
}

static void fill_right_angles(struct Segment *segment, struct Bend *bends, int count, struct Mark mark)
{
    for (int i = 0; i < count; i++) {
        bends[i] = (struct Bend){.mark = mark, .angle_deg = 90};
    }
    segment->bends = bends;
    segment->bend_count = count;
}

static void read_bend_number(struct Reader *reader, const struct TreeEntry *entry, struct Segment *segment)
{
    struct QuantityRead read = quantity_read(reader->arena, entry->value->text, MEASURE_NONE);
    double number = read.value;
    if (fields_node_empty(entry->value)) {
        reader_report(reader, MSG_VALUE_EMPTY, entry->value, DIAG_WORDS("bends"));
        return;
    }
    if (read.fault != QUANTITY_GOOD || number < 0 || number > BENDS_MOST || number > floor(number)) {
        reader_report(reader, MSG_BENDS_FORM, entry->value, DIAG_WORDS(fields_quote(reader, entry->value->text)));
        return;
    }
    struct Bend *bends = arena_array(reader->arena, (size_t)number + 1, sizeof *bends);
    if (bends != NULL) {
        fill_right_angles(segment, bends, (int)number, entry->value->mark);
    }
}

static void read_bends(struct Reader *reader, const struct TreeEntry *entry, const char *path, struct Segment *segment)
{
    const struct TreeNode *node = entry->value;
    if (node->kind == TREE_SCALAR) {
        read_bend_number(reader, entry, segment);
        return;
    }
    if (node->kind != TREE_LIST) {
        if (node->kind == TREE_MAP) {
            reader_report(reader, MSG_BENDS_FORM, node, DIAG_WORDS("a mapping"));
        }
        return;
    }
    if (node->count > BENDS_MOST) {
        reader_report_long(reader, entry->key, BENDS_MOST);
        return;
    }
    struct Bend *bends = arena_array(reader->arena, (size_t)node->count + 1, sizeof *bends);
    if (bends == NULL) {
        return;
    }
    int number = 0;
    for (const struct TreeEntry *item = node->first; item != NULL; item = item->next, number++) {
        struct BendRead read = {.angle_deg = {.given = false}};
        struct Spot place = {arena_print(reader->arena, "%s.bends[%d]", path, number + 1), item->value->mark, 1};
        fields_read(reader, survey_fields(TABLE_BEND), item->value, place, 0, &read);
        bends[number] =
            (struct Bend){.mark = item->value->mark, .angle_deg = read.angle_deg.value, .radius_m = read.radius_m};
    }
    segment->bends = bends;
    segment->bend_count = number;
}

/* An angle written where a number of right angles is expected. */
static void warn_of_many_bends(struct Reader *reader, const struct TreeNode *node, const struct Segment *segment)
{
    const int count = segment->bend_count;
    const bool more_than_one_a_metre = count > 8 && segment->length_m.given && count > segment->length_m.value;
    if (node->kind == TREE_SCALAR && (more_than_one_a_metre || (count >= 30 && count % 15 == 0))) {
        reader_report(reader, MSG_BENDS_MANY, node,
                      DIAG_WORDS(node->text, quantity_show(reader->arena, segment->length_m.value, MEASURE_METRE),
                                 node->text, node->text));
    }
}

static void take_over(struct Quantity *own, const struct Quantity *general)
{
    if (!own->given && !isnan(own->value)) {
        own->value = general->value;
    }
}

static bool left_out(const struct TreeNode *map, const char *key)
{
    return fields_find(map, key) == NULL;
}

static void fill_defaults(struct SegmentsWalk *walk, const struct TreeNode *map, int index)
{
    struct Segment *segment = &walk->segments[index];
    enum Way way = segment->way;
    take_over(&segment->air_degc, &walk->survey->conditions.air_degc);
    take_over(&segment->ground_degc, &walk->survey->conditions.ground_degc);
    take_over(&segment->soil_thermal_k_m_per_w, &walk->survey->conditions.soil_thermal_k_m_per_w);
    take_over(&segment->insulated_length_m, &segment->length_m);
    if (survey_way(way)->on_timber && left_out(map, "fixed-to")) {
        segment->fixed_to = SURFACE_TIMBER;
        note_shared(walk, index, SHARED_TIMBER);
    }
    if (survey_outside(segment) && left_out(map, "sun")) {
        note_shared(walk, index, SHARED_SHADED);
    }
    /* a ceiling alone has its insulation's thickness written with it */
    if (way == WAY_CEILING && segment->thickness_m.given && left_out(map, "insulation")) {
        segment->insulation = INSULATION_ONE_SIDE;
        note_shared(walk, index, SHARED_CEILING);
    }
    const struct TreeEntry *duct = fields_find(map, "duct");
    if (survey_duct(way) && (duct == NULL || left_out(duct->value, "laid"))) {
        note_shared(walk, index, SHARED_LAID_NEW);
    }
    if (survey_in_ground(way) && left_out(map, "depth")) {
        note_shared(walk, index, SHARED_DEPTH);
    }
    const struct TreeEntry *beside = fields_find(map, "beside");
    if (beside != NULL && left_out(beside->value, "arrangement")) {
        note_shared(walk, index, SHARED_BUNCHED);
    }
    const bool clear = segment->beside.arrangement == ARRANGEMENT_SPACED && !survey_in_ground(way);
    if (beside != NULL && !clear && left_out(beside->value, "unlike")) {
        note_shared(walk, index, SHARED_ALIKE);
    }
}

/* What lies more than that further apart than was laid, or less, is no slip of a metre: common practice, no source. */
static const double marks_slack_m = 1;

/* Metre marks further apart than what was laid would be cable that no figure counts. */
static void check_metre_marks(struct Reader *reader, const struct Segment *segment)
{
    const struct AsLaid *laid = &segment->as_laid;
    const double apart_m = fabs(laid->metre_end_m.value - laid->metre_start_m.value);
    const double legs_m = survey_in_ground(segment->way) ? 2 * segment->depth_m.value : 0;
    const double length_m = segment->length_m.value;
    if (laid->metre_start_m.given && laid->metre_end_m.given &&
        (apart_m > length_m + legs_m + marks_slack_m || apart_m < length_m - marks_slack_m)) {
        reader_report_mark(reader, MSG_AS_LAID_MARKS, laid->metre_end_m.mark,
                           DIAG_WORDS(quantity_show(reader->arena, apart_m, MEASURE_METRE),
                                      quantity_show(reader->arena, length_m, MEASURE_METRE)));
    }
}

static void note_laid(struct Reader *reader, int index, struct Segment *segment)
{
    const struct AsLaidWas *was = reader->before_laid != NULL ? &reader->before_laid[index] : NULL;
    segment->as_laid.was_way = was != NULL && was->way >= 0 ? (enum Way)was->way : WAY_COUNT;
    segment->as_laid.was_length = was != NULL ? was->length : NULL;
    segment->as_laid.was_depth = was != NULL ? was->depth : NULL;
    check_metre_marks(reader, segment);
}

static const struct Field *photo_field(void)
{
    const struct FieldTable *table = survey_fields(TABLE_SEGMENT);
    int i = 0;
    while (!text_same(table->fields[i].key, "photo")) {
        i++;
    }
    return &table->fields[i];
}

/* A name, or a list of them. */
static void read_photos(struct Reader *reader, const struct TreeEntry *entry, struct Segment *segment)
{
    const struct TreeNode *node = entry->value;
    const struct Field *field = photo_field();
    if (node->kind == TREE_LIST && (node->count == 0 || node->count > field->list_most)) {
        reader_report_long(reader, entry->key, field->list_most);
        return;
    }
    const char **photos = arena_array(reader->arena, node->kind == TREE_LIST ? (size_t)node->count : 1, sizeof *photos);
    const struct TreeEntry alone = {.key = entry->key, .value = node};
    const struct TreeEntry *item = node->kind == TREE_LIST ? node->first : &alone;
    for (; photos != NULL && item != NULL; item = item->next) {
        const struct TreeEntry one = {.key = entry->key, .value = item->value};
        const char *name = NULL;
        field_value_read(reader, field->item, &one, &name);
        if (name != NULL && *name != '\0') {
            photos[segment->photo_count++] = name;
        }
    }
    segment->photos = photos;
}

/* A length that nobody measured is ordered by nobody. */
static void warn_of_length(struct Reader *reader, const struct TreeNode *map, const struct Segment *segment, int index)
{
    const struct TreeEntry *key = fields_find(map, segment->measure_again ? "measure-again" : "how-measured");
    if (key != NULL && survey_to_measure(segment) && segment->name != NULL) {
        diag_report_of(
            reader->diag, DIAG_SEGMENT(index), MSG_MEASURE_AGAIN, key->key->mark, key->key->width,
            DIAG_WORDS(segment->name, diag_phrase(segment->measure_again                ? PHRASE_MARKED_SO
                                                  : segment->measured == MEASURED_PACED ? PHRASE_WAS_PACED
                                                                                        : PHRASE_WAS_GUESSED)));
    }
}

static void read_segment(struct SegmentsWalk *walk, const struct TreeNode *map, int index)
{
    struct Segment *segment = &walk->segments[index];
    struct Reader *reader = walk->reader;
    const struct TreeEntry *name = fields_find(map, "name");
    bool named = name != NULL && name->value->kind == TREE_SCALAR && name->value->length > 0;
    const char *path = named ? reader_path(reader, "segments", name->value->text)
                             : arena_print(reader->arena, "segments[%d]", index + 1);
    struct Spot place = {path, named ? name->value->mark : map->mark, named ? name->value->width : map->width};
    unsigned context = fields_context(map, "way", WORDS_WAY, 0);
    fields_read(reader, survey_fields(TABLE_SEGMENT), map, place, context, segment);
    segment->mark = place.mark;
    if (map->kind != TREE_MAP) {
        return;
    }
    const struct TreeEntry *bends = fields_find(map, "bends");
    if (bends != NULL) {
        read_bends(reader, bends, path, segment);
        warn_of_many_bends(reader, bends->value, segment);
    }
    const struct TreeEntry *sun = fields_find(map, "sun");
    if (sun != NULL && segment->shelter == SHELTER_INSIDE && segment->sun == SUN_FULL) {
        reader_report(reader, MSG_SUN_INSIDE, sun->value, DIAG_NO_WORDS);
    }
    const struct TreeEntry *marks = fields_find(map, "marks");
    if (marks != NULL) {
        read_landmarks(reader, marks, path, segment);
    }
    const struct TreeEntry *photo = fields_find(map, "photo");
    if (photo != NULL) {
        read_photos(reader, photo, segment);
    }
    warn_of_length(reader, map, segment, index);
    const struct TreeEntry *beside = fields_find(map, "beside");
    segment->beside.mark = beside != NULL ? beside->key->mark : segment->mark;
    fill_defaults(walk, map, index);
    note_laid(reader, index, segment);
}

static const char *name_at(const struct Segment *segments, int index)
{
    return segments[index].name;
}

/* Merge sort: qsort has no place for the list that the indexes point into. */
static void sort_names(const struct Segment *segments, int *list, int *spare, int count)
{
    for (int width = 1; width < count; width *= 2) {
        for (int start = 0; start < count; start += 2 * width) {
            int middle = start + width < count ? start + width : count;
            int end = middle + width < count ? middle + width : count;
            int left = start;
            int right = middle;
            for (int at = start; at < end; at++) {
                bool take_left = left < middle &&
                                 (right >= end ||
                                  text_order_seen(name_at(segments, list[left]), name_at(segments, list[right])) <= 0);
                spare[at] = take_left ? list[left++] : list[right++];
            }
        }
        memcpy(list, spare, (size_t)count * sizeof *list);
    }
}

static void report_name_twice(struct SegmentsWalk *walk, const int *sorted, int count)
{
    int first = 0;
    for (int i = 1; i < count; i++) {
        const struct Segment *segment = &walk->segments[sorted[i]];
        const struct Segment *before = &walk->segments[sorted[first]];
        if (text_order_seen(segment->name, before->name) != 0) {
            first = i;
            continue;
        }
        const char *line = arena_print(walk->reader->arena, "%d", before->mark.line);
        reader_report_mark(walk->reader, MSG_SEGMENT_TWICE, segment->mark,
                           DIAG_WORDS(fields_quote(walk->reader, segment->name), line));
    }
}

static void index_names(struct SegmentsWalk *walk, struct SegmentNames *names)
{
    struct Arena *arena = walk->reader->arena;
    int *sorted = arena_array(arena, (size_t)walk->count + 1, sizeof *sorted);
    int *spare = arena_array(arena, (size_t)walk->count + 1, sizeof *spare);
    if (sorted == NULL || spare == NULL) {
        return;
    }
    int named = 0;
    for (int i = 0; i < walk->count; i++) {
        if (walk->segments[i].name != NULL) {
            sorted[named++] = i;
        }
    }
    sort_names(walk->segments, sorted, spare, named);
    report_name_twice(walk, sorted, named);
    *names = (struct SegmentNames){
        .segments = walk->segments, .sorted = sorted, .count = named, .complete = named == walk->count};
}

/* Whose trench each lies in; what is named wrongly is reported with the other relations. */
static void find_trenches(struct SegmentsWalk *walk, const struct SegmentNames *names)
{
    for (int i = 0; i < walk->count; i++) {
        const char *trench = walk->segments[i].trench;
        const int host = trench != NULL && trench[0] != '\0' ? read_segment_named(names, trench) : -1;
        if (host >= 0 && host != i && text_same(walk->segments[host].name, trench)) {
            walk->segments[i].shares_trench = host + 1;
        }
    }
}

void read_segments(struct Reader *reader, const struct TreeEntry *entry, struct Survey *survey,
                   struct SegmentNames *names)
{
    if (entry == NULL || entry->value->kind == TREE_REFUSED) {
        return;
    }
    if (entry->value->kind != TREE_LIST || entry->value->count == 0) {
        reader_report(reader, MSG_SEGMENTS_NOT_LIST, entry->key, DIAG_NO_WORDS);
        return;
    }
    struct SegmentsWalk walk = {.reader = reader, .survey = survey, .count = entry->value->count};
    walk.segments = arena_array(reader->arena, (size_t)walk.count, sizeof *walk.segments);
    walk.shared = arena_array(reader->arena, (size_t)walk.count, 1);
    if (walk.segments == NULL || walk.shared == NULL) {
        return;
    }
    int index = 0;
    for (const struct TreeEntry *item = entry->value->first; item != NULL; item = item->next) {
        reader->subject = DIAG_SEGMENT(index);
        read_segment(&walk, item->value, index++);
    }
    reader->subject = (struct DiagSubject){DIAG_OF_FILE, 0};
    for (int shared = 0; shared < SHARED_COUNT; shared++) {
        assume_shared(&walk, (enum Shared)shared);
    }
    survey->segments = walk.segments;
    survey->segment_count = walk.count;
    index_names(&walk, names);
    find_trenches(&walk, names);
}
