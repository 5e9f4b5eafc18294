#!/bin/bash
# day.sh WEND: the work of a plan, as it is typed: hands, seed, labour figures, calendar; exit statuses and what is told.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
routes=$here/../../routes
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"
cp "$routes/labour/labour.yaml" own.yaml
cp "$routes/cider-barn.yaml" barn.yaml

expect "the day" 0 "$wend" day barn.yaml
columns "the day"
holds "names the bound beside the time" grep -q '^TIME     .* min; no order of work can be under .* min$' out
holds "says that the figures are the program's" grep -q '^FIGURES  those of the program: common practice, no source' out
holds "the verdict comes last" grep -q '^Verdict' <(tail -n 1 out)
holds "promises nothing" grep -q 'An estimate from labour figures, no promise' out
cp out first
expect "the same again" 0 "$wend" day barn.yaml --seed 1
holds "is the same, byte for byte" cmp -s out first
expect "another seed" 0 "$wend" day barn.yaml --seed 2
holds "changes the simulation alone" test "$(diff first out | grep -c '^<')" -le 4
expect "own figures" 0 "$wend" day barn.yaml --labour own.yaml
holds "are said to be so" grep -q '^FIGURES  common practice, no source$' out
for hands in 1 2 3 4; do
    expect "$hands hands" 0 "$wend" day barn.yaml --hands $hands --format json
    holds "$hands hands in JSON" grep -q "\"hands\":	$hands,$" out
