/* The papers: the plan, the diagram and the templates brought together, and what is wrong with a template, by file and
 * line. */
#include "documents/diagram/svg_private.h"
#include "documents/xml/memory_watch.h"
#include "papers_private.h"
#include "template_private.h"

#include <math.h>
#include <string.h>

enum { FILES_MOST = 32, FILE_MOST_BYTES = 4 * 1024 * 1024 };

int template_count(void)
{
    return template_built_in_count;
}

const struct Template *template_at(int index)
{
    return index >= 0 && index < template_built_in_count ? &template_built_in[index] : NULL;
}

/* As the program prints it: "DIR/brief.xsl:12:1: error: ... [template-xslt]". */
static struct PaperFault told(struct Arena *arena, const struct TemplateSet *set, const struct TemplateFault *fault)
{
    const struct Template *file = template_find(set, fault->file);
    struct Diag *diag = file == NULL ? NULL : diag_new(arena);
    if (diag == NULL) {
        return (struct PaperFault){.diag = NULL};
    }
    const struct Mark mark = {fault->line, fault->line > 0 ? 1 : 0};
    diag_report(diag, fault->code, mark, 0, fault->detail == NULL ? DIAG_NO_WORDS : DIAG_WORDS(fault->detail));
    return (struct PaperFault){diag, file->path, file->bytes};
}

/* Own files in place of the built-in ones of the same name. */
static struct TemplateSet set_of(struct Template files[FILES_MOST], const struct Template *own, int count)
{
    struct TemplateSet set = {0, files};
    for (; set.count < template_built_in_count && set.count < FILES_MOST; set.count++) {
        files[set.count] = template_built_in[set.count];
        for (int i = 0; i < count; i++) {
            if (text_same(own[i].name, files[set.count].name)) {
                files[set.count] = own[i];
            }
        }
    }
    return set;
}

static bool is_style(const char *name)
{
    for (const char *at = name; *at != '\0'; at++) {
        if (text_same(at, ".css")) {
            return true;
        }
    }
    return false;
}

/* A style stands in the page as it is: "<" could end it. */
static bool style_ends_early(const struct Template *style, struct TemplateFault *fault)
{
    *fault = (struct TemplateFault){.file = style->name, .line = 1, .code = MSG_TEMPLATE_STYLE, .detail = "<"};
    for (size_t i = 0; i < style->bytes.length; i++) {
        if (style->bytes.data[i] == '<') {
            return true;
        }
        fault->line += style->bytes.data[i] == '\n';
    }
    return false;
}

/* Each own file alone first, so that the line reported is its own; then all together. */
static bool find_fault(struct Arena *arena, const struct TemplateSet *set, const struct Template *own, int count,
                       struct TemplateFault *fault)
{
    for (int i = 0; i < count; i++) {
        if (own[i].bytes.length > FILE_MOST_BYTES) {
            *fault = (struct TemplateFault){.file = own[i].name, .code = MSG_TEMPLATE_TOO_LARGE};
            return true;
        }
        if (is_style(own[i].name)) {
            if (style_ends_early(&own[i], fault)) {
                return true;
            }
        } else if (!xslt_run_try(arena, &own[i], fault)) {
            return true;
        }
    }
    struct XsltRun *run = xslt_run_new(arena, set, fault);
    xslt_run_free(run);
    return run == NULL;
}

struct PaperFault templates_fault(struct Arena *arena, const struct Template *own, int count)
{
    struct Template files[FILES_MOST];
    const struct TemplateSet set = set_of(files, own, count);
    for (int i = 0; i < count; i++) {
        if (template_find(&set, own[i].name) == NULL) {
            const struct TemplateFault unknown = {
                .file = set.files[0].name, .code = MSG_TEMPLATE_INCLUDE, .detail = own[i].name};
            return told(arena, &set, &unknown);
        }
    }
    struct TemplateFault fault = {.file = ""};
    return find_fault(arena, &set, own, count, &fault) ? told(arena, &set, &fault) : (struct PaperFault){.diag = NULL};
}

static const char *const paper_words[] = {
    [PAPER_BRIEF] = "brief", [PAPER_PARTS] = "parts", [PAPER_DESIGN] = "design",     [PAPER_TEST] = "test",
    [PAPER_PACK] = "pack",   [PAPER_CARD] = "card",   [PAPER_READINGS] = "readings", [PAPER_AS_LAID] = "as-laid",
};
_Static_assert(sizeof paper_words / sizeof paper_words[0] == PAPER_COUNT, "a word for every paper");

/* What the crew and the owner read is in their own language; counter and inspector read English, and the pack has all
 * in English. */
static bool for_crew(enum Paper paper)
{
    return paper == PAPER_BRIEF || paper == PAPER_CARD || paper == PAPER_READINGS || paper == PAPER_AS_LAID;
}

