#!/bin/bash
# fuzz.sh SECONDS [KIND...]   fuzzes routes, price lists, order files and labour figures (each that long) from tests/fuzz and
#                             from every such file of the project; what breaks a promise is kept in build/fuzz/broken
# fuzz.sh keep [KIND...]      makes tests/fuzz anew: the fewest and smallest of the inputs found that run the same code
# Needs the preset fuzz: cmake --preset fuzz && cmake --build --preset fuzz. What each run took is a row of build/fuzz/runs,
# also of one that found something or was ended; prints the sum of all rows, which claims.sh takes from build/fuzz/share.
set -eu
cd "$(dirname "$0")/.."
export LC_ALL=C # times with a point
most_bytes=2000 # of an input: longer ones say nothing new
[ $# -ge 1 ] || { sed -n '2,6s/^# //p' "$0"; exit 2; }
slowest_s=200   # by the clock, of a machine that does other things besides
what=$1
shift
mkdir -p build/fuzz/broken
seeds() { # KIND: files of the project of that kind
    case $1 in
        routes) find routes tests/found tests/hostile/route tests/golden -name '*.yaml' -not -path '*/labour/*' ;;
        prices) find routes tests -name '*prices*.csv' -not -path 'tests/fuzz/*'; find tests/order tests/hostile -name '*.csv' -path '*prices*' ;;
        orders) find tests/order -name '*.yaml' ;;
        labour) find routes tests -name '*labour*.yaml' -not -path 'tests/fuzz/*' ;;
    esac | sort -u
}
run() { # KIND: fuzzes it, and adds a row to build/fuzz/runs: kind, seconds of processor, inputs
    local kind=$1 found=build/fuzz/found/$1 log=build/fuzz/$1.log status=0 inputs
    TIMEFORMAT='%U %S'
    { time nice "build/fuzz/tests/fuzz_$kind" -max_total_time="$what" -max_len=$most_bytes -timeout=$slowest_s -rss_limit_mb=2000 \
        -print_final_stats=1 -verbosity=0 -artifact_prefix=build/fuzz/broken/ "$found" "tests/fuzz/$kind" >"$log" 2>&1; } 2>build/fuzz/time || status=$?
    inputs=$(sed -n 's/.*number_of_executed_units: *//p' "$log" | tail -1)
    awk -v kind="$kind" -v inputs="${inputs:-0}" '{ printf "%s\t%.2f\t%d\n", kind, $1 + $2, inputs }' build/fuzz/time >>build/fuzz/runs
    [ "$status" = 0 ] || tail -40 "$log"
    return "$status"
}
share() { # of all rows: "N inputs in M minutes of processor (routes N in M, ...)"
    awk -F'\t' '{ if (!($1 in inputs)) kinds[++count] = $1; inputs[$1] += $3; seconds[$1] += $2; all_inputs += $3; all_seconds += $2 }
        END { printf "%d inputs in %.1f minutes of processor (", all_inputs, all_seconds / 60
            for (i = 1; i <= count; i++) printf("%s%s %d in %.1f", (i > 1 ? ", " : ""), kinds[i], inputs[kinds[i]], seconds[kinds[i]] / 60)
            print ")" }' build/fuzz/runs
}
failed=0
for kind in ${*:-routes prices orders labour}; do
    found=build/fuzz/found/$kind
    mkdir -p "$found" "tests/fuzz/$kind"
    if [ "$what" = keep ]; then
        rm -rf build/fuzz/kept
        mkdir build/fuzz/kept
        nice "build/fuzz/tests/fuzz_$kind" -merge=1 -max_len=$most_bytes build/fuzz/kept "$found" "tests/fuzz/$kind" 2>/dev/null
        rm -f "tests/fuzz/$kind"/*
        cp build/fuzz/kept/* "tests/fuzz/$kind/"
        echo "$kind: $(ls "tests/fuzz/$kind" | wc -l) inputs, $(cat "tests/fuzz/$kind"/* | wc -c) bytes"
        continue
    fi
    for file in $(seeds "$kind"); do
        [ "$(wc -c <"$file")" -gt $most_bytes ] || cp "$file" "$found/$(echo "$file" | tr / _)"
    done
    run "$kind" || failed=1
done
[ "$what" != keep ] || exit 0
share | tee build/fuzz/share
exit "$failed"
