#!/bin/bash
# files.sh WEND: files of the user's own are never written over: what was read for the plan, whatever its name or link;
# what wend did not write; templates that were changed. Nor is a job ordered twice by a slip.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"
cat >shed.yaml <<'Y'
wend: 1
job: {title: Shed}
supply: {system: TN-S, loop-impedance: 0.35 ohm}
runs: {feeder: {load: {current: 20 A}, cable: {type: BS5467, cores: 3}}}
segments:
  - {name: wall, way: wall, length: 12 m}
Y
sed '$a parts: {prices: barn.parts.csv}' shed.yaml >barn.yaml
printf 'code,unit,price,currency\ncable-BS5467-3x1.5,m,2.15,GBP\ngland-BW-20S,pack,9.40,GBP\n' >barn.parts.csv
cp barn.parts.csv list
mkdir own && cp barn.yaml barn.parts.csv own

# the price list has the name of the parts list
expect "a price list that would be written over" 3 "$wend" plan barn.yaml
holds "is as it was" cmp list barn.parts.csv
holds "it is said" grep -q 'barn.parts.csv was read for this and would be written over' err
holds "and what to do" grep -q -- '--out' err
holds "nothing else is there" test "$(ls -A | tr '\n' ' ')" = "barn.parts.csv barn.yaml err list out own shed.yaml "
expect "the folder named otherwise" 3 "$wend" plan own/barn.yaml --out own/../own
holds "is as it was" cmp list own/barn.parts.csv
expect "elsewhere it plans" 0 "$wend" plan barn.yaml --out made
holds "and is priced" grep -q ',2.15,m,GBP,' made/barn.parts.csv
# a link is the same file
mkdir linked
sed 's/barn.parts.csv/mine.csv/' barn.yaml >linked/barn.yaml
cp list linked/mine.csv
ln linked/mine.csv linked/barn.design.html
expect "a link to it" 3 "$wend" plan linked/barn.yaml --out linked
holds "is as it was" cmp list linked/mine.csv
holds "told as what was read" grep -q 'linked/barn.design.html was read for this' err
rm linked/barn.design.html
ln linked/barn.yaml linked/barn.plan.xml
expect "a link to the route" 3 "$wend" plan linked/barn.yaml --out linked
holds "is as it was" cmp linked/barn.yaml linked/barn.plan.xml
rm linked/barn.plan.xml
ln -s mine.csv linked/barn.parts.csv
expect "a symbolic link" 3 "$wend" plan linked/barn.yaml --out linked
holds "what it names is as it was" cmp list linked/mine.csv
rm linked/barn.parts.csv
expect "standard input" 3 sh -c "cp shed.yaml linked/route.plan.xml; '$wend' plan - --out linked <linked/route.plan.xml"
holds "is as it was" cmp shed.yaml linked/route.plan.xml

# of an order: a route's price list, the order's own, the order file
mkdir ordered
sed 's/barn.parts.csv/order.csv/' barn.yaml >ordered/barn.yaml
cp list ordered/order.csv
expect "an order over a route's price list" 3 "$wend" order ordered/barn.yaml --out ordered
holds "is as it was" cmp list ordered/order.csv
cat >ordered/order.yaml <<'Y'
wend-order: 1
order: {reference: 7, date: 2026-05-14, currency: GBP, prices: 7.order.csv}
buyer: {name: Alder Electrical}
seller: {name: Fenway Supplies}
Y
cp list ordered/7.order.csv
expect "an order over its own price list" 3 "$wend" order shed.yaml --order ordered/order.yaml --out ordered
holds "is as it was" cmp list ordered/7.order.csv
rm ordered/7.order.csv
ln ordered/order.yaml ordered/7.order.xml
expect "an order over the order file" 3 "$wend" order shed.yaml --order ordered/order.yaml --out ordered
holds "is as it was" cmp ordered/order.yaml ordered/7.order.xml

# a parts list handed in as a price list would price a pack as one of what is in it
cp made/barn.parts.csv lastjob.csv
sed 's/barn.parts.csv/lastjob.csv/' barn.yaml >next.yaml
expect "a parts list as price list" 2 "$wend" plan next.yaml --out nothing
holds "says so" grep -q 'is one of a parts list, not of a price list.*prices-parts-list' err
"$wend" order shed.yaml --out lists >"$work/out"
cp lists/order.csv lastjob.csv
expect "an order as price list" 2 "$wend" plan next.yaml --out nothing
holds "says so" grep -q 'prices-parts-list' err

