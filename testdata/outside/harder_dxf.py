"""The DXF drawings of harder.py: written group by group, so that odd files can be
made too, and by ezdxf where its own writing is what is to be read."""
import io
import math

import ezdxf
from ezdxf.math import BSpline, Vec3
from harder_csv import CORNERS
from harder_svg import AREA, H, PROBES, SAME, W, mirrored, scaled, shrunk, turned
from shapely.geometry import Polygon

MM = [(9, "$INSUNITS"), (70, 4)]


def groups(*pairs):
    return "".join(f"{code:3d}\n{value}\n" for code, value in pairs)


def entity(kind, *pairs, layer="0"):
    return [(0, kind), (8, layer), *pairs]


def polyline(points, *more, layer="0", closed=1, bulges=()):
    out = entity("LWPOLYLINE", (90, len(points)), (70, closed), *more, layer=layer)
    for i, (x, y) in enumerate(points):
        out += [(10, float(x)), (20, float(y))]
        if i < len(bulges) and bulges[i]:
            out.append((42, bulges[i]))
    return out


def plate(f=1, layer="0", move=(0, 0)):
    return polyline([(x * f + move[0], y * f + move[1]) for x, y in CORNERS], layer=layer)


def box(x, y, w, h, **more):
    return polyline([(x, y), (x + w, y), (x + w, y + h), (x, y + h)], **more)


def line(p, q, *more, layer="0"):
    return entity("LINE", (10, p[0]), (20, p[1]), (11, q[0]), (21, q[1]), *more, layer=layer)


def circle(x, y, r, *more, layer="0"):
    return entity("CIRCLE", (10, x), (20, y), (40, r), *more, layer=layer)


def arc(x, y, r, begin, end, *more):
    return entity("ARC", (10, x), (20, y), (40, r), (50, begin), (51, end), *more)


def insert(name, x=0, y=0, *more, layer="0"):
    return entity("INSERT", (2, name), (10, x), (20, y), *more, layer=layer)


def block(name, content, base=(0, 0), flags=0, *more):
    return [(0, "BLOCK"), (8, "0"), (2, name), (70, flags), (10, base[0]), (20, base[1]), (3, name), *more, *content, (0, "ENDBLK"), (8, "0")]


def layers(*rows):
    """Layers by name, flags, colour."""
    out = [(0, "TABLE"), (2, "LAYER"), (70, len(rows))]
    for name, flags, colour in rows:
        out += [(0, "LAYER"), (2, name), (70, flags), (62, colour), (6, "CONTINUOUS")]
    return out + [(0, "ENDTAB")]


def file(*entities, header=MM, tables=(), blocks=(), end=((0, "EOF"),)):
    out = []
    for name, body in (("HEADER", header), ("TABLES", tables), ("BLOCKS", blocks), ("ENTITIES", [g for e in entities for g in e])):
        if body:
            out += [(0, "SECTION"), (2, name), *body, (0, "ENDSEC")]
    return groups(*out, *end)


def value(name, number):
    return [(9, name), (70, number)]


def shape(points, **more):
    """Values of a flattened outline, with probes found by shapely."""
    p = Polygon(points)
    assert p.is_valid
    x0, y0, x1, y1 = p.bounds
    probes = []
    for i in range(1, 8):
        for j in range(1, 8):
            x, y = x0 + (x1 - x0) * i / 8, y0 + (y1 - y0) * j / 8
            q = Polygon([(x - 1, y - 1), (x + 1, y - 1), (x + 1, y + 1), (x - 1, y + 1)])
            if p.contains(q) or not p.intersects(q):
                probes.append([round(x - x0, 3), round(y - y0, 3), p.contains(q)])
    return dict(area=p.area, w=x1 - x0, h=y1 - y0, tol=5e-4, probes=probes[::3]) | more


def spline(degree, control, knots, weights=(), flags=0, fit=(), *more):
    out = entity("SPLINE", (70, flags), (71, degree), (72, len(knots)), (73, len(control)), (74, len(fit)), *more)
    out += [(40, k) for k in knots] + [(41, w) for w in weights]
    for code, points in ((10, control), (11, fit)):
        for x, y in points:
            out += [(code, x), (code + 10, y), (code + 20, 0.0)]
    return out


def by_ezdxf(version, draw, binary=False, **header):
    doc = ezdxf.new(version)
    doc.header["$INSUNITS"], doc.header["$MEASUREMENT"] = 4, 1
    for name, v in header.items():
        doc.header["$" + name] = v
    draw(doc, doc.modelspace())
    if binary:
        out = io.BytesIO()
        doc.write(out, fmt="bin")
        return out.getvalue()
    out = io.StringIO()
    doc.write(out)
    return out.getvalue().encode(doc.encoding, "dxfreplace")


def units_of(version):
    return "--units mm" if version == "R12" else ""


