/* Whether cables go into a duct together: how much of its bore they fill, and whether three of them wedge. */
#include "mechanics_private.h"

void bunch_add(struct Bunch *bunch, double overall_mm)
{
    bunch->count++;
    bunch->squares_mm2 += overall_mm * overall_mm;
    bunch->sum_mm += overall_mm;
    if (overall_mm > bunch->largest_mm) {
        bunch->largest_mm = overall_mm;
    }
    double falls_mm = overall_mm;
    for (int i = 0; i < THICKEST_KEPT; i++) {
        if (falls_mm > bunch->thickest_mm[i]) {
            const double was_mm = bunch->thickest_mm[i];
            bunch->thickest_mm[i] = falls_mm;
            falls_mm = was_mm;
        }
    }
}

struct Bunch bunch_thickest(const struct Bunch *bunch, int count)
{
    struct Bunch out = {0};
    if (bunch->count <= count) {
        return *bunch;
    }
    for (int i = 0; i < count && i < THICKEST_KEPT; i++) {
        bunch_add(&out, bunch->thickest_mm[i]);
    }
    return out;
}

double duct_fill_percent(const struct Bunch *bunch, double bore_mm)
{
    return bunch->squares_mm2 / (bore_mm * bore_mm) * 100;
}

struct Bunch duct_fullest(const struct Bunch *bunch, double bore_mm)
{
    double allowed_percent;
    const struct Bunch pair = bunch_thickest(bunch, 2);
    return duct_fill_allowed(pair.count, &allowed_percent) &&
                   !within(duct_fill_percent(&pair, bore_mm), allowed_percent)
               ? pair
               : *bunch;
}

double duct_jam_ratio(const struct Bunch *bunch, double bore_mm)
{
    return bore_mm * bunch->count / bunch->sum_mm;
}

bool duct_jams(const struct Bunch *bunch, double bore_mm, bool bent)
{
    const struct DuctJam jam = duct_jam();
    if (bunch->count != jam.cables) {
        return false;
    }
    const double straight = duct_jam_ratio(bunch, bore_mm);
    const double widest = bent ? straight * jam.bent : straight;
    return within(jam.low, widest) && !within(jam.high, straight);
}

bool duct_may_jam(const struct Bunch *bunch, double least_bore_mm, double outside_mm, bool bent)
{
    const struct DuctJam jam = duct_jam();
    const double widest = duct_jam_ratio(bunch, outside_mm) * (bent ? jam.bent : 1);
    return bunch->count == jam.cables && within(jam.low, widest) &&
           !within(jam.high, duct_jam_ratio(bunch, least_bore_mm));
}

bool duct_takes(const struct Bunch *bunch, double bore_mm, bool bent)
{
    double allowed_percent;
    const struct Bunch fullest = duct_fullest(bunch, bore_mm);
    const struct Bunch three = bunch_thickest(bunch, duct_jam().cables);
    return duct_fill_allowed(fullest.count, &allowed_percent) &&
           within(duct_fill_percent(&fullest, bore_mm), allowed_percent) && !duct_jams(&three, bore_mm, bent);
}

bool duct_smallest(const struct Bunch *bunch, bool bent, double *out_nominal_mm)
{
    const double *sizes_mm;
    const int count = duct_sizes(&sizes_mm);
    const struct Bunch three = bunch_thickest(bunch, duct_jam().cables);
    for (int i = 0; i < count; i++) {
        struct Figure bore;
        if (duct_bore(sizes_mm[i], &bore) && duct_takes(bunch, bore.value, bent) &&
            !duct_may_jam(&three, bore.value, sizes_mm[i], bent)) {
            *out_nominal_mm = sizes_mm[i];
            return true;
        }
    }
    return false;
}

bool mechanics_bore(const struct Segment *segment, struct DuctBore *out)
{
    struct Figure least;
    if (segment->duct_bore_mm.given) {
        *out = (struct DuctBore){.mm = segment->duct_bore_mm.value};
        return true;
    }
    if (!segment->duct_size_mm.given || !duct_bore(segment->duct_size_mm.value, &least)) {
        return false;
    }
    *out = (struct DuctBore){.mm = least.value, .row_mm = least.row};
    return true;
}
