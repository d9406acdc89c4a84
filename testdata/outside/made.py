"""Random contours for drawings.py: lines, arcs, parts of ellipses and cubic
curves, in mm with y up, and how they look to shapely, flattened finely."""
import cmath
import math

from shapely.geometry import Point, Polygon

FINE = 0.0005  # mm between a curve and its flattened form


class Line:
    def __init__(self, p, q):
        self.p, self.q = p, q

    def points(self):
        return [self.p]


class Arc:
    """Part of an ellipse with half axes a, b, turned by turn, from t0 to t1."""

    def __init__(self, c, a, b, turn, t0, t1):
        self.c, self.a, self.b, self.turn, self.t0, self.t1 = c, a, b, turn, t0, t1
        self.p, self.q = self.at(t0), self.at(t1)

    def at(self, t):
        return self.c + cmath.rect(1, self.turn) * complex(self.a * math.cos(t), self.b * math.sin(t))

    def points(self):
        n = math.ceil(abs(self.t1 - self.t0) / (2 * math.acos(1 - FINE / max(self.a, self.b)))) + 1
        return [self.at(self.t0 + (self.t1 - self.t0) * i / n) for i in range(n)]


class Cubic:
    def __init__(self, p, c1, c2, q):
        self.p, self.c1, self.c2, self.q = p, c1, c2, q

    def points(self):
        n = 2000
        ts = [i / n for i in range(n)]
        return [
            (1 - t) ** 3 * self.p + 3 * (1 - t) ** 2 * t * self.c1 + 3 * (1 - t) * t * t * self.c2 + t**3 * self.q for t in ts
        ]


def bulged(p, q, bulge):
    """The arc from p to q whose quarter angle has the tangent bulge, positive
    counter-clockwise."""
    sweep = 4 * math.atan(bulge)
    r = abs(q - p) / (2 * math.sin(abs(sweep) / 2))
    side = 1 if sweep > 0 else -1
    c = (p + q) / 2 + side * 1j * (q - p) / abs(q - p) * r * math.cos(sweep / 2)
    t0 = cmath.phase(p - c)
    return Arc(c, r, r, 0.0, t0, t0 + sweep)


def half_ellipse(p, q, high):
    """From p to q, bulging to the right by high."""
    return Arc((p + q) / 2, abs(q - p) / 2, high, cmath.phase(q - p), -math.pi, 0)


def ring(contour):
    return [(z.real, z.imag) for s in contour for z in s.points()]


def edge(rng, p, q, kinds):
    kind = rng.choice(kinds)
    if kind == "arc":
        return bulged(p, q, rng.choice([-1, 1]) * rng.uniform(0.05, 0.45))
    if kind == "ellipse":
        return half_ellipse(p, q, abs(q - p) * rng.uniform(0.1, 0.4))
    if kind == "cubic":
        across = 1j * (q - p)
        return Cubic(p, p + (q - p) / 3 + across * rng.uniform(-0.3, 0.3), p + 2 * (q - p) / 3 + across * rng.uniform(-0.3, 0.3), q)
    return Line(p, q)


def contour(rng, size, kinds=("line", "line", "arc")):
    """A closed contour about zero, counter-clockwise, that does not meet itself
    and is not the same seen from the other side."""
    while True:
        n = rng.randint(5, 9)
        corners = [
            cmath.rect(size * rng.uniform(0.6, 1), 2 * math.pi * (i + rng.uniform(-0.25, 0.25)) / n) for i in range(n)
        ]
        segments = [edge(rng, p, q, kinds) for p, q in zip(corners, corners[1:] + corners[:1])]
        shape = Polygon(ring(segments))
        # A margin, so that flattening by another program changes nothing of it.
        if shape.is_valid and shape.buffer(-size / 50).geom_type == "Polygon" and shape.contains(Point(0, 0).buffer(0.3 * size)):
            return segments


def circle(c, r):
    return [Arc(c, r, r, 0.0, 0.0, 2 * math.pi)]


def holes(rng, size, kinds=("line", "arc")):
    """Up to three contours within 0.28 size of zero that do not meet: circles and
    small outlines."""
    out = []
    for i in range(rng.randint(0, 3)):
        c = cmath.rect(0.16 * size, 2 * math.pi * i / 3 + rng.uniform(-0.2, 0.2))
        r = size * rng.uniform(0.04, 0.09)
        out.append(circle(c, r) if rng.random() < 0.5 else moved(contour(rng, r, kinds), c))
    return out


def moved(segments, by):
    for s in segments:
        for name in ("p", "q", "c", "c1", "c2"):
            if hasattr(s, name):
                setattr(s, name, getattr(s, name) + by)
    return segments


def reversed_(s):
    if isinstance(s, Line):
        return Line(s.q, s.p)
    if isinstance(s, Cubic):
        return Cubic(s.q, s.c2, s.c1, s.p)
    return Arc(s.c, s.a, s.b, s.turn, s.t1, s.t0)


def polygon(outer, inner, place=lambda x, y: (x, y)):
    return Polygon([place(*p) for p in outer], [[place(*p) for p in h] for h in inner])


def placing(a, b, c, d, e, f):
    """x' = ax + cy + e, y' = bx + dy + f, as SVG counts them."""
    return lambda x, y: (a * x + c * y + e, b * x + d * y + f)