def add_polyline(doc, space, points=CORNERS, layer="0"):
    add = space.add_polyline2d if doc.dxfversion == "AC1009" else space.add_lwpolyline
    add(points, close=True, dxfattribs={"layer": layer})


def old_polyline(flags, vertices, *more):
    out = entity("POLYLINE", (66, 1), (10, 0.0), (20, 0.0), (30, 0.0), (70, flags), *more)
    for x, y, flag, bulge in vertices:
        out += [(0, "VERTEX"), (8, "0"), (10, x), (20, y), (30, 0.0), (70, flag), (42, bulge)]
    return out + [(0, "SEQEND")]


def ellipse_points(u, ratio, t0, t1, n=4000):
    v = (-u[1] * ratio, u[0] * ratio)
    ts = [t0 + (t1 - t0) * i / n for i in range(n)]
    return [(u[0] * math.cos(t) + v[0] * math.sin(t), u[1] * math.cos(t) + v[1] * math.sin(t)) for t in ts]



def cases():
    yield from units()
    yield from entities()
    yield from splines()
    yield from blocks()
    yield from hidden()
    yield from texts()
    yield from files()
    yield from regions()


def units():
    ok, warn, error = "ok", "warn", "error"
    for name, number, mm in (("feet", 2, 304.8), ("yards", 10, 914.4), ("dm", 14, 100.0), ("mils", 9, 0.0254), ("micron", 13, 0.001), ("survey_feet", 21, 1200000 / 3937)):
        yield "unit_" + name, ok, f"$INSUNITS {number}", file(plate(1 / mm), header=value("$INSUNITS", number)), SAME | {"tol": 1e-5}, "", ""
    yield "unit_metric_only", warn, "$MEASUREMENT 1 alone", file(plate(), header=value("$MEASUREMENT", 1)), SAME, "", "taken as mm"
    yield "unit_english_only", error, "$INSUNITS 0, $MEASUREMENT 0: not said whether inches or feet", file(plate(1 / 25.4), header=value("$INSUNITS", 0) + value("$MEASUREMENT", 0)), SAME | {"tol": 1e-5}, "--units in", "does not say its unit"
    yield "unit_parsec", error, "$INSUNITS 20", file(plate(), header=value("$INSUNITS", 20)), None, "", "no unit for a part"
    yield "unit_cm_english", warn, "cm, but $MEASUREMENT 0", file(plate(0.1), header=value("$INSUNITS", 5) + value("$MEASUREMENT", 0)), SAME, "", "check the size"
    yield "unit_far_metres", ok, "metres, 1,000 km from the origin", file(plate(0.001, move=(1e6, -1e6)), header=value("$INSUNITS", 6)), SAME | {"tol": 1e-5}, "", ""
    yield "unit_too_far", error, "metres, 10,000 km from the origin", file(plate(0.001, move=(1e7, 0)), header=value("$INSUNITS", 6)), None, "", "4,000 km"
    yield "block_units", ok, "a block that says inches, inserted with the scale 25.4: the INSERT alone scales", file(insert("P", 0, 0, (41, 25.4), (42, 25.4)), blocks=block("P", plate(1 / 25.4)), tables=[(0, "TABLE"), (2, "BLOCK_RECORD"), (70, 1), (0, "BLOCK_RECORD"), (2, "P"), (70, 1), (0, "ENDTAB")]), SAME | {"tol": 1e-5}, "", ""


