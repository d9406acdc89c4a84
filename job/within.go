package job

import (
	"github.com/paulmach/orb"

	"stripwright/geometry"
)

type point = orb.Point

// inside says whether a ring lies inside another that it does not cross. Rings
// may touch: then the first vertex or middle of an edge that is off the other
// ring's edge decides.
func inside(ring, other orb.Ring) bool {
	s := indexed(geometry.Region{Outer: other})
	for i := range ring {
		next := ring[(i+1)%len(ring)]
		for _, p := range []point{ring[i], {(ring[i][0] + next[0]) / 2, (ring[i][1] + next[1]) / 2}} {
			if !s.near(p, 1e-9) {
				return s.holds(p)
			}
		}
	}
	return true
}

// patchSlack is how far a patch may stick out of the blank in mm: rounding, and
// an edge that was drawn twice.
const patchSlack = 0.01

// sticksOut gives the place where a patch reaches farthest out of the blank and
// by how much: of its corners, of the stretches of its edge between crossings,
// and of openings in the blank that it covers. 0 within patchSlack.
func sticksOut(patch, blank geometry.Region) (at point, by float64) {
	s := indexed(blank)
	const enough = 50 // places to choose the farthest from
	found := 0
	try := func(p point) {
		if found < enough && !s.holds(p) && !s.near(p, patchSlack) {
			found++
			if d := s.away(p); d > by {
				at, by = p, d
			}
		}
	}
	for _, ring := range patch.Rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			try(a)
			cuts := s.crossed(a, b)
			for j := 1; j < len(cuts); j++ {
				t := (cuts[j-1] + cuts[j]) / 2
				try(point{a[0] + float64(t*(b[0]-a[0])), a[1] + float64(t*(b[1]-a[1]))})
			}
		}
	}
	own := indexed(patch)
	for _, h := range blank.Holes {
		if p := middleOf(h); own.holds(p) {
			try(p)
		}
	}
	return at, by
}

// apart says whether two regions have no point in common.
func apart(a, b geometry.Region) bool {
	if !a.Bounds().Intersects(b.Bounds()) {
		return true
	}
	inA, inB := indexed(a), indexed(b)
	for i, p := range a.Outer {
		if inB.holds(p) || len(inB.crossed(p, a.Outer[(i+1)%len(a.Outer)])) > 2 {
			return false
		}
	}
	for _, p := range b.Outer {
		if inA.holds(p) {
			return false
		}
	}
	return true
}
