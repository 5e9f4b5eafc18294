# What gcov counted, added up: awk -v missing=FILE -v untaken=FILE -f coverage.awk coverage_left_out.tsv GCOV_OUTPUT, in
# the project's folder. Says the share of all, and of all but what coverage_left_out.tsv lists; ends with 1 when a row of it
# matches nothing that was not run. A branch that an if of ours takes counts, the compiler's own for a call that may not
# come back do not. What a header defines is counted once, however many files have it.
function read_source(file,    line) {
    for (line in source) delete source[line]
    for (line in names) delete names[line]
    for (lines_read = 0; (getline line <("src/" file)) > 0;) source[++lines_read] = line
    close("src/" file)
    guard_until = 0
}
function indent(text) { match(text, /^ */); return RLENGTH }
# The line that closes what the line `from` opens.
function closing(from,    at) {
    for (at = from + 1; at <= lines_read; at++)
        if (source[at] ~ /^ *}/ && indent(source[at]) == indent(source[from])) return at
    return from
}
function last_part(name) { sub(/.*(\.|->)/, "", name); return name }
# Names that memory was asked for under, by a function of that kind, until the function ends.
function note_names(line,    text, name, asked, row) {
    text = source[line]
    if (text ~ /^}/) for (name in names) delete names[name]
    if (source[line - 1] ~ / =$/) text = source[line - 1] " " text
    while (match(text, /[A-Za-z_.][A-Za-z_0-9.>\[\]-]* = \*?[a-z_0-9]+\(/)) {
        name = substr(text, RSTART, RLENGTH)
        text = substr(text, RSTART + RLENGTH)
        asked = name
        sub(/ = .*/, "", name)
        sub(/.* = \*?/, "", asked)
        sub(/\($/, "", asked)
        delete names[name]
        for (row = 1; row <= rows; row++)
            if (kind[row] == "memory" && asked ~ ("^(" pattern[row] ")$")) names[name] = row
    }
}
# The row that says that nothing but memory decides at that line; 0: none.
function memory_alone(line,    text, terms, count, i, name, row) {
    text = source[line]
    if (text !~ /^ *if \(.*\) \{$/) return 0
    sub(/^ *if \(/, "", text)
    sub(/\) \{$/, "", text)
    count = split(text, terms, / \|\| /)
    for (i = 1; i <= count; i++) {
        if (terms[i] ~ /^arena_failed\([a-z_>.-]+\)$/) { row = row ? row : failed_row; continue }
        if (terms[i] !~ /^[a-z_0-9.>\[\]-]+ == NULL$/) return 0
        name = terms[i]
        sub(/ == NULL$/, "", name)
        if (!(name in names)) { name = "." last_part(name); if (!(name in names)) return 0 }
        row = names[name]
    }
    return row
}
# The row of a memory check that is the first condition of a line, whatever follows it: the first two branches are its own.
function memory_first(line,    text, name) {
    text = source[line]
    if (!match(text, /(if \(|while \(|; |return |= )[a-z_0-9.>-]+ [!=]= NULL( \?| &&| \|\||\) \{)/)) return 0
    if (substr(text, 1, RSTART) ~ /&&|\|\||[<>!=]=|\?/) return 0
    name = substr(text, RSTART, RLENGTH)
    sub(/^(if \(|while \(|; |return |= )/, "", name)
    sub(/ [!=]= NULL.*/, "", name)
    if (!(name in names)) name = "." last_part(name)
    return name in names ? names[name] : 0
}
function no_default(line,    at) {
    for (at = line + 1; at < closing(line); at++)
        if (source[at] ~ /^ *default:/ && indent(source[at]) == indent(source[line])) return 0
    return 1
}
function switch_listed(    row) {
    for (row = 1; row <= rows; row++) if (kind[row] == "switch") return row
    return 0
}
NR == FNR {
    if ($0 ~ /^(#|$)/) next
    split($0, column, "\t")
    if (column[1] !~ /^(memory|switch)$/ || column[3] == "") { print "coverage_left_out.tsv: no kind or no reason: " $0; bad = 1; exit 1 }
    kind[++rows] = column[1]; pattern[rows] = column[2]
    if (column[1] == "memory" && "arena_failed" ~ ("^(" column[2] ")$")) failed_row = rows
    next
}
/^ *-: *0:Source:/ {
    file = $0
    sub(/.*\/src\//, "", file)
    keep = file !~ /^\//
    folder = file
    sub(/\/.*/, "", folder)
    if (keep) read_source(file)
    next
}
!keep { next }
/^ *[0-9#=-]+\*?: *[0-9]+:/ {
    split($0, part, ":")
    count = part[1]
    gsub(/ /, "", count)
    line = part[2] + 0
    if (line > 0) note_names(line)
    ran = count ~ /^[0-9]/
    memory_row = ran && line > guard_until ? memory_alone(line) : 0
    first_row = ran && !memory_row ? memory_first(line) : 0
    of_line = 0
    if (memory_row) { guard_row = memory_row; guard_from = line; guard_until = closing(line) }
    switch_row = ran && source[line] ~ /^ *switch / && no_default(line) ? switch_listed() : 0
    if (count ~ /^-/) next
    at = file ":" line
    if (file ~ /\.h$/) { in_header[at] = folder; if (ran) header_ran[at]; next }
    lines[folder]++
    if (ran) { run[folder]++; next }
    row = line > guard_from && line < guard_until ? guard_row : 0
    if (row) { matched[row]++; listed_lines++ }
    else print "src/" file ":" line ":" source[line] >missing
    next
}
/^branch / && !/\(throw\)/ {
    of_line++
    went = $0 !~ /never executed|taken 0/
    if (file ~ /\.h$/) { branch_in_header[at ":" of_line] = folder; if (went) header_taken[at ":" of_line]; next }
    branches[folder]++
    if (went) { taken[folder]++; next }
    row = memory_row ? memory_row : first_row && of_line <= 2 ? first_row : switch_row ? switch_row : line > guard_from && line < guard_until ? guard_row : 0
    if (row) { matched[row]++; listed_branches++; switch_row = 0 } # of a switch one: the value that is none of the kind
    else print "src/" file ":" line ":" source[line] >untaken
}
END {
    if (bad) exit 1
    for (at in in_header) { lines[in_header[at]]++; if (at in header_ran) run[in_header[at]]++; else print "src/" at ":" >missing }
    for (at in branch_in_header) {
        branches[branch_in_header[at]]++
        if (at in header_taken) taken[branch_in_header[at]]++; else print "src/" at ":" >untaken
    }
    for (name in lines) {
        l += lines[name]; r += run[name]; b += branches[name]; t += taken[name]
        printf "%-10s lines %5d of %5d, %.1f %%; branches %5d of %5d, %.1f %%\n", name, run[name], lines[name], 100 * run[name] / lines[name],
            taken[name], branches[name], branches[name] ? 100 * taken[name] / branches[name] : 100 | "sort"
    }
    close("sort")
    for (row = 1; row <= rows; row++) {
        printf "left out by %s %s: %d\n", kind[row], pattern[row], matched[row]
        if (!matched[row]) { print "coverage_left_out.tsv: nothing that is not run is as " kind[row] " " pattern[row]; stale = 1 }
    }
    printf "%.1f %% of %d lines, %.1f %% of %d branches; but for %d lines and %d branches that are listed %.1f %% and %.1f %%\n", 100 * r / l, l,
        100 * t / b, b, listed_lines, listed_branches, 100 * r / (l - listed_lines), 100 * t / (b - listed_branches)
    exit stale
}
