#!/bin/bash
# bench.sh BUILD: what wend check and wend plan cost against libyaml's bare parse of the same bytes, on made routes. Counts
# instructions where valgrind is there, else CPU time. Floor and program are of one run, and only their growth can fail:
# ten times the way must not cost more than fifteen times as much.
set -eu
bench=$1/tests/wend_bench
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
unit=instructions
command -v valgrind >/dev/null || unit=nanoseconds
bad=0

cost() { # WORK SEGMENTS: what it takes, and the bytes
    local took bytes
    if [ $unit = nanoseconds ]; then
        "$bench" "$1" "$2" 5
        return
    fi
    valgrind --tool=callgrind --callgrind-out-file=/dev/null --log-file="$work/log" "$bench" "$1" "$2" >"$work/out"
    took=$(sed -n 's/.*Collected : *//p' "$work/log")
    read -r _ bytes <"$work/out"
    echo "$took $bytes"
}
net() { # WORK SEGMENTS: the same without making the route
    local all bytes start
    read -r all bytes < <(cost "$1" "$2")
    if [ $unit = nanoseconds ]; then start=0; else read -r start _ < <(cost start "$2"); fi
    echo $((all - start)) "$bytes"
}
linear() { # WHAT BEFORE AFTER: of a way ten times as long; the first few carry what every run costs
    [ "$3" -le $(($2 * 15)) ] && return
    echo "FAILED $1 grows faster than the way: $2, then $3 $unit"
    bad=1
}

echo "$unit, without making the route"
printf '%9s %10s %14s %14s %9s %14s\n' segments bytes parse check ratio 'check/segment'
before=
for segments in 10 100 1000 10000; do
    read -r parse bytes < <(net parse $segments)
    read -r check _ < <(net check $segments)
    printf '%9d %10d %14d %14d %9s %14d\n' $segments "$bytes" "$parse" "$check" \
        "$(awk "BEGIN { printf \"%.2f\", $check / $parse }")" $((check / segments))
    [ -z "$before" ] || linear "wend check" "$before" "$check"
    before=$check
done
before=
for segments in 400 4000; do # in trenches that they share
    read -r shared _ < <(net shared $segments)
    [ -z "$before" ] || linear "wend check of shared trenches" "$before" "$shared"
    before=$shared
done
printf '\n%9s %10s %14s %14s\n' segments written plan 'plan/byte'
before=
for segments in 10 100 1000; do
    [ $segments = 1000 ] && [ $unit = instructions ] && [ "${WEND_SWEEP:-}" != deep ] && break # a minute of it
    read -r plan written < <(net plan $segments)
    printf '%9d %10d %14d %14d\n' $segments "$written" "$plan" $((plan / written))
    [ -z "$before" ] || linear "wend plan" "$before" "$plan"
    before=$plan
done
exit $bad
