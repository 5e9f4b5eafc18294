#!/bin/bash
# whatif.sh WEND: what is asked around a plan, as it is typed: --set, decides; exit statuses, what is told and where.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
barn=$here/../../routes/cider-barn.yaml
well=$here/../../routes/well-pump.yaml
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"

expect "decides" 0 "$wend" decides "$well"
columns "decides"
holds "what decides is named by its key" grep -q '^-  segments.tractor-track.duct.laid; were it existing: 2 lines of the order' out
readarray -t sets < <(sed -n "s/^   --set '\{0,1\}\([^']*\)'\{0,1\}\$/\1/p" out)
holds "and by what sets it" test "${sets[*]}" = segments.tractor-track.duct.laid=existing
for command in check options decides reach; do
    expect "which $command takes" 0 "$wend" $command "$well" --set "${sets[0]}"
done
expect "as plan does" 0 "$wend" plan "$well" --set "${sets[0]}" --out set
"$wend" decides "$well" >out
holds "the verdict comes last" grep -q '^Verdict' <(tail -n 1 out)
expect "decides of two files" 2 "$wend" decides "$well" "$barn"

sed '0,/duct: {size: 63 mm/s//duct: {size: 32 mm/' "$barn" >narrow.yaml
expect "options in a narrow duct" 1 "$wend" options narrow.yaml
columns "options in a narrow duct"
holds "name the duct with which the size does not fail" grep -q '^    feeder with 10 mm2 fails as surveyed by its duct on path alone: with a duct$' out
sed '0,/duct: {size: 63 mm/s//duct: {size: 40 mm/' "$barn" >wide.yaml
expect "and in that duct it does not" 0 "$wend" check wide.yaml --set 'runs.feeder.cable.size=10 mm2'
expect "options with prices" 0 "$wend" options "$well"
columns "options with prices"
holds "say what the order comes to" grep -q '^What the whole order comes to with each size, by the price list$' out
holds "for each size whose cable has a price" grep -q '^    pump-feed, 2.5 mm2: EUR 346.10 for 3 of 22 lines$' out
holds "and what the least duct would be" grep -q 'a duct of 32 mm is the least with' out
cat >beside.yaml <<'ROUTE'
wend: 1
job: {title: Shed}
supply: {system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1 kA}
runs:
  feeder:
    load: {current: 26 A}
    cable: {type: BS5467, cores: 3}
  earth: {kind: earth, cable: {type: BS6004-single, size: 10 mm2}}
segments:
  - {name: gable, way: wall, length: 60 m}
ROUTE
sed 's/cores: 3}/cores: 3, cpc: separate}/' beside.yaml >separate.yaml
expect "options of a run with an earth run beside it" 0 "$wend" options beside.yaml
sed -n '/separate, were it that instead/,/300 /p' out | sed 1d >instead
expect "and of one that has it for its own" 0 "$wend" options separate.yaml
sed -n '/separate, as surveyed/,/300 /p' out | sed 1d >surveyed
holds "have the same figures" sh -c 'test -s instead && cmp -s instead surveyed'
expect "a smaller cable" 1 "$wend" check "$barn" --set 'runs.feeder.cable.size=6 mm2'
holds "the line names the change" grep -q -- '--set runs.feeder.cable.size=6 mm2: FAIL: drop fails on feeder' out
holds "and a warning says whose plan it is not" grep -q 'NOT the plan of the file' err
expect "the file is as it was" 0 "$wend" check "$barn"
expect "papers of a changed route" 0 "$wend" plan "$well" --set 'conditions.air=35 degC' --out papers
holds "have a name of their own" test -f papers/well-pump.changed.brief.html
holds "and not the file's" test ! -e papers/well-pump.brief.html
expect "a misspelt name" 2 "$wend" plan "$barn" --set 'segments.pth.length=6 m' --out none
holds "is told at its place" grep -q '^--set:10: error: nothing is named "pth" there; did you mean "path"?' err
holds "under the word" grep -q '^      |          ^~~$' err
holds "writes nothing" test ! -e none
cat >listed.yaml <<'ROUTE'
wend: 1
job: {title: Shed}
supply: {system: TN-S, loop-impedance: 0.35 ohm, fault-current: 1 kA}
runs:
  feeder:
    load:
      - {current: 26 A}
    device: {kind: MCB, rating: 32 A}
    cable: {type: BS5467, cores: 3}
