#!/bin/bash
# claims.sh record BUILD   runs the tests that claims.tsv names in BUILD and writes what they measured into DEVELOPERS.md,
#                          with what mutants.sh, coverage.sh and fuzz.sh measured where they were run since
# claims.sh check BUILD    DEVELOPERS.md has every row of claims.tsv and no other, and every test that it names is there;
#                          figures are those of the day they were recorded and are not compared
set -eu
cd "$(dirname "$0")/.."
[ $# = 2 ] || { sed -n '2,5s/^# //p' "$0"; exit 2; }
build=$2
page=DEVELOPERS.md
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rows() { grep -v '^#' tests/claims.tsv; }
# the promises and tests of the page, without their figures
told() { awk -F' *[|] *' '/^<!-- claims -->/ { on = 1; next } /^<!-- end of claims -->/ { on = 0 } on && NF >= 5 { print $2 "\t" $3 }' "$page" | sed '1,2d; s/`//g'; }
other() { # what no ctest measures: promise, script, where its last line was kept
    printf '%s\t%s\t%s\n' \
        "A mistake at a line that bears on safety is seen by a test" "tests/mutants.sh aimed" build/mutants/aimed.share \
        "A mistake drawn by lot in design, takeoff, tables, read or words is seen by a test" "tests/mutants.sh" build/mutants/lot.share \
        "The quick tests run nearly all of the code" "tests/coverage.sh" build/coverage/share \
        "Fuzzing with both sanitizers found nothing that is still there" "tests/fuzz.sh" build/fuzz/share
}
if [ "$1" = check ]; then
    { rows | cut -f1,2; other | cut -f1,2; } >"$work/due"
    told >"$work/told"
    diff "$work/due" "$work/told" || { echo "DEVELOPERS.md is stale: bash tests/claims.sh record BUILD"; exit 1; }
    ctest --test-dir "$build" -N | sed -n 's/^ *Test *#[0-9]*: //p' >"$work/tests"
    rows | cut -f2 | while read -r test; do
        grep -qxF "$test" "$work/tests" || { echo "there is no test $test"; exit 1; }
    done
    other | cut -f2 | while read -r script rest; do [ -f "$script" ] || { echo "there is no $script"; exit 1; }; done
    echo "$(wc -l <"$work/due") promises, each with its test"
    exit
fi
names=$(rows | cut -f2 | paste -sd'|')
ctest --test-dir "$build" -R "^($names)\$" --output-junit "$work/run.xml" --test-output-size-passed 10000000 >"$work/log" || { tail -20 "$work/log"; exit 1; }
printed() { awk -v name="$1" '/<testcase / { on = index($0, "name=\"" name "\"") > 0 } on' "$work/run.xml"; }
{
    printf '| promised | by | measured |\n| --- | --- | --- |\n'
    rows | while IFS=$'\t' read -r promise test figure unit; do
        number=$(printed "$test" | grep -oE "$figure" | grep -oE '[0-9]+' | awk '{ sum += $1 } END { print sum + 0 }')
        [ "$number" -gt 0 ] || { echo "$test printed no figure" >&2; exit 1; }
        printf '| %s | `%s` | %s %s |\n' "$promise" "$test" "$number" "$unit"
    done
    other | while IFS=$'\t' read -r promise script kept; do
        figure=$(cat "$kept" 2>/dev/null) || figure=$(grep -F "| $promise |" "$page" | awk -F' *[|] *' '{ print $4 }')
        printf '| %s | `%s` | %s |\n' "$promise" "$script" "${figure:-not measured yet}"
    done
} >"$work/table"
awk -v table="$work/table" '/^<!-- end of claims -->/ { skip = 0 } !skip { print }
    /^<!-- claims -->/ { skip = 1; while ((getline line < table) > 0) print line }' "$page" >"$work/page"
cp "$work/page" "$page"