done
for wrong in 0 5 -1 2.5 many; do expect "--hands $wrong" 2 "$wend" day barn.yaml --hands $wrong; done
for wrong in -1 4294967296 1.5 x; do expect "--seed $wrong" 2 "$wend" day barn.yaml --seed $wrong; done
expect "a calendar without a day" 2 "$wend" day barn.yaml --ics
expect "a day without a calendar" 2 "$wend" day barn.yaml --date 2026-05-14
expect "a day of no calendar" 2 "$wend" day barn.yaml --ics --date 2026-02-30
expect "a calendar and JSON" 2 "$wend" day barn.yaml --ics --date 2026-05-14 --format json
expect "a calendar of what fails" 1 "$wend" day barn.yaml --ics --date 2026-05-14 --set 'runs.feeder.cable.size=6 mm2'
holds "says so in each entry" test "$(grep -c '^SUMMARY:FAIL: ' out)" = "$(grep -c '^BEGIN:VEVENT' out)" -a -s out
holds "and why" grep -q 'FAIL: .* fails' <(tr -d '\r' <out | sed ':a;N;$!ba;s/\n //g')
holds "and what was changed" grep -q '^DESCRIPTION:.*runs.feeder.cable.size=6 mm2' <(tr -d '\r' <out | sed ':a;N;$!ba;s/\n //g')
expect "a plan as JSON" 0 "$wend" plan barn.yaml --format json
cp out plan.json
expect "a plan as JSON for papers by own figures" 0 "$wend" plan barn.yaml --format json --labour own.yaml
holds "has another sheet mark" sh -c "! cmp -s out plan.json"
holds "and nothing else that is other" cmp -s <(grep -v '"sheet-mark"' out) <(grep -v '"sheet-mark"' plan.json)
expect "the day of a changed route as JSON" 0 "$wend" day barn.yaml --format json --set 'job.title=Another barn' --set 'supply.loop-impedance=0.3 ohm'
holds "says what was set" grep -q '^	"set":	\["job.title=Another barn", "supply.loop-impedance=0.3 ohm"\],$' out
expect "the day of a changed route" 0 "$wend" day barn.yaml --set 'job.title=Another barn'
holds "says so first" grep -q '^CHANGED  job.title=Another barn: not as in the file$' <(head -n 1 out)
expect "a calendar" 0 "$wend" day barn.yaml --ics --date 2026-05-14
holds "ends every line as RFC 5545 has it" test "$(grep -c $'\r$' out)" = "$(wc -l <out)"
expect "a calendar on the last day of all" 0 "$wend" day barn.yaml --ics --date 9999-12-30
holds "goes to the day's end" grep -q '^DTEND:99991231T' out
expect "a calendar beyond it" 2 "$wend" day barn.yaml --ics --date 9999-12-31
holds "is refused" grep -q 'or beyond the year 9999' err
holds "and prints no date that is wrong" test ! -s out
sed 's/^day: {length: 8 h/day: {length: 23 h/; s/starts: "08:00"/starts: "23:00"/' own.yaml >night.yaml
expect "a night that ends in the year behind" 2 "$wend" day barn.yaml --labour night.yaml --ics --date 9999-12-31
expect "and one that does not" 0 "$wend" day barn.yaml --labour night.yaml --ics --date 9999-12-30
holds "ends on the last day of all" grep -q '^DTEND:99991231T' out
expect "figures that are not there" 3 "$wend" day barn.yaml --labour none.yaml
expect "figures that are a route" 2 "$wend" day barn.yaml --labour barn.yaml
holds "are told where they are wrong" grep -q '^barn.yaml:[0-9]*:1: error: .*\[labour-version-missing\]$' err
holds "and print no day" test ! -s out
grep -v '^  dig:' own.yaml >nodig.yaml
sed 's/^day: {length: 8 h/day: {length: 1 min/; s/low: 0.3 min, likely: 0.5 min, high: 1.5/low: 30 min, likely: 30 min, high: 30/' own.yaml >long.yaml
expect "a calendar of more days than a year has" 2 "$wend" day barn.yaml --labour long.yaml --ics --date 2026-05-14
holds "is not made" grep -q 'nor of more than 366 days' err
sed 's/^electricians: 1/electricians: 0/' own.yaml >unskilled.yaml
expect "no electrician" 0 "$wend" day barn.yaml --labour unskilled.yaml
holds "is said plainly" grep -q '^TIME .* takes an electrician; the labour figures' out
expect "a task without a figure" 0 "$wend" day barn.yaml --labour nodig.yaml
holds "leaves the time not known" grep -q '^TIME     not known: 1 task has no time; no order of work can be under' out
expect "no calendar of that" 2 "$wend" day barn.yaml --labour nodig.yaml --ics --date 2026-05-14
sed -i 's/^parts:/&\n  labour: own.yaml/' barn.yaml
expect "figures that the route names" 0 "$wend" day barn.yaml
holds "are taken" grep -q '^FIGURES  common practice, no source$' out
rm own.yaml
expect "and are not there" 0 "$wend" day barn.yaml
holds "is a warning" grep -q '^wend: warning: the labour figures .*own.yaml could not be read' err
expect "a plan that fails" 1 "$wend" day barn.yaml --set 'runs.feeder.cable.size=6 mm2'
holds "is not to be built" grep -q 'Nothing is to be built by it' out
sed 's/^# rates:/rates:/' "$routes/labour/labour.yaml" >own.yaml
expect "a plan with own figures and rates" 0 "$wend" plan barn.yaml --out papers
holds "has a quotation" grep -q 'data-label="GBP" class="n">[1-9]' papers/barn.quotation.html
holds "in the currency of the rates" grep -q '>GBP<' papers/barn.quotation.html
holds "and names what is not in it" grep -q 'Not in the total' papers/barn.quotation.html
holds "the day is on the brief" grep -q 'The day by your labour figures' papers/barn.brief.html
expect "its papers belong together" 0 "$wend" check barn.yaml --papers papers
holds "the quotation among them" grep -q '^papers: the 10 papers of barn belong together' out
mv papers/barn.quotation.html away.html
expect "a quotation that is gone" 1 "$wend" check barn.yaml --papers papers
holds "is missed" grep -q '^papers/barn.quotation.html: missing$' out
mv away.html papers/barn.quotation.html
sed -i 's/low: 0.3 min, likely: 0.5 min/low: 0.3 min, likely: 0.6 min/; s/^# the times/# The times/' own.yaml
expect "figures that were changed since" 1 "$wend" check barn.yaml --papers papers
holds "make other papers due" grep -q 'the papers of barn belong together, but not to the route as it is now' out
expect "by those of then" 1 "$wend" check barn.yaml --papers papers --labour "$routes/labour/labour.yaml"
holds "which had rates" grep -q ': of another plan: its sheet mark is' out
printf '# a remark\n' >>own.yaml
expect "planned again" 0 "$wend" plan barn.yaml --out papers
sed -i '/^# a remark$/d' own.yaml
expect "a remark in the figures" 0 "$wend" check barn.yaml --papers papers
expect "figures that were not planned with" 1 "$wend" check barn.yaml --papers papers --labour "$routes/labour/labour.yaml"
expect "wrong figures are wrong to a check as well" 2 "$wend" check barn.yaml --labour barn.yaml --format json
holds "and stand in its JSON" grep -q 'labour-version-missing' out
expect "figures from standard input for two files" 2 "$wend" check barn.yaml barn.yaml --labour -
expect "a plan without figures of its own" 0 "$wend" plan "$routes/cider-barn.yaml" --out plain
holds "has no quotation" test ! -e plain/cider-barn.quotation.html
holds "and no such day" sh -c "! grep -q 'The day by your labour figures' plain/cider-barn.brief.html"
grep -v '^rates:' own.yaml >norates.yaml
expect "figures without rates" 0 "$wend" plan barn.yaml --labour norates.yaml --out papers
holds "set the quotation aside" test -e papers/barn.quotation.html.old -a ! -e papers/barn.quotation.html
expect "Polish" 0 "$wend" plan barn.yaml --language pl --out polish
holds "the day is in Polish" grep -q 'Dzień według własnych norm pracy' polish/barn.brief.html
expect "help" 0 "$wend" help day
expect "what the file holds" 0 "$wend" help set-out
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
