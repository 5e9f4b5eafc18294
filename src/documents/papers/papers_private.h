/** What the papers print beyond the bare figures: finished strings under <papers>, which templates find behind the rest
 * of plan.xml, so that they do no arithmetic or rounding. One function for each part. */
#ifndef WEND_PAPERS_PRIVATE_H
#define WEND_PAPERS_PRIVATE_H

#include "documents/documents.h"
#include "documents/xml/xml_private.h"
#include "labour/work.h"
#include "plan/plan.h"
#include "takeoff/parts.h"

/** plan.xml with <papers> for its last child, as templates see it (templates/papers.rng), all of it in `words`. `parts`
 * may be NULL. */
struct Bytes papers_xml(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                        const struct Words *words);
/** The same as a tree of what people see, with the day, and what it costs, by labour figures of the user's own; `work`
 * may be NULL. Where no template is the user's own (`own`) it lacks what none of ours reads. */
struct XmlOut *papers_tree(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                           struct PapersWith with, const struct Words *words, const char *mark, bool own);

/** <labels>: what templates set as headings and labels. */
void papers_labels(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** <said>: what is being built, in three sentences. */
void papers_summary(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** <ends>: each power run's two ends, what is joined there and what is not, and the use of each core. */
void papers_ends(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts);
/** <core>s: what each core does at either end; none where the cable leaves that open. */
void papers_cores(struct XmlOut *out, struct XmlElement *element, const struct Plan *plan, const struct PlanRun *run);
/** True when papers_cores() writes any. */
bool papers_names_cores(const struct Plan *plan, const struct PlanRun *run);
/** <rods>: the outbuilding's own electrode, what to do; nothing when it needs none. */
void papers_rods(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** The trades of the brief's table, in the order of the work. */
enum Group { GROUP_DRILL, GROUP_FIX, GROUP_LAY_IN, GROUP_DIG, GROUP_THERE, GROUPS };
enum Group papers_group_of(const struct Segment *segment);
/** The table while it is written. */
struct PapersTable {
    struct XmlOut *out;
    const struct Plan *plan;
    const struct PartsList *parts;
    const struct Say *
        *fixings;           /**< of each run, what it is fixed with on every clipped stretch; NULL where that differs */
    const unsigned *common; /**< of each caution: the groups that it is said above, a bit each */
};
/** True when the heading of its group has said the caution for the stretch. */
bool papers_said_above(const struct PapersTable *table, int index, int caution);
/** True when the heading says what holds the fixings of a way. */
bool papers_grip_above(const struct PapersTable *table, const struct PartsWay *way);
/** True when the heading says how deep the tape lies: all trenches have it alike. */
bool papers_tape_above(const struct PapersTable *table);
/** A line's <do>s: how many and how large (count, first), with what and into what (with, bend) ... */
void papers_cells(const struct PapersTable *table, struct XmlElement *line, int index);
/** ... and what to watch there (warning, watch, note). */
void papers_watch(const struct PapersTable *table, struct XmlElement *line, int index);
/** <work>: the brief's table, and what the leader draws on site. */
void papers_work(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PartsList *parts);
/** <do kind="...">: one thing to do; nothing when `text` is NULL. */
void papers_do(struct XmlOut *out, struct XmlElement *stretch, const char *kind, const struct Say *text);
/** <pulling>: where the drum stands, one plan a run; nothing when nothing is drawn in. */
void papers_pulling(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** <aisle>s with <article>s: the parts list as it is picked, quantities as finished strings. */
void papers_articles(struct XmlOut *out, struct XmlElement *papers, const struct PartsList *parts);
/** <tools>: what to load. `parts` may be NULL. */
void papers_tools(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan,
                  const struct PartsList *parts);
/** <holds>: where nobody goes on unsigned, and <day>: the order of the day that names them, as far as this route needs
 * them. What the survey left open and can be seen or measured on site is a hold. */
void papers_day(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** <strip>: the day in lanes, one a hand; nothing without a day whose times are known. */
void papers_strip(struct XmlOut *out, struct XmlElement *papers, const struct Work *work);
/** <quotation>: what it costs; nothing without rates. */
void papers_quotation(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan,
                      const struct PartsList *parts, const struct Work *work);
/** <open>: each check that could not be made, by its title, with what settles it. */
void papers_open(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** What stands on site for a check that the survey left open, to be read there; SAY_NOTHING where it is settled
 * elsewhere or needs no settling. */
enum Saying papers_settled_on_site(const struct Check *check);
/** <given>s: what the design starts from; <taken>s: what it assumes. */
void papers_given(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan,
                  const struct Decisives *decisives);
/** <card>: what is true of every job. */
void papers_card(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** <caution>s of this route that are for a run or for the whole job. */
void papers_cautions(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** <sheet>s, one a run: what the designer's and the inspector's page shows; `like` names the first that has the same.
 */
void papers_sheets(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** <chart>: capacity and drop by size, with every place worked out. Nothing when no size was tried. */
void papers_chart(struct XmlOut *out, struct XmlElement *sheet, const struct PlanRun *run);
/** <tests> of one power run, in the order of BS 7671 part 6. */
void papers_tests(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan, const struct PlanRun *run);
/** <read>s: the readings of each run against the plan; nothing where nothing was measured. */
void papers_readings(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);
/** <as-laid>: what became of each segment; nothing where nothing was laid. */
void papers_as_laid(struct XmlOut *out, struct XmlElement *papers, const struct Plan *plan);

/** True when a residual device protects the run, its own or that of the board it feeds. */
bool papers_residual(const struct Plan *plan, const struct PlanRun *run);
/** "3-core 10 mm2 armoured cable BS5467" */
const struct Say *papers_cable(struct Arena *arena, const struct PlanRun *run);
/** The device of a run, as the design sheet and the test sheet name it. */
struct SayArg papers_device(const struct PlanRun *run);
/** "68.64 m": to the centimetre, as the drawing has it */
struct SayArg papers_metres(double length_m);
/** "600 mm" */
struct SayArg papers_millimetres(double length_m);
/** "and 1.2 m into and out of the ground", to follow "tails and loops"; NULL where there is none. */
const struct Say *papers_legs(struct Arena *arena, const struct PlanRun *run);
/** An attribute for anything that can be said; none where there are no words. */
void papers_attribute(struct XmlOut *out, struct XmlElement *element, const char *name, struct SayArg said);

#endif
