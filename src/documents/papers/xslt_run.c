/* The only file that knows libxslt. A template may read the plan it is given and nothing else: no file is opened (the
 * set of templates is put together here, from memory), all five doors of libxslt are shut, and how deep a template may
 * go, how long it may work and how much memory it may take is bounded, so that a wrong one ends with a message. Nothing
 * is registered beyond XSLT 1.0. */
#include "template_tree.h"

#include "documents/diagram/svg_private.h"
#include "documents/xml/memory_watch.h"

#include <limits.h>
#include <pthread.h>
#include <stdio.h>
#include <string.h>

enum {
    DEPTH_MOST = 300, /* templates within each other; ours need ten */
    PAGE_MOST_BYTES = 32 * 1024 * 1024,
    MESSAGE_MOST = 400,
};
/* What a page may take: so much, and so many times the plan with its drawings, by bytes. Ours take a tenth of it, the
 * longest plan's too. */
enum { MEGABYTE = 1000000, HELD_MOST_BYTES = 64 * MEGABYTE, HELD_MOST_TIMES = 64, ASKED_MOST_TIMES = 64 };
enum { DRAWN_TIMES = 6 }; /* our own templates are given no drawings: what they may take goes by the plan alone */
enum { XPATH_STEPS_MOST = 5 * MEGABYTE, XPATH_STEPS_TIMES = 8, STEPS_MOST = MEGABYTE };
static const char main_file[] = "papers.xsl", style_file[] = "house.css";

struct XsltRun {
    struct Arena *arena;
    const struct TemplateSet *set;
    xsltStylesheetPtr sheet;
    xmlDocPtr plan, added; /* until it is in the plan */
    uint64_t plan_bytes;   /* with its drawings */
    xmlNodePtr print;      /* what this program adds to the plan: which paper, its mark, the style, the diagram */
    xmlNodePtr places[2];
    struct PrintFacts facts;
    bool failed;
};

/* What libxslt says comes in pieces; kept up to a length. */
struct Listener {
    char said[MESSAGE_MOST];
    size_t length;
    const xsltTransformContext *at_work; /* NULL while compiling */
    const xmlNode *instruction;          /* that was at work when the first word came */
};

static const xmlChar *to_xml(const char *text)
{
    return (const xmlChar *)text;
}

static void listen(void *context, const char *format, ...) WEND_PRINTF(2, 3);
static void listen(void *context, const char *format, ...)
{
    struct Listener *listener = context;
    if (listener->at_work != NULL && listener->instruction == NULL) {
        listener->instruction = listener->at_work->inst;
    }
    va_list arguments;
    va_start(arguments, format);
    const size_t room = sizeof listener->said - listener->length;
    char *end = listener->said + listener->length;
    const int wrote = vsnprintf(end, room, format, arguments); /* NOLINT(clang-analyzer-valist.Uninitialized) */
    va_end(arguments);
    listener->length += wrote < 0 ? 0 : (size_t)wrote < room ? (size_t)wrote : room - 1;
}

#if LIBXML_VERSION >= 21200
static void stay_quiet(void *context, const xmlError *error)
#else
static void stay_quiet(void *context, xmlErrorPtr error)
#endif
{
    (void)context;
    (void)error;
}

static void say_nothing(void *context, const char *format, ...) WEND_PRINTF(2, 3);
static void say_nothing(void *context, const char *format, ...)
{
    (void)context;
    (void)format;
}

/* While libxml2 works for us it must not write to the terminal; the handler belongs to the thread. */
struct Quiet {
    xmlStructuredErrorFunc handler;
    xmlGenericErrorFunc plain_handler;
    void *context, *plain_context;
};

static struct Quiet be_quiet(void)
{
    const struct Quiet before = {xmlStructuredError, xmlGenericError, xmlStructuredErrorContext,
                                 xmlGenericErrorContext};
    xmlSetStructuredErrorFunc(NULL, stay_quiet);
    xmlSetGenericErrorFunc(NULL, say_nothing);
    return before;
}

static void speak_again(struct Quiet before)
{
    xmlSetStructuredErrorFunc(before.context, before.handler);
    xmlSetGenericErrorFunc(before.plain_context, before.plain_handler);
}

