/* What the survey left open: each check that could not be made by its title, what settles it, and whether that can be
 * seen or measured on site. A key of the route file is named by what it stands for: nobody on site has the file. */
#include "papers_private.h"

/* Every key that src/design asks for; tests/check_settled.sh holds it. `site`: what is read or measured there. */
static const struct {
    const char *key;
    enum Saying what, site;
} settled[] = {
    {"bends: radius", SAY_SETTLE_BEND_RADIUS, SAY_SITE_BEND_RADIUS},
    {"beside: diameter", SAY_SETTLE_BESIDE_DIAMETER, SAY_SITE_BESIDE},
    {"cable: diameter", SAY_SETTLE_CABLE_DIAMETER, SAY_SITE_CABLE},
    {"cable: insulated-for", SAY_SETTLE_INSULATED_FOR, SAY_NOTHING},
    {"device: breaking-capacity", SAY_SETTLE_BREAKING, SAY_SITE_BREAKING},
    {"device: let-through", SAY_SETTLE_LET_THROUGH, SAY_NOTHING},
    {"device: residual-type", SAY_SETTLE_RESIDUAL_TYPE, SAY_SITE_RESIDUAL_TYPE},
    {"device: senses-neutral", SAY_SETTLE_SENSES_NEUTRAL, SAY_SITE_YES_NO},
    {"device: trip-5-s", SAY_SETTLE_TRIP, SAY_NOTHING},
    {"duct: bore", SAY_SETTLE_DUCT_BORE, SAY_SITE_BORE},
    {"duct: size", SAY_SETTLE_DUCT_SIZE, SAY_SITE_SIZE},
    {"earthing: existing", SAY_SETTLE_EXISTING, SAY_SITE_EXISTING},
    {"earthing: extraneous-parts", SAY_SETTLE_EXTRANEOUS, SAY_SITE_EXTRANEOUS},
    {"earthing: far-end", SAY_SETTLE_ISLAND, SAY_NOTHING},
    {"earthing: floor-grid", SAY_SETTLE_FLOOR_GRID, SAY_SITE_YES_NO},
    {"finish: enclosure", SAY_SETTLE_ENCLOSURE, SAY_SITE_ENCLOSURE},
    {"job: location", SAY_SETTLE_LOCATION, SAY_SITE_LOCATION},
    {"load: power-factor", SAY_SETTLE_POWER_FACTOR, SAY_NOTHING},
    {"material", SAY_SETTLE_MATERIAL, SAY_SITE_MATERIAL},
    {"pull: friction", SAY_SETTLE_FRICTION, SAY_NOTHING},
    {"segments: hidden", SAY_SETTLE_HIDDEN, SAY_SITE_HIDDEN},
    {"segments: under", SAY_SETTLE_UNDER, SAY_SITE_UNDER},
    {"size", SAY_SETTLE_SIZE, SAY_SITE_SIZE},
    {"start-current", SAY_SETTLE_START_CURRENT, SAY_NOTHING},
    {"start-multiple", SAY_SETTLE_START_CURRENT, SAY_NOTHING},
    {"supply: fault-current", SAY_SETTLE_FAULT_CURRENT, SAY_SITE_FAULT_CURRENT},
    {"supply: surge-protection", SAY_SETTLE_SURGE, SAY_NOTHING},
};
enum { SETTLED = sizeof settled / sizeof settled[0] };

static int find(const char *key)
{
    int at = 0;
    while (key != NULL && at < SETTLED && !text_same(settled[at].key, key)) {
        at++;
    }
    return key == NULL ? SETTLED : at;
}

/* NULL where nothing would settle it. */
static const struct Say *what_settles(struct Arena *arena, const struct Settles *settles)
{
    const int at = find(settles->key), other = find(settles->or_key);
    const struct Say *said = at < SETTLED ? say(arena, settled[at].what) : NULL;
    if (other < SETTLED && (at == SETTLED || settled[other].what != settled[at].what)) {
        said = say_list(arena, SAY_SETTLED_BY_EITHER, said, say_term(settled[other].what));
    }
    return settles->reading == SAY_NOTHING ? said
                                           : say_list(arena, SAY_SETTLED_BY_EITHER, said, say_term(settles->reading));
}

enum Saying papers_settled_on_site(const struct Check *check)
{
    const int at = find(check->settles.key), other = find(check->settles.or_key);
    const enum Saying site = at < SETTLED ? settled[at].site : SAY_NOTHING;
    if (!check->unknown) {
        return SAY_NOTHING;
    }
    return site != SAY_NOTHING                                     ? site
           : other < SETTLED && settled[other].site != SAY_NOTHING ? settled[other].site
           : check->settles.reading == SAY_SETTLED_BY_CONDUIT_BORE ? SAY_SITE_BORE
                                                                   : SAY_NOTHING;
}

void papers_open(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan)
{
    struct Arena *arena = xml_out_arena(out);
    for (int r = 0; r < plan->run_count; r++) {
        for (int i = 0; i < plan->runs[r].check_count; i++) {
            const struct Check *check = &plan->runs[r].checks[i];
            if (!check->unknown) {
                continue;
            }
            struct XmlElement *open = xml_child(out, papers, "open");
            const struct Say *title = check_title_said(arena, check);
            xml_say_attribute(out, open, "title", title);
            xml_say_attribute(out, open, "within", say(arena, SAY_WITHIN_A_SENTENCE, say_part(title)));
            xml_attribute(out, open, "run", plan->runs[r].settled->name);
            xml_attribute(out, open, "matters", check->open ? "yes" : "no");
            papers_attribute(out, open, "settles", say_part(what_settles(arena, &check->settles)));
            xml_say(out, open, check->text);
        }
    }
}
