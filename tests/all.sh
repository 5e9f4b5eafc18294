#!/bin/bash
# Installs what the tests need and runs every suite: gcc, clang, sanitizers, valgrind, style, static checks, pictures.
# Ends with a line "N passed, N failed"; non-zero when anything failed.
set -u
cd "$(dirname "$0")/.."
sudo=$(command -v sudo || :)
packages="gcc libc6-dev make cmake pkg-config libyaml-dev libxml2-dev libxslt1-dev libxml2-utils check clang clang-format clang-tidy
    libclang-rt-14-dev valgrind nodejs npm chromium librsvg2-bin default-jre-headless w3c-sgml-lib fonts-dejavu-core
    glpk-utils"
export DEBIAN_FRONTEND=noninteractive
missing=
for package in $packages; do
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing="$missing $package"
done
# node and npm count as there when they are on the path, from wherever they came
command -v node >/dev/null && command -v npm >/dev/null && missing=$(printf '%s ' $missing | sed 's/\bnodejs\b//; s/\bnpm\b//')
if [ -n "${missing// /}" ]; then
    $sudo apt-get update -qq && $sudo apt-get install -y -qq --no-install-recommends $missing >/dev/null || exit 1
fi

passed=0 failed=0
suite() { # NAME COMMAND...
    local name=$1 start=$SECONDS
    shift
    printf '==== %s\n' "$name"
    if "$@"; then
        passed=$((passed + 1))
        printf '==== %s: passed in %d s\n' "$name" $((SECONDS - start))
    else
        failed=$((failed + 1))
        printf '==== %s: FAILED after %d s\n' "$name" $((SECONDS - start))
    fi
}

suite "gcc, every test" cmake --workflow --preset release
suite "form of the code" cmake --build build/release --target style
suite "static checks" cmake --build build/release --target tidy
suite "clang, every test" cmake --workflow --preset clang
suite "address and undefined sanitizers" cmake --workflow --preset sanitize
suite "the two compilers write the same bytes" bash tests/same_bytes.sh build/release/wend build/clang/wend
suite "valgrind" bash tests/valgrind.sh build/clang
suite "benchmark" bash tests/bench/bench.sh build/release

printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" -eq 0 ]
