/** The one room that makes words: sayings in, sentences out, in a language and for a medium. */
#ifndef WEND_WORDS_WORDS_H
#define WEND_WORDS_WORDS_H

#include "base/diag.h"
#include "plan/say.h"

/** To add one: a catalogue beside words/en, and its plural rule and decimal sign in words.c. */
enum Language { LANGUAGE_ENGLISH, LANGUAGE_POLISH, LANGUAGES };

enum Medium {
    MEDIUM_PLAIN, /**< files and the terminal: mm2, degC, ohm, x */
    MEDIUM_SIGNS  /**< paper: mm², °C, Ω, × */
};

struct Words {
    enum Language language;
    enum Medium medium;
    bool thousands; /**< MEDIUM_SIGNS: a thin space between thousands, from five digits on */
    bool together;  /**< MEDIUM_SIGNS: figure and unit stay on one line */
    bool hyphens;   /**< MEDIUM_SIGNS: "2-pole" stays on one line, by a hyphen that does not break */
};

/** The sentences of a saying and of all that follow it, joined by a space; "" for NULL and when memory fails.
 *
 * A template is plain text with holes:
 *   {0}          argument 0, a number with its unit: "0.56 ohm"
 *   {0#}         a number without its unit: "0.56"
 *   {0?cable|cables}  the form that goes with a count, as many forms as the language has
 *   {0^}         a part or word with a capital first letter; a name keeps its own
 *   {0_}         a part or word with a small first letter, as after a colon; a name, a figure and RCBO keep their own
 *   { 0} {, 0}   with what stands before it (of " ,;:("), all of it left out where the argument is an empty part
 *   {=text} {0=}  for MEDIUM_PLAIN alone: keys of the route file, which nobody has who reads the papers
 *   {mm2} {x}    a unit or sign in the medium's characters
 *   {{           a brace
 * A hole that its argument does not fit is printed as it is, braces and all. */
const char *words_said(struct Arena *arena, const struct Words *words, const struct Say *said);
/** What say_calculation() takes, in the medium's signs. */
const char *words_calculation(struct Arena *arena, const struct Words *words, const char *text);
/** A unit alone, in the medium's characters. */
const char *words_unit(const struct Words *words, enum Unit unit);
/** A warning of a plan, by its message and what goes into it; in English as diag_sentence() has it. */
const char *words_warning(struct Arena *arena, const struct Words *words, enum DiagCode code, const char *const *holes);
/** "en": ISO 639-1. */
const char *words_code(enum Language language);
/** True where a language has no text for a saying and says it in English. */
bool words_lacks(enum Language language, enum Saying id);

#endif
