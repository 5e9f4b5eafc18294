#!/bin/bash
# record.sh WEND: records what compare.sh compares. Look at `git diff tests/golden` before you keep it.
set -eu
wend=$(readlink -f "$1")
here=$(cd "$(dirname "$0")" && pwd)
cd "$here/../../routes"
for route in *.yaml; do
    name=${route%.yaml}
    mkdir -p "$here/$name"
    rc=0
    "$wend" plan "$route" --out "$here/$name" >"$here/$name/stdout" 2>"$here/$name/stderr" || rc=$?
    echo "$rc" >"$here/$name/exit"
    sed -i '/^written:/,$d' "$here/$name/stdout"
    # the pack repeats the other papers: one of them is enough
    [ "$name" = cider-barn ] || rm -f "$here/$name/$name.pack.html"
done
bash "$here/../order/compare.sh" "$wend" record # orders are made of the same lists
