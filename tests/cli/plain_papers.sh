#!/bin/bash
# plain_papers.sh WEND: no paper of any route of routes/, or of an open or a failing one, shows a word of the program's own
# insides: the id of a check ("pull:track"), a key path with dots ("conditions.air"), or that something is "not due". Nor does
# a drawing, on its sheets or for a phone. And one pull is one figure on all of them.
set -u
wend=$(readlink -f "$1")
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
text() { perl -0pe 's/<style>.*?<\/style>//gs; s/<[^>]*>/ /g' "$1"; }
inside='not due|\b(bend|duct-fill|pull|separation|segregation|capacity|drop):[a-z]|\b(conditions|runs|segments|supply|earthing|parts|job|loads?|device|cable)\.[a-z][a-z-]*[a-z]'
# the net must hold what it is for, and let plain words through
for caught in 'pull:track' 'not due' '(conditions.air)' 'runs.feeder.load'; do
    echo "$caught" | grep -qE "$inside" || { echo "the net lets \"$caught\" through"; exit 1; }
done
echo 'Bend radius, gable: 250 mm. The cable. Parts of the job.' | grep -qE "$inside" && { echo "the net holds plain words"; exit 1; }
papers=0 bad=0
for route in "$here"/../../routes/*.yaml "$here"/../golden/*.yaml; do
    "$wend" plan "$route" --out "$work" >/dev/null 2>&1
    [ $? -le 1 ] || { echo "no plan of $route"; exit 1; }
done
# what fails in one segment, what is open in one, and a smaller size that fails in another
for route in "$here"/../found/{armour-in-conduit,diameter-not-held,duct-shared-with-unknown-cables,data-with-power-in-one-duct}.yaml; do
    "$wend" plan "$route" --out "$work" >/dev/null 2>&1
    [ $? -le 1 ] || { echo "no plan of $route"; exit 1; }
done
for paper in "$work"/*.html "$work"/*.svg; do
    papers=$((papers + 1))
    if text "$paper" | grep -nE "$inside" >"$work/found"; then
        bad=1
        echo "$(basename "$paper"): $(head -3 "$work/found")"
    fi
done
# a pull of 8.2 N is one figure wherever it stands: up to the next whole newton
for paper in diagram.svg brief.html design.html; do
    text "$work/cider-barn.$paper" | sed 's/\xc2\xa0/ /g' >"$work/forces"
    grep -qE '\b9 N\b' "$work/forces" || { echo "cider-barn.$paper does not have the pull of 9 N"; bad=1; }
    grep -nE '\b8(\.[0-9]{1,2})? N\b' "$work/forces" && { echo "cider-barn.$paper has another figure for it"; bad=1; }
done
echo "$papers papers and drawings read"
[ "$papers" -ge 60 ] && [ "$bad" = 0 ]
