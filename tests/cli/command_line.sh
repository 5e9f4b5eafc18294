#!/bin/bash
# command_line.sh WEND: the program as it is typed: exit statuses, what is written, what is not.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
routes=$here/../../routes
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"

cat >good.yaml <<'Y'
wend: 1
job: {title: Shed}
supply: {system: TN-S, loop-impedance: 0.35 ohm}
runs:
  feeder:
    load: {current: 20 A}
    cable: {type: BS5467, cores: 3}
segments:
  - {name: wall, way: wall, length: 12 m}
Y
sed 's/cores: 3/cores: 3, size: 1.5 mm2/; s/12 m}/120 m}/' good.yaml >fails.yaml
sed 's/way: wall/way: wal/' good.yaml >wrong.yaml
sed 's/length: 12 m}/length: 12 m, air: 75 degC}/' good.yaml >uncovered.yaml # Table 4B1 ends below it

expect "no command" 2 "$wend"
expect "help" 0 "$wend" --help
holds "help teaches a route" grep -q 'cable: {type: BS5467' out
expect "help on plan" 0 "$wend" help plan
expect "plan --help" 0 "$wend" plan --help
expect "version" 0 "$wend" --version
expect "unknown command" 2 "$wend" paln good.yaml
holds "the nearest command is named" grep -q 'unknown command paln; did you mean plan?' err
expect "a command like no other" 2 "$wend" weather good.yaml
holds "it says where they are" grep -q 'unknown command weather; wend --help lists the commands' err
expect "help on no command" 2 "$wend" help chekc
holds "the nearest is named" grep -q 'did you mean check?' err
expect "unknown option" 2 "$wend" plan good.yaml --ouf x
holds "the nearest option is named" grep -q 'unknown option --ouf; did you mean --out?' err
expect "unknown option with a value" 2 "$wend" order good.yaml --dat=2026-05-14
holds "the nearest option is named" grep -q 'unknown option --dat; did you mean --date?' err
expect "an option of another command" 2 "$wend" check good.yaml --out x
holds "help on the command is named" grep -q 'unknown option --out; see wend help check' err
expect "a value for an option without" 2 "$wend" plan good.yaml --strict=yes
expect "standard input twice" 2 "$wend" check - good.yaml -
holds "it is said" grep -q 'standard input can be read once' err
expect "standard input as route and as order" 2 "$wend" order - --order -
for spelling in "-o|short" "--out|short" "--out=short"; do
    IFS='|' read -ra words <<<"$spelling"
    rm -rf short
    expect "the folder as $spelling" 0 "$wend" plan good.yaml "${words[@]}"
    holds "it is used" test -s short/good.plan.xml
done
expect "plan without file" 2 "$wend" plan
expect "plan with two files" 2 "$wend" plan good.yaml fails.yaml
for asks in "plan good.yaml --out" "order good.yaml --out" "watch good.yaml --out" "templates --out" "form --host" "plan good.yaml --templates" "check good.yaml --papers"; do
    expect "$asks -" 2 "$wend" $asks -
    holds "$asks - names the way round it" grep -q 'takes a folder, not standard input or output: -; a folder of that name is ./-$' err
done
expect "the survey page to a file" 0 "$wend" form --out page.html
expect "the survey page to standard output" 0 "$wend" form --out -
holds "is the same" cmp -s out page.html
expect "a new route to standard output" 0 "$wend" new island -
holds "is a route" "$wend" check out
expect "questions to standard output" 2 "$wend" new --ask -
holds "no file is called -" test ! -e -
expect "--out without folder" 2 "$wend" plan good.yaml --out
expect "missing file" 3 "$wend" plan nosuch.yaml
expect "a folder as file" 3 "$wend" plan .
expect "manual" 0 "$wend" manual
holds "the manual names a key" grep -q 'insulated-length' out
expect "tables" 0 "$wend" tables
holds "the tables name 4E4A" grep -q '4E4A' out

