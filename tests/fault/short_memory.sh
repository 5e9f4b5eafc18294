#!/bin/bash
# short_memory.sh WEND: with too little memory to finish, wherever that strikes, the program says so, writes nothing and
# ends with 3; with enough the documents are what they always are. The lack is real: the system refuses more.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
route=$here/../../routes/pottery.yaml
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
"$wend" plan "$route" --out whole >/dev/null || exit 1
try() { # KIB: what comes of it
    rm -rf out
    (ulimit -v "$1"; exec "$wend" plan "$route" --out out) >stdout 2>stderr
}
# from "does not even start" to "is enough"
low=2000 high=400000
while [ $((high - low)) -gt 16 ]; do
    middle=$(((low + high) / 2))
    if try $middle; then high=$middle; else low=$middle; fi
done
lacked=0 bad=0
for kib in $(seq $((high - 1600)) 16 $((high + 64))); do
    try "$kib"
    status=$?
    if [ $status = 0 ]; then
        diff -r whole out >/dev/null || { bad=$((bad + 1)); echo "FAILED $kib KiB: other documents"; }
    elif [ $status = 3 ] && grep -q 'out-of-memory' stderr && [ ! -e out ]; then
        lacked=$((lacked + 1))
    elif [ $status != 127 ] && [ $status != 1 ]; then # those are the loader's
        bad=$((bad + 1))
        echo "FAILED $kib KiB: exit $status"
        head -2 stderr
    fi
done
printf 'enough is %d KiB; %d times too little was told, %d times something else came of it\n' "$high" "$lacked" "$bad"
[ "$bad" = 0 ] && [ "$lacked" -gt 20 ]
