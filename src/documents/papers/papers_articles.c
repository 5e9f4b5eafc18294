/* The parts list as it is picked: what to ask for in the words of the counter, and what is needed of it. */
#include "papers_private.h"

static int digits_of(double value)
{
    return value >= 1000 ? 5 : 4;
}

static const struct Say *amount(struct Arena *arena, double value, const char *unit)
{
    return parts_amount_said(arena, value, digits_of(value), unit);
}

static const struct Say *asked(struct Arena *arena, const struct PartsList *parts, const struct Part *part)
{
    if (parts_cut_of(parts, part) != NULL) {
        return parts_cut_of(parts, part)->buy_text;
    }
    if (part->pack > 0) {
        const struct Say *packs = parts_packs_said(arena, part->packs, part->pack_word);
        return text_same(part->pack_word, "kit")
                   ? say(arena, SAY_KITS_OF_GLANDS, say_part(packs), say_count(part->pack * part->packs))
                   : packs;
    }
    return text_same(part->unit, "each") ? say(arena, SAY_SO_MANY, say_fixed(part->quantity, 0, UNIT_NONE))
                                         : amount(arena, part->quantity, part->unit);
}

/* The spare is named where it shows in the figures; NULL where exactly what is needed is bought. */
static const struct Say *needed(struct Arena *arena, const struct PartsList *parts, const struct Part *part)
{
    const struct SayArg needs = say_part(amount(arena, part->needed, part->unit));
    if (parts_cut_of(parts, part) != NULL) {
        return say(arena, SAY_NEEDS, needs);
    }
    const bool spare = !text_same(number_significant(arena, part->needed, digits_of(part->needed)),
                                  number_significant(arena, part->quantity, digits_of(part->quantity)));
    if (!spare && part->pack == 0) {
        return NULL;
    }
    /* without packs what is asked for has the spare in it */
    return spare && part->pack > 0
               ? say(arena, SAY_NEEDS_WITH_SPARE, needs, say_part(amount(arena, part->quantity, part->unit)))
               : say(arena, SAY_NEEDS, needs);
}

/* "of 100", to be read behind "2 packs"; what is cut, and a kit, has it in what is asked for. */
static const struct Say *pack_of(struct Arena *arena, const struct PartsList *parts, const struct Part *part)
{
    return part->pack > 0 && parts_cut_of(parts, part) == NULL && !text_same(part->pack_word, "kit")
               ? say(arena, SAY_IN_A_PACK_OF, say_part(amount(arena, part->pack, part->unit)))
               : NULL;
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
        const bool each = text_same(price->unit, "each");
        xml_say_attribute(out, article, "price",
                          say(xml_out_arena(out), each ? SAY_PRICE_OF_EACH : SAY_PRICE_FOR_A,
                              say_name(price->each_text), say_name(currency), say_name(price->unit)));
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
        xml_say_attribute(out, article, "order", asked(arena, parts, part));
        const struct Say *pack = pack_of(arena, parts, part);
        const struct Say *wanted = needed(arena, parts, part);
        papers_attribute(out, article, "pack", say_part(pack));
        papers_attribute(out, article, "wanted", say_part(wanted));
        papers_attribute(out, article, "needs", say_part(say_list(arena, SAY_SEMICOLON, pack, say_part(wanted))));
        xml_attribute_if(out, article, "standard", part->standard);
        papers_attribute(out, article, "for", say_part(parts_uses_said(arena, part->use_count, part->uses)));
        papers_attribute(out, article, "runs", say_part(parts_runs_said(arena, part->use_count, part->uses)));
        papers_attribute(out, article, "note", say_part(part->note));
        add_price(out, article, parts, i);
        xml_say(out, article, part->description);
    }
}
