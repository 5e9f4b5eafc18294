#!/bin/bash
# all.sh               builds the program with its tests and runs every suite but the long ones
# all.sh deep          the long ones too: every sweep in full, the second compiler, sanitizers, valgrind, form and static
#                      checks, browsers, the HTML checker, a general solver, the benchmark
# all.sh packages [deep]   the Debian packages that it needs
# all.sh needs [deep]      those of them that are not installed
# Ends with a line "N passed, N failed", and ", N skipped" where something was; non-zero when anything failed. Nothing that
# was skipped counts as passed, and in `deep` a missing tool is a failure.
set -u
cd "$(dirname "$0")/.."

quick_packages="gcc libc6-dev make cmake pkg-config libyaml-dev libxml2-dev libxslt1-dev libcjson-dev check"
deep_packages="clang clang-format clang-tidy libclang-rt-14-dev lld wasi-libc libclang-rt-14-dev-wasm32 valgrind nodejs npm chromium librsvg2-bin
    default-jre-headless w3c-sgml-lib fonts-dejavu-core glpk-utils libxml2-utils mandoc lintian dpkg-dev python3 zsh fish"

packages() { # [deep]
    printf '%s\n' $quick_packages
    [ "${1-}" != deep ] || printf '%s\n' $deep_packages
}

needs() { # [deep]
    local package
    for package in $(packages "${1-}"); do
        # node and npm may have come from elsewhere, and then Debian's own would be in conflict with them
        case $package in nodejs) command -v node >/dev/null && continue ;; npm) command -v npm >/dev/null && continue ;; esac
        dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || printf '%s\n' "$package"
    done
}

passed=0 failed=0 skipped=0
finish() {
    printf '%d passed, %d failed' "$passed" "$failed"
    [ "$skipped" = 0 ] || printf ', %d skipped' "$skipped"
    printf '\n'
    [ "$failed" = 0 ] && [ "$passed" -gt 0 ]
    exit
}

suite() { # NAME COMMAND...: one that passes or fails as a whole
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

number_of() { # ATTRIBUTE FILE: of the whole run
    local found
    found=$(grep -m 1 -oE "\\b$1=\"[0-9]+\"" "$2" | grep -oE '[0-9]+')
    echo "${found:-0}"
}

# What a skipped test says of it, or its name
skipped_tests() { # FILE
    awk '/<testcase / { match($0, /name="[^"]*"/); name = substr($0, RSTART + 6, RLENGTH - 7) }
         /<skipped / { print name }' "$1"
}

tests() { # NAME BUILD-PRESET TEST-PRESET: built, and each test counted
    local name=$1 build=$2 preset=$3 start=$SECONDS rc=0 bad lost
    local report=$PWD/build/$preset.tests.xml
    printf '==== %s\n' "$name"
    rm -f "$report"
    if ! { cmake --preset "$build" >"build/$build.log" 2>&1 && cmake --build --preset "$build" >>"build/$build.log" 2>&1; }; then
        tail -40 "build/$build.log"
        failed=$((failed + 1))
        printf '==== %s: FAILED to build\n' "$name"
        return
    fi
    printf '==== built in %d s\n' $((SECONDS - start))
    ctest --preset "$preset" --output-junit "$report" || rc=$?
    bad=$(number_of failures "$report") lost=$(skipped_tests "$report" | wc -l)
    [ "$rc" = 0 ] || [ "$bad" -gt 0 ] || bad=1
    passed=$((passed + $(number_of tests "$report") - $(number_of failures "$report") - lost))
    failed=$((failed + bad))
    grep -ihoE '(^|>)skipped:.*' "$report" | sed 's/^>//'
    if [ "$deep" = deep ]; then
        # what is published elsewhere and is no package may be missing (a schema, the sources of libraries), and nothing else
        local unlawful
        unlawful=$(skipped_tests "$report" | grep -vcE '^(order-schema|phone-bytes)$')
        [ "$unlawful" = 0 ] || printf 'FAILED: skipped here: %s\n' "$(skipped_tests "$report" | tr '\n' ' ')"
        failed=$((failed + unlawful)) lost=$((lost - unlawful))
    fi
    skipped=$((skipped + lost))
    printf '==== %s: %s in %d s\n' "$name" "$([ "$rc" = 0 ] && echo done || echo FAILED)" $((SECONDS - start))
}

deep=
case ${1-} in
    '') ;;
    deep) deep=deep ;;
    packages | needs) "$1" "${2-}"; exit ;;
    *) sed -n '2,8s/^# //p' "$0"; exit 2 ;;
esac
missing=$(needs "$deep" | tr '\n' ' ')
if [ -n "$missing" ]; then
    printf 'packages are missing; this installs them (as root or with sudo):\n'
    printf '    apt-get update && apt-get install -y --no-install-recommends %s\n' "$missing"
    failed=1
    finish
fi
mkdir -p build

if [ -z "$deep" ]; then
    tests "the tests" quick quick
    echo "not in this run: browsers, the second compiler, sanitizers, long sweeps (bash tests/all.sh deep)"
    finish
fi
export WEND_SKIP_NOTHING=1
tests "gcc, every test" release release
suite "form of the code" cmake --build build/release --target style
suite "static checks" cmake --build build/release --target tidy
tests "clang" clang clang
suite "the two compilers write the same bytes" bash tests/same_bytes.sh build/release/wend build/clang/wend
tests "address and undefined sanitizers" sanitize sanitize
suite "valgrind" bash tests/valgrind.sh build/clang
suite "what is left out is named" bash tests/recipes.sh
suite "completion in each shell" python3 tests/cli/completion.py build/release/wend
suite "Debian packages and pages of the manual" bash tests/library/packaged.sh
suite "benchmark" bash tests/bench/bench.sh build/release
finish
