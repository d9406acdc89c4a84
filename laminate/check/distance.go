package check

import "math"

// apartSegments gives the distance between two segments, 0 where they meet, and
// the place on the first that is nearest to the second.
func apartSegments(p, q, a, b point) (float64, point) {
	if at, ok := meeting(p, q, a, b); ok {
		return 0, at
	}
	d, at := apartPoint(a, p, q)
	if e, f := apartPoint(b, p, q); e < d {
		d, at = e, f
	}
	if e, _ := apartPoint(p, a, b); e < d {
		d, at = e, p
	}
	if e, _ := apartPoint(q, a, b); e < d {
		d, at = e, q
	}
	return d, at
}

// apartPoint gives the distance of c from the segment p–q and its nearest
// place.
func apartPoint(c, p, q point) (float64, point) {
	dx, dy := q[0]-p[0], q[1]-p[1]
	t := 0.0
	if n := float64(dx*dx) + float64(dy*dy); n > 0 {
		t = math.Min(math.Max((float64((c[0]-p[0])*dx)+float64((c[1]-p[1])*dy))/n, 0), 1)
	}
	at := point{p[0] + float64(t*dx), p[1] + float64(t*dy)}
	return math.Hypot(c[0]-at[0], c[1]-at[1]), at
}

// meeting gives where two segments properly cross.
func meeting(p, q, a, b point) (point, bool) {
	c0, c1 := turn(a, b, p), turn(a, b, q)
	if turn(p, q, a)*turn(p, q, b) >= 0 || c0*c1 >= 0 {
		return point{}, false
	}
	t := c0 / (c0 - c1)
	return point{p[0] + float64(t*(q[0]-p[0])), p[1] + float64(t*(q[1]-p[1]))}, true
}

// turn is positive when c lies to the left of the line from a to b.
func turn(a, b, c point) float64 {
	return float64((b[0]-a[0])*(c[1]-a[1])) - float64((b[1]-a[1])*(c[0]-a[0]))
}