segments:
  - {name: gable, way: wall, length: 6 m}
ROUTE
expect "the only load of a list need not be numbered" 1 "$wend" check listed.yaml --set 'runs.feeder.load.current=33 A'
holds "and is the one that is set" grep -q 'FAIL: load fails on feeder' out
expect "and may be" 1 "$wend" check listed.yaml --set 'runs.feeder.load.1.current=33 A'
holds "and is the same" grep -q 'FAIL: load fails on feeder' out
expect "a second is not there" 2 "$wend" check listed.yaml --set 'runs.feeder.load.2.current=33 A'
expect "--set without a value" 2 "$wend" check "$barn" --set
expect "--set is not for orders" 2 "$wend" order "$barn" --set 'conditions.air=35 degC'
expect "changed JSON" 0 "$wend" plan "$well" --format json --set 'conditions.air=35 degC'
holds "says so" grep -q 'NOT the plan of the file' out

sed 's/size: choose/size: 16 mm2/' "$barn" >thick.yaml
sed 's/size: choose/size: 6 mm2/' "$barn" >thin.yaml
expect "diff" 0 "$wend" diff "$barn" thick.yaml
columns "diff"
holds "names both cables" grep -q '^Cable      3-core 16 mm2 BS5467, was 3-core 10 mm2 BS5467; feeder$' out
holds "says what to fetch" grep -q '^Fetch      76 m: 3-core 16 mm2' out
holds "says what to bring back" grep -q '^Bring back 76 m: 3-core 10 mm2' out
expect "diff to one that fails" 1 "$wend" diff "$barn" thin.yaml
holds "names the check" grep -q '^Check      FAIL, was PASS; feeder: drop$' out
expect "diff as CSV" 1 "$wend" diff "$barn" thin.yaml --csv
holds "with the check" grep -q '^check,feeder: drop,PASS,FAIL' out
expect "diff as JSON" 0 "$wend" diff "$barn" "$barn" --format json
holds "of the same" test "$(grep -c '"what"' out)" = 1
expect "diff as both" 2 "$wend" diff "$barn" "$barn" --format json --csv
expect "diff of one file" 2 "$wend" diff "$barn"
echo x >wrong.yaml
expect "diff with a wrong file" 2 "$wend" diff "$barn" wrong.yaml

# a run that one of the two alone has: its cable, its length, what of it is fetched or comes back
cp "$here/../../routes/lambing-shed.yaml" both.yaml
sed '/^  camera:/,/^segments:/{/^segments:/!d}' both.yaml >feeder.yaml
expect "a run more" 0 "$wend" diff feeder.yaml both.yaml
holds "its cable is new" grep -qx 'Cable      EN50288, new; camera' out
holds "its length too" grep -qx 'Lengths    17 m, new; camera' out
holds "it is fetched" grep -qx 'Fetch      17 m: data cable, 7.0 mm overall' out
expect "a run less" 0 "$wend" diff both.yaml feeder.yaml
holds "its cable is none" grep -qx 'Cable      none, was EN50288; camera' out
holds "its length too" grep -qx 'Lengths    none, was 17 m; camera' out
holds "nor is a check of it" grep -q '^Check      none, was n/a; camera: bend:dairy-wall$' out
holds "it comes back" grep -qx 'Bring back 17 m: data cable, 7.0 mm overall' out
expect "as CSV" 0 "$wend" diff both.yaml feeder.yaml --csv
holds "the old alone" grep -qx $'order-length,camera,17 m,\r*' out
sed 's/title: Lambing shed supply/title: Ram pen supply/' both.yaml >other.yaml
expect "another job" 0 "$wend" diff both.yaml other.yaml
holds "that it is one is said" grep -q 'the other is of a job of another title: Lambing shed supply' out

expect "reach" 0 "$wend" reach "$barn"
columns "reach"
holds "names run and check" grep -q '^  feeder  *+9.7 A .*Load against device$' out
expect "reach of a changed route" 0 "$wend" reach "$barn" --set 'runs.feeder.cable.size=16 mm2'
holds "says so first" grep -q '^CHANGED  runs.feeder.cable.size=16 mm2' <(head -n 1 out)
expect "reach of a plan that fails" 1 "$wend" reach thin.yaml
holds "promises nothing" test "$(grep -c '+' out)" = 0

echo "passed $passed, failed $failed"
[ "$failed" = 0 ]
