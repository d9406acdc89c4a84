package curve

import (
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// Through gives points on the smooth curve through the given points: the cubic
// spline with continuous curvature over the distances between them. Its ends
// have the directions start and end, or those that the points nearest to them
// suggest when start and end are zero; a closed one runs on smoothly from the
// last point to the first. Points that
// repeat the one before are left out. Nil when fewer than two are left or a
// number is not finite.
func Through(fit []orb.Point, start, end orb.Point, closed bool, chord float64) []orb.Point {
	if !finitePoints(fit...) || !finitePoints(start, end) {
		return nil
	}
	ps := apart(fit, closed)
	if len(ps) < 2 {
		return nil
	}
	if closed {
		return throughClosed(ps, positive(chord))
	}
	h := spacing(ps)
	if start == (orb.Point{}) {
		start = endDirection(ps)
	}
	if end == (orb.Point{}) {
		back := slices.Clone(ps)
		slices.Reverse(back)
		d := endDirection(back)
		end = orb.Point{-d[0], -d[1]}
	}
	return pieces(ps, h, slopes(ps, h, unit(start), unit(end)), positive(chord))
}

// endDirection gives the direction that a smooth curve has at the first of its
// points, from the three or more nearest: the five-point rule of Piegl and
// Tiller, The NURBS Book, section 9.3.1 (from memory), with the two steps that
// would come before the first point run on evenly. Two points only: straight.
func endDirection(ps []orb.Point) orb.Point {
	q1 := orb.Point{ps[1][0] - ps[0][0], ps[1][1] - ps[0][1]}
	if len(ps) < 3 {
		return q1
	}
	q2 := orb.Point{ps[2][0] - ps[1][0], ps[2][1] - ps[1][1]}
	q0 := orb.Point{2*q1[0] - q2[0], 2*q1[1] - q2[1]}
	before := orb.Point{2*q0[0] - q1[0], 2*q0[1] - q1[1]}
	a, b := math.Abs(cross(before, q0)), math.Abs(cross(q1, q2))
	share := 0.5
	if a+b > 0 {
		share = a / (a + b)
	}
	return between(share, q0, q1)
}

func cross(a, b orb.Point) float64 { return float64(a[0]*b[1]) - float64(a[1]*b[0]) }

// throughClosed runs round the points twice more than needed and keeps the
// middle round: away from its ends the curve no longer knows of them.
func throughClosed(ps []orb.Point, chord float64) []orb.Point {
	n := len(ps)
	lead := min(n*((24+n-1)/n), 24*n) // an end's influence falls to under a millionth in eleven points
	var long []orb.Point
	for i := -lead; i <= n+lead; i++ {
		long = append(long, ps[((i%n)+n)%n])
	}
	h := spacing(long)
	m := slopes(long, h, orb.Point{}, orb.Point{})
	return pieces(long[lead:lead+n+1], h[lead:lead+n], m[lead:lead+n+1], chord)
}

func apart(fit []orb.Point, closed bool) []orb.Point {
	var ps []orb.Point
	for _, p := range fit {
		if len(ps) == 0 || ps[len(ps)-1] != p {
			ps = append(ps, p)
		}
	}
	if closed && len(ps) > 1 && ps[0] == ps[len(ps)-1] {
		ps = ps[:len(ps)-1]
	}
	return ps
}

func spacing(ps []orb.Point) []float64 {
	h := make([]float64, len(ps)-1)
	for i := range h {
		h[i] = distance(ps[i], ps[i+1])
	}
	return h
}

func unit(v orb.Point) orb.Point {
	l := math.Hypot(v[0], v[1])
	if l == 0 {
		return v
	}
	return orb.Point{v[0] / l, v[1] / l}
}

// slopes solves for the first derivative at every point: in between
//
//	h[i]·m[i-1] + 2(h[i-1]+h[i])·m[i] + h[i-1]·m[i+1]
//	    = 3(h[i]/h[i-1]·(p[i]-p[i-1]) + h[i-1]/h[i]·(p[i+1]-p[i]))
//
// and at the ends the stated direction or no curvature, 2·m[0] + m[1] =
// 3(p[1]-p[0])/h[0]; three diagonals, eliminated downward.
func slopes(ps []orb.Point, h []float64, start, end orb.Point) []orb.Point {
	n := len(ps)
	under, on, over := make([]float64, n), make([]float64, n), make([]float64, n)
	m := make([]orb.Point, n)
	for i := 1; i < n-1; i++ {
		under[i], on[i], over[i] = h[i], 2*(h[i-1]+h[i]), h[i-1]
		for k := range 2 {
			before, after := h[i]/h[i-1]*(ps[i][k]-ps[i-1][k]), h[i-1]/h[i]*(ps[i+1][k]-ps[i][k])
			m[i][k] = 3 * (float64(before) + float64(after))
		}
	}
	endSlope := func(at, next, piece int, stated orb.Point, beside []float64) {
		on[at] = 1
		m[at] = stated
		if stated == (orb.Point{}) {
			on[at], beside[at] = 2, 1
			from, to := min(at, next), max(at, next)
			m[at] = orb.Point{3 * (ps[to][0] - ps[from][0]) / h[piece], 3 * (ps[to][1] - ps[from][1]) / h[piece]}
		}
	}
	endSlope(0, 1, 0, start, over)
	endSlope(n-1, n-2, n-2, end, under)
	for i := 1; i < n; i++ {
		f := under[i] / on[i-1]
		on[i] -= float64(f * over[i-1])
		for k := range 2 {
			m[i][k] -= float64(f * m[i-1][k])
		}
	}
	for i := n - 1; i >= 0; i-- {
		for k := range 2 {
			if i < n-1 {
				m[i][k] -= float64(over[i] * m[i+1][k])
			}
			m[i][k] /= on[i]
		}
	}
	return m
}

// pieces draws each cubic between two points as a Bézier curve.
func pieces(ps []orb.Point, h []float64, m []orb.Point, chord float64) []orb.Point {
	out := []orb.Point{ps[0]}
	for i := range h {
		a, b, third := ps[i], ps[i+1], h[i]/3
		c := orb.Point{a[0] + float64(third*m[i][0]), a[1] + float64(third*m[i][1])}
		d := orb.Point{b[0] - float64(third*m[i+1][0]), b[1] - float64(third*m[i+1][1])}
		if piece := Cubic(a, c, d, b, chord); len(piece) > 0 {
			out = append(out, piece[1:]...)
		}
	}
	return out
}
