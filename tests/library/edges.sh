#!/bin/bash
# edges.sh EDGES LIBRARY: every function that the shared library shows is tried at its edges, and none is told wrongly.
set -eu
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
nm -D --defined-only "$2" | awk '{ print $3 }' | LC_ALL=C sort >"$work/shown"
[ "$(wc -l <"$work/shown")" -gt 50 ]
"$1" names | LC_ALL=C sort >"$work/tried"
diff "$work/shown" "$work/tried" || { echo "one of these has no row in edges.c"; exit 1; }
"$1"
