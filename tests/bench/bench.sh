#!/bin/bash
# bench.sh BUILD: prints the benchmark of that build. See bench.c.
set -eu
exec "$1/tests/wend_bench"
