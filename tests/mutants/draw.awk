# Every place of a C file where one small mistake could be made: its line, column, length and what would stand there.
# One row each: folder, file, line, column, length, replacement, kind (by tabs). Comments, texts and the preprocessor's
# lines are left out; a place in a table is a figure of it.
function blank(n,   s) { s = sprintf("%" n "s", ""); return s }
function place(at, length_is, to, kind) { printf "%s\t%s\t%d\t%d\t%d\t%s\t%s\n", folder, FILENAME, FNR, at, length_is, to, kind }
# the line with comments and texts blanked, so that columns stay
function code_of(line,   out, i, c, d) {
    out = ""
    for (i = 1; i <= length(line); i++) {
        c = substr(line, i, 1); d = substr(line, i, 2)
        if (comment) { if (d == "*/") { comment = 0; i++; out = out "  " } else out = out " "; continue }
        if (quoted) { if (c == "\\") { i++; out = out "  " } else { if (c == "\"") quoted = 0; out = out " " } continue }
        if (d == "/*") { comment = 1; i++; out = out "  "; continue }
        if (d == "//") break
        if (c == "\"") { quoted = 1; out = out " "; continue }
        if (c == "'") { i += substr(line, i + 1, 1) == "\\" ? 3 : 2; out = out "   "; continue }
        out = out c
    }
    quoted = 0
    return out
}
# each time the text `from` stands in the code
function every(from, to, kind,   at, rest, seen) {
    seen = 0; rest = code
    while ((at = index(rest, from)) > 0) {
        place(seen + at, length(from), to, kind)
        seen += at + length(from) - 1
        rest = substr(code, seen + 1)
    }
}
# figures: whole ones by one, others by a tenth
function figures(   rest, seen, word, before, to) {
    seen = 0; rest = code
    while (match(rest, /[0-9]+(\.[0-9]+)?(e-?[0-9]+)?/)) {
        word = substr(rest, RSTART, RLENGTH)
        before = seen + RSTART > 1 ? substr(code, seen + RSTART - 1, 1) : " "
        if (before !~ /[A-Za-z0-9_.]/ && substr(rest, RSTART + RLENGTH, 1) !~ /[A-Za-z0-9_.]/) {
            to = word ~ /[.e]/ ? sprintf("%.6g", word * 1.1) : word + 1
            if (word + 0 == 0 && word ~ /[.e]/) to = "0.1"
            place(seen + RSTART, RLENGTH, to, "figure")
        }
        seen += RSTART + RLENGTH - 1
        rest = substr(code, seen + 1)
    }
}
# a call of two plain arguments, the other way round
function swapped(name,   at, rest, call, inside, part) {
    at = match(code, "(^|[^a-z_])" name "\\([^(),]+, [^(),]+\\)")
    if (!at) return
    call = substr(code, RSTART, RLENGTH)
    inside = substr(call, index(call, "(") + 1); inside = substr(inside, 1, length(inside) - 1)
    split(inside, part, ", ")
    if (part[1] != part[2]) place(RSTART + index(call, "("), length(inside), part[2] ", " part[1], "arguments")
}
FNR == 1 { comment = quoted = 0; n = split(FILENAME, dir, "/"); folder = dir[2] }
/^#/ { next }
{
    code = code_of($0)
    every(" < ", " <= ", "edge"); every(" > ", " >= ", "edge"); every(" <= ", " < ", "edge"); every(" >= ", " > ", "edge")
    every(" < ", " > ", "comparison"); every(" > ", " < ", "comparison")
    every(" == ", " != ", "comparison"); every(" != ", " == ", "comparison")
    every(" && ", " || ", "logic"); every(" || ", " && ", "logic")
    every(" + ", " - ", "arithmetic"); every(" - ", " + ", "arithmetic")
    every(" * ", " / ", "arithmetic"); every(" / ", " * ", "arithmetic")
    every("fmin(", "fmax(", "least"); every("fmax(", "fmin(", "least")
    every("true", "false", "logic"); every("false", "true", "logic")
    every(" += ", " -= ", "arithmetic"); every("(!", "(", "logic"); every(" !", " ", "logic")
    swapped("within")
    if (match(code, /^ +(} else )?if \(.*\) {$/)) {
        at = index(code, "if (") + 4
        place(at, length(code) - at - 2, "!(" substr($0, at, length(code) - at - 2) ")", "condition")
    }
    if (match(code, /^ +return .*;$/) && index(code, " ? ")) {
        q = index(code, " ? "); c = index(code, " : ")
        if (c > q) place(q + 3, length(code) - q - 3, substr($0, c + 3, length(code) - c - 3) " : " substr($0, q + 3, c - q - 3), "choice")
    }
    if (match(code, /^ +[a-z_]+\(.*\);$/) || match(code, /^ +[a-z_.>\[\]-]+ [-+*]?= .*;$/)) {
        at = match(code, /[^ ]/)
        place(at, length(code) - at + 1, ";", "dropped")
    }
    figures()
}
