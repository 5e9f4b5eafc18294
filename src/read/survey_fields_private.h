/** How the rows of the field tables are written; for the survey_fields*.c files only. */
#ifndef WEND_SURVEY_FIELDS_PRIVATE_H
#define WEND_SURVEY_FIELDS_PRIVATE_H

#include "read_private.h"

#include <stddef.h>

#define COUNT_OF(list)       ((int)(sizeof(list) / sizeof(list)[0]))
#define W(way)               (1U << (WAY_##way))
#define K(kind)              (1U << (RUN_##kind))
#define AT(type, member)     .offset = offsetof(struct type, member)
#define GIVEN(type, member)  .given_offset = offsetof(struct type, member)
#define WORD(list)           .kind = FIELD_WORD, .words = WORDS_##list
#define NUMBER(of, from, to) .kind = FIELD_QUANTITY, .unit = MEASURE_##of, .least = (from), .most = (to)
/* Taken where the key is left out: without a word, or as an assumption that the plan lists. */
#define DEFAULT(value)              .has_default = true, .fallback = (value)
#define TAKEN(value, what)          DEFAULT(value), .assumed = ASSUMED_##what
#define ONE_OF(list)                .allowed = (list), .allowed_count = COUNT_OF(list)
#define OWN(how, table, most)       .kind = FIELD_OWN, .shape = SHAPE_##how, .of = (table), .list_most = (most)
#define OWN_VALUE(how, value, most) .kind = FIELD_OWN, .shape = SHAPE_##how, .item = &(value), .list_most = (most)
#define INNER(fields_of)            .kind = FIELD_MAP, .inner = &(fields_of)
#define TABLE(of, ...)              .fields = (of), .count = COUNT_OF(of), .contexts = WORDS_COUNT, __VA_ARGS__

/** The tables of runs and of segments; NULL for those that stand elsewhere. */
const struct FieldTable *survey_fields_of_runs(enum SurveyTable table);
const struct FieldTable *survey_fields_of_segments(enum SurveyTable table);

#endif
