/* What one asks on site, by the rows of src/read/asked.c. */
#include "library_private.h"

#include "read/language.h"

#include <string.h>

static unsigned way_bit(const char *way)
{
    for (int i = 0; way != NULL && i < survey_word_count(WORDS_WAY); i++) {
        if (strcmp(way, survey_word(WORDS_WAY, i)) == 0) {
            return 1U << i;
        }
    }
    return 0;
}

/* The cable and its cores are asked for the power run. */
static unsigned context_of(const struct Asked *asked, const char *way)
{
    return asked->card == CARD_SEGMENT ? way_bit(way) : 1U << RUN_POWER;
}

static bool is_asked(const struct Asked *asked, const char *way)
{
    const unsigned bit = way_bit(way);
    const struct Field *field = asked_field(asked, context_of(asked, way));
    const bool takes = field != NULL && (bit == 0 || asked->table != TABLE_SEGMENT || field->applies == 0 ||
                                         (field->applies & bit) != 0);
    return takes && (asked->contexts == 0 || bit == 0 || (asked->contexts & bit) != 0);
}

static const char *example_of(const struct Field *field)
{
    switch (field->kind) {
    case FIELD_QUANTITY:
    case FIELD_SIZE: return field->unit == MEASURE_NONE ? "0.9" : quantity_example(field->unit);
    case FIELD_TWO_SIZES: return "50 x 50 mm";
    case FIELD_YES: return "yes/no";
    case FIELD_DATE: return "2026-05-14";
    case FIELD_WHOLE:
    case FIELD_WHOLE_QUANTITY: return "3";
    case FIELD_OWN: return field->shape == SHAPE_COUNT_LIST ? "2" : "";
    default: return "";
    }
}

/* "kW" of "6 kW": one asks in the unit that such things are read in. */
static const char *unit_of(const struct Field *field)
{
    const char *space = strchr(quantity_example(field->unit), ' ');
    return space == NULL ? "" : space + 1;
}

int wend_question_count(void)
{
    int count = 0;
    while (asked_at(count) != NULL) {
        count++;
    }
    return count;
}

bool wend_question(int index, const char *way, struct WendQuestion *out)
{
    const struct Asked *asked = asked_at(index);
    if (asked == NULL || out == NULL || !is_asked(asked, way)) {
        return false;
    }
    const struct Field *field = asked_field(asked, context_of(asked, way));
    *out = (struct WendQuestion){.card = asked_card(asked->card),
                                 .in = asked->path,
                                 .key = asked->key,
                                 .label = asked->label,
                                 .question = asked->question,
                                 .help = field->help,
                                 .example = example_of(field),
                                 .unit = unit_of(field),
                                 .when = asked->when != NULL ? asked->when : "",
                                 .required =
                                     field->required == FIELD_ALWAYS || (field->required & context_of(asked, way)) != 0,
                                 .word_count = field->kind == FIELD_WORD ? survey_word_count(field->words) : 0};
    return true;
}

static const struct Field *field_at(int index, const char *way)
{
    const struct Asked *asked = asked_at(index);
    return asked == NULL ? NULL : asked_field(asked, context_of(asked, way));
}

const char *wend_question_word(int index, int word)
{
    const struct Field *field = field_at(index, NULL);
    return field == NULL || field->kind != FIELD_WORD ? "" : survey_word(field->words, word);
}

const char *wend_question_meaning(int index, int word)
{
    const struct Field *field = field_at(index, NULL);
    return field == NULL || field->kind != FIELD_WORD ? "" : survey_meaning(field->words, word);
}

char *wend_question_default(int index, const char *way)
{
    const struct Field *field = field_at(index, way);
    struct Arena *arena = field == NULL ? NULL : arena_new();
    if (arena == NULL) {
        return NULL;
    }
    const char *taken = field_default(arena, field);
    char *text = taken == NULL ? NULL : library_keep(arena, taken);
    arena_free(arena);
    return text;
}
