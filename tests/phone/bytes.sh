#!/bin/bash
# bytes.sh WEND BUILD: the third compiler. Builds the engine for a browser in BUILD/engine and holds it in node against the
# program, byte for byte, over all routes and bad files. Where a tool is missing it is skipped, with a word.
set -u
wend=$(readlink -f "$1") build=$(readlink -f "$2")
root=$(cd "$(dirname "$0")/../.." && pwd)
skip() { echo "skipped: $1"; exit 77; }
for tool in node clang wasm-ld; do command -v "$tool" >/dev/null || skip "there is no $tool on this machine"; done
[ -f /usr/lib/wasm32-wasi/libc.a ] || skip "there is no wasi-libc on this machine"
[ -f "$(clang --target=wasm32-wasi -print-libgcc-file-name)" ] || skip "there is no libclang-rt for wasm32 on this machine"
sources=${WEND_PHONE_SOURCES:-$build/phone-sources}
sh "$root/src/phone/sources.sh" "$sources" || skip "the sources of the libraries could not be fetched"
cmake -S "$root" -B "$build/engine" -DCMAKE_TOOLCHAIN_FILE="$root/src/phone/wasi.cmake" -DCMAKE_BUILD_TYPE=MinSizeRel \
    -DWEND_PHONE_SOURCES="$sources" -DWEND_WERROR=ON >"$build/engine.log" 2>&1 &&
    cmake --build "$build/engine" --target engine --parallel 2 >>"$build/engine.log" 2>&1 || { tail -30 "$build/engine.log"; exit 1; }
node "$root/tests/phone/bytes.cjs" "$wend" "$build/engine/engine.wasm" "$root"
