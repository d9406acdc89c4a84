package dxf

import (
	"math"

	"stripwright/geometry/drawing/trace"
)

// facing reads an entity's extrusion, the way its own plane faces: 1 the
// drawing plane, -1 its back. An entity that is tilted out of the plane is a
// problem, and gives 0.
func (t *tracer) facing(v *values, layer string) float64 {
	x, y, z := v.number(210, 0), v.number(220, 0), v.number(230, 1)
	size := math.Hypot(math.Hypot(x, y), z)
	if !v.bad && math.Abs(z) > size*(1-1e-9) {
		return math.Copysign(1, z)
	}
	if !t.wanted(layer) {
		t.file.report.LeaveOut(v.e.kind + " out of the plane")
		return 0
	}
	if !v.bad {
		v.problem("not-read", v.e.line, "draw it flat, in the plane of x and y",
			"%s is tilted out of the drawing plane", v.e.kind)
	}
	return 0
}

// plane gives the placement of an entity whose coordinates are those of its
// own plane: seen from the back, x runs the other way. Not ok when tilted.
func (t *tracer) plane(v *values, layer string, p place) (m trace.Affine, ok bool) {
	switch t.facing(v, layer) {
	case 1:
		return p.at, true
	case -1:
		return p.at.Of(trace.Scale(-1, 1)), true
	}
	return p.at, false
}
