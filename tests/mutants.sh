#!/bin/bash
# mutants.sh [N] [SEED]    N mistakes drawn by lot over design, takeoff, tables, read and words, each made in a copy of the
#                          program and held against the tests that decide: which test saw it, or that none did
# mutants.sh aimed [PART]  the mistakes of mutants/aimed.tsv, at lines that bear on safety: every one must be seen; with
#                          PART those whose rows hold it. The row's last column is the test that is tried first
# mutants.sh at FILE:LINE  every mistake that can be drawn on that line
# mutants.sh tests         the tests that are tried
# The folder of the copy is WEND_MUTANTS (build/mutants); its next run builds only what has changed. A mistake that can
# make no difference is a row of mutants/equivalent.tsv, which says why, and is not counted; nor is one of which the compiler
# makes the same object. Where coverage.sh was run a mistake is tried with the tests that run its line. What only the net or a
# golden file sees is told apart: they know that something has changed and not what is right. With WEND_MUTANTS_FIRST=1 that
# is not asked: the first that sees it is enough.
set -eu
cd "$(dirname "$0")/.."
here=$PWD
copy=${WEND_MUTANTS:-$here/build/mutants}
floor_percent=85 # of those drawn by lot; of those aimed, 100; of fewer than 20, which say little, 50
mode=lot part= number=40 seed=20261128
case ${1-} in
    aimed | at | tests) mode=$1 part=${2-} ;;
    '' | [0-9]*) number=${1:-$number} seed=${2:-$seed} ;;
    *) sed -n '2,12s/^# //p' "$0"; exit 2 ;;
esac
folders="design takeoff tables read words"
export CK_DEFAULT_TIMEOUT=60

# What notices that something has changed; asked first, since it ends at the first difference.
nets="test_net golden/compare.sh"
# Those that know what is right, the cheapest that bite first. A suite with a slash is a script that is given the program.
tests_of() { # FOLDER
    case $1 in
        read) echo test_bad_files test_base test_library test_hostile test_prices test_order found/run.sh test_read test_labour cli/command_line.sh cli/whatif.sh \
               test_ranges test_language test_schema test_changed ;;
        words) echo test_words test_sayings test_languages test_explain test_fault found/run.sh test_order cli/questions.sh ;;
        tables) echo test_tables test_fault_tables test_mechanics test_takeoff test_location test_fault test_editions test_design found/run.sh cli/known.sh test_order ;;
        takeoff) echo test_takeoff test_parts_cut test_prices test_library test_order found/run.sh test_takeoff_relations cli/order.sh ;;
        *) echo test_design test_cases test_factors test_unbalanced test_assumed test_location test_mechanics test_mechanics_routes \
               test_outbuilding test_earth_ends test_explain test_library test_takeoff found/run.sh test_fault \
               test_editions test_brief cli/questions.sh test_options test_nearest test_decides test_told test_measured test_ranges test_reach ;;
    esac
}

if [ "$mode" = tests ]; then
    for folder in $folders; do echo $nets $(tests_of "$folder") | tr ' ' '\n'; done | sort -u
    exit
fi

prepare() { # the copy, built
    rm -rf "$copy/sound"
    mkdir -p "$copy/tree" "$copy/sound"
    tar -cf - CMakeLists.txt CMakePresets.json README.md DEVELOPERS.md include routes src templates tests | tar -xf - -C "$copy/tree"
    # what a run that was ended left changed there is older than its object now
    [ ! -f "$copy/changed" ] || touch "$copy/tree/$(cat "$copy/changed")"
    cmake -S "$copy/tree" -B "$copy/build" -G "Unix Makefiles" -DCMAKE_BUILD_TYPE= -DCMAKE_C_FLAGS="-w -O1" -DWEND_WERROR=OFF >"$copy/log"
    # the rest is built when it is first tried
    cmake --build "$copy/build" -j2 --target wend test_net $(cd "$copy/build/tests" && ls -d test_* 2>/dev/null) >>"$copy/log" ||
        { tail -40 "$copy/log"; exit 1; }
}

relink() ( # PROGRAM
    cd "$copy/build/tests"
    [ "$1" != wend ] || cd "$copy/build/src"
    if [ "$1" != wend ] && [ ! -x "$1" ]; then flock "$copy/log" cmake --build "$copy/build" -j2 --target "$1" >>"$copy/log" 2>&1; exit; fi
    sh "CMakeFiles/$1.dir/link.txt" >/dev/null 2>&1
)

