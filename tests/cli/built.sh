#!/bin/bash
# built.sh WEND: one job carried through as it is typed: surveyed, planned, ordered, changed on the day, laid, measured,
# and the papers that stay with it.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"
says() { # WHAT WORDS: on the screen, wherever its lines end
    holds "$1" grep -qF -- "$2" <(tr -s ' \n' ' ' <out)
}

sed '/^#/d; /as-laid:/,/photo:/d; /^readings:/,$d; /laid/d; /house-wall/d; /name: orchard/,$d' "$here/../golden/apiary.yaml" >apiary.yaml
cat >>apiary.yaml <<'Y'
  - {name: orchard, way: buried, length: 31 m, depth: 600 mm, under: lawn}
  - {name: house-wall, way: wall, fixed-to: brick, length: 2 m, rise: 1.2 m, sun: shaded}
Y
holds "the survey says nothing of what was built" test "$(grep -c 'as-laid\|readings' apiary.yaml)" = 0

expect "planned" 0 "$wend" plan apiary.yaml --out papers
holds "passes" grep -q '^Verdict    PASS' out
holds "no sheet of what was laid yet" test ! -e papers/apiary.as-laid.html
holds "nor of readings" test ! -e papers/apiary.readings.html
holds "nor in the pack" test "$(grep -c 'id="readings"\|id="as-laid"' papers/apiary.pack.html)" = 0
expect "ordered" 0 "$wend" order apiary.yaml --out order
holds "with its cable" grep -q '3-core 6 mm2' order/order.csv
expect "what if the orchard takes more" 0 "$wend" check apiary.yaml --set 'segments.orchard.length=34.5 m'
expect "or far more" 1 "$wend" check apiary.yaml --set 'segments.orchard.length=60 m'
expect "no readings yet" 0 "$wend" readings apiary.yaml
holds "is open, and says where they stand" grep -q '^Verdict    OPEN: There are no readings' out
expect "which --strict does not let through" 1 "$wend" readings apiary.yaml --strict

cp apiary.yaml surveyed.yaml
cp "$here/../golden/apiary.yaml" apiary.yaml
expect "what the day changed" 0 "$wend" diff surveyed.yaml apiary.yaml
holds "is the length" grep -q '^Lengths .*was ' out
expect "planned as laid" 0 "$wend" plan apiary.yaml --out papers
holds "which the summary says" grep -q '^Warning    planned as laid, not as surveyed: lane, orchard$' out
holds "with what was measured" grep -q '^Readings   PASS: ' out
holds "the plan has both lengths" grep -q 'surveyed-length="31 m"' papers/apiary.plan.xml
holds "and the laid one is designed for" grep -q 'name="orchard" way="buried" from-m="12.9" to-m="47.4"' papers/apiary.plan.xml
holds "the drawing marks it" grep -q '>as laid<' papers/apiary.diagram.svg
holds "the sheet for the next digger names what was found" grep -q 'an old land drain at 12 m' papers/apiary.as-laid.html
holds "and the depth" grep -q '550' papers/apiary.as-laid.html
holds "both are in the pack" test "$(grep -c '<article class="paper" id="\(readings\|as-laid\)"' papers/apiary.pack.html)" = 2
holds "and in its contents" test "$(grep -o '<a href="#\(readings\|as-laid\)"' papers/apiary.pack.html | wc -l)" = 2
holds "with one drawing for screens" test "$(grep -o 'id="diagram"' papers/apiary.pack.html | wc -l)" = 1
holds "the readings are no certificate" grep -q 'No certificate' papers/apiary.readings.html
expect "the set belongs together" 0 "$wend" check apiary.yaml --papers papers
cp apiary.yaml kept.yaml
for said in 's/C. Marl/C. Mart/' 's/tester no. 4/tester no. 5/' 's/an old land drain/an old drain/' 's/550 mm/551 mm/'; do
    sed "$said" kept.yaml >apiary.yaml
    holds "$said changes the file" sh -c '! cmp -s kept.yaml apiary.yaml'
    expect "the set is of another after $said" 1 "$wend" check apiary.yaml --papers papers
