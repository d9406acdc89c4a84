"""Has glpsol and cbc solve a programme in the CPLEX LP format. Anything but a
proved optimum, the same by both, ends the run."""
import os
import subprocess

SECONDS = 120  # each; a programme of the test takes a few at most, on a machine that is idle


def optimum(text, scratch, name):
    """The least cost, a whole number that both solvers prove, and cbc's values
    that are not 0: names split at their underscores, and whole numbers."""
    file = os.path.join(scratch, name + ".lp")
    with open(file, "w", encoding="ascii") as f:
        f.write(text)
    found = {"glpsol": by_glpsol(file), "cbc": by_cbc(file)}
    if found["glpsol"] != found["cbc"]:
        raise SystemExit(f"{file}: the solvers differ: {found}")
    return found["cbc"], values(file + ".cbc")


def values(out):
    """Reads lines 'NUMBER NAME VALUE COST' of cbc's solution file."""
    words = [line.replace("**", "").split() for line in read(out)[1:]]
    return [(w[1].split("_"), round(float(w[2]))) for w in words]


def by_glpsol(file):
    """GLPK's solution file has one line 's mip ROWS COLUMNS STATUS COST'; status
    o is a proved optimum."""
    out = file + ".glpsol"
    said = run("glpsol", "--lp", file, "--cuts", "--pcost", "--tmlim", str(SECONDS), "--write", out)
    words = [line.split() for line in read(out) if line.startswith("s ")]
    if len(words) != 1 or words[0][1] != "mip" or words[0][4] != "o":
        raise SystemExit(f"{file}: glpsol proves no optimum in {SECONDS} s: {words}\n{said}")
    return whole(words[0][5], file)


def by_cbc(file):
    """cbc's solution file begins 'Optimal - objective value COST'."""
    out = file + ".cbc"
    said = run("cbc", file, "sec", str(SECONDS), "ratio", "0", "allow", "0", "solve", "solution", out)
    first = read(out)[0] if read(out) else ""
    if not first.startswith("Optimal - objective value "):
        raise SystemExit(f"{file}: cbc proves no optimum in {SECONDS} s: {first}\n{said}")
    return whole(first.split()[-1], file)


def run(*command):
    done = subprocess.run(command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                          timeout=4 * SECONDS, check=False, text=True)
    if done.returncode:
        raise SystemExit(f"{' '.join(command)} ended with {done.returncode}:\n{done.stdout}")
    return done.stdout


def read(file):
    if not os.path.exists(file):
        return []
    with open(file, encoding="utf-8") as f:
        return f.read().splitlines()


def whole(word, file):
    value = round(float(word))
    if abs(value - float(word)) > 1e-6:
        raise SystemExit(f"{file}: a cost of {word}, which is no whole number")
    return value
