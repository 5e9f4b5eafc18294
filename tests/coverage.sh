#!/bin/bash
# coverage.sh run [BUILD]    what the quick tests run of the code, each test's counts kept apart in BUILD/covers; BUILD is
#                            build/coverage, made by cmake --preset coverage && cmake --build --preset coverage
# coverage.sh whole [BUILD]  the same in one count, sooner: the shares and no more, mutants.sh learns nothing of it
# coverage.sh print [BUILD]  lines and branches run, by folder, and the share without what coverage_left_out.tsv lists; what
#                            is not run is kept in BUILD/not-run, branches in BUILD/not-taken. A listed row that leaves
#                            out nothing is a failure.
# Branches are those that a condition of ours takes: the compiler's own for calls that may not come back are left out.
# tests/mutants.sh goes by the same counts: a mistake at a line is tried with the tests that run it.
set -eu
cd "$(dirname "$0")/.."
here=$PWD
[ $# -ge 1 ] || { sed -n '2,10s/^# //p' "$0"; exit 2; }
build=$(readlink -f "${2:-build/coverage}")
covers=$build/covers
export CK_DEFAULT_TIMEOUT=600 GCOV_PREFIX_STRIP=0

begin() { # a run that was ended goes on where it was, of another source everything is counted anew
    diff -r src "$covers/src" >/dev/null 2>&1 || rm -rf "$covers"
    mkdir -p "$covers"
    [ -d "$covers/src" ] || cp -r src "$covers/src"
    # a program that a test ends, as a route's watcher, leaves its counts too
    printf '#include <signal.h>\n#include <stdlib.h>\n__attribute__((constructor)) static void leaves(void) { signal(SIGTERM, exit); }\n' |
        gcc -shared -fPIC -x c - -o "$covers/leaves.so"
    export LD_PRELOAD=$covers/leaves.so
}

counted() { # TEST COMMAND...: its counts
    local into=$covers/$(echo "$1" | tr / _)
    shift
    [ ! -e "$into.done" ] || return 0
    rm -rf "$into"
    mkdir -p "$into"
    (cd "$build/tests" && GCOV_PREFIX=$into "$@" >"$into.said" 2>&1) || echo "$(basename "$into") fails, see $into.said"
    touch "$into.done"
}

# the lines that a test ran, FILE:LINE
lines_of() { # TEST FOLDER...
    local test=$1 into=$covers/$1 folder
    shift
    [ -e "$covers/$test.lines" ] && return
    for folder in "$@"; do
        (cd "$build" && find "src/CMakeFiles/wend_$folder.dir" -name '*.gcno' -exec cp -l --parents -t "$into$build" {} + 2>/dev/null) || :
        (cd "$into$build" 2>/dev/null && find "src/CMakeFiles/wend_$folder.dir" -name '*.gcda' -exec gcov -t {} + 2>/dev/null) || :
    done | awk -F: '$2 + 0 == 0 && $3 == "Source" { file = $4; sub(/.*\/src\//, "src/", file); next }
        $1 ~ /[0-9]/ { line = $2; gsub(/ /, "", line); print file ":" line }' | sort -u >"$covers/$test.lines"
}

case $1 in
    run)
        begin
        for name in $(bash tests/mutants.sh tests); do
            case $name in
                */*) counted "$name" bash "$here/tests/$name" "$build/wend" ;;
                *) counted "$name" "./$name" ;;
            esac
            lines_of "$(echo "$name" | tr / _)" design takeoff tables read words
        done
        rest=$(bash tests/mutants.sh tests | sed 's|.*/||; s|\.sh$||' | paste -sd'|')
        counted rest ctest --test-dir "$build" -LE 'rendered|solver|deep' -E "^($rest)\$" -j2
        ;;
    whole)
        rm -rf "$covers"
        begin
        # a process of a suite writes its counts once so; what is to end by a signal needs one of its own
        CK_FORK=no counted whole ctest --test-dir "$build" -LE 'rendered|solver|deep' -E '^test_base$' -j2
        counted base ./test_base
        ;;
    print)
        rm -rf "$covers/all"
        for done in "$covers"/*.done; do
            one=${done%.done}$build
            [ -d "$one" ] || continue
            find "$one" -name '*.gcno' -delete
            if [ -d "$covers/all" ]; then
                gcov-tool merge -o "$covers/sum" "$covers/all" "$one" >/dev/null 2>&1
                rm -rf "$covers/all"
                mv "$covers/sum" "$covers/all"
            else
                cp -r "$one" "$covers/all"
            fi
        done
        (cd "$build" && find src -name '*.gcno' -exec cp -l --parents -t "$covers/all" {} +)
        rm -f "$build/not-run" "$build/not-taken"
        (cd "$covers/all" && find src -name '*.gcda' -exec gcov -t -b -c {} + 2>/dev/null) | awk -v missing="$build/not-run" \
            -v untaken="$build/not-taken" -f tests/coverage.awk tests/coverage_left_out.tsv - >"$build/report" || bad=1
        cat "$build/report"
        # a run that was ended says how far it came; all is the tests that decide and one count of the rest
        done=$(ls "$covers"/*.done | wc -l) all=$(($(bash tests/mutants.sh tests | wc -l) + 1))
        [ ! -e "$covers/whole.done" ] || all=2
        echo "$(tail -1 "$build/report")$([ "$done" -ge "$all" ] || echo " by $done of $all counts")" >"$build/share"
        exit "${bad:-0}"
        ;;
esac
