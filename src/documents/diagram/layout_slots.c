/* Where the boxes under a strip go.
 *
 * All boxes of a strip stand in the order of the run. The first row holds boxes and, when there is a second row, a
 * narrow gap for each leader that passes down to it. Things in one row are moved from where they would like to be only
 * as far as their neighbours force them, keeping the order, so they never overlap; since both the places on the run and
 * the places in the row are in order, no two leaders cross. The second row's boxes all hang from their gaps at the same
 * offset; the gaps are at least a box apart, so these do not overlap either. */
#include "layout_private.h"

#include <math.h>

enum { SLOTS_MOST = 16 };

static const double gap_mm = 1.4;     /* between neighbours in a row */
static const double channel_mm = 1.6; /* for a leader to pass */
static const double box_most_mm = 54;
static const double corner_mm = 2; /* a leader meets a box no nearer to its corner */

struct Slot {
    double wish_mm; /* its centre, where it would like to be */
    double size_mm;
    double left_mm; /* out */
};

/* Shifted by all that stands before it, the order of the lefts becomes "not falling": pool neighbours that violate it
 * and give each pool its mean, then keep all within the sheet. That is the least movement in sum of squares. */
static void pack(struct Slot *slots, int count, double from_mm, double to_mm)
{
    double mean[SLOTS_MOST], before[SLOTS_MOST];
    int members[SLOTS_MOST], pools = 0;
    double taken_mm = 0;
    for (int i = 0; i < count; i++) {
        before[i] = taken_mm;
        taken_mm += slots[i].size_mm + gap_mm;
        mean[pools] = slots[i].wish_mm - slots[i].size_mm / 2 - before[i];
        members[pools++] = 1;
        while (pools > 1 && mean[pools - 2] > mean[pools - 1]) {
            int both = members[pools - 2] + members[pools - 1];
            mean[pools - 2] = (mean[pools - 2] * members[pools - 2] + mean[pools - 1] * members[pools - 1]) / both;
            members[pools - 2] = both;
            pools--;
        }
    }
    double least_mm = from_mm, most_mm = to_mm - (taken_mm - gap_mm);
    for (int p = 0, i = 0; p < pools; p++) {
        double shift_mm = fmin(fmax(mean[p], least_mm), most_mm);
        for (int k = 0; k < members[p]; k++, i++) {
            slots[i].left_mm = shift_mm + before[i];
        }
    }
}

static double box_width(const struct Strip *strip)
{
    int channels = strip->row_count == 2 ? strip->label_count / 2 : 0;
    int boxes = strip->label_count - channels;
    double free_mm = INNER_RIGHT - INNER_LEFT - channels * channel_mm - (strip->label_count - 1) * gap_mm;
    return fmin(free_mm / boxes, box_most_mm);
}

static bool in_second_row(const struct Strip *strip, int index)
{
    return strip->row_count == 2 && index % 2 == 1;
}

static double clamp(double value, double least, double most)
{
    return fmin(fmax(value, least), most);
}

/* One offset for the whole second row, between box and gap, such that the first and the last stay on the sheet. */
static void hang_second_row(struct Strip *strip)
{
    double width_mm = strip->box_width_mm;
    double first_mm = 0, last_mm = 0;
    for (int i = 1; i < strip->label_count; i += 2) {
        first_mm = i == 1 ? strip->labels[i].entry_mm : first_mm;
        last_mm = strip->labels[i].entry_mm;
    }
    double offset_mm = clamp(width_mm / 2, last_mm + width_mm - INNER_RIGHT, first_mm - INNER_LEFT);
    for (int i = 1; i < strip->label_count; i += 2) {
        strip->labels[i].left_mm = strip->labels[i].entry_mm - offset_mm;
    }
}

void layout_slots(struct Strip *strip)
{
    struct Slot slots[SLOTS_MOST];
    double width_mm = strip->box_width_mm = box_width(strip);
    for (int i = 0; i < strip->label_count; i++) {
        slots[i] = (struct Slot){.wish_mm = strip->labels[i].at_mm,
                                 .size_mm = in_second_row(strip, i) ? channel_mm : width_mm};
    }
    pack(slots, strip->label_count, INNER_LEFT, INNER_RIGHT);
    for (int i = 0; i < strip->label_count; i++) {
        struct Label *label = &strip->labels[i];
        label->row = in_second_row(strip, i) ? 1 : 0;
        label->left_mm = slots[i].left_mm;
        label->entry_mm = label->row == 1 ? slots[i].left_mm + channel_mm / 2
                                          : clamp(label->at_mm, slots[i].left_mm + corner_mm,
                                                  slots[i].left_mm + width_mm - corner_mm);
    }
    if (strip->row_count == 2) {
        hang_second_row(strip);
    }
}
