package dxf

import (
	"math"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// Lines gives every line of model space in drawing units, curves within the
// chord error (drawing units too). Entities that cannot be read are problems
// when they lie on a layer that is wanted, and are left out when not.
func (f *File) Lines(chord float64, wanted func(layer string) bool) []trace.Line {
	t := tracer{file: f, chord: chord, wanted: wanted, names: map[string][]string{}}
	t.trace(f.entities, place{at: trace.Identity()})
	t.noteHeights()
	if t.wide > 0 {
		f.report.Note("width", "%s drawn with a width: the outline is the centre line", trace.Count(t.wide, "polyline"))
	}
	return t.out
}

// tracer turns entities into lines.
type tracer struct {
	file   *File
	chord  float64
	wanted func(layer string) bool
	out    []trace.Line
	names  map[string][]string // the Names of each layer, made once

	points   int // so far
	placed   int // entities placed by INSERT so far
	full     bool
	wide     int
	low, top float64 // heights met so far
	heights  bool
}

// place says where a block's content goes: how it is moved, the layer of the
// INSERT (for what lies on layer 0) and how deep INSERT lies in INSERT.
type place struct {
	at    trace.Affine
	layer string
	depth int
}

// kinds that are never an outline; everything not named here or below is left
// out as well, by its name.
var neverOutline = map[string]bool{
	"TEXT": true, "MTEXT": true, "ATTDEF": true, "ATTRIB": true, "POINT": true, "HATCH": true,
	"DIMENSION": true, "ARC_DIMENSION": true, "LARGE_RADIAL_DIMENSION": true, "LEADER": true,
	"MLEADER": true, "MULTILEADER": true, "TOLERANCE": true, "VIEWPORT": true, "IMAGE": true,
	"SOLID": true, "TRACE": true, "3DFACE": true, "RAY": true, "XLINE": true, "SHAPE": true, "SEQEND": true,
	"WIPEOUT": true, "OLEFRAME": true, "OLE2FRAME": true, "ACAD_TABLE": true, "PDFUNDERLAY": true, "DWFUNDERLAY": true,
	"DGNUNDERLAY": true, "LIGHT": true, "SUN": true, "RTEXT": true, "ARCALIGNEDTEXT": true, "GEOPOSITIONMARKER": true,
}

// notRead are kinds that may well be the outline but hold no lines that can be
// taken as they are, with the cure.
var notRead = map[string]string{
	"REGION": "explode it into lines and arcs", "MLINE": "explode it into lines",
	"3DSOLID": "draw the outline flat", "BODY": "draw the outline flat", "SURFACE": "draw the outline flat",
	"PLANESURFACE": "explode it into lines and arcs", "EXTRUDEDSURFACE": "draw the outline flat",
	"LOFTEDSURFACE": "draw the outline flat", "REVOLVEDSURFACE": "draw the outline flat",
	"SWEPTSURFACE": "draw the outline flat", "NURBSURFACE": "draw the outline flat",
	"MPOLYGON": "explode it into polylines", "MESH": "draw the outline flat", "HELIX": "convert it to a polyline",
}

func (t *tracer) trace(es []entity, p place) {
	for _, e := range es {
		if t.full {
			return
		}
		layer := t.file.layerName(e)
		if p.depth > 0 {
			t.count()
			if layer == "0" {
				layer = p.layer
			}
		}
		if why := t.hidden(e, layer); why != "" {
			t.file.report.LeaveOut(why)
			continue
		}
		t.entity(e, layer, p)
	}
}

// hidden says why an entity is not to be seen, or "".
func (t *tracer) hidden(e entity, layer string) string {
	for _, g := range e.groups {
		if g.code == 67 && g.value == "1" {
			return e.kind + " in paper space"
		}
		if g.code == 60 && g.value == "1" {
			return e.kind + " set invisible"
		}
	}
	l := t.file.layers[strings.ToLower(layer)]
	switch {
	case l.frozen:
		return e.kind + " on frozen layer " + layer
	case l.off && e.kind != "INSERT":
		return e.kind + " on layer " + layer + ", which is off"
	case strings.EqualFold(layer, "Defpoints"):
		return e.kind + " on layer " + layer
	}
	return ""
}

func (t *tracer) entity(e entity, layer string, p place) {
	v := t.file.values(e)
	switch e.kind {
	case "LINE":
		t.line(v, layer, p)
	case "ARC", "CIRCLE":
		t.arc(v, layer, p)
	case "ELLIPSE":
		t.ellipse(v, layer, p)
	case "LWPOLYLINE":
		t.lightPolyline(v, layer, p)
	case "POLYLINE":
		t.polyline(v, layer, p)
	case "SPLINE":
		t.spline(v, layer, p)
	case "INSERT":
		t.insert(v, layer, p)
	default:
		if cure, may := notRead[e.kind]; may && t.wanted(layer) {
			v.problem("not-read", e.line, cure, "%s is not read", e.kind)
			return
		}
		if neverOutline[e.kind] || notRead[e.kind] != "" {
			t.file.report.LeaveOut(e.kind)
			return
		}
		t.file.report.LeaveOut(e.kind + " (unknown)")
	}
}

// add keeps a line, moved to its place; a line with less than two points is
// none.
func (t *tracer) add(v *values, layer string, m trace.Affine, points []orb.Point, closed bool) {
	if v.bad || len(points) < 2 || t.full {
		return
	}
	if t.points += len(points); t.points > trace.MaxPoints {
		t.overflow(v.e.line, "draws more than %d points", trace.MaxPoints)
		return
	}
	if t.names[layer] == nil {
		t.names[layer] = []string{layer}
	}
	l := trace.Line{Points: points, Closed: closed, Layer: layer, Names: t.names[layer], At: v.e.line}
	if m != trace.Identity() {
		l = l.Map(m)
	}
	if !l.Finite(largest) {
		v.problem("number", v.e.line, "draw it at its real size", "%s reaches out of all reason", v.e.kind)
		return
	}
	t.out = append(t.out, l)
}

// count bounds the entities that blocks in blocks may multiply to.
func (t *tracer) count() {
	const most = 1_000_000
	if t.placed++; t.placed > most {
		t.overflow(1, "blocks in blocks hold more than %d entities", most)
	}
}

func (t *tracer) overflow(line int, text string, args ...any) {
	if !t.full {
		t.full = true
		r := t.file.report
		r.Problem("size", r.Line(line), "keep only the outline in the drawing", text, args...)
	}
}

// chordAt gives the chord error in the coordinates of a place.
func (t *tracer) chordAt(m trace.Affine) float64 {
	s := m.Stretch()
	if !(s > 1e-12) || math.IsInf(s, 1) {
		return t.chord
	}
	return t.chord / s
}

// height remembers the z of a point, so that a drawing that is not flat is
// told.
func (t *tracer) height(zs ...float64) {
	for _, z := range zs {
		if !t.heights {
			t.low, t.top, t.heights = z, z, true
		}
		t.low, t.top = math.Min(t.low, z), math.Max(t.top, z)
	}
}

func (t *tracer) noteHeights() {
	switch {
	case t.low == 0 && t.top == 0:
	case t.low == t.top:
		t.file.report.Note("flattened", "everything lies at height z = %s: taken as flat", trace.Number(t.low))
	default:
		t.file.report.Note("flattened", "heights run from z = %s to %s: flattened to the drawing plane, lengths measured along it",
			trace.Number(t.low), trace.Number(t.top))
	}
}
