#!/bin/bash
# record.sh WEND: records what compare.sh compares. Look at `git diff tests/golden` before you keep it.
set -eu
wend=$(readlink -f "$1")
here=$(cd "$(dirname "$0")" && pwd)
. "$here/kept.sh"
for route in "$here"/../../routes/*.yaml "$here"/*.yaml; do
    name=$(basename "$route" .yaml)
    mkdir -p "$here/$name"
    rm -f "$here/$name/$name".*.{csv,html,svg,xml}
    plan_route "$route" "$here/$name"
    drop_html "$name" "$here/$name"
done
picture "$here/well-pump/well-pump.diagram.svg" >"$here/../../routes/well-pump.svg"
bash "$here/../order/compare.sh" "$wend" record # orders are made of the same lists
