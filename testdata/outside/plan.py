"""Judges plan.json files with shapely, sharing no code with the program.

usage: plan.py FOLDER...        each with a plan.json; exit code 0 sound, 1 not

Held: strips cover each blank once; joints are the common edges of their
strips; parallel joints keep the stagger; no joint in a region to be kept
clear; each piece is its strip turned (and mirrored when face down); pieces
lie inside the usable width and do not overlap; lengths and areas add up.
"""
import json
import math
import sys
from itertools import combinations

from shapely import affinity
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union

GRID = 0.003  # two roundings to 0.001 mm, turned
ROUNDING = 0.005


def polygon(region):
    return Polygon(region["outer"], region["holes"] or [])


def same(a, b):
    """Equal but for edges moved by the rounding of their corners."""
    return a.symmetric_difference(b).area <= GRID * (a.length + b.length) / 2


def clipped(joint, net):
    """The stretches of a joint inside the net part, as pairs of points."""
    line = LineString([joint["from"], joint["to"]]).intersection(net)
    parts = getattr(line, "geoms", [line])
    return [list(p.coords) for p in parts if p.geom_type == "LineString" and p.length > 0]


def side_by_side(a, b, least):
    """Length over which segment a runs closer than least to b, measured square to b."""
    (bx, by), (ex, ey) = b[0], b[-1]
    length = math.hypot(ex - bx, ey - by)
    ux, uy = (ex - bx) / length, (ey - by) / length

    def local(p):
        dx, dy = p[0] - bx, p[1] - by
        return dx * ux + dy * uy, -dx * uy + dy * ux

    (s0, d0), (s1, d1) = local(a[0]), local(a[-1])
    if s0 > s1:
        (s0, d0), (s1, d1) = (s1, d1), (s0, d0)
    lo, hi = max(s0, 0), min(s1, length)
    if hi - lo <= 0:
        return 0, 0, None

    def off(s):
        return d0 + (d1 - d0) * (s - s0) / (s1 - s0)

    n = 64
    close = [s for s in (lo + (hi - lo) * k / n for k in range(n + 1)) if abs(off(s)) < least - ROUNDING]
    if not close:
        return 0, 0, None
    s = close[len(close) // 2]
    return (hi - lo) * len(close) / (n + 1), abs(off(s)), (bx + s * ux, by + s * uy)


class Faults(list):
    def say(self, text, *args):
        self.append(text % args)


def check_plies(plan, faults):
    for ply in plan["plies"]:
        blank = polygon(ply["blank"])
        strips = {s["id"]: polygon(s["shape"]) for s in ply["strips"]}
        for name, shape in strips.items():
            if not shape.is_valid:
                faults.say("%s is no valid polygon", name)
        if not same(unary_union(list(strips.values())), blank):
            faults.say("ply %d is not covered by its strips", ply["ply"])
        total = sum(s.area for s in strips.values())
        if abs(total - blank.area) > GRID * sum(s.length for s in strips.values()):
            faults.say("ply %d: strips have %.2f mm2, the blank %.2f", ply["ply"], total, blank.area)
        seams = 0.0
        for a, b in combinations(strips.values(), 2):
            if a.distance(b) < 0.01:
                seams += a.buffer(0.01).intersection(b.boundary).length
        listed = sum(math.dist(j["from"], j["to"]) for j in ply["joints"])
        if abs(seams - listed) > 0.05 * (1 + len(ply["joints"])) + 0.02 * len(strips):
            faults.say("ply %d: joints of %.2f mm listed, strips meet along %.2f", ply["ply"], listed, seams)


def check_stagger(plan, faults):
    net = polygon(plan["part"]["net"]).buffer(ROUNDING)
    rules = {f["name"]: f for f in plan["fabrics"]}
    blanks = [polygon(p["blank"]) for p in plan["plies"]]
    joints = [[(j, clipped(j, net)) for j in p["joints"]] for p in plan["plies"]]
    looked = 0
    for i, k in combinations(range(len(plan["plies"])), 2):
        a, b = rules[plan["plies"][i]["fabric"]], rules[plan["plies"][k]["fabric"]]
        least = max(a["stagger_mm"], b["stagger_mm"])
        between = max(a["plies_between"], b["plies_between"])
        if least == 0:
            continue
        for ja, pa in joints[i]:
            for jb, pb in joints[k]:
                if apart(ja, jb) > 5:
                    continue
                looked += 1
                for sa in pa:
                    for sb in pb:
                        run, off, at = side_by_side(sa, sb, least)
                        if run <= 1.1:
                            continue
                        there = LineString([at, (at[0] + 1e-6, at[1])])
                        if sum(blanks[m].intersects(there) for m in range(i + 1, k)) < between:
                            faults.say("plies %d and %d: joints %.3f mm apart at %.1f, %.1f; %.1f needed",
                                       plan["plies"][i]["ply"], plan["plies"][k]["ply"], off, *at, least)
    return looked


def apart(a, b):
    """Angle between two joints, in degrees from 0 to 90."""
    deg = [math.degrees(math.atan2(j["to"][1] - j["from"][1], j["to"][0] - j["from"][0])) for j in (a, b)]
    d = abs(deg[0] - deg[1]) % 180
    return min(d, 180 - d)


def check_keep_clear(plan, faults):
    for zone in plan["rules"]["keep_clear"]:
        region = polygon(zone["region"]).buffer(-ROUNDING)
        for ply in plan["plies"]:
            if zone["angles"] and ply["angle_deg"] not in zone["angles"]:
                continue
            blank = polygon(ply["blank"])
            for joint in ply["joints"]:
                line = LineString([joint["from"], joint["to"]]).intersection(region).intersection(blank)
                if line.length > 0.05:
                    faults.say("ply %d: a joint runs %.2f mm through a region to be kept clear", ply["ply"], line.length)


def overlap(a, b):
    p, q = a.bounds, b.bounds
    if p[0] > q[2] or q[0] > p[2] or p[1] > q[3] or q[1] > p[3]:
        return False
    return a.intersection(b).area > GRID * min(a.length, b.length)


def check_rolls(plan, faults):
    strips = {s["id"]: (p, polygon(s["shape"])) for p in plan["plies"] for s in p["strips"]}
    seen = set()
    for roll in plan["rolls"]:
        shapes = []
        for piece in roll["pieces"]:
            shape = polygon(piece["shape"])
            shapes.append(shape)
            if piece["id"] in seen:
                faults.say("%s is cut twice", piece["id"])
            seen.add(piece["id"])
            if piece["id"] not in strips:
                faults.say("%s is no strip", piece["id"])
                continue
            ply, strip = strips[piece["id"]]
            down = ply["face"] == "down"
            if piece["mirrored"] != down:
                faults.say("%s: face %s, mirrored %s", piece["id"], ply["face"], piece["mirrored"])
            turned = affinity.rotate(strip, -ply["angle_deg"], origin=(0, 0))
            if down:
                turned = affinity.scale(turned, 1, -1, origin=(0, 0))
            if plan["rules"].get("ends") == "straight":
                turned = turned.envelope
            turned = affinity.rotate(turned, piece["turned"], origin=(0, 0))
            moved = affinity.translate(turned, shape.bounds[0] - turned.bounds[0], shape.bounds[1] - turned.bounds[1])
            if not same(moved, shape):
                faults.say("%s is not its strip", piece["id"])
        bounds = [s.bounds for s in shapes]
        if min(b[0] for b in bounds) < -ROUNDING or min(b[1] for b in bounds) < -ROUNDING:
            faults.say("roll %s: a piece begins before the roll", roll["roll"])
        if max(b[3] for b in bounds) > roll["usable_width_mm"] + ROUNDING:
            faults.say("roll %s: a piece is beyond the usable width", roll["roll"])
        used = max(b[2] for b in bounds)
        if abs(used - roll["used_length_mm"]) > 0.01:
            faults.say("roll %s: used %.3f, pieces end at %.3f", roll["roll"], roll["used_length_mm"], used)
        if roll["stock_length_mm"] and used > roll["stock_length_mm"] + ROUNDING:
            faults.say("roll %s: longer than it is", roll["roll"])
        for cut in roll["cross_cuts"]:
            for b in bounds:
                if b[0] < cut - ROUNDING and b[2] > cut + ROUNDING:
                    faults.say("roll %s: the cross-cut at %.3f goes through a piece", roll["roll"], cut)
        for n, m in combinations(range(len(shapes)), 2):
            if overlap(shapes[n], shapes[m]):
                faults.say("roll %s: %s and %s overlap", roll["roll"], roll["pieces"][n]["id"], roll["pieces"][m]["id"])
    for missing in sorted(set(strips) - seen):
        faults.say("%s is never cut", missing)


def check_sums(plan, faults):
    weight = {f["name"]: f["weight_gsm"] for f in plan["fabrics"]}
    for ply, q in zip(plan["plies"], plan["quantities"], strict=True):
        area = polygon(ply["blank"]).area
        if abs(area - q["area_mm2"]) > 0.01 + 1e-9 * area:
            faults.say("ply %d: area %.3f, worked out %.3f", ply["ply"], q["area_mm2"], area)
        if abs(area * weight[ply["fabric"]] / 1e6 - q["dry_g"]) > 0.01:
            faults.say("ply %d: dry weight %.3f g", ply["ply"], q["dry_g"])
    for line in plan["lengths"]:
        used = sum(r["used_length_mm"] for r in plan["rolls"]
                   if r["fabric"] == line["fabric"] and r["width_mm"] == line["width_mm"])
        if abs(used - line["used_mm"]) > 0.01:
            faults.say("%s %s: used %.3f, rolls add up to %.3f", line["fabric"], line["width_mm"], line["used_mm"], used)
    for cost in plan["cost"]:
        if cost["used"] < cost["bound"] * (1 - 1e-9):
            faults.say("%s: used %.3f is less than the bound %.3f", cost["fabric"], cost["used"], cost["bound"])
        if cost["measure"] == "length":
            narrow = sum(polygon(p["blank"]).area for p in plan["plies"] if p["fabric"] == cost["fabric"])
            widest = max(r["usable_width_mm"] for r in plan["rolls"] if r["fabric"] == cost["fabric"])
            if cost["used"] < narrow / widest * (1 - 1e-9):
                faults.say("%s: used less than its area", cost["fabric"])


def main():
    bad = False
    for folder in sys.argv[1:]:
        with open(folder + "/plan.json", encoding="utf-8") as f:
            plan = json.load(f)
        faults = Faults()
        check_plies(plan, faults)
        pairs = check_stagger(plan, faults)
        check_keep_clear(plan, faults)
        check_rolls(plan, faults)
        check_sums(plan, faults)
        pieces = sum(len(r["pieces"]) for r in plan["rolls"])
        print("%s: %d plies, %d pieces, %d pairs of parallel joints: %s"
              % (folder, len(plan["plies"]), pieces, pairs, "; ".join(faults) or "sound"))
        bad = bad or bool(faults)
    sys.exit(bad or len(sys.argv) < 2)


main()