expect "plan passes" 0 "$wend" plan good.yaml --out made/deep
holds "plan.xml" test -s made/deep/good.plan.xml
holds "diagram" test -s made/deep/good.diagram.svg
holds "parts" test -s made/deep/good.parts.csv
for paper in brief parts design test pack; do
    holds "$paper" grep -q 'Sheet mark' made/deep/good.$paper.html
done
holds "nothing else" test "$(ls -A made/deep | wc -l)" = 9
holds "no line over 80 columns" test "$(wc -L <out)" -le 80
holds "no colour into a pipe" sh -c '! grep -q "$(printf "\033")" out'
holds "no error output" test ! -s err
holds "the verdict is the last line" sh -c 'tail -n 1 out | grep -q "^Verdict    OPEN: "'
holds "where the papers are" grep -q '^Papers     made/deep/good.plan.xml, .diagram.svg, .parts.csv,' out
for route in "$routes"/*.yaml; do
    expect "$route, in short" 0 "$wend" plan "$route" --out short
    holds "in 24 lines at most: $(basename "$route") has $(wc -l <out)" test "$(wc -l <out)" -le 24 -a "$(wc -l <out)" -ge 10
    holds "in 80 columns" test "$(wc -L <out)" -le 80
    expect "the whole of it" 0 "$wend" plan "$route" --out short --full
    holds "every check" test "$(grep -cE '^  (PASS|n/a) ' out)" -ge 20
    expect "nothing to say" 0 "$wend" plan "$route" --out short --quiet
    holds "nothing said" test ! -s out -a ! -s err
done
expect "quiet, but open" 0 "$wend" plan -q good.yaml --out made/deep
holds "that is said in a line" sh -c 'test "$(wc -l <out)" = 1 && grep -q "^good.yaml: OPEN: " out'
expect "quiet, and it fails" 1 "$wend" check --quiet "$routes"/well-pump.yaml fails.yaml
holds "the one that fails alone" sh -c 'test "$(wc -l <out)" = 1 && grep -q "^fails.yaml: FAIL: " out'
# a source that is slow takes more than a second; `script` lends a terminal
slow="(sleep 2; cat good.yaml) | '$wend' check -"
if script -qec true /dev/null >/dev/null 2>&1 </dev/null; then # there is one, and it has a terminal to lend
    script -qec "$slow" /dev/null >terminal </dev/null
    holds "on a terminal it says what it does" grep -q 'wend: planning -, 1 s' terminal
    script -qec "'$wend' check good.yaml" /dev/null >terminal </dev/null
    holds "nothing where it is quick" sh -c '! grep -q planning terminal'
fi
sh -c "$slow" >out 2>err
holds "nothing into a pipe" test ! -s err
expect "a check fails" 1 "$wend" plan fails.yaml --out fails
holds "a failing plan is still written" grep -q 'verdict="fail"' fails/fails.plan.xml
holds "its list is named so" test -s fails/fails.FAIL.parts.csv -a ! -e fails/fails.parts.csv
holds "its head names the column" grep -q '^line,quantity,.*,total,buy,asked,plan,sheet-mark.$' fails/fails.FAIL.parts.csv
holds "every row says it" sh -c 'test "$(sed 1d fails/fails.FAIL.parts.csv | grep -vcE ",FAIL,[0-9A-F-]{9}.$")" = 0'
holds "every row of an open plan says it" sh -c 'test "$(sed 1d made/deep/good.parts.csv | grep -vcE ",OPEN,[0-9A-F-]{9}.$")" = 0'
expect "a warning" 0 "$wend" plan "$here/../found/cover-too-shallow.yaml" --out warned
holds "it is in the plan" grep -q '<warning name="cover-shallow" where="meadow" stretch="2">segment "meadow": 60 mm of cover' warned/cover-too-shallow.plan.xml
holds "it is in the summary" grep -q '^Warning    segment "meadow": 60 mm of cover' out
for paper in brief parts design test pack; do
    holds "it is on $paper" grep -Eq 'segment ("|&quot;)meadow("|&quot;): 60 mm of cover' warned/cover-too-shallow.$paper.html
done
holds "it is at its stretch in the brief" grep -q '<strong>Warning: </strong>segment' warned/cover-too-shallow.brief.html
holds "the diagram speaks of it" grep -q '1 warning: see the design sheet' warned/cover-too-shallow.diagram.svg
mkdir mended && cp fails.yaml mended/job.yaml
expect "first it passes" 0 "$wend" plan good.yaml --out mended
cp good.yaml kept.yaml && cp fails.yaml good.yaml
expect "then it fails" 1 "$wend" plan good.yaml --out mended
holds "the list that passed is set aside" test -s mended/good.parts.csv.old -a -s mended/good.FAIL.parts.csv -a ! -e mended/good.parts.csv
holds "this is told" grep -q 'note: .*good.parts.csv, of an earlier run, is now .*good.parts.csv.old' err
echo 'my own prices' >mended/good.parts.csv
expect "it fails again" 1 "$wend" plan good.yaml --out mended
holds "a file that is not ours stays" grep -q 'my own prices' mended/good.parts.csv
rm mended/good.parts.csv
cp kept.yaml good.yaml
expect "it passes again" 0 "$wend" plan good.yaml --out mended
holds "the one that failed is set aside" test -s mended/good.FAIL.parts.csv.old -a -s mended/good.parts.csv -a ! -e mended/good.FAIL.parts.csv
cp fails.yaml good.yaml
expect "it fails once more" 1 "$wend" plan good.yaml --out mended
holds "nothing set aside before is lost" test -s mended/good.parts.csv.old -a -s mended/good.parts.csv.old2
cp kept.yaml good.yaml
# what an option or a command is given wrongly is said, with what it takes
while IFS='|' read -r asks said; do
    expect "$asks" 2 "$wend" $asks
    holds "$asks: it is said" grep -qF -- "wend: error: $said" err
    holds "$asks: nothing is printed" test ! -s out
done <<'T'
options good.yaml --growth 1000.1 %|--growth takes 0 to 1000 %, not 1000.1%
options good.yaml --growth 025 %|--growth takes 0 to 1000 %, not 025%
options good.yaml --growth 1.5.2%|--growth takes 0 to 1000 %, not 1.5.2%
options good.yaml --growth 25.%|--growth takes 0 to 1000 %, not 25.%
options good.yaml --growth %|--growth takes 0 to 1000 %, not %
options good.yaml --growth 0000000000000000000000000000000025 %|--growth takes 0 to 1000 %, not 0000000000000000000000000000000025
options good.yaml --growth 25|--growth needs a unit: not 25
day good.yaml --hands 0|--hands takes a whole number from 1 to 4, not 0
day good.yaml --hands 5|--hands takes a whole number from 1 to 4, not 5
day good.yaml --hands 1.5|--hands takes a whole number from 1 to 4, not 1.5
day good.yaml --hands -1|--hands
day good.yaml --seed 4294967296|--seed takes a whole number from 0 to 4294967295, not 4294967296
check good.yaml --jobs 65|--jobs takes a whole number from 1 to 64, not 65
day good.yaml --date 2027-02-29 --ics|--date takes a day of the calendar, not 2027-02-29
plan good.yaml --language de|unknown language de; write --language en or --language pl
plan good.yaml --format xml|--format takes json, not xml
plan good.yaml --format json --csv-bom|--format json has no use for --csv-bom
plan good.yaml --format json --replace|--format json has no use for --replace
plan good.yaml --format json --templates x|--format json has no use for --templates
plan good.yaml --format json --language pl|--format json has no use for --language
check good.yaml --format json --papers x|--format json has no use for --papers
check good.yaml --format json --quiet|--format json has no use for --quiet
diff good.yaml fails.yaml --format json --csv|--format json has no use for --csv
day good.yaml --format json --ics --date 2026-05-14|--format json has no use for --ics
schema x|nothing is to be given to schema
table|too few words for table
cable BS5467|too few words for cable
form --paper --out x|form takes one of --out, --host and --paper
form|form takes one of --out, --host and --paper
templates|--out needs a folder
T
expect "the most growth there may be" 0 "$wend" options good.yaml --growth 1000 %
sets=$(printf -- ' --set segments.wall.length=%d%%m' $(seq 1 64) | tr % ' ' | sed 's/ m/m/g')
expect "64 settings are read" 2 "$wend" check good.yaml $sets
holds "one of them is one too many for the key" grep -q '"segments.wall.length" is set twice' err
expect "one more" 2 "$wend" check good.yaml $sets --set segments.wall.length=65m
holds "it is said where" grep -q -- '--set is given too often at segments.wall.length=65m' err
long=$(printf '%0300d' 0)
expect "a folder of too long a name" 3 "$wend" plan good.yaml --out "$long"
holds "it is named" grep -q "0000 could not be made" err
deep=$(printf 'd%.0s/' $(seq 1 2100))
expect "a path longer than any" 3 "$wend" plan good.yaml --out "$deep"
holds "why is said" grep -q 'name too long' err
expect "templates from a path longer than any" 2 "$wend" plan good.yaml --templates "$deep"
holds "it is none" grep -q 'is no folder of templates$' err
expect "one that is long with a template's name alone" 2 "$wend" plan good.yaml --templates "$(printf './%.0s' $(seq 1 2045))"
holds "it is said too" grep -q 'is too long$' err

# completion: what may come next
next() { "$wend" complete "$@"; }
holds "a command" test "$(next pla)" = plan
holds "all of them" sh -c '"$1" complete "" | grep -qx explain' - "$wend"
holds "none that is not told of" sh -c '! "$1" complete "" | grep -qx complete' - "$wend"
holds "an option" test "$(next plan good.yaml --ou)" = --out
holds "none of another command" test -z "$(next check good.yaml --ou)"
holds "a folder behind --out" test "$(next plan good.yaml --out '')" = :folder
holds "no number for a day" test -z "$(next order good.yaml --date '')"
holds "a folder behind its letter" test "$(next plan good.yaml -o '')" = :folder
holds "a file behind --labour" test "$(next day good.yaml --labour '')" = :yaml
holds "a share" test "$(next options good.yaml --growth 2)" = 25%
holds "a format" test "$(next check good.yaml --format j)" = json
holds "a number of processes" test "$(next check good.yaml --jobs '')" = 2
holds "a word of one's own for --set" test -z "$(next check good.yaml --set '')"
holds "behind a value a word again" test "$(next options good.yaml --growth 25% '')" = feeder
holds "behind a switch too" test "$(next plan --replace '')" = :yaml
holds "both files of a difference" test "$(next diff good.yaml '')" = :yaml
holds "no third" test -z "$(next diff good.yaml fails.yaml '')"
holds "no name of standard input" test -z "$(next options - '')"
holds "nothing of a command that there is not" test -z "$(next weather '')"
holds "commands behind help" test "$(next help chec)" = check
holds "a table" test "$(next table 4E4)" = "$(printf '4E4A\n4E4B')"
holds "one table" test -z "$(next table 4E4A '')"
holds "a cable" test "$(next cable BS54)" = BS5467
holds "how many hands" test "$(next day good.yaml --hands 3)" = 3
holds "a language" test "$(next plan good.yaml --language p)" = pl
holds "a file" test "$(next check '')" = :yaml
holds "a file once" test -z "$(next plan good.yaml '')"
holds "a run of the file" test "$(next options good.yaml '')" = feeder
holds "a check of the file" test "$(next explain good.yaml disc)" = disconnection
holds "a run behind the check" test "$(next explain good.yaml drop '')" = feeder
holds "nothing of a file that is wrong" test -z "$(next explain wrong.yaml '')"
holds "nothing of one that is not there" test -z "$(next explain nosuch.yaml '' 2>&1)"

# the manual's pages have every key and every option
for page in wend wend-route wend-order wend-labour; do
    expect "page $page" 0 "$wend" man $page
    cp out page.$page
done
"$wend" manual | sed -n '/^THE PRICE LIST/q; s/^  \([a-z0-9-]\{1,\}\)\( .*\)\{0,1\}$/\1/p' | sort -u >keys
holds "there are many keys" test "$(wc -l <keys)" -gt 100
sed -n 's/^\.It Cm //p' page.wend-route page.wend-order | sort -u >paged
holds "every key is on a page" diff keys paged
for option in out templates strict growth order date twice force csv-bom replace language format; do
    holds "--$option is on the page" grep -q "^.It .*Fl Fl $option\b" page.wend
done
expect "no such page" 2 "$wend" man wend-weather

# papers of a file that has become wrong
mkdir stale && cp stale/../good.yaml stale/job.yaml
expect "a plan" 0 "$wend" plan stale/job.yaml --out stale
cp stale/job.plan.xml first.xml
cp wrong.yaml stale/job.yaml
expect "the file becomes wrong" 2 "$wend" plan stale/job.yaml --out stale
holds "none of its papers looks valid" test "$(ls stale)" = "$(cd stale && printf '%s\n' job.*.old job.yaml | sort)"
holds "all are kept" test "$(ls stale/*.old | wc -l)" = 9
holds "as they were" cmp first.xml stale/job.plan.xml.old
holds "it is told" grep -q 'note: 9 files in stale, of job before it was wrong, now end in .old' err
expect "it is wrong still" 2 "$wend" plan stale/job.yaml --out stale
holds "nothing more is told" sh -c '! grep -q note: err'
cp good.yaml stale/job.yaml
expect "it is right again" 0 "$wend" plan stale/job.yaml --out stale
echo 'my own' >stale/job.brief.html
cp wrong.yaml stale/job.yaml
expect "it is wrong again" 2 "$wend" plan stale/job.yaml --out stale
holds "what is not ours stays" grep -q 'my own' stale/job.brief.html
holds "older ones make room" test "$(ls stale/*.old* | wc -l)" = 9
expect "wrong file" 2 "$wend" plan wrong.yaml --out nothing
holds "nothing is written for it" test ! -e nothing
holds "the fault is at its place" grep -q '^wrong.yaml:9:23: error: ' err
holds "the near word is named" grep -q 'wall' err
expect "no table covers it" 2 "$wend" plan uncovered.yaml --out nothing
holds "the missing figure is named" grep -q 'no-capacity-figure' err
sed 's/cores: 3}/cores: 3}\n    device: {breaking-capacity: 6 kA}/; s/\(supply: {.*\)}/\1, fault-current: 1 kA}\nearthing: {far-end: export, extraneous-parts: no}/' good.yaml >passes.yaml
expect "every check is made" 0 "$wend" check --strict passes.yaml
holds "it passes" grep -q '^passes.yaml: PASS: every check that applies was made and passes$' out
expect "one cannot be made" 0 "$wend" check good.yaml
holds "it is open" grep -q '^good.yaml: OPEN: .*breaking-capacity of feeder could not be checked: give device: breaking-capacity' out
holds "it does not pass" sh -c '! grep -q PASS out'
expect "check, strictly" 1 "$wend" check --strict passes.yaml good.yaml
expect "plan, strictly" 1 "$wend" plan --strict good.yaml --out strict
holds "all is written" test -s strict/good.pack.html
for paper in brief parts design test pack; do
    holds "open on $paper" grep -q '<strong>OPEN</strong>' strict/good.$paper.html
    holds "what is open on $paper" grep -q 'SETTLE FIRST' strict/good.$paper.html
done
holds "open on the drawing" grep -q '>OPEN</text>' strict/good.diagram.svg
expect "options, strictly" 1 "$wend" options --strict good.yaml
expect "explain has no such option" 2 "$wend" explain --strict good.yaml drop
expect "check writes nothing" 0 "$wend" check good.yaml
holds "check wrote nothing" test ! -e good.plan.xml
expect "check of several: the worst counts" 2 "$wend" check good.yaml fails.yaml wrong.yaml
holds "a line each" test "$(wc -l <out)" = 3
expect "standard input" 0 sh -c "'$wend' plan - --out in <good.yaml"
holds "named route" test -s in/route.plan.xml
expect "standard output that is full" 3 sh -c "'$wend' check good.yaml >/dev/full"
expect "a name that a terminal acts on" 2 "$wend" check $'red\e[31m\nwend: PASS.yaml'
holds "it is not repeated" sh -c '! grep -q "PASS\|$(printf "\\033")" out err'
expect "a name that reads the other way round" 2 "$wend" check $'a\xe2\x80\xaeb.yaml'
# names of files may hold any byte; a terminal is given characters only
latin=$'na\xefve.yaml'
cp good.yaml "$latin"
for command in check plan "plan --quiet" "plan --full" "check --papers latin-out" order diff; do
    with=$latin
    [ "$command" != diff ] || with="$latin $latin"
    case $command in plan* | order) to="--out latin-out" ;; *) to= ;; esac
    $wend $command $with $to >out 2>err
    holds "$command of a name that is no UTF-8 prints no such byte" sh -c 'cat out err | iconv -f UTF-8 -t UTF-8'
    holds "$command shows where it was" grep -q $'na\xef\xbf\xbdve' out
done
expect "one that is not there" 3 "$wend" check $'no\xff.yaml'
holds "is named in characters" grep -q $'^wend: error: no\xef\xbf\xbd.yaml could not be read' err
expect "letters beyond ASCII" 3 "$wend" check $'no\xc3\xaf\xf0\x9f\x94\x8c.yaml'
holds "stay as they are" grep -q $'^wend: error: no\xc3\xaf\xf0\x9f\x94\x8c.yaml could' err
for bad in $'\xc0\xaf' $'\xed\xa0\xbf' $'\xf4\xbf\xbf\xbf' $'\xe2\xbf'; do # too long, a surrogate, too high, cut off
    "$wend" check "no$bad.yaml" >out 2>err
    holds "no character" sh -c 'iconv -f UTF-8 -t UTF-8 err && grep -q "no.*could not be read" err'
done
long=$(printf '%01500d' 0)
expect "a name longer than a line is kept for" 3 "$wend" check "$long.yaml"
holds "is printed whole" grep -q "$long.yaml could not be read" err
mkfifo pipe.yaml
expect "a pipe that nobody writes to" 3 timeout 20 "$wend" check pipe.yaml
expect "a device" 3 "$wend" check /dev/zero
holds "it is no file" grep -q '/dev/zero could not be read: it is not a regular file' err
sed 's/job: {title: Shed}/&\nparts: {prices: "-"}/' good.yaml >piped.yaml
expect "prices from standard input" 2 "$wend" check piped.yaml
holds "a plain name is asked for" grep -q 'file-name-plain' err
expect "a dash file after --" 3 "$wend" check -- --no-such

# a spreadsheet on site takes a CSV for its own encoding unless it begins with a mark
expect "a CSV with a byte order mark" 0 "$wend" plan good.yaml --out marked --csv-bom
holds "it begins with it" test "$(head -c 3 marked/good.parts.csv | od -An -tx1 | tr -d ' ')" = efbbbf
expect "and without" 0 "$wend" plan good.yaml --out unmarked
holds "the rest is the same" sh -c 'tail -c +4 marked/good.parts.csv | cmp - unmarked/good.parts.csv'
holds "no other has it" sh -c 'for file in marked/good.*; do case $file in *.csv) ;; *) cmp $file un$file || exit 1; esac; done'
expect "it is replaced as ours" 0 "$wend" plan good.yaml --out marked
holds "without the mark again" cmp marked/good.parts.csv unmarked/good.parts.csv
expect "an order with it" 0 "$wend" order good.yaml --out marked --csv-bom
holds "it begins with it" test "$(head -c 3 marked/order.csv | od -An -tx1 | tr -d ' ')" = efbbbf

# The crew may read another language; all others read English.
expect "an unknown language" 2 "$wend" plan good.yaml --out foreign --language pol
holds "the nearest is named" grep -q 'unknown language pol; did you mean pl?' err
holds "and nothing written" test ! -e foreign
expect "no language" 2 "$wend" plan good.yaml --language
expect "a language for what is English" 2 "$wend" order good.yaml --language pl
expect "Polish" 0 "$wend" plan good.yaml --out foreign --language pl
cp out foreign.out
holds "the brief is Polish" grep -q '<html lang="pl">' foreign/good.brief.html
holds "and the drawing" grep -q 'xml:lang="pl"' foreign/good.diagram.svg
holds "which text governs is said in both" grep -q 'tekst angielski.*<span lang="en">The English text governs' foreign/good.brief.html
expect "English" 0 "$wend" plan good.yaml --out unmarked --language en
for file in unmarked/good.*; do
    case $file in
    *.brief.html | *.card.html | *.diagram.svg) holds "$file differs" sh -c "! cmp -s $file foreign/${file#*/}" ;;
    *) holds "$file is the same" cmp "$file" "foreign/${file#*/}" ;;
    esac
