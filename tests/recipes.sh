#!/bin/bash
# recipes.sh: adds a kind of cable, a way of running, a check and a paper to a copy of the project, as DEVELOPERS.md says,
# leaving one thing out at a time: the compiler has to name what is missing. The whole then builds, and plans with the new kind.
set -u
here=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
tar -C "$here" -cf - CMakeLists.txt include src templates routes | tar -C "$work" -xf - || exit 1
cd "$work" || exit 1
passed=0 failed=0
holds() { # WHAT COMMAND...
    local what=$1
    shift
    if "$@" >said 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what"; tail -20 said; fi
}

read -ra xml <<<"$(pkg-config --cflags libxml-2.0)"
compiles() {
    gcc -std=c17 -fsyntax-only -Werror -Wall -Wextra -D_POSIX_C_SOURCE=200809L -Isrc -Iinclude "${xml[@]}" \
        -DWEND_BUILT_MAJOR=WEND_VERSION_MAJOR -DWEND_BUILT_MINOR=WEND_VERSION_MINOR \
        -DWEND_BUILT_PATCH=WEND_VERSION_PATCH "$1"
}
refused() { ! compiles "$1" && grep -q -- "$2" said; } # FILE TEXT: it does not compile, and the compiler says TEXT
good() { # FILE...
    local file
    for file in "$@"; do holds "$file compiles" compiles "$file"; done
}
row=src/tables/cable_kinds.c edition=src/tables/edition.c words=src/takeoff/parts_cable.c checks=src/design/checks.c
papers=src/documents/papers/papers.c library=src/library/library.c program=src/cli/plan_files.c
good $row $edition $words $checks $papers $library $program

# ---- a kind of cable, from a made-up table ----
kinds=src/survey/cable_kinds.inc
kind='CABLE_KIND(CABLE_MX90, "MX90", "made up", POWER, ARMOUR, ARMOURED, 90, ARMOURED, 4D4A, M1, 4D2A, M1, M1, BS5467, ARMOURED, PVC, "MX 90")'
echo "${kind/, BS5467, ARMOURED/, ARMOURED}" >>$kinds
holds "a row that lacks a column is refused" refused $row 'requires 17 arguments'
sed -i '$d' $kinds
echo "$kind" >>$kinds
holds "a table that is not there is named" refused $row CAPACITY_M1
sed -i 's/    TABLE(4E4A, capacity_4e4a)/& TABLE(M1, capacity_m1)/; s/    TABLE(4E4B, voltdrop_4e4b)/& TABLE(M1, voltdrop_m1)/' src/tables/tables.h
good $row
holds "a table of capacity without figures is named" refused $edition capacity_m1
holds "a table of drop without figures is named" refused $edition voltdrop_m1
holds "a kind without words is named" refused $words SAY_CABLE_MX90
sed -i 's/capacity_m1/capacity_4e4a/; s/voltdrop_m1/voltdrop_4e4b/' src/tables/tables.h
echo 'WORD(SAY_CABLE_MX90, "made-up cable")' >>src/words/en/parts.inc
good $edition $words

# ---- a way of running ----
ways=src/survey/way_kinds.inc grouping=src/design/rating/grouping.c method=src/design/rating/reference_method.c
good $grouping $method
echo 'WAY_KIND(WAY_RAIL, "rail", "made up", AIR, NOTHING, CLIPPED, false, true, FIXINGS, C, ON_WALL)' >>$ways
holds "a way that lacks a column is refused" refused $grouping 'requires 12 arguments'
sed -i '$s/ON_WALL)/ON_RAIL, WALL_LAYER)/' $ways
holds "a way without words for its method is named" refused $method SAY_ON_RAIL
sed -i '$s/ON_RAIL/ON_WALL/' $ways
good $grouping $method src/survey/survey_kinds.c src/design/cautions_due.c
sed -i '$d' $ways

# ---- a check ----
check='{"made-up", SAY_TITLE_MADE_UP, UNIT_A, PUBLISHED("132.1"), check_made_up},'
last=$(grep -n '^    {"selectivity"' $checks | cut -d: -f1)
sed -i "${last}a\\    ${check/SAY_TITLE_MADE_UP, /}" $checks
holds "a check without a title is refused" refused $checks 'makes integer from pointer\|expected.*enum\|incompatible'
sed -i "$((last + 1))s/.*/    $check/" $checks
holds "a check without a function is named" refused $checks check_made_up
sed -i "0,/^static const struct {\$/s//static void check_made_up(struct Arena *arena, const struct RunDesign *run, const struct Trial *trial, struct Check *out)\n{\n    decide(out, run->demand.design_a, trial->capacity_a + run->rating_a);\n    out->text = say(arena, SAY_MADE_UP);\n}\n\n&/" $checks
holds "a title that is not there is named" refused $checks SAY_TITLE_MADE_UP
echo 'WORD(SAY_TITLE_MADE_UP, "Made up")' >>src/words/en/papers_design.inc
holds "words that are not there are named" refused $checks SAY_MADE_UP
echo 'WORD(SAY_MADE_UP, "A made-up rule.")' >>src/words/en/checks.inc
good $checks

# ---- a paper ----
sed -i 's/    PAPER_COUNT/    PAPER_MADE_UP,\n&/' src/documents/documents.h
holds "a paper without a word is refused" refused $papers 'a word for every paper'
sed -i 's/\[PAPER_PACK\] = "pack",/& [PAPER_MADE_UP] = "made-up",/' $papers
good $papers
sed -i 's/    WEND_DOCUMENT_COUNT$/    WEND_MADE_UP_HTML,\n&/' include/wend/wend.h
holds "a document that is not made is named" refused $library WEND_MADE_UP_HTML
sed -i 's/    case WEND_PACK_HTML: .*/&\n    case WEND_MADE_UP_HTML: return library_paper(wend, PAPER_MADE_UP);/' $library
good $library
holds "a document that is not written is refused" refused $program 'a file for every document'
sed -i 's/    {WEND_CARD_HTML, .*/&\n    {WEND_MADE_UP_HTML, ".made-up.html", MARK_HTML},/' $program
good $program
sed -i "s|<xsl:when test=\"\$paper = 'pack'\">|<xsl:when test=\"\$paper = 'made-up'\">made up</xsl:when>\n&|" templates/papers.xsl

# ---- whole ----
sed 's/type: BS5467/type: MX90/' routes/cider-barn.yaml >mx90.yaml
holds "the whole builds" sh -c 'cmake -S . -B made -DWEND_TESTS=OFF && cmake --build made -j2'
holds "the new kind is planned" made/wend plan mx90.yaml --out out
holds "in its own words" grep -q 'made-up cable' out/mx90.parts.csv
holds "the new paper is written" test -s out/mx90.made-up.html
holds "the new check is made" grep -q '<check id="made-up" result="pass"' out/mx90.plan.xml
holds "under its title" grep -q 'Made up' out/mx90.design.html
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
