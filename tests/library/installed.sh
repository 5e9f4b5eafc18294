#!/bin/bash
# installed.sh BUILD: the build is installed into a folder of its own, and used from there as README.md says: its C and its
# Python example, by pkg-config and by find_package(); then taken away again.
set -u
build=$(readlink -f "$1")
root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
passed=0 failed=0
holds() { # WHAT COMMAND...
    local what=$1
    shift
    if "$@" >said 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED $what"; cat said; fi
}
block() { # LANGUAGE: of README.md
    sed -n "/^\`\`\`$1\$/,/^\`\`\`\$/p" "$root/README.md" | grep -v '^```'
}

cp "$build/install_manifest.txt" kept 2>/dev/null # one's own installation can still be taken away afterwards
holds "it is installed" cmake --install "$build" --prefix "$work/usr"
lib=$(dirname "$(find usr -name libwend.so)")
for file in bin/wend include/wend/wend.h share/wend/plan.rng; do
    holds "$file is there" test -f "usr/$file"
done
for file in wend/plan.rng wend/papers.rng wend/templates/brief.xsl wend/templates/house.css doc/wend/copyright doc/wend/README.md \
    doc/wend/route-format.md doc/wend/plan-format.md doc/wend/examples/cider-barn.yaml bash-completion/completions/wend zsh/site-functions/_wend \
    fish/vendor_completions.d/wend.fish; do
    holds "$file is there" test -s "usr/share/$file"
done
for page in man1/wend.1 man5/wend-route.5 man5/wend-order.5 man5/wend-labour.5; do
    holds "the page $page is there" sh -c 'test -s "$1" || gzip -t "$1.gz"' - "usr/share/man/$page"
done
holds "an installed route is planned" usr/bin/wend check usr/share/doc/wend/examples/cider-barn.yaml
for file in libwend.so libwend.so.1 libwend.a pkgconfig/wend.pc cmake/wend/wendConfig.cmake; do
    holds "$file is there" test -f "$lib/$file"
done
holds "no other header is" test "$(find usr/include -type f)" = usr/include/wend/wend.h

# The program and its manual are of this version
version=$(sed -n 's/^project(wend VERSION \([0-9.]*\) .*/\1/p' "$root/CMakeLists.txt")
holds "the program tells its version" test "$(usr/bin/wend --version)" = "wend $version"
export PKG_CONFIG_PATH=$work/$lib/pkgconfig LD_LIBRARY_PATH=$work/$lib
holds "pkg-config tells it too" test "$(pkg-config --modversion wend)" = "$version"

# What the library shows
names() { sed -n 's/^WEND_PUBLIC .*[ *]\(wend_[a-z_]*\)(.*/\1/p' usr/include/wend/wend.h | sort; }
names >declared
nm -D --defined-only "$lib/libwend.so" | awk '{ print $3 }' | sort >shown
nm -g --defined-only "$lib/libwend.a" | awk 'NF == 3 { print $3 }' | sort >shown-static
holds "many functions are declared" test "$(wc -l <declared)" -gt 50
holds "the shared library shows those and nothing else" diff declared shown
holds "and the static one" diff declared shown-static
readelf -d "$lib/libwend.so" >dynamic
holds "its soname is of the major version" grep -qF "soname: [libwend.so.${version%%.*}]" dynamic
for name in $(cat declared); do
    holds "$name is tried" grep -q "\b$name(" "$root/tests/library/public_face.c"
done

# The header alone, in plain C and in C++
echo '#include <wend/wend.h>' >header.c
flags="-Wall -Wextra -Wpedantic -Werror"
holds "the header is C99" cc -std=c99 $flags -fsyntax-only -Iusr/include header.c
cxx=$(command -v c++ || command -v g++ || command -v clang++)
if [ -n "$cxx" ]; then
    holds "the header is C++" "$cxx" -x c++ -std=c++11 $flags -fsyntax-only -Iusr/include header.c
fi

# By pkg-config
use="$(pkg-config --cflags --libs wend)"
holds "a program that knows wend.h alone is built" cc -std=c99 $flags "$root/tests/library/public_face.c" -o face $use
holds "every function takes NULL" ./face
holds "it is built with the static library" cc -std=c99 "$root/tests/library/public_face.c" -o face-static \
    $(pkg-config --cflags wend) "$lib/libwend.a" $(pkg-config --static --libs wend | sed 's/-lwend\b//')
holds "which does the same" env -u LD_LIBRARY_PATH ./face-static
block c >example.c
holds "the C example is 40 lines at most" test "$(wc -l <example.c)" -le 40
holds "the C example is built" cc -std=c99 $flags example.c -o example $use
mkdir by-c by-python by-program
(cd by-c && ../example >said.txt 2>told.txt)
holds "the C example runs" test $? = 0
holds "it prints the verdict" grep -q '^OPEN: ' by-c/said.txt
holds "it prints the diagnostics" grep -q '^boathouse.yaml:10:.*warning: .*\[cover-shallow\]$' by-c/told.txt
# the program says the same of the same route
sed -n 's/^ *"\(.*\)\\n".*/\1/p' example.c >boathouse.yaml
usr/bin/wend plan boathouse.yaml --out by-program >/dev/null 2>by-program/told.txt
holds "its list is the program's" cmp by-c/boathouse.parts.csv by-program/boathouse.parts.csv
holds "its diagnostics are the program's" cmp by-c/told.txt by-program/told.txt

# By CMake
mkdir project
block cmake >project/lines
holds "three lines of CMake" test "$(wc -l <project/lines)" = 3
{ printf 'cmake_minimum_required(VERSION 3.25)\nproject(example C)\n'; cat project/lines; } >project/CMakeLists.txt
cp example.c project/
holds "find_package finds it" cmake -S project -B project/build -DCMAKE_PREFIX_PATH="$work/usr"
holds "and it is built" cmake --build project/build
(mkdir by-cmake && cd by-cmake && env -u LD_LIBRARY_PATH ../project/build/example >said.txt 2>told.txt)
holds "and does the same" diff -r by-c by-cmake
sed -i 's/find_package(wend/& 2.0/' project/CMakeLists.txt
holds "another major version is not taken" sh -c '! cmake -S project -B project/other -DCMAKE_PREFIX_PATH="$1/usr"' - "$work"

# By Python
if python3 -c 'import ctypes' 2>/dev/null; then
    block python >example.py
    (cd by-python && python3 ../example.py >said.txt 2>told.txt)
    holds "the Python example runs" test $? = 0
    holds "and does the same" diff -r by-c by-python
else
    echo "not run: the Python example, for there is no python3"
fi

cp -a usr kept-tree
holds "it can be moved" sh -c 'PKG_CONFIG_PATH=$1/kept-tree/${2#usr/}/pkgconfig pkg-config --cflags wend | grep -q "^-I$1/kept-tree/"' - "$work" "$lib"
holds "it is taken away" cmake --build "$build" --target uninstall
holds "nothing is left" test -z "$(find usr ! -type d)"
holds "none of its folders" test -z "$(find usr -name wend)"
[ ! -e kept ] || cp kept "$build/install_manifest.txt"
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ] && [ "$passed" -gt 90 ]
