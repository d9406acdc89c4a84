package book

import (
	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// clipped cuts a region to a box, for finding a place to letter in: where it is
// cut in two, both parts stay joined along the box's edge.
func clipped(r geometry.Region, box orb.Bound) geometry.Region {
	out := geometry.Region{Outer: clipRing(r.Outer, box)}
	for _, h := range r.Holes {
		if hole := clipRing(h, box); len(hole) > 2 {
			out.Holes = append(out.Holes, hole)
		}
	}
	return out
}

// clipRing cuts a ring at the four edges of the box, one after the other.
func clipRing(ring orb.Ring, box orb.Bound) orb.Ring {
	for axis := range 2 {
		ring = clipAt(ring, axis, box.Min[axis], 1)
		ring = clipAt(ring, axis, box.Max[axis], -1)
	}
	return ring
}

// clipAt keeps what lies on the side of the edge where way times the coordinate
// is greater.
func clipAt(ring orb.Ring, axis int, edge, way float64) orb.Ring {
	var out orb.Ring
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		a, b := float64((p[axis]-edge)*way), float64((q[axis]-edge)*way)
		if a >= 0 {
			out = append(out, p)
		}
		if (a >= 0) != (b >= 0) {
			t := a / (a - b)
			out = append(out, orb.Point{p[0] + float64(t*(q[0]-p[0])), p[1] + float64(t*(q[1]-p[1]))})
		}
	}
	return out
}