/* "... line 12 element for-each\nxsl:for-each : could not compile ...\n": the line, and the sentence. */
static void take_message(struct Arena *arena, const struct Listener *listener, struct TemplateFault *fault)
{
    const char *line = strstr(listener->said, " line "), *text = listener->said;
    const char *break_after = line == NULL ? NULL : strchr(line, '\n');
    if (break_after != NULL && break_after[1] != '\0') {
        double number = 0;
        const size_t digits = strspn(line + 6, "0123456789");
        fault->line = number_read(line + 6, digits, &number) && number < 1e6 ? (int)number : 0;
        text = break_after + 1;
    }
    size_t length = strcspn(text, "\n");
    while (length > 0 && text[length - 1] == ' ') {
        length--;
    }
    fault->detail = length == 0 ? diag_phrase(PHRASE_NO_REASON) : arena_text(arena, text, length);
}

/* ---- compiling ---- */

/* libxslt has one handler for what it says, for the whole process, so whoever uses it takes turns. A turn is a whole
 * paper, a second of a long route: the others sleep. */
static pthread_mutex_t turns = PTHREAD_MUTEX_INITIALIZER;
struct Turn {
    xmlGenericErrorFunc handler;
    void *context;
};

static struct Turn take_turn(xmlGenericErrorFunc listener, void *context)
{
    pthread_mutex_lock(&turns);
    const struct Turn before = {xsltGenericError, xsltGenericErrorContext};
    xsltSetGenericErrorFunc(context, listener);
    return before;
}

static void end_turn(struct Turn before)
{
    xsltSetGenericErrorFunc(before.context, before.handler);
    pthread_mutex_unlock(&turns);
}

/* Takes the tree over. NULL with *fault filled. */
static xsltStylesheetPtr compile(struct Arena *arena, xmlDocPtr tree, const char *file, struct TemplateFault *fault)
{
    struct Listener listener = {.length = 0};
    const struct Turn turn = take_turn(listen, &listener);
    xsltStylesheetPtr sheet = xsltParseStylesheetDoc(tree);
    end_turn(turn);
    if (sheet != NULL && sheet->errors == 0) {
        return sheet;
    }
    *fault = (struct TemplateFault){.file = file, .code = MSG_TEMPLATE_XSLT};
    take_message(arena, &listener, fault);
    if (sheet != NULL) {
        xsltFreeStylesheet(sheet);
    } else {
        xmlFreeDoc(tree);
    }
    return NULL;
}

bool xslt_run_try(struct Arena *arena, const struct Template *file, struct TemplateFault *fault)
{
    if (!documents_begin()) {
        *fault = (struct TemplateFault){.file = ""};
        return false;
    }
    const struct Quiet before = be_quiet();
    xmlDocPtr tree = template_tree_read(arena, file, fault);
    if (tree != NULL) {
        template_tree_alone(tree);
        xsltStylesheetPtr sheet = compile(arena, tree, file->name, fault);
        if (sheet != NULL) {
            xsltFreeStylesheet(sheet);
            fault->file = "";
        }
    }
    speak_again(before);
    return tree != NULL && *fault->file == '\0';
}

struct XsltRun *xslt_run_new(struct Arena *arena, const struct TemplateSet *set, struct TemplateFault *fault)
{
    *fault = (struct TemplateFault){.file = ""};
    struct XsltRun *run = documents_begin() ? arena_alloc(arena, sizeof *run) : NULL;
    if (run == NULL) {
        return NULL;
    }
    const struct Quiet before = be_quiet();
    xmlDocPtr tree = template_tree_whole(arena, set, main_file, fault);
    *run = (struct XsltRun){.arena = arena, .set = set};
    run->sheet = tree == NULL ? NULL : compile(arena, tree, main_file, fault);
    speak_again(before);
    return run->sheet == NULL ? NULL : run;
}

/* ---- the plan ---- */

/* <print mark="1a2b..." language="en" pack="of-articles"> <style>...</style> <diagram> <svg .../> </diagram> <narrow>
 * <svg/> </narrow>
 * </print>, for the plan's last child. */
