/* What the crew is to mind: on the card what is true of every job, the same for all of them; on the brief what this
 * route brings. What bites on a stretch stands in the table. */
#include "papers_private.h"

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

void papers_cautions(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    for (int i = 0; i < plan->caution_count; i++) {
        if (!plan->cautions[i].every_job && plan->cautions[i].stretch_count == 0) {
            xml_say(out, xml_child(out, papers, "mind"), plan_caution_shortly(&plan->cautions[i]));
        }
    }
}
