/* Two routes of one name in one folder, or two orders whose references are one name: the papers of the second must not
 * take the place of the first's without a word. Whose papers they are is known by the job's title and site, which every
 * plan.xml has near its beginning, and by the reference in order.xml. */
#include "cli_private.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { BEGINNING_BYTES = 4096 };

/* The value of an attribute as it is written in the XML, within the job's own element; length 0 when it has none. */
static struct WendBytes of_job(const char *xml, size_t length, const char *attribute)
{
    static const char element[] = "<job ";
    const char *end = xml + length;
    const char *at = xml;
    while (at < end && ((size_t)(end - at) < sizeof element || memcmp(at, element, sizeof element - 1) != 0)) {
        at++;
    }
    const size_t name = strlen(attribute);
    for (; at < end && *at != '>'; at++) {
        if ((size_t)(end - at) > name && memcmp(at, attribute, name) == 0) {
            const char *quote = memchr(at + name, '"', (size_t)(end - at) - name);
            return quote == NULL ? (struct WendBytes){NULL, 0}
                                 : (struct WendBytes){at + name, (size_t)(quote - at) - name};
        }
    }
    return (struct WendBytes){NULL, 0};
}

static bool same(struct WendBytes a, struct WendBytes b)
{
    return a.length == b.length && (a.data == NULL || b.data == NULL || memcmp(a.data, b.data, a.length) == 0);
}

static size_t read_beginning(const char *path, char bytes[BEGINNING_BYTES])
{
    const int descriptor = open(path, O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (descriptor < 0) {
        return 0;
    }
    const ssize_t length = read(descriptor, bytes, BEGINNING_BYTES);
    close(descriptor);
    return length > 0 ? (size_t)length : 0;
}

bool other_job_absent(const char *path, struct WendBytes plan_xml)
{
    char bytes[BEGINNING_BYTES];
    const size_t there = read_beginning(path, bytes);
    const size_t now = plan_xml.length < BEGINNING_BYTES ? plan_xml.length : BEGINNING_BYTES;
    const struct WendBytes title = of_job(bytes, there, " title=\"");
    const struct WendBytes site = of_job(bytes, there, " site=\"");
    const struct WendBytes site_now = of_job(plan_xml.data, now, " site=\"");
    const bool same_site = site.length == 0 || site_now.length == 0 || same(site, site_now);
    if (title.length == 0 || (same_site && same(title, of_job(plan_xml.data, now, " title=\"")))) {
        return true;
    }
    char shown[BEGINNING_BYTES + 8];
    snprintf(shown, sizeof shown, ", \"%.*s%s%.*s\"", (int)title.length, title.data, site.length > 0 ? ", " : "",
             (int)site.length, site.length > 0 ? site.data : "");
    /* who knows what another program wrote there: ours holds nothing that a terminal acts on */
    print_shown(
        stderr,
        "wend: error: %s is of another job%s; write elsewhere with --out, or say --replace; nothing is written\n", path,
        may_be_shown(shown) ? shown : "");
    return false;
}

/* The order's own reference as it is written in the XML; length 0 when it has none. */
static struct WendBytes of_order(const char *xml, size_t length)
{
    static const char opening[] = "<cbc:ID>";
    const size_t size = sizeof opening - 1;
    for (size_t at = 0; at + size < length; at++) {
        if (memcmp(xml + at, opening, size) == 0) {
            const char *end = memchr(xml + at + size, '<', length - at - size);
            return (struct WendBytes){xml + at + size, end == NULL ? 0 : (size_t)(end - xml) - at - size};
        }
    }
    return (struct WendBytes){NULL, 0};
}

bool other_order_absent(const char *path, struct WendBytes order_xml)
{
    char bytes[BEGINNING_BYTES];
    const struct WendBytes there = of_order(bytes, read_beginning(path, bytes));
    const struct WendBytes now = of_order(order_xml.data, order_xml.length);
    char shown[BEGINNING_BYTES + 1];
    if (there.length == 0 || same(there, now)) {
        return true;
    }
    snprintf(shown, sizeof shown, "%.*s", (int)there.length, there.data);
    print_shown(
        stderr,
        "wend: error: %s is of the order \"%s\", not of \"%.*s\"; write elsewhere with --out, or say --replace; "
        "nothing is written\n",
        path, may_be_shown(shown) ? shown : "", (int)now.length, now.data);
    return false;
}
