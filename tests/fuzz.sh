#!/bin/bash
# fuzz.sh SECONDS [KIND...]   fuzzes routes, price lists and order files (each that long) from tests/fuzz and from every
#                             such file of the project; what breaks a promise is kept in build/fuzz/broken
# fuzz.sh keep [KIND...]      makes tests/fuzz anew: the fewest and smallest of the inputs found that run the same code
# Needs the preset fuzz: cmake --preset fuzz && cmake --build --preset fuzz. Prints the processor time that was spent.
set -eu
cd "$(dirname "$0")/.."
most_bytes=2000 # of an input: longer ones say nothing new
[ $# -ge 1 ] || { sed -n '2,5s/^# //p' "$0"; exit 2; }
what=$1
shift
mkdir -p build/fuzz/broken
seeds() { # KIND: files of the project of that kind
    case $1 in
        routes) find routes tests/found tests/hostile/route tests/golden -name '*.yaml' ;;
        prices) find routes tests -name '*prices*.csv' -not -path 'tests/fuzz/*'; find tests/order tests/hostile -name '*.csv' -path '*prices*' ;;
        orders) find tests/order -name '*.yaml' ;;
    esac | sort -u
}
rm -f build/fuzz/*.log
for kind in ${*:-routes prices orders}; do
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
    nice "build/fuzz/tests/fuzz_$kind" -max_total_time="$what" -max_len=$most_bytes -timeout=20 -rss_limit_mb=2000 -print_final_stats=1 \
        -verbosity=0 -artifact_prefix=build/fuzz/broken/ "$found" "tests/fuzz/$kind" >"build/fuzz/$kind.log" 2>&1 ||
        { tail -40 "build/fuzz/$kind.log"; exit 1; }
    echo "$kind: $(grep -oE 'number_of_executed_units: [0-9]+' "build/fuzz/$kind.log" | grep -oE '[0-9]+') inputs"
done
[ "$what" != keep ] || exit 0
times >build/fuzz/times # in a pipe it would be the pipe's own
awk 'NR == 2 { split($1, user, /[ms]/); split($2, kernel, /[ms]/); print 60 * (user[1] + kernel[1]) + user[2] + kernel[2] }' build/fuzz/times >>build/fuzz/seconds
cat build/fuzz/*.log 2>/dev/null | sed -n 's/.*number_of_executed_units: //p' | awk '{ sum += $1 } END { print sum + 0 }' >>build/fuzz/inputs
awk 'FNR == NR { seconds += $1; next } { inputs += $1 } END { printf "%d inputs in %.1f minutes of processor\n", inputs, seconds / 60 }' \
    build/fuzz/seconds build/fuzz/inputs | tee build/fuzz/share