static bool add_print(struct XsltRun *run)
{
    const struct Template *style = template_find(run->set, style_file);
    run->added = style == NULL ? NULL : xmlNewDoc(to_xml("1.0"));
    xmlNodePtr print = run->added == NULL ? NULL : xmlNewDocNode(run->added, NULL, to_xml("print"), NULL);
    if (print == NULL) {
        return false;
    }
    xmlDocSetRootElement(run->added, print);
    run->print = print;
    const char *text = arena_text(run->arena, style->bytes.data, style->bytes.length);
    if (xmlNewProp(print, to_xml("mark"), to_xml(run->facts.mark)) == NULL ||
        xmlNewProp(print, to_xml("language"), to_xml(words_code(run->facts.language))) == NULL ||
        (run->facts.own == NULL && xmlNewProp(print, to_xml("pack"), to_xml("of-articles")) == NULL) ||
        xmlNewTextChild(print, NULL, to_xml("style"), to_xml(text)) == NULL) {
        return false;
    }
    run->places[PRINT_DIAGRAM] = xmlNewChild(print, NULL, to_xml("diagram"), NULL);
    run->places[PRINT_NARROW] = xmlNewChild(print, NULL, to_xml("narrow"), NULL);
    return run->places[PRINT_DIAGRAM] != NULL && run->places[PRINT_NARROW] != NULL &&
           (run->facts.own != NULL || (page_stand_in(run->places[PRINT_DIAGRAM], PRINT_DIAGRAM) &&
                                       page_stand_in(run->places[PRINT_NARROW], PRINT_NARROW)));
}

static void drop_plan(struct XsltRun *run)
{
    xmlFreeDoc(run->plan);
    xmlFreeDoc(run->added);
    run->plan = run->added = NULL;
}

void xslt_run_begin(struct XsltRun *run, const struct PrintFacts *facts)
{
    const struct Quiet before = be_quiet();
    drop_plan(run);
    run->facts = *facts;
    run->plan_bytes = 0;
    run->failed = !add_print(run);
    speak_again(before);
}

/* Of a firm's own templates nobody knows what they do with a drawing: they are given all of it. */
static bool give_whole(xmlNodePtr place, struct Bytes drawing)
{
    xmlDocPtr tree = xmlReadMemory(drawing.data, (int)drawing.length, NULL, "UTF-8", XML_PARSE_NONET | XML_PARSE_HUGE);
    xmlNodePtr copy = tree == NULL ? NULL : xmlDocCopyNode(xmlDocGetRootElement(tree), place->doc, 1);
    xmlFreeDoc(tree); /* the copy's names are its own document's */
    return copy != NULL && xmlAddChild(place, copy) != NULL;
}

void xslt_run_draw(struct XsltRun *run, enum PrintPlace place, struct Bytes drawing)
{
    run->plan_bytes += drawing.length;
    const struct Quiet before = be_quiet();
    run->failed =
        run->failed || drawing.data == NULL || drawing.length > INT_MAX || !give_whole(run->places[place], drawing);
    speak_again(before);
}

bool xslt_run_load(struct XsltRun *run, struct XmlOut *plan)
{
    run->plan_bytes += (run->facts.own == NULL ? DRAWN_TIMES : 1) * xml_out_size(plan);
    run->plan = xml_out_tree(plan);
    const struct Quiet before = be_quiet();
    if (run->plan != NULL && !run->failed) {
        xmlUnlinkNode(run->print);
        run->failed = xmlAddChild(xmlDocGetRootElement(run->plan), run->print) == NULL;
    }
    speak_again(before);
    return run->plan != NULL && !run->failed;
}

/* ---- a page ---- */

static bool shut_doors(xsltTransformContextPtr context, xsltSecurityPrefsPtr doors)
{
    static const xsltSecurityOption all[] = {XSLT_SECPREF_READ_FILE, XSLT_SECPREF_WRITE_FILE,
                                             XSLT_SECPREF_CREATE_DIRECTORY, XSLT_SECPREF_READ_NETWORK,
                                             XSLT_SECPREF_WRITE_NETWORK};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        if (xsltSetSecurityPrefs(doors, all[i], xsltSecurityForbid) != 0) {
            return false;
        }
    }
    return xsltSetCtxtSecurityPrefs(doors, context) == 0;
}

/* A template at work. */
struct Running {
    xsltTransformContextPtr context;
    struct Listener listener;
    uint64_t held_most_bytes;
    unsigned long xpath_steps_most;
    enum WatchedEnd end;
};

