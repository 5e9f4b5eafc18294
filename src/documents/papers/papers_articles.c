/* The parts list as it is picked: what to ask for in the words of the counter, and what is needed of it. */
#include "papers_private.h"

static const char *amount(struct Arena *arena, double value, const char *unit)
{
    const char *number = number_significant(arena, value, value >= 1000 ? 5 : 4);
    return text_same(unit, "each") ? number : arena_print(arena, "%s %s", number, unit);
}

/* The cutting plan that the line orders whole lengths for, or NULL. */
static const struct PartsCut *cut_of(const struct PartsList *parts, const struct Part *part)
{
    for (int i = 0; i < parts->cut_count; i++) {
        if (parts->cuts[i].opened_count > 0 && text_same(parts->cuts[i].code, part->code)) {
            return &parts->cuts[i];
        }
    }
    return NULL;
}

static const char *asked(struct XmlOut *out, const struct PartsList *parts, const struct Part *part)
{
    struct Arena *arena = xml_out_arena(out);
    if (cut_of(parts, part) != NULL) {
        return xml_said(out, cut_of(parts, part)->buy_text);
    }
    if (part->pack > 0) {
        const char *some = arena_print(arena, "%d %s%s", part->packs, part->pack_word, part->packs == 1 ? "" : "s");
        return text_same(part->pack_word, "kit") ? arena_print(arena, "%s (%d glands)", some, part->pack * part->packs)
                                                 : some;
    }
    return text_same(part->unit, "each") ? arena_print(arena, "%s no.", number_text(arena, part->quantity, 0))
                                         : amount(arena, part->quantity, part->unit);
}

static const char *needed(struct Arena *arena, const struct PartsList *parts, const struct Part *part)
{
    if (cut_of(parts, part) != NULL) {
        return arena_print(arena, "needs %s", amount(arena, part->needed, part->unit));
    }
    const char *pack = part->pack > 0 ? arena_print(arena, "of %s; ", amount(arena, part->pack, part->unit)) : "";
    const char *needs = amount(arena, part->needed, part->unit);
    const char *with_spare = amount(arena, part->quantity, part->unit);
    return text_same(needs, with_spare) ? arena_print(arena, "%sneeds %s", pack, needs)
                                        : arena_print(arena, "%sneeds %s, with spare %s", pack, needs, with_spare);
}

/* "4.35 GBP a m", "291.45 GBP", where the user's own price list has it. */
static void add_price(struct XmlOut *out, struct XmlElement *article, const struct PartsList *parts, int index)
{
    if (parts->prices == NULL) {
        return;
    }
    const struct PartPrice *price = &parts->prices[index];
    if (price->known) {
        const char *currency = parts->totals[price->currency].currency;
        xml_attribute(out, article, "price",
                      arena_print(xml_out_arena(out), "%s %s %s", price->each_text, currency,
                                  text_same(price->unit, "each")
                                      ? "each"
                                      : arena_print(xml_out_arena(out), "a %s", price->unit)));
        xml_attribute(out, article, "total", arena_print(xml_out_arena(out), "%s %s", price->total_text, currency));
    }
}

void papers_articles(struct XmlOut *out, struct XmlElement *papers, const struct PartsList *parts)
{
    struct Arena *arena = xml_out_arena(out);
    struct XmlElement *aisle = NULL;
    for (int i = 0; parts != NULL && i < parts->count; i++) {
        const struct Part *part = &parts->parts[i];
        if (i == 0 || part->aisle != parts->parts[i - 1].aisle) {
            aisle = xml_child(out, papers, "aisle");
            xml_say_attribute(out, aisle, "name", parts_aisle_said(part->aisle));
        }
        struct XmlElement *article = xml_child(out, aisle, "article");
        xml_integer(out, article, "number", i + 1);
        xml_attribute(out, article, "order", asked(out, parts, part));
        xml_attribute(out, article, "needs", needed(arena, parts, part));
        xml_attribute_if(out, article, "standard", part->standard);
        papers_attribute(out, article, "for", say_part(parts_uses_said(arena, part->use_count, part->uses)));
        papers_attribute(out, article, "note", say_part(part->note));
        add_price(out, article, parts, i);
        xml_say(out, article, part->description);
    }
}
