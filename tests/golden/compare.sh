#!/bin/bash
# compare.sh WEND: plans every route of routes/ and holds each document, byte for byte, against what was recorded in
# tests/golden/NAME/ and checked by hand (NAME/arithmetic.md). Record anew with record.sh and read the difference.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
routes=$here/../../routes
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
bad=0 count=0
for route in "$routes"/*.yaml; do
    name=$(basename "$route" .yaml)
    rm -rf "$work/$name"
    mkdir "$work/$name"
    (cd "$routes" && "$wend" plan "$name.yaml" --out "$work/$name" >"$work/$name/stdout" 2>"$work/$name/stderr"
     echo $? >"$work/$name/exit")
    sed -i '/^written:/,$d' "$work/$name/stdout"
    # the pack repeats the other papers: one of them is enough
    [ "$name" = cider-barn ] || rm -f "$work/$name/$name.pack.html"
    for file in "$work/$name"/*; do
        if ! diff -u "$here/$name/$(basename "$file")" "$file" | head -20; then bad=1; fi
        cmp -s "$here/$name/$(basename "$file")" "$file" || { bad=1; echo "differs: $name/$(basename "$file")"; }
    done
    # whatever is said before it, the row speaks of the far end
    tr -d "\n" <"$work/$name/$name.design.html" | grep -qE '<dt>Far end</dt><dd>(The far end|How the far end)' ||
        { bad=1; echo "the far end is not what the design sheet says of it: $name"; }
    [ -f "$here/$name/arithmetic.md" ] || { bad=1; echo "no arithmetic kept for $name"; }
    count=$((count + 1))
done
echo "$count routes compared"
[ "$count" -ge 4 ] && [ "$bad" = 0 ]
