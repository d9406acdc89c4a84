"""Writes random drawings, DXF by ezdxf and SVG, has them read by stripwright
outline and holds what was read against shapely.

usage: drawings.py PROGRAM FOLDER [SEED]   exit code 0 when all agree, 1 when not

Held for each: one outline with the right number of holes; area within the chord
error along the whole edge; width and height; the area by which the shapes
differ; 20 points inside or outside, which a mirrored part fails. Then two
drawings with a notch at the top right: the sheet of what was read, as librsvg
renders it, has it there too. Last, spoiled values must be found.
"""
import json
import os
import random
import subprocess
import sys

from PIL import Image
from shapely import affinity
from shapely.geometry import Point, Polygon

import made_dxf
import made_svg

CHORD = 0.05  # mm that a curve may be off, the default of the program
CLEAR = 0.2  # mm that a probe point keeps from the edge
PROBES = 20
CLOTH = (0xDC, 0xE6, 0xEE)


def at_zero(shape):
    return affinity.translate(shape, -shape.bounds[0], -shape.bounds[1])


def perimeter(shape):
    return shape.exterior.length + sum(h.length for h in shape.interiors)


def probes(rng, shape):
    """Points inside and outside, half of each where there is room."""
    w, h = shape.bounds[2:]
    found = {True: [], False: []}
    for _ in range(300):
        p = Point(rng.uniform(0, w), rng.uniform(0, h))
        if shape.boundary.distance(p) > CLEAR:
            found[shape.contains(p)].append(p)
        if min(len(points) for points in found.values()) >= PROBES // 2:
            break
    some = found[True][: PROBES // 2] + found[False][: PROBES // 2]
    return (some + found[True][PROBES // 2 :])[:PROBES]


def read(program, path, options):
    done = subprocess.run([program, "outline", path, "--json", *options], capture_output=True, text=True, encoding="utf-8")
    if done.returncode != 0:
        raise ValueError(f"exit code {done.returncode}: {done.stderr.strip()}")
    return json.loads(done.stdout)


def differences(found, want, points):
    """What differs between the JSON of a reading and the true shape at zero."""
    regions = found["regions"]
    if len(regions) != 1:
        return [f"{len(regions)} outlines instead of 1"]
    out = []
    got = at_zero(Polygon(regions[0]["outer"], regions[0]["holes"]))
    allowed = CHORD * perimeter(want)
    if not got.is_valid:
        out.append("the outline read is not valid to shapely")
    if len(got.interiors) != len(want.interiors):
        out.append(f"{len(got.interiors)} holes instead of {len(want.interiors)}")
    if not abs(found["area_mm2"] - want.area) <= allowed:
        out.append(f"area {found['area_mm2']:.2f} instead of {want.area:.2f} ± {allowed:.2f} mm²")
    for name, have, real in zip(("width", "height"), found["size_mm"], want.bounds[2:]):
        if not abs(have - real) <= 2 * CHORD:
            out.append(f"{name} {have:.3f} instead of {real:.3f} mm")
    apart = got.buffer(0).symmetric_difference(want).area
    # Both were moved to their lowest and leftmost edge, each CHORD off at most.
    if not apart <= 3 * allowed:
        out.append(f"the shapes differ by {apart:.2f}, at most {3 * allowed:.2f} mm²")
    wrong = [p for p in points if got.contains(p) != want.contains(p)]
    if wrong:
        out.append(f"{len(wrong)} of {len(points)} points on the wrong side, as ({wrong[0].x:.2f}, {wrong[0].y:.2f})")
    return out


def cases(folder, seed):
    """Writes the drawings; each with its true shape, the same for the same seed."""
    jobs = [(f"{v}-{k}-{n}", v, k) for n in (1, 2) for v in ("R12", "R2000", "R2010") for k in (made_dxf.OLD if v == "R12" else made_dxf.NEW)]
    for name, version, kind in jobs:
        rng = random.Random(f"{seed} {name}")
        path = os.path.join(folder, name.replace(" ", "-") + ".dxf")
        yield path, rng, *made_dxf.draw(rng, path, version, kind)
    for n in (1, 2, 3):
        for kind in made_svg.KINDS:
            rng = random.Random(f"{seed} {kind} {n}")
            path = os.path.join(folder, f"{kind}-{n}.svg")
            yield path, rng, *made_svg.draw(rng, path, kind)


def seen(program, drawing, folder):
    """The notch of the plate in the rendered sheet: top right, and only there."""
    sheet, picture = os.path.join(folder, "sheet.svg"), os.path.join(folder, "sheet.png")
    subprocess.run([program, "outline", drawing, "--svg", sheet], check=True, capture_output=True)
    subprocess.run(["rsvg-convert", "-w", "1200", "-o", picture, sheet], check=True)
    image = Image.open(picture).convert("RGB")
    cloth = [(i % image.width, i // image.width) for i, c in enumerate(image.getdata()) if c == CLOTH]
    if not cloth:
        return ["nothing is drawn"]
    left, right = min(x for x, _ in cloth), max(x for x, _ in cloth)
    low = max(y for _, y in cloth)
    px = (right - left + 1) / 1200  # the plate is 1200 mm wide
    out = []
    for x, y, inside in ((1100, 600, False), (100, 600, True), (1100, 100, True), (100, 150, True), (1100, 400, True)):
        if (image.getpixel((round(left + x * px), round(low - y * px))) == CLOTH) != inside:
            out.append(f"({x}, {y}) is {'not ' if inside else ''}on the part")
    return out


def spoiled(found, want, points):
    """Names of spoiled values that are not found."""
    allowed = CHORD * perimeter(want)
    w, h = want.bounds[2:]
    mirrored = at_zero(affinity.scale(want, -1, 1))
    changes = {
        "the area": ({**found, "area_mm2": found["area_mm2"] + 2.1 * allowed}, want, points),
        "the width": ({**found, "size_mm": [w + 0.3, h]}, want, points),
        "a hole": (found, Polygon(want.exterior, [*[r.coords for r in want.interiors], want.representative_point().buffer(1).exterior.coords]), []),
        "no outline": ({**found, "regions": []}, want, points),
        "a mirrored part": (found, mirrored, [p for p in points if mirrored.boundary.distance(p) > CLEAR]),
    }
    return [name for name, c in changes.items() if not differences(*c)]


def main():
    if len(sys.argv) not in (3, 4):
        sys.exit(__doc__)
    program, folder = sys.argv[1:3]
    seed = sys.argv[3] if len(sys.argv) == 4 else "1"
    os.makedirs(folder, exist_ok=True)
    bad, counted, last = 0, {".dxf": 0, ".svg": 0}, None
    for path, rng, shape, options in cases(folder, seed):
        want = at_zero(shape)
        points = probes(rng, want)
        counted[os.path.splitext(path)[1]] += 1
        try:
            found = read(program, path, options)
            faults = differences(found, want, points)
            last = (found, want, points)
        except ValueError as e:
            faults = [str(e)]
        for f in faults:
            print(f"{path}: {f}")
        bad += bool(faults)
    drawings = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "drawings")
    for name in ("dxf_orientation_check.dxf", "svg_mm_viewbox.svg"):
        for f in seen(program, os.path.join(drawings, name), folder):
            print(f"{name}, the sheet of it: {f}")
            bad += 1
    for name in spoiled(*last) if last else ["anything"]:
        print(f"a spoiled value is not found: {name}")
        bad += 1
    if counted[".dxf"] < 24 or counted[".svg"] < 12:
        print("too few drawings were made")
        bad += 1
    print(f"{counted['.dxf']} DXF and {counted['.svg']} SVG drawings: {'all read right' if not bad else str(bad) + ' at fault'}")
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
