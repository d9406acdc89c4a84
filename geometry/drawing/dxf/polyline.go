package dxf

import (
	"github.com/paulmach/orb"

	"stripwright/geometry/curve"
	"stripwright/geometry/drawing/trace"
)

// corner is a vertex of a polyline with the bulge of the piece that follows.
type corner struct {
	at    orb.Point
	bulge float64
}

// lightPolyline reads an LWPOLYLINE: groups 10 begin a vertex, 20 and 42 belong
// to the vertex begun last.
func (t *tracer) lightPolyline(v *values, layer string, p place) {
	m, ok := t.plane(v, layer, p)
	if !ok {
		return
	}
	var corners []corner
	ys := 0
	for _, g := range v.e.groups {
		switch last := len(corners) - 1; {
		case g.code == 10:
			corners = append(corners, corner{at: orb.Point{v.parse(g), 0}})
		case last < 0:
		case g.code == 20:
			corners[last].at[1] = v.parse(g)
			ys++
		case g.code == 42:
			corners[last].bulge = v.parse(g)
		}
	}
	count := v.whole(90, len(corners))
	if !v.bad && (ys != len(corners) || count != len(corners)) {
		v.problem("truncated", v.e.line, cutCure, "%s says it has %d vertices, %d are there", v.e.kind, count, len(corners))
	}
	t.height(v.number(38, 0))
	t.noteWidth(v, 43)
	t.addCorners(v, layer, m, corners, v.whole(70, 0)&1 != 0)
}

// flags of POLYLINE and VERTEX, group 70.
const (
	flagClosed     = 1
	flagSplineFit  = 4
	flag3D         = 8
	flagMesh       = 16
	flagPolyface   = 64
	flagFramePoint = 16 // VERTEX: control point of the frame of a spline fit
)

// polyline reads a POLYLINE with its VERTEX children; the frame that a spline
// was fitted to is not part of the outline.
func (t *tracer) polyline(v *values, layer string, p place) {
	flags := v.whole(70, 0)
	if kind := solidKind(flags); kind != "" {
		if t.wanted(layer) {
			v.problem("not-read", v.e.line, "convert it to a polyline in the plane", "POLYLINE of kind %s is not read", kind)
		} else {
			t.file.report.LeaveOut("POLYLINE of kind " + kind)
		}
		return
	}
	m, ok := t.plane(v, layer, p)
	if !ok {
		return
	}
	var corners []corner
	for _, e := range v.e.children {
		w := t.file.values(e)
		if w.whole(70, 0)&flagFramePoint == 0 {
			corners = append(corners, corner{w.point(10), w.number(42, 0)})
		}
		v.bad = v.bad || w.bad
	}
	t.height(v.number(30, 0))
	t.noteWidth(v, 40)
	t.addCorners(v, layer, m, corners, flags&flagClosed != 0)
}

func solidKind(flags int) string {
	switch {
	case flags&flag3D != 0:
		return "3D polyline"
	case flags&flagMesh != 0:
		return "mesh"
	case flags&flagPolyface != 0:
		return "polyface mesh"
	}
	return ""
}

func (t *tracer) noteWidth(v *values, code int) {
	if v.number(code, 0) > 0 {
		t.wide++
	}
}

// addCorners turns corners and bulges into points.
func (t *tracer) addCorners(v *values, layer string, m trace.Affine, corners []corner, closed bool) {
	if v.bad {
		return
	}
	n, chord := len(corners), t.chordAt(m)
	var points []orb.Point
	for i, c := range corners {
		if c.bulge == 0 || (i == n-1 && !closed) {
			points = append(points, c.at)
			continue
		}
		bow := curve.Bulge(c.at, corners[(i+1)%n].at, c.bulge, chord)
		points = append(points, bow[:len(bow)-1]...)
		if len(points) > trace.MaxPoints {
			break // told by add
		}
	}
	t.add(v, layer, m, points, closed)
}