done
holds "the terminal is the same" sh -c 'sed s/unmarked/foreign/ out | cmp - foreign.out'
holds "no word of it in the English brief" sh -c '! grep -q "English text governs" unmarked/good.brief.html'
expect "they are replaced as ours" 0 "$wend" plan good.yaml --out foreign
# libxml2 is loaded for XML and papers alone; without it the rest works. Where it is linked, nothing starts without it.
mkdir bogus && : >bogus/libxml2.so.2
if ldd "$wend" | grep -q libxml2; then
    echo "not tried: to be without libxml2, for it is linked"
else
    without="env LD_LIBRARY_PATH=$work/bogus"
    for words in --version --help manual tables "check passes.yaml" "options passes.yaml" "explain passes.yaml drop" "order passes.yaml --out listed" "order passes.yaml --date 2026-05-14 --out dated"; do
        expect "without libxml2: $words" 0 $without "$wend" $words
    done
    "$wend" templates --out style >out
    rm -f style/*.xsl
    for words in "plan passes.yaml" "plan passes.yaml --templates style"; do
        expect "without libxml2: $words" 3 $without "$wend" $words --out nothing
        holds "it is said what is lacking" grep -q '^wend: error: what XML and papers are made with could not be loaded: .*libxml2' err
        holds "nothing is written" test ! -e nothing
    done
    # libyaml, cJSON and C's own; a build under sanitizers brings libraries of theirs
    ldd "$wend" >out
    holds "a start loads few libraries" test "$(grep -cvE 'lib(asan|ubsan|gcc_s|stdc\+\+)\.' out)" -le 8
fi

# The price list lies beside the route, not in the folder one stands in; without it there is a plan without prices.
mkdir job
{ cat good.yaml; echo 'parts: {prices: mine.csv}'; } >job/priced.yaml
expect "a price list that is not there" 0 "$wend" plan job/priced.yaml --out bare
holds "it is told" grep -q 'job/mine.csv could not be read' err
holds "the order says so" grep -q 'mine.csv was not read: nothing is priced' bare/priced.parts.csv
printf 'code,unit,price,currency\ncable-BS5467-3x1.5,m,2.15,EUR\n' >job/mine.csv
expect "a price list" 0 "$wend" plan job/priced.yaml --out dear
holds "no word about it" test ! -s err
holds "a total" grep -q ',EUR,30.10' dear/priced.parts.csv
holds "a total is shown" grep -q 'EUR 30.10 for 1 of' out
printf 'code,unit,price,currency\ncable,m,2:15,EUR\n' >job/mine.csv
expect "a wrong price list" 2 "$wend" plan job/priced.yaml --out nothing
holds "it has a place" grep -q '^job/mine.csv:2:9: error: "2:15" is not a price' err
holds "nothing is written" test ! -e nothing
expect "check reads it too" 2 "$wend" check job/priced.yaml
expect "options, which prices each size, too" 2 "$wend" options job/priced.yaml
for word in safe compliant; do
    holds "never says $word" sh -c "! '$wend' plan '$routes/cider-barn.yaml' --out words | grep -iw $word"
    holds "no document says $word" sh -c "! grep -riw $word words"
done
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
