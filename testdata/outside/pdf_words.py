"""Words of a PDF as poppler finds them, and a part's edge as a tape measures it."""
import math
import re
import subprocess
import xml.etree.ElementTree as tree

from shapely.geometry import LineString, Point, Polygon

POINTS = 72 / 25.4  # a mm


def boxes(path):
    """The words of each page with their boxes in mm from its upper left corner."""
    text = subprocess.run(["pdftotext", "-bbox", path, "-"], check=True, capture_output=True, text=True).stdout
    text = re.sub(r"<!DOCTYPE[^>]*>", "", text).replace('xmlns="http://www.w3.org/1999/xhtml"', "")
    out = []
    for page in tree.fromstring(text).iter("page"):
        words = []
        for w in page.iter("word"):
            x0, y0, x1, y1 = (float(w.get(k)) / POINTS for k in ("xMin", "yMin", "xMax", "yMax"))
            words.append((w.text.replace("\u2212", "-").replace("\u2011", "-"), x0, y0, x1, y1))
        out.append(words)
    return out


def lines(words, gap=40):
    """Words on one base line, joined from left to right: (text, left, base). Words
    farther apart than gap mm begin another line."""
    rows = []
    for w in sorted(words, key=lambda w: (w[4], w[1])):
        # The lower side of a box lies below the base line by a share of its height.
        base = w[4] - 0.2 * (w[4] - w[2])
        for row in rows[-60:]:
            if abs(row[0] - base) < 0.8:
                row[1].append(w)
                break
        else:
            rows.append([base, [w]])
    out = []
    for base, found in rows:
        found.sort(key=lambda w: w[1])
        text, left, end = "", None, None
        for w in found:
            if end is not None and w[1] - end > gap:
                out.append((text.strip(), left, base))
                text, left = "", None
            left = w[1] if left is None else left
            text, end = text + " " + w[0], w[3]
        out.append((text.strip(), left, base))
    return out


def pages(path):
    """The lines of each page as text, as read from left to right."""
    return [[line[0] for line in lines(words, gap=300)] for words in boxes(path)]


class Edge:
    """The outer net edge, with named corners as lengths along it."""

    def __init__(self, ring, corners):
        self.ring = LineString(list(ring) + [ring[0]])
        self.long = self.ring.length
        self.solid = Polygon(ring)
        self.corners = {c["name"]: self.ring.project(Point(c["at"])) for c in corners}
        self.names = [c["name"] for c in corners]

    def at(self, mm, corner, first, second, way):
        """The length along the edge of a printed distance."""
        ahead = way == "anticlockwise" if way else corner == first and (len(self.names) > 2 or corner != second)
        along = float(mm) if ahead else -float(mm)
        return (self.corners[corner] + along) % self.long

    def distance(self, s, t):
        """How far two places of the edge lie apart along it."""
        d = abs(s - t) % self.long
        return min(d, self.long - d)

    def stretches(self):
        """(first corner, second corner, start, length) from the datum on."""
        order = sorted(self.corners.items(), key=lambda c: c[1])
        k = [n for n, _ in order].index(self.names[0])
        order = order[k:] + order[:k]
        for i, (name, start) in enumerate(order):
            other, end = order[(i + 1) % len(order)]
            yield name, other, start, (end - start) % self.long or self.long


def edge_of(plan):
    ring = [tuple(p) for p in plan["part"]["net"]["outer"]]
    if sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1])) < 0:
        ring.reverse()
    return Edge(ring, plan["part"]["corners"])


def joint_ends(edge, joint):
    """Both places of the edge where the joint's line leaves the part, as lengths
    along it, in the joint's direction; None for a joint in the trim only."""
    (x0, y0), (x1, y1) = joint["from"], joint["to"]
    long = math.hypot(x1 - x0, y1 - y0)
    dx, dy = (x1 - x0) / long, (y1 - y0) / long
    far = 1e5
    line = LineString([(x0 - far * dx, y0 - far * dy), (x1 + far * dx, y1 + far * dy)])
    inside = line.intersection(edge.solid)
    runs = []
    for part in getattr(inside, "geoms", [inside]):
        if part.geom_type != "LineString" or part.is_empty:
            continue
        ts = sorted((x - x0) * dx + (y - y0) * dy for x, y in part.coords)
        if min(ts[-1], long) - max(ts[0], 0) > 0.02:
            runs.append((ts[0], ts[-1]))
    if not runs:
        return None
    return [edge.ring.project(Point(x0 + t * dx, y0 + t * dy)) for t in (min(r[0] for r in runs), max(r[1] for r in runs))]
