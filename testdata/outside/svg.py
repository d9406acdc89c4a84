"""Measures the SVG files of a folder as rsvg-convert renders them.

usage: svg.py FOLDER...         exit code 0 when all agree, 1 when not

Held: the page has the size that the file declares in mm; there is ink on it,
and none is cut off at the edge; in a cutting file the cuts measure what
plan.json says of the roll, or of the table length that the pieces lie on.
"""
import glob
import io
import json
import re
import subprocess
import sys

from PIL import Image, ImageChops

COARSE = 2  # mm a pixel, for whole pages

Image.MAX_IMAGE_PIXELS = None


def render(path, group=None):
    """The picture of a page, COARSE mm a pixel, or of one group of it, cut out,
    one mm a pixel (a group is measured in user units)."""
    dots = str(25.4 / COARSE)
    args = ["rsvg-convert", "-d", dots, "-p", dots, "--unlimited", "-b", "white"]
    if group:
        args += ["-i", group]
    data = subprocess.run(args + [path], check=True, capture_output=True).stdout
    return Image.open(io.BytesIO(data)).convert("L")


def ink(picture):
    """Box around all that is not white, in pixels."""
    return ImageChops.invert(picture).point(lambda v: 255 if v > 40 else 0).getbbox()


def declared(path, faults):
    with open(path, encoding="utf-8") as f:
        head = f.read(4000)
    size = re.search(r'<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"', head)
    if not size:
        faults.append(f"{path}: does not declare its size in mm")
        return 0, 0
    w, h, vw, vh = map(float, size.groups())
    if (w, h) != (vw, vh):
        faults.append(f"{path}: one unit is not one millimetre")
    return w, h


def check_page(path, faults):
    w, h = declared(path, faults)
    picture = render(path)
    measured = picture.width * COARSE, picture.height * COARSE
    if abs(measured[0] - w) > COARSE or abs(measured[1] - h) > COARSE:
        faults.append(f"{path}: declares {w} x {h} mm, measures {measured[0]} x {measured[1]}")
    box = ink(picture)
    if box is None:
        faults.append(f"{path}: is empty")
    elif box[0] < 1 or box[1] < 1 or box[2] > picture.width - 1 or box[3] > picture.height - 1:
        faults.append(f"{path}: ink at the edge of the page")


def check_cuts(path, plan, faults):
    """The size of the group CUT against the pieces that the file names."""
    with open(path, encoding="utf-8") as f:
        names = set(re.findall(r'aria-label="(P\d+-S\d+)', f.read()))
    pieces = [(r, p["shape"]["outer"]) for r in plan["rolls"] for p in r["pieces"] if p["id"] in names]
    if not pieces:
        faults.append(f"{path}: names no piece")
        return
    xs = [x for _, o in pieces for x, _ in o]
    ys = [y for _, o in pieces for _, y in o]
    roll = pieces[0][0]
    start = max([0.0] + [c for c in roll["cross_cuts"] if c <= min(xs) + 0.01])
    want = max(xs) - start, max(ys) - min(ys)
    box = ink(render(path, "CUT"))
    got = box[2] - box[0], box[3] - box[1]
    if abs(got[0] - want[0]) > 2 or abs(got[1] - want[1]) > 2:
        faults.append(f"{path}: cuts measure {got[0]} x {got[1]} mm, pieces {want[0]} x {want[1]}")


def main():
    bad = False
    for folder in sys.argv[1:]:
        with open(folder + "/plan.json", encoding="utf-8") as f:
            plan = json.load(f)
        faults = []
        sheets = sorted(glob.glob(folder + "/*.svg"))
        for path in sheets:
            check_page(path, faults)
        for path in glob.glob(folder + "/roll-*-cut.svg"):
            check_cuts(path, plan, faults)
        plies = [s for s in sheets if "/ply-" in s]
        if len(plies) != len(plan["plies"]):
            faults.append(f"{folder}: {len(plies)} ply sheets for {len(plan['plies'])} plies")
        print(f"{folder}: {len(sheets)} sheets: " + ("; ".join(faults) or "agree"))
        bad = bad or bool(faults)
    sys.exit(bad or len(sys.argv) < 2)


main()
