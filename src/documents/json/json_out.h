/** A small door to cJSON: documents build a tree through it and take the bytes away. Nothing else knows cJSON. */
#ifndef WEND_JSON_OUT_H
#define WEND_JSON_OUT_H

#include "base/base.h"

/** One document being built. It lives outside the arena until json_out_finish(). */
struct JsonOut;
/** An object or a list of it; owned by the document. NULL is accepted everywhere and marks the document as failed. */
struct JsonNode;

/** Begins a document that is one object. NULL when memory fails; every function below accepts that. */
struct JsonOut *json_out_new(struct Arena *arena);
struct JsonNode *json_root(struct JsonOut *out);
/** A new last member, or a new last item of a list, of which `name` says nothing. */
struct JsonNode *json_object(struct JsonOut *out, struct JsonNode *parent, const char *name);
struct JsonNode *json_list(struct JsonOut *out, struct JsonNode *parent, const char *name);
/** The list that is the member `name`; made when it is not there. A list itself is its own. */
struct JsonNode *json_list_of(struct JsonOut *out, struct JsonNode *parent, const char *name);
/** Any text is allowed: what XML cannot hold becomes U+FFFD here too. */
void json_text(struct JsonOut *out, struct JsonNode *parent, const char *name, const char *text);
/** The same, but left out when `text` is "" or NULL. */
void json_text_if(struct JsonOut *out, struct JsonNode *parent, const char *name, const char *text);
/** A number that is written already, digit by digit. */
void json_digits(struct JsonOut *out, struct JsonNode *parent, const char *name, const char *digits);
/** As shown_figure() writes it. */
void json_number(struct JsonOut *out, struct JsonNode *parent, const char *name, double value);
void json_yes(struct JsonOut *out, struct JsonNode *parent, const char *name, bool yes);
/** Each word between the blanks of `text` as an item of a new list; as numbers with `numbers`. */
void json_words(struct JsonOut *out, struct JsonNode *parent, const char *name, const char *text, bool numbers);
/** An item of the list for each report, with its place in the file and the keys that lead there. */
struct Told;
struct Survey;
/** `set`, what was planned otherwise than in the file, and `ranges` with what of each was planned; of none, nothing. */
void json_changes(struct JsonOut *out, struct JsonNode *root, const struct Survey *survey);
void json_told(struct JsonOut *out, struct JsonNode *list, const struct Told *told);
/** Saves as UTF-8 with indentation and a last line break, copies the bytes into the arena and frees the tree. data is
 * NULL when anything failed on the way. `out` is gone afterwards. */
struct Bytes json_out_finish(struct JsonOut *out);

#endif
