package trace

import (
	"math"

	"github.com/paulmach/orb"
)

// Line is one run of straight pieces of a drawing, in the unit and axes of the
// file until it is mapped to millimetres.
type Line struct {
	Points []orb.Point
	Closed bool     // the last point runs back to the first
	Layer  string   // the layer or group it is listed under
	Names  []string // every name it can be chosen by: its layer, or all groups around it
	At     int      // line of the file (byte of a binary one) where it begins
}

// MaxPoints bounds the points of one drawing, so that a hostile file cannot ask
// for more memory than there is.
const MaxPoints = 1_000_000

// Map gives the line with every point moved by m.
func (l Line) Map(m Affine) Line {
	out := make([]orb.Point, len(l.Points))
	for i, p := range l.Points {
		out[i] = m.Apply(p)
	}
	l.Points = out
	return l
}

// Finite says whether all points are finite and within reach millimetres (or
// units) of the origin.
func (l Line) Finite(reach float64) bool {
	for _, p := range l.Points {
		if !(math.Abs(p[0]) <= reach && math.Abs(p[1]) <= reach) {
			return false
		}
	}
	return true
}

// Affine is a move, turn, scale, mirror or skew:
//
//	x' = A·x + C·y + E
//	y' = B·x + D·y + F
//
// with the letters of the SVG matrix function. The zero value takes everything
// to one point; Identity changes nothing.
type Affine struct{ A, B, C, D, E, F float64 }

// Identity is the placement that changes nothing.
func Identity() Affine { return Affine{A: 1, D: 1} }

// Move shifts by x and y.
func Move(x, y float64) Affine { return Affine{A: 1, D: 1, E: x, F: y} }

// Scale stretches by x and y about the origin.
func Scale(x, y float64) Affine { return Affine{A: x, D: y} }

// Turn turns about the origin by degrees, from x towards y; exact at multiples
// of 90°.
func Turn(deg float64) Affine {
	deg = math.Mod(deg, 360)
	s, c := math.Sincos(deg * math.Pi / 180)
	if math.Mod(deg, 90) == 0 {
		s, c = math.Round(s), math.Round(c)
	}
	return Affine{A: c, B: s, C: -s, D: c}
}

// Apply moves a point.
func (m Affine) Apply(p orb.Point) orb.Point {
	return orb.Point{
		float64(m.A*p[0]) + float64(m.C*p[1]) + m.E,
		float64(m.B*p[0]) + float64(m.D*p[1]) + m.F,
	}
}

// Of gives the placement that applies inner first and then m.
func (m Affine) Of(inner Affine) Affine {
	return Affine{
		A: float64(m.A*inner.A) + float64(m.C*inner.B),
		B: float64(m.B*inner.A) + float64(m.D*inner.B),
		C: float64(m.A*inner.C) + float64(m.C*inner.D),
		D: float64(m.B*inner.C) + float64(m.D*inner.D),
		E: float64(m.A*inner.E) + float64(m.C*inner.F) + m.E,
		F: float64(m.B*inner.E) + float64(m.D*inner.F) + m.F,
	}
}

// Stretch gives the most that the placement lengthens anything: the greater
// singular value.
func (m Affine) Stretch() float64 {
	p := math.Hypot(m.A+m.D, m.B-m.C)
	q := math.Hypot(m.A-m.D, m.B+m.C)
	return (p + q) / 2
}

// Finite says whether all six numbers are finite.
func (m Affine) Finite() bool {
	sum := m.A + m.B + m.C + m.D + m.E + m.F
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}
