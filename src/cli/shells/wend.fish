# Completion of wend for fish. What may come next is asked of the program itself.
function __wend_next
    set -l words (commandline -opc)
    set -l begun (commandline -ct)
    for word in ($words[1] complete $words[2..] "$begun" 2>/dev/null)
        switch $word
            case :yaml
                __fish_complete_suffix .yaml
            case :folder
                __fish_complete_directories "$begun"
            case '*'
                echo $word
        end
    end
end
complete -c wend -f -a '(__wend_next)'
