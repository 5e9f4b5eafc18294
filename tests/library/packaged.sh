#!/bin/bash
# packaged.sh: the Debian packages are built as README.md says, pass lintian, hold what they should, and work from where they
# are unpacked; the pages of the manual pass mandoc's own checks.
set -u
root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0 failed=0
holds() { # WHAT COMMAND...
    local what=$1
    shift
    if "$@" >"$work/said" 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what"; tail -20 "$work/said"; fi
}
cd "$root" || exit 1
rm -f build/package/*.deb
holds "the packages are built" cmake --workflow --preset package
version=$(sed -n 's/^project(wend VERSION \([0-9.]*\) .*/\1/p' CMakeLists.txt)
cd build/package || exit 1
for package in wend libwend${version%%.*} libwend-dev; do
    file=$(ls "$package"_"$version"_*.deb)
    holds "$package is of this version" test "$(dpkg-deb -f "$file" Version)" = "$version"
    lintian --allow-root --profile debian "$file" >"$work/lintian" 2>&1
    holds "lintian has nothing against $package" sh -c '! grep . "$1"' - "$work/lintian"
    holds "$package is unpacked" dpkg-deb -x "$file" "$work/tree"
done
depends=$(dpkg-deb -f libwend[0-9]*_*.deb Depends)
for library in $(ldd "$work"/tree/usr/lib/*/libwend.so.*.*.* | awk '$2 == "=>" { print $3 }'); do
    holds "libwend asks for the package of $library" grep -qwF "$(dpkg-query -S "*$library" | sed 's/:.*//;q')" <(echo "$depends")
done
holds "it asks for what is loaded late" sh -c 'dpkg-deb -f wend_*.deb Depends | grep libxml2 | grep -q libxslt'
cd "$work" || exit 1
holds "the program tells its version" test "$(tree/usr/bin/wend --version)" = "wend $version"
for route in tree/usr/share/doc/wend/examples/*.yaml; do
    holds "$(basename "$route") is planned" tree/usr/bin/wend plan "$route" --out "drawings"
done
holds "many routes are" test "$(ls drawings/*.plan.xml | wc -l)" -gt 5
holds "by the installed templates too" tree/usr/bin/wend plan "$route" --out again --templates tree/usr/share/wend/templates
holds "to the same papers" diff <(cat again/*.html) <(cd drawings && cat "$(basename "$route" .yaml)".*.html)
holds "the schema fits" xmllint --noout --relaxng tree/usr/share/wend/plan.rng drawings/*.plan.xml
for page in man1/wend.1 man5/wend-route.5 man5/wend-order.5 man5/wend-labour.5; do
    gunzip <"tree/usr/share/man/$page.gz" >page
    mandoc -Tlint page | grep -v 'referenced manual not found' >lint # none is installed on this machine
    holds "mandoc has nothing against $page" sh -c '! grep . lint'
    holds "$page is read" sh -c 'test "$(mandoc page | wc -l)" -gt 100'
done
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
