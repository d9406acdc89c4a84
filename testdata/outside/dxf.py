"""Reads the DXF files of a folder with ezdxf and holds them against plan.json.

usage: dxf.py FOLDER...         exit code 0 when all agree, 1 when not

Held: read whole in the release that was asked for, no audit errors, millimetres
stated; pieces-mm.dxf has each
piece once, closed, in its shape; in the cut maps the cuts and the roll's edges
enclose each piece in its shape and place, and no stretch is cut twice.
"""
import glob
import json
import logging
import os
import sys

import ezdxf
from ezdxf.path import make_path
from shapely import affinity
from shapely.geometry import LineString, Polygon
from shapely.ops import polygonize, unary_union

logging.disable(logging.WARNING)
CHORD = 0.002
TOLERANCE = 0.02  # mean distance between two edges that are the same, mm


def polygon(region):
    return Polygon(region["outer"], region["holes"] or [])


def same(a, b):
    return a.symmetric_difference(b).area <= TOLERANCE * (a.length + b.length) / 2


def at_zero(shape):
    return affinity.translate(shape, -shape.bounds[0], -shape.bounds[1])


def named(plan, layer):
    """What a layer is called in the plan's drawings."""
    names = {n["layer"]: n["name"] for n in (plan.get("dxf") or {"layers": []})["layers"]}
    return names.get(layer, layer)


def read(path, plan, faults):
    with open(path, encoding="ascii") as f:
        lines = [x.strip() for x in f.read().rstrip().splitlines()]
    if lines[-2:] != ["0", "EOF"]:
        faults.append(f"{path}: does not end with EOF")
    doc = ezdxf.readfile(path)
    release = {"r12": "AC1009", "r2000": "AC1015"}[(plan.get("dxf") or {"release": "r12"})["release"]]
    if doc.dxfversion != release:
        faults.append(f"{path}: is {doc.dxfversion}, {release} was asked for")
    audit = doc.audit()
    if audit.errors or audit.fixes:
        faults.append(f"{path}: audit finds {len(audit.errors)} errors and {len(audit.fixes)} fixes")
    if doc.header.get("$INSUNITS") != 4 or doc.header.get("$MEASUREMENT") != 1:
        faults.append(f"{path}: the header does not say millimetres")
    return doc.modelspace()


def lines_of(space, layer):
    """Vertex lists of the line work on a layer."""
    out = []
    for e in space:
        if e.dxf.layer == layer and e.dxftype() != "TEXT":
            out.append([(v.x, v.y) for v in make_path(e).flattening(CHORD)])
    return out


def texts(space):
    return [e.dxf.text for e in space if e.dxftype() == "TEXT"]


def check_scale(path, plan, space, faults):
    """The bar on layer SCALE measures 100 mm."""
    xs = [x for line in lines_of(space, named(plan, "SCALE")) for x, _ in line]
    if not xs or abs(max(xs) - min(xs) - 100) > 0.01:
        faults.append(f"{path}: the scale bar is not 100 mm long")


def check_pieces(path, plan, faults):
    space = read(path, plan, faults)
    check_scale(path, plan, space, faults)
    rings = []
    for v in lines_of(space, named(plan, "CUT")):
        if v[0] != v[-1]:
            faults.append(f"{path}: an outline is open at {v[0]}")
        rings.append(Polygon(v))
    rings.sort(key=lambda r: -r.area)
    found = []
    for r in rings:
        home = next((f for f in found if f[0].contains(r)), None)
        if home:
            home[1].append(r)
        else:
            found.append((r, []))
    shapes = [at_zero(Polygon(o.exterior, [h.exterior.coords for h in hs])) for o, hs in found]
    pieces = {p["id"]: at_zero(polygon(p["shape"])) for r in plan["rolls"] for p in r["pieces"]}
    if len(shapes) != len(pieces):
        faults.append(f"{path}: {len(shapes)} outlines for {len(pieces)} pieces")
    for name, piece in pieces.items():
        match = next((s for s in shapes if abs(s.area - piece.area) < 1 and same(s, piece)), None)
        if match is None:
            faults.append(f"{path}: no outline is that of {name}")
        else:
            shapes.remove(match)
    labels = texts(space)
    for name in pieces:
        if labels.count(name) != 1:
            faults.append(f"{path}: {name} stands {labels.count(name)} times")
    for a, _ in found:
        for b, _ in found:
            if a is not b and a.intersects(b):
                faults.append(f"{path}: two outlines touch")
                return


def check_roll(path, plan, faults):
    space = read(path, plan, faults)
    check_scale(path, plan, space, faults)
    names = set(texts(space))
    pieces = [(r, p) for r in plan["rolls"] for p in r["pieces"] if p["id"] in names]
    if not pieces:
        faults.append(f"{path}: no piece on it")
        return []
    roll = pieces[0][0]
    if any(r is not roll for r, _ in pieces):
        faults.append(f"{path}: pieces of two rolls")
    first = min(polygon(p["shape"]).bounds[0] for _, p in pieces)
    start = max([0.0] + [c for c in roll["cross_cuts"] if c <= first + 0.01])
    edge = (roll["width_mm"] - roll["usable_width_mm"]) / 2
    cuts = [LineString([p, q]) for v in lines_of(space, named(plan, "CUT")) for p, q in zip(v, v[1:]) if p != q]
    edges = [LineString(v) for v in lines_of(space, named(plan, "ROLL"))]
    whole = unary_union(cuts)
    twice = sum(c.length for c in cuts) - whole.length
    if twice > 0.05:
        faults.append(f"{path}: {twice:.3f} mm are cut twice")
    faces = [f for f in polygonize(unary_union(cuts + edges)) if f.area > 0.01]
    offsets = {0.0, edge}
    for _, p in pieces:
        want = affinity.translate(polygon(p["shape"]), -start, 0)
        if not any(same(whole_of(faces, affinity.translate(want, 0, o)), affinity.translate(want, 0, o)) for o in offsets):
            faults.append(f"{path}: the cuts do not enclose {p['id']}")
    return [p["id"] for _, p in pieces]


def whole_of(faces, want):
    """The faces whose middle lies in the wanted shape, as one."""
    return unary_union([f for f in faces if f.representative_point().within(want)])


def main():
    bad = False
    for folder in sys.argv[1:]:
        with open(folder + "/plan.json", encoding="utf-8") as f:
            plan = json.load(f)
        faults, seen = [], []
        maps = sorted(glob.glob(folder + "/roll-*-mm.dxf"))
        for path in maps:
            seen += check_roll(path, plan, faults)
        pieces = [p["id"] for r in plan["rolls"] for p in r["pieces"]]
        if sorted(seen) != sorted(pieces):
            faults.append(f"{folder}: the cut maps do not show each piece once")
        check_pieces(folder + "/pieces-mm.dxf", plan, faults)
        known = set(maps) | {folder + "/pieces-mm.dxf"}
        for path in glob.glob(folder + "/*.dxf"):
            if path not in known:
                faults.append(f"{path}: a drawing that nothing holds")
        print(f"{os.path.basename(folder)}: {len(known)} drawings, {len(pieces)} pieces: " + ("; ".join(faults) or "agree"))
        bad = bad or bool(faults)
    sys.exit(bad or len(sys.argv) < 2)


main()
