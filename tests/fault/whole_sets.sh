#!/bin/bash
# whole_sets.sh WEND STRIKE: a set of papers is the old one or the new one. The program is killed before every call that
# changes a file, and what is in sight then must be of one set alone; the next run must leave a whole set and nothing of
# what the dead one left. Each call is refused in turn: the old set must stay whole. Two at once must not mix.
# With WEND_SWEEP in the environment at one point in four; else at one in twenty-nine.
set -u
step=29
[ -z "${WEND_SWEEP-}" ] || step=4
here=$(cd "$(dirname "$0")" && pwd)
wend=$(readlink -f "$1") strike=$(readlink -f "$2")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/../cli/holding.sh"
route() { # LENGTH
    cat <<Y
wend: 1
job: {title: Shed}
supply: {system: TN-S, loop-impedance: 0.35 ohm}
runs: {feeder: {load: {current: 20 A}, cable: {type: BS5467, cores: 3}}}
segments:
  - {name: wall, way: wall, length: $1 m}
Y
}
mkdir one two three
route 12 >one/a.yaml
route 14 >two/a.yaml
route 500 | sed 's/type: BS5467/type: BS5467, size: 1.5 mm2/' >three/a.yaml # fails: its list has another name
plan() { "$wend" plan "$1/a.yaml" --out "${2-out}" >said 2>told; }
struck() { # NAME... : the environment, then the job
    local job=${*: -1}
    env "${@:1:$#-1}" LD_PRELOAD="$strike" "$wend" plan "$job/a.yaml" --out out >said 2>told
}
for job in one two three; do plan $job "whole-$job"; done
holds "the third fails, and its list says so" test -s whole-three/a.FAIL.parts.csv
begin() { # JOB: the folder as a run of it leaves it, with a file of the user's own
    rm -rf out
    cp -r "whole-$1" out
    echo mine >out/notes.txt
}
# What is in sight, without what was set aside: "one", "two", "three" where all of it is of that set; "mixed" else.
# With "whole" the set must have all its files.
of() { # JOB [whole]
    local name seen=0
    for name in out/a.*; do
        case $name in *.old | *.old[0-9]) continue ;; esac
        [ -e "$name" ] || continue
        cmp -s "$name" "whole-$1/${name#out/}" || return 1
        seen=$((seen + 1))
    done
    [ "${2-}" != whole ] || [ "$seen" = "$(ls "whole-$1" | wc -l)" ]
}
tidy() { [ "$(cat out/notes.txt)" = mine ] && ! ls -A out | grep -q '^\.'; }

for pair in "one two" "one three" "three one"; do
    read -r old new <<<"$pair"
    begin $old
    struck STRIKE_COUNT=count $new
    points=$(cat count)
    holds "$pair: there are points to strike at ($points)" test "$points" -gt 50
    holds "$pair: without a strike it is the new set" of $new whole
    holds "$pair: and nothing is left" tidy
    part=0
    for at in $(seq 1 $step "$points"); do
        begin $old
        struck STRIKE=kill STRIKE_AT=$at $new 2>/dev/null
        [ $? = 137 ] || holds "$pair, $at: it was killed" false
        if of $old whole || of $new whole; then :; elif of $old || of $new; then part=$((part + 1)); else
            failed=$((failed + 1)); echo "FAILED $pair: killed before call $at, old and new are in sight together"; fi
        next=$old
        [ $((at / step % 2)) = 0 ] || next=$new
        plan $next
        holds "$pair, $at: the next run can write" test $? -le 1
        { of $next whole && tidy; } || { failed=$((failed + 1)); echo "FAILED $pair: after call $at the next run leaves no whole set, or litter"; ls -A out; }
        # the file of the next run is wrong: no paper may look valid
        [ "$pair" = "one two" ] || continue
        begin $old
        struck STRIKE=kill STRIKE_AT=$at $new
        echo wrong: yes >wrong.yaml && mkdir -p wrong && mv wrong.yaml wrong/a.yaml
        plan wrong
        { ! ls out | grep -v old | grep -q '^a\.' && tidy; } || { failed=$((failed + 1)); echo "FAILED $pair: after call $at papers look valid of a file that is wrong"; ls -A out; }
    done
    printf '%s: killed at one in %d of %d points, a part of one set in sight at %d, never of two\n' "$pair" $step "$points" "$part"
done

