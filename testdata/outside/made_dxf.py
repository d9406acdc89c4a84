"""Random DXF drawings by ezdxf for drawings.py."""
import math

import ezdxf
from ezdxf.math import Vec3

import made

UNITS = {"mm": (4, 1.0), "cm": (5, 10.0), "m": (6, 1000.0), "in": (1, 25.4)}
OLD = ("loose", "polyline", "circle", "insert", "nested", "array base")
NEW = OLD + ("ellipse", "ellipse arcs", "bezier", "closed spline", "rational spline", "turned over")


def xy(z):
    return (z.real, z.imag)


def bulge_of(s):
    return 0.0 if isinstance(s, made.Line) else math.tan((s.t1 - s.t0) / 4)


def add_polyline(space, doc, contour, over=False):
    """One closed polyline; over: drawn in the plane seen from below."""
    side = -1 if over else 1
    points = [(side * s.p.real, s.p.imag, side * bulge_of(s)) for s in contour]
    attribs = {"extrusion": (0, 0, -1)} if over else {}
    if doc.dxfversion == "AC1009":
        space.add_polyline2d(points, format="xyb", close=True, dxfattribs=attribs)
    else:
        space.add_lwpolyline(points, format="xyb", close=True, dxfattribs=attribs)


def add_segment(space, s):
    if isinstance(s, made.Line):
        space.add_line(xy(s.p), xy(s.q))
    elif isinstance(s, made.Cubic):
        e = space.add_open_spline([xy(z) for z in (s.p, s.c1, s.c2, s.q)], degree=3)
        assert len(e.knots) == 8
    else:
        low, high = sorted((s.t0, s.t1))
        whole = abs(high - low - 2 * math.pi) < 1e-12
        if s.a == s.b and whole:
            space.add_circle(xy(s.c), s.a)
        elif s.a == s.b:
            space.add_arc(xy(s.c), s.a, math.degrees(low + s.turn), math.degrees(high + s.turn))
        else:
            add_ellipse(space, s, low, high)


def add_ellipse(space, s, low, high):
    """The longer half axis leads in DXF."""
    turn, a, b = s.turn, s.a, s.b
    if b > a:
        turn, a, b, low, high = turn + math.pi / 2, b, a, low - math.pi / 2, high - math.pi / 2
    major = Vec3.from_angle(turn, a)
    if abs(high - low - 2 * math.pi) < 1e-12:
        low, high = 0, 2 * math.pi
    space.add_ellipse(xy(s.c), major_axis=major, ratio=b / a, start_param=low, end_param=high)


def add_loose(space, rng, contour):
    parts = [made.reversed_(s) if rng.random() < 0.5 else s for s in contour]
    rng.shuffle(parts)
    for s in parts:
        add_segment(space, s)


def scaled(contour, f):
    """The contour in the unit of the file."""
    out = []
    for s in contour:
        if isinstance(s, made.Line):
            out.append(made.Line(s.p * f, s.q * f))
        elif isinstance(s, made.Cubic):
            out.append(made.Cubic(s.p * f, s.c1 * f, s.c2 * f, s.q * f))
        else:
            out.append(made.Arc(s.c * f, s.a * f, s.b * f, s.turn, s.t0, s.t1))
    return out


def add_spline(space, rng, size, f, rational):
    """A closed spline; its flattened form is ezdxf's own evaluation."""
    n = rng.randint(6, 10)
    frame = [Vec3.from_angle(2 * math.pi * i / n, size * rng.uniform(0.75, 1) * f) for i in range(n)]
    e = space.add_spline()
    if rational:
        e.set_closed_rational(frame, weights=[rng.uniform(0.6, 1.8) for _ in frame], degree=3)
    else:
        e.set_closed(frame, degree=rng.choice([2, 3]))
    return [(p.x / f, p.y / f) for p in e.construction_tool().approximate(5000)][:-1]


def insertion(rng, mirrored):
    """Attributes of an INSERT and what it does to a point, both without unit."""
    scale = rng.choice([0.5, 1.0, 1.6])
    sx, sy = scale * (-1 if mirrored else 1), scale
    turn = rng.uniform(0, 360)
    at = (rng.uniform(-900, 900), rng.uniform(-900, 900))
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))

    def place(base):
        return lambda x, y: (
            at[0] + cos * sx * (x - base[0]) - sin * sy * (y - base[1]),
            at[1] + sin * sx * (x - base[0]) + cos * sy * (y - base[1]),
        )

    return at, {"xscale": sx, "yscale": sy, "rotation": turn}, place


def draw(rng, path, version, kind):
    """Writes a drawing; gives its true shape in mm and the options for reading."""
    doc = ezdxf.new(version, setup=False)
    unit = rng.choice(sorted(UNITS))
    number, mm = UNITS[unit]
    doc.header["$INSUNITS"] = number
    doc.header["$MEASUREMENT"] = 0 if unit == "in" else 1
    f, size = 1 / mm, rng.uniform(120, 900)
    space = doc.modelspace()
    target, place = space, made.placing(1, 0, 0, 1, 0, 0)
    if kind in ("insert", "nested", "array base"):
        base = (rng.uniform(-50, 50), rng.uniform(-50, 50)) if kind == "array base" else (0, 0)
        target = doc.blocks.new("PART", base_point=(base[0] * f, base[1] * f))
        at, attribs, inner = insertion(rng, mirrored=rng.random() < 0.7)
        holder, place = space, inner(base)
        if kind == "nested":
            holder = doc.blocks.new("HOLDER")
            at2, attribs2, outer = insertion(rng, mirrored=rng.random() < 0.5)
            first, second = place, outer((0, 0))
            place = lambda x, y: second(*first(x, y))  # noqa: E731
            space.add_blockref("HOLDER", (at2[0] * f, at2[1] * f), dxfattribs=attribs2)
        holder.add_blockref("PART", (at[0] * f, at[1] * f), dxfattribs=attribs)
    outer = add_outer(target, doc, rng, kind, size, f)
    inner = made.holes(rng, size)
    for h in inner:
        if len(h) == 1:
            add_segment(target, scaled(h, f)[0])
        else:
            add_polyline(target, doc, scaled(h, f), over=kind == "turned over")
    doc.saveas(path)
    options = ["--units", unit] if version == "R12" else []
    return made.polygon(outer, [made.ring(h) for h in inner], place), options


def add_outer(target, doc, rng, kind, size, f):
    """Draws the outer contour and gives its points in mm."""
    if kind == "circle":
        outer = made.circle(0, size)
    elif kind == "ellipse":
        outer = [made.Arc(0, size, size * rng.uniform(0.5, 0.9), rng.uniform(0, 6), 0, 2 * math.pi)]
    elif kind in ("closed spline", "rational spline"):
        return add_spline(target, rng, size, f, kind == "rational spline")
    else:
        kinds = {"ellipse arcs": ("line", "ellipse", "arc"), "bezier": ("line", "cubic")}.get(kind, ("line", "line", "arc"))
        outer = made.contour(rng, size, kinds)
    if kind in ("polyline", "insert", "turned over"):
        add_polyline(target, doc, scaled(outer, f), over=kind == "turned over")
    else:
        add_loose(target, rng, scaled(outer, f))
    return made.ring(outer)