bool paper_is_due(const struct Plan *plan, enum Paper paper)
{
    bool laid = false;
    for (int i = 0; paper == PAPER_AS_LAID && i < plan->segment_count; i++) {
        laid = laid || plan->segments[i].surveyed->as_laid.given;
    }
    return paper == PAPER_AS_LAID ? laid : paper != PAPER_READINGS || plan->survey->has_readings;
}

struct PapersRun {
    struct Arena *arena;
    const struct Plan *plan;
    const struct PartsList *parts;
    struct PapersWith with; /* work by labour figures of the user's own alone */
    const struct TemplateSet *set;
    struct XsltRun *xslt;
    const char *mark;
};

/* Two papers of one mark belong together; that of a changed route says so in the mark too. */
static const char *mark_shown(const struct PapersRun *run, const struct Words *words)
{
    return run->plan->survey->change_count == 0
               ? run->mark
               : words_said(run->arena, words, say(run->arena, SAY_MARK_OF_CHANGED, say_name(run->mark)));
}

/* Those that are not as they are built in, by name; NULL where all are. */
static const char *own_said(const struct PapersRun *run, const struct Words *words)
{
    struct TextBuilder names = text_builder(run->arena);
    for (int i = 0; i < run->set->count; i++) {
        const struct Template *file = &run->set->files[i];
        const struct Template *built_in = template_at(i);
        const bool same = file->bytes.length == built_in->bytes.length &&
                          memcmp(file->bytes.data, built_in->bytes.data, file->bytes.length) == 0;
        if (!same) {
            text_print(&names, "%s%s", names.length > 0 ? ", " : "", file->name);
        }
    }
    return names.length == 0
               ? NULL
               : words_said(run->arena, words, say(run->arena, SAY_OWN_TEMPLATES, say_name(text_done(&names))));
}

/* Told before anything is made. */
static struct PaperFault too_many_sheets(struct Arena *arena, int sheets)
{
    struct Diag *diag = sheets <= DIAGRAM_SHEETS_MOST ? NULL : diag_new(arena);
    if (diag != NULL) {
        diag_report(diag, MSG_DIAGRAM_TOO_LONG, (struct Mark){0, 0}, 0,
                    DIAG_WORDS(arena_print(arena, "%d", sheets), arena_print(arena, "%d", DIAGRAM_SHEETS_MOST)));
    }
    return (struct PaperFault){.diag = diag, .file = "wend"};
}

/* Draws the diagram, for the papers and for its file, and the drawing for a phone. */
static bool draw(const struct PapersRun *run, enum Language language, struct PaperDrawings *drawn,
                 struct Papers *papers)
{
    const struct SvgSheets sheets =
        svg_sheets(run->arena, run->plan, run->parts, language, run->mark, DIAGRAM_SHEETS_MOST);
    papers->fault = too_many_sheets(run->arena, sheets.count);
    if (sheets.papers.count == 0) {
        return false;
    }
    if (papers->diagram.data == NULL) { /* the crew's comes first */
        papers->diagram = sheets.file;
    }
    *drawn = (struct PaperDrawings){sheets.papers, svg_narrow(run->arena, run->plan, run->parts, language, run->mark)};
    return drawn->narrow.papers.count > 0;
}

/* Of a template of the user's own nobody knows what it does with a drawing: it is given each. Ours say where they
 * stand. */
static void hand_over(const struct PapersRun *run, const struct PaperDrawings *drawn)
{
    for (int i = 0; i <= drawn->sheets.count; i += SVG_SHEET_PIECES) {
        struct Arena *aside = arena_apart(run->arena);
        const bool sheet = i < drawn->sheets.count;
        const struct Pieces one = {SVG_SHEET_PIECES, drawn->sheets.pieces + i};
        xslt_run_draw(run->xslt, sheet ? PRINT_DIAGRAM : PRINT_NARROW,
                      svg_joined(aside, sheet ? one : drawn->narrow.papers));
        arena_free(aside);
    }
}

static bool load(const struct PapersRun *run, const struct Words *words, const struct PrintFacts *facts,
                 const struct PaperDrawings *drawn)
{
    const bool own = facts->own != NULL;
    xslt_run_begin(run->xslt, facts);
    if (own) {
        hand_over(run, drawn);
    }
    struct Arena *aside = arena_apart(run->arena);
    const bool loaded = aside != NULL && xslt_run_load(run->xslt, papers_tree(aside, run->plan, run->parts, run->with,
                                                                              words, run->mark, own));
    arena_free(aside);
    return loaded;
}

