"""Random SVG drawings for drawings.py: paths with arcs and cubic curves, basic
shapes, transforms, units, viewBox, use, symbol, nested svg. In the file y runs
down; the true shape is given with y up."""
import math

import made

MM = {"mm": 1.0, "cm": 10.0, "in": 25.4, "pt": 25.4 / 72, "pc": 25.4 / 6, "px": 25.4 / 96}
KINDS = ("absolute", "relative", "shapes", "rounded", "matrix", "chain", "mirrored", "viewbox", "fitted", "use", "symbol", "nested")


def num(v):
    return f"{v:.9f}".rstrip("0").rstrip(".") if abs(v) >= 5e-10 else "0"


def pair(z):
    return f"{num(z.real)},{num(z.imag)}"


def path(contour, relative=False):
    """Path data; an arc is written in two halves, so that a whole ellipse is one too."""
    start = contour[0].p
    out, at = [f"{'m' if relative else 'M'} {pair(start)}"], start

    def to(z):
        return pair(z - at if relative else z)

    for s in contour:
        if isinstance(s, made.Line):
            out.append(f"{'l' if relative else 'L'}{to(s.q)}")
        elif isinstance(s, made.Cubic):
            out.append(f"{'c' if relative else 'C'}{to(s.c1)} {to(s.c2)} {to(s.q)}")
        else:
            for t in ((s.t0 + s.t1) / 2, s.t1):
                end = s.at(t)
                sweep = int(s.t1 > s.t0)  # the angle grows: from x towards y
                out.append(f"{'a' if relative else 'A'}{num(s.a)} {num(s.b)} {num(math.degrees(s.turn))} 0 {sweep} {to(end)}")
                at = end
        at = s.q
    return " ".join(out) + ("z" if relative else " Z")


def times(m, n):
    """The transform m after n."""
    a, b, c, d, e, f = m
    g, h, i, j, k, l = n
    return (a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f)


def turned(deg, x=0.0, y=0.0):
    cos, sin = math.cos(math.radians(deg)), math.sin(math.radians(deg))
    return (cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y)


def chain(rng, mirrored):
    """A transform as written and as a matrix."""
    deg, x, y = rng.uniform(-180, 180), rng.uniform(-50, 50), rng.uniform(-50, 50)
    sx, sy, skew = rng.uniform(0.7, 1.5) * (-1 if mirrored else 1), rng.uniform(0.7, 1.5), rng.uniform(-15, 15)
    words = f"translate({num(x)} {num(y)}) rotate({num(deg)}, {num(y)}, {num(x)}) skewX({num(skew)}) scale({num(sx)},{num(sy)})"
    m = times((1, 0, 0, 1, x, y), turned(deg, y, x))
    m = times(m, (1, 0, math.tan(math.radians(skew)), 1, 0, 0))
    return words, times(m, (sx, 0, 0, sy, 0, 0))


def rounded_rect(w, h, rx, ry):
    """The contour of a rect with rounded corners, centred on zero."""
    quarter, out = math.pi / 2, []
    corners = ((w / 2 - rx, h / 2 - ry, 0), (rx - w / 2, h / 2 - ry, 1), (rx - w / 2, ry - h / 2, 2), (w / 2 - rx, ry - h / 2, 3))
    arcs = [made.Arc(complex(x, y), rx, ry, 0.0, n * quarter, (n + 1) * quarter) for x, y, n in corners]
    for arc, following in zip(arcs, arcs[1:] + arcs[:1]):
        out += [arc, made.Line(arc.q, following.p)]
    return out