# what wend did not write stays, whichever document it has the name of; what it wrote is made anew
expect "a first plan" 0 "$wend" plan shed.yaml --out again
expect "a second one" 0 "$wend" plan shed.yaml --out again
for name in again/*; do
    mkdir -p foreign && cp again/* foreign
    cp list "foreign/$(basename "$name")"
    expect "a foreign $name" 3 "$wend" plan shed.yaml --out foreign
    holds "is as it was" cmp list "foreign/$(basename "$name")"
    holds "it is said" grep -q "$(basename "$name") is there and was not written by wend: move it away" err
    rm "foreign/$(basename "$name")"
    holds "the others are as they were" sh -c "for file in foreign/*; do cmp \$file again/\$(basename \$file) || exit 1; done"
    rm -r foreign
done
mkdir foreign
cp list foreign/.shed.wend
expect "a foreign file where the new set is kept meanwhile" 3 "$wend" plan shed.yaml --out foreign
holds "is as it was" cmp list foreign/.shed.wend
holds "it is said" grep -q 'foreign/.shed.wend is there and holds what was not written by wend: move it away' err
rm foreign/.shed.wend
# what an earlier run left is plain files in folders; a link would have the files that it names moved or removed
for what in "ln -s ../../victim foreign/.shed.wend/new" "ln -s ../../victim foreign/.shed.wend/ready" \
    "mkdir -p foreign/.shed.wend/ready/shed.plan.xml" "ln -s /etc/hostname foreign/.shed.wend/placing/shed.plan.xml"; do
    mkdir -p victim foreign/.shed.wend/old
    [ "${what#*placing}" = "$what" ] || mkdir foreign/.shed.wend/placing
    echo mine >victim/shed.plan.xml
    $what
    expect "$what" 3 "$wend" plan shed.yaml --out foreign
    holds "it is said" grep -q 'foreign/.shed.wend is there and holds what was not written by wend: move it away' err
    holds "what it names is as it was" test "$(cat victim/shed.plan.xml)" = mine
    rm -r foreign/.shed.wend victim
done
# who knows what wrote it: nothing of it reaches a terminal that the terminal would act on
mkdir spoken
printf '<plan format="1"><job title="\033]0;other\007" site="\302\233 y"/></plan>' >spoken/shed.plan.xml
expect "a plan.xml of another job" 3 "$wend" plan shed.yaml --out spoken
holds "is told" grep -q '^wend: error: spoken/shed.plan.xml is of another job; write elsewhere' err
holds "without what it holds" sh -c "! LC_ALL=C grep -q '[^ -~]' err"
: >foreign/shed.parts.csv
expect "an empty file has nothing to lose" 0 "$wend" plan shed.yaml --out foreign
expect "an order" 0 "$wend" order shed.yaml --date 2026-05-14 --out orders
expect "the same again" 0 "$wend" order shed.yaml --date 2026-05-14 --out orders
for ending in csv xml; do
    cp orders/order.$ending kept && echo '<Order xmlns="urn:oasis:names:specification:ubl:schema:xsd:Order-2"/>' >orders/order.$ending
    cp orders/order.$ending foreign/mine
    expect "a foreign order.$ending" 3 "$wend" order shed.yaml --date 2026-05-14 --out orders
    holds "is as it was" cmp foreign/mine orders/order.$ending
    mv kept orders/order.$ending
done

# templates: one that was changed is kept, one that is missing is written
expect "templates without a folder" 2 "$wend" templates
holds "nothing is written" test ! -e house.css
expect "templates" 0 "$wend" templates --out style
cp -r style built-in
echo '/* ours */' >>style/house.css
cp style/house.css changed.css
rm style/brief.xsl
expect "templates again" 0 "$wend" templates --out style
holds "the changed one is kept" cmp changed.css style/house.css
holds "and named" grep -q '^kept: *style/house.css$' out
holds "the missing one is back" cmp built-in/brief.xsl style/brief.xsl
expect "templates by force" 0 "$wend" templates --out style --force
holds "are as they are built in" diff -r built-in style
expect "--force is for templates alone" 2 "$wend" plan shed.yaml --force