def entities():
    ok, warn, error = "ok", "warn", "error"
    half = math.pi * 150**2 / 2
    yield "bulge_closing", ok, "a bulge on the closing piece", file(polyline([(0, 0), (400, 0), (400, 300), (0, 300)], bulges=[0, 0, 0, 1])), dict(area=120000 + half, w=550, h=300, tol=5e-4, probes=[[20, 150, True], [20, 20, False]]), "", ""
    yield "bulge_open_last", ok, "a bulge on the last vertex of an open polyline means nothing", file(polyline([(0, 0), (400, 0), (400, 300), (0, 300), (0, 0)], closed=0, bulges=[0, 0, 0, 0, 1])), dict(area=120000, w=400, h=300), "", ""
    yield "bulge_turned_over", ok, "LWPOLYLINE with extrusion 0 0 -1: x and the side of the bulge turn", file(polyline([(0, 0), (400, 0), (400, 300), (0, 300)], (38, 5.0), (210, 0.0), (220, 0.0), (230, -1.0), bulges=[0, 1, 0, 0])), dict(area=120000 + half, w=550, h=300, tol=5e-4, probes=[[20, 150, True], [20, 20, False]]), "", ""
    yield "bulge_zero_length", ok, "a bulge between two equal vertices", file(polyline([(0, 0), (400, 0), (400, 0), (400, 300), (0, 300)], bulges=[0, 0.7, 0, 0, 0])), dict(area=120000, w=400, h=300), "", ""
    yield "widths", ok, "constant and varying widths: the middle line counts", file(polyline(CORNERS, (43, 0.0), (40, 3.0), (41, 8.0))), SAME, "", ""
    arcs = entity("ARC", (10, 0.0), (20, 0.0), (40, 200.0), (50, 60.0), (51, 300.0))
    cap = math.radians(240)
    yield "arc_major", ok, "an ARC of 240° closed by a LINE", file(arcs, line((100, 200 * math.sin(math.pi / 3)), (100, -200 * math.sin(math.pi / 3)))), dict(area=200**2 / 2 * (cap - math.sin(cap)), w=300, h=400, tol=5e-4, probes=[[20, 200, True], [290, 200, True], [290, 380, False]]), "", ""
    yield "arc_major_turned_over", ok, "the same with extrusion 0 0 -1", file(arcs + [(210, 0.0), (220, 0.0), (230, -1.0)], line((-100, 200 * math.sin(math.pi / 3)), (-100, -200 * math.sin(math.pi / 3)), (210, 0.0), (220, 0.0), (230, -1.0))), dict(area=200**2 / 2 * (cap - math.sin(cap)), w=300, h=400, tol=5e-4, probes=[[280, 200, True], [10, 200, True], [10, 380, False]]), "", ""
    yield "arc_full", ok, "an ARC from 0 to 360.0001", file(entity("ARC", (10, 5.0), (20, 5.0), (40, 200.0), (50, 0.0), (51, 360.0001))), dict(area=math.pi * 40000, w=400, h=400, tol=5e-4), "", ""
    yield "arc_negative_angles", ok, "angles below 0 and above 360", file(entity("ARC", (10, 0.0), (20, 0.0), (40, 200.0), (50, -90.0), (51, 450.0)), line((0, 200), (0, -200))), dict(area=math.pi * 20000, w=200, h=400, tol=5e-4, probes=[[20, 200, True], [190, 200, True], [190, 10, False]]), "", ""
    rounded = ("ELLIPSE", (10, 0.0), (20, 0.0), (30, 0.0), (11, 300.0), (21, 100.0), (31, 0.0), (40, 0.5))
    size = math.pi * (300**2 + 100**2) * 0.5
    yield "ellipse_rounded_turn", ok, "an ELLIPSE from 0 to 6.2832, a little over a turn", file(entity(*rounded, (41, 0.0), (42, 6.2832))), shape(ellipse_points((300, 100), 0.5, 0, 2 * math.pi)) | {"area": size}, "", ""
    yield "ellipse_no_parameters", ok, "an ELLIPSE without its parameters is a full one", file(entity(*rounded)), shape(ellipse_points((300, 100), 0.5, 0, 2 * math.pi)) | {"area": size}, "", ""
    ends = ellipse_points((300, 100), 0.5, 5, 8, 1)[0], ellipse_points((300, 100), 0.5, 8, 9, 1)[0]
    yield "ellipse_part", ok, "part of an ELLIPSE through its parameter 0", file(entity(*rounded, (41, 5.0), (42, 8 - 2 * math.pi)), line(*ends)), shape(ellipse_points((300, 100), 0.5, 5, 8) + [ends[1]]), "", ""
    over = [(210, 0.0), (220, 0.0), (230, -1.0)]
    back = [ellipse_points((300, 100), -0.5, 5, 8, 1)[0], ellipse_points((300, 100), -0.5, 8, 9, 1)[0]]
    yield "ellipse_turned_over", ok, "part of an ELLIPSE with extrusion 0 0 -1: it runs the other way", file(entity(*rounded, (41, 5.0), (42, 8 - 2 * math.pi), *over), line(*back)), shape(ellipse_points((300, 100), -0.5, 5, 8) + [back[1]]), "", ""
    tall = ("ELLIPSE", (10, 0.0), (20, 0.0), (11, 100.0), (21, 0.0), (40, 2.0))
    yield "ellipse_tall", ok, "an ELLIPSE with a ratio over 1", file(entity(*tall, (41, 0.0), (42, 2 * math.pi))), dict(area=math.pi * 20000, w=200, h=400, tol=5e-4), "", ""
    quarter = math.tan(math.pi / 8)
    yield "polyline_curve_fit", ok, "R12 curve fit: vertices put in by the fit count, with their bulges", file(old_polyline(3, [(0, 0, 0, 0), (400, 0, 0, quarter), (500, 100, 1, quarter), (400, 200, 0, 0), (0, 200, 0, 0)])), dict(area=80000 + math.pi * 5000, w=500, h=200, tol=5e-4, probes=[[480, 100, True], [490, 10, False]]), "", ""
    yield "polyline_spline_fit", ok, "R12 spline fit: the frame does not count", file(old_polyline(5, [(-900, -900, 16, 0), (900, 0, 16, 0), *[(x, y, 8, 0) for x, y in CORNERS], (0, 900, 16, 0)], (75, 6))), SAME, "", ""
    yield "polyline_turned_over", ok, "R12 polyline with extrusion 0 0 -1", file(old_polyline(1, [(x, y, 0, 0) for x, y in CORNERS], (210, 0.0), (220, 0.0), (230, -1.0))), mirrored(), "", ""
    for name, flags, what in (("3d", 9, "3D polyline"), ("mesh", 17, "mesh"), ("polyface", 65, "polyface mesh")):
        yield "polyline_" + name, error, what, file(old_polyline(flags, [(x, y, 32, 0) for x, y in CORNERS])), None, "", what
    for kind in ("REGION", "3DSOLID", "BODY", "MLINE", "HELIX", "MPOLYGON", "SURFACE", "MESH"):
        yield "named_" + kind.lower(), error, kind + " is refused by name", file(plate(), entity(kind, (1, "x"))), None, "", kind + " is not read"
    kinds = "XLINE RAY WIPEOUT IMAGE OLE2FRAME ACAD_TABLE LEADER MULTILEADER MTEXT TEXT TOLERANCE VIEWPORT SOLID TRACE 3DFACE POINT SHAPE ATTDEF HATCH ACAD_PROXY_ENTITY".split()
    yield "left_out", ok, "all that is never an outline", file(plate(), *[entity(k, (10, 0.0), (20, 0.0), (11, 1.0), (21, 1.0), (1, "x")) for k in kinds]), SAME, "", "1 3DFACE, 1 ACAD_PROXY_ENTITY (unknown), 1 ACAD_TABLE"
    yield "hatch_alone", error, "a HATCH and no line", file(entity("HATCH", (10, 0.0), (20, 0.0), (2, "SOLID"))), None, "", "1 HATCH"
    yield "slanted", warn, "lines that rise from 0 to 50: flattened, said", file(*[line(p, q, (30, a), (31, b)) for p, q, a, b in (((0, 0), (400, 0), 0.0, 50.0), ((400, 0), (400, 300), 50.0, 50.0), ((400, 300), (0, 300), 50.0, 0.0), ((0, 300), (0, 0), 0.0, 0.0))]), dict(area=120000, w=400, h=300), "", "flattened"
    yield "zero_length", ok, "a line, an arc and a polyline of no length", file(plate(), line((5, 5), (5, 5)), polyline([(9, 9), (9, 9)]), entity("ARC", (10, 7.0), (20, 7.0), (40, 0.001), (50, 0.0), (51, 90.0))), SAME, "", ""
    yield "circle_no_radius", error, "a CIRCLE of radius 0", file(plate(), circle(9.0, 9.0, 0.0)), None, "", "radius 0"

    def dimension(doc, space):
        space.add_lwpolyline(CORNERS, close=True)
        space.add_linear_dim(base=(0, 400), p1=(0, 300), p2=(400, 300)).render()
        space.add_text("A").set_placement((5, 5))
        space.add_leader([(0, 0), (500, 500), (600, 500)])

    yield "dimension_block", ok, "a rendered DIMENSION: the lines of its block do not count", by_ezdxf("R2010", dimension), SAME, "", "1 DIMENSION"


