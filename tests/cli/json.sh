#!/bin/bash
# json.sh WEND: --format json on the command line: what is printed, that nothing is written, and the exit status.
set -u
wend=$(readlink -f "$1")
root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
passed=0 failed=0
holds() { # WHAT COMMAND...
    local what=$1
    shift
    if "$@" >said 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what"; head -20 said; fi
}
ends() { # STATUS ARGUMENTS...: the status; output in out, messages in told
    local status=$1
    shift
    "$wend" "$@" >out 2>told
    local is=$?
    [ $is = "$status" ] || { echo "$is, not $status"; return 1; }
}
cp "$root/routes/well-pump.yaml" "$root/routes/well-pump.prices.csv" "$root/routes/cider-barn.yaml" .
printf 'wend: 1\njob: {titel: Shed}\n' >wrong.yaml
before=$(ls)

holds "a plan is printed" ends 0 plan well-pump.yaml --format json
holds "one object" test "$(head -c 1 out)$(tail -c 2 out)" = '{}'
holds "its numbers are the XML's" sh -c '"$1" plan well-pump.yaml --out xml >/dev/null 2>&1
    number=$(grep -o "capacity-A=\"[0-9.]*\"" xml/well-pump.plan.xml | head -1 | grep -o "[0-9.]*"); [ -n "$number" ] &&
    grep -qF "\"capacity-A\":	$number" out; status=$?; rm -r xml; exit $status' - "$wend"
holds "its prices are strings" grep -q '"price":	"[0-9.]*"' out
holds "the same again" sh -c '"$1" plan well-pump.yaml --format=json 2>/dev/null | cmp - out' - "$wend"
holds "from standard input" sh -c '"$1" plan - --format json <cider-barn.yaml 2>/dev/null | grep -q "\"route\":	\"route\""' - "$wend"
holds "of a wrong file nothing" ends 2 plan wrong.yaml --format json
holds "not a byte" test ! -s out
holds "but what is wrong" grep -q '\[key-misspelt\]' told

holds "checks are printed" ends 3 check cider-barn.yaml wrong.yaml gone.yaml --format json
holds "a list" test "$(head -c 1 out)$(tail -c 2 out)" = '[]'
holds "of three" test "$(grep -c '^	"file":' out)" = 3
holds "with their statuses" test "$(grep '^	"status":' out | tr -dc 0-9)" = 023
holds "a verdict where there is a plan" test "$(grep -c '^	"verdict":' out)" = 1
holds "the place of a fault" grep -q '"column":	7' out
holds "and what to write" grep -q '"suggestion":	"title"' out
holds "an order is printed" ends 0 order well-pump.yaml cider-barn.yaml --format json
holds "with both jobs" test "$(grep -c '"name":	"\(well-pump\|cider-barn\)"' out)" = 2
holds "of a wrong job nothing" ends 2 order well-pump.yaml wrong.yaml --format json
holds "no order" test ! -s out
if command -v python3 >/dev/null; then
    for words in "plan well-pump.yaml" "check cider-barn.yaml wrong.yaml" "order well-pump.yaml cider-barn.yaml"; do
        # shellcheck disable=SC2086 # words they are
        "$wend" $words --format json >out 2>/dev/null
        holds "another program reads $words" python3 -m json.tool out
    done
fi
rm -f out told said
holds "nothing is written" test "$(ls | grep -vx said)" = "$before"
holds "no other form" ends 2 check cider-barn.yaml --format yaml
holds "which is told" grep -q -- '--format takes json, not yaml' told
holds "no form" ends 2 check cider-barn.yaml --format
holds "no folder with it" ends 2 plan cider-barn.yaml --format json --out there
holds "and none is made" test ! -e there
holds "questions have none" ends 2 options cider-barn.yaml --format json
echo "$passed passed, $failed failed"
[ "$failed" = 0 ] && [ "$passed" -gt 25 ]
