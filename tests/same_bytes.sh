#!/bin/bash
# same_bytes.sh WEND-A WEND-B: every route of the project, planned by both, twice, in different surroundings: same bytes.
set -eu
a=$(readlink -f "$1") b=$(readlink -f "$2")
root=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
count=0
for route in "$root"/routes/*.yaml; do
    name=$(basename "$route" .yaml)
    mkdir -p "$work/a" "$work/b" "$work/c"
    rc=0; "$a" plan "$route" --out "$work/a" >"$work/a/$name.txt" || rc=$?
    [ "$rc" -le 1 ]
    other=0; (cd "$root/routes" && LC_ALL=C.UTF-8 TZ=Asia/Tokyo "$b" plan "$name.yaml" --out "$work/b" >"$work/b/$name.txt") || other=$?
    bare=0; (cd / && env -i "$a" plan "$route" --out "$work/c" >"$work/c/$name.txt") || bare=$?
    [ "$rc $rc" = "$other $bare" ] || { echo "$name: exit status $rc, $other and $bare"; exit 1; }
    sed -i '/^Papers /,/^Verdict/{/^Verdict/!d}' "$work"/?/"$name.txt" # but where the papers lie
    count=$((count + 1))
done
orders="--order $root/tests/order/golden/order.yaml"
"$a" order "$root"/routes/*.yaml $orders --out "$work/a" >"$work/a/order.txt"
(cd "$root/routes" && LC_ALL=C.UTF-8 TZ=Asia/Tokyo "$b" order *.yaml $orders --out "$work/b" >"$work/b/order.txt")
(cd / && env -i "$a" order "$root"/routes/*.yaml $orders --out "$work/c" >"$work/c/order.txt")
sed -i '/^written:/,$d' "$work"/?/order.txt
diff -r "$work/a" "$work/b"
diff -r "$work/a" "$work/c"
[ "$count" -ge 4 ]
echo "$count routes, three surroundings, same bytes"