# refused, each call in turn: the old set whole, or the new one
for why in 1 5 28; do # EPERM, EIO, ENOSPC
    for call in mkdir open write fsync rename; do
        begin one
        struck STRIKE_COUNT=count STRIKE_ON=$call two
        for at in $(seq 1 $step "$(cat count)"); do
            begin one
            struck STRIKE=$why STRIKE_ON=$call STRIKE_AT=$at two
            status=$?
            if [ $status = 0 ]; then holds "$call $at refused ($why), and new" of two whole; else
                holds "$call $at refused ($why): exit $status is 3" test $status = 3
                holds "$call $at refused ($why), and old" of one whole
                holds "$call $at refused ($why): it is told" grep -q '^wend: error: .*could not be' told
            fi
            holds "$call $at refused ($why): nothing is left" tidy
        done
    done
done
# refused, and killed while that was undone: what the next run then finds is no part of a set. Its route is wrong, so that
# it writes none of its own and sets all aside.
mkdir -p wrong && echo wrong: yes >wrong/a.yaml
some() { # JOB: some of its files, but not all, lie set aside
    local name same=0
    for name in out/a.*.old; do
        ! cmp -s "$name" "whole-$1/$(basename "$name" .old)" || same=$((same + 1))
    done
    [ $same != 0 ] && [ $same != "$(ls "whole-$1" | wc -l)" ]
}
kills=0
for refused in 4 14; do # while the old set is hidden, while the new one is put in place
    for at in $(seq $((refused + 1)) $((step > 4 ? 3 : 1)) $((refused + 30))); do
        begin one
        struck STRIKE=5 STRIKE_ON=rename,unlink,rmdir STRIKE_AT=$refused STRIKE_KILL_AT=$at two 2>/dev/null
        [ $? = 137 ] || break
        kills=$((kills + 1))
        plan wrong
        holds "refused at $refused, killed at $at: no part of the new set is left" eval "! some two"
    done
done
holds "it was killed while undoing ($kills)" test $kills -gt 9

# what cannot be removed is told, and is gone after the next run
for call in unlink rmdir; do
    begin one
    struck STRIKE=5 STRIKE_ON=$call STRIKE_AT=1 two
    holds "$call refused: the new set is there" of two whole
    holds "$call refused: it is told" grep -q '^wend: warning: out/.a.wend could not be removed' told
    plan one
    holds "$call refused: the next run" of one whole
    holds "$call refused: clears it" tidy
done

# file systems that lack something: hard links (none is asked for), locks, a way to force a file to disk
begin one
struck STRIKE=1 STRIKE_ON=link two
holds "without hard links" of two whole
begin one
struck STRIKE=37 STRIKE_ON=flock two
holds "without locks" of two whole
holds "it is said what cannot be promised" grep -q '^wend: note: out cannot be locked.*one at a time' told
begin one
struck STRIKE=22 STRIKE_ON=fsync two
holds "where nothing can be forced to disk" of two whole

# two at once, on a slow share
rounds=1
[ -z "${WEND_SWEEP-}" ] || rounds=3
for round in $(seq $rounds); do
    begin three
    struck STRIKE=pause STRIKE_ON=rename,unlink,open one & first=$!
    env STRIKE=pause STRIKE_ON=rename,unlink,open LD_PRELOAD="$strike" "$wend" plan two/a.yaml --out out >said2 2>told2
    second=$?
    wait $first
    holds "round $round: both are done" test $second$? = 00
    holds "round $round: one set, whole" eval "of one whole || of two whole"
    holds "round $round: nothing is left" tidy
done
# one that does not come to its end: ten seconds are waited for it
if [ -n "${WEND_SWEEP-}" ]; then
    begin one
    flock out sleep 30 &
    held=$!
    until ! flock -n out true; do sleep 0.1; done
    plan two
    holds "another run has the folder" test $? = 3
    holds "is said" grep -q 'another run of wend is writing into out; nothing is written' told
    holds "nothing changed" of one whole
    kill $held
    wait $held 2>/dev/null
fi

# a folder that cannot be opened may hold papers that look valid of a file that is wrong: that is said
rm -rf out
ln -s out out
plan wrong
holds "papers that cannot be reached are named" grep -q '^wend: error: out could not be opened: ' told
holds "the file is wrong all the same" grep -q 'a.yaml:1' told

# a folder of the user's own of that name
begin one
mkdir out/.a.wend
echo mine >out/.a.wend/letter
plan two
holds "is left alone" test "$(cat out/.a.wend/letter)" = mine
holds "and so is the set" of one whole
holds "it is named" grep -q 'out/.a.wend is there and holds what was not written by wend' told
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
