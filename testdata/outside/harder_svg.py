"""The SVG drawings of harder.py. Most draw one of three shapes, whose values
follow by hand: an angle plate (area, box and probes tell every turn and mirror
of it apart), a rectangle, a stadium."""
import math

# The angle plate, 400 x 300, in the file with y down: a bar along the top, a
# leg down the left side. Seen with y up: (300, 250) and (50, 50) are on it,
# (300, 50) is not.
PLATE = "M0 0H400V100H150V300H0z"
AREA, W, H = 400 * 100 + 150 * 200, 400, 300
PROBES = [[300, 250, True], [50, 50, True], [300, 50, False], [100, 250, True]]
R = '<rect x="100" y="100" width="300" height="200"/>'


def page(body, head='width="900mm" height="600mm" viewBox="0 0 900 600"', before="", xmlns='xmlns="http://www.w3.org/2000/svg"'):
    return f"{before}<svg {xmlns} {head}>\n{body}\n</svg>\n"


def path(extra="", d=PLATE):
    return f'<path {extra} d="{d}"/>'


def scaled(f, g=None):
    g = g or f
    return dict(area=AREA * f * g, w=W * f, h=H * g, probes=[[x * f, y * g, i] for x, y, i in PROBES])


def turned(quarters):
    """The plate turned counter-clockwise as seen."""
    w, h, probes = W, H, PROBES
    for _ in range(quarters):
        w, h, probes = h, w, [[h - y, x, i] for x, y, i in probes]
    return dict(area=AREA, w=w, h=h, probes=probes)


def shrunk(values, f):
    return dict(area=values["area"] * f * f, w=values["w"] * f, h=values["h"] * f, probes=[[x * f, y * f, i] for x, y, i in values["probes"]])


def under(points):
    """Area of a polygon."""
    return abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(points, points[1:] + points[:1]))) / 2


