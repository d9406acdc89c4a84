package contour

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// Flat says whether a contour encloses nothing: all its points lie within a
// hundredth of a millimetre of one line. A point in the middle of it comes
// with the answer.
func Flat(r orb.Ring) (at orb.Point, flat bool) {
	if len(r) < 3 {
		if len(r) == 0 {
			return orb.Point{}, true
		}
		return r[0], true
	}
	a := farthest(r, r[0])
	b := farthest(r, a)
	long := apart(a, b)
	at = orb.Point{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2}
	for _, p := range r {
		off := (float64((b[0]-a[0])*(p[1]-a[1])) - float64((b[1]-a[1])*(p[0]-a[0]))) / long
		if math.Abs(off) > same {
			return at, false
		}
	}
	return at, true
}

func farthest(r orb.Ring, from orb.Point) orb.Point {
	best := from
	for _, p := range r {
		if apart(p, from) > apart(best, from) {
			best = p
		}
	}
	return best
}

// AtPinches cuts a contour in two wherever it comes back to a point that it
// has been in, so that every ring is in each of its points once. Two outlines
// that touch in a corner, or a hole that touches its outline, become rings of
// their own. The contour must not cross itself. Rings come snapped to the
// micrometre.
func AtPinches(r orb.Ring) []orb.Ring {
	var out []orb.Ring
	var way orb.Ring
	seen := map[orb.Point]int{}
	for _, p := range r {
		p = orb.Point{geometry.Snap(p[0]), geometry.Snap(p[1])}
		from, again := seen[p]
		if !again {
			seen[p] = len(way)
			way = append(way, p)
			continue
		}
		if loop := way[from:]; len(loop) >= 3 {
			out = append(out, append(orb.Ring{}, loop...))
		}
		for _, q := range way[from+1:] {
			delete(seen, q)
		}
		way = way[:from+1]
	}
	if len(way) >= 3 {
		out = append(out, way)
	}
	return out
}
