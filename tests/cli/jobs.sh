#!/bin/bash
# jobs.sh WEND: wend check --jobs: the same bytes and exit status however many files are checked at once.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"

cat >good.yaml <<'Y'
wend: 1
job: {title: Shed}
supply: {system: TN-S, loop-impedance: 0.35 ohm}
runs:
  feeder:
    load: {current: 20 A}
    cable: {type: BS5467, cores: 3}
segments:
  - {name: wall, way: wall, length: 12 m}
Y
for i in 1 2 3 4 5 6 7 8; do sed "s/12 m/$((i * 20)) m/; s/cores: 3/cores: 3, size: 2.5 mm2/" good.yaml >"long-$i.yaml"; done
sed 's/way: wall/way: wal/' good.yaml >wrong.yaml
sed 's/^job: .*/&\nparts: {prices: none.csv}/' good.yaml >unpriced.yaml
mkdir folder
files="good.yaml long-1.yaml wrong.yaml long-2.yaml nosuch.yaml long-3.yaml long-4.yaml folder unpriced.yaml long-5.yaml long-6.yaml long-7.yaml long-8.yaml"
passing="good.yaml long-1.yaml unpriced.yaml"

same() { # WHAT EXIT-STATUS ARGUMENT...
    local what=$1 status=$2 n
    shift 2
    expect "$what, one after the other" "$status" "$wend" check "$@"
    mv out out-alone
    mv err err-alone
    for n in 1 2 7 64; do
        expect "$what, $n at once" "$status" "$wend" check --jobs "$n" "$@"
        holds "$what, $n at once: the same on stdout" cmp out out-alone
        holds "$what, $n at once: the same on stderr" cmp err err-alone
    done
}
same "files of all sorts" 3 $files
holds "some pass, some fail, one is wrong" test "$(cut -d' ' -f2 out | sort | uniq -c | wc -l)" -ge 3
holds "what cannot be read is named" grep -q 'nosuch.yaml could not be read' err
same "files that can be planned" 1 $passing long-8.yaml
same "as JSON" 3 --format json $files
same "quietly" 1 --quiet $passing long-8.yaml
expect "one from standard input" 0 "$wend" check --jobs 2 good.yaml - <good.yaml
holds "it has its line" grep -q '^-: ' out

# counted in instructions, two processes have nearly half of the work each, however unlike the files are
long_route() { # SEGMENTS
    sed '/^ *- {name/d' good.yaml
    for ((i = 0; i < $1; i++)); do echo "  - {name: s$i, way: wall, length: 1 m}"; done
}
for i in 1 2 3 4; do
    long_route 150 >"much-$i.yaml"
    long_route 5 >"little-$i.yaml"
done
if valgrind --log-file=/dev/null "$wend" --version >/dev/null 2>&1; then # it runs none that a sanitizer is in
    valgrind --tool=callgrind --trace-children=yes --callgrind-out-file="$work/counted.%p" --log-file=/dev/null \
        "$wend" check --jobs 2 {much,little}-1.yaml {much,little}-2.yaml {much,little}-3.yaml {much,little}-4.yaml >out 2>err
    # one begins, and then they work beside each other: the longer of them says when all is done
    shared=$(sed -n 's/^totals: //p' counted.* | sort -n |
        awk '{ all += $1; last = $1 } NR == 1 { begins = $1 } END { if (NR == 3) printf "%d", 100 * all / (begins + last) }')
    holds "two processes share the work: $shared hundredths" test "${shared:-0}" -ge 180
else
    echo "skipped: how the work is shared (no valgrind, or a sanitizer)"
fi

# whatever becomes of the processes, standard input is read by one reader, and whole
mkfifo pipe
"$wend" check --jobs 2 good.yaml - <pipe >out 2>err &
checker=$!
exec 9>pipe
head -1 good.yaml >&9
sleep 0.3
for child in $(cat "/proc/$checker/task/$checker/children"); do kill -9 "$child"; done
tail -n +2 good.yaml >&9
exec 9>&-
wait "$checker"
holds "standard input is whole when a process is killed" test $? = 0
holds "and has its line" grep -q '^-: ' out

expect "standard output closed early does not hang" 0 bash -c "'$wend' check --jobs 3 $passing $passing | head -1"

for n in 0 65 1.5 two -1 007; do
    expect "--jobs $n" 2 "$wend" check --jobs $n good.yaml
    holds "it says what it takes" grep -q -- "--jobs takes a whole number from 1 to 64, not $n; for example --jobs 4" err
done
expect "--jobs without a number" 2 "$wend" check --jobs
holds "it says so" grep -q -- '--jobs needs a number; for example --jobs 4' err
expect "--jobs of a command that has none" 2 "$wend" plan good.yaml --jobs 2
expect "help names it" 0 "$wend" help check
holds "with what it does" grep -q -- '--jobs N  *check N files at once' out
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
