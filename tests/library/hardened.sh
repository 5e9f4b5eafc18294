#!/bin/bash
# hardened.sh BUILD: a release's program and shared library are what src/hardened.cmake says, as the finished files show.
set -u
build=$1
passed=0 failed=0
holds() { # WHAT COMMAND...
    local what=$1
    shift
    if "$@" >/dev/null 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what"; fi
}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for file in wend libwend.so; do
    readelf -W -h -l -d -s "$build/$file" >"$work/elf"
    holds "$file can lie anywhere in memory" grep -qE '^ *Type: +DYN' "$work/elf"
    holds "$file has its table of addresses read-only" grep -q 'GNU_RELRO' "$work/elf"
    holds "$file binds all names at once" grep -qE '\(FLAGS(_1)?\).*(BIND_NOW|NOW)' "$work/elf"
    holds "$file has no stack that can be run" sh -c '! grep -qE "GNU_STACK.*E *0x" "$1"' - "$work/elf"
    holds "$file guards its stack" grep -q '__stack_chk_fail' "$work/elf"
    holds "$file has the guarded functions of the C library" grep -qE '__(v?snprintf|memcpy|v?fprintf|printf|read)_chk' "$work/elf"
done
readelf -W -d "$build/wend" >"$work/elf"
holds "the program says that it is one" grep -qE 'FLAGS_1.*PIE' "$work/elf"
# jumps and large frames are seen in the code alone, and only on this kind of machine
if [ "$(uname -m)" = x86_64 ] && grep -q 'WEND_HAS_fcf_protection:INTERNAL=1' "$build/CMakeCache.txt"; then
    objdump -d --no-show-raw-insn --disassemble=main "$build/wend" >"$work/main"
    holds "jumps land where they may" grep -q 'endbr64' "$work/main"
fi
if [ "$(uname -m)" = x86_64 ] && grep -q 'WEND_HAS_fstack_clash_protection:INTERNAL=1' "$build/CMakeCache.txt"; then
    objdump -d --no-show-raw-insn "$build/wend" | grep -A 1 -E 'sub +\$0x1000,%rsp' >"$work/code"
    holds "large frames are touched page by page" grep -qE '(or|mov)[lq]? +\$0x0,(0x[0-9a-f]+)?\(%rsp\)' "$work/code"
fi
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ] && [ "$passed" -gt 12 ]