done
{ echo '# a remark'; sed 's/C. Marl/"C. Marl"/' kept.yaml; } >apiary.yaml
expect "remarks and quotes say nothing" 0 "$wend" check apiary.yaml --papers papers
sed 's/length: 4.5 m/length: 4.50 m/' kept.yaml >apiary.yaml
holds "an amount gets zeros" sh -c '! cmp -s kept.yaml apiary.yaml'
expect "which say nothing" 0 "$wend" check apiary.yaml --papers papers
for said in 's/length: 4.5 m/length: 4.05 m/' 's/C. Marl/C. Marl 1.10/'; do
    sed "$said" kept.yaml >apiary.yaml
    expect "but $said is of another" 1 "$wend" check apiary.yaml --papers papers
done
"$wend" plan apiary.yaml --out named >/dev/null 2>&1
sed 's/C. Marl/C. Marl 1.1/' kept.yaml >apiary.yaml
expect "as a name is with other zeros" 1 "$wend" check apiary.yaml --papers named
cp kept.yaml apiary.yaml
expect "in Polish" 0 "$wend" plan apiary.yaml --out po-polsku --language pl
holds "the sheet" grep -q 'Arkusz powykonawczy' po-polsku/apiary.as-laid.html
holds "the readings" grep -q '<title>Odczyty' po-polsku/apiary.readings.html
holds "but not the test sheet" grep -q '<title>Test sheet' po-polsku/apiary.test.html

expect "measured" 0 "$wend" readings apiary.yaml --strict
columns "measured"
holds "all fits" grep -q '^Verdict    PASS: every reading that is due was taken and fits the plan$' out
expect "a joint that is loose" 0 "$wend" readings apiary.yaml --set 'readings.honey-house.r1r2=0.44 ohm'
columns "a joint that is loose"
says "is named" 'a loose joint, gland or terminal adds about 0.13 ohm'
holds "and leaves it open" grep -q '^Verdict    OPEN' out
expect "a loop over its limit" 1 "$wend" readings apiary.yaml --set 'readings.honey-house.zs=1.2 ohm'
holds "fails" grep -q '^  Zs, far end .*BEYOND LIMIT$' out
expect "one that the meter may have over it" 0 "$wend" readings apiary.yaml --set 'readings.honey-house.zs=1.07 ohm' --csv
holds "does not pass" grep -q '^honey-house,zs,ohm,1.07,[0-9.]*,[0-9.]*,1.09,open,' out
expect "insulation under 1 Mohm" 1 "$wend" readings apiary.yaml --set 'readings.honey-house.insulation=0.8 Mohm' --format json
holds "as JSON" grep -q '"verdict":	"beyond-limit"' out
holds "with what was set" grep -q '^	"set":	\["readings.honey-house.insulation=0.8 Mohm"\],$' out
expect "nothing set" 0 "$wend" readings apiary.yaml --format json
holds "says nothing of it" sh -c "! grep -q '\"set\"' out"
expect "a plan that fails as laid" 1 "$wend" readings apiary.yaml --set 'runs.honey-house.load.current=50 A'
says "whatever was measured" 'the plan itself fails'
sed 's/^segments:/  bond: {kind: earth, cable: {type: BS6004-single, cores: 1, size: 10 mm2}}\n&/' apiary.yaml >bonded.yaml
expect "an earth run beside" 0 "$wend" readings bonded.yaml
says "is said to share the path" 'The earth run bond goes the same way: joined at both ends it shares the path, and R2, R1 + R2 and Zs read lower'
expect "the job without one" 0 "$wend" readings apiary.yaml
holds "says nothing of it" sh -c "! grep -q 'earth run' out"
sed '/polarity/d' apiary.yaml >less.yaml
expect "a reading that was not taken" 1 "$wend" readings less.yaml --strict
holds "is missed" grep -q '^  Polarity .*not taken$' out
expect "what the survey's own length was set to stays" 0 "$wend" check apiary.yaml --set 'segments.orchard.length=30 m'
holds "and is told" grep -q 'planned as laid, not as surveyed: lane, orchard' err
sed '/^readings:/,$d' apiary.yaml >bare.yaml
cp bare.yaml apiary.yaml
expect "without the readings again" 0 "$wend" plan apiary.yaml --out papers
holds "their paper is set aside" test -e papers/apiary.readings.html.old -a ! -e papers/apiary.readings.html

echo "passed $passed, failed $failed"
[ "$failed" = 0 ]
