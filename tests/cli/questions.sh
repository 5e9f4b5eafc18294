#!/bin/bash
# questions.sh WEND: options and explain as they are typed: exit statuses, spellings, what is told and where.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
barn=$here/../../routes/cider-barn.yaml
shed=$here/../../routes/joinery-shed.yaml
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"
sed 's/size: choose/size: 6 mm2/' "$barn" >fails.yaml
sed 's/way: fence/way: fens/' "$barn" >wrong.yaml

expect "options" 0 "$wend" options "$barn"
columns "options"
holds "the chosen size is marked" grep -q '^>   10 ' out
holds "nothing is said on standard error" test ! -s err
expect "options of a run" 0 "$wend" options "$shed" feeder
columns "options of a run"
expect "options of a failing plan" 1 "$wend" options fails.yaml
holds "the given size is marked" grep -q '^>    6 ' out
expect "options of a wrong file" 2 "$wend" options wrong.yaml
holds "its fault is at its place" grep -q '^wrong.yaml:[0-9]*:[0-9]*: error: ' err
holds "nothing on standard output" test ! -s out
expect "options of no file" 3 "$wend" options nosuch.yaml
expect "options without file" 2 "$wend" options
expect "options with a word too many" 2 "$wend" options "$barn" feeder more
expect "options of an unknown run" 2 "$wend" options "$barn" feder
holds "the nearest run is named" grep -q 'did you mean "feeder"' err
expect "options of a data run" 2 "$wend" options "$shed" office-link
holds "its kind is named" grep -q 'of kind data' err
for spelling in "--growth|25|%" "--growth|25 %" "--growth|25%" "--growth=25%" "--growth=25 %" "--growth=25|%"; do
    IFS='|' read -ra words <<<"$spelling"
    expect "growth as $spelling" 0 "$wend" options "${words[@]}" "$barn" feeder
    cp out "growth-${#words[@]}-${#spelling}"
    holds "growth as $spelling is answered" grep -q 'With every load 25 % larger' out
done
holds "all spellings say the same" test "$(cat growth-* | md5sum)" = "$(for f in growth-*; do cat growth-1-12; done | md5sum)"
expect "growth with a fraction" 0 "$wend" options "$barn" --growth 12.5%
for wrong in 25 x% -5% 1001% 1e1% "" %; do
    expect "growth of '$wrong'" 2 "$wend" options "$barn" --growth "$wrong"
    holds "growth of '$wrong' is told how" grep -q -- '--growth 25 %' err
done
expect "growth without value" 2 "$wend" options "$barn" --growth
expect "growth is for options" 2 "$wend" explain "$barn" drop --growth 5%

for check in load capacity drop terminals disconnection protective-conductor live-conductors breaking-capacity electrode bonding \
    device-for-load starting capacity:loft drop:orchard; do
    expect "explain $check" 0 "$wend" explain "$barn" "$check"
    columns "explain $check"
    holds "explain $check says something" test "$(wc -l <out)" -ge 4
done
expect "plan with a figure that is not held" 0 "$wend" plan "$here/../found/no-figure-on-one-segment.yaml" --out not-held
tr -s ' \n' ' ' <out >line
holds "what is not known may be less" grep -q 'the device is rated 20 A; what others carry is not known' line
holds "and leaves nothing to spare" test -z "$(grep 'A to spare' line)"
expect "explain of a run" 0 "$wend" explain "$shed" drop feeder
holds "three lines" grep -q 'line that drops most' out
expect "explain of a failing plan" 1 "$wend" explain fails.yaml drop
holds "how much too much" grep -q 'too much' out
expect "explain of a wrong file" 2 "$wend" explain wrong.yaml drop
expect "explain without check" 2 "$wend" explain "$barn"
expect "explain without file" 2 "$wend" explain
expect "explain with a word too many" 2 "$wend" explain "$barn" drop feeder more
expect "explain an unknown check" 2 "$wend" explain "$barn" drip
holds "the nearest check is named" grep -q 'did you mean "drop"' err
holds "the checks are listed" grep -q 'breaking-capacity' err
holds "nothing on standard output" test ! -s out
expect "explain an unknown stretch" 2 "$wend" explain "$barn" drop:orchad
holds "the nearest stretch is named" grep -q 'did you mean "orchard"' err
holds "the stretches are listed" grep -q 'press-room' err
expect "explain a check by stretches that is not" 2 "$wend" explain "$barn" load:loft
expect "an escape sequence is not passed on" 2 "$wend" explain "$barn" "$(printf 'x\033[31m')"
holds "no escape sequence on standard error" sh -c '! grep -q "$(printf "\033")" err'
expect "standard input" 0 sh -c "'$wend' explain - drop <'$barn'"
expect "standard output that is full" 3 sh -c "'$wend' options '$barn' >/dev/full"
expect "help on options" 0 "$wend" help options
holds "help shows growth" grep -q -- '--growth' out
expect "help on explain" 0 "$wend" explain --help
for command in "" plan check options explain watch order manual tables table cable templates form new day decides readings \
    help no-figure; do
    expect "help $command" 0 "$wend" help $command
    columns "help $command"
done
for word in safe compliant; do
    holds "never says $word" sh -c "! { '$wend' options '$barn' --growth 25%; '$wend' explain '$barn' capacity; } | grep -iw $word"
done
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
