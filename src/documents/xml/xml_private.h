/** Documents of elements: files, written as they are built, and the tree that templates read. */
#ifndef WEND_XML_PRIVATE_H
#define WEND_XML_PRIVATE_H

#include "base/base.h"
#include "words/words.h"

/** One document being built; a tree lives outside the arena until xml_out_tree(). */
struct XmlOut;
/** An element of it; owned by the document. NULL is accepted everywhere and marks the document as failed. A file is
 * built in the order in which it is read: an attribute before anything stands in its element, a child before the next
 * of its parent. Else the document has failed. */
struct XmlElement;

/** Begins a file in UTF-8 with a line for each element, with a remark before the outermost; NULL none. No "--" may
 * stand in that. NULL when memory fails; every function below accepts that. */
struct XmlOut *xml_out_new(struct Arena *arena, const char *root, const char *remark);
/** Begins a piece of a file: one element, without a blank more. */
struct XmlOut *xml_out_new_piece(struct Arena *arena, const char *root);
/** Begins a tree for xml_out_tree(). */
struct XmlOut *xml_out_new_tree(struct Arena *arena, const char *root);
/** The outermost element. */
struct XmlElement *xml_root(struct XmlOut *out);
/** The arena of the document; NULL for NULL. */
struct Arena *xml_out_arena(const struct XmlOut *out);
/** A new last child. */
struct XmlElement *xml_child(struct XmlOut *out, struct XmlElement *parent, const char *name);
/** Adds an attribute; each name only once. Any text is allowed: what XML cannot hold becomes U+FFFD. */
void xml_attribute(struct XmlOut *out, struct XmlElement *element, const char *name, const char *value);
/** As xml_attribute(), but left out when `value` is "". */
void xml_attribute_if(struct XmlOut *out, struct XmlElement *element, const char *name, const char *value);
/** A number as shown_figure() writes it. */
void xml_number(struct XmlOut *out, struct XmlElement *element, const char *name, double value);
void xml_integer(struct XmlOut *out, struct XmlElement *element, const char *name, int value);
/** Appends text; with the same promise as xml_attribute(). */
void xml_text(struct XmlOut *out, struct XmlElement *element, const char *text);
/** Texts and values from here on are those that people see: shown_text() of them. */
void xml_out_show(struct XmlOut *out);
/** About how many bytes a tree would have as a file. */
size_t xml_out_size(const struct XmlOut *out);
/** In which words the document says things from here on; until then in files' plain English. */
void xml_out_speak(struct XmlOut *out, const struct Words *words);
/** Those words. */
const struct Words *xml_out_words(const struct XmlOut *out);
/** The words of a saying; "" for NULL. */
const char *xml_said(const struct XmlOut *out, const struct Say *said);
/** xml_text() and xml_attribute() of xml_said(). */
void xml_say(struct XmlOut *out, struct XmlElement *element, const struct Say *said);
void xml_say_attribute(struct XmlOut *out, struct XmlElement *element, const char *name, const struct Say *said);
/** The namespace of an element and of all in it; before any attribute. */
void xml_space(struct XmlOut *out, struct XmlElement *element, const char *uri);
/** The tree: a document of libxml2, which the caller frees. NULL when anything failed on the way. `out` is gone
 * afterwards. */
void *xml_out_tree(struct XmlOut *out);
/** The bytes of a file or a piece, in the arena. data is NULL when anything failed on the way. */
struct Bytes xml_out_finish(struct XmlOut *out);

#endif