def splines():
    ok, error = "ok", "error"
    around = [Vec3.from_angle(2 * math.pi * i / 9, r) for i, r in enumerate((300, 260, 340, 220, 310, 280, 350, 240, 330))]
    xy = [(p.x, p.y) for p in around]

    def points(b, n=6000):
        return [(p.x, p.y) for p in b.approximate(n)]

    for degree in (2, 4, 5):
        b = BSpline(around + [around[0]], order=degree + 1)
        yield f"spline_degree_{degree}", ok, f"a clamped spline of degree {degree} that ends where it begins", file(spline(degree, [(p.x, p.y) for p in b.control_points], b.knots())), shape(points(b)[:-1]), "", ""
    knots = [0, 0, 0, 0, 1, 1.1, 3, 3, 7, 7.01, 9, 9, 9, 9]
    b = BSpline(around + [around[0]], order=4, knots=knots)
    yield "spline_uneven", ok, "uneven knots, one of them double", file(spline(3, [(p.x, p.y) for p in b.control_points], knots)), shape(points(b)[:-1]), "", ""
    weights = [1, 2.5, 0.4, 1, 3, 1, 0.7, 1, 2, 1]
    b = BSpline(around + [around[0]], order=4, weights=weights)
    yield "spline_weights", ok, "uneven weights", file(spline(3, [(p.x, p.y) for p in b.control_points], b.knots(), weights, 4)), shape(points(b)[:-1]), "", ""
    control = xy + xy[:3]
    knots = list(range(len(control) + 4))
    b = BSpline([Vec3(p) for p in control], order=4, knots=knots)
    bound = [(p.x, p.y) for p in (b.point(t) for t in [3 + 9 * i / 6000 for i in range(6000)])]
    yield "spline_periodic", ok, "closed and periodic, the first control points repeated", file(spline(3, control, knots, (), 11)), shape(bound), "", ""
    yield "spline_periodic_short", ok, "closed and periodic, control points not repeated: the knots ask for it", file(spline(3, xy, knots, (), 11)), shape(bound), "", ""
    yield "spline_backwards", error, "knots that run backwards", file(spline(3, xy, [0, 0, 0, 0, 3, 2, 4, 5, 6, 7, 7, 7, 7])), None, "", "knots run backwards"
    yield "spline_knots", error, "too few knots", file(spline(3, xy, [0, 0, 0, 0, 1, 2, 3, 4])), None, "", "knots and control points"
    yield "spline_count", error, "a control point lost", file(spline(3, xy, list(range(13))))[: -len(groups((0, "ENDSEC"), (0, "EOF")))].replace("73\n9\n", "73\n10\n") + groups((0, "ENDSEC"), (0, "EOF")), None, "", "10 control"
    yield "spline_open", error, "a closed flag, but a clamped curve that is open", file(spline(3, xy, BSpline(around, order=4).knots(), (), 1)), None, "", "open contour"
    yield "spline_weight_nought", error, "a weight of 0", file(spline(3, xy, BSpline(around, order=4).knots(), [1, 1, 0, 1, 1, 1, 1, 1, 1], 4)), None, "", "weight"


