/* What the crew is to mind: on the card what is true of every job, the same for all of them; on the brief what this
 * route brings. What bites on a stretch stands in the table. */
#include "papers_private.h"

#include "documents/earth_ends_private.h"

#include <string.h>

void papers_card(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct XmlElement *card = xml_child(out, papers, "card");
    struct XmlElement *group = NULL;
    for (int i = 0; i < plan->card_count; i++) {
        if (i == 0 || plan->card[i].heading != plan->card[i - 1].heading) {
            group = xml_child(out, card, "group");
            xml_say_attribute(out, group, "name", say(xml_out_arena(out), plan->card[i].heading));
        }
        xml_say(out, xml_child(out, group, "line"), plan->card[i].text);
    }
}

/* For a run or the whole job, and only for this one. */
static bool of_this_job(const struct Caution *caution)
{
    return !caution->every_job && caution->stretch_count == 0;
}

/* Said where it bites: at the far end that the armour stops at (papers_ends.c), beside the rods (papers_rods.c). */
static bool said_there(const struct Plan *plan, const struct Caution *caution)
{
    bool armour = false;
    for (int i = 0; i < plan->run_count; i++) {
        armour = armour || (plan->runs[i].rated && earth_far_armour(plan, &plan->runs[i]) == EARTH_STOPS);
    }
    return (caution->at_stopped_armour && armour) || (caution->at_rods && plan->electrode.due);
}

static bool is_run(const struct Plan *plan, const char *name)
{
    for (int i = 0; i < plan->run_count; i++) {
        if (strcmp(plan->runs[i].settled->name, name) == 0) {
            return true;
        }
    }
    return false;
}

/* A caution with the runs that it is for, said where the first of them stands; NULL at the others. */
static const struct Say *mind(struct Arena *arena, const struct Plan *plan, int index)
{
    const struct Say *text = plan_caution_shortly(&plan->cautions[index]);
    const struct Say *names = NULL;
    for (int i = 0; i < plan->caution_count; i++) {
        const struct Caution *other = &plan->cautions[i];
        if (of_this_job(other) && say_same(plan_caution_shortly(other), text)) {
            if (i < index) {
                return NULL;
            }
            if (is_run(plan, other->where)) {
                names = say_list(arena, SAY_COMMA, names, say_name(other->where));
            }
        }
    }
    return names == NULL || plan->run_count < 2 ? text : say(arena, SAY_COLON_SMALL, say_part(names), say_part(text));
}

void papers_cautions(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    for (int i = 0; i < plan->caution_count; i++) {
        const bool here = of_this_job(&plan->cautions[i]) && !said_there(plan, &plan->cautions[i]);
        const struct Say *said = here ? mind(xml_out_arena(out), plan, i) : NULL;
        if (said != NULL) {
            xml_say(out, xml_child(out, papers, "mind"), said);
        }
    }
}
