#!/bin/bash
# valgrind.sh BUILD: plans every route, a wrong one and the relations' shortest suite under valgrind; nothing lost, nothing
# read before it was written.
set -eu
build=$1
root=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# What the loader keeps of libraries that it opens late is the loader's own.
cat >"$work/loader" <<'S'
{
   kept by dlopen
   Memcheck:Leak
   match-leak-kinds: reachable
   ...
   fun:_dl_open
}
S
check() {
    local rc=0
    valgrind --quiet --suppressions="$work/loader" --num-callers=40 --leak-check=full --show-leak-kinds=all --errors-for-leak-kinds=definite,indirect,possible \
        --error-exitcode=99 "$@" >"$work/out" 2>"$work/err" || rc=$?
    if [ "$rc" = 99 ] || grep -q '^==[0-9]*==' "$work/err"; then
        cat "$work/err"
        return 1
    fi
}
count=0
for route in "$root"/routes/*.yaml "$root"/tests/hostile/route/b*.yaml; do
    check "$build/wend" plan "$route" --out "$work/docs"
    count=$((count + 1))
done
check "$build/wend" order "$root"/routes/*.yaml --order "$root/tests/order/golden/order.yaml" --out "$work/docs"
check "$build/wend" order "$root"/routes/*.yaml --order "$root/tests/order/bad/country-unknown.yaml" --out "$work/docs"
check "$build/wend" manual
check "$build/wend" tables
export CK_FORK=no
check "$build/tests/test_design"
check "$build/tests/test_cases"
echo "$count route files under valgrind, nothing found"
