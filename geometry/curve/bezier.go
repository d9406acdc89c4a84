package curve

import (
	"math"

	"github.com/paulmach/orb"
)

// Quadratic gives points on the quadratic Bézier curve with the control points
// p0, p1, p2. Nil when a number is not finite.
func Quadratic(p0, p1, p2 orb.Point, chord float64) []orb.Point {
	if !finitePoints(p0, p1, p2) {
		return nil
	}
	n := bendSteps(2*bendAt(p0, p1, p2), positive(chord))
	return along(n, p0, p2, func(t float64) orb.Point {
		return between(t, between(t, p0, p1), between(t, p1, p2))
	})
}

// Cubic gives points on the cubic Bézier curve with the control points p0 to
// p3. Nil when a number is not finite.
func Cubic(p0, p1, p2, p3 orb.Point, chord float64) []orb.Point {
	if !finitePoints(p0, p1, p2, p3) {
		return nil
	}
	bend := math.Max(bendAt(p0, p1, p2), bendAt(p1, p2, p3))
	n := bendSteps(6*bend, positive(chord))
	return along(n, p0, p3, func(t float64) orb.Point {
		a, b, c := between(t, p0, p1), between(t, p1, p2), between(t, p2, p3)
		return between(t, between(t, a, b), between(t, b, c))
	})
}

// bendAt is the length of the second difference of three control points.
func bendAt(a, b, c orb.Point) float64 {
	return math.Hypot(a[0]-2*b[0]+c[0], a[1]-2*b[1]+c[1])
}

// along takes n equal steps of the parameter from 0 to 1, both ends exact.
func along(n int, first, last orb.Point, at func(float64) orb.Point) []orb.Point {
	out := make([]orb.Point, n+1)
	out[0], out[n] = first, last
	for i := 1; i < n; i++ {
		out[i] = at(float64(i) / float64(n))
	}
	return out
}

// between gives the point at t from a (0) to b (1).
func between(t float64, a, b orb.Point) orb.Point {
	return orb.Point{
		float64((1-t)*a[0]) + float64(t*b[0]),
		float64((1-t)*a[1]) + float64(t*b[1]),
	}
}
