#!/bin/bash
# counted.sh: where the parts of a route were counted by hand (NAME/counted.md), the recorded list has every line of that
# count and no other: needed to four figures, what is asked with spare and packs exactly; what is bought is whole packs.
set -u
here=$(cd "$(dirname "$0")" && pwd)
bad=0 lists=0
for counted in "$here"/*/counted.md; do
    name=$(basename "$(dirname "$counted")")
    awk -v name="$name" '
        function cells(line, out,   n, at, c, quoted) {
            n = 1; out[1] = ""; quoted = 0
            for (at = 1; at <= length(line); at++) {
                c = substr(line, at, 1)
                if (c == "\"") { quoted = !quoted } else if (c == "," && !quoted) { out[++n] = "" } else { out[n] = out[n] c }
            }
            return n
        }
        function figures(x) { return sprintf("%.4g", x) }
        FNR == NR {
            if ($0 ~ /^\| [a-z]+[A-Za-z0-9.-]* \| [0-9.]+ \|/) {
                split($0, cell, / *\| */)
                want[cell[2]] = figures(cell[3]) " " cell[4] + 0 " " cell[5] + 0
                lines++
            }
            next
        }
        { sub(/\r$/, "") }
        FNR == 1 {
            heads = cells($0, head)
            for (i = 1; i <= heads; i++) {
                if (head[i] == "code") n = i
                if (head[i] == "needed") needed = i
                if (head[i] == "asked") asked = i
                if (head[i] == "pack") pack = i
                if (head[i] == "packs") packs = i
            }
        }
        FNR > 1 {
            cells($0, out)
            if (out[1] == "") next
            got = figures(out[needed]) " " out[asked] + 0 " " out[packs] + 0
            if (out[packs] > 0 && out[2] != out[packs] * out[pack]) { print name ": " out[n] ": " out[2] " bought"; bad = 1 }
            if (!(out[n] in want)) { print name ": " out[n] " was not counted by hand"; bad = 1 }
            else if (want[out[n]] != got) { print name ": " out[n] ": by hand " want[out[n]] ", listed " got; bad = 1 }
            delete want[out[n]]
        }
        END {
            for (code in want) { print name ": " code " is not in the list"; bad = 1 }
            if (lines < 10) { print name ": no table was found"; bad = 1 }
            exit bad
        }' "$counted" "$here/$name/$name.parts.csv" || bad=1
    lists=$((lists + 1))
done
echo "$lists lists counted by hand"
[ "$lists" -ge 1 ] && [ "$bad" = 0 ]
