#!/bin/sh
# check_settled.sh: every key of the route file that would settle a check has plain words for the papers, where nobody has
# the file (src/documents/papers/papers_open.c).
set -u
cd "$(dirname "$0")/.." || exit 1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
sed -n 's/^    {"\([a-z0-9: -]*\)", SAY_SETTLE_.*/\1/p' src/documents/papers/papers_open.c | LC_ALL=C sort >"$work/known"
find src/design -name '*.c' -exec cat {} + | tr '\n' ' ' | sed 's/\.value = "[a-z-]*"//g' |
    grep -oE '(settles_key\(|key = )[^;)]*' | grep -oE '"[a-z0-9-]+(: [a-z0-9-]+)*"' | tr -d '"' |
    sed 's/^\(earthing: far-end\): .*/\1/' | LC_ALL=C sort -u >"$work/asked"
unsaid=$(LC_ALL=C comm -13 "$work/known" "$work/asked")
if [ "$(wc -l <"$work/asked")" -lt 20 ] || [ -n "$unsaid" ]; then
    echo "keys that settle a check and have no words (of $(wc -l <"$work/asked") found):" "$unsaid"
    exit 1
fi
echo "$(wc -l <"$work/asked") keys have their words"
