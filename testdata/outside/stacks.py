"""Random schedules planned by the program, their stack reports held by stack.py.

usage: stacks.py PROGRAM FOLDER [SEED]       FOLDER is made; exit code 0 right, 1 not

The schedules are of stitched, woven, unidirectional and mat cloth, on either
face, some of them mirrors but for one ply, some with a core or a load, so that
every kind of cure comes up.
"""
import os
import random
import subprocess
import sys

import stack

CLOTHS = {
    "tape": "weight: 300 g/m2, fibre: e-glass",
    "weave": "weight: 300 g/m2, fibre: e-glass, form: woven",
    "biax": "weight: 450 g/m2, fibre: e-glass, layers: [45, -45]",
    "cross": "weight: 600 g/m2, fibre: e-glass, layers: [0, 90]",
    "triax": "weight: 800 g/m2, fibre: e-glass, layers: [0, 45, -45]",
    "heavy": "weight: 800 g/m2, fibre: e-glass, layers: [{angle: 0, weight: 400}, {angle: 45, weight: 200}, {angle: -45, weight: 200}]",
    "mat": "weight: 300 g/m2, fibre: e-glass, form: mat",
    "black": "weight: 200 g/m2, fibre: carbon",
}
ANGLES = [0, 0, 90, 45, -45, 30]


def schedule(r):
    """(cloth, angle, face) of each ply, and where a core lies."""
    names = r.sample(sorted(CLOTHS), r.randint(1, 3))
    if r.random() < 0.3:
        names = ["cross"] + [n for n in names if n in ("tape", "weave")]
    half = [(r.choice(names), r.choice(ANGLES), r.choice(["up", "up", "down"])) for _ in range(r.randint(1, 4))]
    plies = list(half)
    if r.random() < 0.7:
        face = {"up": "down", "down": "up"}
        plies += [(c, a, face[f] if c == "cross" else f) for c, a, f in reversed(half[: len(half) - r.randint(0, 1)])]
    change = r.random()
    if change < 0.2 and len(plies) > 2:
        i, k = r.sample(range(len(plies)), 2)
        plies[i], plies[k] = plies[k], plies[i]
    elif change < 0.4 and len(plies) > 1:
        plies.pop(r.randrange(len(plies)))
    elif change < 0.55:
        r.shuffle(plies)
    elif change < 0.8:
        i = r.randrange(len(plies))
        c, a, f = plies[i]
        plies[i] = (c, a, "up" if f == "down" else "down")
    core = len(plies) // 2 if r.random() < 0.2 and len(plies) > 1 else None
    return names, plies, core


def job(r):
    names, plies, core = schedule(r)
    lines = ["title: Test plate", "units: mm", "part:", "  outline: {rectangle: [700, 400]}", "  trim: 0", "  drawn_from: laying side"]
    if r.random() < 0.5:
        lines.append(f"  load: {r.choice([0, 90, 45, 20])}")
    if core is not None:
        lines += ["cores:", "  foam: {thickness: 10, density: 80 kg/m3}"]
    lines.append("fabrics:")
    for n in names:
        lines.append(f"  {n}: {{{CLOTHS[n]}, face_is: marked side, plies_between: 0, rolls: [{{id: {n}-300, width: 300}}]}}")
    lines.append("schedule:")
    for i, (c, a, f) in enumerate(plies):
        if i == core:
            lines.append("  - {core: foam}")
        lines.append(f"  - {{fabric: {c}, angle: {a}, face: {f}}}")
    lines += ["joints: {stagger: 1, plies_between: 0, narrowest: 10}", "search: {effort: quick, seed: 1}", ""]
    return "\n".join(lines)


def main():
    program, folder = sys.argv[1:3]
    seed = int(sys.argv[3]) if len(sys.argv) > 3 else 1
    r = random.Random(seed)
    os.makedirs(folder)
    held = cures = 0
    told = {}
    for i in range(60):
        path, out = f"{folder}/{i}.yaml", f"{folder}/{i}"
        with open(path, "w") as f:
            f.write(job(r))
        done = subprocess.run([program, "plan", path, "-o", out], capture_output=True, text=True)
        if done.returncode != 0:
            sys.exit(f"{path}: {done.stdout}{done.stderr}")
        report = stack.Report(out)
        report.judge()
        held, cures = held + report.held, cures + report.cures
        for step in report.steps:
            told[step] = told.get(step, 0) + 1
        if report.faults:
            sys.exit(f"{path}:\n  " + "\n  ".join(report.faults[:10]))
    print(f"60 stacks of seed {seed}: {held} statements held, {cures} cures carried out: " + ", ".join(f"{k} {v}" for k, v in sorted(told.items())))
    if cures < 20 or len(told) < 5:
        sys.exit("too few cures came up to be held")


main()
