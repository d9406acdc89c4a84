"""Measures templates on the print: what is drawn of a ply or piece against
plan.json, on every sheet, through the crosses that lie over those of its
neighbours."""
import os
import re

from shapely.geometry import LineString, box
from shapely.ops import unary_union

from pdf_rim import DOTS, MUPDF, POPPLER, check_bars, pictures
from pdf_words import boxes, lines

MARGIN, OVERLAP, AROUND, HEAD = 10.0, 10.0, 5.0, 13.0
NEAR = 0.2  # mm: lines are 0.3 to 0.6 mm thick
SHEET = re.compile(r"sheet (\d+) of (\d+)")


def rings(region):
    return [region["outer"], *region.get("holes", [])]


def wanted(plan, name):
    """The lines that are drawn, in the frame of the ply or of the roll."""
    out = []
    for ply in plan["plies"]:
        if ply["strips"] and ply["strips"][0]["id"].split("-")[0] == name:
            for region in (plan["part"]["net"], ply["blank"]):
                out += [LineString(r + r[:1]) for r in rings(region)]
            joints = [LineString([j["from"], j["to"]]) for j in ply["joints"]]
            frame = LineString(ply["blank"]["outer"]).bounds
            return out, joints, frame
    for roll in plan["rolls"]:
        for piece in roll["pieces"]:
            if piece["id"] == name:
                out = [LineString(r + r[:1]) for r in rings(piece["shape"])]
                return out, [], out[0].bounds
    return [], [], None


def crosses(picture):
    """The frame of a sheet in mm: where its crosses stand."""
    # Long thin lines are the sheet's frame: the crosses stand 5 mm inside it.
    w, h = picture.size
    left = next(x for x in range(w) if sum(v < 150 for v in picture.crop((x, h // 4, x + 1, 3 * h // 4)).getdata()) > 0.4 * h)
    bottom = next(y for y in range(h - 1, 0, -1) if sum(v < 150 for v in picture.crop((w // 4, y, 3 * w // 4, y + 1)).getdata()) > 0.4 * w)
    return left / DOTS, (h - bottom) / DOTS


def dark(picture, x, y):
    """Whether there is ink within NEAR of a place in mm from the lower left."""
    cx, cy, r = x * DOTS, picture.height - y * DOTS, NEAR * DOTS
    return min(picture.crop((round(cx - r), round(cy - r), round(cx + r) + 1, round(cy + r) + 1)).getdata()) < 140


def check(path, plan, faults):
    for program in (POPPLER, MUPDF):
        measure(path, plan, program, faults)


def measure(path, plan, program, faults):
    name = re.match(r"template-(.+)-(a4|letter)\.pdf", os.path.basename(path)).group(1)
    outlines, joints, frame = wanted(plan, name)
    if not outlines:
        faults.append(f"{path}: no ply or piece {name} in the plan")
        return
    words, shown = boxes(path), pictures(path, program)
    check_bars(path, 1, words[0], shown[0], faults)
    paper = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}[path[:-4].rsplit("-", 1)[1]]
    if shown[1].width > shown[1].height:
        paper = paper[::-1]
    wide, high = paper[0] - 2 * MARGIN, paper[1] - 2 * MARGIN - HEAD
    across = -(-(frame[2] - frame[0] + 2 * AROUND - OVERLAP) // (wide - OVERLAP))
    up = -(-(frame[3] - frame[1] + 2 * AROUND - OVERLAP) // (high - OVERLAP))
    windows = [
        box(x, y, x + wide, y + high)
        for y in (frame[1] - AROUND + j * (high - OVERLAP) for j in range(int(up)))
        for x in (frame[0] - AROUND + i * (wide - OVERLAP) for i in range(int(across)))
    ]
    everything = unary_union(outlines + joints)
    used = [w for w in windows if w.intersects(everything)]
    if len(used) != len(shown) - 1:
        faults.append(f"{path}: {len(shown) - 1} sheets, the lines run over {len(used)}")
        return
    probes = 0
    for n, (window, picture, found) in enumerate(zip(used, shown[1:], words[1:]), 1):
        head = " ".join(line[0] for line in lines(found))
        if not SHEET.search(head) or int(SHEET.search(head).group(1)) != n:
            faults.append(f"{path}: sheet {n} is not called so")
        left, low = crosses(picture)
        if abs(left - MARGIN) > 0.2 or abs(low - MARGIN) > 0.2:
            faults.append(f"{path}: sheet {n}: its frame stands at {left}, {low} mm")
        inner = window.buffer(-3)
        missed = total = 0
        for line in outlines[:1] + joints:
            parts = line.intersection(inner)
            for p in (q.interpolate(7 * k) for q in getattr(parts, "geoms", [parts]) for k in range(int(q.length // 7))):
                total += 1
                x, y = p.x - window.bounds[0] + MARGIN, p.y - window.bounds[1] + MARGIN
                missed += not dark(picture, x, y)
        probes += total
        # A name on a joint hides some of it.
        if missed > max(2, 0.1 * total):
            faults.append(f"{path}: sheet {n}: {missed} of {total} places of its lines bear no ink")
    if probes < 10:
        faults.append(f"{path}: {probes} places looked at")