program() { [ -x "$copy/build/wend" ] && echo "$copy/build/wend" || echo "$copy/build/src/wend"; }

bites() { # TEST: it fails
    local said=$copy/said.${1//\//_} first=
    [ "$1" != test_net ] || first=first
    ulimit -v 2000000
    case $1 in
        */*) ! timeout 200 bash "$copy/tree/tests/$1" "$(program)" ;;
        *) relink "$1" && ! (cd "$copy/build/tests" && timeout 200 "./$1" $first) ;;
    esac >"$said" 2>&1
}

# FILE's object is src/CMakeFiles/wend_FOLDER.dir/FILE.o, and it stands in the archive of its folder.
object_of() { echo "src/CMakeFiles/wend_${1%%/*}.dir/$1.o"; }
archive() { # FILE below src
    ar r "$copy/build/src/libwend_${1%%/*}.a" "$copy/build/$(object_of "$1")" >/dev/null 2>&1
}
compile() { # FILE
    local below=${1#src/}
    (cd "$copy/build" && rm -f "$(object_of "$below")" && make -s -f "src/CMakeFiles/wend_${below%%/*}.dir/build.make" "$(object_of "$below")") >"$copy/said" 2>&1 && archive "$below"
}
restore() { # FILE, and its object as it was, younger than it
    local object
    object=$copy/build/$(object_of "${1#src/}")
    cp "$1" "$copy/tree/$1"
    cp "$copy/object" "$object"
    touch "$object"
    archive "${1#src/}"
    rm "$copy/changed"
}

# The tests that run the line, by coverage.sh of the same file; all of them where that was not run or none does.
tests_at() { # FILE LINE
    local below=${1#src/} covers=build/coverage/covers lines_run test found= run=
    if cmp -s "$1" "$covers/$1"; then
        for test in $(tests_of "${below%%/*}"); do
            lines_run=$covers/$(echo "$test" | tr / _).lines
            if [ ! -e "$lines_run" ]; then found="$found $test"; continue; fi
            ! grep -qx "$1:$2" "$lines_run" || { found="$found $test"; run=yes; }
        done
    fi
    [ -n "$run" ] && echo $found || tests_of "${below%%/*}"
}

# Whether TEST passes without the mistake that now stands in FILE: one that does not sees nothing. Asked once of each.
sound() { # FILE TEST
    local below=${1#src/} known object result=0
    known=$copy/sound/$(echo "$2" | tr / _)
    object=$copy/build/$(object_of "$below")
    [ ! -e "$known" ] || return 0
    cp "$object" "$copy/mistaken"
    cp "$copy/object" "$object"
    archive "$below"
    relink wend
    if (bites "$2"); then
        echo "$2 fails without any mistake" >&2
        result=1
    else
        touch "$known"
    fi
    cp "$copy/mistaken" "$object"
    archive "$below"
    relink wend
    return "$result"
}

sees() { (bites "$2") && sound "$1" "$2"; } # FILE TEST

# The first of the tests that sees the mistake that now stands in FILE; two of them are tried at a time.
first_of() { # FILE TEST...
    local file=$1 pair test
    shift
    while [ $# -gt 0 ]; do
        pair=("${@:1:2}")
        shift ${#pair[@]}
        for test in "${pair[@]}"; do { (bites "$test") && : >"$copy/bit.${test//\//_}"; } & done
        wait
        for test in "${pair[@]}"; do
            [ -e "$copy/bit.${test//\//_}" ] || continue
            rm "$copy/bit.${test//\//_}"
            if sound "$file" "$test"; then rm -f "$copy"/bit.*; echo "$test"; return; fi
        done
    done
}

# Which test sees the mistake that now stands in FILE, "TEST alone" when that is one of the nets and no other does; nothing
# when none does, "-" when it is no C, "=" when it makes the same object.
seen_by() { # FILE LINE [TEST to try first]
    local net= test=
    compile "$1" || { echo -; return; }
    ! cmp -s "$copy/object" "$copy/build/$(object_of "${1#src/}")" || { echo =; return; }
    relink wend || { echo -; return; }
    if [ -z "${3-}" ] && sees "$1" test_net; then net=test_net; fi
    if [ -n "$net" ] && [ -n "${WEND_MUTANTS_FIRST-}" ]; then echo "$net"; return; fi
    test=$(first_of "$1" ${3-} $(tests_at "$1" "$2"))
    if [ -n "$test" ]; then echo "$test"; return; fi
    for test in $nets; do
        if [ "$net" = "$test" ] || { [ -z "$net" ] && sees "$1" "$test"; }; then echo "$test alone"; return; fi
    done
}

drawn() { # rows of draw.awk
    local files
    files=$(for folder in $folders; do find "src/$folder" -name '*.c' | sort; done)
    case $mode in
        # as many of each folder, by a generator of our own, so that every awk draws the same
        lot) awk -f tests/mutants/draw.awk $files | awk -F'\t' -v n="$number" -v seed="$seed" '
                function lot(below) { seed = (seed * 16807) % 2147483647; return 1 + seed % below }
                { rows[$1, ++count[$1]] = $0; if (count[$1] == 1) names[++folders] = $1 }
                END { for (i = 0; i < n; i++) { name = names[1 + i % folders]; row = rows[name, lot(count[name])]; if (!twice[row]++) print row } }' ;;
        at) awk -f tests/mutants/draw.awk "${part%:*}" | awk -F'\t' -v line="${part##*:}" '$3 == line' ;;
        aimed) awk -F'\t' -v part="$part" 'FNR == 1 || !index($0, part) { next }
                { found = 0; line = 0; split($1, dir, "/")
                  while ((getline text < $1) > 0) { line++; at = index(text, $3)
                      if (at && ++found == $2) { print dir[2] "\t" $1 "\t" line "\t" at "\t" length($3) "\t" $4 "\taimed\t" $6; break } }
                  close($1)
                  if (found < $2) print "gone\t" $1 "\t0\t0\t0\t" $3 "\taimed" }' tests/mutants/aimed.tsv ;;
    esac
}

alone_of() { [ -n "${WEND_MUTANTS_FIRST-}" ] || echo ", $alone of them by the net or a golden file alone"; }

# What was measured so far, also of a run that is ended before its last; claims.sh takes it.
left_share() {
    local tried=$((killed + survived))
    [ "$mode$part" = "$mode" ] && [ "$mode" != at ] && [ "$tried" -gt 0 ] || return 0
    echo "$killed of $tried seen, $((100 * killed / tried)) %$(alone_of)$([ $((tried + equal + no_c + gone)) = "$due" ] || echo " (the first of $due$([ "$mode" != lot ] || echo " of seed $seed"))")" >"$copy/$mode.share"
}

prepare
lines=$copy/lines
drawn >"$lines"
due=$(wc -l <"$lines")
killed=0 alone=0 survived=0 equal=0 no_c=0 gone=0
while IFS=$'\t' read -r folder file line column length to kind first; do
    [ "$folder" != gone ] || { echo "no such text in $file: $to"; gone=$((gone + 1)); continue; }
    cp "$copy/build/$(object_of "${file#src/}")" "$copy/object"
    echo "$file" >"$copy/changed"
    to=$to awk -v line="$line" -v column="$column" -v length_is="$length" 'BEGIN { to = ENVIRON["to"] }
        NR == line { $0 = substr($0, 1, column - 1) to substr($0, column + length_is) } { print }' "$file" >"$copy/tree/$file"
    text=$(sed -n "${line}s/^ *//p" "$copy/tree/$file")
    if text=$text awk -F'\t' -v file="$file" 'BEGIN { text = ENVIRON["text"] } $1 == file && $2 == text { found = 1 } END { exit !found }' \
        tests/mutants/equivalent.tsv; then
        equal=$((equal + 1))
    else
        SECONDS=0
        by=$(seen_by "$file" "$line" "$first")
        case $by in *alone) alone=$((alone + 1)) ;; esac
        case $by in
            -) no_c=$((no_c + 1)) ;;
            =) equal=$((equal + 1)) ;;
            '') survived=$((survived + 1)); printf '%d s, SURVIVED %s:%s (%s): %s\n' "$SECONDS" "$file" "$line" "$kind" "$text" ;;
            *) killed=$((killed + 1)); printf '%d s, killed by %s: %s:%s (%s): %s\n' "$SECONDS" "$by" "$file" "$line" "$kind" "$text" ;;
        esac
    fi
    restore "$file"
    left_share
done <"$lines"
counted=$((killed + survived))
[ "$counted" -gt 0 ]
share=$((100 * killed / counted))
[ "$mode" != aimed ] || floor_percent=100
[ "$mode" != lot ] || [ "$counted" -ge 20 ] || floor_percent=50
echo "$counted mutants ($mode): $killed killed$(alone_of), $survived survived: $share %; not counted: $equal that can make no difference, $no_c that are no C"
left_share
[ "$mode" = at ] || { [ "$share" -ge "$floor_percent" ] && [ "$gone" = 0 ]; }
