#!/bin/bash
# new.sh WEND: how a route begins: starters, questions in a terminal (through a pipe here), a sheet for a pencil.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"
asked() { # FILE, answers on standard input
    "$wend" new --ask "$1" >said 2>err
}

# Each starter that help names passes as it stands.
names=$("$wend" help new | sed -n 's/^  \([a-z-]*\)  .*/\1/p' | grep -v '^-')
holds "there are six" test "$(wc -w <<<"$names")" = 6
for name in $names; do
    expect "new $name" 0 "$wend" new "$name" "$name.yaml"
    expect "check $name" 0 "$wend" check --strict "$name.yaml"
    holds "$name passes" grep -q ': PASS: every check that applies was made and passes$' out
    holds "$name says nothing else" test ! -s err
    holds "$name is commented" grep -q '# ' "$name.yaml"
done
expect "without a starter" 0 "$wend" new plain.yaml
holds "it is the first" cmp -s plain.yaml outbuilding.yaml
echo mine >mine.yaml
expect "a file that is there" 3 "$wend" new mine.yaml
holds "it stays" grep -qx mine mine.yaml
holds "it is said" grep -q 'mine.yaml is there already and stays as it is' err
expect "a link that leads nowhere" 3 sh -c "ln -s nowhere link.yaml; '$wend' new link.yaml"
holds "nothing is made through it" test ! -e nowhere
expect "a starter misspelt" 2 "$wend" new islnd b.yaml
holds "the nearest is named" grep -q 'did you mean island?' err
expect "a starter that is none" 2 "$wend" new lighthouse b.yaml
holds "all are named" grep -q 'there are outbuilding, island, workshop' err
holds "nothing is written" test ! -e b.yaml
expect "a starter for a file" 2 "$wend" new island
expect "a folder that is not there" 3 "$wend" new nowhere/b.yaml
expect "too few words" 2 "$wend" new

# Questions: what the engine refuses is asked again, an empty line takes what stands in brackets.
cat >answers <<'END'
TNS
TN-S

0.35 ohm
1.2
1.2 kA

metal

4.6 kW
1


MCB
6 kA
BS5467
3
wall
house-wall
6 m
9 m
2.2 m
2
brick


duct

14 m

2
63 mm

600 mm
path
kerb to the right: mind 'it'
end

plastic

export
no
none
Shed at the bottom

Behind the house
dwelling

2026-05-14
END
asked whole.yaml <answers
holds "asked" test "$?" = 0
holds "a slip is told at once" grep -q 'TNS" is not known; did you mean "TN-S"' said
holds "a unit that lacks too" grep -q '1.2 has no unit; write 1.2 kA' said
holds "a rise longer than its length" grep -q '! .*rise' said
holds "so far it is no PASS" grep -q 'so far no check fails; the far end is not reached$' said
holds "and never says so before the end" sh -c "! sed '/piece 3/q' said | grep -q PASS"
expect "the file is a whole route" 0 "$wend" check whole.yaml
holds "it passes" grep -q 'whole.yaml: PASS: ' out
holds "what was typed stands in it" grep -q "    depth: 600 mm" whole.yaml
holds "a piece without a name has one" grep -q '    name: duct-2$' whole.yaml
holds "a text with a quote is one" grep -q "notes: 'kerb to the right: mind ''it'''" whole.yaml
holds "nothing is open any more" sh -c '! grep -q complete whole.yaml'

# A motor is asked what it draws while starting, without which its plan is open.
awk 'before == "1" && $0 == "" && !motor { print "motor"; print "30 A"; motor = 1; before = $0; next } { print; before = $0 }' answers | asked motor.yaml
holds "a motor's start is asked" grep -q 'Motor: what does it draw starting?' said
holds "what it draws stands in the file" grep -q '    start-current: 30 A$' motor.yaml
holds "of no other load is it asked" sh -c "! grep -q start-current whole.yaml"

# Stopped after each answer and resumed: the same file.
wrong=0
lines=$(wc -l <answers)
step=$(($lines > 20 ? 4 : 1))
for at in $(seq 1 $step $((lines - 1))); do
    rm -f part.yaml
    head -n "$at" answers | asked part.yaml || wrong=$((wrong + 1))
    if [ -e part.yaml ]; then
        "$wend" check part.yaml 2>/dev/null | grep -q PASS && wrong=$((wrong + 1))
        grep -q '^complete: no' part.yaml || wrong=$((wrong + 1))
    fi
    tail -n +"$((at + 1))" answers | asked part.yaml || wrong=$((wrong + 1))
    cmp -s part.yaml whole.yaml || { wrong=$((wrong + 1)); echo "resumed after line $at: another file"; diff part.yaml whole.yaml | head -5; }
done
holds "stopped anywhere it goes on to the same file" test "$wrong" = 0

# What may be left open in one question and not in all of them is told at the end; the next time that alone is asked.
sed 's/^4.6 kW$/\n/' answers >noload
asked open.yaml <noload
holds "no load in either way is none" test "$?" = 2
holds "it is told" grep -q 'a load needs current or power \[load-neither\]$' said
holds "and how to go on" grep -qx 'kept in open.yaml; wend new --ask open.yaml asks again for what is still needed' said
holds "no plan of it passes" grep -q '^complete: no' open.yaml
printf '4.6 kW\n\n\n' | asked open.yaml
holds "with it the survey is whole" test "$?" = 0
holds "nothing was asked but that" test "$(grep -c 'Which earthing system\|Which cable' said)" = 0
expect "the file is a whole route too" 0 "$wend" check open.yaml
holds "with its load" grep -q '      power: 4.6 kW$' open.yaml