static void tell_why(struct XsltRun *run, const struct Running *work, struct TemplateFault *fault)
{
    const xsltTransformContext *context = work->context;
    const struct Listener *listener = &work->listener;
    *fault =
        (struct TemplateFault){.file = template_tree_file(listener->instruction, main_file), .code = MSG_TEMPLATE_RUN};
    take_message(run->arena, listener, fault);
    if (listener->instruction != NULL) {
        fault->line = (int)xmlGetLineNo(listener->instruction);
    }
    if (context->opCount >= context->opLimit || context->xpathCtxt->opCount >= work->xpath_steps_most ||
        work->end == WATCHED_ASKS) {
        fault->code = MSG_TEMPLATE_ENDLESS;
        fault->detail = NULL;
    }
    if (work->end == WATCHED_HOLDS) {
        fault->code = MSG_TEMPLATE_MEMORY;
        fault->detail = arena_print(run->arena, "%d", (int)(work->held_most_bytes / MEGABYTE));
    }
}

static struct Bytes save(struct XsltRun *run, xmlDocPtr page, struct TemplateFault *fault)
{
    *fault = (struct TemplateFault){.file = main_file};
    const struct Bytes bytes = page_save(run->arena, page, &(struct PageFacts){run->facts.mark, run->facts.own}, fault);
    if (bytes.length > PAGE_MOST_BYTES) {
        fault->file = main_file;
        fault->code = MSG_TEMPLATE_ENDLESS;
        return (struct Bytes){NULL, 0};
    }
    return bytes;
}

/* Between two instructions, and within an expression. */
static void stop(void *at_work)
{
    struct Running *work = at_work;
    work->context->state = XSLT_STATE_STOPPED;
    work->context->xpathCtxt->opLimit = 1;
    if (work->listener.instruction == NULL) {
        const xmlNode *at = work->context->inst;
        while (at != NULL && at->type != XML_ELEMENT_NODE) { /* a copied text has no line */
            at = at->parent;
        }
        work->listener.instruction = at;
    }
}

static xmlDocPtr transform(struct XsltRun *run, xsltTransformContextPtr context, struct TemplateFault *fault)
{
    struct Running work = {.context = context,
                           .listener = {.at_work = context},
                           .held_most_bytes = HELD_MOST_BYTES + HELD_MOST_TIMES * run->plan_bytes,
                           .xpath_steps_most = (unsigned long)(XPATH_STEPS_MOST + XPATH_STEPS_TIMES * run->plan_bytes)};
    xsltSetTransformErrorFunc(context, &work.listener, listen);
    context->maxTemplateDepth = DEPTH_MOST;
    context->opLimit = (unsigned long)(STEPS_MOST + run->plan_bytes);
    context->xpathCtxt->opLimit = work.xpath_steps_most;
    const struct Turn turn = take_turn(say_nothing, NULL);
    memory_watch_begin(
        (struct WatchedWork){stop, &work, work.held_most_bytes, ASKED_MOST_TIMES * work.held_most_bytes});
    xmlDocPtr page = xsltApplyStylesheetUser(run->sheet, run->plan, NULL, NULL, NULL, context);
    work.end = memory_watch_end();
    end_turn(turn);
    if (page != NULL && context->state == XSLT_STATE_OK && work.end == WATCHED_WITHIN) {
        return page;
    }
    tell_why(run, &work, fault);
    xmlFreeDoc(page);
    return NULL;
}

struct Bytes xslt_run_page(struct XsltRun *run, const char *paper, struct TemplateFault *fault)
{
    struct Bytes bytes = {NULL, 0};
    const struct Quiet before = be_quiet();
    *fault = (struct TemplateFault){.file = ""};
    xsltSecurityPrefsPtr doors = xsltNewSecurityPrefs();
    xsltTransformContextPtr context = doors == NULL || xmlSetProp(run->print, to_xml("paper"), to_xml(paper)) == NULL
                                          ? NULL
                                          : xsltNewTransformContext(run->sheet, run->plan);
    if (context != NULL && shut_doors(context, doors)) {
        xmlDocPtr page = transform(run, context, fault);
        if (page != NULL) {
            bytes = save(run, page, fault);
            xmlFreeDoc(page);
        }
    }
    if (context != NULL) {
        xsltFreeTransformContext(context);
    }
    if (doors != NULL) {
        xsltFreeSecurityPrefs(doors);
    }
    speak_again(before);
    return bytes;
}

/* What the trees left behind lies in pieces between what stays, a third of all of a long route. */
void xslt_run_end(struct XsltRun *run)
{
    drop_plan(run);
    memory_watch_trim();
}

void xslt_run_free(struct XsltRun *run)
{
    if (run != NULL) {
        drop_plan(run);
        xsltFreeStylesheet(run->sheet);
        run->sheet = NULL;
    }
}
