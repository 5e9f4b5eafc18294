/* Numbers of a mapping: every way in which one can be wrong gets its own sentence, with what to write instead. */
#include "field_values_private.h"

#include <math.h>
#include <string.h>

static void put(size_t offset, void *out, double value, const struct TreeNode *node)
{
    struct Quantity quantity = {.value = value == 0 ? 0 : value, .given = true, .mark = node->mark};
    memcpy((char *)out + offset, &quantity, sizeof quantity);
}

static const char *example_of(struct Reader *reader, const struct Field *field)
{
    if (field->unit != MEASURE_NONE) {
        return quantity_example(field->unit);
    }
    return quantity_show(reader->arena, field->allowed_count > 0 ? field->allowed[0] : field->most, field->unit);
}

static void report_fault(struct Reader *reader, const struct Field *field, const struct TreeNode *node,
                         const struct QuantityRead *read)
{
    const char *written = fields_quote(reader, node->text);
    switch (read->fault) {
    case QUANTITY_GOOD: break;
    case QUANTITY_NOT_A_NUMBER:
        reader_report(reader, MSG_NUMBER_DUE, node, DIAG_WORDS(field->key, written, example_of(reader, field)));
        break;
    case QUANTITY_ODD:
        reader_report(reader, MSG_NUMBER_ODD, node, DIAG_WORDS(field->key, written, read->reason));
        break;
    case QUANTITY_COMMA:
        reader_report(reader, MSG_DECIMAL_COMMA, node,
                      DIAG_WORDS(field->key, written, fields_quote(reader, read->advice)));
        break;
    case QUANTITY_NO_UNIT:
        reader_report(reader, MSG_UNIT_MISSING, node, DIAG_WORDS(field->key, written, read->advice));
        break;
    case QUANTITY_HORSEPOWER: reader_report(reader, MSG_UNIT_HORSEPOWER, node, DIAG_WORDS(field->key)); break;
    case QUANTITY_WRONG_UNIT:
        reader_report(
            reader, MSG_UNIT_WRONG, node,
            DIAG_WORDS(field->key, fields_quote(reader, read->reason), quantity_units(reader->arena, field->unit)));
        break;
    case QUANTITY_UNIT_NOT_DUE:
        reader_report(reader, MSG_UNIT_NOT_DUE, node,
                      DIAG_WORDS(field->key, fields_quote(reader, read->reason), read->advice));
        break;
    }
}

static const char *allowed_list(struct Reader *reader, const struct Field *field)
{
    struct TextBuilder list = text_builder(reader->arena);
    for (int i = 0; i < field->allowed_count; i++) {
        text_add(&list, quantity_show(reader->arena, field->allowed[i], field->unit));
        text_add(&list, i + 2 < field->allowed_count ? ", " : i + 2 == field->allowed_count ? " or " : "");
    }
    return text_done(&list);
}

/* "6 mm2 and 10 mm2": the standard sizes on either side. */
static const char *nearest_sizes(struct Reader *reader, const struct Field *field, double value)
{
    int above = 0;
    while (above < field->allowed_count && field->allowed[above] < value) {
        above++;
    }
    if (above == 0 || above == field->allowed_count) {
        return quantity_show(reader->arena, field->allowed[above == 0 ? 0 : above - 1], field->unit);
    }
    return arena_print(reader->arena, "%s and %s", quantity_show(reader->arena, field->allowed[above - 1], field->unit),
                       quantity_show(reader->arena, field->allowed[above], field->unit));
}

static bool is_allowed(const struct Field *field, double value)
{
    for (int i = 0; i < field->allowed_count; i++) {
        if (!(value < field->allowed[i]) && !(value > field->allowed[i])) {
            return true;
        }
    }
    return field->allowed_count == 0;
}

static bool check_value(struct Reader *reader, const struct Field *field, const struct TreeNode *node, double value)
{
    bool whole = field->kind == FIELD_WHOLE || field->kind == FIELD_WHOLE_QUANTITY;
    if (whole && (value < floor(value) || value > floor(value))) {
        reader_report(reader, MSG_NUMBER_NOT_WHOLE, node, DIAG_WORDS(field->key, fields_quote(reader, node->text)));
        return false;
    }
    if (!is_allowed(field, value)) {
        if (field->kind == FIELD_SIZE) {
            reader_report(
                reader, MSG_SIZE_NOT_STANDARD, node,
                DIAG_WORDS(field->key, fields_quote(reader, node->text), nearest_sizes(reader, field, value)));
        } else {
            reader_report(reader, MSG_NUMBER_NOT_ONE_OF, node,
                          DIAG_WORDS(field->key, fields_quote(reader, node->text), allowed_list(reader, field)));
        }
        return false;
    }
    if (field->allowed_count == 0 && (value < field->least || value > field->most)) {
        reader_report(reader, MSG_NUMBER_OUT_OF_RANGE, node,
                      DIAG_WORDS(field->key, fields_quote(reader, node->text),
                                 quantity_show(reader->arena, field->least, field->unit),
                                 quantity_show(reader->arena, field->most, field->unit)));
        return false;
    }
    return true;
}