def shapes(rng, kind, size):
    """Elements in their own coordinates, with their contours."""
    inner = made.holes(rng, size)
    if kind == "rounded":
        w, h = size * rng.uniform(1.3, 1.9), size * rng.uniform(1.2, 1.6)
        rx, ry = w * rng.uniform(0.05, 0.4), h * rng.uniform(0.05, 0.4)
        outer = rounded_rect(w, h, rx, ry)
        element = f'<rect x="{num(-w / 2)}" y="{num(-h / 2)}" width="{num(w)}" height="{num(h)}" rx="{num(rx)}" ry="{num(ry)}"/>'
    elif kind == "shapes":
        a, b = size, size * rng.uniform(0.5, 0.9)
        outer = [made.Arc(0, a, b, 0.0, 0.0, 2 * math.pi)]
        element = f'<ellipse rx="{num(a)}" ry="{num(b)}"/>'
    else:
        outer = made.contour(rng, size, ("line", "arc", "cubic", "ellipse"))
        element = f'<path fill-rule="evenodd" d="{path(outer, relative=kind == "relative")}"/>'
    for h in inner:
        if len(h) == 1:
            element += f'<circle cx="{num(h[0].c.real)}" cy="{num(h[0].c.imag)}" r="{num(h[0].a)}"/>'
        elif all(isinstance(s, made.Line) for s in h):
            element += f'<polygon points="{" ".join(pair(s.p) for s in h)}"/>'
        else:
            element += f'<path d="{path(h)}"/>'
    return element, outer, inner


def wrapped(rng, kind, element, size):
    """The element under the transforms of its kind, and the matrix of them all."""
    one = (1, 0, 0, 1, 0, 0)
    if kind == "matrix":
        m = chain(rng, False)[1]
        return f'<g transform="matrix({" ".join(num(v) for v in m)})">{element}</g>', m
    if kind in ("chain", "mirrored"):
        outer, inner = chain(rng, kind == "mirrored"), chain(rng, False)
        return f'<g transform="{outer[0]}"><g transform="{inner[0]}">{element}</g></g>', times(outer[1], inner[1])
    if kind == "use":
        words, m = chain(rng, rng.random() < 0.5)
        x, y = rng.uniform(-80, 80), rng.uniform(-80, 80)
        out = f'<defs><g id="part">{element}</g></defs><use href="#part" x="{num(x)}" y="{num(y)}" transform="{words}"/>'
        return out, times(m, (1, 0, 0, 1, x, y))
    if kind in ("symbol", "nested"):
        # A square box of 4 sizes, shown in a square of another size.
        side, shown = 4 * size, 4 * size * rng.uniform(0.4, 1.3)
        box = f'viewBox="{num(-side / 2)} {num(-side / 2)} {num(side)} {num(side)}"'
        place = f'x="10" y="-20" width="{num(shown)}" height="{num(shown)}"'
        m = (shown / side, 0, 0, shown / side, 10 + shown / 2, -20 + shown / 2)
        if kind == "nested":
            return f"<svg {place} {box}>{element}</svg>", m
        return f'<symbol id="part" {box}>{element}</symbol><use href="#part" {place}/>', m
    return element, one


def draw(rng, file, kind):
    """Writes a drawing; gives its true shape in mm and the options for reading."""
    size = rng.uniform(120, 700)
    element, outer, inner = shapes(rng, kind, size)
    element, m = wrapped(rng, kind, element, size)
    user = made.polygon(made.ring(outer), [made.ring(h) for h in inner], made.placing(*m))
    x0, y0, x1, y1 = user.bounds
    margin = rng.uniform(1, 30)
    w, h = x1 - x0 + 2 * margin, y1 - y0 + 2 * margin
    unit = rng.choice(sorted(MM))
    scale = rng.uniform(0.5, 2) if kind in ("viewbox", "fitted") else MM[unit]
    shown = [w * scale / MM[unit], h * scale / MM[unit]]
    if kind == "fitted":  # one side is longer than needed: the smaller scale holds
        shown[rng.randint(0, 1)] *= rng.uniform(1.1, 2)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{num(shown[0])}{unit}" height="{num(shown[1])}{unit}" '
        f'viewBox="{num(x0 - margin)} {num(y0 - margin)} {num(w)} {num(h)}">'
    )
    with open(file, "w", encoding="utf-8") as f:
        f.write(head + "\n" + element + "\n</svg>\n")
    seen = made.placing(scale, 0, 0, -scale, 0, 0)
    return made.polygon(user.exterior.coords, [r.coords for r in user.interiors], seen), []
