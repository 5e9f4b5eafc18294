#!/bin/bash
# compare.sh WEND [record]: the order of two routes, byte for byte against tests/order/golden. What may be bought and what
# goes into which bag is held, besides, against the two parts lists, by other code than the program's: in awk. With
# "record" it is written anew: look at `git diff tests/order/golden` before you keep it.
set -u
wend=$(readlink -f "$1")
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
golden=$here/golden
out=$work/out
if [ "${2:-}" = record ]; then
    out=$golden
    rm -f "$golden"/*.csv "$golden"/*.xml
fi
cd "$here/../../routes" || exit 1
rc=0
"$wend" order cider-barn.yaml well-pump.yaml --order "$golden/order.yaml" --out "$out" >"$work/stdout" || rc=$?
sed '/^written:/,$d' "$work/stdout" >"$out/stdout"
echo "$rc" >"$out/exit"
bad=0
for file in PO-1042.order.csv PO-1042.order.xml stdout exit; do
    diff -u "$golden/$file" "$out/$file" | head -20
    cmp -s "$golden/$file" "$out/$file" || { bad=1; echo "differs: $file"; }
done

# sums by code of description: every article's quantity in both lists is what the order splits
for route in cider-barn well-pump; do "$wend" plan $route.yaml --out "$work/$route" >/dev/null || bad=1; done
fields='function fields(row,  n, c, i, q, cell) { # RFC 4180 into cell[1..n], no line breaks in cells
    delete got; n = 0; cell = ""; q = 0
    for (i = 1; i <= length(row); i++) {
        c = substr(row, i, 1)
        if (c == "\"") { if (q && substr(row, i + 1, 1) == "\"") { cell = cell c; i++ } else q = !q }
        else if (c == "," && !q) { got[++n] = cell; cell = "" }
        else if (c != "\r") cell = cell c
    }
    got[++n] = cell; return n
}'
awk "$fields"'
FNR == 1 { file++; n = fields($0); for (i = 1; i <= n; i++) col[file, got[i]] = i; next }
{ fields($0) }
got[1] == "" { next }
# what a list has cut from whole lengths for itself is asked for anew
file < 3 { split_of[file, got[col[file, "description"]]] += got[col[file, "asked"]]; next }
{ lines++; d = got[col[3, "description"]]
  a = got[col[3, "for cider-barn"]]; b = got[col[3, "for well-pump"]]
  if (a != split_of[1, d] + 0 || b != split_of[2, d] + 0) { print "split of " d ": " a " and " b; wrong = 1 }
  if (a + b != got[col[3, "asked"]]) { print "asked of " d; wrong = 1 }
  if (a + b + got[col[3, "over"]] != got[col[3, "quantity"]] + got[col[3, "at-hand"]]) { print "sum of " d; wrong = 1 }
  pack = got[col[3, "pack"]]; packs = got[col[3, "packs"]]
  if (pack > 0 && (pack * packs < a + b || pack * (packs - 1) >= a + b)) { print "packs of " d; wrong = 1 }
  delete split_of[1, d]; delete split_of[2, d] }
END { for (left in split_of) if (split_of[left] > 0) { print "lost: " left; wrong = 1 }
  print lines " lines added up again"; exit wrong || lines < 5 }
' "$work/cider-barn/cider-barn.parts.csv" "$work/well-pump/well-pump.parts.csv" "$out/PO-1042.order.csv" || bad=1
[ "$bad" = 0 ]