def blocks():
    ok, warn, error = "ok", "warn", "error"
    P = block("P", plate())
    yield "insert_negative_y", ok, "yscale -1", file(insert("P", 5.0, 5.0, (42, -1.0)), blocks=P), mirrored() | {"probes": [[x, H - y, i] for x, y, i in PROBES]}, "", ""
    yield "insert_both_negative", ok, "xscale and yscale -1: half a turn", file(insert("P", 5.0, 5.0, (41, -1.0), (42, -1.0)), blocks=P), turned(2), "", ""
    yield "insert_turned_over", ok, "extrusion 0 0 -1 and 90°: mirrored after the turn", file(insert("P", 5.0, 5.0, (50, 90.0), (210, 0.0), (220, 0.0), (230, -1.0)), blocks=P), turned(1) | {"probes": [[H - x, y, i] for x, y, i in turned(1)["probes"]]}, "", ""
    yield "insert_uneven", ok, "an arc under unequal scales becomes part of an ellipse", file(insert("C", 0.0, 0.0, (41, 2.0), (42, 0.5), (50, 30.0)), blocks=block("C", circle(10.0, 0.0, 200.0))), shape([(p.x, p.y) for p in (Vec3(x, y).rotate_deg(30) for x, y in ellipse_points((400, 0), 0.25, 0, 2 * math.pi))]), "", ""
    yield "insert_base_nested", ok, "base points of a block in a block, turned and scaled", file(insert("Q", 100.0, 0.0, (50, 90.0), (41, 2.0), (42, 2.0)), blocks=block("P", plate(), (7, 9)) + block("Q", insert("P", 50.0, 60.0, (50, 90.0)), (-3, 4))), shrunk(turned(2), 2), "", ""
    yield "insert_attributes", ok, "an INSERT with attributes", file(insert("P", 1.0, 1.0, (66, 1)), entity("ATTRIB", (10, 0.0), (20, 0.0), (1, "7")), [(0, "SEQEND")], blocks=P), SAME, "", ""
    holes = block("H", circle(0.0, 0.0, 5.0))
    grid = insert("H", 30.0, 30.0, (50, 90.0), (70, 4), (71, 3), (44, 25.0), (45, -20.0))
    yield "insert_array_turned", ok, "an array of holes, turned: rows and columns turn with it", file(plate(), grid, blocks=holes), dict(area=AREA - 12 * math.pi * 25, w=W, h=H, holes=12, tol=5e-4, probes=PROBES + [[30, 105, False], [70, 30, False], [105, 30, True]]), "", ""
    yield "insert_cycle", error, "two blocks that hold each other", file(insert("A"), blocks=block("A", insert("B")) + block("B", insert("A"))), None, "", "holds itself"
    yield "insert_missing", error, "a block that is not there", file(plate(), insert("GONE")), None, "", '"GONE" is not in the file'
    yield "insert_xref", error, "a block that lies in another file", file(plate(), insert("X"), blocks=block("X", [], (0, 0), 4, (1, "part.dwg"))), None, "", "another file"
    yield "insert_no_scale", error, "a scale of 0", file(insert("P", 0.0, 0.0, (41, 0.0)), blocks=P), None, "", "scale of 0"
    yield "insert_tilted", error, "an INSERT tilted out of the plane", file(insert("P", 0.0, 0.0, (210, 0.0), (220, 1.0), (230, 0.0)), blocks=P), None, "", "tilted"
    yield "insert_name_case", ok, "a block named in other capitals", file(insert("p"), blocks=P), SAME, "", ""


