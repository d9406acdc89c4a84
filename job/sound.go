package job

import (
	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"stripwright/geometry"
)

// flat says whether all points of a ring lie on one line, within a micrometre.
func flat(ring orb.Ring) bool {
	if len(ring) < 3 {
		return true
	}
	end := farthest(ring, ring[0])
	along := stretch{end, farthest(ring, end)}
	for _, p := range ring {
		if along.from(p) > 0.001 {
			return false
		}
	}
	return true
}

// farthest gives the vertex that lies farthest from a point.
func farthest(ring orb.Ring, from point) (far point) {
	most := -1.0
	for _, p := range ring {
		if d := planar.Distance(from, p); d > most {
			far, most = p, d
		}
	}
	return far
}

// sound refuses a shape that encloses nothing, crosses itself, or has a hole
// that does not lie inside it. Holes is how many were written.
func (r *reading) sound(b block, kind string, g geometry.Region, holes int) bool {
	n := b.value(kind)
	switch {
	case flat(g.Outer):
		r.refuse(n, b.what, "check the points: they lie on one line or on one another", "%s encloses no area", b.what)
		return false
	case len(g.Holes) < holes:
		r.refuse(b.value("holes"), "holes", "check its points", "a hole of %s encloses no area", b.what)
		return false
	}
	if at, found := geometry.Crossing(g.Rings()...); found {
		r.crossed(b, kind, g, at[0], at[1])
		return false
	}
	ok := true
	for i, h := range g.Holes {
		switch {
		case flat(h):
			r.refuse(b.value("holes"), "holes", "check its points", "hole %d of %s encloses no area", i+1, b.what)
		case !inside(h, g.Outer):
			r.refuse(b.value("holes"), "holes", "check its place; holes are in the coordinates of the job, not from `at`",
				"hole %d of %s lies outside the outline, at %s", i+1, b.what, atPoint(h[0]))
		case heldBy(h, g, i):
			r.refuse(b.value("holes"), "holes", "keep the larger one", "hole %d of %s lies in another hole", i+1, b.what)
		default:
			continue
		}
		ok = false
	}
	return ok
}

// crossed says which ring crosses itself or another.
func (r *reading) crossed(b block, kind string, g geometry.Region, x, y float64) {
	place := atPoint([2]float64{x, y})
	if _, found := geometry.Crossing(g.Outer); found {
		r.refuse(b.value(kind), b.what, "put the points in order round the edge", "%s crosses or touches itself at %s", b.what, place)
		return
	}
	for i, h := range g.Holes {
		if _, found := geometry.Crossing(h); found {
			r.refuse(b.value("holes"), "holes", "put the points in order round the edge", "hole %d of %s crosses or touches itself at %s", i+1, b.what, place)
			return
		}
	}
	r.refuse(b.value("holes"), "holes", "move it, or draw the edge round it", "a hole of %s runs across the outline or another hole at %s", b.what, place)
}

// heldBy says whether hole i lies in another hole of the region.
func heldBy(h orb.Ring, g geometry.Region, i int) bool {
	for j, other := range g.Holes {
		if j != i && inside(h, other) && (j < i || !inside(other, h)) {
			return true
		}
	}
	return false
}
