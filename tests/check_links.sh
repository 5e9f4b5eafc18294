#!/bin/sh
# check_links.sh BUILD: what a folder calls is in the folders that its table in DEVELOPERS.md lets it know, whatever the
# linker would find. Read from the folders' own libraries.
set -u
cd "$1/src" || exit 1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
nouns='base survey'
knows() {
    case $1 in
    base) echo ;;
    survey) echo base ;;
    cutting) echo base ;;
    tables | plan) echo "$nouns" ;;
    read) echo "$nouns" ;;
    design | takeoff) echo "$nouns plan tables" ;;
    buying) echo "$nouns plan takeoff cutting" ;;
    day) echo base ;;
    labour) echo "$nouns plan takeoff buying day" ;;
    words) echo "$nouns plan" ;;
    documents) echo "$nouns plan takeoff buying day labour words" ;;
    library) echo "$nouns read tables plan design takeoff cutting buying day labour words documents" ;;
    esac
}
folders='base survey read tables plan design takeoff cutting buying day labour words documents library'
for folder in $folders; do
    nm -A "libwend_$folder.a" 2>/dev/null | awk -v folder="$folder" '$(NF - 1) ~ /^[TRDBC]$/ { print $NF, folder }' >>"$work/has"
    nm -A "libwend_$folder.a" 2>/dev/null | awk -v folder="$folder" '$(NF - 1) == "U" { print $NF, folder }' >>"$work/calls"
done
LC_ALL=C sort -u -o "$work/has" "$work/has"
LC_ALL=C sort -u -o "$work/calls" "$work/calls"
LC_ALL=C join "$work/calls" "$work/has" | awk '$2 != $3' >"$work/across"
seen=0 failed=0
while read -r name from into; do
    seen=$((seen + 1))
    case " $(knows "$from") " in
    *" $into "*) ;;
    *) echo "$from calls $name(), which is of $into" && failed=1 ;;
    esac
done <"$work/across"
if [ "$seen" -lt 300 ]; then
    echo "only $seen calls from folder to folder were seen"
    failed=1
fi
[ "$failed" = 0 ] && echo "$seen calls from folder to folder keep to the table"
exit "$failed"
