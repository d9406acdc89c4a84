package dxf

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry/curve"
)

// line reads a LINE; its ends are in drawing coordinates whatever its
// extrusion.
func (t *tracer) line(v *values, layer string, p place) {
	a, b := v.point(10), v.point(11)
	t.height(v.number(30, 0), v.number(31, 0))
	t.add(v, layer, p.at, []orb.Point{a, b}, false)
}

// arc reads an ARC, counter-clockwise in its own plane from the angle of group
// 50 to that of group 51 (degrees), or a CIRCLE.
func (t *tracer) arc(v *values, layer string, p place) {
	m, ok := t.plane(v, layer, p)
	if !ok {
		return
	}
	centre, radius := v.point(10), v.must(40)
	t.height(v.number(30, 0))
	if !v.bad && !(radius > 0) {
		v.problem("number", v.e.line, "draw it again", "%s has the radius %v", v.e.kind, radius)
		return
	}
	if v.e.kind == "CIRCLE" {
		t.add(v, layer, m, curve.Circle(centre, radius, t.chordAt(m)), true)
		return
	}
	from, to := v.must(50), v.must(51)
	sweep := round(to-from, 360)
	const rad = math.Pi / 180
	t.add(v, layer, m, curve.Arc(centre, radius, from*rad, sweep*rad, t.chordAt(m)), false)
}

// ellipse reads an ELLIPSE: centre and half the long axis in drawing
// coordinates, the short one square to it, to its left seen from where the
// extrusion points; from the parameter of group 41 to that of 42 (radians).
func (t *tracer) ellipse(v *values, layer string, p place) {
	face := t.facing(v, layer)
	if face == 0 {
		return
	}
	centre, u := v.point(10), v.point(11)
	ratio, from, to := v.must(40), v.number(41, 0), v.number(42, 2*math.Pi)
	t.height(v.number(30, 0))
	if !v.bad && (!(math.Abs(ratio) > 1e-9) || (u[0] == 0 && u[1] == 0)) {
		v.problem("number", v.e.line, "draw it again", "%s has no width", v.e.kind)
		return
	}
	w := orb.Point{-face * ratio * u[1], face * ratio * u[0]}
	sweep := round(to-from, 2*math.Pi)
	t.add(v, layer, p.at, curve.Ellipse(centre, u, w, from, sweep, t.chordAt(p.at)), false)
}

// round gives an angle of rotation as more than nothing and at most a full
// turn. One that is a full turn but for rounding, less or more, is a full turn:
// else 0 to 6.2832 would be next to nothing.
func round(sweep, turn float64) float64 {
	const rounding = 1e-5 // of a turn
	if off := math.Abs(sweep) / turn; off > 1-rounding && off < 1+rounding {
		return turn
	}
	sweep = math.Mod(sweep, turn)
	if sweep < 1e-12*turn {
		sweep += turn
	}
	return sweep
}
