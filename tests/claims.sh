#!/bin/bash
# claims.sh record BUILD [TEST...]  runs the tests that claims.tsv names in BUILD, or those of them, keeps what they
#                          measured in tests/measured, and does as keep does
# claims.sh page           makes the page in DEVELOPERS.md of what tests/measured holds
# claims.sh keep           takes over what mutants.sh, coverage.sh and fuzz.sh measured, and makes the page
# claims.sh check BUILD    DEVELOPERS.md has every row of claims.tsv and no other, every figure is the one that a run left in
#                          tests/measured, and every test that it names is there
set -eu
cd "$(dirname "$0")/.."
case $#${1-} in [2-9]record | 2check | 1page | 1keep) ;; *) sed -n '2,8s/^# //p' "$0"; exit 2 ;; esac
build=${2-}
page=DEVELOPERS.md
kept=tests/measured # a row of tests.tsv for each test: its name and its figure; a line in a file of its own for each script
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rows() { grep -v '^#' tests/claims.tsv; }
other() { # what no ctest measures: promise, script, the file in tests/measured, where its last line was left
    printf '%s\t%s\t%s\t%s\n' \
        "A mistake at a line that bears on safety is seen by a test" "tests/mutants.sh aimed" mutants-aimed build/mutants/aimed.share \
        "A mistake drawn by lot in design, takeoff, tables, read or words is seen by a test" "tests/mutants.sh" mutants-lot build/mutants/lot.share \
        "The quick tests run nearly all of the code" "tests/coverage.sh" coverage build/coverage/share \
        "Fuzzing with both sanitizers found nothing that is still there" "tests/fuzz.sh" fuzz build/fuzz/share
}
table() { # the page, of what is kept; without a run it says so
    printf '| promised | by | measured |\n| --- | --- | --- |\n'
    rows | while IFS=$'\t' read -r promise test figure unit; do
        number=$(awk -F'\t' -v test="$test" '$1 == test { print $2 }' "$kept/tests.tsv" 2>/dev/null) || :
        printf '| %s | `%s` | %s |\n' "$promise" "$test" "${number:+$number $unit}"
    done | sed 's/|  |$/| not measured yet |/'
    other | while IFS=$'\t' read -r promise script name left; do
        figure=$(cat "$kept/$name" 2>/dev/null) || :
        printf '| %s | `%s` | %s |\n' "$promise" "$script" "${figure:-not measured yet}"
    done
}
take_over() {
    mkdir -p "$kept"
    other | while IFS=$'\t' read -r promise script name left; do [ ! -s "$left" ] || cp "$left" "$kept/$name"; done
}
write_page() {
    table >"$work/table"
    awk -v table="$work/table" '/^<!-- end of claims -->/ { skip = 0 } !skip { print }
        /^<!-- claims -->/ { skip = 1; while ((getline line < table) > 0) print line }' "$page" >"$work/page"
    cp "$work/page" "$page"
}
case $1 in
    page) write_page; exit ;;
    keep) take_over; write_page; exit ;;
    check)
        table >"$work/due"
        awk '/^<!-- end of claims -->/ { on = 0 } on { print } /^<!-- claims -->/ { on = 1 }' "$page" >"$work/told"
        diff "$work/due" "$work/told" || { echo "DEVELOPERS.md is stale: bash tests/claims.sh record BUILD, or page"; exit 1; }
        ctest --test-dir "$build" -N | sed -n 's/^ *Test *#[0-9]*: //p' >"$work/tests"
        rows | cut -f2 | while read -r test; do
            grep -qxF "$test" "$work/tests" || { echo "there is no test $test"; exit 1; }
        done
        other | cut -f2 | while read -r script rest; do [ -f "$script" ] || { echo "there is no $script"; exit 1; }; done
        echo "$(($(wc -l <"$work/due") - 2)) promises, each with its test, $(grep -c 'not measured yet' "$work/due" || :) not measured yet"
        exit
        ;;
esac
shift 2
names=$([ $# -gt 0 ] && printf '%s\n' "$@" || rows | cut -f2)
names=$(echo "$names" | paste -sd'|')
ctest --test-dir "$build" -R "^($names)\$" --output-junit "$work/run.xml" --test-output-size-passed 10000000 >"$work/log" || { tail -20 "$work/log"; exit 1; }
printed() { awk -v name="$1" '/<testcase / { on = index($0, "name=\"" name "\"") > 0 } on' "$work/run.xml"; }
mkdir -p "$kept"
rows | while IFS=$'\t' read -r promise test figure unit; do
    if ! echo "$test" | grep -qxE "$names"; then
        awk -F'\t' -v test="$test" '$1 == test' "$kept/tests.tsv" 2>/dev/null || :
        continue
    fi
    number=$(printed "$test" | grep -oE "$figure" | grep -oE '[0-9]+' | awk '{ sum += $1 } END { print sum + 0 }')
    [ "$number" -gt 0 ] || { echo "$test printed no figure" >&2; exit 1; }
    printf '%s\t%s\n' "$test" "$number"
done >"$work/tests.tsv"
cp "$work/tests.tsv" "$kept/tests.tsv"
take_over
write_page
