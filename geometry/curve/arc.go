package curve

import (
	"math"

	"github.com/paulmach/orb"
)

// Arc gives points on the arc about centre from the angle from through sweep,
// both in radians, counter-clockwise positive. A sweep of 2π or more gives a
// full circle whose last point is the first again. Nil when the radius is not
// positive or a number is not finite.
func Arc(centre orb.Point, radius, from, sweep, chord float64) []orb.Point {
	if !(radius > 0) {
		return nil
	}
	return Ellipse(centre, orb.Point{radius, 0}, orb.Point{0, radius}, from, sweep, chord)
}

// Circle gives points on the full circle, counter-clockwise from its rightmost
// point; the first point is not repeated.
func Circle(centre orb.Point, radius, chord float64) []orb.Point {
	ps := Arc(centre, radius, 0, 2*math.Pi, chord)
	return ps[:max(len(ps)-1, 0)]
}

// Ellipse gives points centre + u·cos t + v·sin t for t from from through
// sweep, in radians. u and v are any two half diameters, so that an arc that
// was turned, mirrored, scaled or skewed is one too; with u and v as long as
// each other and square it is a circle. A sweep beyond 2π is cut to it, and the
// last point is then the first again. Nil when a number is not finite or both
// half diameters are zero.
func Ellipse(centre, u, v orb.Point, from, sweep, chord float64) []orb.Point {
	if !finitePoints(centre, u, v) || !finite(from, sweep) {
		return nil
	}
	reach := longest(u, v)
	if reach == 0 {
		return nil
	}
	full := math.Abs(sweep) >= 2*math.Pi-1e-12
	if full {
		sweep = math.Copysign(2*math.Pi, sweep)
	}
	n := turnSteps(reach, sweep, positive(chord))
	out := make([]orb.Point, n+1)
	for i := range out {
		s, c := math.Sincos(from + float64(sweep*(float64(i)/float64(n))))
		out[i] = orb.Point{
			centre[0] + (float64(u[0]*c) + float64(v[0]*s)),
			centre[1] + (float64(u[1]*c) + float64(v[1]*s)),
		}
	}
	if full {
		out[n] = out[0]
	}
	return out
}

// longest gives the greater half axis of the ellipse with half diameters u and
// v: the larger singular value of the matrix with columns u and v.
func longest(u, v orb.Point) float64 {
	p := math.Hypot(u[0]+v[1], u[1]-v[0])
	q := math.Hypot(u[0]-v[1], u[1]+v[0])
	return (p + q) / 2
}

// Bulge gives points on the arc from a to b whose bulge is the tangent of a
// quarter of its angle: 0 straight, 1 a half circle, positive when the arc runs
// counter-clockwise (it then lies to the right of the line from a to b):
//
//	a -------- b
//	 \        /    bulge > 0
//	  `------´
//
// No centre is computed, so an arc of any radius, however flat, is as exact as
// its ends. Nil when a number is not finite.
func Bulge(a, b orb.Point, bulge, chord float64) []orb.Point {
	if !finitePoints(a, b) || !finite(bulge) {
		return nil
	}
	c := distance(a, b)
	if bulge == 0 || c == 0 {
		return []orb.Point{a, b}
	}
	half := 2 * math.Atan(math.Abs(bulge)) // half the arc's angle
	n := 1
	if radius := BulgeRadius(a, b, bulge); radius < 1e150 {
		n = turnSteps(radius, 2*half, positive(chord))
	}
	out := make([]orb.Point, n+1)
	out[0], out[n] = a, b
	mid := orb.Point{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2}
	dx, dy := b[0]-a[0], b[1]-a[1]
	for i := 1; i < n; i++ {
		phi := float64(half * (2*float64(i)/float64(n) - 1))
		along := math.Sin(phi) / (2 * math.Sin(half))
		off := math.Sin((half+phi)/2) * math.Sin((half-phi)/2) / math.Sin(half)
		off = math.Copysign(off, bulge)
		out[i] = orb.Point{
			mid[0] + (float64(dx*along) + float64(dy*off)),
			mid[1] + (float64(dy*along) - float64(dx*off)),
		}
	}
	return out
}

// BulgeRadius gives the radius of the arc from a to b with the given bulge:
// c(1+b²)/(4|b|) with c the distance of the ends; infinite when it is straight.
func BulgeRadius(a, b orb.Point, bulge float64) float64 {
	w := math.Abs(bulge)
	return distance(a, b) * (1/w + w) / 4
}
