/* Reads the holes of a template. */
#include "words_private.h"

#include <string.h>

static const char *const plain_units[UNITS] = {
#define UNIT(id, plain, sign) [id] = (plain),
#include "words/en/units.inc"
#undef UNIT
};

static bool read_unit(struct Bytes inner, struct Hole *out)
{
    out->kind = HOLE_UNIT;
    for (int i = 0; i < UNITS; i++) {
        if (strlen(plain_units[i]) == inner.length && memcmp(plain_units[i], inner.data, inner.length) == 0) {
            out->unit = (enum Unit)i;
            return inner.length > 0;
        }
    }
    return false;
}

static bool read_forms(struct Bytes inner, struct Hole *out)
{
    const char *from = inner.data;
    const char *end = inner.data + inner.length;
    out->kind = HOLE_FORMS;
    for (const char *at = from; at <= end; at++) {
        if (at == end || *at == '|') {
            if (out->form_count == WORDS_FORMS_MOST) {
                return false;
            }
            out->forms[out->form_count++] = (struct Bytes){from, (size_t)(at - from)};
            from = at + 1;
        }
    }
    return out->form_count > 1;
}

/* Behind the index: nothing, one sign, or forms. */
static bool read_style(struct Bytes style, struct Hole *out)
{
    if (style.length == 0) {
        out->kind = HOLE_WHOLE;
        return true;
    }
    if (style.data[0] == '?') {
        return read_forms((struct Bytes){style.data + 1, style.length - 1}, out);
    }
    if (style.data[0] == '=' && style.length == 1) {
        out->kind = HOLE_WHOLE;
        out->typed = true;
        return true;
    }
    out->kind = style.data[0] == '#' ? HOLE_FIGURE : style.data[0] == '^' ? HOLE_CAPITAL : HOLE_SMALL;
    return style.length == 1 && (out->kind != HOLE_SMALL || style.data[0] == '_');
}

bool hole_read(const char *at, struct Hole *out)
{
    *out = (struct Hole){.kind = HOLE_BRACE, .length = 2};
    if (at[1] == '{') {
        return true;
    }
    const size_t inner = strcspn(at + 1, "{}");
    if (at[1 + inner] != '}') {
        return false;
    }
    out->length = inner + 2;
    if (at[1] == '=') {
        out->kind = HOLE_TYPED;
        out->lead = (struct Bytes){at + 2, inner - 1};
        return inner > 1;
    }
    out->lead = (struct Bytes){at + 1, strspn(at + 1, " ,;:(")};
    const char *index = at + 1 + out->lead.length;
    if (*index < '0' || *index > '9') {
        return out->lead.length == 0 && read_unit((struct Bytes){at + 1, inner}, out);
    }
    out->index = *index - '0';
    return read_style((struct Bytes){index + 1, inner - out->lead.length - 1}, out);
}

/* Blanks at an end or two together are left over from an argument that may be empty; `{ 0}` is for that. */
static bool blanks_astray(const char *text)
{
    const size_t length = strlen(text);
    return text[0] == ' ' || text[length - 1] == ' ' || strstr(text, "  ") != NULL;
}

const char *template_fault(const char *text, int forms, unsigned *used)
{
    struct Hole hole;
    *used = 0;
    if (text[0] == '\0') {
        return "is empty";
    }
    if (blanks_astray(text)) {
        return "has a blank too many";
    }
    for (const char *at = strchr(text, '{'); at != NULL; at = strchr(at + hole.length, '{')) {
        if (!hole_read(at, &hole)) {
            return "has a hole that is not well formed";
        }
        if (hole.kind == HOLE_FORMS && hole.form_count != forms) {
            return "has another number of forms than the language";
        }
        if (hole.kind >= HOLE_WHOLE) {
            *used |= 1U << hole.index;
        }
    }
    return (*used & (*used + 1)) != 0 ? "leaves out an argument" : NULL;
}
