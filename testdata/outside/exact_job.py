"""The figures of a small right-angled job, read from the job file itself: what
exact.py writes its model from. A key that the model does not hold is refused,
so that no rule of a job is left out unnoticed.

Lengths are whole mm. Across is the direction square to a ply's strips, measured
from the lower edge of the blank."""
from math import gcd

import yaml

KNOWN = {
    "": {"title", "units", "part", "fabrics", "schedule", "joints"},
    "part": {"outline", "trim", "drawn_from"},
    "outline": {"rectangle"},
    "fabric": {"weight", "fibre", "rolls", "stagger", "plies_between"},
    "roll": {"id", "width"},
    "ply": {"fabric", "angle"},
    "joints": {"stagger", "plies_between", "narrowest", "cutting_gap", "laying_tolerance", "keep_clear"},
    "zone": {"rectangle", "at", "angles"},
}


class Fabric:
    """A fabric that comes on one endless roll."""

    def __init__(self, name, width, stagger, between):
        self.name, self.width, self.stagger, self.between = name, width, stagger, between


class Ply:
    """A ply at 0 or 90 degrees: its blank is long by across, its net part lies
    trim inside. zones are the stretches of across without a joint."""

    def __init__(self, fabric, angle, long, across, trim, zones):
        self.fabric, self.angle, self.long, self.across, self.trim, self.zones = fabric, angle, long, across, trim, zones

    def joints(self, phase):
        """The joints of a phase, inside the blank."""
        return [y for y in range(phase, self.across, self.fabric.width) if y > 0]

    def heights(self, phase):
        """The heights of the strips of a phase, from the lower edge."""
        edges = [0] + self.joints(phase) + [self.across]
        return [b - a for a, b in zip(edges, edges[1:])]

    def counting(self, phase):
        """The joints of a phase that count for the stagger: inside the net part."""
        return [y for y in self.joints(phase) if self.trim < y < self.across - self.trim]


class Job:
    parts = 1  # of a step of the grid

    def __init__(self, path):
        with open(path, encoding="utf-8") as f:
            top = held("", yaml.safe_load(f))
        if top["units"] != "mm":
            raise SystemExit(f"{path}: lengths must be mm")
        rules = held("joints", top["joints"])
        self.gap = whole(rules.get("cutting_gap", 0))
        self.narrowest = whole(rules["narrowest"])
        self.tolerance = whole(rules.get("laying_tolerance", 0))
        self.fabrics = {n: fabric(n, f, rules, self.tolerance) for n, f in top["fabrics"].items()}
        part = held("part", top["part"])
        self.trim = whole(part["trim"])
        size = [whole(x) for x in held("outline", part["outline"])["rectangle"]]
        zones = [held("zone", z) for z in rules.get("keep_clear", [])]
        self.plies = [self.ply(held("ply", p), size, zones) for p in top["schedule"]]

    def ply(self, figures, size, zones):
        angle = figures["angle"]
        if angle not in (0, 90):
            raise SystemExit(f"a ply at {angle} degrees is none of a right-angled job")
        long, across = size if angle == 0 else size[::-1]
        side = 1 if angle == 0 else 0
        barred = []
        for z in zones:
            if angle in z.get("angles", [0, 90]):
                low = whole(z["at"][side]) + self.trim
                barred.append((low - self.tolerance, low + whole(z["rectangle"][side]) + self.tolerance))
        return Ply(self.fabrics[figures["fabric"]], angle, long + 2 * self.trim, across + 2 * self.trim, self.trim, barred)

    def pairs(self):
        """Pairs of plies whose joints must keep a stagger, with that stagger."""
        for j, b in enumerate(self.plies):
            for i, a in enumerate(self.plies[:j]):
                if a.angle == b.angle and j - i <= max(a.fabric.between, b.fabric.between):
                    yield i, j, max(a.fabric.stagger, b.fabric.stagger)

    def step(self):
        """The widest grid that every figure across lies on, parted where that was
        asked for."""
        figures = [self.gap, self.narrowest]
        for p in self.plies:
            figures += [p.fabric.width, p.across, p.trim, p.fabric.stagger]
            figures += [y for z in p.zones for y in z]
        step, rest = divmod(gcd(*figures), self.parts)
        if rest:
            raise SystemExit(f"a grid of {gcd(*figures)} mm is not parted into {self.parts} by whole mm")
        return step

    def area_of_roll(self):
        """The roll that the strips take by their area, with the gap about each."""
        area = 0
        for p in self.plies:
            strips = -(-p.across // p.fabric.width)
            area += (p.across + strips * self.gap) * (p.long + self.gap) / (p.fabric.width + self.gap)
        return area

    def allowed(self, ply, phase):
        """Whether a phase leaves no strip too narrow and bars no zone."""
        joints = ply.joints(phase)
        if joints and min(ply.heights(phase)) < self.narrowest:
            return False
        return not any(a < y < b for y in joints for a, b in ply.zones)


def fabric(name, figures, rules, tolerance):
    figures = held("fabric", figures)
    (roll,) = figures["rolls"]
    stagger = max(whole(rules["stagger"]), 0) if "stagger" not in figures else whole(figures["stagger"])
    between = figures.get("plies_between", rules["plies_between"])
    return Fabric(name, whole(held("roll", roll)["width"]), stagger + 2 * tolerance, between)


def held(what, figures):
    unknown = set(figures) - KNOWN[what]
    if unknown:
        raise SystemExit(f"the model does not hold {', '.join(sorted(unknown))} of {what or 'the job'}")
    return figures


def whole(x):
    if not isinstance(x, int):
        raise SystemExit(f"{x!r} is no whole number of mm")
    return x
