/* What the design starts from, as surveyed or assumed: <given>s; and <taken>, what was assumed. */
#include "papers_private.h"

static void add(struct XmlOut *out, struct XmlElement *papers, enum Saying name, const struct Say *text)
{
    if (text != NULL) {
        struct XmlElement *given = xml_child(out, papers, "given");
        xml_say_attribute(out, given, "name", say(xml_out_arena(out), name));
        xml_say(out, given, text);
    }
}

static struct SayArg if_given(struct Arena *arena, enum Saying says, const struct Quantity *quantity, enum Unit unit)
{
    return say_part(quantity->given ? say(arena, says, say_digits(quantity->value, 4, unit)) : NULL);
}

/* The run that an assumption is of; NULL where it is of the job, or of the only run. */
static const char *run_of(const struct Plan *plan, const struct Assumption *assumption)
{
    const int run = assumption->assumed < 0 ? -1 : plan->survey->assumed[assumption->assumed].run;
    return run < 0 || plan->run_count < 2 ? NULL : plan->survey->runs[run].name;
}

static bool is_among(const struct Decisives *decisives, int assumption)
{
    bool found = false;
    for (int i = 0; decisives != NULL && i < decisives->count; i++) {
        found = found || decisives->list[i].assumption == assumption;
    }
    return found;
}

/* What decides comes first, with what it would change; what is said alike of several runs once. */
static void papers_deciding(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan,
                            const struct Decisives *decisives)
{
    struct Arena *arena = xml_out_arena(out);
    for (int i = 0; decisives != NULL && i < decisives->count; i++) {
        const struct Say *said = decisive_said(arena, plan, &decisives->list[i], false), *runs = NULL;
        bool before = false;
        for (int k = 0; k < decisives->count && !before; k++) {
            const int assumption = decisives->list[k].assumption;
            if (k == i || say_same(decisive_said(arena, plan, &decisives->list[k], false), said)) {
                const char *run = assumption < 0 ? NULL : run_of(plan, &plan->assumptions[assumption]);
                before = k < i;
                runs = run == NULL ? runs : say_list(arena, SAY_COMMA, runs, say_name(run));
            }
        }
        if (!before) {
            xml_say(out, xml_child(out, papers, "taken"),
                    runs == NULL ? said : say(arena, SAY_BRACKETS, say_part(said), say_part(runs)));
        }
    }
}

/* What is taken alike of several runs, loads and ends is said once, with the runs. */
static void papers_taken(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan,
                         const struct Decisives *decisives)
{
    struct Arena *arena = xml_out_arena(out);
    for (int i = 0; i < plan->assumption_count; i++) {
        const struct Say *runs = NULL;
        const char *last = NULL;
        bool said = is_among(decisives, i);
        for (int k = 0; k < plan->assumption_count && !said; k++) {
            if (!say_same(plan->assumptions[k].text, plan->assumptions[i].text) || is_among(decisives, k)) {
                continue;
            }
            said = k < i;
            const char *run = run_of(plan, &plan->assumptions[k]);
            if (run != NULL && (last == NULL || !text_same(run, last))) {
                runs = say_list(arena, SAY_COMMA, runs, say_name(run));
                last = run;
            }
        }
        if (!said) {
            xml_say(out, xml_child(out, papers, "taken"),
                    runs == NULL ? plan->assumptions[i].text
                                 : say(arena, SAY_BRACKETS, say_part(plan->assumptions[i].text), say_part(runs)));
        }
    }
}

void papers_given(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan,
                  const struct Decisives *decisives)
{
    struct Arena *arena = xml_out_arena(out);
    const struct Supply *supply = &plan->survey->supply;
    const struct Conditions *conditions = &plan->survey->conditions;
    add(out, papers, SAY_FACT_RULES, plan->rules_text);
    add(out, papers, SAY_FACT_SUPPLY,
        say(arena, SAY_GIVEN_SUPPLY, say_word(WORDS_SYSTEM, (int)supply->system), say_count(supply->phases),
            say_digits(supply->voltage_v.value, 4, UNIT_V), if_given(arena, SAY_GIVEN_ZE, &supply->loop_ohm, UNIT_OHM),
            if_given(arena, SAY_GIVEN_FAULT_CURRENT, &supply->fault_current_a, UNIT_A),
            if_given(arena, SAY_GIVEN_DROP_BEFORE, &supply->drop_before_percent, UNIT_PERCENT)));
    add(out, papers, SAY_FACT_TEMPERATURES,
        say(arena, SAY_GIVEN_TEMPERATURES, say_digits(conditions->air_degc.value, 4, UNIT_DEGC),
            say_digits(conditions->ground_degc.value, 4, UNIT_DEGC),
            say_digits(conditions->terminals_degc.value, 4, UNIT_DEGC)));
    add(out, papers, SAY_FACT_SOIL,
        say(arena, SAY_GIVEN_SOIL, say_digits(conditions->soil_thermal_k_m_per_w.value, 4, UNIT_K_M_PER_W),
            conditions->soil_electrical_ohm_m.value > 0
                ? say_digits(conditions->soil_electrical_ohm_m.value, 4, UNIT_OHM_M)
                : say_part(NULL)));
    add(out, papers, SAY_FACT_ELECTRODE, plan->electrode.text);
    for (int i = 0; i < plan->survey->range_count; i++) {
        const struct SurveyRange *range = &plan->survey->ranges[i];
        xml_say(out, xml_child(out, papers, "range"),
                say(arena, SAY_RANGE_DRAWN, say_name(range->named), say_name(range->text), say_name(range->at)));
    }
    papers_deciding(out, papers, plan, decisives);
    papers_taken(out, papers, plan, decisives);
}
