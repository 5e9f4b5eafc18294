/* Design current: what a run's loads come to, line by line. */
#include "rating_private.h"

#include <math.h>

bool within(double value, double limit)
{
    return value <= limit + 1e-9 * fabs(limit);
}

double load_current_a(const struct Load *load, double u0_v)
{
    double current_a = load->current_a.value;
    if (load->power_w.given) {
        const double power_factor = load->power_is_apparent ? 1.0 : load->power_factor.value;
        current_a = load->power_w.value / (load->phases * u0_v * power_factor);
    }
    return current_a * load->diversity.value;
}

double load_generated_a(const struct Survey *survey)
{
    double generated_a = 0;
    for (int r = 0; r < survey->run_count; r++) {
        const struct Run *run = &survey->runs[r];
        for (int i = 0; run->kind == RUN_POWER && run->use == USE_GENERATION && i < run->load_count; i++) {
            struct Load whole = run->loads[i];
            whole.diversity.value = 1; /* what it can give counts, not what it gives at one time */
            generated_a += load_current_a(&whole, survey->supply.voltage_v.value);
        }
    }
    return generated_a;
}

/* Active and reactive parts of the current in one line, so that power factors of several loads add up. */
struct Line {
    double current_a, active_a, reactive_a;
    bool factor_known;
};

static void line_add(struct Line *line, double current_a, const struct Quantity *power_factor)
{
    line->current_a += current_a;
    if (!power_factor->given) {
        line->factor_known = false;
        return;
    }
    line->active_a += current_a * power_factor->value;
    line->reactive_a += current_a * sqrt(1.0 - power_factor->value * power_factor->value);
}

static int least_loaded(const struct Line *lines, int count)
{
    int least = 0;
    for (int i = 1; i < count && i < 3; i++) {
        if (lines[i].current_a < lines[least].current_a) {
            least = i;
        }
    }
    return least;
}

/* Puts the loads on the lines, in file order; `out`, when given, learns where each went. */
static void add_loads(const struct Run *run, int phases, double u0_v, struct Line lines[3], struct LineLoad *out)
{
    for (int i = 0; i < run->load_count; i++) {
        const struct Load *load = &run->loads[i];
        const double current_a = load_current_a(load, u0_v);
        int on = LOAD_ON_EVERY_LINE;
        if (phases == 3 && load->phases == 3) {
            for (int line = 0; line < 3; line++) {
                line_add(&lines[line], current_a, &load->power_factor);
            }
        } else {
            on = least_loaded(lines, phases);
            line_add(&lines[on], current_a, &load->power_factor);
        }
        if (out != NULL) {
            const struct Quantity *factor = &load->power_factor;
            out[i] = (struct LineLoad){current_a, factor->given ? factor->value : 0, on};
        }
    }
}

void load_on_lines(const struct Run *run, int phases, double u0_v, struct LineLoad *out)
{
    struct Line lines[3] = {{.factor_known = true}, {.factor_known = true}, {.factor_known = true}};
    add_loads(run, phases, u0_v, lines, out);
}

struct Demand load_demand(const struct Run *run, int phases, double u0_v)
{
    struct Line lines[3] = {{.factor_known = true}, {.factor_known = true}, {.factor_known = true}};
    add_loads(run, phases, u0_v, lines, NULL);
    struct Demand demand = {.currents.lines = phases};
    for (int line = 0; line < phases && line < 3; line++) {
        demand.currents.line_a[line] = lines[line].current_a;
        if (lines[line].current_a > lines[demand.heaviest].current_a) {
            demand.heaviest = line;
        }
    }
    const struct Line *heaviest = &lines[demand.heaviest];
    demand.design_a = heaviest->current_a;
    if (heaviest->factor_known && heaviest->active_a > 0) {
        demand.power_factor = heaviest->active_a / hypot(heaviest->active_a, heaviest->reactive_a);
    }
    return demand;
}
