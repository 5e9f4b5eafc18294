/* The schema of the route file that editors complete and check by: it takes what the format takes and refuses what that
 * refuses, key by key. Patterns of numbers and texts are held by a validator in the deep run (route-schema-deep): they
 * need regular expressions that the C library does not have. */
#include "run_suite.h"
#include "wend/wend.h"

#include <check.h>
#include <cjson/cJSON.h>
#include <stdlib.h>
#include <string.h>

/* By the words of JSON Schema 2020-12 that the schema uses; another one ends the test. Its depth is that of the schema.
 */
static bool takes(const cJSON *root, const cJSON *schema, const cJSON *value);

static bool of_type(const char *type, const cJSON *value)
{
    return (strcmp(type, "object") == 0 && cJSON_IsObject(value)) ||
           (strcmp(type, "array") == 0 && cJSON_IsArray(value)) ||
           (strcmp(type, "string") == 0 && cJSON_IsString(value)) ||
           (strcmp(type, "boolean") == 0 && cJSON_IsBool(value)) ||
           (strcmp(type, "number") == 0 && cJSON_IsNumber(value)) ||
           (strcmp(type, "integer") == 0 && cJSON_IsNumber(value) && value->valuedouble == value->valueint);
}

static int that_take(const cJSON *root, const cJSON *schemas, const cJSON *value)
{
    int count = 0;
    const cJSON *one = NULL;
    cJSON_ArrayForEach(one, schemas) count += takes(root, one, value);
    return count;
}

static bool is_one_of(const cJSON *list, const cJSON *value)
{
    const cJSON *one = NULL;
    cJSON_ArrayForEach(one, list) if (cJSON_Compare(one, value, true)) return true;
    return false;
}

static bool types_take(const cJSON *types, const cJSON *value)
{
    bool any = cJSON_IsString(types) && of_type(types->valuestring, value);
    const cJSON *one = NULL;
    cJSON_ArrayForEach(one, types) any = any || of_type(one->valuestring, value);
    return any;
}

static bool keys_take(const cJSON *root, const cJSON *schema, const cJSON *object)
{
    const cJSON *properties = cJSON_GetObjectItemCaseSensitive(schema, "properties");
    const cJSON *more = cJSON_GetObjectItemCaseSensitive(schema, "additionalProperties");
    const cJSON *names = cJSON_GetObjectItemCaseSensitive(schema, "propertyNames");
    const cJSON *required = cJSON_GetObjectItemCaseSensitive(schema, "required");
    const cJSON *one = NULL;
    bool good = true;
    cJSON_ArrayForEach(one, object)
    {
        const cJSON *property = cJSON_GetObjectItemCaseSensitive(properties, one->string);
        cJSON *name = cJSON_CreateString(one->string);
        good = good && (names == NULL || takes(root, names, name)) &&
               (property != NULL ? takes(root, property, one) : more == NULL || takes(root, more, one));
        cJSON_Delete(name);
    }
    cJSON_ArrayForEach(one, required) good = good && cJSON_GetObjectItemCaseSensitive(object, one->valuestring) != NULL;
    return good;
}

static const char *const by_keys = " properties additionalProperties propertyNames required ";
static const char *const silent = " description title pattern enumDescriptions $schema $defs then ";

