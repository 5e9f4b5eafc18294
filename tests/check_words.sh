#!/bin/sh
# check_words.sh [record]: sentences are made in src/words alone. What still stands elsewhere is counted in words_left.tsv:
# string literals with three words or more, by the file's name. More than that fails; so does less, until the list says so.
set -u
cd "$(dirname "$0")/.." || exit 1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# Literals that follow one another are one, also across a macro in capitals ("size" NO_BREAK "%s"). What a
# _Static_assert says is for whoever builds it. The x and pi of what is typed into a calculator are signs, no words; the
# name of a standard and its tables are a name; keys of the route language, the policy that a page gives the browser and
# the mark that the program knows its own files by are read by programs.
cat >"$work/count.awk" <<'AWK'
function ended(    i, n, parts, words) {
    if (has && !asserts && text !~ /^[a-z-]+: [a-z-]+: [a-z-]+$/ && text !~ /^(default-src .none.;| Written by Wend )/) {
        gsub(/%[-+ #0]*[0-9*]*(\.[0-9*]+)?[a-z]+/, " ", text)
        n = split(text, parts, /[ \t]+/)
        words = 0
        for (i = 1; i <= n; i++) {
            words += parts[i] ~ /^[("]*[A-Za-z]+([-'][A-Za-z]+)*[])".,:;?!]*$/ && parts[i] !~ /^\(*(x|pi|BS|EN|IEC)$/
        }
        count[name] += words >= 3
    }
    has = 0
    text = ""
}
function read(line,    c, at) {
    while (line != "") {
        if (comment) {
            at = index(line, "*/")
            if (!at) return
            comment = 0
            line = substr(line, at + 2)
        } else if (substr(line, 1, 2) == "/*") {
            comment = 1
            line = substr(line, 3)
        } else if (substr(line, 1, 2) == "//") {
            return
        } else if (match(line, /^"([^"\\]|\\.)*"/)) {
            c = substr(line, 2, RLENGTH - 2)
            line = substr(line, RLENGTH + 1)
            gsub(/\\n/, " ", c)
            gsub(/\\"/, "\"", c)
            text = text c
            has = 1
        } else if (match(line, /^'([^'\\]|\\.)*'/)) {
            line = substr(line, RLENGTH + 1)
            ended()
        } else if (match(line, /^[A-Za-z_][A-Za-z_0-9]*/)) {
            c = substr(line, 1, RLENGTH)
            line = substr(line, RLENGTH + 1)
            if (c == "_Static_assert") asserts = 1
            if (c ~ /[a-z]/) ended(); else if (has) text = text " "
        } else if (match(line, /^[ \t\\]+/)) {
            line = substr(line, RLENGTH + 1)
        } else {
            ended()
            if (line ~ /^[;{}]/) asserts = 0
            line = substr(line, 2)
        }
    }
}
FNR == 1 { ended(); comment = asserts = 0; name = FILENAME; sub(/.*\//, "", name) }
/^[ \t]*#[ \t]*(include|error)/ && !comment { next }
{ read($0) }
END { ended(); for (name in count) if (count[name]) printf "%s\t%d\n", name, count[name] }
AWK
count() { awk -f "$work/count.awk" "$@"; }

# what is counted, and what is not
cat >"$work/sample.c" <<'C'
#include "not this one.h"
/* "nor what a comment has" */ // "nor this one here"
_Static_assert(1, "room for every check");
static const char plain[] = "one two three"; /* one */
static const char *const joined[] = {"of " /* two */
                                     "two " "parts", "too short"};
void f(void) { say("%s with %d more", "A: \"%s\" is quoted here", '"', "a" SPACE "b", "c"); } /* the fourth is quoted */
static const char macro[] = "%s" NO_BREAK "m in" NO_BREAK "and out";
static const char typed[] = "%s / (2 x pi x %s) x (ln(8 x %s) - 1)";
static const char names[] = "BS EN 1 and IEC 3";
static const char key[] = "earthing: far-end: island";
static const char mark[] = "<rect x='%s' y='%s' width='%s'/>";
C
found=$(count "$work/sample.c")
if [ "$found" != "$(printf 'sample.c\t4')" ]; then
    echo "the counter has lost its eye: it finds \"$found\" in its own sample, which has 4"
    exit 1
fi

# Every saying is named where something is said: by its whole name, or without SAY_ where a macro puts that before it.
sed -n 's/^WORD(\(SAY_[A-Z0-9_]*\),.*/\1/p' src/words/en/*.inc | LC_ALL=C sort >"$work/sayings"
find src \( -name '*.[ch]' -o -name '*.inc' \) ! -path 'src/words/en/*' -exec cat {} + |
    grep -oE '\b(SAY|CAUTION|ASSUMED|CABLE)_[A-Z0-9_]+' |
    sed -E 's/^CAUTION_(.*)/&\nSAY_SHORT_\1/; s/^(CAUTION|ASSUMED|CABLE)_/SAY_&/' >"$work/named"
# A label is named by the templates that set it, and they name no other; two labels are made in papers_labels.c.
grep -ohE "key\('label', '[a-z-]+'\)" templates/*.xsl | sed "s/.*, '//; s/'.*//" | LC_ALL=C sort -u >"$work/keys"
sed 's/^/SAY_LABEL_/' "$work/keys" | tr 'a-z-' 'A-Z_' >>"$work/named"
LC_ALL=C sort -u -o "$work/named" "$work/named"
unknown=$({ sed -n 's/^WORD(SAY_LABEL_\([A-Z0-9_]*\),.*/\1/p' src/words/en/labels.inc | tr 'A-Z_' 'a-z-'; echo in-english; echo warnings; } |
    LC_ALL=C sort | LC_ALL=C comm -13 - "$work/keys")
if [ "$(wc -l <"$work/keys")" -lt 30 ] || [ -n "$unknown" ]; then
    echo "templates ask for labels that are not in src/words/en/labels.inc:" "$unknown"
    exit 1
fi
unsaid=$(LC_ALL=C comm -23 "$work/sayings" "$work/named")
if [ "$(wc -l <"$work/sayings")" -lt 1000 ] || [ -n "$unsaid" ]; then
    echo "nobody says these (of $(wc -l <"$work/sayings") sayings):" "$unsaid"
    exit 1
fi

# No stage reads what another wrote down by cutting or searching a text: facts are members. What may: words typed by a user
# (known_cable, questions), cells and lists that are text in the file itself (table_text, known_json, json_out, csv_out),
# patterns and examples that are made there (schema_values, asked), lines broken on paper (type_width, cable_text), and what
# libxml2 and libxslt hand over (page_save, page_whole, template_*, xslt_run, diagram_sheets).
cuts=$(grep -rlE '\b(strchr|strrchr|strstr|strncmp|strncasecmp|strtok|strcspn|strspn|strpbrk)\(' src/design src/takeoff src/cutting \
    src/buying src/plan src/documents src/library --include='*.c' --include='*.h' |
    grep -vE '/(known_cable|questions|table_text|known_json|json_out|csv_out|schema_values|asked|type_width|cable_text|page_save|page_whole|template_tree|template_vet|xslt_run|diagram_sheets)\.c$')
if [ -n "$cuts" ]; then
    echo "a text is cut or searched, where a member should say it:" $cuts
    exit 1
fi

# Tables, appendices and notes of a standard are named by cite_said() and table_said(), from numbers.
named=$(grep -rvE '^ *(/?\*|//)' src/design src/takeoff src/plan src/documents/papers --include='*.c' --include=test_rows.inc |
    grep -vE '^src/plan/plan_check.c|"note",' | grep -oE '"([^"\\]|\\.)*"' |
    grep -E '"([^"]* )?(Table|Appendix|appendix|Annex|annex|note)( [^"]*)?"$')
if [ -n "$named" ]; then
    echo "a place in a standard is struct Cite or a table's reference, no text:" "$named"
    exit 1
fi

mode=${1:-check}
# The *_kinds.inc are the route language itself, plan_elements.inc and plan_types.inc the plan's. What plan_check.c says stops
# the program under test, and nobody reads it on a job. Counted by the name alone, since files move from room to room; two
# of one name are counted together.
find src/design src/takeoff src/cutting src/buying src/documents src/plan src/survey src/library ! -name '*_kinds.inc' \
    ! -name plan_elements.inc ! -name plan_types.inc ! -name plan_check.c \( -name '*.[ch]' -o -name '*.inc' \) |
    LC_ALL=C sort >"$work/files"
# shellcheck disable=SC2046 # no file of ours has a blank in its name
count $(cat "$work/files") | LC_ALL=C sort >"$work/found"
if [ "$mode" = record ]; then
    cp "$work/found" tests/words_left.tsv
    exit 0
fi
awk -F '\t' '
    NR == FNR { left[$1] = $2; next }
    { now[$1] = $2; all += $2 }
    $2 > left[$1] + 0 { printf "%s has %d sentences, and %d may be left: make them in src/words\n", $1, $2, left[$1]; bad = 1 }
    END {
        for (name in left) if (now[name] + 0 < left[name]) {
            printf "%s has %d sentences left, the list says %d: lower it (tests/check_words.sh record)\n", name, now[name], left[name]
            bad = 1
        }
        printf "%d sentences left outside src/words\n", all
        exit bad
    }' tests/words_left.tsv "$work/found"
