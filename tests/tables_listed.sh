#!/bin/sh
# tables_listed.sh WEND: every file of published figures is in the list that `wend tables` prints, with the title that its
# own reference has. A file with a Source in its head holds figures; the others, which gather or search, are named here.
set -u
wend=$1
cd "$(dirname "$0")/../src/tables" || exit 1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$wend" tables >"$work/list" || exit 1
failed=0 held=0
for file in *.c; do
    case $file in
    capacity.c | voltdrop.c | rating_factors.c | device_ratings.c | device_trip.c | k_values.c) continue ;;
    lookup.c | tables_list.c | table_cells.c | edition.c | cable_kinds.c | cautions.c) continue ;;
    esac
    if ! sed -n '1,/\*\//p' "$file" | grep -qE 'Source: '; then
        echo "$file names no source, and is none of those that hold no figures"
        failed=1
    fi
    # the reference: strings that follow one another are one; the title is the second behind the standard
    title=$(tr '\n' ' ' <"$file" | grep -oE '\bref = \{("[^"]*"|[^}"])*\}' | head -1 |
        sed -E 's/" +"//g; s/\.(standard|edition) = "[^"]*",?//g' | grep -oE '"[^"]*"' | sed -n 2p | tr -d '"')
    if [ -z "$title" ]; then
        echo "$file has no reference"
        failed=1
    elif ! grep -qF "  $title  [" "$work/list"; then
        echo "$file: \"$title\" is not in wend tables"
        failed=1
    fi
    held=$((held + 1))
done
if [ "$held" -lt 60 ]; then
    echo "only $held files of figures were found"
    failed=1
fi
[ "$failed" = 0 ] && echo "$held files of figures are listed"
exit "$failed"