def cubic(p, c1, c2, q, n=4000):
    return [
        tuple((1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t**3 * d for a, b, c, d in zip(p, c1, c2, q))
        for t in (i / n for i in range(n))
    ]


def mirrored():
    return dict(area=AREA, w=W, h=H, probes=[[W - x, y, i] for x, y, i in PROBES])


def rect(w, h, holes=0, minus=0.0):
    return dict(area=w * h - minus, w=w, h=h, holes=holes)


SAME = dict(area=AREA, w=W, h=H, probes=PROBES)


def cases():
    """name, verdict, what it is, text, values, options, what must be said."""
    ok, warn, error = "ok", "warn", "error"
    yield "unit_pc", ok, "width and height in picas", page(path(), 'width="150pc" height="100pc" viewBox="0 0 900 600"'), scaled(635 / 900) | {"tol": 1e-5}, "", ""
    yield "unit_q", ok, "quarter millimetres, capital Q", page(path(), 'width="3600Q" height="2400Q" viewBox="0 0 900 600"'), SAME, "", ""
    yield "unit_cm_comma_viewbox", ok, "cm, a viewBox with commas and an exponent", page(path(), 'width="90cm" height="60cm" viewBox="0,0,9e2,600"'), SAME, "", ""
    yield "unit_mixed", ok, "width in inches, height in mm", page(path(), 'width="10in" height="254mm" viewBox="0 0 900 900"'), scaled(254 / 900) | {"tol": 1e-5}, "", ""
    yield "width_only", ok, "width alone with a viewBox", page(path(), 'width="450mm" viewBox="0 0 900 600"'), scaled(0.5), "", ""
    yield "height_only", ok, "height alone with a viewBox", page(path(), 'height="1200mm" viewBox="0 0 900 600"'), scaled(2), "", ""
    yield "px_viewbox", warn, "px with a viewBox: 96 per inch, said", page(path(), 'width="900px" height="600px" viewBox="0 0 900 600"'), scaled(25.4 / 96), "", "96 per inch"
    yield "units_96", error, "no size: asks; with 96/in read so", page(path(), 'viewBox="0 0 900 600"'), scaled(25.4 / 96), "96 units per inch", "does not say its size"
    yield "ex_size", error, "width in ex", page(path(), 'width="90ex" height="60ex" viewBox="0 0 900 600"'), scaled(1), "user units are mm", "90ex"
    yield "zero_size", error, "width 0", page(path(), 'width="0" height="600mm" viewBox="0 0 900 600"'), None, "", "not more than nothing"
    yield "negative_size", error, "a negative height", page(path(), 'width="900mm" height="-600mm" viewBox="0 0 900 600"'), None, "", "-600mm"
    yield "viewbox_three", error, "a viewBox of three numbers", page(path(), 'width="900mm" height="600mm" viewBox="0 0 900"'), None, "", "four numbers"
    yield "viewbox_flat", error, "a viewBox without height", page(path(), 'width="900mm" height="600mm" viewBox="0 0 900 0"'), None, "", "no area"
    yield "size_by_style", ok, "width and height by the style of the root win over the attributes", page(path(), 'width="9mm" height="6mm" style="width:900mm;height:600mm" viewBox="0 0 900 600"'), SAME, "", ""
    yield "size_percent_by_style", error, "style width:100% hides the size stated by the attribute", page(path(), 'width="900mm" height="600mm" style="width:100%;height:auto" viewBox="0 0 900 600"'), None, "", "does not say its size"
    yield "aspect_none", warn, "preserveAspectRatio none: both scales differ", page(path(), 'width="900mm" height="1200mm" viewBox="0 0 900 600" preserveAspectRatio="none"'), scaled(1, 2), "", "do not fit"
    yield "aspect_meet", warn, "the box does not fit: meet keeps the smaller scale", page(path(), 'width="900mm" height="1200mm" viewBox="0 0 450 300"'), scaled(2), "", "do not fit"
    yield "aspect_slice", warn, "slice takes the greater scale", page(path(), 'width="900mm" height="900mm" viewBox="0 0 900 600" preserveAspectRatio="xMinYMin slice"'), scaled(1.5), "", "do not fit"
    yield "mirrored", ok, "scale(-1 1): a mirrored plate", page(path('transform="translate(500,0) scale(-1,1)"')), mirrored(), "", ""
    yield "transform_spellings", ok, "no commas, glued signs, exponents, an empty rotate centre", page(path('transform="translate(1e1-2.5e-1)rotate(90,0 0),matrix(1 0 0 1 +.5.5)\n scale(1)"')), turned(3), "", ""
    yield "rotate_about", ok, "rotate about a point, twice", page(path('transform="rotate(45 200 150) rotate(45,200,150)"')), turned(3), "", ""
    yield "skew_undone", ok, "skewY and back by a matrix", page(f'<g transform="skewY(30)"><g transform="matrix(1 {-math.tan(math.pi / 6):.12f} 0 1 0 0)">{path()}</g></g>'), SAME, "", ""
    yield "transform_by_style", ok, "transform by the style, in CSS spelling, over the attribute", page(path('transform="scale(7)" style="transform: translate(10mm, 2px) rotate(.25turn)"')), turned(3), "", ""
    yield "transform_by_sheet", ok, "scaleX(-1) by a style sheet", page("<style>.m{transform:translateX(500px) scaleX(-1)}</style>" + path('class="m"')), mirrored(), "", ""
    yield "transform_style_unitless", error, "translate(10) by style has no unit", page(path('style="transform:translate(10)"')), None, "", "no unit"
    yield "transform_origin", ok, "transform-origin as attribute: half a turn about the middle of the page", page(path('transform="rotate(180)" transform-origin="450 300"')), turned(2), "", ""
    yield "transform_origin_words", ok, "transform-origin by words, bottom right", page(path('style="transform:rotate(90deg) scale(.5);transform-origin:right bottom"')), shrunk(turned(3), 0.5), "", ""
    yield "transform_box", error, "transform-origin of the shape's own box", page(path('style="transform:rotate(90deg);transform-origin:center;transform-box:fill-box"')), None, "", "transform-box"
    yield "root_transform", error, "a transform on the outermost svg", page(path(), 'width="900mm" height="600mm" viewBox="0 0 900 600" transform="scale(2)"'), None, "", "whole drawing"
    yield "geometry_by_style", ok, "width, height and rx by style win over attributes", page('<rect x="10" y="10" width="5" height="5" style="width:700px;height:380px"/>'), rect(700, 380), "", ""
    yield "geometry_by_sheet", ok, "r of a circle by a style sheet", page('<style>circle{r:5cm}</style><circle cx="400" cy="300" r="3"/>', 'width="900mm" height="600mm"'), dict(area=math.pi * 2500, w=100, h=100, tol=2e-3), "", ""
    yield "geometry_style_unitless", error, "a width by style without unit", page('<rect width="5" height="5" style="width:700"/>'), None, "", "no unit"
    yield "path_by_style", ok, "path data by style", page(f"<path d=\"M0 0H9V9z\" style=\"d:path('{PLATE}')\"/>"), SAME, "", ""
    yield "foreign_attribute", ok, "an attribute of another name space with the name of ours", page('<rect k:width="5" width="700" height="380" k:x="3" k:transform="scale(3)"/>', xmlns='xmlns="http://www.w3.org/2000/svg" xmlns:k="urn:k"'), rect(700, 380), "", ""
    yield "attribute_twice", error, "an attribute twice", page('<rect width="5" width="700" height="380"/>'), None, "", "twice"
    yield "prefixed", ok, "every element with a prefix", '<s:svg xmlns:s="http://www.w3.org/2000/svg" width="900mm" height="600mm" viewBox="0 0 900 600"><s:path d="' + PLATE + '"/><path d="M0 0h800v500H0z"/></s:svg>', SAME, "", ""
    yield "important", ok, "!important in the sheet wins over the style attribute", page(f'<style>.a{{display:none !important}} .b{{visibility:hidden!important}}</style>{path()}<rect class="a" style="display:inline" width="800" height="500"/><rect class="b" visibility="visible" width="800" height="500"/>'), SAME, "", ""
    yield "sheet_descendant", ok, "hidden by rules for elements in others", page(f'<style type="text/css"><![CDATA[ /* off */ #old rect, g.off > circle {{ display: none }} ]]></style><g id="old"><g><rect width="800" height="500"/></g></g><g class="on off"><circle r="9"/></g>{path()}'), SAME, "", ""
    yield "sheet_order", ok, "id beats class, class beats name, the later of equals, style beats attribute", page(f'''<style>#p{{visibility:visible}} .p{{visibility:hidden}} rect{{display:inline}} rect{{display:none}}</style><rect style="" display="inline" width="800" height="500"/><g>{path("id='p' class='p'")}</g>'''), SAME, "", ""
    yield "sheet_siblings", error, "a rule for siblings is not read", page(f"<style>g + rect{{display:none}}</style><g/>{R}"), None, "", "g + rect"
    yield "sheet_imported", error, "@import of another file", page(f'<style>@import url("a.css"); .x{{fill:red}}</style>{R}'), None, "", "@import"
    yield "sheet_elsewhere", error, "a style sheet in another file", page(R, before='<?xml-stylesheet href="a.css" type="text/css"?>\n'), None, "", "another file"
    yield "sheet_print", error, "a style for printing alone", page(f"<style>@media print{{rect{{display:none}}}}</style>{R}"), None, "", "@media"
    yield "sheet_harmless", ok, "rules that change no outline are passed over, whatever their selectors", page(f'<style>@charset "utf-8"; @font-face{{font-family:a}} text:hover, a::before{{font-size:3px}}</style>{R}'), rect(300, 200), "", ""
    yield "unpainted", ok, "colours without any opacity, strokes without width or opacity", page("".join(f'<rect width="800" height="500" {a}/>' for a in ('fill="rgba(0,0,0,0)"', 'fill="#12345600"', 'fill="none" stroke="red" stroke-opacity="0" stroke-width="3"', 'fill="none" stroke="red" stroke-width="0"', 'fill="transparent"', 'style="fill:rgb(0 0 0 / 0%)"')) + path('fill="none" stroke="#123f"')), SAME, "", "6 rect without fill or stroke"
    yield "visible_child", ok, "hidden group with a visible child, and the other way round", page(f'''<g visibility="hidden"><rect width="800" height="500"/>{path("visibility='visible'")}</g><g visibility="visible"><rect visibility="collapse" width="800" height="500"/></g>'''), SAME, "", ""
    yield "hidden_by_opacity", ok, "a group of opacity 0% and one not displayed with a displayed child", page(f'<g opacity="0%"><rect width="800" height="500"/></g><g display="none"><rect display="inline" width="800" height="500"/></g>{path()}'), SAME, "", ""
    yield "used_from_hidden", ok, "use of something in a group that is not displayed: it is seen", page(f'''<g display="none">{path("id='p'")}</g><use href="#p"/>'''), SAME, "", ""
    yield "never_drawn", ok, "symbol, pattern, marker, mask, clipPath and defs that nothing uses", page("".join(f'<{n} id="{n}"><rect width="800" height="500"/></{n}>' for n in ("symbol", "pattern", "marker", "mask", "clipPath", "defs")) + path()), SAME, "", ""
    yield "requires_extension", ok, "a switch: what asks for an extension is passed over", page(f'<switch><foreignObject requiredExtensions="urn:x"/><g requiredExtensions="urn:y"><rect width="800" height="500"/></g><g>{path()}</g></switch>'), SAME, "", ""
    yield "by_language", error, "what is seen depends on the language", page(f'<switch><g systemLanguage="de">{R}</g><g>{path()}</g></switch>'), None, "", "languages"
    yield "animated", error, "an animated width", page('<rect width="300" height="200"><animate attributeName="width" to="500" dur="1s"/></rect>'), None, "", "animated"
    yield "clip_round_page", ok, "a clip-path of the page's size hides nothing", page(f'<clipPath id="c"><path d="M0 0h900v600H0z"/></clipPath><g clip-path="url(#c)">{path()}</g>'), SAME, "", ""
    yield "clip_cuts", error, "a clip-path that cuts the outline", page(f'<clipPath id="c"><rect width="350" height="600"/></clipPath><g clip-path="url(#c)">{path()}</g>'), None, "", "cut by the clip-path"
    yield "clip_turned", ok, "a turned clip-path that hides nothing, by style, quoted", page(f'<clipPath id="c" transform="rotate(30)"><rect x="-900" y="-900" width="1800" height="1800"/></clipPath><g style="clip-path:url(\'#c\')" transform="translate(50 60)">{path()}</g>'), SAME, "", ""
    yield "clip_away", ok, "a shape wholly outside its clip-path is not seen", page(f'<clipPath id="c"><rect width="300" height="600"/></clipPath><g clip-path="url(#c)"><rect x="500" width="300" height="400"/></g>{path()}'), SAME, "", "outside"
    yield "clip_of_own_box", error, "a clip-path in parts of the shape's box", page(f'''<clipPath id="c" clipPathUnits="objectBoundingBox"><rect width="1" height="1"/></clipPath>{path("clip-path='url(#c)'")}'''), None, "", "clip-path"
    yield "masked", error, "a mask", page(f'''<mask id="m"><rect width="900" height="600" fill="#fff"/></mask>{path("mask='url(#m)'")}'''), None, "", "mask"
    yield "nested_place", ok, "nested svg with x, y and a viewBox that is fitted at the right end", page(f'<svg x="100" y="50" width="700" height="300" viewBox="0 0 400 300" preserveAspectRatio="xMaxYMin">{path()}</svg>'), SAME, "", ""
    yield "nested_cut", error, "nested svg that hides what reaches out of it", page(f'<svg x="100" y="50" width="350" height="300">{path()}</svg>'), None, "", "viewport"
    yield "nested_visible", ok, "nested svg with overflow visible", page(f'<svg x="100" y="50" width="350" height="300" overflow="visible">{path()}</svg>'), SAME, "", ""
    yield "nested_percent", ok, "percentages of the nested viewport", page('<svg x="10%" y="10%" width="50%" height="50%"><rect x="10%" y="10%" width="80%" height="50%"/></svg>'), rect(360, 150), "", ""
    yield "nested_none", ok, "nested svg stretched both ways", page(f'<svg width="800" height="300" viewBox="0 0 400 300" preserveAspectRatio="none">{path()}</svg>'), scaled(2, 1), "", ""
    yield "symbol_ref", ok, "symbol with refX and refY: they land on x and y of the use", page(f'<symbol id="s" viewBox="0 0 400 300" refX="200" refY="bottom">{path()}</symbol><use href="#s" x="450" y="550" width="400" height="300"/><circle cx="600" cy="300" r="40"/>'), dict(area=AREA - math.pi * 1600, w=W, h=H, holes=1, tol=5e-4, probes=PROBES), "", ""
    yield "symbol_no_size", ok, "symbol without viewBox, overflow visible; use without size", page(f'<symbol id="s" overflow="visible">{path()}</symbol><use xlink:href="#s" transform="translate(300 200)"/>', xmlns='xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'), SAME, "", ""
    yield "href_wins", ok, "href wins over xlink:href", page(f'''<defs>{path("id='a'")}<rect id="b" width="800" height="500"/></defs><use xlink:href="#b" href="#a"/>''', xmlns='xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'), SAME, "", ""
    yield "use_of_svg", ok, "use of an svg element: width and height of the use win", page(f'<defs><svg id="s" width="400" height="300" viewBox="0 0 400 300">{path()}</svg></defs><use href="#s" width="800" height="600"/>'), scaled(2), "", ""
    yield "use_of_use", ok, "use of a use of a group, moved three times", page(f'<defs><g id="a" transform="scale(2)">{path()}</g><use id="b" href="#a" x="5" transform="rotate(90)"/></defs><use href="#b" x="700" y="9"/>'), shrunk(turned(3), 2), "", ""
    yield "use_cycle", error, "two uses that hold each other", page(f'<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>{R}'), None, "", "holds this use"
    yield "use_external", error, "use of another file", page('<use href="part.svg#plate"/>' + R), None, "", "part.svg#plate"
    yield "rect_auto", ok, "rx auto follows ry; percentages", page('<rect x="10%" y="10%" width="50%" height="50%" rx="auto" ry="30"/>'), dict(area=450 * 300 - (4 - math.pi) * 900, w=450, h=300, tol=5e-4), "", ""
    yield "rect_rx_percent", ok, "rx in percent of the width of the page, ry stated apart, both clamped", page('<rect width="600" height="400" rx="50%" ry="250"/>'), dict(area=math.pi * 300 * 200, w=600, h=400, tol=5e-4), "", ""
    yield "circle_percent", ok, "a radius in percent: of the diagonal over root 2", page('<circle cx="50%" cy="50%" r="25%"/>', 'width="800mm" height="600mm" viewBox="0 0 800 600"'), dict(area=math.pi * (0.25 * math.hypot(800, 600) / math.sqrt(2)) ** 2, w=353.5534, h=353.5534, tol=5e-4), "", ""
    yield "nothing_of_a_shape", ok, "shapes without area: circle r 0, rect without width, ellipse ry 0, line of no length", page(f'<circle cx="9" cy="9" r="0"/><rect height="5"/><ellipse rx="5" ry="0"/>{path()}<path d="M5 5z"/><polygon points="7,7"/>'), SAME, "", ""
    yield "negative_radius", error, "a negative radius", page(f'<circle r="-5"/>{R}'), None, "", "r is negative"
    yield "em_inside", error, "a height in em", page('<rect width="300" height="20em"/>'), None, "", "em has no size"
    yield "path_smooth", ok, "S and T after other commands reflect nothing", page('<path d="M0 0 L0 200 S0 400 200 400 T400 400 L400 0 z"/>'), dict(area=under(cubic((0, 200), (0, 200), (0, 400), (200, 400)) + [(200, 400), (400, 400), (400, 0), (0, 0)]), w=400, h=400, tol=5e-4), "", ""
    yield "path_arcs", ok, "arcs: no radius is a line, too small radii grow, negative ones count as positive, flags glued", page('<path d="M0 0A0 50 0 01400 0V200A1 1 0 01 0 200z M100 50a-50 50 0 10100 0a50,50,0,10-100,0Z"/>'), dict(area=400 * 200 + math.pi * 200**2 / 2 - math.pi * 2500, w=400, h=400, holes=1, tol=5e-4, probes=[[200, 50, True], [350, 300, True]]), "", ""
    yield "path_pairs", warn, "M and m with several pairs, h and v with several numbers, -.5.5 glued", page('<path d="m 10,10 400 0 0,100-250,0 0,200-150 0z M 500 10 800 10 800 210H700 500z" />'), None, "", ""
    yield "path_after_z", warn, "drawing on after z begins where the closed piece began", page('<path d="M100 100h300v200h-300zl-50 0 0 50z"/>'), dict(outer=2, area=60000 + 1250, w=350, h=200), "", ""
    yield "path_open_fill", error, "an open path that fill would close", page('<path d="M0 0H400V300H0"/>'), None, "", "(0, 600) and (0, 300)"
    yield "path_bad_flag", error, "an arc flag of 2", page('<path id="bad" d="M0 0A50 50 0 2 1 100 0z"/>' + R), None, "", 'id="bad"'
    yield "path_trailing_comma", error, "a comma at the end of path data", page('<path d="M0 0H400V300,"/>'), None, "", "path data"
    yield "path_hex", error, "1e999 in path data", page('<path d="M0 0H1e999V300z"/>' + R), None, "", "out of all reason"
    yield "polygon_odd", error, "NaN in the points of a polygon", page('<polygon points="0,0 400,0 NaN,300"/>'), None, "", "points"
    yield "polyline_closed", ok, "a polyline that ends where it began", page('<polyline points="0,0 400,0 400,300 0,300 0,0" fill="none" stroke="#000"/>'), rect(400, 300), "", ""
    yield "text_and_image", ok, "text, images and foreign objects are left out", page(f'{path()}<text>A</text><image width="800" height="500" href="x.png"/><foreignObject width="9" height="9"/>'), SAME, "", "1 text"
    yield "text_alone", error, "nothing but text", page("<text>outline</text>"), None, "", "converted to paths"
    yield "not_utf8", ok, "Latin-1 with a label in it", page(f'<g id="Außen">{path()}</g><rect id="x" width="800" height="500"/>', before='<?xml version="1.0" encoding="ISO-8859-1"?>\n').encode("latin-1"), SAME, "layer=Außen", ""
    yield "utf16", ok, "UTF-16 with its mark", ("\ufeff" + page(path(), before='<?xml version="1.0" encoding="UTF-16"?>\r\n')).encode("utf-16-le"), SAME, "", ""
    yield "utf16_be", ok, "UTF-16, the other way round", ("\ufeff" + page(path())).encode("utf-16-be"), SAME, "", ""
    yield "bom_crlf", ok, "a byte order mark and CRLF", ("\ufeff" + page(path(), before='<?xml version="1.0"?>\n')).replace("\n", "\r\n"), SAME, "", ""
    yield "compressed", error, "svgz", __import__("gzip").compress(page(path()).encode(), mtime=0), None, "", "compressed"
    yield "external_entity", error, "an entity from another file", page("<g>&x;</g>" + R, before='<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hostname">]>\n'), None, "", "entit"
    yield "public_doctype", ok, "the public document type of SVG 1.1", page(path(), before='<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">\n'), SAME, "", ""
    yield "cut_short", error, "cut in the middle of path data", page(path())[:-30], None, "", ":2"
    yield "two_roots", error, "a second root", page(path()) + page(path()), None, "", "svg"
    yield "off_page", warn, "the outline reaches over the page", page(path('transform="translate(700 0)"')), SAME, "", "edge of its page"
    yield "stroke_width", ok, "a stroke of 40: the outline is its middle line", page(path('fill="none" stroke="#000" stroke-width="40"')), SAME, "", ""
    yield "layer_hidden", ok, "a hidden layer group, a seen one with a label", page(f'<g k:groupmode="layer" k:label="old" style="display:none"><rect width="800" height="500"/></g><g k:groupmode="layer" k:label="cut">{path()}</g>', xmlns='xmlns="http://www.w3.org/2000/svg" xmlns:k="urn:k"'), SAME, "layer=cut", ""
    yield "layer_group_moved", ok, "the chosen layer inherits the transform of the groups around it", page(f'<g transform="translate(600 0) scale(-1 1)"><g id="in"><g id="cut">{path()}</g><rect width="800" height="500"/></g></g>'), mirrored(), "layer=cut", ""
