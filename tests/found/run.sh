#!/bin/bash
# run.sh WEND: routes that once showed something wrong, each held against expected.tsv: its verdict, and what a command
# must and must not print. Columns: name; PASS, OPEN, FAIL or WRONG; the command with its words after the file (check,
# plan, "explain drop"); text that must be printed (grep -F); text that must not, or -; the clause or rule. A route may
# have several rows. Columns are parted by one tab each.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rows=0 bad=0
wrong() { bad=$((bad + 1)); echo "FAILED $1: $2"; }
while IFS=$'\t' read -r name verdict command holds lacks clause rest; do
    case $name in name | '#'* | '') continue ;; esac
    rows=$((rows + 1))
    route=$here/$name.yaml
    [ -f "$route" ] || { wrong "$name" "there is no such route"; continue; }
    [ -n "$clause" ] && [ -z "$rest" ] || wrong "$name" "its row has not six columns"
    said=$("$wend" check "$route" 2>/dev/null)
    rc=$?
    case $verdict in PASS | OPEN) due=0 ;; FAIL) due=1 ;; WRONG) due=2 ;; *) due=none ;; esac
    [ "$rc" = "$due" ] && grep -qF -- "$name.yaml: $verdict: " <<<"$said" || wrong "$name" "not $verdict but: $said"
    read -ra words <<<"$command"
    [ "${words[0]}" = plan ] && out=(--full --out "$work") || out=()
    "$wend" "${words[0]}" "$route" "${words[@]:1}" "${out[@]}" >"$work/printed" 2>&1
    # lines are wrapped for a terminal
    printed=$(tr -s ' \n' ' ' <"$work/printed")
    grep -qF -- "$holds" <<<"$printed" || wrong "$name" "$command does not print: $holds"
    [ "$lacks" = - ] || ! grep -qF -- "$lacks" <<<"$printed" || wrong "$name" "$command prints: $lacks"
done <"$here/expected.tsv"
for route in "$here"/*.yaml; do
    cut -f1 "$here/expected.tsv" | grep -qxF "$(basename "$route" .yaml)" || wrong "$(basename "$route")" "has no row"
done
echo "$rows rows, $bad wrong"
[ "$rows" -gt 0 ] && [ "$bad" = 0 ]