def hidden():
    ok, error = "ok", "error"
    old = box(-50, -50, 800, 500, layer="OLD")
    yield "layer_off_in_block", ok, "in a block: an entity on a layer that is off", file(insert("P"), blocks=block("P", plate(layer="CUT") + old), tables=layers(("CUT", 0, 7), ("OLD", 0, -3))), SAME, "", "which is off"
    yield "layer_0_in_frozen", ok, "layer 0 in a block takes the layer of its INSERT, which is frozen; the other one too", file(plate(layer="CUT"), insert("B", layer="ICE"), blocks=block("B", box(-50, -50, 800, 500) + box(-60, -60, 900, 600, layer="CUT")), tables=layers(("CUT", 0, 7), ("ICE", 1, 7))), SAME, "", "frozen layer ICE"
    yield "layer_0_in_off", ok, "an INSERT on a layer that is off: only layer 0 of its block goes off with it", file(insert("B", layer="OFF"), blocks=block("B", box(-50, -50, 800, 500) + plate(layer="CUT")), tables=layers(("CUT", 0, 7), ("OFF", 0, -7))), SAME, "", "which is off"
    yield "layer_0_nested", ok, "layer 0 in a block in a block: chosen by the layer of the outer INSERT", file(insert("Q", layer="CUT"), box(-50, -50, 800, 500, layer="OLD"), blocks=block("P", plate()) + block("Q", insert("P"))), SAME, "layer=CUT", ""
    yield "layer_frozen_elsewhere", ok, "frozen in new viewports only (flag 2), locked (flag 4): seen", file(plate(layer="CUT"), tables=layers(("CUT", 6, 7))), SAME, "", ""
    yield "layer_unknown", ok, "a layer that is not in the table", file(plate(layer="NEW"), tables=layers(("CUT", 0, 7))), SAME, "layer=new", ""
    yield "layer_case", ok, "a frozen layer spelt in other capitals", file(plate(), box(-50, -50, 800, 500, layer="old"), tables=layers(("OLD", 1, 7))), SAME, "", "frozen layer OLD"
    yield "invisible", ok, "group 60", file(plate(), box(-50, -50, 800, 500) + [(60, 1)]), SAME, "", "set invisible"
    yield "defpoints", ok, "layer Defpoints", file(plate(), box(-50, -50, 800, 500, layer="DEFPOINTS")), SAME, "", "DEFPOINTS"

    def paper(doc, space):
        add_polyline(doc, space)
        add_polyline(doc, doc.layout("Layout1"), [(0, 0), (420, 0), (420, 297), (0, 297)])
        if doc.dxfversion != "AC1009":
            doc.layouts.new("Second").add_circle((0, 0), 900)

    for version in ("R12", "R2000", "R2018"):
        yield f"paper_{version.lower()}", ok, "frames on two layouts", by_ezdxf(version, paper), SAME, units_of(version), "in paper space" if version == "R12" else ""
    yield "all_hidden", error, "everything is on a frozen layer", file(plate(layer="CUT"), tables=layers(("CUT", 1, 7))), None, "", "frozen layer CUT"


def texts():
    ok, warn, error = "ok", "warn", "error"
    other = box(-50, -50, 800, 500, layer="x")

    def named(stored, version, page, encoding, asked, about):
        head = [(9, "$ACADVER"), (1, version), (9, "$DWGCODEPAGE"), (3, page)] + MM
        return ok, about, file(plate(layer=stored), other, header=head).encode(encoding), SAME, "layer=" + asked, ""

    yield "name_cyrillic", *named("КОНТУР", "AC1015", "ANSI_1251", "cp1251", "контур", "a layer name in code page 1251, asked for in small letters")
    yield "name_japanese", *named("外形ソ", "AC1015", "ANSI_932", "cp932", "外形ソ", "code page 932, a letter whose second byte is a backslash")
    yield "name_dos", *named("Außen", "AC1009", "dos850", "cp850", "Außen", "R12 in a DOS code page")
    yield "name_utf8", *named("Außen外", "AC1021", "ANSI_1252", "utf-8", "Außen外", "UTF-8 since 2007, whatever the code page")
    yield "name_escaped", *named("Au\\U+00DFen", "AC1015", "ANSI_1252", "ascii", "Außen", "a letter written by its number")
    yield "name_escaped_wide", *named("\\M+18A4F\\M+18C60", "AC1015", "ANSI_932", "ascii", "外形", "two letters written by their bytes in code page 932")
    plain = file(plate())
    yield "line_ends_cr", ok, "lines that end in CR alone", plain.replace("\n", "\r"), SAME, "", ""
    yield "blank_lines_first", ok, "blank lines before the first group", "\n  \n" + plain, SAME, "", ""
    yield "comment_first", ok, "a comment before everything and comments between", groups((999, "drawn by hand")) + plain.replace("  8\n0\n", "  8\n0\n999\n 0\n"), SAME, "", ""
    yield "numbers", ok, "numbers with plus, without digits before or after the point, with exponents, with blanks", plain.replace("\n400.0\n", "\n +4.E+02 \n").replace("\n150.0\n", "\n.15e3\n").replace("\n300.0\n", "\n 0300 \n"), SAME, "", ""
    for name, text, says in (("fortran", "1.0D3", "1.0D3"), ("hex", "0x10", "0x10"), ("infinite", "1e400", "1e400"), ("inf", "inf", '"inf"'), ("empty", "", '""'), ("underscore", "1_0", "1_0"), ("grouped", "1 000.5", "1 000.5"), ("half", "4e", '"4e"')):
        yield "number_" + name, error, f"a coordinate {text!r}", plain.replace("\n150.0\n", f"\n{text}\n", 1), None, "", says


