/* The protective device's rating: the one given, or the smallest standard one that carries the load. */
#include "design_private.h"

bool device_smallest(enum DeviceKind kind, double current_a, double *out_a)
{
    const double *ratings_a;
    const int count = device_ratings(kind, &ratings_a);
    for (int i = 0; i < count; i++) {
        if (within(current_a, ratings_a[i])) {
            *out_a = ratings_a[i];
            return true;
        }
    }
    return false;
}

const char *device_text(struct Arena *arena, const struct Device *device, double rating_a)
{
    struct TextBuilder text = text_builder(arena);
    const bool breaker = device->kind == DEVICE_MCB || device->kind == DEVICE_RCBO;
    text_add(&text, survey_word(WORDS_DEVICE, (int)device->kind));
    if (breaker) {
        text_print(&text, " %s", survey_word(WORDS_CURVE, (int)device->curve));
    } else if (device->kind == DEVICE_GG) {
        text_add(&text, " fuse BS 88-2");
    } else {
        text_add(&text, " fuse");
    }
    text_print(&text, " %s A", number_significant(arena, rating_a, 4));
    if (device->residual_a.given) {
        text_print(&text, " %s mA", number_significant(arena, device->residual_a.value * 1000, 4));
    }
    return text_done(&text);
}

static void warn_when_not_standard(const struct Design *design, const struct Device *device)
{
    double up_a;
    const double rating_a = device->rating_a.value;
    if (device_smallest(device->kind, rating_a, &up_a) && within(up_a, rating_a)) {
        return;
    }
    const double *ratings_a;
    const int count = device_ratings(device->kind, &ratings_a);
    struct TextBuilder list = text_builder(design->arena);
    for (int i = 0; i < count; i++) {
        text_print(&list, "%s%s", i > 0 ? " " : "", number_significant(design->arena, ratings_a[i], 4));
    }
    diag_report(design->diag, MSG_DEVICE_NOT_STANDARD, device->rating_a.mark, 1,
                DIAG_WORDS(number_significant(design->arena, rating_a, 4),
                           survey_word(WORDS_DEVICE, (int)device->kind), text_done(&list)));
}

void warn_of_residual_series(const struct Design *design, const struct Run *run)
{
    const struct Device *device = &run->device;
    if (device->residual_a.given && !device->time_delayed && design->survey->earthing.board_residual_a.given) {
        diag_report(design->diag, MSG_RESIDUAL_SERIES, device->residual_a.mark, 1, DIAG_WORDS(run->name));
    }
}

bool device_rating(const struct Design *design, const struct Run *run, double design_a, double *out_a)
{
    const struct Device *device = &run->device;
    if (device->rating_a.given) {
        warn_when_not_standard(design, device);
        *out_a = device->rating_a.value;
        return true;
    }
    if (device_smallest(device->kind, design_a, out_a)) {
        return true;
    }
    diag_report(design->diag, MSG_DEVICE_NONE_CARRIES, device->given ? device->mark : run->mark, 1,
                DIAG_WORDS(survey_word(WORDS_DEVICE, (int)device->kind), number_text(design->arena, design_a, 1)));
    return false;
}
