#!/bin/bash
# order.sh WEND: wend order as it is typed: exit statuses, what is written, what is not, and old files that stay whole.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
mounted=
trap '[ -z "$mounted" ] || umount "$work/small"; rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"
cat >barn.yaml <<'Y'
wend: 1
job: {title: Barn}
supply: {system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1 kA}
earthing: {far-end: export, extraneous-parts: no}
runs:
  feeder:
    load: {current: 20 A}
    device: {breaking-capacity: 6 kA}
    cable: {type: BS5467, cores: 3}
segments:
  - {name: wall, way: wall, length: 12 m}
Y
sed 's/, fault-current: 1 kA//; s/Barn/Open/' barn.yaml >open.yaml
sed 's/Barn/Shed/; s/12 m/14 m/' barn.yaml >shed.yaml
sed 's/cores: 3/cores: 3, size: 1.5 mm2/; s/12 m}/120 m}/' barn.yaml >fails.yaml
sed 's/way: wall/way: wal/' barn.yaml >wrong.yaml
cat >order.yaml <<'Y'
wend-order: 1
order: {reference: PO 7, date: 2026-05-14}
buyer: {name: Alder Electrical}
seller: {name: Fenway Supplies}
Y
sed 's/, date: 2026-05-14//' order.yaml >undated.yaml
sed 's/seller/sellar/' order.yaml >misspelt.yaml

expect "order" 0 "$wend" order barn.yaml shed.yaml --order order.yaml --out made/deep
holds "csv" test -s made/deep/PO-7.order.csv
holds "xml" test -s made/deep/PO-7.order.xml
holds "nothing else" test "$(ls -A made/deep | wc -l)" = 2
holds "no error output" test ! -s err
holds "no line over 80 columns" test "$(wc -L <out)" -le 80
holds "it says how many" grep -q '^2 jobs, ' out
cp -r made/deep before
expect "the same again" 0 "$wend" order barn.yaml shed.yaml --order=order.yaml --out=made/deep
holds "same bytes" diff -r before made/deep
expect "another order of words" 0 "$wend" order --out words --order order.yaml barn.yaml shed.yaml
holds "same bytes" diff -r before words

expect "without an order file" 0 "$wend" order barn.yaml --out plain
holds "the CSV alone" test "$(ls -A plain)" = order.csv
holds "it says what is lacking" grep -q 'not written: order.xml' out
expect "a day alone" 0 "$wend" order barn.yaml --date 2026-05-14 --out day
holds "both" test "$(ls -A day | wc -l)" = 2
expect "a day instead of the file's" 0 "$wend" order barn.yaml --order order.yaml --date=2026-06-01 --out later
holds "that day" grep -q '<cbc:IssueDate>2026-06-01<' later/PO-7.order.xml
expect "an undated file" 2 "$wend" order barn.yaml --order undated.yaml --out nothing
holds "it says so" grep -q '^undated.yaml:2:1: error: .*date.*\[key-missing\]' err
expect "an undated file with a day" 0 "$wend" order barn.yaml --order undated.yaml --date 2026-05-14 --out dated
for day in 2026-02-30 14.5.2026 "" today; do
    expect "no day: $day" 2 "$wend" order barn.yaml --date "$day" --out nothing
    holds "it says how" grep -q 'write it like --date 2026-05-14' err
done
expect "--date without a day" 2 "$wend" order barn.yaml --date
expect "--order without a file" 2 "$wend" order barn.yaml --order
expect "no route" 2 "$wend" order --order order.yaml
expect "--order is not for plan" 2 "$wend" plan barn.yaml --order order.yaml
expect "help" 0 "$wend" order --help
holds "help teaches an order file" grep -q '^  wend-order: 1' out
sed -n '/^  wend-order: 1/,/^  delivery/p' out | sed 's/^  //' >taught.yaml
expect "and what it teaches is read" 0 "$wend" order barn.yaml --order taught.yaml --out taught
holds "manual" sh -c "'$wend' manual | grep -q 'THE ORDER FILE'"

