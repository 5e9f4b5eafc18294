#!/bin/bash
# compare.sh WEND: plans every route of routes/, and here an open one and a failing one, and compares each document, byte for byte, with what was recorded in
# tests/golden/NAME/ and checked by hand (NAME/arithmetic.md). Record anew with record.sh and read the difference.
set -u
wend=$(readlink -f "$1")
here=$(cd "$(dirname "$0")" && pwd)
. "$here/kept.sh"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
bad=0 count=0
wrong() { bad=1; echo "$*"; }
# What a reader of a paper sees, but for the drawing, where a unit or a sign stands as only files and a keyboard have it.
plain_signs() { # FILE
    awk 'BEGIN { RS = "<" }
        /^(svg|style)/ { skip++ }
        /^\/(svg|style)/ { skip-- }
        { sub(/^[^>]*>/, "") }
        !skip && /[^A-Za-z](mm2|m3|degC|ohm|Mohm|A2 ?s|sqrt|pi)[^A-Za-z=]|[0-9)] [x-] [0-9(]|\^2|10\^6|K\.m/' "$1"
}
printf '<p>4 mm\302\262, 30 \302\260C, 2 x 3</p><svg>4 mm2</svg><p>R1-2</p>' >"$work/sample.html"
[ "$(plain_signs "$work/sample.html" | grep -c .)" = 1 ] || wrong "the eye for signs sees too much or too little in its own sample"
for route in "$here"/../../routes/*.yaml "$here"/*.yaml; do
    name=$(basename "$route" .yaml)
    made=$work/$name kept=$here/$name
    mkdir "$made"
    plan_route "$route" "$made"
    for paper in brief card parts design test; do
        grep -q "<article class=\"paper\" id=\"$paper\">" "$made/$name.pack.html" || wrong "the pack lacks $paper: $name"
    done
    # whatever is said before it, the row speaks of the far end
    tr -d '\n' <"$made/$name.design.html" | grep -qE '<dt>Far end</dt><dd>(The far end|How the far end)' ||
        wrong "the far end is not what the design sheet says of it: $name"
    plain=$(plain_signs "$made/$name.pack.html")
    [ -z "$plain" ] || wrong "signs as they are typed, on paper: $name: $plain"
    drop_html "$name" "$made"
    # by both lists: a document that is no longer written is missed, a new one is noticed
    for file in $( (cd "$made" && ls; cd "$kept" && ls | grep -vE '\.(md|sh)$') | sort -u); do
        [ -f "$kept/$file" ] || { wrong "not recorded: $name/$file"; continue; }
        [ -f "$made/$file" ] || { wrong "no longer written: $name/$file"; continue; }
        cmp -s "$kept/$file" "$made/$file" && continue
        wrong "differs: $name/$file"
        diff -u "$kept/$file" "$made/$file" | head -20
    done
    [ -f "$kept/arithmetic.md" ] || wrong "no arithmetic kept for $name"
    count=$((count + 1))
done
picture "$here/well-pump/well-pump.diagram.svg" | cmp - "$here/../../routes/well-pump.svg" || wrong "the picture in README.md is another"
grep -q '(routes/well-pump.svg)' "$here/../../README.md" || wrong "README.md shows no picture"
echo "$count routes compared"
[ "$count" -ge 4 ] && [ "$bad" = 0 ]
