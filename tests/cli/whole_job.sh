#!/bin/bash
# whole_job.sh WEND: the whole job that README.md has one paste, line by line as it stands there, and what it says of it.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"
mkdir bin
ln -s "$(realpath "$wend")" bin/wend
PATH=$PWD/bin:$PATH
sed -n '/^```yaml$/,/^```$/p' "$here/../../README.md" | grep -v '^```' >boathouse.yaml
sed -n '/^```console$/,/^```$/p' "$here/../../README.md" | grep -v '^```' >pasted
holds "there is a job to paste" grep -q '^wend readings boathouse.yaml$' pasted
printf 'set -e\n' | cat - pasted >job.sh
expect "every line of it" 0 bash job.sh
for line in 'Lengths    37 m, was 35 m; feeder' 'Warning    planned as laid, not as surveyed: track' \
    '  Fault current .*not taken' 'Verdict    OPEN: nothing is past a limit, but a reading is missing' \
    'boathouse.yaml --set segments.track.length=40 m: OPEN: ' 'written: order/order.csv' \
    'drawings: the 11 papers of boathouse belong together'; do
    holds "$line" grep -q "^$line" out
done
holds "the two checks that are open" test "$(grep -o 'give device:$\|give earthing: extraneous-parts' out | sort -u | wc -l)" = 2
holds "the sheet for the next digger" grep -q 'a land drain at 12 m' drawings/boathouse.as-laid.html
holds "the readings" test -s drawings/boathouse.readings.html
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
