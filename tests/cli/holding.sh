# Sourced by the scripts beside it, in the folder where they work: they count in `passed` and `failed`. Nothing is read
# from a terminal.
exec </dev/null
passed=0 failed=0
expect() { # WHAT STATUS COMMAND...: what it prints is in `out` and `err`
    local what=$1 status=$2 rc=0
    shift 2
    "$@" >out 2>err || rc=$?
    if [ "$rc" = "$status" ]; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what: exit $rc, not $status"; cat err; fi
}
holds() { # WHAT COMMAND...
    local what=$1
    shift
    if "$@" >/dev/null 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what"; fi
}
columns() { # WHAT: of `out`
    holds "$1: no line over 80 columns" test "$(wc -L <out)" -le 80
}
