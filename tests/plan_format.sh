#!/bin/sh
# plan_format.sh PROGRAM [record]: the schema of the plan and the page on it are what the list says that it is written
# from (src/documents/xml/plan_elements.inc). `record` makes them anew; look at the difference before you keep it.
set -u
program=$1
cd "$(dirname "$0")/.." || exit 1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
status=0
for pair in schema:templates/plan.rng page:routes/plan-format.md; do
    file=${pair#*:}
    "$program" "${pair%%:*}" >"$work/made" && [ -s "$work/made" ] || exit 1
    if [ "${2-check}" = record ]; then
        cp "$work/made" "$file"
    elif ! diff -u "$file" "$work/made"; then
        echo "$file is not what the list says: tests/plan_format.sh $program record"
        status=1
    fi
done
exit $status
