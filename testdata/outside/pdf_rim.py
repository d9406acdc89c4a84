"""Measures rim strips on the print: 254 dots an inch, ten a millimetre, as two
programs that share no code draw it."""
import re
import subprocess
import tempfile

from PIL import Image

from pdf_words import boxes, edge_of, joint_ends, lines

DOTS = 10  # a mm
NEAR = 0.1  # mm
DARK = 70

NAME = re.compile(r"(\w)-(\w), piece (\d+) of (\d+), from ([\d.]+) to ([\d.]+) mm from (\w)")


POPPLER = ["pdftoppm", "-r", "254", "-gray", "{path}", "{folder}/page"]
MUPDF = ["mutool", "draw", "-q", "-r", "254", "-c", "gray", "-o", "{folder}/page%04d.pgm", "{path}"]


def pictures(path, program):
    """The pages, ten dots a mm, grey, as a program draws them."""
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run([part.format(path=path, folder=folder) for part in program], check=True, stderr=subprocess.DEVNULL)
        names = subprocess.run(["ls", folder], check=True, capture_output=True, text=True).stdout.split()
        return [Image.open(f"{folder}/{n}").copy() for n in sorted(names)]


def strokes(picture, y, left, right):
    """Middles in mm of the dark strokes that cross a height, all from the page's
    upper left corner; a stroke's middle is weighed by how dark its dots are."""
    left = max(left, 0)
    row = list(picture.crop((round(left * DOTS), round(y * DOTS), round(right * DOTS), round(y * DOTS) + 1)).getdata())
    out, run = [], []
    for x, v in enumerate(row + [255]):
        if v < 200:
            run.append((x, 255 - v))
        elif run:
            if max(d for _, d in run) > 255 - DARK:
                total = sum(d for _, d in run)
                middle = sum((x + 0.5) * d for x, d in run) / total
                out.append((round(left * DOTS) + middle) / DOTS)
            run = []
    return out


def line_above(picture, base, left, right):
    """The lower side in mm of the nearest thick dark line over a base line."""
    x0, x1 = round((left + 1) * DOTS), round((right - 1) * DOTS)
    for y in range(round(base * DOTS), round((base - 90) * DOTS), -1):
        if max(picture.crop((x0, y, x1, y + 1)).getdata()) < DARK:
            return (y + 1) / DOTS
    return None


def check_bars(path, n, words, picture, faults):
    for name, want in (("100 mm", 100.0), ("4 in", 101.6)):
        found = [l for l in lines(words, gap=2) if l[0] == name]
        if not found:
            faults.append(f"{path} page {n}: no bar of {name}")
            continue
        _, left, base = found[0]
        ends = [strokes(picture, base - 1.0 + dy, left - 62, left + 70) for dy in (1.6, -1.6)]
        long = [b - a for e in ends for a in e for b in e if 90 < b - a < 110]
        if not any(abs(v - want) <= NEAR for v in long):
            faults.append(f"{path} page {n}: the bar of {name} measures {long}")


def wanted_ticks(plan):
    """By stretch: its length, and where joints meet it."""
    edge = edge_of(plan)
    ticks = []
    for ply in plan["plies"]:
        for joint in ply["joints"]:
            ticks += joint_ends(edge, joint) or []
    out = {}
    for a, b, start, long in edge.stretches():
        along = sorted((t - start) % edge.long for t in ticks)
        out[a, b] = long, [t for t in along if t <= long + 0.005]
    return out


def check(path, plan, faults):
    for program in (POPPLER, MUPDF):
        measure(path, plan, program, faults)


def measure(path, plan, program, faults):
    wanted = wanted_ticks(plan)
    reach = {key: 0.0 for key in wanted}
    seen = 0
    for n, (words, picture) in enumerate(zip(boxes(path), pictures(path, program)), 1):
        check_bars(path, n, words, picture, faults)
        for text, left, base in lines(words, gap=2):
            m = NAME.search(text)
            if not m:
                continue
            a, b, first, last = m.group(1), m.group(2), float(m.group(5)), float(m.group(6))
            long, ticks = wanted[a, b]
            if abs(first - reach[a, b]) > 0.051:
                faults.append(f"{path}: {text}: the piece before ends at {reach[a, b]}")
            reach[a, b] = last
            left -= 8  # the name stands 8 mm in
            top = line_above(picture, base - 2, left, left + last - first)
            if top is None:
                faults.append(f"{path}: {text}: no line over it")
                continue
            found = strokes(picture, top + 2.35, left - 1, left + last - first + 1)
            # The strip's own ends are strokes too.
            ends = [found[0], found[-1]]
            if abs(ends[0] - left) > NEAR + 0.1 or abs(ends[1] - ends[0] - (last - first)) > NEAR:
                faults.append(f"{path}: {text}: the strip measures {ends[1] - ends[0]:.2f} mm")
            got = [x - ends[0] + first for x in found]
            here = [t for t in ticks if first - 0.06 <= t <= last + 0.06]
            for t in here:
                # Strokes that touch are one: its middle lies between them.
                others = [o for o in here if 0 < abs(o - t) < 0.5]
                if min(abs(t - g) for g in got) > (0.3 if others else NEAR):
                    faults.append(f"{path}: {text}: no tick at {t:.2f} mm")
            for g in got[1:-1]:
                # Ticks that touch each other are one stroke.
                if min((abs(t - g) for t in here), default=9) > NEAR and not any(abs(t - g) < 0.6 for t in here):
                    faults.append(f"{path}: {text}: a tick at {g:.2f} mm that is no joint's")
            seen += len(here)
    for key, (long, _) in wanted.items():
        if abs(reach[key] - long) > 0.06:
            faults.append(f"{path}: the strips of {'-'.join(key)} end at {reach[key]}, the edge at {long:.2f} mm")
    if seen == 0:
        faults.append(f"{path}: no tick was measured")
