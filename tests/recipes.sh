#!/bin/bash
# recipes.sh [FOLDER]: adds a kind of cable and a paper to a copy of the project, as DEVELOPERS.md says, leaving one thing
# out at a time: the compiler has to name the file that lacks it. What is whole builds, and plans with the new kind.
set -u
here=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
tar -C "$here" -cf - CMakeLists.txt CMakePresets.json include src templates routes | tar -C "$work" -xf - || exit 1
cd "$work" || exit 1
passed=0 failed=0
good() { passed=$((passed + 1)); }
bad() { echo "FAILED: $*"; failed=$((failed + 1)); }

# compiles FILE: says nothing; what the compiler says is in `said`
compiles() {
    gcc -std=c17 -fsyntax-only -Werror -Wall -Wextra -D_POSIX_C_SOURCE=200809L -Isrc -Iinclude \
        -DWEND_BUILT_MAJOR=1 -DWEND_BUILT_MINOR=0 -DWEND_BUILT_PATCH=0 $(pkg-config --cflags libxml-2.0) "$1" >said 2>&1
}
# named WHAT FILE TEXT: FILE must not compile, and the compiler must say TEXT
named() {
    if compiles "$2"; then bad "$1: $2 compiles"
    elif ! grep -q -- "$3" said; then bad "$1: $2 is not named by $3"; cat said
    else good; fi
}
as_before() { compiles "$1" && good || { bad "$1 does not compile as it is"; cat said; }; }

for file in src/tables/cable_kinds.c src/tables/capacity.c src/tables/voltdrop.c src/takeoff/parts_cable.c \
    src/documents/papers/papers.c src/library/library.c; do
    as_before $file
done

# ---- a kind of cable, from a made-up table ----
kinds=src/survey/cable_kinds.inc
row='CABLE_KIND(CABLE_MX90, "MX90", "made up", POWER, ARMOUR, ARMOURED, 90, ARMOURED, 4D4A, M1, 4D2A, M1, M1, BS5467, ARMOURED, PVC, "MX 90")'
echo "${row/, BS5467, ARMOURED/, ARMOURED}" >>$kinds
named "a row that lacks a column" src/tables/cable_kinds.c 'requires 17 arguments'
sed -i '$d' $kinds
echo "$row" >>$kinds
named "a table that is not there" src/tables/cable_kinds.c CAPACITY_M1
sed -i 's/CAPACITY_4E4A,/& CAPACITY_M1,/; s/DROP_4E4B,/& DROP_M1,/' src/tables/tables.h
as_before src/tables/cable_kinds.c
named "a table without figures" src/tables/capacity.c CAPACITY_M1
named "a table without figures" src/tables/voltdrop.c DROP_M1
named "a kind without words" src/takeoff/parts_cable.c SAY_CABLE_MX90
sed -i 's/    case CAPACITY_COUNT: break;/    case CAPACITY_M1: return capacity_4e4a();\n&/' src/tables/capacity.c
sed -i 's/    case DROP_COUNT: break;/    case DROP_M1: return voltdrop_4e4b();\n&/' src/tables/voltdrop.c
echo 'WORD(SAY_CABLE_MX90, "made-up cable")' >>src/words/en/parts.inc
as_before src/tables/capacity.c
as_before src/tables/voltdrop.c
as_before src/takeoff/parts_cable.c

# ---- a paper ----
sed -i 's/    PAPER_COUNT/    PAPER_MADE_UP,\n&/' src/documents/documents.h
named "a paper without a word" src/documents/papers/papers.c 'a word for every paper'
sed -i 's/\[PAPER_PACK\] = "pack",/& [PAPER_MADE_UP] = "made-up",/' src/documents/papers/papers.c
as_before src/documents/papers/papers.c
sed -i 's/    WEND_DOCUMENT_COUNT$/    WEND_MADE_UP_HTML = 10,\n&/' include/wend/wend.h
named "a document that is not made" src/library/library.c WEND_MADE_UP_HTML
sed -i 's/    case WEND_PACK_HTML: .*/&\n    case WEND_MADE_UP_HTML: return library_paper(wend, PAPER_MADE_UP);/' src/library/library.c
as_before src/library/library.c
named "a document that is not written" src/cli/run.c 'a file for every document'
sed -i 's/WRITTEN = 8/WRITTEN = 9/; s/    {WEND_PACK_HTML, .*/&\n    {WEND_MADE_UP_HTML, ".made-up.html", MARK_HTML},/' src/cli/run.c
as_before src/cli/run.c
sed -i "s|<xsl:when test=\"\$paper = 'pack'\">|<xsl:when test=\"\$paper = 'made-up'\">made up</xsl:when>\n&|" templates/papers.xsl

# ---- whole ----
sed 's/type: BS5467/type: MX90/' routes/cider-barn.yaml >mx90.yaml
if cmake -S . -B made -DWEND_TESTS=OFF >built 2>&1 && cmake --build made -j2 >>built 2>&1; then good; else bad "the whole does not build"; tail -20 built; fi
if made/wend plan mx90.yaml --out out >told 2>&1; then good; else bad "the new kind is not planned"; tail -5 told; fi
grep -q 'made-up cable' out/mx90.parts.csv && good || bad "the new kind's words are not in the list"
[ -s out/mx90.made-up.html ] && good || bad "the new paper is not written"
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