static bool word_takes(const cJSON *root, const cJSON *schema, const cJSON *rule, const cJSON *value)
{
    const char *word = rule->string;
    const double limit = rule->valuedouble;
    const int count = cJSON_GetArraySize(value);
    char spaced[64];
    snprintf(spaced, sizeof spaced, " %s ", word);
    if (strstr(silent, spaced) != NULL) {
        return true;
    }
    if (strstr(by_keys, spaced) != NULL) {
        return !cJSON_IsObject(value) || keys_take(root, schema, value);
    }
    if (strcmp(word, "$ref") == 0) {
        ck_assert(strncmp(rule->valuestring, "#/$defs/", 8) == 0);
        const cJSON *of =
            cJSON_GetObjectItemCaseSensitive(cJSON_GetObjectItemCaseSensitive(root, "$defs"), rule->valuestring + 8);
        ck_assert_msg(of != NULL, "%s is not there", rule->valuestring);
        return takes(root, of, value);
    }
    if (strcmp(word, "if") == 0) {
        return !takes(root, rule, value) || takes(root, cJSON_GetObjectItemCaseSensitive(schema, "then"), value);
    }
    if (strcmp(word, "items") == 0) {
        const cJSON *one = NULL;
        bool all = true;
        cJSON_ArrayForEach(one, value) all = all && takes(root, rule, one);
        return all || !cJSON_IsArray(value);
    }
    return strcmp(word, "type") == 0            ? types_take(rule, value)
           : strcmp(word, "enum") == 0          ? is_one_of(rule, value)
           : strcmp(word, "const") == 0         ? cJSON_Compare(rule, value, true)
           : strcmp(word, "allOf") == 0         ? that_take(root, rule, value) == cJSON_GetArraySize(rule)
           : strcmp(word, "anyOf") == 0         ? that_take(root, rule, value) > 0
           : strcmp(word, "oneOf") == 0         ? that_take(root, rule, value) == 1
           : strcmp(word, "not") == 0           ? !takes(root, rule, value)
           : strcmp(word, "minimum") == 0       ? !cJSON_IsNumber(value) || value->valuedouble >= limit
           : strcmp(word, "maximum") == 0       ? !cJSON_IsNumber(value) || value->valuedouble <= limit
           : strcmp(word, "minItems") == 0      ? !cJSON_IsArray(value) || count >= limit
           : strcmp(word, "maxItems") == 0      ? !cJSON_IsArray(value) || count <= limit
           : strcmp(word, "minProperties") == 0 ? !cJSON_IsObject(value) || count >= limit
           : strcmp(word, "maxProperties") == 0 ? !cJSON_IsObject(value) || count <= limit
           : strcmp(word, "minLength") == 0     ? !cJSON_IsString(value) || (double)strlen(value->valuestring) >= limit
           : strcmp(word, "maxLength") == 0     ? !cJSON_IsString(value) || (double)strlen(value->valuestring) <= limit
                                                : (ck_abort_msg("%s is no word that is held here", word), false);
}

static bool takes(const cJSON *root, const cJSON *schema, const cJSON *value)
{
    if (cJSON_IsBool(schema)) {
        return cJSON_IsTrue(schema);
    }
    const cJSON *rule = NULL;
    bool good = true;
    cJSON_ArrayForEach(rule, schema) good = good && word_takes(root, schema, rule, value);
    return good;
}

#define RUN     "{\"load\":{\"current\":\"20 A\"},\"cable\":{\"type\":\"BS5467\",\"cores\":3}}"
#define SEGMENT "{\"name\":\"wall\",\"way\":\"wall\",\"length\":\"12 m\"}"
static const char good[] = "{\"wend\":1,\"job\":{\"title\":\"Byre\"},"
                           "\"supply\":{\"system\":\"TN-S\",\"loop-impedance\":\"0.35 ohm\"},"
                           "\"runs\":{\"feeder\":" RUN "},\"segments\":[" SEGMENT "]}";