/* One number with its unit; false when reported. */
static bool read_number(struct Reader *reader, const struct Field *field, const struct TreeNode *node, const char *text,
                        double *out)
{
    if (field->signed_number && *text == '+') {
        text++;
    }
    struct QuantityRead read = quantity_read(reader->arena, text, field->unit);
    if (read.fault != QUANTITY_GOOD) {
        report_fault(reader, field, node, &read);
        return false;
    }
    *out = read.value;
    return check_value(reader, field, node, read.value);
}

const char *field_compass_point(int index)
{
    static const char *const points[] = {"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
                                         "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"};
    return index >= 0 && index < 16 ? points[index] : NULL;
}

static bool compass_point(const char *text, double *out)
{
    for (int i = 0; field_compass_point(i) != NULL; i++) {
        if (text_same(text, field_compass_point(i))) {
            *out = i * 22.5;
            return true;
        }
    }
    return false;
}

static void read_heading(struct Reader *reader, const struct Field *field, const struct TreeNode *node, void *out)
{
    double value = 0;
    bool begins_as_number = *node->text == '-' || (*node->text >= '0' && *node->text <= '9');
    if (compass_point(node->text, &value)) {
        put(field->offset, out, value, node);
    } else if (!begins_as_number) {
        reader_report(reader, MSG_HEADING_UNKNOWN, node, DIAG_WORDS(field->key, fields_quote(reader, node->text)));
        field_value_unknown(field, out);
    } else if (read_number(reader, field, node, node->text, &value)) {
        put(field->offset, out, value >= 360 ? 0 : value, node);
    } else {
        field_value_unknown(field, out);
    }
}

static void read_size(struct Reader *reader, const struct Field *field, const struct TreeNode *node, void *out)
{
    double value = 0;
    bool begins_as_number = *node->text != '\0' && strchr("-+.0123456789", *node->text) != NULL;
    if (text_same(node->text, "choose")) {
        return; /* the same as leaving it out: the program chooses */
    }
    if (!begins_as_number) {
        reader_report(reader, MSG_SIZE_OR_CHOOSE, node, DIAG_WORDS(field->key, fields_quote(reader, node->text)));
        field_value_unknown(field, out);
    } else if (read_number(reader, field, node, node->text, &value)) {
        put(field->offset, out, value, node);
    } else {
        field_value_unknown(field, out);
    }
}

/* The second number of "50 x 50 mm", or NULL when there are not just two. */
static const char *second_number(const char *text, size_t *first_length)
{
    const char *cross = strchr(text, 'x');
    size_t cross_bytes = 1;
    if (cross == NULL) {
        cross = strstr(text, "\xC3\x97");
        cross_bytes = 2;
    }
    if (cross == NULL) {
        return NULL;
    }
    *first_length = (size_t)(cross - text);
    const char *second = cross + cross_bytes;
    bool third = strchr(second, 'x') != NULL || strstr(second, "\xC3\x97") != NULL;
    return third ? NULL : second;
}

/* "50 x 50 mm": the first number may leave its unit to the second. */
static void read_two_sizes(struct Reader *reader, const struct Field *field, const struct TreeNode *node, void *out)
{
    size_t first_length = 0;
    const char *second = second_number(node->text, &first_length);
    enum QuantityFault fault =
        second != NULL ? quantity_read(reader->arena, second, field->unit).fault : QUANTITY_NO_UNIT;
    if (fault == QUANTITY_NO_UNIT || fault == QUANTITY_NOT_A_NUMBER) {
        reader_report(reader, MSG_SIZE_NEEDS_TWO, node, DIAG_WORDS(field->key, fields_quote(reader, node->text)));
        field_value_unknown(field, out);
        return;
    }
    const char *first = arena_text(reader->arena, node->text, first_length);
    if (quantity_read(reader->arena, first, field->unit).fault == QUANTITY_NO_UNIT) {
        size_t unit = strspn(second, " 0123456789.");
        first = arena_print(reader->arena, "%s%s", first, second + unit);
    }
    double width = 0;
    double height = 0;
    if (read_number(reader, field, node, first, &width) && read_number(reader, field, node, second, &height)) {
        put(field->offset, out, width, node);
        put(field->given_offset, out, height, node);
    } else {
        field_value_unknown(field, out);
    }
}

void field_number_read(struct Reader *reader, const struct Field *field, const struct TreeNode *node, void *out)
{
    double value = 0;
    if (field->kind == FIELD_HEADING) {
        read_heading(reader, field, node, out);
    } else if (field->kind == FIELD_SIZE) {
        read_size(reader, field, node, out);
    } else if (field->kind == FIELD_TWO_SIZES) {
        read_two_sizes(reader, field, node, out);
    } else if (!read_number(reader, field, node, node->text, &value)) {
        field_value_unknown(field, out);
    } else if (field->kind == FIELD_WHOLE) {
        int whole = (int)value;
        memcpy((char *)out + field->offset, &whole, sizeof whole);
    } else {
        put(field->offset, out, value, node);
    }
}
