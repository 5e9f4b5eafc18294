/* What stands on or beside a segment, as `marks` lists it. */
#include "read_private.h"

enum { LANDMARKS_MOST = 20 };

static void check_landmark(struct Reader *reader, const struct Landmark *landmark, const struct Segment *segment)
{
    const double length_m = segment->length_m.value;
    if (landmark->at_m.given && landmark->at_m.value > length_m) {
        reader_report_mark(reader, MSG_MARK_BEYOND, landmark->at_m.mark,
                           DIAG_WORDS(quantity_show(reader->arena, landmark->at_m.value, MEASURE_METRE),
                                      quantity_show(reader->arena, length_m, MEASURE_METRE)));
    }
    if (landmark->off_m.given && landmark->off_m.value > 0 && !landmark->side_given) {
        reader_report_mark(reader, MSG_MARK_SIDE_MISSING, landmark->off_m.mark,
                           DIAG_WORDS(quantity_show(reader->arena, landmark->off_m.value, MEASURE_METRE)));
    }
    if (landmark->side_given && !landmark->off_m.given) {
        reader_report_mark(reader, MSG_MARK_OFF_MISSING, landmark->mark,
                           DIAG_WORDS(survey_word(WORDS_SIDE, (int)landmark->side)));
    }
    if (landmark->what == LANDMARK_OTHER && landmark->note != NULL && landmark->note[0] == '\0') {
        reader_report_mark(reader, MSG_MARK_NOTE_MISSING, landmark->mark, DIAG_NO_WORDS);
    }
}

void read_landmarks(struct Reader *reader, const struct TreeEntry *entry, const char *path, struct Segment *segment)
{
    const struct TreeNode *node = entry->value;
    if (node->kind == TREE_REFUSED) {
        return;
    }
    if (node->kind != TREE_LIST || node->count == 0) {
        reader_report(reader, MSG_MARKS_FORM, entry->key, DIAG_NO_WORDS);
        return;
    }
    if (node->count > LANDMARKS_MOST) {
        reader_report_long(reader, entry->key, LANDMARKS_MOST);
        return;
    }
    struct Landmark *landmarks = arena_array(reader->arena, (size_t)node->count, sizeof *landmarks);
    if (landmarks == NULL) {
        return;
    }
    int number = 0;
    for (const struct TreeEntry *item = node->first; item != NULL; item = item->next, number++) {
        struct Spot place = {arena_print(reader->arena, "%s.marks[%d]", path, number + 1), item->value->mark,
                             item->value->width > 0 ? item->value->width : 1};
        fields_read(reader, survey_fields(TABLE_LANDMARK), item->value, place, 0, &landmarks[number]);
        landmarks[number].mark = item->value->mark;
        if (item->value->kind == TREE_MAP) {
            check_landmark(reader, &landmarks[number], segment);
        }
    }
    segment->landmarks = landmarks;
    segment->landmark_count = number;
}
