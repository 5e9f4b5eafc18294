#!/bin/bash
# net.sh BUILD SOUND     what differs, document by document, between the tests/test_net of two builds, on the rows that the
#                        first says differ from net.tsv; as elements and lines, so that it can be read before it is kept
# net.sh record BUILD    writes net.tsv anew
set -u
case $# in 2) ;; *) sed -n '2,4s/^# //p' "$0"; exit 2 ;; esac
[ "$1" != record ] || exec "$2/tests/test_net" record
lines() { sed 's/></>\n</g; s/,"/,\n"/g'; } # an element or a key a line
"$1/tests/test_net" | awk -F'\t' 'NF == 2' | head -"${WEND_NET_MOST:-40}" | while IFS=$'\t' read -r row column; do
    echo "== $row: $column"
    diff <("$2/tests/test_net" print "$row" "$column" | lines) <("$1/tests/test_net" print "$row" "$column" | lines) | head -20
done