# a job twice, and two jobs of one name
mkdir north south
cp shed.yaml north && sed 's/Shed/Other shed/' shed.yaml >south/shed.yaml
ln shed.yaml link.yaml
for twice in "shed.yaml shed.yaml" "shed.yaml ./shed.yaml" "shed.yaml barn.yaml link.yaml"; do
    expect "one file twice: $twice" 2 "$wend" order $twice --out nothing
    holds "says so" grep -q 'are one file: the job would be ordered twice; leave one out, or say --twice' err
done
expect "two of one name" 2 "$wend" order north/shed.yaml south/shed.yaml --out nothing
holds "says so" grep -q 'north/shed.yaml and south/shed.yaml are jobs of one name; .*--twice' err
cp shed.yaml "$(printf 'sh\342\200\213ed.yaml')"
expect "two names that a reader takes for one" 2 "$wend" order shed.yaml "$(printf 'sh\342\200\213ed.yaml')" --out lists
holds "says so" grep -q 'are jobs of one name; .*--twice' err
expect "meant so" 0 "$wend" order shed.yaml "$(printf 'sh\342\200\213ed.yaml')" --out lists --twice
holds "they are told apart" grep -q '(2)' lists/order.csv
rm "$(printf 'sh\342\200\213ed.yaml')"
holds "nothing was written for any" test ! -e nothing
expect "meant" 0 "$wend" order north/shed.yaml south/shed.yaml --twice --out both
holds "told apart" grep -q 'for shed,for shed (2)' both/order.csv
# two routes of one name into one folder
expect "the first" 0 "$wend" plan north/shed.yaml --out one
cp -r one first
expect "another job of its name" 3 "$wend" plan south/shed.yaml --out one
holds "says whose papers are there" grep -q 'one/shed.plan.xml is of another job, "Shed"; write elsewhere with --out, or say --replace' err
holds "they are as they were" diff -r first one
sed 's/title: Shed/&, site: Mill Lane/' shed.yaml >north/shed.yaml
expect "the same with its site" 0 "$wend" plan north/shed.yaml --out one
sed -i 's/Mill Lane/Church Lane/' north/shed.yaml
expect "a job of that title on another site" 3 "$wend" plan north/shed.yaml --out one
holds "says where" grep -q '"Shed, Mill Lane"' err
expect "it is meant" 0 "$wend" plan north/shed.yaml --out one --replace
holds "the papers are its own" grep -q 'Church Lane' one/shed.plan.xml
expect "--twice is for orders alone" 2 "$wend" plan shed.yaml --twice