def files():
    ok, warn, error = "ok", "warn", "error"

    def draw(doc, space):
        doc.layers.add("CUT")
        add_polyline(doc, space, layer="CUT")

    for version in ("R12", "R2000", "R2018"):

        yield f"binary_{version.lower()}", ok, f"binary DXF of {version} by ezdxf", by_ezdxf(version, draw, binary=True), SAME, units_of(version), ""
        yield f"text_{version.lower()}", ok, f"text DXF of {version} by ezdxf", by_ezdxf(version, draw), SAME, units_of(version), ""
        yield f"binary_{version.lower()}_cut", error, "binary DXF cut short", by_ezdxf(version, draw, binary=True)[:-300], None, "", "byte"
    whole = file(plate())
    yield "no_eof", error, "no EOF", whole[: -len(groups((0, "EOF")))], None, "", "EOF"
    yield "no_endsec", error, "a section without its end", file(plate()).replace(groups((0, "ENDSEC")), "", 1), None, "", "HEADER has no end"
    yield "cut_in_number", error, "cut in the middle of a number", whole[: whole.index("400.0") + 2], None, "", "EOF"
    yield "odd_line", error, "a line lost: codes and values change places", whole.replace(" 90\n6\n", " 90\n", 1), None, "", "not a group code"
    yield "two_entity_sections", ok, "two ENTITIES sections", whole[: -len(groups((0, "EOF")))] + groups((0, "SECTION"), (2, "ENTITIES"), *circle(75.0, 150.0, 20.0), (0, "ENDSEC"), (0, "EOF")), dict(area=AREA - math.pi * 400, w=W, h=H, holes=1, tol=1e-4, probes=PROBES), "", ""
    yield "after_eof", ok, "anything after EOF", whole + "trailing words\n", SAME, "", ""
    yield "dwg_old", error, "a DWG of 1992", b"AC1009\x00\x00\x00\x00\x00\x01" + bytes(200), None, "", "DWG"
    yield "dwg_oldest", error, "a DWG of 1985", b"AC2.10\x00\x00" + bytes(200), None, "", "DWG"
    yield "vertex_count", error, "a vertex lost", whole.replace(" 10\n150.0\n 20\n0.0\n", "", 1), None, "", "6 vertices, 5 are there"
    yield "y_lost", error, "a LINE without the y of its end", file(plate(), entity("LINE", (10, 0.0), (20, 0.0), (11, 5.0))), None, "", "no group 21"
    yield "r12_no_header", error, "R12 with entities alone", file(old_polyline(1, [(x, y, 0, 0) for x, y in CORNERS]), header=()), SAME, "--units mm", "does not say its unit"


