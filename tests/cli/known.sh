#!/bin/bash
# known.sh WEND: what is asked without a route: tables, a cable, help on any word; and a route that is watched.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
published=$here/../published
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"

# Every table has its name and its figures; of the large ones they are those typed a second time from print.
expect "tables" 0 "$wend" tables
holds "there are many" test "$(wc -l <out)" -gt 60
"$wend" complete table '' | sort -u >names
while IFS= read -r name; do
    expect "table $name" 0 "$wend" table "$name"
    holds "its source stands first" grep -qF "Table $name: " <(head -1 out)
done <names
count=0
while IFS= read -r name; do
    "$wend" table "$name" --csv >csv 2>err && grep -q '[0-9]' <(sed 1d csv) && count=$((count + 1))
done <names
holds "each as CSV, with figures" test "$count" = "$(wc -l <names)"
for table in 4D2A 4D4A 4D5 4E2A 4E4A; do
    expect "$table as CSV" 0 "$wend" table $table --csv
    sed -i '/^$/,$d' out # 4D5 is of capacity and of drop: two lists, an empty line between them
    holds "each row says where it is from" sh -c 'test "$(sed 1d out | grep -cv "\"BS 7671:2018+A2:2022\",\"'$table'\",\"")" = 0'
    # every printed figure of a size stands in its row, and no other
    grep -v '^#' "$published/capacity-$table.csv" | sed 1d | tr ',' '\n' | grep -E '^[0-9.]+$' | sort -u >printed
    sed '1d; s/,"BS 7671.*//' out | tr ',' '\n' | tr -d '\r' | grep -E '^[0-9.]+$' | sort -u >listed
    holds "its figures are the printed ones" test -z "$(comm -3 printed listed)"
    holds "there are many" test "$(wc -l <listed)" -gt 20
done
expect "a table in small letters" 0 "$wend" table 4e4a
holds "no blank cell is a figure" sh -c "! '$wend' table 4B1 | grep -q -- -1"
holds "it has a row" sh -c "'$wend' table 4B1 | grep -qE '^ *65 +0\.65$'"
expect "no such table" 2 "$wend" table 4E5A
holds "the nearest is named" grep -q 'there is no table 4E5A; did you mean' err
expect "one of bands" 0 "$wend" table 54.7
holds "it says which" grep -qE '^up to 35 +16$' out
expect "no name" 2 "$wend" table
holds "it is not a route file that lacks" grep -q 'too few words for table; for example: wend table 4E4A' err
expect "two names" 2 "$wend" table 4E4A 4D4A
holds "one is too many" grep -q 'one word too many: 4D4A; for example: wend table 4E4A' err
expect "no page" 2 "$wend" man
holds "it is a page that lacks" grep -q 'too few words for man; for example: wend man wend' err

expect "a word of the trade" 0 "$wend" help PME
holds "what it is here" grep -q '^PME is system: TN-C-S under supply$' out
expect "one that is a key too" 0 "$wend" help cpc
holds "it is said, and the key" sh -c "grep -q 'is the protective conductor' out && grep -q '^runs.NAME.cable' out"
expect "a cable" 0 "$wend" cable BS5467 3x6
holds "no line is too long" test "$(wc -L <out)" -le 80
for figure in 'method C, 2 loaded, 90 degC +62 A' 'method D, 3 loaded, 70 degC +38 A' 'drop, single-phase +7.9 mV/A/m' \
    'conductor, 20 degC +3.08 ohm/km' 'armour area +23 mm2' 'overall diameter +16.6 mm' 'weight +568 kg/km' 'usual gland +20 ' \
    'its entry thread +M20' 'bend radius +99.6 mm' 'spacing of vertical fixings +0.55 m' 'k of its armour, 90 degC +46 ' \
    'most pull on its conductors +900 N' 'hook cleat number +7 '; do
    holds "it says: $figure" grep -qE "^  $figure" out
done
holds "each with its source" grep -q '\[2\] BS 7671:2018+A2:2022, 4E4A: two sources' out
holds "what they are not" grep -q 'before any rating factor' out
holds "and where the hotter ones do not hold" grep -q 'not for ends whose terminals stand 70 degC only' out
"$wend" table D1 >spacings
holds "its spacing is the table's" grep -qE '^ +20 +400 +550 ' spacings
cp out first
for spelling in 3X6 3x6mm2 3×6; do
    expect "its size as $spelling" 0 "$wend" cable BS5467 $spelling
    holds "is the same cable" cmp first out