printf '\nTT\nstop\n' | asked must.yaml
holds "what must be there is asked until it is" grep -q '! this one must be there; ? says more' said
holds "then taken" grep -q '  system: TT$' must.yaml
printf 'TN-S \t\n%01000d\n1\nstop\n' 0 | asked blanks.yaml
holds "blanks around an answer are none of it" grep -q '  system: TN-S$' blanks.yaml
holds "what is too long is one wrong answer, not three" test "$(grep -c '  ! ' said)" = 1
holds "the next is the next" grep -q '  phases: 1$' blanks.yaml

printf '%s\n' TN-S back TT stop | asked back.yaml
holds "back asks again" grep -q '  system: TT$' back.yaml
holds "the answer before is gone" test "$(grep -c system back.yaml)" = 1
printf '%s\n' '?' stop | asked help.yaml
holds "? says more" grep -q 'the earthing system; it must be there' said
expect "a file of somebody else's" 3 "$wend" new --ask mine.yaml
holds "it stays" grep -qx mine mine.yaml
sed -i 's/^  system: .*/  system: TT\n  weather: fine/' back.yaml
expect "a line that no question writes" 2 "$wend" new --ask back.yaml
holds "it is kept" grep -q 'weather: fine' back.yaml
holds "it is named" grep -q 'line 6 of back.yaml is none that the questions write' err
expect "a starter and questions" 2 "$wend" new --ask island c.yaml
expect "a file that cannot be read" 3 "$wend" new --ask .
holds "it is said, and nothing asked" sh -c "grep -q '^wend: error: . could not be read: ' err && ! grep -q '^> ' out"

# A run that died before what it kept was in place: the next one goes on from that, not from nothing.
head -n 5 answers | asked died.yaml
cp died.yaml kept.yaml
mkdir -p .died.yaml.wend/old .died.yaml.wend/placing
mv died.yaml .died.yaml.wend/placing/
printf 'stop\n' | asked died.yaml
holds "what was kept is there again" cmp -s died.yaml kept.yaml
tail -n +6 answers | asked died.yaml
holds "and goes on to the same file" cmp -s died.yaml whole.yaml

# More pieces than the questions take: the way is not at its end, and no plan of it may pass.
awk '/^segments:/ { all = 1; next } !all { print; next } /^  - / { last = "" } { last = last $0 "\n" }
     END { print "segments:"; for (i = 0; i < 200; i++) { one = last; sub(/name: duct-2/, "name: duct-" i, one); sub(/# the far end is reached\n/, "", one); printf "%s", one } }' \
    whole.yaml | sed 's/^wend: 1$/&\ncomplete: no/' >long.yaml
expect "the last piece that the questions take" 3 "$wend" new --ask long.yaml
holds "nothing is said again of pieces that were answered before" test "$(grep -c 'so far' out)" = 0
holds "it is said" grep -q '^wend: error: the questions end at 200 pieces; go on with long.yaml in an editor' err
holds "the file says that the survey goes on" grep -q '^complete: no' long.yaml

# The sheet has what is asked, in its order.
expect "form" 0 "$wend" form --paper
holds "one HTML page" grep -q '^<!DOCTYPE html>' out
holds "that runs and fetches nothing" grep -q "default-src 'none'" out
holds "supply before load before job" sh -c "grep -o '<h2>[1-5] ' out | tr -d '\n' | grep -q '<h2>1 <h2>2 <h2>4 <h2>5 <h2>3 '"
holds "eight columns a piece" test "$(grep -o '<td></td>' out | wc -l)" = $((8 * $(grep -c '<th scope="row">' out)))
holds "depth is asked in the ground alone" grep -q 'depth, mm<br><small>at duct, buried' out
expect "form for nothing" 2 "$wend" form
expect "two forms at once" 2 "$wend" form --paper --out page.html

# The page is one file, with the language of this very program and nothing from elsewhere.
expect "a page" 0 "$wend" form --out page.html
holds "which is named" grep -q '^written: ./page.html' out
holds "one HTML page" grep -q '^<!DOCTYPE html>' page.html
holds "no place is left open" sh -c '! grep -q "/\*WEND-" page.html'
holds "it holds the language" grep -q '"tables":\[{"title":"(top)"\|"tables":\[{"title":' page.html
holds "its scripts end where they should" sh -c 'test "$(grep -o "</script>" page.html | wc -l)" = "$(grep -o "</script>" "$1" | wc -l)"' - "$here/../../templates/survey.html"
holds "it fetches nothing" grep -q "default-src 'none'" page.html
holds "it asks for nothing beside it" sh -c '! grep -q "rel=.manifest\|serviceWorker?.register" page.html'
expect "again" 0 "$wend" form --out page.html
echo mine >other.html
expect "a file that is not ours" 3 "$wend" form --out other.html
holds "stays" grep -qx mine other.html
expect "no name" 2 "$wend" form --out sub/
expect "for a host" 0 "$wend" form --host site
holds "four files" test "$(ls site | tr '\n' ' ')" = 'index.html survey-icon.svg survey-worker.js survey.webmanifest '
holds "bound to each other" grep -q "rel=.manifest. href=.survey.webmanifest." site/index.html
holds "the worker is registered" grep -q "serviceWorker?.register('survey-worker.js')" site/index.html
holds "the worker knows the page by a mark" grep -qE "^const KEPT = 'wend-survey-[0-9a-f]{16}'" site/survey-worker.js

echo "$passed passed, $failed failed"
[ "$failed" = 0 ] && [ "$passed" -gt 50 ]
