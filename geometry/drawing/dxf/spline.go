package dxf

import (
	"github.com/paulmach/orb"

	"stripwright/geometry/curve"
)

// flags of SPLINE, group 70.
const splineClosed, splinePeriodic = 1, 2

// spline reads a SPLINE: by its control points when it has any, and otherwise
// through its fit points.
func (t *tracer) spline(v *values, layer string, p place) {
	s, fit := t.splineData(v)
	if v.bad {
		return
	}
	closed := v.whole(70, 0)&(splineClosed|splinePeriodic) != 0
	chord := t.chordAt(p.at)
	if len(s.Control) == 0 && len(fit) > 1 {
		start := orb.Point{v.number(12, 0), v.number(22, 0)}
		end := orb.Point{v.number(13, 0), v.number(23, 0)}
		t.file.report.Note("spline", "SPLINE (line %d) is stated by points on it only: drawn as the smooth cubic through them", v.e.line)
		t.add(v, layer, p.at, curve.Through(fit, start, end, closed, chord), closed)
		return
	}
	if closed {
		s = wrapped(s)
	}
	if err := s.Valid(); err != nil {
		v.problem("not-read", v.e.line, "convert it to a polyline", "SPLINE cannot be read: %v", err)
		return
	}
	t.add(v, layer, p.at, s.Points(chord), false)
}

// splineData reads the groups of a SPLINE in their order.
func (t *tracer) splineData(v *values) (s curve.Spline, fit []orb.Point) {
	s.Degree = v.whole(71, 3)
	for _, g := range v.e.groups {
		switch g.code {
		case 40:
			s.Knots = append(s.Knots, v.parse(g))
		case 41:
			s.Weights = append(s.Weights, v.parse(g))
		case 10:
			s.Control = append(s.Control, orb.Point{v.parse(g), 0})
		case 11:
			fit = append(fit, orb.Point{v.parse(g), 0})
		case 20, 21:
			to := s.Control
			if g.code == 21 {
				to = fit
			}
			if len(to) > 0 {
				to[len(to)-1][1] = v.parse(g)
			}
		case 30, 31:
			t.height(v.parse(g))
		}
	}
	t.holdCounts(v, s, fit)
	return s, fit
}

// holdCounts holds the numbers of points that a SPLINE states against those
// that are there, each with x and y.
func (t *tracer) holdCounts(v *values, s curve.Spline, fit []orb.Point) {
	ys := map[int]int{}
	for _, g := range v.e.groups {
		ys[g.code]++
	}
	control, fits := v.whole(73, len(s.Control)), v.whole(74, len(fit))
	if v.bad || (control == len(s.Control) && fits == len(fit) && ys[20] == len(s.Control) && ys[21] == len(fit)) {
		return
	}
	v.problem("truncated", v.e.line, cutCure, "SPLINE says it has %d control and %d fit points, %d and %d are there",
		control, fits, min(len(s.Control), ys[20]), min(len(fit), ys[21]))
}

// wrapped repeats the first control points at the end of a closed spline whose
// knots ask for them.
func wrapped(s curve.Spline) curve.Spline {
	n, p := len(s.Control), s.Degree
	if p < 1 || n < p || len(s.Knots) != n+2*p+1 {
		return s
	}
	s.Control = append(s.Control[:n:n], s.Control[:p]...)
	if len(s.Weights) == n {
		s.Weights = append(s.Weights[:n:n], s.Weights[:p]...)
	}
	return s
}