done
expect "a flat cable" 0 "$wend" cable BS6004-flat 2x2.5
holds "of which no armour is told" sh -c '! grep -q "^  .*armour" out'
holds "what is not known is said" grep -q 'Not known here: overall diameter, weight, bend radius' out
holds "and what it is not for" grep -q '^Not for the ground: no table gives a cable without armour' out
expect "a cable for data" 0 "$wend" cable EN50288 4x0.5
holds "it is for data only" grep -q '^For data runs only' out
expect "a conductor for earth" 0 "$wend" cable BS6004-single 1x16
holds "its k is that of a separate one" grep -qE 'separate earth, 70 degC +143 ' out
expect "a cable as JSON" 0 "$wend" cable BS5467 3x6 --format json
holds "the same figures" test "$(grep -c '"what":' out)" = "$(grep -c '^  [a-z].*\[[0-9]*\]$' first)"
expect "a table as JSON" 0 "$wend" table 54.1 --format json
holds "figures are numbers, words are text" grep -q '\["sheathed", 16, 2.5\]' out
expect "no such kind" 2 "$wend" cable BS5647 3x6
holds "the nearest is named" grep -q 'did you mean BS5467?' err
expect "a single core" 0 "$wend" cable BS5467 1x6
holds "no figure of two loaded cores is given for it" sh -c '! grep -qE "^  .*(drop|loaded)" out'
holds "it says that none is known" grep -q 'Not known here: capacity, voltage drop' out
for size in 3x7 6x6 99x6 6 3x x6 3x-6 3x6mm 3x6x6; do
    expect "no such size: $size" 2 "$wend" cable BS5467 $size
    holds "it is told how to write one" grep -q 'write the size like 3x6' err
done

for word in depth fence BS5467 PASS OPEN FAIL --out -o --strict 4E4A reference way; do
    expect "help on $word" 0 "$wend" help "$word"
    holds "it is named" grep -q -- "$word" out
done
sed -n 's/^MSG([A-Z0-9_]*, "\([a-z0-9-]*\)".*/\1/p' "$here/../../src/base/diag_messages.inc" >messages
unknown=$(while IFS= read -r name; do "$wend" help "$name" 2>/dev/null | grep -q . || echo "$name"; done <messages)
holds "help on each of $(wc -l <messages) messages: $unknown" test -z "$unknown" -a "$(wc -l <messages)" -gt 100
# every word that there is: commands and their options, checks, tables, kinds of cable, and the keys and words of both
# languages, of which the quick run takes every ninth; each is named in its answer
every=$([ -n "${WEND_SKIP_NOTHING:-}" ] && echo 1 || echo 9)
"$wend" complete '' >commands
while IFS= read -r command; do "$wend" complete "$command" --; done <commands | LC_ALL=C sort -u >options
sed -n 's/^ *{"\([a-z-]*\)", SAY_TITLE_.*/\1/p' "$here/../../src/design/checks.c" "$here/../../src/design/mechanics/mechanics.c" |
    LC_ALL=C sort -u >checks
"$wend" complete table '' >tables
"$wend" complete cable '' >cables
"$wend" manual | sed -nE 's/^ {2}([a-z][^ ]*).*/\1/p; s/^ {24}([^ ]+) {2,}[^ ].*/\1/p' | LC_ALL=C sort -u |
    awk -v every="$every" 'NR % every == 0' >keys
while read -r list least; do
    holds "$list to ask for: $(wc -l <"$list")" test "$(wc -l <"$list")" -ge "$least"
done <<'L'
commands 20
options 15
checks 25
tables 40
cables 9
keys 15
L
unanswered=$(cat commands options checks tables cables keys | while IFS= read -r word; do
    "$wend" help "$word" 2>/dev/null | grep -qF -- "$word" || echo "$word"
done)
holds "help on each of them: $unanswered" test -z "$unanswered"
expect "help on a check" 0 "$wend" help drop
holds "its title and its rule" grep -q 'Voltage drop. By BS 7671 525 and Appendix 4, 6.4' out
expect "help on a key" 0 "$wend" help depth
holds "its places, its range and its defaults" test "$(grep -cE '^segments\[\]|50 mm to 10 m|default: (600 mm|as surveyed)' out)" = 6
holds "and no other key" test "$(grep -cE '^  [a-z]' out)" = 2
expect "help on a word in two places" 0 "$wend" help length
holds "tells both" test "$(grep -cE '^  length' out)" -ge 2
expect "help on nothing" 2 "$wend" help dpeth
holds "the nearest is named" grep -q 'nothing is known of dpeth; did you mean depth?' err

