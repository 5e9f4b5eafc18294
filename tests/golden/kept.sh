# Sourced by record.sh and compare.sh: plan_route ROUTE OUT makes what is kept of one route, so that both mean the same.
# HTML is kept of two routes, of a plan that is open and one that fails, and what a job that was built has alone; the
# other papers are made by the same code from plans that are kept. The pack repeats the papers: that it holds each of
# them is asked by compare.sh.
html_kept="cider-barn pottery open-store failing-store"
plan_route() {
    local route=$1 out=$2 name rc=0
    name=$(basename "$route" .yaml)
    (cd "$(dirname "$route")" && "$wend" plan "$name.yaml" --out "$out" >"$out/stdout" 2>"$out/stderr") || rc=$?
    echo "$rc" >"$out/exit"
    sed -i '/^Papers /,/^Verdict /{/^Verdict /!d}' "$out/stdout" # where they were written is another folder each time
}
drop_html() { # NAME OUT
    case " $html_kept " in
        *" $1 "*) rm -f "$2"/*.pack.html ;;
        *) find "$2" -name '*.html' ! -name '*.readings.html' ! -name '*.as-laid.html' -delete ;;
    esac
}
# The picture at the top of README.md: the first sheet of a diagram.
picture() { # DIAGRAM
    sed '2s/height="[0-9]*mm" viewBox="0 0 297 [0-9]*"/height="210mm" viewBox="0 0 297 210"/' "$1"
}
