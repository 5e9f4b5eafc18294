#!/bin/bash
# check_commands.sh: what README.md and DEVELOPERS.md tell a reader to run is what .ci/run runs, to the letter, and the
# packages that they have installed are those that the tests need.
set -u
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0 failed=0
holds() { # WHAT COMMAND...
    local what=$1
    shift
    if "$@" >"$work/said" 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what"; cat "$work/said"; fi
}
blocks() { # FILE...: by other means than .ci/run
    sed -n '/^```sh$/,/^```$/p' "$@" | grep -v '^```'
}

bash .ci/run list >"$work/listed"
blocks README.md >"$work/readme"
blocks README.md DEVELOPERS.md >"$work/told"
holds "all that is told is run, and nothing else" diff "$work/told" "$work/listed"
holds "README has two commands" test "$(wc -l <"$work/readme")" = 2
holds "its second runs the tests" test "$(sed -n 2p "$work/readme")" = "bash tests/all.sh"
holds "the deep tests come last" grep -q 'bash tests/all.sh deep$' <(tail -1 "$work/listed")

# told otherwise, something else is run
mkdir -p "$work/copy/.ci"
cp .ci/run "$work/copy/.ci"
printf '```\nnot this\n```\n```sh\nfalse && \\\n  echo one\n```\nnor this\n```sh\necho two >made\n```\n' >"$work/copy/README.md"
printf '```sh\necho three\n```\n' >"$work/copy/DEVELOPERS.md"
holds "another text is followed" test "$(bash "$work/copy/.ci/run" list)" = 'false && \
  echo one
echo two >made
echo three'
holds "listing runs nothing" test ! -e "$work/copy/made"
holds "a command that fails ends it" sh -c "! bash '$work/copy/.ci/run'"
holds "there" test ! -e "$work/copy/made"
sed -i 's/^false/true/' "$work/copy/README.md"
holds "one that does not, does not" bash "$work/copy/.ci/run"
holds "and all are run" test "$(cat "$work/copy/made")" = two

# Alone the two names before the first command are options of apt-get
sed -n 1p "$work/readme" | grep -oE 'apt-get install [^&]*' | tr ' ' '\n' | grep -vE '^(apt-get|install|-.*|)$' | sort >"$work/installed"
bash tests/all.sh packages | sort >"$work/packages"
holds "README installs what its tests need" diff "$work/packages" "$work/installed"
holds "every named preset is there" sh -c '
    for preset in $(grep -ohE -- "--preset [a-z]+" README.md DEVELOPERS.md | cut -d" " -f2); do
        cmake --list-presets=all | grep -q "\"$preset\"" || { echo "no preset $preset"; exit 1; }
    done'
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