static struct Bytes make_page(const struct PapersRun *run, const char *word, struct Papers *papers)
{
    struct TemplateFault fault = {.file = ""};
    const struct Bytes page =
        papers->fault.diag != NULL ? (struct Bytes){NULL, 0} : xslt_run_page(run->xslt, word, &fault);
    if (*fault.file != '\0') {
        papers->fault = told(run->arena, run->set, &fault);
    }
    return page;
}

/* Those that are in `language` while the crew's are in `crew`; and in English all that a pack of ours holds. */
static void make_read(const struct PapersRun *run, enum Language language, enum Language crew, bool own,
                      struct Papers *papers)
{
    for (int i = 0; i < PAPER_COUNT; i++) {
        const bool read = language == (for_crew((enum Paper)i) ? crew : LANGUAGE_ENGLISH);
        const bool packed = language == LANGUAGE_ENGLISH && i != PAPER_PACK && !own;
        if ((!read && !packed) || !paper_is_due(run->plan, (enum Paper)i)) {
            continue;
        }
        const struct Bytes page = make_page(run, paper_words[i], papers);
        papers->pages[i] = read ? page : papers->pages[i];
        papers->articles[i] = packed ? page : papers->articles[i];
        papers->whole[i] = own;
    }
    const bool quoted = run->with.work != NULL && run->with.work->labour->rates.given;
    if (language == LANGUAGE_ENGLISH && quoted) {
        papers->quotation = make_page(run, "quotation", papers);
    }
}

/* Our own templates need no drawings, so these are made once the plan's tree is freed. A way with too many sheets is
 * refused before anything is made. */
static void make_pages(const struct PapersRun *run, enum Language language, enum Language crew, struct Papers *papers)
{
    const struct Words words = {
        .language = language, .medium = MEDIUM_SIGNS, .thousands = true, .together = true, .hyphens = true};
    const struct PrintFacts facts = {mark_shown(run, &words), own_said(run, &words), language};
    const bool own = facts.own != NULL;
    struct PaperDrawings *drawn = &papers->drawn[language != crew];
    if (run->plan->segment_count > DIAGRAM_SHEETS_MOST) {
        papers->fault =
            too_many_sheets(run->arena, svg_sheets_wanted(run->arena, run->plan, run->parts, language, run->mark));
    }
    if (papers->fault.diag != NULL || (own && !draw(run, language, drawn, papers))) {
        return;
    }
    if (load(run, &words, &facts, drawn)) {
        make_read(run, language, crew, own, papers);
    }
    xslt_run_end(run->xslt);
    if (!own && papers->fault.diag == NULL) {
        draw(run, language, drawn, papers);
    }
}

struct Papers document_papers(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                              enum Language language, const struct Template *own, int count)
{
    struct Papers papers =
        document_papers_with(arena, plan, parts, (struct PapersWith){NULL, NULL}, language, own, count);
    for (int i = 0; i < PAPER_COUNT; i++) {
        paper_whole(arena, &papers, (enum Paper)i);
    }
    return papers;
}

struct Bytes paper_whole(struct Arena *arena, struct Papers *papers, enum Paper paper)
{
    struct Bytes *page = &papers->pages[paper];
    if (page->data != NULL && !papers->whole[paper]) {
        const bool english = !for_crew(paper) && papers->drawn[1].sheets.count > 0;
        const struct PagePieces pieces = {&papers->drawn[english], paper_words, papers->articles};
        *page = page_whole(arena, &pieces, *page);
        papers->whole[paper] = true;
    }
    return *page;
}

struct Bytes paper_narrow(struct Arena *arena, const struct Papers *papers)
{
    return svg_narrow_file(arena, &papers->drawn[0].narrow);
}

struct Papers document_papers_with(struct Arena *arena, const struct Plan *plan, const struct PartsList *parts,
                                   struct PapersWith with, enum Language language, const struct Template *own,
                                   int count)
{
    const char *mark = document_mark(arena, plan, parts);
    struct Papers papers = {.mark = mark};
    struct Template files[FILES_MOST];
    const struct TemplateSet set = set_of(files, own, count);
    if (mark == NULL) {
        return papers;
    }
    struct TemplateFault fault;
    const struct PapersRun run = {.arena = arena,
                                  .plan = plan,
                                  .parts = parts,
                                  .with = with,
                                  .set = &set,
                                  .xslt = xslt_run_new(arena, &set, &fault),
                                  .mark = mark};
    if (run.xslt == NULL) {
        if (*fault.file != '\0') {
            papers.fault = told(arena, &set, &fault);
        }
        return papers;
    }
    make_pages(&run, language, language, &papers);
    if (language != LANGUAGE_ENGLISH && papers.fault.diag == NULL) {
        make_pages(&run, LANGUAGE_ENGLISH, language, &papers);
    }
    xslt_run_free(run.xslt);
    memory_watch_trim();
    return papers;
}