/* As routes/route-format.md has each key. */
static const struct {
    const char *of, *becomes;
    bool taken;
} rows[] = {
    {"\"wend\":1", "\"wend\":1", true},
    {"\"wend\":1,", "", false},
    {"\"wend\":1", "\"wend\":2", false},
    {"\"job\":{\"title\":\"Byre\"},", "", false},
    {"\"title\":\"Byre\"", "\"title\":\"\"", false},
    {"\"title\":\"Byre\"", "\"titel\":\"Byre\"", false},
    {"\"title\":\"Byre\"", "\"title\":7", true}, /* a bare number is a title too */
    {"\"title\":\"Byre\"", "\"title\":\"Byre\",\"location\":\"workshop\"", true},
    {"\"title\":\"Byre\"", "\"title\":\"Byre\",\"location\":\"workshops\"", false},
    {"\"TN-S\"", "\"TN-C-S\"", true},
    {"\"TN-S\"", "\"TN-C\"", false},
    {"\"runs\":{\"feeder\":" RUN "}", "\"runs\":{}", false},
    {"\"runs\":{\"feeder\":" RUN "}", "\"runs\":[" RUN "]", false},
    {"\"cores\":3", "\"cores\":3,\"size\":\"choose\"", true},
    {"\"type\":\"BS5467\",\"cores\":3", "\"type\":\"BS5467\"", false},     /* the number of cores is asked for */
    {"\"type\":\"BS5467\",\"cores\":3", "\"type\":\"BS6004-flat\"", true}, /* but of the one kind that has one */
    {"\"type\":\"BS5467\",\"cores\":3", "\"type\":\"BS5468\",\"cores\":3", false},
    {"\"load\":{\"current\":\"20 A\"}", "\"load\":[{\"current\":\"20 A\"},{\"power\":\"1 kW\"}]", true},
    {"\"load\":{\"current\":\"20 A\"}", "\"load\":[]", false},
    {"\"load\":{\"current\":\"20 A\"}", "\"load\":\"20 A\"", false},
    {"\"load\":{\"current\":\"20 A\"},", "", false}, /* a power run has a load */
    {"[" SEGMENT "]", "[]", false},
    {"[" SEGMENT "]", SEGMENT, false},
    {"\"name\":\"wall\",", "", false},
    {",\"length\":\"12 m\"", "", false},
    {"\"way\":\"wall\"", "\"way\":\"wal\"", false},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"fixed-to\":\"brick\"", true},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"depth\":\"0.6 m\"", false}, /* only what is in the ground has a depth */
    {"\"way\":\"wall\"", "\"way\":\"buried\",\"depth\":\"0.6 m\"", true},
    {"\"way\":\"wall\"", "\"way\":\"buried\"", true}, /* and 600 mm where it says none */
    {"\"way\":\"wall\"", "\"way\":\"duct\"", true},   /* a duct of no size is left open */
    {RUN, "{\"kind\":\"earth\",\"cable\":{\"type\":\"BS6004-single\",\"size\":\"16 mm2\"}}", true},
    {RUN, "{\"kind\":\"earth\",\"cable\":{\"type\":\"BS6004-single\"}}", false}, /* its size is asked for */
    {RUN, "{\"kind\":\"earth\",\"cable\":{\"type\":\"BS5467\",\"size\":\"16 mm2\"}}", false}, /* of power */
    {RUN,
     "{\"kind\":\"earth\",\"load\":{\"current\":\"1 A\"},\"cable\":{\"type\":\"BS6004-single\",\"size\":\"16 mm2\"}}",
     false},
    {RUN, "{\"kind\":\"data\",\"cable\":{\"type\":\"EN50288\"}}", true},
    {"\"way\":\"wall\"", "\"way\":\"buried\",\"depth\":\"0.6 m\",\"sun\":\"full\"", false},
    {"\"way\":\"wall\"", "\"way\":\"duct\",\"depth\":\"0.6 m\",\"duct\":{\"size\":\"110 mm\"}", true},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"duct\":{\"size\":\"110 mm\"}", false},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"bends\":2", true},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"bends\":-1", false},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"bends\":101", false},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"bends\":2.5", false},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"bends\":[{\"angle\":\"90 deg\"}]", true},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"heading\":\"NNE\"", true},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"marks\":[]", false},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"measure-again\":\"yes\"", true},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"measure-again\":\"perhaps\"", false},
    {"\"way\":\"wall\"", "\"way\":\"wall\",\"colour\":\"grey\"", false},
};
enum { ROWS = sizeof rows / sizeof rows[0] };

static cJSON *read_schema(void)
{
    char *text = wend_schema();
    ck_assert_ptr_nonnull(text);
    cJSON *schema = cJSON_Parse(text);
    wend_text_free(text);
    ck_assert_ptr_nonnull(schema);
    return schema;
}

START_TEST(takes_what_the_format_takes)
{
    char text[2048];
    const char *at = strstr(good, rows[_i].of);
    ck_assert_ptr_nonnull(at);
    snprintf(text, sizeof text, "%.*s%s%s", (int)(at - good), good, rows[_i].becomes, at + strlen(rows[_i].of));
    cJSON *schema = read_schema(), *route = cJSON_Parse(text);
    ck_assert_msg(route != NULL, "%s", text);
    ck_assert_msg(takes(schema, schema, route) == rows[_i].taken, "%s is %s", text,
                  rows[_i].taken ? "refused" : "taken");
    cJSON_Delete(route);
    cJSON_Delete(schema);
}
END_TEST

/* All but "wend" itself: a key without a description helps nobody in an editor. */
START_TEST(every_key_is_described)
{
    cJSON *schema = read_schema();
    int keys = 0;
    const cJSON *of = NULL, *key = NULL;
    cJSON_ArrayForEach(of, cJSON_GetObjectItemCaseSensitive(schema, "$defs"))
    {
        cJSON_ArrayForEach(key, cJSON_GetObjectItemCaseSensitive(of, "properties"))
        {
            const cJSON *any = cJSON_GetObjectItemCaseSensitive(key, "anyOf");
            const cJSON *help = cJSON_GetObjectItemCaseSensitive(key, "description");
            help = help != NULL ? help : cJSON_GetObjectItemCaseSensitive(cJSON_GetArrayItem(any, 0), "description");
            ck_assert_msg((cJSON_IsString(help) && strlen(help->valuestring) > 3) || strcmp(key->string, "wend") == 0,
                          "%s of %s", key->string, of->string);
            keys++;
        }
    }
    ck_assert_int_gt(keys, 150);
    cJSON_Delete(schema);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("schema");
    TCase *tests = tcase_create("route");
    tcase_add_loop_test(tests, takes_what_the_format_takes, 0, ROWS);
    tcase_add_test(tests, every_key_is_described);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
