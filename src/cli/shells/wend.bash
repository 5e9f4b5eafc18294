# Completion of wend for bash. What may come next is asked of the program itself.
_wend() {
    local line=${COMP_LINE:0:COMP_POINT} word begun kept
    local -a words
    read -ra words <<<"$line"
    [[ $line == *[[:space:]] ]] && words+=("")
    begun=${words[-1]}
    kept=${begun%"${begun##*[:=]}"} # bash begins a new word behind these
    COMPREPLY=()
    while IFS= read -r word; do
        case $word in
            :yaml)
                compopt -o filenames
                mapfile -t COMPREPLY < <(compgen -f -X '!*.y?(a)ml' -- "$begun"; compgen -d -- "$begun")
                return
                ;;
            :folder)
                compopt -o filenames
                mapfile -t COMPREPLY < <(compgen -d -- "$begun")
                return
                ;;
            *) COMPREPLY+=("${word#"$kept"}") ;;
        esac
    done < <("${words[0]/#\~/$HOME}" complete "${words[@]:1}" 2>/dev/null)
}
shopt -s extglob
complete -F _wend wend
