#!/bin/bash
# compare.sh CUTTING_JOBS: the planner's sums against those of the general solver glpsol (Debian: glpk-utils), job by job.
# Least uncut, then least bought length, then fewest drums, then fewest offcuts; each is a programme of its own over every
# pattern that a bin can be cut into. Ends with 77, which ctest shows as skipped, when glpsol is not there.
set -u
jobs=$1
here=$(cd "$(dirname "$0")" && pwd)
command -v glpsol >/dev/null || { echo "skipped: glpsol is not installed (package glpk-utils)"; exit 77; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$jobs" "$work" || exit 1

# least JOB SUM: the least sum, or "none" when the solver does not end with a proved one
least() {
    awk -v sum="$2" -f "$here/pattern_model.awk" "$1" >"$work/model.lp" || return 1
    glpsol --lp "$work/model.lp" --tmlim 120 -o "$work/solution" >"$work/log" 2>&1 || { cat "$work/log" >&2; return 1; }
    awk '/^Status:/ { proved = /OPTIMAL/ } /^Objective:/ { value = $4 } END { print proved ? value : "none" }' "$work/solution"
}

compared=0 differ=0 with_uncut=0 with_offcuts=0
for job in "$work"/job-*.txt; do
    read -r _ uncut bought drums offcuts < <(grep '^answer' "$job")
    found="$(least "$job" uncut)"
    # With nothing cut there is nothing left to compare.
    if awk '$1 == "piece" { cut += $4 } END { exit cut == 0 }' "$job"; then
        found="$found $(least "$job" bought) $(least "$job" drums) $(least "$job" offcuts)"
    else
        found="$found 0 0 0"
    fi
    compared=$((compared + 1))
    [ "$uncut" -gt 0 ] && with_uncut=$((with_uncut + 1))
    [ "$offcuts" -gt 0 ] && with_offcuts=$((with_offcuts + 1))
    if [ "$found" != "$uncut $bought $drums $offcuts" ]; then
        differ=$((differ + 1))
        echo "$(basename "$job"): planner $uncut $bought $drums $offcuts, solver $found"
        cat "$job"
    fi
done
echo "$compared jobs compared ($with_uncut leave pieces uncut, $with_offcuts use offcuts), $differ differ"
[ "$compared" -ge 200 ] && [ "$differ" -eq 0 ] && [ "$with_uncut" -gt 0 ] && [ "$with_offcuts" -gt 20 ]