# prices: the route's list, then the order's own before it
mkdir priced
sed '$a parts: {prices: mine.csv}' barn.yaml >priced/barn.yaml
sed 's/, date/, currency: EUR, prices: ours.csv, date/' order.yaml >priced/order.yaml
printf 'code,unit,price,currency\ncable-BS5467-3x4,m,2.15,EUR\n' >priced/mine.csv
printf 'code,unit,price,currency\ncable-BS5467-3x4,m,2,EUR\n' >priced/ours.csv
"$wend" order barn.yaml --out code >/dev/null
cable=$(sed -n 's/.*,\(cable-BS5467-[^,]*\),.*/\1/p' code/order.csv)
sed -i "s/cable-BS5467-3x4/$cable/" priced/*.csv
expect "the route's prices" 0 "$wend" order priced/barn.yaml --order order.yaml --out p1
holds "are in the order" grep -q ',2.15,m,EUR,' p1/PO-7.order.csv
holds "and told" grep -q '^EUR [0-9.]* for 1 of ' out
expect "the order's own prices" 0 "$wend" order priced/barn.yaml --order priced/order.yaml --out p2
holds "go before them" grep -q ',2.00,m,EUR,' p2/PO-7.order.csv
rm priced/ours.csv
expect "a price list that is not there" 0 "$wend" order priced/barn.yaml --order priced/order.yaml --out p3
holds "is told" grep -q 'warning: the price list priced/ours.csv could not be read' err
holds "and said in the order" grep -q "Not priced: the order's price list ours.csv" p3/PO-7.order.csv
holds "the route's stand" grep -q ',2.15,m,EUR,' p3/PO-7.order.csv
echo 'code,unit,price,currency' >priced/ours.csv
echo "$cable,m,2.15,Euro" >>priced/ours.csv
expect "a wrong price list of the order" 2 "$wend" order priced/barn.yaml --order priced/order.yaml --out nothing
holds "is told with its place" grep -q '^priced/ours.csv:2:[0-9]*: error: "Euro"' err
cp priced/ours.csv priced/mine.csv
expect "a wrong price list of a route" 2 "$wend" order priced/barn.yaml --order order.yaml --out nothing
holds "is told with its place" grep -q '^priced/mine.csv:2:[0-9]*: error: "Euro"' err

expect "a plan is open" 0 "$wend" order barn.yaml open.yaml --order order.yaml --out open
holds "it is told" grep -q '^open: OPEN: breaking capacity of feeder could not be checked: give supply: fault-current' out
holds "the CSV tells it at its top" sh -c 'sed -n 2p open/PO-7.order.csv | grep -q "SETTLE FIRST: the plan of open is open"'
holds "the XML tells it first" sh -c 'grep -m1 cbc:Note open/PO-7.order.xml | grep -q "SETTLE FIRST: the plan of open is open"'
expect "a plan is open, strictly" 1 "$wend" order --strict barn.yaml open.yaml --order order.yaml --out open
expect "all pass, strictly" 0 "$wend" order --strict barn.yaml shed.yaml --order order.yaml --out open
expect "an open plan before one that fails" 1 "$wend" order open.yaml fails.yaml --order order.yaml --out both
holds "the one that fails is told first" sh -c 'sed -n 2p both/PO-7.order.FAIL.csv | grep -q "DO NOT ORDER YET: the plan of fails"'
holds "then the open one" sh -c 'sed -n 3p both/PO-7.order.FAIL.csv | grep -q "SETTLE FIRST: the plan of open"'
expect "a check fails" 1 "$wend" order barn.yaml fails.yaml --order order.yaml --out failing
holds "the CSV says so at its top" sh -c 'sed -n 2p failing/PO-7.order.FAIL.csv | grep -q "DO NOT ORDER YET: the plan of fails"'
holds "the XML says so first" sh -c 'grep -m1 cbc:Note failing/PO-7.order.FAIL.xml | grep -q "DO NOT ORDER YET: the plan of fails"'
holds "so does the terminal" grep -q 'do not order' out
holds "nothing is named as if it passed" sh -c '! ls failing/PO-7.order.csv failing/PO-7.order.xml'
expect "mended" 0 "$wend" order barn.yaml shed.yaml --order order.yaml --out failing
holds "what failed does not look valid" sh -c '! ls failing/*.FAIL.csv failing/*.FAIL.xml'
holds "it is kept" test -s failing/PO-7.order.FAIL.csv.old -a -s failing/PO-7.order.FAIL.xml.old
holds "every row says that the plans pass" sh -c 'test "$(sed 1d failing/PO-7.order.csv | grep -vc ",PASS.$")" = 0'
holds "every row said that one failed" sh -c 'test "$(sed 1d failing/PO-7.order.FAIL.csv.old | grep -vc ",FAIL.$")" = 0'
expect "a wrong route" 2 "$wend" order barn.yaml wrong.yaml --order misspelt.yaml --out nothing
holds "the route's fault is told" grep -q '^wrong.yaml:11:23: error: ' err
holds "and the order file's" grep -q '^misspelt.yaml:4:1: error: .*did you mean "seller"' err
expect "a missing route" 3 "$wend" order barn.yaml nosuch.yaml --order order.yaml --out nothing
expect "a missing order file" 3 "$wend" order barn.yaml --order nosuch.yaml --out nothing
expect "a route as order file" 2 "$wend" order barn.yaml --order barn.yaml --out nothing
expect "an order file as route" 2 "$wend" order order.yaml --out nothing
holds "nothing is written for any of them" test ! -e nothing
expect "standard input" 0 sh -c "'$wend' order - shed.yaml --order order.yaml --out in <barn.yaml"
holds "named route" grep -q 'for route,for shed' in/PO-7.order.csv
expect "one route twice" 0 "$wend" order barn.yaml barn.yaml --twice --out twice
holds "told apart" grep -q 'for barn,for barn (2)' twice/order.csv
expect "standard output that is full" 3 sh -c "'$wend' order barn.yaml --out full >/dev/full"
for word in safe compliant; do
    holds "never says $word" sh -c "! grep -riw $word made failing out"
done

# what was there before stays whole when a write fails, and no litter is left
mkdir -p set/PO-7.order.xml
echo line,buy,quantity,unit,description,standard,pack >old
cp old set/PO-7.order.csv
expect "a target that is a folder" 3 "$wend" order barn.yaml --order order.yaml --out set
holds "the old file as it was" cmp old set/PO-7.order.csv
holds "no litter" test "$(ls -A set | wc -l)" = 2
mkdir small
if mount -t tmpfs -o size=8k tmpfs small 2>/dev/null; then
    mounted=1
    cp old small/PO-7.order.csv
    expect "a full disk" 3 "$wend" order barn.yaml shed.yaml --order order.yaml --out small
    holds "old file whole on a full disk" cmp old small/PO-7.order.csv
    holds "no litter on a full disk" test "$(ls -A small | wc -l)" = 1
else
    echo "skipped: no right to mount a small file system here"
    holds "nothing may be skipped" test -z "${WEND_SKIP_NOTHING-}"
fi
# memory that ends: a whole order or none; the sanitizers reserve more than is refused here
limits="6000 7000 8000 9000 10000 12000 16000"
if ldd "$wend" | grep -q 'asan\|ubsan'; then
    limits=
fi
for limit in $limits; do
    rc=0
    (ulimit -v $limit; "$wend" order barn.yaml shed.yaml --order order.yaml --out "short$limit" >/dev/null 2>&1) || rc=$?
    holds "with $limit KiB: exit $rc" test "$rc" = 0 -o "$rc" = 3 -o "$rc" = 127
    [ "$rc" != 0 ] || holds "whole with $limit KiB" diff -r before "short$limit"
    [ "$rc" = 0 ] || holds "nothing with $limit KiB" test ! -e "short$limit"
done

# the order of a route that has become wrong
cp barn.yaml stale.yaml
expect "an order" 0 "$wend" order stale.yaml --order order.yaml --out stale
cp -r stale first
sed -i 's/way: /way: no-/' stale.yaml
expect "the route becomes wrong" 2 "$wend" order stale.yaml --order order.yaml --out stale
holds "the order does not look valid" test "$(ls stale | tr '\n' ' ')" = "PO-7.order.csv.old PO-7.order.xml.old "
holds "it is as it was" cmp first/PO-7.order.csv stale/PO-7.order.csv.old
holds "it is told" grep -q 'note: the order in stale, from before a file was wrong, now ends in .old' err
cp first/* stale
sed 's/^buyer/byer/' order.yaml >wrong-order.yaml
expect "the order file becomes wrong" 2 "$wend" order barn.yaml --order wrong-order.yaml --out stale
holds "whose name is not known then" cmp first/PO-7.order.csv stale/PO-7.order.csv
expect "a route named twice by a slip" 2 "$wend" order barn.yaml barn.yaml --order order.yaml --out stale
holds "which is no fault of a file" cmp first/PO-7.order.csv stale/PO-7.order.csv
# references that are one name of files: the second order is refused, the first stays as it is
sed 's|PO 7|A/1|' order.yaml >slash.yaml
sed 's|PO 7|A-1|' order.yaml >dash.yaml
expect "an order of A/1" 0 "$wend" order barn.yaml --order slash.yaml --out alike
cp -r alike alike-before
expect "A-1 would take its place" 3 "$wend" order shed.yaml --order dash.yaml --out alike
holds "both are named" grep -qF 'alike/A-1.order.xml is of the order "A/1", not of "A-1"; write elsewhere with --out, or say --replace' err
holds "the first is whole" diff -r alike-before alike
expect "A/1 again" 0 "$wend" order shed.yaml --order slash.yaml --out alike
holds "takes its own place" sh -c '! diff -r alike-before alike >/dev/null'
expect "a failing one is in the way too" 1 "$wend" order fails.yaml --order slash.yaml --out alike
expect "of any other" 3 "$wend" order shed.yaml --order dash.yaml --out alike
holds "by its own name" grep -qF 'alike/A-1.order.FAIL.xml is of the order "A/1"' err
expect "it is meant" 0 "$wend" order shed.yaml --order dash.yaml --out alike --replace
holds "it is the second" grep -q '<cbc:ID>A-1</cbc:ID>' alike/A-1.order.xml
mkdir foreign
printf '<!-- Written by Wend -->\n<cbc:ID>a\033[31m</cbc:ID>\n' >foreign/A-1.order.xml
expect "what a terminal acts on" 3 "$wend" order shed.yaml --order dash.yaml --out foreign
holds "is not repeated" sh -c 'grep -qF "of the order \"\", not" err && ! grep -q "$(printf "\033")" err'
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