# a route that is watched; how long a plan takes nobody knows, so each step waits for its sign
cat >good.yaml <<'Y'
wend: 1
job: {title: Shed}
supply: {system: TN-S, loop-impedance: 0.35 ohm}
runs: {feeder: {load: {current: 20 A}, cable: {type: BS5467, cores: 3}}}
segments:
  - {name: wall, way: wall, length: 12 m}
Y
cp good.yaml shed.yaml
"$wend" watch shed.yaml --out papers >said 2>told </dev/null &
watcher=$!
comes() { # TEXT FILE: within half a minute
    for _ in $(seq 150); do grep -qE -- "$1" "$2" 2>/dev/null && return; sleep 0.2; done
    return 1
}
holds "it plans" comes '^watching shed.yaml; end with Ctrl-C$' said
holds "the papers are there" test -s papers/shed.brief.html
cp papers/shed.plan.xml before.xml
sed 's/12 m/14 m/' good.yaml >new && mv new shed.yaml
holds "it sees a save" comes '^shed.yaml was saved$' said
holds "it tells what is new" comes '^\+ .*1[4-9](\.[0-9]+)? m' said
holds "and what is gone" comes '^- ' said
holds "the papers are new" sh -c '! cmp -s before.xml papers/shed.plan.xml'
sed 's/way: wall/way: wal/' good.yaml >new && mv new shed.yaml
holds "it tells a fault" comes '^shed.yaml:6:.*error' told
holds "nothing is planned" comes '^shed.yaml: nothing was planned$' said
holds "no paper looks valid" comes 'files in papers, of shed before it was wrong' told
holds "none does" test ! -e papers/shed.brief.html -a -e papers/shed.brief.html.old
sed 's/12 m/14 m/' good.yaml >new && mv new shed.yaml
holds "it is the plan from before" comes '^  the same plan$' said
holds "the papers are back" test -s papers/shed.brief.html
sed 's/title: Shed/title: Store/' good.yaml >new && mv new shed.yaml
for _ in $(seq 150); do grep -q 'title="Store"' papers/shed.plan.xml && break; sleep 0.2; done
holds "a title that was changed is of the same job" grep -q 'title="Store"' papers/shed.plan.xml
holds "and nothing is told of another" sh -c '! grep -q "another job" told'
cp "$here/../../routes/labour/labour.yaml" mine.yaml
sed 's/title: Shed/title: Store/' good.yaml >new && printf 'parts: {labour: mine.yaml}\n' >>new && mv new shed.yaml
holds "labour figures beside it bring the day" sh -c 'for _ in $(seq 150); do grep -q "The day by your labour figures" papers/shed.brief.html && exit 0; sleep 0.2; done; exit 1'
sed '/^wend-labour: 1$/!d' mine.yaml >new && mv new mine.yaml
holds "it sees a save of those" sh -c 'for _ in $(seq 150); do grep -q "The day by your labour figures" papers/shed.brief.html || exit 0; sleep 0.2; done; exit 1'
kill "$watcher"
wait "$watcher" 2>/dev/null
sed 's/title: Shed/title: Store/' good.yaml >shed.yaml
"$wend" watch good.yaml --out papers >/dev/null 2>&1 </dev/null &
watcher=$!
for _ in $(seq 150); do test -s papers/good.plan.xml && break; sleep 0.2; done
kill "$watcher"
wait "$watcher" 2>/dev/null
cp shed.yaml good.yaml
expect "but papers from before it began are another's" 3 timeout 20 "$wend" watch good.yaml --out papers
holds "it says whose" grep -q 'papers/good.plan.xml is of another job, "Shed"' err
expect "standard input is not watched" 2 "$wend" watch -
expect "nor a file that is not there" 3 timeout 20 "$wend" watch nosuch.yaml
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
