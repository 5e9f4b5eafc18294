#!/bin/bash
# failing_writes.sh WEND: what was there before stays whole when a write fails, and no litter is left.
# The failures are real: a full file system (tmpfs of a few pages), a target that is a folder, a name that is too long.
set -u
wend=$1
work=$(mktemp -d)
mounted=
trap '[ -z "$mounted" ] || umount "$work/small"; rm -rf "$work"' EXIT
cd "$work"
passed=0 failed=0
holds() {
    local what=$1
    shift
    if "$@" >/dev/null 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what"; fi
}
status() { # STATUS COMMAND...
    local want=$1 rc=0
    shift
    "$@" >out 2>err || rc=$?
    holds "exit $rc, not $want: $*" test "$rc" = "$want"
}
cat >a.yaml <<'Y'
wend: 1
job: {title: Shed}
supply: {system: TN-S, loop-impedance: 0.35 ohm}
runs: {feeder: {load: {current: 20 A}, cable: {type: BS5467, cores: 3}}}
segments:
  - {name: wall, way: wall, length: 12 m}
Y

# the middle target is a folder: nothing may have changed
mkdir -p set/a.diagram.svg
echo '<plan format="1"/>' >set/a.plan.xml
echo 'line,quantity,unit,description,standard,for' >set/a.parts.csv
cp set/a.plan.xml set/a.parts.csv .
status 3 "$wend" plan a.yaml --out set
holds "plan.xml as it was" cmp a.plan.xml set/a.plan.xml
holds "parts.csv as it was" cmp a.parts.csv set/a.parts.csv
holds "no litter" test "$(ls -A set | wc -l)" = 3
holds "it says which" grep -q 'a.diagram.svg' err

# the output folder is a file
echo file >plain
status 3 "$wend" plan a.yaml --out plain
holds "the file is as it was" test "$(cat plain)" = file

# old files keep nothing of the new ones and modes follow the umask
mkdir fresh
(umask 027 && "$wend" plan a.yaml --out fresh >/dev/null)
holds "mode by umask" test "$(stat -c %a fresh/a.plan.xml)" = 640
cp fresh/a.plan.xml before.xml
status 0 "$wend" plan a.yaml --out fresh
holds "same bytes again" cmp before.xml fresh/a.plan.xml

# a file system that is full
mkdir small
if mount -t tmpfs -o size=16k tmpfs small 2>/dev/null; then
    mounted=1
    cp a.plan.xml small
    status 3 "$wend" plan a.yaml --out small
    holds "old file whole on a full disk" cmp a.plan.xml small/a.plan.xml
    holds "no litter on a full disk" test "$(ls -A small | wc -l)" = 1
else
    echo "skipped: no right to mount a small file system here"
    holds "nothing may be skipped" test -z "${WEND_SKIP_NOTHING-}"
fi
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