def regions():
    ok, warn, error = "ok", "warn", "error"

    def loop(*points, gap=0.0):
        """Lines round, each beginning a gap late along itself."""
        out = []
        for p, q in zip(points, points[1:] + points[:1]):
            d = math.dist(p, q)
            out.append(line((p[0] + (q[0] - p[0]) * gap / d, p[1] + (q[1] - p[1]) * gap / d), q))
        return out

    yield "gap_at_hundredth", ok, "six gaps of 0.009: joined and not worth a word", file(*loop(*CORNERS, gap=0.009)), SAME | {"tol": 1e-4}, "", ""
    yield "gap_at_tenth", warn, "six gaps of 0.1: joined, with a word", file(*loop(*CORNERS, gap=0.1)), SAME | {"tol": 1e-3}, "", "6 gaps closed, the biggest 0.1 mm"
    yield "gap_over_tenth", error, "six gaps of 0.12: each told", file(*loop(*CORNERS, gap=0.12)), SAME | {"tol": 1e-3}, "join tolerance 1 mm", "0.12 mm apart"
    yield "gap_in_inches", error, "gaps of 0.005 in are 0.127 mm", file(*loop(*[(x / 25.4, y / 25.4) for x, y in CORNERS], gap=0.005), header=value("$INSUNITS", 1)), SAME | {"tol": 1e-3}, "join tolerance 1 mm", "0.13 mm apart"
    yield "gap_wide", error, "a gap of 30 mm is not closed by any tolerance asked for here", file(*loop(*CORNERS)[1:], line((0, 30), (0, 300))), None, "", "30 mm apart"
    yield "junction", error, "a line that branches off inside", file(*loop(*CORNERS), line((0, 0), (100, 100))), None, "", "(0, 0)"
    yield "spur", error, "a line that stands on the middle of a side", file(plate(), line((75, 0), (75, 50))), None, "", "(75, 50)"
    yield "eight", error, "two lobes that cross in (200, 150)", file(polyline([(0, 0), (400, 300), (400, 0), (0, 300)])), None, "", "(200, 150)"
    yield "hole_crosses", error, "a hole that runs over the edge", file(plate(), circle(150.0, 100.0, 20.0)), None, "", "cross"
    yield "hole_touches", ok, "a square hole that touches the outline with a corner", file(plate(), polyline([(0, 100), (30, 70), (60, 100), (30, 130)])), dict(area=AREA - 1800, w=W, h=H, holes=1, probes=PROBES + [[30, 100, False]]), "", ""
    yield "nested_four", warn, "five contours in one another: three solids, two holes", file(*[box(i * 50, i * 40, 1000 - i * 100, 800 - i * 80) for i in range(5)]), dict(outer=3, holes=2, area=1000 * 800 - 900 * 720 + 800 * 640 - 700 * 560 + 600 * 480, w=1000, h=800), "", "2 islands"
    yield "duplicate_reversed", ok, "the outline three times: once as a polyline, reversed, in lines", file(plate(), polyline(CORNERS[::-1]), *loop(*CORNERS[3:], *CORNERS[:3])), SAME, "", "twice"
    yield "tiny", warn, "a speck of half a millimetre", file(plate(), box(50, 50, 0.5, 0.5)), dict(area=AREA - 0.25, w=W, h=H, holes=1, probes=PROBES), "", "1 contour of less than 1 mm²"
    yield "large", warn, "25 m long", file(box(0, 0, 25000, 300)), dict(area=25000 * 300, w=25000, h=300), "", "over 20 m"
    yield "small", warn, "15 mm long", file(box(0, 0, 15, 10)), dict(area=150, w=15, h=10), "", "check the unit"
    yield "which", warn, "three outlines on two layers, one of them asked for", file(plate(layer="A"), box(500, 0, 100, 90, layer="A"), box(700, 0, 300, 90, layer="B")), dict(area=9000, w=100, h=90), "layer=A which=2", "3 separate outlines"
    yield "overlapping_sides", ok, "one side drawn as two lines that overlap", file(line((0, 0), (250, 0)), line((400, 0), (200, 0)), line((400, 0), (400, 300)), line((400, 300), (0, 300)), line((0, 300), (0, 0))), dict(area=120000, w=400, h=300), "", "partly"
    yield from overlapping_arcs(ok)


def overlapping_arcs(ok):
    """A slot of 300 x 100 mm and a disc of 120 mm whose arcs lie partly on one another."""
    sides = line((50, 0), (250, 0)), line((250, 100), (50, 100))
    left = arc(50, 50, 50, 90, 270)
    slot = dict(area=20000 + math.pi * 2500, w=300, h=100, tol=1e-3, probes=[[1, 50, True], [299, 50, True], [5, 5, False], [295, 95, False]])
    yield "overlapping_arcs", ok, "one end of a slot drawn as two arcs that overlap", file(*sides, left, arc(250, 50, 50, 270, 33), arc(250, 50, 50, 341, 90)), slot, "", "partly"
    yield "overlapping_arc_turned_over", ok, "one of the two drawn from the other side", file(*sides, left, arc(250, 50, 50, 270, 33), arc(-250, 50, 50, 90, 199, (230, -1.0))), slot, "", "partly"
    yield "arc_on_arc", ok, "a stretch of an end drawn again", file(*sides, arc(250, 50, 50, 270, 90), left, arc(50, 50, 50, 127, 201)), slot, "", "partly"
    disc = dict(area=math.pi * 3600, w=120, h=120, tol=2e-3, probes=[[60, 60, True], [119, 60, True], [103, 103, False]])
    yield "overlapping_arcs_round", ok, "a circle of three arcs, each over the next", file(arc(0, 0, 60, 3, 151), arc(0, 0, 60, 118, 273), arc(0, 0, 60, 241, 17)), disc, "", "partly"