# whose papers lie in a folder, by the mark that is in each
mkdir longer marked other
sed 's/12 m/13 m/' shed.yaml >longer/shed.yaml
expect "a set" 0 "$wend" plan shed.yaml --out marked
expect "another" 0 "$wend" plan longer/shed.yaml --out other
mark=$(sed -n 's/.* sheet-mark="\([0-9A-F]\{4\}-[0-9A-F]\{4\}\)".*/\1/p' marked/shed.plan.xml)
holds "plan.xml has a mark" test "${#mark}" = 9
for name in marked/*; do holds "$name has it too" grep -q "$mark" "$name"; done
holds "the diagram in sight" grep -q ">Sheet mark $mark</text>" marked/shed.diagram.svg
holds "the list in every row" test "$(grep -c ",OPEN,$mark.$" marked/shed.parts.csv)" = "$(($(wc -l <marked/shed.parts.csv) - 1))"
holds "no other set has it" sh -c "! grep -rq '$mark' other"
expect "the papers are the route's" 0 "$wend" check shed.yaml --papers marked
holds "it is said" grep -q "^marked: the 9 papers of shed belong together and to the route as it is now: sheet mark $mark$" out
expect "quietly" 0 "$wend" check shed.yaml --papers marked --quiet
holds "nothing is said of them" sh -c '! grep -q papers out'
expect "they are not another route's" 1 "$wend" check longer/shed.yaml --papers marked
holds "though they are one set" grep -q '^marked: the papers of shed belong together, but not to the route as it is now' out
for name in marked/*; do
    base=${name#marked/}
    cp "$name" kept && cp "other/$base" marked
    expect "$base of another plan among them" 1 "$wend" check shed.yaml --papers marked
    holds "it is named" grep -q "^marked/$base: of another plan: its sheet mark is .*, this plan's is $mark$" out
    holds "it is one" test "$(wc -l <out)" = 3
    rm "marked/$base"
    expect "no $base" 1 "$wend" check shed.yaml --papers marked
    holds "it is named" grep -q "^marked/$base: missing$" out
    mv kept "$name"
done
sed -i.kept '3s/,OPEN,.*/,OPEN,0000-0000\r/' marked/shed.parts.csv
expect "a row of another list" 1 "$wend" check shed.yaml --papers marked
holds "it is said" grep -q '^marked/shed.parts.csv: carries no sheet mark, or more than one$' out
mv marked/shed.parts.csv.kept marked/shed.parts.csv
sed -i.kept 's/length-m="12"/length-m="11"/' marked/shed.plan.xml
expect "a figure that was changed" 1 "$wend" check shed.yaml --papers marked
holds "it is said" grep -q '^marked/shed.plan.xml: not as this wend writes it' out
mv marked/shed.plan.xml.kept marked/shed.plan.xml
# the brief shows the day and the quotation what it costs: of other labour figures they are others
mkdir timed
sed '$a parts: {labour: mine.yaml}' shed.yaml >timed/shed.yaml
sed 's/^# rates/rates/' "$here/../../routes/labour/labour.yaml" >timed/mine.yaml
expect "a route with labour figures" 0 "$wend" plan timed/shed.yaml --out timed/made
expect "its papers are the route's" 0 "$wend" check timed/shed.yaml --papers timed/made
holds "the quotation among them" test -s timed/made/shed.quotation.html
sed -i 's/electrician: 45.00/electrician: 54.00/' timed/mine.yaml
expect "not once a rate is another" 1 "$wend" check timed/shed.yaml --papers timed/made
holds "the quotation is told" grep -q '^timed/made/shed.quotation.html: of another plan' out
expect "planned again" 0 "$wend" plan timed/shed.yaml --out timed/made
expect "they are the route's" 0 "$wend" check timed/shed.yaml --papers timed/made
mv timed/made/shed.quotation.html timed
expect "no quotation" 1 "$wend" check timed/shed.yaml --papers timed/made
holds "is told" grep -q '^timed/made/shed.quotation.html: missing$' out
mv timed/shed.quotation.html timed/made
sed '/^  dig:/d' timed/mine.yaml >timed/theirs.yaml
expect "figures of another file" 1 "$wend" check timed/shed.yaml --papers timed/made --labour timed/theirs.yaml
expect "papers by those" 0 "$wend" plan timed/shed.yaml --out timed/made --labour timed/theirs.yaml
expect "are theirs" 0 "$wend" check timed/shed.yaml --papers timed/made --labour timed/theirs.yaml
expect "and not the route's own" 1 "$wend" check timed/shed.yaml --papers timed/made
expect "planned again" 0 "$wend" plan timed/shed.yaml --out timed/made
sed -i '/^rates/d' timed/mine.yaml
expect "a quotation of rates that are gone" 1 "$wend" check timed/shed.yaml --papers timed/made
holds "is told" grep -q '^timed/made/shed.quotation.html: of another plan' out

mkdir marked/.shed.wend
expect "a run that did not end" 1 "$wend" check shed.yaml --papers marked
holds "it is said" grep -q '^marked/.shed.wend: a run that wrote papers did not come to its end$' out
holds "and left as it is" test -d marked/.shed.wend
expect "no papers at all" 1 "$wend" check shed.yaml --papers nowhere
expect "--papers is for check alone" 2 "$wend" plan shed.yaml --papers marked

# more sheets than the papers take
{ sed '/^segments/,$d; s/20 A/2 A/' shed.yaml; echo segments:; for i in $(seq 5200); do echo "  - {name: s$i, way: wall, length: 0.5 m}"; done; } >long.yaml
expect "a way of too many sheets" 3 "$wend" plan long.yaml --out nothing
holds "is said as such" grep -qE '^wend: error: the diagram would have [0-9]{3} sheets, and the papers take 400 at most' err
holds "not as something else" test "$(wc -l <err)" = 1
holds "nothing is written" test ! -e nothing
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
