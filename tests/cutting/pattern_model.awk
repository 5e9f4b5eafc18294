# A job (see cutting_jobs.c) -> a whole-number programme over every pattern, in the CPLEX LP form.
# -v sum=uncut|bought|drums|offcuts: what is made least; the sums before it are limits, taken from the answer.
$1 == "piece" { n++; long[n] = $2; wanted[n] = sum == "uncut" ? $3 : $4 }
$1 == "bin"   { key = $2 " " $4; if (!(key in bin)) { bin[key] = ++b; size[b] = $2; bought[b] = $4; most[b] = 0 }
                k = bin[key]; if ($3 < 0 || most[k] < 0) most[k] = -1; else most[k] += $3 }
$1 == "answer" { held_bought = $3; held_drums = $4 }
# Takes of piece i on, with `left` of bin k's length.
function patterns(k, i, left,    c, fit) {
    if (i > n) {
        p++; of_bin[p] = k; any = 0
        for (c = 1; c <= n; c++) { if (take[c] > 0) { in_piece[c] = in_piece[c] " + " take[c] " x" p; any = 1 } }
        return
    }
    fit = int(left / long[i]); if (fit > wanted[i]) fit = wanted[i]
    # Covering more than is wanted is allowed below, so of the last piece only the most is taken.
    for (c = fit; c >= (i == n ? fit : 0); c--) { take[i] = c; patterns(k, i + 1, left - c * long[i]) }
    take[i] = 0
}
END {
    for (k = 1; k <= b; k++) patterns(k, 1, size[k])
    print "Minimize"
    line = " obj:"
    for (q = 1; q <= p; q++) {
        k = of_bin[q]
        cost = sum == "uncut" ? 0 : sum == "bought" ? bought[k] * size[k] : sum == "drums" ? bought[k] : 1 - bought[k]
        if (cost > 0) line = line "\n + " cost " x" q
        per_bin[k] = per_bin[k] " + x" q
        if (bought[k]) { by_length = by_length "\n + " size[k] " x" q; by_number = by_number "\n + x" q }
    }
    for (i = 1; i <= n; i++) if (sum == "uncut") line = line "\n + " long[i] " u" i
    if (line == " obj:") line = " obj: 0 x1"
    print line
    print "Subject To"
    for (i = 1; i <= n; i++) {
        row = in_piece[i]; if (sum == "uncut") row = row " + u" i
        gsub(/ \+ /, "\n + ", row)
        if (row != "") print " piece" i ":" row " >= " wanted[i]
    }
    for (k = 1; k <= b; k++) if (most[k] >= 0 && per_bin[k] != "") {
        gsub(/ \+ /, "\n + ", per_bin[k]); print " bin" k ":" per_bin[k] " <= " most[k]
    }
    if ((sum == "drums" || sum == "offcuts") && by_length != "") print " bought:" by_length " <= " held_bought
    if (sum == "offcuts" && by_number != "") print " drums:" by_number " <= " held_drums
    print "Bounds"
    print "General"
    for (q = 1; q <= p; q++) print " x" q
    for (i = 1; i <= n; i++) if (sum == "uncut") print " u" i
    print "End"
}
