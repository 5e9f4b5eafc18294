"""completion.py WEND: completion as it is typed, in a pseudo-terminal, in each shell that is there (with
WEND_SKIP_NOTHING all three must be)."""
import concurrent.futures, os, pty, re, select, shutil, sys, tempfile, time

wend = os.path.realpath(sys.argv[1])
here = os.path.dirname(os.path.realpath(__file__))
shells = os.path.join(here, "../../src/cli/shells")
routes = os.path.join(here, "../../routes")
work = tempfile.mkdtemp()
os.mkdir(work + "/bin")
os.symlink(wend, work + "/bin/wend")

start = {
    "bash": (["bash", "--norc", "--noprofile", "-i"], "source %s/wend.bash" % shells),
    "zsh": (["zsh", "-f", "-i"], "fpath=(%s $fpath); autoload -Uz compinit; compinit -u -D" % shells),
    "fish": (["fish", "--no-config", "-i"], "source %s/wend.fish" % shells),
}
cases = [  # what is typed, what the line then says
    ("wend pla", "wend plan "),
    ("wend explain barn.yaml disc", "wend explain barn.yaml disconnection"),
    ("wend options barn.yaml fe", "wend options barn.yaml feeder"),
    ("wend order barn.yaml --tw", "wend order barn.yaml --twice"),
    ("wend check ba", "wend check barn.yaml"),
    ("wend plan barn.yaml --out dr", "wend plan barn.yaml --out drawings"),
    ("wend dec", "wend decides "),
    ("wend reac", "wend reach "),
    ("wend diff ba", "wend diff barn.yaml"),
    ("wend diff barn.yaml ba", "wend diff barn.yaml barn.yaml"),
    ("wend ne", "wend new "),
    ("wend new --as", "wend new --ask"),
    ("wend for", "wend form "),
    ("wend form --pa", "wend form --paper"),
    ("wend sche", "wend schema "),
    ("wend cable BS54", "wend cable BS5467"),
    ("wend reach barn.yaml --se", "wend reach barn.yaml --set"),
    ("wend check barn.yaml --pa", "wend check barn.yaml --papers"),
    ("wend check barn.yaml --papers dr", "wend check barn.yaml --papers drawings"),
    ("wend plan barn.yaml --language p", "wend plan barn.yaml --language pl"),
    ("wend help dec", "wend help decides"),
]


def read(terminal, quiet_s, most_s=20.0):
    """All that comes until nothing has come for a while."""
    said, end = b"", time.time() + most_s
    while time.time() < end and select.select([terminal], [], [], quiet_s)[0]:
        try:
            more = os.read(terminal, 65536)
        except OSError:
            break
        if b"\x1b[c" in more or b"\x1b[0c" in more:  # a shell asks what kind of terminal this is
            os.write(terminal, b"\x1b[?62;c")
        said += more
        if not more:
            break
    return said


def comes(terminal, path, most_s=30.0):
    """What is printed until that file is there."""
    end = time.time() + most_s
    while time.time() < end and not os.path.exists(path):
        read(terminal, 0.2, 0.5)


def typed(shell, words):
    """What the line says once the tab key was pressed behind `words`; it is then run, as arguments of a function."""
    home = tempfile.mkdtemp(dir=work)
    os.makedirs(home + "/job/drawings")
    shutil.copy(routes + "/cider-barn.yaml", home + "/job/barn.yaml")
    open(home + "/job/notes.txt", "w").close()
    child, terminal = pty.fork()
    if child == 0:
        os.chdir(home + "/job")
        os.environ.update(PATH=work + "/bin:" + os.environ["PATH"], TERM="vt100", HOME=home, PS1="> ")
        os.execvp(start[shell][0][0], start[shell][0])
    read(terminal, 1.0)
    os.write(terminal, (start[shell][1] + "; touch ../ready\n").encode())
    comes(terminal, home + "/ready")
    read(terminal, 0.5)
    os.write(terminal, (words + "\t").encode())
    read(terminal, 2.5)
    os.write(terminal, b"\x01printf '[%s]' \x05 > ../line; touch ../said\n")  # to the line's beginning, to its end
    comes(terminal, home + "/said")
    os.write(terminal, b"exit\n")
    read(terminal, 0.5, 2)
    os.close(terminal)
    os.waitpid(child, 0)
    try:
        with open(home + "/line") as line:
            return re.sub(r"\[([^]]*)\]", r"\1 ", line.read()).strip()
    except FileNotFoundError:
        return ""


passed = failed = 0
for shell in start:
    if shutil.which(shell) is None:
        if os.environ.get("WEND_SKIP_NOTHING"):
            failed += 1
            print("FAILED there is no", shell)
        else:
            print("not tried:", shell, "which is not on this machine")
        continue
    # most of the time is waiting, so they wait together: each in a process, a folder and a terminal of its own
    with concurrent.futures.ProcessPoolExecutor(4) as pool:
        lines = list(pool.map(typed, [shell] * len(cases), [words for words, _ in cases]))
    for (words, wanted), line in zip(cases, lines):
        if line.rstrip("/") == wanted.strip():  # some shells end a folder so
            passed += 1
        else:
            failed += 1
            print("FAILED %s: %r becomes %r, not %r" % (shell, words, line, wanted))
shutil.rmtree(work)
print("%d passed, %d failed" % (passed, failed))
sys.exit(failed > 0 or passed == 0)
